//! Fields and rows that know quantities but no job.

pub mod choice;
pub mod quantity_field;
pub mod row;
