//! How far the fasteners of the ordinary installs reach, by hand and by whole solves on both sides of each limit.

use super::{fastening, named, rooms};
use rooms::{installs, plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::job::Job;
use strikeline_solver::limits::{Limits, limits};
use strikeline_solver::units::{Force, Length, Mass};

fn found(job: &Job) -> Option<Limits> {
    limits(job, &plan(job), &rooms::id("display-1"))
}

fn with_mass(job: &Job, kg: f64) -> Job {
    let mut job = job.clone();
    job.pieces[0].mass = Some(Mass::kilograms(kg));
    job
}

fn with_pull(job: &Job, n: f64) -> Job {
    let mut job = job.clone();
    job.settings.pull = Some(Force::newtons(n));
    job
}

fn with_reach(job: &Job, mm: f64) -> Job {
    let mut job = job.clone();
    job.mounts[0].arm.as_mut().unwrap().reach = Some(Length::millimetres(mm));
    job
}

#[test]
fn limits_are_what_the_hand_finds() {
    // One lag carries 536 N. Pulled down at an end: (9.80665 m + 220)/4 + 220 x 725/(4 x 203) = 536, so that 9.80665 m
    // = 4 x (536 - 196.4) - 220 = 1138 N: 116 kg; and with 294.2 N, (294.2 + P)/4 + 0.8929 P = 536: P = 405 N.
    let told = found(&room(&named("flush 30 kg behind 1/2 in board"))).unwrap();
    let (mass, pull) = (told.mass.unwrap(), told.pull.unwrap());
    assert!((mass.most.kg() - 116.0).abs() < 1.0 && !mass.is_end, "{told:?}");
    assert!((pull.most.n() - 405.0).abs() < 2.0 && !pull.is_end, "{told:?}");
    assert_eq!(told.reach, None, "nothing comes out of the wall");
    // Swung flat to one side and pulled at its far end: 514.2/6 + (294.2 (r + 30) + 220 (r + 30 + 725))/(6 x 203) =
    // 536: 514.2 (r + 30) = 548,460 - 159,500 = 388,960, so that r = 726 mm.
    let told = found(&room(&named("arm 500 mm, 30 kg, six in three rows"))).unwrap();
    assert!((told.reach.unwrap().most.mm() - 726.0).abs() < 3.0, "{told:?}");
}

#[test]
fn at_its_limit_an_ordinary_install_holds_and_a_step_above_it_does_not() {
    let mut tried = 0;
    for install in installs() {
        let (name, job) = (&install.name, room(&install));
        let now = fastening(&job);
        let Some(told) = found(&job) else {
            assert_ne!(now.verdict.if_probed, Word::Holds, "{name}");
            continue;
        };
        assert_eq!(now.verdict.if_probed, Word::Holds, "{name}");
        // All holes in use: no other group could hold more.
        assert_eq!(now.fasteners.len(), install.holes(), "{name}");
        let holds = |job: &Job| fastening(job).verdict.word == Word::Holds;
        let mut check = |what: &str, most: f64, step: f64, is_end: bool, with: &dyn Fn(f64) -> Job| {
            tried += 1;
            assert!(holds(&with(most)), "{name}: {what} {most}");
            assert!(is_end || !holds(&with(most + step)), "{name}: {what} {most}, and more");
            for part in [0.01, 0.25, 0.5, 0.75] {
                assert!(holds(&with(most * part)), "{name}: {what} {most}, and {part} of it");
            }
        };
        let mass = told.mass.unwrap();
        check("mass", mass.most.kg(), 0.1, mass.is_end, &|kg| with_mass(&job, kg));
        let pull = told.pull.unwrap();
        check("pull", pull.most.n(), 1.0, pull.is_end, &|n| with_pull(&job, n));
        assert_eq!(told.reach.is_some(), install.reach.is_some(), "{name}");
        if let Some(reach) = told.reach {
            check("reach", reach.most.mm(), 1.0, reach.is_end, &|mm| with_reach(&job, mm));
        }
    }
    assert!(tried > 14, "{tried}");
}

#[test]
fn limits_are_told_of_what_holds_if_probed_and_of_nothing_else() {
    let good = room(&named("flush 30 kg behind 1/2 in board"));
    let mut unprobed = good.clone();
    unprobed.walls[0].hits.retain(|hit| hit.kind == strikeline_solver::job::hit::HitKind::Wood);
    for (index, hit) in unprobed.walls[0].hits.iter_mut().enumerate() {
        use strikeline_solver::job::hit::HitKind::{LeftEdge, RightEdge};
        let (kind, out) = if index % 2 == 0 { (LeftEdge, -5.05) } else { (RightEdge, 5.05) };
        (hit.kind, hit.x.by) = (kind, hit.x.by + Length::millimetres(out));
    }
    assert_eq!(fastening(&unprobed).verdict.word, Word::NotKnown);
    assert!(found(&unprobed).is_some());
    let mut unknown = good;
    unknown.mounts[0].stand_off = None;
    assert_eq!(found(&unknown), None);
    assert_eq!(found(&room(&named("flush 50 kg behind 7/8 in plaster"))), None, "short now");
}
