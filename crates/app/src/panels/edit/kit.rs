//! The editors of what is on the truck.

use super::{Around, Form, kinds};
use egui::Ui;
use strikeline_solver::job::kit::{
    BoxStock, CableStock, DrillBit, FastenerKind, FastenerStock, Kit, Measure, MeasureKind, Report,
};
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// What is asked of every lag.
const LAG_ASKED: &str =
    "Hex head, coarse thread to a smooth shank, made to B18.2.1? If not, it is a structural screw.";

/// What is told beside loads that are stated.
const STATED: &str = "Stated: shows beside the verdict and never makes it. A pull test proves one hole, not the group, and \
                      counts at a quarter. An anchor in board shows at a quarter what it would add.";

/// Shows the fields of one size of fastener.
pub(in crate::panels) fn fastener(ui: &mut Ui, around: &Around<'_>, fastener: &mut FastenerStock) {
    let form = around.form(&fastener.id);
    form.choose(ui, "kind", "Kind", &mut fastener.kind, kinds::FASTENERS);
    form.quantity(ui, "diameter", "Diameter", &mut fastener.diameter);
    form.quantity(ui, "length", "Length under head", &mut fastener.length);
    form.quantity(ui, "head", "Head or washer", &mut fastener.head);
    form.quantity(ui, "washer", "Washer's thickness (0 for none)", &mut fastener.washer);
    form.number(ui, "count", "How many", &mut fastener.count);
    if fastener.kind == FastenerKind::Lag || fastener.to_standard.is_some() {
        ui.add(egui::Label::new(LAG_ASKED).wrap());
        form.yes_no(ui, "to_standard", "Made so", &mut fastener.to_standard);
    }
    if fastener.kind == FastenerKind::DrywallScrew {
        ui.add(egui::Label::new(words::brittle()).wrap());
    }
    let is_by_report = fastener.kind == FastenerKind::StructuralScrew || fastener.to_standard == Some(false);
    let is_rated = matches!(fastener.kind, FastenerKind::Anchor | FastenerKind::Fixing);
    if is_by_report || is_rated || fastener.report.is_some() {
        report(ui, &form, &mut fastener.report, is_rated);
    }
    form.copy_and_delete(ui);
}

/// What its maker states.
fn report(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Report>, is_rated: bool) {
    form.part(ui, "report", "Stated by its maker", value, &Report::default(), |ui, form, report| {
        form.line(ui, "document", "Document", &mut report.document);
        form.line(ui, "date", "Its date", &mut report.date);
        let loads =
            [report.shear.is_some(), report.pull.is_some(), report.base.is_some(), report.tested.is_some()];
        if is_rated || loads.contains(&true) {
            form.quantity(ui, "shear", "Rated or recommended in shear", &mut report.shear);
            form.quantity(ui, "pull", "Rated or recommended in pull", &mut report.pull);
            form.text(ui, "base", "For which base", &mut report.base);
            form.yes_no(ui, "tested", "Pull tested on this wall", &mut report.tested);
            ui.add(egui::Label::new(STATED).wrap());
        }
        if is_rated {
            form.quantity(ui, "least_edge", "Least edge distance", &mut report.least_edge);
            return;
        }
        form.quantity(ui, "withdrawal", "Withdrawal", &mut report.withdrawal);
        form.quantity(ui, "gravity", "Wood's gravity", &mut report.gravity);
        form.quantity(ui, "outer_diameter", "Thread's outer diameter", &mut report.outer_diameter);
        form.quantity(ui, "root_diameter", "Thread's root diameter", &mut report.root_diameter);
        form.quantity(ui, "bending", "Bending yield strength", &mut report.bending);
        form.quantity(ui, "thread", "Thread's length, with tip", &mut report.thread);
        form.quantity(ui, "least_depth", "Least depth in wood", &mut report.least_depth);
        form.quantity(ui, "least_edge", "Least edge distance", &mut report.least_edge);
    });
}

/// Shows the fields of a drill bit.
pub(in crate::panels) fn drill_bit(ui: &mut Ui, around: &Around<'_>, bit: &mut DrillBit) {
    let form = around.form(&bit.id);
    form.quantity(ui, "diameter", "Diameter", &mut bit.diameter);
    form.quantity(ui, "length", "Drills so deep", &mut bit.length);
    form.copy_and_delete(ui);
}

/// Shows the fields of a stocked cable.
pub(in crate::panels) fn cable_stock(ui: &mut Ui, around: &Around<'_>, cable: &mut CableStock) {
    let form = around.form(&cable.id);
    form.text(ui, "name", "Name", &mut cable.name);
    form.maybe(ui, "signal", "Carries", &mut cable.signal, kinds::SIGNALS, "not told");
    form.quantity(ui, "length", "Length", &mut cable.length);
    form.quantity(ui, "outside", "Outside diameter", &mut cable.outside);
    form.quantity(ui, "plug", "Width of larger plug", &mut cable.plug);
    form.yes_no(ui, "in_wall", "Jacket says for in the wall", &mut cable.in_wall);
    form.quantity(ui, "bend", "Least bend radius", &mut cable.bend);
    form.quantity(ui, "longest", "Carries over at most", &mut cable.longest);
    form.number(ui, "count", "How many", &mut cable.count);
    form.copy_and_delete(ui);
}

/// Shows the fields of a box or bracket.
pub(in crate::panels) fn box_stock(ui: &mut Ui, around: &Around<'_>, stock: &mut BoxStock) {
    let form = around.form(&stock.id);
    form.text(ui, "name", "Name", &mut stock.name);
    form.quantity(ui, "width", "Cut-out width", &mut stock.width);
    form.quantity(ui, "height", "Cut-out height", &mut stock.height);
    form.quantity(ui, "depth", "Depth behind face", &mut stock.depth);
    form.number(ui, "count", "How many", &mut stock.count);
    form.copy_and_delete(ui);
}

/// Shows how many there are of what has no row of its own.
pub(in crate::panels) fn small_parts(ui: &mut Ui, around: &Around<'_>, id: &Id, kit: &mut Kit) {
    let form = around.form(id);
    form.number(ui, "kit.nail_plates", "Nail plates", &mut kit.nail_plates);
    form.number(ui, "kit.patches", "Patch material, for how many places", &mut kit.patches);
}

/// Shows the fields of a measuring tool.
pub(in crate::panels) fn measure(ui: &mut Ui, around: &Around<'_>, measure: &mut Measure) {
    let form = around.form(&measure.id);
    form.choose(ui, "kind", "Kind", &mut measure.kind, kinds::MEASURES);
    form.quantity(ui, "doubt", "Off by at most", &mut measure.doubt);
    if measure.kind == MeasureKind::Tape || measure.class.is_some() {
        form.maybe(ui, "class", "Accuracy class", &mut measure.class, kinds::TAPE_CLASSES, "not told");
    }
    if measure.kind == MeasureKind::SpiritLevel || measure.length.is_some() {
        form.quantity(ui, "length", "Length", &mut measure.length);
    }
    form.copy_and_delete(ui);
}
