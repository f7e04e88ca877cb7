//! How a display is seen from a seat, each figure beside the published one that it is held against.

use super::called::Called;
use super::phrase::{amount, sentence};
use super::things::whole;
use crate::handbook::viewing::{LEAST_FILLED, MOST_OFF_AXIS, REVIEW_HEIGHTS, REVIEW_OFF, TOLD_APART};
use crate::job::seat::Posture;
use crate::ledger::Label;
use crate::plan::Plan;
use crate::plan::sight::{SeatSight, Seen};
use crate::units::{Angle, Length};

/// How a display is seen from a seat, a sentence a figure; the seat, its eyes and the display lead.
#[must_use]
pub fn sight(plan: &Plan, sight: &SeatSight) -> Vec<String> {
    let display = piece(plan, sight);
    let mut told = vec![sentence(&from(plan, sight, &display))];
    let Some(seen) = &sight.seen else { return told };
    told.extend([
        fills(plan, sight, seen),
        heights(seen),
        up(seen),
        off_axis(seen),
        lines(plan, seen, &display),
        square(plan, sight, seen),
    ]);
    told.extend(mantel(plan, seen));
    told
}

/// A seat in one line: the angles that are asked for first.
#[must_use]
pub fn sight_line(plan: &Plan, sight: &SeatSight) -> String {
    let display = piece(plan, sight);
    match &sight.seen {
        Some(seen) => sentence(&format!(
            "{display} fills {}, its middle is {}, {} off its axis",
            degrees(seen.horizontal),
            up_or_down(seen.up),
            degrees(seen.off_axis)
        )),
        None => sentence(&format!("{display} is not seen from there")),
    }
}

fn piece(plan: &Plan, sight: &SeatSight) -> String {
    let piece = plan.pieces.iter().find(|piece| piece.id == sight.piece);
    piece.map_or_else(|| format!("\"{}\"", sight.piece), |piece| Called::piece(plan, piece).words)
}

/// To a tenth of a degree; never minus nothing.
pub(super) fn degrees(angle: Angle) -> String {
    let told = format!("{:.1} degrees", angle.deg());
    told.strip_prefix("-0.0").map_or(told.clone(), |rest| format!("0.0{rest}"))
}

pub(super) fn up_or_down(angle: Angle) -> String {
    match angle.deg() {
        deg if deg.abs() < 0.05 => "level with the eyes".to_owned(),
        deg if deg < 0.0 => format!("{} down", degrees(angle.abs())),
        _ => format!("{} up", degrees(angle)),
    }
}

fn from(plan: &Plan, sight: &SeatSight, display: &str) -> String {
    let print = |length: Length| amount(plan, length);
    let seat = whole(plan, &sight.seat).map_or_else(|| format!("\"{}\"", sight.seat), |called| called.words);
    let eyes = &sight.eyes;
    let how = match eyes.label {
        Label::Measured => "measured".to_owned(),
        _ => {
            let slump = if sight.posture == Posture::Seated { ", slumped or erect" } else { "" };
            let (low, high) = (print(eyes.low), print(eyes.high));
            format!("nine in ten people from {low} to {high}{slump}; {}", eyes.source)
        }
    };
    let aside = sight.eyes_at.x - sight.picture.centre().x;
    let side = match (sight.in_front, plan.style.steps(aside)) {
        (true, _) => "taken to be straight in front: where along the wall was not read".to_owned(),
        (false, 0) => "straight in front".to_owned(),
        (false, steps) => {
            let side = if steps < 0 { "left" } else { "right" };
            format!("{} {side} of its middle", print(aside))
        }
    };
    let does = if sight.posture == Posture::Seated { "sitting" } else { "standing" };
    let assumed = if sight.assumed { "; assumed, since a place it hangs on was not measured" } else { "" };
    let proud = match sight.proud_assumed {
        true => format!(
            "; its face taken to be {} off the wall, since its depth or its mount's stand-off was not measured",
            print(sight.proud)
        ),
        false => String::new(),
    };
    format!(
        "{seat}, {does}, at {display}: eyes {} from the wall, {side}; {} above the floor ({how}){assumed}{proud}",
        print(sight.from_wall),
        print(eyes.height)
    )
}

fn fills(plan: &Plan, sight: &SeatSight, seen: &Seen) -> String {
    let what = if sight.of_case { "the case, for want of the picture's diagonal," } else { "the picture" };
    let held = if seen.horizontal.deg() < LEAST_FILLED.value { "less than" } else { "at least" };
    sentence(&format!(
        "{what} fills {} from side to side, {held} the {:.0} published ({}), which is had within {} of the wall",
        degrees(seen.horizontal),
        LEAST_FILLED.value,
        LEAST_FILLED.source,
        amount(plan, seen.fills_within)
    ))
}

fn heights(seen: &Seen) -> String {
    let (near, far) = REVIEW_HEIGHTS.value;
    let held = match seen.heights {
        heights if heights < near => "nearer than",
        heights if heights > far => "farther than",
        _ => "within",
    };
    sentence(&format!(
        "it is {:.1} of its own heights away, {held} the {near:.0} to {far:.0} of a review room ({})",
        seen.heights, REVIEW_HEIGHTS.source
    ))
}

fn up(seen: &Seen) -> String {
    let most = REVIEW_OFF.value;
    let held = match (seen.up.deg() > most, seen.top.deg() > most) {
        (true, _) => "over",
        (false, true) => "its top over, its middle within,",
        (false, false) => "within",
    };
    let lowest = match seen.up_lowest == seen.up {
        true => String::new(),
        false => format!(" ({} for the lowest eyes)", up_or_down(seen.up_lowest)),
    };
    sentence(&format!(
        "its middle is {}{lowest}, its top {}: {held} the {most:.0} up published ({}); nothing published recommends \
         looking up",
        up_or_down(seen.up),
        up_or_down(seen.top),
        REVIEW_OFF.source
    ))
}

fn off_axis(seen: &Seen) -> String {
    let (best, most) = (REVIEW_OFF.value, MOST_OFF_AXIS.value);
    let off = seen.off_axis.deg();
    let held = if off > most {
        format!("more than the {most:.0} published as the most ({})", MOST_OFF_AXIS.source)
    } else if off > best {
        format!("within the {most:.0} published as the most ({})", MOST_OFF_AXIS.source)
    } else {
        format!("within the {best:.0} of a review room ({})", REVIEW_OFF.source)
    };
    sentence(&format!("the eyes are {} off its axis, {held}", degrees(seen.off_axis)))
}

fn lines(plan: &Plan, seen: &Seen, display: &str) -> String {
    match seen.lines {
        Some((lines, merge)) => sentence(&format!(
            "its {lines} lines can no longer be told apart beyond {} from the wall ({:.0} minute of arc a line: {})",
            amount(plan, merge),
            TOLD_APART.value,
            TOLD_APART.source
        )),
        None => sentence(&format!(
            "how many lines {display} has is not given, so where they can no longer be told apart is not known"
        )),
    }
}

fn square(plan: &Plan, sight: &SeatSight, seen: &Seen) -> String {
    let print = |length: Length| amount(plan, length);
    let by = if seen.tilt.deg().abs() < 0.05 {
        "it hangs square to these eyes".to_owned()
    } else {
        let way = if seen.tilt < Angle::default() { "back" } else { "forward" };
        let tilts = match seen.tilts {
            None => "how far its mount tilts is not given".to_owned(),
            Some(tilts) if tilts >= seen.tilt.abs() => {
                format!("its mount tilts {:.0} that way", tilts.deg())
            }
            Some(tilts) => format!("its mount tilts only {:.0} that way", tilts.deg()),
        };
        format!(
            "square to these eyes with its middle {} above the floor, or tilted {} {way} where it hangs ({tilts})",
            print(sight.eyes.height),
            degrees(seen.tilt.abs())
        )
    };
    let (most, highest) = (REVIEW_OFF.value, print(seen.highest));
    sentence(&format!("{by}; {most:.0} degrees up are reached with its middle at {highest}"))
}

fn mantel(plan: &Plan, seen: &Seen) -> Option<String> {
    let over = seen.mantel.as_ref()?;
    let mantel = whole(plan, &over.mantel)?.words;
    let lowest = amount(plan, over.lowest);
    Some(sentence(&if over.up.deg() < 0.05 {
        format!(
            "{mantel} costs the neck nothing: on it the picture's middle would be {lowest} above the floor, no \
                 higher than these eyes"
        )
    } else {
        format!(
            "{mantel} costs the neck {}: on it, the lowest it can go, the picture's middle would be {lowest} above the \
             floor; where it hangs it is {}",
            up_or_down(over.up),
            up_or_down(seen.up)
        )
    }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;

    #[test]
    fn every_figure_is_told_beside_a_published_one() {
        let plan = sample::plan_with_seat();
        let told = sight(&plan, &plan.sight[0]);
        told.iter().for_each(|one| well_told(one));
        for (figure, source) in [
            ("fills 31.2 degrees", "SMPTE EG-18"),
            ("2.7 of its own heights", "SMPTE 196M"),
            ("9.5 degrees up", "SMPTE 196M"),
            ("20.0 degrees off its axis", "NUREG-0700"),
            ("2160 lines", "BT.500-14"),
        ] {
            assert!(
                told.iter().any(|one| one.contains(figure) && one.contains(source)),
                "{figure}: {told:#?}"
            );
        }
        assert!(
            told[0].starts_with("Sofa, sitting, at the display: eyes 108\" from the wall"),
            "{}",
            told[0]
        );
        assert!(told.iter().any(|one| one.contains("tilted 9.5 degrees forward")), "{told:#?}");
        assert!(told.last().unwrap().starts_with("The mantel costs the neck 4.0 degrees up"), "{told:#?}");
        well_told(&sight_line(&plan, &plan.sight[0]));
    }

    #[test]
    fn what_is_not_known_is_said() {
        let mut plan = sample::plan_with_seat();
        let one = &mut plan.sight[0];
        one.in_front = true;
        one.of_case = true;
        one.eyes = crate::sight::eyes::Eyes::measured(inches("46"));
        one.seen.as_mut().unwrap().lines = None;
        let told = sight(&plan, &plan.sight[0]).join(" ");
        for words in [
            "was not read",
            "for want of the picture's diagonal",
            "(measured)",
            "lines the display has is not",
        ] {
            assert!(told.contains(words), "{words}: {told}");
        }
        plan.sight[0].seen = None;
        assert_eq!(sight(&plan, &plan.sight[0]).len(), 1);
        well_told(&sight_line(&plan, &plan.sight[0]));
    }

    #[test]
    fn nothing_is_never_minus() {
        assert_eq!(degrees(Angle::degrees(-0.01)), "0.0 degrees");
        assert_eq!(up_or_down(Angle::degrees(-3.0)), "3.0 degrees down");
        assert_eq!(up_or_down(Angle::degrees(0.04)), "level with the eyes");
    }
}
