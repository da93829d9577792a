//! Charging in detail: each nutrient wanted, what each source brings, how much
//! of each to take, the salts, the days, the waits, what is left over, and the
//! one recipe, in buckets.

pub mod balance;
pub mod intervals;
mod label;
mod leftovers;
mod measure;
pub mod recipe;
pub mod salts;
pub mod sources;
mod supplies;
pub mod targets;

pub use supplies::{taken_up, water_to_wet};

use crate::plan::charge::balance::{Bounds, Part, Room, fill};
use crate::plan::charge::intervals::{Interval, RAW_TOUCHING};
use crate::plan::charge::label::{known, own_label};
use crate::plan::charge::leftovers::{Soak, leftovers};
use crate::plan::charge::measure::Measuring;
use crate::plan::charge::recipe::{Dish, steps};
use crate::plan::charge::sources::{
    Content, NUTRIENTS, Nutrient, analysis, content, holds_ammonium, is_weighed, label,
};
use crate::plan::charge::supplies::{Form, UPTAKE_PER_HOUR, choose, supply};
use crate::plan::charge::targets::{Target, targets};
use crate::plan::ledger::{Bringer, Ledger};
use crate::plan::rate::Dose;
use crate::ranges::Level;
use crate::survey::Survey;
use serde::Serialize;

use crate::case::ChargeSource;
use crate::plan::cautions::Caution;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::Property;
use crate::sources::{
    ARITHMETIC, COMMON_PRACTICE, HYDROCHAR_KINETICS, IPPOLITO_2020, OUR_CHOICE, SUANSA_2021,
};

/// The most of what is mixed in, litres for one litre of biochar.
/// Our choice.
pub const MOST_SOLID: f64 = 2.0;

/// The most wood ash on 1 m² in a year, kg: 10 lb/1000 sq ft.
/// Source: common practice of extension offices (from memory).
const MOST_ASH: f64 = 0.049;

/// From this pH on, no ash: it limes. Our choice.
const ASH_UP_TO_PH: f64 = 6.8;

/// Phosphorus for one of nitrogen up to which a source counts as nearly free of it.
/// Our choice: urine has 0.09.
const LITTLE_PHOSPHORUS: f64 = 0.12;

/// An amount of a source and what it brings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Used {
    /// The source.
    pub source: ChargeSource,
    /// What a reader calls it.
    pub label: &'static str,
    /// Litres, or kilograms of what is weighed.
    pub amount: f64,
    /// Whether it is weighed.
    pub weighed: bool,
    /// g of each nutrient, in the order of [`Nutrient::ALL`]; nitrogen is what is mineral.
    pub brings: [Band; NUTRIENTS],
    /// Share of the nitrogen wanted, %.
    pub nitrogen_reached: Band,
    /// What it rests on.
    pub grounds: Grounds,
}

/// One nutrient: wanted, brought, and the share reached.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Share {
    /// The nutrient.
    pub nutrient: Nutrient,
    /// g wanted.
    pub wanted: Band,
    /// g brought.
    pub brought: Band,
    /// % of what is wanted; `None` where none is wanted.
    pub reached: Option<Band>,
    /// The most it may be, g, where the soil has too much.
    pub at_most: Option<f64>,
    /// What it means, in a sentence or two.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// A source with little or no phosphorus, and why it stands where it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WithoutPhosphorus {
    /// The source.
    pub source: ChargeSource,
    /// g of phosphorus for 1 g of nitrogen.
    pub phosphorus: f64,
    /// How much of it reaches the nitrogen wanted, and what to mind.
    pub text: String,
}

/// Charging in detail.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChargePlan {
    /// What the charge does, in a few sentences.
    pub text: String,
    /// How long it takes, days.
    pub days: Band,
    /// The sources used and how much of each.
    pub used: Vec<Used>,
    /// Every source by itself, as much as helps.
    pub alone: Vec<Used>,
    /// Each nutrient.
    pub shares: Vec<Share>,
    /// Water, exchange sites, days, salts.
    pub figures: Vec<Figure>,
    /// Where phosphorus is in surplus: sources with little of it, the best first.
    pub without_phosphorus: Vec<WithoutPhosphorus>,
    /// The recipe.
    pub steps: Vec<String>,
    /// What is left over and where it may go.
    pub leftovers: Vec<Caution>,
    /// How long to wait before the harvest.
    pub intervals: Vec<Interval>,
    /// What can hurt.
    pub cautions: Vec<Caution>,
}

impl ChargePlan {
    /// What it is charged with.
    pub(crate) fn sources(&self) -> Vec<ChargeSource> {
        self.used.iter().map(|used| used.source).collect()
    }

    /// Litres of what is mixed into the biochar and spread with it.
    pub(crate) fn mixed_in(&self) -> f64 {
        let solid = |u: &&Used| matches!(supply(u.source).map(|s| s.form), Some(Form::Solid(_)));
        self.used.iter().filter(solid).map(|used| used.amount).sum()
    }

    /// Whether lime would drive ammonia off it.
    pub(crate) fn holds_ammonium(&self) -> bool {
        self.used.iter().any(|used| holds_ammonium(used.source))
    }

    /// All that its numbers and sentences rest on.
    pub(crate) fn grounds(&self) -> impl Iterator<Item = &Grounds> {
        let cautions = self.cautions.iter().chain(&self.leftovers).map(|c| &c.grounds);
        self.figures
            .iter()
            .map(|f| &f.grounds)
            .chain(self.used.iter().map(|u| &u.grounds))
            .chain(self.shares.iter().map(|s| &s.grounds))
            .chain(self.intervals.iter().map(|i| &i.grounds))
            .chain(cautions)
    }
}

/// Charges the biochar of a dose, and enters in the ledger what that brings. What
/// isn't in the ground before the plants feeds none of them this season.
pub(crate) fn charge(survey: &Survey<'_>, dose: &Dose, ledger: &mut Ledger) -> ChargePlan {
    // Where the days to planting are too few for compost, only what soaks in within days.
    let quick = survey.timing.days_to_planting.is_some_and(|days| {
        days < supplies::days(true, &survey.case.charge).likely as i64
            && days >= supplies::days(false, &survey.case.charge).likely as i64
    });
    let plan = Bench::of(survey, dose, ledger, quick).plan();
    for used in &plan.used {
        let brings = content(&survey.case.charge, used.source).brings.times(used.amount);
        ledger.enter(Bringer::Charge(used.source), &brings);
    }
    plan
}

/// All that the plan is made from.
struct Bench<'a> {
    survey: &'a Survey<'a>,
    dose: &'a Dose,
    targets: [Target; NUTRIENTS],
    spare_phosphorus: bool,
    quick: bool,
    /// Litres that wet the biochar.
    water: Band,
    measuring: Measuring,
}

impl<'a> Bench<'a> {
    fn of(survey: &'a Survey<'a>, dose: &'a Dose, ledger: &Ledger, quick: bool) -> Bench<'a> {
        let case = survey.case();
        Bench {
            survey,
            dose,
            targets: targets(survey, dose, ledger),
            spare_phosphorus: survey
                .findings
                .level(Property::Phosphorus)
                .is_some_and(Level::is_surplus),
            quick,
            water: supplies::water(dose.mass, &survey.material, &case.biochar),
            measuring: Measuring::new(case.measures, case.charge.bucket_litres),
        }
    }

    fn content(&self, source: ChargeSource) -> Content {
        content(&self.survey.case.charge, source)
    }

    fn bounds(&self) -> Bounds {
        let likely = |at: usize| self.targets[at].wanted.likely;
        let most = |at: usize| self.targets[at].at_most.unwrap_or(f64::INFINITY);
        let mut at_most: [f64; NUTRIENTS] = std::array::from_fn(most);
        // Nitrogen past its target leaches.
        at_most[0] = at_most[0].min(likely(0));
        Bounds {
            wanted: std::array::from_fn(likely),
            at_most,
            solid: MOST_SOLID * self.dose.litres,
            liquid: self.water.likely,
        }
    }

    /// A source for the balance. `usual` keeps what is mixed in to its usual share.
    fn part(&self, source: ChargeSource, usual: bool) -> Part {
        let content = self.content(source);
        let mut brings = content.nutrients.map(|band| band.likely);
        if !self.spare_phosphorus {
            brings[1] = content.phosphorus_at_once.likely;
        }
        let on_hand = known(&self.survey.case.charge, source).and_then(|own| own.litres);
        let mut at_most =
            on_hand.filter(|_| !is_weighed(source)).map_or(f64::INFINITY, |l| l.max(0.0));
        let room = match supply(source).map(|s| s.form) {
            Some(Form::Solid(share)) => {
                if usual {
                    at_most = at_most.min(share * self.dose.litres);
                }
                Room::Solid
            }
            Some(Form::Liquid | Form::Filling) => Room::Liquid,
            Some(Form::Dissolved) => Room::None,
            None => {
                at_most = at_most.min(MOST_ASH * self.dose.area);
                Room::None
            }
        };
        Part { brings, at_most, room }
    }

    fn used(&self, source: ChargeSource, amount: f64) -> Used {
        let content = self.content(source);
        let brings = content.nutrients.map(|band| band.map(|g| g * amount));
        let wanted = self.targets[0].wanted.likely;
        let per_cent = |g: f64| if wanted > 0.0 { 100.0 * g / wanted } else { 0.0 };
        let weighed = is_weighed(source);
        let unit = if weighed { Unit::Kg } else { Unit::Litre };
        let own = own_label(&self.survey.case.charge, source);
        let mut grounds = Grounds::new(
            if weighed {
                "kilograms × what one brings by its label"
            } else {
                "litres × what one brings; of the nitrogen only what is mineral at once"
            },
            analysis(source).citations,
        )
        .input("amount", shown(&Band::exactly(amount), unit, Measures::Metric))
        .input(
            "mineral nitrogen",
            format!(
                "{} g each, of {} g in all",
                shown(&content.nutrients[0], Unit::None, Measures::Metric),
                shown(&content.nitrogen_in_all, Unit::None, Measures::Metric)
            ),
        );
        grounds = match own {
            Some(label) => {
                grounds.input("its label, N-P₂O₅-K₂O", label.map(|p| significant(p, 3)).join("-"))
            }
            None => grounds.assume("A usual analysis; give its label to replace it."),
        };
        Used {
            source,
            label: label(source),
            amount,
            weighed,
            nitrogen_reached: brings[0].map(per_cent),
            brings,
            grounds,
        }
    }

    /// Every source alone.
    fn alone(&self) -> Vec<Used> {
        ChargeSource::ALL
            .into_iter()
            .map(|source| {
                let amounts = fill(&self.bounds(), &[self.part(source, false)]);
                self.used(source, amounts[0])
            })
            .collect()
    }

    /// Whether wood ash may be used beside the others, and if not, why.
    fn ash(&self, beside: &[ChargeSource]) -> Result<(), &'static str> {
        if beside.iter().any(|source| holds_ammonium(*source)) {
            return Err(
                "Leave the wood ash out: with urine, manure or an ammonium feed it drives off \
                 ammonia, which bites lungs and eyes and wastes the nitrogen.",
            );
        }
        if self.survey.water_ph().is_some_and(|ph| ph >= ASH_UP_TO_PH) {
            return Err("Leave the wood ash out: it limes, and the pH is high enough.");
        }
        if self.targets[2].wanted.likely <= 0.0 {
            return Err("Leave the wood ash out: no potassium is wanted.");
        }
        Ok(())
    }

    /// The mixture: what is on hand and does no harm. The last of the result are
    /// notes on what is left out.
    fn mixture(&self) -> (Vec<Used>, Vec<String>) {
        let case = self.survey.case();
        let barred: Vec<ChargeSource> =
            case.charge_with.iter().copied().filter(|s| self.too_soon(*s).is_some()).collect();
        let chosen = choose(case, self.spare_phosphorus, self.quick, &barred);
        let mut sources: Vec<ChargeSource> = chosen.iter().map(|s| s.source).collect();
        let mut notes = Vec::new();
        if case.charge_with.contains(&ChargeSource::WoodAsh) {
            match self.ash(&sources) {
                Ok(()) => sources.push(ChargeSource::WoodAsh),
                Err(why) => notes.push(why.to_string()),
            }
        }
        notes.extend(self.left_out(&sources).into_iter().filter_map(|s| self.why_left_out(s)));
        let parts: Vec<Part> = sources.iter().map(|source| self.part(*source, true)).collect();
        let mut amounts = fill(&self.bounds(), &parts);
        // Tea takes the place of plain water, whatever it brings.
        let soaked: f64 = parts
            .iter()
            .zip(&amounts)
            .filter(|(p, _)| p.room == Room::Liquid)
            .map(|(_, a)| a)
            .sum();
        for (at, source) in sources.iter().enumerate() {
            if *source == ChargeSource::CompostTea {
                let more = (self.water.likely - soaked).max(0.0);
                amounts[at] = (amounts[at] + more).min(parts[at].at_most);
            }
        }
        let used = sources
            .iter()
            .zip(amounts)
            .filter(|(_, amount)| *amount > 1e-9)
            .map(|(source, amount)| self.used(*source, amount))
            .collect();
        (used, notes)
    }

    /// Why a source on hand is not used; wood ash says so for itself.
    fn why_left_out(&self, source: ChargeSource) -> Option<String> {
        let name = label(source);
        if source == ChargeSource::WoodAsh {
            return None;
        }
        if let Some(crop) = self.too_soon(source) {
            return Some(format!(
                "Leave the {name} out: {crop} is harvested sooner than {RAW_TOUCHING} days after it."
            ));
        }
        let brings = self.content(source).nutrients[1].likely;
        if self.spare_phosphorus && brings > 0.0 {
            let most = self.targets[1].at_most.unwrap_or(0.0) / brings.max(1e-9);
            let most = if is_weighed(source) {
                self.measuring.weight(1000.0 * most)
            } else {
                self.measuring.litres(most.min(self.part(source, true).at_most))
            };
            return Some(format!(
                "Leave the {name} out: the soil has too much phosphorus, and {most} of it would already \
                 bring what a year's crops take out."
            ));
        }
        let days = supplies::days(true, &self.survey.case.charge).likely;
        self.quick.then(|| {
            format!(
                "Leave the {name} out: it takes about {days} days, and planting is nearer than that. \
                 Keep it for the bed."
            )
        })
    }

    /// A crop that is harvested sooner after the charge than raw manure allows.
    fn too_soon(&self, source: ChargeSource) -> Option<String> {
        let days =
            supplies::days(supply(source).is_some_and(|s| s.is_slow()), &self.survey.case.charge);
        let waits = intervals::intervals(self.survey, &[source], days);
        waits.into_iter().find_map(|wait| wait.too_soon.into_iter().next())
    }

    /// What is on hand and not among `sources`.
    fn left_out(&self, sources: &[ChargeSource]) -> Vec<ChargeSource> {
        let on_hand = self.survey.case.charge_with.iter();
        on_hand.copied().filter(|source| !sources.contains(source)).collect()
    }

    fn shares(&self, used: &[Used]) -> Vec<Share> {
        let works = |used: &Used, at: usize| {
            if at == 1 && !self.spare_phosphorus {
                self.content(used.source).phosphorus_at_once.map(|g| g * used.amount)
            } else {
                used.brings[at]
            }
        };
        self.targets
            .iter()
            .enumerate()
            .map(|(at, target)| {
                let brought =
                    used.iter().fold(Band::exactly(0.0), |sum, u| sum.plus(works(u, at)));
                let wanted = target.wanted.likely;
                let reached = (wanted > 0.0).then(|| brought.map(|g| 100.0 * g / wanted));
                let mut text = target.because.to_string();
                if let Some(most) = target.at_most {
                    text.push_str(if brought.likely > most * (1.0 + 1e-9) {
                        " This charge brings more than that: take less of what brings it, or spread \
                         it wider."
                    } else {
                        " This charge keeps to that."
                    });
                } else if let Some(reached) = reached {
                    text.push_str(if reached.likely < 25.0 {
                        " This charge brings hardly any of it."
                    } else if reached.likely < 90.0 {
                        " This charge brings a part of it."
                    } else {
                        " This charge brings it."
                    });
                }
                let mut grounds = target.grounds.clone();
                grounds.inputs.push(crate::quantity::Input {
                    name: "brought".into(),
                    value: shown(&brought, Unit::Gram, Measures::Metric),
                });
                Share {
                    nutrient: target.nutrient,
                    wanted: target.wanted,
                    brought,
                    reached,
                    at_most: target.at_most,
                    text,
                    grounds,
                }
            })
            .collect()
    }

    /// The best sources where phosphorus is in surplus.
    fn without_phosphorus(&self, alone: &[Used]) -> Vec<WithoutPhosphorus> {
        if !self.spare_phosphorus {
            return Vec::new();
        }
        let mut list: Vec<WithoutPhosphorus> = alone
            .iter()
            .filter_map(|used| {
                let content = self.content(used.source);
                let nitrogen = content.nutrients[0].likely;
                if nitrogen <= 0.0 || used.amount <= 0.0 {
                    return None;
                }
                let phosphorus = content.nutrients[1].likely / nitrogen;
                // What reaches next to nothing is no way to charge.
                if phosphorus > LITTLE_PHOSPHORUS || used.nitrogen_reached.likely < 25.0 {
                    return None;
                }
                let amount = if used.weighed {
                    self.measuring.weight(1000.0 * used.amount)
                } else {
                    self.measuring.litres(used.amount)
                };
                let mind = match used.source {
                    ChargeSource::AmmoniumSulfate => {
                        "biochar holds its ammonium well; it makes the soil a little more acid"
                    }
                    ChargeSource::CalciumAmmoniumNitrate => {
                        "half of it is nitrate, which biochar holds poorly: use it soon"
                    }
                    ChargeSource::BloodMeal => {
                        "organic; it needs weeks of warmth, smells, and draws animals"
                    }
                    ChargeSource::Urine => "free; it brings some salt, and needs a wait to harvest",
                    ChargeSource::NitrogenFertiliser | ChargeSource::CompleteFertiliser => {
                        "see that the middle number on its label is 0"
                    }
                    _ => "by the label you gave it brings hardly any phosphorus",
                };
                Some(WithoutPhosphorus {
                    source: used.source,
                    phosphorus,
                    text: format!(
                        "{amount} of {} reaches {} % of the nitrogen: {mind}.",
                        used.label,
                        significant(used.nitrogen_reached.likely, 2)
                    ),
                })
            })
            .collect();
        list.sort_by(|a, b| a.phosphorus.total_cmp(&b.phosphorus));
        list
    }

    fn figures(&self, slow: bool, days: Band) -> Vec<Figure> {
        let (dose, material) = (self.dose, &self.survey.material);
        let case = self.survey.case();
        let weigh = |rule: &str| {
            Grounds::new(rule, &[])
                .input("biochar, dry", shown(&dose.mass, Unit::Kg, Measures::Metric))
        };
        let mut water = material.explain(
            weigh("dry mass × water it takes up, less the water in the bag"),
            &[("water, g per g", material.water, Unit::None)],
        );
        water.sources.push(SUANSA_2021.opened());
        water = match case.biochar.moisture_percent {
            Some(percent) => water.input("water in the bag", format!("{percent} %")),
            None => water.assume("The biochar is dry when you start."),
        };
        let mut sites = weigh("dry mass × exchange capacity");
        sites = material.explain(sites, &[("exchange capacity", material.cec, Unit::MeqPer100g)]);
        sites.sources.push(ARITHMETIC.derived());
        let cold = case.charge.temperature_c.is_some_and(|t| t < supplies::COLD);
        let per_hour = if cold { UPTAKE_PER_HOUR.map(|k| k / 2.0) } else { UPTAKE_PER_HOUR };
        let of_days = Grounds::new(
            if slow {
                "contact with moist compost: 28 (14–42) days"
            } else {
                "share taken up = 1 − e^(−k × hours), k = 0.024 (0.02–1) an hour"
            },
            &[OUR_CHOICE.unsourced(), HYDROCHAR_KINETICS.opened()],
        );
        let of_days = match case.charge.temperature_c {
            Some(t) if cold => of_days
                .input("temperature", format!("{t} °C"))
                .assume("Below 10 °C (50 °F) everything takes twice as long."),
            Some(t) => of_days.input("temperature", format!("{t} °C")),
            None => of_days.assume("Warmer than 10 °C (50 °F); in the cold allow twice as long."),
        };
        let figure = |name, label, band, unit, grounds| Figure { name, label, band, unit, grounds };
        let mut figures = vec![
            figure("charge-water", "water to wet it", self.water, Unit::Litre, water),
            figure(
                "exchange-sites",
                "exchange sites, mol(c)",
                Band::new(
                    targets::sites(dose.mass.low, material.cec.low),
                    targets::sites(dose.mass.likely, material.cec.likely),
                    targets::sites(dose.mass.high, material.cec.high),
                ),
                Unit::None,
                sites,
            ),
            figure("charge-days", "days to charge", days, Unit::Days, of_days.clone()),
        ];
        if !slow {
            for (name, label, hours) in [
                ("taken-up-day-1", "taken up after a day", 24.0),
                ("taken-up-day-3", "taken up after three days", 72.0),
                ("taken-up-day-7", "taken up after seven days", 168.0),
            ] {
                let share = per_hour.map(|k| 100.0 * taken_up(hours, k));
                figures.push(figure(name, label, share, Unit::Percent, of_days.clone()));
            }
        }
        figures
    }

    fn plan(&self) -> ChargePlan {
        let case = self.survey.case();
        let dose = self.dose;
        let (used, notes) = self.mixture();
        let sources: Vec<ChargeSource> = used.iter().map(|u| u.source).collect();
        let slow = sources.iter().any(|s| supply(*s).is_none_or(supplies::Supply::is_slow));
        let days = supplies::days(slow, &case.charge);
        let alone = self.alone();
        let shares = self.shares(&used);

        let is_liquid = |u: &Used| {
            matches!(supply(u.source).map(|s| s.form), Some(Form::Liquid | Form::Filling))
        };
        let in_water =
            |u: &Used| is_liquid(u) || supply(u.source).is_some_and(|s| s.form == Form::Dissolved);
        let salts_of = |filter: &dyn Fn(&Used) -> bool| {
            used.iter().filter(|u| filter(u)).fold(Band::exactly(0.0), |sum, u| {
                sum.plus(self.content(u.source).salts.map(|charge| charge * u.amount))
            })
        };
        let liquid: f64 = used.iter().filter(|u| is_liquid(u)).map(|u| u.amount).sum();
        let water = (self.water.likely - liquid).max(0.0);
        let litres = water + liquid;
        let salts =
            salts::salts(self.survey, self.dose, salts_of(&in_water), salts_of(&|_| true), litres);
        let dissolved: f64 = used.iter().filter(|u| in_water(u)).map(|u| u.brings[0].likely).sum();
        let soak = Soak {
            may_drain: Band::new(0.0, 0.0, (self.water.likely - self.water.low).max(0.0)),
            nitrogen: if litres > 0.0 { dissolved / litres } else { 0.0 },
            salts: salts.soak,
        };
        let amounts: Vec<(ChargeSource, f64)> = used.iter().map(|u| (u.source, u.amount)).collect();
        let left_out = self.left_out(&sources);
        let dish = Dish {
            measuring: &self.measuring,
            biochar: dose.litres,
            used: &used,
            water,
            days,
            slow,
            temperature: case.charge.temperature_c,
        };
        let mut figures = self.figures(slow, days);
        figures.extend(salts.figures.iter().cloned());
        ChargePlan {
            text: self.text(&used, &shares, &salts, &notes),
            steps: steps(&dish),
            days,
            leftovers: leftovers(
                self.survey,
                &self.measuring,
                &amounts,
                &left_out,
                self.spare_phosphorus,
                &soak,
            ),
            intervals: intervals::intervals(self.survey, &sources, days),
            cautions: self.cautions(&sources, &salts, notes),
            without_phosphorus: self.without_phosphorus(&alone),
            figures,
            shares,
            alone,
            used,
        }
    }

    /// The charge in a few sentences: harm first, then what it reaches.
    fn text(
        &self,
        used: &[Used],
        shares: &[Share],
        salts: &salts::Salts,
        notes: &[String],
    ) -> String {
        let mut text = String::new();
        if salts.over {
            text.push_str("Too salty for this bed: see below before you begin. ");
        }
        if self.spare_phosphorus && !notes.is_empty() {
            text.push_str("Phosphorus is in surplus, so what brings much of it stays out. ");
        }
        let Some(nitrogen) = shares[0].reached else { return text };
        text.push_str(&format!(
            "It brings about {} % of the nitrogen wanted.",
            significant(nitrogen.likely, if nitrogen.likely < 10.0 { 1 } else { 2 })
        ));
        let teas = used.iter().all(|u| u.source == ChargeSource::CompostTea);
        if teas && nitrogen.likely < 25.0 {
            text.push_str(" Compost tea brings life to biochar; it does not charge it.");
        }
        let short: Vec<&str> = shares[1..]
            .iter()
            .filter(|share| share.reached.is_some_and(|r| r.likely < 90.0))
            .map(|share| share.nutrient.label())
            .collect();
        if !short.is_empty() {
            text.push_str(&format!(
                " Short of what is wanted: {}. What the bed itself needs stands further down.",
                short.join(", ")
            ));
        }
        text
    }

    fn cautions(
        &self,
        sources: &[ChargeSource],
        salts: &salts::Salts,
        notes: Vec<String>,
    ) -> Vec<Caution> {
        let caution = |text: String, grounds: Grounds| Caution { text, grounds };
        let practice = |rule: &str| Grounds::new(rule, &[COMMON_PRACTICE.unsourced()]);
        let mut list: Vec<Caution> = Vec::new();
        let of_salts = salts.figures.last().map(|f| f.grounds.clone()).unwrap_or_default();
        list.extend(salts.sayings.iter().map(|text| caution(text.clone(), of_salts.clone())));
        list.extend(notes.into_iter().map(|text| caution(text, self.targets[1].grounds.clone())));
        if sources.iter().any(|source| holds_ammonium(*source)) {
            list.push(caution(
                "Never mix wood ash, lime or ash-rich biochar into it while it is wet: they drive off \
                 ammonia. It bites lungs and eyes, and the nitrogen is lost."
                    .into(),
                practice("ammonium and an alkaline powder give off ammonia"),
            ));
            let alkaline = self.survey.material.ph.likely >= 9.0;
            if alkaline {
                list.push(caution(
                    "This biochar is itself alkaline (pH 9 or more): some ammonia will come off. Keep \
                     your face away, and keep it covered."
                        .into(),
                    Grounds::new("pH of the biochar", &[IPPOLITO_2020.from_memory()]),
                ));
            }
        }
        if sources.iter().any(|s| matches!(s, ChargeSource::Urine | ChargeSource::AgedManure)) {
            list.push(caution(
                "Wear gloves, wash your hands, and keep the tub away from food, children and pets."
                    .into(),
                practice("germs in urine and manure"),
            ));
        }
        let known_figures = &self.survey.case.charge.sources;
        for own in known_figures.iter().filter(|own| own.n_p2o5_k2o.is_some()) {
            if own_label(&self.survey.case.charge, own.source).is_none() {
                list.push(caution(
                    format!(
                        "The label given for {} can't be one: three shares of 0 to 100 %, together no \
                         more than 100 %. The usual analysis is taken; look at the label again.",
                        label(own.source)
                    ),
                    Grounds::default(),
                ));
            }
        }
        if self.survey.case.charge.temperature_c.is_some_and(|t| !(-40.0..=60.0).contains(&t)) {
            list.push(caution(
                "The temperature given can't be right for charging: it should be between 0 and 40 °C \
                 (32 and 104 °F)."
                    .into(),
                Grounds::default(),
            ));
        }
        list.push(caution(
            "Local rules on urine, manure and runoff come before this recipe.".into(),
            practice("always"),
        ));
        list
    }
}
