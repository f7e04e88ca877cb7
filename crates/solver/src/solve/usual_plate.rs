//! The plates that stand in for one that was not measured. Invented and chosen: sizes that many plates have,
//! holes that reach studs 16 in apart, so that a plan shows what it will ask for. Nothing is struck from them.

use crate::job::mount::UsualPlate;
use crate::job::plate::{Plate, PlateHole, Solid};
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::Length;

/// The plate: its solid parts, and its holes row by row from the left.
pub(super) fn usual_plate(like: UsualPlate) -> Plate {
    match like {
        UsualPlate::NarrowRail => plate(&[solid(18.0, 0.0, 2.5)], &[(1.25, &[-8.0, -4.0, 0.0, 4.0, 8.0])]),
        UsualPlate::TwoRails => plate(
            &[solid(26.0, 0.0, 2.0), solid(26.0, 7.0, 2.0)],
            &[(1.0, &[-12.0, -8.0, -4.0, 4.0, 8.0, 12.0]), (8.0, &[-12.0, -8.0, -4.0, 4.0, 8.0, 12.0])],
        ),
        UsualPlate::ArmOnOneStud => plate(&[solid(3.0, 0.0, 9.0)], &[(1.0, &[0.0]), (8.0, &[0.0])]),
        UsualPlate::ArmOnTwoStuds => {
            plate(&[solid(18.0, 0.0, 9.0)], &[(1.0, &[-8.0, 8.0]), (8.0, &[-8.0, 8.0])])
        }
        UsualPlate::PullDown => {
            plate(&[solid(18.0, 0.0, 14.0)], &[(1.0, &[-8.0, 8.0]), (13.0, &[-8.0, 8.0])])
        }
    }
}

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn solid(width: f64, down: f64, height: f64) -> Solid {
    let half = inches(width / 2.0);
    Solid {
        id: Id::default(),
        left: Offset(-half),
        right: Offset(half),
        down: inches(down),
        height: inches(height),
    }
}

/// Rows of holes: how far down, and each hole to the right of the middle, in inches.
fn plate(solids: &[Solid], rows: &[(f64, &[f64])]) -> Plate {
    let places = rows.iter().flat_map(|(down, rights)| rights.iter().map(move |right| (*down, *right)));
    let holes = places.enumerate().map(|(index, (down, right))| PlateHole {
        id: Id::new(&format!("hole-{}", index + 1)),
        right: Offset(inches(right)),
        down: inches(down),
        diameter: None,
    });
    Plate {
        solids: solids.to_vec(),
        thickness: None,
        bearing: None,
        holes: holes.collect(),
        slots: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_usual_plate_is_its_own_mirror_and_holds_its_holes() {
        for like in UsualPlate::ALL {
            let plate = usual_plate(like);
            let outline = plate.outline_in_plate().unwrap();
            assert!((outline.left + outline.right).abs() < Length::millimetres(1e-9), "{like:?}");
            let at = |right: Length, down: Length| {
                plate.holes.iter().any(|hole| hole.right.length() == right && hole.down == down)
            };
            for hole in &plate.holes {
                assert!(at(-hole.right.length(), hole.down), "{like:?}: {hole:?}");
                let place = crate::geometry::Point::new(hole.right.length(), -hole.down);
                assert!(plate.solids.iter().any(|solid| solid.in_plate().holds(place)), "{like:?}: {hole:?}");
            }
        }
    }
}
