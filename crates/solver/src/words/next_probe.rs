//! The next probe: where, how it is found, and what either answer would mean.

use super::framing::percent;
use super::reading::line_readings;
use super::things::{above_floor, along};
use crate::plan::Plan;
use crate::probing::{Answer, NextProbe};

/// The sentences of the next probe; where there is none, that nothing more is to be probed.
#[must_use]
pub fn next_probe(plan: &Plan, probe: Option<&NextProbe>) -> String {
    let Some(probe) = probe else {
        let holes =
            || plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
        return if holes().any(|hole| hole.stud.is_some() && !hole.met) {
            "No one probe would settle the holes that are not met. A stud of steel is met where metal was met at two \
             heights at least 300 mm apart and a magnet holds there."
                .to_owned()
        } else {
            "Stop: no probe would change the plan.".to_owned()
        };
    };
    let mut told = vec![
        "Circuit off or tester passed first.".to_owned(),
        format!("At {}, {}.", along(plan, probe.place.x), above_floor(plan, probe.place)),
    ];
    told.extend(line_readings(plan, &probe.readings));
    if let Some(depth) = probe.depth {
        told.push(format!("Set the bit's stop to {} and go no deeper.", plan.style.print(depth)));
    }
    told.push(answer("Wood", &probe.wood));
    told.push(answer("Air", &probe.air));
    told.join(" ")
}

fn answer(what: &str, answer: &Answer) -> String {
    let then = if answer.met {
        "the stud's holes are met".to_owned()
    } else {
        format!("the least sure hole is {} in solid wood", percent(answer.chance))
    };
    format!("{what}, {} likely: {then}.", percent(answer.probability))
}
