//! What the wished place needs of the play, and where else more studs are met.

use super::phrase::{amount, count};
use crate::plan::Plan;
use crate::plan::piece::{Meets, MountedPlan, PiecePlan};
use crate::units::Length;

/// What the wished place needs of the play and meets; `None` where studs do not come into it: no mount, no
/// holes, nothing known of the framing, or a solid wall.
#[must_use]
pub fn wish(plan: &Plan, piece: &PiecePlan) -> Option<String> {
    let mount = piece.mount.as_ref()?;
    let solid = mount.holes.iter().any(|hole| hole.meets == Meets::Masonry);
    if mount.holes.is_empty() || !plan.framing.known || solid {
        return None;
    }
    let mut parts =
        vec![format!("{}, {}", play(plan, mount.offset), count(mount.wish.studs, "stud", "studs"))];
    parts.extend(amiss(mount));
    if mount.wish.most_studs > mount.wish.studs {
        let most = count(mount.wish.most_studs, "stud", "studs");
        for (by, side) in [(mount.wish.left, "left"), (mount.wish.right, "right")] {
            if let Some(by) = by {
                parts.push(format!("{} further {side} {most}", amount(plan, by)));
            }
        }
    }
    Some(format!("{}: {}.", place(plan, piece), parts.join("; ")))
}

/// Where the piece is to be: at its rule's place, or how far from there.
fn place(plan: &Plan, piece: &PiecePlan) -> String {
    let aside = piece.outline.centre().x - piece.ruled_centre.x;
    match plan.style.steps(aside) {
        0 => "As wished".to_owned(),
        steps => {
            let side = if steps < 0 { "left" } else { "right" };
            format!("{} {side} of the wished place", amount(plan, aside))
        }
    }
}

fn play(plan: &Plan, offset: Length) -> String {
    match plan.style.steps(offset) {
        0 => "no play used".to_owned(),
        steps => {
            format!("{} of play to the {}", amount(plan, offset), if steps < 0 { "left" } else { "right" })
        }
    }
}

/// Holes that meet what no fastener should.
fn amiss(mount: &MountedPlan) -> Vec<String> {
    let kinds = [
        (Meets::StudEdge, "too near a stud's edge"),
        (Meets::Hidden, "on something hidden"),
        (Meets::OffWall, "off the wall or over an opening"),
    ];
    let counted = kinds.into_iter().filter_map(|(meets, words)| {
        let holes = mount.holes.iter().filter(|hole| hole.meets == meets).count();
        (holes > 0).then(|| format!("{} {words}", count(holes, "hole", "holes")))
    });
    counted.collect()
}
