//! Reads what a report's answer says, a line a fact. Every word must be known: a slip of the
//! pen is an error, not a line that checks nothing.
//!
//! `region`, `plants`, `crop`, `bed` and `depth` say what the bed is; `sample` says of which
//! sample the lines below it speak. Each other line is something that must hold, and ends with
//! its source and grade:
//!
//! ```text
//! phosphorus: low # the guide's table, opened
//! lime: 2.5 to 3.8 ton/acre # its formula, from memory
//! phosphate: none # its rates, second-hand
//! hazard: salts # its classes, opened
//! ```

use emberloam_engine::case::BedKind;
use emberloam_engine::plan::Hazard;
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::region::Region;
use emberloam_engine::soil::{Level, PlantGroup, Property};

/// What is told of one report.
#[derive(Default)]
pub struct Told {
    /// The region that the report comes from; `None` where it could be from anywhere.
    pub region: Option<&'static Region>,
    /// The plants.
    pub plants: Option<PlantGroup>,
    /// The crop, in its guide's word.
    pub crop: Option<String>,
    /// How the bed is worked.
    pub bed: Option<BedKind>,
    /// How deep the guide reckons, cm.
    pub depth_cm: Option<f64>,
    /// What must hold.
    pub lines: Vec<Line>,
}

/// One thing that must hold.
pub struct Line {
    /// Of which sample; the first where none is named.
    pub sample: Option<String>,
    /// What it is about, as told.
    pub about: String,
    /// What is told of it, as told.
    pub told: String,
    /// The same, understood.
    pub must: Must,
}

/// What must hold.
pub enum Must {
    /// The level of a property.
    Stand(Property, Standing),
    /// What the plan brings.
    Bring(NeedKind, Option<Amount>),
    /// The plan can't say yet what to bring.
    Ask(NeedKind),
    /// A hazard that comes first.
    Beware(Hazard),
}

/// How a property must stand.
#[derive(Clone, Copy, PartialEq)]
pub enum Standing {
    /// At this level.
    At(Level),
    /// Below sufficient.
    Short,
    /// Not below sufficient.
    Enough,
    /// Above sufficient.
    Surplus,
    /// It must be asked for.
    Asked,
}

/// From how much to how much, kg/ha: lime as CaCO3, nutrients as N, P2O5 and K2O.
#[derive(Clone, Copy)]
pub struct Amount {
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
}

/// kg/ha in one of each unit that guides use. Source: legal definitions (derived).
const UNITS: [(&str, f64); 6] = [
    ("t/ha", 1000.0),
    ("kg/ha", 1.0),
    ("g/m2", 10.0),
    ("ton/acre", 2241.7),
    ("lb/acre", 1.1209),
    ("lb/1000 ft2", 48.824),
];

/// What it is told in, and how much of ours is in one of it. Source: atomic masses (derived).
const SUBSTANCES: [(&str, f64); 3] = [(" CaO", 1.785), (" P", 2.291), (" K", 1.205)];

/// What is brought, by the word that a told file has for it.
const NEEDS: [(&str, NeedKind); 10] = [
    ("lime", NeedKind::Lime),
    ("acid", NeedKind::Acid),
    ("phosphate", NeedKind::Phosphate),
    ("potash", NeedKind::Potash),
    ("nitrogen", NeedKind::Nitrogen),
    // As the salt.
    ("gypsum-for-sulfur", NeedKind::Sulfur),
    ("borax", NeedKind::Boron),
    ("zinc-sulfate", NeedKind::Zinc),
    ("manganese-sulfate", NeedKind::Manganese),
    ("copper-sulfate", NeedKind::Copper),
];

impl Told {
    /// All that a file tells, or the first thing wrong in it.
    pub fn read(text: &str) -> Result<Told, String> {
        let (mut told, mut sample, mut from) = (Told::default(), None, false);
        for line in text.lines().filter(|line| !line.is_empty()) {
            let why = |what: String| format!("“{line}”: {what}");
            let (about, rest) = line.split_once(": ").ok_or(why("what is it about?".into()))?;
            match about {
                "region" => from = true,
                "sample" => {
                    sample = Some(rest.to_string());
                    continue;
                }
                _ => {}
            }
            if told.set(about, rest).map_err(why)? {
                continue;
            }
            let (said, source) = rest.split_once(" # ").ok_or(why("no source".into()))?;
            if source.len() < 5 {
                return Err(why("the source says nothing".into()));
            }
            told.lines.push(Line {
                sample: sample.clone(),
                about: about.into(),
                told: said.into(),
                must: must(about, said).map_err(why)?,
            });
        }
        match (from, told.plants) {
            (true, Some(_)) => Ok(told),
            _ => Err("region and plants must be told".into()),
        }
    }

    /// Whether a line says what the bed is, and is noted.
    fn set(&mut self, about: &str, said: &str) -> Result<bool, String> {
        match about {
            "region" if said == "none" => {}
            "region" => self.region = Some(Region::of(said).ok_or("no such region")?),
            "plants" => self.plants = Some(known(said)?),
            "crop" => self.crop = Some(said.into()),
            "bed" => self.bed = Some(known(said)?),
            "depth" => {
                let depth = said.strip_suffix(" cm").and_then(|cm| cm.parse().ok());
                self.depth_cm = Some(depth.ok_or("no depth in cm")?);
            }
            _ => return Ok(false),
        }
        Ok(true)
    }
}

/// What a line asks for.
fn must(about: &str, said: &str) -> Result<Must, String> {
    if about == "hazard" {
        return Ok(Must::Beware(match said {
            "lead" => Hazard::Lead,
            "sodium" => Hazard::Sodium,
            "salts" => Hazard::Salts,
            _ => return Err("no such hazard".into()),
        }));
    }
    if let Some((_, kind)) = NEEDS.iter().find(|(word, _)| *word == about) {
        return Ok(match said {
            "asked" => Must::Ask(*kind),
            "none" => Must::Bring(*kind, None),
            amount => Must::Bring(*kind, Some(amount_of(amount).ok_or("no amount")?)),
        });
    }
    Ok(Must::Stand(
        known(about)?,
        match said {
            "short" => Standing::Short,
            "enough" => Standing::Enough,
            "surplus" => Standing::Surplus,
            "asked" => Standing::Asked,
            level => Standing::At(known(level)?),
        },
    ))
}

/// `2.5 to 3.8 ton/acre`, `50 kg/ha P`.
fn amount_of(words: &str) -> Option<Amount> {
    let substance = SUBSTANCES.iter().find(|(word, _)| words.ends_with(word));
    let (words, holds) = match substance {
        Some((word, holds)) => (words.strip_suffix(word)?, *holds),
        None => (words, 1.0),
    };
    let (unit, factor) = UNITS.iter().find(|(unit, _)| words.ends_with(unit))?;
    let numbers = words.strip_suffix(unit)?.trim();
    let (low, high) = numbers.split_once(" to ").unwrap_or((numbers, numbers));
    let kg = |number: &str| Some(number.parse::<f64>().ok()? * factor * holds);
    Some(Amount { low: kg(low)?, high: kg(high)? })
}

/// A kind by the name that JSON gives it.
fn known<T: serde::de::DeserializeOwned>(word: &str) -> Result<T, String> {
    serde_json::from_value(word.into()).map_err(|why| why.to_string())
}

/// Source: arithmetic.
#[test]
fn amounts_are_told_in_the_units_of_guides() {
    let both = |words| amount_of(words).map(|a| (a.low.round(), a.high.round()));
    assert_eq!(both("2.5 to 3.8 ton/acre"), Some((5604.0, 8518.0)));
    assert_eq!(both("100 lb/1000 ft2"), Some((4882.0, 4882.0)));
    assert_eq!(both("50 kg/ha P"), Some((115.0, 115.0)));
    assert_eq!(both("1000 kg/ha CaO"), Some((1785.0, 1785.0)));
    assert_eq!(both("some g/m2"), None);
}

#[test]
fn an_unknown_word_is_an_error() {
    let good = "region: uk\nplants: lawn\nbed: lawn\ndepth: 20 cm\nsample: A\n\
                ph: low # a source, opened\nlime: 2 t/ha # a source, opened\n\
                hazard: salts # a source, opened\n";
    assert!(Told::read(good).is_ok());
    for (word, other) in [
        ("uk", "ukk"),
        ("plants: lawn", "plants: law"),
        ("bed: lawn", "bed: law"),
        ("20 cm", "20 in"),
        ("ph: low", "pH: low"),
        ("low", "lowish"),
        ("2 t/ha", "2 t"),
        ("salts", "salt"),
        (" # a source, opened", ""),
        ("region: uk\n", ""),
    ] {
        assert!(Told::read(&good.replacen(word, other, 1)).is_err(), "{other}");
    }
}
