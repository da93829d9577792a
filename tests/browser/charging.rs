//! Charging in detail, under the short recipe.

use emberloam_tests::page::{HUNGRY, Page};

#[test]
fn charging_in_detail_follows_what_is_on_hand() {
    let page = Page::open("charging");
    page.browser.click(HUNGRY);
    page.wait_for_answer();
    let shows = |part: &str| page.browser.text("#charging").contains(part);
    page.browser.wait_for("charging in detail", || shows("Step by step"));
    let rulers = page.browser.run("return document.querySelectorAll('.fill-row').length");
    assert_eq!(rulers, 5, "a ruler for each nutrient");
    let table = || page.browser.text(".charge-used");
    page.browser.wait_for("compost in the table", || table().contains("Compost"));
    // Ticking urine for charging brings it into the table, the steps and the waits.
    let tick = "const wanted = arguments[0];
        const labels = [...document.querySelectorAll('#bed label.tick')];
        labels.find((label) => label.textContent.includes(wanted)).querySelector('input').click()";
    page.browser.run_with(tick, &[serde_json::json!("urine, diluted")]);
    page.browser.wait_for("urine in the table", || table().contains("Urine"));
    page.browser.wait_for("the wait", || shows("120 days") && shows("30 days"));
    // And the bucket of one's own is used.
    let pick = "const select = [...document.querySelectorAll('#charging select')][1];
        select.value = [...select.options].find((o) => o.textContent === '5 litres').value;
        select.dispatchEvent(new Event('change', { bubbles: true }))";
    let before = page.browser.text(".charge-steps");
    page.browser.run(pick);
    page.browser.wait_for("other buckets", || page.browser.text(".charge-steps") != before);
}
