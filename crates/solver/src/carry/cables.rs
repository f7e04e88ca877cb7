//! Cables, and what opens the wall for them and makes it good.

use super::{Asks, Carried, CarryLine, short};
use crate::finding::What;
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::option::Opening;
use crate::plan::Plan;
use crate::plan::cable::{CablePlan, Crosses, Lead, Way, WayBy};
use crate::plan::mark::{Mark, MarkState};
use crate::route;
use crate::subject::Id;
use crate::units::Length;

pub(super) fn cables(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let planned: Vec<&CablePlan> =
        plans.iter().flat_map(|plan| &plan.pieces).filter_map(|piece| piece.cable.as_ref()).collect();
    let ways: Vec<&Way> = planned.iter().filter_map(|cable| cable.way.as_ref()).collect();
    let mut lines = leads(job, &planned);
    lines.extend(boxes(job, plans));
    let in_wall: Vec<&&Way> = ways.iter().filter(|way| way.by == WayBy::InWall).collect();
    let openings = in_wall.iter().filter(|way| way.entry.is_some()).count() * 2;
    let blocks: usize = ways.iter().map(|way| count(way.cost.blocks)).sum();
    // What was cut or drilled and is of no use any more is made good as well.
    let left = |mark: &&Mark| {
        !mark.is_needed && matches!(mark.state, MarkState::Cut | MarkState::Drilled | MarkState::Stripped)
    };
    let left = plans.iter().flat_map(|plan| &plan.marks).filter(left).count();
    let others = plans.iter().flat_map(|plan| &plan.findings);
    let others = others.filter(|one| matches!(one.what, What::LeftByOption { .. })).count();
    let patches = ways.iter().map(|way| count(way.cost.patches)).sum::<usize>() + left + others;
    let led = planned.iter().map(|cable| cable.leads.len()).sum::<usize>();
    let mut ask = |what: Carried, count: Option<usize>, why: Asks, short_by: Option<usize>| {
        lines.push(CarryLine { what, count, why, short_by });
    };
    if openings > 0 {
        ask(Carried::Saw, None, Asks::Openings(openings), None);
        ask(Carried::Mirror, None, Asks::Openings(openings), None);
        ask(Carried::FishTape, None, Asks::Cables(led), None);
        ask(Carried::PullString, None, Asks::Cables(led), None);
    }
    // Where a hole is so near to the stud's face that it wants one, or that is not known: one on either face.
    let plated: usize = planned
        .iter()
        .filter(|cable| cable.stud.is_none_or(|stud| cable.bore.value > stud.without_plate.value))
        .filter_map(|cable| cable.way.as_ref())
        .map(|way| count(way.cost.studs_bored))
        .sum();
    if plated > 0 {
        let short_by = short(plated * 2, job.kit.nail_plates);
        ask(Carried::NailPlates, Some(plated * 2), Asks::Bored(plated), short_by);
    }
    let is_stud_opening =
        |crosses: &&Crosses| matches!(crosses, Crosses::Hidden(_, HiddenKind::StudOpening, _));
    let passed: usize = in_wall.iter().map(|way| way.crosses.iter().filter(is_stud_opening).count()).sum();
    if passed > 0 {
        ask(Carried::Bushings, Some(passed), Asks::StudOpenings(passed), None);
    }
    if blocks > 0 {
        ask(Carried::FireSeal, None, Asks::Blocks(blocks), None);
    }
    if patches > 0 {
        ask(Carried::Patch, None, Asks::Uncovered(patches), short(patches, job.kit.patches));
    }
    let shown: Length = ways
        .iter()
        .filter(|way| way.by == WayBy::OnFace)
        .map(|way| route::length(way.cost.visible_nm))
        .fold(Length::default(), |sum, one| sum + one);
    if shown > Length::default() {
        ask(Carried::Channel(shown), None, Asks::Cables(led), None);
    }
    lines
}

fn count(number: u32) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

/// The cables, those alike on one line.
fn leads(job: &Job, planned: &[&CablePlan]) -> Vec<CarryLine> {
    let wishes = || job.walls.iter().flat_map(|wall| &wall.options).flat_map(|option| &option.hangings);
    let wished = |lead: &Lead| wishes().flat_map(|hanging| &hanging.cables).find(|wish| wish.id == lead.id);
    let of_kit = |id: &Id| job.kit.cables.iter().find(|one| one.id == *id);
    let mut lines: Vec<(Carried, usize, Option<u32>)> = Vec::new();
    for lead in planned.iter().flat_map(|cable| &cable.leads) {
        let Some(length) = lead.cut_length else { continue };
        let stock = lead.stock.as_ref().and_then(of_kit);
        // Of a kind of which none is long enough the name is told, and that the kit lacks it.
        let named = stock.or_else(|| of_kit(wished(lead)?.cable.as_ref()?));
        let name = named.and_then(|stock| stock.name.clone()).unwrap_or_default();
        let what = Carried::Cable { name, length, stocked: stock.is_some() };
        let stocked = if lead.stock_short { Some(0) } else { stock.and_then(|stock| stock.count) };
        match lines.iter_mut().find(|(other, ..)| *other == what) {
            Some((_, count, _)) => *count += 1,
            None => lines.push((what, 1, stocked)),
        }
    }
    let line = |(what, count, stocked): (Carried, usize, Option<u32>)| CarryLine {
        what,
        count: Some(count),
        why: Asks::Cables(count),
        short_by: short(count, stocked),
    };
    lines.into_iter().map(line).collect()
}

/// Boxes and brackets for the openings that are planned.
fn boxes(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let mut wanted: Vec<(Carried, usize, Option<u32>)> = Vec::new();
    let opened = plans.iter().flat_map(|plan| &plan.pieces).filter(|piece| {
        let way = piece.cable.as_ref().and_then(|cable| cable.way.as_ref());
        way.is_some_and(|way| way.by == WayBy::InWall && way.entry.is_some())
    });
    let all = || job.walls.iter().flat_map(|wall| &wall.options).flat_map(|option| &option.hangings);
    for piece in opened {
        let hanging = all().find(|hanging| hanging.id == piece.hanging);
        let (entry, exit) =
            hanging.map_or((None, None), |one| (one.way.entry_kind.as_ref(), one.way.exit_kind.as_ref()));
        for opening in [entry, exit] {
            let (what, stocked) = match opening {
                Some(Opening::PlainHole) => continue,
                None | Some(Opening::OneGang) => (Carried::Gang { two: false }, None),
                Some(Opening::TwoGang) => (Carried::Gang { two: true }, None),
                Some(Opening::Stocked(id)) => {
                    let stock = job.kit.boxes.iter().find(|stock| stock.id == *id);
                    let name = stock.and_then(|stock| stock.name.clone()).unwrap_or_else(|| id.to_string());
                    (Carried::Box(name), stock.and_then(|stock| stock.count))
                }
            };
            match wanted.iter_mut().find(|(other, ..)| *other == what) {
                Some((_, count, _)) => *count += 1,
                None => wanted.push((what, 1, stocked)),
            }
        }
    }
    let line = |(what, count, stocked): (Carried, usize, Option<u32>)| CarryLine {
        what,
        count: Some(count),
        why: Asks::Openings(count),
        short_by: short(count, stocked),
    };
    wanted.into_iter().map(line).collect()
}
