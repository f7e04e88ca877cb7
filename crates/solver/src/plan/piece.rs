//! A piece at its place, with its plate and what its holes meet.

use super::cable::CablePlan;
use super::verdict::Fastening;
use crate::geometry::{Frame, Point, Rect};
use crate::job::mount::MountKind;
use crate::job::piece::PieceKind;
use crate::subject::{Id, Subject};
use crate::units::Length;

/// A piece at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PiecePlan {
    /// Its id.
    pub id: Id,
    /// The hanging that puts it there; empty for an assumed option.
    pub hanging: Id,
    /// What it is.
    pub kind: PieceKind,
    /// What it is called; empty where it has no name.
    pub name: String,
    /// Its outline before it is turned: see `frame`.
    pub outline: Rect,
    /// Where its rules put the middle of its outline, before the nudge.
    pub ruled_centre: Point,
    /// Its own middle, and how far it is turned from level.
    pub frame: Frame,
    /// The mount it hangs on, where it has one of its own.
    pub mount: Option<MountedPlan>,
    /// Where its ports are, in the order of the job.
    pub ports: Vec<PortPlan>,
    /// The way of its cables; `None` where no port is used.
    pub cable: Option<CablePlan>,
    /// The gaps around it.
    pub gaps: Gaps,
    /// Whether its place hangs on an assumed value.
    pub assumed: bool,
}

impl PiecePlan {
    /// Whether where its cables' openings are hangs on an assumed value, or on studs that nobody found.
    #[must_use]
    pub fn has_assumed_openings(&self) -> bool {
        self.assumed
            || self.mount.as_ref().is_some_and(|mount| mount.assumed || mount.holes_assumed)
            || self.cable.as_ref().is_some_and(CablePlan::opens_blind)
    }
}

/// A mount at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct MountedPlan {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: MountKind,
    /// The middle of the plate's top edge, and how far it is turned from level.
    pub frame: Frame,
    /// The plate's outline before it is turned.
    pub plate: Rect,
    /// The plate's solid parts before they are turned, in the order of the job.
    pub solids: Vec<Rect>,
    /// The display's brackets before they are turned; empty where not measured.
    pub brackets: Vec<Rect>,
    /// How far right of the plate's middle the piece's middle is.
    pub offset: Length,
    /// What its holes meet, round holes first, then slots, in the order of the job.
    pub holes: Vec<HolePlan>,
    /// The fasteners that hold it, and whether they do.
    pub fastening: Fastening,
    /// What the wish needs of the play.
    pub wish: Wish,
    /// The opening for its cables, where a port asks for one and there is room.
    pub entry: Option<Rect>,
    /// Where that would be were it not struck or cut already, where that is elsewhere.
    pub entry_wanted: Option<Rect>,
    /// How what was done holds it; `None` where nothing was.
    pub held: Option<Held>,
    /// Whether its place hangs on an assumed value.
    pub assumed: bool,
    /// Whether its holes are those of a usual plate, not of its own.
    pub holes_assumed: bool,
    /// Whether its middle was chosen by such holes.
    pub middle_assumed: bool,
}

impl MountedPlan {
    /// How many different studs are met by its holes.
    #[must_use]
    pub fn studs_met(&self) -> usize {
        let mut studs: Vec<usize> = self.holes.iter().filter_map(|hole| hole.stud).collect();
        studs.sort_unstable();
        studs.dedup();
        studs.len()
    }
}

/// How what was done holds a plate.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// By what.
    pub by: HeldBy,
    /// Whether it is held sideways.
    pub across: bool,
    /// Whether it is held up and down.
    pub upright: bool,
    /// Where the piece's middle would be if it were not.
    pub wished: Point,
    /// How far each drilled hole is from where the plate has its own, in the order of the plate.
    pub misfits: Vec<Misfit>,
}

/// What holds a plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldBy {
    /// Struck lines.
    Lines,
    /// Drilled holes.
    Holes,
}

/// How far a drilled hole is from where the plate has its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Misfit {
    /// The hole, as a subject.
    pub hole: Subject,
    /// To the right; negative to the left.
    pub right: Length,
    /// Up; negative down.
    pub up: Length,
}

impl Misfit {
    /// How far in all.
    #[must_use]
    pub fn by(&self) -> Length {
        Length::millimetres(crate::numeric::root(
            self.right.mm() * self.right.mm() + self.up.mm() * self.up.mm(),
        ))
    }
}

/// A hole or slot at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct HolePlan {
    /// Its id in the plate.
    pub id: Id,
    /// As a subject: `display-1.hole-3`.
    pub subject: Subject,
    /// Where a fastener goes through it.
    pub place: Point,
    /// The same from the plate's middle and top: right and up.
    pub in_plate: Point,
    /// What it meets.
    pub meets: Meets,
    /// Which stud of the framing, where it meets one with room to its edges.
    pub stud: Option<usize>,
    /// The hidden thing it would meet, where it would.
    pub hidden: Option<Id>,
    /// The chance that its fastener has all of its edge need in solid wood, 0 to 1; 0 where a probe met none there;
    /// `None` where nothing is known of the framing, or there is none.
    pub chance: Option<f64>,
    /// Whether it is met: a probe met wood in its stud within 150 mm of its height and the chance is as large as the
    /// job asks; on steel, its stud is met.
    pub met: bool,
}

/// What a hole meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meets {
    /// A stud, with room to both edges of its face.
    Stud,
    /// A stud, too near an edge of its face.
    StudEdge,
    /// What stands in front of the framing, and nothing behind.
    Board,
    /// Something hidden.
    Hidden,
    /// Masonry or concrete.
    Masonry,
    /// Nothing: it is off the wall, or over an opening.
    OffWall,
    /// Not known.
    NotKnown,
}

/// A port at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PortPlan {
    /// Its id.
    pub id: Id,
    /// What it is called; empty where not told.
    pub name: String,
    /// Where it is.
    pub place: Point,
    /// Whether the option uses it.
    pub used: bool,
}

/// What a wish needs of the play, and where else more studs can be had.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Wish {
    /// How many studs are met at the wished place.
    pub studs: usize,
    /// How many at the best place tried.
    pub most_studs: usize,
    /// How far the piece has to move left to meet `most_studs`, where that is more.
    pub left: Option<Length>,
    /// How far to the right.
    pub right: Option<Length>,
}

/// The gaps around a piece, to the nearest thing the eye sees on each side; `None` where there is nothing.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Gaps {
    /// To the left.
    pub left: Option<Gap>,
    /// To the right.
    pub right: Option<Gap>,
    /// Below, at the piece's left end and at its right end.
    pub below: Option<Gap>,
}

/// A gap from a piece's edge to a neighbour.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// The neighbour: an edge of a feature or piece, or the wall's end.
    pub to: Subject,
    /// How wide; for a gap below, under the piece's left end.
    pub from: Length,
    /// How wide at the piece's other end; the same as `from` for a straight gap.
    pub other: Length,
}
