use super::super::sample::{job, plan};
use super::*;
use strikeline_solver::job::place::{AcrossDatum, AcrossReading, UprightReading};

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

/// The job after an edge of a thing is moved by inches, right or up.
fn moved(job: &Job, id: &str, side: Side, by: f64) -> Job {
    let plan = plan(job);
    let id = Id::new(id);
    let from = side.of(outline(&plan, &id).unwrap()).along(side.axis());
    edge_moved(job, &plan, &id, side, from + inches(by))
}

/// A door measured by its left edge and its width.
fn sized() -> Job {
    let mut job = job();
    let across = &mut job.walls[0].features[0].across;
    (across.right, across.width) = (None, Some(inches(30.0)));
    job
}

#[test]
fn an_edge_that_was_read_moves_by_its_reading_alone() {
    let after = moved(&job(), "door-1", Side::Right, -3.02);
    let mut same = job();
    same.walls[0].features[0].across.right.as_mut().unwrap().by = inches(5.0);
    assert_eq!(after, same);
    let after = moved(&job(), "door-1", Side::Top, 1.0);
    let mut same = job();
    same.walls[0].features[0].upright.top.as_mut().unwrap().by = inches(81.0);
    assert_eq!(after, same);
}

#[test]
fn with_a_size_the_edge_across_from_it_stays() {
    let after = moved(&sized(), "door-1", Side::Right, 2.0);
    let across = &after.walls[0].features[0].across;
    assert_eq!((across.left.as_ref().unwrap().by, across.width), (inches(88.0), Some(inches(32.0))));
    let after = moved(&sized(), "door-1", Side::Left, 2.0);
    let across = &after.walls[0].features[0].across;
    assert_eq!((across.left.as_ref().unwrap().by, across.width), (inches(90.0), Some(inches(28.0))));
}

#[test]
fn read_by_its_middle_both_come_out_round_and_the_edge_across_stays() {
    let mut job = job();
    let pipe = &mut job.walls[0].hidden[0];
    pipe.across.width = Some(inches(4.0));
    let before = outline(&plan(&job), &Id::new("pipe-1")).unwrap();
    let after = moved(&job, "pipe-1", Side::Left, -1.07);
    let across = &after.walls[0].hidden[0].across;
    assert_eq!((across.centre.as_ref().unwrap().by, across.width), (inches(9.4375), Some(inches(5.125))));
    let now = outline(&plan(&after), &Id::new("pipe-1")).unwrap();
    assert!((now.right - before.right).abs() < Length::millimetres(1e-6));
}

#[test]
fn an_edge_stops_before_the_one_across_and_before_its_datum() {
    let grain = inches(1.0 / 16.0);
    let after = moved(&job(), "door-1", Side::Left, 500.0);
    assert_eq!(
        after.walls[0].features[0].across.left.as_ref().unwrap().by,
        (inches(118.0) - grain).quantised()
    );
    let after = moved(&sized(), "door-1", Side::Right, -500.0);
    assert_eq!(after.walls[0].features[0].across.width, Some(grain));
    // Read by its middle and a size the edge goes two graduations at a time: rounding must not take the last one.
    for width in [2.75, 2.6875, 1.0] {
        let mut job = job();
        let pipe = &mut job.walls[0].hidden[0];
        pipe.across.centre = Some(AcrossReading::from_left(inches(10.0)));
        pipe.across.width = Some(inches(width));
        let after = moved(&job, "pipe-1", Side::Left, 500.0);
        let left = after.walls[0].hidden[0].across.width.unwrap();
        assert!(grain <= left && left <= grain * 2.0, "{width}: {left:?}");
    }
    let after = moved(&job(), "door-1", Side::Bottom, -4.0);
    assert_eq!(after, job(), "below the floor");
    let raised = moved(&job(), "door-1", Side::Bottom, 4.0);
    assert_eq!(raised.walls[0].features[0].upright.bottom.as_ref().unwrap().by, inches(4.0));
}

#[test]
fn a_second_reading_goes_along_and_both_ends_of_a_sloping_edge_do() {
    let mut job = job();
    let door = &mut job.walls[0].features[0];
    let check = AcrossReading { from: AcrossDatum::RightEnd, ..AcrossReading::from_left(inches(32.0)) };
    door.across.left.as_mut().unwrap().check = Some(Box::new(check));
    door.upright.top_at_right = Some(UprightReading::from_floor(inches(80.5)));
    let after = moved(&job, "door-1", Side::Left, 1.0);
    let left = after.walls[0].features[0].across.left.clone().unwrap();
    assert_eq!((left.by, left.check.unwrap().by), (inches(89.0), inches(31.0)));
    let after = moved(&job, "door-1", Side::Top, 1.0);
    assert_eq!(after.walls[0].features[0].upright.top_at_right.as_ref().unwrap().by, inches(81.5));
}

#[test]
fn what_was_not_measured_has_no_edge_to_move() {
    let job = job();
    let plan = plan(&job);
    let sides =
        |id: &str| movable(&job, &plan, &Id::new(id)).into_iter().map(|edge| edge.kind).collect::<Vec<_>>();
    assert_eq!(sides("door-1"), Side::ALL.map(HandleKind::Edge));
    // How high the pipe goes was not said.
    assert_eq!(sides("pipe-1"), [Side::Left, Side::Right].map(HandleKind::Edge));
    assert_eq!(moved(&job, "pipe-1", Side::Top, -5.0), job);
    assert!(sides("hit-1").is_empty());
}
