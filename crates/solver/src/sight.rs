//! How a picture is seen from a place in the room: plain values in and out, knows no job. One formula a function, each
//! takes a ledger.
//!
//! A rise is how far the place looked at is above the eyes; below is negative. A distance is level, square to the wall,
//! from the eyes to the picture's face. Where a place is off to the side the angle up is still taken along that
//! distance: never smaller than along the longer slant, so it errs toward warning.

pub mod acuity;
pub mod angle;
pub mod eyes;
pub mod picture;
