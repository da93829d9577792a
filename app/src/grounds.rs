//! What a number rests on: rule, inputs, what was assumed, sources.

use std::sync::Arc;

use emberloam_engine::quantity::Grounds;
use emberloam_engine::sources::{Citation, Source};
use leptos::prelude::*;

use crate::in_place::{changed, settled};
use crate::later::{Parts, later};
use crate::words;

/// The grounds, laid out; for the inside of something that opens.
pub fn grounds(of: Grounds) -> AnyView {
    let Grounds { rule, inputs, assumed, sources } = of;
    let inputs: Vec<_> = inputs
        .into_iter()
        .map(|input| {
            view! {
                <div>
                    <dt>{input.name}</dt>
                    <dd>{words::input_by(&input.value, input.by.map(Source::title))}</dd>
                </div>
            }
        })
        .collect();
    let assumed: Vec<_> =
        assumed.into_iter().map(|note| view! { <li>{note.to_string()}</li> }).collect();
    let sources: Vec<_> =
        sources.into_iter().map(|source| view! { <li>{citation(source)}</li> }).collect();
    view! {
        <div class="grounds">
            {(!rule.is_empty()).then(|| view! { <p class="rule">{rule}</p> })}
            {headed(words::GROUNDS_INPUTS, inputs.is_empty())} <dl class="inputs">{inputs}</dl>
            {headed(words::GROUNDS_ASSUMED, assumed.is_empty())} <ul>{assumed}</ul>
            {headed(words::GROUNDS_SOURCES, sources.is_empty())}
            <ul class="citations">{sources}</ul>
        </div>
    }
    .into_any()
}

/// The words over a list, unless the list is empty.
fn headed(words: &'static str, empty: bool) -> impl IntoView {
    (!empty).then(|| view! { <p class="aside-word">{words}</p> })
}

/// The grounds, made when the part they are in is first opened.
pub fn behind(opened: RwSignal<bool>, of: impl Fn() -> Grounds + Send + Sync + 'static) -> AnyView {
    once_opened(opened, Arc::new(move |parts| (parts.grounds)(of())))
}

/// A later part, made when what it is in is first opened: there are many, and
/// few are looked at.
pub fn once_opened(
    opened: RwSignal<bool>,
    part: Arc<dyn Fn(&Parts) -> AnyView + Send + Sync>,
) -> AnyView {
    let inside = move || {
        opened.get().then(|| {
            let part = part.clone();
            later(move |parts| part(parts))
        })
    };
    inside.into_any()
}

/// Notes that a part was opened.
pub fn opens(opened: RwSignal<bool>) -> Box<dyn FnMut(web_sys::Event)> {
    changed(move |_| {
        if !opened.get_untracked() {
            opened.set(true);
        }
    })
}

/// The grounds of what stands beside them, behind a small fold that is named after it.
pub fn opened_grounds(of_what: &str, of: Grounds) -> AnyView {
    let empty = of == Grounds::default();
    let opened = RwSignal::new(false);
    let name = words::grounds_of(of_what);
    view! {
        <details class="open-grounds" hidden=empty on:toggle=opens(opened)>
            <summary aria-label=name>{words::GROUNDS}</summary>
            {behind(opened, move || of.clone())}
        </details>
    }
    .into_any()
}

/// A sentence with what it rests on.
#[derive(Clone, PartialEq)]
pub struct Statement {
    /// The rule's name, when it has one.
    pub rule: Option<&'static str>,
    /// The sentence.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// Statements as a list: each opens to its grounds, and is itself the name of what opens.
pub fn statements(list: Box<dyn Fn() -> Vec<Statement> + Send + Sync>) -> AnyView {
    settled(list, |statement: Statement| {
        let Statement { rule, text, grounds } = statement;
        if grounds == Grounds::default() {
            return view! { <li data-rule=rule>{text}</li> }.into_any();
        }
        let opened = RwSignal::new(false);
        view! {
            <li data-rule=rule>
                <details class="statement" on:toggle=opens(opened)>
                    <summary>{text}</summary>
                    {behind(opened, move || grounds.clone())}
                </details>
            </li>
        }
        .into_any()
    })
}

/// A publication with the grade of the reading.
pub fn citation(citation: Citation) -> AnyView {
    let place = citation.source.place();
    let title = if place.starts_with("http") {
        let title = citation.source.title();
        view! { <a href=place rel="noreferrer" lang="en" translate="no">{title}</a> }.into_any()
    } else {
        publication(citation.source)
    };
    view! {
        {title}
        " "
        <span class="grade">"(" {citation.grade.words()} ")"</span>
    }
    .into_any()
}

/// A publication and where it is, in the language it is in. What only says
/// that there is none is said in the reader's.
pub fn publication(source: &Source) -> AnyView {
    if source.place().is_empty() {
        return source.title().into_any();
    }
    let title = words::source(source.title(), source.place());
    view! { <span lang="en" translate="no">{title}</span> }.into_any()
}
