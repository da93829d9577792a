//! The rooms together, over tiny PDFs made here.

use super::open;
use crate::Refusal;

/// A PDF of pages with these drawings, fonts and further objects (from number 100).
fn document(pages: &[&str], page_keys: &str, fonts: &str, more: &[&str]) -> Vec<u8> {
    let kids: Vec<String> = (0..pages.len()).map(|i| format!("{} 0 R", 10 + 2 * i)).collect();
    let mut objects = vec![
        (1, "<</Type/Catalog/Pages 2 0 R>>".to_string()),
        (2, format!("<</Type/Pages/Count {}/Kids[{}]>>", pages.len(), kids.join(" "))),
    ];
    for (i, drawing) in pages.iter().enumerate() {
        let (page, content) = (10 + 2 * i, 11 + 2 * i);
        objects.push((
            page,
            format!(
                "<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 800]/Contents {content} 0 R{page_keys}\
                 /Resources<</Font<<{fonts}>>/XObject<</Form 100 0 R>>>>>>"
            ),
        ));
        objects.push((content, stream("", drawing)));
    }
    objects.extend((100..).zip(more).map(|(number, object)| (number, (*object).to_string())));
    let mut bytes = b"%PDF-1.4\n".to_vec();
    let mut places = Vec::new();
    for (number, object) in &objects {
        places.push((*number, bytes.len()));
        bytes.extend(format!("{number} 0 obj\n{object}\nendobj\n").bytes());
    }
    let start = bytes.len();
    bytes.extend(b"xref\n");
    for (number, at) in places {
        bytes.extend(format!("{number} 1\n{at:010} 00000 n \n").bytes());
    }
    bytes.extend(format!("trailer<</Size 500/Root 1 0 R>>\nstartxref\n{start}\n%%EOF").bytes());
    bytes
}

fn stream(keys: &str, content: &str) -> String {
    format!("<<{keys}/Length {}>>stream\n{content}\nendstream", content.len())
}

const HELVETICA: &str =
    "/F<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>";

/// The text of one page drawn with Helvetica, without the mark of the page.
fn page(drawing: &str) -> String {
    text(&document(&[drawing], "", HELVETICA, &[]))
}

fn text(pdf: &[u8]) -> String {
    let text = open(pdf).expect("a PDF with text").text;
    text.strip_prefix("[page 1]\n").expect("the mark of the first page").trim_end().to_string()
}

/// Draws each word at its place: `x y word`.
fn words(size: f64, placed: &[(f64, f64, &str)]) -> String {
    placed
        .iter()
        .map(|(x, y, word)| format!("BT /F {size} Tf {x} {y} Td ({word}) Tj ET\n"))
        .collect()
}

#[test]
fn every_operator_that_shows_text_is_followed() {
    let shown = page(
        "BT /F 10 Tf 12 TL 50 700 Td (one) Tj T* (two) Tj 0 -12 TD (three) Tj (four) ' \
         1 0 (five six) \" [(se) -20 (v) 30 (en) -900 (eight)] TJ \
         1 0 0 1 50 600 Tm 50 Tz 3 Tc (nine) Tj ET",
    );
    assert_eq!(shown, "one\ntwo\nthree\nfour\nfive sixseven\teight\nnine");
}

#[test]
fn prose_stays_one_cell() {
    let line = "BT /F 10 Tf 50 700 Td 2 Tw (Samples were dried, ground and sieved.  Results are dry.) Tj ET";
    assert_eq!(page(line), "Samples were dried, ground and sieved. Results are dry.");
}

#[test]
fn a_blank_cell_stays_blank() {
    let drawn = words(
        9.0,
        &[
            (50.0, 700.0, "Sample"),
            (120.0, 700.0, "pH"),
            (170.0, 700.0, "Buffer pH"),
            (250.0, 700.0, "P ppm"),
            (50.0, 686.0, "Bed 1"),
            (120.0, 686.0, "6.2"),
            (170.0, 686.0, "6.8"),
            (250.0, 686.0, "18"),
            (50.0, 672.0, "Bed 2"),
            (120.0, 672.0, "7.1"),
            (250.0, 672.0, "56"),
        ],
    );
    assert_eq!(page(&drawn), "Sample\tpH\tBuffer pH\tP ppm\nBed 1\t6.2\t6.8\t18\nBed 2\t7.1\t\t56");
}

#[test]
fn numbers_at_the_right_edge_belong_to_the_heading_on_their_left() {
    // Source: how spreadsheet programs print: words left, numbers right (opened).
    let heads = [(50.0, "Sample"), (120.0, "K %"), (180.0, "Mg %"), (240.0, "Ca %")];
    let mut placed: Vec<(f64, f64, &str)> = heads.iter().map(|h| (h.0, 700.0, h.1)).collect();
    placed.extend([
        (50.0, 686.0, "Bed 1"),
        (165.5, 686.0, "2.9"),
        (225.5, 686.0, "8.8"),
        (50.0, 672.0, "Bed 2"),
        (165.5, 672.0, "5.6"),
    ]);
    assert_eq!(page(&words(9.0, &placed)), "Sample\tK %\tMg %\tCa %\nBed 1\t2.9\t8.8\nBed 2\t5.6");
}

#[test]
fn a_wrapped_head_is_one_row_and_two_results_are_two() {
    let mut placed = vec![
        (50.0, 704.0, "Sample"),
        (120.0, 709.0, "Buffer"),
        (120.0, 699.0, "pH"),
        (180.0, 709.0, "CEC"),
        (180.0, 699.0, "meq/100g"),
    ];
    for (i, (name, ph, cec)) in
        [("1", "6.2", "9"), ("2", "6.4", "11"), ("3", "6.5", "8")].into_iter().enumerate()
    {
        let y = 684.0 - 10.0 * i as f64;
        placed.extend([(50.0, y, name), (120.0, y, ph), (180.0, y, cec)]);
    }
    assert_eq!(
        page(&words(8.0, &placed)),
        "Sample\tBuffer pH\tCEC meq/100g\n1\t6.2\t9\n2\t6.4\t11\n3\t6.5\t8"
    );
}

#[test]
fn runs_are_put_in_order_of_place_not_of_drawing() {
    let drawn = words(
        10.0,
        &[
            (50.0, 686.0, "Potassium"),
            (50.0, 700.0, "Phosphorus"),
            (150.0, 700.0, "18"),
            (150.0, 686.0, "142"),
        ],
    );
    assert_eq!(page(&drawn), "Phosphorus\t18\nPotassium\t142");
}

#[test]
fn a_ruled_line_parts_cells_however_close() {
    let drawn = "BT /F 10 Tf 50 700 Td (Potassium) Tj 47 0 Td (142) Tj ET 96 690 m 96 712 l S";
    assert_eq!(page(drawn), "Potassium\t142");
}

#[test]
fn an_index_below_the_line_belongs_to_its_word() {
    let drawn = "BT /F 10 Tf 50 700 Td (P) Tj /F 6 Tf -2 Ts (2) Tj /F 10 Tf 0 Ts (O) Tj /F 6 Tf -2 Ts (5) Tj ET";
    assert_eq!(page(drawn), "P2O5");
}

#[test]
fn a_turned_page_reads_upright() {
    let drawing = "BT /F 10 Tf 0 1 -1 0 300 100 Tm (pH) Tj 0 1 -1 0 300 200 Tm (6.2) Tj ET";
    for keys in ["", "/Rotate 90", "/Rotate 180", "/Rotate 270"] {
        assert_eq!(text(&document(&[drawing], keys, HELVETICA, &[])), "pH\t6.2", "{keys}");
    }
}

#[test]
fn a_form_is_drawn_where_it_is_placed_and_one_that_draws_itself_ends() {
    let keys = "/Type/XObject/Subtype/Form/BBox[0 0 600 800]/Matrix[1 0 0 1 100 0]\
                /Resources<</Font<</F<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>\
                /XObject<</Form 100 0 R>>>>";
    let form = stream(keys, "BT /F 10 Tf 50 700 Td (6.2) Tj ET /Form Do");
    let drawing = "BT /F 10 Tf 50 700 Td (pH) Tj ET q /Form Do Q";
    let shown = text(&document(&[drawing], "", HELVETICA, &[&form]));
    assert!(shown.starts_with("pH\t6.2"), "{shown}");
}

#[test]
fn a_font_says_its_letters_in_every_way_fonts_do() {
    let map = stream(
        "",
        "1 begincodespacerange <0000> <ffff> endcodespacerange \
         2 beginbfchar <0001> <0070> <0002> <0048> endbfchar \
         1 beginbfrange <0010> <0011> [<00660069> <00b5>] endbfrange",
    );
    let fonts = "/N<</Type/Font/Subtype/Type1/BaseFont/X/FirstChar 1/LastChar 4/Widths[500 500 500 500]\
        /Encoding<</Differences[1/p/H/fi/mu]>>>>\
        /C<</Type/Font/Subtype/Type0/BaseFont/Y/Encoding/Identity-H/ToUnicode 100 0 R\
        /DescendantFonts[<</Type/Font/Subtype/CIDFontType2/DW 500/W[16[500 500]]>>]>>";
    let drawing = "BT /N 10 Tf 50 700 Td <01020304> Tj /C 10 Tf 0 -20 Td <0001000200100011> Tj ET";
    assert_eq!(text(&document(&[drawing], "", fonts, &[&map])), "pHfiµ\npHfiµ");
}

#[test]
fn charts_and_watermarks_are_no_data() {
    let drawn =
        words(10.0, &[(50.0, 700.0, "P"), (100.0, 700.0, "18"), (150.0, 700.0, "PPPPPPPP")])
            + "BT /F 60 Tf 0.7 0.7 -0.7 0.7 100 300 Tm (DRAFT) Tj ET 50 500 80 20 re f";
    assert_eq!(page(&drawn), "P\t18");
}

#[test]
fn letters_drawn_twice_are_read_once() {
    let drawn = words(10.0, &[(50.0, 700.0, "Results"), (50.3, 700.0, "Results")]);
    assert_eq!(page(&drawn), "Results");
}

#[test]
fn a_table_goes_on_over_the_page() {
    let first = words(
        9.0,
        &[
            (50.0, 700.0, "Sample"),
            (120.0, 700.0, "pH"),
            (170.0, 700.0, "Buffer"),
            (250.0, 700.0, "P"),
            (50.0, 686.0, "A"),
            (120.0, 686.0, "6.2"),
            (170.0, 686.0, "6.8"),
            (250.0, 686.0, "18"),
            (50.0, 30.0, "Page 1 of 2"),
        ],
    );
    let second = words(
        9.0,
        &[
            (50.0, 700.0, "B"),
            (120.0, 700.0, "7.1"),
            (250.0, 700.0, "56"),
            (50.0, 686.0, "C"),
            (120.0, 686.0, "7.0"),
            (250.0, 686.0, "40"),
            (50.0, 30.0, "Page 2 of 2"),
        ],
    );
    assert_eq!(
        text(&document(&[&first, &second], "", HELVETICA, &[])),
        "Sample\tpH\tBuffer\tP\nA\t6.2\t6.8\t18\nPage 1 of 2\n[page 2]\nB\t7.1\t\t56\nC\t7.0\t\t40\nPage 2 of 2"
    );
}

/// Rows of a sheet at these heights.
fn sheet(columns: &[(f64, [&str; 3])], heights: [f64; 3]) -> String {
    let placed: Vec<(f64, f64, &str)> = columns
        .iter()
        .flat_map(|(x, cells)| cells.iter().zip(heights).map(|(c, y)| (*x, y, *c)))
        .collect();
    words(9.0, &placed)
}

#[test]
fn parts_of_a_sheet_come_side_by_side_only_where_their_rows_match() {
    let left = sheet(
        &[(50.0, ["Sample", "Bed 1", "Bed 2"]), (120.0, ["pH", "6.2", "7.1"])],
        [700.0, 686.0, 672.0],
    );
    let right = [(50.0, ["P ppm", "18", "56"]), (120.0, ["K ppm", "142", "301"])];
    let level = sheet(&right, [700.0, 686.0, 672.0]);
    let opened = open(&document(&[&left, &level], "", HELVETICA, &[])).unwrap();
    assert_eq!(
        opened.text,
        "[page 1]\nSample\tpH\tP ppm\tK ppm\nBed 1\t6.2\t18\t142\nBed 2\t7.1\t56\t301\n[page 2]\n"
    );
    assert_eq!(opened.notes.len(), 1);
    let askew = sheet(&right, [700.0, 683.0, 660.0]);
    let text = open(&document(&[&left, &askew], "", HELVETICA, &[])).unwrap().text;
    assert!(text.contains("Bed 1\t6.2\n"), "{text}");
    // A form filled in for another sample is no right part.
    let again = open(&document(&[&left, &left], "", HELVETICA, &[])).unwrap();
    assert!(again.notes.is_empty(), "{:?}", again.notes);
}

#[test]
fn what_is_read_from_a_scan_is_said() {
    let drawing = "BT 3 Tr /F 10 Tf 50 700 Td (pH 6.2) Tj ET";
    let opened = open(&document(&[drawing], "", HELVETICA, &[])).unwrap();
    assert_eq!(opened.text, "[page 1]\npH 6.2\n");
    assert!(opened.notes[0].contains("scan"), "{:?}", opened.notes);
}

#[test]
fn what_cannot_be_read_is_refused_for_its_own_reason() {
    let refusal = |bytes: &[u8]| open(bytes).unwrap_err();
    assert_eq!(
        refusal(&document(&["50 50 100 100 re f"], "", HELVETICA, &[])),
        Refusal::ScannedPdf
    );
    assert_eq!(refusal(b"%PDF-1.4 nonsense"), Refusal::Damaged { what: "PDF file" });
    let dumb = "/F<</Type/Font/Subtype/Type0/BaseFont/Y/Encoding/Identity-H\
                /DescendantFonts[<</Type/Font/Subtype/CIDFontType2/DW 500>>]>>";
    let drawing = "BT /F 10 Tf 50 700 Td <0001000200030004> Tj ET";
    assert_eq!(refusal(&document(&[drawing], "", dumb, &[])), Refusal::NoLetters);
    // Codes handed out in the order of first use say nothing of the letters.
    let numbered = "/F<</Type/Font/Subtype/TrueType/BaseFont/ABCDEF+Z/FirstChar 33/LastChar 40\
        /Widths[500 500 500 500 500 500 500 500]/FontDescriptor<</Flags 4/FontFile2 100 0 R>>>>";
    let drawing = "BT /F 10 Tf 50 700 Td (!\"#$%#!&'$) Tj ET";
    assert_eq!(
        refusal(&document(&[drawing], "", numbered, &[&stream("", "")])),
        Refusal::NoLetters
    );
}
