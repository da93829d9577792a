//! The browser is ended with no warning, again and again: while something is typed, and while
//! something is saved. `cargo test -p emberloam-tests --features browser --test browser kill::`

use std::time::{Duration, Instant};

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, Page};
use emberloam_tests::site::Site;
use serde_json::{Value, json};

use crate::shelf::{READ, fill, told, unfold};
use crate::undo::open_earlier;

const ROUNDS: usize = 12;
/// What may be lost of what was typed.
const MAY_BE_LOST: Duration = Duration::from_secs(1);

/// A report that stays the same one whatever follows.
const HEAD: &str = "Method: Olsen\n";
const FIRST: &str = "Method: Olsen\npH 6.4\nPhosphorus 18 ppm\n";

/// Ends the browser and opens the page in a new one with the same profile.
fn end_and_begin_again(page: Page, name: &str) -> Page {
    let Page { browser, site } = page;
    let browser = Browser::start_in(browser.kill(), name, &[]);
    let page = Page { browser, site };
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page
}

#[test]
fn at_most_a_second_of_typing_is_lost() {
    let mut page = Page::open_from("kill-typing", Site::start());
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.wait_for("the later parts", || page.browser.has("#shelf"));
    let mut lost = Vec::new();
    for round in 0..ROUNDS {
        page.browser.run(
            "const box = document.querySelector('#report-text');
            box.focus();
            box.setSelectionRange(box.value.length, box.value.length)",
        );
        let begun = Instant::now();
        let mut typed = vec![(begun, page.report())];
        // Each time a little longer, so that the end meets every moment of the keeping.
        let until = Duration::from_millis(1200 + 170 * round as u64);
        while begun.elapsed() < until {
            let next = format!("{}", typed.len() % 10);
            page.browser.insert(&next);
            let text = typed[typed.len() - 1].1.clone() + &next;
            typed.push((Instant::now(), text));
        }
        let ended = Instant::now();
        page = end_and_begin_again(page, "kill-typing");
        if page.report().is_empty() {
            page.browser.wait_for("the way back", || page.browser.shows("#take-back"));
            page.browser.click("#take-back");
            page.browser.wait_for("a report", || !page.report().is_empty());
        }
        page.wait_for_answer();
        let found = page.report();
        let all = &typed[typed.len() - 1].1;
        assert!(all.starts_with(&found), "round {round}: something else is there: {found}");
        let when = typed.iter().find(|(_, text)| *text == found).map(|(when, _)| *when);
        let when = when.unwrap_or_else(|| panic!("round {round}: nothing of it was kept"));
        let next = typed.iter().find(|(at, _)| *at > when).map_or(ended, |(at, _)| *at);
        lost.push(ended - next);
        assert!(ended - next <= MAY_BE_LOST, "round {round}: {:?} are lost", ended - next);
    }
    println!("lost: {lost:?}");
}

/// Reads the earlier states past the page.
const EARLIER: &str =
    "return indexedDB.databases().then((all) => new Promise((resolve, reject) => {
    if (!all.some(({ name }) => name === 'emberloam-earlier')) return resolve([]);
    const open = indexedDB.open('emberloam-earlier');
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
        const all = open.result.transaction('earlier').objectStore('earlier').getAll();
        all.onsuccess = () => { open.result.close(); resolve(all.result); };
    };
}))";

#[test]
fn two_tabs_come_back_after_the_end() {
    let page = Page::open_from("kill-tabs", Site::start());
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.browser.wait_for("the later parts", || page.browser.has("#shelf"));
    page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.browser.wait_for("the later parts", || page.browser.has("#shelf"));
    let other = "Method: Olsen\npH 7.2\nPhosphorus 6 mg/kg\n";
    page.paste(other);
    page.wait_for_answer();
    page.browser.wait_for("both to be kept", || {
        let all = page.browser.run(EARLIER).to_string();
        all.contains("Olsen") && all.contains("Mehlich-3")
    });
    let page = end_and_begin_again(page, "kill-tabs");
    page.browser.wait_for("the later parts", || page.browser.has("#shelf"));
    if page.report().is_empty() {
        page.browser.wait_for("the way back", || page.browser.shows("#take-back"));
        page.browser.click("#take-back");
    }
    page.browser.wait_for("the one of the last tab", || page.report() == other);
    open_earlier(&page, "Soil test, back garden");
    page.browser.wait_for("the one of the first tab", || page.report() == A_SURPLUS);
}

#[test]
fn a_save_that_is_cut_off_leaves_the_old_one_or_the_new_one_whole() {
    let mut page = Page::open_from("kill-save", Site::start());
    page.paste(FIRST);
    page.wait_for_answer();
    unfold(&page, "#shelf");
    fill(&page, "#shelf-name", "Bed");
    page.browser.click("#shelf-save");
    page.browser.wait_for("the save", || told(&page).contains("Saved"));
    let mut saved = FIRST.to_owned();
    for round in 0..ROUNDS {
        let line = format!("pH 6.{round}\nPhosphorus 3{round} ppm\n");
        page.put(&format!("{} + {}.repeat(1500)", json!(HEAD), json!(line)));
        let new = HEAD.to_owned() + &line.repeat(1500);
        page.browser.wait_for("it to be read", || !page.browser.shows("#work"));
        page.browser.run("document.querySelector('#shelf-save').click()");
        std::thread::sleep(Duration::from_millis(7 * round as u64));
        page = end_and_begin_again(page, "kill-save");
        let all = page.browser.run(READ);
        let all: Vec<Value> = all
            .as_array()
            .into_iter()
            .flatten()
            .map(|json| serde_json::from_str(json.as_str().unwrap()).expect("whole JSON"))
            .collect();
        assert_eq!(all.len(), 1, "round {round}");
        let text = all[0]["text"].as_str().unwrap();
        assert!(text == saved || text == new, "round {round}: {} bytes", text.len());
        saved = text.to_owned();
        unfold(&page, "#shelf");
        page.browser.wait_for("the entry", || page.browser.shows("#shelf-list .entry"));
        page.browser.click("#shelf-list [aria-label='Open: “Bed”']");
        page.browser.wait_for("the open one", || page.browser.shows("#shelf-save-new"));
    }
}
