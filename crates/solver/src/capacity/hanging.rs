//! What hangs on a plate, how its mount lets it move, and where its points then are.

use super::case::{Posture, PullAt};
use super::out_of_plane::Out;
use super::why::{Input, Known, MOST_MM, MOST_N, Why, within};
use crate::ledger::{Label, Ledger};
use crate::numeric::{cosine, sine};
use crate::units::Angle;

/// What hangs, as it hangs, on the axes of the seats; in millimetres and kilograms.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanging {
    /// The left edge of its outline.
    pub left_mm: f64,
    /// The right edge.
    pub right_mm: f64,
    /// The lower edge.
    pub bottom_mm: f64,
    /// The upper edge.
    pub top_mm: f64,
    /// From its back to its front.
    pub depth_mm: f64,
    /// From the wall to its back; on an arm the arm's reach stands in.
    pub stand_off_mm: f64,
    /// Every mass that bears on the plate: the piece, the mount, what else hangs on it.
    pub masses: Vec<HungMass>,
    /// How its mount lets it move.
    pub manner: Manner,
    /// How hard somebody may pull, newtons.
    pub pull_n: f64,
    /// The weakest label of its sizes, masses and places; the pull is a setting, chosen.
    pub label: Label,
}

/// A mass that moves with what hangs. The piece itself comes first: its centre goes round on an arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HungMass {
    /// How much, kilograms.
    pub kg: f64,
    /// Its centre, right of the outline's middle.
    pub right_mm: f64,
    /// Its centre's height, on the axis of the seats.
    pub y_mm: f64,
    /// Its centre in front of the piece's back; behind it negative.
    pub from_back_mm: f64,
}

/// How a mount lets a piece move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Manner {
    /// Not at all.
    Fixed,
    /// It tilts about a level line at its back.
    Tilting {
        /// Top forward, degrees.
        down_deg: f64,
        /// Top back, degrees.
        up_deg: f64,
        /// How high the line is.
        pivot_y_mm: f64,
    },
    /// It swings on an arm.
    Arm {
        /// Where the arm's hinge at the wall is.
        hinge_x_mm: f64,
        /// From the wall to the piece's back, straight out.
        reach_mm: f64,
        /// How far it swings to either side, degrees; counted to 90. `None` where nobody knows: 90.
        hinge_deg: Option<f64>,
        /// How far its head turns to either side, degrees; counted to 90. `None` where nobody knows: 90.
        head_deg: Option<f64>,
        /// How far its head tilts, the larger of up and down, degrees.
        tilt_deg: f64,
        /// From the line that it tilts about to the farther of its upper and lower edge.
        to_edge_mm: f64,
        /// How far it comes down, where it is a pull-down: it is pulled at so much lower.
        lowers_mm: f64,
    },
}

/// A place in front of the wall: to the right, up, and out of it.
#[derive(Clone, Copy)]
pub(super) struct Spot {
    pub(super) x_mm: f64,
    pub(super) y_mm: f64,
    pub(super) z_mm: f64,
}

impl Hanging {
    /// From the wall to the back of what hangs on an arm, straight out, as it is counted: tilted, an edge comes so much
    /// farther out, counted at every place of it on the safe side (chosen). 0 where nothing swings.
    pub(super) fn counted_reach_mm(&self) -> f64 {
        match self.manner {
            Manner::Arm { reach_mm, tilt_deg, to_edge_mm, .. } if tilt_deg > 0.0 => {
                reach_mm + to_edge_mm * sine(Angle::degrees(tilt_deg))
            }
            Manner::Arm { reach_mm, .. } => reach_mm,
            Manner::Fixed | Manner::Tilting { .. } => 0.0,
        }
    }

    /// How far down it comes.
    pub(super) fn lowers_mm(&self) -> f64 {
        if let Manner::Arm { lowers_mm, .. } = self.manner { lowers_mm } else { 0.0 }
    }

    /// How it may stand where it does not swing.
    pub(super) fn tilts(&self) -> Vec<Posture> {
        let mut tilts = vec![Posture::AsHung];
        if let Manner::Tilting { down_deg, up_deg, .. } = self.manner {
            if down_deg > 0.0 {
                tilts.push(Posture::TiltedDown);
            }
            if up_deg > 0.0 {
                tilts.push(Posture::TiltedUp);
            }
        }
        tilts
    }

    /// How far its top is forward.
    pub(super) fn forward_deg(&self, posture: Posture) -> f64 {
        match (posture, self.manner) {
            (Posture::TiltedDown, Manner::Tilting { down_deg, .. }) => down_deg,
            (Posture::TiltedUp, Manner::Tilting { up_deg, .. }) => -up_deg,
            _ => 0.0,
        }
    }

    /// Where a point of it is: right of its middle, at a height as it hangs, in front of its back.
    pub(super) fn spot(&self, posture: Posture, right_mm: f64, y_mm: f64, from_back_mm: f64) -> Spot {
        let middle_mm = (self.left_mm + self.right_mm) / 2.0;
        match (posture, self.manner) {
            (Posture::Swung { arm_deg, face_deg }, Manner::Arm { hinge_x_mm, .. }) => {
                // The piece's centre of mass goes round at reach plus its own depth; the rest about it.
                let centre_mm = self.centre_from_back_mm();
                let radius = self.counted_reach_mm() + centre_mm;
                let (arm, face) = (Angle::degrees(arm_deg), Angle::degrees(face_deg));
                let ahead = from_back_mm - centre_mm;
                Spot {
                    x_mm: hinge_x_mm + radius * sine(arm) + right_mm * cosine(face) + ahead * sine(face),
                    y_mm,
                    z_mm: radius * cosine(arm) - right_mm * sine(face) + ahead * cosine(face),
                }
            }
            (_, Manner::Tilting { pivot_y_mm, .. }) => {
                let forward = Angle::degrees(self.forward_deg(posture));
                let above = y_mm - pivot_y_mm;
                Spot {
                    x_mm: middle_mm + right_mm,
                    y_mm: pivot_y_mm + above * cosine(forward) - from_back_mm * sine(forward),
                    z_mm: self.stand_off_mm + from_back_mm * cosine(forward) + above * sine(forward),
                }
            }
            _ => Spot { x_mm: middle_mm + right_mm, y_mm, z_mm: self.stand_off_mm + from_back_mm },
        }
    }

    /// How far in front of its back the piece's own centre of mass is.
    pub(super) fn centre_from_back_mm(&self) -> f64 {
        self.masses.first().map_or(self.depth_mm / 2.0, |piece| piece.from_back_mm)
    }

    /// Whether a turn of its face moves anything that weighs.
    pub(super) fn turns_unevenly(&self) -> bool {
        let centre_mm = self.centre_from_back_mm();
        self.masses.iter().any(|mass| mass.right_mm != 0.0 || mass.from_back_mm != centre_mm)
    }

    /// A pull straight out at the middle of an edge, by its front or its back, whichever levers more.
    pub(super) fn pulled_out<L: Ledger>(&self, ledger: &mut L, posture: Posture, at: PullAt) -> Out {
        let half = (self.right_mm - self.left_mm) / 2.0;
        let middle_y = (self.bottom_mm + self.top_mm) / 2.0;
        let (right, y) = match at {
            PullAt::OutLeft => (-half, middle_y),
            PullAt::OutRight => (half, middle_y),
            PullAt::OutTop => (0.0, self.top_mm),
            PullAt::OutBottom => (0.0, self.bottom_mm - self.lowers_mm()),
            _ => (0.0, middle_y),
        };
        let [back, front] =
            [0.0, self.depth_mm].map(|from_back| self.spot(posture, right, y, from_back).y_mm);
        let x_mm = match (posture, self.manner, at) {
            // The piece turns about the arm's outer hinge: a pull at a side acts there, whichever edge is held.
            (
                Posture::Swung { arm_deg, .. },
                Manner::Arm { hinge_x_mm, .. },
                PullAt::OutLeft | PullAt::OutRight | PullAt::OutHinge,
            ) => hinge_x_mm + self.counted_reach_mm() * sine(Angle::degrees(arm_deg)),
            // At the top and bottom it is taken at the piece's middle, which is farther out (chosen).
            _ => self.spot(posture, right, y, self.centre_from_back_mm()).x_mm,
        };
        let out = Out { n: self.pull_n, x_mm, high_y_mm: back.max(front), low_y_mm: back.min(front) };
        self.write_out(ledger, posture, (right, y, at), (back, front), &out);
        out
    }

    /// Refuses what is not on a wall.
    pub(super) fn sound(&self) -> Known<()> {
        let place = |mm: f64| within(mm, MOST_MM, Input::Place);
        let size = |mm: f64| if mm >= 0.0 { place(mm) } else { Err(Why::NoValue(Input::Place)) };
        let angle =
            |deg: f64| if (0.0..=360.0).contains(&deg) { Ok(deg) } else { Err(Why::NoValue(Input::Angle)) };
        for mm in [self.left_mm, self.right_mm, self.bottom_mm, self.top_mm] {
            place(mm)?;
        }
        size(self.right_mm - self.left_mm)?;
        size(self.top_mm - self.bottom_mm)?;
        size(self.depth_mm)?;
        size(self.stand_off_mm)?;
        for mass in &self.masses {
            if !(mass.kg >= 0.0 && mass.kg <= MOST_N / 1000.0) {
                return Err(Why::NoValue(Input::Mass));
            }
            for mm in [mass.right_mm, mass.y_mm, mass.from_back_mm] {
                place(mm)?;
            }
        }
        if self.masses.is_empty() {
            return Err(Why::NoValue(Input::Mass));
        }
        if !(self.pull_n >= 0.0 && self.pull_n <= MOST_N) {
            return Err(Why::NoValue(Input::Load));
        }
        match self.manner {
            Manner::Fixed => Ok(()),
            Manner::Tilting { down_deg, up_deg, pivot_y_mm } => {
                place(pivot_y_mm)?;
                for deg in [down_deg, up_deg] {
                    if angle(deg)? > 90.0 {
                        return Err(Why::NoValue(Input::Angle));
                    }
                }
                Ok(())
            }
            Manner::Arm { hinge_x_mm, reach_mm, hinge_deg, head_deg, tilt_deg, to_edge_mm, lowers_mm } => {
                place(hinge_x_mm)?;
                size(reach_mm)?;
                size(to_edge_mm)?;
                size(lowers_mm)?;
                if angle(tilt_deg)? > 90.0 {
                    return Err(Why::NoValue(Input::Angle));
                }
                for deg in [hinge_deg, head_deg].into_iter().flatten() {
                    angle(deg)?;
                }
                Ok(())
            }
        }
    }
}
