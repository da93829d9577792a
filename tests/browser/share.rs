//! A report in a link: made here, opened elsewhere, with nothing lost.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use emberloam_tests::page::{A_SURPLUS, Page};
use serde_json::json;

use crate::access::assert_accessible;
use crate::shelf::fill;

/// Invented: what the reader of a link has of their own.
const OWN: &str = "Method: Olsen\npH 7.2\nPhosphorus 6 mg/kg\nPotassium 90 mg/kg\n";

fn value(page: &Page, css: &str) -> String {
    let value = page
        .browser
        .run_with("return document.querySelector(arguments[0])?.value ?? ''", &[json!(css)]);
    value.as_str().unwrap_or_default().to_owned()
}

/// Unfolds the sharing of a report and returns the part of the link after the `#`.
fn fragment(page: &Page, css: &str) -> String {
    page.browser.wait_for("the sharing", || page.browser.has("#share"));
    page.browser.run("document.querySelector('#share').open = true");
    page.browser.wait_for("the link", || value(page, css).contains("#soil=1."));
    let link = value(page, css);
    assert!(link.starts_with(&page.site.url), "{link}");
    link[link.find('#').unwrap()..].to_owned()
}

/// Opens the page of `page` with a fragment, as a link does.
fn open(page: &Page, fragment: &str) {
    // Another address first: a new fragment alone loads nothing.
    page.browser.goto("about:blank");
    page.browser.goto(&format!("{}{fragment}", page.site.url));
    page.wait_until_started();
    page.browser.wait_for("word of the link", || page.browser.shows("#arrived"));
}

#[test]
fn a_link_opens_elsewhere_and_puts_the_readers_own_report_aside() {
    let page = Page::with_report("share-make");
    page.answer("Area of the bed", "12");
    let path = page.wait_for_answer();
    page.browser.requests();
    let fragment = fragment(&page, "#share-link");

    let other = Page::open("share-open");
    other.paste(OWN);
    other.wait_for_answer();
    open(&other, &fragment);
    assert_eq!(other.report(), OWN, "replaced before it was asked for");
    let shown = other.browser.text("#arrived");
    assert!(shown.contains("Area of the bed: 12 m²"), "{shown}");
    assert!(shown.contains("Phosphorus 212 ppm"), "{shown}");
    assert_accessible(&other, "a link that arrived");
    other.browser.click("#arrived-use");
    other.browser.wait_for("the shared report", || other.report() == A_SURPLUS);
    assert_eq!(other.wait_for_answer(), path);
    assert_eq!(other.browser.run("return location.hash"), "");

    // Found again on the shelf, and by Undo.
    other.browser.run("document.querySelector('#shelf').open = true");
    other.browser.wait_for("the own report on the shelf", || {
        other.browser.text("#shelf-list").contains("put aside")
    });
    other.browser.click("#take-back");
    other.browser.wait_for("the own report", || other.report() == OWN);

    // No server has seen it.
    let packed = &fragment["#soil=1.".len()..];
    for browser in [&page.browser, &other.browser] {
        let asked = browser.requests();
        assert!(asked.iter().all(|url| !url.split('#').next().unwrap().contains(&packed[..40])));
    }
}

#[test]
fn a_link_in_the_same_tab_asks_too_and_can_be_declined() {
    let page = Page::with_report("share-same");
    let fragment = fragment(&page, "#share-link");
    page.paste(OWN);
    page.browser.run_with("location.hash = arguments[0]", &[json!(fragment)]);
    page.browser.wait_for("the question", || page.browser.shows("#arrived"));
    page.browser.click("#arrived-not");
    page.browser.wait_for("the end of it", || !page.browser.shows("#arrived"));
    assert_eq!(page.report(), OWN);
}

#[test]
fn a_damaged_or_newer_link_leaves_all_as_it_is() {
    let page = Page::with_report("share-damaged");
    let whole = fragment(&page, "#share-link");
    let cut = whole[..whole.len() - 30].to_owned();
    let newer = whole.replace("#soil=1.", "#soil=2.");
    for (link, word) in [(cut.as_str(), "missing or changed"), (&newer, "newer version")] {
        open(&page, link);
        let said = page.browser.text("#arrived");
        assert!(said.contains(word), "{said}");
        assert!(!page.browser.has("#arrived-use"));
        assert_eq!(page.report(), A_SURPLUS);
        page.browser.click("#arrived-close");
        page.browser.wait_for("the end of it", || !page.browser.shows("#arrived"));
        page.wait_for_answer();
    }
}

/// A report with 200 crops on one bed: `{"text":"pH 6.1\\nP 18 ppm\\n","answers":{"season":
/// {"crops":[{"name":"kale"}, …]}}}`, as a zlib stream in base64url.
const CROWDED: &str = "#soil=1.eNrtyzEKgDAQRNGrhKmDkEbEE1jaG4sgW6lrMAGFkLurh7Cbbt7AL8hyZ_SIg2kb53U0rjMx7l5hETRdcib0BUlCOvRby3nE95oKNOzypmvYBNXSNE3TNE3TNE3_5LnW-gCiKBj4";

#[test]
fn a_link_with_more_than_a_garden_can_have_is_refused_in_words_and_at_once() {
    let page = Page::with_report("share-crowded");
    open(&page, CROWDED);
    let said = page.browser.text("#arrived");
    assert!(said.contains("200 crops on one bed; at most 40"), "{said}");
    assert!(!page.browser.has("#arrived-use"));
    page.browser.click("#arrived-close");
    page.wait_for_answer();
    assert_eq!(page.report(), A_SURPLUS);
}

#[test]
fn a_field_says_what_no_garden_has_and_keeps_what_was_answered() {
    let page = Page::with_report("share-field");
    page.open_all_answers();
    page.answer("Area of the bed", "12");
    page.answer("Area of the bed", "99999999");
    let said = page.browser.run(
        "return [...document.querySelectorAll('input')].map((i) => i.validationMessage).join('')",
    );
    assert!(said.to_string().contains("can be 0 to 100000"), "{said}");
}

/// Draws the code as the browser does and has another program read it.
fn read_code(page: &Page, css: &str) -> String {
    let pixels = page.browser.run_with(
        "const svg = document.querySelector(arguments[0]).cloneNode(true);
        svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
        svg.setAttribute('width', 800);
        svg.setAttribute('height', 800);
        svg.querySelector('rect').setAttribute('fill', '#fff');
        const picture = new Image();
        picture.src = 'data:image/svg+xml,' + encodeURIComponent(svg.outerHTML);
        return picture.decode().then(() => {
            const canvas = new OffscreenCanvas(800, 800);
            const pen = canvas.getContext('2d');
            pen.drawImage(picture, 0, 0);
            const { data } = pen.getImageData(0, 0, 800, 800);
            let grey = '';
            for (let at = 0; at < data.length; at += 4) grey += String.fromCharCode(data[at]);
            return btoa(grey);
        })",
        &[json!(css)],
    );
    let grey = STANDARD.decode(pixels.as_str().expect("pixels")).unwrap();
    assert_eq!(grey.len(), 800 * 800);
    let mut picture =
        rqrr::PreparedImage::prepare_from_greyscale(800, 800, |x, y| grey[y * 800 + x]);
    let grids = picture.detect_grids();
    assert_eq!(grids.len(), 1, "codes found");
    grids[0].decode().expect("a code that can be read").1
}

/// Source: the rqrr decoder, a program of its own (opened).
#[test]
fn the_code_on_screen_and_on_paper_is_the_link() {
    let page = Page::with_report("share-code");
    fragment(&page, "#share-link");
    let link = value(&page, "#share-link");
    assert_eq!(read_code(&page, "#share .code svg"), link);
    assert!(!page.browser.has("#paper-code svg"), "made before it is printed");
    page.browser.run("dispatchEvent(new Event('beforeprint'))");
    page.browser.wait_for("the code for paper", || page.browser.has("#paper-code svg"));
    page.browser.media("print", "light");
    assert!(page.browser.shows("#paper-code svg"));
    assert_eq!(read_code(&page, "#paper-code svg"), link);
    page.browser.media("screen", "light");
    // A change makes no code for paper anew.
    page.browser.run("dispatchEvent(new Event('afterprint'))");
    page.answer("Area of the bed", "12");
    page.browser.wait_for("no code", || !page.browser.has("#paper-code svg"));
}

#[test]
fn a_long_link_is_told_of() {
    let page = Page::open("share-long");
    // Numbers that do not repeat, so that they pack badly.
    page.put(
        "'Bed\\tpH\\tOlsen P ppm\\n' + Array.from({ length: 2500 }, (_, n) =>
            `Plot ${n * 7919 % 10007}\\t${5 + n * 31 % 37 / 10}\\t${n * 6151 % 997 / 10}`).join('\\n')",
    );
    page.wait_for_answer();
    fragment(&page, "#share-link");
    assert!(value(&page, "#share-link").len() > 8000);
    let said = page.browser.text("#share");
    assert!(said.contains("Most apps cut links"), "{said}");
    assert!(said.contains("too long for a QR code"), "{said}");
    assert!(!page.browser.has("#share .code svg"));
}

#[test]
fn an_educator_fixes_answers_and_viewers_put_in_their_own_report() {
    let page = Page::with_report("share-educator");
    page.answer("Area of the bed", "12");
    page.answer("How deep you will mix it in", "20");
    fragment(&page, "#share-link");
    page.browser.click("#viewers > summary");
    let note = "Hello <b>class</b> & <img src=x onerror=\"window.__ran = 1\">";
    fill(&page, "#viewers-note", note);
    page.browser.wait_for("the answers to fix", || {
        page.browser.text("#viewers-fixed").contains("How deep you will mix it in: 20")
    });
    page.browser.run(
        "[...document.querySelectorAll('#viewers-fixed label')]
            .find((label) => label.textContent.includes('How deep')).querySelector('input').click()",
    );
    let viewers = || value(&page, "#viewers-link");
    page.browser.wait_for("the link", || viewers().contains("#soil=1."));
    page.browser.wait_for("the preview", || page.browser.text("#preview").contains(note));
    let preview = page.browser.text("#preview");
    assert_accessible(&page, "sharing");
    let link = viewers();

    let viewer = Page::open("share-viewer");
    open(&viewer, &link[link.find('#').unwrap()..]);
    let shown = viewer.browser.text("#arrived");
    assert!(shown.contains(&preview), "viewers see {shown}; the preview was {preview}");
    assert!(!viewer.browser.has("#arrived img, #arrived b"), "the note became HTML");
    viewer.browser.click("#arrived-use");
    viewer.browser.wait_for("the case", || viewer.browser.shows("#scenario"));
    assert!(viewer.browser.text("#scenario").contains(note));
    viewer.paste(OWN);
    viewer.wait_for_answer();
    let closed = |label: &str| {
        viewer.browser.run_with(
            "const field = [...document.querySelectorAll('#bed label.field')]
                .find((field) => field.firstElementChild.textContent === arguments[0]);
            return [field.querySelector('input').value, field.querySelector('input').disabled]",
            &[json!(label)],
        )
    };
    viewer.open_all_answers();
    assert_eq!(closed("Area of the bed"), json!(["12", true]));
    assert_eq!(closed("How deep you will mix it in"), json!(["20", false]));
    assert_accessible(&viewer, "a scenario");

    viewer.browser.reload();
    viewer.wait_until_started();
    viewer.browser.wait_for("the case again", || viewer.browser.shows("#scenario"));
    assert_eq!(viewer.report(), OWN);
    viewer.open_all_answers();
    viewer.browser.click("#scenario-leave");
    viewer
        .browser
        .wait_for("an open control", || closed("Area of the bed") == json!(["12", false]));
    assert_eq!(viewer.browser.run("return window.__ran ?? null"), serde_json::Value::Null);
}

#[test]
fn the_link_and_the_plan_are_copied_and_handed_to_the_systems_sheet() {
    let page = Page::with_report("share-copy");
    page.browser.run(
        "window.__copied = [];
        navigator.clipboard.writeText = (text) => (window.__copied.push(text), Promise.resolve());",
    );
    fragment(&page, "#share-link");
    page.browser.click("#share .copy-link");
    page.browser.wait_for("the link", || page.browser.text("#share-told") == "Link copied.");
    page.browser.click("#copy-plan");
    page.browser.wait_for("the plan", || page.browser.text("#share-told") == "Plan copied.");
    let copied = page.browser.run("return window.__copied");
    assert_eq!(copied[0], json!(value(&page, "#share-link")));
    assert!(copied[1].as_str().unwrap().starts_with("Plan for the bed\n"), "{copied}");
    page.browser.run("navigator.clipboard.writeText = () => Promise.reject(new Error('no'))");
    page.browser.click("#share .copy-link");
    page.browser.wait_for("word of it", || page.browser.text("#share-told").contains("Select"));
}

#[test]
fn the_systems_sheet_gets_the_link_where_there_is_one() {
    let page = Page::open("share-sheet");
    let sheet = "window.__shared = [];
        navigator.share = (data) => (window.__shared.push(data), Promise.resolve())";
    page.browser.devtools("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": sheet }));
    page.browser.reload();
    page.wait_until_started();
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    fragment(&page, "#share-link");
    page.browser.click("#share .share-link");
    page.browser
        .wait_for("the link", || page.browser.text("#share-told") == "Handed to the other app.");
    let shared = page.browser.run("return window.__shared[0].url");
    assert_eq!(shared, json!(value(&page, "#share-link")));
}
