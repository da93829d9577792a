//! What the plots say: the whole in a line, all properties on one sheet, and each with its plots,
//! its interval, its test, and the smallest difference that could have been seen.

use std::hash::{DefaultHasher, Hash, Hasher};

use emberloam_engine::quantity::{Band, Unit, significant};
use emberloam_engine::trial::{Comparison, Evaluation, Foreseen, Group, TrialResult, calibrate};
use leptos::prelude::*;

use crate::grounds::opened_grounds;
use crate::in_place::{flag, press, settled, text, unfolds};
use crate::language::say;
use crate::report::files::save;
use crate::trial::picture::{plots, sheet, slide};
use crate::trial::view::AtWork;
use crate::words::trial as words;

/// The part; nothing without a table that can be judged.
pub fn results(at_work: AtWork) -> AnyView {
    let found = at_work.found;
    let none = move || !found.with(|found| matches!(found, Some(Ok(_))));
    let drawn = move || at_work.of(|found| sheet(found, &str::to_string));
    let one = move |at: usize| {
        found.with_untracked(|found| match found {
            Some(Ok(found)) => Some(of_property(at_work, at, found.results.get(at)?, found)),
            _ => None,
        })
    };
    // A property that stays the same keeps its place, and is drawn anew with its numbers.
    let all = move || at_work.of(|found| found.results.iter().map(mark).enumerate().collect());
    let picture = move |kind: &'static str, ending: &str| {
        let svg = untrack(|| at_work.of(|found| slide(found, &|text: &str| say(text))));
        save(&format!("trial.{ending}"), kind, &svg);
    };
    view! {
        <section id="trial-results" hidden=flag(none) aria-live="polite">
            <h3>{text(move || at_work.of(|found| found.headline.clone()))}</h3>
            <p class="field-name">{words::ALL}</p>
            <figure>
                <div class="trial-picture" aria-hidden="true" inner_html=drawn></div>
                <figcaption class="soft">{words::ALL_MEANS}</figcaption>
            </figure>
            <ul class="plain">{settled(all, move |(at, _): (usize, u64)| one(at))}</ul>
            <div class="buttons">
                <button type="button" on:click=press(move || picture("image/png", "png"))>
                    {words::SAVE_PNG}
                </button>
                <button type="button" on:click=press(move || picture("image/svg+xml", "svg"))>
                    {words::SAVE_SVG}
                </button>
            </div>
        </section>
    }
    .into_any()
}

/// A number of a property in its unit.
fn with_unit(value: f64, unit: Option<Unit>) -> String {
    let number = significant(value, 3);
    match unit.map(Unit::symbol).filter(|symbol| !symbol.is_empty()) {
        Some(symbol) => format!("{number}\u{a0}{symbol}"),
        None => number,
    }
}

/// More dots than these in all are drawn where somebody opens a property. Our choice.
const MOST_DRAWN: usize = 5_000;

/// What tells a result from another one of that property.
fn mark(result: &TrialResult) -> u64 {
    let mut hasher = DefaultHasher::new();
    (&result.label, &result.notes).hash(&mut hasher);
    for group in &result.groups {
        (group.n, group.mean.to_bits()).hash(&mut hasher);
        group.readings.iter().for_each(|reading| reading.value.to_bits().hash(&mut hasher));
    }
    for of in &result.comparisons {
        let foretold = of.foretold.as_ref().map(|foretold| &foretold.text);
        let exact = of.exact.as_ref().map(|exact| &exact.text);
        (&of.text, &of.why, exact, foretold).hash(&mut hasher);
    }
    hasher.finish()
}

/// One property: its verdict, and behind it all that is told of it.
fn of_property(at_work: AtWork, at: usize, result: &TrialResult, found: &Evaluation) -> AnyView {
    let verdicts = result.comparisons.iter().map(|c| words::verdict(c.verdict));
    let mut verdicts: Vec<&str> = verdicts.collect();
    verdicts.dedup();
    let opened = RwSignal::new(found.plots * found.results.len() <= MOST_DRAWN);
    let inside = move || {
        opened.get().then(|| {
            at_work.found.with_untracked(|found| match found {
                Some(Ok(found)) => Some(behind(found.results.get(at)?, found)),
                _ => None,
            })
        })
    };
    let unfolded = unfolds(move |open| {
        if open && !opened.get_untracked() {
            opened.set(true);
        }
    });
    view! {
        <li class="trial-result" data-head=result.head.clone()>
            <details on:toggle=unfolded>
                <summary>
                    <strong>{result.label.clone()}</strong>
                    " "
                    <span class="verdict-word">{verdicts.join(", ")}</span>
                </summary>
                {inside}
            </details>
        </li>
    }
    .into_any()
}

/// All that is told of a property.
fn behind(result: &TrialResult, found: &Evaluation) -> AnyView {
    let row = |group: &Group| {
        let name = found.treatments.get(group.treatment).map(|level| level.name.clone());
        let sd = group.sd.map_or_else(|| "–".into(), |sd| with_unit(sd, result.unit));
        view! {
            <tr>
                <th scope="row" translate="no">{name}</th>
                <td>{group.n}</td>
                <td>{with_unit(group.mean, result.unit)}</td>
                <td>{sd}</td>
            </tr>
        }
    };
    let said = |text: String| (!text.is_empty()).then(|| view! { <li>{text}</li> });
    let notes = result.outliers.iter().map(|outlier| outlier.text.clone());
    let normality = result.normality.iter().map(|look| look.text.clone());
    let notes = notes.chain(normality).chain(result.notes.iter().cloned());
    let notes: Vec<_> = notes.map(said).collect();
    view! {
        {result.comparisons.iter().map(compared).collect_view()}
        <div class="trial-picture" aria-hidden="true" inner_html=plots(result, found)></div>
        <p class="soft">{words::EACH_PLOT}</p>
        <div class="scroll" tabindex="0" role="region" aria-label=result.label.clone()>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{words::TREATMENT}</th>
                        <th scope="col">{words::PLOTS}</th>
                        <th scope="col">{words::MEAN}</th>
                        <th scope="col">{words::SCATTER}</th>
                    </tr>
                </thead>
                <tbody>{result.groups.iter().map(row).collect_view()}</tbody>
            </table>
        </div>
        <ul class="notes">{notes}</ul>
    }
    .into_any()
}

/// One treatment against another: the verdict, why this test, and the model's word.
fn compared(of: &Comparison) -> impl IntoView {
    let exact = of.exact.as_ref().map(|exact| view! { <p class="soft">{exact.text.clone()}</p> });
    let foretold = of.foretold.as_ref().map(|foreseen| {
        view! { <p>{foreseen.text.clone()}</p> {taught(foreseen)} }
    });
    view! {
        <p>{of.text.clone()}</p>
        <p class="soft">{of.why.clone()}</p>
        {exact}
        {foretold}
    }
}

/// What the trial teaches the model, beside its own word.
fn taught(of: &Foreseen) -> Option<AnyView> {
    let both = calibrate(of.foretold, of.found.band())?;
    let told = |band: Band| {
        let [low, likely, high] = [band.low, band.likely, band.high].map(|v| significant(v, 2));
        format!("{likely} ({low} to {high}) {}", of.unit.symbol()).trim_end().to_string()
    };
    let text = words::with_trial(&told(both.model), &told(both.with_trial));
    Some(view! { <p>{text.clone()}</p> {opened_grounds(&text, both.grounds)} }.into_any())
}
