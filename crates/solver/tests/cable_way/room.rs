//! The room in which each of these tests spoils one thing.

use strikeline_solver::beside::Beside;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::words::plan_text;

/// A display of 52 x 30 in, from 49 to 101 and from 45 to 75 in, on a wall of 150 x 96 in with studs at 52, 68, 84 and
/// 100 in. All that is known of it is known, so that each test spoils one thing.
pub(crate) struct Room {
    pub(crate) kit: &'static str,
    pub(crate) width: &'static str,
    pub(crate) ports: &'static str,
    pub(crate) mount: &'static str,
    pub(crate) front: &'static str,
    pub(crate) hits: &'static str,
    pub(crate) wall: &'static str,
    pub(crate) cables: &'static str,
    pub(crate) way: &'static str,
}

pub(crate) const GOOD: Room = Room {
    kit: "cables: [(id: \"cable-1\", name: \"lead\", signal: picture, length: \"96 in\", outside: \"1/4 in\", \
          plug: \"3/4 in\", in_wall: true, bend: \"1 in\", count: 2)]",
    width: "52 in",
    ports: "(id: \"port-1\", carries: data, from: left, read: front, by: \"27 in\", up: \"6 in\", points: down, \
            reach: \"2 in\")",
    mount: "kind: flush, drop: \"8 in\", stand_off: \"2 in\", plate: (solids: [(id: \"solid-1\", left: \"-10 in\", \
            right: \"10 in\", down: \"0 in\", height: \"7 in\")])",
    front: "front: (layers: [board], thickness: \"1/2 in\"),",
    hits: "hits: [(id: \"hit-1\", kind: centre, x: (by: \"52 in\")), (id: \"hit-2\", kind: centre, x: (by: \"68 in\")), \
           (id: \"hit-3\", kind: centre, x: (by: \"84 in\")), (id: \"hit-4\", kind: centre, x: (by: \"100 in\"))],",
    wall: "",
    cables: "(id: \"wish-1\", port: \"port-1\", cable: \"cable-1\")",
    way: "",
};

impl Room {
    pub(crate) fn job(&self) -> Job {
        let Self { kit, width, ports, mount, front, hits, wall, cables, way } = self;
        let text = format!(
            "(format: 1, year_built: 2001, kit: ({kit}), \
              pieces: [(id: \"display-1\", kind: display, width: \"{width}\", height: \"30 in\", ports: [{ports}])], \
              mounts: [(id: \"mount-1\", {mount})], \
              walls: [(id: \"wall-1\", width: \"150 in\", height: \"96 in\", left_end: inside_corner, \
                right_end: inside_corner, {front} framing: wood((face: \"1 1/2 in\", depth: \"3 1/2 in\")), \
                beyond: room, {hits} {wall} \
                options: [(id: \"option-1\", hangings: [(id: \"hanging-1\", piece: \"display-1\", mount: \"mount-1\", \
                  across: on_wall, upright: height(of: centre, by: \"60 in\"), cables: [{cables}], way: ({way}))])])])"
        );
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        options.from_str(&text).unwrap_or_else(|why| panic!("{why}: {text}"))
    }

    pub(crate) fn plan(&self) -> Plan {
        let job = self.job();
        solve(&job, &job.walls[0].id, None)
    }

    pub(crate) fn text(&self) -> String {
        let (job, plan) = (self.job(), self.plan());
        let text = plan_text(&job, &plan, &Beside::of(&job, &plan));
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }
}
