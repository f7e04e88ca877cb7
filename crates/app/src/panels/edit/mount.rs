//! The editor of a mount: what it is, how the piece stands on it, and its parts.

use super::mount_parts::{arm, brackets, lift, rating, required, tilt};
use super::plate::plate;
use super::{Around, kinds};
use egui::Ui;
use strikeline_solver::job::mount::Mount;

/// Shows the fields of a mount.
pub(in crate::panels) fn mount(ui: &mut Ui, around: &Around<'_>, mount: &mut Mount) {
    let form = around.form(&mount.id);
    form.choose(ui, "kind", "Kind", &mut mount.kind, kinds::MOUNTS);
    form.text(ui, "name", "Name", &mut mount.name);
    form.maybe(ui, "like", "Plan with", &mut mount.like, kinds::USUAL_PLATES, "its own plate");
    form.quantity(ui, "drop", "Drop, display's top to plate's", &mut mount.drop);
    form.offset(ui, "hook_rise", "Plate's top above upper threads", &mut mount.hook_rise);
    form.quantity(ui, "play_left", "Play to the left", &mut mount.play_left);
    form.quantity(ui, "play_right", "Play to the right", &mut mount.play_right);
    form.quantity(ui, "height_adjustment", "Height adjusts by", &mut mount.height_adjustment);
    form.quantity(ui, "stand_off", "Wall to display's back", &mut mount.stand_off);
    form.quantity(ui, "access_below", "Free height below", &mut mount.access_below);
    form.quantity(ui, "mass", "Mount's mass", &mut mount.mass);
    plate(ui, &form, &mut mount.plate);
    brackets(ui, &form, &mut mount.brackets);
    form.quantity(ui, "bracket_thickness", "Brackets' thickness", &mut mount.bracket_thickness);
    tilt(ui, &form, &mut mount.tilt);
    arm(ui, &form, &mut mount.arm);
    lift(ui, &form, &mut mount.lift);
    rating(ui, &form, &mut mount.rating);
    required(ui, &form, mount);
    form.copy_and_delete(ui);
}
