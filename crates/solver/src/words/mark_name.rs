//! What a mark and a stage of the work are called.

use super::called::Called;
use super::next_probe::is_next;
use super::phrase::capital;
use super::things::hole_name;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat, Stage};

/// The name of a mark, as a heading: `Level line`; with its piece where several hang on the wall.
#[must_use]
pub fn mark_name(plan: &Plan, mark: &Mark) -> String {
    let name = capital(&bare(plan, mark));
    match piece(plan, mark).filter(|_| several(plan) && !names_piece(&mark.what)) {
        Some(called) => format!("{name}, {}", called.bare()),
        None => name,
    }
}

/// A stage of the work, as a heading.
#[must_use]
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Find => "Find",
        Stage::Agree => "Agree",
        Stage::Level => "Level",
        Stage::Probe => "Probe",
        Stage::Open => "Open",
        Stage::Fix => "Fix",
        Stage::Hang => "Hang",
    }
}

/// A mark in the middle of a sentence: `the level line`, `the sound bar's level line`.
pub(super) fn in_words(plan: &Plan, mark: &Mark) -> String {
    match piece(plan, mark) {
        Some(called) if several(plan) && !names_piece(&mark.what) => called.own(&bare(plan, mark)),
        // Its piece may have a name of its own, which takes no article.
        Some(called) if names_piece(&mark.what) => called.own(&of_piece(&mark.what)),
        _ if matches!(mark.what, MarkWhat::Hole { .. }) => bare(plan, mark),
        _ => format!("the {}", bare(plan, mark)),
    }
}

/// What of its piece a mark is that names its piece; empty for any other.
fn of_piece(what: &MarkWhat) -> String {
    match what {
        MarkWhat::Corner { top, left } => {
            let (height, side) = (if *top { "top" } else { "bottom" }, if *left { "left" } else { "right" });
            format!("{height} {side} corner")
        }
        MarkWhat::PieceCentre => "centre".to_owned(),
        _ => String::new(),
    }
}

fn bare(plan: &Plan, mark: &Mark) -> String {
    let named = |part: &str| match piece(plan, mark) {
        Some(called) => called.own(part).trim_start_matches("the ").to_owned(),
        None => format!("piece's {part}"),
    };
    match &mark.what {
        MarkWhat::Sweep { upper: true } => "upper sweep".to_owned(),
        MarkWhat::Sweep { upper: false } => "lower sweep".to_owned(),
        what @ (MarkWhat::Corner { .. } | MarkWhat::PieceCentre) => named(&of_piece(what)),
        MarkWhat::LevelLine => "level line".to_owned(),
        MarkWhat::CentreLine => "centre line".to_owned(),
        MarkWhat::Help => numbered(plan, mark, "helping mark"),
        MarkWhat::MakeSafe => "make safe".to_owned(),
        MarkWhat::Probe { .. } if is_next(mark) => "next probe".to_owned(),
        MarkWhat::Probe { hole, .. } => format!("probe at {}", hole_name(hole)),
        MarkWhat::Look => "look into the bay".to_owned(),
        MarkWhat::Entry => "entry for the cables".to_owned(),
        MarkWhat::Hole { hole, .. } => hole_name(hole),
        MarkWhat::Exit => "exit for the cables".to_owned(),
        MarkWhat::Passage => numbered(plan, mark, "passage for the cables"),
        MarkWhat::RacewayEnd => "end of the raceway".to_owned(),
        MarkWhat::Plug => "plug the cables".to_owned(),
        MarkWhat::Test => "try the cables".to_owned(),
        MarkWhat::Feed => "feed the cables".to_owned(),
        MarkWhat::LiftOn => "lift on".to_owned(),
        MarkWhat::Check => "check".to_owned(),
    }
}

/// Marks of one piece that are alike are numbered where there are several.
fn numbered(plan: &Plan, mark: &Mark, name: &str) -> String {
    let alike = plan.marks.iter().filter(|other| other.piece == mark.piece && other.what == mark.what);
    let ids: Vec<_> = alike.map(|one| &one.id).collect();
    match ids.iter().position(|id| **id == mark.id) {
        Some(place) if ids.len() > 1 => format!("{name} {}", place + 1),
        _ => name.to_owned(),
    }
}

/// Whether the mark's own words name the piece already.
fn names_piece(what: &MarkWhat) -> bool {
    matches!(what, MarkWhat::Corner { .. } | MarkWhat::PieceCentre)
}

/// Whether marks of several pieces stand on the wall, so that each has to say whose it is.
fn several(plan: &Plan) -> bool {
    let mut pieces = plan.marks.iter().map(|mark| &mark.piece);
    let first = pieces.next();
    pieces.any(|piece| Some(piece) != first)
}

fn piece(plan: &Plan, mark: &Mark) -> Option<Called> {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece)?;
    Some(Called::piece(plan, piece))
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use crate::job::piece::PieceKind;
    use crate::subject::Id;

    fn named(plan: &Plan, id: &str) -> String {
        mark_name(plan, plan.marks.iter().find(|mark| mark.id.to_string() == id).unwrap())
    }

    #[test]
    fn marks_are_named_in_trade_words() {
        let plan = sample::plan();
        assert_eq!(named(&plan, "display-1.level_line"), "Level line");
        assert_eq!(named(&plan, "display-1.corner_top_left"), "Display's top left corner");
        assert_eq!(named(&plan, "display-1.piece_centre"), "Display's centre");
        assert_eq!(named(&plan, "display-1.hole-1.probe"), "Probe at hole 1");
        assert_eq!(named(&plan, "display-1.hole-2"), "Hole 2");
    }

    #[test]
    fn with_two_pieces_a_mark_says_whose_it_is() {
        let mut plan = sample::plan();
        let mut bar = plan.pieces[0].clone();
        (bar.id, bar.kind) = (Id::new("bar-1"), PieceKind::SoundBar);
        plan.pieces.push(bar);
        let mut mark = plan.marks.iter().find(|mark| mark.what == MarkWhat::LevelLine).unwrap().clone();
        (mark.id, mark.piece) = (Id::new("bar-1").part("level_line"), Id::new("bar-1"));
        plan.marks.push(mark.clone());
        assert_eq!(mark_name(&plan, &mark), "Level line, sound bar");
        assert_eq!(in_words(&plan, &mark), "the sound bar's level line");
        assert_eq!(named(&plan, "display-1.corner_top_left"), "Display's top left corner");
    }

    #[test]
    fn several_helping_marks_are_numbered() {
        let mut plan = sample::plan();
        let mut help = plan.marks.iter().find(|mark| mark.what == MarkWhat::Help).unwrap().clone();
        assert_eq!(mark_name(&plan, &help), "Helping mark");
        help.id = Id::new("display-1").part("help-2");
        plan.marks.push(help.clone());
        assert_eq!(mark_name(&plan, &help), "Helping mark 2");
    }
}
