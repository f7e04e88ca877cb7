//! Which keys a keypad has, and where each lies on its grid.

use super::entry::{Stroke, Sum};

/// What a field can be written with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Writes {
    /// Its units, as the tape reads them; at most three.
    pub units: &'static [&'static str],
    /// Whether it is read in fractions.
    pub fractions: bool,
}

impl Writes {
    /// What a length is written with.
    pub const LENGTH: Self = Self { units: &["ft", "in", "mm"], fractions: true };
    /// What a mass is written with.
    pub const MASS: Self = Self { units: &["kg", "lb"], fractions: false };
    /// What a force is written with.
    pub const FORCE: Self = Self { units: &["N", "lbf"], fractions: false };
    /// What an angle is written with.
    pub const ANGLE: Self = Self { units: &["deg"], fractions: false };
    /// What has no unit of its own on a keypad.
    pub const BARE: Self = Self { units: &[], fractions: false };
}

/// What a key does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Act {
    /// Writes.
    Write(Stroke),
    /// Takes back the last key.
    Undo,
    /// Takes away all of the text.
    Clear,
    /// Goes on to the next field.
    Next,
    /// Closes the keypad.
    Done,
}

/// A key on the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Key {
    pub(super) act: Act,
    /// Its first column and row, from 0.
    pub(super) at: (u8, u8),
    /// How many columns and rows it takes.
    pub(super) size: (u8, u8),
}

impl Key {
    /// What stands on it.
    pub(super) fn label(&self) -> String {
        match self.act {
            Act::Write(Stroke::Digit(digit)) => digit.to_string(),
            Act::Write(Stroke::Fraction(above, below)) => format!("{above}/{below}"),
            Act::Write(Stroke::Unit(unit)) => unit.to_owned(),
            Act::Write(Stroke::Sum(Sum::Plus)) => "+".to_owned(),
            Act::Write(Stroke::Sum(Sum::Minus)) => "\u{2212}".to_owned(),
            Act::Write(Stroke::Sum(Sum::Times)) => "\u{d7}".to_owned(),
            Act::Write(Stroke::Sum(Sum::Divide)) => "\u{f7}".to_owned(),
            Act::Write(Stroke::Open) => "(".to_owned(),
            Act::Write(Stroke::Close) => ")".to_owned(),
            Act::Undo => "Undo".to_owned(),
            Act::Clear => "Clear".to_owned(),
            Act::Next => "Next".to_owned(),
            Act::Done => "Done".to_owned(),
        }
    }

    /// What it is called, so that no two of them and no other button share a name.
    pub(super) fn name(&self) -> String {
        match self.act {
            Act::Write(Stroke::Digit('.')) => "Key point".to_owned(),
            Act::Write(Stroke::Sum(Sum::Plus)) => "Key plus".to_owned(),
            Act::Write(Stroke::Sum(Sum::Minus)) => "Key minus".to_owned(),
            Act::Write(Stroke::Sum(Sum::Times)) => "Key times".to_owned(),
            Act::Write(Stroke::Sum(Sum::Divide)) => "Key divided by".to_owned(),
            Act::Write(Stroke::Open) => "Key opening parenthesis".to_owned(),
            Act::Write(Stroke::Close) => "Key closing parenthesis".to_owned(),
            Act::Write(_) => format!("Key {}", self.label()),
            Act::Undo => "Undo the last key".to_owned(),
            Act::Clear => "Clear the field".to_owned(),
            Act::Next => "Next field".to_owned(),
            Act::Done => "Close the keypad".to_owned(),
        }
    }
}

/// All keys, and how many columns and rows they take.
pub(super) fn keys(writes: Writes, has_next: bool) -> (Vec<Key>, (u8, u8)) {
    let write = |stroke, column, row| Key { act: Act::Write(stroke), at: (column, row), size: (1, 1) };
    let mut keys = Vec::new();
    let mut top = 0;
    if writes.fractions {
        let eighths = [(1, 8), (1, 4), (3, 8), (1, 2), (5, 8), (3, 4), (7, 8)];
        let sixteenths = [1, 3, 5, 7, 9, 11, 13, 15].map(|above| (above, 16));
        for (row, fractions) in (0..).zip([&eighths[..], &sixteenths[..]]) {
            for (column, (above, below)) in (0..).zip(fractions) {
                keys.push(write(Stroke::Fraction(*above, *below), column, row));
            }
        }
        top = 2;
    }
    for (row, digits) in (top..).zip(["789", "456", "123"]) {
        keys.extend(
            (0..).zip(digits.chars()).map(|(column, digit)| write(Stroke::Digit(digit), column, row)),
        );
    }
    let bottom = top + 3;
    keys.push(Key { size: (2, 1), ..write(Stroke::Digit('0'), 0, bottom) });
    keys.push(write(Stroke::Digit('.'), 2, bottom));
    for (row, sum) in (top..).zip([Sum::Divide, Sum::Times, Sum::Minus, Sum::Plus]) {
        keys.push(write(Stroke::Sum(sum), 3, row));
    }
    keys.push(write(Stroke::Open, 4, top));
    keys.push(write(Stroke::Close, 4, top + 1));
    keys.extend((top..).zip(writes.units).map(|(row, unit)| write(Stroke::Unit(unit), 5, row)));
    let wide = |act, row, rows| Key { act, at: (6, row), size: (2, rows) };
    keys.push(wide(Act::Undo, top, 1));
    keys.push(wide(Act::Clear, top + 1, 1));
    if has_next {
        keys.push(wide(Act::Next, top + 2, 1));
        keys.push(wide(Act::Done, bottom, 1));
    } else {
        keys.push(wide(Act::Done, top + 2, 2));
    }
    (keys, (8, bottom + 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn no_two_keys_share_a_place_or_a_name_and_all_lie_on_the_grid() {
        for writes in [Writes::LENGTH, Writes::MASS, Writes::FORCE, Writes::ANGLE, Writes::BARE] {
            for has_next in [false, true] {
                let (keys, (columns, rows)) = keys(writes, has_next);
                let mut taken = BTreeSet::new();
                let mut names = BTreeSet::new();
                for key in &keys {
                    for column in key.at.0..key.at.0 + key.size.0 {
                        for row in key.at.1..key.at.1 + key.size.1 {
                            assert!(column < columns && row < rows, "{key:?}");
                            assert!(taken.insert((column, row)), "{key:?}");
                        }
                    }
                    assert!(names.insert(key.name()), "{key:?}");
                }
                assert_eq!(keys.iter().any(|key| key.act == Act::Next), has_next);
            }
        }
    }
}
