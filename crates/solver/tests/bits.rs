//! Drill bits of the kit and how deep a hole is drilled, through `solve`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "installs/rooms.rs"]
#[allow(dead_code, reason = "half of the rooms' tools are for the other tests")]
mod rooms;

use rooms::{Into, id, installs, plan, room};
use strikeline_solver::capacity::why::Why;
use strikeline_solver::finding::{Level, What};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::DrillBit;
use strikeline_solver::plan::verdict::{BitFrom, EmptyWhy, FastenerPlan, Fastening};
use strikeline_solver::units::Length;
use strikeline_solver::words;

fn job(suits: impl Fn(&Into) -> bool) -> Job {
    room(&installs().into_iter().find(|install| suits(&install.into)).unwrap())
}

fn in_wood() -> Job {
    job(|into| matches!(into, Into::Lags { .. }))
}

fn fastening(job: &Job) -> Fastening {
    plan(job).pieces[0].mount.clone().unwrap().fastening
}

fn first(job: &Job) -> FastenerPlan {
    fastening(job).fasteners[0].clone()
}

fn bit(name: &str, diameter: f64, length: Option<f64>) -> DrillBit {
    DrillBit { id: id(name), diameter: Some(Length::inches(diameter)), length: length.map(Length::inches) }
}

#[test]
fn a_bit_of_the_kit_is_taken_where_it_fits() {
    let mut job = in_wood();
    let usual = first(&job);
    assert_eq!(usual.bit, BitFrom::UsualSet);
    // A 5/16 in lag in light wood: 40 to 70 % of its diameter, 1/8 to 7/32 in.
    job.kit.bits = vec![bit("bit-1", 0.25, None), bit("bit-2", 0.1875, None), bit("bit-3", 0.125, None)];
    let told = first(&job);
    assert_eq!((told.lead, told.bit), (Some(Length::inches(0.1875)), BitFrom::Kit(id("bit-2"))));
    let text = words::fastener(&plan(&job), &first(&job));
    assert!(text.contains("lead hole 3/16\", a bit of the kit, "), "{text}");
}

#[test]
fn a_bit_that_is_too_wide_too_thin_or_too_short_is_not_taken() {
    let mut job = in_wood();
    let usual = first(&job).lead;
    for unfit in [bit("bit-1", 0.25, None), bit("bit-1", 0.0625, None), bit("bit-1", 0.1875, Some(1.0))] {
        job.kit.bits = vec![unfit];
        let told = first(&job);
        assert_eq!((told.lead, told.bit), (usual, BitFrom::NotInKit));
        let text = words::fastener(&plan(&job), &first(&job));
        assert!(text.contains("a bit that is not in the kit"), "{text}");
    }
    // A bit of which nothing is measured fits nowhere.
    job.kit.bits = vec![DrillBit { id: id("bit-1"), diameter: None, length: None }];
    assert_eq!(first(&job).bit, BitFrom::NotInKit);
}

#[test]
fn the_stop_of_the_bit_is_told_in_steel_and_concrete_too() {
    let near = |told: Option<Length>, inches: f64| {
        assert!((told.unwrap().in_inches() - inches).abs() < 1e-9, "{told:?}, {inches} in");
    };
    // 2 1/4 in less the sheet of 0.075 in, and 1/4 in for the dust.
    let concrete = job(|into| matches!(into, Into::Concrete { gap } if *gap == 0.0));
    let told = first(&concrete);
    assert_eq!(told.lead, None);
    near(told.depth, 2.25 - 0.075 + 0.25);
    let text = words::fastener(&plan(&concrete), &told);
    assert!(text.contains("as its own instructions say, 2 7/16\" deep from the wall's face"), "{text}");
    // Into steel no deeper than the screw itself.
    let steel = job(|into| matches!(into, Into::Steel { .. }));
    near(first(&steel).depth, 1.25 - 0.075);
}

#[test]
fn a_screw_that_ends_in_the_steel_holds_nothing() {
    let mut steel = job(|into| matches!(into, Into::Steel { .. }));
    assert!(!fastening(&steel).fasteners.is_empty());
    // Through the sheet, the board and the flange, but with less than three threads behind it.
    let gap = steel.walls[0].front.as_ref().unwrap().thickness.unwrap();
    let through = gap + Length::inches(0.075) + Length::mils(27.0);
    steel.kit.fasteners[0].length = Some(through + Length::inches(0.2));
    let told = fastening(&steel);
    assert!(told.fasteners.is_empty());
    assert!(told.left_empty.iter().all(|one| matches!(one.why, EmptyWhy::Refused(Why::Shallow { .. }))));
}

#[test]
fn a_fastener_that_reaches_past_the_stud_stops_the_job() {
    let mut job = in_wood();
    let stops = |job: &Job| {
        let plan = plan(job);
        let found = plan.findings.iter().filter(|one| matches!(one.what, What::PastStud { .. }));
        found.map(|one| (one.level, words::finding(&plan, one))).collect::<Vec<_>>()
    };
    assert!(stops(&job).is_empty());
    job.kit.fasteners[0].length = Some(Length::inches(6.0));
    let told = stops(&job);
    assert_eq!(told.len(), 1, "once a plate");
    assert_eq!(told[0].0, Level::Stop);
    assert!(told[0].1.contains("past the stud, where nobody knows what is"), "{}", told[0].1);
    assert!(fastening(&job).fasteners.is_empty());
}
