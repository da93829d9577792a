//! Which sample the bed was taken from, in a report that has several.

use leptos::prelude::*;

use crate::in_place::{Look, changed, flag, press, text};
use crate::state::Page;
use crate::words;

/// So many names can be looked through; of more, those that fit what is typed are shown.
const MOST_NAMES: usize = 60;

/// The picker.
pub fn which_sample(page: Page) -> impl IntoView {
    let find = RwSignal::new(String::new());
    let one = move || page.count() < 2;
    let step = move |by: isize| {
        let to = untrack(|| page.chosen()).saturating_add_signed(by);
        page.answer(|case| case.sample = to);
    };
    view! {
        <div class="which-sample" hidden=flag(one)>
            <label class="field">
                <span class="field-name">{words::WHICH_SAMPLE}</span>
                <select
                    id="sample"
                    on:change=changed(move |event| {
                        if let Ok(sample) = event_target_value(&event).parse() {
                            page.answer(|case| case.sample = sample);
                        }
                    })
                >
                    {move || options(page, &find.get())}
                </select>
            </label>
            <label class="field" hidden=flag(move || page.count() <= MOST_NAMES)>
                <span class="field-name">{words::NAME_OR_NUMBER}</span>
                <input
                    type="search"
                    id="find-sample"
                    autocomplete="off"
                    on:input=changed(move |event| find.set(event_target_value(&event)))
                />
            </label>
            <div class="buttons">
                <button
                    type="button"
                    disabled=flag(move || page.chosen() == 0)
                    on:click=press(move || step(-1))
                >
                    {words::PREVIOUS_SAMPLE}
                </button>
                <button
                    type="button"
                    disabled=flag(move || page.chosen() + 1 >= page.count())
                    on:click=press(move || step(1))
                >
                    {words::NEXT_SAMPLE}
                </button>
                <span class="soft">
                    {text(move || words::sample_of(page.chosen() + 1, page.count()))}
                </span>
            </div>
        </div>
    }
}

fn options(page: Page, find: &str) -> AnyView {
    let chosen = page.chosen();
    let names = page.report.look(|report| {
        let samples = report.as_ref().map_or(&[][..], |report| &report.samples);
        let found = matching(samples.iter().map(|sample| sample.name.as_str()), find, chosen);
        found.into_iter().map(|at| (at, samples[at].name.clone())).collect::<Vec<_>>()
    });
    names
        .into_iter()
        .map(|(at, name)| {
            let translate = words::translate(&name);
            view! {
                <option
                    value=at.to_string()
                    translate=translate
                    prop:selected=at == chosen
                >
                    {name}
                </option>
            }
        })
        .collect_view()
        .into_any()
}

/// The names to show: those that hold what is typed or stand at the typed
/// number, and always the chosen one.
fn matching<'a>(names: impl Iterator<Item = &'a str>, find: &str, chosen: usize) -> Vec<usize> {
    let find = find.trim().to_ascii_lowercase();
    let number = find.parse::<usize>().ok();
    let mut found: Vec<usize> = Vec::new();
    for (at, name) in names.enumerate() {
        let fits = number == Some(at + 1) || name.to_ascii_lowercase().contains(&find);
        let room = found.len() < MOST_NAMES || number == Some(at + 1);
        if at == chosen || fits && room {
            found.push(at);
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_by_a_part_or_by_their_place() {
        let names = ["Front lawn", "Apple row", "Back lawn", "Plot 2"];
        let found = |find, chosen| matching(names.into_iter(), find, chosen);
        assert_eq!(found("", 0), [0, 1, 2, 3]);
        assert_eq!(found("LAWN ", 1), [0, 1, 2]);
        assert_eq!(found("2", 0), [0, 1, 3]);
        assert_eq!(found("rose", 3), [3]);
    }

    #[test]
    fn of_many_names_the_chosen_one_and_the_typed_number_always_show() {
        let names: Vec<String> = (1..=500).map(|n| format!("Bed {n}")).collect();
        let found = |find, chosen| matching(names.iter().map(String::as_str), find, chosen);
        assert_eq!(found("", 400).len(), MOST_NAMES + 1);
        assert!(found("", 400).contains(&400));
        assert!(found("300", 0).contains(&299));
    }
}
