//! A logbook as a file, and a run as it is kept by itself: the envelope of all files of this
//! project with `kind` "logbook", `runs`, and the photos where they come along.

use super::{Id, Logbook, Photo, Run};
use crate::save::file::{FORMAT, ReadError, VERSION, WriteError, open_up_to};
use crate::save::told;
use recalesce_texts::save::{file::NO_LIST, logbook as texts};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;

/// Value of `kind`.
const KIND: &str = "logbook";

/// Largest file of a logbook that is read or written, bytes: some hundreds of photos.
pub const LARGEST_LOGBOOK_BYTES: usize = 60_000_000;

/// What could be read of a file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LoadedLogbook {
    /// The runs that make sense.
    pub book: Logbook,
    /// The photos that came along.
    pub photos: BTreeMap<Id, Photo>,
    /// The other runs and photos, and what is wrong: `run 3: …`, counted from 1.
    pub rejected: Vec<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct PhotoInFile {
    id: Id,
    jpeg_base64: Photo,
}

/// Reads a logbook.
///
/// # Errors
/// A file that cannot be read as a whole. A bad run among good ones is no error: it is told in
/// [`LoadedLogbook::rejected`].
pub fn read_logbook(text: &str) -> Result<LoadedLogbook, ReadError> {
    let (_, mut fields) = open_up_to(text, LARGEST_LOGBOOK_BYTES)?;
    match fields.take("kind")? {
        Value::String(kind) if kind == KIND => {}
        other => return Err(ReadError::kind(&other, "\"logbook\"")),
    }
    let runs = list_of("runs", fields.take("runs")?)?;
    let photos = match fields.take("photos") {
        Ok(photos) => list_of("photos", photos)?,
        Err(_) => Vec::new(),
    };
    fields.finish()?;
    let mut loaded = LoadedLogbook::default();
    for (index, value) in runs.into_iter().enumerate() {
        let read = serde_json::from_value::<Run>(value).map_err(|e| told(&e));
        let put = read.and_then(|run| {
            if loaded.book.get(&run.id).is_some() {
                return Err(texts::id_twice(&run.id.to_string()));
            }
            loaded.book.put(run).map_err(|e| e.to_string())
        });
        if let Err(fault) = put {
            loaded.rejected.push(texts::of_run(index + 1, &fault));
        }
    }
    for (index, value) in photos.into_iter().enumerate() {
        match serde_json::from_value::<PhotoInFile>(value) {
            Ok(photo) => {
                loaded.photos.insert(photo.id, photo.jpeg_base64);
            }
            Err(fault) => loaded
                .rejected
                .push(texts::of_photo(index + 1, &told(&fault))),
        }
    }
    Ok(loaded)
}

fn list_of(field: &'static str, value: Value) -> Result<Vec<Value>, ReadError> {
    match value {
        Value::Array(list) => Ok(list),
        _ => Err(ReadError::Field {
            field,
            fault: NO_LIST.to_owned(),
        }),
    }
}

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    kind: &'static str,
    runs: Vec<&'a Run>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    photos: Vec<PhotoInFile>,
}

/// Writes runs and those of their photos that are given.
///
/// # Errors
/// A text larger than what [`read_logbook`] accepts.
pub fn write_logbook<'a>(
    runs: impl IntoIterator<Item = &'a Run>,
    photos: &BTreeMap<Id, Photo>,
) -> Result<String, WriteError> {
    let runs: Vec<&Run> = runs.into_iter().collect();
    let of_runs = runs.iter().flat_map(|run| &run.photos);
    let photos = of_runs
        .filter_map(|id| photos.get_key_value(id))
        .map(|(id, photo)| PhotoInFile {
            id: id.clone(),
            jpeg_base64: photo.clone(),
        })
        .collect();
    let file = File {
        format: FORMAT,
        version: VERSION,
        kind: KIND,
        runs,
        photos,
    };
    let text = serde_json::to_string(&file).map_err(|e| WriteError::Text(e.to_string()))?;
    if text.len() > LARGEST_LOGBOOK_BYTES {
        return Err(WriteError::TooLarge {
            bytes: text.len(),
            most: LARGEST_LOGBOOK_BYTES,
        });
    }
    Ok(text)
}

/// Writes one run by itself, as a logbook of one, for storage.
///
/// # Errors
/// A text larger than what [`read_logbook`] accepts.
pub fn write_run(run: &Run) -> Result<String, WriteError> {
    write_logbook([run], &BTreeMap::new())
}
