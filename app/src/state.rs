//! The state of the page: the person's inputs as signals, all else worked out.

use std::borrow::Cow;
use std::cell::RefCell;
use std::ops::Range;
use std::sync::Arc;

use emberloam_engine::case::ReadingAnswers;
use emberloam_engine::outcome::{JudgedReading, SampleOutcome};
use emberloam_engine::quantity::Measures;
use emberloam_engine::report::{self, Report, Trouble};
use emberloam_engine::summary::{self, Shopping};
use emberloam_engine::{Case, Outcome, Plan, Survey, interpret, interpret_survey, survey};
use leptos::prelude::*;

use crate::deferred::with_the_sample;
use crate::in_place::Look;
use crate::origin::{Origin, SavedAs};
use crate::paper::Printed;
use crate::report::own_tables;
use crate::{date, later, store, words};

/// The state, handed to every view.
#[derive(Clone, Copy)]
pub struct Page {
    /// The pasted text.
    pub text: RwSignal<String>,
    /// Whether the person has touched the paste box in this visit.
    pub touched: RwSignal<bool>,
    /// The answers; the report in it stays empty.
    pub answers: RwSignal<Case>,
    /// The jobs that were ticked off, each by its sample and its kind.
    pub done: RwSignal<Vec<String>>,
    /// Whether what is answered about a bed holds for all beds of the report.
    pub for_all: RwSignal<bool>,
    /// What is on paper: from the moment it is to be printed until something changes.
    pub printed: RwSignal<Option<Printed>>,
    /// What to tell the person about keeping, once.
    pub keeping: RwSignal<Option<&'static str>>,
    /// What was erased or replaced last, until the person takes it back or puts it away.
    pub before: RwSignal<Option<Before>>,
    /// What was replaced and is not yet among the earlier states on this device.
    pub replaced: RwSignal<Vec<store::Kept>>,
    /// Whether the text that comes next stands in the place of the whole report.
    replacing: StoredValue<bool>,
    /// What this tab has before it from the shelf or from a link.
    pub origin: RwSignal<Origin>,
    /// A saved trial that was opened, as JSON, until the part of the trial takes it.
    pub trial: RwSignal<Option<(String, SavedAs)>>,
    /// What is said aloud.
    pub said: RwSignal<String>,
    /// Counts the times the report or all was replaced, taken back or erased by the
    /// person: what takes long stops when its turn has passed.
    turn: StoredValue<u32>,
    /// Counts the erasings.
    erasings: StoredValue<u32>,
    /// Whether a long report is being read; until it is, the page holds the old one.
    pub reading: RwSignal<bool>,
    /// Counts the long reports that were read.
    pub came: RwSignal<u32>,
    /// Wakes the paste box to show the page's text again.
    pub box_shown: RwSignal<()>,
    /// Where the text was opened from and what to know of it, in lines.
    pub opened: RwSignal<String>,
    /// Why the last file was not opened.
    pub refused: RwSignal<Option<String>>,
    /// The report read from the text.
    pub report: Memo<Result<Report, Trouble>>,
    /// The chosen sample, surveyed once after each change for the answer and all
    /// that lies below it; `None` without a report.
    pub survey: Memo<Option<Arc<Survey<'static>>>>,
    /// The engine's answer for the chosen sample, the only one in it; `None`
    /// without a report. A pen stroke must not cost more in a long report.
    pub outcome: Memo<Option<Outcome>>,
    /// The readings of the chosen sample, soon after a change: most answers leave
    /// them as they are.
    pub readings: RwSignal<Vec<JudgedReading>>,
    /// The reader's measures: every number follows them, and no other answer; a
    /// memo would wake them all at every change.
    measures: RwSignal<Measures>,
}

/// What the page held before something else came in its place.
#[derive(Clone, Debug)]
pub struct Before {
    /// The report with its answers.
    pub kept: store::Kept,
    /// Where it came from.
    pub origin: Origin,
    /// What became of it, in words.
    pub said: &'static str,
}

impl Page {
    /// Begins with what was kept on this device.
    pub fn begin(restored: store::Restored) -> Page {
        let text = RwSignal::new(restored.kept.text);
        let answers = RwSignal::new(restored.kept.answers);
        let named = Memo::new(move |_| answers.look(|case| case.reading.named_lines.clone()));
        let parts = later::here();
        let report = Memo::new(move |_| {
            let mut read = text.look(|text| read(text));
            if let Ok(report) = &mut read
                && !named.look(Vec::is_empty)
                && let Some(parts) = parts()
            {
                named.look(|lines| (parts.name_lines)(report, lines));
            }
            read
        });
        let surveyed = move |_: Option<&Option<Arc<Survey<'static>>>>| {
            report.look(|report| {
                let report = report.as_ref().ok()?;
                let chosen = answers.look(|case| case.sample).min(report.samples.len() - 1);
                let case = case_of(report, chosen..chosen + 1, answers);
                Some(Arc::new(survey(Cow::Owned(case))))
            })
        };
        // What follows them looks for itself whether its part has changed.
        let survey = Memo::new_with_compare(surveyed, |_, _| true);
        let answer = move |_: Option<&Option<Outcome>>| {
            survey.look(|survey| survey.as_ref().map(|survey| interpret_survey(survey)))
        };
        let outcome = Memo::new_with_compare(answer, |_, _| true);
        let readings = with_the_sample(move || {
            outcome.look(|outcome| {
                let sample = outcome.as_ref().and_then(|outcome| outcome.samples.first());
                sample.map(|sample| sample.readings.clone()).unwrap_or_default()
            })
        });
        let page = Page {
            text,
            touched: RwSignal::new(false),
            answers,
            done: RwSignal::new(restored.kept.done),
            for_all: RwSignal::new(false),
            printed: RwSignal::new(None),
            keeping: RwSignal::new(restored.say),
            before: RwSignal::new(None),
            replaced: RwSignal::new(Vec::new()),
            replacing: StoredValue::new(false),
            origin: RwSignal::new(Origin::default()),
            trial: RwSignal::new(None),
            said: RwSignal::new(String::new()),
            turn: StoredValue::new(0),
            erasings: StoredValue::new(0),
            reading: RwSignal::new(false),
            came: RwSignal::new(0),
            box_shown: RwSignal::new(()),
            opened: RwSignal::new(String::new()),
            refused: RwSignal::new(None),
            report,
            survey,
            outcome,
            readings,
            measures: RwSignal::new(answers.with_untracked(|case| case.measures)),
        };
        if !restored.hands_off {
            page.keep_on_change();
        }
        page
    }

    /// Keeps every change on this device, as soon as the later parts are here;
    /// says so while it can't.
    fn keep_on_change(self) {
        let parts = later::here();
        Effect::new(move |first: Option<()>| {
            let kept = self.kept();
            let parts = parts();
            // The first run only repeats what was just restored.
            if first.is_none() || kept == store::Kept::fresh() && store::latest().is_none() {
                return;
            }
            let Some(parts) = parts else { return };
            let said = self.keeping.get_untracked();
            match store::keep(&parts.pens, &kept) {
                Err(why) if said.is_none() => self.keeping.set(Some(why)),
                // It is kept now; what was damaged before still is.
                Ok(()) if said.is_some_and(|said| said != words::STORAGE_DAMAGED) => {
                    self.keeping.set(None);
                }
                _ => {}
            }
        });
    }

    /// What is kept now.
    pub fn kept(self) -> store::Kept {
        store::Kept { text: self.text.get(), answers: self.answers.get(), done: self.done.get() }
    }

    /// Begins a turn: what a long reading works at is no longer wanted.
    pub fn new_turn(self) {
        self.turn.update_value(|turn| *turn += 1);
        if self.reading.get_untracked() {
            self.reading.set(false);
            self.box_shown.notify();
        }
    }

    /// Begins a turn in which a long text is read: the paste box holds it already.
    pub fn begin_reading(self) -> u32 {
        self.turn.update_value(|turn| *turn += 1);
        self.reading.set(true);
        self.turn()
    }

    /// Which turn it is.
    pub fn turn(self) -> u32 {
        self.turn.get_value()
    }

    /// How often all was erased.
    pub fn erasings(self) -> u32 {
        self.erasings.get_value()
    }

    /// Removes the report and its answers from the device and the page; it can be taken back
    /// until the page is left.
    pub fn erase(self) {
        let before = untrack(|| self.now(words::ERASED));
        self.new_turn();
        self.erasings.update_value(|times| *times += 1);
        store::erase();
        self.replaced.set(Vec::new());
        self.text.set(String::new());
        self.touched.set(false);
        self.answers.set(store::Kept::fresh().answers);
        self.done.set(Vec::new());
        self.origin.set(Origin::default());
        store::erase();
        self.keeping.set(None);
        self.refused.set(None);
        self.opened.set(String::new());
        self.before.set(Some(before));
    }

    /// What the page holds now, and what is said of it once it is gone.
    fn now(self, said: &'static str) -> Before {
        Before { kept: self.kept(), origin: self.origin.get(), said }
    }

    /// Takes what happened last back. What came by it joins the earlier states.
    pub fn take_back(self) {
        let Some(Before { kept, origin, .. }) = self.before.get_untracked() else { return };
        self.put_by();
        self.put(kept);
        self.origin.set(origin);
        self.before.set(None);
    }

    /// Puts a kept report and its answers in place of those there are, which can be had back.
    pub fn restore(self, kept: store::Kept) {
        let same = untrack(|| self.kept()) == kept;
        if !same {
            self.put_by();
        }
        self.put(kept);
    }

    /// Remembers what the page holds: something else comes in its place.
    fn put_by(self) {
        let before = untrack(|| self.now(words::REPLACED));
        if before.kept.is_blank() {
            return;
        }
        self.replaced.update(|all| all.push(before.kept.clone()));
        self.before.set(Some(before));
    }

    fn put(self, kept: store::Kept) {
        let another = self.text.with_untracked(|old| is_another(old, &kept.text));
        self.put_text(kept.text, another);
        self.answers.set(kept.answers);
        self.done.set(kept.done);
    }

    /// Says why a file was not opened; the text stays as it is.
    pub fn refuse(self, why: String) {
        self.replacing.set_value(false);
        self.refused.set(Some(why));
    }

    /// The text that comes next stands in the place of the whole report, whatever it says.
    pub fn will_replace(self) {
        self.replacing.set_value(true);
    }

    /// Puts a text into the paste box. Where it is another report, the one before can be had back.
    pub fn paste(self, text: impl Into<String>) {
        let text = text.into();
        let told = self.replacing.get_value();
        self.replacing.set_value(false);
        let replaces = |old: &String| *old != text && (told || is_another(old, &text));
        let replaces = self.text.with_untracked(replaces);
        if replaces && !self.text.with_untracked(String::is_empty) {
            self.put_by();
        }
        self.put_text(text, replaces);
    }

    /// `another` where it is another report than the one there is.
    fn put_text(self, text: String, another: bool) {
        self.new_turn();
        self.touched.set(true);
        self.refused.set(None);
        self.opened.set(String::new());
        if another {
            // What was answered about the old report's readings must not be
            // taken for the new one's; what was said of the bed holds.
            self.answers.update(|case| {
                case.reading = ReadingAnswers::default();
                case.beds.clear();
                case.sample = 0;
                // Whether this is the bed of the trial, only the person can tell.
                if let Some(trial) = &mut case.trial {
                    trial.off = true;
                }
            });
            self.done.set(Vec::new());
            // Nor must it be saved over the one that was open.
            self.origin.update(|origin| origin.opened = None);
        }
        if self.text.with_untracked(|old| *old != text) {
            self.text.set(text);
        }
    }

    /// The reader's measures.
    pub fn measures(self) -> Measures {
        self.measures.get()
    }

    /// Brings the measures after the answers.
    pub fn follow_measures(self) {
        let now = self.answers.look(|case| case.measures);
        if self.measures.get_untracked() != now {
            self.measures.set(now);
        }
    }

    /// Wakes what follows the signals that hardly ever change. A part of the page that is gone
    /// stays listed with them until they speak, and its memory with it.
    pub fn let_go_of_old_parts(self) {
        self.measures.notify();
        self.done.notify();
        self.for_all.notify();
    }

    /// Changes an answer; what belongs to a bed is said of the chosen one alone where the report
    /// has several, unless it is to hold for all. What no garden has is not taken, and said.
    pub fn answer(self, change: impl FnOnce(&mut Case)) {
        if let Some(why) = self.answer_within_bounds(change) {
            self.refuse(why);
        }
    }

    /// The same for a field that says itself why its answer was not taken.
    pub fn answer_within_bounds(self, change: impl FnOnce(&mut Case)) -> Option<String> {
        let (at, count) = untrack(|| (self.chosen(), self.count()));
        let for_all = count < 2 || self.for_all.get_untracked();
        let mut answered = self.answers.get_untracked();
        answered.answer(at, for_all, change);
        let beyond = answered.within_bounds().err();
        if beyond.is_none() {
            self.answers.set(answered);
        }
        beyond.map(|beyond| beyond.to_string())
    }

    /// Looks at the answers as they hold for the chosen sample.
    pub fn said<R>(self, look: impl FnOnce(&Case) -> R) -> R {
        self.answers.look(|case| {
            if case.beds.is_empty() { look(case) } else { look(&case.of_sample(case.sample)) }
        })
    }

    /// Whether there is a report to answer for.
    pub fn has_report(self) -> bool {
        self.outcome.look(Option::is_some)
    }

    /// Why a file was not opened, or why the text can't be read, in words; nothing while nothing was tried.
    pub fn trouble(self) -> Option<String> {
        if let Some(why) = self.refused.get() {
            return Some(why);
        }
        let tried = self.touched.get() || self.text.look(|text| !text.is_empty());
        let trouble = self.report.look(|report| report.as_ref().err().map(ToString::to_string));
        trouble.filter(|_| tried)
    }

    /// How many samples the report has.
    pub fn count(self) -> usize {
        self.report.look(|report| report.as_ref().map_or(0, |report| report.samples.len()))
    }

    /// Which sample was chosen.
    pub fn chosen(self) -> usize {
        let last = self.count().saturating_sub(1);
        self.answers.look(|case| case.sample).min(last)
    }

    /// The engine's answer for some samples of the report.
    pub fn outcome_of(self, samples: Range<usize>) -> Option<Outcome> {
        self.report.look(|report| {
            let report = report.as_ref().ok()?;
            Some(interpret(&case_of(report, samples, self.answers)))
        })
    }

    /// Something of the chosen sample.
    pub fn of_sample<T: Default>(self, take: impl FnOnce(&SampleOutcome) -> T) -> T {
        self.outcome.look(|outcome| {
            outcome
                .as_ref()
                .and_then(|outcome| outcome.samples.first())
                .map(take)
                .unwrap_or_default()
        })
    }

    /// Something of the plan.
    pub fn of_plan<T: Default>(self, take: impl FnOnce(&Plan) -> T) -> T {
        self.outcome.look(|outcome| outcome.as_ref().map(|o| take(&o.plan)).unwrap_or_default())
    }

    /// Something of one bed's answer, and the answers it was made with; nothing where the report
    /// has no such sample.
    pub fn of_bed<T>(self, at: usize, take: impl FnOnce(&Outcome, &Case) -> T) -> Option<T> {
        self.report.look(|report| {
            let report = report.as_ref().ok().filter(|report| at < report.samples.len())?;
            let case = case_of(report, at..at + 1, self.answers);
            Some(take(&interpret(&case), &case.of_sample(0)))
        })
    }

    /// What to buy for all beds.
    pub fn shopping(self) -> Shopping {
        self.report.look(|report| {
            let case = |report: &Report| case_of(report, 0..report.samples.len(), self.answers);
            report.as_ref().map(|report| summary::shopping(&case(report))).unwrap_or_default()
        })
    }

    /// Something of the engine's answer and the answers it was made with; the default without a
    /// report.
    pub fn of_outcome<T: Default>(self, take: impl FnOnce(&Outcome, &Case) -> T) -> T {
        let Some(survey) = self.survey.get() else { return T::default() };
        self.outcome.look(|o| o.as_ref().map(|o| take(o, survey.case())).unwrap_or_default())
    }

    /// The title of the bed: the sample's name, when the report gives one.
    pub fn bed_name(self) -> String {
        let name = self.of_sample(|sample| sample.name.clone());
        if name.is_empty() { words::YOUR_BED.into() } else { name }
    }
}

/// What a text was read as.
pub type Read = Result<Report, Trouble>;

thread_local! {
    /// A text that was read before it came to the page, with what it was read as.
    static READ: RefCell<Option<(String, Read)>> = const { RefCell::new(None) };
}

/// Hands over what a text was read as, before the text.
pub fn is_read(text: &str, read: Read) {
    READ.set(Some((text.into(), read)));
}

/// Reads a text that comes to the page in the next turn: a turn each for the reading and the plan.
pub fn read_first(text: &str) {
    is_read(text, read(text));
}

fn read(text: &str) -> Read {
    match READ.take() {
        Some((known, read)) if known == text => read,
        _ => report::open(text.as_bytes()).and_then(|grid| report::read(&grid)),
    }
}

/// The case with some samples of a report, the first of them chosen.
fn case_of(report: &Report, samples: Range<usize>, answers: RwSignal<Case>) -> Case {
    let mut case = answers.get();
    case.count_beds_from(samples.start);
    case.own = own_tables::tables_of(&case);
    case.report = Report {
        samples: report.samples.get(samples).unwrap_or_default().to_vec(),
        unread: Vec::new(),
        notes: report.notes.clone(),
        regions: report.regions.clone(),
        crop: report.crop,
    };
    case.sample = 0;
    case.season.today = date::today();
    case
}

/// The lines that say something.
fn lines(text: &str) -> impl Iterator<Item = &str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty())
}

/// Whether `new` is another report, not the old one being edited: of two lines
/// or more not one is left.
fn is_another(old: &str, new: &str) -> bool {
    // The first lines tell; a long paste need not be compared to its end.
    let old = || lines(old).take(100);
    old().nth(1).is_some() && !old().any(|line| lines(new).any(|other| other == line))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edited_report_is_the_same_and_a_replaced_one_is_another() {
        let report = "pH 6.4\nPhosphorus 18 ppm\n";
        assert!(!is_another(report, "pH 6.4\nPhosphorus 19 ppm\n"));
        assert!(!is_another(report, "  pH 6.4"));
        assert!(!is_another("", report));
        assert!(is_another(report, "pH 7.1\nPhosphorus 40 ppm\n"));
        assert!(is_another(report, ""));
    }
}
