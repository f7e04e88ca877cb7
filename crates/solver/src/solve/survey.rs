//! Step 1: places worked out from how they were read; readings that do not close; rings.

mod across;
mod upright;
mod usual;

use super::Notes;
use crate::finding::What;
use crate::geometry::{Point, Rect, Span};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::hidden::KnownBy;
use crate::job::wall::{End, Wall};
use crate::letters::composed;
use crate::plan::AssumedWhat;
use crate::plan::survey::{Floor, PlacedFeature, PlacedHidden, PlacedHit, PlacedHump, PlacedSeat, Survey};
use crate::units::Length;
use across::AcrossPlaces;
use upright::UprightPlaces;

/// Works out where everything on a wall is.
pub(super) fn survey(job: &Job, wall: &Wall, notes: &mut Notes) -> Survey {
    let width = wall.width.unwrap_or_else(|| {
        let usual = usual::wall_width();
        notes.assume(wall.id.whole(), AssumedWhat::WallWidth(usual), false);
        usual
    });
    let height = wall.height.unwrap_or_else(|| {
        let usual = usual::wall_height();
        notes.assume(wall.id.whole(), AssumedWhat::WallHeight(usual), false);
        usual
    });
    let left_end = wall.left_end.unwrap_or_else(|| {
        notes.assume(wall.id.part("left"), AssumedWhat::LeftEnd, false);
        End::InsideCorner
    });
    let right_end = wall.right_end.unwrap_or_else(|| {
        notes.assume(wall.id.part("right"), AssumedWhat::RightEnd, false);
        End::InsideCorner
    });

    let step = job.style().length_of(1);
    let mut misfits = Vec::new();
    let across = AcrossPlaces::of(wall, width, step, &mut misfits, notes);
    let (floor, control_line_y) = floor(wall, &across, notes);
    let lowest = floor.readings.iter().map(|place| place.y).fold(Length::default(), Length::min);
    let level = UprightPlaces { wall, across: &across, floor: &floor, control_line_y, ceiling: height };
    let upright = level.all(step, &mut misfits, notes);

    let mut features: Vec<PlacedFeature> = Vec::new();
    for (index, feature) in wall.features.iter().enumerate() {
        let (Some(sides), Some(heights)) = (across.feature(index), upright.feature(index)) else { continue };
        let whole = Span::new(heights.bottom.0.min(heights.bottom.1), heights.top.0.max(heights.top.1));
        features.push(PlacedFeature {
            id: feature.id.clone(),
            kind: feature.kind,
            name: composed(feature.name.as_deref().unwrap_or_default()),
            rect: Rect::new(sides.span, whole),
            top_ends: heights.top,
            bottom_ends: heights.bottom,
            proud: feature.proud.unwrap_or_else(|| {
                let usual = usual::proud(feature.kind);
                if usual > Length::default() {
                    notes.assume(feature.id.whole(), AssumedWhat::Proud(usual), false);
                }
                usual
            }),
            on: None,
            assumed: sides.assumed || heights.assumed,
        });
    }
    set_planes(&mut features);

    let hidden = wall.hidden.iter().enumerate().filter_map(|(index, hidden)| {
        let (sides, heights) = (across.hidden(index)?, upright.hidden(index)?);
        let whole = Span::new(heights.bottom.0.min(heights.bottom.1), heights.top.0.max(heights.top.1));
        Some(PlacedHidden {
            id: hidden.id.clone(),
            kind: hidden.kind,
            name: composed(hidden.name.as_deref().unwrap_or_default()),
            rect: Rect::new(sides.span, whole),
            assumed: sides.assumed || heights.assumed || hidden.known_by == Some(KnownBy::Supposed),
        })
    });
    let hits = wall.hits.iter().filter_map(|hit| {
        let (x, assumed) = across.place_or_note(&hit.x, &hit.id, notes)?;
        notes.ground_assumed |= assumed;
        let y = hit.y.as_ref().and_then(|reading| upright.reading(&level, reading, x));
        Some(PlacedHit { id: hit.id.clone(), kind: hit.kind, x, y })
    });
    let hits: Vec<_> = hits.collect();
    let humps = wall.flatness.iter().filter_map(|hump| {
        let (x, _) = across.place(&hump.at)?;
        let y = hump.up.as_ref().and_then(|reading| upright.reading(&level, reading, x));
        Some(PlacedHump { id: hump.id.clone(), x, y, proud: hump.proud.length() })
    });
    let humps: Vec<_> = humps.collect();

    let seats = wall.seats.iter().map(|seat| {
        let place = seat.at.as_ref().and_then(|at| across.place_or_note(at, &seat.id, notes));
        PlacedSeat {
            id: seat.id.clone(),
            name: composed(seat.name.as_deref().unwrap_or_default()),
            x: place.map(|(x, _)| x),
            assumed: place.is_some_and(|(_, assumed)| assumed),
        }
    });
    let seats: Vec<_> = seats.collect();

    if width <= Length::default() || height <= Length::default() {
        notes.stop(wall.id.whole(), What::ZeroSize);
    }
    Survey {
        outline: Rect::new(Span::new(Length::default(), width), Span::new(lowest, height)),
        left_end,
        right_end,
        control_line_y,
        features,
        hidden: hidden.collect(),
        hits,
        humps,
        seats,
        misfits,
        floor,
    }
}

/// The floor's readings as places, and the control line's height: the first reading is at y = 0.
fn floor(wall: &Wall, across: &AcrossPlaces<'_>, notes: &mut Notes) -> (Floor, Option<Length>) {
    let Some(first) = wall.floor.first() else { return (Floor::default(), None) };
    let mut readings: Vec<Point> = wall
        .floor
        .iter()
        .filter_map(|reading| {
            let (x, assumed) = across.place(&reading.at)?;
            notes.ground_assumed |= assumed;
            Some(Point::new(x, first.down - reading.down))
        })
        .collect();
    readings.sort_by(|a, b| a.x.mm().total_cmp(&b.x.mm()));
    (Floor { readings }, Some(first.down))
}

/// Notes for each feature the chimney breast it is on.
fn set_planes(features: &mut [PlacedFeature]) {
    let breasts: Vec<(crate::subject::Id, Rect)> = features
        .iter()
        .filter(|feature| feature.kind == FeatureKind::ChimneyBreast)
        .map(|breast| (breast.id.clone(), breast.rect))
        .collect();
    for feature in features.iter_mut().filter(|feature| feature.kind != FeatureKind::ChimneyBreast) {
        let middle = feature.rect.centre();
        feature.on = breasts.iter().find(|(_, rect)| rect.holds(middle)).map(|(id, _)| id.clone());
    }
}
