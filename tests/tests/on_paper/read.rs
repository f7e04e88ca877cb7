//! What a PDF file says, read by a library that writes none of ours: sizes, texts, fonts, lines and curves in points
//! from the page's upper left corner.

use lopdf::content::Content;
use lopdf::{Dictionary, Document, Object};
use std::collections::BTreeSet;

#[derive(Debug, Default)]
pub(crate) struct Read {
    pub(crate) pages: Vec<Page>,
    pub(crate) text: String,
    pub(crate) fonts: BTreeSet<Font>,
    pub(crate) title: Option<String>,
    pub(crate) language: Option<String>,
    pub(crate) bookmarks: Vec<String>,
}

#[derive(Debug, Default)]
pub(crate) struct Page {
    pub(crate) wide: f64,
    pub(crate) high: f64,
    pub(crate) text: String,
    pub(crate) lines: Vec<Line>,
    pub(crate) curves: Vec<Curve>,
}

#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Font {
    pub(crate) name: String,
    pub(crate) is_embedded: bool,
}

#[derive(Debug)]
pub(crate) struct Line {
    from: (f64, f64),
    to: (f64, f64),
}

impl Line {
    pub(crate) fn is_level(&self) -> bool {
        (self.from.1 - self.to.1).abs() < 1e-3
    }

    pub(crate) fn long(&self) -> f64 {
        (self.to.0 - self.from.0).hypot(self.to.1 - self.from.1)
    }
}

/// A closed path of curves: the middle and the size of what its ends span.
#[derive(Debug)]
pub(crate) struct Curve {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) wide: f64,
    pub(crate) high: f64,
}

impl Read {
    pub(crate) fn of(bytes: &[u8]) -> Self {
        let file = Document::load_mem(bytes).unwrap();
        let mut read = Self::default();
        let catalog = file.catalog().unwrap();
        read.language = catalog.get(b"Lang").ok().map(text_of);
        if let Ok(about) = file.trailer.get_deref(b"Info", &file).and_then(Object::as_dict) {
            read.title = about.get(b"Title").ok().map(text_of);
        }
        if let Ok(outlines) = catalog.get_deref(b"Outlines", &file).and_then(Object::as_dict) {
            bookmarks(&file, outlines, &mut read.bookmarks);
        }
        for (number, id) in file.get_pages() {
            let dictionary = file.get_object(id).unwrap().as_dict().unwrap();
            let size: Vec<f64> = dictionary
                .get_deref(b"MediaBox", &file)
                .unwrap()
                .as_array()
                .unwrap()
                .iter()
                .map(|side| f64::from(side.as_float().unwrap()))
                .collect();
            let mut page = Page { wide: size[2] - size[0], high: size[3] - size[1], ..Page::default() };
            page.text = file.extract_text(&[number]).unwrap();
            let content = Content::decode(&file.get_page_content(id)).unwrap();
            Pen::default().follow(&content, &mut page);
            read.text.push_str(&page.text);
            read.pages.push(page);
            for font in file.get_page_fonts(id).unwrap().values() {
                read.fonts.insert(font_of(&file, font));
            }
        }
        read
    }
}

/// A text of a dictionary: in Unicode where a mark says so, else in one byte a letter.
fn text_of(object: &Object) -> String {
    let bytes = object.as_str().unwrap();
    match bytes.strip_prefix(&[0xFE, 0xFF]) {
        Some(units) => {
            let units: Vec<u16> = units.chunks(2).map(|two| u16::from_be_bytes([two[0], two[1]])).collect();
            String::from_utf16(&units).unwrap()
        }
        None => bytes.iter().map(|byte| char::from(*byte)).collect(),
    }
}

fn bookmarks(file: &Document, over: &Dictionary, all: &mut Vec<String>) {
    let mut next = over.get_deref(b"First", file).and_then(Object::as_dict).ok();
    while let Some(one) = next {
        all.push(text_of(one.get(b"Title").unwrap()));
        bookmarks(file, one, all);
        next = one.get_deref(b"Next", file).and_then(Object::as_dict).ok();
    }
}

fn font_of(file: &Document, font: &Dictionary) -> Font {
    let name = String::from_utf8(font.get(b"BaseFont").unwrap().as_name().unwrap().to_vec()).unwrap();
    let under = font.get_deref(b"DescendantFonts", file).and_then(Object::as_array).unwrap();
    let under = file.dereference(&under[0]).unwrap().1.as_dict().unwrap();
    let descriptor = under.get_deref(b"FontDescriptor", file).and_then(Object::as_dict).unwrap();
    let is_embedded = [b"FontFile2".as_slice(), b"FontFile3"].iter().any(|key| descriptor.has(key));
    Font { name, is_embedded }
}

/// Where a content stream draws: the matrix that holds, those put aside, and the path that is begun.
struct Pen {
    matrix: [f64; 6],
    aside: Vec<[f64; 6]>,
    path: Vec<(f64, f64)>,
    is_curved: bool,
}

impl Default for Pen {
    fn default() -> Self {
        Self { matrix: [1.0, 0.0, 0.0, 1.0, 0.0, 0.0], aside: Vec::new(), path: Vec::new(), is_curved: false }
    }
}

impl Pen {
    fn follow(mut self, content: &Content, page: &mut Page) {
        for operation in &content.operations {
            let numbers: Vec<f64> =
                operation.operands.iter().filter_map(|it| it.as_float().ok()).map(f64::from).collect();
            match (operation.operator.as_str(), numbers.as_slice()) {
                ("q", _) => self.aside.push(self.matrix),
                ("Q", _) => self.matrix = self.aside.pop().unwrap(),
                ("cm", &[a, b, c, d, e, f]) => self.matrix = times([a, b, c, d, e, f], self.matrix),
                ("m", &[x, y]) => {
                    self.path = vec![self.at(x, y, page)];
                    self.is_curved = false;
                }
                ("l", &[x, y]) => {
                    let to = self.at(x, y, page);
                    page.lines.push(Line { from: *self.path.last().unwrap(), to });
                    self.path.push(to);
                }
                ("c", &[.., x, y]) => {
                    self.path.push(self.at(x, y, page));
                    self.is_curved = true;
                }
                ("h", _) if self.is_curved => {
                    let span = |all: &dyn Fn(&(f64, f64)) -> f64| {
                        let values: Vec<f64> = self.path.iter().map(all).collect();
                        let least = values.iter().copied().fold(f64::MAX, f64::min);
                        (least, values.iter().copied().fold(f64::MIN, f64::max))
                    };
                    let ((left, right), (top, bottom)) = (span(&|at| at.0), span(&|at| at.1));
                    page.curves.push(Curve {
                        x: f64::midpoint(left, right),
                        y: f64::midpoint(top, bottom),
                        wide: right - left,
                        high: bottom - top,
                    });
                }
                _ => {}
            }
        }
    }

    fn at(&self, x: f64, y: f64, page: &Page) -> (f64, f64) {
        let [a, b, c, d, e, f] = self.matrix;
        (a * x + c * y + e, page.high - (b * x + d * y + f))
    }
}

/// One matrix after another, as `cm` puts them (ISO 32000, 8.3.4).
fn times(m: [f64; 6], n: [f64; 6]) -> [f64; 6] {
    [
        m[0] * n[0] + m[1] * n[2],
        m[0] * n[1] + m[1] * n[3],
        m[2] * n[0] + m[3] * n[2],
        m[2] * n[1] + m[3] * n[3],
        m[4] * n[0] + m[5] * n[2] + n[4],
        m[4] * n[1] + m[5] * n[3] + n[5],
    ]
}
