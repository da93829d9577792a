//! Says aloud, to readers that listen, what changed.

use gloo::timers::callback::Timeout;
use leptos::prelude::*;

use crate::in_place::text;
use crate::state::Page;
use crate::words;

/// A pause in typing, ms, after which the change is worth saying.
const PAUSE: u32 = 600;

/// What is known of the page, and what waits to be said of it: the number of results, the
/// headline, how many reports came, the message with its time.
type Heard = (Option<usize>, String, u32, Option<(Timeout, String)>);

/// The region that speaks.
pub fn announce(page: Page) -> impl IntoView {
    let said = page.said;
    Effect::new(move |before: Option<Heard>| {
        // A long report is told of when it is here, even where it looks as the last one did.
        let came = page.came.get();
        // What is said meanwhile is heard out first.
        said.track();
        let results = page.of_sample(|sample| Some(sample.readings.len()));
        let headline = page.of_plan(|plan| plan.headline.clone());
        let (old_results, old_headline, old_came, waiting) = before.unwrap_or_default();
        let message = match results {
            Some(count) if old_results != results || old_came != came => {
                Some(words::report_read(count))
            }
            Some(_) if old_headline != headline => Some(words::answer_changed(&headline)),
            _ => None,
        };
        // A message that still waits is dropped only for a newer one.
        let waits = waiting.map(|(_, waits)| waits).filter(|waits| *waits != said.get_untracked());
        let waiting = message.or(waits).map(|message| {
            let then = message.clone();
            (Timeout::new(PAUSE, move || said.set(then)), message)
        });
        (results, headline, came, waiting)
    });
    view! {
        <div id="announce" class="sr-only" aria-live="polite">
            {text(move || said.get())}
        </div>
    }
}
