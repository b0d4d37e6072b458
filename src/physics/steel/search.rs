//! A search of the grade list as its user types.

use super::Grade;
use super::grades::{grades, plain};
use crate::numeric::order;

/// The grades of which any designation holds the words typed: those that are called just so first,
/// then those whose name begins so, then the others; among alike a sure name goes before one that
/// the list gives as near. Nothing typed gives the whole list.
#[must_use]
pub fn search(typed: &str) -> Vec<&'static Grade> {
    let key = plain(typed);
    let mut found: Vec<((u8, u8), &Grade)> = grades()
        .iter()
        .filter_map(|grade| {
            let fit = |(rank, name): (u8, String)| {
                if name == key {
                    Some((0, rank))
                } else if name.starts_with(&key) {
                    Some((1, rank))
                } else {
                    name.contains(&key).then_some((2, rank))
                }
            };
            let best = grade.names().into_iter().filter_map(fit).min()?;
            Some((best, grade))
        })
        .collect();
    if !key.is_empty() {
        // Stable: grades that fit alike keep the order of the list.
        order::sort_by_key(&mut found, |&(fit, _)| fit);
    }
    found.into_iter().map(|(_, grade)| grade).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(typed: &str) -> Vec<&'static str> {
        search(typed)
            .into_iter()
            .map(|grade| grade.designation.as_str())
            .collect()
    }

    #[test]
    fn the_grade_called_so_goes_before_one_that_is_near() {
        assert_eq!(found("1.2842"), ["90MnCrV8", "O2"]);
        assert_eq!(found("o2").first(), Some(&"O2"));
        assert_eq!(found("O1").first(), Some(&"O1"));
        assert_eq!(found("100 cr 6").first(), Some(&"52100"));
        assert_eq!(found("c100s").first(), Some(&"C100S"));
    }

    #[test]
    fn a_beginning_goes_before_a_part() {
        let found = found("10");
        let place = |name| found.iter().position(|n| *n == name);
        assert!(place("1045") < place("52100"));
    }

    #[test]
    fn nothing_typed_gives_the_list_and_nonsense_nothing() {
        assert_eq!(search("").len(), grades().len());
        assert_eq!(search(" - ").len(), grades().len());
        assert!(search("unobtainium").is_empty());
    }
}
