//! Nothing leaves the device, and the page breaks none of its own rules.

use emberloam_tests::page::{A_SURPLUS, BROKEN, ERASE, HUNGRY, METRIC, Page, SURPLUS};

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
        addEventListener('securitypolicyviolation', (e) => stopped.push(e.effectiveDirective));
        const script = document.createElement('script');
        script.textContent = 'window.__ran = true';
        document.body.append(script);
        return fetch('http://127.0.0.1:9/').catch(() => {})
            .then(() => new Promise((done) => setTimeout(done, 100)))
            .then(() => JSON.stringify({ stopped: stopped.sort(), ran: window.__ran === true }))",
    );
    // Once by the header and once by the page itself.
    let stopped = stopped.as_str().unwrap_or_default().to_owned();
    assert!(stopped.contains("connect-src"), "{stopped}");
    assert!(stopped.contains("script-src-elem"), "{stopped}");
    assert!(stopped.contains("\"ran\":false"), "{stopped}");
}
