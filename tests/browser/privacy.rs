//! Nothing leaves the device, and the page breaks none of its own rules.

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, BROKEN, ERASE, HUNGRY, METRIC, Page, SURPLUS};
use emberloam_tests::site::Site;

#[test]
fn a_whole_visit_asks_no_other_host_and_logs_no_error() {
    let page = Page::open("privacy");
    page.wait_until_offline_ready();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    for sample in [SURPLUS, HUNGRY, METRIC, BROKEN] {
        page.sample(sample);
        page.wait_for_answer();
    }
    page.unfold_all();
    page.browser.media("print", "light");
    page.browser.pdf();
    page.browser.media("screen", "dark");
    page.browser.click(ERASE);
    page.browser.wait_for("an empty field", || page.report().is_empty());

    let asked = page.browser.requests();
    assert!(asked.iter().any(|url| url.ends_with("app_bg.wasm")), "requests not seen: {asked:?}");
    let foreign: Vec<_> = asked
        .iter()
        // The browser's own pages (chrome:) and the page's own data: and blob: reach no host.
        .filter(|url| url.starts_with("http") || url.starts_with("ws"))
        .filter(|url| !url.starts_with(&page.site.url))
        .collect();
    assert!(foreign.is_empty(), "asked elsewhere: {foreign:?}");
    let errors = page.browser.console_errors();
    assert!(errors.is_empty(), "errors in the console:\n{}", errors.join("\n"));
}

#[test]
fn no_request_follows_once_the_page_is_loaded() {
    let page = Page::open("silent");
    page.wait_until_offline_ready();
    page.browser.requests();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let asked = page.browser.requests();
    let sent: Vec<_> = asked.iter().filter(|url| url.starts_with("http")).collect();
    assert!(sent.is_empty(), "working out an answer asked for {sent:?}");
}

#[test]
fn the_policy_stops_foreign_hosts_and_scripts_in_the_page() {
    let page = Page::open("policy");
    let stopped = page.browser.run(
        "const stopped = [];
        const refused = (does) => { try { does(); return false } catch (why) { return why.name } };
        addEventListener('securitypolicyviolation', (e) => stopped.push(e.effectiveDirective));
        const tries = {
            text: refused(() => (document.createElement('script').textContent = 'window.__ran = 1')),
            source: refused(() => (document.createElement('script').src = 'boot.js')),
            worker: refused(() => new Worker('boot.js')),
            markup: refused(() => (document.body.innerHTML = '<p onclick=\"window.__ran = 1\">')),
            timer: refused(() => setTimeout('window.__ran = 1')),
        };
        const script = document.createElement('script');
        script.append('window.__ran = 1');
        document.body.append(script);
        return fetch('http://127.0.0.1:9/').catch(() => {})
            .then(() => new Promise((done) => setTimeout(done, 100)))
            .then(() => ({ stopped: stopped.join(), ran: window.__ran === 1, ...tries }))",
    );
    let said = |what: &str| stopped[what].as_str().unwrap_or_default().to_owned();
    assert!(said("stopped").contains("connect-src"), "{stopped}");
    assert!(said("stopped").contains("require-trusted-types-for"), "{stopped}");
    assert_eq!(stopped["ran"], false, "{stopped}");
    for what in ["text", "source", "worker", "markup", "timer"] {
        assert_eq!(said(what), "TypeError", "{what}: {stopped}");
    }
    let referrer = page.browser.run("return document.querySelector('[name=referrer]').content");
    assert_eq!(referrer, "no-referrer");
}

#[test]
fn a_page_around_it_gets_nothing_of_it_from_the_plainest_host() {
    let site = Site::start_plain("framed");
    let around = "<!doctype html><title>around</title><iframe src=\"index.html\"></iframe>";
    std::fs::write(site.dist.join("around.html"), around).unwrap();
    let page = Page { browser: Browser::start("framed"), site };
    // On its own it works there.
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.goto(&format!("{}around.html", page.site.url));
    let inside = "document.querySelector('iframe').contentDocument";
    page.browser.wait_for("word of it", || {
        page.browser
            .run(&format!("return {inside}?.body?.innerText ?? ''"))
            .to_string()
            .contains("window of its own")
    });
    let left = page.browser.run(&format!(
        "return [{inside}.querySelectorAll('button, input, textarea').length,
            {inside}.querySelector('a').target]"
    ));
    assert_eq!(left, serde_json::json!([0, "_blank"]));
}

#[test]
fn the_licences_are_fetched_when_they_are_opened() {
    let page = Page::with_report("licences");
    page.wait_until_offline_ready();
    let asked = page.browser.requests();
    assert!(asked.iter().all(|url| !url.contains("licences")), "fetched before: {asked:?}");
    page.browser.wait_for("the place", || page.browser.has("#licences"));
    page.unfold("#help, #licences");
    page.browser.wait_for("the licences", || {
        let text = page.browser.text("#licences pre");
        text.contains("leptos 0.") && text.contains("Permission is hereby granted")
    });
}
