//! Hits that are of no upright, and why each is taken for one.

use super::model::Model;
use super::pattern::Weighed;
use super::reading::{Reading, Says};
use super::stretch::Stretch;
use super::uprights::Gathered;
use crate::plan::framing::{Outlier, OutlierWhy};
use crate::tolerance::SPOKEN_OF;
use crate::units::Length;

/// A hit is told as perhaps of no upright from this probability on: three in ten (chosen, under evens: a needless
/// second look costs a minute, a trusted pipe a hole).
pub(super) const OUTLYING: f64 = 0.3;

/// The outliers of a stretch.
pub(super) fn outliers(
    stretch: &Stretch<'_>,
    wrong: &[f64],
    uprights: &[Gathered],
    weighed: &Weighed,
    model: &Model,
) -> Vec<Outlier> {
    let of = |(reading, wrong): (&Reading<'_>, &f64)| {
        (*wrong > OUTLYING).then(|| Outlier {
            hit: reading.hit.id.clone(),
            probability: wrong.min(1.0),
            why: why(reading, stretch, uprights, weighed, model),
        })
    };
    stretch.readings.iter().zip(wrong).filter_map(of).collect()
}

fn why(
    reading: &Reading<'_>,
    stretch: &Stretch<'_>,
    uprights: &[Gathered],
    weighed: &Weighed,
    model: &Model,
) -> OutlierWhy {
    let x = reading.x_mm();
    let against = |other: &&Reading<'_>| {
        let says = if reading.says == Says::Empty { Says::Solid } else { Says::Empty };
        other.says == says && (other.x_mm() - x).abs() <= model.face_mm
    };
    let away = |other: &&Reading<'_>| (other.x_mm() - x).abs();
    let probe = stretch.readings.iter().filter(against).min_by(|a, b| away(a).total_cmp(&away(b)));
    if let Some(probe) = probe {
        return OutlierWhy::AgainstProbe(probe.hit.id.clone());
    }
    let off = |place: f64| Length::millimetres((place - x).abs());
    let nearest =
        |places: &mut dyn Iterator<Item = f64>| places.min_by(|a, b| (a - x).abs().total_cmp(&(b - x).abs()));
    if let Some(place) = nearest(&mut uprights.iter().map(|one| one.centre_mm)) {
        return OutlierWhy::AgainstOthers(off(place));
    }
    let likeliest = weighed.patterns.iter().max_by(|a, b| a.probability.total_cmp(&b.probability));
    let sure = weighed.spacings.iter().any(|one| *one >= SPOKEN_OF);
    match likeliest.filter(|_| sure) {
        Some(pattern) => OutlierWhy::OffPattern(off(pattern.nearest(x))),
        None => OutlierWhy::Alone,
    }
}
