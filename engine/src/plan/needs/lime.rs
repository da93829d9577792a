//! How much lime, by the one buffer the laboratory used, and in what doses.

use crate::case::BedKind;
use crate::plan::ledger::{Bringer, Brings, Ceiling, Ledger, Substance};
use crate::plan::needs::laboratory::{self, Both, Theirs};
use crate::plan::needs::lime_by_buffer::{Buffer, Other, Published, Said};
use crate::plan::needs::lime_by_region::{by_base_saturation, by_region};
use crate::plan::needs::lime_rate::{T_PER_HA_IN_LB_PER_1000_SQ_FT, USUAL_LIME, as_product, doses};
use crate::plan::needs::limits::{self, stock};
use crate::plan::needs::nutrients::magnesium_gap;
use crate::plan::needs::{Need, NeedKind, Verdict};
use crate::quantity::{Band, Figure, Grounds, Unit, inverse, product, significant};
use crate::question::{Question, QuestionId};
use crate::soil::{PlantGroup, Property};
use crate::sources::{
    ARITHMETIC, COMMON_PRACTICE, NCDA_HOME, OSU_LIMING, OUR_CHOICE, PSU_GARDEN, PSU_LAWN,
    TRI_STATE_LIME, UCONN_PH, WSU_LIME_DOSE,
};
use crate::survey::buffering::{CARBONATE_PH, PER_GRAM_OF_LIME, buffering, works_in_first_year};
use crate::survey::{Ground, Reaction, Standing, Survey};

/// Magnesium in dolomite, CaMg(CO3)2. Source: atomic masses (derived).
const MAGNESIUM_IN_DOLOMITE: f64 = 24.305 / 184.4;
/// No lime from this pH.
const NONE_FROM_PH: f64 = 7.0;
/// Laboratories lime when the pH is this far below the target: some from the first on, all
/// from the second. Between them the amount comes in by degrees, so that no line is a cliff.
/// Source: E-2567 (opened): 0.2–0.3.
pub(super) const OFF_TARGET: (f64, f64) = (0.2, 0.3);
/// What a lime can have: quicklime has 178.
const LIMES: std::ops::RangeInclusive<f64> = 10.0..=180.0;
/// Most in one dose: 10 lb/100 sq ft of tilled garden, in t/ha. Source: Penn State (opened).
const GARDEN_DOSE: f64 = 100.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;
/// Most in one dose: 50 lb/1000 sq ft of lawn, or round shrubs, in t/ha.
/// Source: extension offices (from memory).
const SURFACE_DOSE: f64 = 50.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT;

/// Lime for this bed. `None` when the report has no pH.
pub(super) fn need(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    questions: &mut Vec<Question>,
) -> Option<Need> {
    let mut reaction = Reaction::of(survey)?;
    reaction.target = reaction.target.min(NONE_FROM_PH);
    let only_said = |verdict, Said { answer, rule, sources }: Said| {
        Need::said(NeedKind::Lime, verdict, answer, reaction.add_to(Grounds::new(rule, &sources)))
    };
    let theirs = laboratory::of(survey, NeedKind::Lime);
    let asked = theirs.as_ref().is_some_and(Theirs::asks);
    if let Some(none) = no_lime(survey, &reaction, asked) {
        let mut need = only_said(Verdict::Enough, none);
        if let Some(theirs) = theirs {
            let lime = bought(survey, theirs.per_m2.likely);
            theirs.beside(survey, &mut need, &Both { theirs: lime, ours: 0.0, most: 0.0 });
        }
        return Some(need);
    }
    let mut asked = Vec::new();
    let own = published(survey, &reaction, &mut asked);
    Some(match (own, theirs) {
        (Ok(Own { published, read: true }), Some(theirs)) => {
            let mut need = amounts(survey, ledger, &reaction, &published, Some(&theirs));
            let area = survey.bed.area.value;
            let ours = ledger.account(Substance::Alkalinity).wanted.likely / area;
            let ours = if need.given().is_some() { bought(survey, ours) } else { 0.0 };
            let most = need.in_all.as_ref().map_or(0.0, |in_all| in_all.most);
            let theirs_bought = bought(survey, theirs.per_m2.likely);
            theirs.beside(survey, &mut need, &Both { theirs: theirs_bought, ours, most });
            need
        }
        (own, Some(theirs)) if theirs.asks() => {
            let own = own.ok().map(|own| own.published);
            by_laboratory(survey, ledger, &reaction, &theirs, own)
        }
        (_, Some(theirs)) => {
            let none = "No lime: your laboratory asks for none.";
            Need::said(NeedKind::Lime, Verdict::Enough, none, reaction.add_to(theirs.grounds()))
        }
        (Ok(own), None) => amounts(survey, ledger, &reaction, &own.published, None),
        (Err(said), None) => {
            questions.extend(asked);
            only_said(Verdict::Unknown, said)
        }
    })
}

/// g of the lime on hand for the bed, from pure lime in g on 1 m².
fn bought(survey: &Survey<'_>, per_m2: f64) -> f64 {
    as_bought(survey, Band::exactly(per_m2)).0.likely * survey.bed.area.value
}

/// What the laboratory asks for, as published lime is; `own` is our rough reckoning.
fn by_laboratory(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    reaction: &Reaction,
    theirs: &Theirs,
    own: Option<Published>,
) -> Need {
    let published = Published {
        rate: theirs.per_m2.map(|grams| grams / GRAMS_PER_M2_IN_T_PER_HA),
        depth_cm: survey.bed.depth.value.max(limits::UNDUG),
        grounds: theirs.grounds(),
        for_turf: survey.is_lawn(),
        other: own.map(|own| Other {
            name: "What this soil would take by our own rough reckoning",
            rate: own.rate.likely,
            depth_cm: own.depth_cm,
        }),
    };
    let mut need = amounts(survey, ledger, reaction, &published, Some(theirs));
    need.answer = match need.for_bed {
        Some(grams) => format!(
            "Lime: {}. Your laboratory asks for {}, and we hold no figure to put in its place.",
            survey.on_bed(survey.weighed(grams.likely)),
            theirs.printed
        ),
        None => format!(
            "No lime now: your laboratory asks for {}, but what biochar limes is enough, or these plants want no more.",
            theirs.printed
        ),
    };
    need
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
pub(crate) fn lime_requirement(survey: &Survey<'_>) -> Option<Requirement> {
    let reaction = Reaction::of(survey)?;
    let way = reaction.target - reaction.ph;
    if way < OFF_TARGET.0 {
        return None;
    }
    let buffer = Buffer::of(survey)?;
    let Published { rate, depth_cm, grounds, .. } = buffer.lime(&reaction, false).ok()?;
    Some(Requirement { rate, depth_cm, way, grounds })
}

/// Our own amount.
struct Own {
    published: Published,
    /// Whether a table that was read leads to it, and not only memory or a rough reckoning.
    read: bool,
}

fn published(
    survey: &Survey<'_>,
    reaction: &Reaction,
    questions: &mut Vec<Question>,
) -> Result<Own, Said> {
    let by_table = |published: Published| {
        let read = !published.grounds.rests_on_memory();
        Own { published, read }
    };
    if let Some(buffer) = Buffer::of(survey) {
        let found = buffer.lime(reaction, survey.is_lawn())?;
        let alone = found.grounds.rests_on_memory() && found.rate.is_exact();
        return Ok(by_table(if alone {
            beside(found, &by_buffering(survey, reaction))
        } else {
            found
        }));
    }
    if let Some(found) = by_base_saturation(survey) {
        // The saturation wanted is from memory.
        let published = beside(found, &by_buffering(survey, reaction));
        return Ok(Own { published, read: false });
    }
    let measured = |p| survey.soil.get(p).is_some();
    if !measured(Property::BufferPh) && !measured(Property::ExchangeableAcidity) {
        let own = by_buffering(survey, reaction);
        return Ok(match by_region(survey, reaction) {
            None => Own { published: own, read: false },
            Some(found) if found.grounds.rests_on_memory() => {
                Own { published: beside(found, &own), read: false }
            }
            Some(found) => by_table(found),
        });
    }
    questions.push(which_buffer());
    Err(Said {
        answer: "The soil is more acid than these plants like best. How much lime depends on the buffer the lab used: say which, and the amount follows.".into(),
        rule: "The same buffer pH means another amount of lime in each buffer.",
        sources: vec![COMMON_PRACTICE.unsourced()],
    })
}

/// What is remembered doesn't stand alone: the band reaches to what the soil's own buffering asks.
fn beside(mut remembered: Published, own: &Published) -> Published {
    let there = own.rate.map(|rate| rate * remembered.depth_cm / own.depth_cm);
    let Band { low, likely, high } = remembered.rate;
    remembered.rate = Band::new(low.min(there.likely), likely, high.max(there.likely));
    remembered.grounds = std::mem::take(&mut remembered.grounds).assume(
        "The table is from memory, so the band reaches to what the soil's own buffering asks for.",
    );
    remembered.grounds.sources.extend(&own.grounds.sources);
    remembered
}

/// Without a buffer test: the soil's own buffering over the way to the pH wanted. It is the
/// same buffering that foretells what biochar does to the pH.
fn by_buffering(survey: &Survey<'_>, reaction: &Reaction) -> Published {
    let buffering = buffering(survey);
    let way = reaction.target - reaction.ph;
    // 1 mmol(c) is 0.05 g of pure lime, and 1 t/ha is 100 g/m².
    let rate = product(&[buffering.band, survey.bed.soil_per_m2()])
        .map(|charge| charge * way / PER_GRAM_OF_LIME / GRAMS_PER_M2_IN_T_PER_HA);
    let mut grounds = Grounds::new(
        "No buffer test: what the soil takes up for each unit of pH × the way to the pH wanted × soil of the worked depth × 0.05 g of lime for each mmol(c).",
        &buffering.sources,
    )
    .input(
        format!("buffering ({}), mmol(c)/kg per pH", buffering.from),
        survey.shown(&buffering.band, Unit::None),
    )
    .assume("A rough amount: a lime buffer test by a laboratory says it more surely.");
    grounds.inputs.extend(buffering.inputs);
    grounds = survey.bed.density.add_to(grounds);
    Published { rate, depth_cm: survey.bed.depth.value, grounds, for_turf: false, other: None }
}

/// Why there is nothing to lime, or nothing these tables are made for. `asked`: the laboratory
/// advises lime.
fn no_lime(survey: &Survey<'_>, reaction: &Reaction, asked: bool) -> Option<Said> {
    let said = |answer, rule, sources| Said { answer, rule, sources };
    let ph = reaction.ph;
    let practice = || vec![COMMON_PRACTICE.unsourced()];
    if survey.case.plants == Some(PlantGroup::AcidLovers) {
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
    if ph >= NONE_FROM_PH || survey.bed.limy {
        return Some(said(
            format!("No lime: at pH {ph:.1} the soil has enough."),
            "No lime from pH 7, or where free lime was found.",
            practice(),
        ));
    }
    if due(reaction.target - ph) <= 0.0 {
        let how = if ph >= reaction.target { "at or above" } else { "only a hair below" };
        return Some(said(
            format!("No lime now: pH {ph:.1} is {how} the {:.1} wanted.", reaction.target),
            "Lime when the pH is more than 0.2 below the pH to reach.",
            vec![TRI_STATE_LIME.opened()],
        ));
    }
    // A laboratory that asks for lime has tested for it.
    let tested = asked || Buffer::of(survey).is_some();
    // Peat is limed up to its own target, which lies near.
    let mineral = survey.bed.ground == Ground::Mineral;
    if !tested && mineral && ph >= reaction.from && survey.case.feeds.target_ph.is_none() {
        return Some(said(
            format!(
                "No lime now: pH {ph:.1} is in the range for these plants. A lime buffer test says what brings it to {:.1}.",
                reaction.target
            ),
            "Within the range nothing is limed without a buffer test.",
            vec![OUR_CHOICE.unsourced()],
        ));
    }
    survey.bed.is_potted().then(|| {
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

/// The share of an amount that is due so far from the pH wanted.
pub(super) fn due(off: f64) -> f64 {
    let (from, all) = OFF_TARGET;
    // A pH such as 6.3 is not exact in binary.
    ((off - from - 1e-9) / (all - from)).clamp(0.0, 1.0)
}

/// 1 t/ha in g/m².
const GRAMS_PER_M2_IN_T_PER_HA: f64 = 100.0;

/// The published amount for this bed, less what biochar and charge lime; pure, t/ha.
fn pure_lime(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    (reaction, published, depth): (&Reaction, &Published, f64),
    grounds: &mut Grounds,
) -> Band {
    let due = due(reaction.target - reaction.ph);
    if due < 1.0 {
        grounds.assumed.push(
            "The pH is only a little below the one wanted: a part of the amount is due.".into(),
        );
    }
    let whole = published.rate.map(|rate| due * rate * depth / published.depth_cm);
    let grams = GRAMS_PER_M2_IN_T_PER_HA * survey.bed.area.value;
    ledger.account(Substance::Alkalinity).wanted = whole.map(|t| t * grams);
    let brought = ledger.works(&[Substance::Alkalinity]);
    if brought.likely > 0.0 {
        let as_rate = brought.map(|g| g / grams);
        let text = survey.shown(&as_rate, Unit::TonnePerHa);
        *grounds = std::mem::take(grounds).input("brought by biochar and its charge", text);
        // Only what is certain is taken off.
        let off = as_rate.low;
        return whole.map(|t| (t - off).max(0.0));
    }
    whole
}

/// The lime of this bed, in doses.
fn amounts(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    reaction: &Reaction,
    published: &Published,
    theirs: Option<&Theirs>,
) -> Need {
    let mut grounds = reaction.add_to(published.grounds.clone());
    let depth = depth_limed(survey, published, &mut grounds);
    let asked = pure_lime(survey, ledger, (reaction, published, depth), &mut grounds);
    let before = ledger.works(&[Substance::Alkalinity]);
    let most = most_lime(survey, reaction, depth, before);
    let pure = asked.map(|t| t.min(most));
    grounds.rule.push_str(" Scaled by depth in proportion, less what biochar limes.");
    grounds.sources.extend([TRI_STATE_LIME.derived(), ARITHMETIC.derived()]);
    if pure.likely <= 0.0 {
        let answer = "No lime now: the buffer shows hardly any acidity to neutralise.";
        return Need::said(NeedKind::Lime, Verdict::Enough, answer, grounds);
    }
    let (product, product_grounds) = as_bought(survey, pure);
    let area = survey.bed.area.value;
    let grams = |rate: Band| rate.map(|t| t * GRAMS_PER_M2_IN_T_PER_HA * area);
    let lime = Brings::nothing().with_all(Substance::Alkalinity, grams(pure));
    ledger.enter(Bringer::Lime, &lime);
    let told = |rate: Band| told(survey, rate);
    let mut answer = format!(
        "Lime: {}, to bring the pH from {:.1} to {}.",
        told(product),
        reaction.ph,
        significant(reaction.target, 3)
    );
    if reaction.ph >= reaction.from {
        answer.push_str(" There is no hurry: the pH is in the range for these plants already.");
    }
    grounds.sources.extend([OSU_LIMING.opened(), COMMON_PRACTICE.unsourced()]);
    let mut need = Need::said(NeedKind::Lime, Verdict::Give, answer, grounds.clone());
    need.for_bed = Some(grams(product));
    let bed = survey.bed.area.add_to(product_grounds.clone());
    let kg = grams(product).map(|g| g / 1000.0);
    let figure =
        |name, label, band, unit, grounds| survey.told(Figure { name, label, band, unit, grounds });
    need.figures = vec![
        figure("lime-rate", "pure lime", pure, Unit::TonnePerHa, grounds),
        figure("lime-product", "lime as bought", product, Unit::TonnePerHa, product_grounds),
        figure("lime-for-bed", "lime for the bed", kg, Unit::Kg, bed),
    ];
    need.figures.push(ph_foretold(survey, reaction.ph, depth, (before, grams(pure).likely)));
    (need.doses, need.steps) = steps(survey, product);
    let mut in_all = limits::at_most(
        survey,
        most * 1000.0 * product.likely / pure.likely,
        format!(
            "More lime would take the pH of this soil above {}, where these plants' range ends.",
            significant(reaction.to, 3)
        ),
        "lime by what the soil takes up from its pH to the end of the plants' range, of which 0.7 works in the first year.",
        &buffering(survey).sources,
    );
    in_all.binds = asked.likely > most * (1.0 + 1e-9);
    need.hold(in_all, most_at_once(survey));
    need.others = others(survey, published, theirs.is_some());
    need.cautions = cautions(survey, &mut need.grounds);
    need
}

/// An amount for the bed where its area is known, otherwise per area.
fn told(survey: &Survey<'_>, rate: Band) -> String {
    let area = &survey.bed.area;
    if area.known {
        survey.shown(&rate.map(|t| t * 0.1 * area.value), Unit::Kg)
    } else {
        survey.shown(&rate, Unit::TonnePerHa)
    }
}

/// The most pure lime, t/ha, that leaves the pH within the plants' range, beside what biochar
/// and its charge bring (g).
fn most_lime(survey: &Survey<'_>, reaction: &Reaction, depth: f64, before: Band) -> f64 {
    let way = (reaction.to - reaction.ph).max(0.0);
    let works = works_in_first_year().likely;
    let per_m2 = survey.takes_up(depth).likely * way / PER_GRAM_OF_LIME;
    let room = per_m2 - before.likely.max(0.0) / survey.bed.area.value;
    (room.max(0.0) / works) / GRAMS_PER_M2_IN_T_PER_HA
}

/// The pH in the first year after the lime (g), with what was brought before (g that work).
fn ph_foretold(survey: &Survey<'_>, ph: f64, depth: f64, (before, lime): (Band, f64)) -> Figure {
    let area = survey.bed.area.value;
    let working = works_in_first_year().likely * lime + before.likely;
    let per_m2 = working * PER_GRAM_OF_LIME / area;
    let rise = inverse(survey.takes_up(depth)).map(|one| one * per_m2);
    let held = buffering(survey);
    let mut grounds = Grounds::new(
        "pH + lime that works in the first year ÷ what the soil takes up for each unit of pH; no higher than 8.3.",
        &held.sources,
    )
    .input("pH", format!("{ph:.1}"))
    .input(
        "working, of the lime",
        survey.shown(&Band::exactly(100.0 * works_in_first_year().likely), Unit::Percent),
    )
    .input("buffering", survey.shown(&held.band, Unit::MmolcPerKg));
    grounds.inputs.extend(held.inputs);
    Figure {
        name: "ph-after-lime",
        label: "pH foretold for the first year after the lime",
        band: rise.map(|rise| (ph + rise).min(CARBONATE_PH.max(ph))),
        unit: Unit::None,
        grounds,
    }
}

/// The most lime in one dose.
fn most_at_once(survey: &Survey<'_>) -> Ceiling {
    let (rate, source) = match (survey.is_lawn(), on_top(survey)) {
        (true, _) => (SURFACE_DOSE, PSU_LAWN.opened()),
        (_, true) => (SURFACE_DOSE, WSU_LIME_DOSE.opened()),
        _ => (GARDEN_DOSE, PSU_GARDEN.opened()),
    };
    limits::at_most(
        survey,
        rate * 1000.0,
        "More lime at one time stays where it lies and does harm there.",
        "lime in one dose: 10 lb on 100 sq ft where it is mixed in, half of that on top.",
        &[source],
    )
}

/// Whether lime stays on top: on grass, round what grows for years, and where nothing is dug.
fn on_top(survey: &Survey<'_>) -> bool {
    limits::lies_on_top(survey)
        || survey.is_lawn()
        || survey.bed.kind == Some(BedKind::TreePit)
        || survey.plants() == PlantGroup::OrnamentalsAndTrees
}

fn steps(survey: &Survey<'_>, product: Band) -> (u32, Vec<String>) {
    let surface = on_top(survey);
    let lawn = survey.is_lawn();
    let (most, apart) = if surface { (SURFACE_DOSE, "four to six") } else { (GARDEN_DOSE, "six") };
    let count = doses(product.likely, most);
    let each = told(survey, Band::exactly(product.likely / f64::from(count)));
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
    let lasting = lawn || survey.bed.standing == Standing::Lasting;
    steps.push(if surface && lasting {
        "On grass or round shrubs leave it on top and water it in.".into()
    } else if !surface {
        let depth = survey.shown(&Band::exactly(survey.bed.depth.value), Unit::Cm);
        format!("Mix it into the top {depth}.")
    } else {
        "Leave it on top under the mulch: it works down slowly.".into()
    });
    steps.push(
        "Autumn is best: lime takes months to work, and nine or more for its full effect.".into(),
    );
    steps.extend(dolomite(survey, product));
    (count, steps)
}

/// How much of the lime is to be dolomitic where magnesium is short: so much as fills the gap
/// in the worked depth, and no more.
fn dolomite(survey: &Survey<'_>, product: Band) -> Option<String> {
    let gap = magnesium_gap(survey)?;
    let (depth, density) = (limits::reached(survey), survey.bed.density.value.likely);
    let all = product.likely;
    let dolomitic = stock(gap, depth, density) / 1000.0 / MAGNESIUM_IN_DOLOMITE;
    Some(if dolomitic <= 0.0 || dolomitic >= all {
        "Magnesium is short too: dolomitic lime brings both.".into()
    } else {
        let part = told(survey, Band::exactly(dolomitic));
        format!(
            "Magnesium is short too: take {part} of it as dolomitic lime, which brings both, and the rest as plain lime. More would bring too much magnesium."
        )
    })
}

fn others(survey: &Survey<'_>, published: &Published, printed: bool) -> Vec<String> {
    let mut others = Vec::new();
    let depth = survey.bed.depth.value;
    if let Some(Other { name, rate, depth_cm }) = &published.other {
        let rate = survey.shown(&Band::exactly(rate * depth / depth_cm), Unit::TonnePerHa);
        others.push(format!("{name}: {rate} of pure lime."));
    }
    if survey.is_lawn() {
        let dose = |most| survey.shown(&Band::exactly(most), Unit::TonnePerHa);
        others.push(format!(
            "One publication allows a dose of up to {} on grass; others, from memory, {}. The \
             lesser is used.",
            dose(GARDEN_DOSE),
            dose(SURFACE_DOSE)
        ));
    }
    if !printed {
        others.push(
            "Laboratories elsewhere use other tables. If yours prints an amount of lime, follow it."
                .into(),
        );
    }
    others
}

fn cautions(survey: &Survey<'_>, grounds: &mut Grounds) -> Vec<String> {
    let mut cautions = CAUTIONS.map(String::from).to_vec();
    if survey.plants() == PlantGroup::RootCrops {
        cautions.push("Potatoes get scab in limed soil: keep theirs at pH 5.2 to 5.4.".into());
        grounds.sources.push(UCONN_PH.opened());
    }
    if survey.is_lawn() {
        cautions.push("Centipedegrass wants a pH of 5.5: don't lime it to more.".into());
        grounds.sources.push(NCDA_HOME.opened());
    }
    cautions
}

/// The depth that is limed, cm, where the publication's own is `own_depth`. Where nothing is
/// dug, lime reaches no deeper than a few inches, whatever depth was typed.
fn depth_limed(survey: &Survey<'_>, published: &Published, grounds: &mut Grounds) -> f64 {
    if published.for_turf {
        grounds.assumed.push("On grass the amount is spread as published, not by depth.".into());
        return published.depth_cm;
    }
    let depth = &survey.bed.depth;
    if limits::stays_on_top(survey) {
        let undug = survey.shown(&Band::exactly(limits::UNDUG), Unit::Cm);
        grounds.sources.push(TRI_STATE_LIME.opened());
        grounds.assumed.push(format!("Undug, lime reaches the top {undug}.").into());
        return limits::UNDUG;
    }
    *grounds = depth.add_to(std::mem::take(grounds));
    if depth.value > published.depth_cm + 1.0 {
        grounds.assumed.push("The soil below the depth of the sample is like it.".into());
    }
    depth.value
}

/// Pure lime (t/ha) as the lime on hand.
fn as_bought(survey: &Survey<'_>, pure: Band) -> (Band, Grounds) {
    let given = survey.case.feeds.lime_percent;
    let percent = match given {
        Some(percent) if LIMES.contains(&percent) => Band::exactly(percent),
        _ => USUAL_LIME,
    };
    let mut grounds = Grounds::new(
        "Pure lime × 100 ÷ calcium carbonate equivalent (CCE) of the lime on hand.",
        &[PSU_GARDEN.opened()],
    )
    .input("pure lime", survey.shown(&pure, Unit::TonnePerHa))
    .input("CCE", survey.shown(&percent, Unit::Percent));
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
