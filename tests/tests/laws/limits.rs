//! No reading breaks the rules of how a tape is held.

use super::room::{plan, rooms};
use proptest::prelude::*;
use std::cell::RefCell;
use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::kit::MeasureKind;
use strikeline_solver::job::wall::End;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{How, Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::plan::survey::PlacedFeature;
use strikeline_solver::subject::Subject;

/// An arm span: 60 in, in millimetres.
const ARM_SPAN_MM: f64 = 1524.0;
/// With the end pinned or hooked: 12 ft.
const PINNED_MM: f64 = 3657.6;
/// Up from the floor.
const REACH_MM: f64 = 2000.0;
/// What a tape's end can be held against: 1/8 in.
const PROUD_MM: f64 = 3.175;
/// What may stand before a distance meter's beam.
const BEAM_MM: f64 = 50.0;
/// Limits include their end, and are held to a nanometre.
const CLOSE_MM: f64 = 2e-6;

struct Ground<'a> {
    job: &'a Job,
    plan: &'a Plan,
}

/// Where a reading is taken to: a level line is read at both its ends.
fn place_of(mark: &Mark, reading: &Reading) -> Point {
    match (mark.line, reading.direction.axis()) {
        (Some((left, right)), Axis::Upright) if mark.readings.len() == 2 => {
            if (left.x - reading.at).mm().abs() < 1e-6 { left } else { right }
        }
        _ => mark.place.unwrap(),
    }
}

impl Ground<'_> {
    fn feature(&self, subject: &Subject) -> &PlacedFeature {
        self.plan.survey.features.iter().find(|feature| feature.id == subject.id).unwrap()
    }

    /// A face that stands out, turned to the mark, as high or as wide as the mark is, on the mark's own plane;
    /// never what hangs at the ceiling, nor a curtain.
    fn butt(&self, subject: &Subject, place: Point, direction: Direction) -> bool {
        let feature = self.feature(subject);
        let faces = match direction {
            Direction::Left => "left",
            Direction::Right => "right",
            Direction::Up => "top",
            Direction::Down => "bottom",
        };
        let firm = !matches!(
            feature.kind,
            FeatureKind::Crown | FeatureKind::Soffit | FeatureKind::Curtain | FeatureKind::ChimneyBreast
        );
        let breast = self.plan.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        // A breast's side, seen from the wall beside it, is such a face too.
        let side_of_breast = feature.kind == FeatureKind::ChimneyBreast && breast.is_none();
        let beside = match direction.axis() {
            Axis::Across => feature.bottom_at(place.x) <= place.y && place.y <= feature.top_at(place.x),
            Axis::Upright => feature.rect.across().holds(place.x),
        };
        subject.part_str() == faces
            && (firm || side_of_breast && direction.axis() == Axis::Across)
            && feature.on.as_ref() == breast
            && feature.proud.mm() >= PROUD_MM - CLOSE_MM
            && beside
    }

    /// An outside end of the wall, or the side of the breast that the mark is on, read from over its corner.
    fn hook(&self, from: &ReadingDatum, place: Point, direction: Direction) -> bool {
        let survey = &self.plan.survey;
        let breast = survey.breast_at(place.x, Some(place.y));
        match (from, direction) {
            (ReadingDatum::LeftEnd, Direction::Right) => {
                survey.left_end == End::OutsideCorner && breast.is_none()
            }
            (ReadingDatum::RightEnd, Direction::Left) => {
                survey.right_end == End::OutsideCorner && breast.is_none()
            }
            (ReadingDatum::Edge(edge), _) => {
                let away = if edge.part_str() == "left" { Direction::Right } else { Direction::Left };
                breast.is_some_and(|breast| breast.id == edge.id) && direction == away
            }
            _ => false,
        }
    }

    fn inside_corner(&self, from: &ReadingDatum, place: Point, direction: Direction) -> bool {
        let survey = &self.plan.survey;
        let end = match (from, direction) {
            (ReadingDatum::LeftEnd, Direction::Right) => survey.left_end,
            (ReadingDatum::RightEnd, Direction::Left) => survey.right_end,
            _ => return false,
        };
        end == End::InsideCorner && survey.breast_at(place.x, Some(place.y)).is_none()
    }

    /// Whether the tape, or the beam, gets past every single thing that stands on its way.
    fn passes(&self, reading: &Reading, place: Point) -> bool {
        let axis = reading.direction.axis();
        let sign = reading.direction.sign();
        let breast = self.plan.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        let (mark_mm, length_mm) = (place.along(axis).mm(), reading.value.mm());
        let from_mm = mark_mm - length_mm * sign;
        let own = match &reading.from {
            ReadingDatum::Edge(edge) => Some(&edge.id),
            _ => None,
        };
        self.plan.survey.features.iter().all(|thing| {
            let across = thing.rect.span(axis.cross()).holds(place.along(axis.cross()));
            let same_plane = thing.on.as_ref() == breast && thing.kind != FeatureKind::ChimneyBreast;
            if !across || !same_plane || Some(&thing.id) == own || thing.rect.holds(place) {
                return true;
            }
            let span = thing.rect.span(axis);
            let (a, b) = ((span.from.mm() - from_mm) * sign, (span.to.mm() - from_mm) * sign);
            let (near, far) = (a.min(b), a.max(b));
            // At a side wall or the floor a thing that stands there starts the tape as far out as it is.
            let plane =
                matches!(reading.from, ReadingDatum::Floor | ReadingDatum::LeftEnd | ReadingDatum::RightEnd);
            if far <= CLOSE_MM || near >= length_mm - CLOSE_MM || plane && near <= CLOSE_MM {
                return true;
            }
            let near = near.max(0.0);
            let (out, far) = (thing.proud.mm(), far.min(length_mm));
            if reading.how == How::Meter {
                return out <= BEAM_MM;
            }
            let slant = |run: f64| (run * run + out * out).sqrt();
            slant(near) + (far - near) + slant(length_mm - far) - length_mm
                < self.plan.style.length_of(1).mm() / 2.0 + CLOSE_MM
        })
    }

    /// A helping mark has a reading of its own and stands where a pencil can: on no pane, door or shelf.
    fn on_bare_wall(&self, help: &Mark) -> bool {
        let place = help.place.unwrap();
        let covered = self
            .plan
            .survey
            .features
            .iter()
            .any(|feature| feature.kind != FeatureKind::ChimneyBreast && feature.rect.holds(place));
        !help.readings.is_empty() && !covered
    }

    /// The one law of each way to hold a tape.
    fn allowed(&self, mark: &Mark, reading: &Reading) -> bool {
        let place = place_of(mark, reading);
        let within = |limit_mm: f64| reading.value.mm() <= limit_mm + CLOSE_MM;
        let passes = self.passes(reading, place);
        match reading.how {
            How::Line => {
                let line =
                    if reading.direction.axis() == Axis::Across { "centre_line" } else { "level_line" };
                reading.from == ReadingDatum::Struck(mark.piece.part(line))
            }
            How::Butt => {
                let ReadingDatum::Edge(edge) = &reading.from else { return false };
                within(PINNED_MM) && passes && self.butt(edge, place, reading.direction)
            }
            How::Hook => within(PINNED_MM) && passes && self.hook(&reading.from, place, reading.direction),
            How::Corner => {
                within(PINNED_MM) && passes && self.inside_corner(&reading.from, place, reading.direction)
            }
            How::Meter => {
                self.job.kit.has(MeasureKind::DistanceMeter)
                    && passes
                    && self.inside_corner(&reading.from, place, reading.direction)
            }
            How::Level => {
                within(PINNED_MM)
                    && passes
                    && reading.from == ReadingDatum::ControlLine
                    && self.job.walls[0].control_line.is_some()
            }
            How::Floor => {
                within(REACH_MM)
                    && passes
                    && reading.from == ReadingDatum::Floor
                    && reading.direction == Direction::Up
            }
            How::Help => match &reading.from {
                ReadingDatum::Struck(help) => {
                    let help = self.plan.marks.iter().find(|mark| mark.id == *help);
                    help.is_some_and(|help| help.what == MarkWhat::Help && self.on_bare_wall(help))
                        && within(PINNED_MM)
                        && passes
                }
                ReadingDatum::Nothing => {
                    self.plan.findings.iter().any(|finding| finding.what.rule() == "with_help")
                }
                _ => false,
            },
        }
    }

    /// A tape longer than an arm span is pinned only where no end of the wall, and no breast's corner, is
    /// nearer than that and open.
    fn no_nearer_end(&self, mark: &Mark, reading: &Reading) -> bool {
        let place = place_of(mark, reading);
        let survey = &self.plan.survey;
        if reading.direction.axis() == Axis::Upright
            || reading.how == How::Line
            || reading.value.mm() <= ARM_SPAN_MM + CLOSE_MM
        {
            return true;
        }
        let near = |from: ReadingDatum, value, direction, end| {
            let how = match end {
                End::InsideCorner => How::Corner,
                End::OutsideCorner => How::Hook,
                End::Open => return false,
            };
            let other = Reading { from, how, direction, value, ..reading.clone() };
            let nothing_between = survey.features.iter().all(|thing| {
                let (a, b) = (place.x, place.x - value * direction.sign());
                !thing.rect.upright().holds(place.y)
                    || thing.rect.right < a.min(b)
                    || thing.rect.left > a.max(b)
            });
            other.value.mm() >= 0.0
                && other.value.mm() <= ARM_SPAN_MM
                && nothing_between
                && self.allowed(mark, &other)
        };
        !near(ReadingDatum::LeftEnd, place.x, Direction::Right, survey.left_end)
            && !near(
                ReadingDatum::RightEnd,
                survey.outline.right - place.x,
                Direction::Left,
                survey.right_end,
            )
    }

    /// A close comes from the other side; a height closes on the top of what is seen below, or on the floor
    /// where it was not read from that.
    fn closes_well(&self, reading: &Reading) -> bool {
        let Some(close) = &reading.close else { return true };
        match (reading.direction.axis(), &close.from) {
            (Axis::Across, _) => {
                close.direction == reading.direction.opposite() && close.from != reading.from
            }
            (Axis::Upright, ReadingDatum::Edge(edge)) => {
                edge.part_str() == "top" && close.direction == Direction::Up && close.from != reading.from
            }
            (Axis::Upright, ReadingDatum::Floor) => {
                close.direction == Direction::Up && reading.from != ReadingDatum::Floor
            }
            (Axis::Upright, _) => false,
        }
    }
}

#[test]
fn no_reading_breaks_its_rules() {
    let count = RefCell::new((0_usize, 0_usize));
    super::runner()
        .run(&rooms(), |room| {
            let job = room.job();
            let plan = plan(&job);
            let ground = Ground { job: &job, plan: &plan };
            for (mark, reading) in
                plan.marks.iter().flat_map(|mark| mark.readings.iter().map(move |one| (mark, one)))
            {
                prop_assert!(reading.value.mm() >= 0.0, "{}", mark.id);
                prop_assert!(ground.allowed(mark, reading), "{}: {reading:?}", mark.id);
                prop_assert!(ground.no_nearer_end(mark, reading), "{}: {reading:?}", mark.id);
                prop_assert!(ground.closes_well(reading), "{}: {reading:?}", mark.id);
                let mut count = count.borrow_mut();
                count.0 += 1;
                count.1 += usize::from(reading.value.mm() > ARM_SPAN_MM);
            }
            Ok(())
        })
        .unwrap();
    let (all, pinned) = count.into_inner();
    assert!(all > 10_000 && pinned > 1000, "{all} readings, {pinned} beyond an arm span");
}
