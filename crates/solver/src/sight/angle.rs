//! The angles under which a picture is seen, and the heights and distances that follow from them. All geometry.
//!
//! Distances are above zero; a distance of zero has no angle, and the functions then tell 90 degrees or none.

use crate::ledger::{Given, Ledger, Put, Step};
use crate::numeric::{root, slope_angle, tangent};
use crate::units::{Angle, Length};

const GEOMETRY: &str = "geometry";

/// The angle from a level line through the eyes up to a place; below is negative.
#[must_use]
pub fn up<L: Ledger>(ledger: &mut L, rise: Given<Length>, distance: Given<Length>) -> Angle {
    let up = slope_angle(rise.value.mm() / distance.value.mm());
    ledger.write(|| Step {
        name: "angle up",
        formula: "u = atan(r / D)",
        put: vec![
            Put::given("r", rise).being("above the eyes"),
            Put::given("D", distance).being("from the eyes to the picture's face"),
        ],
        result: up.into(),
        source: GEOMETRY,
        label: rise.label.weaker(distance.label).worked_out(),
    });
    up
}

/// The angle between the two ends of a stretch of the picture; the eyes are `aside` of its middle. Never negative.
#[must_use]
pub fn filled<L: Ledger>(
    ledger: &mut L,
    length: Given<Length>,
    aside: Given<Length>,
    distance: Given<Length>,
) -> Angle {
    let half = length.value / 2.0;
    let to = |end: Length| slope_angle(end.mm() / distance.value.mm());
    let filled = to(aside.value + half) - to(aside.value - half);
    ledger.write(|| Step {
        name: "angle that the picture fills",
        formula: "f = atan((s + w/2) / D) - atan((s - w/2) / D)",
        put: vec![
            Put::given("w", length).being("the picture from end to end"),
            Put::given("s", aside).being("from the picture's middle to the eyes"),
            Put::given("D", distance).being("from the eyes to the picture's face"),
        ],
        result: filled.into(),
        source: GEOMETRY,
        label: length.label.weaker(aside.label).weaker(distance.label).worked_out(),
    });
    filled
}

/// The angle between the picture's perpendicular at its middle and the line from there to the eyes; 0 to 90 degrees.
#[must_use]
pub fn off_axis<L: Ledger>(
    ledger: &mut L,
    aside: Given<Length>,
    rise: Given<Length>,
    distance: Given<Length>,
) -> Angle {
    let off_mm = root(aside.value.mm() * aside.value.mm() + rise.value.mm() * rise.value.mm());
    let off = slope_angle(off_mm / distance.value.mm());
    ledger.write(|| Step {
        name: "angle off the picture's axis",
        formula: "a = atan(sqrt(s^2 + r^2) / D)",
        put: vec![
            Put::given("s", aside).being("from the picture's middle to the eyes, sideways"),
            Put::given("r", rise).being("from the eyes up to the picture's middle"),
            Put::given("D", distance).being("from the eyes to the picture's face"),
        ],
        result: off.into(),
        source: GEOMETRY,
        label: aside.label.weaker(rise.label).weaker(distance.label).worked_out(),
    });
    off
}

/// How far away a stretch fills an angle, seen from in front of its middle.
#[must_use]
pub fn distance_for<L: Ledger>(ledger: &mut L, length: Given<Length>, fills: Given<f64>) -> Length {
    let distance = length.value / (2.0 * tangent(Angle::degrees(fills.value / 2.0)));
    ledger.write(|| Step {
        name: "distance that fills an angle",
        formula: "D = w / (2 tan(f / 2))",
        put: vec![
            Put::given("w", length).being("the picture from end to end"),
            Put::new("f", Angle::degrees(fills.value), fills.label).because(fills.reason),
        ],
        result: distance.into(),
        source: GEOMETRY,
        label: fills.label.weaker(length.label).worked_out(),
    });
    distance
}

/// How high a place may be that is seen no higher than an angle up.
#[must_use]
pub fn highest<L: Ledger>(
    ledger: &mut L,
    eyes: Given<Length>,
    distance: Given<Length>,
    most: Given<f64>,
) -> Length {
    let highest = eyes.value + distance.value * tangent(Angle::degrees(most.value));
    ledger.write(|| Step {
        name: "highest place for an angle up",
        formula: "z = e + D tan(u)",
        put: vec![
            Put::given("e", eyes).being("the eyes above the floor"),
            Put::given("D", distance).being("from the eyes to the picture's face"),
            Put::new("u", Angle::degrees(most.value), most.label).because(most.reason),
        ],
        result: highest.into(),
        source: GEOMETRY,
        label: most.label.weaker(eyes.label).weaker(distance.label).worked_out(),
    });
    highest
}
