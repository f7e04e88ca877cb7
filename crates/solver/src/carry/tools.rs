//! What measures, lifts and cleans.

use super::fasteners::whose;
use super::{Asks, Carried, CarryLine, Whose};
use crate::finding::What;
use crate::job::Job;
use crate::job::kit::MeasureKind;
use crate::job::wall::ControlLine;
use crate::plan::Plan;
use crate::plan::mark::{How, Mark, MarkWhat, ReadingDatum};

pub(super) fn tools(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    let mut ask = |what: Carried, count: Option<usize>, why: Asks| {
        lines.push(CarryLine { what, count, why, short_by: None });
    };
    let all = || plans.iter().flat_map(|plan| &plan.findings).map(|finding| &finding.what);
    let heavy =
        all().filter_map(|what| if let What::HeavyLift { mass, .. } = what { Some(*mass) } else { None });
    if let Some(heaviest) = heavy.max_by(|a, b| a.kg().total_cmp(&b.kg())) {
        ask(Carried::SecondPerson, Some(1), Asks::Weight(heaviest));
    }
    let held = held(job, plans);
    if !held.is_empty() {
        ask(Carried::Ledger, None, Asks::HeldPlates(held));
    }
    if all().any(|what| matches!(what, What::PlateOverHump { .. })) {
        ask(Carried::Shims, None, Asks::OutOfFlat);
    }
    let mut measures = vec![(Carried::TapeMeasure, Asks::Marks, vec![MeasureKind::Tape])];
    measures.extend(by_readings(job, plans));
    measures.push((Carried::Level, Asks::Marks, vec![MeasureKind::SpiritLevel]));
    for (what, why, kinds) in measures {
        lines.push(CarryLine { what, count: None, why, short_by: lacks(job, &kinds) });
    }
    let mut ask = |what: Carried, why: Asks| {
        lines.push(CarryLine { what, count: None, why, short_by: None });
    };
    ask(Carried::Marking, Asks::Marks);
    for what in [Carried::Detector, Carried::Awl, Carried::Tester, Carried::Vacuum, Carried::DropCloth] {
        ask(what, Asks::Drilling);
    }
    lines
}

/// A kit that tells of no measures does not count them.
fn lacks(job: &Job, kinds: &[MeasureKind]) -> Option<usize> {
    let is_there = kinds.iter().any(|kind| job.kit.has(*kind));
    (!is_there && !job.kit.measures.is_empty()).then_some(1)
}

/// The pieces whose plates are held for their first hole.
fn held(job: &Job, plans: &[&Plan]) -> Vec<Whose> {
    let is_held =
        |mark: &&Mark| mark.is_needed && matches!(mark.what, MarkWhat::Hole { first: true, held: true, .. });
    let of_plan = |plan: &&Plan| {
        let marks = plan.marks.iter().filter(is_held);
        let pieces = marks.filter_map(|mark| plan.pieces.iter().find(|piece| piece.id == mark.piece));
        pieces.map(|piece| whose(job, plan, piece)).collect::<Vec<_>>()
    };
    plans.iter().flat_map(of_plan).collect()
}

/// What the readings of the marks are taken with besides a tape, and which of the kit's tools do.
fn by_readings(job: &Job, plans: &[&Plan]) -> Vec<(Carried, Asks, Vec<MeasureKind>)> {
    let (mut of_ticks, mut of_line, mut of_meter) = (0, 0, 0);
    for plan in plans {
        let readings = plan.marks.iter().filter(|mark| mark.is_needed).flat_map(|mark| &mark.readings);
        for reading in readings {
            of_meter += usize::from(reading.how == How::Meter);
            if reading.from == ReadingDatum::ControlLine {
                match job.wall(&plan.wall).and_then(|wall| wall.control_line) {
                    Some(ControlLine::LaserTicks) => of_ticks += 1,
                    Some(ControlLine::Line) | None => of_line += 1,
                }
            }
        }
    }
    let mut lines = Vec::new();
    if of_ticks > 0 {
        lines.push((Carried::LineLaser, Asks::LaserReadings(of_ticks), vec![MeasureKind::LineLaser]));
    }
    if of_line > 0 {
        let kinds = vec![MeasureKind::LineLaser, MeasureKind::WaterLevel];
        lines.push((Carried::LaserOrWaterLevel, Asks::LineReadings(of_line), kinds));
    }
    if of_meter > 0 {
        let kinds = vec![MeasureKind::DistanceMeter];
        lines.push((Carried::DistanceMeter, Asks::MeterReadings(of_meter), kinds));
    }
    lines
}
