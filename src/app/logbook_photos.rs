//! Photos of the logbook's runs: kept beside the runs, read for the one that is open.

use super::browser::chance;
use super::browser::records::{Change, Store};
use super::logbook::Log;
use super::state::Undo;
use leptos::prelude::*;
use recalesce::save::logbook::{Id, Photo, Run};
use std::collections::BTreeMap;
use std::sync::Arc;

impl Log {
    /// The photos of some identities, as far as they are there.
    pub(crate) async fn photos_of(self, ids: &[Id]) -> BTreeMap<Id, Photo> {
        let mut found = self.photos.get_untracked();
        found.retain(|id, _| ids.contains(id));
        if let Some(records) = self.records() {
            for id in ids {
                let text = records.text(Store::Photos, id.as_str()).await;
                if let Some(Ok(photo)) = text.map(Photo::try_from) {
                    found.insert(id.clone(), photo);
                }
            }
        }
        found
    }

    /// Keeps photos, in the store and for the open run.
    pub(crate) fn keep_photos(self, photos: BTreeMap<Id, Photo>) {
        self.store(photos.iter().map(stored_photo).collect());
        self.photos.update(|all| all.extend(photos));
    }

    /// Adds a photo to the open run.
    pub(crate) fn add_photo(self, photo: Photo) {
        if let (Ok(id), Some(mut run)) = (Id::try_from(chance::digits()), untrack(|| self.opened()))
        {
            let mut photos = BTreeMap::new();
            photos.insert(id.clone(), photo);
            self.keep_photos(photos);
            run.photos.push(id);
            self.put(vec![run]);
        }
    }

    /// Takes a photo off the open run; undoing puts it back.
    pub(crate) fn remove_photo(self, id: Id) {
        let Some(before) = untrack(|| self.opened()) else {
            return;
        };
        let mut run = before.clone();
        run.photos.retain(|other| *other != id);
        self.put(vec![run]);
        let mut photo = self.photos.get_untracked();
        photo.retain(|other, _| *other == id);
        self.store(vec![Change {
            store: Store::Photos,
            key: id.to_string(),
            text: None,
        }]);
        let undo: Undo = Arc::new(move || {
            let run = self
                .book
                .with_untracked(|book| book.get(&before.id).cloned());
            if let Some(run) = run {
                self.keep_photos(photo.clone());
                let photos = run.photos.iter().chain([&id]).cloned().collect();
                self.put(vec![Run { photos, ..run }]);
            }
        });
        self.say("The photo is gone.", false, Some(undo));
    }
}

/// A photo as it is stored.
pub(super) fn stored_photo((id, photo): (&Id, &Photo)) -> Change {
    Change {
        store: Store::Photos,
        key: id.to_string(),
        text: Some(photo.clone().into()),
    }
}
