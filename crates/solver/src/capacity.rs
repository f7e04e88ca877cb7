//! What a fastener and a group of them carry, one formula a file. Plain values in, plain values out: knows
//! neither jobs nor plans.
//!
//! What one fastener holds and the strengths behind it are worked in the inches and pounds-force of their
//! sources; demands in newtons and millimetres. Whatever comes in, a result is a finite number or a `Why`.

pub mod bite;
pub mod case;
pub mod concrete;
pub mod dowel_bearing;
pub mod duration;
pub mod group;
pub mod hanging;
pub mod hold;
pub mod in_plane;
pub mod lateral;
pub mod lead_hole;
pub mod leading;
pub mod opening;
pub mod out_of_plane;
pub mod placing;
pub mod posture;
pub mod reduction;
pub mod screw;
pub mod seat;
mod spot_steps;
pub mod stated;
pub mod steel;
pub mod used;
pub mod why;
pub mod withdrawal;
pub mod wood;
pub mod yield_modes;
mod yield_steps;
