//! A datum in words.

use super::mark_name;
use super::things::{left_end, right_end, thing};
use crate::plan::Plan;
use crate::plan::mark::ReadingDatum;

/// What a reading is taken from, in the middle of a sentence: `the left corner`, `the floor`, `the level line`.
#[must_use]
pub fn datum(plan: &Plan, datum: &ReadingDatum) -> String {
    match datum {
        ReadingDatum::LeftEnd => left_end(plan).to_owned(),
        ReadingDatum::RightEnd => right_end(plan).to_owned(),
        ReadingDatum::Floor => "the floor".to_owned(),
        ReadingDatum::ControlLine => "the control line".to_owned(),
        ReadingDatum::Edge(edge) => thing(plan, edge),
        ReadingDatum::Struck(mark) => match plan.marks.iter().find(|other| other.id == *mark) {
            Some(mark) => mark_name::in_words(plan, mark),
            None => thing(plan, mark),
        },
        ReadingDatum::Nothing => "the middle of the wall's nearest end".to_owned(),
    }
}
