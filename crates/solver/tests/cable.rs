//! Published check values of cables and what they pass through, by the functions that a plan is made with.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

use serde::Deserialize;
use strikeline_solver::handbook::{boring, old_paint, power_wiring};
use strikeline_solver::job::kit::Signal;
use strikeline_solver::ledger::{Blank, Given, Label, Working};
use strikeline_solver::units::Length;
use strikeline_solver::wiring::bends::{least_radius, may_be_pulled};
use strikeline_solver::wiring::bored::{
    Bears, deepest_notch, edge_left, largest_bore, largest_without_plate, wants_plate,
};
use strikeline_solver::wiring::boxed::depth_behind;
use strikeline_solver::wiring::lengths::{longest, to_cut, usual_slack};
use strikeline_solver::wiring::paint::{disturbed_mm2, is_minor, minor_mm2};
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
    BoreFreeOrDoubled(f64),
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

fn work(check: &Check) -> Vec<f64> {
    match check {
        Check::BoreBearing(depth) => {
            vec![largest_bore(&mut Blank, inch(*depth), Bears::Bearing).value.in_inches()]
        }
        Check::BoreFreeOrDoubled(depth) => [Bears::Not, Bears::Doubled]
            .map(|bears| largest_bore(&mut Blank, inch(*depth), bears).value.in_inches())
            .to_vec(),
        Check::NotchBearing(depths) => depths
            .iter()
            .map(|depth| deepest_notch(&mut Blank, inch(*depth), true).value.in_inches())
            .collect(),
        Check::Plate { stud, hole } => vec![
            edge_left(&mut Blank, inch(*stud), inch(*hole)).value.in_inches(),
            yes(wants_plate(&mut Blank, inch(*stud), inch(*hole))),
        ],
        Check::WithoutPlate(stud) => {
            let largest = largest_without_plate(&mut Blank, inch(*stud));
            vec![largest.value.in_inches(), yes(wants_plate(&mut Blank, inch(*stud), largest))]
        }
        Check::FireBlocks(heights) => {
            heights.iter().map(|feet| (feet / boring::FIRE_BLOCK_FT.value).ceil() - 1.0).collect()
        }
        Check::Receptacles(widths) => widths
            .iter()
            .map(|inches| f64::from(u32::try_from(wanted(Length::inches(*inches))).unwrap()))
            .collect(),
        Check::Counts(heights) => heights.iter().map(|inches| yes(counts(Length::inches(*inches)))).collect(),
        Check::BendNetworkMm(diameters) => diameters
            .iter()
            .map(|mm| {
                let diameter = Given::measured(Length::millimetres(*mm));
                least_radius(&mut Blank, diameter, Some(Signal::Network)).value.mm()
            })
            .collect(),
        Check::SlackBothEnds => {
            let way = inch(100.0);
            vec![to_cut(&mut Blank, way, usual_slack(), usual_slack()).value.in_inches() - 100.0]
        }
        Check::FillMm { cables, bore } => {
            let mm = |mm: &f64| Given::measured(Length::millimetres(*mm));
            let share = fill(&mut Blank, &cables.iter().map(mm).collect::<Vec<_>>(), mm(bore)).value;
            vec![share * 100.0, yes(share <= most(cables.len()))]
        }
        Check::MayFill { cables, share } => vec![most(*cables), yes(*share <= most(*cables))],
        Check::RightAngles(count) => vec![yes(may_be_pulled(*count))],
        Check::PassivePictureMm(way) => {
            let limit = longest(Some(Signal::Picture), None).unwrap().value.mm();
            vec![limit, yes(*way > limit)]
        }
        Check::SixSquareFeet => vec![minor_mm2() / 1e6],
        Check::Together { square_feet, days } => {
            assert!(*days <= old_paint::TOGETHER_DAYS.value);
            let foot = Length::inches(12.0);
            let cuts: Vec<_> = square_feet.iter().map(|feet| (foot * *feet, foot)).collect();
            let all = disturbed_mm2(&mut Blank, &cuts).value;
            vec![all / (304.8 * 304.8), yes(is_minor(all))]
        }
        Check::Strip { width, height } => {
            let cut = (Length::inches(*width), Length::inches(*height));
            vec![disturbed_mm2(&mut Blank, &[cut]).value / (25.4 * 25.4)]
        }
        Check::Behind { board, stud, deep } => {
            let depth = depth_behind(&mut Blank, inch(*board), inch(*stud)).value.in_inches();
            vec![depth, depth - deep]
        }
    }
}

#[test]
fn every_check_value_comes_out() {
    let rows: Vec<Row> = ron::from_str(include_str!("cable/rows.ron")).unwrap();
    assert!(rows.len() >= 20);
    for row in &rows {
        assert!(!row.source.is_empty() && !row.label.is_empty(), "row {}", row.row);
        let found = work(&row.given);
        let near = found.len() == row.expected.len()
            && found.iter().zip(&row.expected).all(|(found, expected)| (found - expected).abs() <= row.tol);
        assert!(near, "row {}: {:?} gives {found:?}, not {:?}", row.row, row.given, row.expected);
    }
}

#[test]
fn a_label_is_never_promoted() {
    assert_eq!(power_wiring::ZONE_AT_CORNER_MM.label, Label::Memory);
    let unknown = Given::new(Length::inches(3.5), Label::Assumed);
    assert_eq!(largest_bore(&mut Blank, unknown, Bears::Bearing).label, Label::Assumed);
    let mut working = Working::default();
    assert_eq!(least_radius(&mut working, inch(0.3), None).label, Label::Chosen);
    assert_eq!(working.resting_on(Label::Chosen).len(), 1, "the working names what was chosen");
}

#[test]
fn what_has_no_size_breaks_nothing() {
    let none = inch(0.0);
    assert_eq!(largest_bore(&mut Blank, none, Bears::Not).value, Length::default());
    assert_eq!(largest_without_plate(&mut Blank, none).value, Length::default());
    assert!(fill(&mut Blank, &[inch(0.2)], none).value > most(1));
    assert_eq!(wanted(Length::default()), 0);
}
