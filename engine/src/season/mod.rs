//! When: what the dates allow, and the dated tasks of each path.

pub mod day;
mod task;
mod tasks;
mod timing;

pub use task::Task;
pub use tasks::{Plan, tasks};
pub use timing::{BETTER_DAYS, LEAST_DAYS, Timing, Window};
