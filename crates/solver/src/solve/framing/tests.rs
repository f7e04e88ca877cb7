//! Hand-worked cases.

use super::*;
use crate::geometry::{Point, Rect};
use crate::job::framing::{SteelStuds, WoodStuds};
use crate::job::hit::HitKind;
use crate::job::wall::End;
use crate::plan::framing::OutlierWhy;
use crate::plan::survey::Floor;

fn inches(x: f64) -> Length {
    Length::inches(x)
}

fn framed(framing: WallFraming, hits: &[(HitKind, f64, f64)]) -> Framing {
    let hits = hits.iter().zip(1..).map(|((kind, x, y), id)| PlacedHit {
        id: Id::new(&format!("hit-{id}")),
        kind: *kind,
        x: inches(*x).quantised(),
        y: Some(inches(*y)),
    });
    let survey = Survey {
        outline: Rect { left: inches(0.0), right: inches(160.0), bottom: inches(0.0), top: inches(96.0) },
        left_end: End::InsideCorner,
        right_end: End::InsideCorner,
        floor: Floor { readings: vec![Point::default()] },
        control_line_y: None,
        features: Vec::new(),
        hidden: Vec::new(),
        hits: hits.collect(),
        humps: Vec::new(),
        misfits: Vec::new(),
    };
    super::framing(&Wall { framing: Some(framing), ..Wall::default() }, &survey, 0.95)
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
