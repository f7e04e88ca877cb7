//! The cables come out in another bay than the outlet or box that they should end beside: what lies between shows.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::geometry::Span;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::subject::Id;
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(|one| of(one, plan)).collect()
}

fn of(of: &Cabled<'_>, plan: &Plan) -> Vec<Finding> {
    let Some(way) = of.in_wall() else { return Vec::new() };
    let mut found = Vec::new();
    let mut add = |beside: &Id, shows: Length| {
        let what = CableWhat::ExitBay { beside: beside.clone(), shows };
        if !found.contains(&what) {
            found.push(what);
        }
    };
    if let Some(beside) = of.cable.beside.as_ref().filter(|_| !way.in_bay) {
        add(beside, crate::route::length(way.cost.visible_nm));
    }
    // The way is planned for the first that is named; cables that end elsewhere run on in view.
    let others = of.cable.leads.iter().filter_map(|lead| lead.beside.as_ref());
    for beside in others.filter(|beside| Some(*beside) != of.cable.beside.as_ref()) {
        let Some(feature) = plan.survey.features.iter().find(|one| one.id == *beside) else { continue };
        let (from, to) = (way.exit.centre(), feature.rect.centre());
        let between = Span { from: from.x.min(to.x), to: from.x.max(to.x) };
        if plan.framing.studs.iter().any(|stud| between.holds(stud.centre)) {
            add(beside, (to.x - from.x).abs() + (to.y - from.y).abs());
        }
    }
    found.into_iter().map(|what| told(of, Level::Caution, Mend::OnSite, what)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    use crate::job::feature::FeatureKind;
    use crate::plan::cable::Lead;
    #[test]
    fn an_exit_in_another_bay_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.beside = Some(Id::new("outlet-1"));
        let way = cable.way.as_mut().unwrap();
        way.in_bay = false;
        way.cost.visible_nm = 300_000_000;
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::ExitBay { beside: Id::new("outlet-1"), shows: mm(300.0) })
            )]
        );
    }

    #[test]
    fn each_cable_is_held_to_its_own_end() {
        let mut room = Sample::good();
        room.feature("outlet-2", FeatureKind::Outlet, (3200.0, 3270.0), (300.0, 410.0), 5.0);
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        let exit = cable.way.as_ref().unwrap().exit.centre();
        let other = Lead { beside: Some(Id::new("outlet-2")), ..cable.leads[0].clone() };
        cable.leads.push(other.clone());
        cable.leads.push(other);
        let shows = (mm(3235.0) - exit.x).abs() + (mm(355.0) - exit.y).abs();
        let what = What::Cable(CableWhat::ExitBay { beside: Id::new("outlet-2"), shows });
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)], "told once");
        room.plan.framing.studs.clear();
        assert!(room.told(check).is_empty(), "nothing tells that it is another bay");
    }
}
