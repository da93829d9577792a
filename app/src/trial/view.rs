//! The trial: its table, what the plots say, and the plan of the next one.

use emberloam_engine::plan::Effect as SoilEffect;
use emberloam_engine::season::day::spoken;
use emberloam_engine::trial::{Evaluation, Foretold, Refusal, Trial};
use gloo::events::EventListener;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlDetailsElement;

use crate::in_place::{changed, flag, press, text};
use crate::origin::SavedAs;
use crate::report::files::{hear, save};
use crate::share::arrived::forget_address;
use crate::share::sharing::{address_with, put_on_clipboard};
use crate::state::Page;
use crate::store::is_a_file;
use crate::trial::judging::{Progress, judge, progress};
use crate::trial::kept::{
    from_fragment, from_json, keep, keep_name, kept, kept_name, to_fragment, to_json,
};
use crate::trial::next::next;
use crate::trial::results::results;
use crate::trial::saved::{kept_among_reports, two_reports};
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
    pub found: RwSignal<Found>,
    /// How far the judging is.
    pub progress: Progress,
    /// As what it is saved.
    pub saved: RwSignal<SavedAs>,
    /// The person's own, while one from elsewhere stands in its place.
    own: RwSignal<Option<(Trial, SavedAs)>>,
    /// What is to be said of a link or of a save.
    pub told: RwSignal<String>,
}

impl AtWork {
    fn begin(page: Page) -> AtWork {
        let trial = RwSignal::new(kept());
        let found = RwSignal::new(None);
        let at_work = AtWork {
            page,
            trial,
            found,
            progress: Progress::new(),
            saved: RwSignal::new(kept_name()),
            own: RwSignal::new(None),
            told: RwSignal::new(String::new()),
        };
        at_work.look_for_a_link();
        let asked = move || Trial { measures: page.measures(), ..trial.get() };
        untrack(|| judge(at_work, asked()));
        Effect::new(move |again: Option<()>| {
            let asked = asked();
            if again.is_some() {
                untrack(|| judge(at_work, asked));
            }
        });
        hear(
            "emberloam:all-erased",
            Box::new(move |_| {
                at_work.own.set(None);
                at_work.put("");
            }),
        );
        Effect::new(move |_| {
            let Some((json, saved)) = page.trial.get() else { return };
            page.trial.set(None);
            match from_json(&json) {
                Some(opened) => at_work.stand_in(opened, saved),
                None => at_work.told.set(words::DAMAGED.into()),
            }
        });
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
            Some(Ok(linked)) => self.stand_in(linked, SavedAs::default()),
            Some(Err(why)) => self.told.set(why.words()),
            None => return,
        }
        forget_address();
    }

    /// A trial from elsewhere in the place of the person's own, which can be had back.
    pub fn stand_in(self, other: Trial, saved: SavedAs) {
        let own = (self.trial.get_untracked(), self.saved.get_untracked());
        if self.own.with_untracked(Option::is_none) {
            self.own.set((own.0 != other && !own.0.text.is_empty()).then_some(own));
        }
        self.told.set(String::new());
        self.saved.set(saved);
        self.trial.set(other);
    }

    /// Back to the person's own.
    fn back(self) {
        if let Some((mine, saved)) = self.own.get_untracked() {
            self.own.set(None);
            self.saved.set(saved);
            self.trial.set(mine);
        }
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
        self.saved.set(SavedAs::default());
        self.trial.set(trial);
    }
}

/// What stands within the fold.
pub fn trial(page: Page) -> AnyView {
    let at_work = AtWork::begin(page);
    let AtWork { trial, found, own, told, .. } = at_work;
    // One from a link is kept when the person's own is.
    let is_kept = Memo::new(move |_| trial.with(|trial| own.get().is_some() || keep(trial)));
    Effect::new(move |_| {
        let saved = at_work.saved.get();
        if own.with(Option::is_none) {
            keep_name(&saved);
        }
    });
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
                        Some(_) => at_work.put(&table),
                        None => trial.update(|trial| trial.text = table),
                    }
                })
            ></textarea>
        </label>
        <label class="field">
            <span class="field-name">{words::OPEN_A_FILE}</span>
            <input type="file" id="trial-file" class="file" />
        </label>
        {two_reports(at_work)}
        {progress(at_work)}
        <p id="trial-trouble" role="alert">{text(move || refused().unwrap_or_default())}</p>
        <p hidden=flag(move || is_kept.get())>{words::NOT_KEPT}</p>
        <p role="status">{text(move || told.get())}</p>
        <p hidden=flag(move || own.with(Option::is_none))>
            {words::ANOTHER} " "
            <button type="button" on:click=press(move || at_work.back())>
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
        <p id="trial-head" hidden translate="no"></p>
        {results(at_work)}
        {in_plan(at_work)}
        {judged(at_work)}
        {kept_among_reports(at_work)}
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
            <button type="button" id="print-trial" on:click=press(move || print(at_work))>
                {words::PRINT_TRIAL}
            </button>
            <button type="button" on:click=press(move || at_work.put(""))>
                {words::REMOVE}
            </button>
        </div>
        {next(at_work)}
    }
    .into_any()
}

/// Prints the trial and nothing else, each property opened, under its name and the day.
fn print(at_work: AtWork) {
    let folds = document().query_selector_all("#trial-results details:not([open])");
    let folds: Vec<HtmlDetailsElement> = folds.map_or_else(
        |_| Vec::new(),
        |all| (0..all.length()).filter_map(|at| all.get(at)?.dyn_into().ok()).collect(),
    );
    folds.iter().for_each(|fold| fold.set_open(true));
    let head = crate::frame::element::<web_sys::HtmlElement>("trial-head");
    let today = crate::date::today().map(spoken).unwrap_or_default();
    let name = at_work.saved.with_untracked(|saved| saved.name.clone());
    head.set_text_content(Some(format!("{name} {today}").trim_start()));
    head.set_hidden(false);
    let ground = crate::frame::element::<web_sys::HtmlElement>("ground").class_list();
    // Ignored, here and below: the name of a class is a plain word, and a browser that can't
    // print says so itself.
    let _ = ground.add_1("prints-trial");
    // Some browsers go on while their print window is open.
    let done = EventListener::once(&window(), "afterprint", move |_| {
        let _ = ground.remove_1("prints-trial");
        head.set_hidden(true);
        folds.iter().for_each(|fold| fold.set_open(false));
    });
    done.forget();
    // What was opened here draws itself first.
    let print = || {
        let _ = window().print();
    };
    set_timeout(print, std::time::Duration::from_millis(50));
}

/// What the plan foretells for the bed of the page, as a trial takes it.
pub fn foretold(page: Page) -> Vec<Foretold> {
    let of = |effect: &SoilEffect| {
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
