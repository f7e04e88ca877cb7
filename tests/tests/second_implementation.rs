//! Fasteners and groups worked a second time, from the published rules alone, and held against the product.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]
#![allow(dead_code, reason = "the comparison that uses the rest comes next")]

#[path = "second/demand.rs"]
mod demand;
#[path = "second/embedment.rs"]
mod embedment;
#[path = "second/in_plane.rs"]
mod in_plane;
#[path = "second/metal_and_concrete.rs"]
mod metal_and_concrete;
#[path = "second/ordinary.rs"]
mod ordinary;
#[path = "second/out_of_plane.rs"]
mod out_of_plane;
#[path = "second/sizes.rs"]
mod sizes;
#[path = "second/wood.rs"]
mod wood;
