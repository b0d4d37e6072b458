//! A place on the cooling curve: pointed at on the chart, or moved to by hand. What the piece is there
//! is told in one line below, and how warm it is across the section in what opens below that.

use super::hardenability::constituents;
use super::opening::Opening;
use crate::parts::panels::Panel;
use crate::plot::Shown;
use crate::state::Bench;
use leptos::ev::PointerEvent;
use leptos::prelude::*;
use recalesce::chart::hit::nearest;
use recalesce::chart::plane::Plane;
use recalesce::route::{Outcome, Stopped, place_name};
use recalesce::units::{
    TemperatureScale, format_cooling_rate, format_duration_s, format_hrc, format_hv,
    format_temperature,
};
use recalesce_texts::page as texts;
use wasm_bindgen::JsCast;

/// Positions of a slider over the quench.
pub(super) const POSITIONS: f64 = 400.0;
/// Time at the first position after the start, s: where the chart's axis begins. From there on the
/// logarithm of time runs evenly, as on the chart.
const FIRST_S: f64 = 0.1;
/// A place that cools by less is not told to cool: a centre that nothing has reached yet, or one that is as
/// cold as its bath, K/s.
const STANDS_STILL_K_PER_S: f64 = 0.02;
/// Where the place stands at first.
const FIRST_POSITION: f64 = 0.45 * POSITIONS;
/// How near to the curve it is pointed at, px: by mouse or pen, by finger.
const REACH_PX: [f64; 2] = [14.0, 24.0];
/// Half the width of the slider's thumb, px: it stands over a time when its middle does.
const HALF_THUMB_PX: f64 = 8.0;

/// What the slider runs over.
#[derive(Clone, Copy)]
struct Span {
    /// When the quench ends, s.
    end_s: f64,
    /// How much of it the chart shows, s.
    seen_s: f64,
}

impl Span {
    /// The time at a position of the slider, s: the last is the end, shown or not.
    fn time_s(self, position: f64) -> f64 {
        if position <= 0.0 {
            return 0.0;
        }
        if position >= POSITIONS {
            return self.end_s;
        }
        FIRST_S * (self.seen_s / FIRST_S).powf(position / POSITIONS)
    }

    /// The position of a time, s.
    fn position_of(self, time_s: f64) -> f64 {
        let share = (time_s.max(FIRST_S) / FIRST_S).ln() / (self.seen_s / FIRST_S).ln();
        (POSITIONS * share).round().clamp(1.0, POSITIONS)
    }
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
    if then.time_s <= 0.0 {
        let start = format_temperature(then.temperature_c, scale);
        return texts::quench::leaving_furnace(&start);
    }
    if then.rate_k_per_s.abs() < STANDS_STILL_K_PER_S {
        let still = format_temperature(then.temperature_c, scale);
        return texts::quench::hardly_cooling(&still);
    }
    let rate = format_cooling_rate(then.rate_k_per_s.abs(), scale);
    let way = if then.rate_k_per_s < 0.0 {
        texts::quench::RISING
    } else {
        texts::quench::FALLING
    };
    texts::quench::at_a_rate(&format_temperature(then.temperature_c, scale), way, &rate)
}

/// What the piece is at a time of its quench, and what it would be if it were stopped there.
pub(super) fn words_at(bench: Bench, time_s: f64) -> Option<String> {
    let then = bench.stopped_at(time_s)?;
    Some(texts::quench::place_then(
        place_name(then.place),
        &falls(&then, bench.scale.get()),
        &constituents(&then.so_far),
        &then
            .hardness
            .hrc()
            .map_or_else(|| format_hv(then.hardness.hv), format_hrc),
    ))
}

/// Temperatures of the places with names at a time.
fn across_words(bench: Bench, time_s: f64) -> Option<String> {
    let outcome = bench.outcome()?;
    let scale = bench.scale.get();
    let places: Vec<String> = outcome
        .quench
        .curves
        .iter()
        .filter_map(|curve| {
            let then = format_temperature(curve.temperature_at_s(time_s)?, scale);
            Some(format!("{} {then}", place_name(curve.place)))
        })
        .collect();
    Some(texts::quench::across_section(&places.join(", ")))
}

/// The place on the curve, and the chart on which it stands.
#[derive(Clone, Copy)]
pub(crate) struct Along {
    bench: Bench,
    position: RwSignal<f64>,
    chart: RwSignal<Option<Shown>>,
}

impl Along {
    pub(super) fn new(bench: Bench) -> Self {
        Self {
            bench,
            position: RwSignal::new(FIRST_POSITION),
            chart: RwSignal::new(None),
        }
    }

    /// Takes the chart on which the place stands.
    pub(super) fn stand_on(self, chart: Shown) {
        self.chart.set(Some(chart));
    }

    /// The slider's position.
    pub(super) const fn position(self) -> RwSignal<f64> {
        self.position
    }

    fn plane(self) -> Option<Plane> {
        self.chart.get()?.get().map(|scene| scene.plane)
    }

    fn span(self) -> Span {
        let end_s = end_s(self.bench.outcome().as_deref()).max(2.0 * FIRST_S);
        let seen_s = self.plane().map_or(end_s, |plane| plane.x.high());
        Span {
            end_s,
            seen_s: seen_s.min(end_s),
        }
    }

    /// The time of the place, s from leaving the furnace.
    pub(super) fn now_s(self) -> f64 {
        self.span().time_s(self.position.get())
    }

    /// Where the slider begins and how wide it is, so that its thumb stands below the ring, px.
    fn track_px(self) -> Option<[f64; 2]> {
        let seen_s = self.span().seen_s;
        let x = self.plane()?;
        let [left, right] = [FIRST_S, seen_s].map(|time_s| x.x_px(x.x.hold(time_s)));
        Some([left - HALF_THUMB_PX, right - left + 2.0 * HALF_THUMB_PX])
    }

    /// Takes the place that is pointed at, if it is on the curve. A press that holds a handle is not
    /// pointing.
    pub(crate) fn point(self, event: &PointerEvent) {
        if event.buttons() != 0 && event.type_() == "pointermove" {
            return;
        }
        if let Some(time_s) = untrack(|| self.pointed_s(event)) {
            let span = untrack(|| self.span());
            self.position.set(span.position_of(time_s));
        }
    }

    fn pointed_s(self, event: &PointerEvent) -> Option<f64> {
        let plane = self.plane()?;
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
    fn at_px(self) -> Option<[f64; 2]> {
        let plane = self.plane()?;
        let time_s = self.now_s();
        let outcome = self.bench.outcome()?;
        let temperature_c = outcome.quench.deciding_curve()?.temperature_at_s(time_s)?;
        Some([
            plane.x_px(plane.x.hold(time_s)),
            plane.y_px(plane.y.hold(temperature_c)),
        ])
    }

    /// The ring that marks the place on the chart.
    pub(crate) fn ring(self) -> AnyView {
        let pixels = |at: Option<f64>| at.map(|px| format!("{px:.1}px"));
        view! {
            <span
                class="along-at"
                aria-hidden="true"
                hidden=move || self.at_px().is_none()
                style:left=move || pixels(self.at_px().map(|[x, _]| x))
                style:top=move || pixels(self.at_px().map(|[_, y]| y))
            ></span>
        }
        .into_any()
    }

    /// The slider of the place, and what the piece is there.
    pub(crate) fn line(self) -> AnyView {
        let Self {
            bench, position, ..
        } = self;
        let pixels = move |side: usize| {
            self.track_px()
                .and_then(|track| track.get(side).map(|px| format!("{px:.1}px")))
        };
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
            <label class="place">
                <span class="hint">{texts::quench::PLACE_ON_CURVE}</span>
                <input
                    type="range"
                    min="0"
                    max=POSITIONS
                    aria-valuetext=said
                    style:margin-left=move || pixels(0)
                    style:width=move || pixels(1)
                    prop:value=move || position.get()
                    on:input:target=move |event| position.set(event.target().value_as_number())
                />
            </label>
            <p class="hint along">
                {move || {
                    let now_s = self.now_s();
                    let then = words_at(bench, now_s)?;
                    Some(format!("{}. {then}", format_duration_s(now_s)))
                }}
            </p>
            <p class="hint across">{move || across_words(bench, self.now_s())}</p>
            <Opening
                title=texts::quench::IN_SLOW_MOTION
                panel=Panel::Replay(self)
            />
        }
        .into_any()
    }
}
