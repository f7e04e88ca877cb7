//! Sideways places. A thing may be read from the edge of another, in any order; a ring is found and told.

use super::super::Notes;
use super::usual;
use crate::finding::What;
use crate::geometry::Span;
use crate::job::place::{AcrossDatum, AcrossExtent, AcrossReading};
use crate::job::wall::Wall;
use crate::plan::AssumedWhat;
use crate::plan::survey::Misfit;
use crate::subject::{Id, Subject};
use crate::units::Length;
use std::collections::BTreeMap;

/// The sides of a thing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sides {
    pub(super) span: Span,
    pub(super) assumed: bool,
}

/// The sides of every feature and hidden thing of a wall.
pub(super) struct AcrossPlaces<'a> {
    wall: &'a Wall,
    width: Length,
    found: BTreeMap<&'a Id, Sides>,
}

/// One thing with an extent, seen alike whether feature or hidden.
struct Thing<'a> {
    id: &'a Id,
    extent: &'a AcrossExtent,
    usual_width: Length,
    runs_across: bool,
}

impl<'a> AcrossPlaces<'a> {
    /// Works out the sides of everything, as often as one more can be settled.
    pub(super) fn of(
        wall: &'a Wall,
        width: Length,
        step: Length,
        misfits: &mut Vec<Misfit>,
        notes: &mut Notes,
    ) -> Self {
        let features = wall.features.iter().map(|feature| Thing {
            id: &feature.id,
            extent: &feature.across,
            usual_width: usual::size(feature.kind).0,
            runs_across: usual::runs_across(feature.kind),
        });
        let hidden = wall.hidden.iter().map(|hidden| Thing {
            id: &hidden.id,
            extent: &hidden.across,
            usual_width: Length::millimetres(50.0),
            runs_across: false,
        });
        let mut waiting: Vec<Thing<'a>> = features.chain(hidden).collect();
        let mut places = Self { wall, width, found: BTreeMap::new() };
        loop {
            let before = waiting.len();
            waiting.retain(|thing| match places.sides(thing, step, misfits, notes) {
                Some(sides) => {
                    places.found.insert(thing.id, sides);
                    false
                }
                None => true,
            });
            if waiting.len() == before {
                break;
            }
        }
        for thing in waiting {
            let what = match missing_datum(wall, thing.extent) {
                Some(named) => What::NotThere { named },
                None => What::Ring,
            };
            notes.stop(thing.id.whole(), what);
        }
        places
    }

    /// The sides of the feature at this place of the job's list.
    pub(super) fn feature(&self, index: usize) -> Option<Sides> {
        self.found.get(&self.wall.features.get(index)?.id).copied()
    }

    /// The sides of the hidden thing at this place of the job's list.
    pub(super) fn hidden(&self, index: usize) -> Option<Sides> {
        self.found.get(&self.wall.hidden.get(index)?.id).copied()
    }

    /// Where a reading leads, and whether that hangs on something assumed; `None` while its datum is not
    /// settled.
    pub(super) fn place(&self, reading: &AcrossReading) -> Option<(Length, bool)> {
        let (datum, assumed) = match &reading.from {
            AcrossDatum::LeftEnd => (Length::default(), false),
            AcrossDatum::RightEnd => (self.width, self.wall.width.is_none()),
            AcrossDatum::Edge(subject) => {
                let own = Sides {
                    span: Span::new(Length::default(), self.width),
                    assumed: self.wall.width.is_none(),
                };
                let sides = if subject.id == self.wall.id { &own } else { self.found.get(&subject.id)? };
                let edge = match subject.part_str() {
                    "left" => sides.span.from,
                    "right" => sides.span.to,
                    _ => sides.span.middle(),
                };
                (edge, sides.assumed)
            }
        };
        Some((datum + reading.by * reading.way().sign(), assumed))
    }

    /// The same, with a finding where it leads nowhere.
    pub(super) fn place_or_note(
        &self,
        reading: &AcrossReading,
        id: &Id,
        notes: &mut Notes,
    ) -> Option<(Length, bool)> {
        let place = self.place(reading);
        if place.is_none()
            && let AcrossDatum::Edge(named) = &reading.from
        {
            notes.stop(id.whole(), What::NotThere { named: named.clone() });
        }
        place
    }

    /// Any two of left, right, middle and width settle a thing; the rest are checks.
    fn sides(
        &self,
        thing: &Thing<'_>,
        step: Length,
        misfits: &mut Vec<Misfit>,
        notes: &mut Notes,
    ) -> Option<Sides> {
        let extent = thing.extent;
        let read = |reading: &Option<AcrossReading>| match reading {
            Some(reading) => self.place(reading).map(Some),
            None => Some(None),
        };
        let (left, right, centre) = (read(&extent.left)?, read(&extent.right)?, read(&extent.centre)?);
        let leans = [left, right, centre].into_iter().flatten().any(|(_, assumed)| assumed);
        let [left, right, centre] = [left, right, centre].map(|read| read.map(|(place, _)| place));
        let mut assumed = leans;
        let span = match (left, right, centre, extent.width) {
            (Some(left), Some(right), _, _) => Span::new(left, right),
            (Some(left), None, _, Some(width)) => Span::new(left, left + width),
            (None, Some(right), _, Some(width)) => Span::new(right - width, right),
            (None, None, Some(centre), Some(width)) => Span::about(centre, width),
            (Some(left), None, Some(centre), None) => Span::new(left, centre * 2.0 - left),
            (None, Some(right), Some(centre), None) => Span::new(centre * 2.0 - right, right),
            (None, None, None, None) if thing.runs_across => Span::new(Length::default(), self.width),
            (left, right, centre, width) => {
                assumed = true;
                let width = width.unwrap_or(thing.usual_width);
                if left.is_none() && right.is_none() && centre.is_none() {
                    notes.assume(thing.id.whole(), AssumedWhat::PlaceAcross, false);
                } else {
                    notes.assume(thing.id.whole(), AssumedWhat::Width(width), false);
                }
                match (left, right) {
                    (Some(left), _) => Span::new(left, left + width),
                    (None, Some(right)) => Span::new(right - width, right),
                    (None, None) => Span::about(centre.unwrap_or(self.width / 2.0), width),
                }
            }
        };
        let mut compare = |subject: Subject, used: Length, other: Option<Length>| {
            if let Some(other) = other.filter(|other| (*other - used).abs() > step) {
                misfits.push(Misfit { subject, used, other });
            }
        };
        compare(thing.id.part("centre"), span.middle(), centre);
        compare(thing.id.whole(), span.length(), extent.width);
        for (part, reading, used) in [
            ("left", &extent.left, span.from),
            ("right", &extent.right, span.to),
            ("centre", &extent.centre, span.middle()),
        ] {
            let check = reading.as_ref().and_then(|reading| reading.check.as_deref());
            compare(thing.id.part(part), used, check.and_then(|check| Some(self.place(check)?.0)));
        }
        Some(Sides { span, assumed })
    }
}

/// The first datum of an extent that names nothing on this wall.
fn missing_datum(wall: &Wall, extent: &AcrossExtent) -> Option<Subject> {
    [&extent.left, &extent.right, &extent.centre].into_iter().flatten().find_map(|reading| {
        match &reading.from {
            AcrossDatum::Edge(subject) if !names_thing(wall, &subject.id) => Some(subject.clone()),
            _ => None,
        }
    })
}

/// Whether an id is the wall's, a feature's or a hidden thing's.
pub(super) fn names_thing(wall: &Wall, id: &Id) -> bool {
    wall.id == *id
        || wall.features.iter().any(|feature| feature.id == *id)
        || wall.hidden.iter().any(|hidden| hidden.id == *id)
}
