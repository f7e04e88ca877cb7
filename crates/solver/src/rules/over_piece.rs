//! Two pieces cannot be in one place (common practice, no source). A box that hangs on a display may be
//! behind it.

use super::hung::{self, Hung};
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let behind = |a: &Hung<'_>, b: &Hung<'_>| a.at.kind == PieceKind::Box && a.hangs_on(b);
    let mut told = Vec::new();
    let mut rest = all.as_slice();
    while let [piece, others @ ..] = rest {
        for other in others {
            let apart = !piece.bounds().overlaps(other.bounds());
            if apart || behind(piece, other) || behind(other, piece) {
                continue;
            }
            let what = What::OverPiece { other: other.at.id.clone() };
            told.push(Finding { level: Level::Stop, subject: piece.at.id.whole(), what, mend: Mend::Move });
        }
        rest = others;
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::subject::Id;

    #[test]
    fn pieces_that_share_area_are_told_once() {
        let mut room = Sample::good();
        room.second_piece("bar-1", PieceKind::SoundBar, (1600.0, 2400.0), (1080.0, 1150.0));
        assert!(room.told(check).is_empty());
        room.plan.pieces[1].outline.top = crate::units::Length::millimetres(1151.0);
        let what = What::OverPiece { other: Id::new("bar-1") };
        assert_eq!(room.told(check), [(Level::Stop, "display-1".to_owned(), what)]);
    }

    #[test]
    fn a_box_may_be_behind_the_display_it_hangs_on() {
        let mut room = Sample::good();
        room.second_piece("box-1", PieceKind::Box, (1600.0, 1800.0), (1200.0, 1300.0));
        assert_eq!(room.told(check).len(), 1);
        room.second_hanging().hung_on = Some(Id::new("display-1"));
        assert!(room.told(check).is_empty());
    }
}
