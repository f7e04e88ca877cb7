use super::*;
use crate::font::text_width_mm;
use crate::paper::PaperRect;
use crate::sample;
use crate::scene::{Item, ItemKind};
use strikeline_solver::job::Units;
use strikeline_solver::units::Length;

const ABOUT: About<'_> = About { file: "room.ron", date: "2026-03-14" };

fn drawn(job: &Job, plan: &Plan, kind: SheetKind, paper: PaperSize) -> Document {
    document(job, &[plan], &[kind], paper, ABOUT).unwrap()
}

fn texts(page: &Page) -> Vec<(PaperRect, &str)> {
    let texts = page.scene.items.iter().filter_map(|item| match &item.kind {
        ItemKind::Text { text, .. } => Some((item.bounds()?, text.as_str())),
        _ => None,
    });
    texts.collect()
}

/// All that is written on a page, in the order of drawing, with single spaces.
fn written(document: &Document) -> String {
    let all: Vec<&str> = document.pages.iter().flat_map(texts).map(|(_, text)| text).collect();
    all.join(" ")
}

/// Nothing runs off the page, and no two texts lie on each other.
fn check_pages(document: &Document, name: &str) {
    for (number, page) in document.pages.iter().enumerate() {
        let edge = PaperRect {
            left_mm: 0.0,
            top_mm: 0.0,
            right_mm: page.scene.width_mm,
            bottom_mm: page.scene.height_mm,
        };
        let texts = texts(page);
        for (index, (bounds, text)) in texts.iter().enumerate() {
            assert_eq!(edge.grown(-4.0).shared(*bounds), Some(*bounds), "{name}, page {number}: {text}");
            for (other, beside) in texts.iter().skip(index + 1) {
                let apart = !bounds.grown(-0.02).meets(other.grown(-0.02));
                assert!(apart, "{name}, page {number}: {text:?} on {beside:?}");
            }
        }
    }
}

#[test]
fn every_sheet_is_sound_on_every_paper() {
    for (job, plan) in [sample::inches(), sample::metric()] {
        for paper in PaperSize::ALL {
            for kind in SheetKind::ALL {
                let document = drawn(&job, &plan, kind, paper);
                check_pages(&document, &format!("{kind:?} on {}", paper.name()));
                for page in &document.pages {
                    let (short, long) = paper.edges_mm();
                    let edges = (page.scene.width_mm, page.scene.height_mm);
                    let is_so_large =
                        |a: f64, b: f64| (edges.0 - a).abs() < 1e-6 && (edges.1 - b).abs() < 1e-6;
                    assert!(is_so_large(short, long) || is_so_large(long, short), "{edges:?}");
                }
            }
        }
    }
}

#[test]
fn a_metric_wall_of_4_2_m_is_drawn_at_1_20() {
    let (job, plan) = sample::metric();
    let document = drawn(&job, &plan, SheetKind::Elevation, PaperSize::A4);
    let scene = &document.pages[0].scene;
    // 4200 mm and 2440 mm at 1:20.
    let wall = scene.scale.paper_rect(plan.survey.outline);
    assert!((wall.width_mm() - 210.0).abs() < 1e-6 && (wall.height_mm() - 122.0).abs() < 1e-6, "{wall:?}");
    assert!(wall.left_mm >= BORDER_MM && wall.right_mm <= 297.0 - BORDER_MM && wall.top_mm >= BORDER_MM);
    assert!(wall.bottom_mm <= 210.0 - BORDER_MM - title_block::BLOCK_MM);
    let names = |item: &Item| matches!(&item.kind, ItemKind::Text { text, .. } if text == "1:20");
    assert!(scene.items.iter().any(names));
}

#[test]
fn a_wall_without_end_or_size_has_a_sheet() {
    for width in [0.0, 1e9, f64::NAN, f64::INFINITY] {
        let (job, mut plan) = sample::metric();
        plan.survey.outline.right = Length::millimetres(width);
        let document = drawn(&job, &plan, SheetKind::MarkOut, PaperSize::A4);
        assert!(document.pages[0].scene.width_mm.is_finite() && !document.pages[0].scene.items.is_empty());
    }
}

#[test]
fn the_mark_out_tells_every_mark_with_its_reading_and_a_box() {
    let (job, plan) = sample::inches();
    let document = drawn(&job, &plan, SheetKind::MarkOut, PaperSize::Letter);
    let written = written(&document);
    for (index, mark) in plan.marks.iter().enumerate() {
        let name = format!("{}. {}", index + 1, strikeline_solver::words::mark_name(&plan, mark));
        assert!(written.contains(&name), "{name} in {written}");
        assert!(written.contains(&on_paper::figures(&plan, mark)), "{name}");
    }
    for heading in [on_paper::FINDINGS, on_paper::ASSUMED, on_paper::CAUTIONS] {
        assert!(written.contains(heading), "{heading}");
        let found = document.pages.iter().flat_map(|page| &page.bookmarks).any(|it| it.words == heading);
        assert!(found, "{heading} has a bookmark");
    }
    let block = ["page 1 of", "Inches, to 1/16 in", "File: room.ron", "2026-03-14", "North wall"];
    for part in block {
        assert!(written.contains(part), "{part} in {written}");
    }
}

#[test]
fn a_text_that_cannot_be_set_is_told_by_its_letter() {
    for (title, letter) in [("Salon \u{5e9}\u{5dc}\u{5d5}\u{5dd}", '\u{5e9}'), ("Cafex\u{301}", '\u{301}')] {
        let (mut job, plan) = sample::inches();
        job.title = title.to_owned();
        let why = document(&job, &[&plan], &[SheetKind::MarkOut], PaperSize::Letter, ABOUT).unwrap_err();
        assert_eq!(why.letter, letter);
        assert!(why.to_string().contains(&format!("U+{:04X}", u32::from(letter))), "{why}");
    }
}

#[test]
fn long_names_are_written_in_full_and_nothing_runs_off() {
    let (mut job, mut plan) = sample::inches();
    job.title = "The upper sitting room of the annexe behind the old wash-house ".repeat(6);
    job.walls[0].name = Some("Wall".repeat(60));
    for piece in &mut plan.pieces {
        piece.name = "A display with a name that somebody was very fond of ".repeat(5).trim().to_owned();
    }
    for paper in [PaperSize::Letter, PaperSize::A4] {
        let document = drawn(&job, &plan, SheetKind::MarkOut, paper);
        check_pages(&document, paper.name());
        let written = written(&document).replace(' ', "");
        assert!(written.contains(&job.title.replace(' ', "")), "the title in full");
        assert!(written.contains(&"Wall".repeat(60)), "the wall's name in full");
    }
    assert!(text_width_mm(&job.title, 5.0, crate::font::Weight::Semibold) > 600.0);
}

#[test]
fn three_hundred_marks_flow_on_to_further_pages_each_once() {
    let (job, mut plan) = sample::inches();
    let marks = plan.marks.clone();
    plan.marks = (0..300).filter_map(|index| marks.get(index % marks.len()).cloned()).collect();
    let document = drawn(&job, &plan, SheetKind::MarkOut, PaperSize::Letter);
    assert!(document.pages.len() > 10, "{} pages", document.pages.len());
    check_pages(&document, "300 marks");
    let all: Vec<(PaperRect, &str)> = document.pages.iter().flat_map(texts).collect();
    for number in 1..=300 {
        let lead = format!("{number}. ");
        assert_eq!(all.iter().filter(|(_, text)| text.starts_with(&lead)).count(), 1, "{number}");
    }
}

/// Drafting scales and paper, rows 72 to 75 of the table of check values: a naval drafting manual and an architect's
/// scale table (DERIVED), ISO 216 (READ, second-hand, and DERIVED).
#[test]
fn scales_and_paper_are_those_of_the_trade() {
    use crate::scale::StandardScale;
    use strikeline_solver::geometry::{Rect, Span};
    let ratio = |name: &str| {
        let all = StandardScale::all(Units::Inches).iter();
        all.clone().find(|scale| scale.name == name).map(|scale| scale.wall_mm_per_paper_mm)
    };
    // Row 72.
    for (name, expected) in [
        ("1/2\" = 1'-0\"", 24.0),
        ("3/8\" = 1'-0\"", 32.0),
        ("1 1/2\" = 1'-0\"", 8.0),
        ("1/4\" = 1'-0\"", 48.0),
    ] {
        assert_eq!(ratio(name), Some(expected), "{name}");
    }
    // Row 73: 14 by 8 ft at half an inch to the foot are 7 by 4 in.
    let feet = |feet: f64| Length::inches(feet * 12.0);
    let wall = Rect::new(Span::new(feet(0.0), feet(14.0)), Span::new(feet(0.0), feet(8.0)));
    let inch = 25.4;
    let found = StandardScale::largest_that_fits(Units::Inches, wall, (7.0 * inch + 1e-6, 4.0 * inch + 1e-6));
    assert_eq!(found.map(|scale| scale.name), Some("1/2\" = 1'-0\""));
    let found = StandardScale::largest_that_fits(Units::Inches, wall, (7.0 * inch - 1e-3, 4.0 * inch));
    assert_eq!(found.map(|scale| scale.name), Some("3/8\" = 1'-0\""));
    // Row 74 is `a_metric_wall_of_4_2_m_is_drawn_at_1_20`. Row 75: A0 has 1 m2, and A1 to A4 halve it, to a millimetre.
    assert_eq!(PaperSize::A3.edges_mm(), (297.0, 420.0));
    let series = [PaperSize::A1, PaperSize::A2, PaperSize::A3, PaperSize::A4];
    let mut area_mm2 = 999_949.0;
    for size in series {
        area_mm2 /= 2.0;
        let (short, long) = size.edges_mm();
        assert!((short * long - area_mm2).abs() <= short + long, "{}", size.name());
        assert!((long / short - 2.0_f64.sqrt()).abs() < 0.005, "{}", size.name());
    }
}

#[test]
fn the_mark_out_tells_how_true_it_will_be_and_how_it_is_read() {
    let (job, plan) = sample::inches();
    let text = written(&drawn(&job, &plan, SheetKind::MarkOut, PaperSize::Letter));
    let packed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(packed(&text).contains("an underlined figure was measured"), "{text}");
    let budgets = strikeline_solver::error_budget::error_budgets(&job, &plan);
    for sentence in strikeline_solver::words::error_budgets(&plan, &budgets) {
        assert!(packed(&text).contains(&packed(&sentence)), "{sentence}");
    }
    assert_eq!(!budgets.is_empty(), text.contains("How true it will be"));
}

#[test]
fn the_scale_bar_of_a_long_wall_can_be_read() {
    for metres in [20.0, 60.0, 200.0] {
        for (job, mut plan) in [sample::inches(), sample::metric()] {
            plan.survey.outline.right = Length::millimetres(metres * 1000.0);
            let document = drawn(&job, &plan, SheetKind::Elevation, PaperSize::A4);
            let block_top_mm = 210.0 - BORDER_MM - title_block::BLOCK_MM;
            let page = document.pages.first().unwrap();
            let block: Vec<_> =
                texts(page).into_iter().filter(|(bounds, _)| bounds.top_mm > block_top_mm).collect();
            for (index, (bounds, text)) in block.iter().enumerate() {
                for (other, beside) in block.iter().skip(index + 1) {
                    let apart = !bounds.grown(-0.02).meets(other.grown(-0.02));
                    assert!(apart, "{metres} m: {text:?} on {beside:?}");
                }
            }
        }
    }
}
