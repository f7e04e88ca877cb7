//! The cables' way in words: as findings, as steps, as the plan's own lines.

use super::phrase::{amount, count, list, sentence};
use super::things::{above_floor, along, piece_words, whole};
use crate::finding::Finding;
use crate::finding::cable::CableWhat;
use crate::job::hidden::HiddenKind;
use crate::plan::Plan;
use crate::plan::cable::{Against, CablePlan, Crosses, Lead, Way, WayBy};
use crate::plan::piece::PiecePlan;
use crate::route;
use crate::subject::Id;
use crate::units::Length;

fn called(plan: &Plan, id: &Id) -> String {
    whole(plan, id).map_or_else(|| format!("\"{id}\""), |called| called.words)
}

/// A finding as a clause.
pub(super) fn clause(plan: &Plan, finding: &Finding, what: &CableWhat) -> String {
    let piece = || piece_words(plan, &finding.subject);
    let size = |length| amount(plan, length);
    let opening = |exit: &bool| if *exit { "the cables' exit" } else { "the cables' opening" };
    match what {
        CableWhat::NoWay { is_there: false, .. } => {
            format!("no way leads from the ports of {} to where the cables should end", piece())
        }
        CableWhat::NoWay { against, .. } => {
            let told: Vec<String> = against.iter().map(|one| against_words(*one).to_owned()).collect();
            format!(
                "no way for the cables of {} is both hidden and allowed; the least bad is told, and {}",
                piece(),
                list(&told)
            )
        }
        CableWhat::EntryShows { swung: false } => {
            format!("the cables' opening is not fully hidden behind {}", piece())
        }
        CableWhat::EntryShows { swung: true } => {
            format!("swung out, {} does not hide the cables' opening", piece())
        }
        CableWhat::BayBlocked { by, passed: true } => {
            format!("{} stands in the cables' way straight down, and they go through it", called(plan, by))
        }
        CableWhat::BayBlocked { by, passed: false } => {
            format!("{} stands in the cables' way straight down, so they go another way", called(plan, by))
        }
        CableWhat::ExitBay { beside, shows } => format!(
            "the cables come out in another bay than {}: {} of them shows",
            called(plan, beside),
            size(*shows)
        ),
        CableWhat::SealPierced { insulated, barrier, outside } => {
            let mut through = Vec::new();
            through.extend(insulated.then(|| "insulation".to_owned()));
            through.extend(barrier.then(|| "a vapour barrier".to_owned()));
            through.extend(outside.then(|| "the seal of an outside wall".to_owned()));
            format!("the cables' openings go through {}: close them again round the cables", list(&through))
        }
        CableWhat::NearOpening { feature: Some(feature), exit } => format!(
            "a cable of {} may run behind {}: circuit off, look in before cutting",
            called(plan, feature),
            opening(exit)
        ),
        CableWhat::NearOpening { feature: None, exit } => format!(
            "{} is in the band along the wall's top or beside its inside corner, where cables may run",
            opening(exit)
        ),
        CableWhat::PowerApart { other, apart, wanted } => format!(
            "the cables come within {} of {}; keep {} from power",
            size(*apart),
            called(plan, other),
            size(*wanted)
        ),
        CableWhat::TooLong { length, longest } => format!(
            "a cable of {} has to be {} and carries over {}; take an active or optical one, or a shorter way",
            piece(),
            size(*length),
            size(*longest)
        ),
        CableWhat::BendTight { needs, room } => format!(
            "a plug or the bend of its cable needs {} behind {}, and there is {}",
            size(*needs),
            piece(),
            size(*room)
        ),
        CableWhat::BoxDeep { deep, room, exit } => format!(
            "the box for {} is {} deep, and the wall has {} behind its face",
            opening(exit),
            size(*deep),
            size(*room)
        ),
        CableWhat::NailPlate { left } => format!(
            "a bored hole leaves {} to the stud's face: nail a steel plate over it, at least 1/16 in thick",
            size(*left)
        ),
        CableWhat::SealBlock { block } => format!(
            "where the cables pass {}, seal it again with an approved material and patch the face",
            called(plan, block)
        ),
        CableWhat::PaintDisturbed { hundredths } => format!(
            "{}.{:02} square feet of paint are disturbed: old paint may hold lead, and from 6 on it is no minor repair",
            hundredths / 100,
            hundredths % 100
        ),
        CableWhat::BreastWay => {
            "the cables run in a chimney breast: have the flue found first, heat ends a cable".to_owned()
        }
        CableWhat::PowerCord => format!(
            "the power cord of {} never goes into the wall or on to its face: for the electrician, an outlet behind it, \
             or an in-wall power kit if listed for it",
            piece()
        ),
        CableWhat::NotListed { unknown: true } => {
            "whether every cable is listed for inside a wall is not known: read its jacket".to_owned()
        }
        CableWhat::NotListed { unknown: false } => {
            "a cable is not listed for inside a wall: take one that is".to_owned()
        }
        CableWhat::TubeFull { percent, most } => {
            format!("the tube would be {percent} % full, and may be {most} %")
        }
        CableWhat::StockShort { needs } => {
            format!("no cable on the truck is long enough for {}: {} are needed", piece(), size(*needs))
        }
        CableWhat::ManyBends => {
            "the way turns by more than 360 degrees: leave a place to pull from between".to_owned()
        }
    }
}

fn against_words(against: Against) -> &'static str {
    match against {
        Against::Bore => "it needs a stud bored that may not be",
        Against::Unlisted => "a cable in it is not listed for inside a wall",
        Against::Face => "the wall's face was not to be used",
        Against::Bay => "it is in another bay than the one asked for",
        Against::EntryPlace => "the opening was asked for where the wall may not be cut",
        Against::ExitPlace => "the exit was asked for where the wall may not be cut",
    }
}

/// What the plan's text says of a piece's cables, a line an entry; none where no port is used.
#[must_use]
pub fn cable(plan: &Plan, piece: &PiecePlan) -> Vec<String> {
    let Some(cable) = &piece.cable else { return Vec::new() };
    let mut lines = Vec::new();
    match &cable.way {
        Some(chosen) => {
            lines.push(format!("Cables: {}.", way(plan, chosen)));
            lines.push(sentence(&costs(plan, chosen)));
        }
        None if cable.leads.is_empty() => {
            lines.push("Cables: only power, which is the electrician's.".to_owned());
        }
        None => lines.push("Cables: no way found.".to_owned()),
    }
    lines.extend(cable.leads.iter().filter_map(|lead| lead_line(plan, cable, lead)));
    lines.extend(cable.alternatives.iter().map(|other| format!("Else {}.", alternative(plan, other))));
    lines
}

/// A way: where it goes in, what it goes through, where it comes out.
#[must_use]
pub fn way(plan: &Plan, way: &Way) -> String {
    let place = |at| format!("{}, {}", along(plan, at), above_floor(plan, way.exit.centre()));
    let out = place(way.exit.centre().x);
    match (way.by, way.entry) {
        (WayBy::InWall, Some(entry)) => {
            let at = entry.centre();
            let through = through(plan, way);
            format!(
                "in at {}, {}, inside the wall{through}, out at {out}",
                along(plan, at.x),
                above_floor(plan, at)
            )
        }
        _ => format!("in a raceway on the wall's face, to {out}"),
    }
}

/// A way as an entry of the list of others: what sets it apart.
#[must_use]
pub fn alternative(plan: &Plan, other: &Way) -> String {
    format!("{}: {}", way(plan, other), costs(plan, other))
}

fn through(plan: &Plan, way: &Way) -> String {
    let mut parts: Vec<String> = way
        .crosses
        .iter()
        .filter_map(|crosses| match crosses {
            Crosses::Hidden(id, HiddenKind::Cable) => Some(format!("past {}", called(plan, id))),
            Crosses::Hidden(id, _) => Some(format!("through {}", called(plan, id))),
            Crosses::Insulation => Some("past insulation".to_owned()),
            Crosses::Stud(_) => None,
        })
        .collect();
    let studs = way.crosses.iter().filter(|crosses| matches!(crosses, Crosses::Stud(_))).count();
    if studs > 0 {
        parts.push(format!("through {}", count(studs, "bored stud", "bored studs")));
    }
    if parts.is_empty() { String::new() } else { format!(" {}", list(&parts)) }
}

/// What a way costs, without what it does not.
fn costs(plan: &Plan, way: &Way) -> String {
    let cost = way.cost;
    let some = |number: u32, one: &str, many: &str| {
        (number > 0).then(|| count(usize::try_from(number).unwrap_or(usize::MAX), one, many))
    };
    let mut parts: Vec<String> = way.against.iter().map(|one| against_words(*one).to_owned()).collect();
    parts.extend(some(cost.studs_bored, "stud bored", "studs bored"));
    parts.extend(some(cost.patches, "patch", "patches"));
    parts.extend(some(cost.blocks, "fire block passed", "fire blocks passed"));
    parts.extend(some(cost.tight_bends, "turn out of sight", "turns out of sight"));
    let shows = route::length(cost.visible_nm);
    if plan.style.steps(shows) != 0 {
        parts.push(format!("{} shows", amount(plan, shows)));
    }
    parts.push(format!("{} long from the ports", amount(plan, route::length(cost.length_nm))));
    parts.join(", ")
}

fn lead_line(plan: &Plan, cable: &CablePlan, lead: &Lead) -> Option<String> {
    let (length, cut) = (lead.length?, lead.cut_length?);
    let which = if cable.leads.len() > 1 { format!("Cable \"{}\"", lead.id) } else { "Cable".to_owned() };
    let taken = if lead.stock.is_some() && !lead.stock_short { "take" } else { "cut" };
    Some(format!(
        "{which}: {} of way, {} left over at the port and {} below; {taken} {}{}.",
        amount(plan, length),
        amount(plan, lead.slack_above),
        amount(plan, lead.slack_below),
        up_to_graduation(plan, cut),
        if lead.before_lift { ", plugged before the lift" } else { "" }
    ))
}

/// A length to the next graduation: a cable that is too short is none.
fn up_to_graduation(plan: &Plan, length: Length) -> String {
    let step = plan.style.length_of(1);
    plan.style.print(step * (length.mm() / step.mm() - 1e-9).ceil())
}

/// The step of feeding.
pub(super) fn feed(piece: Option<&PiecePlan>) -> Vec<String> {
    let way = piece.and_then(|piece| piece.cable.as_ref()).and_then(|cable| cable.way.as_ref());
    match way.map(|way| way.by) {
        Some(WayBy::InWall) => vec![
            "Fish the cables through, plugs first, and leave a pull string beside them.".to_owned(),
            "Pull by hand only, and bend nothing tighter than its least radius.".to_owned(),
        ],
        Some(WayBy::OnFace) => {
            vec!["Fix the raceway on the wall's face and lay the cables in it.".to_owned()]
        }
        None => vec!["Lay the cables where they are to go.".to_owned()],
    }
}

/// The step of plugging before the lift.
pub(super) fn plug(plan: &Plan, piece: Option<&PiecePlan>, words: &str) -> String {
    let cable = piece.and_then(|piece| piece.cable.as_ref());
    let off = cable
        .iter()
        .flat_map(|cable| &cable.leads)
        .filter(|lead| lead.before_lift)
        .map(|lead| lead.slack_above);
    match off.reduce(Length::max) {
        Some(slack) => format!(
            "Hold {words} off the wall, with no more than the {} left over, and plug in what no hand reaches later.",
            amount(plan, slack)
        ),
        None => format!("Plug in what no hand reaches once {words} hangs."),
    }
}
