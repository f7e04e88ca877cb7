//! The best of the places that are known in full.

use super::{Full, Place, Told};
use crate::capacity::group::Word;
use crate::finding::Level;
use crate::geometry::{Axis, Point};
use crate::tolerance::WISH_REACH_MM;
use std::cmp::Ordering;

/// Whether a place is within reach of the one that the rules wish for.
#[must_use]
pub fn within_reach(place: Point, ruled: Point, axis: Axis) -> bool {
    (place.along(axis) - ruled.along(axis)).mm().abs() <= WISH_REACH_MM
}

/// The best place within reach of the one that the rules wish for, of those known in full; `None` where none is.
///
/// What comes first counts first: the fewest stops; it holds if probed, else is not known, else is short; an entry that
/// is hidden where one is asked for; the most studs; the fewest cautions; the nearest to the wish; the farther left or
/// lower (chosen, so that the same places give the same best).
#[must_use]
pub fn best<'a>(places: impl IntoIterator<Item = &'a Place>, ruled: Point, axis: Axis) -> Option<&'a Place> {
    let full = |place: &'a Place| match &place.told {
        Told::Full(full) => Some((place, full.as_ref())),
        Told::Coarse(_) => None,
    };
    let away = |full: &Full| (full.centre.along(axis) - ruled.along(axis)).mm().abs();
    let known = places.into_iter().filter_map(full);
    let near = known.filter(|(_, full)| within_reach(full.centre, ruled, axis));
    let order = |(a_at, a): &(&Place, &Full), (b_at, b): &(&Place, &Full)| {
        worse(a, b).then(away(a).total_cmp(&away(b))).then(a_at.index.cmp(&b_at.index))
    };
    near.min_by(order).map(|(place, _)| place)
}

/// Which of two places is the worse, wherever they are: `Less` where the first is the better.
fn worse(a: &Full, b: &Full) -> Ordering {
    let word = |full: &Full| match full.if_probed {
        None | Some(Word::Holds) => 0,
        Some(Word::NotKnown) => 1,
        Some(Word::Short) => 2,
    };
    let key = |full: &Full| {
        let shows = full.entry_hidden == Some(false);
        (
            full.count(Level::Stop),
            word(full),
            shows,
            std::cmp::Reverse(full.studs),
            full.count(Level::Caution),
        )
    };
    key(a).cmp(&key(b))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Finding, Mend, What};
    use crate::job::option::Nudge;
    use crate::subject::Id;
    use crate::units::Length;

    fn at(index: usize, x: f64, change: impl Fn(&mut Full)) -> Place {
        let centre = Point::new(Length::millimetres(x), Length::default());
        let mut full = Full {
            nudge: Nudge::default(),
            centre,
            if_probed: Some(Word::Holds),
            used: Some(0.5),
            studs: 2,
            holes_in_studs: 4,
            entry_hidden: Some(true),
            findings: Vec::new(),
        };
        change(&mut full);
        Place { index, wished: centre, told: Told::Full(Box::new(full)) }
    }

    fn told(level: Level) -> Finding {
        Finding { level, subject: Id::new("display-1").whole(), what: What::NoEntry, mend: Mend::Move }
    }

    #[test]
    fn of_equals_the_nearest_to_the_wish_and_of_as_near_the_first() {
        let places = [at(0, -30.0, |_| {}), at(1, -10.0, |_| {}), at(2, 10.0, |_| {})];
        assert_eq!(best(&places, Point::default(), Axis::Across).unwrap().index, 1);
        assert_eq!(best(&places[..1], Point::default(), Axis::Across).unwrap().index, 0);
        assert_eq!(best(&[], Point::default(), Axis::Across), None);
    }

    #[test]
    fn each_thing_counts_before_the_next_and_all_before_nearness() {
        // Each is better than those after it, and farther off.
        let places = [
            at(0, 90.0, |_| {}),
            at(1, 80.0, |full| full.findings = vec![told(Level::Caution)]),
            at(2, 70.0, |full| full.studs = 1),
            at(3, 60.0, |full| {
                full.entry_hidden = Some(false);
                full.studs = 3;
            }),
            at(4, 50.0, |full| full.if_probed = Some(Word::NotKnown)),
            at(5, 40.0, |full| full.if_probed = Some(Word::Short)),
            at(6, 0.0, |full| full.findings = vec![told(Level::Stop)]),
        ];
        for from in 0..places.len() {
            assert_eq!(best(&places[from..], Point::default(), Axis::Across).unwrap().index, from);
        }
    }

    #[test]
    fn what_is_out_of_reach_or_known_at_a_look_alone_is_never_the_best() {
        let far = at(0, WISH_REACH_MM + 1.0, |_| {});
        let look = Place { told: Told::Coarse(crate::solve::Coarse::default()), ..at(1, 0.0, |_| {}) };
        assert_eq!(best([&far, &look], Point::default(), Axis::Across), None);
        assert_eq!(
            best([&far], Point::default(), Axis::Upright).unwrap().index,
            0,
            "it is along the other axis"
        );
    }
}
