//! Every format from its bytes to the readings of the engine.

#![allow(clippy::disallowed_methods, reason = "the samples are files")]

use std::io::{Cursor, Write as _};
use std::path::PathBuf;

use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::{Case, Outcome, export, interpret, report};
use emberloam_files::{Kind, Opened, Refusal, open_file};

fn open(bytes: impl AsRef<[u8]>) -> Opened {
    open_file(bytes.as_ref()).unwrap_or_else(|refusal| panic!("{refusal}"))
}

fn refused(bytes: impl AsRef<[u8]>) -> Refusal {
    open_file(bytes.as_ref()).expect_err("refused")
}

fn sample(path: &str) -> Vec<u8> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/open-data").join(path);
    std::fs::read(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

fn read(text: &str) -> (report::Report, Outcome) {
    let report = report::read(&report::open(text.as_bytes()).unwrap()).unwrap();
    let outcome = interpret(&Case { report: report.clone(), ..Case::default() });
    (report, outcome)
}

/// Sample, name, number, unit, method and rating of each reading.
fn readings(text: &str) -> Vec<String> {
    let each = |r: &JudgedReading| {
        format!(
            "{:?} {:?} {:?} {:?} {:?}",
            r.property,
            r.value.map(|v| format!("{v:.5e}")),
            r.unit,
            r.method,
            r.lab_rating
        )
    };
    let (_, outcome) = read(text);
    outcome
        .samples
        .iter()
        .flat_map(|s| s.readings.iter().map(move |r| format!("{} {}", s.name, each(r))))
        .collect()
}

fn zip(parts: &[(&str, &str)]) -> Vec<u8> {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let stored = zip::write::SimpleFileOptions::default();
    for (name, text) in parts {
        zip.start_file(*name, stored).unwrap();
        zip.write_all(text.as_bytes()).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

#[test]
fn content_decides_never_the_name() {
    let kinds: [(&[u8], Kind); 8] = [
        (b"pH 6.2", Kind::Text),
        (b"< 2 ppm P", Kind::Text),
        (b"[sheet Results]\npH\t6.2", Kind::Text),
        (b"[page 2]\npH 6.2", Kind::Text),
        (b"<!DOCTYPE html><p>pH 6.2", Kind::WebPage),
        (b"\xEF\xBB\xBF<html xmlns:o=\"urn:schemas-microsoft-com:office:office\"><table><tr><td>pH<td>6.2</table>", Kind::WebPage),
        (b"<?xml version=\"1.0\"?><html><body><p>pH 6.2</p></body></html>", Kind::WebPage),
        (b"Version:0.9\r\nStartHTML:0071\r\n<html><body><!--StartFragment--><p>pH 6.2</p><!--EndFragment-->", Kind::WebPage),
    ];
    for (bytes, kind) in kinds {
        assert_eq!(open(bytes).kind, kind, "{}", String::from_utf8_lossy(bytes));
    }
    let wide = |name: &str| -> Vec<u8> {
        name.encode_utf16().flat_map(u16::to_le_bytes).chain([0, 0]).collect()
    };
    let old = |name: &str| {
        [b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1".to_vec(), vec![0; 504], wide(name)].concat()
    };
    let refusals: Vec<(Vec<u8>, Refusal)> = vec![
        (b"".into(), Refusal::Empty),
        (b" \n\t".into(), Refusal::Empty),
        (b"\x89PNG\r\n\x1a\n".into(), Refusal::Picture),
        (b"\xFF\xD8\xFF\xE0".into(), Refusal::Picture),
        (b"\0\0\0\x18ftypheic".into(), Refusal::Picture),
        (b"RIFF\0\0\0\0WEBP".into(), Refusal::Picture),
        (b"RIFF\0\0\0\0WAVE".into(), Refusal::Sound),
        (b"ID3\x04".into(), Refusal::Sound),
        (b"{\\rtf1 pH 6.2}".into(), Refusal::RichText),
        (b"\x1F\x8B\x08".into(), Refusal::Compressed),
        (b"pH\0\x01\x02\x03".into(), Refusal::NotText),
        (zip(&[("word/document.xml", "<w/>")]), Refusal::Document),
        (zip(&[("ppt/presentation.xml", "<p/>")]), Refusal::Slides),
        (zip(&[("mimetype", "application/vnd.oasis.opendocument.text")]), Refusal::Document),
        (zip(&[("report.pdf", "")]), Refusal::Zip),
        (old("EncryptedPackage"), Refusal::LockedWorkbook),
        (old("WordDocument"), Refusal::Document),
        (old("PowerPoint Document"), Refusal::Slides),
        (b"<?xml version=\"1.0\"?><Workbook xmlns=\"urn:schemas-microsoft-com:office:spreadsheet\"/>".into(), Refusal::XmlWorkbook),
        (b"<?xml version=\"1.0\"?><kml><Document/></kml>".into(), Refusal::OtherXml),
        (b"{\"type\": \"FeatureCollection\"}".into(), Refusal::OtherJson),
        (b"{\"emberloam-shelf\": 1, \"entries\": []}".into(), Refusal::AllSaved),
        (b"{\"emberloam\":1,\n\"text\":".into(), Refusal::BrokenJson { line: 2 }),
        (b"{\"emberloam\":2,\"text\":\"\"}".into(), Refusal::SavedByNewer),
    ];
    for (bytes, refusal) in refusals {
        assert_eq!(open_file(&bytes), Err(refusal), "{}", String::from_utf8_lossy(&bytes));
    }
}

#[test]
fn a_saved_report_is_handed_on_as_it_is() {
    let saved = "{\"emberloam\":1,\"text\":\"pH 6.2\",\"answers\":{}}";
    let opened = open(saved);
    assert_eq!((opened.kind, opened.text.as_str()), (Kind::Saved, saved));
}

#[test]
fn one_report_in_three_workbooks_is_the_same_report() {
    let [xlsx, xls, ods] = ["openpyxl.xlsx", "libreoffice_biff.xls", "libreoffice.ods"]
        .map(|name| open(sample(&format!("synthetic_reports/{name}"))));
    assert_eq!(xls.text, ods.text);
    assert_eq!(readings(&xls.text), readings(&xlsx.text));
    assert_eq!(readings(&xls.text).len(), 56, "{:#?}", readings(&xls.text));
    // The one formula of the sheet was never worked out where no office program saved it.
    assert!(xlsx.notes.iter().any(|n| n.contains("never worked out")), "{:?}", xlsx.notes);
    assert!(xls.text.starts_with("[sheet Results]\nSoil Test Report (synthetic)"));
}

/// A workbook by hand, of one visible and one hidden sheet.
fn workbook(rows: &str) -> Vec<u8> {
    let sheet = |rows: &str| {
        format!(
            "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>{rows}</sheetData></worksheet>"
        )
    };
    zip(&[
        ("[Content_Types].xml", "<Types/>"),
        (
            "_rels/.rels",
            "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>",
        ),
        (
            "xl/workbook.xml",
            "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets><sheet name=\"Back bed\" sheetId=\"1\" r:id=\"rId1\"/><sheet name=\"Old\" sheetId=\"2\" state=\"hidden\" r:id=\"rId2\"/></sheets></workbook>",
        ),
        (
            "xl/_rels/workbook.xml.rels",
            "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"rId2\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet2.xml\"/></Relationships>",
        ),
        (
            "xl/styles.xml",
            "<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><numFmts count=\"1\"><numFmt numFmtId=\"164\" formatCode=\"0.0%\"/></numFmts><cellXfs count=\"5\"><xf numFmtId=\"0\"/><xf numFmtId=\"164\"/><xf numFmtId=\"20\"/><xf numFmtId=\"16\"/><xf numFmtId=\"14\"/></cellXfs></styleSheet>",
        ),
        ("xl/worksheets/sheet1.xml", &sheet(rows)),
        ("xl/worksheets/sheet2.xml", &sheet("<row r=\"1\"><c r=\"A1\"><v>99</v></c></row>")),
    ])
}

#[test]
fn a_cell_is_what_it_shows_and_what_may_mislead_is_said() {
    let opened = open(workbook(
        "<row r=\"3\"><c r=\"B3\" t=\"inlineStr\"><is><t>Organic\tmatter\nLOI</t></is></c><c r=\"C3\" s=\"1\"><v>3.4000000000000002E-2</v></c></row>\
         <row r=\"4\"><c r=\"B4\" t=\"inlineStr\"><is><t>Ratio</t></is></c><c r=\"C4\" s=\"2\"><v>4.8611111111111112E-2</v></c><c r=\"D4\" s=\"3\"><v>45566</v></c><c r=\"E4\" s=\"4\"><v>45566</v></c></row>\
         <row r=\"6\"><c r=\"B6\" t=\"inlineStr\"><is><t>P</t></is></c><c r=\"C6\" t=\"e\"><v>#N/A</v></c><c r=\"D6\"><f>C6*2</f></c><c r=\"E6\" t=\"b\"><v>1</v></c><c r=\"F6\"><v>0.30000000000000004</v></c><c r=\"G6\" t=\"inlineStr\"><is><t>18</t></is></c></row>",
    ));
    let expected = "[sheet Back bed]\n\n\n\
        \tOrganic matter LOI\t3.4%\t\t\t\t\n\
        \tRatio\t1:10\t2024-10-01\t2024-10-01\t\t\n\n\
        \tP\t#N/A\t\tTRUE\t0.3\t18\n";
    assert_eq!(opened.text, expected);
    let notes = opened.notes.join("\n");
    for said in [
        "hidden in the workbook: Old.",
        "C4: a time of day",
        "D4: a day and a month",
        "C6: the error",
        "D6: a formula",
    ] {
        assert!(notes.contains(said), "{said}: {notes}");
    }
}

#[test]
fn a_number_is_no_thousands_where_words_use_decimal_commas() {
    let cells = "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>3,4 %</t></is></c><c r=\"B1\"><v>1.234</v></c></row>";
    assert!(open(workbook(cells)).text.contains("3,4 %\t1.2340"));
}

#[test]
fn workbooks_that_hold_nothing_or_too_much_are_refused() {
    assert_eq!(refused(workbook("")), Refusal::EmptyWorkbook);
    let far = "<row r=\"1\"><c r=\"A1\"><v>1</v></c></row><row r=\"1048576\"><c r=\"XFD1048576\"><v>1</v></c></row>";
    let opened = open(workbook(far));
    assert_eq!(opened.text, "[sheet Back bed]\n1\n");
    assert!(opened.notes.iter().any(|n| n.contains("left out")), "{:?}", opened.notes);
    // A million rows of one cell, said in one line.
    let table = "<office:document-content><table:table table:name=\"A\"><table:table-row table:number-rows-repeated=\"1000000\"><table:table-cell table:number-columns-repeated=\"16000\" office:value-type=\"float\" office:value=\"1\"/></table:table-row></table:table></office:document-content>";
    let bomb = zip(&[
        ("mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
        ("content.xml", table),
    ]);
    assert_eq!(refused(bomb), Refusal::Swells);
    let locked = zip(&[
        ("mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
        (
            "META-INF/manifest.xml",
            "<manifest:manifest><manifest:encryption-data/></manifest:manifest>",
        ),
        ("content.xml", "\u{1}"),
    ]);
    assert_eq!(refused(locked), Refusal::LockedWorkbook);
}

#[test]
fn an_opendocument_sheet_keeps_per_cent_and_leaves_out_hidden_sheets_and_comments() {
    let content = "<office:document-content><office:automatic-styles><style:style style:name=\"ta2\"><style:table-properties table:display=\"false\"/></style:style></office:automatic-styles>\
        <table:table table:name=\"A\"><table:table-row><table:table-cell table:number-columns-repeated=\"2\"/><table:table-cell office:value-type=\"string\"><office:annotation><text:p>aside</text:p></office:annotation><text:p>OM &amp; more</text:p></table:table-cell>\
        <table:table-cell office:value-type=\"percentage\" office:value=\"0.034\"><text:p>3%</text:p></table:table-cell><table:table-cell office:value-type=\"time\" office:time-value=\"PT01H10M00S\"/></table:table-row></table:table>\
        <table:table table:name=\"B\" table:style-name=\"ta2\"><table:table-row><table:table-cell office:value-type=\"float\" office:value=\"1\"/></table:table-row></table:table></office:document-content>";
    let opened = open(zip(&[
        ("mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
        ("content.xml", content),
    ]));
    assert_eq!(opened.text, "[sheet A]\n\t\tOM & more\t3.4%\t1:10\n");
    assert!(opened.notes[0].contains("hidden in the workbook: B."));
}

const RESULT: &str =
    r#"{"Element":"P","Value":18,"ValueUnit":"ppm","ModusTestID":"S-P-M3.04","ValueDesc":"L"}"#;

fn modus(result: &str) -> String {
    format!(
        r#"{{"_type":"application/vnd.modus.v1.modus-result+json","Events":[{{"EventMetaData":{{"EventType":{{"Soil":true}}}},"FMISMetaData":{{"FMISProfile":{{"Field":"Back"}}}},"EventSamples":{{"Soil":{{"DepthRefs":[{{"DepthID":1,"StartingDepth":0,"EndingDepth":8,"DepthUnit":"in"}}],"SoilSamples":[{{"SampleMetaData":{{"SampleNumber":"7","Geometry":{{"wkt":"POINT(-90 45)"}}}},"Depths":[{{"DepthID":"1","NutrientResults":[{result}]}}]}}]}}}}}}]}}"#
    )
}

/// Source: the variants met in open example files, listed with the data in `tests/open-data` (opened).
#[test]
fn each_way_of_writing_modus_json_is_read() {
    let plain = modus(RESULT);
    let expected = "Sample\tDepth\tProperty\tResult\tUnit\tMethod\tRating\n7\t0-8 in\tP\t18\tppm\tMehlich-3\tL\n";
    let keyed = r#"{"P":{"Value":18,"ValueUnit":"ppm","ModusTestID":"S-P-M3.04","ValueDesc":"L"}}"#;
    let variants = [
        plain.clone(),
        plain.replace(r#""DepthID":1"#, r#""DepthID":"1""#),
        plain.replace(r#""DepthID":"1""#, r#""DepthID":1"#),
        plain.replace("FMISMetaData", "FMISMetadata"),
        plain.replace(r#"{"Soil":true}"#, r#""Soil""#),
        plain.replace(r#""Value":18"#, r#""Value":"18""#),
        plain.replace(
            r#""ValueDesc""#,
            r#""UCUM_ValueUnit":"[ppm]","CsvHeader":"P","ModusTestIDv2":"x","ValueDesc""#,
        ),
        plain.replace(
            r#""EventMetaData""#,
            r#""LabMetaData":{"Reports":{"1":{"ReportID":1}}},"EventMetaData""#,
        ),
        plain.replace(&format!("[{RESULT}]"), keyed),
        plain.replace(
            "application/vnd.modus.v1.modus-result+json",
            "application/vnd.aggateway.modus.1+json",
        ),
        format!(r#"{{"_type":"application/vnd.aggateway.modus.1+json","ModusResult":{plain}}}"#),
        format!("[{plain}]"),
        format!("\u{FEFF} \n{plain}"),
    ];
    for variant in variants {
        let opened = open(&variant);
        assert_eq!((opened.kind, opened.text.as_str()), (Kind::Modus, expected), "{variant}");
    }
}

#[test]
fn colour_and_icp_are_two_methods_and_an_unknown_code_is_no_method() {
    let method = |code: &str| {
        let text = open(modus(&RESULT.replace("S-P-M3.04", code))).text;
        (
            text.lines().nth(1).unwrap().split('\t').nth(5).unwrap().to_string(),
            readings(&text)[0].clone(),
        )
    };
    let known = [
        ("S-P-M3.01.03", "Mehlich-3 colorimetric", "Some(Mehlich3Colorimetric)"),
        ("s-p-m3.04", "Mehlich-3", "Some(Mehlich3)"),
        ("S-P-B1-1:10.01.03", "Bray P1", "Some(BrayP1)"),
        ("S-P-BIC.04", "Olsen", "Some(Olsen)"),
        ("S-P-MMOR.01.03", "modified Morgan", "Some(ModifiedMorgan)"),
        ("S-P-LANC.04", "Lancaster", "Some(Lancaster)"),
        ("S-P-CALD.01.03", "Colwell", "Some(Colwell)"),
        ("S-P-MKEL.01.03", "modified Kelowna", "Some(ModifiedKelowna)"),
        ("S-P-M2.04", "Mehlich-2", "Some(Mehlich2)"),
        ("S-P-QQQ.04", "QQQ", "None"),
        ("S-P-3:7.04", "", "None"),
        ("L_MODV2_SOIL_P_033", "", "None"),
    ];
    for (code, words, read) in known {
        let (text, reading) = method(code);
        assert_eq!(text, words, "{code}");
        assert!(reading.contains(&format!("{read} Some(\"L\")")), "{code}: {reading}");
    }
}

#[test]
fn what_modus_values_cannot_be_is_listed_by_the_engine() {
    for value in ["-5", "1e300"] {
        let text = open(modus(
            &[RESULT, &RESULT.replace("18", value).replace("\"P\"", "\"K\"")].join(","),
        ))
        .text;
        let (_, outcome) = read(&text);
        assert_eq!(outcome.samples[0].readings.len(), 1, "{value}: {text}");
        assert!(!outcome.samples[0].unread.is_empty(), "{value}");
    }
}

#[test]
fn flat_json_takes_what_stands_above_the_samples() {
    let slim = r#"{"_type":"application/vnd.modus.slim.v1.0+json","id":"x","date":"2026-03-02","type":"soil",
        "depth":{"top":0,"bottom":8,"units":"in"},
        "samples":{"b":{"lab":{"sampleid":"7"},"results":{"1":{"analyte":"P","value":"<2","units":"[ppm]","modusTestID":"S-P-BIC.04"},
            "2":{"analyte":"PH","value":6.2,"units":"none","modusTestID":"L_MODV2_SOIL_PH_001"},
            "3":{"analyte":"K","value":280,"units":"[lb_av]/[acr_us]"},"4":{"analyte":"CEC","value":11,"units":"meq/(100.g)"}}},
          "a":{"depth":{"top":8,"bottom":24},"results":{"1":{"analyte":"NO3N","value":12,"units":"mg1kg-1"}}}}}"#;
    let text = open(slim).text;
    let expected = "Sample\tDepth\tProperty\tResult\tUnit\tMethod\tRating\n\
        7\t0-8 in\tPH\t6.2\t\t\t\n7\t0-8 in\tP\t<2\tppm\tOlsen\t\n7\t0-8 in\tK\t280\tlb/acre\t\t\n\
        7\t0-8 in\tCEC\t11\tmeq/100 g\t\t\na\t8-24 in\tNO3N\t12\tmg/kg\t\t\n";
    assert_eq!(text, expected);
    assert_eq!(readings(&text).len(), 5);
    assert_eq!(refused(slim.replace("\"soil\"", "\"plant-tissue\"")), Refusal::NoSoilResults);
}

#[test]
fn modus_xml_gives_results_ratings_and_texture_and_no_advice() {
    let opened = open(sample("modus_CC0/modus_v1_result_soil_full_example.xml"));
    let found = readings(&opened.text);
    assert!(opened.notes[0].contains("advice"));
    assert!(!opened.text.contains("lb/ac") && !opened.text.contains("P2O5"));
    let first: Vec<&String> = found.iter().filter(|r| r.starts_with("1 ")).collect();
    assert_eq!(first.len(), 28);
    for reading in [
        "1 Ph Some(\"7.00000e0\") Some(None) Some(Water1To1) Some(\"H\")",
        "1 Phosphorus Some(\"9.00000e1\") Some(MgPerKg) Some(BrayP1) Some(\"VH\")",
        "1 Phosphorus Some(\"4.50000e1\") Some(MgPerKg) Some(Olsen) Some(\"H\")",
        "1 NitrateN Some(\"1.60000e1\") Some(MgPerKg) Some(Kcl) Some(\"M\")",
    ] {
        assert!(first.contains(&&reading.to_string()), "{reading}: {first:#?}");
    }
    let (report, _) = read(&opened.text);
    assert_eq!(report.samples[0].depth_cm, Some((0.0, 7.0 * 2.54)));
    assert_eq!(format!("{:?}", report.samples[0].texture), "Some(SiltLoam)");
    let lab = open(sample("modus_CC0/modus_v1_result_soil_lab_generated.xml"));
    let hand = open(sample("modus_CC0/modus_v1_result_soil_hand.json"));
    assert_eq!((read(&lab.text).1.samples.len(), read(&hand.text).1.samples.len()), (20, 20));
}

#[test]
fn an_order_form_and_an_empty_result_say_so() {
    assert_eq!(refused(sample("modus_CC0/modus_v1_submit_soil_example.xml")), Refusal::OrderForm);
    assert_eq!(
        refused(sample("modus_CC0/modus_v1_result_from_spreadsheet_1.json")),
        Refusal::NoSoilResults
    );
}

#[test]
fn entities_neither_swell_nor_fetch() {
    let bomb = "<?xml version=\"1.0\"?><!DOCTYPE ModusResult [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\"><!ENTITY f SYSTEM \"file:///etc/passwd\">]>\
        <ModusResult><Event><EventSamples><Soil><SoilSample><SampleMetaData><SampleNumber>&b;&f;&lt;</SampleNumber></SampleMetaData><Depths><Depth><NutrientResults><NutrientResult><Element>P</Element><Value>18</Value></NutrientResult></NutrientResults></Depth></Depths></SoilSample></Soil></EventSamples></Event></ModusResult>";
    assert!(open(bomb).text.contains("&b;&f;<\t\tP\t18"), "{}", open(bomb).text);
    let deep = format!("<ModusResult>{}", "<a>".repeat(100_000));
    assert_eq!(refused(deep), Refusal::Damaged { what: "XML file" });
    assert!(matches!(refused("[{\"a\":".repeat(100_000)), Refusal::BrokenJson { .. }));
}

#[test]
fn two_depths_of_a_sample_are_two_samples() {
    let two = modus(RESULT)
        .replace("{\"DepthID\":1,", "{\"DepthID\":2,\"StartingDepth\":8,\"EndingDepth\":24,\"DepthUnit\":\"in\"},{\"DepthID\":1,")
        .replace("\"Depths\":[", &format!("\"Depths\":[{{\"DepthID\":2,\"NutrientResults\":[{RESULT}]}},"));
    let (report, _) = read(&open(two).text);
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["7, 8-24 in", "7, 0-8 in"]);
}

#[test]
fn a_table_of_a_web_page_is_rows_with_tabs() {
    let page = "<html><head><title>x</title><style>td{}</style></head><body><h1>Report</h1><p>Depth 0&ndash;6&nbsp;in</p>\
        <table><caption>Results</caption><tr><th rowspan=2>Test<th colspan=2>Found</tr><tr><th>Result<th>Unit</tr>\
        <tr><td>P<sub>2</sub>O<sub>5</sub><td>&lt; 2<td>mg/<b>kg</b></tr><tr><td>Organic<br>matter<td>3.4<td>%</tr>\
        <tr style='display: none'><td>x<td>1<td>y</tr></table><script>var a = '<td>';</script><pre>pH   6.2\nK   18</pre></body></html>";
    let expected = "Report\nDepth 0–6\u{a0}in\nResults\nTest\tFound\t\n\tResult\tUnit\nP2O5\t< 2\tmg/kg\nOrganic matter\t3.4\t%\n\npH   6.2\nK   18\n";
    assert_eq!(open(page).text, expected);
    // A table that holds tables in place.
    let nested = "<table><tr><td><table><tr><td>pH<td>6.2</table><td><table><tr><td>K<td>142</table></table>";
    assert_eq!(open(nested).text, "pH\t6.2\n\nK\t142\n\n\n");
    let fragment = "<html><body><p>before</p><table><!--StartFragment--><tr><td>pH<td>6.2</tr><!--EndFragment--></table>after";
    assert_eq!(open(fragment).text, "pH\t6.2\n\n");
    let spans = format!("<table>{}", "<tr><td colspan=1000 rowspan=1000>1".repeat(60_000));
    assert_eq!(refused(spans), Refusal::Swells);
}

#[test]
fn readings_written_as_modus_come_back() {
    let text = "Sample ID\tDepth (cm)\tpH (1:1)\tBuffer pH (Sikora)\tOM % (LOI)\tP Mehlich-3 ppm\tK Mehlich-3 ppm\tCEC meq/100g\tZn DTPA ppm\tB hot water ppm\tNO3-N KCl ppm\n\
        North\t0-15\t6.2\t6.8\t3.4\t18\t142\t11.4\t1.8\t0.5\t12\nSouth\t0-15\t5.6\t6.5\t2.1\t8\t88\t9.7\t0.9\t0.3\t6\n";
    let (report, outcome) = read(text);
    let json =
        export::modus(&report, &outcome, "00000000-0000-4000-8000-000000000000", "2026-03-02");
    let again = open(json);
    assert_eq!(again.kind, Kind::Modus);
    assert_eq!(readings(&again.text), readings(text), "{}", again.text);
    assert_eq!(read(&again.text).0.samples[0].depth_cm, Some((0.0, 15.0)));
}

/// Cut short, with bytes changed, with a piece cut out: refused or read, and never a panic.
#[test]
fn no_damage_to_a_file_is_a_panic() {
    let mut seed: u64 = 42;
    let mut next = move |below: usize| {
        seed ^= seed << 13;
        seed ^= seed >> 7;
        seed ^= seed << 17;
        seed as usize % below.max(1)
    };
    let page = b"<html><table><tr><td rowspan=2>pH<td>6.2</tr></table><pre>K 18</pre>".to_vec();
    let made = workbook("<row r=\"1\"><c r=\"A1\" s=\"1\"><v>0.3</v></c></row>");
    let slim =
        b"{\"samples\":{\"a\":{\"results\":{\"1\":{\"analyte\":\"P\",\"value\":1}}}}}".to_vec();
    let files = [
        "modus_CC0/modus_v1_result_soil_full_example.xml",
        "modus_CC0/modus_v1_result_soil_hand.json",
        "modus_CC0/modus_v1_submit_soil_example.xml",
        "soil_health_lab_CC0/data_dictionary.xlsx",
        "synthetic_reports/grid_semicolon_latin1.csv",
        "synthetic_reports/cells.xls",
        "synthetic_reports/libreoffice.ods",
        "synthetic_reports/libreoffice_biff.xls",
        "synthetic_reports/openpyxl.xlsx",
    ];
    for whole in files.map(sample).into_iter().chain([page, made, slim]) {
        for turn in 0..60 {
            let mut bytes = whole.clone();
            match turn % 3 {
                0 => bytes.truncate(next(whole.len())),
                1 => (0..1 + next(20)).for_each(|_| bytes[next(whole.len())] = next(256) as u8),
                _ => {
                    let from = next(bytes.len());
                    let to = (from + next(2_000)).min(bytes.len());
                    bytes.drain(from..to);
                }
            }
            if let Ok(opened) = open_file(&bytes)
                && let Ok(grid) = report::open(opened.text.as_bytes())
            {
                let _ = report::read(&grid);
            }
        }
    }
}

#[test]
fn an_old_workbook_keeps_per_cent_and_texts_that_run_over_records() {
    let opened = open(sample("synthetic_reports/cells.xls"));
    let lines: Vec<&str> = opened.text.lines().collect();
    assert_eq!(lines[0], "[sheet Béd μ]");
    assert_eq!(lines[2].trim_end(), "\tOM\t3.4%\t2024-10-01\t1:10\t2024-10-01");
    assert_eq!(lines[3], "\tµS/cm – ≤\t0.3\tTRUE\t12.34\t-3\t0.0000001\t1234567");
    for i in 0..60 {
        let text = if i % 2 == 1 { format!("x{i}µ≤") } else { format!("y{i}") };
        assert_eq!(lines[6 + i].trim_end(), text.repeat(30));
    }
    let notes = opened.notes.join("\n");
    for said in ["workbook: Hid.", "E2: a time of day", "F2: a day and a month"] {
        assert!(notes.contains(said), "{said}: {notes}");
    }
    assert!(!opened.text.contains("secret"));
}

#[test]
fn a_page_left_open_in_a_table_still_ends() {
    let page = b"<html><body><table><tr><td>pH</td><td>6.2</td></tr><tr><td><title>K</td></tr>";
    assert!(open_file(page).expect("it opens").text.starts_with("pH\t6.2\n"));
}
