//! What hangs, and what a hand adds: every case a mount's way of moving allows.

use super::out_of_plane::Load;

/// Standard gravity.
const G_M_S2: f64 = 9.80665;

/// The outline of the thing hung, seen face-on as it hangs.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(crate) centre_mm: [f64; 2],
    pub(crate) width_mm: f64,
    pub(crate) height_mm: f64,
    pub(crate) depth_mm: f64,
}

/// A mass that moves with it: the piece first, its mount, what else hangs on it. Its centre is given from the
/// middle of the piece's back: right, up, out.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Mass {
    pub(crate) kg: f64,
    pub(crate) from_back_mm: [f64; 3],
}

#[derive(Clone, Copy, Debug)]
pub(crate) enum Mount {
    Flush {
        stand_off_mm: f64,
    },
    /// It turns about a level line at the piece's back: top forward, and top back.
    Tilt {
        stand_off_mm: f64,
        axis_y_mm: f64,
        forward_deg: f64,
        back_deg: f64,
    },
    Arm {
        hinge_x_mm: f64,
        reach_mm: f64,
        swing_deg: Option<f64>,
        head_deg: Option<f64>,
        /// How far the head tilts, the larger of both ways.
        tilt_deg: f64,
        /// From the line that it tilts about to the farther edge.
        to_edge_mm: f64,
        /// How far a pull-down comes down.
        lowers_mm: f64,
    },
}

/// One case: whether it only hangs (C_D 0.9) or is handled (C_D 1.6), and its loads, the weights first.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    pub(crate) handled: bool,
    pub(crate) loads: Vec<Load>,
}

/// How the piece stands.
enum Stance {
    Leaning { axis_mm: [f64; 2], forward_deg: f64 },
    Swung { hinge_x_mm: f64, reach_mm: f64, swing_deg: f64, turn_deg: f64 },
}

/// What a piece and its masses are, beside how they stand.
struct Hung<'a> {
    piece: &'a Piece,
    masses: &'a [Mass],
}

impl Hung<'_> {
    /// Where a point of the piece is, given from the middle of its back. What would lie inside the wall lies at it.
    fn place(&self, stance: &Stance, off_mm: [f64; 3]) -> [f64; 3] {
        let [right, up, out] = off_mm;
        let [cx, cy] = self.piece.centre_mm;
        let [x, y, z] = match stance {
            Stance::Leaning { axis_mm: [axis_y, stand_off], forward_deg } => {
                let (sin, cos) = forward_deg.to_radians().sin_cos();
                let above = cy + up - axis_y;
                [cx + right, axis_y + above * cos - out * sin, stand_off + out * cos + above * sin]
            }
            Stance::Swung { turn_deg, .. } => {
                // The piece's centre of mass goes round on the arm; the rest stands about it.
                let [x, z] = self.on_radius_mm(stance);
                let (sin, cos) = turn_deg.to_radians().sin_cos();
                let ahead = out - self.masses[0].from_back_mm[2];
                [x + right * cos + ahead * sin, cy + up, z + ahead * cos - right * sin]
            }
        };
        [x, y, z.max(0.0)]
    }

    /// Where a swung piece's middle is, as deep in it as its centre of mass.
    fn on_radius_mm(&self, stance: &Stance) -> [f64; 2] {
        let Stance::Swung { hinge_x_mm, reach_mm, swing_deg, .. } = stance else {
            return [self.piece.centre_mm[0], 0.0];
        };
        let (sin, cos) = swing_deg.to_radians().sin_cos();
        let radius = reach_mm + self.masses[0].from_back_mm[2];
        [hinge_x_mm + radius * sin, radius * cos]
    }

    /// Where an edge is pulled straight out, by its back and by its front. On an arm the sides are pulled at the
    /// outer hinge, top and bottom at the piece's middle (the rule can be read as the hinge for them too; this is
    /// farther out).
    fn pulled_out(&self, stance: &Stance, right: f64, up: f64) -> [[f64; 3]; 2] {
        let x = match stance {
            Stance::Swung { hinge_x_mm, reach_mm, swing_deg, .. } if right != 0.0 => {
                hinge_x_mm + reach_mm * swing_deg.to_radians().sin()
            }
            _ => self.on_radius_mm(stance)[0] + right,
        };
        [0.0, self.piece.depth_mm].map(|out| [x, self.place(stance, [right, up, out])[1], 0.0])
    }
}

/// Where a mount lets the piece stand.
fn stances(mount: &Mount) -> Vec<Stance> {
    let leaning = |axis_mm, forward_deg| Stance::Leaning { axis_mm, forward_deg };
    match *mount {
        Mount::Flush { stand_off_mm } => vec![leaning([0.0, stand_off_mm], 0.0)],
        Mount::Tilt { stand_off_mm, axis_y_mm, forward_deg, back_deg } => {
            [0.0, forward_deg, -back_deg].map(|deg| leaning([axis_y_mm, stand_off_mm], deg)).into()
        }
        Mount::Arm { hinge_x_mm, reach_mm, swing_deg, head_deg, tilt_deg, to_edge_mm, .. } => {
            // Beyond the text, the product's own choice: leaning by its tilt, all of it is as much farther out as its
            // farther edge is.
            let reach_mm = reach_mm + tilt_deg.to_radians().sin() * to_edge_mm;
            // What is not given is a quarter round, and no more is counted: a wall stops it there.
            let most = swing_deg.unwrap_or(90.0).min(90.0);
            let head = head_deg.unwrap_or(90.0).min(90.0);
            let mut all = Vec::new();
            for swing_deg in swings(most) {
                // How far a head goes may be told from the room or from the arm; both are taken, both ways.
                let from_arm = (swing_deg.abs() + head).min(90.0);
                for turn_deg in [0.0, head, -head, from_arm, -from_arm] {
                    all.push(Stance::Swung { hinge_x_mm, reach_mm, swing_deg, turn_deg });
                }
            }
            all
        }
    }
}

/// Straight out, then to each side in steps of 15 degrees, and as far as the hinge goes.
fn swings(most_deg: f64) -> Vec<f64> {
    let mut all = vec![0.0];
    let mut at = 15.0;
    while at < most_deg {
        all.extend([at, -at]);
        at += 15.0;
    }
    if most_deg > 0.0 {
        all.extend([most_deg, -most_deg]);
    }
    all
}

/// Every case: what hangs by itself, then with a pull down at the lower front edge (its middle and both ends)
/// and straight out at the top, the bottom and each side.
pub(crate) fn cases(piece: &Piece, masses: &[Mass], mount: &Mount, pull_n: f64) -> Vec<Case> {
    let (w, h, d) = (piece.width_mm / 2.0, piece.height_mm / 2.0, piece.depth_mm);
    let hung = Hung { piece, masses };
    let mut all = Vec::new();
    // Come down, its lower edge is pulled at so much lower.
    let down_mm = if let Mount::Arm { lowers_mm, .. } = mount { *lowers_mm } else { 0.0 };
    for stance in stances(mount) {
        let weight = |mass: &Mass| Load {
            at_mm: hung.place(&stance, mass.from_back_mm),
            force_n: [0.0, -mass.kg * G_M_S2, 0.0],
        };
        let weights: Vec<Load> = masses.iter().map(weight).collect();
        all.push(Case { handled: false, loads: weights.clone() });
        let mut pulled = |at_mm: [f64; 3], force_n: [f64; 3]| {
            let mut loads = weights.clone();
            loads.push(Load { at_mm, force_n });
            all.push(Case { handled: true, loads });
        };
        for right in [0.0, -w, w] {
            pulled(hung.place(&stance, [right, -h, d]), [0.0, -pull_n, 0.0]);
        }
        for (right, up) in [(0.0, h), (0.0, -h - down_mm), (-w, 0.0), (w, 0.0)] {
            for edge in hung.pulled_out(&stance, right, up) {
                pulled(edge, [0.0, 0.0, pull_n]);
            }
        }
    }
    all
}
