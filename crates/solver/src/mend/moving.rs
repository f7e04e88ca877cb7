//! Moving the piece by whole graduations, the nearest place to each side that helps.

use super::trying::Trying;
use super::{Change, Gives, MendPlan};
use crate::finding::What;
use crate::geometry::{Axis, Direction};
use crate::job::Job;
use crate::tape::Offset;
use crate::tolerance::WIDEST_BAY_MM;
use crate::units::{Length, LengthUnit};

/// Up and down no farther than this: 6 in (chosen: what the eye sees as another height).
const UPRIGHT_MM: f64 = 152.4;

/// The nearest move to each side that helps, the shortest first.
pub(super) fn mends(trying: &Trying<'_>) -> Vec<MendPlan> {
    let mut found: Vec<(i64, Direction, Gives)> = directions(&trying.finding.what)
        .iter()
        .filter_map(|direction| {
            let (steps, gives) = nearest(trying, *direction)?;
            Some((steps, *direction, gives))
        })
        .collect();
    found.sort_by_key(|(steps, ..)| *steps);
    let mend = |(steps, direction, gives): (i64, Direction, Gives)| {
        let by = trying.plan.style.length_of(steps);
        trying.mend(Change::Move { direction, by }, gives, Some(&|job| nudge(trying, job, direction, steps)))
    };
    found.into_iter().map(mend).collect()
}

/// The ways that can clear a finding.
fn directions(what: &What) -> &'static [Direction] {
    const ACROSS: &[Direction] = &[Direction::Left, Direction::Right];
    const ALL: &[Direction] = &[Direction::Left, Direction::Right, Direction::Up, Direction::Down];
    match what {
        What::OffWall { side: Direction::Left, .. } => &[Direction::Right],
        What::OffWall { side: Direction::Right, .. } => &[Direction::Left],
        What::OffWall { side: Direction::Up, .. } => &[Direction::Down],
        What::OffWall { side: Direction::Down, .. } => &[Direction::Up],
        What::OverFeature { .. } | What::HoleOnHidden { .. } => ALL,
        _ => ACROSS,
    }
}

/// The nearest place on one side that helps, in graduations: the places that promise something are tried from the
/// nearest on. Where nothing tells how far, the way between the one that helps and the one before it is halved; a hole
/// that is to meet a stud goes to its middle.
fn nearest(trying: &Trying<'_>, direction: Direction) -> Option<(i64, Gives)> {
    let gives = |steps: i64| trying.gives(&|job| nudge(trying, job, direction, steps));
    let mut before = 0;
    for steps in places(trying, direction) {
        let Some(mut best) = gives(steps) else {
            before = steps;
            continue;
        };
        let (mut far, mut near) = (steps, before);
        while searches(&trying.finding.what) && far - near > 1 {
            let middle = near + (far - near) / 2;
            match gives(middle) {
                Some(given) => (far, best) = (middle, given),
                None => near = middle,
            }
        }
        return Some((far, best));
    }
    None
}

/// The moves to one side that are tried, in graduations, the shortest first.
fn places(trying: &Trying<'_>, direction: Direction) -> Vec<i64> {
    let style = trying.plan.style;
    let most_mm = if direction.axis() == Axis::Across { WIDEST_BAY_MM } else { UPRIGHT_MM };
    let most = style.steps(Length::millimetres(most_mm));
    // A whole graduation more for what rounds down.
    let up = |length: Length| [style.steps(length), style.steps(length) + 1];
    let mut places: Vec<i64> = Vec::new();
    places.extend(exactly(trying, direction).into_iter().flat_map(up));
    places.extend(to_studs(trying, direction).into_iter().map(|length| style.steps(length)));
    if searches(&trying.finding.what) {
        // Half an inch, or 12 mm, near by, and twice that farther away (chosen: what lies hidden is mostly wider).
        let coarse = match style.graduation.unit() {
            LengthUnit::Millimetre => 12,
            LengthUnit::Inch | LengthUnit::Mil => style.graduation.steps_per_unit() / 2,
        };
        let near = style.steps(Length::millimetres(UPRIGHT_MM));
        let each = (1..).map(|place| place * coarse).take_while(|place| *place <= most);
        places.extend(each.filter(|place| *place <= near || place % (2 * coarse) == 0));
    }
    places.retain(|place| (1..=most).contains(place));
    places.sort_unstable();
    places.dedup();
    places
}

/// Whether nothing tells how far.
fn searches(what: &What) -> bool {
    matches!(what, What::HoleOnHidden { .. } | What::PlateShows { .. })
}

/// The moves that a finding itself tells of.
fn exactly(trying: &Trying<'_>, direction: Direction) -> Vec<Length> {
    let Some(piece) = trying.piece() else { return Vec::new() };
    match &trying.finding.what {
        What::OffWall { by, .. } => vec![*by],
        What::OverFeature { feature, .. } => {
            let placed = trying.plan.survey.features.iter().find(|one| one.id == *feature);
            let clear = |rect: crate::geometry::Rect| match direction {
                Direction::Left => piece.outline.right - rect.left,
                Direction::Right => rect.right - piece.outline.left,
                Direction::Up => rect.top - piece.outline.bottom,
                Direction::Down => piece.outline.top - rect.bottom,
            };
            placed.map(|placed| clear(placed.rect)).into_iter().collect()
        }
        _ => Vec::new(),
    }
}

/// The moves that bring a hole onto the middle of the next stud on a side: with the plate as it stands, and at the end
/// of its play.
fn to_studs(trying: &Trying<'_>, direction: Direction) -> Vec<Length> {
    let wants_studs = matches!(
        trying.finding.what,
        What::NoStudMet | What::MoreStudsNear { .. } | What::PlateShort { .. } | What::PlateNotKnown { .. }
    );
    let mounted = trying.mounted().filter(|_| wants_studs);
    let Some((mounted, mount)) = mounted.and_then(|at| Some((at, trying.job.mount(&at.id)?))) else {
        return Vec::new();
    };
    let (least, most) = mount.offsets();
    let is_left = direction == Direction::Left;
    // A plate farther left is a piece farther right of its middle.
    let play = if is_left { most - mounted.offset } else { mounted.offset - least };
    let none = Length::default();
    let each = mounted.holes.iter().flat_map(|hole| {
        let away = trying.plan.framing.studs.iter().map(|stud| {
            let right = stud.middle_at(hole.place.y) - hole.place.x;
            if is_left { -right } else { right }
        });
        [none, play].map(|play| {
            let left = away.clone().map(|away| away - play).filter(|left| *left > none);
            left.min_by(|a, b| a.mm().total_cmp(&b.mm()))
        })
    });
    each.flatten().collect()
}

/// Moves the piece by graduations.
fn nudge(trying: &Trying<'_>, job: &mut Job, direction: Direction, steps: i64) {
    let style = trying.plan.style;
    let by = style.length_of(steps);
    let Some(hanging) = trying.hanging(job) else { return };
    let moved = |offset: Offset, by: Length| {
        Offset((offset.length() + by).quantised().with_unit(style.graduation.unit()))
    };
    let nudge = &mut hanging.nudge;
    match direction {
        Direction::Left => nudge.right = moved(nudge.right, -by),
        Direction::Right => nudge.right = moved(nudge.right, by),
        Direction::Up => nudge.up = moved(nudge.up, by),
        Direction::Down => nudge.up = moved(nudge.up, -by),
    }
}
