//! Charging in detail, under the recipe: how full each nutrient gets, what each
//! source brings, and what is left over.

use emberloam_engine::case::{Case, ChargeSource, SourceFigures};
use emberloam_engine::plan::charge::sources::Nutrient;
use emberloam_engine::plan::charge::{ChargePlan, Share, Used};
use emberloam_engine::quantity::{Band, Unit, shown};
use leptos::prelude::*;

use crate::control::{choice, number_of};
use crate::deferred::soon_of;
use crate::do_it::care::said;
use crate::figure::figures;
use crate::grounds::{opened_grounds, statements};
use crate::in_place::{Look, flag, settled, text};
use crate::state::Page;
use crate::words;

/// Where what is wanted stands on a ruler, in per cent from the left.
const WANTED_AT: f64 = 66.0;

/// The section.
pub fn charging(page: Page) -> AnyView {
    let plan = soon_of(move || page.of_plan(|plan| plan.charge.clone()));
    let none = move || plan.look(Option::is_none);
    view! {
        <section id="charging" hidden=flag(none)>
            <h3>{words::CHARGING}</h3>
            <p class="soft">{words::CHARGING_INTRO}</p>
            <p class="charge-text">
                {text(move || of(plan, |plan| plan.text.clone()))}
            </p>
            {fills(page, plan)} {sources(page, plan)}
            <div hidden=flag(move || of(plan, |plan| plan.leftovers.is_empty()))>
                <h4>{words::CHARGE_LEFT}</h4>
                <ul class="plain leftovers">
                    {statements(Box::new(move || of(plan, |plan| said(&plan.leftovers))))}
                </ul>
            </div>
            <details class="fold">
                <summary>{words::CHARGE_NUMBERS}</summary>
                {figures(page, move || of(plan, |plan| plan.figures.clone()))}
            </details>
            {answers(page)}
        </section>
    }
    .into_any()
}

/// Looks at the plan; empty where there is none.
fn of<R: Default>(plan: RwSignal<Option<ChargePlan>>, look: impl FnOnce(&ChargePlan) -> R) -> R {
    plan.look(|plan| plan.as_ref().map(look).unwrap_or_default())
}

/// Each nutrient on a ruler of its own.
fn fills(page: Page, plan: RwSignal<Option<ChargePlan>>) -> impl IntoView {
    view! {
        <h4>{words::CHARGE_FILLS}</h4>
        <p class="soft">{words::CHARGE_FILLS_HOW_TO_READ}</p>
        <div class="fills">
            {settled(
                move || of(plan, |plan| plan.shares.clone()),
                move |share| fill(page, share),
            )}
        </div>
    }
}

fn fill(page: Page, share: Share) -> impl IntoView {
    let Share { nutrient, wanted, brought, reached, at_most, text: meaning, grounds } = share;
    let grams = move |band: &Band| shown(band, Unit::Gram, page.measures());
    let number = move || match (reached, at_most) {
        (Some(reached), _) => format!(
            "{}: {} {} {}",
            shown(&reached, Unit::Percent, page.measures()),
            grams(&brought),
            words::OF_WANTED,
            grams(&wanted)
        ),
        (None, Some(_)) => grams(&brought),
        (None, None) => format!("{}; {}", words::CHARGE_NONE_WANTED, grams(&brought)),
    };
    // In pieces, so that each is found in another language.
    let ceiling = at_most.filter(|_| reached.is_none()).map(|most| {
        view! {
            "; "
            <span>{words::CHARGE_AT_MOST}</span>
            " "
            <span>{text(move || grams(&Band::exactly(most)))}</span>
        }
    });
    let end = if reached.is_some() { words::CHARGE_WANTED } else { words::CHARGE_AT_MOST };
    let whole = if reached.is_some() { wanted.likely } else { at_most.unwrap_or(0.0) };
    let ruler = (whole > 0.0).then(|| {
        let at = |grams: f64| (grams / whole * WANTED_AT).clamp(0.0, 100.0);
        let per_cent = |value: f64| format!("{value:.2}%");
        view! {
            <div class="ruler fill" aria-hidden="true">
                <div class="ruler-line"></div>
                <div
                    class="ruler-enough"
                    style=("--from", per_cent(at(brought.low)))
                    style=("--to", per_cent(100.0 - at(brought.high)))
                ></div>
                <div class="ruler-tick" style=("--at", per_cent(WANTED_AT))>
                    <span>{end}</span>
                </div>
                <svg
                    class="ruler-mark"
                    viewBox="0 0 24 24"
                    style=("--at", per_cent(at(brought.likely)))
                >
                    <path d="M12 22L5 10 12 2 19 10Z" />
                </svg>
            </div>
        }
    });
    view! {
        <div class="fill-row" data-nutrient=nutrient.label()>
            <p class="fill-name">
                <strong>{words::title(nutrient.label())}</strong>
                " "
                <span class="fill-number">{text(number)} {ceiling}</span>
            </p>
            {ruler}
            <p class="soft">{meaning}</p>
            {opened_grounds(nutrient.label(), grounds)}
        </div>
    }
}

/// The table of sources and nutrients, and every source alone.
fn sources(page: Page, plan: RwSignal<Option<ChargePlan>>) -> impl IntoView {
    view! {
        <h4>{words::CHARGE_SOURCES}</h4>
        {move || table(page, of(plan, |plan| plan.used.clone()), words::CHARGE_SOURCES, "charge-used")}
        <details class="fold">
            <summary>{words::CHARGE_ALONE}</summary>
            {move || table(page, of(plan, |plan| plan.alone.clone()), words::CHARGE_ALONE, "charge-alone")}
        </details>
    }
}

fn table(page: Page, rows: Vec<Used>, label: &'static str, class: &'static str) -> impl IntoView {
    let measures = page.measures();
    let heads: Vec<_> = Nutrient::ALL
        .into_iter()
        .map(|nutrient| view! { <th scope="col">{words::title(nutrient.label())}</th> })
        .collect();
    let rows: Vec<_> = rows
        .into_iter()
        .map(|used| {
            let unit = match (used.weighed, used.amount < 1.0) {
                (false, _) => Unit::Litre,
                (true, false) => Unit::Kg,
                (true, true) => Unit::Gram,
            };
            let scale = if unit == Unit::Gram { 1000.0 } else { 1.0 };
            let amount = shown(&Band::exactly(used.amount * scale), unit, measures);
            let reached = shown(&used.nitrogen_reached, Unit::Percent, measures);
            let cells: Vec<_> = used
                .brings
                .iter()
                .map(|band| view! { <td>{shown(band, Unit::Gram, measures)}</td> })
                .collect();
            view! {
                <tr data-source=used.source.name()>
                    <th scope="row">{words::title(used.label)}</th>
                    <td>{amount}</td>
                    <td>{reached}</td>
                    {cells}
                </tr>
            }
        })
        .collect();
    view! {
        <div class="wide" tabindex="0" role="region" aria-label=label>
            <table class=class>
                <thead>
                    <tr>
                        <th scope="col">{words::COLUMN_SOURCE}</th>
                        <th scope="col">{words::COLUMN_AMOUNT}</th>
                        <th scope="col">{words::COLUMN_NITROGEN_REACHED}</th>
                        {heads}
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

/// How warm it is, as a choice: what decides is frost and 10 °C.
#[derive(Clone, Copy, PartialEq)]
enum Warmth {
    Frost,
    Cold,
    Mild,
    Warm,
}

impl Warmth {
    const ALL: [(Warmth, &'static str); 4] = [
        (Warmth::Frost, "frost"),
        (Warmth::Cold, "2 to 10 °C (35 to 50 °F)"),
        (Warmth::Mild, "10 to 20 °C (50 to 68 °F)"),
        (Warmth::Warm, "above 20 °C (68 °F)"),
    ];

    fn of(temperature: f64) -> Warmth {
        match temperature {
            t if t < 2.0 => Warmth::Frost,
            t if t < 10.0 => Warmth::Cold,
            t if t < 20.0 => Warmth::Mild,
            _ => Warmth::Warm,
        }
    }

    /// A temperature within it, °C.
    fn temperature(self) -> f64 {
        match self {
            Warmth::Frost => -2.0,
            Warmth::Cold => 6.0,
            Warmth::Mild => 15.0,
            Warmth::Warm => 24.0,
        }
    }
}

/// Buckets as they are sold, litres.
const BUCKETS: [(f64, &str); 6] = [
    (5.0, "5 litres"),
    (10.0, "10 litres"),
    (12.0, "12 litres"),
    (20.0, "20 litres"),
    (7.571, "2 US gallons"),
    (18.927, "5 US gallons"),
];

/// The temperature, the bucket, and what is known of each source.
fn answers(page: Page) -> impl IntoView {
    let ticked = move || page.answers.look(|case| case.charge_with.clone());
    view! {
        <details class="fold">
            <summary>{words::CHARGE_ANSWERS}</summary>
            <div class="controls">
                {choice(
                    page,
                    words::CHARGE_WARMTH,
                    Warmth::ALL.into(),
                    |case| case.charge.temperature_c.map(Warmth::of),
                    |case, value| case.charge.temperature_c = value.map(Warmth::temperature),
                )}
                {choice(
                    page,
                    words::CHARGE_BUCKET,
                    BUCKETS.into(),
                    |case| case.charge.bucket_litres,
                    |case, value| case.charge.bucket_litres = value,
                )}
                {settled(ticked, move |source| source_answers(page, source))}
            </div>
        </details>
    }
}

fn source_answers(page: Page, source: ChargeSource) -> impl IntoView {
    let label = [words::CHARGE_N, words::CHARGE_P, words::CHARGE_K];
    let numbers: Vec<_> = label
        .into_iter()
        .enumerate()
        .map(|(at, words)| {
            number_of(
                page,
                words,
                Unit::Percent,
                Box::new(move |case| known(case, source)?.n_p2o5_k2o.map(|label| label[at])),
                Box::new(move |case, value| {
                    change(case, source, |own| {
                        let mut label = own.n_p2o5_k2o.unwrap_or_default();
                        label[at] = value.unwrap_or(0.0);
                        own.n_p2o5_k2o = Some(label).filter(|l| l.iter().any(|p| *p > 0.0));
                    });
                }),
            )
        })
        .collect();
    view! {
        <fieldset data-source=source.name()>
            <legend>{words::title(words::charge_source(source))}</legend>
            {number_of(
                page,
                words::CHARGE_ON_HAND,
                Unit::Litre,
                Box::new(move |case| known(case, source)?.litres),
                Box::new(move |case, value| change(case, source, |own| own.litres = value)),
            )}
            {numbers}
        </fieldset>
    }
}

fn known(case: &Case, source: ChargeSource) -> Option<&SourceFigures> {
    case.charge.sources.iter().find(|own| own.source == source)
}

/// Changes what is known of a source; one of which nothing is known is removed.
fn change(case: &mut Case, source: ChargeSource, how: impl FnOnce(&mut SourceFigures)) {
    let all = &mut case.charge.sources;
    let empty = SourceFigures { source, litres: None, n_p2o5_k2o: None };
    let mut own = all.iter().find(|own| own.source == source).copied().unwrap_or(empty);
    how(&mut own);
    all.retain(|other| other.source != source);
    if own != empty {
        all.push(own);
    }
}
