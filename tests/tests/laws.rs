//! Laws that every plan keeps, on many random rooms.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use proptest::prelude::*;
use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{
    AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::job::wall::{FloorReading, Wall};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{How, Mark, Reading, ReadingDatum};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// A room with a display, a floor that may slope, and features of random kinds and places. No hits.
fn rooms() -> impl Strategy<Value = Job> {
    let feature =
        (0..5_usize, 0.0..3200.0_f64, 40.0..900.0_f64, 0.0..1900.0_f64, 30.0..500.0_f64, 0.0..60.0_f64);
    let size = (2600.0..4800.0_f64, 700.0..1700.0_f64, 400.0..1000.0_f64, 900.0..1700.0_f64);
    (size, -25.0..25.0_f64, prop::collection::vec(feature, 0..6), any::<bool>()).prop_map(
        |((wall, width, height, centre), fall, features, metric)| {
            let features =
                features.into_iter().enumerate().map(|(index, (kind, x, w, y, h, proud))| Feature {
                    id: Id::new(&format!("feature-{index}")),
                    kind: [
                        FeatureKind::Window,
                        FeatureKind::Shelf,
                        FeatureKind::Outlet,
                        FeatureKind::Mantel,
                        FeatureKind::Trim,
                    ][kind],
                    name: None,
                    across: AcrossExtent {
                        left: Some(AcrossReading::from_left(mm(x).quantised())),
                        width: Some(mm(w).quantised()),
                        ..AcrossExtent::default()
                    },
                    upright: UprightExtent {
                        bottom: Some(UprightReading::from_floor(mm(y).quantised())),
                        height: Some(mm(h).quantised()),
                        ..UprightExtent::default()
                    },
                    proud: Some(mm(proud).quantised()),
                    framing: None,
                    notes: None,
                });
            let hanging = Hanging {
                id: Id::new("hanging-1"),
                piece: Id::new("display-1"),
                mount: Some(Id::new("mount-1")),
                hung_on: None,
                across: AcrossRule::OnWall,
                upright: UprightRule::Height {
                    of: PieceHeight::Centre,
                    from: UprightDatum::Floor,
                    toward: None,
                    by: mm(centre).quantised(),
                },
                nudge: Nudge::default(),
                cables: Vec::new(),
            };
            let floor = |id: &str, x: f64, down: f64| FloorReading {
                id: Id::new(id),
                at: AcrossReading::from_left(mm(x)),
                down: mm(down).quantised(),
            };
            let wall = Wall {
                id: Id::new("wall-1"),
                width: Some(mm(wall).quantised()),
                height: Some(mm(2600.0)),
                floor: vec![floor("floor-1", 100.0, 1200.0), floor("floor-2", 2400.0, 1200.0 + fall)],
                features: features.collect(),
                options: vec![WallOption {
                    id: Id::new("option-1"),
                    hangings: vec![hanging],
                    ..WallOption::default()
                }],
                ..Wall::default()
            };
            Job {
                units: Some(if metric { Units::Millimetres } else { Units::Inches }),
                pieces: vec![Piece {
                    id: Id::new("display-1"),
                    width: Some(mm(width).quantised()),
                    height: Some(mm(height).quantised()),
                    ..Piece::default()
                }],
                mounts: vec![Mount { id: Id::new("mount-1"), drop: Some(mm(120.0)), ..Mount::default() }],
                walls: vec![wall],
                ..Job::new()
            }
        },
    )
}

fn plan(job: &Job) -> Plan {
    solve(job, &Id::new("wall-1"), None)
}

/// Where a datum is on the reading's axis; `None` where the datum is nothing that can be stood at.
fn datum(plan: &Plan, from: &ReadingDatum, axis: Axis, at: Length) -> Option<Length> {
    Some(match from {
        ReadingDatum::LeftEnd => mm(0.0),
        ReadingDatum::RightEnd => plan.survey.outline.right,
        ReadingDatum::Floor => plan.survey.floor.y_at(at),
        ReadingDatum::ControlLine => plan.survey.control_line_y?,
        ReadingDatum::Edge(edge) => {
            let feature = plan.survey.features.iter().find(|feature| feature.id == edge.id)?;
            match edge.part_str() {
                "left" => feature.rect.left,
                "right" => feature.rect.right,
                "bottom" => feature.bottom_at(at),
                _ => feature.top_at(at),
            }
        }
        ReadingDatum::Struck(mark) => plan.marks.iter().find(|other| other.id == *mark)?.place?.along(axis),
        ReadingDatum::Nothing => return None,
    })
}

fn target(mark: &Mark, reading: &Reading) -> Point {
    let place = mark.place.unwrap();
    match (mark.line, reading.direction.axis()) {
        // A level line is read at both its ends.
        (Some((left, right)), Axis::Upright) if mark.readings.len() == 2 => {
            if (left.x - reading.at).mm().abs() < 1e-6 { left } else { right }
        }
        _ => place,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn walking_a_reading_lands_on_its_mark_and_its_close_too(job in rooms()) {
        let plan = plan(&job);
        let step_mm = plan.style.length_of(1).mm();
        for mark in &plan.marks {
            for reading in &mark.readings {
                let axis = reading.direction.axis();
                let Some(from) = datum(&plan, &reading.from, axis, reading.at) else { continue };
                let walked = from + plan.style.length_of(reading.steps) * reading.direction.sign();
                let off_mm = (walked - target(mark, reading).along(axis)).mm().abs();
                prop_assert!(off_mm <= step_mm / 2.0 + 1e-6, "{}: off by {off_mm} mm: {reading:?}", mark.id);
                let Some(close) = &reading.close else { continue };
                // A close on the floor stands under the middle of the piece.
                let at = if close.from == ReadingDatum::Floor { plan.pieces[0].ruled_centre.x } else { reading.at };
                let Some(from) = datum(&plan, &close.from, axis, at) else { continue };
                let walked = from + plan.style.length_of(close.closing.second) * close.direction.sign();
                let off_mm = (walked - target(mark, reading).along(axis)).mm().abs();
                prop_assert!(off_mm <= step_mm + 1e-6, "{}: its close is off by {off_mm} mm", mark.id);
            }
        }
    }

    #[test]
    fn no_reading_breaks_its_limits(job in rooms()) {
        let plan = plan(&job);
        for (mark, reading) in plan.marks.iter().flat_map(|mark| mark.readings.iter().map(move |one| (mark, one))) {
            prop_assert!(reading.value.mm() >= 0.0, "{}", mark.id);
            match reading.how {
                How::Butt | How::Hook | How::Corner | How::Level => {
                    prop_assert!(reading.value <= job.settings.pinned_reach() + mm(1e-6), "{}", mark.id);
                }
                How::Floor => {
                    prop_assert!(reading.value <= job.settings.floor_reach() + mm(1e-6), "{}", mark.id);
                    prop_assert!(reading.direction == Direction::Up, "{}", mark.id);
                }
                How::Line | How::Meter | How::Help => {}
            }
        }
    }

    #[test]
    fn a_nudge_moves_every_mark_by_as_much(job in rooms(), right in -40.0..40.0_f64, up in -40.0..40.0_f64) {
        let before = plan(&job);
        let mut nudged = job;
        nudged.walls[0].options[0].hangings[0].nudge =
            Nudge { right: Offset(mm(right).quantised()), up: Offset(mm(up).quantised()) };
        let after = plan(&nudged);
        for mark in before.marks.iter().filter(|mark| !mark.id.to_string().contains("help")) {
            let Some(place) = mark.place else { continue };
            let moved = after.marks.iter().find(|other| other.id == mark.id).and_then(|other| other.place).unwrap();
            prop_assert!((moved.x - place.x - mm(right)).mm().abs() < 1e-5, "{}", mark.id);
            prop_assert!((moved.y - place.y - mm(up)).mm().abs() < 1e-5, "{}", mark.id);
        }
    }

    #[test]
    fn changing_units_moves_nothing_on_the_wall(job in rooms()) {
        let inches = Job { units: Some(Units::Inches), ..job.clone() };
        let metric = Job { units: Some(Units::Millimetres), ..job };
        let (a, b) = (plan(&inches), plan(&metric));
        prop_assert_eq!(a.pieces[0].outline, b.pieces[0].outline);
        let centre = |plan: &Plan| plan.marks.iter().find(|m| m.id.to_string() == "display-1.centre_line").unwrap().place;
        prop_assert_eq!(centre(&a), centre(&b));
    }

    #[test]
    fn mirroring_the_job_mirrors_the_piece_and_its_lines(job in rooms()) {
        let mut mirrored = job.clone();
        let width = job.walls[0].width.unwrap();
        for feature in &mut mirrored.walls[0].features {
            let left = feature.across.left.take().unwrap();
            feature.across.right = Some(AcrossReading {
                from: strikeline_solver::job::place::AcrossDatum::RightEnd,
                ..left
            });
        }
        for reading in &mut mirrored.walls[0].floor {
            reading.at.from = strikeline_solver::job::place::AcrossDatum::RightEnd;
        }
        let (a, b) = (plan(&job), plan(&mirrored));
        for mark in &a.marks {
            let name = mark.id.to_string();
            if name.contains("help") || name.ends_with("level_line") {
                continue;
            }
            let Some(place) = mark.place else { continue };
            let swapped = if name.ends_with("_left") { name.replace("_left", "_right") } else { name.replace("_right", "_left") };
            let other = b.marks.iter().find(|other| other.id.to_string() == swapped).unwrap().place.unwrap();
            prop_assert!((width - other.x - place.x).mm().abs() < 1e-5, "{name}");
            prop_assert!((other.y - place.y).mm().abs() < 1e-5, "{name}");
        }
        let centre = |plan: &Plan| plan.marks.iter().find(|m| m.id.to_string() == "display-1.centre_line").cloned().unwrap();
        let (one, other) = (&centre(&a).readings[0], &centre(&b).readings[0]);
        // A helping mark is tried on the left first: a tie that a mirror turns round.
        if one.how != How::Help && other.how != How::Help {
            let off_mm = (one.value - other.value).mm().abs();
            prop_assert!(off_mm < 1e-5, "{one:?} {other:?}");
        }
    }
}
