//! How much water a soil holds and lets through, from sand, clay and organic matter.

use crate::soil::Texture;

/// The equations hold below this, % organic matter.
/// Source: Saxton and Rawls 2006 (from memory).
pub const ORGANIC_MATTER_BELOW: f64 = 8.0;
/// The equations hold below this, % clay.
/// Source: Saxton and Rawls 2006 (from memory).
pub const CLAY_BELOW: f64 = 60.0;
/// What a soil holds, as shares of its volume from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// Held so tightly that plants wilt (1500 kPa).
    pub wilting_point: f64,
    /// Held against gravity (33 kPa).
    pub field_capacity: f64,
    /// With every pore full.
    pub saturation: f64,
    /// What saturated soil lets through, mm an hour.
    pub conductivity: f64,
    /// Density of the dry soil, g/cm³.
    pub bulk_density: f64,
}

/// Why the equations can't be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutOfRange {
    /// Organic matter of 8 % or more.
    OrganicMatter,
    /// Clay of 60 % or more.
    Clay,
    /// So much sand that the water comes out as nothing or less.
    NoWater,
}

impl OutOfRange {
    /// Why, for a reader.
    pub(crate) fn why(self) -> &'static str {
        match self {
            OutOfRange::OrganicMatter => {
                "The water it holds is not worked out: the equations are for soils with less than 8 % organic matter. A soil as rich as this holds more than they say."
            }
            OutOfRange::Clay => {
                "The water it holds is not worked out: the equations are for soils with less than 60 % clay."
            }
            OutOfRange::NoWater => {
                "The water it holds is not worked out: for so pure a sand the equations come out at nothing. It holds very little: water often, a little at a time."
            }
        }
    }
}

/// Water from sand and clay (%) and organic matter (%), at normal density.
///
/// Source: Saxton and Rawls 2006, equations 1–5, 16 and 18.
///
/// # Errors
/// Outside the soils the equations were fitted on.
pub fn held(sand: f64, clay: f64, organic_matter: f64) -> Result<Water, OutOfRange> {
    if organic_matter >= ORGANIC_MATTER_BELOW {
        return Err(OutOfRange::OrganicMatter);
    }
    if clay >= CLAY_BELOW {
        return Err(OutOfRange::Clay);
    }
    let (s, c, om) = (sand / 100.0, clay / 100.0, organic_matter);
    let t1500 = -0.024 * s + 0.487 * c + 0.006 * om + 0.005 * s * om - 0.013 * c * om
        + 0.068 * s * c
        + 0.031;
    let wilting_point = 1.14 * t1500 - 0.02;
    let t33 = -0.251 * s + 0.195 * c + 0.011 * om + 0.006 * s * om - 0.027 * c * om
        + 0.452 * s * c
        + 0.299;
    let field_capacity = t33 + 1.283 * t33 * t33 - 0.374 * t33 - 0.015;
    let ts33 = 0.278 * s + 0.034 * c + 0.022 * om - 0.018 * s * om - 0.027 * c * om - 0.584 * s * c
        + 0.078;
    let s33 = 1.636 * ts33 - 0.107;
    let saturation = field_capacity + s33 - 0.097 * s + 0.043;
    if !(0.0 < wilting_point && wilting_point < field_capacity && field_capacity < saturation) {
        return Err(OutOfRange::NoWater);
    }
    let lambda = (field_capacity / wilting_point).ln() / (1500.0f64 / 33.0).ln();
    Ok(Water {
        wilting_point,
        field_capacity,
        saturation,
        conductivity: 1930.0 * (saturation - field_capacity).powf(3.0 - lambda),
        bulk_density: (1.0 - saturation) * 2.65,
    })
}

/// Sand and clay (%) that stand for a texture class in the paper's Table 3.
pub fn middle(texture: Texture) -> (f64, f64) {
    match texture {
        Texture::Sand => (88.0, 5.0),
        Texture::LoamySand => (80.0, 5.0),
        Texture::SandyLoam => (65.0, 10.0),
        Texture::Loam => (40.0, 20.0),
        Texture::SiltLoam => (20.0, 15.0),
        Texture::Silt => (10.0, 5.0),
        Texture::SandyClayLoam => (60.0, 25.0),
        Texture::ClayLoam => (30.0, 35.0),
        Texture::SiltyClayLoam => (10.0, 35.0),
        Texture::SiltyClay => (10.0, 45.0),
        Texture::SandyClay => (50.0, 40.0),
        Texture::Clay => (25.0, 50.0),
    }
}
