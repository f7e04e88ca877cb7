//! Reports.
fn main() {}
