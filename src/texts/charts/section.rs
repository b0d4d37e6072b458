//! Where the section hardens.

pub const CERTAIN_THROUGH: &str = "certain through";
pub const JUST_THROUGH: &str = "only just through";

/// `through` is one of the two above.
#[inline]
pub fn through_all(through: &str, height: &str) -> String {
    format!("{through} all {height}")
}

#[inline]
pub fn to_the_centre(through: &str) -> String {
    format!("{through} to the centre")
}

#[inline]
pub fn part_of(hardened: &str, height: &str) -> String {
    format!("about {hardened} of {height}")
}

#[inline]
pub fn deep(hardened: &str) -> String {
    format!("about {hardened} deep")
}

#[inline]
pub fn from_surface_in(constituent: &str) -> String {
    format!("{constituent} from the surface in")
}

#[inline]
pub fn partly_from_surface_in(constituent: &str) -> String {
    format!("partly {constituent} from the surface in")
}

/// Under a length: what it is of.
pub const SPINE: &str = "spine";
pub const THICK: &str = "thick";
pub const ACROSS: &str = "across";

#[inline]
pub fn cutting_edge(thickness: &str) -> String {
    format!("cutting edge {thickness}")
}

pub const HARDENS_THROUGH: &str = "The section hardens through.";
pub const HARDENS_JUST_THROUGH: &str = "The section hardens through, only just.";

#[inline]
pub fn hardens_from_edge(hardened: &str) -> String {
    format!("The section hardens to about {hardened} from the cutting edge.")
}

#[inline]
pub fn hardens_below_surface(hardened: &str) -> String {
    format!("The section hardens to about {hardened} below the surface.")
}
