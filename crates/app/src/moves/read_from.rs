//! From what a place was read, and which way: for the name of its dimension.

use super::edge;
use strikeline_drawing::dimension::ReadPlace;
use strikeline_solver::geometry::Direction;
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{
    AcrossDatum, AcrossReading, Sideways, UpDown, UprightDatum, UprightReading,
};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::ReadingDatum;
use strikeline_solver::subject::Id;

/// From what a place of a thing or a hit was read, and which way from there; `None` where it was not read.
#[must_use]
pub fn read_from(job: &Job, plan: &Plan, thing: &Id, place: ReadPlace) -> Option<(Direction, ReadingDatum)> {
    if let Some((across, upright)) = edge::extents(job, &plan.wall, thing) {
        return match place {
            ReadPlace::Left => across.left.as_ref().map(sideways),
            ReadPlace::Right => across.right.as_ref().map(sideways),
            ReadPlace::Middle => across.centre.as_ref().map(sideways),
            ReadPlace::Bottom => upright.bottom.as_ref().map(in_height),
            ReadPlace::Top => upright.top.as_ref().map(in_height),
            ReadPlace::MiddleHeight => upright.centre.as_ref().map(in_height),
        };
    }
    let hit = job.wall(&plan.wall)?.hits.iter().find(|hit| hit.id == *thing)?;
    match place {
        ReadPlace::Middle => Some(sideways(&hit.x)),
        ReadPlace::MiddleHeight => hit.y.as_ref().map(in_height),
        _ => None,
    }
}

fn sideways(reading: &AcrossReading) -> (Direction, ReadingDatum) {
    let from = match &reading.from {
        AcrossDatum::LeftEnd => ReadingDatum::LeftEnd,
        AcrossDatum::RightEnd => ReadingDatum::RightEnd,
        AcrossDatum::Edge(edge) => ReadingDatum::Edge(edge.clone()),
    };
    let direction = match reading.way() {
        Sideways::Left => Direction::Left,
        Sideways::Right => Direction::Right,
    };
    (direction, from)
}

fn in_height(reading: &UprightReading) -> (Direction, ReadingDatum) {
    let from = match &reading.from {
        UprightDatum::Floor => ReadingDatum::Floor,
        UprightDatum::ControlLine => ReadingDatum::ControlLine,
        UprightDatum::Edge(edge) => ReadingDatum::Edge(edge.clone()),
    };
    let direction = match reading.way() {
        UpDown::Up => Direction::Up,
        UpDown::Down => Direction::Down,
    };
    (direction, from)
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;

    #[test]
    fn the_way_is_away_from_the_datum_unless_told_otherwise() {
        let mut job = job();
        let of = |job: &Job, id: &str, place| read_from(job, &plan(job), &Id::new(id), place);
        assert_eq!(of(&job, "door-1", ReadPlace::Left), Some((Direction::Right, ReadingDatum::LeftEnd)));
        assert_eq!(of(&job, "door-1", ReadPlace::Right), Some((Direction::Left, ReadingDatum::RightEnd)));
        assert_eq!(of(&job, "door-1", ReadPlace::Top), Some((Direction::Up, ReadingDatum::Floor)));
        assert_eq!(of(&job, "door-1", ReadPlace::Middle), None);
        assert_eq!(of(&job, "hit-2", ReadPlace::MiddleHeight), Some((Direction::Up, ReadingDatum::Floor)));
        let edge = Id::new("door-1").part("left");
        job.walls[0].hits[0].x.from = AcrossDatum::Edge(edge.clone());
        let told = Some((Direction::Left, ReadingDatum::Edge(edge.clone())));
        assert_eq!(of(&job, "hit-1", ReadPlace::Middle), told);
        job.walls[0].hits[0].x.toward = Some(Sideways::Right);
        assert_eq!(of(&job, "hit-1", ReadPlace::Middle), Some((Direction::Right, ReadingDatum::Edge(edge))));
    }
}
