//! Place, crops and the winter's nitrate on the page.

use emberloam_tests::page::{A_SURPLUS, Page};
use serde_json::json;

const LATITUDE: &str = "Latitude in degrees, south of the equator with a minus";
const RAIN: &str = "Rain by month: twelve numbers, January to December";

fn rows(page: &Page) -> Vec<String> {
    let heads = page
        .browser
        .run("return [...document.querySelectorAll('#winter tbody th')].map((h) => h.textContent)");
    heads.as_array().into_iter().flatten().filter_map(|h| h.as_str().map(String::from)).collect()
}

#[test]
fn latitude_and_rain_turn_the_winter_round_and_draw_it() {
    let page = Page::open("place");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.open_all_answers();
    page.unfold_all();
    page.answer(LATITUDE, "-43.5");
    page.browser
        .wait_for("the south", || page.browser.text("#place-told").contains("April to September"));
    page.browser.wait_for("the table", || rows(&page).first().is_some_and(|m| m == "April"));
    let before = page.browser.text("#winter");
    // What can't be read stays, with the reason.
    page.answer(RAIN, "55 50 60 eleven");
    page.browser
        .wait_for("the reason", || page.browser.text("#place").contains("That makes 4 numbers"));
    let kept = page.browser.run(
        "return [...document.querySelectorAll('#place input')].some((i) => i.value === '55 50 60 eleven')",
    );
    assert_eq!(kept, json!(true));
    page.answer(RAIN, "45 42 55 53 60 62 70 65 48 50 47 50");
    page.browser.wait_for("other drainage", || page.browser.text("#winter") != before);
    assert!(!page.browser.text("#place").contains("That makes"));
    assert_eq!(rows(&page).len(), 6);
    let drawn = page.browser.run(
        "const canvas = document.querySelector('#winter canvas');
        const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
        return data.some((part) => part > 0)",
    );
    assert_eq!(drawn, json!(true), "nothing is drawn");
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

#[test]
fn crops_are_added_named_dated_kept_and_removed() {
    let page = Page::open("crops");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.open_all_answers();
    page.unfold_all();
    page.answer(LATITUDE, "48");
    page.browser.click("#add-crop");
    page.browser.wait_for("a row", || page.browser.has("#crops .crop"));
    // Dates far ahead hold whatever day the test is run on.
    page.answer("Crop", "garlic");
    page.answer("Sown or planted", "2090-10-15");
    page.answer("Harvested, off the bed", "2091-07-10");
    page.browser.wait_for("the conflict", || {
        page.browser.text("#conflicts").contains("garlic stays in the bed over the cool season")
    });
    assert!(page.browser.text("#rests").contains("Before garlic"));
    page.browser.reload();
    page.wait_until_started();
    page.open_all_answers();
    page.browser.wait_for("the crop after the reload", || {
        page.browser.has("#conflicts") && page.browser.text("#conflicts").contains("garlic")
    });
    page.unfold_all();
    page.browser.click("#crops .crop button");
    page.browser.wait_for("no crop", || !page.browser.has("#crops .crop"));
    page.browser.wait_for("no conflict", || !page.browser.shows("#conflicts"));
}
