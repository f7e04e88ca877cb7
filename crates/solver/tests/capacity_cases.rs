//! Single rules of capacity, demand and placing, worked by hand; and input that makes no sense.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

#[path = "capacity_cases/demand.rs"]
mod demand;
#[path = "capacity_cases/group.rs"]
mod group;
#[path = "capacity_cases/hostile.rs"]
mod hostile;
#[path = "capacity_cases/one.rs"]
mod one;
#[path = "fastening/sample.rs"]
mod sample;
