//! A window without a screen, in a home of its own.

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use strikeline::app::App;
use strikeline::files::home::Home;
use strikeline::files::save::save_job;
use strikeline_solver::job::Job;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::units::Length;

/// A folder with a job in it, and a home beside it.
pub(crate) struct Place {
    folder: tempfile::TempDir,
}

impl Place {
    pub(crate) fn new() -> Self {
        let place = Self { folder: tempfile::tempdir().unwrap() };
        save_job(&room("Den"), &place.job(), None).unwrap();
        place
    }

    /// The job's file.
    pub(crate) fn job(&self) -> PathBuf {
        self.folder.path().join("den.ron")
    }

    pub(crate) fn home(&self) -> Home {
        Home::at(&self.folder.path().join("home"))
    }

    pub(crate) fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// A window on a file, at home here.
    pub(crate) fn window(&self, path: Option<PathBuf>) -> Harness<'static, App> {
        let home = self.home();
        let mut harness = Harness::builder()
            .with_size(vec2(1280.0, 800.0))
            .with_step_dt(1.0 / 60.0)
            // What is read beside the window wakes it a few times more.
            .with_max_steps(64)
            .build_eframe(move |created| App::new(&created.egui_ctx, path).at_home(&created.egui_ctx, &home));
        harness.run();
        harness
    }

    /// What the journal holds.
    pub(crate) fn entries(&self) -> Vec<PathBuf> {
        let files = std::fs::read_dir(self.home().journal()).into_iter().flatten().flatten();
        let files = files.map(|file| file.path());
        files.filter(|path| path.extension().is_some_and(|its| its == "ron")).collect()
    }

    /// Waits until unsaved work is kept, or not kept any more.
    pub(crate) fn wait_for_entries(&self, count: usize) {
        let start = Instant::now();
        while self.entries().len() != count {
            assert!(start.elapsed() < Duration::from_secs(2), "{:?}", self.entries());
            std::thread::sleep(Duration::from_millis(5));
        }
    }
}

/// A job with a wall.
pub(crate) fn room(title: &str) -> Job {
    let wall = Wall { width: Some(Length::inches(120.0)), ..Wall::default() };
    let mut job = Job { title: title.into(), walls: vec![wall], ..Job::new() };
    job.complete_ids().unwrap();
    job
}

/// Changes the width of the wall, as a field would.
pub(crate) fn edit(harness: &mut Harness<'_, App>, inches: f64) {
    harness.state_mut().session_mut().job.walls[0].width = Some(Length::inches(inches));
    harness.run();
}

pub(crate) fn width(harness: &Harness<'_, App>) -> Option<Length> {
    harness.state().session().job.walls[0].width
}

/// The window's program killed: nothing is done in order any more.
pub(crate) fn killed(harness: Harness<'_, App>) {
    drop(harness);
}

pub(crate) fn press(harness: &mut Harness<'_, App>, label: &str) {
    harness.get_all_by_role_and_label(Role::Button, label).last().unwrap().click();
    harness.run();
}

/// Asks for another file to save to, as a window too narrow for its button has it.
pub(crate) fn save_as(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    harness.run();
}

pub(crate) fn keys(harness: &mut Harness<'_, App>, key: Key) {
    harness.key_press_modifiers(Modifiers::COMMAND, key);
    harness.run();
}

/// Types into the field that has the focus, in place of what it holds.
pub(crate) fn type_over(harness: &mut Harness<'_, App>, text: &str) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text(text.to_owned()));
    harness.run();
}

/// Asks the window to close, as its frame's button does; whether it goes on with that.
pub(crate) fn closes(harness: &mut Harness<'_, App>) -> bool {
    harness
        .input_mut()
        .viewports
        .entry(egui::ViewportId::ROOT)
        .or_default()
        .events
        .push(egui::ViewportEvent::Close);
    harness.step();
    let commands = &harness.output().viewport_output[&egui::ViewportId::ROOT].commands;
    let closes = !commands.contains(&egui::ViewportCommand::CancelClose);
    harness.input_mut().viewports.entry(egui::ViewportId::ROOT).or_default().events.clear();
    harness.run();
    closes
}

/// Whether something with this in its name is shown.
pub(crate) fn shows(harness: &Harness<'_, App>, part: &str) -> bool {
    harness.query_all_by_label_contains(part).next().is_some()
}
