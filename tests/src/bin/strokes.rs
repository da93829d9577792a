//! Measures what a change of one answer costs the page, as a tablet would feel
//! it: Chromium with its processor slowed down four times. Prints the table
//! that stands in DEVELOPERS.md.
//!
//! `cargo run -- build && cargo run -q -p emberloam-tests --features browser --bin strokes`

use emberloam_tests::page::{Page, SURPLUS};
use serde_json::json;

const RUNS: usize = 5;

/// The label of an answer and two values it changes between.
const STROKES: [(&str, [&str; 2]); 7] = [
    ("Share of the worked soil, by volume", ["4", "6"]),
    ("Area of the bed", ["8", "12"]),
    ("How deep you will mix it in", ["10", "20"]),
    ("What grows there", ["mixed vegetables", "lawn"]),
    ("Soil texture", ["loam", "sand"]),
    ("Your biochar", ["fresh, not charged", "charged already"]),
    ("Next planting or sowing", ["2027-05-01", "2027-02-01"]),
];

/// Gives an answer and waits until what it changed is drawn: the frame after
/// the change has been painted and the main thread is free again.
const STROKE: &str = "
    const [label, values, runs] = arguments;
    const field = [...document.querySelectorAll('#bed label.field, #needs label.field')]
        .find((field) => field.firstElementChild.textContent === label);
    const control = field?.querySelector('input, select');
    if (!control) return null;
    const long = [];
    const watch = new PerformanceObserver((list) =>
        list.getEntries().forEach((entry) => long.push(entry.duration)));
    watch.observe({ entryTypes: ['longtask'] });
    const free = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    // What lies below the answer follows after the frame; the next stroke waits for it.
    const idle = async () => {
        for (let quiet = 0; quiet < 8;) {
            const before = performance.now();
            await new Promise((done) => setTimeout(done, 20));
            quiet = performance.now() - before < 40 ? quiet + 1 : 0;
        }
    };
    const costs = [];
    for (let run = 0; run < runs; run += 1) {
        const value = values[run % 2];
        const option = [...(control.options ?? [])].find((o) => o.textContent === value);
        control.value = option?.value ?? value;
        await idle();
        const begun = performance.now();
        control.dispatchEvent(new Event('change', { bubbles: true }));
        // What follows a change runs in microtasks, before any frame or other task.
        for (let after = 0; after < 200; after += 1) await null;
        const worked = performance.now() - begun;
        await free();
        costs.push([worked, performance.now() - begun]);
    }
    await new Promise((done) => setTimeout(done, 100));
    watch.disconnect();
    return [costs, long]";

fn main() {
    let page = Page::open("strokes");
    page.browser.resize(1024, 768);
    page.browser.run_with("document.querySelector(arguments[0]).click()", &[json!(SURPLUS)]);
    page.wait_for_answer();
    page.browser.wait_for("the later parts", || page.browser.has("#course"));
    for unfolded in [false, true] {
        if unfolded {
            page.unfold_all();
        }
        for slower in [1, 4] {
            page.browser.devtools("Emulation.setCPUThrottlingRate", &json!({ "rate": slower }));
            let folds = if unfolded { "all unfolded" } else { "as it opens" };
            println!("\nProcessor {slower} times slower, {folds}\n");
            println!(
                "| Answer changed | Work, ms: middle | worst | To the painted frame, ms: middle | worst | Tasks over 50 ms |"
            );
            println!("|---|--:|--:|--:|--:|--:|");
            for (label, values) in STROKES {
                measure(&page, label, values);
            }
        }
    }
}

fn measure(page: &Page, label: &str, values: [&str; 2]) {
    let script = format!("return (async function () {{ {STROKE} }})(...arguments)");
    let measured = page.browser.run_with(&script, &[json!(label), json!(values), json!(RUNS)]);
    let Some(costs) = measured[0].as_array() else {
        println!("| {label} | no such answer on the page | | | | |");
        return;
    };
    let column = |at: usize| -> (f64, f64) {
        let mut all: Vec<f64> = costs.iter().filter_map(|cost| cost[at].as_f64()).collect();
        all.sort_by(f64::total_cmp);
        (all[all.len() / 2], all[all.len() - 1])
    };
    let (work, worst) = column(0);
    let (painted, late) = column(1);
    let long = measured[1].as_array().map_or(0, Vec::len);
    println!("| {label} | {work:.0} | {worst:.0} | {painted:.0} | {late:.0} | {long} |");
}
