//! What a specialist opens: every number behind the plan, and the views that
//! don't change what a person does. All of it behind one door, made when it is opened.

pub mod certificate;
pub mod charging;
pub mod chart;
pub mod compare;
pub mod course;
pub mod effects;
pub mod needs;
pub mod place;
pub mod purchase;
pub mod reaction;
pub mod robustness;
pub mod traits;
pub mod winter;
pub mod work_in;
mod working;

use std::sync::Arc;

use leptos::prelude::*;

use crate::deferred::placed;
use crate::grounds::{once_opened, opens};
use crate::layer::{Stratum, layer};
use crate::report::uses::uses;
use crate::specialists::certificate::certificate;
use crate::specialists::charging::charging;
use crate::specialists::course::course;
use crate::specialists::effects::effects;
use crate::specialists::needs::needs;
use crate::specialists::place::place;
use crate::specialists::purchase::purchase;
use crate::specialists::robustness::robustness;
use crate::specialists::traits::traits;
use crate::specialists::winter::winter;
use crate::specialists::work_in::work_in;
use crate::specialists::working::{amounts, working};
use crate::state::Page;
use crate::words;

/// The layer with its door.
pub fn specialists(page: Page) -> impl IntoView {
    let opened = RwSignal::new(false);
    layer(
        Stratum::Rock,
        "specialists",
        words::SPECIALISTS,
        view! {
            <details id="door" class="fold" on:toggle=opens(opened)>
                <summary>{words::SPECIALISTS_DOOR}</summary>
                {once_opened(opened, Arc::new(move |parts| (parts.behind_the_door)(page)))}
            </details>
        },
    )
}

/// What lies behind the door, from top to bottom.
const PARTS: [fn(Page) -> AnyView; 14] = [
    amounts,
    purchase,
    work_in,
    charging,
    needs,
    robustness,
    effects,
    course,
    place,
    winter,
    working,
    traits,
    certificate,
    uses,
];

/// What lies behind the door, a part a turn.
pub fn behind_the_door(page: Page) -> AnyView {
    PARTS.map(|part| placed(move || part(page))).collect_view().into_any()
}
