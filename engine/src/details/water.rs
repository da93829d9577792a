//! How much water the soil holds and lets through, from sand, clay and organic
//! matter.

use crate::details::Traits;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::question::QuestionId;
use crate::soil::water::{OutOfRange, Water, held, middle};
use crate::soil::{Property, Texture};
use crate::sources::{COMMON_PRACTICE, OUR_CHOICE, SAXTON_RAWLS};
use crate::survey::Survey;

/// Organic matter of the paper's own table of classes, %.
const USUAL_ORGANIC_MATTER: f64 = 2.5;
/// How far the equations miss single soils: standard errors of wilting point, field capacity and
/// saturation, as shares of the soil's volume.
const ERROR: [f64; 3] = [0.02, 0.05, 0.04];
/// What soil lets through differs this many times between soils of one make.
const CONDUCTIVITY_ERROR: f64 = 3.0;

/// Wilting point, field capacity, saturation, available water and conductivity, as bands.
type Bands = [Band; 5];

fn numbers(water: &Water) -> [f64; 5] {
    [
        water.wilting_point,
        water.field_capacity,
        water.saturation,
        water.field_capacity - water.wilting_point,
        water.conductivity,
    ]
}

/// Every soil of the class, in steps of 1 % sand and clay, and the soil in its middle.
fn of_class(texture: Texture, organic_matter: Band) -> Result<Bands, OutOfRange> {
    let (sand, clay) = middle(texture);
    let mut bands = numbers(&held(sand, clay, organic_matter.likely)?).map(Band::exactly);
    for sand in 0..=100u8 {
        for clay in 0..=100 - sand {
            let (s, c) = (f64::from(sand), f64::from(clay));
            if Texture::from_separates(s, 100.0 - s - c, c) == Some(texture) {
                widen(&mut bands, s, c, organic_matter);
            }
        }
    }
    Ok(bands)
}

/// Takes in a soil of this sand and clay at both ends of its organic matter, where the equations
/// hold.
fn widen(bands: &mut Bands, sand: f64, clay: f64, organic_matter: Band) {
    for om in [organic_matter.low, organic_matter.high] {
        let Ok(water) = held(sand, clay, om) else { continue };
        for (band, value) in bands.iter_mut().zip(numbers(&water)) {
            band.low = band.low.min(value);
            band.high = band.high.max(value);
        }
    }
}

/// Sand and clay as measured, brought to a sum of 100.
fn separates(survey: &Survey<'_>) -> Option<(f64, f64)> {
    survey.soil.texture()?;
    let part = |p| survey.soil.value(p);
    let (sand, silt, clay) = (part(Property::Sand), part(Property::Silt), part(Property::Clay));
    match (sand, silt, clay) {
        (Some(s), Some(z), Some(c)) => Some((100.0 * s / (s + z + c), 100.0 * c / (s + z + c))),
        (Some(s), None, Some(c)) => Some((s, c)),
        (Some(s), Some(z), None) => Some((s, 100.0 - s - z)),
        (None, Some(z), Some(c)) => Some((100.0 - z - c, c)),
        _ => None,
    }
}

/// The depth of the bed, cm, when the person gave one that can be.
fn bed_depth(survey: &Survey<'_>) -> Option<f64> {
    survey.case.bed.depth_cm.filter(|d| (1.0..=100.0).contains(d))
}

/// The organic matter that is reckoned with, and what the equations rest on.
fn organic_matter(survey: &Survey<'_>) -> (Band, Grounds) {
    let mut grounds = Grounds::new(
        "Saxton and Rawls 2006: water from sand, clay and organic matter. Bounds take in the equations' own error.",
        &[SAXTON_RAWLS.second_hand(), SAXTON_RAWLS.from_memory()],
    );
    let measured = survey.organic_matter();
    let organic_matter = measured.unwrap_or(Band::new(1.0, USUAL_ORGANIC_MATTER, 5.0));
    let text = survey.shown(&organic_matter, Unit::Percent);
    if measured.is_some() {
        return (organic_matter, grounds.input(Property::OrganicMatter.label(), text));
    }
    grounds.sources.push(OUR_CHOICE.unsourced());
    let assumption = format!("Organic matter is not known; taken as {text}.");
    (organic_matter, grounds.assume(assumption))
}

/// The numbers of this soil, from sand and clay or else from its texture; `None` without either.
fn of_soil(survey: &Survey<'_>) -> Option<(Result<Bands, OutOfRange>, Grounds)> {
    let (organic_matter, grounds) = organic_matter(survey);
    if let Some((sand, clay)) = separates(survey) {
        let grounds = grounds
            .input(Property::Sand.label(), format!("{} %", significant(sand, 3)))
            .input(Property::Clay.label(), format!("{} %", significant(clay, 3)));
        let bands = held(sand, clay, organic_matter.likely).map(|water| {
            let mut bands = numbers(&water).map(Band::exactly);
            widen(&mut bands, sand, clay, organic_matter);
            bands
        });
        return Some((bands, grounds));
    }
    let texture = survey.texture?;
    let grounds = grounds.input("texture", texture.label()).assume(
        "Sand and clay were not measured: the middle of the class, and all soils of the class as bounds.",
    );
    Some((of_class(texture, organic_matter), grounds))
}

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let Some((found, grounds)) = of_soil(survey) else {
        return traits.ask(
            QuestionId::Texture,
            "What is the soil's texture?",
            "How much water it holds for plants.",
            &[],
        );
    };
    let mut bands = match found {
        Ok(bands) => bands,
        Err(out) => return traits.say("water", out.why(), grounds),
    };
    // Available water misses as far as field capacity does; the wilting point is the surer one.
    for (band, error) in bands.iter_mut().zip([ERROR[0], ERROR[1], ERROR[2], ERROR[1]]) {
        *band = Band::new((band.low - error).max(0.0), band.likely, (band.high + error).min(1.0));
    }
    let [wilting, field, full, available, through] = bands;
    for (name, label, band) in [
        ("wilting-point", "water left when plants wilt", wilting),
        ("field-capacity", "water held after draining", field),
        ("saturation", "water with every pore full", full),
        ("available-water", "water for plants", available),
    ] {
        traits.figure(name, label, band.map(|v| 100.0 * v), Unit::Percent, &grounds);
    }
    let times = CONDUCTIVITY_ERROR;
    let through = Band::new(through.low / times, through.likely, through.high * times);
    let mut by_structure = grounds.clone().assume(
        "Cracks and worm holes count for more than texture: three times more or less is usual.",
    );
    by_structure.sources.push(OUR_CHOICE.unsourced());
    let label = "water through soaked soil in an hour";
    traits.figure("saturated-conductivity", label, through, Unit::Mm, &by_structure);
    say(survey, available, grounds, traits);
}

/// What the water for plants, as a share of the soil, comes to in the bed.
fn say(survey: &Survey<'_>, available: Band, mut grounds: Grounds, traits: &mut Traits) {
    let mut text = format!(
        "Wet through and drained, the soil holds {} of its volume as water for plants.",
        survey.shown(&available.map(|v| 100.0 * v), Unit::Percent)
    );
    if let Some(depth) = bed_depth(survey) {
        let held = available.map(|v| v * depth * 10.0);
        grounds = grounds.input("depth of the bed", survey.shown(&Band::exactly(depth), Unit::Cm));
        let label = "water for plants in the bed's depth";
        traits.figure("water-held", label, held, Unit::Mm, &grounds);
        text.push_str(&format!(
            " Full, the bed holds as much as a rain of {}; water again when about half of that is used.",
            survey.shown(&held, Unit::Mm)
        ));
        grounds.sources.push(COMMON_PRACTICE.unsourced());
    } else {
        traits.ask(
            QuestionId::WorkedDepth,
            "How deep is the bed worked?",
            "How much water the bed holds.",
            &[],
        );
    }
    traits.say("water", text, grounds);
}
