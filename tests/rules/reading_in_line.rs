//! Several results in one line, names and numbers that are glued, and lists told one after the
//! other: what is read of them, what is asked, and what is left.

use emberloam_engine::report::{Pairing, Reading, Report};
use emberloam_engine::soil::Property::{self, *};

use crate::reading_traps::report;

fn found(report: &Report) -> Vec<(Property, f64)> {
    let readings = report.samples.iter().flat_map(|s| &s.readings);
    readings.filter_map(|r| Some((r.property, r.amount?.number()))).collect()
}

fn read(text: &str) -> Vec<(Property, f64)> {
    found(&report(text))
}

fn asked(report: &Report) -> Vec<&Reading> {
    let readings = report.samples.iter().flat_map(|s| &s.readings);
    readings.filter(|r| r.pairing == Pairing::CountedOff).collect()
}

#[test]
fn numbers_glued_to_their_names_are_read() {
    let text = "CEC11.2 meq/100 g\nSoil pH6.1\nOrganic Matter4.4 %\nPotassium (K)118 ppm\n";
    assert_eq!(read(text), [(Cec, 11.2), (Ph, 6.1), (OrganicMatter, 4.4), (Potassium, 118.0)]);
}

#[test]
fn pairs_of_a_line_are_read_each_with_its_unit() {
    for (text, wanted) in [
        (
            "CALCIO scam. 2210 ppm m. alto MAGNESIO scam. 180 ppm alto POTASSIO scam. 97 ppm",
            &[(Calcium, 2210.0), (Magnesium, 180.0), (Potassium, 97.0)] as &[_],
        ),
        (
            "Mill Piece: Ca-61%, H-12%, K-5%, Mg-22%. pH 6.3, P 27 ppm, K 160 ppm",
            &[
                (CalciumSaturation, 61.0),
                (AciditySaturation, 12.0),
                (PotassiumSaturation, 5.0),
                (MagnesiumSaturation, 22.0),
                (Ph, 6.3),
                (Phosphorus, 27.0),
                (Potassium, 160.0),
            ],
        ),
        (
            "Texture : 22 % d'argile, 38 % de limon, 40 % de sable (jardin)",
            &[(Clay, 22.0), (Silt, 38.0), (Sand, 40.0)],
        ),
    ] {
        assert_eq!(read(text), wanted, "{text}");
    }
}

#[test]
fn a_line_of_limits_or_of_advice_is_not_parted() {
    for text in [
        "Critical limits ppm S 12 Zn 0.7 Fe 5 Mn 3 Cu 0.3 B 0.6",
        "Apply per 100 m2: P 12 g K 30 g Mg 8 g Ca 40 g",
        "Zn < 2 low, 2 - 4 medium, 4 - 6 high",
        "B < 0,5 baixo, 0,5 - 1,0 médio",
    ] {
        let text = format!("pH 6.2\n{text}\n");
        assert_eq!(read(&text), [(Ph, 6.2)], "{text}");
    }
    // The letters between the numbers of a row are ratings, not hydrogen and not potassium.
    let row = "Bed 7 3.1 M 21 H 140 H 390 VH 1700 H 6.2";
    assert!(read(&format!("pH 6.4\nP 20 ppm\n{row}\n")).len() < 3);
}

#[test]
fn samples_told_one_after_the_other_are_asked_and_limits_in_a_sentence_are_left() {
    let text = "Three samples went in: the well, the long bed and the shed.\n\
                Lead 32, 41 and 88\nZinc 120, 140 and 66\nCopper 21, 24 and 13\n\
                Manganese 310, 355 and 240\n\
                The guideline for gardens is lead 300, copper 6000 and manganese 3800.\n";
    let report = report(text);
    assert_eq!(report.samples.len(), 3);
    assert_eq!(asked(&report).len(), 12);
    let lead: Vec<f64> = found(&report).into_iter().filter(|r| r.0 == Lead).map(|r| r.1).collect();
    assert_eq!(lead, [32.0, 41.0, 88.0]);
}

#[test]
fn two_fields_under_their_names_with_names_broken_over_lines_are_asked() {
    let text = "North paddock Creek paddock\nTEC 10.2 8.4\npH 6.1 5.7\nP 88 41\nK 320 190\n\
                Ca %\nsat\n61.2 48.0\nMg %\nsat\n12.4 10.8\nB 0.7 0.4\n";
    let report = report(text);
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["North paddock", "Creek paddock"]);
    assert_eq!(asked(&report).len(), 14);
    let second: Vec<_> = report.samples[1].readings.iter().map(|r| r.property).collect();
    let wanted = [Cec, Ph, Phosphorus, Potassium, CalciumSaturation, MagnesiumSaturation, Boron];
    assert_eq!(second, wanted);
}

#[test]
fn a_title_and_words_between_a_head_and_its_rows_take_no_name_away() {
    let text = "
                           Barn field     Top field     Critical
CHEMICAL
  Colour                   brown          grey
  pH (water)               6.2            7.1           5.5-6.5
  Calcium (meq/100g)       3.10           9.80
  CEC (meq/100g)           4.40           18.1          >4
  Zinc                     0.3            0.7           0.3
  Iron                     31             46
";
    let report = report(text);
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["Barn field", "Top field"]);
    assert_eq!(report.samples[0].readings.len(), 5);
}

#[test]
fn depths_as_columns_keep_the_name_of_the_plot_and_a_treatment_names_none() {
    let text = "Plot: Mill End\n\nTest   Unit   0-30 cm   30-60 cm\npH   -   6.4   6.8\n\
                Organic matter   %   2.2   1.1\nPotassium   mg/kg   140   96\n";
    assert!(report(text).samples.iter().all(|s| s.name.starts_with("Mill End")), "{text}");
    let text = "Plot;Treatment;pH;K mg/kg\n201;no manure;5.9;88\n202;manure;6.3;140\n";
    let report = report(text);
    let names: Vec<&str> = report.samples.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["201", "202"]);
}

#[test]
fn an_extract_nobody_knows_a_share_and_an_amount_under_an_index_are_asked() {
    let text = "Field\tpH\tP (XAE7) mg/kg\tK (XAE7) mg/kg\nBarn\t6.4\t41\t150\n\
                Hill\t6.1\t33\t120\n";
    let first = report(text);
    assert_eq!(asked(&first).len(), 4, "{text}");
    let share = report("pH 6.4\nP 20 ppm\nK 130 ppm\nS 24 %\n");
    assert_eq!(asked(&share).iter().map(|r| r.property).collect::<Vec<_>>(), [Sulfur]);
    let note = "pH-KCl; P in mg/kg\n\nPlot   pH   P\nHome   5.6   31\nHill   5.9   22\n";
    assert!(asked(&report(note)).iter().any(|r| r.property == Ph), "{note}");
}

#[test]
fn a_sentence_may_have_an_equals_sign_and_a_lab_may_want_lime_in_the_next() {
    let text = "They say heavy clay, pH = 5.7, with low phosphorus at 6 ppm and calcium 1460 ppm.";
    assert_eq!(read(text), [(Ph, 5.7), (Phosphorus, 6.0), (Calcium, 1460.0)]);
    let text = "The soil had pH 5.3 (acidic). The lab asks for 85 lbs of ground limestone.\n";
    assert_eq!(read(text), [(Ph, 5.3)]);
}
