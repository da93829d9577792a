//! Gypsum, which a sodic soil needs and no other.

use crate::needs::reaction::{area, worked_depth};
use crate::needs::{Ground, Need, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::ranges::has_free_lime;
use crate::soil::Property;
use crate::sources::{
    ALI_GYPSUM, ARITHMETIC, COLORADO_SALINE, COLORADO_SODIC, COMMON_PRACTICE, Citation,
    HANDBOOK_60, NMSU_SULFUR, NRCS_SALINITY, OSTER_1999, OUR_CHOICE, WINE_GYPSUM,
};

/// Exchangeable sodium from which a soil counts as sodic, %.
const SODIC: f64 = 15.0;
/// Salts in saturated paste from which a soil counts as saline, dS/m.
const SALINE: f64 = 4.0;
/// Exchangeable sodium to come down to, %: the less, the more gypsum.
const TARGET: Band = Band { low: 5.0, likely: 7.5, high: 10.0 };
/// How much more gypsum it takes than the exchange alone.
/// Source: Oster 1999 (second-hand).
const INEFFICIENCY: Band = Band { low: 1.1, likely: 1.2, high: 1.3 };
/// Dry weight of a soil nobody weighed, g/cm³.
const USUAL_DENSITY: Band = Band { low: 1.1, likely: 1.3, high: 1.6 };
/// The depth when nobody said, cm.
const USUAL_DEPTH: f64 = 15.0;

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

/// Exchangeable sodium and what it rests on.
struct Sodium {
    band: Band,
    grounds: Grounds,
}

fn sodium(ground: &Ground<'_>) -> Option<Sodium> {
    let as_printed = |band, name: &str, value, rule: &str, sources: &[Citation]| Sodium {
        band: Band::exactly(band),
        grounds: Grounds::new(rule, sources).input(name, significant(value, 3)),
    };
    if let Some(sar) = ground.soil.value(Property::Sar).filter(|sar| *sar < 65.0) {
        let rule =
            "Exchangeable sodium = 100 × r ÷ (1 + r), r = −0.0126 + 0.01475 × adsorption ratio.";
        return Some(as_printed(
            crate::traits::sodicity::esp_from_sar(sar),
            Property::Sar.label(),
            sar,
            rule,
            &[HANDBOOK_60.second_hand()],
        ));
    }
    if let Some(esp) = ground.soil.value(Property::SodiumSaturation) {
        let rule = "Exchangeable sodium as the lab gives it.";
        return Some(as_printed(esp, "exchangeable sodium (%)", esp, rule, &[]));
    }
    let figure = ground.chemistry.get("sodium-saturation")?;
    Some(Sodium { band: figure.band, grounds: figure.grounds.clone() })
}

/// Gypsum for this bed; `None` when the soil is neither sodic nor saline, or
/// the report doesn't tell.
pub(super) fn need(ground: &Ground<'_>) -> Option<Need> {
    let Sodium { band: esp, mut grounds } = sodium(ground)?;
    let said = |answer: &str, mut grounds: Grounds, sources: &[Citation]| {
        grounds.sources.extend(sources);
        Some(Need { name: "gypsum", answer: answer.into(), grounds, ..Need::default() })
    };
    let saline = ground.chemistry.get("ece").is_some_and(|ece| ece.band.likely >= SALINE);
    if esp.likely < SODIC {
        if saline {
            return said(
                "No gypsum: the soil is salty, but not from sodium on the clay. Wash the salts \
                 down with clean water, where it can drain away.",
                grounds,
                &[COLORADO_SALINE.opened(), NRCS_SALINITY.opened()],
            );
        }
        if esp.high >= SODIC {
            return said(
                "No gypsum yet: the soil may hold too much sodium, but the report is too coarse \
                 to tell. Ask the lab for the sodium adsorption ratio (SAR).",
                grounds,
                &[COLORADO_SODIC.opened()],
            );
        }
        return None;
    }
    let Some(cec) = ground.chemistry.cec.filter(|cec| cec.likely > 0.0 && esp.likely <= 100.0)
    else {
        return said(
            "The soil is sodic: gypsum, drainage and clean water are the cure. How much can't be \
             told without the exchange capacity (CEC). Ask the lab for it, and have the gypsum \
             sized locally.",
            grounds,
            &[COLORADO_SODIC.opened()],
        );
    };
    let case = ground.case;
    let depth = worked_depth(ground);
    let cm = |cm: f64| shown(&Band::exactly(cm), Unit::Cm, case.measures);
    grounds.rule = format!(
        "Pure gypsum in t/ha = 8.6 × F × depth (m) × density × CEC × (exchangeable sodium − goal) ÷ 100. {}",
        grounds.rule
    );
    if depth.is_none() {
        grounds = grounds.assume(format!("The depth isn't known: taken as {}.", cm(USUAL_DEPTH)));
    }
    let depth = depth.unwrap_or(USUAL_DEPTH);
    let measured = ground.soil.value(Property::BulkDensity).filter(|d| *d > 0.0);
    let density = measured.map_or(USUAL_DENSITY, Band::exactly);
    let text = |band: &Band, unit| shown(band, unit, case.measures);
    grounds = grounds
        .input("exchangeable sodium", text(&esp, Unit::Percent))
        .input("goal", text(&TARGET, Unit::Percent))
        .input("exchange capacity", text(&cec, Unit::MeqPer100g))
        .input("depth", cm(depth))
        .input("density", text(&density, Unit::GPerCm3))
        .input("F", text(&INEFFICIENCY, Unit::None));
    if measured.is_none() {
        grounds = grounds
            .assume("The soil is taken to weigh 1.3 (1.1–1.6) g/cm³ dry: nobody weighed it.");
    }
    grounds.sources.extend([
        OSTER_1999.second_hand(),
        COLORADO_SODIC.opened(),
        ARITHMETIC.derived(),
        OUR_CHOICE.unsourced(),
    ]);
    let by = |factor, density, cec, now, wanted| {
        gypsum_oster(factor, depth / 100.0, density, cec, (now, wanted), 100.0)
    };
    let rate = Band::new(
        by(INEFFICIENCY.low, density.low, cec.low, esp.low, TARGET.high),
        by(INEFFICIENCY.likely, density.likely, cec.likely, esp.likely, TARGET.likely),
        by(INEFFICIENCY.high, density.high, cec.high, esp.high, TARGET.low),
    );
    let mut figures = vec![Figure {
        name: "gypsum-rate",
        label: "pure gypsum",
        band: rate,
        unit: Unit::TonnePerHa,
        grounds: grounds.clone(),
    }];
    let mut told = text(&rate, Unit::TonnePerHa);
    if let Some(area) = area(ground) {
        let band = rate.map(|t| t * 0.1 * area);
        told = text(&band, Unit::Kg);
        figures.push(Figure {
            name: "gypsum-for-bed",
            label: "pure gypsum for the bed",
            band,
            unit: Unit::Kg,
            grounds: grounds.clone().input("area", format!("{} m²", significant(area, 3))),
        });
    }
    // The same sodium by the other rules, which have no factor and no density.
    let replaced = cec.likely * (esp.likely - TARGET.likely) / 100.0;
    let acre_foot = 1.7 * 0.907_184_74 / 0.404_685_642_24 * depth / 30.48;
    let other = |name: &str, per_meq: f64| {
        format!("{name}: {}.", text(&Band::exactly(replaced * per_meq), Unit::TonnePerHa))
    };
    let mut others = vec![
        other("The rule of 1.7 tons for each acre-foot and meq/100 g of sodium", acre_foot),
        other("A South African guide", 3.4 * depth / 30.0),
    ];
    grounds.sources.extend([ALI_GYPSUM.opened(), WINE_GYPSUM.opened()]);
    if has_free_lime(ground.soil) {
        others.push(
            "Where there is free lime, 1 part of sulfur can do the work of 5 parts of gypsum: it \
             makes gypsum from the lime, slowly."
                .into(),
        );
        grounds.sources.push(NMSU_SULFUR.opened());
    }
    if saline {
        grounds = grounds.assume(
            "The soil is salty as well: salts in its water may be counted as sodium on the clay.",
        );
        grounds.sources.push(COLORADO_SALINE.opened());
    }
    grounds.sources.push(COMMON_PRACTICE.unsourced());
    Some(Need {
        name: "gypsum",
        verdict: Verdict::Give,
        answer: format!(
            "The soil is sodic. Gypsum: roughly {told}. Have it sized locally before you buy."
        ),
        figures,
        steps: vec![
            "First see that water can drain away below: without drainage gypsum does nothing."
                .into(),
            format!("Spread the gypsum and mix it into the top {}.", cm(depth)),
            "Then wash the sodium down with plenty of water that holds little sodium.".into(),
            "Agricultural gypsum is not pure: divide by its purity. Test again after a year."
                .into(),
        ],
        cautions: vec![
            "Gypsum does not raise or lower the pH, and it is no help for a salty soil that is \
             not sodic: that needs washing out."
                .into(),
            "Gypsum dust irritates eyes and lungs: wear goggles and a mask.".into(),
        ],
        others,
        grounds,
    })
}
