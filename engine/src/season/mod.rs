//! The dates of a bed and the water of its place.

mod climate;
mod dated;
pub use crate::day;
pub mod drainage;
pub mod evaporation;
mod place;
mod rest;
mod timing;
pub mod twelve;

pub use climate::Climate;
pub(crate) use climate::is_southern;
pub use dated::Dated;
pub use drainage::{WetMonths, drainage, wet_months};
pub(crate) use place::guessed_frost;
pub use place::{Place, frost_days, place};
pub use rest::{Rest, longest, rests};
pub(crate) use timing::window;
pub use timing::{BETTER_DAYS, LEAST_DAYS, Timing, Window};
