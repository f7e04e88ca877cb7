//! The panels beside the canvas: what was measured on the left, what follows on the right, and what is on top.

pub mod after_taping;
mod behind;
mod bring;
pub mod bar;
pub mod cable_ways;
pub mod command_list;
pub mod edit;
pub mod follows;
mod holding;
pub mod key_page;
pub mod measured;
mod mending;
pub mod mine;
pub mod one_pull;
mod opened;
pub mod place;
pub mod readings;
pub mod shelf;
pub mod short_form;
pub mod top_line;
pub mod working;

use crate::widgets::quantity_field::Allowed;
use strikeline_solver::job::place::{AcrossDatum, UprightDatum};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::ReadingDatum;
use strikeline_solver::units::LengthUnit;
use strikeline_solver::words;

/// A field of this job that may be left empty and holds nothing below zero.
fn measured_field(job: &Job) -> Allowed {
    let bare = match job.units() {
        Units::Inches => LengthUnit::Inch,
        Units::Millimetres => LengthUnit::Millimetre,
    };
    Allowed { bare, signed: false, empty: true }
}

/// What a sideways distance is measured from, in words.
fn across_datum(plan: &Plan, from: &AcrossDatum) -> String {
    let datum = match from {
        AcrossDatum::LeftEnd => ReadingDatum::LeftEnd,
        AcrossDatum::RightEnd => ReadingDatum::RightEnd,
        AcrossDatum::Edge(subject) => ReadingDatum::Edge(subject.clone()),
    };
    words::datum(plan, &datum)
}

/// What a height is measured from, in words.
fn upright_datum(plan: &Plan, from: &UprightDatum) -> String {
    let datum = match from {
        UprightDatum::Floor => ReadingDatum::Floor,
        UprightDatum::ControlLine => ReadingDatum::ControlLine,
        UprightDatum::Edge(subject) => ReadingDatum::Edge(subject.clone()),
    };
    words::datum(plan, &datum)
}
