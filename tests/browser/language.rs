//! The page in another language.

use std::collections::BTreeSet;

use emberloam_engine::sources::all_sources;
use emberloam_language::Catalogue;
use emberloam_tests::driver::Browser;
use emberloam_tests::page::{
    A_SURPLUS, ANSWER, BROKEN, ERASE, FILE, HUNGRY, METRIC, Page, REPORT, SURPLUS, US_MEASURES,
    WAITING,
};
use emberloam_tests::project;
use emberloam_tests::site::Site;
use serde_json::json;

use crate::access::assert_accessible;

fn spanish() -> Catalogue {
    let po = std::fs::read_to_string(project().join("public/words/es.po")).expect("the catalogue");
    Catalogue::read(&po, ',').expect("it can be read")
}

/// Every text and every name that a part of the page shows or says, but what the person
/// typed and the titles of publications.
fn texts(page: &Page, part: &str) -> Vec<String> {
    let all = page.browser.run_with(
        "const untouched = 'textarea, script, style, noscript, [translate=no]';
        const found = new Set();
        const walk = (node) => {
            if (node.nodeType === Node.TEXT_NODE) found.add(node.data);
            else if (node.nodeType === Node.ELEMENT_NODE && !node.matches(untouched)) {
                for (const name of ['aria-label', 'title', 'placeholder', 'alt'])
                    if (node.hasAttribute(name)) found.add(node.getAttribute(name));
                node.childNodes.forEach(walk);
            }
        };
        walk(document.querySelector(arguments[0]));
        return [...found].filter((text) => /\\p{L}/u.test(text))",
        &[json!(part)],
    );
    serde_json::from_value(all).expect("a list of texts")
}

/// Opens all, and waits until nothing more comes.
#[track_caller]
fn show_all(page: &Page) {
    page.wait_for_answer();
    page.open_all_answers();
    for _ in 0..3 {
        page.unfold_all();
        page.browser.run("return new Promise((done) => setTimeout(done, 250))");
    }
    page.browser.run("dispatchEvent(new Event('beforeprint'))");
}

/// Texts the catalogue doesn't have, without what the report itself says.
fn left(catalogue: &Catalogue, texts: &[String], own: &str) -> Vec<String> {
    let mut titles: Vec<&str> = all_sources()
        .flat_map(|source| [source.title(), source.place()])
        .filter(|title| title.len() > 3)
        .collect();
    // One title may begin another.
    titles.sort_by_key(|title| std::cmp::Reverse(title.len()));
    // What the report itself says, cell by cell, and the words beside its numbers.
    let cells = own.split(['\n', '\t', ',', ':', ';']).map(str::trim);
    let beside = own.split_whitespace().map(|word| word.trim_matches(|c: char| !c.is_alphabetic()));
    let cells: BTreeSet<&str> = cells.chain(beside).collect();
    let mut missing = Vec::new();
    for text in texts {
        let text = titles.iter().fold(text.clone(), |text, title| text.replace(title, "1"));
        let left = catalogue.say(&text).left;
        let left: Vec<_> =
            left.into_iter().filter(|part| !cells.contains(part.trim_matches('.'))).collect();
        if !left.is_empty() {
            missing.push(format!("{text:?}: {left:?}"));
        }
    }
    missing
}

#[test]
fn everything_on_the_page_is_in_the_catalogue() {
    let page = Page::open("language-all");
    let mut all = BTreeSet::new();
    let mut own = String::new();
    for (sample, us) in [(SURPLUS, false), (HUNGRY, true), (METRIC, false), (BROKEN, false)] {
        page.sample(sample);
        if us {
            page.settings();
            page.browser.click(US_MEASURES);
        }
        show_all(&page);
        page.answer("Next planting or sowing", "2031-05-01");
        page.answer("How the bed is worked", "grass");
        show_all(&page);
        all.extend(texts(&page, "html"));
        own += &page.report();
    }
    // What is saved, what came by a link, and what went wrong.
    page.browser.click("#shelf > summary");
    page.browser
        .type_into(FILE, &project().join("tests/screenshots/tour.png").display().to_string());
    page.browser.wait_for("a refusal", || page.browser.text("#trouble").contains("picture"));
    all.extend(texts(&page, "html"));
    assert!(all.len() > 1_000, "only {} texts found", all.len());
    let all: Vec<String> = all.into_iter().collect();
    let missing = left(&spanish(), &all, &own);
    assert!(missing.is_empty(), "{missing:#?}");
}

#[test]
fn a_language_is_chosen_kept_and_left_again() {
    let page = Page::open("language-choice");
    page.sample(SURPLUS);
    show_all(&page);
    let before = texts(&page, ".profile");
    page.speak("es");
    let catalogue = spanish();
    let headline = || page.browser.text("#answer-title");
    let spoken = headline();
    assert!(spoken.contains("biocarbón"), "{spoken}");
    assert!(page.browser.text("#print").contains("Imprimir"));
    // A change is said in it too, and decimals by a comma.
    let english = "What grows there";
    page.answer(&catalogue.say(english).text, &catalogue.say("acid-loving plants").text);
    page.browser.wait_for("another answer", || headline() != spoken);
    assert!(!headline().contains("acid-loving"), "{}", headline());
    page.answer(&catalogue.say(english).text, &catalogue.say("don't know").text);
    page.browser.wait_for("the answer as it was", || headline() == spoken);
    let pages = page.browser.text("main");
    assert!(pages.contains("6,6"), "the pH has no decimal comma");

    page.browser.reload();
    page.wait_until_started();
    page.wait_for_answer();
    page.browser.wait_for("the kept language", || headline() == spoken);

    page.speak("en");
    show_all(&page);
    let after = texts(&page, ".profile");
    let only = |of: &[String], not: &[String]| -> Vec<String> {
        of.iter().filter(|text| !not.contains(text)).cloned().collect()
    };
    assert_eq!(only(&after, &before), Vec::<String>::new());
    assert_eq!(only(&before, &after), Vec::<String>::new());
    assert_eq!(page.browser.console_errors(), Vec::<String>::new());
}

#[test]
fn a_first_visit_is_in_the_browsers_language_and_its_countrys_numbers() {
    let site = Site::start();
    for (tag, pages_tag, ph) in
        [("es-MX", "es", "6.6"), ("es-ES", "es", "6,6"), ("fr-FR", "en", "6.6")]
    {
        let switch = format!("--accept-lang={tag}");
        let browser = Browser::start_with(&format!("language-{tag}"), &[&switch]);
        browser.goto(&site.url);
        browser.wait_for("the field for the report", || {
            !browser.has(WAITING) && browser.shows(REPORT)
        });
        assert_eq!(browser.run("return document.documentElement.lang"), pages_tag, "{tag}");
        assert_eq!(browser.run("return document.getElementById('language').value"), pages_tag);
        browser.click(SURPLUS);
        browser.wait_for("the answer", || browser.shows(ANSWER));
        let is_spanish = browser.text("#answer-title").contains("biocarbón");
        assert_eq!(is_spanish, pages_tag == "es", "{tag}");
        assert!(browser.text("#holds").contains(ph), "{tag}: the pH isn't {ph}");
    }
}

#[test]
fn a_visit_from_the_united_states_begins_in_their_measures() {
    let site = Site::start();
    for (tag, is_us) in [("en-US", true), ("es-US", true), ("en-CA", false)] {
        let switch = format!("--accept-lang={tag}");
        let browser = Browser::start_with(&format!("measures-{tag}"), &[&switch]);
        browser.goto(&site.url);
        browser.wait_for("the field for the report", || {
            !browser.has(WAITING) && browser.shows(REPORT)
        });
        let chosen = browser
            .run_with("return document.querySelector(arguments[0]).checked", &[json!(US_MEASURES)]);
        assert_eq!(chosen, is_us, "{tag}");
        // There is nothing to erase, and nothing to lose, in measures alone.
        assert!(!browser.shows(ERASE), "{tag}");
    }
}

#[test]
fn a_name_that_a_person_gave_stays() {
    const NAME: &str = "#answer .kicker span[translate]";
    let page = Page::open("language-names");
    page.paste("Bed\tpH\tOlsen P ppm\nLawn\t6.4\t9\nBed 1.2\t6.5\t140\n");
    page.wait_for_answer();
    page.speak("es");
    let seen = |css: &str| page.browser.text(css);
    page.browser.wait_for("the form to save", || page.browser.has("#shelf-name"));
    assert!(seen(NAME).ends_with("Lawn"), "{}", seen(NAME));
    page.browser.click(".bed-list li:nth-child(2) label");
    page.browser.wait_for("the other sample", || seen(NAME).ends_with("Bed 1.2"));
    let shown = page.browser.run(
        "return [...document.querySelectorAll('.bed > span:first-of-type, #sample option')]
            .map((name) => name.textContent.trim())",
    );
    assert_eq!(shown, json!(["Lawn", "Bed 1.2", "Lawn", "Bed 1.2"]));
    page.browser.click("#shelf > summary");
    page.browser.clear("#shelf-name");
    page.browser.type_into("#shelf-name", "Compost. Low 1.2");
    page.browser.click("#shelf-save");
    page.browser.wait_for("the saved report", || page.browser.has("#shelf-list .entry"));
    assert_eq!(seen("#shelf-list .entry strong"), "Compost. Low 1.2");
    // A name that the page gave is in its language.
    page.paste("pH 6.4\nPhosphorus (Olsen) 9 ppm\n");
    page.wait_for_answer();
    page.browser.wait_for("a name in Spanish", || {
        ["Muestra 1", "Su bancal"].iter().any(|name| seen(NAME).ends_with(name))
    });
}

#[test]
fn of_two_choices_in_a_row_the_last_one_holds() {
    let page = Page::open("language-twice");
    page.sample(SURPLUS);
    page.wait_for_answer();
    let english = page.browser.text("#answer-title");
    page.browser.wait_for("the choice of language", || page.browser.has("#language option"));
    page.browser.run(
        "const choice = document.getElementById('language');
        for (const tag of ['es', 'en', 'es', 'en']) {
            choice.value = tag;
            choice.dispatchEvent(new Event('change', { bubbles: true }));
        }
        return new Promise((done) => setTimeout(done, 1500))",
    );
    let now = page.browser.run(
        "return [document.documentElement.lang, document.getElementById('language').value,
            localStorage.getItem('emberloam:language')]",
    );
    assert_eq!(now, json!(["en", "en", "en"]));
    assert_eq!(page.browser.text("#answer-title"), english);
}

#[test]
fn a_page_whose_words_do_not_come_begins_in_english() {
    let site = Site::start();
    let browser = Browser::start_with("language-stalled", &["--accept-lang=es"]);
    let stalled = json!({ "patterns": [{ "urlPattern": "*words/es.po*" }] });
    browser.devtools("Fetch.enable", &stalled);
    browser.goto(&site.url);
    browser.wait_for("the field for the report", || !browser.has(WAITING) && browser.shows(REPORT));
    assert_eq!(browser.run("return document.documentElement.lang"), "en");
    assert_eq!(browser.run("return document.getElementById('language').value"), "en");
    browser.click(SURPLUS);
    browser.wait_for("the answer", || browser.shows(ANSWER));
    assert!(browser.text("#answer-title").contains("biochar"));
}

#[test]
fn what_leaves_the_page_is_in_its_language() {
    let page = Page::open("language-files");
    page.browser.run("addEventListener('emberloam:save', ({ detail }) => window.__saved = detail)");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.answer("Next planting or sowing", "2031-05-01");
    page.speak("es");
    page.browser.click("#share > summary");
    page.browser.click("#save-plan");
    let plan = page.browser.run("return window.__saved").as_str().unwrap_or_default().to_owned();
    assert!(plan.contains("Plan para el bancal"), "{plan}");
    let (body, sources) = plan.split_once("\nFuentes\n").expect("a list of sources");
    for word in [" the ", " and ", " of ", "How much"] {
        assert!(!body.contains(word), "the plan says {word:?}: {body}");
    }
    // Publications keep their titles.
    let titles: Vec<&str> = all_sources().map(|source| source.title()).collect();
    let kept = sources.lines().filter_map(|line| line.strip_prefix("- "));
    let astray: Vec<&str> =
        kept.filter(|line| !titles.iter().any(|title| line.starts_with(title))).collect();
    assert_eq!(astray, Vec::<&str>::new());
    page.save_as_files();
    page.browser.click("#save-calendar");
    let calendar =
        page.browser.run("return window.__saved").as_str().unwrap_or_default().to_owned();
    assert!(calendar.contains("BEGIN:VCALENDAR") && calendar.contains("biocarbón"), "{calendar}");
}

#[test]
fn the_language_needs_no_server_once_the_page_is_kept() {
    let mut page = Page::open("language-offline");
    page.wait_until_offline_ready();
    page.speak("es");
    page.browser.wait_for("the language in the copy", || {
        page.browser.run("return caches.match('words/es.po').then((kept) => !!kept)") == true
    });
    page.site.stop();
    page.sample(SURPLUS);
    page.wait_for_answer();
    assert!(page.browser.text("#answer-title").contains("biocarbón"));
    page.browser.reload();
    page.wait_until_started();
    page.browser
        .wait_for("the kept language", || page.browser.text("#answer-title").contains("biocarbón"));
}

#[test]
fn one_file_holds_every_language() {
    let file = project().join("target/emberloam.html");
    let browser = Browser::start_with("language-one-file", &["--accept-lang=es"]);
    browser.goto(&format!("file://{}", file.display()));
    browser.wait_for("the field for the report", || !browser.has(WAITING) && browser.shows(REPORT));
    browser.click(SURPLUS);
    browser.wait_for("the answer", || browser.shows(ANSWER));
    assert!(browser.text("#answer-title").contains("biocarbón"));
    assert_eq!(browser.console_errors(), Vec::<String>::new());
}

#[test]
fn accessible_in_spanish() {
    let page = Page::open("language-axe");
    page.speak("es");
    page.sample(SURPLUS);
    show_all(&page);
    assert_accessible(&page, "in Spanish, all unfolded");
    page.browser.resize(320, 640);
    let wide = page.browser.run("return document.scrollingElement.scrollWidth");
    assert!(wide.as_f64().is_some_and(|wide| wide <= 320.0), "{wide} px wide at 320");
}
