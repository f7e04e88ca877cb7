//! Marks of the cables' openings, and the steps of hanging in their order.

use super::{Site, mark, step};
use crate::geometry::Axis;
use crate::plan::cable::{Crosses, Way, WayBy};
use crate::plan::mark::{Mark, MarkWhat, Planned, Stage};
use crate::plan::piece::PiecePlan;

/// What the mark of a raceway's end is called.
pub(in super::super) const RACEWAY: &str = "raceway";

/// What the names of passages begin with.
pub(in super::super) const PASSAGE: &str = "passage-";

impl Site<'_> {
    /// A look into the bay, the opening behind the piece, and the one where the cables come out.
    pub(super) fn openings(&self, piece: &PiecePlan, marks: &mut Vec<Mark>) {
        let Some(cable) = &piece.cable else { return };
        let Some(way) = &cable.way else { return };
        if way.by == WayBy::OnFace {
            let mut end = mark(piece, RACEWAY, Stage::Open, MarkWhat::RacewayEnd, way.exit.centre());
            end.on_tape = true;
            end.assumed = piece.assumed;
            self.read(end, &[Axis::Across, Axis::Upright], piece, marks);
            return;
        }
        // No cord of power goes inside a wall: nothing is opened for one.
        if cable.leads_cord_inside() {
            return;
        }
        let Some(entry) = way.entry else { return };
        let place = entry.centre();
        for (name, stage, what) in
            [("look", Stage::Probe, MarkWhat::Look), ("entry", Stage::Open, MarkWhat::Entry)]
        {
            // A look tells where studs are: it waits for none.
            let waits = cable.opens_blind() && what == MarkWhat::Entry;
            let mut opening = mark(piece, name, stage, what, place);
            opening.outline = Some(entry);
            let Some(mount) = &piece.mount else {
                opening.assumed = piece.assumed || waits;
                self.read(opening, &[Axis::Across, Axis::Upright], piece, marks);
                continue;
            };
            opening.readings = self.line_readings(piece, self.in_plate(mount, place), place);
            opening.assumed = mount.assumed || mount.holes_assumed || waits;
            opening.planned = mount.entry_wanted.map(|wanted| {
                let place = wanted.centre();
                Planned {
                    place,
                    line: None,
                    readings: self.line_readings(piece, self.in_plate(mount, place), place),
                }
            });
            marks.push(opening);
        }
        self.passages(piece, way, cable.opens_blind(), marks);
        let mut exit = mark(piece, "exit", Stage::Open, MarkWhat::Exit, way.exit.centre());
        exit.outline = Some(way.exit);
        exit.on_tape = true;
        exit.assumed = piece.assumed
            || piece.mount.as_ref().is_some_and(|mount| mount.holes_assumed)
            || cable.opens_blind();
        self.read(exit, &[Axis::Across, Axis::Upright], piece, marks);
    }

    /// The places where the face is opened to pass a stud or a block, from the entry on.
    fn passages(&self, piece: &PiecePlan, way: &Way, waits: bool, marks: &mut Vec<Mark>) {
        let passed = way.crosses.iter().filter_map(|crosses| Some((crosses, crosses.passage()?)));
        for (index, (crosses, place)) in passed.enumerate() {
            // What nobody saw at its height may be at another.
            let is_supposed = match crosses {
                Crosses::Hidden(id, ..) => {
                    self.survey.hidden.iter().any(|hidden| hidden.id == *id && hidden.assumed)
                }
                Crosses::Stud(_) | Crosses::Insulation => false,
            };
            let name = format!("{PASSAGE}{}", index + 1);
            let mut passage = mark(piece, &name, Stage::Open, MarkWhat::Passage, place);
            passage.on_tape = !piece.outline.holds(place);
            passage.assumed = piece.assumed || waits || is_supposed;
            self.read(passage, &[Axis::Across, Axis::Upright], piece, marks);
        }
    }

    /// Cables fed, those plugged that no hand reaches later, the piece lifted on and locked, the rest plugged and all
    /// tried.
    pub(super) fn hanging_steps(&self, piece: &PiecePlan, marks: &mut Vec<Mark>) {
        let has_ports = piece.ports.iter().any(|port| port.used);
        let has_leads = piece.cable.as_ref().is_some_and(|cable| !cable.leads.is_empty());
        let before =
            piece.cable.as_ref().is_some_and(|cable| cable.leads.iter().any(|lead| lead.before_lift));
        if has_leads {
            marks.push(step(piece, "feed", Stage::Hang, MarkWhat::Feed));
        }
        if before || (has_ports && !has_leads) {
            marks.push(step(piece, "plug", Stage::Hang, MarkWhat::Plug));
        }
        marks.push(step(piece, "lift_on", Stage::Hang, MarkWhat::LiftOn));
        if has_ports {
            marks.push(step(piece, "test", Stage::Hang, MarkWhat::Test));
        }
    }
}
