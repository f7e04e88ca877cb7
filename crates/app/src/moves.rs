//! What a hand moves, as a change of the job: `(job, plan, handle, to) -> job`. Pure; knows no window.
//!
//! Drags, arrow keys and accessibility requests all come through here. A piece moves by its nudge, a measured
//! thing by the readings it was taken by; both in whole graduations, so that what is told comes out round.

mod after_taping;
mod agree;
mod by_hand;
mod cable;
pub mod dimension;
pub mod edge;
mod extent;
mod leading;
mod facts;
mod hang;
mod middle_height;
pub mod one_pull;
mod piece;
pub use piece::Moving;
mod probed;
mod read_from;
mod rule;
pub mod things;
mod went;
mod whereabouts;

pub use after_taping::{MovedTape, after_taping};
pub use agree::{with_agreed, without_agreed};
pub use by_hand::{by_hand, choices, with_by_hand};
pub use cable::{is_kept, with_way, without_kept};
pub use facts::{doable, fact_of, with_fact, without_fact};
pub use hang::{with_hung, with_mount};
pub use leading::leading;
pub use middle_height::{middle_height, with_middle_height};
pub use probed::{probed, seen, seen_otherwise, supposed};
pub use read_from::read_from;
pub use rule::{
    AcrossKind, UprightKind, across_datums, across_rule, beside_rule, gap_rule, height_rule, level_edges,
    things, upright_datums, upright_rule,
};
pub use went::{Shown, shown_readings, went, went_by_reading};
pub use whereabouts::whereabouts;

use edge::Side;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;

/// A thing of the job that a hand can move.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Handle {
    /// Its id in the job.
    pub id: Id,
    /// What kind of thing it is.
    pub kind: HandleKind,
}

/// A kind of thing that a hand can move.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HandleKind {
    /// A piece: moves by its nudge.
    Piece,
    /// A hit: moves by its readings.
    Hit,
    /// A feature: moves by the readings of its edges or middle.
    Feature,
    /// A hidden thing: as a feature.
    Hidden,
    /// An edge of a feature or a hidden thing: moves by what tells its place.
    Edge(Side),
    /// The cables' opening behind the piece of this id: is kept where it is put.
    Entry,
    /// Where the cables of the piece of this id come out: is kept where it is put.
    Exit,
}

impl Handle {
    /// What it is a handle on, as a subject: `door-1`, `door-1.left`.
    #[must_use]
    pub fn subject(&self) -> Subject {
        match self.kind {
            HandleKind::Edge(side) => self.id.part(side.part()),
            HandleKind::Entry => self.id.part("entry"),
            HandleKind::Exit => self.id.part("exit"),
            _ => self.id.whole(),
        }
    }
}

/// Where a handle is: the middle of the piece, thing or edge, or the place of a hit. `None` where it is not in the
/// plan.
///
/// A hit whose height was not noted counts as at `usual_y`.
#[must_use]
pub fn place(plan: &Plan, handle: &Handle, usual_y: Length) -> Option<Point> {
    let survey = &plan.survey;
    let id = &handle.id;
    match handle.kind {
        HandleKind::Piece => plan.pieces.iter().find(|p| p.id == *id).map(|p| p.outline.centre()),
        HandleKind::Hit => {
            let hit = survey.hits.iter().find(|hit| hit.id == *id)?;
            Some(Point::new(hit.x, hit.y.unwrap_or(usual_y)))
        }
        HandleKind::Feature => survey.features.iter().find(|f| f.id == *id).map(|f| f.rect.centre()),
        HandleKind::Hidden => survey.hidden.iter().find(|h| h.id == *id).map(|h| h.rect.centre()),
        HandleKind::Edge(side) => edge::outline(plan, id).map(|rect| side.of(rect)),
        HandleKind::Entry | HandleKind::Exit => cable::place(plan, handle),
    }
}

/// The job with a handle moved as near to a place as whole graduations allow. The plan is the job's own.
///
/// A handle that is not there, or that its readings hold against its datum, leaves the job as it is.
#[must_use]
pub fn moved(job: &Job, plan: &Plan, handle: &Handle, to: Point) -> Job {
    let mut after = job.clone();
    match handle.kind {
        HandleKind::Piece => piece::move_piece(&mut after, plan, &handle.id, to),
        HandleKind::Hit | HandleKind::Feature | HandleKind::Hidden => {
            extent::move_measured(&mut after, plan, handle, to);
        }
        HandleKind::Entry | HandleKind::Exit => cable::keep(&mut after, plan, handle, to),
        HandleKind::Edge(side) => {
            after = edge::edge_moved(job, plan, &handle.id, side, to.along(side.axis()));
        }
    }
    after
}

/// The job with the option that the plan assumed written down as one of its own: the job as it is where the
/// plan has an option of the job, or nothing hangs.
#[must_use]
pub fn with_option(job: &Job, plan: &Plan) -> Job {
    let mut after = job.clone();
    if plan.option.is_none() && !plan.pieces.is_empty() {
        piece::write_down(&mut after, plan);
    }
    after
}

#[cfg(test)]
mod sample;
