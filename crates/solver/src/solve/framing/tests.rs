//! Hand-worked cases.

use super::*;
use crate::geometry::{Point, Rect};
use crate::job::framing::{SteelStuds, WoodStuds};
use crate::job::hit::HitKind;
use crate::job::wall::End;
use crate::plan::framing::OutlierWhy;
use crate::plan::survey::{Floor, PlacedFeature};

fn inches(x: f64) -> Length {
    Length::inches(x)
}

fn framed(framing: WallFraming, hits: &[(HitKind, f64, f64)]) -> Framing {
    super::framing(&Wall { framing: Some(framing), ..Wall::default() }, &survey(hits, Vec::new()), 0.95)
}

fn survey(hits: &[(HitKind, f64, f64)], features: Vec<PlacedFeature>) -> Survey {
    let hits = hits.iter().zip(1..).map(|((kind, x, y), id)| PlacedHit {
        id: Id::new(&format!("hit-{id}")),
        kind: *kind,
        x: inches(*x).quantised(),
        y: Some(inches(*y)),
    });
    Survey {
        outline: Rect { left: inches(0.0), right: inches(160.0), bottom: inches(0.0), top: inches(96.0) },
        left_end: End::InsideCorner,
        right_end: End::InsideCorner,
        floor: Floor { readings: vec![Point::default()] },
        control_line_y: None,
        features,
        hidden: Vec::new(),
        hits: hits.collect(),
        humps: Vec::new(),
        seats: Vec::new(),
        misfits: Vec::new(),
    }
}

fn feature(id: &str, kind: FeatureKind, left: f64, right: f64) -> PlacedFeature {
    let rect = Rect { left: inches(left), right: inches(right), bottom: inches(0.0), top: inches(90.0) };
    PlacedFeature {
        id: Id::new(id),
        kind,
        name: String::new(),
        rect,
        top_ends: (rect.top, rect.top),
        bottom_ends: (rect.bottom, rect.bottom),
        proud: inches(0.0),
        on: None,
        assumed: false,
    }
}

fn wood(hits: &[(HitKind, f64)]) -> Framing {
    let hits: Vec<_> = hits.iter().map(|(kind, x)| (*kind, *x, 60.0)).collect();
    framed(WallFraming::Wood(WoodStuds::default()), &hits)
}

/// A 5/16 in lag needs one and a half times its diameter to each edge: 15/32 in.
const LAG_NEED_IN: f64 = 15.0 / 32.0;

fn chance(framing: &Framing, x: f64) -> f64 {
    framing.chance(None, inches(x), inches(60.0), inches(LAG_NEED_IN))
}

#[test]
fn one_probe_leaves_a_lag_at_the_room_by_the_face() {
    // Its middle is anywhere within 3/4 in: the lag has room in (1 1/2 - 2 x 15/32) / 1 1/2 = 37.5 hundredths.
    let found = wood(&[(HitKind::Wood, 60.0)]);
    assert!((chance(&found, 60.0) - 0.375).abs() < 0.03, "{}", chance(&found, 60.0));
    assert_eq!(found.studs.len(), 1);
    assert_eq!(found.studs[0].known, Known::Inferred, "one probe alone does not settle it");
}

#[test]
fn two_probes_at_the_half_face_less_the_drift_settle_it() {
    // A drift of 3/4 - 15/32 = 9/32 in is allowed: probes at 3/4 - 9/32 = 15/32 in to either side.
    let found = wood(&[(HitKind::Wood, 60.0 - LAG_NEED_IN), (HitKind::Wood, 60.0 + LAG_NEED_IN)]);
    assert!(chance(&found, 60.0) >= 0.95, "{}", chance(&found, 60.0));
    assert_eq!(found.studs[0].known, Known::Met);
}

#[test]
fn a_lone_sensed_centre_is_as_likely_as_sensors_are_right() {
    let found = wood(&[(HitKind::Centre, 60.0)]);
    let stud = &found.studs[0];

    assert!((0.85..0.999).contains(&stud.probability), "{}", stud.probability);
    assert!((stud.centre - inches(60.0)).mm().abs() < 1e-6);
    // 1/4 in is its 90 % doubt (SENSED_DOUBT_MM); that it may be one of a pair widens it.
    assert!((6.0..12.0).contains(&stud.doubt.mm()), "{}", stud.doubt.mm());
    assert!(found.planes[0].spacings[0].probability < 0.5, "one hit tells no spacing");
}

#[test]
fn two_edges_make_one_stud_between_them() {
    let found = wood(&[(HitKind::LeftEdge, 15.25 + 48.0), (HitKind::RightEdge, 16.75 + 48.0)]);
    assert_eq!(found.studs.len(), 1);
    assert!((found.studs[0].centre - inches(64.0)).mm().abs() < 1e-6);
    assert_eq!(found.studs[0].hits.len(), 2);
}

#[test]
fn four_bays_tell_sixteen_inches_and_the_stud_between() {
    let found = wood(&[16.0, 32.0, 64.0, 80.0].map(|x| (HitKind::Centre, x)));
    let first = found.planes[0].spacings[0];
    assert!(first.spacing == Some(inches(16.0)) && first.probability > 0.9, "{first:?}");
    let between = found.studs.iter().find(|stud| (stud.centre - inches(48.0)).mm().abs() < 3.0).unwrap();
    assert_eq!(between.known, Known::Expected);
    let sum: f64 = found.planes[0].spacings.iter().map(|one| one.probability).sum();
    assert!((sum - 1.0).abs() < 1e-9);
}

#[test]
fn sixteen_inches_and_400_millimetres_stay_both_where_a_bay_tells_no_more() {
    let found = wood(&[(HitKind::Centre, 32.0), (HitKind::Centre, 47.9)]);
    let share = |mm: f64| {
        let of = |one: &&Spacing| one.spacing.is_some_and(|spacing| (spacing.mm() - mm).abs() < 0.01);
        found.planes[0].spacings.iter().find(of).unwrap().probability
    };
    assert!(share(406.4) > 0.2 && share(400.0) > 0.2, "{:?}", found.planes[0].spacings);
}

#[test]
fn a_pipe_between_studs_is_an_outlier_and_no_stud() {
    let found = wood(&[16.0, 32.0, 48.0, 64.0, 80.0, 57.0].map(|x| (HitKind::Centre, x)));
    let outliers = &found.planes[0].outliers;
    assert_eq!(outliers.len(), 1);
    assert_eq!(outliers[0].hit, Id::new("hit-6"));
    assert!(matches!(outliers[0].why, OutlierWhy::OffPattern(off) if (off - inches(7.0)).mm().abs() < 5.0));
    assert!(found.studs.iter().all(|stud| (stud.centre - inches(57.0)).mm().abs() > 100.0));
}

#[test]
fn air_beside_a_lone_centre_takes_the_stud_away() {
    let found = wood(&[(HitKind::Centre, 60.0), (HitKind::Air, 60.0)]);
    assert!(found.studs.is_empty(), "{:?}", found.studs);
    assert!(
        matches!(&found.planes[0].outliers[0].why, OutlierWhy::AgainstProbe(probe) if *probe == Id::new("hit-2"))
    );
}

#[test]
fn air_and_lath_are_no_studs_and_metal_on_wood_says_nothing() {
    assert!(wood(&[(HitKind::Air, 10.0), (HitKind::ShallowWood, 12.0)]).studs.is_empty());
    assert!(wood(&[(HitKind::Metal, 10.0)]).planes.is_empty());
}

#[test]
fn steel_is_met_by_metal_at_two_heights_and_a_magnet() {
    let steel = || WallFraming::Steel(SteelStuds::default());
    let low = [(HitKind::Metal, 40.0, 50.0), (HitKind::Magnet, 40.0, 52.0)];
    assert_eq!(framed(steel(), &low).studs[0].known, Known::Inferred);
    // 300 mm are 11.811 in.
    let near = [&low[..], &[(HitKind::Metal, 40.0, 61.8)]].concat();
    assert_eq!(framed(steel(), &near).studs[0].known, Known::Inferred);
    let far = [&low[..], &[(HitKind::Metal, 40.0, 61.9)]].concat();
    assert_eq!(framed(steel(), &far).studs[0].known, Known::Met);
    let without = [(HitKind::Metal, 40.0, 50.0), (HitKind::Metal, 40.0, 70.0)];
    assert_eq!(framed(steel(), &without).studs[0].known, Known::Inferred);
}

#[test]
fn a_thousand_hits_in_one_place_are_still_told() {
    let found = wood(&vec![(HitKind::Centre, 60.0); 1000]);
    assert_eq!(found.studs.len(), 1);
    assert!(found.studs[0].probability > 0.99 && found.studs[0].doubt.mm() >= 0.0);
    assert!(wood(&[]).studs.is_empty());
}

#[test]
fn two_edges_at_two_heights_tell_a_lean() {
    // Its middle is at 60 in at 40 in up, by two edges, and at 60.3 in at 70 in up. A sensed edge is off by 1/4 in in
    // 1.645 standard deviations, so 3.86 mm; the mean of two by 2.73, the difference of two means by 3.86. Over 30 in,
    // 762 mm, that is a lean of 0.0100, off by 0.00507. Beforehand it is 0, off by 0.00260: together
    // 0.0100 x 0.00260^2 / (0.00260^2 + 0.00507^2) = 0.00209, off by 1 / sqrt(1/0.00260^2 + 1/0.00507^2) = 0.00232.
    let edges =
        |middle: f64, y: f64| [(HitKind::LeftEdge, middle - 0.75, y), (HitKind::RightEdge, middle + 0.75, y)];
    let hits = [edges(60.0, 40.0), edges(60.3, 70.0)].concat();
    let found = framed(WallFraming::Wood(WoodStuds::default()), &hits);
    let stud = &found.studs[0];
    assert!((stud.lean - 0.00209).abs() < 0.0003, "{}", stud.lean);
    assert!((stud.lean_doubt - 0.00232).abs() < 0.0003, "{}", stud.lean_doubt);
    assert!((stud.middle_at(inches(55.0)) - inches(60.15)).mm().abs() < 0.5, "{stud:?}");
    // A chance is told with it: the same fastener, to the right of the middle, is surer higher up.
    let at = |y: f64| found.chance(None, inches(60.4), inches(y), inches(LAG_NEED_IN));
    assert!(at(70.0) > at(40.0) + 0.03, "{} {}", at(70.0), at(40.0));
}

#[test]
fn hits_at_one_height_tell_no_lean() {
    let found = wood(&[(HitKind::LeftEdge, 59.25), (HitKind::RightEdge, 60.75)]);
    assert_eq!(found.studs[0].lean.to_bits(), 0.0_f64.to_bits());
    assert!((found.studs[0].lean_doubt - LEAN_SLOPE).abs() < 1e-12);
}

#[test]
fn edges_of_a_doubled_stud_beside_a_window_make_two() {
    // A full stud and one under the header, 3 in wide together, 0.4 in beside the window's edge at 80 in.
    let hits = [(HitKind::LeftEdge, 76.6, 60.0), (HitKind::RightEdge, 79.6, 60.0)];
    let survey = survey(&hits, vec![feature("window-1", FeatureKind::Window, 80.0, 110.0)]);
    let wall = Wall { framing: Some(WallFraming::Wood(WoodStuds::default())), ..Wall::default() };
    let found = super::framing(&wall, &survey, 0.95);
    let middles: Vec<f64> = found.studs.iter().map(|stud| stud.centre.in_inches()).collect();
    assert_eq!(middles.len(), 2, "{middles:?}");
    assert!((middles[0] - 77.35).abs() < 0.12 && (middles[1] - 78.85).abs() < 0.12, "{middles:?}");
    // A fastener in their seam splits them.
    assert!(found.chance(None, inches(78.1), inches(60.0), inches(LAG_NEED_IN)) < 0.1);
}

#[test]
fn a_breast_is_told_on_its_own_and_nothing_is_expected_behind_it() {
    let breast = feature("breast-1", FeatureKind::ChimneyBreast, 60.0, 120.0);
    let wall_hits = [8.0, 24.0, 40.0, 136.0].map(|x| (HitKind::Centre, x, 60.0));
    let breast_hits = [66.0, 90.0, 114.0].map(|x| (HitKind::Centre, x, 60.0));
    let survey = survey(&[&wall_hits[..], &breast_hits[..]].concat(), vec![breast]);
    let wall = Wall { framing: Some(WallFraming::Wood(WoodStuds::default())), ..Wall::default() };
    let found = super::framing(&wall, &survey, 0.95);
    let planes: Vec<_> = found.planes.iter().map(|plane| plane.on.clone()).collect();
    assert_eq!(planes, [None, Some(Id::new("breast-1"))]);
    let own = &found.planes[1].spacings;
    let of = |spacing: f64| {
        let same =
            |one: &&Spacing| one.spacing.is_some_and(|told| (told - inches(spacing)).mm().abs() < 0.01);
        own.iter().find(same).unwrap().probability
    };
    assert!(of(24.0) > of(16.0) && found.planes[0].spacings[0].spacing == Some(inches(16.0)), "{own:?}");
    let behind = |stud: &&Stud| stud.on.is_none() && (58.0..122.0).contains(&stud.centre.in_inches());
    assert_eq!(found.studs.iter().filter(behind).count(), 0, "{:?}", found.studs);
    assert_eq!(found.studs.iter().filter(|stud| stud.on.is_some()).count(), 3);
}
