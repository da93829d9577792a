//! Where the bed lies, what grows in it, and when it is free. All of it is
//! typed: the page never asks the device where it is.

use std::sync::Arc;

use emberloam_engine::case::{Crop, MOST_CROPS};
use emberloam_engine::details::{Windows, windows};
use emberloam_engine::quantity::Unit;
use emberloam_engine::season::{self, Place};
use leptos::prelude::*;
use time::Date;

use crate::control::{date_of, months, number_from};
use crate::deferred::soon;
use crate::do_it::jobs::dated_list;
use crate::grounds::opened_grounds;
use crate::in_place::{Look, changed, flag, keyed, press, text};
use crate::state::Page;
use crate::words;

/// The section.
pub fn place(page: Page) -> AnyView {
    let place =
        soon(page, |survey, _| season::place(&survey.case().season, survey.case().measures));
    let rests = soon(page, |survey, _| windows(survey));
    view! {
        <section id="place" aria-labelledby="place-title">
            <h3 id="place-title">{words::PLACE}</h3>
            <p class="soft">{words::PLACE_INTRO}</p>
            <details class="fold">
                <summary>{words::PLACE_GIVE}</summary>
                <fieldset>
                    <legend>{words::LEGEND_PLACE}</legend>
                    {inputs(page)}
                </fieldset>
                {crops(page)}
            </details>
            {told(place)}
            {free(rests)}
        </section>
    }
    .into_any()
}

fn inputs(page: Page) -> impl IntoView {
    view! {
        {number_from(
            page,
            words::LATITUDE,
            Unit::None,
            -1000.0,
            |case| case.season.latitude,
            |case, value| case.season.latitude = value,
        )}
        {number_from(
            page,
            words::ELEVATION,
            Unit::Metre,
            -10_000.0,
            |case| case.season.elevation_m,
            |case, value| case.season.elevation_m = value,
        )}
        {months(
            page,
            words::RAIN,
            Unit::Mm,
            |case| case.season.rain,
            |case, value| case.season.rain = value,
        )}
        {months(
            page,
            words::LOWEST,
            Unit::Celsius,
            |case| case.season.lowest_c,
            |case, value| case.season.lowest_c = value,
        )}
        {months(
            page,
            words::HIGHEST,
            Unit::Celsius,
            |case| case.season.highest_c,
            |case, value| case.season.highest_c = value,
        )}
    }
}

/// The crops, to add, change and remove.
fn crops(page: Page) -> impl IntoView {
    let count = move || page.said(|case| case.season.crops.len());
    let rows = move || (0..count()).collect::<Vec<usize>>();
    let add = move || {
        let crop = Crop { name: String::new(), planting: None, harvest: None };
        page.answer(|case| case.season.crops.push(crop));
    };
    view! {
        <fieldset id="crops">
            <legend>{words::CROPS}</legend>
            {keyed(rows, usize::to_string, move |at| crop(page, at.get_untracked()))}
            <button
                type="button"
                id="add-crop"
                disabled=flag(move || count() >= MOST_CROPS)
                on:click=press(add)
            >
                {words::ADD_CROP}
            </button>
        </fieldset>
    }
}

fn crop(page: Page, at: usize) -> AnyView {
    let name = move || {
        page.said(|case| {
            case.season.crops.get(at).map_or_else(String::new, |crop| crop.name.clone())
        })
    };
    let date = move |of: fn(&Crop) -> Option<Date>| {
        move || page.said(|case| case.season.crops.get(at).and_then(of))
    };
    let change = move |with: &dyn Fn(&mut Crop)| {
        page.answer(|case| {
            if let Some(crop) = case.season.crops.get_mut(at) {
                with(crop);
            }
        });
    };
    let rename = move |event: web_sys::Event| {
        let typed = event_target_value(&event);
        change(&|crop| crop.name.clone_from(&typed));
    };
    let remove = move || {
        page.answer(|case| {
            if at < case.season.crops.len() {
                case.season.crops.remove(at);
            }
        });
    };
    view! {
        <div class="crop">
            <label class="field">
                <span class="field-name">{words::CROP}</span>
                <input type="text" prop:value=text(name) on:change=changed(rename) />
            </label>
            {date_of(
                words::CROP_IN,
                date(|crop| crop.planting),
                move |day| change(&|crop| crop.planting = day),
                Arc::new(|| false),
            )}
            {date_of(
                words::CROP_OFF,
                date(|crop| crop.harvest),
                move |day| change(&|crop| crop.harvest = day),
                Arc::new(|| false),
            )}
            <button type="button" on:click=press(remove)>{words::REMOVE_CROP}</button>
        </div>
    }
    .into_any()
}

/// What latitude and height tell.
fn told(place: RwSignal<Option<Place>>) -> impl IntoView {
    let of = move || place.look(|place| place.clone().unwrap_or_default());
    view! {
        <div id="place-told" hidden=flag(move || place.look(Option::is_none))>
            <p>{text(move || of().text)}</p>
            {dated_list(Box::new(move || of().frosts))}
            {move || opened_grounds(words::PLACE, of().grounds)}
        </div>
    }
}

/// When the bed is free, and what stands in the way.
fn free(windows: RwSignal<Windows>) -> impl IntoView {
    let rests = move || windows.look(|windows| windows.rests.clone());
    let conflicts = move || windows.look(|windows| windows.conflicts.clone());
    view! {
        <div id="rests" hidden=flag(move || rests().is_empty())>
            <h4>{words::RESTS}</h4>
            {dated_list(Box::new(rests))}
        </div>
        <div id="conflicts" hidden=flag(move || conflicts().is_empty())>
            <h4>{words::CONFLICTS}</h4>
            {dated_list(Box::new(conflicts))}
        </div>
    }
}
