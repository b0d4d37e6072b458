//! The head of the page: name, places, units, theme.

use crate::browser::print::print;
use crate::browser::theme::{self, Theme};
use crate::state::{Bench, Place, bench};
use leptos::prelude::*;
use recalesce::units::{LengthUnit, TemperatureScale};
use recalesce_texts::page as texts;

/// The curve of a steel that cools and glows back: the project's sign.
#[component]
pub(super) fn Sign(
    /// Name of its colours in the document: a sign that is not shown lends none to another.
    colours: &'static str,
) -> impl IntoView {
    let drawn = format!(
        r##"<linearGradient id="{colours}" x2="1"><stop stop-color="#ffc754"/><stop offset=".4" stop-color="#e45926"/><stop offset=".52" stop-color="#ef6d2d"/><stop offset=".8" stop-color="#8b110b"/><stop offset="1" stop-color="#670507"/></linearGradient><path d="M1 2.5C4 9 7 13 11 14C14 14.5 14 8.5 17.5 8.5C21 8.5 20 17 29 17.5" stroke="url(#{colours})" stroke-width="2.6" fill="none"/>"##
    );
    view! {
        <svg width="30" height="20" viewBox="0 0 30 20" aria-hidden="true" inner_html=drawn></svg>
    }
}

/// An arrow that turns back.
const TURN: &str = r#"<svg width="15" height="13" viewBox="0 0 15 13" stroke="currentColor" stroke-width="1.6" fill="none" aria-hidden="true"><path d="M1 5H9.5A3.7 3.7 0 0 1 9.5 12.2H5M4.6 1.2L1 5L4.6 8.8"/></svg>"#;

/// Two sliders: what opens the settings where there is no room for them.
const SLIDERS: &str = r#"<svg width="18" height="14" viewBox="0 0 18 14" stroke="currentColor" stroke-width="1.6" aria-hidden="true"><path d="M0 3.5H9M14 3.5H18M0 10.5H4M9 10.5H18M11.5 1V6M6.5 8V13"/></svg>"#;

/// Goes to the card, and prints it once it is there; of a route without an outcome it tells why only.
fn print_card(bench: Bench) {
    bench.place.set(Place::Card);
    bench.parts.places.then(bench, move |_| {
        if !bench.computed.with_untracked(|c| c.error.is_some()) {
            print();
        }
    });
}

/// Two ways to show things, one of them pressed. Plain functions: signals of a type for each setting would
/// all be loaded at first.
struct Setting {
    name: &'static str,
    words: [&'static str; 2],
    is_second: fn(Bench) -> bool,
    pick_second: fn(Bench, bool),
}

const SETTINGS: [Setting; 4] = [
    Setting {
        name: texts::header::TEMPERATURES,
        words: ["°C", "°F"],
        is_second: |bench| bench.scale.get() == TemperatureScale::Fahrenheit,
        pick_second: |bench, is_second| {
            bench.scale.set(if is_second {
                TemperatureScale::Fahrenheit
            } else {
                TemperatureScale::Celsius
            });
        },
    },
    Setting {
        name: texts::header::LENGTHS,
        words: ["mm", "in"],
        is_second: |bench| bench.length.get() == LengthUnit::Inch,
        pick_second: |bench, is_second| {
            bench.length.set(if is_second {
                LengthUnit::Inch
            } else {
                LengthUnit::Millimetre
            });
        },
    },
    Setting {
        name: texts::header::DECIMALS,
        words: ["0.5", "0,5"],
        is_second: |bench| bench.has_decimal_comma.get(),
        pick_second: |bench, is_second| {
            bench
                .parts
                .panels
                .then(bench, move |part| (part.show_comma)(bench, is_second));
        },
    },
    Setting {
        name: texts::header::THEME,
        words: [texts::header::DAY, texts::header::SHOP],
        is_second: |bench| bench.theme.get() == Theme::Shop,
        pick_second: |bench, is_second| {
            let picked = if is_second { Theme::Shop } else { Theme::Day };
            theme::set(picked);
            bench.is_theme_chosen.set(true);
            bench.theme.set(picked);
        },
    },
];

/// How things are shown. Its words are signs, not to be shown otherwise.
fn settings(bench: Bench) -> AnyView {
    let row = |setting: &Setting| {
        let (is_second, pick_second) = (setting.is_second, setting.pick_second);
        let buttons = setting
            .words
            .into_iter()
            .zip([false, true])
            .map(|(word, second)| {
                view! {
                    <button
                        type="button"
                        aria-pressed=move || (is_second(bench) == second).to_string()
                        on:click=move |_| pick_second(bench, second)
                    >
                        {word}
                    </button>
                }
            });
        view! {
            <span class="seg" role="group" aria-label=setting.name translate="no">
                {buttons.collect_view()}
            </span>
        }
    };
    SETTINGS.iter().map(row).collect_view().into_any()
}

/// The head.
#[component]
pub(crate) fn Header() -> impl IntoView {
    let bench = bench();
    let places = [
        (Place::Bench, texts::header::BENCH),
        (Place::Decide, texts::header::DECIDE),
        (Place::Experiments, texts::header::EXPERIMENTS),
        (Place::Shelf, texts::header::SHELF),
        (Place::Logbook, texts::header::LOGBOOK),
        (Place::Sources, texts::header::SOURCES),
    ]
    .map(|(place, word)| {
        view! {
            <button
                type="button"
                aria-current=move || (bench.place.get() == place).then_some("page")
                on:click=move |_| bench.go_to(place)
            >
                {word}
            </button>
        }
    });
    // The logbook has an undo of its own, and nothing of bench and shelf is seen there.
    let is_seen = move || bench.place.get() != Place::Logbook;
    view! {
        <header class="head">
            <h1 class="name">
                <Sign colours="sign" />
                {texts::header::PROJECT}
            </h1>
            <nav class="places" aria-label=texts::header::PLACES>
                {places}
            </nav>
            <div class="tools">
                <span class="seg undo" role="group" aria-label=texts::header::UNDO_AND_REDO>
                    <button
                        type="button"
                        title=texts::header::UNDO_KEYS
                        aria-label=texts::header::UNDO_LAST
                        disabled=move || !(bench.undo.can.get().0 && is_seen())
                        on:click=move |_| bench.undo.undo()
                        inner_html=TURN
                    ></button>
                    <button
                        type="button"
                        title=texts::header::REDO_KEYS
                        aria-label=texts::header::REDO_UNDONE
                        disabled=move || !(bench.undo.can.get().1 && is_seen())
                        on:click=move |_| bench.undo.redo()
                    >
                        <span class="mirrored" inner_html=TURN></span>
                    </button>
                </span>
                <button
                    type="button"
                    class="press go"
                    on:click=move |_| print_card(bench)
                >
                    {texts::header::PRINT_CARD}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| {
                        bench.parts.places.then(bench, move |part| (part.keep)(bench))
                    }
                >
                    {texts::header::KEEP_ON_SHELF}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| {
                        bench.parts.places.then(bench, move |part| (part.log)(bench));
                    }
                >
                    {texts::header::LOG_A_RUN}
                </button>
                // Empty: the settings stand beside it, and with room they are always shown.
                <details class="phone-only">
                    <summary
                        class="press"
                        aria-label=texts::header::HOW_SHOWN
                        inner_html=SLIDERS
                    ></summary>
                </details>
                {settings(bench)}
            </div>
        </header>
    }
    .into_any()
}
