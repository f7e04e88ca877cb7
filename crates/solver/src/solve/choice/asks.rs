//! What a mount's maker requires, as far as words can be searched: where they can be read two ways, the safer.

use crate::job::framing::WallFraming;
use crate::job::kit::FastenerKind;
use crate::job::mount::Required as Said;
use crate::plan::piece::HolePlan;
use crate::plan::verdict::Required;
use crate::subject::Id;

/// A word that means every one of them stands at most so many words before "holes": "all of the mounting holes".
const FEW_WORDS: usize = 4;

/// Numbers as they are spoken, from one on.
const NUMBERS: [&str; 12] =
    ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/// A larger figure is a size, not a count (chosen).
const MOST_ASKED: usize = 24;

/// What a maker requires.
pub(in super::super) struct Asks<'a> {
    holes: &'a [Id],
    /// Lag screws are spoken of.
    lags: bool,
    /// Wood or studs are spoken of.
    wood: bool,
    /// Concrete, masonry, brick or block is spoken of.
    masonry: bool,
    /// Concrete screws are.
    concrete_screws: bool,
    /// Every hole is to be used.
    every_hole: bool,
    /// So many fasteners at least, where a number of them is spoken of.
    least: usize,
    /// Something is forbidden in words that also name fasteners: only a reader can tell what.
    forbids: bool,
}

impl<'a> Asks<'a> {
    /// Of what was typed in; of nothing, nothing.
    pub(super) fn of(said: Option<&'a Said>) -> Self {
        let text = said.and_then(|said| said.fasteners.as_deref()).unwrap_or_default().to_lowercase();
        let words: Vec<&str> =
            text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
        let says = |any: &[&str]| words.iter().any(|word| any.contains(word));
        let beside = |one: &str, others: &[&str], within: usize| {
            words.iter().enumerate().any(|(at, word)| {
                *word == one && words.iter().skip(at + 1).take(within).any(|next| others.contains(next))
            })
        };
        let holes = ["hole", "holes", "slot", "slots"];
        let fasteners =
            ["lag", "lags", "screw", "screws", "bolt", "bolts", "fastener", "fasteners", "anchors"];
        let number = |word: &str| {
            let named = NUMBERS.iter().position(|name| *name == word).map(|at| at + 1);
            named.or_else(|| word.parse().ok().filter(|count| (1..=MOST_ASKED).contains(count)))
        };
        // "four lag screws", "at least 6 fasteners": the number just before.
        let counts = words.windows(2).filter_map(|pair| match pair {
            [count, of] if fasteners.contains(of) => number(count),
            _ => None,
        });
        let no = ["not", "no", "never", "don", "without", "cannot"];
        let forbids = words.iter().enumerate().any(|(at, word)| {
            no.contains(word)
                && words.iter().skip(at + 1).take(FEW_WORDS).any(|next| fasteners.contains(next))
        });
        Self {
            holes: said.map(|said| said.holes.as_slice()).unwrap_or_default(),
            lags: says(&["lag", "lags"]),
            wood: says(&["wood", "wooden", "timber", "stud", "studs", "joist", "joists"]),
            masonry: says(&["concrete", "masonry", "brick", "bricks", "block", "blocks"]),
            concrete_screws: beside("concrete", &["screw", "screws"], 1),
            every_hole: ["all", "every", "each"].iter().any(|word| beside(word, &holes, FEW_WORDS)),
            least: counts.max().unwrap_or(0),
            forbids,
        }
    }

    /// Whether a hole has to be used.
    pub(super) fn is_required(&self, hole: &Id) -> bool {
        self.every_hole || self.holes.contains(hole)
    }

    /// How many holes have to be used; one that the plate does not have counts, since it cannot be.
    pub(super) fn count(&self, holes: &[HolePlan]) -> usize {
        let gone = self.holes.iter().filter(|id| !holes.iter().any(|hole| hole.id == **id)).count();
        if self.every_hole { holes.len() + gone } else { self.holes.len() }
    }

    /// How many fasteners are asked for at least.
    pub(super) fn least(&self) -> usize {
        self.least
    }

    /// Whether a hole is named that the plate does not have.
    pub(super) fn lacks(&self, holes: &[HolePlan]) -> bool {
        self.holes.iter().any(|id| !holes.iter().any(|hole| hole.id == *id))
    }

    /// Whether holes are required.
    pub(super) fn names_holes(&self) -> bool {
        self.every_hole || !self.holes.is_empty()
    }

    /// Whether nothing is asked for that can be searched for.
    pub(super) fn is_free(&self) -> bool {
        !self.names_holes() && !self.lags && !self.masonry && self.least == 0 && !self.forbids
    }

    /// Whether a type of fastener in this wall is what the words ask for.
    ///
    /// Where they tell of masonry as well as of wood, each part is for its own wall. What they ask for in a wall that
    /// they do not speak of nobody but the reader can tell.
    pub(super) fn of_fastener(&self, kind: FastenerKind, framing: Option<&WallFraming>) -> Required {
        if self.forbids {
            return Required::NotKnown;
        }
        let in_masonry = matches!(framing, Some(WallFraming::Concrete(_) | WallFraming::Masonry(_)));
        let (lags, is_lag) = (self.lags, kind == FastenerKind::Lag);
        match (in_masonry, self.masonry) {
            (false, _) if lags && !is_lag => Required::NotMet,
            (false, false) => Required::Met,
            (false, true) if lags || self.wood => Required::Met,
            (true, false) if lags => Required::NotMet,
            (true, false) if !self.wood => Required::Met,
            (true, true) if self.concrete_screws && kind == FastenerKind::ConcreteScrew => Required::Met,
            _ => Required::NotKnown,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::framing::{Concrete, WoodStuds};

    fn said(text: &str) -> Said {
        Said { fasteners: Some(text.to_owned()), holes: Vec::new() }
    }

    fn told(text: &str, kind: FastenerKind, framing: &WallFraming) -> Required {
        Asks::of(Some(&said(text))).of_fastener(kind, Some(framing))
    }

    #[test]
    fn words_are_read_on_the_safe_side() {
        let (wood, concrete) =
            (WallFraming::Wood(WoodStuds::default()), WallFraming::Concrete(Concrete::default()));
        let (lag, screw, in_concrete) =
            (FastenerKind::Lag, FastenerKind::WoodScrew, FastenerKind::ConcreteScrew);
        for (text, kind, framing, expected) in [
            ("", lag, &wood, Required::Met),
            ("Do not use dowels", lag, &wood, Required::Met),
            ("Do not use lag screws", lag, &wood, Required::NotKnown),
            ("No drywall screws", lag, &wood, Required::NotKnown),
            ("Lag screws 5/16", lag, &wood, Required::Met),
            ("Lag screws 5/16", screw, &wood, Required::NotMet),
            ("lags", in_concrete, &concrete, Required::NotMet),
            ("Wood studs: lags. Concrete: sleeve anchors.", lag, &wood, Required::Met),
            ("Wood studs: lags. Concrete: sleeve anchors.", screw, &wood, Required::NotMet),
            ("Wood studs: lags. Concrete: sleeve anchors.", in_concrete, &concrete, Required::NotKnown),
            ("Concrete screws 1/4 in", in_concrete, &concrete, Required::Met),
            ("Concrete only", lag, &wood, Required::NotKnown),
            ("Masonry anchors", in_concrete, &concrete, Required::NotKnown),
            ("Screws into studs", in_concrete, &concrete, Required::NotKnown),
            ("Screws into studs", screw, &wood, Required::Met),
        ] {
            assert_eq!(told(text, kind, framing), expected, "{text:?}, {kind:?}");
        }
    }

    #[test]
    fn every_hole_is_every_hole() {
        for text in ["Use all holes.", "every hole", "Each of the mounting holes", "all of the six holes"] {
            let said = said(text);
            assert!(Asks::of(Some(&said)).is_required(&Id::new("hole-7")), "{text}");
        }
        for text in ["All screws as supplied. Any two of the plate's upper holes", "Holes in all: 8", ""] {
            let said = said(text);
            assert!(!Asks::of(Some(&said)).names_holes(), "{text}");
        }
    }
}
