//! `report NAME`: measures, prints a small table with the bound beside each figure, and exits 1 when short.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a report is printed")]

mod solve;

use std::process::ExitCode;

fn main() -> ExitCode {
    match std::env::args().nth(1).as_deref() {
        Some("solve") => solve::report(),
        _ => {
            eprintln!("which report? there is: solve");
            ExitCode::from(2)
        }
    }
}
