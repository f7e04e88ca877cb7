//! The one thing to do now, in words.

use super::assumed::to_do;
use super::finding::clause;
use super::mark_name::in_words;
use super::phrase::sentence;
use super::things::hole_name;
use crate::finding::{Finding, Mend};
use crate::plan::mark::{Mark, MarkWhat};
use crate::plan::{Next, Plan};

/// The one thing to do now, as a sentence; empty where there is none.
#[must_use]
pub fn next(plan: &Plan) -> String {
    to_be_done(plan).map_or_else(String::new, |clause| sentence(&clause))
}

/// The same without a capital and a full stop.
fn to_be_done(plan: &Plan) -> Option<String> {
    match plan.next.as_ref()? {
        Next::Measure(assumed) => Some(to_do(plan, assumed)),
        Next::Settle { want, .. } => Some(super::fastening::want(plan, want)),
        Next::Mend(place) => Some(mend(plan, plan.findings.get(*place)?)),
        Next::Take(id) => plan.marks.iter().find(|mark| mark.id == *id).map(|mark| take(plan, mark)),
    }
}

fn mend(plan: &Plan, finding: &Finding) -> String {
    let way = match finding.mend {
        Mend::Move => "move it",
        Mend::Measure => "measure again",
        Mend::Choose => "choose another mount or piece",
        Mend::OnSite => "settle it on site",
    };
    format!("{way}: {}", clause(plan, finding))
}

fn take(plan: &Plan, mark: &Mark) -> String {
    let name = in_words(plan, mark);
    match &mark.what {
        MarkWhat::Sweep { upper: true } => "sweep along the upper hole row".to_owned(),
        MarkWhat::Sweep { upper: false } => "sweep along the lower hole row".to_owned(),
        MarkWhat::Corner { .. } => format!("put tape at {name}"),
        MarkWhat::LevelLine
        | MarkWhat::CentreLine
        | MarkWhat::PieceCentre
        | MarkWhat::Help
        | MarkWhat::RacewayEnd => {
            format!("strike {name}")
        }
        MarkWhat::MakeSafe => "switch the circuit off or pass a tester".to_owned(),
        MarkWhat::Probe { hole, .. } => format!("probe at {}", hole_name(hole)),
        MarkWhat::Look => "look into the bay".to_owned(),
        MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage => format!("strike and cut {name}"),
        MarkWhat::Hole { hole, first: true, .. } => format!("drill and fix {} first", hole_name(hole)),
        MarkWhat::Hole { hole, .. } => format!("strike {} through the plate", hole_name(hole)),
        MarkWhat::Feed => "feed the cables".to_owned(),
        MarkWhat::Plug => "plug in the cables".to_owned(),
        MarkWhat::Test => "try every cable".to_owned(),
        MarkWhat::LiftOn => "lift the piece on and lock it".to_owned(),
        MarkWhat::Check => "check gaps and level".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, well_told};
    use super::*;
    use crate::finding::{Level, What};
    use crate::geometry::Direction;
    use crate::plan::verdict::Want;

    #[test]
    fn every_mark_can_be_next() {
        let mut plan = sample::plan();
        for id in plan.marks.iter().map(|mark| mark.id.clone()).collect::<Vec<_>>() {
            plan.next = Some(Next::Take(id));
            well_told(&next(&plan));
        }
    }

    #[test]
    fn next_tells_what_to_measure_mend_or_take() {
        let mut plan = sample::plan();
        assert_eq!(next(&plan), "Probe at hole 1.");
        plan.next = Some(Next::Measure(sample::assumed_width()));
        assert_eq!(next(&plan), "Measure the display's width.");
        plan.next = Some(Next::Settle {
            piece: crate::subject::Id::new("display-1"),
            want: Want::StandOff(crate::subject::Id::new("mount-1")),
        });
        assert_eq!(next(&plan), "Measure how far the piece's back stands off the wall.");
        let what = What::OffWall { side: Direction::Left, by: sample::inches("2") };
        let subject = crate::subject::Id::new("display-1").whole();
        plan.findings = vec![Finding { level: Level::Stop, subject, what, mend: Mend::Move }];
        plan.next = Some(Next::Mend(0));
        assert_eq!(next(&plan), "Move it: the display goes 2\" past the wall's left end.");
        plan.next = Some(Next::Mend(7));
        assert_eq!(next(&plan), "");
        plan.next = None;
        assert_eq!(next(&plan), "");
    }
}
