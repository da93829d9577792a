//! The `season` room against the outside.
