//! Hex lag screws to B18.2.1, in inches.

use super::Row;

/// One size of lag screw, in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LagSize {
    /// Nominal diameter.
    pub diameter_in: f64,
    /// Root diameter of its thread.
    pub root_in: f64,
    /// Length of its tapered tip.
    pub tip_in: f64,
}

const SOURCE: &str = "NDS 2018 Table L2 (ASME B18.2.1)";

const fn size(diameter_in: f64, root_in: f64, tip_in: f64) -> Row<LagSize> {
    Row::read(LagSize { diameter_in, root_in, tip_in }, SOURCE)
}

/// The sizes read.
pub const SIZES: [Row<LagSize>; 4] = [
    size(0.25, 0.173, 5.0 / 32.0),
    size(0.3125, 0.227, 3.0 / 16.0),
    size(0.375, 0.265, 7.0 / 32.0),
    size(0.5, 0.371, 5.0 / 16.0),
];

/// Length of thread, tip included, by length of screw: T = L/2 + 1/2 in, at most 6 in; 3/4 in of a screw of 1 in.
pub const THREAD: Row<(f64, f64)> = Row::read((0.5, 6.0), SOURCE);

/// The thread of a screw from 1 in up to less than 1 1/2 in long: the printed value of the 1 in screw.
pub const THREAD_OF_SHORT_IN: Row<f64> = Row::read(0.75, SOURCE);
