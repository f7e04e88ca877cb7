//! What a group carries and what it cannot.

use strikeline_solver::capacity::case::{Case, CaseName, Posture};
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::group::{Group, Word};
use strikeline_solver::capacity::hold::{Hold, InWood, Linear};
use strikeline_solver::capacity::out_of_plane::Out;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::steel::group_on_steel;
use strikeline_solver::capacity::used::{Asked, Term, used};
use strikeline_solver::capacity::why::Why;
use strikeline_solver::ledger::{Blank, Label, Working};

const EDGES: Edges = Edges { left_mm: -300.0, right_mm: 300.0, bottom_mm: -120.0, top_mm: 120.0 };

fn lag(stud: usize, x_mm: f64, y_mm: f64) -> Seat {
    Seat { x_mm, y_mm, stud, along: true, across: false }
}

fn load(down_n: f64, down_x_nmm: f64, down_z_nmm: f64, out: Option<Out>) -> Case {
    Case {
        name: CaseName { posture: Posture::AsHung, pull: None },
        lasting: Lasting::Permanent,
        down_n,
        down_x_nmm,
        down_z_nmm,
        out,
        label: Label::Derived,
    }
}

fn group(seats: &[Seat]) -> Group {
    Group::of(&mut Blank, seats, &EDGES, Label::Measured).unwrap()
}

fn asked(seats: &[Seat], seat: usize, case: &Case) -> Result<Asked, Why> {
    group(seats).asked(&mut Blank, seat, case)
}

#[test]
fn offsets_within_one_stud_are_no_lever() {
    let one_stud = [lag(0, -10.0, 100.0), lag(0, 10.0, -100.0)];
    // 20 apart within the stud, and yet nothing carries the turning.
    assert_eq!(asked(&one_stud, 0, &load(100.0, 5000.0, 0.0, None)), Err(Why::Turns { nmm: 5000.0 }));
    assert_eq!(asked(&one_stud, 0, &load(100.0, 0.0, 0.0, None)).unwrap().along_n, -50.0);
    // Two studs 400 apart, one with two staggered: 200 N at the second stud's middle go to that stud alone.
    let two_studs = [lag(0, 0.0, 0.0), lag(1, 390.0, 100.0), lag(1, 410.0, -100.0)];
    let at_second = load(200.0, 200.0 * 400.0, 0.0, None);
    assert!(asked(&two_studs, 0, &at_second).unwrap().along_n.abs() < 1e-9);
    for seat in [1, 2] {
        assert!((asked(&two_studs, seat, &at_second).unwrap().along_n + 100.0).abs() < 1e-9);
    }
}

#[test]
fn one_fastener_that_carries_across_makes_no_lever_within_its_stud() {
    // A lag near the edge of a wide face carries along only, its neighbour both ways: 30 aside and 100 above one
    // another they would hold 6 N m as 200 N up and 200 N down, by a lever that no rule grants.
    let mixed = [lag(0, 0.0, 0.0), Seat { across: true, ..lag(0, 30.0, 100.0) }];
    let turned = load(100.0, 100.0 * 15.0 + 6000.0, 0.0, None);
    assert_eq!(asked(&mixed, 0, &turned), Err(Why::Turns { nmm: 6000.0 }));
    // A second one that carries across takes it as two sideways forces, 100 apart.
    let held = [mixed[0], mixed[1], Seat { across: true, ..lag(0, 0.0, 0.0) }];
    let turned = load(90.0, 90.0 * 10.0 + 6000.0, 0.0, None);
    let shear = asked(&held, 1, &turned).unwrap();
    assert!((shear.along_n + 30.0).abs() < 1e-9 && (shear.across_n.abs() - 60.0).abs() < 1e-9, "{shear:?}");
}

#[test]
fn screws_that_carry_across_hold_a_plate_on_one_stud() {
    let screw = |y_mm| Seat { across: true, ..lag(0, 0.0, y_mm) };
    let shear = asked(&[screw(100.0), screw(-100.0)], 0, &load(100.0, 5000.0, 0.0, None)).unwrap();
    // 5000 over 200 apart: 25 N sideways on each.
    assert!((shear.along_n + 50.0).abs() < 1e-9 && (shear.across_n.abs() - 25.0).abs() < 1e-9);
}

#[test]
fn a_fastener_in_an_upright_slot_carries_no_weight() {
    let slotted = Seat { along: false, ..lag(0, -200.0, 0.0) };
    let both = [slotted, lag(1, 200.0, 0.0)];
    assert_eq!(asked(&both, 0, &load(100.0, 20_000.0, 0.0, None)).unwrap().along_n, 0.0);
    assert_eq!(asked(&both, 1, &load(100.0, 20_000.0, 0.0, None)).unwrap().along_n, -100.0);
    let all_slotted = [slotted, Seat { along: false, ..lag(1, 200.0, 0.0) }];
    assert_eq!(asked(&all_slotted, 0, &load(100.0, 0.0, 0.0, None)), Err(Why::NothingCarries));
}

#[test]
fn one_row_levers_on_the_edge_of_its_plate() {
    // 100 N at 60 in front: 6000 over 100 - -120 = 220, by two.
    let row = [lag(0, -200.0, 100.0), lag(1, 200.0, 100.0)];
    let pull = asked(&row, 0, &load(100.0, 0.0, 6000.0, None)).unwrap().pull_n;
    assert!((pull - 6000.0 / 220.0 / 2.0).abs() < 1e-9);
    // Rows a millimetre apart are one.
    let nearly = [lag(0, -200.0, 100.0), lag(1, 200.0, 99.0)];
    assert!((asked(&nearly, 1, &load(100.0, 0.0, 6000.0, None)).unwrap().pull_n - pull).abs() < 1e-9);
    // Two rows pivot on the lower, which is never carried by the edge.
    let rows = [lag(0, 0.0, 100.0), lag(1, 400.0, 100.0), lag(0, 0.0, 0.0), lag(1, 400.0, 0.0)];
    let case = load(100.0, 200.0 * 100.0, 6000.0, None);
    assert_eq!(asked(&rows, 0, &case).unwrap().pull_n, 6000.0 / 100.0 / 2.0);
    assert_eq!(asked(&rows, 2, &case).unwrap().pull_n, 0.0);
    // A row at the very edge that would be the pivot levers on nothing.
    let low = [lag(0, -200.0, -120.0), lag(1, 200.0, -120.0)];
    assert_eq!(asked(&low, 0, &load(100.0, 0.0, 6000.0, None)), Err(Why::NoLever));
}

#[test]
fn what_relieves_a_side_is_left_out_there() {
    let rows = [lag(0, -200.0, 100.0), lag(1, 200.0, 100.0), lag(0, -200.0, -100.0), lag(1, 200.0, -100.0)];
    // A pull of 80 N straight out 200 below the middle: about the upper row 80 x 300 pull the lower, 24,000 over 200 by
    // two = 60 N. The weight, which presses it, is left out. Sideways 80 x 200 over 400 by two = 20 N.
    let out = Some(Out { n: 80.0, x_mm: 0.0, high_y_mm: -200.0, low_y_mm: -200.0 });
    let case = load(100.0, 0.0, 7000.0, out);
    assert!((asked(&rows, 2, &case).unwrap().pull_n - 80.0).abs() < 1e-9);
    // The upper row: the pull is beyond its pivot and would relieve it. 7000 over 200 by two = 17.5, and 20 sideways.
    assert!((asked(&rows, 0, &case).unwrap().pull_n - 37.5).abs() < 1e-9);
}

#[test]
fn an_assumed_place_is_never_promoted() {
    let seats = [lag(0, -200.0, 100.0), lag(1, 200.0, 100.0), lag(0, -200.0, -100.0), lag(1, 200.0, -100.0)];
    let last = |places: Label, load_label: Label| {
        let mut working = Working::default();
        let group = Group::of(&mut working, &seats, &EDGES, places).unwrap();
        let case = Case { label: load_label, ..load(100.0, 500.0, 7000.0, None) };
        group.asked(&mut working, 0, &case).unwrap();
        let told: Vec<Label> = ["shear along the stud asked of it", "pull"]
            .map(|name| working.steps.iter().find(|step| step.name == name).unwrap().label)
            .to_vec();
        told
    };
    assert_eq!(last(Label::Measured, Label::Derived), [Label::Chosen; 2]);
    assert_eq!(last(Label::Assumed, Label::Derived), [Label::Assumed; 2]);
    assert_eq!(last(Label::Measured, Label::Assumed), [Label::Assumed; 2]);
}

#[test]
fn a_pull_at_a_side_is_held_by_the_columns_of_that_side() {
    let rows = [lag(0, -200.0, 100.0), lag(1, 200.0, 100.0), lag(0, -200.0, -100.0), lag(1, 200.0, -100.0)];
    // 80 N straight out 500 to the left, level with the middle: 80 x 700 over 400 by two = 70 N on the left, nothing on
    // the right; and 80 x 100 over 200 by two = 20 N on every row.
    let at = |x_mm: f64, seat: usize| {
        let case = load(0.0, 0.0, 0.0, Some(Out { n: 80.0, x_mm, high_y_mm: 0.0, low_y_mm: 0.0 }));
        asked(&rows, seat, &case).unwrap().pull_n
    };
    for seat in [0, 2] {
        assert!((at(-500.0, seat) - 90.0).abs() < 1e-9 && (at(500.0, seat) - 20.0).abs() < 1e-9);
    }
    for seat in [1, 3] {
        assert!((at(500.0, seat) - 90.0).abs() < 1e-9 && (at(-500.0, seat) - 20.0).abs() < 1e-9);
    }
}

#[test]
fn of_several_cases_the_worst_is_told() {
    let hold = Hold::Linear(Linear { shear_n: 100.0, pull_n: 100.0, label: Label::Read });
    let one_stud = group(&[lag(0, 0.0, 100.0), lag(0, 0.0, -100.0)]);
    let fits = load(100.0, 0.0, 0.0, None);
    let turns = load(100.0, 90_000.0, 0.0, None);
    let short = load(300.0, 0.0, 0.0, None);
    let word = |cases: &[Case]| one_stud.demand(cases).against(&hold).word();
    assert_eq!(word(&[fits]), Word::Holds);
    assert_eq!(word(&[fits, turns]), Word::NotKnown);
    assert_eq!(word(&[turns, short, fits]), Word::Short);
    assert_eq!(word(&[turns]), Word::NotKnown);
    assert_eq!(word(&[]), Word::NotKnown);
    let outcome = one_stud.demand(&[turns, short, fits]).against(&hold);
    let (ask, most) = outcome.governing.unwrap();
    assert_eq!((ask.case, most.value, outcome.not_known.unwrap().0), (1, 1.5, 0));
    let told = one_stud.demand(&[turns, short, fits]).by_case(&hold);
    let told: Vec<(usize, bool)> = told.iter().map(|(case, found)| (*case, found.is_ok())).collect();
    assert_eq!(told, [(0, false), (1, true), (2, true)]);
}

#[test]
fn a_pull_never_lets_a_fastener_carry_more_shear() {
    // Behind a gap W'p is far over 2 Z': the combined equation alone would allow more shear with a pull than without.
    let wood = InWood { along_n: 500.0, across_n: 500.0, withdrawal_n: 2000.0, steel_n: 9000.0 };
    let hold = Hold::Wood { permanent: wood, ten_minutes: wood, label: Label::Derived };
    let with = |v: f64, t: f64| {
        used(
            &mut Blank,
            &Asked { along_n: v, across_n: 0.0, pull_n: t, label: Label::Derived },
            &hold,
            Lasting::Permanent,
        )
        .unwrap()
    };
    assert_eq!((with(500.0, 0.0).value, with(500.0, 300.0).value), (1.0, 1.0));
    assert_eq!(with(500.0, 300.0).term, Term::Shear);
    // (500 x 1.0 + 1500 x 0.75)/sqrt(500^2 + 1500^2) = 1625/1581.1 = 1.028.
    let both = with(500.0, 1500.0);
    assert!((both.value - 1.027_74).abs() < 1e-4 && both.term == Term::Combined, "{both:?}");
    assert_eq!(with(0.0, 3000.0).term, Term::Withdrawal);
    assert!((with(250.0, 0.0).reserve(&mut Blank, 2.0, Label::Derived) - 1.0).abs() < 1e-12);
    assert_eq!(with(0.0, 0.0).reserve(&mut Blank, 2.0, Label::Derived), 2.0);
}

#[test]
fn steel_wants_every_row_in_two_studs_and_no_arm() {
    let both = [lag(0, 0.0, 100.0), lag(1, 400.0, 100.0), lag(0, 0.0, 0.0), lag(1, 400.0, 0.0)];
    assert_eq!(group_on_steel(&both, false), Ok(()));
    assert_eq!(group_on_steel(&both, true), Err(Why::ArmOnSteel));
    assert_eq!(group_on_steel(&both[..3], false), Err(Why::RowOnOneStud));
}
