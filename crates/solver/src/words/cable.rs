//! The cables' way in words: as steps, as the plan's own lines.

use super::finding::called;
use super::phrase::{amount, count, list, sentence};
use super::things::{above_floor, along};
use crate::handbook::low_voltage::PULL_N;
use crate::job::hidden::HiddenKind;
use crate::job::kit::Signal;
use crate::ledger::{Given, Label};
use crate::plan::Plan;
use crate::plan::cable::{Against, CablePlan, Crosses, Lead, Way, WayBy};
use crate::plan::mark::{Mark, MarkWhat};
use crate::plan::piece::PiecePlan;
use crate::route;
use crate::units::Length;
use crate::wiring::lengths::up_to;

pub(super) fn against_words(against: Against) -> &'static str {
    match against {
        Against::Bore => "it needs a stud bored that may not be",
        Against::Steel => {
            "it needs a steel stud passed, never by a bored hole: only through a factory opening, with a bushing in it"
        }
        Against::Unlisted => "a cable in it is not listed for inside a wall",
        Against::Cord => {
            "a cord of power is never led into a wall nor fixed to its face: ask a licensed electrician"
        }
        Against::Face => "the wall's face was not to be used",
        Against::Bay => "it is in another bay than the one asked for",
        Against::EntryPlace => "the entry was asked for where the wall may not be cut",
        Against::ExitPlace => "the exit was asked for where the wall may not be cut",
    }
}

/// What the plan's text says of a piece's cables, a line an entry; none where no port is used. The other ways are told
/// by `other_ways`.
#[must_use]
pub fn cable(plan: &Plan, piece: &PiecePlan) -> Vec<String> {
    let Some(cable) = &piece.cable else { return Vec::new() };
    let mut lines = Vec::new();
    match &cable.way {
        Some(chosen) => {
            lines.push(format!("Cables: {}.", way(plan, chosen)));
            lines.push(sentence(&costs(plan, chosen)));
        }
        None if cable.leads.is_empty() && cable.power.is_empty() => {
            lines.push("Cables: none of its ports is used.".to_owned());
        }
        None if cable.leads.is_empty() => {
            lines.push("Cables: only power, which is the electrician's.".to_owned());
        }
        None => lines.push("Cables: no way found.".to_owned()),
    }
    lines.extend(cable.leads.iter().filter_map(|lead| lead_line(plan, cable, lead)));
    lines.extend(stud_limits(plan, cable));
    lines
}

/// The other ways, a line an entry.
pub(super) fn other_ways(plan: &Plan, piece: &PiecePlan) -> Vec<String> {
    let others = piece.cable.iter().flat_map(|cable| &cable.alternatives);
    others.map(|other| format!("Else {}.", alternative(plan, other))).collect()
}

/// What a stud may lose, where a way goes through one or would have to; rounded down, as limits are.
fn stud_limits(plan: &Plan, cable: &CablePlan) -> Option<String> {
    let bores = |way: &Way| way.cost.studs_bored > 0;
    let limits = cable.stud.filter(|_| cable.way.as_ref().is_some_and(bores))?;
    let down = |length: Given<Length>| down_to_graduation(plan, length.value);
    Some(format!(
        "A stud here may have a hole of {} bored in its middle at most, over {} with a steel plate, or a notch of {}; these \
         cables need a hole of {}.",
        down(limits.bore),
        down(limits.without_plate),
        down(limits.notch),
        up_to_graduation(plan, cable.bore.value)
    ))
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
    let parts: Vec<String> = way
        .crosses
        .iter()
        .map(|crosses| match crosses {
            Crosses::Hidden(id, HiddenKind::Cable, _) => format!("past {}", called(plan, id)),
            Crosses::Hidden(id, ..) => format!("through {}", called(plan, id)),
            Crosses::Insulation => "past insulation".to_owned(),
            Crosses::Stud(at) => {
                format!("through the stud at {}, bored {}", along(plan, at.x), above_floor(plan, *at))
            }
        })
        .collect();
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
    parts.extend(match way.by {
        WayBy::InWall => some(cost.tight_bends, "turn out of sight", "turns out of sight"),
        WayBy::OnFace => some(cost.tight_bends, "turn", "turns"),
    });
    let shows = route::length(cost.visible_nm);
    if plan.style.steps(shows) != 0 {
        parts.push(format!("{} shows", amount(plan, shows)));
    }
    parts.push(format!("{} long from the ports", amount(plan, route::length(cost.length_nm))));
    parts.join(", ")
}

fn lead_line(plan: &Plan, cable: &CablePlan, lead: &Lead) -> Option<String> {
    let (length, cut) = (lead.length?, lead.cut_length?);
    let which = if cable.leads.len() > 1 {
        format!("Cable of {}", super::things::port_words(plan, &lead.port))
    } else {
        "Cable".to_owned()
    };
    // A stocked length is what it is; a cable that is cut too short is none.
    let taken = match &lead.stock {
        Some(_) => format!("take {}", plan.style.print(cut)),
        None => format!("cut {}", up_to_graduation(plan, cut)),
    };
    let moves = |plan: &Plan, lead: &Lead| {
        let travels = lead.travel.value > Length::default();
        let asked = [
            (lead.plug_reach.label == Label::Assumed, "its plug"),
            (travels && lead.travel.label == Label::Assumed, "how far its mount moves"),
        ];
        let asked: Vec<String> =
            asked.iter().filter(|(is, _)| *is).map(|(_, what)| (*what).to_owned()).collect();
        let of_mount =
            travels.then(|| format!("{} of it for the mount's travel", amount(plan, lead.travel.value)));
        let taken = (!asked.is_empty()).then(|| {
            let are = if asked.len() > 1 { "are" } else { "is" };
            format!("{} {are} not measured, taken long", list(&asked))
        });
        let told: Vec<String> = of_mount.into_iter().chain(taken).collect();
        if told.is_empty() { String::new() } else { format!(" ({})", told.join("; ")) }
    };
    let assumed = |given: Given<Length>, what: &str| {
        if given.label == Label::Assumed {
            format!(" ({what} is not measured, taken long)")
        } else {
            String::new()
        }
    };
    Some(format!(
        "{which}: {} of way{}, {} left over at the port{} and {} below; {taken}{}.",
        amount(plan, length.value),
        assumed(length, "what stands in front of the studs"),
        amount(plan, lead.slack_above.value),
        moves(plan, lead),
        amount(plan, lead.slack_below.value),
        if lead.before_lift { ", plugged before the lift" } else { "" }
    ))
}

/// A length to the next graduation: a hole that is too small is none.
pub(super) fn up_to_graduation(plan: &Plan, length: Length) -> String {
    plan.style.print(up_to(length, plan.style.length_of(1)))
}

/// A limit to the graduation below it.
fn down_to_graduation(plan: &Plan, length: Length) -> String {
    let step = plan.style.length_of(1);
    plan.style.print(step * (length.mm() / step.mm() + 1e-9).floor())
}

/// An opening by its size, and what is to be done about a size that nobody measured.
pub(super) fn opening_size(plan: &Plan, mark: &Mark) -> Option<String> {
    let outline = mark.outline?;
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece);
    let size = piece.and_then(|piece| piece.cable.as_ref()).map(|cable| {
        let [entry, exit] = cable.openings;
        if mark.what == MarkWhat::Exit { exit } else { entry }
    });
    let label = match size.map(|size| size.width.label.weaker(size.height.label)) {
        Some(Label::Memory) => " (from memory: trace the box itself)",
        Some(Label::Assumed) => " (assumed: trace the box itself)",
        _ => "",
    };
    let (width, height) = (plan.style.print(outline.width()), plan.style.print(outline.height()));
    Some(format!("An opening {width} wide and {height} high{label}"))
}

/// What is to be found or measured before an opening is struck; `None` where it waits for nothing of the way's own.
pub(super) fn first_to_find(plan: &Plan, mark: &Mark) -> Option<String> {
    if !matches!(mark.what, MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage) {
        return None;
    }
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece)?;
    let cable = piece.cable.as_ref().filter(|cable| cable.opens_blind())?;
    if !cable.framing_known {
        return Some("Find the studs here first.".to_owned());
    }
    let mut hides = cable.unknown.iter().filter(|one| one.hides_studs());
    hides.next().map(|one| format!("First {}.", super::finding::cable::to_find(plan, one)))
}

/// What is done where the face is opened to pass a stud or a block, as sentences.
pub(super) fn passage(plan: &Plan, mark: &Mark) -> Vec<String> {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece);
    let cable = piece.and_then(|piece| piece.cable.as_ref());
    let crossed = cable.and_then(|cable| {
        let way = cable.way.as_ref()?;
        let mut passages = plan.marks.iter().filter(|one| one.piece == mark.piece && one.what == mark.what);
        let index = passages.position(|one| one.id == mark.id)?;
        // By its number: once it is struck or cut its place is where that was done.
        Some((cable, way.crosses.iter().filter(|crosses| crosses.passage().is_some()).nth(index)?))
    });
    let open = "Circuit off or tester passed first; open the face here, no deeper than the face and no wider than a hand \
                and a drill need, and keep the piece.";
    let through = match crossed {
        // What is not allowed is not told to be done.
        Some((cable, Crosses::Stud(_))) if !cable.may_bore => {
            return vec!["Open nothing here and bore no stud: as it stands that is not allowed.".to_owned()];
        }
        Some((cable, Crosses::Stud(_))) => format!(
            "Bore the stud level through its middle, {} wide.",
            up_to_graduation(plan, cable.bore.value)
        ),
        Some((_, Crosses::Hidden(id, HiddenKind::StudOpening, _))) => {
            format!("Put a bushing into {}.", called(plan, id))
        }
        Some((cable, Crosses::Hidden(id, ..))) => format!(
            "Bore through {}, {} wide, and seal it again round the cables with an approved material.",
            called(plan, id),
            up_to_graduation(plan, cable.bore.value)
        ),
        Some((_, Crosses::Insulation)) | None => return vec![open.to_owned()],
    };
    vec![open.to_owned(), through, "Patch the face when the cables are through.".to_owned()]
}

/// The step of feeding.
pub(super) fn feed(piece: Option<&PiecePlan>) -> Vec<String> {
    let cable = piece.and_then(|piece| piece.cable.as_ref());
    let is_network = |lead: &Lead| lead.signal == Some(Signal::Network);
    match cable.and_then(|cable| cable.way.as_ref()).map(|way| way.by) {
        Some(WayBy::InWall) if cable.is_some_and(CablePlan::leads_cord_inside) => {
            vec!["Lead no power cord into the wall; plan another way first.".to_owned()]
        }
        Some(WayBy::InWall) => {
            let mut told = vec![
                "Fish the cables through, plugs first, and leave a pull string beside them.".to_owned(),
                "Pull by hand only, and bend nothing tighter than its least radius.".to_owned(),
            ];
            if cable.is_some_and(|cable| cable.leads.iter().any(is_network)) {
                told.push(format!("Pull a network cable with no more than {:.0} N.", PULL_N.value));
            }
            told
        }
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
        .map(|lead| lead.slack_above.value - lead.plug_reach.value - lead.travel.value);
    match off.reduce(Length::min) {
        Some(slack) => format!(
            "Hold {words} off the wall, with no more than the {} left over, and plug in what no hand reaches later.",
            amount(plan, slack)
        ),
        None => format!("Plug in what no hand reaches once {words} hangs."),
    }
}
