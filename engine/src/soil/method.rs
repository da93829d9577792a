//! The laboratory methods that decide what a number means.

use crate::named::named;
use crate::soil::Property;

named! { "method", label:
    /// A laboratory method, by the name the trade gives it.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Method {
        /// Mehlich-3 extract, read by ICP unless said otherwise.
        Mehlich3 = "mehlich-3", "Mehlich-3";
        /// Mehlich-3 extract, phosphorus read by colour.
        Mehlich3Colorimetric = "mehlich-3-colorimetric", "Mehlich-3, colorimetric";
        /// Mehlich-1 extract (weak double acid).
        Mehlich1 = "mehlich-1", "Mehlich-1";
        /// Bray P1 extract (weak Bray).
        BrayP1 = "bray-p1", "Bray P1";
        /// Bray P2 extract (strong Bray).
        BrayP2 = "bray-p2", "Bray P2";
        /// Olsen extract (sodium bicarbonate).
        Olsen = "olsen", "Olsen";
        /// Morgan extract (sodium acetate).
        Morgan = "morgan", "Morgan";
        /// Modified Morgan extract (ammonium acetate, pH 4.8).
        ModifiedMorgan = "modified-morgan", "Modified Morgan";
        /// Neutral 1 M ammonium acetate.
        AmmoniumAcetate = "ammonium-acetate", "ammonium acetate";
        AmmoniumNitrate = "ammonium-nitrate", "ammonium nitrate";
        Dtpa = "dtpa", "DTPA";
        HotWater = "hot-water", "hot water";
        /// Potassium chloride solution.
        Kcl = "kcl", "potassium chloride";
        /// Total digestion by strong acid.
        TotalAcid = "total-acid", "total (acid digestion)";
        /// Mehlich-2 extract.
        Mehlich2 = "mehlich-2", "Mehlich-2";
        /// Colwell extract (bicarbonate, 16 hours).
        Colwell = "colwell", "Colwell";
        /// Calcium acetate lactate (CAL).
        Cal = "cal", "CAL";
        /// Double lactate (DL).
        DoubleLactate = "double-lactate", "double lactate";
        /// Lancaster extract.
        Lancaster = "lancaster", "Lancaster";
        /// Kelowna extract.
        Kelowna = "kelowna", "Kelowna";
        /// Modified Kelowna extract.
        ModifiedKelowna = "modified-kelowna", "Modified Kelowna";
        /// Ion-exchange resin.
        Resin = "resin", "resin";
        /// H3A extract (organic acids).
        H3a = "h3a", "H3A";
        /// Ammonium bicarbonate with DTPA.
        AbDtpa = "ab-dtpa", "AB-DTPA";
        /// DTPA with sorbitol.
        DtpaSorbitol = "dtpa-sorbitol", "DTPA–sorbitol";
        DiluteHcl = "dilute-hcl", "0.1 M hydrochloric acid";
        /// Potassium chloride at 40 °C.
        Kcl40 = "kcl-40", "KCl-40";
        /// Monocalcium phosphate.
        CalciumPhosphate = "calcium-phosphate", "calcium phosphate";
        /// Joret–Hébert extract (ammonium oxalate).
        JoretHebert = "joret-hebert", "Joret–Hébert";
        /// Dyer extract (citric acid).
        Dyer = "dyer", "Dyer";
        /// Ammonium lactate (AL, Egnér–Riehm).
        AmmoniumLactate = "ammonium-lactate", "ammonium lactate (AL)";
        BariumChloride = "barium-chloride", "barium chloride";
        Edta = "edta", "EDTA";
        CitricAcid = "citric-acid", "citric acid, 1 %";
        /// Water, 60 parts to 1 of soil by volume (Pw).
        WaterPw = "water-pw", "water (Pw)";
        /// New Zealand's quick test units.
        QuickTest = "quick-test", "quick test";
        /// Water, 1 part soil to 1.
        Water1To1 = "water-1-1", "1:1 water";
        /// Water, 1 part soil to 2.
        Water1To2 = "water-1-2", "1:2 water";
        /// Water, 1 part soil to 2.5.
        Water1To2p5 = "water-1-2.5", "1:2.5 water";
        /// Water, 1 part soil to 5.
        Water1To5 = "water-1-5", "1:5 water";
        SaturatedPaste = "saturated-paste", "saturated paste";
        /// What water takes out of a wetted potting mix (SME).
        SaturatedMedia = "saturated-media", "saturated media extract (SME)";
        /// 0.01 M calcium chloride.
        CaCl2 = "cacl2", "calcium chloride";
        LossOnIgnition = "loss-on-ignition", "loss on ignition";
        /// Walkley–Black oxidation.
        WalkleyBlack = "walkley-black", "Walkley–Black";
        SmpBuffer = "smp-buffer", "SMP buffer";
        SikoraBuffer = "sikora-buffer", "Sikora buffer";
        MehlichBuffer = "mehlich-buffer", "Mehlich buffer";
        ModifiedMehlichBuffer = "modified-mehlich-buffer", "Modified Mehlich buffer";
        AdamsEvansBuffer = "adams-evans-buffer", "Adams–Evans buffer";
        WoodruffBuffer = "woodruff-buffer", "Woodruff buffer";
    }
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
            | Method::Dyer
            | Method::CitricAcid
            | Method::WaterPw => property == Phosphorus,
            Method::AmmoniumAcetate
            | Method::AmmoniumNitrate
            | Method::BariumChloride
            | Method::QuickTest => {
                matches!(property, Calcium | Magnesium | Potassium | Sodium)
            }
            Method::Colwell
            | Method::Cal
            | Method::AmmoniumLactate
            | Method::DoubleLactate
            | Method::Kelowna
            | Method::ModifiedKelowna => matches!(property, Phosphorus | Potassium),
            Method::Resin => matches!(property, Phosphorus | Potassium | Calcium | Magnesium),
            Method::AbDtpa => metal || matches!(property, Phosphorus | Potassium),
            Method::Dtpa | Method::DiluteHcl | Method::Edta => metal,
            Method::DtpaSorbitol => metal || property == Boron,
            Method::Kcl40 | Method::CalciumPhosphate => property == Sulfur,
            Method::HotWater => property == Boron,
            method => method.kind() == MethodKind::Extractant,
        }
    }
}
