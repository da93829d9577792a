//! Feeding pots: in the water, by its strength.

use crate::plan::needs::{Need, NeedKind, Verdict};
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::soil::{Level, PlantGroup, Property};
use crate::sources::*;
use crate::survey::Survey;

/// A feed in the water.
#[derive(Debug)]
struct PotFeed {
    plants: &'static [PlantGroup],
    /// Nitrogen, mg/L.
    nitrogen: Band,
    citations: &'static [Citation],
    note: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/pot_feeds.rs"));

/// A watering can, litres. Our choice.
const CAN: f64 = 10.0;

/// A feed whose bag nobody gave, % of nitrogen. Our choice, as an example.
const EXAMPLE: f64 = 20.0;

/// g of a feed with so many % of nitrogen that bring `mg_per_litre` of it to `litres` of water.
///
/// Source: University of Massachusetts Extension: 20-20-20 for 200 mg/L is 13.5 oz in 100 gal (opened).
pub fn feed_in_water(mg_per_litre: f64, litres: f64, percent: f64) -> f64 {
    mg_per_litre * litres / 1000.0 * 100.0 / percent
}

/// Pots have no dose by area: their mix is small, and every watering washes it.
pub(super) fn by_the_water(survey: &Survey<'_>) -> Need {
    let full = |property| survey.findings.level(property).is_some_and(Level::is_surplus);
    if full(Property::NitrateN) || full(Property::Ec) {
        let answer = "Feed nothing now: the mix holds more than the plants take. Water until plenty runs out below, and test again.";
        let grounds = Grounds::new(
            "A mix with a surplus of nitrate or salts is not fed.",
            &[COMMON_PRACTICE.unsourced()],
        );
        return Need::said(NeedKind::Nitrogen, Verdict::Enough, answer, grounds);
    }
    let plants = survey.plants();
    let row = FEEDS.iter().find(|row| row.plants.contains(&plants)).unwrap_or(&FEEDS[0]);
    let bag = survey.case.feeds.fertiliser.map(|bag| bag[0]).filter(|n| (1.0..=60.0).contains(n));
    let percent = bag.unwrap_or(EXAMPLE);
    let grams = feed_in_water(row.nitrogen.likely, CAN, percent);
    let strength = survey.shown(&row.nitrogen, Unit::MgPerL);
    let can = survey.shown(&Band::exactly(CAN), Unit::Litre);
    let weight = survey.weighed(grams);
    let share = significant(percent, 3);
    let answer = if bag.is_some() {
        format!(
            "No dose by area is made for pots. Feed them in the water while they grow: {weight} of your feed with {share} % nitrogen in {can}."
        )
    } else {
        format!(
            "No dose by area is made for pots. Feed them in the water while they grow: {weight} of a feed with {share} % nitrogen in {can}. Give your bag's numbers for its own amount."
        )
    };
    let mut grounds = Grounds::new(
        "mg/L × litres ÷ 1000 ÷ the feed's share of nitrogen = g in the can. Rates by area are made for field soil.",
        row.citations,
    )
    .input("nitrogen in the water", strength.clone());
    if !row.note.is_empty() {
        grounds = grounds.assume(row.note);
    }
    grounds.sources.push(ARITHMETIC.derived());
    let mut need = Need::said(NeedKind::Nitrogen, Verdict::Give, answer, grounds);
    need.steps = vec![
        format!("That is {strength} of nitrogen in the water, at every watering."),
        "Water until some runs out below. Where a white crust shows, or the mix dries out, give plain water.".into(),
        "Stop a month before the first frost, and while plants rest.".into(),
    ];
    need
}
