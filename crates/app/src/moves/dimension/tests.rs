use super::super::sample::{job, plan};
use super::*;
use strikeline_drawing::dimension::ReadPlace;
use strikeline_solver::job::rule::{AcrossRule, UprightRule};

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn mark(part: &str) -> Subject {
    Id::new("display-1").part(part)
}

/// What a dimension tells after it was typed over, and the job.
fn after(about: &About, to: f64) -> (Length, Job) {
    let before = job();
    let after = typed(&before, &plan(&before), about, inches(to)).unwrap();
    (length_told(&after, &plan(&after), about).unwrap(), after)
}

/// Within a nanometre or so.
fn same(a: Length, b: f64) -> bool {
    (a - inches(b)).abs() < Length::millimetres(1e-5)
}

#[test]
fn the_dimension_from_the_rules_own_datum_changes_the_rule() {
    let about = About::Reading { mark: mark("level_line"), index: 0 };
    let before = length_told(&job(), &plan(&job()), &about).unwrap();
    let (told, after) = after(&about, before.in_inches() + 2.0);
    assert!(same(told, before.in_inches() + 2.0), "{told:?}");
    let hanging = &after.walls[0].options[0].hangings[0];
    assert!(hanging.nudge.up == Default::default(), "the rule is a height from the floor");
    assert!(
        matches!(&hanging.upright, UprightRule::Height { by, .. } if same(*by, 62.0)),
        "{:?}",
        hanging.upright
    );
}

#[test]
fn any_other_dimension_keeps_the_rule_and_moves_the_piece() {
    for (about, to) in [
        (About::Reading { mark: mark("centre_line"), index: 0 }, 41.0),
        (About::Close { mark: mark("centre_line"), index: 0 }, 45.5),
        (About::Gap { piece: Id::new("display-1"), side: GapSide::Left }, 18.25),
        (About::Gap { piece: Id::new("display-1"), side: GapSide::Right }, 18.25),
        (About::Reading { mark: mark("corner_top_left"), index: 0 }, 21.0),
    ] {
        let (told, after) = after(&about, to);
        assert!(same(told, to), "{about:?}: {told:?}");
        let hanging = &after.walls[0].options[0].hangings[0];
        assert!(matches!(hanging.across, AcrossRule::Between(..)), "{about:?}");
        assert_ne!(hanging.nudge.right, Default::default(), "{about:?}");
    }
}

#[test]
fn what_is_beside_an_edge_changes_its_distance_from_it() {
    let mut beside = job();
    beside.walls[0].options[0].hangings[0].across = AcrossRule::Beside {
        from: strikeline_solver::job::place::AcrossDatum::RightEnd,
        toward: None,
        by: inches(40.0),
    };
    let about = About::Gap { piece: Id::new("display-1"), side: GapSide::Left };
    let datum_is_other = typed(&beside, &plan(&beside), &about, inches(20.0)).unwrap();
    assert_ne!(datum_is_other.walls[0].options[0].hangings[0].nudge.right, Default::default());
    let mut left = beside;
    left.walls[0].options[0].hangings[0].across = AcrossRule::Beside {
        from: strikeline_solver::job::place::AcrossDatum::LeftEnd,
        toward: None,
        by: inches(12.0),
    };
    let after = typed(&left, &plan(&left), &about, inches(20.0)).unwrap();
    let across = &after.walls[0].options[0].hangings[0].across;
    assert!(matches!(across, AcrossRule::Beside { by, .. } if same(*by, 20.0)), "{across:?}");
}

#[test]
fn what_was_measured_is_measured_anew() {
    let door = |place| About::Read { thing: Id::new("door-1"), place };
    for about in [
        About::Width(Id::new("display-1")),
        About::Height(Id::new("display-1")),
        About::Width(Id::new("wall-1")),
        About::Height(Id::new("wall-1")),
        About::Width(Id::new("pipe-1")),
        door(ReadPlace::Left),
        door(ReadPlace::Right),
        door(ReadPlace::Top),
        About::Read { thing: Id::new("hit-1"), place: ReadPlace::Middle },
        About::Read { thing: Id::new("hit-2"), place: ReadPlace::MiddleHeight },
    ] {
        let (told, after) = after(&about, 33.5);
        assert!(same(told, 33.5), "{about:?}: {told:?}");
        assert_eq!(after.walls[0].options, job().walls[0].options, "{about:?}");
    }
}

#[test]
fn what_follows_says_from_what() {
    let job = job();
    let plan = plan(&job);
    let typed = |about| typed(&job, &plan, &about, inches(30.0)).unwrap_err();
    assert_eq!(typed(About::Width(Id::new("door-1"))), Driven::ByBothEdges);
    assert_eq!(typed(About::Reading { mark: mark("sweep_upper"), index: 0 }), Driven::ByThePlate);
    assert_eq!(typed(About::Width(Id::new("gone"))), Driven::ByNothing);
    assert_eq!(typed(About::Reading { mark: mark("centre_line"), index: 9 }), Driven::ByNothing);
}
