//! Lists in order, and which of two numbers is the larger.

use std::cmp::Ordering;

/// The larger of two numbers; the first where the second is not a number. `f64::max` looks for that
/// in either, and in WebAssembly is a call each time.
pub const fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The smaller of two numbers; the first where the second is not a number: see [`larger`].
pub const fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// Sorts a list; what is equal stays in its order.
///
/// As `slice::sort_by`, for lists that are not sorted in the midst of a computation: of that, each
/// type of list has its own 1 to 3 kB of the page's program (gzip), of this all have the same.
pub fn sort_by<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let order = places_in_order(list.len(), &|a, b| compare(&list[a], &list[b]));
    for (place, from) in order.iter().enumerate() {
        // What stood at an earlier place has been swapped to where the one for that place was.
        let mut from = *from;
        while from < place {
            from = order[from];
        }
        list.swap(place, from);
    }
}

/// Sorts a list by a key; what has equal keys stays in its order.
pub fn sort_by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(list, |a, b| key(a).cmp(&key(b)));
}

/// The places of a list of a length, in the order of what stands there.
fn places_in_order(length: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..length).collect();
    places.sort_by(|a, b| compare(*a, *b));
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_sorted_as_the_library_does() {
        // all digits of a few long numbers, so with many that are equal
        for (seed, length) in [(1_u64, 0), (2, 1), (3, 2), (5, 7), (7, 40), (11, 300)] {
            let mut list: Vec<(u64, usize)> = (0..length)
                .map(|i| {
                    (
                        (seed.wrapping_mul(i as u64 + 3).wrapping_pow(3) >> 4) % 10,
                        i,
                    )
                })
                .collect();
            let mut expected = list.clone();
            expected.sort_by_key(|(digit, _)| *digit);
            sort_by_key(&mut list, |(digit, _)| *digit);
            assert_eq!(list, expected);
        }
    }
}
