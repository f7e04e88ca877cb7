//! What measures, lifts and cleans.

use super::{Asks, Carried, CarryLine};
use crate::finding::What;
use crate::job::Job;
use crate::plan::Plan;

/// A mounting pattern has so many threads (common practice, no source).
const THREADS: usize = 4;

pub(super) fn tools(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    let mut ask = |what: Carried, count: Option<usize>, why: Asks| {
        lines.push(CarryLine { what, count, why, short_by: None });
    };
    let hung = plans.iter().flat_map(|plan| &plan.pieces).filter(|piece| piece.mount.is_some());
    let hung: Vec<_> = hung.filter_map(|piece| job.piece(&piece.id)).collect();
    for piece in &hung {
        let pattern = piece.pattern.as_ref();
        let (thread, insert) =
            (pattern.and_then(|pattern| pattern.thread), pattern.and_then(|pattern| pattern.insert_depth));
        ask(
            Carried::PieceScrews { thread, insert },
            Some(THREADS),
            Asks::Piece(piece.name.clone().unwrap_or_default()),
        );
    }
    let all = || plans.iter().flat_map(|plan| &plan.findings).map(|finding| &finding.what);
    let heavy =
        all().filter_map(|what| if let What::HeavyLift { mass, .. } = what { Some(*mass) } else { None });
    if let Some(heaviest) = heavy.max_by(|a, b| a.kg().total_cmp(&b.kg())) {
        ask(Carried::SecondPerson, Some(1), Asks::Weight(heaviest));
    }
    if all().any(|what| matches!(what, What::PlateOverHump { .. })) {
        ask(Carried::Shims, None, Asks::OutOfFlat);
    }
    ask(Carried::TapeMeasure, None, Asks::Marks);
    ask(Carried::Level, None, Asks::Marks);
    ask(Carried::Marking, None, Asks::Marks);
    for what in [Carried::Detector, Carried::Awl, Carried::Tester, Carried::Vacuum, Carried::DropCloth] {
        ask(what, None, Asks::Drilling);
    }
    lines
}
