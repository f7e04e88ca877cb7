//! What the customer agreed to is a place that they saw: a piece that was moved since is asked about again.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let option = wall.options.iter().find(|option| Some(&option.id) == plan.option.as_ref());
    let Some(agreed) = option.and_then(|option| option.agreed.as_ref()) else { return Vec::new() };
    let told = agreed.places.iter().filter_map(|agreed| {
        let piece = plan.pieces.iter().find(|piece| piece.id == agreed.piece)?;
        let now = piece.frame.origin;
        let (right, up) = (now.x - agreed.middle.x.length(), now.y - agreed.middle.y.length());
        // What nobody can tell on a tape is the same place.
        let is_moved = plan.style.steps(right.abs()) != 0 || plan.style.steps(up.abs()) != 0;
        is_moved.then(|| Finding {
            level: Level::Caution,
            subject: piece.id.whole(),
            what: What::MovedSinceAgreed { right, up },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::agreed::{Agreed, AgreedPlace};
    use crate::job::fact::Spot;
    use crate::subject::Id;
    use crate::tape::Offset;

    #[test]
    fn what_was_moved_since_is_asked_about_again() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let option = room.job.walls[0].options[0].id.clone();
        room.plan.option = Some(option);
        let at = room.plan.pieces[0].frame.origin;
        let mut agreed = |x: f64, y: f64| {
            let middle = Spot { x: Offset(at.x - mm(x)), y: Offset(at.y - mm(y)) };
            let places = vec![AgreedPlace { piece: Id::new("display-1"), middle }];
            room.job.walls[0].options[0].agreed = Some(Agreed { words: "There.".to_owned(), places });
            room.told(check).into_iter().map(|(_, _, what)| what).collect::<Vec<_>>()
        };
        assert_eq!(agreed(0.0, 0.0), []);
        assert_eq!(agreed(0.1, -0.1), [], "no tape shows it");
        let told = agreed(-50.0, 20.0);
        let [What::MovedSinceAgreed { right, up }] = told.as_slice() else { panic!("{told:?}") };
        assert!((right.mm() + 50.0).abs() < 1e-6 && (up.mm() - 20.0).abs() < 1e-6);
    }
}
