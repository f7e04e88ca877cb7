//! What to bring for a whole job, over the chosen options of all its walls, and what the kit runs short of.

mod cables;
mod fasteners;
mod screws;
mod tools;

pub use screws::{ScrewLength, ToMeasure};

use crate::job::Job;
use crate::job::kit::FastenerKind;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::verdict::EmptyWhy;
use crate::solve::{chosen_option, solve};
use crate::units::{Length, Mass};

/// A line of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct CarryLine {
    /// What to bring.
    pub what: Carried,
    /// How many; `None` of what is not counted.
    pub count: Option<usize>,
    /// What asks for it.
    pub why: Asks,
    /// How many the kit lacks; `None` where it has enough, or does not count them.
    pub short_by: Option<usize>,
}

/// Something to bring.
#[derive(Clone, Debug, PartialEq)]
pub enum Carried {
    /// Fasteners of a size; so many of them to spare.
    Fasteners {
        /// Their type.
        kind: FastenerKind,
        /// Their diameter.
        diameter: Length,
        /// Their length.
        length: Length,
        /// How many of the count are spares.
        spares: usize,
    },
    /// Anchors for holes over board, which no verdict counts; so many of them to spare.
    Anchors {
        /// Their diameter, where the kit says.
        diameter: Option<Length>,
        /// Their length, where the kit says.
        length: Option<Length>,
        /// How many of the count are spares.
        spares: usize,
    },
    /// What will hold a plate for which no fastener is chosen yet.
    NotChosen {
        /// In how many of its holes.
        holes: usize,
        /// What the mount is called; empty where it has no name.
        mount: String,
        /// What hangs on it.
        whose: Whose,
    },
    /// What a piece that hangs on no mount is fixed with.
    OwnFixings(Whose),
    /// Washers for fasteners.
    Washers {
        /// How thick.
        thick: Length,
        /// Whether nobody measured one: the verdict supposes it.
        supposed: bool,
    },
    /// A drill bit; one for masonry where so said.
    Bit {
        /// Its diameter.
        diameter: Length,
        /// Whether it is for concrete.
        masonry: bool,
    },
    /// A bit for masonry, as wide as a fastener asks of which no rule tells.
    BitToFit,
    /// An extension for bits.
    BitExtension,
    /// A hammer drill.
    HammerDrill,
    /// Sockets for hex heads, a ratchet or driver.
    Socket,
    /// Driver bits.
    DriverBits,
    /// A driver at a right angle.
    RightAngleDriver,
    /// A saw for openings in the face.
    Saw,
    /// A box or bracket of the kit, by its name.
    Box(String),
    /// A box or bracket for an opening of one or two gangs.
    Gang {
        /// Whether it is two gangs wide.
        two: bool,
    },
    /// Steel plates that keep nails off.
    NailPlates,
    /// A cable.
    Cable {
        /// What it is called; empty where nothing is stocked.
        name: String,
        /// How long it has to be, stocked or cut.
        length: Length,
        /// Whether that is a stocked length.
        stocked: bool,
    },
    /// A string that is left in the wall to draw more through.
    PullString,
    /// A tape to fish with.
    FishTape,
    /// A mirror to look into bays.
    Mirror,
    /// What openings and holes are made good with.
    Patch,
    /// An approved material to seal fire blocks with.
    FireSeal,
    /// Bushings for openings in steel studs.
    Bushings,
    /// Channel for the wall's face, so long in all.
    Channel(Length),
    /// The screws that hold a mount's brackets to a piece: the threads' diameter and the inserts' depth, where
    /// measured.
    PieceScrews {
        /// The diameter of the threads.
        thread: Option<Length>,
        /// How deep the inserts are.
        insert: Option<Length>,
        /// How long they are.
        length: ScrewLength,
    },
    /// Somebody to lift with.
    SecondPerson,
    /// A ledger to stand a plate on.
    Ledger,
    /// A tape measure.
    TapeMeasure,
    /// A line laser whose ticks are read from.
    LineLaser,
    /// What strikes and checks a control line.
    LaserOrWaterLevel,
    /// A distance meter.
    DistanceMeter,
    /// A level.
    Level,
    /// A stud detector or a magnet.
    Detector,
    /// An awl or a thin bit, to probe with.
    Awl,
    /// A tester for live wires.
    Tester,
    /// Pencil and tape to mark with.
    Marking,
    /// Packing for a wall that is not flat.
    Shims,
    /// A vacuum cleaner.
    Vacuum,
    /// A cloth to lay under the work.
    DropCloth,
}

/// What asks for a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Asks {
    /// Holes of plates that are in use.
    Holes(Holes),
    /// Holes over board that stay empty unless the maker wants them filled.
    OverBoard(Holes),
    /// Holes that are drilled to a size.
    LeadHoles(Holes),
    /// Holes in concrete, brick or block.
    Masonry(Holes),
    /// Holes deeper than the kit's bits reach: how deep, and which.
    Deep(Length, Holes),
    /// Holes near a side wall, or beside what stands out.
    Tight(Holes),
    /// A plate for which no fastener is chosen yet, and why; `None` where that is not told of any hole.
    NoneChosen(Option<EmptyWhy>),
    /// A piece that is fixed as its maker says.
    ItsMaker,
    /// So many openings for cables.
    Openings(usize),
    /// So many cables.
    Cables(usize),
    /// So many studs bored.
    Bored(usize),
    /// So many openings in steel studs that cables pass.
    StudOpenings(usize),
    /// So many fire blocks that cables pass.
    Blocks(usize),
    /// So many holes or openings that nothing covers.
    Uncovered(usize),
    /// A piece that hangs on brackets: what it is called; empty where it has no name.
    Piece(String),
    /// A piece that one person should not lift there.
    Weight(Mass),
    /// Plates that are held for their first hole, by what hangs on them.
    HeldPlates(Vec<Whose>),
    /// A wall that is out of flat.
    OutOfFlat,
    /// So many readings from a laser's ticks.
    LaserReadings(usize),
    /// So many readings from a control line that was struck.
    LineReadings(usize),
    /// So many readings by a distance meter.
    MeterReadings(usize),
    /// Every mark.
    Marks,
    /// Every wall that is drilled or opened.
    Drilling,
}

/// Holes, and which pieces hang on their plates.
#[derive(Clone, Debug, PartialEq)]
pub struct Holes {
    /// How many.
    pub count: usize,
    /// The pieces, each once.
    pub of: Vec<Whose>,
}

/// A piece, as it is named where there are several walls.
#[derive(Clone, Debug, PartialEq)]
pub struct Whose {
    /// What it is called; empty where it has no name.
    pub name: String,
    /// What it is.
    pub kind: PieceKind,
    /// What its wall is called; empty where it has no name.
    pub wall: String,
}

/// What to bring for a job: what is left in the wall first, then cables, then tools. Empty where nothing hangs. Walls
/// that are `planned` count with that plan, the others with their chosen option.
#[must_use]
pub fn carry(job: &Job, planned: &[&Plan]) -> Vec<CarryLine> {
    let is_planned = |wall: &&Wall| planned.iter().any(|plan| plan.wall == wall.id);
    let others = job.walls.iter().filter(|wall| !is_planned(wall));
    let others: Vec<Plan> =
        others.map(|wall| solve(job, &wall.id, chosen_option(wall).map(|option| &option.id))).collect();
    let of_wall = |wall: &Wall| planned.iter().copied().chain(&others).find(|plan| plan.wall == wall.id);
    let plans: Vec<&Plan> = job.walls.iter().filter_map(of_wall).collect();
    if plans.iter().all(|plan| plan.pieces.is_empty()) {
        return Vec::new();
    }
    let mut lines = fasteners::fasteners(job, &plans);
    lines.extend(cables::cables(job, &plans));
    lines.extend(screws::screws(job, &plans));
    lines.extend(tools::tools(job, &plans));
    lines
}

/// How many the kit lacks of what it counts.
fn short(needed: usize, stocked: Option<u32>) -> Option<usize> {
    let stocked = usize::try_from(stocked?).unwrap_or(usize::MAX);
    needed.checked_sub(stocked).filter(|lacks| *lacks > 0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_counted_is_not_short() {
        assert_eq!(short(4, None), None);
        assert_eq!(short(4, Some(4)), None);
        assert_eq!(short(4, Some(1)), Some(3));
        assert_eq!(short(4, Some(0)), Some(4));
    }

    #[test]
    fn for_nothing_there_is_nothing_to_bring() {
        assert_eq!(carry(&Job::new(), &[]), []);
    }
}
