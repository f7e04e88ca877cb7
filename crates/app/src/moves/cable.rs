//! Where the cables' openings are kept: dragged along what is allowed, drawn back to the best, or taken from a list.

use super::{Handle, HandleKind};
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::{CableWay, OnPiece, OnWall};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{CablePlan, Way, WayBy};
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::route::Place;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// Put nearer than this to where the plan would have it by itself, an opening is not kept: 1/2 in (chosen).
const BEST_WITHIN_MM: f64 = 12.7;

fn piece<'a>(plan: &'a Plan, id: &Id) -> Option<(&'a PiecePlan, &'a CablePlan)> {
    let piece = plan.pieces.iter().find(|piece| piece.id == *id)?;
    Some((piece, piece.cable.as_ref()?))
}

/// The middle of an opening; `None` where nothing is opened.
pub(super) fn place(plan: &Plan, handle: &Handle) -> Option<Point> {
    let way = piece(plan, &handle.id)?.1.way.as_ref()?;
    Some(if handle.kind == HandleKind::Entry { way.entry?.centre() } else { way.exit.centre() })
}

/// Keeps an opening at the allowed place that is nearest to one, or no longer where that is its best.
pub(super) fn keep(job: &mut Job, plan: &Plan, handle: &Handle, to: Point) {
    let Some((_, cable)) = piece(plan, &handle.id) else { return };
    let zone = if handle.kind == HandleKind::Entry { &cable.entry_zone } else { &cable.exit_zone };
    let Some(nearest) = zone.nearest(Place::of(to)) else { return };
    let allowed = nearest.on_wall();
    let mut free = job.clone();
    write(&mut free, plan, &handle.id, |way, _| match handle.kind {
        HandleKind::Entry => way.entry_at = None,
        _ => way.exit_at = None,
    });
    let best = place(&solve(&free, &plan.wall, plan.option.as_ref()), handle);
    let from = place(plan, handle).unwrap_or(to);
    let is_best = best.is_some_and(|best| {
        let off = |at: Point| (best.x - at.x).mm().abs().max((best.y - at.y).mm().abs());
        // A step away from the best is meant.
        off(to) <= BEST_WITHIN_MM && off(to) < off(from)
    });
    *job = free;
    if !is_best {
        let entry = (handle.kind == HandleKind::Entry).then_some(allowed);
        let exit = (handle.kind == HandleKind::Exit).then_some(allowed);
        pin(job, plan, &handle.id, entry, exit);
    }
}

/// The job with one of the other ways kept in the place of the best: its openings, or the face.
#[must_use]
pub fn with_way(job: &Job, plan: &Plan, id: &Id, way: &Way) -> Job {
    let mut after = job.clone();
    write(&mut after, plan, id, |kept, _| {
        (kept.entry_at, kept.exit_at) = (None, None);
        kept.on_face = Some(way.by == WayBy::OnFace);
    });
    if let Some(entry) = way.entry {
        pin(&mut after, plan, id, Some(entry.centre()), Some(way.exit.centre()));
    }
    after
}

/// Whether an opening, or the face, is kept where a hand put it.
#[must_use]
pub fn is_kept(job: &Job, plan: &Plan, id: &Id) -> bool {
    let option = job.wall(&plan.wall).and_then(|wall| match &plan.option {
        Some(option) => wall.options.iter().find(|one| one.id == *option),
        None => wall.options.last(),
    });
    let hanging = option.and_then(|option| option.hangings.iter().find(|one| one.piece == *id));
    hanging.is_some_and(|hanging| {
        let way = &hanging.way;
        way.entry_at.is_some() || way.exit_at.is_some() || way.on_face.is_some()
    })
}

/// The job with nothing of a piece's cables kept: the best way again.
#[must_use]
pub fn without_kept(job: &Job, plan: &Plan, id: &Id) -> Job {
    let mut after = job.clone();
    write(&mut after, plan, id, |way, _| {
        (way.entry_at, way.exit_at, way.on_face) = (None, None, None);
    });
    after
}

/// Writes where openings are kept: an entry from the piece's middle, an exit from the wall's left end and the floor.
fn pin(job: &mut Job, plan: &Plan, id: &Id, entry: Option<Point>, exit: Option<Point>) {
    let floor = &plan.survey.floor;
    write(job, plan, id, |way, piece| {
        if let Some(at) = entry {
            let on_piece = piece.frame.from_wall(at);
            let offset = |length: Length| Offset(length.quantised());
            way.entry_at = Some(OnPiece { right: offset(on_piece.x), up: offset(on_piece.y) });
        }
        if let Some(at) = exit {
            let none = Length::default();
            let (across, up) = (at.x.max(none), (at.y - floor.y_at(at.x)).max(none));
            way.exit_at = Some(OnWall { across: across.quantised(), up: up.quantised() });
        }
    });
}

/// Shows the way wished for of a piece in the plan's option; nothing where it does not hang there. An option that was
/// assumed is written down once.
fn write(job: &mut Job, plan: &Plan, id: &Id, change: impl FnOnce(&mut CableWay, &PiecePlan)) {
    let Some((piece, _)) = piece(plan, id) else { return };
    let is_plans = |wall: &&mut Wall| wall.id == plan.wall;
    if plan.option.is_none() && job.wall(&plan.wall).is_some_and(|wall| wall.options.is_empty()) {
        super::piece::write_down(job, plan);
    }
    let Some(wall) = job.walls.iter_mut().find(is_plans) else { return };
    let option = match &plan.option {
        Some(option) => wall.options.iter_mut().find(|one| one.id == *option),
        None => wall.options.last_mut(),
    };
    let hanging = option.and_then(|option| option.hangings.iter_mut().find(|one| one.piece == *id));
    if let Some(hanging) = hanging {
        change(&mut hanging.way, piece);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::moves::{moved, place as place_of};
    use strikeline_solver::job::option::Surface;

    /// The demo whose straight drop is blocked.
    fn nook() -> Job {
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        options.from_str(include_str!("../../../../demo-jobs/reading_nook.ron")).unwrap()
    }

    fn solved(job: &Job) -> Plan {
        solve(job, &job.walls[0].id, None)
    }

    fn dragged(job: &Job, kind: HandleKind, right_in: f64, up_in: f64) -> Job {
        let plan = solved(job);
        let handle = Handle { id: Id::new("display-1"), kind };
        let from = place_of(&plan, &handle, Length::default()).unwrap();
        let to = Point::new(from.x + Length::inches(right_in), from.y + Length::inches(up_in));
        moved(job, &plan, &handle, to)
    }

    fn way(job: &Job) -> Way {
        solved(job).pieces[0].cable.clone().unwrap().way.unwrap()
    }

    #[test]
    fn an_opening_is_kept_where_it_may_be_and_let_go_at_its_best() {
        let job = nook();
        for kind in [HandleKind::Entry, HandleKind::Exit] {
            let after = dragged(&job, kind, 2.0, 1.0);
            assert!(is_kept(&after, &solved(&after), &Id::new("display-1")), "{kind:?}");
            assert_eq!(way(&after).cost.not_allowed, 0, "{kind:?}");
            assert_eq!(dragged(&after, kind, -2.1, -0.9), job, "{kind:?}: near its best it is let go");
        }
    }

    #[test]
    fn an_opening_is_never_dragged_on_to_a_stud_or_past_what_hides_it() {
        let job = nook();
        for right in [-40.0, -9.0, -3.0, 1.0, 14.0, 60.0] {
            for kind in [HandleKind::Entry, HandleKind::Exit] {
                let after = dragged(&job, kind, right, 0.0);
                let plan = solved(&after);
                let cable = plan.pieces[0].cable.as_ref().unwrap();
                let against = cable.way.iter().flat_map(|way| &way.against).count();
                assert_eq!(against, 0, "{kind:?} {right}: {:?}", cable.way);
            }
        }
    }

    #[test]
    fn another_way_is_taken_and_let_go_again() {
        let job = nook();
        let plan = solved(&job);
        let id = Id::new("display-1");
        for other in &plan.pieces[0].cable.as_ref().unwrap().alternatives {
            let after = with_way(&job, &plan, &id, other);
            let taken = way(&after);
            assert_eq!(taken.by, other.by);
            let (a, b) = (taken.exit.centre(), other.exit.centre());
            assert!((a.x - b.x).mm().abs() < 0.01 && (a.y - b.y).mm().abs() < 0.01, "{a:?} {b:?}");
            assert_eq!(without_kept(&after, &solved(&after), &id), job);
        }
    }
    #[test]
    fn the_end_of_a_raceway_is_dragged_along_what_is_allowed_and_let_go_at_its_best() {
        let mut job = nook();
        job.walls[0].options[0].hangings[0].way.surface = Some(Surface::Only);
        let before = way(&job);
        assert_eq!(before.by, WayBy::OnFace);
        let after = dragged(&job, HandleKind::Exit, 10.0, 4.0);
        let moved = way(&after);
        let (a, b) = (before.exit.centre(), moved.exit.centre());
        let (x, y) = ((b.x - a.x).in_inches(), (b.y - a.y).in_inches());
        assert!((x - 10.0).abs() < 0.1 && (y - 4.0).abs() < 0.1, "{x} {y}");
        assert_eq!((moved.by, moved.cost.not_allowed), (WayBy::OnFace, 0));
        assert_eq!(dragged(&after, HandleKind::Exit, -9.9, -4.1), job, "near its best it is let go");
        // Past the wall it stays on it, and nothing of it is told against.
        let far = way(&dragged(&job, HandleKind::Exit, 900.0, 0.0));
        assert_eq!((far.cost.not_allowed, far.against.len()), (0, 0), "{far:?}");
    }

    #[test]
    fn what_was_typed_of_the_face_outlives_a_way_that_is_taken_and_let_go() {
        let id = Id::new("display-1");
        for surface in [None, Some(Surface::No), Some(Surface::AsWell), Some(Surface::Only)] {
            let mut job = nook();
            job.walls[0].options[0].hangings[0].way.surface = surface;
            let plan = solved(&job);
            assert!(!is_kept(&job, &plan, &id), "{surface:?}: nothing was taken yet");
            let cable = plan.pieces[0].cable.clone().unwrap();
            for other in cable.way.iter().chain(&cable.alternatives) {
                let after = with_way(&job, &plan, &id, other);
                assert_eq!(way(&after).by, other.by, "{surface:?}");
                assert!(is_kept(&after, &solved(&after), &id), "{surface:?}");
                assert_eq!(without_kept(&after, &solved(&after), &id), job, "{surface:?}");
            }
        }
    }

    #[test]
    fn an_entry_is_kept_where_it_was_put_on_a_turned_piece_too() {
        let mut job = nook();
        // The display splits the difference with a shelf that falls by 3 in in 40 in.
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        let shelf = options.from_str(
            "(id: \"shelf-1\", kind: shelf, across: (left: (by: \"36 in\"), width: \"40 in\"), upright: \
             (top: (by: \"41 in\"), top_at_right: (by: \"38 in\"), height: \"1 in\"), proud: \"1 in\")",
        );
        job.walls[0].features.push(shelf.unwrap());
        job.walls[0].options[0].hangings[0].upright = options
            .from_str("gap(side: up, of: \"shelf-1\", by: \"4 in\", follow: split_the_difference)")
            .unwrap();
        let plan = solved(&job);
        assert!(plan.pieces[0].frame.roll.deg().abs() > 1.0, "{:?}", plan.pieces[0].frame);
        let handle = Handle { id: Id::new("display-1"), kind: HandleKind::Entry };
        let from = place_of(&plan, &handle, Length::default()).unwrap();
        let to = Point::new(from.x + Length::inches(2.0), from.y + Length::inches(5.0));
        let allowed = plan.pieces[0].cable.as_ref().unwrap().entry_zone.nearest(Place::of(to)).unwrap();
        let entry = way(&moved(&job, &plan, &handle, to)).entry.unwrap().centre();
        let off = (entry.x - allowed.on_wall().x).mm().hypot((entry.y - allowed.on_wall().y).mm());
        assert!(off < 0.001, "{off} mm from where it was let go");
    }
}
