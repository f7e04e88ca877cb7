//! Whole jobs made of the compact data of the ordinary installs.

use serde::Deserialize;
use strikeline_solver::job::Job;
use strikeline_solver::job::framing::{Concrete, Front, SteelStuds, WallFraming, WoodStuds};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::kit::{FastenerKind, FastenerStock};
use strikeline_solver::job::mount::{Arm, Mount, MountKind, Tilt};
use strikeline_solver::job::option::{CableWay, Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{AcrossReading, UprightDatum, UprightReading};
use strikeline_solver::job::plate::{Plate, PlateHole, Solid};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::job::wall::{End, Wall};
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Angle, Length, Mass};

#[derive(Deserialize)]
pub(crate) struct Install {
    pub(crate) name: String,
    pub(crate) kg: f64,
    pub(crate) width: f64,
    pub(crate) height: f64,
    #[serde(default)]
    pub(crate) reach: Option<f64>,
    pub(crate) into: Into,
    #[serde(default)]
    pub(crate) columns: Vec<f64>,
    pub(crate) rows: Vec<f64>,
    pub(crate) expected: Vec<Expected>,
}

#[derive(Deserialize)]
pub(crate) enum Into {
    Lags { gap: f64 },
    Steel { mil: f64, gap: f64 },
    Concrete { gap: f64 },
}

#[derive(Deserialize)]
pub(crate) struct Expected {
    pub(crate) cases: Which,
    pub(crate) word: String,
    #[serde(default)]
    pub(crate) uses: Option<f64>,
    #[serde(default)]
    #[expect(dead_code, reason = "read by the other test of the same data")]
    pull: String,
    #[serde(default)]
    pub(crate) turning: Option<f64>,
}

#[derive(Clone, Copy, Deserialize, PartialEq)]
pub(crate) enum Which {
    All,
    StraightOut,
    Turning,
}

/// Half of the plate's height: its middle is the display's.
const HALF_PLATE_MM: f64 = 170.0;
/// The display's middle.
const MIDDLE_MM: (f64, f64) = (2000.0, 1500.0);

pub(crate) fn installs() -> Vec<Install> {
    ron::from_str(include_str!("../fastening/ordinary.ron")).unwrap()
}

pub(crate) fn id(word: &str) -> Id {
    Id::new(word)
}

pub(crate) fn plate(job: &mut Job) -> &mut Plate {
    job.mounts[0].plate.as_mut().unwrap()
}

pub(crate) fn plan(job: &Job) -> Plan {
    solve(job, &job.walls[0].id, None)
}

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

impl Install {
    fn columns(&self) -> &[f64] {
        if self.columns.is_empty() { &[-203.0, 203.0] } else { &self.columns }
    }

    pub(crate) fn holes(&self) -> usize {
        self.columns().len() * self.rows.len()
    }
}

/// The whole job: everything measured, every stud probed at every row.
pub(crate) fn room(install: &Install) -> Job {
    let piece = Piece {
        id: id("display-1"),
        width: Some(mm(install.width)),
        height: Some(mm(install.height)),
        depth: Some(mm(60.0)),
        mass: Some(Mass::kilograms(install.kg)),
        ..Piece::default()
    };
    Job {
        pieces: vec![piece],
        mounts: vec![mount(install)],
        walls: vec![wall(install)],
        kit: strikeline_solver::job::kit::Kit { fasteners: vec![stock(&install.into)], ..Default::default() },
        ..Job::new()
    }
}

fn mount(install: &Install) -> Mount {
    let places =
        install.rows.iter().flat_map(|row| install.columns().iter().map(move |column| (*column, *row)));
    let holes = places.enumerate().map(|(index, (right, up))| PlateHole {
        id: id(&format!("hole-{}", index + 1)),
        right: Offset(mm(right)),
        down: mm(HALF_PLATE_MM - up),
        diameter: Some(Length::inches(0.375)),
    });
    let solid = Solid {
        id: id("solid-1"),
        left: Offset(mm(-250.0)),
        right: Offset(mm(250.0)),
        down: mm(0.0),
        height: mm(2.0 * HALF_PLATE_MM),
    };
    Mount {
        id: id("mount-1"),
        kind: if install.reach.is_some() { MountKind::Arm } else { MountKind::Flush },
        // The table gives one mass for all that hangs.
        mass: Some(Mass::kilograms(0.0)),
        plate: Some(Plate {
            solids: vec![solid],
            thickness: Some(Length::inches(0.075)),
            bearing: None,
            holes: holes.collect(),
            slots: Vec::new(),
        }),
        drop: Some(mm(install.height / 2.0 - HALF_PLATE_MM)),
        stand_off: Some(mm(40.0)),
        tilt: install.reach.map(|_| level()),
        arm: install.reach.map(|reach| Arm { reach: Some(mm(reach)), ..Arm::default() }),
        ..Mount::default()
    }
}

/// A head that does not tilt, as somebody looked: the table's arms.
pub(crate) fn level() -> Tilt {
    let none = Some(Angle::degrees(0.0));
    Tilt { down: none, up: none, pivot_down: None }
}

fn stock(into: &Into) -> FastenerStock {
    let (kind, diameter, length) = match into {
        Into::Lags { .. } => (FastenerKind::Lag, 0.3125, 3.0),
        Into::Steel { .. } => (FastenerKind::SheetMetalScrew, 0.19, 1.25),
        Into::Concrete { .. } => (FastenerKind::ConcreteScrew, 0.25, 2.25),
    };
    FastenerStock {
        id: id("fastener-1"),
        kind,
        diameter: Some(Length::inches(diameter)),
        length: Some(Length::inches(length)),
        head: Some(Length::inches(0.5)),
        washer: Some(mm(0.0)),
        count: None,
        to_standard: None,
        report: None,
    }
}

fn wall(install: &Install) -> Wall {
    let (gap, framing) = match &install.into {
        Into::Lags { gap } => {
            let studs = WoodStuds {
                face: Some(Length::inches(1.5)),
                depth: Some(Length::inches(3.5)),
                ..WoodStuds::default()
            };
            (gap, WallFraming::Wood(studs))
        }
        Into::Steel { mil, gap } => {
            let studs = SteelStuds {
                thickness: Some(Length::mils(*mil)),
                face: Some(Length::inches(1.25)),
                depth: Some(Length::inches(3.625)),
            };
            (gap, WallFraming::Steel(studs))
        }
        Into::Concrete { gap } => {
            (gap, WallFraming::Concrete(Concrete { strength: None, normal_weight: Some(true) }))
        }
    };
    let hanging = Hanging {
        id: id("hanging-1"),
        piece: id("display-1"),
        mount: Some(id("mount-1")),
        hung_on: None,
        across: AcrossRule::OnWall,
        upright: UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None,
            by: mm(MIDDLE_MM.1),
        },
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    Wall {
        id: id("wall-1"),
        width: Some(mm(2.0 * MIDDLE_MM.0)),
        height: Some(mm(2600.0)),
        left_end: Some(End::InsideCorner),
        right_end: Some(End::InsideCorner),
        front: Some(Front { layers: Vec::new(), thickness: Some(Length::inches(*gap)) }),
        framing: Some(framing),
        hits: hits(install),
        options: vec![WallOption { id: id("option-1"), hangings: vec![hanging], ..WallOption::default() }],
        ..Wall::default()
    }
}

/// At each row wood (or metal) 14 mm to either side of the stud's middle, and air 26 mm to either side.
fn hits(install: &Install) -> Vec<Hit> {
    let solid = match install.into {
        Into::Lags { .. } => HitKind::Wood,
        Into::Steel { .. } => HitKind::Metal,
        Into::Concrete { .. } => return Vec::new(),
    };
    let mut hits = Vec::new();
    let mut add = |kind: HitKind, x_mm: f64, up_mm: f64| {
        hits.push(Hit {
            id: id(&format!("hit-{}", hits.len() + 1)),
            kind,
            x: AcrossReading::from_left(mm(MIDDLE_MM.0 + x_mm)),
            y: Some(UprightReading::from_floor(mm(MIDDLE_MM.1 + up_mm))),
        });
    };
    // Steel is met where metal is at two heights 300 mm apart and a magnet holds.
    let mut heights = install.rows.clone();
    if solid == HitKind::Metal {
        heights.extend([160.0, -160.0]);
    }
    for column in install.columns() {
        if solid == HitKind::Metal {
            add(HitKind::Magnet, *column, 0.0);
        }
        for row in &heights {
            for (kind, off) in [(solid, -14.0), (solid, 14.0), (HitKind::Air, -26.0), (HitKind::Air, 26.0)] {
                add(kind, column + off, *row);
            }
        }
    }
    hits
}
