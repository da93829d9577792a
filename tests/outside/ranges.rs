//! The `ranges` room against the outside.
