//! Unit conversions against published factors.

use emberloam_engine::quantity::{
    Band, Context, Measures, Unit, convert, in_readers, readers_symbol, shown,
};
use emberloam_engine::soil::Property;

use proptest::prelude::*;
use proptest::sample::select;

use crate::close;

/// Source: Iowa State University Extension, Interpreting Soil Reports:
/// lb/acre = ppm × 2 (opened); Ohio State University, Understanding soil test
/// reports: 60 lb/acre P is 30 ppm (opened); course notes: 2400 ppm Ca is
/// 4800 lb/acre (opened).
#[test]
fn pounds_per_acre_of_a_furrow_slice() {
    let slice = Context::FURROW_SLICE;
    for (pounds, ppm) in [(60.0, 30.0), (100.0, 50.0), (4800.0, 2400.0)] {
        close(convert(pounds, Unit::LbPerAcre, Unit::MgPerKg, &slice).unwrap(), ppm, 1e-9);
        close(convert(ppm, Unit::MgPerKg, Unit::LbPerAcre, &slice).unwrap(), pounds, 1e-9);
    }
}

/// Source: arithmetic from the legal pound and acre: ppm × depth (in) × bulk
/// density × 0.22661 = lb/acre (derived).
#[test]
fn pounds_per_acre_of_a_known_depth_and_density() {
    let slice = Context::slice(8.0 * 2.54, 1.2);
    close(
        convert(10.0, Unit::MgPerKg, Unit::LbPerAcre, &slice).unwrap(),
        10.0 * 8.0 * 1.2 * 0.22661,
        1e-3,
    );
}

/// Source: university course notes on exchange: 4 meq Ca is 800 ppm; 2 cmol(+)
/// Al is 180 ppm; 0.98 meq K is 383.18 ppm (39.1 g/eq); 400 ppm K is
/// 1.02 meq (all opened).
#[test]
fn charge_to_mass() {
    let to_ppm = |value, property: Property| {
        let context = Context::NONE.with_charge(property.mg_per_mmolc());
        convert(value, Unit::MeqPer100g, Unit::MgPerKg, &context).unwrap()
    };
    close(to_ppm(4.0, Property::Calcium), 800.0, 2.0);
    close(to_ppm(2.0, Property::Aluminum), 180.0, 0.2);
    close(to_ppm(0.98, Property::Potassium), 383.18, 0.1);
    let context = Context::NONE.with_charge(Property::Potassium.mg_per_mmolc());
    close(convert(400.0, Unit::MgPerKg, Unit::MeqPer100g, &context).unwrap(), 1.02, 0.005);
}

/// Source: UF/IFAS EDIS HS1229: 50 ppm P is 50 mg/kg; salts: 1 mmho/cm is
/// 1 dS/m is 1000 µS/cm (opened).
#[test]
fn the_same_thing_by_another_name() {
    close(convert(350.0, Unit::UsPerCm, Unit::DsPerM, &Context::NONE).unwrap(), 0.35, 1e-12);
    close(convert(3.4, Unit::GPerKg, Unit::Percent, &Context::NONE).unwrap(), 0.34, 1e-12);
    close(convert(18.0, Unit::MgPer100g, Unit::MgPerKg, &Context::NONE).unwrap(), 180.0, 1e-12);
}

const CONVERTIBLE: [Unit; 10] = [
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

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Source: arithmetic (derived): a conversion and its reverse give back the number,
    /// whatever the depth, the density and the charge.
    #[test]
    fn a_conversion_comes_back_to_where_it_started(
        value in 0.0..1e6_f64,
        from in select(CONVERTIBLE.to_vec()),
        to in select(CONVERTIBLE.to_vec()),
        depth in 1.0..100.0_f64,
        density in 0.1..2.2_f64,
        mg_per_mmolc in 1.0..60.0_f64,
    ) {
        let mut context = Context::slice(depth, density).with_charge(Some(mg_per_mmolc));
        context.density = Some(density);
        let there = convert(value, from, to, &context).unwrap();
        let back = convert(there, to, from, &context).unwrap();
        prop_assert!((back - value).abs() <= 1e-9 * value.max(1e-9), "{value} came back as {back}");
    }
}

/// Source: arithmetic: 1 g/dm³ is 1000 mg/dm³; mmol of charge by mass (derived).
#[test]
fn results_by_volume_and_by_charge() {
    close(convert(22.0, Unit::GPerL, Unit::MgPerL, &Context::NONE).unwrap(), 22_000.0, 1e-9);
    let calcium = Context::NONE.with_charge(Property::Calcium.mg_per_mmolc());
    // 20.04 mg of calcium carry a millimole of charge.
    close(convert(3.0, Unit::MeqPer100cm3, Unit::MgPerL, &calcium).unwrap(), 601.2, 0.1);
    close(convert(30.0, Unit::MmolcPerKg, Unit::MgPerKg, &calcium).unwrap(), 601.2, 0.1);
    let mut dense = Context::NONE;
    dense.density = Some(0.8);
    close(convert(40.0, Unit::MgPerL, Unit::MgPerKg, &dense).unwrap(), 50.0, 1e-9);
    close(convert(50.0, Unit::MgPerKg, Unit::MgPerL, &dense).unwrap(), 40.0, 1e-9);
}

/// Source: legal definitions: the inch is 2.54 cm, the pound 453.59237 g, the foot 30.48 cm, the US
/// gallon 3.785411784 L; 100 g/m² or 1 t/ha is 20.48 lb/1000 sq ft; 1 ton/acre is 2.2417 t/ha (derived).
#[test]
fn amounts_in_us_measures() {
    let us = |value: f64, unit| shown(&Band::exactly(value), unit, Measures::Us);
    for (value, unit, text) in [
        (0.453_592_37 * 12.0, Unit::Kg, "12\u{a0}lb"),
        (28.349_523_125 * 7.0, Unit::Gram, "7\u{a0}oz"),
        (2.54 * 6.0, Unit::Cm, "6\u{a0}in"),
        (25.4 * 3.0, Unit::Mm, "3\u{a0}in"),
        (0.092_903_04 * 50.0, Unit::SquareMetre, "50\u{a0}sq ft"),
        (100.0, Unit::GPerM2OfLawn, "20\u{a0}lb/1000 sq ft"),
        (100.0, Unit::GPerM2, "2\u{a0}lb/100 sq ft"),
        (2.241_7, Unit::TonnePerHa, "1\u{a0}ton/acre"),
        (3.785_411_784 * 4.0, Unit::Litre, "4\u{a0}gal"),
    ] {
        assert_eq!(us(value, unit), text);
    }
    assert_eq!(readers_symbol(Unit::Litre, Measures::Us), "cu ft");
    assert_eq!(readers_symbol(Unit::Cm, Measures::Metric), "cm");
    close(in_readers(28.316_846_592 * 2.0, Unit::Litre, Measures::Us), 2.0, 1e-12);
}
