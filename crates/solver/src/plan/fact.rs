//! What was done, and where on the wall it stands now.

use crate::geometry::Point;
use crate::job::fact::FactState;
use crate::subject::{Id, Subject};

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
}
