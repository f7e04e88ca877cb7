//! What is drawn at full size of one plate. Places are in millimetres from the middle of the plate's top edge, where
//! centre line and level line cross: x to the right, y down, as on paper. The plate's turn is left out: what is laid on
//! the struck lines is turned with them.

use super::super::Ask;
use super::labels::Label;
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use strikeline_solver::geometry::{Point, Rect};
use strikeline_solver::job::plate::{Plate, PlateSlot};
use strikeline_solver::plan::cable::WayBy;
use strikeline_solver::plan::piece::{HolePlan, MountedPlan, PiecePlan};
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;
use strikeline_solver::words::on_paper;

/// Lines to work by are thin: the thinnest of the series.
const THIN_MM: f64 = 0.25;
/// The level line and the centre line, over the plate's edges.
const LINE_MM: f64 = 0.35;
/// How far the cross in a hole reaches past its edge.
const CROSS_MM: f64 = 4.0;
/// How far the level line runs past the plate: enough to be laid on the struck one, which runs farther (chosen).
const PAST_MM: f64 = 40.0;
/// The same of the centre line, above and below it.
const OVER_MM: f64 = 18.0;
/// Kept free beside the plate, and above and below it, for where the piece's corners are.
const BESIDE_MM: f64 = 6.0;
const ABOVE_MM: f64 = 24.0;
/// The arrow to a corner, and how far from the plate it begins.
const ARROW_MM: f64 = 12.0;
const APART_MM: f64 = 5.0;
/// Round an opening, for its name.
const ROUND_OPENING_MM: f64 = 24.0;

/// What a stroke follows.
#[derive(Clone, Debug)]
pub(super) enum Shape {
    /// From place to place.
    Line(Vec<PaperPoint>),
    /// A circle: its middle and its radius.
    Circle(PaperPoint, f64),
}

/// A stroke at full size.
#[derive(Clone, Debug)]
pub(super) struct Stroke {
    pub(super) ink: Ink,
    pub(super) subject: Option<Subject>,
    pub(super) assumed: bool,
    pub(super) width_mm: f64,
    pub(super) shape: Shape,
    /// The stretch of paper that it is on.
    pub(super) island: usize,
}

/// All strokes and names of a plate, and the stretches of paper that they need: the plate's, and an opening's apart
/// from it.
#[derive(Clone, Debug, Default)]
pub(super) struct Drawn {
    pub(super) strokes: Vec<Stroke>,
    pub(super) labels: Vec<Label>,
    pub(super) islands: Vec<PaperRect>,
    /// Where the piece's corners are, in full.
    pub(super) corners: Vec<String>,
    /// The two ends of the level line.
    pub(super) level: [PaperPoint; 2],
}

/// Draws a plate; `None` where its holes were not measured.
pub(super) fn drawn(ask: &Ask<'_>, piece: &PiecePlan, mount: &MountedPlan) -> Option<Drawn> {
    let plate = ask.job.mount(&mount.id).and_then(|mount| mount.plate.as_ref())?;
    if mount.holes_assumed || mount.holes.is_empty() {
        return None;
    }
    let mut hand = Hand { ask, piece, mount, drawn: Drawn::default() };
    hand.drawn.islands = vec![hand.unturned(mount.plate)];
    hand.solids();
    for hole in &mount.holes {
        hand.hole(plate, hole);
    }
    hand.corners();
    hand.lines();
    hand.openings();
    Some(hand.drawn)
}

struct Hand<'a> {
    ask: &'a Ask<'a>,
    piece: &'a PiecePlan,
    mount: &'a MountedPlan,
    drawn: Drawn,
}

/// A place given right and up of the plate's middle and top.
fn at(right: Length, up: Length) -> PaperPoint {
    PaperPoint::new(right.mm(), -up.mm())
}

impl Hand<'_> {
    /// On the plate's own stretch of paper.
    fn put(&mut self, ink: Ink, subject: Subject, assumed: bool, shape: Shape) {
        self.put_on(0, ink, subject, assumed, shape);
    }

    fn put_on(&mut self, island: usize, ink: Ink, subject: Subject, assumed: bool, shape: Shape) {
        let width_mm = if ink == Ink::ChalkLine { LINE_MM } else { THIN_MM };
        self.drawn.strokes.push(Stroke { ink, subject: Some(subject), assumed, width_mm, shape, island });
    }

    /// A place of the wall, from the plate's lines: the turned frame undone.
    fn at_wall_place(&self, place: Point) -> PaperPoint {
        let in_plate = self.mount.frame.from_wall(place);
        at(in_plate.x, in_plate.y)
    }

    /// The plate's outline before it is turned, from its own lines.
    fn unturned(&self, rect: Rect) -> PaperRect {
        let origin = self.mount.frame.origin;
        let corner = |x: Length, y: Length| at(x - origin.x, y - origin.y);
        PaperRect::of(corner(rect.left, rect.top), corner(rect.right, rect.bottom))
    }

    /// The level line and the centre line, a little past the plate, over its edges.
    fn lines(&mut self) {
        let plate = self.unturned(self.mount.plate);
        let level =
            (PaperPoint::new(plate.left_mm - PAST_MM, 0.0), PaperPoint::new(plate.right_mm + PAST_MM, 0.0));
        let (top, bottom) = (plate.top_mm.min(0.0), plate.bottom_mm.max(0.0));
        let centre = (PaperPoint::new(0.0, top - OVER_MM), PaperPoint::new(0.0, bottom + OVER_MM));
        self.drawn.level = level.into();
        for (part, (from, to), name) in
            [("level_line", level, on_paper::LEVEL_LINE), ("centre_line", centre, on_paper::CENTRE_LINE)]
        {
            self.put(Ink::ChalkLine, self.piece.id.part(part), false, Shape::Line(vec![from, to]));
            self.drawn.labels.push(Label::along(name, from, to));
            self.widen(PaperRect::of(from, to));
        }
    }

    fn solids(&mut self) {
        let outline = [self.mount.plate];
        let is_assumed = self.mount.solids.is_empty();
        let solids = if is_assumed { outline.to_vec() } else { self.mount.solids.clone() };
        for solid in solids {
            let rect = self.unturned(solid);
            self.rect(Ink::Plate, self.mount.id.whole(), is_assumed, rect);
            self.widen(rect);
        }
    }

    fn rect(&mut self, ink: Ink, subject: Subject, assumed: bool, rect: PaperRect) {
        let [first, second, third, fourth] = rect.corners();
        self.put(ink, subject, assumed, Shape::Line(vec![first, second, third, fourth, first]));
    }

    /// Makes the plate's stretch of paper as large as it has to be.
    fn widen(&mut self, rect: PaperRect) {
        if let Some(first) = self.drawn.islands.first_mut() {
            *first = PaperRect {
                left_mm: first.left_mm.min(rect.left_mm),
                top_mm: first.top_mm.min(rect.top_mm),
                right_mm: first.right_mm.max(rect.right_mm),
                bottom_mm: first.bottom_mm.max(rect.bottom_mm),
            };
        }
    }

    /// A hole with a cross in its middle, a slot with one where its fastener goes. The plan's own are ringed by a
    /// hexagon.
    fn hole(&mut self, plate: &Plate, hole: &HolePlan) {
        let middle = at(hole.in_plate.x, hole.in_plate.y);
        let ink = Ink::Hole(hole.meets);
        let mut reach = CROSS_MM;
        if let Some(width) =
            plate.holes.iter().find(|round| round.id == hole.id).and_then(|round| round.diameter)
        {
            let radius = width.mm() / 2.0;
            self.put(ink, hole.subject.clone(), false, Shape::Circle(middle, radius));
            reach += radius;
        }
        if let Some(slot) = plate.slots.iter().find(|slot| slot.id == hole.id) {
            if let Some(width) = slot.width {
                self.put(ink, hole.subject.clone(), false, Shape::Line(slot_outline(slot, width)));
                reach += width.mm() / 2.0;
            } else {
                let (from, to) = slot_ends(slot);
                self.put(ink, hole.subject.clone(), true, Shape::Line(vec![from, to]));
            }
        }
        for (x, y) in [(reach, 0.0), (0.0, reach)] {
            let line = vec![middle.moved(-x, -y), middle.moved(x, y)];
            self.put(ink, hole.subject.clone(), false, Shape::Line(line));
        }
        let is_used = self.mount.fastening.fasteners.iter().any(|fastener| fastener.hole == hole.id);
        if is_used {
            self.put(ink, hole.subject.clone(), false, Shape::Line(hexagon(middle, reach + 1.0)));
        }
        self.drawn.labels.push(Label::beside(&on_paper::hole_label(hole), middle, reach + 2.0, is_used));
        self.widen(PaperRect::of(middle, middle).grown(reach));
    }

    /// The openings for cables: the one behind the piece, and where they come out.
    fn openings(&mut self) {
        let way = self.piece.cable.as_ref().and_then(|cable| cable.way.as_ref());
        let way = way.filter(|way| way.by == WayBy::InWall);
        let entry = way.and_then(|way| way.entry).or(self.mount.entry);
        let exit = way.map(|way| way.exit);
        for (part, name, opening) in [("entry", on_paper::ENTRY, entry), ("exit", on_paper::EXIT, exit)] {
            if let Some(opening) = opening {
                self.opening(part, name, opening);
            }
        }
    }

    /// An opening as it is cut, upright on the wall: on paper that is laid on turned lines it is turned back. With two
    /// lines of its own through its middle, and how far they are from the struck ones. One that is apart from the plate
    /// has paper of its own.
    fn opening(&mut self, part: &str, name: &str, opening: Rect) {
        let middle = self.at_wall_place(opening.centre());
        let subject = self.piece.id.part(part);
        let assumed = self.piece.has_assumed_openings();
        let place = |x: Length, y: Length| self.at_wall_place(Point::new(x, y));
        let Rect { left, right, bottom, top } = opening;
        let corners = [(left, bottom), (right, bottom), (right, top), (left, top), (left, bottom)];
        let outline: Vec<PaperPoint> = corners.into_iter().map(|(x, y)| place(x, y)).collect();
        let rect = PaperRect::round(&outline).unwrap_or(PaperRect::of(middle, middle));
        let (past, centre) = (Length::millimetres(CROSS_MM), opening.centre());
        let lines = [
            vec![place(left - past, centre.y), place(right + past, centre.y)],
            vec![place(centre.x, bottom - past), place(centre.x, top + past)],
        ];
        let round = rect.grown(ROUND_OPENING_MM);
        let island = match self.drawn.islands.first().copied() {
            Some(first) if first.meets(round) => {
                self.widen(round);
                0
            }
            _ => {
                self.drawn.islands.push(round);
                self.drawn.islands.len() - 1
            }
        };
        self.put_on(island, Ink::Entry, subject.clone(), assumed, Shape::Line(outline));
        for line in lines {
            self.put_on(island, Ink::Entry, subject.clone(), true, Shape::Line(line));
        }
        let lines = on_paper::opening(self.ask.plan, name, right_of(middle), above(middle));
        self.drawn.labels.push(Label::of_opening(&lines, rect).on(island));
    }

    /// An arrow to each corner of the piece, from the plate's own, with how far it is from the two lines.
    fn corners(&mut self) {
        let Some(bounds) = self.drawn.islands.first().copied() else { return };
        let outline = self.piece.outline;
        for (top, left) in [(true, true), (true, false), (false, true), (false, false)] {
            let x = if left { outline.left } else { outline.right };
            let y = if top { outline.top } else { outline.bottom };
            // The outline is told unturned, about the piece's own middle.
            let own = self.piece.frame.origin;
            let corner = self.at_wall_place(self.piece.frame.to_wall(x - own.x, y - own.y));
            let (side, end) = (if left { -1.0 } else { 1.0 }, if top { -1.0 } else { 1.0 });
            let tail = PaperPoint::new(
                if left { bounds.left_mm } else { bounds.right_mm },
                (if top { bounds.top_mm } else { bounds.bottom_mm }) + end * APART_MM,
            );
            let subject = self.piece.id.part(corner_part(top, left));
            for line in arrow(tail, corner) {
                self.widen(PaperRect::round(&line).unwrap_or(bounds));
                self.put(Ink::PieceTape, subject.clone(), self.piece.assumed, Shape::Line(line));
            }
            let (right, up) = (right_of(corner), above(corner));
            let (lines, listed) = on_paper::corner(self.ask.plan, self.piece, (top, left), right, up);
            self.drawn.corners.push(listed);
            let name = format!("{}:", on_paper::corner_name(top, left));
            let foot = tail.moved(-side * 3.0, end * 1.0);
            let label = Label::of_corner(&lines, &name, foot, (top, left));
            self.drawn.labels.push(label);
        }
        self.widen(PaperRect {
            left_mm: bounds.left_mm - BESIDE_MM,
            right_mm: bounds.right_mm + BESIDE_MM,
            top_mm: bounds.top_mm - ABOVE_MM,
            bottom_mm: bounds.bottom_mm + ABOVE_MM,
        });
    }
}

fn right_of(place: PaperPoint) -> Length {
    Length::millimetres(place.x_mm)
}

fn above(place: PaperPoint) -> Length {
    Length::millimetres(-place.y_mm)
}

fn corner_part(top: bool, left: bool) -> &'static str {
    match (top, left) {
        (true, true) => "corner_top_left",
        (true, false) => "corner_top_right",
        (false, true) => "corner_bottom_left",
        (false, false) => "corner_bottom_right",
    }
}

/// A short arrow from a place toward another: its shaft and its head.
fn arrow(from: PaperPoint, toward: PaperPoint) -> [Vec<PaperPoint>; 2] {
    let (x, y) = (toward.x_mm - from.x_mm, toward.y_mm - from.y_mm);
    let long = x.hypot(y).max(1e-9);
    let (x, y) = (x / long, y / long);
    let reach = ARROW_MM.min(long);
    let tip = from.moved(x * reach, y * reach);
    let barb = |side: f64| tip.moved(-x * 3.0 - y * side, -y * 3.0 + x * side);
    [vec![from, tip], vec![barb(1.2), tip, barb(-1.2)]]
}

fn hexagon(middle: PaperPoint, radius: f64) -> Vec<PaperPoint> {
    (0..=6).map(|corner| round(middle, radius, f64::from(corner) * 60.0)).collect()
}

/// A place on a circle, so many degrees with the clock from its right.
pub(super) fn round(middle: PaperPoint, radius: f64, degrees: f64) -> PaperPoint {
    let (sine, cosine) = degrees.to_radians().sin_cos();
    middle.moved(radius * cosine, radius * sine)
}

/// The two ends of a slot's travel.
fn slot_ends(slot: &PlateSlot) -> (PaperPoint, PaperPoint) {
    let middle = at(slot.right.length(), -slot.down);
    let half = slot.travel.mm().abs() / 2.0;
    let (x, y) = if slot.upright { (0.0, half) } else { (half, 0.0) };
    (middle.moved(-x, -y), middle.moved(x, y))
}

/// A slot's outline: two sides and two half circles.
fn slot_outline(slot: &PlateSlot, width: Length) -> Vec<PaperPoint> {
    let (first, second) = slot_ends(slot);
    let radius = width.mm() / 2.0;
    let turn = if slot.upright { 0.0 } else { -90.0 };
    // Steps of 7.5 degrees: off a true circle by two thousandths of the radius at most.
    let half = |middle: PaperPoint, from: f64| {
        (0..=24).map(move |step| round(middle, radius, from + f64::from(step) * 7.5))
    };
    let mut outline: Vec<PaperPoint> = half(second, turn).chain(half(first, turn + 180.0)).collect();
    outline.extend(outline.first().copied());
    outline
}
