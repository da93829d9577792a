//! The page without a network, and a new version of it.

use std::fs;

use emberloam_tests::page::{A_SURPLUS, BED, OFFLINE_NOTE, Page, QUESTIONS, UPDATE_NOTE};
use emberloam_tests::site::Site;

/// The piece of the program that comes after the first one.
const LATER_PIECE: &str = "split_later.wasm";

#[test]
fn the_page_works_with_the_server_stopped() {
    let mut page = Page::open("offline");
    page.wait_until_offline_ready();
    page.browser
        .wait_for("the note that the page works offline", || page.browser.shows(OFFLINE_NOTE));
    page.site.stop();

    page.browser.reload();
    page.wait_until_started();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    assert!(!page.browser.shows(OFFLINE_NOTE), "it says a second time that it works offline");

    // An address with a query, as a home screen or a link may give it.
    page.browser.goto(&format!("{}?from=elsewhere", page.site.url));
    page.wait_until_started();
    page.wait_for_answer();
}

#[test]
fn the_answer_needs_no_later_part_and_the_later_parts_come_when_they_can() {
    let page = Page::open_from("late", {
        let site = Site::start_copy("late");
        fs::rename(site.dist.join(LATER_PIECE), site.dist.join("away")).unwrap();
        site
    });
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    assert!(!page.level("phosphorus").is_empty(), "the levels need a later part");
    page.browser.wait_for("word of what is missing", || {
        page.browser.text(QUESTIONS).contains("still being fetched")
    });
    assert!(!page.browser.has(BED), "the later part came from elsewhere");

    fs::rename(page.site.dist.join("away"), page.site.dist.join(LATER_PIECE)).unwrap();
    page.browser.wait_for("the later parts", || page.browser.has(BED));
    assert!(!page.browser.text(QUESTIONS).contains("still being fetched"));
    assert_eq!(page.report(), A_SURPLUS, "the report was lost");
}

#[test]
fn every_file_of_the_page_is_kept() {
    let page = Page::open("kept-files");
    page.wait_until_offline_ready();
    let kept = page.browser.run(
        "return caches.keys().then(([name]) => caches.open(name))
            .then((copy) => copy.keys())
            .then((all) => all.map((one) => new URL(one.url).pathname.slice(1)))",
    );
    let kept: Vec<&str> =
        kept.as_array().into_iter().flatten().filter_map(|f| f.as_str()).collect();
    for file in
        ["index.html", "boot.js", "app.js", "app_bg.wasm", LATER_PIECE, "manifest.webmanifest"]
    {
        assert!(kept.contains(&file), "{file} is not kept; kept: {kept:?}");
    }
}

#[test]
fn a_new_version_is_offered_and_never_forced() {
    let page = Page::open_from("update", Site::start_copy("update"));
    page.wait_until_offline_ready();
    page.paste(A_SURPLUS);
    let path = page.wait_for_answer();
    let first = page.copies();
    assert_eq!(first.len(), 1, "copies: {first:?}");

    let worker = page.site.dist.join("service-worker.js");
    let code = fs::read_to_string(&worker).unwrap();
    let version = first[0].strip_prefix("emberloam-").unwrap();
    assert!(code.contains(version), "the worker does not hold its version {version}");
    fs::write(&worker, code.replace(version, "feedfacefeedface")).unwrap();

    page.browser.run("window.__same = true; navigator.serviceWorker.ready.then((r) => r.update())");
    page.browser.wait_for("the offer of a new version", || page.browser.shows(UPDATE_NOTE));
    assert_eq!(page.browser.run("return window.__same === true"), true, "it loaded by itself");
    assert!(page.copies().contains(&first[0]), "the version in use was taken away");

    // A reload is no consent.
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("the offer after a reload", || page.browser.shows(UPDATE_NOTE));
    assert!(page.copies().contains(&first[0]), "the version in use was taken away by a reload");

    page.browser.run("window.__same = true");
    page.browser.click(&format!("{UPDATE_NOTE} button"));
    page.browser.wait_for("the new version", || {
        page.browser.run("return window.__same === undefined") == true
            && page.copies() == ["emberloam-feedfacefeedface"]
    });
    page.wait_until_started();
    assert_eq!(page.report(), A_SURPLUS, "the report was lost");
    assert_eq!(page.wait_for_answer(), path);
    assert!(!page.browser.shows(UPDATE_NOTE), "the version in use is offered");
}

#[test]
fn the_note_that_comes_by_itself_moves_nothing() {
    let page = Page::open("still");
    page.wait_until_offline_ready();
    page.browser.wait_for("the note", || page.browser.shows(OFFLINE_NOTE));
    for width in [320, 1280] {
        page.browser.resize(width, 900);
        let top = |hidden: bool| {
            page.browser.run_with(
                "document.querySelector('#offline-note').hidden = arguments[0];
                 return document.querySelector('#report-text').getBoundingClientRect().top",
                &[serde_json::json!(hidden)],
            )
        };
        assert_eq!(top(true), top(false), "at {width} px the page jumps when the note comes");
    }
}
