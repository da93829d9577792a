//! What a biochar's certificate or laboratory sheet gives.

use crate::named::named;

named! { "figure of a certificate":
    /// What a biochar's certificate may give; the unit stands with each.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum CertificateItem {
        /// Highest temperature it was made at, °C.
        MadeAt = "made-at";
        /// Ash, %.
        Ash = "ash";
        /// Organic carbon, %.
        OrganicCarbon = "organic-carbon";
        /// Hydrogen to organic carbon, mol/mol.
        HydrogenToCarbon = "hydrogen-to-carbon";
        /// Oxygen to organic carbon, mol/mol.
        OxygenToCarbon = "oxygen-to-carbon";
        /// Exchange capacity, cmol(c)/kg.
        Cec = "cec";
        /// Water it takes up, g per g.
        Water = "water";
        /// The size that nine tenths of it pass, mm.
        ParticleSize = "particle-size";
        /// Total nitrogen, %.
        Nitrogen = "nitrogen";
        /// Total phosphorus, %.
        Phosphorus = "phosphorus";
        /// Total potassium, %.
        Potassium = "potassium";
        /// Total calcium, %.
        Calcium = "calcium";
        /// Total magnesium, %.
        Magnesium = "magnesium";
        /// Total sulfur, %.
        Sulfur = "sulfur";
        /// Total sodium, %.
        Sodium = "sodium";
        /// Arsenic, mg/kg.
        Arsenic = "arsenic";
        /// Cadmium, mg/kg.
        Cadmium = "cadmium";
        /// Chromium, mg/kg.
        Chromium = "chromium";
        /// Copper, mg/kg.
        Copper = "copper";
        /// Lead, mg/kg.
        Lead = "lead";
        /// Mercury, mg/kg.
        Mercury = "mercury";
        /// Nickel, mg/kg.
        Nickel = "nickel";
        /// Zinc, mg/kg.
        Zinc = "zinc";
        /// The sum of 16 polycyclic aromatic hydrocarbons, mg/kg.
        Pah16 = "pah-16";
    }
}
