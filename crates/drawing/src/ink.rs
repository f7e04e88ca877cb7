//! What a stroke, fill or text means. Never a colour: each painter has its own palette.

use strikeline_solver::plan::piece::Meets;

/// The meaning of a stroke, a fill or a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// The wall's face.
    WallFace,
    /// An end or the upper edge of the wall.
    WallEdge,
    /// An end of the wall that is open: nothing to measure from.
    OpenEnd,
    /// The floor line.
    Floor,
    /// The hatch under the floor line.
    Ground,
    /// The control line.
    ControlLine,
    /// A feature flush with its plane.
    Feature,
    /// A feature that stands proud of its plane.
    FeatureProud,
    /// What tells one feature from another: panes, slots, louvres.
    FeatureDetail,
    /// Something hidden in the wall.
    Hidden,
    /// The hatch of something hidden.
    Hatch,
    /// The face of an upright, behind the wall's face.
    Lumber,
    /// The same where a probe met it.
    LumberMet,
    /// An upright's centre line.
    LumberCentre,
    /// Where an upright's middle may be: its doubt.
    LumberDoubt,
    /// A hit.
    Hit,
    /// The outline of a piece.
    Piece,
    /// What tells one piece from another.
    PieceDetail,
    /// The face of a piece as the customer sees it.
    PieceFace,
    /// The picture of a display as the customer sees it.
    Picture,
    /// A corner of a piece, on tape.
    PieceTape,
    /// A bracket on the back of a display.
    Bracket,
    /// A solid part of a plate.
    Plate,
    /// A hole or slot of a plate, by what it meets.
    Hole(Meets),
    /// A port of a display.
    Port,
    /// The opening for cables behind a piece.
    Entry,
    /// The way of the cables inside the wall.
    CableRun,
    /// A line struck on the wall.
    ChalkLine,
    /// What is struck, drilled or cut already.
    Done,
    /// A mark that is not a line of its own: a hole's, a probe's, a helping mark.
    Mark,
    /// A line along which the wall is swept.
    Sweep,
    /// Dimension lines.
    Dimension,
    /// Extension lines, which run over what they come from.
    Extension,
    /// The tick at either end of a dimension line.
    DimensionTick,
    /// A dimension's figure.
    DimensionText,
    /// A name on the drawing.
    Label,
    /// What is kept free of lines under a name or a figure on the wall.
    LabelGround,
    /// The same on what stands proud of it.
    LabelGroundProud,
    /// The same off the wall.
    LabelGroundOff,
    /// The frame and the scale bar of a sheet.
    Sheet,
    /// The title and the notes of a sheet.
    SheetText,
}

/// How a line is broken. Lengths are paper millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Unbroken.
    Solid,
    /// What lies behind, or is assumed.
    Dashed,
    /// A centre line.
    DashDot,
}

impl Pattern {
    /// Strokes and gaps in turn, in paper millimetres; empty for an unbroken line.
    ///
    /// About the 12 and 3 widths of a dash and its gap in ISO 128-20 (from memory) at 0.25 mm.
    #[must_use]
    pub fn dashes_mm(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Dashed => &[3.0, 1.0],
            Self::DashDot => &[6.0, 1.0, 0.5, 1.0],
        }
    }
}

/// Thin: dimensions, hatch, detail. The series 0.25, 0.35, 0.5, 0.7 mm is that of ISO 128, as a handbook
/// gives it.
const THIN_MM: f64 = 0.25;
/// Narrow: what is seen in elevation.
const NARROW_MM: f64 = 0.35;
/// Medium: what stands proud, plates and holes.
const MEDIUM_MM: f64 = 0.5;
/// Wide, twice the narrow: the wall's outline, the piece, the lines to strike.
const WIDE_MM: f64 = 0.7;

impl Ink {
    /// How wide its lines are, in paper millimetres.
    #[must_use]
    pub fn width_mm(self) -> f64 {
        match self {
            Self::WallEdge | Self::Floor | Self::Piece | Self::ChalkLine | Self::Done => WIDE_MM,
            Self::FeatureProud
            | Self::PieceFace
            | Self::LumberMet
            | Self::Plate
            | Self::PieceTape
            | Self::DimensionTick
            | Self::Mark => MEDIUM_MM,
            Self::OpenEnd
            | Self::Feature
            | Self::Hidden
            | Self::Lumber
            | Self::Hit
            | Self::Hole(_)
            | Self::Port
            | Self::Entry
            | Self::CableRun
            | Self::Sheet => NARROW_MM,
            Self::WallFace
            | Self::Picture
            | Self::Ground
            | Self::ControlLine
            | Self::FeatureDetail
            | Self::Hatch
            | Self::LumberCentre
            | Self::LumberDoubt
            | Self::PieceDetail
            | Self::Bracket
            | Self::Sweep
            | Self::Dimension
            | Self::Extension
            | Self::DimensionText
            | Self::Label
            | Self::LabelGround
            | Self::LabelGroundProud
            | Self::LabelGroundOff
            | Self::SheetText => THIN_MM,
        }
    }

    /// Whether what it fills stays as it is when it is lit: the outline then says it.
    #[must_use]
    pub fn keeps_fill(self) -> bool {
        matches!(
            self,
            Self::WallFace
                | Self::Lumber
                | Self::LumberMet
                | Self::LumberDoubt
                | Self::LabelGround
                | Self::LabelGroundProud
                | Self::LabelGroundOff
        )
    }

    /// How its lines are broken where nothing is assumed.
    #[must_use]
    pub fn pattern(self) -> Pattern {
        match self {
            Self::OpenEnd | Self::Hidden | Self::Lumber | Self::Bracket | Self::CableRun | Self::Sweep => {
                Pattern::Dashed
            }
            Self::LumberCentre | Self::ControlLine => Pattern::DashDot,
            _ => Pattern::Solid,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wide_is_twice_narrow_and_what_is_behind_is_broken() {
        // Wide to narrow 2 : 1, a handbook on ISO 128.
        assert_eq!(Ink::WallEdge.width_mm(), 2.0 * Ink::Feature.width_mm());
        assert_eq!(Ink::Lumber.pattern(), Pattern::Dashed);
        assert_eq!(Ink::Feature.pattern().dashes_mm(), &[] as &[f64]);
    }
}
