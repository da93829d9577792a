//! Measures the page as a person meets it, and prints two tables: what they see and do, and how
//! long and how much it takes:
//!
//! `cargo run -- build && cargo run -- bare && cargo run -q -p emberloam-tests --features browser --bin page_measures [PICTURES]`
//!
//! On a phone of 390 by 844 points; times on one four times slower, beside the least page that the
//! framework makes, and on a slow phone line (1.6 Mbit/s, 150 ms). With a folder it also leaves
//! pictures of each phone screen there. Lighthouse is asked where it is:
//! `npm install --prefix target/lighthouse --no-save lighthouse@13`.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use emberloam_tests::driver::Browser;
use emberloam_tests::page::{A_SURPLUS, HUNGRY, METRIC, Page, REPORT, SURPLUS};
use emberloam_tests::person::{
    A4, EIGHT_BEDS, LETTER, Person, bags_lime_and_dates, charge_a_hundred_litres,
    eight_plans_and_one_list, one_page_on_paper, outline, pages_of, shared_names, stops,
};
use emberloam_tests::project;
use emberloam_tests::site::Site;
use serde_json::{Value, json};

/// A phone's screen, points.
const PHONE: (u32, u32) = (390, 844);

/// A window of 1280 by 1024 points at 400 %.
const ZOOMED: (u32, u32) = (320, 256);

/// How much slower the phone of the second table is.
const SLOWER: u32 = 4;

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

fn main() {
    let pictures = std::env::args().nth(1).map(PathBuf::from);
    head("what people see and do");
    for (name, sample) in [("rich garden", SURPLUS), ("hungry sand", HUNGRY)] {
        seen(name, sample, pictures.as_deref());
    }
    done();
    println!();
    head(&format!("time and memory, {SLOWER} times slower"));
    for slow_line in [false, true] {
        beside_a_bare_page(slow_line);
    }
    times();
    memory();
    lighthouse();
}

/// When something can be read, when the page works, and which tasks are long: ours and the least
/// page that the framework makes.
fn beside_a_bare_page(slow_line: bool) {
    let line = if slow_line { "on a slow line" } else { "here" };
    for (name, dist, works) in
        [("bare page", "target/bare", "textarea"), ("ours", "target/dist", "#ground:not(.waiting)")]
    {
        let site = Site::start_packed(project().join(dist));
        let page = Page { browser: Browser::start("measures beside"), site };
        page.browser.resize(PHONE.0, PHONE.1);
        page.browser.devtools("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": WATCH }));
        page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": SLOWER }));
        if slow_line {
            page.browser.devtools("Network.enable", &json!({}));
            page.browser.devtools(
                "Network.emulateNetworkConditions",
                &json!({ "offline": false, "latency": 150, "downloadThroughput": 204_800, "uploadThroughput": 96_000 }),
            );
        }
        page.browser.goto(&page.site.url);
        page.browser.wait_for("a page that works", || page.browser.has(works));
        let works = number(&page.browser.run("return performance.now()"));
        rest();
        rest();
        let paint = page.browser.run(
            "return performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0",
        );
        row(&format!("{name} {line}: first text, ms"), &format!("{:.0}", number(&paint)), "1500");
        row(&format!("{name} {line}: it works, ms"), &format!("{works:.0}"), "2 × bare");
        long_tasks(&page, &format!("at load, {name} {line}"));
    }
}

/// What Lighthouse says of the page on a phone, with its line and processor applied.
fn lighthouse() {
    let program = project().join("target/lighthouse/node_modules/.bin/lighthouse");
    if !program.is_file() {
        row("Lighthouse, performance on a phone", "not here", "95");
        return;
    }
    let site = Site::start_packed(project().join("target/dist"));
    let told = std::process::Command::new(program)
        .arg(&site.url)
        .args(["--quiet", "--output=json", "--only-categories=performance"])
        .args(["--throttling-method=devtools", "--chrome-flags=--headless --no-sandbox"])
        .output();
    let told = told.map(|output| String::from_utf8_lossy(&output.stdout).into_owned());
    let told: Value = serde_json::from_str(&told.unwrap_or_default()).unwrap_or_default();
    let score = number(&told["categories"]["performance"]["score"]) * 100.0;
    row("Lighthouse, performance on a phone", &format!("{score:.0}"), "95");
    for audit in ["largest-contentful-paint", "total-blocking-time", "cumulative-layout-shift"] {
        let said = told["audits"][audit]["displayValue"].as_str().unwrap_or("?").to_owned();
        row(&format!("  {}", audit.replace('-', " ")), &said, "");
    }
}

fn head(what: &str) {
    println!("{what:<64}{:>12}{:>12}", "is", "must be");
}

fn row(what: &str, is: &str, must: &str) {
    println!("{what:<64}{is:>12}{must:>12}");
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_default()
}

fn rest() {
    std::thread::sleep(Duration::from_secs(2));
}

/// How many screens of this size the page is long.
fn screens(page: &Page, (width, height): (u32, u32)) -> f64 {
    page.browser.resize(width, height);
    let high = number(&page.browser.run("return document.documentElement.scrollHeight"));
    high / f64::from(height)
}

/// What stands on the page after a sample was tapped.
fn seen(name: &str, sample: &str, pictures: Option<&Path>) {
    let page = Page::open("page measures");
    page.browser.resize(PHONE.0, PHONE.1);
    page.sample(sample);
    page.wait_for_answer();
    rest();
    let long = screens(&page, PHONE);
    row(&format!("{name}: phone screens until something is opened"), &format!("{long:.1}"), "6");
    page.browser.run("document.getElementById('answer').scrollIntoView()");
    let first = page.browser.run(WORDS);
    let first = first.as_str().unwrap_or_default();
    let words = first.split_whitespace().filter(|w| w.chars().any(char::is_alphanumeric)).count();
    row("  words on the answer's first screen", &words.to_string(), "60");
    let ranges = first.split('(').skip(1).filter(|rest| {
        rest.split(')').next().is_some_and(|in_brackets| {
            in_brackets.contains('–') && in_brackets.contains(|c: char| c.is_ascii_digit())
        })
    });
    row("  bracketed ranges there", &ranges.count().to_string(), "0");
    if let Some(folder) = pictures {
        leave_pictures(&page, folder, name, long);
    }
    // At a desk, where the report stays beside the answer.
    page.browser.resize(1100, 900);
    page.unfold("#report-fold");
    row("  keyboard stops from the paste box to the answer", &to_the_answer(&page), "1");
    let stops = stops(&page);
    row("  keyboard stops in all", &stops.len().to_string(), "60");
    let shared = shared_names(&stops);
    row("  names that more than one control has", &shared.len().to_string(), "0");
    shared.iter().for_each(|name| println!("      {name:?}"));
    row("  headings and landmarks", &outline(&page).len().to_string(), "40");
    row("  screens at 400 %", &format!("{:.1}", screens(&page, ZOOMED)), "60");
    page.browser.resize(PHONE.0, PHONE.1);
    one_page_on_paper(&page);
    let [a4, letter] = [A4, LETTER].map(|size| pages_of(&page, size));
    row("  pages of the handout, A4 and Letter", &format!("{a4} and {letter}"), "1 and 1");
}

/// How often Tab is pressed from the paste box until the focus is on what leads to the answer.
fn to_the_answer(page: &Page) -> String {
    page.browser.run_with("document.querySelector(arguments[0]).focus()", &[json!(REPORT)]);
    for stop in 1..=60 {
        page.browser.press(emberloam_tests::driver::Key::Tab);
        let there = "return document.activeElement.matches('.to-answer')
            || document.activeElement.closest('#answer') !== null";
        if page.browser.run(there) == true {
            return stop.to_string();
        }
    }
    "over 60".into()
}

/// The taps of the tasks that people come with.
fn done() {
    let taps = |what: &str, person: &Person<'_>, most: &str| {
        row(&format!("taps: {what}"), &person.taps().to_string(), most);
    };
    let page = Page::open_on_phone("measures gardener", PHONE, "en-US");
    let person = bags_lime_and_dates(&page);
    taps("from a paste to bags, lime and dates for 64 sq ft", &person, "6");
    one_page_on_paper(&page);
    let paper = page.browser.text(".plan").to_lowercase();
    let lime = if paper.contains("lime") { "yes" } else { "no" };
    row("lime is on the handout of a sour bed", lime, "yes");

    let page = Page::open("measures market");
    let file = project().join("target/browser/eight-beds.csv");
    fs::write(&file, EIGHT_BEDS).expect("target/browser can be written");
    taps(
        "eight beds in a file to eight verdicts and one list",
        &eight_plans_and_one_list(&page, &file),
        "10",
    );

    let page = Page::open_on_phone("measures greenhouse", PHONE, "en-GB");
    taps("charge 100 litres without a report", &charge_a_hundred_litres(&page), "3");
}

/// Notes long tasks, what the memory of the program is, and when the answer first stood.
const WATCH: &str = "
    window.__long = [];
    new PerformanceObserver((list) => list.getEntries().forEach((task) =>
        window.__long.push([task.startTime, task.duration]))).observe({ type: 'longtask', buffered: true });
    for (const name of ['instantiate', 'instantiateStreaming']) {
        const real = WebAssembly[name];
        WebAssembly[name] = (...given) => real.apply(WebAssembly, given).then((made) => {
            window.__memory ??= (made.instance ?? made).exports?.memory;
            return made;
        });
    }
    const look = () => {
        if (document.querySelector('#answer-title')?.textContent.trim())
            window.__answered ??= performance.now();
        else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);";

/// The page as it is opened on a slow phone, with the watch in it.
fn slow(name: &str) -> Page {
    let page = Page { browser: Browser::start(name), site: Site::start() };
    page.browser.resize(PHONE.0, PHONE.1);
    page.browser.devtools("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": WATCH }));
    page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": SLOWER }));
    page.browser.goto(&page.site.url);
    page.wait_until_started();
    page
}

/// The long tasks since the last call: how many, and the longest.
fn long_tasks(page: &Page, what: &str) {
    rest();
    let all = page.browser.run("return window.__long.splice(0).map(([, took]) => took)");
    let all: Vec<f64> = all.as_array().into_iter().flatten().map(number).collect();
    let longest = all.iter().copied().fold(0.0, f64::max);
    row(
        &format!("tasks over 50 ms {what}, and the longest, ms"),
        &format!("{} / {longest:.0}", all.len()),
        "0",
    );
}

fn times() {
    let page = slow("measures times");
    let paint = page
        .browser
        .run("return performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0");
    row("first text, ms", &format!("{:.0}", number(&paint)), "1500");
    // Pasted as soon as there is a box: what has come by then is what an answer needs.
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let bytes = page.browser.run(
        "const all = [...performance.getEntriesByType('navigation'),
            ...performance.getEntriesByType('resource')];
        return all.filter((one) => one.responseEnd <= window.__answered)
            .map((one) => one.encodedBodySize).reduce((sum, one) => sum + one, 0)",
    );
    row(
        "fetched before the first answer, kB, not compressed here",
        &format!("{:.0}", number(&bytes) / 1000.0),
        "",
    );
    long_tasks(&page, "at load and first paste");
    page.browser.run("document.getElementById('report-fold').open = true");
    for (name, sample) in [("hungry", HUNGRY), ("metric", METRIC), ("surplus", SURPLUS)] {
        let took = page.browser.run_with(
            "const before = document.getElementById('answer-title').textContent;
            const begun = performance.now();
            document.querySelector(arguments[0]).click();
            return new Promise((done) => {
                const look = () => {
                    const now = document.getElementById('answer-title')?.textContent;
                    if ((now && now !== before) || performance.now() - begun > 3000)
                        done(performance.now() - begun);
                    else requestAnimationFrame(look);
                };
                look();
            })",
            &[json!(sample)],
        );
        row(
            &format!("from a tap on the sample {name} to its answer, ms"),
            &format!("{:.0}", number(&took)),
            "250",
        );
        long_tasks(&page, &format!("on the tap on {name}"));
        page.browser.run("document.getElementById('report-fold').open = true");
    }
    page.speak("es");
    long_tasks(&page, "on another language");
    page.speak("en");
    rest();
    page.browser.run("window.__long.splice(0)");
    page.unfold("#door");
    page.browser.wait_for("what lies behind the door", || page.browser.has("#uses"));
    long_tasks(&page, "on opening the door");
}

/// What the program's memory grows by, once it has all it needs.
fn memory() {
    let page = slow("measures memory");
    page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": 1 }));
    page.sample(SURPLUS);
    page.wait_for_answer();
    page.open_all_answers();
    let size = || number(&page.browser.run("return window.__memory?.buffer.byteLength ?? NaN"));
    let repeat = |times: u32, what: &dyn Fn(u32)| {
        // The first rounds fill what is kept.
        (0..times / 4).for_each(what);
        rest();
        let before = size();
        (0..times).for_each(what);
        rest();
        format!("{:.0}", (size() - before) / f64::from(times))
    };
    let edits = repeat(40, &|round| page.answer("Area of the bed", &(round + 5).to_string()));
    row("memory grows per edit, bytes", &edits, "0");
    page.unfold("#report-fold");
    let samples = repeat(24, &|round| {
        let sample = [HUNGRY, METRIC, SURPLUS][round as usize % 3];
        page.browser.run_with("document.querySelector(arguments[0]).click()", &[json!(sample)]);
        page.wait_for_answer();
        std::thread::sleep(Duration::from_millis(300));
    });
    row("memory grows per change of the sample, bytes", &samples, "0");
    row("memory in all, MB", &format!("{:.1}", size() / 1e6), "");
}

fn leave_pictures(page: &Page, folder: &Path, name: &str, screens: f64) {
    fs::create_dir_all(folder).expect("the folder can be made");
    page.browser.devtools("Emulation.setScrollbarsHidden", &json!({ "hidden": true }));
    for screen in 0..screens.ceil() as u32 {
        page.browser.run_with(
            "document.documentElement.style.scrollBehavior = 'auto'; scrollTo(0, arguments[0])",
            &[json!(screen * PHONE.1)],
        );
        let path = folder.join(format!("{}-{screen}.png", name.replace(' ', "-")));
        fs::write(path, page.browser.picture()).expect("the picture can be written");
    }
}
