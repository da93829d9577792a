//! Whether a gardener can read it: the school grade of what the page says and
//! of what the engine answers.

use std::fs;

use emberloam_engine::details::{sensitivity, traits, winter_loss, work_in::work_in};
use emberloam_engine::{Case, interpret, report};
use emberloam_tests::project;
use emberloam_tests::prose::{Prose, literals};

use crate::{surveyed, viewed};

/// The grade the words may need at most.
const MOST: f64 = 8.0;

/// Vowels in a row make a syllable; a silent e at the end makes none.
fn syllables(word: &str) -> usize {
    let word = word.to_lowercase();
    let mut count = 0;
    let mut before = false;
    for sign in word.chars() {
        let vowel = "aeiouy".contains(sign);
        count += usize::from(vowel && !before);
        before = vowel;
    }
    let silent = word.ends_with('e') && !word.ends_with("le") && !word.ends_with("ee");
    let silent = silent || word.ends_with("ed") && !word.ends_with("ted") && !word.ends_with("ded");
    if silent && count > 1 { count - 1 } else { count.max(1) }
}

/// Words in a sentence and syllables in a word, as a school grade.
///
/// Source: Kincaid, Fishburne, Rogers and Chissom 1975, 0.39 × words in a
/// sentence + 11.8 × syllables in a word − 15.59 (from memory).
fn grade<'a>(texts: impl IntoIterator<Item = &'a str>) -> (f64, usize) {
    let Prose { sentences, words, syllables } = Prose::of(texts, &['\'', '’'], syllables);
    (0.39 * words / sentences + 11.8 * syllables / words - 15.59, words as usize)
}

/// Source: the formula worked by hand: 6 words, 1 sentence, 6 syllables (derived).
#[test]
fn the_grade_is_worked_as_the_formula_says() {
    let (found, words) = grade(["The cat sat on the mat."]);
    assert_eq!(words, 6);
    assert!((found - (0.39 * 6.0 + 11.8 - 15.59)).abs() < 1e-9, "{found}");
    assert_eq!(["soil", "biochar", "nitrogen", "plate", "used"].map(syllables), [1, 2, 3, 1, 1]);
}

/// The texts in a source file of the page: every literal of five words or more.
fn texts_of(file: &str) -> Vec<String> {
    let source = fs::read_to_string(project().join(file)).expect("the page's words can be read");
    let mut texts = literals(&source);
    texts.retain(|text| text.split_whitespace().count() >= 5);
    texts
}

#[test]
fn what_the_page_says_is_read_by_an_eighth_grader() {
    for file in ["app/src/words.rs", "app/src/words/keeping.rs", "app/src/help.rs"] {
        let texts = texts_of(file);
        let (found, words) = grade(texts.iter().map(String::as_str));
        println!("{file}: grade {found:.1} over {words} words");
        assert!(words > 400, "{file}: only {words} words found");
        assert!(found <= MOST, "{file}: grade {found:.1}");
    }
}

#[test]
fn what_the_engine_answers_is_read_by_an_eighth_grader() {
    let mut texts: Vec<String> = Vec::new();
    for sample in ["surplus.txt", "hungry-sand.csv", "metric-transposed.tsv", "broken.txt"] {
        let path = project().join("public/samples").join(sample);
        let text = fs::read(&path).expect("the sample can be read");
        let report = report::read(&report::open(&text).expect(sample)).expect(sample);
        let case = Case { report, ..Case::default() };
        let outcome = interpret(&case);
        let plan = outcome.plan;
        texts.push(plan.headline);
        texts.extend(plan.reasons.into_iter().map(|reason| reason.text));
        texts.extend(plan.would_change);
        texts.extend(plan.capped_by);
        texts.extend(plan.jobs.into_iter().flat_map(|task| [task.task, task.reason]));
        texts.extend(plan.cautions.into_iter().map(|caution| caution.text));
        if let Some(charge) = plan.charge {
            texts.extend(charge.steps);
            texts.extend(charge.shares.into_iter().map(|share| share.text));
        }
        texts.extend(outcome.questions.into_iter().flat_map(|q| [q.text, q.changes]));
        for need in plan.needs {
            texts.push(need.answer);
            texts.extend(need.steps.into_iter().chain(need.cautions));
        }
        texts.extend(traits(&surveyed(&case)).sayings.into_iter().map(|saying| saying.text));
        texts.extend(sensitivity(&case).map(|found| found.text));
        if let Some(work) = viewed(&case, work_in) {
            texts.extend(work.steps.into_iter().map(|step| step.text));
        }
        if let Some(loss) = viewed(&case, winter_loss) {
            texts.push(loss.text);
        }
    }
    texts.sort();
    texts.dedup();
    let (found, words) = grade(texts.iter().map(String::as_str));
    println!("the engine: grade {found:.1} over {words} words");
    assert!(words > 1500, "only {words} words found");
    assert!(found <= MOST, "grade {found:.1}");
    // No single one needs more than five grades more: a nutrient has a long name.
    let hard: Vec<(f64, &String)> = texts
        .iter()
        .map(|text| (grade([text.as_str()]), text))
        .filter(|((found, words), _)| *words >= 12 && *found > MOST + 5.0)
        .map(|((found, _), text)| (found, text))
        .collect();
    assert!(hard.is_empty(), "{hard:#?}");
}

/// The catalogue of a language holds every sentence that the program says.
#[test]
fn all_that_is_said_is_read_by_an_eighth_grader() {
    let po = project().join("public/words/es.po");
    let po = fs::read_to_string(po).expect("the catalogue can be read");
    let all = emberloam_language::entries(&po).expect("a sound catalogue");
    let texts = all.iter().map(|entry| entry.english.as_str());
    let (found, words) = grade(texts.filter(|text| text.split_whitespace().count() >= 5));
    println!("all that is said: grade {found:.1} over {words} words");
    assert!(words > 10_000, "only {words} words found");
    assert!(found <= MOST, "grade {found:.1}");
}
