//! `cargo run -q -p emberloam-engine --example interpret -- [--text] REPORT [CASE.json]`
//!
//! Reads a soil report and, if given, a case with answers; prints the outcome
//! as JSON, or with `--text` the plan as plain text. For scripts, batches and
//! bug reports.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is the engine's command line: it reads files and prints"
)]

use std::io::Write;
use std::process::ExitCode;

use emberloam_engine::{Case, interpret, report, summary};

fn main() -> ExitCode {
    let files: Vec<String> = std::env::args().skip(1).collect();
    match run(&files) {
        Ok(text) => {
            // Ignored: a reader that has seen enough, such as `head`, may hang up.
            let _ = writeln!(std::io::stdout(), "{}", text.trim_end());
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn run(files: &[String]) -> Result<String, String> {
    let (as_text, files) = match files {
        [flag, files @ ..] if flag == "--text" => (true, files),
        files => (false, files),
    };
    let (report, case) = match files {
        [report] => (report, None),
        [report, case] => (report, Some(case)),
        _ => return Err("usage: interpret [--text] REPORT [CASE.json]".into()),
    };
    let bytes = std::fs::read(report).map_err(|e| format!("{report}: {e}"))?;
    let mut case = match case {
        None => Case::default(),
        Some(file) => {
            let json = std::fs::read_to_string(file).map_err(|e| format!("{file}: {e}"))?;
            serde_json::from_str(&json).map_err(|e| format!("{file}: {e}"))?
        }
    };
    case.report = report::open(&bytes)
        .and_then(|grid| report::read(&grid))
        .map_err(|trouble| format!("{report}: {trouble}"))?;
    let outcome = interpret(&case);
    if as_text {
        return Ok(summary::text(&summary::plan(&outcome, case.measures)));
    }
    serde_json::to_string_pretty(&outcome).map_err(|e| e.to_string())
}
