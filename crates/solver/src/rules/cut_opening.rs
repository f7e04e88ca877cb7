//! An opening that is cut stays: what it meets there, what would show of it, and that cables want another bay.

use crate::finding::{CutMeets, Finding, Level, Mend, What};
use crate::geometry::{Direction, Rect};
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::framing::Stud;
use crate::plan::mark::MarkWhat;
use crate::plan::piece::PiecePlan;
use crate::subject::Id;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for fact in &plan.facts {
        let mark = plan.marks.iter().find(|mark| fact.is_own && mark.id == fact.mark);
        // Its mark knows the size of what the plan opens where the fact does not.
        let Some(usual) = fact.opening() else { continue };
        let cut = mark.and_then(|mark| mark.outline).unwrap_or(usual);
        let mut met = in_the_wall(plan, cut);
        if mark.is_some_and(|mark| mark.what == MarkWhat::Passage) {
            // It was opened to get through these.
            let is_passed = |id: &Id| {
                plan.survey.hidden.iter().any(|one| {
                    one.id == *id && matches!(one.kind, HiddenKind::FireBlock | HiddenKind::StudOpening)
                })
            };
            met.retain(|(_, meets)| match meets {
                CutMeets::Hidden(id) => !is_passed(id),
                CutMeets::Stud => false,
                _ => true,
            });
        }
        if !fact.is_own {
            // Of what was cut for another option only what it is on matters here.
            met.retain(|(level, _)| *level == Level::Stop);
        }
        let piece = plan.pieces.iter().find(|piece| fact.is_own && piece.id == fact.mark.id);
        if let Some(piece) = piece.filter(|_| fact.mark.part_str() == "entry") {
            met.extend(behind(plan, piece, cut));
        }
        told.extend(met.into_iter().map(|(level, meets)| Finding {
            level,
            subject: fact.mark.clone(),
            what: What::CutOpening { meets },
            mend: Mend::OnSite,
        }));
    }
    told
}

/// What an entry as cut has to tell of its piece and of where its cables would rather have it.
fn behind(plan: &Plan, piece: &PiecePlan, cut: Rect) -> Vec<(Level, CutMeets)> {
    let mut told = Vec::new();
    let mount = piece.mount.as_ref();
    let here = || studs_at(plan, cut);
    if mount.is_some_and(|mount| mount.solids.iter().any(|solid| solid.overlaps(cut))) {
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
    if let Some(wanted) = mount.and_then(|mount| mount.entry_wanted) {
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
    use crate::geometry::Point;
    use crate::job::fact::{CutSize, FactState};
    use crate::job::hidden::HiddenKind;
    use crate::plan::fact::PlacedFact;
    use crate::subject::Id;

    /// An opening of the display, cut with its middle there.
    fn cut(part: &str, x: f64, y: f64, size: Option<(f64, f64)>) -> PlacedFact {
        PlacedFact {
            id: Id::new("fact-1"),
            mark: Id::new("display-1").part(part),
            option: None,
            is_own: true,
            state: FactState::Cut,
            place: Some(Point::new(mm(x), mm(y))),
            right_end: None,
            fastener: None,
            size: size.map(|(width, height)| CutSize { width: mm(width), height: mm(height) }),
        }
    }

    fn meets(room: &Sample) -> Vec<CutMeets> {
        let told = room.told(check).into_iter().map(|(_, _, what)| match what {
            What::CutOpening { meets } => meets,
            other => panic!("{other:?}"),
        });
        told.collect()
    }

    #[test]
    fn an_opening_as_cut_tells_what_it_meets_and_what_shows() {
        let mut room = Sample::good();
        let mut told = |x: f64, wanted: Option<(f64, f64)>| -> Vec<CutMeets> {
            room.plan.facts = vec![cut("entry", x, 1338.0, Some((50.0, 76.0)))];
            room.mounted().entry_wanted = wanted.map(|wanted| rect(wanted, (1300.0, 1376.0)));
            meets(&room)
        };
        // Studs stand at 1800 and 2200; the display's right edge is 2600.
        assert_eq!(told(1925.0, None), []);
        assert_eq!(told(1815.0, None), [CutMeets::Stud]);
        assert_eq!(told(2325.0, Some((1900.0, 1950.0))), [CutMeets::OtherBay]);
        let shows = CutMeets::Shows { side: Direction::Right, by: mm(40.0) };
        assert!(told(2615.0, None).contains(&shows));
    }

    #[test]
    fn an_opening_cut_on_a_pipe_is_a_stop_whatever_the_plan_makes_of_it() {
        let mut room = Sample::good();
        room.plan.survey.hidden.push(crate::plan::survey::PlacedHidden {
            id: Id::new("pipe-1"),
            kind: HiddenKind::Pipe,
            name: String::new(),
            rect: rect((1945.0, 1960.0), (0.0, 2400.0)),
            assumed: false,
        });
        let told = [CutMeets::Hidden(Id::new("pipe-1"))];
        for part in ["entry", "exit"] {
            // 50 wide about 1925 is up to 1950; so is the gang of an unknown size.
            room.plan.facts = vec![cut(part, 1925.0, 1338.0, Some((50.0, 76.0)))];
            assert_eq!(meets(&room), told);
            room.plan.facts = vec![cut(part, 1925.0, 1338.0, None)];
            assert_eq!(meets(&room), told);
            room.plan.facts = vec![cut(part, 1925.0, 1338.0, Some((30.0, 30.0)))];
            assert_eq!(meets(&room), []);
        }
        room.plan.facts = vec![cut("entry", 1925.0, 1338.0, None)];
        // No way was found, no mount is chosen, the piece hangs no more.
        room.plan.pieces[0].cable = None;
        assert_eq!(meets(&room), told);
        room.plan.pieces[0].mount = None;
        assert_eq!(meets(&room), told);
        room.plan.pieces.clear();
        assert_eq!(meets(&room), told);
        room.plan.facts[0].is_own = false;
        assert_eq!(meets(&room), told, "cut for another option");
        assert_eq!(room.told(check)[0].0, Level::Stop);
    }

    #[test]
    fn an_exit_as_cut_tells_what_it_meets_in_the_wall() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        // A stud stands at 2200; an exit is no entry, so that nothing of it can show past the piece.
        room.plan.facts = vec![cut("exit", 2215.0, 400.0, Some((50.0, 76.0)))];
        let told =
            [(Level::Caution, "display-1.exit".to_owned(), What::CutOpening { meets: CutMeets::Stud })];
        assert_eq!(room.told(check), told);
    }
}
