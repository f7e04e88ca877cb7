//! A picture's size by the diagonal that it is sold by.

use crate::numeric::root;
use crate::units::Length;

/// The sides of a picture 16 wide to 9 high (geometry); the case round it is larger.
#[must_use]
pub fn picture(diagonal: Length) -> (Length, Length) {
    let part_mm = diagonal.mm() / root(16.0 * 16.0 + 9.0 * 9.0);
    (Length::millimetres(16.0 * part_mm), Length::millimetres(9.0 * part_mm))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_closes_on_its_diagonal() {
        // Pythagoras: 16 and 9 on the sides give the square root of 337 across.
        let (width, height) = picture(Length::millimetres(f64::sqrt(337.0)));
        assert!((width.mm() - 16.0).abs() < 1e-12 && (height.mm() - 9.0).abs() < 1e-12);
    }
}
