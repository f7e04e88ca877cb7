//! Published check values of viewing, through the functions that a plan is made with.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use serde::Deserialize;
use strikeline_solver::handbook::eye_height::{ABOVE_SEAT, KNEE, Measure, Percentiles, SEATED};
use strikeline_solver::handbook::viewing::REVIEW_OFF;
use strikeline_solver::job::Job;
use strikeline_solver::job::rule::UprightRule;
use strikeline_solver::ledger::{Blank, Given};
use strikeline_solver::plan::Plan;
use strikeline_solver::sight::acuity::{in_heights, lines_merge};
use strikeline_solver::sight::angle::{distance_for, filled, highest, off_axis, up};
use strikeline_solver::sight::eyes::{Eyes, Who};
use strikeline_solver::sight::picture::picture;
use strikeline_solver::solve::solve;
use strikeline_solver::units::Length;

#[derive(Deserialize)]
struct Row {
    row: usize,
    given: Check,
    expected: Vec<f64>,
    tol: f64,
    source: String,
    label: String,
}

#[derive(Clone, Copy, Debug, Deserialize)]
enum Sex {
    Man,
    Woman,
}

#[derive(Debug, Deserialize)]
enum Check {
    Picture(f64),
    PictureMm(f64),
    FillsIn { diagonal: f64, angle: f64 },
    Merge { height: f64, lines: u32 },
    ToldApart(f64),
    MergeOf { diagonal: f64, lines: u32 },
    Heights { height: f64, distance: f64 },
    Filled { width: f64, height: f64, distance: f64 },
    Up { place: f64, eyes: f64, distance: f64 },
    Highest { eyes: f64, distance: f64 },
    UpToTop { diagonal: f64, centre: f64, eyes: f64, distance: f64 },
    AboveSeat(Sex),
    Knee(Sex),
    SumOfMen,
    OnSeat { who: Sex, seat: f64 },
    HighestAboveSeat(Sex),
}

fn inch(value: f64) -> Length {
    Length::inches(value)
}

fn given(length: Length) -> Given<Length> {
    Given::measured(length)
}

fn of(measure: &Measure, sex: Sex) -> Percentiles {
    match sex {
        Sex::Man => measure.men.value,
        Sex::Woman => measure.women.value,
    }
}

fn all(of: Percentiles) -> Vec<f64> {
    vec![of.p5, of.p50, of.p95]
}

fn found(check: &Check) -> Vec<f64> {
    let none = Length::default();
    match *check {
        Check::Picture(diagonal) => {
            let (width, height) = picture(inch(diagonal));
            vec![width.in_inches(), height.in_inches()]
        }
        Check::PictureMm(diagonal) => {
            let (width, height) = picture(inch(diagonal));
            vec![width.mm(), height.mm()]
        }
        Check::FillsIn { diagonal, angle } => {
            vec![
                distance_for(&mut Blank, given(picture(inch(diagonal)).0), Given::measured(angle))
                    .in_inches(),
            ]
        }
        Check::Merge { height, lines } => {
            vec![lines_merge(&mut Blank, given(inch(height)), lines).unwrap().in_inches()]
        }
        // So high is one line that merges with the next at the distance.
        Check::ToldApart(distance) => {
            vec![distance / lines_merge(&mut Blank, given(inch(1.0)), 1).unwrap().in_inches()]
        }
        Check::MergeOf { diagonal, lines } => {
            vec![lines_merge(&mut Blank, given(picture(inch(diagonal)).1), lines).unwrap().in_inches()]
        }
        Check::Heights { height, distance } => vec![in_heights(inch(distance), inch(height))],
        Check::Filled { width, height, distance } => [width, height]
            .map(|side| filled(&mut Blank, given(inch(side)), given(none), given(inch(distance))).deg())
            .to_vec(),
        Check::Up { place, eyes, distance } => {
            vec![up(&mut Blank, given(inch(place - eyes)), given(inch(distance))).deg()]
        }
        Check::Highest { eyes, distance } => {
            vec![
                highest(&mut Blank, given(inch(eyes)), given(inch(distance)), REVIEW_OFF.given()).in_inches(),
            ]
        }
        Check::UpToTop { diagonal, centre, eyes, distance } => {
            let top = inch(centre) + picture(inch(diagonal)).1 / 2.0;
            let up = up(&mut Blank, given(top - inch(eyes)), given(inch(distance))).deg();
            assert!(up > REVIEW_OFF.value, "to be warned of");
            vec![up]
        }
        Check::AboveSeat(sex) => all(of(&ABOVE_SEAT, sex)),
        Check::Knee(sex) => all(of(&KNEE, sex)),
        Check::SumOfMen => vec![SEATED.men.value.p5, ABOVE_SEAT.men.value.p5 + KNEE.men.value.p5],
        Check::OnSeat { who, seat } => {
            let who = match who {
                Sex::Man => Who::Man,
                Sex::Woman => Who::Woman,
            };
            let eyes = Eyes::seated(who, Some(inch(seat)));
            // The lowest of the range is one in twenty erect, less the slump.
            let erect = inch(seat) + Length::millimetres(ABOVE_SEAT.men.value.p5);
            vec![eyes.height.mm(), (eyes.height - (erect - eyes.low)).mm()]
        }
        Check::HighestAboveSeat(sex) => vec![of(&ABOVE_SEAT, sex).p95],
    }
}

#[test]
fn every_published_check_value_is_met() {
    let rows: Vec<Row> = ron::from_str(include_str!("sight/rows.ron")).unwrap();
    let mut seen: Vec<usize> = Vec::new();
    for row in &rows {
        let found = found(&row.given);
        assert_eq!(found.len(), row.expected.len(), "row {}", row.row);
        for (found, expected) in found.iter().zip(&row.expected) {
            let about =
                format!("row {} ({}, {}): {found}, {expected} asked for", row.row, row.source, row.label);
            assert!((found - expected).abs() <= row.tol + 1e-12, "{about}");
        }
        seen.push(row.row);
    }
    seen.dedup();
    assert_eq!(seen, (1..=24).collect::<Vec<_>>(), "a row for each");
}

#[test]
fn from_the_side_a_picture_fills_less_and_is_off_its_axis() {
    let (width, distance, none) = (given(inch(57.0)), given(inch(108.0)), given(Length::default()));
    let front = filled(&mut Blank, width, none, distance).deg();
    let mut last = front;
    for aside in [10.0, 40.0, 90.0] {
        let filled_here = filled(&mut Blank, width, given(inch(aside)), distance).deg();
        let mirrored = filled(&mut Blank, width, given(inch(-aside)), distance).deg();
        assert!(filled_here < last && (filled_here - mirrored).abs() < 1e-12, "{aside}");
        last = filled_here;
    }
    // 3, 4, 5: a rise of 4 and 3 to the side from 5 away are 45 degrees.
    let off = off_axis(&mut Blank, given(inch(3.0)), given(inch(4.0)), given(inch(5.0))).deg();
    assert!((off - 45.0).abs() < 1e-12);
}

#[test]
fn a_height_or_a_tilt_found_for_an_angle_gives_that_angle() {
    let (eyes, distance) = (inch(47.0), inch(120.0));
    let height = highest(&mut Blank, given(eyes), given(distance), REVIEW_OFF.given());
    assert!((up(&mut Blank, given(height - eyes), given(distance)).deg() - 15.0).abs() < 1e-9);
    let away = distance_for(&mut Blank, given(inch(57.0)), Given::measured(30.0));
    assert!(
        (filled(&mut Blank, given(inch(57.0)), given(Length::default()), given(away)).deg() - 30.0).abs()
            < 1e-9
    );
    assert_eq!(lines_merge(&mut Blank, given(inch(30.0)), 0), None);
}

/// A display 48 x 27 in on end of its mount, its middle 60 in up at 100 in, 3 in off the wall, seen by one seat.
fn seen_from(seat: &str) -> (Job, Plan) {
    let text = format!(
        "(format: 1, pieces: [(id: \"display-1\", kind: display, width: \"48 in\", height: \"27 in\", depth: \"2 in\", lines: 1080)],
         mounts: [(id: \"mount-1\", kind: tilting, stand_off: \"1 in\", tilt: (down: \"15 deg\"))],
         walls: [(id: \"wall-1\", width: \"200 in\", height: \"96 in\",
            features: [(id: \"mantel-1\", kind: mantel, across: (left: (by: \"70 in\"), width: \"60 in\"),
                upright: (top: (by: \"40 in\"), height: \"3 in\"))],
            seats: [{seat}],
            options: [(id: \"option-1\", hangings: [(id: \"hanging-1\", piece: \"display-1\", mount: \"mount-1\",
                across: beside(from: \"left\", by: \"76 in\"), upright: height(of: centre, by: \"60 in\"))])])])"
    );
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let mut job: Job = options.from_str(&text).unwrap();
    job.complete_ids().unwrap();
    let plan = solve(&job, &job.walls[0].id, None);
    (job, plan)
}

#[test]
fn a_seat_of_a_job_is_told_its_figures() {
    // By hand, with the eyes 111 - 3 = 108 in from the picture: 60 up against 42 is atan(18/108) = 9.462 degrees, its
    // top 31.5 above them 16.260; 48 in fill 2 atan(24/108) = 25.058; 30 degrees at 24 / tan 15 + 3 = 92.569 in; 27 in
    // of 1080 lines merge at 3.1831 x 27 + 3 = 88.944 in; 15 degrees at 42 + 108 tan 15 = 70.938 in. On the mantel the
    // middle is 53.5 up: atan(11.5/108) = 6.078.
    let (_, plan) =
        seen_from("(id: \"seat-1\", distance: \"111 in\", at: (by: \"100 in\"), eye_height: \"42 in\")");
    let one = &plan.sight[0];
    let seen = one.seen.as_ref().unwrap();
    let mantel = seen.mantel.as_ref().unwrap();
    for (found, expected) in [
        (seen.up.deg(), 9.462),
        (seen.top.deg(), 16.260),
        (seen.horizontal.deg(), 25.058),
        (seen.off_axis.deg(), 9.462),
        (seen.fills_within.in_inches(), 92.569),
        (seen.lines.unwrap().1.in_inches(), 88.944),
        (seen.highest.in_inches(), 70.938),
        (seen.tilts.unwrap().deg(), 15.0),
        (mantel.lowest.in_inches(), 53.5),
        (mantel.up.deg(), 6.078),
    ] {
        assert!((found - expected).abs() < 0.001, "{found}, {expected} asked for");
    }
    assert_eq!((one.in_front, one.of_case, seen.up), (false, true, seen.up_lowest));
}

#[test]
fn what_a_seat_does_not_say_is_taken_and_told() {
    let (_, plan) = seen_from("(id: \"seat-1\", distance: \"111 in\")");
    let one = &plan.sight[0];
    // The median of all people on a seat that suits them: 1206 mm.
    assert_eq!((one.in_front, one.eyes.height.mm()), (true, 1206.0));
    assert!(one.seen.as_ref().unwrap().up_lowest > one.seen.as_ref().unwrap().up);
    assert!((one.eyes_at.x.in_inches() - 100.0).abs() < 1e-9);
    let (_, plan) = seen_from("(id: \"seat-1\", distance: \"2 in\")");
    assert_eq!(plan.sight[0].seen, None);
    assert!(plan.findings.iter().any(|finding| finding.what.rule() == "seat_too_near"));
    let (_, plan) = seen_from("(id: \"seat-1\", distance: \"60 in\", eye_height: \"40 in\")");
    assert!(plan.findings.iter().any(|finding| finding.what.rule() == "looks_up"));
}

#[test]
fn a_label_is_never_promoted() {
    use strikeline_solver::ledger::{Label, Working};
    assert_eq!(Eyes::standing(Who::Anyone).label, Label::Derived, "percentiles worked out from a survey");
    assert_eq!(Eyes::seated(Who::Anyone, None).label, Label::Chosen, "the slump in its range is chosen");
    let mut working = Working::default();
    let eyes = Given::new(inch(18.0), Label::Assumed);
    let _angle = up(&mut working, eyes, given(inch(108.0)));
    assert_eq!(working.resting_on(Label::Assumed).len(), 1, "an assumed height is told as one");
}

#[test]
fn a_stand_off_or_depth_that_nobody_measured_brings_the_picture_nearer_and_is_told() {
    let (mut job, plan) =
        seen_from("(id: \"seat-1\", distance: \"111 in\", at: (by: \"100 in\"), eye_height: \"42 in\")");
    assert!(!plan.sight[0].proud_assumed);
    job.mounts[0].stand_off = None;
    let unknown = solve(&job, &job.walls[0].id, None);
    let (known, unknown_sight) = (&plan.sight[0], &unknown.sight[0]);
    assert!(unknown_sight.proud_assumed && unknown_sight.proud > known.proud);
    let up = |sight: &strikeline_solver::plan::sight::SeatSight| sight.seen.as_ref().unwrap().up;
    assert!(up(unknown_sight) > up(known), "looked up at more, the safer of the two");
    let told = strikeline_solver::words::sight(&unknown, unknown_sight).join(" ");
    assert!(told.contains("was not measured"), "{told}");
}

#[test]
fn hung_or_tilted_as_told_the_picture_is_square_to_the_seat() {
    let (mut job, plan) =
        seen_from("(id: \"seat-1\", distance: \"111 in\", at: (by: \"100 in\"), eye_height: \"42 in\")");
    let tilt = plan.sight[0].seen.as_ref().unwrap().tilt;
    // The picture's perpendicular, tilted forward, falls as steeply as the line to the eyes.
    let fall = (tilt.deg() * std::f64::consts::PI / 180.0).tan();
    assert!((fall - 18.0 / 108.0).abs() < 1e-12);
    let UprightRule::Height { by, .. } = &mut job.walls[0].options[0].hangings[0].upright else { return };
    *by = plan.sight[0].eyes.height;
    let plan = solve(&job, &job.walls[0].id, None);
    let seen = plan.sight[0].seen.as_ref().unwrap();
    assert_eq!((seen.up.deg(), seen.off_axis.deg()), (0.0, 0.0));
}

#[test]
fn who_is_not_measured_stands_within_the_range_of_the_table() {
    for who in [Who::Anyone, Who::Man, Who::Woman] {
        for eyes in [Eyes::seated(who, None), Eyes::seated(who, Some(inch(18.0))), Eyes::standing(who)] {
            assert!(eyes.low < eyes.height && eyes.height < eyes.high, "{eyes:?}");
            assert!(!eyes.source.is_empty());
        }
    }
    let measured = Eyes::measured(inch(46.0));
    assert_eq!((measured.low, measured.high), (measured.height, measured.height));
}
