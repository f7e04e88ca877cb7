//! The place of a plate that meets most studs, whatever fasteners there are: a first look, for the sweep.

use super::{Candidates, Chosen, Place, most_studs};
use crate::plan::piece::Wish;
use crate::plan::verdict::Fastening;

impl Candidates<'_> {
    /// The place that meets most studs, with nothing said of its fasteners.
    pub(in super::super) fn most_met(&self) -> Chosen {
        let places: Vec<Place> =
            self.offsets().into_iter().map(|offset| Place { offset, holes: self.holes(offset) }).collect();
        let at = most_studs(&places);
        let Some(place) = places.into_iter().nth(at) else { return self.nowhere() };
        Chosen {
            frame: self.frame(place.offset),
            offset: place.offset,
            holes: place.holes,
            fastening: Fastening::unknown(),
            wish: Wish::default(),
            explained: None,
        }
    }
}
