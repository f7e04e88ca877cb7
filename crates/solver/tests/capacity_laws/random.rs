//! Random fasteners, plates and what hangs on them.

use proptest::prelude::*;
use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::hold::{Hold, InWood, Linear};
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::ledger::{Given, Label};
use strikeline_solver::units::{Length, Ratio, Stress};

/// A plate with its fasteners and what hangs on it, its middle on that of the fasteners.
#[derive(Clone, Debug)]
pub(crate) struct Install {
    pub(crate) seats: Vec<Seat>,
    pub(crate) edges: Edges,
    pub(crate) hanging: Hanging,
}

impl Install {
    /// The same, standing farther out.
    pub(crate) fn reaching(&self, more: f64) -> Self {
        let mut far = self.clone();
        far.hanging.stand_off_mm *= more;
        if let Manner::Arm { reach_mm, .. } = &mut far.hanging.manner {
            *reach_mm *= more;
        }
        far
    }
}

fn inch(value: f64) -> Given<Length> {
    Given::measured(Length::inches(value))
}

pub(crate) fn stack(gap: f64) -> Stack {
    Stack {
        washer: inch(0.0),
        plate: inch(0.075),
        plate_bearing: Given::measured(Stress::psi(61_850.0)),
        gap: inch(gap),
        stud_depth: inch(9.0),
    }
}

pub(crate) fn soft_wood() -> impl Strategy<Value = Given<Ratio>> {
    (0.31..0.73).prop_map(|g| Given::measured(Ratio::bare(g)))
}

pub(crate) fn lag(d: f64, length: f64) -> (Screw, Screw) {
    (Screw::lag(inch(d), inch(length)).unwrap(), Screw::lag(inch(d), inch(length * 1.2)).unwrap())
}

/// A screw and one of its size that is longer.
pub(crate) fn lag_or_screw() -> impl Strategy<Value = (Screw, Screw)> {
    let lags = prop::sample::select(vec![0.25, 0.3125, 0.375, 0.5]);
    let screws = prop::sample::select(vec![0.138, 0.164, 0.19, 0.216, 0.242]);
    let long = |(d, length, more): (f64, f64, f64)| (d, length, length * more);
    prop_oneof![
        (lags, 1.0..6.0, 1.0..1.5).prop_map(long).prop_map(|(d, length, longer)| {
            (Screw::lag(inch(d), inch(length)).unwrap(), Screw::lag(inch(d), inch(longer)).unwrap())
        }),
        (screws, 1.0..4.0, 1.0..1.5).prop_map(long).prop_map(|(d, length, longer)| {
            (
                Screw::wood_screw(inch(d), inch(length)).unwrap(),
                Screw::wood_screw(inch(d), inch(longer)).unwrap(),
            )
        }),
    ]
}

pub(crate) fn some_hold() -> impl Strategy<Value = Hold> {
    let wood =
        (50.0..2000.0, 0.5..1.0, 50.0..4000.0, 500.0..5000.0).prop_map(|(along, share, pull, steel)| {
            let wood = InWood { along_n: along, across_n: along * share, withdrawal_n: pull, steel_n: steel };
            Hold::Wood { permanent: scaled(wood, 0.9 / 1.6), ten_minutes: wood, label: Label::Derived }
        });
    let linear = (50.0..2000.0, 50.0..2000.0)
        .prop_map(|(shear_n, pull_n)| Hold::Linear(Linear { shear_n, pull_n, label: Label::Read }));
    prop_oneof![3 => wood, 1 => linear]
}

/// A hold that is the same along and across.
pub(crate) fn alike_hold() -> impl Strategy<Value = Hold> {
    some_hold().prop_map(|hold| match hold {
        Hold::Wood { permanent, ten_minutes, label } => {
            let alike = |wood: InWood| InWood { across_n: wood.along_n, ..wood };
            Hold::Wood { permanent: alike(permanent), ten_minutes: alike(ten_minutes), label }
        }
        linear @ Hold::Linear(_) => linear,
    })
}

fn scaled(wood: InWood, by: f64) -> InWood {
    InWood {
        along_n: wood.along_n * by,
        across_n: wood.across_n * by,
        withdrawal_n: wood.withdrawal_n * by,
        steel_n: wood.steel_n,
    }
}

fn seats() -> impl Strategy<Value = Vec<Seat>> {
    let in_stud = prop::collection::vec((-8.0..8.0f64, -150.0..150.0f64), 1..4);
    (prop::collection::vec(in_stud, 1..4), any::<bool>()).prop_map(|(studs, across)| {
        let mut seats = Vec::new();
        for (stud, places) in studs.into_iter().enumerate() {
            let centre = 406.4 * f64::from(u32::try_from(stud).unwrap());
            for (x, y) in places {
                seats.push(Seat { x_mm: centre + x, y_mm: y, stud, along: true, across });
            }
        }
        seats
    })
}

fn manner(middle: f64) -> impl Strategy<Value = Manner> {
    let turn = || prop::option::of(0.0..120.0f64);
    prop_oneof![
        Just(Manner::Fixed),
        (0.0..25.0, 0.0..10.0, -200.0..200.0).prop_map(|(down_deg, up_deg, pivot_y_mm)| Manner::Tilting {
            down_deg,
            up_deg,
            pivot_y_mm
        }),
        (0.0..800.0, turn(), turn(), (0.0..20.0, 0.0..1000.0), 0.0..500.0).prop_map(
            move |(reach_mm, hinge_deg, head_deg, (tilt_deg, to_edge_mm), lowers_mm)| Manner::Arm {
                hinge_x_mm: middle,
                reach_mm,
                hinge_deg,
                head_deg,
                tilt_deg,
                to_edge_mm,
                lowers_mm
            }
        ),
    ]
}

pub(crate) fn install() -> impl Strategy<Value = Install> {
    (seats(), 1.0..80.0f64, 400.0..2000.0f64, 300.0..1200.0f64, 20.0..120.0f64, 0.0..400.0, 0.0..400.0)
        .prop_flat_map(|(seats, kg, width, height, depth_mm, stand_off_mm, pull_n)| {
            let count = f64::from(u32::try_from(seats.len()).unwrap());
            let middle = seats.iter().map(|seat| seat.x_mm).sum::<f64>() / count;
            let edges = Edges { left_mm: -60.0, right_mm: 900.0, bottom_mm: -190.0, top_mm: 190.0 };
            manner(middle).prop_map(move |manner| {
                let masses = vec![HungMass { kg, right_mm: 0.0, y_mm: 0.0, from_back_mm: depth_mm / 2.0 }];
                let hanging = Hanging {
                    left_mm: middle - width / 2.0,
                    right_mm: middle + width / 2.0,
                    bottom_mm: -height / 2.0,
                    top_mm: height / 2.0,
                    depth_mm,
                    stand_off_mm,
                    masses,
                    manner,
                    pull_n,
                    label: Label::Measured,
                };
                Install { seats: seats.clone(), edges, hanging }
            })
        })
}

/// What the yield equations give at an angle to the grain, in newtons, written from the standard alone: Hankinson's
/// bearing, each mode with a gap found by halving the interval in which its two sides meet.
pub(crate) fn at_angle(screw: &Screw, g: f64, stack: &Stack, l_m: f64, deg: f64) -> f64 {
    let d = screw.diameter.value.in_inches();
    let d_r = screw.root.value.in_inches();
    let round = |psi: f64| (psi / 50.0).round() * 50.0;
    let (along, across) = (round(11_200.0 * g), round(6_100.0 * g.powf(1.45) / d.sqrt()));
    let (sin, cos) = deg.to_radians().sin_cos();
    let f_em = along * across / (along * sin * sin + across * cos * cos);
    let r_d = (10.0 * d_r + 0.5) * (1.0 + 0.25 * deg / 90.0);
    let (q_m, q_s) = (f_em * d_r, stack.plate_bearing.value.in_psi() * d_r);
    let m = screw.bending.value.in_psi() * d_r.powi(3) / 6.0;
    let (l_s, gap) = (stack.plate.value.in_inches(), stack.gap.value.in_inches());
    let (c_m, c_s) = (q_m * l_m * l_m / 4.0, q_s * l_s * l_s / 4.0);
    let modes = [
        (0.25 / q_s + 0.25 / q_m, l_s / 2.0 + gap + l_m / 2.0, c_s + c_m),
        (0.5 / q_s + 0.25 / q_m, gap + l_m / 2.0, m + c_m),
        (0.25 / q_s + 0.5 / q_m, l_s / 2.0 + gap, c_s + m),
        (0.5 / q_s + 0.5 / q_m, gap, 2.0 * m),
    ];
    let meet = |(a, b, c): (f64, f64, f64)| {
        let (mut low, mut high) = (0.0, 1e7);
        for _ in 0..200 {
            let p = (low + high) / 2.0;
            if a * p * p + b * p < c { low = p } else { high = p }
        }
        low
    };
    let least = modes.map(meet).into_iter().fold((q_m * l_m).min(q_s * l_s), f64::min);
    least / r_d * 4.448_221_615_260_5
}
