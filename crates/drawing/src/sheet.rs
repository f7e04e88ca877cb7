//! The elevation alone on a sheet, at a standard scale, with its scale bar and title.

use crate::elevation::elevation;
use crate::font::{Weight, text_width_mm};
use crate::ink::Ink;
use crate::look::{Look, MARGIN_MM};
use crate::paper::{PaperPoint, PaperRect};
use crate::scale::{Scale, StandardScale};
use crate::scene::{Anchor, Item, ItemKind, Lit, Scene, Turn};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::Plan;
use strikeline_solver::units::Length;

/// Free at the edge of the sheet (chosen: office printers need about 5).
pub const BORDER_MM: f64 = 10.0;
/// The title's strip along the lower border.
const TITLE_MM: f64 = 14.0;
/// The em size of the title.
const TITLE_TEXT_MM: f64 = 5.0;
/// The em size of the scale and the bar's figures.
const NOTE_TEXT_MM: f64 = 3.2;
/// The scale bar's height.
const BAR_MM: f64 = 1.4;

/// A sheet lying on its long side, width and height: A4 of ISO 216, or letter, 11 x 8 1/2 in.
#[must_use]
pub fn sheet_mm(units: Units) -> (f64, f64) {
    match units {
        Units::Millimetres => (297.0, 210.0),
        Units::Inches => (279.4, 215.9),
    }
}

/// Draws the elevation at the largest standard scale that fits the sheet.
///
/// A wall too large for the smallest one is fitted, and the sheet says that it is not to a standard scale.
#[must_use]
pub fn bare_elevation(job: &Job, plan: &Plan) -> Scene {
    let units = job.units();
    let (width_mm, height_mm) = sheet_mm(units);
    let outline = plan.survey.outline;
    // The drawing's room: inside the border, above the title, less the rows of dimensions.
    let room = PaperRect {
        left_mm: BORDER_MM,
        top_mm: BORDER_MM,
        right_mm: width_mm - BORDER_MM,
        bottom_mm: height_mm - BORDER_MM - TITLE_MM,
    };
    let free = (room.width_mm() - 2.0 * MARGIN_MM, room.height_mm() - 2.0 * MARGIN_MM);
    let standard = StandardScale::largest_that_fits(units, outline, free);
    let per = match standard {
        Some(standard) => standard.paper_mm_per_wall_mm(),
        None => (free.0 / outline.width().mm().max(1.0)).min(free.1 / outline.height().mm().max(1.0)),
    };
    // The part that shows is made as large as the room, so that the wall stands in its middle.
    let mut look = Look::whole_wall(plan, per);
    let scale = Scale::new(&look);
    let (spare_width, spare_height) =
        (room.width_mm() - scale.page().width_mm(), room.height_mm() - scale.page().height_mm());
    let half = |spare: f64| scale.wall_length(spare.max(0.0) / 2.0);
    let below = scale.wall_length(spare_height.max(0.0) / 2.0 + TITLE_MM);
    look.shown.left -= half(spare_width);
    look.shown.right += half(spare_width);
    look.shown.top += half(spare_height);
    look.shown.bottom -= below;
    look.margin_mm = MARGIN_MM + BORDER_MM;
    let mut scene = elevation(job, plan, &look);
    scene.items.extend(title(job, plan, standard, &scene));
    scene
}

/// The frame, the title line, the scale and its bar.
fn title(job: &Job, plan: &Plan, standard: Option<StandardScale>, scene: &Scene) -> Vec<Item> {
    let mut items = Vec::new();
    let mut add = |ink: Ink, kind: ItemKind| {
        items.push(Item { ink, subject: None, kind, assumed: false, lit: Lit::No, width_mm: ink.width_mm() });
    };
    let page = PaperRect { left_mm: 0.0, top_mm: 0.0, right_mm: scene.width_mm, bottom_mm: scene.height_mm };
    let frame = page.grown(-BORDER_MM);
    add(Ink::Sheet, ItemKind::Polygon { points: frame.corners().to_vec(), filled: false, outlined: true });
    let strip = frame.bottom_mm - TITLE_MM;
    let rule = (PaperPoint::new(frame.left_mm, strip), PaperPoint::new(frame.right_mm, strip));
    add(Ink::Sheet, ItemKind::Line { from: rule.0, to: rule.1 });

    let text = |at, text: String, height_mm, anchor, weight| ItemKind::Text {
        at,
        text,
        height_mm,
        anchor,
        turn: Turn::Level,
        weight,
    };
    let base = frame.bottom_mm - 5.0;
    let name = standard.map_or("not to a standard scale", |standard| standard.name);
    let inch = job.units() == Units::Inches;
    // Four steps of the bar, each a foot or half a metre, as long as the bar stays short of a third.
    let step = if inch { Length::inches(12.0) } else { Length::millimetres(500.0) };
    let step_mm = scene.scale.paper_mm(step);
    let steps = if step_mm * 4.0 > frame.width_mm() / 3.0 { 2 } else { 4 };
    let bar_left = frame.right_mm - 12.0 - step_mm * f64::from(steps);
    for index in 0..steps {
        let left = bar_left + step_mm * f64::from(index);
        let points =
            PaperRect { left_mm: left, right_mm: left + step_mm, top_mm: base - BAR_MM, bottom_mm: base };
        let points = points.corners().to_vec();
        add(Ink::Sheet, ItemKind::Polygon { points, filled: index % 2 == 0, outlined: true });
    }
    for index in [0, steps / 2, steps] {
        let at = PaperPoint::new(bar_left + step_mm * f64::from(index), base - BAR_MM - 1.2);
        let last = index == steps;
        let shown = match (inch, last) {
            (true, _) => format!("{index}{}", if last { "\u{2032}" } else { "" }),
            (false, _) => format!("{}{}", f64::from(index) / 2.0, if last { " m" } else { "" }),
        };
        add(Ink::SheetText, text(at, shown, NOTE_TEXT_MM, Anchor::Middle, Weight::Regular));
    }
    let scale_right = bar_left - 6.0;
    let at = PaperPoint::new(scale_right, base);
    add(Ink::SheetText, text(at, name.to_owned(), NOTE_TEXT_MM, Anchor::End, Weight::Regular));

    let room = scale_right - text_width_mm(name, NOTE_TEXT_MM, Weight::Regular) - 6.0 - (frame.left_mm + 4.0);
    let title = shortened(&title_line(job, plan), room);
    let at = PaperPoint::new(frame.left_mm + 4.0, base);
    add(Ink::SheetText, text(at, title, TITLE_TEXT_MM, Anchor::Start, Weight::Semibold));
    items
}

/// The job's title, the wall and the option, as far as they have names.
fn title_line(job: &Job, plan: &Plan) -> String {
    let wall = job.wall(&plan.wall);
    let wall_name = wall.and_then(|wall| wall.name.as_deref()).unwrap_or(plan.wall.as_str());
    let option =
        wall.and_then(|wall| wall.options.iter().find(|option| Some(&option.id) == plan.option.as_ref()));
    let option_name = option.map_or("", |option| option.name.as_deref().unwrap_or(option.id.as_str()));
    let named: Vec<&str> =
        [&job.title, wall_name, option_name].into_iter().filter(|name| !name.is_empty()).collect();
    named.join(" \u{2013} ")
}

/// A text that fits so much room, its end left off and an ellipsis in its place where it must be.
fn shortened(text: &str, room_mm: f64) -> String {
    let width = |text: &str| text_width_mm(text, TITLE_TEXT_MM, Weight::Semibold);
    if width(text) <= room_mm {
        return text.to_owned();
    }
    let mut kept: String = text.chars().take(200).collect();
    while !kept.is_empty() && width(&kept) + width("\u{2026}") > room_mm {
        kept.pop();
    }
    kept.push('\u{2026}');
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn the_sheet_is_as_large_as_its_paper() {
        for (job, plan) in [sample::inches(), sample::metric()] {
            let scene = bare_elevation(&job, &plan);
            let (width, height) = sheet_mm(job.units());
            assert!((scene.width_mm - width).abs() < 1e-6, "{}", scene.width_mm);
            assert!((scene.height_mm - height).abs() < 1e-6, "{}", scene.height_mm);
        }
    }

    #[test]
    fn a_metric_wall_of_4_2_m_is_drawn_at_1_20() {
        let (job, plan) = sample::metric();
        let scene = bare_elevation(&job, &plan);
        let wall = scene.scale.paper_rect(plan.survey.outline);
        assert!(
            (wall.width_mm() - 210.0).abs() < 1e-6 && (wall.height_mm() - 122.0).abs() < 1e-6,
            "{wall:?}"
        );
        assert!(wall.left_mm >= BORDER_MM && wall.right_mm <= 297.0 - BORDER_MM && wall.top_mm >= BORDER_MM);
        assert!(wall.bottom_mm <= 210.0 - BORDER_MM - TITLE_MM);
        let names = |item: &Item| matches!(&item.kind, ItemKind::Text { text, .. } if text == "1:20");
        assert!(scene.items.iter().any(names));
    }

    #[test]
    fn a_wall_without_end_or_size_has_a_sheet() {
        for width in [0.0, 1e9, f64::NAN, f64::INFINITY] {
            let (job, mut plan) = sample::metric();
            plan.survey.outline.right = Length::millimetres(width);
            let scene = bare_elevation(&job, &plan);
            assert!(scene.width_mm.is_finite() && !scene.items.is_empty());
        }
    }

    #[test]
    fn a_long_title_gives_way() {
        let short = shortened(&"Living room ".repeat(30), 80.0);
        assert!(
            short.ends_with('\u{2026}') && text_width_mm(&short, TITLE_TEXT_MM, Weight::Semibold) <= 80.0
        );
    }
}
