//! Published ranges as tables, and judging a measure by them in its own
//! extractant.
//!
//! ```
//! use emberloam_engine::quantity::Unit;
//! use emberloam_engine::ranges::{judge, Level, Setting};
//! use emberloam_engine::soil::{Amount, Measure, Method, Property, Soil};
//!
//! let phosphorus = Measure {
//!     property: Property::Phosphorus,
//!     amount: Amount::Exactly(38.0),
//!     unit: Unit::MgPerKg,
//!     method: Some(Method::Mehlich3),
//! };
//! let finding = judge(&phosphorus, &Soil::default(), &Setting::default());
//! assert_eq!(finding.level, Some(Level::Low));
//! // Another publication says otherwise, and both are shown.
//! assert!(finding.second_opinions[0].disagrees);
//! ```

mod choice;
mod finding;
mod laboratory;
mod lead;
mod limits;
mod manganese;
mod organic_matter;
mod ph;
mod salts;
mod scheme;
mod tables;
mod unnamed;
mod usual;

use crate::quantity::{Unit, significant};
use crate::ranges::choice::{Choice, Said, choose, has_table, known};
use crate::region::Region;
use crate::soil::{Measure, Method, PlantGroup, Property, Soil, SoilGroup, Texture};

pub use crate::soil::Level;
pub(crate) use choice::has_table as region_judges;
pub use finding::{Finding, Findings, Opinion, Range, Step};
pub use laboratory::beside as beside_the_laboratory;
pub use lead::{LEAD_LEVELS, LeadLevel, lead_level, total_lead_likely};
pub(crate) use limits::has_free_lime;
pub use manganese::activity_index;
pub use organic_matter::texture_decides;
pub use ph::reaction_class;
pub use salts::{as_saturated_paste, method_decides};
pub(crate) use scheme::amount_text;
pub use scheme::{NO_CHANCE, Placed, Scheme, place};

/// What a range may depend on beside the soil.
#[derive(Clone, Copy, Debug, Default)]
pub struct Setting {
    /// The plants; mixed vegetables until somebody says.
    pub plants: Option<PlantGroup>,
    /// The texture, when it is known.
    pub texture: Option<Texture>,
    /// The group that its region counts the soil to, when it is known.
    pub group: Option<SoilGroup>,
    /// The region, when it is known: its tables judge before all others.
    pub region: Option<&'static Region>,
    /// The tables of a region's own file.
    pub own: &'static [Scheme],
}

/// Every published scheme that measures are judged by.
pub fn schemes() -> impl Iterator<Item = &'static Scheme> {
    tables::all()
}

/// Judges one measure by the published ranges for its own extractant and
/// unit; when it can't be judged, the finding says why and what would help.
pub fn judge(measure: &Measure, soil: &Soil, setting: &Setting) -> Finding {
    let property = measure.property;
    if let Some(why) = never_judged(property)
        && !(setting.region.is_some() && has_table(measure, setting))
    {
        return Finding::not_judged(why);
    }
    let by_volume = matches!(
        (measure.unit, property.unit()),
        (Unit::MgPerL, Unit::MgPerKg) | (Unit::MeqPer100cm3, Unit::MeqPer100g)
    );
    if measure.unit == Unit::Index {
        return match setting.region {
            Some(_) => look_up(measure, soil, setting),
            None => Finding {
                wants_region: true,
                ..Finding::not_judged(
                    "This is the laboratory's own index, not an amount. Say where the soil lies, or ask the laboratory for the amount.",
                )
            },
        };
    }
    if property.is_extracted() && measure.method.is_none() {
        return unnamed::by_every_usual(measure, soil, setting);
    }
    if measure.unit != property.unit() && !by_volume {
        return Finding::not_judged(format!(
            "{} is judged in {}, not in {}. Put the unit right.",
            property.label(),
            property.unit().symbol(),
            measure.unit.symbol()
        ));
    }
    let (doubt, refused) = match limits::fit(measure, soil) {
        limits::Fit::Fits => (None, None),
        limits::Fit::Doubtful(what, citation) => (Some((what, citation)), None),
        limits::Fit::Refused(why, sources) => (None, Some((why, sources))),
    };
    if let Some((why, sources)) = refused {
        let mut finding = Finding::not_judged(why);
        finding.grounds.sources = sources;
        return finding;
    }
    let mut finding = match (property, measure.method) {
        _ if has_table(measure, setting) => look_up(measure, soil, setting),
        (_, Some(Method::SaturatedMedia)) => look_up(measure, soil, setting),
        (Property::OrganicMatter, _) => organic_matter::judge(measure, setting),
        (Property::Ec, _) => salts::judge(measure, setting),
        (Property::Lead, _) => lead::judge(measure),
        (Property::Manganese, Some(Method::Mehlich3)) => manganese::judge(measure, soil, setting),
        _ => look_up(measure, soil, setting),
    };
    if let Some((what, citation)) = doubt {
        finding.grounds.assumed.push(what.into());
        finding.grounds.sources.push(citation);
    }
    finding
}

/// Puts beside a finding what the tables say that are shown as second opinions.
fn add_opinions(
    finding: &mut Finding,
    measure: Measure,
    soil: &Soil,
    setting: &Setting,
    density: Option<f64>,
) {
    let plants = setting.plants.unwrap_or_default();
    for scheme in known(&measure, setting) {
        if scheme.second.contains(&plants)
            && scheme.soils.include(soil, setting.texture, setting.group)
            && let Some(other) = scheme.judge(&measure, density)
        {
            scheme::add_opinion(finding, other);
        }
    }
}

/// Judges a measure by the tables for its property, method, unit and plants.
fn look_up(measure: &Measure, soil: &Soil, setting: &Setting) -> Finding {
    let rounded = match measure.property {
        Property::Ph => Measure {
            amount: measure.amount.with(ph::to_a_tenth(measure.amount.number())),
            ..*measure
        },
        _ => *measure,
    };
    // A table in the result's own kind of unit comes before one that needs the
    // density, and stays alone where the density is none that a soil can have.
    let known_density = soil.value(Property::BulkDensity).filter(|d| (0.2..=2.0).contains(d));
    let mut wants = None;
    let found = [None, known_density].into_iter().find_map(|density| {
        match choose(rounded, soil, setting, density)? {
            Choice::Said(said) => Some((density, said)),
            Choice::Wants(finding) => {
                wants = wants.take().or(Some(finding));
                None
            }
        }
    });
    let Some((density, Said { scheme, mut finding, others })) = found else {
        return wants.unwrap_or_else(|| Finding {
            wants_region: setting.region.is_none() && !known(measure, setting).is_empty(),
            ..Finding::not_judged(why_no_table(measure, setting))
        });
    };
    for other in others {
        scheme::add_opinion(&mut finding, other);
    }
    if let Some(density) = density {
        finding.grounds.assumed.push(
            format!(
                "Weight and volume of soil were matched by the density on the report, {} g/cm³.",
                significant(density, 3)
            )
            .into(),
        );
    }
    if setting.plants.is_none() && scheme.plants.len() < PlantGroup::ALL.len() {
        finding.grounds.assumed.push("Mixed vegetables, until you say what grows here.".into());
    }
    if measure.property == Property::Phosphorus
        && measure.method == Some(Method::Mehlich3Colorimetric)
    {
        finding.grounds.assumed.push(
            "Read by colour, phosphorus comes out lower than by ICP, and the table does not say which it is for. The soil may hold more than this.".into(),
        );
    }
    if measure.property == Property::Ph {
        ph::name_the_class(&mut finding, measure.amount);
    }
    finding
}

/// Why there is no table for a measure, and what would help.
fn why_no_table(measure: &Measure, setting: &Setting) -> String {
    let known = known(measure, setting);
    let what = measure.property.label();
    let by = measure.method.map_or(String::new(), |m| format!(" by {}", m.label()));
    if measure.unit == Unit::Index {
        return "This is the laboratory's own index, not an amount, and we hold no table of it. Ask the laboratory for the amount.".into();
    }
    let by_region = setting.region.is_none() && known.iter().all(|s| s.judges.is_empty());
    if by_region && known.iter().any(|s| s.judge(measure, None).is_some()) {
        return "Regions judge this number differently. Say where the soil lies.".into();
    }
    if known.is_empty() {
        return usual::usual_without_a_range(measure)
            .unwrap_or_else(|| format!("We hold no published range for {what}{by}."));
    }
    match measure.unit {
        Unit::MgPerL if known.iter().any(|s| s.unit == Unit::MgPerL) => format!(
            "How much {what}{by} is enough depends on the clay content. Add the clay, in %."
        ),
        Unit::MgPerL => format!(
            "This result is by volume of soil (mg/L). The ranges we hold for {what}{by} are by weight (mg/kg). Ask the lab for mg/kg, or add the soil's density."
        ),
        Unit::MgPerKg => format!(
            "This result is by weight of soil (mg/kg). The ranges we hold for {what}{by} are by volume (mg/L). Ask the lab for mg/L, or add the soil's density."
        ),
        _ => format!("We hold no published range for {what}{by} in this unit."),
    }
}

/// What is worked with, but is neither short nor in surplus by itself.
fn never_judged(property: Property) -> Option<&'static str> {
    Some(match property {
        Property::SaltPh => {
            "pH in salt solution reads lower than pH in water, and the ranges are for water. Ask the lab for pH in water."
        }
        Property::BufferPh => {
            "Buffer pH tells how much lime a soil needs, not how it stands. Look at the pH in water."
        }
        Property::Sodium => {
            "Plants need no set amount of sodium. It is judged by its share of the exchange capacity."
        }
        Property::ExchangeableAcidity | Property::AciditySaturation => {
            "Acidity is judged by the pH in water."
        }
        Property::Cec => {
            "Exchange capacity is a trait of the soil: it says how much the soil can hold, not whether that is enough."
        }
        Property::BaseSaturation => "Base saturation follows the pH. Look at the pH in water.",
        Property::Sand | Property::Silt | Property::Clay | Property::BulkDensity => {
            "This is a trait of the soil, used in the working. It has no sufficient range."
        }
        Property::OrganicCarbon => {
            "Ranges are published for organic matter. It is worked out from this carbon further down."
        }
        Property::NitrogenRelease => {
            "This is the lab's own estimate for a season, not a test of what is there now."
        }
        Property::FreeLime => {
            "Free lime tells which tests can be trusted. It has no sufficient range."
        }
        Property::Arsenic | Property::Cadmium => {
            "Published limits disagree. Ask your health or environment office which one holds where you live."
        }
        _ => return None,
    })
}
