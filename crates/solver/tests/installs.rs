//! The same ordinary installs as whole jobs, through `solve`: what was measured goes in, a verdict comes out.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "installs/asked.rs"]
mod asked;
#[path = "installs/limits.rs"]
mod limits;
#[path = "installs/mends.rs"]
mod mends;
#[path = "installs/mine.rs"]
mod mine;
#[path = "installs/others.rs"]
mod others;
#[path = "installs/rooms.rs"]
mod rooms;
#[path = "installs/safer.rs"]
mod safer;
#[path = "installs/turned.rs"]
mod turned;

use rooms::{Install, Which, installs, plan, room};
use strikeline_solver::capacity::case::{CaseKind, Pulled, Stance};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot};
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::verdict::{EmptyWhy, Fastening, OfKit, Rest, Want};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;
use strikeline_solver::words;

fn word(word: Word) -> &'static str {
    match word {
        Word::Holds => "holds",
        Word::Short => "short",
        Word::NotKnown => "not known",
    }
}

fn named(name: &str) -> Install {
    installs().into_iter().find(|install| install.name == name).unwrap()
}

fn fastening(job: &strikeline_solver::job::Job) -> Fastening {
    plan(job).pieces[0].mount.clone().unwrap().fastening
}

#[test]
fn a_stripped_hole_holds_nothing_in_any_option() {
    let mut job = room(&installs()[0]);
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    assert_eq!(before.fastening.verdict.word, Word::Holds);
    let first = &before.fastening.fasteners[0];
    let hole = before.holes.iter().find(|hole| hole.id == first.hole).unwrap();
    job.walls[0].facts.push(Fact {
        id: rooms::id("fact-1"),
        mark: MarkId::of(hole.subject.clone()).unwrap(),
        option: Some(rooms::id("another")),
        state: FactState::Stripped,
        planned: Some(Spot { x: Offset(hole.place.x), y: Offset(hole.place.y) }),
        went: None,
        across: None,
        upright: None,
        upright_at_right: None,
        size: None,
        fastener: None,
    });
    let told = fastening(&job);
    assert!(told.fasteners.iter().all(|one| one.hole != first.hole), "{told:#?}");
    let empty = told.left_empty.iter().find(|one| one.hole == first.hole).unwrap();
    assert_eq!(empty.why, EmptyWhy::Stripped);
    // A hole that is drilled and holds is used as before.
    job.walls[0].facts[0].state = FactState::Drilled;
    assert_eq!(fastening(&job), before.fastening);
}

#[test]
fn whole_jobs_get_the_verdict_of_a_careful_engineer() {
    let installs = installs();
    assert_eq!(installs.len(), 14);
    for install in &installs {
        let name = &install.name;
        let told = fastening(&room(install));
        let verdict = &told.verdict;
        let expected = install.expected.iter().find(|expected| expected.cases == Which::All).unwrap();
        assert_eq!(word(verdict.word), expected.word, "{name}: {told:#?}");
        assert_eq!(verdict.if_probed, verdict.word, "{name}: every stud is met");
        if let Some(uses) = expected.uses {
            let governing = verdict.governing.as_ref().unwrap();
            assert!((governing.used - uses).abs() < 0.0075, "{name}: {governing:?}");
            let most =
                told.fasteners.iter().filter_map(|one| one.asked).map(|one| one.used).fold(0.0, f64::max);
            assert_eq!(most, governing.used, "{name}: the schedule's worst is the governing one");
        }
        if let Some(turning) = install.expected.iter().find_map(|expected| expected.turning) {
            match verdict.uncarried.unwrap() {
                (case, Why::Turns { nmm }) => {
                    assert!((nmm / 1000.0 - turning).abs() < 0.1, "{name}: {nmm} in {case:?}");
                }
                other => panic!("{name}: {other:?}"),
            }
            let straight = install.expected.iter().find(|expected| expected.cases == Which::StraightOut);
            let governing = verdict.governing.as_ref().unwrap();
            assert!(
                (governing.used - straight.unwrap().uses.unwrap()).abs() < 0.0075,
                "{name}: {governing:?}"
            );
        }
        if verdict.word != Word::NotKnown {
            assert_eq!(verdict.wanted, Vec::new(), "{name}");
            let in_use = told.fasteners.len();
            assert_eq!(in_use + told.left_empty.len(), install.holes(), "{name}: each hole is told once");
        }
        if told.fasteners.is_empty() {
            // Behind board: no value is published for any of its holes.
            assert!(
                told.left_empty
                    .iter()
                    .all(|empty| matches!(empty.why, EmptyWhy::Refused(Why::OffTheConcrete { .. }))),
                "{name}: {told:#?}"
            );
            continue;
        }
        assert!(verdict.rests_on.iter().any(|rest| matches!(rest, Rest::Pull(_))), "{name}");
        assert!(verdict.rests_on.len() > 3, "{name}");
    }
}

#[test]
fn a_verdict_is_told_case_by_case() {
    let straight = |install: &Install| {
        install.expected.iter().find(|one| one.cases == Which::StraightOut).and_then(|one| one.uses)
    };
    let install = installs().into_iter().find(|install| straight(install).is_some()).unwrap();
    let job = room(&install);
    let told = fastening(&job);
    let of = |stance, pulled| {
        let by_case = told.verdict.by_case.iter();
        *by_case.clone().find(|one| one.kind == CaseKind { stance, pulled }).unwrap()
    };
    let middle = of(Stance::StraightOut, Pulled::Middle);
    assert_eq!((middle.word, middle.why), (Word::Holds, None));
    assert!((middle.used.unwrap() - straight(&install).unwrap()).abs() < 0.0075, "{middle:?}");
    for kind in [(Stance::StraightOut, Pulled::Side), (Stance::Aside, Pulled::Not)] {
        assert_eq!(of(kind.0, kind.1).word, Word::NotKnown, "{kind:?}");
    }
    let turning = install.expected.iter().find_map(|expected| expected.turning).unwrap();
    match of(Stance::Aside, Pulled::Not).why {
        Some(Why::Turns { nmm }) => assert!((nmm / 1000.0 - turning).abs() < 0.1, "{nmm}"),
        other => panic!("{other:?}"),
    }
    let text = words::verdict(&plan(&job), &told).join(" ");
    assert!(text.contains("as if probed: hanging, straight out: holds, 0."), "{text}");
    assert!(text.contains("hanging, swung or turned aside: not known, turned with 1"), "{text}");
    // Where all come to the same that is not said of each.
    let even = room(&named("flush 30 kg behind 1/2 in board"));
    let told = fastening(&even);
    assert_eq!(told.verdict.by_case.len(), 3);
    let most = told.verdict.by_case.iter().filter_map(|one| one.used).fold(0.0, f64::max);
    assert_eq!(most, told.verdict.governing.as_ref().unwrap().used);
    assert!(!words::verdict(&plan(&even), &told).join(" ").contains("Case by case"));
}

#[test]
fn what_nobody_measured_is_not_known_and_asked_for() {
    let good = room(&named("flush 30 kg behind 1/2 in board"));
    type Spoil = fn(&mut strikeline_solver::job::Job);
    let spoilt: [(&str, Spoil, Want); 10] = [
        ("mass", |job| job.pieces[0].mass = None, Want::Mass(rooms::id("display-1"))),
        ("mount's mass", |job| job.mounts[0].mass = None, Want::MountMass(rooms::id("mount-1"))),
        ("depth", |job| job.pieces[0].depth = None, Want::Size(rooms::id("display-1"))),
        ("stand-off", |job| job.mounts[0].stand_off = None, Want::StandOff(rooms::id("mount-1"))),
        ("drop", |job| job.mounts[0].drop = None, Want::Drop(rooms::id("mount-1"))),
        ("sheet", |job| rooms::plate(job).thickness = None, Want::PlateThickness(rooms::id("mount-1"))),
        ("front", |job| job.walls[0].front = None, Want::Front(rooms::id("wall-1"))),
        ("framing", |job| job.walls[0].framing = None, Want::Framing(rooms::id("wall-1"))),
        (
            "a hole's width",
            |job| rooms::plate(job).holes[0].diameter = None,
            Want::HoleWidth(rooms::id("display-1").part("hole-1")),
        ),
        (
            "a head",
            |job| job.kit.fasteners[0].head = None,
            Want::FastenerHead(OfKit::from(&good.kit.fasteners[0])),
        ),
    ];
    assert_eq!(fastening(&good).verdict.word, Word::Holds);
    for (what, spoil, want) in spoilt {
        let mut job = good.clone();
        spoil(&mut job);
        let verdict = fastening(&job).verdict;
        assert_eq!(verdict.word, Word::NotKnown, "{what}");
        assert_eq!(verdict.if_probed, Word::NotKnown, "{what}");
        assert!(verdict.wanted.contains(&want), "{what}: {:?}", verdict.wanted);
        assert_eq!(verdict.governing, None, "{what}: no number on what nobody measured");
    }
}

#[test]
fn without_a_probe_it_is_not_known_and_holds_if_probed() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    // A detector told of each stud's edges; nobody probed.
    job.walls[0].hits.retain(|hit| hit.kind == HitKind::Wood);
    for (index, hit) in job.walls[0].hits.iter_mut().enumerate() {
        let (kind, out) =
            if index % 2 == 0 { (HitKind::LeftEdge, -5.05) } else { (HitKind::RightEdge, 5.05) };
        (hit.kind, hit.x.by) = (kind, hit.x.by + Length::millimetres(out));
    }
    let told = fastening(&job);
    assert_eq!((told.verdict.word, told.verdict.if_probed), (Word::NotKnown, Word::Holds));
    let probes = told.verdict.wanted.iter().filter(|want| matches!(want, Want::Probe(_))).count();
    assert_eq!(probes, told.fasteners.len(), "each hole in use is to be probed");
    // A probe that met wood only near the face is lath: no stud.
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    for hit in job.walls[0].hits.iter_mut().filter(|hit| hit.kind == HitKind::Wood) {
        hit.kind = HitKind::ShallowWood;
    }
    assert_eq!(fastening(&job).verdict.word, Word::NotKnown);
}

#[test]
fn what_the_maker_requires_is_required() {
    let good = room(&named("flush 30 kg behind 1/2 in board"));
    let mut job = good.clone();
    job.mounts[0].required = Some(strikeline_solver::job::mount::Required {
        fasteners: Some("Lag screws, 5/16".to_owned()),
        holes: vec![rooms::id("hole-1")],
    });
    assert_eq!(fastening(&job).verdict.word, Word::Holds);
    job.kit.fasteners[0].kind = strikeline_solver::job::kit::FastenerKind::WoodScrew;
    job.kit.fasteners[0].diameter = Some(Length::inches(0.242));
    assert_eq!(fastening(&job).verdict.word, Word::Short, "a wood screw is no lag");
    let mut job = good;
    // The required hole is between the studs.
    rooms::plate(&mut job).holes[0].right = strikeline_solver::tape::Offset(Length::millimetres(-100.0));
    job.mounts[0].required =
        Some(strikeline_solver::job::mount::Required { fasteners: None, holes: vec![rooms::id("hole-1")] });
    let told = fastening(&job);
    assert_eq!(told.verdict.word, Word::Short);
    assert!(told.left_empty.iter().any(|empty| matches!(empty.why, EmptyWhy::Meets(_))), "{told:?}");
}

#[test]
fn a_short_kit_and_a_near_neighbour_leave_holes_empty() {
    let install = named("flush 50 kg behind 7/8 in plaster, six");
    let mut job = room(&install);
    job.kit.fasteners[0].count = Some(4);
    assert_eq!(fastening(&job).fasteners.len(), 4);
    let mut job = room(&install);
    // 20 mm apart is less than the 4 D of a 5/16 in lag, 31.75 mm.
    let upper = rooms::plate(&mut job).holes[0].down;
    rooms::plate(&mut job).holes[2].down = upper + Length::millimetres(20.0);
    let told = fastening(&job);
    assert!(told.left_empty.iter().any(|empty| matches!(empty.why, EmptyWhy::TooNear(_))), "{told:?}");
}

#[test]
fn more_weight_reach_or_pull_never_gains() {
    let order = |word: Word| match word {
        Word::Holds => 2,
        Word::NotKnown => 1,
        Word::Short => 0,
    };
    for name in [
        "flush 30 kg behind 1/2 in board",
        "arm 500 mm, 30 kg, six in three rows",
        "flush 50 kg on bare concrete",
    ] {
        let good = room(&named(name));
        type Grow = fn(&mut strikeline_solver::job::Job, f64);
        let grow: [Grow; 3] = [
            |job, by| job.pieces[0].mass = job.pieces[0].mass.map(|mass| mass * by),
            |job, by| {
                job.mounts[0].stand_off = job.mounts[0].stand_off.map(|off| off * by);
                if let Some(arm) = &mut job.mounts[0].arm {
                    arm.reach = arm.reach.map(|reach| reach * by);
                }
            },
            |job, by| job.settings.pull = Some(strikeline_solver::units::Force::newtons(220.0 * by)),
        ];
        for grow in grow {
            let mut before = (2, 0.0);
            for step in 0_u8..12 {
                let mut job = good.clone();
                grow(&mut job, 1.0 + 0.25 * f64::from(step));
                let verdict = fastening(&job).verdict;
                let used = verdict.governing.map_or(0.0, |governing| governing.used);
                let word = order(verdict.word);
                // Reserves closer than a hundredth count as one.
                assert!(
                    word <= before.0 && (used >= before.1 - 0.01),
                    "{name}, step {step}: {used}, {before:?}"
                );
                before = (word, used);
            }
        }
    }
}
