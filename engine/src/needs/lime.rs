//! How much lime, by the one buffer the laboratory used, and in what doses.

use crate::case::BedKind;
use crate::chemistry::{MEHLICH_PER_PH, MEHLICH_START};
use crate::needs::lime_rate::{
    T_PER_HA_IN_LB_PER_1000_SQ_FT, T_PER_HA_IN_TON_PER_ACRE, adams_evans, as_product,
    at_neutralising_value, doses, exchangeable_acidity_psu, mehlich_nc, sikora_oregon,
    smp_tri_state, turf_psu,
};
use crate::needs::reaction::{Reaction, area, worked_depth};
use crate::needs::{Ground, Need};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::has_free_lime;
use crate::soil::{Measure, Method, MethodKind, PlantGroup, Property};
use crate::sources::{
    ADAMS_EVANS_1962, ARITHMETIC, COMMON_PRACTICE, Citation, HULUKA_2005, MISSOURI_ENM,
    NCDA_BUFFER, NCDA_LIME, OREGON_SIKORA, OSU_LIMING, OUR_CHOICE, PSU_GARDEN, PSU_LAWN, PSU_LIME,
    PSU_TURF_LIME, SMP_DOMAIN, TRI_STATE_LIME, UCONN_PH, WSU_LIME_DOSE,
};

/// No lime from this pH.
const NONE_FROM_PH: f64 = 7.0;
/// Laboratories lime when the pH is this far below the target.
/// Source: E-2567 (opened): 0.2–0.3.
const TENTHS_BELOW: f64 = 2.0;
/// North Carolina counts less than this (ton/acre) as none.
const LEAST_NC: f64 = 0.3;
/// Calcium carbonate equivalent of a lime nobody named, %.
const USUAL_LIME: Band = Band { low: 80.0, likely: 90.0, high: 100.0 };
/// What a lime can have: quicklime has 178.
const LIMES: std::ops::RangeInclusive<f64> = 10.0..=180.0;
/// Most in one dose: 10 lb/100 sq ft of tilled garden, in t/ha.
const GARDEN_DOSE: f64 = 100.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// Most in one dose: 50 lb/1000 sq ft of lawn, or round shrubs, in t/ha.
const SURFACE_DOSE: f64 = 50.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// cm in an inch.
const INCH: f64 = 2.54;

/// What one method gives: pure lime in t/ha for its own depth.
struct Published {
    rate: Band,
    depth_cm: f64,
    /// Spread on the surface as it is published, whatever the depth.
    on_the_surface: bool,
    grounds: Grounds,
    /// Another publication's amount for the same soil: its name, the rate and
    /// its depth.
    other: Option<(&'static str, f64, f64)>,
}

/// Lime for this bed. `None` when the report has no pH.
pub(super) fn need(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    let reaction = Reaction::of(ground)?;
    let said = |answer: String, rule: &str, sources: &[Citation]| {
        let grounds = reaction.ground(Grounds::new(rule, sources));
        Some(Need { name: "lime", answer, grounds, ..Need::default() })
    };
    if let Some((answer, rule, sources)) = no_lime(ground, &reaction) {
        return said(answer, rule, &sources);
    }
    let Some((method, buffer, acidity)) = named_buffer(ground) else {
        let has_reading = [Property::BufferPh, Property::ExchangeableAcidity]
            .iter()
            .any(|p| ground.soil.get(*p).is_some());
        let what = if has_reading {
            questions.push(which_buffer());
            "How much depends on the lime buffer the lab used: say which, and the amount follows."
        } else {
            "How much can't be told from the pH alone: ask the lab for a lime buffer test."
        };
        return said(
            format!("The soil is more acid than these plants like, so lime will help. {what}"),
            "The same buffer pH means other amounts of lime in each buffer.",
            &[COMMON_PRACTICE.unsourced()],
        );
    };
    match published(ground, &reaction, method, buffer, acidity) {
        Ok(published) => Some(amounts(ground, &reaction, published)),
        Err((answer, rule, sources)) => said(answer, rule, &sources),
    }
}

/// An answer without an amount: the sentence, its rule, its sources.
type Said = (String, &'static str, Vec<Citation>);

/// Why there is nothing to lime, or nothing these tables are made for.
fn no_lime(ground: &Ground<'_>, reaction: &Reaction) -> Option<Said> {
    let ph = reaction.ph;
    let practice = || vec![COMMON_PRACTICE.unsourced()];
    if ground.case.plants == Some(PlantGroup::AcidLovers) {
        let mut answer = format!(
            "No lime: acid-loving plants want a pH of {:.1} to {:.1}.",
            reaction.from, reaction.to
        );
        if ph < reaction.from {
            answer.push_str(
                " This soil is more acid than even they like. The lime tables don't go so low: \
                 ask your local extension office.",
            );
        }
        return Some((answer, "Acid-loving plants are not limed.", practice()));
    }
    if ph >= NONE_FROM_PH || has_free_lime(ground.soil) {
        return Some((
            format!("No lime: at pH {ph:.1} the soil has enough."),
            "No lime from pH 7, or where free lime was found.",
            practice(),
        ));
    }
    let below = ((reaction.target - ph) * 10.0).round();
    if below < TENTHS_BELOW {
        let how = if below <= 0.0 { "at or above" } else { "only a hair below" };
        return Some((
            format!("No lime now: pH {ph:.1} is {how} the {:.1} wanted.", reaction.target),
            "Lime when the pH is 0.2 or more below the pH to reach.",
            vec![TRI_STATE_LIME.opened()],
        ));
    }
    (ground.case.bed.kind == Some(BedKind::Container)).then(|| {
        (
            "These lime tables are for open ground, not for pots. Fill pots with fresh potting \
             mix, which is limed already."
                .to_string(),
            "Lime tables are made for field soil.",
            practice(),
        )
    })
}

/// The buffer the laboratory named, with the readings it may go by.
fn named_buffer<'a>(
    ground: &Ground<'a>,
) -> Option<(Method, Option<&'a Measure>, Option<&'a Measure>)> {
    let buffer = ground.soil.get(Property::BufferPh);
    let acidity = ground.soil.get(Property::ExchangeableAcidity);
    if buffer.is_none() && acidity.is_none() {
        return None;
    }
    let named = |m: Option<&Measure>| m?.method.filter(|m| m.kind() == MethodKind::Buffer);
    let method = named(buffer).or(named(acidity)).or(ground.case.reading.buffer)?;
    Some((method, buffer, acidity))
}

fn which_buffer() -> Question {
    Question {
        id: QuestionId::Buffer,
        text: "Which lime buffer did the lab use?".into(),
        changes: "How much lime the bed needs: each buffer has a table of its own.".into(),
        about: vec![Property::BufferPh],
        suggestion: Some(
            "SMP, Sikora, Mehlich, Adams–Evans and Woodruff are the usual ones.".into(),
        ),
    }
}

/// The amount by the publication for this buffer, or why there is none.
fn published(
    ground: &Ground<'_>,
    reaction: &Reaction,
    method: Method,
    buffer: Option<&Measure>,
    acidity: Option<&Measure>,
) -> Result<Published, Said> {
    let (ph, target) = (reaction.ph, reaction.target);
    let reading = |from: f64, to: f64| buffer_reading(method, buffer, from, to);
    let outside = |what: String| -> Said {
        (
            format!("{what} Ask the lab for its own lime advice."),
            "No amount is given beyond what a publication prints.",
            vec![OUR_CHOICE.unsourced()],
        )
    };
    let no_target =
        || outside(format!("The published lime tables for this buffer don't reach pH {target}."));
    let in_water = |needs: &str| {
        if reaction.in_water {
            Ok(())
        } else {
            Err(outside(format!("{needs} needs the pH in water, and only a salt pH is reported.")))
        }
    };
    match method {
        Method::SikoraBuffer | Method::SmpBuffer => {
            let sikora = method == Method::SikoraBuffer;
            let value = reading(4.0, 7.7)?;
            let oregon = |value| sikora_oregon(value, target).map(|tons| tons * T_PER_HA_IN_TON_PER_ACRE);
            let tri_state = smp_tri_state(value, target)
                .map(|tons| at_neutralising_value(tons, 100.0) * T_PER_HA_IN_TON_PER_ACRE);
            if sikora {
                let mut grounds = Grounds::new(
                    "The Oregon table for Sikora buffer: row by buffer pH, column by the pH to reach, straight lines between.",
                    &[OREGON_SIKORA.opened()],
                );
                let rate = if value > 6.9 {
                    // The first row bounds what lies above it.
                    grounds = grounds.assume("The table begins at buffer pH 6.9. Above that the soil needs from nothing up to that row's amount.");
                    grounds.sources.push(OUR_CHOICE.unsourced());
                    oregon(6.9).map(|most| Band::new(0.0, most / 2.0, most))
                } else {
                    oregon(value).map(Band::exactly)
                };
                let rate = rate.ok_or_else(|| if value < 4.8 {
                    outside("The lime table for Sikora buffer ends at buffer pH 4.8.".into())
                } else {
                    no_target()
                })?;
                return Ok(Published {
                    rate,
                    depth_cm: 6.0 * INCH,
                    on_the_surface: false,
                    grounds: grounds.input("buffer pH (Sikora)", significant(value, 3)),
                    other: tri_state.map(|t| ("Tri-State equations for SMP buffer, which Sikora buffer is made to match (from memory)", t, 8.0 * INCH)),
                });
            }
            let rate = tri_state.ok_or_else(|| if value < 6.0 {
                outside("The lime table for SMP buffer ends at buffer pH 6.0.".into())
            } else {
                no_target()
            })?;
            let mut grounds = Grounds::new(
                "The Tri-State equations for SMP buffer: 71.4 − 1.03 × index (pH 6.8), 60.4 − 0.87 × index (6.5), 49.3 − 0.71 × index (6.0); tons per acre of 90 % lime.",
                &[TRI_STATE_LIME.from_memory()],
            )
            .input("lime test index (10 × buffer pH)", significant(10.0 * value, 3));
            // What is remembered doesn't stand alone.
            let other = oregon(value);
            let depth_cm = 8.0 * INCH;
            let band = match other {
                Some(oregon) => {
                    let there = oregon * depth_cm / (6.0 * INCH);
                    grounds = grounds.assume("The equations are from memory, so the band reaches to the Oregon table for Sikora buffer, which is made to read as SMP does.");
                    grounds.sources.push(OREGON_SIKORA.opened());
                    Band::new(there.min(rate), rate, there.max(rate))
                }
                None => Band::exactly(rate),
            };
            if rate < 2.0 * T_PER_HA_IN_TON_PER_ACRE {
                grounds = grounds.assume("SMP buffer is made for soils that need much lime; on sandy soils it can ask for too much.");
                grounds.sources.push(SMP_DOMAIN.opened());
            }
            Ok(Published {
                rate: band,
                depth_cm,
                on_the_surface: false,
                grounds,
                other: other.map(|t| ("Oregon table for Sikora buffer", t, 6.0 * INCH)),
            })
        }
        Method::MehlichBuffer => {
            in_water("The formula for Mehlich buffer")?;
            let by_volume = acidity.filter(|m| m.unit == Unit::MeqPer100cm3).and_then(|m| m.amount.exact());
            let ac = match by_volume {
                Some(ac) => ac,
                None => (MEHLICH_PER_PH * (MEHLICH_START - reading(4.0, 6.9)?)).max(0.0),
            };
            let tons = mehlich_nc(ac, ph, target, 0.0).ok_or_else(no_target)?;
            if tons < LEAST_NC {
                return Err((
                    "No lime now: the amount is so small that the publisher counts it as none.".into(),
                    "Less than 0.3 ton per acre is reported as none.",
                    vec![NCDA_LIME.opened()],
                ));
            }
            Ok(Published {
                rate: Band::exactly(tons * T_PER_HA_IN_TON_PER_ACRE),
                depth_cm: 8.0 * INCH,
                on_the_surface: false,
                grounds: Grounds::new(
                    "Tons per acre = acidity × (pH to reach − pH) ÷ (6.6 − pH).",
                    &[NCDA_LIME.opened(), NCDA_BUFFER.opened(), NCDA_LIME.from_memory()],
                )
                .input("acidity", format!("{} meq/100 cm³", significant(ac, 3)))
                .assume("The amount is taken to be for the top 8 inches (20 cm); that depth is from memory.")
                .assume("No lime was spread in the last year. Take off what is left of it: 8 % is used up each month."),
                other: None,
            })
        }
        Method::ModifiedMehlichBuffer => {
            let ea = acidity
                .filter(|m| m.unit == Unit::MeqPer100g)
                .and_then(|m| m.amount.exact())
                .ok_or_else(|| outside("With this buffer the amount goes by the exchangeable acidity in meq/100 g. Type it in from the report.".into()))?;
            if ea > 50.0 {
                return Err(outside(format!("An exchangeable acidity of {} meq/100 g can't be.", significant(ea, 4))));
            }
            let input = |grounds: Grounds| grounds.input("exchangeable acidity", format!("{} meq/100 g", significant(ea, 3)));
            let lawn = is_lawn(ground);
            if lawn || target < 6.5 {
                let mut grounds = input(Grounds::new(
                    "The Penn State table for turf: row by exchangeable acidity, column by the pH to reach, straight lines between.",
                    &[PSU_TURF_LIME.opened()],
                ));
                if !lawn {
                    grounds = grounds.assume("The table is made for turf; the soil's need is the same.");
                }
                let at = |ea| turf_psu(ea, target).map(|lb| lb * T_PER_HA_IN_LB_PER_1000_SQ_FT);
                let rate = if ea < 2.0 {
                    grounds = grounds.assume("The table begins at an acidity of 2.0. Below that the soil needs from nothing up to that row's amount.");
                    grounds.sources.push(OUR_CHOICE.unsourced());
                    at(2.0).map(|most| Band::new(0.0, most / 2.0, most))
                } else {
                    at(ea).map(Band::exactly)
                };
                return Ok(Published {
                    rate: rate.ok_or_else(no_target)?,
                    depth_cm: 7.0 * INCH,
                    on_the_surface: lawn,
                    grounds,
                    other: None,
                });
            }
            let lb = exchangeable_acidity_psu(ea, ph, target).ok_or_else(no_target)?;
            Ok(Published {
                rate: Band::exactly(lb / 2000.0 * T_PER_HA_IN_TON_PER_ACRE),
                depth_cm: 7.0 * INCH,
                on_the_surface: false,
                grounds: input(Grounds::new(
                    "Pounds per acre: acidity × 1000 to reach pH 7.0; × 840 to reach 6.5, or 2000 where acidity is 4 or less.",
                    &[PSU_LIME.opened()],
                )),
                other: turf_psu(ea, target).map(|lb| {
                    ("Penn State table for turf", lb * T_PER_HA_IN_LB_PER_1000_SQ_FT, 7.0 * INCH)
                }),
            })
        }
        Method::AdamsEvansBuffer => {
            in_water("The formula for Adams–Evans buffer")?;
            let value = reading(5.0, 8.3)?;
            let lb = adams_evans(ph, value, target);
            Ok(Published {
                rate: Band::exactly(lb / 2000.0 * T_PER_HA_IN_TON_PER_ACRE),
                depth_cm: 20.0 / 3.0 * INCH,
                on_the_surface: false,
                grounds: Grounds::new(
                    "Pounds per acre = 8000 × (8.00 − buffer pH) ÷ h1 × (h1 − h2) × 1.5; h is the share of the exchange that acidity holds, by pH = 7.79 − 5.55 h + 2.27 h².",
                    &[HULUKA_2005.opened(), ADAMS_EVANS_1962.from_memory()],
                )
                .input("buffer pH (Adams–Evans)", significant(value, 3))
                .assume("The buffer is made for sandy soils of low capacity that need less than 5 tons an acre."),
                other: None,
            })
        }
        Method::WoodruffBuffer => Err((
            "The lab that uses Woodruff buffer prints the lime to use as pounds of ENM per acre. Divide it by the ENM on the bag (pounds per ton): that is the tons per acre.".into(),
            "Tons per acre = ENM asked for ÷ ENM guaranteed; no table from buffer pH to ENM is at hand.",
            vec![MISSOURI_ENM.opened()],
        )),
        other => Err(outside(format!("No published lime table for {} is at hand.", other.label()))),
    }
}

/// The buffer pH as a number the buffer can give.
fn buffer_reading(
    method: Method,
    buffer: Option<&Measure>,
    from: f64,
    to: f64,
) -> Result<f64, Said> {
    let refuse = |answer: String| -> Said {
        (answer, "A reading must be one the buffer can give.", vec![COMMON_PRACTICE.unsourced()])
    };
    let value = buffer.and_then(|m| m.amount.exact()).ok_or_else(|| {
        refuse(format!("The amount by {} needs its buffer pH as a number.", method.label()))
    })?;
    if (from..=to).contains(&value) {
        Ok(value)
    } else {
        Err(refuse(format!(
            "A buffer pH of {} can't come from the {}, which reads from {from:.1} to {to:.1}. Check the reading and the name of the buffer.",
            significant(value, 3),
            method.label()
        )))
    }
}

fn is_lawn(ground: &Ground<'_>) -> bool {
    ground.case.plants == Some(PlantGroup::Lawn) || ground.case.bed.kind == Some(BedKind::Lawn)
}

/// The published amount for this bed and this lime, in doses.
fn amounts(ground: &Ground<'_>, reaction: &Reaction, published: Published) -> Need {
    let case = ground.case;
    let lawn = is_lawn(ground);
    let own_depth = published.depth_cm;
    let mut grounds = reaction.ground(published.grounds);
    let inches = |cm: f64| shown(&Band::exactly(cm), Unit::Cm, case.measures);
    let depth = match (worked_depth(ground), case.bed.kind) {
        _ if published.on_the_surface || lawn => {
            grounds = grounds.assume("On grass the amount is spread as published, not by depth.");
            own_depth
        }
        (Some(depth), _) => {
            grounds = grounds.input("depth limed", inches(depth));
            if depth > own_depth + 1.0 {
                grounds = grounds.assume("The soil below the depth of the sample is like it.");
            }
            depth
        }
        (None, Some(BedKind::NoDig)) => {
            grounds =
                grounds.assume(format!("Undug, lime reaches the top {}.", inches(4.0 * INCH)));
            grounds.sources.push(TRI_STATE_LIME.opened());
            4.0 * INCH
        }
        (None, _) => {
            grounds = grounds.assume(format!(
                "The depth isn't known: the amount is for the top {}, as published.",
                inches(own_depth)
            ));
            own_depth
        }
    };
    let scaled = |rate: f64| rate * depth / own_depth;
    let pure = published.rate.map(scaled);
    grounds.rule = format!("{} Scaled by depth in proportion.", grounds.rule);
    grounds.sources.push(TRI_STATE_LIME.derived());
    grounds.sources.push(ARITHMETIC.derived());

    let percent = match case.feeds.lime_percent {
        Some(percent) if LIMES.contains(&percent) => Band::exactly(percent),
        _ => USUAL_LIME,
    };
    let mut product_grounds = Grounds::new(
        "Pure lime × 100 ÷ calcium carbonate equivalent (CCE) of the lime on hand.",
        &[PSU_GARDEN.opened()],
    )
    .input("pure lime", shown(&pure, Unit::TonnePerHa, case.measures))
    .input("CCE", shown(&percent, Unit::Percent, case.measures));
    if !percent.is_exact() {
        product_grounds = product_grounds.assume(
            "The bag isn't known. Ground limestone is taken to have 90 % (80–100 %); look for CCE on it.",
        );
        product_grounds.sources.push(OUR_CHOICE.unsourced());
    }
    let product = Band::new(
        as_product(pure.low, percent.high),
        as_product(pure.likely, percent.likely),
        as_product(pure.high, percent.low),
    );
    let figure = |name, label, band, unit, grounds| Figure { name, label, band, unit, grounds };
    let mut figures = vec![
        figure("lime-rate", "pure lime", pure, Unit::TonnePerHa, grounds.clone()),
        figure(
            "lime-product",
            "lime as bought",
            product,
            Unit::TonnePerHa,
            product_grounds.clone(),
        ),
    ];
    let by_area = |rate: f64, area: f64| rate * 0.1 * area;
    let area = area(ground);
    if let Some(area) = area {
        product_grounds = product_grounds.input("area", format!("{} m²", significant(area, 3)));
        let band = product.map(|rate| by_area(rate, area));
        figures.push(figure("lime-for-bed", "lime for the bed", band, Unit::Kg, product_grounds));
    }
    // An amount for the bed where its area is known, otherwise per area.
    let told = |band: Band| match area {
        Some(area) => shown(&band.map(|rate| by_area(rate, area)), Unit::Kg, case.measures),
        None => shown(&band, Unit::TonnePerHa, case.measures),
    };
    if pure.likely <= 0.0 {
        return Need {
            name: "lime",
            answer: "No lime now: the buffer shows hardly any acidity to neutralise.".into(),
            grounds,
            ..Need::default()
        };
    }
    let mut answer = format!(
        "Lime: {}, to bring the pH from {:.1} to {}.",
        told(product),
        reaction.ph,
        significant(reaction.target, 3)
    );
    if reaction.ph >= reaction.from {
        answer.push_str(" There is no hurry: the pH is in the range for these plants already.");
    }

    let surface = lawn
        || matches!(case.bed.kind, Some(BedKind::TreePit))
        || case.plants == Some(PlantGroup::OrnamentalsAndTrees);
    let (most, apart) = if surface { (SURFACE_DOSE, "four to six") } else { (GARDEN_DOSE, "six") };
    let count = doses(product.likely, most);
    let each = told(Band::exactly(product.likely / f64::from(count)));
    let mut steps = vec![if count == 1 {
        format!("Spread it evenly in one dose: {each}.")
    } else {
        format!("Spread it in {count} doses of {each}, {apart} months apart.")
    }];
    if count > 2 {
        steps.push("After every second dose test the soil again before you go on.".into());
    }
    steps.push(if surface {
        "On grass or round shrubs leave it on top and water it in.".into()
    } else if case.bed.kind == Some(BedKind::NoDig) {
        "Leave it on top under the mulch: it works down slowly.".into()
    } else {
        format!("Mix it into the top {}.", inches(depth))
    });
    if lawn && count > 1 {
        steps.push("Open the turf with a hollow-tine aerator first.".into());
    }
    steps.push(
        "Autumn is best: lime takes months to work, and nine or more for its full effect.".into(),
    );
    if ground.findings.level(Property::Magnesium).is_some_and(|level| level.is_short()) {
        steps.push("Magnesium is short too: dolomitic lime brings both.".into());
    }
    grounds.sources.push(OSU_LIMING.opened());
    grounds.sources.extend(if lawn {
        [PSU_LAWN.opened(), COMMON_PRACTICE.from_memory()]
    } else if surface {
        [WSU_LIME_DOSE.opened(), COMMON_PRACTICE.unsourced()]
    } else {
        [PSU_GARDEN.opened(), COMMON_PRACTICE.unsourced()]
    });
    let mut others = Vec::new();
    if let Some((name, rate, its_depth)) = published.other {
        let rate = Band::exactly(rate * depth / its_depth);
        others.push(format!(
            "{name}: {} of pure lime.",
            shown(&rate, Unit::TonnePerHa, case.measures)
        ));
    }
    others.push(if lawn {
        format!(
            "A dose on grass: one publication allows up to {}, others {}. The lesser is used.",
            shown(&Band::exactly(GARDEN_DOSE), Unit::TonnePerHa, case.measures),
            shown(&Band::exactly(SURFACE_DOSE), Unit::TonnePerHa, case.measures)
        )
    } else {
        "Laboratories in other states use other tables. If yours prints a lime amount, follow it."
            .into()
    });
    let mut cautions: Vec<String> = CAUTIONS.iter().map(|c| c.to_string()).collect();
    if case.plants == Some(PlantGroup::RootCrops) {
        cautions.push("Potatoes get scab in limed soil: keep theirs at pH 5.2 to 5.4.".into());
        grounds.sources.push(UCONN_PH.opened());
    }
    if lawn {
        cautions.push("Centipedegrass wants a pH of 5.5: don't lime it to more.".into());
    }
    Need { name: "lime", answer, figures, steps, cautions, others, grounds }
}

/// Source: common practice, no source.
const CAUTIONS: [&str; 4] = [
    "Lime dust burns eyes and harms lungs: wear goggles and a mask, and choose a calm day.",
    "Use ground limestone. Never use quicklime, and hydrated lime only if you know how: they burn.",
    "Keep lime and fresh manure or ammonium fertiliser some weeks apart: together they lose nitrogen to the air.",
    "Too much lime can't be taken back for years. Your local extension office's advice comes first.",
];
