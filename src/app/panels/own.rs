//! Your own quenchant: by its figures, by a measured curve of the probe or by a test coupon.

use super::own_coupon::CouponFields;
use super::own_found::FoundView;
use super::own_work::{BATH_RANGE_C, Own, Way, Work};
use crate::controls::{FileButton, Quantity, Segment, Typed, quantities};
use crate::errand::{OnScales, place_of};
use crate::state::bench;
use leptos::ev;
use leptos::prelude::*;
use recalesce::heat::{Figure, MediumChoice};
use recalesce::units::{TemperatureScale, parse_cooling_rate_k_per_s};
use recalesce_texts::grammar::at_the_head;
use recalesce_texts::page as texts;
use std::sync::Arc;
use wasm_bindgen::JsCast;
use web_sys::File;

/// The panel's identity in the document.
const ID: &str = "own";
/// Steps of a fit after which half of the rule is drawn; five to twenty are usual.
const HALF_WAY: f64 = 6.0;

/// Opens the panel and leads there.
pub(super) fn lead() {
    let panel = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(ID));
    let Some(panel) = panel else { return };
    // An attribute that has a right name can be set.
    let _ = panel.set_attribute("open", "");
    panel.scroll_into_view();
    let head = panel.query_selector("summary").ok().flatten();
    if let Some(head) = head.and_then(|head| head.dyn_into::<web_sys::HtmlElement>().ok()) {
        // One that cannot take the focus leaves it where it was.
        let _ = head.focus();
    }
}

fn quantity(figure: Figure, scale: TemperatureScale) -> Quantity {
    let [least, most] = figure.allowed();
    let range = (least, most);
    match figure {
        Figure::MaxRateAt => quantities::temperature(scale, range),
        Figure::MaxRate | Figure::RateAt300c => Quantity {
            show: Arc::new(move |rate| figure.format(rate, scale)),
            read: Arc::new(move |text| {
                parse_cooling_rate_k_per_s(text, scale).map_err(|e| e.to_string())
            }),
            range,
            step: scale.to_kelvin_difference(1.0),
        },
        _ => quantities::plain("\u{a0}s", 1, range, 0.5, texts::own::WRITE_A_TIME),
    }
    .optional()
}

#[component]
fn Figures(own: Own) -> impl IntoView {
    let bench = bench();
    let told = move |why: &OnScales| why[place_of(bench.scale.get())].clone();
    let fields = Figure::ALL.map(|figure| {
        view! {
            <Typed
                label=figure.words()
                quantity=Signal::derive(move || quantity(figure, bench.scale.get()))
                value=Signal::derive(move || {
                    own.figures.with(|all| all.get(figure)).unwrap_or(f64::NAN)
                })
                set=move |value: f64| {
                    let known = Some(value).filter(|value| !value.is_nan());
                    own.figures.update(|all| *all = all.with(figure, known));
                }
                fault=Signal::derive(move || {
                    own.work
                        .with(|work| match work {
                            Work::Refused(Some(of), why) if *of == figure => Some(at_the_head(&told(why))),
                            _ => None,
                        })
                })
            />
        }
    });
    view! { <div class="two">{fields}</div> }.into_any()
}

#[component]
fn Curve(own: Own) -> impl IntoView {
    // A browser edits a field line by line: it would stand still for seconds over a long curve.
    let pasted = move |paste: ev::ClipboardEvent| {
        let text = paste
            .clipboard_data()
            .and_then(|data| data.get_data("text/plain").ok());
        if let (Some(text), Some(area)) = (text, own.text.get_untracked()) {
            paste.prevent_default();
            // Refused only for a place that is not in the field.
            let _ = area.set_range_text(&text);
            own.keep();
        }
    };
    view! {
        <div class="field">
            <label for="own-curve">{texts::own::READINGS}</label>
            <textarea
                id="own-curve"
                class="text"
                node_ref=own.text
                on:paste=pasted
                on:input=move |_| own.keep()
                prop:value=own.kept_curve.get_value()
                rows="9"
                spellcheck="false"
                autocomplete="off"
                placeholder=texts::own::CURVE_EXAMPLE
            ></textarea>
        </div>
        <div class="actions">
            <FileButton
                words=texts::own::OPEN_FILE
                name=texts::own::PROBE_CURVE
                accept=".csv,.tsv,.txt,.dat,text/*"
                pick=move |file: File| own.read(&file)
            />
            <span class="hint">{texts::own::OR_DROP}</span>
            <span class="hint">
                {move || {
                    own.is_long.get().then_some(texts::own::CURVE_TOO_LONG_TO_KEEP)
                }}
            </span>
        </div>
        <div class="actions">
            <span class="hint">{texts::own::TEMPERATURES}</span>
            <Segment
                name=texts::own::CURVE_TEMPERATURES
                entries=vec![
                    (None, texts::own::AS_IT_SAYS),
                    (Some(TemperatureScale::Celsius), "°C"),
                    (Some(TemperatureScale::Fahrenheit), "°F"),
                ]
                chosen=own.scale
                pick=move |scale| own.scale.set(scale)
            />
        </div>
    }
    .into_any()
}

/// The button that starts and stops, and how it goes.
#[component]
fn Working(own: Own) -> impl IntoView {
    let bench = bench();
    let press = move |_| {
        if untrack(|| own.is_out()) {
            own.stop();
        } else {
            own.find(&bench.route.get_untracked());
        }
    };
    let rule = move || {
        own.work.with(|work| {
            let Work::Out(far) = work else { return None };
            let steps = far.map_or(0.0, |far| far.steps as f64);
            let words = far.map(|far| texts::own::fit_so_far(far.steps, far.rms_k));
            Some(view! {
                <progress aria-label=texts::own::FIT value=steps / (steps + HALF_WAY)></progress>
                <span class="hint" aria-hidden="true">
                    {words}
                </span>
            })
        })
    };
    let said = move || {
        own.work.with(|work| match work {
            Work::Still | Work::Refused(..) => "",
            Work::Out(_) => texts::general::WORKING_IT_OUT,
            Work::Stopped => texts::own::STOPPED,
            Work::Done => texts::own::FOUND,
        })
    };
    let told = move |why: &OnScales| why[place_of(bench.scale.get())].clone();
    let wrong = move || {
        own.work.with(|work| match work {
            Work::Refused(None, why) => Some(at_the_head(&told(why))),
            _ => None,
        })
    };
    view! {
        <div class="actions">
            <button type="button" class="press" class:go=move || !own.is_out() on:click=press>
                {move || if own.is_out() { texts::own::CANCEL } else { texts::own::FIND }}
            </button>
            <span role="status">{said}</span>
            {rule}
        </div>
        <p class="wrong" role="alert">
            {wrong}
        </p>
    }
    .into_any()
}

/// The panel. Nothing in it is made before it is opened.
#[component]
pub(crate) fn OwnPanel() -> impl IntoView {
    let bench = bench();
    let own = bench.route.with_untracked(Own::new);
    own.restore(bench);
    own.keep_changes();
    let was_opened = RwSignal::new(false);
    let of_route = Memo::new(move |_| bench.route.with(|route| route.quench.medium.clone()));
    Effect::new(move || {
        if was_opened.get() {
            of_route.with(|choice| match choice {
                MediumChoice::Own(medium) => own.show(medium),
                // What was typed at the last visit stays until another quenchant is used.
                _ if own.is_restored.get_value() => own.is_restored.set_value(false),
                MediumChoice::Named(_) | MediumChoice::At(_) => own.expect_bath(choice),
            });
        }
    });
    let dropped = move |drop: ev::DragEvent| {
        let files = drop.data_transfer().and_then(|data| data.files());
        if let Some(file) = files.and_then(|list| list.get(0)) {
            drop.prevent_default();
            own.read(&file);
        }
    };
    let inside = move || {
        was_opened.get().then(|| {
            view! {
                <div class="ways">
                    <div>
                        <Segment
                            name=texts::own::FROM
                            entries=vec![
                                (Way::Figures, texts::own::ITS_FIGURES),
                                (Way::Curve, texts::own::A_PROBE_CURVE),
                                (Way::Coupon, texts::own::A_TEST_COUPON),
                            ]
                            chosen=own.way
                            pick=move |way| own.way.set(way)
                        />
                        <div hidden=move || own.way.get() != Way::Figures>
                            <p class="hint">{texts::own::THOSE_YOU_HAVE}</p>
                            <Figures own=own />
                        </div>
                        <div hidden=move || own.way.get() != Way::Curve>
                            <p class="hint">
                                {texts::own::OF_THE_PROBE}
                            </p>
                            <Curve own=own />
                        </div>
                        <div hidden=move || own.way.get() != Way::Coupon>
                            <p class="hint">{texts::own::OF_A_COUPON}</p>
                            <CouponFields own=own />
                        </div>
                        <Typed
                            label=texts::own::BATH_IN_TEST
                            quantity=Signal::derive(move || quantities::temperature(
                                bench.scale.get(),
                                BATH_RANGE_C,
                            ))
                            value=own.bath_c
                            set=move |c| own.bath_c.set(c)
                        />
                        <Working own=own />
                    </div>
                    <FoundView own=own />
                </div>
            }
        })
    };
    view! {
        <details
            id=ID
            class="own"
            on:toggle=move |_| was_opened.set(true)
            on:dragover=move |drag: ev::DragEvent| drag.prevent_default()
            on:drop=dropped
        >
            <summary>{texts::piece::OWN_QUENCHANT}</summary>
            {inside}
        </details>
    }
    .into_any()
}
