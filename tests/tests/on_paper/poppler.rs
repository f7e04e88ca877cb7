//! The same files read by another program, where it is installed: nothing is asked where it is not.

use super::{demos, drawn, packed};
use std::process::Command;
use strikeline_drawing::pdf::pdf;
use strikeline_drawing::scene::ItemKind;
use strikeline_drawing::sheet::{PaperSize, SheetKind};

/// What a program prints; `None` where it is not there.
fn said(program: &str, arguments: &[&str]) -> Option<String> {
    let done = Command::new(program).args(arguments).output().ok()?;
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    Some(String::from_utf8(done.stdout).unwrap())
}

#[test]
fn another_reader_finds_every_text_and_both_fonts() {
    let folder = tempfile::tempdir().unwrap();
    for (name, job) in demos() {
        let document = drawn(&job, &SheetKind::WHOLE_SET, PaperSize::Letter);
        let path = folder.path().join(format!("{name}.pdf"));
        std::fs::write(&path, pdf(&document).unwrap()).unwrap();
        let path = path.to_str().unwrap();
        // In the order in which it was drawn.
        let Some(text) = said("pdftotext", &["-raw", path, "-"]) else { return };
        let text = packed(&text);
        for item in document.pages.iter().flat_map(|page| &page.scene.items) {
            // What is turned, and what is stacked, is pieced together otherwise by a reader.
            if let ItemKind::Text { text: written, height_mm, .. } = &item.kind
                && item.subject.is_none()
                && *height_mm > 3.0
            {
                assert!(text.contains(&packed(written)), "{name}: {written}");
            }
        }
        let fonts = said("pdffonts", &[path]).unwrap();
        let rows: Vec<&str> = fonts.lines().skip(2).collect();
        assert_eq!(rows.len(), 2, "{fonts}");
        // Embedded, a subset, and with a table from glyphs to letters.
        assert!(rows.iter().all(|row| row.contains(" yes yes yes ")), "{fonts}");
    }
}
