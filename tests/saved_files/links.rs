//! Links: those of every version, damaged ones, and any route there and back.

use super::any_route::any_route;
use super::{V5_BENCH, V6_BENCH, V7_BENCH, V8_BENCH, V9_BENCH};
use proptest::prelude::*;
use recalesce::route::Route;
use recalesce::save::{WriteError, read_bench, read_link, write_link};

const V9_LINK: &str = include_str!("../saved/v9_link.txt");
const V8_LINK: &str = include_str!("../saved/v8_link.txt");
const V7_LINK: &str = include_str!("../saved/v7_link.txt");
const V6_LINK: &str = include_str!("../saved/v6_link.txt");
const V5_LINKS: &str = include_str!("../saved/v5_links.txt");

#[test]
fn links_of_version_7_are_read() {
    let bench = read_bench(V7_BENCH).expect("the bench of version 7").route;
    assert_eq!(read_link(V7_LINK.trim_end()), Ok(bench));
}

#[test]
fn links_of_version_8_are_read() {
    let bench = read_bench(V8_BENCH).expect("the bench of version 8").route;
    assert_eq!(read_link(V8_LINK.trim_end()), Ok(bench));
}

#[test]
fn links_of_version_9_are_read() {
    let bench = read_bench(V9_BENCH).expect("the bench of version 9").route;
    assert_eq!(read_link(V9_LINK.trim_end()), Ok(bench.clone()));
    assert_eq!(write_link(&bench), Ok(V9_LINK.trim_end().to_owned()));
}

#[test]
fn links_of_version_6_are_read() {
    let bench = read_bench(V6_BENCH).expect("the bench of version 6").route;
    assert_eq!(read_link(V6_LINK.trim_end()), Ok(bench));
}

#[test]
fn links_of_version_5_are_read() {
    let bench = read_bench(V5_BENCH).expect("the bench of version 5").route;
    let routes: Vec<Route> = V5_LINKS
        .lines()
        .map(|link| read_link(link).expect("a link of version 5"))
        .collect();
    assert_eq!(routes[0].piece, "marking knife");
    assert_eq!(routes[0].soak.temperature_c, 830.0);
    assert_eq!(routes[1], bench);
    assert_eq!(routes.len(), 2);
}

/// A route with long curves of the user's own may be too long for a link; any other comes back.
fn through_a_link(route: &Route) -> Option<Route> {
    match write_link(route) {
        Ok(link) => Some(read_link(&link).expect("a link just written")),
        Err(WriteError::LongLink { .. }) => None,
        Err(error) => panic!("{error}"),
    }
}

proptest! {
    #[test]
    fn every_route_comes_back_from_its_link(route in any_route()) {
        if let Some(back) = through_a_link(&route) {
            prop_assert_eq!(back, route);
        }
    }

    /// Bits that no route needs are left in the last two bytes, the last three letters, and versions near each
    /// other read some routes alike: changed there or in its version, a link may still give its own route, and
    /// never another.
    #[test]
    fn damaged_links_give_no_other_route(place in 0usize..400, letter in "[A-Za-z0-9_.-]") {
        let link = V5_LINKS.lines().nth(1).unwrap_or_default();
        let mut damaged: Vec<String> = link.chars().map(String::from).collect();
        let place = place % damaged.len();
        let is_same = damaged[place] == letter;
        let may_give_it = place == 0 || place + 3 >= damaged.len();
        damaged[place] = letter;
        let read = read_link(&damaged.concat());
        prop_assert!(may_give_it || read.is_ok() == is_same);
        if let Ok(route) = read {
            prop_assert_eq!(Ok(route), read_link(link));
        }
    }

    #[test]
    fn any_text_is_a_link_or_refused(text in any::<String>()) {
        prop_assert!(read_link(&text).is_err());
        let link = format!("5.{text}");
        prop_assert!(read_link(&link).is_err());
    }
}
