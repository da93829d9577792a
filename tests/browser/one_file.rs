//! The one-file edition, opened from the disk with no server anywhere.

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{ANSWER, FILE, REPORT};
use emberloam_tests::project;
use serde_json::json;

const GARDEN: &str = "Method: Mehlich-3\npH 6.4\nPhosphorus 118 ppm\nPotassium 295 ppm\n";

fn open(name: &str) -> Browser {
    let file = project().join("target/emberloam.html");
    assert!(file.is_file(), "{} is missing: run `cargo run -- one-file`", file.display());
    let browser = Browser::start(name);
    browser.goto(&format!("file://{}", file.display()));
    browser.wait_for("the field for the report", || browser.shows(REPORT));
    browser
}

fn paste(browser: &Browser, text: &str) {
    browser.run_with(
        "const field = document.querySelector(arguments[0]); field.focus(); field.select()",
        &[json!(REPORT)],
    );
    browser.insert(text);
    browser.wait_for("an answer", || browser.shows(ANSWER));
}

#[test]
fn one_file_answers_shows_the_later_parts_and_keeps_what_was_typed() {
    let browser = open("one-file");
    paste(&browser, GARDEN);
    browser.run("document.querySelector('#door').open = true");
    browser.wait_for("the later parts", || browser.has("#course"));
    browser.reload();
    browser.wait_for("what was kept", || browser.shows(ANSWER));
    let kept =
        browser.run_with("return document.querySelector(arguments[0]).value", &[json!(REPORT)]);
    assert_eq!(kept, GARDEN);
    assert_eq!(browser.console_errors(), Vec::<String>::new());
}

#[test]
fn one_file_opens_a_pdf_and_asks_for_nothing_outside() {
    let browser = open("one-file-pdf");
    let pdf = project().join("tests/corpus/files/25-index-beside.styled.pdf");
    browser.type_into(FILE, &pdf.display().to_string());
    browser.wait_for("the opened file", || browser.shows("#opened li"));
    browser.wait_for("an answer", || browser.shows(ANSWER));
    let outside: Vec<String> = browser
        .requests()
        .into_iter()
        .filter(|request| {
            // The last two are the browser's own first tab, not the page.
            !["file:", "blob:", "data:", "chrome:", "chrome-untrusted:"]
                .iter()
                .any(|own| request.starts_with(own))
        })
        .collect();
    assert_eq!(outside, Vec::<String>::new());
    // The policy lets nothing out, whoever asks. (The browser's own first tab is no part of it.)
    let refused = browser.run(
        "return new Promise((resolve) => {
            addEventListener('securitypolicyviolation', ({ violatedDirective }) => resolve(violatedDirective));
            const call = new XMLHttpRequest();
            call.onload = () => resolve('sent');
            call.open('GET', 'https://example.org/');
            call.send();
        })",
    );
    assert_eq!(refused, "connect-src");
}

#[test]
fn one_file_makes_no_link_to_itself_and_says_what_can_be_shared() {
    let browser = open("one-file-share");
    paste(&browser, GARDEN);
    browser.wait_for("the sharing", || browser.has("#share"));
    browser.run(
        "document.querySelectorAll('#share, #shelf, #help').forEach((fold) => (fold.open = true))",
    );
    browser.wait_for("why there is no link", || browser.shows("#share-file"));
    let said = browser.text("#share");
    assert!(said.contains("as a file") && !said.contains("file:///"), "{said}");
    assert!(
        !browser.has("#share-link") && !browser.has("#viewers") && !browser.has("#share .code")
    );
    let fields = browser
        .run("return [...document.querySelectorAll('#share textarea')].map((f) => f.value).join()");
    assert!(!fields.to_string().contains("file:"), "{fields}");
    assert!(browser.shows("#copy-plan") && browser.shows("#save-picture"));
    // On paper there is none either.
    browser.run("window.print = () => {}; document.querySelector('#print').click()");
    browser.wait_for("the paper", || browser.has(".handout"));
    assert!(!browser.has("#paper-code"));
    assert!(browser.shows("#shelf-file"), "nothing says that other files may read what is kept");
    browser.run("document.querySelector('#licences').open = true");
    browser.wait_for("the licences", || browser.text("#licences pre").contains("leptos 0."));
    assert_eq!(browser.console_errors(), Vec::<String>::new());
}
