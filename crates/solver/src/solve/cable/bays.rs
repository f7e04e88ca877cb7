//! The clear spaces between studs, for the middle of what is drawn through them.

use crate::route::Area;

/// A bay.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Bay {
    pub(super) left: i64,
    pub(super) right: i64,
}

/// The bays of a plane, from left to right: its width without the studs. All of it is one where no stud is known.
pub(super) fn bays(bounds: Area, studs: impl Iterator<Item = Area>) -> Vec<Bay> {
    let mut studs: Vec<(i64, i64)> = studs.map(|stud| (stud.left, stud.right)).collect();
    studs.sort_unstable();
    let mut bays = Vec::new();
    let mut from = bounds.left;
    for (left, right) in studs.into_iter().chain([(bounds.right, bounds.right)]) {
        let to = left.min(bounds.right);
        if from < to {
            bays.push(Bay { left: from, right: to });
        }
        from = from.max(right);
    }
    bays
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_between_studs_is_a_bay() {
        let bounds = Area { left: 0, right: 100, bottom: 0, top: 10 };
        let stud = |left, right| Area { left, right, bottom: 0, top: 10 };
        let found = |studs: &[(i64, i64)]| -> Vec<(i64, i64)> {
            let studs = studs.iter().map(|(left, right)| stud(*left, *right));
            bays(bounds, studs).into_iter().map(|bay| (bay.left, bay.right)).collect()
        };
        assert_eq!(found(&[]), [(0, 100)]);
        assert_eq!(found(&[(60, 70), (20, 30), (28, 35)]), [(0, 20), (35, 60), (70, 100)]);
        assert_eq!(found(&[(-5, 40), (90, 120)]), [(40, 90)]);
        assert_eq!(found(&[(-5, 200)]), []);
    }
}
