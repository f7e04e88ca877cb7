//! Holes chosen by hand, through `solve`: what was chosen is kept to, or it is told why not.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "installs/rooms.rs"]
#[allow(dead_code, reason = "half of the rooms' tools are for the other tests")]
mod rooms;

use rooms::{id, installs, plan, room};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::capacity::why::Why;
use strikeline_solver::finding::What;
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{FastenerKind, FastenerStock};
use strikeline_solver::job::mount::Required as Asks;
use strikeline_solver::job::option::{ByHand, Wanted};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::verdict::{EmptyWhy, Fastening, LeftEmpty, OfKit, Required};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Force, Length, Ratio};
use strikeline_solver::words;

/// Six holes over two studs, all probed; fewer than six are enough.
fn good() -> Job {
    let install =
        installs().into_iter().find(|one| one.name == "flush 50 kg behind 7/8 in plaster, six").unwrap();
    let mut install = install;
    install.kg = 3.0;
    let mut job = room(&install);
    job.settings.pull = Some(Force::newtons(40.0));
    job
}

fn choose(job: &mut Job, hole: &str, wanted: Wanted) {
    job.walls[0].options[0].hangings[0].holes.push(ByHand { hole: id(hole), wanted, along: None });
}

fn fastening(plan: &Plan) -> &Fastening {
    &plan.pieces[0].mount.as_ref().unwrap().fastening
}

fn used(fastening: &Fastening) -> Vec<String> {
    fastening.fasteners.iter().map(|one| one.hole.to_string()).collect()
}

fn empty<'a>(fastening: &'a Fastening, hole: &str) -> &'a LeftEmpty {
    fastening.left_empty.iter().find(|one| one.hole == id(hole)).unwrap()
}

fn tells_not_met(plan: &Plan) -> Option<String> {
    plan.findings.iter().find(|one| one.what == What::ByHandNotMet).map(|one| words::finding(plan, one))
}

#[test]
fn a_hole_left_empty_by_hand_is_never_used() {
    let before = plan(&good());
    for hole in used(fastening(&before)) {
        let mut job = good();
        choose(&mut job, &hole, Wanted::Empty);
        let after = plan(&job);
        let told = fastening(&after);
        assert!(!used(told).contains(&hole));
        assert_eq!(empty(told, &hole).why, EmptyWhy::ByHand);
        assert!(words::left_empty(&after, empty(told, &hole)).ends_with("stays empty: your choice."));
        assert_eq!(tells_not_met(&after), None);
        // The same job gives the same plan.
        assert_eq!(after, plan(&job));
    }
}

#[test]
fn all_left_empty_hold_nothing() {
    let mut job = good();
    for hole in 1..=6 {
        choose(&mut job, &format!("hole-{hole}"), Wanted::Empty);
    }
    let told = plan(&job);
    assert!(fastening(&told).fasteners.is_empty());
    assert_eq!(fastening(&told).verdict.word, Word::NotKnown);
    assert!(fastening(&told).left_empty.iter().all(|one| one.why == EmptyWhy::ByHand));
}

#[test]
fn a_hole_used_by_hand_is_in_every_choice() {
    let before = plan(&good());
    assert!(!fastening(&before).left_empty.is_empty(), "else nothing is chosen here");
    for one in &fastening(&before).left_empty {
        assert_eq!(one.why, EmptyWhy::NotNeeded);
        let mut job = good();
        choose(&mut job, one.hole.as_str(), Wanted::Used);
        let after = plan(&job);
        let fastener = fastening(&after).fasteners.iter().find(|other| other.hole == one.hole).unwrap();
        assert!(fastener.by_hand);
        assert!(words::fastener(&after, fastener).contains(", your choice"));
        assert!(fastening(&after).fasteners.iter().filter(|other| other.by_hand).count() == 1);
    }
}

#[test]
fn what_takes_no_fastener_is_told() {
    let mut job = good();
    rooms::plate(&mut job).holes[0].right = Offset(Length::millimetres(-100.0));
    choose(&mut job, "hole-1", Wanted::Used);
    let told = plan(&job);
    let left = empty(fastening(&told), "hole-1");
    assert!(left.wanted && matches!(left.why, EmptyWhy::Meets(_)), "{left:?}");
    let text = tells_not_met(&told).unwrap();
    assert!(text.contains("by hand") && text.contains("nothing behind the face"), "{text}");
    // The rest holds as without the choice.
    let mut without = job.clone();
    without.walls[0].options[0].hangings[0].holes.clear();
    assert_eq!(used(fastening(&told)), used(fastening(&plan(&without))));
}

#[test]
fn two_too_near_and_a_short_kit_are_told() {
    let mut job = good();
    let upper = rooms::plate(&mut job).holes[0].down;
    let right = rooms::plate(&mut job).holes[0].right;
    rooms::plate(&mut job).holes[2].down = upper + Length::millimetres(20.0);
    rooms::plate(&mut job).holes[2].right = right;
    choose(&mut job, "hole-1", Wanted::Used);
    choose(&mut job, "hole-3", Wanted::Used);
    let told = plan(&job);
    let left = &fastening(&told).left_empty;
    assert_eq!(left.iter().filter(|one| one.wanted && matches!(one.why, EmptyWhy::TooNear(_))).count(), 1);
    let mut job = good();
    job.kit.fasteners[0].count = Some(2);
    for hole in ["hole-1", "hole-2", "hole-5"] {
        choose(&mut job, hole, Wanted::Used);
    }
    let told = plan(&job);
    assert_eq!(fastening(&told).fasteners.len(), 2);
    assert!(fastening(&told).left_empty.iter().any(|one| one.wanted && one.why == EmptyWhy::TooFew));
    assert!(tells_not_met(&told).unwrap().contains("too few"));
}

fn screw() -> FastenerStock {
    FastenerStock {
        id: id("fastener-2"),
        kind: FastenerKind::WoodScrew,
        diameter: Some(Length::inches(0.242)),
        length: Some(Length::inches(3.0)),
        head: Some(Length::inches(0.5)),
        washer: Some(Length::default()),
        count: None,
        to_standard: None,
        report: None,
    }
}

#[test]
fn a_type_chosen_for_one_hole_is_the_type_of_all() {
    let mut job = good();
    job.kit.fasteners.push(screw());
    assert!(
        fastening(&plan(&job)).fasteners.iter().all(|one| one.stock == id("fastener-1")),
        "of itself lags"
    );
    choose(&mut job, "hole-1", Wanted::UsedWith(id("fastener-2")));
    let told = plan(&job);
    assert!(used(fastening(&told)).contains(&"hole-1".to_owned()));
    assert!(fastening(&told).fasteners.iter().all(|one| one.stock == id("fastener-2")));
    // A screw of another size wants another chance of wood.
    assert_eq!(fastening(&told).verdict.if_probed, Word::Holds);
    // A type that this wall does not take.
    job.kit.fasteners[1].kind = FastenerKind::ConcreteScrew;
    let told = plan(&job);
    assert_eq!(empty(fastening(&told), "hole-1").why, EmptyWhy::OnlyWith(OfKit::from(&job.kit.fasteners[1])));
    assert!(tells_not_met(&told).unwrap().contains("not made for this wall"));
    assert!(!fastening(&told).fasteners.is_empty(), "the others as the plan likes");
}

#[test]
fn more_than_one_type_is_not_known() {
    let mut job = good();
    job.kit.fasteners.push(screw());
    choose(&mut job, "hole-1", Wanted::UsedWith(id("fastener-2")));
    choose(&mut job, "hole-2", Wanted::UsedWith(id("fastener-1")));
    choose(&mut job, "hole-5", Wanted::Used);
    choose(&mut job, "hole-6", Wanted::Empty);
    let told = plan(&job);
    let fasteners = fastening(&told);
    let verdict = &fasteners.verdict;
    let words_of = [verdict.word, verdict.if_probed, verdict.as_stated];
    assert_eq!(words_of, [Word::NotKnown; 3]);
    assert_eq!(verdict.uncarried.unwrap().1, Why::Mixed);
    assert!(words::verdict(&told, fasteners)[0].contains("equal stiffness"));
    assert_eq!(used(fasteners), ["hole-1", "hole-2", "hole-5"]);
    assert_eq!(fasteners.fasteners[0].stock, id("fastener-2"));
    assert_eq!(fasteners.fasteners[1].stock, id("fastener-1"));
    assert_eq!(empty(fasteners, "hole-6").why, EmptyWhy::ByHand);
    assert_eq!(empty(fasteners, "hole-3").why, EmptyWhy::Mixed);
    assert_eq!(tells_not_met(&told), None);
    // Why there is nothing to work out is told where a working is asked for.
    let explained = strikeline_solver::explain::explain(&job, &told.wall, None, &id("display-1")).unwrap();
    let worked = words::working_text(&words::working(&told, &explained));
    assert!(worked.contains("more than one type"), "{worked}");
}

#[test]
fn what_is_not_there_is_told_and_the_rest_is_kept_to() {
    let mut job = good();
    choose(&mut job, "hole-9", Wanted::Used);
    choose(&mut job, "hole-1", Wanted::UsedWith(id("fastener-9")));
    let told = plan(&job);
    for named in ["hole-9", "fastener-9"] {
        let is_told = told.findings.iter().any(|one| one.what == What::NotThere { named: id(named).whole() });
        assert!(is_told, "{named}");
    }
    assert!(used(fastening(&told)).contains(&"hole-1".to_owned()));
}

#[test]
fn a_required_hole_left_empty_by_hand_is_not_met() {
    let mut job = good();
    job.mounts[0].required = Some(Asks { fasteners: None, holes: vec![id("hole-1")] });
    assert_eq!(fastening(&plan(&job)).verdict.required, Required::Met);
    choose(&mut job, "hole-1", Wanted::Empty);
    assert_eq!(fastening(&plan(&job)).verdict.required, Required::NotMet);
    assert_eq!(fastening(&plan(&job)).verdict.word, Word::Short);
}

#[test]
fn a_maker_who_asks_for_every_hole_gets_every_hole_or_is_not_met() {
    let mut job = good();
    let asks = |text: &str| Some(Asks { fasteners: Some(text.to_owned()), holes: Vec::new() });
    job.mounts[0].required = asks("Use all holes.");
    let told = plan(&job);
    assert_eq!(fastening(&told).fasteners.len(), 6);
    assert_eq!(fastening(&told).verdict.required, Required::Met);
    rooms::plate(&mut job).holes[0].right = Offset(Length::millimetres(-100.0));
    let told = plan(&job);
    assert_eq!(fastening(&told).verdict.required, Required::NotMet);
    assert_eq!(fastening(&told).verdict.word, Word::Short);
    let mut job = good();
    job.mounts[0].required = asks("For solid concrete only");
    let told = plan(&job);
    assert_eq!(fastening(&told).verdict.required, Required::NotKnown);
    assert_eq!(fastening(&told).verdict.word, Word::NotKnown);
}

#[test]
fn the_reserve_that_is_worth_a_hole_can_be_set() {
    let mut job = good();
    let before = fastening(&plan(&job)).fasteners.len();
    job.settings.reserve = Some(Ratio::bare(20.0));
    let more = fastening(&plan(&job)).fasteners.len();
    assert!(more > before, "{more}, {before}");
    job.settings.reserve = Some(Ratio::bare(0.0));
    let fewer = fastening(&plan(&job)).fasteners.len();
    assert!(fewer <= before, "{fewer}, {before}");
}

#[test]
fn a_hole_chosen_twice_is_refused_where_it_stands() {
    let text = r#"(piece: "display-1", across: on_wall, upright: height(of: centre, by: "60 in"), holes: [
        (hole: "hole-3", wanted: empty), (hole: "hole-1", wanted: used_with("fastener-2")), (hole: "hole-3", wanted: used)])"#;
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let read = options.from_str::<strikeline_solver::job::option::Hanging>(text);
    assert!(read.unwrap_err().to_string().contains("hole-3 is chosen by hand twice"));
}
