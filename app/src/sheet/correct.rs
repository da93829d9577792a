//! Putting a reading right, in place.

use emberloam_engine::case::Correction;
use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::quantity::Unit;
use emberloam_engine::report::Reading;
use emberloam_engine::soil::{Method, Property};
use leptos::prelude::*;

use crate::bed::report_units;
use crate::control::pick;
use crate::in_place::{Look, changed, flag, keyed, press, text};
use crate::report::source::{source_key, source_line};
use crate::state::Page;
use crate::words;

/// The mending of one reading.
#[derive(Clone, Copy)]
struct Mending {
    page: Page,
    item: Memo<JudgedReading>,
}

impl Mending {
    /// Something of the reading as the report has it.
    fn of_report<T>(self, take: impl FnOnce(&Reading) -> T) -> Option<T> {
        let place = self.item.look(|r| r.place);
        self.page.report.look(|report| {
            let sample = report.as_ref().ok()?.samples.get(self.page.chosen())?;
            sample.readings.iter().find(|reading| reading.place == place).map(take)
        })
    }

    /// The correction there is now.
    fn now(self) -> Option<Correction> {
        let answers = self.page.answers;
        self.of_report(|reading| answers.look(|case| case.reading.correction_of(reading))).flatten()
    }

    /// Whether it holds in all samples.
    fn holds_in_all(self) -> bool {
        let answers = self.page.answers;
        self.of_report(|reading| answers.look(|case| case.reading.holds_in_all(reading)))
            .unwrap_or_default()
    }

    /// Changes the correction, here or in all samples.
    fn change(self, in_all: bool, with: Box<dyn FnOnce(&mut Correction)>) {
        if let Some(reading) = untrack(|| self.of_report(Reading::clone)) {
            self.page.answer(|case| case.reading.put_right(&reading, in_all, with));
        }
    }

    /// Changes the correction where it holds now.
    fn mend(self, with: Box<dyn FnOnce(&mut Correction)>) {
        self.change(untrack(|| self.holds_in_all()), with);
    }
}

/// The button that does the same in all samples, when there are several and
/// something was said that can hold for all.
fn in_all_samples(mending: Mending) -> impl IntoView {
    let page = mending.page;
    let common = move || {
        mending.now().is_some_and(|c| {
            c.unit.is_some() || c.method.is_some() || c.property.is_some() || c.leave_out
        })
    };
    let offered = move || page.count() > 1 && common();
    view! {
        <p class="in-all" hidden=flag(move || !offered())>
            <button
                type="button"
                hidden=flag(move || mending.holds_in_all())
                on:click=press(move || mending.change(true, Box::new(|_| ())))
            >
                {text(move || words::same_in_all(page.count()))}
            </button>
            <span role="status">
                {text(move || {
                    if mending.holds_in_all() { words::holds_in_all(page.count()) } else { String::new() }
                })}
            </span>
        </p>
    }
}

/// The units a reading can be put right to: those of nutrients, of salts and of density.
fn units() -> Vec<(Unit, &'static str)> {
    let others = [Unit::DsPerM, Unit::UsPerCm, Unit::GPerCm3];
    let mut all = report_units();
    all.extend(others.map(|unit| (unit, words::unit_choice(unit))));
    all
}

/// The controls that put one reading right.
pub fn correct(page: Page, item: Memo<JudgedReading>) -> impl IntoView {
    let mending = Mending { page, item };
    let now = Memo::new(move |_| mending.now());
    let change = move |with| mending.mend(with);
    let place = move || item.look(|r| r.place);
    let named = move || {
        page.answers.look(|case| case.reading.named_lines.iter().any(|line| line.place == place()))
    };
    let methods = Method::ALL.into_iter().map(|m| (m, m.label())).collect();
    let properties = Property::ALL.into_iter().map(|p| (p, p.label())).collect();
    view! {
        <fieldset class="correct">
            <legend>{words::PUT_RIGHT}</legend>
            <label class="field">
                <span class="field-name">{words::RESULT}</span>
                <input
                    type="text"
                    autocomplete="off"
                    placeholder=text(move || item.look(|r| r.original.clone()))
                    prop:value=text(move || now.get().and_then(|c| c.result).unwrap_or_default())
                    on:change=changed(move |event| {
                        let typed = event_target_value(&event).trim().to_string();
                        let typed = (!typed.is_empty()).then_some(typed);
                        change(Box::new(move |c| c.result = typed));
                    })
                />
            </label>
            {pick(
                words::UNIT,
                words::AS_PRINTED,
                units(),
                move || now.get().and_then(|c| c.unit),
                move |unit| change(Box::new(move |c| c.unit = unit)),
            )}
            {pick(
                words::METHOD,
                words::AS_PRINTED,
                methods,
                move || now.get().and_then(|c| c.method),
                move |method| change(Box::new(move |c| c.method = method)),
            )}
            {pick(
                words::MEASURED,
                words::AS_READ,
                properties,
                move || now.get().and_then(|c| c.property),
                move |property| change(Box::new(move |c| c.property = property)),
            )}
            {in_all_samples(mending)}
            <div class="buttons">
                <button type="button" on:click=press(move || change(Box::new(|c| c.leave_out = true)))>
                    {words::LEAVE_OUT}
                </button>
                <button
                    type="button"
                    hidden=flag(move || now.get().is_none() && !named())
                    on:click=press(move || {
                        let at = untrack(place);
                        page.answers.update(|case| {
                            case.reading.named_lines.retain(|line| line.place != at);
                        });
                        change(
                            Box::new(|c| {
                                c.property = None;
                                c.result = None;
                                c.unit = None;
                                c.method = None;
                                c.leave_out = false;
                            }),
                        );
                    })
                >
                    {words::UNDO_CORRECTION}
                </button>
            </div>
        </fieldset>
    }
}

/// The unit of every reading of a property, for the question about it.
pub fn unit_of(page: Page, property: Property) -> impl IntoView {
    let about = move || {
        let mut readings = page.readings.get();
        readings.retain(|reading| reading.property == property);
        readings
    };
    keyed(
        about,
        |reading| source_key(reading.place),
        move |item| {
            let mending = Mending { page, item };
            let now = move || mending.now().and_then(|c| c.unit);
            let picked = move |unit| mending.mend(Box::new(move |c| c.unit = unit));
            view! {
                {source_line(page, move || item.look(|r| r.place))}
                {pick(words::UNIT, words::AS_PRINTED, units(), now, picked)}
                {in_all_samples(mending)}
            }
        },
    )
}
