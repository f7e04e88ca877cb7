//! What the mount asks of cables: its travel, its own opening.

use super::room::{GOOD, Room};
use super::{cable, inches};
use strikeline_solver::geometry::Axis;
use strikeline_solver::ledger::Label;
use strikeline_solver::plan::mark::MarkWhat;

#[test]
fn an_arm_and_a_pull_down_take_their_travel_in_cable() {
    let above = |mount: &'static str| {
        let plan = Room { mount, ..GOOD }.plan();
        let lead = &cable(&plan).leads[0];
        ((inches(lead.slack_above.value) * 1e6).round() / 1e6, lead.slack_above.label)
    };
    // The usual 12 in and the plug's 2; nothing reaches its ports later, so that it is held off by 16.
    assert_eq!(above(GOOD.mount).0, 18.0);
    let arm = "kind: arm, drop: \"8 in\", stand_off: \"2 in\", arm: (reach: \"20 in\")";
    assert_eq!(above(arm).0, 14.0 + 20.0, "it swings out: nothing is held off, and the reach is added");
    let pull_down =
        "kind: pull_down, drop: \"8 in\", stand_off: \"2 in\", arm: (reach: \"20 in\", lowers: \"24 in\")";
    assert_eq!(above(pull_down).0, 14.0 + 20.0 + 24.0);
    let unknown = "kind: pull_down, drop: \"8 in\", stand_off: \"2 in\"";
    let (long, label) = above(unknown);
    assert!(long > 14.0 + 50.0 && label == Label::Assumed, "{long}: taken long");
    let text = Room { mount: unknown, ..GOOD }.text();
    assert!(text.contains("how far its mount moves is not measured, taken long"), "{text}");
}

#[test]
fn the_entry_is_in_the_plate_s_own_opening_where_it_has_one() {
    // A frame of 20 x 12 in, its upper edge at 67 in; its opening from 66 to 84 and from 57 to 65 in.
    let frame = "kind: flush, drop: \"8 in\", stand_off: \"2 in\", plate: (solids: [\
                 (id: \"solid-1\", left: \"-10 in\", right: \"10 in\", down: \"0 in\", height: \"2 in\"), \
                 (id: \"solid-2\", left: \"-10 in\", right: \"10 in\", down: \"10 in\", height: \"2 in\"), \
                 (id: \"solid-3\", left: \"-10 in\", right: \"-9 in\", down: \"0 in\", height: \"12 in\"), \
                 (id: \"solid-4\", left: \"9 in\", right: \"10 in\", down: \"0 in\", height: \"12 in\")])";
    let entry = |mount: &'static str, way: &'static str| {
        let plan = Room { mount, way, ..GOOD }.plan();
        cable(&plan).way.as_ref().unwrap().entry.unwrap()
    };
    let plain = entry(GOOD.mount, "");
    assert!(inches(plain.top) < 57.0, "{plain:?}: as near to the port as it can be");
    let own = entry(frame, "");
    assert!(inches(own.bottom) >= 57.5 - 1e-6 && inches(own.top) <= 64.5 + 1e-6, "{own:?}");
    // Where it was asked for elsewhere it is there.
    let asked = entry(frame, "entry_at: (right: \"2 in\", up: \"-9 in\")");
    assert!((inches(asked.centre().y) - 51.0).abs() < 1e-6, "{asked:?}");
    // Two rails enclose nothing.
    let rails = "kind: flush, drop: \"8 in\", stand_off: \"2 in\", plate: (solids: [\
                 (id: \"solid-1\", left: \"-10 in\", right: \"10 in\", down: \"0 in\", height: \"2 in\"), \
                 (id: \"solid-2\", left: \"-10 in\", right: \"10 in\", down: \"10 in\", height: \"2 in\")])";
    assert!(inches(entry(rails, "").top) < 57.0);
}

#[test]
fn the_end_of_a_raceway_is_a_mark_with_its_readings() {
    let plan = Room { way: "surface: only", ..GOOD }.plan();
    let way = cable(&plan).way.as_ref().unwrap();
    let end = plan.marks.iter().find(|mark| mark.what == MarkWhat::RacewayEnd).unwrap();
    assert_eq!(end.place, Some(way.exit.centre()));
    let axes: Vec<Axis> = end.readings.iter().map(|reading| reading.direction.axis()).collect();
    assert!(axes.contains(&Axis::Across) && axes.contains(&Axis::Upright), "{axes:?}");
    let inside = GOOD.plan();
    assert!(inside.marks.iter().all(|mark| mark.what != MarkWhat::RacewayEnd));
}
