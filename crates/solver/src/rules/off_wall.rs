//! A piece past the wall's end, its ceiling or its floor cannot hang there, and a plate past the edge of the
//! plane that it is fixed to, a chimney breast for one, has nothing behind it (common practice, no source).

use super::hung;
use super::plane::plane_at;
use super::room::highest_floor;
use super::side::{SIDES, past};
use super::turned::bounds;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Rect;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::subject::Subject;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let survey = &plan.survey;
    let mut told = Vec::new();
    let mut tell = |subject: Subject, rect: Rect, limit: Rect| {
        for side in SIDES {
            let by = past(rect, limit, side);
            if by.mm() > SAME_PLACE_MM {
                let what = What::OffWall { side, by };
                told.push(Finding { level: Level::Stop, subject: subject.clone(), what, mend: Mend::Move });
            }
        }
    };
    for hung in hung::all(job, wall, plan) {
        let rect = hung.bounds();
        let above_floor = Rect { bottom: highest_floor(survey, rect.across()), ..survey.outline };
        tell(hung.at.id.whole(), rect, above_floor);
        let Some((mounted, _)) = hung.mount else { continue };
        let plate = bounds(mounted.frame, mounted.plate);
        let plane = plane_at(survey, plate.centre()).map_or(survey.outline, |plane| plane.rect);
        tell(hung.at.id.part("plate"), plate, plane);
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::geometry::Direction;
    use crate::job::feature::FeatureKind;

    fn stop(subject: &str, side: Direction, by: f64) -> (Level, String, What) {
        (Level::Stop, subject.to_owned(), What::OffWall { side, by: mm(by) })
    }

    #[test]
    fn a_piece_past_an_end_is_told_alike_on_both_sides() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let outline = room.plan.pieces[0].outline;
        for (side, right, up) in [
            (Direction::Left, -1412.0, 0.0),
            (Direction::Right, 1412.0, 0.0),
            (Direction::Up, 0.0, 562.0),
            (Direction::Down, 0.0, -1162.0),
        ] {
            room.plan.pieces[0].outline = outline.moved(mm(right), mm(up));
            assert_eq!(room.told(check), [stop("display-1", side, 12.0)]);
        }
        room.plan.pieces[0].outline = outline.moved(mm(-1400.0), mm(0.0));
        assert!(room.told(check).is_empty(), "touching the corner is not past it");
    }

    #[test]
    fn a_plate_past_its_chimney_breast_is_told_and_a_piece_is_not() {
        for (across, side) in [((1760.0, 3000.0), Direction::Left), ((1000.0, 2240.0), Direction::Right)] {
            let mut room = Sample::good();
            room.feature("breast-1", FeatureKind::ChimneyBreast, across, (0.0, 2400.0), 300.0);
            assert_eq!(room.told(check), [stop("display-1.plate", side, 10.0)]);
        }
    }

    #[test]
    fn a_floor_that_rises_under_the_piece_counts() {
        let mut room = Sample::good();
        room.plan.survey.floor.readings[1].y = mm(20.0);
        room.plan.pieces[0].outline = room.plan.pieces[0].outline.moved(mm(0.0), mm(-1150.0));
        let told = room.told(check);
        // 20 mm over 3800 mm, at 2500 mm from the first reading.
        assert!(
            matches!(&told[..], [(Level::Stop, _, What::OffWall { side: Direction::Down, by })]
            if (by.mm() - 20.0 * 2500.0 / 3800.0).abs() < 1e-9),
            "{told:?}"
        );
    }
}
