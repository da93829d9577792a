//! The laboratory methods that decide what a number means.

use crate::named::by_name;
use crate::soil::Property;

/// A laboratory method, by the name the trade gives it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Method {
    /// Mehlich-3 extract, read by ICP unless said otherwise.
    Mehlich3,
    /// Mehlich-3 extract, phosphorus read by colour.
    Mehlich3Colorimetric,
    /// Mehlich-1 extract (weak double acid).
    Mehlich1,
    /// Bray P1 extract (weak Bray).
    BrayP1,
    /// Bray P2 extract (strong Bray).
    BrayP2,
    /// Olsen extract (sodium bicarbonate).
    Olsen,
    /// Morgan extract (sodium acetate).
    Morgan,
    /// Modified Morgan extract (ammonium acetate, pH 4.8).
    ModifiedMorgan,
    /// Neutral 1 M ammonium acetate.
    AmmoniumAcetate,
    /// Ammonium nitrate.
    AmmoniumNitrate,
    /// DTPA.
    Dtpa,
    /// Hot water.
    HotWater,
    /// Potassium chloride solution.
    Kcl,
    /// Total digestion by strong acid.
    TotalAcid,
    /// Mehlich-2 extract.
    Mehlich2,
    /// Colwell extract (bicarbonate, 16 hours).
    Colwell,
    /// Calcium acetate lactate (CAL).
    Cal,
    /// Double lactate (DL).
    DoubleLactate,
    /// Lancaster extract.
    Lancaster,
    /// Kelowna extract.
    Kelowna,
    /// Modified Kelowna extract.
    ModifiedKelowna,
    /// Ion-exchange resin.
    Resin,
    /// H3A extract (organic acids).
    H3a,
    /// Ammonium bicarbonate with DTPA.
    AbDtpa,
    /// DTPA with sorbitol.
    DtpaSorbitol,
    /// 0.1 M hydrochloric acid.
    DiluteHcl,
    /// Potassium chloride at 40 °C.
    Kcl40,
    /// Monocalcium phosphate.
    CalciumPhosphate,
    /// Joret–Hébert extract (ammonium oxalate).
    JoretHebert,
    /// Dyer extract (citric acid).
    Dyer,
    /// Water, 1 part soil to 1.
    Water1To1,
    /// Water, 1 part soil to 2.
    Water1To2,
    /// Water, 1 part soil to 2.5.
    Water1To2p5,
    /// Water, 1 part soil to 5.
    Water1To5,
    /// Saturated paste.
    SaturatedPaste,
    /// 0.01 M calcium chloride.
    CaCl2,
    /// Loss on ignition.
    LossOnIgnition,
    /// Walkley–Black oxidation.
    WalkleyBlack,
    /// SMP buffer.
    SmpBuffer,
    /// Sikora buffer.
    SikoraBuffer,
    /// Mehlich buffer.
    MehlichBuffer,
    /// Modified Mehlich buffer.
    ModifiedMehlichBuffer,
    /// Adams–Evans buffer.
    AdamsEvansBuffer,
    /// Woodruff buffer.
    WoodruffBuffer,
}

by_name!(Method, "method",
    Mehlich3: "mehlich-3",
    Mehlich3Colorimetric: "mehlich-3-colorimetric",
    Mehlich1: "mehlich-1",
    BrayP1: "bray-p1",
    BrayP2: "bray-p2",
    Olsen: "olsen",
    Morgan: "morgan",
    ModifiedMorgan: "modified-morgan",
    AmmoniumAcetate: "ammonium-acetate",
    AmmoniumNitrate: "ammonium-nitrate",
    Dtpa: "dtpa",
    HotWater: "hot-water",
    Kcl: "kcl",
    TotalAcid: "total-acid",
    Mehlich2: "mehlich-2",
    Colwell: "colwell",
    Cal: "cal",
    DoubleLactate: "double-lactate",
    Lancaster: "lancaster",
    Kelowna: "kelowna",
    ModifiedKelowna: "modified-kelowna",
    Resin: "resin",
    H3a: "h3a",
    AbDtpa: "ab-dtpa",
    DtpaSorbitol: "dtpa-sorbitol",
    DiluteHcl: "dilute-hcl",
    Kcl40: "kcl-40",
    CalciumPhosphate: "calcium-phosphate",
    JoretHebert: "joret-hebert",
    Dyer: "dyer",
    Water1To1: "water-1-1",
    Water1To2: "water-1-2",
    Water1To2p5: "water-1-2.5",
    Water1To5: "water-1-5",
    SaturatedPaste: "saturated-paste",
    CaCl2: "cacl2",
    LossOnIgnition: "loss-on-ignition",
    WalkleyBlack: "walkley-black",
    SmpBuffer: "smp-buffer",
    SikoraBuffer: "sikora-buffer",
    MehlichBuffer: "mehlich-buffer",
    ModifiedMehlichBuffer: "modified-mehlich-buffer",
    AdamsEvansBuffer: "adams-evans-buffer",
    WoodruffBuffer: "woodruff-buffer",
);

/// What a method is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MethodKind {
    /// Takes nutrients out of the soil.
    Extractant,
    /// How soil and water (or salt) are mixed for pH and EC.
    Suspension,
    /// A lime buffer.
    Buffer,
    /// How organic matter is measured.
    OrganicMatter,
}

impl Method {
    /// What the method is for.
    pub fn kind(self) -> MethodKind {
        match self {
            Method::Water1To1
            | Method::Water1To2
            | Method::Water1To2p5
            | Method::Water1To5
            | Method::SaturatedPaste
            | Method::CaCl2 => MethodKind::Suspension,
            Method::LossOnIgnition | Method::WalkleyBlack => MethodKind::OrganicMatter,
            Method::SmpBuffer
            | Method::SikoraBuffer
            | Method::MehlichBuffer
            | Method::ModifiedMehlichBuffer
            | Method::AdamsEvansBuffer
            | Method::WoodruffBuffer => MethodKind::Buffer,
            _ => MethodKind::Extractant,
        }
    }

    /// What a reader calls it.
    pub fn label(self) -> &'static str {
        match self {
            Method::Mehlich3 => "Mehlich-3",
            Method::Mehlich3Colorimetric => "Mehlich-3, colorimetric",
            Method::Mehlich1 => "Mehlich-1",
            Method::BrayP1 => "Bray P1",
            Method::BrayP2 => "Bray P2",
            Method::Olsen => "Olsen",
            Method::Morgan => "Morgan",
            Method::ModifiedMorgan => "Modified Morgan",
            Method::AmmoniumAcetate => "ammonium acetate",
            Method::AmmoniumNitrate => "ammonium nitrate",
            Method::Dtpa => "DTPA",
            Method::HotWater => "hot water",
            Method::Kcl => "potassium chloride",
            Method::TotalAcid => "total (acid digestion)",
            Method::Mehlich2 => "Mehlich-2",
            Method::Colwell => "Colwell",
            Method::Cal => "CAL",
            Method::DoubleLactate => "double lactate",
            Method::Lancaster => "Lancaster",
            Method::Kelowna => "Kelowna",
            Method::ModifiedKelowna => "Modified Kelowna",
            Method::Resin => "resin",
            Method::H3a => "H3A",
            Method::AbDtpa => "AB-DTPA",
            Method::DtpaSorbitol => "DTPA–sorbitol",
            Method::DiluteHcl => "0.1 M hydrochloric acid",
            Method::Kcl40 => "KCl-40",
            Method::CalciumPhosphate => "calcium phosphate",
            Method::JoretHebert => "Joret–Hébert",
            Method::Dyer => "Dyer",
            Method::Water1To1 => "1:1 water",
            Method::Water1To2 => "1:2 water",
            Method::Water1To2p5 => "1:2.5 water",
            Method::Water1To5 => "1:5 water",
            Method::SaturatedPaste => "saturated paste",
            Method::CaCl2 => "calcium chloride",
            Method::LossOnIgnition => "loss on ignition",
            Method::WalkleyBlack => "Walkley–Black",
            Method::SmpBuffer => "SMP buffer",
            Method::SikoraBuffer => "Sikora buffer",
            Method::MehlichBuffer => "Mehlich buffer",
            Method::ModifiedMehlichBuffer => "Modified Mehlich buffer",
            Method::AdamsEvansBuffer => "Adams–Evans buffer",
            Method::WoodruffBuffer => "Woodruff buffer",
        }
    }

    /// Whether this extractant is used for this property: some take phosphorus alone, the neutral
    /// salts take cations, DTPA takes metals; the others take everything.
    pub fn extracts(self, property: Property) -> bool {
        use Property::{
            Boron, Calcium, Copper, Iron, Magnesium, Manganese, Phosphorus, Potassium, Sodium,
            Sulfur, Zinc,
        };
        let metal = matches!(property, Zinc | Manganese | Copper | Iron);
        match self {
            Method::Olsen
            | Method::BrayP1
            | Method::BrayP2
            | Method::JoretHebert
            | Method::Dyer => property == Phosphorus,
            Method::AmmoniumAcetate | Method::AmmoniumNitrate => {
                matches!(property, Calcium | Magnesium | Potassium | Sodium)
            }
            Method::Colwell
            | Method::Cal
            | Method::DoubleLactate
            | Method::Kelowna
            | Method::ModifiedKelowna => matches!(property, Phosphorus | Potassium),
            Method::Resin => matches!(property, Phosphorus | Potassium | Calcium | Magnesium),
            Method::AbDtpa => metal || matches!(property, Phosphorus | Potassium),
            Method::Dtpa | Method::DiluteHcl => metal,
            Method::DtpaSorbitol => metal || property == Boron,
            Method::Kcl40 | Method::CalciumPhosphate => property == Sulfur,
            Method::HotWater => property == Boron,
            method => method.kind() == MethodKind::Extractant,
        }
    }
}
