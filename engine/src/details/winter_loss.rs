//! What a wet winter takes of the nitrate in a bed, with and without biochar.

use crate::case::Crop;
use crate::details::windows::{crop_name, over_winter};
use crate::plan::Plan;
use crate::quantity::{Band, Figure, Grounds, Unit};
use crate::season::drainage::{ROOTED, WetMonths, wet_months};
use crate::soil::water;
use crate::soil::{Property, Texture};
use crate::sources::{
    BEKCHANOVA_2024, BORCHARD_2019, BURNS_1975, CHRISTIANSON_2021, LIU_2017, NOURI_2022,
    OUR_CHOICE, SAXTON_RAWLS, SCOTTER_1993,
};
use crate::survey::Survey;

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
/// The same in sand. Source: as in loam.
const IN_SAND: Band = Band { low: -20.0, likely: 20.0, high: 50.0 };
/// The same under grass. Source: as in loam.
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

/// How much less is lost under a crop that stays over winter, %.
///
/// Source: Nouri 2022, −69 % over all cover crops, −52 % for grasses, −75 % for
/// brassicas; Christianson 2021, −40 % for grasses, none for legumes (opened);
/// put together by our own choice.
const UNDER_A_CROP: Band = Band { low: 0.0, likely: 50.0, high: 75.0 };

/// In its first month biochar keeps half of what it keeps later.
/// Source: Borchard 2019, −13 % overall, more than −26 % beyond 30 days (derived).
const FIRST_MONTH: f64 = 0.5;

/// What is lost from the beginning of the season to the end of one month, by area.
#[derive(Clone, Debug, PartialEq)]
pub struct MonthLoss {
    /// Which month, 1 is January; `None` where the half of the year is not known.
    pub month: Option<u8>,
    /// What drains in this month, mm.
    pub drains: Band,
    /// Lost so far without biochar, by Burns.
    pub burns: Band,
    /// Lost so far without biochar, by Scotter.
    pub scotter: Band,
    /// Lost so far with this biochar; `None` where none is advised.
    pub with: Option<Band>,
    /// The unit of what is lost.
    pub unit: Unit,
}

/// The nitrate of a bed over a winter.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WinterLoss {
    /// What it comes to, in a sentence or two.
    pub text: String,
    /// In the soil now, lost without biochar, lost with it, kept by it, lost
    /// under a crop that stays.
    pub figures: Vec<Figure>,
    /// The same month by month.
    pub months: Vec<MonthLoss>,
}

/// What the coming wet season takes; `None` without a nitrate reading by weight.
pub fn winter_loss(survey: &Survey<'_>, plan: &Plan) -> Option<WinterLoss> {
    let stock = survey.nitrate_stock()?;
    let held = stock.band;
    let season = &survey.case.season;
    let measures = survey.case.measures;
    let organic_matter = survey.soil.value(Property::OrganicMatter);
    let capacity = capacity(survey.texture, organic_matter);
    let water = wet_months(season, survey.texture, organic_matter, measures);

    let tonnes = plan.dose.mass.map(|kg| kg * 10.0 / plan.dose.area);
    let less = lessened(tonnes.likely, most_lessened(survey));
    let uses = plan.uses_biochar() && less.high > 0.0;
    let months = month_by_month(&water, held, capacity, less, uses);
    let last = months.last()?;
    let lost = lost_by_both(last.burns, last.scotter);

    let grounds = of_bare_soil(survey, &water, stock.grounds, capacity);
    let figure = |name, label, band, grounds: &Grounds| {
        survey.told(Figure::new(name, label, band, Unit::KgPerHa, grounds.clone()))
    };
    let mut figures = vec![
        figure("nitrate-held", "nitrate nitrogen in the sampled soil", held, &grounds),
        figure("nitrate-lost", "lost over the cool season without biochar", lost, &grounds),
    ];
    if let Some(with) = last.with {
        let kept = Band::new(
            (lost.high - with.high).min(lost.low * less.low / 100.0),
            lost.likely - with.likely,
            lost.high * less.high / 100.0,
        );
        let why = of_biochar(survey, tonnes, less, &grounds);
        figures.push(figure("nitrate-lost-with", "lost with this biochar", with, &why));
        figures.push(figure("nitrate-kept", "kept by it", kept, &why));
    }
    let stays = over_winter(season);
    figures.extend(stays.map(|crop| survey.told(under_crop(crop, lost))));
    let label = "water that drains through";
    figures.push(Figure::new("drainage", label, water.total, Unit::Mm, water.grounds.clone()));
    let of = |lost: f64, held: f64| if held > 0.0 { 100.0 * lost / held } else { 0.0 };
    let percent =
        Band::new(of(lost.low, held.low), of(lost.likely, held.likely), of(lost.high, held.high));
    let text = in_words(survey, &water, percent, uses, stays);
    let months = months.into_iter().map(|month| month.told(survey)).collect();
    Some(WinterLoss { text, figures, months })
}

impl MonthLoss {
    /// In the measure of the thing, from kg/ha.
    fn told(self, survey: &Survey<'_>) -> MonthLoss {
        let told = |band| survey.per_area(band, self.unit).0;
        MonthLoss {
            unit: survey.per_area(self.burns, self.unit).1,
            burns: told(self.burns),
            scotter: told(self.scotter),
            with: self.with.map(told),
            ..self
        }
    }
}

/// The most that biochar lessens leaching in this soil, %.
fn most_lessened(survey: &Survey<'_>) -> Band {
    match survey.texture {
        _ if survey.is_lawn() => UNDER_GRASS,
        Some(texture) if texture.is_sandy() => IN_SAND,
        Some(_) => IN_LOAM,
        None => Band::new(IN_SAND.low, IN_LOAM.likely, IN_SAND.high),
    }
}

/// What the loss from bare soil rests on: the water, and the nitrate in stock.
fn of_bare_soil(survey: &Survey<'_>, water: &WetMonths, stock: Grounds, capacity: Band) -> Grounds {
    let mut grounds = Grounds::new(
        "Nitrate in the layer × the share that drainage washes below 30 cm, by two published equations, month after month.",
        &[BURNS_1975.from_memory(), SCOTTER_1993.opened(), SAXTON_RAWLS.second_hand()],
    );
    grounds.inputs = stock.inputs;
    grounds = grounds
        .input("water that drains through", survey.shown(&water.total, Unit::Mm))
        .input("field capacity", survey.shown(&capacity, Unit::Percent))
        .assume("Nothing grows that takes nitrate up, and no cracks let water past. Take it as a ranking.");
    grounds = grounds.with(&water.grounds);
    grounds.assumed.extend(stock.assumed);
    grounds
}

/// What the loss with biochar rests on, beside that from bare soil.
fn of_biochar(survey: &Survey<'_>, tonnes: Band, less: Band, bare: &Grounds) -> Grounds {
    let mut grounds = Grounds::new(
        "Loss × (1 − the share that biochar lessens it by): none below 5 t/ha, then rising to the most that trials in such soils found; half of that in the first month.",
        &[
            BORCHARD_2019.opened(),
            LIU_2017.opened(),
            BEKCHANOVA_2024.opened(),
            OUR_CHOICE.unsourced(),
        ],
    )
    .input("biochar", survey.shown(&tonnes, Unit::TonnePerHa))
    .input("lessened by", survey.shown(&less, Unit::Percent))
    .assume("The biochar is in the soil when the season begins.");
    grounds.inputs.extend(bare.inputs.iter().cloned());
    grounds
}

/// What is lost under a crop that stays.
fn under_crop(crop: &Crop, lost: Band) -> Figure {
    let under = Band::new(
        lost.low * (1.0 - UNDER_A_CROP.high / 100.0),
        lost.likely * (1.0 - UNDER_A_CROP.likely / 100.0),
        lost.high * (1.0 - UNDER_A_CROP.low / 100.0),
    );
    let grounds = Grounds::new(
        "Loss without biochar × (1 − 0.5 (0–0.75)): a crop that grows takes up what would be lost. Grasses and brassicas do so most, legumes and crops with few roots least.",
        &[NOURI_2022.opened(), CHRISTIANSON_2021.opened(), OUR_CHOICE.unsourced()],
    )
    .input("crop", crop_name(crop));
    let label = "lost under the crop that stays, without biochar";
    Figure::new("nitrate-lost-under-crop", label, under, Unit::KgPerHa, grounds)
}

/// What it comes to: `percent` of the nitrate is lost from bare soil.
fn in_words(
    survey: &Survey<'_>,
    water: &WetMonths,
    percent: Band,
    uses: bool,
    stays: Option<&Crop>,
) -> String {
    let mut text = format!(
        "A cool season with {} of drainage takes {} of the nitrate below the roots. {}",
        survey.shown(&water.total, Unit::Mm),
        survey.shown(&percent, Unit::Percent),
        if uses {
            "Biochar keeps a part of it, how much is uncertain; a winter green manure keeps more."
        } else {
            "A winter green manure keeps most of it."
        }
    );
    if let Some(crop) = stays {
        text.push_str(&format!(
            " {} takes up a part over winter, so less is lost than the chart for bare soil shows.",
            crop_name(crop)
        ));
    }
    if !water.from_rain {
        text.push_str(
            " Give your latitude and the rain of each month for your own drainage, month by month.",
        );
    }
    text
}

/// From the least that either equation says to the most; between the two likely.
fn lost_by_both(burns: Band, scotter: Band) -> Band {
    Band::new(
        burns.low.min(scotter.low),
        f64::midpoint(burns.likely, scotter.likely),
        burns.high.max(scotter.high),
    )
}

/// What is lost by the end of each month.
fn month_by_month(
    water: &WetMonths,
    held: Band,
    capacity: Band,
    less: Band,
    uses: bool,
) -> Vec<MonthLoss> {
    let none = Band::exactly(0.0);
    let (mut drained, mut before) = (none, none);
    // Low, likely and high are three winters, each summed for itself.
    let mut with = [0.0; 3];
    let mut months = Vec::with_capacity(water.months.len());
    for (at, month) in water.months.iter().enumerate() {
        drained = drained.plus(month.drains);
        let by = |share: fn(f64, f64, f64) -> f64| {
            held.times(Band::new(
                share(drained.low / 10.0, capacity.high, ROOTED),
                share(drained.likely / 10.0, capacity.likely, ROOTED),
                share(drained.high / 10.0, capacity.low, ROOTED),
            ))
        };
        let (burns, scotter) = (by(burns), by(scotter));
        let lost = lost_by_both(burns, scotter);
        let acts = if at == 0 { FIRST_MONTH } else { 1.0 };
        let of_month = |after: f64, before: f64, less: f64| {
            (after - before).max(0.0) * (1.0 - acts * less / 100.0)
        };
        with[0] += of_month(lost.low, before.low, less.high);
        with[1] += of_month(lost.likely, before.likely, less.likely);
        with[2] += of_month(lost.high, before.high, less.low);
        before = lost;
        months.push(MonthLoss {
            month: month.number,
            drains: month.drains,
            burns,
            scotter,
            with: uses.then(|| Band::new(with[0], with[1], with[2])),
            unit: Unit::KgPerHa,
        });
    }
    months
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
