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

/// Puts something else in the place of a file of the copy.
fn damage(page: &Page, file: &str) {
    page.browser.run_with(
        "const [file] = arguments;
        return caches.keys()
            .then(([name]) => caches.open(name))
            .then((copy) => copy.match(file).then((kept) => copy.put(file, new Response('damaged(', kept))))
            .then(() => true)",
        &[serde_json::json!(file)],
    );
}

/// The files of the copy that are not as the build made them.
fn not_as_built(page: &Page) -> String {
    let wrong = page.browser.run(
        "const hex = (bytes) => [...new Uint8Array(bytes)].map((b) => b.toString(16).padStart(2, '0')).join('');
        const look = async () => {
            const hashes = await (await fetch('hashes.txt', { cache: 'reload' })).text();
            const [name] = await caches.keys();
            const copy = await caches.open(name);
            const wrong = [];
            for (const request of await copy.keys()) {
                const path = request.url.slice(location.origin.length + 1);
                if (path === 'hashes.txt') continue;
                const bytes = await (await copy.match(request)).arrayBuffer();
                const hash = hex(await crypto.subtle.digest('SHA-256', bytes));
                if (!hashes.includes(`${hash}  ${path}`)) wrong.push(path);
            }
            return wrong.join();
        };
        return look()",
    );
    wrong.as_str().unwrap_or_default().to_owned()
}

#[test]
fn a_damaged_copy_is_healed_and_the_page_starts() {
    let mut page = Page::open("heal");
    page.wait_until_offline_ready();
    assert_eq!(not_as_built(&page), "");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    // What the program is: it does not start, is healed, and loads again by itself.
    for file in ["app_bg.wasm", "app.js"] {
        damage(&page, file);
        assert_eq!(not_as_built(&page), file);
        page.browser.reload();
        page.browser.wait_for("the healed page", || {
            !page.browser.has(".waiting") && !page.path().is_empty()
        });
        assert_eq!(not_as_built(&page), "", "{file}");
        assert_eq!(page.report(), A_SURPLUS);
    }
    // What starts it: it can do nothing, but is healed meanwhile, and loading again helps.
    damage(&page, "boot.js");
    page.browser.run(
        "return caches.keys().then(([name]) => caches.open(name)).then((copy) => copy.delete('css/base.css'))",
    );
    page.browser.reload();
    assert!(page.browser.has(".waiting"), "it started with a damaged script");
    page.browser.wait_for("the healed copy", || {
        page.browser.run("return caches.match('css/base.css').then(Boolean)") == true
            && not_as_built(&page).is_empty()
    });
    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
    // It is whole without a network too.
    page.site.stop();
    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
}

#[test]
fn half_a_new_version_is_not_kept() {
    let page = Page::open_from("half", Site::start_copy("half"));
    page.wait_until_offline_ready();
    let first = page.copies();
    let worker = page.site.dist.join("service-worker.js");
    let code = fs::read_to_string(&worker).unwrap();
    let version = first[0].strip_prefix("emberloam-").unwrap();
    // The worker is new already, and one of its files is of neither version.
    fs::write(&worker, code.replace(version, "feedfacefeedface")).unwrap();
    fs::write(page.site.dist.join("look.js"), "// half\n").unwrap();
    page.browser.run("return navigator.serviceWorker.ready.then((r) => r.update()).catch(() => 0)");
    std::thread::sleep(std::time::Duration::from_secs(2));
    assert!(!page.browser.shows(UPDATE_NOTE), "half a version is offered");
    page.browser.reload();
    page.wait_until_started();
    assert_eq!(
        page.browser
            .run("return caches.match('look.js').then((r) => r.text())")
            .as_str()
            .map(|t| t == "// half\n"),
        Some(false)
    );
}

#[test]
fn two_copies_on_one_site_share_nothing() {
    let page = Page::open_from("two-copies", Site::start_two("two-copies"));
    page.wait_until_offline_ready();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let sub = format!("{}sub/index.html", page.site.url);
    page.browser.goto(&sub);
    page.wait_until_started();
    assert_eq!(page.report(), "", "the other copy's report is here");
    page.browser.wait_for("a worker of its own", || {
        page.browser
            .run("return navigator.serviceWorker.controller?.scriptURL ?? ''")
            .as_str()
            .is_some_and(|url| url.ends_with("/sub/service-worker.js"))
    });
    assert!(!page.browser.shows(UPDATE_NOTE), "the other copy is taken for another version");
    let other = "Method: Olsen\npH 7.2\nPhosphorus 6 mg/kg\n";
    page.paste(other);
    page.wait_for_answer();
    for (url, text) in [(&page.site.url, A_SURPLUS), (&sub, other)] {
        page.browser.goto(url);
        page.wait_until_started();
        page.wait_for_answer();
        assert_eq!(page.report(), text);
        assert_eq!(page.copies().len(), 2, "{:?}", page.copies());
    }
    // Everything of the one, and nothing of the other.
    page.browser.wait_for("the shelf", || page.browser.has("#shelf"));
    page.unfold("#shelf");
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-yes");
    page.browser
        .wait_for("word of it", || page.browser.text("#shelf-told").contains("All is erased"));
    assert_eq!(page.copies().len(), 1, "{:?}", page.copies());
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS);
}
