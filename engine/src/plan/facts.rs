//! What the path depends on: the survey, and what a little biochar would do.

use crate::case::{BagState, Winter};
use crate::chemistry::sodium::{SALINE, Sodic};
use crate::plan::hazards::salty_mix;
use crate::plan::rate::{self, MOST_EC};
use crate::quantity::{Band, Input, Measures, Unit, shown, significant};
use crate::ranges::{Finding, Level, amount_text};
use crate::season::BETTER_DAYS;
use crate::soil::{Method, PlantGroup, Property, Texture};
use crate::sources::Source;
use crate::survey::{Ground, Standing, Survey};

/// The least share worth spreading, % by volume.
/// Our choice.
const LEAST_SHARE: f64 = 1.0;

/// Exchange capacity below which a soil holds few nutrients, meq/100 g.
/// Source: our choice.
pub const LOW_CEC: f64 = 5.0;

/// The nutrients a surplus is looked for in.
const NUTRIENTS: [Property; 6] = [
    Property::NitrateN,
    Property::Phosphorus,
    Property::Potassium,
    Property::Calcium,
    Property::Magnesium,
    Property::Sulfur,
];

/// The nutrients a shortage is looked for in.
const MAIN: [Property; 3] = [Property::NitrateN, Property::Phosphorus, Property::Potassium];

/// What a rule may ask.
#[derive(Clone, Debug)]
pub struct Facts<'s> {
    /// The sample and its bed.
    pub survey: &'s Survey<'s>,
    levels: Vec<(Property, Level, Option<&'static Source>)>,
    /// Something was judged by figures from memory only.
    pub from_memory: Vec<Property>,
    ph_level: Option<Level>,
    ph_top: Option<f64>,
    /// pH after the least useful share.
    ph_after: Option<Band>,
    /// The share that the biochar's own salts allow, %.
    salts_share: Option<f64>,
    /// The share that its phosphorus allows, %.
    phosphorus_share: Option<f64>,
}

impl<'s> Facts<'s> {
    /// The facts of a survey.
    pub fn of(survey: &'s Survey<'s>) -> Facts<'s> {
        let findings = &survey.findings;
        let levels: Vec<_> = NUTRIENTS
            .iter()
            .filter_map(|p| {
                let finding = findings.get(*p)?;
                Some((*p, finding.level?, finding.source))
            })
            .collect();
        let from_memory = levels
            .iter()
            .map(|(p, ..)| *p)
            .filter(|p| findings.get(*p).is_some_and(Finding::rests_on_memory))
            .collect();
        let range = findings.get(Property::Ph).and_then(|f| f.range.as_ref());
        Facts {
            survey,
            levels,
            from_memory,
            ph_level: findings.level(Property::Ph).or_else(|| findings.level(Property::SaltPh)),
            ph_top: range.and_then(|r| r.sufficient_to),
            ph_after: rate::ph_after(survey, LEAST_SHARE),
            salts_share: rate::share_by_salts(survey),
            phosphorus_share: rate::share_by_phosphorus(survey),
        }
    }

    /// Nitrogen, phosphorus or potassium could be judged.
    pub fn judged(&self) -> bool {
        MAIN.iter().any(|p| self.level(*p).is_some())
    }

    /// The level of a nutrient.
    pub fn level(&self, property: Property) -> Option<Level> {
        self.levels.iter().find(|(p, ..)| *p == property).map(|(_, level, _)| *level)
    }

    /// A nutrient is below sufficient.
    pub fn short(&self, property: Property) -> bool {
        self.level(property).is_some_and(Level::is_short)
    }

    /// A nutrient is above sufficient.
    pub fn surplus(&self, property: Property) -> bool {
        self.level(property).is_some_and(Level::is_surplus)
    }

    /// Nitrogen, phosphorus or potassium is short.
    pub fn anything_short(&self) -> bool {
        MAIN.into_iter().any(|p| self.short(p))
    }

    /// Which of nitrogen, phosphorus and potassium couldn't be judged.
    pub fn not_judged(&self) -> Vec<Property> {
        MAIN.into_iter().filter(|p| self.level(*p).is_none()).collect()
    }

    /// The nutrients above sufficient.
    pub fn surpluses(&self) -> Vec<Property> {
        self.levels.iter().filter(|(_, level, _)| level.is_surplus()).map(|(p, ..)| *p).collect()
    }

    /// Without a nitrate test, a surplus all the same: two nutrients or more,
    /// phosphorus or potassium among them.
    pub fn general_surplus(&self) -> bool {
        self.level(Property::NitrateN).is_none()
            && self.surpluses().len() >= 2
            && (self.surplus(Property::Phosphorus) || self.surplus(Property::Potassium))
    }

    /// There is something to hold.
    pub fn has_surplus(&self) -> bool {
        self.surplus(Property::NitrateN) || self.general_surplus()
    }

    /// Sand or loamy sand.
    pub fn sandy(&self) -> bool {
        self.survey.texture.is_some_and(Texture::is_sandy)
    }

    /// Exchange capacity below 5 meq/100 g, as far as we can tell.
    pub fn low_cec(&self) -> bool {
        self.survey.chemistry.cec.is_some_and(|cec| cec.likely < LOW_CEC)
    }

    /// Whether the soil holds nutrients is known.
    pub fn holding_is_known(&self) -> bool {
        self.survey.texture.is_some() || self.survey.chemistry.cec.is_some()
    }

    /// Soil that needs its biochar charged whatever the dates say.
    pub fn poor(&self) -> bool {
        self.anything_short() || self.sandy() || self.low_cec()
    }

    /// A surplus that can't wait for the harvest: it grows now with no end in
    /// sight, or planting is near.
    pub fn in_season(&self) -> bool {
        self.survey.timing.planting_is_soon() || self.growing_on()
    }

    /// A crop grows now and nobody said when it is off.
    pub fn growing_on(&self) -> bool {
        self.survey.bed.standing == Standing::Open
    }

    /// Roots are in the ground all year.
    pub fn rooted(&self) -> bool {
        self.survey.bed.standing == Standing::Lasting
    }

    /// Charged biochar is called for.
    pub fn wants_charged(&self) -> bool {
        self.poor() && !self.holds_first()
            || self.has_surplus() && !self.rooted() && self.in_season()
    }

    /// Uncharged biochar is on hand.
    pub fn has_uncharged(&self) -> bool {
        self.survey.case.biochar.state == Some(BagState::Uncharged)
    }

    /// Charged biochar is on hand.
    pub fn has_charged(&self) -> bool {
        self.survey.case.biochar.state == Some(BagState::Charged)
    }

    /// Even a little biochar would take the pH past the limit.
    pub fn ph_past_limit(&self) -> bool {
        self.ph_after.is_some_and(|ph| ph.likely > rate::most_ph(self.survey))
    }

    /// The pH comes out above the plants' range.
    pub fn ph_above_range(&self) -> bool {
        self.ph_after.zip(self.ph_top).is_some_and(|(after, top)| after.likely > top)
    }

    /// The pH is above the plants' range before any biochar.
    pub fn ph_is_above_range(&self) -> bool {
        self.ph_level.is_some_and(Level::is_surplus)
    }

    /// Acid-loving plants.
    pub fn acid_lovers(&self) -> bool {
        self.survey.plants() == PlantGroup::AcidLovers
    }

    /// pH in water.
    pub fn ph(&self) -> Option<f64> {
        self.survey.water_ph()
    }

    /// Salts in a 1:1 suspension, dS/m.
    fn ec_1_1(&self) -> Option<f64> {
        let measure = self.survey.soil.get(Property::Ec)?;
        let is = measure.method == Some(Method::Water1To1) && measure.unit == Unit::DsPerM;
        is.then(|| measure.amount.number())
    }

    /// Salty by the saturated paste, or a potting mix by its own extract.
    pub fn saline(&self) -> bool {
        self.survey.ece().is_some_and(|ece| ece.likely >= SALINE) || salty_mix(self.survey)
    }

    /// Somewhat salty: sensitive plants suffer.
    pub fn rather_saline(&self) -> bool {
        self.survey.ece().is_some_and(|ece| (2.0..SALINE).contains(&ece.likely))
    }

    /// Salty by a 1:1 suspension.
    pub fn salty(&self) -> bool {
        self.ec_1_1().is_some_and(|ec| ec > MOST_EC)
    }

    /// Too much exchangeable sodium.
    pub fn sodic(&self) -> bool {
        self.survey.chemistry.sodium.as_ref().is_some_and(|s| s.sodic == Sodic::Yes)
    }

    /// The biochar is so salty that no useful amount fits.
    pub fn salty_char(&self) -> bool {
        !self.salty() && self.salts_share.is_some_and(|share| share < LEAST_SHARE)
    }

    /// Even a little of this biochar brings more phosphorus than may come in.
    pub fn phosphorus_past_limit(&self) -> bool {
        self.phosphorus_share.is_some_and(|share| share < LEAST_SHARE)
    }

    /// Nitrate to hold over winter comes first; what is short is fed in spring.
    pub fn holds_first(&self) -> bool {
        self.surplus(Property::NitrateN)
            && !self.rooted()
            && !self.in_season()
            && !self.sandy()
            && !self.low_cec()
            && self.survey.timing.winter_is_ahead()
    }

    /// Phosphorus is plentiful and nitrogen is short.
    pub fn charge_without_phosphorus(&self) -> bool {
        self.surplus(Property::Phosphorus) && self.short(Property::NitrateN)
    }

    /// A low nitrate test tells little long before planting.
    pub fn nitrate_is_stale(&self) -> bool {
        self.short(Property::NitrateN)
            && self.survey.timing.days_to_planting.is_some_and(|days| days > BETTER_DAYS)
    }

    /// Only an old nitrate test speaks for charging.
    pub fn only_stale_nitrate(&self) -> bool {
        self.nitrate_is_stale()
            && !self.short(Property::Phosphorus)
            && !self.short(Property::Potassium)
            && !self.sandy()
            && !self.low_cec()
    }

    /// Peat, muck and the like.
    pub fn organic(&self) -> bool {
        self.survey.bed.ground != Ground::Mineral
    }

    /// Acid soil.
    pub fn acid(&self) -> bool {
        self.ph().is_some_and(|ph| ph < 6.0)
    }

    /// Nothing short, nothing in surplus, no sand.
    pub fn content(&self) -> bool {
        self.judged() && !self.poor() && !self.has_surplus()
    }

    /// Nothing short, near neutral and not in the tropics: no bigger crop expected.
    pub fn no_gain_expected(&self) -> bool {
        self.judged()
            && !self.poor()
            && self.survey.case.season.winter != Some(Winter::None)
            && self.ph().is_some_and(|ph| (6.0..=7.5).contains(&ph))
    }

    /// Days from the clear bed to planting.
    pub fn days(&self) -> Option<i64> {
        self.survey.timing.days_to_planting
    }

    /// Levels as inputs of a reason.
    pub fn shown(&self, properties: &[Property]) -> Vec<Input> {
        let mut inputs = Vec::new();
        for (p, level, source) in self.levels.iter().filter(|(p, ..)| properties.contains(p)) {
            inputs.push(Input { by: *source, ..input(p.label(), level.label()) });
        }
        inputs
    }

    /// What is known of pH, as inputs.
    pub fn shown_ph(&self) -> Vec<Input> {
        let mut inputs = Vec::new();
        if let Some(ph) = self.ph() {
            inputs.push(input(self.survey.water_ph_name(), &significant(ph, 3)));
        }
        if let Some(after) = self.ph_after {
            let value = format!("{:.2} ({:.2}–{:.2})", after.likely, after.low, after.high);
            inputs.push(input("pH after 1 % biochar by volume", &value));
        }
        if let Some(top) = self.ph_top {
            inputs.push(input("top of the plants' range", &significant(top, 3)));
        }
        inputs
    }

    /// What is known of salts and sodium, as inputs.
    pub fn shown_salts(&self) -> Vec<Input> {
        let mut inputs = Vec::new();
        if let Some(ece) = self.survey.ece() {
            inputs.push(input(
                "salts, saturated paste",
                &shown(&ece, Unit::DsPerM, Measures::Metric),
            ));
        }
        let sodium = self.survey.chemistry.sodium.as_ref();
        let numbers = [
            ("salts, 1:1", self.ec_1_1(), " dS/m"),
            ("exchangeable sodium", sodium.map(|s| s.esp.likely), " %"),
            ("sodium adsorption ratio", sodium.and_then(|s| s.sar), ""),
            ("share at which the biochar's salts reach the limit", self.salts_share, " %"),
        ];
        for (name, number, unit) in numbers {
            if let Some(number) = number {
                inputs.push(input(name, &format!("{}{unit}", significant(number, 2))));
            }
        }
        inputs
    }

    /// What is known of texture and exchange capacity, as inputs.
    pub fn shown_holding(&self) -> Vec<Input> {
        let mut inputs = Vec::new();
        if let Some(texture) = self.survey.texture {
            inputs.push(input("texture", texture.label()));
        }
        if let Some(cec) = self.survey.chemistry.cec {
            inputs
                .push(input("exchange capacity", &shown(&cec, Unit::MeqPer100g, Measures::Metric)));
        }
        inputs
    }

    /// Lead, as an input.
    pub fn shown_lead(&self) -> Vec<Input> {
        let lead = self.survey.soil.get(Property::Lead);
        lead.map(|m| input(Property::Lead.label(), &amount_text(m.amount, m.unit)))
            .into_iter()
            .collect()
    }

    /// Organic matter, as an input.
    pub fn shown_organic_matter(&self) -> Vec<Input> {
        let shown = |percent| input("organic matter", &format!("{} %", significant(percent, 3)));
        self.survey.organic_matter().map(|om| om.likely).map(shown).into_iter().collect()
    }

    /// What is known of the dates, as inputs.
    pub fn shown_dates(&self) -> Vec<Input> {
        let t = &self.survey.timing;
        let dates = [
            ("today", t.today),
            ("harvest", t.harvest),
            ("first frost", t.first_frost),
            ("planting", t.planting),
        ];
        let mut inputs: Vec<Input> = dates
            .into_iter()
            .filter_map(|(name, date)| Some(input(name, &date?.to_string())))
            .collect();
        if let Some(days) = t.days_to_planting {
            inputs.push(input("days from the clear bed to planting", &days.to_string()));
        }
        inputs
    }
}

fn input(name: &str, value: &str) -> Input {
    Input::new(name, value)
}
