use super::super::lines::{WIDEST, unbroken};
use super::super::sample::{self, inches};
use super::*;
use crate::finding::{Finding, Level, Mend, MissingWhat, What};
use crate::subject::Id;

fn text_of(title: &str, plan: &Plan) -> String {
    plan_text(&Job { title: title.to_owned(), ..Job::new() }, plan, &Beside::default())
}

#[test]
fn a_plan_is_told_whole() {
    let mut plan = sample::plan();
    let subject = Id::new("display-1").whole();
    let what = What::OffWall { side: crate::geometry::Direction::Left, by: inches("2") };
    let mass = What::Missing { what: MissingWhat::Mass };
    plan.findings = vec![
        Finding { level: Level::Stop, subject: subject.clone(), what, mend: Mend::Move },
        Finding { level: Level::Note, subject, what: mass, mend: Mend::Measure },
    ];
    plan.assumed = vec![sample::assumed_width()];
    assert_eq!(text_of("Living room", &plan), include_str!("told.txt"));
}

#[test]
fn no_line_is_too_wide_and_none_ends_in_a_space() {
    let mut plan = sample::plan();
    plan.pieces[0].name = "x".repeat(250);
    plan.survey.features[0].name = "wide ".repeat(60);
    let text = text_of("A \u{1b}[2J title\nthat steers", &plan);
    assert!(text.ends_with('\n') && !text.contains('\u{1b}'), "{text}");
    for line in text.lines() {
        assert!(line.chars().count() <= WIDEST, "{line}");
        assert_eq!(line.trim_end(), line);
    }
}

#[test]
fn a_plan_of_nothing_says_so() {
    let mut plan = sample::plan();
    (plan.pieces, plan.marks, plan.option, plan.next) = (Vec::new(), Vec::new(), None, None);
    plan.framing.studs.clear();
    let text = text_of(" ", &plan);
    assert!(
        text.starts_with(
            "A job without a title\nWall: wall-1, 144\" wide, 96\" high\n\nStuds\n  None known.\n"
        ),
        "{text}"
    );
    assert!(text.contains("\nFindings\n  None.\n"), "{text}");
}

#[test]
fn what_each_hole_meets_is_told() {
    let mut plan = sample::plan();
    let all = [
        Meets::Stud,
        Meets::StudEdge,
        Meets::Board,
        Meets::Hidden,
        Meets::Masonry,
        Meets::OffWall,
        Meets::NotKnown,
    ];
    let mut told: Vec<String> = Vec::new();
    for meets in all {
        let mount = plan.pieces[0].mount.as_mut().unwrap();
        mount.holes[0].meets = meets;
        let hole = plan.pieces[0].mount.as_ref().unwrap().holes[0].clone();
        told.push(hole_line(&plan, &hole));
        sample::well_told(told.last().unwrap());
    }
    told.dedup();
    assert_eq!(told.len(), all.len());
}

#[test]
fn a_length_is_never_broken_between_lines() {
    let words = |text: &str| unbroken(text).join("|");
    assert_eq!(
        words("up 52 1/4\" and 7'-0 1/2\", 1232 mm; 66 lb."),
        "up|52 1/4\"|and|7'-0 1/2\",|1232 mm;|66 lb."
    );
    assert_eq!(words("hole 3 in a stud, 1/2 in"), "hole|3|in|a|stud,|1/2|in");
    let mut text = Text::default();
    text.line(0, &format!("{} 52 1/4\"", "x".repeat(WIDEST - 4)));
    assert!(text.written.ends_with("\n52 1/4\"\n"), "{}", text.written);
}

#[test]
fn limits_stand_under_the_verdict_and_mends_under_their_finding() {
    use crate::capacity::group::Word;
    use crate::limits::{Limit, Limits};
    use crate::mend::{Change, Gives, MendPlan};
    let mut plan = sample::plan();
    let subject = Id::new("display-1").whole();
    let short = Finding {
        level: Level::Stop,
        subject,
        what: What::PlateShort { used: Some(1.2) },
        mend: Mend::Choose,
    };
    plan.findings = vec![short];
    let gives = Gives {
        word: Word::Holds,
        if_probed: Word::Holds,
        used: Some(0.82),
        fasteners: 6,
        holes: 6,
        studs: 2,
        cautions: 0,
    };
    let pull = Limit { most: crate::units::Force::newtons(250.0), is_end: false };
    let beside = Beside {
        probe: None,
        limits: vec![(Id::new("display-1"), Limits { mass: None, pull: Some(pull), reach: None })],
        mends: vec![vec![MendPlan { change: Change::RowBetween, job: None, gives }]],
    };
    let text = plan_text(&Job::new(), &plan, &beside);
    let (verdict, limits) =
        (text.find("Verdict: ").unwrap(), text.find("hold up to a pull of 250 N.").unwrap());
    assert!(verdict < limits && limits < text.find("lag screw").unwrap_or(text.len()), "{text}");
    let under =
        "is used.\n    A plate with one more row of holes between its rows: six fasteners hold, 0.82 used.\n";
    assert!(text.contains(under), "{text}");
}
