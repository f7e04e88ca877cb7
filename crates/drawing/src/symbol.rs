//! How each kind of thing is drawn, one a file. Sizes in millimetres here are of paper: a symbol keeps them at
//! any scale.

pub(crate) mod display;
pub(crate) mod entry;
pub(crate) mod feature;
pub(crate) mod figure;
pub(crate) mod fireplace;
pub(crate) mod hatch;
pub(crate) mod material;
pub(crate) mod hidden;
pub(crate) mod hit;
pub(crate) mod hole;
pub(crate) mod next_probe;
pub(crate) mod opening;
pub(crate) mod outlet;
pub(crate) mod port;
pub(crate) mod slot;
pub(crate) mod stud;
