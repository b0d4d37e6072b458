//! A solver that counts what it does, for tests that hold what an outcome costs.

use std::cell::Cell;

/// What searches for equilibria have done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Effort {
    /// Equilibria searched for.
    pub searches: u32,
    /// Newton steps of all of them, and of boundaries followed between them.
    pub newton_steps: u32,
}

thread_local! {
    static EFFORT: Cell<Effort> = const { Cell::new(Effort { searches: 0, newton_steps: 0 }) };
}

/// Runs something, and counts what the solver does for it on this thread.
pub fn counting<T>(what: impl FnOnce() -> T) -> (T, Effort) {
    EFFORT.set(Effort::default());
    let given = what();
    (given, EFFORT.get())
}

/// Counts a search.
pub(super) fn searched() {
    let mut effort = EFFORT.get();
    effort.searches += 1;
    EFFORT.set(effort);
}

/// Counts a Newton step.
pub(super) fn stepped() {
    let mut effort = EFFORT.get();
    effort.newton_steps += 1;
    EFFORT.set(effort);
}
