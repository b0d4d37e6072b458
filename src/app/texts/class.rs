//! Words of a class together.

#[inline]
pub(crate) fn too_many_files(count: u32, most: usize) -> String {
    format!("{count} files are too many: at most {most} are taken together.")
}

#[inline]
pub(crate) fn file_too_large(name: &str, most: usize) -> String {
    format!("“{name}”: The file is larger than {most} MB.")
}

#[inline]
pub(crate) fn file_unreadable(name: &str) -> String {
    format!("“{name}”: That file cannot be read.")
}

#[inline]
pub(crate) fn no_room(file: &str, left_out: usize, most: usize) -> String {
    format!("“{file}”: No room for {left_out}: at most {most} routes are shown.")
}

#[inline]
pub(crate) fn on_the_bench(name: &str) -> String {
    format!("On the bench: “{name}”.")
}

pub(crate) const NO_FILE_YET: &str = "No file yet.";
pub(crate) const ONE_ROUTE: &str = "One route.";

#[inline]
pub(crate) fn still_computed(there: usize, left: usize) -> String {
    format!("{there} routes, {left} still being computed.")
}

pub(crate) const TOGETHER: &str = "A class together";
pub(crate) const ABOUT: &str = "Choose or drop the files that your students exported: routes, shelves, logbooks. They are read in this browser, shown together, and not kept.";

#[inline]
pub(crate) fn most_taken(files: usize, routes: usize, megabytes: usize) -> String {
    format!("At most {files} files at a time and {routes} routes together; {megabytes} MB each.")
}

pub(crate) const CHOOSE_FILES: &str = "Choose files";
pub(crate) const FILES_OF_CLASS: &str = "Files of the class";
pub(crate) const EXPORT_TABLE: &str = "Export the table";
pub(crate) const START_AGAIN: &str = "Start again";
pub(crate) const NO_ROUTE_HAS_BOTH: &str = "No route has both of these numbers.";
pub(crate) const PRESSED_GOES_TO_BENCH: &str =
    "A point that is pressed, or a name in the table, goes to the bench.";
pub(crate) const ROUTES_OF_CLASS: &str = "The routes of the class";

#[inline]
pub(crate) fn put_on_bench(name: &str) -> String {
    format!("Put on the bench: {name}")
}

#[inline]
pub(crate) fn routes(there: usize) -> String {
    format!("{there} routes.")
}

pub(crate) const ACROSS: &str = "Across";
pub(crate) const UPWARDS: &str = "Upwards";
pub(crate) const QUENCH: &str = "quench";
