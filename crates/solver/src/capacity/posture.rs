//! The cases of load that something on a wall makes: hanging, and handled, at the worst places its mount allows.

use super::case::{Case, CaseName, Posture, PullAt};
use super::duration::Lasting;
use super::out_of_plane::Out;
use super::why::{Input, Known, MOST_MM, MOST_N, Why, within};
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};
use crate::numeric::{cosine, sine};
use crate::units::Angle;

/// Standard gravity, m/s^2 (CGPM 1901; NIST SP 330).
pub const GRAVITY: f64 = 9.806_65;

/// Between two swings that are tried, degrees: the worst is often between the ends (chosen).
const SWING_STEP_DEG: f64 = 15.0;

/// How far an arm or head turns where nobody knows: nothing is worse (chosen).
const TURNS_NOT_GIVEN_DEG: f64 = 90.0;

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
    },
}

/// A place in front of the wall: to the right, up, and out of it.
#[derive(Clone, Copy)]
struct Spot {
    x_mm: f64,
    y_mm: f64,
    z_mm: f64,
}

const DOWN: [PullAt; 3] = [PullAt::DownMiddle, PullAt::DownLeft, PullAt::DownRight];

/// Every case, as it hangs first.
///
/// # Errors
/// Not known where a value is not finite, negative where it cannot be, or beyond anything on a wall.
pub fn cases(hanging: &Hanging) -> Known<Vec<Case>> {
    names(hanging)?.into_iter().map(|name| case(&mut crate::ledger::Blank, hanging, name)).collect()
}

/// What the cases are called, in the order of [`cases`].
///
/// # Errors
/// As [`cases`].
pub fn names(hanging: &Hanging) -> Known<Vec<CaseName>> {
    hanging.sound()?;
    let mut names = Vec::new();
    let mut pulled = |posture: Posture, pulls: &[PullAt]| {
        names.extend(pulls.iter().map(|pull| CaseName { posture, pull: Some(*pull) }));
    };
    let out = [PullAt::OutTop, PullAt::OutBottom, PullAt::OutLeft, PullAt::OutRight];
    let mut hung = Vec::new();
    match hanging.manner {
        Manner::Fixed | Manner::Tilting { .. } => {
            for posture in hanging.tilts() {
                hung.push(posture);
                pulled(posture, &DOWN);
                pulled(posture, &out);
            }
        }
        Manner::Arm { hinge_deg, head_deg, .. } => {
            let head = head_deg.unwrap_or(TURNS_NOT_GIVEN_DEG).min(90.0);
            for arm_deg in swings(hinge_deg) {
                let facing = Posture::Swung { arm_deg, face_deg: 0.0 };
                hung.push(facing);
                pulled(facing, &[PullAt::OutTop, PullAt::OutBottom, PullAt::OutHinge]);
                for face_deg in faces(arm_deg, head) {
                    pulled(Posture::Swung { arm_deg, face_deg }, &DOWN);
                }
            }
        }
    }
    let mut all: Vec<CaseName> = hung.into_iter().map(|posture| CaseName { posture, pull: None }).collect();
    all.append(&mut names);
    Ok(all)
}

/// The swings that are tried: straight out, then to both sides in steps, to the end.
fn swings(hinge_deg: Option<f64>) -> Vec<f64> {
    let most = hinge_deg.unwrap_or(TURNS_NOT_GIVEN_DEG).min(90.0);
    let mut swings = vec![0.0];
    let mut deg = SWING_STEP_DEG;
    while deg < most {
        swings.extend([deg, -deg]);
        deg += SWING_STEP_DEG;
    }
    if most > 0.0 {
        swings.extend([most, -most]);
    }
    swings
}

/// The faces that are tried on a swung arm: to the room, and turned as far as the head goes. Makers tell that from
/// the room or from the arm: both are tried, to both sides (unknown counts as the worse).
fn faces(arm_deg: f64, head: f64) -> Vec<f64> {
    let mut faces = vec![0.0];
    for turned in [head, (arm_deg.abs() + head).min(90.0)] {
        if turned > 0.0 && !faces.contains(&turned) {
            faces.extend([turned, -turned]);
        }
    }
    faces
}

/// One case of what hangs.
///
/// # Errors
/// As [`cases`].
pub fn case<L: Ledger>(ledger: &mut L, hanging: &Hanging, name: CaseName) -> Known<Case> {
    hanging.sound()?;
    let mut case = Case {
        name,
        lasting: if name.pull.is_some() { Lasting::TenMinutes } else { Lasting::Permanent },
        down_n: 0.0,
        down_x_nmm: 0.0,
        down_z_nmm: 0.0,
        out: None,
    };
    for mass in &hanging.masses {
        let spot = hanging.spot(name.posture, mass.right_mm, mass.y_mm, mass.from_back_mm);
        add(ledger, &mut case, "weight", mass.kg * GRAVITY, spot);
    }
    match name.pull {
        None => {}
        Some(at @ (PullAt::DownMiddle | PullAt::DownLeft | PullAt::DownRight)) => {
            let half = (hanging.right_mm - hanging.left_mm) / 2.0;
            let right = match at {
                PullAt::DownLeft => -half,
                PullAt::DownRight => half,
                _ => 0.0,
            };
            let spot = hanging.spot(name.posture, right, hanging.bottom_mm, hanging.depth_mm);
            add(ledger, &mut case, "pull down", hanging.pull_n, spot);
        }
        Some(at) => {
            let out = hanging.pulled_out(name.posture, at);
            ledger.write(|| Step {
                name: "pull straight out",
                formula: "F at (x, y)",
                put: vec![millimetres("x", out.x_mm), millimetres("y", out.y_mm)],
                result: Amount::new(out.n, Shown::Newton),
                source: "a setting, how hard somebody may pull (chosen)",
                label: Label::Chosen,
            });
            case.out = Some(out);
        }
    }
    Ok(case)
}

/// Adds what bears down at a place.
fn add<L: Ledger>(ledger: &mut L, case: &mut Case, name: &'static str, n: f64, spot: Spot) {
    // What would lie inside the wall lies at it.
    let z_mm = spot.z_mm.max(0.0);
    case.down_n += n;
    case.down_x_nmm += n * spot.x_mm;
    case.down_z_nmm += n * z_mm;
    ledger.write(|| Step {
        name,
        formula: "F z, in front of the wall",
        put: vec![
            Put::new("F", Amount::new(n, Shown::Newton), Label::Derived),
            millimetres("x", spot.x_mm),
            millimetres("z", z_mm),
        ],
        result: Amount::turning(n * z_mm),
        source: "statics; standard gravity 9.80665 m/s^2",
        label: Label::Derived,
    });
}

fn millimetres(symbol: &'static str, value: f64) -> Put {
    Put::new(symbol, Amount::new(value, Shown::Millimetre), Label::Derived)
}

impl Hanging {
    /// How it may stand where it does not swing.
    fn tilts(&self) -> Vec<Posture> {
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
    fn forward_deg(&self, posture: Posture) -> f64 {
        match (posture, self.manner) {
            (Posture::TiltedDown, Manner::Tilting { down_deg, .. }) => down_deg,
            (Posture::TiltedUp, Manner::Tilting { up_deg, .. }) => -up_deg,
            _ => 0.0,
        }
    }

    /// Where a point of it is: right of its middle, at a height as it hangs, in front of its back.
    fn spot(&self, posture: Posture, right_mm: f64, y_mm: f64, from_back_mm: f64) -> Spot {
        let middle_mm = (self.left_mm + self.right_mm) / 2.0;
        match (posture, self.manner) {
            (Posture::Swung { arm_deg, face_deg }, Manner::Arm { hinge_x_mm, reach_mm, .. }) => {
                // The piece's centre of mass goes round at reach plus its own depth; the rest about it.
                let centre_mm = self.masses.first().map_or(self.depth_mm / 2.0, |piece| piece.from_back_mm);
                let radius = reach_mm + centre_mm;
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

    /// A pull straight out, at its place.
    fn pulled_out(&self, posture: Posture, at: PullAt) -> Out {
        let half = (self.right_mm - self.left_mm) / 2.0;
        let middle_y = (self.bottom_mm + self.top_mm) / 2.0;
        let right = match at {
            PullAt::OutLeft => -half,
            PullAt::OutRight => half,
            _ => 0.0,
        };
        let heights = |y: f64| [0.0, self.depth_mm].map(|back| self.spot(posture, right, y, back).y_mm);
        // Of the back's edge and the front's the one that levers more.
        let y_mm = match at {
            PullAt::OutTop => heights(self.top_mm).into_iter().fold(f64::NEG_INFINITY, f64::max),
            PullAt::OutBottom => heights(self.bottom_mm).into_iter().fold(f64::INFINITY, f64::min),
            _ => middle_y,
        };
        let x_mm = match (posture, self.manner) {
            // The piece turns about the arm's outer hinge: a pull acts there, whichever edge is held.
            (Posture::Swung { arm_deg, .. }, Manner::Arm { hinge_x_mm, reach_mm, .. }) => {
                hinge_x_mm + reach_mm * sine(Angle::degrees(arm_deg))
            }
            _ => (self.left_mm + self.right_mm) / 2.0 + right,
        };
        Out { n: self.pull_n, x_mm, y_mm }
    }

    /// Refuses what is not on a wall.
    fn sound(&self) -> Known<()> {
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
            Manner::Arm { hinge_x_mm, reach_mm, hinge_deg, head_deg } => {
                place(hinge_x_mm)?;
                size(reach_mm)?;
                for deg in [hinge_deg, head_deg].into_iter().flatten() {
                    angle(deg)?;
                }
                Ok(())
            }
        }
    }
}
