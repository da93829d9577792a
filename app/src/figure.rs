//! A number that opens to its grounds.

use emberloam_engine::quantity::{Figure, shown};
use leptos::prelude::*;

use crate::grounds;
use crate::in_place::{Look, keyed, text};
use crate::state::Page;
use crate::words;

/// A figure and what tells it from the others of its list.
type Keyed = (String, Figure);

/// One figure: its name, its value, and its grounds behind it. It stays open
/// while its number changes.
fn figure(page: Page, item: Memo<Keyed>) -> impl IntoView {
    let opened = RwSignal::new(false);
    let shown = move || item.look(|(_, figure)| value(page, figure));
    view! {
        <details
            class="figure"
            data-name=text(move || item.look(|(_, figure)| figure.name))
            on:toggle=grounds::opens(opened)
        >
            <summary>
                <span class="figure-name">
                    {text(move || item.look(|(_, figure)| words::title(figure.label)))}
                </span>
                <span class="figure-value">{text(shown)}</span>
                <span class="figure-hint">{words::GROUNDS}</span>
            </summary>
            {grounds::behind(opened, move || item.look(|(_, figure)| figure.grounds.clone()))}
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
    let list = move || {
        let mut told: Vec<Keyed> = Vec::new();
        for figure in list() {
            let before = told.iter().filter(|(_, other)| other.name == figure.name).count();
            told.push((format!("{} {before}", figure.name), figure));
        }
        told
    };
    let inside = keyed(list, |(key, _)| key.clone(), move |item| figure(page, item));
    view! { <div class="figures">{inside}</div> }
}

/// A figure's value in the reader's measures.
pub fn value(page: Page, figure: &Figure) -> String {
    shown(&figure.band, figure.unit, page.measures())
}
