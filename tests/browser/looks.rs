//! On a narrow screen and on paper.

use emberloam_tests::page::{ANSWER, ERASE, HOLDS, HUNGRY, PRINT, Page, REPORT, SURPLUS};
use serde_json::json;

#[track_caller]
fn assert_fits(page: &Page, when: &str) {
    let width = page.browser.run("return document.scrollingElement.scrollWidth");
    let wide = page.browser.run(
        "return [...document.body.querySelectorAll('*')]
            .filter((part) => part.getBoundingClientRect().right > innerWidth + 0.5)
            .slice(0, 5)
            .map((part) => part.outerHTML.slice(0, 120))",
    );
    assert!(width.as_f64().is_some_and(|w| w <= 320.0), "{when}: {width} px wide; see {wide:#}");
}

#[test]
fn nothing_scrolls_sideways_at_320_pixels() {
    let page = Page::open("narrow");
    page.browser.resize(320, 640);
    assert_fits(&page, "empty page");
    page.browser.click(SURPLUS);
    page.wait_for_answer();
    assert_fits(&page, "answer");
    page.unfold_all();
    assert_fits(&page, "all unfolded");
}

#[test]
fn the_plan_prints_without_the_controls() {
    let page = Page::open("print");
    page.browser.click(SURPLUS);
    page.wait_for_answer();
    for control in [PRINT, ERASE, SURPLUS, REPORT] {
        assert!(page.browser.shows(control), "{control} is not on the screen");
    }
    page.browser.media("print", "light");
    for part in [ANSWER, HOLDS] {
        assert!(page.browser.shows(part), "{part} is not printed");
    }
    for control in [PRINT, ERASE, SURPLUS, REPORT] {
        assert!(!page.browser.shows(control), "{control} is printed");
    }
    let pdf = page.browser.pdf();
    assert!(pdf.starts_with(b"%PDF-"), "no PDF");
    let pages = pdf.windows(12).filter(|at| at.starts_with(b"/Type /Page") && at[11] != b's');
    assert!(pages.count() >= 1, "the print has no page");
}

#[test]
fn the_report_stays_beside_the_answer_on_a_wide_screen_and_folds_on_a_phone() {
    let page = Page::open("beside");
    page.browser.resize(1024, 768);
    page.browser.click(HUNGRY);
    page.wait_for_answer();
    assert!(page.browser.shows(REPORT), "the report is folded away at 1024 × 768");
    page.browser.resize(360, 740);
    page.browser.click(SURPLUS);
    page.browser.wait_for("the report to fold", || !page.browser.shows(REPORT));
    page.browser.wait_for("the focus on the answer", || {
        page.browser.run("return document.activeElement?.id") == "answer-title"
    });
    page.browser.resize(1024, 768);
    page.browser.wait_for("the report beside the answer", || page.browser.shows(REPORT));
}

#[test]
fn a_printed_task_has_room_for_its_words_and_every_caution_is_printed() {
    let page = Page::open("paper");
    page.browser.resize(360, 740);
    page.browser.click(HUNGRY);
    page.wait_for_answer();
    page.browser.resize(800, 1000);
    page.browser.run("dispatchEvent(new Event('beforeprint'))");
    page.browser.media("print", "light");
    let narrow = page.browser.run(
        "return [...document.querySelectorAll('.task-what, .cautions li > p')]
            .filter((words) => words.getBoundingClientRect().width < 200)
            .map((words) => words.textContent)",
    );
    assert_eq!(narrow, json!([]), "squeezed on paper or not printed");
}

#[test]
fn paper_is_light_when_the_screen_is_dark() {
    let page = Page::open("print-dark");
    page.browser.click(SURPLUS);
    page.wait_for_answer();
    page.browser.media("print", "dark");
    // Red, green and blue from 0 to 255; a page without a colour of its own is white.
    let colour = page.browser.run_with(
        "const clear = (colour) => colour === 'rgba(0, 0, 0, 0)' || colour === 'transparent';
        for (let part = document.querySelector(arguments[0]); part; part = part.parentElement) {
            const colour = getComputedStyle(part).backgroundColor;
            if (clear(colour)) continue;
            const pen = new OffscreenCanvas(1, 1).getContext('2d');
            pen.fillStyle = colour;
            pen.fillRect(0, 0, 1, 1);
            return [...pen.getImageData(0, 0, 1, 1).data.slice(0, 3)];
        }
        return [255, 255, 255]",
        &[json!(ANSWER)],
    );
    let light = colour.as_array().is_some_and(|c| c.iter().all(|v| v.as_u64() > Some(200)));
    assert!(light, "the paper is {colour}");
}
