//! What a plan must tell of the cables' way.

use crate::plan::cable::{Against, Unknown};
use crate::subject::Id;
use crate::units::Length;

/// What was found of a cable's way. Each is a rule of its own.
#[derive(Clone, Debug, PartialEq)]
pub enum CableWhat {
    /// No way is hidden and allowed.
    NoWay {
        /// What speaks against the least bad; empty where there is none at all.
        against: Vec<Against>,
        /// Whether there is a least bad one.
        is_there: bool,
    },
    /// The opening behind the piece is not fully hidden.
    EntryShows {
        /// Only while the piece is swung out.
        swung: bool,
    },
    /// The way is on the wall's face, since something speaks against the best one inside.
    FaceInstead {
        /// What is not allowed.
        against: Vec<Against>,
        /// How much of the cables shows that way, since nothing leads down to where they should come out.
        shows: Length,
    },
    /// The exit is not where it should be, and what lies between shows.
    WayShows {
        /// How much.
        shows: Length,
    },
    /// Something stands in the straight drop.
    BayBlocked {
        /// What.
        by: Id,
        /// Whether the way goes through it; else it goes another way.
        passed: bool,
    },
    /// The exit is in another bay than what it should be beside.
    ExitBay {
        /// That.
        beside: Id,
        /// What shows between.
        shows: Length,
    },
    /// An opening goes through what fills or seals the wall.
    SealPierced {
        /// Filling.
        insulated: bool,
        /// A vapour barrier.
        barrier: bool,
        /// An outside wall.
        outside: bool,
    },
    /// An opening is where a cable to or from a power box is likely.
    NearOpening {
        /// The outlet, the switch, or the box on the other side; `None` for the band along the top or beside an inside
        /// corner.
        feature: Option<Id>,
        /// Whether it is the exit.
        exit: bool,
    },
    /// Where a stud or a block is passed a cable to or from this outlet, switch or box on the other side is
    /// likely.
    NearPassage(Id),
    /// The run comes close to a hidden cable, or the exit to a power box.
    PowerApart {
        /// What is close.
        other: Id,
        /// How far it is away.
        apart: Length,
        /// How far it should be.
        wanted: Length,
    },
    /// A cable is longer than it carries.
    TooLong {
        /// How long it has to be.
        length: Length,
        /// How far it carries.
        longest: Length,
        /// Whether nobody said what it carries.
        unknown: bool,
        /// Whether only the stocked cable is too long, and a shorter one would do.
        stocked: bool,
    },
    /// Behind the piece is too little room for a plug or the bend of its cable.
    BendTight {
        /// The room it needs.
        needs: Length,
        /// The room there is.
        room: Length,
    },
    /// How much room there is behind the piece for plugs and bends, or how much they need, is not known.
    RoomNotKnown {
        /// Nobody measured how far the piece stands off.
        stand_off: bool,
        /// Nobody measured a plug.
        plug: bool,
        /// Nobody measured a cable.
        cable: bool,
    },
    /// The studs beside the cables' way are not known.
    StudsNotKnown,
    /// Whether the way inside the wall is allowed hangs on what nobody knows.
    WayNotKnown {
        /// What that is.
        why: Vec<Unknown>,
    },
    /// Fewer outlets were measured than a dwelling's wall has.
    FewOutlets {
        /// How many were measured.
        found: usize,
        /// How many it has at least.
        wanted: usize,
    },
    /// A wall so high has fire blocks, and nobody found them.
    BlocksExpected {
        /// How many each bay has.
        each: usize,
    },
    /// A box is deeper than the wall, as far as it is known.
    BoxDeep {
        /// How deep it is.
        deep: Length,
        /// How deep the wall is behind its face; `None` where nobody measured the framing.
        room: Option<Length>,
        /// Whether what stands in front of the framing was not measured, and counts as nothing.
        no_front: bool,
        /// Whether it is the one at the exit.
        exit: bool,
    },
    /// How deep a box of the kit is, nobody measured.
    BoxNotMeasured {
        /// Whether it is the one at the exit.
        exit: bool,
    },
    /// A bored hole is near the stud's face.
    NailPlate {
        /// From its edge to the stud's.
        left: Length,
        /// How thick the plate over it is, at least.
        thick: Length,
    },
    /// A fire block is passed.
    SealBlock {
        /// Which.
        block: Id,
    },
    /// An opening of a steel stud is passed.
    Bushing {
        /// Which.
        opening: Id,
    },
    /// Much old paint is disturbed.
    PaintDisturbed {
        /// How much, in hundredths of a square foot.
        hundredths: u32,
        /// Whether a size in it is remembered or assumed.
        about: bool,
    },
    /// The way is in a chimney breast.
    BreastWay,
    /// A cord of power is used.
    PowerCord,
    /// A cable in the wall is not listed for it, or nobody knows.
    NotListed {
        /// Whether it is not known.
        unknown: bool,
    },
    /// The tube is too full.
    TubeFull {
        /// How full it is, in hundredths.
        percent: u32,
        /// How full it may be, in hundredths.
        most: u32,
    },
    /// No stocked cable is long enough.
    StockShort {
        /// How long it has to be.
        needs: Length,
    },
    /// The way turns more often than a cable can be pulled.
    ManyBends,
}

impl CableWhat {
    /// The rule's name.
    #[must_use]
    pub fn rule(&self) -> &'static str {
        match self {
            Self::NoWay { .. } => "no_way",
            Self::EntryShows { .. } => "entry_shows",
            Self::FaceInstead { .. } => "face_instead",
            Self::WayShows { .. } => "way_shows",
            Self::BayBlocked { .. } => "bay_blocked",
            Self::ExitBay { .. } => "exit_bay",
            Self::SealPierced { .. } => "seal_pierced",
            Self::NearOpening { .. } => "near_opening",
            Self::NearPassage(_) => "near_passage",
            Self::PowerApart { .. } => "power_apart",
            Self::TooLong { .. } => "too_long",
            Self::BendTight { .. } => "bend_tight",
            Self::RoomNotKnown { .. } => "room_not_known",
            Self::StudsNotKnown => "studs_not_known",
            Self::WayNotKnown { .. } => "way_not_known",
            Self::FewOutlets { .. } => "few_outlets",
            Self::BlocksExpected { .. } => "blocks_expected",
            Self::BoxDeep { .. } => "box_deep",
            Self::BoxNotMeasured { .. } => "box_not_measured",
            Self::NailPlate { .. } => "nail_plate",
            Self::SealBlock { .. } => "seal_block",
            Self::Bushing { .. } => "bushing",
            Self::PaintDisturbed { .. } => "paint_disturbed",
            Self::BreastWay => "breast_way",
            Self::PowerCord => "power_cord",
            Self::NotListed { .. } => "not_listed",
            Self::TubeFull { .. } => "tube_full",
            Self::StockShort { .. } => "stock_short",
            Self::ManyBends => "many_bends",
        }
    }
}
