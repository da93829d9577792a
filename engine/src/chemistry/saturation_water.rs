//! Water at saturation, and the salts of the paste that follow from it.

use crate::quantity::Band;
use crate::soil::Texture;

/// One row of the FAO's table: water at saturation, g/100 g, for organic matter below 0.5, 1, 2,
/// 4, 8 % and above.
struct Row {
    texture: Texture,
    /// The row is for clay (%) from here to below there.
    clay: (u8, u8),
    water: [u8; 6],
}

// From `engine/facts/saturation_water.csv`.
include!(concat!(env!("OUT_DIR"), "/saturation_water.rs"));

/// Upper ends of the columns, % organic matter.
/// Source: FAO 2006 (second-hand).
const COLUMNS: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];
/// Water at saturation, g in 100 g of soil: the driest, the middle and the wettest of the rows
/// that fit. Clay (%) narrows them where it is known.
///
/// Source: FAO 2006, as it stands in public code.
pub fn saturation_water(texture: Texture, clay: Option<f64>, organic_matter: f64) -> Band {
    let column = COLUMNS.iter().take_while(|end| organic_matter >= **end).count();
    let fits = |row: &&Row| {
        row.texture == texture
            && clay.is_none_or(|c| f64::from(row.clay.0) <= c && c < f64::from(row.clay.1))
    };
    let mut rows = ROWS.iter().filter(fits).map(|row| f64::from(row.water[column]));
    // A clay that doesn't go with the texture finds no row: then the texture alone speaks.
    let Some(first) = rows.next() else { return saturation_water(texture, None, organic_matter) };
    let last = rows.next_back().unwrap_or(first);
    Band::new(first, (first + last) / 2.0, last)
}

/// Salts of the saturated paste from a mix of one part of soil to `parts` of water:
/// ECe = EC × 100 × parts ÷ water at saturation.
///
/// Source: FAO 2006, as it stands in public code.
pub fn from_water(ec: f64, parts: f64, saturation_water: f64) -> f64 {
    ec * 100.0 * parts / saturation_water
}
