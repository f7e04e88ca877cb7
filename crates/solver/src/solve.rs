//! From the job to the plan, in numbered steps. Values in, values out; it cannot fail.
//!
//! 1 survey: where everything measured is; facts: where what was done is now. 2 framing: what the hits tell.
//! 3 placement: where the piece goes, and the plate's possible places; held: where what was done holds it.
//! 4 holes: what they meet at one such place. 5 choice: the best place. 6 cable: their way, from entry to exit.
//! 7 marks: what to strike, and how it is found with a tape. 8 done: what was done there. 9 sight: how displays are
//! seen from the seats.

mod again;
mod assumed_option;
mod cable;
mod choice;
mod coarse;
mod done;
mod facts;
mod framing;
mod gaps;
mod held;
mod holes;
mod leaning;
mod load;
mod marks;
mod mounted;
mod next;
mod pieces;
mod placement;
mod sight;
mod survey;
mod trial;
mod usual_plate;
mod usual_size;
#[cfg(test)]
mod tests;

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::option::WallOption;
use crate::job::wall::Wall;
use crate::plan::explained::Explained;
use crate::plan::fact::PlacedFact;
use crate::plan::framing::Framing;
use crate::plan::mark::MarkWhat;
use crate::plan::piece::PiecePlan;
use crate::plan::survey::{Floor, Survey};
use crate::plan::{Assumed, AssumedWhat, Plan};
use crate::rules;
use crate::subject::{Id, Subject};
use crate::tolerance::PROBE_BITE_MM;
use crate::units::Length;
use holes::Ground;
use std::borrow::Cow;

pub use again::Again;
pub use assumed_option::{assumed_option, assumed_place, hanging_mut, write_down};
pub use coarse::Coarse;
pub(crate) use marks::probe_mark;
pub(crate) use trial::{Hung, Trial};

/// What the steps note on their way: assumptions, and findings that only they can see.
#[derive(Clone, Debug, Default)]
struct Notes {
    assumed: Vec<Assumed>,
    findings: Vec<Finding>,
    /// Whether a hit or floor reading, which every place leans on, was read from an assumed place.
    ground_assumed: bool,
    /// The piece whose working is asked for.
    explains: Option<Id>,
    /// Its working.
    explained: Option<Explained>,
}

impl Notes {
    fn assume(&mut self, subject: Subject, what: AssumedWhat, moves_marks: bool) {
        self.assumed.push(Assumed { subject, what, moves_marks });
    }

    fn stop(&mut self, subject: Subject, what: What) {
        self.findings.push(Finding { level: Level::Stop, subject, what, mend: Mend::Measure });
    }
}

/// The option that a plan is made for where none is named: the chosen one, else the first.
#[must_use]
pub fn chosen_option(wall: &Wall) -> Option<&WallOption> {
    let chosen = wall.chosen.as_ref().and_then(|id| wall.options.iter().find(|option| option.id == *id));
    chosen.or_else(|| wall.options.first())
}

/// The plan of one wall and one option: the option named, else the chosen one, else the first, else one
/// assumed.
///
/// A wall or option that the job does not have gives a plan with a finding that says so. The same job gives
/// the same plan on every machine.
#[must_use]
pub fn solve(job: &Job, wall: &Id, option: Option<&Id>) -> Plan {
    solved(job, wall, option, None, &mut Notes::default())
}

/// The same plan, but every set of holes of one piece's plate tried at every place of it: for [`crate::choosing`].
pub(crate) fn with_exact_holes(job: &Job, wall: &Id, option: Option<&Id>, piece: &Id) -> Plan {
    solved(job, wall, option, Some(piece), &mut Notes::default())
}

/// The working behind the verdict of a piece of that plan; `None` where it hangs on no mount there.
pub(crate) fn explained(job: &Job, wall: &Id, option: Option<&Id>, piece: &Id) -> Option<Explained> {
    let mut notes = Notes { explains: Some(piece.clone()), ..Notes::default() };
    let _same = solved(job, wall, option, None, &mut notes);
    notes.explained
}

fn solved(job: &Job, wall: &Id, option: Option<&Id>, exact: Option<&Id>, notes: &mut Notes) -> Plan {
    let Some(wall) = job.wall(wall) else { return empty_plan(job, wall) };
    let named = option.and_then(|id| wall.options.iter().find(|option| option.id == *id));
    if let (Some(id), None) = (option, named) {
        notes.stop(wall.id.whole(), What::NotThere { named: id.whole() });
    }
    let arrangement = match named.or_else(|| chosen_option(wall)) {
        Some(option) => Cow::Borrowed(option),
        None => {
            let assumed = assumed_option(job, &wall.id);
            if !assumed.hangings.is_empty() {
                notes.assume(wall.id.whole(), AssumedWhat::Option, true);
            }
            Cow::Owned(assumed)
        }
    };

    let option = (!arrangement.id.is_empty()).then_some(&arrangement.id);
    let behind = Behind::of(job, wall, option, notes);
    hung(job, wall, &arrangement, behind, exact, notes)
}

/// What a plan stands on wherever its pieces hang.
#[derive(Clone, Debug)]
struct Behind {
    survey: Survey,
    framing: Framing,
    facts: Vec<PlacedFact>,
}

impl Behind {
    /// Steps 1 and 2.
    fn of(job: &Job, wall: &Wall, option: Option<&Id>, notes: &mut Notes) -> Self {
        let survey = survey::survey(job, wall, notes);
        let facts = facts::facts(wall, &survey, option);
        let framing = framing::framing(wall, &survey, job.settings.chance().value());
        Self { survey, framing, facts }
    }
}

/// Steps 3 to 9.
fn hung(
    job: &Job,
    wall: &Wall,
    arrangement: &WallOption,
    behind: Behind,
    exact: Option<&Id>,
    notes: &mut Notes,
) -> Plan {
    let Behind { survey, mut framing, facts } = behind;
    let level = job.settings.chance().value();
    let option = (!arrangement.id.is_empty()).then_some(&arrangement.id);
    let pieces = pieces::pieces(
        job,
        Ground { wall, survey: &survey, framing: &framing, facts: &facts, level, exact, in_use: &[] },
        arrangement,
        notes,
    );
    at_holes(&mut framing, &pieces);
    leaning::note_leaning(wall, arrangement, notes);
    let mut marks = marks::marks(job, wall, &survey, &framing, &pieces);
    done::done(&mut marks, &facts, &pieces, &survey, job.style());

    let supposed = marks.iter().find_map(|mark| match mark.what {
        MarkWhat::Probe { depth: Some(depth), thickness_measured: false, .. } => Some(depth),
        _ => None,
    });
    if let Some(depth) = supposed {
        let thickness = depth - Length::millimetres(PROBE_BITE_MM);
        notes.assume(wall.id.whole(), AssumedWhat::Thickness(thickness), false);
    }

    let sight = sight::sight(job, wall, &survey, &pieces);
    let mut plan = Plan {
        wall: wall.id.clone(),
        option: option.cloned(),
        style: job.style(),
        survey,
        framing,
        facts,
        pieces,
        marks,
        sight,
        assumed: std::mem::take(&mut notes.assumed),
        findings: Vec::new(),
        next: None,
    };
    let mut findings = std::mem::take(&mut notes.findings);
    findings.extend(rules::findings(job, wall, &plan));
    findings.sort_by_key(|finding| finding.level);
    plan.findings = findings;
    plan.next = next::next(&plan);
    plan
}

/// Tells each used stud's doubt at the height of the holes that use it: a lean moves it away from its hits.
fn at_holes(framing: &mut Framing, pieces: &[PiecePlan]) {
    let holes = || pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    for (index, stud) in framing.studs.iter_mut().enumerate() {
        let here = holes().filter(|hole| hole.stud == Some(index)).map(|hole| hole.place.y);
        let away = |y: &Length| (*y - stud.at_height).mm().abs();
        // The height that matters is the one farthest from the hits.
        let Some(farthest) = here.max_by(|a, b| away(a).total_cmp(&away(b))) else { continue };
        let lean_mm = crate::tolerance::NINETY * stud.lean_doubt * away(&farthest);
        let doubt_mm = stud.doubt.mm();
        stud.doubt = Length::millimetres((doubt_mm * doubt_mm + lean_mm * lean_mm).sqrt());
        let half = (stud.right - stud.left) / 2.0;
        stud.centre = stud.middle_at(farthest);
        (stud.left, stud.right) = (stud.centre - half, stud.centre + half);
        stud.at_height = farthest;
    }
}

/// The plan of a wall that the job does not have.
fn empty_plan(job: &Job, wall: &Id) -> Plan {
    let mut notes = Notes::default();
    notes.stop(wall.whole(), What::NotThere { named: wall.whole() });
    let survey = Survey {
        outline: crate::geometry::Rect::default(),
        left_end: crate::job::wall::End::Open,
        right_end: crate::job::wall::End::Open,
        floor: Floor::default(),
        control_line_y: None,
        features: Vec::new(),
        hidden: Vec::new(),
        hits: Vec::new(),
        humps: Vec::new(),
        seats: Vec::new(),
        misfits: Vec::new(),
    };
    Plan {
        wall: wall.clone(),
        option: None,
        style: job.style(),
        survey,
        framing: crate::plan::framing::Framing::default(),
        facts: Vec::new(),
        pieces: Vec::new(),
        marks: Vec::new(),
        sight: Vec::new(),
        assumed: Vec::new(),
        findings: notes.findings,
        next: None,
    }
}
