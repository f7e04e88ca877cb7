//! The size of a piece that was not measured. Drawn lighter, and nothing is struck from it.

use crate::job::piece::{Piece, PieceKind};
use crate::units::Length;

/// What a usual case adds to the picture, sideways and upright: a thin rim, and a thicker lower edge (chosen).
const CASE_MM: (f64, f64) = (12.0, 22.0);

/// A piece's usual width and height: by the diagonal on its box, else a middling one of its kind (chosen).
pub(super) fn usual_size(piece: &Piece) -> (Length, Length) {
    if let Some(diagonal) = piece.diagonal {
        let (width_mm, height_mm) = picture_mm(diagonal.mm());
        return (Length::millimetres(width_mm + CASE_MM.0), Length::millimetres(height_mm + CASE_MM.1));
    }
    let (width_mm, height_mm) = match piece.kind {
        PieceKind::Display => (1450.0, 830.0),
        PieceKind::SoundBar => (900.0, 70.0),
        PieceKind::Shelf | PieceKind::Box => (600.0, 300.0),
    };
    (Length::millimetres(width_mm), Length::millimetres(height_mm))
}

/// The sides of a picture 16 wide to 9 high, by its diagonal.
fn picture_mm(diagonal_mm: f64) -> (f64, f64) {
    let part = diagonal_mm / f64::sqrt(16.0 * 16.0 + 9.0 * 9.0);
    (16.0 * part, 9.0 * part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_closes_on_its_diagonal() {
        // Pythagoras: 16 and 9 on the sides give the square root of 337 across.
        let (width, height) = picture_mm(f64::sqrt(337.0));
        assert!((width - 16.0).abs() < 1e-12 && (height - 9.0).abs() < 1e-12);
        let (width, height) = picture_mm(1397.0);
        assert!((width.hypot(height) - 1397.0).abs() < 1e-9 && (width / height - 16.0 / 9.0).abs() < 1e-12);
    }

    #[test]
    fn the_case_is_larger_than_its_picture() {
        let piece = Piece { diagonal: Some(Length::inches(55.0)), ..Piece::default() };
        let (width, height) = usual_size(&piece);
        // 55 in: 47.94 x 26.96 in of picture.
        assert!((width.in_inches() - 47.94 - 12.0 / 25.4).abs() < 0.01);
        assert!((height.in_inches() - 26.96 - 22.0 / 25.4).abs() < 0.01);
    }
}
