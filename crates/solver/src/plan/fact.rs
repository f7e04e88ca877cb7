//! What was done, and where on the wall it stands now.

use crate::geometry::{Point, Rect, Span};
use crate::handbook::boxes;
use crate::job::fact::{CutSize, FactState};
use crate::subject::{Id, Subject};
use crate::units::Length;

/// Something struck, drilled or cut where it stands now.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedFact {
    /// The fact.
    pub id: Id,
    /// Its mark.
    pub mark: Subject,
    /// The option it was done in; `None` where the wall had none.
    pub option: Option<Id>,
    /// Whether that is the plan's own option: it binds there.
    pub is_own: bool,
    /// What was done.
    pub state: FactState,
    /// The fastener of the kit that a hole was drilled for, where that is known.
    pub fastener: Option<Id>,
    /// Where it is; of a level line its left end. `None` of a step without a place.
    pub place: Option<Point>,
    /// The right end of a line that was read at both ends.
    pub right_end: Option<Point>,
    /// How large an opening is as it was cut; `None` of anything else, or where that is not known.
    pub size: Option<CutSize>,
}

impl PlacedFact {
    /// What is cut out of the face; `None` where nothing was cut. Two gangs where its size is not known: of the usual
    /// ones the larger.
    #[must_use]
    pub fn opening(&self) -> Option<Rect> {
        let place = self.place.filter(|_| self.state == FactState::Cut)?;
        let (width, height) = boxes::TWO_GANG_IN.value;
        let usual = CutSize { width: Length::inches(width), height: Length::inches(height) };
        let size = self.size.unwrap_or(usual);
        Some(Rect::new(Span::about(place.x, size.width), Span::about(place.y, size.height)))
    }
}
