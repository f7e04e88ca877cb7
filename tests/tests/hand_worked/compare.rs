//! Compares a plan with what a case expects: places to a millionth of a millimetre, or as near as the case says,
//! texts exactly.

#[path = "compare_cable.rs"]
mod cable;

use super::case::{Case, ExpectedHole, ExpectedMark, ExpectedPiece, ExpectedReading};
use strikeline_solver::geometry::Direction;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{How, Mark, MarkState, Reading, ReadingDatum};
use strikeline_solver::plan::piece::{Meets, MountedPlan};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// A nanometre, what a length is held to.
const CLOSE_MM: f64 = 1e-6;

/// Every disagreement, told with both sides.
pub(crate) fn disagreements(case: &Case, plan: &Plan) -> Vec<String> {
    let within_mm = case.within.map_or(CLOSE_MM, Length::mm);
    let mut wrong = Wrong { told: Vec::new(), within_mm };
    for expected in &case.expect {
        marks(expected, plan, &mut wrong);
    }
    for expected in &case.pieces {
        piece(expected, plan, &mut wrong);
    }
    for expected in &case.holes {
        hole(expected, plan, &mut wrong);
    }
    for expected in &case.ports {
        let port =
            plan.pieces.iter().flat_map(|piece| &piece.ports).find(|it| it.id.as_str() == expected.port);
        match port {
            None => wrong.push(format!("{}: no such port", expected.port)),
            Some(port) => {
                length(&format!("{}.x", expected.port), Some(expected.x), Some(port.place.x), &mut wrong);
                length(&format!("{}.y", expected.port), Some(expected.y), Some(port.place.y), &mut wrong);
            }
        }
    }
    for expected in &case.cables {
        cable::cable(expected, plan, &mut wrong);
    }
    let rules: Vec<&str> = plan.findings.iter().map(|finding| finding.what.rule()).collect();
    for rule in case.findings.iter().filter(|rule| !rules.contains(&rule.as_str())) {
        wrong.push(format!("no finding {rule}; there are {rules:?}"));
    }
    for rule in case.no_findings.iter().filter(|rule| rules.contains(&rule.as_str())) {
        wrong.push(format!("a finding {rule} that should not be"));
    }
    wrong.told
}

/// What disagrees, and how far a place may be off.
struct Wrong {
    told: Vec<String>,
    within_mm: f64,
}

impl Wrong {
    fn push(&mut self, told: String) {
        self.told.push(told);
    }
}

fn length(name: &str, expected: Option<Length>, actual: Option<Length>, wrong: &mut Wrong) {
    let Some(expected) = expected else { return };
    match actual {
        Some(actual) if (actual - expected).mm().abs() <= wrong.within_mm => {}
        Some(actual) => wrong.push(format!(
            "{name}: expected {} mm ({} in), is {} mm ({} in)",
            expected.mm(),
            expected.mm() / 25.4,
            actual.mm(),
            actual.mm() / 25.4
        )),
        None => wrong.push(format!("{name}: expected {} mm, there is none", expected.mm())),
    }
}

fn marks(expected: &ExpectedMark, plan: &Plan, wrong: &mut Wrong) {
    let name = &expected.mark;
    let Some(mark) = plan.marks.iter().find(|mark| mark.id.to_string() == *name) else {
        let ids: Vec<String> = plan.marks.iter().map(|mark| mark.id.to_string()).collect();
        wrong.push(format!("{name}: no such mark; there are {ids:?}"));
        return;
    };
    length(&format!("{name}.x"), expected.x, mark.place.map(|place| place.x), wrong);
    length(&format!("{name}.y"), expected.y, mark.place.map(|place| place.y), wrong);
    length(&format!("{name}.x_right"), expected.x_right, mark.line.map(|(_, right)| right.x), wrong);
    length(&format!("{name}.y_right"), expected.y_right, mark.line.map(|(_, right)| right.y), wrong);
    let planned = mark.planned.as_ref().map(|planned| planned.place);
    length(&format!("{name}.planned_x"), expected.planned_x, planned.map(|place| place.x), wrong);
    length(&format!("{name}.planned_y"), expected.planned_y, planned.map(|place| place.y), wrong);
    if let Some(text) = &expected.state
        && text != state(mark.state)
    {
        wrong.push(format!("{name}: expected to be {text}, is {}", state(mark.state)));
    }
    if let Some(count) = expected.readings_in_all
        && count != mark.readings.len()
    {
        wrong.push(format!("{name}: {count} readings expected, there are {}", mark.readings.len()));
    }
    for reading in &expected.readings {
        if !mark.readings.iter().any(|actual| same_reading(reading, actual, plan)) {
            wrong.push(format!(
                "{name}: expected {}\n    has {}",
                expected_text(reading),
                all_readings(mark, plan)
            ));
        }
    }
}

fn same_reading(expected: &ExpectedReading, actual: &Reading, plan: &Plan) -> bool {
    let at = expected.at.is_none_or(|at| (at - actual.at).mm().abs() <= CLOSE_MM);
    let taut = actual.taut_over.as_ref().map_or("", |id| id.as_str());
    let close = match &actual.close {
        None => {
            expected.closes_from.is_none()
                && expected.closes_shown.is_none()
                && expected.closes_differs.is_none()
        }
        Some(close) => {
            let shown = plan.style.print_steps(close.closing.second);
            !expected.no_close
                && expected.closes_from.as_ref().is_none_or(|from| *from == datum(&close.from))
                && expected.closes_shown.as_ref().is_none_or(|text| *text == shown)
                && expected.closes_differs.is_none_or(|differs| differs == close.closing.differs)
        }
    };
    expected.from == datum(&actual.from)
        && expected.how == how(actual.how)
        && expected.direction == direction(actual.direction)
        && expected.shown == plan.style.print_steps(actual.steps)
        && expected.taut_over.as_ref().is_none_or(|over| over == taut)
        && at
        && close
}

fn expected_text(it: &ExpectedReading) -> String {
    let at = it.at.map(|at| format!(" at {} mm", at.mm())).unwrap_or_default();
    let taut = it.taut_over.as_ref().map(|over| format!(" taut over {over:?}")).unwrap_or_default();
    let close = match (&it.closes_from, &it.closes_shown, it.no_close) {
        (_, _, true) => "no close".to_owned(),
        (None, None, false) => "any close".to_owned(),
        (from, shown, false) => {
            let (from, shown) =
                (from.as_deref().unwrap_or("anything"), shown.as_deref().unwrap_or("anything"));
            format!("closes from {from} {shown}, differs {:?}", it.closes_differs)
        }
    };
    format!("{} from {}, {} {}{at}{taut}; {close}", it.how, it.from, it.direction, it.shown)
}

fn all_readings(mark: &Mark, plan: &Plan) -> String {
    let text = |reading: &Reading| {
        let close = reading.close.as_ref().map_or("no close".to_owned(), |close| {
            format!(
                "closes from {} {}, differs {}",
                datum(&close.from),
                plan.style.print_steps(close.closing.second),
                close.closing.differs
            )
        });
        format!(
            "{} from {}, {} {} (exactly {} mm) at {} mm taut over {:?}; {close}",
            how(reading.how),
            datum(&reading.from),
            direction(reading.direction),
            plan.style.print_steps(reading.steps),
            reading.value.mm(),
            reading.at.mm(),
            reading.taut_over.as_ref().map_or("", |id| id.as_str()),
        )
    };
    mark.readings.iter().map(text).collect::<Vec<_>>().join("\n    and ")
}

fn piece(expected: &ExpectedPiece, plan: &Plan, wrong: &mut Wrong) {
    let name = &expected.piece;
    let Some(piece) = plan.pieces.iter().find(|piece| piece.id.as_str() == name) else {
        wrong.push(format!("{name}: no such piece"));
        return;
    };
    let mount = piece.mount.as_ref();
    let plate = mount.map(|mount| mount.plate);
    let outline = piece.outline;
    for (edge, expected, actual) in [
        ("left", expected.left, Some(outline.left)),
        ("right", expected.right, Some(outline.right)),
        ("bottom", expected.bottom, Some(outline.bottom)),
        ("top", expected.top, Some(outline.top)),
        ("plate_left", expected.plate_left, plate.map(|plate| plate.left)),
        ("plate_right", expected.plate_right, plate.map(|plate| plate.right)),
        ("plate_bottom", expected.plate_bottom, plate.map(|plate| plate.bottom)),
        ("plate_top", expected.plate_top, plate.map(|plate| plate.top)),
        ("offset", expected.offset.map(Offset::length), mount.map(|mount| mount.offset)),
    ] {
        length(&format!("{name}.{edge}"), expected, actual, wrong);
    }
    let met = mount.map(MountedPlan::studs_met);
    if expected.studs_met.is_some() && expected.studs_met != met {
        wrong.push(format!("{name}: {:?} studs expected, {met:?} met", expected.studs_met));
    }
}

fn hole(expected: &ExpectedHole, plan: &Plan, wrong: &mut Wrong) {
    let name = &expected.hole;
    let holes = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    let Some(hole) = holes.into_iter().find(|hole| hole.subject.to_string() == *name) else {
        wrong.push(format!("{name}: no such hole"));
        return;
    };
    length(&format!("{name}.x"), expected.x, Some(hole.place.x), wrong);
    length(&format!("{name}.y"), expected.y, Some(hole.place.y), wrong);
    if let Some(text) = &expected.meets
        && text != meets(hole.meets)
    {
        wrong.push(format!("{name}: expected to meet {text}, meets {}", meets(hole.meets)));
    }
}

fn datum(datum: &ReadingDatum) -> String {
    match datum {
        ReadingDatum::LeftEnd => "left".to_owned(),
        ReadingDatum::RightEnd => "right".to_owned(),
        ReadingDatum::Floor => "floor".to_owned(),
        ReadingDatum::ControlLine => "control_line".to_owned(),
        ReadingDatum::Edge(subject) | ReadingDatum::Struck(subject) => subject.to_string(),
        ReadingDatum::Nothing => "nothing".to_owned(),
    }
}

fn how(how: How) -> &'static str {
    match how {
        How::Line => "line",
        How::Butt => "butt",
        How::Hook => "hook",
        How::Corner => "corner",
        How::Meter => "meter",
        How::Level => "level",
        How::Floor => "floor",
        How::Help => "help",
    }
}

fn direction(direction: Direction) -> &'static str {
    match direction {
        Direction::Left => "left",
        Direction::Right => "right",
        Direction::Up => "up",
        Direction::Down => "down",
    }
}

fn state(state: MarkState) -> &'static str {
    match state {
        MarkState::ToDo => "to_do",
        MarkState::Done => "done",
        MarkState::Struck => "struck",
        MarkState::Drilled => "drilled",
        MarkState::Cut => "cut",
        MarkState::Stripped => "stripped",
    }
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
