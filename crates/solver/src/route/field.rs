//! What a way is looked for in. All places are in nanometres.

use super::Cost;
use crate::geometry::{Axis, Point, Rect};
use crate::units::Length;

/// A place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// To the right.
    pub x: i64,
    /// Up.
    pub y: i64,
}

/// A rectangle. What is barred is its inside: a way may run along its edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Area {
    /// Its left edge.
    pub left: i64,
    /// Its right edge.
    pub right: i64,
    /// Its lower edge.
    pub bottom: i64,
    /// Its upper edge.
    pub top: i64,
}

/// What can be passed along one axis only, at a cost each time: a stud, a fire block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Crossing {
    /// Where it is.
    pub area: Area,
    /// Along which axis it can be passed.
    pub axis: Axis,
    /// What passing it costs.
    pub cost: Cost,
}

/// Where the middle of an opening may be: in the room, not inside of what is barred.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Zone {
    /// All of it; edges count. Inside out where there is none.
    pub room: Area,
    /// What is not of it.
    pub barred: Vec<Area>,
}

/// Where a way may begin.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Start {
    /// The places.
    pub zone: Zone,
    /// Where the ports are: the way there counts.
    pub near: Place,
    /// What beginning here costs.
    pub cost: Cost,
}

/// Where a way may end.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Goal {
    /// The places.
    pub zone: Zone,
    /// How high it should end: what lies between shows.
    pub wished_y: i64,
    /// What it should end beside.
    pub beside: Option<Beside>,
    /// What ending here costs.
    pub cost: Cost,
}

/// What a way should end beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beside {
    /// Its middle.
    pub x: i64,
    /// The edges of the bay that it is in. What leads to it from another bay shows.
    pub bay: (i64, i64),
}

/// All of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    /// Beyond this a way never goes.
    pub bounds: Area,
    /// Inside of these it never goes.
    pub barred: Vec<Area>,
    /// These it passes at a cost.
    pub crossings: Vec<Crossing>,
    /// What hides a way on the face; `None` where all of it is hidden.
    pub hides: Option<Vec<Area>>,
    /// Where it may begin.
    pub starts: Vec<Start>,
    /// Where it may end.
    pub goals: Vec<Goal>,
}

/// A length in nanometres. Beyond what a wall could be it is held to the end of the numbers.
#[must_use]
pub fn nm(length: Length) -> i64 {
    // A float too large for the whole numbers becomes the largest of them, and none becomes nothing.
    #[expect(clippy::cast_possible_truncation, reason = "held to the ends of the numbers on purpose")]
    let nm = (length.mm() * 1e6).round() as i64;
    nm.clamp(-FARTHEST, FARTHEST)
}

/// 1000 km: sums of many of them still fit.
const FARTHEST: i64 = 1_000_000_000_000_000;

impl Place {
    /// A place of the wall.
    #[must_use]
    pub fn of(point: Point) -> Self {
        Self { x: nm(point.x), y: nm(point.y) }
    }

    /// The same on the wall.
    #[must_use]
    pub fn on_wall(self) -> Point {
        Point::new(length(self.x), length(self.y))
    }

    /// How far another is, along up-down and left-right pieces.
    #[must_use]
    pub fn away(self, other: Self) -> i64 {
        (self.x - other.x).abs() + (self.y - other.y).abs()
    }
}

/// Nanometres as a length.
#[must_use]
pub fn length(nm: i64) -> Length {
    // Up to 1000 km in nanometres is exact as f64.
    #[expect(clippy::cast_precision_loss, reason = "below 2^52")]
    let mm = nm as f64 / 1e6;
    Length::millimetres(mm)
}

impl Area {
    /// A rectangle of the wall.
    #[must_use]
    pub fn of(rect: Rect) -> Self {
        Self { left: nm(rect.left), right: nm(rect.right), bottom: nm(rect.bottom), top: nm(rect.top) }
    }

    /// Grown to each side; shrunk by a negative amount it may be inside out, and then holds nothing.
    #[must_use]
    pub fn grown(self, across: i64, upright: i64) -> Self {
        Self {
            left: self.left - across,
            right: self.right + across,
            bottom: self.bottom - upright,
            top: self.top + upright,
        }
    }

    /// What two have in common.
    #[must_use]
    pub fn within(self, other: Self) -> Self {
        Self {
            left: self.left.max(other.left),
            right: self.right.min(other.right),
            bottom: self.bottom.max(other.bottom),
            top: self.top.min(other.top),
        }
    }

    /// Whether it holds no place at all, not even on an edge.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self.right < self.left || self.top < self.bottom
    }

    /// Whether a place is in it or on its edge.
    #[must_use]
    pub fn holds(self, place: Place) -> bool {
        self.left <= place.x && place.x <= self.right && self.bottom <= place.y && place.y <= self.top
    }

    /// Whether a place is inside, off its edges.
    #[must_use]
    pub fn has_inside(self, place: Place) -> bool {
        self.left < place.x && place.x < self.right && self.bottom < place.y && place.y < self.top
    }

    /// Whether the insides of two meet.
    #[must_use]
    pub fn overlaps(self, other: Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.bottom < other.top
            && other.bottom < self.top
    }
}

impl Beside {
    /// Whether a place is in its bay.
    #[must_use]
    pub fn holds(&self, place: Place) -> bool {
        self.bay.0 <= place.x && place.x <= self.bay.1
    }
}

impl Zone {
    /// Whether the middle of an opening may be here.
    #[must_use]
    pub fn allows(&self, place: Place) -> bool {
        self.room.holds(place) && !self.barred.iter().any(|area| area.has_inside(place))
    }
}

impl Zone {
    /// The place of the zone that is nearest to a place, as the crow flies; `None` where it has none.
    ///
    /// Exact: such a place has each coordinate at the wish or at an edge.
    #[must_use]
    pub fn nearest(&self, wish: Place) -> Option<Place> {
        let room = self.room;
        if room.is_empty() {
            return None;
        }
        let mut xs = vec![wish.x.clamp(room.left, room.right)];
        let mut ys = vec![wish.y.clamp(room.bottom, room.top)];
        for area in &self.barred {
            xs.extend([area.left, area.right].into_iter().filter(|x| room.left <= *x && *x <= room.right));
            ys.extend([area.bottom, area.top].into_iter().filter(|y| room.bottom <= *y && *y <= room.top));
        }
        let away = |place: &Place| {
            let (x, y) = (i128::from(place.x - wish.x), i128::from(place.y - wish.y));
            x * x + y * y
        };
        let places = xs.iter().flat_map(|x| ys.iter().map(move |y| Place { x: *x, y: *y }));
        places.filter(|place| self.allows(*place)).min_by_key(|place| (away(place), *place))
    }
}

impl Start {
    /// What beginning at a place costs.
    #[must_use]
    pub fn cost_at(&self, place: Place) -> Cost {
        let behind_nm = self.near.away(place);
        self.cost + Cost { length_nm: behind_nm, behind_nm, ..Cost::NONE }
    }
}

impl Goal {
    /// What ending at a place costs.
    #[must_use]
    pub fn cost_at(&self, place: Place) -> Cost {
        let off = (place.y - self.wished_y).abs();
        let (mut visible_nm, mut length_nm) = (off, off);
        if let Some(beside) = self.beside {
            let across = (place.x - beside.x).abs();
            length_nm += across;
            if !beside.holds(place) {
                visible_nm += across;
            }
        }
        self.cost + Cost { visible_nm, length_nm, ..Cost::NONE }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_place_of_a_zone_is_on_an_edge_of_what_is_in_the_way() {
        let area = |left, right, bottom, top| Area { left, right, bottom, top };
        let zone =
            Zone { room: area(0, 100, 0, 50), barred: vec![area(20, 60, -10, 30), area(50, 80, 20, 60)] };
        let near = |x, y| zone.nearest(Place { x, y }).map(|place| (place.x, place.y));
        assert_eq!(near(10, 10), Some((10, 10)));
        assert_eq!(near(25, 10), Some((20, 10)));
        assert_eq!(near(45, 28), Some((45, 30)));
        assert_eq!(near(300, -5), Some((100, 0)));
        assert_eq!(Zone { room: area(5, 0, 0, 5), barred: Vec::new() }.nearest(Place::default()), None);
    }
}
