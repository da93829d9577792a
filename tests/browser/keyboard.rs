//! The page without a mouse.

use emberloam_tests::driver::Key;
use emberloam_tests::page::{ANSWER, Page, REPORT, SURPLUS};
use serde_json::json;

/// More stops than the page can have.
const MANY: usize = 2000;

/// Presses Tab until the focus is on `css`.
#[track_caller]
fn tab_to(page: &Page, css: &str) {
    let mut passed = Vec::new();
    for _ in 0..MANY {
        page.browser.press(Key::Tab);
        let here = page.browser.run_with(
            "const at = document.activeElement;
            return at.matches(arguments[0]) ? '' : at.id || at.textContent.slice(0, 30) || at.tagName",
            &[json!(css)],
        );
        if here == "" {
            return;
        }
        passed.push(here.as_str().unwrap_or_default().to_owned());
        let stuck =
            passed.len() > 3 && passed.iter().rev().take(4).all(|p| *p == passed[passed.len() - 1]);
        assert!(!stuck, "Tab does not leave {:?} on the way to {css}", passed.last());
    }
    panic!("Tab never reaches {css}; it passed {:?}", &passed[..passed.len().min(60)]);
}

#[test]
fn a_report_is_typed_and_answered_by_keyboard() {
    let page = Page::open("keyboard");
    tab_to(&page, REPORT);
    page.browser.insert("pH 6.4");
    assert_eq!(page.report(), "pH 6.4");
    // The samples are in nobody's way once a report is in.
    tab_to(&page, ".samples > summary");
    page.browser.press(Key::Enter);
    tab_to(&page, SURPLUS);
    page.browser.press(Key::Enter);
    page.browser.wait_for("the sample in the field", || page.report() != "pH 6.4");
    page.wait_for_answer();

    // Some number of the answer opens to its grounds.
    let summary = format!("{ANSWER} summary");
    assert!(page.browser.has(&summary), "the answer has nothing to unfold");
    tab_to(&page, &summary);
    page.browser.press(Key::Enter);
    let open = "return document.activeElement.closest('details').open";
    page.browser.wait_for("the unfolded part", || page.browser.run(open) == true);
    page.browser.press(Key::Space);
    page.browser.wait_for("the folded part", || page.browser.run(open) == false);
}

#[test]
fn the_focus_is_never_trapped_nor_hidden() {
    let page = Page::open("focus");
    page.sample(SURPLUS);
    page.wait_for_answer();
    page.unfold_all();
    page.browser.run("document.activeElement?.blur(); window.__seen = new Set()");
    for step in 0..MANY {
        page.browser.press(Key::Tab);
        // 'again': back at a stop already seen, so all were passed. Else what is wrong with it.
        let found = page.browser.run(
            "const at = document.activeElement;
            if (at === document.body) return '';
            // A date has a stop for the day, the month and the year.
            if (at === window.__last && ++window.__here < 6) return '';
            window.__last = at;
            window.__here = 1;
            if (window.__seen.has(at)) return 'again';
            window.__seen.add(at);
            const box = at.getBoundingClientRect();
            const style = getComputedStyle(at);
            const marked = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0
                || style.boxShadow !== 'none';
            const name = at.id || at.textContent.trim().slice(0, 40) || at.outerHTML.slice(0, 80);
            if (box.width < 1 || box.height < 1) return `${name} takes the focus and is not seen`;
            if (!marked) return `${name} shows no mark when it has the focus`;
            return ''",
        );
        match found.as_str().unwrap_or_default() {
            "" => {}
            "again" => {
                let passed = page.browser.run(
                    "const all = [...document.querySelectorAll(
                        'button, input, select, textarea, summary, a[href]')];
                    return all.filter((one) => one.tabIndex >= 0 && !one.disabled
                            && one.type !== 'radio' && one.checkVisibility()
                            && !window.__seen.has(one))
                        .map((one) => one.id || one.outerHTML.slice(0, 80))",
                );
                assert_eq!(passed, json!([]), "after {step} stops these were never reached");
                return;
            }
            wrong => panic!("{wrong}"),
        }
    }
    panic!("{MANY} times Tab and still no way round");
}
