//! What the words of a soil report mean: properties, methods and the words
//! around them, each by its many spellings.
//!
//! Source: spellings seen in public sample reports, laboratory exports and
//! extension bulletins; the rest common practice, no source.

use std::sync::LazyLock;

use super::fold::{Gap, Word as Token};
use super::lexicon::Lexicon;
use crate::soil::{Method, Property};

/// In which form a name gives an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// As the element itself.
    Element,
    /// An ion by its name only: `nitrate` for nitrate-N or for NO3.
    Unsure,
    P2O5,
    K2O,
    CaO,
    MgO,
    No3,
    Nh4,
    So4,
    Po4,
    /// Phosphate by name: P2O5 or PO4, nobody knows.
    Phosphate,
}

/// A word that is no property and no method.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Word {
    /// Changes nothing: `available`, `soil`.
    Plain,
    /// Phosphorus read by colour, not by ICP.
    ByColour,
    /// A lime buffer, not named.
    Buffer,
    /// A lime test index: ten times the buffer pH.
    LimeIndex,
    /// pH in salt, not named.
    Salt,
    /// Share of the exchange capacity.
    Saturation,
    /// The whole amount, by digestion.
    Total,
    /// Saturated paste.
    Paste,
    /// A water extract.
    WaterExtract,
    /// An amount to apply.
    Advice,
    /// A quotient of two.
    Ratio,
    /// A laboratory's index number.
    Index,
    /// An index that depends on pH.
    AvailabilityIndex,
    /// A sampling depth.
    Depth,
    /// A texture class.
    Texture,
    /// Names the sample; the lower the rank, the better the name.
    Sample(u8),
    /// Heads a column of property names.
    NameColumn,
    /// Heads a column of results.
    ResultColumn,
    /// Heads a column of units.
    UnitColumn,
    /// Heads a column of ratings.
    RatingColumn,
    /// Heads a column of ranges.
    RangeColumn,
    /// Heads a column of methods.
    MethodColumn,
    /// Humic matter.
    Humic,
    /// Nitrogen, as in `NO3 as N`.
    Nitrogen,
    /// `Bray` or `Mehlich` without its number.
    HalfMethod,
    /// Known, but no property this engine reads.
    Other(&'static str),
}

/// What a phrase means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meaning {
    Is(Property, Form),
    IsBy(Property, Method),
    By(Method),
    Word(Word),
}

type Row = (Meaning, &'static [&'static str]);

const fn is(property: Property) -> Meaning {
    Meaning::Is(property, Form::Element)
}

const PROPERTIES: &[Row] = &[
    (
        is(Property::Ph),
        &["ph", "soilph", "waterph", "phw", "phh2o", "pheau", "activeph", "phwert", "reaction"],
    ),
    (is(Property::SaltPh), &["phs", "saltph", "phsalt"]),
    (
        is(Property::BufferPh),
        &["bufferph", "phbuffer", "bph", "buffph", "bufph", "bufferindex", "smpae"],
    ),
    (
        is(Property::ExchangeableAcidity),
        &[
            "acidity",
            "exchangeableacidity",
            "exchacidity",
            "ac",
            "h",
            "hyd",
            "hydrogen",
            "hal",
            "neutralizableacidity",
            "neutralisableacidity",
            "totalacidity",
            "acidezpotencial",
        ],
    ),
    (
        is(Property::OrganicMatter),
        &[
            "om",
            "som",
            "organicmatter",
            "soilorganicmatter",
            "orgmatter",
            "organicmat",
            "humus",
            "materiaorganica",
            "matiereorganique",
            "humusgehalt",
        ],
    ),
    (
        is(Property::OrganicCarbon),
        &[
            "oc",
            "soc",
            "toc",
            "orgc",
            "organicc",
            "organiccarbon",
            "totalorganiccarbon",
            "carbonoorganico",
        ],
    ),
    (is(Property::TotalN), &["tn", "tkn", "totaln", "totalnitrogen", "azotetotal", "totn"]),
    (
        is(Property::NitrateN),
        &[
            "no3n",
            "nitraten",
            "nitratenitrogen",
            "no3nitrogen",
            "nitratesn",
            "no31",
            "no32",
            "azotenitrique",
        ],
    ),
    (Meaning::Is(Property::NitrateN, Form::No3), &["no3"]),
    (
        Meaning::Is(Property::NitrateN, Form::Unsure),
        &["nitrate", "nitrates", "nitrat", "nitrato", "nitratos"],
    ),
    (
        is(Property::AmmoniumN),
        &["nh4n", "ammoniumn", "ammoniumnitrogen", "ammn", "ammonian", "nh4nitrogen"],
    ),
    (Meaning::Is(Property::AmmoniumN, Form::Nh4), &["nh4"]),
    (Meaning::Is(Property::AmmoniumN, Form::Unsure), &["ammonium"]),
    (
        is(Property::Phosphorus),
        &["p", "phosphorus", "phosphorous", "phos", "phosphor", "fosforo", "phosphore"],
    ),
    (Meaning::Is(Property::Phosphorus, Form::P2O5), &["p2o5"]),
    (Meaning::Is(Property::Phosphorus, Form::Po4), &["po4"]),
    (is(Property::Phosphorus), &["po4p", "phosphatep"]),
    (Meaning::Is(Property::Phosphorus, Form::Phosphate), &["phosphate", "phosphat"]),
    (is(Property::Potassium), &["k", "potassium", "kalium", "potasio", "potassio", "pottasium"]),
    (Meaning::Is(Property::Potassium, Form::K2O), &["k2o", "potash", "kali"]),
    (is(Property::Calcium), &["ca", "calcium", "calcio", "kalzium", "ca2"]),
    (Meaning::Is(Property::Calcium, Form::CaO), &["cao"]),
    (is(Property::Magnesium), &["mg", "magnesium", "magnesio", "magnesie", "mg2"]),
    (Meaning::Is(Property::Magnesium, Form::MgO), &["mgo"]),
    (is(Property::Sodium), &["na", "sodium", "natrium", "sodio"]),
    (
        is(Property::Sulfur),
        &[
            "s",
            "sulfur",
            "sulphur",
            "sulfer",
            "so4s",
            "sulfates",
            "sulphates",
            "sulfatesulfur",
            "sulphatesulphur",
            "azufre",
            "enxofre",
        ],
    ),
    (Meaning::Is(Property::Sulfur, Form::So4), &["so4", "so42"]),
    (Meaning::Is(Property::Sulfur, Form::Unsure), &["sulfate", "sulphate"]),
    (is(Property::Boron), &["b", "boron", "bor", "boro"]),
    (is(Property::Zinc), &["zn", "zinc", "zink"]),
    (is(Property::Manganese), &["mn", "manganese", "mangan", "manganeso"]),
    (is(Property::Copper), &["cu", "copper", "kupfer", "cobre"]),
    (is(Property::Iron), &["fe", "iron", "eisen", "hierro", "ferro"]),
    (is(Property::Aluminum), &["al", "aluminum", "aluminium", "aluminio"]),
    (is(Property::Molybdenum), &["mo", "molybdenum", "molyb"]),
    (is(Property::Chloride), &["cl", "chloride", "chlorides"]),
    (is(Property::Lead), &["pb", "lead"]),
    (is(Property::Arsenic), &["as", "arsenic"]),
    (is(Property::Cadmium), &["cd", "cadmium"]),
    (
        is(Property::Cec),
        &[
            "cec",
            "estcec",
            "ecec",
            "tec",
            "ctc",
            "cic",
            "kak",
            "cationexchangecapacity",
            "cationexchcapacity",
            "cationexchcap",
            "totalexchangecapacity",
            "exchangecapacity",
            "cationexchange",
            "cecsumofcations",
            "sumofcations",
            "calculatedcationexchangecapacity",
            "cationexchangecap",
        ],
    ),
    (
        is(Property::BaseSaturation),
        &["bs", "bs%", "%bs", "basesat", "basesaturation", "totalbasesaturation", "v%"],
    ),
    (is(Property::CalciumSaturation), &["perca", "cabs", "bsca"]),
    (is(Property::MagnesiumSaturation), &["permg", "mgbs", "bsmg"]),
    (is(Property::PotassiumSaturation), &["perk", "kbs", "bsk"]),
    (
        is(Property::SodiumSaturation),
        &[
            "perna",
            "nabs",
            "bsna",
            "esp",
            "exchangeablesodiumpercentage",
            "exchangeablesodiumpercent",
        ],
    ),
    (is(Property::AciditySaturation), &["perh", "hbs", "bsh"]),
    (
        is(Property::Ec),
        &[
            "ec",
            "ece",
            "ss",
            "ssalts",
            "solublesalts",
            "solublesalt",
            "solsalts",
            "solsalt",
            "solublesaltsec",
            "salts",
            "salinity",
            "electricalconductivity",
            "elecconductivity",
            "conductivity",
            "tss",
            "elconductivity",
            "conductividad",
            "conductividadelectrica",
            "conductivite",
            "conductiviteelectrique",
            "leitfahigkeit",
            "elektrischeleitfahigkeit",
        ],
    ),
    (is(Property::Sar), &["sar", "sodiumadsorptionratio", "sodiumabsorptionratio"]),
    (
        is(Property::FreeLime),
        &[
            "excesslime",
            "exlime",
            "freelime",
            "limeestimate",
            "caco3",
            "cce",
            "calcairetotal",
            "calciumcarbonate",
            "calciumcarbonateequivalent",
            "freecarbonate",
            "freecarbonates",
        ],
    ),
    (is(Property::Sand), &["sand", "areia", "arena"]),
    (is(Property::Silt), &["silt", "silte", "limo"]),
    (is(Property::Clay), &["clay", "argila", "arcilla"]),
    (
        is(Property::BulkDensity),
        &[
            "bulkdensity",
            "bd",
            "scoopdensity",
            "sampledensity",
            "density",
            "wv",
            "volumeweight",
            "weightvolume",
            "soildensity",
        ],
    ),
    (
        is(Property::NitrogenRelease),
        &["enr", "estnrelease", "estimatednrelease", "estimatednitrogenrelease", "nitrogenrelease"],
    ),
];

const METHODS: &[Row] = &[
    (
        Meaning::By(Method::Mehlich3),
        &["mehlich3", "mehlichiii", "m3", "miii", "meh3", "mehlich3icp", "m3icap", "m3icp"],
    ),
    (
        Meaning::By(Method::Mehlich3Colorimetric),
        &[
            "mehlich3colorimetric",
            "mehlich3colourimetric",
            "m3colorimetric",
            "mehlich3color",
            "m3col",
        ],
    ),
    (
        Meaning::By(Method::Mehlich1),
        &["mehlich1", "mehlichi", "m1", "doubleacid", "weakdoubleacid", "meh1"],
    ),
    (
        Meaning::By(Method::BrayP1),
        &["brayp1", "bray1", "brayi", "weakbray", "braykurtz1", "braypi"],
    ),
    (Meaning::By(Method::BrayP2), &["brayp2", "bray2", "brayii", "strongbray", "braykurtz2"]),
    (Meaning::IsBy(Property::Phosphorus, Method::BrayP1), &["p1", "pweakbray"]),
    (Meaning::IsBy(Property::Phosphorus, Method::BrayP2), &["p2"]),
    (Meaning::IsBy(Property::Phosphorus, Method::Mehlich3), &["mehlichpiii", "mehlichp3"]),
    (
        Meaning::By(Method::Olsen),
        &["olsen", "olsens", "bicarb", "bicarbonate", "sodiumbicarbonate", "nahco3", "hco3", "bic"],
    ),
    (Meaning::By(Method::Morgan), &["morgan", "morgans"]),
    (
        Meaning::By(Method::ModifiedMorgan),
        &["modifiedmorgan", "modmorgan", "modifiedmorgans", "modmorgans", "mmorgan", "mm"],
    ),
    (
        Meaning::By(Method::AmmoniumAcetate),
        &[
            "ammoniumacetate",
            "nh4oac",
            "nh4ac",
            "amac",
            "ammacetate",
            "neutralammoniumacetate",
            "1nnh4oac",
        ],
    ),
    (Meaning::By(Method::AmmoniumNitrate), &["ammoniumnitrate", "nh4no3", "ammnitrate"]),
    (Meaning::By(Method::Dtpa), &["dtpa"]),
    (Meaning::By(Method::HotWater), &["hotwater", "hoth2o", "hw", "hotwatersoluble"]),
    (Meaning::By(Method::Kcl), &["kcl", "2nkcl", "1nkcl", "2mkcl", "1mkcl", "potassiumchloride"]),
    (Meaning::By(Method::Water1To1), &["1to1", "1to1water", "1to1h2o"]),
    (Meaning::By(Method::Water1To2), &["1to2", "2to1", "1to2water", "1to2h2o"]),
    (Meaning::By(Method::Water1To5), &["1to5", "5to1", "1to5water", "1to5h2o"]),
    (
        Meaning::By(Method::SaturatedPaste),
        &["saturatedpaste", "satpaste", "saturationextract", "sp"],
    ),
    (Meaning::IsBy(Property::Ph, Method::SaturatedPaste), &["phsp", "sarph"]),
    (Meaning::IsBy(Property::Ec, Method::SaturatedPaste), &["ecsp"]),
    (
        Meaning::By(Method::CaCl2),
        &["cacl2", "calciumchloride", "001mcacl2", "01mcacl2", "001mcalciumchloride", "cacl"],
    ),
    (Meaning::By(Method::LossOnIgnition), &["loi", "lossonignition", "ignition"]),
    (Meaning::By(Method::WalkleyBlack), &["walkleyblack", "wb", "walkley"]),
    (Meaning::By(Method::SmpBuffer), &["smp", "smpbuffer", "shoemaker", "shoemakermcleanpratt"]),
    (Meaning::By(Method::SikoraBuffer), &["sikora", "sikorabuffer", "sikora2", "sikoraii"]),
    (Meaning::By(Method::MehlichBuffer), &["mehlichbuffer", "mehlichbufferph", "mehlichbph"]),
    (
        Meaning::By(Method::ModifiedMehlichBuffer),
        &["modifiedmehlichbuffer", "modifiedmehlich", "modmehlich"],
    ),
    (Meaning::By(Method::AdamsEvansBuffer), &["adamsevans", "adamsevansbuffer", "aebuffer"]),
    (Meaning::By(Method::WoodruffBuffer), &["woodruff", "woodruffbuffer", "wdrf", "wdrfbuffer"]),
    (
        Meaning::By(Method::TotalAcid),
        &["epa3050", "epa3050b", "epa3051", "aquaregia", "aciddigestion"],
    ),
];

const WORDS: &[Row] = &[
    (
        Meaning::Word(Word::Plain),
        &[
            "soil",
            "available",
            "avail",
            "extractable",
            "extr",
            "extract",
            "extracted",
            "extraction",
            "extractant",
            "exchangeable",
            "exch",
            "plant",
            "content",
            "concentration",
            "conc",
            "icp",
            "icap",
            "by",
            "of",
            "the",
            "is",
            "standard",
            "su",
            "reported",
            "measured",
            "est",
            "estimated",
            "element",
            "elemental",
            "water",
            "h2o",
            "weight",
            "wt",
            "dry",
            "mass",
            "method",
            "with",
            "using",
            "in",
            "and",
            "cation",
            "base",
            "lab",
            "reading",
            "readings",
            "old",
            "new",
            "determined",
            "neutral",
            "sum",
            "on",
            "at",
            "to",
            "for",
            "from",
            "slurry",
            "cal",
            "basis",
            "capacity",
            "percentage",
            "calculated",
            "calc",
        ],
    ),
    (Meaning::Word(Word::ByColour), &["colorimetric", "colourimetric", "colorimetry"]),
    (Meaning::Word(Word::Buffer), &["buffer", "buffered"]),
    (
        Meaning::Word(Word::LimeIndex),
        &["lti", "limetestindex", "limeindex", "limetest", "limeindexlti", "limetestindexlti"],
    ),
    (Meaning::Word(Word::Salt), &["salt"]),
    (Meaning::Word(Word::Saturation), &["sat", "saturation", "satn", "saturated"]),
    (Meaning::Word(Word::Total), &["total", "tot", "totals"]),
    (Meaning::Word(Word::Paste), &["paste"]),
    (
        Meaning::Word(Word::WaterExtract),
        &["watersoluble", "h3a", "soluble", "waterextractable", "resin"],
    ),
    (
        Meaning::Word(Word::Advice),
        &[
            "rec",
            "recs",
            "recommendation",
            "recommendations",
            "recommended",
            "recommend",
            "apply",
            "applied",
            "add",
            "broadcast",
            "sidedress",
            "topdress",
            "requirement",
            "requirements",
            "required",
            "need",
            "needed",
            "needs",
            "fertilizer",
            "fertiliser",
            "limerequirement",
            "limerec",
            "removal",
            "cropremoval",
            "spread",
            "use",
            "limerate",
            "rate",
            "suggested",
        ],
    ),
    (Meaning::Word(Word::Ratio), &["ratio", "ratios", "cnratio"]),
    (Meaning::Word(Word::Index), &["index", "indices", "idx"]),
    (
        Meaning::Word(Word::AvailabilityIndex),
        &["ai", "ai1", "ai2", "availabilityindex", "activityindex"],
    ),
    (
        Meaning::Word(Word::Depth),
        &[
            "depth",
            "sampledepth",
            "samplingdepth",
            "depthrange",
            "sampledepthrange",
            "tiefe",
            "sampleddepth",
        ],
    ),
    (
        Meaning::Word(Word::Texture),
        &[
            "texture",
            "soiltexture",
            "textureclass",
            "texturalclass",
            "texturebyfeel",
            "bodenart",
            "soiltype",
            "texturename",
        ],
    ),
    (
        Meaning::Word(Word::Sample(0)),
        &[
            "sampleid",
            "samplename",
            "sampleidentification",
            "sampledescription",
            "yoursampleid",
            "customersampleid",
        ],
    ),
    (
        Meaning::Word(Word::Sample(1)),
        &[
            "sample",
            "samples",
            "probe",
            "specimen",
            "muestra",
            "amostra",
            "echantillon",
            "sampleno",
            "samplenumber",
        ],
    ),
    (
        Meaning::Word(Word::Sample(2)),
        &[
            "field",
            "bed",
            "plot",
            "fieldid",
            "fieldname",
            "location",
            "site",
            "siteid",
            "area",
            "garden",
            "zone",
            "block",
            "plotid",
            "bedname",
            "schlag",
            "parcela",
        ],
    ),
    (
        Meaning::Word(Word::Sample(3)),
        &[
            "labno",
            "labnumber",
            "labid",
            "labnum",
            "labsample",
            "labsampleid",
            "labsampleno",
            "id",
            "labref",
        ],
    ),
    (
        Meaning::Word(Word::NameColumn),
        &[
            "test",
            "tests",
            "parameter",
            "parameters",
            "property",
            "nutrient",
            "nutrients",
            "analyte",
            "analytes",
            "determination",
            "measurement",
            "testname",
            "item",
            "soiltest",
            "analysis",
            "naehrstoff",
            "nahrstoff",
        ],
    ),
    (
        Meaning::Word(Word::ResultColumn),
        &[
            "result",
            "results",
            "value",
            "values",
            "found",
            "valuefound",
            "level",
            "levels",
            "ergebnis",
            "wert",
            "yourresult",
            "yoursoil",
            "testresult",
            "testresults",
            "resultat",
            "resultado",
            "soiltestvalue",
            "testvalue",
            "testlevel",
            "soiltestlevel",
        ],
    ),
    (
        Meaning::Word(Word::UnitColumn),
        &["unit", "units", "uom", "einheit", "unite", "unidad", "measure"],
    ),
    (
        Meaning::Word(Word::RatingColumn),
        &[
            "rating",
            "ratings",
            "interpretation",
            "status",
            "category",
            "class",
            "comment",
            "comments",
            "rank",
            "bewertung",
            "soiltestrating",
            "note",
            "notes",
            "remark",
            "remarks",
            "assessment",
            "flag",
        ],
    ),
    (
        Meaning::Word(Word::RangeColumn),
        &[
            "range",
            "optimum",
            "optimumrange",
            "optimal",
            "optimalrange",
            "desiredrange",
            "desired",
            "desirable",
            "desirablelevel",
            "target",
            "targetrange",
            "normalrange",
            "referencerange",
            "guideline",
            "guidelines",
            "ideal",
            "idealrange",
            "sufficiencyrange",
            "recommendedrange",
            "reference",
        ],
    ),
    (
        Meaning::Word(Word::MethodColumn),
        &["testmethod", "methodused", "methods", "procedure", "methode"],
    ),
    (Meaning::Word(Word::Humic), &["hm", "hm%", "humicmatter", "humic"]),
    (Meaning::Word(Word::Nitrogen), &["n", "nitrogen"]),
    (Meaning::Word(Word::HalfMethod), &["bray", "mehlich", "meh"]),
    (
        Meaning::Word(Word::Other(
            "active carbon is a soil-health test this program doesn't judge",
        )),
        &["poxc", "activecarbon", "permanganatecarbon"],
    ),
    (
        Meaning::Word(Word::Other("moisture says how wet the sample was, not what the soil holds")),
        &["moisture", "soilmoisture"],
    ),
    (
        Meaning::Word(Word::Other("pounds of nitrogen per acre, but not whether found or advised")),
        &["lbsna", "lbna"],
    ),
    (
        Meaning::Word(Word::Other("a texture class, not a share of sand, silt or clay")),
        &["loam", "loamy", "silty", "sandy"],
    ),
    (
        Meaning::Word(Word::Other("Mehlich-2 is an old extract with no range here")),
        &["mehlich2", "mehlichii", "mehlichpii", "mehlichp2"],
    ),
    (
        Meaning::Word(Word::Other("lime buffer capacity is not a buffer pH")),
        &["lbc", "lbceq", "limebuffercapacity"],
    ),
];

static MEANINGS: LazyLock<Lexicon<Meaning>> = LazyLock::new(|| {
    let rows = [PROPERTIES, METHODS, WORDS].into_iter().flatten();
    Lexicon::new(
        rows.flat_map(|&(meaning, spellings)| spellings.iter().map(move |&s| (s, meaning))),
    )
});

/// The longest phrase that begins at word `from`, and how many words it takes.
pub(super) fn meaning_at(words: &[Token], from: usize) -> Option<(Meaning, usize)> {
    let mut phrase = String::new();
    let mut found = None;
    for (i, word) in words.iter().enumerate().skip(from).take(6) {
        if i > from && word.gap == Gap::Wall {
            break;
        }
        phrase.push_str(&word.text);
        let (meaning, goes_on) = MEANINGS.look_up(&phrase);
        if let Some(meaning) = meaning {
            found = Some((meaning, i + 1 - from));
        }
        if !goes_on {
            break;
        }
    }
    found.or_else(|| index_of(&words[from..]))
}

/// `P-I`, `K-I`, `Mn-AI`: index only with the hyphen, since `Si` is silicon.
fn index_of(words: &[Token]) -> Option<(Meaning, usize)> {
    let [first, ..] = words else { return None };
    (first.gap == Gap::Dash && first.text == "i").then_some((Meaning::Word(Word::Index), 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_spelling_means_two_things() {
        let mut seen = std::collections::HashMap::new();
        for &(meaning, spellings) in [PROPERTIES, METHODS, WORDS].into_iter().flatten() {
            for &spelling in spellings {
                let before = seen.insert(spelling, meaning);
                assert!(
                    before.is_none_or(|b| b == meaning),
                    "{spelling}: {before:?} and {meaning:?}"
                );
            }
        }
    }
}
