//! A route whose equilibria are not found: refused, or answered as far as it can be.

use super::{Route, run};
use crate::phases::failing;

#[test]
fn a_route_survives_a_failing_solver() {
    let route = Route::example();
    assert!(run(&route).is_ok());
    for after in (0..200).step_by(4) {
        for times in [1, 3, u32::MAX] {
            if let Err(error) = failing(after, times, || run(&route)) {
                let is_named = error.to_string().contains("did not come to rest");
                assert!(is_named, "{times} failures after {after}: {error:?}");
            }
        }
    }
    assert!(failing(0, u32::MAX, || run(&route)).is_err());
}
