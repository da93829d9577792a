//! Prints what a screen reader is given of the page, in the order it is read:
//! each heading, control, chart and announcement with its role and name, from
//! the browser's own accessibility tree.
//!
//! `cargo run -- build && cargo run -q -p emberloam-tests --features browser --bin heard`

use std::collections::HashMap;

use emberloam_tests::page::{Page, SURPLUS};
use serde_json::{Value, json};

/// Roles that say something by themselves; the texts in between are read as they stand.
const SAID: [&str; 17] = [
    "heading",
    "button",
    "textbox",
    "combobox",
    "radio",
    "checkbox",
    "spinbutton",
    "Date",
    "link",
    "DisclosureTriangle",
    "image",
    "img",
    "table",
    "region",
    "alert",
    "status",
    "main",
];

fn main() {
    let page = Page::open("heard");
    page.browser.resize(1024, 768);
    page.browser.devtools("Accessibility.enable", &json!({}));
    told("the empty page", &page);
    page.browser.run_with("document.querySelector(arguments[0]).click()", &[json!(SURPLUS)]);
    page.wait_for_answer();
    page.browser.wait_for("the later parts", || page.browser.has("#course"));
    announced("a report was pasted", &page);
    told("with an answer", &page);
    page.answer("Your biochar", "charged already");
    announced("the bag is charged already", &page);
    page.answer("What grows there", "lawn");
    announced("a lawn grows there", &page);
}

/// What the live regions say.
fn announced(when: &str, page: &Page) {
    std::thread::sleep(std::time::Duration::from_secs(2));
    println!("\n== announced when {when}\n{}", page.browser.text("#announce"));
}

fn told(when: &str, page: &Page) {
    println!("\n== {when}");
    let tree = page.browser.devtools("Accessibility.getFullAXTree", &json!({}));
    let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
    let by_id: HashMap<&str, &Value> =
        nodes.iter().filter_map(|node| Some((node["nodeId"].as_str()?, node))).collect();
    if let Some(root) = nodes.first() {
        say(root, &by_id);
    }
}

fn say(node: &Value, by_id: &HashMap<&str, &Value>) {
    let role = node["role"]["value"].as_str().unwrap_or_default();
    let name = node["name"]["value"].as_str().unwrap_or_default();
    if node["ignored"] != true && SAID.contains(&role) {
        let property = |wanted: &str| {
            let all = node["properties"].as_array()?;
            let found = all.iter().find(|property| property["name"] == wanted)?;
            Some(found["value"]["value"].clone())
        };
        let level = property("level").map_or_else(String::new, |level| format!(" {level}"));
        let open = match property("expanded") {
            Some(Value::Bool(true)) => ", open",
            Some(Value::Bool(false)) => ", closed",
            _ => "",
        };
        println!("{role}{level}{open}: {name}");
    }
    for child in node["childIds"].as_array().into_iter().flatten() {
        if let Some(child) = child.as_str().and_then(|id| by_id.get(id)) {
            say(child, by_id);
        }
    }
}
