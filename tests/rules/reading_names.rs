//! What a sample is called, and what is read from pages that say it in their own way. Invented
//! throughout. A name is said by the report, or the sample is only numbered: never a date, a
//! range, a unit or the word for soil.

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{Pairing, Reading};
use emberloam_engine::soil::Property;

use crate::reading_layouts::samples;
use crate::reading_traps::report;

fn names(text: &str) -> Vec<String> {
    report(text).samples.into_iter().map(|s| s.name).collect()
}

fn all(text: &str) -> Vec<Reading> {
    report(text).samples.into_iter().flat_map(|s| s.readings).collect()
}

/// The numbers of a property, with their units.
fn of(text: &str, property: Property) -> Vec<(f64, Option<Unit>)> {
    let own = all(text).into_iter().filter(|r| r.property == property);
    own.filter_map(|r| Some((r.amount?.number(), r.unit))).collect()
}

fn asked(text: &str, property: Property) -> bool {
    let own = all(text).into_iter().find(|r| r.property == property);
    own.unwrap_or_else(|| panic!("{text}")).pairing == Pairing::CountedOff
}

/// A list of results without a name.
const LIST: &str = "pH 6.4\nP 31 ppm\nK 144 ppm\nMg 171 ppm\n";

#[test]
fn what_is_no_name_leaves_a_sample_numbered() {
    for line in [
        "Sample: soil",
        "Campione: TERRENO",
        "Muestra: Suelo agrícola",
        "Sample: SAMPLE HISTORY",
        "Sample date: 12/06/2031",
        "Plot: 200 - 300",
        "Plot: mg/kg",
    ] {
        assert_eq!(names(&format!("{line}\n{LIST}")), ["Sample 1"], "{line}");
    }
    let table = "Test\t< 300\t9 - 14\npH\t6.1\t5.8\nP ppm\t31\t17\nK ppm\t120\t98\n";
    assert!(names(table).iter().all(|name| name.starts_with("Sample")), "{:?}", names(table));
}

#[test]
fn a_field_comes_before_the_laboratorys_number() {
    for (lines, name) in [
        ("Sample number: 2031-00517\nField: Hazel bank", "Hazel bank"),
        ("Monsternummer: 3107-00517\nPerceel: Achter de wilgen", "Achter de wilgen"),
        ("Číslo vzorku: 31-4417\nNázev honu: U lípy", "U lípy"),
        ("Lab no: 58213\nOwner sample ID: HAYLOFT", "HAYLOFT"),
        // Where nothing else is said it is the name, and a customer's own short number stays.
        ("Sample number: 2031-00517", "2031-00517"),
        ("Sample ID: A2\nField: Hazel bank", "A2"),
        // A part of a district is none.
        ("Sample number: UX/118842/7\nBlock: Sitapura", "UX/118842/7"),
    ] {
        assert_eq!(names(&format!("{lines}\n{LIST}")), [name], "{lines}");
    }
}

#[test]
fn headings_over_lists_name_them() {
    let a = "pH = 7.9\n\nOrganic matter = 3.4%\n\nPhosphorus = 47 ppm\n\nPotassium = 212 ppm\n";
    let b = "pH = 6.7\n\nOrganic matter = 9.5%\n\nPhosphorus = 139 ppm\n\nPotassium = 604 ppm\n";
    let wish = "Vegetables prefer a pH of 6.3-6.8, phosphorus of around 100 ppm, and potassium of \
                around 250 ppm.\n\n";
    let text = format!("{wish}Front bed #1:\n\n{a}\nBagged mix:\n\n{b}");
    assert_eq!(names(&text), ["Front bed #1", "Bagged mix"]);
    assert_eq!(of(&text, Property::Phosphorus).len(), 2);
    let dated = |n: u8, day: &str| {
        format!(
            "## Plot {n} – gate {n}4 (onion)\nFarm location: Lower Mill\nSample date: {day}\n\n"
        )
    };
    let text = format!("{}{a}\n{}{b}", dated(1, "12/06/2031"), dated(2, "13/06/2031"));
    assert_eq!(names(&text), ["Plot 1 – gate 14 (onion)", "Plot 2 – gate 24 (onion)"]);
}

#[test]
fn heads_over_one_row_and_labels_over_a_line_name_the_sample() {
    let row = "Date\tCounty\tAcres\tField ID\n";
    let head = "Sample ID\tField ID\tLast crop\nASPEN\tH2\tRye\n\n";
    assert_eq!(
        names(&format!("{head}Analysis\tpH\tP (lb/A)\tK (lb/A)\nResult\t6.2\t19\t207\n")),
        ["ASPEN"]
    );
    assert_eq!(names(&format!("Sample No.\nGARDEN-2\nLab No.\n118203\n{LIST}")), ["GARDEN-2"]);
    // A head of results is read as one.
    assert!(names(&format!("{row}{LIST}")).len() == 1);
    let table = "Sample ID\tpH\tP ppm\nRye bed\t6.2\t19\nOat bed\t6.0\t22\n";
    assert_eq!(names(table), ["Rye bed", "Oat bed"]);
}

#[test]
fn columns_of_years_are_called_by_what_stands_above_them() {
    let table = "|  | 2029 | **2031** |\n|---|---|---|\n| soil pH | 5.9 | **6.3** |\n| P (lb/A) | 71 | **96** |\n| K (lb/A) | 140 | **133** |\n";
    assert_eq!(
        names(&format!("## Long bed (A)\n\n{table}")),
        ["Long bed (A), 2029", "Long bed (A), 2031"]
    );
    assert_eq!(names(table), ["2029", "2031"]);
}

#[test]
fn more_results_of_one_sample_below_a_table_are_none_of_a_sample_of_that_name() {
    let table = "Sample\tpH\tP ppm\tK ppm\nRye bed\t6.2\t19\t130\nOat bed\t6.0\t22\t110\n";
    for line in [
        "Additional tests (only 119): B 0.9 mg/kg  Zn 6.3 mg/kg",
        "Weitere Untersuchungen (nur 119): B 0,9 mg/kg  Zn 6,3 mg/kg",
        "Targets most of us shoot for: pH 6.8, Zn 6 ppm, B 1 ppm",
    ] {
        let text = format!("{table}{line}\n");
        assert_eq!(names(&text), ["Rye bed", "Oat bed"], "{line}");
        assert!(of(&text, Property::Zinc).is_empty(), "{line}");
    }
}

#[test]
fn columns_under_no_head_are_asked() {
    let text = "\tYIELD GOAL 60\tYIELD GOAL 150\nPhosphorus\t9 ppm\t31\nPotassium\t212 ppm\t40\nZinc\t0.6 ppm\t5\nCopper\t0.7 ppm\t1\n";
    let text = text.replace("\tYIELD GOAL 60\tYIELD GOAL 150", "Nutrient\t\t");
    let found = all(&text);
    assert!(found.iter().all(|r| r.pairing == Pairing::CountedOff), "{found:?}");
}

#[test]
fn places_over_a_list_are_proposed() {
    let list = "P [mg/kg] 203 388 42\nK [mg/kg] 296 611 158\nMg [mg/kg] 178 264 91\nCa [mg/kg] 2410 4180 1105\npH/KCl 6.4 7.1 4.6\n";
    assert_eq!(
        names(&format!("záhony skleník pastvina\n{list}")),
        ["záhony", "skleník", "pastvina"]
    );
    // Which of four words are whose can't be told.
    let text = format!("záhony skleník pastvina horní\n{list}");
    assert!(asked(&text, Property::Phosphorus));
}

#[test]
fn a_result_in_a_second_unit_is_used_once_if_it_is_the_same() {
    let reasons = |text: &str| -> Vec<String> {
        let samples = report(text).samples;
        samples.into_iter().flat_map(|s| s.unread).map(|u| u.reason).collect()
    };
    for same in [
        "K 196 ppm\nK 0.50 meq/100g\n",
        "Ca 1390 mg/kg\nCa 6.95 cmol/kg\n",
        "P 27 ppm\nP 54 lb/acre\n",
        "Potassio scambiabile mg/kg 187 meq/100 g 0,48\n",
    ] {
        let text = format!("pH 6.1\nZn 2.4 ppm\n{same}");
        assert!(
            reasons(&text).iter().any(|r| r.starts_with("the same ")),
            "{text}: {:?}",
            reasons(&text)
        );
    }
    let other = "pH 6.1\nZn 2.4 ppm\nK 196 ppm\nK 1.40 meq/100g\n";
    assert!(!reasons(other).iter().any(|r| r.starts_with("the same ")), "{:?}", reasons(other));
}

#[test]
fn each_column_of_a_row_has_the_unit_of_its_head() {
    let above = "Item\tUnit\tYour level\nZinc\tmg/kg\t5.2\nIron\tmg/kg\t66\nCopper\tmg/kg\t3.4\n";
    let below = "\tcmol+/kg\tmg/kg\t% of CEC\nCalcium\t6.95\t1390\t61.4\nMagnesium\t1.67\t203\t14.8\nPotassium\t0.42\t164\t3.7\n";
    for text in [below.to_string(), format!("{above}Cation balance\n{below}")] {
        assert_eq!(of(&text, Property::CalciumSaturation), [(61.4, Some(Unit::Percent))], "{text}");
        assert_eq!(of(&text, Property::Calcium).len(), 1, "{text}");
        assert!(of(&text, Property::Calcium)[0].1.is_some(), "{text}");
    }
}

#[test]
fn cations_that_come_to_a_hundred_are_shares() {
    let shares = "calcium 48.5\nmagnesium 13.8\npotassium 6.4\nsodium 1.7\nhydrogen 29.6\n";
    let text = format!("pH 5.8\n{shares}");
    assert_eq!(of(&text, Property::MagnesiumSaturation), [(13.8, Some(Unit::Percent))]);
    assert!(of(&text, Property::Magnesium).is_empty());
    // These come to 57.
    let other = text.replace("48.5", "5.1");
    assert!(of(&other, Property::MagnesiumSaturation).is_empty());
    // Three that happen to are none.
    let three = "pH 5.8\nK 97 mg/kg\nCa 2.1\nMg 0.8\n";
    assert!(of(three, Property::CalciumSaturation).is_empty());
}

#[test]
fn what_is_dissolved_in_a_paste_is_none_of_the_soils_store() {
    let text = "Plot\tpH\tECe\tCa\tMg\tNa\tB\n\ts.u.\tdS/m\tmeq/L\t\t\tppm\nRye bed\t7.6\t1.84\t7.9\t3.8\t6.9\t0.42\nOat bed\t7.9\t2.65\t8.4\t4.9\t13.4\t0.71\n";
    for property in [Property::Calcium, Property::Magnesium, Property::Sodium] {
        assert!(of(text, property).is_empty(), "{property:?}");
    }
    assert_eq!(of(text, Property::Boron).len(), 2);
}

#[test]
fn marks_of_ions_bold_type_and_symbols_hide_nothing() {
    assert_eq!(
        of("* Lead (Pb) 186 mg/kg\n* Arsenic (As) 8.3 mg/kg\npH 6.1", Property::Arsenic)[0].0,
        8.3
    );
    assert!(
        of("* Lead (Pb) 186 mg/kg\n* Arsenic (As) 8.3 mg/kg\npH 6.1", Property::BufferPh)
            .is_empty()
    );
    assert_eq!(
        of("- pH **4.9** (acid)\n- K **88** ppm\n- Mg 61 ppm", Property::Ph),
        [(4.9, Some(Unit::None))]
    );
    let head = "Plot;pH;S-SO4 2-;Ca 2+;Al 3+\n;;mg/dm3;cmolc/dm3;cmolc/dm3\nRye;5,6;7;2,4;0,1\nOat;5,2;11;1,1;0,5\n";
    assert_eq!(of(head, Property::Sulfur).len(), 2);
    assert_eq!(of(head, Property::Aluminum).len(), 2);
    assert_eq!(
        of("pH 5,1\nK 58 mg/dm3\nAcidez trocável cmolc/dm3 0,70", Property::Aluminum).len(),
        1
    );
    assert_eq!(
        of("pH 5,1\nMn-plantbeschikbaar µg Mn/kg 610\nK 64 mg/kg", Property::Manganese)[0].1,
        Some(Unit::MgPerKg)
    );
    assert!(
        of("pH H 2O CaCl2 mg/dm3\nK 39 mg/dm3\nP 4 mg/dm3", Property::ExchangeableAcidity)
            .is_empty()
    );
}

#[test]
fn limits_legends_and_other_peoples_numbers_are_asked_or_left() {
    let list = "pH 8,2\nP 31 mg/kg\nK 144 mg/kg\n";
    for line in [
        "Cuivre : au-delà de 30 mg/kg risque pour la vigne",
        "Cobre: acima de 30 mg/kg já é demais",
    ] {
        let text = format!("{list}{line}\n");
        let copper: Vec<Reading> =
            all(&text).into_iter().filter(|r| r.property == Property::Copper).collect();
        assert!(copper.iter().all(|r| r.pairing == Pairing::CountedOff), "{line}");
    }
    let codes = format!("{list}Texture codes: 1 sand, 1.5 sandy loam, 2 loam, 3 clay\n");
    assert!(of(&codes, Property::Clay).is_empty() && of(&codes, Property::Sand).is_empty());
    let leaf = format!("{list}The old plum leaf test from 2029 was K 0.9 % and zinc 14 ppm.\n");
    assert!(of(&leaf, Property::Zinc).is_empty());
    let two = format!("{list}Mg ......... 142 ppm / 236 ppm (opt 100-200)\n");
    assert!(of(&two, Property::Magnesium).is_empty());
    // A legend of a page that was not read.
    let rows = "A = Arena ; L = Limo\n3117 Lote A 7.62 0.84 2.10 x 14.2 286 q 28 14\n3118 Lote B 7.90 3.12 4.60 x 8.8 354 q 34 20\nMétodos: Zn 0.1 N HCl\n";
    let found = emberloam_engine::report::open(rows.as_bytes())
        .and_then(|g| emberloam_engine::report::read(&g));
    if let Ok(found) = found {
        let mut readings = found.samples.iter().flat_map(|s| &s.readings);
        assert!(
            readings.all(|r| r.pairing == Pairing::CountedOff || r.amount.is_none()),
            "{found:?}"
        );
    }
}

#[test]
fn a_strip_that_says_the_same_ph_again_goes_on() {
    let text = "Soil pH: 6.1\nPhosphorus (P): 27 ppm\nPotassium (K): 196 ppm\n\npH\tP lb/A\tCEC meq/100g\tOM %\n6.1\t54\t11.1\t2.7\n";
    assert_eq!(names(text).len(), 1, "{}", samples(text));
    let other = text.replace("\n6.1\t54", "\n5.4\t54");
    assert_eq!(names(&other).len(), 2, "{}", samples(&other));
}

#[test]
fn a_report_poured_into_one_line_is_read() {
    let line = "Azienda La Ginestra Loc. Fontelunga (orto) RISULTATO Parametro Unità di misura Valore Scheletro % 12 Sabbia % 38 Limo % 33 Argilla % 29 pH 7,8 Sostanza organica % 2,1 Azoto totale g/kg 1,3 Potassio scambiabile mg/kg 187 Magnesio scambiabile mg/kg 141";
    assert_eq!(of(line, Property::Clay), [(29.0, Some(Unit::Percent))]);
    assert_eq!(of(line, Property::Magnesium), [(141.0, Some(Unit::MgPerKg))]);
    assert_eq!(of(line, Property::Ph), [(7.8, Some(Unit::None))]);
    let advice = "CONSIGLIO DI CONCIMAZIONE Oliveto: P2O5 60 kg/ha, K2O 50 kg/ha, MgO 20 kg/ha, CaO 300 kg/ha, zolfo 20 kg/ha, boro 1 kg/ha, zinco 2 kg/ha ogni anno";
    let text = format!("{line}\n{advice}\n");
    assert_eq!(of(&text, Property::Phosphorus), []);
}

#[test]
fn the_first_number_is_the_samples_where_guidelines_follow_it() {
    let head = "Method Nutrient Units Sample 1 Indicative guidelines - refer to notes\n";
    let rows = "Colwell Phosphorus (mg/kg) 88 70 46 50 41\nKCl Sulfur (mg/kg S) 14 8.7 7.4 9.0 8.3\nDTPA Zinc (mg/kg) 4.2 6.0 5.0 4.0 3.0\nDTPA Copper (mg/kg) 1.9 2.4 2.0 1.6 1.2\n";
    assert_eq!(of(&format!("{head}{rows}"), Property::Phosphorus), [(88.0, Some(Unit::MgPerKg))]);
    assert!(of(&format!("pH 6.2\nMg 171 ppm\n{rows}"), Property::Phosphorus).is_empty());
}

#[test]
fn a_table_of_a_file_is_not_read_by_place() {
    let text = "Näytteen nimi\t\tKasvimaa\t\tMarjatarha\t\nHappamuus\tpH\t6,7\thyvä\t5,6\tvälttävä\nFosfori\tmg/l\t64\tkorkea\t11,5\ttyydyttävä\nRikki\tmg/l\t19,6\thyvä\t7,4\tvälttävä\nBoori\tmg/l\t1,3\thyvä\t0,3\thuononlainen\nKupari\tmg/l\t6,8\thyvä\t2,2\tvälttävä\n";
    let report = report(text);
    let boron: Vec<_> = report
        .samples
        .iter()
        .map(|s| (s.name.as_str(), s.readings.iter().find(|r| r.property == Property::Boron)))
        .map(|(name, r)| (name, r.and_then(|r| r.amount).map(|a| a.number())))
        .collect();
    assert_eq!(boron, [("Kasvimaa", Some(1.3)), ("Marjatarha", Some(0.3))]);
}

#[test]
fn more_languages_are_read() {
    for text in [
        "Näitaja\tTulemus\tÜhik\npH\t6,1\t\nFosfor\t87\tmg/kg\nKaalium\t141\tmg/kg\n",
        "Rādītājs\tRezultāts\tMērvienība\npH\t6,1\t\nFosfors\t87\tmg/kg\nKālijs\t141\tmg/kg\n",
        "Parametar\tVrednost\tJedinica mere\npH\t6,1\t\nFosfor\t87\tmg/kg\nKalijum\t141\tmg/kg\n",
        "Показател\tСтойност\tМерна единица\npH\t6,1\t\nФосфор\t87\tmg/kg\nКалий\t141\tmg/kg\n",
        "Parameter\tAnalysvärde\tEnhet\npH\t6,1\t\nFosfor\t87\tmg/kg\nKalium\t141\tmg/kg\n",
        "รายการ\tผลวิเคราะห์\tหน่วย\npH\t6.1\t\nฟอสฟอรัส\t87\tmg/kg\nโพแทสเซียม\t141\tmg/kg\n",
    ] {
        assert_eq!(of(text, Property::Phosphorus), [(87.0, Some(Unit::MgPerKg))], "{text}");
        assert_eq!(of(text, Property::Potassium), [(141.0, Some(Unit::MgPerKg))], "{text}");
    }
    let text = "Chỉ tiêu\tKết quả\tĐơn vị\npH\t6,1\t\nLân\t87\tmg/kg\nCanxi\t1410\tmg/kg\n";
    assert_eq!(of(text, Property::Phosphorus), [(87.0, Some(Unit::MgPerKg))]);
    assert_eq!(of(text, Property::Calcium), [(1410.0, Some(Unit::MgPerKg))]);
}

#[test]
fn upper_and_lower_over_results_are_places() {
    let rows = "pH\t6.1\t5.4\nP ppm\t31\t17\nK ppm\t120\t98\n";
    assert_eq!(names(&format!("Test\tUpper\tLower\n{rows}")), ["Upper", "Lower"]);
    assert_eq!(names(&format!("Test\tGlasshouse\tUpper\n{rows}")), ["Glasshouse", "Upper"]);
    let limits =
        "Test\tResult\tLower\tUpper\npH\t6.1\t6.0\t7.0\nP ppm\t31\t25\t50\nK ppm\t120\t110\t160\n";
    assert_eq!(names(limits).len(), 1);
    assert_eq!(of(limits, Property::Phosphorus), [(31.0, Some(Unit::MgPerKg))]);
}

#[test]
fn a_row_of_means_is_no_sample_in_any_language() {
    for mean in
        ["Põhjapõld keskmine", "Svertinis vidurkis", "Середнє", "North fields average", "Vidējais"]
    {
        let text = format!(
            "Field;pH;P mg/kg;K mg/kg\nNorth;6.1;30;110\nSouth;6.4;41;150\n{mean};6.2;35;130\n"
        );
        assert_eq!(names(&text), ["North", "South"], "{mean}");
    }
}
