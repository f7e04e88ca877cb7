//! Chance that comes out the same for the same seed.

/// A row of numbers (SplitMix64, Steele and others 2014; from memory: any even row would do).
pub(crate) struct Chance {
    state: u64,
}

impl Chance {
    /// The row of a seed.
    pub(crate) fn of(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next number.
    pub(crate) fn next(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// The next one below a bound above 0.
    pub(crate) fn below(&mut self, bound: u64) -> u64 {
        self.next() % bound
    }
}
