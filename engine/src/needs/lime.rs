//! How much lime, by the one buffer the laboratory used, and in what doses.

use crate::case::{BedKind, Case};
use crate::needs::lime_by_buffer::{Buffer, Other, Published, Said};
use crate::needs::lime_rate::{T_PER_HA_IN_LB_PER_1000_SQ_FT, as_product, doses};
use crate::needs::reaction::{Reaction, area, worked_depth};
use crate::needs::{Ground, Need, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, shown, significant};
use crate::question::{Question, QuestionId};
use crate::ranges::{Level, has_free_lime};
use crate::soil::{PlantGroup, Property};
use crate::sources::{
    ARITHMETIC, COMMON_PRACTICE, NCDA_HOME, OSU_LIMING, OUR_CHOICE, PSU_GARDEN, PSU_LAWN,
    TRI_STATE_LIME, UCONN_PH, WSU_LIME_DOSE,
};

/// No lime from this pH.
const NONE_FROM_PH: f64 = 7.0;
/// Laboratories lime when the pH is this far below the target.
/// Source: E-2567 (opened): 0.2–0.3.
const TENTHS_BELOW: f64 = 2.0;
/// Calcium carbonate equivalent of a lime nobody named, %.
const USUAL_LIME: Band = Band { low: 80.0, likely: 90.0, high: 100.0 };
/// What a lime can have: quicklime has 178.
const LIMES: std::ops::RangeInclusive<f64> = 10.0..=180.0;
/// Most in one dose: 10 lb/100 sq ft of tilled garden, in t/ha.
const GARDEN_DOSE: f64 = 100.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// Most in one dose: 50 lb/1000 sq ft of lawn, or round shrubs, in t/ha.
const SURFACE_DOSE: f64 = 50.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// How deep lime reaches in undug soil, cm: 4 in.
/// Source: E-2567 (opened): half the rate of 8 in for 0–4 in without tillage.
const UNDUG: f64 = 4.0 * 2.54;

/// Lime for this bed. `None` when the report has no pH.
pub(super) fn need(ground: &Ground<'_>, questions: &mut Vec<Question>) -> Option<Need> {
    let reaction = Reaction::of(ground)?;
    let only_said = |verdict, Said { answer, rule, sources }: Said| Need {
        name: "lime",
        verdict,
        answer,
        grounds: reaction.add_to(Grounds::new(rule, &sources)),
        ..Need::default()
    };
    if let Some(none) = no_lime(ground, &reaction) {
        return Some(only_said(Verdict::Enough, none));
    }
    Some(match published(ground, &reaction, questions) {
        Ok(published) => amounts(ground, &reaction, published),
        Err(said) => only_said(Verdict::Unknown, said),
    })
}

/// What the table of the laboratory's buffer asks for.
pub(crate) struct Requirement {
    /// Pure lime, t/ha.
    pub rate: Band,
    /// For a slice this deep, cm.
    pub depth_cm: f64,
    /// The rise of pH it is to bring.
    pub way: f64,
    /// The publication, with what went in.
    pub grounds: Grounds,
}

/// The lime requirement of this soil, whether or not it is to be limed; `None`
/// where no table leads to one.
pub(crate) fn lime_requirement(ground: &Ground<'_>) -> Option<Requirement> {
    let reaction = Reaction::of(ground)?;
    let way = reaction.target - reaction.ph;
    if way * 10.0 < TENTHS_BELOW {
        return None;
    }
    let buffer = Buffer::of(ground.soil, ground.case.reading.buffer)?;
    let Published { rate, depth_cm, grounds, .. } = buffer.lime(&reaction, false).ok()?;
    Some(Requirement { rate, depth_cm, way, grounds })
}

fn published(
    ground: &Ground<'_>,
    reaction: &Reaction,
    questions: &mut Vec<Question>,
) -> Result<Published, Said> {
    if let Some(buffer) = Buffer::of(ground.soil, ground.case.reading.buffer) {
        return buffer.lime(reaction, is_lawn(ground));
    }
    let measured = |p| ground.soil.get(p).is_some();
    let what = if measured(Property::BufferPh) || measured(Property::ExchangeableAcidity) {
        questions.push(which_buffer());
        "How much lime depends on the buffer the lab used: say which, and the amount follows."
    } else {
        "How much lime can't be told from the pH alone: ask the lab for a lime buffer test."
    };
    Err(Said {
        answer: format!("The soil is more acid than these plants like best. {what}"),
        rule: "The same buffer pH means another amount of lime in each buffer.",
        sources: vec![COMMON_PRACTICE.unsourced()],
    })
}

/// Why there is nothing to lime, or nothing these tables are made for.
fn no_lime(ground: &Ground<'_>, reaction: &Reaction) -> Option<Said> {
    let said = |answer, rule, sources| Said { answer, rule, sources };
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
        return Some(said(answer, "Acid-loving plants are not limed.", practice()));
    }
    if ph >= NONE_FROM_PH || has_free_lime(ground.soil) {
        return Some(said(
            format!("No lime: at pH {ph:.1} the soil has enough."),
            "No lime from pH 7, or where free lime was found.",
            practice(),
        ));
    }
    let below = ((reaction.target - ph) * 10.0).round();
    if below < TENTHS_BELOW {
        let how = if below <= 0.0 { "at or above" } else { "only a hair below" };
        return Some(said(
            format!("No lime now: pH {ph:.1} is {how} the {:.1} wanted.", reaction.target),
            "Lime when the pH is 0.2 or more below the pH to reach.",
            vec![TRI_STATE_LIME.opened()],
        ));
    }
    (ground.case.bed.kind == Some(BedKind::Container)).then(|| {
        said(
            "These lime tables are for open ground, not for pots. Fill pots with fresh potting \
             mix, which is limed already."
                .to_string(),
            "Lime tables are made for field soil.",
            practice(),
        )
    })
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

fn is_lawn(ground: &Ground<'_>) -> bool {
    ground.case.plants == Some(PlantGroup::Lawn) || ground.case.bed.kind == Some(BedKind::Lawn)
}

/// The published amount for this bed and this lime, in doses.
fn amounts(ground: &Ground<'_>, reaction: &Reaction, published: Published) -> Need {
    let case = ground.case;
    let lawn = is_lawn(ground);
    let own_depth = published.depth_cm;
    let mut grounds = reaction.add_to(published.grounds);
    let depth = depth_limed(ground, own_depth, &mut grounds);
    grounds.rule.push_str(" Scaled by depth in proportion.");
    grounds.sources.extend([TRI_STATE_LIME.derived(), ARITHMETIC.derived()]);
    let pure = published.rate.map(|rate| rate * depth / own_depth);
    if pure.likely <= 0.0 {
        return Need {
            name: "lime",
            verdict: Verdict::Enough,
            answer: "No lime now: the buffer shows hardly any acidity to neutralise.".into(),
            grounds,
            ..Need::default()
        };
    }
    let (product, mut product_grounds) = as_bought(case, pure);
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
    let area = area(ground);
    // 1 t/ha is 0.1 kg/m².
    let for_bed = |rate: Band, area: f64| rate.map(|t| t * 0.1 * area);
    if let Some(area) = area {
        product_grounds = product_grounds.input("area", format!("{} m²", significant(area, 3)));
        let band = for_bed(product, area);
        figures.push(figure("lime-for-bed", "lime for the bed", band, Unit::Kg, product_grounds));
    }
    // An amount for the bed where its area is known, otherwise per area.
    let told = |rate: Band| match area {
        Some(area) => shown(&for_bed(rate, area), Unit::Kg, case.measures),
        None => shown(&rate, Unit::TonnePerHa, case.measures),
    };
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
        || case.bed.kind == Some(BedKind::TreePit)
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
    if lawn && count > 1 {
        steps.push("Open the turf with a hollow-tine aerator first.".into());
    }
    steps.push(if surface {
        "On grass or round shrubs leave it on top and water it in.".into()
    } else if case.bed.kind == Some(BedKind::NoDig) {
        "Leave it on top under the mulch: it works down slowly.".into()
    } else {
        format!("Mix it into the top {}.", centimetres(depth, case))
    });
    steps.push(
        "Autumn is best: lime takes months to work, and nine or more for its full effect.".into(),
    );
    if ground.findings.level(Property::Magnesium).is_some_and(Level::is_short) {
        steps.push("Magnesium is short too: dolomitic lime brings both.".into());
    }
    grounds.sources.extend([OSU_LIMING.opened(), COMMON_PRACTICE.unsourced()]);
    grounds.sources.push(match (lawn, surface) {
        (true, _) => PSU_LAWN.opened(),
        (_, true) => WSU_LIME_DOSE.opened(),
        _ => PSU_GARDEN.opened(),
    });

    let mut others = Vec::new();
    if let Some(Other { name, rate, depth_cm }) = published.other {
        let rate = Band::exactly(rate * depth / depth_cm);
        let rate = shown(&rate, Unit::TonnePerHa, case.measures);
        others.push(format!("{name}: {rate} of pure lime."));
    }
    if lawn {
        let dose = |most| shown(&Band::exactly(most), Unit::TonnePerHa, case.measures);
        others.push(format!(
            "One publication allows a dose of up to {} on grass; others, from memory, {}. The \
             lesser is used.",
            dose(GARDEN_DOSE),
            dose(SURFACE_DOSE)
        ));
    }
    others.push(
        "Laboratories elsewhere use other tables. If yours prints an amount of lime, follow it."
            .into(),
    );
    let mut cautions = CAUTIONS.map(String::from).to_vec();
    if case.plants == Some(PlantGroup::RootCrops) {
        cautions.push("Potatoes get scab in limed soil: keep theirs at pH 5.2 to 5.4.".into());
        grounds.sources.push(UCONN_PH.opened());
    }
    if lawn {
        cautions.push("Centipedegrass wants a pH of 5.5: don't lime it to more.".into());
        grounds.sources.push(NCDA_HOME.opened());
    }
    let verdict = Verdict::Give;
    Need { name: "lime", verdict, answer, figures, steps, cautions, others, grounds }
}

fn centimetres(cm: f64, case: &Case) -> String {
    shown(&Band::exactly(cm), Unit::Cm, case.measures)
}

/// The depth that is limed, cm, where the publication's own is `own_depth`.
fn depth_limed(ground: &Ground<'_>, own_depth: f64, grounds: &mut Grounds) -> f64 {
    let case = ground.case;
    let (depth, assumed) = match (worked_depth(ground), case.bed.kind) {
        _ if is_lawn(ground) => {
            (own_depth, "On grass the amount is spread as published, not by depth.".into())
        }
        (Some(depth), _) => {
            *grounds = std::mem::take(grounds).input("depth limed", centimetres(depth, case));
            if depth <= own_depth + 1.0 {
                return depth;
            }
            (depth, "The soil below the depth of the sample is like it.".into())
        }
        (None, Some(BedKind::NoDig)) => {
            grounds.sources.push(TRI_STATE_LIME.opened());
            (UNDUG, format!("Undug, lime reaches the top {}.", centimetres(UNDUG, case)))
        }
        (None, _) => (
            own_depth,
            format!(
                "The depth isn't known: the amount is for the top {}, as published.",
                centimetres(own_depth, case)
            ),
        ),
    };
    grounds.assumed.push(assumed);
    depth
}

/// Pure lime (t/ha) as the lime on hand.
fn as_bought(case: &Case, pure: Band) -> (Band, Grounds) {
    let given = case.feeds.lime_percent;
    let percent = match given {
        Some(percent) if LIMES.contains(&percent) => Band::exactly(percent),
        _ => USUAL_LIME,
    };
    let mut grounds = Grounds::new(
        "Pure lime × 100 ÷ calcium carbonate equivalent (CCE) of the lime on hand.",
        &[PSU_GARDEN.opened()],
    )
    .input("pure lime", shown(&pure, Unit::TonnePerHa, case.measures))
    .input("CCE", shown(&percent, Unit::Percent, case.measures));
    if !percent.is_exact() {
        if given.is_some() {
            grounds = grounds.assume("No lime has the CCE you gave: it lies from 10 to 180 %.");
        }
        grounds = grounds.assume(
            "Ground limestone is taken to have a CCE of 90 % (80–100 %). The bag says what yours has.",
        );
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    let product = Band::new(
        as_product(pure.low, percent.high),
        as_product(pure.likely, percent.likely),
        as_product(pure.high, percent.low),
    );
    (product, grounds)
}

/// Source: common practice, no source.
const CAUTIONS: [&str; 4] = [
    "Lime dust burns eyes and harms lungs: wear goggles and a mask, and choose a calm day.",
    "Use ground limestone. Never use quicklime, and hydrated lime only if you know how: they burn.",
    "Keep lime and fresh manure or ammonium fertiliser some weeks apart: together they lose nitrogen to the air.",
    "Too much lime can't be taken back for years. Your local extension office's advice comes first.",
];
