//! Lead holes in a stud: how wide, with which of the bits at hand, and how deep.

use super::bite::Bite;
use super::screw::{Screw, ScrewKind};
use super::why::Known;
use super::withdrawal::valid_gravity;
use crate::handbook::lead_hole as book;
use crate::ledger::{Given, Label};
use crate::units::{Length, Ratio};

/// A lead hole, as the rules have it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeadHole {
    /// The least diameter of the part for the thread.
    pub least: Length,
    /// The most.
    pub most: Length,
    /// The diameter of the part for the smooth shank, and how deep that part is in wood; none where all of what
    /// is in wood is thread.
    pub shank: Option<(Length, Length)>,
    /// How deep in wood, tip included.
    pub depth: Length,
    /// Where the range is from: the classes of wood for lags are from memory.
    pub label: Label,
}

/// The lead hole of a fastener in wood of a specific gravity.
///
/// A screw on a plate is both pulled and sheared: its hole is no wider than either rule allows.
///
/// # Errors
/// Not known where G is outside of its table.
pub fn lead_hole(screw: &Screw, wood: Given<Ratio>, bite: &Bite) -> Known<LeadHole> {
    let g = valid_gravity(wood)?;
    let (light, dense) = book::CLASSES.value;
    let root = screw.root.value;
    let (least, most, shank_width, label) = match screw.kind {
        ScrewKind::Lag => {
            let row = if g <= light {
                book::LAG_LIGHT
            } else if g <= dense {
                book::LAG_MEDIUM
            } else {
                book::LAG_DENSE
            };
            let d = screw.diameter.value;
            (d * row.value.0, d * row.value.1, d, row.label.weaker(book::CLASSES.label))
        }
        ScrewKind::WoodScrew | ScrewKind::Structural => {
            let (share, shank) = if g <= light {
                (book::SCREW_LIGHT.value, book::SCREW_LIGHT.value)
            } else if g <= dense {
                (book::SCREW_PULLED_MEDIUM.value, book::SCREW_LIGHT.value)
            } else {
                (book::SCREW_PULLED_DENSE.value, book::SCREW_DENSE.value)
            };
            let label = book::SCREW_LEAST.label.weaker(screw.root.label);
            (root * book::SCREW_LEAST.value, root * share, screw.diameter.value * shank, label)
        }
    };
    let smooth = bite.depth.value - screw.thread.value;
    let shank = (smooth.mm() > crate::tolerance::SAME_PLACE_MM).then_some((shank_width, smooth));
    Ok(LeadHole { least, most, shank, depth: bite.depth.value, label })
}

/// The bit to take of those at hand: the one nearest the middle of the range, the thinner of two as near.
/// `None` where none is in the range.
#[must_use]
pub fn bit(hole: &LeadHole, bits: &[Length]) -> Option<Length> {
    let middle = (hole.least + hole.most) / 2.0;
    let off = |bit: &Length| (*bit - middle).mm().abs();
    let fits = |bit: &&Length| **bit >= hole.least && **bit <= hole.most;
    bits.iter().filter(fits).copied().min_by(|a, b| off(a).total_cmp(&off(b)).then(a.mm().total_cmp(&b.mm())))
}
