//! The closing check of a reading.

use super::Site;
use super::candidates::Way;
use crate::geometry::{Axis, Direction, Point};
use crate::job::feature::FeatureKind;
use crate::plan::mark::{Close, How, ReadingDatum};
use crate::plan::piece::PiecePlan;
use crate::tape::close_signed;
use crate::units::Length;

impl Site<'_> {
    /// The check of a mark that is read `first`; `others` are all ways to read it, best first.
    pub(super) fn close(
        &self,
        first: &Way,
        others: &[Way],
        place: Point,
        axis: Axis,
        piece: &PiecePlan,
    ) -> Option<Close> {
        match axis {
            Axis::Across => {
                let other = others.iter().find(|way| way.direction == first.direction.opposite())?;
                self.closed(first, other.from.clone(), other.datum, place.x, other.direction)
            }
            Axis::Upright => {
                let (from, datum) = self.below(first, place, piece)?;
                self.closed(first, from, datum, place.y, Direction::Up)
            }
        }
    }

    fn closed(
        &self,
        first: &Way,
        from: ReadingDatum,
        datum: Length,
        mark: Length,
        direction: Direction,
    ) -> Option<Close> {
        let along = first.direction.sign();
        let closing = close_signed((mark - first.datum) * along, (datum - first.datum) * along, self.style);
        Some(Close { from, direction, value: (mark - datum).abs(), closing })
    }

    /// What the customer sees below a mark: the topmost thing, else the floor under the piece.
    fn below(&self, first: &Way, place: Point, piece: &PiecePlan) -> Option<(ReadingDatum, Length)> {
        let on = self.breast_at(place).map(|breast| &breast.id);
        let seen = self.survey.features.iter().filter(|feature| {
            !matches!(
                feature.kind,
                FeatureKind::Outlet
                    | FeatureKind::Switch
                    | FeatureKind::Vent
                    | FeatureKind::Thermostat
                    | FeatureKind::Panelling
                    | FeatureKind::ChimneyBreast
            ) && feature.on.as_ref() == on
                && !feature.assumed
                && feature.rect.across().holds(place.x)
                && feature.top_at(place.x) <= place.y
        });
        let tops = seen.map(|feature| (ReadingDatum::Edge(feature.id.part("top")), feature.top_at(place.x)));
        let topmost =
            tops.filter(|(from, _)| *from != first.from).max_by(|a, b| a.1.mm().total_cmp(&b.1.mm()));
        if topmost.is_some() {
            return topmost;
        }
        if first.from == ReadingDatum::Floor || first.how == How::Floor {
            return None;
        }
        Some((ReadingDatum::Floor, self.survey.floor.y_at(piece.ruled_centre.x)))
    }
}
