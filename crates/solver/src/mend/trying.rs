//! What a change is tried on: the job with its one wall, its plan now, and how many solves are left.

use super::{Change, Gives, MOST_SOLVES, MendPlan};
use crate::capacity::group::Word;
use crate::finding::{Finding, Level, What};
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::Hanging;
use crate::plan::Plan;
use crate::plan::piece::{Meets, MountedPlan, PiecePlan};
use crate::plan::verdict::{Required, Verdict, Want};
use crate::solve::{hanging_mut, solve, write_down};
use crate::subject::Id;
use std::cell::Cell;

/// What a change is tried on.
pub(super) struct Trying<'a> {
    /// The job, with an option that was assumed written down.
    whole: Job,
    /// The same without the other walls, which are not solved.
    pub(super) job: Job,
    /// Its plan.
    pub(super) plan: Plan,
    pub(super) finding: &'a Finding,
    /// The piece that it is about.
    piece: usize,
    option: Id,
    left: Cell<usize>,
}

impl<'a> Trying<'a> {
    /// `None` where the finding is about no piece that hangs there.
    pub(super) fn of(job: &Job, wall: &Id, option: Option<&Id>, finding: &'a Finding) -> Option<Self> {
        let mut whole = job.clone();
        let plan = solve(job, wall, option);
        let option = match &plan.option {
            Some(option) => option.clone(),
            None => write_down(&mut whole, wall)?,
        };
        let mut one = whole.clone();
        one.walls.retain(|other| other.id == *wall);
        let plan = solve(&one, wall, Some(&option));
        let piece = plan.pieces.iter().position(|piece| piece.id == finding.subject.id)?;
        // A finding that is not of this job is not mended.
        plan.findings.iter().find(|now| is_same(now, finding))?;
        Some(Self { whole, job: one, plan, finding, piece, option, left: Cell::new(MOST_SOLVES) })
    }

    /// The piece at its place.
    pub(super) fn piece(&self) -> Option<&PiecePlan> {
        self.plan.pieces.get(self.piece)
    }

    /// Its mount at its place.
    pub(super) fn mounted(&self) -> Option<&MountedPlan> {
        self.piece()?.mount.as_ref()
    }

    fn verdict(&self) -> Option<&Verdict> {
        Some(&self.mounted()?.fastening.verdict)
    }

    /// Whether something is wanted that no change gives.
    pub(super) fn waits_for_a_measurement(&self) -> bool {
        let wants = self.verdict().map(|verdict| verdict.wanted.as_slice()).unwrap_or_default();
        let is_required = self.verdict().is_some_and(|verdict| verdict.required == Required::NotMet);
        !is_required && wants.iter().any(|want| !matches!(want, Want::Probe(_) | Want::Edges(_)))
    }

    /// The hanging of the piece in a job.
    pub(super) fn hanging<'j>(&self, job: &'j mut Job) -> Option<&'j mut Hanging> {
        hanging_mut(job, &self.plan, self.piece()?)
    }

    /// The mount of the piece in a job.
    pub(super) fn mount<'j>(&self, job: &'j mut Job) -> Option<&'j mut Mount> {
        let id = &self.mounted()?.id;
        job.mounts.iter_mut().find(|mount| mount.id == *id)
    }

    /// What a change gives, where it helps; `None` where it does not, or no solves are left.
    pub(super) fn gives(&self, change: &dyn Fn(&mut Job)) -> Option<Gives> {
        let left = self.left.get().checked_sub(1)?;
        self.left.set(left);
        let mut job = self.job.clone();
        change(&mut job);
        let plan = solve(&job, &self.plan.wall, Some(&self.option));
        let piece = plan.pieces.iter().find(|piece| Some(&piece.id) == self.piece().map(|now| &now.id))?;
        if !self.helps(&plan, piece) || self.does_harm(&plan) {
            return None;
        }
        Some(told(piece, self.brought(&plan, Level::Caution)))
    }

    /// The mend of a change that gives that.
    pub(super) fn mend(&self, change: Change, gives: Gives, apply: Option<&dyn Fn(&mut Job)>) -> MendPlan {
        let job = apply.map(|apply| {
            let mut job = self.whole.clone();
            apply(&mut job);
            job
        });
        MendPlan { change, job, gives }
    }

    /// Whether the finding is gone, or what it is about is better.
    fn helps(&self, plan: &Plan, piece: &PiecePlan) -> bool {
        let is_gone = !plan.findings.iter().any(|now| is_same(now, self.finding));
        let verdict = piece.mount.as_ref().map(|mount| &mount.fastening.verdict);
        let holds = verdict.is_some_and(|verdict| verdict.if_probed == Word::Holds);
        match self.finding.what {
            What::PlateNotKnown { .. } | What::PlateShort { used: Some(_) } => holds,
            What::MoreStudsNear { most, .. } => {
                piece.mount.as_ref().is_some_and(|mount| mount.studs_met() >= most)
            }
            // Where what the maker requires is met, the fasteners themselves may still be unknown.
            _ => is_gone,
        }
    }

    /// Whether it brings a new stop, or a piece is held worse than now.
    fn does_harm(&self, plan: &Plan) -> bool {
        let word = |piece: &PiecePlan| piece.mount.as_ref().map(|mount| mount.fastening.verdict.if_probed);
        let is_worse = self.plan.pieces.iter().any(|now| {
            let then = plan.pieces.iter().find(|then| then.id == now.id);
            then.is_none_or(|then| word(then) > word(now))
        });
        is_worse || self.brought(plan, Level::Stop) > 0
    }

    /// How many findings of a level a plan has that are not there now.
    fn brought(&self, plan: &Plan, level: Level) -> usize {
        let is_known = |finding: &Finding| self.plan.findings.iter().any(|now| is_same(now, finding));
        // That holes are drilled at all is no harm of a change: without it there would be nothing to drill.
        let is_of_drilling = |finding: &Finding| {
            matches!(finding.what, What::OtherSide { .. } | What::OldWall { .. } | What::WetWall)
        };
        plan.findings
            .iter()
            .filter(|finding| finding.level == level && !is_known(finding) && !is_of_drilling(finding))
            .count()
    }
}

/// What is read from a piece that helps.
fn told(piece: &PiecePlan, cautions: usize) -> Gives {
    let mount = piece.mount.as_ref();
    let verdict = mount.map(|mount| &mount.fastening.verdict);
    Gives {
        word: verdict.map_or(Word::NotKnown, |verdict| verdict.word),
        if_probed: verdict.map_or(Word::NotKnown, |verdict| verdict.if_probed),
        used: verdict.and_then(|verdict| verdict.governing.as_ref()).map(|governing| governing.used),
        fasteners: mount.map_or(0, |mount| mount.fastening.fasteners.len()),
        holes: mount.map_or(0, |mount| mount.holes.iter().filter(|hole| hole.meets == Meets::Stud).count()),
        studs: mount.map_or(0, MountedPlan::studs_met),
        cautions,
    }
}

/// Whether two findings are about the same, whatever their amounts.
fn is_same(a: &Finding, b: &Finding) -> bool {
    let of = |finding: &Finding| match &finding.what {
        What::OverFeature { feature, .. } => Some(feature.clone()),
        What::OverPiece { other } => Some(other.clone()),
        What::HoleOnHidden { hidden, .. } | What::BehindHole { hidden, .. } => Some(hidden.clone()),
        _ => None,
    };
    let side = |finding: &Finding| match finding.what {
        What::OffWall { side, .. } | What::PlateShows { side, .. } | What::NoLiftRoom { side, .. } => {
            Some(side)
        }
        _ => None,
    };
    a.what.rule() == b.what.rule() && a.subject == b.subject && of(a) == of(b) && side(a) == side(b)
}
