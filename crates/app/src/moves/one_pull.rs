//! One pull: the tape is held at one datum, and everything along the wall is read as the blade passes it. Pure.
//!
//! Each entry is a number and what was seen there. Edges of windows and doors pair up, near then far; the last
//! entry is the wall's other end, a check on its width.

use strikeline_solver::job::Job;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::place::{AcrossDatum, AcrossExtent, AcrossReading, Sideways, UprightReading};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// What is seen at a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// An edge of a window's trim: the near one, then the far one.
    Window,
    /// An edge of a door's trim: the near one, then the far one.
    Door,
    /// The middle of an outlet.
    Outlet,
    /// The middle of a switch.
    Switch,
    /// A stud's left edge.
    StudLeft,
    /// A stud's right edge.
    StudRight,
    /// A stud's centre.
    StudCentre,
    /// The wall's other end: nothing follows it.
    End,
}

/// A reading, and what was seen at it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// What the tape shows.
    pub by: Length,
    /// What is there.
    pub seen: Seen,
}

/// All that is read from one datum, one way, in the order in which it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct OnePull {
    /// What the tape is held at.
    pub from: AcrossDatum,
    /// Which way it is read.
    pub way: Sideways,
    /// How high above the floor the studs are found; `None` where that is not noted.
    pub height: Option<Length>,
    /// What was read.
    pub entries: Vec<Entry>,
}

/// What an entry is a part of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The near edge of a feature whose far edge is the entry at this place in the list, once it is read.
    NearEdge(Option<usize>),
    /// The far edge of the feature whose near edge is the entry at this place in the list.
    FarEdge(usize),
    /// The middle of a feature.
    Middle,
    /// A hit.
    Hit,
    /// The wall's other end.
    End,
}

/// What the wall's other end says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EndCheck {
    /// The wall's width was not given: this is it.
    Sets,
    /// It agrees with what was measured before, within half a graduation.
    Agrees,
    /// By how much it is more than what was measured before; below zero, less. Nothing is changed.
    Differs(Length),
    /// There is nothing to hold it against: the wall's width is not given, and the pull does not begin at an
    /// end.
    Alone,
}

impl Seen {
    /// Everything that can be seen, in the order in which buttons show it.
    pub const ALL: [Self; 8] = [
        Self::Window,
        Self::Door,
        Self::Outlet,
        Self::Switch,
        Self::StudLeft,
        Self::StudRight,
        Self::StudCentre,
        Self::End,
    ];

    /// The key that names it. None is part of the short word of a unit.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            Self::Window => 'W',
            Self::Door => 'D',
            Self::Outlet => 'O',
            Self::Switch => 'S',
            Self::StudLeft => 'L',
            Self::StudRight => 'R',
            Self::StudCentre => 'X',
            Self::End => 'E',
        }
    }

    /// The kind of feature that it is an edge or the middle of.
    fn feature(self) -> Option<(FeatureKind, &'static str)> {
        match self {
            Self::Window => Some((FeatureKind::Window, "window")),
            Self::Door => Some((FeatureKind::Door, "door")),
            Self::Outlet => Some((FeatureKind::Outlet, "outlet")),
            Self::Switch => Some((FeatureKind::Switch, "switch")),
            Self::StudLeft | Self::StudRight | Self::StudCentre | Self::End => None,
        }
    }

    fn hit(self) -> Option<HitKind> {
        match self {
            Self::StudLeft => Some(HitKind::LeftEdge),
            Self::StudRight => Some(HitKind::RightEdge),
            Self::StudCentre => Some(HitKind::Centre),
            Self::Window | Self::Door | Self::Outlet | Self::Switch | Self::End => None,
        }
    }
}

impl OnePull {
    /// A pull in which nothing is read yet, the usual way from its datum.
    #[must_use]
    pub fn from(from: AcrossDatum) -> Self {
        Self { way: from.away(), from, height: None, entries: Vec::new() }
    }

    /// Whether the wall's other end was read: nothing follows it.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.entries.last().is_some_and(|entry| entry.seen == Seen::End)
    }

    /// What each entry is a part of.
    #[must_use]
    pub fn parts(&self) -> Vec<Part> {
        let mut parts: Vec<Part> = Vec::new();
        for (index, entry) in self.entries.iter().enumerate() {
            let part = match entry.seen {
                Seen::Window | Seen::Door => match self.open_edge(&parts, entry.seen) {
                    Some(near) => {
                        if let Some(part) = parts.get_mut(near) {
                            *part = Part::NearEdge(Some(index));
                        }
                        Part::FarEdge(near)
                    }
                    None => Part::NearEdge(None),
                },
                Seen::Outlet | Seen::Switch => Part::Middle,
                Seen::StudLeft | Seen::StudRight | Seen::StudCentre => Part::Hit,
                Seen::End => Part::End,
            };
            parts.push(part);
        }
        parts
    }

    /// The near edge of its kind whose far edge was not read yet.
    fn open_edge(&self, parts: &[Part], seen: Seen) -> Option<usize> {
        let mut open = parts.iter().zip(&self.entries).enumerate();
        let found = open.find(|(_, (part, entry))| **part == Part::NearEdge(None) && entry.seen == seen);
        found.map(|(index, _)| index)
    }

    /// Whether the next edge of a window or door is its far one.
    #[must_use]
    pub fn is_far_next(&self, seen: Seen) -> bool {
        self.open_edge(&self.parts(), seen).is_some()
    }

    /// Whether an entry shows less than one before it, or no more than the near edge it belongs to: the blade
    /// passes everything in turn.
    #[must_use]
    pub fn is_out_of_turn(&self, index: usize) -> bool {
        let Some(entry) = self.entries.get(index) else { return false };
        let is_shorter = self.entries.iter().take(index).any(|earlier| earlier.by > entry.by);
        let is_no_width = match self.parts().get(index) {
            Some(Part::FarEdge(near)) => self.entries.get(*near).is_some_and(|near| near.by >= entry.by),
            _ => false,
        };
        is_shorter || is_no_width
    }

    /// The job with all that was read on a wall: features, hits, and the wall's width where that was not given
    /// and the pull goes from end to end. A job without the wall stays as it is.
    #[must_use]
    pub fn applied(&self, before: &Job, wall: &Id) -> Job {
        let mut after = before.clone();
        let parts = self.parts();
        for (entry, part) in self.entries.iter().zip(&parts) {
            match *part {
                Part::NearEdge(far) => {
                    let far = far.and_then(|far| self.entries.get(far));
                    let (near, far) = (Some(self.reading(entry)), far.map(|far| self.reading(far)));
                    let (left, right) = match self.way {
                        Sideways::Right => (near, far),
                        Sideways::Left => (far, near),
                    };
                    add_feature(
                        &mut after,
                        wall,
                        entry.seen,
                        AcrossExtent { left, right, ..AcrossExtent::default() },
                    );
                }
                Part::Middle => {
                    let centre = Some(self.reading(entry));
                    add_feature(
                        &mut after,
                        wall,
                        entry.seen,
                        AcrossExtent { centre, ..AcrossExtent::default() },
                    );
                }
                Part::Hit => self.add_hit(&mut after, wall, entry),
                Part::End => {
                    let is_from_end = !matches!(self.from, AcrossDatum::Edge(_));
                    let wall = after.walls.iter_mut().find(|candidate| candidate.id == *wall);
                    if let Some(wall) = wall.filter(|wall| is_from_end && wall.width.is_none()) {
                        wall.width = Some(entry.by);
                    }
                }
                // Written with its near edge.
                Part::FarEdge(_) => {}
            }
        }
        after
    }

    /// What the wall's other end says against the job before the pull, and its plan; `None` where it was not
    /// read.
    #[must_use]
    pub fn end_check(&self, before: &Job, plan: &Plan) -> Option<EndCheck> {
        let end = self.entries.last().filter(|entry| entry.seen == Seen::End)?;
        let width = before.wall(&plan.wall).and_then(|wall| wall.width);
        let expected = match (&self.from, self.way) {
            (AcrossDatum::LeftEnd | AcrossDatum::RightEnd, _) => match width {
                Some(width) => width,
                None => return Some(EndCheck::Sets),
            },
            (AcrossDatum::Edge(edge), way) => {
                let feature = plan.survey.features.iter().find(|feature| feature.id == edge.id);
                let Some(rect) = feature.map(|feature| feature.rect) else { return Some(EndCheck::Alone) };
                let x = if edge.part_str() == "left" { rect.left } else { rect.right };
                match (way, width) {
                    (Sideways::Left, _) => x,
                    (Sideways::Right, Some(width)) => width - x,
                    (Sideways::Right, None) => return Some(EndCheck::Alone),
                }
            }
        };
        let over = (end.by - expected).quantised();
        let is_seen = plan.style.steps(over) != 0;
        Some(if is_seen { EndCheck::Differs(over) } else { EndCheck::Agrees })
    }

    fn reading(&self, entry: &Entry) -> AcrossReading {
        let toward = (self.way != self.from.away()).then_some(self.way);
        AcrossReading { from: self.from.clone(), toward, by: entry.by, check: None }
    }

    fn add_hit(&self, job: &mut Job, wall: &Id, entry: &Entry) {
        let Some(kind) = entry.seen.hit() else { return };
        let id = job.give_id("hit");
        let hit = Hit { id, kind, x: self.reading(entry), y: self.height.map(UprightReading::from_floor) };
        if let Some(wall) = job.walls.iter_mut().find(|candidate| candidate.id == *wall) {
            wall.hits.push(hit);
        }
    }
}

fn add_feature(job: &mut Job, wall: &Id, seen: Seen, across: AcrossExtent) {
    let Some((kind, word)) = seen.feature() else { return };
    let id = job.give_id(word);
    let feature = Feature {
        id,
        kind,
        name: None,
        across,
        upright: strikeline_solver::job::place::UprightExtent::default(),
        proud: None,
        framing: None,
        front: None,
        notes: None,
    };
    if let Some(wall) = job.walls.iter_mut().find(|candidate| candidate.id == *wall) {
        wall.features.push(feature);
    }
}

#[cfg(test)]
mod tests;
