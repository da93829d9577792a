//! What to carry to the bed, each as a count with its picture. Behind one lies
//! how much more or less is as good, and how it was worked out.

use emberloam_engine::summary::{self, Carried};
use leptos::prelude::*;

use crate::grounds::{behind, opens};
use crate::in_place::{flag, settled, text};
use crate::state::Page;
use crate::this_season::picture::pictures;
use crate::words;

/// So many things stand on the first screen: biochar and what the soil itself wants come first.
const FIRST: usize = 3;

/// The list, with the size of the bed it is for.
pub fn carry(page: Page) -> impl IntoView {
    let list = Memo::new(move |_| page.of_outcome(summary::carry));
    let part = move |first: bool| {
        move || {
            list.with(|all| {
                let (leading, rest) = all.split_at(all.len().min(FIRST));
                if first { leading.to_vec() } else { rest.to_vec() }
            })
        }
    };
    let of_bed = move || list.with(|all| all.first().map(|c| c.of_bed.clone()));
    view! {
        <div id="carry" hidden=flag(move || list.with(Vec::is_empty))>
            <p class="carry-for">{text(move || of_bed().unwrap_or_default())}</p>
            <ul class="plain carried">{settled(part(true), one)}</ul>
            <details class="carried-more" hidden=flag(move || part(false)().is_empty())>
                <summary>{text(move || words::more_to_carry(part(false)().len()))}</summary>
                <ul class="plain carried">{settled(part(false), one)}</ul>
            </details>
        </div>
    }
}

fn one(of: Carried) -> impl IntoView {
    let opened = RwSignal::new(false);
    let Carried { name, count, vessel, amount, what, weighs, fine, grounds, .. } = of;
    let weighs = (!weighs.is_empty()).then(|| view! { ", " <span>{weighs}</span> });
    view! {
        <li data-carry=name>
            <details on:toggle=opens(opened)>
                <summary>
                    {pictures(vessel, count)} <span class="carried-words">
                        <strong>{amount}</strong>
                        " "
                        {words::of_what(&what)} {weighs}
                    </span>
                </summary>
                <p>{fine}</p>
                {behind(opened, move || grounds.clone())}
            </details>
        </li>
    }
}
