//! What a number rests on: rule, inputs, what was assumed, sources.

use emberloam_engine::quantity::Grounds;
use emberloam_engine::sources::Citation;
use leptos::prelude::*;

use crate::words;

/// The grounds, laid out; for the inside of something that opens.
pub fn grounds(of: impl Fn() -> Grounds + Send + Sync + 'static) -> impl IntoView {
    move || {
        let Grounds { rule, inputs, assumed, sources } = of();
        view! {
            <div class="grounds">
                {(!rule.is_empty()).then(|| view! { <p class="rule">{rule}</p> })}
                {(!inputs.is_empty())
                    .then(|| {
                        view! {
                            <p class="aside-word">{words::GROUNDS_INPUTS}</p>
                            <dl class="inputs">
                                {inputs
                                    .into_iter()
                                    .map(|input| {
                                        view! {
                                            <div>
                                                <dt>{input.name}</dt>
                                                <dd>{input.value}</dd>
                                            </div>
                                        }
                                    })
                                    .collect_view()}
                            </dl>
                        }
                    })}
                {(!assumed.is_empty())
                    .then(|| {
                        view! {
                            <p class="aside-word">{words::GROUNDS_ASSUMED}</p>
                            <ul>
                                {assumed
                                    .into_iter()
                                    .map(|text| view! { <li>{text}</li> })
                                    .collect_view()}
                            </ul>
                        }
                    })}
                {(!sources.is_empty())
                    .then(|| {
                        view! {
                            <p class="aside-word">{words::GROUNDS_SOURCES}</p>
                            <ul class="citations">
                                {sources
                                    .into_iter()
                                    .map(|source| view! { <li>{citation(source)}</li> })
                                    .collect_view()}
                            </ul>
                        }
                    })}
            </div>
        }
    }
}

/// The grounds behind a small "why" that opens.
pub fn opened_grounds(of: impl Fn() -> Grounds + Send + Sync + Clone + 'static) -> impl IntoView {
    let empty = {
        let of = of.clone();
        move || of() == Grounds::default()
    };
    view! {
        <details class="open-grounds" hidden=empty>
            <summary>{words::GROUNDS}</summary>
            {grounds(of)}
        </details>
    }
}

/// A publication with the grade of the reading.
pub fn citation(citation: Citation) -> impl IntoView {
    let place = citation.source.place;
    let title = if place.starts_with("http") {
        view! { <a href=place rel="noreferrer">{citation.source.title}</a> }.into_any()
    } else if place.is_empty() {
        citation.source.title.into_any()
    } else {
        format!("{}, {place}", citation.source.title).into_any()
    };
    view! {
        {title}
        " "
        <span class="grade">"(" {citation.grade.words()} ")"</span>
    }
}
