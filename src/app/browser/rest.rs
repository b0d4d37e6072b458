//! What follows something else once that rests: for what takes too long to be worked out at every move of
//! a drag.

use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use std::time::Duration;

/// So long without a change is a rest: between two moves of a hand that drags there is less.
const REST: Duration = Duration::from_millis(150);

/// The value that a memo had when it last rested; at first the one that it has.
pub(crate) fn at_rest<T: Clone + PartialEq + Send + Sync + 'static>(of: Memo<T>) -> ReadSignal<T> {
    let (rested, set_rested) = signal(of.get_untracked());
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    let stop = move || {
        if let Some(waiting) = waiting.try_update_value(Option::take).flatten() {
            waiting.clear();
        }
    };
    Effect::new(move || {
        let now = of.get();
        stop();
        if rested.with_untracked(|rested| *rested == now) {
            return;
        }
        let rest = move || {
            set_rested.try_set(now);
        };
        let _ = waiting.try_set_value(set_timeout_with_handle(rest, REST).ok());
    });
    on_cleanup(stop);
    rested
}
