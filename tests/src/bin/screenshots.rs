//! Takes pictures of the built page: `screenshots OUTDIR`.
//! `tour.png` is the one the README shows.

use std::fs;
use std::path::PathBuf;

use emberloam_tests::page::{FILE, Page, SURPLUS};
use serde_json::json;

fn main() {
    let Some(folder) = std::env::args().nth(1).map(PathBuf::from) else {
        eprintln!("Give the folder for the pictures: screenshots OUTDIR");
        std::process::exit(2);
    };
    fs::create_dir_all(&folder).expect("the folder can be made");
    let page = Page::open("screenshots");
    let take = |name: &str, width: u32, height: u32, scheme: &str| {
        page.browser.media("screen", scheme);
        page.browser.resize(width, height);
        page.browser.devtools("Emulation.setScrollbarsHidden", &json!({ "hidden": true }));
        page.browser.run("scrollTo(0, 0)");
        let path = folder.join(name);
        fs::write(&path, page.browser.picture()).expect("the picture can be written");
        println!("{}", path.display());
    };
    take("start-light.png", 1280, 800, "light");
    take("start-dark.png", 1280, 800, "dark");
    take("start-narrow.png", 320, 640, "light");
    // On a wide screen the report stays open beside the answer.
    page.browser.resize(1280, 1000);
    // Pressed from a script: a pointer would stay on the button and mark it.
    page.browser.run_with("document.querySelector(arguments[0]).click()", &[json!(SURPLUS)]);
    page.wait_for_answer();
    // Days from today: what a person says who still has time before winter.
    for (label, days) in [
        ("When the crop there now is off", 5),
        ("Usual first autumn frost", 30),
        ("Next planting or sowing", 150),
    ] {
        let day = page.browser.run_with(
            "return new Date(Date.now() + arguments[0] * 864e5).toISOString().slice(0, 10)",
            &[json!(days)],
        );
        page.answer(label, day.as_str().unwrap_or_default());
    }
    for (label, value) in [
        ("Area of the bed", "10"),
        ("How deep you will mix it in", "15"),
        ("What grows there", "mixed vegetables"),
        ("Your biochar", "fresh, not charged"),
    ] {
        page.answer(label, value);
    }
    page.browser
        .wait_for("an answer that no question can change", || !page.browser.shows(".provisional"));
    // As a person finds it: what was opened to be answered is closed again.
    page.browser
        .run("document.querySelectorAll('.chip, #bed, #door').forEach((f) => f.open = false)");
    // The keyboard's mark is no part of the picture.
    page.browser.run("document.activeElement?.blur()");
    take("tour.png", 1280, 1000, "light");
    take("answer-dark.png", 1280, 1000, "dark");
    take("answer-narrow.png", 320, 2400, "light");
    modes(&page, &folder);
    for (name, size) in [("plan-a4.pdf", (8.27, 11.69)), ("plan-letter.pdf", (8.5, 11.0))] {
        fs::write(folder.join(name), page.browser.pdf_of(size)).expect("the print can be written");
    }
    page.browser.media("screen", "light");
    page.speak("es");
    take("spanish.png", 1280, 1000, "light");
    take("spanish-narrow.png", 320, 2400, "light");
    // On paper, no longer on the screen.
    page.browser.devtools("Emulation.setEmulatedMedia", &json!({}));
    let pdf = page.browser.pdf_of((8.27, 11.69));
    fs::write(folder.join("plan-spanish-a4.pdf"), pdf).expect("the print can be written");
    page.speak("en");
    page.unfold_all();
    take("answer-unfolded.png", 1100, 6000, "light");
    page.browser.resize(1100, 1400);
    for part in ["needs", "course", "place", "winter", "traits", "register"] {
        page.browser
            .run_with("document.getElementById(arguments[0]).scrollIntoView()", &[json!(part)]);
        let path = folder.join(format!("{part}.png"));
        fs::write(path, page.browser.picture()).expect("the picture can be written");
    }
    compared(&page, &folder);
    files(&page, &folder);
}

/// The answer in every mode of looking at it.
fn modes(page: &Page, folder: &std::path::Path) {
    let sizes = [
        ("phone", 390, 844),
        ("tablet-upright", 820, 1180),
        ("tablet-sideways", 1180, 820),
        ("desk", 1440, 900),
    ];
    let modes = [
        ("light", json!([{ "name": "prefers-color-scheme", "value": "light" }])),
        ("dark", json!([{ "name": "prefers-color-scheme", "value": "dark" }])),
        ("contrast", json!([{ "name": "prefers-contrast", "value": "more" }])),
        ("forced", json!([{ "name": "forced-colors", "value": "active" }])),
        ("sun", json!([])),
    ];
    for (mode, features) in modes {
        page.browser.devtools("Emulation.setEmulatedMedia", &json!({ "features": features }));
        let sun = page.browser.run("return document.getElementById('sun').checked") == true;
        if sun != (mode == "sun") {
            page.browser.run("document.getElementById('sun').click()");
        }
        for (size, width, height) in sizes {
            page.browser.resize(width, height);
            page.browser.run("document.getElementById('answer').scrollIntoView()");
            let path = folder.join(format!("mode-{mode}-{size}.png"));
            fs::write(&path, page.browser.picture()).expect("the picture can be written");
        }
    }
    page.browser.run("document.getElementById('sun').click()");
    page.browser.devtools("Emulation.setEmulatedMedia", &json!({ "features": [] }));
}

/// A file held over the page, opened, and refused.
fn files(page: &Page, folder: &std::path::Path) {
    page.browser.resize(1100, 900);
    let take = |name: &str| {
        page.browser.run("scrollTo(0, 0)");
        let path = folder.join(name);
        fs::write(&path, page.browser.picture()).expect("the picture can be written");
        println!("{}", path.display());
    };
    page.browser.run("document.documentElement.classList.add('dropping')");
    take("file-held-over.png");
    page.browser.run("document.documentElement.classList.remove('dropping')");
    let corpus = emberloam_tests::project().join("tests/corpus/files");
    for (file, state, name) in [
        ("25-index-beside.styled.pdf", "#opened li", "file-opened.png"),
        ("no-scan.pdf", "#trouble :not(:empty)", "file-refused.png"),
    ] {
        page.browser.type_into(FILE, &corpus.join(file).display().to_string());
        page.browser.wait_for(file, || page.browser.shows(state));
        take(name);
    }
}

/// Several samples side by side, on a wide and on a narrow screen.
fn compared(page: &Page, folder: &std::path::Path) {
    page.browser.media("screen", "light");
    page.browser.resize(1100, 900);
    page.paste(
        "Method: Mehlich-3\n\
         Bed\tpH\tP ppm\tK ppm\tMg ppm\tOrganic matter %\n\
         Herb spiral\t6.4\t9\t80\t60\t3.1\n\
         Bean rows\t6.5\t140\t295\t210\t5.2\n\
         Cold frame\t7.3\t11\t88\t75\t4.4\n",
    );
    page.wait_for_answer();
    page.browser.run("document.getElementById('compare').open = true");
    page.browser.wait_for("the table", || page.browser.has(".compare tbody tr"));
    for (name, width) in [("compare-wide.png", 1100), ("compare-narrow.png", 360)] {
        page.browser.resize(width, 900);
        page.browser.run("document.getElementById('compare').scrollIntoView()");
        fs::write(folder.join(name), page.browser.picture()).expect("the picture can be written");
    }
}
