//! What biochar should do to each property in its first month, with bounds
//! that include no change wherever the trials do.

use crate::plan::rate::Dose;
use crate::quantity::product;
use crate::survey::buffering as liming;
use serde::Serialize;

use crate::bag::Material;
use crate::case::Feedstock;
use crate::plan::Path;
use crate::plan::ledger::{Bringer, Brings, Entry, Ledger, NITROGEN, Substance};
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::Property;
use crate::sources::{
    ANGST_SOHI_2013, BIEDERMAN_2013, COMMON_PRACTICE, Citation, HAILEGNAW_2019, ILAN_2020,
    NGUYEN_2017, OUR_CHOICE, PHREEQC_EXCHANGE,
};
use crate::survey::Survey;

/// What biochar should do to one property in the first month.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Effect {
    /// The property.
    pub property: Property,
    /// The change: % of the extractable amount, or pH units.
    pub change: Figure,
    /// The direction in words: `down`, `up`, `down or unsure`, `up or unsure`, `unsure`.
    pub direction: &'static str,
}

/// Mineral nitrogen that 1 % biochar by mass ties up, as the rate of an
/// exponential; zero at the low end, because reviews of field data found no
/// change.
/// Source: fitted to −6, −9 and −19 % at 0.5, 1 and 2 % (derived).
const NITROGEN_BOUND_PER_PERCENT: Band = Band { low: 0.0, likely: 0.104, high: 0.16 };

/// Share of the biochar's own first-year nutrients that comes in the first
/// month. Source: our choice.
const FIRST_MONTH: Band = Band { low: 0.1, likely: 0.3, high: 1.0 };

/// The same for sodium, whose salts dissolve first. Source: our choice.
const SODIUM_FIRST_MONTH: Band = Band { low: 0.3, likely: 0.6, high: 1.0 };

/// Share of the biochar's sodium that is free in a year, %. Source: our choice.
const SODIUM_AVAILABLE: Band = Band { low: 20.0, likely: 45.0, high: 80.0 };

/// Of the charge's nitrogen a third shows in an extract after a month; perhaps none ever,
/// perhaps all at once. Source: Kammann 2015 (opened), our choice.
const NITROGEN_IN_EXTRACT: Band = Band { low: 0.01, likely: 1.0 / 3.0, high: 1.0 };

/// Of what else the charge brings most is free within a month. Source: our choice.
const CHARGE_FIRST_MONTH: Band = Band { low: 0.3, likely: 0.7, high: 1.0 };

/// Mineral nitrogen where nobody measured it, mg/kg. Our choice: a garden in spring.
const USUAL_MINERAL_NITROGEN: f64 = 15.0;

/// Biochar in the soil, % by mass, from which its hold on nutrients counts in
/// full. Source: our choice.
const FULL_HOLD_PERCENT: f64 = 0.5;

/// A change of pH that a repeat test could show by chance.
/// Source: common practice, no source.
const PH_NOISE: f64 = 0.2;

/// How one nutrient is treated.
struct Rule {
    property: Property,
    substance: Substance,
    label: &'static str,
    /// Held by dry, fresh biochar beside dilution, % of what is there.
    held: Band,
    /// Share of the biochar's total that plants can have in a year.
    available: Band,
    total: fn(&Material) -> Band,
    sources: &'static [Citation],
}

/// Phosphorus, potassium, calcium, magnesium and sulfur.
/// Source: available shares are our choice within Angst & Sohi 2013; what is
/// held is our choice, for calcium within Hailegnaw et al. 2019.
static NUTRIENTS: [Rule; 5] = [
    Rule {
        property: Property::Phosphorus,
        substance: Substance::Phosphorus,
        label: "phosphorus",
        held: Band { low: -20.0, likely: -5.0, high: 10.0 },
        available: Band { low: 5.0, likely: 10.0, high: 20.0 },
        total: |m| m.phosphorus,
        sources: &[OUR_CHOICE.unsourced(), ANGST_SOHI_2013.opened()],
    },
    Rule {
        property: Property::Potassium,
        substance: Substance::Potassium,
        label: "potassium",
        held: Band { low: -10.0, likely: -5.0, high: 0.0 },
        available: Band { low: 20.0, likely: 45.0, high: 80.0 },
        total: |m| m.potassium,
        sources: &[COMMON_PRACTICE.unsourced(), OUR_CHOICE.unsourced(), ANGST_SOHI_2013.opened()],
    },
    Rule {
        property: Property::Calcium,
        substance: Substance::Calcium,
        label: "calcium",
        held: Band { low: -11.0, likely: -2.0, high: 0.0 },
        available: Band { low: 5.0, likely: 10.0, high: 25.0 },
        total: |m| m.calcium,
        sources: &[HAILEGNAW_2019.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        property: Property::Magnesium,
        substance: Substance::Magnesium,
        label: "magnesium",
        held: Band { low: -11.0, likely: -2.0, high: 0.0 },
        available: Band { low: 5.0, likely: 12.0, high: 27.0 },
        total: |m| m.magnesium,
        sources: &[HAILEGNAW_2019.derived(), OUR_CHOICE.unsourced()],
    },
    Rule {
        property: Property::Sulfur,
        substance: Substance::Sulfur,
        label: "sulfur",
        held: Band { low: -5.0, likely: -3.0, high: 5.0 },
        available: Band { low: 10.0, likely: 30.0, high: 60.0 },
        total: |m| m.sulfur,
        sources: &[COMMON_PRACTICE.unsourced(), OUR_CHOICE.unsourced()],
    },
];

impl Rule {
    /// What fresh biochar of this dose holds, % of what is there.
    fn holds(&self, dose: &Dose) -> Band {
        let counts = dose.percent.map(|w| (w / FULL_HOLD_PERCENT).min(1.0));
        Band::new(
            self.held.low * counts.high,
            self.held.likely * counts.likely,
            self.held.high.max(0.0) * counts.high,
        )
    }
}

/// The week that the effects of the plan stand for.
/// Our choice.
pub(crate) const A_MONTH: f64 = 4.0;

/// Days in which half of the nitrogen that biochar tied up is free again.
/// Source: our choice; the tie-up is strongest in the first months, and trials
/// of a year still found some.
const FADES_IN: Band = Band { low: 60.0, likely: 120.0, high: 365.0 };

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
    Release(Band),
    /// The same, where both are at their ends together.
    Charge(Band),
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
                Band::new(
                    held.low * left(FADES_IN.high),
                    held.likely * left(FADES_IN.likely),
                    held.high * left(FADES_IN.low),
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
                product(&[self.comes_to, in_month.map(|share| grown(week, share))])
            }
            Growth::Charge(in_month) => {
                self.comes_to.times(in_month.map(|share| grown(week, share)))
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
            Effect { property, direction, change: Figure { name, label, band, unit, grounds } }
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
    laid
}

/// What the biochar brings itself in a year, for the ledger.
pub(crate) fn own_content(material: &Material, mass: Band) -> Brings {
    let mut brings = Brings::nothing();
    for rule in &NUTRIENTS {
        // 1 % of a kilogram is 10 g.
        let amount = mass.times((rule.total)(material)).map(|g| 10.0 * g);
        let works = product(&[mass, (rule.total)(material), rule.available]).map(|g| g / 10.0);
        brings = brings.with(rule.substance, amount, works);
    }
    let sodium = mass.times(material.sodium).map(|g| 10.0 * g);
    let works = product(&[mass, material.sodium, SODIUM_AVAILABLE]).map(|g| g / 10.0);
    let lime = mass.times(material.liming).map(|g| 10.0 * g);
    let limes = product(&[mass, material.liming, liming::WORKS_IN_FIRST_YEAR]);
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

/// Mineral nitrogen that biochar ties up, % of what is there, less than nothing.
fn tied_up(survey: &Survey<'_>, dose: &Dose) -> Band {
    let feedstock = match survey.material.feedstock {
        Some(Feedstock::GrassOrStraw | Feedstock::Manure) => 1.2,
        _ => 0.8,
    };
    let bound = |w: f64, k: f64| -100.0 * feedstock * (1.0 - (-k * w).exp());
    let (w, k) = (dose.percent, NITROGEN_BOUND_PER_PERCENT);
    // Reviews of field data found no change: zero stays inside.
    Band::new(bound(w.high, k.high), bound(w.likely, k.likely), 0.0)
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
    fn own(&self, of: Substance, in_month: Band, measured: f64) -> Part {
        let comes_to = self.adds(of, measured, |by| by == Bringer::Biochar);
        Part { name: "the biochar's own content", comes_to, growth: Growth::Release(in_month) }
    }

    /// What the charge brings; `None` where nothing is charged.
    fn charge(&self, of: Substance, in_month: Band, measured: f64) -> Option<Part> {
        let comes_to = self.adds(of, measured, |by| matches!(by, Bringer::Charge(_)));
        let part =
            Part { name: "brought by the charge", comes_to, growth: Growth::Charge(in_month) };
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
        let held = Band::new(tied.low * left.high, tied.likely * left.likely, 0.0);
        let dilution = self.dilution();
        let mut parts = vec![
            Part { name: "held by the biochar", comes_to: held, growth: Growth::Fading },
            self.dilutes(Band::new(dilution.low, dilution.likely, 0.0)),
        ];
        parts.extend(self.charge(substance, NITROGEN_IN_EXTRACT, measured));
        let grounds = self.grounds(
            "tied up: 1 − e^(−k × % by mass), k = 0.104 (0–0.16), × 0.8 for wood and 1.2 for \
                 straw; less what the charge has filled, plus what it brings",
            measured,
            property,
            &[ILAN_2020.derived(), NGUYEN_2017.second_hand(), BIEDERMAN_2013.opened()],
        );
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
            self.own(rule.substance, FIRST_MONTH, measured),
        ];
        parts.extend(self.charge(rule.substance, CHARGE_FIRST_MONTH, measured));
        let grounds = self.grounds(
            "held by fresh biochar (less what the charge has filled) + dilution + the biochar's \
             own available content in the first month + what the charge brings",
            measured,
            rule.property,
            rule.sources,
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
            self.own(Substance::Sodium, SODIUM_FIRST_MONTH, measured),
            Part {
                name: "exchanged with the biochar",
                comes_to: Band::new(-moved, 0.0, moved),
                growth: Growth::AtOnce,
            },
            // Dilution counts at the low end only: sites that fill with calcium and
            // potassium push sodium out, which about makes up for it.
            self.dilutes(Band::new(dilution.low, 0.0, 0.0)),
        ];
        parts.extend(self.charge(Substance::Sodium, CHARGE_FIRST_MONTH, measured));
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
            "20 × g biochar per kg soil × liming value ÷ buffering (mmol(c)/kg per pH), no higher \
             than the biochar's own pH or 8.3",
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
