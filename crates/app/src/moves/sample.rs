//! A small room for the tests of moves: a display between a corner and a door, two hits and a pipe.

use super::{Handle, HandleKind};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;

const ROOM: &str = r#"(
    format: 1,
    units: inches,
    pieces: [(id: "display-1", kind: display, width: "48 in", height: "28 in")],
    mounts: [(
        id: "mount-1",
        kind: flush,
        plate: (
            solids: [(id: "rail-1", left: "-10 in", right: "10 in", down: "0 in", height: "8 in")],
            holes: [
                (id: "hole-1", right: "-8 in", down: "1 in"),
                (id: "hole-2", right: "8 in", down: "1 in"),
            ],
        ),
        drop: "8 1/2 in",
    )],
    walls: [(
        id: "wall-1",
        width: "120 in",
        height: "96 in",
        left_end: inside_corner,
        right_end: inside_corner,
        features: [(
            id: "door-1",
            kind: door,
            across: (left: (by: "88 in"), right: (from: "right", by: "2 in")),
            upright: (bottom: (by: "0 in"), top: (by: "80 in")),
            proud: "3/4 in",
        )],
        hidden: [(id: "pipe-1", kind: pipe, across: (centre: (by: "10 in"), width: "1 in"))],
        hits: [
            (id: "hit-1", kind: centre, x: (by: "30 in")),
            (id: "hit-2", kind: centre, x: (from: "right", by: "72 in"), y: (by: "60 in")),
        ],
        options: [(
            id: "option-1",
            hangings: [(
                id: "hanging-1",
                piece: "display-1",
                mount: "mount-1",
                across: between("left", "door-1.left"),
                upright: height(of: centre, by: "60 in"),
            )],
        )],
    )],
)"#;

/// The room.
pub(super) fn job() -> Job {
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .from_str(ROOM)
        .unwrap()
}

/// Its plan.
pub(super) fn plan(job: &Job) -> Plan {
    solve(job, &Id::new("wall-1"), None)
}

/// A handle.
pub(super) fn handle(kind: HandleKind, id: &str) -> Handle {
    Handle { id: Id::new(id), kind }
}
