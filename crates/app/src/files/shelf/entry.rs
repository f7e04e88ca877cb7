//! One thing of the shelf, and its text.

use crate::files::fault::Fault;
use crate::files::text::{from_ron, to_ron};
use serde::{Deserialize, Serialize};
use strikeline_solver::job::kit::Kit;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::settings::Settings;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::job::{CodeSet, Job, Units};
use strikeline_solver::tape::Graduation;

/// The format that this program reads and writes.
pub const FORMAT: u32 = 1;

/// One thing of the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// What it is called on the shelf.
    pub name: String,
    /// The thing.
    pub thing: Thing,
}

/// What can be kept: written `mount((..))`, `piece((..))`, `wall((..))`, `kit((..))` or `defaults((..))`, each
/// with the fields that it has in a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Thing {
    /// A mount with its plate.
    Mount(Box<Mount>),
    /// A display or another piece.
    Piece(Box<Piece>),
    /// What a wall is built of; nothing of its size, its place or what is on it.
    Wall(Box<Wall>),
    /// What is on the truck.
    Kit(Kit),
    /// Units and settings.
    Defaults(Defaults),
}

/// How somebody likes to work.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Defaults {
    /// The unit of a bare number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub units: Option<Units>,
    /// How finely readings are told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub graduation: Option<Graduation>,
    /// Which published code figures are shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub codes: Option<CodeSet>,
    /// What may be set.
    #[serde(default)]
    pub settings: Settings,
}

/// A kind of thing, in the order in which a shelf shows them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ThingKind {
    /// A display or another piece.
    Piece,
    /// A mount.
    Mount,
    /// What a wall is built of.
    Wall,
    /// A kit.
    Kit,
    /// Defaults.
    Defaults,
}

impl ThingKind {
    /// Its word in files and their names.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Piece => "piece",
            Self::Mount => "mount",
            Self::Wall => "wall",
            Self::Kit => "kit",
            Self::Defaults => "defaults",
        }
    }
}

impl Thing {
    /// Which kind it is.
    #[must_use]
    pub fn kind(&self) -> ThingKind {
        match self {
            Self::Mount(_) => ThingKind::Mount,
            Self::Piece(_) => ThingKind::Piece,
            Self::Wall(_) => ThingKind::Wall,
            Self::Kit(_) => ThingKind::Kit,
            Self::Defaults(_) => ThingKind::Defaults,
        }
    }

    /// A job with this and nothing else.
    pub(super) fn alone(&self) -> Job {
        let mut job = Job::new();
        match self {
            Self::Mount(mount) => job.mounts.push((**mount).clone()),
            Self::Piece(piece) => job.pieces.push((**piece).clone()),
            Self::Wall(wall) => job.walls.push((**wall).clone()),
            Self::Kit(kit) => job.kit = kit.clone(),
            Self::Defaults(_) => {}
        }
        job
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    format: u32,
    name: String,
    thing: Thing,
}

/// What does not belong on a shelf although it could be read.
pub(super) struct Wrong {
    /// The field at which it is seen.
    pub(super) field: &'static str,
    /// What is wrong, and what was expected.
    pub(super) what: String,
}

impl Entry {
    /// The same, called otherwise: on the shelf, and in the jobs that it is put into.
    #[must_use]
    pub fn called(mut self, name: &str) -> Self {
        name.clone_into(&mut self.name);
        let own = match &mut self.thing {
            Thing::Mount(mount) => &mut mount.name,
            Thing::Piece(piece) => &mut piece.name,
            Thing::Wall(_) | Thing::Kit(_) | Thing::Defaults(_) => return self,
        };
        *own = Some(name.to_owned());
        self
    }

    /// Reads a text.
    pub(in crate::files) fn read(text: &str) -> Result<Self, Fault> {
        let written: Written = from_ron(text, "thing of the shelf", FORMAT)?;
        Ok(Self { name: written.name, thing: written.thing })
    }

    /// Its text.
    pub(super) fn text(&self) -> Result<String, String> {
        to_ron(&Written { format: FORMAT, name: self.name.clone(), thing: self.thing.clone() })
    }

    /// What does not belong on a shelf.
    pub(super) fn wrong(&self) -> Option<Wrong> {
        if let Err(double) = self.thing.alone().complete_ids() {
            let what = format!("the id \"{}\" stands twice in it; give one of them another", double.id);
            return Some(Wrong { field: "thing", what });
        }
        match &self.thing {
            Thing::Mount(mount) => {
                let plate = mount.plate.as_ref();
                let holes = plate.into_iter().flat_map(|plate| plate.holes.iter().map(|hole| &hole.id));
                let slots = plate.into_iter().flat_map(|plate| plate.slots.iter().map(|slot| &slot.id));
                let places: Vec<_> = holes.chain(slots).collect();
                let required = mount.required.as_ref()?;
                let missing = required.holes.iter().find(|id| !places.contains(id))?;
                let what = format!("the plate has no hole or slot \"{missing}\" that could be required");
                Some(Wrong { field: "required", what })
            }
            Thing::Wall(wall) if **wall != construction(wall) => {
                let what = "a wall of the shelf holds only what it is built of: left_end, right_end, front, \
                            framing, insulated, vapour_barrier";
                Some(Wrong { field: "thing", what: what.to_owned() })
            }
            Thing::Wall(_) | Thing::Piece(_) | Thing::Kit(_) | Thing::Defaults(_) => None,
        }
    }
}

/// What a wall is built of. What lies beyond it, whether it bears and whether it is wet are of its place: they
/// are asked anew of each wall, since a cut or a hole may hang on them.
pub(crate) fn construction(wall: &Wall) -> Wall {
    Wall {
        left_end: wall.left_end,
        right_end: wall.right_end,
        front: wall.front.clone(),
        framing: wall.framing.clone(),
        insulated: wall.insulated,
        vapour_barrier: wall.vapour_barrier,
        ..Wall::default()
    }
}
