use super::super::sample;
use super::clauses::rest;
use super::*;
use crate::capacity::case::{CaseName, Posture, PullAt};
use crate::capacity::used::Term;
use crate::capacity::why::Why;
use crate::plan::verdict::{FastenerAsked, Governing, OfKit};
use crate::plan::verdict::{Rest, Want};
use crate::subject::Subject;
use crate::units::{Angle, Force, Ratio, Stress};

fn hole() -> Subject {
    Id::new("display-1").part("hole-3")
}

fn governing(used: f64) -> Governing {
    let case = CaseName { posture: Posture::AsHung, pull: Some(PullAt::DownLeft) };
    Governing { hole: hole(), case, used, term: Term::Combined }
}

fn fastening(change: impl FnOnce(&mut Verdict)) -> Fastening {
    let mut fastening = Fastening::unknown();
    change(&mut fastening.verdict);
    fastening
}

fn lag() -> FastenerPlan {
    FastenerPlan {
        hole: Id::new("hole-3"),
        subject: hole(),
        stock: Id::new("fastener-1"),
        kind: FastenerKind::Lag,
        diameter: Length::inches(0.3125),
        length: Length::inches(3.0),
        shank: None,
        lead: Some(Length::inches(11.0 / 64.0)),
        bit: BitFrom::UsualSet,
        by_hand: false,
        depth: Some(Length::inches(2.9375)),
        asked: Some(FastenerAsked { shear_n: 199.6, pull_n: 80.2, used: 0.4301 }),
    }
}

#[test]
fn the_line_tells_the_word_the_use_and_what_to_do_first() {
    let plan = sample::plan();
    let probe = || vec![Want::Probe(hole()), Want::Front(Id::new("wall-1"))];
    let holds = |verdict: &mut Verdict, used: f64| {
        (verdict.word, verdict.if_probed, verdict.as_stated) = (Word::Holds, Word::Holds, Word::Holds);
        verdict.governing = Some(governing(used));
    };
    let told = [
        (fastening(|verdict| holds(verdict, 0.4301)), "Holds, 0.44 used."),
        (fastening(|verdict| holds(verdict, 0.43)), "Holds, 0.43 used."),
        (fastening(|_| {}), "Not known."),
        (fastening(|verdict| verdict.wanted = probe()), "Not known: probe the stud at hole 3."),
        (
            fastening(|verdict| (verdict.wanted, verdict.if_probed) = (probe(), Word::Holds)),
            "Not known (holds if probed): probe the stud at hole 3.",
        ),
        (
            fastening(|verdict| (verdict.word, verdict.governing) = (Word::Short, Some(governing(120.0)))),
            "Short, far more than all used.",
        ),
    ];
    for (fastening, words) in told {
        assert_eq!(verdict_line(&plan, &fastening), words);
    }
}

#[test]
fn the_verdict_in_full_is_well_told() {
    let plan = sample::plan();
    let case = CaseName { posture: Posture::AsHung, pull: None };
    let full = fastening(|verdict| {
        verdict.governing = Some(governing(0.8));
        verdict.uncarried = Some((case, Why::Turns { nmm: 54_600.0 }));
        verdict.required = Required::NotMet;
        verdict.if_probed = Word::Short;
        verdict.as_stated = Word::Holds;
        verdict.searched = true;
        verdict.wanted = vec![Want::Probe(hole()), Want::Mass(Id::new("display-1"))];
        verdict.rests_on = vec![Rest::Method, Rest::MountMass];
    });
    let told = verdict(&plan, &full);
    assert_eq!(told.len(), 7, "{told:#?}");
    for sentence in &told {
        sample::well_told(sentence);
    }
    assert_eq!(
        told[0],
        "Verdict: not known. Of what is known the worst is pulled down at its left end, 0.80 used at hole 3: holds; \
         hanging: not known, it turns the plate with 55 N\u{b7}m, and no published value carries that on one stud."
    );
    assert_eq!(told[5], "Measure the mass of the display and probe the stud at hole 3.");
}

#[test]
fn a_fastener_is_told_by_its_hole_its_size_its_lead_hole_and_its_use() {
    let plan = sample::plan();
    let told = |change: fn(&mut FastenerPlan)| {
        let mut one = lag();
        change(&mut one);
        fastener(&plan, &one)
    };
    assert_eq!(
        told(|_| {}),
        "Hole 3: lag screw 5/16\" x 3\"; lead hole 11/64\", 2 15/16\" deep from the wall's face; shear 200 N, pull 80 N, \
         0.44 used."
    );
    assert_eq!(
        told(|one| (one.lead, one.depth, one.asked) = (None, None, None)),
        "Hole 3: lag screw 5/16\" x 3\"."
    );
    let of = |kind, diameter| fastener_name(&plan, &FastenerPlan { kind, diameter, ..lag() });
    assert_eq!(of(FastenerKind::WoodScrew, Length::inches(0.19)), "wood screw #10 x 3\"");
    assert_eq!(of(FastenerKind::SheetMetalScrew, Length::inches(0.25)), "sheet-metal screw 1/4\" x 3\"");
    assert_eq!(of(FastenerKind::ConcreteScrew, Length::inches(0.25)), "concrete screw 1/4\" x 3\"");
    assert_eq!(of(FastenerKind::StructuralScrew, Length::millimetres(6.5)), "structural screw 6.5 mm x 3\"");
}

#[test]
fn an_empty_hole_says_why() {
    let plan = sample::plan();
    let whys = [
        EmptyWhy::Meets(Meets::Stud),
        EmptyWhy::Meets(Meets::StudEdge),
        EmptyWhy::Meets(Meets::Board),
        EmptyWhy::Meets(Meets::Hidden),
        EmptyWhy::Meets(Meets::Masonry),
        EmptyWhy::Meets(Meets::OffWall),
        EmptyWhy::Meets(Meets::NotKnown),
        EmptyWhy::OtherPlane,
        EmptyWhy::Stripped,
        EmptyWhy::OverOpening,
        EmptyWhy::TooNear(Id::new("hole-1")),
        EmptyWhy::Refused(Why::DoesNotPass),
        EmptyWhy::NoFastener,
        EmptyWhy::NotNeeded,
    ];
    let count = whys.len();
    let empty =
        |why| left_empty(&plan, &LeftEmpty { hole: Id::new("hole-3"), subject: hole(), why, wanted: false });
    let told: std::collections::BTreeSet<String> = whys.into_iter().map(empty).collect();
    assert_eq!(told.len(), count, "no two are told alike");
    for sentence in &told {
        sample::well_told(sentence);
        assert!(sentence.starts_with("Hole 3 stays empty: "), "{sentence}");
    }
}

#[test]
fn every_want_and_every_rest_is_a_clause_of_its_own() {
    let plan = sample::plan();
    let id = || Id::new("display-1");
    let of_kit = || OfKit {
        id: Id::new("steel-lag"),
        kind: FastenerKind::Lag,
        diameter: Some(Length::inches(0.3125)),
        length: Some(Length::inches(3.0)),
    };
    let wants = [
        Want::Probe(hole()),
        Want::Mass(id()),
        Want::MountMass(id()),
        Want::Size(id()),
        Want::Drop(id()),
        Want::StandOff(id()),
        Want::Reach(id()),
        Want::Tilt(id()),
        Want::Plate(id()),
        Want::PlateThickness(id()),
        Want::HoleWidth(hole()),
        Want::Place(id()),
        Want::Front(id()),
        Want::Framing(id()),
        Want::SteelThickness(id()),
        Want::Face(id()),
        Want::NormalWeight(id()),
        Want::Solid { wall: id(), base: "solid brick".to_owned() },
        Want::WallSize(id()),
        Want::Hits(id()),
        Want::Fasteners,
        Want::FastenerSize(of_kit()),
        Want::FastenerHead(of_kit()),
        Want::FastenerReport(of_kit()),
    ];
    let rests = [
        Rest::Pull(Force::newtons(220.0)),
        Rest::Gravity(Ratio::bare(0.36)),
        Rest::StudDepth(Length::inches(2.5)),
        Rest::StudFace(Length::inches(1.5)),
        Rest::PlateSteel(Stress::psi(61_850.0)),
        Rest::Washer(Length::inches(0.125)),
        Rest::Middle,
        Rest::MountMass,
        Rest::Tilt(Angle::degrees(10.0)),
        Rest::Hinge(Angle::degrees(90.0)),
        Rest::Head(Angle::degrees(90.0)),
        Rest::LagMade,
        Rest::MakersLoad("solid brick".to_owned()),
        Rest::PullTest(0.25),
        Rest::Concrete(Stress::psi(2500.0)),
        Rest::ConcreteEdge(16.0),
        Rest::ShearThroughBoard(0.5),
        Rest::Method,
    ];
    let clauses: Vec<String> =
        wants.iter().map(|one| want(&plan, one)).chain(rests.iter().map(|one| rest(&plan, one))).collect();
    let distinct: std::collections::BTreeSet<&String> = clauses.iter().collect();
    assert_eq!(distinct.len(), clauses.len(), "{clauses:#?}");
    for clause in &clauses {
        assert!(!clause.ends_with('.') && !clause.starts_with(char::is_uppercase), "{clause}");
        sample::well_told(&format!("It is to {clause}."));
    }
    assert!(clauses.contains(&"measure the head or washer of the lag screw 5/16\" x 3\"".to_owned()));
    assert!(clauses.contains(&"50 % of the shear through what stands in front of the steel".to_owned()));
}
