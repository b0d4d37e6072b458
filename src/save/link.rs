//! A route as a short text for the address of the page, and back.
//!
//! The text is the format's version, a full stop, and the saved route as [`packed`] writes it, so that a
//! route like most others comes to a few dozen letters, which a QR code holds with large squares. What
//! comes in goes through the reader of files, and is checked as they are.

use super::file::{FORMAT, Kind, ReadError, VERSION, WriteError, read_bench};
use super::packed::{self, Fault};
use crate::route::{Route, validate};
use recalesce_texts::save::link as texts;

/// Longest link that is written or read, characters.
pub const LONGEST_LINK: usize = 16_000;
/// Largest saved route in a link, bytes.
const LARGEST_ROUTE_BYTES: usize = 200_000;
/// The version of the format that had the first links.
const FIRST_VERSION: u64 = 5;
/// Why a link could not be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LinkError {
    /// Longer than any link.
    #[error("{}", texts::too_long(*length, LONGEST_LINK))]
    TooLong {
        /// Its length, bytes.
        length: usize,
    },
    /// Not begun as a link begins.
    #[error("{}", texts::NOT_OURS)]
    NotOurs,
    /// The link comes from a later program.
    #[error("{}", texts::newer(*found, VERSION))]
    Newer {
        /// The version found.
        found: u64,
    },
    /// Letters are missing or changed.
    #[error("{}", texts::DAMAGED)]
    Damaged,
    /// A route that is larger than any.
    #[error("{}", texts::too_large(LARGEST_ROUTE_BYTES))]
    TooLarge,
    /// What is in it is no route, or makes no sense.
    #[error(transparent)]
    Route(#[from] ReadError),
}

/// A route as the text of a link.
///
/// # Errors
/// A route that makes no sense, or one so long that its link would not be read.
pub fn write_link(route: &Route) -> Result<String, WriteError> {
    validate(route)?;
    let text = serde_json::to_string(route).map_err(|e| WriteError::Text(e.to_string()))?;
    let letters = packed::write(&text).ok_or_else(|| WriteError::Text("deflate".to_owned()))?;
    let link = format!("{VERSION}.{letters}");
    if link.len() > LONGEST_LINK || text.len() > LARGEST_ROUTE_BYTES {
        return Err(WriteError::LongLink { length: link.len() });
    }
    Ok(link)
}

/// The route of a link, checked as one of a file.
///
/// # Errors
/// A text that is no link, a damaged link or one of a newer version, and a route that makes no sense.
pub fn read_link(link: &str) -> Result<Route, LinkError> {
    if link.len() > LONGEST_LINK {
        return Err(LinkError::TooLong { length: link.len() });
    }
    let (version, letters) = link.split_once('.').ok_or(LinkError::NotOurs)?;
    let version: u64 = version.parse().map_err(|_| LinkError::NotOurs)?;
    if version > VERSION {
        return Err(LinkError::Newer { found: version });
    }
    if version < FIRST_VERSION {
        return Err(LinkError::NotOurs);
    }
    let route =
        packed::read(letters.trim_end(), LARGEST_ROUTE_BYTES).map_err(|fault| match fault {
            Fault::Damaged => LinkError::Damaged,
            Fault::TooLarge => LinkError::TooLarge,
        })?;
    // In the envelope of a file, so that each version has one reader for files and links.
    let kind = Kind::Bench.name();
    let file = format!(
        r#"{{"format":"{FORMAT}","version":{version},"kind":"{kind}","routes":[{{"id":1,"name":"","route":{route}}}]}}"#
    );
    Ok(read_bench(&file)?.route)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{PriorStep, SlowCooling, Work};

    #[test]
    fn the_example_comes_to_a_short_link_and_back() {
        let link = write_link(&Route::example()).unwrap();
        assert!(link.len() < 60, "{link}");
        assert!(
            link.bytes()
                .all(|b| b.is_ascii_alphanumeric() || b".-_".contains(&b))
        );
        assert_eq!(read_link(&link).unwrap(), Route::example());
    }

    #[test]
    fn a_long_route_still_fits_a_code() {
        let mut route = Route::example();
        route.prior = Work::ALL
            .into_iter()
            .map(|work| PriorStep {
                work,
                temperature_c: 903.0,
                time_min: 7.0,
                cooling: SlowCooling::still_air(),
            })
            .collect();
        let link = write_link(&route).unwrap();
        assert!(link.len() < 300, "{link}");
        assert_eq!(read_link(&link).unwrap(), route);
    }

    #[test]
    fn a_changed_letter_or_a_lost_end_is_told() {
        let link = write_link(&Route::example()).unwrap();
        for end in 0..link.len() {
            assert!(read_link(&link[..end]).is_err(), "{end}");
        }
        for place in 2..link.len() {
            let mut changed = link.clone().into_bytes();
            changed[place] = if changed[place] == b'A' { b'B' } else { b'A' };
            let changed = String::from_utf8(changed).unwrap();
            assert!(read_link(&changed).is_err(), "{changed}");
        }
    }

    fn packed(text: &str) -> String {
        format!("5.{}", packed::write(text).unwrap())
    }

    #[test]
    fn hostile_links_are_refused_in_a_sentence() {
        let refused = |link: &str| read_link(link).unwrap_err().to_string();
        assert!(refused("").contains("no link to a route"));
        assert!(refused("hello").contains("no link to a route"));
        assert!(refused("4.AAAA").contains("no link to a route"));
        let newer = VERSION + 1;
        assert!(refused(&format!("{newer}.AAAA")).contains(&format!("version {newer}")));
        assert!(refused("5.<script>").contains("damaged"));
        assert!(refused(&"5".repeat(LONGEST_LINK + 1)).contains("16001 characters"));
        assert!(refused(&packed(&" ".repeat(LARGEST_ROUTE_BYTES + 1))).contains("200000 bytes"));
        assert!(refused(&packed("{}")).contains("missing field"));
        assert!(refused(&packed("{}},{\"id\":2")).contains("The "));
        let mut hot = Route::example();
        hot.soak.temperature_c = 5000.0;
        let text = serde_json::to_string(&hot).unwrap();
        assert!(refused(&packed(&text)).contains("5000"));
        assert!(write_link(&hot).is_err());
    }
}
