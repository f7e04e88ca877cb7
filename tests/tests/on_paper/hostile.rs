//! Jobs that no paper was made for: pages, or a clear message.

use super::{ABOUT, demo, packed, solved};
use crate::read::Read;
use strikeline::files::job_file::read_job_text;
use strikeline_drawing::pdf::pdf;
use strikeline_drawing::sheet::{About, PaperSize, SheetKind, document};
use strikeline_solver::job::Job;
use strikeline_solver::job::plate::PlateHole;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// A job whose plate has so many holes that there are 300 marks and more.
fn sieve() -> Job {
    let mut job = demo("garden_kitchen");
    let plate = job.mounts[0].plate.as_mut().unwrap();
    for index in 0..300_i32 {
        plate.holes.push(PlateHole {
            id: Id::new(&format!("more-{index}")),
            right: Offset(Length::millimetres(f64::from(index % 60 - 30) * 7.5)),
            down: Length::millimetres(f64::from(index / 60) * 9.0 + 10.0),
            diameter: Some(Length::millimetres(5.0)),
        });
    }
    job
}

#[test]
fn three_hundred_holes_are_all_told_and_drawn() {
    let job = sieve();
    let plans = solved(&job);
    let document = document(&job, &[&plans[0]], &SheetKind::WHOLE_SET, PaperSize::Letter, ABOUT).unwrap();
    let read = Read::of(&pdf(&document).unwrap());
    assert_eq!(read.pages.len(), document.pages.len());
    let text = packed(&read.text);
    for mark in &plans[0].marks {
        let name = words::mark_name(&plans[0], mark);
        assert!(text.contains(&packed(&name)), "{name}");
    }
}

#[test]
fn very_long_names_are_written_in_full() {
    let mut job = demo("garden_kitchen");
    let long = "Long name of a thing that somebody was very fond of ".repeat(12).trim().to_owned();
    job.title = long.clone();
    job.pieces[0].name = Some("Bildschirmhalterungsabdeckung".repeat(12));
    for feature in &mut job.walls[0].features {
        feature.name = Some(long.clone());
    }
    let plans = solved(&job);
    for paper in [PaperSize::Letter, PaperSize::A4] {
        let document = document(&job, &[&plans[0]], &SheetKind::WHOLE_SET, paper, ABOUT).unwrap();
        let read = Read::of(&pdf(&document).unwrap());
        assert!(packed(&read.text).contains(&packed(&long)));
    }
}

#[test]
fn names_in_other_scripts_are_set_or_refused_and_never_boxes() {
    // Latin, Greek and Cyrillic the face has; from right to left, joined and stacked scripts it has not.
    for (name, is_set) in [
        ("Télé du séjour", true),
        ("Οθόνη", true),
        ("Экран", true),
        ("מסך בסלון", false),
        ("شاشة غرفة", false),
        ("स्क्रीन", false),
        ("屏幕", false),
        ("Screen \u{202e}neercs", false),
        ("\u{1f4fa}", false),
    ] {
        let mut job = demo("garden_kitchen");
        job.pieces[0].name = Some(name.to_owned());
        let plans = solved(&job);
        let drawn = document(&job, &[&plans[0]], &[SheetKind::MarkOut], PaperSize::A4, ABOUT);
        match drawn {
            Ok(document) => {
                assert!(is_set, "{name} has no letters in the face");
                let text = packed(&Read::of(&pdf(&document).unwrap()).text);
                assert!(text.contains(&packed(name)), "{name}");
            }
            Err(why) => {
                assert!(!is_set, "{why}");
                assert!(why.to_string().contains("U+") && why.to_string().contains("Latin"), "{why}");
            }
        }
    }
}

#[test]
fn an_accent_that_is_typed_apart_is_set_with_its_letter() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs/garden_kitchen.ron");
    let mut apart = std::fs::read_to_string(path).unwrap();
    for field in ["title", "notes", "name"] {
        apart = apart.replace(&format!("{field}: \""), &format!("{field}: \"E\u{301}cran "));
    }
    let job = read_job_text(&apart, std::path::Path::new("room.ron")).unwrap().job;
    assert!(job.title.contains("E\u{301}"), "{}", job.title);
    let plans = solved(&job);
    let about = About { file: "Ve\u{301}randa.ron", date: "14 fe\u{301}vrier" };
    let document = document(&job, &[&plans[0]], &SheetKind::WHOLE_SET, PaperSize::A4, about).unwrap();
    let text = packed(&Read::of(&pdf(&document).unwrap()).text);
    assert!(
        !text.contains('\u{301}') && text.contains("File:V\u{e9}randa") && text.contains("14f\u{e9}vrier")
    );
    assert!(text.contains(&packed(&job.title.replace("E\u{301}", "\u{c9}"))), "{}", job.title);
}

#[test]
fn a_wall_on_which_nothing_hangs_has_its_sheets() {
    let mut job = demo("garden_kitchen");
    job.walls[0].options.clear();
    job.pieces.clear();
    job.mounts.clear();
    let plans = solved(&job);
    for kind in SheetKind::ALL {
        let document = document(&job, &[&plans[0]], &[kind], PaperSize::A4, ABOUT).unwrap();
        assert!(!document.pages.is_empty() && pdf(&document).is_ok());
    }
}
