//! Heights, once the sides are known: from the floor below, the control line, or another thing's edge.

use super::super::Notes;
use super::across::{AcrossPlaces, Sides, names_thing};
use super::usual;
use crate::finding::What;
use crate::job::place::{UprightDatum, UprightExtent, UprightReading};
use crate::job::wall::Wall;
use crate::plan::AssumedWhat;
use crate::plan::survey::{Floor, Misfit};
use crate::subject::Id;
use crate::units::Length;
use std::collections::BTreeMap;

/// The lower and upper edge of a thing, each at its left and right end.
#[derive(Clone, Copy, Debug)]
pub(super) struct Heights {
    pub(super) bottom: (Length, Length),
    pub(super) top: (Length, Length),
    pub(super) assumed: bool,
}

/// What heights are measured from.
pub(super) struct UprightPlaces<'a> {
    pub(super) wall: &'a Wall,
    pub(super) across: &'a AcrossPlaces<'a>,
    pub(super) floor: &'a Floor,
    pub(super) control_line_y: Option<Length>,
    pub(super) ceiling: Length,
}

/// The heights of every feature and hidden thing of a wall.
pub(super) struct FoundHeights<'a> {
    wall: &'a Wall,
    found: BTreeMap<&'a Id, Heights>,
}

/// One thing with an extent, seen alike whether feature or hidden.
struct Thing<'a> {
    id: &'a Id,
    extent: &'a UprightExtent,
    sides: Sides,
    usual_height: Length,
    on_floor: bool,
    to_ceiling: bool,
}

impl<'a> FoundHeights<'a> {
    /// The heights of the feature at this place of the job's list.
    pub(super) fn feature(&self, index: usize) -> Option<Heights> {
        self.found.get(&self.wall.features.get(index)?.id).copied()
    }

    /// The heights of the hidden thing at this place of the job's list.
    pub(super) fn hidden(&self, index: usize) -> Option<Heights> {
        self.found.get(&self.wall.hidden.get(index)?.id).copied()
    }

    /// Where a reading taken at `x` leads.
    pub(super) fn reading(
        &self,
        places: &UprightPlaces<'_>,
        reading: &UprightReading,
        x: Length,
    ) -> Option<Length> {
        places.place(reading, x, &self.found)
    }
}

impl<'a> UprightPlaces<'a> {
    /// Works out the heights of everything, as often as one more can be settled.
    pub(super) fn all(&self, step: Length, misfits: &mut Vec<Misfit>, notes: &mut Notes) -> FoundHeights<'a> {
        let features = self.wall.features.iter().enumerate().filter_map(|(index, feature)| {
            Some(Thing {
                id: &feature.id,
                extent: &feature.upright,
                sides: self.across.feature(index)?,
                usual_height: usual::size(feature.kind).1,
                on_floor: usual::stands_on_floor(feature.kind),
                to_ceiling: usual::reaches_ceiling(feature.kind),
            })
        });
        let hidden = self.wall.hidden.iter().enumerate().filter_map(|(index, hidden)| {
            Some(Thing {
                id: &hidden.id,
                extent: &hidden.upright,
                sides: self.across.hidden(index)?,
                usual_height: Length::millimetres(50.0),
                on_floor: hidden.upright == UprightExtent::default(),
                to_ceiling: hidden.upright == UprightExtent::default(),
            })
        });
        let mut waiting: Vec<Thing<'a>> = features.chain(hidden).collect();
        let mut found = BTreeMap::new();
        loop {
            let before = waiting.len();
            waiting.retain(|thing| match self.heights(thing, &found, step, misfits, notes) {
                Some(heights) => {
                    found.insert(thing.id, heights);
                    false
                }
                None => true,
            });
            if waiting.len() == before {
                break;
            }
        }
        for thing in waiting {
            notes.stop(thing.id.whole(), self.unsettled(thing.extent));
        }
        FoundHeights { wall: self.wall, found }
    }

    /// Why an extent could not be settled.
    fn unsettled(&self, extent: &UprightExtent) -> What {
        let readings =
            [&extent.bottom, &extent.bottom_at_right, &extent.top, &extent.top_at_right, &extent.centre];
        for reading in readings.into_iter().flatten() {
            match &reading.from {
                UprightDatum::Edge(subject) if !names_thing(self.wall, &subject.id) => {
                    return What::NotThere { named: subject.clone() };
                }
                UprightDatum::ControlLine if self.control_line_y.is_none() => {
                    return What::NotThere { named: self.wall.id.part("control_line") };
                }
                _ => {}
            }
        }
        What::Ring
    }

    fn place(&self, reading: &UprightReading, x: Length, found: &BTreeMap<&Id, Heights>) -> Option<Length> {
        let x = match &reading.at {
            Some(at) => self.across.place(at)?.0,
            None => x,
        };
        let datum = match &reading.from {
            UprightDatum::Floor => self.floor.y_at(x),
            UprightDatum::ControlLine => self.control_line_y?,
            UprightDatum::Edge(subject) => {
                let heights = found.get(&subject.id)?;
                let middle = |ends: (Length, Length)| (ends.0 + ends.1) / 2.0;
                match subject.part_str() {
                    "bottom" => middle(heights.bottom),
                    "top" => middle(heights.top),
                    _ => (middle(heights.bottom) + middle(heights.top)) / 2.0,
                }
            }
        };
        Some(datum + reading.by * reading.way().sign())
    }

    /// Any two of lower edge, upper edge, middle and height settle a thing; the rest are checks.
    fn heights(
        &self,
        thing: &Thing<'_>,
        found: &BTreeMap<&Id, Heights>,
        step: Length,
        misfits: &mut Vec<Misfit>,
        notes: &mut Notes,
    ) -> Option<Heights> {
        let (extent, span) = (thing.extent, thing.sides.span);
        let edge =
            |at_left: &Option<UprightReading>, at_right: &Option<UprightReading>| match (at_left, at_right) {
                (None, None) => Some(None),
                (Some(one), None) | (None, Some(one)) => {
                    self.place(one, span.middle(), found).map(|y| Some((y, y)))
                }
                (Some(left), Some(right)) => {
                    let left = self.place(left, span.from, found)?;
                    Some(Some((left, self.place(right, span.to, found)?)))
                }
            };
        let bottom = edge(&extent.bottom, &extent.bottom_at_right)?;
        let top = edge(&extent.top, &extent.top_at_right)?;
        let centre = edge(&extent.centre, &None)?;
        let mut assumed = thing.sides.assumed || leans_on_assumed(extent, found);
        let moved = |ends: (Length, Length), by: Length| (ends.0 + by, ends.1 + by);
        let floor = || (self.floor.y_at(span.from), self.floor.y_at(span.to));
        let (bottom, top) = match (bottom, top, centre, extent.height) {
            (Some(bottom), Some(top), _, _) => (bottom, top),
            (Some(bottom), None, _, Some(height)) => (bottom, moved(bottom, height)),
            (None, Some(top), _, Some(height)) => (moved(top, -height), top),
            (None, None, Some(centre), Some(height)) => {
                (moved(centre, -height / 2.0), moved(centre, height / 2.0))
            }
            (None, Some(top), _, None) if thing.on_floor => (floor(), top),
            (Some(bottom), None, _, None) if thing.to_ceiling => (bottom, (self.ceiling, self.ceiling)),
            (None, None, None, Some(height)) if thing.on_floor => (floor(), moved(floor(), height)),
            (None, None, None, Some(height)) if thing.to_ceiling => {
                assumed |= self.wall.height.is_none();
                ((self.ceiling - height, self.ceiling - height), (self.ceiling, self.ceiling))
            }
            (None, None, None, None) if thing.on_floor && thing.to_ceiling => {
                (floor(), (self.ceiling, self.ceiling))
            }
            (bottom, top, centre, height) => {
                assumed = true;
                let height = height.unwrap_or(thing.usual_height);
                if bottom.is_none() && top.is_none() && centre.is_none() {
                    notes.assume(thing.id.whole(), AssumedWhat::PlaceUpright, false);
                } else {
                    notes.assume(thing.id.whole(), AssumedWhat::Height(height), false);
                }
                match (bottom, top, centre) {
                    (Some(bottom), _, _) => (bottom, moved(bottom, height)),
                    (_, Some(top), _) => (moved(top, -height), top),
                    (_, _, Some(centre)) => (moved(centre, -height / 2.0), moved(centre, height / 2.0)),
                    (None, None, None) => (floor(), moved(floor(), height)),
                }
            }
        };
        let mean = |ends: (Length, Length)| (ends.0 + ends.1) / 2.0;
        let mut compare = |subject, used: Length, other: Option<Length>| {
            if let Some(other) = other.filter(|other| (*other - used).abs() > step) {
                misfits.push(Misfit { subject, used, other });
            }
        };
        compare(thing.id.whole(), mean(top) - mean(bottom), extent.height);
        for (part, reading, used, x) in
            [("bottom", &extent.bottom, bottom.0, span.from), ("top", &extent.top, top.0, span.from)]
        {
            let check = reading.as_ref().and_then(|reading| reading.check.as_deref());
            compare(thing.id.part(part), used, check.and_then(|check| self.place(check, x, found)));
        }
        Some(Heights { bottom, top, assumed })
    }
}

/// Whether an edge that an extent is read from is itself assumed.
fn leans_on_assumed(extent: &UprightExtent, found: &BTreeMap<&Id, Heights>) -> bool {
    let readings =
        [&extent.bottom, &extent.bottom_at_right, &extent.top, &extent.top_at_right, &extent.centre];
    readings.into_iter().flatten().any(|reading| match &reading.from {
        UprightDatum::Floor | UprightDatum::ControlLine => false,
        UprightDatum::Edge(edge) => found.get(&edge.id).is_some_and(|heights| heights.assumed),
    })
}
