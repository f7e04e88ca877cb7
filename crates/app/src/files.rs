//! Jobs on the disk: read with care, written without ever leaving a torn file.

pub mod error;
pub mod job_file;
mod place;
pub mod save;
