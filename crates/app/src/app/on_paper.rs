//! The preview of what is taken to the wall on paper: the very pages that are saved, painted from the same scenes.

use crate::canvas::paint::paint_page;
use crate::date::today;
use crate::session::Session;
use crate::theme;
use crate::view_state::POINTS_PER_PAPER_MM;
use crate::widgets::choice::choice;
use crate::widgets::unbroken::unbroken;
use egui::{CentralPanel, Frame, Id, Key, Label, Modifiers, Panel, ScrollArea, Sense, Ui, vec2};
use std::path::{Path, PathBuf};
use std::rc::Rc;
use strikeline_drawing::sheet::{About, Document, PaperSize, SheetKind, Unset, document};
use strikeline_solver::job::Job;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::words::on_paper;

/// Free round a page, in points.
const ROUND: f32 = 16.0;
/// The largest a page is shown, as a share of its true size (chosen: past it the letters are larger than the panels').
const MOST: f64 = 1.6;

/// What a hand asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// To stay.
    Nothing,
    /// To go back to the drawing.
    Leave,
    /// To save the pages.
    Save,
}

/// Which sheets are looked at, on which paper.
#[derive(Clone, Debug)]
pub(super) struct OnPaper {
    kind: Kind,
    paper: PaperSize,
    drawn: Option<Drawn>,
    /// What a file that is saved ends in, unless it is named otherwise.
    ending: &'static str,
    /// Whether it is saved to be printed: the system's viewer is opened on it.
    prints: bool,
    /// What became of the last save.
    said: String,
}

/// One kind of sheet, or all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    One(SheetKind),
    All,
}

impl Kind {
    fn every() -> Vec<Self> {
        SheetKind::ALL.into_iter().map(Self::One).chain([Self::All]).collect()
    }

    fn name(self) -> &'static str {
        match self {
            Self::One(kind) => kind.name(),
            Self::All => on_paper::ALL,
        }
    }

    fn word(self) -> &'static str {
        match self {
            Self::One(kind) => kind.word(),
            Self::All => "sheets",
        }
    }

    fn sheets(self) -> Vec<SheetKind> {
        match self {
            Self::One(kind) => vec![kind],
            Self::All => SheetKind::WHOLE_SET.to_vec(),
        }
    }
}

/// The pages, with what they were drawn from.
#[derive(Clone, Debug)]
struct Drawn {
    plan: Rc<Plan>,
    kind: Kind,
    paper: PaperSize,
    /// The job's file: its name stands in the title block.
    path: Option<PathBuf>,
    document: Rc<Result<Document, Unset>>,
}

impl OnPaper {
    /// The mark-out on the usual paper.
    pub(super) fn begin(session: &Session) -> Self {
        let paper = PaperSize::usual(session.job.units());
        let kind = Kind::One(SheetKind::MarkOut);
        Self { kind, paper, drawn: None, ending: "pdf", prints: false, said: String::new() }
    }

    /// What the customer sees, to be saved as a picture.
    pub(super) fn picture(session: &Session) -> Self {
        Self { kind: Kind::One(SheetKind::Customer), ending: "png", ..Self::begin(session) }
    }

    /// The pages; drawn anew only where plan, kind, paper or the job's file differ from the last time.
    pub(super) fn document(&mut self, session: &mut Session) -> Rc<Result<Document, Unset>> {
        let plan = session.plan();
        if let Some(drawn) = &self.drawn
            && Rc::ptr_eq(&drawn.plan, &plan)
            && (drawn.kind, drawn.paper) == (self.kind, self.paper)
            && drawn.path == session.path
        {
            return Rc::clone(&drawn.document);
        }
        let file = session.path.as_deref().and_then(Path::file_name).unwrap_or_default().to_string_lossy();
        let about = About { file: &file, date: &today() };
        let plans = self.plans(&session.job, &plan);
        let planned: Vec<&Plan> = plans.iter().map(Rc::as_ref).collect();
        let drawn = document(&session.job, &planned, &self.kind.sheets(), self.paper, about);
        let document = Rc::new(drawn);
        let (kind, paper) = (self.kind, self.paper);
        let path = session.path.clone();
        self.drawn = Some(Drawn { plan, kind, paper, path, document: Rc::clone(&document) });
        self.said.clear();
        document
    }

    /// What is drawn: the wall that is looked at; of the whole set every wall, the others with their chosen options.
    fn plans(&self, job: &Job, shown: &Rc<Plan>) -> Vec<Rc<Plan>> {
        let is_there = job.wall(&shown.wall).is_some();
        match self.kind {
            Kind::All if is_there => {
                let one = |wall: &Wall| match wall.id == shown.wall {
                    true => Rc::clone(shown),
                    false => Rc::new(solve(job, &wall.id, None)),
                };
                job.walls.iter().map(one).collect()
            }
            Kind::All | Kind::One(_) => vec![Rc::clone(shown)],
        }
    }

    /// Where the pages would be saved: beside the job.
    pub(super) fn path(&self, session: &Session) -> PathBuf {
        let job = session.path.clone().unwrap_or_else(|| PathBuf::from("job.ron"));
        let stem = job.file_stem().unwrap_or_default().to_string_lossy();
        job.with_file_name(format!("{stem}-{}.{}", self.kind.word(), self.ending))
    }

    /// Whether what is saved next is to be printed.
    pub(super) fn prints(&self) -> bool {
        self.prints
    }

    /// Tells what became of a save.
    pub(super) fn say(&mut self, said: String) {
        self.said = said;
    }

    /// Shows the pages. `closes` is whether Escape is free to leave them.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session, closes: bool) -> Asked {
        let mut asked = Asked::Nothing;
        let document = self.document(session);
        Panel::top("on paper").show(ui, |ui| {
            ui.add_space(4.0);
            asked = self.bar(ui, &document);
            ui.add_space(4.0);
        });
        let frame = Frame::new().fill(theme::desk(ui.theme()));
        CentralPanel::default().frame(frame).show(ui, |ui| match document.as_ref() {
            Ok(document) => {
                ScrollArea::vertical().id_salt("pages").auto_shrink(false).show(ui, |ui| pages(ui, document));
            }
            Err(why) => {
                ui.centered_and_justified(|ui| {
                    ui.add(Label::new(on_paper::not_drawn(&why.to_string())).wrap())
                });
            }
        });
        if closes && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
            asked = Asked::Leave;
        }
        asked
    }

    /// Kind and paper to choose, how many pages that makes, and the way to save them.
    fn bar(&mut self, ui: &mut Ui, document: &Result<Document, Unset>) -> Asked {
        let mut asked = Asked::Nothing;
        ui.horizontal_wrapped(|ui| {
            if ui.button("Back to the drawing").clicked() {
                asked = Asked::Leave;
            }
            ui.separator();
            for kind in Kind::every() {
                ui.selectable_value(&mut self.kind, kind, kind.name());
            }
            ui.separator();
            let entries = PaperSize::ALL.map(|size| size.name().to_owned());
            let held = PaperSize::ALL.iter().position(|size| *size == self.paper);
            ui.allocate_ui(vec2(190.0, theme::TOUCH), |ui| {
                let chosen = choice(ui, Id::unique("paper size"), "Paper", "", &entries, held);
                if let Some(size) = chosen.and_then(|index| PaperSize::ALL.get(index)) {
                    self.paper = *size;
                }
            });
            ui.separator();
            let is_drawn = document.is_ok();
            for (words, prints) in [("Save as\u{2026}", false), ("Print\u{2026}", true)] {
                let mut button = ui.add_enabled(is_drawn, egui::Button::new(words));
                let about = if prints { on_paper::HOW_TO_PRINT } else { "A PDF, SVG or PNG file" };
                button = button.on_hover_text(about);
                if button.clicked() {
                    self.prints = prints;
                    // What is printed has its true size and all its pages in one file.
                    self.ending = if prints { "pdf" } else { self.ending };
                    asked = Asked::Save;
                }
            }
        });
        if let Ok(document) = document {
            let pages = on_paper::pages(document.pages.len(), self.paper.name());
            ui.add(Label::new(unbroken(&format!("{pages} {}", self.said))).wrap());
        }
        asked
    }
}

/// Page under page, as wide as there is room. Only what is in sight is painted.
fn pages(ui: &mut Ui, document: &Document) {
    let room = f64::from(ui.available_width() - 2.0 * ROUND).max(1.0);
    for page in &document.pages {
        let scene = &page.scene;
        let per_mm = (room / scene.width_mm).min(POINTS_PER_PAPER_MM * MOST);
        let size = vec2((scene.width_mm * per_mm) as f32, (scene.height_mm * per_mm) as f32);
        let row = vec2(ui.available_width(), size.y + ROUND);
        let (rect, _) = ui.allocate_exact_size(row, Sense::hover());
        if !ui.is_rect_visible(rect) {
            continue;
        }
        let sheet = egui::Rect::from_center_size(rect.center(), size);
        let painter = ui.painter_at(sheet);
        // Paper is light whatever the window is.
        painter.rect_filled(sheet, 0.0, theme::page());
        paint_page(&painter, sheet.min, scene, per_mm);
    }
}
