//! What is on the truck: fasteners, anchors, drill bits, cables, boxes, levels and measures.

use crate::subject::Id;
use crate::units::{Force, ForcePerLength, Length, Ratio, Stress};
use serde::{Deserialize, Serialize};

/// What is on the truck.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kit {
    /// Fasteners, by type and size.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fasteners: Vec<FastenerStock>,
    /// Drill bits.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bits: Vec<DrillBit>,
    /// Cables, by stocked length.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cables: Vec<CableStock>,
    /// Boxes and brackets for the wall.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub boxes: Vec<BoxStock>,
    /// Tapes, levels, lasers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub measures: Vec<Measure>,
    /// How many nail plates there are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nail_plates: Option<u32>,
    /// How many places the patch material makes good.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub patches: Option<u32>,
}

/// One size of one type of fastener.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FastenerStock {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Its type.
    pub kind: FastenerKind,
    /// Its nominal diameter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diameter: Option<Length>,
    /// Its length under the head.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Length>,
    /// The diameter of its head or washer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head: Option<Length>,
    /// The thickness of the washer under its head; 0 where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub washer: Option<Length>,
    /// How many there are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
    /// Of a lag screw, whether it has a hex head and a coarse thread to a smooth shank, made to B18.2.1. If not, it is
    /// a structural screw.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_standard: Option<bool>,
    /// What its maker says it can carry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub report: Option<Report>,
}

/// What the maker of a proprietary fastener says it can carry: stated, so never the ground of a verdict.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Report {
    /// The document, as it names itself.
    pub document: String,
    /// Its date, as it is written there.
    pub date: String,
    /// What each length of its thread in wood withstands, pulled straight out of side grain.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub withdrawal: Option<ForcePerLength>,
    /// The specific gravity of the wood that the withdrawal is stated for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gravity: Option<Ratio>,
    /// The outer diameter of its thread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outer_diameter: Option<Length>,
    /// The root diameter of its thread.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub root_diameter: Option<Length>,
    /// Its bending yield strength.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bending: Option<Stress>,
    /// The length of its thread, tip included.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<Length>,
    /// The least depth in wood.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_depth: Option<Length>,
    /// The least distance to an edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_edge: Option<Length>,
    /// Of an anchor or a fixing, the load that its maker recommends or rates it for, in shear.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shear: Option<Force>,
    /// The same pulled straight out; or what a pull test on this wall withstood, made as a licensed tester has it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pull: Option<Force>,
    /// What these loads are for, in the document's own words, such as "solid brick".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub base: Option<String>,
    /// Whether the pull is from a test on this wall. It proves one hole, not the group.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tested: Option<bool>,
}

/// A type of fastener or anchor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FastenerKind {
    /// A wood screw.
    WoodScrew,
    /// A lag screw.
    Lag,
    /// A proprietary structural screw, by its report.
    StructuralScrew,
    /// A screw into sheet steel.
    SheetMetalScrew,
    /// A concrete screw.
    ConcreteScrew,
    /// A hollow-wall anchor: never counted in a verdict.
    Anchor,
    /// A fixing in brick or block: by what is stated of it, so never the ground of a verdict.
    Fixing,
    /// A hardened drywall screw: refused, since it is brittle.
    DrywallScrew,
}

/// A drill bit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrillBit {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Its diameter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diameter: Option<Length>,
    /// How deep it drills, from its tip to the chuck.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Length>,
}

/// One stocked length of cable.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CableStock {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What it carries.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub signal: Option<Signal>,
    /// Its length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Length>,
    /// Its outside diameter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outside: Option<Length>,
    /// The width of its larger plug.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plug: Option<Length>,
    /// Whether its jacket says that it is listed for running inside a wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_wall: Option<bool>,
    /// The least radius that its maker lets it be bent to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bend: Option<Length>,
    /// The longest that its maker lets it carry over.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longest: Option<Length>,
    /// How many there are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
}

/// What a cable carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Signal {
    /// Picture and sound over copper, nothing in the cable to make it stronger.
    Picture,
    /// Picture and sound, made stronger within the cable or carried by light.
    PictureActive,
    /// A network, over four pairs.
    Network,
    /// A network by light.
    Fibre,
    /// An aerial's signal.
    Aerial,
    /// Sound to speakers.
    Speaker,
    /// Mains power: a flexible cord.
    Power,
    /// Anything else of low voltage.
    Other,
}

/// One kind of box or bracket.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoxStock {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The width of its cut-out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
    /// The height of its cut-out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Length>,
    /// Its depth behind the face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Length>,
    /// How many there are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
}

/// A tool that measures or levels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Measure {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is.
    pub kind: MeasureKind,
    /// How far off it may be, where known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub doubt: Option<Length>,
    /// Of a tape, the accuracy class printed on it; counts where `doubt` is absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class: Option<AccuracyClass>,
    /// Of a spirit level, how long it is: over that it is off by `doubt`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Length>,
}

/// The accuracy class of a tape, as it is printed at its beginning; the first is the best.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AccuracyClass {
    /// Class I.
    I,
    /// Class II.
    Ii,
    /// Class III.
    Iii,
}

/// A kind of measuring tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasureKind {
    /// A tape.
    Tape,
    /// A distance meter.
    DistanceMeter,
    /// A line laser.
    LineLaser,
    /// A water level.
    WaterLevel,
    /// A spirit level.
    SpiritLevel,
}

impl Kit {
    /// Whether there is a tool of this kind.
    #[must_use]
    pub fn has(&self, kind: MeasureKind) -> bool {
        self.measures.iter().any(|measure| measure.kind == kind)
    }
}
