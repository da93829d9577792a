//! The shelf: saved reports, kept in this browser's database.

pub mod board;
pub mod chest;
pub mod cupboard;
pub mod entry;
pub mod trend;
pub mod years;
