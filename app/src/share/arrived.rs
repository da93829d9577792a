//! A link that was opened: what it holds is shown before it replaces
//! anything, and a scenario that was taken on stays in sight.

use emberloam_engine::quantity::Measures;
use emberloam_engine::season::day::spoken;
use gloo::events::EventListener;
use leptos::prelude::*;

use crate::date;
use crate::in_place::{Look, flag, focus, press, text};
use crate::language::{own_or_said, say};
use crate::origin::{self, Origin, Scenario};
use crate::report::exports::event_code;
use crate::saved::database::{self, Change, Place};
use crate::saved::entry::{Entry, Label};
use crate::saved::view::now;
use crate::share::answers;
use crate::share::link::{Letter, Unopened};
use crate::state::Page;
use crate::store::Kept;
use crate::words::keeping as said;

type Arrived = Option<Result<Letter, Unopened>>;

/// Looks for a link when the page stands, and whenever its address changes.
pub fn arrived(page: Page) -> AnyView {
    origin::follow(page);
    let letter = RwSignal::<Arrived>::new(None);
    let look = move || {
        let fragment = window().location().hash().unwrap_or_default();
        if let Some(found) = Letter::from_fragment(&fragment) {
            page.said.set(match &found {
                Ok(_) => said::ARRIVED.into(),
                Err(why) => why.words(),
            });
            letter.set(Some(found));
            focus("arrived-title");
        }
    };
    EventListener::new(&window(), "hashchange", move |_| look()).forget();
    look();
    view! {
        {move || match letter.get() {
            Some(Ok(found)) => asked(page, letter, found).into_any(),
            Some(Err(why)) => refused(letter, &why).into_any(),
            None => ().into_any(),
        }}
        {taken(page)}
    }
    .into_any()
}

/// Puts a link that arrived away.
fn put_away(letter: RwSignal<Arrived>) {
    letter.set(None);
    forget_address();
    focus("report-text");
}

/// Takes the link out of the address, so that a reload doesn't ask again.
pub fn forget_address() {
    let location = window().location();
    let here = location.pathname().unwrap_or_default() + &location.search().unwrap_or_default();
    if let Ok(history) = window().history() {
        // Ignored: then the address keeps the link, and a reload asks once more.
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&here));
    }
}

fn refused(letter: RwSignal<Arrived>, why: &Unopened) -> impl IntoView {
    view! {
        <section id="arrived" class="letter" aria-labelledby="arrived-title">
            <h2 id="arrived-title" tabindex="-1">
                {said::LINK_NOT_OPENED}
            </h2>
            <p id="arrived-trouble">{why.words()}</p>
            <p>{said::YOURS_IS_SAFE}</p>
            <div class="buttons">
                <button type="button" id="arrived-close" on:click=press(move || put_away(letter))>
                    {said::CLOSE}
                </button>
            </div>
        </section>
    }
}

fn asked(page: Page, letter: RwSignal<Arrived>, found: Letter) -> impl IntoView {
    let mine = move || !page.kept().is_blank();
    let shown = contents(&found, untrack(|| page.measures()));
    let found = StoredValue::new(found);
    view! {
        <section id="arrived" class="letter" aria-labelledby="arrived-title">
            <h2 id="arrived-title" tabindex="-1">
                {found.with_value(|f| if f.is_for_viewers() { said::ARRIVED_SCENARIO } else { said::ARRIVED })}
            </h2>
            {shown}
            <p>{text(move || if mine() { said::WILL_PUT_ASIDE } else { said::NOTHING_REPLACED })}</p>
            <div class="buttons">
                <button
                    type="button"
                    id="arrived-use"
                    on:click=press(move || {
                        found.with_value(|found| take(page, found.clone()));
                        put_away(letter);
                    })
                >
                    {said::USE_IT}
                </button>
                <button type="button" id="arrived-not" on:click=press(move || put_away(letter))>
                    {said::NOT_NOW}
                </button>
            </div>
        </section>
    }
}

/// What a letter holds, as whoever opens it sees it.
pub fn contents(letter: &Letter, measures: Measures) -> AnyView {
    let given = answers::said(&letter.answers, measures);
    let line = |answer: &answers::Answer| {
        let line = said::answered(&answer.label, &answer.value);
        let fixed = letter.fixed.contains(&answer.name).then_some(said::IS_FIXED);
        view! {
            <li>
                {line} {fixed.map(|word| view! { " " <span class="soft">{word}</span> })}
            </li>
        }
    };
    let lines: Vec<_> = given.iter().map(line).collect();
    let report = match letter.text.lines().filter(|line| !line.trim().is_empty()).count() {
        0 => said::BRING_YOUR_OWN.to_string(),
        count => said::report_of(count),
    };
    let note = (!letter.note.is_empty()).then(|| {
        view! {
            <p class="soft">{said::NOTE_SAYS}</p>
            <p class="letter-note" translate="no">{letter.note.clone()}</p>
        }
    });
    let excerpt = (!letter.text.is_empty()).then(|| {
        view! {
            <details class="fold">
                <summary>{said::SEE_REPORT}</summary>
                <pre class="letter-report" tabindex="0" translate="no">{letter.text.clone()}</pre>
            </details>
        }
    });
    view! {
        {note}
        <p>{report}</p>
        {excerpt}
        <p>{said::answers_of(given.len())}</p>
        <ul class="notes">{lines}</ul>
    }
    .into_any()
}

/// Takes a letter on. What was on the page goes to the shelf, and can be had
/// back at once.
fn take(page: Page, letter: Letter) {
    let before = untrack(|| page.kept());
    let bed = untrack(|| page.bed_name());
    let scenario = letter.is_for_viewers().then(|| Scenario {
        note: letter.note.clone(),
        fixed: letter.fixed.clone(),
        answers: answers::sparse(&letter.answers).to_string(),
    });
    if letter.text.is_empty() {
        // The reader's own report stays, with what the link says of the bed.
        let answers = answers::put(&before.answers, &answers::sparse(&letter.answers));
        page.restore(Kept { answers: answers.unwrap_or(letter.answers), ..before.clone() });
    } else {
        page.restore(Kept { text: letter.text, answers: letter.answers, ..Kept::default() });
    }
    let saved = page.origin.with_untracked(|origin| origin.opened.is_some());
    page.origin.set(Origin { opened: None, scenario });
    page.said.set(said::TAKEN.into());
    if before.text.is_empty() {
        return;
    }
    let today = date::today().map_or_else(String::new, spoken);
    let label =
        Label { name: say(&said::put_aside(&own_or_said(&bed), &today)), ..Label::default() };
    leptos::task::spawn_local(async move {
        let put = move |there: &[(String, String)]| {
            let aside = Entry::new(&before, label, event_code(), &now());
            let known = saved
                && there.iter().any(|(_, json)| {
                    matches!(crate::saved::entry::Held::read(json),
                        crate::saved::entry::Held::Entry(known) if known.text == aside.text && known.answers == aside.answers)
                });
            let change = Change::Put((aside.id.clone(), aside.to_json()));
            (if known { Vec::new() } else { vec![change] }, ())
        };
        if database::change(Place::Shelf, put).await.is_err() {
            page.keeping.set(Some(said::NOT_PUT_ASIDE));
        }
    });
}

/// Unfolds the place for a report.
fn put_in_own() {
    if let Some(fold) = document().get_element_by_id("report-fold") {
        // Ignored: a fold that stays closed can still be opened by hand.
        let _ = fold.set_attribute("open", "");
    }
    focus("report-text");
}

/// The note and the fixed answers of a scenario, while it holds.
fn taken(page: Page) -> impl IntoView {
    let scenario = Memo::new(move |_| page.origin.look(|origin| origin.scenario.clone()));
    let shown = move || {
        scenario.get().map(|scenario| {
            let case =
                untrack(|| scenario.fix(&emberloam_engine::Case::default())).unwrap_or_default();
            let fixed: Vec<_> = answers::said(&case, page.measures())
                .iter()
                .map(|answer| view! { <li>{said::answered(&answer.label, &answer.value)}</li> })
                .collect();
            view! {
                <p class="letter-note" translate="no">{scenario.note}</p>
                <p hidden=fixed.is_empty()>{said::FIXED_HERE}</p>
                <ul class="notes">{fixed}</ul>
            }
        })
    };
    view! {
        <section
            id="scenario"
            class="letter"
            aria-labelledby="scenario-title"
            hidden=flag(move || scenario.look(Option::is_none))
        >
            <h2 id="scenario-title">{said::SCENARIO}</h2>
            {shown}
            <div class="buttons">
                <button type="button" id="scenario-own" on:click=press(put_in_own)>
                    {said::USE_MY_OWN}
                </button>
                <button
                    type="button"
                    id="scenario-leave"
                    on:click=press(move || page.origin.update(|origin| origin.scenario = None))
                >
                    {said::LEAVE_SCENARIO}
                </button>
            </div>
        </section>
    }
}
