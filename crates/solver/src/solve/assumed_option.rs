//! The option of a wall that has none: the first piece on the first mount, centred.

use crate::job::Job;
use crate::job::option::{Hanging, Nudge, WallOption};
use crate::job::place::UprightDatum;
use crate::job::rule::{AcrossRule, PieceHeight, UprightRule};
use crate::subject::Id;
use crate::units::{Length, LengthUnit};

/// Centred on the wall with its middle at 60 in, a height at which anybody standing can judge it (chosen).
///
/// Without ids, since it is none of the job's; without a piece in the job nothing hangs.
#[must_use]
pub fn assumed_option(job: &Job) -> WallOption {
    let Some(piece) = job.pieces.first() else { return WallOption::default() };
    let unit = match job.units() {
        crate::job::Units::Inches => LengthUnit::Inch,
        crate::job::Units::Millimetres => LengthUnit::Millimetre,
    };
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
            by: Length::millimetres(1524.0).with_unit(unit),
        },
        nudge: Nudge::default(),
        cables: Vec::new(),
    };
    WallOption { hangings: vec![hanging], ..WallOption::default() }
}
