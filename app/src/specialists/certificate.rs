//! What the bag's certificate says: its figures, how they lie to the standards,
//! and how long the carbon lasts.

use emberloam_engine::Case;
use emberloam_engine::bag::certificate::{doubts, item};
use emberloam_engine::case::{CertificateFigure, CertificateItem};
use emberloam_engine::details::permanence;
use emberloam_engine::details::standards::{Check, Standard, standards};
use emberloam_engine::quantity::Unit;
use leptos::prelude::*;
use web_sys::HtmlInputElement;

use crate::control::{number, pick};
use crate::deferred::soon;
use crate::figure::figures;
use crate::grounds::opened_grounds;
use crate::in_place::{Look, changed, flag, keyed, lines, press, settled, text};
use crate::state::Page;
use crate::words;

/// The section.
pub fn certificate(page: Page) -> AnyView {
    // Chosen to be filled in, with nothing typed yet.
    let begun: RwSignal<Vec<CertificateItem>> = RwSignal::new(Vec::new());
    let shown = move || {
        let given = |what: &CertificateItem| page.answers.look(|case| value(case, *what).is_some());
        let wanted = |what: &CertificateItem| begun.look(|begun| begun.contains(what));
        CertificateItem::ALL.into_iter().filter(|what| given(what) || wanted(what)).collect()
    };
    let all = CertificateItem::ALL.map(|what| (what, item(what).label)).into();
    let chosen = RwSignal::new(());
    let add = pick(
        words::CERTIFICATE_ADD,
        words::CERTIFICATE_CHOOSE,
        all,
        move || {
            chosen.track();
            None
        },
        move |picked| {
            if let Some(what) = picked {
                begun.update(|begun| begun.push(what));
            }
            // So that a figure taken out again can be chosen anew.
            chosen.notify();
        },
    );
    let remove = move |what: CertificateItem| {
        begun.update(|begun| begun.retain(|other| *other != what));
        page.answer(|case| set(case, what, None));
    };
    let doubtful = soon(page, |survey, _| doubts(&survey.case().biochar));
    let compared = soon(page, |survey, _| standards(&survey.case().biochar));
    let beside = move || compared.get();
    let lasting = soon(page, |survey, _| vec![permanence(survey.case())]);
    view! {
        <section id="certificate" aria-labelledby="certificate-title">
            <h3 id="certificate-title">{words::CERTIFICATE}</h3>
            <p class="soft">{words::CERTIFICATE_INTRO}</p>
            <div class="controls">
                {number(
                    page,
                    words::BULK_DENSITY,
                    Unit::None,
                    |case| case.biochar.bulk_density,
                    |case, value| case.biochar.bulk_density = value,
                )}
                {keyed(
                    shown,
                    |what| what.name().into(),
                    move |what| {
                        let what = what.get_untracked();
                        figure(page, what, move || remove(what))
                    },
                )}
                {add}
            </div>
            <ul class="notes">{lines(move || doubtful.get())}</ul>
            {figures(page, move || lasting.get())}
            <div hidden=flag(move || beside().is_empty())>
                <h4>{words::STANDARDS}</h4>
                <p class="soft">{words::STANDARDS_INTRO}</p>
                {settled(beside, standard)}
            </div>
        </section>
    }
    .into_any()
}

/// The figure that counts: the last given.
fn value(case: &Case, what: CertificateItem) -> Option<f64> {
    case.biochar.certificate.iter().rev().find(|f| f.what == what).map(|f| f.value)
}

fn set(case: &mut Case, what: CertificateItem, value: Option<f64>) {
    let figures = &mut case.biochar.certificate;
    figures.retain(|figure| figure.what != what);
    figures.extend(value.map(|value| CertificateFigure { what, value }));
}

/// One figure as the certificate prints it, in its own unit; what can't be
/// stays as typed and is told of below.
fn figure(page: Page, what: CertificateItem, remove: impl Fn() + 'static) -> impl IntoView {
    let (label, unit) = (item(what).label, words::certificate_unit(item(what).unit));
    let typed = move || {
        page.answers.look(|case| value(case, what)).map_or_else(String::new, |v| v.to_string())
    };
    let change = move |event: web_sys::Event| {
        let typed = event_target::<HtmlInputElement>(&event).value_as_number();
        page.answer(|case| set(case, what, Some(typed).filter(|typed| typed.is_finite())));
    };
    let name = words::title(label);
    let leave_out = words::certificate_remove(label);
    view! {
        <div class="certified" data-name=what.name()>
            <label class="field">
                <span class="field-name">{name}</span>
                <span class="with-unit">
                    <input
                        type="number"
                        inputmode="decimal"
                        step="any"
                        prop:value=text(typed)
                        on:change=changed(change)
                    />
                    <span>{unit}</span>
                </span>
            </label>
            <button type="button" class="quiet" aria-label=leave_out on:click=press(remove)>
                {words::CERTIFICATE_REMOVE}
            </button>
        </div>
    }
}

/// One standard: what it comes to, and each limit.
fn standard(of: Standard) -> impl IntoView {
    let row = |check: Check| {
        let name = words::title(item(check.what).label);
        view! {
            <tr data-verdict=check.verdict.name()>
                <th scope="row">{name}</th>
                <td>{check.given}</td>
                <td>{check.limit}</td>
                <td>{words::verdict(check.verdict)}</td>
            </tr>
        }
    };
    let rows: Vec<_> = of.checks.into_iter().map(row).collect();
    view! {
        <div class="need">
            <h5>{of.name}</h5>
            <p>{of.text}</p>
            <details class="fold">
                <summary>{words::STANDARDS_LIMITS}</summary>
                <div class="wide" tabindex="0" role="region" aria-label=of.name>
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">{words::COLUMN_PROPERTY}</th>
                                <th scope="col">{words::COLUMN_GIVEN}</th>
                                <th scope="col">{words::COLUMN_LIMIT}</th>
                                <th scope="col">{words::COLUMN_VERDICT}</th>
                            </tr>
                        </thead>
                        <tbody>{rows}</tbody>
                    </table>
                </div>
            </details>
            {opened_grounds(of.name, of.grounds)}
        </div>
    }
}
