//! A group in the plane of its plate: elastic method, each fastener with its own stiffness across and along.

/// A used fastener as the group sees it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Held {
    pub(crate) x_mm: f64,
    pub(crate) y_mm: f64,
    /// The stud it is in; offsets within one stud are no lever. None in concrete.
    pub(crate) stud: Option<usize>,
    pub(crate) across: f64,
    pub(crate) along: f64,
}

/// Up to this a turning that nothing carries is none, N mm: half a newton metre. A choice of the product.
const NO_TURNING_NMM: f64 = 500.0;

/// Fasteners that stand within this of one another, root mean square, are no lever (chosen, as one row is).
const NO_LEVER_MM: f64 = 1.0;

/// The force the plate puts on each fastener, across and along, in N, under a force and its moment about the
/// origin. None: the plate would move.
pub(crate) fn shares_n(held: &[Held], across_n: f64, along_n: f64, moment_nmm: f64) -> Option<Vec<[f64; 2]>> {
    // All lengths from the middle of the places, over the widest reach from there, so that shifts and turns
    // weigh alike.
    let count = held.len() as f64;
    let levers: Vec<f64> = held.iter().map(|h| lever_mm(held, h)).collect();
    let middle_x = levers.iter().sum::<f64>() / count;
    let middle_y = held.iter().map(|h| h.y_mm).sum::<f64>() / count;
    let off: Vec<[f64; 2]> =
        held.iter().zip(&levers).map(|(h, x)| [x - middle_x, h.y_mm - middle_y]).collect();
    let reach = off.iter().flatten().fold(1.0_f64, |r, v| r.max(v.abs()));
    let mut rows = [[0.0; 4]; 3];
    for (h, [x, y]) in held.iter().zip(&off) {
        // It moves across by (1, 0, -y) and along by (0, 1, x) of shift across, shift along and turn.
        for (stiff, by) in [(h.across, [1.0, 0.0, -y / reach]), (h.along, [0.0, 1.0, x / reach])] {
            for i in 0..3 {
                for j in 0..3 {
                    rows[i][j] += stiff * by[i] * by[j];
                }
            }
        }
    }
    let moment = moment_nmm - along_n * middle_x + across_n * middle_y;
    for (row, load) in rows.iter_mut().zip([across_n, along_n, moment / reach]) {
        row[3] = load;
    }
    let stiff: f64 = held.iter().map(|h| h.across + h.along).sum();
    let least_turn = stiff * (NO_LEVER_MM / reach).powi(2);
    let [dx, dy, turn] = settle(rows, [0.0, 0.0, least_turn], [0.0, 0.0, NO_TURNING_NMM / reach])?;
    let share = |(h, [x, y]): (&Held, &[f64; 2])| {
        [h.across * (dx - turn * y / reach), h.along * (dy + turn * x / reach)]
    };
    Some(held.iter().zip(&off).map(share).collect())
}

/// Where a fastener pulls up or down: at its own place; but offsets within a stud are no lever where one of its
/// fasteners carries along only, so there all that carry along do it at their common middle.
fn lever_mm(held: &[Held], of: &Held) -> f64 {
    let same: Vec<&Held> =
        held.iter().filter(|h| of.stud.is_some() && h.stud == of.stud && h.along > 0.0).collect();
    if of.along == 0.0 || same.iter().all(|h| h.across > 0.0) {
        return of.x_mm;
    }
    same.iter().map(|h| h.x_mm).sum::<f64>() / same.len() as f64
}

/// Solves for shift across, shift along and turn, in this order. What is no stiffer than `least` holds nothing:
/// it is left at rest where no more than `idle` drives it, and there is no answer where more does.
fn settle(mut rows: [[f64; 4]; 3], least: [f64; 3], idle: [f64; 3]) -> Option<[f64; 3]> {
    let mut moves = [false; 3];
    for at in 0..3 {
        let pivot = rows[at];
        if pivot[at] <= least[at] {
            if pivot[3].abs() > idle[at] {
                return None;
            }
            continue;
        }
        moves[at] = true;
        for (i, row) in rows.iter_mut().enumerate() {
            if i != at {
                let by = row[at] / pivot[at];
                for (cell, over) in row.iter_mut().zip(pivot) {
                    *cell -= by * over;
                }
            }
        }
    }
    let answer = |at: usize| if moves[at] { rows[at][3] / rows[at][at] } else { 0.0 };
    Some([answer(0), answer(1), answer(2)])
}
