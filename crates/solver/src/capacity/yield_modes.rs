//! The yield modes of a dowel in single shear with a gap between its members (TR12 Table 1-1). Without a gap
//! they are those of NDS 2018 Table 12.3.1A.

use super::reduction::Reduction;
use crate::numeric::root;

/// How a joint yields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The stud is crushed along the whole length.
    OneMain,
    /// The plate is crushed.
    OneSide,
    /// The fastener turns in both.
    Two,
    /// The fastener bends in the plate and turns in the stud.
    ThreeMain,
    /// The fastener bends in the stud and turns in the plate.
    ThreeSide,
    /// The fastener bends in both.
    Four,
}

impl Mode {
    /// All, in the order of the table.
    pub const ALL: [Self; 6] =
        [Self::OneMain, Self::OneSide, Self::Two, Self::ThreeMain, Self::ThreeSide, Self::Four];

    /// As the standard writes it.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::OneMain => "I_m",
            Self::OneSide => "I_s",
            Self::Two => "II",
            Self::ThreeMain => "III_m",
            Self::ThreeSide => "III_s",
            Self::Four => "IV",
        }
    }
}

/// A dowel joint in single shear, in inches and psi. Every value is above zero, the gap zero or more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// The diameter that bends and bears: the root where threads are in the shear.
    pub diameter_in: f64,
    /// The bending yield strength.
    pub bending_psi: f64,
    /// What the stud bears.
    pub main_psi: f64,
    /// How long the dowel bears in the stud.
    pub main_in: f64,
    /// What the plate bears.
    pub side_psi: f64,
    /// How thick the plate is.
    pub side_in: f64,
    /// What stands between the two.
    pub gap_in: f64,
}

/// A P^2 + B P = C, in inches and pounds-force: what a mode that turns or bends the fastener yields at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Quadratic {
    pub(super) a: f64,
    pub(super) b: f64,
    pub(super) c: f64,
}

impl Quadratic {
    /// The positive root, by the form that loses no digits where B is large.
    fn solved(&self) -> f64 {
        2.0 * self.c / (self.b + root(self.b * self.b + 4.0 * self.a * self.c))
    }
}

/// What a joint's equations are made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Parts {
    /// What the stud bears for each inch of dowel.
    pub(super) q_m: f64,
    /// What the plate bears for each inch of dowel.
    pub(super) q_s: f64,
    /// What bends the dowel.
    pub(super) m: f64,
    /// Of the modes II, III_m, III_s and IV.
    pub(super) quadratics: [Quadratic; 4],
}

impl Parts {
    pub(super) fn of(joint: &Joint) -> Self {
        let Joint { main_in: l_m, side_in: l_s, gap_in: g, .. } = *joint;
        let q_m = joint.main_psi * joint.diameter_in;
        let q_s = joint.side_psi * joint.diameter_in;
        let m = joint.bending_psi * joint.diameter_in * joint.diameter_in * joint.diameter_in / 6.0;
        // The crushing of a whole length, halved and squared as the table has it.
        let (c_m, c_s) = (q_m * l_m * l_m / 4.0, q_s * l_s * l_s / 4.0);
        let quadratics = [
            Quadratic { a: 0.25 / q_s + 0.25 / q_m, b: l_s / 2.0 + g + l_m / 2.0, c: c_s + c_m },
            Quadratic { a: 0.5 / q_s + 0.25 / q_m, b: g + l_m / 2.0, c: m + c_m },
            Quadratic { a: 0.25 / q_s + 0.5 / q_m, b: l_s / 2.0 + g, c: c_s + m },
            Quadratic { a: 0.5 / q_s + 0.5 / q_m, b: g, c: m + m },
        ];
        Self { q_m, q_s, m, quadratics }
    }
}

/// The load at which each mode yields, divided by its reduction term, pounds-force, in the order of `Mode::ALL`.
#[must_use]
pub fn yield_loads(joint: &Joint, reduction: &Reduction) -> [f64; 6] {
    loads(&Parts::of(joint), joint, reduction)
}

/// The same of parts worked out before.
pub(super) fn loads(parts: &Parts, joint: &Joint, reduction: &Reduction) -> [f64; 6] {
    let [two, three_main, three_side, four] = parts.quadratics.map(|quadratic| quadratic.solved());
    [
        parts.q_m * joint.main_in / reduction.one,
        parts.q_s * joint.side_in / reduction.one,
        two / reduction.two,
        three_main / reduction.three_and_four,
        three_side / reduction.three_and_four,
        four / reduction.three_and_four,
    ]
}

/// The least of the loads and its mode.
#[must_use]
pub fn least(loads: &[f64; 6]) -> (Mode, f64) {
    let mut governing = (Mode::OneMain, f64::INFINITY);
    for (mode, load) in Mode::ALL.into_iter().zip(loads) {
        if *load < governing.1 {
            governing = (mode, *load);
        }
    }
    governing
}
