//! Water that fills a soil's pores, by texture and organic matter.

use super::fact::Fact;
use super::source::Cited;
use super::table::{Row, Wrong};
use crate::soil::Texture;

/// One row of the FAO's table.
#[derive(Clone, Debug, PartialEq)]
pub struct SaturationWaterRow {
    /// The texture.
    pub texture: Texture,
    /// The row is for clay (%) from here to below there.
    pub clay: (u8, u8),
    /// g of water in 100 g of soil, for organic matter below 0.5, 1, 2, 4, 8 % and above.
    pub water: [u8; 6],
    /// The publications.
    pub cited: Vec<Cited>,
}

const WATER: [&str; 6] =
    ["om_below_0_5", "om_below_1", "om_below_2", "om_below_4", "om_below_8", "om_from_8"];

impl Fact for SaturationWaterRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "texture",
        "clay_from",
        "clay_below",
        WATER[0],
        WATER[1],
        WATER[2],
        WATER[3],
        WATER[4],
        WATER[5],
        "sources",
    ];

    fn read(row: Row<'_>) -> Result<SaturationWaterRow, Wrong> {
        let whole = |head, otherwise: Option<u8>| match (row.number_or_none(head)?, otherwise) {
            (None, Some(otherwise)) => Ok(otherwise),
            (Some(number), _) if number.fract() == 0.0 && (0.0..=250.0).contains(&number) => {
                Ok(number as u8)
            }
            _ => Err(row.wrong(format!("“{head}” is no whole number of 0 to 250"))),
        };
        // More clay than a soil can have, so that every soil lies below.
        let clay = (whole("clay_from", Some(0))?, whole("clay_below", Some(101))?);
        let mut water = [0; 6];
        for (grams, head) in water.iter_mut().zip(WATER) {
            *grams = whole(head, None)?;
        }
        if clay.0 >= clay.1 {
            return Err(row.wrong("no soil has that much clay"));
        }
        if water.windows(2).any(|two| two[0] >= two[1]) {
            return Err(row.wrong("more organic matter holds more water"));
        }
        Ok(SaturationWaterRow { texture: row.kind("texture")?, clay, water, cited: row.cited()? })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_is_named_with_its_line() {
        let row = |clay, last| {
            read_one::<SaturationWaterRow>(&format!(
                "clay-2,clay,{clay},,63,65,68,73,83,{last},fao-2006:second-hand"
            ))
        };
        let right = row("60", "102").unwrap();
        assert_eq!((right.clay, right.water[5]), ((60, 101), 102));
        let why = row("60", "82").unwrap_err();
        assert_eq!(why, "facts.csv, line 7: more organic matter holds more water");
        let why = row("60.5", "102").unwrap_err();
        assert!(why.contains("“clay_from” is no whole number"), "{why}");
    }
}
