//! A plate with more holes: a row between its rows, a row below them, or holes on a stud beside it. In words only: a
//! job holds no plate as measured that nobody measured.

use super::trying::Trying;
use super::{Change, Gives, MendPlan};
use crate::geometry::Direction;
use crate::job::Job;
use crate::job::plate::{Plate, PlateHole};
use crate::tape::Offset;
use crate::tolerance::{SAME_PLACE_MM, WIDEST_BAY_MM};
use crate::units::Length;

/// From the lowest row to a further one where there is only one: 8 in, as on many plates (chosen).
const ROW_BELOW_MM: f64 = 203.2;
/// Sheet past a hole: 1 in, as on many plates (chosen).
const PAST_HOLE_MM: f64 = 25.4;

/// What helps, of rows and of columns the first.
pub(super) fn mends(trying: &Trying<'_>) -> Vec<MendPlan> {
    let own = trying.mounted().and_then(|at| trying.job.mount(&at.id)?.plate.as_ref());
    let Some(holes) = own.and_then(Holes::of) else { return Vec::new() };
    let tried = |changes: Vec<(Change, Wanted)>| {
        changes.into_iter().find_map(|(change, wanted)| {
            let gives = with(trying, &holes, &wanted)?;
            Some(trying.mend(change, gives, None))
        })
    };
    [tried(rows(&holes)), tried(columns(trying, &holes))].into_iter().flatten().collect()
}

/// The holes of a plate, as a grid.
struct Holes {
    /// Right of the plate's middle, from the left.
    columns: Vec<Length>,
    /// Down from the plate's top, from above.
    rows: Vec<Length>,
    diameter: Option<Length>,
}

impl Holes {
    fn of(plate: &Plate) -> Option<Self> {
        let round = plate.holes.iter().map(|hole| (hole.right.length(), hole.down, hole.diameter));
        let slots = plate.slots.iter().map(|slot| (slot.right.length(), slot.down, slot.width));
        let all: Vec<_> = round.chain(slots).collect();
        let (_, _, diameter) = *all.first()?;
        let distinct = |mut places: Vec<Length>| {
            places.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
            places.dedup_by(|a, b| (*a - *b).mm().abs() <= SAME_PLACE_MM);
            places
        };
        let columns = distinct(all.iter().map(|(right, ..)| *right).collect());
        Some(Self { columns, rows: distinct(all.iter().map(|(_, down, _)| *down).collect()), diameter })
    }
}

/// The holes that a plate is to have as well.
struct Wanted {
    columns: Vec<Length>,
    rows: Vec<Length>,
}

/// A row in the middle of the widest gap, or below.
fn rows(holes: &Holes) -> Vec<(Change, Wanted)> {
    let gaps = holes.rows.iter().zip(holes.rows.iter().skip(1));
    let widest = gaps.max_by(|a, b| (*a.1 - *a.0).mm().total_cmp(&(*b.1 - *b.0).mm()));
    let row = |down: Length| Wanted { columns: holes.columns.clone(), rows: vec![down] };
    let mut tried = Vec::new();
    tried.extend(widest.map(|(above, below)| (Change::RowBetween, row((*above + *below) / 2.0))));
    let by = widest.map_or(Length::millimetres(ROW_BELOW_MM), |(above, below)| *below - *above);
    tried.extend(holes.rows.last().map(|last| (Change::RowBelow { by }, row(*last + by))));
    tried
}

/// Holes on the next stud to a side, then to both.
fn columns(trying: &Trying<'_>, holes: &Holes) -> Vec<(Change, Wanted)> {
    let (Some(mounted), Some(first), Some(last)) =
        (trying.mounted(), holes.columns.first(), holes.columns.last())
    else {
        return Vec::new();
    };
    let middle = mounted.frame.origin;
    let centres = || trying.plan.framing.studs.iter().map(|stud| stud.middle_at(middle.y) - middle.x);
    let bay = Length::millimetres(WIDEST_BAY_MM);
    let left = centres().filter(|x| *x < *first && *first - *x <= bay).reduce(Length::max);
    let right = centres().filter(|x| *x > *last && *x - *last <= bay).reduce(Length::min);
    let wanted = |columns: Vec<Length>| Wanted { columns, rows: holes.rows.clone() };
    let mut tried = Vec::new();
    for (side, column, away) in [
        (Direction::Left, left, left.map(|x| *first - x)),
        (Direction::Right, right, right.map(|x| x - *last)),
    ] {
        if let (Some(column), Some(by)) = (column, away) {
            tried.push((Change::Wider { side: Some(side), by }, wanted(vec![column])));
        }
    }
    tried.sort_by(|(a, _), (b, _)| wider_by(a).total_cmp(&wider_by(b)));
    if let (Some(left), Some(right)) = (left, right) {
        let by = (*first - left) + (right - *last);
        tried.push((Change::Wider { side: None, by }, wanted(vec![left, right])));
    }
    tried
}

fn wider_by(change: &Change) -> f64 {
    match change {
        Change::Wider { by, .. } => by.mm(),
        _ => 0.0,
    }
}

/// What the plate gives with further holes, in a sheet that reaches past them.
fn with(trying: &Trying<'_>, holes: &Holes, wanted: &Wanted) -> Option<Gives> {
    trying.gives(&|job: &mut Job| {
        let ids: Vec<_> =
            (0..wanted.rows.len() * wanted.columns.len()).map(|_| job.give_id("hole")).collect();
        let Some(plate) = trying.mount(job).and_then(|mount| mount.plate.as_mut()) else { return };
        let places =
            wanted.rows.iter().flat_map(|row| wanted.columns.iter().map(move |column| (*column, *row)));
        for (id, (column, row)) in ids.into_iter().zip(places) {
            plate.holes.push(PlateHole { id, right: Offset(column), down: row, diameter: holes.diameter });
            cover(plate, column, row);
        }
    })
}

/// Stretches the nearest solid part over a hole.
fn cover(plate: &mut Plate, column: Length, row: Length) {
    let past = Length::millimetres(PAST_HOLE_MM);
    let away = |solid: &crate::job::plate::Solid| {
        let rect = solid.in_plate();
        (row + rect.bottom).mm().max((-rect.top - row).mm()).max(0.0)
    };
    let nearest = plate.solids.iter_mut().min_by(|a, b| away(a).total_cmp(&away(b)));
    let Some(solid) = nearest else { return };
    if column - past < solid.left.length() {
        solid.left = Offset(column - past);
    }
    if column + past > solid.right.length() {
        solid.right = Offset(column + past);
    }
    if row + past > solid.down + solid.height {
        solid.height = row + past - solid.down;
    }
}
