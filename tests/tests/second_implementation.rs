//! Fasteners and groups worked a second time, from the published rules alone, and held against the product.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]
#![allow(clippy::print_stdout, reason = "how far both are apart is told where output is asked for")]

#[path = "second/demand.rs"]
mod demand;
#[path = "second/dice.rs"]
mod dice;
#[path = "second/embedment.rs"]
mod embedment;
#[path = "second/group.rs"]
mod group;
#[path = "second/handled.rs"]
mod handled;
#[path = "second/in_plane.rs"]
mod in_plane;
#[path = "second/metal_and_concrete.rs"]
mod metal_and_concrete;
#[path = "second/ordinary.rs"]
mod ordinary;
#[path = "second/out_of_plane.rs"]
mod out_of_plane;
#[path = "second/single.rs"]
mod single;
#[path = "second/sizes.rs"]
mod sizes;
#[path = "second/tally.rs"]
mod tally;
#[path = "second/wood.rs"]
mod wood;

/// A pound-force in newtons: 0.453 592 37 kg by standard gravity, exactly.
const N_PER_LBF: f64 = 4.448_221_615_260_5;
