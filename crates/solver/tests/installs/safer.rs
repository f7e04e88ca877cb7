//! Where something could be read two ways, or was not measured, the safer is taken.

use super::fastening;
use super::rooms::{self, installs, plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot};
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::mount::Required;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::job::rule::UprightRule;
use strikeline_solver::plan::verdict::{EmptyWhy, Rest, Want};
use strikeline_solver::subject::Subject;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Length, Stress};

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
    // 4 diameters of a 5/16 in lag are 31.75 mm, 7 are 55.6. A pull at one end of the piece turns the plate and pushes
    // the stud on the other side up: 220 N x 725 mm over 406 mm is 393 N, more than half of 30 kg and the pull.
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
