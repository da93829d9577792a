//! How much: the share by volume of the worked depth, and what holds it down.

use crate::bag::Material;
use crate::plan::ceilings;
use crate::plan::ledger::Substance;
use crate::quantity::{Band, Figure, Grounds, Note, Unit, inverse, product, significant};
use crate::soil::{Method, PlantGroup, Property};
use crate::sources::{ARITHMETIC, Citation, GUO_2020, OUR_CHOICE};
use crate::survey::buffering::{self as liming, Buffering, ph_rise};
use crate::survey::{Reaction, Survey};

/// Share by volume when nobody asks for another, %, with the range that is
/// reasonable.
/// Source: garden figures of 5–10 % from memory; our choice.
pub const USUAL_SHARE: Band = Band { low: 2.0, likely: 5.0, high: 10.0 };

/// The shares a person may ask for, %. Our choice.
const SHARES: (f64, f64) = (1.0, 20.0);

/// The most years that a share may be spread over.
/// Our choice.
pub(crate) const MOST_YEARS: u32 = 10;

/// The most in one season, % by volume. Source: our choice.
const MOST_SHARE: f64 = 10.0;

/// The most in one season, t/ha dry. Source: our choice.
const MOST_TONNES: f64 = 20.0;

/// Treated soil should stay below this pH. Source: Guo 2020 (opened).
pub const MOST_PH: f64 = 7.5;

/// Treated soil should stay below these salts in a 1:1 suspension, dS/m.
/// Source: Guo 2020 (opened).
pub const MOST_EC: f64 = 2.7;

/// Litres of biochar for 1 m² at a share (% by volume) of the worked depth (cm).
pub fn litres_per_m2(depth_cm: f64, share: f64) -> f64 {
    10.0 * depth_cm * share / 100.0
}

/// Tonnes per hectare in kg per m².
pub fn tonnes_per_ha(kg_per_m2: f64) -> f64 {
    10.0 * kg_per_m2
}

/// kg of biochar per 100 kg of soil in the worked depth (cm), soil density in g/cm³.
pub fn mass_percent(kg_per_m2: f64, depth_cm: f64, soil_density: f64) -> f64 {
    100.0 * kg_per_m2 / (depth_cm * 10.0 * soil_density)
}

/// How much goes into the bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// Area, m².
    pub area: f64,
    /// Whether somebody gave the area; else the amounts are for each of it.
    pub area_known: bool,
    /// Worked depth, cm.
    pub depth: f64,
    /// Share by volume, %.
    pub share: f64,
    /// Volume of biochar, litres.
    pub litres: f64,
    /// Dry mass, kg.
    pub mass: Band,
    /// Biochar in the soil, % by mass.
    pub percent: Band,
    /// What held the share down.
    pub capped_by: Vec<String>,
    /// Every amount as a figure.
    pub figures: Vec<Figure>,
}

impl Dose {
    /// How thick the biochar lies before it is mixed in, mm: a litre on a square metre is a
    /// millimetre.
    pub fn thickness_mm(&self) -> f64 {
        litres_per_m2(self.depth, self.share)
    }
}

/// What bounds the share from above.
pub(crate) struct Cap {
    pub share: f64,
    pub why: String,
    pub source: Citation,
}

/// What biochar the soil has had already.
#[derive(Clone, Copy)]
pub(crate) struct Before {
    /// pH in water now.
    pub ph: Option<f64>,
    /// Biochar in the soil, % by mass.
    pub percent: f64,
}

impl Before {
    /// None yet.
    pub fn any(survey: &Survey<'_>) -> Before {
        Before { ph: survey.water_ph(), percent: 0.0 }
    }
}

/// kg of biochar per m² at a share.
pub(crate) fn kg_per_m2(survey: &Survey<'_>, share: f64) -> Band {
    let litres = litres_per_m2(survey.bed.depth.value, share);
    survey.material.bulk_density.map(|density| litres * density / 1000.0)
}

/// % by mass at a share.
pub(crate) fn percent(survey: &Survey<'_>, share: f64) -> Band {
    let kg = kg_per_m2(survey, share);
    let (depth, soil) = (survey.bed.depth.value, survey.bed.density.value);
    Band::new(
        mass_percent(kg.low, depth, soil.high),
        mass_percent(kg.likely, depth, soil.likely),
        mass_percent(kg.high, depth, soil.low),
    )
}

/// The pH after a share of this biochar.
pub fn ph_after(survey: &Survey<'_>, share: f64) -> Option<Band> {
    let ph = survey.water_ph()?;
    let percent = percent(survey, share);
    let rise = liming::rise(Some(ph), percent, &survey.material, &liming::buffering(survey));
    Some(rise.map(|rise| ph + rise))
}

/// The pH that treated soil must not pass: what acid-loving plants bear, else 7.5.
pub(crate) fn most_ph(survey: &Survey<'_>) -> f64 {
    if survey.plants() != PlantGroup::AcidLovers {
        return MOST_PH;
    }
    Reaction::of(survey).map_or(MOST_PH, |reaction| reaction.bears)
}

/// The rise of pH once all the lime in `percent` biochar by mass has worked.
pub(crate) fn rise_in_the_end(percent: Band, material: &Material, buffering: &Buffering) -> Band {
    let per_kg = percent.map(|p| p * 10.0);
    let liming = material.liming.map(|l| l / 100.0);
    product(&[per_kg, liming, inverse(buffering.with_biochar(percent))])
        .map(|x| ph_rise(x, 1.0, 1.0))
}

/// The share by volume at which the biochar's own salts bring the soil to
/// [`MOST_EC`]; `None` when the bag doesn't give its salts.
///
/// The bag's reading is taken in 20 parts of water, the soil's in 1 part.
pub fn share_by_salts(survey: &Survey<'_>) -> Option<f64> {
    share_left_by_salts(survey, 0.0)
}

/// The same where some biochar is in the soil already, % by mass.
fn share_left_by_salts(survey: &Survey<'_>, there: f64) -> Option<f64> {
    let added_per_percent = survey.material.ec? * 20.0 / 100.0;
    let room = (MOST_EC - soil_ec(survey) - added_per_percent * there).max(0.0);
    let share = room / (added_per_percent * percent(survey, 1.0).likely);
    share.is_finite().then_some(share)
}

/// The share by volume that brings as much phosphorus as may come in.
pub fn share_by_phosphorus(survey: &Survey<'_>) -> Option<f64> {
    share_by_ceiling(survey, Substance::Phosphorus)
}

/// The share by volume that brings as much of a substance as may come in.
fn share_by_ceiling(survey: &Survey<'_>, substance: Substance) -> Option<f64> {
    let ceiling = ceilings::of(survey, substance)?;
    let one = kg_per_m2(survey, 1.0).likely * survey.bed.area.value;
    let brings = ceilings::load(survey, substance) * one;
    (brings > 0.0).then(|| ceiling.most / brings)
}

/// Salts of the soil in a 1:1 suspension, dS/m; 0 when they weren't measured so.
fn soil_ec(survey: &Survey<'_>) -> f64 {
    survey
        .soil
        .get(Property::Ec)
        .filter(|m| m.method == Some(Method::Water1To1))
        .map_or(0.0, |m| m.amount.number())
}

/// All that bounds the share of one season.
pub(crate) fn caps(survey: &Survey<'_>, before: Before) -> Vec<Cap> {
    let mut caps = vec![Cap {
        share: MOST_SHARE,
        why: "10 % by volume is the most for one season. Add more next year if you want it."
            .to_string(),
        source: OUR_CHOICE.unsourced(),
    }];
    if !survey.bed.is_potted() {
        caps.push(Cap {
            share: MOST_TONNES / tonnes_per_ha(kg_per_m2(survey, 1.0).likely),
            why: "20 t/ha (2 kg on 1 m²) is the most for one season.".to_string(),
            source: OUR_CHOICE.unsourced(),
        });
    }
    caps.extend(by_ph(survey, before));
    if let Some(share) = share_left_by_salts(survey, before.percent) {
        caps.push(Cap {
            share,
            why: "More of this biochar would bring too many salts (over 2.7 dS/m, 1:1)."
                .to_string(),
            source: GUO_2020.opened(),
        });
    }
    for substance in [Substance::Phosphorus, Substance::Potassium, Substance::Sodium] {
        let ceiling = ceilings::of(survey, substance);
        if let (Some(ceiling), Some(share)) = (ceiling, share_by_ceiling(survey, substance)) {
            let source = ceiling.grounds.sources.first().copied();
            let source = source.unwrap_or(OUR_CHOICE.unsourced());
            caps.push(Cap { share, why: ceiling.why, source });
        }
    }
    caps
}

/// The share that brings the pH to its limit in the end.
fn by_ph(survey: &Survey<'_>, before: Before) -> Option<Cap> {
    let (ph, most) = (before.ph?, most_ph(survey));
    // Lime that is slow in its first year works in the years after.
    let rise =
        rise_in_the_end(percent(survey, 1.0), &survey.material, &liming::buffering(survey)).likely;
    (rise > 0.0 && survey.material.ph.likely > most).then(|| Cap {
        share: (most - ph).max(0.0) / rise,
        why: format!(
            "More would in the end lift the pH from {} past {}.",
            significant(ph, 3),
            significant(most, 3)
        ),
        source: GUO_2020.opened(),
    })
}

/// The share wanted in all, %, and the years it is spread over.
pub(crate) fn wanted(survey: &Survey<'_>) -> (f64, u32) {
    let bag = &survey.case.biochar;
    let asked = bag.share_percent.filter(|s| s.is_finite());
    let share = asked.map_or(USUAL_SHARE.likely, |s| s.clamp(SHARES.0, SHARES.1));
    (share, bag.years.unwrap_or(1).clamp(1, MOST_YEARS))
}

/// The share of this year, with what holds it down and what is to be said of it.
struct Share {
    share: f64,
    limit: f64,
    capped: Option<Cap>,
    notes: Vec<String>,
}

fn share(survey: &Survey<'_>) -> Share {
    let bag = &survey.case.biochar;
    let asked = bag.share_percent.filter(|s| s.is_finite());
    let (in_all, years) = wanted(survey);
    let mut notes = Vec::new();
    if asked.is_some_and(|s| s != in_all) {
        notes.push("The share asked for lies outside 1 to 20 %; the nearest is taken.".to_string());
    }
    if bag.years.is_some_and(|y| y != years) {
        notes.push("The years given lie outside 1 to 10; the nearest is taken.".to_string());
    }
    if years > 1 {
        notes.push(format!("This year's part of {in_all} % over {years} years."));
    }
    let wanted = in_all / f64::from(years);
    let binding =
        caps(survey, Before::any(survey)).into_iter().min_by(|a, b| a.share.total_cmp(&b.share));
    let limit = binding.as_ref().map_or(wanted, |c| c.share.max(0.0));
    let capped = binding.filter(|cap| cap.share < wanted);
    Share { share: wanted.min(limit), limit, capped, notes }
}

/// The dose for this bed: what is wanted this year, held down by what bounds it.
pub fn dose(survey: &Survey<'_>) -> Dose {
    let found = share(survey);
    let share = found.share;
    let (area, depth) = (survey.bed.area.value, survey.bed.depth.value);
    let litres = litres_per_m2(depth, share) * area;
    let per_m2 = kg_per_m2(survey, share);
    Dose {
        area,
        area_known: survey.bed.area.known,
        depth,
        share,
        litres,
        mass: per_m2.map(|kg| kg * area),
        percent: percent(survey, share),
        capped_by: found.capped.iter().map(|cap| cap.why.clone()).collect(),
        figures: figures(survey, &found, litres, per_m2),
    }
}

fn figures(survey: &Survey<'_>, found: &Share, litres: f64, per_m2: Band) -> Vec<Figure> {
    let (material, bag) = (&survey.material, &survey.case.biochar);
    let with_bed = |grounds: Grounds| {
        survey
            .bed
            .depth
            .add_to(survey.bed.area.add_to(grounds))
            .input("share by volume", format!("{} %", significant(found.share, 3)))
    };
    let density = [("bulk density", material.bulk_density, Unit::None)];
    let weigh = |rule: &str| {
        material.explain(with_bed(Grounds::new(rule, &[ARITHMETIC.derived()])), &density)
    };
    let figure =
        |name, label, band, unit, grounds| survey.told(Figure { name, label, band, unit, grounds });
    let mut figures = vec![
        share_figure(survey, found),
        figure(
            "biochar-volume",
            "biochar",
            Band::exactly(litres),
            Unit::Litre,
            with_bed(Grounds::new(
                "10 × depth (cm) × share ÷ 100 = litres on 1 m²; × area",
                &[ARITHMETIC.derived()],
            )),
        ),
        figure(
            "biochar-dry-mass",
            "biochar, dry",
            per_m2.map(|kg| kg * survey.bed.area.value),
            Unit::Kg,
            weigh("volume × bulk density (kg/m³) ÷ 1000"),
        ),
        figure(
            "application-rate",
            "application rate, dry",
            per_m2.map(tonnes_per_ha),
            Unit::TonnePerHa,
            weigh("10 × kg on 1 m²"),
        ),
        figure(
            "share-by-mass",
            "share by mass",
            percent(survey, found.share),
            Unit::Percent,
            survey.bed.density.add_to(weigh("biochar ÷ (depth × density of dry soil)")),
        ),
    ];
    if let Some(size) = bag.bag_litres.filter(|b| (0.1..=100_000.0).contains(b)) {
        // A volume that is a whole number of bags must not ask for one more.
        let bags = (litres / size - 1e-9).ceil().max(0.0);
        let grounds =
            with_bed(Grounds::new("volume ÷ size of a bag, rounded up", &[ARITHMETIC.derived()]))
                .input("bag", format!("{} L", significant(size, 3)));
        figures.push(figure("bags", "biochar in bags", Band::exactly(bags), Unit::Bags, grounds));
    }
    figures
}

fn share_figure(survey: &Survey<'_>, found: &Share) -> Figure {
    let asked = survey.case.biochar.share_percent.is_some_and(f64::is_finite);
    let mut grounds = Grounds::new(
        "the share wanted, held down by the season's limit, pH, salts and what may come in of nutrients",
        &[OUR_CHOICE.unsourced(), GUO_2020.opened()],
    );
    grounds.sources.extend(found.capped.iter().map(|cap| cap.source));
    let band = if asked {
        Band::exactly(found.share)
    } else {
        grounds = grounds.assume("5 % by volume; 2 to 10 % is reasonable.");
        let (_, years) = wanted(survey);
        let of_year = |share: f64| share / f64::from(years);
        let (least, most) = (of_year(USUAL_SHARE.low), of_year(USUAL_SHARE.high));
        Band::new(least.min(found.share), found.share, most.min(found.limit))
    };
    grounds.assumed.extend(found.notes.iter().cloned().map(Note::from));
    Figure { name: "share-by-volume", label: "share by volume", band, unit: Unit::Percent, grounds }
}
