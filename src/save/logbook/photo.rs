//! A photo as it is kept and carried: a small JPEG.

use recalesce_texts::save::logbook as texts;
use serde::{Deserialize, Serialize};

/// Most characters of a photo: 600 kB of JPEG. One scaled to 1024 px has a third of that.
const MOST_CHARACTERS: usize = 800_000;

/// What every address of a photo begins with.
const ADDRESS: &str = "data:image/jpeg;base64,";

/// How base64 writes the first three bytes of every JPEG.
const JPEG_BEGINS: &str = "/9j/";

/// A JPEG in base64. Whatever else the text may be, it can only ever be shown as an image.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Photo(String);

impl Photo {
    /// The photo of an address as a canvas gives it.
    ///
    /// # Errors
    /// Another kind of image, one that is not base64, or one that is too large.
    pub fn from_address(address: &str) -> Result<Self, String> {
        let base64 = address.strip_prefix(ADDRESS).ok_or(texts::NO_JPEG)?;
        Self::try_from(base64.to_owned())
    }

    /// Its address for an image on the page.
    #[must_use]
    pub fn address(&self) -> String {
        format!("{ADDRESS}{}", self.0)
    }
}

impl TryFrom<String> for Photo {
    type Error = String;

    fn try_from(base64: String) -> Result<Self, String> {
        if base64.len() > MOST_CHARACTERS {
            return Err(texts::large_photo(base64.len(), MOST_CHARACTERS));
        }
        let digits = base64.trim_end_matches('=');
        let is_base64 = base64.len().is_multiple_of(4)
            && base64.len() - digits.len() <= 2
            && digits
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'+' | b'/'));
        if !is_base64 || !base64.starts_with(JPEG_BEGINS) {
            return Err(texts::NO_JPEG_IN_BASE64.to_owned());
        }
        Ok(Self(base64))
    }
}

impl From<Photo> for String {
    fn from(photo: Photo) -> Self {
        photo.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_jpeg_is_a_photo() {
        let photo = Photo::from_address("data:image/jpeg;base64,/9j/4AAQ").unwrap();
        assert_eq!(photo.address(), "data:image/jpeg;base64,/9j/4AAQ");
        for address in [
            "data:image/svg+xml;base64,/9j/4AAQ",
            "data:image/jpeg;base64,iVBORw0K",
            "data:image/jpeg;base64,/9j/4AA",
            "data:image/jpeg;base64,/9j/\"><b>",
            "data:image/jpeg;base64,/9j/4===",
            "data:,",
        ] {
            assert!(Photo::from_address(address).is_err(), "{address}");
        }
        let large = format!("/9j/{}", "A".repeat(MOST_CHARACTERS));
        assert!(Photo::try_from(large).is_err());
    }
}
