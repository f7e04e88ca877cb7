//! One case of load on a plate, reduced to what a group of fasteners needs to know of it.

use super::duration::Lasting;
use super::in_plane::PlaneLoad;
use super::out_of_plane::Out;
use crate::ledger::Label;

/// How what hangs stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Posture {
    /// As it hangs: close to the wall, or upright.
    AsHung,
    /// At full tilt, top forward.
    TiltedDown,
    /// At full tilt, top back.
    TiltedUp,
    /// On its arm: degrees from straight out, to the right positive, and degrees that its face is turned from
    /// facing the room, to the right positive.
    Swung {
        /// The arm.
        arm_deg: f64,
        /// The face.
        face_deg: f64,
    },
}

/// Where somebody pulls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PullAt {
    /// Down at the middle of the lower front edge.
    DownMiddle,
    /// Down at its left end.
    DownLeft,
    /// Down at its right end.
    DownRight,
    /// Straight out at the top.
    OutTop,
    /// Straight out at the bottom.
    OutBottom,
    /// Straight out at the left edge.
    OutLeft,
    /// Straight out at the right edge.
    OutRight,
    /// Straight out at an arm's outer hinge, by a side edge.
    OutHinge,
}

/// What a case is called.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CaseName {
    /// How what hangs stands.
    pub posture: Posture,
    /// Where somebody pulls; `None` where it just hangs.
    pub pull: Option<PullAt>,
}

/// How what hangs stands, whatever the angle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stance {
    /// As it hangs.
    AsHung,
    /// At full tilt, top forward.
    TiltedDown,
    /// At full tilt, top back.
    TiltedUp,
    /// On its arm, straight out and facing the room.
    StraightOut,
    /// On its arm, swung or its face turned to a side.
    Aside,
}

/// Whether somebody pulls, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pulled {
    /// It just hangs.
    Not,
    /// At the middle: down, or out at the top, the bottom or the arm's outer hinge.
    Middle,
    /// At an end or a side.
    Side,
}

/// What kind of case it is: cases of one kind differ in angle and side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct CaseKind {
    /// How what hangs stands.
    pub stance: Stance,
    /// Whether somebody pulls, and where.
    pub pulled: Pulled,
}

impl CaseName {
    /// What kind of case it is.
    #[must_use]
    pub fn kind(&self) -> CaseKind {
        let stance = match self.posture {
            Posture::AsHung => Stance::AsHung,
            Posture::TiltedDown => Stance::TiltedDown,
            Posture::TiltedUp => Stance::TiltedUp,
            Posture::Swung { arm_deg: 0.0, face_deg: 0.0 } => Stance::StraightOut,
            Posture::Swung { .. } => Stance::Aside,
        };
        let pulled = match self.pull {
            None => Pulled::Not,
            Some(PullAt::DownMiddle | PullAt::OutTop | PullAt::OutBottom | PullAt::OutHinge) => {
                Pulled::Middle
            }
            Some(PullAt::DownLeft | PullAt::DownRight | PullAt::OutLeft | PullAt::OutRight) => Pulled::Side,
        };
        CaseKind { stance, pulled }
    }
}

/// One case of load. Forces in newtons, places in millimetres on the axes of the seats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// What it is called.
    pub name: CaseName,
    /// How long it lasts.
    pub lasting: Lasting,
    /// All that bears down.
    pub down_n: f64,
    /// The sum of each such force times how far right it acts.
    pub down_x_nmm: f64,
    /// The sum of each such force times how far in front of the wall it acts; never negative.
    pub down_z_nmm: f64,
    /// A pull straight out.
    pub out: Option<Out>,
    /// The weakest of what it is worked out from.
    pub label: Label,
}

impl Case {
    /// Its part in the plane of the plate.
    #[must_use]
    pub fn in_plane(&self) -> PlaneLoad {
        PlaneLoad { right_n: 0.0, up_n: -self.down_n, turning_nmm: -self.down_x_nmm, label: self.label }
    }
}
