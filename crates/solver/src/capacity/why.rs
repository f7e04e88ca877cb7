//! Why something is refused or not known.

use crate::units::Length;

/// A value that was put in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// A fastener's diameter.
    Diameter,
    /// A fastener's length.
    Length,
    /// The diameter of a head or washer.
    Head,
    /// The thickness of a washer.
    Washer,
    /// A bending strength.
    Bending,
    /// A withdrawal strength.
    Withdrawal,
    /// The specific gravity of wood.
    Gravity,
    /// The thickness of the plate.
    Plate,
    /// What the plate bears.
    PlateBearing,
    /// What stands between plate and framing.
    Gap,
    /// The depth of a stud.
    StudDepth,
    /// The width of a stud's face, or where in it.
    Face,
    /// The diameter or width of a hole.
    Hole,
    /// The strength of concrete.
    Concrete,
    /// The thickness of steel.
    Steel,
    /// A load.
    Load,
    /// A mass.
    Mass,
    /// A place or size of what hangs.
    Place,
    /// A place of a fastener.
    Seat,
    /// An angle.
    Angle,
    /// A factor for the duration of load.
    Duration,
}

/// Why there is no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Why {
    /// A value is missing, not finite, or beyond anything on a wall.
    NoValue(Input),
    /// No published value: outside of its table.
    OutsideTable(Input),
    /// Not so deep in the wood or concrete as the rule asks.
    Shallow {
        /// How deep it is.
        has: Length,
        /// How deep it must be.
        needs: Length,
    },
    /// It would reach past the stud.
    PastStud {
        /// Whether nobody measured how deep the stud is, and the least usual depth was taken.
        supposed: bool,
        /// By so much.
        by: Length,
    },
    /// The least edge distance is not met.
    Edge {
        /// What is left beside it after drift and doubt.
        has: Length,
        /// What it needs.
        needs: Length,
    },
    /// A factor above what is allowed for connections.
    AboveCap,
    /// Nothing that is used carries load along the stud, or across it.
    NothingCarries,
    /// The load turns the plate in its plane and nothing that is used carries that with a published value.
    Turns {
        /// How hard, newton millimetres.
        nmm: f64,
    },
    /// All fasteners stand in one row at the plate's own edge: nothing to lever against.
    NoLever,
    /// No fastener is used.
    NoFastener,
    /// Fasteners of more than one type: the method supposes that all are as stiff.
    Mixed,
    /// An arm or a pull-down on steel studs: no published value.
    ArmOnSteel,
    /// A row of fasteners that is not screwed to two studs, on steel.
    RowOnOneStud,
    /// Concrete that nobody said is of normal weight.
    NotNormalWeight,
    /// Something stands between the plate and the concrete.
    OffTheConcrete {
        /// How thick.
        gap: Length,
        /// Whether nobody measured it: it is then counted as thick as any.
        assumed: bool,
    },
    /// Brick or block with hollows in it: what a fixing carries there nobody knows.
    Hollow,
    /// The hole does not pass the fastener.
    DoesNotPass,
    /// Neither head nor washer covers the hole.
    DoesNotCover,
}

impl Why {
    /// Whether a rule refuses it outright; else nobody knows what it carries.
    #[must_use]
    pub fn refuses(&self) -> bool {
        matches!(
            self,
            Self::Shallow { .. }
                | Self::PastStud { .. }
                | Self::Edge { .. }
                | Self::AboveCap
                | Self::DoesNotPass
                | Self::DoesNotCover
        )
    }
}

/// A value, or why there is none.
pub type Known<T> = Result<T, Why>;

/// The largest length that is taken: 100 m. Keeps every product finite.
pub(super) const MOST_MM: f64 = 1e5;

/// The largest force that is taken, in newtons.
pub(super) const MOST_N: f64 = 1e9;

/// A length above zero; else `input` has no value.
pub(super) fn above_zero(length: Length, input: Input) -> Known<Length> {
    if length.mm() > 0.0 && length.mm() <= MOST_MM { Ok(length) } else { Err(Why::NoValue(input)) }
}

/// A length of zero or more; else `input` has no value.
pub(super) fn zero_or_more(length: Length, input: Input) -> Known<Length> {
    if length.mm() >= 0.0 && length.mm() <= MOST_MM { Ok(length) } else { Err(Why::NoValue(input)) }
}

/// A number within `most` of zero; else `input` has no value.
pub(super) fn within(value: f64, most: f64, input: Input) -> Known<f64> {
    if value.abs() <= most { Ok(value) } else { Err(Why::NoValue(input)) }
}
