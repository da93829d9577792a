//! What to buy and carry: bags, money, weight with its water, and the same
//! amount in every measure of the trade.

use crate::case::Bag;
use crate::plan::{Plan, tonnes_per_ha};
use crate::quantity::{
    Band, Figure, Grounds, KG_PER_POUND, LB_PER_1000_SQ_FT_IN_T_PER_HA, LITRES_PER_CUBIC_FOOT,
    LITRES_PER_GALLON, Measures, Unit, shown, significant,
};
use crate::sources::{ARITHMETIC, OUR_CHOICE};
use crate::survey::Survey;

/// Water in biochar as it comes, % of its weight, when nobody says.
/// Source: from memory: 15–40 %.
const USUAL_MOISTURE: Band = Band { low: 15.0, likely: 25.0, high: 40.0 };

/// What the water can be, %. Source: our choice.
const MOISTURE: (f64, f64) = (0.0, 85.0);

/// What a cubic yard and lb/acre are. Source: legal definitions (derived).
const LITRES_PER_CUBIC_YARD: f64 = 764.554_857_984;
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
    let (material, dose) = (&survey.material, &plan.dose);
    if !plan.uses_biochar() {
        return None;
    }
    let bag = &survey.case.biochar;
    let (water, doubt) = moisture(bag);
    let mut doubts: Vec<String> = doubt.into_iter().collect();
    let mut figures = Vec::new();
    let mut add = |name, label, band, unit, grounds| {
        figures.push(Figure::new(name, label, band, unit, grounds));
    };
    let litres = format!("{} L", significant(dose.litres, 3));
    let counted = |rule: &str| {
        Grounds::new(rule, &[ARITHMETIC.derived()]).input("biochar for the bed", litres.clone())
    };
    let of_water = |rule: &str| {
        let percent = water.map(|share| 100.0 * share);
        let mut grounds = counted(rule).input(
            "water, of the weight as it comes",
            shown(&percent, Unit::Percent, Measures::Metric),
        );
        if !water.is_exact() {
            grounds = grounds
                .assume("15 to 40 % of its weight is water; nobody said.")
                .assume("Water fills the pores; a litre stays a litre.");
            grounds.sources.push(OUR_CHOICE.from_memory());
        }
        grounds
    };
    let size = bag.bag_litres.filter(|size| {
        let sound = (0.1..=100_000.0).contains(size);
        if !sound {
            doubts.push(format!(
                "The size of a bag given ({size} L) can't be right. Give the litres on the bag."
            ));
        }
        sound
    });
    if let Some(size) = size {
        // A volume that is a whole number of bags must not ask for one more.
        let bags = (dose.litres / size - 1e-9).ceil();
        let of_bags =
            |rule: &str| counted(rule).input("bag", format!("{} L", significant(size, 3)));
        add(
            "bags",
            "bags to buy",
            Band::exactly(bags),
            Unit::Bags,
            of_bags("volume ÷ size of a bag, rounded up"),
        );
        match bag.price {
            Some(price) if (0.0..=1e9).contains(&price) => add(
                "price",
                "price of the bags",
                Band::exactly(bags * price),
                Unit::Money,
                of_bags("bags × price of one, in the money you pay in")
                    .input("price of one", significant(price, 6)),
            ),
            Some(price) => doubts
                .push(format!("The price given ({price}) can't be right. Give that of one bag.")),
            None => {}
        }
        add(
            "left-over",
            "left over in the last bag",
            Band::exactly((bags * size - dose.litres).max(0.0)),
            Unit::Litre,
            of_bags("bags × size − volume"),
        );
        let a_square_metre = dose.litres / dose.area;
        if a_square_metre > 0.0 {
            add(
                "one-bag-covers",
                "one bag covers",
                Band::exactly(size / a_square_metre),
                Unit::SquareMetre,
                of_bags("size of a bag ÷ litres on 1 m²"),
            );
        }
        let dry = material.bulk_density.map(|density| size * density / 1000.0);
        let rule = "size × bulk density ÷ 1000 ÷ (1 − water)";
        add(
            "one-bag-weighs",
            "a full bag weighs about",
            as_it_comes(dry, water),
            Unit::Kg,
            material.explain(
                of_water(rule).input("bag", format!("{} L", significant(size, 3))),
                &[("bulk density, dry, kg/m³", material.bulk_density, Unit::None)],
            ),
        );
    } else if bag.price.is_some() {
        doubts.push("Give the size of a bag as well, and the bags and their price follow.".into());
    }
    let wet = as_it_comes(dose.mass, water);
    let weighed = |rule: &str| {
        let grounds = of_water(rule);
        material.explain(grounds, &[("biochar, dry", dose.mass, Unit::Kg)])
    };
    add("mass-as-it-comes", "weight as it comes", wet, Unit::Kg, weighed("dry ÷ (1 − water)"));
    let carried = Band::new(
        wet.low - dose.mass.low,
        wet.likely - dose.mass.likely,
        wet.high - dose.mass.high,
    );
    add(
        "water-carried",
        "water in that weight",
        carried,
        Unit::Kg,
        weighed("weight as it comes − dry weight"),
    );

    let exact = |value: f64, unit: &str| format!("{}\u{a0}{unit}", significant(value, 3));
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
    if survey.case.measures == Measures::Us {
        same.push(("cubic yards", exact(dose.litres / LITRES_PER_CUBIC_YARD, "cu yd")));
    }
    same.extend([
        ("kilograms, dry", weight(dose.mass, 1.0, "kg")),
        ("pounds, dry", weight(dose.mass, 1.0 / KG_PER_POUND, "lb")),
        ("tonnes on a hectare, dry", weight(tonnes, 1.0, "t/ha")),
        (
            "pounds on 1000 square feet, dry",
            weight(tonnes, LB_PER_1000_SQ_FT_IN_T_PER_HA, "lb/1000 sq ft"),
        ),
        ("pounds on an acre, dry", weight(tonnes, LB_PER_ACRE_IN_T_PER_HA, "lb/acre")),
    ]);
    let grounds = material.explain(
        Grounds::new(
            "the same biochar in every measure: volume from depth, share and area; weight by its \
             bulk density",
            &[ARITHMETIC.derived()],
        )
        .input("area", exact(dose.area, "m²"))
        .input("worked depth", exact(dose.depth, "cm")),
        &[("bulk density, dry, kg/m³", material.bulk_density, Unit::None)],
    );
    Some(Purchase { figures, same, grounds, doubts })
}
