//! The loupe: where a fingertip covers several handles, that spot enlarged beside the finger, each of them a target
//! for a second tap.

use super::crowd::spread;
use super::grab::Grabbable;
use super::handles;
use super::paint;
use crate::session::Session;
use crate::theme;
use crate::view_state::Window;
use egui::accesskit::Role;
use egui::{
    Align2, Area, Frame, Id, Key, Order, Pos2, Rect, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, vec2,
};
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::font::Weight;
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// The side of the loupe, in points (chosen: seven fingertips).
const SIDE: f32 = 250.0;
/// The least size of a target, in points (chosen: a gloved fingertip).
const TARGET: f32 = 36.0;
/// Enlarged no more than so often (chosen: beyond that the drawing shows nothing but a line).
const MOST: f32 = 6.0;
/// From the finger to the loupe, in points.
const OFF: f32 = 34.0;

/// An open loupe.
#[derive(Clone, Debug)]
pub struct Loupe {
    press: Pos2,
    choices: Vec<Grabbable>,
    /// How much it enlarges.
    factor: f32,
    /// Whether it was not shown yet: the release that opened it chooses nothing.
    is_new: bool,
}

impl Loupe {
    /// Opens it on what a press may mean.
    #[must_use]
    pub fn open(press: Pos2, choices: &[Grabbable], window: &Window) -> Self {
        let mut least = f32::INFINITY;
        for (index, one) in choices.iter().enumerate() {
            for other in choices.iter().skip(index + 1) {
                least = least.min(spot(one, press, window).distance(spot(other, press, window)));
            }
        }
        let factor = (TARGET / least.max(0.1)).clamp(2.0, MOST);
        Self { press, choices: choices.to_vec(), factor, is_new: true }
    }

    /// Shows it. Gives what was chosen, and whether it stays open.
    #[must_use]
    pub fn ui(&mut self, ui: &Ui, session: &mut Session, window: &Window) -> (Option<Grabbable>, bool) {
        let plan = session.plan();
        let side = vec2(SIDE, SIDE + 26.0);
        let area = Area::new(Id::unique("loupe")).order(Order::Foreground).fixed_pos(beside(
            self.press,
            window.canvas,
            side,
        ));
        let mut chosen = None;
        let shown = area.constrain_to(window.canvas).show(ui.ctx(), |ui| {
            Frame::popup(ui.style()).inner_margin(0.0).show(ui, |ui| {
                let (rect, _) = ui.allocate_exact_size(side, Sense::hover());
                let picture = rect.with_max_y(rect.top() + SIDE);
                self.picture(ui, session, window, picture);
                chosen = self.targets(ui, &plan, window, picture);
                let theme = ui.theme();
                ui.painter().text(
                    rect.center_bottom() - vec2(0.0, 5.0),
                    Align2::CENTER_BOTTOM,
                    "Tap the one you mean",
                    theme::font(13.0, Weight::Regular),
                    theme::quiet(theme),
                );
            })
        });
        let is_left = ui.input(|input| {
            let press = input.pointer.press_origin().filter(|_| input.pointer.any_pressed());
            let is_elsewhere = press.is_some_and(|press| !shown.response.rect.contains(press));
            is_elsewhere && !self.is_new || input.key_pressed(Key::Escape)
        });
        self.is_new = false;
        let stays = chosen.is_none() && !is_left;
        (chosen, stays)
    }

    /// The spot enlarged.
    fn picture(&self, ui: &Ui, session: &mut Session, window: &Window, picture: Rect) {
        let plan = session.plan();
        // The press stays in the middle.
        let view = window.view.panned(window.canvas.center() - self.press);
        let enlarged =
            Window { canvas: picture, view: view.zoomed_about(Vec2::ZERO, f64::from(self.factor)) };
        let mut look = enlarged.look();
        look.selected.clone_from(&session.selected);
        let scene = elevation(&session.job, &plan, &look);
        let painter = ui.painter_at(picture);
        let theme = ui.theme();
        painter.rect_filled(picture, 0.0, theme::desk(theme));
        paint::paint(&painter, picture.min, theme, &scene);
    }

    /// A target for each, with a line to where it really is where it had to give way.
    fn targets(
        &self,
        ui: &Ui,
        plan: &strikeline_solver::plan::Plan,
        window: &Window,
        picture: Rect,
    ) -> Option<Grabbable> {
        let real: Vec<Vec2> = self
            .choices
            .iter()
            .map(|one| (spot(one, self.press, window) - self.press) * self.factor)
            .collect();
        let half = SIDE / 2.0 - TARGET / 2.0 - 2.0;
        let places = spread(&real, TARGET + 2.0);
        let theme = ui.theme();
        let painter = ui.painter_at(picture);
        let mut chosen = None;
        for ((one, real), place) in self.choices.iter().zip(real).zip(places) {
            let held = vec2(place.x.clamp(-half, half), place.y.clamp(-half, half));
            let rect = Rect::from_center_size(picture.center() + held, Vec2::splat(TARGET));
            let response = ui.interact(rect, target_id(&one.subject), Sense::click());
            let name = words::thing(plan, &one.subject);
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Choose {name}")));
            let is_lit = response.hovered() || response.has_focus() || one.is_selected;
            let colour = if is_lit { theme::accent(theme) } else { theme::quiet(theme) };
            if (held - real).length() > 2.0 {
                painter.line_segment([picture.center() + real, rect.center()], Stroke::new(1.0, colour));
            }
            painter.circle_stroke(rect.center(), TARGET / 2.0 - 2.0, Stroke::new(2.0, colour));
            if response.clicked() {
                chosen = Some(one.clone());
            }
        }
        painter.rect_stroke(picture, 0.0, Stroke::new(1.0, theme::quiet(theme)), StrokeKind::Inside);
        chosen
    }
}

/// Where a choice is on the canvas: of a body that is larger than a fingertip, and of an edge, what is nearest to the
/// press.
fn spot(one: &Grabbable, press: Pos2, window: &Window) -> Pos2 {
    let inside = one.body.intersect(window.canvas);
    if one.along.is_some() || !one.is_small() { inside.clamp(press) } else { one.body.center() }
}

/// The id of a target in the window.
#[must_use]
pub fn target_id(subject: &Subject) -> Id {
    Id::unique(("loupe target", subject.to_string()))
}

/// Above the finger, where the hand does not cover it; beside it where there is no room above.
fn beside(press: Pos2, canvas: Rect, size: Vec2) -> Pos2 {
    let left = press.x - size.x / 2.0;
    if press.y - OFF - size.y >= canvas.top() {
        return egui::pos2(left, press.y - OFF - size.y);
    }
    let is_left = press.x - OFF - size.x >= canvas.left();
    egui::pos2(if is_left { press.x - OFF - size.x } else { press.x + OFF }, press.y - size.y / 2.0)
}

/// What the window then has selected, and where the focus goes.
pub fn choose(ui: &Ui, chosen: &Grabbable, session: &mut Session) {
    session.selected = Some(handles::selects(chosen));
    ui.memory_mut(|memory| memory.request_focus(handles::handle_id(&chosen.subject)));
}
