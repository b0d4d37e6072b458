//! The card: one sheet to follow at the furnace, as it will be on paper.

use super::header::Sign;
use super::outcome::phase_word;
use super::save_table::SaveTable;
use crate::browser::print::print;
use crate::charts;
use crate::link;
use crate::state::{Bench, Place, bench};
use leptos::prelude::*;
use recalesce::chart::{Palette, Scene, oxide, phase_bar, qr, svg, swatch};
use recalesce::route::{Card, CardRow, Step, StepColour, card};
use recalesce::units::format_percent;
use recalesce_texts::page as texts;

/// Section and phase bar on the card, CSS pixels.
const SECTION_PX: [f64; 2] = [340.0, 96.0];
const BAR_PX: [f64; 2] = [330.0, 18.0];
/// Side of the squares of the phase key, CSS pixels.
const SWATCH_PX: f64 = 12.0;
/// Least volume fraction that is told.
const TOLD: f64 = 0.005;
/// Longest address that is printed beside its code, characters: one that can be typed.
const LONGEST_TYPED: usize = 120;

/// A chart in black ink, as a vector.
fn drawn(scene: &Scene) -> String {
    // A chart that cannot be drawn leaves the words.
    svg::document_on(scene, &Palette::PRINT, None).unwrap_or_default()
}

/// The square in the colour of a step, and what the shop calls it where it is an oxide.
fn colour(colour: Option<StepColour>) -> impl IntoView {
    let (css, name) = match colour {
        Some(StepColour::Glow(temperature_c)) if charts::glows(temperature_c) => {
            (charts::glow_css(temperature_c), "")
        }
        Some(StepColour::Oxide(temperature_c)) => (
            charts::oxide_css(temperature_c),
            oxide::oxide_name(temperature_c),
        ),
        _ => return None,
    };
    Some(view! {
        <svg width="34" height="20" aria-hidden="true">
            <rect x=".5" y=".5" width="33" height="19" fill=css></rect>
        </svg>
        <small>{name}</small>
    })
}

/// Rows up to which a page has room for large ones.
const ROOMY_ROWS: usize = 6;

fn row(row: CardRow) -> impl IntoView {
    let has_cautions = !row.cautions.is_empty();
    let cautions = has_cautions.then(|| {
        view! {
            <tr class="mind">
                <td></td>
                <td colspan="5">{row.cautions.join(" ")}</td>
            </tr>
        }
    });
    view! {
        <tr class:minded=has_cautions>
            <td>
                <i></i>
            </td>
            <th scope="row">
                {row.title}
                {row.after.map(|after| view! { <small>{texts::card::then(&after)}</small> })}
            </th>
            <td>
                <b>{row.set}</b>
                <small>{row.detail}</small>
            </td>
            <td>{colour(row.colour)}</td>
            <td>{row.look_for}</td>
            <td></td>
        </tr>
        {cautions}
    }
}

/// The steps as a table for a spreadsheet: each with what it is a step of and with its cautions, what to
/// see to before all of them with those of the first, and no place to tick.
fn steps(card: &Card) -> Vec<Vec<String>> {
    let titles = [
        texts::card::PIECE,
        texts::card::STEP,
        texts::card::SET,
        texts::card::ALSO_SET,
        texts::card::LOOK_FOR,
        texts::card::HARDNESS_AFTER,
        texts::card::CAUTIONS,
    ];
    let titles = titles.map(str::to_owned).to_vec();
    let of = format!("{}. {}", card.title, card.sentence);
    let mut first: Vec<&str> = card.before_start.to_vec();
    let rows = card.rows.iter().map(|row| {
        let before = std::mem::take(&mut first).into_iter();
        let cautions: Vec<&str> = before
            .chain(row.cautions.iter().map(String::as_str))
            .collect();
        vec![
            of.clone(),
            row.title.clone(),
            row.set.clone(),
            row.detail.clone(),
            row.look_for.clone(),
            row.after.clone().unwrap_or_default(),
            cautions.join(" "),
        ]
    });
    std::iter::once(titles).chain(rows).collect()
}

/// What the piece is made of in the end.
fn constituents(bench: Bench) -> Option<impl IntoView> {
    let outcome = bench.outcome()?;
    // What stands in the furnace is not what comes out of the quench.
    let cooled = outcome
        .judged_stages()
        .iter()
        .filter(|s| s.step != Step::Soak);
    let fractions = cooled.rev().find_map(|s| s.fractions)?;
    let amounts = charts::amounts(&fractions);
    let key = amounts
        .iter()
        .filter(|(_, fraction)| *fraction >= TOLD)
        .map(|&(phase, fraction)| {
            view! {
                <span>
                    <span inner_html=drawn(&swatch(phase, SWATCH_PX))></span>
                    {phase_word(phase, false)}
                    " "
                    <b>{format_percent(fraction)}</b>
                </span>
            }
        })
        .collect_view();
    Some(view! {
        <div class="made" inner_html=drawn(&phase_bar(&amounts, BAR_PX))></div>
        <p class="key">{key}</p>
    })
}

/// What the numbers count with beside the route as it is set.
fn taught(bench: Bench) -> Option<impl IntoView> {
    let words = bench.taught_words();
    (!words.is_empty()).then(|| {
        view! { <p>{texts::card::COUNTED_WITH_LEARNT} {words.join(" ")}</p> }
    })
}

/// The code of the address that brings this route, with the address where it can be typed.
fn code(bench: Bench) -> impl IntoView {
    let address = bench.route.with(link::address_of).ok()?;
    let code = qr::code(&address)?;
    let typed = (address.len() <= LONGEST_TYPED).then_some(address);
    Some(view! {
        <svg
            class="qr"
            viewBox=format!("0 0 {0} {0}", code.side)
            role="img"
            aria-label=texts::card::CODE_OF_LINK
        >
            <path d=code.path></path>
        </svg>
        <span>{texts::card::ROUTE_ON_PAGE} <span class="link">{typed}</span></span>
    })
}

fn sheet(bench: Bench, card: Card) -> impl IntoView {
    let fields = [
        texts::card::PIECE,
        texts::card::DATE,
        texts::card::BAR_OR_HEAT,
        texts::card::BY,
    ]
    .map(|field| {
        view! {
            <dt>{field}</dt>
            <dd></dd>
        }
    });
    let steps = steps(&card);
    let before = card
        .before_start
        .into_iter()
        .map(|line| view! { <li><i></i>{line}</li> })
        .collect_view();
    let expected = card
        .expected
        .into_iter()
        .map(|row| {
            view! {
                <tr>
                    <th scope="row">{row.after}</th>
                    <td>{row.hardness}</td>
                    <td>{row.nine_in_ten}</td>
                    <td></td>
                </tr>
            }
        })
        .collect_view();
    let is_dense = card.rows.len() > ROOMY_ROWS;
    view! {
        <article class="card" class:dense=is_dense>
            <header>
                <div>
                    <p class="kind"><Sign colours="sign-of-card" /> {texts::card::CARD}</p>
                    <h2 translate="no">{card.title}</h2>
                    <p>{card.sentence}</p>
                </div>
                <dl>{fields}</dl>
            </header>
            <section class="safe">
                <h3>{texts::card::BEFORE_YOU_START}</h3>
                <ul>{before}</ul>
                <p>
                    {texts::card::LOCAL_CODES_FIRST}
                </p>
            </section>
            <table class="steps">
                <thead>
                    <tr>
                        <td></td>
                        <th>{texts::card::STEP}</th>
                        <th>{texts::card::SET}</th>
                        <th>{texts::card::COLOUR}</th>
                        <th>{texts::card::LOOK_FOR}</th>
                        <th>{texts::card::WHAT_IT_WAS}</th>
                    </tr>
                </thead>
                <tbody>{card.rows.into_iter().map(row).collect_view()}</tbody>
            </table>
            <SaveTable file="card" rows=move || Some(steps.clone()) />
            <div class="two">
                <section>
                    <h3>{texts::card::WHAT_TO_EXPECT}</h3>
                    <table class="expect">
                        <thead>
                            <tr>
                                <th>{texts::card::AFTER}</th>
                                <th>{texts::card::HARDNESS}</th>
                                <th>{texts::card::NINE_IN_TEN}</th>
                                <th>{texts::card::MEASURED}</th>
                            </tr>
                        </thead>
                        <tbody>{expected}</tbody>
                    </table>
                    <SaveTable file="what-to-expect" />
                    {card.unknown.map(|reason| view! { <p>{reason}</p> })}
                    {taught(bench)}
                    {constituents(bench)}
                </section>
                <section>
                    <h3>{card.depth.title}</h3>
                    <div inner_html=charts::section_scene(bench, SECTION_PX[0], SECTION_PX[1])
                        .map(|scene| drawn(&scene))></div>
                    <p>{card.depth.words}</p>
                </section>
            </div>
            <footer>
                <div>{code(bench)}</div>
                <p>{texts::card::COLOURS_AS_SEEN}</p>
            </footer>
        </article>
    }
    .into_any()
}

/// The card of the route on the bench.
#[component]
pub(crate) fn CardPlace() -> impl IntoView {
    let bench = bench();
    let shown = move || {
        let error = bench.computed.with(|c| c.error.clone());
        if let Some(error) = error {
            let words = error.words(bench.scale.get());
            return view! { <p class="say misses" role="alert">{words}</p> }.into_any();
        }
        let Some(outcome) = bench.outcome() else {
            return ().into_any();
        };
        let (scale, length) = (bench.scale.get(), bench.length.get());
        let card = bench
            .route
            .with(|route| card(route, &outcome, scale, length));
        sheet(bench, card).into_any()
    };
    view! {
        <main class="card-place">
            <div class="actions">
                <button type="button" class="press go" on:click=move |_| print()>
                    {texts::card::PRINT}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.route.with_untracked(|route| link::copy(bench, route))
                >
                    {texts::general::COPY_LINK}
                </button>
                <button
                    type="button"
                    class="press"
                    on:click=move |_| bench.place.set(Place::Bench)
                >
                    {texts::card::BACK_TO_BENCH}
                </button>
            </div>
            {shown}
        </main>
    }
    .into_any()
}
