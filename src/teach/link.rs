//! An experiment as a short text for the address of the page, and back.
//!
//! The text is the version of the format, a full stop, and the experiment as [`packed`] writes it. What
//! comes in is checked as a file is.

use super::experiment::Experiment;
use super::read::{EXPERIMENT_VERSION, ExperimentError, LARGEST_EXPERIMENT_BYTES, read_experiment};
use crate::save::LONGEST_LINK;
use crate::save::packed::{self, Fault};
use recalesce_texts::{save::link as of_any, teach::link as texts};

/// What stands before the text in an address.
pub const EXPERIMENT_MARK: &str = "#experiment=";

/// Why a link brings no experiment, or none could be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ExperimentLinkError {
    /// Longer than any link.
    #[error("{}", of_any::too_long(*length, LONGEST_LINK))]
    TooLong {
        /// Its length, bytes.
        length: usize,
    },
    /// Not begun as a link begins.
    #[error("{}", texts::NOT_OURS)]
    NotOurs,
    /// The link comes from a later program.
    #[error("{}", texts::newer(*found, EXPERIMENT_VERSION))]
    Newer {
        /// The version found.
        found: u64,
    },
    /// Letters are missing or changed.
    #[error("{}", of_any::DAMAGED)]
    Damaged,
    /// An experiment that is larger than any.
    #[error("{}", texts::too_large(LARGEST_EXPERIMENT_BYTES))]
    TooLarge,
    /// What is in it is no experiment, or makes no sense.
    #[error(transparent)]
    Experiment(#[from] ExperimentError),
}

/// An experiment as the text of a link.
///
/// # Errors
/// One that is so large, or whose link is so long, that it would not be read.
pub fn write_experiment_link(experiment: &Experiment) -> Result<String, ExperimentLinkError> {
    let text = serde_json::to_string(experiment)
        .map_err(|why| ExperimentError::Format(why.to_string()))?;
    if text.len() > LARGEST_EXPERIMENT_BYTES {
        return Err(ExperimentLinkError::TooLarge);
    }
    let letters = packed::write(&text).ok_or(ExperimentLinkError::TooLarge)?;
    let link = format!("{EXPERIMENT_VERSION}.{letters}");
    if link.len() > LONGEST_LINK {
        return Err(ExperimentLinkError::TooLong { length: link.len() });
    }
    Ok(link)
}

/// The experiment of a link, checked as one of a file.
///
/// # Errors
/// A text that is no link, a damaged link or one of a newer version, and what is no experiment.
pub fn read_experiment_link(link: &str) -> Result<Experiment, ExperimentLinkError> {
    if link.len() > LONGEST_LINK {
        return Err(ExperimentLinkError::TooLong { length: link.len() });
    }
    let (version, letters) = link.split_once('.').ok_or(ExperimentLinkError::NotOurs)?;
    let found: u64 = version.parse().map_err(|_| ExperimentLinkError::NotOurs)?;
    if found == 0 {
        return Err(ExperimentLinkError::NotOurs);
    }
    if found > EXPERIMENT_VERSION {
        return Err(ExperimentLinkError::Newer { found });
    }
    let text =
        packed::read(letters.trim_end(), LARGEST_EXPERIMENT_BYTES).map_err(
            |fault| match fault {
                Fault::Damaged => ExperimentLinkError::Damaged,
                Fault::TooLarge => ExperimentLinkError::TooLarge,
            },
        )?;
    Ok(read_experiment(&text)?)
}

/// The experiment of a text that was pasted: a whole address with a link in it, or the text of a file.
///
/// # Errors
/// As of a link or of a file.
pub fn read_pasted(text: &str) -> Result<Experiment, ExperimentLinkError> {
    let text = text.trim();
    // A file may speak of links; an address does not begin with a brace.
    if !text.starts_with('{')
        && let Some((_, link)) = text.split_once(EXPERIMENT_MARK)
    {
        return read_experiment_link(link);
    }
    Ok(read_experiment(text)?)
}

#[cfg(test)]
mod tests {
    use super::super::BUNDLED;
    use super::*;

    fn all() -> Vec<Experiment> {
        let read = BUNDLED.iter().map(|text| read_experiment(text));
        read.map(Result::unwrap).collect()
    }

    #[test]
    fn every_experiment_comes_to_a_link_and_back() {
        for experiment in all() {
            let link = write_experiment_link(&experiment).unwrap();
            assert!(link.len() < 3_000, "{}: {}", experiment.title, link.len());
            assert!(
                link.bytes()
                    .all(|b| b.is_ascii_alphanumeric() || b".-_".contains(&b))
            );
            assert_eq!(read_experiment_link(&link).unwrap(), experiment);
            let address = format!(" https://example.org/page{EXPERIMENT_MARK}{link}\n");
            assert_eq!(read_pasted(&address).unwrap(), experiment);
        }
    }

    #[test]
    fn one_that_would_not_be_read_is_not_written() {
        let mut large = all().remove(0);
        large.about = " ".repeat(LARGEST_EXPERIMENT_BYTES);
        let refused = write_experiment_link(&large);
        assert_eq!(refused, Err(ExperimentLinkError::TooLarge));
    }

    /// The first link that was made: it is read for ever.
    #[test]
    fn the_first_link_is_read() {
        let link = include_str!("../../tests/saved/experiment_link_v1.txt");
        let experiment = read_experiment_link(link.trim_end()).unwrap();
        assert_eq!(experiment.title, all()[0].title);
    }

    #[test]
    fn the_text_of_a_file_is_pasted() {
        assert_eq!(read_pasted(BUNDLED[0]).unwrap(), all()[0]);
    }

    #[test]
    fn hostile_links_are_refused_in_a_sentence() {
        let refused = |link: &str| read_experiment_link(link).unwrap_err().to_string();
        let packed = |text: &str| format!("1.{}", packed::write(text).unwrap());
        assert!(refused("").contains("no link to an experiment"));
        assert!(refused("0.AAAA").contains("no link to an experiment"));
        assert!(refused("9.AAAA").contains("version 9"));
        assert!(refused("1.<script>").contains("damaged"));
        assert!(refused(&"1".repeat(LONGEST_LINK + 1)).contains("16001 characters"));
        let large = " ".repeat(LARGEST_EXPERIMENT_BYTES + 1);
        assert!(refused(&packed(&large)).contains("100000 bytes"));
        assert!(refused(&packed("{}")).contains("title: it is missing"));
        assert!(refused(&packed("[]")).contains("no experiment"));
        let mut hot = all().remove(0);
        hot.route.soak.temperature_c = 5000.0;
        let hot = write_experiment_link(&hot).unwrap();
        assert!(refused(&hot).contains("5000"), "{}", refused(&hot));
        let link = write_experiment_link(&all()[0]).unwrap();
        for end in 0..link.len() {
            assert!(read_experiment_link(&link[..end]).is_err(), "{end}");
        }
    }
}
