//! Saved reports: kept in the browser's database, found again, never lost.

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, Page};
use emberloam_tests::project;
use serde_json::{Value, json};

/// Invented, and nothing like the other one.
const ANOTHER: &str = "Method: Olsen\npH 7.2\nPhosphorus 6 mg/kg\nPotassium 90 mg/kg\n";

/// Reads the database past the page: ids and JSON.
pub const READ: &str = "return new Promise((resolve, reject) => {
    const open = indexedDB.open('emberloam');
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
        const store = open.result.transaction('shelf').objectStore('shelf');
        const all = store.getAll();
        all.onsuccess = () => { open.result.close(); resolve(all.result); };
    };
})";

/// Writes a text under an id into the database, past the page.
pub const WRITE: &str = "const [id, text, version] = arguments;
return new Promise((resolve, reject) => {
    const open = indexedDB.open('emberloam', version);
    open.onerror = () => reject(open.error);
    open.onupgradeneeded = () => {
        if (!open.result.objectStoreNames.contains('shelf')) open.result.createObjectStore('shelf');
    };
    open.onsuccess = () => {
        const store = open.result.transaction('shelf', 'readwrite').objectStore('shelf');
        store.put(text, id);
        store.transaction.oncomplete = () => { open.result.close(); resolve(true); };
    };
})";

fn kept(browser: &Browser) -> Vec<Value> {
    let all = browser.run(READ);
    let texts = all.as_array().into_iter().flatten().filter_map(Value::as_str);
    texts.map(|text| serde_json::from_str(text).expect("whole JSON")).collect()
}

pub fn told(page: &Page) -> String {
    page.browser.text("#shelf-told")
}

fn names(page: &Page) -> Vec<String> {
    let names = page.browser.run(
        "return [...document.querySelectorAll('#shelf-list .entry')].map((e) => e.dataset.name)",
    );
    names.as_array().into_iter().flatten().filter_map(|n| n.as_str().map(str::to_owned)).collect()
}

pub fn wait_for_names(page: &Page, expected: &[&str]) {
    page.browser.wait_for(&format!("{expected:?} on the shelf"), || names(page) == expected);
}

pub fn unfold(page: &Page, id: &str) {
    page.browser.wait_for(id, || page.browser.has(id));
    page.browser.run_with("document.querySelector(arguments[0]).open = true", &[json!(id)]);
}

pub fn fill(page: &Page, field: &str, text: &str) {
    page.browser.wait_for(field, || page.browser.shows(field));
    page.browser.run_with(
        "const field = document.querySelector(arguments[0]);
        field.value = arguments[1];
        field.dispatchEvent(new InputEvent('input', { bubbles: true }))",
        &[json!(field), json!(text)],
    );
}

/// Saves what is on the page.
pub fn save_as(page: &Page, name: &str, place: &str, date: &str) {
    unfold(page, "#shelf");
    page.browser.wait_for("the form filled in", || {
        page.browser.run("return document.querySelector('#shelf-date').value") != ""
    });
    fill(page, "#shelf-name", name);
    fill(page, "#shelf-place", place);
    fill(page, "#shelf-date", date);
    page.browser.click("#shelf-save");
    page.browser.wait_for("the save", || told(page).contains(name));
}

/// Saves what is on the page as an entry of its own.
fn save_another(page: &Page) {
    let new = "#shelf-save-new";
    page.browser.click(if page.browser.shows(new) { new } else { "#shelf-save" });
}

/// Presses a button of an entry.
fn press(page: &Page, word: &str, name: &str) {
    page.browser.click(&format!("#shelf-list [aria-label='{word}: “{name}”']"));
}

#[test]
fn a_report_is_saved_found_renamed_copied_and_opened_after_a_reload() {
    let page = Page::with_report("shelf-save");
    page.answer("Area of the bed", "12");
    save_as(&page, "Back garden 2025", "Back garden", "2025-03-01");
    assert!(page.browser.text("#announce").contains("Saved"), "the save is not said aloud");
    page.paste(ANOTHER);
    page.browser.wait_for("the form for another report", || {
        page.browser.run("return document.querySelector('#shelf-date').value") != "2025-03-01"
    });
    save_as(&page, "Back garden, late", "Back garden", "2025-03-20");
    page.browser.wait_for("two", || names(&page).len() == 2);
    page.browser.reload();
    page.wait_until_started();
    unfold(&page, "#shelf");
    page.browser.wait_for("two after the reload", || names(&page).len() == 2);

    fill(&page, "#shelf-find", "mehlich");
    wait_for_names(&page, &["Back garden 2025"]);
    fill(&page, "#shelf-find", "2025-03 BACK");
    page.browser.wait_for("both", || names(&page).len() == 2);
    fill(&page, "#shelf-find", "olsen");
    page.browser.wait_for("one", || names(&page).len() == 1);
    fill(&page, "#shelf-find", "no such thing");
    page.browser.wait_for("none", || names(&page).is_empty());
    fill(&page, "#shelf-find", "mehlich");
    wait_for_names(&page, &["Back garden 2025"]);

    press(&page, "Rename", "Back garden 2025");
    fill(&page, "#shelf-new-name", "Old bed");
    page.browser.click("#shelf-rename");
    wait_for_names(&page, &["Old bed"]);
    press(&page, "Open", "Old bed");
    page.browser.wait_for("the report", || page.report() == A_SURPLUS);
    page.open_all_answers();
    let area = page.browser.run(
        "return [...document.querySelectorAll('#bed label.field')]
            .find((f) => f.firstElementChild.textContent === 'Area of the bed')
            .querySelector('input').value",
    );
    assert_eq!(area, "12");
    // What was there before can be had back.
    page.browser.click("#take-back");
    page.browser.wait_for("the other report", || page.report() == ANOTHER);

    press(&page, "Make a copy", "Old bed");
    page.browser.wait_for("a copy", || names(&page).len() == 2);
    fill(&page, "#shelf-find", "");
    page.browser.wait_for("three", || names(&page).len() == 3);
    press(&page, "Delete", "Old bed");
    page.browser.wait_for("one less", || names(&page).len() == 2);
    page.browser.click("#shelf-put-back");
    page.browser.wait_for("it back", || names(&page).contains(&"Old bed".to_owned()));
    assert_eq!(kept(&page.browser).len(), 3);
}

#[test]
fn two_tabs_never_overwrite_each_other() {
    let page = Page::with_report("shelf-tabs");
    save_as(&page, "Shared bed", "", "2025-03-01");
    let (first, second) = page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    unfold(&page, "#shelf");
    wait_for_names(&page, &["Shared bed"]);
    press(&page, "Open", "Shared bed");
    page.paste(&A_SURPLUS.replace("212", "99"));
    page.browser.click("#shelf-save");
    page.browser.wait_for("the save in the second tab", || told(&page).contains("Saved"));

    page.browser.turn_to(&first);
    page.paste(&A_SURPLUS.replace("212", "55"));
    page.browser.click("#shelf-save");
    page.browser.wait_for("word of both", || told(&page).contains("Both are kept"));
    wait_for_names(&page, &["Shared bed (copy)", "Shared bed"]);
    let all = kept(&page.browser);
    let holds = |text: &str| all.iter().any(|e| e["text"].as_str().unwrap().contains(text));
    assert!(holds("99 ppm") && holds("55 ppm"), "{all:?}");
    // The other tab sees it without being asked.
    page.browser.turn_to(&second);
    page.browser.wait_for("both in the second tab", || names(&page).len() == 2);
}

#[test]
fn a_reload_keeps_what_is_open_whatever_another_tab_does() {
    let page = Page::with_report("shelf-reload");
    save_as(&page, "Mine", "", "2025-03-01");
    let (first, second) = page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.paste(ANOTHER);
    page.browser.wait_for("what is kept to be the other one", || {
        page.browser.run("return JSON.stringify(localStorage)").to_string().contains("Olsen")
    });
    page.browser.turn_to(&first);
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("its own report", || page.report() == A_SURPLUS);
    unfold(&page, "#shelf");
    wait_for_names(&page, &["Mine"]);
    page.browser.wait_for("the open one", || page.browser.shows("#shelf-save-new"));
    // One that never opened it saves an entry of its own.
    page.browser.turn_to(&second);
    unfold(&page, "#shelf");
    wait_for_names(&page, &["Mine"]);
    assert!(!page.browser.shows("#shelf-save-new"), "another report stands for the open one");
    page.browser.click("#shelf-save");
    page.browser.wait_for("a second entry", || names(&page).len() == 2);
}

#[test]
fn full_storage_is_told_and_loses_nothing() {
    let page = Page::with_report("shelf-full");
    let origin = page.site.url.trim_end_matches('/').to_owned();
    let quota = |size: Option<u64>| {
        let mut wish = json!({ "origin": origin });
        if let Some(size) = size {
            wish["quotaSize"] = json!(size);
        }
        page.browser.devtools("Storage.overrideQuotaForOrigin", &wish);
    };
    save_as(&page, "Small", "", "2025-03-01");
    quota(Some(1));
    page.put("'Method: Olsen\\nPhosphorus 30 ppm\\n'.repeat(8000)");
    page.wait_for_answer();
    // The browser remembers for half a minute how much room it saw, and so long it still saves.
    let refused = (0..60).any(|_| {
        save_another(&page);
        std::thread::sleep(std::time::Duration::from_secs(1));
        told(&page).contains("no room left")
    });
    assert!(refused, "the page says: {}", told(&page));
    let small = kept(&page.browser).into_iter().filter(|entry| entry["name"] == "Small");
    assert_eq!(small.map(|entry| entry["text"].clone()).collect::<Vec<_>>(), [json!(A_SURPLUS)]);
    assert!(page.still_holds_what_was_put());
    let before = names(&page).len();
    quota(None);
    let saved = (0..60).any(|_| {
        save_another(&page);
        std::thread::sleep(std::time::Duration::from_secs(1));
        names(&page).len() > before
    });
    assert!(saved, "with room again the page says: {}", told(&page));
}

#[test]
fn a_save_that_breaks_off_leaves_the_old_one_whole() {
    let page = Page::with_report("shelf-abort");
    save_as(&page, "Bed", "", "2025-03-01");
    page.browser.run(
        "const put = IDBObjectStore.prototype.put;
        window.__put_as_it_was = put;
        IDBObjectStore.prototype.put = function (...all) {
            const asked = put.apply(this, all);
            this.transaction.abort();
            return asked;
        }",
    );
    page.paste(&A_SURPLUS.replace("212", "99"));
    page.browser.click("#shelf-save");
    page.browser.wait_for("word of it", || told(&page).contains("did not save"));
    let all = kept(&page.browser);
    assert_eq!((all.len(), &all[0]["text"]), (1, &json!(A_SURPLUS)));
    page.browser.run("IDBObjectStore.prototype.put = window.__put_as_it_was");

    // Reloaded while it saves: the old one or the new one, whole.
    for round in 0..4 {
        page.put(&format!("'pH 6.6\\nPhosphorus 3{round} ppm\\n'.repeat(20000)"));
        page.browser.run("document.querySelector('#shelf-save').click(); location.reload()");
        page.wait_until_started();
        let all = kept(&page.browser);
        assert_eq!(all.len(), 1, "round {round}");
        let text = all[0]["text"].as_str().unwrap();
        assert!(text == A_SURPLUS || text.lines().count() == 40_000, "{} bytes", text.len());
        unfold(&page, "#shelf");
        wait_for_names(&page, &["Bed"]);
        press(&page, "Open", "Bed");
        page.browser.wait_for("the open one", || page.browser.shows("#shelf-save-new"));
    }
}

#[test]
fn what_a_newer_version_saved_is_named_and_left_alone() {
    let page = Page::with_report("shelf-newer");
    let newer = r#"{"emberloam-entry":9,"id":"n","name":"From tomorrow","moons":[1]}"#;
    page.browser.run_with(WRITE, &[json!("n"), json!(newer), json!(1)]);
    page.browser.run_with(WRITE, &[json!("d"), json!("{broken"), json!(1)]);
    save_as(&page, "Of today", "", "2025-03-01");
    wait_for_names(&page, &["Of today"]);
    let list = page.browser.text("#shelf-list");
    assert!(list.contains("From tomorrow") && list.contains("newer version"), "{list}");
    assert!(list.contains("can't be read"), "{list}");
    let all = page.browser.run(READ).to_string();
    assert!(all.contains("moons") && all.contains("{broken"), "{all}");

    // The database itself is of a newer version.
    page.browser.run_with(WRITE, &[json!("n"), json!(newer), json!(7)]);
    page.browser.reload();
    page.wait_until_started();
    unfold(&page, "#shelf");
    page.browser.wait_for("word of it", || page.browser.shows("#shelf-shut"));
    assert!(page.browser.text("#shelf-shut").contains("newer version"));
    assert!(page.browser.run(READ).to_string().contains("Of today"));
    assert_eq!(page.report(), A_SURPLUS);
}

#[test]
fn a_browser_without_a_database_is_told_so() {
    let page = Page::open("shelf-none");
    let without = "Object.defineProperty(window, 'indexedDB', { value: undefined })";
    page.browser.devtools("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": without }));
    page.browser.reload();
    page.wait_until_started();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    unfold(&page, "#shelf");
    page.browser.wait_for("word of it", || page.browser.shows("#shelf-shut"));
    assert!(page.browser.text("#shelf-shut").contains("private window"));
    assert!(!page.browser.shows("#shelf-save"));
}

#[test]
fn the_whole_shelf_goes_out_and_comes_in_elsewhere() {
    let page = Page::with_report("shelf-out");
    save_as(&page, "One", "Back", "2025-03-01");
    page.paste(ANOTHER);
    page.browser.wait_for("a form of its own", || !page.browser.shows("#shelf-save-new"));
    fill(&page, "#shelf-name", "Two");
    save_another(&page);
    wait_for_names(&page, &["Two", "One"]);
    page.browser.run("addEventListener('emberloam:save', (e) => { window.__saved = e.detail })");
    page.browser.click("#shelf-out");
    page.browser.wait_for("the file", || page.browser.run("return !!window.__saved") == true);
    let saved = page.browser.run("return window.__saved");
    let saved = saved.as_str().unwrap().to_owned();
    let (head, file) = saved.split_once("\napplication/json\n").unwrap();
    assert_eq!(head, "emberloam-shelf.json");

    let folder = project().join("target/browser");
    let path = |name: &str, text: &str| {
        let path = folder.join(name);
        std::fs::write(&path, text).unwrap();
        path.display().to_string()
    };
    let other = Page::open("shelf-in");
    unfold(&other, "#shelf");
    let bring_in = |file: &str, word: &str| {
        other.browser.type_into("#shelf-in", file);
        other.browser.wait_for(word, || told(&other).contains(word));
    };
    bring_in(&path("shelf-none.json", "{\"a\": [1, 2"), "damaged");
    bring_in(&path("shelf-text.json", r#"{"Events":[]}"#), "no file of saved reports");
    bring_in(&path("shelf-new.json", r#"{"emberloam-shelf":9}"#), "newer version");
    assert!(names(&other).is_empty());
    // Cut short within the second one: the first comes in, the rest is shown and can be saved.
    bring_in(&path("shelf-cut.json", &file[..file.len() - 120]), "Brought in 1 report.");
    assert!(told(&other).contains("number 2"), "{}", told(&other));
    other.browser.wait_for("the rest", || other.browser.shows("#shelf-unread textarea"));
    let raw = other.browser.run("return document.querySelector('#shelf-unread textarea').value");
    assert!(
        file.contains(raw.as_str().unwrap()) && raw.to_string().contains("emberloam-entry"),
        "{raw}"
    );
    other.browser.run("addEventListener('emberloam:save', (e) => { window.__saved = e.detail })");
    other.browser.click("#shelf-unread-save");
    let saved = other.browser.run("return window.__saved").to_string();
    assert!(saved.contains("not-read.txt") && saved.contains("emberloam-entry"), "{saved}");
    bring_in(&path("shelf.json", file), "Here already: 1 report");
    wait_for_names(&other, &["Two", "One"]);
    bring_in(&path("shelf.json", file), "Here already: 2 reports");
    bring_in(&path("shelf-other.json", &file.replace("212", "77")), "both are kept");
    other.browser.wait_for("both", || names(&other).len() == 3);
    press(&other, "Open", "One");
    other.browser.wait_for("the report", || other.report() == A_SURPLUS);
}

#[test]
fn a_bed_is_followed_over_the_years_each_extractant_by_itself() {
    let page = Page::with_report("shelf-years");
    save_as(&page, "2023", "Back bed", "2023-03-01");
    for (year, text) in [("2024", A_SURPLUS.replace("212", "150")), ("2025", ANOTHER.to_owned())] {
        page.paste(&text);
        page.browser.wait_for("an answer", || page.report() == text);
        fill(&page, "#shelf-name", year);
        fill(&page, "#shelf-place", "Back bed");
        fill(&page, "#shelf-date", &format!("{year}-03-01"));
        save_another(&page);
        page.browser.wait_for("the save", || names(&page).contains(&year.to_owned()));
    }
    wait_for_names(&page, &["2025", "2024", "2023"]);
    page.browser.click("#years > summary");
    page.browser.wait_for("the charts", || page.browser.has("#years .trend canvas"));
    assert_eq!(page.browser.text("#years-place"), "Back bed");
    page.browser.run(
        "const select = document.querySelector('#years-property');
        select.value = 'phosphorus';
        select.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    page.browser.wait_for("two methods", || {
        page.browser.run("return document.querySelectorAll('#years .trend').length") == 2
    });
    let heads = page
        .browser
        .run("return [...document.querySelectorAll('#years .trend')].map((t) => t.innerText)")
        .to_string();
    assert!(heads.contains("Mehlich-3") && heads.contains("Olsen"), "{heads}");
    assert!(heads.contains("1 March 2023") && heads.contains("150"), "{heads}");
}

#[test]
fn what_can_not_be_read_is_saved_as_a_file_deleted_and_put_back() {
    let page = Page::with_report("shelf-damaged");
    save_as(&page, "Bed", "", "2025-03-01");
    page.browser.run_with(WRITE, &[json!("d"), json!("{broken"), json!(1)]);
    page.browser.reload();
    page.wait_until_started();
    unfold(&page, "#shelf");
    page.browser.wait_for("it", || page.browser.shows(".closed-entry"));
    page.browser.run("addEventListener('emberloam:save', (e) => { window.__saved = e.detail })");
    // The file of all holds it too.
    page.browser.click("#shelf-out");
    page.browser.wait_for("the file", || {
        page.browser.run("return window.__saved ?? ''").to_string().contains("{broken")
    });
    page.browser.click(".closed-save");
    let saved = page.browser.run("return window.__saved").to_string();
    assert!(saved.ends_with("{broken\""), "{saved}");
    page.browser.click(".closed-delete");
    page.browser.wait_for("it gone", || !page.browser.shows(".closed-entry"));
    page.browser.click("#shelf-put-back");
    page.browser.wait_for("it back", || page.browser.shows(".closed-entry"));
    assert_eq!(page.browser.run(READ).as_array().map(Vec::len), Some(2));
}

#[test]
fn what_was_put_aside_is_seen_saved_and_deleted() {
    let page = Page::open("put-aside");
    page.browser.run("localStorage.setItem('emberloam:kept', '{\"text\":\"pH 6.1 of old')");
    page.browser.reload();
    page.wait_until_started();
    page.browser.wait_for("word of it", || page.browser.shows("#keeping-note"));
    page.browser.wait_for("its place", || page.browser.shows("#earlier"));
    page.unfold("#earlier");
    let shown = page.browser.run("return document.querySelector('#put-aside textarea').value");
    assert!(shown.to_string().contains("pH 6.1 of old"), "{shown}");
    page.browser.run("addEventListener('emberloam:save', (e) => { window.__saved = e.detail })");
    page.browser.click("#put-aside-save");
    assert!(page.browser.run("return window.__saved").to_string().contains("pH 6.1 of old"));
    page.browser.click("#put-aside-delete");
    page.browser.wait_for("it gone", || !page.browser.shows("#earlier"));
    assert_eq!(page.browser.run("return localStorage.getItem('emberloam:set-aside')"), Value::Null);
}

/// All that this site has in the browser.
const LEFT: &str = "return Promise.all([indexedDB.databases(), caches.keys(),
    navigator.serviceWorker.getRegistrations()]).then(([bases, copies, workers]) => JSON.stringify([
        bases.length, copies, workers.length, Object.keys(localStorage), Object.keys(sessionStorage)]))";

#[test]
fn everything_is_erased_in_every_tab() {
    let page = Page::with_report("erase-tabs");
    page.wait_until_offline_ready();
    save_as(&page, "Bed", "", "2025-03-01");
    let (first, second) = page.browser.new_tab();
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page.paste(ANOTHER);
    page.wait_for_answer();
    // A shared file that was never taken, and a trial.
    page.browser.run(
        "localStorage.setItem('emberloam:trial', JSON.stringify({ text: 'Treatment,pH' }));
        return caches.open('shared-with-emberloam').then((c) => c.put('shared/0', new Response('x')))",
    );
    page.browser.turn_to(&first);
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-yes");
    page.browser.wait_for("word of it", || told(&page).contains("All is erased"));
    assert!(told(&page).contains("history"), "what can't be erased is not said: {}", told(&page));
    assert_eq!(page.report(), "");
    assert!(!page.browser.shows("#take-back"));
    page.browser.turn_to(&second);
    page.browser.wait_for("the end of the other tab", || {
        page.browser.text("body").contains("erased in another tab")
    });
    for tab in [&second, &first] {
        page.browser.turn_to(tab);
        page.browser.wait_for("nothing", || page.browser.run(LEFT) == "[0,[],0,[],[]]");
    }
    std::thread::sleep(std::time::Duration::from_secs(1));
    assert_eq!(page.browser.run(LEFT), "[0,[],0,[],[]]", "something came back");
}

#[test]
fn everything_is_erased_where_the_database_can_not_be_opened() {
    let page = Page::with_report("erase-newer");
    page.browser.wait_for("the earlier states", || {
        page.browser.run("return indexedDB.databases().then((all) => all.length)") != 0
    });
    page.browser.run_with(WRITE, &[json!("n"), json!("{}"), json!(7)]);
    unfold(&page, "#shelf");
    page.browser.wait_for("word of it", || page.browser.shows("#shelf-shut"));
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-yes");
    page.browser.wait_for("word of it", || told(&page).contains("All is erased"));
    page.browser.wait_for("nothing", || page.browser.run(LEFT) == "[0,[],0,[],[]]");
}

#[test]
fn all_is_erased_only_after_a_yes() {
    let page = Page::with_report("shelf-erase");
    save_as(&page, "Bed", "", "2025-03-01");
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-not");
    wait_for_names(&page, &["Bed"]);
    page.browser.click("#shelf-erase");
    page.browser.click("#shelf-erase-yes");
    page.browser.wait_for("an empty page", || page.report().is_empty());
    page.browser.wait_for("no database", || {
        page.browser.run("return indexedDB.databases().then((all) => all.length)") == 0
    });
    assert_eq!(page.browser.run("return JSON.stringify(localStorage)"), "{}");
    assert_eq!(page.browser.run("return JSON.stringify(sessionStorage)"), "{}");
}
