//! The quench in slow motion: played, or moved to a time by hand, which is the place on the cooling
//! curve.

use super::along::{Along, POSITIONS, words_at};
use crate::charts;
use crate::plot::Plot;
use crate::state::bench;
use leptos::leptos_dom::helpers::IntervalHandle;
use leptos::prelude::*;
use recalesce::units::format_duration_s;
use recalesce_texts::page as texts;
use std::time::Duration;

/// Time between two pictures while it plays.
const BEAT: Duration = Duration::from_millis(40);
/// How far it moves from picture to picture: ten seconds from end to end.
const STRIDE: f64 = POSITIONS / 250.0;

/// The replay, computed once it is opened.
#[component]
pub(crate) fn ReplayInside(
    /// The place on the cooling curve.
    along: Along,
) -> impl IntoView {
    let bench = bench();
    let position = along.position();
    let playing = StoredValue::new(None::<IntervalHandle>);
    let is_playing = RwSignal::new(false);
    let replay = Memo::new(move |_| bench.replay());
    let now_s = Memo::new(move |_| along.now_s());
    let told = move || words_at(bench, now_s.get());
    let stop = move || {
        if let Some(handle) = playing.try_update_value(Option::take).flatten() {
            handle.clear();
        }
        is_playing.try_set(false);
    };
    let play = move || {
        if position.get_untracked() >= POSITIONS {
            position.set(0.0);
        }
        let beat = move || {
            position.update(|p| *p = (*p + STRIDE).min(POSITIONS));
            if position.get_untracked() >= POSITIONS {
                stop();
            }
        };
        if let Ok(handle) = set_interval_with_handle(beat, BEAT) {
            playing.set_value(Some(handle));
            is_playing.set(true);
        }
    };
    on_cleanup(stop);
    view! {
        <div class="replay">
            <button
                type="button"
                on:click=move |_| if is_playing.get_untracked() { stop() } else { play() }
            >
                {move || if is_playing.get() { texts::quench::STOP } else { texts::quench::PLAY }}
            </button>
            <input
                type="range"
                min="0"
                max=POSITIONS
                aria-label=texts::quench::TIME_SINCE_LEAVING
                aria-valuetext=move || format_duration_s(now_s.get())
                prop:value=move || position.get()
                on:input:target=move |event| {
                    stop();
                    position.set(event.target().value_as_number());
                }
            />
        </div>
        <Plot
            class="replay-view" file="replay"
            scene=move |w, h| {
                replay
                    .with(|r| {
                        let replay = r.as_ref()?;
                        let now_s = now_s.get().min(replay.end_s());
                        Some(charts::replay_scene(bench, replay, now_s, w, h))
                    })
            }
            nothing=Signal::stored(texts::charts::NOT_KNOWN.to_owned())
        />
        <p class="hint then">{told}</p>
    }
    .into_any()
}
