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

pub(super) fn play(plan: &Plan, offset: Length) -> String {
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

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;

    #[test]
    fn the_play_and_the_studs_are_told() {
        let plan = sample::plan();
        assert_eq!(
            wish(&plan, &plan.pieces[0]).unwrap(),
            "As wished: 1 1/4\" of play to the right, two studs."
        );
    }

    #[test]
    fn more_studs_elsewhere_and_holes_amiss_are_told() {
        let mut plan = sample::plan();
        let piece = &mut plan.pieces[0];
        piece.ruled_centre.x += inches("2");
        let mount = piece.mount.as_mut().unwrap();
        mount.offset = inches("-1/2");
        mount.wish.studs = 1;
        mount.wish.left = Some(inches("7/8"));
        mount.wish.right = Some(inches("3"));
        mount.holes[1].meets = Meets::StudEdge;
        let text = wish(&plan, &plan.pieces[0]).unwrap();
        assert_eq!(
            text,
            "2\" left of the wished place: 1/2\" of play to the left, one stud; one hole too near a stud's edge; \
             7/8\" further left two studs; 3\" further right two studs."
        );
        well_told(&text);
    }

    #[test]
    fn where_studs_do_not_come_into_it_nothing_is_told() {
        let mut plan = sample::plan();
        plan.framing.known = false;
        assert_eq!(wish(&plan, &plan.pieces[0]), None);
        let mut plan = sample::plan();
        plan.pieces[0].mount.as_mut().unwrap().holes[0].meets = Meets::Masonry;
        assert_eq!(wish(&plan, &plan.pieces[0]), None);
        plan.pieces[0].mount = None;
        assert_eq!(wish(&plan, &plan.pieces[0]), None);
    }
}
