//! What a reading of the cables' way found: each held by a room in which it showed.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "cable_way/changes.rs"]
mod changes;
#[path = "cable_way/kept_clear.rs"]
mod kept_clear;
#[path = "cable_way/mounted.rs"]
mod mounted;
#[path = "cable_way/not_allowed.rs"]
mod not_allowed;
#[path = "cable_way/room.rs"]
mod room;

use room::{GOOD, Room};
use strikeline_solver::finding::Level;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{CablePlan, Lead, WayBy};
use strikeline_solver::solve::solve;
use strikeline_solver::units::Length;

fn cable(plan: &Plan) -> &CablePlan {
    plan.pieces[0].cable.as_ref().unwrap()
}

fn leads(plan: &Plan) -> &[Lead] {
    &cable(plan).leads
}

fn tells(plan: &Plan, rule: &str) -> Option<Level> {
    plan.findings.iter().find(|finding| finding.what.rule() == rule).map(|finding| finding.level)
}

fn inches(length: Length) -> f64 {
    length.in_inches()
}

#[test]
fn of_a_room_in_which_all_is_known_nothing_is_told_but_the_plan() {
    let plan = GOOD.plan();
    let told: Vec<_> = plan.findings.iter().map(|finding| finding.what.rule()).collect();
    for rule in ["studs_not_known", "room_not_known", "box_deep", "stock_short", "not_listed", "no_way"] {
        assert!(!told.contains(&rule), "{rule}: {told:?}");
    }
    assert_eq!(cable(&plan).allowed, Some(true));
    assert!(GOOD.text().contains("take 96\""), "{}", GOOD.text());
}

#[test]
fn of_a_port_that_nobody_uses_it_is_told_that_none_is_used() {
    let room = Room { cables: "(id: \"wish-1\", port: \"port-9\")", ..GOOD };
    let plan = room.plan();
    let cable = cable(&plan);
    assert!(cable.way.is_none() && cable.leads.is_empty() && cable.power.is_empty());
    assert_eq!(cable.allowed, None);
    assert!(room.text().contains("none of its ports is used"), "{}", room.text());
    let missing = tells(&plan, "not_there");
    assert_eq!(missing, Some(Level::Stop), "{:?}", plan.findings);
    let none = Room { ports: "", cables: "", ..GOOD }.plan();
    assert_eq!(none.pieces[0].cable, None, "only what has no port has no cables");
}

const TWO_STOCKS: &str = "cables: [\
    (id: \"cable-1\", name: \"lead\", signal: picture, length: \"40 in\", outside: \"1/4 in\", plug: \"3/4 in\", in_wall: true), \
    (id: \"cable-2\", name: \"lead\", signal: picture, length: \"120 in\", outside: \"1/4 in\", plug: \"3/4 in\", in_wall: ";

#[test]
fn another_stock_is_taken_only_where_it_is_like_the_one_judged() {
    // The way wants 36 + 18 + 12 = 66 in: the 40 in are too short.
    let with = |more: &str| {
        let kit: &'static str = format!("{TWO_STOCKS}{more})]").leak();
        let plan = Room { kit, ..GOOD }.plan();
        let lead = leads(&plan)[0].clone();
        (lead.stock.map(|id| id.to_string()), lead.stock_short)
    };
    assert_eq!(with("true"), (Some("cable-2".to_owned()), false));
    assert_eq!(with("false"), (None, true), "nobody may hide it in a wall");
    assert_eq!(with("true, longest: \"50 in\""), (None, true), "it carries less far");
}

#[test]
fn where_no_cable_is_named_none_of_the_kit_is_taken() {
    let room = Room { cables: "(id: \"wish-1\", port: \"port-1\")", ..GOOD };
    assert_eq!(leads(&room.plan())[0].stock, None);
    assert!(room.text().contains("cut 66"), "{}", room.text());
}

const TWO_PORTS: &str = "\
    (id: \"port-1\", carries: data, from: left, read: front, by: \"27 in\", up: \"6 in\", points: down, reach: \"2 in\"), \
    (id: \"port-2\", carries: data, from: left, read: front, by: \"28 in\", up: \"6 in\", points: down, reach: \"2 in\")";
const TWO_CABLES: &str = "(id: \"wish-1\", port: \"port-1\", cable: \"cable-1\"), (id: \"wish-2\", port: \"port-2\", cable: \"cable-1\")";

#[test]
fn a_stocked_cable_is_taken_once() {
    let short = |kit: &'static str| -> Vec<bool> {
        let plan = Room { kit, ports: TWO_PORTS, cables: TWO_CABLES, ..GOOD }.plan();
        leads(&plan).iter().map(|lead| lead.stock_short).collect()
    };
    assert_eq!(short(GOOD.kit), [false, false]);
    // One there is; how many nobody said is one too.
    for count in ["count: 1", ""] {
        let kit: &'static str = GOOD.kit.replace("count: 2", count).leak();
        assert_eq!(short(kit), [false, true], "{count}");
    }
}

#[test]
fn a_cable_of_unknown_length_is_not_taken() {
    let kit: &'static str = GOOD.kit.replace("length: \"96 in\", ", "").leak();
    let text = Room { kit, ..GOOD }.text();
    assert!(text.contains("below; cut 66\""), "{text}");
}

#[test]
fn studs_that_nobody_found_where_the_cables_run_are_told_and_hold_up_the_saw() {
    for hits in ["", "hits: [(id: \"hit-1\", kind: centre, x: (by: \"4 in\"))],"] {
        let plan = Room { hits, ..GOOD }.plan();
        assert_eq!(cable(&plan).allowed, None, "{hits}");
        assert_eq!(tells(&plan, "studs_not_known"), Some(Level::Caution), "{hits}");
        for part in ["entry", "exit"] {
            let mark = plan.marks.iter().find(|mark| mark.id.part_str() == part).unwrap();
            assert!(mark.assumed, "{part}");
        }
    }
}

#[test]
fn a_block_narrower_than_its_bay_is_never_begun_beside() {
    // The port is at (76, 51) in the bay from 68 to 84; the block at its height was felt from 69 to 72 only.
    let wall = "hidden: [(id: \"block-1\", kind: fire_block, across: (left: (by: \"69 in\"), right: (by: \"72 in\")), \
                upright: (centre: (by: \"51 in\"), height: \"1 1/2 in\"))],";
    let plan = Room { wall, ..GOOD }.plan();
    let cable = cable(&plan);
    let inside = cable.way.iter().chain(&cable.alternatives).filter(|way| way.by == WayBy::InWall);
    for way in inside {
        let entry = way.entry.unwrap();
        let is_in_bay = inches(entry.left) > 68.0 && inches(entry.right) < 84.0;
        let is_beside = inches(entry.top) > 50.25 && inches(entry.bottom) < 51.75;
        assert!(!(is_in_bay && is_beside), "begun beside the block: {way:?}");
    }
}

#[test]
fn a_bored_hole_is_for_the_widest_plug_beside_the_other_cables() {
    let bore = |way| {
        let plan = Room { ports: TWO_PORTS, cables: TWO_CABLES, way, ..GOOD }.plan();
        (inches(cable(&plan).bore.value) * 1e6).round() / 1e6
    };
    // 3/4 in of plug, and 1/4 in of the cable that lies there already.
    assert_eq!(bore(""), 1.0);
    let tube = "tube: \"1 1/4 in\"";
    assert_eq!(
        bore(tube),
        1.75,
        "the tube goes through it, and nobody measured how thick it is: 1.4 times its bore"
    );
    let told = "tube: \"1 1/4 in\", tube_outside: \"1 1/2 in\"";
    assert_eq!(bore(told), 1.5, "as it is outside");
    // The plain hole is cut a quarter wider.
    let plan = Room { ports: TWO_PORTS, cables: TWO_CABLES, way: "entry_kind: plain_hole", ..GOOD }.plan();
    let entry = cable(&plan).way.as_ref().unwrap().entry.unwrap();
    assert!((inches(entry.width()) - 1.25).abs() < 1e-6, "{entry:?}");
}

/// The mount of which nobody measured how far it holds the display off.
const NO_STAND_OFF: &str = "kind: flush, drop: \"8 in\", plate: (solids: [(id: \"solid-1\", left: \"-10 in\", right: \"10 in\", down: \"0 in\", height: \"7 in\")])";

#[test]
fn a_stand_off_that_nobody_measured_hides_less_and_is_asked_for() {
    let plan = Room { mount: NO_STAND_OFF, ..GOOD }.plan();
    assert!(cable(&plan).hidden.width() < cable(&GOOD.plan()).hidden.width(), "not measured is not nothing");
    assert_eq!(tells(&plan, "room_not_known"), Some(Level::Caution));
    let mount: &'static str = NO_STAND_OFF.replace("flush", "arm").leak();
    let plan = Room { mount, ..GOOD }.plan();
    let swung = cable(&plan).hidden_swung.unwrap();
    assert!(swung.width().mm() < 1e-9, "an arm of unknown reach hides nothing: {swung:?}");
}

#[test]
fn a_display_that_tilts_hides_less_at_its_sides_too() {
    let tilting = |tilt: &str| {
        let mount = GOOD.mount.replace("kind: flush", &format!("kind: tilting, tilt: ({tilt})"));
        cable(&Room { mount: mount.leak(), ..GOOD }.plan()).hidden
    };
    // Its top is 15 in above the middle that it turns about: 2 + 15 sin 15 = 5.882 in off the wall.
    let (flat, tilted) = (tilting("down: \"0 deg\""), tilting("down: \"15 deg\""));
    assert!((inches(tilted.left - flat.left) - 3.882).abs() < 0.001, "{tilted:?}");
}

#[test]
fn what_nobody_said_a_cable_carries_may_be_a_passive_lead() {
    // 66 in of way and slack are 1.7 m; with 5 m of slack it is too long for one.
    let way = "slack: \"5000 mm\"";
    assert_eq!(
        tells(&Room { cables: "(id: \"wish-1\", port: \"port-1\")", way, ..GOOD }.plan(), "too_long"),
        Some(Level::Caution)
    );
    let kit: &'static str = GOOD.kit.replace("signal: picture", "signal: picture_active").leak();
    assert_eq!(tells(&Room { kit, way, ..GOOD }.plan(), "too_long"), None);
}

#[test]
fn of_a_steel_stud_is_said_that_it_is_never_bored() {
    let mut job =
        Room { way: "bore: true, bay: \"110 in\", exit_at: (across: \"110 in\", up: \"16 in\")", ..GOOD }
            .job();
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    job.walls[0].framing =
        Some(options.from_str("steel((face: \"1 1/4 in\", depth: \"3 5/8 in\"))").unwrap());
    let plan = solve(&job, &job.walls[0].id, None);
    let through =
        cable(&plan).way.iter().chain(&cable(&plan).alternatives).find(|way| way.cost.studs_bored > 0);
    let against = through.map(|way| way.against.clone()).unwrap_or_default();
    assert!(against.iter().any(|one| format!("{one:?}") == "Steel"), "{through:?}");
}

#[test]
fn a_plug_that_nobody_measured_is_taken_longer_and_asked_for() {
    let ports: &'static str = GOOD.ports.replace(", reach: \"2 in\"", "").leak();
    let plan = Room { ports, ..GOOD }.plan();
    assert!(leads(&plan)[0].slack_above.value > leads(&GOOD.plan())[0].slack_above.value);
    let back: &'static str = ports.replace("down", "back").leak();
    let plan = Room { ports: back, ..GOOD }.plan();
    assert_eq!(tells(&plan, "room_not_known"), Some(Level::Caution));
}

#[test]
fn a_front_that_nobody_measured_lengthens_the_cable_and_stops_no_box() {
    let front = "front: (layers: [board]),";
    let plan = Room { front, ..GOOD }.plan();
    let known = leads(&GOOD.plan())[0].length.unwrap();
    assert!(leads(&plan)[0].length.unwrap().value >= known.value, "it goes through the face all the same");
    // 3 5/8 in deep: in 3 1/2 in of stud and nobody knows how much board.
    let kit: &'static str = format!("{}, boxes: [(id: \"box-1\", depth: \"3 5/8 in\")]", GOOD.kit).leak();
    let way = "entry_kind: stocked(\"box-1\")";
    let deep = |front| tells(&Room { kit, front, way, ..GOOD }.plan(), "box_deep");
    assert_eq!(deep(front), Some(Level::Caution), "measure first");
    assert_eq!(deep(GOOD.front), None, "4 in are there");
    assert_eq!(deep("front: (layers: [board], thickness: \"1/16 in\"),"), Some(Level::Stop));
}

#[test]
fn a_size_from_memory_says_so_where_it_is_cut() {
    let text = Room { way: "entry_kind: two_gang", ..GOOD }.text();
    assert!(
        text.contains("An opening 4\" wide and 3 3/4\" high (from memory: trace the box itself)"),
        "{text}"
    );
    let kit: &'static str = format!("{}, boxes: [(id: \"box-1\")]", GOOD.kit).leak();
    let text = Room { kit, way: "exit_kind: stocked(\"box-1\")", ..GOOD }.text();
    assert!(text.contains("An opening 2\" wide and 3\" high (assumed: trace the box itself)"), "{text}");
}

#[test]
fn the_face_is_another_way_also_where_it_has_the_same_corners() {
    // So narrow a display has one bay behind it, and the port drops straight inside the wall and on its face.
    let ports: &'static str = GOOD.ports.replace("27 in", "8 in").leak();
    let room = Room { width: "14 in", ports, ..GOOD };
    let mount: &'static str = GOOD.mount.replace("10 in", "3 in").leak();
    let plan = Room { mount, ..room }.plan();
    let cable = cable(&plan);
    assert_eq!(cable.way.as_ref().unwrap().by, WayBy::InWall);
    assert!(cable.alternatives.iter().any(|way| way.by == WayBy::OnFace), "{:?}", cable.alternatives);
}

#[test]
fn the_face_has_its_place_among_many_bays() {
    let hits = "hits: [(id: \"hit-1\", kind: centre, x: (by: \"12 in\")), (id: \"hit-2\", kind: centre, x: (by: \"28 in\")), \
        (id: \"hit-3\", kind: centre, x: (by: \"44 in\")), (id: \"hit-4\", kind: centre, x: (by: \"60 in\")), \
        (id: \"hit-5\", kind: centre, x: (by: \"76 in\")), (id: \"hit-6\", kind: centre, x: (by: \"92 in\")), \
        (id: \"hit-7\", kind: centre, x: (by: \"108 in\")), (id: \"hit-8\", kind: centre, x: (by: \"124 in\"))],";
    let plan = Room { width: "120 in", hits, ..GOOD }.plan();
    let alternatives = &cable(&plan).alternatives;
    assert!(alternatives.iter().any(|way| way.by == WayBy::OnFace), "{alternatives:?}");
}

#[test]
fn where_nothing_leads_down_to_the_wished_height_an_exit_above_it_is_another_way() {
    // A pipe through every bay at 22 in; 16 in is below it.
    let wall = "hidden: [(id: \"pipe-1\", kind: pipe, across: (left: (by: \"0 in\"), right: (by: \"150 in\")), \
                upright: (centre: (by: \"22 in\"), height: \"2 in\"))],";
    let plan = Room { wall, ..GOOD }.plan();
    let (first, others) = (cable(&plan).way.as_ref().unwrap(), &cable(&plan).alternatives);
    assert_eq!(first.by, WayBy::OnFace, "on the face it comes down to where it was asked for");
    assert!(others.iter().any(|way| way.by == WayBy::InWall && way.cost.not_allowed == 0), "{others:?}");
    // Where the face is not to be used it is the best.
    let plan = Room { wall, way: "surface: no", ..GOOD }.plan();
    let way = cable(&plan).way.clone().unwrap();
    assert_eq!((way.by, way.cost.not_allowed), (WayBy::InWall, 0));
    // 23 in, 1/2 in clear and half of the opening of 3 in: 25 in.
    assert!((inches(way.exit.centre().y) - 25.0).abs() < 1e-6, "{:?}", way.exit);
}
