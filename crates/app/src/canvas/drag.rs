//! One drag of a handle, from press to release: always worked from where it began, so that nothing adds up.

use super::snap::snapped;
use crate::moves::{self, Handle};
use crate::session::Session;
use crate::view_state::Window;
use egui::Pos2;
use std::rc::Rc;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;

/// Nothing is written until the pointer has moved this far, in points: a tap is not a drag (as the toolkit's).
pub const SLACK: f32 = 6.0;

/// A held thing is drawn to lines within this many points (chosen: less than a finger is unsure by).
const DRAWN_WITHIN: f32 = 7.0;

/// A drag.
#[derive(Clone, Debug)]
pub struct Drag {
    /// What is held.
    pub handle: Handle,
    start_job: Job,
    start_plan: Rc<Plan>,
    start_place: Point,
    press: Pos2,
    press_in_wall: Point,
    has_moved: bool,
}

impl Drag {
    /// Takes hold of a handle; `None` where it is not in the plan.
    #[must_use]
    pub fn begin(session: &mut Session, handle: &Handle, press: Pos2, window: &Window) -> Option<Self> {
        let start_plan = session.plan();
        let start_place = moves::place(&start_plan, handle, start_plan.survey.outline.centre().y)?;
        Some(Self {
            handle: handle.clone(),
            start_job: session.job.clone(),
            start_plan,
            start_place,
            press,
            press_in_wall: window.wall_from_pointer(press),
            has_moved: false,
        })
    }

    /// Moves what is held with the pointer. `is_free` lets go of the lines that it is drawn to.
    pub fn follow(&mut self, session: &mut Session, pointer: Pos2, window: &Window, is_free: bool) {
        self.has_moved |= pointer.distance(self.press) >= SLACK;
        if !self.has_moved {
            return;
        }
        let now = window.wall_from_pointer(pointer);
        let wished = Point::new(
            self.start_place.x + (now.x - self.press_in_wall.x),
            self.start_place.y + (now.y - self.press_in_wall.y),
        );
        let to = if is_free {
            wished
        } else {
            snapped(&self.start_plan, &self.handle, wished, window.wall_length(DRAWN_WITHIN))
        };
        // Back where it was nothing is rounded and no assumed option is written down.
        let style = self.start_plan.style;
        let is_back =
            style.steps(to.x - self.start_place.x) == 0 && style.steps(to.y - self.start_place.y) == 0;
        session.job = if is_back {
            self.start_job.clone()
        } else {
            moves::moved(&self.start_job, &self.start_plan, &self.handle, to)
        };
    }

    /// Gives back what was there before.
    pub fn give_back(self, session: &mut Session) {
        session.job = self.start_job;
    }
}
