//! Places on paper: millimetres from its upper left corner, x to the right, y down.

/// Farther than this from the paper's corner nothing is drawn: 1 km keeps every painter's arithmetic sound
/// (chosen).
pub const FARTHEST_MM: f64 = 1e6;

/// A place on paper.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PaperPoint {
    /// To the right, in paper millimetres.
    pub x_mm: f64,
    /// Down, in paper millimetres.
    pub y_mm: f64,
}

impl PaperPoint {
    /// A place, held to within a kilometre; what is not a number is 0.
    #[must_use]
    pub fn new(x_mm: f64, y_mm: f64) -> Self {
        Self { x_mm: held(x_mm), y_mm: held(y_mm) }
    }

    /// The place moved to the right and down.
    #[must_use]
    pub fn moved(self, right_mm: f64, down_mm: f64) -> Self {
        Self::new(self.x_mm + right_mm, self.y_mm + down_mm)
    }
}

/// A coordinate that any painter can take.
fn held(mm: f64) -> f64 {
    if mm.is_nan() { 0.0 } else { mm.clamp(-FARTHEST_MM, FARTHEST_MM) }
}

/// An upright rectangle on paper; `left` is never right of `right`, nor `top` below `bottom`.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PaperRect {
    /// Its left edge.
    pub left_mm: f64,
    /// Its upper edge.
    pub top_mm: f64,
    /// Its right edge.
    pub right_mm: f64,
    /// Its lower edge.
    pub bottom_mm: f64,
}

impl PaperRect {
    /// The rectangle of two opposite corners.
    #[must_use]
    pub fn of(a: PaperPoint, b: PaperPoint) -> Self {
        Self {
            left_mm: a.x_mm.min(b.x_mm),
            top_mm: a.y_mm.min(b.y_mm),
            right_mm: a.x_mm.max(b.x_mm),
            bottom_mm: a.y_mm.max(b.y_mm),
        }
    }

    /// The smallest rectangle round some places; `None` for none.
    #[must_use]
    pub fn round(points: &[PaperPoint]) -> Option<Self> {
        points.iter().map(|&point| Self::of(point, point)).reduce(|a, b| Self {
            left_mm: a.left_mm.min(b.left_mm),
            top_mm: a.top_mm.min(b.top_mm),
            right_mm: a.right_mm.max(b.right_mm),
            bottom_mm: a.bottom_mm.max(b.bottom_mm),
        })
    }

    /// Its width.
    #[must_use]
    pub fn width_mm(self) -> f64 {
        self.right_mm - self.left_mm
    }

    /// Its height.
    #[must_use]
    pub fn height_mm(self) -> f64 {
        self.bottom_mm - self.top_mm
    }

    /// Its middle.
    #[must_use]
    pub fn centre(self) -> PaperPoint {
        PaperPoint::new(
            f64::midpoint(self.left_mm, self.right_mm),
            f64::midpoint(self.top_mm, self.bottom_mm),
        )
    }

    /// Whether the two share area or an edge.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        self.left_mm <= other.right_mm
            && other.left_mm <= self.right_mm
            && self.top_mm <= other.bottom_mm
            && other.top_mm <= self.bottom_mm
    }

    /// What the two share; `None` where they are apart.
    #[must_use]
    pub fn shared(self, other: Self) -> Option<Self> {
        self.meets(other).then(|| Self {
            left_mm: self.left_mm.max(other.left_mm),
            top_mm: self.top_mm.max(other.top_mm),
            right_mm: self.right_mm.min(other.right_mm),
            bottom_mm: self.bottom_mm.min(other.bottom_mm),
        })
    }

    /// The rectangle made larger on every side; made smaller it never turns inside out.
    #[must_use]
    pub fn grown(self, by_mm: f64) -> Self {
        let across = by_mm.max(-self.width_mm() / 2.0);
        let upright = by_mm.max(-self.height_mm() / 2.0);
        Self {
            left_mm: self.left_mm - across,
            top_mm: self.top_mm - upright,
            right_mm: self.right_mm + across,
            bottom_mm: self.bottom_mm + upright,
        }
    }

    /// Its corners: lower left, lower right, upper right, upper left.
    #[must_use]
    pub fn corners(self) -> [PaperPoint; 4] {
        [
            PaperPoint::new(self.left_mm, self.bottom_mm),
            PaperPoint::new(self.right_mm, self.bottom_mm),
            PaperPoint::new(self.right_mm, self.top_mm),
            PaperPoint::new(self.left_mm, self.top_mm),
        ]
    }

    /// A place in it by shares: (0, 0) is the upper left corner, (1, 1) the lower right one.
    #[must_use]
    pub fn at(self, right: f64, down: f64) -> PaperPoint {
        PaperPoint::new(self.left_mm + self.width_mm() * right, self.top_mm + self.height_mm() * down)
    }
}
