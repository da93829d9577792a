//! A trial: its plots judged, kept, told in Spanish, and the next one planned.

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, Page};
use emberloam_tests::site::Site;
use serde_json::{Value, json};

use crate::shelf::{READ, fill, save_as, told, unfold, wait_for_names};

const TABLE: &str = "#trial-table";

/// A page with the trial opened.
fn opened(name: &str) -> Page {
    let page = Page::open(name);
    open(&page);
    page
}

fn open(page: &Page) {
    page.browser.wait_for("the fold", || page.browser.has("#trial"));
    page.unfold("#trial");
    page.browser.wait_for("its piece", || page.browser.has(TABLE));
}

fn put(page: &Page, text: &str) {
    page.browser.run_with(
        "const [css, text] = arguments;
        const box = document.querySelector(css);
        box.value = text;
        box.dispatchEvent(new InputEvent('input', { bubbles: true }))",
        &[json!(TABLE), json!(text)],
    );
}

fn press(page: &Page, name: &str) {
    let pressed = page.browser.run_with(
        "const button = [...document.querySelectorAll('#trial button')]
            .find((button) => button.textContent.trim() === arguments[0]);
        button?.click();
        return Boolean(button)",
        &[json!(name)],
    );
    assert_eq!(pressed, true, "no button {name:?}");
}

fn headline(page: &Page) -> String {
    page.browser.text("#trial-results h3")
}

fn verdicts(page: &Page) -> Vec<String> {
    let all = page.browser.run(
        "return [...document.querySelectorAll('.trial-result .verdict-word')].map((v) => v.textContent)",
    );
    let all = all.as_array().into_iter().flatten();
    all.map(|verdict| verdict.as_str().unwrap_or_default().to_owned()).collect()
}

#[test]
fn a_clear_trial_is_told_kept_said_in_spanish_and_removed() {
    let page = opened("trial-clear");
    press(&page, "A clear trial");
    page.browser.wait_for("the verdict", || page.browser.shows("#trial-results h3"));
    assert_eq!(headline(&page), "2 rose, 1 fell, and 1 can't be told with these plots.");
    assert_eq!(verdicts(&page), ["went up", "went up", "went down", "can't tell"]);
    // Every verdict has its sentence with the interval, its plots and its numbers.
    page.unfold(".trial-result details");
    let potassium = page.browser.text(".trial-result:nth-child(2)");
    assert!(potassium.contains("Potassium rose by") && potassium.contains("mg/kg"), "{potassium}");
    assert_eq!(
        page.browser
            .run("return document.querySelectorAll('.trial-result:nth-child(2) circle').length"),
        12
    );
    page.browser.reload();
    page.wait_until_started();
    open(&page);
    page.browser.wait_for("the same verdict", || verdicts(&page).len() == 4);
    page.speak("es");
    page.browser.wait_for("Spanish", || verdicts(&page).first().is_some_and(|v| v == "subió"));
    page.speak("en");
    press(&page, "Remove the trial");
    page.browser.wait_for("nothing", || !page.browser.shows("#trial-results"));
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

#[test]
fn what_cant_be_told_is_not_and_what_cant_be_read_is_said_and_loses_nothing() {
    let page = opened("trial-unclear");
    press(&page, "A trial that can't tell");
    page.browser.wait_for("the verdicts", || verdicts(&page).len() == 3);
    assert!(verdicts(&page).iter().all(|verdict| verdict == "can't tell"), "{:?}", verdicts(&page));
    let text = "pH;K\n6,1;88\n6,3;91\n";
    put(&page, text);
    page.browser.wait_for("the reason", || {
        page.browser.text("#trial-trouble").contains("what was done to each plot")
    });
    assert!(!page.browser.shows("#trial-results"));
    assert_eq!(page.browser.run("return document.querySelector('#trial-table').value"), text);
    // One sample of each is shown, and concludes nothing.
    put(&page, "Treatment,pH\nuntreated,6.1\nbiochar,6.6\n");
    page.browser.wait_for("no conclusion", || verdicts(&page) == ["no replicates"]);
}

#[test]
fn the_next_trial_is_laid_out_with_amounts_and_a_sheet() {
    let page = opened("trial-next");
    page.unfold("#next-trial");
    page.browser.wait_for("the plots", || page.browser.has(".lots td"));
    let told = page.browser.text("#next-trial");
    assert!(told.contains("plots of each treatment"), "{told}");
    assert!(told.contains("Each treated plot gets"), "{told}");
    let plots = || page.browser.run("return document.querySelectorAll('.lots td').length");
    let before = plots();
    page.browser.run(
        "const field = [...document.querySelectorAll('#next-trial label')]
            .find((label) => label.textContent.startsWith('Plots of each treatment'));
        const box = field.querySelector('input');
        box.value = '4';
        box.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    page.browser.wait_for("eight plots", || plots() == 8 && plots() != before);
}

#[test]
fn a_trial_that_was_opened_once_works_offline() {
    let mut page = Page { browser: Browser::start("trial-offline"), site: Site::start() };
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.browser.wait_for("the offline copy", || {
        page.browser.run("return navigator.serviceWorker?.controller !== null") == true
    });
    open(&page);
    page.browser.wait_for("the piece in the copy", || {
        page.browser.run(
            "return caches.keys().then((names) => Promise.all(names.map(async (name) =>
                (await caches.open(name)).match('split_trial.wasm'))))
                .then((found) => found.some(Boolean))",
        ) == true
    });
    page.site.stop();
    page.browser.reload();
    page.wait_until_started();
    open(&page);
    press(&page, "A clear trial");
    page.browser.wait_for("the verdict", || verdicts(&page).len() == 4);
}

#[test]
fn a_trial_goes_out_by_link_and_leaves_the_own_one_safe() {
    let page = opened("trial-link");
    press(&page, "A clear trial");
    page.browser.wait_for("the verdict", || verdicts(&page).len() == 4);
    page.browser.run(
        "navigator.clipboard.writeText = (text) => { window.__copied = text; return Promise.resolve() }",
    );
    press(&page, "Copy a link to this trial");
    page.browser
        .wait_for("the link", || !page.browser.run("return window.__copied ?? null").is_null());
    let link = page.browser.run("return window.__copied").as_str().unwrap_or_default().to_owned();
    let own = "Treatment,pH\nuntreated,6.1\nuntreated,6.2\nbiochar,6.1\nbiochar,6.3\n";
    put(&page, own);
    page.browser.wait_for("the own trial", || verdicts(&page) == ["can't tell"]);
    page.browser.goto(&page.site.url);
    page.browser.goto(&link);
    page.wait_until_started();
    // It opens by itself.
    page.browser.wait_for("the trial of the link", || verdicts(&page).len() == 4);
    assert_eq!(page.browser.run("return location.hash"), "", "a reload would ask again");
    press(&page, "Back to my own trial");
    page.browser.wait_for("the own trial", || verdicts(&page) == ["can't tell"]);
    let text = page.browser.run("return document.querySelector('#trial-table').value");
    assert_eq!(text, own);
}

#[test]
fn what_a_trial_found_stands_beside_the_default_and_can_be_switched_off() {
    let page = Page::with_report("trial-in-plan");
    open(&page);
    press(&page, "A clear trial");
    page.browser.wait_for("the verdict", || verdicts(&page).len() == 4);
    let row = "tr[data-effect=potassium]";
    page.browser.wait_for("the effects", || page.browser.has(row));
    let text = |css: &str| {
        let of = "return document.querySelector(arguments[0])?.textContent ?? ''";
        page.browser.run_with(of, &[json!(css)]).as_str().unwrap_or_default().to_owned()
    };
    let default = text(&format!("{row} td:nth-of-type(2)"));
    assert!(!default.contains("With your trial"), "{default}");
    page.browser.click(".into-plan");
    let beside = format!("{row} .with-trial");
    page.browser.wait_for("the trial beside it", || page.browser.has(&beside));
    assert!(text(row).contains(default.trim()), "the default is gone: {}", text(row));
    assert!(text("#with-trial").contains("Amounts and jobs still rest on the default"));
    page.browser.reload();
    page.wait_until_started();
    page.open_all_answers();
    page.browser.wait_for("the kept trial", || page.browser.has(&beside));
    page.browser.run("document.querySelector('#with-trial input').click()");
    page.browser
        .wait_for("the default alone", || page.browser.has(row) && !page.browser.has(&beside));
    // It is kept, and said again at one press.
    page.browser.run("document.querySelector('#with-trial input').click()");
    page.browser.wait_for("the trial again", || page.browser.has(&beside));
    // Whether another report is of the same bed, only the person can tell.
    // No line of the old one is left in it.
    let other =
        A_SURPLUS.replace("Method:", "Extract:").replace(" ppm", "0 ppb").replace("back", "front");
    let other = other.replace("6.6", "6.4").replace("6.1 %", "5.9 %").replace("17.2", "16.1");
    page.paste(&other.replace("0 ppb", ".5 ppm"));
    page.wait_for_answer();
    page.open_all_answers();
    page.browser.wait_for("the default of the other report", || {
        page.browser.has(row)
            && !page.browser.has(&beside)
            && page.browser.has("#with-trial:not([hidden])")
    });
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

/// A button of a saved report.
fn press_saved(page: &Page, word: &str, name: &str) {
    page.browser.click(&format!("#shelf-list [aria-label='{word}: “{name}”']"));
}

#[test]
fn a_trial_is_saved_opened_changed_printed_deleted_and_goes_with_the_backup() {
    let page = opened("trial-saved");
    press(&page, "A clear trial");
    page.browser.wait_for("the verdict", || verdicts(&page).len() == 4);
    let clear = page.browser.run("return document.querySelector('#trial-table').value");
    press(&page, "Save it among the saved reports");
    page.browser.wait_for("a word", || page.browser.text("#trial").contains("Give it a name"));
    fill(&page, "#trial-name", "By the fence");
    press(&page, "Save it among the saved reports");
    page.browser.wait_for("the save", || page.browser.text("#trial").contains("Saved as"));
    unfold(&page, "#shelf");
    wait_for_names(&page, &["By the fence"]);
    // Saved again it is the same one, also after a reload.
    page.browser.reload();
    page.wait_until_started();
    open(&page);
    page.browser.wait_for("the verdict", || verdicts(&page).len() == 4);
    press(&page, "Save it among the saved reports");
    page.browser.wait_for("the save", || page.browser.text("#trial").contains("Saved as"));
    let kept = page.browser.run(READ);
    let kept: Vec<Value> = kept
        .as_array()
        .unwrap()
        .iter()
        .map(|one| serde_json::from_str(one.as_str().unwrap()).unwrap())
        .collect();
    assert_eq!(
        (kept.len(), &kept[0]["revision"], &kept[0]["trial"]["text"]),
        (1, &json!(2), &clear)
    );
    // Opened over another trial it leaves that one safe.
    let own = "Treatment,pH\nuntreated,6.1\nuntreated,6.2\nbiochar,6.1\nbiochar,6.3\n";
    press(&page, "Remove the trial");
    put(&page, own);
    page.browser.wait_for("the own trial", || verdicts(&page) == ["can't tell"]);
    unfold(&page, "#shelf");
    wait_for_names(&page, &["By the fence"]);
    press_saved(&page, "Open", "By the fence");
    page.browser.wait_for("the saved trial", || verdicts(&page).len() == 4);
    assert_eq!(
        page.browser.run("return document.querySelector('#trial-name').value"),
        "By the fence"
    );
    // On paper stand its name, the day and what each property did.
    page.browser.run(
        "window.print = () => {
            const of = (css) => document.querySelector(css);
            window.__printed = [of('#ground').className, of('#trial-head').textContent,
                of('#trial-head').hidden, document.querySelectorAll('.trial-result details:not([open])').length];
            dispatchEvent(new Event('afterprint'));
        }",
    );
    page.browser.click("#print-trial");
    page.browser
        .wait_for("the print window", || page.browser.run("return !!window.__printed") == true);
    let printed = page.browser.run("return window.__printed");
    assert!(printed[0].as_str().unwrap().contains("prints-trial"), "{printed}");
    assert!(printed[1].as_str().unwrap().starts_with("By the fence "), "{printed}");
    assert_eq!((&printed[2], &printed[3]), (&json!(false), &json!(0)), "{printed}");
    assert!(!page.browser.shows("#trial-head"));
    press(&page, "Back to my own trial");
    page.browser.wait_for("the own trial", || verdicts(&page) == ["can't tell"]);
    // Out with all, deleted, and in again.
    page.browser.run("addEventListener('emberloam:save', (e) => { window.__saved = e.detail })");
    page.browser.click("#shelf-out");
    page.browser.wait_for("the file", || page.browser.run("return !!window.__saved") == true);
    press_saved(&page, "Delete", "By the fence");
    wait_for_names(&page, &[]);
    let saved = page.browser.run("return window.__saved").as_str().unwrap().to_owned();
    let file = emberloam_tests::project().join("target/browser/trial-shelf.json");
    std::fs::write(&file, saved.split_once("\napplication/json\n").unwrap().1).unwrap();
    page.browser.type_into("#shelf-in", &file.display().to_string());
    page.browser.wait_for("the trial back", || told(&page).contains("Brought in 1 report"));
    wait_for_names(&page, &["By the fence"]);
    press_saved(&page, "Open", "By the fence");
    page.browser.wait_for("the saved trial", || verdicts(&page).len() == 4);
    // Erased with everything.
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-yes");
    page.browser.wait_for("word of it", || told(&page).contains("All is erased"));
    page.browser.wait_for("no trial", || !page.browser.shows("#trial-results"));
    assert_eq!(page.browser.run("return Object.keys(localStorage).length"), 0);
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

#[test]
fn two_saved_reports_are_compared_as_before_and_after() {
    let page = Page::with_report("trial-two");
    save_as(&page, "Spring", "Back", "2026-03-01");
    open(&page);
    unfold(&page, "#trial-two");
    page.browser.wait_for("what it needs", || {
        page.browser.text("#trial-two").contains("two saved reports")
    });
    // The same bed a year later.
    page.paste(&A_SURPLUS.replace("395", "420").replace("6.6", "6.9"));
    page.wait_for_answer();
    fill(&page, "#shelf-name", "A year later");
    fill(&page, "#shelf-date", "2027-03-01");
    page.browser.click("#shelf-save-new");
    wait_for_names(&page, &["A year later", "Spring"]);
    for open in [false, true] {
        page.browser
            .run_with("document.querySelector('#trial-two').open = arguments[0]", &[json!(open)]);
        std::thread::sleep(std::time::Duration::from_millis(200));
    }
    page.browser.wait_for("the choices", || page.browser.shows("#trial-take-two"));
    let choose = |css: &str, name: &str| {
        page.browser.run_with(
            "const choice = document.querySelector(arguments[0]);
            choice.value = [...choice.options].find((o) => o.textContent.includes(arguments[1])).value;
            choice.dispatchEvent(new Event('change', { bubbles: true }))",
            &[json!(css), json!(name)],
        );
    };
    choose("#trial-before", "Spring");
    page.browser.click("#trial-take-two");
    page.browser
        .wait_for("a word", || page.browser.text("#trial").contains("Choose two different"));
    choose("#trial-after", "A year later");
    page.browser.click("#trial-take-two");
    page.browser
        .wait_for("the comparison", || headline(&page).starts_with("One plot of a treatment"));
    let told = page.browser.run("return document.querySelector('#trial-results').textContent");
    let told = told.as_str().unwrap();
    assert!(told.contains("Potassium is 25\u{a0}mg/kg higher after than before"), "{told}");
    assert!(told.contains("Magnesium is the same before and after"), "{told}");
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

/// A table of the most that is judged: 2,000 plots, 60 properties, 20 treatments. Here in the page
/// because a test would take as long to type it.
const GREATEST: &str = "let x = 1;
    const draw = () => (x = (x * 48271) % 2147483647) / 2147483647;
    let text = 'Plot,Treatment,' + Array.from({ length: 60 }, (_, at) => `Result ${at}`).join(',') + '\\n';
    // Unequal numbers, 5 to 195, and one result in fifty lost: what takes longest.
    const treatments = Array.from({ length: 20 }, (_, of) => Array(5 + 10 * of).fill(of)).flat();
    for (const [plot, of] of treatments.entries()) {
        text += `${plot},${of ? `char ${of}` : 'untreated'}`;
        for (let at = 0; at < 60; at += 1) text += draw() < 0.02 ? ',' : `,${(5 + draw() + draw() + draw()).toFixed(2)}`;
        text += '\\n';
    }
    const box = document.querySelector('#trial-table');
    window.__gap = 0;
    let last = performance.now();
    window.__beat = setInterval(() => {
        window.__gap = Math.max(window.__gap, performance.now() - last);
        last = performance.now();
    }, 5);
    window.__begun = last;
    box.value = text;
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));";

/// What it took is printed with `--nocapture`: seconds in all, and the longest that the page did
/// not answer.
#[test]
fn the_greatest_trial_is_judged_in_slices_and_can_be_stopped() {
    let page = opened("trial-greatest");
    page.browser.run(GREATEST);
    page.browser.wait_for("the progress", || page.browser.shows("#trial-progress"));
    page.browser.click("#trial-stop");
    page.browser.wait_for("the end", || !page.browser.shows("#trial-progress"));
    assert!(page.browser.text("#trial").contains("Stopped before the end"));
    std::thread::sleep(std::time::Duration::from_millis(400));
    assert!(verdicts(&page).is_empty(), "it went on");
    page.browser.run("clearInterval(window.__beat)");
    page.browser.run(GREATEST);
    let begun = std::time::Instant::now();
    while verdicts(&page).len() < 60 {
        assert!(begun.elapsed().as_secs() < 60, "not judged within a minute");
        std::thread::sleep(std::time::Duration::from_millis(200));
    }
    let took =
        page.browser.run("return (performance.now() - window.__begun) / 1000").as_f64().unwrap();
    let gap = page.browser.run("return window.__gap").as_f64().unwrap();
    println!(
        "2,000 plots, 60 properties, 20 treatments: {took:.1} s, the page busy {gap:.0} ms at most"
    );
    assert!(took < 45.0, "{took} s");
    assert!(gap < 3000.0, "the page slept for {gap} ms");
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

/// By hand: 20 quarts of soil hold 1 quart of biochar at 5 %.
#[test]
fn the_next_trial_is_told_in_the_measures_of_the_reader() {
    let page = opened("trial-measures");
    page.unfold("#next-trial");
    page.browser.wait_for("the plots", || page.browser.has(".lots td"));
    let units = || {
        page.browser.run("return [...document.querySelectorAll('#next-trial .with-unit span')].map((s) => s.textContent).join(' ')")
            .as_str().unwrap_or_default().to_owned()
    };
    let set = |label: &str, value: &str| {
        page.browser.run_with(
            "const field = [...document.querySelectorAll('#next-trial label')].find((l) => l.textContent.startsWith(arguments[0]));
            const box = field.querySelector('input');
            box.value = arguments[1];
            box.dispatchEvent(new Event('change', { bubbles: true }))",
            &[json!(label), json!(value)],
        );
    };
    page.browser.run("document.querySelector('.measures label:first-of-type input').click()");
    page.browser.wait_for("litres", || units().contains("m²") && units().contains(" L"));
    page.browser.run("document.querySelector('.measures label:last-of-type input').click()");
    page.browser.wait_for("quarts", || {
        units().contains("sq ft") && units().contains("gal") && units().contains("qt")
    });
    assert!(!units().contains(" L"), "{}", units());
    set("Soil in a pot", "5");
    set("Your scoop holds", "1");
    page.browser
        .wait_for("a scoop", || page.browser.text("#next-trial").contains("about 1 scoops"));
    let told = page.browser.text("#next-trial");
    assert!(!told.contains(" L of"), "{told}");
}
