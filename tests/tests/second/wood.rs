//! What one lag or wood screw carries in the side grain of a stud: pull-out (NDS 2018, 12.2), shear by the
//! yield modes over a gap (TR12 Table 1-1, NDS 2018, 12.3), and both together (12.4.1).

use super::sizes::{Kind, Threaded};

/// Withdrawal per inch of thread, equations 12.2-1 and 12.2-2.
pub(crate) fn withdrawal_lbf_per_in(kind: Kind, gravity: f64, nominal_in: f64) -> f64 {
    match kind {
        Kind::Lag => 1800.0 * gravity * gravity.sqrt() * nominal_in.sqrt() * nominal_in.sqrt().sqrt(),
        Kind::WoodScrew => 2850.0 * gravity * gravity * nominal_in,
    }
}

fn to_50_psi(psi: f64) -> f64 {
    50.0 * (psi / 50.0).round()
}

/// Dowel bearing strength of the stud as its table prints it, between the two grain directions by Hankinson.
pub(crate) fn stud_bearing_psi(gravity: f64, nominal_in: f64, off_grain_deg: f64) -> f64 {
    if nominal_in < 0.25 {
        return to_50_psi(16_600.0 * gravity.powf(1.84));
    }
    let along = to_50_psi(11_200.0 * gravity);
    let across = to_50_psi(6_100.0 * gravity.powf(1.45) / nominal_in.sqrt());
    let (sin, cos) = off_grain_deg.to_radians().sin_cos();
    along * across / (along * sin * sin + across * cos * cos)
}

/// What modes I, II and III with IV are divided by, Table 12.3.1B.
pub(crate) fn reduction(f: &Threaded, off_grain_deg: f64) -> [f64; 3] {
    let k_angle = 1.0 + 0.25 * off_grain_deg / 90.0;
    let k_small = if f.root_in <= 0.17 { 2.2 } else { 10.0 * f.root_in + 0.5 };
    if f.nominal_in < 0.25 {
        [k_small; 3]
    } else if f.root_in < 0.25 {
        [k_small * k_angle; 3]
    } else {
        [4.0 * k_angle, 3.6 * k_angle, 3.2 * k_angle]
    }
}

/// What bears on the fastener, to either side of the gap.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Joint {
    pub(crate) stud_psi: f64,
    pub(crate) stud_in: f64,
    pub(crate) plate_psi: f64,
    pub(crate) plate_in: f64,
    pub(crate) gap_in: f64,
}

/// The six yield loads before any reduction: I in the stud, I in the plate, II, III in the stud, III in the
/// plate, IV.
pub(crate) fn yield_lbf(diameter_in: f64, bending_psi: f64, j: &Joint) -> [f64; 6] {
    let stud = j.stud_psi * diameter_in;
    let plate = j.plate_psi * diameter_in;
    let moment = bending_psi * diameter_in.powi(3) / 6.0;
    // The member that only presses gives its whole length; where the fastener bends, its moment instead.
    let whole = |q: f64, length: f64| (0.25 / q, length / 2.0, q * length * length / 4.0);
    let bent = |q: f64| (0.5 / q, 0.0, moment);
    let mode = |p: (f64, f64, f64), s: (f64, f64, f64)| {
        let (a, b, c) = (p.0 + s.0, p.1 + s.1 + j.gap_in, p.2 + s.2);
        2.0 * c / (b + (b * b + 4.0 * a * c).sqrt())
    };
    let (plate_whole, stud_whole) = (whole(plate, j.plate_in), whole(stud, j.stud_in));
    [
        stud * j.stud_in,
        plate * j.plate_in,
        mode(plate_whole, stud_whole),
        mode(bent(plate), stud_whole),
        mode(plate_whole, bent(stud)),
        mode(bent(plate), bent(stud)),
    ]
}

/// The least of the reduced yield loads: shear before load duration.
pub(crate) fn shear_lbf(
    f: &Threaded,
    gravity: f64,
    off_grain_deg: f64,
    plate_psi: f64,
    plate_in: f64,
    bearing_in: f64,
    gap_in: f64,
) -> f64 {
    let joint = Joint {
        stud_psi: stud_bearing_psi(gravity, f.nominal_in, off_grain_deg),
        stud_in: bearing_in,
        plate_psi,
        plate_in,
        gap_in,
    };
    let by = reduction(f, off_grain_deg);
    let modes = yield_lbf(f.root_in, f.bending_psi, &joint);
    let divided = [by[0], by[0], by[1], by[2], by[2], by[2]];
    modes.iter().zip(divided).map(|(z, d)| z / d).fold(f64::INFINITY, f64::min)
}

/// Use under shear and pull: the largest of shear alone, pull alone and equation 12.4-1.
pub(crate) fn use_in_wood(shear: f64, pull: f64, shear_capacity: f64, pull_capacity: f64) -> f64 {
    let load = shear.hypot(pull);
    if load == 0.0 {
        return 0.0;
    }
    let (sin, cos) = pull.atan2(shear).sin_cos();
    let together = pull_capacity * shear_capacity / (pull_capacity * cos * cos + shear_capacity * sin * sin);
    (shear / shear_capacity).max(pull / pull_capacity).max(load / together)
}

/// What the fastener's own steel may be pulled with: a third of its bending yield strength over its root.
/// The standard asks for the check and gives no value; this one is the product's choice, taken over from it.
pub(crate) fn own_steel_lbf(f: &Threaded) -> f64 {
    f.bending_psi / 3.0 * std::f64::consts::PI * f.root_in.powi(2) / 4.0
}

/// Shear capacity for a load with parts along and across the stud, from what it is along and across alone: the
/// better of all of it counted across, and both uses added. A choice of the product, taken over from it; the
/// equations at the angle itself carry no less, which is tested.
pub(crate) fn shear_between(along: f64, across: f64, load_along: f64, load_across: f64) -> f64 {
    let load = load_along.hypot(load_across);
    if load_across == 0.0 || load == 0.0 {
        return along;
    }
    across.max(load / (load_along.abs() / along + load_across.abs() / across))
}
