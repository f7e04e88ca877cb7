//! The colours of the paper: graphite, chalk blue for what is struck, lumber for wood, one warm accent.

use crate::ink::Ink;
use crate::scene::{Item, ItemKind, Lit};
use std::fmt;
use strikeline_solver::plan::piece::Meets;

/// A colour, as shares of red, green and blue of 255 each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub u8, pub u8, pub u8);

/// As SVG has it: `#24272b`.
impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(red, green, blue) = self;
        write!(f, "#{red:02x}{green:02x}{blue:02x}")
    }
}

/// The sheet.
pub const PAPER: Colour = Colour(0xff, 0xff, 0xff);

const GRAPHITE: Colour = Colour(0x24, 0x27, 0x2b);
/// Dimensions, details, names.
const PENCIL: Colour = Colour(0x56, 0x5c, 0x63);
/// Extension lines.
const RULE: Colour = Colour(0x7d, 0x83, 0x8a);
/// Hatches and what is assumed.
const PALE: Colour = Colour(0x88, 0x8e, 0x95);
/// Text of what is assumed.
const ASSUMED: Colour = Colour(0x6c, 0x72, 0x79);
const CHALK: Colour = Colour(0x1f, 0x5f, 0xa8);
const CHALK_PALE: Colour = Colour(0x62, 0x90, 0xc2);
/// What is done.
const DONE: Colour = Colour(0x0f, 0x76, 0x6e);
const LUMBER: Colour = Colour(0xa9, 0x77, 0x3f);
const LUMBER_TINT: Colour = Colour(0xf5, 0xea, 0xd9);
const LUMBER_DOUBT: Colour = Colour(0xec, 0xd8, 0xb9);
const FACE: Colour = Colour(0xfd, 0xfd, 0xfc);
const PROUD: Colour = Colour(0xf4, 0xf4, 0xf2);
const PLATE: Colour = Colour(0xe2, 0xe5, 0xe9);
/// A display that is off.
const GLASS: Colour = Colour(0x33, 0x38, 0x3f);
const TAPE: Colour = Colour(0x6b, 0x7a, 0x3a);
/// What is selected or held, and what a fastener must not meet.
const ACCENT: Colour = Colour(0xc2, 0x41, 0x0c);
const ACCENT_TINT: Colour = Colour(0xfb, 0xe3, 0xd6);

/// How an item is painted.
pub struct Paint {
    /// Its lines and text.
    pub stroke: Colour,
    /// What fills it.
    pub fill: Colour,
}

/// The colours of an item.
#[must_use]
pub fn paint(item: &Item) -> Paint {
    let (stroke, fill) = plain(item.ink);
    let stays = item.ink.keeps_fill();
    match (item.lit, item.assumed) {
        (Lit::No, false) => Paint { stroke, fill },
        (Lit::No, true) if matches!(item.kind, ItemKind::Text { .. }) => Paint { stroke: ASSUMED, fill },
        (Lit::No, true) => Paint { stroke: paler(stroke), fill },
        // The wall's face and lumber keep their tint when lit: their outline says it.
        (Lit::Selected | Lit::Held, _) if stays => Paint { stroke: ACCENT, fill },
        (Lit::Selected | Lit::Held, _) => {
            Paint { stroke: ACCENT, fill: if fill == stroke { ACCENT } else { ACCENT_TINT } }
        }
    }
}

fn paler(stroke: Colour) -> Colour {
    if stroke == CHALK { CHALK_PALE } else { PALE }
}

fn plain(ink: Ink) -> (Colour, Colour) {
    match ink {
        Ink::WallFace | Ink::LabelGround => (FACE, FACE),
        Ink::LabelGroundProud => (PROUD, PROUD),
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
        Ink::PieceFace | Ink::Plate => (GRAPHITE, PLATE),
        Ink::Picture => (GRAPHITE, GLASS),
        Ink::Hole(meets) => match meets {
            Meets::Hidden | Meets::OffWall => (ACCENT, ACCENT),
            Meets::Stud | Meets::StudEdge | Meets::Board | Meets::Masonry | Meets::NotKnown => {
                (GRAPHITE, GRAPHITE)
            }
        },
        Ink::Port | Ink::CableRun | Ink::Dimension | Ink::DimensionTick | Ink::Label => (PENCIL, PENCIL),
        Ink::Extension => (RULE, RULE),
        Ink::Entry => (PENCIL, PAPER),
        Ink::ChalkLine | Ink::Mark => (CHALK, CHALK),
        Ink::Done => (DONE, DONE),
        Ink::Sweep | Ink::ControlLine => (CHALK_PALE, CHALK_PALE),
    }
}
