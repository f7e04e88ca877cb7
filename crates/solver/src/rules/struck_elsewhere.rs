//! A line or tick that stands where the plan no longer has it misleads every mark that is read from it: it is rubbed
//! out and struck anew. What is drilled is told by how it holds the plate.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::mark::MarkState;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let told = plan.marks.iter().filter(|mark| mark.state == MarkState::Struck).filter_map(|mark| {
        let (place, planned) = (mark.place?, mark.planned.as_ref()?);
        let (right, up) = (place.x - planned.place.x, place.y - planned.place.y);
        // A line may be off at one end alone.
        let ends = mark.line.zip(planned.line).map(|((_, struck), (_, wanted))| struck.y - wanted.y);
        let right_end = ends.filter(|far| (*far - up).abs().mm() > SAME_PLACE_MM);
        Some(Finding {
            level: Level::Caution,
            subject: mark.id.clone(),
            what: What::StruckElsewhere { right, up, right_end },
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
    use crate::plan::mark::Planned;

    #[test]
    fn what_is_struck_elsewhere_is_told_and_what_is_drilled_there_is_not() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let mark = room.plan.marks.iter_mut().find(|mark| mark.place.is_some()).unwrap();
        let place = mark.place.unwrap();
        let (id, right, up) = (mark.id.to_string(), mm(-4.0), mm(6.0));
        let planned = Point::new(place.x - right, place.y - up);
        mark.planned = Some(Planned { place: planned, line: None, readings: Vec::new() });
        mark.state = MarkState::Drilled;
        assert!(room.told(check).is_empty());
        let mark = room.plan.marks.iter_mut().find(|mark| mark.planned.is_some()).unwrap();
        mark.state = MarkState::Struck;
        let told = What::StruckElsewhere { right, up, right_end: None };
        assert_eq!(room.told(check), [(Level::Caution, id, told)]);
    }

    #[test]
    fn a_line_that_is_off_at_its_right_end_alone_is_told() {
        let mut room = Sample::good();
        let mark = room.plan.marks.iter_mut().find(|mark| mark.place.is_some()).unwrap();
        let left = mark.place.unwrap();
        let right = Point::new(left.x + mm(800.0), left.y);
        let flat = Some((left, Point::new(right.x, left.y)));
        mark.line = Some((left, Point::new(right.x, left.y + mm(5.0))));
        mark.planned = Some(Planned { place: left, line: flat, readings: Vec::new() });
        mark.state = MarkState::Struck;
        let none = mm(0.0);
        let told = What::StruckElsewhere { right: none, up: none, right_end: Some(mm(5.0)) };
        assert_eq!(room.told(check).into_iter().map(|(_, _, what)| what).collect::<Vec<_>>(), [told]);
    }
}
