//! Which of one's own mounts suit a place, best first.

use super::{named, rooms};
use rooms::{plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot};
use strikeline_solver::job::mount::{Mount, MountKind, Rating};
use strikeline_solver::job::piece::Pattern;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Length, Mass};
use strikeline_solver::which_of_mine::{MOST, OfMine, Suits, which_of_mine};
use strikeline_solver::words;

fn asked(job: &Job, mounts: &[Mount]) -> Vec<Suits> {
    which_of_mine(job, &job.walls[0].id, None, &rooms::id("display-1"), mounts).suits
}

fn called(mount: &Mount, name: &str) -> Mount {
    Mount { name: Some(name.to_owned()), ..mount.clone() }
}

#[test]
fn mounts_are_told_by_verdict_play_and_studs() {
    let job = room(&named("flush 50 kg behind 7/8 in plaster"));
    let four = called(&job.mounts[0], "Flush of four");
    let six = called(&room(&named("flush 50 kg behind 7/8 in plaster, six")).mounts[0], "Flush of six");
    // Its holes are 40 mm farther right, and it has as much play: the piece stands 40 mm left of its plate's middle.
    let mut shifted =
        Mount { play_left: Some(Length::inches(2.0)), play_right: Some(Length::inches(2.0)), ..six.clone() };
    shifted.name = Some("Shifted".to_owned());
    for hole in &mut shifted.plate.as_mut().unwrap().holes {
        hole.right = Offset(hole.right.length() + Length::millimetres(40.0));
    }
    let mut narrow = called(&four, "Narrow");
    narrow.plate.as_mut().unwrap().holes.retain(|hole| hole.right.length() < Length::default());
    narrow.kind = MountKind::Tilting;
    let told = asked(&job, &[four, narrow, shifted, six]);
    let names: Vec<&str> = told.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, ["Flush of six", "Shifted", "Narrow", "Flush of four"], "{told:#?}");
    assert_eq!(told.iter().map(|one| one.mount).collect::<Vec<_>>(), [3, 2, 1, 0]);
    assert_eq!((told[0].word, told[3].word), (Word::Holds, Word::Short));
    assert!((told[0].used.unwrap() - 0.82).abs() < 0.0075);
    assert!((told[1].offset.mm().abs() - 40.0).abs() < 1.0, "{:?}", told[1]);
    let said = words::suits(&plan(&job), &told[2]);
    assert!(said.starts_with("Not known") && said.contains("one stud only"), "{said}");
}

#[test]
fn what_its_maker_does_not_allow_is_left_out() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    job.pieces[0].pattern = Some(Pattern::new(Length::millimetres(400.0), Length::millimetres(400.0)));
    let own = job.mounts[0].clone();
    let rated = |kg: f64| Some(Rating { mass: Some(Mass::kilograms(kg)), ..Rating::default() });
    let light = Mount { rating: rated(20.0), ..own.clone() };
    let strong = Mount { rating: rated(40.0), ..own.clone() };
    let small = Mount {
        rating: Some(Rating { most_across: Some(Length::millimetres(200.0)), ..Rating::default() }),
        ..own.clone()
    };
    let four = [light, strong, small, own];
    let told = asked(&job, &four);
    assert_eq!(told.iter().map(|one| one.mount).collect::<Vec<_>>(), [1, 3]);
    assert!(told.iter().all(|one| one.word == Word::Holds), "{told:?}");
    let of = |mounts: &[Mount]| {
        let of = which_of_mine(&job, &job.walls[0].id, None, &rooms::id("display-1"), mounts);
        (of.suits.len(), of.refused, of.not_tried)
    };
    assert_eq!(of(&four), (2, 2, 0));
    let mut many = vec![four[0].clone(); MOST];
    many.extend(four.iter().cloned());
    assert_eq!(of(&many), (0, MOST, 4), "what was not tried is not told as refused");
}

#[test]
fn what_is_stripped_is_stripped_for_every_mount() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    let first = before.holes.iter().find(|hole| hole.id == before.fastening.fasteners[0].hole).unwrap();
    let option = job.walls[0].options[0].id.clone();
    job.walls[0].facts.push(Fact {
        id: rooms::id("fact-1"),
        mark: MarkId::of(first.subject.clone()).unwrap(),
        option: Some(option),
        state: FactState::Stripped,
        planned: Some(Spot { x: Offset(first.place.x), y: Offset(first.place.y) }),
        went: None,
        across: None,
        upright: None,
        upright_at_right: None,
        size: None,
        fastener: None,
    });
    let now = plan(&job).pieces[0].mount.clone().unwrap().fastening;
    assert!(now.fasteners.len() < before.fastening.fasteners.len());
    let told = asked(&job, &job.mounts.clone());
    let used = now.verdict.governing.as_ref().map(|governing| governing.used);
    assert_eq!((told[0].word, told[0].used), (now.verdict.word, used), "as the plan has it");
}

#[test]
fn what_is_drilled_for_one_plate_is_not_drilled_for_another_of_the_same_ids() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    let own = job.mounts.clone();
    let before = asked(&job, &own);
    let hung = plan(&job).pieces[0].mount.clone().unwrap();
    let first = hung.holes.iter().find(|hole| hole.id == hung.fastening.fasteners[0].hole).unwrap();
    // Far above: the plate that hangs now is held by it, one off the shelf is not.
    let spot = Spot { x: Offset(first.place.x), y: Offset(first.place.y + Length::millimetres(400.0)) };
    let option = job.walls[0].options[0].id.clone();
    job.walls[0].facts.push(Fact {
        id: rooms::id("fact-1"),
        mark: MarkId::of(first.subject.clone()).unwrap(),
        option: Some(option),
        state: FactState::Drilled,
        planned: Some(spot),
        went: None,
        across: None,
        upright: None,
        upright_at_right: None,
        size: None,
        fastener: None,
    });
    assert!(plan(&job).pieces[0].mount.as_ref().unwrap().held.is_some());
    assert_eq!(asked(&job, &own), before);
}

#[test]
fn what_is_assumed_of_a_wall_hangs_on_the_other_walls() {
    let job = room(&named("flush 30 kg behind 1/2 in board"));
    let own = job.mounts.clone();
    let mut two = job.clone();
    let mut second = job.walls[0].clone();
    second.id = rooms::id("wall-2");
    second.options.clear();
    two.walls.push(second);
    let on =
        |job: &Job, wall: &str| which_of_mine(job, &rooms::id(wall), None, &rooms::id("display-1"), &own);
    assert_eq!(on(&two, "wall-2"), OfMine::default(), "it hangs on the first wall");
    two.walls[0].options.clear();
    assert_eq!(on(&two, "wall-2"), OfMine::default(), "it is assumed on the first wall");
    assert_eq!(on(&two, "wall-1").suits.len(), 1);
}

#[test]
fn nothing_is_told_of_a_piece_that_does_not_hang_there() {
    let job = room(&named("flush 30 kg behind 1/2 in board"));
    let own = [job.mounts[0].clone()];
    assert_eq!(which_of_mine(&job, &job.walls[0].id, None, &rooms::id("display-9"), &own), OfMine::default());
    let gone = which_of_mine(&job, &rooms::id("wall-9"), None, &rooms::id("display-1"), &own);
    assert_eq!(gone, OfMine::default());
    assert_eq!(asked(&job, &[]), Vec::new());
    // In an option that is assumed it hangs all the same.
    let mut bare = job;
    bare.walls[0].options.clear();
    assert_eq!(asked(&bare, &own).len(), 1);
}
