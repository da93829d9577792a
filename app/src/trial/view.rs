//! The trial: its table, what the plots say, and the plan of the next one.

use emberloam_engine::plan::Effect;
use emberloam_engine::trial::{Evaluation, Foretold, Refusal, Trial, evaluate};
use gloo::events::EventListener;
use leptos::prelude::*;

use crate::in_place::{changed, flag, press, text};
use crate::report::files::{hear, save};
use crate::share::arrived::forget_address;
use crate::share::sharing::{address_with, put_on_clipboard};
use crate::state::Page;
use crate::store::is_a_file;
use crate::trial::kept::{from_fragment, from_json, keep, kept, to_fragment, to_json};
use crate::trial::next::next;
use crate::trial::results::results;
use crate::trial::table::judged;
use crate::trial::taught::in_plan;
use crate::words::{keeping, trial as words};

const CLEAR: &str = include_str!("../../../public/samples/trials/clear.csv");
const UNCLEAR: &str = include_str!("../../../public/samples/trials/nothing-to-tell.csv");

/// What was found, where there is a table.
pub type Found = Option<Result<Evaluation, Refusal>>;

/// The trial that is worked at.
#[derive(Clone, Copy)]
pub struct AtWork {
    /// The page around it.
    pub page: Page,
    /// What the person gave.
    pub trial: RwSignal<Trial>,
    /// What is told of it.
    pub found: Memo<Found>,
    /// The person's own, while one from a link stands in its place.
    own: RwSignal<Option<Trial>>,
    /// What is to be said of a link.
    told: RwSignal<String>,
}

impl AtWork {
    fn begin(page: Page) -> AtWork {
        let trial = RwSignal::new(kept());
        let found = Memo::new(move |_| {
            let mut trial = trial.get();
            trial.measures = page.measures();
            (!trial.text.trim().is_empty()).then(|| evaluate(&trial))
        });
        let at_work = AtWork {
            page,
            trial,
            found,
            own: RwSignal::new(None),
            told: RwSignal::new(String::new()),
        };
        at_work.look_for_a_link();
        hear("emberloam:all-erased", Box::new(move |_| trial.set(Trial::default())));
        hear(
            "emberloam:trial-file",
            Box::new(move |said| match said.split_once('\n') {
                Some(("text", table)) => at_work.put(table),
                Some((_, why)) => at_work.told.set(why.into()),
                None => {}
            }),
        );
        at_work
    }

    /// A trial in the address stands in the place of the person's own until that is asked for.
    fn look_for_a_link(self) {
        let hash = window().location().hash().unwrap_or_default();
        match from_fragment(&hash) {
            Some(Ok(linked)) => {
                let own = self.trial.get_untracked();
                self.own.set((own.text != linked.text && !own.text.is_empty()).then_some(own));
                self.trial.set(linked);
            }
            Some(Err(why)) => self.told.set(why.words()),
            None => return,
        }
        forget_address();
    }

    fn copy_link(self) {
        let link = address_with(&self.trial.with_untracked(to_fragment));
        leptos::task::spawn_local(async move {
            let done = put_on_clipboard(&link).await;
            let said = if done { keeping::LINK_COPIED } else { keeping::NOT_COPIED };
            self.told.set(said.into());
        });
    }

    /// Something of the evaluation; the default where there is none.
    pub fn of<T: Default>(self, take: impl FnOnce(&Evaluation) -> T) -> T {
        self.found.with(|found| match found {
            Some(Ok(evaluation)) => take(evaluation),
            _ => T::default(),
        })
    }

    /// Another table: what was said of the old one's columns is gone.
    fn put(self, table: &str) {
        let trial =
            from_json(table).unwrap_or_else(|| Trial { text: table.into(), ..Trial::default() });
        self.trial.set(trial);
    }
}

/// What stands within the fold.
pub fn trial(page: Page) -> AnyView {
    let at_work = AtWork::begin(page);
    let AtWork { trial, found, own, told, .. } = at_work;
    // One from a link is kept when the person's own is.
    let is_kept = Memo::new(move |_| trial.with(|trial| own.get().is_some() || keep(trial)));
    let refused =
        move || found.with(|found| found.as_ref()?.as_ref().err().map(ToString::to_string));
    let none = move || trial.with(|trial| trial.text.is_empty());
    let sample = move |name: &'static str, table: &'static str| {
        view! {
            <button type="button" on:click=press(move || at_work.put(table))>
                {name}
            </button>
        }
    };
    view! {
        <p>{words::INTRO}</p>
        <label class="field">
            <span class="field-name">{words::TABLE}</span>
            <textarea
                id="trial-table"
                spellcheck="false"
                autocomplete="off"
                wrap="off"
                rows="8"
                aria-describedby="trial-trouble"
                prop:value=text(move || trial.with(|trial| trial.text.clone()))
                on:input=changed(move |event| {
                    let table = event_target_value(&event);
                    match from_json(&table) {
                        Some(saved) => trial.set(saved),
                        None => trial.update(|trial| trial.text = table),
                    }
                })
            ></textarea>
        </label>
        <label class="field">
            <span class="field-name">{words::OPEN_A_FILE}</span>
            <input type="file" id="trial-file" class="file" />
        </label>
        <p id="trial-trouble" role="alert">{text(move || refused().unwrap_or_default())}</p>
        <p hidden=flag(move || is_kept.get())>{words::NOT_KEPT}</p>
        <p role="status">{text(move || told.get())}</p>
        <p hidden=flag(move || own.with(Option::is_none))>
            {words::FROM_A_LINK} " "
            <button type="button" on:click=press(move || {
                if let Some(mine) = own.get_untracked() {
                    own.set(None);
                    trial.set(mine);
                }
            })>
                {words::BACK_TO_MINE}
            </button>
            <button type="button" on:click=press(move || own.set(None))>{words::KEEP_THIS}</button>
        </p>
        <div hidden=flag(move || !none())>
            <p class="soft">{words::NO_TRIAL}</p>
            <div class="buttons">
                {sample(words::CLEAR, CLEAR)} {sample(words::UNCLEAR, UNCLEAR)}
            </div>
        </div>
        {results(at_work)}
        {in_plan(at_work)}
        {judged(at_work)}
        <div class="buttons" hidden=flag(none)>
            <button
                type="button"
                on:click=press(move || {
                    save("trial.json", "application/json", &trial.with_untracked(to_json));
                })
            >
                {words::SAVE_TRIAL}
            </button>
            <button
                type="button"
                hidden=is_a_file()
                on:click=press(move || at_work.copy_link())
            >
                {words::COPY_LINK}
            </button>
            <button type="button" id="print-trial" on:click=press(print)>
                {words::PRINT_TRIAL}
            </button>
            <button type="button" on:click=press(move || trial.set(Trial::default()))>
                {words::REMOVE}
            </button>
        </div>
        {next(at_work)}
    }
    .into_any()
}

/// Prints the trial and nothing else.
fn print() {
    let ground = crate::frame::element::<web_sys::HtmlElement>("ground").class_list();
    // Ignored, here and below: the name of a class is a plain word, and a browser that can't
    // print says so itself.
    let _ = ground.add_1("prints-trial");
    // Some browsers go on while their print window is open.
    let done = EventListener::once(&window(), "afterprint", move |_| {
        let _ = ground.remove_1("prints-trial");
    });
    done.forget();
    let _ = window().print();
}

/// What the plan foretells for the bed of the page, as a trial takes it.
pub fn foretold(page: Page) -> Vec<Foretold> {
    let of = |effect: &Effect| {
        let band = effect.change.band;
        Foretold {
            property: effect.property,
            low: band.low,
            likely: band.likely,
            high: band.high,
            unit: effect.change.unit,
        }
    };
    page.of_plan(|plan| plan.effects.iter().map(of).collect())
}
