//! Charging in detail: each nutrient wanted, what each source brings, how much
//! of each to take, the salts, the days, the waits, what is left over, and the
//! one recipe, in buckets.

pub mod balance;
mod figures;
pub mod intervals;
mod label;
mod leftovers;
mod measure;
pub mod recipe;
pub mod salts;
pub mod sources;
mod supplies;
pub mod targets;
mod words;

pub(crate) use measure::Measuring;
pub use supplies::{taken_up, water_to_wet};

use crate::plan::charge::balance::{Bounds, Part, Room, fill};
use crate::plan::charge::intervals::{Interval, RAW_TOUCHING};
use crate::plan::charge::label::{known, own_label};
use crate::plan::charge::leftovers::{Soak, leftovers};
use crate::plan::charge::recipe::{Dish, steps};
use crate::plan::charge::sources::{
    Content, NUTRIENTS, Nutrient, analysis, content, holds_ammonium, is_weighed, label,
};
use crate::plan::charge::supplies::{Form, choose, supply};
use crate::plan::charge::targets::{Target, targets};
use crate::plan::ledger::{Bringer, Ledger, Substance};
use crate::plan::rate::Dose;
use crate::ranges::Level;
use crate::survey::Survey;
use serde::Serialize;
use time::Date;

use crate::case::ChargeSource;
use crate::plan::cautions::Caution;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::soil::Property;

/// The most of what is mixed in, litres for one litre of biochar.
/// Our choice.
pub const MOST_SOLID: f64 = 2.0;

/// The most wood ash on 1 m² in a year, kg: 10 lb/1000 sq ft.
/// Source: common practice of extension offices (from memory).
const MOST_ASH: f64 = 0.049;

/// From this pH on, no ash: it limes. Our choice.
const ASH_UP_TO_PH: f64 = 6.8;

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
        self.used.iter().filter(|u| u.is_mixed_in()).map(|used| used.amount).sum()
    }

    /// Whether the harvest must wait for what it was charged with.
    pub(crate) fn harvest_waits(&self) -> bool {
        self.intervals.iter().any(|wait| wait.days.0 > 0)
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
/// isn't in the ground before the plants feeds none of them this season. `spread` is the
/// day of spreading where that is known; else it is spread once it is charged.
pub(crate) fn charge(
    survey: &Survey<'_>,
    dose: &Dose,
    ledger: &mut Ledger,
    spread: Option<Date>,
) -> ChargePlan {
    // Where the days to planting are too few for compost, only what soaks in within days.
    let quick = survey.timing.days_to_planting.is_some_and(|days| {
        days < supplies::days(true, &survey.case.charge).likely as i64
            && days >= supplies::days(false, &survey.case.charge).likely as i64
    });
    let plan = Bench { spread, ..Bench::of(survey, dose, ledger, quick) }.plan();
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
    /// The day of spreading.
    spread: Option<Date>,
    /// How much more of what has a ceiling may come in, g.
    rooms: [(Substance, f64); 3],
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
            spread: None,
            rooms: [Substance::Phosphorus, Substance::Potassium, Substance::Sodium]
                .map(|s| (s, ledger.room(s))),
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
                let used = self.used(source, amounts[0]);
                self.used(source, amounts[0] * self.fitting(&[used]))
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
        // Alone it may soak in days; beside compost it lies for weeks.
        let ready = [false, true].map(|slow| {
            intervals::ready(self.survey, supplies::days(slow, &self.survey.case.charge))
        });
        ready.into_iter().chain([self.spread]).find_map(|day| {
            let waits = intervals::intervals(self.survey, &[source], day);
            waits.into_iter().find_map(|wait| wait.too_soon.into_iter().next())
        })
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
                let told = shown(&brought, Unit::Gram, Measures::Metric);
                grounds = grounds.input("brought", told);
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

    /// How much of some sources, 0–1, the bed may still take by their phosphorus, potassium,
    /// sodium and salts.
    fn fitting(&self, used: &[Used]) -> f64 {
        let brought = |s: Substance| -> f64 {
            let each = used.iter().map(|u| self.content(u.source).brings.of(s).likely * u.amount);
            each.sum()
        };
        let by_ceiling = self.rooms.iter().map(|(s, room)| fits(*room, brought(*s)));
        let by_salts = fits(
            salts::room(self.survey, self.dose),
            salts::conductivity(self.salts_of(used, &|_| true)).likely
                / salts::soil(self.survey, self.dose),
        );
        by_ceiling.chain([by_salts]).fold(1.0, f64::min)
    }

    /// What is used, held to what the bed may still take; with notes on what is left out or
    /// held down.
    fn held_down(&self) -> (Vec<Used>, Vec<String>) {
        let (used, mut notes) = self.mixture();
        let factor = self.fitting(&used);
        if factor >= 1.0 {
            return (used, notes);
        }
        notes.push(
            "Less is used than the biochar could take: more would bring too much phosphorus, potassium, sodium or salts."
                .to_string(),
        );
        let used = used.iter().map(|u| self.used(u.source, u.amount * factor));
        (used.filter(|u| u.amount > 1e-9).collect(), notes)
    }

    /// The charge of the dissolved cations of some sources, mmol(c).
    fn salts_of(&self, used: &[Used], which: &dyn Fn(&Used) -> bool) -> Band {
        used.iter().filter(|u| which(u)).fold(Band::exactly(0.0), |sum, u| {
            sum.plus(self.content(u.source).salts.map(|charge| charge * u.amount))
        })
    }

    fn plan(&self) -> ChargePlan {
        let case = self.survey.case();
        let (used, notes) = self.held_down();
        let sources: Vec<ChargeSource> = used.iter().map(|u| u.source).collect();
        let slow = sources.iter().any(|s| supply(*s).is_none_or(supplies::Supply::is_slow));
        let days = supplies::days(slow, &case.charge);
        let shares = self.shares(&used);
        let liquid: f64 = used.iter().filter(|u| u.is_liquid()).map(|u| u.amount).sum();
        let water = (self.water.likely - liquid).max(0.0);
        let litres = water + liquid;
        let in_water = self.salts_of(&used, &Used::is_in_water);
        let in_all = self.salts_of(&used, &|_| true);
        let salts = salts::salts(self.survey, self.dose, in_water, in_all, litres);
        let dissolved = used.iter().filter(|u| u.is_in_water()).map(|u| u.brings[0].likely);
        let soak = Soak {
            may_drain: Band::new(0.0, 0.0, (self.water.likely - self.water.low).max(0.0)),
            nitrogen: if litres > 0.0 { dissolved.sum::<f64>() / litres } else { 0.0 },
            salts: salts.soak,
        };
        let dish = Dish {
            measuring: &self.measuring,
            biochar: self.dose.litres,
            used: &used,
            water,
            days,
            slow,
            temperature: case.charge.temperature_c,
        };
        let spread = self.spread.or(intervals::ready(self.survey, days));
        let mut figures = self.figures(slow, days);
        figures.extend(salts.figures.iter().cloned());
        ChargePlan {
            text: self.text(&used, &shares, &notes),
            steps: steps(&dish),
            days,
            leftovers: self.leftovers(&used, &soak),
            intervals: intervals::intervals(self.survey, &sources, spread),
            cautions: self.cautions(&sources, &salts, &notes),
            figures,
            shares,
            alone: self.alone(),
            used,
        }
    }

    fn leftovers(&self, used: &[Used], soak: &Soak) -> Vec<Caution> {
        let amounts: Vec<(ChargeSource, f64)> = used.iter().map(|u| (u.source, u.amount)).collect();
        let sources: Vec<ChargeSource> = used.iter().map(|u| u.source).collect();
        let left_out = self.left_out(&sources);
        let spare = self.spare_phosphorus;
        leftovers(self.survey, &self.measuring, &amounts, &left_out, spare, soak)
    }
}

/// The share (0–1) of what is brought for which there is room.
fn fits(room: f64, brought: f64) -> f64 {
    if brought > room { (room / brought).max(0.0) } else { 1.0 }
}

impl Used {
    fn form(&self) -> Option<Form> {
        supply(self.source).map(|s| s.form)
    }

    fn is_liquid(&self) -> bool {
        matches!(self.form(), Some(Form::Liquid | Form::Filling))
    }

    fn is_in_water(&self) -> bool {
        self.is_liquid() || self.form() == Some(Form::Dissolved)
    }

    fn is_mixed_in(&self) -> bool {
        matches!(self.form(), Some(Form::Solid(_)))
    }
}
