//! A group that was chosen and does not change, to be weighed under other loads.

use super::Candidates;
use super::kind::kinds;
use super::site::Site;
use crate::capacity::group::{Group, Word};
use crate::capacity::hold::Hold;
use crate::capacity::steel::group_on_steel;
use crate::ledger::Blank;
use crate::plan::verdict::Fastening;
use crate::solve::load::Load;
use crate::units::Length;

/// Fasteners in their holes, with the plate at its place.
pub(in super::super) struct Fixed {
    group: Group,
    hold: Hold,
    offset: Length,
}

impl Candidates<'_> {
    /// The fasteners that a plan chose, with the plate where it has it; `None` where they are not all to be found, or
    /// no published value carries them.
    pub(in super::super) fn fixed(&self, offset: Length, chosen: &Fastening) -> Option<Fixed> {
        let rest = self.offsets().first().copied().unwrap_or_default();
        let middle = self.middle(rest);
        let site =
            Site::of(self.ground, &self.mount.id, self.plate, self.plate_assumed, &self.kit.bits, middle);
        let stock = &chosen.fasteners.first()?.stock;
        let (kinds, _) = kinds(&site, &self.kit.fasteners, &[stock]);
        let kind = kinds.iter().find(|kind| kind.stock.id == *stock)?;
        let place = self.place(offset);
        let table = self.table(&site, kind, &place);
        let seat = |hole: &crate::subject::Id| {
            let index = place.holes.iter().position(|one| one.id == *hole)?;
            Some(table.seated.iter().find(|one| one.hole == index)?.seat)
        };
        let of_kind = chosen.fasteners.iter().filter(|one| one.stock == *stock);
        let seats: Option<Vec<_>> = of_kind.map(|one| seat(&one.hole)).collect();
        let seats = seats.filter(|seats| seats.len() == chosen.fasteners.len())?;
        let asked = table.edges();
        if table.is_steel() {
            group_on_steel(&seats, self.load.swings_out).ok()?;
        }
        let group = Group::of(&mut Blank, &seats, asked, site.places).ok()?;
        Some(Fixed { group, hold: table.hold?, offset })
    }
}

impl Fixed {
    /// Whether they hold a load by published values.
    pub(in super::super) fn holds(&self, load: &Load) -> bool {
        let Ok(cases) = load.cases(self.offset) else { return false };
        self.hold.label().bears(false) && self.group.demand(&cases).against(&self.hold).word() == Word::Holds
    }
}
