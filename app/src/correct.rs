//! Putting a reading right, in place.

use emberloam_engine::Case;
use emberloam_engine::case::Correction;
use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::report::Place;
use emberloam_engine::soil::{Method, Property};
use leptos::prelude::*;

use crate::bed::report_units;
use crate::control::pick;
use crate::living::{Look, changed, flag, keyed, press, text};
use crate::source::{source_key, source_line};
use crate::state::Page;
use crate::words;

/// The correction of the reading at `place`, when there is one.
fn correction(case: &Case, place: Place, original: &str) -> Option<Correction> {
    let mut all = case.reading.corrections.iter();
    all.find(|c| c.place == place && c.original == original).cloned()
}

/// Changes the correction of a reading; one that says nothing is removed.
fn put_right(case: &mut Case, place: Place, original: &str, change: impl FnOnce(&mut Correction)) {
    let untouched = Correction {
        place,
        original: original.into(),
        property: None,
        result: None,
        unit: None,
        method: None,
        leave_out: false,
    };
    let mut new = correction(case, place, original).unwrap_or_else(|| untouched.clone());
    change(&mut new);
    let all = &mut case.reading.corrections;
    all.retain(|c| !(c.place == place && c.original == original));
    if new != untouched {
        all.push(new);
    }
}

/// The mending of one reading.
#[derive(Clone, Copy)]
struct Mending {
    page: Page,
    item: Memo<JudgedReading>,
}

impl Mending {
    /// The correction there is now.
    fn now(self) -> Option<Correction> {
        let (place, original) = self.item.look(|r| (r.place, r.original.clone()));
        self.page.answers.look(|case| correction(case, place, &original))
    }

    fn change(self, with: Box<dyn FnOnce(&mut Correction)>) {
        let (place, original) = self.item.with_untracked(|r| (r.place, r.original.clone()));
        self.page.answer(|case| put_right(case, place, &original, with));
    }
}

/// The controls that put one reading right.
pub fn correct(page: Page, item: Memo<JudgedReading>) -> impl IntoView {
    let mending = Mending { page, item };
    let now = Memo::new(move |_| mending.now());
    let change = move |with| mending.change(with);
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
                report_units(),
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
            <div class="buttons">
                <button type="button" on:click=press(move || change(Box::new(|c| c.leave_out = true)))>
                    {words::LEAVE_OUT}
                </button>
                <button
                    type="button"
                    hidden=flag(move || now.get().is_none())
                    on:click=press(move || {
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
        let mut readings = page.readings();
        readings.retain(|reading| reading.property == property);
        readings
    };
    keyed(
        about,
        |reading| source_key(reading.place),
        move |item| {
            let mending = Mending { page, item };
            let now = move || mending.now().and_then(|c| c.unit);
            let picked = move |unit| mending.change(Box::new(move |c| c.unit = unit));
            view! {
                {source_line(page, move || item.look(|r| r.place))}
                {pick(words::UNIT, words::AS_PRINTED, report_units(), now, picked)}
            }
        },
    )
}

#[cfg(test)]
mod tests {
    use emberloam_engine::quantity::Unit;

    use super::*;

    #[test]
    fn a_correction_is_written_changed_and_taken_back() {
        let mut case = Case::default();
        let place = Place { line: 3, start: 0, end: 4 };
        put_right(&mut case, place, "182", |c| c.result = Some("18".into()));
        put_right(&mut case, place, "182", |c| c.unit = Some(Unit::LbPerAcre));
        assert_eq!(case.reading.corrections.len(), 1);
        let now = correction(&case, place, "182").unwrap();
        assert_eq!(now.result.as_deref(), Some("18"));
        assert_eq!(now.unit, Some(Unit::LbPerAcre));
        assert_eq!(correction(&case, place, "183"), None, "another report's reading");
        put_right(&mut case, place, "182", |c| {
            c.result = None;
            c.unit = None;
        });
        assert!(case.reading.corrections.is_empty());
    }
}
