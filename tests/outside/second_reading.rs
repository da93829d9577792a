//! The published ranges as a second pair of eyes read them, without seeing what the first typed.
//!
//! `second_reading.csv` keeps that reading: the upper ends as printed, how the text was read, and
//! where it differs from the row in `engine/facts/ranges.csv`, the reason. A reading that found
//! nothing is kept too: it counts for nobody, and the row is not said to be opened.

use std::collections::BTreeSet;

use emberloam_engine::ranges::{Scheme, schemes};
use emberloam_engine::sources::Grade;

struct Read {
    id: String,
    ends: Vec<f64>,
    /// Whether the text was found.
    found: bool,
    differs: bool,
    remark: String,
}

fn second_reading() -> Vec<Read> {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/outside/second_reading.csv");
    let mut reader = csv::Reader::from_path(file).expect("the second reading");
    reader
        .records()
        .map(|row| {
            let row = row.expect("a row");
            Read {
                id: row[0].into(),
                ends: row[1].split_whitespace().map(|end| end.parse().expect("a number")).collect(),
                found: &row[3] != "not found",
                differs: !row[4].is_empty(),
                remark: row[5].into(),
            }
        })
        .collect()
}

fn ends(scheme: &Scheme) -> Vec<f64> {
    scheme.steps().iter().filter_map(|step| step.up_to).collect()
}

/// Source: the publication of each row (opened or quoted, as the second reader says in the file).
#[test]
fn the_second_reader_found_the_same_figures_or_said_what_differs() {
    let mut agreed = 0;
    let mut wrong = Vec::new();
    for read in second_reading() {
        let Some(scheme) = schemes().find(|scheme| scheme.id() == read.id) else {
            wrong.push(format!("{} stands in no row of ranges.csv", read.id));
            continue;
        };
        if !read.found {
            if !read.ends.is_empty() || read.differs || read.remark.is_empty() {
                wrong.push(format!("{}: not found, so say where it was looked for", read.id));
            }
            continue;
        }
        let ours = ends(scheme);
        let same = ours.len() == read.ends.len()
            && ours.iter().zip(&read.ends).all(|(a, b)| (a - b).abs() < 1e-9);
        agreed += usize::from(same);
        if same == read.differs {
            wrong.push(format!("{}: {ours:?}, read again as {:?}", read.id, read.ends));
        }
        if read.differs && read.remark.is_empty() {
            wrong.push(format!("{} differs without a word why", read.id));
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
    assert!(agreed > 400, "only {agreed} rows agree");
}

/// Source: the publication of each row, as above (opened or quoted). No row stands twice, what was found is of a row that was read and not remembered, and of what
/// nobody found again no row says that its own figures were opened.
#[test]
fn the_second_reading_is_of_rows_that_were_read() {
    let mut seen = BTreeSet::new();
    for read in second_reading() {
        let scheme = schemes().find(|scheme| scheme.id() == read.id).expect("a row");
        let opened = scheme.citations.first().is_some_and(|first| first.grade == Grade::Opened);
        assert!(!read.found || !scheme.is_from_memory(), "{}: read, but remembered", read.id);
        assert!(read.found || !opened, "{}: opened, but not found again", read.id);
        assert!(seen.insert(read.id.clone()), "{} was read twice", read.id);
    }
}
