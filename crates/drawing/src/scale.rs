//! From the wall to the paper and back: the one place where y turns over. And the scales of the trade.

use crate::look::{Look, Margin};
use crate::paper::{PaperPoint, PaperRect};
use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::job::Units;
use strikeline_solver::units::Length;

/// From the wall to the paper and back. Always usable: what was not is replaced when it is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Paper millimetres to a wall millimetre; more than nothing.
    paper_mm_per_wall_mm: f64,
    /// The wall's x at the paper's left margin.
    left_mm: f64,
    /// The wall's y at the paper's upper margin.
    top_mm: f64,
    /// The paper of the part that shows.
    shown: PaperRect,
    /// The free edge around it.
    margin: Margin,
}

/// The smallest scale drawn, 1:100 000, and the largest, 1000:1: past any use, short of trouble (chosen).
const LEAST: f64 = 1e-5;
const MOST: f64 = 1e3;
/// The largest paper either way: 20 m (chosen).
const LARGEST_MM: f64 = 20_000.0;

/// A number held between two; `otherwise` where it is not a number.
fn between(value: f64, least: f64, most: f64, otherwise: f64) -> f64 {
    if value.is_nan() { otherwise } else { value.clamp(least, most) }
}

impl Scale {
    /// The scale of a look. Not a number becomes 1:20 and 0; a scale is held between 1:100 000 and 1000:1,
    /// a paper to 20 m either way, and a margin to 1 m.
    #[must_use]
    pub fn new(look: &Look) -> Self {
        let per = between(look.paper_mm_per_wall_mm, LEAST, MOST, 0.05);
        let free = |mm: f64| between(mm, 0.0, 1000.0, 0.0);
        let margin = Margin {
            left_mm: free(look.margin.left_mm),
            top_mm: free(look.margin.top_mm),
            right_mm: free(look.margin.right_mm),
            bottom_mm: free(look.margin.bottom_mm),
        };
        let place = |length: Length| between(length.mm(), -1e9, 1e9, 0.0);
        let (left_mm, top_mm) = (place(look.shown.left), place(look.shown.top));
        let width_mm = (place(look.shown.right) - left_mm).max(0.0) * per;
        let height_mm = (top_mm - place(look.shown.bottom)).max(0.0) * per;
        let shown = PaperRect {
            left_mm: margin.left_mm,
            top_mm: margin.top_mm,
            right_mm: margin.left_mm + width_mm.min(LARGEST_MM),
            bottom_mm: margin.top_mm + height_mm.min(LARGEST_MM),
        };
        Self { paper_mm_per_wall_mm: per, left_mm, top_mm, shown, margin }
    }

    /// Paper millimetres to a wall millimetre.
    #[must_use]
    pub fn paper_mm_per_wall_mm(&self) -> f64 {
        self.paper_mm_per_wall_mm
    }

    /// A length of the wall in paper millimetres. Signed.
    #[must_use]
    pub fn paper_mm(&self, length: Length) -> f64 {
        between(length.mm() * self.paper_mm_per_wall_mm, -1e6, 1e6, 0.0)
    }

    /// A length of the paper on the wall. Signed.
    #[must_use]
    pub fn wall_length(&self, paper_mm: f64) -> Length {
        Length::millimetres(between(paper_mm, -1e6, 1e6, 0.0) / self.paper_mm_per_wall_mm)
    }

    /// Where a place on the wall is on paper.
    #[must_use]
    pub fn paper_from_wall(&self, place: Point) -> PaperPoint {
        PaperPoint::new(
            self.margin.left_mm + (place.x.mm() - self.left_mm) * self.paper_mm_per_wall_mm,
            self.margin.top_mm + (self.top_mm - place.y.mm()) * self.paper_mm_per_wall_mm,
        )
    }

    /// Where a place on paper is on the wall.
    #[must_use]
    pub fn wall_from_paper(&self, place: PaperPoint) -> Point {
        let place = PaperPoint::new(place.x_mm, place.y_mm);
        Point::new(
            Length::millimetres(
                self.left_mm + (place.x_mm - self.margin.left_mm) / self.paper_mm_per_wall_mm,
            ),
            Length::millimetres(self.top_mm - (place.y_mm - self.margin.top_mm) / self.paper_mm_per_wall_mm),
        )
    }

    /// An upright rectangle of the wall, on paper.
    #[must_use]
    pub fn paper_rect(&self, rect: Rect) -> PaperRect {
        PaperRect::of(
            self.paper_from_wall(Point::new(rect.left, rect.top)),
            self.paper_from_wall(Point::new(rect.right, rect.bottom)),
        )
    }

    /// An upright rectangle of the paper, on the wall.
    #[must_use]
    pub fn wall_rect(&self, rect: PaperRect) -> Rect {
        let a = self.wall_from_paper(PaperPoint::new(rect.left_mm, rect.top_mm));
        let b = self.wall_from_paper(PaperPoint::new(rect.right_mm, rect.bottom_mm));
        Rect::new(Span::new(a.x, b.x), Span::new(a.y, b.y))
    }

    /// The paper of the part that shows, without its margin.
    #[must_use]
    pub fn shown(&self) -> PaperRect {
        self.shown
    }

    /// All of the paper, margin included.
    #[must_use]
    pub fn page(&self) -> PaperRect {
        PaperRect {
            left_mm: 0.0,
            top_mm: 0.0,
            right_mm: self.shown.right_mm + self.margin.right_mm,
            bottom_mm: self.shown.bottom_mm + self.margin.bottom_mm,
        }
    }
}

/// A scale of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StandardScale {
    /// As it is written on a sheet.
    pub name: &'static str,
    /// Wall millimetres to a paper millimetre: 24 for half an inch to the foot.
    pub wall_mm_per_paper_mm: f64,
}

const fn scale(name: &'static str, wall_mm_per_paper_mm: f64) -> StandardScale {
    StandardScale { name, wall_mm_per_paper_mm }
}

/// Inch scales, the largest first: the list common to drafting manuals (read second-hand).
pub const IMPERIAL: [StandardScale; 9] = [
    scale("1 1/2\" = 1'-0\"", 8.0),
    scale("1\" = 1'-0\"", 12.0),
    scale("3/4\" = 1'-0\"", 16.0),
    scale("1/2\" = 1'-0\"", 24.0),
    scale("3/8\" = 1'-0\"", 32.0),
    scale("1/4\" = 1'-0\"", 48.0),
    scale("3/16\" = 1'-0\"", 64.0),
    scale("1/8\" = 1'-0\"", 96.0),
    scale("3/32\" = 1'-0\"", 128.0),
];

/// Metric scales, the largest first: the reductions of ISO 5455 (from memory), and 1:25 of metric practice.
pub const METRIC: [StandardScale; 6] = [
    scale("1:5", 5.0),
    scale("1:10", 10.0),
    scale("1:20", 20.0),
    scale("1:25", 25.0),
    scale("1:50", 50.0),
    scale("1:100", 100.0),
];

impl StandardScale {
    /// Paper millimetres to a wall millimetre, for a look.
    #[must_use]
    pub fn paper_mm_per_wall_mm(self) -> f64 {
        1.0 / self.wall_mm_per_paper_mm
    }

    /// The scales of a unit, the largest first.
    #[must_use]
    pub fn all(units: Units) -> &'static [Self] {
        match units {
            Units::Inches => &IMPERIAL,
            Units::Millimetres => &METRIC,
        }
    }

    /// The largest scale at which so much wall fits so much paper, edges included; `None` where none does.
    #[must_use]
    pub fn largest_that_fits(units: Units, wall: Rect, paper_mm: (f64, f64)) -> Option<Self> {
        // A rounding of the last digit must not cost a scale.
        let fits = |length: Length, scale: &Self, paper: f64| {
            length.mm() / scale.wall_mm_per_paper_mm <= paper + 1e-6
        };
        Self::all(units)
            .iter()
            .find(|scale| fits(wall.width(), scale, paper_mm.0) && fits(wall.height(), scale, paper_mm.1))
            .copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    fn wall(width: Length, height: Length) -> Rect {
        Rect { left: mm(0.0), right: width, bottom: mm(0.0), top: height }
    }

    fn look(shown: Rect, per: f64) -> Look {
        Look {
            paper_mm_per_wall_mm: per,
            shown,
            margin: Margin::even(10.0),
            text_height_mm: 3.8,
            selected: None,
            held: None,
            next_probe: None,
        }
    }

    #[test]
    fn up_on_the_wall_is_up_on_paper() {
        let scale = Scale::new(&look(wall(mm(4000.0), mm(2400.0)), 0.05));
        let top_left = scale.paper_from_wall(Point::new(mm(0.0), mm(2400.0)));
        let floor_right = scale.paper_from_wall(Point::new(mm(4000.0), mm(0.0)));
        assert_eq!(top_left, PaperPoint::new(10.0, 10.0));
        assert_eq!(floor_right, PaperPoint::new(210.0, 130.0));
        assert_eq!(scale.page().width_mm(), 220.0);
        assert_eq!(scale.page().height_mm(), 140.0);
    }

    #[test]
    fn there_and_back_is_the_same_place() {
        let shown = Rect { left: mm(-321.5), right: mm(5000.0), bottom: mm(12.0), top: mm(2612.25) };
        for per in [1.0 / 24.0, 1.0 / 50.0, 0.3] {
            let scale = Scale::new(&look(shown, per));
            for (x, y) in [(0.0, 0.0), (1231.9, 999.0), (-50.0, 3000.0), (4999.999, 0.001)] {
                let back = scale.wall_from_paper(scale.paper_from_wall(Point::new(mm(x), mm(y))));
                assert!((back.x.mm() - x).abs() < 1e-6 && (back.y.mm() - y).abs() < 1e-6, "{back:?}");
            }
            let rect = scale.wall_rect(scale.paper_rect(shown));
            assert!((rect.left - shown.left).mm().abs() < 1e-6 && (rect.top - shown.top).mm().abs() < 1e-6);
        }
    }

    #[test]
    fn no_look_makes_an_unusable_scale() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -1.0, 1e300] {
            let shown = Rect { left: mm(bad), right: mm(-bad), bottom: mm(bad), top: mm(bad) };
            let scale = Scale::new(&Look { margin: Margin::even(bad), ..look(shown, bad) });
            let page = scale.page();
            assert!(page.width_mm() <= 22_000.0 && page.height_mm() <= 22_000.0, "{page:?}");
            let place = scale.paper_from_wall(Point::new(mm(bad), mm(bad)));
            assert!(place.x_mm.is_finite() && place.y_mm.is_finite());
            let back = scale.wall_from_paper(PaperPoint { x_mm: bad, y_mm: bad });
            assert!(back.x.is_finite() && back.y.is_finite());
        }
    }

    #[test]
    fn a_named_scale_is_what_it_says() {
        // Half an inch of paper for 12 in of wall is 1:24, and so on.
        let named =
            |name: &str| IMPERIAL.iter().find(|scale| scale.name == name).unwrap().wall_mm_per_paper_mm;
        assert_eq!(named("1 1/2\" = 1'-0\""), 12.0 / 1.5);
        assert_eq!(named("1/2\" = 1'-0\""), 24.0);
        assert_eq!(named("3/8\" = 1'-0\""), 12.0 / 0.375);
        assert_eq!(named("1/4\" = 1'-0\""), 48.0);
        assert_eq!(named("3/16\" = 1'-0\""), 12.0 * 16.0 / 3.0);
        assert_eq!(named("3/32\" = 1'-0\""), 12.0 * 32.0 / 3.0);
        for list in [&IMPERIAL[..], &METRIC[..]] {
            assert!(list.windows(2).all(|pair| pair[0].wall_mm_per_paper_mm < pair[1].wall_mm_per_paper_mm));
        }
    }

    #[test]
    fn the_largest_that_fits_is_taken() {
        // 14 ft x 8 ft at 1/2 in to the foot is 7.0 in x 4.0 in.
        let living = wall(Length::inches(168.0), Length::inches(96.0));
        let taken =
            StandardScale::largest_that_fits(Units::Inches, living, (7.0 * 25.4, 4.0 * 25.4)).unwrap();
        assert_eq!(taken.name, "1/2\" = 1'-0\"");
        let less =
            StandardScale::largest_that_fits(Units::Inches, living, (6.99 * 25.4, 4.0 * 25.4)).unwrap();
        assert_eq!(less.name, "3/8\" = 1'-0\"");
        // 4.2 m x 2.44 m at 1:20 is 210 mm x 122 mm; A4 lying is 297 x 210 (ISO 216), less 10 mm all round.
        let metric = wall(mm(4200.0), mm(2440.0));
        let taken = StandardScale::largest_that_fits(Units::Millimetres, metric, (277.0, 190.0)).unwrap();
        assert_eq!(taken.name, "1:20");
        assert_eq!(
            (4200.0 * taken.paper_mm_per_wall_mm(), 2440.0 / taken.wall_mm_per_paper_mm),
            (210.0, 122.0)
        );
        assert_eq!(
            StandardScale::largest_that_fits(Units::Millimetres, wall(mm(1e6), mm(1.0)), (277.0, 190.0)),
            None
        );
    }
}
