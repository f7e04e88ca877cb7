//! A mark that no datum reaches with one person's tape: a helper holds the other end (chosen limits, see
//! the job's settings). Told once a mark, so that it is known before the visit.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::mark::{Mark, ReadingDatum};

pub(super) fn check(_job: &Job, _wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let unreached = |mark: &&Mark| mark.readings.iter().any(|reading| reading.from == ReadingDatum::Nothing);
    let told = plan.marks.iter().filter(unreached).filter_map(|mark| {
        let place = mark.place.or(mark.line.map(|(from, _)| from))?;
        Some(Finding {
            level: Level::Note,
            subject: mark.id.clone(),
            what: What::WithHelp { place },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::geometry::Point;

    #[test]
    fn a_mark_that_nothing_reaches_is_told_with_its_place() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.marks[2].readings[0].from = ReadingDatum::Nothing;
        let what = What::WithHelp { place: Point::new(mm(1800.0), mm(1630.0)) };
        assert_eq!(room.told(check), [(Level::Note, "display-1.hole-1".to_owned(), what)]);
    }
}
