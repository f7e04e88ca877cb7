//! How high the eyes of someone are whom nobody measured: by a published table, with the range of nine in ten people.

use crate::handbook::Row;
use crate::handbook::eye_height::{ABOVE_SEAT, Measure, Percentiles, SEATED, SLUMP, STANDING};
use crate::ledger::{Given, Label};
use crate::units::Length;

/// Whose eyes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Who {
    /// Anyone: men and women together as they were surveyed.
    #[default]
    Anyone,
    /// A man.
    Man,
    /// A woman.
    Woman,
}

/// How high eyes are above the floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eyes {
    /// The middling height, sitting erect; or what was measured.
    pub height: Length,
    /// One person in twenty is lower, and may slump besides where seated; or what was measured.
    pub low: Length,
    /// One person in twenty is higher; or what was measured.
    pub high: Length,
    /// How far it may be trusted.
    pub label: Label,
    /// Where it is from; empty where it was measured.
    pub source: &'static str,
}

impl Eyes {
    /// Eyes that were measured.
    #[must_use]
    pub fn measured(height: Length) -> Self {
        Self { height, low: height, high: height, label: Label::Measured, source: "" }
    }

    /// The eyes of standing people.
    #[must_use]
    pub fn standing(who: Who) -> Self {
        Self::of(row(&STANDING, who), Length::default(), None)
    }

    /// The eyes of seated people, on a seat so high, pressed down; on one that suits each where that is not known.
    #[must_use]
    pub fn seated(who: Who, seat: Option<Length>) -> Self {
        match seat {
            Some(seat) => Self::of(row(&ABOVE_SEAT, who), seat, Some(SLUMP)),
            None => Self::of(row(&SEATED, who), Length::default(), Some(SLUMP)),
        }
    }

    fn of(row: Row<Percentiles>, above: Length, slump: Option<Row<f64>>) -> Self {
        let Given { value, label, reason } = row.given();
        let label = slump.map_or(label, |slump| label.weaker(slump.label));
        let slump_mm = slump.map_or(0.0, |slump| slump.value);
        Self {
            height: above + Length::millimetres(value.p50),
            low: above + Length::millimetres(value.p5 - slump_mm),
            high: above + Length::millimetres(value.p95),
            label,
            source: reason,
        }
    }
}

fn row(measure: &Measure, who: Who) -> Row<Percentiles> {
    match who {
        Who::Anyone => measure.all,
        Who::Man => measure.men,
        Who::Woman => measure.women,
    }
}
