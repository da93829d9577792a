//! Gypsum, which a sodic soil needs and no other.

use crate::chemistry::sodium::{SALINE, Sodic, Sodium};
use crate::plan::ledger::{Bringer, Brings, Ceiling, Ledger, Substance};
use crate::plan::needs::lime_rate::T_PER_HA_IN_LB_PER_1000_SQ_FT;
use crate::plan::needs::{Need, NeedKind, Verdict, limits};
use crate::quantity::{Band, Figure, Grounds, Unit};
use crate::sources::{
    ALI_GYPSUM, ARITHMETIC, COLORADO_SALINE, COLORADO_SODIC, COMMON_PRACTICE, Citation,
    INDIA_GYPSUM, NMSU_SULFUR, NRCS_SALINITY, OSTER_1999, OUR_CHOICE, WINE_GYPSUM,
};
use crate::survey::Survey;

/// Calcium and sulfur in gypsum, CaSO4·2H2O. Source: atomic masses (derived).
const CALCIUM_IN_GYPSUM: f64 = 0.2328;
/// Source: atomic masses (derived).
pub(super) const SULFUR_IN_GYPSUM: f64 = 0.1862;
/// Exchangeable sodium to come down to, as a share of what makes a soil sodic: 5, 7.5 and 10 of
/// 15 %. The less, the more gypsum.
const TARGET: Band = Band { low: 1.0 / 3.0, likely: 0.5, high: 2.0 / 3.0 };
/// How much more gypsum it takes than the exchange alone.
/// Source: Oster 1999 (second-hand).
const INEFFICIENCY: Band = Band { low: 1.1, likely: 1.2, high: 1.3 };
/// The most in one dose that is mixed in, kg/ha: the lesser of 10 to 15 t.
/// Source: reclamation of sodic soil in India (second-hand).
const MIXED_IN: f64 = 10_000.0;
/// The most in one dose on top, kg/ha: 50 lb/1000 sq ft.
/// Source: extension offices for turf (from memory); for other ground our choice.
const ON_TOP: f64 = 50_000.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// mg of gypsum (CaSO4·2H2O) that replace this much sodium (meq).
///
/// Source: arithmetic: 172.17 g per mole of two charges, 86.1 mg per meq.
pub fn gypsum_per_meq(sodium: f64) -> f64 {
    86.1 * sodium
}

/// t/ha of gypsum: 8.6 × F × depth (m) × density (g/cm³) × CEC (meq/100 g) ×
/// (ESP now − ESP wanted, %) ÷ purity (%). Zero when there is nothing to replace.
///
/// Source: Oster and others 1999 (second-hand).
pub fn gypsum_oster(
    factor: f64,
    depth_m: f64,
    density: f64,
    cec: f64,
    (now, wanted): (f64, f64),
    purity: f64,
) -> f64 {
    8.6 * factor * depth_m * density * cec * (now - wanted).max(0.0) / purity
}

/// Gypsum for this bed; `None` when the soil is neither sodic nor saline, or
/// the report doesn't tell.
pub(super) fn need(survey: &Survey<'_>, ledger: &mut Ledger) -> Option<Need> {
    let sodium = survey.chemistry.sodium.as_ref()?;
    if sodium.sodic != Sodic::Yes {
        return no_gypsum(survey, sodium);
    }
    if survey.bed.is_potted() {
        return Some(said(
            sodium,
            "The soil is sodic. In a pot, change to fresh potting mix: gypsum is sized for open ground.",
            &[COMMON_PRACTICE.unsourced()],
        ));
    }
    let capacity =
        survey.chemistry.cec.filter(|cec| cec.likely > 0.0 && sodium.esp.likely <= 100.0);
    let Some(cec) = capacity else {
        return Some(said(
            sodium,
            "The soil is sodic: gypsum, drainage and clean water are the cure. How much can't be \
             told without the exchange capacity (CEC). Ask the lab for it, and have the gypsum \
             sized locally.",
            &[COLORADO_SODIC.opened()],
        ));
    };
    let rate = rate(survey, sodium, cec);
    let grams = rate.map(|t| t * 100.0 * survey.bed.area.value);
    let brings = Brings::nothing()
        .with_all(Substance::Calcium, grams.map(|g| g * CALCIUM_IN_GYPSUM))
        .with_all(Substance::Sulfur, grams.map(|g| g * SULFUR_IN_GYPSUM));
    ledger.enter(Bringer::Gypsum, &brings);
    Some(amounts(survey, sodium, cec, rate, grams))
}

fn said(sodium: &Sodium, answer: &str, sources: &[Citation]) -> Need {
    let mut grounds = sodium.grounds.clone();
    grounds.sources.extend(sources);
    Need::said(NeedKind::Gypsum, Verdict::Unknown, answer, grounds)
}

fn no_gypsum(survey: &Survey<'_>, sodium: &Sodium) -> Option<Need> {
    if survey.ece().is_some_and(|ece| ece.likely >= SALINE) {
        let answer = "No gypsum: the soil is salty, but not from sodium on the clay. Wash the salts \
                      down with clean water, where it can drain away.";
        return Some(said(sodium, answer, &[COLORADO_SALINE.opened(), NRCS_SALINITY.opened()]));
    }
    (sodium.sodic == Sodic::Perhaps).then(|| {
        let answer = "No gypsum yet: the soil may hold too much sodium, but the report is too coarse \
                      to tell. Ask the lab for the sodium adsorption ratio (SAR).";
        said(sodium, answer, &[COLORADO_SODIC.opened()])
    })
}

/// Pure gypsum, t/ha.
fn rate(survey: &Survey<'_>, sodium: &Sodium, cec: Band) -> Band {
    let (esp, target) = (sodium.esp, TARGET.map(|share| share * sodium.line));
    let (depth, density) = (limits::reached(survey), survey.bed.density.value);
    let by = |factor, density, cec, now, wanted| {
        gypsum_oster(factor, depth / 100.0, density, cec, (now, wanted), 100.0)
    };
    Band::new(
        by(INEFFICIENCY.low, density.low, cec.low, esp.low, target.high),
        by(INEFFICIENCY.likely, density.likely, cec.likely, esp.likely, target.likely),
        by(INEFFICIENCY.high, density.high, cec.high, esp.high, target.low),
    )
}

fn grounds(survey: &Survey<'_>, sodium: &Sodium, cec: Band) -> Grounds {
    let mut grounds = sodium.grounds.clone();
    grounds.rule = format!(
        "Pure gypsum in t/ha = 8.6 × F × depth (m) × density × CEC × (exchangeable sodium − goal) ÷ 100. {}",
        grounds.rule
    );
    grounds = survey.bed.density.add_to(grounds);
    grounds = if limits::stays_on_top(survey) {
        let undug = survey.shown(&Band::exactly(limits::UNDUG), Unit::Cm);
        grounds.assume(format!("Undug, gypsum is sized for the top {undug}."))
    } else {
        survey.bed.depth.add_to(grounds)
    };
    grounds = grounds
        .input("exchangeable sodium", survey.shown(&sodium.esp, Unit::Percent))
        .input("goal", survey.shown(&TARGET.map(|share| share * sodium.line), Unit::Percent))
        .input("exchange capacity", survey.shown(&cec, Unit::MeqPer100g))
        .input("F", survey.shown(&INEFFICIENCY, Unit::None));
    grounds.sources.extend([
        OSTER_1999.second_hand(),
        COLORADO_SODIC.opened(),
        ARITHMETIC.derived(),
        OUR_CHOICE.unsourced(),
        ALI_GYPSUM.opened(),
        WINE_GYPSUM.opened(),
        COMMON_PRACTICE.unsourced(),
    ]);
    if survey.bed.limy {
        grounds.sources.push(NMSU_SULFUR.opened());
    }
    if survey.ece().is_some_and(|ece| ece.likely >= SALINE) {
        grounds = grounds.assume(
            "The soil is salty as well: salts in its water may be counted as sodium on the clay.",
        );
        grounds.sources.push(COLORADO_SALINE.opened());
    }
    grounds
}

/// The same sodium by the other rules, which have no factor and no density.
fn others(survey: &Survey<'_>, esp: Band, cec: Band) -> Vec<String> {
    let depth = limits::reached(survey);
    let replaced = cec.likely * (esp.likely - TARGET.likely) / 100.0;
    let acre_foot = 1.7 * 0.907_184_74 / 0.404_685_642_24 * depth / 30.48;
    let other = |name: &str, per_meq: f64| {
        let rate = Band::exactly(replaced * per_meq);
        format!("{name}: {}.", survey.shown(&rate, Unit::TonnePerHa))
    };
    let mut others = vec![
        other("The rule of 1.7 tons for each acre-foot and meq/100 g of sodium", acre_foot),
        other("A South African guide", 3.4 * depth / 30.0),
    ];
    if survey.bed.limy {
        others.push(
            "Where there is free lime, 1 part of sulfur can do the work of 5 parts of gypsum: it \
             makes gypsum from the lime, slowly."
                .into(),
        );
    }
    others
}

/// The most gypsum in all, and in one dose.
fn most(survey: &Survey<'_>, rate: Band) -> (Ceiling, Ceiling) {
    let in_all = limits::at_most(
        survey,
        rate.high * 1000.0,
        "More gypsum finds no sodium to put calcium in the place of.",
        "gypsum that brings exchangeable sodium down to 5 %, with 1.3 times what the exchange takes.",
        &[OSTER_1999.second_hand(), OUR_CHOICE.unsourced()],
    );
    let (kg, rule, source) = if limits::lies_on_top(survey) {
        (ON_TOP, "gypsum in one dose on top: 50 lb/1000 sq ft.", COMMON_PRACTICE.from_memory())
    } else {
        (MIXED_IN, "gypsum in one dose that is mixed in: 10 t/ha.", INDIA_GYPSUM.second_hand())
    };
    let why = "More gypsum at one time lies there and does not dissolve.";
    (in_all, limits::at_most(survey, kg, why, rule, &[source]))
}

fn amounts(survey: &Survey<'_>, sodium: &Sodium, cec: Band, rate: Band, grams: Band) -> Need {
    let grounds = grounds(survey, sodium, cec);
    let (area, bed) = (&survey.bed.area, grams.map(|g| g / 1000.0));
    let told = if area.known {
        survey.shown(&bed, Unit::Kg)
    } else {
        survey.shown(&rate, Unit::TonnePerHa)
    };
    let figure =
        |name, label, band, unit, grounds| survey.told(Figure { name, label, band, unit, grounds });
    let of_bed = area.add_to(grounds.clone());
    let answer =
        format!("The soil is sodic. Gypsum: roughly {told}. Have it sized locally before you buy.");
    let mut need = Need::said(NeedKind::Gypsum, Verdict::Give, answer, grounds.clone());
    need.for_bed = Some(grams);
    need.figures = vec![
        figure("gypsum-rate", "pure gypsum", rate, Unit::TonnePerHa, grounds),
        figure("gypsum-for-bed", "pure gypsum for the bed", bed, Unit::Kg, of_bed),
    ];
    need.others = others(survey, sodium.esp, cec);
    let spread = if !limits::lies_on_top(survey) {
        let depth = survey.shown(&Band::exactly(survey.bed.depth.value), Unit::Cm);
        format!("Spread the gypsum and mix it into the top {depth}.")
    } else {
        "Spread the gypsum on top and water it in.".into()
    };
    need.steps = vec![
        "First see that water can drain away below: without drainage gypsum does nothing.".into(),
        spread,
        "Then wash the sodium down with plenty of water that holds little sodium.".into(),
        "Agricultural gypsum is not pure: divide by its purity. Test again after a year.".into(),
    ];
    let (in_all, at_once) = most(survey, rate);
    need.hold(in_all, at_once);
    if need.doses > 1 {
        let each = survey.weighed(grams.likely / f64::from(need.doses));
        need.steps.push(format!(
            "Spread it in {} doses of {each}, half a year apart, and wash after each.",
            need.doses
        ));
    }
    need.cautions = vec![
        "Gypsum does not raise or lower the pH, and it is no help for a salty soil that is not \
         sodic: that needs washing out."
            .into(),
        "Gypsum dust irritates eyes and lungs: wear goggles and a mask.".into(),
    ];
    need
}
