//! A field for a quantity as people write it: it echoes what it understood, and says in place what it did not,
//! without losing what was typed.

use super::field_order;
use super::keypad::keys::Writes;
use super::keypad::{self, Field};
use crate::theme;
use egui::{Id, Key, RichText, TextEdit, Ui};
use strikeline_solver::tape::{self, ReadError};
use strikeline_solver::units::{Length, LengthUnit, Mass, MassUnit};

/// A kind of quantity: how it is read, written back and echoed.
pub trait Quantity: Copy + PartialEq {
    /// What its keypad has to offer.
    const WRITES: Writes = Writes::BARE;

    /// Reads it; a bare number is in the job's unit.
    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError>;
    /// As a file has it: nothing is lost.
    fn write(self) -> String;
    /// The same in the other system, for the eye.
    fn other(self) -> String;
    /// Whether it is below zero.
    fn is_negative(self) -> bool;
}

impl Quantity for Length {
    const WRITES: Writes = Writes::LENGTH;

    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError> {
        tape::read_length(text, bare)
    }

    fn write(self) -> String {
        tape::write_length(self)
    }

    fn other(self) -> String {
        match self.unit() {
            LengthUnit::Millimetre => format!("{:.3} in", self.in_inches()),
            LengthUnit::Inch | LengthUnit::Mil => format!("{:.1} mm", self.mm()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

impl Quantity for Mass {
    const WRITES: Writes = Writes::MASS;

    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError> {
        let bare = if bare == LengthUnit::Millimetre { MassUnit::Kilogram } else { MassUnit::Pound };
        tape::read_mass(text, Some(bare))
    }

    fn write(self) -> String {
        tape::write_mass(self)
    }

    fn other(self) -> String {
        match self.unit() {
            MassUnit::Kilogram => format!("{:.1} lb", self.lb()),
            MassUnit::Pound => format!("{:.1} kg", self.kg()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

/// What a field allows.
#[derive(Clone, Copy, Debug)]
pub struct Allowed {
    /// The unit of a bare number.
    pub bare: LengthUnit,
    /// Whether it may be below zero.
    pub signed: bool,
    /// Whether it may be left empty.
    pub empty: bool,
}

/// What a text means in a field: a value, nothing, or why it cannot be.
fn understood<Q: Quantity>(text: &str, allowed: Allowed) -> Result<Option<Q>, String> {
    if text.trim().is_empty() {
        return if allowed.empty { Ok(None) } else { Err("Write how much, as in 48 1/2.".to_owned()) };
    }
    let quantity = Q::read(text, allowed.bare).map_err(|why| why.to_string())?;
    if quantity.is_negative() && !allowed.signed {
        return Err("Below zero has no place here: write zero or more.".to_owned());
    }
    Ok(Some(quantity))
}

/// A labelled field. Writes the value while it is typed, as far as it is understood; `None` for an empty field.
/// Escape gives back what was there when the typing began.
pub fn quantity_field<Q: Quantity + Send + Sync + 'static>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    value: &mut Option<Q>,
    allowed: Allowed,
) -> egui::Response {
    // One widget to what follows, whatever is told under it: what a hand is on keeps its own id.
    ui.scope(|ui| field(ui, id, label, value, allowed)).inner
}

fn field<Q: Quantity + Send + Sync + 'static>(
    ui: &mut Ui,
    id: Id,
    label: &str,
    value: &mut Option<Q>,
    allowed: Allowed,
) -> egui::Response {
    let theme = ui.theme();
    let typed_id = id.with("typed");
    let started_id = id.with("started");
    let mut typed: Option<String> = ui.data_mut(|data| data.get_temp(typed_id));
    let mut text = typed.clone().unwrap_or_else(|| value.map(Q::write).unwrap_or_default());
    let response = ui
        .horizontal(|ui| {
            let name = super::row_label(ui, label, 0.42);
            let hint = match (allowed.empty, allowed.signed) {
                (true, false) => "not measured",
                (true, true) => "none",
                (false, _) => "",
            };
            let room = ui.available_width() - 10.0;
            // What is typed keeps clear of the keypad's button.
            let right = if keypad::has_button(room) { keypad::BUTTON } else { 4.0 };
            let margin = egui::Margin { right: right as i8, ..egui::Margin::symmetric(4, 2) };
            let edit = TextEdit::singleline(&mut text)
                .id(id)
                .margin(margin)
                .hint_text(hint)
                .min_size(egui::vec2(0.0, theme::TOUCH))
                .align(egui::Align2::LEFT_CENTER)
                .desired_width(room);
            ui.add(edit).labelled_by(name.id)
        })
        .inner;

    let next = field_order::next(ui, id);
    let field = Field { id, name: label, writes: Q::WRITES, next };
    let is_written = keypad::keypad(ui, field, &response, &mut text);

    if response.gained_focus() {
        response.scroll_to_me(None);
        let started = *value;
        ui.data_mut(|data| data.insert_temp(started_id, started));
    }
    if response.changed() || is_written {
        typed = Some(text.clone());
        // The same length in another unit is another way to write it: it is kept as it was typed.
        if let Ok(understood) = understood::<Q>(&text, allowed) {
            *value = understood;
        }
    }
    if response.lost_focus() {
        if ui.input(|input| input.key_pressed(Key::Escape)) {
            if let Some(started) = ui.data_mut(|data| data.get_temp::<Option<Q>>(started_id))
                && typed.is_some()
            {
                *value = started;
            }
            typed = None;
        } else if understood::<Q>(&text, allowed).is_ok() {
            typed = None;
        }
        // Taken out of the input, else the next field would end with it too.
        if let Some(next) = next
            && ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, Key::Enter))
        {
            ui.memory_mut(|memory| memory.request_focus(next));
        }
    }

    match typed.as_deref().map(|text| understood::<Q>(text, allowed)) {
        Some(Err(why)) => {
            ui.label(RichText::new(format!("Not understood. {why}")).small().color(theme::accent(theme)));
        }
        Some(Ok(Some(quantity))) => {
            let echo = format!("{} is {}", quantity.write(), quantity.other());
            ui.label(RichText::new(echo).small().color(theme::quiet(theme)));
        }
        // A press ends the typing at its release, and the line goes: what is pressed keeps its id all the same.
        Some(Ok(None)) | None => ui.skip_ahead_auto_ids(1),
    }
    ui.data_mut(|data| {
        if let Some(text) = typed {
            data.insert_temp(typed_id, text);
        } else {
            data.remove::<String>(typed_id);
        }
    });
    response
}

/// Makes a field that is about to be shown begin with a text, the cursor after it; or with its value, all of it
/// selected, so that the first digit replaces it.
pub fn begin<Q: Quantity>(ui: &Ui, id: Id, text: Option<&str>, value: Option<Q>) {
    use egui::text::{CCursor, CCursorRange};
    let shown = text.map_or_else(|| value.map(Q::write).unwrap_or_default(), str::to_owned);
    let end = CCursor::new(shown.chars().count());
    let range = match text {
        Some(_) => CCursorRange::one(end),
        None => CCursorRange::two(CCursor::new(0), end),
    };
    let mut state = egui::text_edit::TextEditState::default();
    state.cursor.set_char_range(Some(range));
    state.store(ui.ctx(), id);
    ui.data_mut(|data| match text {
        Some(text) => {
            data.insert_temp(id.with("typed"), text.to_owned());
        }
        None => data.remove::<String>(id.with("typed")),
    });
}

/// Whether something is being typed in a field.
#[must_use]
pub fn is_typed(ui: &Ui, id: Id) -> bool {
    ui.data(|data| data.get_temp::<String>(id.with("typed"))).is_some()
}

/// Whether what stands in a field is not understood.
#[must_use]
pub fn is_refused<Q: Quantity>(ui: &Ui, id: Id, allowed: Allowed) -> bool {
    let typed = ui.data(|data| data.get_temp::<String>(id.with("typed")));
    typed.is_some_and(|text| understood::<Q>(&text, allowed).is_err())
}

/// Whether a field holds neither a value nor anything typed.
#[must_use]
pub fn is_empty<Q>(ui: &Ui, id: Id, value: Option<Q>) -> bool {
    let typed: Option<String> = ui.data(|data| data.get_temp(id.with("typed")));
    value.is_none() && typed.is_none_or(|typed| typed.is_empty())
}

/// Forgets what was typed into a field, so that it shows its value.
pub fn forget(ui: &Ui, id: Id) {
    ui.data_mut(|data| data.remove::<String>(id.with("typed")));
    keypad::forget(ui, id);
}

/// A length that has to be there: what is not understood leaves it as it is.
pub fn length_field(
    ui: &mut Ui,
    id: Id,
    label: &str,
    value: &mut Length,
    allowed: Allowed,
) -> egui::Response {
    let mut some = Some(*value);
    let response = quantity_field(ui, id, label, &mut some, Allowed { empty: false, ..allowed });
    if let Some(length) = some {
        *value = length;
    }
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCHES: Allowed = Allowed { bare: LengthUnit::Inch, signed: false, empty: true };

    #[test]
    fn an_empty_field_is_not_measured_and_a_bare_number_is_in_the_jobs_unit() {
        assert_eq!(understood::<Length>("  ", INCHES), Ok(None));
        assert_eq!(understood::<Length>("48 1/2", INCHES), Ok(Some(Length::millimetres(1231.9))));
        let metric = Allowed { bare: LengthUnit::Millimetre, ..INCHES };
        assert_eq!(understood::<Length>("900", metric), Ok(Some(Length::millimetres(900.0))));
        assert_eq!(understood::<Mass>("10", metric), Ok(Some(Mass::kilograms(10.0))));
    }

    #[test]
    fn what_a_field_does_not_allow_is_refused() {
        assert!(understood::<Length>("-3", INCHES).is_err());
        assert!(understood::<Length>("-3", Allowed { signed: true, ..INCHES }).is_ok());
        assert!(understood::<Length>("", Allowed { empty: false, ..INCHES }).is_err());
        assert!(understood::<Length>("48 3/2", INCHES).is_err());
    }
}
