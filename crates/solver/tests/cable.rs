//! Published check values of cables and what they pass through, by the functions that a plan is made with.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

use serde::Deserialize;
use strikeline_solver::handbook::{boring, low_voltage, old_paint, power_wiring};
use strikeline_solver::job::kit::Signal;
use strikeline_solver::ledger::{Blank, Given, Label, Working};
use strikeline_solver::units::Length;
use strikeline_solver::wiring::bends::{least_radius, may_be_pulled};
use strikeline_solver::wiring::blocks::expected;
use strikeline_solver::wiring::bored::{
    Bears, deepest_notch, edge_left, largest_bore, largest_without_plate, needed, wants_plate,
};
use strikeline_solver::wiring::boxed::{depth_behind, to_spare};
use strikeline_solver::wiring::lengths::{longest, to_cut, usual_slack};
use strikeline_solver::wiring::paint::{disturbed_mm2, is_surely_minor, minor_mm2};
use strikeline_solver::wiring::receptacles::{counts, wanted};
use strikeline_solver::wiring::tube::{fill, most};

#[derive(Deserialize)]
struct Row {
    row: usize,
    given: Check,
    expected: Vec<f64>,
    tol: f64,
    source: String,
    label: String,
}

/// Lengths are inches unless named otherwise; yes is 1, no is 0.
#[derive(Clone, Debug, Deserialize)]
enum Check {
    BoreBearing(f64),
    BoreFree(f64),
    NotchBearing(Vec<f64>),
    Plate { stud: f64, hole: f64 },
    WithoutPlate(f64),
    FireBlocks(Vec<f64>),
    Receptacles(Vec<f64>),
    Counts(Vec<f64>),
    BendNetworkMm(Vec<f64>),
    SlackBothEnds,
    FillMm { cables: Vec<f64>, bore: f64 },
    MayFill { cables: usize, share: f64 },
    RightAngles(usize),
    PassivePictureMm(f64),
    SixSquareFeet,
    Together { square_feet: Vec<f64>, days: u32 },
    Strip { width: f64, height: f64 },
    Behind { board: f64, stud: f64, deep: f64 },
}

fn inch(inches: f64) -> Given<Length> {
    Given::measured(Length::inches(inches))
}

fn yes(is_so: bool) -> f64 {
    f64::from(u8::from(is_so))
}

/// What comes out; the label of the published row that it rests on, and its own.
struct Worked(Vec<f64>, Label, Label);

fn lengths(from: Label, all: impl IntoIterator<Item = Given<Length>>) -> Worked {
    let all: Vec<_> = all.into_iter().collect();
    let own = all.iter().map(|one| one.label).max().unwrap();
    Worked(all.iter().map(|one| one.value.in_inches()).collect(), from, own)
}

fn work(check: &Check) -> Worked {
    let derived = Label::Derived;
    match check {
        Check::BoreBearing(depth) => {
            lengths(boring::BORE_BEARING.label, [largest_bore(&mut Blank, inch(*depth), Bears::Bearing)])
        }
        Check::BoreFree(depth) => {
            lengths(boring::BORE_NOT_BEARING.label, [largest_bore(&mut Blank, inch(*depth), Bears::Not)])
        }
        Check::NotchBearing(depths) => lengths(
            boring::NOTCH_BEARING.label,
            depths.iter().map(|depth| deepest_notch(&mut Blank, inch(*depth), Bears::Bearing)),
        ),
        Check::Plate { stud, hole } => {
            let left = edge_left(&mut Blank, inch(*stud), inch(*hole));
            let wants = yes(wants_plate(&mut Blank, inch(*stud), inch(*hole)));
            Worked(vec![left.value.in_inches(), wants], boring::PLATE_WITHIN_IN.label, left.label)
        }
        Check::WithoutPlate(stud) => {
            let largest = largest_without_plate(&mut Blank, inch(*stud));
            let wants = yes(wants_plate(&mut Blank, inch(*stud), largest));
            Worked(vec![largest.value.in_inches(), wants], boring::PLATE_WITHIN_IN.label, largest.label)
        }
        Check::FireBlocks(feet) => {
            let found = feet.iter().map(|feet| expected(Length::inches(feet * 12.0)));
            Worked(found.map(number).collect(), boring::FIRE_BLOCK_FT.label, derived)
        }
        Check::Receptacles(widths) => {
            let found = widths.iter().map(|inches| number(wanted(Length::inches(*inches))));
            Worked(found.collect(), power_wiring::RECEPTACLE_FT.label, derived)
        }
        Check::Counts(heights) => {
            let found = heights.iter().map(|inches| yes(counts(Length::inches(*inches))));
            Worked(found.collect(), power_wiring::COUNTS_UP_TO_FT.label, derived)
        }
        Check::BendNetworkMm(diameters) => {
            let found = diameters.iter().map(|mm| {
                let diameter = Given::measured(Length::millimetres(*mm));
                least_radius(&mut Blank, diameter, Some(Signal::Network)).value.mm()
            });
            Worked(found.collect(), low_voltage::BEND_NETWORK.label, derived)
        }
        Check::SlackBothEnds => {
            let cut = to_cut(&mut Blank, inch(100.0), usual_slack(), usual_slack());
            Worked(vec![cut.value.in_inches() - 100.0], usual_slack().label, cut.label)
        }
        Check::FillMm { cables, bore } => {
            let mm = |mm: &f64| Given::measured(Length::millimetres(*mm));
            let share = fill(&mut Blank, &cables.iter().map(mm).collect::<Vec<_>>(), mm(bore));
            let fits = yes(share.value <= most(cables.len()));
            Worked(vec![share.value * 100.0, fits], power_wiring::TUBE_FILL.label, share.label)
        }
        Check::MayFill { cables, share } => {
            let fits = yes(*share <= most(*cables));
            Worked(vec![most(*cables), fits], power_wiring::TUBE_FILL.label, derived)
        }
        Check::RightAngles(count) => {
            Worked(vec![yes(may_be_pulled(*count))], power_wiring::BENDS_DEG.label, derived)
        }
        Check::PassivePictureMm(way) => {
            let limit = longest(Some(Signal::Picture), None).unwrap();
            let found = vec![limit.value.mm(), yes(*way > limit.value.mm())];
            Worked(found, limit.label, derived)
        }
        Check::SixSquareFeet => Worked(vec![minor_mm2() / 1e6], old_paint::MINOR_FT2.label, derived),
        Check::Together { square_feet, days } => {
            assert!(*days <= old_paint::TOGETHER_DAYS.value);
            let foot = Length::inches(12.0);
            let cuts: Vec<_> = square_feet
                .iter()
                .map(|feet| (Given::measured(foot * *feet), Given::measured(foot)))
                .collect();
            let all = disturbed_mm2(&mut Blank, &cuts);
            let found = vec![all.value / (304.8 * 304.8), yes(is_surely_minor(all.value))];
            Worked(found, old_paint::MINOR_FT2.label, all.label)
        }
        Check::Strip { width, height } => {
            let all = disturbed_mm2(&mut Blank, &[(inch(*width), inch(*height))]);
            Worked(vec![all.value / (25.4 * 25.4)], old_paint::MINOR_FT2.label, all.label)
        }
        Check::Behind { board, stud, deep } => {
            let depth = depth_behind(&mut Blank, inch(*board), inch(*stud));
            lengths(derived, [depth, to_spare(&mut Blank, depth, inch(*deep))])
        }
    }
}

fn number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap())
}

fn name(label: Label) -> &'static str {
    match label {
        Label::Read => "read",
        Label::SecondHand => "read (second-hand)",
        Label::Derived => "derived",
        other => panic!("{other:?} is no label of a check value"),
    }
}

#[test]
fn every_check_value_comes_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("cable/rows.ron")).unwrap();
    assert!(rows.len() >= 20);
    for row in &rows {
        assert!(!row.source.is_empty(), "row {}", row.row);
        let Worked(found, from, own) = work(&row.given);
        let near = found.len() == row.expected.len()
            && found.iter().zip(&row.expected).all(|(found, expected)| (found - expected).abs() <= row.tol);
        assert!(near, "row {}: {:?} gives {found:?}, not {:?}", row.row, row.given, row.expected);
        for label in row.label.split(", ") {
            let ours = [name(from), name(own)];
            assert!(ours.contains(&label), "row {}: {label}, and ours are {ours:?}", row.row);
        }
    }
}

#[test]
fn a_label_is_never_promoted() {
    assert_eq!(power_wiring::ZONE_AT_CORNER_MM.label, Label::Memory);
    assert_eq!(longest(None, Some(Length::inches(300.0))).unwrap().label, Label::Stated, "its maker says so");
    let unknown = Given::new(Length::inches(3.5), Label::Assumed);
    assert_eq!(largest_bore(&mut Blank, unknown, Bears::Bearing).label, Label::Assumed);
    assert_eq!(disturbed_mm2(&mut Blank, &[(inch(2.0), unknown)]).label, Label::Assumed);
    assert_eq!(needed(&mut Blank, &[(unknown, inch(0.3))], None).label, Label::Assumed);
    let mut working = Working::default();
    assert_eq!(least_radius(&mut working, inch(0.3), None).label, Label::Chosen);
    assert_eq!(working.resting_on(Label::Chosen).len(), 1, "the working names what was chosen");
}

#[test]
fn a_hole_takes_the_widest_plug_beside_the_other_cables() {
    // By hand: 3/4 in of plug beside cables of 3/10 and 2/10 in; a plug thinner than its cable counts as the cable.
    let needs = |cables: &[(f64, f64)], tube: Option<f64>| {
        let cables: Vec<_> = cables.iter().map(|(plug, outside)| (inch(*plug), inch(*outside))).collect();
        needed(&mut Blank, &cables, tube.map(inch)).value.in_inches()
    };
    for (found, expected) in [
        (needs(&[], None), 0.0),
        (needs(&[(0.75, 0.25)], None), 0.75),
        (needs(&[(0.75, 0.25), (0.5, 0.3), (0.1, 0.2)], None), 1.25),
        (needs(&[(0.75, 0.25), (0.9, 0.3)], Some(1.0)), 1.15),
        (needs(&[(0.75, 0.25)], Some(1.0)), 1.0),
    ] {
        assert!((found - expected).abs() < 1e-9, "{found}, {expected} asked for");
    }
}

#[test]
fn what_has_no_size_breaks_nothing() {
    let none = inch(0.0);
    assert_eq!(largest_bore(&mut Blank, none, Bears::Not).value, Length::default());
    assert_eq!(largest_without_plate(&mut Blank, none).value, Length::default());
    assert!(fill(&mut Blank, &[inch(0.2)], none).value > most(1));
    assert_eq!(wanted(Length::default()), 0);
}
