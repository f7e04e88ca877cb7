//! Wood screws to B18.6.1, in inches.

use super::Row;

/// One size of wood screw, in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WoodScrewSize {
    /// Its number.
    pub number: u8,
    /// Nominal diameter.
    pub diameter_in: f64,
    /// Root diameter of its thread.
    pub root_in: f64,
    /// Diameter of its head.
    pub head_in: f64,
}

const SOURCE: &str = "NDS 2018 Table L3 (ASME B18.6.1)";

const fn size(number: u8, diameter_in: f64, root_in: f64, head_in: f64) -> Row<WoodScrewSize> {
    Row::read(WoodScrewSize { number, diameter_in, root_in, head_in }, SOURCE)
}

/// The sizes read.
pub const SIZES: [Row<WoodScrewSize>; 5] = [
    size(6, 0.138, 0.113, 0.262),
    size(8, 0.164, 0.131, 0.312),
    size(10, 0.190, 0.152, 0.363),
    size(12, 0.216, 0.171, 0.414),
    size(14, 0.242, 0.196, 0.480),
];

/// Length of thread: at least the larger of 4 D and two thirds of the length.
pub const THREAD: Row<(f64, f64)> = Row::read((4.0, 2.0 / 3.0), SOURCE);

/// Length of the tip, in diameters.
pub const TIP_DIAMETERS: Row<f64> = Row::read(2.0, "NDS 2018 section 12.3.5.3");
