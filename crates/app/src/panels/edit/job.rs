//! The editor of the job as a whole: what it is called, its units and what is set for it.

use super::{Around, Form, kinds};
use crate::widgets::quantities::Share;
use egui::Ui;
use strikeline_solver::job::Job;
use strikeline_solver::job::settings::{LEAST_CHANCE, Settings};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// Shows the fields of the job that belong to no thing of it.
pub(in crate::panels) fn job(ui: &mut Ui, around: &Around<'_>, id: &Id, job: &mut Job) {
    let form = around.form(id);
    form.line(ui, "title", "Title", &mut job.title);
    form.notes(ui, "notes", "Notes", &mut job.notes);
    form.maybe(ui, "units", "Units", &mut job.units, kinds::UNITS, "inches, as usual");
    form.maybe(ui, "graduation", "To the", &mut job.graduation, kinds::GRADUATIONS, "usual");
    let mut year = job.year_built.map(u32::from);
    form.number(ui, "year_built", "Year built", &mut year);
    // A number that is no year leaves the one that was there.
    job.year_built = year.and_then(|year| u16::try_from(year).ok().or(job.year_built));
    form.maybe(ui, "purpose", "Room is", &mut job.purpose, kinds::PURPOSES, "not told");
    form.maybe(ui, "codes", "Codes", &mut job.codes, kinds::CODES, "not told");
    settings(ui, &form, &mut job.settings);
}

/// What may be set; beside each what holds where it is not.
fn settings(ui: &mut Ui, form: &Form<'_>, settings: &mut Settings) {
    let style = form.around.plan.style;
    let usual = Settings::default();
    super::fold(ui, (form.id.as_str(), "settings"), "Settings", *settings != usual, |ui| {
        let form = form.under("settings");
        let told = |label: &str, length: Length| format!("{label} ({} unless set)", style.print(length));
        form.yes_no(ui, "feet_inches", "Feet", &mut settings.feet_inches);
        let label = told("Read from the floor up to", usual.floor_reach());
        form.quantity(ui, "floor_reach", &label, &mut settings.floor_reach);
        form.quantity(ui, "arm_span", &told("Arm span", usual.arm_span()), &mut settings.arm_span);
        let label = told("Tape pinned", usual.pinned_reach());
        form.quantity(ui, "pinned_reach", &label, &mut settings.pinned_reach);
        let label = format!("Pull to be held ({:.0} N unless set)", usual.pull().n());
        form.quantity(ui, "pull", &label, &mut settings.pull);
        let label = format!(
            "Chance of wood wanted ({:.0} % unless set, {:.0} % at least)",
            usual.chance().in_percent(),
            LEAST_CHANCE * 100.0
        );
        let mut chance = settings.chance.map(Share);
        form.quantity(ui, "chance", &label, &mut chance);
        settings.chance = chance.map(|share| share.0);
        let label = format!(
            "Reserve worth more fasteners ({:.0} % unless set, twice the need)",
            usual.reserve().in_percent()
        );
        let mut reserve = settings.reserve.map(Share);
        form.quantity(ui, "reserve", &label, &mut reserve);
        settings.reserve = reserve.map(|share| share.0);
    });
}
