//! What is taken to the wall on paper: pages in paper millimetres, painted from the same scenes as the window. A sheet
//! is a file here that gives its pages; framing and numbering them is the same for all.

mod carry;
mod customer;
mod elevation;
mod flow;
mod handover;
mod leaf;
mod list;
mod mark_out;
mod size;
mod strokes;
mod template;
mod title_block;
mod unset;
mod wrap;

pub use size::{BORDER_MM, PaperSize};
pub use unset::Unset;

use crate::scene::Scene;
use leaf::Leaf;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::words::on_paper;

/// A kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetKind {
    /// The elevation alone.
    Elevation,
    /// The elevation, and all that is done at the wall in its order.
    MarkOut,
    /// The plate at full size, in tiles.
    Template,
    /// What to bring, for the whole job.
    Carry,
    /// The option in plain words and a picture, for the customer.
    Customer,
    /// What was planned and what was done.
    Handover,
}

impl SheetKind {
    /// Every kind, in the order in which they are offered.
    pub const ALL: [Self; 6] =
        [Self::Elevation, Self::MarkOut, Self::Template, Self::Carry, Self::Customer, Self::Handover];

    /// What makes a whole set: the elevation alone is the first page of the mark-out.
    pub const WHOLE_SET: [Self; 5] =
        [Self::MarkOut, Self::Template, Self::Carry, Self::Customer, Self::Handover];

    /// The word for it on the command line.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Elevation => "elevation",
            Self::MarkOut => "mark-out",
            Self::Template => "template",
            Self::Carry => "carry",
            Self::Customer => "customer",
            Self::Handover => "handover",
        }
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Elevation => on_paper::ELEVATION,
            Self::MarkOut => on_paper::MARK_OUT,
            Self::Template => on_paper::TEMPLATE,
            Self::Carry => on_paper::CARRY,
            Self::Customer => on_paper::CUSTOMER,
            Self::Handover => on_paper::HANDOVER,
        }
    }

    /// Whether it is of the whole job, and so made once however many walls there are.
    fn is_of_job(self) -> bool {
        self == Self::Carry
    }

    fn leaves(self, ask: &Ask<'_>) -> Vec<Leaf> {
        match self {
            Self::Elevation => elevation::leaves(ask, on_paper::ELEVATION),
            Self::MarkOut => mark_out::leaves(ask),
            Self::Template => template::leaves(ask),
            Self::Carry => carry::leaves(ask),
            Self::Customer => customer::leaves(ask),
            Self::Handover => handover::leaves(ask),
        }
    }
}

/// What a title block says that no job knows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct About<'a> {
    /// The name of the job's file; empty where it has none yet.
    pub file: &'a str,
    /// The date, as it is to stand there.
    pub date: &'a str,
}

/// What a sheet is drawn of.
pub(crate) struct Ask<'a> {
    pub(crate) job: &'a Job,
    pub(crate) plan: &'a Plan,
    /// All plans that are drawn, each of another wall.
    pub(crate) planned: &'a [&'a Plan],
    pub(crate) paper: PaperSize,
    pub(crate) about: About<'a>,
}

/// Pages that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// What they are called.
    pub title: String,
    /// The pages, at least one where there is a plan and a kind.
    pub pages: Vec<Page>,
}

/// A page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// What is on it.
    pub scene: Scene,
    /// What begins on it.
    pub bookmarks: Vec<Bookmark>,
}

/// Something that is found by its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Bookmark {
    /// Its name.
    pub words: String,
    /// How deep it stands: 0 for a sheet, 1 for a part of it, 2 for a part of that.
    pub depth: usize,
    /// Where on its page it begins.
    pub y_mm: f64,
}

/// Draws sheets of these kinds for each plan of a job.
///
/// # Errors
/// Which text cannot be set, where the bundled typeface lacks a letter of it.
pub fn document(
    job: &Job,
    plans: &[&Plan],
    kinds: &[SheetKind],
    paper: PaperSize,
    about: About<'_>,
) -> Result<Document, Unset> {
    let mut pages = Vec::new();
    for (index, plan) in plans.iter().enumerate() {
        let ask = Ask { job, plan, planned: plans, paper, about };
        for kind in kinds.iter().filter(|kind| index == 0 || !kind.is_of_job()) {
            pages.extend(sheet(&ask, *kind));
        }
    }
    let document = Document { title: on_paper::title(job), pages };
    unset::check(&document)?;
    Ok(document)
}

/// The pages of one sheet, framed and numbered.
fn sheet(ask: &Ask<'_>, kind: SheetKind) -> Vec<Page> {
    let leaves = kind.leaves(ask);
    let of = leaves.len();
    let finished = leaves.into_iter().enumerate().map(|(index, mut leaf)| {
        title_block::draw(&mut leaf, ask, kind.is_of_job(), index + 1, of);
        let mut bookmarks = leaf.bookmarks;
        if index == 0 {
            let words = if kind.is_of_job() {
                kind.name().to_owned()
            } else {
                on_paper::sheet_of(kind.name(), ask.job, ask.plan)
            };
            bookmarks.insert(0, Bookmark { words, depth: 0, y_mm: BORDER_MM });
        }
        Page { scene: leaf.scene, bookmarks }
    });
    finished.collect()
}

#[cfg(test)]
mod tests;
