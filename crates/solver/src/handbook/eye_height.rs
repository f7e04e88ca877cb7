//! How high people's eyes are: percentiles of a public survey of bodies, erect, without shoes, in millimetres.

use super::Row;

/// The 5th, 50th and 95th of a hundred people.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Percentiles {
    /// One in twenty is lower.
    pub p5: f64,
    /// Half are lower.
    pub p50: f64,
    /// One in twenty is higher.
    pub p95: f64,
}

/// A measure of men, of women, and of both together as they were surveyed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// 4082 men.
    pub men: Row<Percentiles>,
    /// 1986 women.
    pub women: Row<Percentiles>,
    /// All 6068.
    pub all: Row<Percentiles>,
}

const SOURCE: &str =
    "ANSUR II, 2012 US Army survey, NATICK/TR-15/007: percentiles worked out from its public data";

const fn of(p5: f64, p50: f64, p95: f64) -> Row<Percentiles> {
    Row::derived(Percentiles { p5, p50, p95 }, SOURCE)
}

/// From the seat up to the eyes.
pub const ABOVE_SEAT: Measure =
    Measure { men: of(750.0, 804.0, 860.0), women: of(698.0, 748.0, 799.0), all: of(715.0, 787.0, 853.0) };

/// From the floor up to the hollow of the knee: the height of a seat that suits.
pub const KNEE: Measure =
    Measure { men: of(390.0, 430.0, 471.0), women: of(350.0, 387.0, 428.0), all: of(364.0, 417.0, 465.0) };

/// From the floor to the eyes of people on a seat at their own knee height. Summed person by person: percentiles
/// themselves do not add.
pub const SEATED: Measure = Measure {
    men: of(1157.0, 1233.0, 1315.0),
    women: of(1063.0, 1136.0, 1212.0),
    all: of(1089.0, 1206.0, 1305.0),
};

/// From the floor to the eyes of standing people: their stature less what is above the eyes of the same people seated.
pub const STANDING: Measure = Measure {
    men: of(1536.0, 1640.0, 1753.0),
    women: of(1421.0, 1517.0, 1626.0),
    all: of(1456.0, 1607.0, 1739.0),
};

/// How much lower the eyes of a seated person come who does not sit erect, at the most.
/// Chosen: the figure was read second-hand of the shoulder.
pub const SLUMP: Row<f64> =
    Row::chosen(40.0, "told of the shoulder in a university's body size tables, taken for the eyes");
