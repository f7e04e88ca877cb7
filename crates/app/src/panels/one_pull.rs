//! One pull along the wall: choose the datum once, then number and kind, number and kind. By keys alone: the
//! number, the letter on the kind's button, Enter.

mod list;

use super::measured::{section, titled};
use super::{across_datum, measured_field};
use crate::moves::one_pull::{Entry, OnePull, Seen};
use crate::session::Session;
use crate::theme;
use crate::widgets::chips::chips;
use crate::widgets::choice::choice;
use crate::widgets::quantity_field::{self, is_refused, quantity_field};
use egui::accesskit::Role;
use egui::{Button, Event, Id, Key, Modifiers, RichText, ScrollArea, Ui, WidgetInfo, vec2};
use std::rc::Rc;
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{AcrossDatum, Sideways};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;

/// The least height of a kind's button, in points (a gloved fingertip; common practice, no source).
const KIND: f32 = 44.0;

/// The height of a field with a line of what it understood, in points.
const ECHOED: f32 = 54.0;

/// A pull while it is taken.
#[derive(Clone, Debug)]
pub struct Panel {
    /// The job before the pull, and its plan.
    before: Job,
    plan: Rc<Plan>,
    /// The job as the pull wrote it: where it is another now, something else changed it.
    written: Job,
    pull: OnePull,
    /// The number that is typed just now, and the kind named by its letter.
    by: Option<Length>,
    seen: Option<Seen>,
    /// Why the last Enter or tap took nothing.
    refused: Option<&'static str>,
    /// Whether what stands in the number's field is not understood.
    is_unread: bool,
    /// Whether the number is to have the focus.
    wants_focus: bool,
}

impl Panel {
    /// Begins a pull on the wall that is looked at, from its left end.
    #[must_use]
    pub fn begin(session: &mut Session) -> Self {
        Self {
            before: session.job.clone(),
            plan: session.plan(),
            written: session.job.clone(),
            pull: OnePull::from(AcrossDatum::LeftEnd),
            by: None,
            seen: None,
            refused: None,
            is_unread: false,
            wants_focus: true,
        }
    }

    /// Takes back the last entry.
    pub fn take_back(&mut self, session: &mut Session) {
        self.pull.entries.pop();
        self.refused = None;
        self.wants_focus = true;
        self.write(session);
    }

    /// Shows the pull and writes it into the job as it grows. Whether it goes on.
    #[must_use]
    pub fn ui(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan) -> bool {
        // Another job, or a change from elsewhere: what was read is in the job, and the pull is over.
        if session.job != self.written {
            return false;
        }
        ui.add_space(4.0);
        ui.heading("One pull");
        let mut goes_on = true;
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            self.datum(ui);
            let is_entered = self.number(ui, session);
            self.kinds(ui, session);
            if is_entered {
                goes_on = self.enter(session);
            }
            goes_on &= self.ways_out(ui, session);
            self.list(ui, plan);
            ui.add_space(theme::TOUCH);
        });
        goes_on
    }

    fn write(&mut self, session: &mut Session) {
        session.job = self.pull.applied(&self.before, &self.plan.wall);
        self.written = session.job.clone();
    }

    /// What the tape is held at, and which way it is read: fixed from the first entry on.
    fn datum(&mut self, ui: &mut Ui) {
        let way = match self.pull.way {
            Sideways::Left => "left",
            Sideways::Right => "right",
        };
        if !self.pull.entries.is_empty() {
            ui.label(format!("From {}, read {way}.", across_datum(&self.plan, &self.pull.from)));
            return;
        }
        ui.label("Hold the tape at one place, read off everything as the blade passes it.");
        let mut datums = vec![AcrossDatum::LeftEnd, AcrossDatum::RightEnd];
        for feature in &self.plan.survey.features {
            let edge = |part| Subject::read(&format!("{}.{part}", feature.id)).map(AcrossDatum::Edge);
            datums.extend(["left", "right"].into_iter().filter_map(edge));
        }
        let names: Vec<String> = datums.iter().map(|from| across_datum(&self.plan, from)).collect();
        let held = datums.iter().position(|from| *from == self.pull.from);
        if let Some(from) = choice(ui, Id::unique("pull from"), "From", "", &names, held)
            .and_then(|index| datums.into_iter().nth(index))
        {
            self.pull.way = from.away();
            self.pull.from = from;
        }
        if matches!(self.pull.from, AcrossDatum::Edge(_)) {
            let ways = [Sideways::Left, Sideways::Right];
            let held = ways.iter().position(|way| *way == self.pull.way);
            if let Some(way) = chips(ui, "Read", ["to the left", "to the right"], held)
                .and_then(|index| ways.into_iter().nth(index))
            {
                self.pull.way = way;
            }
        }
    }

    /// The number. Whether Enter was pressed in it.
    fn number(&mut self, ui: &mut Ui, session: &mut Session) -> bool {
        let allowed = measured_field(&session.job);
        let height = Id::unique("pull height");
        let before = self.pull.height;
        quantity_field(ui, height, "Height of the studs' hits", &mut self.pull.height, allowed);
        if self.pull.height != before {
            self.write(session);
        }
        ui.add_space(6.0);
        let field = number_id();
        // Before the field is shown: what is typed in this very frame is for it.
        if std::mem::take(&mut self.wants_focus) {
            ui.memory_mut(|memory| memory.request_focus(field));
        }
        if ui.memory(|memory| memory.has_focus(field)) {
            if let Some(seen) = letter(ui) {
                self.seen = Some(seen);
                self.refused = None;
            }
            let is_back = |key| ui.input_mut(|input| input.consume_key(key, Key::Backspace));
            let is_undo = |key| ui.input_mut(|input| input.consume_key(key, Key::Z));
            // Nothing typed: what is taken back is the last entry.
            if quantity_field::is_empty(ui, field, self.by)
                && (is_back(Modifiers::NONE) || is_undo(Modifiers::COMMAND))
            {
                self.take_back(session);
            }
        }
        // Room for what it echoes at all times: the buttons under it stay where they are.
        let response = ui.scope(|ui| {
            ui.set_min_height(ECHOED);
            quantity_field(ui, field, "Tape shows", &mut self.by, allowed)
        });
        let response = response.inner;
        self.is_unread = is_refused::<Length>(ui, field, allowed);
        response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter))
    }

    /// A button a kind: a tap takes what was typed.
    fn kinds(&mut self, ui: &mut Ui, session: &mut Session) {
        let width = (ui.available_width() - 14.0) / 2.0;
        let mut tapped = None;
        egui::Grid::new("kinds").num_columns(2).spacing(vec2(4.0, 4.0)).show(ui, |ui| {
            for pair in Seen::ALL.chunks(2) {
                for seen in pair {
                    if self.kind(ui, *seen, width) {
                        tapped = Some(*seen);
                    }
                }
                ui.end_row();
            }
        });
        if let Some(seen) = tapped {
            self.seen = Some(seen);
            self.wants_focus = true;
            self.take(session);
        }
        if let Some(why) = self.refused {
            ui.label(RichText::new(why).color(theme::accent(ui.theme())));
        }
    }

    fn kind(&self, ui: &mut Ui, seen: Seen, width: f32) -> bool {
        let name = self.kind_name(seen);
        let text = format!("{}  {name}", seen.letter());
        let is_named = self.seen == Some(seen);
        let button = Button::new(text).wrap().selected(is_named).min_size(vec2(width, KIND));
        let size = vec2(width, KIND);
        let response = ui
            .allocate_ui(size, |ui| {
                ui.set_max_width(width);
                ui.add_enabled(!self.pull.is_over(), button)
            })
            .inner;
        response.widget_info(|| WidgetInfo::selected(Role::Button, response.enabled(), is_named, &name));
        response.clicked()
    }

    fn kind_name(&self, seen: Seen) -> String {
        let edge = if self.pull.is_far_next(seen) { "far edge" } else { "near edge" };
        match seen {
            Seen::Window => format!("Window, {edge}"),
            Seen::Door => format!("Door, {edge}"),
            Seen::Outlet => "Outlet".to_owned(),
            Seen::Switch => "Switch".to_owned(),
            Seen::StudLeft => "Stud's left edge".to_owned(),
            Seen::StudRight => "Stud's right edge".to_owned(),
            Seen::StudCentre => "Stud's centre".to_owned(),
            Seen::End => match self.pull.way {
                Sideways::Right => "Right end of wall".to_owned(),
                Sideways::Left => "Left end of wall".to_owned(),
            },
        }
    }

    /// What Enter does: takes number and kind; after the wall's end, with nothing typed, it is done. Whether the
    /// pull goes on.
    fn enter(&mut self, session: &mut Session) -> bool {
        self.wants_focus = true;
        if self.pull.is_over() && self.by.is_none() {
            return false;
        }
        self.take(session);
        true
    }

    /// Takes the number and the kind as an entry, where both are there.
    fn take(&mut self, session: &mut Session) {
        self.refused = match (self.by, self.seen) {
            _ if self.pull.is_over() => Some("The wall's end was read: the pull is over."),
            _ if self.is_unread => Some("What is typed is not understood: mend it first."),
            (None, _) => Some("Type first what the tape shows."),
            (Some(_), None) => Some("Say what is there: tap it, or type its letter."),
            (Some(by), Some(seen)) => {
                self.pull.entries.push(Entry { by, seen });
                self.by = None;
                self.seen = None;
                None
            }
        };
        if self.refused.is_none() {
            self.write(session);
        }
    }

    /// The ways back and out. Whether the pull goes on.
    fn ways_out(&mut self, ui: &mut Ui, session: &mut Session) -> bool {
        ui.add_space(4.0);
        ui.horizontal_wrapped(|ui| {
            let has_entries = !self.pull.entries.is_empty();
            if ui.add_enabled(has_entries, Button::new("Take back the last")).clicked() {
                self.take_back(session);
            }
            if ui.add_enabled(has_entries, Button::new("Done")).clicked() {
                return false;
            }
            if ui.button("Discard").clicked() {
                // Undone, it is all there again.
                session.note(true);
                session.job = self.before.clone();
                return false;
            }
            true
        })
        .inner
    }

    fn list(&self, ui: &mut Ui, plan: &Plan) {
        if self.pull.entries.is_empty() {
            return;
        }
        section(ui, "Taken");
        let end = self.pull.end_check(&self.before, &self.plan);
        for line in list::lines(&self.pull, plan.style, end) {
            let colour = if line.is_odd { theme::accent(ui.theme()) } else { ui.visuals().text_color() };
            ui.add(egui::Label::new(RichText::new(titled(&line.text)).color(colour)).wrap());
        }
    }
}

/// The id of the number's field.
#[must_use]
pub fn number_id() -> Id {
    Id::unique("pull number")
}

/// The kind whose letter was typed, taken out of what the field will see.
fn letter(ui: &Ui) -> Option<Seen> {
    ui.input_mut(|input| {
        let mut named = None;
        input.events.retain(|event| {
            let Event::Text(text) = event else { return true };
            let mut letters = text.chars();
            let (Some(letter), None) = (letters.next(), letters.next()) else { return true };
            let seen = Seen::ALL.into_iter().find(|seen| seen.letter() == letter.to_ascii_uppercase());
            named = seen.or(named);
            seen.is_none()
        });
        named
    })
}
