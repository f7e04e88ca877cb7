//! A piece at its place and, seen through it, its plate, brackets, holes, ports and the cables' opening.

use crate::ink::Ink;
use crate::pen::{Pen, turned};
use crate::symbol;
use strikeline_solver::job::Job;
use strikeline_solver::plan::cable::{Way, WayBy};
use strikeline_solver::plan::piece::{MountedPlan, PiecePlan};
use strikeline_solver::plan::verdict::{EmptyWhy, Fastening};
use strikeline_solver::subject::Id;

/// Draws a piece and what it hangs on.
pub(super) fn hung(pen: &mut Pen<'_>, job: &Job, piece: &PiecePlan) {
    if let Some(mounted) = &piece.mount {
        mount(pen, job, mounted);
    }
    if let Some(way) = piece.cable.as_ref().and_then(|cable| cable.way.as_ref()) {
        cable(pen, piece, way);
    }
    for port in &piece.ports {
        pen.take(piece.id.part(port.id.as_str()), piece.assumed);
        let at = pen.at(port.place);
        symbol::port::port(pen, at, port.used);
    }
    pen.take(piece.id.whole(), piece.assumed);
    symbol::display::piece(pen, piece.kind, piece.outline, piece.frame);
}

/// Whether a hole was chosen by hand to be used, or to stay empty; `None` where the plan decided.
fn by_hand(fastening: &Fastening, hole: &Id) -> Option<bool> {
    let used = fastening.fasteners.iter().any(|one| one.hole == *hole && one.by_hand);
    let empty = fastening.left_empty.iter().find(|one| one.hole == *hole);
    match empty {
        Some(empty) if empty.wanted => Some(true),
        Some(empty) if empty.why == EmptyWhy::ByHand => Some(false),
        _ => used.then_some(true),
    }
}

/// The cables' openings and the run between them.
fn cable(pen: &mut Pen<'_>, piece: &PiecePlan, way: &Way) {
    let assumed = piece.has_assumed_openings();
    pen.take(piece.id.part("run"), assumed);
    // A raceway is seen, a run in the wall is not.
    let ink = match way.by {
        WayBy::InWall => Ink::CableRun,
        WayBy::OnFace => Ink::Feature,
    };
    for pair in way.run.windows(2) {
        if let [from, to] = pair {
            let (from, to) = (pen.at(*from), pen.at(*to));
            pen.line(ink, from, to);
        }
    }
    if let Some(entry) = way.entry {
        pen.take(piece.id.part("entry"), assumed);
        symbol::entry::entry(pen, entry);
        pen.take(piece.id.part("exit"), assumed);
        symbol::entry::entry(pen, way.exit);
    }
}

fn mount(pen: &mut Pen<'_>, job: &Job, mounted: &MountedPlan) {
    pen.take(mounted.id.whole(), mounted.assumed);
    for &bracket in &mounted.brackets {
        let corners = turned(bracket, mounted.frame).map(|corner| pen.at(corner));
        pen.outline(Ink::Bracket, &corners);
    }
    pen.take(mounted.id.whole(), mounted.assumed);
    // A plate of no known parts is drawn as its outline.
    let outline = [mounted.plate];
    let solids = if mounted.solids.is_empty() { &outline } else { mounted.solids.as_slice() };
    for &solid in solids {
        let corners = turned(solid, mounted.frame).map(|corner| pen.at(corner));
        pen.shape(Ink::Plate, &corners);
    }
    let plate = job.mount(&mounted.id).and_then(|mount| mount.plate.as_ref());
    for hole in &mounted.holes {
        pen.take(hole.subject.clone(), mounted.assumed);
        let slot = plate.and_then(|plate| plate.slots.iter().find(|slot| slot.id == hole.id));
        if let Some(slot) = slot {
            symbol::slot::slot(pen, slot, mounted.frame, Ink::Hole(hole.meets));
        }
        let round = plate.and_then(|plate| plate.holes.iter().find(|round| round.id == hole.id));
        let at = pen.at(hole.place);
        let diameter = round.and_then(|round| round.diameter);
        symbol::hole::hole(pen, at, diameter, hole.meets);
        if mounted.fastening.fasteners.iter().any(|fastener| fastener.hole == hole.id) {
            symbol::hole::in_use(pen, at, diameter, hole.meets);
        }
        if let Some(is_used) = by_hand(&mounted.fastening, &hole.id) {
            symbol::hole::by_hand(pen, at, diameter, hole.meets, is_used);
        }
    }
}
