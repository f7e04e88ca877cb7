//! The job as it is seen in a mirror.

use strikeline_solver::job::Job;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::place::{AcrossDatum, AcrossExtent, AcrossReading, Sideways, UprightExtent};
use strikeline_solver::job::rule::AcrossRule;
use strikeline_solver::subject::Subject;
use strikeline_solver::tape::Offset;

/// The edge that is seen in an edge's place.
pub(crate) fn edge(subject: &Subject) -> Subject {
    match subject.part_str() {
        "left" => subject.id.part("right"),
        "right" => subject.id.part("left"),
        _ => subject.clone(),
    }
}

fn datum(datum: &AcrossDatum) -> AcrossDatum {
    match datum {
        AcrossDatum::LeftEnd => AcrossDatum::RightEnd,
        AcrossDatum::RightEnd => AcrossDatum::LeftEnd,
        AcrossDatum::Edge(subject) => AcrossDatum::Edge(edge(subject)),
    }
}

fn toward(toward: Sideways) -> Sideways {
    match toward {
        Sideways::Left => Sideways::Right,
        Sideways::Right => Sideways::Left,
    }
}

fn reading(reading: &mut AcrossReading) {
    reading.from = datum(&reading.from);
    reading.toward = reading.toward.map(toward);
}

fn across(extent: &mut AcrossExtent) {
    std::mem::swap(&mut extent.left, &mut extent.right);
    [&mut extent.left, &mut extent.right].into_iter().flatten().for_each(reading);
}

fn upright(extent: &mut UprightExtent) {
    if extent.top_at_right.is_some() {
        std::mem::swap(&mut extent.top, &mut extent.top_at_right);
    }
}

/// The job as it is seen in a mirror.
pub(crate) fn mirrored(job: &Job) -> Job {
    let mut job = job.clone();
    let turned = |offset: Offset| Offset(-offset.length());
    for piece in &mut job.pieces {
        for port in &mut piece.ports {
            port.from = toward(port.from);
        }
    }
    for mount in &mut job.mounts {
        std::mem::swap(&mut mount.play_left, &mut mount.play_right);
        let Some(plate) = &mut mount.plate else { continue };
        plate.holes.iter_mut().for_each(|hole| hole.right = turned(hole.right));
        plate.slots.iter_mut().for_each(|slot| slot.right = turned(slot.right));
        for solid in &mut plate.solids {
            (solid.left, solid.right) = (turned(solid.right), turned(solid.left));
        }
    }
    for wall in &mut job.walls {
        std::mem::swap(&mut wall.left_end, &mut wall.right_end);
        wall.floor.iter_mut().for_each(|floor| reading(&mut floor.at));
        for feature in &mut wall.features {
            across(&mut feature.across);
            upright(&mut feature.upright);
        }
        for hit in &mut wall.hits {
            reading(&mut hit.x);
            hit.kind = match hit.kind {
                HitKind::LeftEdge => HitKind::RightEdge,
                HitKind::RightEdge => HitKind::LeftEdge,
                other => other,
            };
        }
        for hanging in wall.options.iter_mut().flat_map(|option| &mut option.hangings) {
            hanging.nudge.right = turned(hanging.nudge.right);
            if let AcrossRule::Beside { from, toward: way, .. } = &mut hanging.across {
                *from = datum(from);
                *way = way.map(toward);
            }
        }
    }
    job
}
