//! From nutrients to bags and buckets: how much of the fertiliser on hand, what else it brings,
//! and what the compost brings.

use super::{Ground, Need, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, significant};
use crate::sources::{
    ARITHMETIC, NC_BAGS, NEW_ENGLAND_COMPOST, OUR_CHOICE, UC_COMPOST_N, UMN_COMPOST,
};

/// kg of finished compost in a litre. Source: 950 lb/yd³ from a vendor (opened), 800–1200 (from memory).
const COMPOST_DENSITY: Band = Band { low: 0.47, likely: 0.56, high: 0.71 };

/// N, P2O5 and K2O in finished compost, % as it is. Source: New England Vegetable Guide (opened);
/// half and double are our choice.
const COMPOST_PERCENT: Band = Band { low: 0.5, likely: 1.0, high: 2.0 };

/// Share of a compost's nitrogen that works in the first year.
/// Source: UC Davis, Hartz (opened).
const FIRST_YEAR: Band = Band { low: 0.05, likely: 0.075, high: 0.10 };

/// The most compost in a year, litres on 1 m²: one inch.
/// Source: University of Minnesota Extension (opened).
const MOST_COMPOST: f64 = 25.4;

/// The weight of a bag's content that brings `wanted` of a nutrient of which it holds `percent`;
/// `None` when it holds none.
///
/// Source: NC State Extension: 1 lb N ÷ 0.24 = 4.17 lb of 24-6-6 (opened).
pub fn weight_for(wanted: f64, percent: f64) -> Option<f64> {
    (percent > 0.0 && percent <= 100.0).then(|| 100.0 * wanted / percent)
}

/// The nutrients of a bag, in the order of its label.
const ON_THE_LABEL: [(&str, &str); 3] =
    [("nitrogen", "nitrogen"), ("phosphate", "phosphate"), ("potash", "potash")];

/// The bag on hand: no more of it than the first need it fills.
pub(super) fn fertiliser(ground: &Ground<'_>, needs: &[Need]) -> Option<Need> {
    let percent = ground.case.feeds.fertiliser?;
    let label = percent.map(|p| significant(p, 3)).join("-");
    let name = "fertiliser";
    let said = |answer: String| Need { name, answer, ..Need::default() };
    if percent.iter().any(|p| !(0.0..=100.0).contains(p)) || percent.iter().sum::<f64>() > 100.0 {
        return Some(said(format!(
            "{label} can't be on a bag: three shares of 0 to 100 %, together no more than 100 %. Look at the label again."
        )));
    }
    // Grams wanted for the bed; `None` where nothing is wanted or nothing is known.
    let wanted = ON_THE_LABEL.map(|(name, _)| {
        let figures = needs.iter().find(|n| n.name == name).map(|n| &n.figures)?;
        let of_bed = figures.iter().find(|f| f.name.ends_with("-for-bed"))?;
        let grams = if of_bed.unit == Unit::Kg { 1000.0 } else { 1.0 };
        Some(of_bed.band.likely * grams).filter(|g| *g > 0.0)
    });
    ground.area()?;
    let stop = |at: usize| {
        let need = needs.iter().find(|n| n.name == ON_THE_LABEL[at].0);
        percent[at] > 0.0 && need.is_some_and(|n| n.verdict == Verdict::Stop)
    };
    if let Some(at) = (0..3).find(|&at| stop(at)) {
        return Some(said(format!(
            "Don't use {label} here: it brings {}, of which this soil has too much. Choose a bag without it.",
            ON_THE_LABEL[at].1
        )));
    }
    let weights = (0..3).filter_map(|at| Some((at, weight_for(wanted[at]?, percent[at])?)));
    let Some((first, grams)) = weights.min_by(|a, b| a.1.total_cmp(&b.1)) else {
        return Some(said(format!("{label} brings nothing that this bed wants.")));
    };
    let grounds = Grounds::new(
        "Wanted × 100 ÷ the share on the label, for the nutrient that is filled first; so none is overdone.",
        &[NC_BAGS.opened(), ARITHMETIC.derived()],
    )
    .input("bag", label.clone())
    .input("filled first", ON_THE_LABEL[first].1);
    let mut figures = vec![Figure {
        name: "bag-for-bed",
        label: "of this bag for the bed",
        band: Band::exactly(grams),
        unit: Unit::Gram,
        grounds: grounds.clone(),
    }];
    const LEFT: [(&str, &str); 3] = [
        ("nitrogen-left", "nitrogen still wanted"),
        ("phosphate-left", "phosphate still wanted"),
        ("potash-left", "potash still wanted"),
    ];
    for at in 0..3 {
        let brought = grams * percent[at] / 100.0;
        let left = wanted[at].unwrap_or(0.0) - brought;
        if left > 0.5 {
            figures.push(Figure {
                name: LEFT[at].0,
                label: LEFT[at].1,
                band: Band::exactly(left),
                unit: Unit::Gram,
                grounds: Grounds::new("Wanted − brought by the bag.", &[ARITHMETIC.derived()])
                    .input("brought", format!("{} g", significant(brought, 3))),
            });
        }
    }
    let extra: Vec<&str> = (0..3)
        .filter(|&at| percent[at] > 0.0 && wanted[at].is_none())
        .map(|at| ON_THE_LABEL[at].1)
        .collect();
    let answer = if extra.is_empty() {
        format!("So much of {label} and no more: then one need is filled and none overdone.")
    } else {
        format!(
            "So much of {label} and no more. It also brings {}, which this soil doesn't ask for.",
            extra.join(" and ")
        )
    };
    Some(Need { name, verdict: Verdict::Give, answer, figures, grounds, ..Need::default() })
}

/// The compost on hand: what it brings this year.
pub(super) fn compost(ground: &Ground<'_>, needs: &[Need]) -> Option<Need> {
    let litres = ground.case.feeds.compost_litres.filter(|l| l.is_finite() && *l > 0.0)?;
    let grams = COMPOST_DENSITY.map(|density| litres * density * 1000.0);
    let whole = grams.times(COMPOST_PERCENT.map(|p| p / 100.0));
    let grounds = Grounds::new(
        "Litres × 0.56 kg/L × about 1 % each of N, P₂O₅ and K₂O; of the nitrogen 5–10 % works in the first year.",
        &[NEW_ENGLAND_COMPOST.opened(), UC_COMPOST_N.opened(), OUR_CHOICE.unsourced()],
    )
    .input("compost", format!("{} L", significant(litres, 3)));
    let figure = |name, label, band| Figure {
        name,
        label,
        band,
        unit: Unit::Gram,
        grounds: grounds.clone(),
    };
    let figures = vec![
        figure("compost-nitrogen", "nitrogen that works this year", whole.times(FIRST_YEAR)),
        figure("compost-phosphate", "phosphate it brings", whole),
        figure("compost-potash", "potash it brings", whole),
    ];
    let stop = needs.iter().any(|n| n.name == "phosphate" && n.verdict == Verdict::Stop);
    let deep = ground.area().is_some_and(|area| litres > MOST_COMPOST * area);
    let answer = if stop {
        "Let the compost rest here: it brings phosphate, of which this soil has too much."
    } else if deep {
        "More than an inch (2.5 cm) a year brings more phosphate than plants take. Spread less."
    } else {
        "It feeds the soil slowly: most of its nitrogen comes in later years."
    };
    let mut grounds = grounds.clone();
    grounds.sources.push(UMN_COMPOST.opened());
    Some(Need { name: "compost", answer: answer.into(), figures, grounds, ..Need::default() })
}
