//! A garden in a sentence or some, so that what breaks can be read and judged.

use emberloam_engine::case::{
    Bag, BagState, Bed, Case, Charge, Correction, Feeds, ReadingAnswers, Season, WetSeason, Winter,
};
use emberloam_engine::quantity::{Measures, Unit};
use emberloam_engine::report::{Reading, SampleReport};
use emberloam_engine::soil::{Amount, Method};
use time::Date;

/// All that is given of a garden, in one paragraph. What nobody said is left out.
pub fn told(case: &Case) -> String {
    let Case { version: _, report, sample, .. } = case;
    let Case {
        reading, bed, plants, season, biochar, charge_with, charge, feeds, measures, ..
    } = case;
    let mut all = vec![of_bed(bed, plants.map(|p| p.label()))];
    match report.samples.as_slice() {
        [] => all.push("There is no report".into()),
        [one] => all.extend(of_sample("The report gives", one)),
        some => {
            for (at, one) in some.iter().enumerate() {
                all.extend(of_sample(&format!("Sample {} gives", at + 1), one));
            }
        }
    }
    if *sample != 0 {
        all.push(format!("The bed is sample {}", sample.saturating_add(1)));
    }
    all.extend(of_answers(reading));
    all.extend(of_season(season));
    all.extend(of_bag(biochar));
    if !charge_with.is_empty() {
        let names: Vec<&str> = charge_with.iter().map(|s| s.name()).collect();
        all.push(format!("To charge with there are {}", names.join(", ")));
    }
    all.extend(of_charge(charge));
    all.extend(of_feeds(feeds));
    if *measures == Measures::Us {
        all.push("Measures are those of the US".into());
    }
    all.join(". ") + "."
}

fn of_bed(bed: &Bed, plants: Option<&str>) -> String {
    let Bed { area_m2, depth_cm, texture, kind } = bed;
    let mut text = String::from("A");
    for word in [texture.map(|t| t.label()), kind.map(|k| k.name())].into_iter().flatten() {
        text += &format!(" {word}");
    }
    text += " bed";
    if let Some(area) = area_m2 {
        text += &format!(" of {area} m²");
    }
    if let Some(depth) = depth_cm {
        text += &format!(", worked {depth} cm deep");
    }
    if let Some(plants) = plants {
        text += &format!(", for {plants}");
    }
    text
}

fn of_sample(begin: &str, sample: &SampleReport) -> Vec<String> {
    let readings: Vec<String> = sample.readings.iter().map(of_reading).collect();
    let mut all = vec![if readings.is_empty() {
        format!("{begin} nothing")
    } else {
        format!("{begin} {}", readings.join("; "))
    }];
    if let Some((top, bottom)) = sample.depth_cm {
        all.push(format!("It was taken from {top} to {bottom} cm"));
    }
    if let Some(texture) = sample.texture {
        all.push(format!("It calls the soil {}", texture.label()));
    }
    for one in &sample.advice {
        let land = one.land.map_or(String::new(), |land| format!(" for {land:?}"));
        let (what, amount, unit) = (one.what, one.amount, one.unit.symbol());
        all.push(format!("It advises {what:?} {amount} {unit}{land}"));
    }
    all
}

fn unit(unit: Option<Unit>) -> String {
    match unit {
        None => " without a unit".into(),
        Some(unit) if unit.symbol().is_empty() => String::new(),
        Some(unit) => format!(" {}", unit.symbol()),
    }
}

fn of_reading(reading: &Reading) -> String {
    let method =
        reading.method.as_ref().map_or(String::new(), |m| format!(" ({})", m.value.label()));
    let result = match reading.amount {
        Some(Amount::Exactly(v)) => format!("{v}{}", unit(reading.unit)),
        Some(Amount::Below(v)) => format!("below {v}{}", unit(reading.unit)),
        Some(Amount::Above(v)) => format!("above {v}{}", unit(reading.unit)),
        None => format!("“{}” without a number", reading.rating.as_deref().unwrap_or_default()),
    };
    let layer = reading.depth_cm.map_or(String::new(), |(t, b)| format!(" from {t} to {b} cm"));
    format!("{}{method} {result}{layer}", reading.property.label())
}

fn of_answers(answers: &ReadingAnswers) -> Vec<String> {
    let ReadingAnswers { extractants, nutrient_unit, buffer, ec_method, depth_cm, .. } = answers;
    let ReadingAnswers { corrections, in_all_samples, .. } = answers;
    let labels = |all: &[Method]| all.iter().map(|m| m.label()).collect::<Vec<_>>().join(" and ");
    let mut all = Vec::new();
    if !extractants.is_empty() {
        all.push(format!("The extract is said to be {}", labels(extractants)));
    }
    all.extend(nutrient_unit.map(|u| format!("Nutrients are said to be in {}", u.symbol())));
    all.extend(buffer.map(|m| format!("The buffer is said to be {}", m.label())));
    all.extend(ec_method.map(|m| format!("Salts are said to be by {}", m.label())));
    all.extend(depth_cm.map(|d| format!("The sample is said to be {d} cm deep")));
    for correction in corrections {
        let Correction { place, property, result, unit, method, leave_out, .. } = correction;
        let mut text = format!("Result {} is corrected", place.line);
        text += &result.as_ref().map_or(String::new(), |r| format!(" to {r}"));
        text += &said(*property, *unit, *method, *leave_out);
        all.push(text);
    }
    for common in in_all_samples {
        let text = said(common.property, common.unit, common.method, common.leave_out);
        all.push(format!("Every {} is corrected{text}", common.name));
    }
    all
}

fn said(
    property: Option<emberloam_engine::soil::Property>,
    unit: Option<Unit>,
    method: Option<Method>,
    leave_out: bool,
) -> String {
    let mut text = String::new();
    text += &unit.map_or(String::new(), |u| format!(" in {}", u.name()));
    text += &property.map_or(String::new(), |p| format!(" as {}", p.label()));
    text += &method.map_or(String::new(), |m| format!(" by {}", m.label()));
    text + if leave_out { " and left out" } else { "" }
}

fn of_season(season: &Season) -> Vec<String> {
    let Season { today, planting, harvest, first_frost, last_frost, winter, wet_season, .. } =
        season;
    let Season { latitude, elevation_m, rain, lowest_c, highest_c, crops, .. } = season;
    let mut all = Vec::new();
    for (what, date) in [
        ("Today is", today),
        ("Planting is on", planting),
        ("The bed is clear on", harvest),
        ("The first frost is on", first_frost),
        ("The last frost is on", last_frost),
    ] {
        all.extend(date.map(|date| format!("{what} {date}")));
    }
    all.extend(winter.map(|winter| match winter {
        Winter::Frost => "Winter brings frost".to_string(),
        Winter::MildWet => "Winter is mild and wet".to_string(),
        Winter::None => "There is no winter".to_string(),
    }));
    all.extend(wet_season.map(|wet| match wet {
        WetSeason::Dry => "Little drains in the wet season".to_string(),
        WetSeason::Moderate => "Some water drains in the wet season".to_string(),
        WetSeason::Wet => "Much water drains in the wet season".to_string(),
    }));
    all.extend(latitude.map(|l| format!("The latitude is {l}")));
    all.extend(elevation_m.map(|e| format!("It lies {e} m up")));
    for (what, twelve) in [
        ("Rain by month", rain),
        ("Lowest temperatures", lowest_c),
        ("Highest temperatures", highest_c),
    ] {
        all.extend(twelve.map(|t| format!("{what}: {t:?}")));
    }
    for crop in crops {
        let day = |date: Option<Date>| date.map_or("some day".into(), |d| d.to_string());
        let (from, to) = (day(crop.planting), day(crop.harvest));
        all.push(format!("It bears “{}” from {from} to {to}", crop.name));
    }
    all
}

fn of_bag(bag: &Bag) -> Vec<String> {
    let Bag { state, feedstock, share_percent, bag_litres, ph, liming_percent, .. } = bag;
    let Bag { bulk_density, ec, price, moisture_percent, years, certificate, .. } = bag;
    let mut all = Vec::new();
    let of = feedstock.map_or("biochar", |f| f.name());
    match state {
        Some(BagState::NoneYet) => all.push(format!("There is no biochar yet ({of})")),
        Some(state) => all.push(format!("The bag is {} {of}", state.name())),
        None if feedstock.is_some() => all.push(format!("The bag is {of}")),
        None => {}
    }
    for (what, value, unit) in [
        ("The share wanted is", share_percent, " %"),
        ("A bag holds", bag_litres, " litres"),
        ("The biochar has a pH of", ph, ""),
        ("Its liming value is", liming_percent, " %"),
        ("Its density is", bulk_density, " kg/m³"),
        ("Its salts are", ec, " dS/m"),
        ("A bag costs", price, ""),
        ("Its moisture is", moisture_percent, " %"),
    ] {
        all.extend(value.map(|value| format!("{what} {value}{unit}")));
    }
    all.extend(years.map(|y| format!("It is spread over {y} years")));
    for figure in certificate {
        all.push(format!("Its certificate gives {} {}", figure.what.name(), figure.value));
    }
    all
}

fn of_charge(charge: &Charge) -> Vec<String> {
    let Charge { temperature_c, bucket_litres, sources } = charge;
    let mut all = Vec::new();
    all.extend(temperature_c.map(|t| format!("It is charged at {t} °C")));
    all.extend(bucket_litres.map(|l| format!("The bucket holds {l} litres")));
    for known in sources {
        let mut text = format!("Of {}", known.source.name());
        text += &known.litres.map_or(String::new(), |l| format!(" there are {l} litres"));
        text += &known.n_p2o5_k2o.map_or(String::new(), |[n, p, k]| format!(" with {n}-{p}-{k}"));
        all.push(text);
    }
    all
}

fn of_feeds(feeds: &Feeds) -> Vec<String> {
    let Feeds { lime_percent, target_ph, fertiliser, compost_litres } = feeds;
    let mut all = Vec::new();
    all.extend(lime_percent.map(|p| format!("The lime has {p} % CCE")));
    all.extend(target_ph.map(|p| format!("The pH wanted is {p}")));
    all.extend(fertiliser.map(|[n, p, k]| format!("The fertiliser bag is {n}-{p}-{k}")));
    all.extend(compost_litres.map(|l| format!("On hand are {l} litres of compost")));
    all
}
