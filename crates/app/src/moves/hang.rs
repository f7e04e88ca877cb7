//! What is new in the job, hung in the option that is shown.

use super::with_option;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{CableWay, Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::PieceKind;
use strikeline_solver::job::place::{AcrossDatum, UpDown};
use strikeline_solver::job::rule::{AcrossRule, Follow, PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::{assumed_place, hanging_mut};
use strikeline_solver::subject::Id;
use strikeline_solver::units::{Length, LengthUnit};

/// The job with a piece of it hung in the shown option too. The plan is the job's as it was before the piece.
///
/// A display goes beside the last piece that hangs there, anything else under the first display; the only one
/// goes where an assumed option would have it. A sound bar hangs on its display, anything else on a mount of
/// which nothing is known.
#[must_use]
pub fn with_hung(job: &Job, plan: &Plan, piece: &Id) -> Job {
    let mut after = with_option(job, plan);
    let Some(kind) = job.piece(piece).map(|piece| piece.kind) else { return after };
    let (across, upright) = place(job, plan, kind);
    let display = plan.pieces.iter().find(|piece| piece.kind == PieceKind::Display);
    let hung_on = display.filter(|_| kind == PieceKind::SoundBar).map(|display| display.id.clone());
    let mount = hung_on.is_none().then(|| {
        let id = after.give_id("mount");
        after.mounts.push(Mount { id: id.clone(), ..Mount::default() });
        id
    });
    let hanging = Hanging {
        id: after.give_id("hanging"),
        piece: piece.clone(),
        mount,
        hung_on,
        across,
        upright,
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    if after.wall(&plan.wall).is_some_and(|wall| wall.options.is_empty()) {
        let id = after.give_id("option");
        let option = WallOption { id, ..WallOption::default() };
        after.walls.iter_mut().filter(|wall| wall.id == plan.wall).for_each(|wall| {
            wall.options.push(option.clone());
        });
    }
    let wall = after.walls.iter_mut().find(|wall| wall.id == plan.wall);
    let shown = wall.and_then(|wall| match &plan.option {
        Some(id) => wall.options.iter_mut().find(|option| option.id == *id),
        None => wall.options.last_mut(),
    });
    if let Some(option) = shown {
        option.hangings.push(hanging);
    }
    after
}

/// The job in which a piece of the shown option hangs on another mount of the job.
#[must_use]
pub fn with_mount(job: &Job, plan: &Plan, piece: &Id, mount: &Id) -> Job {
    let mut after = job.clone();
    if let Some(piece) = plan.pieces.iter().find(|shown| shown.id == *piece)
        && let Some(hanging) = hanging_mut(&mut after, plan, piece)
    {
        hanging.hang_on(Some(mount.clone()));
    }
    after
}

/// Where a further piece of a kind goes.
fn place(job: &Job, plan: &Plan, kind: PieceKind) -> (AcrossRule, UprightRule) {
    let display = plan.pieces.iter().find(|piece| piece.kind == PieceKind::Display);
    match (display.filter(|_| kind != PieceKind::Display), plan.pieces.last()) {
        (Some(display), _) => (
            AcrossRule::On(display.id.clone()),
            UprightRule::Gap {
                side: UpDown::Down,
                of: display.id.clone(),
                by: hand(plan),
                follow: Follow::default(),
            },
        ),
        (None, Some(last)) => {
            let from = AcrossDatum::Edge(last.id.part("right"));
            (
                AcrossRule::Beside { from, toward: None, by: hand(plan) },
                UprightRule::Aligned { of: PieceHeight::Centre, with: last.id.part("centre") },
            )
        }
        (None, None) => assumed_place(job),
    }
}

/// Between a piece and the next until something is said: a hand goes in (chosen).
fn hand(plan: &Plan) -> Length {
    match plan.style.graduation.unit() {
        LengthUnit::Millimetre => Length::millimetres(50.0),
        LengthUnit::Inch | LengthUnit::Mil => Length::inches(2.0).quantised(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use strikeline_solver::job::piece::Piece;
    use strikeline_solver::solve::solve;

    fn with_piece(job: &Job, kind: PieceKind) -> (Job, Id) {
        let mut job = job.clone();
        let id = job.give_id("piece");
        let width = Some(Length::inches(20.0));
        job.pieces.push(Piece { id: id.clone(), kind, width, height: width, ..Piece::default() });
        (job, id)
    }

    #[test]
    fn a_display_goes_beside_and_anything_else_under_the_display() {
        let before = sample::job();
        let plan = sample::plan(&before);
        let first = plan.pieces[0].outline;
        for kind in [PieceKind::Display, PieceKind::SoundBar, PieceKind::Shelf, PieceKind::Box] {
            let (job, id) = with_piece(&before, kind);
            let after = with_hung(&job, &plan, &id);
            let hung = sample::plan(&after);
            assert_eq!(hung.pieces.len(), 2, "{kind:?}");
            let new = hung.pieces.iter().find(|piece| piece.id == id).unwrap();
            assert_eq!(new.mount.is_none(), kind == PieceKind::SoundBar, "a bar hangs on its display");
            assert_eq!(hung.pieces[0].outline, first, "the first stays");
            let gap = Length::inches(2.0);
            let (apart, level) = match kind {
                PieceKind::Display => {
                    (new.outline.left - first.right, new.outline.centre().y - first.centre().y)
                }
                _ => (first.bottom - new.outline.top, new.outline.centre().x - first.centre().x),
            };
            assert!((apart - gap).abs() < Length::millimetres(1e-6), "{kind:?}: {apart:?}");
            assert!(level.abs() < Length::millimetres(1e-6), "{kind:?}: {level:?}");
            assert_eq!(after.clone().complete_ids(), Ok(()));
        }
    }

    #[test]
    fn on_a_wall_without_an_option_one_is_written_down() {
        for pieces in [0, 1] {
            let mut bare = sample::job();
            bare.walls[0].options.clear();
            bare.pieces.truncate(pieces);
            let plan = sample::plan(&bare);
            let (job, id) = with_piece(&bare, PieceKind::Display);
            let after = with_hung(&job, &plan, &id);
            assert_eq!(after.walls[0].options.len(), 1);
            assert_eq!(sample::plan(&after).pieces.len(), pieces + 1);
            assert_eq!(after.clone().complete_ids(), Ok(()));
        }
    }

    #[test]
    fn a_piece_hangs_on_another_mount_where_it_hung() {
        for has_option in [true, false] {
            let mut job = sample::job();
            if !has_option {
                job.walls[0].options.clear();
            }
            let plan = sample::plan(&job);
            let mount = job.give_id("mount");
            job.mounts.push(Mount { id: mount.clone(), ..Mount::default() });
            let after = with_mount(&job, &plan, &plan.pieces[0].id, &mount);
            let hung = solve(&after, &plan.wall, None);
            assert_eq!(hung.pieces[0].mount.as_ref().unwrap().id, mount);
            assert_eq!(hung.pieces[0].outline, plan.pieces[0].outline);
        }
    }
}
