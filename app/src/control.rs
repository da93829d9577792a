//! The few kinds of control the page has, each tied to one answer of the case.

use emberloam_engine::Case;
use emberloam_engine::quantity::{Unit, from_readers, in_readers, readers_symbol, significant};
use leptos::prelude::*;
use time::Date;
use web_sys::HtmlInputElement;

use crate::living::{flag, text};
use crate::state::Page;
use crate::{date, words};

/// One choice out of several; the first option is "not known".
pub fn choice<T: Copy + PartialEq + Send + Sync + 'static>(
    page: Page,
    label: &'static str,
    options: Vec<(T, &'static str)>,
    get: fn(&Case) -> Option<T>,
    set: fn(&mut Case, Option<T>),
) -> AnyView {
    pick(
        label,
        words::NOT_KNOWN,
        options,
        move || page.answers.with(get),
        move |picked| page.answer(|case| set(case, picked)),
    )
    .into_any()
}

/// A select box over `options`; the empty choice is called `empty`.
pub fn pick<T: Copy + PartialEq + Send + Sync + 'static>(
    label: &'static str,
    empty: &'static str,
    options: Vec<(T, &'static str)>,
    current: impl Fn() -> Option<T> + Copy + Send + Sync + 'static,
    picked: impl Fn(Option<T>) + 'static,
) -> impl IntoView {
    let values: Vec<T> = options.iter().map(|(value, _)| *value).collect();
    let choose = move |event| {
        let index = event_target_value(&event).parse::<usize>().ok();
        picked(index.and_then(|index| values.get(index)).copied());
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <select on:change=choose>
                <option value="" prop:selected=flag(move || current().is_none())>
                    {empty}
                </option>
                {options
                    .into_iter()
                    .enumerate()
                    .map(|(index, (value, name))| {
                        view! {
                            <option
                                value=index.to_string()
                                prop:selected=flag(move || current() == Some(value))
                            >
                                {name}
                            </option>
                        }
                    })
                    .collect_view()}
            </select>
        </label>
    }
}

/// A number in the reader's measures.
pub fn number(
    page: Page,
    label: &'static str,
    unit: Unit,
    get: fn(&Case) -> Option<f64>,
    set: fn(&mut Case, Option<f64>),
) -> AnyView {
    let shown = move || {
        let measures = page.measures.get();
        page.answers
            .with(get)
            .map_or_else(String::new, |value| significant(in_readers(value, unit, measures), 4))
    };
    let change = move |event| {
        let measures = page.measures.get_untracked();
        let typed = event_target::<HtmlInputElement>(&event).value_as_number();
        let value = Some(typed).filter(|typed| typed.is_finite() && *typed >= 0.0);
        page.answer(|case| set(case, value.map(|typed| from_readers(typed, unit, measures))));
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <span class="with-unit">
                <input
                    type="number"
                    inputmode="decimal"
                    min="0"
                    step="any"
                    prop:value=shown
                    on:change=change
                />
                <span>{text(move || readers_symbol(unit, page.measures.get()))}</span>
            </span>
        </label>
    }
    .into_any()
}

/// A date.
pub fn day(
    page: Page,
    label: &'static str,
    get: fn(&Case) -> Option<Date>,
    set: fn(&mut Case, Option<Date>),
) -> AnyView {
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <input
                type="date"
                prop:value=text(move || page.answers.with(get).map_or_else(String::new, date::iso))
                on:change=move |event| {
                    let typed = date::parse(&event_target_value(&event));
                    page.answer(|case| set(case, typed));
                }
            />
        </label>
    }
    .into_any()
}

/// Any number of choices out of several.
pub fn several<T: Copy + PartialEq + Send + Sync + 'static>(
    page: Page,
    label: &'static str,
    options: Vec<(T, &'static str)>,
    list: fn(&mut Case) -> &mut Vec<T>,
    has: fn(&Case, T) -> bool,
) -> AnyView {
    let boxes = options
        .into_iter()
        .map(|(value, name)| {
            let toggle = move |event| {
                let ticked = event_target_checked(&event);
                page.answer(|case| {
                    let list = list(case);
                    list.retain(|other| *other != value);
                    if ticked {
                        list.push(value);
                    }
                });
            };
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=flag(move || page.answers.with(|case| has(case, value)))
                        on:change=toggle
                    />
                    <span>{name}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="several">
            <legend class="field-name">{label}</legend>
            {boxes}
        </fieldset>
    }
    .into_any()
}
