//! What biochar should do to each property in its first month, with bounds
//! that include no change wherever the trials do.

use crate::biochar::charging::{Recipe, TARGET};
use crate::biochar::liming;
use crate::biochar::rate::Dose;
use crate::biochar::spread::product;
use crate::biochar::{Effect, Material, Path, Situation};
use crate::case::Feedstock;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::Property;
use crate::sources::{
    ANGST_SOHI_2013, BIEDERMAN_2013, COMMON_PRACTICE, Citation, HAILEGNAW_2019, ILAN_2020,
    NGUYEN_2017, OUR_CHOICE, PHREEQC_EXCHANGE,
};

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

/// Biochar in the soil, % by mass, from which its hold on nutrients counts in
/// full. Source: our choice.
const FULL_HOLD_PERCENT: f64 = 0.5;

/// A change of pH that a repeat test could show by chance.
/// Source: common practice, no source.
const PH_NOISE: f64 = 0.2;

/// How one nutrient is treated.
struct Rule {
    property: Property,
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
        label: "phosphorus",
        held: Band { low: -20.0, likely: -5.0, high: 10.0 },
        available: Band { low: 5.0, likely: 10.0, high: 20.0 },
        total: |m| m.phosphorus,
        sources: &[OUR_CHOICE.unsourced(), ANGST_SOHI_2013.opened()],
    },
    Rule {
        property: Property::Potassium,
        label: "potassium",
        held: Band { low: -10.0, likely: -5.0, high: 0.0 },
        available: Band { low: 20.0, likely: 45.0, high: 80.0 },
        total: |m| m.potassium,
        sources: &[COMMON_PRACTICE.unsourced(), OUR_CHOICE.unsourced(), ANGST_SOHI_2013.opened()],
    },
    Rule {
        property: Property::Calcium,
        label: "calcium",
        held: Band { low: -11.0, likely: -2.0, high: 0.0 },
        available: Band { low: 5.0, likely: 10.0, high: 25.0 },
        total: |m| m.calcium,
        sources: &[HAILEGNAW_2019.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        property: Property::Magnesium,
        label: "magnesium",
        held: Band { low: -11.0, likely: -2.0, high: 0.0 },
        available: Band { low: 5.0, likely: 12.0, high: 27.0 },
        total: |m| m.magnesium,
        sources: &[HAILEGNAW_2019.derived(), OUR_CHOICE.unsourced()],
    },
    Rule {
        property: Property::Sulfur,
        label: "sulfur",
        held: Band { low: -5.0, likely: -3.0, high: 5.0 },
        available: Band { low: 10.0, likely: 30.0, high: 60.0 },
        total: |m| m.sulfur,
        sources: &[COMMON_PRACTICE.unsourced(), OUR_CHOICE.unsourced()],
    },
];

/// The week that the effects of the plan stand for.
/// Our choice.
pub(super) const A_MONTH: f64 = 4.0;

/// Days in which half of the nitrogen that biochar tied up is free again.
/// Source: our choice; the tie-up is strongest in the first months, and trials
/// of a year still found some.
const FADES_IN: Band = Band { low: 60.0, likely: 120.0, high: 365.0 };

/// How a part of a change comes about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Growth {
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
pub(super) struct Part {
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
pub(super) struct Laid {
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
pub fn effects(
    situation: &Situation<'_>,
    path: Path,
    dose: &Dose,
    material: &Material,
    recipe: Option<&Recipe>,
) -> Vec<Effect> {
    laid_out(situation, path, dose, material, recipe)
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

/// The changes of every property that was measured, as their parts.
pub(super) fn laid_out(
    situation: &Situation<'_>,
    path: Path,
    dose: &Dose,
    material: &Material,
    recipe: Option<&Recipe>,
) -> Vec<Laid> {
    let month = Month { situation, dose, material, charged: Charge::of(path, recipe) };
    let mut laid = Vec::new();
    laid.extend(month.nitrogen(Property::NitrateN, "nitrate-N"));
    laid.extend(month.nitrogen(Property::AmmoniumN, "ammonium-N"));
    laid.extend(NUTRIENTS.iter().filter_map(|rule| month.nutrient(rule)));
    laid.extend(month.sodium());
    laid.extend(month.ph());
    laid
}

/// How full the biochar goes in.
struct Charge {
    charged: bool,
    /// Nitrogen it carries, g per kg.
    load: Band,
}

impl Charge {
    fn of(path: Path, recipe: Option<&Recipe>) -> Charge {
        let charged = matches!(path, Path::Charged | Path::ChargeFirst);
        let load = match recipe {
            Some(recipe) if charged => recipe.reached.map(|r| r.min(1.0) * TARGET.likely),
            None if charged => Band::new(0.0, TARGET.likely / 2.0, TARGET.high),
            _ => Band::exactly(0.0),
        };
        Charge { charged, load }
    }

    /// The share of the fresh biochar's hold that is left, 0–1.
    fn hold_left(&self) -> Band {
        self.load.map(|load| (1.0 - load / TARGET.likely).max(0.0))
    }
}

struct Month<'a> {
    situation: &'a Situation<'a>,
    dose: &'a Dose,
    material: &'a Material,
    charged: Charge,
}

impl Month<'_> {
    /// mg/kg measured, when there is enough to speak of a change in per cent.
    fn measured(&self, property: Property) -> Option<f64> {
        self.situation.soil.get(property)?.amount.exact().filter(|v| *v > 0.0)
    }

    /// Biochar takes the place of soil: −w ÷ (1 + w), in %.
    fn dilution(&self) -> Band {
        self.dose.percent.map(|w| -w / (1.0 + w / 100.0))
    }

    /// What a content of the biochar (%) and its available share (%) add in a
    /// year, % of what is measured; `in_month` of it in the first month.
    fn own(&self, total: Band, available: Band, in_month: Band, measured: f64) -> Part {
        // w % × total % × available % = mg per kg of soil.
        let comes_to =
            product(&[self.dose.percent, available, total]).map(|x| 100.0 * x / measured);
        Part { name: "the biochar's own content", comes_to, growth: Growth::Release(in_month) }
    }

    fn dilutes(&self, dilution: Band) -> Part {
        Part { name: "dilution", comes_to: dilution, growth: Growth::AtOnce }
    }

    fn grounds(&self, rule: &str, measured: f64, property: Property, own: &[Citation]) -> Grounds {
        let unit = self.situation.soil.get(property).map_or("", |m| m.unit.symbol());
        let name = match property {
            Property::Ph => liming::water_ph_name(self.situation),
            _ => property.label(),
        };
        let mut grounds = Grounds::new(rule, own)
            .input(name, format!("{} {unit}", significant(measured, 3)).trim_end())
            .input(
                "biochar in the soil, by mass",
                shown(&self.dose.percent, Unit::Percent, Measures::Metric),
            )
            .assume("A month after mixing in, before plants have taken anything.");
        if self.charged.charged {
            grounds = grounds.input(
                "nitrogen the biochar carries, g per kg",
                shown(&self.charged.load, Unit::None, Measures::Metric),
            );
        }
        self.material.explain(grounds, &[])
    }

    fn nitrogen(&self, property: Property, label: &'static str) -> Option<Laid> {
        let measured = self.measured(property)?;
        let feedstock = match self.material.feedstock {
            Some(Feedstock::GrassOrStraw | Feedstock::Manure) => 1.2,
            _ => 0.8,
        };
        let bound = |w: f64, k: f64| -100.0 * feedstock * (1.0 - (-k * w).exp());
        let (w, k) = (self.dose.percent, NITROGEN_BOUND_PER_PERCENT);
        let left = self.charged.hold_left();
        let dilution = self.dilution();
        let held = Band::new(
            bound(w.high, k.high) * left.high,
            bound(w.likely, k.likely) * left.likely,
            // Reviews of field data found no change: zero stays inside.
            0.0,
        );
        let mut parts = vec![
            Part { name: "held by the biochar", comes_to: held, growth: Growth::Fading },
            self.dilutes(Band::new(dilution.low, dilution.likely, 0.0)),
        ];
        if property == Property::NitrateN && self.charged.load.high > 0.0 {
            // The charge's own mineral nitrogen: a third of it shows in an extract after a
            // month; perhaps none ever, perhaps all at once.
            let per_load = |w: f64, load: f64| w * 10.0 * load / measured * 100.0;
            let load = self.charged.load;
            let comes_to =
                Band::new(0.0, per_load(w.likely, load.likely), per_load(w.high, load.high));
            let in_month = Band::new(0.0, 1.0 / 3.0, 1.0);
            parts.push(Part {
                name: "brought by the charge",
                comes_to,
                growth: Growth::Charge(in_month),
            });
        }
        let grounds = self.grounds(
            "tied up: 1 − e^(−k × % by mass), k = 0.104 (0–0.16), × 0.8 for wood and 1.2 for \
                 straw; less what the charge has filled, plus what it brings",
            measured,
            property,
            &[ILAN_2020.derived(), NGUYEN_2017.second_hand(), BIEDERMAN_2013.opened()],
        );
        Some(Laid { property, label, unit: Unit::Percent, parts, grounds })
    }

    fn nutrient(&self, rule: &Rule) -> Option<Laid> {
        let measured = self.measured(rule.property)?;
        let left = self.charged.hold_left();
        let own = self.own((rule.total)(self.material), rule.available, FIRST_MONTH, measured);
        let dilution = self.dilution();
        let dose = self.dose.percent.map(|w| (w / FULL_HOLD_PERCENT).min(1.0));
        let held = Band::new(
            rule.held.low * left.high * dose.high,
            rule.held.likely * left.likely * dose.likely,
            rule.held.high.max(0.0) * dose.high,
        );
        let parts = vec![
            Part { name: "held by the biochar", comes_to: held, growth: Growth::Uptake },
            self.dilutes(dilution),
            own,
        ];
        let grounds = self.grounds(
            "held by fresh biochar (less what the charge has filled) + dilution + the biochar's \
             own available content in the first month",
            measured,
            rule.property,
            rule.sources,
        );
        let (property, label) = (rule.property, rule.label);
        Some(Laid { property, label, unit: Unit::Percent, parts, grounds })
    }

    fn sodium(&self) -> Option<Laid> {
        let measured = self.measured(Property::Sodium)?;
        let available = Band::new(20.0, 45.0, 80.0);
        let own = self.own(self.material.sodium, available, SODIUM_FIRST_MONTH, measured);
        // At most, the biochar's sites take on or give up sodium in the soil's
        // own proportion: sites ÷ exchange capacity.
        let soil_cec = self.situation.chemistry.cec.map_or(10.0, |c| c.likely).max(1.0);
        let moved = self.dose.percent.likely * self.material.cec.likely / soil_cec;
        let dilution = self.dilution();
        let parts = vec![
            own,
            Part {
                name: "exchanged with the biochar",
                comes_to: Band::new(-moved, 0.0, moved),
                growth: Growth::AtOnce,
            },
            // Dilution counts at the low end only: sites that fill with calcium and
            // potassium push sodium out, which about makes up for it.
            self.dilutes(Band::new(dilution.low, 0.0, 0.0)),
        ];
        let mut grounds = self.grounds(
            "the biochar's own sodium + dilution ± what its exchange sites can take or give",
            measured,
            Property::Sodium,
            &[PHREEQC_EXCHANGE.derived(), COMMON_PRACTICE.unsourced()],
        );
        if self.situation.chemistry.cec.is_none() {
            grounds = grounds.assume("The soil's exchange capacity is 10 meq/100 g.");
        }
        let unit = Unit::Percent;
        Some(Laid { property: Property::Sodium, label: "sodium", unit, parts, grounds })
    }

    fn ph(&self) -> Option<Laid> {
        let ph = liming::water_ph(self.situation)?;
        let buffering = liming::buffering(self.situation);
        let change = liming::rise(Some(ph), self.dose.percent, self.material, &buffering);
        let mut grounds = self.grounds(
            "20 × g biochar per kg soil × liming value ÷ buffering (mmol(c)/kg per pH), no higher \
             than the biochar's own pH or 8.3",
            ph,
            Property::Ph,
            &liming::sources(&buffering),
        );
        grounds = self
            .material
            .explain(grounds, &[("liming value", self.material.liming, Unit::Percent)])
            .input(
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
