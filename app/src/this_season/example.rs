//! Before a report is in: a picture of an answer, and what charged and uncharged mean.

use emberloam_engine::summary::Vessel;
use leptos::prelude::*;

use crate::layer::{Stratum, edge, turf};
use crate::this_season::picture::pictures;
use crate::words;

/// The picture. It is no part of what can be worked with.
pub fn example() -> impl IntoView {
    let carried = |vessel, count, amount, what| {
        view! {
            <li>
                {pictures(vessel, Some(count))} " " <strong>{amount}</strong> " "
                {words::of_what(what)}
            </li>
        }
    };
    view! {
        <figure class="profile example">
            <figcaption>{words::EXAMPLE}</figcaption>
            <div class="layer humus">
                {turf()} {edge(Stratum::Humus)} <div class="layer-inside">
                    <p class="headline">{words::EXAMPLE_HEADLINE}</p>
                    <ul class="plain carried">
                        {carried(Vessel::Bag, 2.0, words::EXAMPLE_BAGS, words::EXAMPLE_BIOCHAR)}
                        {carried(Vessel::Cup, 2.0, words::EXAMPLE_CUPS, words::EXAMPLE_LIME)}
                    </ul>
                    <p class="next">{words::EXAMPLE_NEXT}</p>
                </div>
            </div>
            <div class="layer loam">
                {edge(Stratum::Loam)} <div class="layer-inside">
                    <p>{bag(false)} {words::UNCHARGED_MEANS}</p>
                    <p>{bag(true)} {words::CHARGED_MEANS}</p>
                </div>
            </div>
        </figure>
    }
}

/// A lump of biochar with its pores, empty or filled.
fn bag(charged: bool) -> AnyView {
    view! {
        <svg class="lump" class:charged=charged viewBox="0 0 40 24" aria-hidden="true">
            <path d="M3 13L8 4 19 2 31 4 37 12 32 21 18 22 7 20Z" />
            <circle cx="12" cy="10" r="2.500" />
            <circle cx="20" cy="7" r="2" />
            <circle cx="28" cy="11" r="2.500" />
            <circle cx="15" cy="16" r="2" />
            <circle cx="23" cy="16" r="2.500" />
        </svg>
    }
    .into_any()
}
