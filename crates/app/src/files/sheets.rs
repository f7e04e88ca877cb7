//! Sheets on the disk: as PDF, SVG or PNG, by the ending of the name. Each file is whole before it takes its name.

use super::save::replace;
use std::path::{Path, PathBuf};
use strikeline_drawing::pdf::pdf;
use strikeline_drawing::png::png;
use strikeline_drawing::sheet::Document;
use strikeline_drawing::svg::svg;

/// What sheets are written as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetFormat {
    /// All pages in one file.
    Pdf,
    /// A file a page.
    Svg,
    /// A file a page.
    Png,
}

impl SheetFormat {
    /// Every format, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Pdf, Self::Svg, Self::Png];

    /// What names of such files end in.
    #[must_use]
    pub fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Png => "png",
        }
    }

    /// The format that a name ends in, in capitals or not.
    #[must_use]
    pub fn of(path: &Path) -> Option<Self> {
        let ending = path.extension()?;
        Self::ALL.into_iter().find(|format| ending.eq_ignore_ascii_case(format.ending()))
    }
}

/// What can go wrong with sheets.
#[derive(Debug, thiserror::Error)]
pub enum SheetError {
    /// The name does not end as any format does.
    #[error("sheets are written as PDF, SVG or PNG; end the name in .pdf, .svg or .png: {}", path.display())]
    Ending {
        /// The name.
        path: PathBuf,
    },
    /// A page could not be drawn.
    #[error("cannot draw the sheet ({why}); choose smaller paper: {}", path.display())]
    NotDrawn {
        /// What the writer says.
        why: String,
        /// The file.
        path: PathBuf,
    },
    /// It could not be written.
    #[error("cannot write the sheet ({why}); choose another place: {}", path.display())]
    NotWritten {
        /// The system's word.
        why: String,
        /// The file.
        path: PathBuf,
    },
}

/// Writes the pages of a document: as PDF in one file, else the first under the name given, the others `-2`, `-3`.
/// Gives the files in their order. What was there under those names is replaced.
///
/// # Errors
/// What is wrong and what to do. All is drawn before anything is written; a file that cannot be written leaves the ones
/// before it, and whatever was there under its own name.
pub fn write_sheets(document: &Document, path: &Path) -> Result<Vec<PathBuf>, SheetError> {
    let format = SheetFormat::of(path).ok_or_else(|| SheetError::Ending { path: path.to_owned() })?;
    let not_drawn = |why: String| SheetError::NotDrawn { why, path: path.to_owned() };
    let pages = document.pages.iter();
    let files: Vec<Vec<u8>> = match format {
        SheetFormat::Pdf => vec![pdf(document).map_err(not_drawn)?],
        SheetFormat::Svg => pages.map(|page| svg(&page.scene).into_bytes()).collect(),
        SheetFormat::Png => {
            pages.map(|page| png(&page.scene)).collect::<Result<_, _>>().map_err(not_drawn)?
        }
    };
    let mut written = Vec::new();
    for (path, bytes) in names(document, path).into_iter().zip(&files) {
        replace(&path, bytes, None)
            .map_err(|why| SheetError::NotWritten { why: why.to_string(), path: path.clone() })?;
        written.push(path);
    }
    Ok(written)
}

/// The files that a document is written to under a name.
#[must_use]
pub fn names(document: &Document, path: &Path) -> Vec<PathBuf> {
    let count = if SheetFormat::of(path) == Some(SheetFormat::Pdf) { 1 } else { document.pages.len() };
    (0..count).map(|index| numbered(path, index)).collect()
}

/// The first file has the name given, the others `-2`, `-3` before its ending.
fn numbered(path: &Path, index: usize) -> PathBuf {
    if index == 0 {
        return path.to_owned();
    }
    let mut name = path.file_stem().unwrap_or_default().to_owned();
    name.push(format!("-{}", index + 1));
    if let Some(ending) = path.extension() {
        name.push(".");
        name.push(ending);
    }
    path.with_file_name(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ending_tells_the_format() {
        for (name, format) in [
            ("a.pdf", Some(SheetFormat::Pdf)),
            ("a.b.SVG", Some(SheetFormat::Svg)),
            ("a.png", Some(SheetFormat::Png)),
            ("a.jpeg", None),
            ("pdf", None),
        ] {
            assert_eq!(SheetFormat::of(Path::new(name)), format, "{name}");
        }
    }

    #[test]
    fn further_pages_are_numbered_before_the_ending() {
        assert_eq!(numbered(Path::new("out/den.svg"), 0), Path::new("out/den.svg"));
        assert_eq!(numbered(Path::new("out/den.v1.svg"), 2), Path::new("out/den.v1-3.svg"));
    }
}
