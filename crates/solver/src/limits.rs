//! How far the chosen fasteners of a plate reach: the largest mass, pull and reach at which this group still holds.
//! Beside `solve`, not in it: asked when the hand is off, as a pure function of the job and its plan.
//!
//! The group stays as it is, and one thing grows at a time. Each limit is found by weighing the group anew, from
//! nothing upward in samples, so that nothing smaller than the limit was found short; between the last that holds and
//! the first that does not by halves, down to the last whole step that holds.

use crate::capacity::group::Word;
use crate::job::Job;
use crate::job::mount::Mount;
use crate::plan::Plan;
use crate::solve::{Hung, Trial};
use crate::subject::Id;
use crate::units::{Force, Length, LengthUnit, Mass};

/// A mass is found to a tenth of a kilogram.
const MASS_STEP_KG: f64 = 0.1;
/// Heavier is not tried: 200 kg (chosen: more than any display that one plate takes).
const MOST_KG: f64 = 200.0;
/// A pull is found to a newton.
const PULL_STEP_N: f64 = 1.0;
/// A harder pull is not tried: 2000 N (chosen: more than the weight of any two people).
const MOST_PULL_N: f64 = 2000.0;
/// A reach is found to a millimetre.
const REACH_STEP_MM: f64 = 1.0;
/// A longer reach is not tried: 1500 mm (chosen: longer than any arm).
const MOST_REACH_MM: f64 = 1500.0;
/// So many samples below what is so now (chosen: every 30 mm of a usual arm).
const BELOW: u32 = 16;
/// Above it each sample is so much larger than the one before (chosen).
const GROWS: f64 = 1.08;

/// What a group of fasteners still holds, one thing at a time, the rest as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The largest mass of the piece, in the unit of its mass.
    pub mass: Option<Limit<Mass>>,
    /// The largest pull.
    pub pull: Option<Limit<Force>>,
    /// The largest reach of an arm, or how far a pull-down comes forward; `None` where nothing comes out of the wall.
    pub reach: Option<Limit<Length>>,
}

/// The largest of something that holds, rounded down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit<Q> {
    /// The largest that was found to hold.
    pub most: Q,
    /// Whether nothing larger was tried.
    pub is_end: bool,
}

/// The limits of the fasteners of a piece's plate; `None` where they do not hold now, not even if probed, and where
/// that is not known by published values.
#[must_use]
pub fn limits(job: &Job, plan: &Plan, piece: &Id) -> Option<Limits> {
    let piece = plan.pieces.iter().find(|one| one.id == *piece)?;
    if piece.mount.as_ref()?.fastening.verdict.if_probed != Word::Holds {
        return None;
    }
    let trial = Trial::of(job, plan, piece)?;
    if !trial.holds(&trial.hung) {
        return None;
    }
    let hung = &trial.hung;
    let search = |now: f64, step: f64, most: f64, change: &dyn Fn(&mut Hung, f64)| {
        let found = largest(now / step, most / step, |steps| {
            let mut other = hung.clone();
            change(&mut other, f64::from(steps) * step);
            trial.holds(&other)
        })?;
        // What is so now holds, whole steps or not.
        let value = f64::from(found.steps) * step;
        Some((if found.is_past_now { value.max(now) } else { value }, found.is_end))
    };
    let mass = hung.piece.mass.and_then(|now| {
        let unit = now.unit();
        // A mass of nothing counts as not measured: the first sample is next to nothing.
        let heavier =
            |hung: &mut Hung, kg: f64| hung.piece.mass = Some(Mass::kilograms(kg.max(MASS_STEP_KG / 10.0)));
        let (kg, is_end) = search(now.kg(), MASS_STEP_KG, MOST_KG, &heavier)?;
        Some(Limit { most: Mass::kilograms(kg).with_unit(unit), is_end })
    });
    let harder = |hung: &mut Hung, n: f64| hung.pull = Force::newtons(n);
    let pull = search(hung.pull.n(), PULL_STEP_N, MOST_PULL_N, &harder)
        .map(|(n, is_end)| Limit { most: Force::newtons(n).with_unit(hung.pull.unit()), is_end });
    let reach = reach(&hung.mount).and_then(|now| {
        let farther = |hung: &mut Hung, mm: f64| {
            if let Some(arm) = &mut hung.mount.arm {
                arm.reach = Some(Length::millimetres(mm));
            }
        };
        let (mm, is_end) = search(now.mm(), REACH_STEP_MM, MOST_REACH_MM, &farther)?;
        Some(Limit { most: Length::millimetres(mm).with_unit(LengthUnit::Millimetre), is_end })
    });
    Some(Limits { mass, pull, reach })
}

/// How far out an arm or pull-down comes; `None` where nothing does.
fn reach(mount: &Mount) -> Option<Length> {
    mount.arm.as_ref()?.reach
}

/// The largest number of steps that holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Largest {
    steps: u32,
    /// Nothing as large as what is so now was found short.
    is_past_now: bool,
    /// Nothing larger was tried.
    is_end: bool,
}

/// The largest number of steps below the first sample that does not hold; `None` where not even the first holds.
///
/// `now` and `most` are in steps; what is more than the most now is the most.
fn largest(now: f64, most: f64, holds: impl Fn(u32) -> bool) -> Option<Largest> {
    let now = whole(now);
    let most = whole(most).max(now);
    let mut last: Option<u32> = None;
    let mut sample = 0;
    let mut at = 0;
    loop {
        if !holds(sample) {
            break;
        }
        last = Some(sample);
        if sample >= most {
            return Some(Largest { steps: sample, is_past_now: true, is_end: true });
        }
        at += 1;
        let next = if at <= BELOW { share(now, at) } else { whole(f64::from(sample) * GROWS) };
        sample = next.max(sample + 1).min(most);
        // What is so now is always a sample.
        if last.is_some_and(|last| last < now) {
            sample = sample.min(now);
        }
    }
    let (mut good, mut bad) = (last?, sample);
    while bad - good > 1 {
        let middle = good + (bad - good) / 2;
        if holds(middle) { good = middle } else { bad = middle }
    }
    Some(Largest { steps: good, is_past_now: good >= now, is_end: false })
}

fn share(now: u32, part: u32) -> u32 {
    whole(f64::from(now) * f64::from(part) / f64::from(BELOW))
}

/// Rounded down; nothing below 0, and a bound that no search comes near.
fn whole(steps: f64) -> u32 {
    // 0.3 / 0.1 is less than three by the last digit.
    let down = (steps + 1e-9).floor().clamp(0.0, 1e6);
    // A whole number from 0 to a million.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped just above")]
    let whole = down as u32;
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(now: f64, most: f64, holds: impl Fn(u32) -> bool) -> Option<(u32, bool, bool)> {
        largest(now, most, holds).map(|found| (found.steps, found.is_past_now, found.is_end))
    }

    #[test]
    fn the_last_step_that_holds_is_found_whatever_it_is() {
        for limit in 0..700 {
            assert_eq!(found(123.4, 1000.0, |steps| steps <= limit), Some((limit, limit >= 123, false)));
        }
        assert_eq!(found(0.0, 1000.0, |steps| steps <= 3), Some((3, true, false)));
    }

    #[test]
    fn nothing_larger_than_the_most_is_tried_and_nothing_may_hold() {
        assert_eq!(found(50.0, 1000.0, |_| true), Some((1000, true, true)));
        assert_eq!(found(5000.0, 1000.0, |_| true), Some((5000, true, true)), "it is so now");
        assert_eq!(found(50.0, 1000.0, |_| false), None);
        assert_eq!(found(f64::NAN, f64::INFINITY, |steps| steps < 7), Some((6, true, false)));
    }

    #[test]
    fn what_is_short_below_ends_it_there() {
        let hole = |steps: u32| !(40..=60).contains(&steps);
        assert_eq!(found(100.0, 1000.0, hole), Some((39, false, false)));
    }
}
