//! Tables whose names and numbers no rule can bring together: the likeliest way is asked, and
//! what is as likely another way is not read. Each from pasted text to readings, and all
//! invented; the layouts are those of laboratories (common practice, no source).

use emberloam_engine::report::Pairing;

use crate::reading_layouts::{counted_off, gives_nothing, samples, together};
use crate::reading_traps::report;

/// The names of a group stand in the line below its heading, between those of the upper line.
#[test]
fn the_names_of_two_lines_are_put_together() {
    counted_off(
        "Plot Depth Exchangeable cations (cmol/kg) Cu Zn OM\nNo. cm pH K Ca Mg mg/kg mg/kg %\n\
         Alder 0-20 6.1 0.42 8.1 1.6 2.2 3.1 4.4\nBirch 0-20 5.4 0.21 4.0 0.9 1.1 1.4 3.2\n",
        "Alder 0-20: pH 6.1, K 0.42 ?, Ca 8.1 ?, Mg 1.6 ?, copper 2.2 ?, Zn 3.1 ?, \
         organic-matter 4.4 ? | \
         Birch 0-20: pH 5.4, K 0.21 ?, Ca 4 ?, Mg 0.9 ?, copper 1.1 ?, Zn 1.4 ?, \
         organic-matter 3.2 ?",
    );
}

/// A table of rates has no pH, no share of the exchange and no organic matter.
#[test]
fn rates_in_the_same_dress_are_none() {
    gives_nothing(
        "Field Crop Nutrients\nNo. and yield N P2O5 K2O Mg S\nAlder Maize 170 20 45 10 12\n\
         Birch Barley 90 60 120 0 15\n",
    );
}

/// Several numbers behind each name are samples only where a line above says so.
#[test]
fn numbers_behind_names_are_samples_where_a_line_says_so() {
    let list = "pH of soil 6.4 6.9 5.5\nOrganic matter, percent 5.1 6.4 2.8\n\
                CALCIUM: lbs/acre Desired Value 3106 3555 2080\nValue Found 2980 4012 1326\n\
                BASE SATURATION %\nMagnesium (10 to 20%) 14.6 11.3 9.2\n\
                TRACE ELEMENTS\nZinc (p.p.m.) 8.4 15.6 2.1\n";
    counted_off(
        &format!("Sample Location North South Orchard\nSample ID 1 2 3\n{list}"),
        "North: pH 6.4, organic-matter 5.1 %, Ca 2980 ?, magnesium-saturation 14.6 %, \
         Zn 8.4 mg/kg | \
         South: pH 6.9, organic-matter 6.4 %, Ca 4012 ?, magnesium-saturation 11.3 %, \
         Zn 15.6 mg/kg | \
         Orchard: pH 5.5, organic-matter 2.8 %, Ca 1326 ?, magnesium-saturation 9.2 %, \
         Zn 2.1 mg/kg",
    );
    // A result and its limits look the same.
    gives_nothing("pH 6.2 6.0 7.0\nP 12 20 30\nK 99 120 160\nZn 1.2 1.5 4\n");
}

/// Two pounds per acre are one ppm, so that nothing is to be asked; else it is.
#[test]
fn numbers_behind_names_may_be_one_result_in_two_units() {
    let head = "Nutrient Concentration\nppm lb/acre\n";
    together(
        &format!("{head}P 64 128\nK 91 182 Low\nCa 1,022 2,044 -\nMg 77 154\npH 6.1\n"),
        "Sample 1: P 64 mg/kg, K 91 mg/kg, Ca 1022 mg/kg, Mg 77 mg/kg, pH 6.1",
    );
    let other = report(&format!("{head}P 64 90\nK 91 140\nCa 1022 1500\nMg 77 99\n"));
    assert!(other.samples[0].readings.iter().all(|r| r.pairing == Pairing::CountedOff));
}

/// Ratings, blanks and aims between the samples move no number.
#[test]
fn samples_beside_each_other_are_told_by_their_place() {
    together(
        "Field          :   Home         River        Hill          Target\n\
         Lab no.        :   88410        88411        88412\n\
         pH                 5,7          5,4  low     4,9           6,0\n\
         P-Olsen  mg/kg :   9,4  B       17,2 M                     20\n\
         K        mg/kg :   133  M                    211  A        150\n\
         Zn       mg/kg :   0,9          0,5          1,4           1,0\n",
        "Home: pH 5.7, P 9.4 mg/kg by Olsen, K 133 mg/kg, Zn 0.9 mg/kg | \
         River: pH 5.4, P 17.2 mg/kg by Olsen, Zn 0.5 mg/kg | \
         Hill: pH 4.9, K 211 mg/kg, Zn 1.4 mg/kg",
    );
}

#[test]
fn a_cell_a_line_in_three_ways() {
    // Each name with its unit, its number and its range below it.
    together(
        "pH\npH units\n6.7\n6.0 - 6.5\nOlsen Phosphorus\nmg/L\n174\n30 - 60\nCalcium\nme/100g\n\
         21.4\n8.0 - 14.0\nZinc\nmg/kg\n1.9\n",
        "Sample 1: pH 6.7, P 174 mg/L by Olsen, Ca 21.4 meq/100 g, Zn 1.9 mg/kg",
    );
    // Each name with the numbers of all samples below it.
    counted_off(
        "Sample\n1\n2\n3\nName\nKitchen\nLawn\nBerries\npH\n6.8\n5.1\n5.7\nP mg/kg\n52\n19\n38\n\
         K mg/kg\n24\n70\n130\nZn mg/kg\n4.1\n1.3\n0.9\n",
        "Kitchen: pH 6.8, P 52 mg/kg, K 24 mg/kg, Zn 4.1 mg/kg | \
         Lawn: pH 5.1, P 19 mg/kg, K 70 mg/kg, Zn 1.3 mg/kg | \
         Berries: pH 5.7, P 38 mg/kg, K 130 mg/kg, Zn 0.9 mg/kg",
    );
    // Names broken over lines, and then each sample's numbers.
    counted_off(
        "Sample\nNumber\nOrganic\nMatter\nPhosphorus\nP ppm\nPotassium\nK ppm\nCalcium\nCa ppm\n\
         pH\nCEC\nLANE\n3.8\n22 M\n146 H\n2040 M\n6.7\n13.8\nBUSH\n2.9\n9 L\n98 M\n1480 M\n5.9\n\
         12.3\n",
        "LANE: organic-matter 3.8 ?, P 22 mg/kg, K 146 mg/kg, Ca 2040 mg/kg, pH 6.7, cec 13.8 ? | \
         BUSH: organic-matter 2.9 ?, P 9 mg/kg, K 98 mg/kg, Ca 1480 mg/kg, pH 5.9, cec 12.3 ?",
    );
    // Of several numbers below one name none is taken in silence.
    assert!(!samples("pH 6.1\nZinc (ppm)\n1.2\n3.4\n5.6\n").contains("Zn"));
}

/// Columns under no head, and a few numbers beside a full list, are asked.
#[test]
fn what_nobody_says_is_a_sample_is_asked() {
    let headless = report("pH\t6.1\t5.8\nP ppm\t12\t20\nK ppm\t99\t120\n");
    assert!(
        headless
            .samples
            .iter()
            .flat_map(|s| &s.readings)
            .all(|r| { r.pairing == Pairing::CountedOff })
    );
    let stray = report(
        "Sample\tpH\tP ppm\tK ppm\tCa ppm\tMg ppm\tZn ppm\nOak\t6.1\t12\t99\t1400\t120\t1.1\n\
         Elm\t5.9\t18\t77\t1200\t99\t0.9\n\nLegend\nTexture 1.0 = sand, 3.0 = clay\n",
    );
    let beside = stray.samples.iter().filter(|s| s.name != "Oak" && s.name != "Elm");
    assert!(beside.flat_map(|s| &s.readings).all(|r| r.pairing == Pairing::CountedOff));
}

/// Limits in a row of their own, fertiliser in a line, and what a letter quotes are no results.
#[test]
fn limits_fertiliser_and_quotations_are_no_results() {
    let limits = "Field,pH,EC,Cl,B\nNorth,7.6,1.84,98,0.3\nSouth,7.4,1.12,51,0.2\n\
                  Guideline (almond),6.5-7.8,< 1.5,> 20,> 0.1\n";
    assert_eq!(report(limits).samples.len(), 2);
    gives_nothing("Wheat 65 bu  N 60  P2O5 20  K2O 0\nCanola 50 bu  N 95  P2O5 35  K2O 10\n");
    let letter = "My soil: pH 6.1, P 18 ppm, K 99 ppm\n\n> pH 7.4\n> K 61 ppm\nYou are fine.\n";
    assert!(!samples(letter).contains("7.4") && !samples(letter).contains("61"));
    // A whole report that was sent on is quoted on every line.
    together(
        "Here it is:\n> pH 6.1\n> P 18 ppm\n> K 99 ppm\n> Zn 1.1 ppm\n> Ca 1400 ppm\n",
        "Sample 1: pH 6.1, P 18 mg/kg, K 99 mg/kg, Zn 1.1 mg/kg, Ca 1400 mg/kg",
    );
}
