//! `strikeline sheet`: which sheets, on which paper, to which file.

use super::{Planned, output};
use crate::date::today;
use crate::files::sheets::write_sheets;
use clap::Args;
use std::io::Write;
use std::path::PathBuf;
use strikeline_drawing::sheet::{About, PaperSize, SheetKind, document};
use strikeline_solver::plan::Plan;

/// What is asked for.
#[derive(Args)]
pub(super) struct SheetArguments {
    /// The job.
    job: PathBuf,
    /// The file to write, ending in .pdf, .svg or .png; of SVG and PNG further pages are numbered -2, -3.
    #[arg(long)]
    out: PathBuf,
    /// What to draw: elevation, mark-out, template, carry, customer, handover or all.
    #[arg(long, default_value = "mark-out", value_parser = kinds)]
    kind: Kinds,
    /// The paper: letter, tabloid, ansi-c, ansi-d, a4, a3, a2 or a1; letter where not given, a4 for a metric job.
    #[arg(long, value_parser = paper)]
    paper: Option<PaperSize>,
    /// The date for the title block, as it is to stand there; today's where not given.
    #[arg(long)]
    date: Option<String>,
    /// The option to draw; may be given once a wall.
    #[arg(long = "option")]
    options: Vec<String>,
}

/// The kinds of sheets asked for.
#[derive(Clone)]
struct Kinds(Vec<SheetKind>);

/// All there is, without what another holds already.
const ALL: &str = "all";

fn kinds(text: &str) -> Result<Kinds, String> {
    if text == ALL {
        return Ok(Kinds(SheetKind::WHOLE_SET.to_vec()));
    }
    let named = SheetKind::ALL.into_iter().find(|kind| kind.word() == text);
    named.map(|kind| Kinds(vec![kind])).ok_or_else(|| {
        let words: Vec<&str> = SheetKind::ALL.into_iter().map(SheetKind::word).chain([ALL]).collect();
        format!("there are: {}", words.join(", "))
    })
}

fn paper(text: &str) -> Result<PaperSize, String> {
    let word = |size: PaperSize| size.name().to_lowercase().replace(' ', "-");
    PaperSize::ALL.into_iter().find(|size| word(*size) == text.to_lowercase()).ok_or_else(|| {
        let words: Vec<String> = PaperSize::ALL.into_iter().map(word).collect();
        format!("there are: {}", words.join(", "))
    })
}

/// Draws and writes them, and prints the files.
pub(super) fn sheet(arguments: &SheetArguments, out: &mut dyn Write) -> Result<u8, String> {
    let SheetArguments { job: path, out: file, kind, paper, date, options } = arguments;
    let planned = Planned::read(path, options)?;
    let job = &planned.job;
    let plans: Vec<&Plan> = planned.plans.iter().collect();
    let paper = paper.unwrap_or_else(|| PaperSize::usual(job.units()));
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let date = date.clone().unwrap_or_else(today);
    let about = About { file: &name, date: &date };
    let document =
        document(job, &plans, &kind.0, paper, about).map_err(|why| format!("{why}: {}", path.display()))?;
    for written in write_sheets(&document, file).map_err(|why| why.to_string())? {
        output::write(out, &format!("{}\n", written.display()))?;
    }
    Ok(planned.code())
}
