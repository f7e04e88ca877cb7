//! How a fastener stands in a stud: what of it is in wood, what of its thread counts, whether that is enough.

use super::screw::{Screw, ScrewKind};
use super::why::{Input, Known, Why, above_zero, zero_or_more};
use crate::handbook::{placing, wood_screw};
use crate::ledger::{Amount, Given, Label, Ledger, Put, Step};
use crate::units::{Length, Stress};

/// What a fastener goes through, from its head inward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stack {
    /// The thickness of the washer under its head; zero without one.
    pub washer: Given<Length>,
    /// The thickness of the plate.
    pub plate: Given<Length>,
    /// What the plate bears under the fastener's side.
    pub plate_bearing: Given<Stress>,
    /// What stands between plate and stud: board, plaster, tile. It counts as a gap.
    pub gap: Given<Length>,
    /// From the front of the stud to its back.
    pub stud_depth: Given<Length>,
}

/// What of a fastener is in the stud.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bite {
    /// All of it, tip included.
    pub depth: Given<Length>,
    /// Without the tip.
    pub without_tip: Given<Length>,
    /// The thread that counts in withdrawal.
    pub thread: Given<Length>,
    /// The length that bears sideways: depth less half of the tip.
    pub bearing: Given<Length>,
}

const DEPTH: &str = "geometry: length less washer, plate and what stands in front of the stud";

/// What of a fastener is in the stud behind a stack.
///
/// # Errors
/// Refused where it is too shallow or reaches past the stud; not known where a value makes no sense.
pub fn bite<L: Ledger>(ledger: &mut L, screw: &Screw, stack: &Stack) -> Known<Bite> {
    let length = above_zero(screw.length.value, Input::Length)?;
    let washer = zero_or_more(stack.washer.value, Input::Washer)?;
    let plate = above_zero(stack.plate.value, Input::Plate)?;
    let gap = zero_or_more(stack.gap.value, Input::Gap)?;
    let stud = above_zero(stack.stud_depth.value, Input::StudDepth)?;
    let label = [stack.washer.label, stack.plate.label, stack.gap.label]
        .into_iter()
        .fold(screw.length.label.worked_out(), Label::weaker);
    let depth = Given::new(length - washer - plate - gap, label);
    ledger.write(|| Step {
        name: "depth in wood",
        formula: "p = L - washer - plate - gap",
        put: vec![
            Put::given("L", screw.length).being("the length under the head"),
            Put::given("washer", stack.washer),
            Put::given("plate", stack.plate),
            Put::given("gap", stack.gap),
        ],
        result: depth.value.into(),
        source: DEPTH,
        label,
    });
    if depth.value > stud {
        return Err(Why::PastStud {
            by: depth.value - stud,
            supposed: stack.stud_depth.label != Label::Measured,
        });
    }
    in_wood(ledger, screw, depth)
}

/// What of a fastener that is so deep in wood counts, and whether that is enough.
///
/// # Errors
/// Refused where it is too shallow.
pub fn in_wood<L: Ledger>(ledger: &mut L, screw: &Screw, depth: Given<Length>) -> Known<Bite> {
    let tip = screw.tip;
    let without_tip = Given::new(depth.value - tip.value, depth.label.weaker(tip.label));
    let (has, needs) = least_depth(ledger, screw, depth, without_tip);
    if has.mm() < needs.mm() - crate::tolerance::SAME_PLACE_MM || has.mm() <= 0.0 {
        return Err(Why::Shallow { has, needs });
    }
    screw.write_thread(ledger);
    let threaded = screw.thread.value.min(depth.value);
    // The clause deducts no tip of a wood screw; of a report's screw it is deducted, since few tell it.
    let keeps_tip = screw.kind == ScrewKind::WoodScrew;
    let deducted = if keeps_tip { Length::default() } else { tip.value };
    let label = depth.label.weaker(screw.thread.label).weaker(tip.label).worked_out();
    let thread = Given::new((threaded - deducted).max(Length::default()), label);
    let bearing = Given::new(depth.value - tip.value / 2.0, depth.label.weaker(tip.label).worked_out());
    ledger.write(|| {
        let mut put = vec![
            Put::result("T", screw.thread.value, screw.thread.label),
            Put::result("p", depth.value, depth.label),
        ];
        if !keeps_tip {
            put.push(Put::given("E", tip));
        }
        Step {
            name: "thread that counts",
            formula: if keeps_tip { "p_t = min(T, p)" } else { "p_t = max(min(T, p) - E, 0)" },
            put,
            result: thread.value.into(),
            source: if keeps_tip {
                "geometry: the thread in the wood; the clause takes off no tip of a wood screw"
            } else {
                "geometry: the thread in the wood, less the tip"
            },
            label,
        }
    });
    ledger.write(|| Step {
        name: "length that bears sideways",
        formula: "l_m = p - E/2",
        put: vec![Put::result("p", depth.value, depth.label), Put::given("E", tip)],
        result: bearing.value.into(),
        source: wood_screw::TIP_DIAMETERS.source,
        label: bearing.label,
    });
    Ok(Bite { depth, without_tip, thread, bearing })
}

/// What counts toward the least depth, and that depth.
fn least_depth<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    depth: Given<Length>,
    without_tip: Given<Length>,
) -> (Length, Length) {
    let diameter = screw.diameter;
    let (name, counted, share, source) = match (screw.kind, &screw.report) {
        (ScrewKind::WoodScrew, _) => {
            let row = placing::SCREW_DEPTH;
            ("least depth in wood", depth, Ok(row), row.source)
        }
        (ScrewKind::Structural, Some(report)) => {
            // Few reports tell whether the tip counts: without it is the safer.
            (
                "least depth in wood, without the tip",
                without_tip,
                Err(report.least_depth),
                "the screw's report",
            )
        }
        (ScrewKind::Lag | ScrewKind::Structural, _) => {
            let row = placing::LAG_DEPTH;
            ("least depth in wood, without the tip", without_tip, Ok(row), row.source)
        }
    };
    let (needs, label) = match share {
        Ok(row) => (diameter.value * row.value, row.label.weaker(diameter.label).worked_out()),
        Err(stated) => (stated, Label::Stated),
    };
    ledger.write(|| {
        let (formula, mut put) = match share {
            Ok(row) => {
                let k = Put::new("k", Amount::bare(row.value), row.label);
                ("p_least = k D", vec![k, Put::given("D", diameter)])
            }
            Err(stated) => ("p_least = p_stated", vec![Put::new("p_stated", stated, Label::Stated)]),
        };
        put.push(Put::result("p", depth.value, depth.label));
        let is_less_tip = counted.value != depth.value;
        let formula = match (is_less_tip, share.is_ok()) {
            (true, true) => "p_least = k D; p_has = p - E",
            (true, false) => "p_least = p_stated; p_has = p - E",
            (false, _) => formula,
        };
        if is_less_tip {
            put.push(Put::result("p_has", counted.value, counted.label));
            put.push(Put::given("E", screw.tip));
        }
        Step { name, formula, put, result: needs.into(), source, label }
    });
    (counted.value, needs)
}
