//! How far two answers are apart, and the worst of many.

/// How far apart both may be, as a share.
pub(crate) const AGREE: f64 = 1e-9;

#[derive(Default)]
pub(crate) struct Tally {
    pub(crate) compared: usize,
    pub(crate) worst: f64,
    /// Both refused, or both found nothing that carries.
    pub(crate) both_none: usize,
    pub(crate) apart: Vec<String>,
}

impl Tally {
    /// Two numbers; `scale` is the size of what they are parts of, so that a small rest of a large sum is not
    /// held to more than the sum was.
    pub(crate) fn meet(&mut self, what: impl FnOnce() -> String, mine: f64, theirs: f64, scale: f64) {
        self.compared += 1;
        let by = (mine - theirs).abs() / mine.abs().max(theirs.abs()).max(scale).max(f64::MIN_POSITIVE);
        if mine == theirs {
            return;
        }
        // Written so that what is not a number is apart.
        if by <= AGREE {
            self.worst = self.worst.max(by);
        } else {
            self.apart.push(format!("{}: second {mine}, product {theirs}", what()));
        }
    }

    pub(crate) fn told(&mut self, what: impl FnOnce() -> String, same: bool) {
        self.compared += 1;
        if !same {
            self.apart.push(what());
        }
    }

    pub(crate) fn end(self, name: &str) {
        println!(
            "{name}: {} comparisons, {} answered by neither, worst {:.1e}, {} apart",
            self.compared,
            self.both_none,
            self.worst,
            self.apart.len()
        );
        let first: Vec<&String> = self.apart.iter().take(3).collect();
        assert!(self.apart.is_empty(), "{} apart, the first: {first:#?}", self.apart.len());
    }
}
