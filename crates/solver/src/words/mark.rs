//! The sentences of a mark: what to strike or do, and how it is found.

use super::assumed::first_to_measure;
use super::called::Called;
use super::fastening::{fastener_at, fastener_name, lead};
use super::phrase::{amount, capital, edge, sentence};
use super::reading::readings;
use super::things::{above_floor, hole_name, left_end, thing};
use crate::geometry::{Direction, Point};
use crate::job::mount::MountKind;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat};
use crate::plan::piece::{Gap, PiecePlan};
use crate::subject::Id;
use crate::tape::Style;
use crate::units::{Length, LengthUnit};

/// The sentences of a mark, its readings among them.
#[must_use]
pub fn mark(plan: &Plan, mark: &Mark) -> String {
    let mut told = super::done::at_mark(plan, mark);
    if mark.assumed {
        let first = super::cable::first_to_find(plan, mark).unwrap_or_else(|| first_to_measure(plan));
        told.push(format!("Assumed: do not strike. {first}"));
    }
    if !mark.is_needed {
        // Of what the plan asks for no more only where it is: nothing is to be done there.
        told.extend(found(plan, mark));
        return told.join(" ");
    }
    told.extend(body(plan, mark));
    if mark.on_tape {
        told.push("On tape, not in pencil.".to_owned());
    }
    told.join(" ")
}

/// What is done at a mark, a sentence an entry.
fn body(plan: &Plan, mark: &Mark) -> Vec<String> {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece);
    let words = piece.map_or_else(|| "the piece".to_owned(), |piece| Called::piece(plan, piece).words);
    let found = found(plan, mark);
    match &mark.what {
        MarkWhat::Sweep { upper } => sweep(plan, mark, *upper),
        MarkWhat::Corner { .. } => {
            with(found, &["Let the customer stand back and nod before anything else is struck."])
        }
        MarkWhat::LevelLine => level_line(plan, mark),
        MarkWhat::CentreLine => with(found, &["Strike it plumb, showing above and below the plate."]),
        MarkWhat::PieceCentre => with(found, &[&format!("A tick where the middle of {words} comes.")]),
        MarkWhat::Help => with(found, &["A short tick, only to measure another mark from."]),
        MarkWhat::MakeSafe => owned(&[
            "Switch off the circuits in this wall, or pass a tester over every place to be probed or drilled.",
            "Prove the tester on something live first.",
        ]),
        MarkWhat::Probe { depth, thickness_measured, .. } => probe(plan, mark, *depth, *thickness_measured),
        MarkWhat::Look => with(
            owned(&["Circuit off or tester passed first."]),
            &[
                "Look into the bay through a small hole inside the entry's outline: cable, pipe, insulation, block.",
            ],
        ),
        MarkWhat::Entry => opening(plan, mark, &format!("hidden behind {words}")),
        MarkWhat::Hole { hole, first: true, held } => {
            let name = hole_name(hole);
            let mut told = vec![format!("First {name}, from its reading.")];
            told.extend(found);
            told.push(fixed(plan, mark, hole, true));
            if *held {
                told.push(
                    "Stand the plate on a ledger or have a second person hold it for this one.".to_owned(),
                );
            }
            told.push("Turn the plate to the level line.".to_owned());
            told
        }
        MarkWhat::Hole { hole, .. } => {
            let mut told = vec![fixed(plan, mark, hole, false)];
            told.extend(through_the_plate(plan, mark, found));
            told.retain(|sentence| !sentence.is_empty());
            told
        }
        MarkWhat::Exit => opening(plan, mark, "where the cables come out"),
        MarkWhat::Passage => found.into_iter().chain(super::cable::passage(plan, mark)).collect(),
        MarkWhat::RacewayEnd => {
            with(found, &["The middle of the raceway's end, on its face: nothing is cut there."])
        }
        MarkWhat::Feed => super::cable::feed(piece),
        MarkWhat::Plug => vec![super::cable::plug(plan, piece, &words)],
        MarkWhat::Test => {
            owned(&["Plug in the rest, switch on, and try every cable before anything is closed."])
        }
        MarkWhat::LiftOn if piece.is_some_and(|piece| piece.mount.is_none()) => {
            vec![sentence(&format!("put {words} in its place and fix it as its maker says"))]
        }
        MarkWhat::LiftOn => vec![sentence(&format!("lift {words} on and lock it to its plate"))],
        MarkWhat::Check => check(plan, piece, &words),
    }
}

/// The readings; where there are none, the place itself.
fn found(plan: &Plan, mark: &Mark) -> Vec<String> {
    match mark.place {
        Some(place) if mark.readings.is_empty() => vec![at(plan, place)],
        _ => readings(plan, mark),
    }
}

fn at(plan: &Plan, place: Point) -> String {
    format!("At {}, {}.", super::things::along(plan, place.x), above_floor(plan, place))
}

fn sweep(plan: &Plan, mark: &Mark, upper: bool) -> Vec<String> {
    let row = if upper { "upper" } else { "lower" };
    let along = match mark.line {
        Some((from, to)) => {
            let height = Point::new(plan_middle(from.x, to.x), plan_middle(from.y, to.y));
            format!("{}, about {}", roughly(plan, from.x, to.x), above_floor(plan, height))
        }
        None => "over the piece's width and a bay to each side".to_owned(),
    };
    let mut told = vec![sentence(&format!("sweep along the {row} hole row, {along}"))];
    told.extend(readings(plan, mark));
    told.push("A strip of tape on each hit; read all hits from one datum in one pull.".to_owned());
    told
}

fn level_line(plan: &Plan, mark: &Mark) -> Vec<String> {
    let mut told = found(plan, mark);
    let Some((left, right)) = mark.line else {
        told.push("Strike it level.".to_owned());
        return told;
    };
    let run = roughly(plan, left.x, right.x);
    let rise = right.y - left.y;
    if plan.style.steps(rise) == 0 {
        told.push(format!("Strike it level, {run}."));
    } else {
        let end = if rise > Length::default() { "right" } else { "left" };
        told.push(format!(
            "Join its two ends, {run}; it is not level: its {end} end is {} higher.",
            amount(plan, rise)
        ));
    }
    told
}

fn probe(plan: &Plan, mark: &Mark, depth: Option<Length>, thickness_measured: bool) -> Vec<String> {
    let mut told = owned(&["Circuit off or tester passed first."]);
    told.extend(found(plan, mark));
    told.push(match depth {
        Some(depth) => format!("Set the bit's stop to {} and go no deeper.", plan.style.print(depth)),
        None => {
            "What stands in front of the framing is not measured: go in slowly and stop where the face gives."
                .to_owned()
        }
    });
    told.push("Note wood, air, shallow wood or metal.".to_owned());
    if !thickness_measured {
        told.push(
            "The first to meet air gives the thickness in front of the framing: a bent wire hooked behind, pinched \
             at the face."
                .to_owned(),
        );
    }
    told
}

/// An opening for the cables; `what` says what it is for.
fn opening(plan: &Plan, mark: &Mark, what: &str) -> Vec<String> {
    let size = super::cable::opening_size(plan, mark);
    let mut told: Vec<String> = size.map(|size| format!("{size}, {what}.")).into_iter().collect();
    told.extend(found(plan, mark));
    told.push(
        "Strike its outline; circuit off or tester passed first; cut no deeper than the face.".to_owned(),
    );
    told
}

/// What goes into a hole, as far as the schedule tells; of the first to be fixed how.
fn fixed(plan: &Plan, mark: &Mark, hole: &Id, first: bool) -> String {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece);
    let planned = piece.and_then(|piece| fastener_at(plan, piece, hole));
    let Some(planned) = planned else {
        return if first {
            "No fastener is chosen for it yet: strike it, and drill nothing before one is.".to_owned()
        } else {
            String::new()
        };
    };
    let name = fastener_name(plan, planned);
    let lead = lead(plan, planned);
    match (first, lead) {
        (true, Some(lead)) => format!(
            "Drill its {lead}, and put the {name} through the plate's hole, in to three turns less than home."
        ),
        (true, None) => format!(
            "Drill its hole by the fastener's own instructions and put the {name} through the plate's hole, in to three \
             turns less than home."
        ),
        (false, Some(lead)) => format!("{}, {lead}.", capital(&name)),
        (false, None) => format!("{}, its hole by the fastener's own instructions.", capital(&name)),
    }
}

/// A hole that is struck through the plate; the last of its piece tells what comes after all of them.
fn through_the_plate(plan: &Plan, mark: &Mark, found: Vec<String>) -> Vec<String> {
    let mut told = owned(&["Strike it through the plate's hole; the reading is the check."]);
    told.extend(found);
    let same = plan.marks.iter().filter(|other| other.piece == mark.piece);
    let last = same.rev().find(|other| matches!(other.what, MarkWhat::Hole { .. }));
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece);
    let is_fixed = piece
        .and_then(|piece| piece.mount.as_ref())
        .is_some_and(|mount| !mount.fastening.fasteners.is_empty());
    if is_fixed && last.is_some_and(|last| last.id == mark.id) {
        told.push(
            "Then take the plate off, drill the lead holes at their depth, the bit's stop set to it, put the plate on again \
             and tighten from the middle outward, snug by hand at the end, never hammered. One that spins is stripped: \
             mark it so, and another hole is found."
                .to_owned(),
        );
    }
    told
}

fn check(plan: &Plan, piece: Option<&PiecePlan>, words: &str) -> Vec<String> {
    let mut told = vec![format!("Check that {words} hangs level.")];
    if let Some(piece) = piece {
        let sides = [(&piece.gaps.left, Direction::Left), (&piece.gaps.right, Direction::Right)];
        for (gap, side) in sides {
            if let Some(gap) = gap {
                let (by, to) = (plan.style.print(gap.from), thing(plan, &gap.to));
                told.push(sentence(&format!("from its {} {by} to {to}", edge(side))));
            }
        }
        if let Some(gap) = &piece.gaps.below {
            told.push(below(plan, gap));
        }
        let droops = |kind: MountKind| matches!(kind, MountKind::Arm | MountKind::PullDown);
        if piece.mount.as_ref().is_some_and(|mount| droops(mount.kind)) {
            told.push(format!("Measure how far the arm comes down under {words}, and set the height again."));
        }
    }
    told.push("Take the tape off.".to_owned());
    told
}

fn below(plan: &Plan, gap: &Gap) -> String {
    let (left, right, to) = (plan.style.print(gap.from), plan.style.print(gap.other), thing(plan, &gap.to));
    if left == right {
        format!("Below it {left} to {to}.")
    } else {
        format!("Below it to {to} {left} at its left end, {right} at its right end.")
    }
}

/// From where to where along the wall, to the inch or the centimetre: for a line's ends nobody has to meet.
fn roughly(plan: &Plan, from: Length, to: Length) -> String {
    let zero = plan.survey.outline.left;
    let (from, to) = (rounded(plan.style, from - zero), rounded(plan.style, to - zero));
    let end = left_end(plan);
    let print = |length: Length| plan.style.print(length.abs());
    if to <= Length::default() {
        format!("from about {} to about {} left of {end}", print(from), print(to))
    } else if from < Length::default() {
        format!("from about {} left to about {} right of {end}", print(from), print(to))
    } else {
        format!("from about {} to about {} right of {end}", print(from), print(to))
    }
}

fn rounded(style: Style, length: Length) -> Length {
    match style.graduation.unit() {
        LengthUnit::Millimetre => Length::millimetres((length.mm() / 10.0).round() * 10.0),
        LengthUnit::Inch | LengthUnit::Mil => Length::inches(length.in_inches().round()),
    }
}

fn plan_middle(a: Length, b: Length) -> Length {
    a + (b - a) / 2.0
}

fn owned(sentences: &[&str]) -> Vec<String> {
    sentences.iter().map(|sentence| (*sentence).to_owned()).collect()
}

fn with(mut told: Vec<String>, more: &[&str]) -> Vec<String> {
    told.extend(more.iter().map(|sentence| (*sentence).to_owned()));
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;

    fn told(plan: &Plan, id: &str) -> String {
        mark(plan, plan.marks.iter().find(|mark| mark.id.to_string() == id).unwrap())
    }

    #[test]
    fn every_mark_is_well_told() {
        let plan = sample::plan();
        for each in &plan.marks {
            well_told(&mark(&plan, each));
        }
    }

    #[test]
    fn the_level_line_tells_both_ends_and_where_it_runs() {
        assert_eq!(
            told(&sample::plan(), "display-1.level_line"),
            "At its left end from the floor read up 52\". At its right end from the floor read up 52 1/4\". Strike \
             it level, from about 12\" to about 36\" right of the left corner."
        );
    }

    #[test]
    fn a_turned_line_is_not_told_to_be_struck_level() {
        let mut plan = sample::plan();
        let level = plan.marks.iter_mut().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        level.line = level.line.map(|(left, right)| (left, Point::new(right.x, right.y + inches("1/8"))));
        let text = told(&plan, "display-1.level_line");
        assert!(text.contains("not level: its right end is 1/8\" higher."), "{text}");
        assert!(!text.contains("Strike it level"), "{text}");
    }

    #[test]
    fn a_hole_is_read_from_the_two_lines_in_one_sentence() {
        let text = told(&sample::plan(), "display-1.hole-2");
        assert!(
            text.contains("From the level line, down 1 1/2\"; from the centre line, right 8\"."),
            "{text}"
        );
        assert!(!text.contains("outward"), "nothing is fixed before a fastener is chosen: {text}");
        let mut plan = sample::plan();
        sample::fasten(&mut plan, "hole-2");
        let text = told(&plan, "display-1.hole-2");
        assert!(
            text.contains("tighten from the middle outward") && text.ends_with("another hole is found."),
            "the last hole tells what comes after: {text}"
        );
        assert!(!told(&plan, "display-1.hole-1").contains("outward"));
    }

    #[test]
    fn the_first_hole_of_a_heavy_plate_is_held() {
        let mut plan = sample::plan();
        let first = plan.marks.iter_mut().find(|mark| mark.id.part_str() == "hole-1").unwrap();
        assert!(!told(&sample::plan(), "display-1.hole-1").contains("ledger"));
        if let MarkWhat::Hole { held, .. } = &mut first.what {
            *held = true;
        }
        let text = told(&plan, "display-1.hole-1");
        assert!(text.contains("drill nothing before one is") && text.contains("ledger"), "{text}");
        sample::fasten(&mut plan, "hole-1");
        let text = told(&plan, "display-1.hole-1");
        assert!(text.contains("three turns less than home") && text.contains("ledger"), "{text}");
    }

    #[test]
    fn a_probe_tells_its_stop_and_how_the_thickness_is_found() {
        let text = told(&sample::plan(), "display-1.hole-1.probe");
        assert!(text.starts_with("Circuit off or tester passed first."), "{text}");
        assert!(text.contains("stop to 1 3/8\"") && text.contains("bent wire"), "{text}");
        let mut plan = sample::plan();
        let probe = plan.marks.iter_mut().find(|mark| matches!(mark.what, MarkWhat::Probe { .. })).unwrap();
        probe.what = MarkWhat::Probe {
            hole: crate::subject::Id::new("hole-1"),
            depth: None,
            thickness_measured: true,
        };
        let text = told(&plan, "display-1.hole-1.probe");
        assert!(text.contains("stop where the face gives") && !text.contains("bent wire"), "{text}");
    }

    #[test]
    fn the_check_tells_gaps_and_droop() {
        let mut plan = sample::plan();
        let text = told(&plan, "display-1.check");
        assert!(text.contains("From its left edge 1 1/4\" to the wall's left end."), "{text}");
        assert!(
            text.contains("Below it to the mantel's top 4\" at its left end, 4 1/4\" at its right end."),
            "{text}"
        );
        assert!(!text.contains("arm"), "{text}");
        plan.pieces[0].mount.as_mut().unwrap().kind = MountKind::Arm;
        assert!(told(&plan, "display-1.check").contains("how far the arm comes down under the display"));
    }

    #[test]
    fn what_hangs_on_an_assumption_is_not_to_be_struck() {
        let mut plan = sample::plan();
        plan.assumed = vec![sample::assumed_width()];
        plan.marks[0].assumed = true;
        let text = mark(&plan, &plan.marks[0]);
        assert!(text.starts_with("Assumed: do not strike. Measure the display's width."), "{text}");
    }

    #[test]
    fn what_is_not_covered_goes_on_tape() {
        let text = told(&sample::plan(), "display-1.corner_top_left");
        assert!(text.ends_with("On tape, not in pencil."), "{text}");
    }
}
