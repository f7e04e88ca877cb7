//! A place of the sweep in full is what a solve gives of the job with the piece moved there, and a look promises no
//! fewer studs than are met.

use super::room::{plan, rooms};
use proptest::prelude::*;
use std::cell::RefCell;
use std::path::Path;
use strikeline::files::job_file::read_job;
use strikeline::moves::{self, Handle, HandleKind};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::geometry::Axis;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::Meets;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::sweep::{Full, Nearest, Place, Reach, Sweep, Told, can_hang};
use strikeline_solver::units::Mass;

/// A demo job.
fn demo(name: &str) -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs").join(name);
    read_job(&path).unwrap().job
}

/// The nudge of a piece, by its hanging.
fn nudge(job: &Job, hanging: &Id) -> strikeline_solver::job::option::Nudge {
    let options = job.walls.iter().flat_map(|wall| &wall.options);
    options.flat_map(|option| &option.hangings).find(|one| one.id == *hanging).unwrap().nudge
}

/// Holds a place in full to a solve of the job with the piece moved there by hand.
fn agrees(job: &Job, before: &Plan, piece: &Id, place: &Place, is_present: bool) -> Full {
    let Told::Full(full) = &place.told else { unreachable!("a look only: {place:?}") };
    let handle = Handle { id: piece.clone(), kind: HandleKind::Piece };
    // Where it is nobody moves it.
    let moved = if is_present { job.clone() } else { moves::moved(job, before, &handle, place.wished) };
    let solved = solve(&moved, &before.wall, before.option.as_ref());
    let at = solved.pieces.iter().find(|one| one.id == *piece).unwrap();
    let verdict = at.mount.as_ref().map(|mount| &mount.fastening.verdict);
    let holes = || at.mount.iter().flat_map(|mount| &mount.holes);
    assert_eq!(full.nudge, nudge(&moved, &at.hanging));
    assert_eq!(full.centre, at.outline.centre());
    assert_eq!(full.if_probed, verdict.map(|verdict| verdict.if_probed));
    assert_eq!(full.used, verdict.and_then(|verdict| Some(verdict.governing.as_ref()?.used)));
    assert_eq!(full.holes_in_studs, holes().filter(|hole| hole.meets == Meets::Stud).count());
    assert_eq!(
        full.studs,
        at.mount.as_ref().map_or(0, strikeline_solver::plan::piece::MountedPlan::studs_met)
    );
    let entry = at.cable.as_ref().filter(|cable| !cable.leads.is_empty()).map(|cable| {
        let entry = cable.way.as_ref().and_then(|way| way.entry);
        entry.is_some_and(|entry| {
            let by = 0.001;
            cable.hidden.left.mm() <= entry.left.mm() + by
                && entry.right.mm() <= cable.hidden.right.mm() + by
                && cable.hidden.bottom.mm() <= entry.bottom.mm() + by
                && entry.top.mm() <= cable.hidden.top.mm() + by
        })
    });
    assert_eq!(full.entry_hidden, entry);
    assert_eq!(full.findings, solved.findings);
    full.as_ref().clone()
}

/// What a look promised of a place, held to what a solve gave; where a nudge made the readings come out round the place
/// is another by less than a graduation.
fn promised(look: &Place, full: &Full) {
    let Told::Coarse(coarse) = &look.told else { unreachable!("in full: {look:?}") };
    assert_eq!(coarse.entry_hidden.is_some(), full.entry_hidden.is_some(), "{coarse:?}: {full:?}");
    if full.centre == look.wished {
        assert!(full.studs <= coarse.studs, "{coarse:?}: {full:?}");
    }
}

#[test]
fn a_place_in_full_is_the_plan_of_the_job_moved_there() {
    let seen = RefCell::new([0_usize; 3]);
    let mut runner = super::runner_of(300);
    let places = (rooms(), any::<bool>(), any::<bool>(), prop::collection::vec(0.0..1.0_f64, 2));
    runner
        .run(&places, |(room, upright, wide, shares)| {
            let job = room.job();
            let before = plan(&job);
            let piece = Id::new("display-1");
            let axis = if upright { Axis::Upright } else { Axis::Across };
            let reach = if wide { Reach::Wall } else { Reach::Bay };
            let Some(mut sweep) = Sweep::of(&job, &before, &piece, axis, reach) else {
                prop_assert!(before.pieces.is_empty(), "nothing holds it");
                return Ok(());
            };
            let count = sweep.line().len();
            prop_assert!((1..=258).contains(&count));
            for share in shares {
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below 258")]
                let index = (share * f64::from(u32::try_from(count).unwrap())) as usize;
                let place = sweep.full(index).unwrap();
                let full = agrees(&job, &before, &piece, &place, index == sweep.present());
                let look = sweep.clone().nth(index).unwrap();
                promised(&look, &full);
                let mut seen = seen.borrow_mut();
                seen[0] += usize::from(full.entry_hidden == Some(true));
                seen[1] += usize::from(full.entry_hidden == Some(false));
                seen[2] += usize::from(full.studs > 0);
            }
            Ok(())
        })
        .unwrap();
    let seen = seen.into_inner();
    assert!(seen.iter().all(|count| *count >= 5), "each was seen: {seen:?}");
}

#[test]
fn a_place_of_a_demo_in_full_is_the_plan_of_the_job_moved_there() {
    let mut seen = [0_usize; 3];
    for name in ["breakfast_room", "corner_suite", "listening_room", "reading_nook", "tall_parlour"] {
        for kilograms in [4.0, 30.0, 120.0] {
            let mut job = demo(&format!("{name}.ron"));
            for piece in &mut job.pieces {
                piece.mass = Some(Mass::kilograms(kilograms));
            }
            for wall in &job.walls {
                let before = solve(&job, &wall.id, None);
                for piece in &before.pieces {
                    for axis in [Axis::Across, Axis::Upright] {
                        let Some(mut sweep) = Sweep::of(&job, &before, &piece.id, axis, Reach::Bay) else {
                            continue;
                        };
                        for index in [3, 97, sweep.present(), 160, 250] {
                            let place = sweep.full(index).unwrap();
                            let full = agrees(&job, &before, &piece.id, &place, index == sweep.present());
                            promised(&sweep.clone().nth(index).unwrap(), &full);
                            for (word, count) in
                                [Word::Holds, Word::NotKnown, Word::Short].iter().zip(&mut seen)
                            {
                                *count += usize::from(full.if_probed == Some(*word));
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(seen.iter().all(|count| *count >= 5), "each word was seen: {seen:?}");
}

#[test]
fn all_places_of_a_demo_come_at_a_look_and_then_in_full_from_the_present_one_outward() {
    let job = demo("tall_parlour.ron");
    let wall = &job.walls[0];
    let before = solve(&job, &wall.id, None);
    let piece = before.pieces[0].id.clone();
    let sweep = Sweep::of(&job, &before, &piece, Axis::Across, Reach::Bay).unwrap();
    let (count, present) = (sweep.line().len(), sweep.present());
    assert_eq!((count, present), (257, 128));
    assert_eq!(sweep.len(), 2 * 257);
    let again = sweep.clone();
    let all: Vec<Place> = sweep.collect();
    assert_eq!(all.len(), 2 * 257);
    let (looks, full) = all.split_at(257);
    for (index, look) in looks.iter().enumerate() {
        assert_eq!((look.index, look.wished), (index, again.line()[index]));
    }
    let away: Vec<usize> = full.iter().map(|place| place.index.abs_diff(present)).collect();
    assert!(away.is_sorted(), "{away:?}");
    for place in full.iter().step_by(16) {
        let solved = agrees(&job, &before, &piece, place, place.index == present);
        promised(&looks[place.index], &solved);
    }
    // A place asked for by itself is the one that comes in its turn.
    let mut alone = again;
    assert_eq!(alone.full(full[40].index).as_ref(), Some(&full[40]));
}

/// Against every place in full: the nearest at which it can hang, of two as near the one that is looked at first.
#[test]
fn the_nearest_place_that_can_is_the_nearest_of_all() {
    let mut found = 0;
    for name in ["tall_parlour.ron", "breakfast_room.ron", "corner_suite.ron", "reading_nook.ron"] {
        let job = demo(name);
        for option in &job.walls[0].options {
            let plan = solve(&job, &job.walls[0].id, Some(&option.id));
            for piece in &plan.pieces {
                let Some(mut nearest) = Nearest::of(&job, &plan, &piece.id) else { continue };
                while nearest.look_on() {}
                assert!(nearest.is_over());
                let mut sweep = Sweep::of(&job, &plan, &piece.id, Axis::Across, Reach::Bay).unwrap();
                let all = (0..sweep.line().len()).filter_map(|index| match sweep.full(index)?.told {
                    Told::Full(full) => Some((index, *full)),
                    Told::Coarse(_) => None,
                });
                let all: Vec<(usize, Full)> = all.collect();
                let away = |index: usize| index.abs_diff(sweep.present());
                let can = all.iter().filter(|(_, full)| can_hang(full));
                let least = can.clone().map(|(index, _)| away(*index)).min();
                let own = nearest.found().map(|full| {
                    can.clone().filter(|(_, one)| one == full).map(|(index, _)| away(*index)).min().unwrap()
                });
                assert_eq!(own, least, "{name} {}", piece.id);
                found += usize::from(own.is_some());
            }
        }
    }
    assert!(found > 3, "{found}: else this shows little");
}

/// What a hand does again and again is what one move does, and the plan that comes with it is the job's own.
#[test]
fn a_piece_moved_again_and_again_is_where_one_move_takes_it() {
    for name in ["tall_parlour.ron", "breakfast_room.ron", "listening_room.ron", "attic_landing.ron"] {
        let job = demo(name);
        for option in &job.walls[0].options {
            let plan = solve(&job, &job.walls[0].id, Some(&option.id));
            for piece in &plan.pieces {
                let handle = Handle { id: piece.id.clone(), kind: HandleKind::Piece };
                let Some(mut moving) = moves::Moving::of(&job, &plan, &piece.id) else { continue };
                for (right, up) in [(31.0, 7.0), (-88.3, 0.0), (0.2, -140.0), (412.0, 12.3), (-1.0, 1.0)] {
                    let mm = strikeline_solver::units::Length::millimetres;
                    let centre = piece.outline.centre();
                    let to = strikeline_solver::geometry::Point::new(centre.x + mm(right), centre.y + mm(up));
                    let (after, there) = moving.to(&plan, to);
                    assert_eq!(
                        after,
                        moves::moved(&job, &plan, &handle, to),
                        "{name} {} {right} {up}",
                        piece.id
                    );
                    assert_eq!(there, solve(&after, &plan.wall, plan.option.as_ref()), "{name} {}", piece.id);
                }
            }
        }
    }
}
