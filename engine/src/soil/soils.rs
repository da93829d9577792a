//! The soils that a table was made for.

use crate::soil::{Property, Soil, SoilGroup, Texture};

/// The soils that a table was made for, where its publication parts them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soils {
    /// Any of these groups. Where the group is not known, the textures stand for them.
    pub groups: &'static [SoilGroup],
    /// Any of these textures; every one where none is said.
    pub textures: &'static [Texture],
    /// And each property measured above the first number and up to the second.
    pub within: &'static [(Property, f64, f64)],
}

/// Whether a soil is one of those that a table was made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// It is not.
    No,
    /// Nobody knows.
    Unknown,
    /// It is, if it is mineral soil as nearly all soils are: nobody says otherwise.
    IfMineral,
    /// It is.
    Yes,
}

/// Organic matter in carbon. Source: common practice (van Bemmelen's factor), no source.
const MATTER_IN_CARBON: f64 = 1.724;
/// The organic matter of peat, %, where nobody measured it. Source: our choice.
pub(crate) const PEAT_MATTER: f64 = 60.0;
/// That of mineral soil: tables that part the two draw their line from 10 to 30. Source: our
/// choice.
const MINERAL_MATTER: std::ops::RangeInclusive<f64> = 0.1..=10.0;

impl Soils {
    /// Whether this soil is one of them.
    pub fn fit(self, soil: &Soil, texture: Option<Texture>, group: Option<SoilGroup>) -> Fit {
        let kind = match group.filter(|_| !self.groups.is_empty()) {
            Some(group) => Fit::of(Some(self.groups.contains(&group))),
            None if self.textures.is_empty() && self.groups.is_empty() => Fit::Yes,
            None => Fit::of(texture.map(|texture| self.textures.contains(&texture))),
        };
        let parts = self.within.iter().map(|&(property, above, up_to)| {
            let holds = |value: f64| value > above && value <= up_to;
            match value(soil, property, group) {
                Some(value) => Fit::of(Some(holds(value))),
                None if matches!(property, Property::OrganicMatter | Property::OrganicCarbon) => {
                    let ends = [*MINERAL_MATTER.start(), *MINERAL_MATTER.end()];
                    match ends.map(holds) {
                        [true, true] => Fit::IfMineral,
                        [false, false] => Fit::No,
                        _ => Fit::Unknown,
                    }
                }
                None => Fit::Unknown,
            }
        });
        parts.chain([kind]).min().unwrap_or(Fit::Yes)
    }

    /// Whether this soil is known to be one of them.
    pub fn include(self, soil: &Soil, texture: Option<Texture>, group: Option<SoilGroup>) -> bool {
        self.fit(soil, texture, group) == Fit::Yes
    }
}

impl Fit {
    fn of(holds: Option<bool>) -> Fit {
        match holds {
            Some(true) => Fit::Yes,
            Some(false) => Fit::No,
            None => Fit::Unknown,
        }
    }
}

/// What a table parts soils by: the number measured, or what it stands for.
fn value(soil: &Soil, property: Property, group: Option<SoilGroup>) -> Option<f64> {
    let of = |property| soil.value(property);
    let peat = (group == Some(SoilGroup::Peat)).then_some(PEAT_MATTER);
    match property {
        // Tables print it by volume or by weight; 1 dm³ of sieved soil weighs about 1 kg.
        Property::Cec => soil.get(Property::Cec)?.amount.exact(),
        Property::OrganicMatter => of(Property::OrganicMatter)
            .or_else(|| of(Property::OrganicCarbon).map(|carbon| carbon * MATTER_IN_CARBON))
            .or(peat),
        Property::OrganicCarbon => of(Property::OrganicCarbon)
            .or_else(|| of(Property::OrganicMatter).map(|matter| matter / MATTER_IN_CARBON))
            .or(peat.map(|matter| matter / MATTER_IN_CARBON)),
        other => of(other),
    }
}
