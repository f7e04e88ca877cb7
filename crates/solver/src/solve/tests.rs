//! What only a whole solve shows.

use super::solve;
use crate::finding::{MissingWhat, What};
use crate::job::Job;
use crate::plan::mark::{How, MarkWhat};
use crate::plan::{AssumedWhat, Next, Plan};
use crate::subject::Id;
use crate::units::Length;

/// The plan of `w` with these pieces and mounts, and this wall's own fields.
fn plan(wall: &str) -> Plan {
    let text = format!(
        "(format: 1, pieces: [\
            (id: \"display\", kind: display, width: \"48 in\", height: \"28 in\"),\
            (id: \"bar\", kind: sound_bar, height: \"3 in\")],\
          mounts: [(id: \"mount\", kind: flush, drop: \"6 in\")],\
          walls: [(id: \"w\", height: \"96 in\", {wall})])"
    );
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let job: Job = options.from_str(&text).unwrap();
    solve(&job, &Id::new("w"), None)
}

/// A hanging of the display by a sideways rule.
fn display(across: &str) -> String {
    format!(
        "(id: \"h-1\", piece: \"display\", mount: \"mount\", across: {across}, \
          upright: height(of: centre, by: \"56 in\"))"
    )
}

/// A length in inches to a millionth, so that the last bits of sums do not count.
fn inches(length: Length) -> String {
    format!("{:.6}", length.in_inches())
}

fn asked_for(plan: &Plan) -> Option<(String, AssumedWhat)> {
    match &plan.next {
        Some(Next::Measure(assumed)) => Some((assumed.subject.to_string(), assumed.what)),
        _ => None,
    }
}

#[test]
fn a_width_that_marks_hang_on_is_asked_for() {
    let on_wall = plan(&format!("options: [(id: \"o\", hangings: [{}])]", display("on_wall")));
    assert!(on_wall.marks.iter().any(|mark| mark.assumed));
    assert!(matches!(asked_for(&on_wall), Some((subject, AssumedWhat::WallWidth(_))) if subject == "w"));

    let beside = display("beside(from: \"left\", by: \"20 in\")");
    let from_left = plan(&format!("options: [(id: \"o\", hangings: [{beside}])]"));
    assert!(from_left.marks.iter().all(|mark| !mark.assumed), "the width does not matter here");
    assert_eq!(asked_for(&from_left), None);
}

#[test]
fn a_feature_that_a_piece_is_centred_on_is_asked_for() {
    let door = "features: [(id: \"door\", kind: door, across: (left: (by: \"30 in\")))]";
    let wall =
        |rule| format!("width: \"200 in\", {door}, options: [(id: \"o\", hangings: [{}])]", display(rule));
    let on_it = plan(&wall("on(\"door\")"));
    assert!(matches!(asked_for(&on_it), Some((subject, AssumedWhat::Width(_))) if subject == "door"));
    assert_eq!(asked_for(&plan(&wall("on_wall"))), None, "nothing hangs on the door");
}

#[test]
fn a_piece_that_waits_for_another_assumes_once() {
    let bar = "(id: \"h-2\", piece: \"bar\", hung_on: \"display\", across: on(\"display\"), \
               upright: gap(side: down, of: \"display\", by: \"1 in\"))";
    let plan = plan(&format!(
        "width: \"200 in\", options: [(id: \"o\", hangings: [{bar}, {}])]",
        display("on_wall")
    ));
    let of_bar = plan.assumed.iter().filter(|assumed| assumed.subject.to_string() == "bar").count();
    assert_eq!(of_bar, 1);
}

#[test]
fn what_a_probe_and_a_butt_suppose_is_told() {
    let wall = format!(
        "width: \"200 in\", hits: [(id: \"s\", kind: centre, x: (by: \"100 in\"))], \
         features: [(id: \"door\", kind: door, across: (left: (by: \"10 in\"), width: \"36 in\"), \
         upright: (height: \"82 in\"))], options: [(id: \"o\", hangings: [{}])]",
        display("on_wall")
    );
    let supposed = plan(&wall);
    let told = |id: &str, what: fn(&AssumedWhat) -> bool| {
        supposed.assumed.iter().any(|one| one.subject.to_string() == id && what(&one.what))
    };
    assert!(told("door", |what| matches!(what, AssumedWhat::Proud(_))));
    assert!(!told("w", |what| matches!(what, AssumedWhat::Thickness(_))), "no probe is asked for");
}

#[test]
fn a_rule_that_names_what_is_not_there_says_so() {
    let told = |across: &str| {
        let plan =
            plan(&format!("width: \"200 in\", options: [(id: \"o\", hangings: [{}])]", display(across)));
        plan.findings.first().map(|finding| finding.what.clone())
    };
    let named = crate::subject::Subject::read("stove").unwrap();
    assert_eq!(told("on(\"stove\")"), Some(What::NotThere { named }));
    assert_eq!(told("on(\"display\")"), Some(What::Ring), "placed by itself");
}

/// A wall of 200 in with a breast of 80 in in its middle, and on the wall beside it a rail at the display's height.
fn on_breast() -> Plan {
    let breast = "(id: \"breast\", kind: chimney_breast, across: (left: (by: \"60 in\"), width: \"80 in\"), \
         upright: (bottom: (by: \"0 in\"), height: \"96 in\"), proud: \"13 in\")";
    let rail = "(id: \"rail\", kind: trim, across: (left: (by: \"0 in\"), width: \"60 in\"), \
                upright: (bottom: (by: \"50 in\"), height: \"2 in\"), proud: \"1 in\")";
    plan(&format!(
        "width: \"200 in\", features: [{breast}, {rail}], options: [(id: \"o\", hangings: [{}])]",
        display("on(\"breast\")")
    ))
}

#[test]
fn gaps_and_sweeps_on_a_breast_end_at_its_edges() {
    let plan = on_breast();
    let gaps = &plan.pieces[0].gaps;
    for (gap, to) in [(&gaps.left, "breast.left"), (&gaps.right, "breast.right")] {
        let gap = gap.as_ref().unwrap();
        assert_eq!((gap.to.to_string().as_str(), inches(gap.from).as_str()), (to, "16.000000"));
    }
    let sweep = plan.marks.iter().find(|mark| mark.id.part_str() == "sweep_upper").unwrap();
    let (from, to) = sweep.line.unwrap();
    assert_eq!((inches(from.x).as_str(), inches(to.x).as_str()), ("60.000000", "140.000000"));
}

#[test]
fn beside_a_breast_the_gap_ends_at_its_side() {
    let breast = "(id: \"breast\", kind: chimney_breast, across: (left: (by: \"100 in\"), width: \"60 in\"), \
                  upright: (bottom: (by: \"0 in\"), height: \"96 in\"), proud: \"13 in\")";
    let plan = plan(&format!(
        "width: \"200 in\", features: [{breast}], options: [(id: \"o\", hangings: [{}])]",
        display("beside(from: \"left\", by: \"20 in\")")
    ));
    let gap = plan.pieces[0].gaps.right.as_ref().unwrap();
    assert_eq!((gap.to.to_string().as_str(), inches(gap.from).as_str()), ("breast.left", "32.000000"));
}

#[test]
fn only_a_wall_with_bays_is_opened_for_a_cable() {
    let entry = |framing: &str| {
        let text = format!(
            "(format: 1, pieces: [(id: \"display\", kind: display, width: \"48 in\", height: \"28 in\", \
                ports: [(id: \"port\", carries: data, from: left, read: front, by: \"9 in\", up: \"6 in\")])],\
              mounts: [(id: \"mount\", kind: flush, drop: \"6 in\")],\
              walls: [(id: \"w\", width: \"200 in\", height: \"96 in\", framing: {framing})])"
        );
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        let plan = solve(&options.from_str::<Job>(&text).unwrap(), &Id::new("w"), None);
        plan.pieces[0].mount.as_ref().unwrap().entry
    };
    assert!(entry("wood(())").is_some() && entry("not_known").is_some());
    for solid in ["concrete(())", "masonry((solid: false))", "veneer", "no_framing"] {
        assert_eq!(entry(solid), None, "{solid}");
    }
}

#[test]
fn a_level_line_is_read_from_one_datum_where_it_can() {
    let feature = |id: &str, across: &str, bottom: &str, height: &str| {
        format!(
            "(id: \"{id}\", kind: shelf, across: {across}, upright: (bottom: (by: \"{bottom} in\"), \
             height: \"{height} in\"), proud: \"1/4 in\")"
        )
    };
    // The box is higher and under the left end only; the bench runs under both.
    let low = feature("bench", "(left: (by: \"40 in\"), width: \"120 in\")", "0", "20");
    let high = feature("box", "(left: (by: \"60 in\"), width: \"30 in\")", "28", "2");
    let from = |features: &str| {
        let plan = plan(&format!(
            "width: \"200 in\", features: [{features}], options: [(id: \"o\", hangings: [{}])]",
            display("on_wall")
        ));
        let level = plan.marks.iter().find(|mark| mark.id.part_str() == "level_line").unwrap();
        level.readings.iter().map(|reading| format!("{:?}", reading.from)).collect::<Vec<_>>()
    };
    let both = from(&format!("{low}, {high}"));
    assert_eq!(both[0], both[1]);
    assert!(both[0].contains("bench"), "{both:?}");
    let apart = from(&high);
    assert_ne!(apart[0], apart[1], "the box alone is not under both ends");
}

#[test]
fn a_usual_plate_gives_marks_that_are_not_to_be_struck_yet() {
    let solve_with = |mount: &str| {
        let text = format!(
            "(format: 1, pieces: [(id: \"display\", kind: display, width: \"48 in\", height: \"28 in\")], \
              mounts: [(id: \"mount\", kind: tilting, drop: \"6 in\", {mount})], \
              walls: [(id: \"w\", width: \"200 in\", height: \"96 in\", \
                hits: [(id: \"s\", kind: centre, x: (by: \"101 in\"))], \
                options: [(id: \"o\", hangings: [{}])])])",
            display("on_wall")
        );
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        solve(&options.from_str::<Job>(&text).unwrap(), &Id::new("w"), None)
    };
    let assumed = |plan: &Plan, part: &str| {
        plan.marks.iter().find(|mark| mark.id.part_str() == part).map(|mark| mark.assumed)
    };
    let still = solve_with("like: two_rails");
    assert!(matches!(asked_for(&still), Some((mount, AssumedWhat::Plate(_))) if mount == "mount"));
    assert!(!still.pieces[0].mount.as_ref().unwrap().holes.is_empty());
    assert_eq!(assumed(&still, "centre_line"), Some(false), "no play: the holes do not move the plate");
    let moved = solve_with("like: two_rails, play_left: \"3 in\", play_right: \"3 in\"");
    assert_eq!(assumed(&moved, "centre_line"), Some(true), "which hole meets the stud moves the plate");
    assert!(moved.marks.iter().any(|mark| mark.id.part_str().starts_with("hole-") && mark.assumed));
    let own = solve_with("like: two_rails, plate: (holes: [(right: \"1 in\", down: \"1 in\")])");
    assert!(own.assumed.iter().all(|one| !matches!(one.what, AssumedWhat::Plate(_))), "its own is given");
}

#[test]
fn a_reading_stays_on_its_plane_however_shallow_a_breast_is() {
    let wall = |kind: &str| {
        format!(
            "width: \"200 in\", left_end: open, right_end: inside_corner, features: [(id: \"f\", kind: {kind}, \
             across: (left: (by: \"160 in\"), width: \"40 in\"), upright: (height: \"96 in\"), proud: \"1/16 in\")], \
             options: [(id: \"o\", hangings: [{}])]",
            display("beside(from: \"left\", by: \"40 in\")")
        )
    };
    let from_corner = |kind: &str| {
        let plan = plan(&wall(kind));
        plan.marks.iter().flat_map(|mark| &mark.readings).any(|reading| reading.how == How::Corner)
    };
    assert!(from_corner("panelling"), "a tape goes over what is on its own plane");
    assert!(!from_corner("chimney_breast"), "that corner is the breast's");
}

#[test]
fn a_helping_mark_is_struck_on_the_wall_itself() {
    let wall = |features: &str| {
        format!(
            "width: \"200 in\", {features} options: [(id: \"o\", hangings: [(id: \"h-1\", piece: \"display\", \
             mount: \"mount\", across: on_wall, upright: height(of: centre, by: \"84 in\"))])]"
        )
    };
    let helps = |plan: &Plan| -> Vec<_> {
        plan.marks.iter().filter(|mark| mark.what == MarkWhat::Help).filter_map(|mark| mark.place).collect()
    };
    let window = "features: [(id: \"f\", kind: window, across: (left: (by: \"60 in\"), width: \"80 in\"), \
                  upright: (bottom: (by: \"36 in\"), height: \"32 in\"), proud: \"0 in\")],";
    let bare = plan(&wall(""));
    let beside_window = plan(&wall(window));
    let pane = beside_window.survey.features.first().map(|feature| feature.rect).unwrap();
    assert!(helps(&bare).iter().any(|help| pane.holds(*help)), "there a mark would stand on the pane");
    assert!(helps(&beside_window).iter().all(|help| !pane.holds(*help)));
}

#[test]
fn a_wall_known_to_have_no_framing_is_not_to_be_swept_for_it() {
    let told = |framing: &str| -> Vec<_> {
        let wall = format!(
            "width: \"200 in\", framing: {framing}, options: [(id: \"o\", hangings: [{}])]",
            display("on_wall")
        );
        plan(&wall).findings.into_iter().map(|finding| finding.what).collect()
    };
    let hits = What::Missing { what: MissingWhat::Hits };
    let known = told("no_framing");
    assert!(known.contains(&What::NoFraming) && !known.contains(&hits), "{known:?}");
    let not_known = told("not_known");
    assert!(!not_known.contains(&What::NoFraming) && not_known.contains(&hits), "{not_known:?}");
}
