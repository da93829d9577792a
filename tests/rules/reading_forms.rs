//! Small tables within forms, names that say more than the property, and heads that stand over
//! nothing. Each cause in several shapes, with what only looks like it.

use emberloam_engine::report::{Pairing, SampleReport, open, read};
use emberloam_engine::soil::Property::{self, *};

use crate::reading_layouts::{counted_off, samples, together};
use crate::reading_traps::report;

fn found(text: &str) -> Vec<(Property, f64)> {
    let readings = report(text).samples.into_iter().flat_map(|s| s.readings);
    readings.filter_map(|r| Some((r.property, r.amount?.number()))).collect()
}

#[test]
fn elements_in_a_row_over_their_unit_are_results_of_the_sample_under_way() {
    let top = "Test\tResult\tUnit\npH\t6.4\t\nPhosphorus\t31\tppm\n\n";
    for table in [
        "\tCa\tMg\tK\tNa\nmeq/100g\t9.1\t1.9\t0.4\t0.1\n% of the CEC\t72.2\t15.1\t3.2\t0.8\n",
        "\tCa\tMg\tK\tNa\n% of CEC\t72.2\t15.1\t3.2\t0.8\nOptimum %\t65-75\t10-15\t3-5\t<3\n",
        "Cation saturation (%)\n\tCa\tMg\tK\tNa\nFound\t72.2\t15.1\t3.2\t0.8\nDesired\t65-75\t10-15\t3-5\t<3\n",
        "Base saturation (%)\t\t\t\nCa\tMg\tK\tNa\n72.2\t15.1\t3.2\t0.8\n65-75\t10-15\t3-5\t0.5-3\n",
    ] {
        let text = format!("{top}{table}");
        let all = found(&text);
        for share in
            [(CalciumSaturation, 72.2), (MagnesiumSaturation, 15.1), (SodiumSaturation, 0.8)]
        {
            assert!(all.contains(&share), "{share:?} in {text}: {all:?}");
        }
        assert_eq!(report(&text).samples.len(), 1, "{text}");
        assert!(!all.iter().any(|(_, n)| [65.0, 75.0, 10.0].contains(n)), "{text}: {all:?}");
    }
    assert!(
        found(&format!("{top}\tCa\tMg\tK\nmeq/100g\t9.1\t1.9\t0.4\n")).contains(&(Calcium, 9.1))
    );
    // Limits alone are none, and rows with names are samples.
    let limits = found(&format!("{top}\tCa\tMg\tK\nOptimum %\t70\t12\t4\n"));
    assert_eq!(limits.len(), 2, "{limits:?}");
    let plots = report("\tpH\tCa\tMg\tK\nNorth\t6.1\t900\t120\t88\nSouth\t5.6\t710\t97\t61\n");
    assert_eq!(
        plots.samples.iter().map(|s| s.name.as_str()).collect::<Vec<_>>(),
        ["North", "South"]
    );
}

#[test]
fn an_element_within_its_unit_is_no_second_name() {
    together(
        "Plot,pH,Nitrate (mg N kg-1),Ammonium (mg NH4-N kg−1),P (mg P kg⁻¹)\nC1,5.6,3.84,6.1,4.7\nC2,5.5,2.95,7.4,3.9\n",
        "C1: pH 5.6, nitrate-n 3.84 mg/kg, ammonium-n 6.1 mg/kg, P 4.7 mg/kg | \
         C2: pH 5.5, nitrate-n 2.95 mg/kg, ammonium-n 7.4 mg/kg, P 3.9 mg/kg",
    );
    // The oxide within a unit is counted as the oxide, and a rate of an area stays none.
    assert_eq!(found("pH 6.1\nP 12 mg P2O5/100 g\n")[1].0, Phosphorus);
    assert!(!found("pH 6.1\nPhosphorus 31 ppm\nlbs N/A 120\n").iter().any(|(_, n)| *n == 120.0));
}

#[test]
fn notes_factors_grains_and_temperatures_are_no_part_of_a_name() {
    for (line, expected) in [
        ("P (1)  24.6  mg/100 g", (Phosphorus, 24.6)),
        ("Organic matter (C x 1.72)  3.1  %", (OrganicMatter, 3.1)),
        ("Humus (Corg × 1,72)  3.1  %", (OrganicMatter, 3.1)),
        ("Silt 0.002-0.05 mm  41  %", (Silt, 41.0)),
        ("EC (1:5) 25 °C  0.31  dS/m", (Ec, 0.31)),
        ("C.E. (1:5) a 25 ºC  0.31  dS/m", (Ec, 0.31)),
        ("Sodium - ESP (%)  1.5", (SodiumSaturation, 1.5)),
        ("Nitrogen (N)  0.21  %", (TotalN, 0.21)),
        ("N . . . . . .  0.21 %", (TotalN, 0.21)),
        ("Materia orgánica (MO)  2.95  %", (OrganicMatter, 2.95)),
    ] {
        let text = format!("pH  6.2\n{line}\nMg  121  mg/kg\n").replace("  ", "\t");
        assert!(found(&text).contains(&expected), "{line}: {}", samples(&text));
    }
    // A rate in per cent of a bag is no nitrogen of a soil.
    let rates = "pH\t6.2\nNitrogen (N)\t120\t%\nMg\t121\tmg/kg\n";
    assert!(!found(rates).iter().any(|(p, _)| *p == TotalN), "{}", samples(rates));
}

#[test]
fn what_a_data_file_puts_before_the_names_of_its_columns_is_no_boron() {
    let text = "field;b_ph;b_P (mg/100g);b_K (mg/100g);b_Mg (mg/100g)\nHill;6,0;4,8;9,2;5,1\nMill;5,1;3,1;4,4;2,7\n";
    assert_eq!(found(text).len(), 8, "{}", samples(text));
    assert!(!found(text).iter().any(|(p, _)| *p == Boron), "{}", samples(text));
    // "not available" is no sodium, and "Mg_M3" no weight of a cubic metre.
    together(
        "Field,pH,P_M3 ppm,Mg_M3 ppm\nHill,6.0,48,91\nMill,5.1,NA,44\n",
        "Hill: pH 6, P 48 mg/kg by Mehlich-3, Mg 91 mg/kg by Mehlich-3 | \
         Mill: pH 5.1, Mg 44 mg/kg by Mehlich-3",
    );
}

#[test]
fn a_heading_over_nothing_and_a_ruled_line_leave_the_columns_as_they_are() {
    let text = "\
  Sample   Legal Land   Depth   Organic   Phosphorus   Potassium        pH        CEC
  Number   Descpt       (in)    Matter %  Bray P1      K ppm       Soil  Buffer   meq/100g
  ----------------------------------------------------------------------------------------
  BARN                  0-6     5.1       44 VH        268 VH      7.0            15.7
  LANE                  0-6     3.8       15 M          91 M       6.2   6.7      12.9
  BUSH                  0-6     3.2        8 L          74 L       5.6   6.4      12.7
";
    let all = report(text);
    assert_eq!(all.samples.len(), 3, "{}", samples(text));
    assert!(found(text).contains(&(BufferPh, 6.7)) && found(text).contains(&(Cec, 15.7)));
    assert!(!found(text).contains(&(BufferPh, 15.7)), "{}", samples(text));
}

#[test]
fn a_list_with_a_cell_a_line_is_read_though_its_blank_cells_left_none() {
    let list = "Item\nUnit\nDesired\nFound\nOM\n%\n4-10\n2.3\npH\n6.3-6.8\n5.7\nP\nppm\n40-60\n57\n\
                Na\nppm\n10-30\n9\nK\n%\n3-5\n2.9\nCEC\nmeq/100g\n5.9\n";
    together(
        list,
        "Sample 1: organic-matter 2.3 %, pH 5.7, P 57 mg/kg, sodium 9 mg/kg, \
         potassium-saturation 2.9 %, cec 5.9 meq/100 g",
    );
    // Of two numbers beside a name nobody knows which was found.
    let two = list.replace("P\nppm\n40-60\n57\n", "P\nppm\n40\n57\n");
    let read = open(two.as_bytes()).and_then(|grid| read(&grid));
    let readings = read.iter().flat_map(|r| &r.samples).flat_map(|s| &s.readings);
    assert!(!readings.into_iter().any(|r| r.property == Phosphorus));
}

#[test]
fn two_units_of_one_result_leave_the_lines_below_to_its_sample() {
    let text = "Nutrient\tppm\tlb/acre\nPhosphorus\t52\t104\nPotassium\t166\t332\nZinc\t3.7\t7.4\n\npH 6.4, CEC 11.6 meq/100g\n";
    assert!(found(text).contains(&(Ph, 6.4)), "{}", samples(text));
    // Below a table of two samples it is nobody's.
    let two = "Nutrient\tNorth\tSouth\nPhosphorus ppm\t52\t31\nPotassium ppm\t166\t97\n\npH 6.4, CEC 11.6 meq/100g\n";
    assert!(!found(two).contains(&(Ph, 6.4)), "{}", samples(two));
}

#[test]
fn the_next_sample_ends_what_was_advised_for_the_last() {
    let one = |name: &str, ph: &str| {
        format!(
            "Client Identification: {name}   Set Number: 205   Report Date: 15-Nov-24   Crop: garden   Lab Number: 7\npH (1:2)   {ph}\nPhosphorus (ppm P)   26\nLime and Fertilizer Recommendations\nLime: 0 lbs per 1000 sq ft\n"
        )
    };
    let text = one("BED 2", "7.3") + &one("FRONT YARD", "5.2");
    let all = report(&text);
    assert_eq!(all.samples.len(), 2, "{}", samples(&text));
    assert!(found(&text).contains(&(Ph, 5.2)), "{}", samples(&text));
}

#[test]
fn a_number_within_the_name_of_one_plot_takes_nothing_from_the_others() {
    counted_off(
        "Laboratory Field Details\nReference Soil pH P mg/l K mg/l Mg mg/l\n\
         401/1 TOP DALE 6.1 14.2 151 72\n401/2 CHAPEL 14 AC 7.4 31.8 204 44\n401/3 COW PASTURE 5.7 19.6 96 118\n",
        "401/1 TOP DALE: pH 6.1, P 14.2 mg/L, K 151 mg/L, Mg 72 mg/L | \
         401/2 CHAPEL 14 AC: pH 7.4, P 31.8 mg/L, K 204 mg/L, Mg 44 mg/L | \
         401/3 COW PASTURE: pH 5.7, P 19.6 mg/L, K 96 mg/L, Mg 118 mg/L",
    );
}

#[test]
fn a_report_in_one_line_with_a_rate_behind_each_name_is_asked() {
    let line = "SOIL ANALYSIS Sample ID OM % Rate P M3 ppm Rate K ppm Rate pH SHED 2.1 L 96 VH 134 M 6.0 LANE 3.4 M 31 M 88 L 5.5";
    let read = open(line.as_bytes()).and_then(|grid| read(&grid));
    for reading in read.iter().flat_map(|r| &r.samples).flat_map(|s| &s.readings) {
        assert_eq!(reading.pairing, Pairing::CountedOff, "{reading:?}");
    }
}

#[test]
fn what_is_counted_off_under_no_name_is_listed() {
    let text = "Sample Sulfur Nitrate Zinc Manganese Iron Copper Boron Soluble Saturation Aluminum K/Mg Chloride\n\
                Number S ppm NO3-N ppm Zn ppm Mn ppm Fe ppm Cu ppm B ppm Salts %P Al ppm Ratio Cl ppm\nms/cm\n\
                WEST 12 M 16 2.9 M 27 M 88 VH 1.3 M 0.6 L 0.4 L 9 M 733 0.24 21\n\
                HILL 7 L 5 1.1 L 15 L 34 H 0.8 L 0.9 M 0.2 VL 3 VL 415 0.07 12\n";
    let all = report(text);
    let listed = all.unread.iter().chain(all.samples.iter().flat_map(|s| &s.unread));
    let listed: Vec<&str> = listed.map(|u| u.text.as_str()).collect();
    let numbers = text
        .lines()
        .skip(3)
        .flat_map(|line| line.split(' '))
        .filter(|w| w.starts_with(|c: char| c.is_ascii_digit()));
    let mut missing: Vec<&str> = numbers
        .filter(|n| {
            let value: f64 = n.parse().expect("a number");
            let read = found(text).iter().any(|(_, number)| *number == value);
            !read && !listed.iter().any(|t| t.split(' ').any(|w| w == *n))
        })
        .collect();
    missing.dedup();
    assert!(missing.is_empty(), "{missing:?} of {}; {listed:?}", samples(text));
}

#[test]
fn a_second_field_below_a_table_of_depths_names_the_next() {
    let one = |field: &str, ph: &str| {
        format!(
            "Field: {field}     Acres: 148     Next crop: wheat\n\nDepth      NO3-N     K         pH\n           lb/ac     lb/ac\n0-6\"       21        540       {ph}\n6-12\"      12                  6.8\n12-24\"     19                  7.6\n\n"
        )
    };
    let all = report(&(one("North Fen", "6.3") + &one("Mill End", "7.2")));
    let name = |ph: f64| {
        let has = |s: &&SampleReport| {
            s.readings.iter().any(|r| r.property == Ph && r.amount.map(|a| a.number()) == Some(ph))
        };
        all.samples.iter().find(has).map(|s| s.name.clone()).expect("it is read")
    };
    assert!(
        name(6.3).starts_with("North Fen") && name(7.2).starts_with("Mill End"),
        "{}, {}",
        name(6.3),
        name(7.2)
    );
}

#[test]
fn depths_in_two_columns_beside_one_result_a_row_are_each_a_sample_of_its_own() {
    let row = |top: u32, property: &str, result: &str| {
        format!("L1,Gable Row,{top},{},{property},{result},mg/kg\n", top + 12)
    };
    let text =
        String::from("LabID,ClientSampleID,DepthTop_in,DepthBottom_in,Analyte,Result,Units\n")
            + &row(0, "Phosphorus", "62")
            + &row(0, "Potassium", "214")
            + &row(12, "Phosphorus", "23")
            + &row(12, "Potassium", "101");
    let depths: Vec<_> = report(&text).samples.iter().map(|s| s.depth_cm).collect();
    let inches = |a: f64, b: f64| Some((a * 2.54, b * 2.54));
    assert_eq!(depths, [inches(0.0, 12.0), inches(12.0, 24.0)], "{}", samples(&text));
}

#[test]
fn a_row_that_stands_one_column_off_is_given_to_nobody() {
    let text = "Test\tBACK\tFRONT\nPhosphorus ppm\t31\t44\nPotassium ppm\t121\t140\nSodium ppm\t\t43\t47\n";
    assert!(!found(text).iter().any(|(p, _)| *p == Sodium), "{}", samples(text));
    // One that is missing for the first sample alone stays with the second.
    let missing = text.replace("\t\t43\t47", "\t\t43");
    assert!(found(&missing).contains(&(Sodium, 43.0)), "{}", samples(&missing));
}

#[test]
fn what_asks_for_a_name_is_none() {
    let text = "SOIL REPORT\nCustomer\nA. Odera\nCounty\nNyamara\nField name\nUpper Shamba\nCrop\nFrench beans\nParameter\nResult\nUnit\npH\n5.34\n-\nP\n11.2\nppm\nK\n141\nppm\nCa\n880\nppm\nMg\n96\nppm\nZn\n1.2\nppm\n";
    for sample in report(text).samples {
        assert_ne!(sample.name, "Field name", "{}", samples(text));
    }
}
