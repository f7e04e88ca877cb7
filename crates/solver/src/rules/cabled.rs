//! A piece of the plan whose cables are planned, with what the job says of it. Shared by the rules of cables.

use super::hung::{self, Hung};
use super::plane::framing_at;
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Rect;
use crate::job::Job;
use crate::job::framing::{WallFraming, WoodStuds};
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::{CablePlan, Crosses, Way, WayBy};

/// A piece and its cables.
pub(super) struct Cabled<'a> {
    pub(super) hung: Hung<'a>,
    pub(super) cable: &'a CablePlan,
    pub(super) framing: Option<&'a WallFraming>,
}

impl<'a> Cabled<'a> {
    /// The way, where it is inside the wall.
    pub(super) fn in_wall(&self) -> Option<&'a Way> {
        self.cable.way.as_ref().filter(|way| way.by == WayBy::InWall)
    }

    /// The openings of a way inside the wall: behind the piece, and the exit.
    pub(super) fn openings(&self) -> Vec<(Rect, bool)> {
        let Some(way) = self.in_wall() else { return Vec::new() };
        way.entry.map(|entry| (entry, false)).into_iter().chain([(way.exit, true)]).collect()
    }

    /// Where a way inside the wall passes studs and blocks, each as large as what is bored there.
    pub(super) fn passages(&self) -> impl Iterator<Item = Rect> + '_ {
        let half = self.cable.bore.value / 2.0;
        let crosses = self.in_wall().into_iter().flat_map(|way| &way.crosses);
        crosses.filter_map(Crosses::passage).map(move |at| Rect::at(at).grown(half))
    }

    /// Wood studs, where the wall is said to have them.
    pub(super) fn wood(&self) -> Option<&'a WoodStuds> {
        match self.framing {
            Some(WallFraming::Wood(studs)) => Some(studs),
            _ => None,
        }
    }

    /// How deep the framing is, where told.
    pub(super) fn depth(&self) -> Option<crate::units::Length> {
        match self.framing {
            Some(WallFraming::Wood(studs)) => studs.depth,
            Some(WallFraming::Steel(studs)) => studs.depth,
            _ => None,
        }
    }
}

/// Every piece whose cables are planned.
pub(super) fn all<'a>(job: &'a Job, wall: &'a Wall, plan: &'a Plan) -> Vec<Cabled<'a>> {
    let cabled = hung::all(job, wall, plan).into_iter().filter_map(|hung| {
        let cable = hung.at.cable.as_ref()?;
        Some(Cabled { hung, cable, framing: framing_at(wall, &plan.survey, hung.at.outline.centre()) })
    });
    cabled.collect()
}

/// A finding about a piece's cables.
pub(super) fn told(of: &Cabled<'_>, level: Level, mend: Mend, what: CableWhat) -> Finding {
    Finding { level, subject: of.hung.at.id.whole(), what: What::Cable(what), mend }
}
