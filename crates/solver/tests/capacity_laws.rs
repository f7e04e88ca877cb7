//! Laws of what fasteners carry and are asked, on many random ones.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

#[path = "capacity_laws/random.rs"]
mod random;

use proptest::prelude::*;
use random::{Install, alike_hold, install, lag_or_screw, soft_wood, some_hold, stack};
use strikeline_solver::capacity::bite::bite;
use strikeline_solver::capacity::dowel_bearing::Grain;
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::group::Group;
use strikeline_solver::capacity::hold::{Hold, InWood};
use strikeline_solver::capacity::in_plane::{Plane, PlaneLoad};
use strikeline_solver::capacity::lateral::lateral;
use strikeline_solver::capacity::leading::leading;
use strikeline_solver::capacity::posture::{case, cases, names};
use strikeline_solver::capacity::used::{Asked, used};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::ledger::{Blank, Given, Label, Working};
use strikeline_solver::units::Length;

/// What a sum may lose to rounding, as a share.
const NOISE: f64 = 1e-9;

/// The same cases each time.
fn config() -> ProptestConfig {
    ProptestConfig {
        cases: 2000,
        failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(6),
        ..ProptestConfig::default()
    }
}

fn uses(install: &Install, hold: &Hold) -> Option<f64> {
    let group = Group::of(&mut Blank, &install.seats, &install.edges, Label::Measured).unwrap();
    let outcome = group.demand(&cases(&install.hanging).unwrap()).against(hold);
    // Where a case is not known, so is the worst.
    if outcome.not_known.is_some() { None } else { outcome.governing.map(|(_, used)| used.value) }
}

/// A use that is not known is not less than any.
fn no_less(more: Option<f64>, less: Option<f64>) -> bool {
    match (more, less) {
        (Some(more), Some(less)) => more >= less * (1.0 - NOISE),
        _ => true,
    }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn use_rises_with_shear_and_with_pull(
        hold in some_hold(), v in 0.0..3000.0, angle in 0.0..90.0f64, t in 0.0..3000.0, by in 1.0..3.0f64,
    ) {
        let asked = |v: f64, t: f64| {
            let asked = Asked { along_n: v * angle.to_radians().cos(), across_n: v * angle.to_radians().sin(), pull_n: t, label: Label::Derived };
            used(&mut Blank, &asked, &hold, Lasting::TenMinutes).unwrap().value
        };
        let here = asked(v, t);
        prop_assert!(asked(v * by, t) >= here * (1.0 - NOISE));
        prop_assert!(asked(v, t * by) >= here * (1.0 - NOISE));
    }

    #[test]
    fn a_longer_thread_never_lowers_and_a_thicker_gap_never_raises(
        (screw, longer) in lag_or_screw(), wood in soft_wood(), gap in 0.0..1.2, thicker in 0.0..0.5,
    ) {
        let here = in_wood(&mut Blank, &screw, wood, &stack(gap));
        let long = in_wood(&mut Blank, &longer, wood, &stack(gap));
        let thick = in_wood(&mut Blank, &screw, wood, &stack(gap + thicker));
        if let (Ok(here), Ok(long)) = (&here, &long) {
            prop_assert!(not_more(here, long), "{here:?} {long:?}");
        }
        if let (Ok(here), Ok(thick)) = (&here, &thick) {
            prop_assert!(not_more(thick, here), "{here:?} {thick:?}");
        }
    }

    #[test]
    fn any_angle_to_the_grain_is_carried_by_the_equations(wood in soft_wood(), gap in 0.0..1.0, deg in 0.0..90.0f64) {
        // The equations at an angle (Hankinson's bearing, K_theta = 1 + 0.25 deg/90) never carry less than is counted.
        let (screw, _) = random::lag(0.3125, 3.5);
        let stack = stack(gap);
        let bite = bite(&mut Blank, &screw, &stack).unwrap();
        let one = Given::measured(1.0);
        let along = lateral(&mut Blank, &screw, wood, &stack, &bite, Grain::Along, one).unwrap().holds.value.n();
        let across = lateral(&mut Blank, &screw, wood, &stack, &bite, Grain::Across, one).unwrap().holds.value.n();
        let at_angle = random::at_angle(&screw, wood.value.value(), &stack, bite.bearing.value.in_inches(), deg);
        let hold = InWood { along_n: along, across_n: across, withdrawal_n: 1e6, steel_n: 1e6 };
        let label = strikeline_solver::ledger::Label::Read;
        let hold = Hold::Wood { permanent: hold, ten_minutes: hold, label };
        let (sin, cos) = deg.to_radians().sin_cos();
        let asked = Asked { along_n: 100.0 * cos, across_n: 100.0 * sin, pull_n: 0.0, label: Label::Derived };
        let counted = 100.0 / used(&mut Blank, &asked, &hold, Lasting::Permanent).unwrap().value;
        prop_assert!(counted <= at_angle * (1.0 + 1e-6), "{counted} at {deg}: {at_angle}");
    }

    #[test]
    fn more_weight_reach_or_pull_never_uses_less(
        install in install(), hold in some_hold(), more in 1.0..2.0f64,
    ) {
        let here = uses(&install, &hold);
        let mut heavy = install.clone();
        for mass in &mut heavy.hanging.masses {
            mass.kg *= more;
        }
        prop_assert!(no_less(uses(&heavy, &hold), here), "weight");
        let mut pulled = install.clone();
        pulled.hanging.pull_n *= more;
        prop_assert!(no_less(uses(&pulled, &hold), here), "pull");
        prop_assert!(no_less(uses(&install.reaching(more), &hold), here), "reach");
    }

    #[test]
    fn the_leading_cases_hold_the_worst_of_all(install in install(), hold in alike_hold()) {
        let group = Group::of(&mut Blank, &install.seats, &install.edges, Label::Measured).unwrap();
        let all = cases(&install.hanging).unwrap();
        let few = leading(&all);
        let (of_all, of_few) = (group.demand(&all).against(&hold), group.demand(&few).against(&hold));
        prop_assert_eq!(of_all.not_known.is_some(), of_few.not_known.is_some());
        if of_all.not_known.is_none() {
            let (worst, found) = (of_all.governing.unwrap().1.value, of_few.governing.unwrap().1.value);
            prop_assert!(found <= worst && found >= worst * (1.0 - NOISE), "{worst} {found}");
        }
    }

    #[test]
    fn the_worst_is_the_largest_use(install in install(), hold in some_hold()) {
        // The plain way: every ask worked out in full.
        let group = Group::of(&mut Blank, &install.seats, &install.edges, Label::Measured).unwrap();
        let demand = group.demand(&cases(&install.hanging).unwrap());
        let most = demand.asks.iter().map(|ask| used(&mut Blank, &ask.asked, &hold, ask.lasting).unwrap().value);
        let most = most.fold(None, |most: Option<f64>, value| Some(most.map_or(value, |most| most.max(value))));
        prop_assert_eq!(demand.against(&hold).governing.map(|(_, used)| used.value), most);
    }

    #[test]
    fn forces_in_the_plane_balance_the_load(install in install(), up in -900.0..900.0, turning in -1e5..1e5) {
        let load = PlaneLoad { right_n: 0.0, up_n: up, turning_nmm: turning, label: Label::Derived };
        let plane = Plane::of(&mut Blank, &install.seats, Label::Measured);
        // What nothing carries is not known, and not wrong.
        let Ok(spread) = plane.spread(&mut Blank, &load) else { return Ok(()) };
        let forces: Vec<(f64, f64)> =
            (0..install.seats.len()).map(|seat| plane.shear(&mut Blank, seat, &spread).unwrap()).collect();
        let (mut sum_up, mut sum_right, mut turned) = (0.0, 0.0, 0.0);
        for (seat, (up, right)) in install.seats.iter().zip(&forces) {
            sum_up += up;
            sum_right += right;
            turned += up * seat.x_mm - right * seat.y_mm;
            prop_assert!(seat.across || right.abs() == 0.0);
            prop_assert!(seat.along || up.abs() == 0.0);
        }
        prop_assert!((sum_up - up).abs() < 1e-6 && sum_right.abs() < 1e-6);
        // Up to 0.5 N m is none where nothing carries turning.
        prop_assert!((turned - turning).abs() < 500.0 + 1e-3, "{turned} {turning}");
    }

    #[test]
    fn a_working_has_the_same_bits(
        install in install(), (screw, _) in lag_or_screw(), wood in soft_wood(), gap in 0.0..1.2,
    ) {
        let mut working = Working::default();
        let plain = in_wood(&mut Blank, &screw, wood, &stack(gap));
        let told = in_wood(&mut working, &screw, wood, &stack(gap));
        prop_assert_eq!(format!("{plain:?}"), format!("{told:?}"));
        let group = Group::of(&mut Blank, &install.seats, &install.edges, Label::Measured).unwrap();
        let again = Group::of(&mut working, &install.seats, &install.edges, Label::Measured).unwrap();
        prop_assert_eq!(&group, &again);
        for (name, plain) in names(&install.hanging).unwrap().into_iter().zip(cases(&install.hanging).unwrap()) {
            let told = case(&mut working, &install.hanging, name).unwrap();
            prop_assert_eq!(told, plain);
            let asked = (group.asked(&mut Blank, 0, &plain), again.asked(&mut working, 0, &told));
            prop_assert_eq!(asked.0, asked.1);
            if let (Ok(hold), Ok(asked)) = (&told_hold(&screw, wood, gap), asked.0) {
                let plain = used(&mut Blank, &asked, hold, plain.lasting).unwrap();
                let steps = working.steps.len();
                let told = used(&mut working, &asked, hold, told.lasting).unwrap();
                prop_assert_eq!(plain, told);
                // What is kept ends in the number that was passed on.
                prop_assert!(working.steps.len() > steps);
                let last = working.steps.last().unwrap();
                prop_assert_eq!((last.name, last.result.value.to_bits()), ("use", told.value.to_bits()));
            }
        }
        prop_assert!(working.steps.iter().all(|step| !step.source.is_empty() && step.result.value.is_finite()));
    }
}

fn told_hold(
    screw: &strikeline_solver::capacity::screw::Screw,
    wood: Given<strikeline_solver::units::Ratio>,
    gap: f64,
) -> Result<Hold, strikeline_solver::capacity::why::Why> {
    in_wood(&mut Blank, screw, wood, &stack(gap))
}

/// Whether the first carries no more than the second in anything.
fn not_more(first: &Hold, second: &Hold) -> bool {
    let (Hold::Wood { permanent: a, ten_minutes: b, .. }, Hold::Wood { permanent: c, ten_minutes: d, .. }) =
        (first, second)
    else {
        return false;
    };
    let all = |wood: &InWood| [wood.along_n, wood.across_n, wood.withdrawal_n, wood.steel_n];
    let pairs = all(a).into_iter().zip(all(c)).chain(all(b).into_iter().zip(all(d)));
    pairs.into_iter().all(|(less, more)| less <= more * (1.0 + NOISE))
}

#[test]
fn a_screw_that_turns_in_deeper_passes_the_stud_at_last() {
    let (screw, _) = random::lag(0.25, 6.0);
    let mut stack = stack(0.5);
    stack.stud_depth = Given::measured(Length::inches(3.5));
    let found = bite(&mut Blank, &screw, &stack);
    assert!(matches!(found, Err(strikeline_solver::capacity::why::Why::PastStud { .. })), "{found:?}");
}
