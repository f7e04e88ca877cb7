//! Values that make no sense give a reason, and never a panic or what is not a number.

use super::demand::display;
use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::case::{Case, CaseName, Posture};
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::duration::{Lasting, for_connection};
use strikeline_solver::capacity::group::Group;
use strikeline_solver::capacity::hanging::Manner;
use strikeline_solver::capacity::hold::{Hold, InWood, Linear};
use strikeline_solver::capacity::opening::{Opening, Runs, takes};
use strikeline_solver::capacity::out_of_plane::Out;
use strikeline_solver::capacity::placing::{InFace, carries};
use strikeline_solver::capacity::posture::cases;
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::stated::Report;
use strikeline_solver::capacity::steel::in_steel;
use strikeline_solver::capacity::used::{Asked, used};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::units::{ForcePerLength, Length, Ratio, Stress};

/// What a slip of the hand, a broken file or another program may bring.
const BAD: [f64; 14] = [
    0.0,
    -0.0,
    -1.0,
    1e-300,
    5e-324,
    1e-9,
    1.0,
    1e6,
    1e30,
    1e300,
    f64::MAX,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
];

fn inches(value: f64) -> Given<Length> {
    Given::measured(Length::inches(value))
}

fn finite(hold: &Hold) -> bool {
    let wood = |wood: &InWood| [wood.along_n, wood.across_n, wood.withdrawal_n, wood.steel_n];
    match hold {
        Hold::Wood { permanent, ten_minutes, .. } => {
            wood(permanent).into_iter().chain(wood(ten_minutes)).all(f64::is_finite)
        }
        Hold::Linear(linear) => linear.shear_n.is_finite() && linear.pull_n.is_finite(),
    }
}

#[test]
fn a_fastener_in_wood() {
    let good = [3.0, 0.0, 0.075, 61_850.0, 0.5, 3.5, 0.36];
    for field in 0..good.len() {
        for bad in BAD {
            for other in [None, Some((field + 1) % good.len())] {
                let mut values = good;
                values[field] = bad;
                if let Some(other) = other {
                    values[other] = bad;
                }
                let [length, washer, plate, bears, gap, depth, gravity] = values;
                let stack = Stack {
                    washer: inches(washer),
                    plate: inches(plate),
                    plate_bearing: Given::measured(Stress::psi(bears)),
                    gap: inches(gap),
                    stud_depth: inches(depth),
                };
                let report = Report {
                    outer_diameter: Length::inches(0.25),
                    root_diameter: Length::inches(0.19),
                    bending: Stress::psi(bears),
                    thread: Length::inches(length),
                    withdrawal: ForcePerLength::pounds_force_per_inch(bears),
                    gravity: Ratio::bare(gravity),
                    least_depth: Length::inches(gap),
                    least_edge: Length::inches(plate),
                };
                for screw in [
                    Screw::lag(inches(0.25), inches(length)),
                    Screw::wood_screw(inches(0.19), inches(length)),
                    Screw::structural(inches(length), report),
                ] {
                    let wood = Given::measured(Ratio::bare(gravity));
                    let found = screw.and_then(|screw| in_wood(&mut Blank, &screw, wood, &stack));
                    assert!(found.as_ref().map_or(true, finite), "{values:?}: {found:?}");
                    if bad.is_nan() {
                        assert!(found.is_err(), "{values:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn steel_concrete_holes_and_edges() {
    let lag = Screw::lag(inches(0.25), inches(3.0)).unwrap();
    for a in BAD {
        for b in BAD {
            let steel = in_steel(&mut Blank, inches(0.19), Given::measured(Length::mils(a)), inches(b));
            assert!(steel.is_err(), "{a} {b}");
            let steel = in_steel(&mut Blank, inches(a), Given::measured(Length::mils(18.0)), inches(b));
            assert!(steel.is_err(), "{a} {b}");
            let concrete = ConcreteScrew {
                diameter: inches(0.25),
                depth: inches(a),
                gap: inches(0.0),
                edge: inches(b),
                strength: Some(Given::measured(Stress::psi(a))),
                normal_weight: true,
            };
            let found = in_concrete(&mut Blank, &concrete);
            assert!(found.map(Hold::Linear).as_ref().map_or(true, finite));
            let face = InFace { face: inches(1.5), drift: inches(a), doubt: inches(b) };
            if a.is_nan() || b.is_nan() || a.abs() >= 1.0 {
                assert!(carries(&mut Blank, &lag, &face).is_err(), "{a} {b}");
            }
            let opening = Opening { width: Length::inches(a), runs: Runs::Nowhere };
            if takes(&opening, lag.diameter.value, Length::inches(b)).is_ok() {
                assert!(a >= 0.25 && b > a, "{a} {b}");
            }
        }
        let factor = for_connection(Given::measured(a));
        assert!(factor.map_or(true, |given| given.value > 0.0 && given.value <= 1.6));
    }
}

#[test]
fn what_is_asked_and_used() {
    let wood = InWood { along_n: 500.0, across_n: 400.0, withdrawal_n: 2000.0, steel_n: 3000.0 };
    for a in BAD {
        for b in BAD {
            let asked = Asked { along_n: a, across_n: b, pull_n: a, label: Label::Derived };
            let broken = InWood { along_n: b, ..wood };
            for hold in [
                Hold::Wood { permanent: wood, ten_minutes: wood, label: Label::Read },
                Hold::Wood { permanent: broken, ten_minutes: broken, label: Label::Read },
                Hold::Linear(Linear { shear_n: 100.0, pull_n: b, label: Label::Read }),
            ] {
                let found = used(&mut Blank, &asked, &hold, Lasting::Permanent);
                // A hold of next to nothing may be used without end, and is then short: never what is no number.
                assert!(found.map_or(true, |used| used.value >= 0.0), "{asked:?} {hold:?}: {found:?}");
            }
        }
    }
}

#[test]
fn a_group_under_load() {
    let edges = Edges { left_mm: -300.0, right_mm: 300.0, bottom_mm: -120.0, top_mm: 120.0 };
    let hold = Hold::Linear(Linear { shear_n: 100.0, pull_n: 100.0, label: Label::Read });
    assert!(Group::of(&mut Blank, &[], &edges, Label::Measured).is_err());
    for a in BAD {
        for b in BAD {
            let seat = |x_mm, y_mm| Seat { x_mm, y_mm, stud: 0, along: true, across: true };
            let edges = Edges { bottom_mm: b, ..edges };
            let Ok(group) =
                Group::of(&mut Blank, &[seat(a, b), seat(b, 100.0), seat(0.0, 0.0)], &edges, Label::Measured)
            else {
                continue;
            };
            for load in BAD {
                let case = Case {
                    name: CaseName { posture: Posture::AsHung, pull: None },
                    lasting: Lasting::Permanent,
                    down_n: load,
                    down_x_nmm: a,
                    down_z_nmm: load,
                    out: Some(Out { n: load, x_mm: load, high_y_mm: b, low_y_mm: b }),
                    label: Label::Derived,
                };
                for seat in 0..4 {
                    let found = group.asked(&mut Blank, seat, &case);
                    let finite = found.map_or(true, |asked| {
                        asked.along_n.is_finite() && asked.across_n.is_finite() && asked.pull_n >= 0.0
                    });
                    assert!(finite, "{case:?}: {found:?}");
                    assert!(load >= 0.0 || found.is_err(), "{case:?}: {found:?}");
                }
                let outcome = group.demand(&[case]).against(&hold);
                assert!(outcome.governing.is_some() || outcome.not_known.is_some());
            }
        }
    }
}

#[test]
fn what_hangs() {
    let arm = Manner::Arm {
        hinge_x_mm: 0.0,
        reach_mm: 400.0,
        hinge_deg: None,
        head_deg: None,
        tilt_deg: 0.0,
        to_edge_mm: 0.0,
        lowers_mm: 0.0,
    };
    let tilting = Manner::Tilting { down_deg: 15.0, up_deg: 5.0, pivot_y_mm: 0.0 };
    for bad in BAD {
        for manner in [
            Manner::Fixed,
            arm,
            tilting,
            Manner::Arm {
                hinge_x_mm: bad,
                reach_mm: bad,
                hinge_deg: Some(bad),
                head_deg: Some(bad),
                tilt_deg: bad,
                to_edge_mm: bad,
                lowers_mm: bad,
            },
            Manner::Tilting { down_deg: bad, up_deg: bad, pivot_y_mm: bad },
        ] {
            for field in 0..9 {
                let mut hanging = display(manner);
                match field {
                    0 => hanging.left_mm = bad,
                    1 => hanging.top_mm = bad,
                    2 => hanging.depth_mm = bad,
                    3 => hanging.stand_off_mm = bad,
                    4 => hanging.masses[0].kg = bad,
                    5 => hanging.masses[0].from_back_mm = bad,
                    6 => hanging.pull_n = bad,
                    7 => hanging.masses.clear(),
                    _ => hanging.bottom_mm = bad,
                }
                let found = cases(&hanging);
                if bad.is_nan() {
                    assert!(found.is_err(), "{hanging:?}");
                }
                for case in found.into_iter().flatten() {
                    let numbers = [case.down_n, case.down_x_nmm, case.down_z_nmm];
                    assert!(numbers.iter().all(|n| n.is_finite()) && case.down_z_nmm >= 0.0, "{hanging:?}");
                }
            }
        }
    }
}
