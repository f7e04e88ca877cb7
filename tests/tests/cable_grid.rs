//! The cheapest way against a general-purpose shortest path, petgraph's, over a fine grid: 500 random walls.
//!
//! All edges of the walls lie on the grid, so that both must find the same counts and the same length, to the
//! nanometre.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

#[path = "../src/report/cable/grid.rs"]
mod grid;

use grid::{Dice, STEP, by_petgraph, step_cost, wall};
use strikeline_solver::route::{Cost, Field, Place, cheapest};

/// What a way costs when it is walked step by step, so that the corners told are those that were paid for.
fn walked(field: &Field, corners: &[Place]) -> Option<Cost> {
    let mut cost = field.starts[0].cost_at(corners[0]);
    let mut at = corners[0];
    for (index, corner) in corners.iter().enumerate().skip(1) {
        if index > 1 {
            cost = cost + Cost::TURN;
        }
        while at != *corner {
            let next = Place {
                x: at.x + (corner.x - at.x).signum() * STEP,
                y: at.y + (corner.y - at.y).signum() * STEP,
            };
            assert!(at.x == next.x || at.y == next.y, "up-down and left-right pieces only");
            cost = cost + step_cost(field, at, next)?;
            at = next;
        }
    }
    Some(cost + field.goals[0].cost_at(at))
}

#[test]
fn on_500_walls_the_cheapest_is_that_of_a_general_search_on_a_fine_grid() {
    let mut dice = Dice(8);
    let (mut through, mut with_studs, mut with_blocks, mut with_turns, mut none) = (0, 0, 0, 0, 0);
    for wall_number in 0..500 {
        let field = wall(&mut dice);
        let found = cheapest(&field);
        let general = by_petgraph(&field);
        assert_eq!(found.as_ref().map(|found| found.cost), general, "wall {wall_number}: {field:?}");
        let Some(found) = found else {
            none += 1;
            continue;
        };
        assert_eq!(walked(&field, &found.corners), general, "wall {wall_number}: {:?}", found.corners);
        through += 1;
        with_studs += u32::from(found.cost.studs_bored > 0);
        with_blocks += u32::from(found.cost.blocks > 0);
        with_turns += u32::from(found.cost.tight_bends > 0);
    }
    // The walls are not all alike, so that each kind of way was compared.
    assert!(through > 300 && none > 5, "{through} with a way, {none} without");
    assert!(
        with_studs > 40 && with_blocks > 15 && with_turns > 40,
        "{with_studs} {with_blocks} {with_turns}"
    );
}
