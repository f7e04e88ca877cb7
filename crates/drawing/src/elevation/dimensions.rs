//! Which dimensions the elevation asks for, the most important first. Of what is selected or held: how it was read, its
//! marks' readings, its gaps and its size. Else of every piece: the centre line and the level line by their readings,
//! the gaps, the size; and the wall's.

use super::read_dimensions::ask_read;
use crate::dimension::{About, Figure, GapSide, Rows, Side, Wanted};
use crate::look::Look;
use crate::pen::lit;
use crate::scale::Scale;
use crate::scene::Lit;
use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::plan::piece::{Gap, PiecePlan};
use strikeline_solver::plan::{AssumedWhat, Plan};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tape::Parts;
use strikeline_solver::units::Length;

/// Asks for those of what is selected or held; where that has none, or nothing is, for those of the marks.
pub(super) fn ask(rows: &mut Rows, job: &Job, plan: &Plan, scale: &Scale, look: &Look) {
    let asking = Asking { plan, scale, look };
    ask_read(&asking, rows, job);
    for mark in plan.marks.iter().filter(|mark| lit(look, &mark.id) != Lit::No) {
        asking.readings(rows, mark);
    }
    let is_lit = |piece: &&PiecePlan| lit(look, &piece.id.whole()) != Lit::No;
    asking.pieces(rows, &plan.pieces.iter().filter(is_lit).collect::<Vec<_>>());
    if rows.is_empty() {
        asking.pieces(rows, &plan.pieces.iter().collect::<Vec<_>>());
        asking.wall(rows);
    }
}

pub(super) struct Asking<'a> {
    pub(super) plan: &'a Plan,
    pub(super) scale: &'a Scale,
    pub(super) look: &'a Look,
}

/// What a dimension says and about what.
pub(super) struct Says {
    pub(super) subject: Subject,
    pub(super) about: About,
    pub(super) parts: Parts,
    pub(super) measured: bool,
    pub(super) assumed: bool,
}

impl Asking<'_> {
    /// Those of some pieces: the centre line and the level line by their readings, the gaps, the sizes.
    fn pieces(&self, rows: &mut Rows, pieces: &[&PiecePlan]) {
        for which in [MarkWhat::CentreLine, MarkWhat::LevelLine] {
            let of_these =
                self.plan.marks.iter().filter(|mark| pieces.iter().any(|piece| piece.id == mark.piece));
            for mark in of_these.filter(|mark| mark.what == which) {
                self.readings(rows, mark);
            }
        }
        for piece in pieces {
            self.gaps(rows, piece);
        }
        for piece in pieces {
            self.size(rows, piece);
        }
    }

    /// A dimension from one place on the wall to another, on a side.
    pub(super) fn between(&self, rows: &mut Rows, side: Side, from: Point, to: Point, says: Says) {
        let (from, to) = (self.scale.paper_from_wall(from), self.scale.paper_from_wall(to));
        let (along_mm, object_mm) = match side {
            Side::Above | Side::Below => ((from.x_mm, to.x_mm), (from.y_mm, to.y_mm)),
            Side::Left | Side::Right => ((from.y_mm, to.y_mm), (from.x_mm, to.x_mm)),
        };
        rows.place(Wanted {
            side,
            along_mm,
            object_mm,
            figure: Figure::new(says.parts, self.look.sound_text_height_mm()),
            measured: says.measured,
            assumed: says.assumed,
            subject: says.subject,
            about: says.about,
        });
    }

    /// The readings of a mark and their closes.
    fn readings(&self, rows: &mut Rows, mark: &Mark) {
        let Some(place) = mark.place else { return };
        let mut told: Vec<(ReadingDatum, Direction, i64)> = Vec::new();
        for (index, reading) in mark.readings.iter().enumerate() {
            // Both ends of a level line over a level floor say the same: once is enough.
            let says = (reading.from.clone(), reading.direction, reading.steps);
            if told.contains(&says) {
                continue;
            }
            told.push(says);
            let to = self.end_of(mark, reading, place);
            let side = self.side(mark, reading, to);
            let datum = (&reading.from, reading.direction, reading.value);
            let about = About::Reading { mark: mark.id.clone(), index };
            self.reading(rows, (mark, about), side, datum, reading.steps, to);
            if let Some(close) = &reading.close {
                let datum = (&close.from, close.direction, close.value);
                let about = About::Close { mark: mark.id.clone(), index };
                self.reading(rows, (mark, about), side, datum, close.closing.second, to);
            }
        }
    }

    /// The place of the mark that a reading ends at: of a line, the end on the reading's side.
    fn end_of(&self, mark: &Mark, reading: &Reading, place: Point) -> Point {
        match (reading.direction.axis(), mark.line) {
            (Axis::Across, Some((_, upper))) => Point::new(place.x, upper.y),
            (Axis::Upright, Some((left, right))) => {
                if (reading.at - left.x).abs() < (reading.at - right.x).abs() { left } else { right }
            }
            (Axis::Across | Axis::Upright, None) => place,
        }
    }

    /// Level readings stand above the wall; upright ones on the side of the line's end they are taken at, or
    /// on the side of the wall that is nearer.
    fn side(&self, mark: &Mark, reading: &Reading, to: Point) -> Side {
        let middle =
            mark.line.map_or(self.plan.survey.outline.centre().x, |(left, right)| (left.x + right.x) / 2.0);
        match reading.direction.axis() {
            Axis::Across => Side::Above,
            Axis::Upright if to.x < middle => Side::Left,
            Axis::Upright => Side::Right,
        }
    }

    fn reading(
        &self,
        rows: &mut Rows,
        (mark, about): (&Mark, About),
        side: Side,
        (datum, direction, value): (&ReadingDatum, Direction, Length),
        steps: i64,
        to: Point,
    ) {
        let back = value * -direction.sign();
        let from = match direction.axis() {
            Axis::Across => Point::new(to.x + back, self.object_of(datum, side).unwrap_or(to.y)),
            Axis::Upright => Point::new(self.object_of(datum, side).unwrap_or(to.x), to.y + back),
        };
        let says = Says {
            subject: mark.id.clone(),
            about,
            parts: self.plan.style.parts_of(steps),
            measured: false,
            assumed: mark.assumed,
        };
        self.between(rows, side, from, to, says);
    }

    /// Where a datum's extension line begins, on the other axis; `None` for the mark's own place.
    fn object_of(&self, datum: &ReadingDatum, side: Side) -> Option<Length> {
        let edge_of = |rect: strikeline_solver::geometry::Rect| match side {
            Side::Above => rect.top,
            Side::Below => rect.bottom,
            Side::Left => rect.left,
            Side::Right => rect.right,
        };
        match datum {
            ReadingDatum::LeftEnd
            | ReadingDatum::RightEnd
            | ReadingDatum::Floor
            | ReadingDatum::ControlLine => Some(edge_of(self.plan.survey.outline)),
            ReadingDatum::Edge(subject) => self.rect_of(&subject.id).map(edge_of),
            ReadingDatum::Struck(id) => {
                let struck = self.plan.marks.iter().find(|mark| mark.id == *id)?;
                struck.place.map(|place| match side {
                    Side::Above | Side::Below => place.y,
                    Side::Left | Side::Right => place.x,
                })
            }
            ReadingDatum::Nothing => None,
        }
    }

    pub(super) fn rect_of(&self, id: &Id) -> Option<strikeline_solver::geometry::Rect> {
        let feature = self.plan.survey.features.iter().find(|feature| feature.id == *id).map(|it| it.rect);
        feature.or_else(|| self.plan.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline))
    }

    /// The gaps to the left, to the right and below.
    fn gaps(&self, rows: &mut Rows, piece: &PiecePlan) {
        let outline = piece.outline;
        let gap = |part: &str, side: GapSide, gap: &Gap| Says {
            subject: piece.id.part(part),
            about: About::Gap { piece: piece.id.clone(), side },
            parts: self.plan.style.fraction(gap.from),
            measured: false,
            assumed: piece.assumed,
        };
        // The neighbour's extension line begins where it ends; a wall's end, at the floor.
        let foot =
            |gap: &Gap| self.rect_of(&gap.to.id).map_or(self.plan.survey.outline.bottom, |rect| rect.bottom);
        let side_of =
            |gap: &Gap| self.rect_of(&gap.to.id).map_or(outline.left, |rect| rect.left.min(outline.left));
        if let Some(left) = &piece.gaps.left {
            let to = Point::new(outline.left, outline.bottom);
            self.between(
                rows,
                Side::Below,
                Point::new(outline.left - left.from, foot(left)),
                to,
                gap("gap_left", GapSide::Left, left),
            );
        }
        if let Some(right) = &piece.gaps.right {
            let from = Point::new(outline.right, outline.bottom);
            let to = Point::new(outline.right + right.from, foot(right));
            self.between(rows, Side::Below, from, to, gap("gap_right", GapSide::Right, right));
        }
        if let Some(below) = &piece.gaps.below {
            let to = Point::new(outline.left, outline.bottom);
            let from = Point::new(side_of(below), outline.bottom - below.from);
            self.between(rows, Side::Left, from, to, gap("gap_below", GapSide::Below, below));
            // Over what is out of level the other end is told too.
            if self.plan.style.steps(below.other) != self.plan.style.steps(below.from) {
                let to = Point::new(outline.right, outline.bottom);
                let from = Point::new(outline.right, outline.bottom - below.other);
                let other = Gap { from: below.other, ..below.clone() };
                self.between(
                    rows,
                    Side::Right,
                    from,
                    to,
                    gap("gap_below_right", GapSide::BelowRight, &other),
                );
            }
        }
    }

    fn size(&self, rows: &mut Rows, piece: &PiecePlan) {
        let outline = piece.outline;
        let measured = |which: fn(&AssumedWhat) -> bool| !self.assumed(&piece.id, which);
        let says = |part: &str, about, length, measured| Says {
            subject: piece.id.part(part),
            about,
            parts: self.plan.style.fraction(length),
            measured,
            assumed: !measured,
        };
        let (low, high) = (outline.bottom, outline.top);
        let width = says(
            "width",
            About::Width(piece.id.clone()),
            outline.width(),
            measured(|what| matches!(what, AssumedWhat::Width(_))),
        );
        self.between(rows, Side::Below, Point::new(outline.left, low), Point::new(outline.right, low), width);
        let height = says(
            "height",
            About::Height(piece.id.clone()),
            outline.height(),
            measured(|what| matches!(what, AssumedWhat::Height(_))),
        );
        self.between(rows, Side::Left, Point::new(outline.left, low), Point::new(outline.left, high), height);
    }

    fn wall(&self, rows: &mut Rows) {
        let outline = self.plan.survey.outline;
        let wall = &self.plan.wall;
        let measured = |which: fn(&AssumedWhat) -> bool| !self.assumed(wall, which);
        let says = |part: &str, about, length, measured| Says {
            subject: wall.part(part),
            about,
            parts: self.plan.style.fraction(length),
            measured,
            assumed: !measured,
        };
        let width = says(
            "width",
            About::Width(wall.clone()),
            outline.width(),
            measured(|what| matches!(what, AssumedWhat::WallWidth(_))),
        );
        let left = Point::new(outline.left, outline.top);
        let right = Point::new(outline.right, outline.top);
        self.between(rows, Side::Above, left, right, width);
        // The height is measured from the level plane: the floor at its first reading.
        let floor = Length::default();
        let height = says(
            "height",
            About::Height(wall.clone()),
            outline.top - floor,
            measured(|what| matches!(what, AssumedWhat::WallHeight(_))),
        );
        self.between(rows, Side::Right, Point::new(outline.right, floor), right, height);
    }

    fn assumed(&self, id: &Id, which: fn(&AssumedWhat) -> bool) -> bool {
        self.plan.assumed.iter().any(|assumed| assumed.subject.id == *id && which(&assumed.what))
    }
}
