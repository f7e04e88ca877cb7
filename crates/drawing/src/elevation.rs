//! The wall seen face-on, with all that is on it and in it, what is to be struck and how far it is.

mod clear_labels;
mod dimensions;
mod labels;
mod marks;
mod mount;
mod read_dimensions;
mod running;
pub(crate) mod wall;

pub(crate) use wall::GROUND_MM;

use crate::dimension::Rows;
use crate::look::Look;
use crate::paper::PaperRect;
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::{Scene, ShownFigure};
use crate::symbol;
use strikeline_solver::geometry::{Point, Span};
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::framing::{Known, Stud};
use strikeline_solver::subject::Id;

/// Kept free of lines round a figure; less than its distance from its own line.
const FIGURE_CLEAR_MM: f64 = 0.3;

/// Draws a plan. Every item bears the subject it is about. Whatever the plan holds, there is a scene.
#[must_use]
pub fn elevation(job: &Job, plan: &Plan, look: &Look) -> Scene {
    let scale = Scale::new(look);
    let mut items = Vec::new();
    let mut pen = Pen::new(&mut items, &scale, look);
    wall::face(&mut pen, plan);
    studs(&mut pen, plan, None);
    for breast in plan.survey.features.iter().filter(|feature| feature.kind == FeatureKind::ChimneyBreast) {
        pen.take(breast.id.whole(), breast.assumed);
        symbol::feature::feature(&mut pen, breast);
        studs(&mut pen, plan, Some(&breast.id));
    }
    for hidden in &plan.survey.hidden {
        pen.take(hidden.id.whole(), hidden.assumed);
        symbol::hidden::hidden(&mut pen, hidden);
    }
    for feature in plan.survey.features.iter().filter(|feature| feature.kind != FeatureKind::ChimneyBreast) {
        pen.take(feature.id.whole(), feature.assumed);
        symbol::feature::feature(&mut pen, feature);
    }
    wall::edges(&mut pen, plan);
    wall::control_line(&mut pen, plan);
    hits(&mut pen, plan);
    for piece in &plan.pieces {
        mount::hung(&mut pen, job, piece);
    }
    marks::marks(&mut pen, plan);
    if let Some(probe) = look.next_probe {
        pen.take(plan.wall.whole(), false);
        let at = pen.at(probe);
        symbol::next_probe::next_probe(&mut pen, at);
    }

    let frame = scale.paper_rect(plan.survey.outline).shared(scale.shown()).unwrap_or(scale.shown());
    // By importance: what is selected or held by name, the dimensions, all other names.
    let lit = labels::lit_labels(plan, &scale, look);
    let lit_grounds: Vec<PaperRect> = lit.iter().map(labels::Label::ground).collect();
    let mut rows = Rows::new(frame, scale.page(), look.sound_text_height_mm(), lit_grounds.clone());
    dimensions::ask(&mut rows, job, plan, &scale, look);
    let is_plain = look.selected.is_none() && look.held.is_none();
    let running =
        if is_plain { running::running(&rows, plan, &scale, look) } else { running::Running::default() };
    let mut taken = rows.taken();
    taken.extend(running.taken);
    taken.extend(lit_grounds);
    let others = labels::other_labels(plan, &scale, look, taken);
    labels::draw(&mut pen, &others, look);
    let mut figures = Vec::new();
    for (wanted, dimension) in rows.into_dimensions() {
        let (about, measured) = (wanted.about, wanted.measured);
        figures.push(ShownFigure { about, bounds: dimension.figure_bounds(), measured });
        pen.take(wanted.subject, wanted.assumed);
        // In a close look a figure stands on the wall itself: the lines under it are kept off it.
        let ground = dimension.figure_bounds().grown(FIGURE_CLEAR_MM);
        pen.ground(ground);
        for (ink, kind) in dimension.draw() {
            pen.add(ink, kind);
        }
    }
    for (subject, ink, kind) in running.parts {
        pen.take(subject, false);
        pen.add(ink, kind);
    }
    labels::draw(&mut pen, &lit, look);
    Scene { width_mm: scale.page().width_mm(), height_mm: scale.page().height_mm(), items, figures, scale }
}

/// Draws the uprights of the wall, or those of a chimney breast over its height.
fn studs(pen: &mut Pen<'_>, plan: &Plan, on: Option<&Id>) {
    let own = |stud: &&Stud| stud.on.as_ref() == on;
    for stud in plan.framing.studs.iter().filter(own) {
        let breast = plan.survey.features.iter().find(|feature| Some(&feature.id) == on);
        let upright = match breast {
            Some(breast) => breast.rect.upright(),
            None => Span::new(plan.survey.floor.y_at(stud.centre), plan.survey.outline.top),
        };
        // A stud's subject is the first hit that tells of it: the thing that can be taken hold of.
        let hit = stud.hits.first().cloned().unwrap_or_else(|| plan.wall.clone());
        pen.take(hit.whole(), stud.known == Known::Expected);
        symbol::stud::stud(pen, stud, upright);
    }
}

fn hits(pen: &mut Pen<'_>, plan: &Plan) {
    // A hit whose height was not noted is drawn at mid height: it tells of x alone.
    let middle = plan.survey.outline.centre().y;
    for hit in &plan.survey.hits {
        pen.take(hit.id.whole(), false);
        let at = pen.at(Point::new(hit.x, hit.y.unwrap_or(middle)));
        symbol::hit::hit(pen, at, hit.kind);
        if plan.framing.planes.iter().flat_map(|plane| &plane.outliers).any(|outlier| outlier.hit == hit.id) {
            symbol::hit::outlier(pen, at);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ink::Ink;
    use crate::sample;
    use crate::scene::{ItemKind, Lit};
    use strikeline_solver::geometry::Rect;
    use strikeline_solver::subject::Subject;
    use strikeline_solver::units::Length;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    fn sample_scene(per: f64) -> Scene {
        let (job, plan) = sample::inches();
        elevation(&job, &plan, &Look::whole_wall(&plan, per))
    }

    fn of(scene: &Scene, ink: Ink) -> impl Iterator<Item = &crate::scene::Item> {
        scene.items.iter().filter(move |item| item.ink == ink)
    }

    #[test]
    fn a_hole_chosen_by_hand_flies_a_pennant_filled_or_open() {
        use strikeline_solver::plan::verdict::{EmptyWhy, LeftEmpty};
        let (job, mut plan) = sample::inches();
        let pennants = |plan: &Plan, filled: bool| {
            let scene = elevation(&job, plan, &Look::whole_wall(plan, 1.0 / 16.0));
            let is_one = |item: &&crate::scene::Item| {
                matches!(item.ink, Ink::Hole(_))
                    && matches!(&item.kind, ItemKind::Polygon { points, filled: is, .. } if points.len() == 3 && *is == filled)
            };
            scene.items.iter().filter(is_one).count()
        };
        assert_eq!((pennants(&plan, true), pennants(&plan, false)), (0, 0));
        let mount = plan.pieces[0].mount.as_mut().unwrap();
        let (hole, subject) = (mount.holes[0].id.clone(), mount.holes[0].subject.clone());
        mount.fastening.left_empty = vec![LeftEmpty { hole, subject, why: EmptyWhy::ByHand, wanted: false }];
        assert_eq!((pennants(&plan, true), pennants(&plan, false)), (0, 1));
        let empty = &mut plan.pieces[0].mount.as_mut().unwrap().fastening.left_empty[0];
        (empty.why, empty.wanted) = (EmptyWhy::TooFew, true);
        assert_eq!((pennants(&plan, true), pennants(&plan, false)), (1, 0));
    }

    #[test]
    fn no_two_texts_lie_on_each_other() {
        for per in [1.0 / 16.0, 1.0 / 24.0, 1.0 / 32.0, 1.0 / 48.0, 1.0 / 96.0] {
            let scene = sample_scene(per);
            let texts: Vec<_> =
                scene.items.iter().filter(|item| matches!(item.kind, ItemKind::Text { .. })).collect();
            assert!(texts.len() > 3, "at 1:{}", 1.0 / per);
            for (index, a) in texts.iter().enumerate() {
                for b in &texts[index + 1..] {
                    // Runs of one figure touch; they do not lie on each other.
                    let (a_box, b_box) = (a.bounds().unwrap().grown(-0.01), b.bounds().unwrap().grown(-0.01));
                    assert!(!a_box.meets(b_box), "at 1:{}: {a:?} {b:?}", 1.0 / per);
                }
            }
        }
    }

    #[test]
    fn no_dimension_line_runs_through_a_text() {
        for per in [1.0 / 16.0, 1.0 / 24.0, 1.0 / 48.0] {
            let scene = sample_scene(per);
            let lines = of(&scene, Ink::Dimension).chain(of(&scene, Ink::Extension));
            let lines: Vec<_> = lines.filter_map(crate::scene::Item::bounds).collect();
            for figure in scene.items.iter().filter(|item| matches!(item.kind, ItemKind::Text { .. })) {
                let bounds = figure.bounds().unwrap();
                assert!(!lines.iter().any(|line| line.meets(bounds)), "at 1:{}: {figure:?}", 1.0 / per);
            }
        }
    }

    #[test]
    fn a_name_too_long_for_any_place_is_shortened() {
        let (job, mut plan) = sample::inches();
        plan.pieces[0].name = "A display that somebody was very fond of ".repeat(9).trim().to_owned();
        let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 1.0 / 24.0));
        let names = of(&scene, Ink::Label).filter_map(|item| match &item.kind {
            ItemKind::Text { text, .. } if text.starts_with("A display") => Some(text.as_str()),
            _ => None,
        });
        let names: Vec<&str> = names.collect();
        assert!(matches!(names.as_slice(), [only] if only.ends_with('\u{2026}')), "{names:?}");
    }

    #[test]
    fn a_gap_out_of_level_is_told_at_both_ends() {
        let (job, mut plan) = sample::inches();
        plan.pieces[0].gaps.below.as_mut().unwrap().other = Length::inches(7.5);
        let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 1.0 / 24.0));
        for part in ["display-1.gap_below", "display-1.gap_below_right"] {
            assert!(scene.items.iter().any(|item| item.subject == Subject::read(part)), "{part}");
        }
    }

    #[test]
    fn a_selected_hole_shows_its_ring_and_a_selected_piece_does_not_show_them_all() {
        let (job, mut plan) = sample::inches();
        let mut hole = plan.marks[0].clone();
        hole.id = Subject::read("display-1.hole-1").unwrap();
        hole.what = strikeline_solver::plan::mark::MarkWhat::Hole {
            hole: Id::new("hole-1"),
            first: true,
            held: false,
        };
        plan.marks.push(hole);
        let rings = |selected: &str| {
            let look = Look { selected: Subject::read(selected), ..Look::whole_wall(&plan, 1.0 / 24.0) };
            of(&elevation(&job, &plan, &look), Ink::Mark).count()
        };
        assert_eq!((rings("display-1.hole-1"), rings("display-1"), rings("window-1")), (1, 0, 0));
    }

    #[test]
    fn what_is_done_has_its_own_ink_and_says_where_it_should_be_now() {
        use strikeline_solver::plan::mark::{MarkState, MarkWhat, Planned};
        let (job, mut plan) = sample::inches();
        let look = Look::whole_wall(&plan, 1.0 / 24.0);
        assert_eq!(of(&elevation(&job, &plan, &look), Ink::Done).count(), 0);
        let line = plan.marks.iter_mut().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        line.state = MarkState::Struck;
        let scene = elevation(&job, &plan, &look);
        assert_eq!(of(&scene, Ink::Done).count(), 1);
        assert_eq!(of(&scene, Ink::Mark).count(), 0);
        let line = plan.marks.iter_mut().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        let place = line.place.unwrap();
        line.planned = Some(Planned { place, line: None, readings: Vec::new() });
        assert!(of(&elevation(&job, &plan, &look), Ink::Mark).count() > 0);
        let line = plan.marks.iter_mut().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        line.state = MarkState::Done;
        assert_eq!(of(&elevation(&job, &plan, &look), Ink::Done).count(), 0, "a step leaves nothing");
    }

    #[test]
    fn a_close_look_draws_no_farther_than_its_paper() {
        let (job, plan) = sample::inches();
        let look = Look { paper_mm_per_wall_mm: 500.0, ..Look::whole_wall(&plan, 1.0) };
        let scene = elevation(&job, &plan, &look);
        let page = scene.scale.page();
        for item in scene.items.iter().filter(|item| !item.pattern().dashes_mm().is_empty()) {
            let bounds = item.bounds().unwrap();
            assert!(page.grown(30.0).shared(bounds) == Some(bounds), "{item:?}");
        }
    }

    #[test]
    fn the_centre_line_s_reading_and_its_close_are_shown() {
        let scene = sample_scene(1.0 / 24.0);
        let subject = Subject::read("display-1.centre_line").unwrap();
        let shown: String = of(&scene, Ink::DimensionText)
            .filter(|item| item.subject.as_ref() == Some(&subject))
            .filter_map(|item| match &item.kind {
                ItemKind::Text { text, .. } => Some(text.as_str()),
                _ => None,
            })
            .collect();
        // 62 3/16 from the left end, 105 13/16 from the right one: 168 in.
        assert_eq!(shown, "62316\u{2033}1051316\u{2033}");
    }

    #[test]
    fn the_level_line_is_struck_where_the_plan_has_it() {
        let (job, plan) = sample::inches();
        let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 1.0 / 24.0));
        let lines: Vec<_> = of(&scene, Ink::ChalkLine)
            .filter(|item| item.subject == Subject::read("display-1.level_line"))
            .collect();
        let ItemKind::Line { from, to } = &lines[0].kind else { panic!("{lines:?}") };
        let mark = plan.marks.iter().find(|mark| mark.id.part_str() == "level_line").unwrap();
        let (a, b) = mark.line.unwrap();
        let back = (scene.scale.wall_from_paper(*from), scene.scale.wall_from_paper(*to));
        for (drawn, struck) in [(back.0, a), (back.1, b)] {
            assert!((drawn.x - struck.x).mm().abs() < 1e-6 && (drawn.y - struck.y).mm().abs() < 1e-6);
        }
        assert_eq!(from.y_mm, to.y_mm, "level");
    }

    #[test]
    fn what_is_selected_or_held_is_lit_and_nothing_else() {
        let (job, plan) = sample::inches();
        let mut look = Look::whole_wall(&plan, 1.0 / 24.0);
        look.selected = Subject::read("window-1");
        look.held = Subject::read("display-1.centre_line");
        let scene = elevation(&job, &plan, &look);
        for item in &scene.items {
            let expected = match &item.subject {
                Some(subject) if Some(subject) == look.held.as_ref() => Lit::Held,
                Some(subject) if Some(subject) == look.selected.as_ref() => Lit::Selected,
                _ => Lit::No,
            };
            assert_eq!(item.lit, expected, "{item:?}");
        }
        for lit in [Lit::Held, Lit::Selected] {
            assert!(scene.items.iter().any(|item| item.lit == lit));
        }
    }

    #[test]
    fn what_is_assumed_is_drawn_broken() {
        let (job, mut plan) = sample::inches();
        plan.pieces[0].assumed = true;
        let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 1.0 / 24.0));
        let piece = of(&scene, Ink::Piece).next().unwrap();
        assert!(piece.assumed && !piece.pattern().dashes_mm().is_empty());
    }

    #[test]
    fn nonsense_gives_a_scene() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e12, 0.0] {
            let (job, mut plan) = sample::inches();
            let rect = Rect { left: mm(bad), right: mm(-bad), bottom: mm(bad), top: mm(bad) };
            plan.survey.outline = rect;
            for feature in &mut plan.survey.features {
                feature.rect = rect;
            }
            for hidden in &mut plan.survey.hidden {
                hidden.rect = rect;
            }
            for piece in &mut plan.pieces {
                piece.outline = rect;
                piece.frame.origin = Point::new(mm(bad), mm(bad));
            }
            for stud in &mut plan.framing.studs {
                (stud.centre, stud.doubt) = (mm(bad), mm(bad));
            }
            for mark in &mut plan.marks {
                mark.place = Some(Point::new(mm(bad), mm(1.0)));
                for reading in &mut mark.readings {
                    reading.value = mm(bad);
                }
            }
            for per in [1.0 / 24.0, bad] {
                let look = Look { text_height_mm: bad, ..Look::whole_wall(&plan, per) };
                let scene = elevation(&job, &plan, &look);
                assert!(scene.items.len() < 5000);
                for bounds in scene.items.iter().filter_map(crate::scene::Item::bounds) {
                    assert!(bounds.width_mm().is_finite() && bounds.height_mm().is_finite());
                }
            }
        }
    }

    #[test]
    fn an_empty_plan_is_an_empty_wall() {
        let (job, plan) = sample::empty();
        let scene = elevation(&job, &plan, &Look::whole_wall(&plan, 0.05));
        assert!(
            scene.items.iter().all(|item| !matches!(item.ink, Ink::Piece | Ink::Lumber | Ink::ChalkLine))
        );
    }
}
