//! What can be undone and done again.

/// Most states that are kept to go back to.
pub const MOST_UNDONE: usize = 200;

/// States of one thing, in the order in which it had them, and which of them it has now.
#[derive(Debug, Clone)]
pub struct History<T> {
    past: Vec<T>,
    now: T,
    /// The next one last.
    future: Vec<T>,
}

impl<T: PartialEq> History<T> {
    /// Begins with a state.
    pub const fn new(first: T) -> Self {
        Self {
            past: Vec::new(),
            now: first,
            future: Vec::new(),
        }
    }

    /// Takes a new state down; what had been undone is gone with it. A state that is as the present
    /// one is no new one. Of more than [`MOST_UNDONE`] the oldest is let go.
    pub fn record(&mut self, next: T) {
        if next == self.now {
            return;
        }
        self.past.push(std::mem::replace(&mut self.now, next));
        if self.past.len() > MOST_UNDONE {
            self.past.remove(0);
        }
        self.future.clear();
    }

    /// The present state.
    pub const fn now(&self) -> &T {
        &self.now
    }

    /// Goes back by one; the state then, or none at the beginning.
    pub fn undo(&mut self) -> Option<&T> {
        let before = self.past.pop()?;
        self.future.push(std::mem::replace(&mut self.now, before));
        Some(&self.now)
    }

    /// Goes forward again by one; the state then, or none where nothing was undone.
    pub fn redo(&mut self) -> Option<&T> {
        let after = self.future.pop()?;
        self.past.push(std::mem::replace(&mut self.now, after));
        Some(&self.now)
    }

    /// Changes every state alike: what has come from elsewhere is in all of them.
    pub fn rewrite(&mut self, mut change: impl FnMut(&mut T)) {
        self.past.iter_mut().for_each(&mut change);
        change(&mut self.now);
        self.future.iter_mut().for_each(change);
    }

    /// Whether there is something to undo, and something to do again.
    pub fn can(&self) -> (bool, bool) {
        (!self.past.is_empty(), !self.future.is_empty())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn back_to_the_start_and_forward_to_the_end() {
        let mut history = History::new(0);
        for state in 1..=MOST_UNDONE {
            history.record(state);
        }
        let mut steps = 0;
        while history.undo().is_some() {
            steps += 1;
        }
        assert_eq!((steps, history.now), (MOST_UNDONE, 0));
        while history.redo().is_some() {}
        assert_eq!(history.now, MOST_UNDONE);
        assert_eq!(history.can(), (true, false));
    }

    #[test]
    fn the_oldest_is_let_go() {
        let mut history = History::new(0);
        for state in 1..=MOST_UNDONE + 5 {
            history.record(state);
        }
        while history.undo().is_some() {}
        assert_eq!(history.now, 5);
    }

    #[test]
    fn what_comes_from_elsewhere_is_not_undone() {
        let mut history = History::new((0, "own"));
        history.record((1, "own"));
        history.record((2, "own"));
        history.undo();
        history.rewrite(|state| state.1 = "other tab");
        assert_eq!(history.redo(), Some(&(2, "other tab")));
        assert_eq!(history.undo(), Some(&(1, "other tab")));
        assert_eq!(history.undo(), Some(&(0, "other tab")));
    }

    #[test]
    fn a_new_state_ends_what_was_undone() {
        let mut history = History::new("a");
        history.record("b");
        history.record("b");
        assert_eq!(history.undo(), Some(&"a"));
        history.record("c");
        assert_eq!(history.redo(), None);
        assert_eq!(history.undo(), Some(&"a"));
        assert_eq!(history.undo(), None);
    }
}
