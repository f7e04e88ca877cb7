//! The panels beside the canvas: what was measured on the left, what follows on the right, and what is on top.

pub mod bar;
pub mod follows;
pub mod measured;
pub mod place;
pub mod readings;
pub mod top_line;

use crate::widgets::quantity_field::Allowed;
use strikeline_solver::job::{Job, Units};
use strikeline_solver::units::LengthUnit;

/// A field of this job that may be left empty and holds nothing below zero.
fn measured_field(job: &Job) -> Allowed {
    let bare = match job.units() {
        Units::Inches => LengthUnit::Inch,
        Units::Millimetres => LengthUnit::Millimetre,
    };
    Allowed { bare, signed: false, empty: true }
}
