//! Short ways to write measured values.

use strikeline_solver::ledger::Given;
use strikeline_solver::units::{Length, Ratio};

pub(crate) fn inch(value: f64) -> Given<Length> {
    Given::measured(Length::inches(value))
}

pub(crate) fn ratio(value: f64) -> Given<Ratio> {
    Given::measured(Ratio::bare(value))
}
