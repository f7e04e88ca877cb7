//! The cases that can be the worst, for a choice that tries many sets of fasteners.
//!
//! Of cases with the same weight and pull down, a set of fasteners that carries two carries every mixture of the two
//! and whatever stands less far out: the use is convex in both moments and rises with the one out of the wall. So
//! only the outline of the two moments can govern. It holds where a fastener carries along its stud only, or alike
//! both ways; a lag in a wide face needs all cases.

use super::case::Case;

/// The cases that can be the worst, in their order. What one of them does not carry is told by all of them.
#[must_use]
pub fn leading(cases: &[Case]) -> Vec<Case> {
    let mut leads = vec![true; cases.len()];
    for (index, case) in cases.iter().enumerate() {
        // A pull straight out has its own place beside both moments: such cases all stay.
        let first_of_kin = case.out.is_none() && !cases.iter().take(index).any(|other| kin(other, case));
        if first_of_kin {
            let own: Vec<(usize, &Case)> =
                cases.iter().enumerate().filter(|(_, other)| kin(other, case)).collect();
            for (at, _) in &own {
                if let Some(lead) = leads.get_mut(*at) {
                    *lead = false;
                }
            }
            for at in outline(own) {
                if let Some(lead) = leads.get_mut(at) {
                    *lead = true;
                }
            }
        }
    }
    cases.iter().zip(leads).filter_map(|(case, leads)| leads.then_some(*case)).collect()
}

/// Whether two cases differ in their moments only.
fn kin(a: &Case, b: &Case) -> bool {
    a.out.is_none() && b.out.is_none() && a.lasting == b.lasting && a.down_n == b.down_n
}

/// The upper outline of the moments, from the leftmost to the rightmost.
fn outline(mut cases: Vec<(usize, &Case)>) -> Vec<usize> {
    cases.sort_by(|(_, a), (_, b)| {
        a.down_x_nmm.total_cmp(&b.down_x_nmm).then(a.down_z_nmm.total_cmp(&b.down_z_nmm))
    });
    let mut upper: Vec<(usize, &Case)> = Vec::new();
    for (at, case) in cases {
        while let [.., (_, before), (_, last)] = upper.as_slice() {
            if left_below(before, last, case) {
                upper.pop()
            } else {
                break;
            };
        }
        // Of cases straight above one another the uppermost, which comes last.
        if upper.last().is_some_and(|(_, last)| last.down_x_nmm == case.down_x_nmm) {
            upper.pop();
        }
        upper.push((at, case));
    }
    upper.into_iter().map(|(at, _)| at).collect()
}

/// Whether `middle` lies on or below the line from `from` to `to`.
fn left_below(from: &Case, middle: &Case, to: &Case) -> bool {
    let (ax, az) = (middle.down_x_nmm - from.down_x_nmm, middle.down_z_nmm - from.down_z_nmm);
    let (bx, bz) = (to.down_x_nmm - from.down_x_nmm, to.down_z_nmm - from.down_z_nmm);
    ax * bz - az * bx >= 0.0
}
