//! Which dimension leads while a handle moves: the one that a number typed meanwhile is meant for.

use super::dimension::length_told;
use super::{Handle, HandleKind, edge::Side};
use strikeline_drawing::dimension::{About, GapSide, ReadPlace};
use strikeline_solver::geometry::Axis;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::MarkWhat;

/// The dimension that tells where a handle is along an axis; `None` where none does.
///
/// Of a piece the reading of its plate's line, or where nothing is struck the gap beside or below it. Of what was
/// measured the reading that locates it. Of an edge its own reading, or the size where it has none.
#[must_use]
pub fn leading(job: &Job, plan: &Plan, handle: &Handle, axis: Axis) -> Option<About> {
    let across = axis == Axis::Across;
    let read = |place| About::Read { thing: handle.id.clone(), place };
    let size = if across { About::Width(handle.id.clone()) } else { About::Height(handle.id.clone()) };
    let places = if across {
        [ReadPlace::Left, ReadPlace::Middle, ReadPlace::Right]
    } else {
        [ReadPlace::Bottom, ReadPlace::MiddleHeight, ReadPlace::Top]
    };
    let candidates = match handle.kind {
        HandleKind::Piece => {
            let line = if across { MarkWhat::CentreLine } else { MarkWhat::LevelLine };
            let mark = plan.marks.iter().find(|mark| mark.piece == handle.id && mark.what == line);
            let reading = mark.and_then(|mark| {
                let index = mark.readings.iter().position(|reading| reading.direction.axis() == axis)?;
                Some(About::Reading { mark: mark.id.clone(), index })
            });
            let sides =
                if across { [GapSide::Left, GapSide::Right] } else { [GapSide::Below, GapSide::BelowRight] };
            let gaps = sides.map(|side| About::Gap { piece: handle.id.clone(), side });
            reading.into_iter().chain(gaps).collect()
        }
        HandleKind::Hit | HandleKind::Feature | HandleKind::Hidden => places.map(read).to_vec(),
        // Their readings are those of the marks: there is no figure of the job to be typed.
        HandleKind::Entry | HandleKind::Exit => Vec::new(),
        HandleKind::Edge(side) => {
            let own = match side {
                Side::Left => ReadPlace::Left,
                Side::Right => ReadPlace::Right,
                Side::Bottom => ReadPlace::Bottom,
                Side::Top => ReadPlace::Top,
            };
            vec![read(own), size]
        }
    };
    candidates.into_iter().find(|about| length_told(job, plan, about).is_some())
}

#[cfg(test)]
mod tests {
    use super::super::sample::{handle, job, plan};
    use super::*;
    use strikeline_solver::subject::Id;
    use strikeline_solver::units::Length;

    fn leads(job: &Job, handle: &Handle, axis: Axis) -> Option<About> {
        leading(job, &plan(job), handle, axis)
    }

    #[test]
    fn a_piece_is_led_by_its_plates_lines_and_without_a_plate_by_a_gap() {
        let display = handle(HandleKind::Piece, "display-1");
        let line = |part: &str| Some(About::Reading { mark: Id::new("display-1").part(part), index: 0 });
        assert_eq!(leads(&job(), &display, Axis::Across), line("centre_line"));
        assert_eq!(leads(&job(), &display, Axis::Upright), line("level_line"));
        let mut bare = job();
        bare.mounts.clear();
        bare.walls[0].options[0].hangings[0].mount = None;
        let gap = About::Gap { piece: Id::new("display-1"), side: GapSide::Left };
        assert_eq!(leads(&bare, &display, Axis::Across), Some(gap));
    }

    #[test]
    fn what_was_measured_is_led_by_its_reading() {
        let read = |id: &str, place| Some(About::Read { thing: Id::new(id), place });
        let door = handle(HandleKind::Feature, "door-1");
        assert_eq!(leads(&job(), &door, Axis::Across), read("door-1", ReadPlace::Left));
        assert_eq!(leads(&job(), &door, Axis::Upright), read("door-1", ReadPlace::Bottom));
        let hit = handle(HandleKind::Hit, "hit-1");
        assert_eq!(leads(&job(), &hit, Axis::Across), read("hit-1", ReadPlace::Middle));
        assert_eq!(leads(&job(), &hit, Axis::Upright), None, "its height was not noted");
        let edge = handle(HandleKind::Edge(Side::Top), "door-1");
        assert_eq!(leads(&job(), &edge, Axis::Upright), read("door-1", ReadPlace::Top));
    }

    #[test]
    fn an_edge_that_was_not_read_is_led_by_the_size() {
        let mut sized = job();
        let across = &mut sized.walls[0].features[0].across;
        (across.right, across.width) = (None, Some(Length::inches(30.0).quantised()));
        let edge = handle(HandleKind::Edge(Side::Right), "door-1");
        assert_eq!(leads(&sized, &edge, Axis::Across), Some(About::Width(Id::new("door-1"))));
    }
}
