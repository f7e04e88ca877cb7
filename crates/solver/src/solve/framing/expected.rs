//! Uprights that no hit tells of, where the pattern of the others is all but sure.

use super::extra::Extras;
use super::model::{MISSING, Model};
use super::pattern::{Pattern, Weighed};
use super::stretch::{Stretch, blurred};
use super::uprights::{Gathered, Middles};
use crate::numeric::{cosine, sine, slope_angle};
use crate::units::Angle;

/// An upright that no hit tells of is told of from this probability on (chosen).
const TOLD_WHEN_EXPECTED: f64 = 0.8;

/// How many bays a pattern is carried beyond the outermost hits (chosen: the start's doubt grows on the way).
const BAYS_BEYOND: f64 = 4.0;

/// How far about a place of the likeliest pattern the others' places are gathered, in millimetres (chosen: far
/// beyond what two that are told apart by hits could leave).
const ABOUT_MM: f64 = 61.3;

/// What is expected at places of the likeliest pattern that no stretch covers; the upright where it is likely.
pub(super) fn expected(
    stretches: &[Stretch<'_>],
    weighed: &Weighed,
    extras: &Extras,
    layout: &[f64],
    model: &Model,
) -> Vec<(Middles, Option<Gathered>)> {
    let (Some(likeliest), Some(first), Some(last)) =
        (likeliest(weighed), stretches.first(), stretches.last())
    else {
        return Vec::new();
    };
    let beyond = BAYS_BEYOND * likeliest.spacing_mm;
    let from = (first.middle_mm() - beyond).max(extras.plane.from.mm());
    let to = (last.middle_mm() + beyond).min(extras.plane.to.mm());
    let mut found = Vec::new();
    let mut from_stretch = stretches;
    let mut node = likeliest.nearest(from);
    // A pattern that is not sure has nothing to expect; a wall of any width has so many bays at most.
    let budget = 4 * stretches.len() + 64;
    for _ in 0..budget {
        if node > to {
            break;
        }
        while let [gone, rest @ ..] = from_stretch
            && gone.middle_mm() < node - likeliest.spacing_mm
        {
            from_stretch = rest;
        }
        let covered = from_stretch.iter().take(8).any(|stretch| stretch.holds(node));
        if !covered && node >= from && extras.room_for(node, model.face_mm) {
            let middles = about(node, weighed, layout, model);
            let gathered = middles.gather(model, TOLD_WHEN_EXPECTED).first().copied();
            found.push((middles, gathered));
        }
        node += likeliest.spacing_mm;
    }
    found
}

/// The likeliest spacing from the mean of its starts as they weigh: of two as likely neither is taken, so that a wall
/// and its mirror have the same places.
fn likeliest(weighed: &Weighed) -> Option<Pattern> {
    let most = weighed.patterns.iter().max_by(|a, b| a.probability.total_cmp(&b.probability))?;
    let alike = weighed.patterns.iter().filter(|one| one.spacing_mm == most.spacing_mm);
    // Starts go round: a start and the next place of its pattern are one. The mean of directions.
    let round = |off_mm: f64| Angle::degrees(360.0 * off_mm / most.spacing_mm);
    let (mut across, mut along) = (0.0, 0.0);
    for one in alike {
        let angle = round(one.start_mm - most.start_mm);
        across += one.probability * sine(angle);
        along += one.probability * cosine(angle);
    }
    let off_mm = if along > 0.0 { slope_angle(across / along).deg() / 360.0 * most.spacing_mm } else { 0.0 };
    Some(Pattern { start_mm: most.start_mm + off_mm, ..*most })
}

/// All patterns' places near one of the likeliest's.
fn about(node: f64, weighed: &Weighed, layout: &[f64], model: &Model) -> Middles {
    let cell_mm = model.cell_mm();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen")]
    let half = (ABOUT_MM / cell_mm).ceil() as usize;
    #[expect(clippy::cast_precision_loss, reason = "a few dozen")]
    let first_mm = node - half as f64 * cell_mm;
    let mut cells = vec![0.0; 2 * half + 1];
    let near = |one: &Pattern| Some(one.nearest(node)).filter(|at| (at - node).abs() < ABOUT_MM - cell_mm);
    for (place, share) in weighed.patterns.iter().filter_map(|one| Some((near(one)?, one.probability))) {
        let at = (place - first_mm) / cell_mm;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the grid")]
        let cell = at as usize;
        for (cell, part) in [(cell, 1.0 - (at - at.floor())), (cell + 1, at - at.floor())] {
            if let Some(mass) = cells.get_mut(cell) {
                *mass += share * part * (1.0 - MISSING);
            }
        }
    }
    Middles { first_mm, cell_mm, cells: blurred(&cells, layout, 0.0) }
}
