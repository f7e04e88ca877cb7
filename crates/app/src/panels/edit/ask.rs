//! What the buttons of the editors ask for, and doing it once all fields are shown.

use crate::moves;
use crate::moves::things::{self, NewThing};
use crate::panels::measured::field_id;
use crate::session::Session;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;

/// Something asked for by a button or a key.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask {
    /// A new thing of a kind.
    Add(NewThing),
    /// A piece of the job hung in an option of the wall, or in the one that is shown.
    Hang {
        /// The option, which is then shown.
        option: Option<Id>,
        /// The piece.
        piece: Id,
    },
    /// The thing again.
    Copy(Id),
    /// The job without the thing.
    Delete(Id),
}

/// Does what was asked for. What is new is selected; gives the field that is to be typed in first.
///
/// The plan is that of the session's job. The only wall of a job stays.
pub fn perform(session: &mut Session, plan: &Plan, ask: &Ask) -> Option<egui::Id> {
    match ask {
        Ask::Add(what) => {
            let (job, id) = things::with_new(&session.job, plan, *what, None);
            session.job = job;
            show(session, &id);
            Some(field_id(&id, first_field(*what)))
        }
        Ask::Hang { option, piece } => {
            if option.is_some() {
                session.option.clone_from(option);
            }
            let plan = session.plan();
            session.job = moves::with_hung(&session.job, &plan, piece);
            session.selected = Some(piece.whole());
            None
        }
        Ask::Copy(id) => {
            let (job, copy) = things::copied(&session.job, plan, id)?;
            session.job = job;
            show(session, &copy);
            None
        }
        Ask::Delete(id) => {
            if session.job.wall(id).is_some() && session.job.walls.len() < 2 {
                return None;
            }
            session.job = things::without(&session.job, id);
            if session.selected.as_ref().is_some_and(|selected| selected.id == *id) {
                session.selected = None;
            }
            if session.job.wall(&session.wall).is_none() {
                session.wall = session.job.walls.first().map(|wall| wall.id.clone()).unwrap_or_default();
                session.option = None;
            }
            None
        }
    }
}

/// Selects a new thing; a new wall or option is looked at.
fn show(session: &mut Session, id: &Id) {
    if session.job.wall(id).is_some() {
        session.wall = id.clone();
        session.option = None;
    }
    let option = session.job.wall(&session.wall).is_some_and(|wall| wall.options.iter().any(|o| o.id == *id));
    if option {
        session.option = Some(id.clone());
    }
    session.selected = Some(id.whole());
}

/// The field of a new thing that is typed in first.
fn first_field(what: NewThing) -> &'static str {
    use strikeline_solver::job::feature::FeatureKind as Kind;
    match what {
        NewThing::Feature(Kind::Outlet | Kind::Switch | Kind::Vent | Kind::Thermostat | Kind::Other)
        | NewThing::Hidden(_) => "across.centre.by",
        NewThing::Feature(_) => "across.left.by",
        NewThing::Hit(_) => "x.by",
        NewThing::Piece(_) | NewThing::Wall => "width",
        NewThing::Mount => "drop",
        NewThing::Arrangement => "name",
    }
}
