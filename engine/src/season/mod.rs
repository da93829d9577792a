//! When: what the dates allow, and the dated tasks of each path.

mod task;

pub use task::Task;
