//! A place to strike or a thing to do, and how it is found with a tape.

use crate::geometry::{Direction, Point, Rect};
use crate::subject::{Id, Subject};
use crate::tape::Closing;
use crate::units::Length;

pub use crate::job::fact::How;

/// The part of the mark id of the probe that is asked for beside the plan.
pub const NEXT_PROBE: &str = "next_probe";

/// A place to strike on the wall, or a step without a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its subject and what is struck: `display-1.centre_line`. The same while its subject lives.
    pub id: Subject,
    /// The piece it belongs to.
    pub piece: Id,
    /// The stage of the work.
    pub stage: Stage,
    /// What is struck or done.
    pub what: MarkWhat,
    /// Where; `None` for a step without a place.
    pub place: Option<Point>,
    /// The line's two ends, left or lower first, where it is a line.
    pub line: Option<(Point, Point)>,
    /// The outline, where it is one.
    pub outline: Option<Rect>,
    /// How it is found.
    pub readings: Vec<Reading>,
    /// Whether its place hangs on an assumed value: do not strike.
    pub assumed: bool,
    /// Whether it goes on tape, since what hangs will not cover it.
    pub on_tape: bool,
    /// What was done here. What is struck, drilled or cut stands where it went.
    pub state: MarkState,
    /// Where the plan would have it now, where that is elsewhere by more than a graduation.
    pub planned: Option<Planned>,
    /// Whether the plan still asks for it: what was done is told also where it does not.
    pub is_needed: bool,
}

/// What was done at a mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkState {
    /// Nothing yet.
    ToDo,
    /// Done: a step that strikes nothing.
    Done,
    /// Drawn on the wall.
    Struck,
    /// Drilled.
    Drilled,
    /// Cut open.
    Cut,
    /// Drilled, and the fastener spins in it.
    Stripped,
}

/// Where the plan would have a mark that is elsewhere, and how that is found.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The place.
    pub place: Point,
    /// The line's two ends, left or lower first, where it is a line.
    pub line: Option<(Point, Point)>,
    /// How it is found.
    pub readings: Vec<Reading>,
}

impl Mark {
    /// Whether all is done here that is to be: a hole that is only struck is still to be drilled, where the plan still
    /// asks for it.
    #[must_use]
    pub fn is_finished(&self) -> bool {
        if !self.is_needed {
            return true;
        }
        match self.what {
            MarkWhat::Hole { .. } | MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage => {
                !matches!(self.state, MarkState::ToDo | MarkState::Struck)
            }
            _ => self.state != MarkState::ToDo,
        }
    }
}

/// A stage of the work, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Find what is behind the face.
    Find,
    /// Agree the place with the customer.
    Agree,
    /// Strike the level and centre lines.
    Level,
    /// Probe the studs to be used.
    Probe,
    /// Open the wall for cables.
    Open,
    /// Drill and fix the plate.
    Fix,
    /// Hang the piece.
    Hang,
}

/// What a mark strikes, or what a step does.
#[derive(Clone, Debug, PartialEq)]
pub enum MarkWhat {
    /// Sweep along this line for what is behind, at the height of the upper (or lower) hole row.
    Sweep {
        /// Whether it is the upper of the two.
        upper: bool,
    },
    /// A corner of the piece.
    Corner {
        /// An upper corner.
        top: bool,
        /// A corner on the left.
        left: bool,
    },
    /// The plate's top edge.
    LevelLine,
    /// The plate's middle.
    CentreLine,
    /// The piece's own middle, where it is not the plate's.
    PieceCentre,
    /// A mark struck only to measure another from.
    Help,
    /// Switch off the circuit or pass a tester.
    MakeSafe,
    /// Probe a stud at a hole.
    Probe {
        /// The hole.
        hole: Id,
        /// How deep; `None` where the thickness in front of the framing is not known.
        depth: Option<Length>,
        /// Whether the thickness was measured.
        thickness_measured: bool,
    },
    /// Look into the bay through a small hole inside the entry's outline.
    Look,
    /// Cut the opening behind the piece.
    Entry,
    /// Cut the opening where the cables come out.
    Exit,
    /// Open the face where the cables pass a stud or a block.
    Passage,
    /// Strike where the raceway on the wall's face ends.
    RacewayEnd,
    /// A hole of the plate.
    Hole {
        /// The hole.
        hole: Id,
        /// Whether it is the first to be fixed, from its reading; the others are struck through the plate.
        first: bool,
        /// Whether the plate is heavy enough to be held by a ledger or a second person.
        held: bool,
    },
    /// Draw the cables through their way.
    Feed,
    /// Plug what no hand reaches later, the piece held off the wall.
    Plug,
    /// Lift the piece on and lock it.
    LiftOn,
    /// Plug the rest, switch on and try every cable.
    Test,
    /// Check gaps and level, take the tape off.
    Check,
}

/// How a mark is found with a tape: from which datum, how, which way, how much, and its closing check.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What it is measured from.
    pub from: ReadingDatum,
    /// How the tape is held.
    pub how: How,
    /// Which way it is read.
    pub direction: Direction,
    /// Where the reading is taken, on the other axis: the end of a level line, for one.
    pub at: Length,
    /// How much, exactly; never negative.
    pub value: Length,
    /// How much, in whole graduations of the plan's style.
    pub steps: i64,
    /// Whether the tape passes over something proud and must be kept taut.
    pub taut_over: Option<Id>,
    /// The check from the other side; `None` where there is none.
    pub close: Option<Close>,
}

/// What a reading is taken from.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadingDatum {
    /// The wall's left end.
    LeftEnd,
    /// The wall's right end.
    RightEnd,
    /// The floor under the mark.
    Floor,
    /// The control line.
    ControlLine,
    /// An edge of a feature.
    Edge(Subject),
    /// A line already struck, or a helping mark: its mark id.
    Struck(Subject),
    /// Nothing within reach: told from the wall's left end, or the floor, to be taken with help.
    Nothing,
}

/// The check of a reading from the other side.
#[derive(Clone, Debug, PartialEq)]
pub struct Close {
    /// What it is measured from.
    pub from: ReadingDatum,
    /// Which way it is read.
    pub direction: Direction,
    /// How much, exactly.
    pub value: Length,
    /// Both readings and the span in whole graduations.
    pub closing: Closing,
}
