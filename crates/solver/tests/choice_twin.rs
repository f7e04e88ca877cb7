//! The choice of holes against a twin that tries every set with every case, on random plates of up to eight holes.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "installs/rooms.rs"]
#[allow(dead_code, reason = "half of the rooms' tools are for the other tests")]
mod rooms;

use rooms::{Install, Into, plan, room};
use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::group::{Group, Word};
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::hold::Hold;
use strikeline_solver::capacity::opening::Runs;
use strikeline_solver::capacity::placing::{Carries, InFace, carries, edge_needs, too_near_in_stud};
use strikeline_solver::capacity::posture::cases;
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::FastenerKind;
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::plan::Plan;
use strikeline_solver::units::{Length, Ratio, Stress};

/// A plain generator: the same plates every time.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        #[expect(clippy::cast_precision_loss, reason = "53 bits")]
        let share = (self.0 >> 11) as f64 / (1_u64 << 53) as f64;
        share
    }

    fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    fn one_of(&mut self, of: &[f64]) -> f64 {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an index")]
        let index = (self.next() * of.len() as f64) as usize;
        of[index.min(of.len() - 1)]
    }
}

/// A plate of up to eight holes over two studs, some off the stud, some too near one another.
fn random_job(random: &mut Random) -> (Job, Install) {
    let install = Install {
        name: String::new(),
        kg: random.within(3.0, 60.0),
        width: random.within(700.0, 1900.0),
        height: random.within(450.0, 1100.0),
        reach: (random.next() < 0.3).then(|| random.within(150.0, 600.0)),
        into: Into::Lags { gap: random.one_of(&[0.5, 0.625, 0.875]) },
        columns: Vec::new(),
        rows: vec![130.0, 0.0, -130.0],
        expected: Vec::new(),
    };
    let mut job = room(&install);
    let holes = 1 + (random.next() * 8.0).floor().min(7.0) as usize;
    let pattern = rooms::plate(&mut job).holes[0].clone();
    rooms::plate(&mut job).holes = (0..holes)
        .map(|index| {
            let mut hole = pattern.clone();
            hole.id = rooms::id(&format!("hole-{}", index + 1));
            let drift = random.one_of(&[0.0, 0.0, 4.0, -6.0, 60.0]);
            let right = random.one_of(&[-203.0, 203.0]) + drift;
            hole.right = strikeline_solver::tape::Offset(Length::millimetres(right));
            let up = (random.within(-150.0, 150.0) / 10.0).round() * 10.0;
            hole.down = Length::millimetres(170.0 - up);
            hole
        })
        .collect();
    if random.next() < 0.4 {
        let stock = &mut job.kit.fasteners[0];
        (stock.kind, stock.diameter) = (FastenerKind::WoodScrew, Some(Length::inches(0.242)));
    }
    (job, install)
}

/// A set's worth, the first key first.
type Worth = (bool, bool, i64, i64, bool, i64);

struct Twin {
    screw: Screw,
    hold: Hold,
    cases: Vec<strikeline_solver::capacity::case::Case>,
    /// Place in the plan's list, seat, chance.
    usable: Vec<(usize, Seat, f64)>,
}

fn twin(job: &Job, install: &Install, plan: &Plan) -> Twin {
    let stock = &job.kit.fasteners[0];
    let (diameter, length) =
        (Given::measured(stock.diameter.unwrap()), Given::measured(stock.length.unwrap()));
    let screw = if stock.kind == FastenerKind::Lag {
        Screw::lag(diameter, length)
    } else {
        Screw::wood_screw(diameter, length)
    }
    .unwrap();
    let Into::Lags { gap } = install.into else { unreachable!() };
    let stack = Stack {
        washer: Given::measured(Length::default()),
        plate: Given::measured(Length::inches(0.075)),
        plate_bearing: Given::measured(Stress::psi(61_850.0)),
        gap: Given::measured(Length::inches(gap)),
        stud_depth: Given::measured(Length::inches(3.5)),
    };
    let hold = in_wood(&mut Blank, &screw, Given::chosen(Ratio::bare(0.36)), &stack).unwrap();
    let manner = install.reach.map_or(Manner::Fixed, |reach_mm| Manner::Arm {
        hinge_x_mm: 0.0,
        reach_mm,
        hinge_deg: None,
        head_deg: None,
    });
    // The plate's top is 170 above the display's middle.
    let middle_mm = -170.0;
    let hanging = Hanging {
        left_mm: -install.width / 2.0,
        right_mm: install.width / 2.0,
        bottom_mm: middle_mm - install.height / 2.0,
        top_mm: middle_mm + install.height / 2.0,
        depth_mm: 60.0,
        stand_off_mm: 40.0,
        masses: vec![HungMass { kg: install.kg, right_mm: 0.0, y_mm: middle_mm, from_back_mm: 30.0 }],
        manner,
        pull_n: 220.0,
        label: Label::Measured,
    };
    let need = edge_needs(&screw).0;
    let mut usable = Vec::new();
    for (index, hole) in plan.pieces[0].mount.as_ref().unwrap().holes.iter().enumerate() {
        let Some(stud) = hole.stud else { continue };
        let drift = (hole.place.x - plan.framing.studs[stud].centre).abs();
        let at = InFace {
            face: Given::measured(Length::inches(1.5)),
            drift: Given::measured(drift),
            doubt: Given::measured(Length::default()),
        };
        if carries(&mut Blank, &screw, &at).is_err() {
            continue;
        }
        // The stud's doubt decides whether it carries across.
        let doubted = InFace { doubt: Given::measured(plan.framing.studs[stud].doubt), ..at };
        let carry = carries(&mut Blank, &screw, &doubted).unwrap_or(Carries::Along);
        let (x_mm, y_mm) = (hole.in_plate.x.mm(), hole.in_plate.y.mm());
        let chance = plan.framing.chance(None, hole.place.x, hole.place.y, need);
        usable.push((index, Seat::in_stud(x_mm, y_mm, stud, carry, Runs::Nowhere), chance));
    }
    Twin { screw, hold, cases: cases(&hanging).unwrap(), usable }
}

impl Twin {
    /// How much a set is worth; `None` where two of it are too near.
    fn worth(&self, set: &[(usize, Seat, f64)]) -> Option<Worth> {
        for (index, (_, a, _)) in set.iter().enumerate() {
            for (_, b, _) in &set[index + 1..] {
                let near = too_near_in_stud(
                    &self.screw,
                    true,
                    Length::inches(1.5),
                    a.x_mm - b.x_mm,
                    a.y_mm - b.y_mm,
                );
                if a.stud == b.stud && near {
                    return None;
                }
            }
        }
        let seats: Vec<Seat> = set.iter().map(|(_, seat, _)| *seat).collect();
        let edges = Edges { left_mm: -250.0, right_mm: 250.0, bottom_mm: -340.0, top_mm: 0.0 };
        let group = Group::of(&mut Blank, &seats, &edges, Label::Measured).unwrap();
        // Case by case, fastener by fastener: no case is left out, none is skipped.
        let told = group.demand(&self.cases).by_case(&self.hold);
        let worst = told.iter().filter_map(|(_, found)| found.as_ref().ok()).map(|(_, used)| used.value);
        let worst = worst.reduce(f64::max);
        let known = told.iter().all(|(_, found)| found.is_ok());
        let reserve = worst.map_or(-1.0, |used| (1.0 / used - 1.0).min(1.0));
        let chance = set.iter().map(|(_, _, chance)| *chance).fold(1.0, f64::min);
        let symmetric = seats
            .iter()
            .all(|a| seats.iter().any(|b| (a.x_mm + b.x_mm).abs() <= 1.0 && (a.y_mm - b.y_mm).abs() <= 1.0));
        #[expect(clippy::cast_possible_truncation, reason = "small whole numbers")]
        let whole = |value: f64| value.round() as i64;
        Some((
            known && worst.is_some_and(|used| used <= 1.0),
            known,
            whole(reserve * 100.0),
            whole(chance * 20.0),
            symmetric,
            -i64::try_from(set.len()).unwrap(),
        ))
    }
}

#[test]
fn no_set_is_better_than_the_chosen_one() {
    let mut random = Random(7);
    let (mut chosen_by_words, mut sets) = ([0; 3], 0);
    for plate in 0..500 {
        let (job, install) = random_job(&mut random);
        let plan = plan(&job);
        let told = &plan.pieces[0].mount.as_ref().unwrap().fastening;
        let twin = twin(&job, &install, &plan);
        let mut best: Option<Worth> = None;
        for mask in 1_u32..1 << twin.usable.len() {
            let set: Vec<_> = (0..twin.usable.len())
                .filter(|bit| mask >> bit & 1 == 1)
                .map(|bit| twin.usable[bit])
                .collect();
            best = best.max(twin.worth(&set));
            sets += 1;
        }
        let names: Vec<_> = told.fasteners.iter().map(|fastener| fastener.hole.clone()).collect();
        let holes = &plan.pieces[0].mount.as_ref().unwrap().holes;
        let chosen: Vec<_> =
            twin.usable.iter().filter(|(index, ..)| names.contains(&holes[*index].id)).copied().collect();
        assert_eq!(chosen.len(), names.len(), "plate {plate}: a hole in use that is not usable");
        let worth = if chosen.is_empty() { None } else { twin.worth(&chosen) };
        assert_eq!(worth, best, "plate {plate}: {names:?}");
        assert!(!told.verdict.searched, "plate {plate}");
        assert_eq!(names.len() + told.left_empty.len(), holes.len(), "plate {plate}: each hole is told once");
        let word = told.verdict.if_probed;
        assert_eq!(word == Word::Holds, best.is_some_and(|best| best.0), "plate {plate}");
        chosen_by_words[word as usize] += 1;
    }
    assert!(sets > 5000, "{sets}");
    assert!(chosen_by_words.iter().all(|count| *count > 20), "every word comes: {chosen_by_words:?}");
}
