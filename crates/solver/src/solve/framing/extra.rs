//! Where uprights stand that are not of the pattern: beside windows and doors, and at the wall's ends.

use super::model::{
    BESIDE_END_MM, BESIDE_OPENING_MM, DOUBLED, EXTRA_ANYWHERE, EXTRA_BESIDE_END, EXTRA_BESIDE_OPENING, PAIRED,
};
use crate::geometry::Span;
use crate::job::feature::FeatureKind;
use crate::plan::survey::{PlacedFeature, Survey};
use crate::subject::Id;
use crate::units::Length;

/// The openings and ends of a plane.
pub(super) struct Extras {
    /// Windows and doors.
    pub(super) openings: Vec<Span>,
    pub(super) plane: Span,
    /// Chimney breasts on the plane: behind one no upright is told of that nothing met.
    breasts: Vec<Span>,
}

impl Extras {
    /// Those of the wall beside its breasts, or of a breast.
    pub(super) fn of(survey: &Survey, on: Option<&Id>) -> Self {
        let breast = survey.features.iter().find(|feature| Some(&feature.id) == on);
        let open = |kind: FeatureKind| matches!(kind, FeatureKind::Window | FeatureKind::Door);
        let openings =
            survey.features.iter().filter(|feature| open(feature.kind) && feature.on.as_ref() == on);
        let on_it = |feature: &&PlacedFeature| on.is_none() && feature.kind == FeatureKind::ChimneyBreast;
        Self {
            breasts: survey.features.iter().filter(on_it).map(|feature| feature.rect.across()).collect(),
            openings: openings.map(|feature| feature.rect.across()).collect(),
            plane: breast.map_or(survey.outline, |breast| breast.rect).across(),
        }
    }

    /// How many middles of such uprights are expected in a millimetre: alone, with a ply to the right, to the left;
    /// as shares of what is taken of an upright of the pattern, which is seldom doubled.
    pub(super) fn at(&self, x_mm: f64) -> [f64; 3] {
        let outside = |edge: Length, side: f64| (x_mm - edge.mm()) * side;
        let beside = |off: f64, reach: f64| (-10.0..=reach).contains(&off);
        let opening = self.openings.iter().any(|span| {
            beside(outside(span.from, -1.0), BESIDE_OPENING_MM)
                || beside(outside(span.to, 1.0), BESIDE_OPENING_MM)
        });
        let end = beside(outside(self.plane.from, 1.0), BESIDE_END_MM)
            || beside(outside(self.plane.to, -1.0), BESIDE_END_MM);
        let single = EXTRA_ANYWHERE + if end { EXTRA_BESIDE_END } else { 0.0 };
        let beside = if opening { EXTRA_BESIDE_OPENING } else { 0.0 };
        let ply = single + beside * PAIRED / 2.0 / DOUBLED;
        [single + beside * (1.0 - PAIRED) / (1.0 - 2.0 * DOUBLED), ply, ply]
    }

    /// Whether an upright with its middle there stands in the plane, clear of openings and not behind a breast.
    pub(super) fn room_for(&self, x_mm: f64, face_mm: f64) -> bool {
        let face = Span::about(Length::millimetres(x_mm), Length::millimetres(face_mm));
        let taken = self.openings.iter().chain(&self.breasts).any(|span| span.overlaps(face));
        self.plane.holds(face.from) && self.plane.holds(face.to) && !taken
    }
}
