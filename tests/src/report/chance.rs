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

    /// The next one from 0 up to 1.
    pub(crate) fn share(&mut self) -> f64 {
        let wide = u32::try_from(self.next() >> 32).unwrap_or_default();
        f64::from(wide) / 4_294_967_296.0
    }

    /// The next one between two.
    pub(crate) fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.share()
    }

    /// Whether something so likely happens.
    pub(crate) fn happens(&mut self, probability: f64) -> bool {
        self.share() < probability
    }

    /// The next one of a bell curve (Box and Muller).
    pub(crate) fn normal(&mut self, deviation: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.share()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.share()).cos() * deviation
    }

    /// One of a list that is not empty.
    pub(crate) fn one_of<T: Copy>(&mut self, list: &[T]) -> Option<T> {
        let count = u64::try_from(list.len()).ok().filter(|count| *count > 0)?;
        let at = usize::try_from(self.below(count)).ok()?;
        list.get(at).copied()
    }
}
