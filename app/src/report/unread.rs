//! What could not be placed, each line with its reason and a way to it, beside
//! the number of results that were read.

use emberloam_engine::report::Unread;
use leptos::prelude::*;

use crate::in_place::{Look, flag, settled, text};
use crate::report::source::source_line;
use crate::state::Page;
use crate::words;

/// The fold; nothing where all was placed.
pub fn unread(page: Page) -> AnyView {
    let list = Memo::new(move |_| {
        let of_report = page
            .report
            .look(|report| report.as_ref().map(|r| r.unread.clone()).unwrap_or_default());
        let of_sample = page.of_sample(|sample| sample.unread.clone());
        of_sample.into_iter().chain(of_report).collect::<Vec<Unread>>()
    });
    view! {
        <details id="unread" class="fold" hidden=flag(move || list.look(Vec::is_empty))>
            <summary>{text(move || words::unread(list.look(Vec::len)))}</summary>
            <ul class="plain">
                {settled(
                    move || list.get(),
                    move |unread: Unread| {
                        view! {
                            <li>
                                {source_line(page, move || unread.place)}
                                <p>{unread.reason}</p>
                            </li>
                        }
                    },
                )}
            </ul>
        </details>
    }
    .into_any()
}
