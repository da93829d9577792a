//! Measures the page as a person meets it, and prints a table:
//!
//! `cargo run -- build && cargo run -q -p emberloam-tests --features browser --bin page_measures [PICTURES]`
//!
//! On a phone of 390 by 844 points, with the sample of a hungry sand, which needs the most.
//! With a folder it also leaves pictures of each phone screen there.

use std::fs;
use std::path::PathBuf;

use emberloam_tests::page::{HUNGRY, Page, SURPLUS};
use serde_json::{Value, json};

/// A phone's screen, points.
const PHONE: (u32, u32) = (390, 844);

/// What the page shows within the first screen from the headline's layer on.
const WORDS: &str = "
    const top = document.getElementById('answer').getBoundingClientRect().top;
    const seen = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
        const node = walk.currentNode;
        if (!node.textContent.trim() || node.parentElement.closest('.sr-only, script, style')) continue;
        if (!node.parentElement.checkVisibility({ visibilityProperty: true })) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const box = range.getBoundingClientRect();
        if (box.width < 2 || box.bottom <= top || box.top >= top + innerHeight) continue;
        seen.push(node.textContent);
    }
    return seen.join(' ');";

/// Everything that can be reached by the keyboard now, with its name.
const STOPS: &str = "
    const all = document.querySelectorAll(
        'a[href], button, input, select, textarea, summary, [tabindex=\"0\"]');
    const radios = new Set();
    return [...all]
        .filter((e) => !e.disabled && e.checkVisibility({ visibilityProperty: true }))
        .filter((e) => {
            if (e.type !== 'radio') return true;
            const first = !radios.has(e.name);
            radios.add(e.name);
            return first;
        })
        .map((e) => {
            const label = e.labels?.[0]?.innerText ?? '';
            return (e.getAttribute('aria-label') || label || e.innerText || e.id || e.tagName).trim();
        });";

fn main() {
    let pictures = std::env::args().nth(1).map(PathBuf::from);
    println!("{:<64}{:>10}{:>12}", "measured", "is", "must be");
    for (name, sample) in [("rich garden", SURPLUS), ("hungry sand", HUNGRY)] {
        let page = Page::open("page measures");
        page.browser.resize(PHONE.0, PHONE.1);
        page.browser.run_with("document.querySelector(arguments[0]).click()", &[json!(sample)]);
        page.wait_for_answer();
        std::thread::sleep(std::time::Duration::from_secs(2));
        let high = number(&page.browser.run("return document.documentElement.scrollHeight"));
        row(
            &format!("phone screens until something is opened, {name}"),
            &format!("{:.1}", high / f64::from(PHONE.1)),
            "6",
        );
        page.browser.run("document.getElementById('answer').scrollIntoView()");
        let seen = page.browser.run(WORDS);
        let seen = seen.as_str().unwrap_or_default();
        let words =
            seen.split_whitespace().filter(|w| w.chars().any(char::is_alphanumeric)).count();
        row(&format!("words on the answer's first screen, {name}"), &words.to_string(), "60");
        let ranges = seen.split('(').skip(1).filter(|rest| {
            rest.split(')').next().is_some_and(|in_brackets| {
                in_brackets.contains('–') && in_brackets.contains(|c: char| c.is_ascii_digit())
            })
        });
        row("bracketed ranges there", &ranges.count().to_string(), "0");
        let stops = page.browser.run(STOPS);
        let stops: Vec<&str> =
            stops.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        row(&format!("keyboard stops in all, {name}"), &stops.len().to_string(), "60");
        let mut twice: Vec<&str> = stops.clone();
        twice.sort_unstable();
        let same: Vec<&str> =
            twice.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| pair[0]).collect();
        row("controls with the name of another", &same.len().to_string(), "0");
        for name in same {
            println!("    {name:?}");
        }
        let outline = page.browser.run(
            "return [...document.querySelectorAll('h1, h2, h3, h4, main, header, nav, section[aria-label], section[aria-labelledby]')]
                .filter((e) => e.checkVisibility()).length",
        );
        row("headings and landmarks", &outline.to_string(), "40");
        if let Some(folder) = &pictures {
            leave_pictures(&page, folder, name, high);
        }
    }
}

fn row(what: &str, is: &str, must: &str) {
    println!("{what:<64}{is:>10}{must:>12}");
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_default()
}

fn leave_pictures(page: &Page, folder: &std::path::Path, name: &str, high: f64) {
    fs::create_dir_all(folder).expect("the folder can be made");
    page.browser.devtools("Emulation.setScrollbarsHidden", &json!({ "hidden": true }));
    let screens = (high / f64::from(PHONE.1)).ceil() as u32;
    for screen in 0..screens {
        page.browser.run_with(
            "document.documentElement.style.scrollBehavior = 'auto'; scrollTo(0, arguments[0])",
            &[json!(screen * PHONE.1)],
        );
        let path = folder.join(format!("{}-{screen}.png", name.replace(' ', "-")));
        fs::write(path, page.browser.picture()).expect("the picture can be written");
    }
}
