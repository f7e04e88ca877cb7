//! What a job may set, with what holds where it does not. Each default is *chosen*, with its reason.

use crate::tolerance::MOST_RESERVE;
use crate::units::{Force, Length, Ratio};
use serde::{Deserialize, Serialize};

/// No hole counts as met with a chance of solid wood under this.
pub const LEAST_CHANCE: f64 = 0.9;

/// What may be set for a job.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Settings {
    /// Print feet and inches from 12 in on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feet_inches: Option<bool>,
    /// How high above the floor a tape can be read by the one who holds its end down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub floor_reach: Option<Length>,
    /// How far apart one person's two hands hold a tape.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub arm_span: Option<Length>,
    /// How far a tape is read with its end pinned or hooked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pinned_reach: Option<Length>,
    /// How hard somebody may pull on what hangs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pull: Option<Force>,
    /// The chance of solid wood from which a fastener counts as met.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chance: Option<Ratio>,
    /// Up to which reserve beyond the need more fasteners are worth their holes: 100 % is twice the need.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reserve: Option<Ratio>,
}

impl Settings {
    /// Whether feet and inches are printed. Off unless set: a tape is read in inches.
    #[must_use]
    pub fn feet_inches(&self) -> bool {
        self.feet_inches.unwrap_or(false)
    }

    /// 2.0 m unless set: eye height of a tall person plus a little (chosen).
    #[must_use]
    pub fn floor_reach(&self) -> Length {
        self.floor_reach.unwrap_or(Length::millimetres(2000.0))
    }

    /// 60 in unless set: an arm span (chosen).
    #[must_use]
    pub fn arm_span(&self) -> Length {
        self.arm_span.unwrap_or(Length::millimetres(1524.0))
    }

    /// 12 ft unless set: a blade stands out no farther without sagging off the line (chosen).
    #[must_use]
    pub fn pinned_reach(&self) -> Length {
        self.pinned_reach.unwrap_or(Length::millimetres(3657.6))
    }

    /// 220 N unless set: somebody catching hold of an edge (chosen).
    #[must_use]
    pub fn pull(&self) -> Force {
        self.pull.unwrap_or(Force::newtons(220.0))
    }

    /// 95 % unless set (chosen); never less than nine in ten, however low it is set (chosen: less is no probe).
    #[must_use]
    pub fn chance(&self) -> Ratio {
        let set = self.chance.unwrap_or(Ratio::bare(0.95));
        if set.value() >= LEAST_CHANCE { set } else { Ratio::bare(LEAST_CHANCE) }
    }

    /// 100 % unless set: up to twice the need (chosen: more buys nothing that can be told).
    #[must_use]
    pub fn reserve(&self) -> Ratio {
        self.reserve.unwrap_or(Ratio::bare(MOST_RESERVE))
    }
}
