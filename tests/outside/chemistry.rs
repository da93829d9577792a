//! The `chemistry` room against the outside.

use emberloam_engine::chemistry::{Chemistry, Derived, work_out};
use emberloam_engine::quantity::Band;
use emberloam_engine::ranges::Setting;
use emberloam_engine::soil::{Amount, Measure, Method, Property, Soil, Texture};
use emberloam_engine::sources::Grade;

use crate::close;

fn measure(property: Property, value: f64, method: Option<Method>) -> Measure {
    Measure { property, amount: Amount::Exactly(value), unit: property.unit(), method }
}

/// Calcium, magnesium, potassium and sodium in mg/kg by one extract.
fn bases(method: Method, ca: f64, mg: f64, k: f64, na: Option<f64>) -> Vec<Measure> {
    let mut measures = vec![
        measure(Property::Calcium, ca, Some(method)),
        measure(Property::Magnesium, mg, Some(method)),
        measure(Property::Potassium, k, Some(method)),
    ];
    measures.extend(na.map(|na| measure(Property::Sodium, na, Some(method))));
    measures
}

fn ph(value: f64) -> Measure {
    measure(Property::Ph, value, Some(Method::Water1To1))
}

fn chemistry_of(measures: Vec<Measure>) -> Chemistry {
    work_out(&Soil { measures }, &Setting::default())
}

#[track_caller]
fn band(chemistry: &Chemistry, what: Derived) -> Band {
    chemistry.get(what).unwrap_or_else(|| panic!("no {what:?} in {:?}", chemistry.figures)).band
}

/// Source: University of Massachusetts report of 2014, Modified Morgan: K 107,
/// Ca 1096, Mg 162 ppm, exchangeable acidity 1.2 meq/100 g give CEC 8.3 and
/// base saturation Ca 66, Mg 16, K 3 % (opened).
#[test]
fn a_printed_report_from_its_own_cations_and_acidity() {
    let mut measures = bases(Method::ModifiedMorgan, 1096.0, 162.0, 107.0, None);
    measures.push(ph(6.2));
    measures.push(measure(Property::ExchangeableAcidity, 1.2, None));
    let chemistry = chemistry_of(measures);
    let cec = chemistry.cec.unwrap();
    assert!(cec.is_exact());
    close(cec.likely, 8.3, 0.05);
    close(band(&chemistry, Derived::CalciumSaturation).likely, 66.0, 0.5);
    close(band(&chemistry, Derived::MagnesiumSaturation).likely, 16.0, 0.5);
    close(band(&chemistry, Derived::PotassiumSaturation).likely, 3.0, 0.5);
    close(band(&chemistry, Derived::AciditySaturation).likely, 100.0 * 1.2 / 8.29, 0.1);
    let base = band(&chemistry, Derived::BaseSaturation).likely;
    close(base + band(&chemistry, Derived::AciditySaturation).likely, 100.0, 1e-9);
    assert!(chemistry.get(Derived::SodiumSaturation).is_none(), "sodium was not measured");
    let grounds = &chemistry.get(Derived::Cec).unwrap().grounds;
    assert!(grounds.assumed.iter().any(|a| a.contains("Sodium")));
    assert!(grounds.sources.iter().all(|c| c.grade != Grade::FromMemory));
}

/// Source: Clemson University, cation exchange capacity calculations: lb/acre
/// of Ca ÷ 400, Mg ÷ 240, K ÷ 782, Na ÷ 460; acidity by Adams–Evans 8 × (8.00 −
/// buffer pH) (opened). Its rounded constants and our exact ones agree within
/// 1.5 % for each cation.
#[test]
fn the_sum_of_cations_by_clemsons_constants() {
    let (ca, mg, k, na) = (800.0, 150.0, 120.0, 20.0);
    let mut measures = bases(Method::Mehlich1, ca, mg, k, Some(na));
    measures.push(ph(5.8));
    measures.push(measure(Property::BufferPh, 7.75, Some(Method::AdamsEvansBuffer)));
    let clemson = 2.0 * (ca / 400.0 + mg / 240.0 + k / 782.0 + na / 460.0) + 8.0 * (8.0 - 7.75);
    let chemistry = chemistry_of(measures);
    let cec = band(&chemistry, Derived::Cec).likely;
    close(cec, clemson, clemson * 0.01);
    close(band(&chemistry, Derived::BaseSaturation).likely, 100.0 * (clemson - 2.0) / clemson, 0.5);
}

/// Source: university course notes on exchange: 4 meq Ca is 800 ppm; 400 ppm K
/// is 1.02 meq; 1600 ppm Ca is 8 meq and, at Ca:Mg 2.1 by charge, Mg 462.9 ppm
/// is 3.81 meq (opened); Na 3.6 meq of a capacity of 18 is ESP 20 % (derived).
#[test]
fn worked_examples_of_exchange() {
    let at = |ca: f64, mg: f64, k: f64, na: f64| {
        let mut measures = bases(Method::AmmoniumAcetate, ca, mg, k, Some(na));
        measures.push(ph(6.5));
        measures.push(measure(Property::ExchangeableAcidity, 0.0, None));
        chemistry_of(measures)
    };
    close(at(800.0, 0.0, 0.0, 0.0).cec.unwrap().likely, 4.0, 0.01);
    close(at(0.0, 0.0, 400.0, 0.0).cec.unwrap().likely, 1.02, 0.005);
    let two = at(1600.0, 462.9, 0.0, 0.0);
    close(two.cec.unwrap().likely, 8.0 + 3.81, 0.02);
    close(
        band(&two, Derived::CalciumSaturation).likely
            / band(&two, Derived::MagnesiumSaturation).likely,
        2.1,
        0.01,
    );
    let sodium = at(2000.0, 500.0, 100.0, 3.6 * 229.9);
    let bases = 2000.0 / 200.39 + 500.0 / 121.525 + 100.0 / 390.98 + 3.6;
    close(band(&sodium, Derived::SodiumSaturation).likely, 100.0 * 3.6 / bases, 0.05);
    let mut printed = vec![measure(Property::Cec, 18.0, None), ph(6.5)];
    printed.extend(self::bases(Method::AmmoniumAcetate, 2000.0, 480.0, 100.0, Some(827.6)));
    let esp = band(&chemistry_of(printed), Derived::SodiumSaturation);
    close(esp.likely, 20.0, 0.5);
}

/// Sixteen field samples with a Woodruff-type buffer: pH, buffer pH, K, Ca,
/// Mg, Na (ppm) and what the laboratory prints: CEC, and the shares of H, Ca,
/// Mg and Na in %.
const FIELDS: [[f64; 11]; 16] = [
    [6.0, 6.2, 341.0, 2380.0, 815.0, 59.0, 28.2, 30.0, 42.0, 24.0, 1.0],
    [6.1, 6.1, 221.0, 2486.0, 940.0, 78.0, 30.0, 29.0, 41.0, 26.0, 1.0],
    [5.8, 6.1, 226.0, 1186.0, 646.0, 55.0, 21.5, 44.0, 27.0, 25.0, 1.0],
    [5.8, 6.1, 126.0, 953.0, 738.0, 82.0, 20.5, 43.0, 23.0, 30.0, 2.0],
    [6.1, 6.2, 290.0, 1909.0, 573.0, 42.0, 23.5, 35.0, 41.0, 20.0, 1.0],
    [6.0, 6.2, 187.0, 1855.0, 531.0, 59.0, 22.5, 36.0, 41.0, 20.0, 1.0],
    [5.8, 6.2, 139.0, 1034.0, 478.0, 57.0, 18.0, 46.0, 29.0, 22.0, 1.0],
    [5.9, 6.2, 71.0, 1151.0, 498.0, 70.0, 18.9, 45.0, 30.0, 22.0, 2.0],
    [5.7, 6.2, 192.0, 887.0, 378.0, 75.0, 16.7, 50.0, 26.0, 19.0, 2.0],
    [5.6, 6.0, 122.0, 1086.0, 540.0, 117.0, 21.0, 49.0, 26.0, 21.0, 2.0],
    [5.8, 6.2, 259.0, 788.0, 448.0, 78.0, 16.9, 49.0, 23.0, 22.0, 2.0],
    [5.6, 6.1, 200.0, 958.0, 799.0, 154.0, 21.4, 41.0, 22.0, 31.0, 3.0],
    [5.7, 6.1, 297.0, 1702.0, 1410.0, 102.0, 30.1, 29.0, 28.0, 39.0, 1.0],
    [5.3, 6.0, 209.0, 1680.0, 1606.0, 144.0, 33.1, 31.0, 25.0, 40.0, 2.0],
    [6.1, 6.4, 193.0, 1570.0, 820.0, 90.0, 21.8, 28.0, 36.0, 31.0, 2.0],
    [5.8, 6.3, 161.0, 1667.0, 938.0, 122.0, 24.5, 30.0, 34.0, 32.0, 2.0],
];

/// Source: wide laboratory exports among the public-domain (CC0) examples of
/// the oats-center/modus repository (opened). The laboratory prints its
/// buffer to 0.1, which is 1 meq/100 g of acidity here.
#[test]
fn real_reports_with_a_woodruff_buffer() {
    for [ph_value, buffer, k, ca, mg, na, cec, h, ca_share, mg_share, na_share] in FIELDS {
        let mut measures = bases(Method::AmmoniumAcetate, ca, mg, k, Some(na));
        measures.push(ph(ph_value));
        measures.push(measure(Property::BufferPh, buffer, Some(Method::WoodruffBuffer)));
        let chemistry = chemistry_of(measures);
        close(band(&chemistry, Derived::Cec).likely, cec, 0.6);
        close(band(&chemistry, Derived::AciditySaturation).likely, h, 2.0);
        close(band(&chemistry, Derived::CalciumSaturation).likely, ca_share, 1.5);
        close(band(&chemistry, Derived::MagnesiumSaturation).likely, mg_share, 1.5);
        close(band(&chemistry, Derived::SodiumSaturation).likely, na_share, 1.0);
    }
}

/// The same samples without the buffer: the bounds must hold the truth. The
/// likely value lies below it, by 23 % on average: this laboratory's capacity
/// counts acidity up to pH 7, that of the measured samples in `datasets` next
/// to none, and likely stands between the two.
///
/// Source: as above (opened).
#[test]
fn without_a_buffer_the_bounds_hold_what_the_laboratory_found() {
    let (mut held, mut logs) = (0, 0.0);
    for [ph_value, _, k, ca, mg, na, cec, ..] in FIELDS {
        let mut measures = bases(Method::AmmoniumAcetate, ca, mg, k, Some(na));
        measures.push(ph(ph_value));
        let chemistry = chemistry_of(measures);
        let sum = band(&chemistry, Derived::Cec);
        assert!(sum.low < sum.likely && sum.likely < sum.high, "{sum:?}");
        held += usize::from(sum.low <= cec && cec <= sum.high);
        logs += (sum.likely / cec).ln();
    }
    assert!(held >= 15, "only {held} of 16 within the bounds");
    close((logs / 16.0).exp(), 0.77, 0.01);
}

/// Source: a short laboratory export among the CC0 examples of the
/// oats-center/modus repository: pH 8.3, excess lime very high, K 123.9, Ca
/// 2674, Mg 171.4, Na 514.8 ppm; CEC 17.3, K 1.8, Mg 8.1, Ca 77.1, Na 12.9, H
/// 0 % (opened).
#[test]
fn a_calcareous_report_adds_up_but_is_said_to_be_overstated() {
    let mut measures = bases(Method::AmmoniumAcetate, 2674.0, 171.4, 123.9, Some(514.8));
    measures.push(ph(8.3));
    let chemistry = chemistry_of(measures);
    let cec = chemistry.cec.unwrap();
    close(cec.likely, 17.3, 0.05);
    assert!(cec.low <= 0.51 * cec.likely, "lime may be half of the sum: {cec:?}");
    let why = &chemistry.get(Derived::Cec).unwrap().grounds.assumed;
    assert!(why.iter().any(|a| a.contains("lime")), "{why:?}");
    for (name, share) in [
        (Derived::PotassiumSaturation, 1.8),
        (Derived::MagnesiumSaturation, 8.1),
        (Derived::CalciumSaturation, 77.1),
        (Derived::SodiumSaturation, 12.9),
    ] {
        close(band(&chemistry, name).likely, share, 0.06);
    }
    assert!(chemistry.get(Derived::AciditySaturation).is_none(), "no acidity is counted from pH 7");
}

/// Twelve field samples with a measured capacity: pH, K, Ca, Mg (mg/kg), Na
/// (mg/kg) and CEC (meq/100 g).
const MEASURED: [[f64; 6]; 12] = [
    [6.1, 356.0, 1320.0, 302.5, 23.0, 10.4],
    [6.6, 374.0, 1580.0, 302.5, 16.1, 11.2],
    [7.0, 224.0, 1280.0, 145.2, 23.0, 6.0],
    [7.4, 181.0, 1320.0, 145.2, 20.7, 7.3],
    [7.2, 325.0, 1120.0, 157.3, 18.4, 7.0],
    [7.5, 230.0, 880.0, 108.9, 13.8, 7.1],
    [7.2, 457.0, 3060.0, 411.4, 75.9, 12.6],
    [6.1, 337.0, 1760.0, 411.4, 27.6, 10.2],
    [6.4, 281.0, 2120.0, 375.1, 39.1, 10.6],
    [7.0, 186.0, 3260.0, 399.3, 27.6, 11.7],
    [7.0, 256.0, 2320.0, 338.8, 32.2, 10.3],
    [7.3, 234.0, 2240.0, 278.3, 43.7, 8.9],
];

/// Source: anonymised soil-health samples among the CC0 examples of the
/// oats-center/modus repository, all that give Ca, Mg, K, Na and CEC together
/// (opened; the extract of the cations is not stated and taken as ammonium
/// acetate). At pH 7 and above the sum is up to 1.7 times the measured
/// capacity, because the extract dissolves lime: that is why the low bound is
/// half of the sum there. One sample (pH 7.5) measures above its sum.
#[test]
fn measured_capacity_against_the_sum_of_cations() {
    let (mut near_lime, mut held, mut said) = (0, 0, 0);
    for [ph_value, k, ca, mg, na, cec] in MEASURED {
        let mut measures = bases(Method::AmmoniumAcetate, ca, mg, k, Some(na));
        measures.push(ph(ph_value));
        let sum = chemistry_of(measures.clone()).cec.unwrap();
        if ph_value >= 7.0 {
            near_lime += 1;
            held += usize::from(sum.low <= cec && cec <= sum.high);
        }
        let base_sum = ca / 200.39 + mg / 121.525 + k / 390.98 + na / 229.9;
        assert!((0.5..1.25).contains(&(cec / base_sum)), "{cec} against {base_sum}");

        measures.push(measure(Property::Cec, cec, None));
        let both = chemistry_of(measures);
        close(band(&both, Derived::Cec).likely, cec, 1e-9);
        let summed = band(&both, Derived::CecBySummation);
        assert_eq!(summed, sum);
        let nearest = cec.clamp(summed.low, summed.high);
        let noted =
            both.get(Derived::Cec).unwrap().grounds.assumed.iter().any(|a| a.contains("differs"));
        assert_eq!(noted, (nearest - cec).abs() / cec > 0.2, "pH {ph_value}, CEC {cec}");
        said += usize::from(noted);
        let shares: f64 = ["calcium", "magnesium", "potassium", "sodium"]
            .map(|n| both.figures.iter().find(|f| f.name == format!("{n}-saturation")).unwrap())
            .iter()
            .map(|f| f.band.likely)
            .sum();
        assert!(shares <= 100.0 + 1e-9, "shares add to {shares} at pH {ph_value}");
    }
    assert_eq!((near_lime, held), (8, 7));
    assert!(said >= 2, "the acid samples whose sum is far above the measured capacity say so");
}

/// Source: NCDA&CS Mehlich buffer: acidity = 4 × (6.6 − buffer pH) meq/100 cm³
/// (opened). By weight it is only a band, because the scooped density is not
/// known.
#[test]
fn mehlich_buffer_acidity_is_by_volume() {
    let mut measures = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None);
    measures.push(ph(5.5));
    measures.push(measure(Property::BufferPh, 6.1, Some(Method::MehlichBuffer)));
    let chemistry = chemistry_of(measures);
    let bases = 800.0 / 200.39 + 120.0 / 121.525 + 100.0 / 390.98;
    let cec = chemistry.cec.unwrap();
    close(cec.likely - bases, 2.0, 1e-6);
    assert!(cec.low < cec.likely && cec.likely < cec.high);
}

/// Double entry: SMP and Sikora buffer acidity 12 × (7.0 − buffer pH), none at 7 or
/// above (from memory); Adams–Evans none at 8.0 (opened).
#[test]
fn each_buffer_has_its_own_formula() {
    let acid = |method, reading| {
        let mut measures = bases(Method::Mehlich3, 800.0, 120.0, 100.0, None);
        measures.push(ph(5.5));
        measures.push(measure(Property::BufferPh, reading, Some(method)));
        let chemistry = chemistry_of(measures);
        let bases = 800.0 / 200.39 + 120.0 / 121.525 + 100.0 / 390.98;
        chemistry.cec.unwrap().likely - bases
    };
    close(acid(Method::SmpBuffer, 6.5), 6.0, 1e-6);
    close(acid(Method::SikoraBuffer, 6.5), 6.0, 1e-6);
    close(acid(Method::SikoraBuffer, 7.2), 0.0, 1e-6);
    close(acid(Method::WoodruffBuffer, 6.5), 5.0, 1e-6);
    close(acid(Method::AdamsEvansBuffer, 7.8), 1.6, 1e-6);
    close(acid(Method::AdamsEvansBuffer, 8.0), 0.0, 1e-6);
}

/// Double entry: Ohio State University ANR-81 Table 1: sands 3–5, loams 10–15, silt
/// loams 15–25, clays and clay loams 20–50 meq/100 g (opened).
#[test]
fn texture_alone_gives_the_usual_capacity() {
    for (texture, low, high) in [
        (Texture::Sand, 3.0, 5.0),
        (Texture::Loam, 10.0, 15.0),
        (Texture::SiltLoam, 15.0, 25.0),
        (Texture::ClayLoam, 20.0, 50.0),
        (Texture::Clay, 20.0, 50.0),
    ] {
        let chemistry = work_out(
            &Soil::default(),
            &Setting { plants: None, texture: Some(texture), ..Setting::default() },
        );
        let cec = chemistry.cec.unwrap();
        assert_eq!((cec.low, cec.high), (low, high), "{texture:?}");
        assert!(!chemistry.get(Derived::Cec).unwrap().grounds.assumed.is_empty());
    }
    assert!(work_out(&Soil::default(), &Setting::default()).cec.is_none());
}

/// Source: NRCS SSIR 45: organic matter = 1.724 × carbon (opened); Pribyl
/// 2010: 1.9–2.0 is better (opened); 2.0 % carbon is 3.4 % by the old factor
/// and 4.0 by the new (derived).
#[test]
fn organic_matter_from_carbon_is_a_band() {
    let chemistry = chemistry_of(vec![measure(Property::OrganicCarbon, 2.0, None)]);
    let found = band(&chemistry, Derived::OrganicMatter);
    close(found.low, 3.448, 1e-9);
    close(found.high, 4.0, 1e-9);
    let both = chemistry_of(vec![
        measure(Property::OrganicCarbon, 2.0, None),
        measure(Property::OrganicMatter, 3.6, None),
    ]);
    assert!(both.get(Derived::OrganicMatter).is_none(), "a measured value is not worked out again");
}

/// Double entry: US extension rule of 20 (10–40) lb N per acre and 1 % organic
/// matter (from memory); 3.2 % is 64 lb/acre, range 32–128 (derived).
#[test]
fn nitrogen_from_organic_matter() {
    let release = |om| {
        band(
            &chemistry_of(vec![measure(Property::OrganicMatter, om, None)]),
            Derived::NitrogenRelease,
        )
    };
    let per_acre = 0.453_592_37 / 0.404_685_642_24;
    let found = release(3.2);
    close(found.likely, 64.0 * per_acre, 1e-6);
    close(found.low, 32.0 * per_acre, 1e-6);
    close(found.high, 128.0 * per_acre, 1e-6);
    assert_eq!(release(5.0), release(40.0), "peat does not follow the rule");
}

/// Source: Sims and others 2002: ratio of moles of Mehlich-3 P to Al + Fe;
/// below 0.06, 0.06–0.11, above 0.11, environmental above 0.15 (opened); P 100,
/// Al 800, Fe 200 mg/kg is 0.097 (derived).
#[test]
fn phosphorus_saturation_ratio() {
    let ratio = |p, method| {
        chemistry_of(vec![
            measure(Property::Phosphorus, p, Some(method)),
            measure(Property::Aluminum, 800.0, Some(Method::Mehlich3)),
            measure(Property::Iron, 200.0, Some(Method::Mehlich3)),
        ])
    };
    let found = ratio(100.0, Method::Mehlich3);
    close(band(&found, Derived::PSaturationRatio).likely, 0.097, 0.0005);
    let rule =
        |p| ratio(p, Method::Mehlich3).get(Derived::PSaturationRatio).unwrap().grounds.rule.clone();
    assert!(rule(50.0).ends_with("below optimum."));
    assert!(rule(100.0).ends_with("This is optimum."));
    assert!(rule(140.0).ends_with("above optimum."));
    assert!(rule(200.0).ends_with("at risk."));
    assert!(ratio(100.0, Method::BrayP1).get(Derived::PSaturationRatio).is_none());
}

/// Double entry: Ohio State University ANR-81, Table 1: usual capacities by texture (opened); sandy loam
/// and sandy clay loam are set between its rows (derived).
#[test]
fn each_texture_has_its_usual_capacity_and_grade() {
    for (texture, low, likely, high, grade) in [
        (Texture::Sand, 3.0, 4.0, 5.0, Grade::Opened),
        (Texture::SandyLoam, 5.0, 7.5, 10.0, Grade::Derived),
        (Texture::Loam, 10.0, 12.5, 15.0, Grade::Opened),
        (Texture::SandyClayLoam, 10.0, 12.5, 15.0, Grade::Derived),
        (Texture::SiltLoam, 15.0, 20.0, 25.0, Grade::Opened),
        (Texture::Clay, 20.0, 35.0, 50.0, Grade::Opened),
    ] {
        let setting = Setting { texture: Some(texture), ..Setting::default() };
        let found = work_out(&Soil::default(), &setting);
        let figure = found.get(Derived::Cec).expect("a capacity");
        assert_eq!(figure.band, Band::new(low, likely, high), "{texture:?}");
        assert_eq!(figure.grounds.sources[0].grade, grade, "{texture:?}");
    }
}

/// A cation below its limit counts as none, half or all of the limit. Source: arithmetic from
/// atomic masses (derived).
#[test]
fn a_limit_of_a_cation_is_a_third_of_nothing_half_and_all() {
    let mut measures = bases(Method::AmmoniumAcetate, 2004.0, 121.5, 0.0, None);
    measures.push(measure(Property::ExchangeableAcidity, 0.0, None));
    measures[2].amount = Amount::Below(39.1);
    let found = chemistry_of(measures).cec.expect("a sum");
    close(found.low, 11.0, 0.01);
    close(found.likely, 11.05, 0.01);
    close(found.high, 11.1, 0.01);
}

/// Source: Clemson: capacity by summation (opened); a fifth apart is said (our choice).
#[test]
fn the_labs_capacity_beside_the_sum() {
    let with_cec = |cec: f64| {
        let mut measures = bases(Method::AmmoniumAcetate, 2004.0, 243.0, 391.0, None);
        measures.push(measure(Property::ExchangeableAcidity, 2.0, None));
        measures.push(measure(Property::Cec, cec, None));
        chemistry_of(measures)
    };
    // The sum is 15. The lab's number stays likely, and the band reaches to the sum.
    let found = with_cec(12.4);
    close(found.cec.unwrap().likely, 12.4, 1e-9);
    close(found.cec.unwrap().high, 15.0, 0.05);
    let said = |found: &Chemistry| {
        let grounds = &found.get(Derived::Cec).expect("a capacity").grounds;
        grounds.assumed.iter().any(|a| a.contains("differs from the lab's number"))
    };
    assert!(said(&found));
    assert!(!said(&with_cec(14.9)));
    // Just inside a fifth: 15 is 19.9 % more than 12.51.
    assert!(!said(&with_cec(12.52)));
    assert_eq!(found.get(Derived::Cec).unwrap().label, "exchange capacity (CEC)");
    assert!(found.get(Derived::CecBySummation).unwrap().label.contains("summation"));
    assert_eq!(chemistry_of(vec![measure(Property::Cec, 0.0, None)]).cec, None);
}

/// Source: Clemson: share = 100 × cation ÷ capacity (opened). Bases beyond the capacity make it
/// their own sum.
#[test]
fn shares_of_a_capacity_smaller_than_its_bases() {
    let mut measures = bases(Method::AmmoniumAcetate, 2004.0, 243.0, 391.0, None);
    measures.push(ph(7.8));
    measures.push(measure(Property::Cec, 10.0, None));
    let found = chemistry_of(measures);
    close(band(&found, Derived::BaseSaturation).likely, 100.0, 0.1);
    close(band(&found, Derived::CalciumSaturation).likely, 100.0 * 10.0 / 13.0, 0.1);
    let why = &found.get(Derived::CalciumSaturation).unwrap().grounds;
    assert!(why.assumed.iter().any(|a| a.contains("shares are of their sum")));
}

/// Source: University of Minnesota: soluble sodium is counted with the exchangeable in salty soil
/// (opened); saline from 4 dS/m of saturated paste (opened).
#[test]
fn sodium_in_a_salty_soil_is_said_to_be_overstated() {
    let with_salts = |ec: f64, sodium: Option<f64>| {
        let mut measures = bases(Method::AmmoniumAcetate, 2004.0, 243.0, 391.0, sodium);
        measures.push(measure(Property::ExchangeableAcidity, 0.0, None));
        measures.push(measure(Property::Ec, ec, Some(Method::SaturatedPaste)));
        chemistry_of(measures)
    };
    let said = |found: &Chemistry, what: Derived| {
        let grounds = &found.get(what).expect("a share").grounds;
        grounds.assumed.iter().any(|a| a.contains("The soil is salty"))
    };
    assert!(said(&with_salts(4.0, Some(460.0)), Derived::SodiumSaturation));
    assert!(!said(&with_salts(4.0, Some(460.0)), Derived::CalciumSaturation));
    assert!(!said(&with_salts(3.9, Some(460.0)), Derived::SodiumSaturation));
    let assumed_none = |found: &Chemistry| {
        found
            .get(Derived::Cec)
            .unwrap()
            .grounds
            .assumed
            .iter()
            .any(|a| a.contains("Sodium was not"))
    };
    assert!(assumed_none(&with_salts(1.0, None)) && !assumed_none(&with_salts(1.0, Some(40.0))));
}

/// Source: NRCS SSIR 45, organic matter = 1.724 × carbon (opened); Pribyl 2010, 1.9–2.0 (opened).
#[test]
fn two_per_cent_of_carbon() {
    let found = chemistry_of(vec![measure(Property::OrganicCarbon, 2.0, None)]);
    let matter = band(&found, Derived::OrganicMatter);
    close(matter.low, 3.448, 1e-9);
    close(matter.likely, 3.8, 1e-9);
    close(matter.high, 4.0, 1e-9);
}

/// Double entry: Sims and others 2002: below 0.06, to 0.11, above, over 0.15 (opened).
#[test]
fn what_a_phosphorus_ratio_means_at_its_borders() {
    let meaning = |p: f64, al: f64, fe: f64| {
        let by = |property, value| measure(property, value, Some(Method::Mehlich3));
        let found = chemistry_of(vec![
            by(Property::Phosphorus, p),
            by(Property::Aluminum, al),
            by(Property::Iron, fe),
        ]);
        found.get(Derived::PSaturationRatio).map(|f| f.grounds.rule.clone()).unwrap_or_default()
    };
    // P in moles of 30.974 over aluminium in moles of 26.982.
    let p = |ratio: f64| ratio * 1000.0 / 26.982 * 30.974;
    assert!(meaning(p(0.0599), 1000.0, 0.0).ends_with("This is below optimum."));
    assert!(meaning(p(0.0601), 1000.0, 0.0).ends_with("This is optimum."));
    assert!(meaning(p(0.1101), 1000.0, 0.0).ends_with("This is above optimum."));
    assert!(meaning(p(0.1501), 1000.0, 0.0).contains("water is at risk"));
    assert!(meaning(100.0, 0.0, 200.0).contains("water is at risk"));
    assert_eq!(meaning(100.0, 0.0, 0.0), "");
}

/// Source: NCDA&CS, acidity = 4 × (6.6 − buffer pH) per 100 cm³ (opened), of soil that weighs 0.8 to
/// 1.3 (our choice).
#[test]
fn acidity_by_volume_is_a_band_of_densities() {
    let mut measures = bases(Method::Mehlich3, 2004.0, 0.0, 0.0, Some(0.0));
    measures.push(ph(5.5));
    measures.push(measure(Property::BufferPh, 6.0, Some(Method::MehlichBuffer)));
    let cec = chemistry_of(measures).cec.expect("a sum");
    close(cec.low, 10.0 + 2.4 / 1.3, 1e-3);
    close(cec.likely, 10.0 + 2.4, 1e-3);
    close(cec.high, 10.0 + 2.4 / 0.8, 1e-3);
}

/// Source: Adams and Evans 1962, pH = 7.79 − 5.55 h + 2.27 h² (from memory): h = 0.5256 at pH 5.5
/// and 0.1515 at pH 7. Likely is 0.75 of the rise between them (our choice).
#[test]
fn acidity_from_the_curve_of_unsaturation() {
    let mut measures = bases(Method::Mehlich3, 2004.0, 0.0, 0.0, Some(0.0));
    measures.push(ph(5.5));
    let cec = chemistry_of(measures).cec.expect("a sum");
    close(cec.low, 10.0, 1e-3);
    close(cec.likely, 10.0 / (1.0 - 0.75 * (0.5256 - 0.1515)), 0.01);
    close(cec.high, 10.0 / (1.0 - 0.6256), 0.01);
}
