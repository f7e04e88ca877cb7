//! Published check values of measuring, through the functions that an error budget is made with.
#![allow(clippy::unwrap_used, reason = "a failure here is a failed test")]

use serde::Deserialize;
use strikeline_solver::handbook::measuring::{CLASS_I, CLASS_II, CLASS_III, LINE_LASER_MM_PER_M};
use strikeline_solver::measuring::level::{between_walls, out_of_level};
use strikeline_solver::measuring::stack::stack;
use strikeline_solver::measuring::tape_error::{by_class, by_table};
use strikeline_solver::units::Length;

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
    /// A class, metres, whether from a surface.
    Class(u8, f64, bool),
    /// Feet.
    Table(f64),
    /// Millimetres in a metre.
    Level(f64),
    /// Metres between walls.
    Laser(f64),
    Stack(Vec<f64>),
}

fn found(check: &Check) -> Vec<f64> {
    match check {
        Check::Class(class, metres, from_surface) => {
            let class = match class {
                1 => CLASS_I,
                2 => CLASS_II,
                _ => CLASS_III,
            };
            vec![by_class(class, Length::millimetres(metres * 1000.0), *from_surface).value.mm()]
        }
        Check::Table(feet) => vec![by_table(Length::inches(feet * 12.0)).value.in_inches()],
        Check::Level(mm_per_m) => vec![out_of_level(*mm_per_m).deg()],
        Check::Laser(metres) => {
            vec![between_walls(LINE_LASER_MM_PER_M.value, Length::millimetres(metres * 1000.0)).mm()]
        }
        Check::Stack(errors) => {
            let stack = stack(errors);
            vec![stack.worst, stack.rss]
        }
    }
}

#[test]
fn published_values_come_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("measuring/rows.ron")).unwrap();
    for number in 59..=67 {
        assert!(rows.iter().any(|row| row.row == number), "row {number} is not there");
    }
    for row in rows {
        let found = found(&row.given);
        assert_eq!(found.len(), row.expected.len(), "row {}", row.row);
        for (found, expected) in found.iter().zip(&row.expected) {
            assert!(
                (found - expected).abs() <= row.tol + 1e-12,
                "row {}, {:?}: {found}, not {expected} ({}, {})",
                row.row,
                row.given,
                row.source,
                row.label
            );
        }
    }
}

#[test]
fn a_longer_tape_is_never_surer_and_past_the_table_it_goes_on() {
    let mut before = (0.0, 0.0);
    for step in 0..=4000 {
        let length = Length::millimetres(f64::from(step) * 25.0);
        let now = (by_table(length).value.mm(), by_class(CLASS_II, length, true).value.mm());
        assert!(now.0 >= before.0 - 1e-9 && now.1 >= before.1 - 1e-9, "{length:?}");
        before = now;
    }
    assert_eq!(by_table(Length::inches(-5.0)).value.in_inches(), 1.0 / 32.0);
}
