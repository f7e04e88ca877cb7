//! What writes a working down. Every formula is one function that takes a ledger: `Blank` keeps nothing and
//! costs nothing, `Working` keeps every step. Both run the same sums, so both give the same bits.

use crate::units::{Angle, Force, ForcePerLength, Length, Ratio, Stress};

/// Where a value comes from. In the order of how far it may be trusted; a sum is worth its weakest part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Label {
    /// Measured by the user, or printed on the thing or its box.
    Measured,
    /// Read in a published source.
    Read,
    /// Read where somebody else tells what the source says.
    SecondHand,
    /// Worked out from read or measured values.
    Derived,
    /// An engineering choice on the safe side, with its reason.
    Chosen,
    /// What a maker says, or a pull test of one hole: only `as_stated` counts it.
    Stated,
    /// Only remembered: never the ground of a verdict.
    Memory,
    /// Taken in the place of a value that nobody gave: never the ground of a verdict.
    Assumed,
}

impl Label {
    /// The weaker of two.
    #[must_use]
    pub fn weaker(self, other: Self) -> Self {
        self.max(other)
    }

    /// The label of what is worked out from values of this one: never better than derived.
    #[must_use]
    pub fn worked_out(self) -> Self {
        self.max(Self::Derived)
    }

    /// Whether a verdict may say *holds* on it; `stated` only where makers' values are counted.
    #[must_use]
    pub fn bears(self, as_stated: bool) -> bool {
        match self {
            Self::Measured | Self::Read | Self::SecondHand | Self::Derived | Self::Chosen => true,
            Self::Stated => as_stated,
            Self::Memory | Self::Assumed => false,
        }
    }
}

/// A value and where it is from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Given<T> {
    /// The value.
    pub value: T,
    /// Where it is from.
    pub label: Label,
    /// The clause that it is read from, or the reason that it was chosen for; empty where there is nothing to say.
    pub reason: &'static str,
}

impl<T> Given<T> {
    /// A value with its label.
    #[must_use]
    pub const fn new(value: T, label: Label) -> Self {
        Self { value, label, reason: "" }
    }

    /// The same with its clause or reason.
    #[must_use]
    pub const fn because(self, reason: &'static str) -> Self
    where
        T: Copy,
    {
        Self { value: self.value, label: self.label, reason }
    }

    /// A value that the user measured.
    #[must_use]
    pub const fn measured(value: T) -> Self {
        Self::new(value, Label::Measured)
    }

    /// A value chosen on the safe side.
    #[must_use]
    pub const fn chosen(value: T) -> Self {
        Self::new(value, Label::Chosen)
    }
}

/// The unit that a working shows a number in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// A bare number.
    Bare,
    /// Inches.
    Inch,
    /// Millimetres.
    Millimetre,
    /// Square millimetres.
    SquareMillimetre,
    /// Pounds-force.
    PoundForce,
    /// Newtons.
    Newton,
    /// Newton metres; worked out in newton millimetres.
    NewtonMetre,
    /// Kilograms.
    Kilogram,
    /// Metres per second squared.
    MetrePerSecondSquared,
    /// Degrees.
    Degree,
    /// Pounds-force per square inch.
    Psi,
    /// Pounds-force per inch.
    PoundForcePerInch,
    /// Pound-force inches.
    PoundForceInch,
    /// Inches per pound-force.
    InchPerPoundForce,
}

/// A number in its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// The number.
    pub value: f64,
    /// Its unit.
    pub unit: Shown,
}

impl Amount {
    /// A number in a unit.
    #[must_use]
    pub const fn new(value: f64, unit: Shown) -> Self {
        Self { value, unit }
    }

    /// A bare number.
    #[must_use]
    pub const fn bare(value: f64) -> Self {
        Self::new(value, Shown::Bare)
    }

    /// A turning moment, from newton millimetres.
    #[must_use]
    pub fn turning(nmm: f64) -> Self {
        Self::new(nmm / 1000.0, Shown::NewtonMetre)
    }
}

impl From<Length> for Amount {
    fn from(length: Length) -> Self {
        Self::new(length.in_inches(), Shown::Inch)
    }
}

impl From<Force> for Amount {
    fn from(force: Force) -> Self {
        Self::new(force.lbf(), Shown::PoundForce)
    }
}

impl From<Angle> for Amount {
    fn from(angle: Angle) -> Self {
        Self::new(angle.deg(), Shown::Degree)
    }
}

impl From<Stress> for Amount {
    fn from(stress: Stress) -> Self {
        Self::new(stress.in_psi(), Shown::Psi)
    }
}

impl From<ForcePerLength> for Amount {
    fn from(per: ForcePerLength) -> Self {
        Self::new(per.lbf_per_in(), Shown::PoundForcePerInch)
    }
}

impl From<f64> for Amount {
    fn from(value: f64) -> Self {
        Self::bare(value)
    }
}

impl From<Ratio> for Amount {
    fn from(ratio: Ratio) -> Self {
        Self::bare(ratio.value())
    }
}

/// A value put into a formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Put {
    /// Its symbol in the formula.
    pub symbol: &'static str,
    /// The value.
    pub amount: Amount,
    /// Where it is from.
    pub label: Label,
    /// Whether it is the result of a step before.
    pub worked_out: bool,
    /// The clause that it is read from, or the reason that it was chosen for; empty where there is nothing to say.
    pub reason: &'static str,
}

impl Put {
    /// A value with its symbol.
    #[must_use]
    pub fn new(symbol: &'static str, amount: impl Into<Amount>, label: Label) -> Self {
        Self { symbol, amount: amount.into(), label, worked_out: false, reason: "" }
    }

    /// The result of a step before, with its symbol.
    #[must_use]
    pub fn result(symbol: &'static str, amount: impl Into<Amount>, label: Label) -> Self {
        Self { symbol, amount: amount.into(), label, worked_out: true, reason: "" }
    }

    /// A given value with its symbol.
    #[must_use]
    pub fn given<T: Into<Amount>>(symbol: &'static str, given: Given<T>) -> Self {
        Self::new(symbol, given.value, given.label).because(given.reason)
    }

    /// The same with its clause or reason.
    #[must_use]
    pub fn because(self, reason: &'static str) -> Self {
        Self { reason, ..self }
    }

    /// The same with what it is, where nothing else was said of it.
    #[must_use]
    pub fn being(self, what: &'static str) -> Self {
        if self.reason.is_empty() { self.because(what) } else { self }
    }
}

/// One step of a working.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What is worked out, in trade words.
    pub name: &'static str,
    /// The formula in symbols, its result first: `T = M / (n h); h = y - y_p`.
    ///
    /// Clauses stand apart by `; `, and all after the first tell of a symbol in it. A space multiplies. Functions are
    /// `abs`, `min`, `max`, `sqrt`, `sin`, `cos`, `tan` (of degrees), `atan` (in degrees), `round`, `nearest` (of what
    /// is at hand) and `sum`, which runs over all values put in under one symbol. What is put in and is not in the
    /// formula says what a table was read for.
    pub formula: &'static str,
    /// The values put in.
    pub put: Vec<Put>,
    /// What came out.
    pub result: Amount,
    /// The clause, publication or general words that it is from.
    pub source: &'static str,
    /// Where the formula and its values are from: the weakest of them.
    pub label: Label,
}

/// What a run of steps works out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Where what hangs is, and what it weighs there.
    Places,
    /// All that a case of load comes to.
    Totals,
    /// What of a fastener is in the wood.
    Depth,
    /// What one carries in shear along the stud.
    Along,
    /// What one carries in shear across the stud.
    Across,
    /// What one carries straight out.
    Pull,
    /// What one carries by a printed table.
    Printed,
    /// How the group stands.
    Group,
    /// Its lead hole.
    Lead,
    /// What each needs round it.
    Needs,
    /// What one has round it.
    Room,
}

/// Takes the steps of a working.
pub trait Ledger {
    /// Writes one step down, or never asks for it.
    fn write(&mut self, step: impl FnOnce() -> Step);

    /// Says what the next steps work out.
    #[inline(always)]
    fn begin(&mut self, _: Part) {}
}

/// Keeps nothing. A step is not even made up, so that `solve` pays nothing for it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Blank;

impl Ledger for Blank {
    #[inline(always)]
    fn write(&mut self, _: impl FnOnce() -> Step) {}
}

/// Keeps every step, in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working {
    /// The steps.
    pub steps: Vec<Step>,
    /// From which step on a part runs.
    begun: Vec<(usize, Part)>,
}

impl Ledger for Working {
    fn write(&mut self, step: impl FnOnce() -> Step) {
        self.steps.push(step());
    }

    fn begin(&mut self, part: Part) {
        self.begun.push((self.steps.len(), part));
    }
}

impl Working {
    /// The steps of one part, in their order, each once: what was worked out again the same way is told once.
    #[must_use]
    pub fn part(&self, part: Part) -> Vec<Step> {
        let ends = self.begun.iter().skip(1).map(|(from, _)| *from).chain([self.steps.len()]);
        let runs = self.begun.iter().zip(ends).filter(|((_, own), _)| *own == part);
        let mut found: Vec<Step> = Vec::new();
        for step in runs.flat_map(|((from, _), to)| self.steps.get(*from..to).unwrap_or_default()) {
            if !found.contains(step) {
                found.push(step.clone());
            }
        }
        found
    }

    /// Every value put in whose own label is `label`, once each, in the order of the working; results of its steps
    /// are left out.
    #[must_use]
    pub fn resting_on(&self, label: Label) -> Vec<Put> {
        let mut found: Vec<Put> = Vec::new();
        let own = |put: &&Put| put.label == label && !put.worked_out;
        for put in self.steps.iter().flat_map(|step| &step.put).filter(own) {
            if !found.contains(put) {
                found.push(*put);
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn twice<L: Ledger>(ledger: &mut L, length: Length) -> Length {
        let result = length * 2.0;
        ledger.write(|| Step {
            name: "twice",
            formula: "a = 2 b",
            put: vec![Put::new("b", length, Label::Measured)],
            result: result.into(),
            source: "arithmetic",
            label: Label::Derived,
        });
        result
    }

    #[test]
    fn both_ledgers_get_the_same_and_one_keeps_it() {
        let mut working = Working::default();
        let length = Length::inches(0.1);
        assert_eq!(twice(&mut Blank, length), twice(&mut working, length));
        assert_eq!(working.steps.len(), 1);
        assert_eq!(working.resting_on(Label::Measured).len(), 1);
        assert!(working.resting_on(Label::Chosen).is_empty());
    }

    #[test]
    fn parts_are_gathered_and_what_is_the_same_is_told_once() {
        let mut working = Working::default();
        twice(&mut working, Length::inches(9.0));
        for part in [Part::Along, Part::Across, Part::Along] {
            working.begin(part);
            twice(&mut working, Length::inches(1.0));
        }
        twice(&mut working, Length::inches(2.0));
        let results = |part| working.part(part).iter().map(|step| step.result.value).collect::<Vec<_>>();
        assert_eq!(results(Part::Along), [2.0, 4.0]);
        assert_eq!(results(Part::Across), [2.0]);
        assert!(results(Part::Pull).is_empty());
    }

    #[test]
    fn a_sum_is_worth_its_weakest_part() {
        assert_eq!(Label::Read.weaker(Label::Memory), Label::Memory);
        assert_eq!(Label::Measured.worked_out(), Label::Derived);
        assert_eq!(Label::Chosen.worked_out(), Label::Chosen);
        for label in [Label::Memory, Label::Assumed] {
            assert!(!label.bears(true) && !label.bears(false), "{label:?}");
        }
        assert!(Label::Stated.bears(true) && !Label::Stated.bears(false));
    }
}
