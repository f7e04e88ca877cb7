//! What the findings of a verdict say.

use super::super::case::{case, why};
use super::super::fastening::{share, wanted};
use super::super::phrase::list;
use super::super::things::piece_of;
use crate::plan::Plan;
use crate::plan::verdict::Want;
use crate::subject::Subject;

/// So many measurements are named; the verdict names all of them (chosen).
const NAMED: usize = 3;

/// A plate that does not hold.
pub(super) fn short(plate: &str, used: Option<f64>) -> String {
    match used {
        Some(used) => {
            format!("{plate} is short: {} of what its fasteners may carry is used", share(used))
        }
        None => {
            format!("{plate} is short: what the mount's maker requires of holes and fasteners is not met")
        }
    }
}

/// A plate of which nobody knows whether it holds.
pub(super) fn not_known(plan: &Plan, subject: &Subject, plate: &str) -> String {
    let lead = format!("whether {plate} holds is not known");
    let fastening = piece_of(plan, subject).and_then(|piece| piece.mount.as_ref()).map(|at| &at.fastening);
    let Some(fastening) = fastening else { return lead };
    let verdict = &fastening.verdict;
    let mut told = wanted(plan, fastening);
    let only_probes = !told.is_empty() && verdict.wanted.iter().all(|want| matches!(want, Want::Probe(_)));
    if only_probes && let [probes] = told.as_slice() {
        return format!("{lead} yet: {probes}");
    }
    let more = told.len().saturating_sub(NAMED);
    if more > 0 {
        told.truncate(NAMED);
        told.push(format!("{more} more"));
    }
    match (told.is_empty(), verdict.uncarried) {
        (false, _) => format!("{lead}: {}", list(&told)),
        (true, Some((name, reason))) => format!("{lead}: {}, {}", case(&name), why(plan, &reason)),
        (true, None) => format!("{lead}: no published value is known for fasteners in this wall"),
    }
}
