//! Amounts by area, told in the measure of the thing: a lawn's, a garden bed's or a field's.

use crate::quantity::{Band, Figure, Unit, shown};
use crate::survey::Survey;

/// From here on a bed is a field, m². Our choice: a quarter of an acre is 1012.
const FIELD: f64 = 1000.0;

impl Survey<'_> {
    /// A band in the reader's measures; by area, in the measure of the thing.
    pub(crate) fn shown(&self, band: &Band, unit: Unit) -> String {
        let (band, unit) = self.per_area(*band, unit);
        shown(&band, unit, self.case.measures)
    }

    /// A figure by area in the measure of the thing; any other as it is.
    pub(crate) fn told(&self, figure: Figure) -> Figure {
        let (band, unit) = self.per_area(figure.band, figure.unit);
        Figure { band, unit, ..figure }
    }

    /// kg/ha and t/ha are for fields; beds and lawns are told by the square metre. Anything
    /// else stays as it is.
    pub(crate) fn per_area(&self, band: Band, unit: Unit) -> (Band, Unit) {
        // 1 kg/ha is 0.1 g/m².
        let grams = match unit {
            Unit::KgPerHa => 0.1,
            Unit::TonnePerHa => 100.0,
            _ => return (band, unit),
        };
        let area = &self.bed.area;
        if self.is_lawn() {
            (band.map(|v| v * grams), Unit::GPerM2OfLawn)
        } else if area.known && area.value >= FIELD {
            (band, unit)
        } else {
            (band.map(|v| v * grams), Unit::GPerM2)
        }
    }
}
