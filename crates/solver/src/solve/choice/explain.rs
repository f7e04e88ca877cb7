//! The working of a choice: the same functions as the choice's own, with a ledger that keeps every step.

use super::kind::Kind;
use super::sets::Set;
use super::site::Site;
use super::tell::worst;
use super::{Candidates, Place};
use crate::capacity::case::{Case, CaseName};
use crate::capacity::group::{Ask, Demand, Group};
use crate::capacity::hold::Hold;
use crate::capacity::posture::case;
use crate::capacity::used::used;
use crate::ledger::{Ledger as _, Part, Step, Working};
use crate::plan::explained::{About, CaseTotals, Explained, Section};
use crate::plan::verdict::Fastening;
use crate::subject::Subject;

/// What is explained.
pub(super) struct Explains<'a> {
    pub(super) candidates: &'a Candidates<'a>,
    pub(super) site: &'a Site<'a>,
    pub(super) place: &'a Place,
    pub(super) fastening: &'a Fastening,
    pub(super) chosen: Option<(&'a Kind<'a>, &'a Set)>,
}

impl Explains<'_> {
    /// The working of what was chosen.
    pub(super) fn explained(&self) -> Explained {
        let mut sections = Vec::new();
        let mut cases = Vec::new();
        if let Some((kind, set)) = self.chosen {
            self.of_set(kind, set, &mut sections, &mut cases);
        }
        sections.retain(|section| !section.steps.is_empty());
        Explained { piece: self.candidates.piece.clone(), sections, cases }
    }

    fn of_set(&self, kind: &Kind<'_>, set: &Set, sections: &mut Vec<Section>, totals: &mut Vec<CaseTotals>) {
        let table = self.candidates.table(self.site, kind, self.place);
        let cases = table.cases(set.mask);
        let demand = table.demand(set.mask, cases);
        let seats = table.seats(set.mask);
        let verdict = &self.fastening.verdict;
        let governing = verdict.governing.as_ref();
        let named = |name: CaseName| cases.iter().position(|case| case.name == name);

        if let Some(governing) = governing {
            self.add_case(governing.case, sections);
        }
        if let Some((name, _)) = verdict.uncarried {
            self.add_case(name, sections);
        }
        self.one_fastener(kind, seats.iter().any(|seat| seat.across), sections);

        let mut working = Working::default();
        working.begin(Part::Group);
        let group = Group::of(&mut working, &seats, table.edges(), self.site.places);
        sections.push(Section { about: About::Group, steps: working.part(Part::Group) });
        let Ok(group) = group else { return };
        if let Some((name, _)) = verdict.uncarried
            && let Some(at) = named(name).and_then(|at| cases.get(at))
        {
            let mut working = Working::default();
            // What of it can be worked out is written down before it is refused.
            let _refused = group.asked(&mut working, 0, at).err();
            sections.push(Section { about: About::Uncarried(name), steps: working.steps });
        }
        if let (Ok(demand), Some(hold)) = (&demand, &table.hold)
            && governing.is_some()
        {
            // Of all cases, as the verdict tells them kind by kind.
            if let Ok(of_all) = table.demand(set.mask, table.all_cases()) {
                *totals = self.totals(table.all_cases(), &of_all, hold);
            }
            let mut asked = self.asked(&group, cases, demand, hold);
            // The one that governs goes first; the cases of the others are told before them.
            asked.sort_by_key(|section| !matches!(section.about, About::Asked { governs: true, .. }));
            for section in asked {
                if let About::Asked { case, .. } = section.about {
                    self.add_case(case, sections);
                }
                sections.push(section);
            }
        }
        let mut lead = Working::default();
        if let Ok(same) = Kind::of(&mut lead, self.site, kind.stock, kind.diameter, kind.length) {
            lead.begin(Part::Lead);
            let _bit = same.bit(&mut lead, self.site);
            let _depth = same.depth(&mut lead, self.site);
        }
        sections.push(Section { about: About::Lead, steps: lead.part(Part::Lead) });
        self.room(kind, table.members(set.mask).map(|one| one.hole), sections);
    }

    /// What each fastener needs round it, and what each has.
    fn room(&self, kind: &Kind<'_>, holes: impl Iterator<Item = usize>, sections: &mut Vec<Section>) {
        let mut needs = Working::default();
        let mut rooms = Vec::new();
        for (index, hole) in holes.filter_map(|index| Some((index, self.place.holes.get(index)?))) {
            let _same = kind.seat(&mut needs, self.site, index, hole).ok();
            let mut room = Working::default();
            let _same = kind.seat(&mut room, self.site, index, hole).ok();
            let steps = room.part(Part::Room);
            rooms.push(Section { about: About::Room(hole.subject.clone()), steps });
        }
        needs.begin(Part::Needs);
        let _apart = kind.apart(&mut needs, self.site);
        sections.push(Section { about: About::Needs, steps: needs.part(Part::Needs) });
        sections.extend(rooms);
    }

    /// A case in full, where it was not told before; what it shares with one that was told is left out.
    fn add_case(&self, name: CaseName, sections: &mut Vec<Section>) {
        let cases = || sections.iter().filter(|section| matches!(section.about, About::Case(_)));
        if cases().any(|section| section.about == About::Case(name)) {
            return;
        }
        let mut working = Working::default();
        let _same = case(&mut working, &self.candidates.load.at(self.place.offset), name).ok();
        let mut steps = working.part(Part::Places);
        steps.retain(|step| !cases().any(|section| section.steps.contains(step)));
        steps.extend(working.part(Part::Totals));
        sections.push(Section { about: About::Case(name), steps });
    }

    /// What one fastener carries, part by part; across the studs only where one that is used carries that way. What two
    /// parts share is told once.
    fn one_fastener(&self, kind: &Kind<'_>, across: bool, sections: &mut Vec<Section>) {
        let mut working = Working::default();
        let _same = Kind::of(&mut working, self.site, kind.stock, kind.diameter, kind.length).ok();
        let mut told: Vec<Step> = Vec::new();
        for part in [Part::Depth, Part::Along, Part::Across, Part::Pull, Part::Printed] {
            if part == Part::Across && !across {
                continue;
            }
            let mut steps = working.part(part);
            steps.retain(|step| !told.contains(step));
            told.extend(steps.iter().cloned());
            sections.push(Section { about: About::Carries(part), steps });
        }
    }

    /// What its worst case asks of each fastener.
    fn asked(&self, group: &Group, cases: &[Case], demand: &Demand, hold: &Hold) -> Vec<Section> {
        let governing = self.fastening.verdict.governing.as_ref();
        let mut sections = Vec::new();
        for (seat, fastener) in self.fastening.fasteners.iter().enumerate() {
            let governs = governing.is_some_and(|governing| governing.hole == fastener.subject);
            // Of cases that use as much the verdict names the first: so does its working.
            let worst = worst(demand, hold, seat).map(|(ask, _)| ask.case);
            let Some(at) = worst.and_then(|at| cases.get(at)) else { continue };
            let mut working = Working::default();
            self.use_of(&mut working, group, (seat, at), hold);
            let hole = fastener.subject.clone();
            sections
                .push(Section { about: About::Asked { hole, case: at.name, governs }, steps: working.steps });
        }
        sections
    }

    fn use_of(&self, working: &mut Working, group: &Group, (seat, at): (usize, &Case), hold: &Hold) {
        let Ok(asked) = group.asked(working, seat, at) else { return };
        if let Ok(used) = used(working, &asked, hold, at.lasting) {
            let _reserve =
                used.reserve(working, self.candidates.most_reserve, hold.label().weaker(asked.label));
        }
    }

    /// Every case by its totals.
    fn totals(&self, cases: &[Case], demand: &Demand, hold: &Hold) -> Vec<CaseTotals> {
        let hole =
            |ask: &Ask| -> Option<Subject> { Some(self.fastening.fasteners.get(ask.seat)?.subject.clone()) };
        let by_case = demand.by_case(hold);
        let told = by_case.into_iter().filter_map(|(at, found)| {
            let case = cases.get(at)?;
            let worst = found.ok().and_then(|(ask, used)| Some((hole(&ask)?, used.value)));
            Some(CaseTotals {
                name: case.name,
                down_n: case.down_n,
                in_plane_nmm: case.down_x_nmm,
                out_of_plane_nmm: case.down_z_nmm,
                out_n: case.out.map(|out| out.n),
                worst,
            })
        });
        told.collect()
    }
}
