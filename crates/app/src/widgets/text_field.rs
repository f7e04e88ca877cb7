//! Fields for words and for whole numbers.

use super::row_label;
use crate::theme::{self, TOUCH};
use egui::{Id, Response, RichText, TextEdit, Ui, vec2};

/// The longest text kept, in characters: a page of notes (chosen).
const LONGEST: usize = 4000;

/// A labelled field for a line of text.
pub fn text_field(ui: &mut Ui, id: Id, label: &str, text: &mut String) -> Response {
    ui.horizontal(|ui| {
        let name = row_label(ui, label, 0.27);
        let edit = TextEdit::singleline(text)
            .id(id)
            .char_limit(LONGEST)
            .min_size(vec2(0.0, TOUCH))
            .align(egui::Align2::LEFT_CENTER)
            .desired_width(ui.available_width() - 10.0);
        ui.add(edit).labelled_by(name.id)
    })
    .inner
}

/// A field for text of several lines, under its label.
pub fn notes_field(ui: &mut Ui, id: Id, label: &str, text: &mut String) -> Response {
    let name = ui.label(label);
    let edit = TextEdit::multiline(text)
        .id(id)
        .char_limit(LONGEST)
        .desired_rows(2)
        .desired_width(ui.available_width() - 10.0);
    ui.add(edit).labelled_by(name.id)
}

/// A labelled field for a whole number, or none. What is not one is kept in the field and said so.
pub fn number_field(ui: &mut Ui, id: Id, label: &str, value: &mut Option<u32>) -> Response {
    let typed_id = id.with("typed");
    let typed: Option<String> = ui.data_mut(|data| data.get_temp(typed_id));
    let written = || value.map(|number| number.to_string()).unwrap_or_default();
    let mut text = typed.unwrap_or_else(written);
    let response = ui
        .horizontal(|ui| {
            let name = row_label(ui, label, 0.42);
            let edit = TextEdit::singleline(&mut text)
                .id(id)
                .hint_text("not given")
                .min_size(vec2(0.0, TOUCH))
                .align(egui::Align2::LEFT_CENTER)
                .desired_width(ui.available_width() - 10.0);
            ui.add(edit).labelled_by(name.id)
        })
        .inner;
    let read = whole_number(&text);
    if response.changed()
        && let Ok(number) = read
    {
        *value = number;
    }
    // One widget to what follows, whether something is told or not.
    ui.scope(|ui| {
        if read.is_err() {
            let theme = ui.theme();
            let why = "Not understood. Write a whole number, as in 12.";
            ui.label(RichText::new(why).small().color(theme::accent(theme)));
        }
    });
    ui.data_mut(|data| {
        if read.is_err() {
            data.insert_temp(typed_id, text);
        } else {
            data.remove::<String>(typed_id);
        }
    });
    response
}

/// A whole number, or none; an error for what is neither.
fn whole_number(text: &str) -> Result<Option<u32>, ()> {
    match text.trim() {
        "" => Ok(None),
        digits => digits.parse().map(Some).map_err(|_| ()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_whole_numbers_are_counts() {
        assert_eq!(whole_number(" 12 "), Ok(Some(12)));
        assert_eq!(whole_number(""), Ok(None));
        for text in ["-1", "1.5", "two", "99999999999"] {
            assert_eq!(whole_number(text), Err(()), "{text}");
        }
    }
}
