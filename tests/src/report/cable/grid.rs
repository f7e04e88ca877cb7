//! Random walls, and their cheapest way by a general-purpose shortest path, petgraph's, over a fine grid.
//!
//! The grid knows nothing of candidate lines: every place of it is a node, for each axis that it may be come to along.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "made-up walls: a number out of range fails the test or the report at once"
)]

use petgraph::algo::dijkstra;
use petgraph::graph::{Graph, NodeIndex};
use strikeline_solver::geometry::Axis;
use strikeline_solver::route::{Area, Beside, Cost, Crossing, Field, Goal, Place, Start, Zone};

/// The grid's step: 25 mm.
pub(crate) const STEP: i64 = 25_000_000;
const COLUMNS: i64 = 36;
const ROWS: i64 = 40;

/// Numbers that look random, the same on every machine.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    fn below(&mut self, limit: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from(self.0 >> 33).unwrap() % limit.max(1)
    }

    fn area(&mut self, wide: i64, high: i64) -> Area {
        let (left, bottom) = (self.below(COLUMNS - 1), self.below(ROWS - 1));
        let (width, height) = (1 + self.below(wide), 1 + self.below(high));
        area(left, left + width, bottom, bottom + height)
    }
}

fn area(left: i64, right: i64, bottom: i64, top: i64) -> Area {
    Area { left: left * STEP, right: right * STEP, bottom: bottom * STEP, top: top * STEP }
}

/// A wall: studs about every ten steps, blocks, pipes, boxes, a display, a low strip to come out in.
pub(crate) fn wall(dice: &mut Dice) -> Field {
    let mut crossings = Vec::new();
    let mut at = dice.below(6);
    let may_bore = dice.below(2) == 0;
    while at < COLUMNS {
        let cost = Cost { not_allowed: u32::from(!may_bore), studs_bored: 1, patches: 1, ..Cost::NONE };
        crossings.push(Crossing { area: area(at, at + 2, -1, ROWS + 1), axis: Axis::Across, cost });
        at += 7 + dice.below(5);
    }
    for _ in 0..dice.below(4) {
        let bottom = 4 + dice.below(ROWS - 20);
        let left = dice.below(COLUMNS);
        let cost = Cost { patches: 1, blocks: 1, ..Cost::NONE };
        let block = area(left - 1, left + 12, bottom, bottom + 2);
        crossings.push(Crossing { area: block, axis: Axis::Upright, cost });
    }
    let mut barred: Vec<Area> = (0..dice.below(6)).map(|_| dice.area(8, 8)).collect();
    if dice.below(12) == 0 {
        // A header from end to end.
        barred.push(area(-1, COLUMNS + 1, 14, 17));
    }
    let zone = |dice: &mut Dice, room: Area| {
        let mut barred: Vec<Area> =
            crossings.iter().filter(|one| one.axis == Axis::Across).map(|one| one.area).collect();
        barred.extend((0..dice.below(4)).map(|_| dice.area(6, 6)));
        barred.extend(crossings.iter().filter(|one| one.axis == Axis::Upright).map(|one| one.area));
        Zone { room, barred }
    };
    let left = dice.below(12);
    let narrow = dice.below(2) == 0;
    let wide = if narrow { 3 + dice.below(4) } else { 8 + dice.below(16) };
    let behind = area(left, left + wide, 24, 24 + 3 + dice.below(10));
    // Half of the exits are at one height, half of those of narrow displays in another bay.
    let from = if narrow { dice.below(COLUMNS) } else { 0 };
    let low = area(from, COLUMNS, 2, 2 + dice.below(2) * dice.below(6));
    let near = Place { x: (left + dice.below(20)) * STEP, y: (24 + dice.below(12)) * STEP };
    let beside = (dice.below(2) == 0).then(|| {
        let x = dice.below(COLUMNS);
        Beside { x: x * STEP, bay: ((x - 4) * STEP, (x + 4) * STEP) }
    });
    let hides = (dice.below(4) == 0).then(|| vec![behind]);
    let start = Start { zone: zone(dice, behind), near, cost: Cost::NONE };
    let goal = Goal { zone: zone(dice, low), wished_y: 3 * STEP, beside, cost: Cost::NONE };
    Field {
        bounds: area(0, COLUMNS, 0, ROWS),
        barred,
        crossings,
        hides,
        starts: vec![start],
        goals: vec![goal],
    }
}

/// What a step of the grid costs, told anew from the words: half a step in, a place is inside of a rectangle or not.
pub(crate) fn step_cost(field: &Field, from: Place, to: Place) -> Option<Cost> {
    let middle = Place { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    if field.barred.iter().any(|area| area.has_inside(middle)) {
        return None;
    }
    let mut cost = Cost { length_nm: STEP, ..Cost::NONE };
    if field.hides.as_ref().is_some_and(|hides| !hides.iter().any(|area| area.holds(middle))) {
        cost.visible_nm = STEP;
    }
    let axis = if from.y == to.y { Axis::Across } else { Axis::Upright };
    for crossing in field.crossings.iter().filter(|crossing| crossing.area.has_inside(middle)) {
        if crossing.axis != axis {
            return None;
        }
        if !crossing.area.has_inside(from) {
            cost = cost + crossing.cost;
        }
    }
    Some(cost)
}

/// The cheapest cost by petgraph, over every place of the grid.
pub(crate) fn by_petgraph(field: &Field) -> Option<Cost> {
    let mut graph: Graph<(), Cost> = Graph::new();
    let nodes: Vec<[NodeIndex; 2]> =
        (0..(COLUMNS + 1) * (ROWS + 1)).map(|_| [graph.add_node(()), graph.add_node(())]).collect();
    let index = |x: i64, y: i64| usize::try_from(y * (COLUMNS + 1) + x).unwrap();
    let (first, last) = (graph.add_node(()), graph.add_node(()));
    for y in 0..=ROWS {
        for x in 0..=COLUMNS {
            let here = nodes[index(x, y)];
            let place = Place { x: x * STEP, y: y * STEP };
            graph.add_edge(here[0], here[1], Cost::TURN);
            graph.add_edge(here[1], here[0], Cost::TURN);
            for (axis, (dx, dy)) in [(0, (0, 1)), (0, (0, -1)), (1, (1, 0)), (1, (-1, 0))] {
                let (x, y) = (x + dx, y + dy);
                if (0..=COLUMNS).contains(&x)
                    && (0..=ROWS).contains(&y)
                    && let Some(cost) = step_cost(field, place, Place { x: x * STEP, y: y * STEP })
                {
                    graph.add_edge(here[axis], nodes[index(x, y)][axis], cost);
                }
            }
            let is_barred = field.barred.iter().any(|area| area.has_inside(place));
            for start in field.starts.iter().filter(|start| start.zone.allows(place) && !is_barred) {
                graph.add_edge(first, here[0], start.cost_at(place));
                graph.add_edge(first, here[1], start.cost_at(place));
            }
            for goal in field.goals.iter().filter(|goal| goal.zone.allows(place)) {
                graph.add_edge(here[0], last, goal.cost_at(place));
                graph.add_edge(here[1], last, goal.cost_at(place));
            }
        }
    }
    dijkstra(&graph, first, Some(last), |edge| *edge.weight()).get(&last).copied()
}
