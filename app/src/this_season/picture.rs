//! Small pictures of what an amount is carried in.

use emberloam_engine::summary::Vessel;
use leptos::prelude::*;

use crate::words;

/// More of one kind than this are counted by the number alone.
const MOST: f64 = 12.0;

/// The outline of a vessel in a box of 24 by 24.
pub fn outline(vessel: Vessel) -> &'static str {
    match vessel {
        Vessel::Bag => "M6 5C8 7 16 7 18 5L17 2H7ZM6 5C4 11 4 17 5 22H19C20 17 20 11 18 5",
        Vessel::Bucket => "M4 8H20L18 22H6ZM4 8C5 2 19 2 20 8",
        Vessel::Jug => "M6 3H17L18 21H6ZM6 3L4 6M17 8C22 8 22 15 18 15M7 12H11M7 16H11",
        Vessel::Cup => "M5 6H17L16 20H6ZM17 9C22 9 22 16 16.500 16",
        Vessel::Spoon => "M12 2C16 2 17 10 12 12 7 10 8 2 12 2ZM12 12V22",
        Vessel::Weight => "M7 9H17L20 22H4ZM12 9A3 3 0 1 1 12.100 9",
    }
}

/// So many of a vessel, the last cut where it is only half full; decoration,
/// for the amount stands beside it in words.
pub fn pictures(vessel: Vessel, count: Option<f64>) -> AnyView {
    let count = count.filter(|count| (0.5..=MOST).contains(count)).unwrap_or(1.0);
    let whole = count.floor();
    let full = (0..whole as usize).map(|_| picture(vessel, false));
    let half = (count > whole).then(|| picture(vessel, true));
    view! {
        <span class="pictures" aria-hidden="true">
            {full.chain(half).collect_view()}
        </span>
    }
    .into_any()
}

fn picture(vessel: Vessel, half: bool) -> AnyView {
    view! {
        <svg class="picture" class:half=half viewBox="0 0 24 24">
            <path d=outline(vessel) />
        </svg>
    }
    .into_any()
}

/// An amount as it is carried, in pictures and in words.
pub fn carried_words(vessel: Vessel, count: Option<f64>, amount: &str, what: &str) -> AnyView {
    view! {
        {pictures(vessel, count)}
        <span class="carried-words">
            <strong>{amount.to_string()}</strong>
            " "
            {words::of_what(what)}
        </span>
    }
    .into_any()
}
