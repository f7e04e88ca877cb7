//! Where what hangs may stand, and where it is pulled.

use strikeline_solver::capacity::case::{Case, CaseName, Posture, PullAt};
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::posture::{GRAVITY, case, cases, names};
use strikeline_solver::ledger::{Blank, Label, Part, Working};

/// 1000 x 600, 60 deep, 20 kg, 40 off the wall, its middle at the origin.
pub(crate) fn display(manner: Manner) -> Hanging {
    Hanging {
        left_mm: -500.0,
        right_mm: 500.0,
        bottom_mm: -300.0,
        top_mm: 300.0,
        depth_mm: 60.0,
        stand_off_mm: 40.0,
        masses: vec![HungMass { kg: 20.0, right_mm: 0.0, y_mm: 0.0, from_back_mm: 30.0 }],
        manner,
        pull_n: 220.0,
        label: Label::Measured,
    }
}

fn arm(hinge_deg: Option<f64>, head_deg: Option<f64>) -> Hanging {
    display(Manner::Arm {
        hinge_x_mm: 0.0,
        reach_mm: 400.0,
        hinge_deg,
        head_deg,
        tilt_deg: 0.0,
        to_edge_mm: 0.0,
        lowers_mm: 0.0,
    })
}

fn at(hanging: &Hanging, posture: Posture, pull: Option<PullAt>) -> Case {
    case(&mut Blank, hanging, CaseName { posture, pull }).unwrap()
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6 * expected.abs().max(1.0), "{found}, expected {expected}");
}

const W: f64 = 20.0 * GRAVITY;

#[test]
fn a_fixed_display_hangs_and_is_pulled_at_seven_places() {
    let all = cases(&display(Manner::Fixed)).unwrap();
    assert_eq!(all.len(), 8);
    let hung = &all[0];
    assert_eq!((hung.name.pull, hung.lasting), (None, Lasting::Permanent));
    near(hung.down_n, W);
    near(hung.down_z_nmm, W * 70.0);
    assert!(all[1..].iter().all(|case| case.lasting == Lasting::TenMinutes));
    let right = at(&display(Manner::Fixed), Posture::AsHung, Some(PullAt::DownRight));
    near(right.down_n, W + 220.0);
    near(right.down_x_nmm, 220.0 * 500.0);
    // The front stands 40 + 60 from the wall.
    near(right.down_z_nmm, W * 70.0 + 220.0 * 100.0);
    let top = at(&display(Manner::Fixed), Posture::AsHung, Some(PullAt::OutTop)).out.unwrap();
    assert_eq!((top.n, top.x_mm, top.high_y_mm, top.low_y_mm), (220.0, 0.0, 300.0, 300.0));
    let left = at(&display(Manner::Fixed), Posture::AsHung, Some(PullAt::OutLeft)).out.unwrap();
    assert_eq!((left.x_mm, left.high_y_mm), (-500.0, 0.0));
}

#[test]
fn everything_that_hangs_counts_at_its_own_place() {
    let mut hanging = display(Manner::Fixed);
    hanging.masses.push(HungMass { kg: 5.0, right_mm: 100.0, y_mm: -350.0, from_back_mm: -20.0 });
    let hung = at(&hanging, Posture::AsHung, None);
    near(hung.down_n, 25.0 * GRAVITY);
    near(hung.down_x_nmm, 5.0 * GRAVITY * 100.0);
    near(hung.down_z_nmm, W * 70.0 + 5.0 * GRAVITY * 20.0);
}

#[test]
fn a_tilted_display_leans_out_about_its_pivot() {
    // Pivot 100 below the middle, at the back: 30 degrees down bring the middle of mass, 100 above and 30 in front of
    // it, to 40 + 30 cos 30 + 100 sin 30 = 115.98; up to 40 + 25.98 - 50 = 15.98.
    let tilting = display(Manner::Tilting { down_deg: 30.0, up_deg: 30.0, pivot_y_mm: -100.0 });
    near(at(&tilting, Posture::TiltedDown, None).down_z_nmm, W * 115.980_762_113_5);
    near(at(&tilting, Posture::TiltedUp, None).down_z_nmm, W * 15.980_762_113_5);
    // The lower front edge, 200 below it and 60 in front: up 40 + 60 cos 30 + 200 sin 30 = 191.96; down it would be
    // 40 + 51.96 - 100 = -8.04, inside the wall, and lies at it.
    let pulled = |posture| at(&tilting, posture, Some(PullAt::DownMiddle)).down_z_nmm;
    near(pulled(Posture::TiltedUp), W * 15.980_762_113_5 + 220.0 * 191.961_524_227_1);
    near(pulled(Posture::TiltedDown), W * 115.980_762_113_5);
    // Three postures, each hanging and pulled at seven places; a tilt of nothing is no posture.
    assert_eq!(cases(&tilting).unwrap().len(), 24);
    let down_only = display(Manner::Tilting { down_deg: 15.0, up_deg: 0.0, pivot_y_mm: 0.0 });
    assert_eq!(cases(&down_only).unwrap().len(), 16);
    // Top forward by 30, its back's upper edge is 400 cos 30 above the pivot, the front's lower by 60 sin 30.
    near(
        at(&tilting, Posture::TiltedDown, Some(PullAt::OutTop)).out.unwrap().high_y_mm,
        -100.0 + 346.410_161_513_8,
    );
    near(
        at(&tilting, Posture::TiltedUp, Some(PullAt::OutTop)).out.unwrap().high_y_mm,
        -100.0 + 376.410_161_513_8,
    );
    // A side's middle, 100 above the pivot, goes down with it: its back's to 100 cos 30, its front's 60 sin 30 lower.
    let side = at(&tilting, Posture::TiltedDown, Some(PullAt::OutLeft)).out.unwrap();
    near(side.high_y_mm, -100.0 + 86.602_540_378_4);
    near(side.low_y_mm, -100.0 + 56.602_540_378_4);
}

#[test]
fn what_hangs_off_the_axis_goes_round_with_a_turned_face() {
    // 5 kg hung 300 left of the middle: with the face a quarter to the right it stands 300 farther out.
    let mut hanging = arm(Some(0.0), None);
    hanging.masses.push(HungMass { kg: 5.0, right_mm: -300.0, y_mm: -350.0, from_back_mm: 30.0 });
    let farthest = cases(&hanging).unwrap().into_iter().filter(|case| case.name.pull.is_none());
    near(farthest.map(|case| case.down_z_nmm).fold(0.0, f64::max), (25.0 * 430.0 + 5.0 * 300.0) * GRAVITY);
}

#[test]
fn a_swung_arm_carries_its_middle_round_and_its_ends_with_it() {
    let arm = arm(None, None);
    let swung = |arm_deg, face_deg, pull| at(&arm, Posture::Swung { arm_deg, face_deg }, pull);
    // On 400 + 30: at 30 degrees 215 aside and 372.39 out.
    let hung = swung(30.0, 0.0, None);
    near(hung.down_x_nmm, W * 215.0);
    near(hung.down_z_nmm, W * 372.390_923_627_3);
    // Facing the room its right end is 500 farther aside; its front 30 farther out.
    let right = swung(30.0, 0.0, Some(PullAt::DownRight));
    near(right.down_x_nmm, W * 215.0 + 220.0 * 715.0);
    near(right.down_z_nmm, W * 372.390_923_627_3 + 220.0 * 402.390_923_627_3);
    // Faced a quarter round to the right, its left end stands out by 500, and its front 30 to the right.
    let left = swung(30.0, 90.0, Some(PullAt::DownLeft));
    near(left.down_x_nmm, W * 215.0 + 220.0 * 245.0);
    near(left.down_z_nmm, W * 372.390_923_627_3 + 220.0 * 872.390_923_627_3);
    // Flat to one side, its left end turned to the wall would lie inside it.
    near(swung(90.0, -90.0, Some(PullAt::DownLeft)).down_z_nmm, 0.0);
    // A pull straight out at a side acts at the outer hinge, 400 from the wall's; at the top at the middle, 430.
    let out = swung(30.0, 0.0, Some(PullAt::OutTop)).out.unwrap();
    near(out.x_mm, 215.0);
    near(out.high_y_mm, 300.0);
    near(swung(-30.0, 0.0, Some(PullAt::OutHinge)).out.unwrap().x_mm, -200.0);
}

#[test]
fn swings_are_tried_in_steps_to_both_sides_and_heads_turned_both_ways() {
    let swung = |hanging: &Hanging| -> Vec<(f64, f64)> {
        let mut all = Vec::new();
        for name in names(hanging).unwrap() {
            let Posture::Swung { arm_deg, face_deg } = name.posture else { panic!("{name:?}") };
            if !all.contains(&(arm_deg, face_deg)) {
                all.push((arm_deg, face_deg));
            }
        }
        all
    };
    let mut arms: Vec<f64> = swung(&arm(Some(40.0), Some(0.0))).iter().map(|(arm, _)| *arm).collect();
    arms.sort_by(f64::total_cmp);
    arms.dedup();
    assert_eq!(arms, [-40.0, -30.0, -15.0, 0.0, 15.0, 30.0, 40.0]);
    // Unknown is a right angle either way; past it counts as at it.
    assert_eq!(swung(&arm(None, None)), swung(&arm(Some(130.0), Some(180.0))));
    assert!(swung(&arm(None, None)).contains(&(-90.0, 90.0)));
    // A head of 20 degrees, told from the room and from an arm at 30.
    let at_30: Vec<f64> = swung(&arm(Some(30.0), Some(20.0)))
        .iter()
        .filter(|(arm, _)| *arm == 30.0)
        .map(|(_, face)| *face)
        .collect();
    assert_eq!(at_30, [0.0, 20.0, -20.0, 50.0, -50.0]);
}

#[test]
fn the_working_of_a_case_tells_each_load() {
    let mut working = Working::default();
    let name = CaseName { posture: Posture::AsHung, pull: Some(PullAt::OutTop) };
    case(&mut working, &display(Manner::Fixed), name).unwrap();
    let told: Vec<&str> = working.part(Part::Places).iter().map(|step| step.name).collect();
    let place = ["how far right it acts", "how far in front of the wall it acts"];
    let pull = "pull of somebody who handles it";
    // How far right it acts is as with the piece's weight: told once.
    let out = [pull, "how high it acts, by its back", "how high it acts, by its front"];
    assert_eq!(told, [&["weight of the piece"][..], &place, &out].concat());
    assert_eq!(working.part(Part::Totals).len(), 3);
    // Only the pull is chosen; with an assumed mass all that is worked out from it is assumed.
    assert_eq!(working.steps[0].label, Label::Derived);
    let assumed = Hanging { label: Label::Assumed, ..display(Manner::Fixed) };
    assert_eq!(case(&mut working, &assumed, name).unwrap().label, Label::Assumed);
}
