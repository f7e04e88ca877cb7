//! A datum in words.

use super::mark_name;
use super::things::{left_end, right_end, thing};
use crate::geometry::Direction;
use crate::plan::Plan;
use crate::plan::mark::ReadingDatum;

/// What a reading is taken from, in the middle of a sentence: `the left corner`, `the floor`, `the level line`.
#[must_use]
pub fn datum(plan: &Plan, datum: &ReadingDatum) -> String {
    match datum {
        ReadingDatum::LeftEnd => left_end(plan).to_owned(),
        ReadingDatum::RightEnd => right_end(plan).to_owned(),
        ReadingDatum::Floor => "the floor".to_owned(),
        ReadingDatum::ControlLine => "the control line".to_owned(),
        ReadingDatum::Edge(edge) => thing(plan, edge),
        ReadingDatum::Struck(mark) => match plan.marks.iter().find(|other| other.id == *mark) {
            Some(mark) => mark_name::in_words(plan, mark),
            None => thing(plan, mark),
        },
        ReadingDatum::Nothing => "the middle of the wall's nearest end".to_owned(),
    }
}

/// On which side of a datum something is: `right of the left corner`, `above the floor`.
#[must_use]
pub fn beside(plan: &Plan, direction: Direction, from: &ReadingDatum) -> String {
    let side = match direction {
        Direction::Left => "left of",
        Direction::Right => "right of",
        Direction::Up => "above",
        Direction::Down => "below",
    };
    format!("{side} {}", datum(plan, from))
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use crate::job::wall::End;
    use crate::subject::Id;

    #[test]
    fn every_datum_has_its_words() {
        let mut plan = sample::plan();
        let window = ReadingDatum::Edge(Id::new("window-1").part("left"));
        let level = ReadingDatum::Struck(Id::new("display-1").part("level_line"));
        assert_eq!(datum(&plan, &ReadingDatum::LeftEnd), "the left corner");
        assert_eq!(datum(&plan, &ReadingDatum::RightEnd), "the right corner");
        assert_eq!(datum(&plan, &ReadingDatum::Floor), "the floor");
        assert_eq!(datum(&plan, &ReadingDatum::ControlLine), "the control line");
        assert_eq!(datum(&plan, &window), "the window's left edge");
        assert_eq!(datum(&plan, &level), "the level line");
        assert_eq!(datum(&plan, &ReadingDatum::Nothing), "the middle of the wall's nearest end");
        (plan.survey.left_end, plan.survey.right_end) = (End::OutsideCorner, End::Open);
        assert_eq!(datum(&plan, &ReadingDatum::LeftEnd), "the left end");
        assert_eq!(datum(&plan, &ReadingDatum::RightEnd), "the right end");
    }
}
