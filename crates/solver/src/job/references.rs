//! What the entries of a wall name by id: what they were read from, placed by, or end at.

use super::Job;
use super::option::{Hanging, Opening};
use super::place::{AcrossDatum, AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading};
use super::rule::{AcrossRule, UprightRule};
use super::wall::Wall;
use crate::subject::Id;

/// What an entry names.
#[derive(Debug)]
pub enum Named<'a> {
    /// What a sideways distance is measured from.
    Across(&'a mut AcrossDatum),
    /// What a height is measured from.
    Upright(&'a mut UprightDatum),
    /// A thing as a whole.
    Thing(&'a mut Id),
}

impl<'a> Named<'a> {
    /// The id that is named; none where a datum is no thing's edge.
    #[must_use]
    pub fn id(self) -> Option<&'a mut Id> {
        match self {
            Self::Across(AcrossDatum::Edge(edge)) | Self::Upright(UprightDatum::Edge(edge)) => {
                Some(&mut edge.id)
            }
            Self::Across(_) | Self::Upright(_) => None,
            Self::Thing(id) => Some(id),
        }
    }
}

/// What is shown everything that is named.
type See<'a> = dyn FnMut(Named<'_>) + 'a;

impl Job {
    /// Writes each wall's own edge, such as `wall-1.left`, as the end that it is.
    pub fn name_ends(&mut self) {
        self.walls.iter_mut().for_each(Wall::name_ends);
    }
}

impl Wall {
    /// A wall's own edge is its end, however it was written.
    fn name_ends(&mut self) {
        let own = self.id.clone();
        each_reference(self, &mut |named| {
            if let Named::Across(datum) = named
                && let AcrossDatum::Edge(edge) = &*datum
                && edge.id == own
            {
                match edge.part_str() {
                    "left" => *datum = AcrossDatum::LeftEnd,
                    "right" => *datum = AcrossDatum::RightEnd,
                    _ => {}
                }
            }
        });
    }
}

/// Shows everything that a wall's entries name. Facts are not looked at.
pub fn each_reference(wall: &mut Wall, see: &mut See<'_>) {
    for reading in &mut wall.floor {
        across(&mut reading.at, see);
    }
    for reading in &mut wall.flatness {
        across(&mut reading.at, see);
        reading.up.iter_mut().for_each(|up| upright(up, see));
    }
    for feature in &mut wall.features {
        across_extent(&mut feature.across, see);
        upright_extent(&mut feature.upright, see);
    }
    for hidden in &mut wall.hidden {
        across_extent(&mut hidden.across, see);
        upright_extent(&mut hidden.upright, see);
    }
    for hit in &mut wall.hits {
        across(&mut hit.x, see);
        hit.y.iter_mut().for_each(|y| upright(y, see));
    }
    for at in wall.seats.iter_mut().filter_map(|seat| seat.at.as_mut()) {
        across(at, see);
    }
    for hanging in wall.options.iter_mut().flat_map(|option| &mut option.hangings) {
        hanging_names(hanging, see);
    }
    let agreed = wall.options.iter_mut().filter_map(|option| option.agreed.as_mut());
    for place in agreed.flat_map(|agreed| &mut agreed.places) {
        see(Named::Thing(&mut place.piece));
    }
    wall.chosen.iter_mut().for_each(|id| see(Named::Thing(id)));
}

/// Shows everything that a hanging's rules and cables name.
pub fn hanging_names(hanging: &mut Hanging, see: &mut See<'_>) {
    match &mut hanging.across {
        AcrossRule::OnWall => {}
        AcrossRule::On(id) => see(Named::Thing(id)),
        AcrossRule::Between(a, b) => {
            see(Named::Across(a));
            see(Named::Across(b));
        }
        AcrossRule::Beside { from, .. } => see(Named::Across(from)),
    }
    match &mut hanging.upright {
        UprightRule::Height { from, .. } => see(Named::Upright(from)),
        UprightRule::Gap { of, .. } => see(Named::Thing(of)),
        UprightRule::Aligned { with, .. } => see(Named::Thing(&mut with.id)),
    }
    for wish in &mut hanging.cables {
        see(Named::Thing(&mut wish.port));
        wish.ends_at.iter_mut().for_each(|id| see(Named::Thing(id)));
        wish.cable.iter_mut().for_each(|id| see(Named::Thing(id)));
    }
    hanging.way.behind.iter_mut().for_each(|id| see(Named::Thing(id)));
    for opening in [&mut hanging.way.entry_kind, &mut hanging.way.exit_kind] {
        if let Some(Opening::Stocked(id)) = opening {
            see(Named::Thing(id));
        }
    }
}

fn across_extent(extent: &mut AcrossExtent, see: &mut See<'_>) {
    let AcrossExtent { left, right, centre, width: _ } = extent;
    for reading in [left, right, centre].into_iter().flatten() {
        across(reading, see);
    }
}

fn upright_extent(extent: &mut UprightExtent, see: &mut See<'_>) {
    let UprightExtent { bottom, bottom_at_right, top, top_at_right, centre, height: _ } = extent;
    for reading in [bottom, bottom_at_right, top, top_at_right, centre].into_iter().flatten() {
        upright(reading, see);
    }
}

fn across(reading: &mut AcrossReading, see: &mut See<'_>) {
    see(Named::Across(&mut reading.from));
    if let Some(check) = &mut reading.check {
        across(check, see);
    }
}

fn upright(reading: &mut UprightReading, see: &mut See<'_>) {
    see(Named::Upright(&mut reading.from));
    if let Some(at) = &mut reading.at {
        across(at, see);
    }
    if let Some(check) = &mut reading.check {
        upright(check, see);
    }
}
