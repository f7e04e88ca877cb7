//! The places that are swept: even steps, each at the nearest whole graduation from where the piece is.

use crate::geometry::{Axis, Point};
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::tolerance::WIDEST_BAY_MM;
use crate::units::Length;

/// So many places, where there are as many graduations.
const PLACES: u32 = 257;

/// How far is swept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Reach {
    /// One bay to either side, up and down as far.
    #[default]
    Bay,
    /// As far as the piece stays on the wall, and no less than it is off it now.
    Wall,
}

/// The middle of a piece at each place, from left to right or from below upward; its present place is one of them.
pub(super) fn line(plan: &Plan, piece: &PiecePlan, axis: Axis, reach: Reach) -> Vec<Point> {
    let now = piece.outline.centre();
    let (down, up) = match reach {
        Reach::Bay => (-bay(plan, piece), bay(plan, piece)),
        Reach::Wall => {
            let (wall, own) = (plan.survey.outline.span(axis), piece.outline.span(axis));
            let nothing = Length::default();
            ((wall.from - own.from).min(nothing), (wall.to - own.to).max(nothing))
        }
    };
    let style = plan.style;
    let mut steps: Vec<i64> = (0..PLACES)
        .map(|place| style.steps(down + (up - down) * (f64::from(place) / f64::from(PLACES - 1))))
        .chain([0])
        .collect();
    steps.sort_unstable();
    steps.dedup();
    let by = |steps: i64| if steps == 0 { Length::default() } else { style.length_of(steps) };
    steps
        .into_iter()
        .map(|steps| match axis {
            Axis::Across => Point::new(now.x + by(steps), now.y),
            Axis::Upright => Point::new(now.x, now.y + by(steps)),
        })
        .collect()
}

/// The likeliest spacing of the plane that a piece hangs on; the widest usual one where none is told (chosen: all that
/// a narrower one would offer is within it).
fn bay(plan: &Plan, piece: &PiecePlan) -> Length {
    let middle = piece.outline.centre();
    let on = plan.survey.breast_at(middle.x, Some(middle.y)).map(|breast| &breast.id);
    let plane = plan.framing.planes.iter().find(|plane| plane.on.as_ref() == on);
    let likeliest = plane.and_then(|plane| plane.spacings.first()).and_then(|first| first.spacing);
    likeliest.unwrap_or(Length::millimetres(WIDEST_BAY_MM))
}
