//! Lime by published formula and table. Each is tied to one buffer and holds
//! for the depth its publisher samples; tons are short tons (2000 lb).

use crate::chemistry::base_unsaturation;
use crate::facts::LimeTable;
use crate::plan::needs::lime_tables::Table;
use crate::quantity::{Band, between};

/// t/ha in one short ton per acre: 907.18474 kg ÷ 0.40468564224 ha.
/// Source: legal definitions (derived).
pub const T_PER_HA_IN_TON_PER_ACRE: f64 = 0.907_184_74 / 0.404_685_642_24;
/// t/ha in one pound per 1000 square feet.
/// Source: legal definitions (derived).
pub const T_PER_HA_IN_LB_PER_1000_SQ_FT: f64 = 0.048_824_276_4;

/// Calcium carbonate equivalent of a lime nobody named, %. Our choice.
pub(super) const USUAL_LIME: Band = Band { low: 80.0, likely: 90.0, high: 100.0 };

/// Tons per acre of pure lime for the top 6 in, by Sikora buffer pH; straight
/// lines between the printed rows (4.8–6.9) and columns (target pH 5.6–7.2),
/// `None` outside them.
///
/// Source: Oregon State University EM 9585, 2025 (opened).
pub fn sikora_oregon(buffer_ph: f64, target_ph: f64) -> Option<f64> {
    printed(LimeTable::OregonSikora, buffer_ph, target_ph)
}

/// The rate of a printed table, on straight lines between its rows and columns.
fn printed(table: LimeTable, reading: f64, target_ph: f64) -> Option<f64> {
    let table = Table::of(table);
    let tenths = |all: &[u16]| all.iter().map(|v| f64::from(*v) / 10.0).collect::<Vec<_>>();
    let rows = table.rates.chunks(table.targets.len());
    let rates: Option<Vec<f64>> =
        rows.map(|row| between(table.targets, &tenths(row), target_ph)).collect();
    between(&tenths(table.readings), &rates?, reading)
}

/// Tons per acre of lime of neutralising value 90 % for the top 8 in, by SMP
/// buffer pH (the lime test index is ten times it); straight lines between the
/// equations for target pH 6.0, 6.5 and 6.8. `None` for other targets, and
/// below buffer pH 6.0, where the table ends.
///
/// Source: Tri-State Fertilizer Recommendations E-2567, 1995; the equations
/// from memory.
pub fn smp_tri_state(buffer_ph: f64, target_ph: f64) -> Option<f64> {
    if buffer_ph.is_nan() || buffer_ph < 6.0 - 1e-9 {
        return None;
    }
    let index = 10.0 * buffer_ph;
    let rates = [49.3 - 0.71 * index, 60.4 - 0.87 * index, 71.4 - 1.03 * index];
    between(&[6.0, 6.5, 6.8], &rates.map(|rate| rate.max(0.0)), target_ph)
}

/// t/ha of pure lime for the top 20 cm by SMP index in the south of Brazil, for a target pH of 5.5
/// to 6.5; straight lines between rows and columns, `None` outside them.
///
/// Source: CQFS-RS/SC, 2016 (from memory).
pub fn smp_br_sul(index: f64, target_ph: f64) -> Option<f64> {
    printed(LimeTable::BrSulSmp, index, target_ph)
}

/// The same for soils that the index finds little acidity in, by organic matter (%) and
/// exchangeable aluminium (cmol(c)/dm³), for a target pH of 5.5 to 6.5.
///
/// Source: CQFS-RS/SC, 2016 (from memory).
pub fn little_buffered_br_sul(matter: f64, aluminium: f64, target_ph: f64) -> Option<f64> {
    let by = |start: f64, of_matter: f64, of_aluminium: f64| {
        (start + of_matter * matter + of_aluminium * aluminium).max(0.0)
    };
    let rates = [by(-0.653, 0.480, 1.937), by(-0.516, 0.805, 2.435), by(-0.122, 1.193, 2.713)];
    between(&[5.5, 6.0, 6.5], &rates, target_ph)
}

/// A rate given for lime of neutralising value 90 % as lime of another (%).
///
/// Source: E-2567 (opened): rate × 0.90 ÷ neutralising value.
pub fn at_neutralising_value(rate: f64, percent: f64) -> f64 {
    rate * 90.0 / percent
}

/// Tons per acre by Mehlich buffer acidity (meq/100 cm³). `None` outside its
/// domain: pH below 6.6 and a target up to 6.6. Never below zero.
///
/// Source: NCDA&CS (opened): Ac × (target − pH) ÷ (6.6 − pH).
pub fn mehlich_nc(acidity: f64, ph: f64, target_ph: f64) -> Option<f64> {
    if !(ph < 6.6 && target_ph <= 6.6 && acidity >= 0.0) {
        return None;
    }
    Some(acidity * (target_ph - ph).max(0.0) / (6.6 - ph))
}

/// Pounds per acre of pure lime for a furrow slice of about 7 in, by
/// exchangeable acidity (meq/100 g). `None` for targets other than 6.5 to 7.0;
/// straight lines between the two. At an acidity of exactly 4.0, where the
/// source says nothing, the lesser amount is taken.
///
/// Source: Penn State Agronomy Guide (opened).
pub fn exchangeable_acidity_psu(acidity: f64, ph: f64, target_ph: f64) -> Option<f64> {
    let to_6_5 = if acidity > 4.0 {
        acidity * 840.0
    } else if ph < 6.5 {
        2000.0
    } else {
        0.0
    };
    between(&[6.5, 7.0], &[to_6_5, acidity * 1000.0], target_ph)
}

/// Pounds of pure lime per 1000 sq ft of turf, by exchangeable acidity
/// (meq/100 g, 2.0 to 25.7) for a target pH of 6.0 to 7.0; straight lines
/// between rows and columns, `None` outside them.
///
/// Source: Penn State Turf handbook (opened).
pub fn turf_psu(acidity: f64, target_ph: f64) -> Option<f64> {
    printed(LimeTable::PennStateTurf, acidity, target_ph)
}

/// Pounds per acre of pure lime for 2,000,000 lb of soil, by Adams–Evans
/// buffer pH: 8000 × (8.00 − buffer pH) ÷ h1 × (h1 − h2) × 1.5, with h1 and h2
/// the share of the exchange that acidity holds at the soil's pH and at the
/// target. Zero when there is nothing to neutralise.
///
/// Source: Huluka 2005 (structure opened; the curve of h from memory).
pub fn adams_evans(ph: f64, buffer_ph: f64, target_ph: f64) -> f64 {
    let (now, then) = (base_unsaturation(ph), base_unsaturation(target_ph));
    if now <= then || buffer_ph >= 8.0 {
        return 0.0;
    }
    8000.0 * (8.0 - buffer_ph) / now * (now - then) * 1.5
}

/// A rate of pure lime as a product of this calcium carbonate equivalent (%).
///
/// Source: Penn State (opened): rate × 100 ÷ CCE.
pub fn as_product(pure: f64, percent: f64) -> f64 {
    pure * 100.0 / percent
}

/// How many doses it takes when none may be above `most`.
pub fn doses(rate: f64, most: f64) -> u32 {
    // A hair over, from the change of units, is no dose more.
    (rate / most - 1e-6).ceil().max(1.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: CQFS-RS/SC, 2016 (from memory): the lines of the SMP table to pH 5.5, 6.0 and 6.5,
    /// and −0.516 + 0.805 × organic matter + 2.435 × aluminium to pH 6.0.
    #[test]
    fn the_south_of_brazil_limes_by_its_smp_table() {
        let close = |found: Option<f64>, wanted: f64| {
            assert!((found.unwrap() - wanted).abs() < 1e-9, "{found:?} is not {wanted}");
        };
        for (index, lines) in [
            (4.4, [15.0, 21.0, 29.0]),
            (5.6, [3.2, 5.4, 7.8]),
            (6.3, [0.8, 1.8, 3.1]),
            (7.1, [0.0; 3]),
        ] {
            for (target, tonnes) in [5.5, 6.0, 6.5].into_iter().zip(lines) {
                close(smp_br_sul(index, target), tonnes);
            }
        }
        assert_eq!((smp_br_sul(4.3, 6.0), smp_br_sul(5.6, 6.6)), (None, None));
        close(little_buffered_br_sul(1.2, 0.6, 6.0), 1.911);
        close(little_buffered_br_sul(0.1, 0.0, 6.0), 0.0);
    }
}
