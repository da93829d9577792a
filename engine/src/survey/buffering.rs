//! How far biochar moves the pH: its liming value over the soil's buffering.

use crate::bag::{EffectParameter, Material, parameter, rests_on};
use crate::chemistry::found_by_buffer;
use crate::quantity::{Band, Input, significant};
use crate::quantity::{inverse, product};
use crate::region::RegionalLime;
use crate::soil::{Property, Texture};
use crate::sources::{
    ADEWUMI_2025, AITKEN_1990, COMMON_PRACTICE, Citation, NCDA_BUFFER, OUR_CHOICE, SERA6_LIME,
};
use crate::survey::{Survey, WATER_OVER_SALT};

/// Share of the liming value that works in the first year.
/// Source: `lime-works` of facts/effects.csv.
pub fn works_in_first_year() -> Band {
    parameter(EffectParameter::LimeWorks)
}

/// Biochar lifts no soil past this: free lime holds it there.
/// Source: equilibrium of calcium carbonate with air, common practice.
pub(crate) const CARBONATE_PH: f64 = 8.3;

/// From this pH on a soil begins to hold as free lime does, and from this one on it holds
/// wholly so. Source: our choice.
const LIMY_FROM_PH: (f64, f64) = (7.3, 7.8);

/// Biochar in the soil, % by mass, from which it may move the pH of a soil with free lime as
/// far as trials found. Source: our choice.
const LIMY_FROM_PERCENT: f64 = 0.5;

/// Organic matter for each part of carbon: between 1.724 and 2.0.
/// Source: Pribyl 2010, see `chemistry`.
const CARBON_TO_MATTER: f64 = 1.9;

/// Rise of pH from `rate` g biochar per kg soil with `liming` (share of
/// CaCO3, 0–1) in a soil that takes `buffering` mmol(c)/kg for one pH unit.
///
/// Source: definition of lime buffer capacity; 1 g CaCO3 is 20 mmol(c).
pub fn ph_rise(rate: f64, liming: f64, buffering: f64) -> f64 {
    if buffering <= 0.0 { 0.0 } else { 20.0 * rate * liming / buffering }
}

/// mmol(c) that a gram of pure lime takes up. Source: atomic masses (derived).
pub(crate) const PER_GRAM_OF_LIME: f64 = 2000.0 / 100.087;
/// mmol(c) of acid that a gram of sulfur makes. Source: atomic masses (derived).
pub(crate) const PER_GRAM_OF_SULFUR: f64 = 2000.0 / 32.06;

impl Survey<'_> {
    /// What 1 m² of so deep a soil (cm) takes up for one unit of pH, mmol(c).
    pub(crate) fn takes_up(&self, depth_cm: f64) -> Band {
        let soil = self.bed.density.value.map(|density| 10.0 * density * depth_cm);
        product(&[buffering(self).band, soil])
    }

    /// pH in water: measured, or half a unit above a salt pH.
    pub fn water_ph(&self) -> Option<f64> {
        let salt = || self.soil.value(Property::SaltPh).map(|ph| ph + WATER_OVER_SALT);
        self.soil.value(Property::Ph).or_else(salt).filter(|ph| (2.0..=12.0).contains(ph))
    }

    /// How the pH in water is known, as the name of an input.
    pub(crate) fn water_ph_name(&self) -> &'static str {
        if self.soil.value(Property::Ph).is_some() {
            "pH"
        } else {
            "pH in water, taken as salt pH + 0.5"
        }
    }
}

/// What the soil's resistance to a change of pH is taken to be.
#[derive(Clone, Debug, PartialEq)]
pub struct Buffering {
    /// mmol(c)/kg for one unit of pH.
    pub band: Band,
    /// How it is known.
    pub from: &'static str,
    /// The sources.
    pub sources: Vec<Citation>,
    /// What went in, where something of the report did.
    pub inputs: Vec<Input>,
    /// Free lime holds the pH where it is.
    pub limy: bool,
}

/// The soil's buffering, by the best that the report allows: the lime buffer,
/// organic matter and texture, the region's lime table, or texture alone.
pub fn buffering(survey: &Survey<'_>) -> Buffering {
    let mut buffering = by_lime_buffer(survey)
        .or_else(|| by_organic_matter(survey))
        .or_else(|| by_lime_table(survey))
        .unwrap_or_else(|| by_texture(survey));
    buffering.limy = survey.bed.limy;
    buffering
}

/// The acidity that the laboratory's lime buffer found, over the way from the
/// soil's pH to that at which the buffer stops. The curve is no straight line,
/// so it is known to within 1.6 times.
///
/// Source: NCDA&CS for the Mehlich buffer, 10 × Ac ÷ (6.6 − pH) (derived);
/// likewise for the others.
pub fn by_lime_buffer(survey: &Survey<'_>) -> Option<Buffering> {
    let (acidity, up_to, grounds) = found_by_buffer(&survey.soil)?;
    let way = up_to - survey.water_ph()?;
    if way < 0.2 || acidity.likely <= 0.0 {
        return None;
    }
    let mut sources = vec![NCDA_BUFFER.derived()];
    sources.extend(grounds.sources);
    Some(Buffering {
        band: product(&[acidity, Band::new(0.6, 1.0, 1.6)]).map(|acidity| 10.0 * acidity / way),
        from: "by the lime buffer",
        sources,
        inputs: grounds.inputs,
        limy: false,
    })
}

/// By organic carbon and clay, in % of the soil: 20 mmol(c) for each g CaCO3
/// of 0.955 × carbon + 0.011 × clay.
///
/// Source: Aitken et al. 1990 (from memory): mineral soils of Queensland, so
/// no more than 10 % carbon is counted.
pub fn by_organic_matter(survey: &Survey<'_>) -> Option<Buffering> {
    let soil = &survey.soil;
    let matter = || soil.value(Property::OrganicMatter).map(|percent| percent / CARBON_TO_MATTER);
    let carbon = soil.value(Property::OrganicCarbon).or_else(matter)?.min(10.0);
    let kind = Kind::of(survey.texture);
    let measured = soil.value(Property::Clay);
    let clay = measured.unwrap_or(kind.clay());
    let clay_name = if measured.is_some() { "clay" } else { "clay, as usual for the texture" };
    let likely = 20.0 * (0.955 * carbon + 0.011 * clay);
    let input = |name: &str, percent| Input::new(name, format!("{} %", significant(percent, 2)));
    Some(Buffering {
        band: Band::new(likely * 0.5, likely, likely * 1.6),
        from: "by organic matter and clay",
        sources: vec![AITKEN_1990.from_memory(), OUR_CHOICE.unsourced()],
        inputs: vec![input("organic carbon", carbon), input(clay_name, clay)],
        limy: false,
    })
    .filter(|buffering| buffering.band.likely > 0.0)
}

/// By the region's own lime table for this soil: what it spreads for each unit of pH, of which a
/// part works. So lime, and what else moves the pH, is reckoned as that table does.
///
/// Source: the region's table; that the soil's resistance follows from it is our reckoning (derived).
pub fn by_lime_table(survey: &Survey<'_>) -> Option<Buffering> {
    let (tables, _) = survey.lime_tables_of_here();
    let density = survey.bed.density.value.likely;
    let by_one = |table: &&RegionalLime| {
        let (first, most) = *table.points.first()?;
        let (last, _) = *table.points.iter().find(|(_, lime)| *lime <= 0.0)?;
        // 1 t/ha is 100 g/m²; 1 cm of 1 m² is 10 L.
        let lime = 100.0 * most / (last - first) * works_in_first_year().likely;
        Some(lime * PER_GRAM_OF_LIME / (10.0 * density * table.depth_cm))
    };
    let mut found: Vec<f64> = tables.iter().filter_map(by_one).collect();
    found.sort_unstable_by(f64::total_cmp);
    let (low, high) = (*found.first()?, *found.last()?);
    let mut sources: Vec<Citation> = vec![OUR_CHOICE.unsourced()];
    for citation in tables.iter().flat_map(|table| table.citations) {
        if !sources.contains(citation) {
            sources.push(*citation);
        }
    }
    Some(Buffering {
        band: Band::new(low * 0.5, found[found.len() / 2], high * 1.6),
        from: "by the region's lime table",
        sources,
        inputs: Vec::new(),
        limy: false,
    })
}

/// What is usual for the texture.
pub fn by_texture(survey: &Survey<'_>) -> Buffering {
    let kind = Kind::of(survey.texture);
    let ((low, likely, high), from) = match kind {
        Kind::Sand => ((5.0, 10.0, 20.0), "as usual for a sandy soil"),
        Kind::Clay => ((25.0, 45.0, 80.0), "as usual for a clay soil"),
        Kind::Loam => ((12.0, 25.0, 40.0), "as usual for a loam"),
        Kind::Unknown => ((5.0, 25.0, 80.0), "as usual for a loam; the texture isn't known"),
    };
    Buffering {
        band: Band::new(low, likely, high),
        from,
        sources: vec![OUR_CHOICE.from_memory()],
        inputs: Vec::new(),
        limy: false,
    }
}

/// Textures as far as they matter to buffering.
#[derive(Clone, Copy)]
enum Kind {
    Sand,
    Loam,
    Clay,
    Unknown,
}

impl Kind {
    fn of(texture: Option<Texture>) -> Kind {
        match texture {
            Some(t) if t.is_sandy() => Kind::Sand,
            Some(t) if t.is_clayey() => Kind::Clay,
            Some(_) => Kind::Loam,
            None => Kind::Unknown,
        }
    }

    /// Clay that is usual, %. Source: the middle of these texture classes.
    fn clay(self) -> f64 {
        match self {
            Kind::Sand => 5.0,
            Kind::Loam | Kind::Unknown => 18.0,
            Kind::Clay => 40.0,
        }
    }
}

impl Buffering {
    /// What the soil holds its pH with when `percent` biochar by mass is in it, which holds it
    /// too, mmol(c) for each kg of soil and one unit of pH.
    pub fn with_biochar(&self, percent: Band) -> Band {
        let char = product(&[percent, parameter(EffectParameter::CharBuffering)]);
        self.band.plus(char.map(|c| c / 100.0))
    }
}

/// The rise of pH in the first year from `percent` biochar by mass; a fall counts as less
/// than nothing.
pub fn rise(ph: Option<f64>, percent: Band, material: &Material, buffering: &Buffering) -> Band {
    let grams_per_kg = percent.map(|p| p * 10.0);
    let liming = material.liming.map(|l| l / 100.0);
    let held = inverse(buffering.with_biochar(percent));
    let free =
        product(&[grams_per_kg, liming, works_in_first_year(), held]).map(|x| ph_rise(x, 1.0, 1.0));
    let Some(ph) = ph else { return free };
    let room = |char_ph: f64| (char_ph.min(CARBONATE_PH) - ph).max(0.0);
    let band = Band::new(
        free.low.min(room(material.ph.low)),
        free.likely.min(room(material.ph.likely)),
        free.high.min(room(material.ph.high)),
    );
    let (from, to) = LIMY_FROM_PH;
    let limy = if buffering.limy { 1.0 } else { ((ph - from) / (to - from)).clamp(0.0, 1.0) };
    let moved = parameter(EffectParameter::LimyRise);
    let counts = (percent.likely / LIMY_FROM_PERCENT).clamp(0.0, 1.0);
    let both = |free: f64, held: f64| (1.0 - limy) * free + limy * counts * held;
    Band::new(
        both(band.low, moved.low),
        both(band.likely, moved.likely),
        both(band.high, moved.high),
    )
}

/// The sources of a predicted pH.
pub fn sources(buffering: &Buffering) -> Vec<Citation> {
    let mut sources = vec![SERA6_LIME.opened(), ADEWUMI_2025.opened()];
    sources.extend(rests_on(EffectParameter::CharBuffering));
    if buffering.limy {
        sources.extend(rests_on(EffectParameter::LimyRise));
    }
    sources.extend(&buffering.sources);
    sources.push(COMMON_PRACTICE.unsourced());
    sources
}
