//! Lists that change in place: an item keeps its element, its focus and its
//! open parts while its content changes.

use std::hash::Hash;

use leptos::prelude::*;

/// Shows each item of `list`; items with the same key are the same item.
pub fn keyed<T, K, V>(
    list: impl Fn() -> Vec<T> + Send + Sync + 'static,
    key: fn(&T) -> K,
    show: impl Fn(Memo<T>) -> V + Clone + Send + 'static,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
    K: Eq + Hash + Clone + Send + Sync + 'static,
    V: IntoView + 'static,
{
    let list = Memo::new(move |_| list());
    let child = move |first: T| {
        let mine = key(&first);
        let item = Memo::new(move |_| {
            list.with(|list| list.iter().find(|item| key(item) == mine).cloned())
                .unwrap_or_else(|| first.clone())
        });
        show(item)
    };
    view! { <For each=move || list.get() key=key children=child /> }
}
