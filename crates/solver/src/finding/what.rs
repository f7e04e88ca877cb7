//! All that can be found, each with its values.

use super::cable::CableWhat;
use super::{CutMeets, MissingWhat};
use crate::clearances::reach::Reach;
use crate::geometry::{Direction, Point};
use crate::job::fact::FactState;
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::plan::piece::HeldBy;
use crate::subject::{Id, Subject};
use crate::units::{Angle, Force, Length, Mass};

/// What was found. Each rule has its own; its name in JSON is the file of the rule.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A piece or plate goes past the wall's edge by so much.
    OffWall {
        /// Past which edge.
        side: Direction,
        /// By how much.
        by: Length,
    },
    /// A piece covers a feature.
    OverFeature {
        /// The feature.
        feature: Id,
        /// What it is.
        kind: FeatureKind,
    },
    /// Two pieces cover each other.
    OverPiece {
        /// The other piece.
        other: Id,
    },
    /// The plate shows past the piece's outline.
    PlateShows {
        /// Past which edge.
        side: Direction,
        /// By how much.
        by: Length,
    },
    /// A hole would go into something hidden.
    HoleOnHidden {
        /// The hidden thing.
        hidden: Id,
        /// What it is.
        kind: HiddenKind,
    },
    /// The piece is heavier than the mount's maker allows.
    OverRating {
        /// The piece's mass.
        mass: Mass,
        /// The rated mass.
        rated: Mass,
    },
    /// The piece's pattern is outside what the mount takes.
    PatternOutside {
        /// Threads apart sideways.
        across: Length,
        /// Threads apart upright.
        upright: Length,
    },
    /// The mount's brackets were measured on other threads than the piece has.
    BracketsOffThreads {
        /// The brackets apart, as measured.
        apart: Length,
        /// The piece's threads apart sideways.
        across: Length,
    },
    /// No room to bring the piece in above or beside its place.
    NoLiftRoom {
        /// Where it is brought in.
        side: Direction,
        /// The room there is.
        room: Length,
        /// The room it needs.
        needs: Length,
    },
    /// No room below to lock it.
    NoAccessBelow {
        /// The room there is.
        room: Length,
        /// The room it needs.
        needs: Length,
    },
    /// Swung, the piece's edge meets a side wall, a door or a curtain.
    SwingMeets {
        /// What it meets.
        other: Subject,
        /// On which side.
        side: Direction,
    },
    /// Tilted, the piece's lower edge meets something proud below it, or the wall.
    TiltMeets {
        /// What it meets.
        other: Subject,
    },
    /// The eyes at a seat are no farther from the wall than a picture.
    SeatTooNear {
        /// The display.
        piece: Id,
    },
    /// Someone seated looks up at a picture by more than is published.
    LooksUp {
        /// The display.
        piece: Id,
        /// Up to its middle.
        up: Angle,
    },
    /// It stands out into a way that people walk, farther than is published.
    StandsOut {
        /// How far; `None` where its depth or stand-off was not measured.
        out: Option<Length>,
    },
    /// An outlet or switch that not everyone reaches.
    OutOfReach {
        /// How high above the floor.
        height: Length,
        /// Whose heights it is held against.
        reach: Reach,
    },
    /// It hangs above a fireplace.
    OverFire,
    /// One person should not lift it there.
    HeavyLift {
        /// What it weighs.
        mass: Mass,
        /// What one person should lift there.
        limit: Mass,
    },
    /// The pull that is counted is less than a standing display of its mass has to withstand.
    PullSmall {
        /// What it would have to withstand.
        push: Force,
    },
    /// A door opened against the wall meets it.
    DoorMeets {
        /// The door.
        door: Id,
    },
    /// A display has less room round it than its heat wants.
    Stuffy {
        /// On which side.
        side: Direction,
        /// How much there is.
        room: Length,
    },
    /// The plate lies over a hump.
    PlateOverHump {
        /// How far it stands out.
        proud: Length,
    },
    /// The plate lies over something proud.
    PlateOverProud {
        /// The feature.
        feature: Id,
        /// How far it stands out.
        proud: Length,
    },
    /// A hole to be used is near a power box: a cable may run there.
    NearBox {
        /// The outlet, the switch, or the box on the other side; `None` for the band along the wall's top or beside an
        /// inside corner.
        feature: Option<Id>,
        /// Whether it is in line with the box, above or below it; else it is level with it.
        in_line: bool,
    },
    /// The wall is wet: pipes may run in it.
    WetWall,
    /// A sliding door's pocket or a box on the other side is behind a hole.
    BehindHole {
        /// The hidden thing.
        hidden: Id,
        /// What it is.
        kind: HiddenKind,
    },
    /// Veneer carries nothing.
    Veneer,
    /// A wall without framing, such as glass, has nothing to fix to.
    NoFraming,
    /// Old paint may hold lead, old board and plaster asbestos.
    OldWall {
        /// The year built; `None` where not known.
        year: Option<u16>,
        /// Whether lead is to be thought of.
        lead: bool,
        /// Whether asbestos is to be thought of.
        asbestos: bool,
    },
    /// The floor is out of level over the piece's width.
    FloorOutOfLevel {
        /// How much higher it is at the piece's right end.
        rise: Length,
    },
    /// The floor was not read at both ends of the level line.
    FloorNotRead,
    /// A piece hangs over an edge that is out of level.
    CrookedEdge {
        /// The feature.
        feature: Id,
        /// The gap at the piece's left end.
        left: Length,
        /// The gap at its right end.
        right: Length,
        /// Whether the piece turns to split the difference.
        split: bool,
    },
    /// Readings of one place do not agree.
    DoesNotClose {
        /// What the readings used leave.
        used: Length,
        /// What the other says.
        other: Length,
    },
    /// What was done holds a piece off its wished place.
    HeldAway {
        /// What holds it.
        by: HeldBy,
        /// How far to the right.
        right: Length,
        /// How far up.
        up: Length,
    },
    /// A drilled hole is not where the plate, held by all of them, has its own.
    HoleApart {
        /// How far to the right.
        right: Length,
        /// How far up.
        up: Length,
    },
    /// Something is struck where the plan no longer has it.
    StruckElsewhere {
        /// How far to the right of where it should be.
        right: Length,
        /// How far above; of a line its left end.
        up: Length,
        /// How far above a line's right end is, where that is not as far off.
        right_end: Option<Length>,
    },
    /// An opening as it is cut.
    CutOpening {
        /// What it meets.
        meets: CutMeets,
    },
    /// Something was struck, drilled or cut for another option, or for what hangs here no more.
    LeftByOption {
        /// The mark it was.
        mark: Subject,
        /// Whether it was for this option.
        is_own: bool,
        /// What was done.
        state: FactState,
        /// Where it is.
        place: Point,
        /// Whether no piece covers it.
        shows: bool,
    },
    /// A piece hangs elsewhere than where the customer agreed to it.
    MovedSinceAgreed {
        /// How far to the right of there.
        right: Length,
        /// How far above.
        up: Length,
    },
    /// Two or more places are each measured from the other.
    Ring,
    /// Something is measured from, or placed by, what is not there.
    NotThere {
        /// What was named.
        named: Subject,
    },
    /// Something that matters is not given.
    Missing {
        /// What.
        what: MissingWhat,
    },
    /// A size that must be more than nothing is zero.
    ZeroSize,
    /// The fasteners of a plate do not hold what hangs on it.
    PlateShort {
        /// How much of what they may carry is used, 1 being all of it; `None` where what the mount's maker requires is
        /// not met.
        used: Option<f64>,
    },
    /// Whether a plate holds is not known.
    PlateNotKnown {
        /// Whether it holds as soon as the studs in use are probed: nothing else is wanted.
        if_probed: bool,
    },
    /// No hole of the plate meets a stud.
    NoStudMet,
    /// A hole that was chosen by hand takes no fastener.
    ByHandNotMet,
    /// A drywall screw is no structural fastener.
    Brittle,
    /// The fastener would reach past the stud by so much.
    PastStud {
        /// By how much.
        by: Length,
    },
    /// A probe met metal where no stud is of steel.
    MetalMet {
        /// A hole in use above or below it, where there is one.
        hole: Option<Subject>,
    },
    /// A stud of steel is met by metal, which a pipe is too.
    SteelByMetal,
    /// Fewer studs are met than could be.
    MoreStudsNear {
        /// How many are met.
        studs: usize,
        /// How many could be.
        most: usize,
        /// How far to the left.
        left: Option<Length>,
        /// How far to the right.
        right: Option<Length>,
    },
    /// There is no room behind the piece for the cables' opening.
    NoEntry,
    /// Behind the piece is nothing that a cable could run in.
    NoBay,
    /// Something about the cables' way.
    Cable(CableWhat),
    /// Nothing can be reached with a tape: a helping mark could not be placed.
    WithHelp {
        /// The place that cannot be reached.
        place: Point,
    },
    /// Other side not known, outside or shared: do not cut or drill through.
    OtherSide {
        /// Whether it is outside.
        outside: bool,
        /// Whether it is a neighbour, shaft or garage.
        neighbour: bool,
    },
    /// The tool plans and does not certify.
    PlansOnly,
}
