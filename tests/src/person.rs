//! Somebody at the page, whose taps are counted, and the ways through the page that people take.

use std::cell::RefCell;
use std::path::Path;

use serde_json::{Value, json};

use crate::page::{FILE, PRINT, Page, REPORT};

/// A person. Every tap counts one, and so does every typing or pasting.
pub struct Person<'a> {
    page: &'a Page,
    done: RefCell<Vec<String>>,
}

impl<'a> Person<'a> {
    /// A person before a page, who has done nothing yet.
    pub fn at(page: &'a Page) -> Person<'a> {
        Person { page, done: RefCell::default() }
    }

    /// How often they have tapped, typed or pasted.
    pub fn taps(&self) -> usize {
        self.done.borrow().len()
    }

    /// What they did, in order.
    pub fn way(&self) -> String {
        self.done.borrow().join(", ")
    }

    fn count(&self, what: String) {
        self.done.borrow_mut().push(what);
    }

    /// Taps what they see.
    #[track_caller]
    pub fn tap(&self, css: &str) {
        self.page.browser.click(css);
        self.count(format!("tap {css}"));
    }

    /// Pastes a report.
    #[track_caller]
    pub fn paste(&self, text: &str) {
        assert!(self.page.browser.shows(REPORT), "there is no place to paste in sight");
        // As the browser does it: it tells of the paste, then the text comes.
        self.page.browser.run_with(
            "const box = document.querySelector(arguments[0]);
            box.focus();
            box.select();
            box.dispatchEvent(new ClipboardEvent('paste', { bubbles: true, cancelable: true }));
            document.execCommand('insertText', false, arguments[1])",
            &[json!(REPORT), json!(text)],
        );
        self.count("paste".into());
        self.page.wait_for_answer();
    }

    /// Types into a field they see, and leaves it.
    #[track_caller]
    pub fn type_into(&self, css: &str, text: &str) {
        self.page.browser.type_into(css, &format!("{text}\u{E007}"));
        self.count(format!("type {text}"));
    }

    /// Opens a file: a tap on the button, a tap on the file.
    #[track_caller]
    pub fn open_file(&self, file: &Path) {
        assert!(
            self.page.browser.shows("label:has(#report-file)"),
            "no way to open a file is seen"
        );
        self.page.browser.type_into(FILE, &file.display().to_string());
        self.count("open a file".into());
        self.count("choose it".into());
        self.page.wait_for_answer();
    }

    /// Says how large a bed is, in the measures of the page, by the first question.
    #[track_caller]
    pub fn say_area(&self, area: &str) {
        const CHIP: &str = ".chip[data-question='Area']";
        self.page.browser.wait_for("the question for the area", || self.page.browser.has(CHIP));
        self.tap(&format!("{CHIP} > summary"));
        let field = format!("{CHIP} input");
        self.page.browser.wait_for("the field for it", || self.page.browser.shows(&field));
        self.type_into(&field, area);
    }
}

/// An invented report of a sour soil, as a gardener in the United States gets it.
pub const SOUR: &str = "\
Soil test, raised bed by the shed
Method: Mehlich-3
Texture: sandy loam
pH 5.4
Buffer pH (Adams-Evans) 7.6
Organic matter 2.8 %
Phosphorus 14 ppm
Potassium 61 ppm
Calcium 480 ppm
Magnesium 42 ppm
CEC 6.4 meq/100 g
";

/// An invented table of a market garden's eight beds.
pub const EIGHT_BEDS: &str = "\
Bed,Texture,pH,Organic matter %,Mehlich-3 P ppm,Mehlich-3 K ppm,Mehlich-3 Ca ppm,Mehlich-3 Mg ppm
Carrot strip,loamy sand,6.4,2.1,22,64,820,70
Onion strip,loamy sand,5.3,1.9,17,58,390,41
Salad tunnel,loam,7.0,6.2,190,410,2900,360
Tomato tunnel,loam,6.7,5.8,160,380,2500,300
Squash patch,silt loam,6.1,3.3,38,120,1400,150
Brassica bed,silt loam,5.6,3.0,31,104,980,110
Herb edge,sandy loam,6.8,2.6,27,88,1100,96
New ground,clay loam,5.2,2.4,6,70,760,90
";

/// From a paste to what a bed of 64 sq ft gets: what to carry, and when.
#[track_caller]
pub fn bags_lime_and_dates<'a>(page: &'a Page) -> Person<'a> {
    let person = Person::at(page);
    person.paste(SOUR);
    person.say_area("64");
    page.browser.wait_for("the amounts for the bed", || {
        page.browser.text("#carry .carry-for").contains("64")
    });
    person
}

/// From a file of eight beds to the verdict of each and what to buy for all.
#[track_caller]
pub fn eight_plans_and_one_list<'a>(page: &'a Page, file: &Path) -> Person<'a> {
    let person = Person::at(page);
    person.open_file(file);
    page.browser.wait_for("a verdict for each bed", || verdicts(page).len() == 8);
    page.browser.wait_for("the shopping list", || page.browser.shows("#shopping > summary"));
    person.tap("#for-all");
    person.say_area("120");
    person.tap("#shopping > summary");
    page.browser.wait_for("what to buy", || page.browser.shows("#shopping .carried li"));
    person
}

/// The verdicts in sight, bed by bed.
pub fn verdicts(page: &Page) -> Vec<String> {
    let words = page.browser.run(
        "return [...document.querySelectorAll('.bed .verdict-word')]
            .filter((word) => word.checkVisibility()).map((word) => word.textContent.trim())",
    );
    let words = words.as_array().into_iter().flatten().filter_map(Value::as_str);
    words.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// From an empty page to the recipe for 100 litres.
#[track_caller]
pub fn charge_a_hundred_litres<'a>(page: &'a Page) -> Person<'a> {
    let person = Person::at(page);
    page.browser.wait_for("charging without a report", || page.browser.shows("#alone > summary"));
    person.tap("#alone > summary");
    page.browser.wait_for("the steps", || page.browser.shows("#alone .steps li"));
    person
}

/// From a link for viewers to an answer for one's own report.
#[track_caller]
pub fn own_report_in_a_case<'a>(page: &'a Page, own: &str) -> Person<'a> {
    let person = Person::at(page);
    person.tap("#arrived-use");
    page.browser.wait_for("the case", || page.browser.shows("#scenario"));
    person.tap("#scenario-own");
    page.browser.wait_for("the place for a report", || page.browser.shows(REPORT));
    person.paste(own);
    person
}

/// From the answer to the paper: the taps until the print window opens.
#[track_caller]
pub fn one_page_on_paper<'a>(page: &'a Page) -> Person<'a> {
    let person = Person::at(page);
    page.print(PRINT);
    person.count("tap print".into());
    person
}

/// How many pages of this size, inches, the page makes as it would be printed now.
#[track_caller]
pub fn pages_of(page: &Page, size: (f64, f64)) -> usize {
    page.browser.media("print", "light");
    let pdf = page.browser.pdf_of(size);
    page.browser.media("screen", "light");
    pdf.windows(12).filter(|at| at.starts_with(b"/Type /Page") && at[11] != b's').count()
}

/// Sizes of paper, inches.
pub const A4: (f64, f64) = (8.27, 11.69);
/// Sizes of paper, inches.
pub const LETTER: (f64, f64) = (8.5, 11.0);

/// Everything that can be reached by the keyboard now: the name of each stop, in order.
#[track_caller]
pub fn stops(page: &Page) -> Vec<String> {
    let stops = page.browser.run(
        "const all = document.querySelectorAll(
            'a[href], button, input, select, textarea, summary, [tabindex=\"0\"]');
        const radios = new Set();
        return [...all]
            .filter((e) => !e.disabled && e.tabIndex >= 0
                && e.checkVisibility({ visibilityProperty: true }))
            .filter((e) => {
                if (e.type !== 'radio') return true;
                const first = !radios.has(e.name);
                radios.add(e.name);
                return first;
            })
            .map((e) => {
                const label = e.labels?.[0]?.innerText ?? '';
                const by = document.getElementById(e.getAttribute('aria-labelledby'))?.innerText;
                return (e.getAttribute('aria-label') || by || label || e.innerText || e.id
                    || e.tagName).trim().replace(/\\s+/g, ' ');
            })",
    );
    let stops = stops.as_array().into_iter().flatten().filter_map(Value::as_str);
    stops.map(str::to_owned).collect()
}

/// Names that more than one of these has.
pub fn shared_names(stops: &[String]) -> Vec<String> {
    let mut sorted = stops.to_vec();
    sorted.sort_unstable();
    let mut shared: Vec<String> =
        sorted.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| pair[0].clone()).collect();
    shared.dedup();
    shared
}

/// The headings and landmarks in sight, as a reader of screens lists them.
#[track_caller]
pub fn outline(page: &Page) -> Vec<String> {
    let all = page.browser.run(
        "return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6, main, header, footer, nav, \
            aside, section[aria-label], section[aria-labelledby], [role=region], [role=search]')]
            .filter((e) => e.checkVisibility())
            .map((e) => `${e.localName} ${(e.getAttribute('aria-label') ?? (/^h\\d$/.test(e.localName)
                ? e.textContent : '')).trim().slice(0, 40)}`)",
    );
    let all = all.as_array().into_iter().flatten().filter_map(Value::as_str);
    all.map(str::to_owned).collect()
}
