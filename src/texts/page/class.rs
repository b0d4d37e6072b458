//! Words of a class together.

#[inline]
pub fn too_many_files(count: u32, most: usize) -> String {
    format!("{count} files are too many: at most {most} are taken together.")
}

#[inline]
pub fn file_too_large(name: &str, most: usize) -> String {
    format!("“{name}” is larger than {most}\u{a0}MB.")
}

#[inline]
pub fn file_unreadable(name: &str) -> String {
    format!("“{name}” cannot be read.")
}

#[inline]
pub fn no_room(file: &str, left_out: usize, most: usize) -> String {
    format!("“{file}”: no room for {left_out}; at most {most} routes are shown.")
}

#[inline]
pub fn on_the_bench(name: &str) -> String {
    format!("On the bench: “{name}”.")
}

pub const NO_FILE_YET: &str = "No file yet.";
pub const ONE_ROUTE: &str = "One route.";

#[inline]
pub fn still_computed(there: usize, left: usize) -> String {
    format!("{there} routes, {left} still being computed.")
}

pub const TOGETHER: &str = "A class together";
pub const ABOUT: &str = "Choose or drop the files that your students exported: routes, shelves, logbooks. They are read in this browser, shown together, and not kept.";

#[inline]
pub fn most_taken(files: usize, routes: usize, megabytes: usize) -> String {
    format!("At most {files} files at a time and {routes} routes together; {megabytes} MB each.")
}

pub const CHOOSE_FILES: &str = "Choose files";
pub const FILES_OF_CLASS: &str = "Files of the class";
pub const EXPORT_TABLE: &str = "Export the table";
pub const START_AGAIN: &str = "Start again";
pub const NO_ROUTE_HAS_BOTH: &str = "No route has both of these numbers.";
pub const PRESSED_GOES_TO_BENCH: &str =
    "A point that is pressed, or a name in the table, goes to the bench.";
pub const ROUTES_OF_CLASS: &str = "The routes of the class";

#[inline]
pub fn put_on_bench(name: &str) -> String {
    format!("Put on the bench: {name}")
}

#[inline]
pub fn routes(there: usize) -> String {
    format!("{there} routes.")
}

pub const ACROSS: &str = "Across";
pub const UPWARDS: &str = "Upwards";
pub const QUENCH: &str = "quench";
pub const NAME: &str = "name";
pub const GRADE: &str = "grade";
