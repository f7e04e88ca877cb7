//! How errors add up: at the worst all the same way, or as independent ones do.

use crate::numeric::root;

/// What errors come to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stack {
    /// All the same way: their sum.
    pub worst: f64,
    /// Independent, centred ones: the root of the sum of their squares.
    pub rss: f64,
}

/// What errors come to, in their own unit; nothing for none. Signs do not count.
#[must_use]
pub fn stack(errors: &[f64]) -> Stack {
    Stack {
        worst: errors.iter().map(|error| error.abs()).sum(),
        rss: root(errors.iter().map(|error| error * error).sum()),
    }
}
