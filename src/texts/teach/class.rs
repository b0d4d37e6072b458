//! The files of a class.

#[inline]
pub fn in_file(file: &str, fault: &str) -> String {
    format!("“{file}”: {fault}")
}

#[inline]
pub fn of_route(place: usize, fault: &str) -> String {
    format!("route {place}: {fault}")
}

pub const NO_ROUTE: &str = "The file holds no route.";
