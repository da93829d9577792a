//! A report that comes as a file, by every way there is.

use std::fs;
use std::path::PathBuf;

use emberloam_tests::page::{A_SURPLUS, FILE, Page};
use emberloam_tests::project;
use serde_json::{Value, json};

const OPENED: &str = "#opened";
const TROUBLE: &str = "#trouble";

pub fn sample(name: &str) -> PathBuf {
    project().join("tests/open-data/synthetic_reports").join(name)
}

pub fn choose(page: &Page, file: &std::path::Path) {
    page.browser.type_into(FILE, &file.display().to_string());
}

/// Writes a file of our own to choose.
pub fn made(name: &str, bytes: &[u8]) -> PathBuf {
    let file = project().join("target/browser").join(name);
    fs::write(&file, bytes).expect("target/browser can be written");
    file
}

#[track_caller]
pub fn wait_until_opened(page: &Page, name: &str) {
    page.browser.wait_for(&format!("{name} opened"), || page.browser.text(OPENED).contains(name));
    page.wait_for_answer();
    assert!(!page.browser.shows("#cancel-opening"), "{name}: Cancel is still there");
}

#[track_caller]
pub fn wait_until_refused(page: &Page, words: &str) {
    page.browser.wait_for(&format!("a refusal with {words:?}"), || {
        page.browser.shows(TROUBLE) && page.browser.text(TROUBLE).contains(words)
    });
}

/// Sends an event that brings `what` (a script that fills `data`, a DataTransfer).
pub fn bring(page: &Page, event: &str, to: &str, what: &str, given: &[Value]) {
    let send = match event {
        "paste" => {
            "new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData: data })"
        }
        _ => "new DragEvent('EVENT', { bubbles: true, cancelable: true, dataTransfer: data })",
    };
    let send = send.replace("EVENT", event);
    let mut given = given.to_vec();
    given.insert(0, json!(to));
    page.browser.run_with(
        &format!(
            "const data = new DataTransfer(); {what};
             document.querySelector(arguments[0]).dispatchEvent({send})"
        ),
        &given,
    );
}

/// Shares a sample as the system does: it posts a form from outside, since the page's own policy
/// lets no form be sent.
pub fn share_from_outside(page: &Page, name: &str) {
    let url = format!("{}share", page.site.url);
    page.browser.goto("about:blank");
    page.browser.run_with(
        "const form = document.createElement('form');
         Object.assign(form, { method: 'post', enctype: 'multipart/form-data', action: arguments[0] });
         const field = document.createElement('input');
         Object.assign(field, { type: 'file', name: 'file' });
         const data = new DataTransfer();
         data.items.add(new File([Uint8Array.from(arguments[2])], arguments[1]));
         field.files = data.files;
         form.append(field); document.body.append(form); form.submit()",
        &[json!(url), json!(name), json!(fs::read(sample(name)).unwrap())],
    );
}

pub const A_FILE: &str = "data.items.add(new File([Uint8Array.from(arguments[2])], arguments[1]))";

#[test]
fn every_kind_of_file_is_chosen_and_read() {
    let page = Page::open("file-kinds");
    for name in [
        "fpdf2.pdf",
        "openpyxl.xlsx",
        "libreoffice.ods",
        "libreoffice_biff.xls",
        "list.csv",
        "grid_semicolon_latin1.csv",
    ] {
        choose(&page, &sample(name));
        wait_until_opened(&page, name);
    }
}

#[test]
fn a_damaged_pdf_loses_nothing_and_the_next_file_opens() {
    let page = Page::open("file-damaged");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    let pdf = fs::read(sample("fpdf2.pdf")).unwrap();
    choose(&page, &made("damaged.pdf", &pdf[..pdf.len() / 3]));
    wait_until_refused(&page, "damaged.pdf");
    assert_eq!(page.report(), A_SURPLUS, "the text was lost");
    choose(&page, &sample("fpdf2.pdf"));
    wait_until_opened(&page, "fpdf2.pdf");
    assert!(!page.browser.shows(TROUBLE), "{}", page.browser.text(TROUBLE));
}

#[test]
fn a_file_over_20_mb_is_refused() {
    let page = Page::open("file-large");
    choose(&page, &made("large.pdf", &vec![b'x'; 20_000_001]));
    wait_until_refused(&page, "20 MB");
}

#[test]
fn a_file_is_dropped_anywhere_and_the_page_shows_where() {
    let page = Page::open("file-drop");
    let given = [json!("openpyxl.xlsx"), json!(fs::read(sample("openpyxl.xlsx")).unwrap())];
    let marked =
        || page.browser.run("return document.documentElement.matches('.dropping')") == true;
    bring(&page, "dragover", "h1", A_FILE, &given);
    assert!(marked(), "nothing shows that a file can be dropped");
    bring(&page, "drop", "h1", A_FILE, &given);
    assert!(!marked(), "the mark stays after the drop");
    wait_until_opened(&page, "openpyxl.xlsx");
}

#[test]
fn a_file_is_pasted() {
    let page = Page::open("file-paste");
    let given = [json!("fpdf2.pdf"), json!(fs::read(sample("fpdf2.pdf")).unwrap())];
    bring(&page, "paste", "body", A_FILE, &given);
    wait_until_opened(&page, "fpdf2.pdf");
}

#[test]
fn a_copied_table_keeps_its_blank_and_merged_cells() {
    let page = Page::open("file-table");
    let html = "<table><tr><th>Test</th><th>Result</th><th>Unit</th></tr>\
        <tr><td>pH</td><td colspan=2>6.4</td></tr>\
        <tr><td>Phosphorus (Olsen)</td><td></td><td>mg/kg</td></tr></table>";
    let what = "data.setData('text/html', arguments[1]); data.setData('text/plain', 'lost')";
    bring(&page, "paste", "#report-text", what, &[json!(html)]);
    page.browser.wait_for("the table", || page.report().contains("Phosphorus"));
    let report = page.report();
    assert!(report.contains("Phosphorus (Olsen)\t\tmg/kg"), "{report:?}");
    assert!(report.contains("pH\t6.4"), "{report:?}");
}

#[test]
fn opening_is_cancelled_and_the_page_stays_as_it_was() {
    let page = Page::open("file-cancel");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    // A worker that never answers stands in for a file that takes for ever.
    page.browser
        .run("window.Worker = class { postMessage() {} terminate() { window.__ended = true } }");
    choose(&page, &sample("fpdf2.pdf"));
    page.browser.wait_for("Cancel", || page.browser.shows("#cancel-opening"));
    assert!(page.browser.text("#opening").contains("fpdf2.pdf"));
    page.browser.click("#cancel-opening");
    page.browser.wait_for("no Cancel", || !page.browser.shows("#cancel-opening"));
    assert_eq!(page.browser.run("return window.__ended"), true, "the worker still runs");
    assert_eq!(page.report(), A_SURPLUS);
}

/// No file is known that traps the opener, so a worker that fails as a trap does stands in.
#[test]
fn a_fault_in_the_opener_is_told_and_the_next_file_opens() {
    let page = Page::open("file-trap");
    page.browser.run(
        "const real = window.Worker;
         window.Worker = class {
            postMessage() { setTimeout(() => this.onmessage({ data: { refused: '' } })) }
            terminate() { window.Worker = real }
         }",
    );
    choose(&page, &sample("fpdf2.pdf"));
    wait_until_refused(&page, "could not be read");
    choose(&page, &sample("fpdf2.pdf"));
    wait_until_opened(&page, "fpdf2.pdf");
}

#[test]
fn a_pdf_opens_and_a_shared_one_arrives_with_the_server_stopped() {
    let mut page = Page::open("file-offline");
    page.wait_until_offline_ready();
    page.site.stop();
    choose(&page, &sample("fpdf2.pdf"));
    wait_until_opened(&page, "fpdf2.pdf");

    share_from_outside(&page, "openpyxl.xlsx");
    page.wait_until_started();
    wait_until_opened(&page, "openpyxl.xlsx");
    let left = page.browser.run("return caches.has('shared-with-emberloam')");
    assert_eq!(left, false, "the shared file is kept");
}

#[test]
fn a_saved_report_brings_its_answers_back_and_can_be_undone() {
    let page = Page::open("file-saved");
    page.browser.run("addEventListener('emberloam:save', ({ detail }) => window.__saved = detail)");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.answer("Area of the bed", "12");
    page.save_as_files();
    page.browser.click("#save-report");
    let saved = page.browser.run("return window.__saved");
    let json = saved.as_str().unwrap().splitn(3, '\n').nth(2).unwrap().to_owned();
    assert!(json.starts_with("{\"emberloam\":1,"), "{json}");

    let other = "pH 5.1\n";
    page.paste(other);
    page.wait_for_answer();
    choose(&page, &made("saved.json", json.as_bytes()));
    page.browser.wait_for("the saved report", || page.report() == A_SURPLUS);
    page.browser.click("#take-back");
    page.browser.wait_for("the report before", || page.report() == other);

    let newer = json.replacen("\"emberloam\":1", "\"emberloam\":99", 1);
    choose(&page, &made("newer.json", newer.as_bytes()));
    wait_until_refused(&page, "newer version");
    assert_eq!(page.report(), other);
}

#[test]
fn opening_files_asks_only_the_page_itself() {
    let page = Page::open("file-privacy");
    page.wait_until_offline_ready();
    page.browser.requests();
    choose(&page, &sample("fpdf2.pdf"));
    wait_until_opened(&page, "fpdf2.pdf");
    let asked = page.browser.requests();
    let foreign: Vec<_> = asked
        .iter()
        .filter(|url| url.starts_with("http") && !url.starts_with(&page.site.url))
        .collect();
    assert!(foreign.is_empty(), "asked elsewhere: {foreign:?}");
    let errors = page.browser.console_errors();
    assert!(errors.is_empty(), "errors in the console:\n{}", errors.join("\n"));
}

/// Source: W3C Web Application Manifest and the Web Share Target draft, the
/// members they ask for (from memory).
#[test]
fn the_manifest_names_what_the_page_takes() {
    let text = fs::read_to_string(project().join("public/manifest.webmanifest")).unwrap();
    let manifest: Value = serde_json::from_str(&text).unwrap();
    for handler in manifest["file_handlers"].as_array().unwrap() {
        assert!(handler["action"].is_string());
        for (kind, ends) in handler["accept"].as_object().unwrap() {
            assert_eq!(kind.split('/').count(), 2, "{kind}");
            let ends = ends.as_array().unwrap();
            assert!(ends.iter().all(|end| end.as_str().unwrap().starts_with('.')), "{kind}");
        }
    }
    let share = &manifest["share_target"];
    assert_eq!(share["method"], "POST");
    assert_eq!(share["enctype"], "multipart/form-data");
    assert_eq!(share["params"]["files"][0]["name"], "file", "the worker reads this name");
}

#[test]
fn readings_go_out_as_a_table_and_in_the_exchange_form_and_come_back() {
    let page = Page::open("file-exports");
    page.browser.run("addEventListener('emberloam:save', ({ detail }) => window.__saved = detail)");
    choose(&page, &sample("libreoffice.ods"));
    wait_until_opened(&page, "libreoffice.ods");
    for (button, name, holds) in [
        ("#save-table", "table.csv", ",\"sheet "),
        ("#save-exchange", "exchange.json", "application/vnd.modus.v1.modus-result+json"),
    ] {
        page.save_as_files();
        page.browser.click(button);
        let saved = page.browser.run("return window.__saved");
        let written = saved.as_str().unwrap().splitn(3, '\n').nth(2).unwrap().to_owned();
        assert!(written.contains(holds), "{name}: {written}");
        assert!(written.contains("North bed") && written.contains("South bed"), "{name}");
        choose(&page, &made(name, written.as_bytes()));
        wait_until_opened(&page, name);
    }
}

#[test]
fn the_dates_go_out_as_a_calendar() {
    let page = Page::open("file-calendar");
    page.browser.run("addEventListener('emberloam:save', ({ detail }) => window.__saved = detail)");
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    page.answer("Next planting or sowing", "2027-04-20");
    page.save_as_files();
    page.browser.click("#save-calendar");
    let saved = page.browser.run("return window.__saved");
    let saved = saved.as_str().unwrap();
    assert!(saved.contains(".ics\ntext/calendar\nBEGIN:VCALENDAR\r\n"), "{saved}");
    assert!(saved.contains("BEGIN:VEVENT") && saved.ends_with("END:VCALENDAR\r\n"), "{saved}");
}

/// A PDF of 6 kB whose page unfolds, packed twice, to more than a gigabyte of lines that are
/// drawn nowhere: its reading ends within the memory that the opener has, in words, and the next
/// file opens.
#[test]
fn a_small_file_that_unfolds_without_end_is_refused_and_the_next_is_read() {
    let page = Page::with_report("file-unfolds");
    choose(&page, &project().join("tests/browser/unfolds.pdf"));
    wait_until_refused(&page, "could not be read");
    assert_eq!(page.report(), A_SURPLUS);
    choose(&page, &sample("list.csv"));
    wait_until_opened(&page, "list.csv");
}
