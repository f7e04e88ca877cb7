//! The field that opens at a dimension's figure: what is typed is taken by Enter, given back by Escape. A dimension
//! that follows from something else says from what.

use super::drag::Drag;
use super::figures::{self, Figure};
use crate::moves::dimension::{Driven, length_told, typed};
use crate::session::Session;
use crate::theme;
use crate::widgets::quantity_field::{self, Allowed, quantity_field};
use egui::{Area, Frame, Id, Key, Order, Rect, RichText, Ui, pos2};
use strikeline_drawing::dimension::About;
use strikeline_solver::job::Units;
use strikeline_solver::tape;
use strikeline_solver::units::{Length, LengthUnit};

/// How wide the field is, in points (chosen: a short name beside a length).
const WIDTH: f32 = 250.0;

/// So many passes after it opened a field has the focus and keeps what is selected in it.
const SETTLED: u8 = 4;

/// An open field.
#[derive(Debug)]
pub struct FigureField {
    about: About,
    /// Where the figure was when it was opened: the field stays there while the drawing moves.
    at: Rect,
    /// The length that was told.
    told: Option<Length>,
    /// The length that is understood.
    value: Option<Length>,
    /// Why it cannot be typed over.
    driven: Option<Driven>,
    /// The drag during which it was opened.
    drag: Option<Drag>,
    /// How often it was shown.
    passes: u8,
    /// The first digit, where it was typed before there was a field.
    begun: Option<String>,
}

/// What has become of a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ended {
    Not,
    Set,
    GivenBack,
}

impl FigureField {
    /// Opens a field on a figure.
    pub fn open(session: &mut Session, figure: &Figure) -> Self {
        let plan = session.plan();
        let unit = bare(session);
        let told =
            length_told(&session.job, &plan, &figure.about).map(|told| told.quantised().with_unit(unit));
        // Typed as it is, to learn whether it can be typed at all.
        let tried =
            told.ok_or(Driven::ByNothing).and_then(|to| typed(&session.job, &plan, &figure.about, to));
        Self {
            about: figure.about.clone(),
            at: figure.rect,
            told,
            value: told,
            driven: tried.err(),
            drag: None,
            passes: 0,
            begun: None,
        }
    }

    /// Opens a field on the dimension that leads a drag; what was typed stands in it.
    pub fn during(session: &mut Session, figure: &Figure, drag: Drag, begun: String) -> Self {
        let opened = Self::open(session, figure);
        let value = tape::read_length(&begun, bare(session)).ok().or(opened.value);
        Self { drag: Some(drag), begun: Some(begun), value, ..opened }
    }

    /// Whether it was opened during a drag, which goes on until it is closed.
    #[must_use]
    pub fn holds_a_drag(&self) -> bool {
        self.drag.is_some()
    }

    /// What the drag holds that it was opened in.
    #[must_use]
    pub fn held(&self) -> Option<&crate::moves::Handle> {
        self.drag.as_ref().map(|drag| &drag.handle)
    }

    /// Shows it. Gives it back while it stays open.
    #[must_use]
    pub fn ui(mut self, ui: &Ui, session: &mut Session, canvas: Rect) -> Option<Self> {
        let plan = session.plan();
        let field = field_id();
        let is_new = self.passes == 0;
        // The toolkit keeps no selection in a field before that has had the focus for a pass.
        if self.driven.is_none() && (is_new || self.passes < SETTLED && !quantity_field::is_typed(ui, field))
        {
            quantity_field::begin(ui, field, self.begun.as_deref(), self.value);
            ui.request_repaint();
        }
        let corner = pos2(self.at.center().x - WIDTH / 2.0, self.at.bottom() + 6.0);
        let area = Area::new(Id::unique("figure field")).order(Order::Foreground).fixed_pos(corner);
        let shown = area.constrain_to(canvas).show(ui.ctx(), |ui| {
            Frame::popup(ui.style()).show(ui, |ui| {
                ui.set_width(WIDTH);
                let title = figures::title(&plan, &self.about);
                ui.add(egui::Label::new(RichText::new(title).strong()).wrap());
                self.contents(ui, field, &figures::from_where(&session.job, &plan, &self.about))
            })
        });
        let is_elsewhere = ui.input(|input| {
            let press = input.pointer.press_origin().filter(|_| input.pointer.any_pressed());
            press.is_some_and(|press| !shown.response.rect.contains(press))
        });
        let mut ended = shown.inner.inner;
        if self.driven.is_some() && !is_new && is_elsewhere {
            ended = Ended::GivenBack;
        }
        self.passes = self.passes.saturating_add(1);
        match ended {
            Ended::Not => return Some(self),
            Ended::GivenBack => {
                if let Some(drag) = self.drag.take() {
                    drag.give_back(session);
                }
            }
            Ended::Set => {
                let to = self.value.filter(|_| self.value != self.told);
                match to.map(|to| typed(&session.job, &plan, &self.about, to)) {
                    Some(Ok(job)) => session.job = job,
                    Some(Err(driven)) => {
                        self.driven = Some(driven);
                        return Some(self);
                    }
                    None => {}
                }
            }
        }
        quantity_field::forget(ui, field);
        None
    }

    /// The field, or why there is none, and what has become of it.
    fn contents(&mut self, ui: &mut Ui, field: Id, from_where: &str) -> Ended {
        let is_escaped = ui.input(|input| input.key_pressed(Key::Escape));
        if let Some(driven) = self.driven {
            ui.add(egui::Label::new(driven.words()).wrap());
            let is_left = ui.add(button("Leave")).clicked();
            return if is_left || is_escaped { Ended::GivenBack } else { Ended::Not };
        }
        let allowed =
            Allowed { bare: self.told.map_or(LengthUnit::Inch, Length::unit), signed: false, empty: false };
        let response = quantity_field(ui, field, from_where, &mut self.value, allowed);
        if self.passes == 0 {
            response.request_focus();
        }
        let is_refused = quantity_field::is_refused::<Length>(ui, field, allowed);
        let (is_set, is_left) =
            ui.horizontal(|ui| (ui.add(button("Set")).clicked(), ui.add(button("Leave")).clicked())).inner;
        let is_entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        // The press that began a drag ends somewhere, and that is no click elsewhere.
        let is_elsewhere = response.lost_focus() && self.drag.is_none();
        if is_left || is_escaped {
            Ended::GivenBack
        } else if is_set || is_entered || is_elsewhere {
            if !is_refused {
                return Ended::Set;
            }
            if !is_elsewhere || is_entered {
                response.request_focus();
            }
            Ended::Not
        } else {
            if response.lost_focus() {
                response.request_focus();
            }
            Ended::Not
        }
    }
}

/// A button as high as a fingertip.
fn button(text: &str) -> egui::Button<'_> {
    egui::Button::new(text).min_size(egui::vec2(72.0, theme::TOUCH))
}

/// The id of the field in the window.
#[must_use]
pub fn field_id() -> Id {
    Id::unique("figure field's length")
}

/// The unit of a bare number in a job.
fn bare(session: &Session) -> LengthUnit {
    match session.job.units() {
        Units::Inches => LengthUnit::Inch,
        Units::Millimetres => LengthUnit::Millimetre,
    }
}
