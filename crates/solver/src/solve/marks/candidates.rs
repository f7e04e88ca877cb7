//! The ways in which a place on the wall can be read, and the best of them.

use super::Site;
use crate::geometry::{Axis, Direction, Point};
use crate::job::feature::FeatureKind;
use crate::job::kit::MeasureKind;
use crate::job::wall::End;
use crate::plan::mark::{How, ReadingDatum};
use crate::plan::survey::PlacedFeature;
use crate::subject::Id;
use crate::tolerance::{BUTT_PROUD_MM, SAME_PLACE_MM};
use crate::units::Length;

/// One way to read a place along an axis.
#[derive(Clone, Debug)]
pub(super) struct Way {
    pub(super) from: ReadingDatum,
    /// Where the datum is on the axis.
    pub(super) datum: Length,
    pub(super) how: How,
    /// From the datum to the mark.
    pub(super) direction: Direction,
    pub(super) value: Length,
    pub(super) taut_over: Option<Id>,
}

impl Site<'_> {
    /// The chimney breast that a place is on.
    pub(super) fn breast_at(&self, place: Point) -> Option<&PlacedFeature> {
        self.survey.breast_at(place.x, Some(place.y))
    }

    /// Every way to read a place along an axis that one person can take, best first. Of two as good and as far
    /// a feature's edge, in the job's order, comes before an end, and the left end before the right.
    pub(super) fn ways(&self, place: Point, axis: Axis) -> Vec<Way> {
        let mut ways = match axis {
            Axis::Across => self.across_ways(place),
            Axis::Upright => self.upright_ways(place),
        };
        let pinned = self.settings.pinned_reach();
        let reach = |way: &Way| match way.how {
            How::Meter => None,
            How::Floor => Some(self.settings.floor_reach()),
            _ => Some(pinned),
        };
        let slack = Length::millimetres(SAME_PLACE_MM);
        ways.retain(|way| reach(way).is_none_or(|reach| way.value <= reach + slack));
        ways.retain_mut(|way| match self.passes(way, place, axis) {
            Some(taut_over) => {
                way.taut_over = taut_over;
                true
            }
            None => false,
        });
        let span = self.settings.arm_span() + slack;
        ways.sort_by(|a, b| {
            let far = |way: &Way| way.value > span;
            far(a).cmp(&far(b)).then(a.how.cmp(&b.how)).then(a.value.mm().total_cmp(&b.value.mm()))
        });
        ways
    }

    /// The ways to read the heights of a line's two ends, best first, from one datum where the best ways leave a
    /// choice: a shelf under one end and a rail under the other need not agree.
    pub(super) fn ways_of_ends(&self, left: Point, right: Point) -> (Vec<Way>, Vec<Way>) {
        let (mut at_left, mut at_right) = (self.ways(left, Axis::Upright), self.ways(right, Axis::Upright));
        let span = self.settings.arm_span() + Length::millimetres(SAME_PLACE_MM);
        let as_good = |ways: &[Way], way: &Way| {
            ways.first()
                .is_some_and(|first| first.how == way.how && (first.value > span) == (way.value > span))
        };
        let shared = at_left.iter().position(|way| {
            let other = at_right.iter().find(|other| other.from == way.from);
            as_good(&at_left, way) && other.is_some_and(|other| as_good(&at_right, other))
        });
        if let Some(shared) = shared {
            let way = at_left.remove(shared);
            if let Some(other) = at_right.iter().position(|other| other.from == way.from) {
                let other = at_right.remove(other);
                at_right.insert(0, other);
            }
            at_left.insert(0, way);
        }
        (at_left, at_right)
    }

    fn across_ways(&self, place: Point) -> Vec<Way> {
        let mut ways = Vec::new();
        let breast = self.breast_at(place);
        let mut add = |from, datum: Length, how, direction: Direction| {
            let value = (place.x - datum) * direction.sign();
            if value >= Length::default() {
                ways.push(Way { from, datum, how, direction, value, taut_over: None });
            }
        };
        for feature in self.facing(breast) {
            let spans = feature.bottom_at(place.x) <= place.y && place.y <= feature.top_at(place.x);
            if !spans {
                continue;
            }
            add(
                ReadingDatum::Edge(feature.id.part("right")),
                feature.rect.right,
                How::Butt,
                Direction::Right,
            );
            add(ReadingDatum::Edge(feature.id.part("left")), feature.rect.left, How::Butt, Direction::Left);
        }
        if let Some(breast) = breast {
            add(ReadingDatum::Edge(breast.id.part("left")), breast.rect.left, How::Hook, Direction::Right);
            add(ReadingDatum::Edge(breast.id.part("right")), breast.rect.right, How::Hook, Direction::Left);
            return ways;
        }
        let meter = self.job.kit.has(MeasureKind::DistanceMeter);
        let right_end = self.wall.width.map(|_| self.survey.right_end);
        for (end, from, datum, direction) in [
            (Some(self.survey.left_end), ReadingDatum::LeftEnd, Length::default(), Direction::Right),
            (right_end, ReadingDatum::RightEnd, self.survey.outline.right, Direction::Left),
        ] {
            match end {
                Some(End::InsideCorner) => {
                    add(from.clone(), datum, How::Corner, direction);
                    if meter {
                        add(from, datum, How::Meter, direction);
                    }
                }
                Some(End::OutsideCorner) => add(from, datum, How::Hook, direction),
                Some(End::Open) | None => {}
            }
        }
        ways
    }

    fn upright_ways(&self, place: Point) -> Vec<Way> {
        let mut ways = Vec::new();
        let breast = self.breast_at(place);
        let mut add = |from, datum: Length, how, direction: Direction| {
            let value = (place.y - datum) * direction.sign();
            if value >= Length::default() {
                ways.push(Way { from, datum, how, direction, value, taut_over: None });
            }
        };
        for feature in self.facing(breast).filter(|feature| feature.rect.across().holds(place.x)) {
            if feature.kind == FeatureKind::ChimneyBreast {
                continue;
            }
            add(
                ReadingDatum::Edge(feature.id.part("top")),
                feature.top_at(place.x),
                How::Butt,
                Direction::Up,
            );
            add(
                ReadingDatum::Edge(feature.id.part("bottom")),
                feature.bottom_at(place.x),
                How::Butt,
                Direction::Down,
            );
        }
        // Floor readings give the line its height; whether it still stands there, the job says.
        if let (Some(line), Some(_)) = (self.survey.control_line_y, self.wall.control_line) {
            let direction = if place.y < line { Direction::Down } else { Direction::Up };
            add(ReadingDatum::ControlLine, line, How::Level, direction);
        }
        add(ReadingDatum::Floor, self.survey.floor.y_at(place.x), How::Floor, Direction::Up);
        ways
    }

    /// The features on the mark's own plane whose edges a tape's end can be held against.
    ///
    /// Not what hangs at the ceiling, nor a curtain, which gives way.
    fn facing(&self, breast: Option<&PlacedFeature>) -> impl Iterator<Item = &PlacedFeature> {
        let on = breast.map(|breast| breast.id.clone());
        self.survey.features.iter().filter(move |feature| {
            let firm =
                !matches!(feature.kind, FeatureKind::Crown | FeatureKind::Soffit | FeatureKind::Curtain);
            let own_plane = feature.on == on && Some(&feature.id) != on.as_ref();
            firm && own_plane && !feature.assumed && feature.proud.mm() >= BUTT_PROUD_MM - SAME_PLACE_MM
        })
    }
}
