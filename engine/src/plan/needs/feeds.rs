//! From nutrients to bags and buckets: how much of the fertiliser on hand, what else it brings,
//! and what the compost brings.

use crate::case::ChargeSource;
use crate::plan::charge::sources::content;
use crate::plan::ledger::{Bringer, Brings, K_IN_K2O, Ledger, P_IN_P2O5, Substance};
use crate::plan::needs::{Need, NeedKind, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::sources::{
    ARITHMETIC, NC_BAGS, NEW_ENGLAND_COMPOST, OUR_CHOICE, UC_COMPOST_N, UMN_COMPOST,
};
use crate::survey::Survey;

/// The most compost in a year, litres on 1 m²: one inch.
/// Source: University of Minnesota Extension (opened).
const MOST_COMPOST: f64 = 25.4;

/// Less than this of a nutrient is not worth a bag, g. Our choice.
const LEAST: f64 = 0.5;

/// The weight of a bag's content that brings `wanted` of a nutrient of which it holds `percent`;
/// `None` when it holds none.
///
/// Source: NC State Extension: 1 lb N ÷ 0.24 = 4.17 lb of 24-6-6 (opened).
pub fn weight_for(wanted: f64, percent: f64) -> Option<f64> {
    (percent > 0.0 && percent <= 100.0).then(|| 100.0 * wanted / percent)
}

/// The nutrients of a bag, in the order of its label.
const ON_THE_LABEL: [(NeedKind, &str); 3] = [
    (NeedKind::Nitrogen, "nitrogen"),
    (NeedKind::Phosphate, "phosphate"),
    (NeedKind::Potash, "potash"),
];

/// The bag on hand: no more of it than the first need it fills. It takes the place of a part
/// of what is still to be fed, so that nothing is entered twice.
pub(super) fn fertiliser(survey: &Survey<'_>, ledger: &mut Ledger, needs: &[Need]) -> Option<Need> {
    let percent = survey.case.feeds.fertiliser?;
    let label = percent.map(|p| significant(p, 3)).join("-");
    let said = |answer: String| {
        Need::said(NeedKind::Fertiliser, Verdict::Unknown, answer, Grounds::default())
    };
    if percent.iter().any(|p| !(0.0..=100.0).contains(p)) || percent.iter().sum::<f64>() > 100.0 {
        return Some(said(format!(
            "{label} can't be on a bag: three shares of 0 to 100 %, together no more than 100 %. Look at the label again."
        )));
    }
    let need_of = |at: usize| needs.iter().find(|n| n.kind == ON_THE_LABEL[at].0);
    // Grams wanted for the bed; `None` where nothing is wanted or nothing is known.
    let wanted: [Option<f64>; 3] =
        std::array::from_fn(|at| Some(need_of(at)?.given()?.likely).filter(|g| *g > LEAST));
    let stop =
        |at: usize| percent[at] > 0.0 && need_of(at).is_some_and(|n| n.verdict == Verdict::Stop);
    if let Some(at) = (0..3).find(|&at| stop(at)) {
        return Some(said(format!(
            "Don't use {label} here: it brings {}, of which this soil has too much. Choose a bag without it.",
            ON_THE_LABEL[at].1
        )));
    }
    let weights = (0..3).filter_map(|at| Some((at, weight_for(wanted[at]?, percent[at])?)));
    let Some((first, grams)) = weights.min_by(|a, b| a.1.total_cmp(&b.1)) else {
        return Some(said(format!("{label} brings nothing that this bed still wants.")));
    };
    if let Some((most, why)) = most_of(ledger, percent).filter(|(most, _)| *most < grams) {
        if most < LEAST {
            return Some(said(format!("Don't use {label} here. {why}")));
        }
        replace_feed(ledger, percent, most);
        let mut need = bag(survey, percent, wanted, &label, (first, most));
        need.answer = format!("So much of {label} and no more. {why}");
        return Some(need);
    }
    replace_feed(ledger, percent, grams);
    Some(bag(survey, percent, wanted, &label, (first, grams)))
}

/// The most of a bag that the ceilings bear, g, and why: it takes the place of what is to be fed.
fn most_of(ledger: &Ledger, percent: [f64; 3]) -> Option<(f64, String)> {
    [(1, Substance::Phosphorus, P_IN_P2O5), (2, Substance::Potassium, K_IN_K2O)]
        .into_iter()
        .filter_map(|(at, substance, element)| {
            let account = ledger.of(substance);
            let may = account.by(Bringer::Feed).likely + ledger.room(substance);
            let most = weight_for(may / element, percent[at])?;
            Some((most, account.ceiling.as_ref()?.why.clone()))
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))
}

/// Enters the bag, and takes off what is still to be fed by hand what the bag brings.
fn replace_feed(ledger: &mut Ledger, percent: [f64; 3], grams: f64) {
    let of = |at: usize, element: f64| Band::exactly(grams * percent[at] / 100.0 * element);
    let brings = [
        (Substance::NitrateN, of(0, 1.0)),
        (Substance::Phosphorus, of(1, P_IN_P2O5)),
        (Substance::Potassium, of(2, K_IN_K2O)),
    ];
    let mut bag = Brings::nothing();
    for (substance, band) in brings {
        bag = bag.with_all(substance, band);
        for entry in &mut ledger.account(substance).brought {
            if entry.by == Bringer::Feed {
                entry.amount = entry.amount.map(|g| (g - band.likely).max(0.0));
                entry.works = entry.amount;
                entry.counts = entry.amount.likely;
            }
        }
    }
    ledger.enter(Bringer::Fertiliser, &bag);
}

fn bag(
    survey: &Survey<'_>,
    percent: [f64; 3],
    wanted: [Option<f64>; 3],
    label: &str,
    (first, grams): (usize, f64),
) -> Need {
    let grounds = Grounds::new(
        "Wanted × 100 ÷ the share on the label, for the nutrient that is filled first; so none is overdone.",
        &[NC_BAGS.opened(), ARITHMETIC.derived()],
    )
    .input("bag", label)
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
        if left > LEAST {
            figures.push(Figure {
                name: LEFT[at].0,
                label: LEFT[at].1,
                band: Band::exactly(left),
                unit: Unit::Gram,
                grounds: Grounds::new("Wanted − brought by the bag.", &[ARITHMETIC.derived()])
                    .input(
                        "brought",
                        shown(&Band::exactly(brought), Unit::Gram, survey.case.measures),
                    ),
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
    let mut need = Need::said(NeedKind::Fertiliser, Verdict::Give, answer, grounds);
    need.for_bed = Some(Band::exactly(grams));
    need.figures = figures;
    need
}

/// The compost on hand: as much of it as may go on, and what that brings this year.
pub(super) fn compost(survey: &Survey<'_>, ledger: &mut Ledger, needs: &[Need]) -> Option<Need> {
    let litres = survey.case.feeds.compost_litres.filter(|l| l.is_finite() && *l > 0.0)?;
    let one = content(&survey.case.charge, ChargeSource::Compost);
    let by_inch = MOST_COMPOST * survey.bed.area.value;
    let stop = needs.iter().any(|n| n.kind == NeedKind::Phosphate && n.verdict == Verdict::Stop);
    let capped = [Substance::Phosphorus, Substance::Potassium, Substance::Sodium]
        .map(|s| (s, ledger.room(s) / one.brings.of(s).likely.max(1e-9)))
        .into_iter()
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .filter(|(_, most)| *most < by_inch.min(litres));
    let used = if stop { 0.0 } else { capped.map_or(litres.min(by_inch), |(_, most)| most) };
    ledger.enter(Bringer::Compost, &one.brings.times(used));
    let mut grounds = Grounds::new(
        "Litres × 0.56 kg/L × about 1 % each of N, P₂O₅ and K₂O; of the nitrogen that is not mineral 5–10 % works in the first year.",
        &[NEW_ENGLAND_COMPOST.opened(), UC_COMPOST_N.opened(), OUR_CHOICE.unsourced()],
    )
    .input("compost", format!("{} L", significant(used, 3)));
    let ceiling = capped.and_then(|(substance, _)| ledger.of(substance).ceiling.as_ref());
    let answer = match ceiling {
        _ if stop => {
            "Let the compost rest here: it brings phosphate, of which this soil has too much."
                .into()
        }
        Some(ceiling) if used < LEAST => format!("Let the compost rest here. {}", ceiling.why),
        Some(ceiling) => format!("Spread only so much of it. {}", ceiling.why),
        None if litres > by_inch => {
            "More than an inch (2.5 cm) a year brings more phosphate than plants take. Spread less."
                .into()
        }
        None => "It feeds the soil slowly: most of its nitrogen comes in later years.".into(),
    };
    grounds.sources.push(UMN_COMPOST.opened());
    let mut need = Need::said(NeedKind::Compost, Verdict::Unknown, answer, grounds.clone());
    if used < LEAST {
        return Some(need);
    }
    let account = |s: Substance| ledger.of(s).by(Bringer::Compost);
    let works = [Substance::NitrateN, Substance::AmmoniumN, Substance::OrganicN]
        .into_iter()
        .flat_map(|s| ledger.of(s).brought.iter().filter(|e| e.by == Bringer::Compost))
        .fold(Band::exactly(0.0), |sum, entry| sum.plus(entry.works));
    for (name, label, band, unit) in [
        ("compost-litres", "compost to spread", Band::exactly(used), Unit::Litre),
        ("compost-nitrogen", "nitrogen that works this year", works, Unit::Gram),
        (
            "compost-phosphate",
            "phosphate it brings",
            account(Substance::Phosphorus).map(|g| g / P_IN_P2O5),
            Unit::Gram,
        ),
        (
            "compost-potash",
            "potash it brings",
            account(Substance::Potassium).map(|g| g / K_IN_K2O),
            Unit::Gram,
        ),
    ] {
        need.figures.push(Figure { name, label, band, unit, grounds: grounds.clone() });
    }
    Some(need)
}
