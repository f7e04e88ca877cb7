//! Whatever the room and the zoom, what is written on the drawing can be read.

use super::room::{plan, rooms};
use super::runner;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::ink::Ink;
use strikeline_drawing::look::Look;
use strikeline_drawing::paper::PaperRect;
use strikeline_drawing::scene::{Item, ItemKind, Scene};

/// How many rooms are drawn.
const ROOMS: u32 = 1000;

fn is_ground(item: &Item) -> bool {
    matches!(item.ink, Ink::LabelGround | Ink::LabelGroundProud | Ink::LabelGroundOff)
}

/// Whether an item's own ink goes through a rectangle: a line's box says too much, so lines are cut to it.
fn goes_through(item: &Item, rect: PaperRect) -> bool {
    match &item.kind {
        ItemKind::Line { from, to } => crosses(rect, (from.x_mm, from.y_mm), (to.x_mm, to.y_mm)),
        ItemKind::Polyline { points } => points
            .windows(2)
            .any(|pair| crosses(rect, (pair[0].x_mm, pair[0].y_mm), (pair[1].x_mm, pair[1].y_mm))),
        _ => item.bounds().is_some_and(|bounds| bounds.meets(rect)),
    }
}

/// Whether a straight line goes through the inside of a rectangle.
fn crosses(rect: PaperRect, from: (f64, f64), to: (f64, f64)) -> bool {
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for (start, end, low, high) in
        [(from.0, to.0, rect.left_mm, rect.right_mm), (from.1, to.1, rect.top_mm, rect.bottom_mm)]
    {
        let by = end - start;
        if by.abs() < 1e-12 {
            if start <= low || start >= high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / by, (high - start) / by);
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    first < last
}

/// What is wrong with what is written; nothing where all of it can be read.
fn wrong(scene: &Scene) -> Option<String> {
    let texts: Vec<(usize, &Item, PaperRect)> = scene
        .items
        .iter()
        .enumerate()
        .filter(|(_, item)| matches!(item.kind, ItemKind::Text { .. }))
        .filter_map(|(index, item)| Some((index, item, item.bounds()?.grown(-0.01))))
        .collect();
    for (place, (index, item, bounds)) in texts.iter().enumerate() {
        if let Some((_, other, _)) = texts[place + 1..].iter().find(|(_, _, other)| other.meets(*bounds)) {
            return Some(format!("{item:?} on {other:?}"));
        }
        // The ground under it: from there on nothing but its own is drawn there.
        let ground = scene.items[..*index].iter().rposition(|under| {
            is_ground(under) && under.bounds().is_some_and(|ground| ground.shared(*bounds) == Some(*bounds))
        });
        let Some(ground) = ground else { return Some(format!("{item:?} has no ground of its own")) };
        let through = scene.items[ground + 1..]
            .iter()
            .find(|other| !is_ground(other) && other.subject != item.subject && goes_through(other, *bounds));
        if let Some(other) = through {
            return Some(format!("{other:?} goes through {item:?}"));
        }
    }
    None
}

#[test]
fn no_text_touches_another_or_lies_on_ink_that_is_not_its_own_at_any_zoom() {
    let mut drawn = 0;
    let config = Config { cases: ROOMS, ..super::config() };
    let mut runner = TestRunner::new_with_rng(config, runner().new_rng());
    let seen = std::cell::Cell::new(0);
    let strategy = (rooms(), 4.0_f64..400.0, prop::bool::ANY, 0_usize..40);
    let result = runner.run(&strategy, |(room, one_to, coarse, selected)| {
        let job = room.job();
        let plan = plan(&job);
        let text_height_mm = if coarse { 3.8 } else { 3.44 };
        let selected = plan.marks.get(selected).map(|mark| mark.id.clone());
        let look = Look { text_height_mm, selected, ..Look::whole_wall(&plan, 1.0 / one_to) };
        let scene = elevation(&job, &plan, &look);
        let texts = scene.items.iter().filter(|item| matches!(item.kind, ItemKind::Text { .. })).count();
        seen.set(seen.get() + texts);
        prop_assert_eq!(wrong(&scene), None, "at 1:{}", one_to);
        Ok(())
    });
    drawn += seen.get();
    if let Err(why) = result {
        panic!("{why}");
    }
    assert!(drawn > 5000, "{drawn} texts in all");
}
