//! One shopping list for all beds, worked out when it is opened.

use std::sync::Arc;

use emberloam_engine::summary::{Shopping, ToBuy};
use leptos::prelude::*;

use crate::frame::window_is;
use crate::grounds::opened_grounds;
use crate::in_place::{Look, flag, lines, press, settled, text, unfolds};
use crate::page::print;
use crate::paper::Printed;
use crate::state::Page;
use crate::this_season::picture::carried_words;
use crate::words;

/// More beds than these are bought for with a calculator of one's own. Our choice.
const MOST: usize = 200;

/// Where there is room for it beside the plan, as `public/css/base.css` lays it out.
const WIDE: &str = "(min-width: 100rem) and (orientation: landscape)";

/// The fold with the list.
pub fn shopping(page: Page) -> AnyView {
    let open = RwSignal::new(false);
    let list = Memo::new(move |_| {
        let wanted = open.get() && (2..=MOST).contains(&page.count());
        Arc::new(if wanted { page.shopping() } else { Shopping::default() })
    });
    let nothing = move || list.look(|list| list.lines.is_empty() && list.not_counted.is_empty());
    view! {
        <details
            id="shopping"
            class="fold"
            open=flag(move || window_is(WIDE) && page.count() != 1)
            hidden=flag(move || !(2..=MOST).contains(&page.count()))
            on:toggle=unfolds(move |now| open.set(now))
        >
            <summary>{words::SHOPPING}</summary>
            <ul class="plain carried">{settled(move || list.look(|l| l.lines.clone()), line)}</ul>
            <ul class="notes">{lines(move || list.look(|l| l.not_counted.clone()))}</ul>
            <p>{text(move || if nothing() { words::NOTHING_TO_BUY } else { "" })}</p>
            <p class="buttons">
                <button
                    type="button"
                    id="print-all"
                    on:click=press(move || print(page, Printed::AllBeds))
                >
                    {words::PRINT_ALL}
                </button>
            </p>
        </details>
    }
    .into_any()
}

fn line(of: ToBuy) -> impl IntoView {
    let ToBuy { what, amount, count, vessel, beds, grounds } = of;
    let beds: Vec<_> = beds
        .into_iter()
        .map(|bed| view! { <li><span translate="no">{bed.name}</span> ": " {bed.amount}</li> })
        .collect();
    view! {
        <li>
            <details>
                <summary>
                    {carried_words(vessel, count, &amount, &what)}
                </summary>
                <ul class="plain">{beds}</ul>
                {opened_grounds(&what, grounds)}
            </details>
        </li>
    }
}
