//! The drawings of the demo jobs: at every zoom what is written can be read.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

use std::path::PathBuf;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::look::Look;
use strikeline_drawing::paper::PaperRect;
use strikeline_drawing::scene::{ItemKind, Scene};
use strikeline_solver::geometry::{Rect, Span};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;

/// Every wall and option of every demo job: its name, the job and the plan.
fn plans() -> Vec<(String, Job, Plan)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let mut plans = Vec::new();
    for path in paths {
        let job = strikeline::files::job_file::read_job(&path).unwrap().job;
        for wall in &job.walls {
            for option in &wall.options {
                let plan = solve(&job, &wall.id, Some(&option.id));
                plans.push((format!("{} {}", path.display(), option.id), job.clone(), plan));
            }
        }
    }
    assert!(plans.len() > 6, "the demo jobs have options");
    plans
}

/// What could be selected: nothing, each piece, and some of the features, hidden things and marks.
fn selections(plan: &Plan) -> Vec<Option<Subject>> {
    let pieces = plan.pieces.iter().map(|piece| piece.id.whole());
    let features = plan.survey.features.iter().take(3).map(|feature| feature.id.whole());
    let hidden = plan.survey.hidden.iter().take(2).map(|hidden| hidden.id.whole());
    let marks = plan.marks.iter().step_by(4).map(|mark| mark.id.clone());
    let all = pieces.chain(features).chain(hidden).chain(marks).map(Some);
    std::iter::once(None).chain(all).collect()
}

/// Looks from far off to close by, the screen's text height among them.
fn looks(plan: &Plan) -> Vec<Look> {
    let mut looks = Vec::new();
    for text_height_mm in [3.44, 3.8] {
        for per in [1.0 / 8.0, 1.0 / 17.0, 1.0 / 24.0, 1.0 / 40.0, 1.0 / 75.0, 1.0 / 150.0, 1.0 / 400.0] {
            looks.push(Look { text_height_mm, ..Look::whole_wall(plan, per) });
        }
        // Close to the first piece: the rows stand over the wall.
        if let Some(piece) = plan.pieces.first() {
            let centre = piece.outline.centre();
            let about = |middle, mm| Span::about(middle, Length::millimetres(mm));
            let shown = Rect::new(about(centre.x, 900.0), about(centre.y, 700.0));
            looks.push(Look { text_height_mm, shown, ..Look::whole_wall(plan, 0.12) });
        }
    }
    looks
}

fn texts(scene: &Scene) -> Vec<(PaperRect, &str, Option<&Subject>)> {
    let texts = scene.items.iter().filter_map(|item| match &item.kind {
        ItemKind::Text { text, .. } => Some((item.bounds()?, text.as_str(), item.subject.as_ref())),
        _ => None,
    });
    texts.collect()
}

#[test]
fn no_two_texts_lie_on_each_other_at_any_zoom() {
    for (name, job, plan) in plans() {
        for look in looks(&plan) {
            for selected in selections(&plan) {
                let look = Look { selected, ..look.clone() };
                let scene = elevation(&job, &plan, &look);
                let texts = texts(&scene);
                for (index, a) in texts.iter().enumerate() {
                    for b in &texts[index + 1..] {
                        // The runs of one figure touch; they do not lie on each other.
                        assert!(
                            !a.0.grown(-0.01).meets(b.0.grown(-0.01)),
                            "{name} at 1:{}, {:?} selected: {a:?} and {b:?}",
                            1.0 / look.paper_mm_per_wall_mm,
                            look.selected
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn the_name_of_what_is_selected_is_always_shown() {
    for (name, job, plan) in plans() {
        for look in looks(&plan) {
            let pieces = plan.pieces.iter().map(|it| (it.id.whole(), &it.name, it.outline));
            let features = plan.survey.features.iter().map(|it| (it.id.whole(), &it.name, it.rect));
            let hidden = plan.survey.hidden.iter().map(|it| (it.id.whole(), &it.name, it.rect));
            for (subject, text, rect) in pieces.chain(features).chain(hidden) {
                let look = Look { selected: Some(subject.clone()), ..look.clone() };
                let scene = elevation(&job, &plan, &look);
                // Where all of it can be seen, it can be told what it is.
                let on_paper = scene.scale.paper_rect(rect);
                if text.is_empty() || scene.scale.shown().shared(on_paper) != Some(on_paper) {
                    continue;
                }
                let shown = texts(&scene).iter().any(|it| it.1 == text && it.2 == Some(&subject));
                assert!(shown, "{name} at 1:{}: {text}", 1.0 / look.paper_mm_per_wall_mm);
            }
        }
    }
}

#[test]
fn the_gap_between_two_pieces_is_told_once() {
    let mut seen = 0;
    for (name, job, plan) in plans() {
        for piece in &plan.pieces {
            let Some(gap) = piece.gaps.right.as_ref() else { continue };
            let Some(other) = plan.pieces.iter().find(|other| other.id == gap.to.id) else { continue };
            if other.gaps.left.as_ref().is_none_or(|back| back.to.id != piece.id) {
                continue;
            }
            let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 1.0 / 8.0));
            let gaps = [piece.id.part("gap_right"), other.id.part("gap_left")];
            let told =
                gaps.iter().filter(|gap| texts(&scene).iter().any(|text| text.2 == Some(*gap))).count();
            assert_eq!(told, 1, "{name}: {gaps:?}");
            seen += 1;
        }
    }
    assert!(seen > 0, "a demo job has two pieces side by side");
}
