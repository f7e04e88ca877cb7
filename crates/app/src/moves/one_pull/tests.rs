//! A wall of ten features in one pull, and what its end says.

use super::super::sample::{job, plan};
use super::*;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Subject;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn pull(from: AcrossDatum, entries: &[(f64, Seen)]) -> OnePull {
    let entries = entries.iter().map(|(by, seen)| Entry { by: inches(*by), seen: *seen }).collect();
    OnePull { entries, ..OnePull::from(from) }
}

fn bare() -> Job {
    let mut job = Job::new();
    job.walls.push(Wall { id: Id::new("wall-1"), ..Wall::default() });
    job
}

/// Three windows, a door, four outlets and two switches: ten features, with five hits between them.
const TEN: [(f64, Seen); 20] = [
    (10.0, Seen::Window),
    (14.0, Seen::Outlet),
    (16.25, Seen::StudLeft),
    (17.75, Seen::StudRight),
    (42.0, Seen::Window),
    (47.5, Seen::Switch),
    (50.0, Seen::Door),
    (82.5, Seen::Door),
    (86.0, Seen::Switch),
    (97.0, Seen::StudCentre),
    (100.0, Seen::Outlet),
    (104.0, Seen::Window),
    (136.0, Seen::Window),
    (145.0, Seen::StudCentre),
    (150.0, Seen::Window),
    (182.0, Seen::Window),
    (190.0, Seen::Outlet),
    (193.0, Seen::StudCentre),
    (196.0, Seen::Outlet),
    (200.0, Seen::End),
];

#[test]
fn a_wall_of_ten_features_is_read_in_one_pull() {
    let mut pull = pull(AcrossDatum::LeftEnd, &TEN);
    pull.height = Some(inches(60.0));
    let wall_id = Id::new("wall-1");
    let after = pull.applied(&bare(), &wall_id);
    let wall = &after.walls[0];
    assert_eq!(wall.features.len(), 10);
    assert_eq!(wall.hits.len(), 5);
    assert_eq!(wall.width, Some(inches(200.0)));
    let kinds = |kind| wall.features.iter().filter(|feature| feature.kind == kind).count();
    assert_eq!(
        [FeatureKind::Window, FeatureKind::Door, FeatureKind::Outlet, FeatureKind::Switch].map(kinds),
        [3, 1, 4, 2]
    );
    let plan = solve(&after, &wall_id, None);
    let spans: Vec<(f64, f64)> = plan
        .survey
        .features
        .iter()
        .filter(|feature| matches!(feature.kind, FeatureKind::Window | FeatureKind::Door))
        .map(|feature| (feature.rect.left.in_inches().round(), feature.rect.right.in_inches().round()))
        .collect();
    assert_eq!(spans, [(10.0, 42.0), (50.0, 83.0), (104.0, 136.0), (150.0, 182.0)]);
    assert_eq!(wall.hits[0].kind, HitKind::LeftEdge);
    assert!(wall.hits.iter().all(|hit| hit.y == Some(UprightReading::from_floor(inches(60.0)))));
    let mut ids = after.clone();
    assert_eq!(ids.complete_ids(), Ok(()), "no id twice");
    assert_eq!(ids, after, "none missing");
}

#[test]
fn from_the_right_the_near_edge_is_the_right_one() {
    let pull = pull(AcrossDatum::RightEnd, &[(12.0, Seen::Door), (44.0, Seen::Door), (120.0, Seen::End)]);
    let after = pull.applied(&bare(), &Id::new("wall-1"));
    let across = &after.walls[0].features[0].across;
    let from_right =
        |by| AcrossReading { from: AcrossDatum::RightEnd, ..AcrossReading::from_left(inches(by)) };
    assert_eq!(across.right, Some(from_right(12.0)));
    assert_eq!(across.left, Some(from_right(44.0)));
    assert_eq!(after.walls[0].width, Some(inches(120.0)));
}

#[test]
fn from_an_edge_the_way_is_kept_where_it_is_not_the_usual_one() {
    let edge = AcrossDatum::Edge(Subject::read("door-1.left").unwrap());
    let mut pull = pull(edge, &[(5.0, Seen::StudCentre)]);
    assert_eq!(pull.way, Sideways::Left);
    let at = |pull: &OnePull| pull.applied(&job(), &Id::new("wall-1")).walls[0].hits[2].x.toward;
    assert_eq!(at(&pull), None);
    pull.way = Sideways::Right;
    assert_eq!(at(&pull), Some(Sideways::Right));
}

#[test]
fn edges_pair_by_kind_whatever_lies_between() {
    let pull = pull(
        AcrossDatum::LeftEnd,
        &[(1.0, Seen::Window), (2.0, Seen::Door), (3.0, Seen::Window), (4.0, Seen::Window)],
    );
    assert_eq!(
        pull.parts(),
        [Part::NearEdge(Some(2)), Part::NearEdge(None), Part::FarEdge(0), Part::NearEdge(None)]
    );
    assert!(pull.is_far_next(Seen::Window) && pull.is_far_next(Seen::Door));
    assert!(!pull.is_far_next(Seen::Outlet));
}

#[test]
fn the_end_sets_a_width_that_was_not_given_and_never_changes_one_that_was() {
    let wall = Id::new("wall-1");
    let end = |by| pull(AcrossDatum::LeftEnd, &[(by, Seen::End)]);
    let empty = solve(&bare(), &wall, None);
    assert_eq!(end(120.0).end_check(&bare(), &empty), Some(EndCheck::Sets));
    // The room is 120 in wide.
    let (job, plan) = (job(), plan(&job()));
    assert_eq!(end(120.0).end_check(&job, &plan), Some(EndCheck::Agrees));
    assert_eq!(end(120.02).end_check(&job, &plan), Some(EndCheck::Agrees), "no tape shows that");
    assert_eq!(end(120.5).end_check(&job, &plan), Some(EndCheck::Differs(inches(0.5))));
    assert_eq!(end(120.5).applied(&job, &wall), job);
    assert_eq!(pull(AcrossDatum::LeftEnd, &[(5.0, Seen::Outlet)]).end_check(&job, &plan), None);
}

#[test]
fn from_an_edge_the_end_is_held_against_where_the_edge_is() {
    let (job, plan) = (job(), plan(&job()));
    let from = |edge: &str, by| {
        pull(AcrossDatum::Edge(Subject::read(edge).unwrap()), &[(by, Seen::End)]).end_check(&job, &plan)
    };
    // The door stands from 88 to 118 in of 120.
    assert_eq!(from("door-1.left", 88.0), Some(EndCheck::Agrees));
    assert_eq!(from("door-1.left", 87.0), Some(EndCheck::Differs(inches(-1.0))));
    assert_eq!(from("door-1.right", 2.0), Some(EndCheck::Agrees));
    let mut open = job.clone();
    open.walls[0].width = None;
    let pull = pull(AcrossDatum::Edge(Subject::read("door-1.right").unwrap()), &[(2.0, Seen::End)]);
    assert_eq!(pull.end_check(&open, &plan), Some(EndCheck::Alone));
    assert_eq!(pull.applied(&open, &Id::new("wall-1")), open, "a sum of two readings is not measured");
}

#[test]
fn what_shows_less_than_before_is_out_of_turn() {
    let pull = pull(
        AcrossDatum::LeftEnd,
        &[(9.0, Seen::Outlet), (8.0, Seen::Window), (8.0, Seen::Window), (9.0, Seen::StudLeft)],
    );
    let out: Vec<bool> = (0..5).map(|index| pull.is_out_of_turn(index)).collect();
    assert_eq!(out, [false, true, true, false, false]);
}
