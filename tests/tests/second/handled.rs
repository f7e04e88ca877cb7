//! Cases of demand against the product, and the whole way from what hangs to the worst use.

use strikeline_solver::capacity::case;
use strikeline_solver::capacity::duration::Lasting;
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::posture;
use strikeline_solver::ledger::Label;

use super::demand::{Case, Mass, Mount, Piece, cases};
use super::dice::Dice;
use super::group::{draw_group, draw_hold, second_use};
use super::tally::{AGREE, Tally};

/// Something random on a random mount, the same for both.
fn draw_hanging(dice: &mut Dice) -> (Piece, Vec<Mass>, Mount, f64, Hanging) {
    let piece = Piece {
        centre_mm: [dice.between(-300.0, 300.0), dice.between(-300.0, 300.0)],
        width_mm: dice.between(200.0, 2000.0),
        height_mm: dice.between(200.0, 1200.0),
        depth_mm: dice.between(10.0, 120.0),
    };
    let off = dice.one_in(4);
    let side = if off { dice.between(-100.0, 100.0) } else { 0.0 };
    let mut masses =
        vec![Mass { kg: dice.between(1.0, 60.0), from_back_mm: [side, side / 2.0, piece.depth_mm / 2.0] }];
    if dice.one_in(2) {
        // Its mount, behind it.
        masses.push(Mass { kg: dice.between(1.0, 15.0), from_back_mm: [0.0, 0.0, -dice.between(0.0, 60.0)] });
    }
    if dice.one_in(3) {
        let from_back_mm =
            [dice.between(-300.0, 300.0), -piece.height_mm / 2.0 - 60.0, dice.between(0.0, 150.0)];
        masses.push(Mass { kg: dice.between(1.0, 8.0), from_back_mm });
    }
    let mut angle = |most: f64| if dice.one_in(4) { 0.0 } else { dice.between(0.0, most) };
    let (swing, head, forward_deg, back_deg) = (angle(120.0), angle(100.0), angle(40.0), angle(20.0));
    let tilt_deg = angle(30.0);
    let to_edge_mm = piece.height_mm * dice.between(0.5, 1.2);
    let lowers_mm = if dice.one_in(3) { dice.between(0.0, 600.0) } else { 0.0 };
    let mount = match dice.below(3) {
        0 => Mount::Flush { stand_off_mm: dice.between(5.0, 100.0) },
        1 => Mount::Tilt {
            stand_off_mm: dice.between(5.0, 150.0),
            axis_y_mm: piece.centre_mm[1] + dice.between(-200.0, 200.0),
            forward_deg,
            back_deg,
        },
        _ => Mount::Arm {
            hinge_x_mm: dice.between(-100.0, 100.0),
            reach_mm: dice.between(50.0, 700.0),
            swing_deg: (!dice.one_in(4)).then_some(swing),
            head_deg: (!dice.one_in(4)).then_some(head),
            tilt_deg,
            to_edge_mm,
            lowers_mm,
        },
    };
    let pull_n = if dice.one_in(2) { 220.0 } else { dice.between(0.0, 500.0) };
    let hanging = product_hanging(&piece, &masses, &mount, pull_n);
    (piece, masses, mount, pull_n, hanging)
}

pub(crate) fn product_hanging(piece: &Piece, masses: &[Mass], mount: &Mount, pull_n: f64) -> Hanging {
    let [x, y] = piece.centre_mm;
    let (stand_off_mm, manner) = match *mount {
        Mount::Flush { stand_off_mm } => (stand_off_mm, Manner::Fixed),
        Mount::Tilt { stand_off_mm, axis_y_mm, forward_deg, back_deg } => {
            (stand_off_mm, Manner::Tilting { down_deg: forward_deg, up_deg: back_deg, pivot_y_mm: axis_y_mm })
        }
        Mount::Arm { hinge_x_mm, reach_mm, swing_deg, head_deg, tilt_deg, to_edge_mm, lowers_mm } => {
            let hinge_deg = swing_deg;
            (
                reach_mm,
                Manner::Arm { hinge_x_mm, reach_mm, hinge_deg, head_deg, tilt_deg, to_edge_mm, lowers_mm },
            )
        }
    };
    let hung = |mass: &Mass| {
        let [right_mm, up, from_back_mm] = mass.from_back_mm;
        HungMass { kg: mass.kg, right_mm, y_mm: y + up, from_back_mm }
    };
    Hanging {
        left_mm: x - piece.width_mm / 2.0,
        right_mm: x + piece.width_mm / 2.0,
        bottom_mm: y - piece.height_mm / 2.0,
        top_mm: y + piece.height_mm / 2.0,
        depth_mm: piece.depth_mm,
        stand_off_mm,
        masses: masses.iter().map(hung).collect(),
        manner,
        pull_n,
        label: Label::Measured,
    }
}

/// A case in six numbers and whether it is handled: down, its moments aside and out; a pull out and its place.
type Numbers = (bool, [f64; 6]);

fn of_second(case: &Case) -> Numbers {
    let mut n = [0.0; 6];
    for load in &case.loads {
        let ([x, y, z], [_, up, out]) = (load.at_mm, load.force_n);
        n[0] -= up;
        n[1] -= up * x;
        n[2] -= up * z;
        if out > 0.0 {
            (n[3], n[4], n[5]) = (out, x, y);
        }
    }
    (case.handled, n)
}

/// A case of the product, whose pull straight out may have a highest and a lowest place.
fn of_product(case: &case::Case) -> Vec<Numbers> {
    // A pull of nothing acts nowhere.
    let out = case.out.filter(|out| out.n > 0.0);
    let places =
        out.map_or(vec![[0.0; 3]], |out| [out.high_y_mm, out.low_y_mm].map(|y| [out.n, out.x_mm, y]).into());
    let hung = [case.down_n, case.down_x_nmm, case.down_z_nmm];
    let numbers =
        |[n, x, y]: [f64; 3]| (case.lasting == Lasting::TenMinutes, [hung[0], hung[1], hung[2], n, x, y]);
    places.into_iter().map(numbers).collect()
}

/// Whether two cases are the same: each number by the size of what it is a sum of.
fn same(a: &Numbers, b: &Numbers) -> bool {
    // A place aside or in front is by nature some 100 mm.
    let by_place = a.1[0].abs() * 100.0;
    let close =
        |i: usize, scale: f64| (a.1[i] - b.1[i]).abs() <= AGREE * a.1[i].abs().max(b.1[i].abs()).max(scale);
    // What differs soonest comes first.
    a.0 == b.0
        && close(5, 100.0)
        && close(2, by_place)
        && close(1, by_place)
        && close(4, 100.0)
        && close(0, 0.0)
        && close(3, 0.0)
}

/// 10,000 random things on flush, tilting and arm mounts: each case of one side is a case of the other; and on a
/// random group of random fasteners the worst use of all of them is the same.
#[test]
fn demand_and_the_worst_use_of_all_cases_agree() {
    let mut dice = Dice::new(6);
    let (mut case_by_case, mut uses) = (Tally::default(), Tally::default());
    let mut short = 0;
    for at in 0..10_000 {
        let (piece, masses, mount, pull_n, hanging) = draw_hanging(&mut dice);
        let what = format!("{at} {piece:?} {masses:?} {mount:?} {pull_n}");
        let mine = cases(&piece, &masses, &mount, pull_n);
        let theirs = posture::cases(&hanging).unwrap();
        let a: Vec<Numbers> = mine.iter().map(of_second).collect();
        let b: Vec<Numbers> = theirs.iter().flat_map(of_product).collect();
        for one in &a {
            case_by_case.told(
                || format!("only the second has {one:?}, {what}"),
                b.iter().any(|other| same(one, other)),
            );
        }
        for one in &b {
            case_by_case.told(
                || format!("only the product has {one:?}, {what}"),
                a.iter().any(|other| same(one, other)),
            );
        }
        let group = draw_group(&mut dice);
        let (drawn, hold, product_hold) = draw_hold(&mut dice);
        let asked: Vec<_> = mine.iter().map(|case| (case.handled, group.second(&case.loads))).collect();
        let mut worst: Option<f64> = None;
        for (handled, asked) in asked.iter().filter_map(|(handled, asked)| Some((handled, asked.as_ref()?))) {
            for one in asked {
                let use_ = second_use(&drawn, hold, *one, if *handled { 1.6 } else { 0.9 });
                worst = Some(worst.map_or(use_, |w| w.max(use_)));
            }
        }
        let outcome = group.product().demand(&theirs).against(&product_hold);
        let not_known = asked.iter().any(|(_, asked)| asked.is_none());
        uses.told(|| format!("not known, {what}"), not_known == outcome.not_known.is_some());
        let theirs = outcome.governing.map(|(_, used)| used.value);
        uses.told(|| format!("governs, {what}"), worst.is_some() == theirs.is_some());
        let (Some(mine), Some(theirs)) = (worst, theirs) else {
            uses.both_none += 1;
            continue;
        };
        short += usize::from(mine > 1.0);
        uses.meet(|| format!("worst use, {what}, {:?}", group.held), mine, theirs, 0.0);
    }
    println!("{short} of 10000 are short");
    case_by_case.end("cases of demand");
    uses.end("worst use of all cases");
}
