//! The report: how it comes in, which sample of it is looked at, and what was
//! used of it.

pub mod exports;
pub mod files;
pub mod long_report;
pub mod own_tables;
pub mod pairs;
pub mod paste;
pub mod samples;
pub mod source;
pub mod unread;
pub mod uses;
