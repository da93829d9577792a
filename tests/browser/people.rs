//! Six people at the page, each with what they came for and how often they may tap.

use std::fs;

use emberloam_tests::driver::Key;
use emberloam_tests::page::{A_SURPLUS, HUNGRY, Page, REPORT, SURPLUS};
use emberloam_tests::person::{
    A4, EIGHT_BEDS, LETTER, Person, SOUR, bags_lime_and_dates, charge_a_hundred_litres,
    eight_plans_and_one_list, one_page_on_paper, outline, own_report_in_a_case, pages_of,
    shared_names, stops, verdicts,
};
use emberloam_tests::project;
use serde_json::json;

use crate::shelf::fill;

const PHONE: (u32, u32) = (390, 844);

#[track_caller]
fn assert_taps(person: &Person<'_>, most: usize) {
    assert!(person.taps() <= most, "{} taps, at most {most}: {}", person.taps(), person.way());
}

#[test]
fn a_gardener_on_a_phone_knows_what_to_carry_and_when() {
    let page = Page::open_on_phone("person-gardener", PHONE, "en-US");
    let person = bags_lime_and_dates(&page);
    assert_taps(&person, 6);
    let carried = page.browser.text("#carry").replace('\u{a0}', " ");
    assert!(carried.contains("64 sq ft"), "{carried}");
    let vessel = ["bag", "bucket"].iter().any(|vessel| carried.contains(vessel));
    assert!(vessel && carried.contains("biochar"), "{carried}");
    assert!(carried.contains("limestone"), "no lime to carry: {carried}");
    let next = page.browser.text("#answer .next");
    assert!(next.chars().any(|c| c.is_ascii_digit()), "the next job has no day: {next}");
    let dated = page.browser.run(
        "return [...document.querySelectorAll('#jobs .job-when')]
            .filter((when) => /\\d/.test(when.textContent)).length",
    );
    assert!(dated.as_u64() > Some(1), "{dated} jobs have days: {}", page.browser.text("#jobs"));
}

#[test]
fn a_viewer_from_a_link_finds_what_is_fixed_and_puts_in_their_own_report() {
    let educator = Page::open("person-sender");
    educator.paste(A_SURPLUS);
    educator.wait_for_answer();
    educator.answer("Area of the bed", "12");
    educator.unfold("#share, #viewers");
    fill(&educator, "#viewers-note", "Bed of the school garden");
    let link = || {
        let link = educator.browser.run("return document.querySelector('#viewers-link').value");
        link.as_str().unwrap_or_default().to_owned()
    };
    educator.browser.wait_for("the answers to fix", || {
        educator.browser.text("#viewers-fixed").contains("Area of the bed")
    });
    // The viewers get the educator's report too.
    if educator.browser.run("return document.querySelector('#viewers-report').checked") == false {
        educator.browser.click("#viewers-report");
    }
    educator.browser.wait_for("the link", || link().contains("#soil=1."));
    let link = link();

    let page = Page::open_on_phone("person-viewer", PHONE, "en-GB");
    page.browser.goto("about:blank");
    page.browser.goto(&format!("{}{}", page.site.url, &link[link.find('#').unwrap()..]));
    page.wait_until_started();
    page.browser.wait_for("word of the link", || page.browser.shows("#arrived"));
    let person = own_report_in_a_case(&page, SOUR);
    assert_taps(&person, 4);
    assert_eq!(page.report(), SOUR);
    let case = page.browser.text("#scenario");
    assert!(case.contains("Area of the bed: 12") && case.contains("Bed of the school"), "{case}");
    // What is fixed is what the answer is for, and can't be changed.
    page.browser.wait_for("amounts for the bed", || {
        page.browser.text("#carry .carry-for").contains("12\u{a0}m²")
    });
    page.open_all_answers();
    let area = page.browser.run(
        "const field = [...document.querySelectorAll('#bed label.field')]
            .find((field) => field.firstElementChild.textContent === 'Area of the bed');
        const input = field.querySelector('input');
        return [input.value, input.disabled]",
    );
    assert_eq!(area, json!(["12", true]));
    // The way to their own report stays in sight.
    assert!(page.browser.shows("#scenario-own"));
}

#[test]
fn a_market_gardener_gets_eight_verdicts_and_one_shopping_list() {
    let page = Page::open("person-market");
    let file = project().join("target/browser/eight-beds.csv");
    fs::write(&file, EIGHT_BEDS).expect("target/browser can be written");
    let person = eight_plans_and_one_list(&page, &file);
    assert_taps(&person, 10);
    let all = verdicts(&page);
    assert_eq!(all.len(), 8, "{all:?}");
    assert!(all.iter().any(|other| *other != all[0]), "every bed has the verdict {:?}", all[0]);
    let list = page.browser.text("#shopping");
    assert!(list.contains("biochar") && list.to_lowercase().contains("lime"), "{list}");
    for bed in ["Carrot strip", "New ground"] {
        assert!(list.contains(bed), "{bed} is not on the list: {list}");
    }
    // What is bought is the sum of what the beds get.
    let sums = page.browser.run(
        "return [...document.querySelectorAll('#shopping .carried > li')].map((line) => [
            line.querySelector('summary strong').textContent,
            [...line.querySelectorAll('ul li')].map((bed) => bed.textContent.split(': ').pop()),
        ])",
    );
    let number = |text: &str| -> f64 {
        let digits: String =
            text.chars().take_while(|c| c.is_ascii_digit() || *c == '.' || *c == ',').collect();
        digits.replace(',', "").parse().unwrap_or(f64::NAN)
    };
    let unit = |text: &str| text.trim_start_matches(|c: char| !c.is_alphabetic()).to_owned();
    let mut compared = 0;
    for line in sums.as_array().into_iter().flatten() {
        let whole = line[0].as_str().unwrap_or_default();
        let parts: Vec<&str> =
            line[1].as_array().into_iter().flatten().filter_map(|p| p.as_str()).collect();
        if parts.iter().any(|part| unit(part) != unit(whole)) {
            continue;
        }
        let sum: f64 = parts.iter().map(|part| number(part)).sum();
        let apart = (sum - number(whole)).abs() / number(whole);
        assert!(apart < 0.15, "{whole} for {parts:?}");
        compared += 1;
    }
    assert!(compared > 0, "no line could be held against its beds: {sums}");
    // On paper: a page for each bed, and the list.
    page.print("#print-all");
    let sheets = page.browser.run(
        "return [...document.querySelectorAll('.plan .handout')].map((sheet) => sheet.textContent)",
    );
    let sheets: Vec<&str> =
        sheets.as_array().into_iter().flatten().filter_map(|sheet| sheet.as_str()).collect();
    assert_eq!(sheets.len(), 9, "{sheets:#?}");
    assert!(sheets[0].contains("Carrot strip") && sheets[7].contains("New ground"));
    for (name, size) in [("A4", A4), ("Letter", LETTER)] {
        assert_eq!(pages_of(&page, size), 9, "pages of {name}");
    }
}

#[test]
fn a_greenhouse_worker_charges_biochar_offline_in_bright_sun_with_gloves() {
    let mut page = Page::open_on_phone("person-greenhouse", PHONE, "en-GB");
    page.wait_until_offline_ready();
    page.settings();
    page.browser.click("#sun");
    page.site.stop();
    page.browser.reload();
    page.wait_until_started();
    assert_eq!(
        page.browser.run("return getComputedStyle(document.body).backgroundColor"),
        "rgb(255, 255, 255)",
        "the look for bright sun is lost"
    );
    let person = charge_a_hundred_litres(&page);
    assert_taps(&person, 3);
    let litres = page.browser.run("return document.querySelector('#alone input').value");
    assert_eq!(litres, "100");
    let steps = page.browser.text("#alone .steps");
    assert!(steps.contains("100\u{a0}L") || steps.contains("100 L"), "{steps}");
    assert_eq!(too_small(&page), json!([]), "without a report");
    page.sample(HUNGRY);
    page.wait_for_answer();
    page.browser.wait_for("the jobs", || page.browser.shows("#jobs .job"));
    page.open_all_answers();
    assert_eq!(too_small(&page), json!([]), "with a report");
}

/// What a thumb in a glove would miss: whatever can be tapped and is less than 44 px in either
/// direction. A box to tick or a file is tapped by its label; a link within a sentence is as high
/// as the sentence.
fn too_small(page: &Page) -> serde_json::Value {
    page.browser.run(
        "const all = 'button, input, select, textarea, summary, a[href]';
        return [...document.querySelectorAll(all)]
            .filter((one) => !one.disabled && one.checkVisibility({ visibilityProperty: true }))
            .filter((one) => !one.matches('p a, li a, dd a'))
            .map((one) => [one, (one.labels?.[0] ?? one)])
            .map(([one, label]) => {
                const [a, b] = [one, label].map((part) => part.getBoundingClientRect());
                return [one, Math.max(a.width, b.width), Math.max(a.height, b.height)];
            })
            .filter(([, width, height]) => width < 43.9 || height < 43.9)
            .map(([one, width, height]) =>
                `${one.id || one.outerHTML.slice(0, 90)}: ${width} × ${height}`)",
    )
}

#[test]
fn on_an_old_phone_the_answer_stands_before_the_later_parts() {
    let page = Page::open_on_phone("person-old-phone", (360, 740), "es-MX");
    page.browser.wait_for("the later parts", || page.browser.has("#alone"));
    page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": 4 }));
    // Notes when each part is first drawn, in milliseconds from the paste on.
    page.browser.run(
        "window.__drawn = {};
        const parts = { headline: '#answer-title', carry: '#carry li', level: '#holds [data-level]',
            jobs: '#jobs .job', months: '#months g', reasons: '#why .reasons li' };
        addEventListener('input', () => window.__begun ??= performance.now(), true);
        const look = () => {
            for (const [name, css] of Object.entries(parts)) {
                const part = document.querySelector(css);
                if (part?.textContent.trim() || part?.localName === 'g')
                    window.__drawn[name] ??= [performance.now() - window.__begun, window.__frame];
            }
        };
        window.__frame = 0;
        const frame = () => { window.__frame++; look(); requestAnimationFrame(frame); };
        requestAnimationFrame(frame);",
    );
    let person = Person::at(&page);
    person.paste(A_SURPLUS);
    page.browser.wait_for("all parts", || {
        page.browser.run("return Object.keys(window.__drawn).length") == 5
            || page.browser.run("return Object.keys(window.__drawn).length") == 6
    });
    page.browser.wait_for("the jobs", || page.browser.has("#jobs .job"));
    page.browser.run("return new Promise((done) => setTimeout(done, 500))");
    page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": 1 }));
    assert_taps(&person, 1);
    let drawn = page.browser.run("return window.__drawn");
    let at = |part: &str| drawn[part][0].as_f64().unwrap_or(f64::INFINITY);
    println!("on a phone four times slower, ms from the paste to: {drawn}");
    for later in ["jobs", "months", "reasons"] {
        assert!(
            at("headline") < at(later),
            "{later} stand no later than the answer, which took {:.0} ms: {drawn}",
            at("headline")
        );
    }
    assert_eq!(page.browser.run("return document.documentElement.lang"), "es");
    let headline = page.browser.text("#answer-title");
    assert!(headline.contains("biocarbón"), "the answer is not in Spanish: {headline}");
    let wide = page.browser.run("return document.scrollingElement.scrollWidth");
    assert!(wide.as_f64() <= Some(360.0), "{wide} px wide at 360");
}

#[test]
fn an_educator_prints_a_handout_of_one_page() {
    let page = Page::open_on_phone("person-educator", (1100, 900), "en-US");
    page.paste(SOUR);
    page.wait_for_answer();
    page.answer("Area of the bed", "64");
    let person = one_page_on_paper(&page);
    assert_taps(&person, 1);
    let taken = page.browser.run("return window.__paper");
    let taken = taken.as_str().unwrap_or_default();
    assert!(!taken.trim().is_empty(), "the print window opened on empty paper");
    page.browser.media("print", "light");
    let paper = page.browser.text(".plan");
    let seen = |css: &str| page.browser.shows(&format!(".plan {css}"));
    assert!(paper.to_lowercase().contains("lime"), "no lime: {paper}");
    assert!(paper.contains("Take care"), "no cautions: {paper}");
    assert!(["bag", "bucket"].iter().any(|v| paper.contains(v)), "no amounts: {paper}");
    assert!(seen("li.to-tick"), "no boxes to tick");
    assert!(seen("#paper-code svg"), "no code");
    assert!(taken.contains(paper.lines().next().unwrap_or_default().trim()), "{taken}");
    for (name, size) in [("A4", A4), ("Letter", LETTER)] {
        assert_eq!(pages_of(&page, size), 1, "pages of {name}: {paper}");
    }
}

/// With the richest and the poorest sample, and for all that is answered.
#[test]
fn the_handout_of_every_sample_is_one_page() {
    let page = Page::open("person-handouts");
    for sample in [SURPLUS, HUNGRY] {
        page.sample(sample);
        page.wait_for_answer();
        for (label, value) in [
            ("Area of the bed", "10"),
            ("Your biochar", "fresh, not charged"),
            ("Next planting or sowing", "2031-05-01"),
        ] {
            page.answer(label, value);
        }
        one_page_on_paper(&page);
        assert!(page.browser.has("#paper-code svg"), "{sample}: no code");
        for (name, size) in [("A4", A4), ("Letter", LETTER)] {
            assert_eq!(pages_of(&page, size), 1, "{sample}: pages of {name}");
        }
    }
}

#[test]
fn by_keyboard_the_answer_is_one_stop_from_the_paste_box() {
    for sample in [SURPLUS, HUNGRY] {
        let page = Page::open("person-keyboard");
        page.sample(sample);
        page.wait_for_answer();
        page.browser.wait_for("the jobs", || page.browser.has("#jobs .job"));
        page.browser.wait_for("the later parts", || page.browser.has("#share"));
        page.browser.run_with("document.querySelector(arguments[0]).focus()", &[json!(REPORT)]);
        page.browser.press(Key::Tab);
        let here = "return document.activeElement.matches('a.to-answer')";
        assert_eq!(page.browser.run(here), true, "another stop lies before the answer");
        page.browser.press(Key::Enter);
        page.browser.wait_for("the focus on the answer", || {
            page.browser.run("return document.activeElement.id") == "answer-title"
        });
        let stops = stops(&page);
        assert!(stops.len() <= 60, "{sample}: {} stops: {stops:#?}", stops.len());
        assert_eq!(shared_names(&stops), Vec::<String>::new(), "{sample}: names of several");
        let outline = outline(&page);
        assert!(outline.len() <= 40, "{sample}: {} headings: {outline:#?}", outline.len());
    }
}

/// The focus goes to an element, and a key is pressed.
fn press_on(page: &Page, css: &str, key: Key) {
    page.browser.run_with("document.querySelector(arguments[0]).focus()", &[json!(css)]);
    let there =
        page.browser.run_with("return document.activeElement.matches(arguments[0])", &[json!(css)]);
    assert_eq!(there, true, "{css} takes no focus");
    page.browser.press(key);
}

#[test]
fn chips_ticks_lines_and_settings_work_by_keyboard() {
    let page = Page::open("person-patterns");
    page.sample(HUNGRY);
    page.wait_for_answer();
    page.browser.wait_for("the jobs", || page.browser.has("#jobs .job input"));
    page.browser.wait_for("the later parts", || page.browser.has("#bed"));
    let opened = |css: &str| {
        page.browser.run_with("return document.querySelector(arguments[0]).open", &[json!(css)])
            == true
    };

    // A chip opens, is answered, says so, and stays where it is.
    let chip = ".chip[data-question='Area']";
    press_on(&page, &format!("{chip} > summary"), Key::Enter);
    let field = format!("{chip} input");
    page.browser.wait_for("the field", || opened(chip) && page.browser.shows(&field));
    page.browser.press(Key::Tab);
    assert_eq!(
        page.browser
            .run_with("return document.activeElement.matches(arguments[0])", &[json!(field)]),
        true,
        "the field is not the next stop"
    );
    page.browser.insert("12");
    page.browser.press(Key::Enter);
    page.browser.wait_for("word of the answer", || {
        page.browser.text(&format!("{chip}.answered .chip-answer")).contains("12")
    });
    assert_eq!(
        page.browser
            .run_with("return document.activeElement.matches(arguments[0])", &[json!(field)]),
        true,
        "the focus was lost with the answer"
    );

    // A job's box is ticked with the space bar, and the tick stays.
    let tick = "#jobs .job:first-child .job-tick input";
    press_on(&page, tick, Key::Space);
    page.browser.wait_for("the job done", || page.browser.has("#jobs .job.done:first-child"));
    let name = page.browser.run_with(
        "return document.querySelector(arguments[0]).getAttribute('aria-label')",
        &[json!(tick)],
    );
    let what = page.browser.text("#jobs .job:first-child .job-what");
    assert!(name.as_str().is_some_and(|name| name.contains(&what)), "{name} for {what}");
    // And why it is to be done opens beside it.
    press_on(&page, "#jobs .job:first-child summary", Key::Enter);
    page.browser.wait_for("the reason", || opened("#jobs .job:first-child details"));

    // A line of the sheet opens to its ruler and its place.
    let line = "#holds .reading:first-child details";
    press_on(&page, &format!("{line} > summary"), Key::Space);
    page.browser.wait_for("what lies behind the line", || {
        opened(line) && page.browser.shows(&format!("{line} .facts"))
    });

    // The settings open, and the look for bright sun is chosen there.
    press_on(&page, ".settings > summary", Key::Enter);
    page.browser.wait_for("the settings", || page.browser.shows("#sun"));
    press_on(&page, "#sun", Key::Space);
    assert_eq!(page.browser.run("return document.getElementById('sun').checked"), true);
    assert!(opened(".settings"), "the settings close under the hand");

    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("the tick after a reload", || {
        page.browser
            .run_with("return document.querySelector(arguments[0])?.checked", &[json!(tick)])
            == true
    });
}

/// What the picture of the months shows is said in words.
#[test]
fn the_picture_of_the_months_says_every_job_on_it() {
    let page = Page::open("person-months");
    page.sample(HUNGRY);
    page.wait_for_answer();
    page.browser.wait_for("the picture", || page.browser.shows("#months g.busy"));
    let (role, said) = (
        page.browser.run("return document.getElementById('months').getAttribute('role')"),
        page.browser.run("return document.getElementById('months').getAttribute('aria-label')"),
    );
    assert_eq!(role, "img");
    let said = said.as_str().unwrap_or_default();
    let busy = page.browser.run("return document.querySelectorAll('#months g.busy').length");
    assert_eq!(busy, said.split(". ").count(), "months with jobs, and months said: {said}");
    let month = said.split(':').next().unwrap_or_default();
    assert!(month.len() > 2 && said.contains(": "), "{said}");
}
