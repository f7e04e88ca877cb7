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

/// The force the plate puts on each fastener, across and along, in N, under a force and its moment about the
/// origin. None: the plate would move.
pub(crate) fn shares_n(held: &[Held], across_n: f64, along_n: f64, moment_nmm: f64) -> Option<Vec<[f64; 2]>> {
    let lever: Vec<f64> = held.iter().map(|h| lever_mm(held, h)).collect();
    // Lengths over the widest reach, so that shifts and turns weigh alike.
    let reach = held.iter().zip(&lever).fold(1.0_f64, |r, (h, x)| r.max(x.abs()).max(h.y_mm.abs()));
    let mut rows = [[0.0; 4]; 3];
    for (h, x) in held.iter().zip(&lever) {
        let (x, y) = (x / reach, h.y_mm / reach);
        // Along the wall it moves by (1, 0, -y), up by (0, 1, x), of (shift across, shift along, turn).
        for (stiff, by) in [(h.across, [1.0, 0.0, -y]), (h.along, [0.0, 1.0, x])] {
            for i in 0..3 {
                for j in 0..3 {
                    rows[i][j] += stiff * by[i] * by[j];
                }
            }
        }
    }
    rows[0][3] = across_n;
    rows[1][3] = along_n;
    rows[2][3] = moment_nmm / reach;
    let [dx, dy, turn] = settle(rows)?;
    let share =
        |h: &Held, x: f64| [h.across * (dx - turn * h.y_mm / reach), h.along * (dy + turn * x / reach)];
    Some(held.iter().zip(&lever).map(|(h, x)| share(h, *x)).collect())
}

/// Where a fastener pulls up or down: the middle of those used in its stud.
fn lever_mm(held: &[Held], of: &Held) -> f64 {
    if of.stud.is_none() {
        return of.x_mm;
    }
    let same: Vec<f64> = held.iter().filter(|h| h.stud == of.stud).map(|h| h.x_mm).collect();
    same.iter().sum::<f64>() / same.len() as f64
}

/// Solves three equations, the largest pivot first. A way to move that nothing holds is left at rest where
/// nothing drives it, and is no answer where something does.
fn settle(mut rows: [[f64; 4]; 3]) -> Option<[f64; 3]> {
    let stiffest = rows.iter().flat_map(|r| &r[..3]).fold(0.0_f64, |m, v| m.max(v.abs()));
    let driven = rows.iter().fold(0.0_f64, |m, r| m.max(r[3].abs()));
    let mut pivots: Vec<(usize, usize)> = Vec::new();
    loop {
        let free = |n: usize, taken: &[usize]| !taken.contains(&n);
        let used_rows: Vec<usize> = pivots.iter().map(|p| p.0).collect();
        let used_columns: Vec<usize> = pivots.iter().map(|p| p.1).collect();
        let mut best = (0.0, 0, 0);
        for (i, row) in rows.iter().enumerate().filter(|(i, _)| free(*i, &used_rows)) {
            for (j, v) in row[..3].iter().enumerate().filter(|(j, _)| free(*j, &used_columns)) {
                if v.abs() > best.0 {
                    best = (v.abs(), i, j);
                }
            }
        }
        let (size, at, column) = best;
        if size <= stiffest * 1e-9 {
            let idle = (0..3).filter(|i| free(*i, &used_rows)).all(|i| rows[i][3].abs() <= driven * 1e-9);
            if !idle {
                return None;
            }
            break;
        }
        let pivot = rows[at];
        for (i, row) in rows.iter_mut().enumerate() {
            if i != at {
                let by = row[column] / pivot[column];
                for (cell, over) in row.iter_mut().zip(pivot) {
                    *cell -= by * over;
                }
            }
        }
        pivots.push((at, column));
    }
    let mut answer = [0.0; 3];
    for (row, column) in pivots {
        answer[column] = rows[row][3] / rows[row][column];
    }
    Some(answer)
}
