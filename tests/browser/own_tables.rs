//! A region's own file of tables, as an educator opens it.

use std::fs;

use emberloam_tests::page::Page;
use emberloam_tests::project;
use serde_json::json;

const REPORT: &str = "pH 6.5\nPhosphorus (Mehlich-3) 70 ppm\nPotassium (Mehlich-3) 120 ppm\n";
const PICKER: &str = "#own-tables";
const SAID: &str = "#own-tables-said";

fn choose(page: &Page, name: &str, text: &str) {
    let file = project().join("target/browser").join(name);
    fs::write(&file, text).expect("target/browser can be written");
    page.browser.type_into(PICKER, &file.display().to_string());
}

fn county() -> String {
    fs::read_to_string(project().join("public/samples/region-tables.csv")).expect("the sample")
}

/// By the sample's own table phosphorus is high from 61 and potassium enough from 91 to 180.
#[test]
fn a_regions_own_table_judges_is_kept_and_is_taken_out() {
    let page = Page::open("own-tables");
    page.paste(REPORT);
    page.wait_for_answer();
    let before = page.level("phosphorus");
    page.open_all_answers();
    page.browser.wait_for("the picker", || page.browser.has(PICKER));
    choose(&page, "county.csv", &county());
    page.browser.wait_for("the file is named", || page.browser.text(SAID).contains("My county"));
    page.browser.wait_for("its judgement", || page.level("phosphorus") == "high");
    assert_eq!(page.level("potassium"), "sufficient");
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("it is kept", || page.level("phosphorus") == "high");
    page.open_all_answers();
    page.browser.wait_for("the way out", || page.browser.shows("#own-tables-out"));
    page.browser.click("#own-tables-out");
    page.browser.wait_for("another judge", || page.level("phosphorus") == before);
    assert!(before != "high", "the test's phosphorus is {before} without the file too");
    assert_eq!(
        page.browser.run("return document.querySelector('#own-tables-out').checkVisibility()"),
        json!(false)
    );
}

#[test]
fn a_wrong_file_is_refused_with_its_line_and_loses_nothing() {
    let page = Page::open("own-tables-wrong");
    page.paste(REPORT);
    page.wait_for_answer();
    page.open_all_answers();
    page.browser.wait_for("the picker", || page.browser.has(PICKER));
    let before = page.level("phosphorus");
    choose(&page, "wrong.csv", &county().replace("mehlich-3,mg/kg", "mehlich-3,mg/cup"));
    page.browser.wait_for("the line and the fault", || {
        let said = page.browser.text(SAID);
        said.contains("wrong.csv, line") && said.contains("mg/cup")
    });
    assert_eq!(page.level("phosphorus"), before);
    assert_eq!(page.report(), REPORT);
}
