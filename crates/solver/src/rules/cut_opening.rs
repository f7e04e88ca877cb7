//! An opening that is cut stays: what it meets there, what would show of it, and that cables want another bay.

use crate::finding::{CutMeets, Finding, Level, Mend, What};
use crate::geometry::{Direction, Rect};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::framing::Stud;
use crate::plan::mark::{Mark, MarkState, MarkWhat};
use crate::plan::piece::{MountedPlan, PiecePlan};
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let is_cut =
        |mark: &&Mark| matches!(mark.what, MarkWhat::Entry | MarkWhat::Exit) && mark.state == MarkState::Cut;
    let mut told = Vec::new();
    for mark in plan.marks.iter().filter(is_cut) {
        let Some(piece) = plan.pieces.iter().find(|piece| piece.id == mark.piece) else { continue };
        let met = match (&mark.what, &piece.mount) {
            (MarkWhat::Exit, _) => {
                let way = piece.cable.as_ref().and_then(|cable| cable.way.as_ref());
                way.map(|way| in_the_wall(plan, way.exit)).unwrap_or_default()
            }
            (_, Some(mount)) => meets(plan, piece, mount),
            (_, None) => continue,
        };
        told.extend(met.into_iter().map(|(level, meets)| Finding {
            level,
            subject: mark.id.clone(),
            what: What::CutOpening { meets },
            mend: Mend::OnSite,
        }));
    }
    told
}

/// What an opening as cut has to tell, the gravest first.
fn meets(plan: &Plan, piece: &PiecePlan, mount: &MountedPlan) -> Vec<(Level, CutMeets)> {
    let Some(cut) = mount.entry else { return Vec::new() };
    let mut told = in_the_wall(plan, cut);
    let here = || studs_at(plan, cut);
    if mount.solids.iter().any(|solid| solid.overlaps(cut)) {
        told.push((Level::Caution, CutMeets::Plate));
    }
    let outline = piece.outline;
    let past = [
        (Direction::Left, outline.left - cut.left),
        (Direction::Right, cut.right - outline.right),
        (Direction::Up, cut.top - outline.top),
        (Direction::Down, outline.bottom - cut.bottom),
    ];
    for (side, by) in past.into_iter().filter(|(_, by)| by.mm() > SAME_PLACE_MM) {
        told.push((Level::Caution, CutMeets::Shows { side, by }));
    }
    if let Some(wanted) = mount.entry_wanted {
        let (a, b) = (cut.centre().x.min(wanted.centre().x), cut.centre().x.max(wanted.centre().x));
        if here().any(|stud| a < stud.centre && stud.centre < b) {
            told.push((Level::Caution, CutMeets::OtherBay));
        }
    }
    told
}

/// What an opening meets in the wall.
fn in_the_wall(plan: &Plan, cut: Rect) -> Vec<(Level, CutMeets)> {
    let mut told = Vec::new();
    for hidden in plan.survey.hidden.iter().filter(|hidden| hidden.rect.overlaps(cut)) {
        told.push((Level::Stop, CutMeets::Hidden(hidden.id.clone())));
    }
    if studs_at(plan, cut).any(|stud| stud.left < cut.right && cut.left < stud.right) {
        told.push((Level::Caution, CutMeets::Stud));
    }
    told
}

/// The studs of the plane that an opening is in.
fn studs_at(plan: &Plan, cut: Rect) -> impl Iterator<Item = &Stud> {
    let on = plan.survey.breast_at(cut.centre().x, Some(cut.centre().y)).map(|breast| &breast.id);
    plan.framing.studs.iter().filter(move |stud| stud.on.as_ref() == on)
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm, rect};
    use super::*;
    use crate::job::hidden::HiddenKind;
    use crate::subject::Id;

    #[test]
    fn an_opening_as_cut_tells_what_it_meets_and_what_shows() {
        let mut room = Sample::good();
        let mut mark = room.plan.marks[0].clone();
        (mark.id, mark.what) = (Id::new("display-1").part("entry"), MarkWhat::Entry);
        mark.piece = Id::new("display-1");
        mark.state = MarkState::Cut;
        room.plan.marks.push(mark);
        let mut told = |across: (f64, f64), wanted: Option<(f64, f64)>| -> Vec<CutMeets> {
            room.mounted().entry = Some(rect(across, (1300.0, 1376.0)));
            room.mounted().entry_wanted = wanted.map(|wanted| rect(wanted, (1300.0, 1376.0)));
            let told = room.told(check).into_iter().map(|(_, _, what)| match what {
                What::CutOpening { meets } => meets,
                other => panic!("{other:?}"),
            });
            told.collect()
        };
        // Studs stand at 1800 and 2200.
        assert_eq!(told((1900.0, 1950.0), None), []);
        assert_eq!(told((1790.0, 1840.0), None), [CutMeets::Stud]);
        assert_eq!(told((2300.0, 2350.0), Some((1900.0, 1950.0))), [CutMeets::OtherBay]);
        let shows = CutMeets::Shows { side: Direction::Right, by: mm(40.0) };
        assert!(told((2590.0, 2640.0), None).contains(&shows));
        room.mounted().entry = Some(rect((1900.0, 1950.0), (1300.0, 1376.0)));
        room.plan.survey.hidden.push(crate::plan::survey::PlacedHidden {
            id: Id::new("cable-1"),
            kind: HiddenKind::Cable,
            name: String::new(),
            rect: rect((1930.0, 1940.0), (0.0, 2400.0)),
            assumed: false,
        });
        let told = room.told(check);
        let meets = CutMeets::Hidden(Id::new("cable-1"));
        assert_eq!(told, [(Level::Stop, "display-1.entry".to_owned(), What::CutOpening { meets })]);
    }
    #[test]
    fn an_exit_as_cut_tells_what_it_meets_in_the_wall() {
        let mut room = Sample::good();
        let mut mark = room.plan.marks[0].clone();
        (mark.id, mark.what) = (Id::new("display-1").part("exit"), MarkWhat::Exit);
        mark.piece = Id::new("display-1");
        mark.state = MarkState::Cut;
        room.plan.marks.push(mark);
        assert!(room.told(check).is_empty());
        let way = room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap();
        // A stud stands at 2200.
        way.exit = rect((2190.0, 2240.0), (368.0, 444.0));
        let meets = CutMeets::Stud;
        let told = [(Level::Caution, "display-1.exit".to_owned(), What::CutOpening { meets })];
        assert_eq!(room.told(check), told);
    }
}
