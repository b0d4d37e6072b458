//! How deep this steel hardens: the continuous-cooling diagram and the end-quench test, computed
//! once they are opened.

use super::save_table::SaveTable;
use crate::charts;
use crate::plot::Plot;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::route::{
    CRITICAL_HARDENED, ContinuousDiagram, EndQuenchTest, continuous_diagram, end_quench_test,
};
use recalesce::sources::dividing_factor_fit;
use recalesce::transform::{
    BarPoint, EndQuenchMethod, Fractions, measured_heat, read_bar_points, write_bar_points,
};
use recalesce::units::{
    LengthUnit, TemperatureScale, format_cooling_rate, format_fixed, format_hrc, format_length,
    format_percent, format_temperature,
};
use recalesce_texts::page as texts;

/// Temperature that the rates are told at, °C.
const RATE_AT_C: f64 = 700.0;
/// Every how many coolings of the fan one has a row.
const ROWS: usize = 3;
/// A constituent is named in the table from this part of the piece on.
const NAMED: f64 = 0.01;

/// What a piece consists of, in words.
pub(super) fn constituents(fractions: &Fractions) -> String {
    let parts: Vec<String> = charts::amounts(fractions)
        .into_iter()
        .filter(|(_, fraction)| *fraction >= NAMED)
        .map(|(constituent, fraction)| {
            format!("{} {}", constituent.name(), format_percent(fraction))
        })
        .collect();
    parts.join(", ")
}

/// The coolings of the fan as a table.
fn coolings(found: &ContinuousDiagram, scale: TemperatureScale) -> AnyView {
    let rows: Vec<_> = found
        .diagram
        .coolings
        .iter()
        .zip(&found.hardness)
        .step_by(ROWS)
        .map(|(cooling, hardness)| {
            view! {
                <tr>
                    <th scope="row">{format_cooling_rate(cooling.rate_k_per_s, scale)}</th>
                    <td>{constituents(&cooling.fractions)}</td>
                    <td>{hardness.map(charts::short_hardness)}</td>
                </tr>
            }
        })
        .collect();
    view! {
        <table class="fan">
            <thead>
                <tr>
                    <th scope="col">{texts::hardenability::rate_at(&format_temperature(RATE_AT_C, scale))}</th>
                    <th scope="col">{texts::hardenability::IN_THE_END}</th>
                    <th scope="col">{texts::hardenability::HARDNESS}</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
        <SaveTable file="continuous-cooling" />
    }
    .into_any()
}

fn critical(found: &ContinuousDiagram, scale: TemperatureScale) -> String {
    let told: Vec<String> = CRITICAL_HARDENED
        .iter()
        .zip(&found.critical)
        .map(|(part, critical)| {
            texts::hardenability::rate_for(
                &format_cooling_rate(critical.rate_k_per_s, scale),
                &format_percent(*part),
            )
        })
        .collect();
    let at = format_temperature(RATE_AT_C, scale);
    texts::hardenability::slowest_cooling(&at, &told.join(", "))
}

fn depth(found: &EndQuenchTest, unit: LengthUnit) -> String {
    let ideal = format_length(found.curve.ideal_diameter_mm, unit);
    let rounds: Vec<String> = found
        .critical_diameters
        .iter()
        .map(|round| {
            let severity = format_fixed(round.severity_per_in, 2);
            let diameter = format_length(round.diameter_mm, unit);
            texts::hardenability::round_at(&diameter, round.quench, &severity)
        })
        .collect();
    let like: Vec<String> = found
        .like_piece
        .iter()
        .map(|round| {
            texts::hardenability::round_in(&format_length(round.diameter_mm, unit), round.quench)
        })
        .collect();
    let band = if found.measured.is_some() {
        texts::hardenability::SCATTER
    } else {
        texts::hardenability::WIDER
    };
    let by = match found.curve.method {
        EndQuenchMethod::AstmA255 => texts::hardenability::BY_FACTORS,
        EndQuenchMethod::Measured => texts::hardenability::BY_OWN_TEST,
        EndQuenchMethod::Kinetics => texts::hardenability::FROM_CURVES,
    };
    texts::hardenability::ideal_diameter(
        &ideal,
        by,
        &rounds.join(", "),
        &format_hrc(found.curve.band_hrc),
        band,
        &dividing_factor_fit::LEFT_OUT.words(),
    ) + &found
        .piece_mm
        .filter(|_| !like.is_empty())
        .map_or_else(String::new, |mm| {
            texts::hardenability::piece_cools_like(&format_length(mm, unit), &like.join(", "))
        })
        + &found.measured.map_or_else(String::new, |heat| {
            texts::hardenability::begins_after(&format_fixed(heat.delay_factor, 2))
        })
}

/// An end-quench test of the heat, a distance and a hardness a line.
#[component]
fn OwnTest() -> impl IntoView {
    let bench = bench();
    let written = RwSignal::new(
        bench
            .route
            .with_untracked(|r| write_bar_points(&r.end_quench)),
    );
    let points = Memo::new(move |_| written.with(|text| read_bar_points(text)));
    // What is wrong is told here, beside the field; the route keeps what made sense last.
    let wrong = Memo::new(move |_| match points.get() {
        Err(error) => Some(error.to_string()),
        Ok(points) if points.is_empty() => None,
        Ok(points) => {
            let composition = bench.route.with(|r| r.composition);
            measured_heat(&composition, &points)
                .err()
                .map(|e| e.to_string())
        }
    });
    let take = move |text: String| {
        written.set(text);
        if wrong.get_untracked().is_none()
            && let Ok(points) = points.get_untracked()
        {
            bench.change(|route| route.end_quench = points);
        }
    };
    // A route that comes onto the bench brings its own test, or none.
    Effect::new(move |before: Option<Vec<BarPoint>>| {
        let kept = bench.route.with(|r| r.end_quench.clone());
        let is_written = points.with_untracked(|p| p.as_ref().is_ok_and(|p| *p == kept));
        if before.is_some_and(|before| before != kept) && !is_written {
            written.set(write_bar_points(&kept));
        }
        kept
    });
    view! {
        <label class="field">
            {texts::hardenability::OWN_TEST}
            <textarea
                rows="4"
                aria-invalid=move || wrong.with(Option::is_some).to_string()
                prop:value=written
                on:input:target=move |event| take(event.target().value())
            ></textarea>
        </label>
        <p class="wrong" role="status">
            {wrong}
        </p>
    }
    .into_any()
}

/// The continuous-cooling diagram.
#[component]
pub(crate) fn ContinuousInside() -> impl IntoView {
    let bench = bench();
    let found = Memo::new(move |_| {
        // A temper that is dragged changes nothing here.
        bench.quenched.with(|route| {
            let outcome = bench.outcome_now()?;
            continuous_diagram(route, &outcome).ok()
        })
    });
    view! {
        <Plot
            class="tall" file="continuous-cooling"
            scene=move |w, h| {
                found.with(|f| Some(charts::continuous_scene(bench, f.as_ref()?, w, h)))
            }
            nothing=Signal::stored(texts::charts::NOT_KNOWN.to_owned())
        />
        <p class="hint">{move || found.with(|f| f.as_ref().map(|f| critical(f, bench.scale.get())))}</p>
        {move || found.with(|f| f.as_ref().map(|f| coolings(f, bench.scale.get())))}
    }
    .into_any()
}

/// The points of the end-quench curve with their band, and the standard's where it tells them.
fn points(found: &EndQuenchTest, unit: LengthUnit) -> Vec<Vec<String>> {
    let curve = &found.curve;
    let titles = [
        texts::hardenability::distance(unit.symbol()),
        texts::hardenability::HARDNESS_HRC.to_owned(),
        texts::hardenability::BAND_HRC.to_owned(),
        texts::hardenability::BY_POLYNOMIALS.to_owned(),
    ];
    let bands = found.band_hrc();
    let rows = curve.distance_mm.iter().enumerate().map(|(at, &mm)| {
        let hrc = |values: Option<&[f64]>| {
            let value = values.and_then(|values| values.get(at));
            value.map_or_else(String::new, |&value| format_fixed(value, 1))
        };
        vec![
            format_fixed(unit.of_mm(mm), 3),
            hrc(Some(&curve.hrc)),
            hrc(Some(&bands)),
            hrc(curve.standard_hrc.as_deref()),
        ]
    });
    std::iter::once(titles.to_vec()).chain(rows).collect()
}

/// The end-quench bar.
#[component]
pub(crate) fn EndQuenchInside() -> impl IntoView {
    let bench = bench();
    let found = Memo::new(move |_| {
        // A temper that is dragged changes nothing here.
        bench.quenched.with(|route| {
            let outcome = bench.outcome_now()?;
            end_quench_test(route, &outcome).ok()
        })
    });
    view! {
        <Plot
            class="history" file="end-quench"
            scene=move |w, h| {
                found.with(|f| Some(charts::end_quench_scene(bench, f.as_ref()?, w, h)))
            }
            nothing=Signal::stored(texts::charts::NOT_KNOWN.to_owned())
        />
        <SaveTable
            file="end-quench-curve"
            rows=move || {
                found
                    .with_untracked(|found| {
                        Some(points(found.as_ref()?, bench.length.get_untracked()))
                    })
            }
        />
        <p class="hint">
            {move || found.with(|f| f.as_ref().map(|f| depth(f, bench.length.get())))}
        </p>
        <OwnTest />
    }
    .into_any()
}
