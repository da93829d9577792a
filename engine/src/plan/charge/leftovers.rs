//! What is left over when the biochar is charged, and where it may go.

use crate::case::ChargeSource;
use crate::plan::cautions::Caution;
use crate::plan::charge::label::known;
use crate::plan::charge::measure::Measuring;
use crate::plan::charge::salts::MILD;
use crate::plan::charge::sources::label;
use crate::quantity::{Band, Grounds, Measures, Unit, shown, significant};
use crate::sources::{
    ARITHMETIC, COMMON_PRACTICE, CORNELL_LAWNS, MAAS_1990, OUR_CHOICE, UMN_COMPOST,
    WHO_EXCRETA_2006,
};
use crate::survey::Survey;

/// The most nitrogen at one time, g/m²: 1 lb/1000 sq ft.
/// Source: Cornell University, for lawns (opened).
const NITROGEN_AT_ONCE: f64 = 4.88;
/// More than this of soaking water on 1 m² nobody pours, litres.
/// Source: our choice; 20 mm soak a bed.
const MOST_POURED: f64 = 20.0;

/// The most compost in a year, litres on 1 m²: one inch.
/// Source: University of Minnesota Extension (opened).
const COMPOST_A_YEAR: f64 = 25.4;

/// The soaking water as it is poured on.
pub(super) struct Soak {
    /// What may run off again, litres: what the biochar takes of it is uncertain.
    pub may_drain: Band,
    /// Nitrogen in a litre, g.
    pub nitrogen: f64,
    /// Its salts, dS/m.
    pub salts: Option<Band>,
}

pub(super) fn leftovers(
    survey: &Survey<'_>,
    measuring: &Measuring,
    used: &[(ChargeSource, f64)],
    left_out: &[ChargeSource],
    spare_phosphorus: bool,
    soak: &Soak,
) -> Vec<Caution> {
    let mut list: Vec<Caution> =
        soaking_water(measuring, spare_phosphorus, soak).into_iter().collect();
    let charge = &survey.case.charge;
    let on_hand = |source| known(charge, source).and_then(|own| own.litres);
    for (source, amount) in used {
        let Some(left) = on_hand(*source).map(|litres| litres - amount).filter(|l| *l > 0.05)
        else {
            continue;
        };
        list.push(rest(*source, left, measuring, spare_phosphorus));
    }
    for source in left_out {
        if let Some(litres) = on_hand(*source).filter(|l| *l > 0.0) {
            list.push(rest(*source, litres, measuring, spare_phosphorus));
        }
    }
    list
}

/// The soaking water that may run off, and where it may go.
fn soaking_water(measuring: &Measuring, spare_phosphorus: bool, soak: &Soak) -> Option<Caution> {
    let salts = soak.salts.filter(|_| soak.may_drain.high > 0.0)?;
    let parts = (salts.high / MILD).ceil().max(1.0) - 1.0;
    let most = NITROGEN_AT_ONCE / soak.nitrogen.max(1e-6);
    let thin = if parts == 1.0 {
        "one part of water to one part of it".to_string()
    } else if parts > 0.0 {
        format!("{parts:.0} parts of water to one part of it")
    } else {
        "as it is".to_string()
    };
    // More than that nobody pours at once.
    let at_most = if most < MOST_POURED {
        format!(
            " At most {} of it, before it is thinned, on {}.",
            measuring.litres(most),
            measuring.area(1.0)
        )
    } else {
        String::new()
    };
    let where_to = if spare_phosphorus {
        "a bed that is short of nutrients, or a compost heap"
    } else {
        "the soil beside growing plants, or a compost heap"
    };
    Some(Caution {
        people: false,
        text: format!(
            "Up to {} of soaking water may run off. Catch it. Give it to {where_to}: \
                 {thin}.{at_most} Not on leaves, not before rain, not near a well or a stream.",
            measuring.litres(soak.may_drain.high),
        ),
        grounds: Grounds::new(
            "what the biochar may not take up; nitrogen at most 4.9 g/m² at once; thinned to 2 \
                 dS/m",
            &[
                CORNELL_LAWNS.opened(),
                MAAS_1990.derived(),
                ARITHMETIC.derived(),
                OUR_CHOICE.unsourced(),
            ],
        )
        .input("may run off", shown(&soak.may_drain, Unit::Litre, Measures::Metric))
        .input("nitrogen in it", format!("{} g/L", significant(soak.nitrogen, 2)))
        .input("its salts", shown(&salts, Unit::DsPerM, Measures::Metric)),
    })
}

/// Where the rest of a source may go.
fn rest(source: ChargeSource, left: f64, measuring: &Measuring, spare_phosphorus: bool) -> Caution {
    let name = label(source);
    let litres = measuring.litres(left);
    let (text, grounds) = match source {
        ChargeSource::Compost | ChargeSource::Vermicompost | ChargeSource::AgedManure => {
            let text = if spare_phosphorus {
                format!(
                    "{litres} of {name} is left over. Not on this bed: it has too much phosphorus. \
                     Use it where a soil test finds little."
                )
            } else {
                format!(
                    "{litres} of {name} is left over. Spread it elsewhere, no more than an inch (2.5 \
                     cm) a year: it covers {} or more.",
                    measuring.area(left / COMPOST_A_YEAR)
                )
            };
            (text, Grounds::new("at most an inch of compost a year", &[UMN_COMPOST.opened()]))
        }
        ChargeSource::Urine => (
            format!(
                "{litres} of urine is left over. Keep it closed, in the shade, for a month (six \
                 months when others eat the crop), then use it on soil, thinned."
            ),
            Grounds::new("storage before use", &[WHO_EXCRETA_2006.second_hand()]),
        ),
        ChargeSource::CompostTea => (
            format!(
                "{litres} of compost tea is left over. Use it the same day on soil that is short, or \
                 pour it on the compost heap: it doesn't keep."
            ),
            Grounds::new("tea is used fresh", &[COMMON_PRACTICE.unsourced()]),
        ),
        _ => (
            format!(
                "{litres} of {name} is left over. Keep it closed, dry or cool, out of reach of \
                     children."
            ),
            Grounds::new("storage", &[COMMON_PRACTICE.unsourced()]),
        ),
    };
    Caution { text, people: false, grounds }
}
