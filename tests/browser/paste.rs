//! From a pasted report to an answer.

use std::fs;

use emberloam_tests::driver::Key;
use emberloam_tests::page::{
    A_SURPLUS, ANSWER, BROKEN, FILE, HOLDS, HUNGRY, METRIC, Page, QUESTIONS, SURPLUS, TROUBLE,
    UNREAD, US_MEASURES,
};
use emberloam_tests::project;
use serde_json::json;

#[test]
fn a_pasted_report_gives_an_answer() {
    let page = Page::open("paste");
    assert_eq!(page.path(), "", "an answer before any report");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    assert!(!page.browser.text(ANSWER).is_empty(), "the answer says nothing");
    for property in ["phosphorus", "potassium"] {
        let level = page.level(property);
        assert!(["high", "excess"].contains(&level.as_str()), "{property} is {level:?}");
    }
    assert!(!page.browser.shows(TROUBLE), "trouble: {}", page.browser.text(TROUBLE));
}

#[test]
fn every_sample_gives_an_answer() {
    let page = Page::open("samples");
    let mut reports = Vec::new();
    for sample in [SURPLUS, HUNGRY, METRIC] {
        page.sample(sample);
        page.browser.wait_for("another report in the field", || {
            let report = page.report();
            !report.is_empty() && !reports.contains(&report)
        });
        reports.push(page.report());
        let path = page.wait_for_answer();
        println!("{sample}: {path}");
        assert!(page.browser.has(&format!("{HOLDS} [data-property][data-level]")), "{sample}");
    }
}

#[test]
fn a_surplus_and_a_hungry_soil_get_different_answers() {
    let page = Page::open("contrast");
    page.sample(SURPLUS);
    let surplus = (page.wait_for_answer(), page.level("phosphorus"));
    page.sample(HUNGRY);
    page.browser.wait_for("another level of phosphorus", || {
        page.level("phosphorus") != surplus.1 && !page.level("phosphorus").is_empty()
    });
    let hungry = page.wait_for_answer();
    assert_ne!(surplus.0, hungry);
    assert!(["charged", "charge-first"].contains(&hungry.as_str()), "hungry soil: {hungry}");
}

#[test]
fn the_broken_sample_shows_what_was_not_read_and_asks() {
    let page = Page::open("broken");
    page.sample(BROKEN);
    page.browser.wait_for("lines that were not read", || page.browser.shows(UNREAD));
    page.browser.wait_for("questions", || page.browser.shows(QUESTIONS));
    page.wait_for_answer();
}

#[test]
fn a_source_that_disagrees_stands_beside_the_range_of_an_opened_reading() {
    let page = Page::open("disagrees");
    page.sample(SURPLUS);
    page.wait_for_answer();
    let ph = format!("{HOLDS} [data-property='ph']");
    page.browser.wait_for("the reading", || page.browser.shows(&ph));
    assert!(!page.browser.shows(".second-opinion"), "a closed line shows second opinions");
    page.browser.click(&format!("{ph} summary"));
    let opinion = format!("{ph} .reading-range .second-opinion.disagrees");
    page.browser.wait_for("what other sources say: pH 6.6 is high for some", || {
        page.browser.shows(&opinion)
    });
    let agreeing = ".second-opinion:not(.disagrees)";
    page.unfold_all();
    page.browser.wait_for("those that agree", || page.browser.shows(agreeing));
    let beside = format!(".reading-range {agreeing}");
    assert!(!page.browser.has(&beside), "those that agree stand beside the range");
}

#[test]
fn each_report_asks_its_own_questions() {
    let page = Page::open("own-questions");
    page.sample(METRIC);
    page.wait_for_answer();
    page.answer("Area of the bed", "12");
    page.browser.wait_for("an answered question", || page.browser.shows(".chip.answered"));
    page.sample(BROKEN);
    page.browser.wait_for("lines that were not read", || page.browser.shows(UNREAD));
    assert!(!page.browser.shows(".chip.answered"), "{}", page.browser.text(QUESTIONS));
}

#[test]
fn names_apart_from_their_numbers_are_asked_and_each_line_shows_its_use() {
    let page = Page::open("apart");
    page.paste(
        "Test\npH\nPhosphorus (Olsen)\nPotassium\nMagnesium\nResult\n6.4\n61\n240\n180\n\
         Unit\n-\nmg/kg\nmg/kg\nmg/kg\n",
    );
    page.wait_for_answer();
    page.browser.wait_for("the pairs", || {
        page.unfold(".chip.more, .chip[data-question='CountedOff']");
        page.browser.shows(".pairs td")
    });
    let pairs = page.browser.text(".pairs");
    assert!(pairs.contains("pH") && pairs.contains("6.4"), "{pairs}");
    assert!(page.level("phosphorus").is_empty(), "judged before it was asked");
    page.answer("Names and numbers that may not belong together", "they belong together");
    page.browser.wait_for("phosphorus judged", || !page.level("phosphorus").is_empty());
    page.open_all_answers();
    page.browser.click("#uses summary");
    let marked = "#uses [data-use='result']";
    page.browser.wait_for("the results among the lines", || page.browser.shows(marked));
    assert!(page.browser.text("#uses").contains("Olsen"));
}

#[test]
fn a_text_file_is_read_and_another_file_is_refused() {
    let page = Page::open("file");
    let folder = project().join("target/browser");
    let open = |name: &str, bytes: &[u8]| {
        let file = folder.join(name);
        fs::write(&file, bytes).expect("target/browser can be written");
        page.browser.type_into(FILE, &file.display().to_string());
    };
    open("report.txt", A_SURPLUS.as_bytes());
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS);

    // The micro sign as Windows-1252 writes it.
    open("windows.csv", b"pH,6.5\nSalts (EC 1:5),90 \xB5S/cm\n");
    page.browser.wait_for("the second file", || page.report().contains("90 \u{b5}S/cm"));
    page.wait_for_answer();

    let utf_16: Vec<u8> = "\u{feff}pH\t6.4\r\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    open("unicode.txt", &utf_16);
    page.browser.wait_for("the third file", || page.report() == "pH\t6.4\n");
    page.wait_for_answer();

    let before = page.browser.text(TROUBLE);
    open("report.pdf", b"%PDF-1.7\n\0\xFF\x80 1 0 obj");
    let (message, _) = page.wait_for_trouble(&before);
    assert!(message.contains("report.pdf") && message.contains("damaged"), "{message}");
}

#[test]
fn us_measures_are_used_in_the_recipe_and_the_tasks_and_stay() {
    let page = Page::open("measures");
    page.sample(HUNGRY);
    page.wait_for_answer();
    page.open_all_answers();
    let tasks = || page.browser.text("#jobs");
    let steps = page.browser.text("#recipe .steps");
    assert!(steps.contains("\u{a0}L "), "{steps}");
    page.settings();
    page.browser.click(US_MEASURES);
    // A number is taken in the unit that stands beside it.
    page.browser.wait_for("US units", || page.browser.text("#bed").contains("sq ft"));
    page.answer("Area of the bed", "100");
    page.answer("How deep you will mix it in", "6");
    page.browser.wait_for("inches in the tasks", || tasks().contains("6\u{a0}in deep"));
    // 100 sq ft × 6 in × 5 % is 2.5 cu ft, 18.7 US gallons.
    for part in ["#amounts", "#recipe .steps", "#jobs"] {
        // What lies below the answer follows a little after it.
        page.browser.wait_for("19 gallons", || page.browser.text(part).contains("19\u{a0}gal"));
        let text = page.browser.text(part);
        assert!(!text.contains("\u{a0}L"), "{part}: {text}");
    }
    let carried = page.browser.text("#carry");
    assert!(carried.contains("100\u{a0}sq ft") && carried.contains("bucket"), "{carried}");
    assert!(!carried.contains("\u{a0}L"), "{carried}");
    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
    page.browser.wait_for("the tasks", || !tasks().is_empty());
    assert!(tasks().contains("6\u{a0}in deep"), "after a reload: {}", tasks());
}

#[test]
fn a_value_is_corrected_in_place() {
    let page = Page::open("correct");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let before = page.level("phosphorus");
    page.browser.click(&format!("{HOLDS} [data-property='phosphorus'] summary"));
    let field = format!("{HOLDS} [data-property='phosphorus'] input");
    page.browser.click(&field);
    page.browser.run_with("document.querySelector(arguments[0]).select()", &[json!(field)]);
    page.browser.insert("3");
    page.browser.press(Key::Tab);
    page.browser.wait_for("a lower level of phosphorus", || {
        ["very-low", "low"].contains(&page.level("phosphorus").as_str())
    });
    assert_ne!(before, page.level("phosphorus"));
    assert_eq!(page.report(), A_SURPLUS, "the pasted text was changed");
}

#[test]
fn a_line_that_was_not_read_becomes_a_reading_by_one_choice_and_back_again() {
    let page = Page::open("name-a-line");
    let text = "pH 6.4\nPhosphorus (Olsen) 18 mg/kg\nZoubium avail. 140 mg/kg\n";
    page.paste(text);
    page.wait_for_answer();
    let potassium = format!("{HOLDS} [data-property='potassium']");
    page.browser.wait_for("the line", || page.browser.shows("#unread > summary"));
    assert!(!page.browser.has(&potassium));
    page.browser.click("#unread > summary");
    page.browser.click("#unread li details > summary");
    page.browser.wait_for("the choice", || page.browser.has("#unread select"));
    page.browser.run(
        "const choice = document.querySelector('#unread select');
        choice.value = [...choice.options].find((o) => o.textContent === 'potassium').value;
        choice.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    page.browser.wait_for("the reading", || page.browser.shows(&potassium));
    assert!(page.browser.text(&potassium).contains("140"));
    assert!(!page.browser.shows("#unread"), "the line is still among those not read");
    assert_eq!(page.report(), text, "the pasted text was changed");
    // It is kept, and can be taken back.
    page.browser.reload();
    page.browser.wait_for("the reading again", || page.browser.has(&potassium));
    page.browser.click(&format!("{potassium} summary"));
    let back = format!("{potassium} .correct button:last-child");
    page.browser.wait_for("the way back", || page.browser.shows(&back));
    page.browser.click(&back);
    page.browser.wait_for("the line among those not read", || page.browser.shows("#unread"));
    assert!(!page.browser.has(&potassium));
}

#[test]
fn what_the_bed_needs_is_measured_out_and_follows_the_bag() {
    let page = Page::open("needs");
    page.paste("P (Mehlich-3) 18 ppm\nK (Mehlich-3) 60 ppm\npH 6.5\n");
    page.wait_for_answer();
    page.open_all_answers();
    let need = |name: &str| format!("#needs [data-name=\"{name}\"]");
    page.browser.wait_for("the needs", || page.browser.has(&need("phosphate")));
    assert!(page.browser.text(&need("phosphate")).contains("feed it this year"));
    // What can't be a bed is asked again, in words.
    page.answer("Area of the bed", "0.001");
    page.browser
        .wait_for("the question", || page.browser.text("#questions").contains("can't be a bed"));
    page.answer("Area of the bed", "10");
    page.browser.wait_for("the amount for the bed", || {
        page.browser.has("#needs [data-name=\"phosphate-for-bed\"]")
    });
    page.browser.run("for (const d of document.querySelectorAll('#needs details')) d.open = true");
    page.answer("Fertiliser bag: first number, nitrogen (N)", "10");
    page.browser.wait_for("the bag", || page.browser.has(&need("fertiliser")));
    assert!(page.browser.text(&need("fertiliser")).contains("10-0-0"));
}

#[test]
fn the_year_of_a_property_can_be_chosen_and_every_publication_looked_up() {
    let page = Page::open("year");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.open_all_answers();
    page.browser.wait_for("the year", || page.browser.shows("#course"));
    assert!(page.browser.text("#course").contains("After a week:"));
    page.browser.run(
        "const pick = document.querySelector('#course select');
        pick.value = 'potassium';
        pick.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    page.browser.run("for (const d of document.querySelectorAll('#course details')) d.open = true");
    page.browser.wait_for("the parts of potassium", || {
        page.browser.text("#course").contains("own content")
    });
    page.browser.wait_for("the pH to come", || {
        let said = page.browser.text("#reaction");
        said.contains("The pH likely") && said.contains("for mixed vegetables")
    });
    page.unfold("#sources, #register");
    page.browser.wait_for("the register", || {
        page.unfold("#register");
        let listed = page.browser.text("#register");
        listed.contains("Oregon State University") && listed.contains("For:")
    });
    page.browser.wait_for("the kind of soil", || page.browser.shows("#traits"));
}
