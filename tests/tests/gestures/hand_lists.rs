//! The drawing and what stands beside it: lists that show on the drawing and the drawing that shows in lists, the
//! menu's adding and taking out, moving after taping, and the order in which Tab walks.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, PointerButton, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::{HandleKind, whereabouts};
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::place::AcrossDatum;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Stage};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;
use strikeline_solver::words;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn secondary_click(harness: &mut Harness<'_, App>, at: Pos2) {
    harness.hover_at(at);
    harness.step();
    for pressed in [true, false] {
        let modifiers = Modifiers::NONE;
        harness.event(Event::PointerButton { pos: at, button: PointerButton::Secondary, pressed, modifiers });
        harness.step();
    }
    harness.run();
}

/// The entry of the menu, not what stands in a panel: the menu is on the canvas.
fn in_menu<'a>(harness: &'a Harness<'_, App>, label: &'a str) -> egui_kittest::Node<'a> {
    let canvas = canvas_rect(harness);
    let mut all = harness.get_all_by_role_and_label(Role::Button, label);
    all.find(|node| canvas.contains(node.rect().center())).expect(label)
}

/// Zooms in on a place of the canvas until all else is off it.
fn zoom_in(harness: &mut Harness<'_, App>, at: Pos2) {
    for _ in 0..2 {
        secondary_click(harness, at);
        harness.get_by_label("Zoom here").click();
        harness.run();
    }
}

/// Where a subject shows, and whether all of it is on the canvas.
fn is_in_view(harness: &mut Harness<'_, App>, subject: &Subject) -> bool {
    let plan = plan(harness);
    let rect = canvas_rect(harness);
    let window = canvas::shown(&plan, rect, harness.state().view_state());
    rect.contains_rect(window.canvas_rect(whereabouts(&plan, subject).unwrap()))
}

#[test]
fn a_chosen_mark_is_brought_into_view_and_one_that_shows_moves_nothing() {
    let mut harness = window();
    let plan = plan(&mut harness);
    let corner =
        plan.marks.iter().find(|mark| matches!(mark.what, MarkWhat::Corner { top: true, left: false }));
    let corner = corner.unwrap().clone();
    let name = words::mark_name(&plan, &corner);
    let choose = |harness: &mut Harness<'_, App>| {
        harness.get_by_role_and_label(Role::Button, &name).click_accesskit();
        harness.run();
    };
    choose(&mut harness);
    assert_eq!(harness.state().session().selected, Some(corner.id.clone()));
    assert!(harness.state().view_state().view.is_none(), "all of the wall shows: nothing has to move");
    let hit = middle(&mut harness, HandleKind::Hit, "hit-1");
    zoom_in(&mut harness, hit);
    assert!(!is_in_view(&mut harness, &corner.id));
    let scale = |harness: &mut Harness<'_, App>| {
        middle(harness, HandleKind::Hit, "hit-1").distance(middle(harness, HandleKind::Hit, "hit-2"))
    };
    let before = scale(&mut harness);
    choose(&mut harness);
    assert!(is_in_view(&mut harness, &corner.id));
    assert!((scale(&mut harness) - before).abs() < 0.1, "a pan is enough");
}

/// The room with a stud behind each hole, so that there is a mark at each.
fn with_studs_behind() -> Job {
    let mut room = room();
    for (index, by) in [(0, 52.0), (1, 68.0)] {
        room.walls[0].hits[index].x.by = inches(by);
        room.walls[0].hits[index].x.from = AcrossDatum::LeftEnd;
    }
    room
}

#[test]
fn what_is_selected_on_the_drawing_is_scrolled_to_and_lit_in_the_list() {
    let mut harness = window_on(Session::new(with_studs_behind(), None));
    harness.run();
    let plan = plan(&mut harness);
    let display = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, display);
    harness.run_steps(60);
    let hole = plan.pieces[0].mount.as_ref().unwrap().holes[1].clone();
    let at = {
        let rect = canvas_rect(&harness);
        canvas::shown(&plan, rect, harness.state().view_state()).pointer_from_wall(hole.place)
    };
    let is_there = |mark: &&Mark| mark.id.to_string().starts_with(&hole.subject.to_string());
    let mark = plan.marks.iter().find(is_there).expect("a mark at the hole");
    // The first row that is lit is that of the hole's fastener, or why it stays empty.
    let first = ["fastener", "left empty"].map(|of| egui::Id::unique((of, hole.subject.to_string())));
    let id = first.into_iter().find(|id| harness.ctx.read_response(*id).is_some()).expect("its row");
    let list = harness.ctx.content_rect();
    let row = |harness: &Harness<'_, App>| harness.ctx.read_response(id).expect("its row").rect;
    let before = row(&harness);
    assert!(before.top() > list.bottom(), "out of sight at first, else this shows nothing");
    harness.hover_at(at);
    harness.step();
    harness.drag_at(at);
    harness.run_steps(20);
    assert_eq!(harness.state().session().selected, Some(hole.subject.clone()));
    // Nothing moves while the hand is down; out of sight it may be left out.
    assert!(harness.ctx.read_response(id).is_none_or(|row| row.rect == before));
    harness.drop_at(at);
    harness.run_steps(90);
    assert!(list.contains_rect(row(&harness)), "{:?}", row(&harness));
    let name = words::mark_name(&plan, mark);
    let mut rows = harness.get_all_by_role_and_label(Role::Button, &name);
    let is_lit = |node: egui_kittest::Node<'_>| {
        node.accesskit_node().toggled() == Some(egui::accesskit::Toggled::True)
    };
    assert!(rows.any(is_lit));
}

#[test]
fn things_are_added_copied_and_taken_out_by_the_menu() {
    let mut harness = window();
    let wall = canvas_rect(&harness);
    let at = middle(&mut harness, HandleKind::Hit, "hit-1") + vec2(0.0, -220.0);
    assert!(wall.contains(at));
    secondary_click(&mut harness, at);
    harness.get_by_label_contains("Add here, on the wall").click();
    harness.run();
    in_menu(&harness, "Outlet").click();
    harness.run();
    let added = job(&harness);
    assert_eq!(added.walls[0].features.len(), 2);
    let id = added.walls[0].features[1].id.clone();
    assert_eq!(harness.state().session().selected, Some(id.whole()));
    let shown = middle(&mut harness, HandleKind::Feature, id.as_str());
    assert!(shown.distance(at) < 12.0, "{shown:?}, asked for at {at:?}");
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0, "the menu is closed");

    secondary_click(&mut harness, shown);
    in_menu(&harness, "Copy").click();
    harness.run();
    assert_eq!(job(&harness).walls[0].features.len(), 3);
    let copy = harness.state().session().selected.clone().unwrap();
    let at = middle(&mut harness, HandleKind::Feature, copy.id.as_str());
    secondary_click(&mut harness, at);
    in_menu(&harness, "Delete").click();
    harness.run();
    assert_eq!(job(&harness).walls[0].features, added.walls[0].features);
    for _ in 0..3 {
        harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
        harness.run();
    }
    assert_eq!(job(&harness), room(), "a step each");
}

#[test]
fn the_menu_opens_by_a_key_and_delete_takes_out() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Hit, "hit-1");
    tap(&mut harness, at);
    harness.key_press_modifiers(Modifiers::SHIFT, Key::F10);
    harness.run();
    harness.get_by_label("Zoom here");
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0);
    tap(&mut harness, at);
    harness.key_press(Key::Delete);
    harness.run();
    let mut same = room();
    same.walls[0].hits.remove(0);
    assert_eq!(job(&harness), same);
}

#[test]
fn after_taping_moves_by_just_so_much_and_lists_the_tapes() {
    let mut harness = window();
    let before = plan(&mut harness);
    harness.get_by_label_contains("After taping").click();
    harness.run();
    let field = harness.get_by_role_and_label(Role::TextInput, "Move by").rect().center();
    tap(&mut harness, field);
    harness.event(Event::Text("1 3/8".to_owned()));
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Left").click();
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), inches(-1.375));
    harness.get_by_label_contains("Move these tapes left 1 3/8");
    let corners = before.marks.iter().filter(|mark| mark.on_tape && mark.stage != Stage::Find);
    let mut count = 0;
    for mark in corners {
        count += 1;
        let name = words::mark_name(&before, mark);
        // Once as a row of the marks, once as a tape.
        assert!(harness.query_all_by_label(&name).count() >= 2, "{name}");
    }
    assert!(count >= 4, "the four corners at least");
    harness.get_by_role_and_label(Role::Button, "Right").click();
    harness.run();
    assert_eq!(job(&harness), room());
}

#[test]
fn tab_walks_pieces_features_and_hits_from_left_to_right_each_with_its_edges() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, at);
    let mut walked = Vec::new();
    for _ in 0..14 {
        let subjects = ["display-1", "display-1.hole-1", "display-1.hole-2", "shelf-1", "shelf-1.left"]
            .into_iter()
            .chain(["shelf-1.right", "shelf-1.bottom", "shelf-1.top", "hit-1", "hit-2"]);
        for subject in subjects {
            let id = canvas::handles::handle_id(&Subject::read(subject).unwrap());
            if harness.ctx.memory(|memory| memory.has_focus(id)) {
                walked.push(subject);
            }
        }
        harness.key_press(Key::Tab);
        harness.run();
    }
    assert_eq!(
        walked,
        [
            "display-1",
            "display-1.hole-1",
            "display-1.hole-2",
            "shelf-1",
            "shelf-1.left",
            "shelf-1.right",
            "shelf-1.bottom",
            "shelf-1.top",
            "hit-1",
            "hit-2",
        ]
    );
}

#[test]
fn a_nudged_hole_moves_its_piece_and_is_no_thing_to_take_out() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, at);
    harness.key_press(Key::Tab);
    harness.run();
    let selected = harness.state().session().selected.clone();
    assert_eq!(selected, Some(Id::new("display-1").part("hole-1")));
    harness.key_press(Key::Delete);
    harness.run();
    assert_eq!(job(&harness), room());
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), inches(1.0 / 16.0));
}

#[test]
fn the_list_of_what_was_measured_opens_a_thing_only_when_the_hand_is_off() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Feature, "shelf-1");
    let opened = |harness: &Harness<'_, App>| harness.query_all_by_label("Stands proud").count();
    press_and_move(&mut harness, at, vec2(0.0, 0.0));
    assert_eq!(harness.state().session().selected, Some(Id::new("shelf-1").whole()));
    assert_eq!(opened(&harness), 0, "the finger is down");
    harness.drop_at(at);
    harness.run();
    assert_eq!(opened(&harness), 1);
}
