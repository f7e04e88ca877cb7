//! Ordinary installs hold, and what should not does not: the hand's sums against the product's functions.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "fastening/sample.rs"]
mod sample;

use sample::{inch, ratio};
use serde::Deserialize;
use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::case::{Case, Posture};
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::group::{Group, Word};
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::hold::Hold;
use strikeline_solver::capacity::posture::cases;
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::steel::{group_on_steel, in_steel};
use strikeline_solver::capacity::why::{Known, Why};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::handbook::dowel_bearing::SHEET_STEEL_PSI;
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::units::{Length, Stress};

#[derive(Deserialize)]
struct Install {
    name: String,
    kg: f64,
    width: f64,
    height: f64,
    #[serde(default)]
    reach: Option<f64>,
    into: Into,
    #[serde(default)]
    columns: Vec<f64>,
    rows: Vec<f64>,
    expected: Vec<Expected>,
}

#[derive(Deserialize)]
enum Into {
    Lags { gap: f64 },
    Steel { mil: f64, gap: f64 },
    Concrete { gap: f64 },
}

#[derive(Deserialize)]
struct Expected {
    cases: Which,
    word: String,
    #[serde(default)]
    uses: Option<f64>,
    #[serde(default)]
    pull: String,
    #[serde(default)]
    turning: Option<f64>,
}

#[derive(Clone, Copy, Deserialize, PartialEq)]
enum Which {
    /// Every case.
    All,
    /// Straight out and facing the room, hanging or pulled at the middle.
    StraightOut,
    /// Every case that puts something to the side of the plate's middle.
    Turning,
}

fn hold(into: &Into) -> Known<Hold> {
    match into {
        Into::Lags { gap } => {
            let screw = Screw::lag(inch(0.3125), inch(3.0))?;
            let stack = Stack {
                washer: inch(0.0),
                plate: inch(0.075),
                plate_bearing: Given::measured(Stress::psi(SHEET_STEEL_PSI.value)),
                gap: inch(*gap),
                stud_depth: inch(3.5),
            };
            in_wood(&mut Blank, &screw, ratio(0.36), &stack)
        }
        Into::Steel { mil, gap } => {
            let thickness = Given::measured(Length::mils(*mil));
            in_steel(&mut Blank, inch(0.19), thickness, inch(*gap)).map(Hold::Linear)
        }
        Into::Concrete { gap } => {
            let screw = ConcreteScrew {
                diameter: inch(0.25),
                depth: inch(1.75),
                gap: inch(*gap),
                edge: inch(12.0),
                strength: None,
                normal_weight: true,
            };
            in_concrete(&mut Blank, &screw).map(Hold::Linear)
        }
    }
}

fn seats(install: &Install) -> Vec<Seat> {
    let usual = [-203.0, 203.0];
    let columns = if install.columns.is_empty() { &usual[..] } else { &install.columns[..] };
    // A lag in a single 2x face carries along its stud only.
    let across = !matches!(install.into, Into::Lags { .. });
    let in_column = |(stud, x_mm): (usize, &f64)| {
        let x_mm = *x_mm;
        install.rows.iter().map(move |y_mm| Seat { x_mm, y_mm: *y_mm, stud, along: true, across })
    };
    columns.iter().enumerate().flat_map(in_column).collect()
}

fn hanging(install: &Install) -> Hanging {
    let manner = install.reach.map_or(Manner::Fixed, |reach_mm| Manner::Arm {
        hinge_x_mm: 0.0,
        reach_mm,
        hinge_deg: None,
        head_deg: None,
        tilt_deg: 0.0,
        to_edge_mm: 0.0,
        lowers_mm: 0.0,
    });
    Hanging {
        left_mm: -install.width / 2.0,
        right_mm: install.width / 2.0,
        bottom_mm: -install.height / 2.0,
        top_mm: install.height / 2.0,
        depth_mm: 60.0,
        stand_off_mm: 40.0,
        masses: vec![HungMass { kg: install.kg, right_mm: 0.0, y_mm: 0.0, from_back_mm: 30.0 }],
        manner,
        pull_n: 220.0,
        label: Label::Measured,
    }
}

fn chosen(which: Which, case: &Case) -> bool {
    let straight = match case.name.posture {
        Posture::Swung { arm_deg, face_deg } => arm_deg == 0.0 && face_deg == 0.0,
        _ => true,
    };
    match which {
        Which::All => true,
        Which::StraightOut => straight && case.down_x_nmm.abs() < 1e-6,
        Which::Turning => case.down_x_nmm.abs() > 1000.0,
    }
}

fn word(word: Word) -> &'static str {
    match word {
        Word::Holds => "holds",
        Word::Short => "short",
        Word::NotKnown => "not known",
    }
}

#[test]
fn ordinary_installs_get_the_verdict_of_a_careful_engineer() {
    let installs: Vec<Install> = ron::from_str(include_str!("fastening/ordinary.ron")).unwrap();
    assert_eq!(installs.len(), 14);
    for install in &installs {
        let seats = seats(install);
        let edges = Edges { left_mm: -250.0, right_mm: 250.0, bottom_mm: -170.0, top_mm: 170.0 };
        let group = Group::of(&mut Blank, &seats, &edges, Label::Measured).unwrap();
        let all = cases(&hanging(install)).unwrap();
        if let Into::Steel { .. } = install.into {
            assert_eq!(group_on_steel(&seats, install.reach.is_some()), Ok(()));
        }
        for expected in &install.expected {
            let name = &install.name;
            let some: Vec<Case> = all.iter().filter(|case| chosen(expected.cases, case)).copied().collect();
            assert!(!some.is_empty(), "{name}");
            let Ok(hold) = hold(&install.into) else {
                assert_eq!(expected.word, "not known", "{name}");
                continue;
            };
            let demand = group.demand(&some);
            let outcome = demand.against(&hold);
            let told = outcome.governing.map(|(ask, used)| (some[ask.case].name, used));
            assert_eq!(word(outcome.word()), expected.word, "{name}: {told:?}, {:?}", outcome.not_known);
            if let Some(uses) = expected.uses {
                let (case, used) = told.unwrap();
                assert!((used.value - uses).abs() < 0.0075, "{name}: {used:?} in {case:?}, expected {uses}");
                assert_eq!(format!("{:?}", case.pull.unwrap()), expected.pull, "{name}");
            }
            if let Some(turning) = expected.turning {
                let asked = |case: &Case| case.name.pull.is_none();
                let turns = demand.not_known.iter().filter(|(case, _)| asked(&some[*case])).map(
                    |(_, why)| match why {
                        Why::Turns { nmm } => nmm / 1000.0,
                        other => panic!("{name}: {other:?}"),
                    },
                );
                let most = turns.fold(0.0, f64::max);
                assert!((most - turning).abs() < 0.1, "{name}: {most}");
                assert_eq!(demand.not_known.len(), some.len(), "{name}: every one");
            }
        }
    }
}
