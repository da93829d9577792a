//! Publications behind the `chemistry` room.

use crate::sources::Source;

sources! { CHEMISTRY:
    /// Exchange capacity by summation, and by texture.
    OSU_CEC = "osu-anr-81" at "https://ohioline.osu.edu/factsheet/anr-81",
        "Ohio State University Extension ANR-81, Calculating Cation Exchange Capacity, Base Saturation, and Calcium Saturation, 2019";
    /// Charge of the bases, acidity by Adams–Evans, saturations.
    CLEMSON_CEC = "clemson-cec" at "http://www.clemson.edu/public/regulatory/ag-srvc-lab/soil-testing/cec-calculations.html",
        "Clemson University Agricultural Service Laboratory, Cation Exchange Capacity: Calculations";
    /// Acidity by Adams–Evans buffer.
    UGA_ADAMS_EVANS = "uga-adams-evans" at "http://aesl.ces.uga.edu/protected/methods/details/stl-soil/6.html",
        "University of Georgia, Soil Test Method 6: Adams–Evans buffer";
    /// Acidity by Mehlich buffer.
    NCDA_BUFFER = "ncda-mehlich-buffer" at "http://www.ncagr.gov/agronomi/bufftab1.htm",
        "North Carolina Department of Agriculture (NCDA&CS), Mehlich buffer acidity";
    /// Acidity by SMP and Sikora buffer.
    SMP_ACIDITY = "smp-acidity",
        "NCERA-13, Recommended Chemical Soil Test Procedures: acidity from SMP or Sikora buffer";
    /// Acidity by Woodruff buffer.
    WOODRUFF_ACIDITY = "woodruff-acidity",
        "University of Missouri, Soil Testing in Missouri: neutralizable acidity by Woodruff buffer";
    /// How pH follows base saturation.
    ADAMS_EVANS_1962 = "adams-evans-1962",
        "Adams and Evans, 1962, Soil Science Society of America Proceedings 26:355–357";
    /// Soluble sodium counted as exchangeable.
    UMN_ESP = "umn-esp" at "https://ral.cfans.umn.edu/exchangeable-sodium-percentage-esp-andor-sodium-adsorption-ratio-sar",
        "University of Minnesota Research Analytical Laboratory, exchangeable sodium percentage";
    /// Phosphorus saturation ratio.
    SIMS_2002 = "sims-2002" at "https://doi.org/10.2136/sssaj2002.2016",
        "Sims, Maguire, Leytem, Gartley and Pautler, 2002, Soil Science Society of America Journal 66:2016";
    /// Organic matter from carbon, the old factor.
    NRCS_SSIR45 = "nrcs-ssir-45" at "http://inspire.ec.europa.eu/codelist/SoilDerivedObjectParameterNameValue/organicCarbonContent",
        "USDA-NRCS Soil Survey Investigations Report 45: organic matter = 1.724 × organic carbon";
    /// Organic matter from carbon, the newer factor.
    PRIBYL_2010 = "pribyl-2010" at "https://doi.org/10.1016/j.geoderma.2010.02.003",
        "Pribyl, 2010, A critical review of the conventional SOC to SOM conversion factor, Geoderma 156:75–83";
    /// Nitrogen from organic matter.
    NITROGEN_RULE = "nitrogen-release-rule",
        "US extension rule: about 20 lb of nitrogen per acre and year for each 1 % of organic matter";
    /// Density of a soil from its organic matter.
    ADAMS_1973 = "adams-1973",
        "Adams 1973, The effect of organic matter on the bulk and true densities of some uncultivated podzolic soils, Journal of Soil Science 24:10–17";
}
