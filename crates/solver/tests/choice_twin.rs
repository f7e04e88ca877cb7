//! The choice of holes against a twin that tries everything with every case, on random plates: over several places of
//! the plate, sizes of the kit, slots, and walls of wood, steel and concrete.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "choice_twin/made.rs"]
mod made;
#[path = "installs/rooms.rs"]
#[allow(dead_code, reason = "half of the rooms' tools are for the other tests")]
mod rooms;
#[path = "choice_twin/twin.rs"]
mod twin;

use made::{Random, random_job};
use rooms::{Install, Into, id, plan};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::choosing::{better_holes, taken};
use strikeline_solver::job::plate::PlateSlot;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::MountedPlan;
use strikeline_solver::plan::verdict::Fastening;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;
use strikeline_solver::words;
use twin::{Twin, Worth};

fn mounted(plan: &Plan) -> &MountedPlan {
    plan.pieces[0].mount.as_ref().unwrap()
}

/// The worth of what a plan chose; `None` where it chose nothing.
fn worth(twin: &Twin<'_>, job: &strikeline_solver::job::Job, plan: &Plan) -> Option<Worth> {
    let told = mounted(plan);
    let stock = &told.fastening.fasteners.first()?.stock;
    assert!(told.fastening.fasteners.iter().all(|one| one.stock == *stock), "one size");
    let size = job.kit.fasteners.iter().position(|one| one.id == *stock).unwrap();
    let used: Vec<_> = told
        .holes
        .iter()
        .enumerate()
        .filter(|(_, hole)| told.fastening.fasteners.iter().any(|one| one.hole == hole.id))
        .map(|(index, hole)| (index, (hole.in_plate.x.mm(), hole.in_plate.y.mm())))
        .collect();
    assert_eq!(used.len(), told.fastening.fasteners.len());
    Some(twin.worth_of(size, told.offset.mm(), &used).expect("a hole in use that is not usable"))
}

/// What came of some plates.
#[derive(Debug, Default)]
struct Came {
    words: [usize; 3],
    walls: [usize; 3],
    /// Plates that can stand at more than three places; with slots; with more than one size.
    wide: usize,
    slotted: usize,
    sized: usize,
    /// Of how many the plan itself is the best of all.
    plan_is_best: usize,
    offered: usize,
    sets: usize,
}

/// Holds what is chosen against the twin on one plate.
fn compare(random: &mut Random, holes: usize, plate: usize, came: &mut Came) -> bool {
    let (job, install) = random_job(random, holes);
    let first = plan(&job);
    let twin = Twin::of(&job, &install);
    let usable = twin.usable();
    if usable > 12 {
        return false;
    }
    let (best, sets) = twin.best(None);
    came.sets += sets;
    let now = worth(&twin, &job, &first);
    // At its own place the plan's set is the best of all up to eight holes.
    if usable <= 8 {
        let told = mounted(&first);
        let here = told.holes.iter().map(|hole| vec![(hole.in_plate.x.mm(), hole.in_plate.y.mm())]);
        assert_eq!(now, twin.best(Some((told.offset.mm(), here.collect()))).0, "plate {plate}, at its place");
        assert!(!told.fastening.verdict.searched, "plate {plate}");
    }
    let better = better_holes(&job, &first, &id("display-1"));
    came.offered += usize::from(better.is_some());
    came.plan_is_best += usize::from(now == best);
    let job_then = better.as_ref().map_or_else(|| job.clone(), |better| taken(&job, &first, better));
    let then = plan(&job_then);
    assert_eq!(worth(&twin, &job, &then), best, "plate {plate}: {better:#?}");
    assert_eq!(better.is_some(), now != best, "plate {plate}: offered where there is something to gain");
    if let Some(better) = &better {
        assert_eq!(mounted(&then).fastening, better.then, "plate {plate}: what was promised");
        assert_eq!(better_holes(&job_then, &then, &id("display-1")), None, "plate {plate}: once is enough");
    }
    let told = &mounted(&then).fastening;
    assert_eq!(
        told.fasteners.len() + told.left_empty.len(),
        mounted(&then).holes.len(),
        "plate {plate}: each hole is told once"
    );
    let word = told.verdict.if_probed;
    assert_eq!(word == Word::Holds, best.is_some_and(|best| best.0), "plate {plate}");
    came.words[word as usize] += 1;
    came.walls[match install.into {
        Into::Lags { .. } => 0,
        Into::Steel { .. } => 1,
        Into::Concrete { .. } => 2,
    }] += 1;
    came.wide += usize::from(twin.places().len() > 3);
    came.slotted += usize::from(!job.mounts[0].plate.as_ref().unwrap().slots.is_empty());
    came.sized += usize::from(job.kit.fasteners.len() > 1);
    true
}

#[test]
fn no_choice_is_better_on_plates_of_up_to_eight_holes() {
    let mut random = Random(7);
    let mut came = Came::default();
    for plate in 0..500 {
        let holes = 1 + (random.next() * 8.0).floor().min(7.0) as usize;
        assert!(compare(&mut random, holes, plate, &mut came));
    }
    assert!(came.sets > 5000, "{came:?}");
    assert!(came.words.iter().all(|count| *count > 20), "every word comes: {came:?}");
    assert!(came.walls.iter().all(|count| *count > 50), "every wall comes: {came:?}");
    assert!(came.wide > 100 && came.slotted > 80 && came.sized > 100, "{came:?}");
    assert!(came.plan_is_best > 400 && came.offered > 0, "{came:?}");
}

#[test]
fn no_choice_is_better_on_plates_of_up_to_twelve_holes() {
    let mut random = Random(11);
    let mut came = Came::default();
    let (mut plate, mut held) = (0, 0);
    while held < 50 {
        let holes = 9 + (random.next() * 4.0).floor().min(3.0) as usize;
        plate += 1;
        held += usize::from(compare(&mut random, holes, plate, &mut came));
    }
    assert!(came.offered > 0, "{came:?}");
}

/// Ten slots on concrete, each with three places: a million sets. The mass is such that the reserve decides, not the
/// count.
#[test]
fn of_more_sets_than_are_looked_at_the_best_is_offered_and_told_as_found_by_a_search() {
    let install = Install {
        name: String::new(),
        kg: 450.0,
        width: 1900.0,
        height: 1090.0,
        reach: None,
        into: Into::Concrete { gap: 0.0 },
        columns: vec![-203.0, 203.0],
        rows: vec![220.0, -220.0],
        expected: Vec::new(),
    };
    let mut job = rooms::room(&install);
    let slot = |number: usize| PlateSlot {
        id: id(&format!("slot-{number}")),
        right: Offset(Length::millimetres(if number < 5 { -203.0 } else { 203.0 })),
        down: Length::millimetres(50.0 + 110.0 * (number % 5) as f64),
        travel: Length::millimetres(60.0),
        upright: false,
        width: Some(Length::inches(0.375)),
    };
    let plate = rooms::plate(&mut job);
    plate.holes.clear();
    plate.slots = (0..10).map(slot).collect();
    job.kit.fasteners.truncate(1);
    let first = plan(&job);
    let better =
        better_holes(&job, &first, &id("display-1")).expect("the slots' outer ends are farther apart");
    assert!(better.searched);
    assert!(words::better_holes(&better).ends_with("of the fullest sets, not of every set."));
    let used = |of: &Fastening| of.verdict.governing.as_ref().unwrap().used;
    assert!(used(&better.then) < used(&better.now), "{} {}", used(&better.then), used(&better.now));
    assert_eq!(mounted(&plan(&taken(&job, &first, &better))).fastening, better.then);
}
