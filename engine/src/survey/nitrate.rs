//! The nitrate that the sampled soil holds.

use crate::quantity::{Band, Context, Figure, Grounds, Unit, convert, significant};
use crate::soil::Property;
use crate::sources::ARITHMETIC;
use crate::survey::Survey;

/// A sample deeper than this is none of a garden, cm. Our choice.
const DEEPEST: f64 = 300.0;

impl Survey<'_> {
    /// Nitrate-N of all sampled layers together, kg/ha: the one stock that all
    /// that is said of nitrate is drawn from. `None` without a number.
    pub(crate) fn nitrate_stock(&self) -> Option<Figure> {
        let mut grounds = Grounds::new(
            "Nitrate-N (kg/ha) = mg/kg × thickness (cm) × bulk density (g/cm³) × 0.1; by volume, mg/L × thickness × 0.1.",
            &[ARITHMETIC.derived()],
        );
        let mut all = Band::exactly(0.0);
        let mut layers: Vec<(f64, f64)> = Vec::new();
        for (normal, measure, slice) in self.slices(Property::NitrateN) {
            let Some(value) = measure.amount.exact() else { continue };
            let (top, bottom) = slice.unwrap_or_else(|| self.bed.sampled_or_worked());
            let apart = layers.iter().all(|(t, b)| bottom <= *t || *b <= top);
            if !apart || bottom <= top || !(0.0..DEEPEST).contains(&top) || bottom > DEEPEST {
                continue;
            }
            layers.push((top, bottom));
            let thickness = bottom - top;
            // What was printed per area needs no weight of soil.
            let per_area = normal.printed.zip(normal.unit).and_then(|(printed, unit)| match unit {
                Unit::LbPerAcre | Unit::KgPerHa => {
                    convert(printed, unit, Unit::KgPerHa, &Context::FURROW_SLICE).ok()
                }
                _ => None,
            });
            let held = match (per_area, measure.unit) {
                (Some(printed), _) => Band::exactly(printed),
                (None, Unit::MgPerL) => Band::exactly(value * thickness * 0.1),
                (None, _) => {
                    grounds = self.bed.density.add_to(grounds);
                    self.bed.density.value.map(|d| value * thickness * d * 0.1)
                }
            };
            all = all.plus(held);
            let range = |cm: f64| self.shown(&Band::exactly(cm), Unit::Cm);
            grounds = grounds.input(
                format!("{} to {}", range(top), range(bottom)),
                format!("{} {}", significant(value, 3), measure.unit.symbol()),
            );
            if slice.is_none() {
                grounds = grounds.assume("The sample is taken to be as deep as the bed is worked.");
            }
        }
        (!layers.is_empty()).then_some(Figure {
            name: "nitrate-stock",
            label: "nitrate nitrogen in the sampled soil",
            band: all,
            unit: Unit::KgPerHa,
            grounds,
        })
    }
}
