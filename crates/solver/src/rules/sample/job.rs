//! What was measured.

use super::mm;
use crate::job::Job;
use crate::job::framing::{Front, WallFraming, WoodStuds};
use crate::job::mount::{Mount, Rating};
use crate::job::option::{CableWay, Hanging, Nudge, WallOption};
use crate::job::piece::{Pattern, Piece};
use crate::job::place::UprightDatum;
use crate::job::plate::{Plate, PlateHole};
use crate::job::port::{Carries, Port, ReadFrom};
use crate::job::rule::{AcrossRule, PieceHeight, UprightRule};
use crate::job::wall::{Beyond, Wall};
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::Mass;

pub(super) fn job() -> Job {
    Job {
        year_built: Some(2005),
        pieces: vec![display()],
        mounts: vec![mount()],
        walls: vec![wall()],
        ..Job::new()
    }
}

fn display() -> Piece {
    Piece {
        id: Id::new("display-1"),
        width: Some(mm(1200.0)),
        height: Some(mm(700.0)),
        depth: Some(mm(50.0)),
        mass: Some(Mass::kilograms(20.0)),
        pattern: Some(Pattern::new(mm(400.0), mm(400.0))),
        ports: vec![Port {
            id: Id::new("port-1"),
            name: None,
            carries: Carries::Data,
            from: crate::job::place::Sideways::Left,
            read: ReadFrom::Front,
            by: mm(600.0),
            up: mm(350.0),
            points: None,
            reach: None,
        }],
        ..Piece::default()
    }
}

fn mount() -> Mount {
    let hole = |id: &str, right: f64, down: f64| PlateHole {
        id: Id::new(id),
        right: Offset(mm(right)),
        down: mm(down),
        diameter: None,
    };
    Mount {
        id: Id::new("mount-1"),
        plate: Some(Plate {
            solids: Vec::new(),
            thickness: None,
            bearing: None,
            holes: vec![hole("hole-1", -200.0, 20.0), hole("hole-2", 200.0, 20.0)],
            slots: Vec::new(),
        }),
        drop: Some(mm(200.0)),
        stand_off: Some(mm(30.0)),
        rating: Some(Rating {
            mass: Some(Mass::kilograms(25.0)),
            least_across: Some(mm(200.0)),
            most_across: Some(mm(600.0)),
            least_upright: Some(mm(200.0)),
            most_upright: Some(mm(400.0)),
        }),
        ..Mount::default()
    }
}

fn wall() -> Wall {
    let hanging = Hanging {
        id: Id::new("hanging-1"),
        piece: Id::new("display-1"),
        mount: Some(Id::new("mount-1")),
        hung_on: None,
        across: AcrossRule::OnWall,
        upright: UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None,
            by: mm(1500.0),
        },
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    Wall {
        id: Id::new("wall-1"),
        front: Some(Front { layers: Vec::new(), thickness: Some(mm(12.7)) }),
        framing: Some(WallFraming::Wood(WoodStuds::default())),
        beyond: Some(Beyond::Room),
        options: vec![WallOption {
            id: Id::new("option-1"),
            hangings: vec![hanging],
            ..WallOption::default()
        }],
        ..Wall::default()
    }
}
