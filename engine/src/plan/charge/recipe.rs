//! The recipe, step by step, for one batch at a time.

use crate::case::ChargeSource;
use crate::plan::charge::Used;
use crate::plan::charge::measure::Measuring;
use crate::plan::charge::sources::holds_ammonium;
use crate::plan::charge::supplies::{COLD, Form};
use crate::quantity::Band;

/// The most biochar in one batch, litres: what one person turns with a shovel.
/// Our choice.
pub const BATCH: f64 = 100.0;

/// Below this, water and compost stand still, °C.
/// Our choice.
const FROST: f64 = 2.0;

/// What the steps are written from.
pub(super) struct Dish<'a> {
    pub measuring: &'a Measuring,
    /// Biochar for the whole bed, litres.
    pub biochar: f64,
    /// What is used for the whole bed.
    pub used: &'a [Used],
    /// Plain water for the whole bed, litres.
    pub water: f64,
    /// Days of charging.
    pub days: Band,
    /// It lies with compost or the like, rather than soaking.
    pub slow: bool,
    pub temperature: Option<f64>,
}

/// Batches for so much biochar.
pub fn batches(litres: f64) -> u32 {
    if litres.is_finite() { (litres / BATCH).ceil().clamp(1.0, 10_000.0) as u32 } else { 1 }
}

pub(super) fn steps(dish: &Dish<'_>) -> Vec<String> {
    let mut steps = vec![dish.protection(), dish.measure_out()];
    steps.extend(dish.soak());
    steps.extend(dish.mix_in());
    steps.extend(dish.wait());
    if dish.gives_off_ammonia() {
        steps.push(
            "Smell it before you spread it. If it stings the nose, it burns roots: turn it and wait \
             another week."
                .to_string(),
        );
    }
    steps.push(dish.spread());
    steps
}

fn joined<'a>(all: impl Iterator<Item = &'a String>) -> String {
    all.map(String::as_str).collect::<Vec<_>>().join(" and ")
}

impl Dish<'_> {
    fn batches(&self) -> f64 {
        f64::from(batches(self.biochar))
    }

    /// An amount for one batch.
    fn of(&self, used: &Used) -> String {
        let each = used.amount / self.batches();
        let amount = if used.weighed {
            self.measuring.weight(1000.0 * each)
        } else {
            self.measuring.litres(each)
        };
        format!("{amount} of {}", used.label)
    }

    fn gives_off_ammonia(&self) -> bool {
        self.used.iter().any(|u| holds_ammonium(u.source))
    }

    fn protection(&self) -> String {
        if self.gives_off_ammonia() {
            "Work outdoors, or with doors and windows open: this can give off ammonia. Wear gloves, \
             eye cover and a dust mask (P2 or N95)."
        } else {
            "Work outdoors on a calm day. Wear gloves, eye cover and a dust mask (P2 or N95)."
        }
        .to_string()
    }

    fn measure_out(&self) -> String {
        let (number, each) = (self.batches(), self.biochar / self.batches());
        let amount = self.measuring.litres(each);
        if number > 1.0 {
            format!(
                "Make {number} batches. Each takes {amount} of biochar; the amounts below are for one batch."
            )
        } else {
            format!("Measure out {amount} of biochar into a heap or a tub.")
        }
    }

    /// What the biochar drinks, with what is stirred into it.
    fn soak(&self) -> Vec<String> {
        let mut drink = Vec::new();
        if self.water > 1e-3 {
            let water = self.measuring.litres(self.water / self.batches());
            drink.push(format!("{water} of clean water"));
        }
        drink.extend(self.used.iter().filter(|u| u.is_liquid()).map(|u| self.of(u)));
        let stirred = self.used.iter().filter(|u| u.form() == Some(Form::Dissolved));
        let (meal, dissolved): (Vec<_>, Vec<_>) = stirred
            .map(|u| (u.source, self.of(u)))
            .partition(|(source, _)| *source == ChargeSource::BloodMeal);
        let (meal, dissolved) =
            (joined(meal.iter().map(|m| &m.1)), joined(dissolved.iter().map(|d| &d.1)));
        if drink.is_empty() {
            let all = [dissolved, meal].into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>();
            return (!all.is_empty())
                .then(|| {
                    format!(
                        "The biochar is wet already. Stir {} into as little water as it dissolves in, and \
                         sprinkle it on.",
                        joined(all.iter())
                    )
                })
                .into_iter()
                .collect();
        }
        let verb = if drink.len() > 1 { "mix" } else { "have ready" };
        let mut step = format!("In a tub, {verb} {}.", joined(drink.iter()));
        if !dissolved.is_empty() {
            step.push_str(&format!(" Stir in {dissolved} until it is gone."));
        }
        if !meal.is_empty() {
            step.push_str(&format!(
                " Stir in {meal}. Blood meal doesn't dissolve: keep it moving while you pour."
            ));
        }
        let pour = "Pour it over the biochar bit by bit and turn it, until it is as damp as a wrung sponge. \
                    Stop when liquid runs out below; keep what is left for the next days.";
        vec![step, pour.to_string()]
    }

    fn mix_in(&self) -> Vec<String> {
        let mixed: Vec<String> =
            self.used.iter().filter(|u| u.is_mixed_in()).map(|u| self.of(u)).collect();
        let mut steps = Vec::new();
        if !mixed.is_empty() {
            steps.push(format!("Mix in {}.", joined(mixed.iter())));
        }
        if let Some(ash) = self.used.iter().find(|u| u.source == ChargeSource::WoodAsh) {
            steps.push(format!(
                "Dust in {}, from untreated wood only, and turn it well. Ash bites: keep it \
                 off skin and eyes, and keep urine, manure and ammonium feeds away from it.",
                self.of(ash)
            ));
        }
        steps
    }

    fn wait(&self) -> Vec<String> {
        let Band { low, likely, high } = self.days;
        let frozen = self.temperature.is_some_and(|t| t < FROST);
        let mut steps = vec![if frozen {
            "In frost nothing is taken up. Do it indoors where the air moves, such as in an open shed, \
             or wait for the thaw: days of frost don't count."
                .to_string()
        } else if self.slow {
            format!(
                "Cover it, keep it damp, and leave it for {likely} days ({low} to {high}). Turn it once a week."
            )
        } else {
            format!("Cover it loosely and leave it for {low} to {high} days. Stir once a day.")
        }];
        if self.temperature.is_some_and(|t| t < COLD) && !frozen {
            steps.push(
                "It is cold: that is why the days are doubled. Shelter it from frost.".to_string(),
            );
        }
        steps
    }

    fn spread(&self) -> String {
        let mixed: f64 = self.used.iter().filter(|u| u.is_mixed_in()).map(|u| u.amount).sum();
        if mixed > 0.0 {
            let all = self.measuring.litres(self.biochar + mixed);
            format!("Spread all of the mix, {all} in all, while it is damp.")
        } else {
            "Let what is too wet drain, and spread it while it is damp.".to_string()
        }
    }
}
