//! What each plot, pot or tray of a trial gets: a scoop is enough.

use serde::{Deserialize, Serialize};

/// Where a treatment goes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// A plot of so many m², mixed in so many cm deep.
    Plot {
        /// m².
        area_m2: f64,
        /// cm.
        depth_cm: f64,
    },
    /// A pot or tray of so many litres of soil.
    Pot {
        /// Litres.
        litres: f64,
    },
}

impl Place {
    /// The soil that the char is mixed with, litres; `None` where a measure can't be.
    pub fn soil_litres(self) -> Option<f64> {
        let litres = match self {
            // A square metre 1 cm deep is 10 litres.
            Place::Plot { area_m2, depth_cm } if area_m2 > 0.0 && depth_cm > 0.0 => {
                area_m2 * depth_cm * 10.0
            }
            Place::Plot { .. } => return None,
            Place::Pot { litres } => litres,
        };
        (0.01..=1e7).contains(&litres).then_some(litres)
    }
}

/// What one plot gets, and all treated ones together.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Amounts {
    /// Char for one plot, litres.
    pub litres: f64,
    /// The same in scoops, to the quarter.
    pub scoops: f64,
    /// Soil to take out of a pot first, so that the mix fills it as before, litres; 0 for a plot.
    pub soil_out: f64,
    /// Char for all treated plots, litres.
    pub all_litres: f64,
}

/// Char for a share of `percent` of the volume, in scoops of `scoop` litres, for one plot and
/// for `treated` of them; `None` where a measure can't be.
pub fn amounts(place: Place, percent: f64, scoop: f64, treated: usize) -> Option<Amounts> {
    let soil = place.soil_litres()?;
    if !(0.01..=50.0).contains(&percent) || !(0.001..=100.0).contains(&scoop) {
        return None;
    }
    let litres = soil * percent / 100.0;
    let soil_out = if matches!(place, Place::Pot { .. }) { litres } else { 0.0 };
    let scoops = (4.0 * litres / scoop).round() / 4.0;
    Some(Amounts { litres, scoops, soil_out, all_litres: litres * treated as f64 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1 m² to 10 cm is 100 L; 5 % is 5 L, ten scoops of half a litre.
    #[test]
    fn a_plot_and_a_pot() {
        let plot = Place::Plot { area_m2: 1.0, depth_cm: 10.0 };
        let found = amounts(plot, 5.0, 0.5, 8).unwrap();
        assert_eq!((found.litres, found.scoops, found.all_litres), (5.0, 10.0, 40.0));
        let pot = amounts(Place::Pot { litres: 4.0 }, 10.0, 0.25, 6).unwrap();
        assert_eq!((pot.litres, pot.scoops, pot.soil_out), (0.4, 1.5, 0.4));
        assert_eq!(amounts(Place::Pot { litres: f64::NAN }, 10.0, 0.25, 6), None);
        assert_eq!(amounts(Place::Plot { area_m2: -1.0, depth_cm: -2.0 }, 5.0, 1.0, 1), None);
    }
}
