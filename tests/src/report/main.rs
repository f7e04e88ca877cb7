//! `report NAME`: measures, prints a small table with the bound beside each figure, and exits 1 when short.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a report is printed")]

mod cable;
mod chance;
mod crash;
mod demo;
mod fasteners;
mod frame;
mod framing;
mod mends;
mod sheet;
mod solve;
mod start;
mod sweep;

use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(2).collect();
    let mut given = arguments.iter();
    match std::env::args().nth(1).as_deref() {
        Some("cable") => cable::report(),
        Some("crash") => crash::report(&arguments),
        Some("fasteners") => fasteners::report(),
        Some("frame") => frame::report(),
        Some("framing") => framing::report(&arguments),
        Some("mends") => mends::report(),
        Some("sheet") => sheet::report(),
        Some("solve") => solve::report(),
        Some("start") => start::report(),
        Some("sweep") => sweep::report(),
        Some("start-child") => {
            start::child(given.next().map(String::as_str), given.next().map(PathBuf::from))
        }
        _ => {
            eprintln!(
                "which report? there are: cable, crash, fasteners, frame, framing, mends, sheet, solve, start, sweep"
            );
            ExitCode::from(2)
        }
    }
}
