//! How people paste: tables copied with a cell a line, broken heads, chats, forms, pages whose
//! units, aims and rates stand beside the results. Each cause in several shapes.

use emberloam_engine::report::{Pairing, Reading, Report, open, read as read_grid};
use emberloam_engine::soil::Property::{self, *};

use crate::reading_layouts::{counted_off, together};
use crate::reading_traps::report;

/// The names of the samples that a text has.
fn names(text: &str) -> Vec<String> {
    report(text).samples.into_iter().map(|s| s.name).collect()
}

fn open_and_read(text: &str) -> Option<Report> {
    open(text.as_bytes()).and_then(|grid| read_grid(&grid)).ok()
}

/// What is read of a text, sample by sample.
fn read(text: &str) -> Vec<(Property, f64)> {
    let samples = report(text).samples;
    let readings = samples.iter().flat_map(|s| &s.readings);
    readings.filter_map(|r| Some((r.property, r.amount?.number()))).collect()
}

#[test]
fn heads_below_each_other_stand_over_records_and_over_rows() {
    // A cell a line, the depth first and the block as a heading of its own.
    let text = "Profondeur\n(cm)\npH eau\nCalcaire total (%)\nMO (%)\nCEC (méq/100g)\nVieux rang\n\
                0-20\n7,61\n12,4\n2,31\n19,6\n20-40\n7,74\n11,8\n1,74\n18,9\nJeune rang\n0-20\n\
                7,70\n13,0\n1,62\n18,4\n20-40\n7,82\n12,1\n1,20\n18,0\n";
    assert_eq!(
        names(text),
        ["Vieux rang", "Vieux rang, 20–40 cm", "Jeune rang", "Jeune rang, 20–40 cm"]
    );
    // Units in a list of their own, as many as there are names that have one.
    counted_off(
        "Name\npH\nPhosphorus\nPotassium\nOrganic matter\nUnits\nmg/l\nmg/l\n%\nTop strip\n5.9\n18\n\
         162\n3.4\nLow strip\n6.6\n31\n204\n4.1\n",
        "Top strip: pH 5.9, P 18 mg/L, K 162 mg/L, organic-matter 3.4 % | \
         Low strip: pH 6.6, P 31 mg/L, K 204 mg/L, organic-matter 4.1 %",
    );
    // Cells of a head whose lines were broken, over rows that kept their cells.
    counted_off(
        "Field\tSample no.\tpH H2O\tP\nPhosphorus\nmg/L class\tK\nPotassium\nmg/L class\tMg\nMagnesium\n\
         mg/L class\nTunnel\t411\t6.4\t38.5 low\t176 high\t92 high\n\
         Yard\t412\t6.9\t71.3 high\t264 high\t131 high\n",
        "Tunnel: pH 6.4, P 38.5 mg/L, K 176 mg/L, Mg 92 mg/L | \
         Yard: pH 6.9, P 71.3 mg/L, K 264 mg/L, Mg 131 mg/L",
    );
}

#[test]
fn a_column_off_is_no_way_to_read_records() {
    // Thirteen names over records of twelve numbers: pH 2040 can't be.
    let text = "Sample\nOrganic matter\nPotassium\nCalcium\npH\nCEC\nBARN\n3.8\n146\n2040\n6.7\n\
                LANE\n2.9\n98\n1480\n5.9\n";
    let found = read(text);
    assert!(!found.iter().any(|(p, n)| *p == Ph && *n > 14.0), "{found:?}");
    assert!(!found.contains(&(OrganicMatter, 146.0)), "{found:?}");
}

#[test]
fn a_table_copied_a_cell_a_line_is_a_table() {
    together(
        "Parameter\nUnit\nUpper plots\nLower plots\npH\n-\n6.8\n7.3\nColour\n-\n41\n36\nHumus\n%\n\
         2.9\n1.5\nZinc\nmg/kg\n2.1\n1.3\nCopper\nmg/kg\n3.4\n11.6\nBoron\nmg/kg\n0.4\n0.6\n",
        "Upper plots: pH 6.8, organic-matter 2.9 %, Zn 2.1 mg/kg, copper 3.4 mg/kg, boron 0.4 mg/kg | \
         Lower plots: pH 7.3, organic-matter 1.5 %, Zn 1.3 mg/kg, copper 11.6 mg/kg, boron 0.6 mg/kg",
    );
    // Names with their results in turn are a list, whatever step fits them.
    let text =
        "Soil pH\n7.2 (high)\nPhosphorus\n88 ppm\nPotassium\n264 ppm\nZinc\n3 ppm\nBoron\n1 ppm\n";
    let wanted = [(Ph, 7.2), (Phosphorus, 88.0), (Potassium, 264.0), (Zinc, 3.0), (Boron, 1.0)];
    assert_eq!(read(text), wanted);
}

#[test]
fn what_was_found_below_its_limits_is_the_result() {
    for text in [
        "Kalium\nMangel unter 90\nÜberdüngung ab 130\nMesswert 486 mg/kg\n",
        "Kalium\nGrenzwert 130\nMesswert: 486 [mg/kg Boden]\n",
        "Potassium\nOptimum 90 to 130\nResult 486 mg/kg\n",
    ] {
        assert_eq!(read(text), [(Potassium, 486.0)], "{text}");
    }
}

#[test]
fn aims_beside_results_are_no_samples() {
    for text in [
        // Two crops' aims, and no head over the rows.
        "CALCIUM\tCa\tppm\t842\t1140\t>900\nMAGNESIUM\tMg\tppm\t263\t<166\t150-200\n\
         POTASSIUM\tK\tppm\t204\t120-151\t<151\nBORON\tB\tppm\t0.4\t0.4-0.6\t0.6-1.0\n",
        "Parameter\tEast\tGuidance for gardens\nCalcium ppm\t842\t1140\nMagnesium ppm\t263\t166\n\
         Potassium ppm\t204\t151\nBoron ppm\t0.4\t0.6\n",
        "Paramètre\tRang 4\tVisé\nCalcium ppm\t842\t1140\nMagnésium ppm\t263\t166\n\
         Potassium ppm\t204\t151\nBore ppm\t0,4\t0,6\n",
        "Nährstoff | gemessener Wert mg/kg | optimale Werte mg/kg\nCalcium | 842 | 1140\n\
         Magnesium | 263 | 166\nKalium | 204 | 151\nBor | 0,4 | 0,6\n",
    ] {
        let wanted = [(Calcium, 842.0), (Magnesium, 263.0), (Potassium, 204.0), (Boron, 0.4)];
        assert_eq!(read(text), wanted, "{text}");
    }
    let row =
        "Depth,pH,K ppm,Zn ppm\n0-6 in,6.8,328,1.7\n6-12 in,7.4,210,0.9\nCritical level,,150,1.0\n";
    assert!(!read(row).contains(&(Potassium, 150.0)));
}

#[test]
fn lower_and_upper_may_call_a_place() {
    let text = "Test\tLower plots\tUpper plots\tUpper limit\npH\t7.0\t6.7\t7.5\nP ppm\t54\t71\t40\n\
                K ppm\t266\t319\t200\nZn ppm\t2.7\t9.4\t10\n";
    assert_eq!(names(text), ["Lower plots", "Upper plots"]);
}

#[test]
fn rates_are_no_results_wherever_they_stand() {
    for text in [
        "pH 6.1\nP 31 ppm\nFertilizer requirements, g per 10 square metres\nPhosphate (P2O5)\n20\nPotash (K2O)\n90\n",
        "pH 6.1\nP 31 ppm\nTo add, lb per 100 sq ft\nPhosphate (P2O5)\t0.2\nPotash (K2O)\t0.4\n",
        "Lab #\tpH\tP ppm\nS1\t6.1\t31\nLab #\tN\tP2O5\tK2O\tMg\tLimestone t/ha\nS1\t150\t100\t180\t30\t2\n",
        "Sample ID: FRONT   Lime history: none   Recommendations   Class: Mineral\n\
         Lime   N   P2O5   K2O   Mg\nCrop (lb per 1,000 sq ft)\n1 - Lawn   50.0   1.0   0.5   1.0   3\n\
         Test results   (in ppm)\npH   P ppm\n6.1   31\n",
    ] {
        assert_eq!(read(text), [(Ph, 6.1), (Phosphorus, 31.0)], "{text}");
    }
    // At the end of a report in one line.
    let line = "pH eau 8,2 Calcaire total 21 % Matière organique 1,6 % Azote total 0,9 g/kg Fer EDTA \
                19,6 mg/kg Zinc EDTA 3,7 mg/kg Cuivre EDTA 6,3 mg/kg Bore 0,6 mg/kg CEC 13,8 cmol+/kg \
                Conseil annuel N 30 P2O5 40 K2O 10 MgO 15 unités/ha.";
    assert!(!read(line).iter().any(|(p, _)| matches!(p, Phosphorus | Potassium | Magnesium)));
}

#[test]
fn a_title_a_time_and_a_slide_name_no_sample() {
    for text in [
        "Soil Report (Mehlich 3)\npH 6.1\nP 31 ppm\nK 160 ppm\nPaste Report\npH 6.6\nP 3 ppm\nK 16 ppm\n",
        "Slide 8\npH 6.1\nP 31 ppm\nK 160 ppm\nSlide 9\npH 6.6\nP 3 ppm\nK 16 ppm\n",
        "Asked July 2, 9:12 AM EDT\npH 6.1\nP 31 ppm\nK 160 ppm\nAnswered July 3, 8:40 AM\npH 6.6\nP 3 ppm\nK 16 ppm\n",
    ] {
        for name in names(text) {
            assert!(name.starts_with("Sample "), "{name} in {text}");
        }
    }
    let text = "Analysis of the ball field\npH 5.7\nP 9 lb/acre\nK 141 lb/acre\n\
                Analysis of the creek pasture\npH 6.4\nP 38 lb/acre\nK 262 lb/acre\n";
    assert_eq!(names(text), ["ball field", "creek pasture"]);
}

#[test]
fn depths_tell_rows_apart_that_have_no_name() {
    let rows = "Depth\tpH\tK ppm\n0-6 in\t6.8\t328\n6-12 in\t7.4\t210\n";
    assert_eq!(names(rows), ["0–6 in", "6–12 in"]);
    let form = format!("Client\tJ. Ruiz\tField\tHome 14\tReport\tAB-20417\n{rows}");
    assert_eq!(names(&form), ["Home 14, 0–6 in", "Home 14, 6–12 in"]);
}

#[test]
fn a_message_has_its_sender_and_no_sample_of_that_name() {
    let chat = "[10/01/2024, 20:41] Paula: all mg/l\n\
                [10/01/2024, 20:42] Paula: 1 The Haggard - pH 6.2 / P 9.1 (4) / K 168 (4) / Mg 140\n\
                2 Bog Field - pH 5.5 / P 2.6 (1) / K 61 (2) / Mg 118\n";
    let found = read(chat);
    let first = [(Ph, 6.2), (Phosphorus, 9.1), (Potassium, 168.0), (Magnesium, 140.0)];
    assert_eq!(found[..4], first);
    assert_eq!(found.len(), 8);
    assert!(!names(chat).iter().any(|name| name.contains("Paula")));
    // A greeting's comma parts no cells.
    let letter =
        "Bonjour à tous,\nVoici mes résultats, je recopie.\npH eau 6,9\nMatière organique 5,8 %\n";
    assert_eq!(read(letter), [(Ph, 6.9), (OrganicMatter, 5.8)]);
}

#[test]
fn an_earlier_year_is_told_apart() {
    let text = "### Hoop house\n\n| Test | 2021 | 2024 | Rating |\n|---|---|---|---|\n| pH | 6.9 | 6.6 | good |\n\
                | P ppm | 88 | 71 | high |\n| K ppm | 133 | 152 | medium |\n\n### Pasture (composite)\n\n\
                | Test | 2021 | 2024 | Rating |\n|---|---|---|---|\n| pH | 5.8 | 6.1 | low |\n\
                | P ppm | 9 | 13 | low |\n| K ppm | 171 | 184 | good |\n";
    let wanted = [
        "Hoop house, 2021",
        "Pasture (composite), 2021",
        "Hoop house, 2024",
        "Pasture (composite), 2024",
    ];
    assert_eq!(names(text), wanted);
    // The first test in a sentence with its year, and today's.
    let told = "The first test, in 2022, said pH 7.0, organic matter was 5.6 % and K was 74 ppm there. \
                Now the pH is 7.4, organic matter is 4.9 % and K is 52 ppm in the same bed.";
    assert_eq!(read(told), [(Ph, 7.4), (OrganicMatter, 4.9), (Potassium, 52.0)]);
}

#[test]
fn shares_under_their_heading_are_shares() {
    let table = "Test\tFound\nCalcium ppm\t1782\nBase saturation, percent\nCalcium\t65.5\nPotassium\t2.8\n\
                 Minor elements, ppm\nBoron\t0.5\n";
    let wanted =
        [(Calcium, 1782.0), (CalciumSaturation, 65.5), (PotassiumSaturation, 2.8), (Boron, 0.5)];
    assert_eq!(read(table), wanted);
    let line =
        "Pasture: pH 6.6, CEC 10.9 meq/100 g. Base saturation Ca 66.2 / Mg 19.4 / K 7.9 / Na 0.6 %";
    assert!(read(line).contains(&(SodiumSaturation, 0.6)), "{:?}", read(line));
    assert!(!read(line).iter().any(|(p, _)| *p == Sodium));
}

#[test]
fn a_class_behind_an_amount_leaves_it_its_unit() {
    together(
        "Field\tpH\tP mg/l (Index)\tK mg/l (Index)\nTop strip\t5.3\t8.8 (0)\t59 (0)\nLow strip\t6.4\t38.6 (3)\t311 (3)\n",
        "Top strip: pH 5.3, P 8.8 mg/L, K 59 mg/L | Low strip: pH 6.4, P 38.6 mg/L, K 311 mg/L",
    );
    // Their units and classes ahead of the names, in one line.
    let text = "Index mg/l (Available) Field Soil pH P K Mg P K Mg\n\
                557101 Gallows piece 7.8 2 2+ 1 19.4 228 42\n557102 Long dean 6.2 1 1 3 12.8 104 131\n\
                557103 Nine acres 6.9 3 2- 2 31.0 166 77\n";
    assert!(read(text).contains(&(Phosphorus, 19.4)), "{:?}", read(text));
    assert!(!read(text).contains(&(Phosphorus, 2.0)));
}

#[test]
fn numbers_that_count_rows_and_letters_that_call_plots_are_neither() {
    let text = "Sl.\tParameter\tPlot A\tPlot B\tUnit\n1\tpH\t4.9\t5.6\t-\n2\tAvailable K\t96\t188\tkg/ha\n\
                3\tZinc\t0.9\t2.3\tmg/kg\n4\tBoron\t0.2\t0.5\tmg/kg\n";
    together(
        text,
        "Plot A: pH 4.9, K 96 kg/ha, Zn 0.9 mg/kg, boron 0.2 mg/kg | \
         Plot B: pH 5.6, K 188 kg/ha, Zn 2.3 mg/kg, boron 0.5 mg/kg",
    );
}

#[test]
fn blanks_part_thousands_only_before_their_unit() {
    assert_eq!(read("Calcium : 9 850,00 mg/kg\npH 8,3\n"), [(Calcium, 9850.0), (Ph, 8.3)]);
    assert_ne!(read("Calcium 98 120\npH 6.1\n").first(), Some(&(Calcium, 98_120.0)));
}

#[test]
fn what_is_far_too_little_for_a_total_is_asked() {
    let text = "Sample\tpH\tTotal nitrogen ppm\tTotal organic carbon ppm\nLane\t6.4\t40.3\t302\n";
    let samples = report(text).samples;
    let asked = |wanted: Property| {
        let mut of = samples.iter().flat_map(|s| &s.readings).filter(|r| r.property == wanted);
        of.all(|r| r.pairing == Pairing::CountedOff)
    };
    assert!(asked(TotalN) && asked(OrganicCarbon));
}

/// Whether each reading of a text that has this number is asked, and there is one.
fn is_asked(text: &str, number: f64) -> bool {
    let samples = report(text).samples;
    let of = |r: &&Reading| r.amount.is_some_and(|a| (a.number() - number).abs() < 1e-9);
    let found: Vec<&Reading> = samples.iter().flat_map(|s| &s.readings).filter(of).collect();
    !found.is_empty() && found.iter().all(|r| r.pairing == Pairing::CountedOff)
}

#[test]
fn a_table_whose_lines_were_lost_is_found_among_its_words() {
    // Units below the names, beside them, and none; rows by a name, a name with a number, a depth.
    counted_off(
        "Salt and Nutrient Sheet Redgum Lab Grower: Tolland Orchards Date 11/08/2024 Sample pH EC B Cl \
         NO3-N K Zn ID dS/m ppm ppm ppm ppm ppm North-1 7.2 1.34 0.4 62 11.8 148 1.1 North-2 7.6 \
         2.05 0.7 133 4.2 97 0.4 South-1 7.9 3.62 1.3 284 17.5 122 0.8 Comments: leach the south end \
         with 9 inches of water.",
        "North-1: pH 7.2, ec 1.34 dS/m, boron 0.4 mg/kg, chloride 62 mg/kg, nitrate-n 11.8 mg/kg, \
         K 148 mg/kg, Zn 1.1 mg/kg | North-2: pH 7.6, ec 2.05 dS/m, boron 0.7 mg/kg, chloride 133 mg/kg, \
         nitrate-n 4.2 mg/kg, K 97 mg/kg, Zn 0.4 mg/kg | South-1: pH 7.9, ec 3.62 dS/m, boron 1.3 mg/kg, \
         chloride 284 mg/kg, nitrate-n 17.5 mg/kg, K 122 mg/kg, Zn 0.8 mg/kg",
    );
    counted_off(
        "SOIL ANALYSIS Account 04417 Page 1 Sample ID OM % Rate P M3 ppm Rate K ppm Rate Mg ppm Rate Ca \
         ppm Rate pH CEC meq/100g SHED 2.1 L 96 VH 134 M 101 M 870 M 6.0 7.0 LANE 3.4 M 31 M 88 L 142 \
         H 1130 M 5.5 10.3 Values on this sheet are of air-dry soil.",
        "SHED: organic-matter 2.1 %, P 96 mg/kg by Mehlich-3, K 134 mg/kg, Mg 101 mg/kg, Ca 870 mg/kg, \
         pH 6, cec 7 meq/100 g | LANE: organic-matter 3.4 %, P 31 mg/kg by Mehlich-3, K 88 mg/kg, \
         Mg 142 mg/kg, Ca 1130 mg/kg, pH 5.5, cec 10.3 meq/100 g",
    );
    let pit = "Pit on a flat, hard red clay, calcareous below half a metre, drained by a creek. Laboratory \
               data Depth cm pH EC dS/m Org.C % P mg/kg K mg/kg B mg/kg 0-12 6.9 0.11 1.72 23 486 1.1 \
               12-38 7.8 0.16 0.66 6 331 1.9 38-80 9.0 0.38 0.31 3 290 5.6 Note: boron over 15 harms \
               cereals.";
    assert_eq!(report(pit).samples.len(), 3);
    assert!(read(pit).contains(&(OrganicCarbon, 0.66)) && read(pit).contains(&(Boron, 5.6)));
    // Ranges and rates one after the other are no rows.
    let ranges = "Optimum levels for gardens on loam in our county as used by the advisers since the last \
                  revision: pH P K Ca Mg Zn ppm low 5 10 60 400 50 1 high 7 40 180 2000 240 8";
    assert!(open_and_read(ranges).is_none_or(|r| {
        r.samples.iter().all(|s| s.readings.iter().all(|r| r.pairing == Pairing::CountedOff))
    }));
}

#[test]
fn results_of_several_plots_with_slashes_between_are_columns_to_be_asked() {
    counted_off(
        "Two plots, ridge first.\npH 5.9 / 6.4\nOM 3.1% / 34.0% (not a typo)\nP 12 ppm / 8 ppm\n\
         K 88 ppm / 141 ppm\nCEC 11.6 / 29.3\n",
        "Sample 1: pH 5.9, organic-matter 3.1 %, P 12 mg/kg, K 88 mg/kg, cec 11.6 ? | \
         Sample 2: pH 6.4, organic-matter 34 %, P 8 mg/kg, K 141 mg/kg, cec 29.3 ?",
    );
    // One such line alone may be anything.
    assert_eq!(read("pH 5.9 / 6.4\nP 12 ppm\nK 88 ppm\n"), [(Phosphorus, 12.0), (Potassium, 88.0)]);
}

#[test]
fn plots_whose_codes_look_like_nutrients_are_plots() {
    let head = "sample,organic_matter_pct,pH,P_olsen_ppm,K_ppm,Zn_ppm\n";
    for codes in [["NT-1", "NT-2", "S-1"], ["K1", "K2", "K3"], ["P-01", "P-02", "P-03"]] {
        let rows = ["4.6,7.8,9,188,0.71", "4.8,7.7,11,203,0.80", "4.4,7.9,8,179,0.66"];
        let rows: String =
            codes.iter().zip(rows).map(|(code, row)| format!("{code},{row}\n")).collect();
        let text = format!("{head}{rows}# mean of all,4.6,7.8,9,190,0.72\n");
        assert_eq!(names(&text), codes, "{text}");
        assert_eq!(read(&text)[..2], [(OrganicMatter, 4.6), (Ph, 7.8)]);
    }
}

#[test]
fn a_bar_at_the_start_of_a_line_is_a_blank_cell_where_the_table_has_no_frame() {
    let text = "Site | Depth (cm) | EC 1:5 dS/m | Exchangeable Cations |||| Organic Carbon % |\n\
                ||| Ca | Mg | K | Na ||\nFlat | 0-15 | 0.09 | 7.4 | 6.8 | 0.31 | 0.66 | 3.6 |\n\
                Bank | 0-15 | 0.13 | 9.9 | 12.6 | 0.36 | 2.3 | 1.1 |\n";
    let found = read(text);
    assert!(found.contains(&(Calcium, 7.4)) && found.contains(&(Sodium, 2.3)), "{found:?}");
    together("| pH | P ppm |\n|---|---|\n| 6.2 | 18 |\n", "Sample 1: pH 6.2, P 18 mg/kg");
}

#[test]
fn what_may_be_a_rate_an_aim_or_another_years_is_asked() {
    // Phosphate and potash for an area beside what was found, whatever stands above them.
    let found = "Field,pH,P ppm,K ppm,Mg ppm\n7A,5.9,41,148,71\n7B,6.3,28,109,126\n";
    let text = format!("{found}\nZrup\nField,P2O5,K2O,Mg\nNo 1,100,180,30\nNo 2,120,220,40\n");
    assert!(is_asked(&text, 30.0) && is_asked(&text, 40.0), "{:?}", report(&text).samples);
    assert!(!is_asked(&text, 41.0));
    // A column that has ranges too.
    let text = "Test\tUnit\tNorth\tSouth\tZrup\npH\t\t5.9\t6.6\t6.5\nP\tppm\t31\t44\t30 - 50\n\
                K\tppm\t140\t188\t150 - 200\nB\tppm\t0.4\t0.6\t0.8\n";
    assert!(is_asked(text, 6.5) && is_asked(text, 0.8) && !is_asked(text, 5.9));
    // A blank may part thousands or two numbers.
    let text = "Test\tUnit\tNorth\tSouth\npH\t\t5.9\t6.6\nCa\tppm\t2 480\t875\n";
    assert!(is_asked(text, 2480.0) && !is_asked(text, 875.0));
}

#[test]
fn a_goal_of_ones_own_is_no_sample() {
    for goal in ["Club target", "My ideal", "Target for roses"] {
        let text = format!(
            "Patch,pH,P ppm,K ppm\nBarn,6.9,212,688\nLane,7.1,148,455\n{goal},6.8,170,550\n"
        );
        assert_eq!(names(&text), ["Barn", "Lane"], "{text}");
    }
}

#[test]
fn names_in_the_second_column_are_under_the_heading_of_the_first() {
    for heading in ["EXCHANGEABLE CATIONS, ppm", "Cations (ppm)", "Cations ppm"] {
        let text = format!(
            "Sample ID\t\tBag A\tBag B\npH\t\t6.7\t6.8\nOrganic matter, %\t\t38.4\t36.9\n\
             {heading}\tCALCIUM\t4390\t4310\n\tMAGNESIUM\t516\t498\nSulfur ppm\t\t18\t17\n"
        );
        together(
            &text,
            "Bag A: pH 6.7, organic-matter 38.4 %, Ca 4390 mg/kg, Mg 516 mg/kg, sulfur 18 mg/kg | \
             Bag B: pH 6.8, organic-matter 36.9 %, Ca 4310 mg/kg, Mg 498 mg/kg, sulfur 17 mg/kg",
        );
    }
}

#[test]
fn a_row_of_limits_between_a_head_and_its_results_is_no_part_of_the_names() {
    together(
        "Lab ref,Block,pH,Olsen P,Ca,K\n,,,mg/L,me/100g,me/100g\n\
         Medium range,,6.0-6.5,15-25,6-12,0.5-0.8\n1/1,Lake,6.6,22,8.7,0.64\n1/2,Gully,7.1,17,9.1,0.49\n",
        "Lake: pH 6.6, P 22 mg/L by Olsen, Ca 8.7 meq/100 g, K 0.64 meq/100 g | \
         Gully: pH 7.1, P 17 mg/L by Olsen, Ca 9.1 meq/100 g, K 0.49 meq/100 g",
    );
}

#[test]
fn letters_that_a_scan_took_for_digits_are_digits_where_several_show_it() {
    let text = "Phosphorus P  l4 lb/A LOW\nPotassium  2O6 lb/A\nClay  4l %\nZn  l.5 ppm\npH  6.2\n";
    assert_eq!(
        read(text),
        [(Phosphorus, 14.0), (Potassium, 206.0), (Clay, 41.0), (Zinc, 1.5), (Ph, 6.2)]
    );
    assert_eq!(read("Kejenuhan basa: 65.8 qo\nK 2O6 ppm\nMg l03 ppm\n")[0], (BaseSaturation, 65.8));
    // One may be a code or litres, and a formula is none.
    assert_eq!(read("Horizon O1\npH 6.2\nP 14 ppm\n"), [(Ph, 6.2), (Phosphorus, 14.0)]);
    assert_eq!(
        names("Sample\tpH\tP ppm\nBed 5l\t6.2\t14\nBed 4l\t6.4\t18\n"),
        ["Bed 5l", "Bed 4l"]
    );
    assert_eq!(
        read("pH H 2O 5,6\npH em H 2O 5,6\nCa 2O6 ppm\nMg 4 ppm\n").last(),
        Some(&(Magnesium, 4.0))
    );
}

#[test]
fn how_a_number_is_worked_out_is_no_result() {
    assert_eq!(
        read("pH 4.6\nV% = 100 x SB / T = 20.4\nm% = 100 x Al / t = 52.2\nK 31 ppm\n"),
        [(Ph, 4.6), (Potassium, 31.0)]
    );
    assert_eq!(
        read("Na 1ª parte falamos da amostra.\npH 4,6\nP 7 mg/dm³\n"),
        [(Ph, 4.6), (Phosphorus, 7.0)]
    );
}

#[test]
fn a_plot_calls_a_sample_before_the_farm_on_which_it_lies() {
    for [site, plot] in [["Site", "Plot"], ["Location", "Field"], ["Site", "Parcelle"]] {
        let text =
            format!("{site} : Three Rivers Farm\n{plot} : Tunnel 3\n\npH 6.6\nZn 3.6 mg/kg\n");
        assert_eq!(names(&text), ["Tunnel 3"], "{text}");
    }
    assert_eq!(names("Site: Three Rivers Farm\npH 6.6\nZn 3.6 mg/kg\n"), ["Three Rivers Farm"]);
}
