//! What must be asked: each question with its control and what it would change.

use emberloam_engine::question::Question;
use leptos::prelude::*;

use crate::later::later;
use crate::living::{Look, flag, keyed, text, text_if};
use crate::soon::soon_after;
use crate::state::Page;
use crate::words;

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

/// The questions. One that was answered stays where it is, so that nothing
/// jumps away under the person's hands.
pub fn questions(page: Page) -> impl IntoView {
    let asked = soon_after(Box::new(move |before: &List| {
        let now = page.outcome.look(|o| o.as_ref().map(|o| o.questions.clone()));
        let of = (page.text.get(), page.chosen());
        // Another report or sample brings its own questions.
        let before = if before.of == of { &before.asked[..] } else { &[] };
        List { asked: merge(before, &now.unwrap_or_default()), of }
    }));
    let none = move || asked.look(|list| list.asked.is_empty());
    let open = move || asked.look(|list| list.asked.iter().filter(|asked| asked.open).count());
    view! {
        <div id="questions" class="questions" hidden=none>
            <h3>{words::QUESTIONS}</h3>
            <p class="soft">{text(move || words::questions_open(open()))}</p>
            <ul class="plain">
                {keyed(
                    move || asked.look(|list| list.asked.clone()),
                    |asked| key(&asked.question),
                    move |item| question(page, item),
                )}
            </ul>
        </div>
        {later(move |parts| (parts.bed)(page))}
    }
}

/// A question's name: which it is, and what it is about.
fn key(question: &Question) -> String {
    let about: Vec<_> = question.about.iter().map(|property| property.name()).collect();
    format!("{} {}", question.id as u8, about.join(" "))
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

fn question(page: Page, item: Memo<Asked>) -> impl IntoView {
    let Question { id, about, .. } = item.get_untracked().question;
    view! {
        <li class="question" class:answered=flag(move || !item.look(|q| q.open))>
            <p class="question-text">
                {text(move || item.look(|q| q.question.text.clone()))}
                <span class="answered-word">
                    {text_if(move || !item.look(|q| q.open), words::ANSWERED)}
                </span>
            </p>
            <p class="soft">{text(move || item.look(|q| q.question.changes.clone()))}</p>
            {move || {
                item.look(|q| q.question.suggestion.clone())
                    .map(|text| view! { <p class="soft">{text}</p> })
            }}
            <div class="controls">
                {later(move |parts| (parts.controls)(page, id, &about))}
            </div>
        </li>
    }
}

#[cfg(test)]
mod tests {
    use emberloam_engine::question::QuestionId;

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
}
