//! A piece's verdict, its fasteners and its empty holes, as JSON.

use super::mm;
use serde_json::{Map, Value, json};
use strikeline_solver::job::Job;
use strikeline_solver::limits;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::verdict::{Fastening, Verdict};
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// The keys that a piece gains. Without a mount of its own there is nothing to say.
pub(super) fn keys(plan: &Plan, fastening: Option<&Fastening>) -> Map<String, Value> {
    let fasteners = fastening.iter().flat_map(|fastening| &fastening.fasteners).map(|fastener| {
        let asked = fastener.asked;
        json!({
            "hole": fastener.subject.to_string(),
            "type": fastener.kind,
            "diameter_mm": mm(fastener.diameter),
            "length_mm": mm(fastener.length),
            "lead_mm": fastener.lead.map(mm),
            "depth_mm": fastener.depth.map(mm),
            "shear_n": asked.map(|asked| rounded(asked.shear_n)),
            "pull_n": asked.map(|asked| rounded(asked.pull_n)),
            "use": asked.map(|asked| rounded(asked.used)),
        })
    });
    let left_empty = fastening
        .iter()
        .flat_map(|fastening| &fastening.left_empty)
        .map(|empty| json!({ "hole": empty.subject.to_string(), "why": words::left_empty(plan, empty) }));
    let told = [
        ("verdict", fastening.map_or(Value::Null, |fastening| Value::Object(verdict(plan, fastening)))),
        ("fasteners", fasteners.collect()),
        ("left_empty", left_empty.collect()),
    ];
    told.into_iter().map(|(key, value)| (key.to_owned(), value)).collect()
}

/// A verdict.
pub(super) fn verdict(plan: &Plan, fastening: &Fastening) -> Map<String, Value> {
    let Verdict { word, if_probed, as_stated, governing, .. } = &fastening.verdict;
    let governing = governing.as_ref();
    let told = [
        ("word", json!(words::verdict_word(*word))),
        ("if_probed", json!(words::verdict_word(*if_probed))),
        ("as_stated", json!(words::verdict_word(*as_stated))),
        ("governing", json!(governing.map(|governing| governing.hole.to_string()))),
        ("case", json!(governing.map(|governing| words::case(&governing.case)))),
        ("use", json!(governing.map(|governing| rounded(governing.used)))),
        ("rests_on", json!(words::rests_on(plan, fastening))),
        ("wanted", json!(words::wanted(plan, fastening))),
    ];
    told.into_iter().map(|(key, value)| (key.to_owned(), value)).collect()
}

/// How far the fasteners of a piece reach; null where that is not known, or they do not hold now.
pub(super) fn limits(job: &Job, plan: &Plan, piece: &Id) -> Value {
    limits::limits(job, plan, piece).map_or(Value::Null, |limits| {
        json!({
            "mass_kg": limits.mass.map(|limit| rounded(limit.most.kg())),
            "pull_n": limits.pull.map(|limit| rounded(limit.most.n())),
            "reach_mm": limits.reach.map(|limit| mm(limit.most)),
        })
    })
}

/// To 1e-6.
fn rounded(value: f64) -> Value {
    json!((value * 1e6).round() / 1e6 + 0.0)
}
