//! What published rules ask of the room in front of a wall. Plain values; knows no job.

pub mod fire;
pub mod lifting;
pub mod projecting;
pub mod reach;
pub mod steady;
