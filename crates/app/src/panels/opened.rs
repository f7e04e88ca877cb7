//! Which thing of the list is open: the one that was selected last, or whose row was tapped.

use crate::session::Session;
use egui::{Id as UiId, Ui};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id, Subject};

/// Which thing is open, for a frame.
pub(super) struct Opened {
    /// The thing whose editor shows.
    pub(super) id: Option<Id>,
    /// Whether it came to be open elsewhere than in the list, so that the list scrolls to it.
    pub(super) from_elsewhere: bool,
}

/// The row of the job itself: no id of an entry can be read with a space in it.
pub(super) fn job_row() -> Id {
    Id::new("the job")
}

/// The row of what the truck has of small parts.
pub(super) fn kit_row() -> Id {
    Id::new("the kit")
}

/// What is kept from frame to frame.
#[derive(Clone, Default)]
struct Kept {
    open: Option<Id>,
    selected: Option<Subject>,
    is_begun: bool,
}

fn kept_id() -> UiId {
    UiId::unique("opened")
}

impl Opened {
    /// What is open in this frame. At first that is the first piece: its width is on its box.
    pub(super) fn of(ui: &Ui, session: &Session, plan: &Plan) -> Self {
        let mut kept: Kept = ui.data(|data| data.get_temp(kept_id())).unwrap_or_default();
        if !kept.is_begun {
            kept.open = session.job.pieces.first().map(|piece| piece.id.clone());
            kept.is_begun = true;
        }
        let mut from_elsewhere = false;
        // Nothing moves under a hand that is down: the list follows when it is off.
        let is_quiet = ui.input(|input| !input.pointer.any_down() && !input.any_touches());
        if is_quiet && kept.selected != session.selected {
            kept.selected.clone_from(&session.selected);
            let thing = session.selected.as_ref().and_then(|subject| row_of(&session.job, plan, subject));
            if let Some(thing) = thing
                && kept.open.as_ref() != Some(&thing)
            {
                kept.open = Some(thing);
                from_elsewhere = true;
            }
        }
        let id = kept.open.clone();
        ui.data_mut(|data| data.insert_temp(kept_id(), kept));
        Self { id, from_elsewhere }
    }

    /// Whether a thing is open.
    pub(super) fn is(&self, id: &Id) -> bool {
        self.id.as_ref() == Some(id)
    }

    /// A row was tapped: opens its thing, or closes it where it is open, and selects it.
    pub(super) fn tap(ui: &Ui, session: &mut Session, id: &Id, was_open: bool) {
        let is_thing = *id != job_row() && *id != kit_row();
        session.selected = (is_thing && !was_open).then(|| id.whole());
        let kept = Kept {
            open: (!was_open).then(|| id.clone()),
            selected: session.selected.clone(),
            is_begun: true,
        };
        ui.data_mut(|data| data.insert_temp(kept_id(), kept));
    }
}

/// The row that a subject belongs to: of a hole its mount, of a hanging its piece. A mark has none: it is not
/// measured.
fn row_of(job: &Job, plan: &Plan, subject: &Subject) -> Option<Id> {
    let part = Id::new(subject.part_str());
    for mount in &job.mounts {
        let plate = mount.plate.as_ref();
        let is_hole = plate.is_some_and(|plate| {
            plate.holes.iter().any(|hole| hole.id == part || hole.id == subject.id)
                || plate.slots.iter().any(|slot| slot.id == part || slot.id == subject.id)
        });
        if is_hole {
            return Some(mount.id.clone());
        }
    }
    if plan.marks.iter().any(|mark| mark.id == *subject) {
        return None;
    }
    let hangings = job.walls.iter().flat_map(|wall| &wall.options).flat_map(|option| &option.hangings);
    for hanging in hangings {
        if hanging.id == subject.id {
            return Some(hanging.piece.clone());
        }
    }
    Some(subject.id.clone())
}
