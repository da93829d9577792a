//! What can hurt, and whom to ask.

use serde::Serialize;

use crate::case::{ChargeSource, Feedstock};
use crate::plan::Path;
use crate::plan::hazards::{Hazard, lead_unsettled};
use crate::quantity::Grounds;
use crate::ranges::Level;
use crate::soil::{Method, Property};
use crate::sources::{
    COLORADO_SODIC, COMMON_PRACTICE, Citation, DEL_CAMPO_2021, DRYLANDS_2025, EPA_LEAD,
    FLAMMABILITY_2014, GUO_2020, HAMEL_2003, LEAD_UMD, NOP_205_203, NOSB_TEA_2004, OUR_CHOICE,
    RUTGERS_NUTRIENTS, SONI_2015, UGA_MANURE,
};
use crate::survey::Survey;

/// US screening level for total lead in residential soil, mg/kg.
/// Source: US EPA, October 2025 (opened in reports of it).
const LEAD_SCREENING: f64 = 200.0;

/// Total lead from which we advise care, mg/kg. Source: our choice: half the
/// screening level.
const LEAD_CARE: f64 = 100.0;

/// Exchangeable sodium, %, or the adsorption ratio, from which we advise care.
/// Source: our choice; structure can suffer below 13 too (Colorado State, opened).
const NEARLY_SODIC: f64 = 10.0;

/// Zinc and copper by an extract from which harm is warned of, mg/kg.
/// Source: Rutgers, Mehlich-3 (opened); that other extracts are read so too is our choice.
const MUCH_ZINC: f64 = 50.0;
/// Source: as for zinc.
const MUCH_COPPER: f64 = 20.0;

/// Something that can hurt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// What to mind, in one or two sentences.
    pub text: String,
    /// Whether it can hurt people, rather than plants, soil or water.
    #[serde(skip)]
    pub(crate) people: bool,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The cautions that this soil, this path and these materials call for.
/// `charging` is what the recipe charges with.
pub(crate) fn cautions(
    survey: &Survey<'_>,
    path: Path,
    hazards: &[Hazard],
    charging: &[ChargeSource],
    limed: bool,
) -> Vec<Caution> {
    let mut cautions = Vec::new();
    // First what can hurt people.
    lead(survey, &mut adding(&mut cautions, true));
    if path != Path::None {
        dust_and_fire(&mut adding(&mut cautions, true));
        let mut add = adding(&mut cautions, false);
        add(
            "whenever biochar is used",
            "Where weedkiller is used on the soil, biochar can bind it: it may not work, and may \
             linger. Ask whoever sells it."
                .into(),
            &[SONI_2015.opened()],
        );
        material(survey, limed, &mut add);
    }
    // Germs.
    charge(charging, &mut adding(&mut cautions, true));
    let mut add = adding(&mut cautions, false);
    soil(survey, path, hazards, &mut add);
    add(
        "always",
        "Local rules and the advice of licensed people come before this plan.".into(),
        &[COMMON_PRACTICE.unsourced()],
    );
    drop(add);
    cautions
}

/// Adds to a list, what can hurt people or what can hurt something else.
fn adding(list: &mut Vec<Caution>, people: bool) -> impl FnMut(&str, String, &[Citation]) {
    move |rule, text, sources| {
        list.push(Caution { text, people, grounds: Grounds::new(rule, sources) });
    }
}

fn dust_and_fire(add: &mut Add<'_>) {
    add(
        "whenever biochar is used",
        "Biochar dust harms the lungs. Damp it first, choose a calm day, and wear a P2 or N95 \
         mask."
            .into(),
        &[GUO_2020.opened(), COMMON_PRACTICE.unsourced()],
    );
    add(
        "whenever biochar is used",
        "Fresh or warm biochar can catch fire. Let it cool fully, keep it wet (20 % water or \
         more), and keep sparks away."
            .into(),
        &[FLAMMABILITY_2014.opened(), DEL_CAMPO_2021.opened()],
    );
}

type Add<'a> = dyn FnMut(&str, String, &[Citation]) + 'a;

fn material(survey: &Survey<'_>, limed: bool, add: &mut Add<'_>) {
    let bag = &survey.case.biochar;
    if bag.feedstock == Some(Feedstock::Manure) || bag.ec.is_some_and(|ec| ec > 2.0) {
        add(
            "manure biochar, or more than 2 dS/m on the bag",
            "This biochar can be salty. Try it on a few seedlings before the whole bed.".into(),
            &[DRYLANDS_2025.opened(), COMMON_PRACTICE.unsourced()],
        );
    }
    // Who asks for a higher pH than usual gets lime all the same.
    if survey.soil.value(Property::Ph).is_some_and(|ph| ph >= 6.8) && !limed {
        add(
            "soil pH 6.8 or more",
            "Biochar lifts the pH a little. Don't lime as well, and check the pH next year.".into(),
            &[GUO_2020.opened()],
        );
    }
}

fn charge(charging: &[ChargeSource], add: &mut Add<'_>) {
    if charging.contains(&ChargeSource::CompostTea) {
        add(
            "compost tea is used",
            "Tea brewed with molasses or the like counts as raw manure: leave 120 days to the \
             harvest of crops that touch the soil, 90 days for others. Use drinking water, and \
             keep it off the parts you eat."
                .into(),
            &[NOSB_TEA_2004.opened(), NOP_205_203.opened()],
        );
    }
    if charging.contains(&ChargeSource::Urine) {
        add(
            "urine is used",
            "Treat urine like raw manure: leave 120 days to the harvest of crops that touch the \
             soil, 90 days for others. Check whether your area allows it."
                .into(),
            &[NOP_205_203.derived(), COMMON_PRACTICE.unsourced()],
        );
    }
    if charging.contains(&ChargeSource::AgedManure) {
        add(
            "manure that was never composted hot is used",
            "Aged manure counts as raw manure: leave 120 days to the harvest of crops that touch \
             the soil, 90 days for others. Days of frost don't count. No manure of pigs, dogs or \
             cats."
                .into(),
            &[NOP_205_203.opened(), UGA_MANURE.opened()],
        );
    }
    if charging.contains(&ChargeSource::Compost) || charging.contains(&ChargeSource::Vermicompost) {
        add(
            "compost or worm castings are used",
            "Use finished compost only. Compost with manure in it that never got hot counts as \
             raw manure: 120 days to the harvest of crops that touch the soil, 90 for others."
                .into(),
            &[NOP_205_203.opened()],
        );
    }
}

fn soil(survey: &Survey<'_>, path: Path, hazards: &[Hazard], add: &mut Add<'_>) {
    if hazards.contains(&Hazard::Sodium) {
        add(
            "exchangeable sodium at what makes a soil sodic there or more, or adsorption ratio 13 or more",
            "This soil is sodic. Biochar is no cure: gypsum, drainage and clean water are. Have a \
             local adviser size the gypsum."
                .into(),
            &[COLORADO_SODIC.opened()],
        );
    }
    if !hazards.contains(&Hazard::Sodium) && nearly_sodic(survey) {
        add(
            "exchangeable sodium from 10 %, or adsorption ratio from 10, below the lines of 15 and 13",
            "Sodium is not far from the line where a soil is called sodic (15 % of the exchange, or \
             an adsorption ratio of 13). Bring no more of it: no salty water, no salty biochar. \
             Past that line gypsum, drainage and clean water come before all else."
                .into(),
            &[COLORADO_SODIC.opened(), OUR_CHOICE.unsourced()],
        );
    }
    if survey.ece().is_some_and(|ece| ece.likely >= 2.0) {
        add(
            "salts in the saturated paste 2 dS/m or more",
            "The soil has salts in it. Don't use salty biochar, fresh manure or strong feed."
                .into(),
            &[DRYLANDS_2025.opened(), COMMON_PRACTICE.unsourced()],
        );
    }
    if survey.bed.is_potted() && hazards.contains(&Hazard::Salts) {
        add(
            "salts in a potting mix beyond its range",
            "The mix is too salty: roots burn. Rinse it with plenty of clean water, let it drain, and feed nothing until a test is lower."
                .into(),
            &[COMMON_PRACTICE.unsourced()],
        );
    }
    for (property, much, text) in [
        (
            Property::Zinc,
            MUCH_ZINC,
            "So much zinc hurts plants where the soil is acid. Keep the pH from 6.5 up, bring no more zinc, and find out where it comes from.",
        ),
        (
            Property::Copper,
            MUCH_COPPER,
            "So much copper hurts roots and worms where the soil is acid. Keep the pH from 6.5 up, and spray no copper.",
        ),
    ] {
        let level = survey.findings.level(property);
        let found = survey.soil.value(property).unwrap_or(0.0);
        if level.is_some_and(Level::is_surplus) && found > much {
            let sources = [RUTGERS_NUTRIENTS.opened(), COMMON_PRACTICE.unsourced()];
            add("zinc over 50, or copper over 20 mg/kg", text.into(), &sources);
        }
    }
    let phosphorus = survey.findings.level(Property::Phosphorus);
    if phosphorus == Some(Level::Excess) {
        add(
            "phosphorus in excess",
            "So much phosphorus harms streams and lakes when soil washes off. Add none, and keep \
             the soil covered."
                .into(),
            &[COMMON_PRACTICE.unsourced()],
        );
    }
    if path == Path::None && survey.soil.value(Property::Ph).is_some_and(|ph| ph >= 7.5) {
        add(
            "soil pH 7.5 or more and no biochar",
            "Don't try to lower a high pH with acid or a lot of sulfur at once. Ask a local \
             adviser how much is safe."
                .into(),
            &[COMMON_PRACTICE.unsourced()],
        );
    }
}

/// Not sodic, but not far from it, as it was measured.
fn nearly_sodic(survey: &Survey<'_>) -> bool {
    let sodium = survey.chemistry.sodium.as_ref();
    sodium.is_some_and(|sodium| sodium.sar.unwrap_or(sodium.esp.likely) >= NEARLY_SODIC)
}

fn lead(survey: &Survey<'_>, add: &mut Add<'_>) {
    let Some(measure) = survey.soil.get(Property::Lead) else { return };
    let amount = measure.amount.number();
    if lead_unsettled(survey) {
        add(
            "lead by an extract that points to total lead at or over the level for homes",
            "Lead was measured, but not clearly as total lead, and so much of it may mean more \
             total lead than the level for homes. Until total lead is measured, keep children off \
             bare soil, don't raise dust, and grow food in clean raised beds."
                .into(),
            &[HAMEL_2003.opened(), LEAD_UMD.opened(), COMMON_PRACTICE.unsourced()],
        );
    } else if measure.method != Some(Method::TotalAcid) {
        add(
            "lead measured, but not as total lead",
            "Lead was measured, but not clearly as total lead. An extract can't be held against \
             the safety level: ask the laboratory for total lead, and the local health office \
             what it means."
                .into(),
            &[COMMON_PRACTICE.unsourced(), LEAD_UMD.opened()],
        );
    } else if amount >= LEAD_SCREENING {
        add(
            "total lead at or over 200 mg/kg",
            format!(
                "Total lead is {amount} mg/kg. The US screening level for homes has been 200 \
                 since October 2025. Keep children off bare soil, don't raise dust, grow food in \
                 clean raised beds, and ask the local health office. Biochar is no cure."
            ),
            &[EPA_LEAD.second_hand(), LEAD_UMD.opened()],
        );
    } else if amount >= LEAD_CARE {
        add(
            "total lead 100 to 200 mg/kg",
            format!(
                "Total lead is {amount} mg/kg: more than most soils hold, and below the US \
                 screening level of 200 (October 2025). Wash and peel what you eat, keep dust \
                 down, and ask the local health office. No amount of lead is known to be safe."
            ),
            &[EPA_LEAD.second_hand(), LEAD_UMD.opened()],
        );
    }
}
