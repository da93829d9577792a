//! Nitrogen, phosphate, potash, magnesium and sulfur for a year, by the level of the soil.

use crate::chemistry::Derived;
use crate::facts::Dressed;
use crate::plan::ledger::{Bringer, Brings, K_IN_K2O, Ledger, NITROGEN, P_IN_P2O5, Substance};
use crate::plan::needs::crop_rates::{Dressing, dressing};
use crate::plan::needs::gypsum::SULFUR_IN_GYPSUM;
use crate::plan::needs::laboratory::{self, Both};
use crate::plan::needs::limits::{self, MAGNESIUM_IN_EPSOM_SALT, stock};
use crate::plan::needs::{Need, NeedKind, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::ranges::{Finding, Level};
use crate::soil::{PlantGroup, Property};
use crate::sources::{
    ARITHMETIC, CORNELL_LAWNS, Citation, EPSOM_ARITHMETIC, LABORATORY, NC_EQUATIONS, NC_LAWNS,
    OUR_CHOICE, PSNT_SWEET_CORN, RB209_RATES, TEXAS_RATES, UC_NITRATE, UMASS_RATES, UMASS_REPORT,
    UMN_COMPOST,
};
use crate::survey::{Ground, Survey};

/// Grams on 1 m² in 1 kg/ha. Source: arithmetic (derived).
pub(super) const GRAMS_PER_M2_IN_KG_PER_HA: f64 = 0.1;

/// What a year's dressing is on a soil that is very low and low, kg/ha.
struct Rates {
    dressed: Dressed,
    very_low: Band,
    low: Band,
}

/// Phosphate (P2O5). Low end: RB209, 60 and 30 kg/ha above maintenance at index 0 and 1; likely:
/// Texas A&M, 80 lb/acre; high end: North Carolina's equation 14 at index 0, 150 lb/acre, and for
/// a low soil the University of Massachusetts' 3 lb/1000 sq ft.
/// Source: RB209 by Tried & Tested; Texas A&M table 3; NCDA&CS Circular 1; UMass (all opened).
const PHOSPHATE: Rates = Rates {
    dressed: Dressed::P2O5,
    very_low: Band { low: 60.0, likely: 89.7, high: 168.1 },
    low: Band { low: 30.0, likely: 89.7, high: 146.5 },
};

/// Potash (K2O), likewise: Texas A&M 100 and 80 lb/acre; North Carolina's equation 14 at index 0
/// and 25, 150 and 88.5 lb/acre.
/// Source: RB209 by Tried & Tested; Texas A&M table 3; NCDA&CS Circular 1 (all opened).
const POTASH: Rates = Rates {
    dressed: Dressed::K2O,
    very_low: Band { low: 60.0, likely: 112.1, high: 168.1 },
    low: Band { low: 30.0, likely: 89.7, high: 99.2 },
};

/// Nitrogen for vegetables in a year: 2, 2.5 and 4 lb/1000 sq ft.
/// Source: UMass Extension (opened).
const VEGETABLE_NITROGEN: Band = Band { low: 97.6, likely: 122.1, high: 195.3 };

/// Nitrogen for a lawn in a year: many do with 1, tall fescue and bluegrass take 2.5–3 lb/1000 sq ft.
/// Source: NC State Extension (opened).
const LAWN_NITROGEN: Band = Band { low: 48.8, likely: 122.1, high: 146.5 };

/// From here to there in organic matter, %, the nitrogen comes down to its low end.
/// Source: UMass: the low end on loam with much organic matter (opened); 3 to 7 % is our choice.
const RICH_IN_ORGANIC_MATTER: (f64, f64) = (3.0, 7.0);

/// Nitrate-N above this needs no more, mg/kg.
/// Source: UC Cooperative Extension, nitrate guideline (opened).
const PLENTY_OF_NITRATE: f64 = 30.0;

/// Magnesium on the exchange from which it is enough whatever a table by weight says, %.
/// Source: University of Massachusetts, 10 to 30 % (opened).
const ENOUGH_ON_EXCHANGE: f64 = 10.0;

/// Sulfur in magnesium sulfate, MgSO4·7H2O. Source: atomic masses (derived).
const SULFUR_IN_EPSOM_SALT: f64 = 0.1301;

/// Names and labels of a need's figures, and its account.
struct Names {
    kind: NeedKind,
    what: &'static str,
    figures: [&'static str; 2],
    labels: [&'static str; 2],
    accounts: &'static [Substance],
    /// The element in what is measured out.
    element: f64,
}

const NITROGEN_NAMES: Names = Names {
    kind: NeedKind::Nitrogen,
    what: "nitrogen",
    figures: ["nitrogen-rate", "nitrogen-for-bed"],
    labels: ["nitrogen (N) a year", "nitrogen (N) for the bed"],
    accounts: &NITROGEN,
    element: 1.0,
};
const PHOSPHATE_NAMES: Names = Names {
    kind: NeedKind::Phosphate,
    what: "phosphate",
    figures: ["phosphate-rate", "phosphate-for-bed"],
    labels: ["phosphate (P₂O₅) a year", "phosphate (P₂O₅) for the bed"],
    accounts: &[Substance::Phosphorus],
    element: P_IN_P2O5,
};
const POTASH_NAMES: Names = Names {
    kind: NeedKind::Potash,
    what: "potash",
    figures: ["potash-rate", "potash-for-bed"],
    labels: ["potash (K₂O) a year", "potash (K₂O) for the bed"],
    accounts: &[Substance::Potassium],
    element: K_IN_K2O,
};
const MAGNESIUM_NAMES: Names = Names {
    kind: NeedKind::Magnesium,
    what: "magnesium",
    figures: ["epsom-salt-rate", "epsom-salt-for-bed"],
    labels: ["Epsom salts this year", "Epsom salts for the bed"],
    accounts: &[Substance::Magnesium],
    element: MAGNESIUM_IN_EPSOM_SALT,
};

const SULFUR_NAMES: Names = Names {
    kind: NeedKind::Sulfur,
    what: "sulfur",
    figures: ["gypsum-feed-rate", "gypsum-feed-for-bed"],
    labels: ["gypsum for its sulfur", "gypsum for the bed, for its sulfur"],
    accounts: &[Substance::Sulfur],
    element: SULFUR_IN_GYPSUM,
};

/// Enters a year's rate (kg/ha of what is measured out) as wanted, and gives the need.
fn enter(survey: &Survey<'_>, ledger: &mut Ledger, names: &Names, rate: Band, need: &mut Need) {
    let area = survey.bed.area.value;
    let grams = rate.map(|kg| kg * GRAMS_PER_M2_IN_KG_PER_HA * area);
    // Nitrogen is wanted in any form; it stands with the nitrate.
    ledger.account(names.accounts[0]).wanted = grams.map(|g| g * names.element);
    need.for_bed = Some(grams);
    need.figures.push(survey.told(Figure {
        name: names.figures[0],
        label: names.labels[0],
        band: rate,
        unit: Unit::KgPerHa,
        grounds: need.grounds.clone(),
    }));
}

/// What the year's needs come to after biochar, charge, lime and compost: what is still
/// missing, or that nothing is.
pub(super) fn settle(survey: &Survey<'_>, ledger: &mut Ledger, list: &mut [Need]) {
    let all = [&NITROGEN_NAMES, &PHOSPHATE_NAMES, &POTASH_NAMES, &MAGNESIUM_NAMES, &SULFUR_NAMES];
    for names in all {
        let Some(need) = list.iter_mut().find(|n| n.kind == names.kind && n.for_bed.is_some())
        else {
            continue;
        };
        still_missing(survey, ledger, names, need);
    }
}

/// Less than this share of the year's dressing is not worth feeding; twice as much is fed
/// whole, and between them it comes in by degrees, so that no line is a cliff.
/// Our choice: no test of a bed is truer.
const WORTH_FEEDING: f64 = 0.1;

/// What is fed of a share that is missing.
fn worth_feeding(share: f64) -> f64 {
    (2.0 * (share - WORTH_FEEDING)).clamp(0.0, share.max(0.0))
}

fn still_missing(survey: &Survey<'_>, ledger: &mut Ledger, names: &Names, need: &mut Need) {
    let brought = ledger.works(names.accounts);
    let room = ledger.room(names.accounts[0]);
    let whole = need.for_bed.unwrap_or(Band::exactly(0.0));
    let mut missing = ledger.missing(names.accounts).map(|g| g.min(room) / names.element);
    if brought.likely > 0.0 && whole.likely > 0.0 {
        let fed = worth_feeding(missing.likely / whole.likely) * whole.likely;
        missing = Band::new(missing.low.min(fed), fed, missing.high);
    }
    let given =
        |grams: Band| shown(&grams.map(|g| g / names.element), Unit::Gram, survey.case.measures);
    let mut grounds = Grounds::new(
        "kg/ha ÷ 10 = g on 1 m²; × area; less what biochar, charge and compost bring that works this year, plus what fresh biochar holds back",
        &[ARITHMETIC.derived()],
    )
    .input("a year's dressing", shown(&whole, Unit::Gram, survey.case.measures))
    .input("brought already", given(brought));
    grounds = survey.bed.area.add_to(grounds);
    let what = names.what;
    if brought.likely > 0.0 && missing.likely <= 0.0 {
        need.verdict = Verdict::Enough;
        need.answer = if room < whole.likely * names.element * WORTH_FEEDING {
            format!(
                "No more {what} this year: what is brought already is the most that may come in."
            )
        } else {
            format!("No more {what}: what is brought already, {}, is enough.", given(brought))
        };
        need.steps.clear();
        need.for_bed = None;
        need.grounds = grounds;
        return;
    }
    need.for_bed = Some(missing);
    if let Some((in_all, at_once)) = limits::of_nutrient(survey, names.kind) {
        need.hold(in_all, at_once);
    }
    let missing = need.for_bed.unwrap_or(missing);
    let fed = missing.map(|g| g * names.element);
    let mut brings = Brings::nothing().with_all(names.accounts[0], fed);
    if names.kind == NeedKind::Magnesium {
        brings = brings.with_all(Substance::Sulfur, missing.map(|g| g * SULFUR_IN_EPSOM_SALT));
    }
    ledger.enter(Bringer::Feed, &brings);
    let (band, unit) = if missing.likely < 1000.0 {
        (missing, Unit::Gram)
    } else {
        (missing.map(|g| g / 1000.0), Unit::Kg)
    };
    need.figures.push(Figure {
        name: names.figures[1],
        label: names.labels[1],
        band,
        unit,
        grounds,
    });
}

/// Whether another table, which was read, calls the soil short too: then memory doesn't stand alone.
fn a_read_table_agrees(finding: &Finding) -> bool {
    finding
        .second_opinions
        .iter()
        .any(|other| other.level.is_short() && !other.grounds.rests_on_memory())
}

/// The judgement a need begins from; the need itself where nothing can be worked out.
pub(super) fn level_of<'a>(
    survey: &'a Survey<'_>,
    property: Property,
    kind: NeedKind,
) -> Option<Result<(Level, &'a Finding), Need>> {
    let finding = survey.findings.get(property)?;
    Some(match finding.level {
        None => {
            let why = finding.not_judged.as_deref().unwrap_or_default();
            let answer = format!("It can't be said yet. {why}");
            Err(Need::said(kind, Verdict::Unknown, answer, finding.grounds.clone()))
        }
        Some(level)
            if level.is_short() && finding.rests_on_memory() && !a_read_table_agrees(finding) =>
        {
            Err(Need::said(
                kind,
                Verdict::Unknown,
                format!(
                    "Perhaps: the soil is {} in {} by a range that we know only from memory. Ask the lab what it recommends.",
                    level.label(),
                    property.label()
                ),
                finding.grounds.clone(),
            ))
        }
        Some(level) => Ok((level, finding)),
    })
}

fn by_level(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    property: Property,
    names: &Names,
    rates: &Rates,
    sources: &[Citation],
) -> Option<Need> {
    let (level, finding) = match level_of(survey, property, names.kind)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    if !level.is_short() {
        let upkeep = upkeep(survey, ledger, (property, level, finding), names, rates.dressed);
        return Some(upkeep.unwrap_or_else(|| enough(property, level, finding, names.kind)));
    }
    let what = property.label();
    let usual = if level == Level::VeryLow { rates.very_low } else { rates.low };
    let of_region = dressing(survey, rates.dressed, Some(level)).map(|d| d.beside(usual, sources));
    let (rate, grounds, when) = match of_region {
        Some(Dressing { rate, grounds, when, .. }) => (rate, grounds, when),
        None => (
            usual,
            Grounds::new(
                "A year's dressing by the level of the soil: the lowest, a middle and the highest of the published rates. They were made for field crops and gardens of one region each.",
                sources,
            ),
            None,
        ),
    };
    let mut grounds = grounds.input(what, format!("{} in the test", level.label()));
    grounds.sources.extend(finding.grounds.sources.iter().copied());
    let answer =
        format!("The soil is {} in {what}: feed it this year, then test again.", level.label());
    let mut need = Need::said(names.kind, Verdict::Give, answer, grounds);
    enter(survey, ledger, names, rate, &mut need);
    need.others.extend(when.map(|when| format!("The guide gives it so: {when}.")));
    Some(need)
}

/// What the region's own guide, where it was read, still gives these very plants on a soil that
/// has enough: as much as the harvest takes.
fn upkeep(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    (property, level, finding): (Property, Level, &Finding),
    names: &Names,
    dressed: Dressed,
) -> Option<Need> {
    let found = dressing(survey, dressed, Some(level)).filter(|_| level != Level::Excess)?;
    // Peat holds no phosphate, so that it runs off.
    let runs_off = property == Property::Phosphorus && survey.bed.ground == Ground::Organic;
    if runs_off || !found.own || found.rate.likely <= 0.0 || found.grounds.rests_on_memory() {
        return None;
    }
    let Dressing { rate, mut grounds, when, .. } = found;
    let what = property.label();
    grounds = grounds.input(what, format!("{} in the test", level.label()));
    grounds.cite(&finding.grounds.sources);
    let answer = format!(
        "The soil has enough {what}. The region's guide gives these plants a little still, for what the harvest takes."
    );
    let mut need = Need::said(names.kind, Verdict::Give, answer, grounds);
    enter(survey, ledger, names, rate, &mut need);
    need.others.extend(when.map(|when| format!("The guide gives it so: {when}.")));
    Some(need)
}

/// The answer where nothing is short.
fn enough(property: Property, level: Level, finding: &Finding, kind: NeedKind) -> Need {
    let what = property.label();
    let (verdict, answer) = match (property, level) {
        (_, Level::Sufficient) => (
            Verdict::Enough,
            format!("No {what} this year: there is enough. Test again in two or three years."),
        ),
        (Property::Phosphorus, _) => (
            Verdict::Stop,
            "No phosphorus, and stop adding it: no bone meal, no manure, no complete fertiliser. Let compost rest for some years.".into(),
        ),
        (_, Level::Excess) => (Verdict::Stop, format!("No {what}, and stop adding it for some years.")),
        _ => (Verdict::Enough, format!("No {what}: there is more than enough.")),
    };
    let mut need = Need::said(kind, verdict, answer, finding.grounds.clone());
    if property == Property::Phosphorus && level.is_surplus() {
        need.grounds.sources.push(UMN_COMPOST.opened());
    }
    need
}

pub(super) fn phosphate(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let sources =
        [RB209_RATES.opened(), TEXAS_RATES.opened(), NC_EQUATIONS.derived(), UMASS_RATES.opened()];
    let own =
        by_level(survey, ledger, Property::Phosphorus, &PHOSPHATE_NAMES, &PHOSPHATE, &sources);
    with_the_laboratory(survey, ledger, &PHOSPHATE_NAMES, own)
}

pub(super) fn potash(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let sources = [RB209_RATES.opened(), TEXAS_RATES.opened(), NC_EQUATIONS.derived()];
    let own = by_level(survey, ledger, Property::Potassium, &POTASH_NAMES, &POTASH, &sources);
    with_the_laboratory(survey, ledger, &POTASH_NAMES, own)
}

/// The laboratory's own figure beside ours; in its place where ours is none, or rests on memory.
fn with_the_laboratory(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    names: &Names,
    own: Option<Need>,
) -> Option<Need> {
    let Some(theirs) = laboratory::of(survey, names.kind) else { return own };
    // What we know from memory, or from the laboratory's own word, is no figure to hold against it.
    let of_ours = |need: &Need| {
        let remembered = need.figures.is_empty() && need.grounds.rests_on_memory();
        let its_word = need.grounds.sources.contains(&LABORATORY.opened());
        need.verdict != Verdict::Unknown && !remembered && !its_word
    };
    if let Some(mut need) = own.filter(of_ours) {
        let both = Both {
            theirs: theirs.per_m2.likely * survey.bed.area.value,
            ours: need.for_bed.map_or(0.0, |grams| grams.likely),
            most: limits::of_nutrient(survey, names.kind).map_or(0.0, |(in_all, _)| in_all.most),
        };
        theirs.beside(survey, &mut need, &both);
        return Some(need);
    }
    // What our own rate wanted is wanted no longer.
    ledger.account(names.accounts[0]).wanted = Band::exactly(0.0);
    if !theirs.asks() {
        let none = "None this year: your laboratory asks for none.";
        return Some(Need::said(names.kind, Verdict::Enough, none, theirs.grounds()));
    }
    let answer = format!(
        "Your laboratory asks for {}. That is its own figure: we hold none that we could put in its place.",
        theirs.printed
    );
    let mut need = Need::said(names.kind, Verdict::Give, answer, theirs.grounds());
    let rate = theirs.per_m2.map(|grams| grams / GRAMS_PER_M2_IN_KG_PER_HA);
    enter(survey, ledger, names, rate, &mut need);
    if names.kind == NeedKind::Nitrogen {
        how_nitrogen_is_given(survey, &mut need);
    }
    Some(need)
}

/// Nitrogen by the plants, less what nitrate the test found.
pub(super) fn nitrogen(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let own = nitrogen_by_plants(survey, ledger);
    with_the_laboratory(survey, ledger, &NITROGEN_NAMES, own)
}

fn nitrogen_by_plants(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let kind = NeedKind::Nitrogen;
    let lawn = survey.is_lawn();
    if !lawn && !survey.grows_vegetables() && dressing(survey, Dressed::N, None).is_none() {
        let answer = "It can't be said: we hold no published rate for these plants. Most take little; ask your extension office.";
        return Some(Need::said(kind, Verdict::Unknown, answer, Grounds::default()));
    }
    let nitrate = survey.soil.value(Property::NitrateN);
    let surplus = survey.findings.level(Property::NitrateN).is_some_and(Level::is_surplus);
    if let Some(found) = nitrate.filter(|n| *n > PLENTY_OF_NITRATE || surplus) {
        let grounds = Grounds::new(
            "Nitrate-N above sufficient, or above 30 mg/kg, is more than plants need.",
            &[UC_NITRATE.opened()],
        )
        .input("nitrate-N", format!("{} mg/kg", significant(found, 3)));
        let answer = "No nitrogen now: the soil holds more nitrate than plants need. Rain takes it down, so test again before the next sowing.";
        return Some(Need::said(kind, Verdict::Enough, answer, grounds));
    }
    let (mut rate, mut grounds) = years_nitrogen(survey, lawn);
    if let Some(found) = nitrate {
        let share = wanted_beside_nitrate(survey, found);
        let most = years_most(lawn).map(|kg| kg * share);
        rate = Band::new(
            rate.low.min(most.low),
            rate.likely.min(most.likely),
            rate.high.min(most.high),
        );
        if share < 1.0 {
            grounds = grounds.assume(
                "From three quarters of the nitrate that is enough, the year's nitrogen comes down to none.",
            );
            grounds.sources.extend([UC_NITRATE.opened(), PSNT_SWEET_CORN.derived()]);
        }
    }
    let gives = rate.likely > 0.0;
    let answer = if gives {
        "These plants take nitrogen every year, and the soil does not store it for them."
    } else {
        "Little or none: the nitrate in the soil is likely enough."
    };
    let verdict = if gives { Verdict::Give } else { Verdict::Enough };
    let mut need = Need::said(kind, verdict, answer, grounds);
    if gives {
        enter(survey, ledger, &NITROGEN_NAMES, rate, &mut need);
        need.months = dressing(survey, Dressed::N, None).map_or(&[], |found| found.months);
    }
    how_nitrogen_is_given(survey, &mut need);
    Some(need)
}

fn how_nitrogen_is_given(survey: &Survey<'_>, need: &mut Need) {
    if survey.is_lawn() {
        need.steps.push(limits::lawn_at_once(survey));
        need.grounds.sources.push(CORNELL_LAWNS.opened());
    }
    if survey.plants() == PlantGroup::AcidLovers {
        need.steps.push(
            "Use ammonium or urea, such as ammonium sulfate: nitrate harms these plants.".into(),
        );
    }
    // A guide that names its months knows its own winter.
    if !need.months.is_empty() {
        need.steps.push("Give it in the months of the region's guide; see the jobs.".into());
        return;
    }
    if !survey.is_lawn() {
        need.steps.push(limits::HALF_AND_HALF.into());
    }
    need.steps.push("Never before winter: rain washes it into the ground water.".into());
}

/// A year's nitrogen where the soil holds none, kg/ha.
fn years_most(lawn: bool) -> Band {
    if lawn { LAWN_NITROGEN } else { VEGETABLE_NITROGEN }
}

/// The most of a year's nitrogen that is wanted beside the nitrate found (mg/kg), as a share:
/// all of it up to three quarters of what is enough, then less, and none where there is enough.
///
/// Source: UC guideline, enough from 20 (opened); Rutgers' rates on manured ground come down from
/// three quarters at 15 to a half at 20 (opened); that they come down to none is our choice.
fn wanted_beside_nitrate(survey: &Survey<'_>, found: f64) -> f64 {
    let range = survey.findings.get(Property::NitrateN).and_then(|f| f.range.as_ref());
    let enough = range
        .filter(|range| range.unit == Unit::MgPerKg)
        .and_then(|range| range.sufficient_to)
        .map_or(PLENTY_OF_NITRATE, |enough| enough.min(PLENTY_OF_NITRATE));
    let judged = found * survey.bed.lightens(Property::NitrateN);
    (4.0 * (1.0 - judged / enough)).clamp(0.0, 1.0)
}

/// A year's nitrogen, kg/ha, with what it rests on.
fn years_nitrogen(survey: &Survey<'_>, lawn: bool) -> (Band, Grounds) {
    let mut rate = years_most(lawn);
    let source = if lawn { NC_LAWNS.opened() } else { UMASS_RATES.opened() };
    let mut grounds = Grounds::new(
        "A year's nitrogen for these plants, less the nitrate in the soil.",
        &[source],
    );
    let of_region = dressing(survey, Dressed::N, None).map(|d| d.beside(rate, &[source]));
    if let Some(Dressing { rate: of_region, grounds: own, .. }) = of_region {
        rate = of_region;
        grounds.sources = own.sources;
        grounds.inputs = own.inputs;
        grounds.assumed = own.assumed;
    } else if survey.case.plants.is_none() && !lawn {
        grounds = grounds.assume("Mixed vegetables, until you say what grows here.");
    }
    let matter = survey.soil.value(Property::OrganicMatter).filter(|_| !lawn);
    if let Some(om) = matter.filter(|om| *om > RICH_IN_ORGANIC_MATTER.0) {
        // From one end to the other the rate goes down to its low end.
        let (from, to) = RICH_IN_ORGANIC_MATTER;
        let rich = ((om - from) / (to - from)).min(1.0);
        let down = |from: f64, to: f64| from + rich * (to - from);
        rate = Band::new(rate.low, down(rate.likely, rate.low), down(rate.high, rate.likely));
        grounds = grounds
            .input("organic matter", format!("{} %", significant(om, 3)))
            .assume("A soil this rich gives off nitrogen itself: less is likely enough.");
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    if let Some(stock) = survey.nitrate_stock() {
        let held = stock.band;
        rate = Band::new(
            (rate.low - held.high).max(0.0),
            (rate.likely - held.likely).max(0.0),
            (rate.high - held.low).max(0.0),
        );
        grounds.inputs.extend(stock.grounds.inputs);
        grounds.assumed.extend(stock.grounds.assumed);
        grounds = grounds.assume("The nitrate is still there at planting: rain takes it down.");
        grounds.sources.push(ARITHMETIC.derived());
    }
    (rate, grounds)
}

/// How much magnesium a soil that is short of it lacks, mg/kg: to the start of sufficiency by
/// weight, or to 10 % of its exchange where that is less, since a table by weight is made for
/// soils that hold more. `None` where it is short by weight only, or not at all; 0 where
/// nothing tells how much.
pub(super) fn magnesium_gap(survey: &Survey<'_>) -> Option<f64> {
    let finding = survey.findings.get(Property::Magnesium)?;
    if !finding.level.is_some_and(Level::is_short) {
        return None;
    }
    let share = survey.chemistry.band(Derived::MagnesiumSaturation).map(|share| share.likely);
    if share.is_some_and(|share| share >= ENOUGH_ON_EXCHANGE) {
        return None;
    }
    let found = survey.soil.value(Property::Magnesium);
    let wanted = finding.range.as_ref().filter(|r| r.unit == Unit::MgPerKg);
    let by_weight = found.zip(wanted.and_then(|r| r.sufficient_from)).map(|(v, from)| from - v);
    let on_exchange = share.zip(survey.chemistry.cec).map(|(share, cec)| {
        (ENOUGH_ON_EXCHANGE - share) / 100.0 * cec.likely * limits::MAGNESIUM_PER_MEQ
    });
    let gap = by_weight.map_or(0.0, |gap| on_exchange.map_or(gap, |other| gap.min(other)));
    Some(gap.max(0.0))
}

/// Magnesium: the gap to sufficiency.
pub(super) fn magnesium(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let kind = NeedKind::Magnesium;
    let (level, finding) = match level_of(survey, Property::Magnesium, kind)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    if !level.is_short() {
        let enough = "No magnesium: there is enough.";
        return Some(Need::said(kind, Verdict::Enough, enough, finding.grounds.clone()));
    }
    let Some(gap) = magnesium_gap(survey) else {
        let share = survey.chemistry.get(Derived::MagnesiumSaturation);
        let text = survey.shown(&share.map_or(Band::exactly(0.0), |s| s.band), Unit::Percent);
        let answer = format!(
            "No magnesium: by weight it is little, but so light a soil holds no more, and magnesium has {text} of its exchange."
        );
        let mut grounds = share.map(|share| share.grounds.clone()).unwrap_or_default();
        grounds.sources.push(UMASS_REPORT.opened());
        return Some(Need::said(kind, Verdict::Enough, answer, grounds));
    };
    let limed = survey.findings.level(Property::Ph).is_some_and(Level::is_short)
        && survey.plants() != PlantGroup::AcidLovers;
    let answer = if limed {
        "The soil is acid and short of magnesium: lime with dolomitic lime, which helps both."
    } else {
        "The soil is short of magnesium: Epsom salts (magnesium sulfate) bring it without lime."
    };
    let mut need = Need::said(kind, Verdict::Give, answer, finding.grounds.clone());
    if limed || gap <= 0.0 {
        return Some(need);
    }
    // From half the gap to all of it: plants take some up, and the next test shows.
    let (depth, density) = (survey.bed.depth.value, survey.bed.density.value);
    let whole = density.map(|density| stock(gap, depth, density) / MAGNESIUM_IN_EPSOM_SALT);
    let rate = Band::new(whole.low / 2.0, whole.likely / 2.0, whole.high);
    let grounds = Grounds::new(
        "The gap to the start of sufficiency in the worked depth, or to 10 % of the exchange where that is less, half of it in the first year, as MgSO₄·7H₂O (9.86 % Mg).",
        &[EPSOM_ARITHMETIC.derived(), UMASS_REPORT.opened(), OUR_CHOICE.unsourced()],
    )
    .input("gap", format!("{} mg/kg", significant(gap, 3)));
    need.grounds = survey.bed.depth.add_to(survey.bed.density.add_to(grounds));
    enter(survey, ledger, &MAGNESIUM_NAMES, rate, &mut need);
    Some(need)
}

/// Sulfur: as gypsum, which feeds it without moving the pH.
pub(super) fn sulfur(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let kind = NeedKind::Sulfur;
    let (level, finding) = match level_of(survey, Property::Sulfur, kind)? {
        Ok(found) => found,
        Err(need) => return Some(need),
    };
    if !level.is_short() {
        let enough = "No sulfur for feeding: there is enough.";
        return Some(Need::said(kind, Verdict::Enough, enough, finding.grounds.clone()));
    }
    let Dressing { rate, mut grounds, when, .. } = dressing(survey, Dressed::S, Some(level))?;
    grounds.rule.push_str(" Gypsum is that ÷ 0.186, its share of sulfur.");
    grounds = grounds.input("sulfur", format!("{} in the test", level.label()));
    grounds.sources.extend(finding.grounds.sources.iter().copied());
    grounds.sources.push(ARITHMETIC.derived());
    let answer = format!(
        "The soil is {} in sulfur. Gypsum feeds it, and leaves the pH as it is.",
        level.label()
    );
    let mut need = Need::said(kind, Verdict::Give, answer, grounds);
    enter(survey, ledger, &SULFUR_NAMES, rate.map(|kg| kg / SULFUR_IN_GYPSUM), &mut need);
    need.others.extend(when.map(|when| format!("The guide gives it so: {when}.")));
    need.cautions.push("Gypsum dust irritates eyes and lungs: wear goggles and a mask.".into());
    Some(need)
}
