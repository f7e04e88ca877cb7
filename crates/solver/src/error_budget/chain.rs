//! The errors of a mark: of its reading, and of what that was read from, down to the wall itself.

use super::{Error, ErrorFrom};
use crate::handbook::Row;
use crate::handbook::measuring::{
    CLASS_I, CLASS_II, CLASS_III, LINE_LASER_MM_PER_M, PENCIL_MM, SPIRIT_LEVEL_MM_PER_M, TapeClass,
};
use crate::job::kit::{AccuracyClass, MeasureKind};
use crate::job::{CodeSet, Job};
use crate::ledger::{Given, Label};
use crate::measuring::level::{off_at, out_of_level};
use crate::measuring::tape_error::{by_class, by_table, of_unknown_class};
use crate::plan::Plan;
use crate::plan::mark::{How, Mark, Reading, ReadingDatum};
use crate::tolerance::{CORNER_DOUBT_MM, LEVEL_LENGTH_MM, METER_DOUBT_MM};
use crate::units::{Angle, Length};

/// A mark is read from a line, the line from a helping mark, that from another: more steps are a ring.
const MOST_STEPS: usize = 8;

/// What errors are looked up in.
pub(super) struct Chain<'a> {
    pub(super) job: &'a Job,
    pub(super) plan: &'a Plan,
}

impl Chain<'_> {
    /// The errors of a mark that was found by a reading: those of what that is read from first.
    pub(super) fn of(&self, mark: &Mark, reading: &Reading) -> Vec<Error> {
        let mut errors = Vec::new();
        self.add(mark, reading, MOST_STEPS, &mut errors);
        errors
    }

    fn add(&self, mark: &Mark, reading: &Reading, steps: usize, errors: &mut Vec<Error>) {
        let mut push = |from: ErrorFrom, given: Given<Length>| errors.push(Error { from, given });
        let half_line = PENCIL_MM.with(Length::millimetres(PENCIL_MM.value / 2.0)).given();
        let mut before = None;
        match &reading.from {
            ReadingDatum::Struck(other) => {
                before = self.plan.marks.iter().find(|one| one.id == *other);
                // It is read from somewhere on that line.
                push(ErrorFrom::Pencil, half_line);
            }
            ReadingDatum::ControlLine => push(ErrorFrom::ControlLine, self.control_line()),
            ReadingDatum::Floor => {
                if let Some(floor) = self.floor(reading.at) {
                    push(ErrorFrom::Floor, floor);
                }
            }
            _ => {}
        }
        match reading.how {
            How::Meter => push(ErrorFrom::Meter, self.meter()),
            how => {
                let at_surface = matches!(how, How::Butt | How::Hook | How::Corner | How::Floor);
                push(ErrorFrom::Tape, self.tape(reading.value, at_surface));
                if how == How::Corner {
                    let corner = Given::new(Length::millimetres(CORNER_DOUBT_MM), Label::Chosen);
                    push(ErrorFrom::Corner, corner.because("a tape's end in an inside corner"));
                }
            }
        }
        let half_step = Given::new(self.plan.style.length_of(1) / 2.0, Label::Derived);
        push(ErrorFrom::Graduation, half_step.because("to the nearest graduation"));
        if mark.on_tape || mark.line.is_some() {
            push(ErrorFrom::Pencil, half_line);
        }
        let Some(other) = before.filter(|_| steps > 0) else { return };
        let axis = reading.direction.axis();
        if let Some(first) = other.readings.iter().find(|one| one.direction.axis() == axis) {
            self.add(other, first, steps - 1, errors);
        }
    }

    /// What the tape may be off: as the kit says of it or of its class, else by the table where the job is, of the
    /// worst class in the United Kingdom.
    pub(super) fn tape(&self, length: Length, at_surface: bool) -> Given<Length> {
        let tapes = self.job.kit.measures.iter().filter(|measure| measure.kind == MeasureKind::Tape);
        let each = tapes.map(|tape| match (tape.doubt, tape.class) {
            (Some(doubt), _) => Some(Given::measured(doubt).because("as the kit says")),
            (None, Some(class)) => Some(by_class(row(class), length, at_surface)),
            (None, None) => None,
        });
        // Nobody says which of several was in the hand: the worst.
        let worst = each.collect::<Option<Vec<_>>>().and_then(|all| {
            all.into_iter().reduce(|worst, one| if one.value > worst.value { one } else { worst })
        });
        worst.unwrap_or_else(|| match self.job.codes {
            Some(CodeSet::Uk) => of_unknown_class(length, at_surface),
            _ => by_table(length),
        })
    }

    /// What the floor may be off at a place along the wall: half of what it differs by between its readings to either
    /// side (chosen: between them it is not known to be straight). `None` of a floor that was read at fewer than two
    /// places.
    fn floor(&self, x: Length) -> Option<Given<Length>> {
        let mut pairs = self.plan.survey.floor.readings.windows(2);
        let beyond = self.plan.survey.floor.readings.windows(2).last();
        let pair = pairs.find(|pair| matches!(pair, [_, right] if x <= right.x)).or(beyond)?;
        let [left, right] = pair else { return None };
        let half = Given::chosen((right.y - left.y).abs() / 2.0);
        Some(half.because("half of what the floor differs by between its readings to either side"))
    }

    /// How far out of level a spirit level may be: what the kit says it is off, over its length.
    pub(super) fn level(&self) -> Given<Angle> {
        let levels = self.job.kit.measures.iter().filter(|one| one.kind == MeasureKind::SpiritLevel);
        let each = levels.map(|level| {
            let long = level.length.filter(|long| long.mm() > 0.0);
            let over = long.unwrap_or(Length::millimetres(LEVEL_LENGTH_MM));
            let off = out_of_level(level.doubt?.mm() * 1000.0 / over.mm());
            Some(match long {
                Some(_) => Given::measured(off).because("as the kit says, over its length"),
                None => Given::chosen(off).because("as the kit says, over the length of a short level"),
            })
        });
        let worst = each.collect::<Option<Vec<_>>>().and_then(|all| {
            all.into_iter().reduce(|worst, one| if one.value.deg() > worst.value.deg() { one } else { worst })
        });
        let usual = SPIRIT_LEVEL_MM_PER_M;
        worst.unwrap_or_else(|| usual.with(out_of_level(usual.value)).given())
    }

    fn meter(&self) -> Given<Length> {
        let usual = Given::new(Length::millimetres(METER_DOUBT_MM), Label::Chosen);
        self.doubt(MeasureKind::DistanceMeter)
            .unwrap_or(usual.because("a distance meter nobody told more of"))
    }

    /// What the control line may be off: as the kit says of what struck it, else as a line laser over the wall's width.
    fn control_line(&self) -> Given<Length> {
        let told = self.doubt(MeasureKind::LineLaser).or_else(|| self.doubt(MeasureKind::WaterLevel));
        let width = self.plan.survey.outline.width();
        told.unwrap_or(LINE_LASER_MM_PER_M.with(off_at(LINE_LASER_MM_PER_M.value, width)).given())
    }

    fn doubt(&self, kind: MeasureKind) -> Option<Given<Length>> {
        let measures = self.job.kit.measures.iter().filter(|measure| measure.kind == kind);
        // Nobody says which of several was in the hand: the worst.
        let doubt = measures.map(|measure| measure.doubt).collect::<Option<Vec<_>>>()?;
        let worst = doubt.into_iter().reduce(Length::max)?;
        Some(Given::measured(worst).because("as the kit says"))
    }
}

fn row(class: AccuracyClass) -> Row<TapeClass> {
    match class {
        AccuracyClass::I => CLASS_I,
        AccuracyClass::Ii => CLASS_II,
        AccuracyClass::Iii => CLASS_III,
    }
}
