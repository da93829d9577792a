//! A number that opens to its grounds.

use emberloam_engine::quantity::{Figure, shown};
use leptos::prelude::*;

use crate::grounds::grounds;
use crate::living::{keyed, text};
use crate::state::Page;
use crate::words;

/// One figure: its name, its value, and its grounds behind it.
pub fn figure(page: Page, item: Memo<Figure>) -> impl IntoView {
    view! {
        <details class="figure" data-name=text(move || item.with(|f| f.name))>
            <summary>
                <span class="figure-name">{text(move || item.with(|f| words::title(f.label)))}</span>
                <span class="figure-value">{text(move || value(page, &item.get()))}</span>
                <span class="figure-hint">{words::GROUNDS}</span>
            </summary>
            {grounds(move || item.with(|f| f.grounds.clone()))}
        </details>
    }
}

/// A list of figures.
pub fn figures(
    page: Page,
    list: impl Fn() -> Vec<Figure> + Send + Sync + 'static,
) -> impl IntoView {
    view! { <div class="figures">{keyed(list, |f| f.name.to_string(), move |item| figure(page, item))}</div> }
}

/// A figure's value in the reader's measures.
pub fn value(page: Page, figure: &Figure) -> String {
    shown(&figure.band, figure.unit, page.measures.get())
}
