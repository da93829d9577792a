//! On a narrow screen and on paper.

use emberloam_tests::page::{
    ANSWER, ERASE, HOLDS, HUNGRY, METRIC, PRINT, PRINT_WHOLE, Page, REPORT, SURPLUS,
};
use emberloam_tests::person::{A4, LETTER, pages_of};
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
    page.sample(SURPLUS);
    page.wait_for_answer();
    assert_fits(&page, "answer");
    page.unfold_all();
    assert_fits(&page, "all unfolded");
}

/// Makes what a button prints, and shows it as paper would.
#[track_caller]
fn put_on_paper(page: &Page, button: &str) {
    page.browser.wait_for("the later parts", || page.browser.has(".plan"));
    page.print(button);
    let taken = page.browser.run("return window.__paper");
    assert_ne!(taken, "", "the print window opened before the plan was made");
    page.browser.media("print", "light");
    page.browser.wait_for("the plan", || page.browser.shows(".plan-headline"));
}

#[test]
fn the_plan_prints_without_the_controls() {
    let page = Page::open("print");
    page.sample(HUNGRY);
    page.wait_for_answer();
    let headline = page.browser.text("#answer-title");
    page.unfold(".samples");
    for control in [PRINT, PRINT_WHOLE, ERASE, SURPLUS, REPORT] {
        assert!(page.browser.shows(control), "{control} is not on the screen");
    }
    assert!(!page.browser.shows(".plan"), "the plan for paper is on the screen");
    put_on_paper(&page, PRINT_WHOLE);
    for control in [PRINT, PRINT_WHOLE, ERASE, SURPLUS, REPORT, ANSWER, HOLDS] {
        assert!(!page.browser.shows(control), "{control} is printed beside the plan");
    }
    assert_eq!(page.browser.text(".plan-headline"), headline);
    let printed = page.browser.text(".plan");
    for part in [
        "How much",
        "How to charge it",
        "What to do when",
        "Lime and feeds",
        "Take care",
        "Phosphorus",
        "Sources",
    ] {
        assert!(printed.contains(part), "{part} is not printed:\n{printed}");
    }
    // Every footnote that is called for is there.
    let astray = page.browser.run(
        "const count = document.querySelectorAll('.plan-notes > li').length;
        return [...document.querySelectorAll('.plan sup')]
            .flatMap((sup) => sup.textContent.split(', ').filter(Boolean).map(Number))
            .filter((number) => !(number >= 1 && number <= count))",
    );
    assert_eq!(astray, json!([]));
}

/// The page to take to the bed comes before it.
#[test]
fn the_plan_with_its_reasons_fits_on_two_more_pages_of_a4_and_of_letter() {
    let page = Page::open("two-pages");
    for sample in [SURPLUS, HUNGRY, METRIC] {
        page.browser.media("screen", "light");
        page.sample(sample);
        page.wait_for_answer();
        for (label, value) in [
            ("Area of the bed", "10"),
            ("Your biochar", "fresh, not charged"),
            ("Next planting or sowing", "2031-05-01"),
        ] {
            page.answer(label, value);
        }
        put_on_paper(&page, PRINT_WHOLE);
        for size in [A4, LETTER] {
            let pages = pages_of(&page, size);
            assert!((2..=3).contains(&pages), "{sample}: {pages} pages of {size:?} inches");
        }
    }
}

#[test]
fn the_report_stays_beside_the_answer_on_a_wide_screen_and_folds_on_a_phone() {
    let page = Page::open("beside");
    page.browser.resize(1024, 768);
    page.sample(HUNGRY);
    page.wait_for_answer();
    assert!(page.browser.shows(REPORT), "the report is folded away at 1024 × 768");
    page.browser.resize(360, 740);
    page.browser.wait_for("the answer first on a phone", || !page.browser.shows(REPORT));
    page.unfold("#report-fold");
    page.sample(SURPLUS);
    page.browser.wait_for("the report to fold", || !page.browser.shows(REPORT));
    page.browser.wait_for("the focus on the answer", || {
        page.browser.run("return document.activeElement?.id") == "answer-title"
    });
    page.browser.resize(1024, 768);
    page.browser.wait_for("the report beside the answer", || page.browser.shows(REPORT));
}

#[test]
fn paper_is_light_when_the_screen_is_dark() {
    let page = Page::open("print-dark");
    page.sample(SURPLUS);
    page.wait_for_answer();
    put_on_paper(&page, PRINT);
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
        &[json!(".plan-headline")],
    );
    let light = colour.as_array().is_some_and(|c| c.iter().all(|v| v.as_u64() > Some(200)));
    assert!(light, "the paper is {colour}");
}

#[test]
fn the_look_for_bright_sun_is_kept_and_taken_back() {
    let page = Page::open("sun");
    let sky = || page.browser.run("return getComputedStyle(document.body).backgroundColor");
    let ordinary = sky();
    page.settings();
    page.browser.click("#sun");
    assert_eq!(sky(), "rgb(255, 255, 255)");
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("the look that was kept", || {
        page.browser.run("return document.getElementById('sun').checked") == true
    });
    assert_eq!(sky(), "rgb(255, 255, 255)");
    page.settings();
    page.browser.click("#sun");
    assert_eq!(sky(), ordinary);
}
