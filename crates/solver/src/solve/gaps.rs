//! The gaps around a piece that is placed, to what the eye sees on each side.

use crate::geometry::Rect;
use crate::job::feature::FeatureKind;
use crate::job::wall::Wall;
use crate::plan::piece::{Gap, Gaps, PiecePlan};
use crate::plan::survey::{PlacedFeature, Survey};
use crate::subject::Id;
use crate::units::Length;

/// The nearest thing the eye sees to either side and below, within the piece's height or width.
///
/// On a chimney breast that is what is on the breast, and the breast's own edges in place of the wall's ends.
pub(super) fn gaps(wall: &Wall, survey: &Survey, piece: &PiecePlan, pieces: &[(Id, Rect)]) -> Gaps {
    let outline = piece.outline;
    let middle = outline.centre();
    let breast = survey.breast_at(middle.x, Some(middle.y));
    let seen = |feature: &&PlacedFeature| match breast {
        Some(breast) => feature.on.as_ref() == Some(&breast.id),
        None => feature.on.is_none() && feature.kind != FeatureKind::Panelling,
    };
    let features = survey.features.iter().filter(seen);
    let features: Vec<(Id, Rect)> = features.map(|feature| (feature.id.clone(), feature.rect)).collect();
    let others = pieces.iter().filter(|(id, _)| *id != piece.id);
    let things: Vec<&(Id, Rect)> = features.iter().chain(others).collect();

    let plane = breast.map_or(survey.outline, |breast| breast.rect);
    let plane_id = breast.map_or(&wall.id, |breast| &breast.id);
    let left_gap = outline.left - plane.left;
    let mut left = Gap { to: plane_id.part("left"), from: left_gap, other: left_gap };
    let mut right_gap = plane.right - outline.right;
    let mut right = Gap { to: plane_id.part("right"), from: right_gap, other: right_gap };
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
