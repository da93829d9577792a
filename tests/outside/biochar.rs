//! The `biochar` room against the outside.
