//! The shapes in which laboratories of many countries print the same thing, each from pasted
//! text to reading: columns side by side, several results on a line, scales, leader dots, and
//! the words of each language. All invented.

use emberloam_engine::soil::{Property, Texture};

use crate::reading_traps::{report, shown};

/// Each text beside the readings of its first sample.
fn all_read(cases: &[(&str, &[&str])]) {
    for (text, readings) in cases {
        assert_eq!(shown(text), *readings, "{text}");
    }
}

/// The reasons of all lines that are not read.
fn reasons(text: &str) -> String {
    let report = report(text);
    let of_samples = report.samples.iter().flat_map(|s| &s.unread);
    report.unread.iter().chain(of_samples).map(|u| format!("{}: {}\n", u.text, u.reason)).collect()
}

#[test]
fn a_row_whose_name_is_not_known_heads_nothing() {
    let zinc_and_clay = &["zinc 1.2 mg/L", "clay 45 %"];
    for unknown in [
        "SB      2,16   cmolc/dm³",
        "Wf      18,8   %",
        "Wf      18,8 %",
        "Índice verde   5   %",
        "Soma   (Ca+Mg)   3,17   cmolc/dm³",
        "Wf      18,8   %   alto",
    ] {
        let text = format!("{unknown}\nZn      1,2   mg/dm³\nArgila  45   %");
        assert_eq!(shown(&text), zinc_and_clay, "{text}");
        let word = unknown.split(' ').next().unwrap();
        assert!(reasons(&text).contains(word), "{text}: {}", reasons(&text));
    }
    // In the middle, and twice.
    let text = "pH   5,2\nWf   18,8   %\nK   62   mg/dm³\nWf2   7   %\nArgila   45   %";
    assert_eq!(shown(text), ["ph 5.2 ", "potassium 62 mg/L", "clay 45 %"]);
}

#[test]
fn a_head_is_still_a_head() {
    all_read(&[
        (
            "Parameter   Bed 1\npH   6.2\nP ppm   18\nK ppm   142",
            &["ph 6.2 ", "phosphorus 18 mg/kg", "potassium 142 mg/kg"],
        ),
        ("Test   Result   Unit\npH   6.2\nP   18   ppm", &["ph 6.2 ", "phosphorus 18 mg/kg"]),
    ]);
    let two = report("          Lawn    Garden\npH        5.8     6.7\nP ppm     44      188");
    assert_eq!(two.samples.len(), 2);
}

#[test]
fn the_ends_of_a_printed_scale_are_no_result() {
    for scale in [
        "pH 5.0 |----|----|*---| 8.0   6.2",
        "pH      5.0 |----|----|*---| 8.0      6.2",
        "pH 6.2   5.0 |----|--*-|----| 8.0",
        "pH   5.0 -----x----- 8.0   6.2",
        "pH   5.0 [====      ] 8.0   6.2",
        "Soil pH: 4.0 |--|--^--|--| 9.0   6.2",
    ] {
        assert_eq!(
            shown(&format!("K 142 ppm\n{scale}")),
            ["potassium 142 mg/kg", "ph 6.2 "],
            "{scale}"
        );
    }
    // Without a number of its own there is no result.
    assert_eq!(shown("K 142 ppm\npH 5.0 |----|*---| 8.0"), ["potassium 142 mg/kg"]);
}

#[test]
fn leader_dots_lead_to_the_result() {
    all_read(&[
        (
            "  P   ppm ......... 140      VERY HIGH\n  K   ppm ......... 210      OPTIMUM",
            &["phosphorus 140 mg/kg [VERY HIGH]", "potassium 210 mg/kg [OPTIMUM]"],
        ),
        ("pH ........ 6.4      Buffer pH ..... 6.9", &["ph 6.4 ", "buffer-ph 6.9 "]),
        (
            "OM % ........ 3.4\nCEC meq/100g ..... 9.1",
            &["organic-matter 3.4 %", "cec 9.1 meq/100 g"],
        ),
        ("Zinc (DTPA) …… 1.2 ppm", &["zinc 1.2 mg/kg by DTPA"]),
    ]);
}

#[test]
fn two_blocks_side_by_side_are_read_each() {
    all_read(&[
        (
            "Morgan extraction:\nPhosphorus   6   LOW      Potassium  100   MEDIUM\nMagnesium  140   HIGH     Calcium   2100\nZinc       1.4   HIGH     Copper     0.6",
            &[
                "phosphorus 6 ? by Morgan [LOW]",
                "potassium 100 ? by Morgan [MEDIUM]",
                "magnesium 140 ? by Morgan [HIGH]",
                "calcium 2100 ? by Morgan",
                "zinc 1.4 ? by Morgan [HIGH]",
                "copper 0.6 ? by Morgan",
            ],
        ),
        (
            "SOIL TEST REPORT          Oregon\npH   5.9     Buffer pH   6.6\nOM %   3.1     K ppm   120",
            &["ph 5.9 ", "buffer-ph 6.6 ", "organic-matter 3.1 %", "potassium 120 mg/kg"],
        ),
        (
            "P (ppm)   K (ppm)   Ca (ppm)\n28   100   410\npH *   5.4      Lime Buffer Capacity (LBC)   180",
            &["phosphorus 28 mg/kg", "potassium 100 mg/kg", "calcium 410 mg/kg", "ph 5.4 "],
        ),
    ]);
}

#[test]
fn rules_titles_units_and_narrow_heads_are_followed() {
    all_read(&[
        (
            "ALLOTMENT SOIL TEST          Wales\n--------------------\npH               7.1\nP   (mg/l)       96      Index 5",
            &["ph 7.1 ", "phosphorus 96 mg/L [Index 5]"],
        ),
        (
            "Untersuchung          Ergebnis   Klasse\nPhosphat P2O5 (CAL) mg/100 g     28   E\nKali K2O (CAL)   mg/100 g     5    B",
            &["phosphorus 12.22 mg/100 g by CAL [E]", "potassium 4.15 mg/100 g by CAL [B]"],
        ),
        (
            "Analysis    P(lb/A)   Zn(ppm) Mn(ppm) Cu(ppm)\nResult        34        1.9    14.2     0.6",
            &[
                "phosphorus 34 lb/acre",
                "zinc 1.9 mg/kg",
                "manganese 14.2 mg/kg",
                "copper 0.6 mg/kg",
            ],
        ),
        (
            "pH eau (NF ISO 10390)     8,2\nCEC Metson (NF X 31-130)   11,0 meq/100 g",
            &["ph 8.2 ", "cec 11 meq/100 g"],
        ),
        ("pH 8.4    E.C. x 10^3  5.1 (paste)", &["ph 8.4 ", "ec 5.1 dS/m by saturated paste"]),
        ("Bed 4      Soil texture: fine sandy loam      pH  6.2", &["ph 6.2 "]),
        (
            "Depth: 0-300 mm      Texture: Sand (clay 4 %)\npH   4.6\nK   55   mg/kg",
            &["clay 4 %", "ph 4.6 ", "potassium 55 mg/kg"],
        ),
        ("X-K (NH4OAc) 180 ppm", &["potassium 180 mg/kg by ammonium acetate"]),
    ]);
    let depth =
        report("Depth: 0-300 mm      Texture: Sand (clay 4 %)\npH   4.6").samples[0].depth_cm;
    assert_eq!(depth, Some((0.0, 30.0)));
}

#[test]
fn several_results_on_a_line_are_parted() {
    all_read(&[
        (
            "Soil report      Alberta\nZn 0.7 ppm   Cu 0.4 ppm   B 0.40 ppm",
            &["zinc 0.7 mg/kg", "copper 0.4 mg/kg", "boron 0.4 mg/kg"],
        ),
        (
            "pH   5.6\nDTPA Zn 1.4  Fe 22  Cu 0.8 mg/kg",
            &["ph 5.6 ", "zinc 1.4 ? by DTPA", "iron 22 ?", "copper 0.8 mg/kg"],
        ),
        (
            "Cationes de cambio (cmol(+)/kg): Ca 1,9   Mg 0,4   K 0,18",
            &["calcium 1.9 meq/100 g", "magnesium 0.4 meq/100 g", "potassium 0.18 meq/100 g"],
        ),
        (
            "Exchangeable cations, meq/100 g:   Ca   9.5   Mg   2.1",
            &["calcium 9.5 meq/100 g", "magnesium 2.1 meq/100 g"],
        ),
        (
            "Base Saturation, %  Calcium 49 (50-80)  Magnesium 5 (10-30)",
            &["calcium-saturation 49 % [50-80]", "magnesium-saturation 5 % [10-30]"],
        ),
        (
            "pH(H2O) 5,8 | P2O5 ext. 22 ppm | K2O ext. 61 ppm (método Egnér-Riehm)",
            &[
                "ph 5.8 ",
                "phosphorus 9.6 mg/kg by ammonium lactate (AL)",
                "potassium 50.64 mg/kg by ammonium lactate (AL)",
            ],
        ),
    ]);
}

#[test]
fn numbers_of_targets_and_earlier_years_are_no_results() {
    for line in [
        "Target levels (ppm): P 20  K 40",
        "Critical values (mg/kg): P 20  K 40",
        "Niveles críticos (cmol(+)/L): Ca 4  Mg 1",
        "Niveles críticos: pH 5.5, ACIDEZ 0.5, Ca 4, Mg 1",
        "Detection limits (ppm): Zn 0.1  Cu 0.2",
        "Last year (ppm): P 20  K 40",
        "Optimum ranges (ppm): P 20-40  K 100-150",
        "Recommended (kg/ha): P 20  K 40",
    ] {
        let text = format!("pH 6.2\n{line}");
        assert_eq!(shown(&text), ["ph 6.2 "], "{line}");
        assert!(reasons(&text).lines().count() > 0, "{line}");
    }
}

#[test]
fn a_lime_need_beside_a_ph_takes_nothing_from_it() {
    all_read(&[
        ("pH 6.6   Lime requirement: 0 t/ha\nK 90 mg/l", &["ph 6.6 ", "potassium 90 mg/L"]),
        (
            "pH     SMP (lab use)   Lime Req t/ha\n6.0    6.5             5.0\nP  mg/l   4.8    Index 2\nK  mg/l   88     Index 2",
            &[
                "ph 6 ",
                "buffer-ph 6.5 by SMP buffer",
                "phosphorus 4.8 mg/L [Index 2]",
                "potassium 88 mg/L [Index 2]",
            ],
        ),
        ("pH   Lime need t/ha\n5.6   4.0\nK 90 mg/l", &["ph 5.6 ", "potassium 90 mg/L"]),
        // A dose is no result.
        ("pH 6.2\nPotash   40   lb per 1000 sq ft recommended", &["ph 6.2 "]),
    ]);
}

#[test]
fn an_extractant_beside_a_ph_is_that_of_the_results_below() {
    let shapes = [
        "Pepper      pH 6.3     Mehlich-1 extractable\nP 14 ppm LOW     K 48 ppm MEDIUM",
        "pH 6.3     Mehlich-1\nP 14 ppm LOW     K 48 ppm MEDIUM",
    ];
    for text in shapes {
        assert_eq!(
            shown(text),
            [
                "ph 6.3 ",
                "phosphorus 14 mg/kg by Mehlich-1 [LOW]",
                "potassium 48 mg/kg by Mehlich-1 [MEDIUM]"
            ],
            "{text}"
        );
    }
}

/// A Brazilian table, in which single letters name parts of the exchange.
const EXCHANGE: &str = "Ca   14   mmolc/dm³\nH+Al   34   mmolc/dm³\nSB   20,2   mmolc/dm³\n\
    T   54,2   mmolc/dm³\nt   22   mmolc/dm³\nV   37   %\nm   9   %\nM.O.   22   g/dm³";

#[test]
fn the_letters_of_the_exchange_count_where_several_stand_together() {
    let read = [
        "calcium 1.4 meq/100 cm³",
        "exchangeable-acidity 3.4 meq/100 cm³",
        "cec 5.42 meq/100 cm³",
        "base-saturation 37 %",
        "acidity-saturation 9 %",
        "organic-matter 22 g/dm³",
    ];
    assert_eq!(shown(EXCHANGE), read);
    let unread = reasons(EXCHANGE);
    assert!(unread.contains("SB") && unread.contains("CTC (t)"), "{unread}");
    all_read(&[
        (
            "CTC (t)   2,66   cmolc/dm³\nCTC (T)   6,66   cmolc/dm³\nV (%)   32,4\nm (%)   18,8",
            &["cec 6.66 meq/100 cm³", "base-saturation 32.4 %", "acidity-saturation 18.8 %"],
        ),
        (
            "pH 5,0   H+Al 3,4 cmolc/dm³   CTC a pH 7,0 5,4 cmolc/dm³   V 37 %   m 9 %",
            &[
                "ph 5 ",
                "exchangeable-acidity 3.4 meq/100 cm³",
                "cec 5.4 meq/100 cm³",
                "base-saturation 37 %",
                "acidity-saturation 9 %",
            ],
        ),
        // Alone they may be anything.
        ("pH   6,2\nV   37   %\nK   90   mg/kg", &["ph 6.2 ", "potassium 90 mg/kg"]),
        ("pH   6,2\nm   9   %", &["ph 6.2 "]),
        ("pH   6,2\nT   25   °C", &["ph 6.2 "]),
        // Sulfur by charge is the sum of bases.
        ("pH   6,2\nS   56,0   mmolc/dm³", &["ph 6.2 "]),
    ]);
}

#[test]
fn organic_matter_is_no_molybdenum_and_a_share_of_aluminium_no_amount() {
    all_read(&[
        ("pH 6\nM.O.   2,10   dag/kg", &["ph 6 ", "organic-matter 2.1 %"]),
        ("pH 6\nMO   16   %", &["ph 6 ", "organic-matter 16 %"]),
        (
            "pH 6\nM.O. 3,1 %      CEC 4,2 cmol+/kg",
            &["ph 6 ", "organic-matter 3.1 %", "cec 4.2 meq/100 g"],
        ),
        ("pH 6\nSaturación de aluminio: 38 %", &["ph 6 ", "acidity-saturation 38 %"]),
        ("pH 6\nSaturación de Al   5   %", &["ph 6 ", "acidity-saturation 5 %"]),
        ("pH 6\nSat. Al   20   %", &["ph 6 ", "acidity-saturation 20 %"]),
        ("pH 6\nSA   38   %", &["ph 6 ", "acidity-saturation 38 %"]),
        ("pH 6\nAl saturation 38 %", &["ph 6 ", "acidity-saturation 38 %"]),
        ("pH 6\nAcid saturation   39   %", &["ph 6 ", "acidity-saturation 39 %"]),
        ("pH 6\nSuurversadiging (acid saturation)   6 %", &["ph 6 ", "acidity-saturation 6 %"]),
        (
            "pH 6\nExchangeable Aluminium       % of ECEC     4.0",
            &["ph 6 ", "acidity-saturation 4 %"],
        ),
        ("pH 6\nAl   18   % of ECEC", &["ph 6 ", "acidity-saturation 18 %"]),
        // A company's name, and an amount.
        ("pH 6\nSuelos S.A. 25", &["ph 6 "]),
        ("pH 6\nAl   60   ppm", &["ph 6 ", "aluminum 60 mg/kg"]),
    ]);
}

#[test]
fn words_of_many_languages_are_read() {
    all_read(&[
        (
            "pH eau 5,7    pH KCl 4,9    S/T 74 %",
            &["ph 5.7 ", "salt-ph 4.9 by potassium chloride", "base-saturation 74 %"],
        ),
        ("Taux de saturation (S/T)   35 %", &["base-saturation 35 %"]),
        (
            "K2O éch. 0,07 g/kg     MgO éch. 0,05 g/kg",
            &["potassium 0.06 g/kg", "magnesium 0.03 g/kg"],
        ),
        (
            "Sostanza organica   21 g/kg\nAzoto totale   1,4 g/kg\nCSC   24 meq/100 g",
            &["organic-matter 21 g/kg", "total-n 1.4 g/kg", "cec 24 meq/100 g"],
        ),
        (
            "P assimilabile (Olsen) 33 ppm    K scambiabile 70 ppm",
            &["phosphorus 33 mg/kg by Olsen", "potassium 70 mg/kg"],
        ),
        ("Conducibilità elettrica 1:5   0,22 mS/cm", &["ec 0.22 dS/m by 1:5 water"]),
        ("CE (extracto de saturación)   6.2   dS/m", &["ec 6.2 dS/m by saturated paste"]),
        (
            "Potasio asimilable (acetato amónico)  0,62 meq/100 g",
            &["potassium 0.62 meq/100 g by ammonium acetate"],
        ),
        ("S (fosfato monocálcico)   20,0   mg/dm³", &["sulfur 20 mg/L by calcium phosphate"]),
        (
            "Ca2+ (KCl 1 mol/L)   1,60   cmolc/dm³",
            &["calcium 1.6 meq/100 cm³ by potassium chloride"],
        ),
        ("B (água quente)   0,28   mg/dm³", &["boron 0.28 mg/L by hot water"]),
        ("Bor (Heißwasser) 0,25 mg/kg", &["boron 0.25 mg/kg by hot water"]),
        ("P  190 mg/1000 g Feinboden", &["phosphorus 190 mg/kg"]),
        ("Pw-getal 64 mg P2O5/l", &["phosphorus 27.93 mg/L by water (Pw)"]),
        ("Organische stof      4,0 %", &["organic-matter 4 %"]),
        (
            "Rt   6,8\nPt   5,1\nKt   5\nMgt  5",
            &[
                "salt-ph 6.3 by calcium chloride",
                "phosphorus 5.1 mg/100 g by Olsen",
                "potassium 5 mg/100 g by ammonium acetate",
                "magnesium 5 mg/100 g by ammonium acetate",
            ],
        ),
        ("pH 6\nPt   12   ppm", &["ph 6 "]),
        // The ratio of a method keeps its decimals.
        ("pH em água 1:2,5. Extrator Mehlich-1: P\npH   5,2", &["ph 5.2 by 1:2.5 water"]),
        // What water takes out is not the soil's store.
        ("pH 6\nK (1:5 water) 45 ppm", &["ph 6 "]),
    ]);
}

#[test]
fn texture_and_clay_in_the_words_of_each_country() {
    let cases: &[(&str, Option<Texture>, Option<f64>)] = &[
        ("Bodenart: S (Sand)   Humus 2,9 %", Some(Texture::Sand), Some(2.5)),
        ("Bodenart: sL      Humus: 4,6 %", Some(Texture::Loam), Some(21.0)),
        ("Bodenart lS", Some(Texture::SandyLoam), None),
        ("Bodenschwere: mittel (Ton 20 %)", None, Some(20.0)),
        ("Garten      Bodenschwere: schwer, Ton 31 %", None, Some(31.0)),
        ("Hausgarten       Ton 12,5 %", None, Some(12.5)),
        ("Grondsoort: zeeklei, lutum 24 %", None, Some(24.0)),
        ("Textura franco-arenosa (arcilla 11 %)    K 90 ppm", Some(Texture::SandyLoam), Some(11.0)),
        (
            "Tessitura: sabbioso franco (sabbia 78 %, limo 15 %, argilla 7,5 %)",
            Some(Texture::LoamySand),
            Some(7.5),
        ),
        ("Textura argilosa.", Some(Texture::Clay), None),
        ("Textura média | K 90 ppm", None, None),
        ("Textura: grosseira", None, None),
        ("Texture: Heavy clay, grey", Some(Texture::Clay), None),
        ("Texture (hand): Sandy loam", Some(Texture::SandyLoam), None),
        ("Soil: silt loam", Some(Texture::SiltLoam), None),
        ("Lawn    silt loam (group 3)    pounds per acre", Some(Texture::SiltLoam), None),
        ("Bodenschwere: mittel", None, None),
    ];
    for (line, texture, clay) in cases {
        let report = report(&format!("{line}\npH (CaCl2)  5,4"));
        let sample = &report.samples[0];
        assert_eq!(sample.texture, *texture, "{line}");
        let read = sample.readings.iter().find(|r| r.property == Property::Clay);
        assert_eq!(read.and_then(|r| r.amount).map(|a| a.number()), *clay, "{line}");
    }
    // A weight is no clay.
    for line in ["Lime   2   ton", "Lime 2 ton/acre", "Ton 12"] {
        let report = report(&format!("{line}\npH 5,4"));
        assert!(report.samples[0].readings.iter().all(|r| r.property != Property::Clay), "{line}");
    }
}
