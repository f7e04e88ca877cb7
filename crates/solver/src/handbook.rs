//! Published values, one table a file, each with its source and how far it was verified. Kept in the units of
//! their sources, so that they can be read against them. A label is never promoted: what is only remembered
//! stays *memory*.

pub mod bending;
pub mod boring;
pub mod boxes;
pub mod clearances;
pub mod concrete_screw;
pub mod dowel_bearing;
pub mod duration;
pub mod eye_height;
pub mod gravity;
pub mod lag;
pub mod lifting;
pub mod lead_hole;
pub mod low_voltage;
pub mod machine_screw;
pub mod measuring;
pub mod old_paint;
pub mod placing;
pub mod power_wiring;
pub mod reduction;
pub mod steel_stud;
pub mod viewing;
pub mod withdrawal;
pub mod wood_screw;

use crate::ledger::{Given, Label};

/// A published value with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row<T> {
    /// The value, in the unit that its name says.
    pub value: T,
    /// How far it was verified.
    pub label: Label,
    /// The standard and clause, the publication, or general words.
    pub source: &'static str,
}

impl<T: Copy> Row<T> {
    /// A value seen in its source's own text.
    pub(crate) const fn read(value: T, source: &'static str) -> Self {
        Self { value, label: Label::Read, source }
    }

    /// A value seen in a text that tells what its source says; the text is of no account, the source is named.
    pub(crate) const fn second_hand(value: T, source: &'static str) -> Self {
        Self { value, label: Label::SecondHand, source }
    }

    /// A value worked out from read ones.
    pub(crate) const fn derived(value: T, source: &'static str) -> Self {
        Self { value, label: Label::Derived, source }
    }

    /// An engineering choice on the safe side; `source` is its reason.
    pub(crate) const fn chosen(value: T, source: &'static str) -> Self {
        Self { value, label: Label::Chosen, source }
    }

    /// A value only remembered.
    pub(crate) const fn memory(value: T, source: &'static str) -> Self {
        Self { value, label: Label::Memory, source }
    }

    /// The same source with one of its values.
    pub(crate) const fn with<U: Copy>(&self, value: U) -> Row<U> {
        Row { value, label: self.label, source: self.source }
    }

    /// The value and its label, as a formula takes it.
    #[must_use]
    pub const fn given(&self) -> Given<T> {
        Given { value: self.value, label: self.label, reason: self.source }
    }
}

impl Row<f64> {
    /// The row with the larger value; of equals this one.
    pub(crate) fn larger(self, other: Self) -> Self {
        if other.value > self.value { other } else { self }
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn what_was_read_second_hand_is_labelled_so() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/handbook");
        let files: Vec<String> = std::fs::read_dir(folder)
            .unwrap()
            .map(|entry| std::fs::read_to_string(entry.unwrap().path()).unwrap())
            .collect();
        assert!(files.len() > 20, "all tables");
        let mut second_hand = 0;
        for row in files.iter().flat_map(|file| file.split("Row::").skip(1)) {
            let row = row.split(';').next().unwrap();
            let says = row.contains("second-hand") || row.contains("pages report it");
            assert!(!(row.starts_with("read(") && says), "read at second hand only: {row}");
            assert!(!row.starts_with("second_hand(") || says || row.contains("SOURCE"), "{row}");
            second_hand += usize::from(row.starts_with("second_hand("));
        }
        assert!(second_hand > 20, "{second_hand}");
    }
}
