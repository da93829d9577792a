//! Readings, as the person corrected them, for other programs: CSV and the
//! open lab exchange standard Modus (first generation, JSON).
//!
//! Source: RFC 4180 (from memory); the Modus v1 JSON schema of OADA's formats
//! repository, MIT licence (opened).

use crate::outcome::{Bound, JudgedReading, Outcome};
use crate::quantity::significant;
use crate::report::{Lines, Report, SampleReport};
use crate::soil::{Method, Property};

/// Digits of a result: more than a laboratory prints, without the tail of a conversion.
const DIGITS: i32 = 6;

/// What is written as a number: beyond it a text stands for what the report prints.
const COUNTED: std::ops::Range<f64> = 0.0..1e15;

/// The readings of every sample as CSV, a line a result: RFC 4180 in UTF-8
/// with a byte order mark, so that spreadsheets know the encoding.
///
/// A text that a spreadsheet would take for a formula, because it begins with
/// `=`, `+`, `-` or `@`, gets an apostrophe before it.
///
/// `text` is what the report was read from; the last column says where in it a result stands.
pub fn csv(report: &Report, outcome: &Outcome, text: &str) -> String {
    whole(Export::csv(), report, outcome, text)
}

/// The readings of every sample as a Modus v1 result in JSON.
///
/// `code` is a fresh UUID and `date` the day (`2026-03-02`); both come from
/// the caller, since the engine has no clock and no chance. A value of Modus
/// is a number, so what it can't say, a limit, "not detected" or a rating
/// alone, stands in the `Comments` of its sample, and so does a method that
/// has no code here.
pub fn modus(report: &Report, outcome: &Outcome, code: &str, date: &str) -> String {
    whole(Export::modus(code, date), report, outcome, "")
}

/// Samples with their readings as a table, a row each, to be read again as plots of a trial. A
/// property by two methods has two columns.
pub fn table(samples: &[(String, Vec<JudgedReading>)]) -> String {
    let head = |reading: &JudgedReading| {
        let method = reading.method.map_or(String::new(), |method| format!(" {}", method.label()));
        let unit = reading.unit.map(|unit| unit.symbol()).filter(|symbol| !symbol.is_empty());
        let unit = unit.map_or(String::new(), |symbol| format!(" ({symbol})"));
        format!("{}{method}{unit}", reading.property.label())
    };
    let mut heads: Vec<String> = Vec::new();
    for reading in samples.iter().flat_map(|(_, readings)| readings) {
        let head = head(reading);
        if has_number(reading) && !heads.contains(&head) {
            heads.push(head);
        }
    }
    let mut text = format!("Sample\t{}\n", heads.join("\t"));
    for (name, readings) in samples {
        text += &name.replace(['\t', '\n', '\r'], " ");
        for wanted in &heads {
            let found =
                readings.iter().find(|reading| has_number(reading) && head(reading) == *wanted);
            text.push('\t');
            text += &found.map_or(String::new(), result);
        }
        text.push('\n');
    }
    text
}

fn whole(mut export: Export, report: &Report, outcome: &Outcome, text: &str) -> String {
    let source = Lines::of(text);
    for (sample, judged) in report.samples.iter().zip(&outcome.samples) {
        export.add(sample, &judged.readings, &source);
    }
    export.finish()
}

/// An export under way: thousands of samples take a while, so they are added
/// one by one.
#[derive(Debug)]
pub enum Export {
    /// As [`csv`] gives it: the rows so far.
    Csv(String),
    /// As [`modus`] gives it.
    Modus {
        /// A fresh UUID and the day.
        event: [String; 2],
        /// How many samples there are so far.
        count: usize,
        /// Their depths and their results.
        parts: [String; 2],
    },
}

impl Export {
    /// A table without rows yet.
    pub fn csv() -> Export {
        Export::Csv(
            "\u{FEFF}Sample,Depth,Property,Result,Unit,Method,Rating,Our level,Printed name,As printed,Place\r\n"
                .into(),
        )
    }

    /// A Modus result without samples yet.
    pub fn modus(code: &str, date: &str) -> Export {
        Export::Modus { event: [quoted(code), quoted(date)], count: 0, parts: Default::default() }
    }

    /// Adds a sample with its readings as they were judged. `source` are the
    /// lines of what the report was read from.
    pub fn add(&mut self, sample: &SampleReport, readings: &[JudgedReading], source: &Lines<'_>) {
        match self {
            Export::Csv(rows) => {
                readings.iter().for_each(|reading| push_row(rows, sample, reading, source));
            }
            Export::Modus { count, parts, .. } => {
                *count += 1;
                push_sample(*count, sample, readings, parts);
            }
        }
    }

    /// The whole text.
    pub fn finish(self) -> String {
        match self {
            Export::Csv(rows) => rows,
            Export::Modus { event: [code, date], parts: [depths, samples], .. } => format!(
                "{{\"_type\":\"application/vnd.modus.v1.modus-result+json\",\"Events\":[{{\"EventMetaData\":\
                 {{\"EventCode\":{code},\"EventDate\":{date},\"EventType\":{{\"Soil\":true}}}},\"EventSamples\":{{\"Soil\":\
                 {{\"DepthRefs\":[{depths}],\"SoilSamples\":[{samples}]}}}}}}]}}"
            ),
        }
    }
}

/// One reading as a row.
fn push_row(rows: &mut String, sample: &SampleReport, reading: &JudgedReading, source: &Lines<'_>) {
    let depth = sample
        .depth_cm
        .map_or(String::new(), |(top, bottom)| format!("{}-{} cm", short(top), short(bottom)));
    let result = result(reading);
    let cells: [&str; 11] = [
        &guarded(&sample.name),
        &depth,
        element(reading.property).1,
        // A limit or a negative number is no formula; any other text could be.
        &if has_number(reading) { result } else { guarded(&result) },
        reading.unit.map_or("", |u| u.symbol()),
        reading.method.map_or("", Method::label),
        &guarded(reading.lab_rating.as_deref().unwrap_or("")),
        reading.finding.level.map_or("", |l| l.name()),
        &guarded(&reading.name),
        &guarded(&reading.original),
        &source.whereabouts(reading.place).to_string(),
    ];
    for (n, cell) in cells.iter().enumerate() {
        if n > 0 {
            rows.push(',');
        }
        push_cell(rows, cell);
    }
    rows.push_str("\r\n");
}

fn push_cell(text: &mut String, cell: &str) {
    if !cell.contains(['"', ',', ';', '\n', '\r']) {
        text.push_str(cell);
        return;
    }
    text.push('"');
    text.push_str(&cell.replace('"', "\"\""));
    text.push('"');
}

fn guarded(text: &str) -> String {
    let mark = if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { "'" } else { "" };
    format!("{mark}{text}")
}

/// One sample and its depth; `id` is its number.
fn push_sample(
    id: usize,
    sample: &SampleReport,
    readings: &[JudgedReading],
    [depths, samples]: &mut [String; 2],
) {
    let mut of_depth = String::new();
    let depth = sample.depth_cm.filter(|(t, b)| COUNTED.contains(t) && COUNTED.contains(b));
    if let Some((top, bottom)) = depth {
        let (top, bottom, column) = (short(top), short(bottom), short(bottom - top));
        let between = if depths.is_empty() { "" } else { "," };
        depths.push_str(&format!(
            "{between}{{\"DepthID\":\"{id}\",\"Name\":\"{top}-{bottom} cm\",\"StartingDepth\":{top},\
             \"EndingDepth\":{bottom},\"ColumnDepth\":{column},\"DepthUnit\":\"cm\"}}"
        ));
        of_depth = format!("\"DepthID\":\"{id}\",");
    }
    let mut results = String::new();
    let mut comments = String::new();
    for reading in readings {
        push_result(reading, &mut results, &mut comments);
    }
    let comma = if samples.is_empty() { "" } else { "," };
    samples.push_str(&format!(
        "{comma}{{\"SampleMetaData\":{{\"SampleNumber\":{}}},\"Depths\":[{{{of_depth}\
         \"NutrientResults\":[{results}]}}],\"Comments\":{}}}",
        quoted(&sample.name),
        quoted(&comments),
    ));
}

fn push_result(reading: &JudgedReading, results: &mut String, comments: &mut String) {
    let (element, _) = element(reading.property);
    let unit = match reading.unit.map_or("", |u| u.symbol()) {
        "" => "none",
        symbol => symbol,
    };
    let code = reading.method.and_then(|m| test_id(reading.property, m));
    let value = reading.value.filter(|v| COUNTED.contains(v));
    let mut aside = |text: &str| {
        if !comments.is_empty() {
            comments.push_str("; ");
        }
        comments.push_str(text);
    };
    let Some(value) = value else {
        let method = reading.method.map_or(String::new(), |m| format!(" ({})", m.label()));
        aside(&format!("{element}: {} {unit}{method}", result(reading)));
        return;
    };
    if let (Some(method), None) = (reading.method, code) {
        aside(&format!("{element} by {}", method.label()));
    }
    if !results.is_empty() {
        results.push(',');
    }
    results.push_str(&format!(
        "{{\"Element\":\"{element}\",\"Value\":{},\"ValueUnit\":\"{unit}\",\"ValueType\":\"Measured\"",
        significant(value, DIGITS)
    ));
    if let Some(code) = code {
        results.push_str(&format!(",\"ModusTestID\":\"{code}\""));
    }
    if let Some(rating) = &reading.lab_rating {
        // The standard knows these and no others.
        const RATINGS: [&str; 13] = [
            "Very Low",
            "Low",
            "Medium",
            "Optimum",
            "High",
            "Very High",
            "VL",
            "L",
            "M",
            "O",
            "H",
            "VH",
            "",
        ];
        match RATINGS.iter().find(|r| r.eq_ignore_ascii_case(rating)) {
            Some(known) => results.push_str(&format!(",\"ValueDesc\":\"{known}\"")),
            None => aside(&format!("{element} rated {rating}")),
        }
    }
    results.push('}');
}

/// `18`, `< 2`; or what the report prints where there is no number.
fn result(reading: &JudgedReading) -> String {
    match (reading.value, reading.bound) {
        (_, Some(Bound::Below(limit))) => format!("< {}", significant(limit, DIGITS)),
        (_, Some(Bound::Above(limit))) => format!("> {}", significant(limit, DIGITS)),
        (Some(value), None) if value.abs() < COUNTED.end => significant(value, DIGITS),
        (_, None) => reading.original.clone(),
    }
}

fn has_number(reading: &JudgedReading) -> bool {
    reading.value.is_some() || reading.bound.is_some()
}

fn short(cm: f64) -> String {
    significant(cm, 4)
}

/// A JSON string.
fn quoted(text: &str) -> String {
    let mut json = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => json.extend(['\\', c]),
            c if c < ' ' => json.push(' '),
            c => json.push(c),
        }
    }
    json.push('"');
    json
}

/// The element's name in Modus, and the name in a table for people. Both are
/// read back as the same property.
fn element(property: Property) -> (&'static str, &'static str) {
    use Property as P;
    let label = property.label();
    match property {
        P::Ph => ("pH", label),
        P::SaltPh => ("Salt pH", label),
        P::BufferPh => ("BpH", label),
        P::ExchangeableAcidity => ("Exchangeable acidity", label),
        P::OrganicMatter => ("OM", label),
        P::OrganicCarbon => ("TOC", label),
        P::TotalN => ("TN", label),
        P::NitrateN => ("NO3-N", label),
        P::AmmoniumN => ("NH4-N", label),
        P::Phosphorus => ("P", label),
        P::Potassium => ("K", label),
        P::Calcium => ("Ca", label),
        P::Magnesium => ("Mg", label),
        P::Sodium => ("Na", label),
        P::Sulfur => ("S", label),
        P::Boron => ("B", label),
        P::Zinc => ("Zn", label),
        P::Manganese => ("Mn", label),
        P::Copper => ("Cu", label),
        P::Iron => ("Fe", label),
        P::Aluminum => ("Al", label),
        P::Molybdenum => ("Mo", label),
        P::Chloride => ("Cl", label),
        P::Cec => ("CEC", "CEC"),
        P::BaseSaturation => ("BS", label),
        P::CalciumSaturation => ("BS-Ca", label),
        P::MagnesiumSaturation => ("BS-Mg", label),
        P::PotassiumSaturation => ("BS-K", label),
        P::SodiumSaturation => ("BS-Na", "exchangeable sodium percentage"),
        P::AciditySaturation => ("BS-H", "H saturation"),
        P::Ec => ("EC", "EC"),
        P::Sar => ("SAR", label),
        P::FreeLime => ("CaCO3", label),
        P::Sand => ("Sand", label),
        P::Silt => ("Silt", label),
        P::Clay => ("Clay", label),
        P::BulkDensity => ("Bulk density", label),
        P::NitrogenRelease => ("ENR", label),
        P::Pbi => ("PBI", label),
        P::RemainingP => ("P-rem", label),
        P::Lead => ("Pb", label),
        P::Arsenic => ("As", label),
        P::Cadmium => ("Cd", label),
    }
}

/// The code of a method in Modus, where our short table has one. The finish
/// (`.04` ICP, `.01.03` colour) is the usual one for the extract.
/// Source: codes met in the open example files (opened).
fn test_id(property: Property, method: Method) -> Option<&'static str> {
    use Method as M;
    use Property as P;
    Some(match (property, method) {
        (P::Ph, M::Water1To1) => "S-PH-1:1.02.07",
        (P::Ph, M::Water1To2) => "S-PH-1:2.02.07",
        (P::Ph | P::SaltPh, M::CaCl2) => "S-PH-1:1.02.08",
        (P::Ph, M::SaturatedPaste) => "S-PH-SP.02",
        (P::BufferPh, M::SikoraBuffer) => "S-BPH-SIK1.02",
        (P::BufferPh, M::SmpBuffer) => "S-BPH-SMPB.02",
        (P::BufferPh, M::WoodruffBuffer) => "S-BPH-WB.02",
        (P::BufferPh, M::MehlichBuffer) => "S-BPH-MEB.02",
        (P::BufferPh, M::AdamsEvansBuffer) => "S-BPH-AEB.02",
        (P::OrganicMatter, M::LossOnIgnition) => "S-SOM-LOI.15",
        (P::OrganicMatter, M::WalkleyBlack) => "S-SOM-WB.01.09",
        (P::NitrateN, M::Kcl) => "S-NO3-1:5.01.01",
        (P::AmmoniumN, M::Kcl) => "S-NH4-KCL.01.05",
        (P::Phosphorus, M::Mehlich3) => "S-P-M3.04",
        (P::Phosphorus, M::Mehlich3Colorimetric) => "S-P-M3.01.03",
        (P::Phosphorus, M::Mehlich1) => "S-P-M1.04",
        (P::Phosphorus, M::BrayP1) => "S-P-B1-1:10.01.03",
        (P::Phosphorus, M::BrayP2) => "S-P-B2-1:10.01.03",
        (P::Phosphorus, M::Olsen) => "S-P-BIC.01.03",
        (P::Phosphorus, M::Morgan) => "S-P-MOR.01.03",
        (P::Phosphorus, M::ModifiedMorgan) => "S-P-MMOR.01.03",
        (P::Potassium, M::AmmoniumAcetate) => "S-K-NH4AC.05",
        (P::Calcium, M::AmmoniumAcetate) => "S-CA-NH4AC.05",
        (P::Magnesium, M::AmmoniumAcetate) => "S-MG-NH4AC.05",
        (P::Sodium, M::AmmoniumAcetate) => "S-NA-NH4AC.05",
        (P::Sulfur, M::AmmoniumAcetate) => "S-S-NH4AC.05",
        (P::Potassium, M::Mehlich3) => "S-K-M3.05",
        (P::Calcium, M::Mehlich3) => "S-CA-M3.05",
        (P::Magnesium, M::Mehlich3) => "S-MG-M3.05",
        (P::Sulfur, M::Mehlich3) => "S-S-M3.05",
        (P::Zinc, M::Mehlich3) => "S-ZN-M3.05",
        (P::Boron, M::Mehlich3) => "S-B-M3.04",
        (P::Potassium, M::Mehlich1) => "S-K-M1.04",
        (P::Calcium, M::Mehlich1) => "S-CA-M1.05",
        (P::Zinc, M::Dtpa) => "S-ZN-DTPA.05",
        (P::Manganese, M::Dtpa) => "S-MN-DTPA.05",
        (P::Iron, M::Dtpa) => "S-FE-DTPA.05",
        (P::Copper, M::Dtpa) => "S-CU-DTPA.05",
        (P::Boron, M::HotWater) => "S-B-HW.05",
        (P::Lead, M::TotalAcid) => "S-PB-EPA3050.04",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::soil::{PlantGroup, Texture};
    use crate::{Case, interpret, judged_readings, report};

    fn read(text: &str) -> (Report, Outcome) {
        let report = report::read(&report::open(text.as_bytes()).unwrap()).unwrap();
        let case = Case { report: report.clone(), ..Case::default() };
        let outcome = interpret(&case);
        (report, outcome)
    }

    /// What of each reading must come back.
    fn all(outcome: &Outcome) -> Vec<String> {
        let mut found = Vec::new();
        for sample in &outcome.samples {
            for r in &sample.readings {
                let value = r.value.map(|v| significant(v, DIGITS));
                let name = &sample.name;
                found.push(format!(
                    "{name}: {:?} {value:?} {:?} {:?} {:?}",
                    r.property, r.bound, r.unit, r.method
                ));
            }
        }
        found
    }

    const REPORT: &str = "Sample ID\tDepth (in)\tpH (1:1)\tBuffer pH (Sikora)\tOM % (LOI)\tP Mehlich-3 ppm\tK Mehlich-3 ppm\tCa NH4OAc meq/100 g\tCEC meq/100g\tZn DTPA ppm\tH %\tEC 1:2 dS/m\n\
        Bed, \"north\"\t0-6\t6.2\t6.8\t3.4\t18\t142\t7.2\t11.4\t1.8\t17.8\t0.35\n\
        South\t0-6\t5.6\t6.5\t2.1\t<1\t88\t4.5\t9.7\t0.9\t40.8\t0.2\n";

    #[test]
    fn csv_is_read_back_as_the_same_readings() {
        let (report, outcome) = read(REPORT);
        let text = csv(&report, &outcome, REPORT);
        assert!(text.contains(",line 2\r\n"), "{text}");
        assert!(text.starts_with("\u{FEFF}Sample,Depth"));
        assert!(text.contains("\"Bed, \"\"north\"\"\",0-15.24 cm,pH,6.2,,"), "{text}");
        assert!(text.contains(",< 1,mg/kg,Mehlich-3,"), "{text}");
        let (again, same) = read(&text);
        assert_eq!(all(&same), all(&outcome), "{text}");
        assert_eq!(again.samples[1].depth_cm, report.samples[1].depth_cm);
    }

    #[test]
    fn readings_are_judged_alike_with_and_without_a_plan() {
        let (report, plain) = read(REPORT);
        let first = report.samples[0].readings[0].clone();
        let mut case = Case { report, ..Case::default() };
        let alike = |case: &Case| {
            let whole = interpret(case);
            for (at, whole) in whole.samples.iter().enumerate() {
                assert_eq!(judged_readings(case, at), whole.readings);
            }
            whole
        };
        alike(&case);
        case.plants = Some(PlantGroup::AcidLovers);
        case.bed.texture = Some(Texture::Sand);
        case.reading.extractants = vec![Method::Mehlich3];
        case.reading.put_right(&first, false, |c| c.result = Some("4.4".into()));
        case.reading.put_right(&first, true, |c| c.method = Some(Method::Water1To2));
        assert_ne!(alike(&case).samples[0].readings, plain.samples[0].readings);
    }

    #[test]
    fn no_cell_of_a_csv_is_a_formula() {
        let (mut report, outcome) = read("pH 6.2\nPhosphorus (Olsen) 18 ppm\n");
        for name in ["=1+1", "+1", "-1", "@x"] {
            report.samples[0].name = name.into();
            assert!(csv(&report, &outcome, "").contains(&format!("\r\n'{name},")), "{name}");
        }
    }

    #[test]
    fn every_property_is_read_back_by_its_names() {
        for property in Property::ALL {
            let (modus, table) = element(property);
            let unit = property.unit().symbol();
            let value = if property == Property::BulkDensity { 1.4 } else { 5.5 };
            let names =
                if property == Property::Molybdenum { ["Mo", table] } else { [modus, table] };
            for name in names {
                let text = format!(
                    "Sample\tProperty\tResult\tUnit\nA\tpH\t6.2\t\nA\t{name}\t{value}\t{unit}\n"
                );
                let (_, outcome) = read(&text);
                let found: Vec<Property> =
                    outcome.samples[0].readings.iter().map(|r| r.property).collect();
                assert!(found.contains(&property), "{name}: {found:?}");
            }
        }
    }

    #[test]
    fn what_modus_cannot_say_stands_in_the_comments() {
        let (report, outcome) = read(REPORT);
        let json = modus(&report, &outcome, "00000000-0000-4000-8000-000000000000", "2026-03-02");
        let json: serde_json::Value = serde_json::from_str(&json).unwrap();
        let event = &json["Events"][0];
        assert_eq!(event["EventMetaData"]["EventDate"], "2026-03-02");
        let samples = &event["EventSamples"]["Soil"]["SoilSamples"];
        assert_eq!(samples[0]["SampleMetaData"]["SampleNumber"], "Bed, \"north\"");
        let results = samples[1]["Depths"][0]["NutrientResults"].as_array().unwrap();
        assert!(results.iter().all(|r| r["Value"].is_number() && r["Element"] != "P"));
        assert!(samples[1]["Comments"].as_str().unwrap().contains("P: < 1 mg/kg (Mehlich-3)"));
    }
}
