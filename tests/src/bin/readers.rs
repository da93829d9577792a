//! Measures our readers beside general-purpose libraries, on the same files: in
//! Chromium pdfjs-dist, xlsx and papaparse, natively the csv crate. Prints the
//! tables that stand in DEVELOPERS.md.
//!
//! `cargo run -- build && cargo run --profile bench -p emberloam-tests --features bench --bin readers`
//! Fetches the libraries with npm into target/bench, and says so.

use std::fmt::Write as _;
use std::fs;
use std::hint::black_box;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use emberloam_engine::report;
use emberloam_tests::driver::Browser;
use emberloam_tests::project;
use emberloam_tests::site::Site;
use serde_json::json;
use wasm_bindgen_cli_support::Bindgen;

const LIBRARIES: [(&str, &str); 3] =
    [("pdfjs-dist", "6.5.438"), ("xlsx", "0.18.5"), ("papaparse", "5.7.1")];
const RUNS: usize = 15;

/// What a reader fetches, from the folder of libraries.
fn fetches(reader: &str) -> &'static [&'static str] {
    match reader {
        "opener" => &["opener.js", "opener_bg.wasm"],
        "cells alone" | "soil report" => &["reader.js", "reader_bg.wasm"],
        "pdfjs-dist" => &["pdf.min.js", "pdf.worker.min.js"],
        "xlsx" => &["xlsx.full.min.js"],
        _ => &["papaparse.min.js"],
    }
}

fn main() {
    let table = big_table();
    natively(&table);
    let site = Site::start_copy("readers");
    let libs = site.dist.join("libs");
    fs::create_dir_all(&libs).expect("the copy of the page can be written");
    bring_libraries(&libs);
    bring_ours(&site.dist, &libs);
    let bench = project().join("tests/bench");
    for name in ["readers.html", "readers.js"] {
        fs::copy(bench.join(name), site.dist.join(name)).expect("the bench page can be copied");
    }
    fs::write(site.dist.join("20000-samples.csv"), &table).expect("the table can be written");
    let corpus = project().join("tests/corpus/files");
    let sets: [(&[&str], &[&str]); 3] = [
        (
            &["opener", "pdfjs-dist"],
            &[
                "38-typed.standard.pdf",
                "25-index-beside.styled.pdf",
                "36-across-pages.bare.pdf",
                "36-across-pages.calc.pdf",
            ],
        ),
        (
            &["opener", "xlsx"],
            &["05-tidy.xlsxwriter.xlsx", "36-across-pages.office.xls", "05-tidy.office-ods.ods"],
        ),
        (
            &["cells alone", "soil report", "papaparse"],
            &["01-method-export.csv.csv", "20000-samples.csv"],
        ),
    ];
    let switches = ["--enable-precise-memory-info", "--js-flags=--expose-gc"];
    let browser = Browser::start_with("readers", &switches);
    let version = browser.run("return navigator.userAgent.match(/Chrom[a-z]*\\/[0-9.]+/)[0]");
    println!(
        "\n{} on this machine; middle of {RUNS} runs.\n",
        version.as_str().unwrap_or("Chromium")
    );
    println!(
        "| File | Reader | Middle, ms | First with fetch, ms | Memory, MB | Fetched, kB brotli |"
    );
    println!("|---|---|--:|--:|--:|--:|");
    for (readers, files) in sets {
        for file in files {
            let here = site.dist.join(file);
            if !here.exists() {
                fs::copy(corpus.join(file), &here).expect("a file of the corpus can be copied");
            }
            for reader in readers {
                println!("{}", row(&browser, &site.url, &libs, reader, file));
            }
        }
    }
}

/// One reader on one file in a fresh page.
fn row(browser: &Browser, url: &str, libs: &Path, reader: &str, file: &str) -> String {
    browser.goto("about:blank");
    browser.goto(&format!("{url}readers.html"));
    browser.wait_for("the bench page", || browser.run("return !!window.ready") == json!(true));
    let measured = browser.run_with(
        "return measure(arguments[0], arguments[1], arguments[2])",
        &[json!(reader), json!(file), json!(RUNS)],
    );
    let number = |key: &str| measured[key].as_f64().expect("a number");
    assert!(number("found") > 0.0, "{reader} found nothing in {file}");
    let fetched: usize = fetches(reader).iter().map(|name| packed(&libs.join(name))).sum();
    format!(
        "| {file} | {reader} | {:.2} | {:.0} | {:.1} | {:.0} |",
        number("middle"),
        number("first"),
        number("memory") / 1e6,
        fetched as f64 / 1e3
    )
}

/// The csv crate parts the same table natively.
fn natively(table: &str) {
    let time = |work: &dyn Fn() -> usize| {
        let mut times: Vec<f64> = (0..RUNS)
            .map(|_| {
                let begun = Instant::now();
                assert!(black_box(work()) > 0);
                begun.elapsed().as_secs_f64() * 1e3
            })
            .collect();
        times.sort_by(f64::total_cmp);
        times[RUNS / 2]
    };
    let by_csv = time(&|| {
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(table.as_bytes());
        // As strings of their own, as the grid keeps them.
        reader
            .records()
            .map(|row| row.expect("sound").iter().map(str::to_owned).collect::<Vec<_>>().len())
            .sum()
    });
    let cells =
        time(&|| report::open(table.as_bytes()).expect("sound").rows.iter().map(Vec::len).sum());
    let whole = time(&|| {
        let grid = report::open(table.as_bytes()).expect("sound");
        report::read(&grid).expect("sound").samples.len()
    });
    println!("Natively, 20,000 samples, {} kB; middle of {RUNS} runs.\n", table.len() / 1000);
    println!("| Reader | Middle, ms |\n|---|--:|");
    println!("| csv crate, cells as strings | {by_csv:.1} |");
    println!("| our cells, each with its place | {cells:.1} |");
    println!("| our whole soil report | {whole:.1} |");
}

/// An invented table of many samples.
fn big_table() -> String {
    let mut table =
        String::from("Sample,pH,OM %,P ppm,K ppm,Ca ppm,Mg ppm,S ppm,Zn ppm,CEC meq/100g\n");
    for at in 0..20_000_u32 {
        let part = |step: u32, span: u32| at.wrapping_mul(step) % span;
        let _ = writeln!(
            table,
            "Plot {at},{}.{},{}.{},{},{},{},{},{},{}.{},{}.{}",
            5 + part(7, 3),
            part(3, 10),
            1 + part(5, 8),
            part(11, 10),
            4 + part(13, 150),
            40 + part(17, 380),
            500 + part(19, 2700),
            40 + part(23, 380),
            4 + part(29, 36),
            part(31, 9),
            part(37, 10),
            5 + part(41, 20),
            part(43, 10),
        );
    }
    table
}

fn bring_libraries(libs: &Path) {
    let folder = project().join("target/bench");
    let modules = folder.join("node_modules");
    if LIBRARIES.iter().any(|(name, _)| !modules.join(name).exists()) {
        println!("Fetching {LIBRARIES:?} with npm into target/bench");
        fs::create_dir_all(&folder).expect("target/bench can be made");
        let status = Command::new("npm")
            .args([
                "install",
                "--no-save",
                "--no-audit",
                "--no-fund",
                "--omit=optional",
                "--prefix",
            ])
            .arg(&folder)
            .args(LIBRARIES.iter().map(|(name, version)| format!("{name}@{version}")))
            .status();
        assert!(status.is_ok_and(|s| s.success()), "npm could not fetch the libraries");
    }
    for (from, to) in [
        ("pdfjs-dist/build/pdf.min.mjs", "pdf.min.js"),
        ("pdfjs-dist/build/pdf.worker.min.mjs", "pdf.worker.min.js"),
        ("xlsx/dist/xlsx.full.min.js", "xlsx.full.min.js"),
        ("papaparse/papaparse.min.js", "papaparse.min.js"),
    ] {
        fs::copy(modules.join(from), libs.join(to)).expect("a library can be copied");
    }
}

/// Our opener as it is served, and the engine's reading as a module of its own.
fn bring_ours(dist: &Path, libs: &Path) {
    for name in ["opener.js", "opener_bg.wasm"] {
        fs::copy(dist.join(name), libs.join(name)).expect("the built opener can be copied");
    }
    let target = project().join("target");
    let status = Command::new("cargo")
        .current_dir(project())
        .args(["build", "--release", "-p", "emberloam-bench-reader"])
        .args(["--target", "wasm32-unknown-unknown", "--target-dir"])
        .arg(&target)
        .status();
    assert!(status.is_ok_and(|s| s.success()), "the bench module did not compile");
    let module: PathBuf = target.join("wasm32-unknown-unknown/release/emberloam_bench_reader.wasm");
    let mut binder = Bindgen::new();
    binder.input_path(module).out_name("reader").typescript(false).omit_default_module_path(false);
    binder.remove_name_section(true).remove_producers_section(true);
    let bound = binder.web(true).and_then(|binder| binder.generate(libs));
    assert!(bound.is_ok(), "the bench module can't be bound");
}

/// The length under brotli at its best setting.
fn packed(file: &Path) -> usize {
    let content = fs::read(file).expect("what a reader fetches is there");
    let settings = brotli::enc::BrotliEncoderParams { quality: 11, ..Default::default() };
    let mut out = Vec::new();
    brotli::BrotliCompress(&mut &content[..], &mut out, &settings).expect("brotli packs it");
    out.len()
}
