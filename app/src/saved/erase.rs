//! Everything that this copy of the program has left in the browser, erased: what every tab keeps,
//! the databases, the copies for offline use, what was shared to the page.

use js_sys::{Array, Promise};
use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, future_to_promise};
use web_sys::{ServiceWorkerRegistration, Storage};

use crate::saved::database::{self, Place};
use crate::store::{home, named, session, storage};
use crate::words::keeping as said;

/// How long one thing may take, ms: another tab may hold it.
const PATIENCE: i32 = 4_000;

/// Erases all there is; says what could not be.
pub async fn everything() -> Vec<&'static str> {
    database::tell_erased();
    let mut left = Vec::new();
    let mut note = |done: bool, what| {
        if !done {
            left.push(what);
        }
    };
    note(empty(storage()) & empty(session()), said::LEFT_STORAGE);
    for place in [Place::Shelf, Place::Earlier] {
        let gone = future_to_promise(async move {
            let gone = database::erase(place).await;
            // A browser without a database has none to erase.
            match gone {
                Ok(()) | Err(database::Shut::None) => Ok(JsValue::TRUE),
                Err(_) => Ok(JsValue::FALSE),
            }
        });
        note(in_time(gone).await, said::LEFT_DATABASE);
    }
    note(in_time(future_to_promise(copies())).await, said::LEFT_COPIES);
    left.dedup();
    left
}

/// Removes what is ours from a storage of the browser; whether nothing is left.
fn empty(storage: Option<Storage>) -> bool {
    let Some(storage) = storage else { return true };
    let count = storage.length().unwrap_or_default();
    let keys: Vec<String> = (0..count).filter_map(|at| storage.key(at).ok().flatten()).collect();
    let mut ours = keys.iter().filter(|key| key.starts_with(&named("")));
    ours.all(|key| storage.remove_item(key).is_ok())
}

/// Whether something came to a yes in time.
async fn in_time(asked: Promise) -> bool {
    let late = Promise::new(&mut |done, _| {
        // Ignored: without a clock the answer is waited for.
        let _ = window().set_timeout_with_callback_and_timeout_and_arguments_0(&done, PATIENCE);
    });
    let first = JsFuture::from(Promise::race(&Array::of2(&asked, &late))).await;
    first.is_ok_and(|first| first.is_truthy())
}

/// Removes the copies of the page with what looks after them, and what was shared and not taken.
async fn copies() -> Result<JsValue, JsValue> {
    // A page without https has none.
    let Ok(caches) = window().caches() else { return Ok(JsValue::TRUE) };
    if !js_sys::Reflect::get(&window(), &"caches".into())?.is_object() {
        return Ok(JsValue::TRUE);
    }
    let workers = js_sys::Reflect::get(&window().navigator(), &"serviceWorker".into())?;
    if workers.is_object() {
        let workers = window().navigator().service_worker();
        let found = JsFuture::from(workers.get_registration()).await?;
        if let Ok(found) = found.dyn_into::<ServiceWorkerRegistration>()
            && found.scope().ends_with(&folder())
        {
            JsFuture::from(found.unregister()?).await?;
        }
    }
    for name in Array::from(&JsFuture::from(caches.keys()).await?).iter() {
        let name = name.as_string().unwrap_or_default();
        if is_ours(&name, &home()) {
            JsFuture::from(caches.delete(&name)).await?;
        }
    }
    Ok(JsValue::TRUE)
}

/// Where this copy of the program lies on its site.
fn folder() -> String {
    let home = home();
    if home.is_empty() { "/".into() } else { home }
}

/// Whether a store of files belongs to the copy of the program in a folder, as
/// `public/service-worker.js` names them.
fn is_ours(name: &str, home: &str) -> bool {
    let version = name.strip_prefix("emberloam").and_then(|rest| rest.strip_prefix(home));
    let version = version.and_then(|rest| rest.strip_prefix('-')).unwrap_or_default();
    let is_version = version.len() == 16 && version.bytes().all(|b| b.is_ascii_hexdigit());
    is_version || name == format!("shared-with-emberloam{home}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_stores_of_this_copy_are_ours() {
        let version = "0123456789abcdef";
        assert!(is_ours(&format!("emberloam-{version}"), ""));
        assert!(is_ours(&format!("emberloam/a/-{version}"), "/a/"));
        assert!(is_ours("shared-with-emberloam", ""));
        assert!(is_ours("shared-with-emberloam/a/", "/a/"));
        for (name, home) in [
            ("emberloam/a/-0123456789abcdef", ""),
            ("emberloam-0123456789abcdef", "/a/"),
            ("emberloam/a/-b/-0123456789abcdef", "/a/"),
            ("shared-with-emberloam/a/", ""),
            ("emberloam-pictures", ""),
            ("other-0123456789abcdef", ""),
        ] {
            assert!(!is_ours(name, home), "{name} in {home}");
        }
    }
}
