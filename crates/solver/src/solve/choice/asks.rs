//! What a mount's maker requires, as far as words can be searched: where they can be read two ways, the safer.

mod read;
mod size;

use super::kind::Kind;
use crate::job::framing::WallFraming;
use crate::job::kit::FastenerKind;
use crate::job::mount::Required as Said;
use crate::plan::piece::HolePlan;
use crate::plan::verdict::Required;
use crate::subject::Id;
use read::{Spoken, read};
use size::Sizes;

/// A word that means every one of them stands at most so many words before "holes": "all of the mounting holes".
const FEW_WORDS: usize = 4;

/// A word that forbids stands at most so many words before a fastener or after it, in its sentence.
const FORBIDS_WITHIN: usize = 6;

/// Words that forbid.
const NO: [&str; 16] = [
    "not",
    "no",
    "never",
    "nor",
    "don",
    "without",
    "cannot",
    "avoid",
    "forbidden",
    "prohibited",
    "mustn",
    "shouldn",
    "doesn",
    "isn",
    "won",
    "aren",
];

/// What follows a word that forbids and makes it ask instead, or forbid no fastener: "no fewer than", "do not
/// overtighten".
const YET: [&str; 4] = ["less", "fewer", "overtighten", "overtightened"];

const FASTENERS: [&str; 10] =
    ["lag", "lags", "screw", "screws", "bolt", "bolts", "fastener", "fasteners", "anchor", "anchors"];

/// What may stand between a number and the fasteners that it counts.
const OF_FASTENERS: [&str; 22] = [
    "of",
    "the",
    "these",
    "x",
    "hex",
    "head",
    "headed",
    "wood",
    "wooden",
    "coach",
    "concrete",
    "masonry",
    "sheet",
    "metal",
    "steel",
    "structural",
    "stainless",
    "galvanized",
    "coarse",
    "supplied",
    "included",
    "mounting",
];

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
    /// Wood screws are.
    wood_screws: bool,
    /// The sizes that are named.
    sizes: Sizes,
    /// Every hole is to be used.
    every_hole: bool,
    /// So many fasteners at least, where a number of them is spoken of.
    least: usize,
    /// So many at least, where what is spoken of may be a number of them.
    perhaps: usize,
    /// Something is forbidden in words that also name fasteners: only a reader can tell what.
    forbids: bool,
}

impl<'a> Asks<'a> {
    /// Of what was typed in; of nothing, nothing.
    pub(in super::super) fn of(said: Option<&'a Said>) -> Self {
        let text = said.and_then(|said| said.fasteners.as_deref()).unwrap_or_default();
        let words = read(text);
        let says = |any: &[&str]| words.iter().any(|word| word.is(any));
        // The words that follow one, in its own sentence.
        let after = |at: usize| words.iter().skip(at + 1).take_while(|next| **next != Spoken::End);
        let follow = |at: usize| after(at).take(FEW_WORDS);
        let beside = |one: &str, others: &[&str], within: usize| {
            words
                .iter()
                .enumerate()
                .any(|(at, word)| word.is(&[one]) && follow(at).take(within).any(|next| next.is(others)))
        };
        let holes = ["hole", "holes", "slot", "slots"];
        let is_before = |at: usize, any: &[&str]| {
            at.checked_sub(1).and_then(|before| words.get(before)).is_some_and(|before| before.is(any))
        };
        // "four lag screws", "at least 6 fasteners": sure only where nothing else is spoken of in between.
        let (mut least, mut perhaps, mut all) = (0, 0, 0_usize);
        for (at, word) in words.iter().enumerate() {
            let (Spoken::Count(count) | Spoken::Perhaps(count)) = *word else { continue };
            let is_of_fasteners = || {
                let mut between = words.iter().skip(at + 1);
                let next = between.find(|next| **next != Spoken::Size && !next.is(&OF_FASTENERS));
                next.is_some_and(|next| next.is(&FASTENERS))
            };
            let is_near = || {
                let near = follow(at).take_while(|next| !matches!(next, Spoken::Count(_)));
                near.into_iter().any(|next| next.is(&FASTENERS))
            };
            let is_count = matches!(word, Spoken::Count(_));
            if is_count && is_of_fasteners() {
                least = least.max(count);
                all = all.saturating_add(count);
            } else if is_near() || is_of_fasteners() || is_count && is_before(at, &FASTENERS) {
                perhaps = perhaps.max(count);
            }
        }
        // "Two at the top and two at the bottom" may be four; of "two in each stud" only a reader can tell how many.
        if all > least {
            perhaps = perhaps.max(all);
        }
        let each = ["per", "each", "every"];
        let studs =
            ["stud", "studs", "row", "rows", "side", "sides", "bracket", "brackets", "column", "columns"];
        if least.max(perhaps) > 0 && each.iter().any(|one| beside(one, &studs, 2)) {
            perhaps = usize::MAX;
        }
        // "Do not overtighten the screws" forbids none; "do not overtighten or use screws" does.
        let is_excused = |at: usize| {
            follow(at).take(2).any(|next| next.is(&YET))
                && !follow(at).any(|next| next.is(&["or", "use", "used", "nor"]))
        };
        let forbids = words.iter().enumerate().any(|(at, word)| {
            let before = || {
                let back = words.iter().take(at).rev();
                back.take_while(|one| **one != Spoken::End).take(FORBIDS_WITHIN)
            };
            word.is(&NO)
                && !is_excused(at)
                && after(at).take(FORBIDS_WITHIN).chain(before()).any(|one| one.is(&FASTENERS))
        });
        Self {
            holes: said.map(|said| said.holes.as_slice()).unwrap_or_default(),
            lags: says(&["lag", "lags"]),
            wood: says(&["wood", "wooden", "timber", "stud", "studs", "joist", "joists"]),
            masonry: says(&["concrete", "masonry", "brick", "bricks", "block", "blocks"]),
            concrete_screws: beside("concrete", &["screw", "screws"], 1),
            wood_screws: beside("wood", &["screw", "screws"], 1),
            sizes: Sizes::of(text),
            every_hole: ["all", "every", "each"].iter().any(|word| beside(word, &holes, FEW_WORDS)),
            least,
            perhaps,
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

    /// How many may be asked for: a number that may as well be a size.
    pub(super) fn perhaps(&self) -> usize {
        self.perhaps
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
        let counts = self.least > 0 || self.perhaps > 0;
        let types = self.lags || self.wood_screws || self.masonry || self.sizes.are_named();
        !self.names_holes() && !types && !counts && !self.forbids
    }

    /// Whether a fastener in this wall is what the words ask for, its size as far as they name any.
    pub(super) fn of_kind(&self, kind: &Kind<'_>, framing: Option<&WallFraming>) -> Required {
        match self.of_fastener(kind.kind(), framing) {
            Required::Met if !self.sizes.fit(kind.diameter, kind.length) => Required::NotKnown,
            told => told,
        }
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
            // "Wood: screws as supplied" may ask for any.
            (false, _) if self.wood_screws && !lags && kind != FastenerKind::WoodScrew => Required::NotKnown,
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
            ("Wood screws must not be used", lag, &wood, Required::NotKnown),
            ("No. 10 wood screws", screw, &wood, Required::Met),
            ("No. 10 wood screws", lag, &wood, Required::NotKnown),
            ("No fewer than four lag screws", lag, &wood, Required::Met),
            ("Lag screws. Do not overtighten them.", lag, &wood, Required::Met),
            ("Do not overtighten or use wood screws", lag, &wood, Required::NotKnown),
            ("Drywall screws mustn't be used", lag, &wood, Required::NotKnown),
            ("Lag screws only; not for steel", lag, &wood, Required::Met),
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
    fn a_size_is_no_count_and_what_may_be_either_is_told() {
        for (text, least, perhaps) in [
            ("5/16 lag screws", 0, 0),
            ("3/8\" bolts", 0, 0),
            ("#10 screws", 0, 0),
            ("1/4 x 3 lag bolts", 0, 0),
            ("four 5/16\" lag screws", 4, 0),
            ("4 lag screws 5/16 x 3 in", 4, 0),
            ("No. 10 wood screws", 0, 0),
            ("No. 10 x 3 wood screws", 0, 0),
            ("Two 5/16 in. hex head lags, 6 in total", 2, 6),
            ("at least 6 fasteners", 6, 0),
            ("no fewer than six of the screws", 6, 0),
            ("M8 x 60 lag screws", 0, 0),
            ("8 x 60 mm lag screws", 0, 8),
            ("4 x 5/16 lag screws", 0, 4),
            ("Fix at 4 points with lags", 0, 4),
            ("lag screws (4)", 0, 4),
            ("Screws 8 x 60", 0, 0),
            ("two lag screws in one wood stud; not for steel", 2, 0),
            ("Two lag screws at the top and two lag screws at the bottom", 2, 4),
            ("Two lag screws per stud", 2, usize::MAX),
            ("4 lags in each stud", 4, usize::MAX),
            ("Lag screws, 4 in wall studs", 0, 4),
            ("", 0, 0),
        ] {
            let said = said(text);
            let asks = Asks::of(Some(&said));
            assert_eq!((asks.least(), asks.perhaps()), (least, perhaps), "{text}");
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
