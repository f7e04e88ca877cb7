//! The next probe: where, how it is found, and what each answer would mean.

use super::framing::percent;
use super::mark::mark;
use crate::plan::Plan;
use crate::plan::mark::Mark;
use crate::probing::{Answer, Done, NextProbe, Said, done};

/// The sentences of the next probe; where there is none, why.
#[must_use]
pub fn next_probe(plan: &Plan, probe: Option<&NextProbe>) -> String {
    let Some(probe) = probe else { return nothing_more(done(plan)).to_owned() };
    let means = probe.answers.iter().map(|answer| answer_means(probe, answer));
    std::iter::once(probe_itself(plan, probe)).chain(means).collect::<Vec<_>>().join(" ")
}

/// The probe's own sentences, behind those of the helping marks it needs; a magnet is held there instead of a bit.
#[must_use]
pub fn probe_itself(plan: &Plan, probe: &NextProbe) -> String {
    let helps = probe.helps.iter().map(|help| format!("Strike a helping mark first. {}", mark(plan, help)));
    let itself = if is_magnet(probe) {
        let readings = super::reading::readings(plan, &probe.mark).join(" ");
        format!("{readings} Hold a magnet on the face there and an inch to each side.")
    } else {
        mark(plan, &probe.mark)
    };
    helps.chain([itself]).collect::<Vec<_>>().join(" ")
}

fn is_magnet(probe: &NextProbe) -> bool {
    probe.answers.iter().any(|answer| answer.said == Said::Holds)
}

fn nothing_more(done: Done) -> &'static str {
    match done {
        Done::Met => "Stop: every hole in a stud is met.",
        Done::NoStud => "Nothing to probe: no hole of a plate is in a stud.",
        Done::Settled => {
            "Stop: no probe would make the holes that are not met sure; move the plate, or sweep there again."
        }
    }
}

/// What one answer of a probe would mean.
#[must_use]
pub fn answer_means(probe: &NextProbe, answer: &Answer) -> String {
    // Told together they make a whole; the likelier is never more than is known.
    let likely = if answer.probability >= 0.5 {
        percent(answer.probability)
    } else {
        let other = probe.answers.iter().map(|one| one.probability).fold(0.0, f64::max);
        format!("{} %", 100.0 - (other * 100.0).floor().clamp(0.0, 99.0))
    };
    let steel = matches!(answer.said, Said::Metal | Said::Holds | Said::HoldsNot)
        || probe.answers.iter().any(|one| one.said == Said::Metal);
    let then = if answer.met {
        "the stud's holes are met".to_owned()
    } else if answer.lost {
        "no hole here is in that stud any more, and the plate is planned anew".to_owned()
    } else if steel {
        "the stud is not met yet".to_owned()
    } else {
        format!("not met yet, the least sure hole here {} in solid wood", percent(answer.chance))
    };
    format!("{}, {likely} likely: {then}.", said(answer.said))
}

/// An answer, as it is asked for.
#[must_use]
pub fn said(said: Said) -> &'static str {
    match said {
        Said::Wood => "Wood",
        Said::Air => "Air",
        Said::Metal => "Metal",
        Said::Holds => "It holds",
        Said::HoldsNot => "It does not hold",
    }
}

/// Whether a mark is the probe that is asked for beside the plan.
pub(super) fn is_next(mark: &Mark) -> bool {
    mark.id.part_str() == crate::plan::mark::NEXT_PROBE
}
