//! Saved reports, kept in this browser's database.

pub mod backup;
pub mod database;
pub mod earlier;
pub mod entry;
pub mod erase;
pub mod trend;
pub mod view;
pub mod years;
