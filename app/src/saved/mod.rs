//! Saved reports, kept in this browser's database.

pub mod backup;
pub mod database;
pub mod entry;
pub mod trend;
pub mod view;
pub mod years;
