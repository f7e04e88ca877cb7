//! What cables are kept out of: fasteners, studs that lean, cords of power, names that are not there.

use super::room::{GOOD, Room};
use super::{cable, inches};
use strikeline_solver::finding::What;
use strikeline_solver::plan::cable::{Against, Crosses, WayBy};
use strikeline_solver::plan::framing::Stud;

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
