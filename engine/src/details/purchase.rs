//! What to buy and carry: bags, money, weight with its water, and the same
//! amount in every measure of the trade.

use crate::bag::Material;
use crate::case::Bag;
use crate::plan::{Dose, Plan, tonnes_per_ha};
use crate::quantity::{
    Band, Figure, Grounds, KG_PER_POUND, LB_PER_1000_SQ_FT_IN_G_PER_M2, LITRES_PER_CUBIC_FOOT,
    LITRES_PER_GALLON, Measures, Unit, shown, significant,
};
use crate::sources::{ARITHMETIC, OUR_CHOICE};
use crate::survey::Survey;

/// Water in biochar as it comes, % of its weight, when nobody says.
/// Source: from memory: 15–40 %.
const USUAL_MOISTURE: Band = Band { low: 15.0, likely: 25.0, high: 40.0 };

/// What the water can be, %. Source: our choice.
const MOISTURE: (f64, f64) = (0.0, 85.0);

/// What a cubic yard is. Source: legal definitions (derived).
const LITRES_PER_CUBIC_YARD: f64 = 764.554_857_984;
/// What t/ha is in lb/acre. Source: legal definitions (derived).
const LB_PER_ACRE_IN_T_PER_HA: f64 = 892.179_122;

/// What to buy and carry.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Purchase {
    /// Bags, price, what is left over, weights.
    pub figures: Vec<Figure>,
    /// The same amount in every measure: (what, how much).
    pub same: Vec<(&'static str, String)>,
    /// What the amounts in `same` rest on.
    pub grounds: Grounds,
    /// What the person gave that can't be, in words.
    pub doubts: Vec<String>,
}

/// The share of its weight (0–1) that is water, and a sentence where what was
/// given can't be.
pub(super) fn moisture(bag: &Bag) -> (Band, Option<String>) {
    match bag.moisture_percent {
        Some(percent) if (MOISTURE.0..=MOISTURE.1).contains(&percent) => {
            (Band::exactly(percent / 100.0), None)
        }
        other => {
            let doubt = other.map(|percent| {
                format!(
                    "The water given ({percent} %) can't be right: it must be 0 to 85 % of the \
                     weight. 15 to 40 % is taken until then."
                )
            });
            (USUAL_MOISTURE.map(|percent| percent / 100.0), doubt)
        }
    }
}

/// Mass as it comes (kg) of a dry mass (kg) with a share (0–1) of water.
pub fn as_it_comes(dry: Band, moisture: Band) -> Band {
    Band::new(
        dry.low / (1.0 - moisture.low),
        dry.likely / (1.0 - moisture.likely),
        dry.high / (1.0 - moisture.high),
    )
}

/// What to buy for this year; `None` when the plan uses no biochar.
pub fn purchase(survey: &Survey<'_>, plan: &Plan) -> Option<Purchase> {
    if !plan.uses_biochar() {
        return None;
    }
    let bag = &survey.case.biochar;
    let (water, doubt) = moisture(bag);
    let mut doubts: Vec<String> = doubt.into_iter().collect();
    let mut figures = Vec::new();
    let bought = Bought { material: &survey.material, dose: &plan.dose, water };
    if let Some(size) = size_of(bag, &mut doubts) {
        figures.extend(bought.in_bags(size, bag.price, &mut doubts));
        figures.extend(bought.one_bag(size));
    } else if bag.price.is_some() {
        doubts.push("Give the size of a bag as well, and the bags and their price follow.".into());
    }
    figures.extend(bought.weights());
    let same = bought.in_every_measure(survey.case.measures);
    Some(Purchase { figures, same, grounds: bought.of_measures(), doubts })
}

/// The size of a bag, litres, where one was given that can be.
fn size_of(bag: &Bag, doubts: &mut Vec<String>) -> Option<f64> {
    let size = bag.bag_litres?;
    if (0.1..=100_000.0).contains(&size) {
        return Some(size);
    }
    doubts.push(format!(
        "The size of a bag given ({size} L) can't be right. Give the litres on the bag."
    ));
    None
}

fn in_litres(litres: f64) -> String {
    format!("{} L", significant(litres, 3))
}

fn exact(value: f64, unit: &str) -> String {
    format!("{}\u{a0}{unit}", significant(value, 3))
}

/// The biochar of the plan as it is bought, with its share (0–1) of water.
struct Bought<'a> {
    material: &'a Material,
    dose: &'a Dose,
    water: Band,
}

impl Bought<'_> {
    fn counted(&self, rule: &str) -> Grounds {
        Grounds::new(rule, &[ARITHMETIC.derived()])
            .input("biochar for the bed", in_litres(self.dose.litres))
    }

    fn with_water(&self, rule: &str) -> Grounds {
        let percent = self.water.map(|share| 100.0 * share);
        let mut grounds = self.counted(rule).input(
            "water, of the weight as it comes",
            shown(&percent, Unit::Percent, Measures::Metric),
        );
        if !self.water.is_exact() {
            grounds = grounds
                .assume("15 to 40 % of its weight is water; nobody said.")
                .assume("Water fills the pores; a litre stays a litre.");
            grounds.sources.push(OUR_CHOICE.from_memory());
        }
        grounds
    }

    /// How many bags of a size, litres, what they cost and what they leave over.
    fn in_bags(&self, size: f64, price: Option<f64>, doubts: &mut Vec<String>) -> Vec<Figure> {
        // A volume that is a whole number of bags must not ask for one more.
        let bags = (self.dose.litres / size - 1e-9).ceil();
        let figure = |name, label, value, unit, grounds: Grounds| {
            Figure::new(name, label, Band::exactly(value), unit, grounds)
        };
        let of_bags = |rule: &str| self.counted(rule).input("bag", in_litres(size));
        let rule = "volume ÷ size of a bag, rounded up";
        let mut figures = vec![figure("bags", "bags to buy", bags, Unit::Bags, of_bags(rule))];
        match price {
            Some(price) if (0.0..=1e9).contains(&price) => {
                let grounds = of_bags("bags × price of one, in the money you pay in")
                    .input("price of one", significant(price, 6));
                let label = "price of the bags";
                figures.push(figure("price", label, bags * price, Unit::Money, grounds));
            }
            Some(price) => doubts
                .push(format!("The price given ({price}) can't be right. Give that of one bag.")),
            None => {}
        }
        let left = (bags * size - self.dose.litres).max(0.0);
        let grounds = of_bags("bags × size − volume");
        figures.push(figure("left-over", "left over in the last bag", left, Unit::Litre, grounds));
        figures
    }

    /// What one bag of a size, litres, covers and weighs.
    fn one_bag(&self, size: f64) -> Vec<Figure> {
        let mut figures = Vec::new();
        let a_square_metre = self.dose.litres / self.dose.area;
        if a_square_metre > 0.0 {
            let grounds =
                self.counted("size of a bag ÷ litres on 1 m²").input("bag", in_litres(size));
            let covers = Band::exactly(size / a_square_metre);
            let label = "one bag covers";
            figures.push(Figure::new("one-bag-covers", label, covers, Unit::SquareMetre, grounds));
        }
        let density = self.material.bulk_density;
        let dry = density.map(|density| size * density / 1000.0);
        let grounds = self.material.explain(
            self.with_water("size × bulk density ÷ 1000 ÷ (1 − water)")
                .input("bag", in_litres(size)),
            &[("bulk density, dry, kg/m³", density, Unit::None)],
        );
        figures.push(Figure::new(
            "one-bag-weighs",
            "a full bag weighs about",
            as_it_comes(dry, self.water),
            Unit::Kg,
            grounds,
        ));
        figures
    }

    /// What has to be carried: all of it, and the water in it.
    fn weights(&self) -> [Figure; 2] {
        let dry = self.dose.mass;
        let wet = as_it_comes(dry, self.water);
        let weighed = |rule: &str| {
            self.material.explain(self.with_water(rule), &[("biochar, dry", dry, Unit::Kg)])
        };
        let water = Band::new(wet.low - dry.low, wet.likely - dry.likely, wet.high - dry.high);
        let all = weighed("dry ÷ (1 − water)");
        let of_water = weighed("weight as it comes − dry weight");
        [
            Figure::new("mass-as-it-comes", "weight as it comes", wet, Unit::Kg, all),
            Figure::new("water-carried", "water in that weight", water, Unit::Kg, of_water),
        ]
    }

    /// The same amount in every measure of the trade.
    fn in_every_measure(&self, measures: Measures) -> Vec<(&'static str, String)> {
        let dose = self.dose;
        let weight = |band: Band, factor: f64, unit: &str| {
            let [low, likely, high] =
                [band.low, band.likely, band.high].map(|v| significant(v * factor, 3));
            if low == high {
                format!("{likely}\u{a0}{unit}")
            } else {
                format!("{likely} ({low}–{high})\u{a0}{unit}")
            }
        };
        let tonnes = dose.mass.map(|kg| tonnes_per_ha(kg / dose.area));
        let mut same = vec![
            ("of the worked soil, by volume", exact(dose.share, "%")),
            ("of the worked soil, by mass", weight(dose.percent, 1.0, "%")),
            ("litres", exact(dose.litres, "L")),
            ("US gallons", exact(dose.litres / LITRES_PER_GALLON, "gal")),
            ("cubic feet", exact(dose.litres / LITRES_PER_CUBIC_FOOT, "cu ft")),
        ];
        if measures == Measures::Us {
            same.push(("cubic yards", exact(dose.litres / LITRES_PER_CUBIC_YARD, "cu yd")));
        }
        same.extend([
            ("kilograms, dry", weight(dose.mass, 1.0, "kg")),
            ("pounds, dry", weight(dose.mass, 1.0 / KG_PER_POUND, "lb")),
            ("tonnes on a hectare, dry", weight(tonnes, 1.0, "t/ha")),
            (
                "pounds on 1000 square feet, dry",
                weight(tonnes, 100.0 * LB_PER_1000_SQ_FT_IN_G_PER_M2, "lb/1000 sq ft"),
            ),
            ("pounds on an acre, dry", weight(tonnes, LB_PER_ACRE_IN_T_PER_HA, "lb/acre")),
        ]);
        same
    }

    /// What the amounts in every measure rest on.
    fn of_measures(&self) -> Grounds {
        let grounds = Grounds::new(
            "the same biochar in every measure: volume from depth, share and area; weight by its \
             bulk density",
            &[ARITHMETIC.derived()],
        )
        .input("area", exact(self.dose.area, "m²"))
        .input("worked depth", exact(self.dose.depth, "cm"));
        let density = ("bulk density, dry, kg/m³", self.material.bulk_density, Unit::None);
        self.material.explain(grounds, &[density])
    }
}
