//! The recipe, step by step, for one batch at a time.

use crate::case::ChargeSource;
use crate::plan::charge::Used;
use crate::plan::charge::measure::Measuring;
use crate::plan::charge::sources::holds_ammonium;
use crate::plan::charge::supplies::{COLD, Form, supply};
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
    let measuring = dish.measuring;
    let number = batches(dish.biochar);
    let each = f64::from(number);
    let form = |used: &Used| supply(used.source).map(|s| s.form);
    let amount = |used: &Used| {
        if used.weighed {
            measuring.weight(1000.0 * used.amount / each)
        } else {
            measuring.litres(used.amount / each)
        }
    };
    let ammonia = dish.used.iter().any(|u| holds_ammonium(u.source));

    let mut steps = Vec::new();
    steps.push(
        if ammonia {
            "Work outdoors, or with doors and windows open: this can give off ammonia. Wear gloves, \
             eye cover and a dust mask (P2 or N95)."
        } else {
            "Work outdoors on a calm day. Wear gloves, eye cover and a dust mask (P2 or N95)."
        }
        .to_string(),
    );
    if number > 1 {
        steps.push(format!(
            "Make {number} batches. Each takes {} of biochar; the amounts below are for one batch.",
            measuring.litres(dish.biochar / each)
        ));
    } else {
        steps.push(format!(
            "Measure out {} of biochar into a heap or a tub.",
            measuring.litres(dish.biochar)
        ));
    }
    let mut drink = Vec::new();
    if dish.water > 1e-3 {
        drink.push(format!("{} of clean water", measuring.litres(dish.water / each)));
    }
    for used in dish.used {
        if matches!(form(used), Some(Form::Liquid | Form::Filling)) {
            drink.push(format!("{} of {}", amount(used), used.label));
        }
    }
    let stirred: Vec<(ChargeSource, String)> = dish
        .used
        .iter()
        .filter(|used| form(used) == Some(Form::Dissolved))
        .map(|used| (used.source, format!("{} of {}", amount(used), used.label)))
        .collect();
    if drink.is_empty() {
        if !stirred.is_empty() {
            steps.push(format!(
                "The biochar is wet already. Stir {} into as little water as it dissolves in, and \
                 sprinkle it on.",
                stirred.iter().map(|(_, text)| text.as_str()).collect::<Vec<_>>().join(" and ")
            ));
        }
    } else {
        let verb = if drink.len() > 1 { "mix" } else { "have ready" };
        let mut step = format!("In a tub, {verb} {}.", drink.join(" and "));
        let (meal, dissolved): (Vec<_>, Vec<_>) =
            stirred.into_iter().partition(|(source, _)| *source == ChargeSource::BloodMeal);
        let joined = |all: Vec<(ChargeSource, String)>| {
            all.into_iter().map(|(_, text)| text).collect::<Vec<_>>().join(" and ")
        };
        if !dissolved.is_empty() {
            step.push_str(&format!(" Stir in {} until it is gone.", joined(dissolved)));
        }
        if !meal.is_empty() {
            step.push_str(&format!(
                " Stir in {}. Blood meal doesn't dissolve: keep it moving while you pour.",
                joined(meal)
            ));
        }
        steps.push(step);
        steps.push(
            "Pour it over the biochar bit by bit and turn it, until it is as damp as a wrung sponge. \
             Stop when liquid runs out below; keep what is left for the next days."
                .to_string(),
        );
    }
    let mixed: Vec<String> = dish
        .used
        .iter()
        .filter(|used| matches!(form(used), Some(Form::Solid(_))))
        .map(|used| format!("{} of {}", amount(used), used.label))
        .collect();
    if !mixed.is_empty() {
        steps.push(format!("Mix in {}.", mixed.join(" and ")));
    }
    if let Some(ash) = dish.used.iter().find(|used| used.source == ChargeSource::WoodAsh) {
        steps.push(format!(
            "Dust in {} of wood ash, from untreated wood only, and turn it well. Ash bites: keep it \
             off skin and eyes, and keep urine, manure and ammonium feeds away from it.",
            amount(ash)
        ));
    }
    let frozen = dish.temperature.is_some_and(|t| t < FROST);
    steps.push(if frozen {
        "In frost nothing is taken up. Do it indoors where the air moves, such as in an open shed, \
         or wait for the thaw: days of frost don't count."
            .to_string()
    } else if dish.slow {
        format!(
            "Cover it, keep it damp, and leave it for {} days ({} to {}). Turn it once a week.",
            dish.days.likely, dish.days.low, dish.days.high
        )
    } else {
        format!(
            "Cover it loosely and leave it for {} to {} days. Stir once a day.",
            dish.days.low, dish.days.high
        )
    });
    if dish.temperature.is_some_and(|t| t < COLD) && !frozen {
        steps.push(
            "It is cold: that is why the days are doubled. Shelter it from frost.".to_string(),
        );
    }
    if ammonia {
        steps.push(
            "Smell it before you spread it. If it stings the nose, it burns roots: turn it and wait \
             another week."
                .to_string(),
        );
    }
    let mixed: f64 = dish
        .used
        .iter()
        .filter(|used| matches!(form(used), Some(Form::Solid(_))))
        .map(|used| used.amount)
        .sum();
    if mixed > 0.0 {
        steps.push(format!(
            "Spread all of the mix, {} in all, while it is damp.",
            measuring.litres(dish.biochar + mixed)
        ));
    } else {
        steps.push("Let what is too wet drain, and spread it while it is damp.".to_string());
    }
    steps
}
