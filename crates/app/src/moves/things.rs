//! Things added to a job, copied in it and taken out of it. Pure, as all moves are.
//!
//! Every new entry gets an id of its own, and none is ever used again. Nothing else is written than what was
//! asked for: what is not known of a new thing is absent, so that the plan assumes it and asks.

mod copy;
mod new;
mod remove;
#[cfg(test)]
mod tests;

pub use copy::copied;
pub use new::with_new;
pub use remove::without;

use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::piece::PieceKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::{Length, LengthUnit};

/// A thing to be added to a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NewThing {
    /// Something seen on the shown wall.
    Feature(FeatureKind),
    /// Something in the shown wall.
    Hidden(HiddenKind),
    /// A reading of what is behind the face of the shown wall.
    Hit(HitKind),
    /// Something to hang; it hangs in the shown option at once.
    Piece(PieceKind),
    /// Hanging hardware that nothing hangs on yet.
    Mount,
    /// Another wall.
    Wall,
    /// Another arrangement on the shown wall: the shown one again, to be changed.
    Arrangement,
}

/// How far beside the first a copy is put, so that it is seen: a hand's breadth (chosen).
fn hands_breadth(plan: &Plan) -> Length {
    match plan.style.graduation.unit() {
        LengthUnit::Millimetre => Length::millimetres(100.0),
        LengthUnit::Inch | LengthUnit::Mil => Length::inches(4.0).quantised(),
    }
}

/// The letter of the option at a place in the list; from the 27th on its number.
#[must_use]
pub fn letter(place: usize) -> String {
    let letter = u32::try_from(place).ok().filter(|place| *place < 26).and_then(|n| char::from_u32(65 + n));
    letter.map_or_else(|| place.saturating_add(1).to_string(), String::from)
}

/// A letter that no option of the wall is called by: by its place, or the next that is free.
fn free_letter(job: &Job, wall: &Id) -> String {
    let options = job.wall(wall).map(|wall| wall.options.as_slice()).unwrap_or_default();
    let taken = |name: &String| options.iter().any(|option| option.name.as_ref() == Some(name));
    let mut place = options.len();
    while taken(&letter(place)) {
        place += 1;
    }
    letter(place)
}
