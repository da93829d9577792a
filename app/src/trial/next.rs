//! The next trial: how many plots it takes, which gets what and how much, and when to sample.

use emberloam_engine::quantity::{
    Measures, Unit, in_readers, measured_out, pot_measure, scoop_measure, significant,
};
use emberloam_engine::season::day::spoken;
use emberloam_engine::soil::Property;
use emberloam_engine::trial::{
    NextTrial, Place, PlotOf, Wish, layout_csv, next_trial, sheet_csv, usual_spread,
};
use leptos::prelude::*;
use web_sys::HtmlInputElement;

use crate::control::{date_of, number_typed, pick, tick};
use crate::grounds::opened_grounds;
use crate::in_place::{changed, flag, press, settled, text};
use crate::markup::escaped;
use crate::report::files::save;
use crate::state::Page;
use crate::trial::view::AtWork;
use crate::words::trial as words;

/// What is being planned.
#[derive(Clone, Copy)]
struct Planning {
    page: Page,
    wish: RwSignal<Wish>,
    /// Litres of a pot, else m² and cm of a plot.
    pot: RwSignal<Option<f64>>,
    plot: RwSignal<(f64, f64)>,
    planned: Memo<Result<NextTrial, String>>,
}

/// The fold.
pub fn next(at_work: AtWork) -> AnyView {
    let wish = RwSignal::new(Wish { property: Some(Property::Potassium), ..Wish::default() });
    let (pot, plot) = (RwSignal::new(None), RwSignal::new((1.0, 15.0)));
    let planned = Memo::new(move |_| {
        let (area_m2, depth_cm) = plot.get();
        let of_plot = Place::Plot { area_m2, depth_cm };
        let place = pot.get().map_or(of_plot, |litres| Place::Pot { litres });
        next_trial(&Wish { place: Some(place), ..wish.get() })
    });
    let planning = Planning { page: at_work.page, wish, pot, plot, planned };
    view! {
        <details id="next-trial" class="fold">
            <summary>{words::NEXT}</summary>
            {asked(planning)}
            <p role="status">{text(move || planned.with(|p| p.as_ref().err().cloned().unwrap_or_default()))}</p>
            <div hidden=flag(move || planned.with(Result::is_err))>{told(planning)}</div>
        </details>
    }
    .into_any()
}

/// A number of the wish in the reader's measures.
fn number(
    planning: Planning,
    label: &'static str,
    unit: Unit,
    get: impl Fn() -> Option<f64> + Send + 'static,
    put: impl Fn(Option<f64>) + 'static,
) -> AnyView {
    let page = planning.page;
    let shown = move || {
        get().map_or_else(String::new, |value| {
            significant(in_readers(value, unit, page.measures()), 3)
        })
    };
    let put = move |typed: f64| put(Some(typed).filter(|typed| typed.is_finite()));
    number_typed(page, label, unit, "field", text(shown), text(String::new), Box::new(put))
}

/// A volume in what the reader measures such a thing by.
fn volume(
    planning: Planning,
    label: &'static str,
    by: fn(Measures) -> (f64, &'static str),
    get: impl Fn() -> Option<f64> + Send + 'static,
    put: impl Fn(Option<f64>) + 'static,
) -> AnyView {
    let page = planning.page;
    let shown = move || {
        get().map_or_else(String::new, |litres| significant(litres / by(page.measures()).0, 3))
    };
    let typed = move |event: web_sys::Event| {
        let typed = event_target::<HtmlInputElement>(&event).value_as_number();
        let litres = typed * untrack(|| by(page.measures())).0;
        put(Some(litres).filter(|litres| litres.is_finite()));
    };
    view! {
        <label class="field">
            <span class="field-name">{label}</span>
            <span class="with-unit">
                <input
                    type="number"
                    inputmode="decimal"
                    min="0"
                    step="any"
                    prop:value=text(shown)
                    on:change=changed(typed)
                />
                <span>{text(move || by(page.measures()).1)}</span>
            </span>
        </label>
    }
    .into_any()
}

/// What is asked.
fn asked(planning: Planning) -> impl IntoView {
    let Planning { wish, pot, plot, .. } = planning;
    let of = move |take: fn(&Wish) -> Option<f64>| move || wish.with(take);
    let properties = Property::ALL.into_iter().filter(|p| usual_spread(*p).is_some());
    let properties: Vec<_> = properties.map(|p| (p, p.label())).collect();
    let count = |value: Option<f64>| value.filter(|v| (1.0..=1e9).contains(v)).map(|v| v as u64);
    view! {
        <div class="controls">
            {pick(
                words::DECIDES,
                "–",
                properties,
                move || wish.with(|wish| wish.property),
                move |property| wish.update(|wish| wish.property = property),
            )}
            {number(planning, words::DIFFERENCE, Unit::Percent, of(|w| Some(w.difference_percent)), move |v| {
                wish.update(|wish| wish.difference_percent = v.unwrap_or(20.0));
            })}
            {number(planning, words::OWN_SCATTER, Unit::Percent, of(|w| w.own_cv), move |v| {
                wish.update(|wish| wish.own_cv = v);
            })}
            <label class="field">
                <span class="field-name">{words::TREATMENTS}</span>
                <textarea
                    rows="3"
                    prop:value=text(move || wish.with(|wish| wish.treatments.join("\n")))
                    on:change=changed(move |event| {
                        let typed = event_target_value(&event);
                        let names = typed.lines().map(str::trim).filter(|name| !name.is_empty());
                        let names = names.map(String::from).collect();
                        wish.update(|wish| wish.treatments = names);
                    })
                ></textarea>
            </label>
            {tick(
                words::IN_BLOCKS,
                flag(move || wish.with(|wish| wish.in_blocks)),
                Box::new(move |in_blocks| wish.update(|wish| wish.in_blocks = in_blocks)),
                flag(|| false),
            )}
            {number(planning, words::REPLICATES, Unit::None, of(|w| w.replicates.map(|n| n as f64)), move |v| {
                wish.update(|wish| wish.replicates = count(v).map(|n| n.min(500) as usize));
            })}
            {number(planning, words::PLOT_AREA, Unit::SquareMetre, move || Some(plot.get().0), move |v| {
                plot.update(|plot| plot.0 = v.unwrap_or(1.0));
            })}
            {number(planning, words::PLOT_DEPTH, Unit::Cm, move || Some(plot.get().1), move |v| {
                plot.update(|plot| plot.1 = v.unwrap_or(15.0));
            })}
            {volume(planning, words::POT, pot_measure, move || pot.get(), move |v| pot.set(v))}
            {number(planning, words::SHARE, Unit::Percent, of(|w| Some(w.share_percent)), move |v| {
                wish.update(|wish| wish.share_percent = v.unwrap_or(5.0));
            })}
            {volume(planning, words::SCOOP, scoop_measure, of(|w| Some(w.scoop_litres)), move |v| {
                wish.update(|wish| wish.scoop_litres = v.unwrap_or(1.0));
            })}
            {date_of(
                words::START,
                move || wish.with(|wish| wish.start),
                move |day| wish.update(|wish| wish.start = day),
                std::sync::Arc::new(|| false),
            )}
            {number(planning, words::SEED, Unit::None, of(|w| Some(w.seed as f64)), move |v| {
                wish.update(|wish| wish.seed = count(v).unwrap_or(1));
            })}
        </div>
    }
}

/// What is planned.
fn told(planning: Planning) -> impl IntoView {
    let Planning { page, wish, planned, .. } = planning;
    let litres = move |litres: f64| measured_out(litres, page.measures());
    let gets = move || {
        let amounts = planned.with(|planned| planned.as_ref().ok().and_then(|p| p.amounts));
        amounts.map_or_else(String::new, |of| {
            let out = if of.soil_out > 0.0 {
                words::take_out(&litres(of.soil_out))
            } else {
                String::new()
            };
            let one = words::each_gets(
                &litres(of.litres),
                &significant(of.scoops, 3),
                &litres(of.all_litres),
            );
            format!("{one} {out}").trim_end().to_string()
        })
    };
    let all = move || planned.with(|planned| planned.as_ref().ok().cloned());
    let grounds = move || all().map(|planned| opened_grounds(&planned.text, planned.grounds));
    let file = move |name: &'static str, of: fn(&NextTrial, &Wish) -> String| {
        press(move || {
            if let Some(planned) = untrack(all) {
                save(name, "text/csv", &wish.with_untracked(|wish| of(&planned, wish)));
            }
        })
    };
    let dates = move || {
        let dates = all().map(|planned| planned.dates).unwrap_or_default();
        let told = |(when, day): (&'static str, Option<_>)| (when, day.map(spoken));
        dates.into_iter().map(told).collect()
    };
    view! {
        <p>{text(move || all().map(|planned| planned.text).unwrap_or_default())}</p>
        {grounds}
        <p>{text(gets)}</p>
        <p class="field-name">{words::LOTS}</p>
        <div class="lots" inner_html=move || all().map(|planned| lots(&planned.plots)).unwrap_or_default()></div>
        <p class="field-name">{words::WHEN}</p>
        <ul>
            {settled(dates, |(when, day): (&'static str, Option<String>)| {
                view! { <li><span>{when}</span> {day.map(|day| view! { ": " <span>{day}</span> })}</li> }
            })}
        </ul>
        <div class="buttons">
            <button type="button" on:click=file("plots.csv", |planned, _| layout_csv(&planned.plots))>
                {words::SAVE_LAYOUT}
            </button>
            <button
                type="button"
                on:click=file("sampling.csv", |planned, wish| sheet_csv(&planned.sheet, &wish.tested))
            >
                {words::SAVE_SHEET}
            </button>
        </div>
    }
}

/// The plots as they lie, a row a block.
fn lots(plots: &[PlotOf]) -> String {
    let mut html = String::from("<table>");
    let mut block = None;
    for plot in plots {
        if block != Some(plot.block) {
            html += if block.is_some() { "</tr><tr>" } else { "<tr>" };
            if plot.block > 0 {
                html += &format!("<th scope=\"row\">{} {}</th>", words::BLOCK, plot.block);
            }
            block = Some(plot.block);
        }
        html += &format!(
            "<td><span class=\"soft\">{}</span> <span translate=\"no\">{}</span></td>",
            plot.plot,
            escaped(&plot.treatment)
        );
    }
    html + "</tr></table>"
}
