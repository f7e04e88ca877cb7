//! What the customer agreed to, kept in the job with where things hung then, and taken back again.

use strikeline_solver::job::Job;
use strikeline_solver::job::agreed::{Agreed, AgreedPlace};
use strikeline_solver::job::fact::Spot;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::write_down;
use strikeline_solver::tape::Offset;

/// The job in which the customer chose the plan's option in these words, seen as the plan has it. An option that was
/// assumed is written down. Words of nothing are none: the option is chosen, and nothing is kept as agreed.
#[must_use]
pub fn with_agreed(job: &Job, plan: &Plan, words: &str) -> Job {
    let mut after = job.clone();
    let option = match &plan.option {
        Some(option) => Some(option.clone()),
        None => write_down(&mut after, &plan.wall),
    };
    let Some(option) = option else { return job.clone() };
    let unit = plan.style.graduation.unit();
    let offset = |length: strikeline_solver::units::Length| Offset(length.quantised().with_unit(unit));
    let places = plan.pieces.iter().map(|piece| AgreedPlace {
        piece: piece.id.clone(),
        middle: Spot { x: offset(piece.frame.origin.x), y: offset(piece.frame.origin.y) },
    });
    let words = words.trim();
    let agreed = (!words.is_empty()).then(|| Agreed { words: words.to_owned(), places: places.collect() });
    for wall in after.walls.iter_mut().filter(|wall| wall.id == plan.wall) {
        for one in wall.options.iter_mut().filter(|one| one.id == option) {
            one.agreed = agreed.clone();
        }
        wall.chosen = Some(option.clone());
    }
    after
}

/// The job in which the plan's option is not chosen, and nothing was agreed to of it.
#[must_use]
pub fn without_agreed(job: &Job, plan: &Plan) -> Job {
    let mut after = job.clone();
    for wall in after.walls.iter_mut().filter(|wall| wall.id == plan.wall) {
        for one in wall.options.iter_mut().filter(|one| Some(&one.id) == plan.option.as_ref()) {
            one.agreed = None;
        }
        if wall.chosen == plan.option {
            wall.chosen = None;
        }
    }
    after
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;

    #[test]
    fn what_is_agreed_is_kept_where_it_hung_and_taken_back() {
        let job = job();
        let now = plan(&job);
        let agreed = with_agreed(&job, &now, " In the middle, at that height. ");
        let wall = agreed.wall(&now.wall).unwrap();
        let chosen = wall.chosen.clone().unwrap();
        let option = wall.options.iter().find(|one| one.id == chosen).unwrap();
        let kept = option.agreed.as_ref().unwrap();
        assert_eq!(kept.words, "In the middle, at that height.");
        assert_eq!(kept.places.len(), now.pieces.len());
        let then = plan(&agreed);
        let told =
            |plan: &Plan| plan.findings.iter().any(|finding| finding.what.rule() == "moved_since_agreed");
        assert!(!told(&then));
        let back = without_agreed(&agreed, &then);
        let wall = back.wall(&now.wall).unwrap();
        assert_eq!((wall.chosen.clone(), wall.options[0].agreed.clone()), (None, None));
        // Only the option is chosen where there are no words.
        let wordless = with_agreed(&job, &now, "  ");
        let wall = wordless.wall(&now.wall).unwrap();
        assert!(wall.chosen.is_some() && wall.options.iter().all(|one| one.agreed.is_none()));
    }
}
