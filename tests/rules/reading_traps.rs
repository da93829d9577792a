//! Traps met in real reports, each from pasted text to reading.

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{Advice, Origin, Pairing, Report, Trouble, open, read, whereabouts};
use emberloam_engine::soil::{Amount, Method, Property, SoilGroup, Texture};

pub fn report(text: &str) -> Report {
    let grid = open(text.as_bytes()).unwrap_or_else(|e| panic!("{text}: {e}"));
    read(&grid).unwrap_or_else(|e| panic!("{text}: {e}"))
}

fn trouble(text: &str) -> Trouble {
    open(text.as_bytes()).and_then(|g| read(&g)).unwrap_err()
}

/// All readings of the first sample in one line each.
pub fn shown(text: &str) -> Vec<String> {
    let report = report(text);
    report.samples[0]
        .readings
        .iter()
        .map(|r| {
            let amount = match r.amount {
                Some(Amount::Exactly(v)) => format!("{}", (v * 100.0).round() / 100.0),
                Some(Amount::Below(v)) => format!("<{v}"),
                Some(Amount::Above(v)) => format!(">{v}"),
                None => "?".into(),
            };
            let unit = r.unit.map_or("?", Unit::symbol);
            let method =
                r.method.as_ref().map_or(String::new(), |m| format!(" by {}", m.value.label()));
            let rating = r.rating.as_ref().map_or(String::new(), |t| format!(" [{t}]"));
            format!("{} {amount} {unit}{method}{rating}", r.property.name()).replace("  ", " ")
        })
        .collect()
}

#[test]
fn single_lines() {
    let cases: &[(&str, &[&str])] = &[
        ("Phosphorus (Mehlich-3): 18 ppm  Low", &["phosphorus 18 mg/kg by Mehlich-3 [Low]"]),
        ("pH 6.2", &["ph 6.2 "]),
        ("Soil pH: 6.2 (slightly acid)", &["ph 6.2 [slightly acid]"]),
        ("P2O5 ... 45 lb/acre", &["phosphorus 19.64 lb/acre"]),
        ("K = 142ppm", &["potassium 142 mg/kg"]),
        ("Boron < 0.2 ppm L", &["boron <0.2 mg/kg [L]"]),
        ("Boron: ≤0.2 ppm", &["boron <0.2 mg/kg"]),
        ("Organic matter, 3,4 %", &["organic-matter 3.4 %"]),
        ("Potassium 18L", &["potassium 18 ? [L]"]),
        ("Potassium 142 S", &["potassium 142 ? [S]"]),
        ("Potassium 142M", &["potassium 142 ? [M]"]),
        ("Potassium: VH", &["potassium ? ? [VH]"]),
        ("Mg 1 ppm\nZinc: ND", &["magnesium 1 mg/kg", "zinc ? ?"]),
        ("Zinc: ND <0.1 ppm", &["zinc <0.1 mg/kg"]),
        ("Calcium > 5000 ppm", &["calcium >5000 mg/kg"]),
        ("LTI 69", &["buffer-ph 6.9 "]),
        ("pH 6\nM.O. 22 g/dm3", &["ph 6 ", "organic-matter 22 g/dm³"]),
        ("pH 6\nMO 3,4 %", &["ph 6 ", "organic-matter 3.4 %"]),
        ("pH 6\nMO: 34 g/kg", &["ph 6 ", "organic-matter 34 g/kg"]),
        ("pH 6\nMo 0.2 ppm", &["ph 6 ", "molybdenum 0.2 mg/kg"]),
        ("pH 6\nMO 3,4", &["ph 6 "]),
        ("Organic matter 22 g/dm3", &["organic-matter 22 g/dm³"]),
        ("Lime index: 69", &["buffer-ph 6.9 "]),
        ("Lime test index 69", &["buffer-ph 6.9 "]),
        ("pH in 0.01 M CaCl2: 5.8", &["salt-ph 5.8 by calcium chloride"]),
        ("pH 1:1 6.2", &["ph 6.2 by 1:1 water"]),
        ("pH (1:2.5 water) 6.2", &["ph 6.2 by 1:2.5 water"]),
        ("pHs 5.4", &["salt-ph 5.4 "]),
        ("EC1:5 0.9 dS/m", &["ec 0.9 dS/m by 1:5 water"]),
        ("Buffer pH (Mehlich) 5.9", &["buffer-ph 5.9 by Mehlich buffer"]),
        ("P2O5 24 mg P2O5/100 g", &["phosphorus 10.47 mg/100 g"]),
        ("P-CAL: 24 mg P2O5/100 g", &["phosphorus 10.47 mg/100 g by CAL"]),
        ("Phosphor 24 mg P2O5/100 g", &["phosphorus 10.47 mg/100 g"]),
        ("P 5 mg P/kg", &["phosphorus 5 mg/kg"]),
        ("K 0.31 meq/100g = 121 ppm (NH4OAc)", &["potassium 0.31 meq/100 g by ammonium acetate"]),
        ("Mehlich 3 P 18 ppm", &["phosphorus 18 mg/kg by Mehlich-3"]),
        ("P Bray 1 25 ppm", &["phosphorus 25 mg/kg by Bray P1"]),
        ("Bray-1 P: 25", &["phosphorus 25 ? by Bray P1"]),
        ("P1 25 ppm", &["phosphorus 25 mg/kg by Bray P1"]),
        ("Bray P1 22 ppm", &["phosphorus 22 mg/kg by Bray P1"]),
        ("Olsen: 22 ppm", &["phosphorus 22 mg/kg by Olsen"]),
        ("Mehlich-3 (ppm)\nP 45*", &["phosphorus 45 mg/kg by Mehlich-3"]),
        ("P 45 ppm (H), K 120 ppm (M)", &["phosphorus 45 mg/kg [H]", "potassium 120 mg/kg [M]"]),
        ("Results (Mehlich-3): pH 6.2, K 9 ppm", &["ph 6.2 ", "potassium 9 mg/kg by Mehlich-3"]),
        ("Exchangeable bases (NH4OAc, pH 7)\nK 9 ppm", &["potassium 9 mg/kg by ammonium acetate"]),
        ("Ca 1 450 ppm", &["calcium 1450 mg/kg"]),
        ("Ca²⁺ 8.2 cmol/kg", &["calcium 8.2 meq/100 g"]),
        ("Modified Morgan P: 4 ppm", &["phosphorus 4 mg/kg by Modified Morgan"]),
        ("Morgan P: 4 mg/L", &["phosphorus 4 mg/L by Morgan"]),
        ("NO3-N 12 lb/A", &["nitrate-n 12 lb/acre"]),
        ("NO3 44.27 ppm", &["nitrate-n 10 mg/kg"]),
        ("NO₃⁻ 44.27 ppm", &["nitrate-n 10 mg/kg"]),
        ("SO4 30 ppm", &["sulfur 10.01 mg/kg"]),
        ("SO4-S 30 ppm", &["sulfur 30 mg/kg"]),
        ("PO4 30 ppm", &["phosphorus 9.78 mg/kg"]),
        ("P₂O₅ 12 mg/100 g", &["phosphorus 5.24 mg/100 g"]),
        ("K₂O 12 mg/100 g", &["potassium 9.96 mg/100 g"]),
        ("Na\u{a0}30\u{a0}ppm", &["sodium 30 mg/kg"]),
        ("EC 350 µS/cm", &["ec 350 µS/cm"]),
        ("EC 350 μS/cm", &["ec 350 µS/cm"]),
        ("Soluble salts (1:2): 0.35 mmhos/cm", &["ec 0.35 dS/m by 1:2 water"]),
        ("Ca 8.2 cmol(+)/kg", &["calcium 8.2 meq/100 g"]),
        ("Ca 8.2 cmolc/kg", &["calcium 8.2 meq/100 g"]),
        ("Ca 8.2 me%", &["calcium 8.2 meq/100 g"]),
        ("K 3.1 mmolc/kg", &["potassium 3.1 mmol(c)/kg"]),
        ("K mg/dm3: 98", &["potassium 98 mg/L"]),
        ("CaO 200 kg/ha", &["calcium 142.94 kg/ha"]),
        ("N.A. 3.0 meq/100g", &["exchangeable-acidity 3 meq/100 g"]),
        ("K 142 ppm 120-160", &["potassium 142 mg/kg [120-160]"]),
        ("Magnesium\t58\tmg/l\t2+", &["magnesium 58 mg/L [2+]"]),
        ("Bulk density 1.18 g/cc", &["bulk-density 1.18 g/cm³"]),
        ("P-I 57", &["phosphorus 57 index"]),
        ("Morgan P: 4.2 mg/l Index 2", &["phosphorus 4.2 mg/L by Morgan [Index 2]"]),
        ("Mg 1 ppm\nIron: n/a", &["magnesium 1 mg/kg"]),
        ("P index: 2-", &["phosphorus 2 index [2-]"]),
        ("pH 6.2 P 18 ppm K 142 ppm", &["ph 6.2 ", "phosphorus 18 mg/kg", "potassium 142 mg/kg"]),
        ("pH; 6.2; P; 18; ppm", &["ph 6.2 ", "phosphorus 18 mg/kg"]),
        ("pH........6.2", &["ph 6.2 "]),
        ("Cation Exchange Capacity 11.4", &["cec 11.4 meq/100 g"]),
        ("Ca 63.6 %", &["calcium-saturation 63.6 %"]),
        ("% K saturation 3.2", &["potassium-saturation 3.2 %"]),
        ("6.4 pH", &["ph 6.4 "]),
        ("Ca\t< 0.2 VL ppm", &["calcium <0.2 mg/kg [VL]"]),
        ("18 ppm phosphorus", &["phosphorus 18 mg/kg"]),
        ("18 ppm P", &["phosphorus 18 mg/kg"]),
        ("Potassium Very Low (44 ppm)", &["potassium 44 mg/kg [Very Low]"]),
        ("Potassium: Very Low (44 ppm)", &["potassium 44 mg/kg [Very Low]"]),
        ("Potassium: Low (<50 ppm)", &["potassium ? ? [Low (<50 ppm)]"]),
        ("P/K/Mg: 45/120/88", &["phosphorus 45 ?", "potassium 120 ?", "magnesium 88 ?"]),
        ("P/K: 45/120 ppm", &["phosphorus 45 mg/kg", "potassium 120 mg/kg"]),
        ("Zinc 1.8 ± 0.2 mg/kg (M)", &["zinc 1.8 mg/kg [M]"]),
        ("Zinc: 18 +/- 2 mg/kg", &["zinc 18 mg/kg"]),
        ("Bor < 0,2 mg/kg", &["boron <0.2 mg/kg"]),
        ("Zinc : moins de 0,5 mg/kg", &["zinc <0.5 mg/kg"]),
        ("Zink: weniger als 0,5 mg/kg", &["zinc <0.5 mg/kg"]),
        ("K2O 0,12 g/kg", &["potassium 0.1 g/kg"]),
        ("MgO 5 mg/100 g (CaCl2)", &["magnesium 3.02 mg/100 g by calcium chloride"]),
        ("Mg 1,2 mmolc/dm3", &["magnesium 0.12 meq/100 cm³"]),
        ("P resina 12 mg/dm3", &["phosphorus 12 mg/L by resin"]),
        ("Ca 2,1 cmolc/dm3", &["calcium 2.1 meq/100 cm³"]),
        ("Colwell P 34 mg/kg", &["phosphorus 34 mg/kg by Colwell"]),
        ("P (Bray P2) 55 ppm VH", &["phosphorus 55 mg/kg by Bray P2 [VH]"]),
        ("Magnesium (mg/l) 58 2-", &["magnesium 58 mg/L [2-]"]),
        ("Ma 120 ppm", &["magnesium 120 mg/kg"]),
        ("Potassium M+ 120 ppm", &["potassium 120 mg/kg"]),
        ("Organic matter 34", &["organic-matter 34 ?"]),
        ("CEC 140", &["cec 140 ?"]),
        ("Phosphorus  18 ppm  PPPPPPPP", &["phosphorus 18 mg/kg"]),
        ("K 120 ppm 2.000 bis 150.000", &["potassium 120 mg/kg [2.000 bis 150.000]"]),
    ];
    let mut wrong = Vec::new();
    for (text, expected) in cases {
        let found = shown(text);
        let expected: Vec<&str> = expected.iter().map(|e| e.trim_end()).collect();
        let found: Vec<&str> = found.iter().map(|f| f.trim_end()).collect();
        if found != expected {
            wrong.push(format!("{text}: {found:?}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn lines_that_are_no_result_say_why() {
    let cases = [
        ("pH 69", "If it is a lime test index"),
        ("Zinc -3 ppm", "never below zero"),
        ("P2O5 REC 45", "a recommendation"),
        ("N REC: 120", "a recommendation"),
        ("Apply 2 lb N per 1000 sq ft", "a recommendation"),
        ("80 lbs N/A recommended", "a recommendation"),
        ("HM% 0.8", "humic matter"),
        ("Ca:Mg ratio 7.2", "a ratio of two results"),
        ("Client 4711: Jo Field", "no soil property in this line"),
        ("Phosphate 45 ppm", "P2O5 or PO4"),
        ("K optimum 120-160", "range"),
        ("Target pH 6.5", "a target"),
        ("Optimum P 50 ppm", "a target"),
        ("Phosphate (P2O5) 1.5 lb/1000 sq ft", "a recommendation"),
        ("Mehlich-3 lime 12 ppm", "its method was read, but not its number"),
        ("Mn-AI 64", "availability index"),
        ("Organic matter 340 %", "can't be"),
        ("K 30 ppm\nK 30 ppm", "the same potassium again"),
        ("K 30 ppm\nK 31 ppm", "a second potassium"),
        ("Depth 0-6", "without in or cm"),
        ("C/N 12:01:00", "a ratio"),
        ("Zinc 12:01:00", "no result stands beside it"),
        ("Ca/Mg: 7/1", "more than one"),
        ("Ca Sat 66", "write % beside it"),
        ("NA 2.1 meq/100g", "sodium or neutralizable acidity"),
        ("Active carbon 420 ppm", "soil-health"),
        ("KKKKKKKK no. 12", "no soil property"),
        ("MO 3,4", "organic matter (mati"),
    ];
    let mut wrong = Vec::new();
    for (text, why) in cases {
        let report = report(&format!("Mg 50 ppm\n{text}"));
        let unread = report.unread.iter().chain(report.samples.iter().flat_map(|s| &s.unread));
        let reasons: Vec<&str> = unread.map(|u| u.reason.as_str()).collect();
        if !reasons.iter().any(|r| r.contains(why)) {
            wrong.push(format!("{text}: {reasons:?}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_method_in_the_preamble_is_inferred_and_says_so() {
    let report =
        report("Alder Row\nExtraction: Mehlich 3\npH 6.2\nP 18 ppm\nOlsen P 9 ppm\nNO3-N 4 ppm");
    let sample = &report.samples[0];
    let method = |i: usize| sample.readings[i].method.clone();
    let p = method(1).unwrap();
    assert_eq!(p.value, Method::Mehlich3);
    assert_eq!(p.from, Origin::Inferred("line 2 names Mehlich-3 for the whole report".into()));
    assert_eq!(method(2).unwrap().value, Method::Olsen);
    assert_eq!(method(2).unwrap().from, Origin::Stated);
    assert_eq!(method(3), None);
    assert_eq!(method(0), None);
}

#[test]
fn a_method_beside_one_result_does_not_spread() {
    assert_eq!(
        shown("Olsen P 18 ppm\nK 142 ppm"),
        ["phosphorus 18 mg/kg by Olsen", "potassium 142 mg/kg"]
    );
}

#[test]
fn units_and_methods_below_a_head_belong_to_their_columns() {
    let text = "Sample ID,pH,P,K,Ca,NO3\nUNITS,,ppm,mg/kg,%,ppm\nBed 1,6.2,18,142,63,44.27";
    assert_eq!(
        shown(text),
        [
            "ph 6.2 ",
            "phosphorus 18 mg/kg",
            "potassium 142 mg/kg",
            "calcium-saturation 63 %",
            "nitrate-n 10 mg/kg"
        ]
    );
    let wrapped = "Sample\tCEC\tP\n\tmeq/100g\tMehlich-3 ppm\nBed 1\t11.4\t18";
    assert_eq!(shown(wrapped), ["cec 11.4 meq/100 g", "phosphorus 18 mg/kg by Mehlich-3"]);
}

#[test]
fn a_table_keeps_its_samples_apart() {
    let text = "Field   pH    P ppm   Index\nNorth   6.2   18      2-\n\nSouth   5.6   <1      0\n";
    let report = report(text);
    assert_eq!(report.samples.len(), 2);
    assert_eq!(report.samples[1].name, "South");
    assert_eq!(report.samples[1].readings[1].amount, Some(Amount::Below(1.0)));
    assert_eq!(report.samples[0].readings[1].rating.as_deref(), Some("2-"));
}

#[test]
fn a_transposed_table_keeps_its_samples_apart() {
    let text = "Test | Front | Back\n--- | --- | ---\npH | 6,2 | 5,6\nP mg/L | 18,5 | <2,3\nCa mg/L | 2.000 | 1.150\nTexture | Loam | Sand\nDepth | 0-15 cm | 0-15 cm";
    let report = report(text);
    assert_eq!(report.samples.len(), 2);
    let back = &report.samples[1];
    assert_eq!(back.name, "Back");
    assert_eq!(back.texture, Some(Texture::Sand));
    assert_eq!(back.depth_cm, Some((0.0, 15.0)));
    let amounts: Vec<_> = back.readings.iter().map(|r| r.amount.unwrap()).collect();
    assert_eq!(amounts, [Amount::Exactly(5.6), Amount::Below(2.3), Amount::Exactly(1150.0)]);
    assert!(report.notes[0].contains("2.000 was read as 2000"), "{:?}", report.notes);
}

#[test]
fn rows_about_the_samples_may_come_before_their_results() {
    let report =
        report("Sample\tBed A\tBed B\nDepth\t0-6 in\t6-12 in\npH\t6.2\t5.4\nK ppm\t120\t44");
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Bed A", "Bed B"]);
    assert_eq!(report.samples[1].depth_cm, Some((6.0 * 2.54, 12.0 * 2.54)));
    assert_eq!(report.samples[1].readings.len(), 2);
}

#[test]
fn methods_in_a_row_below_the_head_or_in_a_column() {
    let row = "Sample    pH     P      K\n                 M3     M3\n                 ppm    ppm\nBed 1     6.2    18     120";
    let expected =
        ["ph 6.2 ", "phosphorus 18 mg/kg by Mehlich-3", "potassium 120 mg/kg by Mehlich-3"];
    assert_eq!(shown(row), expected);
    let column =
        "Sample,pH,\"P, ppm\",\"K, ppm\",Method\nA,6.2,18,120,Mehlich-3\nB,6.4,22,90,Olsen";
    assert_eq!(shown(column), expected);
    let second = &report(column).samples[1].readings;
    assert_eq!(second[1].method.as_ref().map(|m| m.value), Some(Method::Olsen));
    assert_eq!(second[2].method, None);
}

#[test]
fn a_second_depth_is_a_sample_of_its_own() {
    let text = "Sample: Plot A\nDepth: 0-15 cm\npH 6.1\nDepth: 15-60 cm\npH 6.5";
    let report = report(text);
    let found: Vec<_> = report.samples.iter().map(|s| (s.name.as_str(), s.depth_cm)).collect();
    let expected = [("Plot A", Some((0.0, 15.0))), ("Plot A, 15–60 cm", Some((15.0, 60.0)))];
    assert_eq!(found, expected);
}

#[test]
fn a_result_with_its_own_depth_keeps_it() {
    for text in ["Nitrate-N 0-24 in 45 lb/A", "Nitrate-N (0-24\"): 45 lb/A"] {
        let report = report(text);
        let reading = &report.samples[0].readings[0];
        assert_eq!(reading.amount, Some(Amount::Exactly(45.0)), "{text}");
        assert_eq!(reading.depth_cm, Some((0.0, 24.0 * 2.54)), "{text}");
    }
    assert_eq!(report("P2O5 0.5 in 12 ppm\nK 9 ppm").samples[0].readings[0].depth_cm, None);
}

#[test]
fn units_in_the_headings_of_columns() {
    let text = "Cation\tmeq/100g\t% sat\nCalcium\t6.6\t66\nPotassium\t0.3\t3";
    let expected = [
        "calcium 6.6 meq/100 g",
        "calcium-saturation 66 %",
        "potassium 0.3 meq/100 g",
        "potassium-saturation 3 %",
    ];
    assert_eq!(shown(text), expected);
    let text = "Test,Result (ppm)\npH,6.4\nOM,3.4\nK,120";
    assert_eq!(shown(text), ["ph 6.4 ", "organic-matter 3.4 %", "potassium 120 mg/kg"]);
}

#[test]
fn columns_and_their_names_do_not_shift() {
    let blank = report("          Lawn    Garden\npH        5.8     6.7\nK ppm     44      188");
    let found: Vec<_> = blank
        .samples
        .iter()
        .map(|s| (s.name.as_str(), s.readings[1].amount.unwrap().number()))
        .collect();
    assert_eq!(found, [("Lawn", 44.0), ("Garden", 188.0)]);
    // Without the blank nobody can tell, so the samples have no name.
    let short = report("Lawn  Garden\npH  5.8  6.7\nK ppm  44  188\nP ppm  3  4");
    assert_eq!(short.samples.len(), 2);
    assert_eq!(short.samples[0].name, "Sample 1");
    let wide = report("Sample\tpH\tK ppm\nA\t6.2\t18\t30\nB\t6.4\t22\t31");
    assert_eq!(wide.samples[0].unread[0].reason, "its column has no heading");
}

#[test]
fn what_stands_behind_a_result_is_its_own() {
    assert_eq!(
        shown("P 45 ppm (Mehlich 3), K 120 ppm"),
        ["phosphorus 45 mg/kg by Mehlich-3", "potassium 120 mg/kg"]
    );
    let lone = report("Ca 1.450 ppm\nMg 88 ppm");
    assert!(lone.notes[0].starts_with("1.450 was read as 1.45"), "{:?}", lone.notes);
}

#[test]
fn a_depth_beside_a_method_is_not_its_number() {
    let report = report("Mehlich 3, depth 0-20 cm\nK 230 kg/ha");
    let sample = &report.samples[0];
    assert_eq!(sample.depth_cm, Some((0.0, 20.0)));
    assert_eq!(sample.readings[0].method.as_ref().map(|m| m.value), Some(Method::Mehlich3));
}

#[test]
fn a_list_with_ranges_keeps_them_as_the_laboratorys_word() {
    let text = "Analysis,Value Found,Optimum Range\npH,6.2,6.0-7.0\nPhosphorus (Modified Morgan),2.1,4-14\nPotassium,88,100-160\nLead,12,<22";
    assert_eq!(
        shown(text),
        [
            "ph 6.2 [6.0-7.0]",
            "phosphorus 2.1 ? by Modified Morgan [4-14]",
            "potassium 88 ? [100-160]",
            "lead 12 ? [<22]"
        ]
    );
}

#[test]
fn two_panels_side_by_side_are_one_sample() {
    let text = "\
Sample ID: Garden 1
Analysis                 Value Found   Optimum Range    Analysis                Value Found
Soil pH (1:1, H2O)       6.1                            CEC, meq/100g           9.8
Modified Morgan extractable, ppm                        Exch. Acidity, meq/100g 2.4
Phosphorus (P)           12.3          4-14             Scoop Density, g/cc     1.08
";
    let report = report(text);
    assert_eq!(report.samples.len(), 1);
    assert_eq!(
        shown(text),
        [
            "ph 6.1 by 1:1 water",
            "phosphorus 12.3 mg/kg by Modified Morgan [4-14]",
            "cec 9.8 meq/100 g",
            "exchangeable-acidity 2.4 meq/100 g",
            "bulk-density 1.08 g/cm³"
        ]
    );
}

#[test]
fn tables_held_by_single_blanks() {
    let down = report("Sample ID pH P K\nNorth bed 6.2 18 142\nSouth 5.8 <1 90");
    assert_eq!(down.samples[0].name, "North bed");
    assert_eq!(down.samples[1].readings[1].amount, Some(Amount::Below(1.0)));
    let across = report("Sample A B\npH 6.2 5.8\nP 18 22\nK 140 90");
    let names: Vec<&str> = across.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["A", "B"]);
    assert_eq!(across.samples[1].readings[2].amount, Some(Amount::Exactly(90.0)));
}

#[test]
fn a_line_about_the_sample_heads_no_table() {
    let report = report("Sample: 1  Depth: 0-8\"\npH  6.8\nP (Olsen)   14 ppm  M\nK   210 ppm H");
    let [sample] = report.samples.as_slice() else { panic!("{report:?}") };
    assert_eq!((sample.name.as_str(), sample.depth_cm), ("1", Some((0.0, 8.0 * 2.54))));
    assert_eq!(sample.readings.len(), 3);
}

#[test]
fn a_result_on_the_line_below_its_name() {
    assert_eq!(
        shown("Soil pH\n6.2\nPhosphorus\n43 lbs/Acre\nZinc\n1 Quarry Lane"),
        ["ph 6.2 ", "phosphorus 43 lb/acre"]
    );
}

#[test]
fn a_column_of_ratings_belongs_to_the_results_before_it() {
    assert_eq!(
        shown("Sample\tpH\tP\tP rating\tK\tRating\nA\t6.2\t18\tLow\t142\tOpt"),
        ["ph 6.2 ", "phosphorus 18 ? [Low]", "potassium 142 ? [Opt]"]
    );
}

#[test]
fn a_bed_called_b_is_no_boron() {
    let report = report("Nutrient\tUnit\tPlot A\tPlot B\nK\tppm\t210\t88\nP\tppm\t31\t12");
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Plot A", "Plot B"]);
    let blocks = self::report("Bed B\nK 210 ppm\nBed K\nK 88 ppm");
    let names: Vec<&str> = blocks.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Bed B", "Bed K"]);
}

#[test]
fn several_samples_as_blocks_of_lines() {
    let report =
        report("Sample ID: Bed A\npH 6.2\nK 140 ppm\n\nSample ID: Bed B\npH 5.6\nK 90 ppm");
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Bed A", "Bed B"]);
    assert_eq!(report.samples[1].readings.len(), 2);
    let report = self::report("Sample 1: Lawn\nK 140 ppm\nSample 2: Beans\nK 90 ppm");
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Lawn", "Beans"]);
}

#[test]
fn a_place_points_at_the_result_in_the_line() {
    let text = "Alder Row\n  Phosphorus (Mehlich-3): 18 ppm  Low";
    let reading = &report(text).samples[0].readings[0];
    let line = text.lines().nth(reading.place.line as usize - 1).unwrap();
    let cut: String = line
        .chars()
        .skip(reading.place.start as usize)
        .take((reading.place.end - reading.place.start) as usize)
        .collect();
    assert_eq!(cut, reading.original);
    assert_eq!(cut, "18 ppm");
}

#[test]
fn nothing_usable_has_its_own_trouble() {
    assert_eq!(trouble("The beans did well this year. We had rain in June."), Trouble::Prose);
    assert_eq!(
        trouble("My phosphorus is a worry to me, says the lab, and so is the dog."),
        Trouble::Prose
    );
    assert_eq!(
        trouble("Crop,Yield,Price\nBeans,12,3\nPeas,8,2"),
        Trouble::NoSoilWords { names: vec!["Crop".into(), "Yield".into(), "Price".into()] }
    );
    assert_eq!(trouble("pH,P,K\n,,\n"), Trouble::NoResults);
    assert_eq!(trouble("Phosphorus\nPotassium\nCalcium"), Trouble::NoResults);
    let mut many = String::from("Sample,pH,P\n");
    for i in 0..20_001 {
        many.push_str(&format!("S{i},6.2,18\n"));
    }
    assert_eq!(trouble(&many), Trouble::TooManySamples { allowed: 20_000 });
}

#[test]
fn an_average_over_notes_is_honest_about_what_was_assumed() {
    let report = report("OM 3.4\nCEC 11\nCa 1,450");
    let notes: Vec<String> =
        report.samples[0].readings.iter().flat_map(|r| r.notes.clone()).collect();
    assert!(notes.iter().any(|n| n.contains("taken as %")), "{notes:?}");
    assert!(notes.iter().any(|n| n.contains("taken as meq/100 g")), "{notes:?}");
    assert!(report.notes[0].contains("1,450 was read as 1450"));
    assert_eq!(report.samples[0].readings[2].unit, None);
    assert_eq!(report.samples[0].readings[2].property, Property::Calcium);
}

#[test]
fn a_table_and_a_sample_go_on_across_pages() {
    let text = "[page 1]\nElder Lane report 12\nSample\tpH\tP ppm\nA\t6.2\t18\nPage 1 of 2\n[page 2]\nElder Lane report 12\nSample\tpH\tP ppm\nB\t5.8\t9\nPage 2 of 2\nC\t5.9\t7";
    let found = report(text);
    let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["A", "B", "C"]);
    assert!(found.samples.iter().all(|s| s.readings.len() == 2), "{found:?}");
    assert_eq!(found.unread.len(), 1, "{:?}", found.unread);
    let place = found.samples[1].readings[1].place;
    assert_eq!(whereabouts(text, place).to_string(), "page 2, line 3");
    let list = "[page 1]\nSample: Front\nTest\tResult\tUnit\npH\t6.2\t\nP\t18\tppm\n[page 2]\nSample: Front\nTest\tResult\tUnit\nK\t120\tppm\n";
    assert_eq!(shown(list), ["ph 6.2 ", "phosphorus 18 mg/kg", "potassium 120 mg/kg"]);
    assert_eq!(report(list).samples.len(), 1);
    let long = "Sample\tProperty\tResult\tUnit\nA\tpH\t6.2\t\n[page 2]\nSample\tProperty\tResult\tUnit\nPage 2 of 2\nA\tP\t18\tppm";
    assert_eq!(shown(long), ["ph 6.2 ", "phosphorus 18 mg/kg"]);
}

#[test]
fn a_sheet_is_a_border() {
    let text = "All results in ppm\n[sheet North]\nExtraction: Mehlich-3\n\npH\t6.2\nP\t18\n[sheet South]\npH\t5.8\nP\t9\n[sheet Both]\nSample\tP\nA\t3\n\t4";
    let found = report(text);
    let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["North", "South", "A", "Both"]);
    let p = |i: usize| found.samples[i].readings.last().unwrap();
    assert_eq!(p(0).method.as_ref().map(|m| m.value), Some(Method::Mehlich3));
    assert_eq!((&p(1).method, &p(2).method), (&None, &None));
    assert!((0..4).all(|i| p(i).unit == Some(Unit::MgPerKg)));
    assert_eq!(whereabouts(text, p(0).place).to_string(), "sheet North, cell B4");
}

#[test]
fn one_sample_at_two_depths_in_a_table_is_two_samples() {
    let wide = "Sample\tDepth\tNO3-N ppm\nA\t0-15 cm\t9\nA\t15-60 cm\t4";
    let long = "Sample\tDepth\tProperty\tResult\tUnit\nA\t0-15 cm\tNO3-N\t9\tppm\nA\t15-60 cm\tNO3-N\t4\tppm";
    for text in [wide, long] {
        let found = report(text);
        let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(names, ["A", "A, 15–60 cm"], "{text}");
        assert_eq!(found.samples[1].readings[0].amount, Some(Amount::Exactly(4.0)));
    }
}

#[test]
fn groups_above_the_head_give_their_unit_method_and_meaning() {
    let text = "\t\tMehlich-3 (lb/acre)\t\tDTPA (ppm)\tBase saturation (%)\t\nSample\tpH\tP\tK\tZn\tCa\tMg\nA\t6.2\t18\t142\t0.9\t66\t12";
    assert_eq!(
        shown(text),
        [
            "ph 6.2 ",
            "phosphorus 18 lb/acre by Mehlich-3",
            "potassium 142 lb/acre by Mehlich-3",
            "zinc 0.9 mg/kg by DTPA",
            "calcium-saturation 66 %",
            "magnesium-saturation 12 %"
        ]
    );
    let spread = "\tMehlich-3 (ppm)\t\t\nSample\tP\tK\tpH\nA\t18\t142\t6.2";
    assert_eq!(shown(spread)[2], "ph 6.2 ");
}

#[test]
fn scores_classes_and_limits_are_no_results() {
    let health = "Indicator\tMeasured\tScore\tConstraint\nOrganic matter %\t3.1\t62\t\npH\t6.4\t100\t\nExtractable phosphorus (ppm)\t4.1\t88\t";
    let found = report(health);
    assert_eq!(found.samples.len(), 1, "{found:?}");
    assert_eq!(found.samples[0].readings[0].amount, Some(Amount::Exactly(3.1)));
    let classes =
        "Sample\tpH\tP2O5 mg/100g\tGehaltsklasse\tK2O mg/100g\tGehaltsklasse\nA\t6,2\t18\tC\t9\tB";
    assert_eq!(
        shown(classes),
        ["ph 6.2 ", "phosphorus 7.86 mg/100 g [C]", "potassium 7.47 mg/100 g [B]"]
    );
    let index =
        "Field\tpH\tP mg/l\tIndex\tK mg/l\tIndex\tMg mg/l\tIndex\nTop\t6.5\t22\t2\t150\t2-\t58\t2";
    assert_eq!(
        shown(index),
        ["ph 6.5 ", "phosphorus 22 mg/L [2]", "potassium 150 mg/L [2-]", "magnesium 58 mg/L [2]"]
    );
    let limits = "Nutrient\tppm\tLow\tHigh\nP\t18\t15\t30\nK\t142\t100\t160";
    assert_eq!(report(limits).samples.len(), 1);
    assert_eq!(report(limits).samples[0].readings[0].amount, Some(Amount::Exactly(18.0)));
    let limits = "Nutrient\tYour soil (ppm)\tMin\tMax\nP\t18\t15\t30\nK\t142\t100\t160";
    assert_eq!(report(limits).samples.len(), 1);
}

#[test]
fn a_german_hobby_report() {
    let text = "Nährstoff\tgemessen mg/kg\tOptimum mg/kg\nPhosphor\t18,8\t20 bis 60\nKalium\t142\t100 bis 300\nCalcium\t2.000\t2.000 bis 150.000\nBor\t<2,3\t1 bis 5";
    assert_eq!(
        shown(text),
        [
            "phosphorus 18.8 mg/kg [20 bis 60]",
            "potassium 142 mg/kg [100 bis 300]",
            "calcium 2000 mg/kg [2.000 bis 150.000]",
            "boron <2.3 mg/kg [1 bis 5]"
        ]
    );
}

#[test]
fn a_paste_column_is_no_saturation_and_the_ion_no_phosphorus() {
    let text = "SAMPLEID,PH,CA,CA_PCT,CA_SAT,NO31,NO32,HCO3\nA1,8.3,2674,77.1,6.9,4,9,2.2\nA2,8.3,2674,,6.9,,9,2.2";
    assert_eq!(
        shown(text),
        ["ph 8.3 ", "calcium 2674 ?", "calcium-saturation 77.1 %", "nitrate-n 4 ?"]
    );
    assert_eq!(report(text).samples[1].readings.len(), 2);
}

#[test]
fn the_two_ends_of_a_depth_in_two_columns_are_one_depth() {
    let text = "Sample\tB Depth in\tE Depth in\tNO3-N ppm\nA\t6\t24\t9";
    assert_eq!(report(text).samples[0].depth_cm, Some((6.0 * 2.54, 24.0 * 2.54)));
    let bare = report("Sample\tB Depth\tE Depth\tNO3-N ppm\nA\t0\t6\t9");
    assert_eq!(bare.samples[0].depth_cm, None);
    assert!(bare.unread[0].reason.contains("without in or cm"), "{:?}", bare.unread);
}

#[test]
fn a_row_that_is_no_property_here_does_not_end_its_table() {
    let card = "Parameter\tTest Value\tUnit\tRating\npH\t7.8\t\tAlkaline\nAvailable Nitrogen (N)\t210\tkg/ha\tLow\nAvailable Phosphorus (P)\t18\tkg/ha\tMedium\nASC\t110\t\t\nAvailable Zinc (Zn)\t0.5\tppm\tDeficient";
    assert_eq!(
        shown(card),
        ["ph 7.8 [Alkaline]", "phosphorus 18 kg/ha [Medium]", "zinc 0.5 mg/kg [Deficient]"]
    );
}

#[test]
fn a_label_parted_from_its_name_still_names_the_sample() {
    let report = report("Sample ID:   Garden 3\nLab No:   1234\npH   6.1\nK ppm   120");
    assert_eq!(report.samples[0].name, "Garden 3");
}

#[test]
fn of_two_results_for_one_thing_neither_is_hidden() {
    let found = report("Sample\tK ppm\tpH\tK ppm\nA\t30\t6.2\t31");
    let sample = &found.samples[0];
    assert_eq!(sample.readings[0].amount, Some(Amount::Exactly(30.0)));
    assert!(sample.readings[0].notes.iter().any(|n| n.contains("gives 31")), "{sample:?}");
    assert!(sample.unread[0].reason.contains("a second potassium"));
}

#[test]
fn samples_side_by_side_keep_their_names_and_ratings() {
    let text = "                  Garden             Lawn\nTest           Result  Rating    Result  Rating\npH              6.1     OK         5.8    Low\nPhosphorus ppm  18      L          44     H";
    let found = report(text);
    let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Garden", "Lawn"]);
    let ratings: Vec<_> =
        found.samples.iter().map(|s| s.readings[1].rating.as_deref().unwrap()).collect();
    assert_eq!(ratings, ["L", "H"]);
}

#[test]
fn a_level_in_words_beside_results_is_their_rating() {
    let one = "Test\tResult\tUnit\tLevel\npH\t5.9\t\tLow\nPhosphorus\t24\tppm\tSufficient";
    assert_eq!(shown(one), ["ph 5.9 [Low]", "phosphorus 24 mg/kg [Sufficient]"]);
    // Alone, the level is the result.
    let bare = "Test\tLevel\tUnit\npH\t5.9\t\nPhosphorus\t24\tppm";
    assert_eq!(shown(bare), ["ph 5.9 ", "phosphorus 24 mg/kg"]);
    let scored = "Indicator\tValue\tScore\nHardness (psi)\t120\t62\nStability (%)\t41\t70\nRespiration (mg)\t0.6\t48\nOrganic matter (%)\t4.9\t27\nSoil pH\t7.1\t72";
    assert_eq!(report(scored).samples.len(), 1);
    assert_eq!(shown(scored)[0], "organic-matter 4.9 % [27]");
}

#[test]
fn strips_below_each_other_are_one_sample() {
    let text = "Sample: Kale field Extract: Mehlich-1\nAnalysis\tP (lb/A)\tK (lb/A)\nResult\t217\t155\nRating\tVH\tL+\nSoil pH\tCEC (meq/100g)\n6.9\t9.6";
    let found = report(text);
    assert_eq!(found.samples.len(), 1);
    assert_eq!(found.samples[0].name, "Kale field");
    let first = "phosphorus 217 lb/acre by Mehlich-1 [VH]";
    let second = "potassium 155 lb/acre by Mehlich-1 [L+]";
    assert_eq!(shown(text), [first, second, "ph 6.9 ", "cec 9.6 meq/100 g"]);
    // The same property again is another sample.
    let two = "Soil pH\tK ppm\n6.9\t90\n\nSoil pH\tK ppm\n5.9\t40";
    assert_eq!(report(two).samples.len(), 2);
    // Words below a strip without "Rating" are the legend of a chart.
    let legend = "Soil pH\tK ppm\tP ppm\n6.9\t90\t12\nLow\tMedium\tHigh";
    assert_eq!(report(legend).samples.len(), 1);
    assert_eq!(shown(legend), ["ph 6.9 ", "potassium 90 mg/kg", "phosphorus 12 mg/kg"]);
}

#[test]
fn a_list_of_results_may_begin_with_a_missing_one() {
    let text = "sampleId\tproperty\tvalue\tunit\tmethod\trating\nA\tpH\t\t\t\tL\nA\tZinc\t1.2\tppm\tDTPA\tL\nB\tpH\t6.2\t\t\tM\nB\tZinc\t\tppm\tDTPA\tL\nB\tPotassium\t88\tppm\t\tH";
    let found = report(text);
    let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["A", "B"]);
    assert_eq!(shown(text), ["zinc 1.2 mg/kg by DTPA [L]"]);
    assert_eq!(found.samples[1].readings.len(), 2);
}

#[test]
fn a_table_may_begin_in_the_second_column() {
    let text = "Soil report\n\tSample\tpH\tK ppm\n\tHerb bed\t6.2\t88\n\tPond\t5.8\t120";
    let found = report(text);
    let names: Vec<&str> = found.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Herb bed", "Pond"]);
    let panel = "Title\n\tProperty\tUnit\tA\tB\n\tpH\t\t6.1\t7.0\n\tPotassium\tppm\t88\t90";
    assert_eq!(report(panel).samples.len(), 2);
}

#[test]
fn a_heading_may_begin_with_a_number() {
    let text =
        "Sample\tOM_%\t24hr minC_mgC.mg.day\t96hr minC_mgC.mg.day\tK_mg.kg\nA\t7.4\t31\t116.3\t137";
    assert_eq!(shown(text), ["organic-matter 7.4 %", "potassium 137 mg/kg"]);
}

#[test]
fn a_sample_without_end_is_cut_and_said_so() {
    let mut text = String::from("Sample\tTest\tResult\tUnit\n");
    for at in 0..600 {
        text.push_str(&format!("A\tZinc\t{}\tppm\n", 1 + at % 9));
    }
    let found = report(&text);
    assert!(found.samples[0].readings.len() <= 500);
    let all = found.samples.iter().flat_map(|s| &s.unread).chain(&found.unread);
    assert!(all.into_iter().any(|u| u.reason.contains("more results than any")));
}

#[test]
fn what_has_no_end_is_refused_in_words() {
    let digits = "7".repeat(2_000_000);
    assert_eq!(trouble(&digits), Trouble::EndlessLine);
    let columns = format!("{}\n{}", ["pH"; 40_000].join("\t"), ["6.5"; 40_000].join("\t"));
    assert_eq!(trouble(&columns), Trouble::EndlessLine);
    assert_eq!(trouble(&"We sat.\n".repeat(31_000)), Trouble::NoEnd);
}

#[test]
fn a_long_text_before_the_results_hides_none_of_them() {
    let results = "Method: Mehlich-3\npH 6.5\nPhosphorus 30 ppm";
    let digits = "7".repeat(300_000);
    for before in ["We sat under a tree.\n".repeat(5_000), "1 2 3\n".repeat(50_000), digits] {
        let read = report(&format!("{before}\n{results}"));
        assert_eq!(read.samples[0].readings.len(), 2);
        assert!(read.unread.iter().all(|u| u.text.chars().count() <= 401));
        assert!(read.unread.len() <= 500);
    }
}

#[test]
fn a_number_of_a_hundred_digits_is_listed_as_none() {
    let read = report(&format!("pH\t6.5\nPhosphorus\t{} ppm\nPotassium\t120", "7".repeat(100)));
    assert_eq!(read.samples[0].readings.len(), 2);
    let mut unread = read.samples[0].unread.iter().chain(&read.unread);
    assert!(unread.any(|u| u.text.starts_with("Phosphorus")), "{read:?}");
}

#[test]
fn the_same_method_named_on_every_page_is_one_statement() {
    let read =
        report(&format!("{}Phosphorus 30 ppm", "Method: Mehlich-3\nP by Olsen\n".repeat(900)));
    let method = read.samples[0].readings[0].method.as_ref().unwrap();
    assert_eq!(method.value, Method::Olsen);
}

#[test]
fn more_columns_of_results_than_a_laboratory_gives_are_said_once() {
    let wide = |cell: &str| [cell; 600].join("\t");
    let read = report(&format!("{}\n{}", wide("pH"), wide("6.5")));
    assert!(read.unread.iter().any(|u| u.reason.contains("more results than")));
}

/// What the first sample's laboratory advises, in one line each.
fn advised(text: &str) -> Vec<String> {
    let advice = &report(text).samples[0].advice;
    let land = |a: &Advice| a.land.map_or(String::new(), |land| format!(" {land:?}"));
    advice
        .iter()
        .map(|a| format!("{:?} {} {}{}", a.what, a.amount, a.unit.symbol(), land(a)))
        .collect()
}

/// Lines as laboratories of many countries print them; their meaning by common practice, no source.
#[test]
fn what_a_laboratory_advises_is_kept_and_is_no_result() {
    let cases: &[(&str, &[&str])] = &[
        ("Lime requirement 4.0 t/ha", &["Lime(Limestone) 4 t/ha"]),
        ("Lime req (Arable)       4.0      t/ha", &["Lime(Limestone) 4 t/ha Tilled"]),
        ("Lime Req (Grass) 0.0 t/ha", &["Lime(Limestone) 0 t/ha Grass"]),
        ("Lime Req t/ha   5.0", &["Lime(Limestone) 5 t/ha"]),
        ("50 lb limestone/1000 sq ft", &["Lime(Limestone) 50 lb/1000 sq ft"]),
        ("Limestone: 50 lbs/1,000 sq. ft.", &["Lime(Limestone) 50 lb/1000 sq ft"]),
        ("LIME: 0.0 lbs per 1000 square feet", &["Lime(Limestone) 0 lb/1000 sq ft"]),
        ("Lime 10 lbs/100 sq ft", &["Lime(Limestone) 10 lb/100 sq ft"]),
        ("Lime 2.5 tons/acre", &["Lime(Limestone) 2.5 ton/acre"]),
        ("Lime recommendation 1500 lb/A", &["Lime(Limestone) 1500 lb/acre"]),
        ("Lime (100 % ENV): 2.5 tons/acre to pH 6.5", &["Lime(CaCO3) 2.5 ton/acre"]),
        ("Limestone Requirement 1.00 tons 100ECCE/acre", &["Lime(CaCO3) 1 ton/acre"]),
        ("Kalkbedarf 12 dt CaO/ha", &["Lime(CaO) 12 dt/ha"]),
        ("Kalkbedarf (CaO): 1,5 t/ha", &["Lime(CaO) 1.5 t/ha"]),
        ("Kohlensaurer Kalk 250 g/m²", &["Lime(Limestone) 250 g/m²"]),
        ("Besoin en chaux 1500 kg CaO/ha", &["Lime(CaO) 1500 kg/ha"]),
        ("Calagem 2,3 t/ha", &["Lime(Limestone) 2.3 t/ha"]),
        ("Calcário (PRNT 100 %) 2,3 t ha⁻¹", &["Lime(CaCO3) 2.3 t/ha"]),
        ("Necessidade em cal: 4 t/ha de calcário (CaCO3)", &["Lime(CaCO3) 4 t/ha"]),
        ("Encalado 2,5 t/ha", &["Lime(Limestone) 2.5 t/ha"]),
        ("Fabbisogno in calce 2 t/ha di carbonato di calcio", &["Lime(CaCO3) 2 t/ha"]),
        ("Bekalking 800 kg nw/ha", &["Lime(CaO) 800 kg/ha"]),
        ("N recommended 60 kg/ha", &["Nitrogen 60 kg/ha"]),
        (
            "Fertiliser recommendation\nN 60 kg/ha\nP2O5 40 kg/ha",
            &["Nitrogen 60 kg/ha", "Phosphate 40 kg/ha"],
        ),
        ("Apply 2 lb N per 1000 sq ft", &["Nitrogen 2 lb/1000 sq ft"]),
        ("80 lbs N/A recommended", &["Nitrogen 80 lb/acre"]),
        ("Phosphate (P2O5) 1.5 lb/1000 sq ft", &["Phosphate 1.5 lb/1000 sq ft"]),
        ("Düngeempfehlung K2O: 120 kg/ha", &["Potash 120 kg/ha"]),
        ("Conseil K2O 90 kg/ha", &["Potash 90 kg/ha"]),
        (
            "Recommended: 3-1-2 lb/1000 sq ft N-P2O5-K2O",
            &["Nitrogen 3 lb/1000 sq ft", "Phosphate 1 lb/1000 sq ft", "Potash 2 lb/1000 sq ft"],
        ),
    ];
    for (text, advice) in cases {
        let text = format!("Mg 50 ppm\n{text}");
        assert_eq!(advised(&text), *advice, "{text}");
        assert_eq!(shown(&text), ["magnesium 50 mg/kg"], "{text}");
        let report = report(&text);
        let why = report.unread.iter().filter(|u| u.reason == "a recommendation, not a result");
        assert!(why.count() > 0, "{text} is listed: {:?}", report.unread);
    }
}

#[test]
fn what_is_not_clearly_advice_is_none() {
    let unclear = [
        "Lime history: 1.0 ton per acre, 5 months ago",
        "Lime applied last year 2 t/ha",
        "Past applications\nLime 2 t/ha",
        "Excess lime 2 t/ha",
        "Lime 2 t/acre",
        "Lime 1 to 2 tons/acre",
        "Lime 1-2 tons/acre",
        "Lime -2 t/ha",
        "Lime < 2 t/ha",
        "Lime 2 t/ha?",
        "Lime 900 t/ha",
        "Lime 2.0",
        "2.5 tons/acre",
        "Hydrated lime 2 t/ha",
        "Lime (PRNT 80 %) 2 t/ha",
        "Kalkbedarf 12 dt/ha",
        "Besoin en chaux 1500 kg/ha",
        "CaO 1200 kg/ha",
        "N 60 kg/ha",
        "RDF 80:40:40",
        "Phosphorus recommended 20 kg/ha",
        "Apply 40 lb N, 20 lb P2O5 and 60 lb K2O per acre.",
        "Removed by the crop N 60 kg/ha",
        "ENM 1600 lbs/acre",
        "Lime requirement 4 t/ha for 20 cm",
    ];
    for text in unclear {
        let text = format!("Mg 50 ppm\n{text}");
        assert_eq!(advised(&text), [""; 0], "{text}");
    }
}

#[test]
fn advice_beside_results_takes_nothing_from_them() {
    let line = "pH 4.9   Lime req (Arable) 6.0 t/ha\nMg 50 ppm   K 40 ppm";
    assert_eq!(shown(line), ["ph 4.9 ", "magnesium 50 mg/kg", "potassium 40 mg/kg"]);
    assert_eq!(advised(line), ["Lime(Limestone) 6 t/ha Tilled"]);
    let table = "Determination\tResult\tUnits\tStatus\npH\t5.8\nLime req (Arable)\t4.0\tt/ha\nLime req (Grass)\t0.0\tt/ha\nPhosphorus\t6.9\tmg/l\tM-";
    assert_eq!(shown(table), ["ph 5.8 ", "phosphorus 6.9 mg/L [M-]"]);
    assert_eq!(advised(table), ["Lime(Limestone) 4 t/ha Tilled", "Lime(Limestone) 0 t/ha Grass"]);
    let samples = report("Sample\tpH\tP (mg/l)\tLime (t/ha)\nA\t6.1\t20\t2.5\nB\t5.4\t18\t7");
    let each: Vec<Vec<f64>> =
        samples.samples.iter().map(|s| s.advice.iter().map(|a| a.amount).collect()).collect();
    assert_eq!(each, [[2.5], [7.0]]);
    // A line below a table of several samples is for none of them.
    let below = report("Sample\tpH\tP (mg/l)\nA\t6.1\t20\nB\t5.4\t18\n\nLime requirement 4 t/ha");
    assert!(below.samples.iter().all(|s| s.advice.is_empty()), "{below:?}");
    let two = report("Sample: A\nLime 2 t/ha\npH 6.1\nSample: B\npH 5.4\nLime 7 t/ha");
    let each: Vec<usize> = two.samples.iter().map(|s| s.advice.len()).collect();
    assert_eq!((two.samples[1].advice[0].amount, each[1]), (7.0, 1), "{two:?}");
}

/// Source: as the laboratories of New Zealand, Georgia, Brazil and France print it, and pots.
#[test]
fn a_regions_own_ways_of_printing() {
    assert_eq!(
        shown("QT K  4\nQTMg 9"),
        ["potassium 4 index by quick test", "magnesium 9 index by quick test"]
    );
    assert_eq!(
        shown("Analysis   Level   Units\nPotassium   5   MAF units (QT)\npH   5.5   pH units")[0],
        "potassium 5 index"
    );
    assert_eq!(shown("Índice SMP   5,6"), ["buffer-ph 5.6 by SMP buffer"]);
    // The method of each by its name, sentence by sentence.
    let named = "Ca 3,1 cmolc/dm³\nCu 1,1 mg/dm³\nB 0,2 mg/dm³\n\nCa, Mg, Al (KCl 1 mol/L). B: água quente. Cu, Zn: DTPA.";
    let ways = [
        "calcium 3.1 meq/100 cm³ by potassium chloride",
        "copper 1.1 mg/L by DTPA",
        "boron 0.2 mg/L by hot water",
    ];
    assert_eq!(shown(named), ways);
    // What is found in the extract of a potting mix is counted by its volume.
    assert_eq!(
        shown("Method: saturated media extract (SME)\npH 5.7\nNitrate-N 34 ppm"),
        [
            "ph 5.7 by saturated media extract (SME)",
            "nitrate-n 34 mg/L by saturated media extract (SME)"
        ]
    );
    assert_eq!(
        shown("P2O5 Dyer 0,31 g/kg (labo : élevé)"),
        ["phosphorus 0.14 g/kg by Dyer [élevé]"]
    );
}

#[test]
fn bases_beyond_the_exchange_are_lime_or_a_slip() {
    assert_eq!(shown("pH 8.2\nS/T : 265 %"), ["ph 8.2 ", "base-saturation 265 %"]);
    assert_eq!(shown("pH 5.2\nS/T : 265 %"), ["ph 5.2 "]);
    assert!(report("pH 5.2\nS/T : 265 %").samples[0].unread[0].reason.contains("no lime"));
}

#[test]
fn the_group_of_soils_and_the_target_are_told() {
    for (line, group) in [
        ("Region: Piedmont", Some(SoilGroup::Piedmont)),
        ("Crop: lawn     Region: Coastal Plain", Some(SoilGroup::CoastalPlain)),
        ("Hauraki   Peat   Lifestyle block", Some(SoilGroup::Peat)),
        ("Peat soil", Some(SoilGroup::Peat)),
        ("Compost: peat", None),
        ("Region: Northern Victoria", None),
        ("Client: Piedmont", None),
    ] {
        assert_eq!(report(&format!("{line}\npH 5.8")).samples[0].group, group, "{line}");
    }
    for (line, target) in [
        ("Target pH 6.5", Some(6.5)),
        ("Target pH: 6", Some(6.0)),
        ("Target pH 6.5 to 7", None),
        ("Target pH 65", None),
    ] {
        assert_eq!(report(&format!("{line}\npH 5.8")).samples[0].target_ph, target, "{line}");
    }
}

/// A number that may stand one column off is not taken, or the whole row is asked about.
#[test]
fn a_row_with_more_numbers_than_headings_gives_none() {
    let tables = [
        "Sample\tpH\tP ppm\tK ppm\nEast 1\t6.1\t18\t120\nEast 2\t1\t6.4\t22\t140\n",
        "Lab       pH    P ppm   K ppm   Mg ppm\n7719  East  4.7   19    8    5\n7720  West  4.4   14   4    11\n",
        "Sample;pH;P ppm;K ppm\nEast;6.1;18;120\nWest;0-20;6.4;22;140\n",
    ];
    for table in tables {
        let found = report(&format!("Sample: Yard\npH 7.1\n{table}"));
        let west = |r: &emberloam_engine::report::Reading| {
            ["6.4", "22", "140", "19", "14"].contains(&r.original.as_str())
        };
        let all: Vec<_> =
            found.samples.iter().flat_map(|s| &s.readings).filter(|r| west(r)).collect();
        let taken = all.iter().find(|r| r.pairing == Pairing::Together);
        assert!(taken.is_none(), "{table}: {taken:?}");
        if !all.is_empty() {
            continue;
        }
        let told = found.samples.iter().flat_map(|s| &s.unread);
        assert!(
            told.chain(&found.unread).any(|u| u.reason.contains("under the headings")),
            "{table}"
        );
    }
}

#[test]
fn a_row_in_another_unit_is_no_second_sample() {
    let tables = [
        "Depth\tNO3-N ppm\tP ppm\tK ppm\n0-6 in\t9\t22\t301\nlbs/acre\t18\t44\t602\n",
        "Sample,P ppm,K ppm,Mg ppm\nEast,22,301,80\nlb/ac,44,602,160\n",
        "Sample;P mg/kg;K mg/kg\nOst;22;301\nkg/ha;66;903\n",
    ];
    for table in tables {
        let found = report(table);
        assert_eq!(found.samples.len(), 1, "{table}");
        assert!(found.samples[0].readings.iter().all(|r| r.unit == Some(Unit::MgPerKg)), "{table}");
    }
}

#[test]
fn a_unit_in_its_own_cell_moves_no_result() {
    let text = "Test\tEast\tRating\tWest\tRating\npH\t5.5\tLow\t6.2\tHigh\n\
                Phosphorus\tmg/l\t3.1\tL\t7.7\tM\nPotassium\tmg/l\t61\tL\t118\tM\n";
    let found = report(text);
    let west = &found.samples[1].readings;
    let told: Vec<_> = west.iter().map(|r| (r.original.as_str(), r.rating.as_deref())).collect();
    assert_eq!(told, [("6.2", Some("High")), ("7.7", Some("M")), ("118", Some("M"))]);
    assert_eq!(west[1].unit, Some(Unit::MgPerL));
}

#[test]
fn a_footnote_or_a_factor_is_no_result() {
    for line in ["Zinc (Zn) 4/ mg/dm3", "Copper 2/", "P = P2O5 × 0.436", "K = K2O × 0,83"] {
        let found = report(&format!("pH 6.2\n{line}\n"));
        assert_eq!(found.samples[0].readings.len(), 1, "{line}");
    }
    assert_eq!(shown("Zinc (Zn)4/ 1.2 mg/dm3"), ["zinc 1.2 mg/L"]);
}

/// Pages about something else say what they are.
#[test]
fn a_page_of_something_else_says_what_it_seems_to_be() {
    let pages = [
        ("Leaf analysis\nBlock 3\nP 0.19 %\nK 1.0 %\nZn 17 ppm", "leaves"),
        ("Blattanalyse Apfel\nP 0,19 %\nZn 17 mg/kg", "leaves"),
        ("Sample type: irrigation water\npH 7.9\nCa 71 mg/L", "water"),
        ("Analisi dell'acqua\npH 7,9\nCa 71 mg/l", "water"),
        ("Compost test results\npH 7.7\nZinc 148 ppm", "compost"),
        ("GUARANTEED ANALYSIS\nZinc (Zn) 0.05%\nIron 0.1%", "fertiliser"),
        ("Target levels\npH 6.5\nP 40 ppm\nK 150 ppm", "ranges"),
        ("Crop removal\nP 20 lb/acre\nK 40 lb/acre", "take up"),
        ("Price list\npH 6.50\nBoron 11.50", "prices"),
    ];
    for (page, what) in pages {
        let said = trouble(page);
        assert!(
            matches!(said, Trouble::NotOfSoil { what: it } if it.contains(what)),
            "{page}: {said}"
        );
    }
}

#[test]
fn the_soil_part_of_a_report_with_other_parts_is_kept() {
    let reports = [
        "Soil test\npH 6.2\nP 18 ppm\n\nLeaf analysis\nP 0.2 %\nZn 17 ppm",
        "Water analysis\npH 7.9\nCa 71 mg/L\n\nSoil analysis\npH 6.2\nP 18 ppm",
        "pH 6.2\nP 18 ppm\n\nTarget levels\nP 40 ppm\nK 150 ppm",
        "pH 6.2\nP 18 ppm\n\nNiveles críticos\nP 40 ppm\nK 150 ppm",
        "Test\tResult\tUnit\npH\t6.2\t\nP\t18\tppm\nCritical levels\nP\t40\tppm\nK\t150\tppm",
    ];
    for text in reports {
        let found = report(text);
        let all: Vec<_> =
            found.samples.iter().flat_map(|s| &s.readings).map(|r| r.original.as_str()).collect();
        assert!(all.len() == 2 && all[0] == "6.2" && all[1].starts_with("18"), "{text}: {all:?}");
    }
}

#[test]
fn of_several_numbers_after_one_name_none_is_chosen() {
    for line in
        ["Phosphorus 17 VL 9 M", "Potassium 170 120 88", "K 12 84 ppm", "Calcium 4.1 M 4.21 9.05"]
    {
        let found = report(&format!("pH 6.2\n{line}\n"));
        assert_eq!(found.samples[0].readings.len(), 1, "{line}");
        assert!(found.samples[0].unread[0].reason.contains("more than one number"), "{line}");
    }
    assert_eq!(shown("Potassium 142 120-160"), ["potassium 142 ? [120-160]"]);
}

#[test]
fn the_ph_of_an_extractant_is_no_result() {
    for line in [
        "Note: Olsen, ammonium acetate 1M pH 7",
        "K by ammonium acetate, pH 7.0",
        "0,5 mol/L, pH 7",
        "Uncertainty (k=2): pH ± 0.2; K2O ± 12 %",
    ] {
        let found = report(&format!("P 18 ppm\n{line}\n"));
        assert_eq!(found.samples[0].readings.len(), 1, "{line}");
    }
    assert_eq!(shown("pH 7"), ["ph 7 "]);
    assert_eq!(shown("pH (KCl) 7.0"), ["salt-ph 7 by potassium chloride"]);
}

#[test]
fn a_block_of_names_before_a_block_of_numbers_pairs_nothing() {
    let text = "pH\nPhosphorus (P)\nLead (Pb)\n5.8\n9.1\n140\n";
    assert!(matches!(trouble(text), Trouble::NoResults));
    assert_eq!(shown("Phosphorus (P)\n18 ppm\nPotassium (K)\n140 ppm\n").len(), 2);
}

#[test]
fn numbers_under_another_heading_are_not_taken() {
    let text = "Sample: Yard\npH 7.1\n\n\
                Lab      Al     Na     OM     Mg     K\n\
                7120                   4.1    26     38\n\
                7121     5.7    3.7    2.8    30     24\n";
    let found = report(text);
    let all = found.samples.iter().flat_map(|s| &s.readings);
    let aluminium = all.filter(|r| r.property == Property::Aluminum).map(|r| r.original.as_str());
    assert_eq!(aluminium.collect::<Vec<_>>(), ["5.7"]);
}

#[test]
fn the_unit_in_a_heading_is_that_of_the_results_below_it() {
    let text = "Major elements\nK 120\nTrace elements (mg/kg)\nZinc 1.6\nIron 148\n";
    assert_eq!(shown(text), ["potassium 120 ?", "zinc 1.6 mg/kg", "iron 148 mg/kg"]);
    let text = "Nutrients (lb/acre)\nK 120\nTrace elements (ppm)\nZinc 1.6\n";
    assert_eq!(shown(text), ["potassium 120 lb/acre", "zinc 1.6 mg/kg"]);
    assert_eq!(shown("K 120\nAll results in ppm\n"), ["potassium 120 mg/kg"]);
    assert_eq!(shown("P 12 mg P2O5/dm3"), ["phosphorus 5.24 mg/L"]);
}

/// Each sample's name, and its results by property.
fn samples(text: &str) -> Vec<(String, Vec<String>)> {
    let told = |r: &emberloam_engine::report::Reading| {
        format!("{} {}", r.property.name(), r.original.trim())
    };
    let samples = report(text).samples;
    samples.iter().map(|s| (s.name.clone(), s.readings.iter().map(told).collect())).collect()
}

/// Whether the samples have these names, in this order.
fn named(text: &str, names: &[&str]) {
    let found: Vec<String> = samples(text).into_iter().map(|s| s.0).collect();
    assert_eq!(found, names, "{text}");
}

#[test]
fn the_best_of_several_heads_names_the_samples_across() {
    // A column of units that the heads leave out.
    let text = "Lab No\t7YS11\t7YS12\nName\tHill\tValley\nDepth\t0-10\t0-10\n\
                Phosphorus\tmg/kg\t26\t11\nZinc\tmg/kg\t0.5\t<0.1\npH (H2O)\t5.7\t5.2\n";
    named(text, &["Hill", "Valley"]);
    assert_eq!(samples(text)[1].1, ["phosphorus 11", "zinc <0.1", "ph 5.2"]);
    // No units; a row that nobody knows is no head.
    let text = "Lab number\t101\t102\t103\nField\tEast\tWest\tPond\nGravel\t5\t8\t12\n\
                pH\t6.1\t5.8\t7.0\nPotassium (ppm)\t120\t88\t300\n";
    named(text, &["East", "West", "Pond"]);
    assert_eq!(samples(text)[2].1, ["ph 7.0", "potassium 300"]);
    // A rating beside each result.
    let text = "FIELD NAME:\tCroft\tKirk\nCrop\tGrass\tSwedes\nResult\tStatus\tResult\tStatus\n\
                pH\t5.5\tLow\t6.2\tMod\nMagnesium\tmg/l\t188\tM\t74\tL\n";
    named(text, &["Croft", "Kirk"]);
    assert_eq!(samples(text)[1].1, ["ph 6.2", "magnesium 74"]);
    // Dots that lead from the name, in French.
    let text = "No de laboratoire : . . . .   41206   41207\nHorizons : . . . . . .       Ac      B2\n\
                pH : . . . . . . .            5.3     5.7\nCa . . . . .                  2.9     1.7\n\
                Argile ( < 0.002 mm) . . .    9.5     8.5\n";
    named(text, &["Ac", "B2"]);
    assert_eq!(samples(text)[0].1, ["ph 5.3", "calcium 2.9", "clay 9.5"]);
}

#[test]
fn a_code_names_no_sample_where_a_word_does() {
    let long = "Client,Field,Sample No,Determinand,Units,Result\n\
                Estate,Long Acre,W1/1,pH,,5.9\nEstate,Long Acre,W1/1,Potassium,mg/l,204\n\
                Estate,The Holt,W1/2,pH,,5.3\nEstate,The Holt,W1/2,Potassium,mg/l,72\n";
    named(long, &["Long Acre", "The Holt"]);
    assert_eq!(samples(long)[1].1, ["ph 5.3", "potassium 72"]);
    named("Sample No,Field,pH,P ppm\n1001,East,6.1,20\n1002,West,5.4,31\n", &["East", "West"]);
    // Two samples of one field keep the names that tell them apart.
    let two = "Sample No,Field,pH,P ppm\n1001,East,6.1,20\n1002,East,5.4,31\n";
    named(two, &["East 1001", "East 1002"]);
    named("Field,Sample ID,pH,P ppm\nEast,Gate,6.1,20\nWest,Barn,5.4,31\n", &["Gate", "Barn"]);
}

#[test]
fn a_line_with_the_word_for_a_sample_and_its_letter_begins_one() {
    for (first, second, names) in [
        ("Soil Test Site A:", "Soil Test Site B:", ["Site A", "Site B"]),
        ("Probe 1", "Probe 2", ["Probe 1", "Probe 2"]),
        ("Muestra 3:", "Muestra 4:", ["Muestra 3", "Muestra 4"]),
        ("**Sample 1**", "**Sample 2**", ["Sample 1", "Sample 2"]),
        ("Образец 1", "Образец 2", ["Образец 1", "Образец 2"]),
    ] {
        named(&format!("{first}\npH 6.2\nP 20 ppm\n\n{second}\npH 5.4\nP 9 ppm\n"), &names);
    }
    // A word that only looks like it: what is sampled, and a sentence.
    for line in ["Site was dug", "Field of wheat", "Sample weight 5"] {
        assert_eq!(report(&format!("pH 6.2\n{line}\nP 9 ppm\n")).samples.len(), 1, "{line}");
    }
}

#[test]
fn a_head_over_both_rows_stands_in_the_upper_one() {
    let text = "Sample\tpH\tOrganic matter %\tMehlich-3 (ppm)\t\nx\t\t\tP\tK\n";
    let text =
        format!("{}North\t6.1\t3.2\t20\t140\nSouth\t5.4\t2.8\t31\t90\n", text.replace('x', ""));
    named(&text, &["North", "South"]);
    assert_eq!(
        samples(&text)[1].1,
        ["ph 5.4", "organic-matter 2.8", "phosphorus 31", "potassium 90"]
    );
}

#[test]
fn a_row_of_limits_is_no_sample() {
    let rows = ["1\tNorth\t6.1\t20\t140", "2\tSouth\t5.4\t31\t90"].join("\n");
    let limits = "Critical limit\t\t6.5\t31\t180";
    for table in [format!("{rows}\n{limits}"), format!("{limits}\n{rows}")] {
        named(&format!("No.\tSample\tpH\tP ppm\tK ppm\n{table}\n"), &["North", "South"]);
    }
}

/// Source: the words of laboratories' forms in these languages (met in public text, or from
/// memory); the numbers are invented.
#[test]
fn forms_in_many_languages_are_read() {
    let expected = ["phosphorus 12", "magnesium 88", "copper 3"];
    for form in [
        "Parametro\tU.M.\tValore\tValutazione\nFosforo assimilabile\tmg/kg\t12\tbasso\nMagnesio scambiabile\tmg/kg\t88\tmedio\nRame\tmg/kg\t3\t",
        "Bepaling\tEenheid\tResultaat\tWaardering\nFosfor\tmg/kg\t12\tlaag\nMagnesium\tmg/kg\t88\tgoed\nKoper\tmg/kg\t3\t",
        "Oznaczenie\tJednostka\tWynik\tOcena\nFosfor przyswajalny\tmg/kg\t12\tniska\nMagnez\tmg/kg\t88\tśrednia\nMiedź\tmg/kg\t3\t",
        "Ukazatel\tJednotka\tHodnota\tHodnocení\nFosfor\tmg/kg\t12\tnízký\nHořčík\tmg/kg\t88\tdobrý\nMěď (Cu)\tmg/kg\t3\t",
        "Analyse\tEnhed\tResultat\tVurdering\nFosfor\tmg/kg\t12\tlavt\nMagnesium\tmg/kg\t88\thøj\nKobber\tmg/kg\t3\t",
        "Analys\tEnhet\tVärde\tBedömning\nFosfor\tmg/kg\t12\tlågt\nMagnesium\tmg/kg\t88\thögt\nKoppar\tmg/kg\t3\t",
        "Parameter\tEnhet\tVerdi\tVurdering\nFosfor\tmg/kg\t12\tlavt\nMagnesium\tmg/kg\t88\tmiddels\nKobber\tmg/kg\t3\t",
        "Показатель\tЕд. изм.\tЗначение\tОценка\nПодвижный фосфор\tмг/кг\t12\tнизкое\nМагний\tмг/кг\t88\tсреднее\nМедь\tмг/кг\t3\t",
        "Показник\tОдиниці\tЗначення\tОцінка\nРухомий фосфор\tмг/кг\t12\tнизький\nМагній\tмг/кг\t88\tсередній\nМідь\tмг/кг\t3\t",
        "項目\t単位\t分析値\t評価\nリン\tmg/kg\t12\t低い\nマグネシウム\tmg/kg\t88\t適正\n銅\tmg/kg\t3\t",
        "Parametre\tBirim\tSonuç\tDeğerlendirme\nFosfor\tmg/kg\t12\taz\nMagnezyum\tmg/kg\t88\torta\nBakır\tmg/kg\t3\t",
        "Παράμετρος\tΜονάδες\tΑποτέλεσμα\tΧαρακτηρισμός\nΦώσφορος\tmg/kg\t12\tχαμηλό\nΜαγνήσιο\tmg/kg\t88\tμέτριο\nΧαλκός\tmg/kg\t3\t",
        "Característica\tUnidad\tResultado\tInterpretación\nFósforo disponible\tmg/kg\t12\tbajo\nMagnesio\tmg/kg\t88\tmedio\nCobre\tmg/kg\t3\t",
    ] {
        assert_eq!(samples(form)[0].1, expected, "{form}");
        let units: Vec<_> = report(form).samples[0].readings.iter().map(|r| r.unit).collect();
        assert_eq!(units, [Some(Unit::MgPerKg); 3], "{form}");
    }
    // Words of other things stay what they are.
    for line in ["Sink 3 ppm", "Potrzeby wapnowania 3 t/ha", "Dawka CaO 3 t/ha"] {
        assert_eq!(shown(&format!("pH 6\n{line}")), ["ph 6 "], "{line}");
    }
}
