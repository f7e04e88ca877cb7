//! A small picture of a wall: what is seen of it and what hangs there, without a word.

use crate::view_state::POINTS_PER_PAPER_MM;
use egui::Vec2;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::ink::Ink;
use strikeline_drawing::look::{Look, Margin};
use strikeline_drawing::scene::Scene;
use strikeline_solver::job::Job;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::solve::solve;
use strikeline_solver::units::Length;

/// The size of a picture, in points: a wall twice as wide as high fills it (chosen).
pub(super) const SIZE: Vec2 = Vec2::new(100.0, 56.0);
/// Free at its edge, in paper millimetres.
const MARGIN_MM: f64 = 1.5;
/// How wide a line is beside that of a whole window.
const LINES: f64 = 0.6;

/// The picture of a wall of a job, its chosen option on it.
pub(super) fn picture(job: &Job, wall: &Wall) -> Scene {
    let plan = solve(job, &wall.id, None);
    let room = |points: f32| f64::from(points) / POINTS_PER_PAPER_MM - 2.0 * MARGIN_MM;
    let outline = plan.survey.outline;
    let per =
        (room(SIZE.x) / outline.width().mm().max(1.0)).min(room(SIZE.y) / outline.height().mm().max(1.0));
    let mut look = Look::whole_wall(&plan, per);
    look.margin = Margin::even(MARGIN_MM);
    // In the middle of the picture, whichever way it is too narrow for it.
    let spare =
        |points: f32, length: Length| Length::millimetres((room(points) / per - length.mm()).max(0.0) / 2.0);
    let (beside, below) = (spare(SIZE.x, outline.width()), spare(SIZE.y, outline.height()));
    look.shown.left -= beside;
    look.shown.right += beside;
    look.shown.top += below;
    look.shown.bottom -= below;
    let mut scene = elevation(job, &plan, &look);
    scene.items.retain(|item| is_seen(item.ink));
    for item in &mut scene.items {
        item.width_mm *= LINES;
    }
    scene
}

/// Whether this tells one wall from another at a glance.
fn is_seen(ink: Ink) -> bool {
    matches!(
        ink,
        Ink::WallFace
            | Ink::WallEdge
            | Ink::OpenEnd
            | Ink::Floor
            | Ink::Feature
            | Ink::FeatureProud
            | Ink::FeatureDetail
            | Ink::Piece
            | Ink::Plate
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::Session;
    use strikeline_drawing::scene::ItemKind;

    #[test]
    fn a_picture_holds_the_wall_and_its_piece_and_no_word() {
        let mut job = Session::fresh().job;
        let mut wall = job.walls.pop().unwrap();
        for (width, height) in [(120.0, 96.0), (400.0, 80.0), (20.0, 120.0)] {
            wall.width = Some(Length::inches(width));
            wall.height = Some(Length::inches(height));
            let job = Job { walls: vec![wall.clone()], ..job.clone() };
            let scene = picture(&job, &wall);
            let points = |mm: f64| (mm * POINTS_PER_PAPER_MM).round();
            assert_eq!(
                (points(scene.width_mm), points(scene.height_mm)),
                (100.0, 56.0),
                "{width} x {height}"
            );
            assert!(scene.items.iter().any(|item| item.ink == Ink::WallFace));
            assert!(scene.items.iter().any(|item| item.ink == Ink::Piece));
            assert!(!scene.items.iter().any(|item| matches!(item.kind, ItemKind::Text { .. })));
        }
    }
}
