//! What a wet season takes of the nitrate, with and without biochar.

use emberloam_engine::case::WetSeason;
use emberloam_engine::season::winter_loss;
use emberloam_engine::situated;
use leptos::prelude::*;

use crate::control::choice;
use crate::figure::figures;
use crate::living::{Look, flag, text};
use crate::soon::soon;
use crate::state::Page;
use crate::words;

/// The section.
pub fn winter(page: Page) -> AnyView {
    let loss = soon(page, |case| situated(case, winter_loss).flatten());
    let of = move || loss.look(|loss| loss.clone().unwrap_or_default());
    let classes = WetSeason::ALL.map(|class| (class, words::wet_season(class))).into();
    view! {
        <section id="winter" hidden=flag(move || loss.look(Option::is_none))>
            <h3>{words::WINTER_LOSS}</h3>
            <p>{text(move || of().text)}</p>
            {choice(
                page,
                words::WET_SEASON,
                classes,
                |case| case.season.wet_season,
                |case, value| case.season.wet_season = value,
            )}
            {figures(page, move || of().figures)}
        </section>
    }
    .into_any()
}
