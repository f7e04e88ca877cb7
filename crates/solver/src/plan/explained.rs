//! The working behind a piece's verdict: what `solve` works out and throws away, kept.

use crate::capacity::case::CaseName;
use crate::ledger::{Part, Step};
use crate::subject::{Id, Subject};

/// The working behind the verdict of one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Explained {
    /// The piece.
    pub piece: Id,
    /// The working, in the order of a hand calculation; empty where no hole takes a fastener, and where fasteners of
    /// more than one type were chosen by hand.
    pub sections: Vec<Section>,
    /// Every case, by its totals, in the order of the cases; empty where a load is not measured.
    pub cases: Vec<CaseTotals>,
}

impl Explained {
    /// Where there is nothing to work out.
    #[must_use]
    pub fn nothing(piece: Id) -> Self {
        Self { piece, sections: Vec::new(), cases: Vec::new() }
    }

    /// Its first section of a kind.
    #[must_use]
    pub fn section(&self, is: impl Fn(&About) -> bool) -> Option<&Section> {
        self.sections.iter().find(|section| is(&section.about))
    }
}

/// A part of a working.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// What it works out.
    pub about: About,
    /// How, one step after the other; never empty.
    pub steps: Vec<Step>,
}

/// What a part of a working works out.
#[derive(Clone, Debug, PartialEq)]
pub enum About {
    /// What a case of load comes to.
    Case(CaseName),
    /// What one fastener carries.
    Carries(Part),
    /// How the fasteners stand as a group.
    Group,
    /// What a case turns the plate with that no published value carries.
    Uncarried(CaseName),
    /// What its worst case asks of the fastener in a hole, and how much of it that uses.
    Asked {
        /// The hole.
        hole: Subject,
        /// The case.
        case: CaseName,
        /// Whether it governs the verdict.
        governs: bool,
    },
    /// The lead hole of each fastener.
    Lead,
    /// What each fastener needs round it.
    Needs,
    /// What the fastener in a hole has round it.
    Room(Subject),
}

/// A case of load by its totals.
#[derive(Clone, Debug, PartialEq)]
pub struct CaseTotals {
    /// What it is called.
    pub name: CaseName,
    /// All that bears down, newtons.
    pub down_n: f64,
    /// Its turning in the plane about the plate's middle, newton millimetres; positive where it bears to the right.
    pub in_plane_nmm: f64,
    /// Its turning out of the wall, newton millimetres.
    pub out_of_plane_nmm: f64,
    /// A pull straight out, newtons.
    pub out_n: Option<f64>,
    /// The hole whose fastener it uses most, and how much; `None` where no published value carries it.
    pub worst: Option<(Subject, f64)>,
}
