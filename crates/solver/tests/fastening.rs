//! Published check values of fasteners, through the functions that a plan is made with.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "fastening/printed.rs"]
mod printed;
#[path = "fastening/sample.rs"]
mod sample;

use sample::{inch, ratio};
use serde::Deserialize;
use strikeline_solver::capacity::bite::{Stack, bite, in_wood};
use strikeline_solver::capacity::case::{Case, CaseName, Posture};
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::dowel_bearing::{Grain, dowel_bearing};
use strikeline_solver::capacity::duration::{Lasting, for_connection};
use strikeline_solver::capacity::group::Group;
use strikeline_solver::capacity::hold::{Hold, InWood};
use strikeline_solver::capacity::in_plane::{Plane, PlaneLoad};
use strikeline_solver::capacity::lateral::lateral;
use strikeline_solver::capacity::placing::{Carries, InFace, carries};
use strikeline_solver::capacity::reduction::{k_d, reduction};
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::steel::in_steel;
use strikeline_solver::capacity::used::{Asked, used};
use strikeline_solver::capacity::why::Why;
use strikeline_solver::capacity::withdrawal::{per_length, withdrawal};
use strikeline_solver::capacity::yield_modes::{Joint, yield_loads};
use strikeline_solver::handbook::steel_stud::CELLS;
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::units::{Force, Length, Stress};

#[derive(Deserialize)]
struct Row {
    #[serde(default)]
    row: usize,
    given: Check,
    #[serde(default)]
    expected: Vec<f64>,
    #[serde(default)]
    tol: f64,
    source: String,
    label: String,
}

#[derive(Clone, Copy, Debug, Deserialize)]
enum Size {
    Lag(f64),
    Wood(f64),
}

#[derive(Clone, Copy, Debug, Deserialize)]
enum Side {
    /// Sheet steel so thick.
    Steel(f64),
    /// A plate so thick that bears so much.
    Plate(f64, f64),
    /// Wood of the same kind so thick.
    Wood(f64),
}

#[derive(Debug, Deserialize)]
enum Check {
    Withdrawal {
        screw: Size,
        g: f64,
    },
    Pulled {
        screw: Size,
        g: f64,
        thread: f64,
    },
    PulledThrough {
        screw: Size,
        g: f64,
        length: f64,
        side: f64,
    },
    Bearing {
        screw: Size,
        g: f64,
        #[serde(default)]
        across: bool,
    },
    KD(Vec<f64>),
    Shear {
        screw: Size,
        g: f64,
        side: Side,
        #[serde(default)]
        gap: f64,
        #[serde(default)]
        across: bool,
        #[serde(default)]
        both: bool,
        #[serde(default)]
        mode: String,
    },
    Modes {
        gap: f64,
        main: f64,
        side: f64,
        #[serde(default)]
        across: bool,
    },
    SameAsWithoutGap,
    Together {
        shear: f64,
        pull: f64,
        degrees: Vec<f64>,
    },
    BearingLength {
        screw: Size,
        depth: f64,
    },
    TooShallow(Vec<(Size, f64)>),
    SteelCell(f64, f64),
    ConcreteCell(f64, f64),
    InPlane {
        xs: Vec<f64>,
        ys: Vec<f64>,
        right: f64,
        up: f64,
        turning: f64,
    },
    TwoRows {
        force: f64,
        out: f64,
        apart: f64,
    },
    LagThread {
        diameter: f64,
        length: f64,
    },
    Drift {
        screw: Size,
        face: f64,
    },
    Across {
        screw: Size,
        face: f64,
    },
    Duration(f64),
    Unused(String),
}

impl Size {
    fn long(self, length: f64) -> Screw {
        match self {
            Self::Lag(d) => Screw::lag(inch(d), inch(length)).unwrap(),
            Self::Wood(d) => Screw::wood_screw(inch(d), inch(length)).unwrap(),
        }
    }
}

fn stack(plate: f64, psi: f64, gap: f64) -> Stack {
    Stack {
        washer: inch(0.0),
        plate: inch(plate),
        plate_bearing: Given::measured(Stress::psi(psi)),
        gap: inch(gap),
        stud_depth: inch(12.0),
    }
}

fn grain(across: bool) -> Grain {
    if across { Grain::Across } else { Grain::Along }
}

/// Shear at the depth of the tables: 10 D for a wood screw, 8 D without the tip for a lag. The load, and its mode.
fn shear(size: Size, g: f64, side: Side, gap: f64, across: bool) -> (f64, &'static str) {
    let screw = size.long(6.0);
    let d = screw.diameter.value;
    let depth = match size {
        Size::Lag(_) => d * 8.0 + screw.tip.value,
        Size::Wood(_) => d * 10.0,
    };
    let bite = in_wood(&mut Blank, &screw, Given::measured(depth)).unwrap();
    let bears = dowel_bearing(&mut Blank, &screw, ratio(g), grain(across)).unwrap().value.in_psi();
    let stack = match side {
        Side::Steel(t) => stack(t, 61_850.0, gap),
        Side::Plate(t, psi) => stack(t, psi, gap),
        Side::Wood(t) => stack(t, bears, gap),
    };
    let one = Given::measured(1.0);
    let found = lateral(&mut Blank, &screw, ratio(g), &stack, &bite, grain(across), one).unwrap();
    (found.holds.value.lbf(), found.mode.symbol())
}

fn refused(failed: bool) -> f64 {
    if failed { 1.0 } else { 0.0 }
}

fn work(check: &Check) -> Vec<f64> {
    match check {
        Check::Withdrawal { screw, g } => {
            vec![per_length(&mut Blank, &screw.long(3.0), ratio(*g)).unwrap().value.lbf_per_in()]
        }
        Check::Pulled { screw, g, thread } => {
            let screw = screw.long(12.0);
            let mut bite = in_wood(&mut Blank, &screw, inch(8.0)).unwrap();
            bite.thread = inch(*thread);
            vec![withdrawal(&mut Blank, &screw, ratio(*g), &bite, Given::measured(1.0)).unwrap().value.lbf()]
        }
        Check::PulledThrough { screw, g, length, side } => {
            let screw = screw.long(*length);
            let bite = bite(&mut Blank, &screw, &stack(*side, 5000.0, 0.0)).unwrap();
            vec![withdrawal(&mut Blank, &screw, ratio(*g), &bite, Given::measured(1.0)).unwrap().value.lbf()]
        }
        Check::Bearing { screw, g, across } => {
            vec![
                dowel_bearing(&mut Blank, &screw.long(3.0), ratio(*g), grain(*across))
                    .unwrap()
                    .value
                    .in_psi(),
            ]
        }
        Check::KD(roots) => roots.iter().map(|root| k_d(*root)).collect(),
        Check::Shear { screw, g, side, gap, across, both, mode } => {
            let (first, governs) = shear(*screw, *g, *side, *gap, *across);
            assert!(mode.is_empty() || mode == governs, "{governs}");
            let mut all = vec![first];
            if *both {
                all.push(shear(*screw, *g, *side, *gap, true).0);
            }
            all
        }
        Check::Modes { gap, main, side, across } => {
            let half = Length::inches(0.5);
            let terms = reduction(&mut Blank, half, Given::measured(half), grain(*across)).unwrap();
            let joint = Joint {
                diameter_in: 0.5,
                bending_psi: 45_000.0,
                main_psi: *main,
                main_in: 1.5,
                side_psi: *side,
                side_in: 1.5,
                gap_in: *gap,
            };
            yield_loads(&joint, &terms).to_vec()
        }
        Check::SameAsWithoutGap => vec![printed::without_gap()],
        Check::Together { shear, pull, degrees } => {
            let wood = InWood { along_n: *shear, across_n: *shear, withdrawal_n: *pull, steel_n: 1e6 };
            let label = strikeline_solver::ledger::Label::Read;
            let hold = Hold::Wood { permanent: wood, ten_minutes: wood, label };
            let at = |deg: &f64| {
                let (v, t) = (deg.to_radians().cos().abs(), deg.to_radians().sin());
                let asked = Asked { along_n: v, across_n: 0.0, pull_n: t, label: Label::Derived };
                1.0 / used(&mut Blank, &asked, &hold, Lasting::TenMinutes).unwrap().value
            };
            degrees.iter().map(at).collect()
        }
        Check::BearingLength { screw, depth } => {
            let bite = in_wood(&mut Blank, &screw.long(6.0), inch(*depth)).unwrap();
            vec![bite.bearing.value.in_inches()]
        }
        Check::TooShallow(all) => {
            let shallow = |(size, depth): &(Size, f64)| {
                let found = in_wood(&mut Blank, &size.long(6.0), inch(*depth));
                refused(matches!(found, Err(Why::Shallow { .. })))
            };
            all.iter().map(shallow).collect()
        }
        Check::SteelCell(mil, d) => {
            let thickness = Given::measured(Length::mils(*mil));
            let bare = in_steel(&mut Blank, inch(*d), thickness, inch(0.0)).unwrap();
            let behind_board = in_steel(&mut Blank, inch(*d), thickness, inch(0.5)).unwrap();
            assert!((behind_board.shear_n * 2.0 - bare.shear_n).abs() < 1e-9);
            // The third is never the least of the two pulls: it is looked up in the same row.
            let cell = CELLS.iter().find(|cell| cell.mil == *mil && cell.diameter_in == *d).unwrap();
            vec![lbf(bare.shear_n), lbf(bare.pull_n), cell.pull_over_lbf.value]
        }
        Check::ConcreteCell(d, psi) => {
            let screw = ConcreteScrew {
                diameter: inch(*d),
                depth: inch(1.75),
                gap: inch(0.0),
                edge: inch(16.0 * d),
                strength: Some(Given::measured(Stress::psi(*psi))),
                normal_weight: true,
            };
            let holds = in_concrete(&mut Blank, &screw).unwrap();
            vec![lbf(holds.pull_n), lbf(holds.shear_n)]
        }
        Check::InPlane { xs, ys, right, up, turning } => {
            let mut seats = Vec::new();
            for x in xs {
                for y in ys {
                    let stud = seats.len();
                    seats.push(Seat { x_mm: *x, y_mm: *y, stud, along: true, across: true });
                }
            }
            let load = PlaneLoad { right_n: *right, up_n: *up, turning_nmm: *turning, label: Label::Derived };
            let plane = Plane::of(&mut Blank, &seats, Label::Measured);
            let spread = plane.spread(&mut Blank, &load).unwrap();
            let worst = (0..seats.len())
                .map(|seat| plane.shear(&mut Blank, seat, &spread).unwrap())
                .map(|(up, right)| up.hypot(right))
                .fold(0.0, f64::max);
            vec![worst]
        }
        Check::TwoRows { force, out, apart } => {
            let seat = |y_mm: f64, stud: usize| Seat { x_mm: 0.0, y_mm, stud, along: true, across: true };
            let edges = Edges { left_mm: -1.5, right_mm: 1.5, bottom_mm: -5.0, top_mm: 5.0 };
            let group =
                Group::of(&mut Blank, &[seat(0.0, 0), seat(*apart, 1)], &edges, Label::Measured).unwrap();
            let case = Case {
                name: CaseName { posture: Posture::AsHung, pull: None },
                lasting: Lasting::TenMinutes,
                down_n: *force,
                down_x_nmm: 0.0,
                down_z_nmm: force * out,
                out: None,
                label: Label::Derived,
            };
            vec![group.asked(&mut Blank, 1, &case).unwrap().pull_n]
        }
        Check::LagThread { diameter, length } => {
            let lag = Screw::lag(inch(*diameter), inch(*length)).unwrap();
            let bite = bite(&mut Blank, &lag, &stack(0.105, 61_850.0, 0.5)).unwrap();
            [lag.thread.value, lag.tip.value, bite.thread.value].map(Length::in_inches).to_vec()
        }
        Check::Drift { screw, face } => {
            let holds = |drift: f64| {
                let at = InFace { face: inch(*face), drift: inch(drift), doubt: inch(0.0) };
                carries(&mut Blank, &screw.long(3.0), &at).is_ok()
            };
            let (mut least, mut most) = (0.0, *face);
            for _ in 0..60 {
                let middle = (least + most) / 2.0;
                if holds(middle) { least = middle } else { most = middle }
            }
            vec![least]
        }
        Check::Across { screw, face } => {
            let at = InFace { face: inch(*face), drift: inch(0.0), doubt: inch(0.0) };
            vec![refused(carries(&mut Blank, &screw.long(3.0), &at) == Ok(Carries::Along))]
        }
        Check::Duration(factor) => {
            vec![refused(for_connection(Given::measured(*factor)) == Err(Why::AboveCap))]
        }
        Check::Unused(_) => Vec::new(),
    }
}

fn lbf(newtons: f64) -> f64 {
    Force::newtons(newtons).lbf()
}

#[test]
fn every_check_value_comes_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("fastening/rows.ron")).unwrap();
    let numbers: Vec<usize> = rows.iter().map(|row| row.row).collect();
    assert_eq!(numbers, (1..=78).collect::<Vec<_>>(), "every row once");
    assert_eq!(all_near(&rows), 62, "rows whose formula is used");
}

#[test]
fn the_other_cells_of_the_tables_come_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("fastening/tables.ron")).unwrap();
    assert_eq!(all_near(&rows), rows.len());
}

#[test]
fn every_cell_of_the_steel_table_is_what_its_formulas_give() {
    // AISI S100 section E4 with omega 3.0: tilting 4.2 sqrt(t^3 d) Fu, pull-out 0.85 t d Fu, pull-over 1.5 t d_w Fu.
    // Its coefficients are from memory: they check the reading of the printed cells and make none.
    let fu = 33_000.0;
    assert_eq!(CELLS.len(), 10);
    for cell in CELLS {
        let t: f64 = if cell.mil == 18.0 { 0.0188 } else { 0.0283 };
        let head = match cell.diameter_in {
            d if d < 0.17 => 0.272,
            d if d < 0.22 => 0.340,
            _ => 0.409,
        };
        let formulas =
            [4.2 * (t.powi(3) * cell.diameter_in).sqrt(), 0.85 * t * cell.diameter_in, 1.5 * t * head];
        let printed = [cell.shear_lbf, cell.pull_out_lbf, cell.pull_over_lbf];
        for (formula, printed) in formulas.into_iter().zip(printed) {
            assert!((formula * fu / 3.0 - printed.value).abs() <= 0.6, "{cell:?}");
        }
    }
}

/// How many rows were worked; all of them came out.
fn all_near(rows: &[Row]) -> usize {
    let mut failed = Vec::new();
    let mut used = 0;
    for row in rows {
        assert!(!row.source.is_empty() && !row.label.is_empty(), "row {}", row.row);
        if let Check::Unused(why) = &row.given {
            assert!(!why.is_empty() && row.expected.is_empty(), "row {}", row.row);
            continue;
        }
        used += 1;
        assert!(!row.expected.is_empty(), "row {}", row.row);
        let found = work(&row.given);
        let near = found.len() == row.expected.len()
            && found.iter().zip(&row.expected).all(|(found, expected)| (found - expected).abs() <= row.tol);
        if !near {
            failed.push(format!(
                "row {}: {:?} gives {found:?}, expected {:?}",
                row.row, row.given, row.expected
            ));
        }
    }
    assert!(failed.is_empty(), "{}", failed.join("\n"));
    used
}
