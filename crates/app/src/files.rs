//! Jobs on the disk: read with care, written without ever leaving a torn file. And what the program keeps of
//! its own.

pub mod error;
mod fault;
pub mod folder;
pub mod home;
pub mod job_file;
pub mod journal;
pub mod pictures;
mod place;
pub mod recent;
pub mod save;
pub mod screens;
pub mod shelf;
pub mod sheets;
mod text;
pub mod viewer;
