//! Water at saturation, and the salts of the paste that follow from it.

use crate::quantity::Band;
use crate::soil::Texture;

/// One row of the FAO's table: water at saturation, g/100 g, for organic matter below 0.5, 1, 2,
/// 4, 8 % and above.
struct Row {
    texture: Texture,
    /// The row is for clay (%) from here to below there.
    clay: (f64, f64),
    water: [u8; 6],
}

const fn row(texture: Texture, clay: (f64, f64), water: [u8; 6]) -> Row {
    Row { texture, clay, water }
}

/// Upper ends of the columns, % organic matter.
/// Source: FAO 2006 (second-hand).
const COLUMNS: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];
/// Our choice: any content of clay.
const ANY: (f64, f64) = (0.0, 101.0);

/// The numbers are second-hand; the classes of the last five rows are from memory.
/// Source: FAO 2006.
static ROWS: [Row; 17] = [
    row(Texture::Sand, ANY, [5, 6, 8, 13, 21, 35]),
    row(Texture::Sand, ANY, [8, 9, 11, 16, 24, 38]),
    row(Texture::Sand, ANY, [10, 11, 13, 18, 26, 40]),
    row(Texture::LoamySand, ANY, [14, 15, 17, 22, 30, 45]),
    row(Texture::SandyLoam, (0.0, 10.0), [14, 15, 17, 22, 30, 45]),
    row(Texture::SandyLoam, (10.0, 101.0), [22, 23, 26, 31, 39, 55]),
    row(Texture::SiltLoam, (0.0, 10.0), [17, 18, 20, 25, 34, 49]),
    row(Texture::SiltLoam, (10.0, 101.0), [28, 29, 32, 37, 46, 62]),
    row(Texture::Silt, ANY, [19, 20, 22, 27, 36, 51]),
    row(Texture::Loam, ANY, [25, 26, 29, 34, 42, 58]),
    row(Texture::SandyClayLoam, ANY, [32, 33, 36, 41, 50, 67]),
    row(Texture::ClayLoam, ANY, [44, 46, 48, 53, 63, 80]),
    row(Texture::SiltyClayLoam, ANY, [44, 46, 48, 53, 63, 80]),
    row(Texture::SandyClay, ANY, [51, 53, 55, 60, 70, 88]),
    row(Texture::SiltyClay, ANY, [63, 65, 68, 73, 83, 102]),
    row(Texture::Clay, (0.0, 60.0), [63, 65, 68, 73, 83, 102]),
    row(Texture::Clay, (60.0, 101.0), [105, 107, 110, 116, 126, 147]),
];

/// Water at saturation, g in 100 g of soil: the driest, the middle and the wettest of the rows
/// that fit. Clay (%) narrows them where it is known.
///
/// Source: FAO 2006, as it stands in public code.
pub fn saturation_water(texture: Texture, clay: Option<f64>, organic_matter: f64) -> Band {
    let column = COLUMNS.iter().take_while(|end| organic_matter >= **end).count();
    let fits = |row: &&Row| {
        row.texture == texture && clay.is_none_or(|c| row.clay.0 <= c && c < row.clay.1)
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
