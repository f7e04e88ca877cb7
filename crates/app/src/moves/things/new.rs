//! A new thing of a kind, where a hand pointed or nowhere yet.

use super::{NewThing, free_letter};
use crate::moves;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::hidden::{Hidden, HiddenKind};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::WallOption;
use strikeline_solver::job::piece::{Piece, PieceKind};
use strikeline_solver::job::place::{
    AcrossDatum, AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::units::{Length, LengthUnit};

/// The job with a new thing, and the thing's id. The plan is the job's own.
///
/// Where a hand pointed, the thing's place is written as read from the wall's left end and from the floor, in
/// whole inches or 10 mm; else it is absent. A hit has to stand somewhere: it stands at the left end until its
/// reading is typed. A wall or an option stands nowhere.
#[must_use]
pub fn with_new(job: &Job, plan: &Plan, what: NewThing, at: Option<Point>) -> (Job, Id) {
    match what {
        NewThing::Feature(kind) => feature(job, plan, kind, at),
        NewThing::Hidden(kind) => hidden(job, plan, kind, at),
        NewThing::Hit(kind) => hit(job, plan, kind, at),
        NewThing::Piece(kind) => piece(job, plan, kind, at),
        NewThing::Mount => {
            let mut after = job.clone();
            let id = after.give_id("mount");
            after.mounts.push(Mount { id: id.clone(), ..Mount::default() });
            (after, id)
        }
        NewThing::Wall => {
            let mut after = job.clone();
            let id = after.give_id("wall");
            let name = Some(format!("Wall {}", after.walls.len().saturating_add(1)));
            after.walls.push(Wall { id: id.clone(), name, ..Wall::default() });
            (after, id)
        }
        NewThing::Arrangement => arrangement(job, plan),
    }
}

/// The nearest whole inch, or 10 mm; nothing for what lies below nothing.
fn whole(plan: &Plan, length: Length) -> Length {
    let unit = plan.style.graduation.unit();
    let step = if unit == LengthUnit::Millimetre { 10.0 } else { 25.4 };
    Length::millimetres((length.mm() / step).round().max(0.0) * step).quantised().with_unit(unit)
}

fn from_left(plan: &Plan, x: Length) -> AcrossReading {
    AcrossReading::from_left(whole(plan, x - plan.survey.outline.left))
}

/// Up from the floor under a place.
fn from_floor(plan: &Plan, place: Point) -> UprightReading {
    UprightReading::from_floor(whole(plan, place.y - plan.survey.floor.y_at(place.x)))
}

/// How a kind of feature is usually found by a tape.
struct Taped {
    /// Whether it is found along the wall at all; else it runs from end to end.
    across: bool,
    /// Whether it is found by a height; else it stands on the floor or hangs from the ceiling.
    upright: bool,
    /// Whether it is small enough to be found by its middle; else by its left and its lower edge.
    by_middle: bool,
}

fn taped(kind: FeatureKind) -> Taped {
    use FeatureKind as Kind;
    let by_middle = matches!(kind, Kind::Outlet | Kind::Switch | Kind::Vent | Kind::Thermostat | Kind::Other);
    match kind {
        Kind::Baseboard | Kind::Crown | Kind::Soffit | Kind::Panelling => {
            Taped { across: false, upright: false, by_middle }
        }
        Kind::Door | Kind::Bench | Kind::ChimneyBreast | Kind::Curtain => {
            Taped { across: true, upright: false, by_middle }
        }
        _ => Taped { across: true, upright: true, by_middle },
    }
}

fn feature(job: &Job, plan: &Plan, kind: FeatureKind, at: Option<Point>) -> (Job, Id) {
    let mut after = job.clone();
    let id = after.give_id("feature");
    let taped = taped(kind);
    let found_across = at.filter(|_| taped.across);
    let found_upright = at.filter(|_| taped.upright);
    let new = Feature {
        id: id.clone(),
        kind,
        name: None,
        across: AcrossExtent {
            centre: found_across.map(|at| from_left(plan, at.x)),
            ..AcrossExtent::default()
        },
        upright: UprightExtent {
            centre: found_upright.map(|at| from_floor(plan, at)),
            ..UprightExtent::default()
        },
        proud: None,
        framing: None,
        front: None,
        notes: None,
    };
    push(&mut after, plan, |wall| wall.features.push(new));
    if !taped.by_middle && at.is_some() {
        // What is large is taped by its edges: those of its usual size about the place that was pointed at.
        let seen = solve(&after, &plan.wall, None);
        let rect = seen.survey.features.iter().find(|feature| feature.id == id).map(|feature| feature.rect);
        if let (Some(rect), Some(wall)) = (rect, after.walls.iter_mut().find(|wall| wall.id == plan.wall))
            && let Some(feature) = wall.features.iter_mut().find(|feature| feature.id == id)
        {
            if feature.across.centre.take().is_some() {
                feature.across.left = Some(from_left(plan, rect.left));
            }
            if feature.upright.centre.take().is_some() {
                feature.upright.bottom = Some(from_floor(plan, Point::new(rect.centre().x, rect.bottom)));
            }
        }
    }
    (after, id)
}

fn hidden(job: &Job, plan: &Plan, kind: HiddenKind, at: Option<Point>) -> (Job, Id) {
    use HiddenKind as Kind;
    let mut after = job.clone();
    let id = after.give_id("hidden");
    // The others run from floor to ceiling until more is known.
    let is_at_a_height = matches!(
        kind,
        Kind::FireBlock | Kind::Header | Kind::Brace | Kind::StudOpening | Kind::BoxBehind | Kind::Other
    );
    let new = Hidden {
        id: id.clone(),
        kind,
        name: None,
        across: AcrossExtent { centre: at.map(|at| from_left(plan, at.x)), ..AcrossExtent::default() },
        upright: UprightExtent {
            centre: at.filter(|_| is_at_a_height).map(|at| from_floor(plan, at)),
            ..UprightExtent::default()
        },
        known_by: None,
        notes: None,
    };
    push(&mut after, plan, |wall| wall.hidden.push(new));
    (after, id)
}

fn hit(job: &Job, plan: &Plan, kind: HitKind, at: Option<Point>) -> (Job, Id) {
    let mut after = job.clone();
    let id = after.give_id("hit");
    let x = at
        .map_or_else(|| AcrossReading::from_left(whole(plan, Length::default())), |at| from_left(plan, at.x));
    let new = Hit { id: id.clone(), kind, x, y: at.map(|at| from_floor(plan, at)) };
    push(&mut after, plan, |wall| wall.hits.push(new));
    (after, id)
}

fn piece(job: &Job, plan: &Plan, kind: PieceKind, at: Option<Point>) -> (Job, Id) {
    let mut after = job.clone();
    let id = after.give_id(match kind {
        PieceKind::Display => "display",
        PieceKind::SoundBar => "sound_bar",
        PieceKind::Shelf => "shelf",
        PieceKind::Box => "box",
    });
    after.pieces.push(Piece { id: id.clone(), kind, ..Piece::default() });
    after = moves::with_hung(&after, plan, &id);
    if let Some(at) = at {
        pointed_at(&mut after, plan, &id, at);
    }
    (after, id)
}

/// Puts a piece's middle where a hand pointed.
fn pointed_at(job: &mut Job, plan: &Plan, id: &Id, at: Point) {
    let seen = solve(job, &plan.wall, plan.option.as_ref());
    let Some(width) = seen.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline.width())
    else {
        return;
    };
    let Some(option) = shown_option(job, plan) else { return };
    let Some(hanging) = option.hangings.iter_mut().find(|hanging| hanging.piece == *id) else { return };
    hanging.across = AcrossRule::Beside {
        from: AcrossDatum::LeftEnd,
        toward: None,
        by: from_left(plan, at.x - width / 2.0).by,
    };
    hanging.upright = UprightRule::Height {
        of: PieceHeight::Centre,
        from: UprightDatum::Floor,
        toward: None,
        by: from_floor(plan, at).by,
    };
}

fn arrangement(job: &Job, plan: &Plan) -> (Job, Id) {
    let mut after = moves::with_option(job, plan);
    let shown = shown_option(&mut after, plan).map(|option| option.id.clone());
    if let Some(copy) = shown.and_then(|shown| super::copied(&after, plan, &shown)) {
        return copy;
    }
    let name = Some(free_letter(&after, &plan.wall));
    let id = after.give_id("option");
    let option = WallOption { id: id.clone(), name, ..WallOption::default() };
    push(&mut after, plan, |wall| wall.options.push(option));
    (after, id)
}

/// The option that the plan shows; of one that it assumed, the one that was written down last.
fn shown_option<'a>(job: &'a mut Job, plan: &Plan) -> Option<&'a mut WallOption> {
    let wall = job.walls.iter_mut().find(|wall| wall.id == plan.wall)?;
    match &plan.option {
        Some(id) => wall.options.iter_mut().find(|option| option.id == *id),
        None => wall.options.last_mut(),
    }
}

fn push(job: &mut Job, plan: &Plan, add: impl FnOnce(&mut Wall)) {
    if let Some(wall) = job.walls.iter_mut().find(|wall| wall.id == plan.wall) {
        add(wall);
    }
}
