//! A piece's verdict, its fasteners and its empty holes, as JSON.

use super::mm;
use serde_json::{Map, Value, json};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::choosing::BetterHoles;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Wanted;
use strikeline_solver::limits;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::verdict::{BitFrom, EmptyWhy, Fastening, Verdict};
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// The keys that a piece gains. Without a mount of its own there is nothing to say.
pub(super) fn keys(
    plan: &Plan,
    fastening: Option<&Fastening>,
    better: Option<&BetterHoles>,
) -> Map<String, Value> {
    let better = better.map(|better| {
        let fasteners = better.holes.iter().filter_map(|one| match &one.wanted {
            Wanted::UsedWith(stock) => Some(json!({
                "hole": better.piece.part(one.hole.as_str()).to_string(),
                "fastener": stock.to_string(),
                "along_mm": one.along.map(|along| mm(along.length())),
            })),
            Wanted::Used | Wanted::Empty => None,
        });
        json!({ "words": words::better_holes(better), "fasteners": fasteners.collect::<Vec<_>>() })
    });
    let fasteners = fastening.iter().flat_map(|fastening| &fastening.fasteners).map(|fastener| {
        let asked = fastener.asked;
        json!({
            "hole": fastener.subject.to_string(),
            "type": fastener.kind,
            "diameter_mm": mm(fastener.diameter),
            "length_mm": mm(fastener.length),
            "lead_mm": fastener.lead.map(mm),
            "shank_mm": fastener.shank.map(|(wide, _)| mm(wide)),
            "shank_depth_mm": fastener.shank.map(|(_, deep)| mm(deep)),
            "depth_mm": fastener.depth.map(mm),
            "bit": match &fastener.bit {
                BitFrom::Kit(bit) => Some(bit.to_string()),
                BitFrom::UsualSet | BitFrom::NotInKit => None,
            },
            "shear_n": asked.map(|asked| rounded(asked.shear_n)),
            "pull_n": asked.map(|asked| rounded(asked.pull_n)),
            "use": asked.map(|asked| rounded(asked.used)),
            "by_hand": fastener.by_hand,
        })
    });
    let left_empty = fastening.iter().flat_map(|fastening| &fastening.left_empty).map(|empty| {
        json!({
            "hole": empty.subject.to_string(),
            "why": words::left_empty(plan, empty),
            "by_hand": empty.why == EmptyWhy::ByHand,
            "wanted": empty.wanted,
        })
    });
    let anchors = fastening.and_then(|fastening| fastening.anchors.as_ref()).map(|anchors| {
        json!({
            "fastener": anchors.stock.to_string(),
            "holes": anchors.holes,
            "shear_n": anchors.shear.map(|load| rounded(load.n())),
            "pull_n": anchors.pull.map(|load| rounded(load.n())),
        })
    });
    let told = [
        ("verdict", fastening.map_or(Value::Null, |fastening| Value::Object(verdict(plan, fastening)))),
        ("fasteners", fasteners.collect()),
        ("left_empty", left_empty.collect()),
        ("anchors", json!(anchors)),
        ("better_holes", json!(better)),
    ];
    told.into_iter().map(|(key, value)| (key.to_owned(), value)).collect()
}

/// A verdict.
pub(super) fn verdict(plan: &Plan, fastening: &Fastening) -> Map<String, Value> {
    let Verdict { word, if_probed, as_stated, governing, .. } = &fastening.verdict;
    let governing = governing.as_ref();
    let told = [
        ("word", json!(word_key(*word))),
        ("if_probed", json!(word_key(*if_probed))),
        ("as_stated", json!(word_key(*as_stated))),
        ("governing", json!(governing.map(|governing| governing.hole.to_string()))),
        ("case", json!(governing.map(|governing| words::case(&governing.case)))),
        ("use", json!(governing.map(|governing| rounded(governing.used)))),
        ("cases", by_case(plan, &fastening.verdict)),
        ("rests_on", json!(words::rests_on(plan, fastening))),
        ("wanted", json!(words::wanted(plan, fastening))),
    ];
    told.into_iter().map(|(key, value)| (key.to_owned(), value)).collect()
}

/// What the cases of each kind come to.
fn by_case(plan: &Plan, verdict: &Verdict) -> Value {
    let each = verdict.by_case.iter().map(|one| {
        let turning = one.why.and_then(|why| match why {
            Why::Turns { nmm } => Some(rounded(nmm / 1000.0)),
            _ => None,
        });
        json!({
            "case": words::case_kind(&one.kind),
            "if_probed": word_key(one.word),
            "use": one.used.map(rounded),
            "turning_nm": turning,
            "why": one.why.map(|why| words::why(plan, &why)),
        })
    });
    each.collect()
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

/// A verdict's word as a key, without a space.
fn word_key(word: Word) -> &'static str {
    match word {
        Word::Holds => "holds",
        Word::Short => "short",
        Word::NotKnown => "not_known",
    }
}

/// To 1e-6.
fn rounded(value: f64) -> Value {
    json!((value * 1e6).round() / 1e6 + 0.0)
}
