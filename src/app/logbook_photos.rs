//! Photos of the logbook's runs: kept beside the runs, read for the one that is open.

use super::browser::chance;
use super::browser::records::{Change, Store};
use super::logbook::Log;
use super::state::Undo;
use leptos::prelude::*;
use recalesce::save::logbook::{Id, Photo, Step};
use recalesce_texts::page as texts;
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
            self.note_edit();
            let mut photos = BTreeMap::new();
            photos.insert(id.clone(), photo);
            self.keep_photos(photos);
            run.photos.push(id);
            self.put(vec![run]);
            self.note_edit();
        }
    }

    /// Takes a photo off the open run; undoing puts it back.
    pub(crate) fn remove_photo(self, id: Id) {
        let Some(before) = untrack(|| self.opened()) else {
            return;
        };
        self.note_edit();
        let mut run = before.clone();
        run.photos.retain(|other| *other != id);
        let mut photo = self.photos.get_untracked();
        photo.retain(|other, _| *other == id);
        self.put(vec![run.clone()]);
        self.opened_as.set_value(Some(run.clone()));
        let of = run.id.clone();
        self.record(Step {
            before: vec![before],
            after: vec![run],
        });
        self.steps
            .update_value(|steps| steps.keep_photos(photo.clone()));
        let is_shown = self
            .book
            .with_untracked(|book| book.runs().any(|run| run.photos.contains(&id)));
        if !is_shown {
            self.store(vec![Change {
                store: Store::Photos,
                key: id.to_string(),
                text: None,
            }]);
        }
        let undo: Undo = Arc::new(move || self.put_photo_back(&of, &id, photo.clone()));
        self.say(texts::logbook::PHOTO_GONE, false, Some(undo));
    }

    /// Puts a photo back onto a run, whatever else has been written there since.
    fn put_photo_back(self, of: &Id, id: &Id, photo: BTreeMap<Id, Photo>) {
        self.note_edit();
        let found = self.book.with_untracked(|book| book.get(of).cloned());
        let Some(before) = found.filter(|run| !run.photos.contains(id)) else {
            return;
        };
        let mut after = before.clone();
        after.photos.push(id.clone());
        self.keep_photos(photo);
        self.put(vec![after.clone()]);
        if self
            .opened_as
            .with_value(|run| run.as_ref().is_some_and(|run| run.id == *of))
        {
            self.opened_as.set_value(Some(after.clone()));
        }
        self.record(Step {
            before: vec![before],
            after: vec![after],
        });
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
