//! What can be added at a place of the wall.

use crate::moves::things::NewThing;
use strikeline_solver::job::feature::FeatureKind as F;
use strikeline_solver::job::hidden::HiddenKind as H;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::words;

/// A list of kinds that the menu opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kinds {
    /// What is seen on the wall.
    Features,
    /// What is in the wall.
    Hidden,
    /// Readings of what is behind the face.
    Hits,
}

/// The features, those that most walls have first.
const FEATURES: [F; 18] = [
    F::Window,
    F::Door,
    F::Outlet,
    F::Switch,
    F::Vent,
    F::Mantel,
    F::Shelf,
    F::Bench,
    F::Baseboard,
    F::Crown,
    F::Trim,
    F::Curtain,
    F::Thermostat,
    F::Radiator,
    F::Soffit,
    F::Panelling,
    F::ChimneyBreast,
    F::Other,
];

/// The hidden things, those that most walls have first.
const HIDDEN: [H; 11] = [
    H::FireBlock,
    H::Pipe,
    H::Cable,
    H::Drain,
    H::Duct,
    H::Flue,
    H::Header,
    H::Brace,
    H::PocketDoor,
    H::BoxBehind,
    H::Other,
];

/// The hits, in the order in which a wall is searched.
const HITS: [(HitKind, &str); 8] = [
    (HitKind::Centre, "detector: stud's centre"),
    (HitKind::LeftEdge, "detector: stud's left edge"),
    (HitKind::RightEdge, "detector: stud's right edge"),
    (HitKind::Magnet, "magnet on a screw"),
    (HitKind::Wood, "probe: wood"),
    (HitKind::Air, "probe: air"),
    (HitKind::ShallowWood, "probe: shallow wood"),
    (HitKind::Metal, "probe: metal"),
];

impl Kinds {
    /// All lists, in the menu's order.
    pub(super) const ALL: [Self; 3] = [Self::Features, Self::Hidden, Self::Hits];

    /// The entry that opens it.
    pub(super) fn words(self) -> &'static str {
        match self {
            Self::Features => "Add here, on the wall\u{2026}",
            Self::Hidden => "Add here, in the wall\u{2026}",
            Self::Hits => "Add a hit here\u{2026}",
        }
    }

    /// Its entries.
    pub(super) fn entries(self) -> Vec<(NewThing, String)> {
        let text = |words: &str| {
            let mut rest = words.chars();
            rest.next().into_iter().flat_map(char::to_uppercase).chain(rest).collect::<String>()
        };
        match self {
            Self::Features => {
                FEATURES.map(|kind| (NewThing::Feature(kind), text(words::feature_kind(kind)))).to_vec()
            }
            Self::Hidden => {
                HIDDEN.map(|kind| (NewThing::Hidden(kind), text(words::hidden_kind(kind)))).to_vec()
            }
            Self::Hits => HITS.map(|(kind, words)| (NewThing::Hit(kind), text(words))).to_vec(),
        }
    }
}
