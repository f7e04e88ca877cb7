//! What is stated of fixings and anchors, lags that are none, and drywall screws, through `solve`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "installs/rooms.rs"]
#[allow(dead_code, reason = "half of the rooms' tools are for the other tests")]
mod rooms;

use rooms::{Into, id, installs, plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::finding::What;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::framing::{Front, Masonry, WallFraming};
use strikeline_solver::job::kit::{FastenerKind, FastenerStock, Report};
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent};
use strikeline_solver::plan::verdict::{EmptyWhy, Fastening, OfKit, Rest, Want};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Force, Length};
use strikeline_solver::words;

fn job(suits: impl Fn(&Into) -> bool) -> Job {
    room(&installs().into_iter().find(|install| suits(&install.into)).unwrap())
}

fn in_wood() -> Job {
    job(|into| matches!(into, Into::Lags { .. }))
}

/// A brick wall with fixings, both loads as they are stated.
fn in_brick(shear_n: f64, pull_n: f64) -> Job {
    let mut job = job(|into| matches!(into, Into::Concrete { gap } if *gap == 0.0));
    job.walls[0].framing = Some(WallFraming::Masonry(Masonry { solid: Some(true) }));
    let stock = &mut job.kit.fasteners[0];
    stock.kind = FastenerKind::Fixing;
    stock.report = Some(Report {
        document: "A data sheet".to_owned(),
        date: "2024".to_owned(),
        shear: Some(Force::newtons(shear_n)),
        pull: Some(Force::newtons(pull_n)),
        base: Some("solid brick".to_owned()),
        ..Report::default()
    });
    job
}

fn fastening(job: &Job) -> Fastening {
    plan(job).pieces[0].mount.clone().unwrap().fastening
}

#[test]
fn a_fixing_in_brick_counts_by_its_makers_values_only() {
    let job = in_brick(4000.0, 4000.0);
    let told = fastening(&job);
    let verdict = &told.verdict;
    assert_eq!(
        (verdict.word, verdict.if_probed, verdict.as_stated),
        (Word::NotKnown, Word::NotKnown, Word::Holds)
    );
    assert!(verdict.rests_on.contains(&Rest::MakersLoad("solid brick".to_owned())));
    let text = words::verdict(&plan(&job), &told).join(" ");
    assert!(text.contains("By the maker's values: holds"), "{text}");
    // Too little is too little, whoever says so.
    let weak = fastening(&in_brick(20.0, 20.0)).verdict;
    assert_eq!((weak.word, weak.as_stated), (Word::NotKnown, Word::Short));
}

#[test]
fn a_pull_test_is_of_one_hole_and_a_load_that_is_not_given_is_asked_for() {
    let mut job = in_brick(4000.0, 4000.0);
    job.kit.fasteners[0].report.as_mut().unwrap().tested = Some(true);
    let told = fastening(&job);
    assert!(told.verdict.rests_on.contains(&Rest::PullTest(0.25)));
    assert!(
        told.verdict.rests_on.contains(&Rest::MakersLoad("solid brick".to_owned())),
        "its shear is the maker's"
    );
    let text = words::rests_on(&plan(&job), &told).join(" ");
    assert!(text.contains("it proves one hole, not the group"), "{text}");
    job.kit.fasteners[0].report.as_mut().unwrap().shear = None;
    let told = fastening(&job);
    assert!(told.fasteners.is_empty());
    assert!(told.verdict.wanted.contains(&Want::FastenerReport(OfKit::from(&job.kit.fasteners[0]))));
}

#[test]
fn what_is_stated_for_solid_brick_counts_in_solid_brick_alone() {
    let mut job = in_brick(4000.0, 4000.0);
    for solid in [None, Some(false)] {
        job.walls[0].framing = Some(WallFraming::Masonry(Masonry { solid }));
        let told = fastening(&job);
        assert_eq!(told.verdict.as_stated, Word::NotKnown, "{solid:?}");
        let text = words::verdict(&plan(&job), &told).join(" ");
        let empty: Vec<String> =
            told.left_empty.iter().map(|one| words::left_empty(&plan(&job), one)).collect();
        match solid {
            None => assert!(text.contains("\"solid brick\""), "{text}"),
            _ => assert!(empty.iter().all(|one| one.contains("hollow")) && !empty.is_empty(), "{empty:?}"),
        }
    }
    // Of a load nobody knows what it is for.
    let mut job = in_brick(4000.0, 4000.0);
    job.kit.fasteners[0].report.as_mut().unwrap().base = None;
    assert_eq!(fastening(&job).verdict.as_stated, Word::NotKnown);
    assert!(
        fastening(&job).verdict.wanted.contains(&Want::FastenerReport(OfKit::from(&job.kit.fasteners[0])))
    );
}

#[test]
fn what_one_hole_withstood_counts_at_a_quarter() {
    let maker = in_brick(4000.0, 500.0);
    let used = |job: &Job| fastening(job).fasteners[0].asked.unwrap();
    let mut tested = in_brick(4000.0, 2000.0);
    tested.kit.fasteners[0].report.as_mut().unwrap().tested = Some(true);
    assert_eq!(used(&maker), used(&tested), "500 N of 2000");
}

#[test]
fn a_fixing_stands_on_the_brick_and_away_from_its_edges() {
    let mut job = in_brick(4000.0, 4000.0);
    job.walls[0].front.as_mut().unwrap().thickness = Some(Length::inches(0.5));
    let plastered = fastening(&job);
    assert!(plastered.fasteners.is_empty());
    let is_off = |why: &EmptyWhy| matches!(why, EmptyWhy::Refused(Why::OffTheConcrete { .. }));
    assert!(plastered.left_empty.iter().all(|one| is_off(&one.why)));
    let mut job = in_brick(4000.0, 4000.0);
    job.kit.fasteners[0].report.as_mut().unwrap().least_edge = Some(Length::inches(80.0));
    assert!(fastening(&job).fasteners.is_empty(), "nowhere so far from an edge");
    // A concrete screw of the kit has no value in brick.
    let mut job = in_brick(4000.0, 4000.0);
    job.kit.fasteners[0].kind = FastenerKind::ConcreteScrew;
    assert!(fastening(&job).fasteners.is_empty());
}

#[test]
fn a_lag_that_is_no_lag_goes_by_its_report() {
    let mut job = in_wood();
    assert!(fastening(&job).verdict.rests_on.contains(&Rest::LagMade));
    job.kit.fasteners[0].to_standard = Some(true);
    let told = fastening(&job);
    assert_eq!(told.verdict.word, Word::Holds);
    assert!(!told.verdict.rests_on.contains(&Rest::LagMade), "it is answered");
    job.kit.fasteners[0].to_standard = Some(false);
    let told = fastening(&job);
    assert!(told.fasteners.is_empty());
    assert!(told.verdict.wanted.contains(&Want::FastenerReport(OfKit::from(&job.kit.fasteners[0]))));
}

fn other(kind: FastenerKind, report: Option<Report>) -> FastenerStock {
    FastenerStock {
        id: id("fastener-9"),
        kind,
        diameter: None,
        length: None,
        head: None,
        washer: None,
        count: None,
        to_standard: None,
        report,
    }
}

#[test]
fn anchors_show_at_a_quarter_and_make_no_verdict() {
    let mut job = in_wood();
    // Two holes between the studs.
    let mut holes = rooms::plate(&mut job).holes.clone();
    for (index, hole) in holes.iter_mut().take(2).enumerate() {
        hole.id = id(&format!("between-{index}"));
        hole.right = Offset(Length::millimetres(-60.0));
    }
    rooms::plate(&mut job).holes.extend(holes.into_iter().take(2));
    let without = fastening(&job);
    assert_eq!(without.anchors, None);
    let rated = Report { pull: Some(Force::newtons(400.0)), ..Report::default() };
    job.kit.fasteners.push(other(FastenerKind::Anchor, Some(rated)));
    let told = fastening(&job);
    let anchors = told.anchors.clone().unwrap();
    assert_eq!((anchors.holes, anchors.shear, anchors.pull), (2, None, Some(Force::newtons(100.0))));
    assert_eq!(told.verdict, without.verdict, "no part of the verdict");
    let text = words::verdict(&plan(&job), &told).join(" ");
    assert!(text.contains("no part of this") && text.contains("100 N of pull at 2 holes"), "{text}");
    // Without a rating nothing is shown.
    job.kit.fasteners[1].report = None;
    assert_eq!(fastening(&job).anchors, None);
}

#[test]
fn a_drywall_screw_is_never_used_and_that_is_told() {
    let mut job = in_wood();
    job.kit.fasteners[0].kind = FastenerKind::DrywallScrew;
    let told = plan(&job);
    assert!(fastening(&job).fasteners.is_empty());
    let finding = told.findings.iter().find(|one| one.what == What::Brittle).unwrap();
    assert!(words::finding(&told, finding).contains("brittle"));
}

#[test]
fn what_is_stated_names_its_document_and_its_date() {
    let good = in_brick(4000.0, 4000.0);
    let told = fastening(&good).verdict;
    assert_eq!(told.as_stated, Word::Holds);
    let rest = Rest::Document { name: "A data sheet".to_owned(), date: "2024".to_owned() };
    assert!(told.rests_on.contains(&rest), "{:?}", told.rests_on);
    for spoil in [(|report: &mut Report| report.document.clear()) as fn(&mut Report), |report| {
        report.date = " ".to_owned();
    }] {
        let mut job = good.clone();
        spoil(job.kit.fasteners[0].report.as_mut().unwrap());
        let told = fastening(&job).verdict;
        assert_eq!(told.as_stated, Word::NotKnown);
        assert!(told.wanted.contains(&Want::FastenerReport(OfKit::from(&job.kit.fasteners[0]))), "{told:?}");
    }
}

#[test]
fn a_breast_of_concrete_has_its_own_face() {
    let plain = job(|into| matches!(into, Into::Concrete { gap } if *gap == 0.0));
    let on_wall = fastening(&plain).verdict;
    assert_eq!(on_wall.word, Word::Holds);
    let mut job = plain.clone();
    let wall = &mut job.walls[0];
    let framing =
        wall.framing.replace(WallFraming::Wood(strikeline_solver::job::framing::WoodStuds::default()));
    let bare = Front { layers: Vec::new(), thickness: Some(Length::default()) };
    wall.front = Some(Front { layers: Vec::new(), thickness: Some(Length::inches(0.5)) });
    wall.features.push(Feature {
        id: id("breast-1"),
        kind: FeatureKind::ChimneyBreast,
        name: None,
        across: AcrossExtent {
            left: Some(AcrossReading::from_left(Length::millimetres(1000.0))),
            width: Some(Length::millimetres(2000.0)),
            ..AcrossExtent::default()
        },
        upright: UprightExtent::default(),
        proud: Some(Length::millimetres(200.0)),
        framing,
        front: Some(bare),
        notes: None,
    });
    let told = fastening(&job).verdict;
    assert_eq!((told.word, told.wanted), (Word::Holds, Vec::new()), "as on a wall of concrete");
    job.walls[0].features[0].front = None;
    let told = fastening(&job).verdict;
    assert_eq!(told.wanted, [Want::Front(id("breast-1"))], "the wall's own board says nothing of it");
    assert!(words::wanted(&plan(&job), &fastening(&job))[0].contains("chimney breast"));
}
