//! A wall of wood studs with a display on a plate of two slots a stud, 406 mm apart.

use strikeline_solver::job::Job;
use strikeline_solver::job::framing::{WallFraming, WoodStuds};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{CableWay, Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{AcrossDatum, AcrossReading, UprightDatum, UprightReading};
use strikeline_solver::job::plate::{Plate, PlateSlot};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::job::wall::{End, Wall};
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

pub(crate) fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// The hits, all at one height; the middle between the plate's rows is 1400 mm up.
pub(crate) struct Room {
    pub(crate) hits: Vec<(HitKind, f64)>,
    pub(crate) height: Length,
}

impl Room {
    pub(crate) fn new(hits: &[(HitKind, f64)]) -> Self {
        Self { hits: hits.to_vec(), height: mm(1400.0) }
    }

    pub(crate) fn plan(&self) -> Plan {
        solve(&self.job(), &Id::new("wall-1"), None)
    }

    pub(crate) fn job(&self) -> Job {
        let slot = |id: &str, right: f64, down: f64| PlateSlot {
            id: Id::new(id),
            right: Offset(mm(right)),
            down: mm(down),
            travel: mm(80.0),
            upright: false,
            width: None,
        };
        let plate = Plate {
            slots: vec![
                slot("slot-1", -203.2, 50.0),
                slot("slot-2", 203.2, 50.0),
                slot("slot-3", -203.2, 150.0),
                slot("slot-4", 203.2, 150.0),
            ],
            ..Plate::default()
        };
        let hanging = Hanging {
            id: Id::new("hanging-1"),
            piece: Id::new("display-1"),
            mount: Some(Id::new("mount-1")),
            hung_on: None,
            across: AcrossRule::Beside { from: AcrossDatum::LeftEnd, toward: None, by: mm(703.2) },
            upright: UprightRule::Height {
                of: PieceHeight::Top,
                from: UprightDatum::Floor,
                toward: None,
                by: mm(1600.0),
            },
            nudge: Nudge::default(),
            holes: Vec::new(),
            cables: Vec::new(),
            way: CableWay::default(),
        };
        let hit = |((kind, x), id): (&(HitKind, f64), u32)| Hit {
            id: Id::new(&format!("hit-{id}")),
            kind: *kind,
            x: AcrossReading::from_left(mm(*x)),
            y: Some(UprightReading::from_floor(self.height)),
        };
        let wall = Wall {
            id: Id::new("wall-1"),
            width: Some(mm(4000.0)),
            height: Some(mm(2438.4)),
            left_end: Some(End::InsideCorner),
            right_end: Some(End::InsideCorner),
            framing: Some(WallFraming::Wood(WoodStuds::default())),
            hits: self.hits.iter().zip(1..).map(hit).collect(),
            options: vec![WallOption {
                id: Id::new("option-1"),
                hangings: vec![hanging],
                ..WallOption::default()
            }],
            ..Wall::default()
        };
        Job {
            pieces: vec![Piece {
                id: Id::new("display-1"),
                width: Some(mm(1000.0)),
                height: Some(mm(600.0)),
                ..Piece::default()
            }],
            mounts: vec![Mount {
                id: Id::new("mount-1"),
                plate: Some(plate),
                drop: Some(mm(100.0)),
                play_left: Some(mm(0.0)),
                play_right: Some(mm(0.0)),
                ..Mount::default()
            }],
            walls: vec![wall],
            ..Job::default()
        }
    }
}
