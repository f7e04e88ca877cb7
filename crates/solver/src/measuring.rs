//! How far off a measurement may be, and how such errors add up. Plain values; knows no job.

pub mod level;
pub mod stack;
pub mod tape_error;
