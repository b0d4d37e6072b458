//! One browser facility per file; each closes what it opens.

pub(crate) mod address;
pub(crate) mod chance;
pub(crate) mod channel;
pub(crate) mod clipboard;
pub(crate) mod clock;
pub(crate) mod decimals;
pub(crate) mod density;
pub(crate) mod files;
pub(crate) mod media;
pub(crate) mod panic;
pub(crate) mod photo;
pub(crate) mod print;
pub(crate) mod records;
pub(crate) mod resize;
pub(crate) mod rest;
pub(crate) mod root;
pub(crate) mod storage;
pub(crate) mod style;
pub(crate) mod theme;
pub(crate) mod typeface;
pub(crate) mod worker;
