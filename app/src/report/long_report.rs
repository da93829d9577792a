//! A long report is read in steps, with turns for the page in between. Until it
//! is read, the page holds what it held before.

use emberloam_engine::report::{self, Grid};
use leptos::prelude::*;

use crate::long_work::{Done, Work, begin};
use crate::state::Page;
use crate::{state, words};

/// The steps: the cells, the results, the page.
const STEPS: usize = 3;

/// Reads a text that was put into the paste box.
pub fn long_report(page: Page, text: String) {
    if page.text.with_untracked(|now| *now == text) {
        page.new_turn();
        return;
    }
    let mine = page.begin_reading();
    let (opened, refused) = (page.opened.get_untracked(), page.refused.get_untracked());
    page.refused.set(None);
    page.opened.set(String::new());
    let mut text = Some(text);
    let mut grid: Option<Grid> = None;
    let mut read = None;
    let mut parts = 0;
    begin(
        page,
        Work {
            name: words::READING_REPORT,
            // The page says what was read.
            said: "",
            slice: Box::new(move || {
                // Another report came in between, or all was erased.
                if page.turn() != mine {
                    return Done::default();
                }
                let Some(whole) = &text else { return Done::default() };
                match parts {
                    0 => match report::open(whole.as_bytes()) {
                        Ok(cells) => grid = Some(cells),
                        Err(trouble) => read = Some(Err(trouble)),
                    },
                    1 => read = grid.take().map(|cells| report::read(&cells)).or(read.take()),
                    _ => {
                        if let (Some(whole), Some(read)) = (text.take(), read.take()) {
                            put(page, whole, read);
                        }
                    }
                }
                parts += 1;
                Done { parts, of: STEPS }
            }),
            undo: Box::new(move || {
                if page.turn() == mine {
                    page.new_turn();
                    page.opened.set(opened);
                    page.refused.set(refused);
                }
            }),
            from: "report-text",
        },
    );
}

/// Puts the report in place of the one there was.
fn put(page: Page, text: String, read: state::Read) {
    // What was said meanwhile of this file, or of another one.
    let (opened, refused) = (page.opened.get_untracked(), page.refused.get_untracked());
    state::is_read(&text, read);
    // The box holds it already.
    page.reading.set(false);
    page.paste(text);
    page.opened.set(opened);
    page.refused.set(refused);
    page.came.update(|came| *came += 1);
}
