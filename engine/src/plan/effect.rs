//! What biochar should do to each property in its first month, with bounds
//! that include no change wherever the trials do.

use crate::plan::rate::Dose;
use crate::quantity::product;
use crate::survey::buffering as liming;
use serde::Serialize;

use crate::bag::{EffectParameter, Material, parameter, rests_on};
use crate::case::Feedstock;
use crate::plan::Path;
use crate::plan::calibration::with_trial;
use crate::plan::ledger::{Bringer, Brings, Entry, Ledger, NITROGEN, Substance};
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::Property;
use crate::sources::{COMMON_PRACTICE, Citation, FIDEL_2017, PHREEQC_EXCHANGE};
use crate::survey::Survey;
use crate::survey::capacity::NewSites;

/// What biochar should do to one property in the first month.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Effect {
    /// The property.
    pub property: Property,
    /// The change: % of the extractable amount, or pH units.
    pub change: Figure,
    /// The direction in words: `down`, `up`, `down or unsure`, `up or unsure`, `unsure`.
    pub direction: &'static str,
    /// The same together with a trial in this bed, where there is one; the change stays the
    /// model's own, and the plan rests on that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub with_trial: Option<Figure>,
}

impl Effect {
    /// The model's own change, and with the trial.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        std::iter::once(&self.change).chain(&self.with_trial)
    }
}

/// Mineral nitrogen where nobody measured it, mg/kg. Our choice: a garden in spring.
const USUAL_MINERAL_NITROGEN: f64 = 15.0;

/// Biochar in the soil, % by mass, from which its hold on nutrients counts in
/// full. Source: our choice.
const FULL_HOLD_PERCENT: f64 = 0.5;

/// A change of pH that a repeat test could show by chance.
/// Source: common practice, no source.
const PH_NOISE: f64 = 0.2;

/// From this pH down, and from this one up, phosphorus of manure and bone comes free as
/// facts/effects.csv says for acid and for limy soil; between them by straight lines.
/// Source: our choice within Warren et al. 2009.
const PHOSPHORUS_BETWEEN: (f64, f64) = (5.0, 7.0);

/// Charges of a gram of calcium, meq. Source: atomic masses (derived).
const CALCIUM_MEQ: f64 = 2000.0 / 40.078;
/// The same of magnesium. Source: atomic masses (derived).
const MAGNESIUM_MEQ: f64 = 2000.0 / 24.305;
/// The same of potassium. Source: atomic masses (derived).
const POTASSIUM_MEQ: f64 = 1000.0 / 39.098;

/// How one nutrient is treated.
struct Rule {
    property: Property,
    substance: Substance,
    label: &'static str,
    /// Held by dry, fresh biochar beside dilution, % of what is there.
    held: EffectParameter,
    /// Share of the biochar's total that plants can have in a year, %.
    available: EffectParameter,
    /// Share of that in the first month.
    in_month: EffectParameter,
    /// Share of what the charge brings that is there at once, or in the first month.
    charge: Growth,
    total: fn(&Material) -> Band,
}

/// Phosphorus, potassium, calcium, magnesium and sulfur.
static NUTRIENTS: [Rule; 5] = [
    Rule {
        property: Property::Phosphorus,
        substance: Substance::Phosphorus,
        label: "phosphorus",
        held: EffectParameter::PhosphorusHeld,
        available: EffectParameter::PhosphorusAvailable,
        in_month: EffectParameter::OwnFirstMonth,
        charge: Growth::Charge(EffectParameter::ChargeFirstMonth),
        total: |m| m.phosphorus,
    },
    Rule {
        property: Property::Potassium,
        substance: Substance::Potassium,
        label: "potassium",
        held: EffectParameter::PotassiumHeld,
        available: EffectParameter::PotassiumAvailable,
        in_month: EffectParameter::SaltsFirstMonth,
        charge: Growth::AtOnce,
        total: |m| m.potassium,
    },
    Rule {
        property: Property::Calcium,
        substance: Substance::Calcium,
        label: "calcium",
        held: EffectParameter::CalciumHeld,
        available: EffectParameter::CalciumAvailable,
        in_month: EffectParameter::LimeFirstMonth,
        charge: Growth::Charge(EffectParameter::ChargeFirstMonth),
        total: |m| m.calcium,
    },
    Rule {
        property: Property::Magnesium,
        substance: Substance::Magnesium,
        label: "magnesium",
        held: EffectParameter::MagnesiumHeld,
        available: EffectParameter::MagnesiumAvailable,
        in_month: EffectParameter::LimeFirstMonth,
        charge: Growth::Charge(EffectParameter::ChargeFirstMonth),
        total: |m| m.magnesium,
    },
    Rule {
        property: Property::Sulfur,
        substance: Substance::Sulfur,
        label: "sulfur",
        held: EffectParameter::SulfurHeld,
        available: EffectParameter::SulfurAvailable,
        in_month: EffectParameter::OwnFirstMonth,
        charge: Growth::Charge(EffectParameter::ChargeFirstMonth),
        total: |m| m.sulfur,
    },
];

/// What of a nutrient of this biochar plants can have in a year, % of its total, in a soil of
/// this pH.
pub(crate) fn available(substance: Substance, material: &Material, ph: Option<f64>) -> Band {
    NUTRIENTS
        .iter()
        .find(|rule| rule.substance == substance)
        .map_or(Band::exactly(0.0), |rule| rule.available(material, ph))
}

/// Phosphorus that comes free by the pH, % of the total.
fn by_ph(acid: EffectParameter, limy: EffectParameter, ph: Option<f64>) -> Band {
    let (from, to) = PHOSPHORUS_BETWEEN;
    let ph = ph.unwrap_or(f64::midpoint(from, to));
    let way = ((ph - from) / (to - from)).clamp(0.0, 1.0);
    parameter(acid).times(Band::exactly(1.0 - way)).plus(parameter(limy).times(Band::exactly(way)))
}

/// The share of its calcium, magnesium and potassium that must come free with the lime that
/// works in the first year, 0–1: what acts as lime brings its cations.
///
/// Source: charges balance (derived); Fidel et al. 2017, alkalinity follows base cations.
fn bases_with_lime(material: &Material) -> Band {
    let bases = material.calcium.likely * CALCIUM_MEQ
        + material.magnesium.likely * MAGNESIUM_MEQ
        + material.potassium.likely * POTASSIUM_MEQ;
    let lime = material.liming.map(|percent| percent * liming::PER_GRAM_OF_LIME);
    product(&[lime, liming::works_in_first_year(), Band::exactly(1.0 / bases.max(1e-6))])
        .map(|share| share.min(1.0))
}

impl Rule {
    /// Share of the biochar's total that plants can have in a year, %.
    fn available(&self, material: &Material, ph: Option<f64>) -> Band {
        use EffectParameter::{
            BonePhosphorusAcid, BonePhosphorusLimy, ManurePhosphorusAcid, ManurePhosphorusLimy,
        };
        match (self.substance, material.feedstock) {
            (Substance::Phosphorus, Some(Feedstock::Bone)) => {
                by_ph(BonePhosphorusAcid, BonePhosphorusLimy, ph)
            }
            (Substance::Phosphorus, Some(Feedstock::Manure)) => {
                by_ph(ManurePhosphorusAcid, ManurePhosphorusLimy, ph)
            }
            (Substance::Calcium | Substance::Magnesium, _) => {
                let least = parameter(self.available);
                let with_lime = bases_with_lime(material);
                Band::new(
                    least.low.max(100.0 * with_lime.low),
                    least.likely.max(100.0 * with_lime.likely),
                    least.high.max(100.0 * with_lime.high),
                )
            }
            _ => parameter(self.available),
        }
    }

    /// What it rests on.
    fn sources(&self, material: &Material) -> Vec<Citation> {
        let mut sources = rests_on(self.held).to_vec();
        sources.extend(rests_on(match (self.substance, material.feedstock) {
            (Substance::Phosphorus, Some(Feedstock::Bone)) => EffectParameter::BonePhosphorusAcid,
            (Substance::Phosphorus, Some(Feedstock::Manure)) => {
                EffectParameter::ManurePhosphorusAcid
            }
            _ => self.available,
        }));
        sources.extend(rests_on(self.in_month));
        if matches!(self.substance, Substance::Calcium | Substance::Magnesium) {
            sources.push(FIDEL_2017.second_hand());
        }
        sources
    }

    /// What fresh biochar of this dose holds, % of what is there.
    fn holds(&self, dose: &Dose) -> Band {
        let counts = counts(dose.percent);
        let held = parameter(self.held);
        Band::new(
            held.low * counts.high,
            held.likely * counts.likely,
            held.high.max(0.0) * counts.high,
        )
    }
}

/// The week that the effects of the plan stand for.
/// Our choice.
pub(crate) const A_MONTH: f64 = 4.0;

/// How a part of a change comes about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Growth {
    /// At once.
    AtOnce,
    /// In the first days and weeks, as biochar takes up.
    Uptake,
    /// The same, and after the first month it fades as nitrogen is set free again.
    Fading,
    /// Slowly over the year, with this share of it after a month; the shares
    /// and the amount are independent of each other.
    Release(EffectParameter),
    /// The same, where both are at their ends together.
    Charge(EffectParameter),
    /// This share of it at once.
    Shown(EffectParameter),
    /// This share at once, and then less, as ammonium becomes nitrate.
    Turning(EffectParameter),
    /// This share of ammonium, as it becomes nitrate.
    Turned(EffectParameter),
}

/// A part of a change: what it comes to, and how.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Part {
    pub name: &'static str,
    /// % of the measured amount, or pH units: after a month, or with
    /// [`Growth::Release`] and [`Growth::Charge`] after a year.
    pub comes_to: Band,
    pub growth: Growth,
}

impl Part {
    /// What it comes to at a week.
    pub fn at(&self, week: f64) -> Band {
        match self.growth {
            Growth::AtOnce => self.comes_to,
            Growth::Fading => {
                let held = Part { growth: Growth::Uptake, ..*self }.at(week);
                let left = |days: f64| {
                    (-std::f64::consts::LN_2 * 7.0 * (week - A_MONTH).max(0.0) / days).exp()
                };
                // What is held longest is the strongest hold, at the low end.
                let fades = parameter(EffectParameter::NitrogenFades);
                Band::new(
                    held.low * left(fades.high),
                    held.likely * left(fades.likely),
                    held.high * left(fades.low),
                )
            }
            Growth::Uptake => {
                // The bounds of the speed are those of the change, whichever way it goes.
                let (slow, likely, fast) = (taken(week, 14.0), taken(week, 5.0), taken(week, 1.0));
                let Band { low, likely: middle, high } = self.comes_to;
                let low = low * if low < 0.0 { fast } else { slow };
                let high = high * if high > 0.0 { fast } else { slow };
                Band::new(low, middle * likely, high)
            }
            Growth::Release(in_month) => {
                product(&[self.comes_to, parameter(in_month).map(|share| grown(week, share))])
            }
            Growth::Charge(in_month) => {
                self.comes_to.times(parameter(in_month).map(|share| grown(week, share)))
            }
            Growth::Shown(shown) => self.comes_to.times(parameter(shown)),
            Growth::Turning(shown) => {
                self.comes_to.times(parameter(shown)).times(still_ammonium(week))
            }
            Growth::Turned(shown) => {
                let turned = still_ammonium(week).map(|left| 1.0 - left);
                self.comes_to.times(parameter(shown)).times(turned)
            }
        }
    }
}

/// How far an uptake has gone, as a share of what it is after a month, when it
/// slows to a third in so many days.
/// Source: our choice; published rates take hours to weeks.
fn taken(week: f64, days: f64) -> f64 {
    let after = |week: f64| 1.0 - (-7.0 * week / days).exp();
    (after(week) / after(A_MONTH)).min(1.0)
}

/// The share that is there after some weeks when `in_month` of it is there
/// after a month and all of it after a year: a power of time through both.
fn grown(week: f64, in_month: f64) -> f64 {
    if week <= 0.0 {
        return 0.0;
    }
    let power = in_month.clamp(1e-6, 1.0).ln() / (A_MONTH / 52.0).ln();
    // By ln and exp, which are there already: `powf` would bring a table of its own.
    (power * (week / 52.0).min(1.0).ln()).exp()
}

/// The share of the charge's ammonium that is not nitrate yet.
fn still_ammonium(week: f64) -> Band {
    parameter(EffectParameter::AmmoniumTurns).map(|days| (-7.0 * week / days).exp())
}

/// How far what biochar does to nutrients counts at so much of it, 0–1.
fn counts(percent: Band) -> Band {
    percent.map(|w| (w / FULL_HOLD_PERCENT).min(1.0))
}

/// The change of one property as its parts.
pub(crate) struct Laid {
    pub property: Property,
    pub label: &'static str,
    /// Per cent, or none for pH.
    pub unit: Unit,
    pub parts: Vec<Part>,
    pub grounds: Grounds,
}

impl Laid {
    /// The whole change at a week.
    pub fn at(&self, week: f64) -> Band {
        self.parts.iter().fold(Band::exactly(0.0), |sum, part| sum.plus(part.at(week)))
    }

    /// The direction of a change of this property in words.
    pub fn direction(&self, change: &Band) -> &'static str {
        if self.unit != Unit::None {
            direction(change)
        } else if change.low >= PH_NOISE {
            "up"
        } else if change.likely >= PH_NOISE {
            "up or unsure"
        } else {
            "unsure"
        }
    }
}

/// The effects on every property that was measured.
pub fn effects(survey: &Survey<'_>, path: Path, dose: &Dose, ledger: &Ledger) -> Vec<Effect> {
    laid_out(survey, path, dose, ledger)
        .into_iter()
        .map(|laid| {
            let band = laid.at(A_MONTH);
            let direction = laid.direction(&band);
            let Laid { property, label, unit, grounds, .. } = laid;
            let name = if property == Property::Ph { "ph" } else { property.name() };
            let change = Figure { name, label, band, unit, grounds };
            let with_trial = with_trial(&change, property, survey.case.trial.as_ref());
            Effect { property, direction, change, with_trial }
        })
        .collect()
}

/// The changes of every property that was measured, as their parts: the ledger
/// over time.
pub(crate) fn laid_out(survey: &Survey<'_>, path: Path, dose: &Dose, ledger: &Ledger) -> Vec<Laid> {
    let charged = matches!(path, Path::Charged | Path::ChargeFirst);
    let month = Month { survey, charged, dose, ledger };
    let mut laid = Vec::new();
    laid.extend(month.nitrogen(Property::NitrateN, Substance::NitrateN));
    laid.extend(month.nitrogen(Property::AmmoniumN, Substance::AmmoniumN));
    laid.extend(NUTRIENTS.iter().filter_map(|rule| month.nutrient(rule)));
    laid.extend(month.sodium());
    laid.extend(month.ph());
    laid.extend(month.capacity());
    laid
}

/// The changes that so much uncharged biochar would make, % by mass, whatever the plan would
/// spread.
pub(crate) fn laid_out_with(survey: &Survey<'_>, percent: Band) -> Vec<Laid> {
    let area = survey.bed.area.value;
    let mass = percent.map(|p| p / 100.0 * survey.bed.soil_per_m2().likely * area);
    let mut ledger = Ledger::default();
    ledger.enter(Bringer::Biochar, &own_content(survey, mass));
    let dose = Dose {
        area,
        area_known: true,
        depth: survey.bed.depth.value,
        share: 0.0,
        litres: 0.0,
        mass,
        percent,
        capped_by: Vec::new(),
        figures: Vec::new(),
    };
    laid_out(survey, Path::UnchargedAfterHarvest, &dose, &ledger)
}

/// What the biochar brings itself in a year, for the ledger.
pub(crate) fn own_content(survey: &Survey<'_>, mass: Band) -> Brings {
    let material = &survey.material;
    let mut brings = Brings::nothing();
    for rule in &NUTRIENTS {
        // 1 % of a kilogram is 10 g.
        let amount = mass.times((rule.total)(material)).map(|g| 10.0 * g);
        let works =
            product(&[mass, (rule.total)(material), rule.available(material, survey.water_ph())])
                .map(|g| g / 10.0);
        brings = brings.with(rule.substance, amount, works);
    }
    let sodium = mass.times(material.sodium).map(|g| 10.0 * g);
    let works = product(&[mass, material.sodium, parameter(EffectParameter::SodiumAvailable)])
        .map(|g| g / 10.0);
    let lime = mass.times(material.liming).map(|g| 10.0 * g);
    let limes = product(&[mass, material.liming, liming::works_in_first_year()]);
    brings.with(Substance::Sodium, sodium, works).with(
        Substance::Alkalinity,
        lime,
        limes.map(|g| 10.0 * g),
    )
}

/// What fresh biochar holds back of each nutrient in its first month, g for the
/// whole bed: what its charge should make up for.
pub(crate) fn held_back(survey: &Survey<'_>, dose: &Dose) -> Vec<(Substance, Band)> {
    let soil = survey.bed.soil_per_m2().likely * dose.area;
    // % of mg/kg in so many kg of soil.
    let grams = |percent: Band, measured: f64| {
        Band::new(-percent.high, -percent.likely, -percent.low)
            .map(|p| p.max(0.0) / 100.0 * measured * soil / 1000.0)
    };
    let measured = |p: Property| survey.soil.value(p).filter(|v| *v > 0.0);
    let nitrate = measured(Property::NitrateN).unwrap_or(USUAL_MINERAL_NITROGEN);
    let mut held = vec![(Substance::NitrateN, grams(tied_up(survey, dose), nitrate))];
    for rule in &NUTRIENTS {
        if let Some(value) = measured(rule.property) {
            held.push((rule.substance, grams(rule.holds(dose), value)));
        }
    }
    held
}

/// What biochar does to mineral nitrogen in its first month, % of what is there: it ties up,
/// and now and then sets free.
fn tied_up(survey: &Survey<'_>, dose: &Dose) -> Band {
    let feedstock = match survey.material.feedstock {
        Some(Feedstock::GrassOrStraw | Feedstock::Manure | Feedstock::Blend) => 1.2,
        _ => 0.8,
    };
    let bound = |w: f64, k: f64| -100.0 * feedstock * (1.0 - (-k * w).exp());
    let (w, k) = (dose.percent, parameter(EffectParameter::NitrogenBound));
    let freed = parameter(EffectParameter::NitrogenFreed).high * counts(w).likely;
    Band::new(bound(w.high, k.high), bound(w.likely, k.likely), freed)
}

struct Month<'a> {
    survey: &'a Survey<'a>,
    charged: bool,
    dose: &'a Dose,
    ledger: &'a Ledger,
}

impl Month<'_> {
    /// mg/kg measured, when there is enough to speak of a change in per cent.
    fn measured(&self, property: Property) -> Option<f64> {
        self.survey.soil.get(property)?.amount.exact().filter(|v| *v > 0.0)
    }

    /// Biochar takes the place of soil: −w ÷ (1 + w), in %.
    fn dilution(&self) -> Band {
        self.dose.percent.map(|w| -w / (1.0 + w / 100.0))
    }

    /// What some entries of an account add in a year, % of what is measured.
    fn adds(&self, of: Substance, measured: f64, counts: fn(Bringer) -> bool) -> Band {
        let soil = self.survey.bed.soil_per_m2().likely * self.dose.area;
        let entries = self.ledger.of(of).brought.iter().filter(|entry| counts(entry.by));
        entries
            .fold(Band::exactly(0.0), |sum, entry| sum.plus(entry.works))
            .map(|grams| 100_000.0 * grams / (soil * measured))
    }

    /// The biochar's own content; `in_month` of it in the first month.
    fn own(&self, of: Substance, in_month: EffectParameter, measured: f64) -> Part {
        let comes_to = self.adds(of, measured, |by| by == Bringer::Biochar);
        Part { name: "the biochar's own content", comes_to, growth: Growth::Release(in_month) }
    }

    /// What the charge brings; `None` where nothing is charged.
    fn charge(&self, of: Substance, growth: Growth, measured: f64) -> Option<Part> {
        let comes_to = self.adds(of, measured, |by| matches!(by, Bringer::Charge(_)));
        let part = Part { name: "brought by the charge", comes_to, growth };
        (comes_to.high > 0.0).then_some(part)
    }

    /// The share of the fresh biochar's hold that the charge has left unfilled, 0–1.
    fn hold_left(&self, accounts: &[Substance]) -> Band {
        let charge = |e: &Entry| matches!(e.by, Bringer::Charge(_));
        let known = self.ledger.accounts.iter().any(|a| a.brought.iter().any(charge));
        if self.charged && !known {
            // Bought charged: nobody knows how full it is.
            return Band::new(0.0, 0.5, 1.0);
        }
        let all = |of: &dyn Fn(Substance) -> f64| accounts.iter().map(|s| of(*s)).sum::<f64>();
        let held = all(&|s| self.ledger.of(s).held.likely);
        let brings = |s: Substance| {
            let entries = self.ledger.of(s).brought.iter();
            entries.filter(|e| matches!(e.by, Bringer::Charge(_))).map(|e| e.works.likely).sum()
        };
        let filled = if held > 0.0 { (all(&brings) / held).min(1.0) } else { 0.0 };
        // A charge fills only a part for certain.
        Band::new((1.0 - filled).max(0.0), 1.0 - filled, 1.0 - filled / 2.0)
    }

    fn dilutes(&self, dilution: Band) -> Part {
        Part { name: "dilution", comes_to: dilution, growth: Growth::AtOnce }
    }

    fn grounds(&self, rule: &str, measured: f64, property: Property, own: &[Citation]) -> Grounds {
        let unit = self.survey.soil.get(property).map_or("", |m| m.unit.symbol());
        let name = match property {
            Property::Ph => self.survey.water_ph_name(),
            _ => property.label(),
        };
        let grounds = Grounds::new(rule, own)
            .input(name, format!("{} {unit}", significant(measured, 3)).trim_end())
            .input(
                "biochar in the soil, by mass",
                shown(&self.dose.percent, Unit::Percent, Measures::Metric),
            )
            .assume("From mixing in to a year later, before plants and rain have taken anything.");
        self.survey.material.explain(grounds, &[])
    }

    fn nitrogen(&self, property: Property, substance: Substance) -> Option<Laid> {
        let measured = self.measured(property)?;
        let left = self.hold_left(&NITROGEN);
        let tied = tied_up(self.survey, self.dose);
        let held = Band::new(tied.low * left.high, tied.likely * left.likely, tied.high);
        let dilution = self.dilution();
        let mut parts = vec![
            Part { name: "held by the biochar", comes_to: held, growth: Growth::Fading },
            self.dilutes(Band::new(dilution.low, dilution.likely, 0.0)),
        ];
        let shown = EffectParameter::NitrogenInExtract;
        if substance == Substance::AmmoniumN {
            parts.extend(self.charge(Substance::AmmoniumN, Growth::Turning(shown), measured));
        } else {
            parts.extend(self.charge(substance, Growth::Shown(shown), measured));
            let turned = self.charge(Substance::AmmoniumN, Growth::Turned(shown), measured);
            parts
                .extend(turned.map(|part| Part { name: "ammonium of the charge, turned", ..part }));
        }
        let mut sources = rests_on(EffectParameter::NitrogenBound).to_vec();
        sources.extend(rests_on(EffectParameter::NitrogenFreed));
        let grounds = self
            .grounds(
                "tied up: 1 − e^(−k × % by mass), k = 0.104 (0–0.3), × 0.8 for wood and 1.2 for \
                 straw; at the high end up to 10 % more; less what the charge has filled, plus what \
                 it brings. Ammonium turns to nitrate within weeks",
                measured,
                property,
                &sources,
            )
            .assume("After some two months plants and rain have taken over: later weeks are those of bare soil.");
        let label = property.label();
        Some(Laid { property, label, unit: Unit::Percent, parts, grounds })
    }

    fn nutrient(&self, rule: &Rule) -> Option<Laid> {
        let measured = self.measured(rule.property)?;
        let left = self.hold_left(&[rule.substance]);
        let holds = rule.holds(self.dose);
        let held = Band::new(
            holds.low * left.high,
            holds.likely * left.likely,
            if holds.high > 0.0 { holds.high } else { 0.0 },
        );
        let mut parts = vec![
            Part { name: "held by the biochar", comes_to: held, growth: Growth::Uptake },
            self.dilutes(self.dilution()),
            self.own(rule.substance, rule.in_month, measured),
        ];
        parts.extend(self.charge(rule.substance, rule.charge, measured));
        let grounds = self.grounds(
            "held by fresh biochar (less what the charge has filled) + dilution + the biochar's \
             own available content in the first month + what the charge brings",
            measured,
            rule.property,
            &rule.sources(&self.survey.material),
        );
        let (property, label) = (rule.property, rule.label);
        Some(Laid { property, label, unit: Unit::Percent, parts, grounds })
    }

    fn sodium(&self) -> Option<Laid> {
        let measured = self.measured(Property::Sodium)?;
        // At most, the biochar's sites take on or give up sodium in the soil's
        // own proportion: sites ÷ exchange capacity.
        let soil_cec = self.survey.chemistry.cec.map_or(10.0, |c| c.likely).max(1.0);
        let moved = self.dose.percent.likely * self.survey.material.cec.likely / soil_cec;
        let dilution = self.dilution();
        let mut parts = vec![
            self.own(Substance::Sodium, EffectParameter::SodiumFirstMonth, measured),
            Part {
                name: "exchanged with the biochar",
                comes_to: Band::new(-moved, 0.0, moved),
                growth: Growth::AtOnce,
            },
            // Dilution counts at the low end only: sites that fill with calcium and
            // potassium push sodium out, which about makes up for it.
            self.dilutes(Band::new(dilution.low, 0.0, 0.0)),
        ];
        parts.extend(self.charge(
            Substance::Sodium,
            Growth::Charge(EffectParameter::ChargeFirstMonth),
            measured,
        ));
        let mut grounds = self.grounds(
            "the biochar's own sodium + dilution ± what its exchange sites can take or give + \
             what the charge brings",
            measured,
            Property::Sodium,
            &[PHREEQC_EXCHANGE.derived(), COMMON_PRACTICE.unsourced()],
        );
        if self.survey.chemistry.cec.is_none() {
            grounds = grounds.assume("The soil's exchange capacity is 10 meq/100 g.");
        }
        let unit = Unit::Percent;
        Some(Laid { property: Property::Sodium, label: "sodium", unit, parts, grounds })
    }

    fn ph(&self) -> Option<Laid> {
        let ph = self.survey.water_ph()?;
        let buffering = liming::buffering(self.survey);
        let material = &self.survey.material;
        let change = liming::rise(Some(ph), self.dose.percent, material, &buffering);
        let mut grounds = self.grounds(
            "20 × g biochar per kg soil × liming value ÷ buffering of soil and biochar (mmol(c)/kg \
             per pH), no higher than the biochar's own pH or 8.3",
            ph,
            Property::Ph,
            &liming::sources(&buffering),
        );
        grounds =
            material.explain(grounds, &[("liming value", material.liming, Unit::Percent)]).input(
                format!("buffering ({})", buffering.from),
                shown(&buffering.band, Unit::None, Measures::Metric),
            );
        grounds.inputs.extend(buffering.inputs);
        grounds.assumed.dedup();
        grounds.sources.dedup();
        let parts = vec![Part { name: "liming", comes_to: change, growth: Growth::Uptake }];
        Some(Laid { property: Property::Ph, label: "pH", unit: Unit::None, parts, grounds })
    }

    fn capacity(&self) -> Option<Laid> {
        let measured = self.measured(Property::Cec)?;
        let buffering = liming::buffering(self.survey);
        let (ph, material) = (self.survey.water_ph(), &self.survey.material);
        let sites = NewSites::of(measured, ph, self.dose.percent, material, &buffering);
        let percent = |meq: Band| meq.map(|meq| 100.0 * meq / measured);
        let otherwise = parameter(EffectParameter::CapacityOtherwise);
        let counts = counts(self.dose.percent).likely;
        let parts = vec![
            Part {
                name: "sites that come with the biochar",
                comes_to: percent(sites.own),
                growth: Growth::AtOnce,
            },
            Part {
                name: "sites that the pH frees",
                comes_to: percent(sites.freed),
                growth: Growth::Uptake,
            },
            Part {
                name: "what else trials found",
                comes_to: otherwise.map(|percent| percent * counts),
                growth: Growth::AtOnce,
            },
        ];
        let mut sources = rests_on(EffectParameter::FreedSites).to_vec();
        sources.extend(rests_on(EffectParameter::CapacityOtherwise));
        sources.extend(rests_on(EffectParameter::CharSitesByPh));
        let mut grounds = self.grounds(
            "the biochar's sites in the place of the soil's, by the pH + as many of the soil's own \
             as the higher pH frees: 0.9 × buffering × rise of pH; up to 8 % either way besides, as \
             trials found",
            measured,
            Property::Cec,
            &sources,
        );
        grounds = material.explain(grounds, &[("of the biochar", material.cec, Unit::MeqPer100g)]);
        grounds.assumed.dedup();
        grounds.sources.dedup();
        let label = Property::Cec.label();
        Some(Laid { property: Property::Cec, label, unit: Unit::Percent, parts, grounds })
    }
}

/// The direction of a change in words. A band that holds zero is never sure.
pub fn direction(change: &Band) -> &'static str {
    let slight = (change.high - change.low) * 0.02;
    if change.high < 0.0 {
        "down"
    } else if change.low > 0.0 {
        "up"
    } else if change.likely < -slight {
        "down or unsure"
    } else if change.likely > slight {
        "up or unsure"
    } else {
        "unsure"
    }
}
