//! Open soil data, read as a person's file would be, against the columns those
//! data carry. `open-data/README.md` says where they come from.

use emberloam_engine::chemistry::{Derived, work_out};
use emberloam_engine::outcome::{JudgedReading, SampleOutcome};
use emberloam_engine::quantity::{Context, Unit, convert};
use emberloam_engine::question::QuestionId;
use emberloam_engine::ranges::{Finding, Level, Setting, reaction_class};
use emberloam_engine::soil::{Amount, Measure, Method, Property, Soil, Texture};
use emberloam_engine::{Case, Outcome, interpret, report};

use crate::close;

/// A table of numbers as the `csv` crate reads it: the independent reading.
struct Table {
    heads: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Table {
    fn of(name: &str) -> Table {
        let path = format!("{}/open-data/{name}", env!("CARGO_MANIFEST_DIR"));
        let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
        let heads = reader.headers().unwrap().iter().map(str::to_string).collect();
        let rows =
            reader.records().map(|r| r.unwrap().iter().map(str::to_string).collect()).collect();
        Table { heads, rows }
    }

    fn text(&self, row: usize, head: &str) -> &str {
        let at = self.heads.iter().position(|h| h == head).unwrap_or_else(|| panic!("no {head}"));
        &self.rows[row][at]
    }

    fn number(&self, row: usize, head: &str) -> Option<f64> {
        self.text(row, head).parse().ok()
    }

    /// The same table with headings that say what the data's own description
    /// says: `(heading in the file, heading with its unit)`. Columns that are
    /// not named are left out.
    fn with_heads(&self, heads: &[(&str, &str)]) -> String {
        let mut text = heads.iter().map(|(_, new)| *new).collect::<Vec<_>>().join(",");
        for row in 0..self.rows.len() {
            text.push('\n');
            let cells: Vec<&str> = heads.iter().map(|(old, _)| self.text(row, old)).collect();
            text.push_str(&cells.join(","));
        }
        text
    }
}

/// The outcome of a text, with these extractants answered.
fn outcome_of(text: &[u8], extractants: &[Method]) -> Outcome {
    let mut case = Case {
        report: report::open(text).and_then(|grid| report::read(&grid)).unwrap(),
        ..Case::default()
    };
    case.reading.extractants = extractants.to_vec();
    interpret(&case)
}

fn reading(sample: &SampleOutcome, property: Property) -> Option<&JudgedReading> {
    sample.readings.iter().find(|r| r.property == property)
}

fn figure(sample: &SampleOutcome, name: &str) -> Option<[f64; 3]> {
    let band = sample.derived.iter().find(|f| f.name == name)?.band;
    Some([band.low, band.likely, band.high])
}

const SOIL_HEALTH: &str = "soil_health_lab_CC0/anonymized_wide.csv";

fn soil_health() -> (Table, Outcome) {
    let path = format!("{}/open-data/{SOIL_HEALTH}", env!("CARGO_MANIFEST_DIR"));
    let outcome = outcome_of(&std::fs::read(path).unwrap(), &[Method::AmmoniumAcetate]);
    let table = Table::of(SOIL_HEALTH);
    assert_eq!((table.rows.len(), outcome.samples.len()), (30, 30));
    (table, outcome)
}

/// Source: soil-health data of a university laboratory, CC0 (opened): calcium,
/// magnesium and sodium both as cmol(c)/kg and as mg/kg, in 12 samples. The
/// laboratory multiplies by 200, 121 and 230; the exact masses are within half
/// a per cent of those.
#[test]
fn charge_and_mass_of_one_cation_in_two_columns() {
    let table = Table::of(SOIL_HEALTH);
    let mut compared = 0;
    for (name, property) in
        [("Ca", Property::Calcium), ("Mg", Property::Magnesium), ("Na", Property::Sodium)]
    {
        let context = Context::NONE.with_charge(property.mg_per_mmolc());
        for row in 0..table.rows.len() {
            let Some(charge) = table.number(row, &format!("{name}_cmolc.kg")) else { continue };
            let mass = table.number(row, &format!("{name}_mg.kg")).unwrap();
            let ours = convert(charge, Unit::MeqPer100g, Unit::MgPerKg, &context).unwrap();
            close(ours / mass, 1.0, 0.005);
            compared += 1;
        }
    }
    assert_eq!(compared, 36);
}

/// Source: the same data (opened): nitrate-N and mineralisable N as mg/kg and
/// as lb/acre beside a bulk density. The depth is not stated; one depth, 12
/// inches, gives 34 of 36 within half a per cent. The two that are 11 % off
/// are of one sample, whose lb/acre belong to a density of 1.30, not to the
/// 1.16 that is printed. Densities of 50 and more are in another unit, and
/// are left out.
#[test]
fn pounds_an_acre_of_a_foot_of_soil_at_its_own_density() {
    let table = Table::of(SOIL_HEALTH);
    let (mut agree, mut apart) = (0, Vec::new());
    for name in ["nitrateN", "pmN"] {
        for row in 0..table.rows.len() {
            let (Some(mass), Some(area), Some(density)) = (
                table.number(row, &format!("{name}_mg.kg")).filter(|v| *v >= 1.0),
                table.number(row, &format!("{name}_lbs.ac")),
                table.number(row, "bd_g.cm3").filter(|d| *d < 2.65),
            ) else {
                continue;
            };
            let slice = Context::slice(12.0 * 2.54, density);
            let ours = convert(mass, Unit::MgPerKg, Unit::LbPerAcre, &slice).unwrap();
            if (ours / area - 1.0).abs() <= 0.005 {
                agree += 1;
            } else {
                apart.push(table.text(row, "sampleId"));
            }
        }
    }
    assert_eq!((agree, apart.as_slice()), (34, &["B020201", "B020201"][..]));
}

/// Source: the same data (opened): sand, silt and clay beside a texture class,
/// in all 30 samples. `Silty Loam` is the laboratory's spelling of silt loam.
#[test]
fn texture_classes_of_a_laboratory() {
    let (table, outcome) = soil_health();
    let mut spelt = 0;
    for (row, sample) in outcome.samples.iter().enumerate() {
        let part = |p| reading(sample, p).unwrap().value.unwrap();
        let (sand, silt, clay) = (part(Property::Sand), part(Property::Silt), part(Property::Clay));
        let class = Texture::from_separates(sand, silt, clay);
        let printed = table.text(row, "texture");
        let text = format!("Texture,pH\n{printed},6.5");
        let read = report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).unwrap();
        assert!(class.is_some());
        assert_eq!(read.samples[0].texture, class, "{}: {printed}", sample.name);
        spelt += usize::from(printed.contains("Silty Loam"));
    }
    assert_eq!(spelt, 2);
}

/// Source: the same data (opened): organic matter beside organic carbon in 12
/// samples, organic matter beside total carbon in 6 more. Of the 12, eight
/// have organic matter within 5 % of our band (carbon × 1.724 to 2.0). The
/// four others all hold carbonates, which loss on ignition and the carbon by
/// difference both blur. In the 6 others the laboratory itself multiplied by
/// 1.72, our low bound.
#[test]
fn organic_matter_of_a_laboratory_beside_its_carbon() {
    let table = Table::of(SOIL_HEALTH);
    let band = |carbon: f64| {
        let measure = Measure {
            property: Property::OrganicCarbon,
            amount: Amount::Exactly(carbon),
            unit: Unit::Percent,
            method: None,
        };
        let chemistry = work_out(&Soil { measures: vec![measure] }, &Setting::default());
        chemistry.get(Derived::OrganicMatter).unwrap().band
    };
    let (mut within, mut multiplied) = (0, 0);
    for row in 0..table.rows.len() {
        let Some(printed) = table.number(row, "OM_%") else { continue };
        if let Some(carbon) = table.number(row, "TOC_%") {
            let ours = band(carbon);
            if (0.95 * ours.low..=1.05 * ours.high).contains(&printed) {
                within += 1;
            } else {
                let lime = table.number(row, "inorganicC_%");
                assert!(lime.is_some_and(|c| c > 0.0), "row {row}: {printed} and {ours:?}");
            }
        } else {
            let ours = band(table.number(row, "totalC_%").unwrap());
            close(printed / ours.low, 1.0, 0.01);
            multiplied += 1;
        }
    }
    assert_eq!((within, multiplied), (8, 6));
}

/// Source: the same data (opened): CEC measured by the laboratory beside the
/// cations. The extract isn't stated; it is answered as ammonium acetate. Of
/// 18 samples with both,
/// - 15 have the measured CEC within 10 % of the band of our sum;
/// - 2 have bases that alone exceed it by 29 and 38 %: both are salty
///   (over 1 dS/m), so dissolved salts are summed as if they were held;
/// - 1 (pH 7.5) was measured 19 % above the sum of its cations.
///
/// In the eight acid samples the likely value is above the measured one, by 9
/// to 53 % and 22 % on average, though the bases alone exceed it in five of them:
/// with no buffer pH likely stands between this laboratory, which finds next to
/// no acidity, and one that adds it up with a buffer (see `chemistry`), which
/// finds 23 % more than likely. The band is what may be trusted.
#[test]
fn measured_capacity_beside_our_sum() {
    let (table, outcome) = soil_health();
    let (mut within, mut salty, mut others) = (0, 0, Vec::new());
    let mut acid = Vec::new();
    for (row, sample) in outcome.samples.iter().enumerate().take(18) {
        let printed = table.number(row, "CEC_meq.100g").unwrap();
        let [low, likely, high] = figure(sample, "cec-by-summation").unwrap();
        if (low / 1.1..=high * 1.1).contains(&printed) {
            within += 1;
        } else if printed < low && table.number(row, "EC_mmhos.cm").unwrap() > 1.0 {
            salty += 1;
        } else {
            others.push(sample.name.as_str());
        }
        if table.number(row, "pH").unwrap() < 7.0 {
            acid.push(likely / printed);
        }
    }
    let mean = (acid.iter().map(|ratio| ratio.ln()).sum::<f64>() / acid.len() as f64).exp();
    assert!(acid.iter().all(|ratio| (1.08..=1.54).contains(ratio)), "{acid:?}");
    close(mean, 1.22, 0.01);
    assert_eq!((within, salty, others.as_slice()), (15, 2, &["D040404"][..]));
}

/// Source: the same data (opened). Shares of the exchange against arithmetic
/// on the data's own columns: cation (meq) over the measured CEC, or over the
/// cations' sum where that is larger. The data's 200, 121, 390 and 230 mg/meq
/// are within half a per cent of the exact masses, so the shares are too.
#[test]
fn shares_of_the_measured_capacity() {
    let (table, outcome) = soil_health();
    let mut compared = 0;
    for (row, sample) in outcome.samples.iter().enumerate().take(18) {
        let number = |head| table.number(row, head).unwrap();
        let parts = [
            ("calcium-saturation", number("Ca_mg.kg") / 200.0),
            ("magnesium-saturation", number("Mg_mg.kg") / 121.0),
            ("potassium-saturation", number("K_mg.kg") / 390.0),
            ("sodium-saturation", number("Na_mg.kg") / 230.0),
        ];
        let bases: f64 = parts.iter().map(|(_, part)| part).sum();
        let whole = bases.max(number("CEC_meq.100g"));
        for (name, part) in parts {
            let [_, likely, _] = figure(sample, name).unwrap();
            close(likely / (100.0 * part / whole), 1.0, 0.01);
            compared += 1;
        }
        let [_, likely, _] = figure(sample, "base-saturation").unwrap();
        close(likely, 100.0 * bases / whole, 1.0);
    }
    assert_eq!(compared, 72);
}

/// Source: the same data (opened). Twelve samples carry columns that don't
/// hold what their headings say. In six the CEC column holds the sodium in
/// meq, rounded; in six the columns in mg/kg hold meq/100 g (read so, they add
/// up to the measured CEC within 13 %, but for one). No soil has such a CEC or so
/// little calcium: the engine refuses to use the six capacities, and calcium
/// in the other six, the highest of which is 15.9 "mg/kg". What the laboratory
/// measured then stays the likely capacity.
#[test]
fn columns_that_hold_another_number_are_refused() {
    let (table, outcome) = soil_health();
    let (mut capacities, mut cations, mut near) = (0, 0, 0);
    for (row, sample) in outcome.samples.iter().enumerate() {
        let number = |head| table.number(row, head);
        let printed = number("CEC_meq.100g").unwrap();
        let refused = |p| {
            let reading = reading(sample, p).unwrap();
            // In words, or by leaving its unit open and asking for it.
            let mut told = reading.finding.not_judged.iter().chain(&reading.notes);
            reading.finding.level.is_none() && told.any(|why| why.contains("can hardly be"))
        };
        if printed < 1.0 {
            let sodium = number("Na_mg.kg").unwrap() / 230.0;
            close(printed, sodium, 0.05 + 1e-9);
            assert!(refused(Property::Cec), "{}", sample.name);
            assert!(figure(sample, "cec").unwrap()[0] > 10.0, "{}", sample.name);
            capacities += 1;
        } else if number("Ca_mg.kg").unwrap() < 100.0 {
            let bases = number("Ca_mg.kg").unwrap()
                + number("Mg_mg.kg").unwrap()
                + number("Na_mg.kg").unwrap()
                + number("K_mg.kg").unwrap() / 391.0;
            near += usize::from((bases / printed - 1.0).abs() < 0.13);
            assert_eq!(figure(sample, "cec").unwrap()[1], printed);
            assert!(refused(Property::Calcium), "{}", sample.name);
            assert!(figure(sample, "calcium-saturation").is_none(), "{}", sample.name);
            cations += 1;
        } else {
            assert!(!refused(Property::Cec) && !refused(Property::Calcium), "{}", sample.name);
        }
    }
    assert_eq!((capacities, cations, near), (6, 6, 5));
}

/// Source: `Soils` of the R package carData (opened): 48 samples of Horton,
/// Russell and Moore 1968 with Ca, Mg, K and Na in me/100 g, pH 3.7 to 6.7. The
/// extract isn't stated; it is answered as ammonium acetate.
///
/// The sum of the four columns is the low bound of our capacity (no acidity
/// counted); shares of the bases are as the columns'. Conductivity carries
/// no unit, so it is asked for and not judged; total P is not what an extract
/// finds, and is left unread. What salts there are come with sodium: its
/// share of the bases follows conductivity (r > 0.8).
#[test]
fn exchangeable_cations_of_a_randomised_survey() {
    let table = Table::of("r_packages_GPL/carData_Soils.csv");
    let text = table.with_heads(&[
        ("Gp", "Sample"),
        ("pH", "pH"),
        ("N", "Total N (%)"),
        ("Dens", "Bulk density (g/cm3)"),
        ("P", "Total P (ppm)"),
        ("Ca", "Ca (meq/100 g)"),
        ("Mg", "Mg (meq/100 g)"),
        ("K", "K (meq/100 g)"),
        ("Na", "Na (meq/100 g)"),
        ("Conduc", "Conductivity"),
    ]);
    let outcome = outcome_of(text.as_bytes(), &[Method::AmmoniumAcetate]);
    assert_eq!(outcome.samples.len(), 48);
    assert!(outcome.unread.iter().any(|u| u.text.contains("Total P")));
    let mut pairs = Vec::new();
    for (row, sample) in outcome.samples.iter().enumerate() {
        let number = |head| table.number(row, head).unwrap();
        assert_eq!(reading(sample, Property::TotalN).unwrap().value, Some(number("N")));
        assert_eq!(reading(sample, Property::BulkDensity).unwrap().value, Some(number("Dens")));
        let salts = reading(sample, Property::Ec).unwrap();
        assert!(salts.unit.is_none() && salts.finding.level.is_none());
        assert!(reading(sample, Property::Phosphorus).is_none());

        let bases: f64 = ["Ca", "Mg", "K", "Na"].map(number).iter().sum();
        let [low, likely, _] = figure(sample, "cec").unwrap();
        close(low, bases, 1e-6);
        let of_bases = |name| {
            let part = figure(sample, name).unwrap()[1] / 100.0 * likely;
            part / bases
        };
        for (head, name) in [
            ("Ca", "calcium-saturation"),
            ("Mg", "magnesium-saturation"),
            ("K", "potassium-saturation"),
            ("Na", "sodium-saturation"),
        ] {
            close(of_bases(name), number(head) / bases, 1e-6);
        }
        pairs.push((of_bases("sodium-saturation"), number("Conduc")));
    }
    let r = correlation(&pairs);
    assert!(r > 0.8, "{r}");
}

/// Pearson's r.
fn correlation(pairs: &[(f64, f64)]) -> f64 {
    let n = pairs.len() as f64;
    let (x, y) = pairs.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / n, y + p.1 / n));
    let [xy, xx, yy] = pairs.iter().fold([0.0; 3], |[xy, xx, yy], p| {
        let (dx, dy) = (p.0 - x, p.1 - y);
        [xy + dx * dy, xx + dx * dx, yy + dy * dy]
    });
    xy / (xx * yy).sqrt()
}

/// Source: `varechem` of the R package vegan (opened): humus of 24 pine
/// forests, pH 2.7 to 3.6. It states no units and no extract: nothing but pH
/// is judged, unit and extract are asked for, and "N" alone is left unread.
#[test]
fn a_table_without_units_gives_no_level_but_for_ph() {
    let table = Table::of("r_packages_GPL/vegan_varechem.csv");
    let path =
        format!("{}/open-data/r_packages_GPL/vegan_varechem.csv", env!("CARGO_MANIFEST_DIR"));
    let outcome = outcome_of(&std::fs::read(path).unwrap(), &[]);
    assert_eq!(outcome.samples.len(), 24);
    assert!(outcome.unread.iter().any(|u| u.text == "N"));
    for (row, sample) in outcome.samples.iter().enumerate() {
        assert_eq!(sample.name, table.text(row, "site"));
        assert_eq!(sample.readings.len(), 11, "{}", sample.name);
        for reading in &sample.readings {
            let judged = reading.finding.level.is_some();
            assert_eq!(judged, reading.property == Property::Ph, "{:?}", reading.property);
        }
        let ph = reading(sample, Property::Ph).unwrap();
        let class = if table.number(row, "pH").unwrap() < 3.5 { "ultra" } else { "extremely" };
        let word = ph.finding.range.as_ref().unwrap().word;
        assert!(ph.finding.level.is_some_and(Level::is_short) && word.starts_with(class), "{word}");
        for id in [QuestionId::Extractant, QuestionId::NutrientUnit] {
            assert!(sample.questions.iter().any(|q| q.id == id), "{id:?}");
        }
        assert!(sample.derived.is_empty(), "{:?}", sample.derived);
    }
}

/// Source: `meuse` of the R package sp (opened): total metals in 155 topsoils of
/// a polluted flood plain, organic matter in 153. Lead over 200 mg/kg is over the US screening
/// level for homes in as many samples as the column says; total copper and
/// zinc are not what plants can reach, and get no level.
#[test]
fn total_metals_of_a_flood_plain() {
    let table = Table::of("r_packages_GPL/sp_meuse.csv");
    let text = table.with_heads(&[
        ("cadmium", "Total cadmium (mg/kg)"),
        ("copper", "Total copper (mg/kg)"),
        ("lead", "Total lead (mg/kg)"),
        ("zinc", "Total zinc (mg/kg)"),
        ("om", "Organic matter (%)"),
    ]);
    let outcome = outcome_of(text.as_bytes(), &[Method::Dtpa]);
    assert_eq!(outcome.samples.len(), 155);
    let mut levels = [0; 3];
    let mut organic = 0;
    for (row, sample) in outcome.samples.iter().enumerate() {
        let lead = table.number(row, "lead").unwrap();
        let finding = &reading(sample, Property::Lead).unwrap().finding;
        let (at, level) = match lead {
            v if v > 200.0 => (2, Some(Level::Excess)),
            v if v > 100.0 => (1, Some(Level::High)),
            _ => (0, None),
        };
        levels[at] += 1;
        assert_eq!(finding.level, level, "{lead}");
        for metal in [Property::Copper, Property::Zinc] {
            assert!(reading(sample, metal).is_none_or(|r| r.finding.level.is_none()));
        }
        let found = reading(sample, Property::OrganicMatter).and_then(|r| r.value);
        assert_eq!(found, table.number(row, "om"));
        organic += usize::from(found.is_some());
    }
    assert_eq!((levels, organic), ([70, 43, 42], 153));
}

/// Source: `oxford` of the R package gstat (opened): 126 topsoils on chalk and on
/// clay over chalk, with clay, organic matter, CEC, pH, Mg, K and P, the
/// extracts not stated. Nothing extracted is judged; the capacity is the
/// laboratory's; and magnesium and potassium never fill it.
#[test]
fn a_survey_of_chalk_downs() {
    let table = Table::of("r_packages_GPL/gstat_oxford.csv");
    let text = table.with_heads(&[
        ("PROFILE", "Sample"),
        ("PCLAY1", "Clay (%)"),
        ("MG1", "Magnesium (ppm)"),
        ("OM1", "Organic matter (%)"),
        ("CEC1", "CEC (meq/100 g)"),
        ("PH1", "pH"),
        ("PHOS1", "Phosphorus (ppm)"),
        ("POT1", "Potassium (ppm)"),
    ]);
    let outcome = outcome_of(text.as_bytes(), &[]);
    assert_eq!(outcome.samples.len(), 126);
    for (row, sample) in outcome.samples.iter().enumerate() {
        let printed = table.number(row, "CEC1").unwrap();
        assert_eq!(figure(sample, "cec"), Some([printed; 3]));
        let mut held = 0.0;
        for property in [Property::Magnesium, Property::Potassium] {
            let reading = reading(sample, property).unwrap();
            // Only where every usual extractant says so.
            let said = |f: &Finding| f.grounds.assumed.iter().any(|a| a.contains("is not known"));
            assert!(reading.finding.level.is_none() || said(&reading.finding), "{property:?}");
            let context = Context::NONE.with_charge(property.mg_per_mmolc());
            let (value, unit) = (reading.value.unwrap(), reading.unit.unwrap());
            held += convert(value, unit, Unit::MeqPer100g, &context).unwrap();
        }
        assert!(held < printed, "{}: {held} of {printed}", sample.name);
        let class = reaction_class(table.number(row, "PH1").unwrap());
        let word = reading(sample, Property::Ph).unwrap().finding.range.as_ref().unwrap().word;
        assert_eq!(word, class);
    }
}
