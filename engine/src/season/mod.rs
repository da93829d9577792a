//! When: what the dates and the place allow, the dated tasks of each path, and
//! what a wet season takes.

mod calendar;
mod climate;
pub mod day;
pub mod drainage;
pub mod evaporation;
mod leaching;
mod place;
mod rest;
mod task;
mod tasks;
mod timing;
pub mod twelve;
mod windows;

pub use calendar::calendar;
pub use climate::Climate;
pub use drainage::{WetMonths, drainage, wet_months};
pub use leaching::{MonthLoss, WinterLoss, burns, lessened, scotter, winter_loss};
pub use place::{Place, frost_days, place};
pub use rest::{Rest, longest, rests};
pub use task::Task;
pub use tasks::{Plan, tasks};
pub use timing::{BETTER_DAYS, LEAST_DAYS, Timing, Window};
pub use windows::{Windows, windows};
