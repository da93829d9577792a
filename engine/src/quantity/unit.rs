//! The units that soil reports and this engine use.

use crate::named::named;

named! { "unit", symbol:
    /// A unit of a soil-test value or of a worked-out figure.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Unit {
        /// No unit: pH, ratios.
        None = "", "";
        /// mg/kg of dry soil, the same as ppm by mass.
        MgPerKg = "mg/kg", "mg/kg";
        /// mg per litre of soil, the same as mg/dm³: a volumetric result.
        MgPerL = "mg/L", "mg/L";
        /// mg per 100 g of soil.
        MgPer100g = "mg/100 g", "mg/100 g";
        /// Pounds per acre.
        LbPerAcre = "lb/acre", "lb/acre";
        /// Kilograms per hectare.
        KgPerHa = "kg/ha", "kg/ha";
        /// Milliequivalents per 100 g, the same as cmol(c)/kg.
        MeqPer100g = "meq/100 g", "meq/100 g";
        MmolcPerKg = "mmolc/kg", "mmol(c)/kg";
        /// cmol(c) per litre of soil, the same as meq/100 cm³.
        MeqPer100cm3 = "meq/100 cm3", "meq/100 cm³";
        /// Per cent.
        Percent = "%", "%";
        GPerKg = "g/kg", "g/kg";
        /// g per litre of soil, the same as g/dm³: a volumetric result.
        GPerL = "g/L", "g/dm³";
        /// dS/m, the same as mS/cm and mmho/cm.
        DsPerM = "dS/m", "dS/m";
        UsPerCm = "uS/cm", "µS/cm";
        GPerCm3 = "g/cm3", "g/cm³";
        /// A laboratory's own index number.
        Index = "index", "index";
        /// Litres.
        Litre = "L", "L";
        /// Kilograms.
        Kg = "kg", "kg";
        /// Grams.
        Gram = "g", "g";
        /// Tonnes per hectare.
        TonnePerHa = "t/ha", "t/ha";
        /// Grams on a square metre of a bed.
        GPerM2 = "g/m2", "g/m²";
        /// Grams on a square metre of lawn.
        GPerM2OfLawn = "g/m2 of lawn", "g/m²";
        /// Square metres.
        SquareMetre = "m2", "m²";
        /// Centimetres.
        Cm = "cm", "cm";
        /// Millimetres.
        Mm = "mm", "mm";
        Days = "days", "days";
        /// A count of bags.
        Bags = "bags", "bags";
        /// Degrees Celsius.
        Celsius = "°C", "°C";
        /// Metres.
        Metre = "m", "m";
        /// Money, whichever the person pays in.
        Money = "money", "";
    }
}
