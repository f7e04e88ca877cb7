//! Screws and lags as the standard's appendix L prints them (NDS 2018, tables L2 and L3; Table I1).

/// What is turned into the stud.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Kind {
    Lag,
    WoodScrew,
}

/// One threaded fastener. The length is taken under the head.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Threaded {
    pub(crate) kind: Kind,
    pub(crate) nominal_in: f64,
    pub(crate) root_in: f64,
    pub(crate) tip_in: f64,
    pub(crate) thread_in: f64,
    pub(crate) length_in: f64,
    pub(crate) bending_psi: f64,
}

/// Nominal diameter, root and tip of a hex lag, Table L2.
pub(crate) const LAGS: [(f64, f64, f64); 4] = [
    (0.25, 0.173, 5.0 / 32.0),
    (0.3125, 0.227, 3.0 / 16.0),
    (0.375, 0.265, 7.0 / 32.0),
    (0.5, 0.371, 5.0 / 16.0),
];

/// Number, nominal diameter and root of a wood screw, Table L3.
pub(crate) const WOOD_SCREWS: [(u32, f64, f64); 5] =
    [(6, 0.138, 0.113), (8, 0.164, 0.131), (10, 0.190, 0.152), (12, 0.216, 0.171), (14, 0.242, 0.196)];

/// A lag's thread by its length, Table L2.
pub(crate) fn lag_thread_in(length_in: f64) -> f64 {
    let printed =
        [(1.0, 0.75), (1.5, 1.25), (2.0, 1.5), (2.5, 1.75), (3.0, 2.0), (4.0, 2.5), (5.0, 3.0), (6.0, 3.5)];
    match printed.iter().find(|(length, _)| (length - length_in).abs() < 1e-9) {
        Some((_, thread)) => *thread,
        // "Otherwise L/2 + 1/2" would give a lag just above 1 in more thread than the one of 1 in; from there to
        // 1-1/2 in the printed thread of the shorter is kept, on the safe side.
        None if length_in < 1.5 => 0.75,
        None => (length_in / 2.0 + 0.5).min(6.0),
    }
}

/// Bending yield strength by nominal diameter, Table I1.
pub(crate) fn bending_psi(nominal_in: f64) -> f64 {
    let steps = [(0.142, 100e3), (0.177, 90e3), (0.236, 80e3), (0.273, 70e3), (0.344, 60e3)];
    steps.iter().find(|(to, _)| nominal_in <= *to).map_or(45e3, |(_, psi)| *psi)
}

pub(crate) fn lag(row: usize, length_in: f64) -> Threaded {
    let (nominal_in, root_in, tip_in) = LAGS[row];
    Threaded {
        kind: Kind::Lag,
        nominal_in,
        root_in,
        tip_in,
        thread_in: lag_thread_in(length_in),
        length_in,
        bending_psi: bending_psi(nominal_in),
    }
}

pub(crate) fn wood_screw(row: usize, length_in: f64) -> Threaded {
    let (_, nominal_in, root_in) = WOOD_SCREWS[row];
    Threaded {
        kind: Kind::WoodScrew,
        nominal_in,
        root_in,
        tip_in: 2.0 * nominal_in,
        thread_in: (4.0 * nominal_in).max(2.0 * length_in / 3.0),
        length_in,
        bending_psi: bending_psi(nominal_in),
    }
}
