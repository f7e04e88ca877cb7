//! What is not allowed, or not known to be, is not told to be done.

use super::room::{GOOD, Room};
use super::{cable, tells};
use strikeline_solver::finding::Level;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::framing::{Front, SteelStuds, WallFraming};
use strikeline_solver::job::option::Opening;
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::job::wall::Beyond;
use strikeline_solver::job::{Job, kit::BoxStock};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{Unknown, WayBy};
use strikeline_solver::plan::mark::MarkWhat;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// From the entry in the bay over 76 in to an exit in the one over 60 in: the stud at 68 in has to be passed.
const ACROSS: &str =
    "entry_at: (right: \"1 in\", up: \"-9 in\"), exit_at: (across: \"60 in\", up: \"16 in\")";
const BORED: &str =
    "bore: true, entry_at: (right: \"1 in\", up: \"-9 in\"), exit_at: (across: \"60 in\", up: \"16 in\")";

/// What is wrong with a room, and what makes it so.
type Spoilt<'a> = (&'a str, &'a dyn Fn(&mut Job));

fn solved(job: &Job) -> Plan {
    solve(job, &job.walls[0].id, None)
}

fn unknown(plan: &Plan) -> &[Unknown] {
    &cable(plan).unknown
}

fn kit(plug: &str, outside: &str) -> &'static str {
    format!(
        "cables: [(id: \"cable-1\", signal: picture, length: \"120 in\", {outside} {plug} in_wall: true, bend: \"1 in\")]"
    )
    .leak()
}

#[test]
fn a_stud_is_bored_only_where_the_hole_as_it_is_drilled_is_allowed() {
    // A bearing 2x4 may lose 40 % of 3 1/2 in: 1.40 in (IRC R602.6). 1.38 in is under it, and drilled 1 7/16 in wide.
    let outside = "outside: \"1/4 in\",";
    for (plug, allowed) in [("1.37 in", Some(true)), ("1.38 in", Some(false))] {
        let kit = kit(&format!("plug: \"{plug}\","), outside);
        let room = Room { kit, way: BORED, ..GOOD };
        assert_eq!(cable(&room.plan()).allowed, allowed, "{plug}");
        assert_eq!(room.text().contains("Bore the stud"), allowed == Some(true), "{plug}");
    }
}

#[test]
fn a_hole_of_unknown_size_makes_nothing_allowed() {
    for (kit, way) in [
        (kit("", ""), BORED.to_owned()),
        (kit("plug: \"1/2 in\",", "outside: \"1/4 in\","), format!("{BORED}, tube: \"3/4 in\"")),
    ] {
        let plan = Room { kit, way: way.clone().leak(), ..GOOD }.plan();
        assert_eq!(cable(&plan).allowed, None, "{way}");
        assert_eq!(unknown(&plan), [Unknown::Bore], "{way}");
        assert_eq!(tells(&plan, "way_not_known"), Some(Level::Caution), "{way}");
    }
}

#[test]
fn no_mark_tells_to_bore_what_may_not_be_bored() {
    let steel = |job: &mut Job| {
        job.walls[0].framing = Some(WallFraming::Steel(SteelStuds {
            face: Some(Length::inches(1.5)),
            depth: Some(Length::inches(3.5)),
            ..SteelStuds::default()
        }));
    };
    let furred = |job: &mut Job| {
        if let Some(WallFraming::Wood(studs)) = &mut job.walls[0].framing {
            studs.furring = Some(true);
        }
        job.walls[0].options[0].hangings[0].way.bore = Some(true);
    };
    let cases: [Spoilt<'_>; 3] =
        [("nobody asked for it", &|_| {}), ("steel is never bored", &steel), ("furring is no stud", &furred)];
    for (what, with) in cases {
        let mut job = Room { way: ACROSS, ..GOOD }.job();
        with(&mut job);
        let plan = solved(&job);
        assert_eq!(cable(&plan).allowed, Some(false), "{what}");
        let passages: Vec<_> = plan.marks.iter().filter(|mark| mark.what == MarkWhat::Passage).collect();
        assert!(!passages.is_empty(), "{what}");
        for mark in passages {
            let told = strikeline_solver::words::mark(&plan, mark);
            assert!(!told.contains("Bore the stud") && told.contains("bore no stud"), "{what}: {told}");
        }
    }
}

#[test]
fn for_a_cord_of_power_no_wall_is_opened() {
    let kit = "cables: [(id: \"cable-1\", signal: power, length: \"96 in\", outside: \"1/4 in\", plug: \"3/4 in\", \
               in_wall: true, bend: \"1 in\")]";
    let plan = Room { kit, way: "on_face: false", ..GOOD }.plan();
    assert_eq!(cable(&plan).way.as_ref().unwrap().by, WayBy::InWall);
    assert_eq!(cable(&plan).allowed, Some(false));
    let opens = |what: &MarkWhat| {
        matches!(what, MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage | MarkWhat::Look)
    };
    assert!(!plan.marks.iter().any(|mark| opens(&mark.what)), "{:?}", plan.marks);
    assert!(!Room { kit, way: "on_face: false", ..GOOD }.text().contains("Fish the cables"));
}

#[test]
fn what_the_wall_is_built_of_and_what_is_beyond_it_have_to_be_known() {
    let spoilt = |with: &dyn Fn(&mut Job)| {
        let mut job = GOOD.job();
        with(&mut job);
        let plan = solved(&job);
        (cable(&plan).allowed, unknown(&plan).to_vec(), plan)
    };
    let wall = Id::new("wall-1");
    for framing in [None, Some(WallFraming::NotKnown)] {
        let (allowed, why, plan) = spoilt(&|job| job.walls[0].framing.clone_from(&framing));
        assert_eq!((allowed, why), (None, vec![Unknown::Framing(wall.clone())]), "{framing:?}");
        let entry = plan.marks.iter().find(|mark| mark.what == MarkWhat::Entry).unwrap();
        assert!(entry.assumed, "nothing is cut before that is known");
        let told = words::mark(&plan, entry);
        assert!(told.contains("First find out what the wall is built of."), "{told}");
    }
    let (allowed, why, plan) = spoilt(&|job| {
        job.walls[0].framing = Some(WallFraming::Steel(SteelStuds::default()));
    });
    assert_eq!((allowed, why), (None, vec![Unknown::Flange]));
    let entry = plan.marks.iter().find(|mark| mark.what == MarkWhat::Entry).unwrap();
    assert!(entry.assumed);
    let told = words::mark(&plan, entry);
    assert!(told.contains("First measure how wide the flange of the steel studs is."), "{told}");
    let (allowed, why, plan) = spoilt(&|job| job.walls[0].beyond = Some(Beyond::Neighbour));
    assert_eq!((allowed, why), (None, vec![Unknown::FireRating]));
    assert_eq!(tells(&plan, "way_not_known"), Some(Level::Caution));
}

#[test]
fn two_pieces_do_not_come_out_through_one_opening() {
    let mut job = GOOD.job();
    let second = Piece { id: Id::new("display-2"), ..job.pieces[0].clone() };
    job.pieces.push(second);
    let mut hanging = job.walls[0].options[0].hangings[0].clone();
    hanging.id = Id::new("hanging-2");
    hanging.piece = Id::new("display-2");
    hanging.mount = None;
    hanging.nudge.up.0 -= Length::inches(2.0);
    job.walls[0].options[0].hangings.push(hanging);
    let plan = solved(&job);
    let ways = plan.pieces.iter().map(|piece| piece.cable.as_ref().unwrap().way.clone().unwrap());
    let inside: Vec<_> = ways.filter(|way| way.by == WayBy::InWall).collect();
    assert_eq!(inside.len(), 2);
    let opened = |at: usize| [inside[at].entry.unwrap(), inside[at].exit];
    for one in opened(0) {
        for other in opened(1) {
            assert!(!one.overlaps(other), "{one:?} {other:?}");
        }
    }
}

#[test]
fn a_box_of_the_kit_has_a_depth_and_a_breast_its_own_front() {
    let mut job = GOOD.job();
    let stock = |depth: Option<Length>| BoxStock {
        id: Id::new("box-1"),
        name: None,
        width: None,
        height: None,
        depth,
        count: None,
    };
    job.kit.boxes = vec![stock(None)];
    job.walls[0].options[0].hangings[0].way.entry_kind = Some(Opening::Stocked(Id::new("box-1")));
    assert_eq!(tells(&solved(&job), "box_not_measured"), Some(Level::Caution));
    // 3 1/2 in of stud and 1/2 in of board take 3 5/8 in; behind the 1/16 in that a breast has in front they do not.
    job.kit.boxes = vec![stock(Some(Length::inches(3.625)))];
    let plan = solved(&job);
    assert_eq!((tells(&plan, "box_not_measured"), tells(&plan, "box_deep")), (None, None));
    let from_left = |inches: f64| Some(AcrossReading::from_left(Length::inches(inches)));
    let framing = job.walls[0].framing.clone();
    job.walls[0].features.push(Feature {
        id: Id::new("breast-1"),
        kind: FeatureKind::ChimneyBreast,
        name: None,
        across: AcrossExtent { left: from_left(30.0), right: from_left(120.0), ..AcrossExtent::default() },
        upright: UprightExtent {
            bottom: Some(UprightReading::from_floor(Length::inches(0.0))),
            height: Some(Length::inches(96.0)),
            ..UprightExtent::default()
        },
        proud: Some(Length::inches(12.0)),
        framing,
        front: Some(Front { layers: Vec::new(), thickness: Some(Length::inches(0.0625)) }),
        notes: None,
    });
    let plan = solved(&job);
    assert!(plan.survey.breast_at(Length::inches(75.0), None).is_some());
    if cable(&plan).way.as_ref().is_some_and(|way| way.by == WayBy::InWall) {
        assert_eq!(tells(&plan, "box_deep"), Some(Level::Stop));
        assert!(unknown(&plan).contains(&Unknown::Flue(Id::new("breast-1"))), "{:?}", unknown(&plan));
    } else {
        panic!("the way is inside the breast: {:?}", cable(&plan).way);
    }
}
