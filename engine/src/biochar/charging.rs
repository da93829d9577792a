//! Charging by mass balance: water to wet the biochar, a nitrogen target,
//! what each source brings, and how long it takes.

use crate::biochar::charge::sources::own_label;
use crate::biochar::facts::Facts;
use crate::biochar::rate::Dose;
use crate::biochar::{Charging, Material, Path};
use crate::case::{Bag, Case, Charge, ChargeSource, SourceFigures};
use crate::quantity::{
    Band, Figure, Grounds, Measures, Unit, in_readers, measured_out, readers_symbol, shown,
    significant,
};
use crate::soil::Property;
use crate::sources::{
    ARITHMETIC, COMMON_PRACTICE, Citation, EUDOXIE_2019, GAI_2014, HYDROCHAR_KINETICS,
    KAMMANN_2015, OUR_CHOICE, SUANSA_2021,
};

/// Nitrogen wanted, g per kg of dry biochar.
/// Source: our choice between 2.3 (Gai 2014) and 2.1–5.2 (Kammann 2015).
pub const TARGET: Band = Band { low: 1.0, likely: 3.0, high: 5.0 };

/// Uptake from solution, per hour: the slowest and the fastest published, and
/// a cautious likely value.
/// Source: published uptake takes minutes to days; the cautious likely value is our choice.
pub(super) const UPTAKE_PER_HOUR: Band = Band { low: 0.02, likely: 0.024, high: 1.0 };

/// Days in contact with moist compost. Source: our choice.
pub(super) const SOLID_DAYS: Band = Band { low: 14.0, likely: 28.0, high: 42.0 };

/// Days soaking in a solution. Source: our choice from [`UPTAKE_PER_HOUR`].
pub(super) const SOAK_DAYS: Band = Band { low: 3.0, likely: 7.0, high: 7.0 };

/// Below this the days double, °C. Source: our choice.
pub(super) const COLD: f64 = 10.0;

/// Share taken up after `hours`, 0–1, at `per_hour`.
pub fn taken_up(hours: f64, per_hour: f64) -> f64 {
    1.0 - (-per_hour * hours).exp()
}

/// Litres of water that wet `kg` of dry biochar holding `grams` per gram.
pub fn water_to_wet(kg: f64, grams: f64) -> f64 {
    kg * grams
}

/// How a source is used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Form {
    /// Mixed in; at most so many litres of it for one litre of biochar.
    Solid(f64),
    /// Soaked in, as much as the target needs and the biochar can drink.
    Liquid,
    /// Soaked in, as much as the biochar can still drink.
    Filling,
    /// Stirred into the water; measured by its nitrogen.
    Dissolved,
}

pub(super) struct Supply {
    pub source: ChargeSource,
    pub label: &'static str,
    brings: &'static str,
    figure: &'static str,
    pub form: Form,
    /// Mineral nitrogen, g per litre. Source: from memory.
    pub nitrogen: Band,
    /// Usual nitrogen in all, % of its weight; a label's own replaces it.
    pub percent: f64,
    brings_phosphorus: bool,
    citation: Citation,
}

macro_rules! supply {
    ($source:ident, $name:literal, $label:literal, $form:expr, $nitrogen:expr, $percent:literal, $phosphorus:literal, $citation:expr) => {
        Supply {
            source: ChargeSource::$source,
            label: $label,
            brings: concat!("nitrogen from the ", $label),
            figure: concat!("nitrogen-from-", $name),
            form: $form,
            nitrogen: Band { low: $nitrogen.0, likely: $nitrogen.1, high: $nitrogen.2 },
            percent: $percent,
            brings_phosphorus: $phosphorus,
            citation: $citation,
        }
    };
}

const MEMORY: Citation = COMMON_PRACTICE.from_memory();
const NONE: (f64, f64, f64) = (0.0, 0.0, 0.0);

/// In the order they are counted: what is mixed in, what the biochar drinks,
/// and fertiliser for what is still missing.
static SUPPLIES: [Supply; 12] = {
    use Form::{Dissolved, Filling, Liquid, Solid};
    [
        supply!(Compost, "compost", "compost", Solid(1.0), (0.1, 0.25, 0.5), 1.0, true, MEMORY),
        supply!(
            Vermicompost,
            "vermicompost",
            "worm castings",
            Solid(0.5),
            (0.3, 0.5, 0.8),
            1.0,
            true,
            MEMORY
        ),
        supply!(
            AgedManure,
            "aged-manure",
            "aged manure",
            Solid(0.5),
            (0.2, 0.6, 1.5),
            0.7,
            true,
            MEMORY
        ),
        supply!(Urine, "urine", "urine", Liquid, (5.0, 7.0, 9.0), 0.7, false, MEMORY),
        supply!(
            FishHydrolysate,
            "fish-hydrolysate",
            "fish hydrolysate",
            Liquid,
            (2.0, 8.0, 20.0),
            2.0,
            true,
            MEMORY
        ),
        supply!(
            PlantLiquid,
            "plant-liquid",
            "nettle or comfrey liquid",
            Liquid,
            (0.05, 0.3, 0.8),
            0.03,
            false,
            MEMORY
        ),
        supply!(
            CompostTea,
            "compost-tea",
            "compost tea",
            Filling,
            (0.02, 0.05, 0.1),
            0.005,
            false,
            EUDOXIE_2019.from_memory()
        ),
        supply!(
            AmmoniumSulfate,
            "ammonium-sulfate",
            "ammonium sulfate",
            Dissolved,
            NONE,
            21.2,
            false,
            ARITHMETIC.derived()
        ),
        supply!(
            CalciumAmmoniumNitrate,
            "calcium-ammonium-nitrate",
            "calcium ammonium nitrate",
            Dissolved,
            NONE,
            27.0,
            false,
            MEMORY
        ),
        supply!(BloodMeal, "blood-meal", "blood meal", Dissolved, NONE, 12.0, false, MEMORY),
        supply!(
            NitrogenFertiliser,
            "nitrogen-fertiliser",
            "nitrogen fertiliser",
            Dissolved,
            NONE,
            15.0,
            false,
            ARITHMETIC.derived()
        ),
        supply!(
            CompleteFertiliser,
            "complete-fertiliser",
            "complete (N-P-K) fertiliser",
            Dissolved,
            NONE,
            15.0,
            true,
            ARITHMETIC.derived()
        ),
    ]
};

/// What charges with nitrogen; wood ash brings none.
pub(super) fn supply(source: ChargeSource) -> Option<&'static Supply> {
    SUPPLIES.iter().find(|s| s.source == source)
}

/// What the person knows of a source.
pub(super) fn known(charge: &Charge, source: ChargeSource) -> Option<&SourceFigures> {
    charge.sources.iter().find(|own| own.source == source)
}

impl Supply {
    /// Nitrogen of its own label, %.
    fn labelled(&self, charge: &Charge) -> Option<f64> {
        own_label(charge, self.source).map(|[nitrogen, ..]| nitrogen)
    }

    /// Litres there are of it.
    fn at_most(&self, charge: &Charge) -> f64 {
        known(charge, self.source).and_then(|own| own.litres).map_or(f64::INFINITY, |l| l.max(0.0))
    }

    /// Whether it must lie with the biochar for weeks.
    pub fn is_slow(&self) -> bool {
        matches!(self.form, Form::Solid(_)) || self.source == ChargeSource::BloodMeal
    }

    /// Whether it brings phosphorus to mind; its label knows best.
    pub fn brings_phosphorus(&self, charge: &Charge) -> bool {
        own_label(charge, self.source).map_or(self.brings_phosphorus, |label| label[1] > 0.0)
    }
}

/// Days to charge, by how the biochar is charged and how warm it is.
pub(super) fn days(slow: bool, charge: &Charge) -> Band {
    let cold = charge.temperature_c.is_some_and(|t| t < COLD);
    let days = if slow { SOLID_DAYS } else { SOAK_DAYS };
    if cold { days.map(|d| 2.0 * d) } else { days }
}

/// Water that wets the biochar, litres, less what is in it already.
pub(super) fn water(kg: Band, material: &Material, bag: &Bag) -> Band {
    let moist = bag.moisture_percent.filter(|m| (0.0..=90.0).contains(m)).unwrap_or(0.0);
    let there = |kg: f64| kg * moist / (100.0 - moist);
    let wets = |kg: f64, grams: f64| (water_to_wet(kg, grams) - there(kg)).max(0.0);
    Band::new(
        wets(kg.low, material.water.low),
        wets(kg.likely, material.water.likely),
        wets(kg.high, material.water.high),
    )
}

/// Nitrogen wanted, g per kg; the low end where the soil has nitrogen to spare.
pub(super) fn wanted_per_kg(facts: &Facts) -> Band {
    if facts.surplus(Property::NitrateN) {
        Band::new(TARGET.low, TARGET.low, TARGET.likely)
    } else {
        TARGET
    }
}

/// A recipe and what it was made from.
#[derive(Clone, Debug, PartialEq)]
pub struct Recipe {
    /// For the plan.
    pub charging: Charging,
    /// How long it takes, days.
    pub days: Band,
    /// Share of the nitrogen target reached, 0–1.
    pub reached: Band,
    /// The sources used.
    pub sources: Vec<ChargeSource>,
}

/// What charges the biochar: what is on hand and does no harm, or a sensible
/// choice when nobody said.
pub(super) fn choose(case: &Case, spare_phosphorus: bool) -> (Vec<&'static Supply>, Vec<String>) {
    let mut notes = Vec::new();
    let mut used: Vec<&'static Supply> = Vec::new();
    for supply in SUPPLIES.iter().filter(|s| case.charge_with.contains(&s.source)) {
        if spare_phosphorus && supply.brings_phosphorus(&case.charge) {
            notes.push(format!(
                "Leave the {} out: phosphorus is high already, and it brings more.",
                supply.label
            ));
        } else {
            used.push(supply);
        }
    }
    if case.charge_with.contains(&ChargeSource::WoodAsh) {
        notes.push(
            "Wood ash brings no nitrogen. Never mix it with urine, manure or an ammonium feed: it \
             drives off ammonia, which bites lungs and eyes."
                .to_string(),
        );
    }
    if used.is_empty() {
        let chosen = if spare_phosphorus {
            notes.push(
                "Use a soluble nitrogen fertiliser that brings no phosphorus (or urine)."
                    .to_string(),
            );
            // Unless its own label says otherwise.
            let own = |s: &&Supply| !s.brings_phosphorus(&case.charge);
            supply(ChargeSource::NitrogenFertiliser)
                .filter(own)
                .map_or(ChargeSource::AmmoniumSulfate, |s| s.source)
        } else {
            ChargeSource::Compost
        };
        used.extend(supply(chosen));
    }
    (used, notes)
}

/// The recipe for a dose.
pub fn recipe(facts: &Facts, path: Path, case: &Case, dose: &Dose, material: &Material) -> Recipe {
    let (measures, charge) = (case.measures, &case.charge);
    let (used, notes) = choose(case, facts.surplus(Property::Phosphorus));
    let kg = dose.mass;
    let water = water(kg, material, &case.biochar);
    let per_kg = wanted_per_kg(facts);
    let target = kg.likely * per_kg.likely;

    let weigh = |rule: &str, sources: &[Citation]| {
        Grounds::new(rule, sources).input("biochar, dry", shown(&kg, Unit::Kg, Measures::Metric))
    };
    let mut figures = vec![
        Figure {
            name: "water-to-wet",
            label: "water to wet it",
            band: water,
            unit: Unit::Litre,
            grounds: material
                .explain(
                    weigh("dry mass × water it takes up", &[SUANSA_2021.opened()]),
                    &[("water, g per g", material.water, Unit::None)],
                )
                .assume(match case.biochar.moisture_percent {
                    Some(_) => "What the bag holds of water is taken off.",
                    None => "The biochar is dry when you start.",
                }),
        },
        Figure {
            name: "nitrogen-target",
            label: "nitrogen wanted",
            band: per_kg.map(|g| g * kg.likely),
            unit: Unit::Gram,
            grounds: weigh(
                "dry mass × 3 (1–5) g nitrogen per kg; the low end where the soil has nitrogen to \
                 spare",
                &[GAI_2014.opened(), KAMMANN_2015.second_hand(), OUR_CHOICE.unsourced()],
            ),
        },
    ];

    let weight = |grams: f64| {
        format!(
            "{}\u{a0}{}",
            significant(in_readers(grams, Unit::Gram, measures), 2),
            readers_symbol(Unit::Gram, measures)
        )
    };
    let (mut dissolved, mut drinks, mut mixes) = (Vec::new(), Vec::new(), Vec::new());
    let mut brought = Band::exactly(0.0);
    let mut water_left = water.likely;
    for supply in &used {
        let missing = (target - brought.likely).max(0.0);
        let label = supply.labelled(charge);
        let per_litre =
            supply.nitrogen.map(|g| g * label.unwrap_or(supply.percent) / supply.percent);
        let most = supply.at_most(charge).min(match supply.form {
            Form::Filling => f64::INFINITY,
            _ => missing / per_litre.likely,
        });
        let bring = |volume: f64| (Some(volume), per_litre.map(|g| g * volume));
        let (amount, nitrogen) = match supply.form {
            Form::Solid(share) => bring(most.min(dose.litres * share)),
            Form::Liquid | Form::Filling => bring(most.min(water_left)),
            Form::Dissolved => (None, Band::exactly(missing)),
        };
        // What is left over by rounding is nothing to weigh out.
        if nitrogen.high <= 1e-6 * target {
            continue;
        }
        match (supply.form, amount) {
            (Form::Solid(_), Some(volume)) => {
                mixes.push(format!(
                    "Mix in {} of {}.",
                    measured_out(volume, measures),
                    supply.label
                ));
            }
            (_, Some(volume)) => {
                water_left -= volume;
                drinks.push(format!("{} of {}", measured_out(volume, measures), supply.label));
            }
            (_, None) => {
                let percent = label.filter(|n| *n > 0.0).unwrap_or(supply.percent);
                let enough = format!(
                    "enough for {} of nitrogen: divide that by the per cent N on the label and \
                     multiply by 100. At {} % it is {}.",
                    weight(missing),
                    significant(percent, 2),
                    weight(100.0 * missing / percent)
                );
                dissolved.push((supply.label, enough));
            }
        }
        brought = brought.plus(nitrogen);
        figures.push(brings(supply, per_litre, amount, nitrogen));
    }
    if water_left > 1e-6 {
        drinks.push(format!("{} of water", measured_out(water_left, measures)));
    }
    let mut steps = Vec::new();
    if path == Path::Charged {
        steps.push("Biochar bought charged can go straight in. To charge it yourself:".to_string());
    }
    let is_wet = drinks.is_empty();
    let stir = |(what, enough): (&str, String)| {
        if is_wet {
            format!(
                "Stir {what} into as little water as it dissolves in, and sprinkle it on: {enough}"
            )
        } else {
            format!("First stir {what} into the liquid, {enough}")
        }
    };
    let dissolved: Vec<String> = dissolved.into_iter().map(stir).collect();
    if !is_wet {
        steps.extend_from_slice(&dissolved);
    }
    let biochar = measured_out(dose.litres, measures);
    steps.push(if is_wet {
        format!(
            "The biochar ({biochar}) is wet already and takes up no more. Work outdoors, on a calm \
             day. Wear a dust mask and gloves."
        )
    } else {
        format!(
            "Wet {biochar} of biochar with about {}, outdoors, on a calm day. Wear a dust mask and \
             gloves. Stop when it is as damp as a wrung sponge.",
            drinks.join(" and ")
        )
    });
    if is_wet {
        steps.extend(dissolved);
    }
    steps.extend(mixes);
    let reached = if target > 0.0 { brought.map(|g| g / target) } else { Band::exactly(0.0) };
    figures.push(Figure {
        name: "target-reached",
        label: "share of the nitrogen wanted",
        band: reached.map(|r| r * 100.0),
        unit: Unit::Percent,
        grounds: Grounds::new(
            "mineral nitrogen brought ÷ nitrogen wanted",
            &[ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
        )
        .input("nitrogen brought", shown(&brought, Unit::Gram, Measures::Metric))
        .input("nitrogen wanted", format!("{} g", significant(target, 2))),
    });

    let solid = used.iter().any(|s| s.is_slow());
    let days = days(solid, charge);
    figures.push(Figure {
        name: "charging-days",
        label: "days to charge",
        band: days,
        unit: Unit::Days,
        grounds: if solid {
            Grounds::new("contact with moist compost", &[OUR_CHOICE.unsourced()])
        } else {
            Grounds::new(
                "share taken up = 1 − e^(−k × hours), k = 0.024 (0.02–1) an hour",
                &[HYDROCHAR_KINETICS.opened(), OUR_CHOICE.unsourced()],
            )
        }
        .assume(match charge.temperature_c {
            Some(t) if t < COLD => "Colder than 10 °C: twice as long.",
            Some(_) => "Warm enough, as you said.",
            None => "Warmer than 10 °C; in the cold allow twice as long.",
        }),
    });
    steps.push(if solid {
        format!(
            "Keep it damp and under cover for {} days ({} to {}). Turn it once a week.",
            days.likely, days.low, days.high
        )
    } else if is_wet {
        format!("Keep it covered for {} to {} days, and turn it once a day.", days.low, days.high)
    } else {
        format!(
            "Let it soak {} to {} days, stir once a day, then drain and let it rest a week.",
            days.low, days.high
        )
    });
    if reached.likely < 0.25 {
        steps.push(format!(
            "This reaches only about {} % of the nitrogen wanted: it brings life, but it does not \
             charge. Add compost, urine or a fertiliser{}.",
            significant(reached.likely * 100.0, 1),
            if facts.surplus(Property::Phosphorus) { " without phosphorus" } else { "" }
        ));
    } else if reached.likely < 0.9 {
        steps.push(format!(
            "This brings about {} % of the nitrogen wanted at once; compost goes on giving more \
             as it breaks down.",
            significant(reached.likely * 100.0, 1)
        ));
    }
    if used.iter().any(|s| s.source == ChargeSource::Urine) {
        steps.push(
            "Use urine from healthy people only, wear gloves, and keep it off the parts you eat."
                .to_string(),
        );
    }
    steps.extend(notes);
    steps.push("Spread it while it is still damp.".to_string());
    Recipe {
        charging: Charging { figures, steps, uptake: uptake(solid, charge) },
        days,
        reached,
        sources: used.iter().map(|s| s.source).collect(),
    }
}

fn brings(supply: &Supply, per_litre: Band, litres: Option<f64>, nitrogen: Band) -> Figure {
    let mut grounds = match litres {
        Some(_) => Grounds::new("litres × mineral nitrogen in a litre", &[supply.citation]).input(
            "mineral nitrogen, g per litre",
            shown(&per_litre, Unit::None, Measures::Metric),
        ),
        None => Grounds::new("what is still missing from the nitrogen wanted", &[supply.citation]),
    };
    if let Some(volume) = litres {
        grounds = grounds.input(supply.label, format!("{} L", significant(volume, 2)));
    }
    Figure { name: supply.figure, label: supply.brings, band: nitrogen, unit: Unit::Gram, grounds }
}

/// The uptake curve by day. In compost nine tenths are taken for done when
/// the contact time is over.
fn uptake(solid: bool, charge: &Charge) -> Vec<(f64, f64, f64, f64)> {
    let days = days(solid, charge);
    let (step, rates) = if solid {
        let per_hour = |days: f64| 10f64.ln() / (days * 24.0);
        (3.0, Band::new(per_hour(days.high), per_hour(days.likely), per_hour(days.low)))
    } else {
        let slower = days.likely / SOAK_DAYS.likely;
        (1.0, UPTAKE_PER_HOUR.map(|k| k / slower))
    };
    let step = if days.high > SOLID_DAYS.high { 2.0 * step } else { step };
    let points = (days.high / step) as u32;
    (0..=points)
        .map(|point| {
            let day = f64::from(point) * step;
            let at = |rate| 100.0 * taken_up(day * 24.0, rate);
            (day, at(rates.low), at(rates.likely), at(rates.high))
        })
        .collect()
}
