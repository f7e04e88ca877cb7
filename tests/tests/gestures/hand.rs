//! Edges, figures and numbers: what a hand changes on the canvas beside moving whole things.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, Pos2, Rect, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::edge::Side;
use strikeline::moves::{HandleKind, dimension::length_told, dimension::typed};
use strikeline::session::Session;
use strikeline_drawing::dimension::{About, ReadPlace};
use strikeline_solver::job::feature::Feature;
use strikeline_solver::job::place::{AcrossReading, UprightReading};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn shelf(harness: &Harness<'_, App>) -> Feature {
    job(harness).walls[0].features[0].clone()
}

fn edge(harness: &mut Harness<'_, App>, side: Side) -> Pos2 {
    middle(harness, HandleKind::Edge(side), "shelf-1")
}

/// The room with the shelf selected.
fn with_the_shelf_selected() -> Harness<'static, App> {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Feature, "shelf-1");
    tap(&mut harness, at);
    assert_eq!(job(&harness), room());
    harness
}

fn type_text(harness: &mut Harness<'_, App>, text: &str) {
    harness.event(Event::Text(text.to_owned()));
    harness.run();
}

/// Where the figure of a dimension is.
fn figure(harness: &Harness<'_, App>, about: &About) -> Rect {
    let id = canvas::figures::figure_id(about);
    harness.ctx.read_response(id).expect("its figure is shown").rect
}

fn read(place: ReadPlace) -> About {
    About::Read { thing: Id::new("shelf-1"), place }
}

fn line(part: &str) -> About {
    About::Reading { mark: Id::new("display-1").part(part), index: 0 }
}

fn told(harness: &mut Harness<'_, App>, about: &About) -> Length {
    let plan = plan(harness);
    length_told(&job(harness), &plan, about).expect("it is told")
}

fn is_near(a: Length, b: Length) -> bool {
    (a - b).abs() < Length::millimetres(1e-5)
}

#[test]
fn a_selected_feature_is_dragged_by_its_edge_and_the_other_edge_stays() {
    let mut harness = with_the_shelf_selected();
    let from = edge(&mut harness, Side::Right);
    let left = plan(&mut harness).survey.features[0].rect.left;
    // A fingertip off the edge.
    drag(&mut harness, from + vec2(18.0, 0.0), vec2(31.0, 4.0));
    let after = shelf(&harness);
    let width = after.across.width.unwrap();
    assert!(width > inches(33.0), "{width:?}");
    let style = job(&harness).style();
    assert!(is_near(width, style.length_of(style.steps(width))), "{width:?}");
    assert_eq!(plan(&mut harness).survey.features[0].rect.left, left);
    let mut same = job(&harness);
    same.walls[0].features[0].across.width = room().walls[0].features[0].across.width;
    assert_eq!(same, room(), "the width and nothing else");

    harness.key_press(Key::Escape);
    harness.run();
    let from = edge(&mut harness, Side::Left);
    press_and_move(&mut harness, from, vec2(-20.0, 0.0));
    let held = shelf(&harness);
    assert!(held.across.left.as_ref().unwrap().by < inches(79.0) && held.across.width.unwrap() > width);
    harness.key_press(Key::Escape);
    harness.step();
    assert_eq!(shelf(&harness), after, "Escape gives back the start");
}

#[test]
fn an_edge_is_found_by_name_and_nudged_by_arrows() {
    let mut harness = with_the_shelf_selected();
    harness.get_by_role_and_label(Role::Button, "Low shelf's top").focus();
    harness.run();
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert_eq!(shelf(&harness).upright.height, Some(inches(2.0 + 1.0 / 16.0)));
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(shelf(&harness).upright.height, Some(inches(2.0 + 1.0 / 16.0)), "not along the other axis");
    assert_eq!(shelf(&harness).across, room().walls[0].features[0].across);
    // Before it is selected a thing has no edges in the way.
    let other = window();
    assert_eq!(other.query_all_by_label("Low shelf's top").count(), 0);
}

/// The handle of a name and no row of a list: a screen reader is told where it is.
fn handle<'a>(harness: &'a Harness<'_, App>, name: &'a str) -> egui_kittest::Node<'a> {
    let mut all = harness.get_all_by_role_and_label(Role::Button, name);
    all.find(|node| node.value().is_some_and(|value| value.starts_with("middle"))).expect("the handle")
}

#[test]
fn a_screen_reader_selects_and_nudges_a_handle() {
    let mut harness = window();
    handle(&harness, "Low shelf").click_accesskit();
    harness.run();
    assert_eq!(harness.state().session().selected, Some(Id::new("shelf-1").whole()));
    handle(&harness, "Low shelf").increment_accesskit();
    harness.run();
    assert_eq!(shelf(&harness).across.left.unwrap().by, inches(80.0 + 1.0 / 16.0));
    harness.get_by_role_and_label(Role::Button, "Low shelf's top").decrement_accesskit();
    harness.run();
    assert_eq!(shelf(&harness).upright.height, Some(inches(2.0 - 1.0 / 16.0)));
}

#[test]
fn a_figure_is_tapped_and_typed_over() {
    let mut harness = with_the_shelf_selected();
    let at = figure(&harness, &read(ReadPlace::Left)).center();
    tap(&mut harness, at);
    let field = harness.get_by_role_and_label(Role::TextInput, "right of the left corner");
    assert_eq!(field.value().as_deref(), Some("80 in"));
    // All of it is selected: the first digit replaces it.
    type_text(&mut harness, "71 1/2");
    harness.get_by_label_contains("71 1/2 in is");
    assert_eq!(job(&harness), room(), "not before Enter");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(shelf(&harness).across.left.unwrap().by, inches(71.5));
    assert_eq!(shelf(&harness).across.width, Some(inches(30.0)));
    assert_eq!(harness.query_all_by_role(Role::TextInput).filter(egui_kittest::Node::is_focused).count(), 0);
    harness.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), room(), "one step");
}

#[test]
fn what_is_not_understood_stands_with_its_error_and_escape_gives_back() {
    let mut harness = with_the_shelf_selected();
    let at = figure(&harness, &read(ReadPlace::Left)).center();
    tap(&mut harness, at);
    type_text(&mut harness, "71 3/2");
    harness.key_press(Key::Enter);
    harness.run();
    harness.get_by_label_contains("Not understood");
    let field = harness.get_by_role_and_label(Role::TextInput, "right of the left corner");
    assert_eq!(field.value().as_deref(), Some("71 3/2"), "nothing that was typed is lost");
    assert!(field.is_focused());
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(job(&harness), room());
    assert_eq!(harness.query_all_by_label_contains("Not understood").count(), 0);
}

#[test]
fn a_figure_is_reached_by_its_name_and_opened_by_enter() {
    let mut harness = window();
    let name = {
        let plan = plan(&mut harness);
        canvas::figures::name(&job(&harness), &plan, &line("level_line"))
    };
    assert!(name.contains("above the floor"), "{name}");
    harness.get_by_role_and_label(Role::Button, &name).focus();
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    type_text(&mut harness, "70");
    harness.key_press(Key::Enter);
    harness.run();
    assert!(is_near(told(&mut harness, &line("level_line")), inches(70.0)));
}

#[test]
fn a_derived_dimension_says_what_drives_it() {
    let mut harness = window();
    let plan = plan(&mut harness);
    let driven = plan.marks.iter().find_map(|mark| {
        harness.state_mut().session_mut().selected = Some(mark.id.clone());
        harness.run_steps(3);
        let all = (0..mark.readings.len()).map(|index| About::Reading { mark: mark.id.clone(), index });
        let driven = all.filter(|about| typed(&room(), &plan, about, inches(30.0)).is_err());
        let shown = |about: &About| harness.ctx.read_response(canvas::figures::figure_id(about)).is_some();
        driven.into_iter().find(shown)
    });
    let at = figure(&harness, &driven.expect("a reading that follows from the plate")).center();
    tap(&mut harness, at);
    let words = strikeline::moves::dimension::Driven::ByThePlate.words();
    harness.get_by_label(words);
    harness.get_by_label("Leave").click();
    harness.run();
    assert_eq!(harness.query_all_by_label(words).count(), 0);
    assert_eq!(job(&harness), room());
}

#[test]
fn a_number_typed_during_a_drag_sets_the_dimension_that_leads() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(-70.0, 3.0));
    type_text(&mut harness, "4");
    type_text(&mut harness, "1 1/4");
    // The hand may go where it likes now, and let go.
    harness.hover_at(from + vec2(90.0, 90.0));
    harness.step();
    harness.drop_at(from + vec2(90.0, 90.0));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    assert!(is_near(told(&mut harness, &line("centre_line")), inches(41.25)));
    assert_eq!(nudge(&job(&harness)).up.length(), Length::default());
    harness.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), room(), "drag and number are one step");
}

#[test]
fn escape_from_a_number_typed_during_a_drag_gives_back_the_start() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Hit, "hit-2");
    press_and_move(&mut harness, from, vec2(0.0, -40.0));
    assert_ne!(job(&harness), room());
    type_text(&mut harness, "3");
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(job(&harness), room());
    harness.drop_at(from);
    harness.run();
    assert_eq!(job(&harness), room());
    assert!(!harness.state().session().can_undo());
}

#[test]
fn the_height_leads_where_the_hand_went_up() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Hit, "hit-2");
    press_and_move(&mut harness, from, vec2(0.0, -40.0));
    type_text(&mut harness, "33");
    harness.key_press(Key::Enter);
    harness.run();
    harness.drop_at(from);
    harness.run();
    let hit = job(&harness).walls[0].hits[1].clone();
    assert_eq!((hit.x.by, hit.y.unwrap().by), (inches(62.0), inches(33.0)));
}

#[test]
fn a_figure_that_is_dragged_takes_what_lies_under_it() {
    let mut harness = window();
    let about = About::Width(Id::new("wall-1"));
    let rect_of = |harness: &Harness<'_, App>| {
        harness.ctx.read_response(canvas::figures::figure_id(&about)).expect("the figure is shown").rect
    };
    let figure = rect_of(&harness).center();
    // A hit so near that a press on the figure reaches it, and not so near that it is meant at once.
    let shown = canvas::shown(&plan(&mut harness), canvas_rect(&harness), harness.state().view_state());
    let place = shown.wall_from_pointer(figure + vec2(14.0, 0.0));
    let hit = &mut harness.state_mut().session_mut().job.walls[0].hits[0];
    hit.x = AcrossReading::from_left(place.x.quantised());
    hit.y = Some(UprightReading::from_floor(place.y.quantised()));
    harness.run();
    assert_eq!(rect_of(&harness).center(), figure);
    let before = job(&harness);
    drag(&mut harness, figure, vec2(-50.0, 20.0));
    let after = job(&harness);
    assert!(after.walls[0].hits[0].x.by < before.walls[0].hits[0].x.by - inches(3.0));
    let mut same = after;
    same.walls[0].hits[0] = before.walls[0].hits[0].clone();
    assert_eq!(same, before, "nothing else moved, and no figure was typed over");
}

/// A session on the room without its plate's mark lines: nothing is struck.
#[test]
fn without_a_plate_the_gap_leads() {
    let mut bare = room();
    bare.mounts.clear();
    bare.walls[0].options[0].hangings[0].mount = None;
    let mut harness = window_on(Session::new(bare, None));
    harness.run();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(-70.0, 0.0));
    type_text(&mut harness, "20");
    harness.key_press(Key::Enter);
    harness.run();
    let left = plan(&mut harness).pieces[0].outline.left;
    assert!(is_near(left, inches(20.0)), "{left:?}");
}

#[test]
fn what_a_held_thing_is_drawn_to_is_told_while_it_is_held() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(64.0, 0.0));
    let told = |harness: &Harness<'_, App>| harness.query_all_by_label("to its rule's own place").count();
    let now = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, now, from - now + vec2(3.0, 0.0));
    assert_eq!(told(&harness), 1);
    // It keeps a little longer than it came, and then lets go. To the right a stud is near.
    for (off, count) in [(-9.0, 1), (-11.5, 0), (-9.0, 0), (-6.0, 1)] {
        harness.hover_at(from + vec2(off, 0.0));
        harness.step();
        assert_eq!(told(&harness), count, "{off}");
    }
    harness.drop_at(from);
    harness.run();
    assert_eq!(told(&harness), 0);
    assert_eq!(job(&harness), room());
    let shelf = middle(&mut harness, HandleKind::Feature, "shelf-1");
    let hit = middle(&mut harness, HandleKind::Hit, "hit-2");
    press_and_move(&mut harness, shelf, vec2(hit.x - shelf.x + 4.0, 40.0));
    let words = ["to the stud", "to the wall's middle", "to Screen's"];
    assert!(words.iter().any(|words| harness.query_all_by_label_contains(words).count() > 0));
}

#[test]
fn a_field_on_the_drawing_goes_with_its_job() {
    let mut harness = window();
    let at = figure(&harness, &About::Width(Id::new("wall-1"))).center();
    tap(&mut harness, at);
    type_text(&mut harness, "100");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
    harness.run();
    let fresh = job(&harness);
    assert!(fresh.walls[0].width.is_none() && fresh.title.is_empty(), "{:?}", fresh.walls[0].width);
    assert_eq!(harness.query_all_by_label("Leave").count(), 0);
}
