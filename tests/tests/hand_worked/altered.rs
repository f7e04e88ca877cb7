//! The runner is held to its word: whatever one thing a case expects wrongly, the case fails.

use super::case::{Case, ExpectedHole, ExpectedMark, ExpectedPiece, ExpectedPort, ExpectedReading};
use super::compare;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// One wrong thing in a case.
type Wrong = (&'static str, fn(&mut Case));

fn off(length: &mut Option<Length>) {
    *length = length.map(|length| length + Length::millimetres(1e-5));
}

fn mark(case: &mut Case, change: fn(&mut ExpectedMark)) {
    let [first, ..] = case.expect.as_mut_slice() else { panic!("no mark") };
    change(first);
}

/// The centre line is read from the right corner and closes on the left one, differently.
fn reading(case: &mut Case, change: fn(&mut ExpectedReading)) {
    let [ExpectedMark { readings, .. }, ..] = case.expect.as_mut_slice() else { panic!("no mark") };
    let [first, ..] = readings.as_mut_slice() else { panic!("no reading") };
    change(first);
}

/// The level line is read from the floor and closes on nothing.
fn floor_reading(case: &mut Case, change: fn(&mut ExpectedReading)) {
    let [_, ExpectedMark { readings, .. }, ..] = case.expect.as_mut_slice() else { panic!("no mark") };
    let [first, ..] = readings.as_mut_slice() else { panic!("no reading") };
    change(first);
}

fn piece(case: &mut Case, change: fn(&mut ExpectedPiece)) {
    let [first, ..] = case.pieces.as_mut_slice() else { panic!("no piece") };
    change(first);
}

fn hole(case: &mut Case, change: fn(&mut ExpectedHole)) {
    let [_, second, ..] = case.holes.as_mut_slice() else { panic!("no hole") };
    change(second);
}

const WRONG: &[Wrong] = &[
    ("mark", |case| mark(case, |it| it.mark = "display-1.center_line".into())),
    ("x", |case| mark(case, |it| off(&mut it.x))),
    ("y", |case| mark(case, |it| off(&mut it.y))),
    ("x_right", |case| case.expect.iter_mut().for_each(|it| off(&mut it.x_right))),
    ("readings_in_all", |case| mark(case, |it| it.readings_in_all = Some(2))),
    ("from", |case| reading(case, |it| it.from = "left".into())),
    ("how", |case| reading(case, |it| it.how = "butt".into())),
    ("direction", |case| reading(case, |it| it.direction = "right".into())),
    ("shown", |case| reading(case, |it| it.shown = "1257 mm".into())),
    ("at", |case| floor_reading(case, |it| off(&mut it.at))),
    ("closes_from", |case| reading(case, |it| it.closes_from = Some("floor".into()))),
    ("closes_shown", |case| reading(case, |it| it.closes_shown = Some("2954 mm".into()))),
    ("closes_differs", |case| reading(case, |it| it.closes_differs = Some(false))),
    ("no_close, where there is one", |case| {
        reading(case, |it| {
            (it.closes_from, it.closes_shown, it.closes_differs, it.no_close) = (None, None, None, true);
        });
    }),
    ("a close, where there is none", |case| {
        floor_reading(case, |it| (it.closes_from, it.no_close) = (Some("floor".into()), false));
    }),
    ("taut_over", |case| reading(case, |it| it.taut_over = Some("baseboard-1".into()))),
    ("piece", |case| piece(case, |it| it.piece = "display-2".into())),
    ("left", |case| piece(case, |it| off(&mut it.left))),
    ("right", |case| piece(case, |it| off(&mut it.right))),
    ("bottom", |case| piece(case, |it| off(&mut it.bottom))),
    ("top", |case| piece(case, |it| off(&mut it.top))),
    ("plate_left", |case| piece(case, |it| off(&mut it.plate_left))),
    ("plate_right", |case| piece(case, |it| off(&mut it.plate_right))),
    ("plate_bottom", |case| piece(case, |it| off(&mut it.plate_bottom))),
    ("plate_top", |case| piece(case, |it| off(&mut it.plate_top))),
    ("offset", |case| piece(case, |it| it.offset = Some(Offset(Length::millimetres(1e-5))))),
    ("studs_met", |case| piece(case, |it| it.studs_met = Some(1))),
    ("hole", |case| hole(case, |it| it.hole = "display-1.hole-9".into())),
    ("hole's x", |case| hole(case, |it| off(&mut it.x))),
    ("hole's y", |case| hole(case, |it| off(&mut it.y))),
    ("meets", |case| hole(case, |it| it.meets = Some("stud".into()))),
    ("findings", |case| case.findings.push("veneer".into())),
    ("no_findings", |case| case.no_findings.push("plans_only".into())),
];

/// What the case leaves out, as it is, so that each can be made wrong.
fn completed(mut case: Case) -> Case {
    mark(&mut case, |it| it.readings_in_all = Some(1));
    reading(&mut case, |it| it.taut_over = Some(String::new()));
    piece(&mut case, |it| {
        (it.offset, it.studs_met) = (Some(Offset::default()), Some(0));
    });
    hole(&mut case, |it| it.y = Some(Length::millimetres(1523.0)));
    case
}

fn disagreements(case: &Case) -> Vec<String> {
    let wall = case.job.walls.first().map(|wall| wall.id.clone()).unwrap_or_default();
    compare::disagreements(case, &strikeline_solver::solve::solve(&case.job, &wall, None))
}

#[test]
fn each_wrong_thing_makes_a_case_fail() {
    assert_eq!(disagreements(&completed(Case::load("metric"))), [""; 0]);
    for (what, spoil) in WRONG {
        let mut case = completed(Case::load("metric"));
        spoil(&mut case);
        assert_eq!(disagreements(&case).len(), 1, "{what}: {:?}", disagreements(&case));
    }
}

#[test]
fn a_wrong_port_makes_a_case_fail() {
    let spoil: [fn(&mut ExpectedPort); 3] = [
        |it| it.port = "port-9".into(),
        |it| it.x += Length::millimetres(1e-5),
        |it| it.y += Length::millimetres(1e-5),
    ];
    for spoil in spoil {
        let mut case = Case::load("face_down_port");
        let [port, ..] = case.ports.as_mut_slice() else { panic!("no port") };
        spoil(port);
        assert_eq!(disagreements(&case).len(), 1);
    }
}
