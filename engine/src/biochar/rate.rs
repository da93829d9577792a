//! How much: the share by volume of the worked depth, and what holds it down.

use crate::biochar::liming::{self, Buffering, ph_rise};
use crate::biochar::spread::{inverse, product};
use crate::biochar::{Material, Situation};
use crate::case::{BedKind, Feedstock};
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::ranges::Level;
use crate::soil::{Method, Property};
use crate::sources::{ARITHMETIC, Citation, GUO_2020, OUR_CHOICE};

/// Share by volume when nobody asks for another, %, with the range that is
/// reasonable.
/// Source: garden figures of 5–10 % from memory; our choice.
pub const USUAL_SHARE: Band = Band { low: 2.0, likely: 5.0, high: 10.0 };

/// The shares a person may ask for, %. Our choice.
const SHARES: (f64, f64) = (1.0, 20.0);

/// The most years that a share may be spread over.
/// Our choice.
pub(super) const MOST_YEARS: u32 = 10;

/// The most in one season, % by volume. Source: our choice.
const MOST_SHARE: f64 = 10.0;

/// The most in one season, t/ha dry. Source: our choice.
const MOST_TONNES: f64 = 20.0;

/// Treated soil should stay below this pH. Source: Guo 2020 (opened).
pub const MOST_PH: f64 = 7.5;

/// Treated soil should stay below these salts in a 1:1 suspension, dS/m.
/// Source: Guo 2020 (opened).
pub const MOST_EC: f64 = 2.7;

/// The most manure biochar where phosphorus is plentiful, % by mass.
/// Source: the low end of Guo 2020's 1–3 % (opened).
const MOST_MANURE_PERCENT: f64 = 1.0;

/// Worked depth when nobody says, cm.
/// Our choice.
const USUAL_DEPTH: f64 = 10.0;

/// Density of dry soil when nobody measured it, g/cm³.
/// Source: common practice, no source.
const USUAL_SOIL_DENSITY: Band = Band { low: 1.1, likely: 1.3, high: 1.5 };

/// Litres of biochar for 1 m² at a share (% by volume) of the worked depth (cm).
pub fn litres_per_m2(depth_cm: f64, share: f64) -> f64 {
    10.0 * depth_cm * share / 100.0
}

/// Tonnes per hectare in kg per m².
pub fn tonnes_per_ha(kg_per_m2: f64) -> f64 {
    10.0 * kg_per_m2
}

/// kg of biochar per 100 kg of soil in the worked depth (cm), soil density in g/cm³.
pub fn mass_percent(kg_per_m2: f64, depth_cm: f64, soil_density: f64) -> f64 {
    100.0 * kg_per_m2 / (depth_cm * 10.0 * soil_density)
}

/// How much goes into the bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// Area, m².
    pub area: f64,
    /// Worked depth, cm.
    pub depth: f64,
    /// Share by volume, %.
    pub share: f64,
    /// Volume of biochar, litres.
    pub litres: f64,
    /// Dry mass, kg.
    pub mass: Band,
    /// Biochar in the soil, % by mass.
    pub percent: Band,
    /// What held the share down.
    pub capped_by: Vec<String>,
    /// Every amount as a figure.
    pub figures: Vec<Figure>,
}

/// What bounds the share from above.
pub(super) struct Cap {
    pub share: f64,
    pub why: String,
    pub source: Citation,
}

/// What biochar the soil has had already.
#[derive(Clone, Copy)]
pub(super) struct Before {
    /// pH in water now.
    pub ph: Option<f64>,
    /// Biochar in the soil, % by mass.
    pub percent: f64,
}

impl Before {
    /// None yet.
    pub fn any(situation: &Situation<'_>) -> Before {
        Before { ph: liming::water_ph(situation), percent: 0.0 }
    }
}

/// The bed as far as it is known, with what was assumed.
pub(super) struct Ground {
    pub area: f64,
    pub depth: f64,
    pub soil_density: Band,
    pub assumed: Vec<String>,
}

impl Ground {
    pub fn of(situation: &Situation<'_>) -> Ground {
        let bed = &situation.case.bed;
        let mut assumed = Vec::new();
        let area = bed.area_m2.filter(|a| a.is_finite() && *a > 0.0).unwrap_or_else(|| {
            assumed.push("1 m² (11 sq ft): the area of the bed isn't known.".to_string());
            1.0
        });
        let depth = bed.depth_cm.filter(|d| (1.0..=100.0).contains(d)).unwrap_or_else(|| {
            assumed.push(match bed.depth_cm {
                None => "Worked 10 cm (4 in) deep; nobody said.".to_string(),
                Some(_) => "Worked 10 cm (4 in) deep; a depth must be 1 to 100 cm.".to_string(),
            });
            USUAL_DEPTH
        });
        let measured = situation.soil.value(Property::BulkDensity);
        let soil_density = match measured.filter(|d| (0.2..=2.2).contains(d)) {
            Some(d) => Band::exactly(d),
            None => {
                assumed.push("Dry soil weighs 1.3 (1.1–1.5) g/cm³.".to_string());
                USUAL_SOIL_DENSITY
            }
        };
        Ground { area, depth, soil_density, assumed }
    }

    /// kg of biochar per m² at a share.
    pub fn kg_per_m2(&self, share: f64, bulk_density: Band) -> Band {
        let litres = litres_per_m2(self.depth, share);
        bulk_density.map(|density| litres * density / 1000.0)
    }

    /// % by mass at a share.
    pub fn percent(&self, share: f64, bulk_density: Band) -> Band {
        let kg = self.kg_per_m2(share, bulk_density);
        Band::new(
            mass_percent(kg.low, self.depth, self.soil_density.high),
            mass_percent(kg.likely, self.depth, self.soil_density.likely),
            mass_percent(kg.high, self.depth, self.soil_density.low),
        )
    }
}

/// The pH after a share of this biochar.
pub fn ph_after(situation: &Situation<'_>, material: &Material, share: f64) -> Option<Band> {
    let ph = liming::water_ph(situation)?;
    let percent = Ground::of(situation).percent(share, material.bulk_density);
    let rise = liming::rise(Some(ph), percent, material, &liming::buffering(situation));
    Some(rise.map(|rise| ph + rise))
}

/// The rise of pH once all the lime in `percent` biochar by mass has worked.
pub(super) fn rise_in_the_end(percent: Band, material: &Material, buffering: &Buffering) -> Band {
    let per_kg = percent.map(|p| p * 10.0);
    let liming = material.liming.map(|l| l / 100.0);
    product(&[per_kg, liming, inverse(buffering.band)]).map(|x| ph_rise(x, 1.0, 1.0))
}

/// The share by volume at which the biochar's own salts bring the soil to
/// [`MOST_EC`]; `None` when the bag doesn't give its salts.
///
/// The bag's reading is taken in 20 parts of water, the soil's in 1 part.
pub fn share_by_salts(situation: &Situation<'_>, material: &Material) -> Option<f64> {
    share_left_by_salts(situation, material, 0.0)
}

/// The same where some biochar is in the soil already, % by mass.
fn share_left_by_salts(situation: &Situation<'_>, material: &Material, there: f64) -> Option<f64> {
    let added_per_percent = material.ec? * 20.0 / 100.0;
    let room = (MOST_EC - soil_ec(situation) - added_per_percent * there).max(0.0);
    let percent_per_share = Ground::of(situation).percent(1.0, material.bulk_density).likely;
    let share = room / (added_per_percent * percent_per_share);
    share.is_finite().then_some(share)
}

/// Salts of the soil in a 1:1 suspension, dS/m; 0 when they weren't measured so.
fn soil_ec(situation: &Situation<'_>) -> f64 {
    situation
        .soil
        .get(Property::Ec)
        .filter(|m| m.method == Some(Method::Water1To1))
        .map_or(0.0, |m| m.amount.number())
}

/// All that bounds the share of one season.
pub(super) fn caps(
    situation: &Situation<'_>,
    material: &Material,
    ground: &Ground,
    buffering: &Buffering,
    before: Before,
) -> Vec<Cap> {
    let mut caps = vec![Cap {
        share: MOST_SHARE,
        why: "10 % by volume is the most for one season. Add more next year if you want it."
            .to_string(),
        source: OUR_CHOICE.unsourced(),
    }];
    let per_share = |percent: bool| {
        if percent {
            ground.percent(1.0, material.bulk_density).likely
        } else {
            tonnes_per_ha(ground.kg_per_m2(1.0, material.bulk_density).likely)
        }
    };
    if situation.case.bed.kind != Some(BedKind::Container) {
        caps.push(Cap {
            share: MOST_TONNES / per_share(false),
            why: "20 t/ha (2 kg on 1 m²) is the most for one season.".to_string(),
            source: OUR_CHOICE.unsourced(),
        });
    }
    if let Some(ph) = before.ph {
        let one = ground.percent(1.0, material.bulk_density);
        // Lime that is slow in its first year works in the years after.
        let per_share = rise_in_the_end(one, material, buffering).likely;
        if per_share > 0.0 && material.ph.likely > MOST_PH {
            caps.push(Cap {
                share: (MOST_PH - ph).max(0.0) / per_share,
                why: format!(
                    "More would in the end lift the pH from {} past 7.5.",
                    significant(ph, 3)
                ),
                source: GUO_2020.opened(),
            });
        }
    }
    if let Some(share) = share_left_by_salts(situation, material, before.percent) {
        caps.push(Cap {
            share,
            why: "More of this biochar would bring too many salts (over 2.7 dS/m, 1:1)."
                .to_string(),
            source: GUO_2020.opened(),
        });
    }
    let phosphorus = situation.findings.level(Property::Phosphorus);
    if material.feedstock == Some(Feedstock::Manure) && phosphorus.is_some_and(Level::is_surplus) {
        caps.push(Cap {
            share: (MOST_MANURE_PERCENT - before.percent).max(0.0) / per_share(true),
            why: "Phosphorus is high already, and manure biochar brings more: at most 1 % by mass."
                .to_string(),
            source: GUO_2020.opened(),
        });
    }
    caps
}

/// The share wanted in all, %, and the years it is spread over.
pub(super) fn wanted(situation: &Situation<'_>) -> (f64, u32) {
    let bag = &situation.case.biochar;
    let asked = bag.share_percent.filter(|s| s.is_finite());
    let share = asked.map_or(USUAL_SHARE.likely, |s| s.clamp(SHARES.0, SHARES.1));
    (share, bag.years.unwrap_or(1).clamp(1, MOST_YEARS))
}

/// The dose for this bed: what is wanted this year, held down by what bounds it.
pub fn dose(situation: &Situation<'_>, material: &Material) -> Dose {
    let ground = Ground::of(situation);
    let buffering = liming::buffering(situation);
    let bag = &situation.case.biochar;
    let mut notes = Vec::new();
    let asked = bag.share_percent.filter(|s| s.is_finite());
    let (in_all, years) = wanted(situation);
    if asked.is_some_and(|s| s != in_all) {
        notes.push("The share asked for lies outside 1 to 20 %; the nearest is taken.".to_string());
    }
    if bag.years.is_some_and(|y| y != years) {
        notes.push("The years given lie outside 1 to 10; the nearest is taken.".to_string());
    }
    if years > 1 {
        notes.push(format!("This year's part of {in_all} % over {years} years."));
    }
    let wanted = in_all / f64::from(years);
    let caps = caps(situation, material, &ground, &buffering, Before::any(situation));
    let binding = caps.iter().min_by(|a, b| a.share.total_cmp(&b.share));
    let limit = binding.map_or(wanted, |c| c.share);
    let share = wanted.min(limit);
    let mut capped_by = Vec::new();
    let mut share_sources = vec![OUR_CHOICE.unsourced(), GUO_2020.opened()];
    if let Some(cap) = binding.filter(|cap| cap.share < wanted) {
        capped_by.push(cap.why.clone());
        share_sources.push(cap.source);
    }
    let litres = litres_per_m2(ground.depth, share) * ground.area;
    let kg_per_m2 = ground.kg_per_m2(share, material.bulk_density);
    let mass = kg_per_m2.map(|kg| kg * ground.area);
    let percent = ground.percent(share, material.bulk_density);

    let with_bed = |mut grounds: Grounds| {
        grounds = grounds
            .input("area", format!("{} m²", significant(ground.area, 3)))
            .input("worked depth", format!("{} cm", significant(ground.depth, 3)))
            .input("share by volume", format!("{} %", significant(share, 3)));
        grounds.assumed.extend(ground.assumed.iter().cloned());
        grounds
    };
    let density = [("bulk density", material.bulk_density, Unit::None)];
    let weigh = |rule: &str| {
        let grounds = with_bed(Grounds::new(rule, &[ARITHMETIC.derived()]));
        material.explain(grounds, &density)
    };
    let mut share_grounds = Grounds::new(
        "the share wanted, held down by the season's limit, pH, salts and phosphorus",
        &share_sources,
    );
    if asked.is_none() {
        share_grounds = share_grounds.assume("5 % by volume; 2 to 10 % is reasonable.");
    }
    share_grounds.assumed.extend(notes);
    let share_band = match asked {
        Some(_) => Band::exactly(share),
        None => {
            let of_year = |share: f64| share / f64::from(years);
            let (least, most) = (of_year(USUAL_SHARE.low), of_year(USUAL_SHARE.high));
            Band::new(least.min(share), share, most.min(limit))
        }
    };
    let mut figures = vec![
        Figure {
            name: "share-by-volume",
            label: "share by volume",
            band: share_band,
            unit: Unit::Percent,
            grounds: share_grounds,
        },
        Figure {
            name: "biochar-volume",
            label: "biochar",
            band: Band::exactly(litres),
            unit: Unit::Litre,
            grounds: with_bed(Grounds::new(
                "10 × depth (cm) × share ÷ 100 = litres on 1 m²; × area",
                &[ARITHMETIC.derived()],
            )),
        },
        Figure {
            name: "biochar-dry-mass",
            label: "biochar, dry",
            band: mass,
            unit: Unit::Kg,
            grounds: weigh("volume × bulk density (kg/m³) ÷ 1000"),
        },
        Figure {
            name: "application-rate",
            label: "application rate, dry",
            band: kg_per_m2.map(tonnes_per_ha),
            unit: Unit::TonnePerHa,
            grounds: weigh("10 × kg on 1 m²"),
        },
        Figure {
            name: "share-by-mass",
            label: "share by mass",
            band: percent,
            unit: Unit::Percent,
            grounds: weigh("biochar ÷ (depth × density of dry soil)").input(
                "density of dry soil",
                shown(&ground.soil_density, Unit::GPerCm3, Measures::Metric),
            ),
        },
    ];
    if let Some(size) = bag.bag_litres.filter(|b| b.is_finite() && *b > 0.0) {
        // A volume that is a whole number of bags must not ask for one more.
        let bags = (litres / size - 1e-9).ceil();
        figures.push(Figure {
            name: "bags",
            label: "biochar in bags",
            band: Band::exactly(bags),
            unit: Unit::Bags,
            grounds: with_bed(Grounds::new(
                "volume ÷ size of a bag, rounded up",
                &[ARITHMETIC.derived()],
            ))
            .input("bag", format!("{} L", significant(size, 3))),
        });
    }
    Dose {
        area: ground.area,
        depth: ground.depth,
        share,
        litres,
        mass,
        percent,
        capped_by,
        figures,
    }
}
