use super::super::sample;
use super::*;
use crate::capacity::case::{CaseName, Posture, PullAt};
use crate::ledger::Shown;
use crate::plan::explained::Section;

fn case_name() -> CaseName {
    CaseName { posture: Posture::AsHung, pull: Some(PullAt::DownLeft) }
}

fn step() -> Step {
    let inch = |symbol, value| Put::new(symbol, Amount::new(value, Shown::Inch), Label::Measured);
    Step {
        name: "pull of the upper row",
        formula: "T = W h^2; h = a - b",
        put: vec![
            Put::new("W", Amount::new(162.4, Shown::PoundForcePerInch), Label::Chosen).because("a low value"),
            Put::result("h", Amount::new(1.5, Shown::Inch), Label::Measured),
            inch("a", 2.0),
            inch("b", 0.5),
            inch("d", 0.19),
        ],
        result: Amount::new(365.4, Shown::PoundForce),
        source: "NDS 2018 section 12.2",
        label: Label::Chosen,
    }
}

fn explained() -> Explained {
    let hole = Id::new("display-1").part("hole-1");
    let asked = About::Asked { hole: hole.clone(), case: case_name(), governs: true };
    Explained {
        piece: Id::new("display-1"),
        sections: vec![
            Section { about: About::Case(case_name()), steps: vec![step()] },
            Section { about: asked, steps: vec![step()] },
        ],
        cases: vec![CaseTotals {
            name: case_name(),
            down_n: 400.0,
            in_plane_nmm: -12_500.0,
            out_of_plane_nmm: 45_000.0,
            out_n: None,
            worst: Some((hole, 0.4321)),
        }],
    }
}

#[test]
fn a_step_is_told_as_on_paper() {
    let worked = working(&sample::plan(), &explained());
    let titles: Vec<&str> = worked.sections.iter().map(|section| section.title.as_str()).collect();
    assert_eq!(
        titles,
        [
            "What is not known yet",
            "What hangs: pulled down at its left end",
            ALL_CASES,
            "Hole 1: what is asked of it, pulled down at its left end; the worst of all",
        ]
    );
    let text = working_text(&worked);
    let told = "
What hangs: pulled down at its left end
  Pull of the upper row
      h = a - b
        = 2 in - 0.5 in
        = 1.5 in
      T = W h^2
        = 162.4 lbf/in \u{d7} (1.5 in)^2
        = 365.4 lbf (1625.38 N)
      Beside it: d 0.19 in.
      W = 162.4 lbf/in is chosen: a low value.
      Source: NDS 2018 section 12.2. Label: chosen.
";
    assert!(text.contains(told), "{text}");
    let case = "Pulled down at its left end: 400 N down, turning 12.5 N\u{b7}m in the plane to the left, \
                45 N\u{b7}m out of the wall; uses 0.4321 at hole 1.";
    assert!(text.replace("\n  ", " ").contains(case), "{text}");
    assert_eq!(text.matches("is chosen: a low value").count(), 1, "a reason is told once: {text}");
}

#[test]
fn what_is_a_number_already_is_not_told_twice() {
    let plain = Step { formula: "V = 0", put: Vec::new(), result: Amount::new(0.0, Shown::Newton), ..step() };
    let copied = Step {
        formula: "T = T_printed",
        put: vec![Put::new("T_printed", Amount::new(0.75, Shown::Inch), Label::Read)],
        result: Amount::new(0.75, Shown::Inch),
        ..step()
    };
    let plan = sample::plan();
    let mut teller = Teller { plan: &plan, fastening: None, told: Vec::new() };
    let parts =
        |step: &WorkedStep| step.equations[0].parts().map(|part| part.replace(KEPT, " ")).collect::<Vec<_>>();
    assert_eq!(parts(&teller.step(&plain)), ["0 N"]);
    assert_eq!(parts(&teller.step(&copied)), ["T_printed", "0.75 in (3/4\")"]);
}

#[test]
fn every_sentence_is_well_told_and_what_is_wanted_is_said_where_there_is_nothing() {
    let plan = sample::plan();
    let mut teller = Teller { plan: &plan, fastening: None, told: Vec::new() };
    for label in [Label::Measured, Label::Read, Label::Derived, Label::Chosen, Label::Stated, Label::Memory] {
        let told = teller.step(&Step { label, source: "a table", ..step() });
        assert!(told.source.ends_with('.') && told.source.starts_with("Source: a table. Label: "));
    }
    let empty = Explained { piece: Id::new("display-1"), sections: Vec::new(), cases: Vec::new() };
    let worked = working(&plan, &empty);
    assert_eq!(worked.sections.len(), 1);
    for line in &worked.sections[0].lines {
        sample::well_told(line);
    }
    assert!(worked.sections[0].lines[0].contains("nothing to work out"));
}
