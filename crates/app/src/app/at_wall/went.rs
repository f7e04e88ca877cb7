//! Where a mark really went: typed as the tape shows it, or dragged on a close look at the wall.

use crate::moves;
use crate::session::Session;
use crate::view_state::{View, Window};
use crate::widgets::quantity_field::{Allowed, quantity_field};
use crate::widgets::unbroken::unbroken;
use egui::{Id, Label, RichText, Ui, Vec2};
use strikeline_solver::geometry::{Axis, Point, Rect, Span};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::Mark;
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// How much of the wall a close look shows to each side of the mark, in millimetres: a hand's breadth and a half, so
/// that a graduation is a few points (chosen).
const CLOSE_MM: f64 = 110.0;

/// The close look while it is open.
#[derive(Clone, Debug)]
pub(super) struct Went {
    mark: Subject,
    /// The middle of the close look: it stays while the mark is dragged.
    middle: Point,
    /// What the drag began with: how far off it was, and how far the finger came since, in points.
    drag: Option<(Point, Vec2)>,
}

impl Went {
    /// The close look at a mark; `None` where nothing stands there.
    pub(super) fn at(mark: &Mark) -> Option<Self> {
        Some(Self { mark: mark.id.clone(), middle: mark.place?, drag: None })
    }

    /// Shows the fields, one for each reading that it was struck by.
    pub(super) fn fields(&self, ui: &mut Ui, session: &mut Session, plan: &Plan) {
        let Some(fact) = moves::fact_of(&session.job, plan, &self.mark).cloned() else { return };
        let text = "Where did it really go? Type what the tape shows, or drag it on the close look.";
        ui.add(Label::new(RichText::new(text).size(19.0)).wrap());
        let bare = plan.style.graduation.unit();
        let allowed = Allowed { bare, signed: false, empty: false };
        for shown in moves::shown_readings(&fact, plan) {
            let name = if shown.direction.axis() == Axis::Across { "across" } else { "upright" };
            let label = words::capital(&words::beside(plan, shown.direction, &shown.from));
            if let Some(typed) = typed(ui, plan, name, &label, shown.value, allowed) {
                session.job = moves::went_by_reading(&session.job, plan, &self.mark, shown.direction, typed);
            }
        }
    }

    /// The close look in a canvas so large.
    pub(super) fn view(&self, canvas: egui::Rect) -> Window {
        let half = Length::millimetres(CLOSE_MM);
        let about = Rect::new(
            Span::new(self.middle.x - half, self.middle.x + half),
            Span::new(self.middle.y - half, self.middle.y + half),
        );
        Window { canvas, view: View::fit(about, canvas.size()) }
    }

    /// Takes a finger's drag on the close look, in whole graduations.
    pub(super) fn drag(&mut self, response: &egui::Response, session: &mut Session, plan: &Plan, view: View) {
        let Some(fact) = moves::fact_of(&session.job, plan, &self.mark) else { return };
        let Some(now) = fact.off() else { return };
        if response.drag_started() {
            self.drag = Some((now, Vec2::ZERO));
        }
        if let Some((began, by)) = &mut self.drag
            && response.dragged()
        {
            *by += response.drag_delta();
            let whole = |began: Length, points: f32| {
                let by = Length::millimetres(f64::from(points) / view.points_per_mm());
                plan.style.length_of(plan.style.steps(began + by))
            };
            let (right, up) = (whole(began.x, by.x), whole(began.y, -by.y));
            if (right, up) != (now.x, now.y) {
                session.job = moves::went(&session.job, plan, &self.mark, right, up);
            }
        }
        if response.drag_stopped() {
            self.drag = None;
        }
    }
}

/// The field of one reading; the value where a hand changed it.
fn typed(ui: &mut Ui, plan: &Plan, name: &str, label: &str, at: Length, allowed: Allowed) -> Option<Length> {
    let mut value = Some(plan.style.length_of(plan.style.steps(at.max(Length::default()))));
    let before = value;
    quantity_field(ui, field_id(name), &unbroken(label), &mut value, allowed);
    value.filter(|_| value != before)
}

/// The field of a mark's `across` or `upright` reading in the window.
#[must_use]
pub(super) fn field_id(name: &str) -> Id {
    Id::unique(("went", name.to_owned()))
}
