//! Cases worked on paper: each file of `cases` holds a job, the sum line by line, and what must come out.
//!
//! The numbers were worked from the rules alone, never taken from the program. A case that disagrees prints its
//! sum beside what the program made of it.

#![expect(clippy::panic, reason = "a case that cannot be read fails its test")]

#[path = "hand_worked/altered.rs"]
mod altered;
#[path = "hand_worked/case.rs"]
mod case;
#[path = "hand_worked/compare.rs"]
mod compare;

use case::Case;

/// Reads one case, solves its job and compares.
fn check(name: &str) {
    let case = Case::load(name);
    let wall = case.job.walls.first().unwrap_or_else(|| panic!("{name}: the job has no wall"));
    let plan = strikeline_solver::solve::solve(&case.job, &wall.id, None);
    let wrong = compare::disagreements(&case, &plan);
    assert!(
        wrong.is_empty(),
        "\n{name}: {}\nsource: {}\nsum:\n  {}\ndisagrees:\n  {}\n",
        case.title,
        case.source,
        case.sum.join("\n  "),
        wrong.join("\n  "),
    );
}

macro_rules! cases {
    ($($name:ident)+) => {
        $( #[test] fn $name() { check(stringify!($name)); } )+

        #[test]
        fn every_file_has_its_test() {
            let named = [$( stringify!($name) ),+];
            for found in Case::names() {
                assert!(named.contains(&found.as_str()), "{found}.ron is not run: add it to the list");
            }
        }
    };
}

cases! {
    minimal
    sloping_floor
    control_line
    face_down_port
    gap_above_mantel
    crooked_mantel
    plate_moved_in_play
    slots_reach_studs
    hole_near_edge
    baseboard_passed
    baseboard_butted
    metric
    cable_steel_opening
    cable_straight_drop
    cable_next_bay
    cable_through_block
    cable_through_stud
    cable_no_stud_bored
    cable_on_concrete
    cable_beside_outlet
    cable_exit_kept
    cable_power_alone
    cable_united_kingdom
    between_door_and_wall
    near_corner_before_far_trim
    hook_before_corner
    arm_parked
    fact_hole_off
    fact_line_high
    fact_line_out_of_level
    fact_holes_apart
    fact_line_in_play
    fact_line_beyond_play
    fact_wall_measured_again
    fact_stripped
    fact_of_another_option
    fact_drilled_from_struck_line
    fact_opening_in_wrong_bay
}

#[test]
fn demo_jobs_assume_nothing_that_moves_a_mark() {
    for (name, job) in case::demo_jobs() {
        for wall in &job.walls {
            for option in &wall.options {
                let plan = strikeline_solver::solve::solve(&job, &wall.id, Some(&option.id));
                let moved: Vec<_> = plan.assumed.iter().filter(|assumed| assumed.moves_marks).collect();
                assert!(moved.is_empty(), "{name}, {}: {moved:?}", option.id);
                assert_eq!(plan.pieces.len(), option.hangings.len(), "{name}, {}", option.id);
                assert!(!plan.marks.is_empty(), "{name}, {}", option.id);
            }
        }
    }
}
