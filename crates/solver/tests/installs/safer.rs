//! Where something could be read two ways, or was not measured, the safer is taken.

use super::rooms::{self, installs, plan, room};
use super::{fastening, named};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot};
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::mount::{MountKind, Required, Tilt};
use strikeline_solver::job::option::{Hanging, Nudge};
use strikeline_solver::job::piece::{CentreOfMass, Piece};
use strikeline_solver::job::place::{
    AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::job::rule::{PieceHeight, UprightRule};
use strikeline_solver::plan::verdict::{EmptyWhy, Rest, Want};
use strikeline_solver::subject::Subject;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Angle, Length, Mass, Stress};

pub(crate) fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

fn drilled(job: &mut Job, mark: Subject, at: Point) {
    let option = job.walls[0].options.first().map(|option| option.id.clone());
    let number = job.walls[0].facts.len();
    job.walls[0].facts.push(Fact {
        id: rooms::id(&format!("fact-{number}")),
        mark: MarkId::of(mark).unwrap(),
        option,
        state: FactState::Drilled,
        planned: Some(Spot { x: Offset(at.x), y: Offset(at.y) }),
        went: None,
        across: None,
        upright: None,
        upright_at_right: None,
        size: None,
        fastener: None,
    });
}

#[test]
fn no_fastener_counts_beside_a_hole_that_is_there_whatever_it_was_drilled_for() {
    let job = room(&installs()[0]);
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    let first = &before.fastening.fasteners[0];
    let hole = before.holes.iter().find(|hole| hole.id == first.hole).unwrap();
    // A hole of a plate that hung here before, in this very option.
    let mut beside = job.clone();
    drilled(
        &mut beside,
        rooms::id("display-1").part("hole-of-before"),
        Point::new(hole.place.x + mm(6.0), hole.place.y),
    );
    let told = fastening(&beside);
    let empty = told.left_empty.iter().find(|one| one.hole == first.hole).unwrap();
    assert_eq!(empty.why, EmptyWhy::BesideHole);
    let marks = plan(&beside).marks;
    assert!(marks.iter().any(|mark| mark.id.part_str() == "hole-of-before" && !mark.is_needed), "it is told");
    // The plate's own holes, drilled 20 mm too far apart: neither stands over its own.
    let mut apart = job.clone();
    let others: Vec<_> = before
        .holes
        .iter()
        .filter(|one| before.fastening.fasteners.iter().any(|fastener| fastener.hole == one.id))
        .filter(|one| (one.place.y - hole.place.y).mm().abs() < 1.0)
        .collect();
    let (left, right) = (others[0], others[others.len() - 1]);
    drilled(&mut apart, left.subject.clone(), Point::new(left.place.x - mm(10.0), left.place.y));
    drilled(&mut apart, right.subject.clone(), Point::new(right.place.x + mm(10.0), right.place.y));
    let told = fastening(&apart);
    for one in [left, right] {
        assert!(told.fasteners.iter().all(|fastener| fastener.hole != one.id), "{}", one.id);
    }
}

#[test]
fn a_hole_bored_for_one_size_is_not_used_for_another() {
    let mut job = room(&installs()[0]);
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    let first = before.fastening.fasteners[0].clone();
    let hole = before.holes.iter().find(|hole| hole.id == first.hole).unwrap();
    drilled(&mut job, hole.subject.clone(), hole.place);
    job.walls[0].facts[0].fastener = Some(first.stock.clone());
    assert!(fastening(&job).fasteners.iter().any(|one| one.hole == first.hole));
    job.walls[0].facts[0].fastener = Some(rooms::id("fastener-of-before"));
    let told = fastening(&job);
    let empty = told.left_empty.iter().find(|one| one.hole == first.hole).unwrap();
    assert_eq!(empty.why, EmptyWhy::BoredForAnother);
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
fn the_plates_at_a_stud_s_ends_are_none_of_it() {
    let mut job = room(&installs()[0]);
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    let top = before.holes.iter().map(|hole| hole.place.y).reduce(Length::max).unwrap();
    // So high that the wall's end leaves 7 diameters, and the two plates at the top do not.
    job.walls[0].height = Some(top + mm(90.0));
    let told = fastening(&job);
    let used = |hole: &str| told.fasteners.iter().any(|one| one.hole.as_str() == hole);
    for hole in before.holes.iter().filter(|hole| hole.place.y == top) {
        assert!(!used(hole.id.as_str()), "{}", hole.id);
    }
}

#[test]
fn a_load_may_point_to_either_end_of_a_stud() {
    let mut job = room(&installs()[0]);
    let before = plan(&job).pieces[0].mount.clone().unwrap();
    let top = before.holes.iter().map(|hole| hole.place.y).reduce(Length::max).unwrap();
    // 4 diameters of a 5/16 in lag are 31.75 mm, 7 are 55.6. A pull at one end of the piece turns the plate and pushes the
    // stud on the other side up: 220 N x 725 mm over 406 mm is 393 N, more than half of 30 kg and the pull.
    job.walls[0].height = Some(top + mm(76.2 + 45.0));
    let told = fastening(&job);
    for hole in before.holes.iter().filter(|hole| hole.place.y == top) {
        let empty = told.left_empty.iter().find(|one| one.hole == hole.id).unwrap();
        assert!(matches!(empty.why, EmptyWhy::Refused(Why::Edge { .. })), "{empty:?}");
    }
    job.walls[0].height = Some(top + mm(76.2 + 60.0));
    assert_eq!(fastening(&job).fasteners.len(), before.fastening.fasteners.len());
}

#[test]
fn a_maker_s_count_and_a_maker_s_no_are_heard() {
    let mut job = room(&installs()[0]);
    let four = fastening(&job).fasteners.len();
    assert_eq!((fastening(&job).verdict.word, four), (Word::Holds, 4));
    let says = |job: &mut Job, text: &str| {
        job.mounts[0].required = Some(Required { fasteners: Some(text.to_owned()), holes: Vec::new() });
    };
    says(&mut job, "at least six lag screws");
    assert_eq!(fastening(&job).verdict.word, Word::Short);
    says(&mut job, "four lag screws 5/16");
    assert_eq!(fastening(&job).verdict.word, Word::Holds);
    says(&mut job, "Do not use lag screws");
    assert_eq!(fastening(&job).verdict.word, Word::NotKnown);
}

#[test]
fn metal_near_a_hole_takes_it_out_of_the_choice() {
    let mut job = room(&installs()[0]);
    let before = fastening(&job);
    let hole = plan(&job).pieces[0].mount.clone().unwrap().holes[0].clone();
    job.walls[0].hits.push(strikeline_solver::job::hit::Hit {
        id: rooms::id("hit-99"),
        kind: HitKind::Metal,
        x: strikeline_solver::job::place::AcrossReading::from_left(hole.place.x),
        y: Some(strikeline_solver::job::place::UprightReading::from_floor(hole.place.y)),
    });
    let told = fastening(&job);
    assert!(before.fasteners.iter().any(|one| one.hole == hole.id));
    assert!(told.fasteners.iter().all(|one| one.hole != hole.id));
}

#[test]
fn a_size_in_a_maker_s_words_is_no_count() {
    for (text, word) in [
        ("5/16 lag screws", Word::Holds),
        ("3/8\" lag bolts", Word::NotKnown),
        ("1/4 x 3 lag bolts", Word::NotKnown),
        ("5/16 x 3 lag bolts", Word::Holds),
        ("four 5/16\" lag screws", Word::Holds),
        ("six 5/16\" lag screws", Word::Short),
        ("8 x 60 mm lag screws", Word::NotKnown),
        ("Wood screws must not be used", Word::NotKnown),
    ] {
        let mut job = room(&installs()[0]);
        job.mounts[0].required = Some(Required { fasteners: Some(text.to_owned()), holes: Vec::new() });
        assert_eq!(fastening(&job).verdict.word, word, "{text}");
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

#[test]
fn a_required_hole_over_board_is_short_where_no_other_takes_one_either() {
    let mut job = room(&installs()[0]);
    // A hand's breadth to the right no hole of the plate meets a stud.
    job.walls[0].options[0].hangings[0].nudge = Nudge { right: Offset(mm(120.0)), ..Nudge::default() };
    assert_eq!(fastening(&job).fasteners, []);
    assert_eq!(fastening(&job).verdict.word, Word::NotKnown);
    let requires = |job: &mut Job, fasteners: Option<&str>, holes: &[&str]| {
        let holes = holes.iter().map(|hole| rooms::id(hole)).collect();
        job.mounts[0].required = Some(Required { fasteners: fasteners.map(str::to_owned), holes });
        fastening(job).verdict.word
    };
    assert_eq!(requires(&mut job, None, &["hole-1"]), Word::Short);
    assert_eq!(requires(&mut job, Some("at least four lag screws"), &[]), Word::Short);
    assert_eq!(requires(&mut job, Some("Keep it dry"), &[]), Word::NotKnown);
    // Where nobody looked behind the face it may still be met.
    job.walls[0].hits.clear();
    assert_eq!(requires(&mut job, None, &["hole-1"]), Word::NotKnown);
}

#[test]
fn a_stud_s_depth_and_a_ceiling_are_asked_for_where_they_decide() {
    let mut job = room(&installs()[0]);
    job.kit.fasteners[0].length = Some(Length::inches(4.0));
    let Some(strikeline_solver::job::framing::WallFraming::Wood(studs)) = &mut job.walls[0].framing else {
        panic!("wood");
    };
    studs.depth = None;
    let wall = job.walls[0].id.clone();
    let told = fastening(&job);
    assert!(told.verdict.wanted.contains(&Want::StudDepth(wall.clone())), "{:?}", told.verdict.wanted);
    let past = told.left_empty.iter().find_map(|empty| match empty.why {
        EmptyWhy::Refused(Why::PastStud { supposed, .. }) => Some(supposed),
        _ => None,
    });
    assert_eq!(past, Some(true));
    let mut job = room(&installs()[0]);
    job.walls[0].height = None;
    assert!(!fastening(&job).verdict.wanted.contains(&Want::WallSize(wall.clone())), "holes at 1.6 m");
    let ceiling = Rest::Ceiling(Length::inches(84.0));
    assert!(fastening(&job).verdict.rests_on.contains(&ceiling), "it is told that it hangs on one");
    assert!(!fastening(&room(&installs()[0])).verdict.rests_on.contains(&ceiling), "measured");
    // Near 7 ft under the lowest ceiling: 2134 less its plates' 76 and the 56 of a lag's 7 diameters.
    let UprightRule::Height { by, .. } = &mut job.walls[0].options[0].hangings[0].upright else { panic!() };
    *by = mm(1950.0);
    for hit in &mut job.walls[0].hits {
        hit.y = hit
            .y
            .take()
            .map(|at| strikeline_solver::job::place::UprightReading { by: at.by + mm(450.0), ..at });
    }
    let told = fastening(&job).verdict;
    assert!(told.wanted.contains(&Want::WallSize(wall)), "{:?}", told.wanted);
    assert_eq!(told.word, Word::NotKnown);
}

/// A feature of the wall over so much of it, in millimetres: from, to; lower edge, height.
pub(crate) fn add_feature(
    job: &mut Job,
    kind: FeatureKind,
    (from, to): (f64, f64),
    (bottom, height): (f64, f64),
) {
    let across = AcrossExtent {
        left: Some(AcrossReading::from_left(mm(from))),
        right: Some(AcrossReading::from_left(mm(to))),
        ..AcrossExtent::default()
    };
    let upright = UprightExtent {
        bottom: Some(UprightReading::from_floor(mm(bottom))),
        height: Some(mm(height)),
        ..UprightExtent::default()
    };
    job.walls[0].features.push(Feature {
        id: rooms::id("feature-1"),
        kind,
        name: None,
        across,
        upright,
        proud: Some(mm(0.0)),
        framing: None,
        front: None,
        notes: None,
    });
}

#[test]
fn nothing_is_counted_above_a_window_whose_header_nobody_measured() {
    for above_mm in [60.0, 150.0, 250.0] {
        let mut job = room(&installs()[0]);
        let holes = plan(&job).pieces[0].mount.clone().unwrap().holes;
        let lowest = holes.iter().map(|hole| hole.place.y.mm()).fold(f64::INFINITY, f64::min);
        add_feature(&mut job, FeatureKind::Window, (1500.0, 2500.0), (600.0, lowest - above_mm - 600.0));
        let told = fastening(&job);
        assert_ne!(told.verdict.word, Word::Holds, "{above_mm}");
        assert!(
            told.left_empty.iter().all(|empty| empty.why == EmptyWhy::OverOpening),
            "{:?}",
            told.left_empty
        );
        assert_eq!(told.fasteners, []);
    }
}

#[test]
fn a_breast_ends_at_the_ceiling_that_nobody_measured_too() {
    let mut job = room(&installs()[0]);
    let framing = job.walls[0].framing.clone();
    add_feature(&mut job, FeatureKind::ChimneyBreast, (500.0, 3500.0), (0.0, 2400.0));
    let front = job.walls[0].front.clone();
    let breast = job.walls[0].features.last_mut().unwrap();
    (breast.framing, breast.front) = (framing, front);
    job.walls[0].height = None;
    let UprightRule::Height { by, .. } = &mut job.walls[0].options[0].hangings[0].upright else { panic!() };
    *by = mm(1950.0);
    let told = fastening(&job).verdict;
    assert_ne!(told.word, Word::Holds, "{told:?}");
}

#[test]
fn what_the_plate_s_maker_states_never_makes_more_or_less_known() {
    let mut job = room(&installs()[0]);
    let before = fastening(&job).verdict;
    assert_eq!(before.word, Word::Holds);
    for (psi, word) in
        [(61_850.0, Word::Holds), (120_000.0, Word::Holds), (40_000.0, Word::Holds), (1.0, Word::Short)]
    {
        job.mounts[0].plate.as_mut().unwrap().bearing = Some(Stress::psi(psi));
        let told = fastening(&job).verdict;
        assert_eq!((told.word, told.as_stated), (word, word), "{psi}");
    }
}
