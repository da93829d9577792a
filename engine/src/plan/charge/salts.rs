//! Whether the charge brings too many salts: in the soaking water, and in the bed.

use crate::chemistry::saturation_water::{from_water, saturation_water};
use crate::plan::rate::Dose;
use crate::plan::rate::MOST_EC;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::salt_tolerance::CROPS;
use crate::soil::{Method, Property, Texture};
use crate::sources::{ARITHMETIC, Citation, FAO_2006, GUO_2020, MAAS_1990, OUR_CHOICE, USSL_60};
use crate::survey::Survey;

/// dS/m of one mmol(c) of cations in a litre; strong solutions carry less each, potassium
/// and ammonium more.
/// Source: US Salinity Laboratory, Handbook 60 (from memory); the ends are our choice.
const EC_PER_CHARGE: Band = Band { low: 0.06, likely: 0.1, high: 0.145 };

/// Parts of water in which a bag's salts are read. Source: our choice, as for the rate.
const BAG_PARTS: f64 = 20.0;

/// Organic matter where it wasn't measured, %. Our choice.
const USUAL_ORGANIC_MATTER: f64 = 3.0;

/// Seedlings and cuttings suffer in stronger water than this, dS/m.
/// Source: our choice, near the thresholds of sensitive crops of Maas 1990.
pub(super) const MILD: f64 = 2.0;

/// Conductivity of water with `charge` mmol(c) of cations in a litre, dS/m.
pub fn conductivity(charge: Band) -> Band {
    charge.times(EC_PER_CHARGE)
}

/// The salts of a charge.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Salts {
    /// The soaking water, dS/m; `None` where it is plain water.
    pub soak: Option<Band>,
    /// What to do about them, in sentences.
    pub sayings: Vec<String>,
    /// All of them as figures.
    pub figures: Vec<Figure>,
}

/// The soil the biochar goes into, kg.
pub(super) fn soil(survey: &Survey<'_>, dose: &Dose) -> f64 {
    survey.bed.soil_per_m2().likely * dose.area
}

/// What the biochar's own salts add in a 1:1 mix, dS/m.
fn from_char(survey: &Survey<'_>, dose: &Dose) -> Band {
    survey.material.ec.map_or(Band::exactly(0.0), |ec| {
        dose.percent.map(|percent| ec * BAG_PARTS * percent / 100.0)
    })
}

/// The soil's own salts in a 1:1 mix, where they were measured so.
fn measured(survey: &Survey<'_>) -> Option<f64> {
    let measure = survey.soil.get(Property::Ec)?;
    let is = measure.method == Some(Method::Water1To1) && measure.unit == Unit::DsPerM;
    is.then(|| measure.amount.number())
}

/// dS/m (1:1) that a charge may still add.
pub(super) fn room(survey: &Survey<'_>, dose: &Dose) -> f64 {
    let there = measured(survey).unwrap_or(0.0) + from_char(survey, dose).likely;
    (MOST_EC - there).max(0.0)
}

/// What a charge adds to the bed.
struct Gain {
    in_all: Band,
    /// In a mix of one part soil and one part water, dS/m.
    rise: Band,
    /// The same as saturated paste.
    paste: Band,
    texture: Texture,
}

/// `in_water` and `in_all` are the charge of the dissolved cations, mmol(c), in the soaking
/// water and in all that is brought; `litres` is the soaking water.
pub(super) fn salts(
    survey: &Survey<'_>,
    dose: &Dose,
    in_water: Band,
    in_all: Band,
    litres: f64,
) -> Salts {
    let soak = (in_water.high > 0.0 && litres > 0.0)
        .then(|| conductivity(in_water.map(|charge| charge / litres)));
    let soil = soil(survey, dose);
    let rise = conductivity(in_all.map(|charge| charge / soil)).plus(from_char(survey, dose));
    let texture = survey.texture.unwrap_or(Texture::Loam);
    let organic = survey.soil.value(Property::OrganicMatter).unwrap_or(USUAL_ORGANIC_MATTER);
    let water = saturation_water(texture, None, organic);
    let paste = Band::new(
        from_water(rise.low, 1.0, water.high),
        from_water(rise.likely, 1.0, water.likely),
        from_water(rise.high, 1.0, water.low),
    );
    let gain = Gain { in_all, rise, paste, texture };
    let mut figures: Vec<Figure> =
        soak.into_iter().map(|soak| soak_figure(soak, in_water, litres)).collect();
    figures.extend(bed_figures(survey, soil, &gain));
    Salts { soak, sayings: sayings(survey, &gain, soak), figures }
}

fn figure(name: &'static str, label: &'static str, band: Band, grounds: Grounds) -> Figure {
    Figure { name, label, band, unit: Unit::DsPerM, grounds }
}

fn soak_figure(soak: Band, in_water: Band, litres: f64) -> Figure {
    let grounds = Grounds::new(
        "charge of the dissolved cations, mmol(c)/L × 0.1 (0.06–0.145) dS/m",
        &[USSL_60.from_memory(), OUR_CHOICE.unsourced()],
    )
    .input("cations, mmol(c)", shown(&in_water, Unit::None, Measures::Metric))
    .input("water", format!("{} L", significant(litres, 3)));
    figure("soak-salts", "salts of the soaking water", soak, grounds)
}

fn bed_figures(survey: &Survey<'_>, soil: f64, gain: &Gain) -> Vec<Figure> {
    let bed = |rule: &str, sources: &[Citation]| {
        let grounds = Grounds::new(rule, sources)
            .input("cations brought, mmol(c)", shown(&gain.in_all, Unit::None, Measures::Metric))
            .input("soil it goes into", format!("{} kg", significant(soil, 3)));
        match survey.material.ec {
            Some(ec) => grounds.input("biochar", format!("{ec} dS/m, read in 20 parts of water")),
            None => grounds.assume("The biochar has no salts to speak of; its bag doesn't say."),
        }
    };
    let mut figures = vec![figure(
        "bed-salts-rise",
        "salts the bed gains (1:1)",
        gain.rise,
        bed(
            "cations brought ÷ soil of the worked depth × 0.1 (0.06–0.145) dS/m, and the biochar's own",
            &[USSL_60.from_memory(), ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
        ),
    )];
    if let Some(ec) = measured(survey) {
        let rule = "the soil's own and what it gains; it should stay below 2.7 dS/m";
        figures.push(figure(
            "bed-salts",
            "salts of the bed after it (1:1)",
            gain.rise.map(|r| r + ec),
            bed(rule, &[GUO_2020.opened(), USSL_60.from_memory()])
                .input("soil, 1:1", format!("{ec} dS/m")),
        ));
    }
    let rule = "the gain in 1:1 × 100 ÷ water at saturation; beside the thresholds of crops";
    figures.push(figure(
        "paste-salts-rise",
        "salts the bed gains, as saturated paste",
        gain.paste,
        bed(rule, &[FAO_2006.second_hand(), MAAS_1990.opened()])
            .input("texture", gain.texture.label()),
    ));
    figures
}

fn sayings(survey: &Survey<'_>, gain: &Gain, soak: Option<Band>) -> Vec<String> {
    let mut sayings = Vec::new();
    if measured(survey).unwrap_or(0.0) + gain.rise.high > MOST_EC {
        sayings.push(
            "It may bring the salts past 2.7 dS/m (1:1). Have the salts of the mixture tested, or \
             give half this year."
                .to_string(),
        );
    }
    if survey.soil.get(Property::Ec).is_none() {
        sayings.push(
            "The soil's own salts weren't measured; what it gains comes on top of them."
                .to_string(),
        );
    }
    let before = survey.ece().map_or(0.0, |ece| ece.likely);
    let losing: Vec<&'static str> = CROPS
        .iter()
        .filter(|crop| crop.grows_in(survey.plants()))
        .filter(|c| before <= c.threshold && before + gain.paste.likely > c.threshold)
        .map(|crop| crop.name)
        .collect();
    if !losing.is_empty() {
        sayings.push(format!(
            "Until rain or water has taken them down, the salts are likely past what these bear \
             without loss: {}. Spread it a month before, or sow others first.",
            losing.join(", ")
        ));
    }
    if soak.is_some_and(|soak| soak.likely > MILD) {
        sayings.push(
            "The soaking water is far too strong for plants: never pour it on roots or leaves."
                .to_string(),
        );
    }
    sayings
}
