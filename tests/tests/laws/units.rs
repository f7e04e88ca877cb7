//! The unit of a length, and of a job, moves nothing on the wall.

use super::room::{plan, rooms};
use proptest::prelude::*;
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::mark::MarkWhat;
use strikeline_solver::tape::Graduation;
use strikeline_solver::units::LengthUnit;

proptest! {
    #![proptest_config(super::config())]

    /// With the graduation kept, nothing at all may differ: not a reading, not a finding.
    #[test]
    fn the_unit_a_length_is_written_in_changes_nothing(room in rooms(), which in 0..Graduation::ALL.len()) {
        let graduation = Some(Graduation::ALL[which]);
        let of = |unit, units| plan(&Job { graduation, units: Some(units), ..room.job_in(unit) });
        let metric = of(LengthUnit::Millimetre, Units::Millimetres);
        prop_assert_eq!(&metric, &of(LengthUnit::Inch, Units::Millimetres));
        prop_assert_eq!(&metric, &of(LengthUnit::Millimetre, Units::Inches));
        prop_assert_eq!(&metric, &of(LengthUnit::Inch, Units::Inches));
    }

    /// The graduation follows the job's unit where none is set: the readings may then, but no place does.
    #[test]
    fn the_unit_of_a_job_moves_nothing_on_the_wall(room in rooms()) {
        let of = |units| plan(&Job { units: Some(units), ..room.job() });
        let (a, b) = (of(Units::Inches), of(Units::Millimetres));
        prop_assert_eq!(&a.survey, &b.survey);
        prop_assert_eq!(&a.framing, &b.framing);
        prop_assert_eq!(&a.pieces, &b.pieces);
        let struck = |mark: &&strikeline_solver::plan::mark::Mark| mark.what != MarkWhat::Help;
        let (mut one, mut other) = (a.marks.iter().filter(struck), b.marks.iter().filter(struck));
        loop {
            match (one.next(), other.next()) {
                (None, None) => break,
                (Some(one), Some(other)) => {
                    prop_assert_eq!(&one.id, &other.id);
                    // The level line runs 4 in or 100 mm past the plate: its ends are not its place.
                    if one.what != MarkWhat::LevelLine {
                        prop_assert_eq!(one.place, other.place);
                    }
                }
                (one, other) => prop_assert!(false, "{one:?} and {other:?}"),
            }
        }
    }
}
