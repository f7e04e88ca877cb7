//! A fastener as the formulas of wood see it: by its published size, or by its maker's report.

use super::stated::Report;
use super::why::{Input, Known, Why, above_zero};
use crate::handbook::dowel_bearing::LARGE_FROM_IN;
use crate::handbook::{bending, lag, wood_screw};
use crate::ledger::{Amount, Given, Label, Ledger, Put, Step};
use crate::tolerance::SAME_SIZE_IN;
use crate::units::{Length, Stress};

/// A type of fastener for wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScrewKind {
    /// A wood screw to B18.6.1.
    WoodScrew,
    /// A hex lag screw to B18.2.1.
    Lag,
    /// A proprietary structural screw, by its report.
    Structural,
}

/// A fastener for wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Its type.
    pub kind: ScrewKind,
    /// Its length under the head.
    pub length: Given<Length>,
    /// Its nominal diameter.
    pub diameter: Given<Length>,
    /// The root diameter of its thread: what it shears and bends with.
    pub root: Given<Length>,
    /// The length of its thread, tip included.
    pub thread: Given<Length>,
    /// The length of its tip.
    pub tip: Given<Length>,
    /// Its bending yield strength.
    pub bending: Given<Stress>,
    /// What its maker says of it; of a structural screw only.
    pub report: Option<Report>,
}

/// Where the values of a structural screw are from.
const REPORT: &str = "the screw's report";

/// What going to millimetres and back may cost, in inches.
const NOISE_IN: f64 = 1e-9;

impl Screw {
    /// A lag screw of a nominal diameter and a length under the head.
    ///
    /// # Errors
    /// Where the size is not in the table (a metric one is not), or a value makes no sense.
    pub fn lag(diameter: Given<Length>, length: Given<Length>) -> Known<Self> {
        let d_in = above_zero(diameter.value, Input::Diameter)?.in_inches();
        let l_in = above_zero(length.value, Input::Length)?.in_inches();
        let size = lag::SIZES.iter().find(|row| (row.value.diameter_in - d_in).abs() <= SAME_SIZE_IN);
        let size = size.ok_or(Why::OutsideTable(Input::Diameter))?;
        if l_in < 1.0 - NOISE_IN {
            return Err(Why::OutsideTable(Input::Length));
        }
        let (extra, most) = lag::THREAD.value;
        let thread_in = if l_in < 1.5 - NOISE_IN {
            lag::THREAD_OF_SHORT_IN.value
        } else {
            (l_in / 2.0 + extra).min(most)
        };
        let read = |inches: f64| Given::new(Length::inches(inches), size.label).because(size.source);
        Ok(Self {
            kind: ScrewKind::Lag,
            length,
            diameter: Given::new(Length::inches(size.value.diameter_in), diameter.label),
            root: read(size.value.root_in),
            thread: Given::new(Length::inches(thread_in), lag::THREAD.label.weaker(length.label)),
            tip: read(size.value.tip_in),
            bending: bending_strength(size.value.diameter_in)?,
            report: None,
        })
    }

    /// A wood screw of a nominal diameter and a length under the head.
    ///
    /// # Errors
    /// Where the size is not in the table (a metric one is not), or a value makes no sense.
    pub fn wood_screw(diameter: Given<Length>, length: Given<Length>) -> Known<Self> {
        let d_in = above_zero(diameter.value, Input::Diameter)?.in_inches();
        let l_in = above_zero(length.value, Input::Length)?.in_inches();
        let size = wood_screw::SIZES.iter().find(|row| (row.value.diameter_in - d_in).abs() <= SAME_SIZE_IN);
        let size = size.ok_or(Why::OutsideTable(Input::Diameter))?;
        let d_in = size.value.diameter_in;
        let (diameters, share) = wood_screw::THREAD.value;
        let thread_in = (diameters * d_in).max(share * l_in).min(l_in);
        let tip = wood_screw::TIP_DIAMETERS;
        Ok(Self {
            kind: ScrewKind::WoodScrew,
            length,
            diameter: Given::new(Length::inches(d_in), diameter.label),
            root: Given::new(Length::inches(size.value.root_in), size.label).because(size.source),
            thread: Given::new(Length::inches(thread_in), wood_screw::THREAD.label.weaker(length.label)),
            tip: Given::new(Length::inches(tip.value * d_in), tip.label).because(tip.source),
            bending: bending_strength(d_in)?,
            report: None,
        })
    }

    /// A structural screw of a length under the head, by what its report says.
    ///
    /// # Errors
    /// Where a value of the report makes no sense.
    pub fn structural(length: Given<Length>, report: Report) -> Known<Self> {
        above_zero(length.value, Input::Length)?;
        let diameter = above_zero(report.outer_diameter, Input::Diameter)?;
        let root = above_zero(report.root_diameter, Input::Diameter)?;
        above_zero(report.thread, Input::Length)?;
        let psi = report.bending.in_psi();
        if root > diameter {
            return Err(Why::NoValue(Input::Diameter));
        }
        if !(psi > 0.0 && psi <= 1e6) {
            return Err(Why::NoValue(Input::Bending));
        }
        let stated = |length: Length| Given::new(length, Label::Stated).because(REPORT);
        Ok(Self {
            kind: ScrewKind::Structural,
            length,
            diameter: stated(diameter),
            root: stated(root),
            thread: stated(report.thread.min(length.value)),
            // Not every report tells the tip: it is taken as a wood screw's and deducted.
            tip: Given::chosen(diameter * wood_screw::TIP_DIAMETERS.value)
                .because("not every report tells the tip: as a wood screw's"),
            bending: Given::new(report.bending, Label::Stated).because(REPORT),
            report: Some(report),
        })
    }

    /// Writes down how long its thread is.
    pub(super) fn write_thread<L: Ledger>(&self, ledger: &mut L) {
        let inches = |symbol, inches: f64, label| Put::new(symbol, Length::inches(inches), label);
        ledger.write(|| {
            let (extra, most) = lag::THREAD.value;
            let is_short = self.length.value.in_inches() < 1.5 - NOISE_IN;
            let length = Put::given("L", self.length);
            let (formula, put, source) = match (self.kind, &self.report) {
                (ScrewKind::Lag, _) if is_short => {
                    let row = lag::THREAD_OF_SHORT_IN;
                    ("T = T_printed", vec![inches("T_printed", row.value, row.label), length], row.source)
                }
                (ScrewKind::WoodScrew, _) => {
                    let (diameters, share) = wood_screw::THREAD.value;
                    let row = wood_screw::THREAD;
                    let put = vec![
                        Put::new("k", Amount::bare(diameters), row.label),
                        Put::given("D", self.diameter),
                        Put::new("share", Amount::bare(share), row.label),
                        length,
                    ];
                    ("T = min(max(k D, share L), L)", put, row.source)
                }
                (ScrewKind::Structural, Some(report)) => {
                    let stated = Put::new("T_stated", report.thread, Label::Stated);
                    ("T = min(T_stated, L)", vec![stated, length], REPORT)
                }
                (ScrewKind::Lag | ScrewKind::Structural, _) => {
                    let row = lag::THREAD;
                    let put = vec![length, inches("e", extra, row.label), inches("T_most", most, row.label)];
                    ("T = min(L/2 + e, T_most)", put, row.source)
                }
            };
            let (name, result) = ("length of thread", self.thread.value.into());
            Step { name, formula, put, result, source, label: self.thread.label }
        });
    }

    /// Whether the rules of 1/4 in and more hold for it.
    #[must_use]
    pub fn is_large(&self) -> bool {
        is_large(self.diameter.value)
    }
}

/// Whether a nominal diameter is 1/4 in or more.
pub(super) fn is_large(nominal: Length) -> bool {
    nominal.in_inches() >= LARGE_FROM_IN.value - NOISE_IN
}

/// The bending yield strength of a common screw by its nominal diameter in inches.
fn bending_strength(diameter_in: f64) -> Known<Given<Stress>> {
    let row = bending::STRENGTH.iter().find(|row| diameter_in <= row.value.0);
    match row {
        Some(row) if diameter_in >= bending::LEAST_DIAMETER_IN => {
            Ok(Given::new(Stress::psi(row.value.1), row.label).because(row.source))
        }
        _ => Err(Why::OutsideTable(Input::Diameter)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(value: f64) -> Given<Length> {
        Given::measured(Length::inches(value))
    }

    #[test]
    fn a_lag_is_threaded_as_its_table_prints() {
        // NDS 2018 Table L2: length of thread by length, inches.
        let printed = [
            (1.0, 0.75),
            (1.5, 1.25),
            (2.0, 1.5),
            (2.5, 1.75),
            (3.0, 2.0),
            (4.0, 2.5),
            (5.0, 3.0),
            (6.0, 3.5),
        ];
        for (length, thread) in printed {
            let lag = Screw::lag(inches(0.3125), inches(length)).unwrap();
            assert!((lag.thread.value.in_inches() - thread).abs() < 1e-12, "{length}");
        }
    }

    #[test]
    fn bending_strength_follows_the_nominal_diameter() {
        // NDS 2018 Table I1, by size, ksi.
        for (diameter, ksi) in [(0.138, 100.0), (0.164, 90.0), (0.19, 80.0), (0.216, 80.0), (0.242, 70.0)] {
            let screw = Screw::wood_screw(inches(diameter), inches(2.0)).unwrap();
            assert!((screw.bending.value.in_psi() / 1000.0 - ksi).abs() < 1e-9, "{diameter}");
        }
        for (diameter, ksi) in [(0.25, 70.0), (0.3125, 60.0), (0.375, 45.0), (0.5, 45.0)] {
            let lag = Screw::lag(inches(diameter), inches(3.0)).unwrap();
            assert!((lag.bending.value.in_psi() / 1000.0 - ksi).abs() < 1e-9, "{diameter}");
        }
    }

    #[test]
    fn what_no_table_has_is_not_known() {
        for bad in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e300] {
            assert!(Screw::lag(inches(bad), inches(3.0)).is_err());
            assert!(Screw::lag(inches(0.25), inches(bad)).is_err());
            assert!(Screw::wood_screw(inches(bad), inches(3.0)).is_err());
            assert!(Screw::wood_screw(inches(0.19), inches(bad)).is_err());
        }
        // A 5 mm screw is of another standard.
        assert_eq!(
            Screw::wood_screw(Given::measured(Length::millimetres(5.0)), inches(2.0)),
            Err(Why::OutsideTable(Input::Diameter))
        );
    }
}
