//! The options with the customer: side by side, and one at a time over the whole window. A piece moves there under a
//! finger as it does on the drawing; what is chosen is kept with the words that were agreed to.

mod cards;

use crate::canvas::drag::Drag;
use crate::canvas::grab::{Grabbable, grab};
use crate::canvas::paint::paint;
use crate::moves::{self, Handle, HandleKind};
use crate::panels::top_line::{named_options, named_walls};
use crate::session::Session;
use crate::solved::Solved;
use crate::theme;
use crate::view_state::{View, Window};
use crate::widgets::unbroken::unbroken;
use cards::{Card, cards};
use egui::accesskit::Role;
use egui::{
    Button, CentralPanel, Frame, Id as UiId, Key, Label, Modifiers, Panel, Rect, RichText, ScrollArea,
};
use egui::{Sense, TextEdit, Ui, WidgetInfo, vec2};
use std::rc::Rc;
use std::time::{Duration, Instant};
use strikeline_drawing::customer_view::customer_view;
use strikeline_drawing::font::Weight;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::sweep::{Full, Nearest, can_hang};
use strikeline_solver::words::{self, OfferPart};

/// Kept free around the wall, in points (chosen: the picture stands on its page).
const MARGIN: f64 = 16.0;

/// How much of the height the words under one picture take.
const WORDS_SHARE: f32 = 0.34;

/// The same while words are being agreed to: their field and both answers stand on the lowest window.
const AGREEING_SHARE: f32 = 0.52;

/// What is kept of it from frame to frame.
#[derive(Debug, Default)]
pub(super) struct Choosing {
    /// The option that is shown alone; all side by side where none is.
    alone: Option<Id>,
    agreeing: Option<Agreeing>,
    held: Option<Drag>,
    /// The piece that was taken last, and where else it could go.
    asked: Option<AskedOf>,
    /// The plan of each option, while its job is the same.
    solved: Vec<(Id, Solved)>,
}

/// The nearest place that a piece could go to, looked for while no hand is down.
#[derive(Debug)]
struct AskedOf {
    piece: Id,
    /// What it was looked for in; `None` where it is still to be looked for.
    plan: Option<Rc<Plan>>,
    /// `None` where there is nowhere to look.
    nearest: Option<Nearest>,
}

/// What a hand asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// To stay.
    Nothing,
    /// To go back to the drawing.
    Leave,
    /// To have what is shown as a picture.
    Picture,
}

/// In each frame so long is looked for a place (chosen: half of what a frame's work may take).
const LOOKS: Duration = Duration::from_millis(2);

/// Words that are being agreed to, and what they are of: of another plan they are void.
#[derive(Debug)]
struct Agreeing {
    words: String,
    plan: Rc<Plan>,
}

impl Choosing {
    /// Whether a piece is held there just now.
    pub(super) fn is_held(&self) -> bool {
        self.held.is_some()
    }

    /// Shows it over the whole window. `closes` is whether Escape is free to go back.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session, closes: bool) -> Asked {
        let asked = Panel::top("choosing").show(ui, |ui| self.top(ui, session)).inner;
        match self.shown(session) {
            Some(option) => {
                session.option = (!option.is_empty()).then_some(option);
                self.one(ui, session);
            }
            None => {
                let plans = self.plans(session);
                let tapped = CentralPanel::default().show(ui, |ui| cards(ui, &list(session, &plans))).inner;
                if let Some(option) = tapped {
                    self.look_at(Some(option));
                }
            }
        }
        let escaped = closes && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
        if escaped && self.agreeing.take().is_none() {
            let options = session.job.wall(&session.wall).map_or(0, |wall| wall.options.len());
            if self.alone.is_none() || options < 2 {
                return Asked::Leave;
            }
            self.look_at(None);
        }
        asked
    }

    /// The option that is shown alone: that which was asked for, or the only one.
    fn shown(&mut self, session: &mut Session) -> Option<Id> {
        // Asked first: it lets go of a wall that is no more.
        let _ = session.plan();
        let options = session.job.wall(&session.wall).map(|wall| wall.options.as_slice()).unwrap_or_default();
        match options {
            [] => Some(Id::default()),
            [only] => Some(only.id.clone()),
            several => self.alone.clone().filter(|id| several.iter().any(|one| one.id == *id)),
        }
    }

    fn look_at(&mut self, option: Option<Id>) {
        self.alone = option;
        self.agreeing = None;
        self.held = None;
    }

    /// The plan of every option of the wall, in the job's order; one without an id where the wall has no option.
    fn plans(&mut self, session: &mut Session) -> Vec<(Id, Rc<Plan>)> {
        // Asked first: it lets go of a wall that is no more.
        let now = session.plan();
        let options = session.job.wall(&session.wall).map(|wall| wall.options.as_slice()).unwrap_or_default();
        if options.is_empty() {
            return vec![(Id::default(), now)];
        }
        self.solved.retain(|(id, _)| options.iter().any(|option| option.id == *id));
        let mut plans = Vec::new();
        for option in options {
            let at = self.solved.iter().position(|(id, _)| *id == option.id).unwrap_or_else(|| {
                self.solved.push((option.id.clone(), Solved::default()));
                self.solved.len() - 1
            });
            if let Some((id, solved)) = self.solved.get_mut(at) {
                plans.push((id.clone(), solved.plan(&session.job, &session.wall, Some(&option.id))));
            }
        }
        plans
    }

    /// The way back, a picture of what is shown, the walls, and the options.
    fn top(&mut self, ui: &mut Ui, session: &mut Session) -> Asked {
        let mut asked = Asked::Nothing;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().interact_size.y = theme::TAKEN;
            if ui.button("Back to the drawing").clicked() {
                asked = Asked::Leave;
            }
            if self.shown(session).is_some() && ui.button("As a picture\u{2026}").clicked() {
                asked = Asked::Picture;
            }
            ui.separator();
            let walls = named_walls(session);
            if walls.len() > 1 {
                for (id, name) in walls {
                    if ui.selectable_label(session.wall == id, name).clicked() && session.wall != id {
                        session.wall = id;
                        session.option = None;
                        self.look_at(None);
                    }
                }
                ui.separator();
            }
            let options = named_options(session);
            if options.len() > 1 {
                let shown = self.shown(session);
                if ui.selectable_label(shown.is_none(), "Side by side").clicked() {
                    self.look_at(None);
                }
                for (id, name) in options {
                    if ui.selectable_label(shown.as_ref() == Some(&id), name).clicked() {
                        self.look_at(Some(id));
                    }
                }
            }
        });
        asked
    }

    /// Whether the piece that was taken last can go where it is, in a line; what else there is is looked for while no
    /// hand is down.
    fn can_it_go(&mut self, ui: &mut Ui, session: &mut Session) {
        let plan = session.plan();
        let taken = self.asked.as_ref().map(|asked| asked.piece.clone());
        let piece = plan.pieces.iter().find(|piece| Some(&piece.id) == taken.as_ref());
        let Some(piece) = piece.or_else(|| plan.pieces.iter().find(|piece| piece.mount.is_some())) else {
            return;
        };
        let is_down = ui.input(|input| input.pointer.any_down() || input.any_touches());
        let is_of_it = self.asked.as_ref().is_some_and(|asked| {
            asked.piece == piece.id && asked.plan.as_ref().is_some_and(|of| Rc::ptr_eq(of, &plan))
        });
        if !is_of_it {
            let nearest = if is_down { None } else { Nearest::of(&session.job, &plan, &piece.id) };
            let plan = (!is_down).then(|| Rc::clone(&plan));
            self.asked = Some(AskedOf { piece: piece.id.clone(), plan, nearest });
        }
        let nearest = self.asked.as_mut().and_then(|asked| asked.nearest.as_mut()).filter(|_| !is_down);
        let can = Full::of(&plan, &piece.id, Nudge::default()).is_some_and(|full| can_hang(&full));
        let mut shown = None;
        if let Some(nearest) = nearest {
            let begun = Instant::now();
            while !can && begun.elapsed() < LOOKS && nearest.look_on() {}
            if !can && !nearest.is_over() {
                ui.request_repaint();
            }
            shown = Some(&*nearest);
        }
        let told = words::can_it_go(&plan, piece, shown);
        let text = RichText::new(unbroken(&told)).font(theme::font(17.0, Weight::Semibold));
        ui.add(Label::new(text).wrap());
    }

    /// One option over the window: its picture, and under it what it is in words.
    fn one(&mut self, ui: &mut Ui, session: &mut Session) {
        let share = if self.agreeing.is_some() { AGREEING_SHARE } else { WORDS_SHARE };
        let most = ui.available_height() * share;
        Panel::bottom("offer").exact_size(most).resizable(false).show(ui, |ui| {
            ScrollArea::vertical().id_salt("offer").show(ui, |ui| {
                ui.add_space(6.0);
                self.can_it_go(ui, session);
                self.decide(ui, session);
                let plan = session.plan();
                for (part, text) in words::offer(&plan) {
                    told(ui, part, &text);
                }
            });
        });
        CentralPanel::default()
            .frame(Frame::new().fill(theme::desk(ui.theme())))
            .show(ui, |ui| self.picture(ui, session));
    }

    /// Whether this one is taken, in which words.
    fn decide(&mut self, ui: &mut Ui, session: &mut Session) {
        let plan = session.plan();
        // What was read out is of the picture as it was then.
        self.agreeing.take_if(|agreeing| !Rc::ptr_eq(&agreeing.plan, &plan));
        if let Some(Agreeing { words: text, .. }) = &mut self.agreeing {
            let name = ui.label("The customer agrees to");
            let rows = TextEdit::multiline(text).desired_rows(3).desired_width(f32::INFINITY);
            ui.add(rows).labelled_by(name.id);
            let mut is_over = false;
            ui.horizontal(|ui| {
                if ui.add(big("Agreed")).clicked() {
                    session.job = moves::with_agreed(&session.job, &plan, text);
                    is_over = true;
                }
                is_over |= ui.add(big("Not yet")).clicked();
            });
            if is_over {
                self.agreeing = None;
            }
            return;
        }
        let wall = session.job.wall(&plan.wall);
        let chosen = wall.and_then(|wall| wall.chosen.clone());
        let option = session.shown_option();
        let is_chosen = option.is_some_and(|option| chosen.as_ref() == Some(&option.id));
        let agreed = option.and_then(|option| option.agreed.as_ref()).map(|agreed| agreed.words.clone());
        ui.horizontal_wrapped(|ui| {
            if is_chosen {
                ui.label(RichText::new("\u{2713} Chosen").font(theme::font(19.0, Weight::Semibold)));
                if ui.add(big("Take it back")).clicked() {
                    session.job = moves::without_agreed(&session.job, &plan);
                }
            }
            let again = if is_chosen { "Agree anew\u{2026}" } else { "This one\u{2026}" };
            if ui.add(big(again)).clicked() {
                self.agreeing = Some(Agreeing { words: words::to_agree(&plan), plan: Rc::clone(&plan) });
            }
        });
        if let Some(agreed) = agreed {
            ui.add(Label::new(RichText::new(unbroken(&format!("Agreed to: {agreed}"))).size(17.0)).wrap());
        }
    }

    /// The picture, with its pieces under the finger.
    fn picture(&mut self, ui: &mut Ui, session: &mut Session) {
        let canvas = ui.available_rect_before_wrap();
        let response = ui.interact(canvas, picture_id(), Sense::drag());
        response
            .widget_info(|| WidgetInfo::labeled(Role::GenericContainer, true, "The wall as it will be seen"));
        let plan = session.plan();
        let window = window(&plan, canvas);
        if self.held.is_some() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
            if let Some(drag) = self.held.take() {
                drag.give_back(session);
            }
        } else if response.drag_started()
            && let Some(press) = ui.input(|input| input.pointer.press_origin())
        {
            let handles = handles(&plan, &window);
            let held = grab(press, &handles);
            if let Some(one) = &held {
                self.asked = Some(AskedOf { piece: one.handle.id.clone(), plan: None, nearest: None });
            }
            self.held = held.and_then(|one| Drag::begin(session, one, press, &window));
        }
        if let (Some(drag), Some(pointer)) = (&mut self.held, response.interact_pointer_pos()) {
            drag.follow(session, pointer, &window, false);
        }
        if !ui.input(|input| input.pointer.any_down()) {
            self.held = None;
        }
        let plan = session.plan();
        let mut look = window.look();
        look.held = self.held.as_ref().map(|drag| drag.handle.id.whole());
        let scene = customer_view(&plan, &look);
        paint(&ui.painter_at(canvas), canvas.min, ui.theme(), &scene);
    }
}

/// The id of the picture in the window.
#[must_use]
pub(super) fn picture_id() -> UiId {
    UiId::unique("choosing")
}

/// All of the wall in a canvas.
fn window(plan: &Plan, canvas: Rect) -> Window {
    Window { canvas, view: View::within(plan.survey.outline, canvas.size(), MARGIN) }
}

/// What a finger can take: the pieces.
fn handles(plan: &Plan, window: &Window) -> Vec<Grabbable> {
    let one = |piece: &strikeline_solver::plan::piece::PiecePlan| Grabbable {
        subject: piece.id.whole(),
        handle: Handle { id: piece.id.clone(), kind: HandleKind::Piece },
        body: window.canvas_rect(piece.outline),
        along: None,
        is_selected: false,
    };
    plan.pieces.iter().map(one).collect()
}

/// The options as cards, in the job's order.
fn list(session: &Session, plans: &[(Id, Rc<Plan>)]) -> Vec<Card> {
    let chosen = session.job.wall(&session.wall).and_then(|wall| wall.chosen.clone());
    let named = named_options(session);
    let card = |(id, plan): &(Id, Rc<Plan>)| Card {
        option: id.clone(),
        name: named.iter().find(|(one, _)| one == id).map(|(_, name)| name.clone()).unwrap_or_default(),
        is_chosen: chosen.as_ref() == Some(id),
        plan: Rc::clone(plan),
    };
    plans.iter().map(card).collect()
}

fn big(text: &str) -> Button<'_> {
    Button::new(RichText::new(text).size(19.0)).min_size(vec2(120.0, theme::TAKEN))
}

/// A part of an offer: its heading, then what it is.
fn told(ui: &mut Ui, part: OfferPart, text: &str) {
    ui.add_space(4.0);
    ui.label(RichText::new(words::offer_part(part)).font(theme::font(16.0, Weight::Semibold)));
    ui.add(Label::new(RichText::new(unbroken(text)).size(17.0)).wrap());
}
