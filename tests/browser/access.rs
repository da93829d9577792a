//! No violation found by axe-core, with the page empty and with an answer.

use std::fs;

use emberloam_tests::page::{BROKEN, FILE, Page, SURPLUS};
use emberloam_tests::project;
use serde_json::json;

#[track_caller]
pub fn assert_accessible(page: &Page, when: &str) {
    assert_accessible_but(page, when, &[]);
}

#[track_caller]
fn assert_accessible_but(page: &Page, when: &str, left_out: &[&str]) {
    let axe = project().join("target/axe/node_modules/axe-core/axe.min.js");
    let axe = fs::read_to_string(&axe).unwrap_or_else(|why| {
        panic!("{} can't be read ({why}): `tests/run` installs it", axe.display())
    });
    page.browser.run(&axe);
    let found = page.browser.run_with(
        "const rules = Object.fromEntries(arguments[0].map((rule) => [rule, { enabled: false }]));
        return axe.run(document, { resultTypes: ['violations'], rules }).then((report) => ({
            passes: report.passes.length,
            violations: report.violations.map((rule) => `${rule.id} (${rule.impact}): ${rule.help}\n`
                + rule.nodes.slice(0, 4).map((node) => `    ${node.target.join(' ')}\n`
                    + `      ${node.html.slice(0, 160)}\n`
                    + `      ${node.failureSummary.replaceAll('\\n', '\\n      ')}`).join('\\n')),
        }))",
        &[json!(left_out)],
    );
    assert!(found["passes"].as_u64() > Some(0), "{when}: axe-core checked nothing: {found}");
    let violations: Vec<&str> =
        found["violations"].as_array().into_iter().flatten().filter_map(|v| v.as_str()).collect();
    assert!(violations.is_empty(), "{when}:\n{}", violations.join("\n"));
}

fn check(name: &str, width: u32, scheme: &str) {
    check_with(name, width, scheme, |_| ());
}

fn check_with(name: &str, width: u32, scheme: &str, set: fn(&Page)) {
    let page = Page::open(name);
    page.browser.resize(width, 900);
    set(&page);
    page.browser.media("screen", scheme);
    assert_accessible(&page, "empty page");
    let reports = project().join("tests/open-data/synthetic_reports");
    page.browser.type_into(FILE, &reports.join("fpdf2.pdf").display().to_string());
    page.browser.wait_for("an opened file", || page.browser.text("#opened").contains("fpdf2"));
    assert_accessible(&page, "opened file");
    let picture = project().join("tests/screenshots/tour.png");
    page.browser.type_into(FILE, &picture.display().to_string());
    page.browser.wait_for("a refusal", || page.browser.text("#trouble").contains("picture"));
    assert_accessible(&page, "refused file");
    page.sample(SURPLUS);
    page.wait_for_answer();
    assert_accessible(&page, "answer");
    page.unfold_all();
    assert_accessible(&page, "answer, all unfolded");
    page.sample(BROKEN);
    page.wait_for_answer();
    page.unfold_all();
    assert_accessible(&page, "broken sample, all unfolded");
    page.paste("Bed\tpH\tOlsen P ppm\nHerb spiral\t6.4\t9\nBean rows\t6.5\t140\n");
    page.wait_for_answer();
    page.unfold_all();
    page.browser.wait_for("the samples side by side", || page.browser.has(".compare tbody tr"));
    assert_accessible(&page, "samples side by side, all unfolded");
    page.browser.wait_for("the trial", || page.browser.has("#trial-table"));
    page.browser.run("document.querySelector('#trial .buttons button').click()");
    page.browser.wait_for("its verdicts", || page.browser.has(".trial-result"));
    page.unfold_all();
    assert_accessible(&page, "a trial, all unfolded");
}

#[test]
fn accessible_in_light() {
    check("axe-light", 1100, "light");
}

#[test]
fn accessible_in_dark() {
    check("axe-dark", 1100, "dark");
}

#[test]
fn accessible_when_narrow() {
    check("axe-narrow", 320, "light");
}

#[test]
fn accessible_in_bright_sun() {
    check_with("axe-sun", 1100, "light", |page| {
        page.settings();
        page.browser.click("#sun");
    });
}

#[test]
fn accessible_with_more_contrast_and_in_forced_colours() {
    for (name, feature, value) in
        [("axe-contrast", "prefers-contrast", "more"), ("axe-forced", "forced-colors", "active")]
    {
        let page = Page::open(name);
        let features = json!({ "features": [{ "name": feature, "value": value }] });
        page.browser.devtools("Emulation.setEmulatedMedia", &features);
        page.sample(SURPLUS);
        page.wait_for_answer();
        page.unfold_all();
        // axe-core reads the page's own colours, which the system's replace here.
        let left_out: &[&str] = if value == "active" { &["color-contrast"] } else { &[] };
        assert_accessible_but(&page, name, left_out);
    }
}
