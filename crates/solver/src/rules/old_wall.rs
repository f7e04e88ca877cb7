//! Drilling and cutting old walls makes dust. Paint of before 1978 may hold lead (40 CFR 745.83, target
//! housing); board, plaster and joint compound of up to about 1980 may hold asbestos (public health advice).
//! A year not known counts as old.

use super::breaking_in;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat};

/// The first year whose paint is taken to be without lead.
const WITHOUT_LEAD_FROM: u16 = 1978;
/// The last year whose board is taken to hold asbestos.
const ASBESTOS_UP_TO: u16 = 1980;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let year = job.year_built;
    let lead = year.is_none_or(|year| year < WITHOUT_LEAD_FROM);
    let asbestos = year.is_none_or(|year| year <= ASBESTOS_UP_TO);
    if !lead && !asbestos {
        return Vec::new();
    }
    let is_probe = |mark: &&Mark| matches!(mark.what, MarkWhat::Probe { .. });
    let first = breaking_in::marks(plan).find(is_probe).or_else(|| breaking_in::marks(plan).next());
    let told = first.map(|mark| Finding {
        level: Level::Caution,
        subject: if mark.piece.is_empty() { wall.id.whole() } else { mark.piece.whole() },
        what: What::OldWall { year, lead, asbestos },
        mend: Mend::OnSite,
    });
    told.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn each_year_is_told_what_it_may_hold() {
        let mut room = Sample::good();
        for (year, lead, asbestos) in [
            (Some(1977), true, true),
            (Some(1978), false, true),
            (Some(1980), false, true),
            (Some(1981), false, false),
            (None, true, true),
        ] {
            room.job.year_built = year;
            let what = What::OldWall { year, lead, asbestos };
            let caution = (Level::Caution, "display-1".to_owned(), what);
            assert_eq!(room.told(check), if asbestos { vec![caution] } else { vec![] });
        }
        room.plan.marks.clear();
        assert!(room.told(check).is_empty(), "nothing is drilled");
    }
}
