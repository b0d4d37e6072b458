//! A place on the cooling curve: pointed at on the chart, or moved to by hand. What the piece is there
//! is told in one line below.

use super::hardenability::constituents;
use crate::plot::Shown;
use crate::state::Bench;
use leptos::ev::PointerEvent;
use leptos::prelude::*;
use recalesce::chart::hit::nearest;
use recalesce::route::{Outcome, Stopped, place_name};
use recalesce::units::{
    TemperatureScale, format_cooling_rate, format_duration_s, format_hrc, format_hv,
    format_temperature,
};
use wasm_bindgen::JsCast;

/// Positions of a slider over the quench.
pub(super) const POSITIONS: f64 = 400.0;
/// Time at the first position after the start, s; from there on the logarithm of time runs evenly,
/// as on the chart.
const FIRST_S: f64 = 0.05;
/// Where the place stands at first.
const FIRST_POSITION: f64 = 0.45 * POSITIONS;
/// How near to the curve it is pointed at, px: by mouse or pen, by finger.
const REACH_PX: [f64; 2] = [14.0, 24.0];

/// The time at a position of the slider, s.
pub(super) fn time_s(position: f64, end_s: f64) -> f64 {
    if position <= 0.0 {
        return 0.0;
    }
    let end_s = end_s.max(2.0 * FIRST_S);
    FIRST_S * (end_s / FIRST_S).powf((position / POSITIONS).min(1.0))
}

/// The position of a time, s.
fn position_of(time_s: f64, end_s: f64) -> f64 {
    let end_s = end_s.max(2.0 * FIRST_S);
    let share = (time_s.max(FIRST_S) / FIRST_S).ln() / (end_s / FIRST_S).ln();
    (POSITIONS * share).round().clamp(1.0, POSITIONS)
}

/// When the quench ends, s.
fn end_s(outcome: Option<&Outcome>) -> f64 {
    let curve = outcome.and_then(|o| o.quench.deciding_curve());
    curve
        .and_then(|c| c.time_s.last().copied())
        .unwrap_or_default()
}

/// Temperature and rate.
fn falls(then: &Stopped, scale: TemperatureScale) -> String {
    let rate = format_cooling_rate(then.rate_k_per_s.abs(), scale);
    let way = if then.rate_k_per_s < 0.0 {
        "rising"
    } else {
        "falling"
    };
    format!(
        "{}, {way} by {rate}",
        format_temperature(then.temperature_c, scale)
    )
}

/// What the piece is at a time of its quench, and what it would be if it were stopped there.
pub(super) fn words_at(bench: Bench, time_s: f64) -> Option<String> {
    let then = bench.stopped_at(time_s)?;
    Some(format!(
        "At the {}: {}; so far {}. Quenched out at once from here: {}.",
        place_name(then.place),
        falls(&then, bench.scale.get()),
        constituents(&then.so_far),
        then.hardness
            .hrc()
            .map_or_else(|| format_hv(then.hardness.hv), format_hrc)
    ))
}

/// The place on the curve.
#[derive(Clone, Copy)]
pub(crate) struct Along {
    bench: Bench,
    position: RwSignal<f64>,
}

impl Along {
    pub(super) fn new(bench: Bench) -> Self {
        Self {
            bench,
            position: RwSignal::new(FIRST_POSITION),
        }
    }

    fn now_s(self) -> f64 {
        time_s(self.position.get(), end_s(self.bench.outcome().as_deref()))
    }

    /// Takes the place that is pointed at, if it is on the curve. A press that holds a handle is not
    /// pointing.
    pub(crate) fn point(self, shown: Shown, event: &PointerEvent) {
        if event.buttons() != 0 && event.type_() == "pointermove" {
            return;
        }
        if let Some(time_s) = self.pointed_s(shown, event) {
            let end_s = end_s(self.bench.outcome_now().as_deref());
            self.position.set(position_of(time_s, end_s));
        }
    }

    fn pointed_s(self, shown: Shown, event: &PointerEvent) -> Option<f64> {
        let plane = shown.get_untracked()?.plane;
        let outcome = self.bench.outcome_now()?;
        let curve = outcome.quench.deciding_curve()?;
        let points: Vec<[f64; 2]> = curve
            .time_s
            .iter()
            .zip(&curve.temperature_c)
            .map(|(t, c)| [plane.x_px(plane.x.hold(*t)), plane.y_px(plane.y.hold(*c))])
            .collect();
        let chart = event
            .current_target()?
            .dyn_into::<web_sys::Element>()
            .ok()?;
        let corner = chart.get_bounding_client_rect();
        let pixel = [
            f64::from(event.client_x()) - corner.left(),
            f64::from(event.client_y()) - corner.top(),
        ];
        let reach_px = REACH_PX[usize::from(event.pointer_type() == "touch")];
        let hit = nearest([&points[..]], pixel, reach_px)?;
        Some(plane.to_data(hit.at)[0])
    }

    /// Where the place lies on the chart, px.
    fn at_px(self, shown: Shown) -> Option<[f64; 2]> {
        let plane = shown.get()?.plane;
        let time_s = self.now_s();
        let outcome = self.bench.outcome()?;
        let temperature_c = outcome.quench.deciding_curve()?.temperature_at_s(time_s)?;
        Some([
            plane.x_px(plane.x.hold(time_s)),
            plane.y_px(plane.y.hold(temperature_c)),
        ])
    }

    /// The ring that marks the place on the chart.
    pub(crate) fn ring(self, shown: Shown) -> AnyView {
        let pixels = |at: Option<f64>| at.map(|px| format!("{px:.1}px"));
        view! {
            <span
                class="along-at"
                aria-hidden="true"
                hidden=move || self.at_px(shown).is_none()
                style:left=move || pixels(self.at_px(shown).map(|[x, _]| x))
                style:top=move || pixels(self.at_px(shown).map(|[_, y]| y))
            ></span>
        }
        .into_any()
    }

    /// The slider of the place, and what the piece is there.
    pub(crate) fn line(self) -> AnyView {
        let Self {
            bench, position, ..
        } = self;
        let said = move || {
            let now_s = self.now_s();
            let time = format_duration_s(now_s);
            let falls = bench
                .stopped_at(now_s)
                .map(|then| falls(&then, bench.scale.get()));
            [Some(time), falls]
                .into_iter()
                .flatten()
                .collect::<Vec<_>>()
                .join(": ")
        };
        view! {
            <div class="replay">
                <input
                    type="range"
                    min="0"
                    max=POSITIONS
                    aria-label="Place on the cooling curve"
                    aria-valuetext=said
                    prop:value=move || position.get()
                    on:input:target=move |event| position.set(event.target().value_as_number())
                />
            </div>
            <p class="hint along">
                {move || format_duration_s(self.now_s())} ". "
                {move || words_at(bench, self.now_s())}
            </p>
        }
        .into_any()
    }
}
