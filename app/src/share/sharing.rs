//! Sharing: the link and its size, its code, the system's own share sheet,
//! the plan as text, and the link for viewers.

use emberloam_engine::summary;
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{HtmlTextAreaElement, ShareData};

use crate::in_place::{Look, changed, flag, keyed, press, text, unfolds};
use crate::language::say_blocks;
use crate::paper::blocks;
use crate::report::files::{file_name, save};
use crate::share::answers::{self, Answer};
use crate::share::arrived::contents;
use crate::share::code::code;
use crate::share::link::{LONGEST_NOTE, Letter};
use crate::share::slide::slide;
use crate::state::Page;
use crate::store::is_a_file;
use crate::words;
use crate::words::keeping as said;

/// Beyond this many characters some apps cut a link. Common practice, no source.
const LONG: usize = 2_000;
/// Beyond this many most apps and some browsers do. Common practice, no source.
const VERY_LONG: usize = 8_000;

/// The link of a letter.
fn link(letter: &Letter) -> String {
    address_with(&letter.to_fragment())
}

/// The address of this page with a fragment.
pub fn address_with(fragment: &str) -> String {
    let location = window().location();
    let here = |part: Result<String, JsValue>| part.unwrap_or_default();
    let base = here(location.href());
    let base = base.split(['#', '?']).next().unwrap_or_default().to_string();
    format!("{base}#{fragment}")
}

/// What is on the page, as a letter.
fn letter(page: Page) -> Letter {
    let kept = page.kept();
    Letter { text: kept.text, answers: kept.answers, ..Letter::default() }
}

/// What is being shared.
#[derive(Clone, Copy)]
struct Sharing {
    page: Page,
    open: RwSignal<bool>,
    told: RwSignal<String>,
    note: RwSignal<String>,
    /// The answers that viewers may change.
    free: RwSignal<Vec<String>>,
    with_report: RwSignal<bool>,
}

impl Sharing {
    fn tell(self, what: &str) {
        self.page.said.set(what.into());
        self.told.set(what.into());
    }

    /// The letter for viewers.
    fn for_viewers(self) -> Letter {
        let mut letter = letter(self.page);
        let free = self.free.get();
        letter.fixed = answers::said(&letter.answers, self.page.measures())
            .into_iter()
            .filter(|answer| answer.can_be_fixed() && !free.contains(&answer.name))
            .map(|answer| answer.name)
            .collect();
        letter.note = self.note.get().trim().chars().take(LONGEST_NOTE).collect();
        if !self.with_report.get() {
            letter.text = String::new();
            letter.answers.sample = 0;
            letter.answers.reading.corrections.clear();
            letter.answers.reading.in_all_samples.clear();
            letter.answers.reading.named_lines.clear();
            letter.answers.beds.clear();
            letter.answers.trial = None;
        }
        letter
    }

    fn copy(self, what: String, copied: &'static str) {
        leptos::task::spawn_local(async move {
            let done = put_on_clipboard(&what).await;
            self.tell(if done { copied } else { said::NOT_COPIED });
        });
    }

    /// Hands the link to the system's own share sheet.
    fn share(self, link: String) {
        leptos::task::spawn_local(async move {
            let data = ShareData::new();
            data.set_title(words::NAME);
            data.set_url(&link);
            match JsFuture::from(window().navigator().share_with_data(&data)).await {
                Ok(_) => self.tell(said::SHARED),
                // Who closes the sheet knows that nothing was shared.
                Err(why) if is_abort(&why) => {}
                Err(_) => self.tell(said::NOT_SHARED),
            }
        });
    }

    /// The plan as plain text.
    fn plan(self) -> String {
        untrack(|| summary::text(&say_blocks(blocks(self.page))))
    }
}

fn is_abort(why: &JsValue) -> bool {
    why.dyn_ref::<web_sys::DomException>().is_some_and(|why| why.name() == "AbortError")
}

/// Puts a text on the clipboard; whether that was done.
pub async fn put_on_clipboard(text: &str) -> bool {
    match clipboard() {
        Some(clipboard) => JsFuture::from(clipboard.write_text(text)).await.is_ok(),
        None => false,
    }
}

/// The clipboard; none where the page is neither on https nor on this device.
fn clipboard() -> Option<web_sys::Clipboard> {
    let navigator = window().navigator();
    js_sys::Reflect::get(&navigator, &"clipboard".into()).ok()?.dyn_into().ok()
}

fn can_share() -> bool {
    js_sys::Reflect::has(&window().navigator(), &"share".into()).unwrap_or_default()
}

/// What to say of a link's length.
fn size(link: &str) -> String {
    let long = link.len();
    let advice = if long > VERY_LONG {
        said::LINK_VERY_LONG
    } else if long > LONG {
        said::LINK_LONG
    } else {
        ""
    };
    said::link_size(long, advice)
}

/// The fold with all ways to share.
pub fn sharing(page: Page) -> AnyView {
    let sharing = Sharing {
        page,
        open: RwSignal::new(false),
        told: RwSignal::new(String::new()),
        note: RwSignal::new(String::new()),
        free: RwSignal::new(Vec::new()),
        with_report: RwSignal::new(false),
    };
    let toggled = unfolds(move |open| sharing.open.set(open));
    let address =
        Memo::new(move |_| if sharing.open.get() { link(&letter(page)) } else { String::new() });
    view! {
        <details
            id="share"
            class="keep"
            hidden=flag(move || !page.has_report())
            on:toggle=toggled
        >
            <summary>
                <h2 class="report-title">{said::SHARE}</h2>
            </summary>
            {if is_a_file() {
                view! { <p id="share-file">{said::IS_A_FILE}</p> }.into_any()
            } else {
                view! {
                    <p>{said::SHARE_HOLDS}</p>
                    {link_box(sharing, "share-link", said::LINK, address)}
                }
                    .into_any()
            }}
            <p class="told" hidden=flag(move || sharing.told.look(String::is_empty))>
                <span id="share-told">{text(move || sharing.told.get())}</span>
            </p>
            {(!is_a_file()).then(|| drawn(address))}
            <h3>{said::AS_TEXT}</h3>
            <div class="buttons">
                <button
                    type="button"
                    id="copy-plan"
                    on:click=press(move || sharing.copy(sharing.plan(), said::PLAN_COPIED))
                >
                    {said::COPY_PLAN}
                </button>
                <button
                    type="button"
                    id="save-plan"
                    on:click=press(move || {
                        let name = file_name(&untrack(|| page.bed_name()), "txt");
                        save(&name, "text/plain", &sharing.plan());
                    })
                >
                    {said::SAVE_PLAN}
                </button>
            </div>
            <h3>{said::AS_PICTURE}</h3>
            <div class="buttons">
                <button type="button" id="save-picture" on:click=press(move || {
                    save_slide(page, "png");
                })>{said::SAVE_PICTURE}</button>
                <button type="button" id="save-drawing" on:click=press(move || {
                    save_slide(page, "svg");
                })>{said::SAVE_DRAWING}</button>
            </div>
            {(!is_a_file()).then(|| viewers(sharing))}
        </details>
    }
    .into_any()
}

/// The answer as a picture in a file.
fn save_slide(page: Page, ending: &str) {
    let Some(svg) = slide(page) else { return };
    let name = file_name(&untrack(|| page.bed_name()), ending);
    // The script draws a PNG from it.
    let kind = if ending == "png" { "image/png" } else { "image/svg+xml" };
    save(&name, kind, &svg);
}

/// A link, to be copied by button or by hand, and its size.
fn link_box(sharing: Sharing, id: &'static str, name: &'static str, link: Memo<String>) -> AnyView {
    view! {
        <label class="field">
            <span class="field-name">{name}</span>
            <textarea
                id=id
                class="link"
                readonly
                rows="3"
                prop:value=text(move || link.get())
                on:focus=move |event| {
                    event_target::<HtmlTextAreaElement>(&event).select();
                }
            ></textarea>
        </label>
        <p class="soft">{text(move || link.look(|link| size(link)))}</p>
        <div class="buttons">
            <button
                type="button"
                class="copy-link"
                on:click=press(move || sharing.copy(link.get_untracked(), said::LINK_COPIED))
            >
                {said::COPY_LINK}
            </button>
            <button
                type="button"
                class="share-link"
                hidden=!can_share()
                on:click=press(move || sharing.share(link.get_untracked()))
            >
                {said::SHARE_BY}
            </button>
        </div>
    }
    .into_any()
}

/// The code of a link, or why there is none.
fn drawn(link: Memo<String>) -> impl IntoView {
    move || {
        link.look(|link| {
            if link.is_empty() {
                return ().into_any();
            }
            match code(link) {
                Some(code) => view! {
                    <figure class="code">
                        <svg
                            role="img"
                            aria-label=said::CODE
                            viewBox=format!("0 0 {0} {0}", code.side)
                        >
                            <rect width="100%" height="100%" />
                            <path d=code.path />
                        </svg>
                        <figcaption>{said::CODE_HOW}</figcaption>
                    </figure>
                }
                .into_any(),
                None => view! { <p class="soft no-code">{said::CODE_TOO_LONG}</p> }.into_any(),
            }
        })
    }
}

/// The code for the printed plan.
pub fn paper_code(page: Page) -> AnyView {
    let link = Memo::new(move |_| untrack(|| link(&letter(page))));
    view! { <div id="paper-code">{drawn(link)}</div> }.into_any()
}

fn viewers(sharing: Sharing) -> impl IntoView {
    let page = sharing.page;
    let open = RwSignal::new(false);
    let letter = Memo::new(move |_| {
        if sharing.open.get() && open.get() { sharing.for_viewers() } else { Letter::default() }
    });
    let address = Memo::new(move |_| letter.look(link));
    let given = Memo::new(move |_| {
        if !open.get() {
            return Vec::new();
        }
        let mut given = page.answers.look(|case| answers::said(case, page.measures()));
        given.retain(Answer::can_be_fixed);
        given
    });
    let left = move || LONGEST_NOTE.saturating_sub(sharing.note.look(|n| n.chars().count()));
    view! {
        <details
            id="viewers"
            class="fold"
            on:toggle=unfolds(move |now| open.set(now))
        >
            <summary>{said::VIEWERS}</summary>
            <p>{said::VIEWERS_INTRO}</p>
            <label class="field">
                <span class="field-name">{said::NOTE}</span>
                <textarea
                    id="viewers-note"
                    rows="4"
                    maxlength=LONGEST_NOTE.to_string()
                    on:input=changed(move |event| sharing.note.set(event_target_value(&event)))
                ></textarea>
            </label>
            <p class="soft">{text(move || said::characters_left(left()))}</p>
            <fieldset id="viewers-fixed" class="several">
                <legend class="field-name">{said::FIXED}</legend>
                <p class="soft" hidden=flag(move || !given.look(Vec::is_empty))>{said::NOTHING_TO_FIX}</p>
                {keyed(move || given.get(), |answer: &Answer| answer.name.clone(), move |answer| fix(sharing, answer))}
            </fieldset>
            <label class="tick">
                <input
                    id="viewers-report"
                    type="checkbox"
                    prop:checked=flag(move || sharing.with_report.get())
                    on:change=changed(move |event| sharing.with_report.set(event_target_checked(&event)))
                />
                <span>{said::WITH_REPORT}</span>
            </label>
            {link_box(sharing, "viewers-link", said::VIEWERS_LINK, address)}
            <h3>{said::PREVIEW}</h3>
            <div id="preview" class="letter">
                {move || letter.look(|letter| contents(letter, page.measures()))}
            </div>
        </details>
    }
}

fn fix(sharing: Sharing, answer: Memo<Answer>) -> impl IntoView {
    let name = move || answer.look(|answer| answer.name.clone());
    let fixed = move || sharing.free.look(|free| !free.contains(&name()));
    view! {
        <label class="tick">
            <input
                type="checkbox"
                prop:checked=flag(fixed)
                on:change=changed(move |event| {
                    let (fix, name) = (event_target_checked(&event), untrack(name));
                    sharing.free.update(|free| {
                        free.retain(|other| *other != name);
                        if !fix {
                            free.push(name);
                        }
                    });
                })
            />
            <span>{text(move || answer.look(|a| said::answered(&a.label, &a.value)))}</span>
        </label>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_says_its_size_and_when_it_is_too_long() {
        assert_eq!(size(&"a".repeat(300)), said::link_size(300, ""));
        assert!(size(&"a".repeat(2_001)).ends_with(said::LINK_LONG));
        assert!(size(&"a".repeat(8_001)).ends_with(said::LINK_VERY_LONG));
    }
}
