//! Before the program is there: what can be read and done, and that nothing jumps when it comes.

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, ANSWER, Page, REPORT, WAITING};
use emberloam_tests::site::Site;
use serde_json::{Value, json};

/// A page whose program takes its time.
fn slow(name: &str) -> Page {
    let page = Page { browser: Browser::start(name), site: Site::start() };
    line(&page, 200_000);
    page.browser.goto(&page.site.url);
    page.browser.wait_for("the empty page", || page.browser.shows(REPORT));
    assert!(page.browser.has(WAITING), "the program was there at once");
    page
}

/// How many bytes a second the line brings; -1 for as many as it can.
fn line(page: &Page, bytes: i64) {
    page.browser.devtools("Network.enable", &json!({}));
    page.browser.devtools(
        "Network.emulateNetworkConditions",
        &json!({ "offline": false, "latency": 0, "downloadThroughput": bytes, "uploadThroughput": -1 }),
    );
}

/// Where the parts stand that both pages have, and what they say.
fn parts(page: &Page) -> Value {
    page.browser.run(
        "return ['h1', '.what', '.privacy', '.settings', '.field-name', '#report-text']
            .map((css) => {
                const part = document.querySelector(css);
                const { x, y, width, height } = part.getBoundingClientRect();
                return [css, x, y, width, height, part.innerText, part.placeholder];
            })",
    )
}

#[test]
fn nothing_jumps_when_the_program_comes() {
    for (width, height) in [(412, 915), (1280, 800)] {
        let page = slow(&format!("start-{width}"));
        page.browser.resize(width, height);
        let before = parts(&page);
        assert!(page.browser.has(WAITING), "the program was there too soon");
        line(&page, -1);
        page.wait_until_started();
        assert_eq!(before, parts(&page), "{width} wide");
    }
}

#[test]
fn what_is_pasted_before_the_program_comes_is_answered() {
    let page = slow("early");
    page.browser.click(REPORT);
    page.browser.insert(A_SURPLUS);
    assert!(page.browser.has(WAITING), "the program was there too soon");
    line(&page, -1);
    page.wait_until_started();
    page.browser.wait_for("an answer", || page.browser.shows(ANSWER));
    assert_eq!(page.report(), A_SURPLUS);
    let focus = page.browser.run("return document.activeElement.id");
    assert!(
        ["report-text", "answer-title"].contains(&focus.as_str().unwrap_or_default()),
        "{focus}"
    );
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

#[test]
fn a_page_in_another_language_waits_in_that_language() {
    let page = Page { browser: Browser::start("start-es"), site: Site::start() };
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.browser.run("localStorage.setItem('emberloam:language', 'es')");
    page.browser.devtools("Network.setBypassServiceWorker", &json!({ "bypass": true }));
    page.browser.devtools("Network.setCacheDisabled", &json!({ "cacheDisabled": true }));
    line(&page, 300_000);
    page.browser.reload();
    let name = ".waiting .field-name";
    page.browser.wait_for("the words", || {
        page.browser.has(name) && page.browser.text(name) != "Paste your soil test here"
    });
    line(&page, -1);
    page.wait_until_started();
}
