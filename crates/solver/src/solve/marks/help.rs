//! The reading of a mark along an axis, with a helping mark where nothing reaches it at once.

use super::candidates::Way;
use super::{Site, help_id, step};
use crate::geometry::{Axis, Direction, Point};
use crate::job::feature::FeatureKind;
use crate::plan::mark::{How, Mark, MarkWhat, Reading, ReadingDatum};
use crate::plan::piece::PiecePlan;
use crate::units::Length;

impl Site<'_> {
    /// The best reading of a place along an axis, and the helping mark it needs, if it needs one.
    pub(super) fn reading(
        &self,
        mark: &Mark,
        suffix: &str,
        place: Point,
        axis: Axis,
        piece: &PiecePlan,
    ) -> (Reading, Option<Mark>) {
        self.reading_by(self.ways(place, axis), mark, suffix, place, axis, piece)
    }

    /// The reading by the first of these ways.
    pub(super) fn reading_by(
        &self,
        ways: Vec<Way>,
        mark: &Mark,
        suffix: &str,
        place: Point,
        axis: Axis,
        piece: &PiecePlan,
    ) -> (Reading, Option<Mark>) {
        if let Some(first) = ways.first() {
            return (self.told(first, &ways, place, axis, piece), None);
        }
        let between = self.between(place, axis);
        let found = between.into_iter().find_map(|help| {
            let ways = self.ways(help, axis);
            let first = ways.first()?.clone();
            self.over_from(help, place, axis).map(|way| (help, first, ways, way))
        });
        let Some((help, first, help_ways, mut way)) = found else {
            return (self.unreached(place, axis), None);
        };
        let id = help_id(&mark.id, suffix, axis);
        way.from = ReadingDatum::Struck(id.clone());
        let reading = self.told(&way, &[], place, axis, piece);
        let help_mark = Mark {
            id,
            place: Some(help),
            readings: vec![self.told(&first, &help_ways, help, axis, piece)],
            on_tape: true,
            ..step(piece, "help", mark.stage, MarkWhat::Help)
        };
        (Reading { close: None, ..reading }, Some(help_mark))
    }

    fn told(&self, way: &Way, ways: &[Way], place: Point, axis: Axis, piece: &PiecePlan) -> Reading {
        Reading {
            from: way.from.clone(),
            how: way.how,
            direction: way.direction,
            at: place.along(axis.cross()),
            value: way.value,
            steps: self.style.steps(way.value),
            taut_over: way.taut_over.clone(),
            close: self.close(way, ways, place, axis, piece),
        }
    }

    /// Places for a helping mark, nearest first: a half and a whole arm span off, then on to the far end of
    /// a pinned tape. Of two as far off the left or lower one comes first.
    fn between(&self, place: Point, axis: Axis) -> Vec<Point> {
        let span = self.settings.arm_span();
        let steps = [0.5, 1.0, 1.5, 2.0, 2.4];
        let outline = self.survey.outline;
        let places = steps.into_iter().flat_map(|share| [-1.0, 1.0].map(|side| span * (share * side)));
        places
            .map(|by| match axis {
                Axis::Across => Point::new(place.x + by, place.y),
                Axis::Upright => Point::new(place.x, place.y + by),
            })
            .filter(|help| {
                outline.holds(*help)
                    && !self.on_a_thing(*help)
                    && self.breast_at(*help).map(|b| &b.id) == self.breast_at(place).map(|b| &b.id)
            })
            .collect()
    }

    /// Whether a feature covers the wall there, so that nothing can be struck: a pane, a door, a shelf. A chimney
    /// breast and panelling are planes that are struck on.
    fn on_a_thing(&self, place: Point) -> bool {
        self.survey.features.iter().any(|feature| {
            !matches!(feature.kind, FeatureKind::ChimneyBreast | FeatureKind::Panelling)
                && feature.rect.holds(place)
        })
    }

    /// The way from a helping mark, where nothing stands between.
    fn over_from(&self, help: Point, place: Point, axis: Axis) -> Option<Way> {
        let forward = help.along(axis) < place.along(axis);
        let direction = match (axis, forward) {
            (Axis::Across, true) => Direction::Right,
            (Axis::Across, false) => Direction::Left,
            (Axis::Upright, true) => Direction::Up,
            (Axis::Upright, false) => Direction::Down,
        };
        let datum = help.along(axis);
        let value = (place.along(axis) - datum).abs();
        let mut way =
            Way { from: ReadingDatum::Nothing, datum, how: How::Help, direction, value, taut_over: None };
        way.taut_over = self.passes(&way, place, axis)?;
        Some(way)
    }

    /// What is left where no helping mark can be placed: the distance from the wall's left end, or from the
    /// floor, to be taken with somebody's help.
    fn unreached(&self, place: Point, axis: Axis) -> Reading {
        let (datum, direction) = match axis {
            Axis::Across if place.x < Length::default() => (Length::default(), Direction::Left),
            Axis::Across => (Length::default(), Direction::Right),
            Axis::Upright => {
                let floor = self.survey.floor.y_at(place.x);
                (floor, if place.y < floor { Direction::Down } else { Direction::Up })
            }
        };
        let value = (place.along(axis) - datum).abs();
        Reading {
            from: ReadingDatum::Nothing,
            how: How::Help,
            direction,
            at: place.along(axis.cross()),
            value,
            steps: self.style.steps(value),
            taut_over: None,
            close: None,
        }
    }
}
