//! A hole of a plate chosen by hand: under its row, and by the menu on the drawing; a step each.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, PointerButton};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::framing::{Concrete, Front, WallFraming};
use strikeline_solver::job::kit::{FastenerKind, FastenerStock};
use strikeline_solver::job::option::{ByHand, Wanted};
use strikeline_solver::job::place::AcrossDatum;
use strikeline_solver::job::plate::PlateSlot;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::verdict::EmptyWhy;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Length, Mass};

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

/// The room with a stud behind each hole and a lag on the truck.
fn with_lags() -> Job {
    let mut room = room();
    for (index, by) in [(0, 52.0), (1, 68.0)] {
        room.walls[0].hits[index].x.by = inches(by);
        room.walls[0].hits[index].x.from = AcrossDatum::LeftEnd;
    }
    room.kit.fasteners = vec![FastenerStock {
        id: Id::new("fastener-1"),
        kind: FastenerKind::Lag,
        diameter: Some(inches(0.3125)),
        length: Some(inches(3.0)),
        head: Some(inches(0.5)),
        washer: Some(inches(0.0)),
        count: None,
        to_standard: None,
        report: None,
    }];
    room
}

fn hole() -> Subject {
    Subject::read("display-1.hole-2").unwrap()
}

fn chosen(harness: &Harness<'_, App>) -> Vec<ByHand> {
    job(harness).walls[0].options[0].hangings[0].holes.clone()
}

fn is_used(harness: &mut Harness<'_, App>) -> bool {
    let plan = plan(harness);
    plan.pieces[0].mount.as_ref().unwrap().fastening.fasteners.iter().any(|one| one.subject == hole())
}

fn undo(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
}

#[test]
fn under_the_row_of_a_selected_hole_it_is_left_used_and_given_back() {
    let mut harness = window_on(Session::new(with_lags(), None));
    harness.run();
    assert!(is_used(&mut harness) && chosen(&harness).is_empty());
    assert_eq!(harness.query_all_by_role_and_label(Role::Button, "Leave empty").count(), 0, "of no hole yet");
    harness.state_mut().session_mut().selected = Some(hole());
    harness.run_steps(60);
    let press = |harness: &mut Harness<'_, App>, label: &str| {
        harness.get_by_role_and_label(Role::Button, label).scroll_to_me();
        harness.run();
        harness.get_by_role_and_label(Role::Button, label).click();
        harness.run_steps(30);
    };
    press(&mut harness, "Leave empty");
    let empty = ByHand { hole: Id::new("hole-2"), wanted: Wanted::Empty, along: None };
    assert_eq!(chosen(&harness), [empty]);
    assert!(!is_used(&mut harness));
    assert!(harness.query_all_by_label_contains("Hole 2 stays empty: your choice.").count() > 0);
    let told = plan(&mut harness);
    let left = &told.pieces[0].mount.as_ref().unwrap().fastening.left_empty;
    assert!(left.iter().any(|one| one.why == EmptyWhy::ByHand));

    press(&mut harness, "Use with lag screw 5/16\" x 3\"");
    let with = Wanted::UsedWith(Id::new("fastener-1"));
    assert_eq!(chosen(&harness), [ByHand { hole: Id::new("hole-2"), wanted: with.clone(), along: None }]);
    assert!(is_used(&mut harness));
    press(&mut harness, "Use");
    assert_eq!(chosen(&harness)[0].wanted, Wanted::Used);
    press(&mut harness, "As the plan likes");
    assert!(chosen(&harness).is_empty());

    undo(&mut harness);
    assert_eq!(chosen(&harness)[0].wanted, Wanted::Used);
    undo(&mut harness);
    assert_eq!(chosen(&harness)[0].wanted, with);
    undo(&mut harness);
    assert_eq!(chosen(&harness)[0].wanted, Wanted::Empty);
    undo(&mut harness);
    assert_eq!(job(&harness), with_lags(), "a step each");
}

#[test]
fn the_menu_on_a_hole_offers_the_same() {
    let mut harness = window_on(Session::new(with_lags(), None));
    harness.run();
    let display = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, display);
    let told = plan(&mut harness);
    let place = told.pieces[0].mount.as_ref().unwrap().holes[1].place;
    let rect = canvas_rect(&harness);
    let at = canvas::shown(&told, rect, harness.state().view_state()).pointer_from_wall(place);
    harness.hover_at(at);
    harness.step();
    for pressed in [true, false] {
        let modifiers = Modifiers::NONE;
        harness.event(Event::PointerButton { pos: at, button: PointerButton::Secondary, pressed, modifiers });
        harness.step();
    }
    harness.run();
    assert_eq!(harness.state().session().selected, Some(hole()));
    let canvas = canvas_rect(&harness);
    let entry = {
        let mut all = harness.get_all_by_role_and_label(Role::Button, "Leave empty");
        all.find(|node| canvas.contains(node.rect().center())).expect("an entry of the menu").rect().center()
    };
    tap(&mut harness, entry);
    assert_eq!(chosen(&harness), [ByHand { hole: Id::new("hole-2"), wanted: Wanted::Empty, along: None }]);
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0, "the menu is closed");
    undo(&mut harness);
    assert_eq!(job(&harness), with_lags());
}

/// A heavy display on bare concrete, by two holes and a long slot: the plan puts a fastener in the slot's middle, and
/// at its outer end it holds more.
fn with_a_slot() -> Job {
    let mut room = with_lags();
    let mm = Length::millimetres;
    room.pieces[0].mass = Some(Mass::kilograms(51.0));
    room.walls[0].framing =
        Some(WallFraming::Concrete(Concrete { strength: None, normal_weight: Some(true) }));
    room.walls[0].front = Some(Front { layers: Vec::new(), thickness: Some(mm(0.0)) });
    let stock = &mut room.kit.fasteners[0];
    (stock.kind, stock.diameter, stock.length) =
        (FastenerKind::ConcreteScrew, Some(inches(0.25)), Some(inches(2.25)));
    let mount = &mut room.mounts[0];
    (mount.mass, mount.stand_off) = (Some(Mass::kilograms(0.0)), Some(mm(40.0)));
    let plate = mount.plate.as_mut().unwrap();
    plate.thickness = Some(inches(0.075));
    plate.solids[0].height = mm(340.0);
    for (hole, (right, down)) in plate.holes.iter_mut().zip([(203.0, 150.0), (197.0, 200.0)]) {
        (hole.right, hole.down, hole.diameter) = (Offset(mm(right)), mm(down), Some(inches(0.375)));
    }
    plate.slots = vec![PlateSlot {
        id: Id::new("slot-1"),
        right: Offset(mm(-209.0)),
        down: mm(290.0),
        travel: mm(78.0),
        upright: false,
        width: Some(inches(0.375)),
    }];
    room
}

#[test]
fn a_better_choice_is_offered_and_taken_as_choices_by_hand() {
    let mut harness = window_on(Session::new(with_a_slot(), None));
    harness.run_steps(60);
    let before = plan(&mut harness);
    harness.get_by_label_contains("Another choice of holes leaves more in reserve");
    harness.get_by_role_and_label(Role::Button, "Take this choice").scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Take this choice").click();
    harness.run_steps(60);
    let by_hand = chosen(&harness);
    assert_eq!(by_hand.len(), 3, "every hole of the plate");
    let slot = by_hand.iter().find(|one| one.hole == Id::new("slot-1")).unwrap();
    let along = slot.along.unwrap().length();
    assert_eq!(along.abs(), Length::millimetres(39.0), "at one of its ends");
    let after = plan(&mut harness);
    let mounted = |plan: &Plan| plan.pieces[0].mount.clone().unwrap();
    assert_eq!(mounted(&after).holes[2].in_plate.x - mounted(&before).holes[2].in_plate.x, along);
    let used = |plan: &Plan| mounted(plan).fastening.verdict.governing.unwrap().used;
    assert!(used(&after) < used(&before), "{} {}", used(&after), used(&before));
    assert!(mounted(&after).fastening.fasteners.iter().all(|one| one.by_hand));
    assert_eq!(harness.query_all_by_role_and_label(Role::Button, "Take this choice").count(), 0);
    undo(&mut harness);
    assert_eq!(job(&harness), with_a_slot(), "one step");
}
