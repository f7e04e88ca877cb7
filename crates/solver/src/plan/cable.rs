//! The way of a piece's cables: entry, run, exit, what it crosses, what it costs, and what else would do.

use crate::geometry::{Point, Rect};
use crate::job::hidden::HiddenKind;
use crate::job::kit::Signal;
use crate::ledger::Given;
use crate::route::{Cost, Zone};
use crate::subject::Id;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

/// The way of a piece's cables.
#[derive(Clone, Debug, PartialEq)]
pub struct CablePlan {
    /// Whether the way is allowed by all that is known; `None` where that hangs on what is not known, or no cable of
    /// low voltage is used.
    pub allowed: Option<bool>,
    /// The way; `None` where no cable of low voltage is used, or no way leads anywhere.
    pub way: Option<Way>,
    /// The next best, the best first.
    pub alternatives: Vec<Way>,
    /// The cables of low voltage, in the order of the ports.
    pub leads: Vec<Lead>,
    /// The ports of power that are used: their cords never go into the wall.
    pub power: Vec<Id>,
    /// What stands in the straight drop from the ports, where the way goes another way or through it.
    pub in_the_way: Option<Id>,
    /// What the piece hides of the wall, tilted as far as it tilts.
    pub hidden: Rect,
    /// The same while it is swung straight out; `None` for what does not swing. Empty where nothing is hidden then.
    pub hidden_swung: Option<Rect>,
    /// Where the middle of the entry may be, in any bay.
    pub entry_zone: Zone,
    /// Where the middle of the exit may be, in any bay under the piece or beside it.
    pub exit_zone: Zone,
    /// The outlet or box that the exit is to be beside.
    pub beside: Option<Id>,
    /// Whether the studs beside the way are known; of a way on the face nothing hangs on them.
    pub framing_known: bool,
    /// What else nobody knows that the way inside the wall hangs on, each once.
    pub unknown: Vec<Unknown>,
    /// Whether studs may be bored: it was asked for, and the rule allows the hole as it is drilled.
    pub may_bore: bool,
    /// What the wall is opened for: behind the piece, and at the exit.
    pub openings: [OpeningSize; 2],
    /// The hole that a stud would need, where one is bored.
    pub bore: Given<Length>,
    /// What a stud here may lose; `None` where it is no wood stud of known depth.
    pub stud: Option<StudLimits>,
    /// From the wall to the piece's back; `None` where nobody measured it.
    pub stand_off: Option<Length>,
}

impl CablePlan {
    /// Whether where the face would be opened hangs on studs of which too little is known.
    #[must_use]
    pub fn opens_blind(&self) -> bool {
        !self.framing_known || self.unknown.iter().any(Unknown::hides_studs)
    }

    /// Whether a cord of power would be led inside the wall: nothing is opened for that.
    #[must_use]
    pub fn leads_cord_inside(&self) -> bool {
        self.way.as_ref().is_some_and(|way| way.by == WayBy::InWall) && self.leads.iter().any(Lead::is_cord)
    }
}

/// What nobody knows that a way inside the wall hangs on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unknown {
    /// What the wall, or the chimney breast, is built of.
    Framing(Id),
    /// How wide the flange of its steel studs is.
    Flange,
    /// Whether a hidden thing that is passed is where it is supposed.
    Supposed(Id),
    /// How large the hole is that a stud loses.
    Bore,
    /// Whether the wall is fire-rated: a neighbour's is beyond it.
    FireRating,
    /// Where the flue runs in the chimney breast.
    Flue(Id),
}

impl Unknown {
    /// Whether it leaves open how far the studs reach.
    #[must_use]
    pub fn hides_studs(&self) -> bool {
        matches!(self, Self::Framing(_) | Self::Flange)
    }
}

/// The size of an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpeningSize {
    /// Its width.
    pub width: Given<Length>,
    /// Its height.
    pub height: Given<Length>,
    /// How deep what goes in is; `None` for what has no depth, or none that is known.
    pub depth: Option<Length>,
}

/// What published rules let a wood stud lose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StudLimits {
    /// The largest bored hole.
    pub bore: Given<Length>,
    /// The largest one in its middle that wants no steel plate.
    pub without_plate: Given<Length>,
    /// The deepest notch.
    pub notch: Given<Length>,
}

/// One way.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Where it goes.
    pub by: WayBy,
    /// The opening behind the piece; `None` on the face.
    pub entry: Option<Rect>,
    /// The opening where the cables come out; on the face the place where they end, without size.
    pub exit: Rect,
    /// Its corners, from the entry's middle (on the face from the ports) to the exit's.
    pub run: Vec<Point>,
    /// What it costs.
    pub cost: Cost,
    /// What it goes through, from the entry on.
    pub crosses: Vec<Crosses>,
    /// What of it is not allowed.
    pub against: Vec<Against>,
    /// Whether it ends in the bay of what it should end beside.
    pub in_bay: bool,
}

/// Where a way goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayBy {
    /// Inside the wall.
    InWall,
    /// On its face, in a raceway.
    OnFace,
}

/// What a way goes through.
#[derive(Clone, Debug, PartialEq)]
pub enum Crosses {
    /// A stud that is bored for it: where.
    Stud(Point),
    /// Something hidden, where: a fire block, an opening in a steel stud, or a cable that it goes past.
    Hidden(Id, HiddenKind, Point),
    /// What fills the bay.
    Insulation,
}

impl Crosses {
    /// Where the face is opened to get through; `None` for what is only gone past.
    #[must_use]
    pub fn passage(&self) -> Option<Point> {
        match self {
            Self::Stud(at) | Self::Hidden(_, HiddenKind::FireBlock | HiddenKind::StudOpening, at) => {
                Some(*at)
            }
            Self::Hidden(..) | Self::Insulation => None,
        }
    }
}

impl Lead {
    /// Whether it is a cord of power, which goes neither into a wall nor on to its face.
    #[must_use]
    pub fn is_cord(&self) -> bool {
        self.signal == Some(Signal::Power)
    }
}

/// What is not allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// A stud is bored that may not be, or not so wide.
    Bore,
    /// A steel stud is passed: only a factory opening in it lets a cable through, and nobody sees where one is.
    Steel,
    /// A cable that is not listed for it runs in the wall.
    Unlisted,
    /// A flexible cord runs in the wall or on its face.
    Cord,
    /// The face was not to be used.
    Face,
    /// Another bay than the one asked for.
    Bay,
    /// The entry was asked for where the wall may not be opened.
    EntryPlace,
    /// The exit was asked for where the wall may not be opened.
    ExitPlace,
}

/// One cable of low voltage.
#[derive(Clone, Debug, PartialEq)]
pub struct Lead {
    /// The wish that asks for it; its port where no wish does.
    pub id: Id,
    /// Its port.
    pub port: Id,
    /// The outlet or box that it should end beside.
    pub beside: Option<Id>,
    /// What it carries, where told.
    pub signal: Option<Signal>,
    /// Its outside diameter.
    pub outside: Given<Length>,
    /// The width of its larger plug.
    pub plug: Given<Length>,
    /// The least radius that it may be bent to.
    pub bend: Given<Length>,
    /// Whether it is listed for inside a wall.
    pub in_wall: Option<bool>,
    /// How far it carries what it carries.
    pub longest: Option<Given<Length>>,
    /// The way from its port to where it should end; `None` without a way.
    pub length: Option<Given<Length>>,
    /// What is left over at the port: the plug's own reach and the mount's travel in it.
    pub slack_above: Given<Length>,
    /// How far the plug stands out with the start of its cable.
    pub plug_reach: Given<Length>,
    /// How far the mount carries the port from where it hangs: an arm's reach, and what it comes down.
    pub travel: Given<Length>,
    /// What is left over at the other end.
    pub slack_below: Given<Length>,
    /// How long it has to be at least; `None` without a way.
    pub needs: Option<Length>,
    /// The length to cut: stocked where one is long enough, else exactly what is needed.
    pub cut_length: Option<Length>,
    /// The stocked cable that is taken; `None` where none of the kit is long enough, or nobody said how long they are.
    pub stock: Option<Id>,
    /// Whether the kit has cables that it could be, and none is long enough.
    pub stock_short: bool,
    /// Whether no hand reaches its port once the piece hangs.
    pub before_lift: bool,
    /// What it needs between the piece's back and the wall.
    pub depth_needed: Given<Length>,
    /// Whether its plug was not measured: which way it points, or how far it stands out.
    pub plug_unknown: bool,
}

impl CablePlan {
    /// The longest way of its cables, and the length to cut of that cable.
    #[must_use]
    pub fn longest(&self) -> (Option<Length>, Option<Length>) {
        let length = |lead: &&Lead| lead.length.map_or(f64::NEG_INFINITY, |length| length.value.mm());
        let longest = self.leads.iter().max_by(|a, b| length(a).total_cmp(&length(b)));
        let of = |lead: &Lead| (lead.length.map(|length| length.value), lead.cut_length);
        longest.map_or((None, None), of)
    }

    /// Whether the wall is opened out of sight for its cables of low voltage; `None` where none is used.
    #[must_use]
    pub fn entry_hidden(&self) -> Option<bool> {
        let entry = self.way.as_ref().and_then(|way| way.entry);
        (!self.leads.is_empty()).then(|| entry.is_some_and(|entry| hides(self.hidden, entry)))
    }
}

/// Whether what is hidden of a wall has all of an opening, but for what places may differ by that are one.
#[must_use]
pub fn hides(hidden: Rect, opening: Rect) -> bool {
    hidden.grown(Length::millimetres(SAME_PLACE_MM)).encloses(opening)
}
