//! Walls on which no cable should go anywhere: a plan all the same, with what it has to say, never a panic.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::WayBy;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::words::plan_text;

/// A display 48 by 28 in on a wall of 150 by 96 in, its middle 60 in high, with one port; `wall` and `way` are more of
/// the wall and of the way that is wished for.
fn job(wall: &str, way: &str, middle: &str) -> Job {
    let text = format!(
        "(format: 1, kit: (cables: [(id: \"cable-1\", signal: picture, length: \"96 in\", in_wall: true)]), \
         pieces: [(id: \"display\", kind: display, width: \"48 in\", height: \"28 in\", ports: \
            [(id: \"port\", carries: data, from: left, read: front, by: \"20 in\", up: \"8 in\")])], \
         mounts: [(id: \"mount\", kind: flush, drop: \"6 in\", stand_off: \"1 in\")], \
         walls: [(id: \"w\", width: \"150 in\", height: \"96 in\", framing: wood((face: \"1 1/2 in\", \
            depth: \"3 1/2 in\")), {wall} options: [(id: \"o\", hangings: [(id: \"h\", piece: \"display\", \
            mount: \"mount\", across: on_wall, upright: height(of: centre, by: \"{middle}\"), \
            cables: [(id: \"wish\", port: \"port\", cable: \"cable-1\")], way: ({way}))])])])"
    );
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(&text).unwrap_or_else(|why| panic!("{why}: {text}"))
}

fn planned(job: &Job) -> Plan {
    let plan = solve(job, &Id::new("w"), None);
    let text = plan_text(job, &plan, &strikeline_solver::beside::Beside::of(job, &plan));
    assert!(text.contains("Cables:"), "{text}");
    plan
}

fn rules(plan: &Plan) -> Vec<&'static str> {
    plan.findings.iter().map(|finding| finding.what.rule()).collect()
}

/// Hits of studs so far apart, all over the wall.
fn studs(apart: f64) -> String {
    let mut at = 4.0;
    let mut hits = Vec::new();
    while at < 148.0 {
        hits.push(format!("(id: \"hit-{}\", kind: centre, x: (by: \"{at} in\"))", hits.len() + 1));
        at += apart;
    }
    format!("hits: [{}],", hits.join(", "))
}

/// A duct behind all of the wall.
const DUCT: &str =
    "hidden: [(id: \"duct-1\", kind: duct, across: (left: (by: \"0 in\"), right: (by: \"150 in\")))],";

#[test]
fn everything_hidden() {
    let plan = planned(&job(DUCT, "", "60 in"));
    let cable = plan.pieces[0].cable.as_ref().unwrap();
    assert_eq!(cable.way.as_ref().unwrap().by, WayBy::OnFace);
    assert!(rules(&plan).contains(&"no_entry"), "{:?}", rules(&plan));
    // And none on the face either, as far as was asked.
    let plan = planned(&job(DUCT, "surface: no", "60 in"));
    let cable = plan.pieces[0].cable.as_ref().unwrap();
    assert_eq!(cable.allowed, Some(false));
    assert!(rules(&plan).contains(&"no_way"), "{:?}", rules(&plan));
}

#[test]
fn no_bay_at_all() {
    for solid in ["concrete(())", "masonry(())", "veneer", "no_framing"] {
        let mut job = job(&studs(16.0), "", "60 in");
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        job.walls[0].framing = Some(options.from_str(solid).unwrap());
        let plan = planned(&job);
        let cable = plan.pieces[0].cable.as_ref().unwrap();
        assert!(cable.way.iter().chain(&cable.alternatives).all(|way| way.by == WayBy::OnFace), "{solid}");
        assert!(rules(&plan).contains(&"no_bay"), "{solid}: {:?}", rules(&plan));
    }
}

#[test]
fn a_display_over_a_window() {
    let window = "features: [(id: \"window-1\", kind: window, across: (left: (by: \"30 in\"), width: \"90 in\"), \
                  upright: (bottom: (by: \"30 in\"), height: \"50 in\"), proud: \"3/4 in\")],";
    let plan = planned(&job(&format!("{window} {}", studs(16.0)), "", "60 in"));
    let cable = plan.pieces[0].cable.as_ref().unwrap();
    assert!(cable.way.as_ref().is_none_or(|way| way.entry.is_none()), "{:?}", cable.way);
    assert!(rules(&plan).contains(&"no_entry"), "{:?}", rules(&plan));
}

#[test]
fn an_exit_above_the_entry() {
    let up = "exit_at: (across: \"71 in\", up: \"85 in\")";
    let plan = planned(&job(&studs(16.0), up, "40 in"));
    let way = plan.pieces[0].cable.as_ref().unwrap().way.clone().unwrap();
    assert!(way.exit.centre().y > way.entry.unwrap().centre().y);
    assert_eq!(way.cost.not_allowed, 0, "{:?}", way.against);
    // A display so low that it hangs over where cables come out.
    let plan = planned(&job(&studs(16.0), "", "16 in"));
    let way = plan.pieces[0].cable.as_ref().unwrap().way.clone().unwrap();
    assert!(!way.exit.overlaps(plan.pieces[0].outline), "an exit is never behind the display");
}

#[test]
fn a_kilometre_of_cable() {
    let mut job = job(&studs(16.0), "slack: \"1000000 mm\"", "60 in");
    let plan = planned(&job);
    let lead = &plan.pieces[0].cable.as_ref().unwrap().leads[0];
    assert!(lead.cut_length.unwrap().mm() > 2e6 && lead.stock_short);
    let rules = rules(&plan);
    assert!(rules.contains(&"too_long") && rules.contains(&"stock_short"), "{rules:?}");
    // A wall as wide.
    job.walls[0].width = Some(strikeline_solver::units::Length::millimetres(1e9));
    job.walls[0].hits.clear();
    assert!(planned(&job).pieces[0].cable.as_ref().unwrap().way.is_some());
}

#[test]
fn pins_where_nothing_may_be_cut_are_told() {
    let pin = "entry_at: (right: \"60 in\", up: \"0 in\"), exit_at: (across: \"0 in\", up: \"0 in\"), bay: \"1 in\"";
    let plan = planned(&job(&studs(16.0), pin, "60 in"));
    let cable = plan.pieces[0].cable.as_ref().unwrap();
    assert_ne!(cable.allowed, Some(true));
    assert!(rules(&plan).contains(&"no_way") || rules(&plan).contains(&"no_entry"), "{:?}", rules(&plan));
}

#[test]
fn a_cable_that_is_not_listed_stays_out_of_the_wall() {
    let mut job = job(&studs(16.0), "", "60 in");
    job.kit.cables[0].in_wall = Some(false);
    let plan = planned(&job);
    let cable = plan.pieces[0].cable.as_ref().unwrap();
    assert_eq!(cable.way.as_ref().unwrap().by, WayBy::OnFace);
    assert!(cable.alternatives.iter().all(|way| way.cost.not_allowed > 0));
}

#[test]
fn sizes_of_nothing_and_far_too_large() {
    for size in ["0 in", "4000 in"] {
        for way in
            ["entry_kind: stocked(\"box-1\"), exit_kind: stocked(\"box-1\")", "from_power: \"4000 in\""]
        {
            let mut job = job(&studs(16.0), way, "60 in");
            let length = ron::from_str(&format!("\"{size}\"")).ok();
            job.kit.boxes.push(strikeline_solver::job::kit::BoxStock {
                id: Id::new("box-1"),
                name: None,
                width: length,
                height: length,
                depth: length,
                count: None,
            });
            job.kit.cables[0].plug = length;
            job.kit.cables[0].outside = length;
            planned(&job);
        }
    }
}
