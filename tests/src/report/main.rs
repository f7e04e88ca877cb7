//! `report NAME`: measures, prints a small table with the bound beside each figure, and exits 1 when short.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a report is printed")]

mod demo;
mod frame;
mod solve;
mod start;

use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    match arguments.next().as_deref() {
        Some("frame") => frame::report(),
        Some("solve") => solve::report(),
        Some("start") => start::report(),
        Some("start-child") => start::child(arguments.next().as_deref(), arguments.next().map(PathBuf::from)),
        _ => {
            eprintln!("which report? there are: frame, solve, start");
            ExitCode::from(2)
        }
    }
}
