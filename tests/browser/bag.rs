//! What a person says of a bag: its certificate, its price, its water, the
//! years it is spread over.

use emberloam_tests::page::{Page, SURPLUS};
use serde_json::json;

/// Fills the control with this label within a part of the page.
#[track_caller]
fn fill(page: &Page, within: &str, label: &str, value: &str) {
    let done = page.browser.run_with(
        "const [within, label, value] = arguments;
        const field = [...document.querySelectorAll(`${within} label.field`)]
            .find((field) => field.firstElementChild.textContent === label);
        const control = field?.querySelector('input, select');
        const option = [...(control?.options ?? [])].find((o) => o.textContent === value);
        if (!control || (control.options && !option)) return false;
        control.value = option?.value ?? value;
        return control.dispatchEvent(new Event('change', { bubbles: true }))",
        &[json!(within), json!(label), json!(value)],
    );
    assert_eq!(done, true, "no control {label:?} in {within} that can be {value:?}");
}

fn answered(name: &str) -> Page {
    let page = Page::open(name);
    page.sample(SURPLUS);
    page.wait_for_answer();
    page.open_all_answers();
    page.browser.wait_for("the certificate", || page.browser.has("#certificate .controls"));
    page.unfold_all();
    page
}

#[test]
fn a_certificate_is_held_to_the_standards_and_a_slip_is_told_of_and_kept() {
    let page = answered("certificate");
    let said = || page.browser.text("#certificate");
    fill(&page, "#certificate", "Add a figure", "cadmium");
    page.browser.wait_for("the figure's field", || page.browser.has("[data-name='cadmium']"));
    // The list is ready for the next one, or for this one again.
    let add = "return [...document.querySelectorAll('#certificate select')].map((s) => s.value)";
    page.browser.wait_for("the list to be free", || page.browser.run(add) == json!([""]));
    fill(&page, "#certificate", "Cadmium", "1.6");
    page.browser.wait_for("the verdict", || said().contains("Outside its limit: cadmium"));
    assert!(said().contains("no certificate"), "{}", said());

    fill(&page, "#certificate", "Add a figure", "ash");
    page.browser.wait_for("the figure's field", || page.browser.has("[data-name='ash']"));
    fill(&page, "#certificate", "Ash", "130");
    page.browser.wait_for("the refusal", || said().contains("can't be right"));
    let typed = page.browser.run("return document.querySelector('[data-name=ash] input').value");
    assert_eq!(typed, "130", "what was typed is lost");

    page.browser.reload();
    page.wait_for_answer();
    page.open_all_answers();
    page.browser
        .wait_for("the certificate again", || said().contains("Outside its limit: cadmium"));
    page.browser.run("document.querySelector('[data-name=cadmium] button').click()");
    page.browser.wait_for("the figure to go", || !page.browser.has("[data-name='cadmium']"));
}

#[test]
fn bags_price_water_and_years_are_worked_out() {
    let page = answered("purchase");
    page.answer("Area of the bed", "10");
    page.answer("How deep you will mix it in", "10");
    page.answer("Share of the worked soil, by volume", "4");
    fill(&page, "#purchase", "Size of a bag", "15");
    fill(&page, "#purchase", "Price of one bag, in your money", "9");
    let figure = |name: &str| {
        page.browser.text(&format!("#purchase .figure[data-name='{name}'] .figure-value"))
    };
    // 40 L are three bags of 15 L.
    page.browser.wait_for("three bags", || figure("bags").starts_with('3'));
    assert_eq!(figure("price"), "27");
    assert!(!page.browser.shows("#schedule"), "a schedule of one year");

    fill(&page, "#purchase", "Years to spread it over", "2");
    page.browser.wait_for("the schedule", || page.browser.shows("#schedule table"));
    let heads = page.browser.run(
        "return [...document.querySelectorAll('#schedule thead th')].map((th) => th.textContent)",
    );
    assert_eq!(heads, json!(["Year 1", "Year 2"]));
    page.browser.wait_for("half of it this year", || figure("bags").starts_with('2'));
    assert!(page.browser.text("#work-in").contains("mask"));
}
