//! What stands beside a plate: whatever opens concrete, fasteners of another plate, a chimney breast nobody looked
//! into.

use super::rooms::{self, Install, plan, room};
use super::safer::{add_feature, mm};
use super::{fastening, named};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::framing::{Front, Layer};
use strikeline_solver::job::hidden::{Hidden, HiddenKind};
use strikeline_solver::job::option::Nudge;
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::plan::piece::HolePlan;
use strikeline_solver::plan::verdict::{EmptyWhy, Want};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Length, Mass, Ratio};
use strikeline_solver::words;

fn on_concrete() -> Install {
    named("flush 50 kg on bare concrete")
}

fn holes(job: &Job) -> Vec<HolePlan> {
    plan(job).pieces[0].mount.clone().unwrap().holes
}

/// 16 diameters of a 1/4 in screw are 101.6 mm.
fn is_too_near_an_edge(job: &Job) -> bool {
    let told = fastening(job);
    told.left_empty.iter().any(|empty| matches!(empty.why, EmptyWhy::Refused(Why::Edge { .. })))
}

#[test]
fn concrete_ends_at_whatever_opens_it() {
    let good = room(&on_concrete());
    assert_eq!(fastening(&good).verdict.word, Word::Holds);
    let lowest = holes(&good).iter().map(|hole| hole.place.y.mm()).fold(f64::INFINITY, f64::min);
    for kind in [FeatureKind::Other, FeatureKind::Thermostat, FeatureKind::Vent, FeatureKind::Window] {
        let mut job = good.clone();
        add_feature(&mut job, kind, (1500.0, 2500.0), (lowest - 500.0, 420.0));
        assert!(is_too_near_an_edge(&job), "{kind:?} 80 mm under the lower holes");
        let mut job = good.clone();
        add_feature(&mut job, kind, (1500.0, 2500.0), (lowest - 600.0, 420.0));
        assert_eq!(fastening(&job).verdict.word, Word::Holds, "{kind:?} 180 mm under them");
    }
    for kind in [HiddenKind::Flue, HiddenKind::Duct, HiddenKind::Pipe, HiddenKind::BoxBehind] {
        let mut job = good.clone();
        let (left, right) = (AcrossReading::from_left(mm(1500.0)), AcrossReading::from_left(mm(2500.0)));
        job.walls[0].hidden.push(Hidden {
            id: rooms::id("hidden-1"),
            known_by: None,
            kind,
            name: None,
            across: AcrossExtent { left: Some(left), right: Some(right), ..AcrossExtent::default() },
            upright: UprightExtent {
                bottom: Some(UprightReading::from_floor(mm(lowest - 300.0))),
                height: Some(mm(220.0)),
                ..UprightExtent::default()
            },
            notes: None,
        });
        assert!(is_too_near_an_edge(&job), "{kind:?} lies in a hollow");
    }
}

#[test]
fn a_layer_on_concrete_is_there_however_thin_it_was_measured() {
    for layer in [Layer::Board, Layer::PlasterOnLath, Layer::Tile, Layer::Panelling] {
        let mut job = room(&on_concrete());
        job.walls[0].front = Some(Front { layers: vec![layer], thickness: Some(mm(0.0)) });
        assert_eq!(fastening(&job).verdict.word, Word::NotKnown, "{layer:?}");
    }
}

/// A second display like the first, so far below it.
fn stacked(install: &Install, down_mm: f64) -> Job {
    let mut job = room(install);
    let mut piece = job.pieces[0].clone();
    piece.id = rooms::id("display-2");
    job.pieces.push(piece);
    let mut hanging = job.walls[0].options[0].hangings[0].clone();
    hanging.id = rooms::id("hanging-2");
    hanging.piece = rooms::id("display-2");
    hanging.nudge = Nudge { up: Offset(mm(-down_mm)), ..Nudge::default() };
    job.walls[0].options[0].hangings.push(hanging);
    job
}

#[test]
fn fasteners_of_two_plates_in_one_stud_keep_as_far_apart_as_those_of_one() {
    let install = named("flush 30 kg behind 1/2 in board");
    // Its rows are 200 mm apart: 4 D of a 5/16 in lag are 31.75 mm.
    for (down_mm, is_near) in [(225.0, true), (168.5, true), (232.0, false), (168.0, false)] {
        let job = stacked(&install, down_mm);
        let told = plan(&job);
        let [first, second] = [0, 1].map(|at| &told.pieces[at].mount.as_ref().unwrap().fastening);
        assert_eq!(first.fasteners.len(), 4, "{down_mm}");
        let near: Vec<_> =
            second.left_empty.iter().filter(|empty| matches!(empty.why, EmptyWhy::NearOther(_))).collect();
        assert_eq!(!near.is_empty(), is_near, "{down_mm}: {second:?}");
        if let Some(near) = near.first() {
            let words = words::left_empty(&told, near);
            assert!(words.contains("too near the fastener in "), "{words}");
        }
    }
}

#[test]
fn a_breast_of_which_nobody_said_what_it_is_built_of_is_not_known() {
    for install in [on_concrete(), named("flush 30 kg behind 1/2 in board")] {
        let mut job = room(&install);
        add_feature(&mut job, FeatureKind::ChimneyBreast, (1000.0, 3000.0), (0.0, 2700.0));
        let told = fastening(&job).verdict;
        assert_ne!(told.if_probed, Word::Holds, "{told:?}");
        assert!(told.wanted.contains(&Want::Framing(rooms::id("feature-1"))), "{told:?}");
        let words = words::verdict(&plan(&job), &fastening(&job));
        assert!(words.iter().any(|line| line.to_lowercase().contains("built of")), "{words:?}");
    }
}

#[test]
fn where_no_case_is_known_all_that_can_be_is_fastened() {
    // On one stud, off its middle, every case turns the plate: nothing tells that one lag does as well as three.
    let mut job = room(&named("arm 500 mm, 30 kg, three in one stud"));
    job.walls[0].options[0].hangings[0].nudge = Nudge { right: Offset(mm(100.0)), ..Nudge::default() };
    for hole in &mut rooms::plate(&mut job).holes {
        hole.right = Offset(hole.right.length() - mm(100.0));
    }
    let told = fastening(&job);
    assert_eq!(told.verdict.governing, None, "{told:?}");
    assert_eq!(told.fasteners.len(), 3, "{told:?}");
}

#[test]
fn no_chance_is_set_so_low_that_a_guess_is_met() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    job.settings.chance = Some(Ratio::bare(0.0));
    assert!((job.settings.chance().value() - 0.9).abs() < 1e-12);
    job.settings.chance = Some(Ratio::bare(0.97));
    assert!((job.settings.chance().value() - 0.97).abs() < 1e-12);
}

#[test]
fn nothing_weighs_nothing() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    job.pieces[0].mass = Some(Mass::kilograms(0.0));
    let told = fastening(&job).verdict;
    assert_eq!(told.word, Word::NotKnown);
    assert!(told.wanted.contains(&Want::Mass(rooms::id("display-1"))));
    job = room(&named("flush 30 kg behind 1/2 in board"));
    job.pieces[0].depth = Some(mm(0.0));
    assert!(fastening(&job).verdict.wanted.contains(&Want::Size(rooms::id("display-1"))));
}

#[test]
fn wood_that_was_met_asks_for_its_edges_not_for_another_probe() {
    let mut job = room(&named("flush 30 kg behind 1/2 in board"));
    // Every hole was probed; how doubtful the stud's edges are leaves less room than a thicker lag wants.
    job.kit.fasteners[0].diameter = Some(Length::inches(0.375));
    job.kit.fasteners[0].head = Some(Length::inches(0.75));
    for hole in &mut rooms::plate(&mut job).holes {
        hole.diameter = Some(Length::inches(0.45));
    }
    assert!(holes(&job).iter().all(|hole| hole.met));
    let told = fastening(&job);
    assert_eq!(told.verdict.word, Word::NotKnown, "{told:?}");
    let is_edges = |want: &Want| matches!(want, Want::Edges(_));
    assert_eq!(told.verdict.wanted.iter().filter(|want| is_edges(want)).count(), 4, "{told:?}");
    assert!(!told.verdict.wanted.iter().any(|want| matches!(want, Want::Probe(_))), "{told:?}");
    let words = words::verdict(&plan(&job), &told).join(" ");
    assert!(words.contains("ind both edges of the stud at hole 1, hole 2, hole 3 and hole 4"), "{words}");
}
