//! The file format of routes, shelves, logbooks, shops and preferences: versions, checks, and what can be
//! done to a shelf and to a logbook. Pure: texts in, values out; where they are kept is the page's
//! business.
//!
//! One format serves storage, export and import: a JSON object with `format`, `version`, `kind`
//! and `routes` or `runs`, every number with its unit in the name of its field. Whatever comes in is
//! untrusted, also from storage: sizes are limited, every number is checked, and a name is only
//! ever text.

mod embed;
mod file;
mod history;
mod link;
pub mod logbook;
pub(crate) mod packed;
mod preferences;
mod shelf;
mod shop;
mod table;
mod told;
mod v9;

pub use embed::{EmbedError, ShownChart, asks_for_chart, frame_text, read_shown, write_shown};
pub use file::{
    Kind, LARGEST_FILE_BYTES, Loaded, ReadError, VERSION, WriteError, read, read_bench,
    write_bench, write_shelf,
};
pub use history::{History, MOST_UNDONE};
pub use link::{LONGEST_LINK, LinkError, read_link, write_link};
pub use preferences::{Preferences, Theme, read_preferences, write_preferences};
pub use shelf::{Deleted, Imported, ItemId, Joined, MOST_ROUTES, Shelf, ShelfError, ShelfItem};
pub use shop::{KeptShop, read_shop, write_shop};
pub use table::write_table;
pub(crate) use told::told;
