//! Step 6: the way of a piece's cables: where the wall is opened behind it, where they run and come out low, and what
//! else would do. A flexible cord is never led into the wall (NEC 400.12): of power only the ports are told.

mod bays;
mod ends;
mod hidden_zone;
mod leads;
mod may_hide;
mod openings;
mod plate_opening;
mod space;
mod tell;
mod ways;

use super::holes::Ground;
use crate::geometry::{Point, Rect};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::{CableWay, CableWish, Hanging};
use crate::job::piece::Piece;
use crate::job::port::{Carries, Port};
use crate::plan::cable::CablePlan;
use crate::plan::piece::PiecePlan;
use crate::subject::Id;
use crate::units::Length;

/// What else is on the wall: of all pieces that hang there.
#[derive(Clone, Copy, Default)]
pub(super) struct Around<'a> {
    /// Their outlines.
    pub(super) outlines: &'a [Rect],
    /// Their fasteners, each as wide as it is.
    pub(super) fastened: &'a [Rect],
    /// The solid parts of their plates.
    pub(super) solids: &'a [Rect],
    /// The openings for the cables of those that are planned before.
    pub(super) opened: &'a [Rect],
}

/// A piece whose cables are planned, and all that they depend on.
pub(super) struct Cabling<'a> {
    pub(super) job: &'a Job,
    pub(super) ground: Ground<'a>,
    pub(super) wishes: &'a [CableWish],
    pub(super) wished: &'a CableWay,
    pub(super) piece: &'a Piece,
    pub(super) mount: Option<&'a Mount>,
    pub(super) at: &'a PiecePlan,
    pub(super) around: Around<'a>,
    /// Whether openings that were struck or cut hold nothing: to see where they would be.
    pub(super) is_free: bool,
}

impl<'a> Cabling<'a> {
    pub(super) fn of(
        job: &'a Job,
        ground: Ground<'a>,
        hanging: &'a Hanging,
        piece: &'a Piece,
        at: &'a PiecePlan,
        around: Around<'a>,
    ) -> Self {
        let mount = at.mount.as_ref().and_then(|mount| job.mount(&mount.id));
        Self {
            job,
            ground,
            wishes: &hanging.cables,
            wished: &hanging.way,
            piece,
            mount,
            at,
            around,
            is_free: false,
        }
    }

    /// The way of its cables; `None` where it has no port. `taken` are the cables of the kit that others took, and then
    /// these.
    pub(super) fn plan(&self, taken: &mut Vec<Id>) -> Option<CablePlan> {
        let used = |port: &&Port| self.at.ports.iter().any(|at| at.id == port.id && at.used);
        if self.piece.ports.is_empty() {
            return None;
        }
        let (data, power): (Vec<&Port>, Vec<&Port>) =
            self.piece.ports.iter().filter(used).partition(|port| port.carries == Carries::Data);
        let mut leads: Vec<_> = data.iter().map(|port| self.lead(port)).collect();
        let found = self.ways(&leads);
        for lead in &mut leads {
            self.measure(lead, found.ways.first(), taken);
        }
        Some(self.told(found, leads, power.into_iter().map(|port| port.id.clone()).collect()))
    }

    /// Where the entry would be were it not struck or cut already, where that is elsewhere by more than a graduation.
    pub(super) fn wanted_entry(&self, cable: Option<&CablePlan>) -> Option<Rect> {
        self.cut("entry")?;
        let found = Cabling { is_free: true, ..*self }.ways(&cable?.leads);
        let wanted = found.ways.first()?.entry?;
        let cut = cable?.way.as_ref()?.entry?;
        let step = self.job.style().length_of(1);
        let is_elsewhere = (wanted.left - cut.left).abs() > step || (wanted.bottom - cut.bottom).abs() > step;
        is_elsewhere.then_some(wanted)
    }

    /// The middle of the used ports of low voltage; `None` where there is none.
    fn ports_middle(&self) -> Option<Point> {
        let is_data =
            |id: &Id| self.piece.ports.iter().any(|port| port.id == *id && port.carries == Carries::Data);
        let places: Vec<Point> = self
            .at
            .ports
            .iter()
            .filter(|port| port.used && is_data(&port.id))
            .map(|port| port.place)
            .collect();
        // A handful of ports: the count is exact as f64.
        #[expect(clippy::cast_precision_loss, reason = "far below 2^52 ports")]
        let share = 1.0 / places.len() as f64;
        let sum = places.iter().copied().reduce(|sum, at| Point::new(sum.x + at.x, sum.y + at.y))?;
        Some(Point::new(sum.x * share, sum.y * share))
    }

    /// From the wall to the piece's back; `None` where not measured.
    fn stand_off(&self) -> Option<Length> {
        self.mount.and_then(|mount| mount.stand_off)
    }
}
