//! Draws the PNG icons from `public/icons/mark.svg`, after the mark has changed.

use std::fs;

use emberloam_tests::driver::Browser;
use emberloam_tests::project;
use serde_json::json;

fn main() {
    let icons = project().join("public/icons");
    let mark = fs::read_to_string(icons.join("mark.svg")).expect("the mark can be read");
    // A system that masks an icon cuts its own edge: there the mark fills the whole square.
    let full = mark.replace(
        r#"<rect x="16" y="16" width="480" height="480" rx="96" />"#,
        r#"<rect width="512" height="512" />"#,
    );
    assert_ne!(mark, full, "the mark's edge is not where this program looks for it");
    let browser = Browser::start("icons");
    for (name, drawing, size) in [
        ("mark-192.png", &mark, 192),
        ("mark-512.png", &mark, 512),
        ("mark-maskable-512.png", &full, 512),
    ] {
        browser.goto("about:blank");
        browser.resize(size, size);
        browser.run_with(
            "document.body.style.margin = 0;
            document.body.innerHTML = arguments[0];
            const drawn = document.body.firstElementChild;
            drawn.style.display = 'block';
            drawn.style.width = drawn.style.height = `${arguments[1]}px`;",
            &[json!(drawing), json!(size)],
        );
        fs::write(icons.join(name), browser.picture_of(size, size)).expect("icons can be written");
        println!("{}", icons.join(name).display());
    }
}
