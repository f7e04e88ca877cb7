//! Tilts, arms and pull-downs: what nobody told of them is taken the safer way, or asked for.

use super::rooms::{self, installs, room};
use super::{fastening, named};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::{MountKind, Tilt};
use strikeline_solver::job::option::{Hanging, Nudge};
use strikeline_solver::job::piece::{CentreOfMass, Piece};
use strikeline_solver::job::place::UprightDatum;
use strikeline_solver::job::rule::{PieceHeight, UprightRule};
use strikeline_solver::plan::verdict::{Rest, Want};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Angle, Length, Mass};

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

#[test]
fn a_tilt_whose_turning_line_nobody_measured_is_not_known() {
    let mut job = room(&installs()[0]);
    job.mounts[0].kind = MountKind::Tilting;
    job.mounts[0].tilt =
        Some(Tilt { down: Some(Angle::degrees(12.0)), up: Some(Angle::degrees(2.0)), pivot_down: None });
    let told = fastening(&job);
    assert_ne!(told.verdict.word, Word::Holds);
    assert!(
        told.verdict.wanted.contains(&Want::Pivot(job.mounts[0].id.clone())),
        "{:?}",
        told.verdict.wanted
    );
    job.mounts[0].tilt.as_mut().unwrap().pivot_down = Some(mm(400.0));
    assert!(!fastening(&job).verdict.wanted.contains(&Want::Pivot(job.mounts[0].id.clone())));
}

#[test]
fn an_arm_or_pull_down_whose_tilt_nobody_told_is_not_known() {
    let untold = [None, Some(Tilt::default())];
    for kind in [MountKind::Arm, MountKind::PullDown] {
        let mut job = room(&named("arm 500 mm, 30 kg, six in three rows"));
        job.mounts[0].kind = kind;
        job.mounts[0].arm.as_mut().unwrap().lowers = Some(mm(0.0));
        assert_eq!(fastening(&job).verdict.word, Word::Holds, "{kind:?}: a tilt of 0 is told");
        for tilt in untold.clone() {
            job.mounts[0].tilt = tilt;
            let verdict = fastening(&job).verdict;
            assert_eq!((verdict.word, verdict.as_stated), (Word::NotKnown, Word::NotKnown), "{kind:?}");
            assert_eq!(verdict.wanted, [Want::Tilt(job.mounts[0].id.clone())], "{kind:?}");
        }
        // One way told: the other counts as far.
        let up = Angle::degrees(5.0);
        job.mounts[0].tilt = Some(Tilt { down: None, up: Some(up), pivot_down: None });
        let verdict = fastening(&job).verdict;
        // Its middle is the mildest place that it can turn about.
        assert_eq!(verdict.wanted, [Want::Pivot(job.mounts[0].id.clone())], "{kind:?}");
        job.mounts[0].tilt.as_mut().unwrap().pivot_down = Some(mm(415.0));
        let verdict = fastening(&job).verdict;
        assert!(verdict.rests_on.contains(&Rest::Tilt(up)), "{:?}", verdict.rests_on);
        assert!(verdict.wanted.is_empty(), "{:?}", verdict.wanted);
    }
}

#[test]
fn a_pull_down_turns_a_quarter_to_either_side_until_it_is_told() {
    let mut job = room(&named("arm 500 mm, 30 kg, six in three rows"));
    let arm = fastening(&job).verdict;
    job.mounts[0].kind = MountKind::PullDown;
    job.mounts[0].arm.as_mut().unwrap().lowers = Some(mm(0.0));
    let quarter = Angle::degrees(90.0);
    let told = fastening(&job).verdict;
    for rest in [Rest::Hinge(quarter), Rest::Head(quarter)] {
        assert!(told.rests_on.contains(&rest), "{:?}", told.rests_on);
    }
    let used = |verdict: &strikeline_solver::plan::verdict::Verdict| verdict.governing.as_ref().unwrap().used;
    assert_eq!(used(&told), used(&arm), "as an arm of which as little is told");
    let own = job.mounts[0].arm.as_mut().unwrap();
    (own.hinge, own.head) = (Some(Angle::degrees(0.0)), Some(Angle::degrees(0.0)));
    let told = fastening(&job).verdict;
    assert!(!told.rests_on.iter().any(|rest| matches!(rest, Rest::Hinge(_) | Rest::Head(_))));
    assert!(used(&told) < used(&arm), "straight forward only");
}

#[test]
fn a_middle_that_is_told_in_part_is_chosen_for_the_rest() {
    let mut job = room(&installs()[0]);
    assert!(fastening(&job).verdict.rests_on.contains(&Rest::Middle));
    let none = Some(Offset(mm(0.0)));
    job.pieces[0].centre_of_mass = Some(CentreOfMass { right: none, up: None, forward: Some(mm(30.0)) });
    assert!(fastening(&job).verdict.rests_on.contains(&Rest::Middle), "how high is not told");
    job.pieces[0].centre_of_mass.as_mut().unwrap().up = none;
    assert!(!fastening(&job).verdict.rests_on.contains(&Rest::Middle));
}

#[test]
fn an_arm_that_tilts_reaches_farther_and_a_pull_down_comes_down() {
    let arm = named("arm 500 mm, 30 kg, six in three rows");
    let mut job = room(&arm);
    let used = |job: &Job| fastening(job).verdict.governing.unwrap().used;
    let before = used(&job);
    let about =
        |down: f64| Some(Tilt { down: None, up: Some(Angle::degrees(15.0)), pivot_down: Some(mm(down)) });
    job.mounts[0].tilt = about(415.0);
    let tilted = used(&job);
    assert!(tilted > before * 1.05, "{before} to {tilted}");
    // About a line near its top its lower edge comes farther out.
    job.mounts[0].tilt = about(100.0);
    assert!(used(&job) > tilted * 1.05, "{tilted} to {}", used(&job));
    job.mounts[0].tilt = Some(rooms::level());
    job.mounts[0].kind = MountKind::PullDown;
    let told = fastening(&job);
    assert!(told.verdict.wanted.contains(&Want::Lowering(job.mounts[0].id.clone())));
    let lowered = |job: &mut Job, by: f64| {
        job.mounts[0].arm.as_mut().unwrap().lowers = Some(mm(by));
        used(job)
    };
    // Of one that swings to neither side the pull straight out below is the worst, once it is far enough below.
    let none = Some(Angle::degrees(0.0));
    let arm = job.mounts[0].arm.as_mut().unwrap();
    (arm.hinge, arm.head) = (none, none);
    let (up, down) = (lowered(&mut job, 0.0), lowered(&mut job, 1500.0));
    assert!(down > up * 1.05, "{up} to {down}: pulled out farther below its plate");
}

#[test]
fn a_tilt_is_told_both_ways_or_by_one_that_tilts() {
    for kind in ["arm 500 mm, 30 kg, six in three rows", "flush 30 kg behind 1/2 in board"] {
        let mut job = room(&named(kind));
        if job.mounts[0].arm.is_none() {
            job.mounts[0].kind = MountKind::Tilting;
        }
        let asked = Want::Tilt(job.mounts[0].id.clone());
        let told = |job: &mut Job, down: Option<f64>, up: Option<f64>| {
            let (down, up) = (down.map(Angle::degrees), up.map(Angle::degrees));
            job.mounts[0].tilt = Some(Tilt { down, up, pivot_down: Some(mm(300.0)) });
            fastening(job).verdict
        };
        for (down, up) in [(None, None), (Some(0.0), None), (None, Some(0.0))] {
            let verdict = told(&mut job, down, up);
            assert!(verdict.wanted.contains(&asked), "{kind}: {down:?} {up:?}");
            assert!(!verdict.rests_on.iter().any(|rest| matches!(rest, Rest::Tilt(_))), "{kind}");
        }
        for (down, up, rests) in [(Some(0.0), Some(0.0), false), (Some(12.0), None, true)] {
            let verdict = told(&mut job, down, up);
            assert!(!verdict.wanted.contains(&asked), "{kind}: {down:?} {up:?}");
            assert_eq!(verdict.rests_on.contains(&Rest::Tilt(Angle::degrees(12.0))), rests, "{kind}");
        }
    }
}

#[test]
fn what_hangs_on_an_arm_s_piece_to_one_side_bears_there() {
    let mut even = room(&named("arm 500 mm, 30 kg, six in three rows"));
    let used = |job: &Job| fastening(job).verdict.governing.unwrap().used;
    let before = used(&even);
    let mut bar = |name: &str, kg: f64, right: f64| {
        let piece = Piece {
            id: rooms::id(name),
            width: Some(mm(900.0)),
            height: Some(mm(70.0)),
            depth: Some(mm(60.0)),
            mass: Some(Mass::kilograms(kg)),
            ..Piece::default()
        };
        even.pieces.push(piece);
        let own = even.walls[0].options[0].hangings[0].clone();
        even.walls[0].options[0].hangings.push(Hanging {
            id: rooms::id(&format!("hanging-{name}")),
            piece: rooms::id(name),
            mount: None,
            hung_on: Some(rooms::id("display-1")),
            nudge: Nudge { right: Offset(mm(right)), ..Nudge::default() },
            upright: UprightRule::Height {
                of: PieceHeight::Centre,
                from: UprightDatum::Floor,
                toward: None,
                by: mm(1000.0),
            },
            ..own
        });
    };
    bar("bar-1", 5.0, 400.0);
    // One of next to no weight on the other side evens the outline, and changes nothing of what bears where.
    bar("bar-2", 1e-12, -400.0);
    let mut one_side = even.clone();
    one_side.walls[0].options[0].hangings.pop();
    one_side.pieces.pop();
    assert!((used(&one_side) - used(&even)).abs() < 1e-9, "{} {}", used(&one_side), used(&even));
    let mut middle = one_side.clone();
    middle.walls[0].options[0].hangings[1].nudge = Nudge::default();
    assert!(used(&middle) > before && used(&one_side) > used(&middle) * 1.01, "{}", used(&one_side));
}
