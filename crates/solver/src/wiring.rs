//! What published rules ask of cables and of what they pass through, one subject a file. Plain values in, plain values
//! out; of a job it knows the kinds of cable alone. Limits are never rounded up.

pub mod bends;
pub mod blocks;
pub mod bored;
pub mod boxed;
pub mod lengths;
pub mod paint;
pub mod receptacles;
pub mod tube;
