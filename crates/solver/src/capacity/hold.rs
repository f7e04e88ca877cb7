//! What one fastener of a group may carry, ready to be asked many times.

use crate::ledger::Label;

/// What one fastener may carry in wood under one load duration, in newtons.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InWood {
    /// Shear along the stud, Z'.
    pub along_n: f64,
    /// Shear across the stud.
    pub across_n: f64,
    /// Withdrawal of its thread, W'p.
    pub withdrawal_n: f64,
    /// What its own steel may be pulled with.
    pub steel_n: f64,
}

/// What one fastener may carry where shear and pull are added in proportion, in newtons.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linear {
    /// Shear.
    pub shear_n: f64,
    /// Pull.
    pub pull_n: f64,
    /// The weakest of what it rests on.
    pub label: Label,
}

/// What one fastener may carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hold {
    /// In wood.
    Wood {
        /// Under what always hangs.
        permanent: InWood,
        /// Under ten minutes' load.
        ten_minutes: InWood,
        /// The weakest of what it rests on.
        label: Label,
    },
    /// In steel, in concrete, or by a stated load.
    Linear(Linear),
}

impl Hold {
    /// The weakest of what it rests on.
    #[must_use]
    pub fn label(&self) -> Label {
        match self {
            Self::Wood { label, .. } => *label,
            Self::Linear(linear) => linear.label,
        }
    }
}
