//! The rows of the strip: a plot whose long axis is the wall's own, and in it the verdict as blocks, the reserve as a
//! line, holes and findings as steps, the entry as bars. Every row says by its shape what it says by its tone.

use crate::swept::Swept;
use crate::theme::{self, Strip as Inks};
use crate::view_state::Window;
use egui::{Align2, Color32, Painter, Pos2, Rect, Sense, Shape, Stroke, Ui, pos2, vec2};
use egui_plot::{HLine, Line, LineStyle, Plot, PlotBounds, PlotPoint, PlotTransform, PlotUi, Polygon, VLine};
use strikeline_drawing::font::Weight;
use strikeline_solver::capacity::group::Word;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::sweep::{Full, Place, Told};
use strikeline_solver::words;

/// Room over the rows for the marks, in heights of a row.
const MARKS: f64 = 0.7;
/// The least and the most reserve that is drawn; beyond these the line stays at the edge (chosen: twice the need and
/// half of it).
const RESERVE: (f64, f64) = (-0.5, 1.0);
/// The em size of names and figures, in points.
const TEXT: f32 = 11.5;
/// A figure stands where a stretch is at least so long, in points (chosen: two figures and air).
const ROOM: f32 = 22.0;
/// Half the size of a mark, in points.
const MARK: f32 = 5.0;

/// What is drawn, and where.
pub(super) struct Rows<'a> {
    pub(super) swept: &'a Swept,
    pub(super) window: &'a Window,
    /// The middle of the piece as it is now.
    pub(super) now: Option<Point>,
    /// Whether a hand is on something that changes it.
    pub(super) is_pale: bool,
}

/// A stretch of places that are alike.
struct Run<T> {
    from: f64,
    to: f64,
    is: T,
}

impl Rows<'_> {
    /// Shows the plot in a rectangle that lies along the canvas.
    pub(super) fn ui(&self, ui: &mut Ui, rect: Rect) {
        let inks = theme::strip(ui.theme(), self.is_pale);
        ui.painter().rect_filled(rect, 0.0, inks.ground);
        let rows = words::SWEEP_ROWS.len() as f64 + MARKS;
        let (least, most) = (
            self.window.wall_from_pointer(rect.left_bottom()),
            self.window.wall_from_pointer(rect.right_top()),
        );
        let bounds = match self.axis() {
            Axis::Across => PlotBounds::from_min_max([least.x.mm(), 0.0], [most.x.mm(), rows]),
            // Columns from left to right are rows from the top down.
            Axis::Upright => PlotBounds::from_min_max([-rows, least.y.mm()], [0.0, most.y.mm()]),
        };
        let shown = Plot::new("offers")
            .show_axes(false)
            .show_grid(false)
            .show_background(false)
            .show_x(false)
            .show_y(false)
            .allow_zoom(false)
            .allow_scroll(false)
            .allow_drag(false)
            .allow_boxed_zoom(false)
            .allow_double_click_reset(false)
            .sense(Sense::hover())
            .width(rect.width())
            .height(rect.height())
            .show(ui, |plot| {
                plot.set_plot_bounds(bounds);
                self.lines(plot, &inks);
                self.verdict(plot, &inks);
                self.reserve(plot, &inks);
                self.steps(plot, 2, &inks, &self.runs(&holes));
                self.entry(plot, &inks);
                self.steps(plot, 4, &inks, &self.runs(&findings));
            });
        let painter = ui.painter_at(rect);
        self.counts(&painter, 2, &shown.transform, &inks, &self.runs(&holes));
        self.counts(&painter, 4, &shown.transform, &inks, &self.runs(&findings));
        self.names(&painter, rect, &shown.transform, &inks);
        self.marks(&painter, rect, &inks);
    }

    fn axis(&self) -> Axis {
        self.swept.axis()
    }

    /// A place of the plot: so far along the wall, so high above the lowest row.
    fn point(&self, along: f64, up: f64) -> [f64; 2] {
        match self.axis() {
            Axis::Across => [along, up],
            Axis::Upright => [-up, along],
        }
    }

    /// The foot of a row, counted from the top.
    fn foot(row: usize) -> f64 {
        words::SWEEP_ROWS.len() as f64 - 1.0 - row as f64
    }

    /// From where to where each place counts: half-way to its neighbours.
    fn stretch(&self, index: usize) -> Option<(f64, f64)> {
        let line = self.swept.line();
        let at = |index: usize| line.get(index).map(|place| place.along(self.axis()).mm());
        let own = at(index)?;
        let before = index.checked_sub(1).and_then(at).map_or(own, |before| f64::midpoint(before, own));
        let after = at(index + 1).map_or(own, |after| f64::midpoint(own, after));
        Some((before, after))
    }

    /// Stretches of places that are alike, from one end to the other.
    fn runs<T: PartialEq>(&self, of: &dyn Fn(&Place) -> Option<T>) -> Vec<Run<T>> {
        let mut runs: Vec<Run<T>> = Vec::new();
        for (index, place) in self.swept.places().iter().enumerate() {
            let (Some(is), Some((from, to))) = (place.as_ref().and_then(of), self.stretch(index)) else {
                continue;
            };
            match runs.last_mut() {
                Some(last) if last.is == is && last.to >= from => last.to = to,
                _ => runs.push(Run { from, to, is }),
            }
        }
        runs
    }

    fn block(
        &self,
        plot: &mut PlotUi<'_>,
        (from, to): (f64, f64),
        (low, high): (f64, f64),
        stroke: Stroke,
        fill: Color32,
    ) {
        let corners = [(from, low), (to, low), (to, high), (from, high)];
        let corners: Vec<[f64; 2]> = corners.into_iter().map(|(along, up)| self.point(along, up)).collect();
        plot.polygon(Polygon::new("", corners).stroke(stroke).fill_color(fill).allow_hover(false));
    }

    fn stroke_line(&self, plot: &mut PlotUi<'_>, along_up: &[(f64, f64)], stroke: Stroke) {
        let points: Vec<[f64; 2]> = along_up.iter().map(|(along, up)| self.point(*along, *up)).collect();
        plot.line(Line::new("", points).stroke(stroke).allow_hover(false));
    }

    /// The feet of the rows, and where the reserve is nothing.
    fn lines(&self, plot: &mut PlotUi<'_>, inks: &Inks) {
        let mut across = |up: f64, stroke: Stroke, style: LineStyle| match self.axis() {
            Axis::Across => plot.hline(HLine::new("", up).stroke(stroke).style(style).allow_hover(false)),
            Axis::Upright => plot.vline(VLine::new("", -up).stroke(stroke).style(style).allow_hover(false)),
        };
        let rule = Stroke::new(1.0, inks.rule);
        for row in 0..words::SWEEP_ROWS.len() {
            across(Self::foot(row), rule, LineStyle::Solid);
        }
        across(reserve_at(0.0), rule, LineStyle::dashed_dense());
    }

    /// Holds is a full block, not known an open one half as high, short a bar at the foot.
    fn verdict(&self, plot: &mut PlotUi<'_>, inks: &Inks) {
        let foot = Self::foot(0);
        for run in self.runs(&|place| full(place)?.if_probed) {
            let (high, stroke, fill) = match run.is {
                Word::Holds => (0.8, Stroke::new(1.0, inks.chalk), inks.chalk),
                Word::NotKnown => (0.45, Stroke::new(1.0, inks.line), Color32::TRANSPARENT),
                Word::Short => (0.16, Stroke::new(1.0, inks.wrong), inks.wrong),
            };
            self.block(plot, (run.from, run.to), (foot, foot + high), stroke, fill);
        }
    }

    /// A line, broken where nothing could be worked out.
    fn reserve(&self, plot: &mut PlotUi<'_>, inks: &Inks) {
        let mut parts: Vec<Vec<(f64, f64)>> = vec![Vec::new()];
        for (index, place) in self.swept.places().iter().enumerate() {
            let reserve = place.as_ref().and_then(full).and_then(Full::reserve);
            let along = self.swept.line().get(index).map(|at| at.along(self.axis()).mm());
            match (reserve.zip(along), parts.last_mut()) {
                (Some((reserve, along)), Some(last)) => last.push((along, reserve_at(reserve))),
                (None, Some(last)) if !last.is_empty() => parts.push(Vec::new()),
                _ => {}
            }
        }
        for part in parts.iter().filter(|part| !part.is_empty()) {
            self.stroke_line(plot, part, Stroke::new(1.5, inks.line));
        }
    }

    /// Steps as high as what is counted, lighter where it is known at a look alone.
    fn steps(&self, plot: &mut PlotUi<'_>, row: usize, inks: &Inks, runs: &[Run<(usize, bool)>]) {
        let most = runs.iter().map(|run| run.is.0).max().unwrap_or_default().max(1);
        let foot = Self::foot(row);
        let up = |count: usize| foot + 0.78 * count as f64 / most as f64;
        let mut before: Option<&Run<(usize, bool)>> = None;
        for run in runs {
            let (count, is_sure) = run.is;
            let (line, fill) =
                if is_sure { (inks.wood, inks.wood_tint) } else { (inks.rule, Color32::TRANSPARENT) };
            if count > 0 {
                self.block(plot, (run.from, run.to), (foot, up(count)), Stroke::NONE, fill);
            }
            // Riser and tread apart: a corner of one path is mitred, and short treads lose their shape.
            let stroke = Stroke::new(1.2, line);
            if let Some(last) = before.filter(|last| last.to >= run.from && last.is.0 != count) {
                self.stroke_line(plot, &[(run.from, up(last.is.0)), (run.from, up(count))], stroke);
            }
            self.stroke_line(plot, &[(run.from, up(count)), (run.to, up(count))], stroke);
            before = Some(run);
        }
    }

    /// Hidden is a full bar, what shows an open one.
    fn entry(&self, plot: &mut PlotUi<'_>, inks: &Inks) {
        let foot = Self::foot(3);
        let told = |place: &Place| match &place.told {
            Told::Coarse(coarse) => Some((coarse.entry_hidden?, false)),
            Told::Full(full) => Some((full.entry_hidden?, true)),
        };
        for run in self.runs(&told) {
            let (is_hidden, is_sure) = run.is;
            let line = if is_sure { inks.line } else { inks.rule };
            let fill = if is_hidden { line } else { Color32::TRANSPARENT };
            self.block(plot, (run.from, run.to), (foot + 0.2, foot + 0.55), Stroke::new(1.0, line), fill);
        }
    }

    /// What is counted, where there is room for the figure.
    fn counts(
        &self,
        painter: &Painter,
        row: usize,
        transform: &PlotTransform,
        inks: &Inks,
        runs: &[Run<(usize, bool)>],
    ) {
        let font = theme::font(TEXT, Weight::Regular);
        let at = |along: f64| {
            let [x, y] = self.point(along, Self::foot(row) + 0.4);
            transform.position_from_point(&PlotPoint::new(x, y))
        };
        let marked: Vec<Pos2> = [self.now, self.best()]
            .into_iter()
            .flatten()
            .map(|place| at(place.along(self.axis()).mm()))
            .collect();
        for run in runs.iter().filter(|run| run.is.0 > 0) {
            let (from, to) = (at(run.from), at(run.to));
            // In the middle, or beside the line of a mark that goes through it.
            let places = [0.5, 0.25, 0.75].map(|share| from + (to - from) * share);
            let is_clear = |place: &Pos2| {
                let ends = [from, to].into_iter().chain(marked.iter().copied());
                ends.fold(f32::INFINITY, |nearest, end| nearest.min(end.distance(*place))) >= ROOM / 2.0
            };
            if let Some(place) = places.into_iter().find(is_clear) {
                painter.text(place, Align2::CENTER_CENTER, run.is.0.to_string(), font.clone(), inks.quiet);
            }
        }
    }

    /// The rows' names on their own ground.
    fn names(&self, painter: &Painter, rect: Rect, transform: &PlotTransform, inks: &Inks) {
        let font = theme::font(TEXT, Weight::Regular);
        for (row, name) in words::SWEEP_ROWS.iter().enumerate() {
            let [x, y] = self.point(0.0, Self::foot(row) + 0.42);
            let at = transform.position_from_point(&PlotPoint::new(x, y));
            let galley = painter.layout_no_wrap((*name).to_owned(), font.clone(), inks.quiet);
            match self.axis() {
                Axis::Across => {
                    let place = Align2::LEFT_CENTER.anchor_size(pos2(rect.left() + 8.0, at.y), galley.size());
                    painter.rect_filled(place.expand2(vec2(4.0, 0.0)), 0.0, inks.ground);
                    painter.galley(place.min, galley, inks.quiet);
                }
                Axis::Upright => {
                    let size = vec2(galley.size().y, galley.size().x);
                    let place = Align2::CENTER_BOTTOM.anchor_size(pos2(at.x, rect.bottom() - 8.0), size);
                    painter.rect_filled(place.expand2(vec2(0.0, 4.0)), 0.0, inks.ground);
                    let turned = egui::epaint::TextShape::new(place.left_bottom(), galley, inks.quiet)
                        .with_angle(-std::f32::consts::FRAC_PI_2);
                    painter.add(turned);
                }
            }
        }
    }

    /// The present place as a full line with a solid mark, the best as a broken one with an open mark.
    fn marks(&self, painter: &Painter, rect: Rect, inks: &Inks) {
        if let Some(best) = self.best() {
            let (head, foot) = self.ends(rect, best);
            painter.extend(Shape::dashed_line(&[head, foot], Stroke::new(1.5, inks.chalk), 6.0, 4.0));
            painter.add(Shape::closed_line(Self::diamond(head), Stroke::new(1.5, inks.chalk)));
        }
        if let Some(now) = self.now {
            let (head, foot) = self.ends(rect, now);
            painter.line_segment([head, foot], Stroke::new(1.5, inks.present));
            painter.add(Shape::convex_polygon(self.arrow(head), inks.present, Stroke::NONE));
        }
    }

    /// The middle of the piece at the best place.
    fn best(&self) -> Option<Point> {
        self.swept.best().and_then(full).map(|full| full.centre)
    }

    /// Where the line of a place begins and ends.
    fn ends(&self, rect: Rect, place: Point) -> (Pos2, Pos2) {
        let at = self.window.pointer_from_wall(place);
        match self.axis() {
            Axis::Across => (pos2(at.x, rect.top() + MARK + 5.0), pos2(at.x, rect.bottom())),
            Axis::Upright => (pos2(rect.left() + MARK + 5.0, at.y), pos2(rect.right(), at.y)),
        }
    }

    fn diamond(at: Pos2) -> Vec<Pos2> {
        // It stands round the other mark where the piece is at the best place.
        let half = MARK + 3.0;
        [vec2(0.0, -half), vec2(half, 0.0), vec2(0.0, half), vec2(-half, 0.0)].map(|by| at + by).to_vec()
    }

    /// Toward the rows.
    fn arrow(&self, at: Pos2) -> Vec<Pos2> {
        let corners = match self.axis() {
            Axis::Across => [vec2(-MARK, -MARK), vec2(MARK, -MARK), vec2(0.0, MARK)],
            Axis::Upright => [vec2(-MARK, -MARK), vec2(MARK, 0.0), vec2(-MARK, MARK)],
        };
        corners.map(|by| at + by).to_vec()
    }
}

/// How many holes of the plate meet a stud, and whether that is known in full.
fn holes(place: &Place) -> Option<(usize, bool)> {
    Some(match &place.told {
        Told::Coarse(coarse) => (coarse.holes_in_studs, false),
        Told::Full(full) => (full.holes_in_studs, true),
    })
}

fn findings(place: &Place) -> Option<(usize, bool)> {
    full(place).map(|full| (full.findings.len(), true))
}

/// What is known of a place in full.
fn full(place: &Place) -> Option<&Full> {
    match &place.told {
        Told::Full(full) => Some(full),
        Told::Coarse(_) => None,
    }
}

/// How high in the plot a reserve is drawn.
fn reserve_at(reserve: f64) -> f64 {
    let (least, most) = RESERVE;
    let share = (reserve.clamp(least, most) - least) / (most - least);
    Rows::foot(1) + 0.1 + 0.75 * share
}
