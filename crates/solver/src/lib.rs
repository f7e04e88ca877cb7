//! Where things go on the wall, and whether they hold. Pure: values in, values out.
//!
//! The modules stand in their order: one uses those above it, never those below.

#[macro_use]
extern crate uom;

pub mod units;
pub mod tape;
pub mod letters;
pub mod numeric;
pub mod tolerance;
pub mod geometry;
pub mod subject;
pub mod route;
pub mod ledger;
pub mod handbook;
pub mod capacity;
pub mod sight;
pub mod clearances;
pub mod measuring;
pub mod job;
pub mod wiring;
pub mod finding;
pub mod plan;
pub mod rules;
pub mod solve;
pub mod nudge;
pub mod sweep;
pub mod explain;
pub mod probing;
pub mod limits;
pub mod mend;
pub mod which_of_mine;
pub mod choosing;
pub mod error_budget;
pub mod carry;
pub mod beside;
pub mod words;
