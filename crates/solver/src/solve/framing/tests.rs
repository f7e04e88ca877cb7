//! Hand-worked cases.
