//! Soil texture: the twelve USDA classes.

use crate::named::named;

named! { "texture", label:
    /// A USDA texture class.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Texture {
        Sand = "sand", "sand";
        LoamySand = "loamy-sand", "loamy sand";
        SandyLoam = "sandy-loam", "sandy loam";
        Loam = "loam", "loam";
        SiltLoam = "silt-loam", "silt loam";
        Silt = "silt", "silt";
        SandyClayLoam = "sandy-clay-loam", "sandy clay loam";
        ClayLoam = "clay-loam", "clay loam";
        SiltyClayLoam = "silty-clay-loam", "silty clay loam";
        SandyClay = "sandy-clay", "sandy clay";
        SiltyClay = "silty-clay", "silty clay";
        Clay = "clay", "clay";
    }
}

impl Texture {
    /// Sand or loamy sand: soils that hold little water and few nutrients.
    pub fn is_sandy(self) -> bool {
        matches!(self, Texture::Sand | Texture::LoamySand)
    }

    /// A clay, or a clay loam that isn't sandy: soils that clay rules.
    pub(crate) fn is_clayey(self) -> bool {
        use Texture::{Clay, ClayLoam, SandyClay, SiltyClay, SiltyClayLoam};
        matches!(self, Clay | SiltyClay | SandyClay | ClayLoam | SiltyClayLoam)
    }

    /// The class of a soil from its per cent of sand, silt and clay
    /// (USDA separates: sand 0.05–2 mm, clay < 0.002 mm). `None` unless the
    /// three add up to 98–102; they are then brought to 100.
    ///
    /// Boundary points go to the finer class. Source: SSSA glossary rules;
    /// NRCS clarification by Benham, Ahrens & Nettleton.
    pub fn from_separates(sand: f64, silt: f64, clay: f64) -> Option<Texture> {
        let sum = sand + silt + clay;
        if !(98.0..=102.0).contains(&sum) || sand < 0.0 || silt < 0.0 || clay < 0.0 {
            return None;
        }
        // Tenths of a per cent as whole numbers, so that a boundary is a boundary.
        let tenths = |part: f64| (part * 1000.0 / sum).round() as i64;
        let (s, c) = (tenths(sand), tenths(clay));
        let z = 1000 - s - c;
        Some(if 2 * z + 3 * c < 300 {
            Texture::Sand
        } else if z + 2 * c < 300 {
            Texture::LoamySand
        } else if (70..200).contains(&c) && s > 520 || c < 70 && z < 500 {
            Texture::SandyLoam
        } else if (70..270).contains(&c) && (280..500).contains(&z) && s <= 520 {
            Texture::Loam
        } else if z >= 500 && (120..270).contains(&c) || (500..800).contains(&z) && c < 120 {
            Texture::SiltLoam
        } else if z >= 800 && c < 120 {
            Texture::Silt
        } else if (200..350).contains(&c) && z < 280 && s > 450 {
            Texture::SandyClayLoam
        } else if (270..400).contains(&c) && s > 200 && s <= 450 {
            Texture::ClayLoam
        } else if (270..400).contains(&c) && s <= 200 {
            Texture::SiltyClayLoam
        } else if c >= 350 && s > 450 {
            Texture::SandyClay
        } else if c >= 400 && z >= 400 {
            Texture::SiltyClay
        } else {
            Texture::Clay
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: test points worked out from the SSSA rules; (30, 40, 30) is
    /// printed as clay loam by the Idaho OnePlan soil triangle page.
    #[test]
    fn points_inside_and_on_the_edges_of_the_triangle() {
        use Texture::*;
        let points = [
            (92, 5, 3, Sand),
            (82, 12, 6, LoamySand),
            (85, 10, 5, LoamySand),
            (90, 10, 0, Sand),
            (65, 25, 10, SandyLoam),
            (53, 40, 7, SandyLoam),
            (52, 40, 8, Loam),
            (40, 40, 20, Loam),
            (20, 65, 15, SiltLoam),
            (50, 50, 0, SiltLoam),
            (0, 80, 20, SiltLoam),
            (7, 87, 6, Silt),
            (8, 80, 12, SiltLoam),
            (60, 15, 25, SandyClayLoam),
            (73, 0, 27, SandyClayLoam),
            (32, 34, 34, ClayLoam),
            (30, 40, 30, ClayLoam),
            (45, 28, 27, ClayLoam),
            (10, 56, 34, SiltyClayLoam),
            (20, 53, 27, SiltyClayLoam),
            (52, 6, 42, SandyClay),
            (46, 14, 40, SandyClay),
            (45, 15, 40, Clay),
            (6, 47, 47, SiltyClay),
            (20, 40, 40, SiltyClay),
            (20, 20, 60, Clay),
        ];
        for (sand, silt, clay, class) in points {
            let found = Texture::from_separates(f64::from(sand), f64::from(silt), f64::from(clay));
            assert_eq!(found, Some(class), "{sand}-{silt}-{clay}");
        }
        assert_eq!(Texture::from_separates(50.0, 50.0, 50.0), None);
    }
}
