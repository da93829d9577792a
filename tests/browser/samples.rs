//! A report with several samples: picking one, comparing, one correction for all.

use std::fmt::Write as _;

use emberloam_tests::page::{HOLDS, Page};
use serde_json::json;

/// An invented report of three beds. The second names its unit nowhere.
const THREE_BEDS: &str = "\
Method: Mehlich-3
Bed\tpH\tPhosphorus, ppm\tPotassium, ppm\tSoluble salts
Herb spiral\t6.4\t9\t80\t0.3
Bean rows\t6.5\t140\t95\t0.5
Cold frame\t6.3\t11\t88\t0.4
";

fn chosen(page: &Page) -> String {
    page.browser.text("#sample option:checked")
}

fn title(page: &Page) -> String {
    page.browser.text("#answer .kicker")
}

#[test]
fn samples_are_picked_and_compared() {
    let page = Page::open("samples-compare");
    page.paste(THREE_BEDS);
    page.wait_for_answer();
    assert_eq!(chosen(&page), "Herb spiral");
    assert!(["very-low", "low"].contains(&page.level("phosphorus").as_str()));

    page.browser.click("#compare > summary");
    let table = || page.browser.text(".compare");
    page.browser.wait_for("the table", || table().contains("Cold frame"));
    let differs = page.browser.run(
        "return [...document.querySelectorAll('.compare tbody tr')]
            .filter((row) => row.querySelector('th .soft')).map((row) => row.textContent)",
    );
    let differs = differs.to_string();
    assert!(differs.contains("Phosphorus") && !differs.contains("pH"), "{differs}");

    page.browser.click(".compare th:nth-child(3) button");
    page.browser.wait_for("the second bed", || title(&page).contains("Bean rows"));
    page.browser
        .wait_for("its levels", || ["high", "excess"].contains(&page.level("phosphorus").as_str()));
    assert_eq!(chosen(&page), "Bean rows");
}

#[test]
fn one_correction_holds_in_all_samples_and_can_be_taken_back() {
    let page = Page::open("samples-all");
    page.paste(THREE_BEDS);
    page.wait_for_answer();
    let salts = format!("{HOLDS} [data-property='ec']");
    let set_unit = |unit: &str| {
        page.browser.click(&format!("{salts} .reading-more > summary"));
        page.browser.wait_for("ways to put it right", || {
            page.browser.has(&format!("{salts} .correct select"))
        });
        let done = page.browser.run_with(
            "const [salts, unit] = arguments;
            const select = document.querySelector(`${salts} .correct select`);
            const option = [...select.options].find((o) => o.textContent === unit);
            if (!option) return [...select.options].map((o) => o.textContent);
            select.value = option.value;
            return select.dispatchEvent(new Event('change', { bubbles: true }))",
            &[json!(salts), json!(unit)],
        );
        assert_eq!(done, true, "no unit {unit:?}");
    };
    set_unit("dS/m (mS/cm, mmho/cm)");
    let all = format!("{salts} .in-all button");
    page.browser.wait_for("the offer for all samples", || page.browser.shows(&all));
    page.browser.click(&all);
    let said = || page.browser.text(&format!("{salts} .in-all"));
    page.browser.wait_for("that it holds in all", || said().contains("3 samples"));

    page.browser.run_with(
        "const pick = document.querySelector('#sample');
        pick.value = arguments[0];
        pick.dispatchEvent(new Event('change', { bubbles: true }))",
        &[json!("2")],
    );
    page.browser.wait_for("the third bed", || title(&page).contains("Cold frame"));
    let value = || page.browser.text(&format!("{salts} .reading-value"));
    assert!(value().contains("0.4") && value().contains("dS/m"), "{}", value());

    // Kept, and kept apart from other answers.
    page.answer("Area of the bed", "12");
    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
    assert!(title(&page).contains("Cold frame"), "{}", title(&page));
    assert!(value().contains("dS/m"), "{}", value());

    page.browser.click(&format!("{salts} .reading-more > summary"));
    let undo = format!("{salts} .correct > .buttons button:last-of-type");
    page.browser.wait_for("the way back", || page.browser.shows(&undo));
    page.browser.click(&undo);
    page.browser.wait_for("the report's own word", || !value().contains("dS/m"));
}

#[test]
fn among_many_samples_one_is_found_by_its_name() {
    let page = Page::open("samples-many");
    let mut text = String::from("Sample,pH,Olsen P ppm\n");
    for plot in 1..=900 {
        let _ = writeln!(text, "Plot {plot},6.{},{}", plot % 10, plot % 40);
    }
    page.paste(&text);
    page.wait_for_answer();
    assert!(page.browser.text("#sample").lines().count() <= 61);
    page.browser.type_into("#find-sample", "777");
    page.browser.wait_for("its name", || page.browser.text("#sample").contains("Plot 777"));
    page.browser.run(
        "const pick = document.querySelector('#sample');
        pick.value = '776';
        pick.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    page.browser.wait_for("the found plot", || title(&page).contains("Plot 777"));
}
