//! Every "close enough" and every chosen distance of the solver, each with its reason.

use crate::units::Length;

/// Two places nearer than this are one: far below any tape, far above the noise of f64 millimetres.
pub const SAME_PLACE_MM: f64 = 1e-6;

/// From the middle of a fastener to the edge of a stud's face, at least: 3/8 in, the 1.5 diameters of a
/// 1/4 in screw (chosen; the fastener's own need takes its place once one is picked).
pub const EDGE_NEED_MM: f64 = 9.525;

/// How far a face must stand out for a tape's end to be held against it: 1/8 in (chosen; a blade's end is
/// about 1/16 in thick).
pub const BUTT_PROUD_MM: f64 = 3.175;

/// What may stand in the way of a distance meter: a card held on the mark stands out about as far (chosen).
pub const METER_CLEAR_MM: f64 = 50.0;

/// Added to the thickness in front of the framing for a probe: 3/4 in (chosen; no deeper, since what lies
/// in the bay can be hurt).
pub const PROBE_BITE_MM: f64 = 19.05;

/// How far a level line runs past the plate: 4 in (chosen: seen beside any plate, still behind the piece).
pub const LINE_PAST_MM_IN_INCH_JOB: f64 = 101.6;

/// The same in a metric job: 100 mm (chosen).
pub const LINE_PAST_MM_IN_METRIC_JOB: f64 = 100.0;

/// A plate of this mass or more is held up by a ledger or a second person: 5 kg (chosen).
pub const HELD_PLATE_KG: f64 = 5.0;

/// The 90 % doubt of a sensed, unprobed centre: 1/4 in (derived: framing lean and detector practice).
pub const SENSED_DOUBT_MM: f64 = 6.35;

/// A board screw stands at least this far from the edge of the stud it is in: 3/8 in (common practice, no
/// source).
pub const BOARD_SCREW_EDGE_MM: f64 = 9.525;

/// A bay, where none is known: 24 in, the widest usual spacing of studs (IRC Table R602.3(5), read
/// second-hand).
pub const WIDEST_BAY_MM: f64 = 609.6;

/// A bay to sweep on each side of a piece: 16 in, the usual spacing (common practice, no source).
pub const SWEEP_PAST_MM: f64 = 406.4;

/// How far from the wished place the best one is looked for: 16 in, the usual spacing (chosen: past a bay the same
/// studs come round again).
pub const WISH_REACH_MM: f64 = 406.4;

/// Kept clear round an opening for cables: 1/2 in (chosen: room for the saw and the box's ears).
pub const ENTRY_CLEAR_MM: f64 = 12.7;

/// Kept between an opening and the edge of what hides it: 1 in (chosen: hidden from a low seat too).
pub const ENTRY_HIDDEN_MM: f64 = 25.4;

/// Whether two lengths are one.
#[must_use]
pub fn same(a: Length, b: Length) -> bool {
    (a - b).mm().abs() <= SAME_PLACE_MM
}

/// How far the measured distance of two brackets may be from that of the threads they are screwed to: 5 mm, what a
/// tape across two bent sheets is unsure by (chosen; the patterns in use differ by 25 mm and more).
pub const BRACKETS_MEASURED_MM: f64 = 5.0;

/// No fastener counts so near to one that spins: 1 1/4 in, four diameters of a 5/16 in lag (chosen, as its spacing
/// along the grain).
pub const STRIPPED_WITHIN_MM: f64 = 31.75;

/// A hole that is drilled already is used where it is within a little over 1/16 in, a graduation (chosen: a lead hole
/// takes its fastener so far off its middle); farther off and nearer than one that spins, it takes wood from the new
/// one.
pub const SAME_HOLE_MM: f64 = 1.6;

/// A piece's middle so near to its plate's is the same to any tape: half of 1/16 in (chosen: the usual graduation).
pub const SAME_MIDDLE_MM: f64 = 0.79375;

/// The plate under a stud: 1 1/2 in (PS 20 dressed size, read second-hand).
pub const SOLE_PLATE_MM: f64 = 38.1;

/// A 90 % interval of the normal distribution is so many standard deviations to either side (any table of it).
pub const NINETY: f64 = 1.645;

/// No ceiling that nobody measured counts as higher: 7 ft (the least of a habitable room by IRC R305.1, from memory;
/// chosen: what is lower is seen).
pub const LOWEST_CEILING_IN: f64 = 84.0;

/// The two plates on a stud: 3 in (two of PS 20's dressed size; IRC section R602.3.2 asks for two, read second-hand).
pub const TOP_PLATES_MM: f64 = 76.2;

/// No fastener goes so near to an opening that is cut: half an inch for the saw (chosen).
pub const CUT_CLEAR_MM: f64 = 12.7;

/// How far a fastener's diameter may be from that of a published size, in inches: what a calliper is read to
/// (chosen; the nearest metric size is twice as far from an inch one).
pub const SAME_SIZE_IN: f64 = 0.001;

/// How far a tape's end butted into an inside corner may be off: 1/8 in (chosen: the blade bends there, and corners are
/// filled round).
pub const CORNER_DOUBT_MM: f64 = 3.175;

/// A distance meter whose doubt nobody said: 1/16 in (chosen: what their cases print is less).
pub const METER_DOUBT_MM: f64 = 1.5875;

/// What a display wants above and beside it where its maker says nothing: 2 in (chosen; common practice).
pub const AIR_MM: f64 = 50.8;

/// From the ankles out to hands that hold a flat piece by its sides: 40 cm (chosen).
pub const LIFT_OUT_MM: f64 = 400.0;

/// Where hands take it up: 50 cm (chosen: it stands on its edge on a low bench).
pub const LIFT_BEGUN_MM: f64 = 500.0;

/// How long a spirit level is that nobody measured: 24 in (chosen: a short one, since the same doubt over a longer
/// one is less out of level).
pub const LEVEL_LENGTH_MM: f64 = 609.6;

/// How far a plate shifts on a fastener where its hole or that fastener was not measured: 1/16 in (chosen: the
/// clearance of a usual bolt hole).
pub const PLATE_SHIFT_MM: f64 = 1.5875;

/// How far an upright is off its place in the pattern: 1/8 in, one standard deviation (layout tolerance under 10 ft,
/// read second-hand).
pub const LAYOUT_SD_MM: f64 = 3.175;

/// How far an upright leans, one standard deviation: 1/4 in in 8 ft (a framing tolerance, read second-hand; as a
/// standard deviation, not as a bound, chosen on the safe side).
pub const LEAN_SLOPE: f64 = 6.35 / 2438.4;

/// A probe tells of a fastener within this height of it: 150 mm (chosen: lean).
pub const PROBED_WITHIN_MM: f64 = 150.0;

/// And within this distance to its side: 1/4 in (chosen: nobody drills twice so near).
pub const PROBED_BESIDE_MM: f64 = 6.35;

/// On steel, metal has to be met at two heights at least so far apart: 300 mm (chosen: a strap or a pipe's bend is
/// shorter).
pub const STEEL_APART_MM: f64 = 300.0;

/// A spacing is spoken of as the wall's from this probability on: four in five (chosen; below, the text says that none
/// is sure).
pub const SPOKEN_OF: f64 = 0.8;

/// A washer under a fastener's head where nobody measured it: 1/8 in (chosen; thicker than any usual one, and what it
/// takes off the depth in wood is on the safe side).
pub const WASHER_MM: f64 = 3.175;

/// What share of an anchor's rating shows what it would add: a quarter (chosen; board is weaker where it is damp, cut
/// or old, and nobody saw it). No part of a verdict.
pub const ANCHOR_SHARE: f64 = 0.25;

/// What share of what one hole withstood in a pull test a fixing counts with: a quarter (chosen; the test proves one
/// hole under a short pull, its neighbours may stand in a joint or a flaw, and what hangs stays for years).
pub const TESTED_SHARE: f64 = 0.25;

/// A stud's depth where nobody measured it: 2 1/2 in, the least usual of a wall (chosen; no fastener may reach past
/// it).
pub const LEAST_STUD_DEPTH_MM: f64 = 63.5;

/// How much of a group's reserve is counted in the choice: up to twice what is needed (chosen; more buys nothing).
pub const MOST_RESERVE: f64 = 1.0;

/// A plug that nobody measured stands out so far with the start of its cable: 3 in (chosen: longer than usual plugs).
pub const PLUG_REACH_MM: f64 = 76.2;

/// What stands in front of the framing where nobody measured it, for a cable that has to go through it: 2 1/2 in
/// (chosen: the thickest plaster on lath that was read of, second-hand).
pub const THICKEST_FRONT_MM: f64 = 63.5;

/// A piece whose stand-off nobody measured is taken to stand so far off: 4 in (chosen: a folded arm's; what stands
/// farther off hides less of the wall, and its picture is nearer to the eyes).
pub const STAND_OFF_MM: f64 = 101.6;

/// A piece whose depth nobody measured is taken to be so deep: 4 in (chosen: its picture is nearer to the eyes then).
pub const DEPTH_MM: f64 = 101.6;

/// A mount that tilts, and nobody said how far, is taken to tilt so far forward: 15 degrees (chosen: it hides less
/// then).
pub const TILT_DEG: f64 = 15.0;

/// Added to a plug's width for a plain hole: 1/4 in (chosen: it goes through with its hood).
pub const PLUG_CLEAR_MM: f64 = 6.35;

/// A hand plugs in behind a hung piece from this stand-off on: 2 1/2 in (chosen: the thickness of a hand with a plug).
pub const HAND_MM: f64 = 63.5;

/// An arm of which nobody measured how far it reaches: 600 mm (chosen; assumed).
pub const ARM_REACH_MM: f64 = 600.0;

/// A pull-down of which nobody measured how far it comes down: 900 mm (chosen: from a mantel to the height of seated
/// eyes; a cable that is too short is none).
pub const LOWERS_MM: f64 = 900.0;

/// A tube of which only the bore was measured is at most so much wider outside (chosen: the thinnest sizes of the
/// trade's plastic tube have 1.35, from memory).
pub const TUBE_OUTSIDE: f64 = 1.4;

/// How far a piece is held off the wall while it is plugged: 16 in (chosen: two hands and a look behind).
pub const HELD_OFF_MM: f64 = 406.4;

/// How high the middle of an exit is above the floor where nothing says otherwise: 16 in (chosen, within 12 to 18 in,
/// where outlets usually are, and within 15 to 48 in of ADA section 308; both read second-hand).
pub const EXIT_UP_MM: f64 = 406.4;

/// The same by United Kingdom guidance: 450 mm (Approved Document M, new dwellings, read second-hand).
pub const EXIT_UP_UK_MM: f64 = 450.0;

/// How many other ways are told (chosen: what a short list holds).
pub const OTHER_WAYS: usize = 4;

/// How wide a raceway on the face is: 1 in (chosen: room for two cables).
pub const RACEWAY_MM: f64 = 25.4;
