//! The recipe for so much biochar, without a report.

use emberloam_engine::case::ChargeSource;
use emberloam_engine::charge_alone;
use emberloam_engine::plan::charge::ChargePlan;
use emberloam_engine::quantity::{Unit, in_readers, significant};
use leptos::prelude::*;
use web_sys::HtmlDetailsElement;

use crate::control::pick;
use crate::do_it::recipe::{litres_at_hand, steps_of};
use crate::frame::{element, hear};
use crate::in_place::{Look, flag, text};
use crate::state::Page;
use crate::words;

/// What the recipe begins with, litres: what people buy or make at once. Our choice.
const LITRES: f64 = 100.0;

/// What most gardens have to charge it with.
const USUAL: [ChargeSource; 4] = [
    ChargeSource::Compost,
    ChargeSource::Vermicompost,
    ChargeSource::CompostTea,
    ChargeSource::PlantLiquid,
];

/// What lies in the fold of the frame.
pub fn alone(page: Page) -> AnyView {
    let fold = element::<HtmlDetailsElement>("alone");
    let open = RwSignal::new(fold.open());
    let shown = fold.clone();
    hear("alone", "toggle", move |_| open.set(shown.open()));
    let answered = Memo::new(move |_| page.has_report());
    Effect::new(move || fold.set_hidden(answered.get()));
    let litres = RwSignal::new(LITRES);
    let with = RwSignal::new(ChargeSource::Compost);
    let found = Memo::new(move |_| {
        open.get().then(|| {
            let measures = page.measures();
            page.said(|case| charge_alone(litres.get(), &[with.get()], &case.charge, measures))
        })
    });
    let recipe = Memo::new(move |_| -> Option<ChargePlan> { found.get()?.ok() });
    let refused = move || found.get().and_then(Result::err).unwrap_or_default();
    let shown = move || significant(in_readers(litres.get(), Unit::Litre, page.measures()), 3);
    view! {
            <p class="soft">{words::ALONE_INTRO}</p>
            <div class="controls">
                {litres_at_hand(
                    page,
                    "field",
                    text(shown),
                    text(String::new),
                    Box::new(move |typed| litres.set(typed)),
                )}
                {pick(
                    words::CHARGE_WITH,
                    words::charge_source(ChargeSource::Compost),
                    USUAL[1..].iter().map(|s| (*s, words::charge_source(*s))).collect(),
                    move || Some(with.get()).filter(|s| *s != ChargeSource::Compost),
                    move |picked| with.set(picked.unwrap_or(ChargeSource::Compost)),
                )}
            </div>
            <p role="status">{text(refused)}</p>
            <div class="recipe" hidden=flag(move || recipe.look(Option::is_none))>
                {steps_of(recipe)}
            </div>
    }
    .into_any()
}
