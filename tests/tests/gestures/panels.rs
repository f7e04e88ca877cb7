//! Fields and rows.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::session::Session;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::units::{Length, LengthUnit};
use strikeline_solver::words;

#[test]
fn a_field_writes_what_it_understands_and_keeps_what_it_does_not() {
    let mut harness = window();
    harness.get_by_role_and_label(Role::Button, "Wall").click();
    harness.run();
    let field =
        |harness: &Harness<'_, App>| harness.get_by_role_and_label(Role::TextInput, "Wall width").rect();
    let at = field(&harness).center();
    tap(&mut harness, at);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text("10' 4".to_owned()));
    harness.run();
    assert_eq!(job(&harness).walls[0].width, Some(Length::inches(124.0).quantised()));
    harness.get_by_label("124 in is 3149.6 mm");
    harness.event(Event::Text(" 3/".to_owned()));
    harness.run();
    assert_eq!(
        job(&harness).walls[0].width,
        Some(Length::inches(124.0).quantised()),
        "the last understood stays"
    );
    harness.get_by_label_contains("Not understood.");
    // Elsewhere: what was typed is not lost.
    let corner = canvas_rect(&harness).min + vec2(6.0, 6.0);
    tap(&mut harness, corner);
    harness.get_by_label_contains("Not understood.");
    let shown = harness.get_by_role_and_label(Role::TextInput, "Wall width").value();
    assert_eq!(shown.as_deref(), Some("10' 4 3/"));
}

#[test]
fn choosing_a_mark_selects_what_it_is_about() {
    let mut harness = window();
    let plan = plan(&mut harness);
    let mark = plan.marks.iter().find(|mark| !mark.assumed).expect("a mark");
    let name = words::mark_name(&plan, mark);
    harness.get_by_role_and_label(Role::Button, &name).scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::Button, &name).click();
    harness.run();
    assert_eq!(harness.state().session().selected.as_ref(), Some(&mark.id));
    assert_eq!(job(&harness), room());
}

#[test]
fn without_a_job_the_display_s_width_waits_to_be_typed_and_the_drawing_grows() {
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| App::new(&created.egui_ctx, None));
    harness.run();
    assert_eq!(plan(&mut harness).pieces.len(), 1, "never an empty canvas");
    harness.event(Event::Text("48 1/2".to_owned()));
    harness.run();
    assert_eq!(job(&harness).pieces[0].width, Some(Length::inches(48.5).quantised()));
    let drawn = plan(&mut harness).pieces[0].outline.width();
    assert!((drawn - Length::inches(48.5)).abs() < Length::millimetres(1e-6), "{drawn:?}");
}

#[test]
fn every_demo_job_is_shown_and_not_changed() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let mut shown = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let job = strikeline::files::job_file::read_job(&path).unwrap().job;
        // Wide and narrow: nothing has to be unnamed, asked for again and again, or without a glyph.
        for size in [vec2(1280.0, 800.0), vec2(720.0, 480.0)] {
            let opened = path.clone();
            let mut harness = Harness::builder()
                .with_size(size)
                .build_eframe(|created| App::new(&created.egui_ctx, Some(opened)));
            harness.run();
            assert_eq!(super::room::job(&harness), job, "{}", path.display());
            assert!(!harness.state().session().can_undo(), "{}", path.display());
        }
        shown += 1;
    }
    assert!(shown > 0, "there are demo jobs");
}

#[test]
fn the_same_length_in_another_unit_is_kept_as_it_was_typed() {
    let mut harness = window();
    harness.get_by_role_and_label(Role::Button, "Wall").click();
    harness.run();
    let at = harness.get_by_role_and_label(Role::TextInput, "Wall width").rect().center();
    tap(&mut harness, at);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text("3048 mm".to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    let width = job(&harness).walls[0].width.unwrap();
    assert_eq!((width, width.unit()), (Length::millimetres(3048.0), LengthUnit::Millimetre));
    let shown = harness.get_by_role_and_label(Role::TextInput, "Wall width").value();
    assert_eq!(shown.as_deref(), Some("3048 mm"));
}

#[test]
fn an_answer_to_the_next_probe_is_one_tap_and_the_next_follows() {
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let before =
        strikeline::files::job_file::read_job_text(demo, std::path::Path::new("breakfast")).unwrap().job;
    let mut harness = window_on(Session::new(before.clone(), None));
    harness.run();
    let place = |harness: &mut Harness<'_, App>| {
        harness.state_mut().session_mut().next_probe(true).map(|probe| probe.place)
    };
    let first = place(&mut harness).expect("there is one to begin with");
    harness.get_by_role_and_label(Role::Button, "Wood").scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Wood").click();
    harness.run();
    let after = job(&harness);
    assert_eq!(after.walls[0].hits.len(), before.walls[0].hits.len() + 1);
    let plan = plan(&mut harness);
    let hit = plan.survey.hits.last().unwrap();
    assert_eq!(hit.kind, HitKind::Wood);
    assert!((hit.x - first.x).mm().abs() < 1.0, "where it was to be probed");
    assert_ne!(place(&mut harness), Some(first), "the next is another, or none");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), before, "one step");
    assert_eq!(place(&mut harness), Some(first));
}

#[test]
fn the_verdict_is_over_the_drawing_and_a_fastener_s_row_selects_its_hole() {
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let job = strikeline::files::job_file::read_job_text(demo, std::path::Path::new("room")).unwrap().job;
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    let plan = plan(&mut harness);
    harness.get_by_label(&words::wall_verdict_line(&plan).unwrap());
    let mounted = plan.pieces[0].mount.as_ref().unwrap();
    let first = &mounted.fastening.fasteners[0];
    let name = words::fastener(&plan, first);
    harness.get_by_role_and_label(Role::Button, &name).scroll_to_me();
    harness.run();
    harness.get_by_role_and_label(Role::Button, &name).click();
    harness.run();
    assert_eq!(harness.state().session().selected.as_ref(), Some(&first.subject));
}
