//! Nothing entered is lost: what a crash left, and disks that will not take a job.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

#[path = "never_lost/crashes.rs"]
mod crashes;
#[path = "never_lost/disks.rs"]
mod disks;
#[path = "never_lost/open_job.rs"]
mod open_job;
#[path = "never_lost/window.rs"]
mod window;
