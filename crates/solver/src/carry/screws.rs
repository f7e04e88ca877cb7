//! The screws that hold a mount's brackets to a piece: bracket, spacer and 8 mm more or the maker's turn-in, and never
//! deeper than the insert, since a screw that bottoms holds nothing and can go through what is behind.

use super::{Asks, Carried, CarryLine};
use crate::handbook::machine_screw::{LENGTHS_MM, TURN_IN_MM};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::piece::Piece;
use crate::plan::Plan;
use crate::units::Length;

/// How long the screws are.
#[derive(Clone, Debug, PartialEq)]
pub enum ScrewLength {
    /// Of a usual length.
    Usual {
        /// That length, under the head.
        length: Length,
        /// How far it goes into the insert.
        turns_in: Length,
    },
    /// No usual length lies between these.
    Between {
        /// The least.
        least: Length,
        /// The most.
        most: Length,
        /// The next usual length above, to be taken with washers; `None` above all of them.
        next: Option<Length>,
    },
    /// The insert is not as deep as the screw is to be turned in.
    Shallow {
        /// How far that is.
        turn_in: Length,
        /// Whether the maker says so.
        by_maker: bool,
    },
    /// Something was not measured.
    NotKnown(Vec<ToMeasure>),
}

/// What a screw's length wants and nobody measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToMeasure {
    /// How thick the brackets are.
    Bracket,
    /// How long the spacers are, or that there are none.
    Spacer,
    /// How deep the inserts are.
    Insert,
}

pub(super) fn screws(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let hung = plans.iter().flat_map(|plan| &plan.pieces);
    let hung = hung.filter_map(|one| Some((job.piece(&one.id)?, job.mount(&one.mount.as_ref()?.id)?)));
    let line = |(piece, mount): (&Piece, &Mount)| {
        let pattern = piece.pattern.as_ref();
        let what = Carried::PieceScrews {
            thread: pattern.and_then(|pattern| pattern.thread),
            insert: pattern.and_then(|pattern| pattern.insert_depth),
            length: length(piece, mount),
        };
        let count = pattern.map(crate::job::piece::Pattern::screw_count);
        CarryLine { what, count, why: Asks::Piece(piece.name.clone().unwrap_or_default()), short_by: None }
    };
    hung.map(line).collect()
}

fn length(piece: &Piece, mount: &Mount) -> ScrewLength {
    let pattern = piece.pattern.as_ref();
    let spacer = pattern.and_then(|pattern| pattern.spacer);
    let insert = pattern.and_then(|pattern| pattern.insert_depth);
    let (Some(bracket), Some(spacer), Some(insert)) = (mount.bracket_thickness, spacer, insert) else {
        let wanted = [
            (mount.bracket_thickness, ToMeasure::Bracket),
            (spacer, ToMeasure::Spacer),
            (insert, ToMeasure::Insert),
        ];
        let missing = wanted.into_iter().filter(|(value, _)| value.is_none()).map(|(_, what)| what);
        return ScrewLength::NotKnown(missing.collect());
    };
    let by_maker = pattern.and_then(|pattern| pattern.turn_in);
    let turn_in = by_maker.unwrap_or(Length::millimetres(TURN_IN_MM.value));
    if turn_in > insert {
        return ScrewLength::Shallow { turn_in, by_maker: by_maker.is_some() };
    }
    let before = bracket + spacer;
    let (least, most) = (before + turn_in, before + insert);
    let next = LENGTHS_MM.value.into_iter().map(Length::millimetres).find(|usual| *usual >= least);
    match next {
        Some(length) if length <= most => ScrewLength::Usual { length, turns_in: length - before },
        next => ScrewLength::Between { least, most, next },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::piece::Pattern;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    /// Bracket, spacer, insert, the maker's turn-in.
    fn of(bracket: f64, spacer: f64, insert: f64, turn_in: Option<f64>) -> ScrewLength {
        let pattern = Pattern {
            insert_depth: Some(mm(insert)),
            spacer: Some(mm(spacer)),
            turn_in: turn_in.map(mm),
            ..Pattern::new(mm(400.0), mm(300.0))
        };
        let piece = Piece { pattern: Some(pattern), ..Piece::default() };
        length(&piece, &Mount { bracket_thickness: Some(mm(bracket)), ..Mount::default() })
    }

    #[test]
    fn a_screw_is_as_long_as_bracket_spacer_and_eight_more() {
        // 2.5 + 8 = 10.5 at least, 2.5 + 15 = 17.5 at most.
        assert_eq!(of(2.5, 0.0, 15.0, None), ScrewLength::Usual { length: mm(12.0), turns_in: mm(9.5) });
        // 3 + 20 + 8 = 31 at least, 38 at most.
        assert_eq!(of(3.0, 20.0, 15.0, None), ScrewLength::Usual { length: mm(35.0), turns_in: mm(12.0) });
        // The maker's 12 mm are more than 8: 15 at least.
        let wanted = ScrewLength::Usual { length: mm(16.0), turns_in: mm(13.0) };
        assert_eq!(of(3.0, 0.0, 15.0, Some(12.0)), wanted);
    }

    #[test]
    fn no_screw_is_deeper_than_its_insert() {
        // 3 + 20 + 8 = 31 at least and as much at most: 35 is 4 too long.
        let told = ScrewLength::Between { least: mm(31.0), most: mm(31.0), next: Some(mm(35.0)) };
        assert_eq!(of(3.0, 20.0, 8.0, None), told);
        assert_eq!(of(3.0, 0.0, 6.0, None), ScrewLength::Shallow { turn_in: mm(8.0), by_maker: false });
        let by_maker = ScrewLength::Shallow { turn_in: mm(12.0), by_maker: true };
        assert_eq!(of(3.0, 0.0, 10.0, Some(12.0)), by_maker);
        let beyond = ScrewLength::Between { least: mm(98.0), most: mm(100.0), next: None };
        assert_eq!(of(10.0, 80.0, 10.0, None), beyond);
    }

    #[test]
    fn every_usual_length_stays_in_its_insert() {
        for (bracket, spacer, insert) in (10..60).flat_map(|tenths| {
            let bracket = f64::from(tenths) / 10.0;
            [(bracket, 0.0, 8.0), (bracket, 10.0, 12.0), (bracket, 25.4, 15.0)]
        }) {
            if let ScrewLength::Usual { length, turns_in } = of(bracket, spacer, insert, None) {
                assert!(turns_in >= mm(8.0) && turns_in <= mm(insert), "{bracket} {spacer} {insert}");
                assert!((length - turns_in - mm(bracket + spacer)).mm().abs() < 1e-6);
            }
        }
    }

    #[test]
    fn what_was_not_measured_is_named() {
        let nothing = length(&Piece::default(), &Mount::default());
        let all = vec![ToMeasure::Bracket, ToMeasure::Spacer, ToMeasure::Insert];
        assert_eq!(nothing, ScrewLength::NotKnown(all));
        let flat = Pattern { spacer: Some(mm(0.0)), ..Pattern::new(mm(75.0), mm(75.0)) };
        let piece = Piece { pattern: Some(flat), ..Piece::default() };
        let mount = Mount { bracket_thickness: Some(mm(3.0)), ..Mount::default() };
        assert_eq!(length(&piece, &mount), ScrewLength::NotKnown(vec![ToMeasure::Insert]));
    }

    #[test]
    fn a_screw_for_each_corner_unless_told() {
        assert_eq!(Pattern::new(mm(400.0), mm(300.0)).screw_count(), 4);
        assert_eq!(Pattern::new(mm(400.0), mm(0.0)).screw_count(), 2);
        assert_eq!(Pattern { screws: Some(6), ..Pattern::new(mm(200.0), mm(100.0)) }.screw_count(), 6);
    }
}
