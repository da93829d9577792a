//! Numbers with their units: the units soil reports print, conversion with
//! the context it needs, uncertain values as three numbers, and how a value
//! is rounded for a reader.
//!
//! ```
//! use emberloam_engine::quantity::{convert, Context, Unit};
//! // 100 lb/acre over a furrow slice is 50 ppm.
//! let slice = Context::FURROW_SLICE;
//! assert_eq!(convert(100.0, Unit::LbPerAcre, Unit::MgPerKg, &slice).unwrap(), 50.0);
//! ```

mod band;
mod between;
mod convert;
mod display;
mod measured;
mod note;
mod spread;
mod unit;
mod vessel;

pub use band::{Band, Figure, Grounds, Input};
pub use between::between;
pub use convert::{Context, ConvertError, convert};
pub(crate) use display::{
    KG_PER_POUND, LB_PER_1000_SQ_FT_IN_G_PER_M2, LITRES_PER_CUBIC_FOOT, LITRES_PER_GALLON,
};
pub use display::{
    Measures, from_readers, in_readers, readers_symbol, shown, significant, weighed,
};
pub(crate) use measured::{Powder, measured, portion};
pub use note::Note;
pub(crate) use spread::{inverse, product};
pub use unit::Unit;
pub(crate) use vessel::{Portion, in_fractions, usual_bucket, with_buckets};
pub use vessel::{Vessel, measured_out, pot_measure, scoop_measure};

/// Numbers that no soil has, for the tests.
#[cfg(test)]
pub(crate) const EXTREMES: [f64; 14] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MAX,
    f64::MIN,
    1e308,
    -1e16,
    1.0,
    -0.0,
    0.0,
    0.99999,
    f64::MIN_POSITIVE,
    5e-324,
    -5e-324,
];
