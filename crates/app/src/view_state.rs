//! How the job is looked at: zoom, pan, and which panel shows on a narrow window. Never undone, never in the job's
//! file.

use crate::found::Found;
use egui::{Rect, Vec2};
use strikeline_drawing::dimension::{MOST_ROWS, rows_mm};
use strikeline_drawing::look::{Look, Margin};
use strikeline_solver::geometry::{Axis, Point, Rect as WallRect, Span};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::sweep::Reach;
use strikeline_solver::units::Length;

/// Points to a paper millimetre: a point is 1/96 in.
pub const POINTS_PER_PAPER_MM: f64 = 96.0 / 25.4;
/// The smallest zoom: a 20 m wall in 60 points (chosen).
const LEAST: f64 = 0.003;
/// The largest zoom: a sixteenth of an inch in 160 points (chosen).
const MOST: f64 = 100.0;
/// By how much "zoom here" zooms (chosen: the holes of a plate at fit come a finger apart).
const ZOOM_HERE: f64 = 4.0;
/// The em size of text, in points (chosen: as the panels' text).
const TEXT_POINTS: f64 = 13.0;
/// Half the width of the widest line, in paper millimetres (chosen: a pixel of the coarsest screen, and more).
const LINE_MM: f64 = 0.5;

/// How the job is looked at.
#[derive(Clone, Debug, Default)]
pub struct ViewState {
    /// The part of the wall that shows; `None` for all of it.
    pub view: Option<View>,
    /// What stands beside the drawing on a window that has room for one panel only.
    pub side: Side,
    /// What was chosen in a list and is to be brought into view.
    pub wanted: Option<Subject>,
    /// The way of cables that is pointed at in the list of others: drawn over the drawing while it is.
    pub previewed: Option<Vec<Point>>,
    /// The verdict whose working stands open.
    pub working: Option<WorkingOf>,
    /// Whether it is shown what this wall offers.
    pub is_swept: bool,
    /// What of that.
    pub sweeping: Sweeping,
    /// What was found in the wall last, and what that changed.
    pub found: Found,
}

/// Which places of a piece are looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sweeping {
    /// Sideways, or heights.
    pub axis: Axis,
    /// How far.
    pub reach: Reach,
}

impl Default for Sweeping {
    fn default() -> Self {
        Self { axis: Axis::Across, reach: Reach::default() }
    }
}

/// Whose working is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkingOf {
    /// The piece.
    pub piece: Id,
    /// The hole whose fastener it was opened for; `None` for the verdict.
    pub hole: Option<Subject>,
}

/// One of the panels beside the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Side {
    /// What was measured.
    #[default]
    Measured,
    /// What follows.
    Follows,
}

/// The part of the wall that shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Points to a wall millimetre.
    points_per_mm: f64,
    /// The place on the wall at the middle of the canvas, in millimetres.
    centre_mm: (f64, f64),
}

/// The canvas and the wall behind it: from pointer to wall and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// The canvas, in points.
    pub canvas: Rect,
    /// The part of the wall that shows.
    pub view: View,
}

/// The em size of text, in paper millimetres.
fn text_mm() -> f64 {
    TEXT_POINTS / POINTS_PER_PAPER_MM
}

/// Of a canvas's width or height, what the rows of dimensions at both ends may take together (chosen: the wall keeps a
/// third at least, and a window of 800 x 600 points all of its dimensions).
const ROWS_SHARE: f64 = 0.66;

/// Rows on the left and on the right, where there is room for them.
const BESIDE: [(usize, usize); 3] = [(MOST_ROWS, MOST_ROWS), (2, 2), (1, 1)];
/// Rows above and below: below no drawing asks for a third (seen on every demo, whatever is selected), above the
/// running dimensions may.
const ABOVE_AND_BELOW: [(usize, usize); 4] = [(MOST_ROWS, 2), (2, 2), (2, 1), (1, 1)];

/// Kept free around the part of the wall that shows: what all rows of dimensions take, or as many as a small canvas has
/// room for, one at least.
///
/// Room for those that are drawn just now would do, but the wall would slip from under the hand whenever a
/// dimension goes into another row.
fn margin(canvas: Vec2) -> Margin {
    let room = |rows: usize| rows_mm(rows, text_mm()) + LINE_MM;
    let within = |points: f32, rows: &[(usize, usize)]| {
        let most = f64::from(points) * ROWS_SHARE / POINTS_PER_PAPER_MM;
        let mut each = rows.iter().map(|(before, after)| (room(*before), room(*after)));
        each.find(|(before, after)| before + after <= most).unwrap_or((room(1), room(1)))
    };
    let (left_mm, right_mm) = within(canvas.x, &BESIDE);
    let (top_mm, bottom_mm) = within(canvas.y, &ABOVE_AND_BELOW);
    Margin { left_mm, top_mm, right_mm, bottom_mm }
}

/// A canvas less its margin, in points, and how far right of and below the canvas's middle that room's middle is.
fn room(canvas: Vec2, margin: Margin) -> ((f64, f64), (f64, f64)) {
    let points = |mm: f64| mm * POINTS_PER_PAPER_MM;
    let free = |size: f32, before: f64, after: f64| (f64::from(size) - points(before + after)).max(40.0);
    let size =
        (free(canvas.x, margin.left_mm, margin.right_mm), free(canvas.y, margin.top_mm, margin.bottom_mm));
    let off =
        (points(margin.left_mm - margin.right_mm) / 2.0, points(margin.top_mm - margin.bottom_mm) / 2.0);
    (size, off)
}

impl View {
    /// All of a wall, with room for its dimensions, in a canvas so large.
    ///
    /// What has no size counts as a millimetre.
    #[must_use]
    pub fn fit(wall: WallRect, canvas: Vec2) -> Self {
        Self::inside(wall, canvas, margin(canvas))
    }

    /// All of something in a canvas so large, so many points kept free on every side.
    #[must_use]
    pub fn within(wall: WallRect, canvas: Vec2, margin: f64) -> Self {
        Self::inside(wall, canvas, Margin::even(margin / POINTS_PER_PAPER_MM))
    }

    fn inside(wall: WallRect, canvas: Vec2, margin: Margin) -> Self {
        let ((width, height), (right, down)) = room(canvas, margin);
        let size = |length: Length| if length.mm().is_finite() { length.mm().max(1.0) } else { 1.0 };
        let scale = (width / size(wall.width())).min(height / size(wall.height()));
        let centre = wall.centre();
        Self::sound(scale, (centre.x.mm() - right / scale, centre.y.mm() + down / scale))
    }

    /// Points to a wall millimetre.
    #[must_use]
    pub fn points_per_mm(self) -> f64 {
        self.points_per_mm
    }

    /// A view with what is not usable replaced.
    fn sound(points_per_mm: f64, (x, y): (f64, f64)) -> Self {
        let scale = if points_per_mm.is_nan() { 0.2 } else { points_per_mm.clamp(LEAST, MOST) };
        let place = |mm: f64| if mm.is_finite() { mm.clamp(-1e6, 1e6) } else { 0.0 };
        Self { points_per_mm: scale, centre_mm: (place(x), place(y)) }
    }

    /// Zoomed by a factor, the place so far from the canvas's middle staying where it is.
    #[must_use]
    pub fn zoomed_about(self, from_middle: Vec2, factor: f64) -> Self {
        let (x, y) = (f64::from(from_middle.x), f64::from(from_middle.y));
        let after = Self::sound(self.points_per_mm * factor, self.centre_mm);
        let shift = 1.0 / self.points_per_mm - 1.0 / after.points_per_mm;
        Self::sound(after.points_per_mm, (self.centre_mm.0 + x * shift, self.centre_mm.1 - y * shift))
    }

    /// Panned, and zoomed out where there is no other way, as little as brings a part of the wall between the margins
    /// of a canvas so large; as it is where that part shows already.
    #[must_use]
    pub fn showing(self, canvas: Vec2, part: WallRect) -> Self {
        let ((width, height), (right, down)) = room(canvas, margin(canvas));
        let scale = self
            .points_per_mm
            .min(width / part.width().mm().max(1e-9))
            .min(height / part.height().mm().max(1e-9));
        // `off`: from the canvas's middle to that of the room, along the wall.
        let moved = |centre: f64, points: f64, off: f64, span: Span| {
            let (half, off) = (points / 2.0 / scale, off / scale);
            let (least, most) = (span.to.mm() - half - off, span.from.mm() + half - off);
            // Of a part as large as the room both are its middle, but for the last digit.
            if least > most { f64::midpoint(least, most) } else { centre.clamp(least, most) }
        };
        let x = moved(self.centre_mm.0, width, right, part.across());
        let y = moved(self.centre_mm.1, height, -down, part.upright());
        Self::sound(scale, (x, y))
    }

    /// Zoomed in on a place, which comes to the middle, so far as the eye wants it for work on a plate.
    #[must_use]
    pub fn zoomed_on(self, place: Point) -> Self {
        Self::sound(self.points_per_mm * ZOOM_HERE, (place.x.mm(), place.y.mm()))
    }

    /// The drawing shifted by so many points.
    #[must_use]
    pub fn panned(self, by: Vec2) -> Self {
        let (x, y) = (f64::from(by.x) / self.points_per_mm, f64::from(by.y) / self.points_per_mm);
        Self::sound(self.points_per_mm, (self.centre_mm.0 - x, self.centre_mm.1 + y))
    }
}

impl Window {
    /// How the drawing is to look: it fills the canvas, margin included.
    #[must_use]
    pub fn look(&self) -> Look {
        let per = self.view.points_per_mm;
        let margin = margin(self.canvas.size());
        let centre = self.centre();
        // From the canvas's middle to an edge of the part that shows.
        let to = |points: f32, free_mm: f64| {
            Length::millimetres(((f64::from(points) / 2.0 - free_mm * POINTS_PER_PAPER_MM) / per).max(0.0))
        };
        let (width, height) = (self.canvas.width(), self.canvas.height());
        Look {
            paper_mm_per_wall_mm: per / POINTS_PER_PAPER_MM,
            shown: WallRect::new(
                Span::new(centre.x - to(width, margin.left_mm), centre.x + to(width, margin.right_mm)),
                Span::new(centre.y - to(height, margin.bottom_mm), centre.y + to(height, margin.top_mm)),
            ),
            margin,
            text_height_mm: text_mm(),
            selected: None,
            held: None,
            next_probe: None,
        }
    }

    fn centre(&self) -> Point {
        Point::new(Length::millimetres(self.view.centre_mm.0), Length::millimetres(self.view.centre_mm.1))
    }

    /// Where on the wall a place of the canvas is.
    #[must_use]
    pub fn wall_from_pointer(&self, pointer: egui::Pos2) -> Point {
        let from_middle = pointer - self.canvas.center();
        let per = self.view.points_per_mm;
        let centre = self.centre();
        Point::new(
            centre.x + Length::millimetres(f64::from(from_middle.x) / per),
            centre.y - Length::millimetres(f64::from(from_middle.y) / per),
        )
    }

    /// Where on the canvas a place of the wall is; held to within 100 000 points.
    #[must_use]
    pub fn pointer_from_wall(&self, place: Point) -> egui::Pos2 {
        let per = self.view.points_per_mm;
        let points = |mm: f64| {
            let points = mm * per;
            if points.is_finite() { points.clamp(-1e5, 1e5) as f32 } else { 0.0 }
        };
        self.canvas.center()
            + Vec2::new(
                points(place.x.mm() - self.view.centre_mm.0),
                points(self.view.centre_mm.1 - place.y.mm()),
            )
    }

    /// An upright rectangle of the wall, on the canvas.
    #[must_use]
    pub fn canvas_rect(&self, rect: WallRect) -> Rect {
        Rect::from_two_pos(
            self.pointer_from_wall(Point::new(rect.left, rect.top)),
            self.pointer_from_wall(Point::new(rect.right, rect.bottom)),
        )
    }

    /// A length of the canvas on the wall.
    #[must_use]
    pub fn wall_length(&self, points: f32) -> Length {
        Length::millimetres(f64::from(points) / self.view.points_per_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::{pos2, vec2};

    fn wall() -> WallRect {
        let mm = Length::millimetres;
        WallRect::new(Span::new(mm(0.0), mm(4000.0)), Span::new(mm(0.0), mm(2400.0)))
    }

    fn window() -> Window {
        let canvas = Rect::from_min_size(pos2(250.0, 60.0), vec2(800.0, 600.0));
        Window { canvas, view: View::fit(wall(), canvas.size()) }
    }

    /// A canvas less its margin.
    fn free(canvas: Rect) -> Rect {
        let margin = margin(canvas.size());
        let points = |mm: f64| (mm * POINTS_PER_PAPER_MM) as f32;
        Rect::from_min_max(
            canvas.min + vec2(points(margin.left_mm), points(margin.top_mm)),
            canvas.max - vec2(points(margin.right_mm), points(margin.bottom_mm)),
        )
    }

    #[test]
    fn all_of_the_wall_shows_with_room_around_it() {
        let window = window();
        let drawn = window.canvas_rect(wall());
        let free = free(window.canvas);
        assert!(free.expand(0.1).contains_rect(drawn), "{drawn:?}");
        assert!((drawn.center() - free.center()).length() < 0.01);
        let tight = (drawn.width() - free.width()).abs() < 0.1;
        assert!(tight || (drawn.height() - free.height()).abs() < 0.1);
    }

    #[test]
    fn a_low_canvas_keeps_a_third_of_itself_for_the_wall_at_least() {
        let drawn = |height: f32| {
            let canvas = Rect::from_min_size(pos2(0.0, 0.0), vec2(700.0, height));
            let window = Window { canvas, view: View::fit(wall(), canvas.size()) };
            window.canvas_rect(wall()).height()
        };
        for height in [200.0, 240.0, 300.0, 400.0, 500.0] {
            assert!(drawn(height) > 0.33 * height, "{height}: {}", drawn(height));
        }
    }

    #[test]
    fn the_place_under_the_pointer_stays_under_it() {
        let mut window = window();
        let pointer = pos2(400.0, 500.0);
        let before = window.wall_from_pointer(pointer);
        for factor in [1.3, 0.4, 7.0, 1e9, 1e-9] {
            window.view = window.view.zoomed_about(pointer - window.canvas.center(), factor);
            let after = window.wall_from_pointer(pointer);
            assert!((after.x - before.x).abs() < Length::millimetres(1e-6), "{factor}: {after:?}");
            assert!((after.y - before.y).abs() < Length::millimetres(1e-6), "{factor}: {after:?}");
        }
    }

    #[test]
    fn a_pan_shifts_the_drawing_by_as_much() {
        let mut window = window();
        let corner = Point::default();
        let before = window.pointer_from_wall(corner);
        window.view = window.view.panned(vec2(30.0, -12.0));
        assert!((window.pointer_from_wall(corner) - before - vec2(30.0, -12.0)).length() < 0.01);
    }

    #[test]
    fn a_part_is_brought_into_view_by_the_least() {
        let canvas = vec2(800.0, 600.0);
        let mm = Length::millimetres;
        let part = |x: f64, width: f64| {
            WallRect::new(Span::new(mm(x), mm(x + width)), Span::new(mm(1000.0), mm(1100.0)))
        };
        let fit = View::fit(wall(), canvas);
        assert_eq!(fit.showing(canvas, part(100.0, 300.0)), fit, "it shows already");
        let near = fit.zoomed_about(vec2(0.0, 0.0), 8.0);
        let after = near.showing(canvas, part(100.0, 50.0));
        assert_eq!(after.points_per_mm, near.points_per_mm, "a pan is enough");
        let window = Window { canvas: Rect::from_min_size(pos2(0.0, 0.0), canvas), view: after };
        let room = free(window.canvas).expand(0.1);
        let shown = window.canvas_rect(part(100.0, 50.0));
        assert!(room.contains_rect(shown), "{shown:?}");
        assert!((shown.left() - room.left()).abs() < 0.2, "no farther than to the edge: {shown:?}");
        let wide = near.showing(canvas, part(100.0, 3000.0));
        assert!(wide.points_per_mm < near.points_per_mm);
        let window = Window { canvas: window.canvas, view: wide };
        assert!(room.contains_rect(window.canvas_rect(part(100.0, 3000.0))));
    }

    #[test]
    fn pointer_and_wall_are_each_others_way_back() {
        let window = window();
        let place = window.wall_from_pointer(pos2(333.0, 444.0));
        assert!((window.pointer_from_wall(place) - pos2(333.0, 444.0)).length() < 0.01);
        let drawn = strikeline_drawing::scale::Scale::new(&window.look()).paper_from_wall(place);
        let at = window.canvas.min
            + vec2((drawn.x_mm * POINTS_PER_PAPER_MM) as f32, (drawn.y_mm * POINTS_PER_PAPER_MM) as f32);
        assert!((at - pos2(333.0, 444.0)).length() < 0.01, "the drawing fills the canvas: {at:?}");
    }

    #[test]
    fn what_is_no_number_still_gives_a_view() {
        let mm = Length::millimetres;
        for bad in [f64::NAN, f64::INFINITY, 0.0] {
            let rect = WallRect { left: mm(bad), right: mm(bad), bottom: mm(0.0), top: mm(bad) };
            let view = View::fit(rect, vec2(10.0, 0.0)).zoomed_about(vec2(1.0, 1.0), f64::NAN);
            assert!(view.points_per_mm > 0.0 && view.centre_mm.0.is_finite() && view.centre_mm.1.is_finite());
        }
    }
}
