//! What a plan asks for next: what its verdict wants, in turn, and no mark before.

use super::{fastening, named, rooms};
use rooms::{plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::finding::{Level, What};
use strikeline_solver::job::Job;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::Next;
use strikeline_solver::plan::mark::Stage;
use strikeline_solver::units::Length;
use strikeline_solver::words;

#[test]
fn what_a_verdict_wants_is_asked_for_in_turn_then_marks() {
    let good = room(&named("flush 30 kg behind 1/2 in board"));
    let mut job = good.clone();
    // Swept, and nobody probed.
    job.walls[0].hits.retain(|hit| hit.kind == HitKind::Wood);
    for (index, hit) in job.walls[0].hits.iter_mut().enumerate() {
        let (kind, out) =
            if index % 2 == 0 { (HitKind::LeftEdge, -5.05) } else { (HitKind::RightEdge, 5.05) };
        (hit.kind, hit.x.by) = (kind, hit.x.by + Length::millimetres(out));
    }
    type Give = fn(&mut Job, &Job);
    let asked: [(&str, Give); 8] = [
        ("Measure the mass of the display.", |job, good| job.pieces[0].mass = good.pieces[0].mass),
        ("Measure the mass of the mount.", |job, good| job.mounts[0].mass = good.mounts[0].mass),
        ("Measure the width, height and depth of the display.", |job, good| {
            job.pieces[0].depth = good.pieces[0].depth;
        }),
        ("Measure how far the piece's back stands off the wall.", |job, good| {
            job.mounts[0].stand_off = good.mounts[0].stand_off;
        }),
        ("Measure the thickness of the plate's sheet.", |job, _| {
            rooms::plate(job).thickness = Some(Length::inches(0.075));
        }),
        ("Measure the thickness in front of the framing.", |job, good| {
            job.walls[0].front = good.walls[0].front.clone();
        }),
        ("Find out what the wall is built of.", |job, good| {
            job.walls[0].framing = good.walls[0].framing.clone();
        }),
        ("Enter fasteners made for this wall.", |job, good| job.kit = good.kit.clone()),
    ];
    job.pieces[0].mass = None;
    job.pieces[0].depth = None;
    (job.mounts[0].mass, job.mounts[0].stand_off) = (None, None);
    rooms::plate(&mut job).thickness = None;
    (job.walls[0].front, job.walls[0].framing) = (None, None);
    job.kit = strikeline_solver::job::kit::Kit::default();
    for (words, give) in asked {
        let now = plan(&job);
        assert_eq!(words::next(&now), words);
        let told = now.findings.iter().find(|finding| finding.what.rule() == "plate_not_known").unwrap();
        assert_eq!((told.level, &told.what), (Level::Caution, &What::PlateNotKnown { if_probed: false }));
        give(&mut job, &good);
    }
    let now = plan(&job);
    let Some(Next::Take(id)) = &now.next else { panic!("{:?}", now.next) };
    let mark = now.marks.iter().find(|mark| mark.id == *id).unwrap();
    // The order of work leads to the probes it wants.
    assert_eq!(mark.stage, Stage::Agree, "{mark:?}");
    let told = now.findings.iter().find(|finding| finding.what.rule() == "plate_not_known").unwrap();
    assert_eq!((told.level, &told.what), (Level::Note, &What::PlateNotKnown { if_probed: true }));

    let now = plan(&good);
    assert_eq!(fastening(&good).verdict.word, Word::Holds);
    assert!(now.findings.iter().all(|finding| !finding.what.rule().starts_with("plate_")), "{now:#?}");
    assert!(words::next(&now).starts_with("Put tape at "), "{}", words::next(&now));
}

#[test]
fn what_is_short_is_to_be_mended_before_a_mark_is_taken() {
    let now = plan(&room(&named("flush 50 kg behind 7/8 in plaster")));
    assert_eq!(now.findings[0].level, Level::Stop);
    assert_eq!(now.next, Some(Next::Mend(0)));
    let asked = "Choose another mount or piece: the display's plate is short: 1.23 of what its fasteners may carry is used.";
    assert_eq!(words::next(&now), asked);
}
