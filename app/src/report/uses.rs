//! The source once more, with what was used of each line.

use emberloam_engine::report::{Stretch, Use, uses as of_report};
use leptos::prelude::*;

use crate::in_place::{Look, settled};
use crate::state::Page;
use crate::words;

/// So many lines are shown: a long file is looked at in its own program.
const MOST_LINES: usize = 300;

/// How a stretch is marked.
fn mark(used: Use) -> &'static str {
    match used {
        Use::Result => "result",
        Use::Beside => "beside",
        Use::Words => "words",
        Use::Listed => "listed",
        Use::Unused => "unused",
    }
}

/// The lines, folded away until somebody wants to see them.
pub fn uses(page: Page) -> AnyView {
    let opened = RwSignal::new(false);
    let lines = move || {
        if !opened.get() {
            return Vec::new();
        }
        page.text.look(|text| {
            page.report.look(|report| {
                report.as_ref().map_or_else(|_| Vec::new(), |r| of_report(text, r, MOST_LINES))
            })
        })
    };
    view! {
        <details id="uses" on:toggle=crate::grounds::opens(opened)>
            <summary>{words::USES}</summary>
            <p class="soft">{words::USES_HOW_TO_READ}</p>
            <ol class="uses" translate="no">
                {settled(lines, |line: Vec<Stretch>| view! { <li>{stretches(line)}</li> })}
            </ol>
        </details>
    }
    .into_any()
}

fn stretches(line: Vec<Stretch>) -> impl IntoView {
    let shown = |s: Stretch| view! { <span data-use=mark(s.used)>{s.text}</span> };
    line.into_iter().map(shown).collect_view()
}
