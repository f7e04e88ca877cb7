//! The working of a verdict, told as a hand calculation: what is worked out, the formula in symbols, the same with
//! values and units, the result, the source, the label.

mod put_in;
mod quantity;
#[cfg(test)]
mod tests;

use super::called::Called;
use super::case::{case, why};
use super::fastening::{fastener_name, wanted};
use super::lines::{KEPT, Text};
use super::phrase::{capital, list};
use super::things::{hole_name, piece_of};
use crate::capacity::why::Why;
use crate::ledger::{Amount, Label, Part, Put, Step};
use crate::plan::Plan;
use crate::plan::explained::{About, CaseTotals, Explained};
use crate::plan::verdict::Fastening;
use crate::subject::{Id, Subject};
use crate::units::LengthUnit;
use put_in::{put_in, symbols};
use quantity::{number, plain, result};

/// So many cases are told by their totals (chosen: the ones that use most).
const CASES_TOLD: usize = 12;

/// A working in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Whose it is.
    pub title: String,
    /// Its parts, in the order of a hand calculation.
    pub sections: Vec<WorkedSection>,
}

/// A part of a working in words.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedSection {
    /// What it works out.
    pub title: String,
    /// The hole whose fastener it is about.
    pub hole: Option<Subject>,
    /// What is told before its steps.
    pub lines: Vec<String>,
    /// Its steps.
    pub steps: Vec<WorkedStep>,
}

/// A step of a working in words.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedStep {
    /// What is worked out.
    pub name: String,
    /// Its equations; the last one gives the result.
    pub equations: Vec<Equation>,
    /// What a table was read for, and where values are from or why they were chosen: a sentence each.
    pub notes: Vec<String>,
    /// Where the formula is from, and the label of the result.
    pub source: String,
}

/// An equation: `symbol = formula = values = result`.
#[derive(Clone, Debug, PartialEq)]
pub struct Equation {
    /// What stands left of all.
    pub symbol: String,
    /// In symbols; empty where there is nothing to say.
    pub formula: String,
    /// With values and units; empty where there is nothing to say.
    pub values: String,
    /// What comes out.
    pub result: String,
}

impl Equation {
    /// What follows the symbol, an equals sign before each.
    pub fn parts(&self) -> impl Iterator<Item = &str> {
        [&self.formula, &self.values, &self.result]
            .into_iter()
            .map(String::as_str)
            .filter(|part| !part.is_empty())
    }
}

/// The working of a piece's verdict. Spaces that no line may end at are kept as such.
#[must_use]
pub fn working(plan: &Plan, explained: &Explained) -> Worked {
    let piece = piece_of(plan, &explained.piece.whole());
    let name = piece
        .map_or_else(|| explained.piece.to_string(), |piece| Called::piece(plan, piece).bare().to_owned());
    let fastening = piece.and_then(|piece| piece.mount.as_ref()).map(|mount| &mount.fastening);
    let mut told = Teller { plan, fastening, told: Vec::new() };
    let mut sections = Vec::new();
    sections.extend(told.before(explained));
    let mut explains = explained.sections.iter().peekable();
    while let Some(section) = explains.next() {
        sections.push(WorkedSection {
            title: told.title(&section.about),
            hole: hole(&section.about),
            lines: Vec::new(),
            steps: section.steps.iter().map(|step| told.step(step)).collect(),
        });
        let is_case = |about: &About| matches!(about, About::Case(_));
        let is_last_case =
            is_case(&section.about) && explains.peek().is_none_or(|next| !is_case(&next.about));
        // Once: the cases of other fasteners come later.
        if is_last_case && !sections.iter().any(|section| section.title == ALL_CASES) {
            sections.extend(told.cases(&explained.cases));
        }
    }
    Worked { title: format!("Working: {name}"), sections }
}

/// What the table of all cases is called.
const ALL_CASES: &str = "All cases of load, by what they come to";

/// The hole whose fastener a part is about.
fn hole(about: &About) -> Option<Subject> {
    match about {
        About::Asked { hole, .. } | About::Room(hole) => Some(hole.clone()),
        _ => None,
    }
}

struct Teller<'a> {
    plan: &'a Plan,
    fastening: Option<&'a Fastening>,
    /// The reasons told before.
    told: Vec<Put>,
}

impl Teller<'_> {
    /// What keeps the working from being whole.
    fn before(&self, explained: &Explained) -> Option<WorkedSection> {
        let fastening = self.fastening?;
        let line = match fastening.verdict.uncarried {
            Some((_, mixed @ Why::Mixed)) => {
                format!("{}: there is nothing to work out.", capital(&why(self.plan, &mixed)))
            }
            _ if explained.sections.is_empty() => {
                "No hole of the plate takes a fastener that counts: there is nothing to work out.".to_owned()
            }
            _ if fastening.verdict.governing.is_none() => {
                "What each fastener is asked is worked out once all of the load is known.".to_owned()
            }
            _ => return None,
        };
        let wanted = wanted(self.plan, fastening);
        let first = (!wanted.is_empty()).then(|| format!("{}.", capital(&list(&wanted))));
        let lines = [line].into_iter().chain(first).collect();
        Some(WorkedSection {
            title: "What is not known yet".to_owned(),
            hole: None,
            lines,
            steps: Vec::new(),
        })
    }

    fn title(&self, about: &About) -> String {
        let fastener = self.fastening.and_then(|fastening| fastening.fasteners.first());
        let one =
            || fastener.map_or_else(|| "fastener".to_owned(), |fastener| fastener_name(self.plan, fastener));
        let name = |hole: &Subject| capital(&hole_name(&Id::new(hole.part_str())));
        match about {
            About::Case(name) => format!("What hangs: {}", case(name)),
            About::Carries(part) => {
                let carries = match part {
                    Part::Depth => "what of it is in the stud",
                    Part::Along => "what it carries along the stud",
                    Part::Across => "what it carries across the stud",
                    Part::Pull => "what it carries straight out",
                    _ => "what it carries",
                };
                format!("One {}: {carries}", one())
            }
            About::Group => "All fasteners in use together".to_owned(),
            About::Uncarried(name) => format!("What no published value carries: {}", case(name)),
            About::Asked { hole, case: at, governs } => {
                let governs = if *governs { "; the worst of all" } else { "" };
                format!("{}: what is asked of it, {}{governs}", name(hole), case(at))
            }
            About::Lead => "Lead holes".to_owned(),
            About::Needs => "What each fastener needs round it".to_owned(),
            About::Room(hole) => format!("{}: what is round it", name(hole)),
        }
    }

    fn step(&mut self, step: &Step) -> WorkedStep {
        let mut equations: Vec<Equation> = Vec::new();
        let clauses = || step.formula.split("; ").enumerate();
        // What is told of a symbol stands before the equation that it is in.
        for (index, clause) in clauses().skip(1).chain(clauses().take(1)) {
            let (symbol, formula) = clause.split_once(" = ").unwrap_or((clause, ""));
            let own = step.put.iter().find(|put| put.symbol == symbol).map(|put| put.amount);
            let (amount, told) = match own.filter(|_| index > 0) {
                Some(amount) => (amount, plain(amount)),
                None => (step.result, result(step.result, self.in_inches())),
            };
            equations.push(equation(symbol, formula, &step.put, amount, told));
        }
        WorkedStep {
            name: capital(step.name),
            equations,
            notes: self.notes(step),
            source: format!("Source: {}. Label: {}.", step.source, label(step.label)),
        }
    }

    fn in_inches(&self) -> bool {
        self.plan.style.graduation.unit() == LengthUnit::Inch
    }

    /// What a table was read for, and whence what is put in.
    fn notes(&mut self, step: &Step) -> Vec<String> {
        let asked = symbols(step.formula);
        let beside: Vec<String> = step
            .put
            .iter()
            .filter(|put| !asked.contains(&put.symbol))
            .map(|put| format!("{} {}", put.symbol, plain(put.amount)))
            .collect();
        let mut notes = Vec::new();
        if !beside.is_empty() {
            notes.push(format!("Beside it: {}.", beside.join(", ")));
        }
        for put in &step.put {
            let is_told = self.told.iter().any(|told| {
                let is_same =
                    if put.reason.is_empty() { told.amount == put.amount } else { told.reason == put.reason };
                told.symbol == put.symbol && told.label == put.label && is_same
            });
            let says_more = !put.reason.is_empty() && put.reason != step.source;
            let is_weak =
                !matches!(put.label, Label::Measured | Label::Read | Label::SecondHand | Label::Derived);
            if put.worked_out || is_told || !(says_more || is_weak) {
                continue;
            }
            self.told.push(*put);
            let value = plain(put.amount);
            notes.push(if says_more {
                format!("{} = {value} is {}: {}.", put.symbol, label(put.label), put.reason)
            } else {
                format!("{} = {value} is {}.", put.symbol, label(put.label))
            });
        }
        notes
    }

    /// Every case by its totals, those that use most first.
    fn cases(&self, cases: &[CaseTotals]) -> Option<WorkedSection> {
        let mut by_use: Vec<&CaseTotals> = cases.iter().collect();
        let used = |case: &CaseTotals| case.worst.as_ref().map_or(f64::INFINITY, |(_, used)| *used);
        by_use.sort_by(|a, b| used(b).total_cmp(&used(a)));
        let mut lines: Vec<String> = by_use.iter().take(CASES_TOLD).map(|case| self.case(case)).collect();
        match by_use.len().saturating_sub(CASES_TOLD) {
            0 => {}
            1 => lines.push("One more case uses no more than these.".to_owned()),
            more => lines.push(format!("{more} more cases use no more than these.")),
        }
        let title = ALL_CASES.to_owned();
        (!lines.is_empty()).then_some(WorkedSection { title, hole: None, lines, steps: Vec::new() })
    }

    fn case(&self, told: &CaseTotals) -> String {
        let newtons = |n: f64| format!("{}{KEPT}N", round(n));
        let turning = |nmm: f64| format!("{}{KEPT}N\u{b7}m", round(nmm / 1000.0));
        let out = told.out_n.map(|n| format!(", {} straight out", newtons(n))).unwrap_or_default();
        let side = match told.in_plane_nmm {
            nmm if nmm > 0.0 => " to the right",
            nmm if nmm < 0.0 => " to the left",
            _ => "",
        };
        let worst = told.worst.as_ref().map_or_else(
            || "no published value carries it".to_owned(),
            |(hole, used)| format!("uses {} at {}", number(*used), hole_name(&Id::new(hole.part_str()))),
        );
        format!(
            "{}: {} down{out}, turning {} in the plane{side}, {} out of the wall; {worst}.",
            capital(&case(&told.name)),
            newtons(told.down_n),
            turning(told.in_plane_nmm.abs()),
            turning(told.out_of_plane_nmm),
        )
    }
}

/// To a tenth: totals that are worked out in full elsewhere.
fn round(value: f64) -> String {
    number((value * 10.0).round() / 10.0)
}

fn equation(symbol: &str, formula: &str, put: &[Put], amount: Amount, told: String) -> Equation {
    let values = put_in(formula, put);
    let has_symbols = !symbols(formula).is_empty();
    // A value alone is the result itself.
    let is_result = values == plain(amount);
    Equation {
        symbol: symbol.to_owned(),
        formula: if has_symbols { formula.to_owned() } else { String::new() },
        values: if has_symbols && !is_result { values } else { String::new() },
        result: told,
    }
}

/// A label as a word.
fn label(label: Label) -> &'static str {
    match label {
        Label::Measured => "measured",
        Label::Read => "read",
        Label::SecondHand => "read second-hand",
        Label::Derived => "derived",
        Label::Chosen => "chosen",
        Label::Stated => "stated",
        Label::Memory => "from memory",
        Label::Assumed => "assumed",
    }
}

/// The working as text for a terminal: lines of at most 100 characters, ending in a line feed.
#[must_use]
pub fn working_text(worked: &Worked) -> String {
    let mut text = Text::default();
    text.line(0, &worked.title);
    for section in &worked.sections {
        text.heading(&section.title);
        for line in &section.lines {
            text.line(2, line);
        }
        for step in &section.steps {
            text.line(2, &step.name);
            for equation in &step.equations {
                let width = equation.symbol.chars().count();
                for (index, part) in equation.parts().enumerate() {
                    let lead = if index == 0 { equation.symbol.clone() } else { " ".repeat(width) };
                    text.hung(6, &format!("{lead} = "), part);
                }
            }
            for note in step.notes.iter().chain([&step.source]) {
                text.line(6, note);
            }
        }
    }
    text.written
}
