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
    /// Water, 1 part soil to 1.
    Water1To1,
    /// Water, 1 part soil to 2 or 2.5.
    Water1To2,
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

by_name!(Method, "method");

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
    /// Its name in JSON.
    pub fn name(self) -> &'static str {
        match self {
            Method::Mehlich3 => "mehlich-3",
            Method::Mehlich3Colorimetric => "mehlich-3-colorimetric",
            Method::Mehlich1 => "mehlich-1",
            Method::BrayP1 => "bray-p1",
            Method::BrayP2 => "bray-p2",
            Method::Olsen => "olsen",
            Method::Morgan => "morgan",
            Method::ModifiedMorgan => "modified-morgan",
            Method::AmmoniumAcetate => "ammonium-acetate",
            Method::AmmoniumNitrate => "ammonium-nitrate",
            Method::Dtpa => "dtpa",
            Method::HotWater => "hot-water",
            Method::Kcl => "kcl",
            Method::TotalAcid => "total-acid",
            Method::Water1To1 => "water-1-1",
            Method::Water1To2 => "water-1-2",
            Method::Water1To5 => "water-1-5",
            Method::SaturatedPaste => "saturated-paste",
            Method::CaCl2 => "cacl2",
            Method::LossOnIgnition => "loss-on-ignition",
            Method::WalkleyBlack => "walkley-black",
            Method::SmpBuffer => "smp-buffer",
            Method::SikoraBuffer => "sikora-buffer",
            Method::MehlichBuffer => "mehlich-buffer",
            Method::ModifiedMehlichBuffer => "modified-mehlich-buffer",
            Method::AdamsEvansBuffer => "adams-evans-buffer",
            Method::WoodruffBuffer => "woodruff-buffer",
        }
    }

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
