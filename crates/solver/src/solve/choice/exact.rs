//! The exact choice, for a plate of up to twelve usable holes: every set at every place, with every position of a slot
//! that stands on a stud's centre or at the slot's ends. Too slow for every plan; asked for with the hand off.

use super::super::holes::in_slot;
use super::kind::Kind;
use super::rank::Rank;
use super::sets::{Set, Table};
use super::site::Site;
use super::{Candidates, Picked, Place};
use crate::capacity::case::Case;
use crate::plan::piece::HolePlan;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

/// More usable holes than this are not tried (chosen: every set of twelve at every place still is a moment's work).
const MOST_EXACT: usize = 12;

/// A slot's other position: the slot's place in the plate's list, and what it meets there.
type Variant = (usize, HolePlan);

impl Candidates<'_> {
    /// The best of all sets, places and slots' positions where it is better than the first choice. The place that it is
    /// at then has its slots' fasteners where they are best.
    pub(super) fn exact(
        &self,
        site: &Site<'_>,
        kinds: &[Kind<'_>],
        places: &mut [Place],
        first: &Picked,
    ) -> Option<Picked> {
        let mut best: Option<(usize, usize, Set, Vec<Variant>)> = None;
        let mut spent = false;
        for (index, place) in places.iter().enumerate() {
            let variants = self.variants(place);
            for (at, kind) in kinds.iter().enumerate() {
                let table = self.table_with(site, kind, place, &variants);
                let to_beat = best.as_ref().map_or(first.set.rank, |(_, _, set, _)| set.rank);
                let (set, is_spent) = table.exact(&to_beat);
                spent |= is_spent;
                if let Some(set) = set {
                    let chosen =
                        table.members(set.mask).filter_map(|one| variants.get(one.variant?).cloned());
                    best = Some((index, at, set, chosen.collect()));
                }
            }
        }
        let (index, at, set, chosen) = best?;
        let (place, kind) = (places.get_mut(index)?, kinds.get(at)?);
        let in_use: Vec<usize> = {
            let table = self.table_with(site, kind, place, &self.variants(place));
            table.members(set.mask).map(|one| one.hole).collect()
        };
        for (hole, variant) in chosen {
            *place.holes.get_mut(hole)? = variant;
        }
        // The same set, its slots' fasteners at their places.
        let table = self.table(site, kind, place);
        let bits = table.seated.iter().enumerate().filter(|(_, one)| in_use.contains(&one.hole));
        let mask = bits.fold(0, |mask, (bit, _)| mask | 1 << bit);
        Some(Picked { place: index, kind: at, set: Set { mask, searched: spent, ..set } })
    }

    /// The other positions of each slot at a place: at its ends, and on each stud's centre that it reaches. One that
    /// was chosen by hand stays.
    fn variants(&self, place: &Place) -> Vec<Variant> {
        let mut variants: Vec<Variant> = Vec::new();
        let frame = self.frame(place.offset);
        for (at, slot) in self.plate.slots.iter().enumerate() {
            let index = self.plate.holes.len() + at;
            let Some(base) = place.holes.get(index) else { continue };
            if self.chosen_by_hand().along(&slot.id).is_some() {
                continue;
            }
            let half = slot.travel / 2.0;
            let mut alongs = vec![-half, half];
            if !slot.upright {
                let middle = in_slot(slot, Length::default());
                let middle = frame.to_wall(middle.x, middle.y);
                let studs = self.ground.framing.studs.iter().map(|stud| stud.middle_at(middle.y) - middle.x);
                alongs.extend(studs.filter(|along| along.abs() <= half));
            }
            for along in alongs {
                let in_plate = in_slot(slot, along);
                let is_same = |hole: &HolePlan| {
                    (hole.in_plate.x - in_plate.x).mm().abs() <= SAME_PLACE_MM
                        && (hole.in_plate.y - in_plate.y).mm().abs() <= SAME_PLACE_MM
                };
                let is_known = variants.iter().any(|(hole, other)| *hole == index && is_same(other));
                if !is_known && !is_same(base) {
                    variants
                        .push((index, self.ground.hole(self.piece, &slot.id, frame, in_plate, slot.width)));
                }
            }
        }
        variants
    }
}

/// With the plate at one place no more sets of one kind of fastener are looked at than these (chosen: sixteen times
/// those of twelve round holes). Many long slots make more; the fullest are then looked at, and the best is told as
/// found by a search.
const MOST_LOOKS: usize = 65_536;

/// A search through the sets, hole by hole.
struct Search<'t, 'k> {
    table: &'t Table<'k>,
    /// The positions of each usable hole.
    holes: Vec<Vec<usize>>,
    to_beat: Rank,
    hardest: Option<Case>,
    best: Option<Set>,
    /// So many sets may still be looked at.
    looks: usize,
    /// Whether one was left out for want of looks.
    spent: bool,
}

impl Table<'_> {
    /// The best of all sets, or of the first [`MOST_LOOKS`] of them, where it is better than `than`; of equals the
    /// first, and whether sets were left out for want of looks. None where too many holes are usable.
    fn exact(&self, than: &Rank) -> (Option<Set>, bool) {
        let mut holes: Vec<Vec<usize>> = Vec::new();
        for (bit, one) in self.seated.iter().enumerate() {
            let mut known = holes.iter_mut().filter_map(|bits| {
                let first = self.seated.get(*bits.first()?)?;
                (first.hole == one.hole).then_some(bits)
            });
            match known.next() {
                Some(bits) => bits.push(bit),
                None => holes.push(vec![bit]),
            }
        }
        if holes.is_empty() || holes.len() > MOST_EXACT {
            return (None, false);
        }
        let (hardest, best, looks, spent) = (None, None, MOST_LOOKS, false);
        let mut search = Search { table: self, holes, to_beat: *than, hardest, best, looks, spent };
        search.from(0, 0);
        (search.best, search.spent)
    }
}

impl Search<'_, '_> {
    /// Every set with these holes and any of those from `hole` on: the fullest first, since they leave most in reserve,
    /// so that the others are soon cut.
    fn from(&mut self, hole: usize, mask: u64) {
        if self.looks == 0 {
            self.spent = true;
            return;
        }
        let Some(positions) = self.holes.get(hole).cloned() else {
            self.looks -= 1;
            if let Some(rank) =
                (mask != 0).then(|| self.table.rank(mask, Some(&self.to_beat), &mut self.hardest)).flatten()
            {
                self.best = Some(Set { mask, rank, searched: false });
                self.to_beat = rank;
            }
            return;
        };
        for bit in positions {
            let more = mask | 1 << bit;
            if self.table.is_allowed(more) {
                self.from(hole + 1, more);
            }
        }
        self.from(hole + 1, mask);
    }
}
