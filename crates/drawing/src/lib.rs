//! What the plan looks like: a scene of ink on paper millimetres, and its painters. Pure.
//!
//! The modules stand in their order: one uses those above it, never those below.

pub mod ink;
pub mod look;
pub mod paper;
mod clip;
pub mod scale;
pub mod scene;
pub mod font;
mod pen;
mod symbol;
pub mod dimension;
pub mod elevation;
pub mod customer_view;
pub mod side_view;
pub mod palette;
pub mod svg;
pub mod sheet;
pub mod pdf;
pub mod png;

#[cfg(test)]
mod sample;
