//! Every colour and the type of the window: paper, graphite, chalk blue, lumber, one warm accent. Light reads
//! in the sun, dark in a dim room. No other file makes a colour.

use egui::epaint::text::{FontInsert, FontPriority, InsertFontFamily};
use egui::{Color32, Context, FontFamily, FontId, Stroke, TextStyle, Theme, Visuals};
use strikeline_drawing::font::{FONT_REGULAR, FONT_SEMIBOLD, Weight};
use strikeline_drawing::ink::Ink;
use strikeline_drawing::palette::{self as paper, Colour};
use strikeline_drawing::scene::{Item, ItemKind, Lit};
use strikeline_solver::finding::Level;
use strikeline_solver::plan::piece::Meets;

/// The least height of anything to be tapped, in points.
pub const TOUCH: f32 = 30.0;

/// The least height of a row that changes the job by one tap, in points: a fingertip and the doubt of it (chosen).
pub const TAKEN: f32 = 44.0;

/// The name of the semibold family.
const SEMIBOLD: &str = "sheet-semibold";

/// The colours of a theme.
struct Palette {
    /// The desk around the paper.
    desk: Color32,
    /// The paper: panels.
    paper: Color32,
    /// The wall's face.
    face: Color32,
    /// What stands proud of it.
    proud: Color32,
    /// What is written in.
    field: Color32,
    /// Lines and text.
    graphite: Color32,
    /// Dimensions, details, names.
    pencil: Color32,
    /// Hatches, and lines of what is assumed.
    pale: Color32,
    /// Extension lines.
    extension: Color32,
    /// Text of what is assumed.
    assumed: Color32,
    /// Lines between parts of the window.
    rule: Color32,
    chalk: Color32,
    chalk_pale: Color32,
    /// What is struck, drilled or cut already.
    done: Color32,
    lumber: Color32,
    lumber_tint: Color32,
    lumber_doubt: Color32,
    plate: Color32,
    /// A display that is off.
    glass: Color32,
    tape: Color32,
    /// What is selected or held, and what a fastener must not meet.
    accent: Color32,
    accent_tint: Color32,
}

const LIGHT: Palette = Palette {
    desk: Color32::from_rgb(0xf3, 0xf1, 0xec),
    paper: Color32::from_rgb(0xfa, 0xf9, 0xf6),
    face: Color32::from_rgb(0xff, 0xff, 0xfd),
    proud: Color32::from_rgb(0xf2, 0xf1, 0xed),
    field: Color32::from_rgb(0xff, 0xff, 0xff),
    graphite: Color32::from_rgb(0x22, 0x25, 0x29),
    pencil: Color32::from_rgb(0x4d, 0x53, 0x5a),
    pale: Color32::from_rgb(0x85, 0x8b, 0x92),
    extension: Color32::from_rgb(0x7b, 0x81, 0x88),
    assumed: Color32::from_rgb(0x68, 0x6e, 0x75),
    rule: Color32::from_rgb(0xd8, 0xd4, 0xcb),
    chalk: Color32::from_rgb(0x1f, 0x5f, 0xa8),
    chalk_pale: Color32::from_rgb(0x5f, 0x8d, 0xbf),
    done: Color32::from_rgb(0x0f, 0x70, 0x68),
    lumber: Color32::from_rgb(0x92, 0x62, 0x2c),
    lumber_tint: Color32::from_rgb(0xf7, 0xec, 0xdb),
    lumber_doubt: Color32::from_rgb(0xec, 0xd8, 0xb9),
    plate: Color32::from_rgb(0xe2, 0xe5, 0xe9),
    glass: Color32::from_rgb(0x33, 0x38, 0x3f),
    tape: Color32::from_rgb(0x5c, 0x6a, 0x2e),
    accent: Color32::from_rgb(0xb6, 0x3a, 0x07),
    accent_tint: Color32::from_rgb(0xfb, 0xe3, 0xd6),
};

const DARK: Palette = Palette {
    desk: Color32::from_rgb(0x1b, 0x1d, 0x20),
    paper: Color32::from_rgb(0x22, 0x25, 0x29),
    face: Color32::from_rgb(0x26, 0x29, 0x2d),
    proud: Color32::from_rgb(0x31, 0x35, 0x3a),
    field: Color32::from_rgb(0x18, 0x1a, 0x1d),
    graphite: Color32::from_rgb(0xe6, 0xe3, 0xdc),
    pencil: Color32::from_rgb(0xb4, 0xb6, 0xb6),
    pale: Color32::from_rgb(0x7d, 0x82, 0x87),
    extension: Color32::from_rgb(0x8d, 0x93, 0x99),
    assumed: Color32::from_rgb(0x98, 0x9d, 0xa2),
    rule: Color32::from_rgb(0x3b, 0x3f, 0x44),
    chalk: Color32::from_rgb(0x7f, 0xb4, 0xf0),
    chalk_pale: Color32::from_rgb(0x61, 0x89, 0xb8),
    done: Color32::from_rgb(0x5c, 0xd6, 0xc4),
    lumber: Color32::from_rgb(0xd0, 0xa0, 0x66),
    lumber_tint: Color32::from_rgb(0x37, 0x30, 0x27),
    lumber_doubt: Color32::from_rgb(0x4d, 0x40, 0x2e),
    plate: Color32::from_rgb(0x43, 0x48, 0x4e),
    glass: Color32::from_rgb(0x0c, 0x0d, 0x0f),
    tape: Color32::from_rgb(0xb2, 0xc1, 0x7c),
    accent: Color32::from_rgb(0xff, 0x8f, 0x53),
    accent_tint: Color32::from_rgb(0x53, 0x33, 0x22),
};

fn palette(theme: Theme) -> &'static Palette {
    match theme {
        Theme::Light => &LIGHT,
        Theme::Dark => &DARK,
    }
}

/// How an item of the drawing is painted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Paint {
    /// Its lines and text.
    pub stroke: Color32,
    /// What fills it.
    pub fill: Color32,
}

/// The colours of an item of the drawing.
#[must_use]
pub fn paint(theme: Theme, item: &Item) -> Paint {
    let palette = palette(theme);
    let (stroke, fill) = plain(palette, item.ink);
    let pale = match item.kind {
        ItemKind::Text { .. } => palette.assumed,
        _ if stroke == palette.chalk => palette.chalk_pale,
        _ => palette.pale,
    };
    let keeps_fill = item.ink.keeps_fill();
    match (item.lit, item.assumed) {
        (Lit::No, false) => Paint { stroke, fill },
        (Lit::No, true) => Paint { stroke: pale, fill },
        (Lit::Selected | Lit::Held, _) if keeps_fill => Paint { stroke: palette.accent, fill },
        (Lit::Selected | Lit::Held, _) => {
            let solid = fill == stroke;
            Paint { stroke: palette.accent, fill: if solid { palette.accent } else { palette.accent_tint } }
        }
    }
}

/// The colours of an item on paper, whatever the theme.
#[must_use]
pub fn on_paper(item: &Item) -> Paint {
    let on_paper = paper::paint(item);
    Paint { stroke: printed(on_paper.stroke), fill: printed(on_paper.fill) }
}

/// A page that nothing is drawn on.
#[must_use]
pub fn page() -> Color32 {
    printed(paper::PAPER)
}

fn printed(Colour(red, green, blue): Colour) -> Color32 {
    Color32::from_rgb(red, green, blue)
}

fn plain(p: &Palette, ink: Ink) -> (Color32, Color32) {
    match ink {
        Ink::WallFace | Ink::LabelGround => (p.face, p.face),
        Ink::LabelGroundProud => (p.proud, p.proud),
        Ink::LabelGroundOff => (p.desk, p.desk),
        Ink::Feature | Ink::OpenEnd => (p.graphite, p.face),
        Ink::FeatureProud => (p.graphite, p.proud),
        Ink::FeatureDetail | Ink::PieceDetail | Ink::Bracket => (p.pale, p.face),
        Ink::Ground | Ink::Hatch => (p.pale, p.pale),
        Ink::Hidden => (p.pencil, p.lumber_tint),
        Ink::Lumber | Ink::LumberMet => (p.lumber, p.lumber_tint),
        Ink::LumberCentre | Ink::Hit => (p.lumber, p.lumber),
        Ink::LumberDoubt => (p.lumber_doubt, p.lumber_doubt),
        Ink::PieceTape => (p.tape, p.tape),
        Ink::PieceFace | Ink::Plate => (p.graphite, p.plate),
        Ink::Picture => (p.graphite, p.glass),
        Ink::Hole(Meets::Hidden | Meets::OffWall) => (p.accent, p.accent),
        Ink::WallEdge
        | Ink::Floor
        | Ink::Piece
        | Ink::Sheet
        | Ink::DimensionText
        | Ink::SheetText
        | Ink::Hole(Meets::Stud | Meets::StudEdge | Meets::Board | Meets::Masonry | Meets::NotKnown) => {
            (p.graphite, p.graphite)
        }
        Ink::Port | Ink::CableRun | Ink::Dimension | Ink::DimensionTick | Ink::Label => (p.pencil, p.pencil),
        Ink::Extension => (p.extension, p.extension),
        Ink::Entry => (p.pencil, p.face),
        Ink::ChalkLine | Ink::Mark => (p.chalk, p.chalk),
        Ink::Done => (p.done, p.done),
        Ink::Sweep | Ink::ControlLine => (p.chalk_pale, p.chalk_pale),
    }
}

/// The inks of the strip beside the drawing.
#[derive(Clone, Copy, Debug)]
pub struct Strip {
    /// What it is drawn on: the drawing's own desk.
    pub ground: Color32,
    /// Lines.
    pub line: Color32,
    /// Names.
    pub quiet: Color32,
    /// The feet of rows, and what is known at a look alone.
    pub rule: Color32,
    /// What holds, and the best place.
    pub chalk: Color32,
    /// What is too little.
    pub wrong: Color32,
    /// Counts.
    pub wood: Color32,
    /// Under counts.
    pub wood_tint: Color32,
    /// Where the piece is.
    pub present: Color32,
}

/// The inks of the strip; pale ones while a hand is on what changes it.
#[must_use]
pub fn strip(theme: Theme, is_pale: bool) -> Strip {
    let p = palette(theme);
    let or_pale = |ink: Color32, pale: Color32| if is_pale { pale } else { ink };
    Strip {
        ground: p.desk,
        line: or_pale(p.graphite, p.pale),
        quiet: p.pencil,
        rule: or_pale(p.pale, p.rule),
        chalk: or_pale(p.chalk, p.chalk_pale),
        wrong: or_pale(p.accent, p.accent_tint),
        wood: or_pale(p.lumber, p.lumber_doubt),
        wood_tint: p.lumber_tint,
        present: p.graphite,
    }
}

/// The desk that the drawing lies on.
#[must_use]
pub fn desk(theme: Theme) -> Color32 {
    palette(theme).desk
}

/// What is selected, held or wrong.
#[must_use]
pub fn accent(theme: Theme) -> Color32 {
    palette(theme).accent
}

/// What is said beside the main thing.
#[must_use]
pub fn quiet(theme: Theme) -> Color32 {
    palette(theme).pencil
}

/// A finding's level; a sign and a word stand beside it.
#[must_use]
pub fn level(theme: Theme, level: Level) -> Color32 {
    let palette = palette(theme);
    match level {
        Level::Stop => palette.accent,
        Level::Caution => palette.lumber,
        Level::Note => palette.pencil,
    }
}

/// The typeface of the drawing at a weight.
#[must_use]
pub fn font(size: f32, weight: Weight) -> FontId {
    match weight {
        Weight::Regular => FontId::new(size, FontFamily::Proportional),
        Weight::Semibold => FontId::new(size, semibold()),
    }
}

fn semibold() -> FontFamily {
    FontFamily::Name(SEMIBOLD.into())
}

/// Puts fonts and both themes into a context. Once, before the first frame.
pub fn install(context: &Context) {
    let insert = |name: &str, bytes: &'static [u8], family: FontFamily| {
        let family = InsertFontFamily { family, priority: FontPriority::Highest };
        FontInsert::new(name, egui::FontData::from_static(bytes), vec![family])
    };
    context.add_font(insert("sheet-regular", FONT_REGULAR, FontFamily::Proportional));
    context.add_font(insert(SEMIBOLD, FONT_SEMIBOLD, semibold()));
    for theme in [Theme::Light, Theme::Dark] {
        context.set_visuals_of(theme, visuals(theme));
    }
    // Where the system does not say: paper is light.
    context.options_mut(|options| options.fallback_theme = Theme::Light);
    context.all_styles_mut(|style| {
        let size = |points| FontId::new(points, FontFamily::Proportional);
        style.text_styles.insert(TextStyle::Body, size(14.0));
        style.text_styles.insert(TextStyle::Button, size(14.0));
        style.text_styles.insert(TextStyle::Small, size(12.0));
        style.text_styles.insert(TextStyle::Heading, FontId::new(15.0, semibold()));
        style.spacing.interact_size.y = TOUCH;
        style.spacing.button_padding = egui::vec2(10.0, 5.0);
        style.spacing.item_spacing = egui::vec2(8.0, 5.0);
    });
}

fn visuals(theme: Theme) -> Visuals {
    let palette = palette(theme);
    let mut visuals = match theme {
        Theme::Light => Visuals::light(),
        Theme::Dark => Visuals::dark(),
    };
    visuals.panel_fill = palette.paper;
    visuals.window_fill = palette.paper;
    visuals.window_stroke = Stroke::new(1.0, palette.rule);
    visuals.extreme_bg_color = palette.field;
    visuals.text_edit_bg_color = Some(palette.field);
    visuals.faint_bg_color = palette.proud;
    visuals.error_fg_color = palette.accent;
    visuals.warn_fg_color = palette.lumber;
    visuals.weak_text_color = Some(palette.pencil);
    visuals.hyperlink_color = palette.chalk;
    visuals.selection.bg_fill = palette.accent_tint;
    visuals.selection.stroke = Stroke::new(1.5, palette.accent);
    let widgets = &mut visuals.widgets;
    for state in [
        &mut widgets.noninteractive,
        &mut widgets.inactive,
        &mut widgets.hovered,
        &mut widgets.active,
        &mut widgets.open,
    ] {
        state.corner_radius = egui::CornerRadius::same(2);
        state.fg_stroke = Stroke::new(1.0, palette.graphite);
        state.bg_fill = palette.proud;
        state.weak_bg_fill = palette.proud;
        state.bg_stroke = Stroke::new(1.0, palette.rule);
        state.expansion = 0.0;
    }
    widgets.hovered.bg_stroke = Stroke::new(1.0, palette.pencil);
    widgets.active.bg_stroke = Stroke::new(1.5, palette.accent);
    visuals
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_drawing::paper::PaperPoint;
    use strikeline_drawing::scene::{Anchor, Turn};

    /// Relative luminance (WCAG 2.1, definition; from memory).
    fn luminance(colour: Color32) -> f64 {
        let linear = |byte: u8| {
            let share = f64::from(byte) / 255.0;
            if share <= 0.040_45 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * linear(colour.r()) + 0.7152 * linear(colour.g()) + 0.0722 * linear(colour.b())
    }

    fn contrast(a: Color32, b: Color32) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn the_system_s_theme_is_followed_and_paper_is_light_where_it_does_not_say() {
        let context = Context::default();
        install(&context);
        context.options(|options| {
            assert_eq!(options.theme_preference, egui::ThemePreference::System);
            assert_eq!(options.fallback_theme, Theme::Light);
        });
    }

    /// WCAG 2.1 AA: text 4.5 to 1 (1.4.3), lines that tell something 3 to 1 (1.4.11); from memory.
    #[test]
    fn what_is_read_stands_out_from_what_it_is_on() {
        for theme in [Theme::Light, Theme::Dark] {
            let p = palette(theme);
            let holds = |inks: &[Color32], grounds: &[Color32], least: f64| {
                for (ink, ground) in
                    inks.iter().flat_map(|ink| grounds.iter().map(move |ground| (ink, ground)))
                {
                    let found = contrast(*ink, *ground);
                    assert!(found >= least, "{theme:?}: {ink:?} on {ground:?}: {found:.2}");
                }
            };
            let grounds = [p.paper, p.face, p.desk, p.field, p.proud];
            holds(&[p.graphite, p.pencil, p.chalk, p.accent, p.done, p.lumber, p.assumed], &grounds, 4.5);
            // What is selected: a list's row, a thing that is lit.
            holds(&[p.graphite, p.pencil, p.accent], &[p.accent_tint], 4.5);
            holds(&[p.pale, p.chalk_pale, p.extension, p.tape], &[p.face, p.desk, p.paper], 3.0);
            holds(&[p.graphite], &[p.plate, p.lumber_tint, p.lumber_doubt], 4.5);
        }
    }

    #[test]
    fn a_page_is_looked_at_in_the_colours_that_it_is_printed_in() {
        let item = |ink| Item {
            ink,
            subject: None,
            kind: ItemKind::Polygon { points: Vec::new(), filled: true, outlined: false },
            assumed: false,
            lit: Lit::No,
            width_mm: 0.2,
        };
        assert_eq!(on_paper(&item(Ink::LabelGroundOff)).fill, page(), "as the page under it");
        let written = paper::paint(&item(Ink::ChalkLine)).stroke;
        assert_eq!(on_paper(&item(Ink::ChalkLine)).stroke.to_hex(), format!("{written}ff"));
    }

    /// What is painted is of these inks alone.
    #[test]
    fn each_text_of_a_drawing_is_painted_in_an_ink_that_reads() {
        let text = ItemKind::Text {
            at: PaperPoint::default(),
            text: "4".to_owned(),
            height_mm: 3.8,
            anchor: Anchor::Start,
            turn: Turn::Level,
            weight: Weight::Regular,
        };
        let items = [Ink::DimensionText, Ink::Label, Ink::SheetText].map(|ink| Item {
            ink,
            subject: None,
            kind: text.clone(),
            assumed: false,
            lit: Lit::No,
            width_mm: ink.width_mm(),
        });
        for theme in [Theme::Light, Theme::Dark] {
            let p = palette(theme);
            for assumed in [false, true] {
                for item in &items {
                    let ink = paint(theme, &Item { assumed, ..item.clone() }).stroke;
                    for ground in [p.face, p.desk] {
                        assert!(contrast(ink, ground) >= 4.5, "{theme:?}: {item:?}");
                    }
                }
            }
        }
    }
}
