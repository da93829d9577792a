//! What is no soil report gets a message that says so, and is not lost.

use emberloam_tests::page::{A_SURPLUS, Page, REPORT, TROUBLE};
use serde_json::{Value, json};

/// Each kind of bad text, as JavaScript that makes it.
const BAD: [(&str, &str); 6] = [
    ("nothing", "''"),
    (
        "prose",
        "'Dear neighbour, thank you for the lovely afternoon. We sat under the old tree and \
         talked about the summer. The children would like to come again.\\nWith kind regards'",
    ),
    (
        "a binary file",
        "'%PDF-1.7\\n' + Array.from({ length: 4000 }, (_, i) => \
         String.fromCharCode(1 + (i * 37) % 30, 0xfffd, 128 + (i * 53) % 120)).join('')",
    ),
    ("NUL bytes", "'pH\\u00006.5\\u0000\\u0000\\nPhosphorus\\u0000 30 ppm\\u0000\\n'"),
    ("thirteen megabytes", "'Phosphorus 30 ppm\\n'.repeat(750000)"),
    (
        "a table without soil words",
        "'Name\\tColour\\tPrice\\nChair\\tblue\\t49\\nTable\\tgreen\\t120\\nLamp\\tred\\t35\\n'",
    ),
];

#[test]
fn every_bad_text_gets_its_own_message_and_stays() {
    let page = Page::open("bad-input");
    let mut said: Vec<(&str, String)> = Vec::new();
    for (kind, text) in BAD {
        if kind == "nothing" {
            // Something first, so that taking it away is an act of the person.
            page.paste("x");
        }
        let before = said.last().map_or("", |(_, message)| message.as_str()).to_owned();
        let before = if before.is_empty() { page.browser.text(TROUBLE) } else { before };
        page.put(text);
        let (message, took) = page.wait_for_trouble(&before);
        println!("{kind} ({took} ms): {message}");
        assert!(page.still_holds_what_was_put(), "{kind}: the text was changed");
        assert_eq!(page.path(), "", "{kind}: got an answer");
        if let Some((other, _)) = said.iter().find(|(_, earlier)| *earlier == message) {
            panic!("{kind} and {other} get the same message: {message}");
        }
        said.push((kind, message));
    }
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    assert!(!page.browser.shows(TROUBLE), "a good report still shows the last message");
}

/// What stands in place of a page that has stopped.
const STOPPED: &str = "#stopped";

/// A program of one instruction that ends it: a true fault, such as a panic ends in.
const FAULT: &str = "setTimeout(() => {
    const bytes = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 102, 0, 0,
        10, 5, 1, 3, 0, 0, 11];
    new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(bytes))).exports.f();
})";

/// What the program tells when it panics.
const PANIC: &str = "window.dispatchEvent(new CustomEvent('emberloam:stopped', { detail: '' }))";

/// Stops the page, waits until it says so, and gives the text that it shows.
fn stop(page: &Page, by: &str) -> String {
    page.browser.run(by);
    page.browser.wait_for("the page to say that it stopped", || page.browser.shows(STOPPED));
    let said = page.browser.text("#boot-trouble");
    assert!(said.contains("has stopped") && said.contains("is kept"), "{said}");
    assert_eq!(page.browser.run("return document.getElementById('page').inert"), true);
    offered(page)
}

/// The text that is offered to be copied.
fn offered(page: &Page) -> String {
    let text = page.browser.run("return document.querySelector('#stopped textarea')?.value");
    text.as_str().unwrap_or_default().to_owned()
}

fn kept(page: &Page, name: &str) -> String {
    let json = page.browser.run(&format!("return localStorage.getItem('emberloam:{name}')"));
    json.as_str().unwrap_or_default().to_owned()
}

fn load_again(page: &Page) {
    page.browser.click("#stopped button");
    page.browser.wait_for("the new start", || !page.browser.has("#page[inert]"));
    page.wait_until_started();
}

fn press(page: &Page, name: &str) {
    page.browser.run(&format!(
        "[...document.querySelectorAll('#stopped button')]
            .find((button) => button.textContent === '{name}').click()"
    ));
}

#[test]
fn a_fault_is_told_and_nothing_typed_is_lost() {
    let page = Page::open("fault");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.wait_for("the report to be kept", || kept(&page, "kept").contains("212"));
    // The program stopped over this before it could keep it.
    page.browser.run(&format!("document.querySelector('{REPORT}').value = 'pH 5.1 typed last'"));
    assert_eq!(stop(&page, FAULT), "pH 5.1 typed last");

    load_again(&page);
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS);
    page.browser.wait_for("the last text", || page.browser.shows(STOPPED));
    assert_eq!(offered(&page), "pH 5.1 typed last");

    press(&page, "Close");
    assert!(!page.browser.has(STOPPED));
    page.browser.reload();
    page.wait_for_answer();
    assert!(!page.browser.has(STOPPED), "what was closed came back");
    assert_eq!(page.browser.run("return sessionStorage.getItem('emberloam:stopped')"), Value::Null);
}

#[test]
fn a_kept_report_that_stops_the_page_twice_is_put_aside_and_offered() {
    let page = Page::open("fault-twice");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.wait_for("the report to be kept", || kept(&page, "kept").contains("212"));
    let before = kept(&page, "kept");
    assert_eq!(stop(&page, FAULT), A_SURPLUS);

    load_again(&page);
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS, "one fault is no reason to start without the report");
    assert!(!page.browser.has(STOPPED), "a report that is there was offered");
    assert_eq!(stop(&page, PANIC), A_SURPLUS);

    load_again(&page);
    page.browser.wait_for("the report to be offered", || page.browser.shows(STOPPED));
    assert_eq!((page.report().as_str(), page.path().as_str()), ("", ""));
    assert_eq!(offered(&page), A_SURPLUS);
    assert_eq!(kept(&page, "set-aside"), before);

    page.browser.run(
        "window.addEventListener('emberloam:save', ({ detail }) => (window.__saved = detail))",
    );
    press(&page, "Save as a file");
    let saved = page.browser.run("return window.__saved");
    let saved = saved.as_str().unwrap_or_default();
    assert!(saved.contains("\"emberloam\":1") && saved.contains("Mehlich-3"), "{saved}");

    page.paste(A_SURPLUS);
    page.wait_for_answer();
}

#[test]
fn a_page_that_the_browser_ended_at_its_work_starts_without_the_report_and_offers_it() {
    let page = Page::open("crash");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.wait_for("the report to be kept", || kept(&page, "kept").contains("212"));
    // A true end of the page's process, before a turn comes after the one that takes a long text in.
    let still = json!({ "policy": "pause" });
    page.browser.devtools("Emulation.setVirtualTimePolicy", &still);
    let at_work = page.browser.run(
        "const box = document.querySelector('#report-text');
        box.value = box.value + 'Sodium 21 ppm\\n'.repeat(2000);
        box.dispatchEvent(new InputEvent('input', { bubbles: true }));
        return localStorage.getItem('emberloam:at-work')",
    );
    assert_ne!(at_work, Value::Null, "nothing says that the page is at work");
    page.browser.crash();
    // So long it may still be at its work in the other tab.
    std::thread::sleep(std::time::Duration::from_secs(11));
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.browser.wait_for("the report to be offered", || page.browser.shows(STOPPED));
    assert_eq!(page.report(), "");
    assert!(offered(&page).contains("212"), "{}", offered(&page));
    page.browser.run(
        "window.addEventListener('emberloam:save', ({ detail }) => (window.__saved = detail))",
    );
    press(&page, "Save as a file");
    let saved = page.browser.run("return window.__saved").to_string();
    assert!(saved.contains("Mehlich-3"), "{saved}");
    // Nothing is wrong the next time.
    press(&page, "Close");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
    assert!(!page.browser.has(STOPPED));
}
