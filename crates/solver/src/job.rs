//! The job: what was measured and wished, as its file says it. Nothing derived is ever kept here.
//!
//! A value that was not measured is absent. Every entry of a list carries an id; see `ids`.

pub mod agreed;
pub mod fact;
pub mod feature;
pub mod framing;
pub mod hidden;
pub mod hit;
pub mod ids;
pub mod kit;
pub mod mount;
pub mod option;
pub mod picture;
pub mod piece;
pub mod place;
pub mod plate;
pub mod port;
pub mod references;
pub mod rule;
pub mod seat;
pub mod settings;
pub mod wall;

use crate::subject::Id;
use crate::tape::Graduation;
use kit::Kit;
use mount::Mount;
use picture::SitePicture;
use piece::Piece;
use serde::{Deserialize, Serialize};
use settings::Settings;
use wall::Wall;

/// The format that this program reads and writes. Optional fields may be added under it.
pub const FORMAT: u32 = 1;

/// One room: its walls, what hangs on them, the options and what is on the truck.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// The format of the file; leads it.
    pub format: u32,
    /// The highest number given to an id, so that none is ever used again.
    #[serde(default)]
    pub last_id: u32,
    /// What the job is called.
    #[serde(default)]
    pub title: String,
    /// Anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
    /// The unit of a bare number on screen. Inches where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub units: Option<Units>,
    /// How finely readings are told. Where not given 1/16 in, or 1 mm in a metric job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub graduation: Option<Graduation>,
    /// What may be set; what is not set has the value that `settings` gives.
    #[serde(default, skip_serializing_if = "is_default")]
    pub settings: Settings,
    /// The year the house was built.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub year_built: Option<u16>,
    /// Who uses the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub purpose: Option<Purpose>,
    /// Which published code figures are shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub codes: Option<CodeSet>,
    /// What is on the truck.
    #[serde(default, skip_serializing_if = "is_default")]
    pub kit: Kit,
    /// What is to be hung.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<Piece>,
    /// What it may be hung with.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub mounts: Vec<Mount>,
    /// The walls of the room.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub walls: Vec<Wall>,
    /// Pictures taken on site, in the order in which they were added.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pictures: Vec<SitePicture>,
}

/// The unit of a bare number on screen, and of what is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Units {
    /// Inches and fractions.
    Inches,
    /// Millimetres.
    Millimetres,
}

/// Who uses the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Purpose {
    /// A private home.
    Home,
    /// A place where people work.
    Workplace,
    /// A place open to all.
    Public,
}

/// Which published code figures are shown; local codes govern always.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CodeSet {
    /// United States model codes.
    Us,
    /// United Kingdom regulations and standards.
    Uk,
    /// None.
    None,
}

impl Job {
    /// An empty job of the present format.
    #[must_use]
    pub fn new() -> Self {
        Self { format: FORMAT, ..Self::default() }
    }

    /// The unit of a bare number on screen.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units.unwrap_or(Units::Inches)
    }

    /// How lengths are told: the set graduation, else 1/16 in, or 1 mm in a metric job.
    #[must_use]
    pub fn style(&self) -> crate::tape::Style {
        let graduation = self.graduation.unwrap_or(match self.units() {
            Units::Inches => Graduation::Sixteenth,
            Units::Millimetres => Graduation::Millimetre,
        });
        crate::tape::Style { graduation, feet_inches: self.settings.feet_inches() }
    }

    /// The wall of this id.
    #[must_use]
    pub fn wall(&self, id: &Id) -> Option<&Wall> {
        self.walls.iter().find(|wall| wall.id == *id)
    }

    /// The piece of this id.
    #[must_use]
    pub fn piece(&self, id: &Id) -> Option<&Piece> {
        self.pieces.iter().find(|piece| piece.id == *id)
    }

    /// The mount of this id.
    #[must_use]
    pub fn mount(&self, id: &Id) -> Option<&Mount> {
        self.mounts.iter().find(|mount| mount.id == *id)
    }
}

/// Whether a value says nothing, so that a file need not hold it.
fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}
