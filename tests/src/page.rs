//! The page as a person uses it. The ids of its parts are named here and nowhere else.

use std::time::Instant;

use serde_json::json;

use crate::driver::{Browser, PATIENCE};
use crate::site::Site;

/// The empty page that stands until the program is there.
pub const WAITING: &str = ".waiting";
/// The field for the report.
pub const REPORT: &str = "#report-text";
/// Opens a text file.
pub const FILE: &str = "#report-file";
/// The choice of US measures.
pub const US_MEASURES: &str = ".measures label:last-of-type input";
/// The button that reads it, where the page does not read while typing.
pub const READ: &str = "#read-report";
/// The plan. `data-path` holds its path.
pub const ANSWER: &str = "#answer";
/// What the soil holds.
pub const HOLDS: &str = "#holds";
/// Lines that could not be placed.
pub const UNREAD: &str = "#unread";
/// What must still be asked.
pub const QUESTIONS: &str = "#questions";
/// Every answer, to be changed; fetched after the first load.
pub const BED: &str = "#bed";
/// What is wrong with the text.
pub const TROUBLE: &str = "#trouble";
/// Prints the plan with its reasons and sources.
pub const PRINT_WHOLE: &str = "#print-whole";
/// Erases all that was typed.
pub const ERASE: &str = "#erase";
/// Prints one page to take to the bed.
pub const PRINT: &str = "#print";
/// Says that the page works offline now.
pub const OFFLINE_NOTE: &str = "#offline-note";
/// Offers a new version.
pub const UPDATE_NOTE: &str = "#update-note";
/// The sample of a soil with a surplus.
pub const SURPLUS: &str = "#sample-surplus";
/// The sample of a soil short of nutrients.
pub const HUNGRY: &str = "#sample-hungry";
/// The sample in metric units.
pub const METRIC: &str = "#sample-metric";
/// The sample that is bad on purpose.
pub const BROKEN: &str = "#sample-broken";

/// An invented report: far more nutrients than needed.
pub const A_SURPLUS: &str = "\
Soil test, back garden, depth 0-6 in
Method: Mehlich-3
pH 6.6
Organic matter 6.1 %
Phosphorus 212 ppm
Potassium 395 ppm
Calcium 2450 ppm
Magnesium 310 ppm
Nitrate-N 48 ppm
CEC 17.2 meq/100 g
";

/// A browser with the page in it, and the server it came from.
pub struct Page {
    /// The browser.
    pub browser: Browser,
    /// The server.
    pub site: Site,
}

impl Page {
    /// Opens the page in a new browser.
    #[track_caller]
    pub fn open(name: &str) -> Page {
        Page::open_from(name, Site::start())
    }

    /// Opens the page of a site in a new browser.
    #[track_caller]
    pub fn open_from(name: &str, site: Site) -> Page {
        let page = Page { browser: Browser::start(name), site };
        page.browser.goto(&page.site.url);
        page.wait_until_started();
        page
    }

    /// Opens the page on a phone of this size, points, in a browser of this language.
    #[track_caller]
    pub fn open_on_phone(name: &str, (width, height): (u32, u32), language: &str) -> Page {
        let switch = format!("--accept-lang={language}");
        let page = Page { browser: Browser::start_with(name, &[&switch]), site: Site::start() };
        page.browser.resize(width, height);
        page.browser.goto(&page.site.url);
        page.wait_until_started();
        page
    }

    /// Opens the page with a report in it, and waits until all of it is there.
    #[track_caller]
    pub fn with_report(name: &str) -> Page {
        let page = Page::open(name);
        page.paste(A_SURPLUS);
        page.wait_for_answer();
        page.open_all_answers();
        page
    }

    /// Waits until the program's own field for the report is there.
    #[track_caller]
    pub fn wait_until_started(&self) {
        self.browser.wait_for("the field for the report", || {
            !self.browser.has(WAITING) && self.browser.shows(REPORT)
        });
    }

    /// Pastes a text over what the field holds.
    #[track_caller]
    pub fn paste(&self, text: &str) {
        self.browser.run_with(
            "const field = document.querySelector(arguments[0]); field.focus(); field.select()",
            &[json!(REPORT)],
        );
        self.browser.insert(text);
        self.read();
    }

    /// Puts a text into the field from a script: for what no keyboard brings.
    /// `text` is JavaScript that makes it.
    #[track_caller]
    pub fn put(&self, text: &str) {
        self.browser.run_with(
            &format!(
                "const field = document.querySelector(arguments[0]);
                const text = {text};
                window.__put = text;
                Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')
                    .set.call(field, text);
                field.dispatchEvent(new InputEvent('input', {{ bubbles: true }}));
                field.dispatchEvent(new Event('change', {{ bubbles: true }}))"
            ),
            &[json!(REPORT)],
        );
        self.read();
    }

    /// Whether the field still holds what was [`put`](Page::put) there.
    #[track_caller]
    pub fn still_holds_what_was_put(&self) -> bool {
        self.browser.run_with(
            // A field turns every line end into \n.
            "return document.querySelector(arguments[0]).value
                === window.__put.replace(/\\r\\n?/g, '\\n')",
            &[json!(REPORT)],
        ) == true
    }

    #[track_caller]
    fn read(&self) {
        if self.browser.shows(READ) {
            self.browser.click(READ);
        }
    }

    /// What the field holds.
    #[track_caller]
    pub fn report(&self) -> String {
        let value = self
            .browser
            .run_with("return document.querySelector(arguments[0]).value", &[json!(REPORT)]);
        value.as_str().unwrap_or_default().to_owned()
    }

    /// The path the page advises; empty when it advises none yet.
    #[track_caller]
    pub fn path(&self) -> String {
        if !self.browser.shows(ANSWER) {
            return String::new();
        }
        let path = self.browser.run_with(
            "return document.querySelector(arguments[0])?.dataset.path",
            &[json!(ANSWER)],
        );
        path.as_str().unwrap_or_default().to_owned()
    }

    /// Waits for an answer and returns its path.
    #[track_caller]
    pub fn wait_for_answer(&self) -> String {
        const PATHS: [&str; 4] = ["charged", "charge-first", "uncharged-after-harvest", "none"];
        self.browser.wait_for("an answer", || !self.path().is_empty());
        let path = self.path();
        assert!(PATHS.contains(&path.as_str()), "{path:?} is no path; known: {PATHS:?}");
        path
    }

    /// The level shown for a property; empty when it is not judged.
    #[track_caller]
    pub fn level(&self, property: &str) -> String {
        let reading = format!("{HOLDS} [data-property='{property}']");
        // The readings follow soon after the answer.
        self.browser.wait_for("the reading", || self.browser.has(&reading));
        let level = self.browser.run_with(
            "return document.querySelector(arguments[0])?.dataset.level",
            &[json!(reading)],
        );
        level.as_str().unwrap_or_default().to_owned()
    }

    /// Opens all that can be answered about the bed, and what lies behind the specialists' door.
    #[track_caller]
    pub fn open_all_answers(&self) {
        self.browser.wait_for("the later parts", || {
            self.unfold(".chip.more, #bed, #door");
            self.browser.has("#bed label.field") && self.browser.has("#place label.field")
        });
    }

    /// Gives an answer among all those about the bed: the control with this
    /// label gets this number, date or choice.
    #[track_caller]
    pub fn answer(&self, label: &str, value: &str) {
        self.open_all_answers();
        let done = self.browser.run_with(
            "const [label, value] = arguments;
            const places = '#bed label.field, #needs label.field, #place label.field';
            const field = [...document.querySelectorAll(places)]
                .find((field) => field.firstElementChild.textContent === label);
            const control = field?.querySelector('input, select');
            const option = [...(control?.options ?? [])].find((o) => o.textContent === value);
            if (!control || (control.options && !option)) return false;
            control.value = option?.value ?? value;
            return control.dispatchEvent(new Event('change', { bubbles: true }))",
            &[json!(label), json!(value)],
        );
        assert_eq!(done, true, "no control {label:?} that can be {value:?}");
    }

    /// Chooses a language as a person does.
    #[track_caller]
    pub fn speak(&self, tag: &str) {
        self.browser.wait_for("the choice of language", || self.browser.has("#language option"));
        self.browser.run_with(
            "const choice = document.getElementById('language');
            choice.value = arguments[0];
            choice.dispatchEvent(new Event('change', { bubbles: true }))",
            &[json!(tag)],
        );
        self.browser.wait_for("the language", || {
            self.browser.run("return document.documentElement.lang") == tag
        });
    }

    /// Puts a sample report in.
    #[track_caller]
    pub fn sample(&self, id: &str) {
        self.unfold(".samples");
        self.browser.click(id);
    }

    /// Unfolds such parts of the page, if they are there.
    #[track_caller]
    pub fn unfold(&self, css: &str) {
        self.browser.run_with(
            "document.querySelectorAll(arguments[0]).forEach((fold) => fold.open = true)",
            &[json!(css)],
        );
    }

    /// Unfolds every part of the page, and those that are made when another is opened.
    #[track_caller]
    pub fn unfold_all(&self) {
        // What is opened tells of it, and is filled, after a turn of the page.
        self.browser.run(
            "const turn = () => new Promise((done) => setTimeout(done, 60));
            const folded = () => [...document.querySelectorAll('details:not([open])')];
            const until_none = async () => {
                for (let still = 0; still < 4;) {
                    const now = folded();
                    still = now.length ? 0 : still + 1;
                    now.forEach((part) => part.open = true);
                    await turn();
                }
            };
            return until_none()",
        );
    }

    /// Unfolds the measures, the language and the look for bright sun.
    #[track_caller]
    pub fn settings(&self) {
        self.unfold(".settings");
        self.browser.wait_for("the settings", || self.browser.shows(US_MEASURES));
    }

    /// Unfolds the ways to save what the page holds as a file.
    #[track_caller]
    pub fn save_as_files(&self) {
        self.browser.wait_for("the ways to save", || {
            self.unfold(".tools .fold");
            self.browser.shows("#save-report") && self.browser.shows("#save-table")
        });
    }

    /// Presses a button that prints, and waits until the print window would open. What it takes
    /// is kept in `window.__paper`.
    #[track_caller]
    pub fn print(&self, button: &str) {
        // The browser's window takes the page as it stands; a browser that is driven opens none.
        self.browser.run(
            "delete window.__paper;
            window.print = () => {
                dispatchEvent(new Event('beforeprint'));
                window.__paper = document.querySelector('.plan').textContent;
                dispatchEvent(new Event('afterprint'));
            }",
        );
        self.browser.click(button);
        self.browser.wait_for("the print window", || {
            self.browser.run("return window.__paper !== undefined") == true
        });
    }

    /// Waits for a message about the text other than `before`; returns it and
    /// how many milliseconds it took.
    #[track_caller]
    pub fn wait_for_trouble(&self, before: &str) -> (String, u128) {
        let begun = Instant::now();
        loop {
            let now = if self.browser.shows(TROUBLE) {
                self.browser.text(TROUBLE)
            } else {
                String::new()
            };
            if !now.is_empty() && now != before {
                return (now, begun.elapsed().as_millis());
            }
            assert!(
                begun.elapsed() < PATIENCE,
                "Waited {} s for a message in {TROUBLE}. It shows {now:?}; before: {before:?}",
                PATIENCE.as_secs()
            );
            std::thread::sleep(std::time::Duration::from_millis(20));
        }
    }

    /// Waits until a copy of the page is on the device and in charge.
    #[track_caller]
    pub fn wait_until_offline_ready(&self) {
        self.browser.wait_for("the offline copy", || {
            self.browser.run(
                "return navigator.serviceWorker.ready.then(
                    () => navigator.serviceWorker.controller !== null)",
            ) == true
        });
    }

    /// The names of the copies on the device.
    #[track_caller]
    pub fn copies(&self) -> Vec<String> {
        let names = self.browser.run("return caches.keys()");
        let names = names.as_array().into_iter().flatten();
        names.filter_map(|name| name.as_str().map(str::to_owned)).collect()
    }
}
