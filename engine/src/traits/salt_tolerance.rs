//! Which crops lose yield to the soil's salts.

use crate::quantity::{Band, Grounds, Unit};
use crate::soil::PlantGroup;
use crate::sources::{FAO_SALT_YIELD, MAAS_1990};
use crate::survey::Survey;
use crate::traits::Traits;
use crate::traits::salts::Paste;

/// A crop's tolerance, by salts of the saturated paste.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crop {
    /// Its name.
    pub name: &'static str,
    /// It loses nothing up to here, dS/m.
    pub threshold: f64,
    /// What each dS/m above costs, % of the yield.
    pub slope: f64,
    /// The group it is grown in; mixed vegetables have all but the berries.
    pub group: PlantGroup,
}

const fn crop(name: &'static str, threshold: f64, slope: f64, group: PlantGroup) -> Crop {
    Crop { name, threshold, slope, group }
}

use PlantGroup::{Berries, FruitingVegetables as Fruiting, LeafyVegetables as Leafy, RootCrops};

/// Maas 1990, the crops of gardens.
pub static CROPS: [Crop; 24] = [
    crop("asparagus", 4.1, 2.0, Leafy),
    crop("bean", 1.0, 19.0, Fruiting),
    crop("mung bean", 1.8, 20.7, Fruiting),
    crop("red beet", 4.0, 9.0, RootCrops),
    crop("broccoli", 2.8, 9.2, Leafy),
    crop("cabbage", 1.8, 9.7, Leafy),
    crop("carrot", 1.0, 14.0, RootCrops),
    crop("celery", 1.8, 6.2, Leafy),
    crop("sweet corn", 1.7, 12.0, Fruiting),
    crop("cucumber", 2.5, 13.0, Fruiting),
    crop("eggplant", 1.1, 6.9, Fruiting),
    crop("lettuce", 1.3, 13.0, Leafy),
    crop("onion", 1.2, 16.0, RootCrops),
    crop("pepper", 1.5, 14.0, Fruiting),
    crop("potato", 1.7, 12.0, RootCrops),
    crop("radish", 1.2, 13.0, RootCrops),
    crop("spinach", 2.0, 7.6, Leafy),
    crop("scallop squash", 3.2, 16.0, Fruiting),
    crop("zucchini", 4.7, 9.4, Fruiting),
    crop("strawberry", 1.0, 33.0, Berries),
    crop("sweet potato", 1.5, 11.0, RootCrops),
    crop("tomato", 2.5, 9.9, Fruiting),
    crop("cherry tomato", 1.7, 9.1, Fruiting),
    crop("turnip", 0.9, 9.0, RootCrops),
];

/// Rated by the same table, without a number.
fn rated_only(plants: PlantGroup) -> Option<&'static str> {
    Some(match plants {
        PlantGroup::MixedVegetables => {
            "Without a number: okra, parsnip and pea are sensitive; Brussels sprouts, cauliflower, kale, kohlrabi, melon and pumpkin moderately so."
        }
        Leafy => {
            "Without a number: Brussels sprouts, cauliflower, kale and kohlrabi are moderately sensitive, artichoke tolerates some."
        }
        Fruiting => {
            "Without a number: okra and pea are sensitive; melon, pumpkin and watermelon moderately so."
        }
        RootCrops => "Without a number: parsnip is sensitive.",
        _ => return None,
    })
}

/// Yield as a share (%) of that without salts, in a paste of `ece` dS/m: 100 up to the
/// threshold, then falling by the slope, never below none.
///
/// Source: FAO Irrigation and Drainage Paper 61, Annex 1.
pub fn relative_yield(ece: f64, threshold: f64, slope: f64) -> f64 {
    (100.0 - slope * (ece - threshold)).clamp(0.0, 100.0)
}

impl Crop {
    /// Whether a bed of this group grows it.
    pub fn grows_in(&self, plants: PlantGroup) -> bool {
        self.group == plants || plants == PlantGroup::MixedVegetables && self.group != Berries
    }
}

/// How many crops the sentence names; the figures have them all.
const NAMED: usize = 8;

pub(super) fn work_out(survey: &Survey<'_>, paste: Option<&Paste>, traits: &mut Traits) {
    let Some((ece, why)) = paste else { return };
    let plants = survey.case.plants.unwrap_or_default();
    let mut grounds = why.clone();
    grounds.rule = format!(
        "{} Yield (%) = 100 − slope × (ECe − threshold) above the threshold of each crop.",
        why.rule
    );
    grounds.sources.extend([MAAS_1990.opened(), FAO_SALT_YIELD.opened()]);
    if survey.case.plants.is_none() {
        grounds = grounds.assume("Mixed vegetables, until you say what grows here.");
    }
    let salts = survey.shown(ece, Unit::DsPerM);
    let mut losing: Vec<(Band, &Crop)> = Vec::new();
    let mut grown = 0;
    for crop in CROPS.iter().filter(|c| c.grows_in(plants)) {
        grown += 1;
        let left = ece.map(|v| relative_yield(v, crop.threshold, crop.slope));
        if left.low < 100.0 {
            // The likely yield comes first, then the worst.
            let key = |b: &Band| b.likely + b.low / 1000.0;
            let at = losing.partition_point(|(other, _)| key(other) <= key(&left));
            losing.insert(at, (left, crop));
        }
    }
    if grown == 0 {
        if ece.high >= 2.0 {
            let text = format!(
                "The table of salt tolerance we hold has no row for {}. Salts are {salts}: ask a local adviser what stands that.",
                plants.label()
            );
            traits.say("salts-and-crops", text, grounds);
        }
        return;
    }
    if losing.is_empty() {
        let text = format!(
            "Salts are {salts}: no crop of this bed that we hold a number for loses yield to that."
        );
        return traits.say("salts-and-crops", text, grounds);
    }
    let mut text = format!("Salts are {salts}. Yield left, the most sensitive first: ");
    for (i, (left, crop)) in losing.iter().enumerate() {
        if i < NAMED {
            text.push_str(if i == 0 { "" } else { ", " });
            text.push_str(&format!("{} {}", crop.name, survey.shown(left, Unit::Percent)));
        }
        let grounds = grounds
            .clone()
            .input("threshold", format!("{} dS/m", crop.threshold))
            .input("slope", format!("{} % for each dS/m", crop.slope));
        traits.figure("yield-in-salts", crop.name, *left, Unit::Percent, &grounds);
    }
    text.push('.');
    if losing.len() > NAMED {
        text.push_str(&format!(" Others that may lose less: {}.", losing.len() - NAMED));
    } else if losing.len() < grown {
        text.push_str(" The others lose nothing.");
    }
    if let Some(rated) = rated_only(plants) {
        text.push(' ');
        text.push_str(rated);
    }
    traits.say("salts-and-crops", text, grounds);
    traits.say(
        "salts-and-crops",
        "Where the soil holds gypsum, part of the salts is gypsum that plants don't mind: they stand about 2 dS/m more than this.",
        Grounds::new("In soil with gypsum plants stand about 2 dS/m more.", &[MAAS_1990.opened()]),
    );
}
