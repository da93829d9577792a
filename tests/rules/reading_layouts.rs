//! How results lie on a page: heads of several rows, tables flattened to single blanks, names
//! and numbers apart, forms side by side, lists that begin anew, and sentences. Each from pasted
//! text to readings, and all invented: what would hurt most is a number that is read under
//! another's name, in another's unit or for another sample.

use emberloam_engine::quantity::Unit;
use emberloam_engine::report::{Pairing, Reading, SampleReport, Trouble, open, read};
use emberloam_engine::soil::{Amount, Property};

use crate::reading_traps::report;

/// `P 18 mg/kg by Olsen`
fn told(reading: &Reading) -> String {
    let name = match reading.property {
        Property::Ph => "pH",
        Property::Phosphorus => "P",
        Property::Potassium => "K",
        Property::Magnesium => "Mg",
        Property::Calcium => "Ca",
        Property::Zinc => "Zn",
        other => other.name(),
    };
    let number = match reading.amount {
        Some(Amount::Exactly(v)) => format!("{}", (v * 1000.0).round() / 1000.0),
        other => format!("{other:?}"),
    };
    let unit = reading.unit.map_or("?", Unit::symbol);
    let by = reading.method.as_ref().map_or(String::new(), |m| format!("by {}", m.value.label()));
    let parts = [name, &number, unit, &by];
    parts.into_iter().filter(|p| !p.is_empty()).collect::<Vec<_>>().join(" ")
}

/// `North: pH 6.1, K 120 mg/kg | South: pH 5.4, K 77 mg/kg`
pub fn samples(text: &str) -> String {
    let readings = |s: &SampleReport| s.readings.iter().map(told).collect::<Vec<_>>().join(", ");
    let all = report(text).samples;
    all.iter().map(|s| format!("{}: {}", s.name, readings(s))).collect::<Vec<_>>().join(" | ")
}

/// Whether a text gives these samples with these readings, brought together in this way.
fn gives(pairing: Pairing, text: &str, expected: &str) {
    assert_eq!(samples(text), expected, "{text}");
    for reading in report(text).samples.iter().flat_map(|s| &s.readings) {
        assert_eq!(reading.pairing, pairing, "{} in {text}", reading.name);
    }
}

pub fn together(text: &str, expected: &str) {
    gives(Pairing::Together, text, expected);
}

pub fn counted_off(text: &str, expected: &str) {
    gives(Pairing::CountedOff, text, expected);
}

pub fn gives_nothing(text: &str) {
    let found = open(text.as_bytes()).and_then(|grid| read(&grid));
    assert!(
        matches!(found, Err(Trouble::NoResults | Trouble::Prose | Trouble::NotOfSoil { .. })),
        "{text}: {found:?}"
    );
}

/// All lines that are not read, each with its reason.
fn unread(text: &str) -> String {
    let report = report(text);
    let of_samples = report.samples.iter().flat_map(|s| &s.unread);
    report.unread.iter().chain(of_samples).map(|u| format!("{}: {}\n", u.text, u.reason)).collect()
}

fn ratings(text: &str, sample: usize) -> Vec<String> {
    let readings = &report(text).samples[sample].readings;
    readings.iter().map(|r| r.rating.clone().unwrap_or_default()).collect()
}

#[test]
fn a_group_over_columns_of_a_file_ends_where_the_next_begins() {
    together(
        "Bed\tpH\tExchangeable cations (cmol/kg)\t\t\tAvailable (mg/kg)\t\n\
         \t\tCa\tMg\tK\tP\tZn\nTop\t6.1\t8.2\t1.4\t0.31\t18\t1.2\nLow\t5.4\t4.6\t0.9\t0.22\t9\t0.7\n",
        "Top: pH 6.1, Ca 8.2 meq/100 g, Mg 1.4 meq/100 g, K 0.31 meq/100 g, P 18 mg/kg, \
         Zn 1.2 mg/kg | Low: pH 5.4, Ca 4.6 meq/100 g, Mg 0.9 meq/100 g, K 0.22 meq/100 g, \
         P 9 mg/kg, Zn 0.7 mg/kg",
    );
    // An amount and a share of the same cation.
    together(
        "Plot,Reaction,,Mehlich-3 (ppm),,Saturation (%),,\n,pH,Buffer pH,P,K,K,Mg,Ca\n\
         A,6.2,6.8,31,142,3.4,12.1,64\nB,5.6,6.5,12,77,2.2,9.4,48\n",
        "A: pH 6.2, buffer-ph 6.8, P 31 mg/kg by Mehlich-3, K 142 mg/kg by Mehlich-3, \
         potassium-saturation 3.4 %, magnesium-saturation 12.1 %, calcium-saturation 64 % | \
         B: pH 5.6, buffer-ph 6.5, P 12 mg/kg by Mehlich-3, K 77 mg/kg by Mehlich-3, \
         potassium-saturation 2.2 %, magnesium-saturation 9.4 %, calcium-saturation 48 %",
    );
    together(
        "Sample;pH;;P;K\n;H2O;KCl;mg/kg;mg/kg\nOst;6.4;5.6;12;88\nWest;5.9;5.0;31;140\n",
        "Ost: pH 6.4, salt-ph 5.6 by potassium chloride, P 12 mg/kg, K 88 mg/kg | \
         West: pH 5.9, salt-ph 5 by potassium chloride, P 31 mg/kg, K 140 mg/kg",
    );
    // Two extracts of one element, told apart in the second row.
    together(
        "Sample,P,P,K\n,Olsen mg/kg,Mehlich-3 mg/kg,mg/kg\nA,12,33,140\nB,7,21,88\n",
        "A: P 12 mg/kg by Olsen, P 33 mg/kg by Mehlich-3, K 140 mg/kg | \
         B: P 7 mg/kg by Olsen, P 21 mg/kg by Mehlich-3, K 88 mg/kg",
    );
}

#[test]
fn heads_over_several_lines_stand_over_their_columns_by_place() {
    together(
        "Sample  pH    Organic   Phos-    Potas-   Exch.\n              matter    phorus   sium     Ca\n\
         \u{20}             %         mg/kg    mg/kg    cmol/kg\n\
         North   6.3   3.4       22       140      8.1\nSouth   5.7   2.6       11       96       5.2\n",
        "North: pH 6.3, organic-matter 3.4 %, P 22 mg/kg, K 140 mg/kg, Ca 8.1 meq/100 g | \
         South: pH 5.7, organic-matter 2.6 %, P 11 mg/kg, K 96 mg/kg, Ca 5.2 meq/100 g",
    );
    // A dashed line covers what stands below it and no more: K has no unit.
    together(
        "Amostra   pH    P        K      ------ mmolc/dm3 ------    V\n\
         \u{20}               mg/dm3          Ca     Mg     Al          %\n\
         Horta     5.2   14       66     24     8      3           52\n\
         Pomar     4.6   6        41     11     4      7           29\n",
        "Horta: pH 5.2, P 14 mg/L, K 66 ?, Ca 2.4 meq/100 cm³, Mg 0.8 meq/100 cm³, \
         aluminum 0.3 meq/100 cm³, base-saturation 52 % | Pomar: pH 4.6, P 6 mg/L, K 41 ?, \
         Ca 1.1 meq/100 cm³, Mg 0.4 meq/100 cm³, aluminum 0.7 meq/100 cm³, base-saturation 29 %",
    );
    together(
        "Amostra    pH     M.O.    P        K     Ca    Mg\n\
         \u{20}         CaCl2   g/dm3   mg/dm3   ---- mmolc/dm3 ----\n\
         Horta      5.4     23      18      2.1    26    9\nPomar      4.8     17       7      1.2    14    5\n",
        "Horta: salt-ph 5.4 by calcium chloride, organic-matter 23 g/dm³, P 18 mg/L, \
         K 0.21 meq/100 cm³, Ca 2.6 meq/100 cm³, Mg 0.9 meq/100 cm³ | \
         Pomar: salt-ph 4.8 by calcium chloride, organic-matter 17 g/dm³, P 7 mg/L, \
         K 0.12 meq/100 cm³, Ca 1.4 meq/100 cm³, Mg 0.5 meq/100 cm³",
    );
}

#[test]
fn a_blank_under_heads_of_two_rows_moves_no_number() {
    let csv = "Sample,pH,P,K\n,,mg/kg,mg/kg\nNorth,6.1,,120\nSouth,,9,77\nEast,5.5,14,60\n";
    let by_place = "Sample    pH    P        K\n                mg/kg    mg/kg\n\
                    North     6.1            120\nSouth           9        77\nEast      5.5   14       60\n";
    for table in [csv, &csv.replace(',', "\t"), by_place] {
        together(
            table,
            "North: pH 6.1, K 120 mg/kg | South: P 9 mg/kg, K 77 mg/kg | \
             East: pH 5.5, P 14 mg/kg, K 60 mg/kg",
        );
    }
}

#[test]
fn a_group_in_the_first_cell_is_that_of_all_columns() {
    for (group, rows, expected) in [
        (
            "Mehlich-3 (mg/kg)\tP\tK\tZn",
            "Hill bed\t21\t130\t2\nPond bed\t44\t88\t3\n",
            "Hill bed: P 21 mg/kg by Mehlich-3, K 130 mg/kg by Mehlich-3, Zn 2 mg/kg by Mehlich-3 | \
             Pond bed: P 44 mg/kg by Mehlich-3, K 88 mg/kg by Mehlich-3, Zn 3 mg/kg by Mehlich-3",
        ),
        (
            "Base saturation (%)\tK\tCa",
            "Hill bed\t1.6\t48.4\nPond bed\t2.8\t61.2\n",
            "Hill bed: potassium-saturation 1.6 %, calcium-saturation 48.4 % | \
             Pond bed: potassium-saturation 2.8 %, calcium-saturation 61.2 %",
        ),
    ] {
        let table = format!("{group}\n{rows}");
        together(&table, expected);
        together(&table.replace('\t', "    "), expected);
    }
}

#[test]
fn units_below_flattened_names_are_counted_off_and_to_be_asked() {
    for (lead, one, two) in [("Field", "", ""), ("Lab no Field", "8801 ", "8802 ")] {
        counted_off(
            &format!(
                "{lead} pH P Ca Mg\n(mg/kg) (cmol/kg) (cmol/kg)\n{one}Home 6.4 18 8.2 1.4\n\
                 {two}Far 5.9 9 5.1 0.9\n"
            ),
            "Home: pH 6.4, P 18 mg/kg, Ca 8.2 meq/100 g, Mg 1.4 meq/100 g | \
             Far: pH 5.9, P 9 mg/kg, Ca 5.1 meq/100 g, Mg 0.9 meq/100 g",
        );
    }
    // Too few units: nobody knows which is whose.
    counted_off(
        "Field pH P K Mg Ca\nmg/l mg/l mg/l\nHome 6.4 18 120 90 12\nFar 5.9 9 77 45 9\n",
        "Home: pH 6.4, P 18 ?, K 120 ?, Mg 90 ?, Ca 12 ? | Far: pH 5.9, P 9 ?, K 77 ?, Mg 45 ?, Ca 9 ?",
    );
    // A rating behind each number, and a name that ends with a number.
    let text = "Field pH P K\nmg/l mg/l\nLong Acre 1 6.4 18 H 120 M\nHome 2 5.4 9 L 77 L\n";
    counted_off(
        text,
        "Long Acre 1: pH 6.4, P 18 mg/L, K 120 mg/L | Home 2: pH 5.4, P 9 mg/L, K 77 mg/L",
    );
    assert_eq!(ratings(text, 0), ["", "H", "M"]);
    // One line of names over as many numbers leaves nothing to ask.
    together("pH P K Mg\n6.4 18 120 95\n", "Sample 1: pH 6.4, P 18 ?, K 120 ?, Mg 95 ?");
}

#[test]
fn the_same_names_again_belong_to_the_next_group() {
    let text =
        "Index mg/l\nField pH P K Mg P K Mg\nHome 6.4 2 1 3 18 88 120\nFar 5.9 1 0 2 9 55 70\n";
    counted_off(
        text,
        "Home: pH 6.4, P 18 mg/L, K 88 mg/L, Mg 120 mg/L | Far: pH 5.9, P 9 mg/L, K 55 mg/L, Mg 70 mg/L",
    );
    assert_eq!(ratings(text, 0), ["", "index 2", "index 1", "index 3"]);
    let swapped = "mg/l Index\nField pH P K P K\nHome 6.4 18 88 2 1\nFar 5.9 9 55 1 0\n";
    counted_off(swapped, "Home: pH 6.4, P 18 mg/L, K 88 mg/L | Far: pH 5.9, P 9 mg/L, K 55 mg/L");
    assert_eq!(ratings(swapped, 1), ["", "index 1", "index 0"]);
    for (below, salt) in [("H2O CaCl2", "calcium chloride"), ("water KCl", "potassium chloride")] {
        counted_off(
            &format!("Plot pH pH P K\n{below} mg/kg mg/kg\nOak 6.4 5.7 18 120\nElm 5.9 5.1 9 77\n"),
            &format!(
                "Oak: pH 6.4, salt-ph 5.7 by {salt}, P 18 mg/kg, K 120 mg/kg | \
                 Elm: pH 5.9, salt-ph 5.1 by {salt}, P 9 mg/kg, K 77 mg/kg"
            ),
        );
    }
}

#[test]
fn twins_and_rows_with_a_blank_are_listed_and_not_counted_off() {
    for below in ["Olsen Bray mg/kg\nmg/kg mg/kg", "Olsen Bray-1 NH4OAc"] {
        let text = format!("Field P P K\n{below}\nHome 18 31 120\nFar 9 14 77\n");
        counted_off(&text, "Home: K 120 ? | Far: K 77 ?");
        assert_eq!(unread(&text).matches("nothing tells them apart").count(), 2, "{text}");
    }
    for gap in ["Elm 5.9 9 77", "Elm 9 77 1200"] {
        let text = format!(
            "Plot pH P K Ca\nmg/kg mg/kg mg/kg\nOak 6.4 18 120 1400\n{gap}\nAsh 6.1 11 99 1300\n"
        );
        counted_off(
            &text,
            "Oak: pH 6.4, P 18 mg/kg, K 120 mg/kg, Ca 1400 mg/kg | \
             Ash: pH 6.1, P 11 mg/kg, K 99 mg/kg, Ca 1300 mg/kg",
        );
        assert!(unread(&text).contains(&format!("{gap}: its numbers don't stand")), "{text}");
    }
}

/// Names and results of a sample, one a line.
const NAMES: &str = "pH\nPhosphorus (mg/kg)\nPotassium (mg/kg)\nZinc (ppm)\n";
const RESULTS: &str = "6.4\n18\n120\n1.5\n";
const READ: &str = "pH 6.4, P 18 mg/kg, K 120 mg/kg, Zn 1.5 mg/kg";

#[test]
fn names_and_results_apart_are_counted_off_or_not_read() {
    // Ranges between the results, or behind them, are no results.
    for results in [
        RESULTS,
        "6.4\n6.0 - 7.0\n18\n20 - 30\n120\n100 - 150\n1.5\n1 - 3\n",
        "6.4 (6.0-7.0)\n18 (20-30)\n120 (100-150)\n1.5 (1-3)\n",
    ] {
        counted_off(&format!("{NAMES}{results}"), &format!("Sample 1: {READ}"));
    }
    // Too few or too many, or in an order that can't be.
    for numbers in ["6.4\n18\n120", "6.4\n18\n120\n1.5\n1400", "18\n6.4\n120\n1.5"] {
        gives_nothing(&format!("{NAMES}{numbers}\n"));
    }
    // "Base saturation" is the heading of the shares where there are results for them only.
    counted_off(
        "pH\nP (mg/kg)\nBase saturation\nCa %\nMg %\nK %\nNa %\n6.4\n18\n70\n15\n5\n2\n",
        "Sample 1: pH 6.4, P 18 mg/kg, calcium-saturation 70 %, magnesium-saturation 15 %, \
         potassium-saturation 5 %, sodium-saturation 2 %",
    );
}

#[test]
fn records_one_line_a_value_are_a_sample_each() {
    let (second, read) = ("5.8\n9\n77\n0.7\n", "pH 5.8, P 9 mg/kg, K 77 mg/kg, Zn 0.7 mg/kg");
    for (heads, one, two, names) in [
        ("Sample\n", "North bed\n", "South bed\n", ["North bed", "South bed"]),
        ("Sample\nLab no.\n", "101\nEast\n", "102\nWest\n", ["East", "West"]),
        ("", "", "", ["Sample 1", "Sample 2"]),
    ] {
        counted_off(
            &format!("{heads}{NAMES}{one}{RESULTS}{two}{second}"),
            &format!("{}: {READ} | {}: {read}", names[0], names[1]),
        );
    }
    // The last record is one value short.
    gives_nothing(&format!("{NAMES}{RESULTS}5.8\n9\n77\n"));
}

#[test]
fn columns_one_after_the_other_are_known_by_their_headings() {
    let names = "pH\nNitrate-N\nP\nK\n";
    let (results, units) = ("6.1\n14\n22\n130\n", "-\nmg/kg\nmg/l\nmg/l\n");
    let read = "Sample 1: pH 6.1, nitrate-n 14 mg/kg, P 22 mg/L, K 130 mg/L";
    counted_off(&format!("Determination\n{names}Units\n{units}Found\n{results}"), read);
    counted_off(&format!("Test\n{names}Result\n{results}Unit\n{units}"), read);
    let german = "Analyse\npH\nPhosphor\nKalium\nZink\nErgebnis\n6,4\n12\n18\n1,5\n\
                  Einheit\n-\nmg/100 g\nmg/100 g\nmg/kg\nKlasse\nC\nB\nD\nA\n";
    counted_off(german, "Sample 1: pH 6.4, P 12 mg/100 g, K 18 mg/100 g, Zn 1.5 mg/kg");
    assert_eq!(ratings(german, 0), ["C", "B", "D", "A"]);
    // The aim is not the result, whichever stands first; and of too few units none is taken.
    let open = "Sample 1: pH 6.1, nitrate-n 14 ?, P 22 ?, K 130 ?";
    let aims = "6.5\n30\n40\n200\n";
    for aim in ["Target", "Optimum"] {
        counted_off(&format!("Test\n{names}{aim}\n{aims}Result\n{results}"), open);
        counted_off(&format!("Test\n{names}Result\n{results}{aim}\n{aims}"), open);
    }
    counted_off(&format!("Test\n{names}Result\n{results}Unit\nmg/kg\nmg/l\nmg/100 g\n"), open);
}

#[test]
fn a_list_that_begins_anew_is_a_sample_of_its_own() {
    let (one, two) = ("pH 6.9\nP 44 ppm\nK 99 ppm\n", "pH 5.4\nP 9 ppm\nK 99 ppm\n");
    let read = ["pH 6.9, P 44 mg/kg, K 99 mg/kg", "pH 5.4, P 9 mg/kg, K 99 mg/kg"];
    for (first, second) in
        [("Top terrace", "Bottom terrace"), ("Bed 1", "Bed 2"), ("Kräuterbeet", "Rosenbeet")]
    {
        let expected = format!("{first}: {} | {second}: {}", read[0], read[1]);
        together(&format!("{first}\n{one}{second}\n{two}"), &expected);
        let parted = format!("{first}\n\n{one}\nThank you for your order.\n\n{second}\n{two}");
        together(&parted, &expected);
    }
    together(&format!("{one}{two}"), &format!("Sample 1: {} | Sample 2: {}", read[0], read[1]));
    let deep = report(&format!("Depth 0-15 cm\n{one}Depth 15-30 cm\n{two}"));
    let depths: Vec<_> = deep.samples.iter().map(|s| s.depth_cm).collect();
    assert_eq!(depths, [Some((0.0, 15.0)), Some((15.0, 30.0))]);
    // What is printed twice is no second sample.
    for again in ["Summary\npH 6.9\n", "pH 6.9\n", "Repeat\npH 6.8\n", "K 2.5 meq/100 g\n"] {
        let text = format!("Top terrace\n{one}{again}");
        assert!(samples(&text).ends_with(&format!(": {}", read[0])), "{text}");
        assert_eq!(report(&text).samples.len(), 1, "{text}");
        assert!(unread(&text).contains("again") || unread(&text).contains("a second"), "{text}");
    }
    let methods = "pH 6.9\nP (Olsen) 44 ppm\nP (Mehlich-3) 60 ppm\npH 6.9\n";
    together(methods, "Sample 1: pH 6.9, P 44 mg/kg by Olsen, P 60 mg/kg by Mehlich-3");
}

#[test]
fn sentences_tell_this_soils_results_and_no_aims_years_or_other_soils() {
    for told in [
        "The test is back. The pH came back at 6.2 and phosphorus was 45 ppm. => pH 6.2, P 45 mg/kg",
        "The soil pH reads 6.6 on my meter, and zinc came in at 2 ppm. => pH 6.6, Zn 2 mg/kg",
        "Der pH-Wert liegt bei 6,4 und Zink war 2 mg/kg. Er ist gut. => pH 6.4, Zn 2 mg/kg",
        "Der pH-Wert soll bei 6,5 liegen, aber der pH-Wert liegt bei 5,2 und Zink war 2 mg/kg. => pH 5.2, Zn 2 mg/kg",
        "Il pH era di 6,8 e il potassio era pari a 140 mg/kg. Il pH dovrebbe essere 6,5. => pH 6.8, K 140 mg/kg",
        "Le pH est de 7,9 et la teneur en potassium est de 210 mg/kg. Il faut viser un pH de 6,5. => pH 7.9, K 210 mg/kg",
        "El pH es de 5,6 y el fósforo es de 8 ppm. El agua de riego tiene un pH de 7,9. => pH 5.6, P 8 mg/kg",
        "El año pasado el pH fue 7,1. Ahora el pH es de 6,2 y el zinc es de 2 ppm. => pH 6.2, Zn 2 mg/kg",
        "O pH ideal é 6,0. O pH foi de 4,8 e o fósforo ficou em 7 mg/dm3. => pH 4.8, P 7 mg/L",
        "My test says the pH is 5.4. It should be 6.5 for roses. Zinc was only 2 ppm. => pH 5.4, Zn 2 mg/kg",
        "The optimum pH is 6.5 and the pH is 5.4 in my bed, zinc was 2 ppm. => pH 5.4, Zn 2 mg/kg",
        "The pH is 5.9. Add sulfur until the pH is 5.5. Zinc is 2 ppm. => pH 5.9, Zn 2 mg/kg",
        "Lime was applied until the pH was 6.5. Today the pH is 6.4 and zinc is 2 ppm. => pH 6.4, Zn 2 mg/kg",
        "Last year the pH was 7.1. Now the pH is 6.3 and zinc is 2 ppm. => pH 6.3, Zn 2 mg/kg",
        "Two years ago potassium was 200 ppm, but now potassium is 140 ppm and pH is 6. => K 140 mg/kg, pH 6",
        "The pH was tested in 2019 at 5.1. Now the pH is 6.0, and zinc is 2 ppm. => pH 6, Zn 2 mg/kg",
        "My neighbour's pH was 7.8. Here the pH is 6.0 and zinc was 2 ppm. => pH 6, Zn 2 mg/kg",
    ] {
        let (text, read) = told.split_once(" => ").unwrap();
        gives(Pairing::Sentence, text, &format!("Sample 1: {read}"));
    }
    gives_nothing("In this study the soil pH was 5.2 and zinc was 2 mg/kg before treatment.");
    gives_nothing("Significant effects were found: soil pH was 5.2 and zinc was 2 mg/kg.");
}

#[test]
fn averages_and_limits_are_no_samples() {
    let read = "North: pH 6.4, P 18 mg/kg, K 120 mg/kg | South: pH 5.4, P 9 mg/kg, K 77 mg/kg";
    let rows = "Average|Mean|Median|Minimum|Maximum|Critical value|Optimum|Target|Detection limit|\
                Durchschnitt|Mittelwert|Zielwert|Promedio|Nivel crítico|Moyenne";
    for row in rows.split('|') {
        let all = ["North;6.4;18;120", "South;5.4;9;77", &format!("{row};5.9;14;99")];
        for order in [[0, 1, 2], [2, 0, 1], [0, 2, 1]] {
            let rows = order.map(|i| all[i]).join("\n");
            let table = format!("Plot;pH;P mg/kg;K mg/kg\n{rows}\n");
            together(&table, read);
            assert!(unread(&table).contains(row), "{table}");
        }
    }
    let rows = "North 6.4 18 120\nSouth 5.4 9 77\nMean 5.9 14 99\nCritical 5.5 20 100\n";
    counted_off(&format!("Plot pH P K\nmg/kg mg/kg\n{rows}"), read);
}

#[test]
fn words_name_a_sample_before_codes_and_a_list_of_names_joins_its_numbers() {
    let read = ["Fig wall: pH 6.4, P 18 mg/kg", "Herb bed: pH 5.4, P 9 mg/kg"];
    for (heads, one, two) in [("No.\tName", "1", "2"), ("Lab code\tSample", "S-17", "S-18")] {
        let rows = format!("{one}\tFig wall\t6.4\t18\n{two}\tHerb bed\t5.4\t9\n");
        together(&format!("{heads}\tpH\tP mg/kg\n{rows}"), &read.join(" | "));
    }
    let swapped = [read[1], read[0]].join(" | ");
    together(
        "Lab no\tIdentification\n24-5071\tFig wall\n24-5072\tHerb bed\n\n\
         Lab no\tpH\tP mg/kg\n24-5072\t5.4\t9\n24-5071\t6.4\t18\n",
        &swapped,
    );
    let flat = "Lab no Sample name\n1101 Fig wall\n1102 Herb bed\n\n\
                Lab no pH P\nmg/kg\n1102 5.4 9\n1101 6.4 18\n";
    counted_off(flat, &swapped);
}

#[test]
fn a_line_with_its_name_and_a_second_table_find_their_sample() {
    together(
        "Pond plot (1 ac): pH 6.3, P 64 lb/A (H)\nBarn plot (2 ac): pH 5.5, P 18 lb/A (L)\n",
        "Pond plot (1 ac): pH 6.3, P 64 lb/acre | Barn plot (2 ac): pH 5.5, P 18 lb/acre",
    );
    let (hedge, lawn) =
        ("Hedge: pH 6.2, K 120 mg/kg, Zn 1.2 mg/kg", "Lawn: pH 5.9, K 90 mg/kg, Zn 0.8 mg/kg");
    let both = format!("{hedge} | {lawn}");
    together("Hedge: pH 6.2, K 120 ppm\nZn 1.2 ppm\nLawn: pH 5.9, K 90 ppm\nZn 0.8 ppm\n", &both);
    for aim in ["Optimum", "Target", "County average", "Last year"] {
        let text = format!("{aim}: pH 6.8, K 200 ppm\nHedge: pH 6.2, K 120 ppm, Zn 1.2 ppm\n");
        together(&text, hedge);
    }
    let first = "Plot\tpH\tK ppm\nHedge\t6.2\t120\nLawn\t5.9\t90\n\n";
    for rows in ["Lawn\t0.8\t1\nHedge\t1.2\t2\n", "Hedge\t1.2\t2\nLawn\t0.8\t1\n"] {
        let found = samples(&format!("{first}Plot\tZn ppm\tCu ppm\n{rows}"));
        assert_eq!(found, format!("{hedge}, copper 2 mg/kg | {lawn}, copper 1 mg/kg"));
    }
    // The same properties again are other samples, not second thoughts about these.
    let again = report(&format!("{first}Plot\tpH\tK ppm\nHedge\t5.1\t60\nLawn\t4.9\t50\n"));
    assert_eq!(again.samples.iter().map(|s| s.readings.len()).collect::<Vec<_>>(), [2, 2, 2, 2]);
}

#[test]
fn two_forms_beside_each_other_are_a_sample_each() {
    for (word, right, west) in [("Field", "P ppm     8", "P 8 mg/kg, "), ("Sample", "", "")] {
        let text = format!(
            "{:31}{word}: West\npH        6.3                  pH        5.5\nP ppm     24                   {right}\n\
             K ppm     110                  K ppm     61\nMg ppm    90                   Mg ppm    40\n",
            format!("{word}: East")
        );
        let east = "East: pH 6.3, P 24 mg/kg, K 110 mg/kg, Mg 90 mg/kg";
        together(&text, &format!("{east} | West: pH 5.5, {west}K 61 mg/kg, Mg 40 mg/kg"));
    }
}

#[test]
fn a_unit_reaches_no_further_than_it_is_said() {
    // The usual unit goes without saying, but not beside another for results by charge.
    together("pH 5.2\nCEC 11\n", "Sample 1: pH 5.2, cec 11 meq/100 g");
    for line in ["Ca 2.4 cmolc/dm3", "Ca 24 mmolc/dm3"] {
        let text = format!("pH 5.2\n{line}\nCEC 11\nK 0.3\n");
        together(&text, "Sample 1: pH 5.2, Ca 2.4 meq/100 cm³, cec 11 ?, K 0.3 ?");
    }
    for heading in ["TRACE ELEMENTS", "Micronutrients", "Spurenelemente"] {
        let text = format!("P 18\nK 120\n{heading} (mg/kg)\nZinc 1.6\nIron 148\n");
        together(&text, "Sample 1: P 18 ?, K 120 ?, Zn 1.6 mg/kg, iron 148 mg/kg");
    }
    together("K 120\nAll results in mg/kg\nZn 1.6\n", "Sample 1: K 120 mg/kg, Zn 1.6 mg/kg");
}
