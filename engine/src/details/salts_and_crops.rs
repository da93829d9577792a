//! Which crops lose yield to the soil's salts.

use crate::chemistry::Derived;
use crate::details::Traits;
use crate::quantity::{Band, Figure, Grounds, Unit};
use crate::soil::PlantGroup::{
    self, FruitingVegetables as Fruiting, LeafyVegetables as Leafy, RootCrops,
};
use crate::soil::salt_tolerance::{CROPS, Crop, relative_yield};
use crate::sources::{FAO_SALT_YIELD, MAAS_1990};
use crate::survey::Survey;

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

/// How many crops the sentence names; the figures have them all.
const NAMED: usize = 8;

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let Some(Figure { band: ece, grounds: why, .. }) = survey.chemistry.get(Derived::Ece) else {
        return;
    };
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
    let grown = CROPS.iter().filter(|c| c.grows_in(plants)).count();
    let losing = losing(*ece, plants);
    if grown == 0 && ece.high < 2.0 {
        return;
    }
    if losing.is_empty() {
        return traits.say("salts-and-crops", none_loses(&salts, grown, plants), grounds);
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

fn none_loses(salts: &str, grown: usize, plants: PlantGroup) -> String {
    if grown > 0 {
        return format!(
            "Salts are {salts}: no crop of this bed that we hold a number for loses yield to that."
        );
    }
    format!(
        "The table of salt tolerance we hold has no row for {}. Salts are {salts}: ask a local adviser what stands that.",
        plants.label()
    )
}

/// The crops of a bed that lose yield to salts (dS/m in saturated paste), with the yield that is
/// left, %: the most sensitive first.
fn losing(ece: Band, plants: PlantGroup) -> Vec<(Band, &'static Crop)> {
    let mut losing: Vec<(Band, &Crop)> = Vec::new();
    for crop in CROPS.iter().filter(|c| c.grows_in(plants)) {
        let left = ece.map(|v| relative_yield(v, crop.threshold, crop.slope));
        if left.low < 100.0 {
            // The likely yield comes first, then the worst.
            let key = |b: &Band| b.likely + b.low / 1000.0;
            let at = losing.partition_point(|(other, _)| key(other) <= key(&left));
            losing.insert(at, (left, crop));
        }
    }
    losing
}
