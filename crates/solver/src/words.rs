//! Every sentence that a plan is told in. Values in, plain trade English out; nothing is worked out here.
//!
//! A sentence starts with a capital (or a name) and ends with a full stop; a name or a datum does neither.

mod assumed;
mod cable;
mod cable_changes;
mod called;
mod carry;
mod case;
mod cautions;
mod datum;
mod done;
mod error_budget;
mod fastening;
mod finding;
mod framing;
mod handover;
mod limits;
mod lines;
mod mark;
mod mark_name;
mod mend;
mod next;
mod next_probe;
mod offer;
pub mod on_paper;
mod phrase;
mod plan_text;
mod reading;
mod sight;
#[cfg(test)]
mod sample;
mod suits;
mod sweep;
mod things;
mod place_line;
mod wish;
mod working;

pub use assumed::{assumed, settled, usual_plate};
pub use cable::{alternative, cable, way};
pub use cable_changes::cable_changes;
pub use carry::{carried, carried_for, carried_why, carry_text};
pub use case::{case, case_kind, why};
pub use cautions::cautions;
pub use datum::{beside, datum};
pub use done::{Follow, FollowKind, follow_kind, follow_up, state};
pub use error_budget::{error_budgets, error_from};
pub use fastening::{
    asks, better_holes, brittle, fastener, fastener_and_bit, left_empty, pull, rests_on, rests_on_title,
    stock, verdict, verdict_alone, verdict_line, verdict_word, wall_verdict, wall_verdict_line, wanted,
};
pub use finding::finding;
pub use framing::{outlier, spacing, stud};
pub use handover::{HandedOver, Handover, handover};
pub use limits::limits;
pub use lines::{KEPT, unbroken};
pub use mark::mark;
pub use mark_name::{mark_name, stage};
pub use mend::mend;
pub use next::next;
pub use next_probe::{answer_means, next_probe, probe_itself, said};
pub use offer::{OfferPart, can_it_go, offer, offer_part, to_agree};
pub use phrase::capital;
pub use place_line::place_line;
pub use plan_text::plan_text;
pub use reading::line_end;
pub use sight::{sight, sight_line};
pub use suits::{left_out, suits, suits_name};
pub use sweep::{SWEEP, SWEEP_ROWS, sweep_best, sweep_known, sweep_nothing, sweep_place};
pub use things::thing;
pub use wish::wish;
pub use working::{Equation, Worked, WorkedSection, WorkedStep, working, working_text};
