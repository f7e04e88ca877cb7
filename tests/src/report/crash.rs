//! Kills a session in the midst of its edits, many times, and takes up what is left: nothing may be torn, and
//! no edit older than two seconds lost.

mod session;

use crate::chance::Chance;
use crate::demo::busiest;
use session::{While, edited, edits_of, now_us};
use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Command, ExitCode, Stdio};
use std::sync::mpsc;
use std::time::{Duration, Instant};
use strikeline::files::home::Home;
use strikeline::files::job_file::read_job;
use strikeline::files::journal::left_overs;
use strikeline::files::save::backup_of;
use strikeline_solver::job::Job;

/// An edit older than this is never lost.
const BOUND_S: f64 = 2.0;
/// How often it is killed where it is not said.
const KILLS: u64 = 100;
/// The seed where it is not said.
const SEED: u64 = 1;
/// The longest that a session lives after its first edit, in milliseconds: half as much again as the bound.
const LONGEST_MS: u64 = 3000;

/// What came of one kill.
struct Killed {
    edits: usize,
    /// The age of the oldest edit that was lost.
    lost_s: Option<f64>,
}

/// `report crash [KILLS [SEED]]`, or the child of it: `report crash child WHILE FOLDER SEED`.
pub(crate) fn report(arguments: &[String]) -> ExitCode {
    let (_, base) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    if let [child, name, folder, seed] = arguments
        && child == "child"
    {
        let (folder, seed) = (Path::new(folder), seed.parse().unwrap_or(SEED));
        let Some(while_) = While::ALL.into_iter().find(|one| one.name() == name) else {
            return ExitCode::from(2);
        };
        return match session::run(&base, &home(folder), &file(folder), while_, seed) {
            Ok(()) => ExitCode::SUCCESS,
            Err(why) => {
                eprintln!("{why}");
                ExitCode::from(2)
            }
        };
    }
    let number = |index: usize, usual: u64| match arguments.get(index) {
        Some(text) => text.parse().map_err(|_| format!("no number: {text}")),
        None => Ok(usual),
    };
    match number(0, KILLS).and_then(|kills| Ok((kills, number(1, SEED)?))) {
        Ok((kills, seed)) => all(&base, kills, seed),
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

fn home(folder: &Path) -> Home {
    Home::at(&folder.join("home"))
}

fn file(folder: &Path) -> std::path::PathBuf {
    folder.join("room.ron")
}

fn all(base: &Job, kills: u64, seed: u64) -> ExitCode {
    println!("crash: {kills} kills, seed {seed} ({} {})", std::env::consts::OS, std::env::consts::ARCH);
    println!("{:>8} {:>6} {:>8} {:>22} {:>8}", "while", "kills", "edits", "oldest edit lost, s", "bound s");
    let mut chance = Chance::of(seed);
    let mut short = Vec::new();
    let mut killed = Vec::new();
    for (kill, while_) in (1..=kills).zip(While::ALL.into_iter().cycle()) {
        match one(base, while_, &mut chance) {
            Ok(one) => killed.push((while_, one)),
            Err(why) => short.push(format!("kill {kill} while {}: {why}", while_.name())),
        }
    }
    for while_ in While::ALL {
        let killed: Vec<&Killed> =
            killed.iter().filter(|(its, _)| *its == while_).map(|(_, killed)| killed).collect();
        let edits: usize = killed.iter().map(|one| one.edits).sum();
        let lost_s = killed.iter().filter_map(|one| one.lost_s).fold(0.0, f64::max);
        println!("{:>8} {:>6} {edits:>8} {lost_s:>22.3} {BOUND_S:>8.1}", while_.name(), killed.len());
        if lost_s > BOUND_S {
            short.push(format!("an edit {lost_s:.3} s old was lost while {}", while_.name()));
        }
    }
    if short.is_empty() {
        println!("crash: all bounds held");
        return ExitCode::SUCCESS;
    }
    println!("crash: short: {}", short.join("; "));
    ExitCode::from(1)
}

/// Runs a session, kills it and takes up what is left.
fn one(base: &Job, while_: While, chance: &mut Chance) -> Result<Killed, String> {
    let folder = tempfile::tempdir().map_err(|why| why.to_string())?;
    let this = std::env::current_exe().map_err(|why| why.to_string())?;
    let mut child = Command::new(this)
        .args(["crash", "child", while_.name()])
        .arg(folder.path())
        .arg(chance.next().to_string())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|why| why.to_string())?;
    let out = child.stdout.take().ok_or("the session says nothing")?;
    let (told, heard) = mpsc::channel();
    let listener = std::thread::spawn(move || {
        for line in BufReader::new(out).lines().map_while(Result::ok) {
            // The last line may be torn: its edit was not told.
            let numbers =
                line.split_once(' ').and_then(|(edit, at)| Some((edit.parse().ok()?, at.parse().ok()?)));
            if told.send(numbers).is_err() {
                return;
            }
        }
    });
    let first = heard.recv_timeout(Duration::from_secs(60));
    std::thread::sleep(Duration::from_millis(chance.below(LONGEST_MS)));
    // Every other one at the moment at which a file begins to change: by chance alone that is hardly ever met.
    if chance.below(2) == 0 {
        wait_for_a_write(&if while_ == While::Saving {
            folder.path().to_owned()
        } else {
            home(folder.path()).journal()
        });
    }
    let killed_us = now_us();
    let ended_itself = child.try_wait().map_err(|why| why.to_string())?.is_some();
    child.kill().and_then(|()| child.wait()).map_err(|why| why.to_string())?;
    if listener.join().is_err() || ended_itself {
        return Err("the session ended by itself".to_owned());
    }
    let edits: Vec<(u64, u128)> = first.into_iter().chain(heard.try_iter()).flatten().collect();
    let recovered = recovered(base, folder.path())?;
    let lost = edits.iter().find(|(edit, _)| *edit > recovered);
    let lost_s = lost.map(|(_, at_us)| killed_us.saturating_sub(*at_us) as f64 / 1e6);
    Ok(Killed { edits: edits.len(), lost_s })
}

/// Waits until anything in a folder is not as it was, though no longer than two seconds.
fn wait_for_a_write(folder: &Path) {
    let seen = || -> Vec<_> {
        let files = std::fs::read_dir(folder).into_iter().flatten().flatten();
        let seen = files.filter_map(|file| {
            let about = file.metadata().ok()?;
            Some((file.file_name(), about.len(), about.modified().ok()?))
        });
        seen.collect()
    };
    let (before, start) = (seen(), Instant::now());
    while seen() == before && start.elapsed() < Duration::from_secs(2) {}
}

/// How many edits are in what can be taken up again or stands in the file, whichever is more; both have to be
/// exactly as an edit left them.
fn recovered(base: &Job, folder: &Path) -> Result<u64, String> {
    let whole = |job: &Job, what: &str| {
        let edit = edits_of(job).ok_or_else(|| format!("{what} is not as any edit left it"))?;
        if *job == edited(base, edit) { Ok(edit) } else { Err(format!("{what} mixes two edits")) }
    };
    let saved = read_job(&file(folder)).map_err(|why| format!("the file is torn: {why}"))?;
    let mut most = whole(&saved.job, "the file")?;
    let backup = backup_of(&file(folder));
    if backup.exists() {
        whole(&read_job(&backup).map_err(|why| format!("the backup is torn: {why}"))?.job, "the backup")?;
    }
    let left = left_overs(&home(folder).journal());
    if let Some(trouble) = left.troubles.first() {
        return Err(trouble.clone());
    }
    if left.unsaved.len() > 1 {
        return Err(format!("one session left {} jobs", left.unsaved.len()));
    }
    for one in &left.unsaved {
        if one.unsaved.path.as_deref() != Some(file(folder).as_path()) {
            return Err("what is left does not know its file".to_owned());
        }
        most = most.max(whole(&one.unsaved.job, "what is left")?);
    }
    Ok(most)
}
