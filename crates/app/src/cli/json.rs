//! The plan as JSON: the one place that says how an answer looks to a program.

mod cable;
mod error_budget;
mod fastening;
mod sight;

use serde_json::{Map, Value, json};
use strikeline_solver::carry::{CarryLine, carry};
use strikeline_solver::choosing::better_holes;
use strikeline_solver::error_budget::{ErrorBudget, error_budgets};
use strikeline_solver::finding::Level;
use strikeline_solver::geometry::{Direction, Rect};
use strikeline_solver::job::Job;
use strikeline_solver::plan::framing::{Known, Spacing};
use strikeline_solver::plan::mark::{How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use strikeline_solver::plan::piece::{Meets, PiecePlan};
use strikeline_solver::plan::{AssumedWhat, Plan};
use strikeline_solver::probing::{NextProbe, Said, next_probe};
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// All plans as one object, ending in a line feed.
pub(super) fn text(job: &Job, plans: &[Plan]) -> String {
    let walls: Vec<Value> = plans.iter().map(|plan| wall(job, plan)).collect();
    let bring = plans.first().map(|plan| bring(job, plan, &plans.iter().collect::<Vec<_>>()));
    let mut text = format!("{:#}", json!({ "walls": walls, "carry": bring.unwrap_or_default() }));
    text.push('\n');
    text
}

/// What to bring, told in a plan's units.
fn bring(job: &Job, plan: &Plan, planned: &[&Plan]) -> Vec<Value> {
    let line = |line: &CarryLine| {
        json!({
            "what": words::carried(plan, line),
            "count": line.count,
            "why": words::carried_why(plan, line),
            "short_by": line.short_by,
        })
    };
    carry(job, planned).iter().map(line).collect()
}

/// Millimetres rounded to 1e-6; never minus nothing.
fn mm(length: Length) -> Value {
    let rounded = (length.mm() * 1e6).round() / 1e6;
    json!(if rounded == 0.0 { 0.0 } else { rounded })
}

/// A probability rounded to 1e-6.
fn share(probability: f64) -> Value {
    json!((probability * 1e6).round() / 1e6)
}

fn wall(job: &Job, plan: &Plan) -> Value {
    let budgets = error_budgets(job, plan);
    let named = job.wall(&plan.wall);
    let studs = plan.framing.studs.iter().map(|stud| {
        json!({
            "centre_mm": mm(stud.centre),
            "left_mm": mm(stud.left),
            "right_mm": mm(stud.right),
            "doubt_mm": mm(stud.doubt),
            "at_height_mm": mm(stud.at_height),
            "probability": share(stud.probability),
            "known": match stud.known {
                Known::Met => "met",
                Known::Inferred => "inferred",
                Known::Expected => "expected",
            },
        })
    });
    // `spacing` is the wall's own plane's; a chimney breast's is told with the breast, in `planes`.
    let own = plan.framing.planes.iter().filter(|plane| plane.on.is_none());
    let own = own.flat_map(|plane| &plane.spacings).map(spacing);
    let planes = plan.framing.planes.iter().map(|plane| {
        json!({
            "on": plane.on.as_ref().map(ToString::to_string),
            "spacing": plane.spacings.iter().map(spacing).collect::<Vec<_>>(),
        })
    });
    let outliers = plan
        .framing
        .planes
        .iter()
        .flat_map(|plane| &plane.outliers)
        .map(|outlier| json!({ "hit": outlier.hit.to_string(), "why": words::outlier(plan, outlier) }));
    let findings = plan.findings.iter().map(|finding| {
        json!({
            "level": match finding.level {
                Level::Stop => "stop",
                Level::Caution => "caution",
                Level::Note => "note",
            },
            "rule": finding.what.rule(),
            "subject": finding.subject.to_string(),
            "text": words::finding(plan, finding),
        })
    });
    let assumed = plan.assumed.iter().map(|assumed| {
        json!({
            "subject": assumed.subject.to_string(),
            "what": assumed_what(assumed.what),
            "shown": words::assumed(plan, assumed),
        })
    });
    json!({
        "id": plan.wall.to_string(),
        "name": named.and_then(|wall| wall.name.clone()),
        "option": plan.option.as_ref().map(ToString::to_string),
        "agreed": named
            .and_then(|wall| wall.options.iter().find(|option| Some(&option.id) == plan.option.as_ref()))
            .and_then(|option| option.agreed.as_ref())
            .map(|agreed| agreed.words.clone()),
        "next": plan.next.as_ref().map(|_| words::next(plan)),
        "verdict": words::wall_verdict(plan).map(|(piece, fastening)| {
            let mut told = fastening::verdict(plan, fastening);
            told.insert("piece".to_owned(), json!(piece.id.to_string()));
            Value::Object(told)
        }),
        "cable": cable::of_wall(plan),
        "assumed": assumed.collect::<Vec<_>>(),
        "pieces": plan.pieces.iter().map(|one| piece(job, plan, one, &budgets)).collect::<Vec<_>>(),
        "studs": studs.collect::<Vec<_>>(),
        "spacing": own.collect::<Vec<_>>(),
        "planes": planes.collect::<Vec<_>>(),
        "outliers": outliers.collect::<Vec<_>>(),
        "next_probe": next_probe(job, plan).map(|probe| probing(plan, &probe)),
        "marks": plan.marks.iter().map(|one| mark(plan, one)).collect::<Vec<_>>(),
        "sight": plan.sight.iter().map(|one| sight::seat(plan, one)).collect::<Vec<_>>(),
        "error_budget": budgets.first().map(error_budget::told),
        "findings": findings.collect::<Vec<_>>(),
    })
}

fn spacing(one: &Spacing) -> Value {
    json!({ "mm": one.spacing.map(mm), "probability": share(one.probability) })
}

/// The next probe: a mark, told with the helping marks it needs, and what each answer means.
fn probing(plan: &Plan, probe: &NextProbe) -> Value {
    let mut told = mark(plan, &probe.mark);
    let means = probe.answers.iter().map(|answer| {
        json!({
            "answer": match answer.said {
                Said::Wood => "wood",
                Said::Air => "air",
                Said::Metal => "metal",
                Said::Holds => "holds",
                Said::HoldsNot => "holds_not",
            },
            "words": words::answer_means(probe, answer),
        })
    });
    if let Value::Object(keys) = &mut told {
        keys.insert("words".to_owned(), json!(words::probe_itself(plan, probe)));
        keys.insert("means".to_owned(), means.collect());
    }
    told
}

fn sides(rect: Rect) -> Map<String, Value> {
    let sides =
        [("left_mm", rect.left), ("right_mm", rect.right), ("bottom_mm", rect.bottom), ("top_mm", rect.top)];
    sides.into_iter().map(|(key, side)| (key.to_owned(), mm(side))).collect()
}

fn piece(job: &Job, plan: &Plan, piece: &PiecePlan, budgets: &[ErrorBudget]) -> Value {
    let mut object = Map::new();
    object.insert("id".into(), json!(piece.id.to_string()));
    object.insert("name".into(), json!(piece.name));
    object.insert("kind".into(), json!(piece.kind));
    object.extend(sides(piece.outline));
    let holes = piece.mount.iter().flat_map(|mount| &mount.holes).map(|hole| {
        json!({
            "id": hole.subject.to_string(),
            "name": hole.id.to_string(),
            "x_mm": mm(hole.place.x),
            "y_mm": mm(hole.place.y),
            "meets": meets(hole.meets),
            "chance": hole.chance.map(share),
        })
    });
    object.insert(
        "plate".into(),
        piece.mount.as_ref().map_or(Value::Null, |mount| Value::Object(sides(mount.plate))),
    );
    object.insert("holes".into(), holes.collect());
    let better = better_holes(job, plan, &piece.id);
    let fastening = piece.mount.as_ref().map(|mount| &mount.fastening);
    object.extend(fastening::keys(plan, fastening, better.as_ref()));
    object.insert("limits".into(), fastening::limits(job, plan, &piece.id));
    object.insert("cable".into(), cable::of(plan, piece.cable.as_ref()));
    let budget = budgets.iter().find(|budget| budget.piece == piece.id);
    object.insert("error_budget".into(), json!(budget.map(error_budget::told)));
    Value::Object(object)
}

fn meets(meets: Meets) -> &'static str {
    match meets {
        Meets::Stud => "stud",
        Meets::StudEdge => "stud_edge",
        Meets::Board => "board",
        Meets::Hidden => "hidden",
        Meets::Masonry => "masonry",
        Meets::OffWall => "off_wall",
        Meets::NotKnown => "not_known",
    }
}

fn mark(plan: &Plan, mark: &Mark) -> Value {
    json!({
        "id": mark.id.to_string(),
        "name": words::mark_name(plan, mark),
        "stage": match mark.stage {
            Stage::Find => "find",
            Stage::Agree => "agree",
            Stage::Level => "level",
            Stage::Probe => "probe",
            Stage::Open => "open",
            Stage::Fix => "fix",
            Stage::Hang => "hang",
        },
        "x_mm": mark.place.map(|place| mm(place.x)),
        "y_mm": mark.place.map(|place| mm(place.y)),
        "words": words::mark(plan, mark),
        "state": match mark.state {
            MarkState::ToDo => "to_do",
            MarkState::Done => "done",
            MarkState::Struck => "struck",
            MarkState::Drilled => "drilled",
            MarkState::Cut => "cut",
            MarkState::Stripped => "stripped",
        },
        "planned": mark.planned.as_ref().map(|planned| {
            json!({ "x_mm": mm(planned.place.x), "y_mm": mm(planned.place.y) })
        }),
        "readings": mark.readings.iter().map(|one| reading(plan, mark, one)).collect::<Vec<_>>(),
    })
}

fn reading(plan: &Plan, mark: &Mark, reading: &Reading) -> Value {
    let wall = &plan.wall;
    let from_subject = match &reading.from {
        ReadingDatum::LeftEnd => Some(wall.part("left").to_string()),
        ReadingDatum::RightEnd => Some(wall.part("right").to_string()),
        ReadingDatum::Floor => Some(wall.part("floor").to_string()),
        ReadingDatum::ControlLine => Some(wall.part("control_line").to_string()),
        ReadingDatum::Edge(subject) | ReadingDatum::Struck(subject) => Some(subject.to_string()),
        ReadingDatum::Nothing => None,
    };
    let close = reading.close.as_ref();
    let mut told = json!({
        "datum": words::datum(plan, &reading.from),
        "from_subject": from_subject,
        "how": match reading.how {
            How::Line => "line",
            How::Butt => "butt",
            How::Hook => "hook",
            How::Corner => "corner",
            How::Meter => "meter",
            How::Level => "level",
            How::Floor => "floor",
            How::Help => "help",
        },
        "direction": match reading.direction {
            Direction::Left => "left",
            Direction::Right => "right",
            Direction::Up => "up",
            Direction::Down => "down",
        },
        "value_mm": mm(reading.value),
        "shown": plan.style.print_steps(reading.steps),
        "closes_with_mm": close.map(|close| mm(close.value)),
        "closes_shown": close.map(|close| plan.style.print_steps(close.closing.second)),
    });
    // The one mark that is read at both its ends says at which.
    if let (MarkWhat::LevelLine, Value::Object(keys)) = (&mark.what, &mut told) {
        keys.insert("at_mm".to_owned(), mm(reading.at));
    }
    told
}

fn assumed_what(what: AssumedWhat) -> &'static str {
    match what {
        AssumedWhat::WallWidth(_) => "wall_width",
        AssumedWhat::WallHeight(_) => "wall_height",
        AssumedWhat::LeftEnd => "left_end",
        AssumedWhat::RightEnd => "right_end",
        AssumedWhat::Width(_) => "width",
        AssumedWhat::Height(_) => "height",
        AssumedWhat::Drop(_) => "drop",
        AssumedWhat::PlateSize(..) => "plate_size",
        AssumedWhat::Plate(_) => "plate",
        AssumedWhat::Thickness(_) => "thickness",
        AssumedWhat::Proud(_) => "proud",
        AssumedWhat::Option => "option",
        AssumedWhat::PlaceAcross => "place_across",
        AssumedWhat::PlaceUpright => "place_upright",
    }
}
