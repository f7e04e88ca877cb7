//! The pattern of the threads in a display's back: one tap for a usual one, or two values.

use super::super::measured::field_id;
use crate::widgets::chips::chips;
use crate::widgets::quantity_field::{Allowed, forget, quantity_field};
use egui::{Id, Ui};
use strikeline_solver::job::piece::{Pattern, Piece};
use strikeline_solver::units::{Length, LengthUnit};

/// Patterns that many displays have, in millimetres (common practice, no source).
const USUAL_MM: [(u16, u16); 6] = [(200, 200), (300, 300), (400, 200), (400, 400), (600, 400), (800, 400)];

/// One of two values, while the other is not given: a pattern has both.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Half {
    across: Option<Length>,
    upright: Option<Length>,
}

/// The ids of the two fields.
pub(super) fn fields(piece: &Piece) -> [Id; 2] {
    [field_id(&piece.id, "pattern_across"), field_id(&piece.id, "pattern_upright")]
}

/// Shows the pattern. It is always in millimetres, as it is printed on the box.
pub(super) fn ui(ui: &mut Ui, piece: &mut Piece) {
    let names = USUAL_MM.map(|(across, upright)| format!("{across}\u{d7}{upright}"));
    let held = piece.pattern.as_ref().and_then(|pattern| {
        USUAL_MM.iter().position(|usual| {
            let (across, upright) = lengths(*usual);
            pattern.across == across && pattern.upright == upright
        })
    });
    let [across_id, upright_id] = fields(piece);
    let half_id = field_id(&piece.id, "half a pattern");
    let mut half: Half = ui.data(|data| data.get_temp(half_id)).unwrap_or_default();
    if let Some(pattern) = &piece.pattern {
        half = Half { across: Some(pattern.across), upright: Some(pattern.upright) };
    }
    if piece.pattern.is_none() && half.across.is_some() && half.upright.is_some() {
        // Two values were a pattern: it was taken out elsewhere.
        half = Half::default();
    }
    let before = half;
    if let Some(tapped) = chips(ui, "Mounting pattern, mm", names.iter().map(String::as_str), held) {
        let usual = USUAL_MM.get(tapped).filter(|_| held != Some(tapped)).map(|usual| lengths(*usual));
        half = Half { across: usual.map(|(across, _)| across), upright: usual.map(|(_, upright)| upright) };
        [across_id, upright_id].into_iter().for_each(|id| forget(ui, id));
    }
    let allowed = Allowed { bare: LengthUnit::Millimetre, signed: false, empty: true };
    quantity_field(ui, across_id, "Threads apart, sideways", &mut half.across, allowed);
    quantity_field(ui, upright_id, "Threads apart, upright", &mut half.upright, allowed);
    if half != before {
        write(piece, half);
    }
    ui.data_mut(|data| data.insert_temp(half_id, half));
}

fn lengths((across, upright): (u16, u16)) -> (Length, Length) {
    (Length::millimetres(f64::from(across)), Length::millimetres(f64::from(upright)))
}

/// Writes a pattern of which both values are given; what else was measured of it stays.
fn write(piece: &mut Piece, half: Half) {
    piece.pattern = match (half.across, half.upright, piece.pattern.take()) {
        (Some(across), Some(upright), Some(measured)) => Some(Pattern { across, upright, ..measured }),
        (Some(across), Some(upright), None) => Some(Pattern::new(across, upright)),
        (None, _, _) | (_, None, _) => None,
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pattern_has_both_values_or_is_none_and_keeps_what_else_was_measured() {
        let (across, upright) = lengths((400, 300));
        let mut piece = Piece::default();
        write(&mut piece, Half { across: Some(across), upright: None });
        assert_eq!(piece.pattern, None);
        write(&mut piece, Half { across: Some(across), upright: Some(upright) });
        let down = Some(Length::inches(7.0));
        piece.pattern.as_mut().unwrap().down = down;
        write(&mut piece, Half { across: Some(upright), upright: Some(upright) });
        let pattern = piece.pattern.as_ref().unwrap();
        assert_eq!((pattern.across, pattern.down), (upright, down));
    }
}
