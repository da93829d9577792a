//! The one recipe, and charging in detail under it.

use emberloam_tests::page::{HUNGRY, Page};

#[test]
fn charging_in_detail_follows_what_is_on_hand() {
    let page = Page::open("charging");
    page.sample(HUNGRY);
    page.wait_for_answer();
    page.open_all_answers();
    let recipe = || page.browser.text("#recipe");
    page.browser.wait_for("charging in detail", || page.browser.shows("#charging"));
    let once = "return document.body.textContent.split(arguments[0]).length - 1";
    let first = page.browser.text("#recipe .steps li");
    assert!(first.contains("mask") && first.contains("eye"), "{first}");
    assert_eq!(page.browser.run_with(once, &[serde_json::json!(first)]), 1, "said twice: {first}");
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
    page.browser
        .wait_for("the wait", || recipe().contains("120 days") && recipe().contains("30 days"));
    // And the bucket of one's own is used.
    let pick = "const select = [...document.querySelectorAll('#charging select')][1];
        select.value = [...select.options].find((o) => o.textContent === '5 litres').value;
        select.dispatchEvent(new Event('change', { bubbles: true }))";
    let before = recipe();
    page.browser.run(pick);
    page.browser.wait_for("other buckets", || recipe() != before);
}
