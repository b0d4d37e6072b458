//! Reloads the page in the browser when it has been built anew. Only the development server adds
//! this: the files that are published know nothing of it.

use crate::offline::WORKER;
use std::sync::atomic::{AtomicU64, Ordering};

/// Addresses below the page that a published page does not have; its service worker is another one.
const SCRIPT: &str = "-/reload.js";
const REVISION: &str = "-/revision";

/// How often the page has been built.
#[derive(Debug, Default)]
pub(crate) struct Live {
    revision: AtomicU64,
}

impl Live {
    /// Makes open pages reload.
    pub(crate) fn changed(&self) {
        self.revision.fetch_add(1, Ordering::Relaxed);
    }

    /// Media type and content for the addresses of its own.
    pub(crate) fn answer(&self, path: &str) -> Option<(&'static str, Vec<u8>)> {
        match path {
            SCRIPT => Some((
                "text/javascript; charset=utf-8",
                include_bytes!("reload.js").to_vec(),
            )),
            WORKER => Some((
                "text/javascript; charset=utf-8",
                include_bytes!("no_worker.js").to_vec(),
            )),
            REVISION => {
                let revision = self.revision.load(Ordering::Relaxed);
                Some((
                    "text/plain; charset=utf-8",
                    revision.to_string().into_bytes(),
                ))
            }
            _ => None,
        }
    }

    /// The page with the script that reloads it.
    pub(crate) fn insert_script(&self, mut page: Vec<u8>) -> Vec<u8> {
        page.extend_from_slice(format!("<script src=\"{SCRIPT}\"></script>\n").as_bytes());
        page
    }
}
