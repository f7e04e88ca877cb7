//! What a wall offers, in words: the rows that are drawn, what one place gives, and which is the best.

use super::fastening::{share, verdict_word};
use super::framing::percent;
use super::phrase::{amount, capital, count, list};
use crate::finding::Level;
use crate::geometry::{Axis, Point};
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::solve::Coarse;
use crate::sweep::{Full, Place, Told};
use crate::tolerance::WISH_REACH_MM;
use crate::units::Length;

/// What is drawn of every place, from the top down.
pub const SWEEP_ROWS: [&str; 5] =
    ["if probed", "least reserve", "holes in studs", "entry hidden", "findings"];

/// What all of it is called.
pub const SWEEP: &str = "What this wall offers";

/// What one place gives.
#[must_use]
pub fn sweep_place(plan: &Plan, piece: &PiecePlan, place: &Place, axis: Axis) -> String {
    let (centre, gives) = match &place.told {
        Told::Coarse(coarse) => (place.wished, look(coarse)),
        Told::Full(full) => (full.centre, full_told(full)),
    };
    format!("{}: {gives}.", capital(&whereabouts(plan, piece, centre, axis)))
}

/// Which of the places within reach of the wished one is the best; `is_all` where every place is known in full.
#[must_use]
pub fn sweep_best(plan: &Plan, piece: &PiecePlan, best: Option<&Place>, axis: Axis, is_all: bool) -> String {
    let reach = plan.style.print(Length::millimetres(WISH_REACH_MM));
    let known = if is_all { "" } else { " of those known" };
    match best.and_then(|place| match &place.told {
        Told::Full(full) => Some(full),
        Told::Coarse(_) => None,
    }) {
        Some(full) => {
            let at = whereabouts(plan, piece, full.centre, axis);
            let word = full.if_probed.map(|word| format!(", {} if probed", verdict_word(word)));
            let stops = match full.count(Level::Stop) {
                0 => String::new(),
                stops => format!(", with {}", count(stops, "stop", "stops")),
            };
            format!(
                "Best{known} within {reach} of the wished place: {at}{}{stops}.",
                word.unwrap_or_default()
            )
        }
        None => format!("No place{known} is within {reach} of the wished place."),
    }
}

/// How many places are known in full.
#[must_use]
pub fn sweep_known(known: usize, all: usize) -> String {
    format!("{known} of {all} places worked out.")
}

/// Why there is nothing to be shown of a piece, or of none.
#[must_use]
pub fn sweep_nothing(piece: Option<&PiecePlan>) -> String {
    match piece {
        None => "Nothing hangs on this wall.".to_owned(),
        Some(_) => "What was done holds the piece where it is: it does not move this way.".to_owned(),
    }
}

/// Where a place is from the one that the rules wish for.
fn whereabouts(plan: &Plan, piece: &PiecePlan, centre: Point, axis: Axis) -> String {
    let away = centre.along(axis) - piece.ruled_centre.along(axis);
    let side = match (axis, away < Length::default()) {
        (Axis::Across, true) => "left of",
        (Axis::Across, false) => "right of",
        (Axis::Upright, true) => "below",
        (Axis::Upright, false) => "above",
    };
    match plan.style.steps(away) {
        0 => "the wished place".to_owned(),
        _ => format!("{} {side} the wished place", amount(plan, away)),
    }
}

fn look(coarse: &Coarse) -> String {
    let mut parts = vec![holes(coarse.holes_in_studs, coarse.studs)];
    if let Some(chance) = coarse.chance {
        parts.push(format!("the least sure hole {} in solid wood", percent(chance)));
    }
    parts.extend(coarse.entry_hidden.map(entry));
    format!("at a look {}", list(&parts))
}

fn full_told(full: &Full) -> String {
    let mut parts = Vec::new();
    if let Some(word) = full.if_probed {
        parts.push(format!("{} if probed", verdict_word(word)));
    }
    parts.extend(full.used.map(|used| format!("use {}", share(used))));
    parts.push(holes(full.holes_in_studs, full.studs));
    parts.extend(full.entry_hidden.map(entry));
    parts.push(count(full.findings.len(), "finding", "findings"));
    let stops = full.count(Level::Stop);
    let told = list(&parts);
    if stops > 0 { format!("{told}, {} of them", count(stops, "stop", "stops")) } else { told }
}

fn holes(holes: usize, studs: usize) -> String {
    if holes == 0 {
        return count(0, "hole in a stud", "holes in studs");
    }
    format!("{} in {}", count(holes, "hole", "holes"), count(studs, "stud", "studs"))
}

fn entry(is_hidden: bool) -> String {
    if is_hidden { "the entry hidden" } else { "no hidden entry" }.to_owned()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::capacity::group::Word;
    use crate::finding::{Finding, Mend, What};
    use crate::job::option::Nudge;
    use crate::subject::Id;

    fn at(plan: &Plan, right: &str, told: impl Fn(Point) -> Told) -> Place {
        let ruled = plan.pieces[0].ruled_centre;
        let wished = Point::new(ruled.x + inches(right), ruled.y);
        Place { index: 0, wished, told: told(wished) }
    }

    fn full(centre: Point) -> Full {
        Full {
            nudge: Nudge::default(),
            centre,
            if_probed: Some(Word::Holds),
            used: Some(0.625),
            studs: 2,
            holes_in_studs: 4,
            entry_hidden: Some(true),
            findings: Vec::new(),
        }
    }

    #[test]
    fn a_place_tells_what_it_gives() {
        let plan = sample::plan();
        let piece = &plan.pieces[0];
        let place = at(&plan, "1 1/4", |centre| Told::Full(Box::new(full(centre))));
        let told = sweep_place(&plan, piece, &place, Axis::Across);
        assert_eq!(
            told,
            "1 1/4\" right of the wished place: holds if probed, use 0.63, four holes in two studs, the entry \
             hidden and no findings."
        );
        well_told(&told);
        let stop = Finding {
            level: Level::Stop,
            subject: Id::new("display-1").whole(),
            what: What::NoEntry,
            mend: Mend::Move,
        };
        let short = at(&plan, "-2", |centre| {
            Told::Full(Box::new(Full {
                if_probed: Some(Word::Short),
                used: Some(1.25),
                studs: 0,
                holes_in_studs: 0,
                entry_hidden: Some(false),
                findings: vec![stop.clone()],
                ..full(centre)
            }))
        });
        let told = sweep_place(&plan, piece, &short, Axis::Across);
        assert_eq!(
            told,
            "2\" left of the wished place: short if probed, use 1.25, no holes in studs, no hidden entry and one \
             finding, one stop of them."
        );
        well_told(&told);
        let coarse = Coarse { studs: 1, holes_in_studs: 2, chance: Some(0.954), entry_hidden: None };
        let look = at(&plan, "0", |_| Told::Coarse(coarse));
        let told = sweep_place(&plan, piece, &look, Axis::Across);
        assert_eq!(
            told,
            "The wished place: at a look two holes in one stud and the least sure hole 95 % in solid wood."
        );
        well_told(&told);
    }

    #[test]
    fn the_best_and_what_is_missing_are_told() {
        let plan = sample::plan();
        let piece = &plan.pieces[0];
        let place = at(&plan, "-3", |centre| Told::Full(Box::new(full(centre))));
        let told = sweep_best(&plan, piece, Some(&place), Axis::Across, true);
        assert_eq!(
            told,
            "Best within 16\" of the wished place: 3\" left of the wished place, holds if probed."
        );
        well_told(&told);
        let told = sweep_best(&plan, piece, None, Axis::Across, false);
        assert_eq!(told, "No place of those known is within 16\" of the wished place.");
        well_told(&told);
        well_told(&sweep_known(12, 257));
        well_told(&sweep_nothing(Some(piece)));
        well_told(&sweep_nothing(None));
    }
}
