use super::super::{About, Document, PaperSize, SheetKind, document};
use super::tile::OVERLAP_MM;
use crate::ink::Ink;
use crate::paper::PaperPoint;
use crate::sample;
use crate::scene::{ItemKind, Scene};
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::plate::{Plate, PlateHole};
use strikeline_solver::plan::Plan;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;
use strikeline_solver::words::on_paper;

/// The inch sample with its plate measured: a hole for each that the plan has.
fn measured() -> (Job, Plan) {
    let (mut job, plan) = sample::inches();
    let mounted = plan.pieces[0].mount.as_ref().unwrap();
    let holes = mounted.holes.iter().map(|hole| PlateHole {
        id: hole.id.clone(),
        right: Offset(hole.in_plate.x),
        down: -hole.in_plate.y,
        diameter: Some(Length::inches(0.375)),
    });
    let plate = Plate { holes: holes.collect(), ..Plate::default() };
    job.mounts = vec![Mount { id: mounted.id.clone(), plate: Some(plate), ..Mount::default() }];
    (job, plan)
}

fn drawn(job: &Job, plan: &Plan, paper: PaperSize) -> Document {
    let about = About { file: "room.ron", date: "2026-03-14" };
    document(job, &[plan], &[SheetKind::Template], paper, about).unwrap()
}

fn is_tile(scene: &Scene) -> bool {
    scene.items.iter().any(|item| matches!(item.ink, Ink::ChalkLine | Ink::Plate))
}

fn has(scene: &Scene, words: &str) -> bool {
    scene.items.iter().any(|item| matches!(&item.kind, ItemKind::Text { text, .. } if text == words))
}

/// The middles of the register marks of a page.
fn registers(scene: &Scene) -> Vec<PaperPoint> {
    let circles =
        scene.items.iter().filter(|item| item.ink == Ink::Sheet).filter_map(|item| match &item.kind {
            ItemKind::Circle { centre, .. } => Some(*centre),
            _ => None,
        });
    circles.collect()
}

#[test]
fn the_tiles_are_counted_before_they_come() {
    let (job, plan) = measured();
    for paper in [PaperSize::Letter, PaperSize::A4, PaperSize::A1] {
        let document = drawn(&job, &plan, paper);
        let tiles = document.pages.iter().filter(|page| is_tile(&page.scene)).count();
        let told = on_paper::tiles(tiles, paper.name());
        assert!(has(&document.pages[0].scene, &told), "{told} on {}", paper.name());
        for number in 1..=tiles {
            let name = on_paper::tile(number, tiles);
            assert_eq!(document.pages.iter().filter(|page| has(&page.scene, &name)).count(), 1, "{name}");
        }
    }
}

#[test]
fn every_hole_is_named_and_at_its_place_at_full_size() {
    let (job, plan) = measured();
    let document = drawn(&job, &plan, PaperSize::A3);
    let holes = &plan.pieces[0].mount.as_ref().unwrap().holes;
    for hole in holes {
        let name = on_paper::hole_label(hole);
        assert!(document.pages.iter().any(|page| has(&page.scene, &name)), "{name}");
    }
    // On a page with two holes they are as far apart as on the plate.
    let mut checked = 0;
    for page in document.pages.iter().filter(|page| is_tile(&page.scene)) {
        let middle = |hole: &strikeline_solver::plan::piece::HolePlan| {
            page.scene.items.iter().find_map(|item| match &item.kind {
                ItemKind::Circle { centre, radius_mm, .. }
                    if item.subject.as_ref() == Some(&hole.subject) =>
                {
                    assert!((radius_mm - 0.375 * 25.4 / 2.0).abs() < 1e-9);
                    Some(*centre)
                }
                _ => None,
            })
        };
        for (first, second) in holes.iter().flat_map(|first| holes.iter().map(move |second| (first, second)))
        {
            if first.id != second.id
                && let (Some(a), Some(b)) = (middle(first), middle(second))
            {
                let drawn = (b.x_mm - a.x_mm).hypot(b.y_mm - a.y_mm);
                assert!((drawn - on_paper::apart(first, second).mm()).abs() < 1e-9, "{drawn}");
                checked += 1;
            }
        }
    }
    assert!(checked > 0, "two holes share a page");
}

#[test]
fn register_marks_of_neighbours_fall_together() {
    let (job, plan) = measured();
    let drawn = drawn(&job, &plan, PaperSize::Letter);
    let pages: Vec<&Scene> =
        drawn.pages.iter().map(|page| &page.scene).filter(|scene| is_tile(scene)).collect();
    assert!(pages.len() > 1, "the plate does not fit one page");
    let seams = pages.windows(2).filter(|pair| {
        let [left, right] = pair else { return false };
        // Side by side: a mark half an overlap from the right edge of the one, and from the left edge of the other.
        let room = super::super::title_block::room((left.width_mm, left.height_mm));
        let of_left = registers(left)
            .into_iter()
            .filter(|at| (room.right_mm - at.x_mm - OVERLAP_MM / 2.0).abs() < 1e-6);
        let heights: Vec<f64> = of_left.map(|at| at.y_mm).collect();
        let of_right = registers(right);
        let is_there = |y: &f64| {
            of_right.iter().any(|at| {
                (at.y_mm - y).abs() < 1e-6 && (at.x_mm - room.left_mm - OVERLAP_MM / 2.0).abs() < 1e-6
            })
        };
        !heights.is_empty() && heights.iter().all(is_there)
    });
    assert!(seams.count() > 0);
}

#[test]
fn a_plate_that_nobody_measured_is_not_drawn() {
    let (mut job, mut plan) = measured();
    plan.pieces[0].mount.as_mut().unwrap().holes_assumed = true;
    let unmeasured = drawn(&job, &plan, PaperSize::Letter);
    assert_eq!(unmeasured.pages.len(), 1);
    assert!(!is_tile(&unmeasured.pages[0].scene));
    job.mounts.clear();
    plan.pieces[0].mount.as_mut().unwrap().holes_assumed = false;
    assert_eq!(drawn(&job, &plan, PaperSize::Letter).pages.len(), 1);
    plan.pieces.clear();
    assert!(has(&drawn(&job, &plan, PaperSize::A1).pages[0].scene, on_paper::NO_PLATE));
}

#[test]
fn the_bar_on_every_page_is_100_mm_and_4_in() {
    let (job, plan) = measured();
    for page in drawn(&job, &plan, PaperSize::A4).pages {
        let is_bar = |from: &PaperPoint, to: &PaperPoint| {
            from.y_mm == to.y_mm && (to.x_mm - from.x_mm - 101.6).abs() < 1e-9
        };
        let bars = page.scene.items.iter().filter(
            |item| matches!(&item.kind, ItemKind::Line { from, to } if item.ink == Ink::Dimension && is_bar(from, to)),
        );
        assert_eq!(bars.count(), 1);
    }
}

#[test]
fn a_plate_with_one_hole_has_its_second_check() {
    let (mut job, mut plan) = measured();
    plan.pieces[0].mount.as_mut().unwrap().holes.truncate(1);
    job.mounts[0].plate.as_mut().unwrap().holes.truncate(1);
    let document = drawn(&job, &plan, PaperSize::Letter);
    let checks = |words: &str| {
        let texts = document.pages.iter().flat_map(|page| &page.scene.items);
        texts.filter(|item| matches!(&item.kind, ItemKind::Text { text, .. } if text.contains(words))).count()
    };
    assert_eq!(checks("level line's left end:") + checks("level line's right end:"), 2);
}
