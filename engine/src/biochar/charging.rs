//! Charging by mass balance: water to wet the biochar, a nitrogen target,
//! what each source brings, and how long it takes.

use crate::biochar::facts::Facts;
use crate::biochar::rate::Dose;
use crate::biochar::{Charging, Material, Path};
use crate::case::ChargeSource;
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
const UPTAKE_PER_HOUR: Band = Band { low: 0.02, likely: 0.024, high: 1.0 };

/// Days in contact with moist compost. Source: our choice.
const SOLID_DAYS: Band = Band { low: 14.0, likely: 28.0, high: 42.0 };

/// Days soaking in a solution. Source: our choice from [`UPTAKE_PER_HOUR`].
const SOAK_DAYS: Band = Band { low: 3.0, likely: 7.0, high: 7.0 };

/// Share taken up after `hours`, 0–1, at `per_hour`.
pub fn taken_up(hours: f64, per_hour: f64) -> f64 {
    1.0 - (-per_hour * hours).exp()
}

/// Litres of water that wet `kg` of dry biochar holding `grams` per gram.
pub fn water_to_wet(kg: f64, grams: f64) -> f64 {
    kg * grams
}

/// How a source is used.
#[derive(Clone, Copy, PartialEq)]
enum Form {
    /// Mixed in; litres of it for one litre of biochar.
    Solid(f64),
    /// Soaked in, as much as the target needs and the biochar can drink.
    Liquid,
    /// Soaked in, as much as the biochar can still drink.
    Filling,
    /// Dissolved in the water; measured by its nitrogen.
    Dissolved,
}

struct Supply {
    source: ChargeSource,
    label: &'static str,
    brings: &'static str,
    figure: &'static str,
    form: Form,
    /// Mineral nitrogen, g per litre. Source: from memory.
    nitrogen: Band,
    brings_phosphorus: bool,
    citation: Citation,
}

/// In the order they are counted: what is mixed in, what the biochar drinks,
/// and fertiliser for what is still missing.
static SUPPLIES: [Supply; 6] = [
    Supply {
        source: ChargeSource::Compost,
        label: "compost",
        brings: "nitrogen from the compost",
        figure: "nitrogen-from-compost",
        form: Form::Solid(1.0),
        nitrogen: Band { low: 0.1, likely: 0.25, high: 0.5 },
        brings_phosphorus: true,
        citation: COMMON_PRACTICE.from_memory(),
    },
    Supply {
        source: ChargeSource::Vermicompost,
        label: "worm castings",
        brings: "nitrogen from the worm castings",
        figure: "nitrogen-from-vermicompost",
        form: Form::Solid(0.5),
        nitrogen: Band { low: 0.3, likely: 0.5, high: 0.8 },
        brings_phosphorus: true,
        citation: COMMON_PRACTICE.from_memory(),
    },
    Supply {
        source: ChargeSource::Urine,
        label: "urine",
        brings: "nitrogen from the urine",
        figure: "nitrogen-from-urine",
        form: Form::Liquid,
        nitrogen: Band { low: 5.0, likely: 7.0, high: 9.0 },
        brings_phosphorus: false,
        citation: COMMON_PRACTICE.from_memory(),
    },
    Supply {
        source: ChargeSource::CompostTea,
        label: "compost tea",
        brings: "nitrogen from the compost tea",
        figure: "nitrogen-from-compost-tea",
        form: Form::Filling,
        nitrogen: Band { low: 0.02, likely: 0.05, high: 0.1 },
        brings_phosphorus: false,
        citation: EUDOXIE_2019.from_memory(),
    },
    Supply {
        source: ChargeSource::NitrogenFertiliser,
        label: "nitrogen fertiliser",
        brings: "nitrogen from the fertiliser",
        figure: "nitrogen-from-nitrogen-fertiliser",
        form: Form::Dissolved,
        nitrogen: Band { low: 0.0, likely: 0.0, high: 0.0 },
        brings_phosphorus: false,
        citation: ARITHMETIC.derived(),
    },
    Supply {
        source: ChargeSource::CompleteFertiliser,
        label: "complete (N-P-K) fertiliser",
        brings: "nitrogen from the complete fertiliser",
        figure: "nitrogen-from-complete-fertiliser",
        form: Form::Dissolved,
        nitrogen: Band { low: 0.0, likely: 0.0, high: 0.0 },
        brings_phosphorus: true,
        citation: ARITHMETIC.derived(),
    },
];

fn supply(source: ChargeSource) -> &'static Supply {
    SUPPLIES.iter().find(|s| s.source == source).unwrap_or(&SUPPLIES[0])
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
fn choose(on_hand: &[ChargeSource], spare_phosphorus: bool) -> (Vec<&'static Supply>, Vec<String>) {
    let mut notes = Vec::new();
    let mut used: Vec<&'static Supply> = Vec::new();
    for supply in SUPPLIES.iter().filter(|s| on_hand.contains(&s.source)) {
        if spare_phosphorus && supply.brings_phosphorus {
            notes.push(format!(
                "Leave the {} out: phosphorus is high already, and it brings more.",
                supply.label
            ));
        } else {
            used.push(supply);
        }
    }
    if used.is_empty() {
        let chosen = if spare_phosphorus {
            notes.push(
                "Use a soluble nitrogen fertiliser that brings no phosphorus (or urine)."
                    .to_string(),
            );
            ChargeSource::NitrogenFertiliser
        } else {
            ChargeSource::Compost
        };
        used.push(supply(chosen));
    }
    (used, notes)
}

/// The recipe for a dose.
pub fn recipe(
    facts: &Facts,
    path: Path,
    on_hand: &[ChargeSource],
    dose: &Dose,
    material: &Material,
    measures: Measures,
) -> Recipe {
    let (used, notes) = choose(on_hand, facts.surplus(Property::Phosphorus));
    let kg = dose.mass;
    let water = Band::new(
        water_to_wet(kg.low, material.water.low),
        water_to_wet(kg.likely, material.water.likely),
        water_to_wet(kg.high, material.water.high),
    );
    // Where the soil has nitrogen to spare, the low end of the target is enough.
    let per_kg = if facts.surplus(Property::NitrateN) {
        Band::new(TARGET.low, TARGET.low, TARGET.likely)
    } else {
        TARGET
    };
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
                .assume("The biochar is dry when you start."),
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
        let bring = |volume: f64| (Some(volume), supply.nitrogen.map(|g| g * volume));
        let (amount, nitrogen) = match supply.form {
            Form::Solid(per_litre) => bring(dose.litres * per_litre),
            Form::Liquid => bring(water_left.min(missing / supply.nitrogen.likely)),
            Form::Filling => bring(water_left),
            Form::Dissolved => (None, Band::exactly(missing)),
        };
        if nitrogen.high <= 0.0 {
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
            (_, None) => dissolved.push(format!(
                "First dissolve {} in the liquid, enough for {} of nitrogen: divide that by the \
                 per cent N on the label and multiply by 100. At 15 % it is {}.",
                supply.label,
                weight(missing),
                weight(missing / 0.15)
            )),
        }
        brought = brought.plus(nitrogen);
        figures.push(brings(supply, amount, nitrogen));
    }
    if water_left > 1e-6 {
        drinks.push(format!("{} of water", measured_out(water_left, measures)));
    }
    let mut steps = Vec::new();
    if path == Path::Charged {
        steps.push("Biochar bought charged can go straight in. To charge it yourself:".to_string());
    }
    steps.extend(dissolved);
    steps.push(format!(
        "Wet {} of biochar with about {}, outdoors, on a calm day. Wear a dust mask and gloves. \
         Stop when it is as damp as a wrung sponge.",
        measured_out(dose.litres, measures),
        drinks.join(" and ")
    ));
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

    let solid = used.iter().any(|s| matches!(s.form, Form::Solid(_)));
    let days = if solid { SOLID_DAYS } else { SOAK_DAYS };
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
        .assume("Warmer than 10 °C; in the cold allow twice as long."),
    });
    steps.push(if solid {
        format!(
            "Keep it damp and under cover for {} days ({} to {}). Turn it once a week.",
            days.likely, days.low, days.high
        )
    } else {
        "Let it soak 3 to 7 days, stir once a day, then drain and let it rest a week.".to_string()
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
        charging: Charging { figures, steps, uptake: uptake(solid) },
        days,
        reached,
        sources: used.iter().map(|s| s.source).collect(),
    }
}

fn brings(supply: &Supply, litres: Option<f64>, nitrogen: Band) -> Figure {
    let mut grounds = match litres {
        Some(_) => Grounds::new("litres × mineral nitrogen in a litre", &[supply.citation]).input(
            "mineral nitrogen, g per litre",
            shown(&supply.nitrogen, Unit::None, Measures::Metric),
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
fn uptake(solid: bool) -> Vec<(f64, f64, f64, f64)> {
    let (days, step, rates) = if solid {
        let per_hour = |days: f64| 10f64.ln() / (days * 24.0);
        let rates =
            (per_hour(SOLID_DAYS.high), per_hour(SOLID_DAYS.likely), per_hour(SOLID_DAYS.low));
        (42, 3, rates)
    } else {
        (7, 1, (UPTAKE_PER_HOUR.low, UPTAKE_PER_HOUR.likely, UPTAKE_PER_HOUR.high))
    };
    (0..=days)
        .step_by(step)
        .map(|day| {
            let at = |rate| 100.0 * taken_up(f64::from(day) * 24.0, rate);
            (f64::from(day), at(rates.0), at(rates.1), at(rates.2))
        })
        .collect()
}
