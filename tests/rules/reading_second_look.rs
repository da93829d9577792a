//! What the second look asks of readings that would else be used, and what it leaves alone.

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{Pairing, Reading};
use emberloam_engine::soil::Property;

use crate::reading_traps::report;

/// Enough plain results that nothing else is asked.
const LIST: &str = "P 31 ppm\nK 144 ppm\nCa 1610 ppm\nMg 171 ppm\nZn 2.4 ppm\nB 0.6 ppm\n";

fn all(text: &str) -> Vec<Reading> {
    report(text).samples.into_iter().flat_map(|s| s.readings).collect()
}

fn is_asked(text: &str, property: Property) -> bool {
    let all = all(text);
    let own = all.iter().find(|r| r.property == property);
    own.unwrap_or_else(|| panic!("{text}: no {property:?}")).pairing == Pairing::CountedOff
}

fn unit_of(text: &str, property: Property) -> Option<Unit> {
    let all = all(text);
    all.iter().find(|r| r.property == property).unwrap_or_else(|| panic!("{text}")).unit
}

#[test]
fn a_plain_list_is_not_asked() {
    for text in [
        format!("pH 6.4\n{LIST}"),
        "Sample\tpH\tP ppm\tK ppm\nBed 1\t6.1\t22\t131\nBed 2\t5.8\t17\t98\n".into(),
        "Soil pH 1:1\t6.3\nMehlich 3 P\t40 ppm\nBray 1 P\t28 ppm\n".into(),
        "pH 8.1\nNa 610 ppm\nEC 6.2 dS/m\nZn 140 ppm\nOM 38 %\n".into(),
        "pH 5,1\nCa 3,1 cmolc/dm³\nCTC pH 7,0    11,6 cmolc/dm³\n".into(),
        "Al meq/100 g\tH meq/100 g\tpH\n0.0\t0.0\t6.9\n".into(),
    ] {
        let asked: Vec<_> =
            all(&text).into_iter().filter(|r| r.pairing == Pairing::CountedOff).collect();
        assert!(asked.is_empty(), "{text}: {asked:?}");
    }
}

#[test]
fn a_number_that_hardly_any_soil_has_is_asked() {
    for (text, property) in [
        (format!("pH 6.4\n{LIST}Cu 900 ppm\n"), Property::Copper),
        (format!("pH 6.4\n{LIST}Mo 90 ppm\n"), Property::Molybdenum),
    ] {
        assert!(is_asked(&text, property), "{text}");
        assert!(!is_asked(&text, Property::Ph), "{text}");
    }
}

#[test]
fn what_can_hardly_be_in_its_unit_is_judged_by_nobody() {
    for (text, property) in [
        (format!("Mehlich-3\npH 6.4\n{LIST}CEC 0.2 meq/100 g\n"), Property::Cec),
        ("Mehlich-3\npH 6.4\nP 31 ppm\nK 0 ppm\n".into(), Property::Potassium),
    ] {
        let outcome = emberloam_engine::interpret(&crate::case_of(&text));
        let reading = outcome.samples[0].readings.iter().find(|r| r.property == property);
        let finding = &reading.unwrap_or_else(|| panic!("{text}")).finding;
        assert!(finding.level.is_none(), "{text}: {finding:?}");
        assert!(finding.not_judged.is_some(), "{text}");
    }
}

#[test]
fn a_sentence_beside_a_list_is_asked_and_one_alone_is_not() {
    let letter = "Last spring the neighbour's pH came back 5.2 and that was it.";
    let beside = all(&format!("{LIST}\n{letter}\n"));
    let told: Vec<_> = beside.iter().filter(|r| r.property == Property::Ph).collect();
    assert!(told.iter().all(|r| r.pairing == Pairing::CountedOff), "{told:?}");
    let alone = all("The soil test is here: the pH came back 6.2 and potassium was 131 ppm.");
    assert!(!alone.is_empty() && alone.iter().all(|r| r.pairing == Pairing::Sentence));
}

#[test]
fn words_for_a_limit_and_a_bracket_of_other_words_are_asked() {
    let limit = format!("pH 6.4\n{LIST}Cuivre : plus de 30 mg/kg\n");
    let all = all(&limit);
    let own: Vec<_> = all.iter().filter(|r| r.property == Property::Copper).collect();
    let bound = |r: &&Reading| r.amount.is_some_and(|a| a.exact().is_none());
    assert!(own.iter().all(|r| bound(r) || r.pairing == Pairing::CountedOff), "{own:?}");
    // The 5 of a suspension's ratio is no pH.
    let ratio = report(&format!("{LIST}Métodos usados: pH = suelo: agua (1:2,5); N total\n"));
    let ph = ratio.samples.iter().flat_map(|s| &s.readings).filter(|r| r.property == Property::Ph);
    assert!(ph.into_iter().all(|r| r.pairing == Pairing::CountedOff));
}

#[test]
fn a_result_with_two_numbers_is_asked_and_two_samples_in_one_are_asked_whole() {
    let once = format!("pH 6.4\n{LIST}\nZn 3.9 ppm\n");
    assert!(is_asked(&once, Property::Zinc) && !is_asked(&once, Property::Boron), "{once}");
}

#[test]
fn a_salt_named_over_a_ph_makes_it_a_salt_ph_or_a_question() {
    let by_row = "Test\tMethod\tResult\nSoil pH\tCaCl2\t5.6\nOrganic matter\tLOI\t3.1 %\n";
    let in_row = "pH-Wert   CaCl2   6,2   schwach sauer\nPhosphor   CAL   38 mg/kg\n";
    for text in [by_row, in_row] {
        let all = all(text);
        let told = |r: &Reading| match r.property {
            Property::SaltPh => true,
            Property::Ph => r.pairing == Pairing::CountedOff,
            _ => false,
        };
        assert!(all.iter().any(told), "{text}: {all:?}");
    }
}

#[test]
fn the_usual_unit_does_not_go_without_saying_beside_one_by_volume() {
    let rival = "CEC 7.8\nTest results [units: Na in meq/100 cm3]\npH 6.1\nAc 1.1\n";
    assert_eq!(unit_of(rival, Property::Cec), None);
    assert_eq!(unit_of("CEC 7.8\npH 6.1\nAc 1.1\n", Property::Cec), Some(Unit::MeqPer100g));
}

#[test]
fn a_unit_of_a_column_that_can_not_be_is_left_open() {
    let table =
        "Sample\tpH\tCa mg/L\tMg mg/L\tAl mg/L\nA\t5.3\t1.3\t0.4\t0.2\nB\t5.0\t0.9\t0.3\t0.6\n";
    for property in [Property::Calcium, Property::Magnesium, Property::Aluminum] {
        assert_eq!(unit_of(table, property), None, "{property:?}");
    }
    // The laboratory says it with the number itself.
    assert_eq!(unit_of("pH 5\nMg 1 ppm\n", Property::Magnesium), Some(Unit::MgPerKg));
}

#[test]
fn sand_silt_and_clay_have_one_unit() {
    let thousand = "Sand\tSilt\tClay\tpH\n495\t95\t410\t5.9\n";
    let hundred = "Sand\tSilt\tClay\tpH\n48\t31\t21\t5.9\n";
    let neither = "Sand\tSilt\tClay\tpH\n48\t31\t51\t5.9\n";
    for (text, unit) in
        [(thousand, Some(Unit::GPerKg)), (hundred, Some(Unit::Percent)), (neither, None)]
    {
        for property in [Property::Sand, Property::Silt, Property::Clay] {
            assert_eq!(unit_of(text, property), unit, "{text}");
        }
    }
}

#[test]
fn means_and_aims_are_no_samples() {
    let rows = "Field\tpH\tP ppm\tK ppm\nNorth\t6.1\t22\t131\nSouth\t5.8\t17\t98\nMean of 2 fields\t6.0\t20\t115\n";
    let columns =
        "\tNorth\tSouth\tSuggested\npH\t6.1\t5.8\t6.5\nP ppm\t22\t17\t30\nK ppm\t131\t98\t150\n";
    for text in [rows, columns] {
        let report = report(text);
        let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(names, ["North", "South"], "{text}");
    }
}

#[test]
fn a_list_of_codes_before_or_after_the_results_names_the_samples() {
    let list = "Probe-Nr.\tBezeichnung\n1\tHochbeet\n2\tRasen\n";
    let across = "\tProbe 1\tProbe 2\npH\t6,1\t5,8\nHumus %\t4,2\t3,1\nK mg/kg\t131\t98\n";
    let down = "Probe-Nr.\tpH\tHumus %\tK mg/kg\n1\t6,1\t4,2\t131\n2\t5,8\t3,1\t98\n";
    for text in [format!("{list}\n{across}"), format!("{list}\n{down}"), format!("{down}\n{list}")]
    {
        let report = report(&text);
        let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(names, ["Hochbeet", "Rasen"], "{text}");
    }
}

#[test]
fn depths_under_one_name_are_never_mixed() {
    let under = "Nitrate-N\n  0-6\"   14 lb/acre  ****\n  6-24\"  33 lb/acre  ******\nPhosphorus  9 ppm\nPotassium  268 ppm\n";
    let beside = "Nitrate-N   0-6\"   14 lb/acre   6-24\"   33 lb/acre\nPhosphorus   9 ppm\nPotassium   268 ppm\n";
    for text in [under, beside] {
        let all = all(text);
        let nitrate = all.iter().filter(|r| r.property == Property::NitrateN);
        let numbers: Vec<f64> = nitrate.filter_map(|r| Some(r.amount?.number())).collect();
        assert!(numbers.iter().all(|n| [14.0, 33.0].contains(n)), "{text}: {numbers:?}");
    }
}

#[test]
fn words_that_say_what_follows_are_no_head_of_samples() {
    let text = "FIELD ID   Sect 9 NE   SAMPLE ID   FIELD NAME   Rye 12\npH   6.4\nP   9 ppm\nK   268 ppm\nZn   0.6 ppm\n";
    let report = report(text);
    assert_eq!(report.samples.len(), 1);
    assert_eq!(report.samples[0].name, "Rye 12");
    assert_eq!(report.samples[0].readings.len(), 4);
}
