//! One fastener: what it carries, where it may stand, the hole it takes and the hole it is given.

use super::sample::{inch, ratio};
use strikeline_solver::capacity::bite::{Stack, bite};
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::dowel_bearing::{Grain, dowel_bearing};
use strikeline_solver::capacity::hold::Hold;
use strikeline_solver::capacity::lead_hole::{Bits, bit, from_face, from_face_with_room, lead_hole};
use strikeline_solver::capacity::opening::{Opening, Runs, takes};
use strikeline_solver::capacity::placing::{
    Carries, InFace, apart_in_concrete, apart_in_steel, carries, edge_in_steel, to_end, too_near_in_stud,
};
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::Seat;
use strikeline_solver::capacity::stated::{Report, fixing};
use strikeline_solver::capacity::steel::in_steel;
use strikeline_solver::capacity::why::{Input, Why};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::handbook::gravity::UNIDENTIFIED;
use strikeline_solver::ledger::{Blank, Given, Label, Working};
use strikeline_solver::units::{Force, ForcePerLength, Length, Ratio, Stress};

fn stack(gap: f64) -> Stack {
    Stack {
        washer: inch(0.0),
        plate: inch(0.075),
        plate_bearing: Given::new(Stress::psi(61_850.0), Label::Read),
        gap: inch(gap),
        stud_depth: inch(3.5),
    }
}

fn lag() -> Screw {
    Screw::lag(inch(0.3125), inch(3.0)).unwrap()
}

fn screw() -> Screw {
    Screw::wood_screw(inch(0.19), inch(3.0)).unwrap()
}

fn report() -> Report {
    Report {
        outer_diameter: Length::inches(0.25),
        root_diameter: Length::inches(0.19),
        bending: Stress::psi(150_000.0),
        thread: Length::inches(2.0),
        withdrawal: ForcePerLength::pounds_force_per_inch(200.0),
        gravity: Ratio::bare(0.5),
        least_depth: Length::inches(1.5),
        least_edge: Length::inches(0.5),
    }
}

fn in_face(drift: f64, doubt: f64) -> InFace {
    InFace { face: inch(1.5), drift: inch(drift), doubt: inch(doubt) }
}

#[test]
fn what_always_hangs_counts_with_nine_tenths_and_a_pull_with_sixteen() {
    let Ok(Hold::Wood { permanent, ten_minutes, label }) =
        in_wood(&mut Blank, &lag(), ratio(0.36), &stack(0.5))
    else {
        panic!("no hold");
    };
    for (long, short) in [
        (permanent.along_n, ten_minutes.along_n),
        (permanent.across_n, ten_minutes.across_n),
        (permanent.withdrawal_n, ten_minutes.withdrawal_n),
    ] {
        assert!((long / short - 0.9 / 1.6).abs() < 1e-12);
    }
    // Metal takes no load duration: a third of 60,000 psi on pi/4 x 0.227^2 = 809 lbf.
    assert_eq!(permanent.steel_n, ten_minutes.steel_n);
    assert!((Force::newtons(permanent.steel_n).lbf() - 809.4).abs() < 0.5);
    // 471 lbf of withdrawal, 120.6 lbf of shear behind 1/2 in, as worked for the ordinary installs.
    assert!((Force::newtons(ten_minutes.withdrawal_n).lbf() - 471.3).abs() < 0.5);
    assert!((Force::newtons(ten_minutes.along_n).lbf() - 120.6).abs() < 0.1);
    // It rests on the steel's share, which is chosen.
    assert_eq!(label, Label::Chosen);
}

#[test]
fn the_grain_counts_from_a_quarter_inch_on() {
    let both = |screw: &Screw| {
        let Ok(Hold::Wood { permanent, .. }) = in_wood(&mut Blank, screw, ratio(0.42), &stack(0.5)) else {
            panic!("no hold");
        };
        (permanent.along_n, permanent.across_n)
    };
    let (along, across) = both(&screw());
    assert_eq!(along, across);
    // NDS 2018 Table 12.3.1B, first note: K_theta counts for a nominal 1/4 in whose root is less.
    let (along, across) = both(&Screw::lag(inch(0.25), inch(3.0)).unwrap());
    assert!(along / across >= 1.25);
}

#[test]
fn a_structural_screw_bears_by_the_lesser_equation() {
    // D 1/4 in, G 0.36: 11,200 G = 4032, 16,600 G^1.84 = 2533: 2550 psi. G 0.67: 7504 and 7945: 7500 psi.
    let stated = Screw::structural(inch(3.5), report()).unwrap();
    let bears = |g: f64| {
        let found = dowel_bearing(&mut Blank, &stated, ratio(g), Grain::Along).unwrap();
        found.value.in_psi().round()
    };
    assert_eq!((bears(0.36), bears(0.67)), (2550.0, 7500.0));
}

#[test]
fn a_slot_and_a_narrow_face_each_take_a_way_to_carry() {
    let seat = |carries, runs| Seat::in_stud(0.0, 0.0, 0, carries, runs);
    let ways = |seat: Seat| (seat.along, seat.across);
    assert_eq!(ways(seat(Carries::Both, Runs::Nowhere)), (true, true));
    assert_eq!(ways(seat(Carries::Along, Runs::Nowhere)), (true, false));
    assert_eq!(ways(seat(Carries::Both, Runs::Sideways)), (true, false));
    assert_eq!(ways(seat(Carries::Along, Runs::Upright)), (false, false));
}

#[test]
fn a_label_is_never_promoted() {
    let mut thick = stack(0.5);
    thick.plate.label = Label::Assumed;
    assert_eq!(in_wood(&mut Blank, &lag(), ratio(0.36), &thick).unwrap().label(), Label::Assumed);
    let gravity = Given::new(Ratio::bare(UNIDENTIFIED.value), UNIDENTIFIED.label);
    let mut working = Working::default();
    in_wood(&mut working, &lag(), gravity, &stack(0.5)).unwrap();
    let chosen: Vec<&str> = working.resting_on(Label::Chosen).iter().map(|put| put.symbol).collect();
    assert_eq!(chosen, ["share", "G"]);
    assert!(working.resting_on(Label::Memory).is_empty());
    let stated = Screw::structural(inch(3.5), report()).unwrap();
    assert_eq!(in_wood(&mut Blank, &stated, ratio(0.42), &stack(0.5)).unwrap().label(), Label::Stated);
}

#[test]
fn a_washer_a_plate_and_board_are_off_the_depth() {
    let mut stack = stack(0.5);
    stack.washer = inch(0.125);
    let found = bite(&mut Blank, &lag(), &stack).unwrap();
    // 3 - 0.125 - 0.075 - 0.5 = 2.3; thread 2 - 3/16.
    assert!((found.depth.value.in_inches() - 2.3).abs() < 1e-9);
    assert!((found.thread.value.in_inches() - 1.8125).abs() < 1e-9);
    // Behind 1 1/2 in only 1.3 is in wood, all of it thread, and 1.3 - 3/16 < 4 x 5/16 is too shallow.
    stack.gap = inch(1.5);
    assert!(matches!(bite(&mut Blank, &lag(), &stack), Err(Why::Shallow { .. })));
    // Of a wood screw the tip counts: 2.3 of 3, its thread 2.
    stack.gap = inch(0.5);
    assert!((bite(&mut Blank, &screw(), &stack).unwrap().thread.value.in_inches() - 2.0).abs() < 1e-9);
    stack.stud_depth = inch(2.25);
    assert!(matches!(bite(&mut Blank, &lag(), &stack), Err(Why::PastStud { .. })));
}

#[test]
fn a_softer_stud_takes_a_stated_withdrawal_down_and_a_harder_one_never_up() {
    let stated = Screw::structural(inch(3.5), report()).unwrap();
    let pulled = |g: f64| {
        let Ok(Hold::Wood { permanent, .. }) = in_wood(&mut Blank, &stated, ratio(g), &stack(0.5)) else {
            panic!("no hold");
        };
        permanent.withdrawal_n
    };
    assert!((pulled(0.36) / pulled(0.5) - 0.36 * 0.36 / 0.25).abs() < 1e-12);
    assert_eq!(pulled(0.6), pulled(0.5));
}

#[test]
fn a_lag_carries_across_only_with_four_diameters_to_both_edges() {
    assert_eq!(carries(&mut Blank, &lag(), &in_face(0.2, 0.08)), Ok(Carries::Along));
    assert!(matches!(carries(&mut Blank, &lag(), &in_face(0.2, 0.09)), Err(Why::Edge { .. })));
    assert!(matches!(carries(&mut Blank, &lag(), &in_face(-0.2, 0.09)), Err(Why::Edge { .. })));
    let wide = |face, drift| InFace { face: inch(face), ..in_face(drift, 0.0) };
    assert_eq!(carries(&mut Blank, &lag(), &wide(3.5, 0.5)), Ok(Carries::Both));
    assert_eq!(carries(&mut Blank, &lag(), &wide(3.5, 0.51)), Ok(Carries::Along));
    // A #10 may drift 0.275 in off the middle of a 1 1/2 in face (2.5 D), and carries both ways there.
    assert_eq!(carries(&mut Blank, &screw(), &in_face(0.275, 0.0)), Ok(Carries::Both));
    assert!(carries(&mut Blank, &screw(), &in_face(0.276, 0.0)).is_err());
    // A #10 in steel keeps 1.5 d.
    assert_eq!(edge_in_steel(&mut Blank, Length::inches(0.19), &in_face(0.465, 0.0)), Ok(()));
    assert!(edge_in_steel(&mut Blank, Length::inches(0.19), &in_face(0.466, 0.0)).is_err());
}

#[test]
fn fasteners_of_one_stud_keep_their_distance_along_it() {
    let face = Length::inches(1.5);
    let near = |screw: &Screw, lead, across: f64, along: f64| {
        too_near_in_stud(screw, lead, face, across * 25.4, along * 25.4)
    };
    // 4 D of 5/16 is 1 1/4; side by side is never enough in this face.
    assert!(
        near(&lag(), true, 0.0, 1.24) && !near(&lag(), true, 0.0, 1.25) && !near(&lag(), true, 0.0, -1.25)
    );
    assert!(near(&lag(), true, 1.3, 0.0));
    assert!(!too_near_in_stud(&lag(), true, Length::inches(3.5), 1.3 * 25.4, 0.0));
    // 5 D of #10 is 0.95 with a lead hole, 1.9 without.
    assert!(
        !near(&screw(), true, 0.0, 0.95)
            && near(&screw(), false, 0.0, 1.89)
            && !near(&screw(), false, 0.0, 1.9)
    );
    assert!(near(&screw(), true, f64::NAN, f64::NAN));
    // To the end of a stud: 7 D toward it, 4 D otherwise; a screw without a lead hole 10 D.
    assert!((to_end(&mut Blank, &lag(), true, true).in_inches() - 2.1875).abs() < 1e-9);
    assert!((to_end(&mut Blank, &lag(), true, false).in_inches() - 1.25).abs() < 1e-9);
    // 3 d in steel, 16 d in concrete.
    assert!((apart_in_steel(&mut Blank, Length::inches(0.19)).in_inches() - 0.57).abs() < 1e-9);
    assert!((apart_in_concrete(&mut Blank, Length::inches(0.25)).in_inches() - 4.0).abs() < 1e-9);
    assert!((to_end(&mut Blank, &screw(), false, true).in_inches() - 1.9).abs() < 1e-9);
}

#[test]
fn a_hole_passes_the_fastener_and_is_covered_by_its_head() {
    let hole = |width: f64| Opening { width: Length::inches(width), runs: Runs::Nowhere };
    let with = |width, head| takes(&hole(width), Length::inches(0.3125), Length::inches(head));
    assert_eq!(with(0.3125, 0.5), Ok(()));
    assert_eq!(with(0.3, 0.5), Err(Why::DoesNotPass));
    assert_eq!(with(0.5, 0.5), Err(Why::DoesNotCover));
    assert_eq!(with(0.0, 0.5), Err(Why::NoValue(Input::Hole)));
    assert_eq!(Runs::Upright.bears(), (false, true));
    assert_eq!(Runs::Sideways.bears(), (true, false));
}

#[test]
fn a_lead_hole_is_drilled_with_a_bit_at_hand() {
    let bite = bite(&mut Blank, &lag(), &stack(0.5)).unwrap();
    let hole = lead_hole(&mut Blank, &lag(), ratio(0.42), &bite).unwrap();
    // 40 to 70 % of 5/16: 0.125 to 0.219 in, in wood of the light class; the classes are from memory.
    assert!((hole.least.in_inches() - 0.125).abs() < 1e-9 && (hole.most.in_inches() - 0.21875).abs() < 1e-9);
    assert_eq!(hole.label, Label::Memory);
    // 2.425 deep, tip included; 2 of it thread, so 0.425 of shank at the full diameter.
    let (wide, deep) = hole.shank.unwrap();
    assert!((wide.in_inches() - 0.3125).abs() < 1e-9 && (deep.in_inches() - 0.425).abs() < 1e-9);
    assert!((hole.depth.value.in_inches() - 2.425).abs() < 1e-9);
    let bits: Vec<Length> = [1.0 / 8.0, 5.0 / 32.0, 3.0 / 16.0, 7.0 / 32.0].map(Length::inches).to_vec();
    // The middle is 0.172; 5/32 = 0.156 and 3/16 = 0.1875 are both 1/64 off: the thinner.
    assert_eq!(bit(&mut Blank, &hole, Bits::Kit(&bits)), Some(Length::inches(5.0 / 32.0)));
    assert_eq!(bit(&mut Blank, &hole, Bits::AnySet(&[Length::inches(0.25)])), None);
    // A #10 in light wood: at most 7/8 of its root, 0.133 in; in Southern Pine 70 %, 0.106 in.
    let bite = strikeline_solver::capacity::bite::bite(&mut Blank, &screw(), &stack(0.5)).unwrap();
    assert!(
        (lead_hole(&mut Blank, &screw(), ratio(0.42), &bite).unwrap().most.in_inches() - 0.133).abs() < 1e-9
    );
    assert!(
        (lead_hole(&mut Blank, &screw(), ratio(0.55), &bite).unwrap().most.in_inches() - 0.1064).abs() < 1e-9
    );
}

#[test]
fn the_working_of_a_lead_hole_says_whose_bits_and_what_its_depth_is_of() {
    let chosen = Given::chosen(Length::inches(0.125));
    let stack = Stack { washer: chosen, ..stack(0.5) };
    let hole =
        lead_hole(&mut Blank, &lag(), ratio(0.42), &bite(&mut Blank, &lag(), &stack).unwrap()).unwrap();
    let told = |work: &dyn Fn(&mut Working)| {
        let mut working = Working::default();
        work(&mut working);
        working.steps.pop().unwrap()
    };
    let bits = [Length::inches(5.0 / 32.0)];
    let kit = told(&|working| assert!(bit(working, &hole, Bits::Kit(&bits)).is_some()));
    assert!(kit.source.contains("the kit's bits") && !kit.source.contains("any set"), "{}", kit.source);
    let any = told(&|working| assert!(bit(working, &hole, Bits::AnySet(&bits)).is_some()));
    assert!(any.source.contains("any set"), "{}", any.source);
    // A washer that nobody measured is chosen: so is how deep the hole is.
    let deep = told(&|working| assert!(from_face(working, &hole, inch(0.5)).in_inches() > 2.0));
    assert_eq!((deep.label, deep.put[0].label), (Label::Chosen, Label::Chosen));
    let through = |room| {
        told(&|working| {
            let _deep = from_face_with_room(working, inch(1.25), chosen, inch(0.075), room);
        })
    };
    let steel = through(None);
    assert!(!steel.source.contains("concrete"), "{}", steel.source);
    assert_eq!(steel.label, Label::Chosen, "the washer is");
    assert!(through(Some(inch(0.25))).source.contains("dust of concrete"));
}

#[test]
fn steel_and_concrete_are_known_only_as_printed() {
    let mil = |mil: f64| Given::measured(Length::mils(mil));
    for unread in [30.0, 33.0, 43.0, 0.0] {
        let found = in_steel(&mut Blank, inch(0.19), mil(unread), inch(0.5));
        assert_eq!(found, Err(Why::OutsideTable(Input::Steel)));
    }
    assert_eq!(in_steel(&mut Blank, inch(0.19), mil(27.0), inch(0.5)).unwrap().label, Label::Chosen);
    let good = ConcreteScrew {
        diameter: inch(0.25),
        depth: inch(2.0),
        gap: inch(0.0625),
        edge: inch(4.0),
        strength: None,
        normal_weight: true,
    };
    let lbf = |screw: &ConcreteScrew| {
        in_concrete(&mut Blank, screw).map(|held| Force::newtons(held.pull_n).lbf().round())
    };
    assert_eq!(lbf(&good), Ok(398.0));
    // Between two printed strengths the lower counts; over the highest the highest.
    let psi = |psi: f64| Some(Given::measured(Stress::psi(psi)));
    assert_eq!(lbf(&ConcreteScrew { strength: psi(3900.0), ..good }), Ok(435.0));
    assert_eq!(lbf(&ConcreteScrew { strength: psi(9000.0), ..good }), Ok(503.0));
    assert_eq!(
        lbf(&ConcreteScrew { strength: psi(2400.0), ..good }),
        Err(Why::OutsideTable(Input::Concrete))
    );
    assert_eq!(lbf(&ConcreteScrew { normal_weight: false, ..good }), Err(Why::NotNormalWeight));
    assert!(matches!(lbf(&ConcreteScrew { gap: inch(0.07), ..good }), Err(Why::OffTheConcrete { .. })));
    assert!(matches!(lbf(&ConcreteScrew { depth: inch(1.7), ..good }), Err(Why::Shallow { .. })));
    assert!(matches!(lbf(&ConcreteScrew { edge: inch(3.9), ..good }), Err(Why::Edge { .. })));
    assert_eq!(
        lbf(&ConcreteScrew { diameter: inch(0.375), edge: inch(6.0), ..good }),
        Err(Why::OutsideTable(Input::Diameter))
    );
    let stated = fixing(&mut Blank, Force::newtons(500.0), Force::newtons(300.0), false).unwrap();
    assert_eq!(
        (stated.label, stated.label.bears(false), stated.label.bears(true)),
        (Label::Stated, false, true)
    );
    assert!(fixing(&mut Blank, Force::newtons(0.0), Force::newtons(300.0), true).is_err());
}
