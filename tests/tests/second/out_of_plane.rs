//! A group out of the plane of its plate: the pull on each fastener, by rows and by columns.

/// A force at a place, in N and mm: right, up, out from the wall's face.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Load {
    pub(crate) at_mm: [f64; 3],
    pub(crate) force_n: [f64; 3],
}

/// The plate's outline along one axis.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Edges {
    pub(crate) low_mm: f64,
    pub(crate) high_mm: f64,
}

/// What stands within this is one row (chosen).
const ONE_ROW_MM: f64 = 1.0;

/// The pull on each fastener, N: the larger of the two directions of an axis, both axes added. None where one
/// row stands at the plate's very edge, with nothing to lean on.
pub(crate) fn pulls_n(places_mm: &[[f64; 2]], plate: [Edges; 2], loads: &[Load]) -> Option<Vec<f64>> {
    let mut pulls = vec![0.0; places_mm.len()];
    for axis in 0..2 {
        let along: Vec<f64> = places_mm.iter().map(|p| p[axis]).collect();
        let up = one_way(&along, plate[axis], |l| (l.at_mm[axis], l.force_n[axis]), 1.0, loads)?;
        let down = one_way(&along, plate[axis], |l| (l.at_mm[axis], l.force_n[axis]), -1.0, loads)?;
        for ((pull, a), b) in pulls.iter_mut().zip(up).zip(down) {
            *pull += a.max(b);
        }
    }
    Some(pulls)
}

/// One direction: the side that `way` points to is pulled, the other pressed.
fn one_way(
    along_mm: &[f64],
    plate: Edges,
    seen: impl Fn(&Load) -> (f64, f64),
    way: f64,
    loads: &[Load],
) -> Option<Vec<f64>> {
    // Measured along the way, so that the pulled side is always the high one.
    let s: Vec<f64> = along_mm.iter().map(|v| v * way).collect();
    let pulled = s.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let pressed = s.iter().copied().fold(f64::INFINITY, f64::min);
    let one_row = pulled - pressed <= ONE_ROW_MM;
    let edge = if way > 0.0 { plate.low_mm } else { -plate.high_mm };
    let pivot = if one_row { edge } else { pressed };
    let lever = pulled - pivot;
    let moment: f64 = loads
        .iter()
        .map(|l| {
            let (at, force) = seen(l);
            // A force out at its place beyond the pivot, and one along the wall, back from the pulled side, by
            // its stand-off.
            l.force_n[2] * (at * way - pivot) - force * way * l.at_mm[2]
        })
        .filter(|m| *m > 0.0)
        .sum();
    // One row at the plate's very edge leans on nothing; that matters only where something tips it.
    if moment > 0.0 && lever <= ONE_ROW_MM {
        return None;
    }
    let row: Vec<bool> = s.iter().map(|v| pulled - v <= ONE_ROW_MM).collect();
    let count = row.iter().filter(|r| **r).count() as f64;
    Some(row.iter().map(|r| if *r && moment > 0.0 { moment / lever / count } else { 0.0 }).collect())
}
