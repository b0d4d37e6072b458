//! What solvers do, counted for tests that hold what an outcome costs.

use std::cell::Cell;

/// What solvers have done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Effort {
    /// Equilibria searched for.
    pub searches: u32,
    /// Newton steps of all of them, and of boundaries followed between them.
    pub newton_steps: u32,
    /// Steps in time that were tried, kept or not, times the nodes of what was stepped.
    pub node_steps: u32,
}

thread_local! {
    static EFFORT: Cell<Effort> = const {
        Cell::new(Effort { searches: 0, newton_steps: 0, node_steps: 0 })
    };
}

/// Runs something, and counts what solvers do for it on this thread.
pub fn counting<T>(what: impl FnOnce() -> T) -> (T, Effort) {
    EFFORT.set(Effort::default());
    let given = what();
    (given, EFFORT.get())
}

/// Counts some of it.
pub(crate) fn count(add: impl FnOnce(&mut Effort)) {
    let mut effort = EFFORT.get();
    add(&mut effort);
    EFFORT.set(effort);
}
