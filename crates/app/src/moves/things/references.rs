//! What the entries of a wall name by id: what they were read from, placed by, or end at.

use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{
    AcrossDatum, AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::job::rule::{AcrossRule, UprightRule};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::subject::Id;

/// What is shown every id that is named.
type See<'a> = dyn FnMut(&mut Id) + 'a;

/// Shows every id that a wall's entries name, of whatever they name. Facts are not looked at.
pub(super) fn each_reference(wall: &mut Wall, see: &mut See<'_>) {
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
    for hanging in wall.options.iter_mut().flat_map(|option| &mut option.hangings) {
        hanging_names(hanging, see);
    }
    wall.chosen.iter_mut().for_each(see);
}

/// Shows every id that a hanging's rules and cables name.
pub(super) fn hanging_names(hanging: &mut Hanging, see: &mut See<'_>) {
    match &mut hanging.across {
        AcrossRule::OnWall => {}
        AcrossRule::On(id) => see(id),
        AcrossRule::Between(a, b) => {
            across_datum(a, see);
            across_datum(b, see);
        }
        AcrossRule::Beside { from, .. } => across_datum(from, see),
    }
    match &mut hanging.upright {
        UprightRule::Height { from, .. } => upright_datum(from, see),
        UprightRule::Gap { of, .. } => see(of),
        UprightRule::Aligned { with, .. } => see(&mut with.id),
    }
    for wish in &mut hanging.cables {
        see(&mut wish.port);
        wish.ends_at.iter_mut().for_each(&mut *see);
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
    across_datum(&mut reading.from, see);
    if let Some(check) = &mut reading.check {
        across(check, see);
    }
}

fn upright(reading: &mut UprightReading, see: &mut See<'_>) {
    upright_datum(&mut reading.from, see);
    if let Some(at) = &mut reading.at {
        across(at, see);
    }
    if let Some(check) = &mut reading.check {
        upright(check, see);
    }
}

fn across_datum(datum: &mut AcrossDatum, see: &mut See<'_>) {
    if let AcrossDatum::Edge(subject) = datum {
        see(&mut subject.id);
    }
}

fn upright_datum(datum: &mut UprightDatum, see: &mut See<'_>) {
    if let UprightDatum::Edge(subject) = datum {
        see(&mut subject.id);
    }
}
