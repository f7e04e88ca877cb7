//! What a way costs.

use std::ops::Add;

/// What a way costs: compared field by field, in this order. Lengths are in nanometres, so that sums are exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Cost {
    /// What is not allowed.
    pub not_allowed: u32,
    /// Studs bored.
    pub studs_bored: u32,
    /// Places to patch.
    pub patches: u32,
    /// Fire blocks passed.
    pub blocks: u32,
    /// Turns that nobody can see, so that their radius cannot be checked.
    pub tight_bends: u32,
    /// What shows.
    pub visible_nm: i64,
    /// All of it, from the ports on.
    pub length_nm: i64,
    /// The part of it behind the piece: of two ways alike the one that opens the wall nearer to the ports.
    pub behind_nm: i64,
}

impl Add for Cost {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            not_allowed: self.not_allowed.saturating_add(other.not_allowed),
            studs_bored: self.studs_bored.saturating_add(other.studs_bored),
            patches: self.patches.saturating_add(other.patches),
            blocks: self.blocks.saturating_add(other.blocks),
            tight_bends: self.tight_bends.saturating_add(other.tight_bends),
            visible_nm: self.visible_nm.saturating_add(other.visible_nm),
            length_nm: self.length_nm.saturating_add(other.length_nm),
            behind_nm: self.behind_nm.saturating_add(other.behind_nm),
        }
    }
}

impl Cost {
    /// Without its lengths, all but what shows.
    #[must_use]
    pub fn but_length(self) -> Self {
        Self { length_nm: 0, behind_nm: 0, ..self }
    }

    /// One turn.
    pub const TURN: Self = Self { tight_bends: 1, ..Self::NONE };
    /// Nothing.
    pub const NONE: Self = Self {
        not_allowed: 0,
        studs_bored: 0,
        patches: 0,
        blocks: 0,
        tight_bends: 0,
        visible_nm: 0,
        length_nm: 0,
        behind_nm: 0,
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_comes_first_outweighs_all_that_follows() {
        let long = Cost { length_nm: i64::MAX, visible_nm: i64::MAX, tight_bends: 9, ..Cost::NONE };
        assert!(long < Cost { blocks: 1, ..Cost::NONE });
        assert!(Cost { blocks: 99, ..Cost::NONE } < Cost { patches: 1, ..Cost::NONE });
        assert_eq!((long + long).length_nm, i64::MAX, "a sum never wraps");
    }
}
