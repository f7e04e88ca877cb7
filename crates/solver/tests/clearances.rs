//! Published check values of clearances and lifts, through the functions that rules ask.
#![allow(clippy::unwrap_used, reason = "a failure here is a failed test")]

use serde::Deserialize;
use strikeline_solver::clearances::fire::trim_may_stand_out;
use strikeline_solver::clearances::lifting::{Lift, factors, limit, limit_by};
use strikeline_solver::clearances::projecting::may_stand_out;
use strikeline_solver::clearances::reach::{Reach, is_reached};
use strikeline_solver::clearances::steady::{heaviest, push};
use strikeline_solver::units::{Angle, Length, Mass};

#[derive(Deserialize)]
struct Row {
    row: usize,
    given: Check,
    expected: Vec<f64>,
    tol: f64,
    source: String,
    label: String,
}

#[derive(Debug, Deserialize)]
enum Check {
    /// Inches: the edge above the floor, and how far it stands out. 1 where it may.
    Projecting(f64, f64),
    /// Inches above the floor. 1 where it is reached.
    Reach(f64),
    /// Millimetres above the floor of a new dwelling. 1 where it is within.
    NewDwelling(f64),
    /// Inches from the opening: inches of projection, nothing where there is no limit.
    Trim(f64),
    /// Factors of the lifting equation.
    Factors(Vec<f64>),
    /// Centimetres: out, hands, over; degrees of twist.
    Lift(f64, f64, f64, f64),
    /// Degrees of twist: its factor.
    Twist(f64),
    /// Kilograms: newtons, and the mass from which on it is no more.
    Push(f64),
}

fn inch(value: f64) -> Length {
    Length::inches(value)
}

fn lift(out: f64, hands: f64, over: f64, twist: f64) -> Lift {
    let cm = |value: f64| Length::millimetres(value * 10.0);
    Lift { out: cm(out), hands: cm(hands), over: cm(over), twist: Angle::degrees(twist) }
}

fn found(check: &Check) -> Vec<f64> {
    let yes = |is: bool| vec![f64::from(u8::from(is))];
    match check {
        Check::Projecting(edge, out) => yes(may_stand_out(inch(*edge), inch(*out))),
        Check::Reach(height) => yes(is_reached(Reach::Public, inch(*height))),
        Check::NewDwelling(mm) => yes(is_reached(Reach::NewDwelling, Length::millimetres(*mm))),
        Check::Trim(from) => trim_may_stand_out(inch(*from)).map(Length::in_inches).into_iter().collect(),
        Check::Factors(factors) => vec![limit_by(factors).kg()],
        Check::Lift(out, hands, over, twist) => vec![limit(&lift(*out, *hands, *over, *twist)).kg()],
        Check::Twist(degrees) => {
            let [.., twist] = factors(&lift(25.0, 75.0, 25.0, *degrees));
            vec![twist]
        }
        Check::Push(kg) => vec![push(Mass::kilograms(*kg)).n(), heaviest().kg()],
    }
}

#[test]
fn published_values_come_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("clearances/rows.ron")).unwrap();
    for number in [46, 47, 48, 49, 50, 54, 55, 56, 57, 58] {
        assert!(rows.iter().any(|row| row.row == number), "row {number} is not there");
    }
    for row in rows {
        let found = found(&row.given);
        let told = format!("row {}, {:?}: {found:?} ({}, {})", row.row, row.given, row.source, row.label);
        assert_eq!(found.len(), row.expected.len(), "{told}");
        for (found, expected) in found.iter().zip(&row.expected) {
            assert!((found - expected).abs() <= row.tol + 1e-12, "{told}");
        }
    }
}

#[test]
fn a_harder_lift_is_never_allowed_more() {
    let base = limit(&lift(40.0, 90.0, 60.0, 0.0)).kg();
    for (out, hands, over, twist) in
        [(45.0, 90.0, 60.0, 0.0), (40.0, 120.0, 60.0, 0.0), (40.0, 90.0, 90.0, 0.0), (40.0, 90.0, 60.0, 30.0)]
    {
        assert!(limit(&lift(out, hands, over, twist)).kg() < base);
    }
    assert_eq!(limit(&lift(64.0, 75.0, 25.0, 0.0)).kg(), 0.0, "too far out");
    assert_eq!(limit(&lift(25.0, 179.0, 25.0, 0.0)).kg(), 0.0, "too high");
}
