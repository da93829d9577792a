//! What to carry to the bed, each as a count with its picture. Behind one lies
//! how much more or less is as good, and how it was worked out.

use emberloam_engine::summary::carry::{self, Carried};
use leptos::prelude::*;

use crate::grounds::{behind, opens};
use crate::in_place::{flag, settled, text};
use crate::state::Page;
use crate::this_season::picture::pictures;
use crate::words;

/// The list, with the size of the bed it is for.
pub fn carry(page: Page) -> impl IntoView {
    let list = Memo::new(move |_| page.of_outcome(carry::carry));
    let of_bed = move || list.with(|all| all.first().map(|c| c.of_bed.clone()));
    view! {
        <div id="carry" hidden=flag(move || list.with(Vec::is_empty))>
            <p class="carry-for">{text(move || of_bed().unwrap_or_default())}</p>
            <ul class="plain carried">{settled(move || list.get(), one)}</ul>
        </div>
    }
}

fn one(of: Carried) -> impl IntoView {
    let opened = RwSignal::new(false);
    let Carried { name, count, vessel, amount, what, fine, grounds, .. } = of;
    view! {
        <li data-carry=name>
            <details on:toggle=opens(opened)>
                <summary>
                    {pictures(vessel, count)} <span class="carried-words">
                        <strong>{amount}</strong>
                        " "
                        {words::of_what(&what)}
                    </span>
                </summary>
                <p>{fine}</p>
                {behind(opened, move || grounds.clone())}
            </details>
        </li>
    }
}
