//! A document as PDF: real text in an embedded subset of the bundled typeface, set by the same measures as in the
//! window, with title, language and bookmarks.

use crate::font::{self, FONT_REGULAR, FONT_SEMIBOLD, Weight};
use crate::palette::{self, Colour};
use crate::paper::PaperPoint;
use crate::scene::{Anchor, Item, ItemKind, Scene, Turn};
use crate::sheet::{Bookmark, Document};
use krilla::color::rgb;
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};

/// Points of PDF to a millimetre: 72 to the inch (ISO 32000, 8.3.2.3).
const POINTS: f64 = 72.0 / 25.4;
/// What all that a sheet says is written in.
const LANGUAGE: &str = "en";

/// The bytes of a PDF file. The same document gives the same bytes.
///
/// # Errors
/// What the writer says, where it cannot make one: not for any document that this crate draws.
pub fn pdf(document: &Document) -> Result<Vec<u8>, String> {
    let fonts = Fonts::read().ok_or("the bundled typeface cannot be read")?;
    let mut writer = krilla::Document::new();
    let about = Metadata::new().title(document.title.clone()).language(LANGUAGE.to_owned());
    writer.set_metadata(about.creator("Strikeline".to_owned()));
    for page in &document.pages {
        let Scene { width_mm, height_mm, items, .. } = &page.scene;
        let settings = PageSettings::from_wh(points(*width_mm), points(*height_mm));
        let mut leaf = writer.start_page_with(settings.ok_or("a page has no size")?);
        let mut surface = leaf.surface();
        for item in items {
            Painter { surface: &mut surface, fonts: &fonts }.item(item);
        }
        surface.finish();
        leaf.finish();
    }
    writer.set_outline(outline(document));
    writer.finish().map_err(|why| format!("{why:?}"))
}

/// Millimetres in points. A writer takes single precision: a page's far edge is then true to a ten-thousandth of a
/// millimetre.
fn points(mm: f64) -> f32 {
    (mm * POINTS) as f32
}

fn point(place: PaperPoint) -> Point {
    Point::from_xy(points(place.x_mm), points(place.y_mm))
}

/// The bookmarks, each under the last one before it that stands less deep.
fn outline(document: &Document) -> Outline {
    let pages = document.pages.iter().enumerate();
    let mut all = pages.flat_map(|(page, of)| of.bookmarks.iter().map(move |it| (page, it))).peekable();
    let mut outline = Outline::new();
    while let Some((page, bookmark)) = all.next() {
        outline.push_child(node(page, bookmark, &mut all));
    }
    outline
}

fn node<'a>(
    page: usize,
    bookmark: &Bookmark,
    after: &mut std::iter::Peekable<impl Iterator<Item = (usize, &'a Bookmark)>>,
) -> OutlineNode {
    let at = Point::from_xy(0.0, points(bookmark.y_mm));
    let mut node = OutlineNode::new(bookmark.words.clone(), XyzDestination::new(page, at));
    while let Some((page, under)) = after.next_if(|(_, next)| next.depth > bookmark.depth) {
        node.push_child(self::node(page, under, after));
    }
    node
}

/// The typeface, as the writer has it.
struct Fonts {
    regular: Font,
    semibold: Font,
}

impl Fonts {
    fn read() -> Option<Self> {
        let read = |bytes: &'static [u8]| Font::new(bytes.into(), 0);
        Some(Self { regular: read(FONT_REGULAR)?, semibold: read(FONT_SEMIBOLD)? })
    }

    fn of(&self, weight: Weight) -> Font {
        match weight {
            Weight::Regular => self.regular.clone(),
            Weight::Semibold => self.semibold.clone(),
        }
    }
}

struct Painter<'a, 's> {
    surface: &'a mut Surface<'s>,
    fonts: &'a Fonts,
}

impl Painter<'_, '_> {
    fn item(&mut self, item: &Item) {
        let paint = palette::paint(item);
        let outlined = Some(stroke(item, paint.stroke));
        match &item.kind {
            ItemKind::Line { from, to } => self.path(line(&[*from, *to], false), None, outlined),
            ItemKind::Polyline { points } => self.path(line(points, false), None, outlined),
            ItemKind::Polygon { points, filled, outlined: is_outlined } => {
                let fill = filled.then(|| fill(paint.fill));
                self.path(line(points, true), fill, outlined.filter(|_| *is_outlined));
            }
            ItemKind::Circle { centre, radius_mm, filled } => {
                let fill = filled.then(|| fill(paint.fill));
                self.path(circle(*centre, *radius_mm), fill, outlined);
            }
            ItemKind::Text { .. } => self.text(&item.kind, paint.stroke),
        }
    }

    fn path(&mut self, path: Option<Path>, fill: Option<Fill>, stroke: Option<Stroke>) {
        let Some(path) = path.filter(|_| fill.is_some() || stroke.is_some()) else { return };
        self.surface.set_fill(fill);
        self.surface.set_stroke(stroke);
        self.surface.draw_path(&path);
    }

    /// A text; nothing for another item.
    fn text(&mut self, item: &ItemKind, colour: Colour) {
        let ItemKind::Text { at, text, height_mm, anchor, turn, weight } = item else { return };
        let Some(glyphs) = glyphs(text, *weight) else { return };
        let width_mm = font::text_width_mm(text, *height_mm, *weight);
        let back_mm = match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width_mm / 2.0,
            Anchor::End => width_mm,
        };
        self.surface.set_fill(Some(fill(colour)));
        self.surface.set_stroke(None);
        let font = self.fonts.of(*weight);
        let size = points(*height_mm);
        let start = point(turn.place(*at, -back_mm, 0.0));
        match turn {
            Turn::Level => self.surface.draw_glyphs(start, &glyphs, font, text, size, false),
            Turn::Up => {
                self.surface.push_transform(&Transform::from_row(0.0, -1.0, 1.0, 0.0, start.x, start.y));
                self.surface.draw_glyphs(Point::from_xy(0.0, 0.0), &glyphs, font, text, size, false);
                self.surface.pop();
            }
        }
    }
}

/// The glyphs of a text, each as far from the next as the face's own rules have it, with the letters it stands for.
fn glyphs(text: &str, weight: Weight) -> Option<Vec<KrillaGlyph>> {
    let setter = font::setter(weight)?;
    let em = f32::from(setter.face.units_per_em());
    let line = setter.set(text);
    let mut ends = text.char_indices().map(|(at, letter)| at + letter.len_utf8());
    let rights = line.glyphs.iter().skip(1).map(|glyph| glyph.right_units).chain([line.width_units]);
    let mut from = 0;
    let set = line.glyphs.iter().zip(rights).map(|(glyph, right)| {
        let to = ends.nth(glyph.letters.saturating_sub(1)).unwrap_or(text.len());
        let range = from..to;
        from = to;
        let advance = (right - glyph.right_units) as f32 / em;
        KrillaGlyph::new(GlyphId::new(u32::from(glyph.glyph.0)), advance, 0.0, 0.0, 0.0, range, None)
    });
    Some(set.collect())
}

fn fill(Colour(red, green, blue): Colour) -> Fill {
    Fill { paint: rgb::Color::new(red, green, blue).into(), ..Fill::default() }
}

fn stroke(item: &Item, Colour(red, green, blue): Colour) -> Stroke {
    let dashes = item.pattern().dashes_mm();
    let dash = StrokeDash { array: dashes.iter().map(|&mm| points(mm)).collect(), offset: 0.0 };
    Stroke {
        paint: rgb::Color::new(red, green, blue).into(),
        width: points(item.width_mm),
        line_join: LineJoin::Round,
        // Round ends would close the gaps.
        line_cap: if dashes.is_empty() { LineCap::Round } else { LineCap::Butt },
        dash: (!dashes.is_empty()).then_some(dash),
        ..Stroke::default()
    }
}

fn line(places: &[PaperPoint], is_closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    for (index, place) in places.iter().enumerate() {
        let Point { x, y } = point(*place);
        if index == 0 {
            path.move_to(x, y);
        } else {
            path.line_to(x, y);
        }
    }
    if is_closed {
        path.close();
    }
    path.finish()
}

/// A circle of four curves, true to three ten-thousandths of its radius.
fn circle(centre: PaperPoint, radius_mm: f64) -> Option<Path> {
    /// How far a curve's handle reaches, in radii, for a quarter of a circle: 4/3 (root of 2, less 1).
    const HANDLE: f64 = 0.552_284_75;
    /// The unit circle in quarters: where each ends, and the way the curve runs there.
    const QUARTERS: [((f64, f64), (f64, f64)); 4] = [
        ((0.0, 1.0), (-1.0, 0.0)),
        ((-1.0, 0.0), (0.0, -1.0)),
        ((0.0, -1.0), (1.0, 0.0)),
        ((1.0, 0.0), (0.0, 1.0)),
    ];
    let at = |x: f64, y: f64| point(centre.moved(x * radius_mm, y * radius_mm));
    let mut path = PathBuilder::new();
    let (mut from, mut runs) = ((1.0, 0.0), (0.0, 1.0));
    let start = at(from.0, from.1);
    path.move_to(start.x, start.y);
    for (to, then) in QUARTERS {
        let first = at(from.0 + runs.0 * HANDLE, from.1 + runs.1 * HANDLE);
        let second = at(to.0 - then.0 * HANDLE, to.1 - then.1 * HANDLE);
        let end = at(to.0, to.1);
        path.cubic_to(first.x, first.y, second.x, second.y, end.x, end.y);
        (from, runs) = (to, then);
    }
    path.close();
    path.finish()
}
