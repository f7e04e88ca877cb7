//! What a thing of the plan is called: by its name, else by its kind, told apart from others of that kind.

use super::called::Called;
use super::mark_name;
use super::phrase::one_line;
use crate::geometry::Point;
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::job::piece::PieceKind;
use crate::job::wall::End;
use crate::plan::Plan;
use crate::plan::piece::{HolePlan, PiecePlan};
use crate::plan::survey::PlacedSeat;
use crate::subject::{Id, Subject};
use crate::units::Length;

/// What a thing is called in the middle of a sentence: `the door`, `Garden door`, `the window's left trim`,
/// `hole 3 of the display's plate`. What the plan does not hold is told by its id, in quotes.
#[must_use]
pub fn thing(plan: &Plan, subject: &Subject) -> String {
    if let Some(mark) = plan.marks.iter().find(|mark| mark.id == *subject)
        && !is_hole(plan, subject)
    {
        return mark_name::in_words(plan, mark);
    }
    if let Some((piece, hole)) = hole_of(plan, subject) {
        return format!("{} of {}", hole_name(&hole.id), Called::piece(plan, piece).own("plate"));
    }
    match (whole(plan, &subject.id), subject.part_str()) {
        (None, _) => end_or_level(plan, subject).unwrap_or_else(|| format!("\"{subject}\"")),
        (Some(called), part) => match edge(plan, &subject.id, part) {
            Some(edge) => called.own(edge),
            None => called.words,
        },
    }
}

/// Whether a mark's subject is also a hole's: then it is told as the hole.
fn is_hole(plan: &Plan, subject: &Subject) -> bool {
    hole_of(plan, subject).is_some()
}

/// What a whole thing is called; `None` for what the plan does not hold.
pub(super) fn whole(plan: &Plan, id: &Id) -> Option<Called> {
    if *id == plan.wall {
        return Some(Called::plain("the wall".to_owned()));
    }
    if plan.option.as_ref() == Some(id) {
        return Some(Called::plain("the option".to_owned()));
    }
    if let Some(piece) =
        plan.pieces.iter().find(|piece| piece.id == *id || (piece.hanging == *id && !id.is_empty()))
    {
        return Some(Called::piece(plan, piece));
    }
    if let Some(piece) =
        plan.pieces.iter().find(|piece| piece.mount.as_ref().is_some_and(|mount| mount.id == *id))
    {
        return Some(Called::plain(Called::piece(plan, piece).own("mount")));
    }
    if let Some(piece) = plan.pieces.iter().find(|piece| piece.ports.iter().any(|port| port.id == *id)) {
        let port = port_words(plan, id);
        return Some(Called::plain(format!("{port} of {}", Called::piece(plan, piece).words)));
    }
    let survey = &plan.survey;
    if let Some(feature) = survey.features.iter().find(|feature| feature.id == *id) {
        let alike =
            survey.features.iter().filter(|other| other.kind == feature.kind && other.name.is_empty());
        let alike = alike.map(|other| (&other.id, other.rect.centre())).collect();
        return Some(Called::by_kind(feature_kind(feature.kind), &feature.name, id, alike));
    }
    if let Some(hidden) = survey.hidden.iter().find(|hidden| hidden.id == *id) {
        let alike = survey.hidden.iter().filter(|other| other.kind == hidden.kind && other.name.is_empty());
        let alike = alike.map(|other| (&other.id, other.rect.centre())).collect();
        return Some(Called::by_kind(hidden_kind(hidden.kind), &hidden.name, id, alike));
    }
    if let Some(seat) = survey.seats.iter().find(|seat| seat.id == *id) {
        return Some(seat_called(&survey.seats, seat));
    }
    let hit = survey.hits.iter().find(|hit| hit.id == *id).map(|hit| ("hit", hit.x));
    let hump = || survey.humps.iter().find(|hump| hump.id == *id).map(|hump| ("flatness reading", hump.x));
    let (kind, x) = hit.or_else(hump)?;
    Some(Called::plain(format!("the {kind} {}", along(plan, x))))
}

/// A seat: by its name, else by its number in the job where there are several.
fn seat_called(seats: &[PlacedSeat], seat: &PlacedSeat) -> Called {
    let name = one_line(&seat.name);
    let number = seats.iter().position(|other| other.id == seat.id).unwrap_or_default() + 1;
    Called::plain(match (name.is_empty(), seats.len()) {
        (false, _) => name,
        (true, 1) => "the seat".to_owned(),
        (true, _) => format!("seat {number}"),
    })
}

/// The piece that a subject is about: itself, its mount, its plate's hole or its hanging.
pub(super) fn piece_of<'a>(plan: &'a Plan, subject: &Subject) -> Option<&'a PiecePlan> {
    plan.pieces.iter().find(|piece| {
        piece.id == subject.id
            || (piece.hanging == subject.id && !subject.id.is_empty())
            || piece.mount.as_ref().is_some_and(|mount| mount.id == subject.id)
    })
}

/// The piece that a subject is about, in words; the subject itself where it is about none.
pub(super) fn piece_words(plan: &Plan, subject: &Subject) -> String {
    piece_of(plan, subject).map_or_else(|| thing(plan, subject), |piece| Called::piece(plan, piece).words)
}

/// A part of the piece that a subject is about: `the display's plate`.
pub(super) fn piece_part(plan: &Plan, subject: &Subject, part: &str) -> String {
    match piece_of(plan, subject) {
        Some(piece) => Called::piece(plan, piece).own(part),
        None => format!("the {part}"),
    }
}

/// The hole that a subject names, by the piece or by the mount.
fn hole_of<'a>(plan: &'a Plan, subject: &Subject) -> Option<(&'a PiecePlan, &'a HolePlan)> {
    let piece = piece_of(plan, subject)?;
    let holes = &piece.mount.as_ref()?.holes;
    let hole =
        holes.iter().find(|hole| hole.subject == *subject || hole.id.as_str() == subject.part_str())?;
    Some((piece, hole))
}

/// `hole 3` of `hole-3`, `slot 1` of `slot-1`; any other id in quotes.
pub(super) fn hole_name(id: &Id) -> String {
    for kind in ["hole", "slot"] {
        let number = id.as_str().strip_prefix(kind).and_then(|rest| rest.strip_prefix('-'));
        if let Some(number) = number.filter(|number| !number.is_empty()) {
            return format!("{kind} {number}");
        }
    }
    format!("hole \"{id}\"")
}

/// An edge of a thing; a window's or door's sides are its trim where that stands proud.
fn edge(plan: &Plan, id: &Id, part: &str) -> Option<&'static str> {
    if *id == plan.wall {
        return match part {
            "left" => Some("left end"),
            "right" => Some("right end"),
            _ => None,
        };
    }
    let trim = plan.survey.features.iter().any(|feature| {
        feature.id == *id
            && matches!(feature.kind, FeatureKind::Window | FeatureKind::Door)
            && feature.proud > Length::default()
    });
    match part {
        "left" => Some(if trim { "left trim" } else { "left edge" }),
        "right" => Some(if trim { "right trim" } else { "right edge" }),
        "top" => Some("top"),
        "bottom" => Some("bottom"),
        "centre" => Some("middle"),
        _ => None,
    }
}

/// The words of a job's own datums: its ends, the floor, the control line.
fn end_or_level(plan: &Plan, subject: &Subject) -> Option<String> {
    match (subject.id.as_str(), subject.part_str()) {
        ("left", "") => Some(left_end(plan).to_owned()),
        ("right", "") => Some(right_end(plan).to_owned()),
        ("floor", "") => Some("the floor".to_owned()),
        ("control_line", "") => Some("the control line".to_owned()),
        _ => None,
    }
}

/// The wall's left end.
pub(super) fn left_end(plan: &Plan) -> &'static str {
    match plan.survey.left_end {
        End::InsideCorner => "the left corner",
        End::OutsideCorner | End::Open => "the left end",
    }
}

/// The wall's right end.
pub(super) fn right_end(plan: &Plan) -> &'static str {
    match plan.survey.right_end {
        End::InsideCorner => "the right corner",
        End::OutsideCorner | End::Open => "the right end",
    }
}

/// Where along the wall: `24 1/4" right of the left corner`.
pub(super) fn along(plan: &Plan, x: Length) -> String {
    let from_left = x - plan.survey.outline.left;
    let side = if from_left < Length::default() { "left of" } else { "right of" };
    format!("{} {side} {}", plan.style.print(from_left.abs()), left_end(plan))
}

/// A place by the plate's two lines, right and up of where they cross: `8" left of the centre line`, `1 1/2" below the
/// level line`.
pub(super) fn from_lines(plan: &Plan, right: Length, up: Length) -> [String; 2] {
    let side = |away: Length, positive: &str, negative: &str, line: &str| {
        if plan.style.steps(away) == 0 {
            return format!("on the {line}");
        }
        let side = if away < Length::default() { negative } else { positive };
        format!("{} {side} the {line}", plan.style.print(away.abs()))
    };
    [side(right, "right of", "left of", "centre line"), side(up, "above", "below", "level line")]
}

/// How high at a place: `52" above the floor`.
pub(super) fn above_floor(plan: &Plan, place: Point) -> String {
    let height = place.y - plan.survey.floor.y_at(place.x);
    let side = if height < Length::default() { "below" } else { "above" };
    format!("{} {side} the floor", plan.style.print(height.abs()))
}

/// `1st`, `2nd`, `3rd`, `11th`.
pub(super) fn ordinal(number: usize) -> String {
    let ending = match (number % 100, number % 10) {
        (11..=13, _) => "th",
        (_, 1) => "st",
        (_, 2) => "nd",
        (_, 3) => "rd",
        _ => "th",
    };
    format!("{number}{ending}")
}

/// A kind of piece.
pub(super) fn piece_kind(kind: PieceKind) -> &'static str {
    match kind {
        PieceKind::Display => "display",
        PieceKind::SoundBar => "sound bar",
        PieceKind::Shelf => "shelf",
        PieceKind::Box => "box",
    }
}

/// A kind of feature, without an article: `window`.
#[must_use]
pub(super) fn feature_kind(kind: FeatureKind) -> &'static str {
    match kind {
        FeatureKind::Window => "window",
        FeatureKind::Door => "door",
        FeatureKind::Mantel => "mantel",
        FeatureKind::Bench => "bench",
        FeatureKind::Shelf => "shelf",
        FeatureKind::Outlet => "outlet",
        FeatureKind::Switch => "switch",
        FeatureKind::Vent => "vent",
        FeatureKind::Thermostat => "thermostat",
        FeatureKind::Radiator => "radiator",
        FeatureKind::Baseboard => "baseboard",
        FeatureKind::Crown => "crown moulding",
        FeatureKind::Trim => "trim",
        FeatureKind::Soffit => "soffit",
        FeatureKind::Curtain => "curtain",
        FeatureKind::Panelling => "panelling",
        FeatureKind::ChimneyBreast => "chimney breast",
        FeatureKind::Other => "feature",
    }
}

/// A port by its name, without its piece: `the port "Sound out"`.
#[must_use]
pub(super) fn port_words(plan: &Plan, id: &Id) -> String {
    let port = plan.pieces.iter().flat_map(|piece| &piece.ports).find(|port| port.id == *id);
    let name = port.map(|port| port.name.as_str()).filter(|name| !name.is_empty());
    format!("port \"{}\"", super::phrase::one_line(name.unwrap_or(id.as_str())))
}

/// A kind of hidden thing, without an article: `pipe`.
#[must_use]
pub(super) fn hidden_kind(kind: HiddenKind) -> &'static str {
    match kind {
        HiddenKind::FireBlock => "fire block",
        HiddenKind::Pipe => "pipe",
        HiddenKind::Drain => "drain pipe",
        HiddenKind::Cable => "cable",
        HiddenKind::Duct => "air duct",
        HiddenKind::Flue => "flue",
        HiddenKind::Header => "header",
        HiddenKind::Brace => "brace",
        HiddenKind::StudOpening => "opening in a steel stud",
        HiddenKind::PocketDoor => "sliding door's pocket",
        HiddenKind::BoxBehind => "box on the other side",
        HiddenKind::Other => "hidden thing",
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    fn told(plan: &Plan, text: &str) -> String {
        thing(plan, &Subject::read(text).unwrap())
    }

    #[test]
    fn names_come_before_kinds() {
        let plan = sample::plan();
        assert_eq!(told(&plan, "door-1"), "Garden door");
        assert_eq!(told(&plan, "door-1.left"), "Garden door's left trim");
        assert_eq!(told(&plan, "window-1.left"), "the window's left edge");
        assert_eq!(told(&plan, "mantel-1.top"), "the mantel's top");
        assert_eq!(told(&plan, "display-1"), "the display");
        assert_eq!(told(&plan, "mount-1"), "the display's mount");
        assert_eq!(told(&plan, "display-1.hole-1"), "hole 1 of the display's plate");
        assert_eq!(told(&plan, "mount-1.hole-1"), "hole 1 of the display's plate");
        assert_eq!(told(&plan, "display-1.level_line"), "the level line");
        assert_eq!(told(&plan, "wall-1.left"), "the wall's left end");
        assert_eq!(told(&plan, "left"), "the left corner");
        assert_eq!(told(&plan, "hit-1"), "the hit 16\" right of the left corner");
        assert_eq!(told(&plan, "pipe-1"), "the pipe");
    }

    #[test]
    fn what_is_not_in_the_plan_is_told_by_its_id() {
        assert_eq!(told(&sample::plan(), "door-9.left"), "\"door-9.left\"");
    }

    #[test]
    fn things_of_one_kind_are_told_apart() {
        let mut plan = sample::plan();
        let window = |id: &str, x: f64| {
            let mut window = sample::plan().survey.features[1].clone();
            window.id = Id::new(id);
            window.rect = window.rect.moved(Length::inches(x), Length::default());
            window
        };
        plan.survey.features.push(window("window-2", -8.0));
        assert_eq!(told(&plan, "window-1"), "the right window");
        assert_eq!(told(&plan, "window-2.right"), "the left window's right edge");
        plan.survey.features.push(window("window-3", 9.0));
        assert_eq!(told(&plan, "window-1.left"), "the left edge of the 2nd window from the left");
    }

    #[test]
    fn what_stands_one_above_another_is_told_apart_by_its_height() {
        let mut plan = sample::plan();
        let one = plan.survey.features[1].clone();
        let mut windows = |at: &[(&str, f64, f64)]| {
            plan.survey.features.retain(|feature| feature.kind != one.kind);
            for (id, right, up) in at {
                let mut window = one.clone();
                window.id = Id::new(id);
                window.rect = one.rect.moved(Length::inches(*right), Length::inches(*up));
                plan.survey.features.push(window);
            }
            at.iter().map(|(id, ..)| told(&plan, id)).collect::<Vec<_>>()
        };
        assert_eq!(windows(&[("a", 0.0, 9.0), ("b", 1.0, 0.0)]), ["the upper window", "the lower window"]);
        assert_eq!(
            windows(&[("a", 0.0, 9.0), ("b", 0.0, 0.0), ("c", 0.0, 18.0)]),
            ["the 2nd window from below", "the 1st window from below", "the 3rd window from below"]
        );
        assert_eq!(
            windows(&[("a", 0.0, 9.0), ("b", 0.0, 0.0), ("c", 20.0, 0.0)]),
            ["the left upper window", "the left lower window", "the right window"]
        );
        assert_eq!(
            windows(&[("a", 0.0, 9.0), ("b", 0.0, 0.0), ("c", 20.0, 0.0), ("d", 40.0, 0.0)]),
            [
                "the upper window, 1st from the left",
                "the lower window, 1st from the left",
                "the 2nd window from the left",
                "the 3rd window from the left"
            ]
        );
    }

    #[test]
    fn ordinals_end_as_spoken() {
        assert_eq!([1, 2, 3, 4, 11, 12, 21].map(ordinal).join(" "), "1st 2nd 3rd 4th 11th 12th 21st");
    }
}
