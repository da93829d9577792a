//! The whole page, top to bottom.

use emberloam_engine::quantity::Measures;
use leptos::prelude::*;

use crate::announce::announce;
use crate::answer::answer;
use crate::chart::Repaint;
use crate::holds::holds;
use crate::layer::{Stratum, empty_layer};
use crate::living::{Look, changed, flag, focus, press};
use crate::notes::notes;
use crate::paste::paste;
use crate::references::references;
use crate::season::season;
use crate::state::Page;
use crate::store::Restored;
use crate::why::why;
use crate::working::working;
use crate::{files, later, print, soon, words};

/// The page, with what was kept on this device.
pub fn page(restored: Restored) -> impl IntoView {
    later::fetch();
    let page = Page::begin(restored);
    files::listen(page);
    provide_context(Repaint::follow());
    soon::follow(page);
    let shown = Memo::new(move |_| page.has_report());
    view! {
        <div class="ground" class:has-report=flag(move || shown.get())>
            {heading(page)} {notes(page)} {later::later(move |parts| (parts.arrived)(page))}
            <div class="face">
                <div class="beside">
                    {paste(page, tools(page))} <div class="keeps">
                        {later::later(move |parts| (parts.shelf)(page))}
                        {later::later(move |parts| (parts.sharing)(page))}
                        {later::later(|parts| (parts.help)())}
                    </div>
                </div>
                <Show when=move || shown.get() fallback=waiting>
                    <div class="profile">
                        {answer(page)} {holds(page)} {why(page)} {season(page)} {working(page)}
                        {references(page)}
                    </div>
                </Show>
            </div>
            {announce(page)}
            {later::later(move |parts| (parts.plan)(page))}
            <p class="drop-here" aria-hidden="true">
                {words::DROP_HERE}
            </p>
        </div>
    }
}

/// The layers before a report is in: empty, but named.
fn waiting() -> impl IntoView {
    let layers = [
        (Stratum::Humus, words::WHAT_TO_DO),
        (Stratum::Loam, words::HOLDS),
        (Stratum::Ochre, words::WHY),
        (Stratum::Clay, words::WHEN),
        (Stratum::Marl, words::WORKING),
        (Stratum::Rock, words::SOURCES),
    ];
    view! {
        <ol class="profile waiting" aria-label=words::WHAT_YOU_WILL_SEE>
            {layers.map(|(stratum, name)| empty_layer(stratum, name)).collect_view()}
        </ol>
    }
}

fn heading(page: Page) -> impl IntoView {
    view! {
        <header class="sky">
            <div class="sky-inside">
                <h1>{words::NAME}</h1>
                <p class="what">{words::WHAT_IT_DOES}</p>
                <p class="privacy">{words::PRIVACY}</p>
                <div class="settings">
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

/// Print, save and erase.
fn tools(page: Page) -> impl IntoView {
    // A text is not copied only to learn that there is one.
    let nothing = move || page.text.look(String::is_empty) && page.kept().is_blank();
    view! {
        <div class="buttons tools">
            <button
                type="button"
                id="print"
                hidden=flag(move || !page.has_report())
                on:click=press(print::print)
            >
                {words::PRINT}
            </button>
            {files::save_report(page)} {later::later(move |parts| (parts.exports)(page))}
            <button type="button" id="erase" hidden=nothing on:click=press(move || {
                page.erase();
                focus("take-back");
            })>
                {words::ERASE}
            </button>
        </div>
    }
}
