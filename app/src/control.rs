//! The few kinds of control the page has, each tied to one answer of the case.

use std::sync::Arc;

use emberloam_engine::Case;
use emberloam_engine::quantity::{
    Measures, Unit, from_readers, in_readers, readers_symbol, significant,
};
use emberloam_engine::season::{day, twelve};
use leptos::html::Select;
use leptos::prelude::*;
use time::Date;
use web_sys::HtmlInputElement;

use crate::deferred::followed;
use crate::in_place::{Flag, Look, Text, changed, flag, text};
use crate::language;
use crate::origin::is_fixed;
use crate::state::Page;
use crate::words;

/// Whether a control is closed, because a link has fixed its answer.
pub type Fixed = Arc<dyn Fn() -> bool + Send + Sync>;

/// How a number is found among the answers.
pub type Found = dyn Fn(&Case) -> Option<f64> + Send + Sync;
/// How it is put there.
pub type Put = dyn Fn(&mut Case, Option<f64>);

/// One choice out of several; the first option is "not known".
pub fn choice<T: Copy + PartialEq + Send + Sync + 'static>(
    page: Page,
    label: &'static str,
    options: Vec<(T, &'static str)>,
    get: fn(&Case) -> Option<T>,
    set: fn(&mut Case, Option<T>),
) -> AnyView {
    let now = followed(move || page.said(get));
    pick_unless(
        label,
        words::NOT_KNOWN,
        options,
        move || now.get(),
        move |picked| page.answer(|case| set(case, picked)),
        Arc::new(move || is_fixed(page, get)),
    )
}

/// A select box over `options`; the empty choice is called `empty`.
pub fn pick<T: Copy + PartialEq + Send + Sync + 'static>(
    label: &'static str,
    empty: &'static str,
    options: Vec<(T, &'static str)>,
    current: impl Fn() -> Option<T> + Send + Sync + 'static,
    picked: impl Fn(Option<T>) + 'static,
) -> AnyView {
    pick_unless(label, empty, options, current, picked, Arc::new(|| false))
}

/// The same, closed while it is `fixed`.
fn pick_unless<T: Copy + PartialEq + Send + Sync + 'static>(
    label: &'static str,
    empty: &'static str,
    options: Vec<(T, &'static str)>,
    current: impl Fn() -> Option<T> + Send + Sync + 'static,
    picked: impl Fn(Option<T>) + 'static,
    fixed: Fixed,
) -> AnyView {
    let (values, names): (Vec<T>, Vec<&'static str>) = options.into_iter().unzip();
    let at = values.clone();
    boxed_pick(
        label,
        empty,
        names,
        Box::new(move || current().and_then(|now| at.iter().position(|value| *value == now))),
        Box::new(move |index| picked(index.and_then(|index| values.get(index)).copied())),
        fixed,
    )
}

fn boxed_pick(
    label: &'static str,
    empty: &'static str,
    names: Vec<&'static str>,
    current: Box<dyn Fn() -> Option<usize>>,
    picked: Box<dyn Fn(Option<usize>)>,
    fixed: Fixed,
) -> AnyView {
    let choose = move |event: web_sys::Event| picked(event_target_value(&event).parse().ok());
    let value = |index: Option<usize>| index.map_or_else(String::new, |index| index.to_string());
    let options: Vec<_> = std::iter::once((None, empty))
        .chain(names.into_iter().enumerate().map(|(index, name)| (Some(index), name)))
        .map(|(index, name)| view! { <option value=value(index)>{name}</option> })
        .collect();
    let select = NodeRef::<Select>::new();
    // The select follows as a whole: an effect for each option would wake hundreds at every change.
    Effect::new(move |_| {
        let now = value(current());
        if let Some(select) = select.get() {
            select.set_value(&now);
        }
    });
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <select node_ref=select disabled=flag(move || fixed()) on:change=changed(choose)>
                {options}
            </select>
        </label>
    }
    .into_any()
}

/// A number in the reader's measures.
pub fn number(
    page: Page,
    label: &'static str,
    unit: Unit,
    get: fn(&Case) -> Option<f64>,
    set: fn(&mut Case, Option<f64>),
) -> AnyView {
    number_of(page, label, unit, Box::new(get), Box::new(set))
}

/// A number in the reader's measures, not below `least`.
pub fn number_from(
    page: Page,
    label: &'static str,
    unit: Unit,
    least: f64,
    get: fn(&Case) -> Option<f64>,
    set: fn(&mut Case, Option<f64>),
) -> AnyView {
    boxed_number(page, label, unit, least, Box::new(get), Box::new(set))
}

/// A number of one among several of a kind, in the reader's measures.
pub fn number_of(
    page: Page,
    label: &'static str,
    unit: Unit,
    get: Box<Found>,
    set: Box<Put>,
) -> AnyView {
    boxed_number(page, label, unit, 0.0, get, set)
}

fn boxed_number(
    page: Page,
    label: &'static str,
    unit: Unit,
    least: f64,
    get: Box<Found>,
    set: Box<Put>,
) -> AnyView {
    let get: Arc<Found> = get.into();
    let of = get.clone();
    // The number and its unit follow together: one must not stand with another's.
    let shown = followed(move || {
        let measures = page.measures();
        let number = page
            .said(|case| of(case))
            .map_or_else(String::new, |value| significant(in_readers(value, unit, measures), 4));
        (number, measures)
    });
    let change = move |event: web_sys::Event| {
        let field = event_target::<HtmlInputElement>(&event);
        let measures = shown.with_untracked(|(_, measures)| *measures);
        let typed = field.value_as_number();
        let value = Some(typed).filter(|typed| typed.is_finite() && *typed >= least);
        // What the field holds now; it is put right only where the answer is another.
        shown.set((field.value(), measures));
        let value = value.map(|typed| from_readers(typed, unit, measures));
        let refused = page.answer_within_bounds(|case| set(case, value));
        field.set_custom_validity(&refused.map_or_else(String::new, |why| language::say(&why)));
        field.report_validity();
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <span class="with-unit">
                <input
                    type="number"
                    inputmode="decimal"
                    min=least
                    step="any"
                    disabled=flag(move || is_fixed(page, |case| get(case)))
                    prop:value=text(move || shown.get().0)
                    on:change=changed(change)
                />
                <span>{text(move || readers_symbol(unit, shown.get().1))}</span>
            </span>
        </label>
    }
    .into_any()
}

/// A number that is no answer about the bed: what is typed in the reader's measures is handed on
/// in `unit`, not a number where none was typed.
pub fn number_typed(
    page: Page,
    label: &'static str,
    unit: Unit,
    class: &'static str,
    value: Text,
    placeholder: Text,
    put: Box<dyn Fn(f64)>,
) -> AnyView {
    let typed = move |event: web_sys::Event| {
        let typed = event_target::<HtmlInputElement>(&event).value_as_number();
        let measures = page.answers.with_untracked(|case| case.measures);
        put(from_readers(typed, unit, measures));
    };
    view! {
        <label class=class>
            <span class="field-name">{label}</span>
            <span class="with-unit">
                <input
                    type="number"
                    inputmode="decimal"
                    min="0"
                    step="any"
                    prop:value=value
                    placeholder=placeholder
                    on:change=changed(typed)
                />
                <span>{text(move || readers_symbol(unit, page.measures()))}</span>
            </span>
        </label>
    }
    .into_any()
}

/// A date.
pub fn date(
    page: Page,
    label: &'static str,
    get: fn(&Case) -> Option<Date>,
    set: fn(&mut Case, Option<Date>),
) -> AnyView {
    let now = followed(move || page.said(get));
    date_of(
        label,
        move || now.get(),
        move |typed| page.answer(|case| set(case, typed)),
        Arc::new(move || is_fixed(page, get)),
    )
}

/// A date that is kept anywhere.
pub fn date_of(
    label: &'static str,
    get: impl Fn() -> Option<Date> + Send + 'static,
    set: impl Fn(Option<Date>) + 'static,
    fixed: Fixed,
) -> AnyView {
    let change = move |event: web_sys::Event| {
        let field = event_target::<HtmlInputElement>(&event);
        let typed = field.value();
        // While a year is typed the field holds 0002 and 0020: the answer waits until it is one.
        let day = if typed.is_empty() { Ok(None) } else { day::read(&typed).map(Some) };
        field.set_custom_validity(day.as_ref().err().map_or("", String::as_str));
        field.report_validity();
        if let Ok(day) = day {
            set(day);
        }
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <input
                type="date"
                disabled=flag(move || fixed())
                prop:value=text(move || get().map_or_else(String::new, day::iso))
                on:change=changed(change)
            />
        </label>
    }
    .into_any()
}

/// Twelve numbers, January to December, in the reader's measures. What can't be
/// read stays as it was typed, with the reason under it.
pub fn months(
    page: Page,
    label: &'static str,
    unit: Unit,
    get: fn(&Case) -> Option<[f64; 12]>,
    set: fn(&mut Case, Option<[f64; 12]>),
) -> AnyView {
    // What was typed and why it can't be read.
    let bad = RwSignal::new(None::<(String, String)>);
    Effect::new(move |_| {
        if !page.has_report() {
            bad.set(None);
        }
    });
    let shown = move || match bad.get() {
        Some((typed, _)) => typed,
        None => page
            .said(get)
            .map_or_else(String::new, |all| twelve::written(&all, unit, page.measures())),
    };
    let change = move |event: web_sys::Event| {
        let typed = event_target_value(&event);
        let measures = page.answers.with_untracked(|case| case.measures);
        let read = twelve::twelve(&typed, unit, measures);
        bad.set(read.as_ref().err().map(|why| (typed, why.clone())));
        page.answer(|case| set(case, read.unwrap_or_default()));
    };
    let symbol = move || match (unit, page.measures()) {
        (Unit::Celsius, Measures::Us) => "°F",
        (unit, measures) => readers_symbol(unit, measures),
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <span class="with-unit">
                <input type="text" prop:value=text(shown) on:change=changed(change) />
                <span>{text(symbol)}</span>
            </span>
            <span class="soft" role="status">
                {text(move || bad.look(|bad| bad.as_ref().map_or_else(String::new, |b| b.1.clone())))}
            </span>
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
    let values: Vec<T> = options.iter().map(|(value, _)| *value).collect();
    let given: RwSignal<Vec<bool>> =
        followed(move || page.said(|case| values.iter().map(|value| has(case, *value)).collect()));
    let boxes: Vec<_> = options
        .into_iter()
        .enumerate()
        .map(|(at, (value, name))| {
            let toggle = move |ticked| {
                page.answer(|case| {
                    let list = list(case);
                    list.retain(|other| *other != value);
                    if ticked {
                        list.push(value);
                    }
                });
            };
            let ticked = flag(move || given.look(|given| given.get(at) == Some(&true)));
            let all = move |case: &Case| list(&mut case.clone()).clone();
            tick(name, ticked, Box::new(toggle), flag(move || is_fixed(page, all)))
        })
        .collect();
    view! {
        <fieldset class="several">
            <legend class="field-name">{label}</legend>
            {boxes}
        </fieldset>
    }
    .into_any()
}

/// A yes or no.
pub fn tick(
    name: &'static str,
    ticked: Flag,
    toggle: Box<dyn Fn(bool)>,
    fixed: Flag,
) -> impl IntoView {
    view! {
        <label class="tick">
            <input
                type="checkbox"
                disabled=fixed
                prop:checked=ticked
                on:change=changed(move |event| toggle(event_target_checked(&event)))
            />
            <span>{name}</span>
        </label>
    }
}
