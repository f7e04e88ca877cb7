//! Every field that a job's file can hold has its field in an editor.

use super::*;
use serde_json::Value;
use std::collections::BTreeSet;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::solve::solve;

/// A job in which every field of every thing is filled.
const FULL: &str = include_str!("full_job.ron");

fn full() -> Job {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(FULL).unwrap()
}

/// Every name under which a thing holds a value, as `id path`.
fn names_in_file(value: &Value, id: &str, path: &str, names: &mut BTreeSet<String>) {
    match value {
        Value::Object(fields) => {
            let own = fields.get("id").and_then(Value::as_str);
            let (id, path) = own.map_or((id, path), |own| (own, ""));
            for (name, field) in fields.iter().filter(|(name, _)| *name != "id") {
                let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
                names_in_file(field, id, &path, names);
            }
        }
        Value::Array(entries) if entries.iter().any(Value::is_object) => {
            for entry in entries {
                names_in_file(entry, id, path, names);
            }
        }
        Value::Null => panic!("{id} {path} is not filled"),
        _ => {
            names.insert(format!("{id} {path}"));
        }
    }
}

/// What no editor has to show: what the program keeps for itself, what was done at the wall, where things hung when
/// they were agreed to, and where a piece goes, which is the placement's.
fn is_elsewhere(name: &str) -> bool {
    let of_the_file = ["the-job format", "the-job last_id"];
    let of_placement = [" across", " upright", " nudge"]
        .iter()
        .any(|rule| name.strip_prefix("hanging-").is_some_and(|rest| rest.contains(rule)));
    of_the_file.contains(&name)
        || of_placement
        || name.starts_with("fact-")
        || name.starts_with("picture-")
        || name.contains(" agreed.places")
}

/// Every field that the editors show of a job.
fn shown(job: &Job) -> BTreeSet<String> {
    let plan = solve(job, &job.walls[0].id, None);
    let mut edited = job.clone();
    let around = Around::new(job, &plan);
    let context = egui::Context::default();
    crate::theme::install(&context);
    // What is folded away too.
    context.memory_mut(|memory| memory.set_everything_is_visible(true));
    for _ in 0..2 {
        let mut output = context.run_ui(egui::RawInput::default(), |ui| {
            for piece in &mut edited.pieces {
                for port in piece.ports.clone() {
                    super::piece(ui, &around, piece, Some(&port.id));
                }
            }
            edited.mounts.iter_mut().for_each(|mount| super::mount(ui, &around, mount));
            for wall in &mut edited.walls {
                show_wall(ui, &around, wall);
            }
            let kit = &mut edited.kit;
            kit.fasteners.iter_mut().for_each(|one| fastener(ui, &around, one));
            kit.bits.iter_mut().for_each(|one| drill_bit(ui, &around, one));
            kit.cables.iter_mut().for_each(|one| cable_stock(ui, &around, one));
            kit.boxes.iter_mut().for_each(|one| box_stock(ui, &around, one));
            kit.measures.iter_mut().for_each(|one| measure(ui, &around, one));
            super::small_parts(ui, &around, &Id::new("the-job"), kit);
            super::job(ui, &around, &Id::new("the-job"), &mut edited);
        });
        output.textures_delta.clear();
    }
    assert_eq!(edited, *job, "showing changes nothing");
    around.shown.into_inner()
}

fn show_wall(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    super::wall(ui, around, wall);
    wall.floor.iter_mut().for_each(|one| floor_reading(ui, around, one));
    wall.flatness.iter_mut().for_each(|one| flatness_reading(ui, around, one));
    wall.features.iter_mut().for_each(|one| feature(ui, around, one));
    wall.hidden.iter_mut().for_each(|one| hidden(ui, around, one));
    wall.hits.iter_mut().for_each(|one| hit(ui, around, one));
    wall.seats.iter_mut().for_each(|one| seat(ui, around, one));
    for id in wall.options.iter().map(|option| option.id.clone()).collect::<Vec<_>>() {
        option(ui, around, wall, &id);
    }
}

#[test]
fn every_field_of_a_job_can_be_edited() {
    let job = full();
    let mut names = BTreeSet::new();
    names_in_file(&serde_json::to_value(&job).unwrap(), "the-job", "", &mut names);
    let shown = shown(&job);
    let forgotten: Vec<_> =
        names.iter().filter(|name| !shown.contains(*name) && !is_elsewhere(name)).collect();
    assert!(forgotten.is_empty(), "no editor shows {forgotten:#?}");
    assert!(names.len() > 150, "the job is full: {}", names.len());
}

/// The names of the fields of the job's types, read where they are declared.
fn declared() -> BTreeSet<String> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../solver/src/job");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.push(std::path::PathBuf::from(format!("{folder}.rs")));
    let mut names = BTreeSet::new();
    // Of facts nothing is filled: they are ticked at the wall. Of ids there are no fields.
    files.retain(|file| !file.ends_with("fact.rs") && !file.ends_with("ids.rs"));
    for file in files {
        let text = std::fs::read_to_string(&file).unwrap();
        let is_in_file = |line: &&str| !line.contains('(') && !line.starts_with("const ");
        let fields = text.lines().filter_map(|line| line.strip_prefix("    pub ")).filter(is_in_file);
        names.extend(fields.filter_map(|line| line.split_once(": ")).map(|(name, _)| name.to_owned()));
    }
    names
}

#[test]
fn the_full_job_has_every_field_that_is_declared() {
    for name in declared().iter().filter(|name| *name != "facts") {
        assert!(FULL.contains(&format!("{name}: ")), "{name} is not filled in the full job");
    }
}
