//! The size of a piece that was not measured. Drawn lighter, and nothing is struck from it.

use crate::job::piece::{Piece, PieceKind};
use crate::sight::picture::picture;
use crate::units::Length;

/// What a usual case adds to the picture, sideways and upright: a thin rim, and a thicker lower edge (chosen).
const CASE_MM: (f64, f64) = (12.0, 22.0);

/// A piece's usual width and height: by the diagonal on its box, else a middling one of its kind (chosen).
pub(super) fn usual_size(piece: &Piece) -> (Length, Length) {
    if let Some(diagonal) = piece.diagonal {
        let (width, height) = picture(diagonal);
        return (width + Length::millimetres(CASE_MM.0), height + Length::millimetres(CASE_MM.1));
    }
    let (width_mm, height_mm) = match piece.kind {
        PieceKind::Display => (1450.0, 830.0),
        PieceKind::SoundBar => (900.0, 70.0),
        PieceKind::Shelf | PieceKind::Box => (600.0, 300.0),
    };
    (Length::millimetres(width_mm), Length::millimetres(height_mm))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_case_is_larger_than_its_picture() {
        let piece = Piece { diagonal: Some(Length::inches(55.0)), ..Piece::default() };
        let (width, height) = usual_size(&piece);
        // 55 in: 47.94 x 26.96 in of picture.
        assert!((width.in_inches() - 47.94 - 12.0 / 25.4).abs() < 0.01);
        assert!((height.in_inches() - 26.96 - 22.0 / 25.4).abs() < 0.01);
    }
}
