//! The whole page, top to bottom.

use std::time::Duration;

use emberloam_engine::quantity::Measures;
use leptos::prelude::*;
use web_sys::{HtmlElement, HtmlInputElement};

use crate::announce::announce;
use crate::beds::beds;
use crate::deferred::{self, in_turn, placed};
use crate::do_it::do_it;
use crate::frame::{element, hear, put};
use crate::in_place::{Look, flag, focus, press};
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
use crate::this_season::this_season;
use crate::why::why;
use crate::words;

/// The page, with what was kept on this device, within the frame of `public/index.html`; its
/// notes are what is mounted, and its parts follow in turns.
pub fn page(restored: Restored) -> impl IntoView {
    later::fetch();
    let page = Page::begin(restored);
    files::listen(page);
    provide_context(Repaint::follow());
    deferred::follow(page);
    let shown = Memo::new(move |_| page.has_report());
    let ground = element::<HtmlElement>("ground").class_list();
    Effect::new(move || {
        // Ignored: the name of a class is a plain word.
        let _ = ground.toggle_with_force("has-report", shown.get());
    });
    measures(page);
    paste(page);
    in_turn(move || put("face", profile(page, shown)));
    in_turn(move || {
        put("unread-place", later(move |parts| (parts.unread)(page)));
        put("alone", later(move |parts| (parts.alone)(page)));
        put("beside", beds(page).into_any());
    });
    in_turn(move || put("ground", below(page)));
    in_turn(|| files::tell("emberloam:mounted", ""));
    notes(page)
}

fn profile(page: Page, shown: Memo<bool>) -> AnyView {
    view! {
        <div class="shopping">{later(move |parts| (parts.shopping)(page))}</div>
        <Show when=move || shown.get()>
            <div class="profile">
                {this_season(page)} {placed(move || do_it(page))} {placed(move || sheet(page))}
                {placed(move || why(page))} {placed(move || specialists(page))}
            </div>
        </Show>
    }
    .into_any()
}

fn below(page: Page) -> AnyView {
    view! {
        {later(move |parts| (parts.arrived)(page))}
        <div class="keeps">
            {tools(page)} {later(move |parts| (parts.saved)(page))}
            {later(move |parts| (parts.sharing)(page))} {later(move |parts| (parts.trial)(page))}
            {later(|parts| (parts.help)())}
        </div>
        {announce(page)}
        {later(move |parts| (parts.paper)(page))}
        <p class="drop-here" aria-hidden="true">
            {words::DROP_HERE}
        </p>
    }
    .into_any()
}

/// Metric or US measures, for the whole page. `public/language.js` and `public/look.js` do the
/// rest of the settings.
fn measures(page: Page) {
    for (id, value) in [("metric", Measures::Metric), ("us", Measures::Us)] {
        let choice = element::<HtmlInputElement>(id);
        Effect::new(move || choice.set_checked(page.measures() == value));
        hear(id, "change", move |_| page.answer(|case| case.measures = value));
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
