//! The colours of the paper: graphite, chalk blue for what is struck, lumber for wood, one warm accent.

use crate::ink::Ink;
use crate::scene::{Item, Lit};
use strikeline_solver::plan::piece::Meets;

/// The sheet.
pub(super) const PAPER: &str = "#ffffff";

const GRAPHITE: &str = "#24272b";
/// Dimensions, details, names.
const PENCIL: &str = "#565c63";
/// Hatches and what is assumed.
const PALE: &str = "#9aa0a6";
const CHALK: &str = "#1f5fa8";
const CHALK_PALE: &str = "#7fa6d2";
/// What is done.
const DONE: &str = "#0f766e";
const LUMBER: &str = "#a9773f";
const LUMBER_TINT: &str = "#f5ead9";
const LUMBER_DOUBT: &str = "#ecd8b9";
const FACE: &str = "#fdfdfc";
const PROUD: &str = "#f4f4f2";
const PLATE: &str = "#e2e5e9";
const TAPE: &str = "#6b7a3a";
/// What is selected or held, and what a fastener must not meet.
const ACCENT: &str = "#c2410c";
const ACCENT_TINT: &str = "#fbe3d6";

/// How an item is painted.
pub(super) struct Paint {
    pub(super) stroke: &'static str,
    pub(super) fill: &'static str,
}

/// The colours of an item.
pub(super) fn paint(item: &Item) -> Paint {
    let (stroke, fill) = plain(item.ink);
    let stays = item.ink.keeps_fill();
    match (item.lit, item.assumed) {
        (Lit::No, false) => Paint { stroke, fill },
        (Lit::No, true) => Paint { stroke: paler(stroke), fill },
        // The wall's face and lumber keep their tint when lit: their outline says it.
        (Lit::Selected | Lit::Held, _) if stays => Paint { stroke: ACCENT, fill },
        (Lit::Selected | Lit::Held, _) => {
            Paint { stroke: ACCENT, fill: if fill == stroke { ACCENT } else { ACCENT_TINT } }
        }
    }
}

fn paler(stroke: &'static str) -> &'static str {
    if stroke == CHALK { CHALK_PALE } else { PALE }
}

fn plain(ink: Ink) -> (&'static str, &'static str) {
    match ink {
        Ink::WallFace | Ink::LabelGround => (FACE, FACE),
        Ink::LabelGroundOff => (PAPER, PAPER),
        Ink::WallEdge | Ink::Floor | Ink::Piece | Ink::Sheet | Ink::DimensionText | Ink::SheetText => {
            (GRAPHITE, GRAPHITE)
        }
        Ink::Feature | Ink::OpenEnd => (GRAPHITE, PAPER),
        Ink::FeatureProud => (GRAPHITE, PROUD),
        Ink::FeatureDetail | Ink::PieceDetail | Ink::Bracket => (PALE, PAPER),
        Ink::Ground | Ink::Hatch => (PALE, PALE),
        Ink::Hidden => (PENCIL, LUMBER_TINT),
        Ink::Lumber | Ink::LumberMet => (LUMBER, LUMBER_TINT),
        Ink::LumberCentre | Ink::Hit => (LUMBER, LUMBER),
        Ink::LumberDoubt => (LUMBER_DOUBT, LUMBER_DOUBT),
        Ink::PieceTape => (TAPE, TAPE),
        Ink::Plate => (GRAPHITE, PLATE),
        Ink::Hole(meets) => match meets {
            Meets::Hidden | Meets::OffWall => (ACCENT, ACCENT),
            Meets::Stud | Meets::StudEdge | Meets::Board | Meets::Masonry | Meets::NotKnown => {
                (GRAPHITE, GRAPHITE)
            }
        },
        Ink::Port | Ink::CableRun | Ink::Dimension | Ink::DimensionTick | Ink::Label => (PENCIL, PENCIL),
        Ink::Entry => (PENCIL, PAPER),
        Ink::ChalkLine | Ink::Mark => (CHALK, CHALK),
        Ink::Done => (DONE, DONE),
        Ink::Sweep | Ink::ControlLine => (CHALK_PALE, CHALK_PALE),
    }
}
