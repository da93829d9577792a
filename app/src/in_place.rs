//! Parts that change in place. An item of a list keeps its element, its focus
//! and its open parts while its content changes.
//!
//! Everything here is boxed on purpose: the framework would otherwise make a
//! copy of its machinery for every closure in the page, and the page would be
//! half as large again to load.

use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlDetailsElement, HtmlElement, MouseEvent};

/// A text that changes.
pub type Text = Box<dyn FnMut() -> String + Send>;
/// A yes or no that changes.
pub type Flag = Box<dyn FnMut() -> bool + Send>;

/// A text that changes.
pub fn text<S: Into<String>>(of: impl Fn() -> S + Send + 'static) -> Text {
    Box::new(move || of().into())
}

/// A text that is only there while something holds.
pub fn text_if(holds: impl Fn() -> bool + Send + 'static, words: &'static str) -> Text {
    text(move || if holds() { words } else { "" })
}

/// A yes or no that changes.
pub fn flag(of: impl Fn() -> bool + Send + 'static) -> Flag {
    Box::new(of)
}

/// What a press does.
pub fn press(does: impl Fn() + 'static) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(move |_| does())
}

/// What a change of a control does.
pub fn changed(does: impl Fn(Event) + 'static) -> Box<dyn FnMut(Event)> {
    Box::new(does)
}

/// What a fold does when it is opened or closed; it is told which.
pub fn unfolds(does: impl Fn(bool) + 'static) -> Box<dyn FnMut(Event)> {
    changed(move |event| {
        let fold = event.target().and_then(|t| t.dyn_into::<HtmlDetailsElement>().ok());
        does(fold.is_some_and(|fold| fold.open()));
    })
}

/// Moves the focus to an element as soon as the page is drawn anew.
pub fn focus(id: &'static str) {
    request_animation_frame(move || {
        let element = document().get_element_by_id(id);
        if let Some(element) = element.and_then(|e| e.dyn_into::<HtmlElement>().ok()) {
            // Ignored: without focus the element is still where it was.
            let _ = element.focus();
        }
    });
}

/// Looks at the value of a signal or a memo, and follows it. The framework's
/// own way to do this compiles anew for every closure.
pub trait Look<T> {
    /// Looks at the value and follows it.
    fn look<R>(&self, at: impl FnOnce(&T) -> R) -> R;
}

impl<T: Send + Sync + 'static> Look<T> for Memo<T> {
    fn look<R>(&self, at: impl FnOnce(&T) -> R) -> R {
        at(&held(self))
    }
}

impl<T: Send + Sync + 'static> Look<T> for RwSignal<T> {
    fn look<R>(&self, at: impl FnOnce(&T) -> R) -> R {
        at(&held(self))
    }
}

/// Holds the value while it is looked at; one piece of code for each type.
#[inline(never)]
fn held<S: Read>(signal: &S) -> S::Value {
    signal.read()
}

/// A list item for each line.
pub fn lines(of: impl Fn() -> Vec<String> + Send + 'static) -> impl IntoView {
    boxed_lines(Box::new(of))
}

fn boxed_lines(of: Box<dyn Fn() -> Vec<String> + Send>) -> impl IntoView {
    move || of().into_iter().map(|line| view! { <li>{line}</li> }).collect_view()
}

/// Shows each item of `list`. An item that stays the same keeps its element;
/// one that changes is drawn anew. For what is only read and opened.
pub fn settled<T, V>(
    list: impl Fn() -> Vec<T> + Send + Sync + 'static,
    show: impl Fn(T) -> V + Send + Sync + 'static,
) -> AnyView
where
    T: Clone + PartialEq + Send + Sync + 'static,
    V: IntoView + 'static,
{
    let numbered = Memo::new(move |before: Option<&Vec<(u32, T)>>| {
        number(before.map_or(&[][..], Vec::as_slice), list())
    });
    let keys = move || numbered.look(|all| all.iter().map(|(id, _)| id.to_string()).collect());
    let child = move |mine: String| {
        let find = |all: &Vec<(u32, T)>| {
            all.iter().find(|(id, _)| id.to_string() == mine).map(|(_, item)| item.clone())
        };
        numbered.with_untracked(find).map(&show).into_any()
    };
    boxed_keyed(Box::new(keys), Arc::new(child))
}

/// Gives every item the number it had before, or a new one.
fn number<T: PartialEq>(before: &[(u32, T)], now: Vec<T>) -> Vec<(u32, T)> {
    let mut free: Vec<&(u32, T)> = before.iter().collect();
    let mut next = before.iter().map(|(id, _)| id + 1).max().unwrap_or(0);
    let mut numbered = Vec::with_capacity(now.len());
    for item in now {
        let id = match free.iter().position(|(_, old)| *old == item) {
            Some(at) => free.swap_remove(at).0,
            None => {
                next += 1;
                next - 1
            }
        };
        numbered.push((id, item));
    }
    numbered
}

/// Shows each item of `list`; items with the same key are the same item and
/// change in place. For what holds controls.
pub fn keyed<T, V>(
    list: impl Fn() -> Vec<T> + Send + Sync + 'static,
    key: fn(&T) -> String,
    show: impl Fn(Memo<T>) -> V + Send + Sync + 'static,
) -> AnyView
where
    T: Clone + PartialEq + Send + Sync + 'static,
    V: IntoView + 'static,
{
    let list = Memo::new(move |_| list());
    let keys = move || list.look(|list| list.iter().map(key).collect());
    let child = move |mine: String| {
        let find = move |list: &Vec<T>| list.iter().find(|item| key(item) == mine).cloned();
        // A key comes from the list, so its item is there.
        let Some(first) = list.with_untracked(&find) else { return ().into_any() };
        let item = Memo::new(move |_| list.look(&find).unwrap_or_else(|| first.clone()));
        show(item).into_any()
    };
    boxed_keyed(Box::new(keys), Arc::new(child))
}

fn boxed_keyed(
    keys: Box<dyn Fn() -> Vec<String> + Send + Sync>,
    child: Arc<dyn Fn(String) -> AnyView + Send + Sync>,
) -> AnyView {
    view! { <For each=keys key=String::clone children=move |key| child(key) /> }.into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_item_that_stays_keeps_its_number_and_no_number_stands_twice() {
        let first = number(&[], vec!["a", "b", "b"]);
        assert_eq!(first, [(0, "a"), (1, "b"), (2, "b")]);
        let then = number(&first, vec!["b", "c", "a"]);
        assert_eq!(then, [(1, "b"), (3, "c"), (0, "a")]);
    }
}
