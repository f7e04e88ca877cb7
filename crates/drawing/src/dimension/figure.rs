//! A length as a figure: whole, stacked fraction, unit. The runs are placed here, so that every painter and
//! every measuring of room agree.

use crate::font::{CAPITALS, Weight, text_width_mm};
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::Turn;
use strikeline_solver::tape::Parts;
use strikeline_solver::units::LengthUnit;

/// The em size of a fraction's figures, as a share of the whole's (chosen: its capitals are 1.65 mm beside 2.5 mm, and
/// read at arm's length in the sun).
const FRACTION: f64 = 0.66;
/// The middle of a capital, where the bar of a fraction is: half of 0.66.
const BAR: f64 = 0.33;
/// Between the bar and the figures above and below it.
const BAR_GAP: f64 = 0.075;
/// How high a stacked fraction is, foot to top, as a share of the whole's em size.
pub(super) const STACK: f64 = 2.0 * (BAR_GAP + FRACTION * CAPITALS);
/// Between the whole and its fraction, and between the fraction and the unit.
const SPACE: f64 = 0.1;

/// One run of text of a figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The text.
    pub text: String,
    /// Where it begins, along the figure.
    pub along_mm: f64,
    /// Its base line above the figure's; negative below.
    pub above_mm: f64,
    /// Its em size.
    pub height_mm: f64,
}

/// A length as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    runs: Vec<Run>,
    bar: Option<(f64, f64, f64)>,
    width_mm: f64,
    height_mm: f64,
}

impl Figure {
    /// The figure of a printed length at an em size.
    #[must_use]
    pub fn new(parts: Parts, height_mm: f64) -> Self {
        let mut figure = Self { runs: Vec::new(), bar: None, width_mm: 0.0, height_mm };
        let mut whole = String::new();
        if parts.negative {
            // The typographic minus, as wide as a figure.
            whole.push('\u{2212}');
        }
        if let Some(feet) = parts.feet {
            whole.push_str(&format!("{feet}\u{2032}-"));
        }
        if parts.whole != 0 || parts.numerator == 0 || parts.feet.is_some() {
            whole.push_str(&parts.whole.to_string());
        }
        figure.push(&whole);
        if parts.numerator != 0 {
            figure.push_fraction(
                &parts.numerator.to_string(),
                &parts.denominator.to_string(),
                !whole.is_empty(),
            );
        }
        figure.push(match parts.unit {
            LengthUnit::Inch => "\u{2033}",
            LengthUnit::Millimetre => " mm",
            LengthUnit::Mil => " mil",
        });
        figure
    }

    fn push(&mut self, text: &str) {
        if text.is_empty() {
            return;
        }
        let (along_mm, height_mm) = (self.width_mm, self.height_mm);
        self.runs.push(Run { text: text.to_owned(), along_mm, above_mm: 0.0, height_mm });
        self.width_mm += text_width_mm(text, height_mm, Weight::Regular);
    }

    fn push_fraction(&mut self, numerator: &str, denominator: &str, after_whole: bool) {
        let em = self.height_mm;
        let height_mm = em * FRACTION;
        if after_whole {
            self.width_mm += em * SPACE;
        }
        let widths = [numerator, denominator].map(|text| text_width_mm(text, height_mm, Weight::Regular));
        let [above, below] = widths;
        let bar = above.max(below);
        let start = self.width_mm;
        let mut run = |text: &str, width: f64, above_mm: f64| {
            let along_mm = start + (bar - width) / 2.0;
            self.runs.push(Run { text: text.to_owned(), along_mm, above_mm, height_mm });
        };
        run(numerator, above, em * (BAR + BAR_GAP));
        run(denominator, below, em * (BAR - BAR_GAP) - height_mm * CAPITALS);
        self.bar = Some((start, start + bar, em * BAR));
        self.width_mm = start + bar + em * SPACE;
    }

    /// The figure's runs of text.
    #[must_use]
    pub fn runs(&self) -> &[Run] {
        &self.runs
    }

    /// The bar of its fraction: from and to along the figure, and how far above its base line.
    #[must_use]
    pub fn bar(&self) -> Option<(f64, f64, f64)> {
        self.bar
    }

    /// How wide it is.
    #[must_use]
    pub fn width_mm(&self) -> f64 {
        self.width_mm
    }

    /// How far its lowest part is above its base line: 0, or negative where it has a fraction.
    #[must_use]
    pub fn foot_mm(&self) -> f64 {
        self.runs.iter().map(|run| run.above_mm).fold(0.0, f64::min)
    }

    /// The rectangle it takes where it begins at a place of its base line.
    #[must_use]
    pub fn bounds(&self, start: PaperPoint, turn: Turn) -> PaperRect {
        let top = self.runs.iter().map(|run| run.above_mm + run.height_mm * CAPITALS).fold(0.0, f64::max);
        PaperRect::of(turn.place(start, 0.0, self.foot_mm()), turn.place(start, self.width_mm, top))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::tape::{Graduation, Style};
    use strikeline_solver::units::Length;

    fn texts(inches: f64, feet_inches: bool) -> Vec<String> {
        let style = Style { graduation: Graduation::Sixteenth, feet_inches };
        let figure = Figure::new(style.fraction(Length::inches(inches)), 4.0);
        figure.runs().iter().map(|run| run.text.clone()).collect()
    }

    #[test]
    fn a_figure_reads_as_a_tape() {
        assert_eq!(texts(48.5, false), ["48", "1", "2", "\u{2033}"]);
        assert_eq!(texts(0.75, false), ["3", "4", "\u{2033}"]);
        assert_eq!(texts(0.0, false), ["0", "\u{2033}"]);
        assert_eq!(texts(84.0, true), ["7\u{2032}-0", "\u{2033}"]);
        assert_eq!(texts(84.5, true), ["7\u{2032}-0", "1", "2", "\u{2033}"]);
        let metric = Style { graduation: Graduation::Millimetre, feet_inches: false };
        let figure = Figure::new(metric.fraction(Length::millimetres(1231.9)), 4.0);
        let shown: String = figure.runs().iter().map(|run| run.text.as_str()).collect();
        assert_eq!(shown, "1232 mm");
    }

    #[test]
    fn the_fraction_is_stacked_about_its_bar() {
        let style = Style { graduation: Graduation::Sixteenth, feet_inches: false };
        let figure = Figure::new(style.fraction(Length::inches(11.4375)), 4.0);
        let (from, to, bar) = figure.bar().unwrap();
        let [whole, above, below, unit] = figure.runs() else { panic!("{figure:?}") };
        assert_eq!((above.text.as_str(), below.text.as_str()), ("7", "16"));
        assert!(above.above_mm > bar && below.above_mm + below.height_mm * CAPITALS < bar);
        let middle = above.along_mm + text_width_mm("7", above.height_mm, Weight::Regular) / 2.0;
        assert!((middle - f64::midpoint(from, to)).abs() < 1e-9, "the numerator stands over the middle");
        let high = figure.bounds(PaperPoint::default(), Turn::Level).height_mm();
        assert!((high - STACK * 4.0).abs() < 1e-9, "{high}");
        assert!(whole.along_mm < from && to < unit.along_mm && unit.along_mm < figure.width_mm());
    }
}
