//! Places and sizes in wall space: x runs right from the wall's left end, y up from the true level plane
//! through the first floor reading. Not for paper: that is `drawing::scale`.

use crate::numeric;
use crate::units::{Angle, Length};

/// A direction on the wall, seen face-on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Toward smaller x.
    Left,
    /// Toward larger x.
    Right,
    /// Toward larger y.
    Up,
    /// Toward smaller y.
    Down,
}

impl Direction {
    /// Along which axis it points.
    #[must_use]
    pub fn axis(self) -> Axis {
        match self {
            Self::Left | Self::Right => Axis::Across,
            Self::Up | Self::Down => Axis::Upright,
        }
    }

    /// 1 toward larger coordinates, -1 toward smaller.
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Right | Self::Up => 1.0,
            Self::Left | Self::Down => -1.0,
        }
    }

    /// The way back.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            Self::Up => Self::Down,
            Self::Down => Self::Up,
        }
    }
}

/// One of the wall's two axes, so that what is alike for both is written once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// Sideways, x.
    Across,
    /// Up and down, y.
    Upright,
}

impl Axis {
    /// The other axis.
    #[must_use]
    pub fn cross(self) -> Self {
        match self {
            Self::Across => Self::Upright,
            Self::Upright => Self::Across,
        }
    }
}

/// A place on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Point {
    /// To the right of the wall's left end.
    pub x: Length,
    /// Above the level plane.
    pub y: Length,
}

impl Point {
    /// A place from its two coordinates.
    #[must_use]
    pub fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The coordinate along an axis.
    #[must_use]
    pub fn along(self, axis: Axis) -> Length {
        match axis {
            Axis::Across => self.x,
            Axis::Upright => self.y,
        }
    }
}

/// A stretch of one axis; `from` is the smaller end. It holds both its ends.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Span {
    /// The smaller end.
    pub from: Length,
    /// The larger end.
    pub to: Length,
}

impl Span {
    /// The span between two places in either order.
    #[must_use]
    pub fn new(a: Length, b: Length) -> Self {
        if b < a { Self { from: b, to: a } } else { Self { from: a, to: b } }
    }

    /// Half of `length` to either side of `middle`.
    #[must_use]
    pub fn about(middle: Length, length: Length) -> Self {
        Self::new(middle - length / 2.0, middle + length / 2.0)
    }

    /// How long it is; never negative.
    #[must_use]
    pub fn length(self) -> Length {
        self.to - self.from
    }

    /// The place halfway.
    #[must_use]
    pub fn middle(self) -> Length {
        self.from + self.length() / 2.0
    }

    /// Whether a place lies in it, ends included.
    #[must_use]
    pub fn holds(self, place: Length) -> bool {
        self.from <= place && place <= self.to
    }

    /// Whether the two share more than an end.
    #[must_use]
    pub fn overlaps(self, other: Self) -> bool {
        self.from < other.to && other.from < self.to
    }

    /// The span made longer (or, negative, shorter) by `by` at both ends; never turned inside out.
    #[must_use]
    pub fn grown(self, by: Length) -> Self {
        let grown = Self { from: self.from - by, to: self.to + by };
        if grown.to < grown.from { Self { from: self.middle(), to: self.middle() } } else { grown }
    }
}

/// An upright rectangle on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Rect {
    /// Its left edge.
    pub left: Length,
    /// Its right edge, never left of `left`.
    pub right: Length,
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge, never below `bottom`.
    pub top: Length,
}

impl Rect {
    /// The rectangle of two spans.
    #[must_use]
    pub fn new(across: Span, upright: Span) -> Self {
        Self { left: across.from, right: across.to, bottom: upright.from, top: upright.to }
    }

    /// Its sideways span.
    #[must_use]
    pub fn across(self) -> Span {
        Span { from: self.left, to: self.right }
    }

    /// Its upright span.
    #[must_use]
    pub fn upright(self) -> Span {
        Span { from: self.bottom, to: self.top }
    }

    /// The span along an axis.
    #[must_use]
    pub fn span(self, axis: Axis) -> Span {
        match axis {
            Axis::Across => self.across(),
            Axis::Upright => self.upright(),
        }
    }

    /// Its width.
    #[must_use]
    pub fn width(self) -> Length {
        self.right - self.left
    }

    /// Its height.
    #[must_use]
    pub fn height(self) -> Length {
        self.top - self.bottom
    }

    /// Its middle.
    #[must_use]
    pub fn centre(self) -> Point {
        Point::new(self.across().middle(), self.upright().middle())
    }

    /// Whether a place lies in it, edges included.
    #[must_use]
    pub fn holds(self, place: Point) -> bool {
        self.across().holds(place.x) && self.upright().holds(place.y)
    }

    /// Whether `other` lies wholly in it, edges included.
    #[must_use]
    pub fn encloses(self, other: Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.bottom <= other.bottom
            && other.top <= self.top
    }

    /// Whether the two share area; touching edges do not count.
    #[must_use]
    pub fn overlaps(self, other: Self) -> bool {
        self.across().overlaps(other.across()) && self.upright().overlaps(other.upright())
    }

    /// The rectangle made larger (or, negative, smaller) by `by` on every side.
    #[must_use]
    pub fn grown(self, by: Length) -> Self {
        Self::new(self.across().grown(by), self.upright().grown(by))
    }

    /// A place as a rectangle of no size.
    #[must_use]
    pub fn at(place: Point) -> Self {
        Self { left: place.x, right: place.x, bottom: place.y, top: place.y }
    }

    /// The rectangle moved.
    #[must_use]
    pub fn moved(self, right: Length, up: Length) -> Self {
        Self {
            left: self.left + right,
            right: self.right + right,
            bottom: self.bottom + up,
            top: self.top + up,
        }
    }
}

/// Where a thing with its own origin stands on the wall, and how far it is turned from true level.
///
/// `roll` is positive where the right end is up. It is small: a piece that follows a crooked mantel.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Frame {
    /// The thing's own origin, on the wall.
    pub origin: Point,
    /// How far it is turned from true level.
    pub roll: Angle,
}

impl Frame {
    /// The place on the wall of a place given from the origin, right and up of it.
    #[must_use]
    pub fn to_wall(self, right: Length, up: Length) -> Point {
        if self.roll == Angle::default() {
            return Point::new(self.origin.x + right, self.origin.y + up);
        }
        let (cosine, sine) = (numeric::cosine(self.roll), numeric::sine(self.roll));
        Point::new(self.origin.x + right * cosine - up * sine, self.origin.y + right * sine + up * cosine)
    }

    /// How far right and up of the origin a place on the wall is, along the thing's own axes.
    #[must_use]
    pub fn from_wall(self, place: Point) -> Point {
        let back = Self { origin: Point::default(), roll: -self.roll };
        back.to_wall(place.x - self.origin.x, place.y - self.origin.y)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    #[test]
    fn a_span_is_never_inside_out() {
        assert_eq!(Span::new(mm(5.0), mm(2.0)), Span { from: mm(2.0), to: mm(5.0) });
        assert_eq!(Span::new(mm(0.0), mm(4.0)).grown(mm(-3.0)).length(), mm(0.0));
    }

    #[test]
    fn touching_rectangles_do_not_overlap() {
        let left = Rect::new(Span::new(mm(0.0), mm(10.0)), Span::new(mm(0.0), mm(10.0)));
        assert!(!left.overlaps(left.moved(mm(10.0), mm(0.0))));
        assert!(left.overlaps(left.moved(mm(9.9), mm(9.9))));
    }

    #[test]
    fn a_rolled_frame_keeps_distances() {
        let frame = Frame { origin: Point::new(mm(100.0), mm(50.0)), roll: Angle::degrees(0.5) };
        let place = frame.to_wall(mm(3.0), mm(4.0));
        let (dx, dy) = ((place.x - mm(100.0)).mm(), (place.y - mm(50.0)).mm());
        assert!(((dx * dx + dy * dy).sqrt() - 5.0).abs() < 1e-9);
        assert!(
            frame.to_wall(mm(1000.0), mm(0.0)).y > mm(58.7),
            "the right end is up: sin 0.5 deg is 0.008727"
        );
        let back = frame.from_wall(place);
        assert!((back.x.mm() - 3.0).abs() < 1e-9 && (back.y.mm() - 4.0).abs() < 1e-9, "there and back");
    }
}
