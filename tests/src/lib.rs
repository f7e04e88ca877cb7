//! Everything that needs more than one crate: tests in `tests/`, reports in `src/report`.
