//! What this tab has before it: a report from the shelf, a scenario from a
//! link. It survives a reload of the tab and is never shared with another one:
//! two tabs may have two reports open.

use std::hash::{DefaultHasher, Hash, Hasher};

use emberloam_engine::Case;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};

use crate::in_place::Look;
use crate::share::answers;
use crate::state::Page;
use crate::store::{Kept, named, session};

/// Where the browser keeps it, for this tab alone.
const KEPT: &str = "origin";

/// Where what this tab shows came from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Origin {
    /// The report from the shelf that is open.
    pub opened: Option<Opened>,
    /// What a link for viewers has fixed.
    pub scenario: Option<Scenario>,
}

/// A report from the shelf as it was when it was opened or saved last.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opened {
    /// Its id.
    pub id: String,
    /// Its revision then.
    pub revision: u64,
}

/// A trial among the saved reports: its name there, and as it was opened or saved last.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct SavedAs {
    /// Its name.
    pub name: String,
    /// None where it was not saved yet.
    pub opened: Option<Opened>,
}

/// Answers that a link has fixed, with the note of who made it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    /// The note, as text.
    pub note: String,
    /// The names of the fixed answers.
    pub fixed: Vec<String>,
    /// The fixed answers, as the JSON of a case.
    pub answers: String,
}

impl Scenario {
    /// Puts the fixed answers into a case.
    pub fn fix(&self, case: &Case) -> Option<Case> {
        let part = serde_json::from_str(&self.answers).ok()?;
        answers::put(case, &answers::only(&part, &self.fixed))
    }

    /// Whether `get` gives an answer that is fixed.
    pub fn holds<T: PartialEq>(&self, case: &Case, get: impl Fn(&Case) -> T) -> bool {
        get(case) != get(&answers::without(case, &self.fixed))
    }
}

/// Whether an answer is fixed by the scenario the reader has taken on.
pub fn is_fixed<T: PartialEq>(page: Page, get: impl Fn(&Case) -> T) -> bool {
    page.origin.look(|origin| {
        let holds = |scenario: &Scenario| page.answers.look(|case| scenario.holds(case, &get));
        origin.scenario.as_ref().is_some_and(holds)
    })
}

/// What is kept of it: where it came from, and for which report and answers.
#[derive(Serialize, Deserialize)]
struct Laid {
    origin: Origin,
    /// Another tab may have put another report in place since.
    mark: u64,
}

/// A mark of a report with its answers.
fn mark(kept: &Kept) -> u64 {
    let mut hasher = DefaultHasher::new();
    kept.text.hash(&mut hasher);
    answers::sparse(&kept.answers).to_string().hash(&mut hasher);
    hasher.finish()
}

/// Takes it up as it was before a reload, and keeps it from then on. The
/// fixed answers of a scenario stay fixed.
pub fn follow(page: Page) {
    if let Some(laid) = read() {
        // Told of by its mark: what another tab has kept since is not what was open here.
        let same = laid.mark == untrack(|| mark(&page.kept()));
        let Origin { opened, scenario } = laid.origin;
        page.origin.set(Origin { opened: opened.filter(|_| same), scenario });
    }
    Effect::new(move |_| {
        let Some(scenario) = page.origin.look(|origin| origin.scenario.clone()) else { return };
        let fixed = page.answers.look(|case| scenario.fix(case));
        if let Some(fixed) = fixed
            && page.answers.with_untracked(|case| *case != fixed)
        {
            page.answers.set(fixed);
        }
    });
    Effect::new(move |_| {
        let origin = page.origin.get();
        write((origin != Origin::default()).then(|| Laid { origin, mark: mark(&page.kept()) }));
    });
}

fn read() -> Option<Laid> {
    serde_json::from_str(&session()?.get_item(&named(KEPT)).ok()??).ok()
}

fn write(laid: Option<Laid>) {
    let Some(session) = session() else { return };
    // Ignored: an origin that isn't kept only forgets which report was open.
    let _ = match laid.and_then(|laid| serde_json::to_string(&laid).ok()) {
        Some(json) => session.set_item(&named(KEPT), &json),
        None => session.remove_item(&named(KEPT)),
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scenario_fixes_its_answers_and_no_others() {
        let mut case = Case { sample: 1, ..Case::default() };
        case.bed.area_m2 = Some(2.0);
        case.bed.depth_cm = Some(15.0);
        let scenario = Scenario {
            note: String::new(),
            fixed: vec!["bed.area-m2".into()],
            answers: r#"{"bed":{"area-m2":10.0,"depth-cm":30.0}}"#.into(),
        };
        let fixed = scenario.fix(&case).unwrap();
        assert_eq!(fixed.bed.area_m2, Some(10.0));
        assert_eq!((fixed.bed.depth_cm, fixed.sample), (Some(15.0), 1));
        assert!(scenario.holds(&fixed, |case| case.bed.area_m2));
        assert!(!scenario.holds(&fixed, |case| case.bed.depth_cm));
    }

    #[test]
    fn a_mark_tells_reports_and_answers_apart() {
        let one = Kept { text: "pH 6".into(), ..Kept::default() };
        let mut other = one.clone();
        other.answers.bed.depth_cm = Some(10.0);
        assert_eq!(mark(&one), mark(&one.clone()));
        assert_ne!(mark(&one), mark(&other));
        assert_ne!(mark(&one), mark(&Kept::default()));
    }
}
