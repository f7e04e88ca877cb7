//! The option of a wall that has none: the first piece that hangs nowhere yet, centred; and how it is written down, so
//! that what hangs in it can be changed.

use crate::job::Job;
use crate::job::option::{CableWay, Hanging, Nudge, WallOption};
use crate::job::place::UprightDatum;
use crate::job::rule::{AcrossRule, PieceHeight, UprightRule};
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::subject::Id;
use crate::units::{Length, LengthUnit};

/// The first piece of the job that no option of any wall hangs, on the first mount, where a piece goes by itself.
///
/// Without ids, since it is none of the job's. Nothing hangs where no such piece is left, and on any but the first
/// wall without options: a piece is at one place.
#[must_use]
pub fn assumed_option(job: &Job, wall: &Id) -> WallOption {
    let first = job.walls.iter().find(|wall| wall.options.is_empty());
    let options = || job.walls.iter().flat_map(|wall| &wall.options);
    let hangs =
        |piece: &Id| options().flat_map(|option| &option.hangings).any(|hanging| hanging.piece == *piece);
    let Some(piece) = job.pieces.iter().find(|piece| !hangs(&piece.id)) else { return WallOption::default() };
    if first.is_none_or(|first| first.id != *wall) {
        return WallOption::default();
    }
    let (across, upright) = assumed_place(job);
    let hanging = Hanging {
        id: Id::default(),
        piece: piece.id.clone(),
        mount: job.mounts.first().map(|mount| mount.id.clone()),
        hung_on: None,
        across,
        upright,
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    WallOption { hangings: vec![hanging], ..WallOption::default() }
}

/// Writes the option that is assumed of a wall down as one of the job's own, and tells its id; `None` where the job has
/// no such wall.
pub fn write_down(job: &mut Job, wall: &Id) -> Option<Id> {
    let mut option = assumed_option(job, wall);
    option.id = job.give_id("option");
    for hanging in &mut option.hangings {
        hanging.id = job.give_id("hanging");
    }
    let id = option.id.clone();
    job.walls.iter_mut().find(|one| one.id == *wall)?.options.push(option);
    Some(id)
}

/// The hanging that puts a piece of a job's plan where it is. An option that the plan assumed is written down, once.
pub fn hanging_mut<'a>(job: &'a mut Job, plan: &Plan, piece: &PiecePlan) -> Option<&'a mut Hanging> {
    if plan.option.is_none() && job.wall(&plan.wall)?.options.is_empty() {
        write_down(job, &plan.wall)?;
    }
    let wall = job.walls.iter_mut().find(|wall| wall.id == plan.wall)?;
    match &plan.option {
        Some(option) => {
            let option = wall.options.iter_mut().find(|one| one.id == *option)?;
            option.hangings.iter_mut().find(|one| one.id == piece.hanging)
        }
        // What is written down has ids that the plan does not know.
        None => wall.options.last_mut()?.hangings.iter_mut().find(|one| one.piece == piece.id),
    }
}

/// Where a piece goes by itself: centred on the wall with its middle at 60 in, a height at which anybody standing
/// can judge it (chosen).
#[must_use]
pub fn assumed_place(job: &Job) -> (AcrossRule, UprightRule) {
    let unit = match job.units() {
        crate::job::Units::Inches => LengthUnit::Inch,
        crate::job::Units::Millimetres => LengthUnit::Millimetre,
    };
    let upright = UprightRule::Height {
        of: PieceHeight::Centre,
        from: UprightDatum::Floor,
        toward: None,
        by: Length::millimetres(1524.0).with_unit(unit),
    };
    (AcrossRule::OnWall, upright)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::piece::Piece;
    use crate::job::wall::Wall;

    fn job() -> Job {
        let wall = |id| Wall { id: Id::new(id), ..Wall::default() };
        let pieces = vec![Piece { id: Id::new("display-1"), ..Piece::default() }];
        Job { pieces, walls: vec![wall("wall-1"), wall("wall-2")], ..Job::new() }
    }

    fn hung(job: &Job, wall: &str) -> Vec<String> {
        let option = assumed_option(job, &Id::new(wall));
        option.hangings.iter().map(|hanging| hanging.piece.to_string()).collect()
    }

    #[test]
    fn a_piece_is_supposed_on_one_wall_only() {
        let mut job = job();
        assert_eq!(hung(&job, "wall-1"), ["display-1"]);
        assert!(hung(&job, "wall-2").is_empty());
        let option = assumed_option(&job, &Id::new("wall-1"));
        job.walls[0].options.push(option);
        assert!(hung(&job, "wall-2").is_empty(), "it hangs on the other");
        job.pieces.push(Piece { id: Id::new("box-1"), ..Piece::default() });
        assert_eq!(hung(&job, "wall-2"), ["box-1"]);
        job.walls[0].options.clear();
        job.walls[1].options.push(WallOption::default());
        assert_eq!(hung(&job, "wall-1"), ["display-1"]);
    }
}
