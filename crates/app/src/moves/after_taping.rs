//! After taping: the customer stands back and says "two inches to the left". The option's pieces move by just that,
//! and what is already on tape moves with them.

use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::Stage;
use strikeline_solver::solve::{hanging_mut, solve};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// A tape on the wall that has to be moved.
#[derive(Clone, Debug, PartialEq)]
pub struct MovedTape {
    /// The mark on it.
    pub mark: Subject,
    /// How far it goes to the right; negative to the left.
    pub right: Length,
    /// How far it goes up; negative downward.
    pub up: Length,
}

impl MovedTape {
    /// Whether it goes just so far in a direction, and not along the other axis.
    #[must_use]
    pub fn goes(&self, direction: Direction, by: Length) -> bool {
        let along = by * direction.sign();
        let (right, up) = match direction.axis() {
            Axis::Across => (along, Length::default()),
            Axis::Upright => (Length::default(), along),
        };
        (self.right - right).mm().abs() <= TOLD_MM && (self.up - up).mm().abs() <= TOLD_MM
    }
}

/// What differs by less is told alike: a hundredth of a millimetre, which no tape shows (chosen).
const TOLD_MM: f64 = 0.01;

/// What is nearer than this is where it is to be: what arithmetic leaves over.
const REST_MM: f64 = 1e-6;

/// The job with all pieces of the shown option moved by exactly so much, and the tapes that move. The plan is the
/// job's own.
///
/// Each piece keeps its rule and is nudged; one that hangs by the rule of another goes along with that one and is
/// not nudged twice. An option that was assumed is written down.
#[must_use]
pub fn after_taping(job: &Job, plan: &Plan, direction: Direction, by: Length) -> (Job, Vec<MovedTape>) {
    let mut after = job.clone();
    let along = by * direction.sign();
    let (right, up) = match direction.axis() {
        Axis::Across => (along, Length::default()),
        Axis::Upright => (Length::default(), along),
    };
    let wished = |id: &Id| {
        let before = plan.pieces.iter().find(|piece| piece.id == *id)?.outline.centre();
        Some(Point::new(before.x + right, before.y + up))
    };
    let mut now = plan.clone();
    // A piece that follows another is corrected after that one: at the latest when all before it are right.
    for _ in 0..=plan.pieces.len() {
        let mut is_right = true;
        for id in plan.pieces.iter().map(|piece| &piece.id) {
            let (Some(to), Some(piece)) = (wished(id), now.pieces.iter().find(|one| one.id == *id)) else {
                continue;
            };
            let from = piece.outline.centre();
            let rest = (to.x - from.x, to.y - from.y);
            if rest.0.mm().abs() <= REST_MM && rest.1.mm().abs() <= REST_MM {
                continue;
            }
            is_right = false;
            if let Some(hanging) = hanging_mut(&mut after, &now, piece) {
                nudge(&mut hanging.nudge.right, rest.0, by);
                nudge(&mut hanging.nudge.up, rest.1, by);
            }
            let written =
                after.wall(&plan.wall).and_then(|wall| wall.options.last()).map(|option| option.id.clone());
            now = solve(&after, &plan.wall, plan.option.as_ref().or(written.as_ref()));
        }
        if is_right {
            break;
        }
    }
    let tapes = moved_tapes(plan, &now);
    (after, tapes)
}

/// Adds to a nudge, in the unit of what was asked for; what comes to nothing is nothing.
fn nudge(offset: &mut Offset, more: Length, asked: Length) {
    let sum = offset.length() + more;
    if more.mm().abs() <= REST_MM {
        return;
    }
    *offset = if sum.mm().abs() <= REST_MM {
        Offset::default()
    } else {
        Offset(sum.quantised().with_unit(asked.unit()))
    };
}

/// The marks on tape that are at another place in the later plan. The strips of a sweep are on the hits, and stay.
fn moved_tapes(before: &Plan, after: &Plan) -> Vec<MovedTape> {
    let taped = before.marks.iter().filter(|mark| mark.on_tape && mark.stage != Stage::Find);
    taped
        .filter_map(|mark| {
            let from = mark.place?;
            let to = after.marks.iter().find(|other| other.id == mark.id)?.place?;
            let (right, up) = (to.x - from.x, to.y - from.y);
            let is_moved = right.mm().abs() > REST_MM || up.mm().abs() > REST_MM;
            is_moved.then(|| MovedTape { mark: mark.id.clone(), right, up })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::option::{Hanging, Nudge};
    use strikeline_solver::job::piece::Piece;
    use strikeline_solver::job::place::UpDown;
    use strikeline_solver::job::rule::{AcrossRule, UprightRule};

    fn inches(value: f64) -> Length {
        Length::inches(value).quantised()
    }

    fn centres(plan: &Plan) -> Vec<Point> {
        plan.pieces.iter().map(|piece| piece.outline.centre()).collect()
    }

    #[test]
    fn a_tape_that_goes_the_other_way_is_not_alike() {
        let tape = |right, up| MovedTape {
            mark: Id::new("display-1").part("centre_line"),
            right: inches(right),
            up: inches(up),
        };
        let two = inches(2.0);
        assert!(tape(-2.0, 0.0).goes(Direction::Left, two) && tape(0.0, 2.0).goes(Direction::Up, two));
        assert!(!tape(2.0, 0.0).goes(Direction::Left, two), "as far, and the other way");
        assert!(!tape(14.0, 0.0).goes(Direction::Left, two) && !tape(-2.0, 1.0).goes(Direction::Left, two));
    }

    #[test]
    fn the_piece_moves_by_exactly_so_much_and_its_tapes_are_told() {
        let (job, by) = (job(), Length::millimetres(33.3));
        let before = plan(&job);
        let (after, tapes) = after_taping(&job, &before, Direction::Left, by);
        let now = plan(&after);
        assert!(
            (before.pieces[0].outline.centre().x - now.pieces[0].outline.centre().x - by).abs().mm() < 1e-6
        );
        assert_eq!(before.pieces[0].outline.centre().y, now.pieces[0].outline.centre().y);
        let corners = tapes.iter().filter(|tape| tape.mark.part_str().contains("corner")).count();
        assert_eq!(corners, 4, "{tapes:?}");
        assert!(!tapes.iter().any(|tape| tape.mark.part_str().contains("sweep")), "hits stay: {tapes:?}");
        for tape in &tapes {
            assert!((tape.right + by).abs().mm() < 1e-6 && tape.up.abs().mm() < 1e-6, "{tape:?}");
        }
        let mut same = after;
        same.walls[0].options[0].hangings[0].nudge = Nudge::default();
        assert_eq!(same, job);
    }

    #[test]
    fn back_again_the_nudge_is_gone() {
        let job = job();
        let (up, _) = after_taping(&job, &plan(&job), Direction::Up, inches(2.0));
        assert_eq!(up.walls[0].options[0].hangings[0].nudge.up.length(), inches(2.0));
        let (back, _) = after_taping(&up, &plan(&up), Direction::Down, inches(2.0));
        assert_eq!(back, job);
    }

    /// A bar that hangs below the display by a gap, listed before it or after it.
    fn with_a_bar(first: bool) -> Job {
        let mut job = job();
        let bar = Piece {
            id: Id::new("bar-1"),
            width: Some(inches(30.0)),
            height: Some(inches(3.0)),
            ..Piece::default()
        };
        job.pieces.push(bar);
        let hanging = Hanging {
            id: Id::new("hanging-2"),
            piece: Id::new("bar-1"),
            upright: UprightRule::Gap {
                side: UpDown::Down,
                of: Id::new("display-1"),
                by: inches(2.0),
                follow: strikeline_solver::job::rule::Follow::default(),
            },
            across: AcrossRule::Between(
                strikeline_solver::job::place::AcrossDatum::LeftEnd,
                strikeline_solver::job::place::AcrossDatum::RightEnd,
            ),
            ..job.walls[0].options[0].hangings[0].clone()
        };
        let hangings = &mut job.walls[0].options[0].hangings;
        hangings.insert(if first { 0 } else { 1 }, Hanging { mount: None, ..hanging });
        job
    }

    #[test]
    fn what_hangs_by_the_rule_of_another_goes_along_once() {
        for first in [true, false] {
            let job = with_a_bar(first);
            let before = plan(&job);
            let (after, _) = after_taping(&job, &before, Direction::Down, inches(3.0));
            let now = plan(&after);
            for (from, to) in centres(&before).into_iter().zip(centres(&now)) {
                assert!((from.y - to.y - inches(3.0)).abs().mm() < 1e-6, "{first}");
            }
            let bar = after.walls[0].options[0].hangings.iter().find(|one| one.piece.as_str() == "bar-1");
            assert_eq!(bar.unwrap().nudge, Nudge::default(), "{first}");
        }
    }

    #[test]
    fn an_assumed_option_is_written_down_once() {
        let mut bare = job();
        bare.walls[0].options.clear();
        let before = plan(&bare);
        let (after, _) = after_taping(&bare, &before, Direction::Right, inches(1.0));
        assert_eq!(after.walls[0].options.len(), 1);
        let now = plan(&after);
        assert!(
            (now.pieces[0].outline.centre().x - before.pieces[0].outline.centre().x - inches(1.0)).abs().mm()
                < 1e-6
        );
    }
}
