//! A number that opens to its grounds.

use emberloam_engine::quantity::{Figure, shown};
use leptos::prelude::*;

use crate::grounds;
use crate::living::{settled, text};
use crate::state::Page;
use crate::words;

/// One figure: its name, its value, and its grounds behind it.
fn figure(page: Page, of: Figure) -> impl IntoView {
    let Figure { name, label, grounds: behind, .. } = of.clone();
    let opened = RwSignal::new(false);
    view! {
        <details class="figure" data-name=name on:toggle=grounds::opens(opened)>
            <summary>
                <span class="figure-name">{words::title(label)}</span>
                <span class="figure-value">{text(move || value(page, &of))}</span>
                <span class="figure-hint">{words::GROUNDS}</span>
            </summary>
            {grounds::behind(opened, behind)}
        </details>
    }
}

/// A list of figures.
pub fn figures(
    page: Page,
    list: impl Fn() -> Vec<Figure> + Send + Sync + 'static,
) -> impl IntoView {
    boxed_figures(page, Box::new(list))
}

fn boxed_figures(page: Page, list: Box<dyn Fn() -> Vec<Figure> + Send + Sync>) -> impl IntoView {
    view! { <div class="figures">{settled(list, move |of| figure(page, of))}</div> }
}

/// A figure's value in the reader's measures.
pub fn value(page: Page, figure: &Figure) -> String {
    shown(&figure.band, figure.unit, page.measures())
}
