//! Step 5: the best of the plate's possible places, by the studs its holes meet; and what moving the piece
//! would give.

use super::holes::{Ground, holes};
use crate::geometry::{Frame, Point};
use crate::job::mount::Mount;
use crate::job::plate::Plate;
use crate::plan::piece::{HolePlan, Wish};
use crate::subject::Id;
use crate::tolerance::{SAME_PLACE_MM, WIDEST_BAY_MM};
use crate::units::Length;

/// The plate at its chosen place.
pub(super) struct Chosen {
    pub(super) frame: Frame,
    pub(super) offset: Length,
    pub(super) holes: Vec<HolePlan>,
    pub(super) wish: Wish,
}

/// What a choice is made from.
pub(super) struct Candidates<'a> {
    pub(super) ground: Ground<'a>,
    pub(super) piece: &'a Id,
    pub(super) piece_frame: Frame,
    /// From the piece's middle up to the plate's top.
    pub(super) rise: Length,
    pub(super) mount: &'a Mount,
    pub(super) plate: &'a Plate,
}

impl Candidates<'_> {
    fn frame(&self, offset: Length) -> Frame {
        Frame { origin: self.piece_frame.to_wall(-offset, self.rise), roll: self.piece_frame.roll }
    }

    fn holes(&self, offset: Length) -> Vec<HolePlan> {
        holes(&self.ground, self.piece, self.plate, self.frame(offset))
    }

    /// Every offset that puts a hole, or a slot's middle or end, on a stud's centre, within `reach` of none.
    fn on_studs(&self, least: Length, most: Length) -> Vec<Length> {
        let round = self.plate.holes.iter().map(|hole| Point::new(hole.right.length(), -hole.down));
        let slots = self.plate.slots.iter().flat_map(|slot| {
            let half = if slot.upright { Length::default() } else { slot.travel / 2.0 };
            let middle = slot.right.length();
            [middle - half, middle, middle + half].map(|right| Point::new(right, -slot.down))
        });
        let mut offsets: Vec<Length> = Vec::new();
        for in_plate in round.chain(slots) {
            let at_none = self.frame(Length::default()).to_wall(in_plate.x, in_plate.y);
            let wanted = self.ground.framing.studs.iter().map(|stud| at_none.x - stud.middle_at(at_none.y));
            offsets.extend(wanted.filter(|offset| least <= *offset && *offset <= most));
        }
        offsets.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
        offsets.dedup_by(|a, b| (*a - *b).mm().abs() <= SAME_PLACE_MM);
        offsets
    }

    /// The place that meets most studs, then in solid wood most surely; among equals the least shift from the middle of the play's own rest,
    /// and of two shifts as large the one to the right: chosen, so that the same job gives the same plan.
    pub(super) fn choose(&self) -> Chosen {
        let (least, most) = self.mount.offsets();
        let rest = self
            .mount
            .arm
            .as_ref()
            .and_then(|arm| arm.parked)
            .map(crate::tape::Offset::length)
            .unwrap_or_default();
        let mut best_offset = rest;
        let mut best = self.holes(rest);
        let mut others = self.on_studs(least, most);
        others.extend([least, most]);
        others.sort_by(|a, b| (*a - rest).mm().abs().total_cmp(&(*b - rest).mm().abs()));
        for offset in others {
            let met = self.holes(offset);
            let (more, sooner) = (studs(&met), studs(&best));
            if more > sooner
                || (more == sooner && sum_of_chances(&met) > sum_of_chances(&best) + WORTH_A_SHIFT)
            {
                (best_offset, best) = (offset, met);
            }
        }
        let wish = self.wish(studs(&best), least, most);
        Chosen { frame: self.frame(best_offset), offset: best_offset, holes: best, wish }
    }

    /// How far the piece would have to move to either side for more studs.
    fn wish(&self, here: usize, least: Length, most: Length) -> Wish {
        let bay = Length::millimetres(WIDEST_BAY_MM);
        let mut wish = Wish { studs: here, most_studs: here, left: None, right: None };
        for offset in self.on_studs(least - bay, most + bay) {
            // A larger offset is a plate farther left: the piece has to follow it by what the play lacks.
            let (left, right) = (offset - most, least - offset);
            if left <= Length::default() && right <= Length::default() {
                continue;
            }
            let met = studs(&self.holes(offset));
            if met < wish.most_studs || met <= here {
                continue;
            }
            if met > wish.most_studs {
                wish = Wish { studs: here, most_studs: met, left: None, right: None };
            }
            let (side, by) =
                if left > Length::default() { (&mut wish.left, left) } else { (&mut wish.right, right) };
            *side = Some(side.map_or(by, |known| known.min(by)));
        }
        wish
    }
}

/// A shift is worth so much more chance of solid wood, over all studs (chosen: less is not worth the plate off its
/// middle).
const WORTH_A_SHIFT: f64 = 0.05;

/// The chances of solid wood, of each stud its least sure hole.
fn sum_of_chances(holes: &[HolePlan]) -> f64 {
    let mut each: Vec<(usize, f64)> =
        holes.iter().filter_map(|hole| Some((hole.stud?, hole.chance.unwrap_or_default()))).collect();
    each.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    each.dedup_by_key(|(stud, _)| *stud);
    each.iter().map(|(_, chance)| chance).sum()
}

/// How many different studs are met with room to their edges.
fn studs(holes: &[HolePlan]) -> usize {
    let mut met: Vec<usize> = holes.iter().filter_map(|hole| hole.stud).collect();
    met.sort_unstable();
    met.dedup();
    met.len()
}
