//! The `chemistry` room against the outside.
