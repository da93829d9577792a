//! What a biochar is made of: the bag's own figures where it prints them,
//! otherwise what is usual for its feedstock.

use crate::case::{Bag, Feedstock};
use crate::quantity::{Band, Grounds, Input, Measures, Unit, shown};
use crate::sources::IPPOLITO_2020;

/// A biochar, on a dry basis.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its feedstock; `None` when nobody said and wood is assumed.
    pub feedstock: Option<Feedstock>,
    /// Bulk density, kg/m³.
    pub bulk_density: Band,
    /// pH.
    pub ph: Band,
    /// Liming value, % CaCO3.
    pub liming: Band,
    /// Exchange capacity, cmol(c)/kg.
    pub cec: Band,
    /// Water it takes up, g per g.
    pub water: Band,
    /// Total phosphorus, %.
    pub phosphorus: f64,
    /// Total potassium, %.
    pub potassium: f64,
    /// Total calcium, %.
    pub calcium: f64,
    /// Total magnesium, %.
    pub magnesium: f64,
    /// Total sulfur, %.
    pub sulfur: f64,
    /// Total sodium, %.
    pub sodium: f64,
    /// Electrical conductivity, dS/m, when the bag gives it.
    pub ec: Option<f64>,
    /// What was assumed, in a reader's words.
    pub assumed: Vec<String>,
}

/// (low, likely, high)
type Row = (f64, f64, f64);

/// Usual properties of one feedstock.
/// Source: review literature, written from memory; ranges are wide on purpose.
struct Usual {
    bulk_density: Row,
    ph: Row,
    liming: Row,
    cec: Row,
    water: Row,
    /// P, K, Ca, Mg, S, Na, % in all.
    totals: [f64; 6],
}

fn usual(feedstock: Feedstock) -> Usual {
    match feedstock {
        Feedstock::Softwood => Usual {
            bulk_density: (110.0, 170.0, 260.0),
            ph: (6.5, 8.0, 9.5),
            liming: (0.3, 2.5, 6.0),
            cec: (4.0, 12.0, 30.0),
            water: (1.0, 2.5, 4.5),
            totals: [0.06, 0.35, 0.8, 0.15, 0.03, 0.03],
        },
        Feedstock::Hardwood => Usual {
            bulk_density: (180.0, 260.0, 380.0),
            ph: (7.5, 8.8, 10.0),
            liming: (1.0, 5.0, 10.0),
            cec: (6.0, 20.0, 45.0),
            water: (1.0, 2.0, 4.0),
            totals: [0.12, 0.8, 2.0, 0.25, 0.05, 0.05],
        },
        Feedstock::GrassOrStraw => Usual {
            bulk_density: (70.0, 130.0, 220.0),
            ph: (8.0, 9.6, 10.8),
            liming: (2.0, 6.0, 12.0),
            cec: (15.0, 38.0, 70.0),
            water: (1.0, 2.5, 5.0),
            totals: [0.3, 2.5, 0.9, 0.35, 0.2, 0.15],
        },
        Feedstock::Manure => Usual {
            bulk_density: (250.0, 400.0, 600.0),
            ph: (8.0, 9.8, 11.0),
            liming: (4.0, 11.0, 20.0),
            cec: (20.0, 50.0, 100.0),
            water: (0.6, 1.2, 2.5),
            totals: [2.5, 4.0, 6.0, 1.3, 0.7, 1.0],
        },
        Feedstock::Nutshell => Usual {
            bulk_density: (250.0, 350.0, 480.0),
            ph: (8.0, 9.2, 10.5),
            liming: (1.0, 5.0, 10.0),
            cec: (5.0, 18.0, 40.0),
            water: (0.4, 1.0, 1.8),
            totals: [0.2, 2.0, 1.0, 0.25, 0.05, 0.05],
        },
    }
}

/// What a biochar made of wood of any kind spans: both ends, and the middle
/// between the two usual values.
fn wood() -> Usual {
    let (soft, hard) = (usual(Feedstock::Softwood), usual(Feedstock::Hardwood));
    let span = |a: Row, b: Row| (a.0.min(b.0), (a.1 + b.1) / 2.0, a.2.max(b.2));
    Usual {
        bulk_density: span(soft.bulk_density, hard.bulk_density),
        ph: span(soft.ph, hard.ph),
        liming: span(soft.liming, hard.liming),
        cec: span(soft.cec, hard.cec),
        water: span(soft.water, hard.water),
        totals: std::array::from_fn(|i| (soft.totals[i] + hard.totals[i]) / 2.0),
    }
}

impl Material {
    /// The biochar of a bag. Figures printed on the bag replace the usual
    /// ones, within 10 % either way (pH within 0.3).
    pub fn of(bag: &Bag) -> Material {
        let usual = bag.feedstock.map_or_else(wood, usual);
        let mut assumed = Vec::new();
        if bag.feedstock.is_none() {
            assumed.push("The biochar is made of wood, soft or hard; nobody said.".to_string());
        }
        let mut from_bag =
            |printed: Option<f64>, usual: Row, (least, most): (f64, f64), what| match printed {
                Some(v) if (least..=most).contains(&v) => Band::new(v * 0.9, v, v * 1.1),
                Some(v) => {
                    assumed.push(format!(
                        "The {what} given ({v}) can't be right; the usual one is taken instead."
                    ));
                    band(usual)
                }
                None => band(usual),
            };
        let bulk_density =
            from_bag(bag.bulk_density, usual.bulk_density, (20.0, 1500.0), "bulk density");
        let liming = from_bag(bag.liming_percent, usual.liming, (0.0, 100.0), "liming value");
        let ph = match from_bag(bag.ph, usual.ph, (2.0, 13.0), "pH of the biochar") {
            b if bag.ph == Some(b.likely) => Band::new(b.likely - 0.3, b.likely, b.likely + 0.3),
            b => b,
        };
        let [phosphorus, potassium, calcium, magnesium, sulfur, sodium] = usual.totals;
        Material {
            feedstock: bag.feedstock,
            bulk_density,
            ph,
            liming,
            cec: band(usual.cec),
            water: band(usual.water),
            phosphorus,
            potassium,
            calcium,
            magnesium,
            sulfur,
            sodium,
            ec: bag.ec.filter(|ec| (0.0..=100.0).contains(ec)),
            assumed,
        }
    }

    /// Whether it limes: more than 3 % CaCO3.
    /// Source: our choice, from published liming values of 0.3 to 12.8 %.
    pub fn limes(&self) -> bool {
        self.liming.likely > 3.0
    }

    /// Adds to the grounds of a number what the material is taken to be.
    pub fn explain(&self, mut grounds: Grounds, what: &[(&str, Band, Unit)]) -> Grounds {
        for (name, band, unit) in what {
            let value = shown(band, *unit, Measures::Metric);
            grounds.inputs.push(Input { name: (*name).to_string(), value });
        }
        grounds.assumed.extend(self.assumed.iter().cloned());
        grounds.sources.push(IPPOLITO_2020.from_memory());
        grounds
    }
}

fn band((low, likely, high): Row) -> Band {
    Band::new(low, likely, high)
}
