//! How much more wood bears a load that is short.

use super::why::{Input, Known, Why};
use crate::handbook::duration as book;
use crate::ledger::Given;

/// How long a combination of loads lasts: as long as the shortest of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lasting {
    /// What always hangs.
    Permanent,
    /// With a pull of some seconds: ten minutes in all over the life.
    TenMinutes,
}

impl Lasting {
    /// C_D.
    #[must_use]
    pub fn factor(self) -> Given<f64> {
        match self {
            Self::Permanent => book::PERMANENT.given(),
            Self::TenMinutes => book::TEN_MINUTES.given(),
        }
    }
}

/// A factor asked for, if a connection may be counted with it.
///
/// # Errors
/// Refused above 1.6, impact included.
pub fn for_connection(asked: Given<f64>) -> Known<Given<f64>> {
    if !(asked.value > 0.0 && asked.value.is_finite()) {
        Err(Why::NoValue(Input::Duration))
    } else if asked.value > book::MOST_FOR_CONNECTIONS.value {
        Err(Why::AboveCap)
    } else {
        Ok(asked)
    }
}
