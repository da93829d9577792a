//! Names and numbers that stand apart in the report, side by side as they were counted off.

use emberloam_engine::report::{Pairing, Place};
use leptos::prelude::*;

use crate::in_place::{Look, settled};
use crate::report::source::source_line;
use crate::state::Page;
use crate::words;

/// One pair: the name, the number, and where the number stands.
#[derive(Clone, PartialEq)]
pub struct Pair {
    name: String,
    number: String,
    place: Place,
}

/// The pairs of the sample that is looked at.
pub fn all(page: Page) -> Vec<Pair> {
    page.report.look(|report| {
        let sample = report.as_ref().ok().and_then(|r| r.samples.get(page.chosen()));
        let Some(sample) = sample else { return Vec::new() };
        let apart = sample.readings.iter().filter(|r| r.pairing == Pairing::CountedOff);
        apart
            .map(|r| Pair { name: r.name.clone(), number: r.original.clone(), place: r.place })
            .collect()
    })
}

/// The same as a table.
pub fn pairs(page: Page) -> impl IntoView {
    view! {
        <table class="pairs">
            <caption class="sr-only">{words::COUNTED_OFF}</caption>
            <thead>
                <tr>
                    <th scope="col">{words::NAME_IN_REPORT}</th>
                    <th scope="col">{words::NUMBER_IN_REPORT}</th>
                    <th scope="col">{words::IN_YOUR_REPORT}</th>
                </tr>
            </thead>
            <tbody>
                {settled(
                    move || all(page),
                    move |pair: Pair| {
                        view! {
                            <tr>
                                <th scope="row">{pair.name}</th>
                                <td>{pair.number}</td>
                                <td>{source_line(page, move || pair.place)}</td>
                            </tr>
                        }
                    },
                )}
            </tbody>
        </table>
    }
}
