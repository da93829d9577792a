//! Lead, arsenic and cadmium: the published levels for totals, each with its
//! issuer and its date, and why an extract is never held against them.

use time::Date;

use crate::details::Traits;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::ranges::{amount_text, lead_level};
use crate::region::Region;
use crate::soil::{Amount, Measure, Method, Property, Texture, listed};
use crate::sources::*;
use crate::survey::Survey;

/// A published level for the total of a metal.
pub struct Level {
    metal: Property,
    /// Whose level it is and what for, within a sentence.
    pub whose: &'static str,
    /// When it was set or held.
    set: &'static str,
    /// mg/kg in sand, in loam and silt, and in clay.
    levels: [f64; 3],
    /// The region it holds in; empty where it is said everywhere.
    region: &'static str,
    citations: &'static [Citation],
}

// From `engine/facts/metals.csv`.
include!(concat!(env!("OUT_DIR"), "/metals.rs"));

impl Level {
    /// The levels for a metal in a region, but those that change with the day: the region's own
    /// and those that are said everywhere.
    pub fn of(
        metal: Property,
        region: Option<&'static Region>,
    ) -> impl Iterator<Item = &'static Level> {
        LEVELS.iter().filter(move |level| level.metal == metal && level.holds_in(region))
    }

    fn holds_in(&self, region: Option<&'static Region>) -> bool {
        self.region.is_empty()
            || region.is_some_and(|here| [here.id, here.within].contains(&self.region))
    }

    /// mg/kg for a texture; both ends of the range without one.
    pub fn at(&self, texture: Option<Texture>) -> (f64, f64) {
        let [sand, loam, clay] = self.levels;
        match texture {
            None => (sand, clay),
            Some(Texture::Sand | Texture::LoamySand) => same(sand),
            Some(Texture::Clay | Texture::SiltyClay | Texture::SandyClay) => same(clay),
            Some(_) => same(loam),
        }
    }
}

/// How a result stands against a level that may be a range.
fn stands(amount: Amount, (low, high): (f64, f64)) -> &'static str {
    match amount {
        Amount::Exactly(v) if v > high => "over",
        Amount::Exactly(v) | Amount::Below(v) if v <= low => "not over",
        Amount::Above(v) if v >= high => "over",
        Amount::Exactly(_) => "within",
        _ => "perhaps over",
    }
}

const METALS: [Property; 3] = [Property::Lead, Property::Arsenic, Property::Cadmium];

pub(super) fn work_out(survey: &Survey<'_>, traits: &mut Traits) {
    let mut extracts: Vec<Property> = Vec::new();
    let mut any = false;
    for metal in METALS {
        // A total says more than an extract of the same metal.
        let of_metal = || survey.soil.measures.iter().filter(|m| m.property == metal);
        let is_total =
            |m: &&Measure| m.method == Some(Method::TotalAcid) && m.unit == Unit::MgPerKg;
        let Some(measure) = of_metal().find(is_total).or_else(|| of_metal().next()) else {
            continue;
        };
        any = true;
        if is_total(&measure) {
            total(survey, measure, traits);
        } else if !ammonium_nitrate(measure, traits) {
            extracts.push(metal);
        }
    }
    if !extracts.is_empty() {
        refuse(survey, &extracts, traits);
    }
    if any {
        traits.say(
            "metals",
            "Ask your local health or environment office which level holds where you live, and what it means for your garden.",
            Grounds::new("whenever a metal was measured", &[COMMON_PRACTICE.unsourced()]),
        );
    }
}

fn refuse(survey: &Survey<'_>, metals: &[Property], traits: &mut Traits) {
    let mut grounds = Grounds::new(
        "A weak extract screens; the levels are for totals.",
        &[VERMONT_METALS.opened()],
    );
    for metal in metals {
        if let Some(m) = survey.soil.get(*metal) {
            let method = m.method.map_or("method not known", Method::label);
            let value = format!("{}, {method}", amount_text(m.amount, m.unit));
            grounds = grounds.input(metal.label(), value);
        }
    }
    let text = format!(
        "No level is held against {}: it is not a total by weight. An extract takes out only part, and the published levels are for the total. Ask the lab for the total, by digestion in strong acid.",
        listed(metals)
    );
    traits.say("metals", text, grounds);
}

/// A published level, or a range of levels by texture, mg/kg: whose it is, and when it was set.
type Held = (&'static str, (f64, f64), &'static str);

/// The US levels for lead on a day, each that says more than the one before.
fn lead_levels(today: Option<Date>, grounds: &mut Grounds) -> Vec<Held> {
    let Some(level) = lead_level(today) else { return Vec::new() };
    grounds.sources.push(level.citation);
    let since = level.since;
    let mut all = vec![("the US EPA screening level for homes", same(level.screening), since)];
    if level.with_other_sources < level.screening {
        let level = same(level.with_other_sources);
        all.push(("its level where other lead is near", level, since));
    }
    if let Some(removal) = level.removal.filter(|r| *r > level.screening) {
        all.push(("its level for taking soil away", same(removal), since));
    }
    all
}

fn total(survey: &Survey<'_>, measure: &Measure, traits: &mut Traits) {
    let metal = measure.property;
    let amount = measure.amount;
    let found = amount_text(amount, measure.unit);
    let mut grounds =
        Grounds::new("Total by acid digestion, held against each published level.", &[])
            .input(metal.label(), &found);
    let mut levels = match metal {
        Property::Lead => lead_levels(survey.case.season.today, &mut grounds),
        _ => Vec::new(),
    };
    for level in Level::of(metal, survey.region) {
        levels.push((level.whose, level.at(survey.texture), level.set));
        grounds.cite(level.citations);
    }
    let held = levels.into_iter().map(|(who, (low, high), when)| {
        let value = if low == high {
            significant(low, 3)
        } else {
            format!("{} to {} by texture", significant(low, 3), significant(high, 3))
        };
        format!("{} {who} ({value} mg/kg, {when})", stands(amount, (low, high)))
    });
    let held = held.collect::<Vec<_>>().join("; ");
    if let Some(texture) = survey.texture {
        grounds = grounds.input("texture", texture.label());
    }
    let beside = match metal {
        Property::Lead => {
            "A screening level says where to look closer, not what is safe: no level of lead is known to be safe. Soil without added lead holds 10 to 50 mg/kg."
        }
        Property::Arsenic => {
            "Published levels run from 0.04 to 200 mg/kg among US states alone, and soils hold about 1 to 45 by nature."
        }
        _ => "Leaf crops take cadmium up most where the soil is acid.",
    };
    if metal == Property::Arsenic {
        grounds.sources.push(ARSENIC_LIMITS_2010.opened());
    }
    grounds.sources.push(match metal {
        Property::Lead => OSU_LEAD.opened(),
        _ => COMMON_PRACTICE.unsourced(),
    });
    traits.say("metals", format!("Total {} is {found}: {held}. {beside}", metal.label()), grounds);
    if metal == Property::Lead {
        about_lead(survey, amount, traits);
    }
}

/// Lead above this was most likely added, mg/kg.
const NATURAL_LEAD: f64 = 50.0;
/// Lead settles on top: a sample that goes deeper than this may hide it, cm.
const DUST_DEPTH: f64 = 5.0;

fn about_lead(survey: &Survey<'_>, amount: Amount, traits: &mut Traits) {
    if stands(amount, same(NATURAL_LEAD)) == "not over" {
        return;
    }
    traits.say(
        "metals",
        "Against lead: keep the pH at 6.5 to 7, dig in compost, mulch bare soil, and grow food in raised beds of clean soil. Fruits such as tomato and beans carry the least; roots and leaves the most, mainly as soil that sticks to them: wash and peel.",
        Grounds::new(
            "Total lead above 50 mg/kg, which points to lead that was added.",
            &[OSU_LEAD.opened(), LEAD_UMD.opened(), GARDEN_LEAD_UPTAKE.opened()],
        )
        .input("lead", amount_text(amount, Unit::MgPerKg)),
    );
    let slice = survey.slices(Property::Lead).next().and_then(|(_, _, slice)| slice);
    if let Some((_, bottom)) = slice.filter(|(_, bottom)| *bottom > DUST_DEPTH) {
        let depth = |cm: f64| survey.shown(&Band::exactly(cm), Unit::Cm);
        let text = format!(
            "Lead lies on top. This sample goes down to {}; where children play, have the top {} tested by itself.",
            depth(bottom),
            depth(1.9)
        );
        traits.say(
            "metals",
            text,
            Grounds::new(
                "A sample for lead is taken from the top ¾ inch.",
                &[UMN_SAMPLING.opened()],
            ),
        );
    }
}

fn same(level: f64) -> (f64, f64) {
    (level, level)
}

/// Germany's values of 1999 for what ammonium nitrate takes out: the one extract of these metals
/// that has levels of its own. Whether it spoke.
fn ammonium_nitrate(measure: &Measure, traits: &mut Traits) -> bool {
    if measure.property == Property::Arsenic
        || measure.method != Some(Method::AmmoniumNitrate)
        || measure.unit != Unit::MgPerKg
    {
        return false;
    }
    let found = amount_text(measure.amount, measure.unit);
    let metal = measure.property.label();
    let mut text = format!(
        "In ammonium nitrate {metal} is {found}: {} Germany's value for vegetable gardens (0.1 mg/kg in that extract, 1999 to 2023).",
        stands(measure.amount, same(0.1))
    );
    if measure.property == Property::Cadmium {
        text.push_str(" For wheat and for vegetables that take up much cadmium it was 0.04.");
    }
    text.push_str(" It says what plants may take up, not what is in the soil; levels for totals don't go with it.");
    let grounds = Grounds::new(
        "Held against the level for the same extract.",
        &[GERMAN_SOIL_1999.opened(), VERMONT_METALS.opened()],
    )
    .input(metal, found);
    traits.say("metals", text, grounds);
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_level_of_a_region_is_said_there_and_in_its_parts_only() {
        let of = |id| Region::of(id).expect("a region");
        let level = |region| Level {
            metal: Property::Lead,
            whose: "a state's level",
            set: "2024",
            levels: [63.0; 3],
            region,
            citations: &[],
        };
        let part = Region::all().iter().find(|region| !region.within.is_empty()).expect("a part");
        assert!(level("germany").holds_in(Some(of("germany"))));
        assert!(level(part.within).holds_in(Some(part)) && !level("germany").holds_in(Some(part)));
        assert!(
            !level("germany").holds_in(Some(of("us-iowa"))) && !level("germany").holds_in(None)
        );
        assert!(level("").holds_in(Some(of("us-iowa"))) && level("").holds_in(None));
    }
}
