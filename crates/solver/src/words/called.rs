//! How a thing is called, and whether its words end so that `'s` cannot follow.

use super::phrase::one_line;
use super::things::{ordinal, piece_kind};
use crate::geometry::Point;
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::subject::Id;

/// Things whose middles are no farther apart sideways stand one above another (chosen: less than a narrow bay).
const BESIDE_MM: f64 = 150.0;

/// How a thing is called, and whether its words end so that `'s` cannot follow.
pub(super) struct Called {
    pub(super) words: String,
    counted: bool,
}

impl Called {
    pub(super) fn plain(words: String) -> Self {
        Self { words, counted: false }
    }

    /// A part of it: `the door's left trim`, or `the left trim of the 3rd door from the left`.
    pub(super) fn own(&self, part: &str) -> String {
        if self.counted {
            format!("the {part} of {}", self.words)
        } else if self.words.ends_with('s') {
            format!("{}' {part}", self.words)
        } else {
            format!("{}'s {part}", self.words)
        }
    }

    /// Its words without the article, as after a colon or a number.
    pub(super) fn bare(&self) -> &str {
        self.words.strip_prefix("the ").unwrap_or(&self.words)
    }

    /// A piece.
    pub(super) fn piece(plan: &Plan, piece: &PiecePlan) -> Self {
        let alike = plan.pieces.iter().filter(|other| other.kind == piece.kind && other.name.is_empty());
        let alike = alike.map(|other| (&other.id, other.outline.centre())).collect();
        Self::by_kind(piece_kind(piece.kind), &piece.name, &piece.id, alike)
    }

    /// By its name, else by its kind: of several by their number from the left, and of those one above another by their
    /// height.
    pub(super) fn by_kind(kind: &str, name: &str, id: &Id, mut alike: Vec<(&Id, Point)>) -> Self {
        let name = one_line(name);
        if !name.is_empty() {
            return Self::plain(name);
        }
        alike.sort_by(|(_, a), (_, b)| a.x.mm().total_cmp(&b.x.mm()));
        // What stands one above another is one column.
        let mut columns: Vec<Vec<(&Id, Point)>> = Vec::new();
        for one in alike {
            let first = columns.last().and_then(|column| column.first());
            match (first.is_some_and(|(_, at)| (one.1.x - at.x).mm() < BESIDE_MM), columns.last_mut()) {
                (true, Some(column)) => column.push(one),
                _ => columns.push(vec![one]),
            }
        }
        for column in &mut columns {
            column.sort_by(|(_, a), (_, b)| a.y.mm().total_cmp(&b.y.mm()));
        }
        let place = |column: &Vec<(&Id, Point)>| column.iter().position(|(other, _)| *other == id);
        let found =
            columns.iter().enumerate().find_map(|(at, column)| Some((at, column.len(), place(column)?)));
        let Some((at, high, up)) = found else { return Self::plain(format!("the {kind}")) };
        let upright = match (high, up) {
            (1, _) => kind.to_owned(),
            (2, 0) => format!("lower {kind}"),
            (2, _) => format!("upper {kind}"),
            _ => format!("{} {kind} from below", ordinal(up + 1)),
        };
        match (columns.len(), at) {
            (1, _) => Self { words: format!("the {upright}"), counted: high > 2 },
            (2, _) if high <= 2 => {
                Self::plain(format!("the {} {upright}", if at == 0 { "left" } else { "right" }))
            }
            _ if high == 1 => {
                Self { words: format!("the {} {kind} from the left", ordinal(at + 1)), counted: true }
            }
            _ => Self { words: format!("the {upright}, {} from the left", ordinal(at + 1)), counted: true },
        }
    }
}
