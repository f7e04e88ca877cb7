//! A hole of a plate chosen by hand: used, left empty, used with one fastener of the kit, or as the plan likes.

use strikeline_solver::job::Job;
use strikeline_solver::job::option::{ByHand, Hanging, Wanted};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::hanging_mut;
use strikeline_solver::subject::{Id, Subject};

/// The job with a hole of its plan chosen by hand; with nothing wanted it is the plan's again. The job as it is where
/// the plan has no such hole.
#[must_use]
pub fn with_by_hand(job: &Job, plan: &Plan, hole: &Subject, wanted: Option<Wanted>) -> Job {
    let Some((piece, hole)) = hole_of(plan, hole) else { return job.clone() };
    let mut after = job.clone();
    let Some(hanging) = hanging_mut(&mut after, plan, piece) else { return job.clone() };
    write(hanging, &hole, wanted);
    after
}

/// Writes a choice in the place of the one before; choices stand in the order in which they were first made.
fn write(hanging: &mut Hanging, hole: &Id, wanted: Option<Wanted>) {
    let held = hanging.holes.iter().position(|one| one.hole == *hole);
    match (held, wanted) {
        (Some(index), None) => {
            hanging.holes.remove(index);
        }
        (Some(index), Some(wanted)) => {
            if let Some(one) = hanging.holes.get_mut(index) {
                // Of an empty slot nobody has to know where in it.
                one.along = one.along.filter(|_| wanted != Wanted::Empty);
                one.wanted = wanted;
            }
        }
        (None, Some(wanted)) => hanging.holes.push(ByHand { hole: hole.clone(), wanted, along: None }),
        (None, None) => {}
    }
}

/// What is chosen by hand of a hole; `None` where the plan decides.
#[must_use]
pub fn by_hand(job: &Job, plan: &Plan, hole: &Subject) -> Option<Wanted> {
    let (piece, hole) = hole_of(plan, hole)?;
    let option =
        job.wall(&plan.wall)?.options.iter().find(|option| Some(&option.id) == plan.option.as_ref())?;
    let hanging = option.hangings.iter().find(|hanging| hanging.id == piece.hanging)?;
    hanging.holes.iter().find(|one| one.hole == hole).map(|one| one.wanted.clone())
}

/// What a hand can choose of a hole, with its words, in the order of a menu; empty for what is no hole.
#[must_use]
pub fn choices(job: &Job, plan: &Plan, hole: &Subject) -> Vec<(Option<Wanted>, String)> {
    if hole_of(plan, hole).is_none() {
        return Vec::new();
    }
    let with = job.kit.fasteners.iter().map(|stock| {
        (
            Some(Wanted::UsedWith(stock.id.clone())),
            format!("Use with {}", strikeline_solver::words::stock(plan, stock)),
        )
    });
    let mut choices =
        vec![(Some(Wanted::Used), "Use".to_owned()), (Some(Wanted::Empty), "Leave empty".to_owned())];
    choices.extend(with);
    choices.push((None, "As the plan likes".to_owned()));
    choices
}

/// A hole of a plan's plate, and its piece.
fn hole_of<'a>(plan: &'a Plan, hole: &Subject) -> Option<(&'a PiecePlan, Id)> {
    plan.pieces.iter().find_map(|piece| {
        let mut holes = piece.mount.iter().flat_map(|mount| &mount.holes);
        holes.find(|one| one.subject == *hole).map(|one| (piece, one.id.clone()))
    })
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::kit::FastenerStock;
    use strikeline_solver::plan::verdict::EmptyWhy;

    fn with_lags() -> Job {
        let mut job = job();
        job.kit.fasteners = vec![stock("fastener-1", 2.5), stock("fastener-2", 3.0)];
        job
    }

    fn stock(id: &str, length_in: f64) -> FastenerStock {
        let inches = |value: f64| Some(strikeline_solver::units::Length::inches(value));
        FastenerStock {
            id: Id::new(id),
            kind: strikeline_solver::job::kit::FastenerKind::Lag,
            diameter: inches(0.3125),
            length: inches(length_in),
            head: inches(0.5),
            washer: inches(0.0),
            count: None,
            to_standard: None,
            report: None,
        }
    }

    #[test]
    fn a_choice_is_written_changed_and_taken_back() {
        let job = with_lags();
        let first = plan(&job);
        let hole = Subject::read("display-1.hole-1").unwrap();
        assert_eq!(by_hand(&job, &first, &hole), None);
        let empty = with_by_hand(&job, &first, &hole, Some(Wanted::Empty));
        let told = plan(&empty);
        assert_eq!(by_hand(&empty, &told, &hole), Some(Wanted::Empty));
        let fastening = &told.pieces[0].mount.as_ref().unwrap().fastening;
        assert!(fastening.left_empty.iter().any(|one| one.subject == hole && one.why == EmptyWhy::ByHand));
        let with = Wanted::UsedWith(Id::new("fastener-2"));
        let used = with_by_hand(&empty, &told, &hole, Some(with.clone()));
        assert_eq!(used.walls[0].options[0].hangings[0].holes.len(), 1, "in the place of the other");
        assert_eq!(by_hand(&used, &plan(&used), &hole), Some(with));
        assert_eq!(with_by_hand(&used, &plan(&used), &hole, None), job);
        let nowhere = Subject::read("display-1.hole-9").unwrap();
        assert_eq!(with_by_hand(&job, &first, &nowhere, Some(Wanted::Used)), job);
    }

    #[test]
    fn an_assumed_option_is_written_down_first() {
        let mut job = with_lags();
        job.walls[0].options.clear();
        let assumed = plan(&job);
        assert_eq!(assumed.option, None);
        let hole = assumed.pieces[0].mount.as_ref().unwrap().holes[0].subject.clone();
        let after = with_by_hand(&job, &assumed, &hole, Some(Wanted::Empty));
        assert_eq!(by_hand(&after, &plan(&after), &hole), Some(Wanted::Empty));
    }

    #[test]
    fn the_choices_are_those_of_the_kit() {
        let job = with_lags();
        let words: Vec<String> = choices(&job, &plan(&job), &Subject::read("display-1.hole-1").unwrap())
            .into_iter()
            .map(|(_, words)| words)
            .collect();
        assert_eq!(words[..2], ["Use", "Leave empty"]);
        assert!(words[2].starts_with("Use with lag screw 5/16\" x 2 1/2\""), "{words:?}");
        assert_eq!(words.last().map(String::as_str), Some("As the plan likes"));
        assert!(choices(&job, &plan(&job), &Subject::read("display-1").unwrap()).is_empty());
    }
}
