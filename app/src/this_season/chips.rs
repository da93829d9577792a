//! The answers that would sharpen the plan: three at most stand open as chips,
//! the others behind one more. A chip that was answered says what was answered
//! and stays where it is, so that nothing jumps away under the person's hands.

use std::sync::Arc;

use emberloam_engine::question::{Question, QuestionId};
use leptos::prelude::*;

use crate::deferred::soon_after;
use crate::grounds::{once_opened, opens};
use crate::in_place::{Look, flag, keyed, text};
use crate::later;
use crate::state::Page;
use crate::words;

/// How many open questions stand beside the answer.
const BESIDE: usize = 3;

/// A question, and whether it still waits for an answer.
#[derive(Clone, PartialEq)]
struct Asked {
    question: Question,
    open: bool,
}

/// The questions of one sample.
#[derive(Default, PartialEq)]
struct List {
    /// The report, and which sample of it.
    of: (String, usize),
    asked: Vec<Asked>,
}

/// The chips.
pub fn chips(page: Page) -> impl IntoView {
    let asked = soon_after(Box::new(move |before: &List| {
        let now = page.outcome.look(|o| o.as_ref().map(|o| o.questions.clone()));
        let of = (page.text.get(), page.chosen());
        // Another report or sample brings its own questions.
        let before = if before.of == of { &before.asked[..] } else { &[] };
        List { asked: merge(before, &now.unwrap_or_default()), of }
    }));
    let part = move |beside: bool| asked.look(|list| parted(&list.asked, beside));
    let items = move |beside: bool| {
        keyed(move || part(beside), |asked| key(&asked.question), move |item| chip(page, item))
    };
    let more = move || part(false).len();
    view! {
        <div id="questions" class="chips">
            <h3 class="sr-only">{words::QUESTIONS}</h3>
            <ul class="plain">{items(true)}</ul>
            <details class="chip more">
                <summary>{text(move || words::more_answers(more()))}</summary>
                <ul class="plain">{items(false)}</ul>
                {later::later(move |parts| (parts.bed)(page))}
            </details>
        </div>
    }
}

/// A question's name: which it is, and what it is about.
fn key(question: &Question) -> String {
    let about: Vec<_> = question.about.iter().map(|property| property.name()).collect();
    format!("{} {}", question.id as u8, about.join(" "))
}

/// The questions beside the answer, or those behind the last chip. Without the size of the bed
/// there is nothing to carry, so it is asked first.
fn parted(asked: &[Asked], beside: bool) -> Vec<Asked> {
    let mut open = 0;
    let mut stands = |asked: &&Asked| {
        open += usize::from(asked.open);
        (!asked.open || open <= BESIDE) == beside
    };
    let (first, rest): (Vec<&Asked>, Vec<&Asked>) =
        asked.iter().partition(|asked| asked.question.id == QuestionId::Area);
    first.into_iter().chain(rest).filter(|asked| stands(asked)).cloned().collect()
}

/// The questions asked before, marked open or answered, then the new ones.
fn merge(before: &[Asked], now: &[Question]) -> Vec<Asked> {
    let now: Vec<(String, &Question)> = now.iter().map(|q| (key(q), q)).collect();
    let find = |asked: &Asked| {
        let mine = key(&asked.question);
        now.iter().find(|(key, _)| *key == mine).map(|(_, q)| *q)
    };
    let old = before.iter().map(|asked| Asked {
        question: find(asked).unwrap_or(&asked.question).clone(),
        open: find(asked).is_some(),
    });
    let known = |mine: &String| before.iter().any(|asked| key(&asked.question) == *mine);
    let new = now.iter().filter(|(key, _)| !known(key));
    let new = new.map(|(_, q)| Asked { question: (*q).clone(), open: true });
    old.chain(new).collect()
}

fn chip(page: Page, item: Memo<Asked>) -> impl IntoView {
    let Question { id, about, .. } = item.get_untracked().question;
    let opened = RwSignal::new(false);
    let parts = later::here();
    let label = words::asked(id, &about);
    let short = words::asked_before(id);
    let answered = move || !item.look(|asked| asked.open);
    // What was answered, once what can say it is here.
    let value = Memo::new(move |_| {
        let parts = parts().filter(|_| answered());
        parts.map(|parts| page.said(|case| (parts.answered)(case, id))).unwrap_or_default()
    });
    view! {
        <li>
            <details
                class="chip"
                class:answered=flag(answered)
                data-question=format!("{id:?}")
                on:toggle=opens(opened)
            >
                <summary>
                    {text(move || if value.look(String::is_empty) { label.clone() } else { short.into() })} " "
                    <span class="chip-answer">{text(move || value.get())}</span>
                </summary>
                <p>{text(move || item.look(|asked| asked.question.text.clone()))}</p>
                <p class="soft">{text(move || item.look(|asked| asked.question.changes.clone()))}</p>
                {move || {
                    item.look(|asked| asked.question.suggestion.clone())
                        .map(|text| view! { <p class="soft">{text}</p> })
                }}
                <div class="controls">
                    {once_opened(
                        opened,
                        Arc::new(move |parts| (parts.controls)(page, id, &about)),
                    )}
                </div>
            </details>
        </li>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ask(id: QuestionId) -> Question {
        let text = |s: &str| s.to_string();
        Question { id, text: text("?"), changes: text("much"), about: vec![], suggestion: None }
    }

    #[test]
    fn an_answered_question_keeps_its_place() {
        let first = merge(&[], &[ask(QuestionId::Plants), ask(QuestionId::Area)]);
        let then = merge(&first, &[ask(QuestionId::Area), ask(QuestionId::BagState)]);
        let seen: Vec<_> = then.iter().map(|a| (a.question.id, a.open)).collect();
        assert_eq!(
            seen,
            [(QuestionId::Plants, false), (QuestionId::Area, true), (QuestionId::BagState, true)]
        );
        let back = merge(&then, &[ask(QuestionId::Plants)]);
        assert!(back[0].open && !back[1].open);
    }

    #[test]
    fn three_open_questions_stand_beside_the_answer_and_the_size_comes_first() {
        let ids = [QuestionId::Plants, QuestionId::Texture, QuestionId::BagState, QuestionId::Area];
        let asked = merge(&[], &ids.map(ask));
        let of = |beside| parted(&asked, beside).iter().map(|a| a.question.id).collect::<Vec<_>>();
        assert_eq!(of(true), [QuestionId::Area, QuestionId::Plants, QuestionId::Texture]);
        assert_eq!(of(false), [QuestionId::BagState]);
    }
}
