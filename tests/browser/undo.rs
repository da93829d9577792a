//! Whatever takes the place of a report: the one before is one press away, with its corrections
//! and answers, and stays among the earlier reports.

use std::fs;

use emberloam_tests::driver::Key;
use emberloam_tests::page::{A_SURPLUS, HUNGRY, Page, UPDATE_NOTE};
use emberloam_tests::site::Site;
use serde_json::{Value, json};

use crate::files::{
    A_FILE, bring, choose, made, sample, share_from_outside, wait_until_opened, wait_until_refused,
};

/// Invented, and nothing like the other one.
const ANOTHER: &str = "Method: Olsen\npH 7.2\nPhosphorus 6 mg/kg\nPotassium 90 mg/kg\n";
const NOTE: &str = "#erased-note";
const UNDO: &str = "#take-back";
const EARLIER: &str = "#earlier";

/// What is kept of this page: text, answers, jobs done.
fn kept(page: &Page) -> Value {
    let json = page.browser.run("return localStorage.getItem('emberloam:kept')");
    serde_json::from_str(json.as_str().unwrap_or("null")).expect("whole JSON")
}

/// A page with a report, an answer, and a reading put right.
fn at_work(name: &str) -> Page {
    let page = Page::with_report(name);
    page.answer("Area of the bed", "12");
    let potassium = "#holds [data-property='potassium']";
    page.browser.wait_for("the reading", || page.browser.has(potassium));
    page.browser.click(&format!("{potassium} summary"));
    let field = format!("{potassium} input");
    page.browser.click(&field);
    page.browser.run_with("document.querySelector(arguments[0]).select()", &[json!(field)]);
    page.browser.insert("77");
    page.browser.press(Key::Tab);
    page.browser.wait_for("the correction to be kept", || {
        kept(&page)["answers"]["reading"]["corrections"]
            .as_array()
            .is_some_and(|all| !all.is_empty())
    });
    page
}

/// Waits until something else is there, takes it back, and sees that all is as it was.
#[track_caller]
fn comes_back(page: &Page, before: &Value, what: &str) {
    page.browser.wait_for(&format!("{what}: the way back"), || {
        page.report() != before["text"].as_str().unwrap() && page.browser.shows(UNDO)
    });
    assert!(page.browser.shows(NOTE), "{what}: nothing says that the report is kept");
    page.browser.click(UNDO);
    page.browser.wait_for(&format!("{what}: all as it was"), || kept(page) == *before);
    assert_eq!(page.report(), before["text"].as_str().unwrap(), "{what}");
    assert!(!page.browser.shows(UNDO), "{what}: it is offered once more");
}

#[test]
fn each_way_to_replace_a_report_can_be_taken_back_with_its_corrections() {
    let page = at_work("undo-each");
    let before = kept(&page);

    choose(&page, &sample("openpyxl.xlsx"));
    comes_back(&page, &before, "a file");
    choose(&page, &made("prose.txt", b"Dear neighbour, the summer was long.\nKind regards\n"));
    comes_back(&page, &before, "a file that is no report");
    choose(&page, &made("shares-a-line.txt", b"Method: Mehlich-3\npH 5.0\nPotassium 20 ppm\n"));
    comes_back(&page, &before, "a file that has a line of the report");
    choose(&page, &made("blank.txt", b"  \n"));
    wait_until_refused(&page, "empty");
    assert_eq!(kept(&page), before, "an empty file changed something");
    page.sample(HUNGRY);
    comes_back(&page, &before, "a sample");
    let beside = "data.setData('text/plain', arguments[1])";
    bring(&page, "paste", "body", beside, &[json!(ANOTHER)]);
    comes_back(&page, &before, "a paste beside the box");
    bring(&page, "paste", "body", beside, &[json!("pH 5")]);
    comes_back(&page, &before, "a paste of one line beside the box");
    let given = [json!("openpyxl.xlsx"), json!(fs::read(sample("openpyxl.xlsx")).unwrap())];
    bring(&page, "drop", "h1", A_FILE, &given);
    comes_back(&page, &before, "a drop");
    page.paste(ANOTHER);
    comes_back(&page, &before, "a paste over all of the box");
    page.put("''");
    comes_back(&page, &before, "all taken out of the box");
}

#[test]
fn a_slow_file_that_comes_while_one_types_can_be_taken_back() {
    let page = at_work("undo-slow");
    // The file is read only when it is told to be.
    page.browser.run(
        "const read = Blob.prototype.arrayBuffer;
        Blob.prototype.arrayBuffer = function () {
            return new Promise((done) => (window.__go = () => done(read.call(this))));
        }",
    );
    choose(&page, &made("slow.txt", ANOTHER.as_bytes()));
    page.browser.wait_for("the file to be waited for", || page.browser.shows("#cancel-opening"));
    page.put("document.querySelector('#report-text').value + 'Sodium 21 ppm\\n'");
    page.browser.wait_for("what is typed", || {
        kept(&page)["text"].as_str().is_some_and(|text| text.contains("Sodium"))
    });
    let before = kept(&page);
    page.browser.run("window.__go()");
    comes_back(&page, &before, "a slow file");
}

#[test]
fn a_shared_file_can_be_taken_back_also_after_another_load() {
    let page = at_work("undo-shared");
    page.wait_until_offline_ready();
    let before = kept(&page);
    share_from_outside(&page, "openpyxl.xlsx");
    page.wait_until_started();
    wait_until_opened(&page, "openpyxl.xlsx");
    page.browser.wait_for("the way back", || page.browser.shows(UNDO));
    page.browser.wait_for("it among the earlier", || page.browser.shows(EARLIER));

    page.browser.reload();
    page.wait_until_started();
    open_earlier(&page, "Soil test, back garden");
    page.browser.wait_for("all as it was", || kept(&page) == before);
}

/// Opens one of the earlier reports by its first line.
#[track_caller]
pub fn open_earlier(page: &Page, line: &str) {
    page.browser.wait_for("the earlier reports", || page.browser.shows(EARLIER));
    page.unfold(EARLIER);
    let button = format!("#earlier [aria-label^='Open: “{line}']");
    page.browser.wait_for(line, || page.browser.shows(&button));
    page.browser.click(&button);
}

/// How many earlier reports are in sight.
fn count_earlier(page: &Page) -> usize {
    page.unfold(EARLIER);
    let count = page.browser.run("return document.querySelectorAll('#earlier .entry').length");
    count.as_u64().unwrap_or_default() as usize
}

#[test]
fn the_earlier_reports_are_listed_opened_saved_deleted_and_only_so_many() {
    let page = Page::open("earlier");
    page.browser.run("addEventListener('emberloam:save', ({ detail }) => window.__saved = detail)");
    for at in 0..24 {
        page.paste(&format!("Report {at}\nMethod {at}: Olsen\npH 6.{at}\n"));
        page.browser.wait_for("the paste", || page.report().starts_with(&format!("Report {at}\n")));
        std::thread::sleep(std::time::Duration::from_millis(60));
    }
    page.browser.wait_for("the earlier reports", || page.browser.shows(EARLIER));
    page.browser.wait_for("so many", || (17..=19).contains(&count_earlier(&page)));
    let first = page.browser.text("#earlier .entry");
    assert!(first.starts_with("Report 22"), "{first}");
    page.browser.click("#earlier [aria-label='Save as a file: “Report 22”']");
    let saved = page.browser.run("return window.__saved").to_string();
    assert!(saved.contains("Method 22"), "{saved}");
    let before = count_earlier(&page);
    page.browser.click("#earlier [aria-label='Delete: “Report 22”']");
    page.browser.wait_for("one less", || count_earlier(&page) == before - 1);
    open_earlier(&page, "Report 21");
    page.browser.wait_for("the report", || page.report().starts_with("Report 21\n"));
    // Nothing of it was asked of anybody.
    let asked = page.browser.requests();
    assert!(asked.iter().all(|url| !url.contains("Report")));

    page.browser.click("#erase");
    page.browser.wait_for("no earlier reports", || !page.browser.shows(EARLIER));
    page.browser.wait_for("no database", || {
        page.browser.run("return indexedDB.databases().then((all) => all.length)") == 0
    });
}

#[test]
fn two_tabs_keep_two_reports_that_nobody_saved() {
    let page = Page::with_report("two-tabs");
    let (first, second) = page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.paste(ANOTHER);
    page.wait_for_answer();
    page.browser.wait_for("it to be kept", || kept(&page)["text"] == ANOTHER);
    for (tab, text) in [(&first, A_SURPLUS), (&second, ANOTHER), (&first, A_SURPLUS)] {
        page.browser.turn_to(tab);
        page.browser.reload();
        page.wait_until_started();
        page.wait_for_answer();
        assert_eq!(page.report(), text);
    }
}

#[test]
fn a_new_version_keeps_the_text_of_each_tab() {
    let page = Page::open_from("two-tabs-update", Site::start_copy("two-tabs-update"));
    page.wait_until_offline_ready();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let (first, second) = page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.paste(ANOTHER);
    page.wait_for_answer();
    let worker = page.site.dist.join("service-worker.js");
    let code = fs::read_to_string(&worker).unwrap();
    let version = page.copies()[0].strip_prefix("emberloam-").unwrap().to_owned();
    fs::write(&worker, code.replace(&version, "feedfacefeedface")).unwrap();
    page.browser.run("navigator.serviceWorker.ready.then((r) => r.update())");
    page.browser.wait_for("the offer", || page.browser.shows(UPDATE_NOTE));
    page.browser.run("window.__same = true");
    page.browser.click(&format!("{UPDATE_NOTE} button"));
    page.browser.wait_for("the new version", || {
        page.browser.run("return window.__same === undefined") == true
            && page.copies() == ["emberloam-feedfacefeedface"]
    });
    page.wait_until_started();
    page.wait_for_answer();
    assert_eq!(page.report(), ANOTHER, "the text of the tab that asked");

    // The other one goes on, and loads again when its person says so.
    page.browser.turn_to(&first);
    assert_eq!(page.report(), A_SURPLUS);
    page.browser.wait_for("the offer in the other tab", || page.browser.shows(UPDATE_NOTE));
    page.browser.run("window.__same = true");
    page.browser.click(&format!("{UPDATE_NOTE} button"));
    page.browser.wait_for("the new version here", || {
        page.browser.run("return window.__same === undefined") == true
    });
    page.wait_until_started();
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS, "the text of the other tab");
    page.browser.turn_to(&second);
}
