//! What would clear a finding, in hand-worked cases; and that every mend does what it says.

use super::{fastening, named, rooms};
use rooms::{installs, plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::finding::{Finding, What};
use strikeline_solver::geometry::Direction;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::hidden::{Hidden, HiddenKind};
use strikeline_solver::job::place::{AcrossExtent, UprightExtent};
use strikeline_solver::mend::{Change, MendPlan, for_finding};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;
use strikeline_solver::words;

fn finding(job: &Job, rule: &str) -> Finding {
    let plan = plan(job);
    let found = plan.findings.iter().find(|finding| finding.what.rule() == rule);
    found.unwrap_or_else(|| panic!("{rule}: {:?}", plan.findings)).clone()
}

fn mends(job: &Job, rule: &str) -> Vec<MendPlan> {
    for_finding(job, &job.walls[0].id, None, &finding(job, rule))
}

fn told(job: &Job, rule: &str) -> Vec<String> {
    mends(job, rule).iter().map(|mend| words::mend(job, &plan(job), mend)).collect()
}

fn nudge(job: &mut Job, right: f64, up: f64) {
    let nudge = &mut job.walls[0].options[0].hangings[0].nudge;
    (nudge.right, nudge.up) = (Offset(Length::inches(right)), Offset(Length::inches(up)));
}

fn good() -> Job {
    room(&named("flush 30 kg behind 1/2 in board"))
}

#[test]
fn four_lags_behind_plaster_are_short_and_six_hold() {
    let job = room(&named("flush 50 kg behind 7/8 in plaster"));
    match finding(&job, "plate_short").what {
        What::PlateShort { used: Some(used) } => assert!((used - 1.23).abs() < 0.0075, "{used}"),
        other => panic!("{other:?}"),
    }
    let found = mends(&job, "plate_short");
    let row = found.iter().find(|mend| mend.change == Change::RowBetween).unwrap();
    assert_eq!(row.gives.fasteners, 6);
    assert!((row.gives.used.unwrap() - 0.82).abs() < 0.0075, "{:?}", row.gives);
    assert_eq!(row.job, None, "nobody measured such a plate");
    let said = words::mend(&job, &plan(&job), row);
    assert_eq!(said, "A plate with one more row of holes between its rows: six fasteners hold, 0.82 used.");
}

#[test]
fn a_piece_beside_its_studs_is_moved_left_onto_them() {
    let mut job = good();
    nudge(&mut job, 0.875, 0.0);
    let said = told(&job, "no_stud_met");
    let expected = "Move 7/8\" to the left: four holes meet two studs, four fasteners hold, 0.61 used.";
    assert_eq!(said.first().map(String::as_str), Some(expected), "{said:?}");
    let moved = mends(&job, "no_stud_met")[0].job.clone().unwrap();
    assert_eq!(fastening(&moved).verdict.word, Word::Holds);
    let mut back = moved;
    nudge(&mut back, 0.875, 0.0);
    assert_eq!(back, job, "nothing but the nudge is written");
    // With an inch of play to the left, and an inch and a half to go: the rest.
    let mut job = good();
    nudge(&mut job, 2.0, 0.0);
    job.mounts[0].play_right = Some(Length::inches(1.0));
    let said = told(&job, "no_stud_met");
    assert!(said[0].starts_with("Move 1\" to the left: four holes meet two studs"), "{said:?}");
}

#[test]
fn a_short_kit_is_told_what_to_bring_and_takes_it() {
    let mut job = room(&named("flush 50 kg behind 7/8 in plaster, six"));
    job.kit.fasteners[0].count = Some(4);
    assert_eq!(fastening(&job).verdict.word, Word::Short);
    let said = told(&job, "plate_short");
    let expected = "Bring 2 more of lag screw 5/16\" x 3\": six fasteners hold, 0.82 used.";
    assert!(said.iter().any(|one| one == expected), "{said:?}");
    let found = mends(&job, "plate_short");
    let more = found.iter().find(|mend| matches!(mend.change, Change::More { more: 2, .. })).unwrap();
    assert_eq!(more.job.as_ref().unwrap().kit.fasteners[0].count, Some(6));
}

#[test]
fn a_fastener_that_is_too_long_is_changed_for_the_next_that_holds() {
    let mut job = good();
    // 5 - 0.075 - 1/2 = 4.425 in is past a stud 3 1/2 deep, and so is 4 1/2 in; 4 in is 3.425 deep.
    job.kit.fasteners[0].length = Some(Length::inches(5.0));
    assert_eq!(fastening(&job).fasteners, Vec::new());
    let said = told(&job, "plate_not_known");
    assert!(
        said.iter().any(|one| one.starts_with("Take lag screws 5/16\" x 4\": four fasteners hold")),
        "{said:?}"
    );
}

#[test]
fn concrete_behind_board_is_bared() {
    let job = room(&named("concrete behind board"));
    let said = told(&job, "plate_not_known");
    let expected =
        "Cut away the 1/2\" in front of the concrete under the plate: four fasteners hold, 0.36 used.";
    assert_eq!(said, [expected]);
    assert_eq!(mends(&job, "plate_not_known")[0].job, None, "the job says what is there now");
}

#[test]
fn another_mount_of_the_job_is_taken() {
    let mut job = room(&named("flush 50 kg behind 7/8 in plaster"));
    let mut six = room(&named("flush 50 kg behind 7/8 in plaster, six")).mounts.remove(0);
    six.id = rooms::id("mount-2");
    six.name = Some("Six".to_owned());
    job.mounts.push(six);
    let found = mends(&job, "plate_short");
    let other = found.iter().find(|mend| matches!(mend.change, Change::Mount { .. })).unwrap();
    let said = words::mend(&job, &plan(&job), other);
    assert_eq!(said, "Hang it on Six: six holes meet two studs, six fasteners hold, 0.82 used.");
    assert_eq!(fastening(other.job.as_ref().unwrap()).verdict.word, Word::Holds);
}

#[test]
fn what_lies_in_the_way_is_moved_from() {
    // Past the wall's left end by 2 in: the display is 1450 mm wide on a wall 4000 mm wide.
    let mut job = good();
    nudge(&mut job, -(4000.0 - 1450.0) / 2.0 / 25.4 - 2.0, 0.0);
    let found = mends(&job, "off_wall");
    let by = Change::Move { direction: Direction::Right, by: Length::inches(2.0).quantised() };
    assert_eq!(found.iter().map(|mend| mend.change.clone()).collect::<Vec<_>>(), [by]);
    // A vent whose top is 3 in above the display's lower edge, 1500 - 415 mm up, by hand.
    let mut job = good();
    let mm = Length::millimetres;
    job.walls[0].features.push(Feature {
        front: None,
        id: rooms::id("vent-1"),
        kind: FeatureKind::Vent,
        name: None,
        across: AcrossExtent {
            left: Some(across(1900.0)),
            width: Some(mm(200.0)),
            ..AcrossExtent::default()
        },
        upright: UprightExtent {
            bottom: Some(upright(1000.0)),
            height: Some(mm(85.0) + Length::inches(3.0)),
            ..UprightExtent::default()
        },
        proud: Some(mm(0.0)),
        framing: None,
        notes: None,
    });
    let found = mends(&job, "over_feature");
    let up = Change::Move { direction: Direction::Up, by: Length::inches(3.0).quantised() };
    assert_eq!(found.first().map(|mend| mend.change.clone()), Some(up), "{found:?}");
}

fn across(mm: f64) -> strikeline_solver::job::place::AcrossReading {
    strikeline_solver::job::place::AcrossReading::from_left(Length::millimetres(mm))
}

fn upright(mm: f64) -> strikeline_solver::job::place::UprightReading {
    strikeline_solver::job::place::UprightReading::from_floor(Length::millimetres(mm))
}

#[test]
fn a_hole_on_a_fire_block_is_moved_off_it_by_the_least_that_clears_it() {
    let mut job = good();
    // The upper row is 1600 mm up; the block's lower edge is 1595 mm up, 38 mm high, and a hole 4.76 mm in radius.
    job.walls[0].hidden.push(Hidden {
        id: rooms::id("block-1"),
        known_by: None,
        kind: HiddenKind::FireBlock,
        name: None,
        across: AcrossExtent {
            left: Some(across(0.0)),
            width: Some(Length::millimetres(4000.0)),
            ..AcrossExtent::default()
        },
        upright: UprightExtent {
            bottom: Some(upright(1595.0)),
            height: Some(Length::millimetres(38.0)),
            ..UprightExtent::default()
        },
        notes: None,
    });
    let found = mends(&job, "hole_on_hidden");
    // Down by 5 + 4.76 mm: seven sixteenths, 11.1 mm; six are 9.5.
    let down = Change::Move { direction: Direction::Down, by: Length::inches(7.0 / 16.0).quantised() };
    assert_eq!(found.first().map(|mend| mend.change.clone()), Some(down), "{found:?}");
}

#[test]
fn a_plate_that_shows_is_brought_behind_its_piece() {
    let mut job = good();
    // The display is as wide as the plate and its play is used to meet the studs: it shows by as much.
    job.pieces[0].width = Some(Length::millimetres(520.0));
    job.mounts[0].play_left = Some(Length::inches(3.0));
    job.mounts[0].play_right = Some(Length::inches(3.0));
    nudge(&mut job, 2.0, 0.0);
    let found = mends(&job, "plate_shows");
    assert!(matches!(found[0].change, Change::Move { direction: Direction::Left, .. }), "{found:?}");
    assert_eq!(found[0].gives.if_probed, Word::Holds);
}

#[test]
fn what_is_to_be_measured_and_what_nothing_helps_has_no_mend() {
    let mut job = good();
    job.pieces[0].mass = None;
    assert_eq!(mends(&job, "plate_not_known"), Vec::new(), "weigh it");
    let good = good();
    let old = Finding { what: What::NoStudMet, ..finding(&job, "plate_not_known") };
    assert_eq!(for_finding(&good, &good.walls[0].id, None, &old), Vec::new(), "no finding of this job");
    // On one stud no published value carries what turns the plate, whatever its length or rows.
    assert_eq!(told(&room(&named("arm 500 mm, 30 kg, three in one stud")), "plate_not_known"), [""; 0]);
}

#[test]
fn every_mend_does_what_it_says() {
    let mut seen = 0;
    for install in installs() {
        for (right, up) in [(0.0, 0.0), (0.6, 0.0), (-3.0, 0.0), (8.0, 1.0)] {
            let mut job = room(&install);
            nudge(&mut job, right, up);
            for finding in plan(&job).findings {
                for mend in for_finding(&job, &job.walls[0].id, None, &finding) {
                    seen += 1;
                    let Some(changed) = &mend.job else { continue };
                    let then = plan(changed);
                    let (name, change) = (&install.name, &mend.change);
                    let is_there = then
                        .findings
                        .iter()
                        .any(|now| now.what.rule() == finding.what.rule() && now.subject == finding.subject);
                    let is_better =
                        matches!(finding.what, What::PlateNotKnown { .. } | What::MoreStudsNear { .. });
                    assert!(is_better || !is_there, "{name}: {change:?}, {finding:?}");
                    let mount = then.pieces[0].mount.as_ref().unwrap();
                    assert_eq!(mount.fastening.verdict.if_probed, mend.gives.if_probed, "{name}: {change:?}");
                    assert_eq!(mount.studs_met(), mend.gives.studs, "{name}: {change:?}");
                    assert_eq!(mount.fastening.fasteners.len(), mend.gives.fasteners, "{name}: {change:?}");
                }
            }
        }
    }
    assert!(seen > 30, "{seen}");
}
