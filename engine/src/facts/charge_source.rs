//! What biochar is charged with.

use crate::named::named;

named! { "thing to charge with":
    /// What can charge biochar.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum ChargeSource {
        /// Finished compost.
        Compost = "compost";
        /// Worm castings.
        Vermicompost = "vermicompost";
        /// Manure, aged or heaped but never composted hot.
        AgedManure = "aged-manure";
        /// Compost tea.
        CompostTea = "compost-tea";
        /// Liquid from nettles or comfrey left to rot in water.
        PlantLiquid = "plant-liquid";
        /// Fish hydrolysate or emulsion.
        FishHydrolysate = "fish-hydrolysate";
        /// Urine, diluted.
        Urine = "urine";
        /// Ammonium sulfate.
        AmmoniumSulfate = "ammonium-sulfate";
        /// Calcium ammonium nitrate.
        CalciumAmmoniumNitrate = "calcium-ammonium-nitrate";
        /// Blood meal.
        BloodMeal = "blood-meal";
        /// Another soluble nitrogen fertiliser that brings no phosphorus.
        NitrogenFertiliser = "nitrogen-fertiliser";
        /// A soluble complete (N-P-K) fertiliser.
        CompleteFertiliser = "complete-fertiliser";
        /// Ash of untreated wood.
        WoodAsh = "wood-ash";
    }
}
