//! Lime, acid and gypsum against the outside.

use emberloam_engine::case::Case;
use emberloam_engine::plan::needs::{
    Need, NeedKind, SulfurSoil, T_PER_HA_IN_LB_PER_1000_SQ_FT, T_PER_HA_IN_TON_PER_ACRE, Verdict,
    adams_evans, as_product, at_neutralising_value, doses, exchangeable_acidity_psu, gypsum_oster,
    gypsum_per_meq, mehlich_nc, saturation_lime, sikora_oregon, smp_tri_state,
    sulfur_for_free_lime, sulfur_michigan, turf_psu,
};
use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::soil::{PlantGroup, Texture};
use emberloam_engine::{Outcome, interpret};

use crate::close;

fn case_of(text: &str) -> Case {
    let mut case = crate::case_of(text);
    case.bed.area_m2 = Some(10.0);
    case
}

#[track_caller]
fn find(needs: &Outcome, kind: NeedKind) -> &Need {
    needs
        .plan
        .needs
        .iter()
        .find(|n| n.kind == kind)
        .unwrap_or_else(|| panic!("no {kind:?}: {needs:?}"))
}

#[track_caller]
fn band(need: &Need, name: &str) -> Band {
    let figure = need.figures.iter().find(|f| f.name == name);
    let figure = figure.unwrap_or_else(|| panic!("no {name} in {need:?}"));
    match figure.unit {
        // As guides print it: 100 g/m² is 1 t/ha.
        Unit::GPerM2 => figure.band.map(|grams| grams / 100.0),
        _ => figure.band,
    }
}

/// Double entry: Oregon State University EM 9585, 2025: corners and rows of the table, tons/acre (opened).
#[test]
fn sikora_by_the_oregon_table() {
    for (buffer, target, tons) in [
        (6.9, 5.6, 0.0),
        (6.9, 7.2, 1.0),
        (6.8, 6.0, 0.4),
        (6.6, 6.4, 1.5),
        (6.0, 6.8, 4.6),
        (5.7, 6.0, 4.0),
        (5.0, 6.4, 10.7),
        (4.8, 5.6, 6.1),
        (4.8, 7.2, 23.2),
    ] {
        close(sikora_oregon(buffer, target).unwrap(), tons, 1e-9);
    }
    // Between rows and columns: the middle.
    close(sikora_oregon(6.35, 6.4).unwrap(), (2.5 + 2.1) / 2.0, 1e-9);
    close(sikora_oregon(6.4, 6.2).unwrap(), (1.5 + 2.1) / 2.0, 1e-9);
    for (buffer, target) in [(7.0, 6.4), (4.7, 6.4), (6.0, 5.5), (6.0, 7.3), (f64::NAN, 6.4)] {
        assert_eq!(sikora_oregon(buffer, target), None, "{buffer} {target}");
    }
}

/// Double entry: Tri-State Fertilizer Recommendations: lime test index 68 to 60, for pH 6.8, 6.5 and
/// 6.0, tons/acre (from memory).
#[test]
fn smp_by_the_tri_state_equations() {
    for (index, rates) in [
        (68.0, [1.4, 1.2, 1.0]),
        (66.0, [3.4, 2.9, 2.4]),
        (64.0, [5.5, 4.7, 3.9]),
        (62.0, [7.5, 6.4, 5.3]),
        (60.0, [9.6, 8.1, 6.7]),
    ] {
        for (target, tons) in [6.8, 6.5, 6.0].into_iter().zip(rates) {
            close(smp_tri_state(index / 10.0, target).unwrap(), tons, 0.11);
        }
    }
    assert_eq!(smp_tri_state(5.9, 6.5), None);
    assert_eq!(smp_tri_state(6.4, 7.0), None);
    close(smp_tri_state(7.2, 6.5).unwrap(), 0.0, 1e-12);
}

/// Source: E-2567: tons × 0.90 ÷ 0.80 for lime of neutralising value 80 (opened). Penn State: 75
/// lb/1000 sq ft at CCE 80 is 94, 5 lb/100 sq ft at CCE 70 is 7 (opened).
#[test]
fn lime_of_another_quality() {
    close(at_neutralising_value(1.0, 80.0), 1.125, 1e-12);
    close(as_product(75.0, 80.0), 94.0, 0.3);
    close(as_product(5.0, 70.0), 7.0, 0.15);
}

/// Source: NCDA&CS: Ac × (target − pH) ÷ (6.6 − pH) (derived).
#[test]
fn mehlich_by_north_carolina() {
    close(mehlich_nc(2.0, 5.0, 6.5).unwrap(), 2.0 * 1.5 / 1.6, 1e-12);
    close(mehlich_nc(2.0, 5.0, 6.6).unwrap(), 2.0, 1e-12);
    assert_eq!(mehlich_nc(2.0, 6.6, 6.6), None);
    assert_eq!(mehlich_nc(2.0, 5.0, 6.7), None);
}

/// Source: Penn State Agronomy Guide: acidity 6.0 gives 6000 and 5040 lb/acre, 3.0 at pH 5.9
/// gives 2000 (derived from the opened rule).
#[test]
fn exchangeable_acidity_by_penn_state() {
    close(exchangeable_acidity_psu(6.0, 5.5, 7.0).unwrap(), 6000.0, 1e-9);
    close(exchangeable_acidity_psu(6.0, 5.5, 6.5).unwrap(), 5040.0, 1e-9);
    close(exchangeable_acidity_psu(3.0, 5.9, 6.5).unwrap(), 2000.0, 1e-9);
    close(exchangeable_acidity_psu(3.0, 6.5, 6.5).unwrap(), 0.0, 1e-9);
    close(exchangeable_acidity_psu(4.0, 5.9, 6.5).unwrap(), 2000.0, 1e-9);
    assert_eq!(exchangeable_acidity_psu(6.0, 5.5, 6.0), None);
}

/// Double entry: Penn State turf handbook, lb/1000 sq ft for pH 7.0, 6.5 and 6.0 (opened).
#[test]
fn turf_by_penn_state() {
    for (acidity, rates) in [
        (2.0, [50.0, 50.0, 50.0]),
        (4.6, [110.0, 70.0, 50.0]),
        (9.0, [210.0, 160.0, 110.0]),
        (15.5, [370.0, 300.0, 230.0]),
        (20.0, [460.0, 390.0, 320.0]),
        (25.7, [600.0, 530.0, 410.0]),
    ] {
        for (target, pounds) in [7.0, 6.5, 6.0].into_iter().zip(rates) {
            close(turf_psu(acidity, target).unwrap(), pounds, 1e-9);
        }
    }
    assert_eq!(turf_psu(1.9, 6.5), None);
    assert_eq!(turf_psu(25.8, 6.5), None);
}

/// Source: Adams–Evans by Huluka 2005; pH 5.1, 7.70 to 6.5: 2195; 5.0, 7.60 to 6.0: 2206; 5.5,
/// 7.80 to 6.5: 1212 lb/acre (derived).
#[test]
fn adams_evans_worked() {
    close(adams_evans(5.1, 7.70, 6.5), 2195.0, 5.0);
    close(adams_evans(5.0, 7.60, 6.0), 2206.0, 5.0);
    close(adams_evans(5.5, 7.80, 6.5), 1212.0, 5.0);
    close(adams_evans(6.5, 7.9, 6.5), 0.0, 1e-12);
    close(adams_evans(5.0, 8.0, 6.5), 0.0, 1e-12);
}

/// Source: 1 ton/acre = 2.2417 t/ha = 45.91 lb/1000 sq ft (derived).
#[test]
fn lime_in_the_readers_measures() {
    close(T_PER_HA_IN_TON_PER_ACRE, 2.2417, 1e-4);
    close(T_PER_HA_IN_TON_PER_ACRE / T_PER_HA_IN_LB_PER_1000_SQ_FT, 45.91, 0.01);
}

/// Double entry: Michigan State University Extension 00001631: lb/100 sq ft; 1.6 × 2.5 = 4.0 lb on 250
/// sq ft of loam from 7 to 6 (derived).
#[test]
fn sulfur_by_the_michigan_table() {
    use SulfurSoil::{ClayLoam, Loam, Organic, Sand, SandyLoam};
    for (soil, first, second, third) in [
        (Sand, 0.7, 1.8, 1.8),
        (SandyLoam, 1.2, 2.8, 2.8),
        (Loam, 1.6, 3.2, 3.2),
        (ClayLoam, 2.5, 3.2, 4.1),
        (Organic, 3.9, 6.3, 10.3),
    ] {
        close(sulfur_michigan(soil, 7.0, 6.0).unwrap(), first, 1e-9);
        close(sulfur_michigan(soil, 6.0, 5.0).unwrap(), second, 1e-9);
        close(sulfur_michigan(soil, 5.0, 4.0).unwrap(), third, 1e-9);
    }
    close(2.5 * sulfur_michigan(Loam, 7.0, 6.0).unwrap(), 4.0, 1e-9);
    close(sulfur_michigan(Loam, 5.0, 6.0).unwrap(), 0.0, 1e-9);
    assert_eq!(sulfur_michigan(Loam, 7.5, 6.0), None);
    assert_eq!(sulfur_michigan(Loam, 6.0, 3.9), None);
}

/// Source: 1 % free lime in 2,000,000 lb of soil takes 6407 lb of sulfur per acre (derived).
#[test]
fn sulfur_against_free_lime_is_hopeless() {
    close(sulfur_for_free_lime(1.0) / 1.120_85, 6407.0, 15.0);
}

/// Source: Ali, exchangeable sodium 35 to 15 %, CEC 22, 40 cm: 22.58 t/ha and 28.23 with a quarter
/// more (opened; its density 1.49 derived); 86.1 mg per meq (derived).
#[test]
fn gypsum_worked() {
    close(gypsum_oster(1.0, 0.40, 1.49, 22.0, (35.0, 15.0), 100.0), 22.58, 0.1);
    close(gypsum_oster(1.25, 0.40, 1.49, 22.0, (35.0, 15.0), 100.0), 28.23, 0.1);
    close(gypsum_oster(1.2, 0.40, 1.49, 22.0, (10.0, 15.0), 100.0), 0.0, 1e-12);
    close(gypsum_oster(1.0, 0.40, 1.49, 22.0, (35.0, 15.0), 50.0), 45.16, 0.2);
    close(gypsum_per_meq(1.0), 172.17 / 2.0, 0.02);
}

/// Source: Penn State: a garden gets at most about 10 lb/100 sq ft at a time (opened).
#[test]
fn lime_in_doses() {
    assert_eq!([doses(0.0, 5.0), doses(5.0, 5.0), doses(5.1, 5.0), doses(15.1, 5.0)], [1, 1, 2, 4]);
}

/// Source: Oregon EM 9585, buffer pH 6.4: 1.5 tons/acre to 6.0 and 2.1 to 6.4 for the top 6 in (opened).
#[test]
fn a_named_buffer_gives_lime_for_the_bed() {
    let mut case = case_of("pH 5.4\nSikora buffer pH 6.4\n");
    case.feeds.target_ph = Some(6.4);
    case.bed.depth_cm = Some(15.24);
    case.feeds.lime_percent = Some(100.0);
    let found = interpret(&case);
    let lime = find(&found, NeedKind::Lime);
    assert_eq!(lime.verdict, Verdict::Give);
    close(band(lime, "lime-rate").likely, 2.1 * T_PER_HA_IN_TON_PER_ACRE, 1e-6);
    // On 10 m², kg.
    close(band(lime, "lime-for-bed").likely, 2.1 * T_PER_HA_IN_TON_PER_ACRE, 1e-6);
    // Half as deep, half as much; a weaker lime, more of it.
    case.bed.depth_cm = Some(7.62);
    case.feeds.lime_percent = Some(50.0);
    let found = interpret(&case);
    let lime = find(&found, NeedKind::Lime);
    close(band(lime, "lime-rate").likely, 1.05 * T_PER_HA_IN_TON_PER_ACRE, 1e-6);
    close(band(lime, "lime-product").likely, 2.1 * T_PER_HA_IN_TON_PER_ACRE, 1e-6);
    assert!(lime.cautions.iter().any(|c| c.contains("quicklime")));
}

/// Source: RHS: not feasible with free lime (opened); Michigan State's table elsewhere (opened).
#[test]
fn sulfur_only_where_it_can_work() {
    let mut case = case_of("pH 6.5\n");
    case.plants = Some(PlantGroup::AcidLovers);
    case.bed.texture = Some(Texture::Loam);
    let found = interpret(&case);
    let acid = find(&found, NeedKind::Acid);
    assert_eq!(acid.verdict, Verdict::Give);
    assert!(!acid.figures.is_empty() && acid.cautions.iter().any(|c| c.contains("Sulfur dust")));
    let mut limy = case_of("pH 7.9\nFree lime 4 %\n");
    limy.plants = Some(PlantGroup::AcidLovers);
    limy.bed.texture = Some(Texture::Loam);
    let found = interpret(&limy);
    assert!(find(&found, NeedKind::Acid).answer.contains("free lime"));
    assert!(find(&found, NeedKind::Acid).figures.iter().all(|f| !f.name.contains("for-bed")));
    // A soil in the range of its plants is left alone.
    assert!(interpret(&case_of("pH 6.5\n")).plan.needs.iter().all(|n| n.kind != NeedKind::Acid));
}

/// Source: Handbook 60: sodic from 15 % exchangeable sodium (opened).
#[test]
fn gypsum_only_for_a_sodic_soil() {
    let sodic = interpret(&case_of("pH 8.7\nSodium saturation 35 %\nCEC 22 meq/100 g\n"));
    let gypsum = find(&sodic, NeedKind::Gypsum);
    assert_eq!(gypsum.verdict, Verdict::Give);
    assert!(gypsum.steps[0].contains("drain") && gypsum.answer.contains("sized locally"));
    assert!(!gypsum.figures.is_empty());
    for text in ["pH 6.5\nSodium saturation 3 %\nCEC 22 meq/100 g\n", "pH 6.5\nCEC 10 meq/100 g\n"]
    {
        let found = interpret(&case_of(text));
        assert!(
            found
                .plan
                .needs
                .iter()
                .all(|n| n.kind != NeedKind::Gypsum || n.verdict != Verdict::Give)
        );
    }
}

/// Source: an agronomists' page on liming in Brazil (second-hand): V 8.42 to 60 %, T 5.46, lime of
/// PRNT 80 %: 3.5 t/ha. The reference's sum is (70 − 18) × 7.1 ÷ 100 = 3.7 (derived).
#[test]
fn lime_by_base_saturation_as_the_worked_examples() {
    let product = saturation_lime(8.42, 60.0, 5.46) * 100.0 / 80.0;
    assert!((product - 3.5).abs() < 0.05, "{product}");
    assert!((saturation_lime(18.0, 70.0, 7.1) - 3.7).abs() < 0.05);
    assert_eq!(saturation_lime(75.0, 70.0, 7.1), 0.0);
}
