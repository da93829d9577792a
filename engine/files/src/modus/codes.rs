//! What a result's code and unit say, in the words a report prints.
//!
//! A short table of our own: the extractants and buffers that soil tests name.
//! It is no copy of the standard's list of methods. A code outside it keeps the
//! name that stands within the code, so that the method is asked for.
//! Source: the grammar of the codes as seen in the open example files of
//! `tests/open-data/modus_CC0` and in the Modus terms (opened); the meaning of
//! each abbreviation is common practice.

/// The part of a code that names the extractant, and the words for it.
const EXTRACTS: &[(&str, &str)] = &[
    ("M3", "Mehlich-3"),
    ("M1", "Mehlich-1"),
    ("M2", "Mehlich-2"),
    ("B1", "Bray P1"),
    ("B2", "Bray P2"),
    ("BIC", "Olsen"),
    ("MOR", "Morgan"),
    ("MMOR", "modified Morgan"),
    ("NH4AC", "ammonium acetate"),
    ("DTPA", "DTPA"),
    // Not the plain DTPA extract, so not named after it.
    ("DTPA-SORB", "sorbitol extract"),
    ("HCL", "hydrochloric acid"),
    ("HW", "hot water"),
    ("KCL", "KCl"),
    ("LANC", "Lancaster"),
    ("CALD", "Colwell"),
    ("LACTATE", "lactate"),
    ("KEL", "Kelowna"),
    ("MKEL", "modified Kelowna"),
    ("EPA3050", "EPA 3050"),
];

const BUFFERS: &[(&str, &str)] = &[
    ("SIK1", "Sikora buffer"),
    ("SIK2", "Sikora-2 buffer"),
    ("SMPB", "SMP buffer"),
    ("MEB", "Mehlich buffer"),
    ("AEB", "Adams-Evans buffer"),
    ("WB", "Woodruff buffer"),
];

const ORGANIC: &[(&str, &str)] =
    &[("LOI", "loss on ignition"), ("WB", "Walkley-Black"), ("DUMAS", "combustion")];

const SUSPENSIONS: &[(&str, &str)] = &[
    ("1:1", "1:1 water"),
    ("1:2", "1:2 water"),
    ("1:2.5", "1:2.5 water"),
    ("1:5", "1:5 water"),
    ("1:5H2O", "1:5 water"),
    ("SP", "saturated paste"),
];

/// A first-generation code taken apart: `S-P-M3.01.03`.
struct Code {
    analyte: String,
    extract: String,
    /// The last numbers, which tell how the extract was read.
    finish: String,
}

impl Code {
    fn of(code: &str) -> Option<Code> {
        let code = code.to_ascii_uppercase();
        let (analyte, rest) = match code.strip_prefix("S-")?.split_once('-') {
            Some((analyte, rest)) => (analyte, rest),
            None => (code.strip_prefix("S-")?, ""),
        };
        // The numbers at the end are parted by points; `1:2.5` has a point of its own.
        let mut cut = rest.len();
        while let Some(at) = rest[..cut].rfind('.')
            && rest[at + 1..cut].len() == 2
            && rest[at + 1..cut].bytes().all(|b| b.is_ascii_digit())
        {
            cut = at;
        }
        let analyte = analyte.split('.').next().unwrap_or("");
        Some(Code {
            analyte: analyte.to_string(),
            extract: rest[..cut].to_string(),
            finish: rest[cut..].to_string(),
        })
    }
}

fn words(table: &[(&str, &'static str)], extract: &str) -> Option<&'static str> {
    table.iter().find(|(token, _)| *token == extract).map(|(_, words)| *words)
}

/// The method that a code names, in the words of a report; empty where it names none.
pub(super) fn method(code: &str) -> String {
    let Some(Code { analyte, extract, finish }) = Code::of(code) else { return String::new() };
    let known = match analyte.as_str() {
        "PH" if finish.ends_with(".08") => Some("CaCl2"),
        "PH" | "EC" | "SS" => words(SUSPENSIONS, &extract),
        "BPH" => words(BUFFERS, &extract),
        "SOM" | "OM" | "SOC" | "OC" | "TOC" => words(ORGANIC, &extract),
        // The ratio is that of the extract in potassium chloride.
        "NO3" | "NH4" if extract.starts_with("1:") => Some("KCl"),
        "BS" => Some(""),
        // Phosphorus read by colour is another number than by ICP.
        "P" if extract == "M3" && finish == ".01.03" => Some("Mehlich-3 colorimetric"),
        // `B1-1:10`: the ratio comes after.
        _ => words(EXTRACTS, &extract).or_else(|| words(EXTRACTS, extract.split("-1:").next()?)),
    };
    match known {
        Some(words) => words.to_string(),
        // A bare ratio names no extractant.
        None if extract.contains(':') => String::new(),
        None => extract,
    }
}

/// The name of the property, from the element a result names and its code.
pub(super) fn property(element: &str, code: &str) -> String {
    let upper = element.to_ascii_uppercase();
    let v1 = Code::of(code);
    let by_code = v1.as_ref().map_or("", |c| c.analyte.as_str());
    match (upper.as_str(), by_code) {
        ("PH", "PH") if v1.as_ref().is_some_and(|c| c.finish.ends_with(".08")) => "salt pH".into(),
        // The codes count both as nitrogen.
        ("NO3" | "NITRATE", "NO3") => "NO3-N".into(),
        ("NH4" | "AMMONIUM", "NH4") => "NH4-N".into(),
        ("P", "P") | ("K", "K") if v1.as_ref().is_some_and(|c| c.extract == "NCINDX") => {
            format!("{element} index")
        }
        ("XACIDT" | "ACIDT", _) => "exchangeable acidity".into(),
        ("", analyte) if !analyte.is_empty() => analyte.into(),
        // `L_MODV2_SOIL_P_033`
        ("", _) => code.split('_').nth(3).unwrap_or("").into(),
        _ => element.into(),
    }
}

/// A unit in the spelling of reports. UCUM writes `[lb_av]/[acr_us]`, the
/// second generation `mg1kg-1`.
/// Source: UCUM (opened in the slim schema's examples), unit codes of the Modus
/// terms (opened).
pub(super) fn unit(said: &str) -> &str {
    const SPELLINGS: &[(&str, &str)] = &[
        ("none", ""),
        ("unitless", ""),
        ("1", ""),
        ("{ratio}", ""),
        ("ratio", ""),
        ("[ph]", ""),
        ("ph", ""),
        ("prcnt", "%"),
        ("[ppm]", "ppm"),
        ("mg1kg-1", "mg/kg"),
        ("mg1l-1", "mg/L"),
        ("g1kg-1", "g/kg"),
        ("meq1hg-1", "meq/100 g"),
        ("meq/(100.g)", "meq/100 g"),
        ("meq/100.g", "meq/100 g"),
        ("meq/hg", "meq/100 g"),
        ("cmol1kg-1", "cmol/kg"),
        ("ds1m-1", "dS/m"),
        ("mmho1cm-1", "mmho/cm"),
        ("g1[cm3]-1", "g/cm3"),
        ("[lb_av]/[acr_us]", "lb/acre"),
        ("[lb_av]/[acr_br]", "lb/acre"),
        ("lb1ac-1", "lb/acre"),
        ("[ston_av]/[acr_us]", "ton/acre"),
        ("kg/har", "kg/ha"),
        ("kg1ha-1", "kg/ha"),
        ("[in_i]", "in"),
        ("[in_us]", "in"),
        ("in_i", "in"),
    ];
    let found = SPELLINGS.iter().find(|(spelling, _)| spelling.eq_ignore_ascii_case(said));
    found.map_or(said, |(_, plain)| plain)
}
