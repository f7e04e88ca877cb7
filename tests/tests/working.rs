//! The working of every verdict: its numbers are the plan's own to the last bit, each step comes out on a hand
//! calculator, and nothing is put in as worked out that no step before gave.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "working/calculator.rs"]
mod calculator;
#[path = "laws/room.rs"]
#[allow(dead_code, reason = "shared with the laws")]
mod room;
#[path = "../../crates/solver/tests/installs/rooms.rs"]
#[allow(dead_code, unfulfilled_lint_expectations, reason = "shared with the installs")]
mod rooms;

use calculator::{bare, symbols, wrong};
use proptest::strategy::Strategy as _;
use proptest::test_runner::{Config, TestRng, TestRunner};
use std::path::Path;
use strikeline::files::job_file::read_job;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::explain::explain;
use strikeline_solver::job::Job;
use strikeline_solver::job::framing::WallFraming;
use strikeline_solver::job::mount::Tilt;
use strikeline_solver::ledger::{Amount, Shown, Step};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::explained::{About, Explained};
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::solve;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Angle, Length};

/// Every demo with each of its options, and every ordinary install.
fn ordinary() -> Vec<(String, Job, Plan)> {
    let mut all = Vec::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let job = read_job(&path).unwrap().job;
        for wall in &job.walls {
            for option in &wall.options {
                let plan = solve(&job, &wall.id, Some(&option.id));
                all.push((format!("{} {}", path.display(), option.id), job.clone(), plan));
            }
        }
    }
    assert!(all.len() > 8, "the demos");
    for install in rooms::installs() {
        let job = rooms::room(&install);
        all.push((install.name.clone(), job.clone(), rooms::plan(&job)));
    }
    all
}

fn explained(job: &Job, plan: &Plan, piece: &PiecePlan) -> Option<Explained> {
    explain(job, &plan.wall, plan.option.as_ref(), &piece.id)
}

#[test]
fn how_a_picture_is_seen_comes_out_on_a_hand_calculator() {
    use strikeline_solver::handbook::viewing::{LEAST_FILLED, REVIEW_OFF};
    use strikeline_solver::ledger::{Blank, Given, Ledger, Working};
    use strikeline_solver::sight::{acuity::lines_merge, angle};

    fn figures<L: Ledger>(ledger: &mut L, aside: f64, rise: f64) -> Vec<Amount> {
        let inch = |inches| Given::measured(Length::inches(inches));
        let (aside, rise, away) = (inch(aside), inch(rise), inch(108.0));
        vec![
            angle::up(ledger, rise, away).into(),
            angle::filled(ledger, inch(57.0), aside, away).into(),
            angle::off_axis(ledger, aside, rise, away).into(),
            angle::distance_for(ledger, inch(57.0), LEAST_FILLED.given()).into(),
            angle::highest(ledger, inch(42.0), away, REVIEW_OFF.given()).into(),
            lines_merge(ledger, inch(32.0), 2160).unwrap().into(),
        ]
    }
    for (aside, rise) in [(0.0, 0.0), (12.5, 18.0), (-40.0, -7.25)] {
        let mut working = Working::default();
        let told = figures(&mut working, aside, rise);
        assert_eq!(told, figures(&mut Blank, aside, rise));
        assert_eq!(working.steps.iter().map(|step| step.result).collect::<Vec<_>>(), told);
        for step in &working.steps {
            assert_eq!(wrong(step), None, "{step:#?}");
        }
    }
}

/// The step of so a name, which is there once.
fn named<'a>(what: &str, steps: &'a [Step], name: &str) -> &'a Step {
    let found: Vec<&Step> = steps.iter().filter(|step| step.name == name).collect();
    match found.as_slice() {
        [one] => one,
        other => panic!("{what}: {} steps of {name}", other.len()),
    }
}

fn has_bits(what: &str, step: &Step, value: impl Into<Amount>) {
    let value = value.into();
    assert_eq!(step.result.value.to_bits(), value.value.to_bits(), "{what}: {step:#?} {value:?}");
    assert_eq!(step.result.unit, value.unit, "{what}: {step:?}");
}

/// Holds a working to its plan; gives how many numbers of the verdict were found in it.
fn same_bits(what: &str, piece: &PiecePlan, explained: &Explained) -> usize {
    let fastening = &piece.mount.as_ref().unwrap().fastening;
    let newtons = |n: f64| Amount::new(n, Shown::Newton);
    let mut found = 0;
    for fastener in &fastening.fasteners {
        let lead = || explained.section(|about| *about == About::Lead).unwrap();
        if let Some(bit) = fastener.lead {
            has_bits(what, named(what, &lead().steps, "bit of the lead hole"), bit);
            found += 1;
        }
        if let Some(depth) = fastener.depth {
            let of = if fastener.lead.is_some() { "lead hole" } else { "hole" };
            let name = format!("depth of the {of} from the wall's face");
            has_bits(what, named(what, &lead().steps, &name), depth);
            found += 1;
        }
        let is_its = |about: &About| matches!(about, About::Asked { hole, .. } if *hole == fastener.subject);
        assert_eq!(explained.section(is_its).is_some(), fastener.asked.is_some(), "{what}");
        if let Some(asked) = fastener.asked {
            let steps = &explained.section(is_its).unwrap().steps;
            has_bits(what, named(what, steps, "shear"), newtons(asked.shear_n));
            has_bits(what, named(what, steps, "pull"), newtons(asked.pull_n));
            has_bits(what, named(what, steps, "use"), asked.used);
            found += 3;
        }
    }
    let governs = |about: &About| matches!(about, About::Asked { governs: true, .. });
    assert_eq!(explained.section(governs).is_some(), fastening.verdict.governing.is_some(), "{what}");
    if let Some(governing) = &fastening.verdict.governing {
        let section = explained.section(governs).unwrap();
        let (hole, case) = match &section.about {
            About::Asked { hole, case, .. } => (hole, case),
            other => panic!("{other:?}"),
        };
        assert_eq!((hole, case), (&governing.hole, &governing.case), "{what}");
        has_bits(what, named(what, &section.steps, "use"), governing.used);
        let most = explained.cases.iter().filter_map(|case| case.worst.as_ref());
        let most = most.map(|(_, used)| *used).fold(0.0, f64::max);
        assert_eq!(most.to_bits(), governing.used.to_bits(), "{what}: the worst of all cases");
        assert!(explained.section(|about| *about == About::Case(governing.case)).is_some(), "{what}");
        found += 1;
    }
    for kind in &fastening.verdict.by_case {
        let own = explained.cases.iter().filter(|case| case.name.kind() == kind.kind);
        let used = own.filter_map(|case| case.worst.as_ref()).map(|(_, used)| *used).reduce(f64::max);
        if fastening.verdict.governing.is_some() {
            assert_eq!(used.map(f64::to_bits), kind.used.map(f64::to_bits), "{what}: {:?}", kind.kind);
            found += 1;
        }
    }
    if let Some((case, Why::Turns { nmm })) = fastening.verdict.uncarried {
        let section = explained.section(|about| *about == About::Uncarried(case)).unwrap();
        let turning = &section.steps.last().unwrap().result;
        assert_eq!(turning.value.abs().to_bits(), Amount::turning(nmm).value.to_bits(), "{what}");
        assert!(explained.section(|about| *about == About::Case(case)).is_some(), "{what}");
        found += 1;
    }
    found
}

/// In millimetres and newtons, whatever the unit.
fn metric(amount: Amount) -> f64 {
    match amount.unit {
        Shown::Inch => amount.value * 25.4,
        Shown::PoundForce => amount.value * 4.448_221_615_260_5,
        _ => bare(amount),
    }
}

/// Holds every step of a working to what a step is.
fn well_worked(what: &str, explained: &Explained) {
    let mut before: Vec<f64> = Vec::new();
    for section in &explained.sections {
        assert!(!section.steps.is_empty(), "{what}: {:?}", section.about);
        for step in &section.steps {
            for text in [step.name, step.formula, step.source] {
                assert!(!text.trim().is_empty(), "{what}: {step:?}");
            }
            assert!(step.result.value.is_finite(), "{what}: {step:?}");
            assert_eq!(wrong(step), None, "{what}: {step:#?}");
            let own: Vec<String> =
                step.formula.split("; ").filter_map(|clause| symbols(clause).first().cloned()).collect();
            for put in
                step.put.iter().filter(|put| put.worked_out && !own.iter().any(|own| own == put.symbol))
            {
                let value = metric(put.amount);
                let is_it = |known: &&f64| (known.abs() - value.abs()).abs() <= 1e-6 + 1e-9 * value.abs();
                assert!(before.iter().any(|known| is_it(&known)), "{what}: {} of {step:#?}", put.symbol);
            }
            before.push(metric(step.result));
        }
    }
}

#[test]
fn every_number_of_a_verdict_has_its_working_to_the_last_bit() {
    let (mut pieces, mut numbers) = (0, 0);
    for (what, job, plan) in ordinary() {
        for piece in plan.pieces.iter().filter(|piece| piece.mount.is_some()) {
            let explained = explained(&job, &plan, piece).unwrap();
            numbers += same_bits(&what, piece, &explained);
            pieces += 1;
        }
    }
    assert!(pieces > 20 && numbers > 200, "{pieces} pieces, {numbers} numbers");
}

#[test]
fn every_step_comes_out_on_a_hand_calculator() {
    let mut steps = 0;
    for (what, job, plan) in ordinary() {
        for piece in plan.pieces.iter().filter(|piece| piece.mount.is_some()) {
            let explained = explained(&job, &plan, piece).unwrap();
            well_worked(&what, &explained);
            steps += explained.sections.iter().map(|section| section.steps.len()).sum::<usize>();
        }
    }
    assert!(steps > 1000, "{steps}");
}

#[test]
fn what_hangs_on_no_mount_has_no_working_and_what_no_hole_takes_an_empty_one() {
    let install = &rooms::installs()[0];
    let mut job = rooms::room(install);
    let plan = rooms::plan(&job);
    let piece = &plan.pieces[0];
    assert_eq!(explain(&job, &plan.wall, plan.option.as_ref(), &rooms::id("another")), None);
    job.kit.fasteners.clear();
    let empty = explained(&job, &plan, piece).unwrap();
    assert!(empty.sections.is_empty() && empty.cases.is_empty());
}

#[test]
fn what_nobody_measured_is_asked_of_no_fastener() {
    let mut job = rooms::room(&rooms::installs()[0]);
    job.pieces[0].mass = None;
    let plan = rooms::plan(&job);
    let explained = explained(&job, &plan, &plan.pieces[0]).unwrap();
    assert!(explained.cases.is_empty());
    assert!(explained.section(|about| matches!(about, About::Asked { .. })).is_none());
    assert!(explained.section(|about| matches!(about, About::Carries(_))).is_some());
}

/// On every kind of wall: another mass, board, stud and place of the plate than anyone wrote down.
#[test]
fn random_rooms_are_worked_to_the_last_bit_and_come_out_on_a_hand_calculator() {
    let installs = rooms::installs().len();
    let given = (0..installs, 0.2..3.0_f64, 0.0..40.0_f64, -20.0..20.0_f64, 0.0..15.0_f64, 0..3_usize);
    let config = Config { cases: 200, failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(Default::default()));
    let numbers = std::cell::Cell::new(0);
    let held = runner.run(&given, |(index, heavier, front_mm, aside_mm, tilt_deg, face)| {
        let install = &rooms::installs()[index];
        let mut job = rooms::room(install);
        job.pieces[0].mass = job.pieces[0].mass.map(|mass| mass * heavier);
        if let Some(front) = &mut job.walls[0].front {
            front.thickness = Some(Length::millimetres(front_mm));
        }
        if let Some(WallFraming::Wood(studs)) = &mut job.walls[0].framing {
            studs.face = [None, Some(Length::inches(1.5)), Some(Length::inches(3.5))][face];
            studs.depth = Some(Length::inches(5.5));
        }
        if tilt_deg > 5.0 && install.reach.is_none() {
            let (down, up) = (Some(Angle::degrees(tilt_deg)), None);
            job.mounts[0].tilt = Some(Tilt { down, up, pivot_down: None });
        }
        for hole in &mut rooms::plate(&mut job).holes {
            hole.right = Offset(hole.right.length() + Length::millimetres(aside_mm));
        }
        let plan = rooms::plan(&job);
        let piece = &plan.pieces[0];
        let explained = explained(&job, &plan, piece).unwrap();
        numbers.set(numbers.get() + same_bits(&install.name, piece, &explained));
        well_worked(&install.name, &explained);
        Ok(())
    });
    held.unwrap();
    assert!(numbers.get() > 1000, "{}", numbers.get());
}

/// Rooms in which little is measured: their verdicts have no numbers that their workings lack.
#[test]
fn rooms_of_every_make_have_their_working() {
    let config = Config { cases: 200, failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(Default::default()));
    let held = runner.run(&room::rooms().prop_map(|room| room.job()), |job| {
        let plan = room::plan(&job);
        for piece in plan.pieces.iter().filter(|piece| piece.mount.is_some()) {
            let explained = explained(&job, &plan, piece).unwrap();
            same_bits("a random room", piece, &explained);
            well_worked("a random room", &explained);
        }
        Ok(())
    });
    held.unwrap();
}
