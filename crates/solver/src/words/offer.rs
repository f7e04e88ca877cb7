//! What an option is to the customer, in plain words: where things hang, what the wall has to give for it, what shows
//! of cables, how it is to look at, whether it will hold.

use super::called::Called;
use super::fastening::{wall_verdict, wanted};
use super::phrase::{amount, count, list, sentence};
use super::sight::{degrees, up_or_down};
use super::things::{above_floor, thing};
use crate::capacity::group::Word;
use crate::finding::Level;
use crate::geometry::Point;
use crate::handbook::viewing::REVIEW_OFF;
use crate::job::option::Nudge;
use crate::plan::Plan;
use crate::plan::cable::{CablePlan, WayBy};
use crate::plan::piece::{Gap, PiecePlan};
use crate::plan::sight::{SeatSight, Seen};
use crate::route;
use crate::sweep::{Full, Nearest, can_hang};
use crate::units::Length;

/// What is told of an option, always in this order, so that options stand beside one another row by row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OfferPart {
    /// Where things hang.
    Place,
    /// The holes that the wall gets.
    Holes,
    /// What shows of cables.
    Cables,
    /// How it is to look at.
    Sight,
    /// Whether it will hold.
    Holds,
}

/// What a part of an offer is headed.
#[must_use]
pub fn offer_part(part: OfferPart) -> &'static str {
    match part {
        OfferPart::Place => "Where",
        OfferPart::Holes => "Holes in the wall",
        OfferPart::Cables => "Cables",
        OfferPart::Sight => "To look at",
        OfferPart::Holds => "Will it hold",
    }
}

/// What an option is to the customer: each part once, in order, with its sentences.
#[must_use]
pub fn offer(plan: &Plan) -> [(OfferPart, String); 5] {
    [
        (OfferPart::Place, joined(plan.pieces.iter().map(|piece| place(plan, piece)), "Nothing hangs here.")),
        (OfferPart::Holes, holes(plan)),
        (
            OfferPart::Cables,
            joined(plan.pieces.iter().filter_map(|piece| cables(plan, piece)), "No cable is planned."),
        ),
        (
            OfferPart::Sight,
            joined(plan.sight.iter().map(|sight| seat(plan, sight)), "No seat is measured yet."),
        ),
        (OfferPart::Holds, holds(plan)),
    ]
}

/// Whether a piece can hang where it is, in a line: what it costs the wall there, or why not and the nearest place that
/// can. `nearest` is what was looked for so far; `None` where nothing was.
#[must_use]
pub fn can_it_go(plan: &Plan, piece: &PiecePlan, nearest: Option<&Nearest>) -> String {
    let here = Full::of(plan, &piece.id, Nudge::default());
    if here.as_ref().is_some_and(can_hang) {
        let mut price = vec![holes(plan)];
        let shows = piece.cable.as_ref().and_then(|cable| cable.way.as_ref()).map(|way| way.cost.visible_nm);
        price.extend(
            shows.filter(|shows| *shows > 0).map(|shows| {
                sentence(&format!("{} of cable can be seen", amount(plan, route::length(shows))))
            }),
        );
        let is_unknown = here.as_ref().is_some_and(|here| here.if_probed == Some(Word::NotKnown));
        if is_unknown {
            let whether = holds(plan);
            return format!("Nothing is in its way there. Will it hold? {whether} {}", price.join(" "));
        }
        let is_sure = piece.mount.as_ref().is_none_or(|mount| mount.fastening.verdict.word == Word::Holds);
        let proviso = if is_sure { "" } else { ", as far as is known before the studs are probed" };
        return format!("Yes, it can go there{proviso}. {}", price.join(" "));
    }
    let why = plan.findings.iter().find(|finding| finding.level == Level::Stop);
    let why =
        why.map_or_else(|| "It would not hold there.".to_owned(), |finding| super::finding(plan, finding));
    let else_where = match nearest {
        Some(nearest) => match (nearest.found(), nearest.is_over()) {
            (Some(full), _) => {
                let by = full.centre.x - piece.outline.centre().x;
                let side = if by < Length::default() { "left" } else { "right" };
                let by = amount(plan, by.abs());
                if full.if_probed == Some(Word::NotKnown) {
                    format!(
                        " The nearest place with nothing in its way: {by} to the {side}; whether it holds there is not \
                         known."
                    )
                } else {
                    format!(" The nearest place that can: {by} to the {side}.")
                }
            }
            (None, true) => " No place within a bay of it can.".to_owned(),
            (None, false) => " Looking for the nearest place that can\u{2026}".to_owned(),
        },
        None => String::new(),
    };
    format!("Not there. {why}{else_where}")
}

/// The words that a customer is asked to agree to: where things hang, and what shows of cables.
#[must_use]
pub fn to_agree(plan: &Plan) -> String {
    let parts = offer(plan).into_iter();
    let told = parts.filter(|(part, _)| matches!(part, OfferPart::Place | OfferPart::Cables));
    told.map(|(_, text)| text).collect::<Vec<_>>().join(" ")
}

fn joined(sentences: impl Iterator<Item = String>, none: &str) -> String {
    let all: Vec<String> = sentences.collect();
    if all.is_empty() { none.to_owned() } else { all.join(" ") }
}

fn place(plan: &Plan, piece: &PiecePlan) -> String {
    let middle = Point::new(piece.outline.centre().x, piece.outline.centre().y);
    let mut parts = vec![format!("its middle {}", above_floor(plan, middle))];
    let from = |gap: &Option<Gap>| {
        let gap = gap.as_ref().filter(|gap| gap.from >= Length::default())?;
        Some(format!("{} from {}", amount(plan, gap.from), thing(plan, &gap.to)))
    };
    parts.extend(from(&piece.gaps.left));
    parts.extend(from(&piece.gaps.right));
    let assumed = if piece.assumed { ", as far as it is measured" } else { "" };
    sentence(&format!("{}: {}{assumed}", Called::piece(plan, piece).words, list(&parts)))
}

fn holes(plan: &Plan) -> String {
    let mounts = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let screws: usize = mounts.map(|mount| mount.fastening.fasteners.len()).sum();
    let ways = plan.pieces.iter().filter_map(|piece| piece.cable.as_ref()?.way.as_ref());
    let openings = ways.filter(|way| way.by == WayBy::InWall && way.entry.is_some()).count() * 2;
    let mut parts = Vec::new();
    if screws > 0 {
        parts.push(count(screws, "fastener", "fasteners"));
    }
    if openings > 0 {
        parts.push(format!("{} for cables", count(openings, "opening", "openings")));
    }
    if parts.is_empty() { "No hole is planned yet.".to_owned() } else { sentence(&list(&parts)) }
}

fn cables(plan: &Plan, piece: &PiecePlan) -> Option<String> {
    let cable = piece.cable.as_ref()?;
    let name = Called::piece(plan, piece).words;
    let mut told = Vec::new();
    if !cable.leads.is_empty() {
        told.push(low_voltage(plan, cable, &name));
    }
    if !cable.power.is_empty() {
        told.push(format!(
            "the power cord of {name} stays outside of the wall, unless a licensed electrician puts an outlet behind it"
        ));
    }
    (!told.is_empty()).then(|| told.iter().map(|clause| sentence(clause)).collect::<Vec<_>>().join(" "))
}

fn low_voltage(plan: &Plan, cable: &CablePlan, name: &str) -> String {
    let Some(way) = &cable.way else {
        return format!("no way was found for the cables of {name}: they hang in sight");
    };
    let where_to = above_floor(plan, way.exit.centre());
    let shown = amount(plan, route::length(way.cost.visible_nm));
    let seen = match (way.by, way.cost.visible_nm > 0) {
        (WayBy::InWall, false) => {
            format!("the cables of {name} are out of sight in the wall and come out {where_to}")
        }
        (WayBy::InWall, true) => format!(
            "the cables of {name} go in the wall and come out {where_to}; {shown} of them can be seen"
        ),
        (WayBy::OnFace, _) => format!("{shown} of channel on the wall carries the cables of {name}"),
    };
    if cable.allowed == Some(false) { format!("{seen}; that is not allowed as it is") } else { seen }
}

fn seat(plan: &Plan, sight: &SeatSight) -> String {
    let from = thing(plan, &sight.seat.whole());
    sentence(&match &sight.seen {
        None => format!("from {from} it cannot be seen: nobody sits behind the picture"),
        Some(seen) => format!("from {from} its middle is {}", neck(seen)),
    })
}

/// How far one looks up, beside what is published.
fn neck(seen: &Seen) -> String {
    let most = REVIEW_OFF.value;
    let held = if seen.up.deg() > most { "more than" } else { "within" };
    let fills = degrees(seen.horizontal);
    format!(
        "{}, {held} the {most:.0} of a review room; the picture fills {fills} of the view",
        up_or_down(seen.up)
    )
}

fn holds(plan: &Plan) -> String {
    let Some((_, fastening)) = wall_verdict(plan) else {
        return "Not known yet: nothing hangs on a mount of its own.".to_owned();
    };
    let verdict = &fastening.verdict;
    match (verdict.word, verdict.if_probed) {
        (Word::Holds, _) => "Yes, by the published values for its fasteners.".to_owned(),
        (_, Word::Holds) => {
            "Yes, once each stud is met where it is expected: they are probed before anything hangs."
                .to_owned()
        }
        (Word::Short, _) | (_, Word::Short) => {
            "Not as it is planned: other fasteners, another plate or another place is needed.".to_owned()
        }
        (Word::NotKnown, Word::NotKnown) => match wanted(plan, fastening).first() {
            Some(first) => format!("Not known yet: {first}."),
            None => "Not known yet.".to_owned(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, well_told};
    use super::*;

    #[test]
    fn every_part_is_told_once_and_well() {
        let mut plan = sample::plan();
        plan.sight = vec![crate::plan::sight::sample()];
        for (part, text) in offer(&plan) {
            assert!(!text.is_empty(), "{part:?}");
            for sentence in text.split_inclusive(". ") {
                well_told(sentence.trim());
            }
        }
        let order: Vec<OfferPart> = offer(&plan).into_iter().map(|(part, _)| part).collect();
        assert_eq!(order[0], OfferPart::Place);
        assert_eq!(order[4], OfferPart::Holds);
        assert!(to_agree(&plan).contains("above the floor"), "{}", to_agree(&plan));
    }

    #[test]
    fn of_nothing_there_is_something_to_say() {
        let mut plan = sample::plan();
        plan.pieces.clear();
        plan.sight.clear();
        for (_, text) in offer(&plan) {
            well_told(&text);
        }
    }

    #[test]
    fn whether_it_holds_is_never_told_better_than_the_verdict() {
        let mut plan = sample::plan();
        let words = [Word::Holds, Word::Short, Word::NotKnown];
        for word in words {
            for if_probed in words {
                let verdict = &mut plan.pieces[0].mount.as_mut().unwrap().fastening.verdict;
                (verdict.word, verdict.if_probed) = (word, if_probed);
                let text = holds(&plan);
                text.split_inclusive(". ").for_each(|sentence| well_told(sentence.trim()));
                let says_yes = text.starts_with("Yes");
                assert_eq!(
                    says_yes,
                    word == Word::Holds || if_probed == Word::Holds,
                    "{word:?} {if_probed:?}"
                );
                if word != Word::Holds && says_yes {
                    assert!(text.contains("once each stud is met"), "{text}");
                }
            }
        }
    }
}
