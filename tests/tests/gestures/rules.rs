//! The rules of a piece, chosen in the panel.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::moves::HandleKind;
use strikeline_solver::job::place::{AcrossDatum, UpDown, UprightDatum};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// Chooses an entry of a labelled choice.
fn choose(harness: &mut Harness<'_, App>, label: &str, entry: &str) {
    // The list may have scrolled to what is selected.
    harness.get_by_role_and_label(Role::ComboBox, label).scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::ComboBox, label).click();
    harness.run();
    harness.get_by_role_and_label(Role::Button, entry).click();
    harness.run();
}

fn rules(harness: &Harness<'_, App>) -> (AcrossRule, UprightRule) {
    let hanging = job(harness).walls[0].options[0].hangings[0].clone();
    (hanging.across, hanging.upright)
}

/// By how much the display is off a place, in graduations, either way.
fn off(harness: &mut Harness<'_, App>, from: strikeline_solver::geometry::Point) -> f64 {
    let plan = plan(harness);
    let now = plan.pieces[0].outline.centre();
    (now.x - from.x).mm().abs().max((now.y - from.y).mm().abs()) / plan.style.length_of(1).mm()
}

#[test]
fn every_kind_with_a_value_is_chosen_without_moving_the_piece() {
    let mut harness = window();
    let grip = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, grip, vec2(-47.0, 31.0));
    let from = plan(&mut harness).pieces[0].outline.centre();

    choose(&mut harness, "Sideways", "beside an edge");
    assert!(matches!(rules(&harness).0, AcrossRule::Beside { from: AcrossDatum::LeftEnd, .. }));
    assert!(off(&mut harness, from) <= 0.5 + 1e-6);
    choose(&mut harness, "Edge", "Low shelf's right edge");
    let AcrossRule::Beside { from: edge, .. } = rules(&harness).0 else { panic!("beside") };
    assert_eq!(edge, AcrossDatum::Edge(Id::new("shelf-1").part("right")));
    assert!(off(&mut harness, from) <= 1.0 + 1e-6);

    choose(&mut harness, "Height", "a gap above a thing");
    assert!(matches!(rules(&harness).1, UprightRule::Gap { side: UpDown::Up, .. }));
    assert!(off(&mut harness, from) <= 1.0 + 1e-6);
    choose(&mut harness, "Height", "a height from something");
    choose(&mut harness, "Of", "its top edge");
    choose(&mut harness, "From", "Low shelf's bottom");
    let edge = UprightDatum::Edge(Id::new("shelf-1").part("bottom"));
    let UprightRule::Height { of, from: datum, toward, .. } = rules(&harness).1 else { panic!("a height") };
    assert_eq!((of, datum, toward), (PieceHeight::Top, edge, Some(UpDown::Up)));
    assert!(off(&mut harness, from) <= 2.0 + 1e-6);
    assert_eq!(nudge(&job(&harness)), strikeline_solver::job::option::Nudge::default());

    // The value can be typed, and each choice was a step.
    let field = harness.get_by_role_and_label(Role::TextInput, "Up from it").rect().center();
    tap(&mut harness, field);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text("60".to_owned()));
    harness.run();
    let UprightRule::Height { by, .. } = rules(&harness).1 else { panic!("a height") };
    assert_eq!(by, Length::inches(60.0).quantised());
}

#[test]
fn centred_between_two_edges_and_level_with_an_edge_are_chosen() {
    let mut harness = window();
    choose(&mut harness, "Sideways", "centred between two edges");
    assert_eq!(rules(&harness).0, AcrossRule::Between(AcrossDatum::LeftEnd, AcrossDatum::RightEnd));
    choose(&mut harness, "And", "Low shelf's left edge");
    let left = AcrossDatum::Edge(Id::new("shelf-1").part("left"));
    assert_eq!(rules(&harness).0, AcrossRule::Between(AcrossDatum::LeftEnd, left));
    // Halfway from the corner to 80 in.
    let middle = plan(&mut harness).pieces[0].outline.centre().x;
    assert!((middle - Length::inches(40.0)).abs() < Length::millimetres(1e-6), "{middle:?}");

    choose(&mut harness, "Height", "level with an edge");
    // What is nearest to level at first: the display's lower edge and the shelf's top.
    let aligned = |part: &str| {
        let with = Id::new("shelf-1").part(part);
        UprightRule::Aligned { of: PieceHeight::Bottom, with }
    };
    assert_eq!(rules(&harness).1, aligned("top"));
    choose(&mut harness, "With", "Low shelf's bottom");
    assert_eq!(rules(&harness).1, aligned("bottom"));
    let bottom = plan(&mut harness).pieces[0].outline.bottom;
    assert!((bottom - Length::inches(20.0)).abs() < Length::millimetres(1e-6), "{bottom:?}");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(rules(&harness).1, aligned("top"), "a choice is a step of its own");
    choose(&mut harness, "Of", "its top edge");
    assert!(matches!(rules(&harness).1, UprightRule::Aligned { of: PieceHeight::Top, .. }));
}
