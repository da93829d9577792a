//! Whether the charge brings too many salts: in the soaking water, and in the bed.

use crate::chemistry::Derived;
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
pub struct Salts {
    /// The soaking water, dS/m; `None` where it is plain water.
    pub soak: Option<Band>,
    /// What the bed gains in a mix of one part soil and one part water, dS/m.
    pub rise: Band,
    /// What the bed comes to in that mix, where the soil was measured in it.
    pub after: Option<Band>,
    /// It may pass the published limit.
    pub over: bool,
    /// Crops of the bed that the charge brings past their threshold.
    pub losing: Vec<&'static str>,
    /// What to do about it, in sentences.
    pub sayings: Vec<String>,
    /// All of it as figures.
    pub figures: Vec<Figure>,
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
    let material = &survey.material;
    let soak = (in_water.high > 0.0 && litres > 0.0)
        .then(|| conductivity(in_water.map(|charge| charge / litres)));
    // The soil the biochar goes into, kg.
    let soil = survey.bed.soil_per_m2().likely * dose.area;
    let from_charge = conductivity(in_all.map(|charge| charge / soil));
    let from_char = material.ec.map_or(Band::exactly(0.0), |ec| {
        dose.percent.map(|percent| ec * BAG_PARTS * percent / 100.0)
    });
    let rise = from_charge.plus(from_char);
    let measured = survey
        .soil
        .get(Property::Ec)
        .filter(|m| m.method == Some(Method::Water1To1) && m.unit == Unit::DsPerM)
        .map(|m| m.amount.number());
    let after = measured.map(|ec| rise.map(|r| r + ec));
    let worst = after.unwrap_or(rise);

    let texture = survey.texture.unwrap_or(Texture::Loam);
    let organic = survey.soil.value(Property::OrganicMatter).unwrap_or(USUAL_ORGANIC_MATTER);
    let water = saturation_water(texture, None, organic);
    let paste_rise = Band::new(
        from_water(rise.low, 1.0, water.high),
        from_water(rise.likely, 1.0, water.likely),
        from_water(rise.high, 1.0, water.low),
    );
    let before = survey.chemistry.get(Derived::Ece).map_or(0.0, |f| f.band.likely);
    let plants = survey.case.plants.unwrap_or_default();
    let losing: Vec<&'static str> = CROPS
        .iter()
        .filter(|crop| crop.grows_in(plants))
        .filter(|c| before <= c.threshold && before + paste_rise.likely > c.threshold)
        .map(|crop| crop.name)
        .collect();

    let figure =
        |name, label, band, grounds| Figure { name, label, band, unit: Unit::DsPerM, grounds };
    let mut figures = Vec::new();
    if let Some(soak) = soak {
        figures.push(figure(
            "soak-salts",
            "salts of the soaking water",
            soak,
            Grounds::new(
                "charge of the dissolved cations, mmol(c)/L × 0.1 (0.06–0.145) dS/m",
                &[USSL_60.from_memory(), OUR_CHOICE.unsourced()],
            )
            .input("cations, mmol(c)", shown(&in_water, Unit::None, Measures::Metric))
            .input("water", format!("{} L", significant(litres, 3))),
        ));
    }
    let bed = |rule: &str, sources: &[Citation]| {
        let mut grounds = Grounds::new(rule, sources)
            .input("cations brought, mmol(c)", shown(&in_all, Unit::None, Measures::Metric))
            .input("soil it goes into", format!("{} kg", significant(soil, 3)));
        match material.ec {
            Some(ec) => {
                grounds = grounds.input("biochar", format!("{ec} dS/m, read in 20 parts of water"));
            }
            None => {
                grounds =
                    grounds.assume("The biochar has no salts to speak of; its bag doesn't say.");
            }
        }
        grounds
    };
    figures.push(figure(
        "bed-salts-rise",
        "salts the bed gains (1:1)",
        rise,
        bed(
            "cations brought ÷ soil of the worked depth × 0.1 (0.06–0.145) dS/m, and the biochar's own",
            &[USSL_60.from_memory(), ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
        ),
    ));
    if let (Some(after), Some(ec)) = (after, measured) {
        figures.push(figure(
            "bed-salts",
            "salts of the bed after it (1:1)",
            after,
            bed(
                "the soil's own and what it gains; it should stay below 2.7 dS/m",
                &[GUO_2020.opened(), USSL_60.from_memory()],
            )
            .input("soil, 1:1", format!("{ec} dS/m")),
        ));
    }
    figures.push(figure(
        "paste-salts-rise",
        "salts the bed gains, as saturated paste",
        paste_rise,
        bed(
            "the gain in 1:1 × 100 ÷ water at saturation; beside the thresholds of crops",
            &[FAO_2006.second_hand(), MAAS_1990.opened()],
        )
        .input("texture", texture.label()),
    ));

    let mut sayings = Vec::new();
    let over = worst.likely > MOST_EC;
    if over {
        sayings.push(
            "Don't give the bed this charge: it would bring the salts past 2.7 dS/m (1:1), more \
             than treated soil should have. Spread the biochar over twice the area, charge with \
             less, or wash the soil first."
                .to_string(),
        );
    } else if worst.high > MOST_EC {
        sayings.push(
            "It may bring the salts past 2.7 dS/m (1:1). Have the salts of the mixture tested, or \
             give half this year."
                .to_string(),
        );
    }
    if measured.is_none() && survey.soil.get(Property::Ec).is_none() {
        sayings.push(
            "The soil's own salts weren't measured; what it gains comes on top of them."
                .to_string(),
        );
    }
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
    Salts { soak, rise, after, over, losing, sayings, figures }
}
