//! The place of a plate that meets most studs, whatever fasteners there are: a first look, for the sweep.

use super::{Candidates, Chosen, most_studs};
use crate::plan::piece::Wish;
use crate::plan::verdict::Fastening;

impl Candidates<'_> {
    /// The place that meets most studs, with nothing said of its fasteners.
    pub(in super::super) fn most_met(&self) -> Chosen {
        let offsets = self.offsets();
        let each: Vec<_> = offsets.iter().map(|offset| self.holes(*offset)).collect();
        let at = most_studs(each.iter().map(Vec::as_slice));
        let Some((offset, holes)) = offsets.into_iter().zip(each).nth(at) else { return self.nowhere() };
        Chosen {
            frame: self.frame(offset),
            offset,
            holes,
            fastening: Fastening::unknown(),
            wish: Wish::default(),
            explained: None,
        }
    }
}
