//! The whole page, top to bottom.

use std::time::Duration;

use emberloam_engine::quantity::Measures;
use leptos::prelude::*;

use crate::announce::announce;
use crate::beds::beds;
use crate::deferred;
use crate::do_it::do_it;
use crate::in_place::{Look, changed, flag, focus, press};
use crate::later::{self, later};
use crate::notes::notes;
use crate::paper::Printed;
use crate::report::files;
use crate::report::paste::paste;
use crate::sheet::sheet;
use crate::specialists::chart::Repaint;
use crate::specialists::specialists;
use crate::state::Page;
use crate::store::Restored;
use crate::this_season::example::example;
use crate::this_season::this_season;
use crate::why::why;
use crate::words;

/// The page, with what was kept on this device.
pub fn page(restored: Restored) -> impl IntoView {
    later::fetch();
    let page = Page::begin(restored);
    files::listen(page);
    provide_context(Repaint::follow());
    deferred::follow(page);
    let shown = Memo::new(move |_| page.has_report());
    view! {
        <div class="ground" class:has-report=flag(move || shown.get())>
            {heading(page)} {notes(page)} {later(move |parts| (parts.arrived)(page))}
            <div class="face">
                <div class="beside">
                    {paste(page)} {later(move |parts| (parts.alone)(page))} {beds(page)}
                </div>
                <Show when=move || shown.get() fallback=example>
                    <div class="profile">
                        {this_season(page)} {do_it(page)} {sheet(page)} {why(page)}
                        {specialists(page)}
                    </div>
                </Show>
            </div>
            <div class="keeps">
                {tools(page)} {later(move |parts| (parts.saved)(page))}
                {later(move |parts| (parts.sharing)(page))}
                {later(|parts| (parts.help)())}
            </div>
            {announce(page)}
            {later(move |parts| (parts.paper)(page))}
            <p class="drop-here" aria-hidden="true">
                {words::DROP_HERE}
            </p>
        </div>
    }
}

fn heading(page: Page) -> impl IntoView {
    view! {
        <header class="sky">
            <div class="sky-inside">
                <h1>{words::NAME}</h1>
                <p class="what">{words::WHAT_IT_DOES}</p>
                <p class="privacy">{words::PRIVACY}</p>
                <details class="settings">
                    <summary>{words::SETTINGS}</summary>
                    <div class="settings-inside">
                        {measures(page)}
                        // `public/language.js` and `public/look.js` do the rest.
                        <label class="tick">
                            <span>{words::LANGUAGE}</span>
                            <select id="language"></select>
                        </label>
                        <label class="tick">
                            <input type="checkbox" id="sun" />
                            <span>{words::SUN}</span>
                        </label>
                    </div>
                </details>
            </div>
        </header>
    }
}

/// Metric or US measures, for the whole page.
fn measures(page: Page) -> impl IntoView {
    let option = move |value: Measures, name: &'static str| {
        view! {
            <label class="tick">
                <input
                    type="radio"
                    name="measures"
                    prop:checked=flag(move || page.measures() == value)
                    on:change=changed(move |_| page.answer(|case| case.measures = value))
                />
                <span>{name}</span>
            </label>
        }
    };
    view! {
        <fieldset class="measures">
            <legend>{words::MEASURES}</legend>
            {option(Measures::Metric, words::METRIC)}
            {option(Measures::Us, words::US)}
        </fieldset>
    }
}

/// Print, save and erase; the less usual ways to save lie in a fold.
fn tools(page: Page) -> impl IntoView {
    // A text is not copied only to learn that there is one.
    let nothing = move || page.text.look(String::is_empty) && page.kept().is_blank();
    view! {
        <div class="buttons tools" hidden=nothing>
            <button
                type="button"
                id="print"
                hidden=flag(move || !page.has_report())
                on:click=press(move || print(page, Printed::Handout))
            >
                {words::PRINT}
            </button>
            <button
                type="button"
                id="print-whole"
                hidden=flag(move || !page.has_report())
                on:click=press(move || print(page, Printed::Whole))
            >
                {words::PRINT_WHOLE}
            </button>
            <details class="fold" hidden=flag(move || !page.has_report())>
                <summary>{words::SAVE_AS_FILES}</summary>
                <div class="buttons">
                    {later(move |parts| (parts.calendar)(page))} {files::save_report(page)}
                    {later(move |parts| (parts.exports)(page))}
                </div>
            </details>
            <button type="button" id="erase" on:click=press(move || {
                page.erase();
                focus("take-back");
            })>
                {words::ERASE}
            </button>
        </div>
    }
}

/// Has the paper made by `paper.rs`, then opens the browser's print window: it takes the page
/// as it is, and waits for nothing.
pub fn print(page: Page, what: Printed) {
    page.printed.set(Some(what));
    set_timeout(
        || {
            // Ignored: a browser that can't print says so itself.
            let _ = window().print();
        },
        Duration::ZERO,
    );
}
