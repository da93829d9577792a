//! The laboratory methods that decide what a number means.

use serde::{Deserialize, Serialize};

use crate::soil::Property;

/// A laboratory method, by the name the trade gives it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// Mehlich-3 extract, read by ICP unless said otherwise.
    #[serde(rename = "mehlich-3")]
    Mehlich3,
    /// Mehlich-3 extract, phosphorus read by colour.
    #[serde(rename = "mehlich-3-colorimetric")]
    Mehlich3Colorimetric,
    /// Mehlich-1 extract (weak double acid).
    #[serde(rename = "mehlich-1")]
    Mehlich1,
    /// Bray P1 extract (weak Bray).
    #[serde(rename = "bray-p1")]
    BrayP1,
    /// Bray P2 extract (strong Bray).
    #[serde(rename = "bray-p2")]
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
    /// Water, 1 part soil to 1.
    #[serde(rename = "water-1-1")]
    Water1To1,
    /// Water, 1 part soil to 2 or 2.5.
    #[serde(rename = "water-1-2")]
    Water1To2,
    /// Water, 1 part soil to 5.
    #[serde(rename = "water-1-5")]
    Water1To5,
    /// Saturated paste.
    SaturatedPaste,
    /// 0.01 M calcium chloride.
    #[serde(rename = "cacl2")]
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
    /// Every method.
    pub const ALL: [Method; 27] = [
        Method::Mehlich3,
        Method::Mehlich3Colorimetric,
        Method::Mehlich1,
        Method::BrayP1,
        Method::BrayP2,
        Method::Olsen,
        Method::Morgan,
        Method::ModifiedMorgan,
        Method::AmmoniumAcetate,
        Method::AmmoniumNitrate,
        Method::Dtpa,
        Method::HotWater,
        Method::Kcl,
        Method::TotalAcid,
        Method::Water1To1,
        Method::Water1To2,
        Method::Water1To5,
        Method::SaturatedPaste,
        Method::CaCl2,
        Method::LossOnIgnition,
        Method::WalkleyBlack,
        Method::SmpBuffer,
        Method::SikoraBuffer,
        Method::MehlichBuffer,
        Method::ModifiedMehlichBuffer,
        Method::AdamsEvansBuffer,
        Method::WoodruffBuffer,
    ];

    /// What the method is for.
    pub fn kind(self) -> MethodKind {
        match self {
            Method::Water1To1
            | Method::Water1To2
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
            Method::TotalAcid => "total, by acid digestion",
            Method::Water1To1 => "1:1 water",
            Method::Water1To2 => "1:2 water",
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

    /// Whether this extractant is used for this property: Olsen and Bray take phosphorus, the neutral salts take
    /// cations, DTPA takes metals; the others take everything.
    pub fn extracts(self, property: Property) -> bool {
        match self {
            Method::Olsen | Method::BrayP1 | Method::BrayP2 => property == Property::Phosphorus,
            Method::AmmoniumAcetate | Method::AmmoniumNitrate => matches!(
                property,
                Property::Calcium | Property::Magnesium | Property::Potassium | Property::Sodium
            ),
            Method::Dtpa => matches!(
                property,
                Property::Zinc | Property::Manganese | Property::Copper | Property::Iron
            ),
            Method::HotWater => property == Property::Boron,
            method => method.kind() == MethodKind::Extractant,
        }
    }
}
