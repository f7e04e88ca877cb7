//! Single fasteners against the product: lags and wood screws in studs, screws in steel, screws in concrete.

use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::hold::{Hold, InWood};
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::steel::in_steel;
use strikeline_solver::capacity::used::{Asked, used};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::units::{Length, Ratio, Stress};

use super::dice::Dice;
use super::embedment::embedment;
use super::metal_and_concrete::{Sheet, concrete_cell_lbf, sheet_cell_lbf, use_in_concrete, use_in_sheet};
use super::sizes::{self, Kind, Threaded};
use super::tally::Tally;
use super::{N_PER_LBF, wood};

fn inches(value: f64) -> Given<Length> {
    Given::measured(Length::inches(value))
}

/// A random fastener in a random stud.
#[derive(Debug)]
pub(crate) struct Drawn {
    pub(crate) screw: Threaded,
    gravity: f64,
    plate_in: f64,
    plate_psi: f64,
    gap_in: f64,
    washer_in: f64,
    stud_in: f64,
}

pub(crate) fn draw(dice: &mut Dice) -> Drawn {
    let length_in =
        if dice.one_in(3) { dice.between(1.0, 7.0) } else { f64::from(dice.below(21) as u32) / 4.0 + 1.0 };
    let screw = if dice.one_in(2) {
        sizes::lag(dice.below(4), length_in)
    } else {
        sizes::wood_screw(dice.below(5), length_in)
    };
    Drawn {
        screw,
        gravity: if dice.one_in(2) {
            dice.of(&[0.36, 0.42, 0.43, 0.5, 0.55])
        } else {
            dice.between(0.31, 0.73)
        },
        plate_in: if dice.one_in(2) { dice.of(&[0.06, 0.075, 0.105]) } else { dice.between(0.03, 0.25) },
        plate_psi: dice.of(&[61_850.0, 61_850.0, 87_000.0]),
        gap_in: if dice.one_in(2) { dice.of(&[0.0, 0.5, 0.625, 0.875]) } else { dice.between(0.0, 1.5) },
        washer_in: if dice.one_in(2) { 0.0 } else { dice.between(0.03, 0.1) },
        stud_in: dice.of(&[1.5, 3.5, 5.5]),
    }
}

impl Drawn {
    /// What it may carry by the second implementation, before load duration, in N: along, across, withdrawal.
    /// None where it is too shallow or reaches past the stud.
    pub(crate) fn second(&self) -> Option<[f64; 3]> {
        let e = embedment(&self.screw, self.washer_in, self.plate_in, self.gap_in);
        if !e.enough || e.whole_in > self.stud_in {
            return None;
        }
        let per_in = wood::withdrawal_lbf_per_in(self.screw.kind, self.gravity, self.screw.nominal_in);
        let lbf =
            [self.shear_lbf(e.bearing_in, 0.0), self.shear_lbf(e.bearing_in, 90.0), per_in * e.thread_in];
        Some(lbf.map(|lbf| lbf * N_PER_LBF))
    }

    fn shear_lbf(&self, bearing_in: f64, off_grain_deg: f64) -> f64 {
        let Self { screw, gravity, plate_psi, plate_in, gap_in, .. } = self;
        wood::shear_lbf(screw, *gravity, off_grain_deg, *plate_psi, *plate_in, bearing_in, *gap_in)
    }

    fn shear_at_angle_n(&self, off_grain_deg: f64) -> f64 {
        let e = embedment(&self.screw, self.washer_in, self.plate_in, self.gap_in);
        self.shear_lbf(e.bearing_in, off_grain_deg) * N_PER_LBF
    }

    pub(crate) fn product(&self) -> Option<Hold> {
        let diameter = inches(self.screw.nominal_in);
        let length = inches(self.screw.length_in);
        let screw = match self.screw.kind {
            Kind::Lag => Screw::lag(diameter, length),
            Kind::WoodScrew => Screw::wood_screw(diameter, length),
        };
        let stack = Stack {
            washer: inches(self.washer_in),
            plate: inches(self.plate_in),
            plate_bearing: Given::measured(Stress::psi(self.plate_psi)),
            gap: inches(self.gap_in),
            stud_depth: inches(self.stud_in),
        };
        let gravity = Given::measured(Ratio::bare(self.gravity));
        in_wood(&mut Blank, &screw.unwrap(), gravity, &stack).ok()
    }
}

/// 10,000 lags and wood screws: capacity both ways and pulled, and their use under a random load.
#[test]
fn lags_and_wood_screws_agree() {
    let mut dice = Dice::new(1);
    let mut tally = Tally::default();
    let mut case = 0;
    while case < 10_000 {
        let drawn = draw(&mut dice);
        let what = format!("{case} {drawn:?}");
        let (mine, theirs) = (drawn.second(), drawn.product());
        tally.told(
            || format!("{what}: second {mine:?}, product {theirs:?}"),
            mine.is_some() == theirs.is_some(),
        );
        let (Some([along, across, pull]), Some(Hold::Wood { permanent, ten_minutes, .. })) = (mine, theirs)
        else {
            tally.both_none += 1;
            continue;
        };
        case += 1;
        let hold = theirs.unwrap();
        for (lasting, cd, InWood { along_n, across_n, withdrawal_n, steel_n }) in
            [(Lasting::Permanent, 0.9, permanent), (Lasting::TenMinutes, 1.6, ten_minutes)]
        {
            tally.meet(|| format!("along, {what}"), along * cd, along_n, 0.0);
            tally.meet(|| format!("across, {what}"), across * cd, across_n, 0.0);
            tally.meet(|| format!("pull, {what}"), pull * cd, withdrawal_n, 0.0);
            let steel = wood::own_steel_lbf(&drawn.screw) * N_PER_LBF;
            tally.meet(|| format!("its steel, {what}"), steel, steel_n, 0.0);
            let (v, t) = (dice.between(0.0, 2.0) * along, dice.between(0.0, 1.5) * pull);
            let off = dice.of(&[0.0, 0.0, 90.0, 30.0, dice_angle(case)]);
            let (sin, cos) = f64::to_radians(off).sin_cos();
            let asked = Asked { along_n: v * cos, across_n: v * sin, pull_n: t, label: Label::Measured };
            let theirs = used(&mut Blank, &asked, &hold, lasting).unwrap().value;
            let z = wood::shear_between(along * cd, across * cd, v * cos, v * sin);
            let mine = wood::use_in_wood(v, t, z, pull * cd).max(t / steel);
            tally.meet(|| format!("use at {off} degrees, {what}"), mine, theirs, 0.0);
            // The chosen bound is never above the equations at the angle itself.
            let at_angle = drawn.shear_at_angle_n(off) * cd;
            tally.told(
                || format!("bound {z} above {at_angle} at {off}, {what}"),
                z <= at_angle * (1.0 + 1e-9),
            );
        }
    }
    tally.end("lags and wood screws");
}

fn dice_angle(case: usize) -> f64 {
    (case % 89) as f64 + 0.5
}

/// 10,000 screws in steel studs.
#[test]
fn screws_in_steel_agree() {
    let mut dice = Dice::new(2);
    let mut tally = Tally::default();
    let diameters = [0.138, 0.164, 0.19, 0.216, 0.25];
    for case in 0..10_000 {
        let screw = dice.below(5);
        let (sheet, mil) =
            dice.of(&[(Some(Sheet::Mil18), 18.0), (Some(Sheet::Mil27), 27.0), (None, 30.0), (None, 33.0)]);
        let gap_in = dice.of(&[0.0, 0.5, 0.625, 1.25]);
        let theirs = in_steel(
            &mut Blank,
            inches(diameters[screw]),
            Given::measured(Length::mils(mil)),
            inches(gap_in),
        )
        .ok();
        let what = format!("{case} {mil} mil, screw {screw}, gap {gap_in}");
        tally.told(|| what.clone(), sheet.is_some() == theirs.is_some());
        let (Some(sheet), Some(theirs)) = (sheet, theirs) else {
            tally.both_none += 1;
            continue;
        };
        let (v, t) = (dice.between(0.0, 500.0), dice.between(0.0, 300.0));
        let asked = Asked { along_n: v * 0.6, across_n: v * 0.8, pull_n: t, label: Label::Measured };
        let theirs = used(
            &mut Blank,
            &asked,
            &Hold::Linear(theirs),
            dice.of(&[Lasting::Permanent, Lasting::TenMinutes]),
        );
        let mine = use_in_sheet(v / N_PER_LBF, t / N_PER_LBF, sheet_cell_lbf(sheet, screw), gap_in > 0.0);
        tally.meet(|| what.clone(), mine, theirs.unwrap().value, 0.0);
    }
    tally.end("screws in steel");
}

/// 10,000 concrete screws, some where the table does not reach.
#[test]
fn screws_in_concrete_agree() {
    let mut dice = Dice::new(3);
    let mut tally = Tally::default();
    for case in 0..10_000 {
        let quarter = dice.one_in(2);
        let d_in = if quarter { 0.25 } else { 0.1875 };
        let strength = dice.of(&[None, Some(2500.0), Some(dice_psi(case)), Some(4000.0)]);
        let depth_in = dice.of(&[1.75, 2.0, 2.0, 1.5]);
        let gap_in = dice.of(&[0.0, 0.0, 0.0625, 0.5]);
        let edge_in = dice.of(&[16.0, 20.0, 40.0, 15.0]) * d_in;
        let normal_weight = !dice.one_in(5);
        let what = format!("{case} {d_in} {strength:?} {depth_in} {gap_in} {edge_in} {normal_weight}");
        let screw = ConcreteScrew {
            diameter: inches(d_in),
            depth: inches(depth_in),
            gap: inches(gap_in),
            edge: inches(edge_in),
            strength: strength.map(|psi| Given::measured(Stress::psi(psi))),
            normal_weight,
        };
        let theirs = in_concrete(&mut Blank, &screw).ok();
        let placed = normal_weight && depth_in >= 1.75 && gap_in <= 0.0625 && edge_in >= 16.0 * d_in;
        let mine = concrete_cell_lbf(quarter, strength).filter(|_| placed);
        tally.told(|| what.clone(), mine.is_some() == theirs.is_some());
        let (Some(mine), Some(theirs)) = (mine, theirs) else {
            tally.both_none += 1;
            continue;
        };
        let (v, t) = (dice.between(0.0, 2000.0), dice.between(0.0, 2000.0));
        let asked = Asked { along_n: v * 0.6, across_n: -v * 0.8, pull_n: t, label: Label::Measured };
        let theirs = used(&mut Blank, &asked, &Hold::Linear(theirs), Lasting::Permanent).unwrap().value;
        tally.meet(|| what.clone(), use_in_concrete(v / N_PER_LBF, t / N_PER_LBF, mine), theirs, 0.0);
    }
    tally.end("screws in concrete");
}

fn dice_psi(case: usize) -> f64 {
    2000.0 + (case % 3000) as f64
}
