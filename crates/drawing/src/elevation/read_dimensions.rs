//! The dimensions of a thing that is selected or held: how it was read, underlined, since that was measured.

use super::dimensions::{Asking, Says};
use crate::dimension::{About, ReadPlace, Rows, Side};
use crate::pen::lit;
use crate::scene::Lit;
use strikeline_solver::geometry::{Point, Rect};
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{
    AcrossDatum, AcrossExtent, AcrossReading, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;

/// Asks for the readings of every feature, hidden thing and hit that is selected or held.
pub(super) fn ask_read(asking: &Asking<'_>, rows: &mut Rows, job: &Job) {
    let Some(wall) = job.wall(&asking.plan.wall) else { return };
    let survey = &asking.plan.survey;
    let is_lit = |id: &Id| lit(asking.look, &id.whole()) != Lit::No;
    for feature in wall.features.iter().filter(|feature| is_lit(&feature.id)) {
        if let Some(placed) = survey.features.iter().find(|placed| placed.id == feature.id) {
            let thing = Read { asking, id: &feature.id, rect: placed.rect, assumed: placed.assumed };
            thing.extents(rows, &feature.across, &feature.upright);
        }
    }
    for hidden in wall.hidden.iter().filter(|hidden| is_lit(&hidden.id)) {
        if let Some(placed) = survey.hidden.iter().find(|placed| placed.id == hidden.id) {
            let thing = Read { asking, id: &hidden.id, rect: placed.rect, assumed: placed.assumed };
            thing.extents(rows, &hidden.across, &hidden.upright);
        }
    }
    for hit in wall.hits.iter().filter(|hit| is_lit(&hit.id)) {
        let Some(placed) = survey.hits.iter().find(|placed| placed.id == hit.id) else { continue };
        let y = placed.y.unwrap_or(survey.outline.centre().y);
        let rect = Rect { left: placed.x, right: placed.x, bottom: y, top: y };
        let thing = Read { asking, id: &hit.id, rect, assumed: false };
        thing.across(rows, ReadPlace::Middle, &hit.x, placed.x);
        if let (Some(reading), Some(y)) = (&hit.y, placed.y) {
            thing.upright(rows, ReadPlace::MiddleHeight, reading, y);
        }
    }
}

/// A thing at its place.
struct Read<'a> {
    asking: &'a Asking<'a>,
    id: &'a Id,
    rect: Rect,
    assumed: bool,
}

impl Read<'_> {
    fn extents(&self, rows: &mut Rows, across: &AcrossExtent, upright: &UprightExtent) {
        let rect = self.rect;
        let middle = rect.centre();
        for (place, reading, x) in [
            (ReadPlace::Left, &across.left, rect.left),
            (ReadPlace::Right, &across.right, rect.right),
            (ReadPlace::Middle, &across.centre, middle.x),
        ] {
            if let Some(reading) = reading {
                self.across(rows, place, reading, x);
            }
        }
        if across.width.is_some() {
            let (left, right) = (Point::new(rect.left, rect.bottom), Point::new(rect.right, rect.bottom));
            let says = self.says("width", About::Width(self.id.clone()), rect.width());
            self.asking.between(rows, Side::Below, left, right, says);
        }
        for (place, reading, y) in [
            (ReadPlace::Bottom, &upright.bottom, rect.bottom),
            (ReadPlace::Top, &upright.top, rect.top),
            (ReadPlace::MiddleHeight, &upright.centre, middle.y),
        ] {
            if let Some(reading) = reading {
                self.upright(rows, place, reading, y);
            }
        }
        if upright.height.is_some() {
            let (low, high) = (Point::new(rect.left, rect.bottom), Point::new(rect.left, rect.top));
            let says = self.says("height", About::Height(self.id.clone()), rect.height());
            self.asking.between(rows, self.nearer_side(), low, high, says);
        }
    }

    /// From where it was read sideways to the place that was read, below the wall.
    fn across(&self, rows: &mut Rows, place: ReadPlace, reading: &AcrossReading, x: Length) {
        let outline = self.asking.plan.survey.outline;
        let datum = match &reading.from {
            AcrossDatum::LeftEnd => Point::new(outline.left, outline.bottom),
            AcrossDatum::RightEnd => Point::new(outline.right, outline.bottom),
            AcrossDatum::Edge(edge) => match self.edge(edge) {
                Some(rect) => Point::new(sideways(edge, rect), rect.bottom),
                None => return,
            },
        };
        let about = About::Read { thing: self.id.clone(), place };
        let says = self.says("across", about, reading.by);
        self.asking.between(rows, Side::Below, datum, Point::new(x, self.rect.bottom), says);
    }

    /// From where its height was read to the place that was read, at the nearer end of the wall.
    fn upright(&self, rows: &mut Rows, place: ReadPlace, reading: &UprightReading, y: Length) {
        let survey = &self.asking.plan.survey;
        let x = self.rect.centre().x;
        let datum_y = match &reading.from {
            UprightDatum::Floor => survey.floor.y_at(x),
            UprightDatum::ControlLine => match survey.control_line_y {
                Some(y) => y,
                None => return,
            },
            UprightDatum::Edge(edge) => match self.edge(edge) {
                Some(rect) => upright(edge, rect),
                None => return,
            },
        };
        let about = About::Read { thing: self.id.clone(), place };
        let says = self.says("upright", about, reading.by);
        let side = self.nearer_side();
        let edge_x = if side == Side::Left { self.rect.left } else { self.rect.right };
        self.asking.between(rows, side, Point::new(edge_x, datum_y), Point::new(edge_x, y), says);
    }

    fn nearer_side(&self) -> Side {
        if self.rect.centre().x < self.asking.plan.survey.outline.centre().x {
            Side::Left
        } else {
            Side::Right
        }
    }

    /// The outline of what an edge belongs to; the wall's own for one of its ends.
    fn edge(&self, edge: &Subject) -> Option<Rect> {
        let plan = self.asking.plan;
        if edge.id == plan.wall { Some(plan.survey.outline) } else { self.asking.rect_of(&edge.id) }
    }

    fn says(&self, part: &str, about: About, length: Length) -> Says {
        Says {
            subject: self.id.part(part),
            about,
            parts: self.asking.plan.style.fraction(length),
            measured: !self.assumed,
            assumed: self.assumed,
        }
    }
}

/// Where an edge is sideways.
fn sideways(edge: &Subject, rect: Rect) -> Length {
    match edge.part_str() {
        "left" => rect.left,
        "right" => rect.right,
        _ => rect.centre().x,
    }
}

/// How high an edge is.
fn upright(edge: &Subject, rect: Rect) -> Length {
    match edge.part_str() {
        "bottom" => rect.bottom,
        "top" => rect.top,
        _ => rect.centre().y,
    }
}
