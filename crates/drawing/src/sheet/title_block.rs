//! The frame of a page and its title block along the lower edge: job, wall and option, sheet and page, units and
//! graduation, file, date, scale and the bar to check it.

use super::leaf::{Leaf, Ratio};
use super::size::BORDER_MM;
use super::strokes::{Letters, Strokes};
use super::wrap::wrapped;
use super::{About, Ask};
use crate::font::{Weight, shortened, text_width_mm};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scale::StandardScale;
use crate::scene::{Anchor, Scene};
use strikeline_solver::job::Units;
use strikeline_solver::units::Length;
use strikeline_solver::words::on_paper;

/// How high the block is.
pub(crate) const BLOCK_MM: f64 = 14.0;
/// Its lower row: sheet, units, file, date.
const ROW_MM: f64 = 5.4;
/// Between a rule and what is written beside it.
const INSET_MM: f64 = 3.0;
const TITLE: Letters = Letters::semibold(5.0);
/// A title too long for one line is set smaller, on two.
const LONG_TITLE: Letters = Letters::semibold(3.6);
const NOTE: Letters = Letters::regular(3.2);
const BAR_NOTE: Letters = Letters::regular(2.6);
const FOOT: Letters = Letters::regular(2.6).quiet();
/// A date gets no more room than this: any that is written in full (chosen).
const MOST_DATE_MM: f64 = 60.0;
/// The scale bar's height.
const BAR_MM: f64 = 1.4;

/// What is free for a page's own drawing: inside the frame, above the block.
pub(crate) fn room(page_mm: (f64, f64)) -> PaperRect {
    PaperRect {
        left_mm: BORDER_MM,
        top_mm: BORDER_MM,
        right_mm: page_mm.0 - BORDER_MM,
        bottom_mm: page_mm.1 - BORDER_MM - BLOCK_MM,
    }
}

/// Draws the frame and the block of a page, `number` of `of`; of a sheet of the whole job it names no wall.
pub(crate) fn draw(leaf: &mut Leaf, ask: &Ask<'_>, is_of_job: bool, number: usize, of: usize) {
    let page = PaperRect {
        left_mm: 0.0,
        top_mm: 0.0,
        right_mm: leaf.scene.width_mm,
        bottom_mm: leaf.scene.height_mm,
    };
    let frame = page.grown(-BORDER_MM);
    let (top, row) = (frame.bottom_mm - BLOCK_MM, frame.bottom_mm - ROW_MM);
    let mut strokes = Strokes::default();
    strokes.rect(Ink::Sheet, frame, false);
    for y_mm in [top, row] {
        let rule = (PaperPoint::new(frame.left_mm, y_mm), PaperPoint::new(frame.right_mm, y_mm));
        strokes.line(Ink::Sheet, rule.0, rule.1);
    }
    let upper = PaperRect { top_mm: top, bottom_mm: row, ..frame };
    let right = scale(&mut strokes, ask.job.units(), &leaf.scene, leaf.ratio, upper);
    title(&mut strokes, ask, is_of_job, PaperRect { right_mm: right, ..upper });
    let lower = PaperRect { top_mm: row, ..frame };
    cells(&mut strokes, ask, &on_paper::page(leaf.sheet, number, of), lower);
    let at = PaperPoint::new(frame.centre().x_mm, frame.bottom_mm + 3.6);
    let foot = if leaf.ratio == Ratio::Full { on_paper::FULL_SIZE_FOOT } else { on_paper::FOOT };
    strokes.text(at, foot, FOOT, Anchor::Middle);
    leaf.scene.items.extend(strokes.items);
}

/// Job, wall and option: on one line, or smaller on two; where that does not do, each is shortened by itself.
fn title(strokes: &mut Strokes, ask: &Ask<'_>, is_of_job: bool, rect: PaperRect) {
    let job = on_paper::title(ask.job);
    let of = if is_of_job {
        [Some(on_paper::ALL_WALLS.to_owned()), None]
    } else {
        on_paper::wall_then_option(ask.job, ask.plan)
    };
    let parts: Vec<&str> =
        std::iter::once(job.as_str()).chain(of.iter().flatten().map(String::as_str)).collect();
    let text = parts.join(DASH);
    let (left, room) = (rect.left_mm + INSET_MM, rect.width_mm() - 2.0 * INSET_MM);
    if text_width_mm(&text, TITLE.height_mm, TITLE.weight) <= room {
        let at = PaperPoint::new(left, rect.bottom_mm - 2.9);
        strokes.text(at, &text, TITLE, Anchor::Start);
        return;
    }
    let lines = wrapped(&text, room, LONG_TITLE.height_mm, LONG_TITLE.weight);
    let two = match lines.as_slice() {
        [only] => {
            let at = PaperPoint::new(left, rect.bottom_mm - 3.2);
            strokes.text(at, only, LONG_TITLE, Anchor::Start);
            return;
        }
        [first, second] => [first.clone(), second.clone()],
        _ => {
            let [wall, option] = of.map(Option::unwrap_or_default);
            [shortened(&job, room, LONG_TITLE.height_mm, LONG_TITLE.weight), two_parts(&wall, &option, room)]
        }
    };
    for (line, up_mm) in two.iter().zip([5.4, 1.5]) {
        strokes.text(PaperPoint::new(left, rect.bottom_mm - up_mm), line, LONG_TITLE, Anchor::Start);
    }
}

/// Between job, wall and option.
const DASH: &str = " \u{2013} ";

/// Wall and option in one line: the option has half of it at least, and the wall what the option leaves.
fn two_parts(wall: &str, option: &str, room_mm: f64) -> String {
    let Letters { height_mm, weight, .. } = LONG_TITLE;
    let width = |text: &str| text_width_mm(text, height_mm, weight);
    if option.is_empty() {
        return shortened(wall, room_mm, height_mm, weight);
    }
    let room = room_mm - width(DASH);
    let option = shortened(option, (room - width(wall)).max(room / 2.0), height_mm, weight);
    let wall = shortened(wall, room - width(&option), height_mm, weight);
    format!("{wall}{DASH}{option}")
}

/// Sheet and page, units, date, and the file in what is left.
fn cells(strokes: &mut Strokes, ask: &Ask<'_>, page: &str, rect: PaperRect) {
    let About { file, date } = ask.about;
    let base = rect.bottom_mm - 1.7;
    let mut cell = |left_mm: f64, text: &str| {
        strokes.text(PaperPoint::new(left_mm + INSET_MM, base), text, NOTE, Anchor::Start);
        let wide = text_width_mm(text, NOTE.height_mm, NOTE.weight) + 2.0 * INSET_MM;
        let right = left_mm + wide;
        let rule = (PaperPoint::new(right, rect.top_mm), PaperPoint::new(right, rect.bottom_mm));
        strokes.line(Ink::Sheet, rule.0, rule.1);
        right
    };
    let mut left = cell(rect.left_mm, page);
    left = cell(left, on_paper::units(ask.plan));
    let date = shortened(&on_paper::date(date), MOST_DATE_MM, NOTE.height_mm, NOTE.weight);
    let date = date.as_str();
    let date_wide = text_width_mm(date, NOTE.height_mm, NOTE.weight);
    let date_left = rect.right_mm - date_wide - 2.0 * INSET_MM;
    strokes.text(PaperPoint::new(date_left + INSET_MM, base), date, NOTE, Anchor::Start);
    let rule = (PaperPoint::new(date_left, rect.top_mm), PaperPoint::new(date_left, rect.bottom_mm));
    strokes.line(Ink::Sheet, rule.0, rule.1);
    let file =
        shortened(&on_paper::file(file), date_left - left - 2.0 * INSET_MM, NOTE.height_mm, NOTE.weight);
    strokes.text(PaperPoint::new(left + INSET_MM, base), &file, NOTE, Anchor::Start);
}

/// The bar by which a page at full size is checked: 100 mm above, 4 in below. Gives how far left it reaches.
fn check_bar(strokes: &mut Strokes, rect: PaperRect) -> f64 {
    const INCH_MM: f64 = 25.4;
    let (left, y_mm) = (rect.right_mm - 4.0 * INCH_MM - 12.0, rect.centre().y_mm);
    let at = |right_mm: f64, down_mm: f64| PaperPoint::new(left + right_mm, y_mm + down_mm);
    strokes.line(Ink::Dimension, at(0.0, 0.0), at(4.0 * INCH_MM, 0.0));
    for tens in 0..=10 {
        let x_mm = f64::from(tens) * 10.0;
        let up_mm = if tens % 5 == 0 { 1.3 } else { 0.8 };
        strokes.line(Ink::Dimension, at(x_mm, 0.0), at(x_mm, -up_mm));
    }
    for inches in 0..=4 {
        let x_mm = f64::from(inches) * INCH_MM;
        strokes.line(Ink::Dimension, at(x_mm, 0.0), at(x_mm, 1.3));
    }
    let capitals = BAR_NOTE.height_mm * crate::font::CAPITALS;
    for (x_mm, y_mm, words) in [
        (0.0, -1.7, "0"),
        (50.0, -1.7, "50"),
        (100.0, -1.7, "100 mm"),
        (0.0, 1.7 + capitals, "0"),
        (2.0 * INCH_MM, 1.7 + capitals, "2"),
        (4.0 * INCH_MM, 1.7 + capitals, "4 in"),
    ] {
        strokes.text(at(x_mm, y_mm), words, BAR_NOTE, Anchor::Middle);
    }
    left - INSET_MM
}

/// The scale's name, and the bar to check it, at the right. Gives how far left it all reaches.
fn scale(strokes: &mut Strokes, units: Units, scene: &Scene, ratio: Ratio, rect: PaperRect) -> f64 {
    let name = match ratio {
        Ratio::None => return rect.right_mm,
        Ratio::Full => return check_bar(strokes, rect),
        Ratio::Standard(StandardScale { name, .. }) => name,
        Ratio::Fitted => on_paper::NOT_TO_SCALE,
    };
    let base = rect.bottom_mm - 2.2;
    let mut bar_left = rect.right_mm - INSET_MM + 3.0;
    if let Some(bar) = bar_steps(units, |step| scene.scale.paper_mm(step)) {
        bar_left = rect.right_mm - 8.0 - bar.step_mm * f64::from(bar.count);
        for index in 0..bar.count {
            let left = bar_left + bar.step_mm * f64::from(index);
            let step = PaperRect {
                left_mm: left,
                right_mm: left + bar.step_mm,
                top_mm: base - BAR_MM,
                bottom_mm: base,
            };
            strokes.rect(Ink::Sheet, step, index % 2 == 0);
        }
        for index in [0, bar.count / 2, bar.count] {
            let at = PaperPoint::new(bar_left + bar.step_mm * f64::from(index), base - BAR_MM - 1.2);
            strokes.text(at, &bar_figure(units, bar.step * index, index == bar.count), NOTE, Anchor::Middle);
        }
    }
    let at = PaperPoint::new(bar_left - 6.0, base);
    strokes.text(at, name, NOTE, Anchor::End);
    at.x_mm - text_width_mm(name, NOTE.height_mm, Weight::Regular) - INSET_MM
}

/// How long a scale bar is on paper, at least and at most (chosen: long enough to lay a ruler on, short beside a
/// title).
const BAR_ON_PAPER_MM: (f64, f64) = (30.0, 60.0);

/// A scale bar: steps of the wall, and how long each is on paper.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Bar {
    /// In millimetres, or in inches.
    step: i32,
    count: i32,
    step_mm: f64,
}

/// Steps in round numbers that make a bar as long as it should be; `None` where none does, of a wall without end.
fn bar_steps(units: Units, on_paper: impl Fn(Length) -> f64) -> Option<Bar> {
    let inch = units == Units::Inches;
    // Inches up to a foot, then feet in the usual ones, twos and fives; a centimetre and more.
    let steps: Vec<i32> = if inch {
        let feet =
            [1, 2, 5].into_iter().flat_map(|one| (0..5).map(move |zeros| 12 * one * 10_i32.pow(zeros)));
        [1, 3, 6].into_iter().chain(feet).collect()
    } else {
        [1, 2, 5].into_iter().flat_map(|one| (1..8).map(move |zeros| one * 10_i32.pow(zeros))).collect()
    };
    let all =
        [4, 2].into_iter().flat_map(|count| steps.iter().map(move |&step| (step, count)).collect::<Vec<_>>());
    let mut bars = all.map(|(step, count)| {
        let long = if inch { Length::inches(f64::from(step)) } else { Length::millimetres(f64::from(step)) };
        Bar { step, count, step_mm: on_paper(long) }
    });
    let (least, most) = BAR_ON_PAPER_MM;
    bars.find(|bar| (least..=most).contains(&(bar.step_mm * f64::from(bar.count))))
}

/// A figure under a scale bar; the last one names its unit.
fn bar_figure(units: Units, at: i32, is_last: bool) -> String {
    if units == Units::Millimetres {
        return format!("{}{}", f64::from(at) / 1000.0, if is_last { " m" } else { "" });
    }
    match (at, at % 12) {
        (0, _) => "0".to_owned(),
        (feet, 0) => format!("{}\u{2032}", feet / 12),
        (inches, _) => format!("{inches}\u{2033}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_can_be_read_at_every_scale() {
        for units in [Units::Inches, Units::Millimetres] {
            for ratio in
                [2.0, 4.0, 8.0, 10.0, 16.0, 20.0, 24.0, 48.0, 50.0, 100.0, 192.0, 350.0, 2000.0, 50_000.0]
            {
                let bar = bar_steps(units, |step| step.mm() / ratio).unwrap();
                let long = bar.step_mm * f64::from(bar.count);
                assert!((30.0..=60.0).contains(&long), "1:{ratio}: {long}");
            }
        }
        assert_eq!(bar_steps(Units::Inches, |_| f64::NAN), None);
        let half_inch = bar_steps(Units::Inches, |step| step.mm() / 24.0).unwrap();
        assert_eq!((half_inch.step, half_inch.count), (12, 4));
    }

    #[test]
    fn figures_name_their_unit() {
        assert_eq!([0, 48].map(|at| bar_figure(Units::Inches, at, at > 0)), ["0", "4\u{2032}"]);
        assert_eq!(bar_figure(Units::Inches, 6, false), "6\u{2033}");
        assert_eq!([400, 800].map(|at| bar_figure(Units::Millimetres, at, at > 400)), ["0.4", "0.8 m"]);
    }

    #[test]
    fn the_option_shows_beside_any_wall() {
        let line = two_parts(&"A wall with a name ".repeat(9), "Over the plate shelf", 90.0);
        assert!(line.ends_with("Over the plate shelf") && line.starts_with("A wall"), "{line}");
        let line = two_parts("Wall", &"An option with a name ".repeat(9), 90.0);
        assert!(line.starts_with("Wall \u{2013} An option"), "{line}");
        assert!(text_width_mm(&line, LONG_TITLE.height_mm, LONG_TITLE.weight) <= 90.0);
    }
}
