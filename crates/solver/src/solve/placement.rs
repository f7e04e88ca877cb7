//! Step 3: where a piece's rules put it, and the plate's possible places.

use super::Notes;
use super::usual_size::usual_size;
use crate::finding::What;
use crate::geometry::{Frame, Point, Rect, Span};
use crate::job::mount::Mount;
use crate::job::option::Hanging;
use crate::job::piece::Piece;
use crate::job::place::{AcrossDatum, UpDown, UprightDatum};
use crate::job::rule::{AcrossRule, Follow, PieceHeight, UprightRule};
use crate::job::wall::Wall;
use crate::numeric::slope_angle;
use crate::plan::AssumedWhat;
use crate::plan::piece::PiecePlan;
use crate::plan::survey::Survey;
use crate::subject::{Id, Subject};
use crate::units::{Angle, Length};

/// What a piece is placed against.
pub(super) struct Surroundings<'a> {
    pub(super) wall: &'a Wall,
    pub(super) survey: &'a Survey,
    /// The pieces placed before.
    pub(super) placed: &'a [PiecePlan],
}

/// Where a piece goes.
pub(super) struct Placed {
    pub(super) outline: Rect,
    pub(super) ruled_centre: Point,
    pub(super) frame: Frame,
    pub(super) assumed: bool,
}

/// A sideways or upright place, and whether it hangs on something assumed.
type Place = (Length, bool);

/// Settles a piece by its rules and nudge; `None` where they name what is not there (yet).
pub(super) fn place(
    around: &Surroundings<'_>,
    hanging: &Hanging,
    piece: &Piece,
    notes: &mut Notes,
) -> Option<Placed> {
    let (width, height) = size(piece);
    let (x, x_assumed) = around.across(&hanging.across, width)?;
    let (y, roll, y_assumed) = around.upright(&hanging.upright, x, height)?;
    note_size(piece, width, height, notes);
    let size_assumed = piece.width.is_none() || piece.height.is_none();
    let centre = Point::new(x + hanging.nudge.right.length(), y + hanging.nudge.up.length());
    Some(Placed {
        outline: Rect::new(Span::about(centre.x, width), Span::about(centre.y, height)),
        ruled_centre: Point::new(x, y),
        frame: Frame { origin: centre, roll },
        assumed: size_assumed || x_assumed || y_assumed || notes.ground_assumed,
    })
}

/// A piece's width and height, measured or usual.
fn size(piece: &Piece) -> (Length, Length) {
    let (usual_width, usual_height) = usual_size(piece);
    (piece.width.unwrap_or(usual_width), piece.height.unwrap_or(usual_height))
}

/// Notes what was taken for a size not given, and a size of nothing.
fn note_size(piece: &Piece, width: Length, height: Length, notes: &mut Notes) {
    if width <= Length::default() || height <= Length::default() {
        notes.stop(piece.id.whole(), What::ZeroSize);
    }
    if piece.width.is_none() {
        notes.assume(piece.id.whole(), AssumedWhat::Width(width), true);
    }
    if piece.height.is_none() {
        notes.assume(piece.id.whole(), AssumedWhat::Height(height), true);
    }
}

impl Surroundings<'_> {
    /// The outline of a feature, a placed piece or the wall, and whether it was assumed.
    fn rect(&self, id: &Id) -> Option<(Rect, bool)> {
        if *id == self.wall.id {
            return Some((self.survey.outline, self.wall.width.is_none()));
        }
        if let Some(feature) = self.survey.features.iter().find(|feature| feature.id == *id) {
            return Some((feature.rect, feature.assumed));
        }
        self.placed.iter().find(|piece| piece.id == *id).map(|piece| (piece.outline, piece.assumed))
    }

    /// The place of a sideways datum.
    fn across_datum(&self, datum: &AcrossDatum) -> Option<Place> {
        match datum {
            AcrossDatum::LeftEnd => Some((Length::default(), false)),
            AcrossDatum::RightEnd => Some((self.survey.outline.right, self.wall.width.is_none())),
            AcrossDatum::Edge(edge) => {
                let (rect, assumed) = self.rect(&edge.id)?;
                Some(match edge.part_str() {
                    "left" => (rect.left, assumed),
                    "right" => (rect.right, assumed),
                    _ => (rect.centre().x, assumed),
                })
            }
        }
    }

    /// Where a rule puts a piece's middle sideways.
    fn across(&self, rule: &AcrossRule, width: Length) -> Option<Place> {
        match rule {
            AcrossRule::OnWall => Some((self.survey.outline.across().middle(), self.wall.width.is_none())),
            AcrossRule::On(id) => self.rect(id).map(|(rect, assumed)| (rect.centre().x, assumed)),
            AcrossRule::Between(a, b) => {
                let ((a, a_assumed), (b, b_assumed)) = (self.across_datum(a)?, self.across_datum(b)?);
                Some(((a + b) / 2.0, a_assumed || b_assumed))
            }
            AcrossRule::Beside { from, toward, by } => {
                let (edge, assumed) = self.across_datum(from)?;
                let sign = toward.unwrap_or_else(|| from.away()).sign();
                Some((edge + (*by + width / 2.0) * sign, assumed))
            }
        }
    }

    /// The height of an edge of a feature or placed piece, at a place along the wall.
    fn upright_edge(&self, edge: &Subject, x: Length) -> Option<Place> {
        if let Some(feature) = self.survey.features.iter().find(|feature| feature.id == edge.id) {
            let (bottom, top) = (feature.bottom_at(x), feature.top_at(x));
            let y = match edge.part_str() {
                "bottom" => bottom,
                "top" => top,
                _ => (bottom + top) / 2.0,
            };
            return Some((y, feature.assumed));
        }
        let (rect, assumed) = self.rect(&edge.id)?;
        let y = match edge.part_str() {
            "bottom" => rect.bottom,
            "top" => rect.top,
            _ => rect.centre().y,
        };
        Some((y, assumed))
    }

    /// Where a rule puts a piece's middle up and down, and how far it turns it.
    fn upright(&self, rule: &UprightRule, x: Length, height: Length) -> Option<(Length, Angle, bool)> {
        let middle_from = |of: PieceHeight, y: Length| match of {
            PieceHeight::Top => y - height / 2.0,
            PieceHeight::Centre => y,
            PieceHeight::Bottom => y + height / 2.0,
        };
        match rule {
            UprightRule::Height { of, from, toward, by } => {
                let (datum, assumed) = match from {
                    UprightDatum::Floor => (self.survey.floor.y_at(x), false),
                    UprightDatum::ControlLine => (self.survey.control_line_y?, false),
                    UprightDatum::Edge(edge) => self.upright_edge(edge, x)?,
                };
                let sign = toward.unwrap_or_else(|| from.away()).sign();
                Some((middle_from(*of, datum + *by * sign), Angle::default(), assumed))
            }
            UprightRule::Gap { side, of, by, follow } => {
                let (part, sign) = match side {
                    UpDown::Up => ("top", 1.0),
                    UpDown::Down => ("bottom", -1.0),
                };
                let (edge, assumed) = self.upright_edge(&of.part(part), x)?;
                let roll = match follow {
                    Follow::TrueLevel => Angle::default(),
                    Follow::SplitTheDifference => self.half_slope(of, *side),
                };
                Some((edge + (*by + height / 2.0) * sign, roll, assumed))
            }
            UprightRule::Aligned { of, with } => {
                let (y, assumed) = self.upright_edge(with, x)?;
                Some((middle_from(*of, y), Angle::default(), assumed))
            }
        }
    }

    /// Half of what an edge is out of level; level for anything but a crooked feature.
    fn half_slope(&self, id: &Id, side: UpDown) -> Angle {
        let Some(feature) = self.survey.features.iter().find(|feature| feature.id == *id) else {
            return Angle::default();
        };
        let ends = match side {
            UpDown::Up => feature.top_ends,
            UpDown::Down => feature.bottom_ends,
        };
        let run_mm = feature.rect.width().mm();
        if ends.0 == ends.1 || run_mm <= 0.0 {
            return Angle::default();
        }
        slope_angle((ends.1 - ends.0).mm() / run_mm) / 2.0
    }
}

/// From the piece's top down to the plate's top: measured, or by the pattern and the hooks, or a quarter of
/// the piece's height (chosen, assumed). An arm's droop takes the plate up by as much.
pub(super) fn drop(piece: &Piece, mount: &Mount, height: Length, notes: &mut Notes) -> (Length, bool) {
    let droop = mount.arm.as_ref().and_then(|arm| arm.droop).unwrap_or_default();
    let by_pattern = || {
        let down = piece.pattern.as_ref()?.down?;
        Some(down - mount.hook_rise?.length())
    };
    match mount.drop.or_else(by_pattern) {
        Some(drop) => (drop - droop, false),
        None => {
            let usual = height / 4.0;
            notes.assume(mount.id.whole(), AssumedWhat::Drop(usual), true);
            (usual - droop, true)
        }
    }
}
