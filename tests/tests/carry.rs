//! What to bring for each demo is what its chosen options ask for, no more and no less.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use strikeline::files::job_file::read_job;
use strikeline_solver::carry::{Carried, CarryLine, carry};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{FastenerKind, FastenerStock, MeasureKind};
use strikeline_solver::job::option::Opening;
use strikeline_solver::job::wall::ControlLine;
use strikeline_solver::plan::cable::WayBy;
use strikeline_solver::plan::mark::{How, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::plan::piece::Meets;
use strikeline_solver::plan::verdict::EmptyWhy;
use strikeline_solver::solve::{chosen_option, solve};
use strikeline_solver::subject::Id;
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

/// What a demo asks for with its kit changed.
fn lines_of(name: &str, change: impl FnOnce(&mut Job)) -> (Job, Vec<CarryLine>) {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let mut job = read_job(&std::path::Path::new(folder).join(name)).unwrap().job;
    change(&mut job);
    let lines = carry(&job, &[]);
    (job, lines)
}

fn all_demos() -> Vec<String> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let entries = std::fs::read_dir(folder).unwrap();
    entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn what_readings_and_heavy_plates_ask_for_is_told_where_they_ask_and_only_there() {
    let mut seen = [0; 2];
    for name in all_demos() {
        let (job, lines) = lines_of(&name, |job| {
            job.kit.measures.retain(|one| one.kind == MeasureKind::DistanceMeter);
            if let Some(wall) = job.walls.first_mut() {
                wall.control_line = wall.control_line.map(|_| ControlLine::LaserTicks);
            }
        });
        let plans: Vec<_> = job.walls.iter().map(|wall| solve(&job, &wall.id, None)).collect();
        let lines = if plans.is_empty() { lines } else { carry(&job, &plans.iter().collect::<Vec<_>>()) };
        let marks = || plans.iter().flat_map(|plan| &plan.marks).filter(|mark| mark.is_needed);
        let readings = |from: fn(&Reading) -> bool| {
            marks().flat_map(|mark| &mark.readings).filter(|reading| from(reading)).count()
        };
        let of_line = readings(|one| one.from == ReadingDatum::ControlLine);
        let held = marks().any(|mark| matches!(mark.what, MarkWhat::Hole { first: true, held: true, .. }));
        let told = |is: fn(&Carried) -> bool| lines.iter().find(|line| is(&line.what));
        let line = told(|what| matches!(what, Carried::LineLaser | Carried::LaserOrWaterLevel));
        assert_eq!(line.is_some(), of_line > 0, "{name}");
        if let Some(line) = line {
            let counts = !job.kit.measures.is_empty();
            assert_eq!(line.short_by, counts.then_some(1), "{name}: the kit has no laser");
        }
        assert_eq!(told(|what| *what == Carried::Ledger).is_some(), held, "{name}");
        for (count, is) in seen.iter_mut().zip([of_line > 0, held]) {
            *count += usize::from(is);
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

#[test]
fn anchors_are_for_holes_over_board_of_a_plate_that_holds_and_told_to_count_for_nothing() {
    let mut told = 0;
    for name in all_demos() {
        let anchor = |count| FastenerStock {
            id: Id::new("anchor-99"),
            kind: FastenerKind::Anchor,
            diameter: None,
            length: None,
            head: None,
            washer: None,
            count: Some(count),
            to_standard: None,
            report: None,
        };
        let (job, lines) = lines_of(&name, |job| {
            job.kit.fasteners.retain(|stock| stock.kind != FastenerKind::Anchor);
            job.kit.fasteners.push(anchor(1));
        });
        let plans: Vec<_> = job
            .walls
            .iter()
            .map(|wall| solve(&job, &wall.id, chosen_option(wall).map(|option| &option.id)))
            .collect();
        let mounts = plans.iter().flat_map(|plan| &plan.pieces).filter_map(|piece| piece.mount.as_ref());
        let over_board: usize = mounts
            .filter(|mount| !mount.fastening.fasteners.is_empty())
            .flat_map(|mount| &mount.fastening.left_empty)
            .filter(|empty| empty.why == EmptyWhy::Meets(Meets::Board))
            .count();
        let line = lines.iter().find(|line| matches!(line.what, Carried::Anchors { .. }));
        assert_eq!(line.is_some(), over_board > 0, "{name}");
        let Some(line) = line else { continue };
        let needed = over_board + over_board.div_ceil(4);
        assert_eq!((line.count, line.short_by), (Some(needed), Some(needed - 1)), "{name}");
        let why = words::carried_why(&plans[0], line);
        assert!(why.contains("anchors in board count for nothing; the kit lacks"), "{why}");
        told += 1;
    }
    assert!(told > 0);
}

/// Of each thing that is brought, by how many the kit falls short.
fn short_of(lines: &[CarryLine], what: &Carried) -> Option<Option<usize>> {
    lines.iter().find(|line| line.what == *what).map(|line| line.short_by)
}

#[test]
fn small_parts_that_the_kit_counts_are_told_where_they_run_short() {
    let (mut job, _) = lines_of("breakfast_room.ron", |_| {});
    let mut plan = solve(&job, &job.walls[0].id, None);
    let cable = plan.pieces.iter_mut().find_map(|piece| piece.cable.as_mut()).unwrap();
    let way = cable.way.as_mut().unwrap();
    (way.cost.studs_bored, way.cost.patches) = (1, 3);
    cable.stud = None;
    for (nail_plates, patches, lacks) in
        [(None, None, [None, None]), (Some(2), Some(3), [None, None]), (Some(1), Some(1), [Some(1), Some(2)])]
    {
        (job.kit.nail_plates, job.kit.patches) = (nail_plates, patches);
        let lines = carry(&job, &[&plan]);
        let told = [Carried::NailPlates, Carried::Patch].map(|what| short_of(&lines, &what).unwrap());
        assert_eq!(told, lacks);
    }
    let lines = carry(&job, &[&plan]);
    let patch = lines.iter().find(|line| line.what == Carried::Patch).unwrap();
    assert!(words::carried_why(&plan, patch).ends_with("; the kit lacks it for two of them."));
}

#[test]
fn a_distance_meter_is_told_where_a_reading_is_taken_by_it() {
    let (mut job, lines) = lines_of("breakfast_room.ron", |_| {});
    assert_eq!(short_of(&lines, &Carried::DistanceMeter), None);
    let mut plan = solve(&job, &job.walls[0].id, None);
    let reading = plan.marks.iter_mut().find(|mark| mark.is_needed && !mark.readings.is_empty()).unwrap();
    reading.readings[0].how = How::Meter;
    job.kit.measures.retain(|one| one.kind == MeasureKind::Tape);
    assert_eq!(short_of(&carry(&job, &[&plan]), &Carried::DistanceMeter), Some(Some(1)));
    job.kit.measures.clear();
    assert_eq!(short_of(&carry(&job, &[&plan]), &Carried::DistanceMeter), Some(None), "nobody counted");
}
