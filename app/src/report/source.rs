//! A reading's own line in the pasted text.

use emberloam_engine::report::{Place, whereabouts};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlDetailsElement, HtmlTextAreaElement};

use crate::in_place::{Look, press, text};
use crate::state::Page;

/// Characters shown on either side of the cell.
const AROUND: usize = 28;

/// The line around a place: what stands before, in and after the cell.
fn excerpt(text: &str, place: Place) -> Option<(String, String, String)> {
    let line: Vec<char> = text.lines().nth(place.line.checked_sub(1)? as usize)?.chars().collect();
    let start = (place.start as usize).min(line.len());
    let end = (place.end as usize).clamp(start, line.len());
    let piece = |from: usize, to: usize| line[from..to].iter().collect::<String>();
    let from = start.saturating_sub(AROUND);
    let to = (end + AROUND).min(line.len());
    let before = if from > 0 { "…" } else { "" };
    let after = if to < line.len() { "…" } else { "" };
    Some((
        format!("{before}{}", piece(from, start)),
        piece(start, end),
        format!("{}{after}", piece(end, to)),
    ))
}

/// Where a place begins and ends in the whole text, in the UTF-16 units that
/// a text box counts in.
fn selection(text: &str, place: Place) -> Option<(u32, u32)> {
    let mut before = 0;
    let mut lines = text.split('\n');
    for _ in 1..place.line {
        before += lines.next()?.encode_utf16().count() + 1;
    }
    let line = lines.next()?;
    let units = |chars: u32| line.chars().take(chars as usize).map(char::len_utf16).sum::<usize>();
    Some(((before + units(place.start)) as u32, (before + units(place.end)) as u32))
}

/// A place as the key of a list.
pub fn source_key(place: Place) -> String {
    format!("{}:{}", place.line, place.start)
}

/// The page and line, or the sheet and cell, as a button that shows the place in the pasted report, and
/// the words around it as they stand there.
pub fn source_line(
    page: Page,
    place: impl Fn() -> Place + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let shown = move || page.text.look(|text| excerpt(text, place()));
    view! {
        <p class="source-line">
            <button type="button" class="quiet" on:click=press(move || select(page, place()))>
                {text(move || page.text.look(|text| whereabouts(text, place()).to_string()))}
            </button>
            {move || {
                shown()
                    .map(|(before, cell, after)| {
                        view! { <code translate="no">{before} <mark>{cell}</mark> {after}</code> }
                    })
            }}
        </p>
    }
}

/// Selects a place in the paste box and brings it into view.
fn select(page: Page, place: Place) {
    let document = document();
    if let Some(fold) = document.get_element_by_id("report-fold")
        && let Ok(fold) = fold.dyn_into::<HtmlDetailsElement>()
    {
        fold.set_open(true);
    }
    let Some(text_box) = document
        .get_element_by_id("report-text")
        .and_then(|element| element.dyn_into::<HtmlTextAreaElement>().ok())
    else {
        return;
    };
    if let Some((start, end)) = page.text.with_untracked(|text| selection(text, place)) {
        // Ignored: a selection that fails still leaves the box in focus.
        let _ = text_box.focus();
        let _ = text_box.set_selection_range(start, end);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "Soil test\nKalium µ 182 ppm\n𝛼 pH 6.5";

    #[test]
    fn the_cell_is_shown_within_its_line() {
        let place = Place { line: 2, start: 9, end: 12 };
        let (before, cell, after) = excerpt(TEXT, place).unwrap();
        assert_eq!((before.as_str(), cell.as_str(), after.as_str()), ("Kalium µ ", "182", " ppm"));
        assert_eq!(excerpt(TEXT, Place { line: 9, start: 0, end: 2 }), None);
        assert_eq!(excerpt(TEXT, Place::default()), None);
    }

    #[test]
    fn a_long_line_is_cut_on_both_sides() {
        let line = format!("{}X{}", "a".repeat(100), "b".repeat(100));
        let (before, cell, after) =
            excerpt(&line, Place { line: 1, start: 100, end: 101 }).unwrap();
        assert_eq!(cell, "X");
        assert!(before.starts_with("…a") && before.chars().count() == AROUND + 1);
        assert!(after.ends_with("b…") && after.chars().count() == AROUND + 1);
    }

    #[test]
    fn a_selection_counts_as_a_text_box_does() {
        let units: Vec<u16> = TEXT.encode_utf16().collect();
        for (line, start, end, cell) in [(2, 9, 12, "182"), (3, 5, 8, "6.5"), (1, 0, 4, "Soil")] {
            let (from, to) = selection(TEXT, Place { line, start, end }).unwrap();
            let found = String::from_utf16(&units[from as usize..to as usize]).unwrap();
            assert_eq!(found, cell);
        }
    }
}
