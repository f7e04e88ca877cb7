//! Opens the window or runs a command.
fn main() {}
