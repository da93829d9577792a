//! The parts of the page that are fetched later: a second piece of the
//! program, asked for as soon as the page stands and not needed to show an
//! answer. Until it is here, its places are empty.

use std::sync::Arc;
use std::time::Duration;

use emberloam_engine::Case;
use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::quantity::Grounds;
use emberloam_engine::question::QuestionId;
use emberloam_engine::report::{self, NamedLine, Report};
use emberloam_engine::soil::Property;
use emberloam_engine::sources::Source;
use leptos::prelude::*;
use leptos::wasm_split::{SplitLoaderError, wasm_split};

use crate::deferred::placed;
use crate::report::{exports, long_report, own_tables, unread};
use crate::saved::earlier;
use crate::sheet::line;
use crate::specialists::{self, compare};
use crate::state::Page;
use crate::this_season::alone;
use crate::why::references;
use crate::{
    bed, beds, grounds, help, language, long_work, paper, saved, share, store, trial, words,
};

/// How long to wait before a piece that did not come is asked for again.
const PATIENCE: Duration = Duration::from_secs(5);

/// What a publication is called.
pub type Titles = fn(&Source) -> &'static str;

/// What each later part is made by.
pub struct Parts {
    /// What publications are called.
    pub titles: Titles,
    /// The ways between what is kept and its JSON.
    pub pens: store::Pens,
    /// What the earlier states on this device hold beyond what was kept last.
    pub newer: fn() -> earlier::Newer,
    /// The earlier states, to be had back.
    pub earlier: fn(Page) -> AnyView,
    /// Reads a region's own file.
    pub own_file: own_tables::Reader,
    /// Makes readings of lines that the person named.
    pub name_lines: fn(&mut Report, &[NamedLine]),
    /// Gives the page another language than English.
    pub learn: fn(),
    /// What a number rests on.
    pub grounds: fn(Grounds) -> AnyView,
    /// The samples side by side.
    pub compare: fn(Page) -> AnyView,
    /// What to buy for all beds.
    pub shopping: fn(Page) -> AnyView,
    /// What lies behind a reading.
    pub behind: fn(Page, Memo<JudgedReading>) -> AnyView,
    /// What could not be placed.
    pub unread: fn(Page) -> AnyView,
    /// What a specialist opens.
    pub behind_the_door: fn(Page) -> AnyView,
    /// The dated jobs as a calendar file.
    pub calendar: fn(Page) -> AnyView,
    /// The readings as files for other programs.
    pub exports: fn(Page) -> AnyView,
    /// How far long work is, and the way to stop it.
    pub long_work: fn(Page) -> AnyView,
    /// Reads a long text in steps.
    pub long_report: fn(Page, String),
    /// The list of sources.
    pub references: fn(Page) -> AnyView,
    /// Every answer, to be changed.
    pub bed: fn(Page) -> AnyView,
    /// How to sample, how to read a level, and the trade's words.
    pub help: fn() -> AnyView,
    /// The plan on paper.
    pub paper: fn(Page) -> AnyView,
    /// The saved reports.
    pub saved: fn(Page) -> AnyView,
    /// A link, its code and other ways to share.
    pub sharing: fn(Page) -> AnyView,
    /// A link that was opened.
    pub arrived: fn(Page) -> AnyView,
    /// What a question is answered with.
    pub controls: fn(Page, QuestionId, &[Property]) -> AnyView,
    /// What was answered to a question, in words.
    pub answered: fn(&Case, QuestionId) -> String,
    /// The trial.
    pub trial: fn(Page) -> AnyView,
    /// The recipe for so much biochar, without a report.
    pub alone: fn(Page) -> AnyView,
}

static PARTS: Parts = Parts {
    titles: Source::title,
    pens: store::PENS,
    newer: earlier::newer,
    earlier: earlier::earlier,
    own_file: emberloam_engine::own::read,
    name_lines: report::name_lines,
    learn: language::learn,
    grounds: grounds::grounds,
    compare: compare::compare,
    shopping: beds::shopping::shopping,
    behind: line::behind,
    unread: unread::unread,
    behind_the_door: specialists::behind_the_door,
    calendar: exports::calendar,
    exports: exports::exports,
    long_work: long_work::long_work,
    long_report: long_report::long_report,
    references: references::list,
    bed: bed::bed,
    help: help::help,
    paper: paper::paper,
    saved: saved::view::reports,
    sharing: share::sharing::sharing,
    arrived: share::arrived::arrived,
    controls: bed::controls,
    answered: share::answers::answered,
    trial: trial::trial,
    alone: alone::alone,
};

/// The one door to the second piece: what only `PARTS` leads to is in it.
#[wasm_split(later, wasm_split_path = leptos::wasm_split, fallible)]
fn parts() -> Result<&'static Parts, SplitLoaderError> {
    Ok(&PARTS)
}

#[derive(Clone, Copy)]
enum Stage {
    Coming,
    /// It did not come, and is asked for again.
    Late,
    Here(&'static Parts),
}

/// Whether the later parts are here.
#[derive(Clone, Copy)]
struct Later(RwSignal<Stage>);

/// The later parts, once: for what the page must have before it begins. From then on it can
/// speak, and read a region's own file.
pub async fn at_once() -> Option<&'static Parts> {
    let parts = parts().await.ok()?;
    own_tables::read_with(parts.own_file);
    (parts.learn)();
    Some(parts)
}

/// Fetches the later parts as soon as the page stands.
pub fn fetch() {
    let later = Later(RwSignal::new(Stage::Coming));
    provide_context(later);
    ask(later, Duration::ZERO);
}

/// The later parts, if they are here; followed where it is asked in an effect until they are.
pub fn here() -> impl Fn() -> Option<&'static Parts> + Copy {
    let Later(stage) = expect_context();
    move || match stage.get_untracked() {
        Stage::Here(parts) => Some(parts),
        _ => {
            stage.track();
            None
        }
    }
}

/// What publications are called, once that is here; followed where it is asked in an effect.
pub fn titles() -> impl Fn() -> Option<Titles> + Copy {
    let here = here();
    move || here().map(|parts| parts.titles)
}

fn ask(later: Later, after: Duration) {
    set_timeout(
        move || {
            leptos::task::spawn_local(async move {
                match at_once().await {
                    Some(parts) => later.0.set(Stage::Here(parts)),
                    None => {
                        later.0.set(Stage::Late);
                        ask(later, PATIENCE);
                    }
                }
            });
        },
        after,
    );
}

/// A later part, in its place as soon as it is here; those that were waited for come one a turn.
pub fn later(part: impl Fn(&Parts) -> AnyView + Send + Sync + 'static) -> AnyView {
    boxed_later(Arc::new(part))
}

fn boxed_later(part: Arc<dyn Fn(&Parts) -> AnyView + Send + Sync>) -> AnyView {
    let Later(stage) = expect_context();
    // Made once: what it reads while it is made must not make it again.
    if let Stage::Here(parts) = stage.get_untracked() {
        return untrack(|| part(parts));
    }
    let view = move || match stage.get() {
        Stage::Coming => ().into_any(),
        Stage::Late => words::STILL_COMING.into_any(),
        Stage::Here(parts) => {
            let part = part.clone();
            placed(move || part(parts))
        }
    };
    view.into_any()
}
