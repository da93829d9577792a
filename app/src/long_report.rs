//! A long report is read in steps, with turns for the page in between. Until it
//! is read, the page holds what it held before.

use emberloam_engine::report::{self, Grid};
use leptos::prelude::*;
use web_sys::Event;

use crate::long_work::{Work, begin};
use crate::state::Page;
use crate::{state, words};

/// The steps: the cells, the results, the page.
const STEPS: usize = 3;

/// Reads a text that was put into the paste box.
pub fn long_report(page: Page, text: String) {
    let before = page.text.get_untracked();
    let erased = page.erased.with_untracked(Option::is_some);
    page.refused.set(None);
    page.opened.set(String::new());
    let mut text = Some(text);
    let mut grid: Option<Grid> = None;
    let mut read = None;
    let mut done = 0;
    begin(
        page,
        Work {
            name: words::READING_REPORT,
            // The page says what was read.
            said: "",
            of: STEPS,
            slice: Box::new(move || {
                let Some(whole) = &text else { return STEPS };
                if page.text.with_untracked(|now| *now != before)
                    || page.erased.with_untracked(Option::is_some) != erased
                {
                    // Another report came in between, or all was erased.
                    return STEPS;
                }
                match done {
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
                done += 1;
                done
            }),
            // The box shows the new text already.
            undo: Box::new(move || page.text.notify()),
            from: "report-text",
        },
    );
}

/// Puts the report in place of the one there was.
fn put(page: Page, text: String, read: state::Read) {
    let opened = page.opened.get_untracked();
    state::is_read(&text, read);
    page.paste(text);
    page.opened.set(opened);
    // On a phone the answer comes into view, as after a short paste.
    let text_box = document().get_element_by_id("report-text");
    if let (Some(text_box), Ok(event)) = (text_box, Event::new("paste")) {
        // Ignored: the answer only says whether a listener cancelled it.
        let _ = text_box.dispatch_event(&event);
    }
}
