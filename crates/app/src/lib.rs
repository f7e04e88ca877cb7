//! The window, the command line and the files: the only room with the toolkit, the disk and dialogs.
//!
//! Panels ask and never reach for files or dialogs; the canvas and the panels do not know each other; widgets
//! know quantities but no job.

pub mod date;
pub mod history;
mod kinds;
pub mod solved;
pub mod moves;
pub mod view_state;
pub mod swept;
pub mod theme;
mod thumbs;
pub mod session;
pub mod command;
pub mod widgets;
pub mod canvas;
pub mod strip;
pub mod panels;
pub mod files;
pub mod found;
pub mod app;
pub mod cli;
