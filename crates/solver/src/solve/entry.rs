//! Step 6: where to open the wall behind the piece for its cables. The run is not planned here.

use crate::geometry::{Point, Rect, Span};
use crate::plan::fact::PlacedFact;
use crate::plan::framing::Framing;
use crate::plan::survey::Survey;
use crate::subject::Id;
use crate::tolerance::{ENTRY_CLEAR_MM, ENTRY_HIDDEN_MM};
use crate::units::Length;

/// A single-gang opening: 2 in wide, 3 in high (device box practice, read second-hand).
const ENTRY_SIZE_MM: (f64, f64) = (50.8, 76.2);

/// What an opening keeps clear of.
pub(super) struct Behind<'a> {
    pub(super) outline: Rect,
    pub(super) solids: &'a [Rect],
    pub(super) brackets: &'a [Rect],
    pub(super) survey: &'a Survey,
    pub(super) framing: &'a Framing,
}

/// The opening nearest to the ports that lies behind the piece and clear of the plate's solid parts, the
/// brackets, the studs with their doubt, hidden things and features; `None` where there is no room.
///
/// Exact: the best place of a rectangle among rectangles has each edge at a bound or at the wish.
pub(super) fn entry(behind: &Behind<'_>, wished: Point) -> Option<Rect> {
    let (width, height) = (Length::millimetres(ENTRY_SIZE_MM.0), Length::millimetres(ENTRY_SIZE_MM.1));
    let hidden_by = behind.outline.grown(-Length::millimetres(ENTRY_HIDDEN_MM));
    let room = Rect::new(
        Span::new(hidden_by.left + width / 2.0, hidden_by.right - width / 2.0),
        Span::new(hidden_by.bottom + height / 2.0, hidden_by.top - height / 2.0),
    );
    if hidden_by.width() < width || hidden_by.height() < height {
        return None;
    }
    // Where the opening's middle may not be: each obstacle grown by half the opening.
    let barred: Vec<Rect> = behind
        .obstacles()
        .map(|rect| Rect {
            left: rect.left - width / 2.0,
            right: rect.right + width / 2.0,
            bottom: rect.bottom - height / 2.0,
            top: rect.top + height / 2.0,
        })
        .filter(|rect| rect.overlaps(room))
        .collect();
    let inside = |rect: &Rect, x: Length, y: Length| {
        rect.left < x && x < rect.right && rect.bottom < y && y < rect.top
    };
    let clamp = |place: Length, span: Span| place.max(span.from).min(span.to);
    let mut xs = vec![clamp(wished.x, room.across())];
    let mut ys = vec![clamp(wished.y, room.upright())];
    for rect in &barred {
        xs.extend([rect.left, rect.right].into_iter().filter(|x| room.across().holds(*x)));
        ys.extend([rect.bottom, rect.top].into_iter().filter(|y| room.upright().holds(*y)));
    }
    let mut best: Option<(f64, Point)> = None;
    for x in &xs {
        for y in &ys {
            let (dx, dy) = ((*x - wished.x).mm(), (*y - wished.y).mm());
            let away = dx * dx + dy * dy;
            if best.as_ref().is_some_and(|(least, _)| *least <= away) {
                continue;
            }
            if !barred.iter().any(|rect| inside(rect, *x, *y)) {
                best = Some((away, Point::new(*x, *y)));
            }
        }
    }
    best.map(|(_, middle)| Rect::new(Span::about(middle.x, width), Span::about(middle.y, height)))
}

/// The opening that was struck or cut behind a piece in its own option, where it is; `None` where none was.
pub(super) fn cut(facts: &[PlacedFact], piece: &Id) -> Option<Rect> {
    let of_piece =
        |fact: &&PlacedFact| fact.is_own && fact.mark.id == *piece && fact.mark.part_str() == "entry";
    let place = facts.iter().find(of_piece)?.place?;
    let (width, height) = (Length::millimetres(ENTRY_SIZE_MM.0), Length::millimetres(ENTRY_SIZE_MM.1));
    Some(Rect::new(Span::about(place.x, width), Span::about(place.y, height)))
}

impl Behind<'_> {
    /// Everything to keep clear of, grown by what is kept clear round it.
    fn obstacles(&self) -> impl Iterator<Item = Rect> + '_ {
        let clear = Length::millimetres(ENTRY_CLEAR_MM);
        let plate = self.solids.iter().chain(self.brackets).map(move |rect| rect.grown(clear));
        let hidden = self.survey.hidden.iter().map(move |hidden| hidden.rect.grown(clear));
        let small = |feature: &&crate::plan::survey::PlacedFeature| {
            feature.kind != crate::job::feature::FeatureKind::ChimneyBreast
        };
        let features =
            self.survey.features.iter().filter(small).map(move |feature| feature.rect.grown(clear));
        let studs = self.framing.studs.iter().map(|stud| {
            Rect::new(Span::new(stud.left, stud.right).grown(stud.doubt), self.survey.outline.upright())
        });
        plate.chain(hidden).chain(features).chain(studs)
    }
}
