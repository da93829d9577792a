//! When: what the dates allow, and the dated tasks of each path.

mod calendar;
pub mod day;
mod leaching;
mod task;
mod tasks;
mod timing;

pub use calendar::calendar;
pub use leaching::{WinterLoss, burns, drainage, lessened, scotter, winter_loss};
pub use task::Task;
pub use tasks::{Plan, tasks};
pub use timing::{BETTER_DAYS, LEAST_DAYS, Timing, Window};
