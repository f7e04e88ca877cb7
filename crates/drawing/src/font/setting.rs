//! A text set on a line by the face's own rules: its ligatures, and its kerning of neighbours. Window and paper
//! both go by this. Not for scripts that run from right to left or stack: those are the reader's own fonts'.

use ttf_parser::gpos::{PairAdjustment, PositioningSubtable};
use ttf_parser::gsub::{LigatureSubstitution, SubstitutionSubtable};
use ttf_parser::opentype_layout::{LayoutTable, LookupSubtable};
use ttf_parser::{Face, GlyphId, Tag};

/// A face with its rules of setting, read once.
pub(crate) struct Setter {
    /// The face itself.
    pub(crate) face: Face<'static>,
    /// Of each step of the ligatures its tables: the first that knows a glyph has the say.
    ligatures: Vec<Vec<LigatureSubstitution<'static>>>,
    /// Of each step of the kerning its tables: the first that knows a pair has the say.
    kerning: Vec<Vec<PairAdjustment<'static>>>,
}

/// A text on its line.
pub(crate) struct SetLine {
    /// Its glyphs, in the order they are read.
    pub(crate) glyphs: Vec<SetGlyph>,
    /// Where the next text would start, in font units from the start of the line.
    pub(crate) width_units: i32,
}

/// A glyph where it stands.
#[derive(Clone, Copy)]
pub(crate) struct SetGlyph {
    /// Which.
    pub(crate) glyph: GlyphId,
    /// Its origin, in font units to the right of the start of the line.
    pub(crate) right_units: i32,
    /// How many characters of the text it stands for: more than one for a ligature.
    pub(crate) letters: usize,
}

impl Setter {
    /// Reads a font file. `None` for a damaged one.
    pub(super) fn of(bytes: &'static [u8]) -> Option<Self> {
        let face = Face::parse(bytes, 0).ok()?;
        let (gsub, gpos) = (face.tables().gsub, face.tables().gpos);
        let ligatures = tables(gsub, *b"liga", |table: SubstitutionSubtable<'static>| match table {
            SubstitutionSubtable::Ligature(table) => Some(table),
            _ => None,
        });
        let kerning = tables(gpos, *b"kern", |table: PositioningSubtable<'static>| match table {
            PositioningSubtable::Pair(table) => Some(table),
            _ => None,
        });
        Some(Self { face, ligatures, kerning })
    }

    /// Sets a text. A character the face lacks is its empty box.
    pub(crate) fn set(&self, text: &str) -> SetLine {
        let wished: Vec<GlyphId> =
            text.chars().map(|character| self.face.glyph_index(character).unwrap_or_default()).collect();
        let mut line = SetLine { glyphs: Vec::with_capacity(wished.len()), width_units: 0 };
        let mut rest = wished.as_slice();
        while let Some((&first, after)) = rest.split_first() {
            let (glyph, taken) = self.ligature(first, after).unwrap_or((first, 0));
            if let Some(last) = line.glyphs.last() {
                line.width_units += self.kerning(last.glyph, glyph);
            }
            line.glyphs.push(SetGlyph { glyph, right_units: line.width_units, letters: taken + 1 });
            line.width_units += i32::from(self.face.glyph_hor_advance(glyph).unwrap_or(0));
            rest = after.get(taken..).unwrap_or_default();
        }
        line
    }

    /// The ligature that a glyph starts, and how many of the glyphs after it are in it.
    fn ligature(&self, first: GlyphId, after: &[GlyphId]) -> Option<(GlyphId, usize)> {
        self.ligatures.iter().flatten().find_map(|table| {
            let set = table.ligature_sets.get(table.coverage.get(first)?)?;
            set.into_iter().find_map(|ligature| {
                let count = usize::from(ligature.components.len());
                let is_here = after.get(..count)?.iter().copied().eq(ligature.components);
                is_here.then_some((ligature.glyph, count))
            })
        })
    }

    /// How much farther right than its own width a glyph puts the next, in font units; mostly to the left.
    fn kerning(&self, left: GlyphId, right: GlyphId) -> i32 {
        let step = |tables: &Vec<PairAdjustment<'static>>| {
            tables.iter().find_map(|table| {
                let covered = table.coverage().get(left)?;
                let (moved, _) = match table {
                    PairAdjustment::Format1 { sets, .. } => sets.get(covered)?.get(right)?,
                    PairAdjustment::Format2 { classes, matrix, .. } => {
                        matrix.get((classes.0.get(left), classes.1.get(right)))?
                    }
                };
                Some(i32::from(moved.x_advance))
            })
        };
        self.kerning.iter().filter_map(step).sum()
    }
}

/// The tables of one kind that a feature of a layout table names, a list for each of its steps.
fn tables<T: LookupSubtable<'static>, Kept>(
    table: Option<LayoutTable<'static>>,
    feature: [u8; 4],
    kept: impl Fn(T) -> Option<Kept>,
) -> Vec<Vec<Kept>> {
    let Some(table) = table else { return Vec::new() };
    let Some(feature) = table.features.find(Tag::from_bytes(&feature)) else { return Vec::new() };
    let steps = feature.lookup_indices.into_iter().filter_map(|index| table.lookups.get(index));
    steps.map(|step| step.subtables.into_iter::<T>().filter_map(&kept).collect()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::font::{FONT_REGULAR, FONT_SEMIBOLD};

    #[test]
    fn each_face_has_one_feature_of_either_name_in_which_the_tables_are_found() {
        for bytes in [FONT_REGULAR, FONT_SEMIBOLD] {
            let setter = Setter::of(bytes).unwrap();
            let count = |table: LayoutTable<'static>, name: &[u8; 4]| {
                table.features.into_iter().filter(|feature| feature.tag == Tag::from_bytes(name)).count()
            };
            assert_eq!(count(setter.face.tables().gsub.unwrap(), b"liga"), 1);
            assert_eq!(count(setter.face.tables().gpos.unwrap(), b"kern"), 1);
            assert!(setter.ligatures.iter().flatten().count() > 0);
            assert!(setter.kerning.iter().flatten().count() > 0);
        }
    }

    #[test]
    fn a_ligature_is_one_glyph_and_the_longest_is_taken() {
        let setter = Setter::of(FONT_REGULAR).unwrap();
        for (text, glyphs) in [("f", 1), ("left", 3), ("off", 2), ("offtake", 5), ("f t", 3)] {
            assert_eq!(setter.set(text).glyphs.len(), glyphs, "{text}");
        }
    }

    #[test]
    fn kerned_letters_stand_closer_and_figures_do_not() {
        let setter = Setter::of(FONT_REGULAR).unwrap();
        let width = |text: &str| setter.set(text).width_units;
        assert!(width("Ta") < width("T") + width("a"));
        assert_eq!(width("17"), width("1") + width("7"));
        let line = setter.set("Ta");
        assert_eq!(line.glyphs[1].right_units + width("a"), line.width_units);
    }
}
