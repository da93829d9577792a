//! The most that one dose, and all doses together, may be: by what is published of one
//! application, and by what this soil takes up and holds.

use crate::facts::Dressed;
use crate::plan::hazards::over_lead_level;
use crate::plan::ledger::Ceiling;
use crate::plan::needs::lime_rate::doses;
use crate::plan::needs::salts::TraceElement;
use crate::plan::needs::{Need, NeedKind};
use crate::quantity::{Band, Grounds, Unit};
use crate::soil::Property;
use crate::sources::{
    ARITHMETIC, CORNELL_LAWNS, Citation, NC_EQUATIONS, NEW_ENGLAND_POTASSIUM, OSU_CEC, OUR_CHOICE,
    RB209_MAGNESIUM, RB209_RATES, UMASS_RATES, UMASS_REPORT,
};
use crate::survey::{Standing, Survey};

/// kg/ha in 1 lb/1000 sq ft: 0.45359237 kg on 92.90304 m².
/// Source: legal definitions of the pound and the foot (derived).
pub const KG_PER_HA_IN_LB_PER_1000_SQ_FT: f64 = 48.824_28;

/// How deep lime and sulfur reach in undug soil, cm: 4 in.
/// Source: E-2567 (opened): half the rate of 8 in for 0–4 in without tillage; that sulfur goes
/// no deeper is our choice.
pub(super) const UNDUG: f64 = 4.0 * 2.54;

/// Magnesium is not brought past this share of the exchange, %.
/// Source: our choice, in the middle of the University of Massachusetts' 10 to 30 % (opened).
const MOST_MAGNESIUM: f64 = 20.0;
/// Potassium is not brought past this share of the exchange by one dressing, %.
/// Source: University of Massachusetts, 2 to 7 % (opened).
const MOST_POTASSIUM: f64 = 7.0;
/// g of one mole of charge, × 10: mg/kg on 1 meq/100 g. Source: atomic masses (derived).
pub(super) const MAGNESIUM_PER_MEQ: f64 = 121.5;
const POTASSIUM_PER_MEQ: f64 = 391.0;
/// Exchange capacity nobody knows, meq/100 g: the least that is usual.
/// Source: Ohio State University Extension ANR-81, 5 to 25 (opened).
const LEAST_USUAL_CEC: f64 = 5.0;

/// Nitrogen in one dressing of vegetables, kg/ha: half of the highest for a year, 4 lb/1000 sq ft.
/// Source: UMass Extension, half before planting and half later (derived).
const NITROGEN_AT_ONCE: f64 = 2.0 * KG_PER_HA_IN_LB_PER_1000_SQ_FT;
/// Nitrogen in a year, kg/ha: the highest published, 4 lb/1000 sq ft.
/// Source: UMass Extension (opened).
const NITROGEN_IN_A_YEAR: f64 = 4.0 * KG_PER_HA_IN_LB_PER_1000_SQ_FT;
/// The most nitrogen on a lawn at one time, kg/ha: 1 lb/1000 sq ft.
/// Source: Cornell University (opened).
const LAWN_AT_ONCE: f64 = KG_PER_HA_IN_LB_PER_1000_SQ_FT;
/// Phosphate or potash in one dressing, kg/ha: the highest published, 150 lb/acre.
/// Source: North Carolina's equation 14 at index 0 (derived).
const HIGHEST_DRESSING: f64 = 168.1;
/// Potash that may always be given at once, kg/ha. Source: RB209, 30 kg/ha (opened).
const LEAST_POTASH: f64 = 30.0;
/// Magnesium in one dressing, kg/ha: 100 kg MgO. Source: RB209 (from memory).
const MAGNESIUM_AT_ONCE: f64 = 60.3;
/// Magnesium in magnesium sulfate, MgSO4·7H2O. Source: atomic masses (derived).
pub(super) const MAGNESIUM_IN_EPSOM_SALT: f64 = 0.0986;

/// Nutrient in a layer of soil, kg/ha, from mg/kg, depth in cm and density in g/cm³.
///
/// Source: arithmetic (derived).
pub fn stock(mg_per_kg: f64, depth_cm: f64, density: f64) -> f64 {
    mg_per_kg * depth_cm * density * 0.1
}

/// The depth that what is spread reaches, cm. Where nothing is dug it is no deeper than a few
/// inches, whatever depth was typed.
pub(super) fn reached(survey: &Survey<'_>) -> f64 {
    if stays_on_top(survey) { UNDUG } else { survey.bed.depth.value }
}

/// Whether what is spread stays on top.
pub(super) fn stays_on_top(survey: &Survey<'_>) -> bool {
    !survey.bed.is_dug() || over_lead_level(survey)
}

/// Whether it lies on top for now: also while a crop stands that nobody gave an end.
pub(super) fn lies_on_top(survey: &Survey<'_>) -> bool {
    stays_on_top(survey) || survey.bed.standing == Standing::Open
}

/// More dressings than these a year nobody gives. Our choice.
pub(crate) const MOST_FEEDS: u32 = 3;

/// A ceiling from a rate (kg/ha of what is measured out).
pub(super) fn at_most(
    survey: &Survey<'_>,
    kg_per_ha: f64,
    why: impl Into<String>,
    rule: &str,
    sources: &[Citation],
) -> Ceiling {
    let most = Band::exactly(kg_per_ha);
    let grounds = Grounds::new(rule, sources).input("at most", survey.shown(&most, Unit::KgPerHa));
    Ceiling {
        // 1 kg/ha is 0.1 g/m².
        most: kg_per_ha * 0.1 * survey.bed.area.value,
        why: why.into(),
        grounds,
        binds: false,
    }
}

impl Need {
    /// Holds the amount to the most in all, and parts it into doses of which none is more than
    /// the most at once. What holds it down is said and named in the grounds.
    pub(super) fn hold(&mut self, mut in_all: Ceiling, mut at_once: Ceiling) {
        if let Some(grams) = &mut self.for_bed {
            in_all.binds |= grams.likely > in_all.most * (1.0 + 1e-9);
            *grams = grams.map(|g| g.min(in_all.most));
            self.doses = self.doses.max(doses(grams.likely, at_once.most));
        }
        at_once.binds = self.doses > 1;
        for ceiling in [&in_all, &at_once].into_iter().filter(|ceiling| ceiling.binds) {
            if !self.steps.contains(&ceiling.why) {
                self.steps.push(ceiling.why.clone());
            }
            self.grounds.rule = format!("{} At most: {}", self.grounds.rule, ceiling.grounds.rule);
            self.grounds.inputs.extend(ceiling.grounds.inputs.iter().cloned());
            self.grounds.cite(&ceiling.grounds.sources);
        }
        (self.in_all, self.at_once) = (Some(in_all), Some(at_once));
    }
}

/// The exchange capacity that limits go by, meq/100 g.
fn capacity(survey: &Survey<'_>) -> f64 {
    survey.chemistry.cec.map(|cec| cec.likely).filter(|cec| *cec > 0.0).unwrap_or(LEAST_USUAL_CEC)
}

/// What the worked soil takes up of a base until it has a share (%) of the exchange, kg/ha.
fn room_on_exchange(survey: &Survey<'_>, property: Property, (share, per_meq): (f64, f64)) -> f64 {
    let there = survey.soil.value(property).unwrap_or(0.0);
    let room = (share / 100.0 * capacity(survey) * per_meq - there).max(0.0);
    stock(room, survey.bed.depth.value, survey.bed.density.value.likely)
}

/// The most of a nutrient in a year and at once; `None` for what is no nutrient.
pub(super) fn of_nutrient(survey: &Survey<'_>, kind: NeedKind) -> Option<(Ceiling, Ceiling)> {
    let (in_all, at_once) = match kind {
        NeedKind::Nitrogen => nitrogen(survey),
        NeedKind::Phosphate => phosphate(survey),
        NeedKind::Potash => potash(survey),
        NeedKind::Magnesium => epsom_salt(survey),
        NeedKind::Sulfur => gypsum_for_sulfur(survey)?,
        _ => return None,
    };
    // The rest of what is given in parts waits for the next test.
    let by_parts = at_most(
        survey,
        f64::from(MOST_FEEDS) * at_once.most * 10.0 / survey.bed.area.value,
        "More than three dressings are not given in a year: test again, and give the rest then.",
        "three dressings in a year.",
        &[OUR_CHOICE.unsourced()],
    );
    Some((if by_parts.most < in_all.most { by_parts } else { in_all }, at_once))
}

/// How vegetables get their nitrogen. Source: UMass Extension (opened).
pub(super) const HALF_AND_HALF: &str = "Give half before planting, half when the plants grow fast.";

/// How a lawn gets its nitrogen.
pub(super) fn lawn_at_once(survey: &Survey<'_>) -> String {
    let most = survey.shown(&Band::exactly(LAWN_AT_ONCE), Unit::KgPerHa);
    format!("Never more than {most} at one time; two or three dressings a year.")
}

fn nitrogen(survey: &Survey<'_>) -> (Ceiling, Ceiling) {
    let in_all = at_most(
        survey,
        NITROGEN_IN_A_YEAR,
        "More nitrogen than the highest published for a year is not given.",
        "nitrogen in a year, the highest published: 4 lb/1000 sq ft.",
        &[UMASS_RATES.opened()],
    );
    let at_once = if survey.is_lawn() {
        at_most(
            survey,
            LAWN_AT_ONCE,
            lawn_at_once(survey),
            "nitrogen on a lawn at one time: 1 lb/1000 sq ft.",
            &[CORNELL_LAWNS.opened()],
        )
    } else {
        at_most(
            survey,
            NITROGEN_AT_ONCE,
            HALF_AND_HALF,
            "nitrogen at one time, half of the highest for a year: 2 lb/1000 sq ft.",
            &[UMASS_RATES.derived()],
        )
    };
    (in_all, at_once)
}

fn phosphate(survey: &Survey<'_>) -> (Ceiling, Ceiling) {
    let highest = || {
        at_most(
            survey,
            HIGHEST_DRESSING,
            "More phosphate than the highest published dressing is not given in a year.",
            "phosphate in a year, the highest published: 150 lb/acre.",
            &[NC_EQUATIONS.derived()],
        )
    };
    (highest(), highest())
}

fn potash(survey: &Survey<'_>) -> (Ceiling, Ceiling) {
    let in_all = at_most(
        survey,
        HIGHEST_DRESSING,
        "More potash than the highest published dressing is not given in a year.",
        "potash in a year, the highest published: 150 lb/acre.",
        &[NC_EQUATIONS.derived()],
    );
    let potassium =
        room_on_exchange(survey, Property::Potassium, (MOST_POTASSIUM, POTASSIUM_PER_MEQ));
    let oxide = potassium / crate::plan::ledger::K_IN_K2O;
    let at_once = at_most(
        survey,
        oxide.clamp(LEAST_POTASH, HIGHEST_DRESSING),
        "A soil like this holds little potash at a time: rain takes the rest, or it crowds out magnesium.",
        "potash at one time, until potassium has 7 % of the exchange in the worked depth; 30 kg/ha may always be given.",
        &[
            UMASS_REPORT.opened(),
            NEW_ENGLAND_POTASSIUM.opened(),
            RB209_RATES.opened(),
            OSU_CEC.opened(),
            ARITHMETIC.derived(),
            OUR_CHOICE.unsourced(),
        ],
    );
    (in_all, at_once)
}

/// Gypsum that feeds sulfur.
fn gypsum_for_sulfur(survey: &Survey<'_>) -> Option<(Ceiling, Ceiling)> {
    let row = TraceElement::of(Dressed::S)?;
    let highest = || {
        at_most(
            survey,
            row.most_salt(true),
            "More sulfur than the highest published dressing is washed out before plants take it.",
            "gypsum for its sulfur in a year: what brings the highest published dressing of sulfur, 50 kg/ha.",
            row.citations,
        )
    };
    Some((highest(), highest()))
}

fn epsom_salt(survey: &Survey<'_>) -> (Ceiling, Ceiling) {
    let magnesium =
        room_on_exchange(survey, Property::Magnesium, (MOST_MAGNESIUM, MAGNESIUM_PER_MEQ));
    let in_all = at_most(
        survey,
        magnesium / MAGNESIUM_IN_EPSOM_SALT,
        "More would give magnesium over a fifth of the exchange, where it crowds out the others.",
        "Epsom salts until magnesium has 20 % of the exchange in the worked depth.",
        &[UMASS_REPORT.opened(), OSU_CEC.opened(), ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
    );
    let at_once = at_most(
        survey,
        MAGNESIUM_AT_ONCE / MAGNESIUM_IN_EPSOM_SALT,
        "More Epsom salts at one time are washed out before the soil holds them.",
        "Epsom salts at one time: what brings 100 kg of magnesium oxide a hectare.",
        &[RB209_MAGNESIUM.from_memory(), ARITHMETIC.derived()],
    );
    (in_all, at_once)
}
