//! Groups of one to eight fasteners against the product: what a load asks of each, and the worst use.

use strikeline_solver::capacity::case::{Case, CaseName, Posture};
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::group::Group;
use strikeline_solver::capacity::hold::Hold;
use strikeline_solver::capacity::in_plane::{Plane, PlaneLoad};
use strikeline_solver::capacity::opening::Runs;
use strikeline_solver::capacity::out_of_plane::Out;
use strikeline_solver::capacity::placing::Carries;
use strikeline_solver::capacity::seat;
use strikeline_solver::capacity::steel::group_on_steel;
use strikeline_solver::ledger::{Blank, Label};

use super::dice::Dice;
use super::in_plane::{Held, shares_n};
use super::out_of_plane::{Edges, Load, pulls_n};
use super::single::{Drawn, draw};
use super::tally::Tally;
use super::wood;

/// A random group on a random plate, the same for both.
pub(crate) struct Drawing {
    pub(crate) held: Vec<Held>,
    pub(crate) seats: Vec<seat::Seat>,
    pub(crate) plate: [Edges; 2],
}

pub(crate) fn draw_group(dice: &mut Dice) -> Drawing {
    let studs = dice.of(&[&[0.0][..], &[-203.0, 203.0], &[-203.0, 203.0], &[-406.0, 0.0, 406.0]]);
    let concrete = dice.one_in(6);
    // All lags in single faces, all screws, or some of both kinds: slots and wide faces.
    let (lags, slots) = (dice.of(&[0, 1, 2]), dice.one_in(3));
    let drift = dice.of(&[0.0, 3.0, 7.0, 20.0]);
    let jitter = dice.of(&[0.0, 0.0, 0.4, 3.0]);
    let (mut held, mut seats) = (Vec::new(), Vec::new());
    for n in 0..1 + dice.below(8) {
        let stud = dice.below(studs.len());
        let x_mm = studs[stud] + dice.between(-drift, drift);
        let y_mm = dice.of(&[-150.0, -100.0, -50.0, 0.0, 50.0, 100.0, 150.0]) + dice.between(-jitter, jitter);
        let runs =
            if slots { dice.of(&[Runs::Nowhere, Runs::Sideways, Runs::Upright]) } else { Runs::Nowhere };
        let along_only = !concrete && (lags == 0 || (lags == 1 && dice.one_in(2)));
        let carries = if along_only { Carries::Along } else { Carries::Both };
        let in_stud = if concrete { n } else { stud };
        seats.push(seat::Seat::in_stud(x_mm, y_mm, in_stud, carries, runs));
        let one_if = |yes: bool| if yes { 1.0 } else { 0.0 };
        held.push(Held {
            x_mm,
            y_mm,
            stud: (!concrete).then_some(stud),
            across: one_if(!along_only && runs != Runs::Sideways),
            along: one_if(runs != Runs::Upright),
        });
    }
    let mut edge = |axis: usize| {
        let of = |h: &Held| [h.x_mm, h.y_mm][axis];
        let low = held.iter().map(of).fold(f64::INFINITY, f64::min);
        let high = held.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
        let mut beyond = || if dice.one_in(12) { 0.0 } else { dice.between(5.0, 60.0) };
        Edges { low_mm: low - beyond(), high_mm: high + beyond() }
    };
    let plate = [edge(0), edge(1)];
    Drawing { held, seats, plate }
}

impl Drawing {
    pub(crate) fn product(&self) -> Group {
        let [x, y] = self.plate;
        let edges =
            seat::Edges { left_mm: x.low_mm, right_mm: x.high_mm, bottom_mm: y.low_mm, top_mm: y.high_mm };
        Group::of(&mut Blank, &self.seats, &edges, Label::Measured).unwrap()
    }

    /// Shear across, shear along and pull of each, by the second implementation.
    pub(crate) fn second(&self, loads: &[Load]) -> Option<Vec<[f64; 3]>> {
        let mut sum = [0.0; 3];
        for Load { at_mm: [x, y, _], force_n: [right, up, _] } in loads {
            sum[0] += right;
            sum[1] += up;
            sum[2] += x * up - y * right;
        }
        let shares = shares_n(&self.held, sum[0], sum[1], sum[2])?;
        let places: Vec<[f64; 2]> = self.held.iter().map(|h| [h.x_mm, h.y_mm]).collect();
        let pulls = pulls_n(&places, self.plate, loads)?;
        Some(shares.iter().zip(pulls).map(|([across, along], pull)| [*across, *along, pull]).collect())
    }
}

/// A weight or two and perhaps a pull, as loads and as the product's case.
fn draw_loads(dice: &mut Dice, group: &Drawing) -> (Vec<Load>, Case) {
    let (mut loads, mut out) = (Vec::new(), None);
    // Now and then straight below the middle of what carries, so that nothing turns.
    let middle = group.held.iter().map(|h| h.x_mm * h.along).sum::<f64>()
        / group.held.iter().map(|h| h.along).sum::<f64>().max(1.0);
    let at_mm = |dice: &mut Dice| {
        let x = if dice.one_in(3) { middle } else { dice.between(-800.0, 800.0) };
        [x, dice.between(-500.0, 500.0), dice.between(0.0, 700.0)]
    };
    for _ in 0..1 + dice.below(3) {
        loads.push(Load { at_mm: at_mm(dice), force_n: [0.0, -dice.between(10.0, 500.0), 0.0] });
    }
    let down = |of: &dyn Fn(&Load) -> f64| loads.iter().map(of).sum::<f64>();
    let mut case = Case {
        name: CaseName { posture: Posture::AsHung, pull: None },
        lasting: dice.of(&[Lasting::Permanent, Lasting::TenMinutes]),
        down_n: -down(&|l| l.force_n[1]),
        down_x_nmm: -down(&|l| l.force_n[1] * l.at_mm[0]),
        down_z_nmm: -down(&|l| l.force_n[1] * l.at_mm[2]),
        out: None,
        label: Label::Measured,
    };
    if dice.one_in(2) {
        let (at_mm, n) = (at_mm(dice), dice.between(1.0, 500.0));
        loads.push(Load { at_mm, force_n: [0.0, 0.0, n] });
        out = Some(Out { n, x_mm: at_mm[0], high_y_mm: at_mm[1], low_y_mm: at_mm[1] });
    }
    case.out = out;
    (loads, case)
}

/// A hold in wood to measure a group against, and the same by the second implementation.
pub(crate) fn draw_hold(dice: &mut Dice) -> (Drawn, [f64; 3], Hold) {
    loop {
        let drawn = draw(dice);
        if let (Some(mine), Some(theirs)) = (drawn.second(), drawn.product()) {
            return (drawn, mine, theirs);
        }
    }
}

/// Use of one fastener of a group, by the second implementation.
pub(crate) fn second_use(drawn: &Drawn, hold: [f64; 3], asked: [f64; 3], cd: f64) -> f64 {
    let [across, along, pull] = asked;
    let [z_along, z_across, w] = hold.map(|n| n * cd);
    let z = wood::shear_between(z_along, z_across, along, across);
    let steel = wood::own_steel_lbf(&drawn.screw) * super::N_PER_LBF;
    wood::use_in_wood(across.hypot(along), pull, z, w).max(pull / steel)
}

/// 10,000 groups that carry: what a random load asks of each of their fasteners, and the worst use in wood.
#[test]
fn groups_agree() {
    let mut dice = Dice::new(4);
    let mut tally = Tally::default();
    let mut answered = 0;
    while answered < 10_000 {
        let group = draw_group(&mut dice);
        let (loads, case) = draw_loads(&mut dice, &group);
        let (drawn, hold, product_hold) = draw_hold(&mut dice);
        let (mine, product) = (group.second(&loads), group.product());
        let theirs: Result<Vec<_>, _> =
            (0..group.seats.len()).map(|seat| product.asked(&mut Blank, seat, &case)).collect();
        let what = format!("{answered} {:?} {case:?} {:?}", group.held, group.plate);
        tally.told(
            || format!("second {mine:?}, product {theirs:?}, {what}"),
            mine.is_some() == theirs.is_ok(),
        );
        let (Some(mine), Ok(theirs)) = (mine, theirs) else {
            tally.both_none += 1;
            continue;
        };
        answered += 1;
        let scale = theirs.iter().fold(0.0_f64, |s, a| s.max(a.along_n.abs()).max(a.across_n.abs()));
        let cd = if case.lasting == Lasting::Permanent { 0.9 } else { 1.6 };
        let mut worst = 0.0_f64;
        for ([across, along, pull], asked) in mine.iter().zip(&theirs) {
            tally.meet(|| format!("across, {what}"), *across, asked.across_n, scale);
            tally.meet(|| format!("along, {what}"), *along, asked.along_n, scale);
            tally.meet(|| format!("pull, {what}"), *pull, asked.pull_n, 0.0);
            worst = worst.max(second_use(&drawn, hold, [*across, *along, *pull], cd));
        }
        let outcome = product.demand(&[case]).against(&product_hold);
        tally.meet(|| format!("worst use, {what}"), worst, outcome.governing.unwrap().1.value, 0.0);
    }
    tally.end("groups");
}

/// 10,000 groups under a load in their plane that may run sideways too.
#[test]
fn groups_in_their_plane_agree() {
    let mut dice = Dice::new(5);
    let mut tally = Tally::default();
    let mut answered = 0;
    while answered < 10_000 {
        let group = draw_group(&mut dice);
        let (right_n, up_n) = (dice.between(-500.0, 500.0), dice.between(-500.0, 500.0));
        let turning_nmm = dice.between(-1e5, 1e5);
        let mine = shares_n(&group.held, right_n, up_n, turning_nmm);
        let plane = Plane::of(&mut Blank, &group.seats, Label::Measured);
        let load = PlaneLoad { right_n, up_n, turning_nmm, label: Label::Measured };
        let spread = plane.spread(&mut Blank, &load);
        let what = format!("{answered} {:?} {load:?}", group.held);
        tally.told(
            || format!("second {mine:?}, product {spread:?}, {what}"),
            mine.is_some() == spread.is_ok(),
        );
        let (Some(mine), Ok(spread)) = (mine, spread) else {
            tally.both_none += 1;
            continue;
        };
        answered += 1;
        let scale = mine.iter().flatten().fold(0.0_f64, |s, n| s.max(n.abs()));
        for (seat, [across, along]) in mine.iter().enumerate() {
            let (up, right) = plane.shear(&mut Blank, seat, &spread).unwrap();
            tally.meet(|| format!("across, {what}"), *across, right, scale);
            tally.meet(|| format!("along, {what}"), *along, up, scale);
        }
    }
    tally.end("groups in their plane");
}

/// 10,000 groups on steel studs: counted only where nothing swings out and every row is screwed to two studs.
#[test]
fn what_steel_studs_may_be_counted_for_agrees() {
    let mut dice = Dice::new(7);
    let mut tally = Tally::default();
    let mut counted = 0;
    for at in 0..10_000 {
        let studs = dice.of(&[1, 2, 2, 3]);
        let rows = 1 + dice.below(3);
        let jitter = dice.of(&[0.0, 0.3, 2.0]);
        let mut seats = Vec::new();
        for row in 0..rows {
            for stud in (0..studs).filter(|_| !dice.one_in(6)).collect::<Vec<_>>() {
                let y_mm = row as f64 * 100.0 + dice.between(-jitter, jitter);
                seats.push(seat::Seat::in_stud(
                    stud as f64 * 406.0,
                    y_mm,
                    stud,
                    Carries::Both,
                    Runs::Nowhere,
                ));
            }
        }
        let swings_out = dice.one_in(4);
        let braced = |y_mm: f64| {
            let row: Vec<usize> =
                seats.iter().filter(|s| (s.y_mm - y_mm).abs() <= 1.0).map(|s| s.stud).collect();
            row.iter().any(|stud| *stud != row[0])
        };
        let mine = !swings_out && seats.iter().all(|s| braced(s.y_mm));
        counted += usize::from(mine);
        tally.told(
            || format!("{at} {swings_out} {seats:?}"),
            mine == group_on_steel(&seats, swings_out).is_ok(),
        );
    }
    println!("{counted} of 10000 are counted");
    tally.end("groups on steel");
}
