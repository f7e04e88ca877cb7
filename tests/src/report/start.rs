//! From start to the first painted frame, and the memory then: the window on the busiest demo, beside an empty
//! window of the same renderer: one panel with nothing on it, so that the renderer begins its work in both. Needs a
//! display.

use crate::demo::{busiest, machine, median, verdict};
use std::io::{BufRead as _, BufReader};
use std::path::PathBuf;
use std::process::{Command, ExitCode, Stdio};
use std::time::Instant;
use strikeline::app::{App, native_options};

/// Start to first frame, beside an empty window, at most.
const START_BOUND: f64 = 1.3;
/// Memory, beside an empty window, at most.
const MEMORY_BOUND: f64 = 1.5;
/// How often each window is opened, in turn.
const RUNS: usize = 21;

/// Prints the table and says whether the bounds held.
pub(crate) fn report() -> ExitCode {
    let (path, job) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    println!("start: {} ({}), median of {RUNS}", job.title, machine());
    let mut figures = [(Vec::new(), Vec::new()), (Vec::new(), Vec::new())];
    for _ in 0..RUNS {
        for (which, (times, memories)) in ["empty", "window"].iter().zip(&mut figures) {
            match opened(which, &path) {
                Ok((ms, kib)) => {
                    times.push(ms);
                    memories.push(kib);
                }
                Err(why) => {
                    eprintln!("start: no figure, a display is needed: {why}");
                    return ExitCode::from(2);
                }
            }
        }
    }
    let [(empty_ms, empty_kib), (window_ms, window_kib)] =
        figures.map(|(times, memories)| (median(times), median(memories)));
    println!("{:>10} {:>14} {:>12}", "", "first frame ms", "memory MiB");
    println!("{:>10} {empty_ms:>14.0} {:>12.1}", "empty", empty_kib / 1024.0);
    println!("{:>10} {window_ms:>14.0} {:>12.1}", "window", window_kib / 1024.0);
    let (slower, larger) = (window_ms / empty_ms, window_kib / empty_kib);
    println!("{:>10} {slower:>14.2} {larger:>12.2}", "ratio");
    println!("{:>10} {START_BOUND:>14.2} {MEMORY_BOUND:>12.2}", "bound");
    let mut short = Vec::new();
    if slower > START_BOUND {
        short.push("first frame".to_owned());
    }
    if larger > MEMORY_BOUND {
        short.push("memory".to_owned());
    }
    verdict("start", &short)
}

/// Starts this program again as a window; its time to the first frame in ms and its memory in KiB.
fn opened(which: &str, job: &PathBuf) -> Result<(f64, f64), String> {
    let own = std::env::current_exe().map_err(|why| why.to_string())?;
    let begin = Instant::now();
    let mut child = Command::new(own)
        .args(["start-child", which])
        .arg(job)
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|why| why.to_string())?;
    let mut line = String::new();
    if let Some(out) = child.stdout.take() {
        BufReader::new(out).read_line(&mut line).map_err(|why| why.to_string())?;
    }
    let ms = begin.elapsed().as_secs_f64() * 1000.0;
    let status = child.wait().map_err(|why| why.to_string())?;
    let kib: f64 =
        line.trim().parse().map_err(|_| format!("the {which} window painted nothing ({status})"))?;
    Ok((ms, kib))
}

/// The child: a window that ends after its first painted frame and prints its memory in KiB.
pub(crate) fn child(which: Option<&str>, job: Option<PathBuf>) -> ExitCode {
    let is_empty = which == Some("empty");
    let create: eframe::AppCreator<'_> = Box::new(move |created| {
        let app: Option<App> = (!is_empty).then(|| App::new(&created.egui_ctx, job));
        Ok(Box::new(Once { app, frames: 0 }))
    });
    match eframe::run_native("strikeline", native_options(), create) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

/// An app, or none, that closes once its first frame is painted.
struct Once {
    app: Option<App>,
    frames: u8,
}

impl eframe::App for Once {
    fn logic(&mut self, context: &egui::Context, frame: &mut eframe::Frame) {
        // The second frame begins when the first is on the screen.
        if self.frames == 1 {
            println!("{}", memory_kib());
            context.send_viewport_cmd(egui::ViewportCommand::Close);
        }
        self.frames = self.frames.saturating_add(1);
        context.request_repaint();
        if let Some(app) = &mut self.app {
            app.logic(context, frame);
        }
    }

    fn ui(&mut self, ui: &mut egui::Ui, frame: &mut eframe::Frame) {
        match &mut self.app {
            Some(app) => app.ui(ui, frame),
            None => {
                egui::CentralPanel::default().show(ui, |_| {});
            }
        }
    }
}

/// What this process holds of the machine's memory, by the kernel; 0 where it does not say.
fn memory_kib() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    line.and_then(|line| line.trim().trim_end_matches("kB").trim().parse().ok()).unwrap_or(0)
}
