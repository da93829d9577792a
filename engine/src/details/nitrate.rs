//! Nitrate in the ground, and the nitrate test before side-dressing.

use crate::details::Traits;
use crate::details::ask_depth;
use crate::quantity::{Band, Context, Grounds, Unit, convert};
use crate::ranges::amount_text;
use crate::soil::{Amount, Measure, Property};
use crate::sources::{ARITHMETIC, OHIO_PSNT, OUR_CHOICE, PSNT_SWEET_CORN, SARE_PSNT};
use crate::survey::Survey;

/// A sample counts as one for the test when it reaches down to here, cm.
/// Source: University of Delaware and Ohio State: a 12-inch sample (opened); the span is our choice.
const TEST_DEPTH: std::ops::RangeInclusive<f64> = 25.0..=35.0;

/// Nitrogen to side-dress, lb/acre, by the highest nitrate-N (mg/kg) of each row.
/// Source: Rutgers by University of Delaware, sweet corn (opened).
static MANURED: [(f64, f64); 4] = [(10.0, 160.0), (15.0, 120.0), (20.0, 80.0), (25.0, 40.0)];
/// Source: the same, without manure (opened).
static UNMANURED: [(f64, f64); 4] = [(15.0, 160.0), (20.0, 120.0), (25.0, 80.0), (30.0, 40.0)];
/// What comes off the usual rate of field corn, lb/acre.
/// Source: Ohio State University, field corn (opened).
static OFF_THE_RATE: [(f64, f64); 4] = [(10.0, 0.0), (15.0, 30.0), (20.0, 45.0), (25.0, 90.0)];

/// The row of a table that prints whole numbers.
fn row(table: &[(f64, f64)], nitrate: f64) -> Option<f64> {
    table.iter().find(|(end, _)| nitrate.round() <= *end).map(|(_, pounds)| *pounds)
}

/// Nitrogen to side-dress for sweet corn, lb/acre, from nitrate-N (mg/kg) in the top 30 cm, with
/// and without manure in the ground.
///
/// Source: Rutgers, in University of Delaware Weekly Crop Update.
pub fn sidedress(nitrate: f64, manured: bool) -> f64 {
    row(if manured { &MANURED } else { &UNMANURED }, nitrate).unwrap_or(0.0)
}

/// What the test takes off the usual nitrogen rate of field corn, lb/acre; `None` where no
/// nitrogen is needed at all.
///
/// Source: Ohio State University Extension 2022.
pub fn off_the_rate(nitrate: f64) -> Option<f64> {
    row(&OFF_THE_RATE, nitrate)
}

/// Why the table isn't used for this sample.
fn unfit(survey: &Survey<'_>, slice: (f64, f64)) -> Option<&'static str> {
    let timing = &survey.timing;
    if slice.0 > 0.0 || !TEST_DEPTH.contains(&slice.1) {
        Some("The sample is not from the top 30 cm (12 in), which the test needs.")
    } else if !survey.grows_vegetables() {
        Some("The test was made for corn and vegetables, not for these plants.")
    } else if timing.today.is_some()
        && !timing.growing
        && (timing.planting.is_some() || timing.harvest.is_some())
    {
        Some(
            "Nothing grows in the bed now, and the test is for a growing crop: rain and soil life change the nitrate before the next.",
        )
    } else {
        None
    }
}

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let Some((_, measure, slice)) = survey.slices(Property::NitrateN).next() else { return };
    traits.figures.extend(survey.nitrate_stock().map(|stock| survey.told(stock)));
    let Some(slice) = slice else {
        return ask_depth(
            traits,
            Property::NitrateN,
            "Whether the nitrate test before side-dressing can be used, and how much nitrate the ground holds.",
        );
    };
    let mut grounds = Grounds::new(
        "Pre-sidedress nitrate test: a sample 30 cm (12 in) deep, about a week before side-dressing.",
        &[PSNT_SWEET_CORN.opened(), SARE_PSNT.opened()],
    )
    .input(Property::NitrateN.label(), amount_text(measure.amount, measure.unit))
    .input("bottom of the sample", survey.shown(&Band::exactly(slice.1), Unit::Cm));
    let unfit = unfit(survey, slice);
    if unfit.is_some() {
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    let nitrate = match (unfit, readable(&measure)) {
        (None, Ok(nitrate)) => nitrate,
        (Some(why), _) | (None, Err(why)) => {
            let text = format!("No nitrogen rate is read from this nitrate. {why}");
            return traits.say("nitrate", text, grounds);
        }
    };
    rates(survey, nitrate, grounds, traits);
}

/// The nitrate (mg/kg) that the tables are read with, or why they can't be.
fn readable(measure: &Measure) -> Result<f64, &'static str> {
    if measure.unit != Unit::MgPerKg {
        return Err("The test is read in mg/kg (ppm). Ask the lab for that.");
    }
    match measure.amount {
        Amount::Exactly(value) => Ok(value),
        // Below the first border the number itself makes no difference.
        Amount::Below(limit) if limit <= 10.0 => Ok(limit),
        Amount::Above(limit) if limit > 30.0 => Ok(limit),
        _ => Err("The lab gives only a limit. Ask for the number."),
    }
}

/// The rates of the tables for this nitrate, mg/kg.
fn rates(survey: &Survey<'_>, nitrate: f64, mut grounds: Grounds, traits: &mut Traits) {
    grounds = grounds
        .assume("The sample was taken while the crop grew, a week before side-dressing.")
        .assume("No nitrogen fertiliser went on before planting.");
    grounds.sources.extend([OHIO_PSNT.opened(), ARITHMETIC.derived()]);
    let mut metric = |name, label, pounds: f64| {
        // Only the unit changes: both are per area.
        let to_kg =
            convert(pounds, Unit::LbPerAcre, Unit::KgPerHa, &Context::FURROW_SLICE).unwrap_or(0.0);
        let band = Band::exactly(to_kg);
        let (told, unit) = survey.per_area(band, Unit::KgPerHa);
        traits.figure(name, label, told, unit, &grounds);
        survey.shown(&band, Unit::KgPerHa)
    };
    let with = metric(
        "psnt-manured",
        "nitrogen for sweet corn, with manure or compost dug in",
        sidedress(nitrate, true),
    );
    let without = metric(
        "psnt-unmanured",
        "nitrogen for sweet corn, without manure",
        sidedress(nitrate, false),
    );
    let corn = match off_the_rate(nitrate) {
        None => "Field corn needs none.".to_string(),
        Some(0.0) => "Field corn gets its full usual rate.".to_string(),
        Some(pounds) => {
            let off = metric("psnt-off-the-rate", "comes off the usual rate of field corn", pounds);
            format!("Field corn gets {off} less than its usual rate.")
        }
    };
    let text = format!(
        "If this sample was taken while the crop grew, a week before side-dressing, and no nitrogen fertiliser went on before: sweet corn gets {with} of nitrogen where manure or compost was dug in, {without} where not. {corn} Other vegetables follow the same line: above 25 ppm they seldom gain from more."
    );
    traits.say("nitrate", text, grounds);
}
