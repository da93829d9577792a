//! A report with several samples: picking one, comparing, one correction for all.

use std::fmt::Write as _;

use emberloam_tests::page::{FILE, HOLDS, Page};
use emberloam_tests::project;
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
    page.browser.text(".bed:has(:checked) > span")
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
        page.browser.click(&format!("{salts} summary"));
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

    page.browser.click(".bed-list li:nth-child(3) label");
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

    page.browser.click(&format!("{salts} summary"));
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

/// JavaScript that makes a report of very many invented samples.
const MANY: &str = "'Sample,pH,Organic matter %,Olsen P ppm,Nitrate-N ppm\\n' + Array.from(
    { length: 12000 }, (_, i) => `Plot ${i + 1},${5 + i % 30 / 10},${i % 8},${i % 90},${i % 40}\\n`,
).join('')";

/// Notes in `window.__seen` what the page shows of long work, in `window.__said`
/// what it says of it and in `window.__saved` what it hands over to be saved;
/// `stop` presses Cancel as soon as there is one.
fn watch(page: &Page, stop: bool) {
    page.browser.run_with(
        "const work = document.querySelector('#work');
        window.__seen = [];
        window.__said = [];
        window.__says ??= new MutationObserver(() => {
            window.__said.push(document.querySelector('#announce').textContent);
        });
        window.__says.observe(
            document.querySelector('#announce'),
            { subtree: true, childList: true, characterData: true },
        );
        window.__saved = window.__saved ?? [];
        window.__hears ??= addEventListener('emberloam:save', ({ detail }) => {
            const [name, kind, ...text] = detail.split('\\n');
            window.__saved.push([name, text.length]);
        }) ?? true;
        window.__watch?.disconnect();
        window.__watch = new MutationObserver(() => {
            if (work.hidden) return;
            const bar = work.querySelector('progress');
            window.__seen.push([bar.labels[0].textContent.trim(), bar.position]);
            if (arguments[0] && window.__seen.length === 1) document.querySelector('#stop-work').click();
        });
        window.__watch.observe(work, { subtree: true, attributes: true, characterData: true })",
        &[json!(stop)],
    );
}

/// What was seen: the name of the work, and how far it was each time.
fn seen(page: &Page) -> (String, Vec<f64>) {
    let seen = page.browser.run("return window.__seen");
    let all = seen.as_array().cloned().unwrap_or_default();
    let name = all.last().and_then(|one| one[0].as_str()).unwrap_or_default().to_string();
    (name, all.iter().filter_map(|one| one[1].as_f64()).collect())
}

fn saved(page: &Page) -> serde_json::Value {
    page.browser.run("return window.__saved")
}

/// Whether it was said since the watch began, though another word may stand there by now.
fn was_said(page: &Page, what: &str) -> bool {
    let said = page.browser.run("return window.__said.join(' | ')");
    said.as_str().is_some_and(|said| said.contains(what))
}

/// Longer than any of the work here takes.
fn pause(page: &Page) {
    page.browser.run("return new Promise((done) => setTimeout(done, 4000))");
}

/// Puts very many samples into the paste box and does something in the same breath.
fn put_many_and(page: &Page, then: &str) {
    page.browser.run(&format!(
        "const box = document.querySelector('#report-text');
        const put = (text) => {{
            box.value = text;
            box.dispatchEvent(new InputEvent('input', {{ bubbles: true }}));
        }};
        put({MANY});
        {then}"
    ));
}

fn works(page: &Page) -> bool {
    page.browser.shows("#work")
}

#[test]
fn a_long_report_shows_how_far_it_is_and_can_be_stopped() {
    let page = Page::open("samples-reading");
    page.paste(THREE_BEDS);
    page.wait_for_answer();
    page.browser.wait_for("the place of long work", || page.browser.has("#work"));
    watch(&page, true);
    page.put(MANY);
    page.browser.wait_for("that it was stopped", || was_said(&page, "Stopped"));
    assert!(seen(&page).0.starts_with("Reading"), "{:?}", seen(&page));
    // Nothing goes on behind what is shown.
    pause(&page);
    assert!(!works(&page));
    assert_eq!(page.report(), THREE_BEDS);
    assert!(title(&page).contains("Herb spiral"), "{}", title(&page));
    page.answer("Area of the bed", "12");

    watch(&page, false);
    page.put(MANY);
    page.browser.wait_for("the long report", || title(&page).contains("Plot 1"));
    assert!(page.still_holds_what_was_put());
    assert!(!seen(&page).1.is_empty() && !works(&page));
}

#[test]
fn many_samples_are_written_while_the_page_stays_awake() {
    let page = Page::open("samples-writing");
    page.put(MANY);
    page.browser.wait_for("the long report", || title(&page).contains("Plot 1"));
    page.save_as_files();

    page.browser.click("#compare > summary");
    let columns = "return document.querySelectorAll('.compare thead th').length";
    page.browser.wait_for("five samples side by side", || page.browser.run(columns) == 5);

    // Stopped, nothing is saved.
    watch(&page, true);
    page.browser.click("#save-table");
    page.browser.wait_for("that it was stopped", || was_said(&page, "Stopped"));
    assert!(seen(&page).0.starts_with("Writing"), "{:?}", seen(&page));
    pause(&page);
    assert!(!works(&page));
    assert_eq!(saved(&page), json!([]));

    for (button, name, lines) in
        [("#save-table", "Plot-1.csv", 48_002), ("#save-exchange", "Plot-1.modus.json", 1)]
    {
        watch(&page, false);
        page.browser.run("window.__saved = []");
        // A change made meanwhile is answered before the file is written.
        let meanwhile = page.browser.run_with(
            "document.querySelector(arguments[0]).click();
            const pick = document.querySelector('#sample');
            const before = document.querySelector('#answer .kicker').textContent;
            pick.value = pick.options[pick.options[1].selected ? 2 : 1].value;
            pick.dispatchEvent(new Event('change', { bubbles: true }));
            return new Promise((done) => requestAnimationFrame(() => setTimeout(() => done([
                document.querySelector('#answer .kicker').textContent !== before,
                window.__saved.length,
            ]))))",
            &[json!(button)],
        );
        assert_eq!(meanwhile, json!([true, 0]), "{button}");
        page.browser.wait_for("the file", || saved(&page) != json!([]));
        let file = saved(&page);
        assert_eq!(file[0][1], lines, "{file}");
        assert!(file[0][0].as_str().unwrap_or_default().ends_with(&name["Plot-1".len()..]));
        let (_, positions) = seen(&page);
        assert!(positions.is_sorted() && positions.len() > 2, "{positions:?}");
        page.browser.wait_for("that it is saved", || was_said(&page, "saved"));
        assert!(!works(&page));
    }
}

#[test]
fn what_a_person_does_while_a_long_report_is_read_holds() {
    let page = Page::open("samples-overruled");
    for then in ["put('')", "document.querySelector('#erase').click()"] {
        page.paste(THREE_BEDS);
        page.wait_for_answer();
        page.browser.wait_for("the place of long work", || page.browser.has("#work"));
        put_many_and(&page, then);
        pause(&page);
        page.browser.wait_for("the end of the reading", || !works(&page));
        assert_eq!(page.report(), "", "{then}");
        assert!(!page.browser.has("#answer"), "{then}");
    }
    // What has nothing to do with the report doesn't stop it.
    page.browser.click("#take-back");
    page.wait_for_answer();
    watch(&page, false);
    page.browser.click("#erase");
    put_many_and(&page, "document.querySelector('#erased-note .quiet').click()");
    page.browser.wait_for("the long report", || title(&page).contains("Plot 1"));
    page.browser.wait_for("that it was read", || was_said(&page, "Report read"));
}

#[test]
fn what_is_saved_waits_for_its_turn() {
    let page = Page::open("samples-in-turn");
    page.paste(THREE_BEDS);
    page.wait_for_answer();
    page.save_as_files();
    page.browser.wait_for("the place of long work", || page.browser.has("#work"));
    watch(&page, false);
    // Both files hold the report that was still being read when they were asked for.
    put_many_and(
        &page,
        "document.querySelector('#save-table').click();
        document.querySelector('#save-exchange').click();",
    );
    page.browser
        .wait_for("both files", || saved(&page).as_array().is_some_and(|all| all.len() == 2));
    assert_eq!(saved(&page), json!([["Plot-1.csv", 48_002], ["Plot-1.modus.json", 1]]));
    assert!(title(&page).contains("Plot 1"));
    // What is erased meanwhile is not written.
    page.browser.run(
        "window.__saved = [];
        document.querySelector('#save-table').click();
        document.querySelector('#erase').click();",
    );
    pause(&page);
    assert_eq!(saved(&page), json!([]));
    assert!(!works(&page));
}

#[test]
fn a_stopped_reading_keeps_what_was_said_of_the_report_there_was() {
    let page = Page::open("samples-note");
    let report = project().join("tests/open-data/synthetic_reports/fpdf2.pdf");
    page.browser.type_into(FILE, &report.display().to_string());
    page.browser.wait_for("an opened file", || page.browser.text("#opened").contains("fpdf2"));
    page.browser.wait_for("the place of long work", || page.browser.has("#work"));
    watch(&page, true);
    put_many_and(&page, "");
    page.browser.wait_for("that it was stopped", || was_said(&page, "Stopped"));
    assert!(page.browser.text("#opened").contains("fpdf2"));
}

#[test]
fn who_types_in_a_long_report_on_a_phone_stays_there() {
    let page = Page::open("samples-typing");
    page.browser.resize(390, 844);
    page.paste(THREE_BEDS);
    page.wait_for_answer();
    page.browser.wait_for("the place of long work", || page.browser.has("#work"));
    // A pasted one shows how far it is, then the answer.
    watch(&page, false);
    put_many_and(&page, "box.dispatchEvent(new ClipboardEvent('paste', { bubbles: true }))");
    page.browser.wait_for("the long report", || title(&page).contains("Plot 1"));
    page.browser.wait_for("the report folded away", || !page.browser.shows("#report-text"));
    assert!(!seen(&page).1.is_empty());

    page.browser.run(
        "document.querySelector('#report-fold').open = true;
        const box = document.querySelector('#report-text');
        box.focus();
        box.value += 'Plot 12001,6,2,3,4\\n';
        box.dispatchEvent(new InputEvent('input', { bubbles: true }))",
    );
    pause(&page);
    page.browser.wait_for("the end of the reading", || !works(&page));
    assert!(page.browser.shows("#report-text"), "the report was folded away under the pen");
    assert_eq!(page.browser.run("return document.activeElement.id"), "report-text");
}
