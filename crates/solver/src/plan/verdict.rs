//! Whether a plate holds, which fasteners hold it, and what that rests on.

use super::piece::Meets;
use crate::capacity::case::{CaseKind, CaseName};
use crate::capacity::group::Word;
use crate::capacity::used::Term;
use crate::capacity::why::Why;
use crate::job::kit::{FastenerKind, FastenerStock};
use crate::subject::{Id, Subject};
use crate::units::{Angle, Force, Length, Ratio, Stress};

/// The fasteners of a plate, and whether they hold it.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastening {
    /// Whether they hold.
    pub verdict: Verdict,
    /// The holes in use, in the order of the plate.
    pub fasteners: Vec<FastenerPlan>,
    /// The holes left empty, in the order of the plate.
    pub left_empty: Vec<LeftEmpty>,
    /// What anchors in board would add; no part of the verdict.
    pub anchors: Option<InBoard>,
}

/// What anchors in board would add by their maker's rating, at a quarter.
#[derive(Clone, Debug, PartialEq)]
pub struct InBoard {
    /// Which anchor of the kit.
    pub stock: Id,
    /// At how many holes.
    pub holes: usize,
    /// Shear of each; `None` where it is not rated.
    pub shear: Option<Force>,
    /// Pull of each; `None` where it is not rated.
    pub pull: Option<Force>,
}

/// Whether a plate holds. Of several cases the worst: short before not known before holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// As things are known now.
    pub word: Word,
    /// As if every stud in use were met where it is expected.
    pub if_probed: Word,
    /// The same with stated values counted.
    pub as_stated: Word,
    /// The fastener and case that use most of what could be worked out; `None` where nothing could, or where a load is
    /// not measured.
    pub governing: Option<Governing>,
    /// A case that no published value carries, and why; of those that turn the plate the one that turns it most as it
    /// hangs.
    pub uncarried: Option<(CaseName, Why)>,
    /// What the cases of each kind come to, in the order of their kinds; empty where a load is not measured.
    pub by_case: Vec<CaseVerdict>,
    /// Whether what the maker requires of holes and fasteners is met.
    pub required: Required,
    /// Every chosen value it rests on.
    pub rests_on: Vec<Rest>,
    /// The probes and measurements wanted.
    pub wanted: Vec<Want>,
    /// Whether the fasteners are the best of a search that does not try every set: above eight usable holes.
    pub searched: bool,
}

/// What all cases of one kind come to, by published values; says nothing of what a maker requires, nor of probes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CaseVerdict {
    /// Their kind.
    pub kind: CaseKind,
    /// Whether every one of them is carried.
    pub word: Word,
    /// The most that is used, of those that could be worked out.
    pub used: Option<f64>,
    /// Why one of them could not; of those that turn the plate the one that turns it most.
    pub why: Option<Why>,
}

/// The fastener and case that use most.
#[derive(Clone, Debug, PartialEq)]
pub struct Governing {
    /// The hole, as a subject.
    pub hole: Subject,
    /// The case.
    pub case: CaseName,
    /// How much of what it may carry is used: 1 is all of it.
    pub used: f64,
    /// What governs.
    pub term: Term,
}

/// Whether what a maker requires is met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Required {
    /// It is, or nothing is.
    Met,
    /// It is not: that is short.
    NotMet,
    /// Nobody knows yet what a required hole meets.
    NotKnown,
}

/// A chosen value that a verdict rests on.
#[derive(Clone, Debug, PartialEq)]
pub enum Rest {
    /// How hard somebody may pull.
    Pull(Force),
    /// The specific gravity of wood that nobody identified.
    Gravity(Ratio),
    /// That the stud is no deeper than the least usual one.
    StudDepth(Length),
    /// That the stud's face is the usual one.
    StudFace(Length),
    /// That the plate is of sheet steel.
    PlateSteel(Stress),
    /// The thickness of a washer.
    Washer(Length),
    /// That the piece's mass is at the middle of its outline and depth.
    Middle,
    /// That the mount's mass is at the piece's back.
    MountMass,
    /// That it tilts as far the way that was not given as the other.
    Tilt(Angle),
    /// That all of it comes so much farther out as its farther edge does when the arm's head tilts so far.
    ArmTilt(Angle),
    /// That the arm swings so far to either side.
    Hinge(Angle),
    /// That the arm's head turns so far to either side.
    Head(Angle),
    /// That the screw is a lag to its standard.
    LagMade,
    /// That the screw is a wood screw to its standard.
    ScrewMade,
    /// What the maker of a fixing recommends for a base, in the document's own words: stated.
    MakersLoad(String),
    /// What is stated in a document, by its name and date.
    Document {
        /// Its name.
        name: String,
        /// Its date.
        date: String,
    },
    /// That a fastener's own steel bears a third of its bending yield strength in tension.
    SteelInTension,
    /// That a hole counts where solid wood is round it by so much of a chance, 0 to 1.
    Chance(f64),
    /// That the ceiling, which nobody measured, is so high at least.
    Ceiling(Length),
    /// That nothing thicker than so much lies between a plate and the concrete.
    ConcreteGap(Length),
    /// A pull test on this wall: stated, of one hole, and counted at this share.
    PullTest(f64),
    /// The strength of concrete that nobody measured.
    Concrete(Stress),
    /// How far fasteners in concrete stand from edges and one another, in diameters.
    ConcreteEdge(f64),
    /// The share of a screw's shear that counts through board into steel.
    ShearThroughBoard(f64),
    /// The method: the plate is rigid, the outermost row pulls, both axes are added.
    Method,
}

/// A probe or measurement that a verdict wants.
#[derive(Clone, Debug, PartialEq)]
pub enum Want {
    /// Probe the stud at this hole.
    Probe(Subject),
    /// Find the edges of the stud at this hole: wood was met there, but where its edges are is too doubtful for the
    /// room that the fastener needs.
    Edges(Subject),
    /// The piece's mass.
    Mass(Id),
    /// The mount's own mass.
    MountMass(Id),
    /// The piece's width, height or depth.
    Size(Id),
    /// The drop from the piece's top to the plate's.
    Drop(Id),
    /// From the wall to the piece's back.
    StandOff(Id),
    /// The arm's reach; of a pull-down how far it comes forward.
    Reach(Id),
    /// How far the mount tilts.
    Tilt(Id),
    /// How far below the piece's top it turns when it tilts.
    Pivot(Id),
    /// How far a pull-down comes down.
    Lowering(Id),
    /// The plate's outline and holes.
    Plate(Id),
    /// The thickness of the plate's sheet.
    PlateThickness(Id),
    /// The diameter or width of a hole, as a subject.
    HoleWidth(Subject),
    /// Where the piece goes hangs on something assumed.
    Place(Id),
    /// What stands in front of the framing: of the wall, or of the chimney breast that is built in its own way.
    Front(Id),
    /// How deep the studs are.
    StudDepth(Id),
    /// What the wall is made of.
    Framing(Id),
    /// The thickness of the steel studs.
    SteelThickness(Id),
    /// The width of the studs' flange.
    Face(Id),
    /// That the concrete is of normal weight.
    NormalWeight(Id),
    /// Whether brick or block is solid.
    Solid {
        /// The wall.
        wall: Id,
        /// What is stated of the fixing is for this base, in the document's own words.
        base: String,
    },
    /// The wall's width or height, for the distance to the concrete's edges or to a stud's end.
    WallSize(Id),
    /// Where the studs are.
    Hits(Id),
    /// The fasteners on the truck.
    Fasteners,
    /// A fastener's diameter and length.
    FastenerSize(OfKit),
    /// The diameter of its head or washer.
    FastenerHead(OfKit),
    /// What a structural screw's report says.
    FastenerReport(OfKit),
}

/// A fastener of the kit, with what it is named by.
#[derive(Clone, Debug, PartialEq)]
pub struct OfKit {
    /// Its id in the kit.
    pub id: Id,
    /// Its type.
    pub kind: FastenerKind,
    /// Its nominal diameter, where it is measured.
    pub diameter: Option<Length>,
    /// Its length under the head, where it is measured.
    pub length: Option<Length>,
}

impl From<&FastenerStock> for OfKit {
    fn from(stock: &FastenerStock) -> Self {
        let FastenerStock { id, kind, diameter, length, .. } = stock;
        Self { id: id.clone(), kind: *kind, diameter: *diameter, length: *length }
    }
}

/// A fastener in a hole.
#[derive(Clone, Debug, PartialEq)]
pub struct FastenerPlan {
    /// The hole's id in the plate.
    pub hole: Id,
    /// The hole as a subject.
    pub subject: Subject,
    /// Which fastener of the kit.
    pub stock: Id,
    /// Its type.
    pub kind: FastenerKind,
    /// Its nominal diameter.
    pub diameter: Length,
    /// Its length under the head.
    pub length: Length,
    /// The bit of its lead hole; `None` where no rule tells.
    pub lead: Option<Length>,
    /// Where that bit is from.
    pub bit: BitFrom,
    /// The hole for its smooth shank, as wide as the shank itself and so deep from the wall's face; `None` where all of
    /// what is in wood is thread, or that is not known.
    pub shank: Option<(Length, Length)>,
    /// How deep its hole is from the wall's face, tip included, for the bit's stop; `None` where that is not known.
    pub depth: Option<Length>,
    /// Whether it was chosen by hand that this hole is used.
    pub by_hand: bool,
    /// What its worst case asks of it, and how much is used; `None` where that is not known.
    pub asked: Option<FastenerAsked>,
}

/// Where a lead hole's bit is from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BitFrom {
    /// No bits are told: one that any set has.
    UsualSet,
    /// A bit of the kit.
    Kit(Id),
    /// Bits are told, and none of them fits: one that any set has, to be brought.
    NotInKit,
}

/// What the worst case of a fastener asks of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FastenerAsked {
    /// Shear, newtons.
    pub shear_n: f64,
    /// Pull, newtons.
    pub pull_n: f64,
    /// 1 is all of what it may carry.
    pub used: f64,
}

/// A hole left empty.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftEmpty {
    /// The hole's id in the plate.
    pub hole: Id,
    /// The hole as a subject.
    pub subject: Subject,
    /// Why.
    pub why: EmptyWhy,
    /// Whether it was chosen by hand that it is used: that choice is then not met.
    pub wanted: bool,
}

/// Why a hole is left empty.
#[derive(Clone, Debug, PartialEq)]
pub enum EmptyWhy {
    /// What it meets takes no fastener that counts.
    Meets(Meets),
    /// It is on another plane than the plate's middle.
    OtherPlane,
    /// Too near to the fastener in this hole.
    TooNear(Id),
    /// Too near to a fastener of another piece's plate: its hole.
    NearOther(Subject),
    /// One was drilled there and spins.
    Stripped,
    /// A hole that is drilled, or an opening that is cut, is beside it.
    BesideHole,
    /// It was bored for another fastener of the kit.
    BoredForAnother,
    /// Above a window or door, where nobody knows how high its header is.
    OverOpening,
    /// A rule refuses the fastener there, or nobody knows what it carries.
    Refused(Why),
    /// The kit has no fastener for this wall.
    NoFastener,
    /// The plate holds no worse without it.
    NotNeeded,
    /// It was chosen by hand that it stays empty.
    ByHand,
    /// It was chosen by hand for a fastener that is not made for this wall, or of which too little is measured.
    OnlyWith(OfKit),
    /// Fasteners of more than one type were chosen by hand: the plan adds none of its own.
    Mixed,
    /// The kit has too few of the fastener.
    TooFew,
}

impl Fastening {
    /// Of a plate of which nothing was worked out.
    #[must_use]
    pub fn unknown() -> Self {
        Self {
            verdict: Verdict {
                word: Word::NotKnown,
                if_probed: Word::NotKnown,
                as_stated: Word::NotKnown,
                governing: None,
                uncarried: None,
                by_case: Vec::new(),
                required: Required::Met,
                rests_on: Vec::new(),
                wanted: Vec::new(),
                searched: false,
            },
            fasteners: Vec::new(),
            left_empty: Vec::new(),
            anchors: None,
        }
    }
}
