//! What was found in the wall last, and what that changed of the cables' way: told until something else changes the
//! plan.

use crate::session::Session;
use std::rc::Rc;
use strikeline_solver::job::hidden::Hidden;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// The plan before and what is hidden in its wall.
#[derive(Clone, Debug, Default)]
pub struct Found {
    before: Option<(Rc<Plan>, Vec<Hidden>)>,
    changes: Vec<String>,
}

impl Found {
    /// Looks at the job as it is; not while a hand is on something, which is one change once it lets go.
    pub fn look(&mut self, session: &mut Session, is_touched: bool) {
        let plan = session.plan();
        let is_known = self.before.as_ref().is_some_and(|(before, _)| Rc::ptr_eq(before, &plan));
        if is_touched || is_known {
            return;
        }
        let hidden = session.job.wall(&plan.wall).map(|wall| wall.hidden.clone()).unwrap_or_default();
        self.changes = match &self.before {
            Some((before, known)) => {
                let is_same = before.wall == plan.wall && before.option == plan.option;
                if is_same && *known != hidden { words::cable_changes(before, &plan) } else { Vec::new() }
            }
            None => Vec::new(),
        };
        self.before = Some((plan, hidden));
    }

    /// What changed, as sentences; empty where nothing did.
    #[must_use]
    pub fn changes(&self) -> &[String] {
        &self.changes
    }
}
