//! The language of the page. The views write English; `public/language.js`
//! asks here for each text that comes to stand in the page. What leaves the page
//! another way, in a chart or a file, goes through [`say`].

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use emberloam_engine::plan::Job;
use emberloam_engine::summary::Block;
use emberloam_language::Catalogue;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;

use crate::words;

/// Says a text. How it does so comes with the later piece: it is heavy, and English needs none.
type Say = dyn Fn(&str) -> String;

thread_local! {
    /// The language; none while the page speaks English.
    static SAID: RefCell<Option<Rc<Say>>> = const { RefCell::new(None) };
    static IS_TAUGHT: Cell<bool> = const { Cell::new(false) };
}

/// Where `language.js` lays the catalogue.
const WORDS: &str = "emberloamWords";

/// Whether the reader's language is another than English.
pub fn is_foreign() -> bool {
    laid_out().is_some()
}

fn laid_out() -> Option<JsValue> {
    let words = js_sys::Reflect::get(&window(), &WORDS.into()).ok()?;
    (!words.is_undefined()).then_some(words)
}

/// Gives `language.js` what it asks the page with, once.
pub fn learn() {
    if IS_TAUGHT.replace(true) {
        return;
    }
    let learn = Closure::<dyn Fn() -> String>::new(|| read().err().unwrap_or_default());
    let say = Closure::<dyn Fn(String) -> String>::new(|text: String| say(&text));
    for (name, function) in
        [("emberloamLearn", learn.into_js_value()), ("emberloamSay", say.into_js_value())]
    {
        // Ignored: a window takes every property.
        let _ = js_sys::Reflect::set(&window(), &name.into(), &function);
    }
    crate::report::files::tell("emberloam:speaks", "");
}

/// Reads the catalogue that `language.js` has laid out; without one, English.
fn read() -> Result<(), String> {
    let read = match laid_out() {
        None => None,
        Some(words) => {
            let part = |name: &str| js_sys::Reflect::get(&words, &name.into()).ok()?.as_string();
            let mark = part("mark").and_then(|mark| mark.chars().next()).unwrap_or('.');
            let read = Catalogue::read(&part("po").unwrap_or_default(), mark);
            let catalogue = read.map_err(|damage| damage.to_string())?;
            Some(Rc::new(move |text: &str| catalogue.say(text).text) as Rc<Say>)
        }
    };
    SAID.set(read);
    Ok(())
}

/// The text in the language of the page.
pub fn say(text: &str) -> String {
    // Not held while it works: what stops half way must not keep it for ever.
    match SAID.with_borrow(Clone::clone) {
        Some(said) => said(text),
        None => text.into(),
    }
}

/// A name, in the language of the page where the page gave it.
pub fn own_or_said(name: &str) -> String {
    if words::translate(name) == "yes" { say(name) } else { name.into() }
}

/// The jobs in the language of the page.
pub fn say_jobs(mut jobs: Vec<Job>) -> Vec<Job> {
    for job in &mut jobs {
        job.task = say(&job.task);
        job.reason = say(&job.reason);
    }
    jobs
}

/// The plan in the language of the page.
pub fn say_blocks(mut blocks: Vec<Block>) -> Vec<Block> {
    for block in &mut blocks {
        match block {
            Block::Title(text) | Block::Heading(text) | Block::Paragraph(text) => *text = say(text),
            // Publications keep their titles.
            Block::Sources(_) => {}
            Block::List(lines) => {
                for line in lines {
                    line.head = say(&line.head);
                    line.text = say(&line.text);
                }
            }
        }
    }
    blocks
}
