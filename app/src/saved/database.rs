//! Where the shelf and the earlier states stand: databases of the browser. Every change is one
//! transaction, so that after a crash it was made whole or not at all.
//!
//! It is opened for each thing that is done and closed again: a page that
//! holds it open would keep a newer version, or an erasing, waiting.

use gloo::events::EventListener;
use idb::{Database, DatabaseEvent as _, Error, Factory, ObjectStore, ObjectStoreParams};
use idb::{Transaction, TransactionMode};
use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{BroadcastChannel, DomException, IdbTransaction, MessageEvent};

use crate::saved::backup::Shelved;
use crate::store::{home, named};
use crate::words;

/// The version of a database: of its store, not of what lies in it.
const VERSION: u32 = 1;

/// What has a database of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The saved reports.
    Shelf,
    /// The earlier states of each tab.
    Earlier,
}

impl Place {
    fn database(self) -> String {
        let home = home();
        match self {
            Place::Shelf => format!("emberloam{home}"),
            Place::Earlier => format!("emberloam{home}-earlier"),
        }
    }

    fn store(self) -> &'static str {
        match self {
            Place::Shelf => "shelf",
            Place::Earlier => "earlier",
        }
    }
}

/// Why the shelf can't be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shut {
    /// This browser, or this window, has no database.
    None,
    /// A newer program has made it.
    Newer,
    /// There is no room left.
    Full,
    /// The browser refused for a reason of its own.
    Failed,
}

impl Shut {
    /// What to tell the reader.
    pub fn words(self) -> &'static str {
        match self {
            Shut::None => words::keeping::SHELF_NONE,
            Shut::Newer => words::keeping::SHELF_NEWER,
            Shut::Full => words::keeping::SHELF_FULL,
            Shut::Failed => words::keeping::SHELF_FAILED,
        }
    }

    fn by_name(name: &str) -> Shut {
        match name {
            "QuotaExceededError" => Shut::Full,
            "VersionError" => Shut::Newer,
            "SecurityError" | "InvalidStateError" => Shut::None,
            _ => Shut::Failed,
        }
    }
}

impl From<Error> for Shut {
    fn from(error: Error) -> Shut {
        match error {
            Error::IndexedDbNotFound(_) => Shut::None,
            Error::DomException(why) => Shut::by_name(&why.name()),
            Error::IndexedDbOpenFailed(why) | Error::UpdateFailed(why) => {
                why.dyn_ref::<DomException>().map_or(Shut::Failed, |why| Shut::by_name(&why.name()))
            }
            _ => Shut::Failed,
        }
    }
}

/// What a change does to one id.
pub enum Change {
    /// Puts this there.
    Put(Shelved),
    /// Takes away what is there.
    Remove(String),
}

async fn open(place: Place) -> Result<Database, Shut> {
    let mut request = Factory::new()?.open(&place.database(), Some(VERSION))?;
    request.on_upgrade_needed(move |event| {
        // Ignored: without its store the first use fails and says so.
        if let Ok(database) = event.database() {
            let _ = database.create_object_store(place.store(), ObjectStoreParams::new());
        }
    });
    Ok(request.await?)
}

fn begin(
    place: Place,
    database: &Database,
    mode: TransactionMode,
) -> Result<(Transaction, ObjectStore), Shut> {
    let transaction = database.transaction(&[place.store()], mode)?;
    let store = transaction.object_store(place.store())?;
    Ok((transaction, store))
}

/// Waits until a transaction is done. By the browser's own object: the
/// library's future ends at the first failed request, before the browser says
/// why it gave up the whole.
async fn done(transaction: Transaction) -> Result<(), Shut> {
    let own: IdbTransaction = transaction.into();
    let ended = Promise::new(&mut |completed, aborted| {
        own.set_oncomplete(Some(&completed));
        own.set_onabort(Some(&aborted));
    });
    match JsFuture::from(ended).await {
        Ok(_) => Ok(()),
        Err(_) => Err(own.error().map_or(Shut::Failed, |why| Shut::by_name(&why.name()))),
    }
}

async fn read(store: &ObjectStore) -> Result<Vec<Shelved>, Shut> {
    let keys = store.get_all_keys(None, None)?.await?;
    let values = store.get_all(None, None)?.await?;
    let text = |value: &JsValue| value.as_string().unwrap_or_default();
    Ok(keys.iter().map(text).zip(values.iter().map(text)).collect())
}

/// All that lies there.
pub async fn all(place: Place) -> Result<Vec<Shelved>, Shut> {
    let database = open(place).await?;
    let found = match begin(place, &database, TransactionMode::ReadOnly) {
        Ok((_transaction, store)) => read(&store).await,
        Err(why) => Err(why),
    };
    database.close();
    found
}

/// Looks at all that lies there and changes it, in one transaction: no other tab can
/// come between.
pub async fn change<T>(
    place: Place,
    decide: impl FnOnce(&[Shelved]) -> (Vec<Change>, T),
) -> Result<T, Shut> {
    let database = open(place).await?;
    let decided = change_in(place, &database, decide).await;
    database.close();
    if decided.is_ok() && place == Place::Shelf {
        tell(CHANGED);
    }
    decided
}

async fn change_in<T>(
    place: Place,
    database: &Database,
    decide: impl FnOnce(&[Shelved]) -> (Vec<Change>, T),
) -> Result<T, Shut> {
    let (transaction, store) = begin(place, database, TransactionMode::ReadWrite)?;
    let (changes, decided) = decide(&read(&store).await?);
    make(transaction, &store, changes).await?;
    Ok(decided)
}

/// Makes changes without a look at what lies there.
pub async fn write(place: Place, changes: Vec<Change>) -> Result<(), Shut> {
    let database = open(place).await?;
    let made = match begin(place, &database, TransactionMode::ReadWrite) {
        Ok((transaction, store)) => make(transaction, &store, changes).await,
        Err(why) => Err(why),
    };
    database.close();
    made
}

async fn make(
    transaction: Transaction,
    store: &ObjectStore,
    changes: Vec<Change>,
) -> Result<(), Shut> {
    // Not waited for one by one: the transaction fails when one of them does.
    let asked = changes.into_iter().try_for_each(|change| match change {
        Change::Put((id, json)) => {
            store.put(&JsValue::from_str(&json), Some(&JsValue::from_str(&id))).map(drop)
        }
        Change::Remove(id) => store.delete(JsValue::from_str(&id)).map(drop),
    });
    if let Err(why) = asked {
        // All or nothing: what was asked before this must not stay.
        let _ = transaction.abort();
        return Err(why.into());
    }
    done(transaction).await
}

/// Removes a database with all that lies in it, also one that can't be opened.
pub async fn erase(place: Place) -> Result<(), Shut> {
    Factory::new()?.delete(&place.database())?.await?;
    Ok(())
}

/// What the tabs tell each other: that the shelf has changed, or that everything was erased.
const CHANGED: &str = "changed";
const ERASED: &str = "erased";

thread_local! {
    /// One channel for telling and hearing: it doesn't hear itself.
    static TABS: Option<BroadcastChannel> = BroadcastChannel::new(&named("tabs")).ok();
}

fn tell(what: &str) {
    TABS.with(|tabs| {
        if let Some(tabs) = tabs {
            // Ignored: a tab that isn't told finds out when it saves.
            let _ = tabs.post_message(&JsValue::from_str(what));
        }
    });
}

/// Tells the other tabs that everything was erased.
pub fn tell_erased() {
    tell(ERASED);
}

/// Hears when another tab has changed the shelf, or erased everything.
pub fn hear(changed: impl Fn() + 'static, erased: impl Fn() + 'static) {
    TABS.with(|tabs| {
        if let Some(tabs) = tabs {
            EventListener::new(tabs, "message", move |event| {
                let said = event.dyn_ref::<MessageEvent>().and_then(|said| said.data().as_string());
                if said.as_deref() == Some(ERASED) { erased() } else { changed() }
            })
            .forget();
        }
    });
}
