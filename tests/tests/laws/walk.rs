//! A reading walked from its datum lands on its mark.

use super::room::{plan, rooms};
use proptest::prelude::*;
use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{How, Mark, Reading, ReadingDatum};
use strikeline_solver::units::Length;

/// Where a datum is on the reading's axis; `None` where it is nothing that can be stood at.
fn datum(plan: &Plan, from: &ReadingDatum, axis: Axis, at: Length) -> Option<Length> {
    Some(match from {
        ReadingDatum::LeftEnd => Length::default(),
        ReadingDatum::RightEnd => plan.survey.outline.right,
        ReadingDatum::Floor => plan.survey.floor.y_at(at),
        ReadingDatum::ControlLine => plan.survey.control_line_y?,
        ReadingDatum::Edge(edge) => {
            let feature = plan.survey.features.iter().find(|feature| feature.id == edge.id)?;
            match edge.part_str() {
                "left" => feature.rect.left,
                "right" => feature.rect.right,
                "bottom" => feature.bottom_at(at),
                _ => feature.top_at(at),
            }
        }
        ReadingDatum::Struck(mark) => plan.marks.iter().find(|other| other.id == *mark)?.place?.along(axis),
        ReadingDatum::Nothing => return None,
    })
}

fn target(mark: &Mark, reading: &Reading) -> Point {
    match (mark.line, reading.direction.axis()) {
        // A level line is read at both its ends.
        (Some((left, right)), Axis::Upright) if mark.readings.len() == 2 => {
            if (left.x - reading.at).mm().abs() < 1e-6 { left } else { right }
        }
        _ => mark.place.unwrap(),
    }
}

/// Where all readings from the plate's two lines lead, walked along and square to the lines as they are turned.
fn walked_from_lines(plan: &Plan, mark: &Mark) -> Point {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece).unwrap();
    let frame = piece.mount.as_ref().unwrap().frame;
    let (mut right, mut up) = (Length::default(), Length::default());
    for reading in &mark.readings {
        let by = plan.style.length_of(reading.steps) * reading.direction.sign();
        match reading.direction {
            Direction::Left | Direction::Right => right = by,
            Direction::Up | Direction::Down => up = by,
        }
    }
    frame.to_wall(right, up)
}

/// Walks every reading of a plan; gives how many readings of each `how` and how many closes were walked.
fn walk(plan: &Plan) -> Result<(Vec<How>, usize), TestCaseError> {
    let step_mm = plan.style.length_of(1).mm();
    let (mut walked_by, mut closes) = (Vec::new(), 0);
    for mark in &plan.marks {
        if mark.readings.iter().any(|reading| reading.how == How::Line) {
            prop_assert!(mark.readings.iter().all(|reading| reading.how == How::Line), "{}", mark.id);
            let (to, place) = (walked_from_lines(plan, mark), mark.place.unwrap());
            // Each of the two readings is off by half a graduation at most, along one of two square lines.
            let (x_mm, y_mm) = ((to.x - place.x).mm(), (to.y - place.y).mm());
            let off_mm = (x_mm * x_mm + y_mm * y_mm).sqrt();
            let most_mm = step_mm / 2.0 * f64::from(u32::try_from(mark.readings.len()).unwrap()).sqrt();
            prop_assert!(off_mm <= most_mm + 1e-6, "{}: off by {off_mm} mm", mark.id);
            walked_by.extend(mark.readings.iter().map(|reading| reading.how));
            continue;
        }
        for reading in &mark.readings {
            let axis = reading.direction.axis();
            let Some(from) = datum(plan, &reading.from, axis, reading.at) else { continue };
            let walked = from + plan.style.length_of(reading.steps) * reading.direction.sign();
            let off_mm = (walked - target(mark, reading).along(axis)).mm().abs();
            prop_assert!(off_mm <= step_mm / 2.0 + 1e-6, "{}: off by {off_mm} mm: {reading:?}", mark.id);
            walked_by.push(reading.how);
            let Some(close) = &reading.close else { continue };
            // A close on the floor stands under the middle of the piece.
            let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece).unwrap();
            let at = if close.from == ReadingDatum::Floor { piece.ruled_centre.x } else { reading.at };
            let Some(from) = datum(plan, &close.from, axis, at) else { continue };
            let walked = from + plan.style.length_of(close.closing.second) * close.direction.sign();
            let off_mm = (walked - target(mark, reading).along(axis)).mm().abs();
            prop_assert!(off_mm <= step_mm + 1e-6, "{}: its close is off by {off_mm} mm", mark.id);
            closes += 1;
        }
    }
    Ok((walked_by, closes))
}

#[test]
fn walking_a_reading_lands_on_its_mark_and_its_close_too() {
    let counted = std::cell::RefCell::new((Vec::new(), 0));
    let mut runner = super::runner();
    runner
        .run(&rooms(), |room| {
            let (walked_by, closes) = walk(&plan(&room.job()))?;
            let mut counted = counted.borrow_mut();
            counted.0.extend(walked_by);
            counted.1 += closes;
            Ok(())
        })
        .unwrap();
    let (walked_by, closes) = counted.into_inner();
    for how in [How::Line, How::Butt, How::Hook, How::Corner, How::Meter, How::Level, How::Floor, How::Help] {
        let count = walked_by.iter().filter(|by| **by == how).count();
        assert!(count >= 10, "{how:?} was walked {count} times only");
    }
    assert!(closes > 500, "{closes} closes");
}
