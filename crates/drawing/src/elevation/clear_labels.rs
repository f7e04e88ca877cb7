//! Which names are shown where: the most important first, each at the first of its places that lies on nothing
//! shown before it; one without such a place is left out. So no two texts ever lie on each other.

use crate::paper::PaperRect;

/// Free round a name.
const CLEAR_MM: f64 = 0.6;

/// What has taken its place on the page.
pub(super) struct Clear {
    page: PaperRect,
    taken: Vec<PaperRect>,
}

impl Clear {
    /// A page on which some places are taken already.
    pub(super) fn new(page: PaperRect, taken: Vec<PaperRect>) -> Self {
        Self { page, taken }
    }

    /// Takes the first of a name's places that is on the page, free, and not one of those `covered`; `None` where
    /// it is to be left out.
    pub(super) fn place(&mut self, places: &[PaperRect], covered: &[PaperRect]) -> Option<PaperRect> {
        let is_free = |place: PaperRect| {
            let wide = place.grown(CLEAR_MM);
            !self.taken.iter().chain(covered).any(|other| other.meets(wide))
        };
        let on_page = |place: PaperRect| self.page.shared(place) == Some(place);
        let place = places.iter().copied().find(|&place| on_page(place) && is_free(place))?;
        self.taken.push(place);
        Some(place)
    }

    /// As [`Self::place`]; but where no place is free, it takes the first on the page all the same.
    pub(super) fn place_first(&mut self, places: &[PaperRect], covered: &[PaperRect]) -> Option<PaperRect> {
        self.place(places, covered).or_else(|| {
            let on_page = places.iter().copied().find(|&place| self.page.shared(place) == Some(place))?;
            self.taken.push(on_page);
            Some(on_page)
        })
    }
}

/// What is kept free of everything else round a name that was given a place.
pub(super) fn ground(place: PaperRect) -> PaperRect {
    place.grown(CLEAR_MM)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rect(left_mm: f64, top_mm: f64) -> PaperRect {
        PaperRect { left_mm, top_mm, right_mm: left_mm + 20.0, bottom_mm: top_mm + 3.0 }
    }

    fn page() -> PaperRect {
        PaperRect { left_mm: 0.0, top_mm: 0.0, right_mm: 100.0, bottom_mm: 50.0 }
    }

    #[test]
    fn the_first_to_come_has_the_place_and_the_next_gives_way_or_is_left_out() {
        let mut clear = Clear::new(page(), vec![rect(0.0, 0.0)]);
        assert_eq!(clear.place(&[rect(5.0, 1.0), rect(30.0, 1.0)], &[]), Some(rect(30.0, 1.0)));
        assert_eq!(clear.place(&[rect(40.0, 1.0), rect(95.0, 1.0)], &[]), None, "taken, and off the page");
        assert_eq!(clear.place(&[rect(40.0, 10.0)], &[rect(41.0, 11.0)]), None, "under what hangs before it");
        assert_eq!(clear.place(&[rect(50.3, 1.0)], &[]), None, "too near");
        assert_eq!(clear.place(&[rect(51.0, 1.0)], &[]), Some(rect(51.0, 1.0)));
    }

    #[test]
    fn what_must_be_shown_is() {
        let mut clear = Clear::new(page(), vec![rect(0.0, 0.0)]);
        assert_eq!(clear.place_first(&[rect(5.0, 1.0), rect(30.0, 1.0)], &[]), Some(rect(30.0, 1.0)));
        assert_eq!(clear.place_first(&[rect(95.0, 1.0), rect(5.0, 1.0)], &[]), Some(rect(5.0, 1.0)));
        assert_eq!(clear.place_first(&[rect(95.0, 1.0)], &[]), None);
    }
}
