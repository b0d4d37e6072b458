//! A solver that fails on purpose, for tests of those that call it.

use std::cell::Cell;

thread_local! {
    /// Equilibria still to be found, and failures to come after them.
    static PLAN: Cell<(u32, u32)> = const { Cell::new((u32::MAX, 0)) };
}

/// Runs something with a solver that finds as many equilibria as it is told to, fails as often, and
/// works again after that.
pub(crate) fn failing<T>(after: u32, times: u32, what: impl FnOnce() -> T) -> T {
    PLAN.set((after, times));
    let given = what();
    PLAN.set((u32::MAX, 0));
    given
}

/// Whether this search is to fail.
pub(super) fn strikes() -> bool {
    let (after, times) = PLAN.get();
    match (after, times) {
        (_, 0) => false,
        (0, _) => {
            PLAN.set((0, times - 1));
            true
        }
        _ => {
            PLAN.set((after - 1, times));
            false
        }
    }
}
