//! The cables run on the wall's face though nobody asked for that: what speaks against the best way inside the wall.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::WayBy;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let way = &of.hung.hanging?.way;
    let on_face = of.cable.way.as_ref().is_some_and(|way| way.by == WayBy::OnFace);
    let inside = of.cable.alternatives.iter().find(|way| way.by == WayBy::InWall)?;
    let (against, shows) = (inside.against.clone(), crate::route::length(inside.cost.visible_nm));
    (on_face && !way.is_on_face() && (!against.is_empty() || inside.cost.visible_nm > 0))
        .then(|| told(of, Level::Note, Mend::Choose, CableWhat::FaceInstead { against, shows }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::job::option::Surface;
    use crate::plan::cable::Against;
    use crate::units::Length;

    #[test]
    fn why_cables_show_is_told_unless_they_were_wished_so() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        let mut inside = cable.way.clone().unwrap();
        inside.against = vec![Against::Unlisted];
        cable.way.as_mut().unwrap().by = WayBy::OnFace;
        cable.alternatives = vec![inside];
        let against = vec![Against::Unlisted];
        let what = What::Cable(CableWhat::FaceInstead { against, shows: Length::default() });
        assert_eq!(room.told(check), [(Level::Note, "display-1".to_owned(), what)]);
        room.hanging().way.surface = Some(Surface::Only);
        assert!(room.told(check).is_empty());
    }
}
