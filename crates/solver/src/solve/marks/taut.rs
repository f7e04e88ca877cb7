//! Whether a tape may pass over what stands proud on its way.

use super::Site;
use super::candidates::Way;
use crate::geometry::{Axis, Point, Span};
use crate::job::feature::FeatureKind;
use crate::plan::mark::{How, ReadingDatum};
use crate::plan::survey::PlacedFeature;
use crate::subject::Id;
use crate::tolerance::{METER_CLEAR_MM, SAME_PLACE_MM};
use crate::units::Length;

impl Site<'_> {
    /// `Some(thing to keep taut over)` where the way is open, `None` where something stands too far out.
    ///
    /// A tape may pass over what stands proud only while the way over it is longer than the straight way by
    /// less than half a graduation.
    pub(super) fn passes(&self, way: &Way, place: Point, axis: Axis) -> Option<Option<Id>> {
        let path = Span::new(way.datum, place.along(axis));
        let things: Vec<&PlacedFeature> = self.on_the_way(way, path, place, axis).collect();
        if things.is_empty() {
            return Some(None);
        }
        // A reading stays on one plane: the far side of a breast is not the wall's, however shallow the breast.
        if things.iter().any(|thing| thing.kind == FeatureKind::ChimneyBreast) {
            return None;
        }
        if way.how == How::Meter {
            let clear = things.iter().all(|thing| thing.proud.mm() <= METER_CLEAR_MM);
            return clear.then_some(None);
        }
        // Distances from the datum, depths off the wall, in millimetres.
        let length_mm = path.length().mm();
        let from_datum = |thing: &PlacedFeature| {
            let span = thing.rect.span(axis);
            let (near, far) = if way.datum <= path.from {
                (span.from - path.from, span.to - path.from)
            } else {
                (path.to - span.to, path.to - span.from)
            };
            (near.mm().max(0.0), far.mm().min(length_mm))
        };
        // The floor and a side wall are planes: there the tape's end stands as far out as what stands there.
        let plane = matches!(way.from, ReadingDatum::Floor | ReadingDatum::LeftEnd | ReadingDatum::RightEnd);
        let starts_at = |thing: &&&PlacedFeature| plane && from_datum(thing).0 <= SAME_PLACE_MM;
        let start_mm = things.iter().filter(starts_at).map(|thing| thing.proud.mm()).fold(0.0, f64::max);
        let mut corners = vec![(0.0, start_mm), (length_mm, 0.0)];
        for thing in &things {
            let (near_mm, far_mm) = from_datum(thing);
            corners.extend([(near_mm, thing.proud.mm()), (far_mm, thing.proud.mm())]);
        }
        let excess_mm = taut_length_mm(&corners) - length_mm;
        let half_step_mm = self.style.length_of(1).mm() / 2.0;
        let outermost = things.iter().max_by(|a, b| a.proud.mm().total_cmp(&b.proud.mm()));
        (excess_mm < half_step_mm).then(|| outermost.map(|thing| thing.id.clone()))
    }

    /// What stands proud of the mark's plane between datum and mark, and for a mark on the wall any breast there;
    /// not the datum's own thing, nor what the mark itself is on.
    fn on_the_way<'a>(
        &'a self,
        way: &'a Way,
        path: Span,
        place: Point,
        axis: Axis,
    ) -> impl Iterator<Item = &'a PlacedFeature> {
        let breast = self.breast_at(place).map(|breast| &breast.id);
        let own = match &way.from {
            ReadingDatum::Edge(subject) => Some(&subject.id),
            _ => None,
        };
        self.survey.features.iter().filter(move |feature| {
            let crosses = feature.rect.span(axis).overlaps(path)
                && feature.rect.span(axis.cross()).holds(place.along(axis.cross()));
            // From the floor up to a place on a breast the way leads before its face alone.
            let same_plane = feature.on.as_ref() == breast && feature.kind != FeatureKind::ChimneyBreast
                || breast.is_none() && feature.kind == FeatureKind::ChimneyBreast;
            crosses
                && same_plane
                && feature.proud > Length::default()
                && Some(&feature.id) != own
                && !feature.rect.holds(place)
        })
    }
}

/// The length of a blade held taut over corners given by place and depth: their upper hull, from the first
/// corner on, where its end is held. What stands over that end has to be climbed.
fn taut_length_mm(corners: &[(f64, f64)]) -> f64 {
    let Some((start, over)) = corners.split_first() else { return 0.0 };
    let mut sorted = over.to_vec();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)));
    let mut hull: Vec<(f64, f64)> = vec![*start];
    for corner in sorted {
        while let [.., a, b] = hull.as_slice() {
            let turn = (b.0 - a.0) * (corner.1 - a.1) - (b.1 - a.1) * (corner.0 - a.0);
            if turn < 0.0 {
                break;
            }
            hull.pop();
        }
        hull.push(corner);
    }
    hull.windows(2)
        .map(|pair| match pair {
            [a, b] => ((b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)).sqrt(),
            _ => 0.0,
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn over_one_thing_it_is_two_slants_and_a_face() {
        // 3-4-5 triangles on both sides of a face 10 wide and 4 deep.
        let corners = [(0.0, 0.0), (16.0, 0.0), (3.0, 4.0), (13.0, 4.0)];
        assert!((taut_length_mm(&corners) - 20.0).abs() < 1e-12);
    }

    #[test]
    fn an_end_held_under_a_thing_climbs_it() {
        let corners = [(0.0, 0.0), (16.0, 0.0), (0.0, 4.0), (13.0, 4.0)];
        assert!((taut_length_mm(&corners) - 22.0).abs() < 1e-12);
        let on_its_face = [(0.0, 4.0), (16.0, 0.0), (0.0, 4.0), (13.0, 4.0)];
        assert!((taut_length_mm(&on_its_face) - 18.0).abs() < 1e-12);
    }

    #[test]
    fn a_lower_thing_between_two_higher_does_not_touch() {
        let corners = [(0.0, 4.0), (20.0, 4.0), (9.0, 1.0), (11.0, 1.0)];
        assert!((taut_length_mm(&corners) - 20.0).abs() < 1e-12);
    }
}
