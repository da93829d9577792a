//! Nitrogen, phosphate, potash, magnesium and sulfur for a year, by the level of the soil.

use super::{Ground, Need, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::{Finding, Level};
use crate::soil::{PlantGroup, Property};
use crate::sources::{
    ARITHMETIC, CORNELL_LAWNS, Citation, EPSOM_ARITHMETIC, NC_EQUATIONS, NC_LAWNS, OUR_CHOICE,
    RB209_RATES, TEXAS_RATES, UC_NITRATE, UMASS_RATES, UMN_COMPOST,
};

/// kg/ha in 1 lb/1000 sq ft: 0.45359237 kg on 92.90304 m².
/// Source: legal definitions of the pound and the foot (derived).
pub const KG_PER_HA_IN_LB_PER_1000_SQ_FT: f64 = 48.824_28;

/// Grams on 1 m² in 1 kg/ha.
const GRAMS_PER_M2_IN_KG_PER_HA: f64 = 0.1;

/// What a year's dressing is on a soil that is very low and low, kg/ha.
struct Rates {
    very_low: Band,
    low: Band,
}

/// Phosphate (P2O5). Low end: RB209, 60 and 30 kg/ha above maintenance at index 0 and 1; likely:
/// Texas A&M, 80 lb/acre; high end: North Carolina's equation 14 at index 0, 150 lb/acre, and for
/// a low soil the University of Massachusetts' 3 lb/1000 sq ft.
/// Source: RB209 by Tried & Tested; Texas A&M table 3; NCDA&CS Circular 1; UMass (all opened).
const PHOSPHATE: Rates = Rates {
    very_low: Band { low: 60.0, likely: 89.7, high: 168.1 },
    low: Band { low: 30.0, likely: 89.7, high: 146.5 },
};

/// Potash (K2O), likewise: Texas A&M 100 and 80 lb/acre; North Carolina's equation 14 at index 0
/// and 25, 150 and 88.5 lb/acre.
/// Source: RB209 by Tried & Tested; Texas A&M table 3; NCDA&CS Circular 1 (all opened).
const POTASH: Rates = Rates {
    very_low: Band { low: 60.0, likely: 112.1, high: 168.1 },
    low: Band { low: 30.0, likely: 89.7, high: 99.2 },
};

/// Nitrogen for vegetables in a year: 2, 2.5 and 4 lb/1000 sq ft.
/// Source: UMass Extension (opened).
const VEGETABLE_NITROGEN: Band = Band { low: 97.6, likely: 122.1, high: 195.3 };

/// Nitrogen for a lawn in a year: many do with 1, tall fescue and bluegrass take 2.5–3 lb/1000 sq ft.
/// Source: NC State Extension (opened).
const LAWN_NITROGEN: Band = Band { low: 48.8, likely: 122.1, high: 146.5 };

/// The most nitrogen on a lawn at one time, kg/ha: 1 lb/1000 sq ft.
/// Source: Cornell University (opened).
const LAWN_AT_ONCE: f64 = KG_PER_HA_IN_LB_PER_1000_SQ_FT;

/// With this much organic matter the low end of the nitrogen range is enough, %.
/// Source: UMass: the low end on loam with much organic matter (opened); 5 % is our choice.
const RICH_IN_ORGANIC_MATTER: f64 = 5.0;

/// Nitrate-N above this needs no more, mg/kg.
/// Source: UC Cooperative Extension, nitrate guideline (opened).
const PLENTY_OF_NITRATE: f64 = 30.0;

/// Depth when nobody said, cm, and the density of dry soil, g/cm³. Source: our choice.
const USUAL_DEPTH: f64 = 15.0;
const USUAL_DENSITY: Band = Band { low: 1.1, likely: 1.3, high: 1.5 };

/// Share of magnesium in magnesium sulfate, MgSO4·7H2O.
/// Source: arithmetic from atomic masses (derived).
const MAGNESIUM_IN_EPSOM_SALT: f64 = 0.0986;

/// Nutrient in a layer of soil, kg/ha, from mg/kg, depth in cm and density in g/cm³.
///
/// Source: arithmetic (derived).
pub fn stock(mg_per_kg: f64, depth_cm: f64, density: f64) -> f64 {
    mg_per_kg * depth_cm * density * 0.1
}

/// A year's rate and, where the area is known, the amount for the bed.
pub(super) fn for_bed(
    ground: &Ground<'_>,
    names: [&'static str; 2],
    labels: [&'static str; 2],
    rate: Band,
    grounds: &Grounds,
    questions: &mut Vec<Question>,
) -> Vec<Figure> {
    let figure = |at: usize, band, unit, grounds| Figure {
        name: names[at],
        label: labels[at],
        band,
        unit,
        grounds,
    };
    let mut figures = vec![figure(0, rate, Unit::KgPerHa, grounds.clone())];
    match ground.area() {
        Some(area) => {
            let grams = rate.map(|kg| kg * GRAMS_PER_M2_IN_KG_PER_HA * area);
            let (band, unit) = if grams.likely < 1000.0 {
                (grams, Unit::Gram)
            } else {
                (grams.map(|g| g / 1000.0), Unit::Kg)
            };
            let of_bed = Grounds::new("kg/ha ÷ 10 = g on 1 m²; × area.", &[ARITHMETIC.derived()])
                .input("rate", shown(&rate, Unit::KgPerHa, ground.case.measures))
                .input(
                    "area",
                    shown(&Band::exactly(area), Unit::SquareMetre, ground.case.measures),
                );
            figures.push(figure(1, band, unit, of_bed));
        }
        None => questions.push(Question {
            id: QuestionId::Area,
            text: "How large is the bed?".into(),
            changes: "The amounts for this bed.".into(),
            about: Vec::new(),
            suggestion: None,
        }),
    }
    figures
}

/// A need that is only said, not measured out.
fn said(name: &'static str, verdict: Verdict, answer: impl Into<String>, grounds: Grounds) -> Need {
    Need { name, verdict, answer: answer.into(), grounds, ..Need::default() }
}

/// The judgement a need begins from; the need itself where nothing can be worked out.
fn level_of<'a>(
    ground: &'a Ground<'_>,
    property: Property,
    name: &'static str,
) -> Option<Result<(Level, &'a Finding), Need>> {
    let finding = ground.findings.get(property)?;
    Some(match finding.level {
        None => {
            let why = finding.not_judged.as_deref().unwrap_or_default();
            let answer = format!("It can't be said yet. {why}");
            Err(said(name, Verdict::Unknown, answer, finding.grounds.clone()))
        }
        Some(level) if level.is_short() && finding.rests_on_memory() => Err(said(
            name,
            Verdict::Unknown,
            format!(
                "Perhaps: the soil is {} by a range that we know only from memory. Ask the lab what it recommends.",
                level.label()
            ),
            finding.grounds.clone(),
        )),
        Some(level) => Ok((level, finding)),
    })
}

fn by_level(
    ground: &Ground<'_>,
    property: Property,
    names: [&'static str; 3],
    labels: [&'static str; 2],
    rates: &Rates,
    sources: &[Citation],
    questions: &mut Vec<Question>,
) -> Option<Need> {
    let [name, rate_name, bed_name] = names;
    let (level, finding) = match level_of(ground, property, name)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    let what = property.label();
    if level.is_surplus() {
        let (verdict, answer) = match (property, level) {
            (Property::Phosphorus, _) => (
                Verdict::Stop,
                "None, and stop adding phosphorus: no bone meal, no manure, no complete fertiliser. Let compost rest for some years.",
            ),
            (_, Level::Excess) => (Verdict::Stop, "None, and stop adding it for some years."),
            _ => (Verdict::Enough, "None: there is more than enough."),
        };
        let mut need = said(name, verdict, answer, finding.grounds.clone());
        if property == Property::Phosphorus {
            need.grounds.sources.push(UMN_COMPOST.opened());
        }
        return Some(need);
    }
    if level == Level::Sufficient {
        return Some(said(
            name,
            Verdict::Enough,
            format!("None this year: there is enough {what}. Test again in two or three years."),
            finding.grounds.clone(),
        ));
    }
    let rate = if level == Level::VeryLow { rates.very_low } else { rates.low };
    let mut grounds = Grounds::new(
        "A year's dressing by the level of the soil: the lowest, a middle and the highest of the published rates. They were made for field crops and gardens of one region each.",
        sources,
    )
    .input(what, format!("{} in the test", level.label()));
    grounds.sources.extend(finding.grounds.sources.iter().copied());
    let figures = for_bed(ground, [rate_name, bed_name], labels, rate, &grounds, questions);
    Some(Need {
        name,
        verdict: Verdict::Give,
        answer: format!(
            "The soil is {} in {what}: feed it this year, then test again.",
            level.label()
        ),
        figures,
        grounds,
        ..Need::default()
    })
}

pub(super) fn phosphate(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    by_level(
        ground,
        Property::Phosphorus,
        ["phosphate", "phosphate-rate", "phosphate-for-bed"],
        ["phosphate (P₂O₅) a year", "phosphate (P₂O₅) for the bed"],
        &PHOSPHATE,
        &[RB209_RATES.opened(), TEXAS_RATES.opened(), NC_EQUATIONS.derived(), UMASS_RATES.opened()],
        questions,
    )
}

pub(super) fn potash(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    by_level(
        ground,
        Property::Potassium,
        ["potash", "potash-rate", "potash-for-bed"],
        ["potash (K₂O) a year", "potash (K₂O) for the bed"],
        &POTASH,
        &[RB209_RATES.opened(), TEXAS_RATES.opened(), NC_EQUATIONS.derived()],
        questions,
    )
}

/// Nitrogen by the plants, less what nitrate the test found.
pub(super) fn nitrogen(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    let name = "nitrogen";
    let lawn = match ground.case.plants.unwrap_or_default() {
        PlantGroup::Lawn => true,
        PlantGroup::MixedVegetables
        | PlantGroup::LeafyVegetables
        | PlantGroup::FruitingVegetables
        | PlantGroup::RootCrops => false,
        PlantGroup::OrnamentalsAndTrees | PlantGroup::Berries | PlantGroup::AcidLovers => {
            let answer = "It can't be said: we hold no published rate for these plants. Most take little; ask your extension office.";
            return Some(said(name, Verdict::Unknown, answer, Grounds::default()));
        }
    };
    let nitrate = ground.soil.value(Property::NitrateN);
    if let Some(found) = nitrate.filter(|n| *n > PLENTY_OF_NITRATE) {
        let grounds = Grounds::new(
            "Nitrate-N above 30 mg/kg is more than plants need.",
            &[UC_NITRATE.opened()],
        )
        .input("nitrate-N", format!("{} mg/kg", significant(found, 3)));
        let answer = "None now: the soil holds more nitrate than plants need. Rain takes it down, so test again before you plant.";
        return Some(said(name, Verdict::Enough, answer, grounds));
    }
    let (mut rate, source) = if lawn {
        (LAWN_NITROGEN, NC_LAWNS.opened())
    } else {
        (VEGETABLE_NITROGEN, UMASS_RATES.opened())
    };
    let mut grounds = Grounds::new(
        "A year's nitrogen for these plants, less the nitrate in the soil.",
        &[source],
    );
    if ground.case.plants.is_none() {
        grounds = grounds.assume("Mixed vegetables, until you say what grows here.");
    }
    let rich =
        ground.soil.value(Property::OrganicMatter).filter(|om| *om >= RICH_IN_ORGANIC_MATTER);
    if let (Some(om), false) = (rich, lawn) {
        rate = Band::new(rate.low, rate.low, rate.likely);
        grounds = grounds
            .input("organic matter", format!("{} %", significant(om, 3)))
            .assume("A soil this rich gives off nitrogen itself: the low end is likely enough.");
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    if let Some(found) = nitrate {
        let depth = ground.depth();
        let held = USUAL_DENSITY.map(|density| stock(found, depth, density));
        rate = Band::new(
            (rate.low - held.high).max(0.0),
            (rate.likely - held.likely).max(0.0),
            (rate.high - held.low).max(0.0),
        );
        grounds = grounds
            .input("nitrate-N", format!("{} mg/kg", significant(found, 3)))
            .input("depth", shown(&Band::exactly(depth), Unit::Cm, ground.case.measures))
            .assume("Dry soil weighs 1.3 (1.1–1.5) g/cm³, and the nitrate is still there at planting: rain takes it down.");
        grounds.sources.push(ARITHMETIC.derived());
    }
    let labels = ["nitrogen (N) a year", "nitrogen (N) for the bed"];
    let names = ["nitrogen-rate", "nitrogen-for-bed"];
    let figures = for_bed(ground, names, labels, rate, &grounds, questions);
    let mut steps = Vec::new();
    if lawn {
        let most = shown(&Band::exactly(LAWN_AT_ONCE), Unit::KgPerHa, ground.case.measures);
        steps.push(format!("Never more than {most} at one time; two or three dressings a year."));
        grounds.sources.push(CORNELL_LAWNS.opened());
    } else {
        steps.push("Give half before planting, half when the plants grow fast.".into());
    }
    steps.push("Never before winter: rain washes it into the ground water.".into());
    let gives = rate.likely > 0.0;
    let answer = if gives {
        "These plants take nitrogen every year, and the soil does not store it for them."
    } else {
        "Little or none: the nitrate in the soil is likely enough."
    };
    let verdict = if gives { Verdict::Give } else { Verdict::Enough };
    Some(Need { name, verdict, answer: answer.into(), figures, steps, grounds, ..Need::default() })
}

/// Magnesium: the gap to sufficiency, by weight.
pub(super) fn magnesium(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    let name = "magnesium";
    let (level, finding) = match level_of(ground, Property::Magnesium, name)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    if !level.is_short() {
        let enough = "None: there is enough magnesium.";
        return Some(said(name, Verdict::Enough, enough, finding.grounds.clone()));
    }
    let found = ground.soil.value(Property::Magnesium);
    let wanted = finding.range.as_ref().filter(|r| r.unit == Unit::MgPerKg);
    let gap = found.zip(wanted.and_then(|r| r.sufficient_from)).map(|(v, from)| from - v);
    let limed = ground.findings.level(Property::Ph).is_some_and(Level::is_short);
    let answer = if limed {
        "The soil is short of magnesium and acid: lime with dolomitic lime, which brings both."
    } else {
        "The soil is short of magnesium: Epsom salts (magnesium sulfate) bring it without lime."
    };
    let mut need = said(name, Verdict::Give, answer, finding.grounds.clone());
    let Some(gap) = gap.filter(|gap| *gap > 0.0 && !limed) else { return Some(need) };
    let depth = ground.depth();
    // From half the gap to all of it: plants take some up, and the next test shows.
    let whole = USUAL_DENSITY.map(|density| stock(gap, depth, density) / MAGNESIUM_IN_EPSOM_SALT);
    let rate = Band::new(whole.low / 2.0, whole.likely / 2.0, whole.high);
    let grounds = Grounds::new(
        "The gap to the start of sufficiency in the worked depth, half of it in the first year, as MgSO₄·7H₂O (9.86 % Mg).",
        &[EPSOM_ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
    )
    .input("gap", format!("{} mg/kg", significant(gap, 3)))
    .input("depth", shown(&Band::exactly(depth), Unit::Cm, ground.case.measures))
    .assume("Dry soil weighs 1.3 (1.1–1.5) g/cm³.");
    need.figures = for_bed(
        ground,
        ["epsom-salt-rate", "epsom-salt-for-bed"],
        ["Epsom salts this year", "Epsom salts for the bed"],
        rate,
        &grounds,
        questions,
    );
    Some(need)
}

/// Sulfur: no amount, since no published one was read.
pub(super) fn sulfur(ground: &Ground<'_>) -> Option<Need> {
    let name = "sulfur";
    let (level, finding) = match level_of(ground, Property::Sulfur, name)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    let short = level.is_short();
    let answer = if short {
        "The soil is short of sulfur. Compost and gypsum bring it; ask your extension office how much."
    } else {
        "None: there is enough sulfur."
    };
    let verdict = if short { Verdict::Give } else { Verdict::Enough };
    Some(said(name, verdict, answer, finding.grounds.clone()))
}

impl Ground<'_> {
    /// The area of the bed, m².
    pub(super) fn area(&self) -> Option<f64> {
        self.case.bed.area_m2.filter(|a| a.is_finite() && *a > 0.0)
    }

    /// The worked depth, cm; usual when nobody said.
    pub(super) fn depth(&self) -> f64 {
        self.case.bed.depth_cm.filter(|d| (1.0..=100.0).contains(d)).unwrap_or(USUAL_DEPTH)
    }
}
