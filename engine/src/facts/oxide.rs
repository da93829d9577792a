//! Oxides that tables print instead of the element.

/// What a table's numbers are counted as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Oxide {
    /// Phosphate, P₂O₅.
    P2O5,
    /// Potash, K₂O.
    K2O,
    /// Magnesia, MgO.
    MgO,
    /// Quicklime, CaO.
    CaO,
    /// Sulfur trioxide, SO₃.
    SO3,
}

impl Oxide {
    /// All of them.
    pub const ALL: [Oxide; 5] = [Oxide::P2O5, Oxide::K2O, Oxide::MgO, Oxide::CaO, Oxide::SO3];

    /// What a table and a reader call it.
    pub fn symbol(self) -> &'static str {
        match self {
            Oxide::P2O5 => "P2O5",
            Oxide::K2O => "K2O",
            Oxide::MgO => "MgO",
            Oxide::CaO => "CaO",
            Oxide::SO3 => "SO3",
        }
    }

    /// The element's share of its mass.
    /// Source: IUPAC standard atomic masses (derived).
    pub fn element(self) -> f64 {
        match self {
            Oxide::P2O5 => 2.0 * 30.974 / (2.0 * 30.974 + 5.0 * 15.999),
            Oxide::K2O => 2.0 * 39.098 / (2.0 * 39.098 + 15.999),
            Oxide::MgO => 24.305 / (24.305 + 15.999),
            Oxide::CaO => 40.078 / (40.078 + 15.999),
            Oxide::SO3 => 32.06 / (32.06 + 3.0 * 15.999),
        }
    }
}
