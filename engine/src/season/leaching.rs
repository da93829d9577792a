//! What a wet winter takes of the nitrate in a bed, with and without biochar.

use crate::biochar::{Path, Prepared, Situation};
use crate::case::WetSeason;
use crate::quantity::{Band, Context, Figure, Grounds, Unit, convert, shown, significant};
use crate::soil::{PlantGroup, Property, Texture};
use crate::sources::{
    AHDB_RAIN, BEKCHANOVA_2024, BORCHARD_2019, BURNS_1975, COMMON_PRACTICE, LIU_2017, OUR_CHOICE,
    SAXTON_RAWLS, SCOTTER_1993,
};
use crate::traits::water;

/// The layer that nitrate is followed through, cm: where most roots of
/// vegetables are. Source: our choice.
const ROOTED: f64 = 30.0;

/// Density of dry soil nobody weighed, g/cm³. Source: common practice, no source.
const USUAL_DENSITY: Band = Band { low: 1.1, likely: 1.3, high: 1.5 };

/// Biochar below this does not lessen leaching, t/ha. Source: our choice.
const LEAST_TONNES: f64 = 5.0;

/// t/ha at which biochar holds two thirds of the most it can. Source: our choice.
const TONNES_TO_HOLD: f64 = 10.0;

/// The most that biochar lessens nitrate leaching, %, in loam and clay, in
/// sand, and under grass, where field trials found none.
/// Source: Borchard 2019, −13 % overall and more than −26 % beyond 30 days; Liu
/// 2017, −29 % in loam and +23 % in sand; Bekchanova 2024, −38 (−56 to −13) %
/// in sands (opened); put together by our own choice.
const IN_LOAM: Band = Band { low: 10.0, likely: 30.0, high: 40.0 };
const IN_SAND: Band = Band { low: -20.0, likely: 20.0, high: 50.0 };
const UNDER_GRASS: Band = Band { low: -10.0, likely: 0.0, high: 15.0 };

/// The share (0–1) of nitrate mixed through the top `depth` cm that `drainage`
/// cm of water wash out of it, where the soil holds `capacity` % of its volume.
///
/// Source: Burns 1975, [P ÷ (P + V)]^(h ÷ 2) (from memory).
pub fn burns(drainage: f64, capacity: f64, depth: f64) -> f64 {
    if drainage <= 0.0 {
        return 0.0;
    }
    (drainage / (drainage + capacity / 100.0)).powf(depth / 2.0)
}

/// The same by the continuous form, summed over the depth.
///
/// Source: Scotter, White and Dyson 1993 (opened); its integral derived.
pub fn scotter(drainage: f64, capacity: f64, depth: f64) -> f64 {
    if drainage <= 0.0 {
        return 0.0;
    }
    let held = depth * capacity / 100.0;
    drainage / held * (1.0 - (-held / drainage).exp())
}

/// The share (%) by which this much biochar (t/ha) lessens nitrate leaching.
pub fn lessened(tonnes: f64, most: Band) -> Band {
    if tonnes < LEAST_TONNES {
        return Band::exactly(0.0);
    }
    most.map(|most| most * (1.0 - (-tonnes / TONNES_TO_HOLD).exp()))
}

/// What drains through in a wet season, mm.
///
/// Source: AHDB, excess winter rainfall: low below 150 mm, moderate to 250,
/// high above (opened); the outer ends are our choice.
pub fn drainage(season: Option<WetSeason>) -> Band {
    let (low, likely, high) = match season {
        Some(WetSeason::Dry) => (30.0, 100.0, 150.0),
        Some(WetSeason::Moderate) => (150.0, 200.0, 250.0),
        Some(WetSeason::Wet) => (250.0, 320.0, 450.0),
        None => (30.0, 200.0, 450.0),
    };
    Band { low, likely, high }
}

/// The nitrate of a bed over a winter.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WinterLoss {
    /// What it comes to, in a sentence or two.
    pub text: String,
    /// In the soil now, lost without biochar, lost with it, kept by it.
    pub figures: Vec<Figure>,
}

/// What the coming wet season takes; `None` without a nitrate reading by weight.
pub fn winter_loss(situation: &Situation<'_>) -> Option<WinterLoss> {
    let nitrate = situation.soil.value(Property::NitrateN)?;
    let case = situation.case;
    let measures = case.measures;
    let depth = case.reading.depth_cm.filter(|d| (5.0..=100.0).contains(d)).unwrap_or(15.0);
    let density = match situation.soil.value(Property::BulkDensity) {
        Some(density) if (0.2..=2.2).contains(&density) => Band::exactly(density),
        _ => USUAL_DENSITY,
    };
    let held = density.map(|density| {
        let slice = Context::slice(depth, density);
        convert(nitrate, Unit::MgPerKg, Unit::KgPerHa, &slice).unwrap_or(0.0)
    });
    let texture = situation.texture;
    let capacity = capacity(texture, situation.soil.value(Property::OrganicMatter));
    let rain = drainage(case.season.wet_season);
    let share = |mm: f64, capacity: f64| {
        [burns(mm / 10.0, capacity, ROOTED), scotter(mm / 10.0, capacity, ROOTED)]
    };
    let [low, _] = share(rain.low, capacity.high);
    let [likely_a, likely_b] = share(rain.likely, capacity.likely);
    let [_, high] = share(rain.high, capacity.low);
    let lost_share = Band::new(low, (likely_a + likely_b) / 2.0, high);
    let lost = held.times(lost_share);

    let mut grounds = Grounds::new(
        "Nitrate in the layer × the share that drainage washes below 30 cm, by two published equations.",
        &[BURNS_1975.from_memory(), SCOTTER_1993.opened(), AHDB_RAIN.opened()],
    )
    .input("nitrate-N", format!("{} mg/kg", significant(nitrate, 3)))
    .input("depth of the sample", shown(&Band::exactly(depth), Unit::Cm, measures))
    .input("water that drains through", shown(&rain, Unit::Mm, measures))
    .input("field capacity", shown(&capacity, Unit::Percent, measures))
    .assume("Nothing grows that takes nitrate up, and no cracks let water past. Take it as a ranking.");
    grounds.sources.push(SAXTON_RAWLS.second_hand());
    grounds.sources.push(OUR_CHOICE.unsourced());
    if case.season.wet_season.is_none() {
        grounds =
            grounds.assume("Nobody said how wet the cool season is; all classes are taken in.");
    }
    if situation.soil.value(Property::BulkDensity).is_none() {
        grounds = grounds.assume("Dry soil weighs 1.3 (1.1–1.5) g/cm³.");
        grounds.sources.push(COMMON_PRACTICE.unsourced());
    }
    let figure = |name, label, band, grounds: &Grounds| Figure {
        name,
        label,
        band,
        unit: Unit::KgPerHa,
        grounds: grounds.clone(),
    };
    let mut figures = vec![
        figure("nitrate-held", "nitrate-N in the sampled layer", held, &grounds),
        figure("nitrate-lost", "lost over the cool season without biochar", lost, &grounds),
    ];
    let prepared = Prepared::of(situation);
    let tonnes = prepared.dose.mass.map(|kg| kg * 10.0 / prepared.dose.area);
    let uses = prepared.decision.path != Path::None;
    let most = match texture {
        _ if case.plants == Some(PlantGroup::Lawn) => UNDER_GRASS,
        Some(texture) if texture.is_sandy() => IN_SAND,
        Some(_) => IN_LOAM,
        None => Band::new(IN_SAND.low, IN_LOAM.likely, IN_SAND.high),
    };
    let less = lessened(tonnes.likely, most);
    if uses && less.high > 0.0 {
        let with = Band::new(
            lost.low * (1.0 - less.high / 100.0),
            lost.likely * (1.0 - less.likely / 100.0),
            lost.high * (1.0 - less.low / 100.0),
        );
        let kept = Band::new(
            lost.high * less.low / 100.0,
            lost.likely * less.likely / 100.0,
            lost.high * less.high / 100.0,
        );
        let mut with_char = Grounds::new(
            "Loss × (1 − the share that biochar lessens it by): none below 5 t/ha, then rising to the most that trials in such soils found.",
            &[
                BORCHARD_2019.opened(),
                LIU_2017.opened(),
                BEKCHANOVA_2024.opened(),
                OUR_CHOICE.unsourced(),
            ],
        )
        .input("biochar", shown(&tonnes, Unit::TonnePerHa, measures))
        .input("lessened by", shown(&less, Unit::Percent, measures));
        with_char.inputs.extend(grounds.inputs.iter().cloned());
        figures.push(figure("nitrate-lost-with", "lost with this biochar", with, &with_char));
        figures.push(figure("nitrate-kept", "kept by it", kept, &with_char));
    }
    let percent = lost_share.map(|share| share * 100.0);
    let text = format!(
        "A cool season with {} of drainage takes {} of the nitrate below the roots. {}",
        shown(&rain, Unit::Mm, measures),
        shown(&percent, Unit::Percent, measures),
        if figures.len() > 2 {
            "Biochar keeps a part of it, how much is uncertain; a winter green manure keeps more."
        } else {
            "A winter green manure keeps most of it."
        }
    );
    Some(WinterLoss { text, figures })
}

/// Field capacity, % of the volume.
fn capacity(texture: Option<Texture>, organic_matter: Option<f64>) -> Band {
    let of = |texture: Texture| {
        let (sand, clay) = water::middle(texture);
        let organic = organic_matter.unwrap_or(2.5).clamp(0.5, 7.9);
        water::held(sand, clay, organic).map_or(30.0, |water| water.field_capacity * 100.0)
    };
    match texture {
        Some(texture) => {
            let likely = of(texture);
            // The equations' own error. Source: Saxton and Rawls (from memory).
            Band::new((likely - 5.0).max(5.0), likely, likely + 5.0)
        }
        None => Band::new(of(Texture::Sand), of(Texture::Loam), of(Texture::Clay)),
    }
}
