//! Steps 4 and 5 for one placed piece: its drop, its plate, what its holes meet.

use super::Notes;
use super::choice::{Asks, Candidates, Chosen};
use super::held::HeldPlate;
use super::holes::Ground;
use super::load::{Load, Loaded};
use super::placement::{self, Placed};
use super::usual_plate::usual_plate;
use crate::finding::What;
use crate::geometry::{Frame, Rect, Span};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::{ByHand, Hanging, Wanted};
use crate::job::piece::Piece;
use crate::job::plate::{Plate, Solid};
use crate::plan::AssumedWhat;
use crate::plan::piece::MountedPlan;
use crate::subject::Id;
use crate::units::Length;

/// The mount of a placed piece: its plate at the best of its possible places. Its opening comes with the cables.
///
/// `with` is what else hangs on the piece, at its place.
pub(super) fn mounted(
    job: &Job,
    ground: Ground<'_>,
    what: (&Hanging, &Piece, &Mount),
    place: (&Placed, Option<&HeldPlate>),
    with: &[(&Piece, Rect)],
    notes: &mut Notes,
) -> MountedPlan {
    mounted_by(job, ground, what, place, with, notes, &|candidates| candidates.choose())
}

/// The same with the plate's place chosen by something else.
pub(super) fn mounted_by(
    job: &Job,
    ground: Ground<'_>,
    (hanging, piece, mount): (&Hanging, &Piece, &Mount),
    (place, held): (&Placed, Option<&HeldPlate>),
    with: &[(&Piece, Rect)],
    notes: &mut Notes,
    choose: &dyn Fn(&Candidates<'_>) -> Chosen,
) -> MountedPlan {
    let (drop, drop_assumed) = placement::drop(piece, mount, place.outline.height(), notes);
    let stand_in = match (&mount.plate, mount.like) {
        (None, Some(like)) => {
            notes.assume(mount.id.whole(), AssumedWhat::Plate(like), true);
            usual_plate(like)
        }
        _ => Plate::default(),
    };
    let plate = mount.plate.as_ref().unwrap_or(&stand_in);
    let holes_assumed = mount.plate.is_none();
    let in_plate = plate.outline_in_plate().unwrap_or_else(|| {
        let (width, height) = usual_strip();
        notes.assume(mount.id.whole(), AssumedWhat::PlateSize(width, height), false);
        Rect::new(Span::about(Length::default(), width), Span::new(-height, Length::default()))
    });
    let pull = job.settings.pull();
    let load = Load::of(&Loaded { pull, piece, mount, place, drop: (drop, drop_assumed), with });
    let by_hand = by_hand(job, hanging, plate, notes);
    let candidates = Candidates {
        ground,
        piece: &piece.id,
        piece_frame: place.frame,
        rise: place.outline.height() / 2.0 - drop,
        mount,
        plate,
        outline: in_plate,
        plate_assumed: holes_assumed,
        load: &load,
        asks: Asks::of(mount.required.as_ref()),
        kit: &job.kit,
        by_hand: &by_hand,
        most_reserve: job.settings.reserve().value(),
        held: held.and_then(|held| held.offset),
        explains: notes.explains.as_ref() == Some(&piece.id),
    };
    let chosen = choose(&candidates);
    if candidates.explains {
        notes.explained = chosen.explained;
    }
    let origin = chosen.frame.origin;
    let on_wall = |rect: Rect| rect.moved(origin.x, origin.y);
    let solids: Vec<Rect> = plate.solids.iter().map(Solid::in_plate).map(on_wall).collect();
    let brackets = brackets(mount, place.frame, origin.y);
    let (least_offset, most_offset) = mount.offsets();
    MountedPlan {
        id: mount.id.clone(),
        kind: mount.kind,
        frame: chosen.frame,
        plate: on_wall(in_plate),
        solids,
        brackets,
        offset: chosen.offset,
        holes: chosen.holes,
        fastening: chosen.fastening,
        wish: chosen.wish,
        entry: None,
        entry_wanted: None,
        held: held.map(|held| held.told.clone()),
        assumed: place.assumed || drop_assumed,
        holes_assumed,
        middle_assumed: holes_assumed && least_offset != most_offset,
    }
}

/// What was chosen by hand, of the plate's own holes and with fasteners that the kit has; what names others is told.
pub(super) fn by_hand(job: &Job, hanging: &Hanging, plate: &Plate, notes: &mut Notes) -> Vec<ByHand> {
    let is_there = |id: &Id| {
        plate.holes.iter().any(|hole| hole.id == *id) || plate.slots.iter().any(|slot| slot.id == *id)
    };
    let mut there = Vec::new();
    for one in &hanging.holes {
        if !is_there(&one.hole) {
            notes.stop(hanging.piece.whole(), What::NotThere { named: one.hole.whole() });
            continue;
        }
        let mut one = one.clone();
        if let Wanted::UsedWith(stock) = &one.wanted
            && !job.kit.fasteners.iter().any(|known| known.id == *stock)
        {
            notes.stop(hanging.piece.whole(), What::NotThere { named: stock.whole() });
            one.wanted = Wanted::Used;
        }
        there.push(one);
    }
    there
}

/// A plate of which nothing is known: 16 x 8 in (chosen; only the level line's ends hang on it).
fn usual_strip() -> (Length, Length) {
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
