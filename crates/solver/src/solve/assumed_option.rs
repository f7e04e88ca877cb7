//! The option of a wall that has none: the first piece on the first mount, centred.

use super::Notes;
use crate::job::Job;
use crate::job::option::{Hanging, Nudge, WallOption};
use crate::job::place::UprightDatum;
use crate::job::rule::{AcrossRule, PieceHeight, UprightRule};
use crate::job::wall::Wall;
use crate::plan::AssumedWhat;
use crate::subject::Id;
use crate::units::Length;

/// Centred on the wall with its middle at 60 in, a height at which anybody standing can judge it (chosen).
pub(super) fn assumed_option(job: &Job, wall: &Wall, notes: &mut Notes) -> WallOption {
    let Some(piece) = job.pieces.first() else { return WallOption::default() };
    notes.assume(wall.id.whole(), AssumedWhat::Option, true);
    let hanging = Hanging {
        id: Id::default(),
        piece: piece.id.clone(),
        mount: job.mounts.first().map(|mount| mount.id.clone()),
        hung_on: None,
        across: AcrossRule::OnWall,
        upright: UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None,
            by: Length::millimetres(1524.0),
        },
        nudge: Nudge::default(),
        cables: Vec::new(),
    };
    WallOption { hangings: vec![hanging], ..WallOption::default() }
}
