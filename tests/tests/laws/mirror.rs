//! A mirrored job has the mirrored plan, where no two choices tie.

use super::mirrored::{edge, mirrored};
use super::room::{HIT_KINDS, Room, plan, rooms};
use proptest::prelude::*;
use std::cell::{Cell, RefCell};
use strikeline_solver::geometry::{Direction, Point, Rect};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{How, Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::plan::piece::{HolePlan, MountedPlan};
use strikeline_solver::units::Length;

/// Nearer than this two numbers are one: above the noise of sums taken from the other end.
const SAME_MM: f64 = 1e-5;

fn same(a: Length, b: Length) -> bool {
    (a - b).mm().abs() < SAME_MM
}

/// What is seen in the mirror of a wall this wide.
struct Mirror<'a> {
    width: Length,
    a: &'a Plan,
    b: &'a Plan,
    ties: Cell<usize>,
}

impl Mirror<'_> {
    fn point(&self, place: Point) -> Point {
        Point::new(self.width - place.x, place.y)
    }

    fn same_place(&self, a: Point, b: Point) -> bool {
        let seen = self.point(a);
        same(seen.x, b.x) && same(seen.y, b.y)
    }

    fn same_rect(&self, a: Rect, b: Rect) -> bool {
        same(self.width - a.right, b.left)
            && same(self.width - a.left, b.right)
            && same(a.bottom, b.bottom)
            && same(a.top, b.top)
    }

    fn studs(&self) -> Result<(), TestCaseError> {
        let (a, b) = (&self.a.framing.studs, &self.b.framing.studs);
        prop_assert_eq!(a.len(), b.len(), "{:?} {:?}", a, b);
        for (one, other) in a.iter().zip(b.iter().rev()) {
            prop_assert!(same(self.width - one.centre, other.centre), "{:?} {:?}", one, other);
            prop_assert!(same(self.width - one.left, other.right) && same(one.doubt, other.doubt));
            prop_assert_eq!(&one.on, &other.on);
        }
        Ok(())
    }

    /// A hole meets the same, in the stud at the same place.
    fn hole(&self, one: &HolePlan, other: &HolePlan) -> Result<(), TestCaseError> {
        prop_assert!(self.same_place(one.place, other.place), "{:?} {:?}", one, other);
        prop_assert_eq!(one.meets, other.meets, "{:?} {:?}", one, other);
        let last = self.a.framing.studs.len().saturating_sub(1);
        prop_assert_eq!(one.stud.map(|stud| last - stud), other.stud);
        prop_assert_eq!(&one.hidden, &other.hidden);
        Ok(())
    }

    fn mounted(&self, one: &MountedPlan, other: &MountedPlan) -> Result<(), TestCaseError> {
        prop_assert!(self.same_rect(one.plate, other.plate), "{:?} {:?}", one.plate, other.plate);
        prop_assert!(self.same_place(one.frame.origin, other.frame.origin));
        prop_assert!((one.frame.roll + other.frame.roll).deg().abs() < 1e-9);
        for (a, b) in one.holes.iter().zip(&other.holes) {
            self.hole(a, b)?;
        }
        prop_assert_eq!(one.wish.most_studs, other.wish.most_studs);
        for (a, b) in [(one.wish.left, other.wish.right), (one.wish.right, other.wish.left)] {
            prop_assert_eq!(a.is_some(), b.is_some(), "{:?} {:?}", one.wish, other.wish);
            prop_assert!(a.zip(b).is_none_or(|(a, b)| same(a, b)), "{:?} {:?}", one.wish, other.wish);
        }
        prop_assert_eq!(one.entry.is_some(), other.entry.is_some());
        if let Some((a, b)) = one.entry.zip(other.entry) {
            prop_assert!(self.same_rect(a, b), "{:?} {:?}", a, b);
        }
        Ok(())
    }

    /// The mark of the other plan that this one is in the mirror.
    fn seen(&self, mark: &Mark) -> Option<&Mark> {
        let name = mark.id.to_string();
        let swapped = if let Some(line) = name.strip_suffix("level_line.help_up_right") {
            format!("{line}level_line.help_up")
        } else if name.ends_with("level_line.help_up") {
            format!("{name}_right")
        } else if name.contains("_left") {
            name.replace("_left", "_right")
        } else {
            name.replace("_right", "_left")
        };
        self.b.marks.iter().find(|other| other.id.to_string() == swapped)
    }

    fn mark(&self, one: &Mark) -> Result<(), TestCaseError> {
        let Some(other) = self.seen(one) else {
            return Err(TestCaseError::fail(format!("{} is not there in the mirror", one.id)));
        };
        prop_assert_eq!(one.what == MarkWhat::Help, other.what == MarkWhat::Help);
        prop_assert_eq!((one.stage, one.assumed, one.on_tape), (other.stage, other.assumed, other.on_tape));
        prop_assert_eq!(one.readings.len(), other.readings.len());
        if let Some(((left, right), (other_left, other_right))) = one.line.zip(other.line) {
            let upright = same(left.x, right.x) || one.what == MarkWhat::CentreLine;
            let (first, second) = if upright { (left, right) } else { (right, left) };
            prop_assert!(
                self.same_place(first, other_left) && self.same_place(second, other_right),
                "{}",
                one.id
            );
        }
        if one.what != MarkWhat::LevelLine {
            let (a, b) = (one.place, other.place);
            prop_assert_eq!(a.is_some(), b.is_some());
            if let Some((a, b)) = a.zip(b)
                && !self.same_place(a, b)
            {
                // A helping mark that could stand as far off on either side stands on the left.
                prop_assert!(one.what == MarkWhat::Help, "{}: {:?} {:?}", one.id, a, b);
                self.ties.set(self.ties.get() + 1);
                return Ok(());
            }
        }
        let reversed = one.what == MarkWhat::LevelLine;
        let ordered: Vec<&Reading> =
            if reversed { other.readings.iter().rev().collect() } else { other.readings.iter().collect() };
        for (a, b) in one.readings.iter().zip(ordered) {
            self.reading(one, a, b)?;
        }
        Ok(())
    }

    fn reading(&self, mark: &Mark, one: &Reading, other: &Reading) -> Result<(), TestCaseError> {
        let told = || format!("{}: {one:?} {other:?}", mark.id);
        prop_assert_eq!(one.how, other.how, "{}", told());
        let seen = match one.direction {
            Direction::Left => Direction::Right,
            Direction::Right => Direction::Left,
            level => level,
        };
        if one.how == How::Help && seen != other.direction {
            // Told from the left in both: from the left end, or from a helping mark as far off on either side.
            let from_end = one.from == ReadingDatum::Nothing && other.from == ReadingDatum::Nothing;
            prop_assert!(from_end || same(one.value, other.value), "{}", told());
            self.ties.set(self.ties.get() + 1);
            return Ok(());
        }
        if one.from == ReadingDatum::Nothing {
            prop_assert_eq!(&other.from, &ReadingDatum::Nothing);
            return Ok(());
        }
        prop_assert!(same(one.value, other.value), "{}", told());
        let mirrored_from = match &one.from {
            ReadingDatum::LeftEnd => ReadingDatum::RightEnd,
            ReadingDatum::RightEnd => ReadingDatum::LeftEnd,
            ReadingDatum::Edge(subject) => ReadingDatum::Edge(edge(subject)),
            ReadingDatum::Struck(id) if one.how == How::Help => {
                let help = self.a.marks.iter().find(|mark| mark.id == *id);
                ReadingDatum::Struck(help.and_then(|help| self.seen(help)).unwrap().id.clone())
            }
            level => level.clone(),
        };
        if mirrored_from != other.from {
            // Two data as good and as far, one on each side: the same value held in the same way.
            prop_assert!(one.how != How::Line && seen != other.direction, "{}", told());
            self.ties.set(self.ties.get() + 1);
            return Ok(());
        }
        // On the very line there is no side: it is told as right of it.
        prop_assert!(seen == other.direction || same(one.value, Length::default()), "{}", told());
        prop_assert_eq!(&one.taut_over, &other.taut_over, "{}", told());
        prop_assert_eq!(one.close.is_some(), other.close.is_some(), "{}", told());
        if let Some((a, b)) = one.close.as_ref().zip(other.close.as_ref()) {
            prop_assert!(same(a.value, b.value), "{}", told());
        }
        Ok(())
    }
}

/// The findings' names, in the order of their grade.
fn rules(plan: &Plan) -> Vec<&'static str> {
    let mut rules: Vec<_> = plan.findings.iter().map(|finding| finding.what.rule()).collect();
    rules.sort_unstable();
    rules
}

/// What a run saw.
#[derive(Default)]
struct Seen {
    ties: usize,
    plate_ties: usize,
    rooms: usize,
    in_studs: usize,
    kinds: [usize; HIT_KINDS.len()],
}

fn check(room: &Room, seen: &mut Seen) -> Result<(), TestCaseError> {
    let job = room.job();
    let (a, b) = (plan(&job), plan(&mirrored(&job)));
    let mirror = Mirror { width: a.survey.outline.right, a: &a, b: &b, ties: Cell::new(0) };
    mirror.studs()?;
    prop_assert_eq!(a.pieces.len(), b.pieces.len());
    let (one, other) = (&a.pieces[0], &b.pieces[0]);
    prop_assert!(mirror.same_rect(one.outline, other.outline));
    let (mount, other_mount) = (one.mount.as_ref().unwrap(), other.mount.as_ref().unwrap());
    if !same(mount.offset, -other_mount.offset) {
        // Two places of the plate with as many studs, as far from its rest: one on each side.
        prop_assert!(same(mount.offset, other_mount.offset), "{:?} {:?}", mount, other_mount);
        prop_assert_eq!(mount.studs_met(), other_mount.studs_met());
        seen.plate_ties += 1;
        return Ok(());
    }
    mirror.mounted(mount, other_mount)?;
    prop_assert_eq!(a.marks.len(), b.marks.len());
    for mark in &a.marks {
        mirror.mark(mark)?;
    }
    prop_assert_eq!(rules(&a), rules(&b));
    seen.rooms += 1;
    seen.ties += mirror.ties.get();
    seen.in_studs += mount.holes.iter().filter(|hole| hole.stud.is_some()).count();
    for hit in &job.walls[0].hits {
        let kind = HIT_KINDS.iter().position(|kind| *kind == hit.kind).unwrap();
        seen.kinds[kind] += 1;
    }
    Ok(())
}

#[test]
fn mirroring_the_job_mirrors_all_of_its_plan() {
    let seen = RefCell::new(Seen::default());
    super::runner().run(&rooms(), |room| check(&room, &mut seen.borrow_mut())).unwrap();
    let seen = seen.into_inner();
    assert!(seen.rooms > 1900 && seen.plate_ties < 20, "{} rooms, {} ties", seen.rooms, seen.plate_ties);
    assert!(seen.in_studs > 300, "{} holes in studs", seen.in_studs);
    assert!(seen.kinds.iter().all(|count| *count > 300), "{:?}", seen.kinds);
}
