//! How far fasteners stand from edges and ends and from one another, and how deep they bite, in diameters.

use super::Row;

const LAG: &str = "NDS 2018 Tables 12.5.1A to E";
const SMALL: &str = "NDS 2018 commentary table C12.1.5.7, advisory, taken as a rule";

/// Least depth of a lag screw in wood without its tip.
pub const LAG_DEPTH: Row<f64> = Row::read(4.0, "NDS 2018 section 12.1.4.6");
/// Least depth of a wood screw in wood, tip counted.
pub const SCREW_DEPTH: Row<f64> = Row::read(6.0, "NDS 2018 section 12.1.5.6");

/// From 1/4 in on: edge, load along the grain or straight out.
pub const LAG_EDGE: Row<f64> = Row::read(1.5, LAG);
/// From 1/4 in on: edge that a load across the grain pushes toward.
pub const LAG_LOADED_EDGE: Row<f64> = Row::read(4.0, LAG);
/// From 1/4 in on: in a row along the grain, full value.
pub const LAG_SPACING: Row<f64> = Row::read(4.0, LAG);
/// From 1/4 in on: end that the load points toward, softwood, full value.
pub const LAG_LOADED_END: Row<f64> = Row::read(7.0, LAG);
/// From 1/4 in on: end otherwise.
pub const LAG_END: Row<f64> = Row::read(4.0, LAG);

/// Under 1/4 in: edge.
pub const SCREW_EDGE: Row<f64> = Row::read(2.5, SMALL);
/// Under 1/4 in: in a row along the grain, with a lead hole and without.
pub const SCREW_SPACING: Row<(f64, f64)> = Row::read((5.0, 10.0), SMALL);
/// Under 1/4 in: any end; the larger of the commentary's and the lag's, since one number is told.
pub const SCREW_END: Row<(f64, f64)> = Row::read((5.0, 10.0), SMALL);

/// A face up to this wide, in inches, takes one lag beside another never.
pub const SINGLE_FACE_IN: f64 = 1.5;

/// In sheet steel: from one to the next.
pub const STEEL_SPACING: Row<f64> = Row::read(3.0, "AISI S100-12 section E4, a stud maker's notes");
/// In sheet steel: edge.
pub const STEEL_EDGE: Row<f64> = Row::read(1.5, "AISI S100-12 section E4, a stud maker's notes");

/// In concrete: from one to the next.
pub const CONCRETE_SPACING: Row<f64> = Row::chosen(
    16.0,
    "the table asks for less beside an edge or another and gives no distance; 16 diameters",
);
/// In concrete: every edge.
pub const CONCRETE_EDGE: Row<f64> = Row::chosen(
    16.0,
    "the table asks for less beside an edge or another and gives no distance; 16 diameters",
);
