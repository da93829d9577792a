//! Conversion between units of concentration. A conversion that needs
//! something the report doesn't say (a depth, a density, a charge) is refused
//! until it is known.

use crate::quantity::Unit;

/// What a conversion may need beside the number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Context {
    /// Mass of soil a per-area result refers to, in million kilograms per
    /// hectare: depth (cm) × bulk density (g/cm³) × 0.1.
    pub soil_gg_per_ha: Option<f64>,
    /// Milligrams that carry one millimole of charge: atomic mass ÷ charge.
    pub mg_per_mmolc: Option<f64>,
    /// Density of the scooped soil, g/cm³, for volumetric results.
    pub density: Option<f64>,
}

/// kg/ha in one lb/acre: 0.45359237 kg ÷ 0.40468564224 ha.
/// Source: legal definitions of the pound and the acre (derived).
pub(crate) const KG_PER_HA_IN_LB_PER_ACRE: f64 = 0.453_592_37 / 0.404_685_642_24;

impl Context {
    /// Nothing is known beside the number.
    pub const NONE: Context = Context { soil_gg_per_ha: None, mg_per_mmolc: None, density: None };

    /// The furrow slice of US reports: 2,000,000 lb of soil per acre, so that
    /// lb/acre = 2 × ppm.
    /// Source: Iowa State University Extension, Interpreting Soil Reports.
    pub const FURROW_SLICE: Context = Context {
        soil_gg_per_ha: Some(2.0 * KG_PER_HA_IN_LB_PER_ACRE),
        mg_per_mmolc: None,
        density: None,
    };

    /// A slice of known depth (cm) and bulk density (g/cm³).
    pub fn slice(depth_cm: f64, bulk_density: f64) -> Context {
        Context { soil_gg_per_ha: Some(depth_cm * bulk_density * 0.1), ..Context::NONE }
    }

    /// The same context for an ion of this equivalent mass (mg per mmol of charge).
    pub fn with_charge(mut self, mg_per_mmolc: Option<f64>) -> Context {
        self.mg_per_mmolc = mg_per_mmolc;
        self
    }
}

/// Why a conversion was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ConvertError {
    /// A per-area result needs the sampling depth.
    NeedsDepth,
    /// A volumetric result needs the density of the scooped soil.
    NeedsDensity,
    /// The two units measure different things.
    NotComparable,
}

impl std::fmt::Display for ConvertError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            ConvertError::NeedsDepth => "a result per area needs the sampling depth",
            ConvertError::NeedsDensity => "a result per volume needs the density of the soil",
            ConvertError::NotComparable => "these two units measure different things",
        })
    }
}

impl std::error::Error for ConvertError {}

/// Converts `value` from one unit to another.
///
/// # Errors
/// When the context lacks what the conversion needs (a depth of nothing is
/// none), or the units measure different things.
pub fn convert(value: f64, from: Unit, to: Unit, context: &Context) -> Result<f64, ConvertError> {
    if from == to {
        return Ok(value);
    }
    let from = per_base(from, context)?;
    let to = per_base(to, context)?;
    let density = || known(context.density, ConvertError::NeedsDensity);
    let across = match (from.base, to.base) {
        (a, b) if a == b => 1.0,
        (Base::Mass, Base::Volume) => density()?,
        (Base::Volume, Base::Mass) => 1.0 / density()?,
        _ => return Err(ConvertError::NotComparable),
    };
    Ok((value * from.size * across / to.size).clamp(f64::MIN, f64::MAX))
}

/// What the context knows, where that is an amount that a soil can have.
fn known(amount: Option<f64>, lacks: ConvertError) -> Result<f64, ConvertError> {
    amount.filter(|amount| (1e-6..=1e6).contains(amount)).ok_or(lacks)
}

#[derive(PartialEq, Clone, Copy)]
enum Base {
    /// mg per kg of soil.
    Mass,
    /// mg per litre of soil.
    Volume,
    /// dS/m.
    Conductivity,
}

struct PerBase {
    base: Base,
    size: f64,
}

fn per_base(unit: Unit, context: &Context) -> Result<PerBase, ConvertError> {
    let charge = || known(context.mg_per_mmolc, ConvertError::NotComparable);
    let slice = || known(context.soil_gg_per_ha, ConvertError::NeedsDepth);
    let (base, size) = match unit {
        Unit::MgPerKg => (Base::Mass, 1.0),
        Unit::MgPer100g => (Base::Mass, 10.0),
        Unit::GPerKg => (Base::Mass, 1000.0),
        Unit::Percent => (Base::Mass, 10_000.0),
        Unit::KgPerHa => (Base::Mass, 1.0 / slice()?),
        Unit::LbPerAcre => (Base::Mass, KG_PER_HA_IN_LB_PER_ACRE / slice()?),
        Unit::MeqPer100g => (Base::Mass, 10.0 * charge()?),
        Unit::MmolcPerKg => (Base::Mass, charge()?),
        Unit::MgPerL => (Base::Volume, 1.0),
        Unit::GPerL => (Base::Volume, 1000.0),
        Unit::MeqPer100cm3 => (Base::Volume, 10.0 * charge()?),
        Unit::DsPerM => (Base::Conductivity, 1.0),
        Unit::UsPerCm => (Base::Conductivity, 0.001),
        _ => return Err(ConvertError::NotComparable),
    };
    Ok(PerBase { base, size })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() <= 1e-9 * b.abs().max(1.0), "{a} is not {b}");
    }

    #[test]
    fn a_per_area_result_without_a_depth_is_refused() {
        let refused = convert(10.0, Unit::KgPerHa, Unit::MgPerKg, &Context::NONE);
        assert_eq!(refused, Err(ConvertError::NeedsDepth));
    }

    #[test]
    fn a_volumetric_result_is_kept_apart_from_mass_until_the_density_is_known() {
        let refused = convert(60.0, Unit::MgPerL, Unit::MgPerKg, &Context::NONE);
        assert_eq!(refused, Err(ConvertError::NeedsDensity));
        let known = Context { density: Some(0.9), ..Context::NONE };
        close(convert(60.0, Unit::MgPerL, Unit::MgPerKg, &known).unwrap(), 60.0 / 0.9);
    }

    #[test]
    fn no_conversion_gives_what_is_no_number() {
        use crate::quantity::EXTREMES;
        for odd in EXTREMES {
            let context =
                Context { soil_gg_per_ha: Some(odd), mg_per_mmolc: Some(odd), density: Some(odd) };
            for (from, to) in Unit::ALL.iter().flat_map(|f| Unit::ALL.iter().map(move |t| (*f, *t)))
            {
                for value in EXTREMES.into_iter().filter(|v| v.is_finite()) {
                    let told = convert(value, from, to, &context);
                    assert!(
                        told.is_ok_and(f64::is_finite) || told.is_err(),
                        "{value} {odd} {told:?}"
                    );
                }
            }
        }
        let no_depth = Context::slice(0.0, 1.3);
        let refused = convert(10.0, Unit::KgPerHa, Unit::MgPerKg, &no_depth);
        assert_eq!(refused, Err(ConvertError::NeedsDepth));
    }

    #[test]
    fn every_convertible_pair_comes_back_to_where_it_started() {
        let context =
            Context { soil_gg_per_ha: Some(1.95), mg_per_mmolc: Some(20.04), density: Some(1.18) };
        let units = [
            Unit::MgPerKg,
            Unit::MgPerL,
            Unit::MgPer100g,
            Unit::LbPerAcre,
            Unit::KgPerHa,
            Unit::MeqPer100g,
            Unit::MmolcPerKg,
            Unit::MeqPer100cm3,
            Unit::Percent,
            Unit::GPerKg,
        ];
        for from in units {
            for to in units {
                let there = convert(37.5, from, to, &context).unwrap();
                close(convert(there, to, from, &context).unwrap(), 37.5);
            }
        }
    }
}
