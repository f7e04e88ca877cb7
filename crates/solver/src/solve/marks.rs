//! Step 7: what to strike and do, in the order of work, and how each mark is found with a tape.

mod candidates;
mod close;
mod help;
mod next_probe;
mod on_plate;
mod openings;
mod taut;

use crate::geometry::{Axis, Direction, Point, Span};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::settings::Settings;
use crate::job::wall::Wall;
use crate::plan::framing::Framing;
use crate::plan::mark::{How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use crate::plan::piece::{MountedPlan, PiecePlan};
use crate::plan::survey::Survey;
use crate::subject::{Id, Subject};
use crate::tape::Style;
use crate::tolerance::{
    LINE_PAST_MM_IN_INCH_JOB, LINE_PAST_MM_IN_METRIC_JOB, SAME_MIDDLE_MM, SWEEP_PAST_MM, same,
};
use crate::units::{Length, LengthUnit};
pub(crate) use next_probe::probe_mark;
pub(super) use openings::{PASSAGE, RACEWAY};

/// What readings are taken on and with.
pub(super) struct Site<'a> {
    pub(super) job: &'a Job,
    pub(super) wall: &'a Wall,
    pub(super) settings: &'a Settings,
    pub(super) survey: &'a Survey,
    pub(super) framing: &'a Framing,
    pub(super) style: Style,
}

/// Every mark of every piece, stage by stage, in each stage piece by piece.
pub(super) fn marks(
    job: &Job,
    wall: &Wall,
    survey: &Survey,
    framing: &Framing,
    pieces: &[PiecePlan],
) -> Vec<Mark> {
    let site = Site { job, wall, settings: &job.settings, survey, framing, style: job.style() };
    let mut marks: Vec<Mark> = pieces.iter().flat_map(|piece| site.piece(piece)).collect();
    // A stable sort: within a stage the order in which a piece's marks were made stays.
    marks.sort_by_key(|mark| mark.stage);
    marks
}

impl Site<'_> {
    fn piece(&self, piece: &PiecePlan) -> Vec<Mark> {
        let mut marks = Vec::new();
        if let Some(mount) = &piece.mount {
            self.sweep(piece, mount, &mut marks);
        }
        self.corners(piece, &mut marks);
        if let Some(mount) = &piece.mount {
            self.lines(piece, mount, &mut marks);
            self.on_plate(piece, mount, &mut marks);
        }
        self.openings(piece, &mut marks);
        self.hanging_steps(piece, &mut marks);
        marks.push(step(piece, "check", Stage::Hang, MarkWhat::Check));
        marks
    }

    /// The two lines to sweep: at the plate's upper and lower hole rows, over the piece and a bay to each
    /// side, as far as the plane goes that the piece hangs on.
    fn sweep(&self, piece: &PiecePlan, mount: &MountedPlan, marks: &mut Vec<Mark>) {
        let heights = mount.holes.iter().map(|hole| hole.place.y);
        let upper = heights.clone().reduce(Length::max).unwrap_or(mount.plate.top);
        let lower = heights.reduce(Length::min).unwrap_or(mount.plate.bottom);
        let past = Length::millimetres(SWEEP_PAST_MM);
        let middle = piece.outline.centre();
        let breast = self.survey.breast_at(middle.x, Some(middle.y));
        let plane = breast.map_or(self.survey.outline, |breast| breast.rect).across();
        let ends = piece.outline.across().grown(past);
        let ends = Span { from: ends.from.max(plane.from), to: ends.to.min(plane.to) };
        let rows = if same(upper, lower) { vec![(true, upper)] } else { vec![(true, upper), (false, lower)] };
        for (upper, y) in rows {
            let name = if upper { "sweep_upper" } else { "sweep_lower" };
            let mut mark = mark(
                piece,
                name,
                Stage::Find,
                MarkWhat::Sweep { upper },
                Point::new(piece.frame.origin.x, y),
            );
            mark.line = Some((Point::new(ends.from, y), Point::new(ends.to, y)));
            mark.assumed = mount.assumed;
            mark.on_tape = true;
            self.read(mark, &[Axis::Upright], piece, marks);
        }
    }

    /// The piece's corners, on tape, so that the customer can stand back and nod.
    fn corners(&self, piece: &PiecePlan, marks: &mut Vec<Mark>) {
        let (half_width, half_height) = (piece.outline.width() / 2.0, piece.outline.height() / 2.0);
        for (top, left) in [(true, true), (true, false), (false, true), (false, false)] {
            let right = if left { -half_width } else { half_width };
            let up = if top { half_height } else { -half_height };
            let name = format!(
                "corner_{}_{}",
                if top { "top" } else { "bottom" },
                if left { "left" } else { "right" }
            );
            let place = piece.frame.to_wall(right, up);
            let mut mark = mark(piece, &name, Stage::Agree, MarkWhat::Corner { top, left }, place);
            mark.assumed = piece.assumed;
            mark.on_tape = true;
            self.read(mark, &[Axis::Across, Axis::Upright], piece, marks);
        }
    }

    /// The level line, read at both its ends, the centre line, and the piece's own centre where it differs.
    fn lines(&self, piece: &PiecePlan, mount: &MountedPlan, marks: &mut Vec<Mark>) {
        let past = Length::millimetres(match self.style.graduation.unit() {
            LengthUnit::Millimetre => LINE_PAST_MM_IN_METRIC_JOB,
            LengthUnit::Inch | LengthUnit::Mil => LINE_PAST_MM_IN_INCH_JOB,
        });
        let origin = mount.frame.origin;
        let left = mount.frame.to_wall(mount.plate.left - past - origin.x, Length::default());
        let right = mount.frame.to_wall(mount.plate.right + past - origin.x, Length::default());
        let hides = |place: Point| piece.outline.holds(place);

        let mut level = mark(piece, "level_line", Stage::Level, MarkWhat::LevelLine, left);
        level.line = Some((left, right));
        level.assumed = mount.assumed;
        level.on_tape = !(hides(left) && hides(right));
        let (left_ways, right_ways) = self.ways_of_ends(left, right);
        let (at_left, help_left) = self.reading_by(left_ways, &level, "", left, Axis::Upright, piece);
        let (at_right, help_right) =
            self.reading_by(right_ways, &level, "_right", right, Axis::Upright, piece);
        marks.extend([help_left, help_right].into_iter().flatten());
        level.readings = vec![at_left, at_right];
        marks.push(level);

        let above = mount.frame.to_wall(Length::default(), past / 2.0);
        let below = mount.frame.to_wall(Length::default(), -(mount.plate.height() + past / 2.0));
        let mut centre = mark(piece, "centre_line", Stage::Level, MarkWhat::CentreLine, origin);
        centre.line = Some((below, above));
        centre.assumed = mount.assumed || mount.middle_assumed;
        centre.on_tape = !(hides(above) && hides(below));
        self.read(centre, &[Axis::Across], piece, marks);

        // What no tape tells from the centre line needs no tick of its own, whatever the job is told in.
        if mount.offset.mm().abs() > SAME_MIDDLE_MM {
            let place = mount.frame.to_wall(mount.offset, Length::default());
            let mut own = mark(piece, "piece_centre", Stage::Level, MarkWhat::PieceCentre, place);
            own.assumed = mount.assumed || mount.middle_assumed;
            own.on_tape = true;
            own.readings = vec![self.line_reading(piece, Axis::Across, mount.offset, place)];
            marks.push(own);
        }
    }

    /// Reads a mark along the axes and puts it in the list, behind the helping marks it needs.
    fn read(&self, mut mark: Mark, axes: &[Axis], piece: &PiecePlan, marks: &mut Vec<Mark>) {
        let place = mark.place.unwrap_or_default();
        for axis in axes {
            let (reading, help) = self.reading(&mark, "", place, *axis, piece);
            marks.extend(help);
            mark.readings.push(reading);
        }
        marks.push(mark);
    }

    /// A reading from a line already struck: the centre line for sideways, the level line for heights.
    ///
    /// `from_line` is signed: right of the centre line, up from the level line. On the line it is told as
    /// nothing to the right, or down.
    fn line_reading(&self, piece: &PiecePlan, axis: Axis, from_line: Length, place: Point) -> Reading {
        let nothing = Length::default();
        let (name, direction) = match axis {
            Axis::Across => {
                ("centre_line", if from_line < nothing { Direction::Left } else { Direction::Right })
            }
            Axis::Upright => {
                ("level_line", if nothing < from_line { Direction::Up } else { Direction::Down })
            }
        };
        Reading {
            from: ReadingDatum::Struck(piece.id.part(name)),
            how: How::Line,
            direction,
            at: place.along(axis.cross()),
            value: from_line.abs(),
            steps: self.style.steps(from_line.abs()),
            taut_over: None,
            close: None,
        }
    }

    fn mount_of(&self, id: &Id) -> Option<&Mount> {
        self.job.mount(id)
    }
}

/// A mark at a place, to be read.
fn mark(piece: &PiecePlan, name: &str, stage: Stage, what: MarkWhat, place: Point) -> Mark {
    Mark { place: Some(place), ..step(piece, name, stage, what) }
}

/// A step without a place.
fn step(piece: &PiecePlan, name: &str, stage: Stage, what: MarkWhat) -> Mark {
    Mark {
        id: piece.id.part(name),
        piece: piece.id.clone(),
        stage,
        what,
        place: None,
        line: None,
        outline: None,
        readings: Vec::new(),
        assumed: false,
        on_tape: false,
        state: MarkState::ToDo,
        planned: None,
        is_needed: true,
    }
}

/// The id of the mark that helps another along an axis.
fn help_id(mark: &Subject, suffix: &str, axis: Axis) -> Subject {
    let axis = match axis {
        Axis::Across => "help",
        Axis::Upright => "help_up",
    };
    mark.id.part(&format!("{}.{axis}{suffix}", mark.part_str()))
}
