//! The free room beside, above or below a hung piece.

use super::hung::Hung;
use super::plane::proud_of;
use super::side::gap;
use crate::geometry::{Direction, Span};
use crate::job::wall::End;
use crate::plan::survey::Survey;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

/// From a piece's edge to the nearest thing in its way on one side; `None` where nothing limits it.
///
/// In the way are the ceiling, the floor, an inside corner, other pieces that do not hang on this one, and
/// features that stand out farther than the piece's back. What the piece already covers is not beside it.
pub(super) fn room_beside(
    survey: &Survey,
    all: &[Hung<'_>],
    piece: &Hung<'_>,
    side: Direction,
) -> Option<Length> {
    let own = piece.bounds();
    let inside_corner = |end: End, room: Length| (end == End::InsideCorner).then_some(room);
    let wall = match side {
        Direction::Left => inside_corner(survey.left_end, own.left - survey.outline.left),
        Direction::Right => inside_corner(survey.right_end, survey.outline.right - own.right),
        Direction::Up => Some(survey.outline.top - own.top),
        Direction::Down => Some(own.bottom - highest_floor(survey, own.across())),
    };
    let others = all
        .iter()
        .filter(|other| other.at.id != piece.at.id && !other.hangs_on(piece) && !piece.hangs_on(other))
        .map(Hung::bounds);
    let centre = piece.at.outline.centre();
    let features = survey
        .features
        .iter()
        .filter(|feature| proud_of(survey, centre, feature) > piece.stand_off())
        .map(|feature| feature.rect);
    let cross = side.axis().cross();
    let things = others
        .chain(features)
        .filter(|rect| rect.span(cross).overlaps(own.span(cross)))
        .map(|rect| gap(own, rect, side))
        .filter(|gap| gap.mm() >= -SAME_PLACE_MM);
    wall.into_iter().chain(things).reduce(Length::min)
}

/// The floor's highest place under a stretch of the wall.
pub(super) fn highest_floor(survey: &Survey, across: Span) -> Length {
    floor_under(survey, across, Length::max)
}

/// The floor's lowest place under a stretch of the wall.
pub(super) fn lowest_floor(survey: &Survey, across: Span) -> Length {
    floor_under(survey, across, Length::min)
}

fn floor_under(survey: &Survey, across: Span, of_two: fn(Length, Length) -> Length) -> Length {
    let floor = &survey.floor;
    let between = floor.readings.iter().filter(|reading| across.holds(reading.x)).map(|reading| reading.y);
    between.fold(of_two(floor.y_at(across.from), floor.y_at(across.to)), of_two)
}

#[cfg(test)]
mod tests {
    use super::super::hung;
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;

    fn rooms(room: &Sample) -> [Option<f64>; 4] {
        let all = hung::all(&room.job, room.wall(), &room.plan);
        [Direction::Left, Direction::Right, Direction::Up, Direction::Down]
            .map(|side| room_beside(&room.plan.survey, &all, &all[0], side).map(Length::mm))
    }

    #[test]
    fn room_ends_at_corners_and_at_what_stands_prouder_than_the_back() {
        let mut room = Sample::good();
        assert_eq!(rooms(&room), [Some(1400.0), Some(1400.0), Some(550.0), Some(1150.0)]);
        room.plan.survey.left_end = End::OutsideCorner;
        room.plan.survey.right_end = End::Open;
        assert_eq!(rooms(&room), [None, None, Some(550.0), Some(1150.0)]);
        room.feature("trim-1", FeatureKind::Trim, (0.0, 4000.0), (1850.0, 1900.0), 29.0);
        assert_eq!(rooms(&room)[2], Some(550.0));
        room.feature("soffit-1", FeatureKind::Soffit, (0.0, 4000.0), (2100.0, 2400.0), 31.0);
        assert_eq!(rooms(&room)[2], Some(250.0));
    }

    #[test]
    fn the_highest_floor_may_be_between() {
        let mut room = Sample::good();
        for (x, y) in [(1000.0, 0.0), (2000.0, 12.0), (3000.0, 0.0)] {
            room.plan.survey.floor.readings.push(crate::geometry::Point::new(mm(x), mm(y)));
        }
        room.plan.survey.floor.readings.sort_by(|a, b| a.x.mm().total_cmp(&b.x.mm()));
        assert_eq!(rooms(&room)[3], Some(1138.0));
    }
}
