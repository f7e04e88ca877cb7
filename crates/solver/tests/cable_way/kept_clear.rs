//! What cables are kept out of: fasteners, studs that lean, cords of power, names that are not there.

use super::room::{GOOD, Room};
use super::{cable, inches};
use strikeline_solver::finding::What;
use strikeline_solver::finding::cable::CableWhat;
use strikeline_solver::job::framing::{SteelStuds, WallFraming};
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{Against, Crosses, WayBy};
use strikeline_solver::plan::framing::Stud;
use strikeline_solver::plan::mark::{Mark, MarkWhat};
use strikeline_solver::solve::solve;
use strikeline_solver::units::Length;
use strikeline_solver::words;

#[test]
fn a_bored_stud_is_not_bored_through_a_fastener() {
    // From the entry at (76, 51) to the bay on the left, straight through the stud at 68, where the lag is.
    let way = "bore: true, bay: \"60 in\", entry_at: (right: \"1 in\", up: \"-9 in\")";
    let mount = "kind: flush, drop: \"8 in\", stand_off: \"2 in\", plate: (solids: [(id: \"solid-1\", left: \"-10 in\", \
                 right: \"10 in\", down: \"0 in\", height: \"1 in\")], thickness: \"0.1 in\", holes: [(id: \"hole-1\", right: \
                 \"-7 in\", down: \"16 in\", diameter: \"3/8 in\")])";
    let kit = format!(
        "{}, fasteners: [(id: \"lag-1\", kind: lag, diameter: \"5/16 in\", length: \"3 in\", head: \"1/2 in\")]",
        GOOD.kit
    );
    let kit: &'static str = kit.leak();
    let plan = Room { mount, kit, way, ..GOOD }.plan();
    let hung = plan.pieces[0].mount.as_ref().unwrap();
    let hole = &hung.holes[0];
    assert_eq!(hung.fastening.fasteners.len(), 1, "{:?}", hung.fastening);
    let led = cable(&plan).way.as_ref().unwrap();
    let bored = led.crosses.iter().filter_map(|one| match one {
        Crosses::Stud(at) => Some(*at),
        _ => None,
    });
    let bored: Vec<_> = bored.collect();
    assert!(!bored.is_empty(), "{led:?}");
    for at in bored {
        // Half of the lag, half of a hole of 3/4 in, and 1/2 in between.
        let apart = (at.x - hole.place.x).abs().max((at.y - hole.place.y).abs());
        assert!(inches(apart) >= 0.3125 / 2.0 + 0.375 + 0.5 - 1e-6, "{at:?} {:?}", hole.place);
    }
    let without = Room { mount, way, ..GOOD }.plan();
    assert_ne!(cable(&without).way.as_ref().unwrap().run, led.run, "it stood in the way");
}

#[test]
fn openings_keep_clear_of_a_stud_where_it_is_at_their_height() {
    // The port is over the stud at 68 in; hits 42 in apart tell that it leans 1/4 in to the right, down to its foot.
    let ports = "(id: \"port-1\", carries: data, from: left, read: front, by: \"20 in\", up: \"6 in\", points: down, reach: \"2 in\")";
    let hits = "hits: [(id: \"hit-1\", kind: centre, x: (by: \"68 in\"), y: (by: \"62 in\")), (id: \"hit-2\", kind: centre, x: \
                (by: \"68 1/4 in\"), y: (by: \"20 in\")), (id: \"hit-3\", kind: centre, x: (by: \"84 in\")), (id: \"hit-4\", \
                kind: centre, x: (by: \"100 in\")), (id: \"hit-5\", kind: centre, x: (by: \"52 in\"))],";
    let exit = |hits: &'static str| {
        let plan = Room { hits, ports, ..GOOD }.plan();
        let way = cable(&plan).way.clone().unwrap();
        let here = |stud: &&Stud| inches(stud.centre) > 60.0 && inches(stud.centre) < 76.0;
        (way.exit, plan.framing.studs.iter().find(here).unwrap().clone())
    };
    let ((plumb, _), (leaning, stud)) = (exit(GOOD.hits), exit(hits));
    assert!(stud.lean < 0.0, "{stud:?}");
    let right = stud.middle_at(leaning.bottom) + (stud.right - stud.left) / 2.0 + stud.doubt;
    assert!(leaning.left >= right && leaning.left > plumb.left, "{leaning:?} {plumb:?} {stud:?}");
}

#[test]
fn a_cord_of_power_is_never_led_into_the_wall() {
    let kit = "cables: [(id: \"cable-1\", signal: power, length: \"96 in\", outside: \"1/4 in\", plug: \"3/4 in\", in_wall: true, \
               bend: \"1 in\")]";
    let plan = Room { kit, ..GOOD }.plan();
    let cable = cable(&plan);
    let inside = cable.way.iter().chain(&cable.alternatives).filter(|way| way.by == WayBy::InWall);
    assert!(inside.clone().count() > 0);
    for way in inside {
        assert!(way.against.contains(&Against::Cord) && way.cost.not_allowed > 0, "{way:?}");
    }
    let kept = Room { kit, way: "on_face: false", ..GOOD }.plan();
    assert_eq!(super::cable(&kept).allowed, Some(false));
    // Nor is it fixed to the wall's face.
    let face = Room { kit, way: "on_face: true", ..GOOD }.plan();
    let led = super::cable(&face).way.as_ref().unwrap();
    assert_eq!((led.by, super::cable(&face).allowed), (WayBy::OnFace, Some(false)));
    assert!(led.against.contains(&Against::Cord), "{led:?}");
    let told = face.findings.iter().any(|finding| finding.what == What::Cable(CableWhat::PowerCord));
    assert!(told, "{:?}", face.findings);
}

#[test]
fn what_cables_name_and_the_job_does_not_have_is_told() {
    let spoiled = [
        Room { cables: "(id: \"wish-1\", port: \"port-9\")", ..GOOD },
        Room { cables: "(id: \"wish-1\", port: \"port-1\", cable: \"cable-9\")", ..GOOD },
        Room { cables: "(id: \"wish-1\", port: \"port-1\", ends_at: \"outlet-9\")", ..GOOD },
        Room { way: "behind: \"bench-9\"", ..GOOD },
        Room { way: "exit_kind: stocked(\"box-9\")", ..GOOD },
    ];
    let missing = |room: &Room| {
        let told = room.plan().findings.into_iter().filter_map(|finding| match finding.what {
            What::NotThere { named } => Some(named.to_string()),
            _ => None,
        });
        told.collect::<Vec<_>>()
    };
    assert_eq!(missing(&GOOD), Vec::<String>::new());
    for (room, named) in spoiled.iter().zip(["port-9", "cable-9", "outlet-9", "bench-9", "box-9"]) {
        assert_eq!(missing(room), [named]);
    }
}

#[test]
fn the_face_is_no_way_out_of_what_was_asked_for_inside() {
    // An entry that may not be cut is told, not led round on the face.
    let plan = Room { way: "entry_at: (right: \"-7 in\", up: \"0 in\")", ..GOOD }.plan();
    let way = cable(&plan).way.as_ref().unwrap();
    assert_eq!((way.by, cable(&plan).allowed), (WayBy::InWall, Some(false)));
    assert!(way.against.contains(&Against::EntryPlace), "{way:?}");
}

/// A fire block across the bay from 68 to 84, which is the one that is asked for.
const BLOCK: &str = "(id: \"block-1\", kind: fire_block, across: (left: (by: \"69 in\"), right: (by: \"83 in\")), upright: \
                     (centre: (by: \"30 in\"), height: \"1 1/2 in\"))";

fn passages(plan: &Plan) -> Vec<&Mark> {
    plan.marks.iter().filter(|mark| mark.what == MarkWhat::Passage).collect()
}

fn blocked(more: &str, facts: &str) -> Plan {
    let wall: &'static str = format!("hidden: [{BLOCK}{more}], {facts}").leak();
    Room { way: "bay: \"76 in\"", wall, ..GOOD }.plan()
}

#[test]
fn a_block_is_not_bored_on_a_cable_nor_behind_what_is_on_the_face() {
    let free = blocked("", "");
    let free = passages(&free)[0].place.unwrap();
    let at = inches(free.x);
    let cable = format!(
        ", (id: \"cable-9\", kind: cable, across: (centre: (by: \"{at} in\"), width: \"1/2 in\"), upright: (bottom: (by: \"0 \
         in\"), height: \"96 in\"))"
    );
    let beside = blocked(&cable, "");
    let beside = passages(&beside)[0].place.unwrap();
    // Half of the cable, 2 in from power, half of the bore of 3/4 in.
    assert!(inches((beside.x - free.x).abs()) >= 0.25 + 2.0 + 0.375 - 1e-3, "{beside:?} {free:?}");
    let vent = format!(
        "features: [(id: \"vent-1\", kind: vent, across: (left: (by: \"{} in\"), right: (by: \"{} in\")), upright: (bottom: \
         (by: \"28 in\"), height: \"6 in\"))],",
        at - 2.0,
        at + 2.0
    );
    let round = blocked("", &vent);
    for passage in passages(&round) {
        let away = inches((passage.place.unwrap().x - free.x).abs());
        assert!(away >= 2.0 + 0.5 + 0.375 - 1e-3, "{:?}", passage.place);
    }
}

#[test]
fn what_a_passage_was_opened_for_is_no_stop_and_stays_told() {
    let fact = "facts: [(id: \"fact-1\", mark: \"display-1.passage-1\", option: \"option-1\", state: cut)],";
    let (before, after) = (blocked("", ""), blocked("", fact));
    let met =
        |plan: &Plan| plan.findings.iter().filter(|one| matches!(one.what, What::CutOpening { .. })).count();
    assert_eq!((met(&before), met(&after)), (0, 0), "{:?}", after.findings);
    for plan in [&before, &after] {
        let text = words::mark(plan, passages(plan)[0]);
        assert!(
            text.contains("Circuit off or tester passed first") && text.contains("Bore through"),
            "{text}"
        );
    }
}

#[test]
fn a_block_at_a_supposed_height_is_not_opened_at() {
    let supposed = |known: &str| {
        let wall: &'static str =
            format!("hidden: [{}],", BLOCK.replace("kind: fire_block", &format!("kind: fire_block{known}")))
                .leak();
        let plan = Room { way: "bay: \"76 in\"", wall, ..GOOD }.plan();
        passages(&plan)[0].assumed
    };
    assert!(!supposed(", known_by: seen"));
    assert!(supposed(", known_by: supposed"));
}

#[test]
fn a_steel_stud_is_not_passed_by_an_opening_that_is_too_small() {
    let through = |height: &str| {
        let hidden = format!(
            "hidden: [(id: \"pipe-1\", kind: pipe, across: (left: (by: \"69 in\"), right: (by: \"83 in\")), upright: (centre: \
             (by: \"30 in\"), height: \"4 in\")), (id: \"opening-1\", kind: stud_opening, across: (centre: (by: \"68 in\"), \
             width: \"1 1/4 in\"), upright: (centre: (by: \"50 in\"), height: \"{height}\"))],"
        );
        let wall: &'static str = hidden.leak();
        let mut job = Room { wall, way: "entry_at: (right: \"1 in\", up: \"-9 in\")", ..GOOD }.job();
        let steel = SteelStuds { face: Some(Length::inches(1.25)), ..SteelStuds::default() };
        job.walls[0].framing = Some(WallFraming::Steel(steel));
        let plan = solve(&job, &job.walls[0].id, None);
        let way = cable(&plan).way.clone().unwrap();
        way.crosses.iter().any(|one| matches!(one, Crosses::Hidden(_, HiddenKind::StudOpening, _)))
    };
    assert!(through("4 in"));
    assert!(!through("1/2 in"));
}
