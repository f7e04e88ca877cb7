//! Where things go on the wall, and whether they hold. Pure: values in, values out.

#[macro_use]
extern crate uom;

pub mod units;
