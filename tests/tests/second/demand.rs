//! What hangs, and what a hand adds: every case a mount's way of moving allows.

use super::out_of_plane::Load;

/// Standard gravity.
const G_M_S2: f64 = 9.80665;

/// The thing hung, seen face-on; its centre of mass is the middle of its outline at mid-depth.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(crate) mass_kg: f64,
    pub(crate) centre_mm: [f64; 2],
    pub(crate) width_mm: f64,
    pub(crate) height_mm: f64,
    pub(crate) depth_mm: f64,
}

#[derive(Clone, Copy, Debug)]
pub(crate) enum Mount {
    Flush {
        stand_off_mm: f64,
    },
    Tilt {
        stand_off_mm: f64,
        full_deg: f64,
    },
    /// The inner hinge stands at the piece's middle when the arm is straight out.
    Arm {
        reach_mm: f64,
        swing_deg: f64,
        head_deg: Option<f64>,
    },
}

/// One case: a name, whether it only hangs (C_D 0.9) or is handled (C_D 1.6), and its loads.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    pub(crate) name: String,
    pub(crate) handled: bool,
    pub(crate) loads: Vec<Load>,
}

/// How the piece stands: where its middle is, how it is turned, and where an arm's outer hinge is.
struct Stance {
    name: String,
    middle_mm: [f64; 3],
    tilt_deg: f64,
    turn_deg: f64,
    hinge_mm: Option<[f64; 3]>,
}

impl Stance {
    /// A place on the piece, given from its middle. What would lie inside the wall lies at it.
    fn place(&self, off: [f64; 3]) -> [f64; 3] {
        let (ts, tc) = self.tilt_deg.to_radians().sin_cos();
        let (y, z) = (off[1] * tc - off[2] * ts, off[1] * ts + off[2] * tc);
        let (ys, yc) = self.turn_deg.to_radians().sin_cos();
        let (x, z) = (off[0] * yc + z * ys, z * yc - off[0] * ys);
        let [mx, my, mz] = self.middle_mm;
        [mx + x, my + y, (mz + z).max(0.0)]
    }
}

fn stances(piece: &Piece, mount: &Mount) -> Vec<Stance> {
    let [cx, cy] = piece.centre_mm;
    let half = piece.depth_mm / 2.0;
    let still = |name: &str, z: f64| Stance {
        name: name.to_owned(),
        middle_mm: [cx, cy, z],
        tilt_deg: 0.0,
        turn_deg: 0.0,
        hinge_mm: None,
    };
    match *mount {
        Mount::Flush { stand_off_mm } => vec![still("flush", stand_off_mm + half)],
        Mount::Tilt { stand_off_mm, full_deg } => {
            // It turns about the middle of its back.
            let (sin, cos) = full_deg.to_radians().sin_cos();
            let mut tilted = still("tilted", 0.0);
            tilted.middle_mm = [cx, cy - half * sin, stand_off_mm + half * cos];
            tilted.tilt_deg = full_deg;
            vec![still("upright", stand_off_mm + half), tilted]
        }
        Mount::Arm { reach_mm, swing_deg, head_deg } => {
            let head = head_deg.unwrap_or(90.0);
            let mut all = Vec::new();
            for swing in swings(swing_deg) {
                let (sin, cos) = swing.to_radians().sin_cos();
                let radius = reach_mm + half;
                for turn_deg in [0.0, head, -head] {
                    all.push(Stance {
                        name: format!("swung {swing}, turned {turn_deg}"),
                        middle_mm: [cx + radius * sin, cy, (radius * cos).max(0.0)],
                        tilt_deg: 0.0,
                        turn_deg,
                        hinge_mm: Some([cx + reach_mm * sin, cy, (reach_mm * cos).max(0.0)]),
                    });
                }
            }
            all
        }
    }
}

/// Straight out, then to each side in steps of 15 degrees, and as far as the hinge goes.
fn swings(swing_deg: f64) -> Vec<f64> {
    let mut all = vec![0.0];
    let mut at = 15.0;
    while at < swing_deg {
        all.extend([at, -at]);
        at += 15.0;
    }
    if swing_deg > 0.0 {
        all.extend([swing_deg, -swing_deg]);
    }
    all
}

/// Every case: what hangs by itself, then with a pull down at the lower front edge (its middle and both ends)
/// and straight out at the top, the bottom and each side.
pub(crate) fn cases(piece: &Piece, mount_kg: f64, mount: &Mount, pull_n: f64) -> Vec<Case> {
    let (w, h, d) = (piece.width_mm / 2.0, piece.height_mm / 2.0, piece.depth_mm / 2.0);
    let mut all = Vec::new();
    for stance in stances(piece, mount) {
        // The mount hangs where the piece does, which is never nearer the wall than it is itself.
        let weight = (piece.mass_kg + mount_kg) * G_M_S2;
        let hanging = Load { at_mm: stance.place([0.0; 3]), force_n: [0.0, -weight, 0.0] };
        all.push(Case { name: stance.name.clone(), handled: false, loads: vec![hanging] });
        let side = |x: f64| stance.hinge_mm.unwrap_or_else(|| stance.place([x, 0.0, d]));
        let down = [0.0, -pull_n, 0.0];
        let out = [0.0, 0.0, pull_n];
        for (what, at_mm, force_n) in [
            ("down at the middle", stance.place([0.0, -h, d]), down),
            ("down at the left end", stance.place([-w, -h, d]), down),
            ("down at the right end", stance.place([w, -h, d]), down),
            ("out at the top", stance.place([0.0, h, d]), out),
            ("out at the bottom", stance.place([0.0, -h, d]), out),
            ("out at the left", side(-w), out),
            ("out at the right", side(w), out),
        ] {
            let name = format!("{}, pulled {what}", stance.name);
            all.push(Case { name, handled: true, loads: vec![hanging, Load { at_mm, force_n }] });
        }
    }
    all
}
