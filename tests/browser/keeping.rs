//! What is typed stays on the device until it is erased.

use emberloam_tests::driver::Key;
use emberloam_tests::page::{A_SURPLUS, ERASE, Page};

#[test]
fn what_is_typed_survives_a_reload() {
    let page = Page::open("reload");
    page.paste(A_SURPLUS);
    let path = page.wait_for_answer();
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("the report after the reload", || page.report() == A_SURPLUS);
    assert_eq!(page.wait_for_answer(), path);
}

#[test]
fn a_text_too_long_to_keep_is_told_of_only_while_it_is_there() {
    let page = Page::open("too-long");
    page.put("'Phosphorus 30 ppm\\n'.repeat(60000)");
    page.browser.wait_for("the note", || page.browser.shows("#keeping-note"));
    page.put("'pH 6.4\\n'");
    page.browser.wait_for("the note to go", || !page.browser.shows("#keeping-note"));
}

#[test]
fn erasing_can_be_undone_from_the_keyboard() {
    let page = Page::open("undo");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.click(ERASE);
    page.browser.wait_for("the focus on the way back", || {
        page.browser.run("return document.activeElement?.id") == "take-back"
    });
    page.browser.press(Key::Enter);
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS);
}

#[test]
fn erase_leaves_nothing_on_the_device() {
    let page = Page::open("erase");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let kept = page.browser.run("return JSON.stringify(localStorage)");
    assert!(kept.as_str().is_some_and(|kept| kept.contains("Mehlich-3")), "kept: {kept}");

    page.browser.click(ERASE);
    page.browser.wait_for("an empty field", || page.report().is_empty());
    assert_eq!(page.path(), "", "an answer without a report");
    assert_eq!(page.browser.run("return JSON.stringify(localStorage)"), "{}");
    assert_eq!(page.browser.run("return JSON.stringify(sessionStorage)"), "{}");
    page.browser.wait_for("no database", || {
        page.browser.run("return indexedDB.databases().then((all) => all.length)") == 0
    });

    page.browser.reload();
    page.wait_until_started();
    assert_eq!(page.report(), "");
    assert_eq!(page.path(), "");
}
