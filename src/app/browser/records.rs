//! The browser's database under the project's own name: texts by key, in two stores. It may be
//! absent, denied or full: every call says so instead of failing.

use idb::{
    Database, DatabaseEvent, Factory, ObjectStore, ObjectStoreParams, Query, Transaction,
    TransactionMode,
};
use js_sys::Reflect;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

const NAME: &str = "recalesce.logbook";

/// One of the two stores.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Store {
    /// Runs, each as a file of one.
    Runs,
    /// Photos in base64.
    Photos,
}

impl Store {
    const ALL: [Self; 2] = [Self::Runs, Self::Photos];

    const fn name(self) -> &'static str {
        match self {
            Self::Runs => "runs",
            Self::Photos => "photos",
        }
    }
}

/// A text to be put under a key, or none to take away what is there.
pub(crate) struct Change {
    pub(crate) store: Store,
    pub(crate) key: String,
    pub(crate) text: Option<String>,
}

/// The open database.
pub(crate) struct Records(Database);

impl Records {
    /// Opens it; none where the browser has none or denies it.
    pub(crate) async fn open() -> Option<Self> {
        let mut request = Factory::new().ok()?.open(NAME, Some(1)).ok()?;
        request.on_upgrade_needed(|event| {
            if let Ok(database) = event.database() {
                for store in Store::ALL {
                    // One that could not be made is missed by the first transaction, which says so.
                    let _ = database.create_object_store(store.name(), ObjectStoreParams::new());
                }
            }
        });
        request.await.ok().map(Self)
    }

    /// Every text of a store, with its key; none when it cannot be read.
    pub(crate) async fn all(&self, store: Store) -> Option<Vec<(String, String)>> {
        let stored = self.reading(store)?;
        let keys = stored.get_all_keys(None, None).ok()?;
        let texts = stored.get_all(None, None).ok()?;
        let (keys, texts) = (keys.await.ok()?, texts.await.ok()?);
        let pairs = keys.iter().zip(&texts);
        Some(
            pairs
                .filter_map(|(key, text)| Some((key.as_string()?, text.as_string()?)))
                .collect(),
        )
    }

    /// The text under a key of a store.
    pub(crate) async fn text(&self, store: Store, key: &str) -> Option<String> {
        let asked = self
            .reading(store)?
            .get(Query::Key(JsValue::from(key)))
            .ok()?;
        asked.await.ok()??.as_string()
    }

    fn reading(&self, store: Store) -> Option<ObjectStore> {
        let mode = TransactionMode::ReadOnly;
        let transaction = self.0.transaction(&[store.name()], mode).ok()?;
        transaction.object_store(store.name()).ok()
    }

    /// Makes all of the changes, or none where that fails, mostly because the store is full; says
    /// whether they are made.
    pub(crate) async fn change(&self, changes: &[Change]) -> bool {
        let Some(writing) = self.ask(changes) else {
            return false;
        };
        writing.await.is_ok_and(|end| end.is_committed())
    }

    fn ask(&self, changes: &[Change]) -> Option<Transaction> {
        let names = Store::ALL.map(Store::name);
        let mode = TransactionMode::ReadWrite;
        let writing = self.0.transaction(&names, mode).ok()?;
        for Change { store, key, text } in changes {
            let stored = writing.object_store(store.name()).ok()?;
            let key = JsValue::from(key.as_str());
            match text {
                Some(text) => drop(stored.put(&JsValue::from(text.as_str()), Some(&key)).ok()?),
                None => drop(stored.delete(Query::Key(key)).ok()?),
            }
        }
        Some(writing)
    }
}

/// The part of what the browser lets the page keep that is in use; none where it does not tell.
pub(crate) async fn part_in_use() -> Option<f64> {
    let storage = web_sys::window()?.navigator().storage();
    let told = JsFuture::from(storage.estimate().ok()?).await.ok()?;
    let number = |name: &str| Reflect::get(&told, &name.into()).ok()?.as_f64();
    let (used, most) = (number("usage")?, number("quota")?);
    (most > 0.0).then_some(used / most)
}
