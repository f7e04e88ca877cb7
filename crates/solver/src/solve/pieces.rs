//! Steps 3 to 6 for every piece of an option, those first that others are placed by.

use super::Notes;
use super::choice::Candidates;
use super::entry::{Behind, entry};
use super::holes::Ground;
use super::placement::{self, Placed, Surroundings};
use crate::finding::What;
use crate::geometry::{Frame, Point, Rect, Span};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::{Hanging, WallOption};
use crate::job::piece::Piece;
use crate::job::plate::{Plate, Solid};
use crate::job::wall::Wall;
use crate::plan::AssumedWhat;
use crate::plan::framing::Framing;
use crate::plan::piece::{Gap, Gaps, MountedPlan, PiecePlan, PortPlan};
use crate::plan::survey::Survey;
use crate::subject::Id;
use crate::units::Length;

/// Every piece of an option at its place, in the option's order.
pub(super) fn pieces(
    job: &Job,
    wall: &Wall,
    option: &WallOption,
    survey: &Survey,
    framing: &Framing,
    notes: &mut Notes,
) -> Vec<PiecePlan> {
    let mut placed: Vec<PiecePlan> = Vec::new();
    let mut waiting: Vec<&Hanging> = Vec::new();
    for hanging in &option.hangings {
        match job.piece(&hanging.piece) {
            Some(_) => waiting.push(hanging),
            None => notes.stop(hanging.id.whole(), What::NotThere { named: hanging.piece.whole() }),
        }
    }
    loop {
        let before = waiting.len();
        let mut later = Vec::new();
        for hanging in waiting {
            let around = Surroundings { wall, survey, placed: &placed };
            let piece = job.piece(&hanging.piece);
            let settled =
                piece.and_then(|piece| Some((piece, placement::place(&around, hanging, piece, notes)?)));
            match settled {
                Some((piece, place)) => {
                    placed.push(piece_plan(job, wall, hanging, piece, &place, survey, framing, notes));
                }
                None => later.push(hanging),
            }
        }
        waiting = later;
        if waiting.len() == before || waiting.is_empty() {
            break;
        }
    }
    for hanging in waiting {
        notes.stop(hanging.piece.whole(), What::Ring);
    }
    let order = |id: &Id| option.hangings.iter().position(|hanging| hanging.id == *id);
    placed.sort_by_key(|piece| order(&piece.hanging));
    let outlines: Vec<(Id, Rect)> = placed.iter().map(|piece| (piece.id.clone(), piece.outline)).collect();
    for piece in &mut placed {
        piece.gaps = gaps(wall, survey, piece, &outlines);
    }
    placed
}

#[expect(clippy::too_many_arguments, reason = "each is a step's own input, and there is one caller")]
fn piece_plan(
    job: &Job,
    wall: &Wall,
    hanging: &Hanging,
    piece: &Piece,
    place: &Placed,
    survey: &Survey,
    framing: &Framing,
    notes: &mut Notes,
) -> PiecePlan {
    let width = place.outline.width();
    let used = |id: &Id| hanging.cables.is_empty() || hanging.cables.iter().any(|wish| wish.port == *id);
    let ports: Vec<PortPlan> = piece
        .ports
        .iter()
        .map(|port| {
            let right = port.from_left_in_front(width) - width / 2.0;
            let place = place.frame.to_wall(right, port.up - place.outline.height() / 2.0);
            PortPlan { id: port.id.clone(), place, used: used(&port.id) }
        })
        .collect();
    let mount = hanging.mount.as_ref().and_then(|id| {
        let mount = job.mount(id);
        if mount.is_none() {
            notes.stop(hanging.piece.whole(), What::NotThere { named: id.whole() });
        }
        mount
    });
    let mount = mount.map(|mount| mounted(wall, piece, mount, place, &ports, survey, framing, notes));
    PiecePlan {
        id: piece.id.clone(),
        hanging: hanging.id.clone(),
        kind: piece.kind,
        name: piece.name.clone().unwrap_or_default(),
        outline: place.outline,
        ruled_centre: place.ruled_centre,
        frame: place.frame,
        mount,
        ports,
        gaps: Gaps::default(),
        assumed: place.assumed,
    }
}

#[expect(clippy::too_many_arguments, reason = "each is a step's own input, and there is one caller")]
fn mounted(
    wall: &Wall,
    piece: &Piece,
    mount: &Mount,
    place: &Placed,
    ports: &[PortPlan],
    survey: &Survey,
    framing: &Framing,
    notes: &mut Notes,
) -> MountedPlan {
    let (drop, drop_assumed) = placement::drop(piece, mount, place.outline.height(), notes);
    let no_plate = Plate::default();
    let plate = mount.plate.as_ref().unwrap_or(&no_plate);
    let candidates = Candidates {
        ground: Ground { wall, survey, framing },
        piece: &piece.id,
        piece_frame: place.frame,
        rise: place.outline.height() / 2.0 - drop,
        mount,
        plate,
    };
    let chosen = candidates.choose();
    let origin = chosen.frame.origin;
    let in_plate = plate.outline_in_plate().unwrap_or_else(|| {
        let (width, height) = usual_plate();
        notes.assume(mount.id.whole(), AssumedWhat::PlateSize(width, height), false);
        Rect::new(Span::about(Length::default(), width), Span::new(-height, Length::default()))
    });
    let on_wall = |rect: Rect| rect.moved(origin.x, origin.y);
    let solids: Vec<Rect> = plate.solids.iter().map(Solid::in_plate).map(on_wall).collect();
    let brackets = brackets(mount, place.frame, origin.y);
    let used: Vec<Point> = ports.iter().filter(|port| port.used).map(|port| port.place).collect();
    let behind = Behind { outline: place.outline, solids: &solids, brackets: &brackets, survey, framing };
    let opening = middle_of(&used).and_then(|wished| entry(&behind, wished));
    MountedPlan {
        id: mount.id.clone(),
        kind: mount.kind,
        frame: chosen.frame,
        plate: on_wall(in_plate),
        solids,
        brackets,
        offset: chosen.offset,
        holes: chosen.holes,
        wish: chosen.wish,
        entry: opening,
        assumed: place.assumed || drop_assumed,
    }
}

/// A plate that was not measured: 16 x 8 in (chosen; only the level line's ends hang on it).
fn usual_plate() -> (Length, Length) {
    (Length::millimetres(406.4), Length::millimetres(203.2))
}

/// The brackets on the piece's back, about the piece's own middle.
fn brackets(mount: &Mount, piece: Frame, plate_top: Length) -> Vec<Rect> {
    let Some(brackets) = &mount.brackets else { return Vec::new() };
    let top = plate_top + brackets.top.length();
    let upright = Span::new(top - brackets.length, top);
    [-1.0, 1.0]
        .map(|side| {
            Rect::new(Span::about(piece.origin.x + brackets.apart / 2.0 * side, brackets.width), upright)
        })
        .to_vec()
}

/// The middle of some places; `None` of none.
fn middle_of(places: &[Point]) -> Option<Point> {
    let count = places.len();
    if count == 0 {
        return None;
    }
    // A handful of ports: the count is exact as f64.
    #[expect(clippy::cast_precision_loss, reason = "far below 2^52 ports")]
    let share = 1.0 / count as f64;
    let sum = places.iter().fold(Point::default(), |sum, place| Point::new(sum.x + place.x, sum.y + place.y));
    Some(Point::new(sum.x * share, sum.y * share))
}

/// The nearest thing the eye sees to either side and below, within the piece's height or width.
fn gaps(wall: &Wall, survey: &Survey, piece: &PiecePlan, pieces: &[(Id, Rect)]) -> Gaps {
    let outline = piece.outline;
    let features = survey.features.iter().filter(|feature| {
        feature.kind != crate::job::feature::FeatureKind::ChimneyBreast
            && feature.kind != crate::job::feature::FeatureKind::Panelling
    });
    let features: Vec<(Id, Rect)> = features.map(|feature| (feature.id.clone(), feature.rect)).collect();
    let others = pieces.iter().filter(|(id, _)| *id != piece.id);
    let things: Vec<&(Id, Rect)> = features.iter().chain(others).collect();

    let mut left = Gap { to: wall.id.part("left"), from: outline.left, other: outline.left };
    let mut right_gap = survey.outline.right - outline.right;
    let mut right = Gap { to: wall.id.part("right"), from: right_gap, other: right_gap };
    let mut below: Option<Gap> = None;
    for (id, rect) in things {
        if rect.upright().overlaps(outline.upright()) {
            let gap = outline.left - rect.right;
            if Length::default() <= gap && gap < left.from {
                left = Gap { to: id.part("right"), from: gap, other: gap };
            }
            let gap = rect.left - outline.right;
            if Length::default() <= gap && gap < right_gap {
                right_gap = gap;
                right = Gap { to: id.part("left"), from: gap, other: gap };
            }
        }
        if rect.across().overlaps(outline.across()) && rect.top <= outline.bottom {
            let feature = survey.features.iter().find(|feature| feature.id == *id);
            let top_at = |x: Length| feature.map_or(rect.top, |feature| feature.top_at(x));
            let (from, other) = (
                corner_y(piece, outline.left) - top_at(outline.left),
                corner_y(piece, outline.right) - top_at(outline.right),
            );
            if below.as_ref().is_none_or(|known| from + other < known.from + known.other) {
                below = Some(Gap { to: id.part("top"), from, other });
            }
        }
    }
    Gaps { left: Some(left), right: Some(right), below }
}

/// The height of the piece's lower edge at a place along it, turned as it is.
fn corner_y(piece: &PiecePlan, x: Length) -> Length {
    piece.frame.to_wall(x - piece.frame.origin.x, -piece.outline.height() / 2.0).y
}
