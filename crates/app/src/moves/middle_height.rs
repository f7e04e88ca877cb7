//! How high the middle of a piece is to hang above the floor: what a new job asks for of a placement.

use super::with_option;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{UpDown, UprightDatum};
use strikeline_solver::job::rule::{PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// The height of a piece's middle, where the option that is planned asks for one. An assumed option does not.
#[must_use]
pub fn middle_height(job: &Job, plan: &Plan, piece: &Id) -> Option<Length> {
    let option = plan.option.as_ref()?;
    let options = &job.wall(&plan.wall)?.options;
    let option = options.iter().find(|candidate| candidate.id == *option)?;
    let hanging = option.hangings.iter().find(|hanging| hanging.piece == *piece)?;
    match &hanging.upright {
        UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None | Some(UpDown::Up),
            by,
        } => Some(*by),
        UprightRule::Height { .. } | UprightRule::Gap { .. } | UprightRule::Aligned { .. } => None,
    }
}

/// The job with the middle of a piece at a height above the floor. An assumed option is written down for it.
///
/// Without a height the option goes again where there is nothing else in it, so that one is assumed as before.
#[must_use]
pub fn with_middle_height(job: &Job, plan: &Plan, piece: &Id, height: Option<Length>) -> Job {
    let mut after = match height {
        Some(_) => with_option(job, plan),
        None => job.clone(),
    };
    let Some(wall) = after.walls.iter_mut().find(|wall| wall.id == plan.wall) else { return after };
    let planned = |id: &Id| plan.option.as_ref().is_none_or(|option| option == id);
    let Some(height) = height else {
        let says_no_more = |hangings: &[Hanging]| match hangings {
            [one] => one.piece == *piece && one.nudge == strikeline_solver::job::option::Nudge::default(),
            _ => false,
        };
        wall.options.retain(|option| {
            !(planned(&option.id) && option.name.is_none() && says_no_more(&option.hangings))
        });
        return after;
    };
    let hangings = wall.options.iter_mut().filter(|option| planned(&option.id)).flat_map(|o| &mut o.hangings);
    for hanging in hangings.filter(|hanging| hanging.piece == *piece) {
        hanging.upright = UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None,
            by: height,
        };
        hanging.nudge.up = Offset::default();
    }
    after
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;

    #[test]
    fn a_height_writes_an_assumed_option_down_and_none_takes_it_back() {
        let piece = Id::new("display-1");
        let mut bare = job();
        bare.walls[0].options.clear();
        assert_eq!(middle_height(&bare, &plan(&bare), &piece), None);
        let high = Length::inches(57.0).quantised();
        let after = with_middle_height(&bare, &plan(&bare), &piece, Some(high));
        assert_eq!(middle_height(&after, &plan(&after), &piece), Some(high));
        assert_eq!(after.walls[0].options.len(), 1);
        let again = with_middle_height(&after, &plan(&after), &piece, Some(high));
        assert_eq!(again, after, "the option is written down once");
        let back = with_middle_height(&after, &plan(&after), &piece, None);
        assert!(back.walls[0].options.is_empty());
    }

    #[test]
    fn an_option_that_says_more_stays() {
        let piece = Id::new("display-1");
        let mut named = job();
        named.walls[0].options[0].name = Some("Low".to_owned());
        assert_eq!(with_middle_height(&named, &plan(&named), &piece, None), named);
        let mut nudged = job();
        nudged.walls[0].options[0].hangings[0].nudge.right = Offset(Length::inches(1.0));
        assert_eq!(with_middle_height(&nudged, &plan(&nudged), &piece, None), nudged);
    }
}
