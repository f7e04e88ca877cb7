//! How far off a finished piece can be: a room worked by hand, and laws.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use strikeline_solver::error_budget::{Budget, ErrorBudget, ErrorFrom, error_budgets};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{AccuracyClass, Measure, MeasureKind};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// A display 50 by 29 in, its left edge 30 in from the left corner, its middle 58 in high, on a plate 24 in wide.
const ROOM: &str = r#"(
    format: 1,
    pieces: [(id: "display-1", kind: display, width: "50 in", height: "29 in")],
    mounts: [(
        id: "mount-1",
        kind: flush,
        drop: "9 1/2 in",
        play_left: "1 1/2 in",
        play_right: "1 1/2 in",
        plate: (
            solids: [(id: "solid-1", left: "-12 in", right: "12 in", down: "0 in", height: "8 in")],
            holes: [(id: "hole-1", right: "-8 in", down: "1 in"), (id: "hole-2", right: "8 in", down: "1 in")],
        ),
    )],
    walls: [(
        id: "wall-1",
        width: "160 in",
        height: "96 in",
        left_end: inside_corner,
        right_end: inside_corner,
        options: [(
            id: "option-1",
            hangings: [(
                id: "hanging-1",
                piece: "display-1",
                mount: "mount-1",
                across: beside(from: "left", by: "30 in"),
                upright: height(of: centre, by: "58 in"),
            )],
        )],
    )],
)"#;

fn room(change: impl FnOnce(&mut Job)) -> ErrorBudget {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let mut job: Job = options.from_str(ROOM).unwrap();
    change(&mut job);
    let wall = job.walls[0].id.clone();
    error_budgets(&job, &solve(&job, &wall, None)).swap_remove(0)
}

fn close(found: f64, by_hand: f64) {
    assert!((found - by_hand).abs() < 1e-4, "{found}, by hand {by_hand}");
}

fn measure(kind: MeasureKind, doubt: Option<Length>) -> Measure {
    Measure { id: Id::new("measure-1"), kind, doubt, class: None, length: None }
}

/// Sums by hand, millimetres. The centre line is 55 in from the left corner, read there: tape up to 6 ft 1/32 in
/// (NIST Handbook 44 5.52) = 0.79375; half of 1/16 in = 0.79375; corner 1/8 in = 3.175; pencil half of 1 = 0.5. The
/// plate on holes nobody measured 1/16 in = 1.5875; the piece to its tick: half of 1/16 in and half a pencil line
/// again. The level line is 63 in from the floor, read at 39 and 71 in: tape 0.79375, half a graduation 0.79375, pencil
/// 0.5. The drop of 9 1/2 in: tape 0.79375 and half a graduation. No hole meets a stud: the plate turns over its own
/// 609.6.
#[test]
fn a_room_by_hand() {
    let found = room(|_| ());
    close(found.centre.stack.worst, 3.0 * 0.79375 + 3.175 + 2.0 * 0.5 + 1.5875);
    close(found.centre.stack.rss, 3.871_810);
    assert_eq!(found.centre.largest(), Some(ErrorFrom::Corner));
    close(found.top.stack.worst, 4.0 * 0.79375 + 0.5 + 1.5875);
    close(found.top.stack.rss, 2.300_070);
    assert_eq!(found.top.largest(), Some(ErrorFrom::Plate));
    // Degrees: atan(0.79375 / 812.8) = 0.055953 four times, atan(0.5 / 812.8) = 0.035246 twice, atan(3.175 / 609.6) =
    // 0.298410.
    close(found.tilt.stack.worst, 4.0 * 0.055_953 + 2.0 * 0.035_246 + 0.298_410);
    close(found.tilt.stack.rss, 0.322_577);
    assert_eq!(found.tilt.largest(), Some(ErrorFrom::Plate));
}

#[test]
fn halving_the_largest_helps_most() {
    let found = room(|_| ());
    for budget in [&found.centre, &found.top, &found.tilt] {
        let largest = budget.largest().unwrap();
        let halved = |from| Budget::with_half(budget, from).rss;
        let all =
            [ErrorFrom::Tape, ErrorFrom::Graduation, ErrorFrom::Pencil, ErrorFrom::Corner, ErrorFrom::Plate];
        assert!(all.into_iter().all(|from| halved(largest) <= halved(from) + 1e-12));
        assert!(halved(largest) < budget.stack.rss);
        assert!(budget.stack.rss <= budget.stack.worst);
    }
}

#[test]
fn what_the_kit_says_of_its_tools_counts() {
    let tape = |mm: f64| {
        room(|job| {
            let doubt = Some(Length::millimetres(mm));
            job.kit.measures.push(measure(MeasureKind::Tape, doubt));
        })
    };
    close(tape(2.0).centre.of(ErrorFrom::Tape).worst, 2.0);
    assert!(tape(3.0).centre.stack.worst > tape(2.0).centre.stack.worst);
    // A finer graduation is never worse.
    let fine = room(|job| job.graduation = Some(strikeline_solver::tape::Graduation::ThirtySecond));
    let usual = room(|_| ());
    assert!(fine.centre.stack.worst < usual.centre.stack.worst);
    assert!(fine.top.stack.rss < usual.top.stack.rss);
}

/// The centre line is 55 in = 1.397 m from the corner, a surface: by class I 0.1 + 0.1 * 2 + 0.1, by class II 0.3 +
/// 0.2 * 2 + 0.2 (Directive 2014/32/EU, Annex X, table 1). What is measured of the tape itself comes first.
#[test]
fn a_tape_is_off_by_its_class_where_nothing_else_is_told() {
    let of_class = |class, doubt| {
        let tape = Measure { class: Some(class), ..measure(MeasureKind::Tape, doubt) };
        room(|job| job.kit.measures.push(tape)).centre.of(ErrorFrom::Tape).worst
    };
    close(of_class(AccuracyClass::I, None), 0.4);
    close(of_class(AccuracyClass::Ii, None), 0.9);
    close(of_class(AccuracyClass::Iii, None), 1.7);
    close(of_class(AccuracyClass::Iii, Some(Length::millimetres(0.5))), 0.5);
}

/// atan((1/32) / 48) = 0.037302 degrees; over a level that nobody measured, 24 in, atan((1/32) / 24) = 0.074604.
#[test]
fn the_kits_own_level_is_told() {
    let level = |length| {
        let doubt = Some(Length::inches(0.03125));
        let level = Measure { length, ..measure(MeasureKind::SpiritLevel, doubt) };
        room(|job| job.kit.measures.push(level)).level
    };
    close(level(Some(Length::inches(48.0))).value.deg(), 0.037_302);
    close(level(None).value.deg(), 0.074_604);
    let unknown = room(|job| job.kit.measures.push(measure(MeasureKind::SpiritLevel, None))).level;
    assert_eq!(unknown, room(|_| ()).level);
}

/// The floor falls 1/2 in from 20 in to 140 in: a reading from it may be off by half of that, 6.35 mm, at each end.
#[test]
fn a_floor_that_differs_counts_where_it_is_read_from() {
    let floor = |second: &str| {
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        let floor = format!(
            "[(id: \"floor-1\", at: (by: \"20 in\"), down: \"40 in\"), (id: \"floor-2\", at: (by: \"140 in\"), down: \"{second}\")]"
        );
        let floor = options.from_str(&floor).unwrap();
        room(|job| job.walls[0].floor = floor)
    };
    close(floor("40 1/2 in").top.of(ErrorFrom::Floor).worst, 6.35);
    close(floor("40 in").top.of(ErrorFrom::Floor).worst, 0.0);
    assert_eq!(floor("40 1/2 in").top.largest(), Some(ErrorFrom::Floor));
}

#[test]
fn each_display_has_a_budget_of_its_own() {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let job =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-jobs/attic_landing.ron"));
    let job: Job = options.from_str(&job.unwrap()).unwrap();
    let plan = solve(&job, &job.walls[0].id, None);
    let budgets = error_budgets(&job, &plan);
    let pieces: Vec<String> = budgets.iter().map(|budget| budget.piece.to_string()).collect();
    assert_eq!(pieces, ["display-1", "display-2"]);
}
