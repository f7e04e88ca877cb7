//! What to bring for each demo is what its chosen options ask for, no more and no less.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use strikeline::files::job_file::read_job;
use strikeline_solver::carry::{Carried, carry};
use strikeline_solver::job::option::Opening;
use strikeline_solver::plan::cable::WayBy;
use strikeline_solver::solve::{chosen_option, solve};
use strikeline_solver::words;

#[test]
fn boxes_are_for_openings_that_are_cut_and_fasteners_for_holes_in_use() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let (mut on_face, mut opened) = (0, 0);
    for entry in std::fs::read_dir(folder).unwrap() {
        let job = read_job(&entry.unwrap().path()).unwrap().job;
        let (mut openings, mut used) = (0, 0);
        for wall in &job.walls {
            let option = chosen_option(wall);
            let plan = solve(&job, &wall.id, option.map(|option| &option.id));
            for piece in &plan.pieces {
                used += piece.mount.as_ref().map_or(0, |mount| mount.fastening.fasteners.len());
                let Some(way) = piece.cable.as_ref().and_then(|cable| cable.way.as_ref()) else { continue };
                on_face += usize::from(way.by == WayBy::OnFace);
                let hanging = option.and_then(|one| one.hangings.iter().find(|one| one.id == piece.hanging));
                for kind in hanging.iter().flat_map(|one| [&one.way.entry_kind, &one.way.exit_kind]) {
                    openings += usize::from(way.by == WayBy::InWall && *kind != Some(Opening::PlainHole));
                }
            }
        }
        let lines = carry(&job, &[]);
        let count = |is: fn(&Carried) -> bool| -> usize {
            lines.iter().filter(|line| is(&line.what)).filter_map(|line| line.count).sum()
        };
        assert_eq!(
            count(|what| matches!(what, Carried::Gang { .. } | Carried::Box(_))),
            openings,
            "{}",
            job.title
        );
        let spares: usize = lines
            .iter()
            .map(|line| if let Carried::Fasteners { spares, .. } = line.what { spares } else { 0 })
            .sum();
        assert_eq!(count(|what| matches!(what, Carried::Fasteners { .. })), used + spares, "{}", job.title);
        assert!(spares * 4 >= used, "one to spare in four");
        opened += openings;
    }
    assert!(on_face > 0 && opened > 0, "{on_face} on the face, {opened} opened");
}

#[test]
fn no_piece_that_hangs_is_left_out_for_want_of_a_fastener() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let mut none_chosen = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let job = read_job(&entry.unwrap().path()).unwrap().job;
        let lines = carry(&job, &[]);
        for wall in &job.walls {
            let plan = solve(&job, &wall.id, None);
            let told: Vec<String> = lines
                .iter()
                .map(|line| format!("{} {}", words::carried(&plan, line), words::carried_why(&plan, line)))
                .collect();
            for piece in &plan.pieces {
                let mount = piece.mount.as_ref().and_then(|mount| job.mount(&mount.id)?.name.clone());
                let names = |line: &&String| {
                    line.contains(&piece.name) || mount.iter().any(|name| line.contains(name))
                };
                assert!(told.iter().any(|line| names(&line)), "{}: {}", job.title, piece.name);
                let is_open = piece.mount.as_ref().is_some_and(|mount| mount.fastening.fasteners.is_empty());
                let is_told = told.iter().any(|line| names(&line) && line.contains("fastener is chosen yet"));
                assert_eq!(is_open, is_told, "{}: {}", job.title, piece.name);
                none_chosen += usize::from(is_open);
            }
        }
    }
    assert!(none_chosen >= 4, "{none_chosen}");
}

#[test]
fn what_is_planned_counts_and_not_what_was_chosen() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs/tall_parlour.ron");
    let job = read_job(std::path::Path::new(path)).unwrap().job;
    let wall = &job.walls[0];
    let of = |name: &str| {
        let option = wall.options.iter().find(|option| option.id.as_str() == name).unwrap();
        solve(&job, &wall.id, Some(&option.id))
    };
    let chosen = chosen_option(wall).unwrap();
    let other = wall.options.iter().find(|option| option.id != chosen.id).unwrap();
    let plan = of(other.id.as_str());
    assert_ne!(carry(&job, &[&plan]), carry(&job, &[]), "another option asks for something else");
    assert_eq!(carry(&job, &[&of(chosen.id.as_str())]), carry(&job, &[]));
    let named = other.name.as_ref().unwrap();
    assert!(words::carried_for(&job, &[&plan]).contains(named), "{named}");
}
