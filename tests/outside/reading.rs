//! The `reading` room against the outside.
