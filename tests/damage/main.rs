//! Damaged copies of every file of the corpus and of the open data: cut short,
//! bits flipped, pieces cut out, filled with zeros or doubled. Whatever comes
//! of it, nothing may panic, and nothing may hang: a file is opened, read,
//! interpreted and written out again, or refused with a message. The same holds
//! for texts without end.
//!
//! `cargo test -p emberloam-tests --test damage -- --nocapture` prints the
//! slowest.
#![allow(missing_docs, reason = "each test's name says what it checks")]

use std::borrow::Cow;
use std::fs;
use std::io::{Cursor, Read, Write};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, Instant};

use emberloam_engine::{Case, details, export, interpret, report, season, survey};
use emberloam_files::open_file;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

/// Long enough for a busy machine and unoptimised code; a file that takes longer hangs.
const HANGS: Duration = Duration::from_secs(180);

/// The whole way of a file, as the page goes it.
fn whole_way(bytes: &[u8]) {
    let Ok(opened) = open_file(bytes) else { return };
    let Ok(read) = report::open(opened.text.as_bytes()).and_then(|grid| report::read(&grid)) else {
        return;
    };
    let case = Case { report: read, ..Case::default() };
    let outcome = interpret(&case);
    let surveyed = survey(Cow::Borrowed(&case));
    details::traits(&surveyed);
    details::windows(&surveyed);
    details::courses(&surveyed, &outcome.plan);
    details::exchange_shift(&surveyed, &outcome.plan);
    details::winter_loss(&surveyed, &outcome.plan);
    season::place(&case.season, case.measures);
    let written = export::csv(&case.report, &outcome, &opened.text);
    assert!(!written.is_empty());
}

/// A small generator, so that the same damage is done each time.
/// Source: xorshift64 (Marsaglia, 2003), from memory.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % end.max(1) as u64) as usize
    }
}

/// The damaged copies of some bytes, each with what was done.
fn damaged(bytes: &[u8], seed: u64) -> Vec<(String, Vec<u8>)> {
    let mut dice = Dice(seed | 1);
    let mut copies = Vec::new();
    for part in [1, 3, 6, 9] {
        let at = bytes.len() * part / 10;
        copies.push((format!("cut short at {at}"), bytes[..at].to_vec()));
    }
    for share in [4000, 400, 40] {
        let mut copy = bytes.to_vec();
        let flips = bytes.len() / share + 1;
        for _ in 0..flips {
            let at = dice.below(copy.len());
            if let Some(byte) = copy.get_mut(at) {
                *byte ^= 1 << dice.below(8);
            }
        }
        copies.push((format!("{flips} bits flipped"), copy));
    }
    let from = dice.below(bytes.len());
    let to = (from + 1 + dice.below(bytes.len() / 3)).min(bytes.len());
    copies.push((format!("{from}..{to} cut out"), [&bytes[..from], &bytes[to..]].concat()));
    let mut zeros = bytes.to_vec();
    zeros[from..to].fill(0);
    copies.push((format!("{from}..{to} zeroed"), zeros));
    let doubled = [&bytes[..to], &bytes[from..]].concat();
    copies.push((format!("{from}..{to} doubled"), doubled));
    copies
}

/// The damaged copies of the parts of a zip, packed again: the damage gets past the checksum.
fn damaged_within(bytes: &[u8], seed: u64) -> Vec<(String, Vec<u8>)> {
    let Ok(mut archive) = ZipArchive::new(Cursor::new(bytes)) else { return Vec::new() };
    let mut parts = Vec::new();
    for at in 0..archive.len() {
        let mut part = archive.by_index(at).expect("a part of a sound zip");
        let mut content = Vec::new();
        part.read_to_end(&mut content).expect("a sound part");
        parts.push((part.name().expect("a name").into_owned(), content));
    }
    let mut copies = Vec::new();
    for (at, (name, content)) in parts.iter().enumerate() {
        if !name.ends_with(".xml") || content.is_empty() {
            continue;
        }
        for (what, broken) in damaged(content, seed + at as u64).into_iter().skip(2).step_by(2) {
            let mut packed = ZipWriter::new(Cursor::new(Vec::new()));
            let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
            for (other, (name, content)) in parts.iter().enumerate() {
                packed.start_file(name, stored).expect("a part begins");
                packed.write_all(if other == at { &broken } else { content }).expect("memory");
            }
            let copy = packed.finish().expect("the zip is written").into_inner();
            copies.push((format!("{name}: {what}"), copy));
        }
    }
    copies
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            files(&path, found);
        } else {
            found.push(path);
        }
    }
}

/// Goes the whole way of each file; fails when one makes a panic or hangs. Gives how many.
fn all_end(copies: impl Iterator<Item = (String, Vec<u8>)> + Send + 'static) -> usize {
    let (done, finished) = mpsc::channel();
    let (tell, doing) = mpsc::channel::<String>();
    thread::spawn(move || {
        let mut count = 0_usize;
        let mut slowest = (Duration::ZERO, String::new());
        let mut panics = Vec::new();
        for (what, copy) in copies {
            if tell.send(what.clone()).is_err() {
                return;
            }
            let begun = Instant::now();
            if catch_unwind(AssertUnwindSafe(|| whole_way(&copy))).is_err() {
                panics.push(what.clone());
            }
            count += 1;
            if begun.elapsed() > slowest.0 {
                slowest = (begun.elapsed(), what);
            }
        }
        // Nobody listens any more only when the test has failed already.
        let _ = done.send((count, slowest, panics));
    });
    let mut now = String::from("nothing");
    let (count, slowest, panics) = loop {
        match doing.recv_timeout(HANGS) {
            Ok(next) => now = next,
            Err(mpsc::RecvTimeoutError::Timeout) => panic!("over {HANGS:?}: {now}"),
            Err(mpsc::RecvTimeoutError::Disconnected) => {
                break finished.recv().expect("the work was finished");
            }
        }
    };
    println!("{count} files; the slowest took {:?}: {}", slowest.0, slowest.1);
    assert!(panics.is_empty(), "{} panics:\n{}", panics.len(), panics.join("\n"));
    count
}

#[test]
fn no_damaged_file_makes_a_panic_or_hangs() {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    files(&here.join("corpus/files"), &mut found);
    files(&here.join("open-data"), &mut found);
    found.sort();
    assert!(found.len() > 150);
    let count = all_end(found.into_iter().enumerate().flat_map(|(at, path)| {
        let bytes = fs::read(&path).expect("the file can be read");
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let seed = 7919 * (at as u64 + 1);
        let copies = [damaged(&bytes, seed), damaged_within(&bytes, seed)].concat();
        copies.into_iter().map(move |(what, copy)| (format!("{name}, {what}"), copy))
    }));
    assert!(count > 1500, "only {count} damaged files");
}

/// A line over and over, to about so many bytes.
fn over_and_over(line: &str, bytes: usize) -> Vec<u8> {
    line.repeat(bytes / line.len() + 1).into_bytes()
}

/// A line of so many cells.
fn wide(cell: &str, cells: usize) -> String {
    vec![cell; cells].join("\t") + "\n"
}

#[test]
fn nothing_without_end_hangs() {
    // What once took the square of its length, bytes: at this one it would take an hour.
    const MOST: usize = 1_500_000;
    let head_again = wide("pH", 1900) + &wide("6.5", 1900);
    let panels = wide("Name\tResult", 900) + &wide("pH\t6.5", 900);
    let across = format!("pH\t{}", wide("6.5", 1900));
    let across = format!("Name\t{}{}", wide("A", 1900), across.repeat(MOST / across.len()));
    let unknown = (0..MOST / 16).map(|i| format!("a\tzq{i}\t1\n"));
    let unknown = "Sample\tTest\tResult\n".to_string() + &unknown.collect::<String>();
    let texts = [
        ("digits", over_and_over("7", MOST)),
        ("digits with points and commas", over_and_over("7.1,", MOST)),
        ("columns", over_and_over("6.5\t", MOST)),
        ("names in 40,000 columns", (wide("pH", 40_000) + &wide("6.5", 40_000)).into_bytes()),
        ("results in one line", over_and_over("pH 6.5; ", MOST)),
        ("spreads", [b"P\t18".to_vec(), over_and_over(" ± 2", MOST)].concat()),
        ("quotes that never close", over_and_over("\"a\n", MOST)),
        ("lines of a digit", over_and_over("1\n", MOST)),
        ("lines of results", over_and_over("pH 6.5\n", MOST)),
        ("prose", over_and_over("We sat under a tree.\n", MOST)),
        ("methods", over_and_over("Method: Mehlich-3\n", MOST)),
        ("heads", over_and_over("Sample\tpH\tP\n", MOST)),
        ("wide heads", over_and_over(&head_again, MOST)),
        ("panels", over_and_over(&panels, MOST)),
        ("samples side by side", across.into_bytes()),
        ("names unknown here", unknown.into_bytes()),
        ("sheets", over_and_over("[sheet a]\npH 6.5\n", MOST)),
    ];
    let count = texts.len();
    let texts = texts.into_iter().map(|(what, text)| (what.to_string(), text));
    assert_eq!(all_end(texts), count);
}
