//! What would clear a finding.

use super::fastening::{kind_name, share, size_name};
use super::phrase::{amount, capital, count, one_line, way};
use crate::capacity::group::Word;
use crate::geometry::{Axis, Direction};
use crate::job::Job;
use crate::job::kit::FastenerKind;
use crate::job::mount::MountKind;
use crate::mend::{Change, Gives, MendPlan};
use crate::plan::Plan;
use crate::subject::Id;

/// A mend of a finding of this plan, as a sentence: what to change, and what that gives.
#[must_use]
pub fn mend(job: &Job, plan: &Plan, mend: &MendPlan) -> String {
    capital(&format!("{}: {}.", change(job, plan, &mend.change), gives(&mend.change, &mend.gives)))
}

fn change(job: &Job, plan: &Plan, change: &Change) -> String {
    let size = |length| amount(plan, length);
    match change {
        Change::Move { direction, by } => {
            let toward = if direction.axis() == Axis::Across { " to the" } else { "" };
            format!("move {}{toward} {}", size(*by), way(*direction))
        }
        Change::Length { kind, diameter, length } => {
            let named = size_name(plan, *kind, *diameter, *length);
            format!("take {}", named.replacen("screw ", "screws ", 1))
        }
        Change::More { kind, diameter, length, more } => {
            format!("bring {more} more of {}", sized(plan, *kind, *diameter, *length))
        }
        Change::RowBetween => "a plate with one more row of holes between its rows".to_owned(),
        Change::RowBelow { by } => {
            format!("a plate {} higher with one more row of holes below", size(*by))
        }
        Change::Wider { side, by } => {
            let side = match side {
                Some(Direction::Left) => "on the next stud to the left",
                Some(_) => "on the next stud to the right",
                None => "on the next stud to either side",
            };
            format!("a plate {} wider with holes {side}", size(*by))
        }
        Change::Mount { mount } => format!("hang it on {}", mount_name(job, mount)),
        Change::CutAway { thickness } => {
            format!("cut away the {} in front of the concrete under the plate", size(*thickness))
        }
    }
}

/// A size as it is known.
fn sized(
    plan: &Plan,
    kind: FastenerKind,
    diameter: Option<crate::units::Length>,
    length: Option<crate::units::Length>,
) -> String {
    match (diameter, length) {
        (Some(diameter), Some(length)) => size_name(plan, kind, diameter, length),
        _ => kind_name(kind).to_owned(),
    }
}

/// What a mount of the job is called.
fn mount_name(job: &Job, id: &Id) -> String {
    let mount = job.mount(id);
    let name = mount.and_then(|mount| mount.name.as_deref()).map(one_line).unwrap_or_default();
    match mount {
        Some(_) if !name.is_empty() => name,
        Some(mount) => format!("the other {}", mount_kind(mount.kind)),
        None => format!("\"{id}\""),
    }
}

/// A kind of mount.
pub(super) fn mount_kind(kind: MountKind) -> &'static str {
    match kind {
        MountKind::Flush => "flush mount",
        MountKind::Tilting => "tilting mount",
        MountKind::Arm => "arm mount",
        MountKind::PullDown => "pull-down mount",
    }
}

/// What a change gives: of a move how the holes meet studs, then whether it holds.
fn gives(change: &Change, gives: &Gives) -> String {
    let mut parts = Vec::new();
    let is_of_studs = matches!(change, Change::Move { .. } | Change::Wider { .. } | Change::Mount { .. });
    if is_of_studs && gives.holes > 0 {
        let verb = if gives.holes == 1 { "meets" } else { "meet" };
        let studs = count(gives.studs, "stud", "studs");
        parts.push(format!("{} {verb} {studs}", count(gives.holes, "hole", "holes")));
    }
    parts.push(holds(gives));
    match gives.cautions {
        0 => {}
        1 => parts.push("with one caution more".to_owned()),
        more => parts.push(format!("with {more} cautions more")),
    }
    parts.join(", ")
}

fn holds(gives: &Gives) -> String {
    let used = gives.used.map(|used| format!(", {} used", share(used))).unwrap_or_default();
    let fasteners = count(gives.fasteners, "fastener", "fasteners");
    let verb = if gives.fasteners == 1 { "holds" } else { "hold" };
    match (gives.word, gives.if_probed) {
        (_, Word::Short) => "still short".to_owned(),
        (_, Word::NotKnown) => "clears it; whether it then holds is not known yet".to_owned(),
        (Word::Holds, Word::Holds) => format!("{fasteners} {verb}{used}"),
        (_, Word::Holds) => format!("{fasteners} {verb} if probed{used}"),
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::job::mount::Mount;

    const HOLDS: Gives = Gives {
        word: Word::Holds,
        if_probed: Word::Holds,
        used: Some(0.8162),
        fasteners: 6,
        holes: 2,
        studs: 1,
        cautions: 0,
    };

    fn said(change: Change, gives: Gives) -> String {
        let mut job = Job::new();
        job.mounts.push(Mount { id: Id::new("mount-2"), kind: MountKind::Tilting, ..Mount::default() });
        job.mounts.push(Mount { id: Id::new("mount-3"), name: Some("Wide one".into()), ..Mount::default() });
        let text = mend(&job, &sample::plan(), &MendPlan { change, job: None, gives });
        well_told(&text);
        text
    }

    #[test]
    fn a_move_says_what_the_holes_meet() {
        let change = |direction| Change::Move { direction, by: inches("7/8") };
        let text = said(change(Direction::Left), HOLDS);
        assert_eq!(text, "Move 7/8\" to the left: two holes meet one stud, six fasteners hold, 0.82 used.");
        let unknown = Gives { if_probed: Word::NotKnown, holes: 1, cautions: 1, ..HOLDS };
        let text = said(change(Direction::Up), unknown);
        let then = "one hole meets one stud, clears it; whether it then holds is not known yet, with one caution more";
        assert_eq!(text, format!("Move 7/8\" up: {then}."));
        let text =
            said(change(Direction::Down), Gives { if_probed: Word::Short, holes: 0, cautions: 2, ..HOLDS });
        assert_eq!(text, "Move 7/8\" down: still short, with 2 cautions more.");
    }

    #[test]
    fn every_other_change_says_what_to_bring_or_find() {
        let (kind, diameter) = (FastenerKind::Lag, inches("5/16"));
        let probed = Gives { word: Word::NotKnown, ..HOLDS };
        let then = "six fasteners hold if probed, 0.82 used";
        let changes = [
            (Change::Length { kind, diameter, length: inches("4") }, "Take lag screws 5/16\" x 4\""),
            (
                Change::More { kind, diameter: Some(diameter), length: Some(inches("3")), more: 2 },
                "Bring 2 more of lag screw 5/16\" x 3\"",
            ),
            (Change::RowBetween, "A plate with one more row of holes between its rows"),
            (Change::RowBelow { by: inches("8") }, "A plate 8\" higher with one more row of holes below"),
            (
                Change::CutAway { thickness: inches("1/2") },
                "Cut away the 1/2\" in front of the concrete under the plate",
            ),
        ];
        for (change, lead) in changes {
            assert_eq!(said(change, probed), format!("{lead}: {then}."));
        }
        for (side, words) in [
            (Some(Direction::Left), "on the next stud to the left"),
            (Some(Direction::Right), "on the next stud to the right"),
            (None, "on the next stud to either side"),
        ] {
            assert!(said(Change::Wider { side, by: inches("16") }, HOLDS).contains(words));
        }
        let mount = |id| Change::Mount { mount: Id::new(id) };
        assert!(said(mount("mount-2"), HOLDS).starts_with("Hang it on the other tilting mount: "));
        assert!(said(mount("mount-3"), HOLDS).starts_with("Hang it on Wide one: "));
        assert!(said(mount("gone"), HOLDS).contains("\"gone\""));
    }
}
