//! How full the soil is of phosphorus.

use crate::chemistry::Chemistry;
use crate::quantity::{Band, Figure, Grounds, Unit, significant};
use crate::soil::{Method, Property, Soil};
use crate::sources::SIMS_2002;

/// The phosphorus saturation ratio: moles of Mehlich-3 phosphorus to moles of
/// Mehlich-3 aluminium and iron, all given in mg/kg.
///
/// Source: Sims and others 2002.
fn saturation_ratio(phosphorus: f64, aluminum: f64, iron: f64) -> f64 {
    (phosphorus / 30.974) / (aluminum / 26.982 + iron / 55.845)
}

pub(super) fn work_out(soil: &Soil, chemistry: &mut Chemistry) {
    let by_mehlich_3 = |property| {
        soil.measures
            .iter()
            .find(|m| {
                m.property == property
                    && m.method == Some(Method::Mehlich3)
                    && m.unit == Unit::MgPerKg
            })?
            .amount
            .exact()
    };
    let (Some(p), Some(al), Some(fe)) = (
        by_mehlich_3(Property::Phosphorus),
        by_mehlich_3(Property::Aluminum),
        by_mehlich_3(Property::Iron),
    ) else {
        return;
    };
    if al + fe <= 0.0 {
        return;
    }
    let ratio = saturation_ratio(p, al, fe);
    let meaning = match ratio {
        r if r < 0.06 => "below optimum",
        r if r <= 0.11 => "optimum",
        r if r <= 0.15 => "above optimum",
        _ => "above the line where water is at risk",
    };
    let mg = |v| format!("{} mg/kg", significant(v, 4));
    let grounds = Grounds::new(
        format!(
            "Moles of phosphorus ÷ moles of aluminum and iron, all by Mehlich-3. Below 0.06 is below optimum, to 0.11 optimum, over 0.15 a risk to water. This is {meaning}."
        ),
        &[SIMS_2002.opened()],
    )
    .input("phosphorus", mg(p))
    .input("aluminum", mg(al))
    .input("iron", mg(fe));
    chemistry.figures.push(Figure::new(
        "p-saturation-ratio",
        "phosphorus saturation ratio",
        Band::exactly(ratio),
        Unit::None,
        grounds,
    ));
}
