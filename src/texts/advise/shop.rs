//! Words of the shop: what is wrong with it, and what pieces of a route are drawn with in it.

pub const EXAMPLE_FURNACE: &str = "Kiln";
pub const EXAMPLE_COLD: &str = "Freezer";

#[inline]
pub fn how_many_allowed(count: usize, least: usize, most: usize) -> String {
    format!("there are {count}; {least} to {most} are allowed")
}

#[inline]
pub fn hottest_below_coolest(hottest: &str, coolest: &str, unit: &str) -> String {
    format!("{hottest} {unit} is below the coolest, {coolest} {unit}")
}

#[inline]
pub fn name_too_long(length: usize, allowed: usize) -> String {
    format!("it has {length} characters; {allowed} are allowed")
}

/// What pieces are drawn with; its parts follow.
#[inline]
pub fn drawn_with(parts: &[String]) -> String {
    format!("Drawn with {}.", parts.join("; "))
}

#[inline]
pub fn furnace(band: &str) -> String {
    format!("the furnace as on the bench, within {band}")
}

#[inline]
pub fn furnace_of_shop(band: &str) -> String {
    format!("the furnace as on the bench, within {band}, of your shop")
}

#[inline]
pub fn furnace_named(band: &str, name: &str) -> String {
    format!("the furnace as on the bench, within {band}, “{name}” of your shop")
}

#[inline]
pub fn furnace_of_none(band: &str) -> String {
    format!("the furnace as on the bench, within {band}, not that of any one furnace of your shop")
}

#[inline]
pub fn tempers_by_oven(band: &str) -> String {
    format!("tempers within {band}, your oven")
}

#[inline]
pub fn tempers_by_furnace(band: &str) -> String {
    format!("tempers within {band}, your furnace")
}

pub const TEMPERS_BY_FURNACE_OF_SOAK: &str = "tempers as far off as that furnace is there";

#[inline]
pub fn thickness(band: &str) -> String {
    format!("thickness within ±{band}, as usual")
}

pub const ANY_HEAT: &str = "any heat of the grade";

#[inline]
pub fn certificate(part: &str) -> String {
    format!("contents of the certificate within {part}, as usual")
}

#[inline]
pub fn tester(error_hrc: &str) -> String {
    format!("your tester within ±{error_hrc}\u{a0}HRC, for what it reads")
}
