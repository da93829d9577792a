//! From a pasted report to an answer.

use emberloam_tests::driver::Key;
use emberloam_tests::page::{
    A_SURPLUS, ANSWER, BROKEN, HOLDS, HUNGRY, METRIC, Page, QUESTIONS, SURPLUS, TROUBLE, UNREAD,
};
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
        page.browser.click(sample);
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
    page.browser.click(SURPLUS);
    let surplus = (page.wait_for_answer(), page.level("phosphorus"));
    page.browser.click(HUNGRY);
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
    page.browser.click(BROKEN);
    page.browser.wait_for("lines that were not read", || page.browser.shows(UNREAD));
    page.browser.wait_for("questions", || page.browser.shows(QUESTIONS));
    page.wait_for_answer();
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
