//! Quantities as people write and read them.
//!
//! Reading works on exact fractions and quantises once, at the end: a length to a nanometre (48 1/2 in is
//! 1231.9 mm and nothing near it), any other quantity to a millionth of its unit. Printing is for the eye and
//! rounds to what the tape shows; the file form is for the job's file and loses nothing.

mod close;
mod decimal;
mod error;
mod file_form;
mod graduation;
mod literal;
mod measure;
mod nanometre;
mod print;
#[cfg(test)]
mod reading_tests;
mod scan;
mod serde_text;
mod sum;

pub use close::{Closing, close, close_signed};
pub use error::ReadError;
pub use file_form::{
    write_angle, write_force, write_force_per_length, write_length, write_mass, write_ratio, write_stress,
};
pub use graduation::{Graduation, Style};
pub use measure::{
    read_angle, read_force, read_force_per_length, read_length, read_length_in_file, read_mass, read_ratio,
    read_stress,
};
pub use print::Parts;
pub use serde_text::Offset;
