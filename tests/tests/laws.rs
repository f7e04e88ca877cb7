//! Laws that every plan keeps, on many random rooms.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

#[path = "laws/far.rs"]
mod far;
#[path = "laws/labels.rs"]
mod labels;
#[path = "laws/limits.rs"]
mod limits;
#[path = "laws/mirror.rs"]
mod mirror;
#[path = "laws/mirrored.rs"]
mod mirrored;
#[path = "laws/nudge.rs"]
mod nudge;
#[path = "laws/room.rs"]
mod room;
#[path = "laws/sweep.rs"]
mod sweep;
#[path = "laws/units.rs"]
mod units;
#[path = "laws/walk.rs"]
mod walk;

use proptest::test_runner::{Config, TestRunner};

/// How many rooms each law is held to.
fn config() -> Config {
    Config { cases: 2000, failure_persistence: None, ..Config::default() }
}

/// Runs a law that counts what it saw, on the same rooms each time.
fn runner() -> TestRunner {
    runner_of(config().cases)
}

/// The same on so many rooms.
fn runner_of(cases: u32) -> TestRunner {
    TestRunner::new_with_rng(
        Config { cases, ..config() },
        proptest::test_runner::TestRng::deterministic_rng(Default::default()),
    )
}
