//! The whole plan as text for a terminal.

use super::{assumed, cautions, finding, mark, mark_name, next, stage, thing, top_line, wish};
use crate::finding::Level;
use crate::job::Job;
use crate::plan::Plan;
use crate::plan::piece::Meets;
use std::fmt::Write as _;

/// The widest line of text (chosen: it fits any terminal).
const WIDEST: usize = 100;

/// The mark-out as text, lines of at most 100 characters, ending in a line feed.
#[must_use]
pub fn plan_text(job: &Job, plan: &Plan) -> String {
    let mut text = String::new();
    let mut line = |indent: usize, words: &str| wrap(&mut text, indent, words);
    let wall = job.wall(&plan.wall);
    let option = plan.option.as_ref().and_then(|id| wall?.options.iter().find(|option| option.id == *id));
    let named = |name: Option<&String>, id: String| name.cloned().unwrap_or(id);
    line(0, if job.title.is_empty() { "A job without a title" } else { &job.title });
    line(0, &format!("Wall: {}", named(wall.and_then(|wall| wall.name.as_ref()), plan.wall.to_string())));
    if let Some(id) = &plan.option {
        line(
            0,
            &format!("Option: {}", named(option.and_then(|option| option.name.as_ref()), id.to_string())),
        );
    }
    line(0, &next(plan));
    for piece in &plan.pieces {
        line(0, "");
        line(0, &top_line(plan, piece));
        if let Some(wish) = wish(plan, piece) {
            line(2, &wish);
        }
        for hole in piece.mount.iter().flat_map(|mount| &mount.holes) {
            line(2, &format!("{}: {}", thing(plan, &hole.subject), meets(hole.meets)));
        }
    }
    let mut number = 0;
    let mut before = None;
    for one in &plan.marks {
        if before != Some(one.stage) {
            before = Some(one.stage);
            line(0, "");
            line(0, stage(one.stage));
        }
        number += 1;
        line(2, &format!("{number}. {}", mark_name(plan, one)));
        line(6, &mark(plan, one));
    }
    line(0, "");
    line(0, "Studs");
    for stud in &plan.framing.studs {
        let at = format!("{} give or take {}", plan.style.print(stud.centre), plan.style.print(stud.doubt));
        line(2, &at);
    }
    if plan.framing.studs.is_empty() {
        line(2, "none known");
    }
    line(0, "");
    line(0, "Findings");
    for one in &plan.findings {
        let level = match one.level {
            Level::Stop => "STOP",
            Level::Caution => "Caution",
            Level::Note => "Note",
        };
        line(2, &format!("{level}: {}", finding(plan, one)));
    }
    if !plan.assumed.is_empty() {
        line(0, "");
        line(0, "Assumed");
        for one in &plan.assumed {
            line(2, &assumed(plan, one));
        }
    }
    line(0, "");
    line(0, "Cautions");
    for caution in cautions() {
        line(2, caution);
    }
    text
}

fn meets(meets: Meets) -> &'static str {
    match meets {
        Meets::Stud => "in a stud",
        Meets::StudEdge => "on a stud's edge",
        Meets::Board => "board only",
        Meets::Hidden => "on something hidden",
        Meets::Masonry => "in masonry",
        Meets::OffWall => "off the wall",
        Meets::NotKnown => "not known",
    }
}

/// Appends words broken into lines, each indented; a word longer than a line keeps its own.
fn wrap(text: &mut String, indent: usize, words: &str) {
    let mut width = 0;
    for word in words.split_whitespace() {
        let long = word.chars().count();
        if width > 0 && width + 1 + long > WIDEST {
            text.push('\n');
            width = 0;
        }
        let lead = if width == 0 { " ".repeat(indent) } else { " ".to_owned() };
        width += lead.len() + long;
        // Writing to a string cannot fail.
        let _ = write!(text, "{lead}{word}");
    }
    text.push('\n');
}
