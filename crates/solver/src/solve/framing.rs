//! Step 2: uprights from hits, with their doubt. Every spacing from every start, and no pattern at all, is weighed by
//! how well it explains all hits of a plane together; each hit may be of something else.

mod expected;
mod extra;
mod lean;
mod model;
mod outliers;
mod pattern;
mod reading;
mod stretch;
#[cfg(test)]
mod tests;
mod uprights;

use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::framing::{Framing, Known, PlaneFraming, Spacing, Stud};
use crate::plan::survey::{PlacedHit, Survey};
use crate::subject::Id;
use crate::tolerance::{EDGE_NEED_MM, LEAN_SLOPE, STEEL_APART_MM};
use crate::units::Length;
use extra::Extras;
use lean::Layers;
use model::{Model, SPACINGS_MM};
use outliers::{OUTLYING, outliers};
use pattern::{Weighed, weigh};
use reading::{Reading, Says};
use std::collections::BTreeMap;
use stretch::{layout, stretches};
use uprights::{Gathered, TOLD, tells_of};

/// The uprights of a wall and of each chimney breast on it, from left to right. `level` is the chance of solid wood
/// from which an upright counts as met.
pub(super) fn framing(wall: &Wall, survey: &Survey, level: f64) -> Framing {
    let mut framing =
        Framing { known: !wall.hits.is_empty() || built_solid(wall.framing.as_ref()), ..Framing::default() };
    plane(wall, survey, None, level, &mut framing);
    for breast in survey.features.iter().filter(|feature| feature.kind == FeatureKind::ChimneyBreast) {
        plane(wall, survey, Some(&breast.id), level, &mut framing);
        framing.known |= built_solid(wall.framing_on(Some(&breast.id)));
    }
    framing.studs.sort_by(|a, b| a.centre.mm().total_cmp(&b.centre.mm()));
    framing
}

/// Whether a wall is known to be built without uprights.
fn built_solid(framing: Option<&WallFraming>) -> bool {
    matches!(
        framing,
        Some(
            WallFraming::Masonry(_) | WallFraming::Concrete(_) | WallFraming::Veneer | WallFraming::NoFraming
        )
    )
}

/// Adds the uprights of one plane: a chimney breast, or the wall beside the breasts.
fn plane(wall: &Wall, survey: &Survey, on: Option<&Id>, level: f64, framing: &mut Framing) {
    let Some(model) = Model::of(wall, on) else { return };
    let of_plane = |hit: &&PlacedHit| survey.breast_at(hit.x, hit.y).map(|breast| &breast.id) == on;
    let hits = survey.hits.iter().filter(of_plane);
    let mut readings: Vec<Reading<'_>> = hits.filter_map(|hit| Reading::of(hit, model.steel)).collect();
    if readings.is_empty() {
        return;
    }
    readings.sort_by(|a, b| a.x_mm().total_cmp(&b.x_mm()));
    let extras = Extras::of(survey, on);
    let layout = layout(model.cell_mm());
    let stretches = stretches(&readings, usual_height(&readings, survey), &model, &extras);
    let weighed = weigh(&stretches, &layout);

    let mut told = PlaneFraming {
        on: on.cloned(),
        spacings: spacings(&weighed),
        outliers: Vec::new(),
        beliefs: Vec::new(),
    };
    let mut found: Vec<Found<'_>> = Vec::new();
    for (index, stretch) in stretches.iter().enumerate() {
        let posterior = weighed.posterior(stretch, index, &layout);
        let layers = Layers::of(stretch, &posterior, &model);
        let uprights = layers.middles().map(|middles| middles.gather(&model, TOLD)).unwrap_or_default();
        told.outliers.extend(outliers(stretch, &posterior.wrong, &uprights, &weighed, &model));
        told.beliefs.extend(layers.beliefs(&model));
        for one in uprights {
            let of_it = |(reading, wrong): &(&Reading<'_>, &f64)| {
                // Where its middle was as high as the hit.
                let lean_mm = layers.lean_of(&one, &model).0 * reading.up_mm(layers.height_mm);
                **wrong <= OUTLYING && tells_of(reading, one.centre_mm + lean_mm, &model)
            };
            let telling = stretch.readings.iter().zip(&posterior.wrong).filter(of_it).map(|(one, _)| *one);
            let lean = layers.lean_of(&one, &model);
            found.push(Found { one, telling: telling.collect(), height_mm: layers.height_mm, lean });
        }
    }
    let height_mm = usual_height(&readings, survey);
    for (middles, gathered) in expected::expected(&stretches, &weighed, &extras, &layout, &model) {
        told.beliefs.push(middles.belief(height_mm, &model));
        let lean = (0.0, LEAN_SLOPE);
        found.extend(gathered.map(|one| Found { one, telling: Vec::new(), height_mm, lean }));
    }
    told.beliefs.sort_by(|a, b| a.from.mm().total_cmp(&b.from.mm()));
    let places: BTreeMap<&Id, usize> = survey.hits.iter().map(|hit| &hit.id).zip(0..).collect();
    let order = |id: &Id| places.get(id).copied();
    told.outliers.sort_by_key(|outlier| order(&outlier.hit));
    framing.planes.push(told);
    for Found { one, mut telling, height_mm, lean } in found {
        telling.sort_by_key(|reading| order(&reading.hit.id));
        let centre = Length::millimetres(one.centre_mm);
        let at_height = Length::millimetres(height_mm);
        let half = Length::millimetres(model.face_mm / 2.0);
        let chance = framing.chance(on, centre, at_height, Length::millimetres(EDGE_NEED_MM));
        let mut stud = Stud {
            centre,
            left: centre - half,
            right: centre + half,
            doubt: Length::millimetres(one.doubt_mm),
            at_height,
            probability: one.probability,
            known: Known::Expected,
            lean: lean.0,
            lean_doubt: lean.1,
            hits: telling.iter().map(|reading| reading.hit.id.clone()).collect(),
            on: on.cloned(),
        };
        stud.known = known(&telling, &stud, chance >= level, &model);
        framing.studs.push(stud);
    }
}

/// An upright that is to be told of.
struct Found<'a> {
    one: Gathered,
    /// The readings that tell of it.
    telling: Vec<Reading<'a>>,
    height_mm: f64,
    /// Its lean, and what is not known of it.
    lean: (f64, f64),
}

/// Where an upright's hits were taken, in the middle, else at the plane's hits; 1.5 m where no height was noted.
fn usual_height(readings: &[Reading<'_>], survey: &Survey) -> f64 {
    let heights = readings.iter().filter_map(|reading| reading.hit.y).map(Length::mm);
    let (sum, count) = heights.fold((0.0, 0.0), |(sum, count), y| (sum + y, count + 1.0));
    // About the height of a display's plate (chosen).
    if count > 0.0 { sum / count } else { survey.outline.bottom.mm() + 1500.0 }
}

/// The spacings, the likeliest first.
fn spacings(weighed: &Weighed) -> Vec<Spacing> {
    let mut told: Vec<Spacing> = SPACINGS_MM
        .iter()
        .zip(&weighed.spacings)
        .map(|(spacing, share)| Spacing { spacing: Some(Length::millimetres(*spacing)), probability: *share })
        .collect();
    told.push(Spacing { spacing: None, probability: weighed.no_pattern });
    told.sort_by(|a, b| b.probability.total_cmp(&a.probability));
    told
}

/// How an upright is known by the hits that tell of it. On wood it is met where a probe met wood in its face and a
/// fastener in its middle is sure of its edge need; on steel where metal was met at two heights and a magnet holds.
fn known(telling: &[Reading<'_>], stud: &Stud, sure: bool, model: &Model) -> Known {
    let probed =
        |says: Says| telling.iter().filter(move |reading| reading.says == says).map(|reading| reading.hit);
    let in_face = |hit: &&PlacedHit| {
        let middle = stud.middle_at(hit.y.unwrap_or(stud.at_height));
        (hit.x - middle).mm().abs() <= model.face_mm / 2.0
    };
    let met = if model.steel {
        let heights = probed(Says::Metal).filter(in_face).filter_map(|hit| hit.y).map(Length::mm);
        let (low, high) =
            heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
        high - low >= STEEL_APART_MM && probed(Says::Magnet).any(|hit| in_face(&hit))
    } else {
        sure && probed(Says::Solid).any(|hit| in_face(&hit))
    };
    if met {
        Known::Met
    } else if telling.is_empty() {
        Known::Expected
    } else {
        Known::Inferred
    }
}
